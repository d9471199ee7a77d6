//! Sums laid out for a reader: verdict, tables, notes. The same on the stage page and in the form when asked.

use askama::Template;

use crate::web::kit::{Table, Verdict, already_escaped};

/// What a sum says, and how it comes to say so.
#[derive(Debug, Clone, Template)]
#[template(path = "job/reckoned.html")]
pub struct Reckoned {
    /// In words with reasons.
    pub verdict: Option<Verdict>,
    /// Inputs, steps, candidates.
    pub tables: Vec<Table>,
    /// Version of the program, and whatever else holds for the whole.
    pub notes: Vec<String>,
}

already_escaped!(Reckoned);
