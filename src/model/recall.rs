//! A recall of parts: what its maker or an authority calls back, and whether a part is among it.

use serde::{Deserialize, Serialize};
use time::{Date, OffsetDateTime};

use super::ids::{BranchId, PersonId, RecallId};
use super::part::{Part, PartCategory, fold};

/// A recall as it is entered.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct NewRecall {
    /// Who recalled.
    pub recalled_by: String,
    /// The document: number or title.
    pub document: String,
    /// Its day.
    pub dated_on: Date,
    /// What kind of part.
    pub category: PartCategory,
    /// Maker; empty means any.
    pub maker: String,
    /// Type; empty means any.
    pub type_name: String,
    /// Batch; empty means any.
    pub batch: String,
    /// First serial; empty means from the first.
    pub serial_from: String,
    /// Last serial; empty means to the last.
    pub serial_to: String,
    /// What the keeper is to do, in words for the letter.
    pub remedy: String,
}

/// A recall as stored.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
#[allow(missing_docs, reason = "the fields are those of NewRecall, explained there")]
pub struct Recall {
    pub id: RecallId,
    pub branch_id: BranchId,
    pub recalled_by: String,
    pub document: String,
    pub dated_on: Date,
    pub category: PartCategory,
    pub maker: String,
    pub type_name: String,
    pub batch: String,
    pub serial_from: String,
    pub serial_to: String,
    pub remedy: String,
    pub recorded_by: PersonId,
    pub recorded_at: OffsetDateTime,
}

/// How surely a part is among what is recalled.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Carries {
    /// All that the recall names is on the part.
    Surely,
    /// What the recall names is not written down of the part, so it may be; it has to be looked at.
    Perhaps,
}

impl Recall {
    /// Whether this part is recalled. What the shop did not write down of it can never let it off.
    pub fn carries(&self, part: &Part) -> Option<Carries> {
        if part.category != self.category {
            return None;
        }
        let said = [
            word(&self.maker, &part.maker),
            word(&self.type_name, &part.type_name),
            word(&self.batch, &part.batch),
            within(&self.serial_from, &self.serial_to, &part.serial),
        ];
        if said.contains(&Some(false)) {
            None
        } else if said.contains(&None) {
            Some(Carries::Perhaps)
        } else {
            Some(Carries::Surely)
        }
    }
}

/// `None`: the recall names it and the part does not.
fn word(wanted: &str, got: &str) -> Option<bool> {
    let (wanted, got) = (fold(wanted), fold(got));
    if wanted.is_empty() {
        Some(true)
    } else if got.is_empty() {
        None
    } else {
        Some(wanted == got)
    }
}

/// Serials are compared by their letters and by their figures as numbers, so that 999 comes before 1000. A serial of
/// another shape than the range (other letters) is not in it.
fn within(from: &str, to: &str, got: &str) -> Option<bool> {
    let (from, to, got) = (fold(from), fold(to), fold(got));
    if from.is_empty() && to.is_empty() {
        return Some(true);
    }
    if got.is_empty() {
        return None;
    }
    let (letters, number) = split(&got);
    let is_shape = |end: &str| end.is_empty() || split(end).0 == letters;
    let is_after = from.is_empty() || number >= split(&from).1;
    let is_before = to.is_empty() || number <= split(&to).1;
    Some(is_shape(&from) && is_shape(&to) && is_after && is_before)
}

/// The letters before the last run of figures, and that run as a number that sorts: its length without leading zeros, then itself.
fn split(serial: &str) -> (&str, (usize, &str)) {
    let at = serial
        .rfind(|c: char| !c.is_ascii_digit())
        .map_or(0, |at| at + serial[at..].chars().next().map_or(1, char::len_utf8));
    let (letters, figures) = serial.split_at(at);
    let figures = figures.trim_start_matches('0');
    (letters, (figures.len(), figures))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn serials_are_ordered_as_numbers_within_their_letters() {
        assert_eq!(within("TW-0990", "TW-1010", "tw 999"), Some(true));
        assert_eq!(within("TW-0990", "TW-1010", "TW-1011"), Some(false));
        assert_eq!(within("TW-0990", "TW-1010", "KX-1000"), Some(false));
        assert_eq!(within("", "TW-1010", "TW-7"), Some(true));
        assert_eq!(within("118000", "118999", "118204"), Some(true));
        assert_eq!(within("118000", "118999", ""), None, "a serial nobody wrote down may be in the range");
        assert_eq!(within("", "", ""), Some(true));
    }
}
