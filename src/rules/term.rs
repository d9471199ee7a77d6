//! How long a vehicle that failed has, and what is looked at when it comes again.

use time::{Date, Duration};

use super::book::RuleBook;
use crate::calc::due::{Precision, months_later};

/// The term after a fail.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Term {
    /// Last day to bring the vehicle again.
    pub by_on: Date,
    /// Within the term only what failed is looked at again.
    pub failed_only: bool,
    /// What sets it, in words.
    pub source: String,
    /// The source was read.
    pub is_checked: bool,
}

/// The term of a fail on this day; `None` where no rule in force sets one: then the vehicle comes to a whole new inspection.
pub fn term(book: &RuleBook, on: Date) -> Option<Term> {
    let retest = book.retest()?;
    let by_on = match (retest.days, retest.months) {
        (Some(days), _) => on.checked_add(Duration::days(i64::from(days)))?,
        (None, Some(months)) => months_later(on, months, Precision::Day).ok()?,
        (None, None) => return None,
    };
    let source = retest.source.to_owned();
    Some(Term { by_on, failed_only: retest.only_failed, source, is_checked: retest.checked })
}

/// A repair during an inspection ends it, and another begins.
pub fn repair_restarts(book: &RuleBook) -> bool {
    book.repair_restarts().is_some()
}
