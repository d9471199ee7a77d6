//! Lines that are kept for what they say, though nothing is reckoned by them yet; and why that is.

use serde::Deserialize;

use super::line::SetName;
use crate::model::coded;
use crate::model::job::Fuel;

coded! {
    /// Why the program records a line and does not act upon it.
    "idle" Idle {
        /// It is about a gas that no job here can have.
        OtherFuel = "other-fuel",
        /// It counts from a day on the label that is not kept with the part.
        NoLabelDate = "no-label-date",
        /// It counts from a main inspection or a warrant whose day is not kept.
        NoMainInspection = "no-main-inspection",
        /// Examinations of persons are not kept.
        NoExam = "no-exam",
        /// Whether the vehicle's maker fitted the system is not kept.
        NoOrigin = "no-origin",
        /// Which vehicles it is for follows national dates that no set names yet.
        NationalDates = "national-dates",
        /// It limits a single component on a test bench, not a vehicle.
        Component = "component",
        /// It is good to know, and measured on no job.
        Information = "information",
        /// Brackets are not reckoned.
        NoBrackets = "no-brackets",
    }
}

/// In a line's `asked_by`: the set's own term for coming again after a failed inspection asks for it.
pub const RETEST: &str = "retest";

coded! {
    /// A gas that a line can be about and no job here can have.
    "other-fuel" OtherFuel {
        /// Liquefied natural gas.
        Lng = "lng",
        /// Hydrogen.
        Hydrogen = "hydrogen",
    }
}

/// A line that says a word and no number; its words are behind `rule-note-` in the language files, with "-" for ".".
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct NoteLine {
    /// Name for ever.
    pub id: String,
    /// The word: "dangerous".
    pub value: String,
    /// Gases.
    #[serde(default)]
    pub fuels: Vec<Fuel>,
    /// Proofs or lines of the checklist that ask for it.
    #[serde(default)]
    pub asked_by: Vec<String>,
    /// Why the program does not act upon it.
    #[serde(default)]
    pub idle: Option<Idle>,
    /// Document and paragraph.
    pub source: String,
    /// The source was read.
    pub checked: bool,
    /// The set it stands in.
    #[serde(skip)]
    pub set: SetName,
}

/// The part of an id that can stand in the key of a sentence.
pub fn key_of(id: &str) -> String {
    id.replace('.', "-")
}
