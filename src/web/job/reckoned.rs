//! Sums laid out for a reader: verdict, tables, notes. The same on the stage page and in the form when asked.

use askama::Template;

use crate::web::kit::{Table, Verdict, already_escaped};
use crate::web::sum;
use crate::words::Words;

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

impl Reckoned {
    /// Tables that say something at a glance.
    fn shown(&self) -> impl Iterator<Item = &Table> {
        self.tables.iter().filter(|table| !is_for_redoing(table))
    }

    /// Tables for whoever redoes the sum: its steps, its inputs, the points of its picture.
    fn folded(&self) -> impl Iterator<Item = &Table> {
        self.tables.iter().filter(|table| is_for_redoing(table))
    }

    /// The words of its tables; none without a table to fold.
    fn fold(&self) -> Option<Words> {
        self.folded().next().map(|table| table.w)
    }
}

fn is_for_redoing(table: &Table) -> bool {
    let is_points = table.columns.get(1).is_some_and(|column| column.label == table.w.t("nozzle-column-open"));
    is_points || table.caption == table.w.t("sizing-inputs") || sum::worked(&table.w, table).is_some()
}

already_escaped!(Reckoned);
