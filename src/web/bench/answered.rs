//! An answer laid out: the verdict or the main results first, then what lies behind them.

use askama::Template;

use crate::calc::{Basis, Caution, Step};
use crate::web::kit::{self, Cell, Column, Table, Verdict, already_escaped};
use crate::web::sum;
use crate::words::Words;

/// A result that stands large.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Main {
    /// In words.
    pub label: String,
    /// With its unit.
    pub value: String,
    /// A softer line under it; empty for none.
    pub note: String,
}

/// What a sum rests on, in words.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Ground {
    method: String,
    formulas: Vec<&'static str>,
    uncertainty: String,
    sources: Vec<&'static str>,
}

/// Everything a page says of an answer.
#[derive(Debug, Clone, Template)]
#[template(path = "bench/answer.html")]
pub struct Answered {
    w: Words,
    fuel: Option<(String, String)>,
    verdict: Option<Verdict>,
    main: Vec<Main>,
    cautions: Vec<String>,
    tables: Vec<Table>,
    charts: Vec<String>,
    steps: Option<Table>,
    notes: Vec<String>,
    grounds: Vec<Ground>,
    link: String,
}

already_escaped!(Answered);

impl Answered {
    /// Nothing said yet.
    pub fn new(w: &Words) -> Self {
        Self {
            w: *w,
            fuel: None,
            verdict: None,
            main: Vec::new(),
            cautions: Vec::new(),
            tables: Vec::new(),
            charts: Vec::new(),
            steps: None,
            notes: Vec::new(),
            grounds: Vec::new(),
            link: String::new(),
        }
    }

    /// The same with a verdict: what the sum decides, with reasons.
    #[must_use]
    pub fn verdict(mut self, verdict: Verdict) -> Self {
        self.verdict = Some(verdict);
        self
    }

    /// The same with a main result; `key` is its label in the words, `{key}.note` the line under it.
    #[must_use]
    pub fn main(mut self, key: &str, value: impl Into<String>) -> Self {
        let note = self.w.find(&format!("{key}.note")).unwrap_or_default();
        self.main.push(Main { label: self.w.t(key), value: value.into(), note });
        self
    }

    /// The same with the sentences of what a reader should know.
    #[must_use]
    pub fn cautions(mut self, cautions: &[Caution]) -> Self {
        self.cautions.extend(cautions.iter().map(|one| sum::caution(&self.w, one)));
        self
    }

    /// The same with one more such sentence, in ready words.
    #[must_use]
    pub fn caution(mut self, sentence: impl Into<String>) -> Self {
        self.cautions.push(sentence.into());
        self
    }

    /// The same with further results: key of the label, value with its unit; those without a value are left out.
    #[must_use]
    pub fn results(self, results: Vec<(&str, Option<String>)>) -> Self {
        let w = self.w;
        let row = |(key, value): (&str, Option<String>)| Some(vec![Cell::new(w.t(key)), Cell::new(value?.trim_end())]);
        let rows: Vec<kit::Row> = results.into_iter().filter_map(row).collect();
        let columns = vec![Column::text(w.t("bench-column-quantity")), Column::number(w.head("bench-column-value"))];
        self.table(Table { w, caption: w.t("bench-results"), columns, rows })
    }

    /// The same with a table; one without lines is left out.
    #[must_use]
    pub fn table(mut self, table: Table) -> Self {
        if !table.rows.is_empty() {
            self.tables.push(table);
        }
        self
    }

    /// The same with a drawing, as SVG; its numbers stand in a table too.
    #[must_use]
    pub fn chart(mut self, svg: impl Into<String>) -> Self {
        self.charts.push(svg.into());
        self
    }

    /// The same with drawings, where the sum has any.
    #[must_use]
    pub fn charts(mut self, svgs: impl IntoIterator<Item = String>) -> Self {
        self.charts.extend(svgs);
        self
    }

    /// The same with the sum laid out step by step; nothing is said where there are no steps.
    #[must_use]
    pub fn steps(mut self, steps: &[Step]) -> Self {
        if !steps.is_empty() {
            self.steps = Some(sum::steps(&self.w, self.w.t("sizing-steps"), steps));
        }
        self
    }

    /// The same with a sentence that holds for the whole, in ready words.
    #[must_use]
    pub fn note(mut self, sentence: impl Into<String>) -> Self {
        self.notes.push(sentence.into());
        self
    }

    /// The same with what the sum rests on: method, formulas, documents, and its uncertainty (the words
    /// `method-{key}` and `method-{key}.uncertainty`).
    #[must_use]
    pub fn basis(mut self, basis: &Basis) -> Self {
        let key = format!("method-{}", basis.key);
        let uncertainty = self.w.find(&format!("{key}.uncertainty")).unwrap_or_default();
        self.grounds.push(Ground {
            method: self.w.t(&key),
            formulas: basis.formulas.to_vec(),
            uncertainty,
            sources: basis.sources.iter().map(|source| source.citation()).collect(),
        });
        self
    }

    /// The same with the fuel it was made for and where that comes from.
    #[must_use]
    pub(super) fn of_fuel(mut self, said: String, origin: String) -> Self {
        self.fuel = Some((said, origin));
        self
    }

    /// The same with its own address.
    #[must_use]
    pub(super) fn linked(mut self, address: String) -> Self {
        self.link = address;
        self
    }
}
