//! How the shop says no: what forbids a deed, and what would lift that.

use std::time::Duration;

use crate::db;

/// Why a deed was not done. The page turns each into words; none of them carries a sentence.
#[derive(Debug)]
pub enum Refusal {
    /// Proofs, or other things the deed rests on, are not there yet; each is a key of the language files.
    Missing(Vec<String>),
    /// A rule forbids it; the key of its sentence (`refused-last-manager`).
    MayNot(&'static str),
    /// The thing has ended: handed over, cancelled, issued, withdrawn; the key of its sentence.
    Ended(&'static str),
    /// Somebody changed it since the page was opened.
    Stale,
    /// The value of this field is in use elsewhere.
    Taken { field: String },
    /// It is not there, or not in this branch.
    Gone,
    /// Too many tries; look again after this long.
    Throttled(Duration),
    /// The form's key was used for another deed.
    KeyUsed,
    /// What was typed does not stand against what is in the books: field, and the key of its sentence.
    Field { field: &'static str, why: &'static str },
    /// The program failed; the text is for the log.
    Broken(String),
}

impl From<db::Error> for Refusal {
    fn from(error: db::Error) -> Self {
        match error {
            db::Error::Stale => Self::Stale,
            db::Error::Taken { field } => Self::Taken { field },
            db::Error::Broken(error) => Self::Broken(error.to_string()),
        }
    }
}

impl std::fmt::Display for Refusal {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Missing(what) => write!(f, "still missing: {}", what.join(", ")),
            Self::MayNot(rule) | Self::Ended(rule) => write!(f, "refused: {rule}"),
            Self::Stale => f.write_str("somebody changed it meanwhile"),
            Self::Taken { field } => write!(f, "{field} is in use elsewhere"),
            Self::Gone => f.write_str("not there"),
            Self::Throttled(wait) => write!(f, "too many tries; again in {} s", wait.as_secs()),
            Self::KeyUsed => f.write_str("the key was used for something else"),
            Self::Field { field, why } => write!(f, "{field}: {why}"),
            Self::Broken(said) => f.write_str(said),
        }
    }
}

impl std::error::Error for Refusal {}
