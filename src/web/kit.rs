//! The pieces that pages are made of: fields, marks, the stage rail, proofs, verdicts, tables.
//!
//! A field is one line in a template: `{{ kit::number(form, frame.w, "odometer_km") }}`. That one name is the field,
//! its label (`field-odometer_km` in the words), its hint, its unit and the id of its error. A module whose template
//! uses the kit says `use crate::web::kit;`.

mod field;
mod group;
mod job;
mod pieces;

pub use field::{
    Choice, Field, Hidden, Summary, area, choice, choices, code, coded, date, file, key, label, mail, moment, number,
    pick, radios, secret, summary, text, tick, ticks, version, yes_no,
};
pub use group::Group;
pub use job::{JobSheet, Proof, ProofList, Rail, Stop, StopState};
pub use pieces::{
    Act, Cell, Column, Empty, LifeEntry, LifeLine, LifeYear, Mark, MarkView, Pages, Rich, Row, Table, Tone, Verdict,
    mark, rich, said,
};

/// Says that a template inside a template is already escaped.
macro_rules! already_escaped {
    ($($name:ty),*) => {$( impl askama::filters::HtmlSafe for $name {} )*};
}
pub(crate) use already_escaped;
