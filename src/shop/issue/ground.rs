//! What papers are made from: an assessed job, and how its branch reads days, hours and words.

use time::OffsetDateTime;

use crate::model::branch::Branch;
use crate::model::evidence::Entry;
use crate::model::job_file::{DayOf, JobFile};
use crate::model::part::PartCategory;
use crate::rules::{LimitLine, Need, Proof, RuleBook};
use crate::shop::assessed::Assessed;
use crate::words::{Language, Words};

/// What papers are made from.
#[derive(Clone, Copy)]
pub(in crate::shop) struct Ground<'a> {
    pub file: &'a JobFile,
    pub history: &'a [Entry],
    pub book: &'a RuleBook,
    pub proofs: &'a [Proof],
    pub branch: &'a Branch,
    pub day_of: DayOf<'a>,
    /// An instant as the shop's clock shows it.
    pub local: &'a dyn Fn(OffsetDateTime) -> OffsetDateTime,
    pub w: Words,
    /// Tag of the language whose text counts, where this one is only to be read beside it; else empty.
    pub beside_of: &'static str,
}

/// In which language a record is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Spoken {
    /// In that of the rules: what counts.
    Official,
    /// In the keeper's, to be read beside it.
    Keeper,
}

impl Ground<'_> {
    /// The name of a proof in the paper's language.
    pub fn proof_title(&self, proof: &Proof) -> String {
        proof.title.clone().unwrap_or_else(|| self.w.t(format!("proof-{}", proof.id)))
    }

    /// The source of the proof line that asks for this.
    pub fn proof_source(&self, need: &Need) -> String {
        let lines = self.book.sets.iter().flat_map(|set| &set.proof);
        lines.into_iter().find(|line| line.needs == *need).map(|line| line.source.clone()).unwrap_or_default()
    }

    /// The source of a limit, with the line and the set that decided; a shop's own says so, and one that nobody read says
    /// that too.
    pub fn limit_source(&self, line: &LimitLine) -> String {
        let key = if self.book.is_shop_line(line) {
            "issue-shop-limit"
        } else if line.checked || line.practice {
            "issue-limit-of-line"
        } else {
            "issue-limit-unread"
        };
        let values = [
            ("source", line.source.as_str().into()),
            ("line", line.id.as_str().into()),
            ("set", line.set.title.as_str().into()),
        ];
        self.w.tv(key, &values)
    }

    /// Water capacity of all containers fitted, L.
    pub fn capacity_l(&self) -> Option<f64> {
        let containers = self.file.fitted().filter(|part| part.category == PartCategory::Container);
        let sum: f64 = containers.filter_map(|part| part.capacity_l).sum();
        (sum > 0.0).then_some(sum)
    }
}

impl Assessed {
    /// Hands the job to whoever makes a certificate, a record or a label of it: in the language of the rules, on the
    /// branch's clock.
    pub(super) fn with_official<T>(&self, work: impl FnOnce(&Ground<'_>) -> T) -> T {
        self.with_words(Words::new(official_language(&self.book, &self.branch)), work)
    }

    /// Hands the job to whoever makes a record of it, in either language.
    pub(super) fn with_spoken<T>(&self, spoken: Spoken, work: impl FnOnce(&Ground<'_>) -> T) -> T {
        let official = official_language(&self.book, &self.branch);
        let keeper = keeper_language(&self.file, &self.branch);
        if spoken == Spoken::Official || keeper == official {
            return self.with_official(work);
        }
        self.with_keeper(|ground| work(&Ground { beside_of: official.tag(), ..*ground }))
    }

    /// Hands the job to whoever makes a working paper of it, in the language of the screens.
    pub(super) fn with<T>(&self, work: impl FnOnce(&Ground<'_>) -> T) -> T {
        self.with_words(words_of(&self.branch.language), work)
    }

    /// The same in the keeper's language, for what the keeper takes home.
    pub(super) fn with_keeper<T>(&self, work: impl FnOnce(&Ground<'_>) -> T) -> T {
        self.with_words(Words::new(keeper_language(&self.file, &self.branch)), work)
    }

    fn with_words<T>(&self, w: Words, work: impl FnOnce(&Ground<'_>) -> T) -> T {
        let day_of = |at| self.zone.day_of(at);
        let local = |at| self.zone.local(at);
        work(&Ground {
            file: &self.file,
            history: &self.history,
            book: &self.book,
            proofs: &self.proofs,
            branch: &self.branch,
            day_of: &day_of,
            local: &local,
            w,
            beside_of: "",
        })
    }
}

/// What certificates and records of a job are made in: the language of the rules, else the branch's, else English.
pub fn official_language(book: &RuleBook, branch: &Branch) -> Language {
    let rules = book.official_language(&branch.language);
    Language::for_customer(rules.into_iter().chain([branch.language.as_str()]))
}

/// What the keeper is written to in.
pub fn keeper_language(file: &JobFile, branch: &Branch) -> Language {
    Language::for_customer([&*file.keeper.language, &branch.language])
}

/// Words of a language tag for working papers; the default language for one that screens do not speak.
pub(in crate::shop) fn words_of(tag: &str) -> Words {
    Words::new(Language::from_tag(tag).unwrap_or_default())
}
