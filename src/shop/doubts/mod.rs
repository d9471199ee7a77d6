//! What a finding puts in doubt, worked to its end: the results that rest on its cause are reckoned again, their papers come
//! under review, a signatory decides each paper and signs that, the keeper is written to, and the finding closes last.

mod decide;
mod letters;
mod recall;
mod report;
pub mod said;
mod weigh;

use time::OffsetDateTime;
use uuid::Uuid;

use super::findings::{FoundIn, NewFinding};
use super::issue::words_of;
use super::{Refusal, Shop, Work};
use crate::clock::Zone;
use crate::db;
use crate::model::Coded;
use crate::model::deed::Deed;
use crate::model::doubt::{AsFound, CauseKind, Doubt, ErrorIn};
use crate::model::ids::{EvidenceId, FindingId, InstrumentId, JobId, PaperId};
use crate::model::paper::issued::{EventKind, open_reviews};
use crate::model::person::Actor;
use crate::unit::Unit;
use crate::words::Words;

pub use decide::{NewDecision, NewReTest, retest_kind};
pub use weigh::{PaperLine, ResultLine, Traced, Weighed, What, trace, weigh};

/// What findings rest on whose cause is not an instrument; the words are behind `finding-source-`.
pub const FOUND_CORRECTED: &str = "corrected-evidence";
/// A recall.
pub const FOUND_RECALL: &str = "recall";
/// A rule line changed.
pub const FOUND_RULE_LINE: &str = "rule-line";

/// A rule line that changed, as somebody states it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ChangedLine {
    /// Id of the line; empty where a whole set changed.
    pub line: String,
    /// First day of its new value.
    pub from_on: time::Date,
    /// In words.
    pub text: String,
}

impl Work {
    /// The branch's clock.
    pub(super) async fn zone(&mut self) -> Result<Zone, Refusal> {
        let branch = self.who.branch;
        let branch = db::branches::find(self, branch).await?.ok_or(Refusal::Gone)?;
        Zone::named(&branch.time_zone).map_err(|error| Refusal::Broken(error.to_string()))
    }

    /// The words of the branch.
    pub(super) async fn words_of_branch(&mut self) -> Result<Words, Refusal> {
        let branch = self.who.branch;
        let branch = db::branches::find(self, branch).await?.ok_or(Refusal::Gone)?;
        Ok(words_of(&branch.language))
    }

    /// Opens a finding whose cause is not an instrument, with that cause; papers come under review at once.
    pub(super) async fn open_doubt(
        &mut self,
        source: &str,
        text: String,
        cause: impl FnOnce(&mut Doubt),
        kind: CauseKind,
    ) -> Result<FindingId, Refusal> {
        let (source, now) = (source.to_owned(), self.now);
        let new = NewFinding { found_in: FoundIn::Records, source, text, found_at: None };
        let (finding, deed) = self.open_finding(new).await?;
        self.note(deed).await?;
        let doubt = Doubt { finding_id: finding, ..weigh::plain_doubt(kind, now, cause) };
        db::doubts::save(self, &doubt).await?;
        Box::pin(self.review(finding)).await?;
        Ok(finding)
    }

    /// Opens a finding because an entry was corrected under papers that rest on it. A correction of a correction opens none:
    /// the finding of the first follows the chain to its end.
    pub(super) async fn doubt_corrected(&mut self, job: JobId, by: EvidenceId, reason: &str) -> Result<(), Refusal> {
        let (branch, now) = (self.who.branch, self.now);
        let doubt = weigh::plain_doubt(CauseKind::Evidence, now, |doubt| doubt.evidence_id = Some(by));
        if weigh::trace_doubt(self, branch, &doubt, (now, now)).await?.papers.iter().all(|one| one.ended_at.is_some()) {
            return Ok(());
        }
        let number = db::jobs::find(self, branch, job).await?.ok_or(Refusal::Gone)?.number;
        let values = [("job", number.as_str().into()), ("reason", reason.into())];
        let text = self.words_of_branch().await?.tv("finding-corrected", &values);
        self.open_doubt(FOUND_CORRECTED, text, |doubt| doubt.evidence_id = Some(by), CauseKind::Evidence).await?;
        Ok(())
    }

    /// Opens a finding when the shop's lines, changed now, judge differently what papers rest on.
    pub(super) async fn doubt_changed_lines(&mut self, from_on: time::Date) -> Result<(), Refusal> {
        let values = [("on", self.words_of_branch().await?.date(from_on).into())];
        let text = self.words_of_branch().await?.tv("finding-lines-changed", &values);
        let (branch, now) = (self.who.branch, self.now);
        let doubt = weigh::plain_doubt(CauseKind::RuleLine, now, |doubt| doubt.rule_from_on = Some(from_on));
        let touched = weigh::trace_doubt(self, branch, &doubt, (now, now)).await?;
        if touched.papers.is_empty() {
            return Ok(());
        }
        self.open_doubt(FOUND_RULE_LINE, text, |doubt| doubt.rule_from_on = Some(from_on), CauseKind::RuleLine).await?;
        Ok(())
    }

    /// Brings under review whatever paper rests on the cause of a finding, and out of it what no longer does.
    pub(super) async fn review(&mut self, id: FindingId) -> Result<(), Refusal> {
        let (branch, now, person) = (self.who.branch, self.now, self.person()?);
        let finding = db::findings::find(self, branch, id).await?.ok_or(Refusal::Gone)?;
        let traced = trace(self, branch, &finding, now).await?;
        let decided = db::doubts::list_decisions(self, id).await?;
        let kind = match traced.doubt.cause {
            CauseKind::Evidence => EventKind::RestsOnCorrected,
            _ => EventKind::ReviewOpened,
        };
        // The line of the paper says why, in the words of whoever corrected or found it.
        let correction = traced.records.entries.iter().find(|entry| Some(entry.id) == traced.doubt.evidence_id);
        let reason = correction.map_or(finding.text.as_str(), |entry| entry.replaces_reason.as_str());
        for paper in &traced.papers {
            let is_decided = decided.iter().any(|one| one.paper_id == paper.id);
            let events = db::papers::list_events(self, paper.id).await?;
            if paper.ended_at.is_none() && !is_decided && !open_reviews(&events).contains(&Some(id)) {
                let why = (reason, Some(id));
                db::papers::insert_event_of(self, paper.id, kind, why, person, now).await?;
                let (paper, number) = (paper.id, paper.number.clone());
                self.note(Deed::PaperReviewed { finding: id, paper, number, is_open: true }).await?;
            }
        }
        for paper in db::papers::list_reviewed(self, branch).await? {
            let events = db::papers::list_events(self, paper.id).await?;
            let still = traced.papers.iter().any(|one| one.id == paper.id);
            if !still && open_reviews(&events).contains(&Some(id)) {
                let why = self.words_of_branch().await?.t("finding-outside-span");
                let why = (why.as_str(), Some(id));
                db::papers::insert_event_of(self, paper.id, EventKind::ReviewClosed, why, person, now).await?;
                let deed = Deed::PaperReviewed { finding: id, paper: paper.id, number: paper.number, is_open: false };
                self.note(deed).await?;
            }
        }
        Ok(())
    }

    /// A paper that was just issued comes under review when an open finding puts in doubt what it rests on.
    pub(super) async fn review_new_paper(&mut self) -> Result<(), Refusal> {
        let branch = self.who.branch;
        for finding in db::findings::list_open(self, branch).await? {
            if db::doubts::of_finding(self, &finding).await?.is_some() {
                Box::pin(self.review(finding.id)).await?;
            }
        }
        Ok(())
    }

    /// Numbers of papers that rest on the cause and that no signatory decided yet.
    pub(super) async fn undecided_papers(&mut self, id: FindingId) -> Result<Vec<String>, Refusal> {
        let (branch, now) = (self.who.branch, self.now);
        let finding = db::findings::find(self, branch, id).await?.ok_or(Refusal::Gone)?;
        if db::doubts::of_finding(self, &finding).await?.is_none() {
            return Ok(Vec::new());
        }
        let traced = trace(self, branch, &finding, now).await?;
        let decided = db::doubts::list_decisions(self, id).await?;
        let waits = |paper: &&crate::model::doubt::PaperUnder| {
            paper.ended_at.is_none() && !decided.iter().any(|one| one.paper_id == paper.id)
        };
        Ok(traced.papers.iter().filter(waits).map(|paper| paper.number.clone()).collect())
    }

    /// The error that a failed check found is the error of its finding where the unit leaves no doubt.
    pub(super) async fn enter_error_of_check(
        &mut self,
        finding: FindingId,
        instrument: InstrumentId,
        error: Option<f64>,
    ) -> Result<(), Refusal> {
        let (branch, now, person) = (self.who.branch, self.now, self.person()?);
        let instrument = db::instruments::find(self, branch, instrument).await?.ok_or(Refusal::Gone)?;
        let Some(error) = error else { return Ok(()) };
        let found =
            match (ErrorIn::of(instrument.kind), Unit::of_name(&instrument.unit), instrument.unit.parse::<Unit>()) {
                ([ErrorIn::PressureKpa, ..], _, Ok(unit)) => {
                    unit.convert(error, Unit::Kilopascal).map(|kpa| (ErrorIn::PressureKpa, kpa))
                }
                ([ErrorIn::TemperatureK], _, Ok(Unit::Kelvin | Unit::Celsius)) => Some((ErrorIn::TemperatureK, error)),
                _ => None,
            };
        let Some((quantity, reads_high_by)) = found else { return Ok(()) };
        let how_known = self.words_of_branch().await?.t("finding-error-of-check");
        let error = AsFound { quantity, reads_high_by, how_known, person_name: String::new(), entered_at: now };
        db::doubts::insert_error(self, finding, &error, person, now).await?;
        Ok(())
    }
}

impl Shop {
    /// States from when on an instrument is suspect, with the reason; `None` takes that back. Papers come under review, and
    /// out of it, by the new span. The caller has proved nothing: whoever may sign may state it.
    ///
    /// # Errors
    /// [`Refusal::Field`] for a beginning after it was found wrong, or one without a reason.
    pub async fn state_doubt(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        id: FindingId,
        stated: Option<(OffsetDateTime, String)>,
    ) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let mut doubt = work.open_doubt_of(id).await?;
            if work.who.may_sign_on(work.today).is_none() {
                return Err(Refusal::MayNot("refused-signatory-only"));
            }
            if doubt.cause != CauseKind::Instrument {
                return Err(Refusal::MayNot("refused-doubt-has-no-span"));
            }
            if let Some((from, reason)) = &stated {
                if *from > doubt.found_at {
                    return Err(Refusal::Field { field: "stated_from", why: "wrong-after-found" });
                }
                if reason.trim().is_empty() {
                    return Err(Refusal::Field { field: "stated_reason", why: "wrong-empty" });
                }
            }
            (doubt.stated_from, doubt.stated_reason) = match stated {
                Some((from, reason)) => (Some(from), reason),
                None => (None, String::new()),
            };
            db::doubts::save(&mut work, &doubt).await?;
            Box::pin(work.review(id)).await?;
            let from = doubt.stated_from.map(|at| at.to_string()).unwrap_or_default();
            work.done(Deed::DoubtDated { finding: id, from, reason: doubt.stated_reason }, ()).await
        })
        .await
    }

    /// Enters the error as it was found. Results are reckoned again from the entries each time they are looked at; no entry
    /// is changed. A later entry stands in the place of this one.
    ///
    /// # Errors
    /// [`Refusal::Field`] for an error in something this instrument does not measure.
    pub async fn enter_error(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        id: FindingId,
        errors: Vec<(ErrorIn, f64)>,
        how_known: String,
    ) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let (branch, now, person) = (work.who.branch, work.now, work.person()?);
            let doubt = work.open_doubt_of(id).await?;
            let instrument = doubt.instrument_id.ok_or(Refusal::MayNot("refused-doubt-has-no-error"))?;
            let instrument = db::instruments::find(&mut work, branch, instrument).await?.ok_or(Refusal::Gone)?;
            let takes = ErrorIn::of(instrument.kind);
            if errors.is_empty() || errors.iter().any(|(quantity, _)| !takes.contains(quantity)) {
                return Err(Refusal::MayNot("refused-doubt-has-no-error"));
            }
            let mut said = Vec::new();
            for (quantity, reads_high_by) in errors {
                said.push(format!("{} {reads_high_by}", quantity.code()));
                let how_known = how_known.clone();
                let error = AsFound { quantity, reads_high_by, how_known, person_name: String::new(), entered_at: now };
                db::doubts::insert_error(&mut work, id, &error, person, now).await?;
            }
            work.done(Deed::ErrorEntered { finding: id, errors: said, how_known }, ()).await
        })
        .await
    }

    /// Opens a finding because a rule line changed: what was measured from its first day on is held against it.
    pub async fn doubt_rule_line(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        changed: ChangedLine,
    ) -> Result<FindingId, Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            if changed.from_on > work.today {
                return Err(Refusal::Field { field: "rule_from_on", why: "wrong-future" });
            }
            let (branch, today) = (work.who.branch, work.today);
            let book = db::rule_books::book_on(&mut work, branch, today).await?;
            let is_known = book.sets.iter().any(|set| {
                set.limit.iter().any(|line| line.id == changed.line)
                    || set.proof.iter().any(|line| line.id == changed.line)
            });
            if !changed.line.is_empty() && !is_known {
                return Err(Refusal::Field { field: "rule_line", why: "wrong-not-known" });
            }
            let ChangedLine { line, from_on, text } = changed;
            let cause = |doubt: &mut Doubt| (doubt.rule_line, doubt.rule_from_on) = (line, Some(from_on));
            let id = work.open_doubt(FOUND_RULE_LINE, text, cause, CauseKind::RuleLine).await?;
            let deed = Deed::DoubtDated { finding: id, from: from_on.to_string(), reason: String::new() };
            work.done(deed, id).await
        })
        .await
    }
}

impl Work {
    /// The cause of a finding that is still open.
    async fn open_doubt_of(&mut self, id: FindingId) -> Result<Doubt, Refusal> {
        let branch = self.who.branch;
        let finding = db::findings::find(self, branch, id).await?.ok_or(Refusal::Gone)?;
        if !finding.is_open() {
            return Err(Refusal::Ended("refused-finding-decided"));
        }
        db::doubts::of_finding(self, &finding).await?.ok_or(Refusal::Gone)
    }
}

/// The papers of a branch that are under review now, each with the findings behind it.
pub async fn under_review(
    con: &mut db::Con,
    branch: crate::model::ids::BranchId,
) -> Result<Vec<(PaperId, String, Vec<FindingId>, OffsetDateTime)>, Refusal> {
    let mut all = Vec::new();
    for paper in db::papers::list_reviewed(con, branch).await? {
        let events = db::papers::list_events(con, paper.id).await?;
        let open = open_reviews(&events);
        let since =
            events.iter().rev().find(|one| open.contains(&one.finding_id)).map_or(paper.issued_at, |one| one.at);
        if !open.is_empty() {
            all.push((paper.id, paper.number, open.into_iter().flatten().collect(), since));
        }
    }
    Ok(all)
}
