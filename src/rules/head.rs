//! What a set says of inspections as a whole, in its head: whether a repair ends one, and how a failed vehicle comes again.
//!
//! Where several sets speak, the strictest counts and the answer names it: one set that restarts is enough, the shortest
//! term counts, and a re-inspection of the failed items alone is only for a book in which nobody forbids it.

use serde::Deserialize;

use super::book::RuleBook;
use super::set::RuleSet;

/// A repair inside an inspection ends it.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RepairRestarts {
    /// Document and paragraph.
    pub source: String,
    /// The source was read.
    pub checked: bool,
}

/// How a vehicle that failed may come again, as one set says it.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RetestHead {
    /// Within so many months of the test; or
    #[serde(default)]
    pub months: Option<u32>,
    /// within so many days.
    #[serde(default)]
    pub days: Option<u32>,
    /// Whether the failed items alone may be looked at; left out: the set does not say.
    #[serde(default)]
    pub only_failed: Option<bool>,
    /// Document and paragraph.
    pub source: String,
    /// The source was read.
    pub checked: bool,
}

/// The set by which a repair ends an inspection.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Restart<'a> {
    /// The set that says so.
    pub set: &'a RuleSet,
    /// Document and paragraph.
    pub source: &'a str,
    /// The source was read; else "to be confirmed with your authority".
    pub checked: bool,
}

/// How a vehicle that failed may come again, by the whole book.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Retest<'a> {
    /// Within so many months of the test; or
    pub months: Option<u32>,
    /// within so many days.
    pub days: Option<u32>,
    /// The failed items alone may be looked at; else the whole inspection is due again.
    pub only_failed: bool,
    /// The set whose term counts.
    pub set: &'a RuleSet,
    /// Document and paragraph of the term.
    pub source: &'a str,
    /// The source was read; else "to be confirmed with your authority".
    pub checked: bool,
}

impl RetestHead {
    /// To compare terms by; a month is never longer than 31 days.
    fn longest_days(&self) -> u32 {
        self.days.unwrap_or_else(|| 31 * self.months.unwrap_or(0))
    }
}

impl RuleBook {
    /// The set by which a repair inside an inspection ends it; `None`: no set of the book says so.
    pub fn repair_restarts(&self) -> Option<Restart<'_>> {
        self.sets.iter().find_map(|set| {
            let head = set.repair_restarts.as_ref()?;
            Some(Restart { set, source: &head.source, checked: head.checked })
        })
    }

    /// How a vehicle that failed may come again: the shortest term of all sets, and the set that names it; `None`: no set
    /// of the book names a term.
    pub fn retest(&self) -> Option<Retest<'_>> {
        let heads = || self.sets.iter().filter_map(|set| set.retest.as_ref().map(|head| (set, head)));
        let (set, head) = heads().min_by_key(|(_, head)| head.longest_days())?;
        let mut said = heads().filter_map(|(_, head)| head.only_failed).peekable();
        let only_failed = said.peek().is_some() && said.all(|only| only);
        let (months, days) = (head.months, head.days);
        Some(Retest { months, days, only_failed, set, source: &head.source, checked: head.checked })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const GERMAN: [&str; 3] = ["un-baseline", "eu-roadworthiness", "de-stvzo"];

    #[test]
    fn in_germany_a_repair_ends_the_inspection_and_elsewhere_nobody_says_so() {
        let book = RuleBook::stacked(&GERMAN).unwrap();
        let restart = book.repair_restarts().unwrap();
        assert_eq!((restart.set.name.as_str(), restart.checked), ("de-stvzo", true));
        assert!(restart.source.contains("Annex VIII"));
        assert!(RuleBook::shipped().unwrap().repair_restarts().is_none());
    }

    #[test]
    fn the_shortest_term_counts_and_names_its_set() {
        let shipped = RuleBook::shipped().unwrap();
        let base = shipped.retest().unwrap();
        assert_eq!((base.months, base.set.name.as_str(), base.checked), (Some(2), "eu-roadworthiness", false));
        let book = RuleBook::stacked(&GERMAN).unwrap();
        let retest = book.retest().unwrap();
        assert_eq!((retest.months, retest.set.name.as_str(), retest.checked), (Some(1), "de-stvzo", true));
        assert!(!retest.only_failed, "no set allows the failed items alone");
    }

    #[test]
    fn one_set_that_wants_all_again_is_enough() {
        let head = |only: &str, days: u32| {
            let text = format!(
                "name = \"x\"\nversion = \"1\"\ntitle = \"X\"\nretest = {{ days = {days}, {only} source = \"s\", checked = true }}\n"
            );
            RuleSet::read(&text).unwrap()
        };
        let book = |sets| RuleBook { sets };
        assert!(book(vec![head("only_failed = true,", 40), head("", 20)]).retest().unwrap().only_failed);
        let strict = book(vec![head("only_failed = true,", 20), head("only_failed = false,", 40)]);
        assert_eq!(strict.retest().map(|one| (one.days, one.only_failed)), Some((Some(20), false)));
        assert!(book(vec![]).retest().is_none());
    }

    #[test]
    fn a_term_of_both_kinds_or_of_none_is_refused_with_its_line() {
        let text = "name = \"x\"\nversion = \"1\"\ntitle = \"X\"\nretest = { only_failed = true, source = \"s\", checked = true }\n";
        assert_eq!(RuleSet::read(text).unwrap_err().line, Some(4));
    }
}
