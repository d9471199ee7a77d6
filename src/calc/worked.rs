//! A sum laid out step by step, so that a reader can redo it with a pocket calculator.
//!
//! A step holds the formula in the symbols of its source and the numbers put into it. The expression uses `+ - · / ^ √`
//! and brackets only; whoever shows it writes the numbers as the reader's language does.

use super::Source;

/// One line of a worked sum.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// Stable key of the quantity; language files hold its name.
    pub key: &'static str,
    /// The formula, the same in every language.
    pub formula: &'static str,
    /// The formula with `{}` where a number goes.
    pub put_in: String,
    /// The numbers, in order.
    pub values: Vec<f64>,
    /// What comes out, in `unit`.
    pub result: f64,
    /// Unit of the result; empty for a bare number.
    pub unit: &'static str,
    /// Standard uncertainty (k = 1) in `unit`, where one is known.
    pub standard_uncertainty: Option<f64>,
    /// Where the formula comes from; `None` for a balance or a definition, which needs no document.
    pub source: Option<Source>,
}

impl Step {
    /// A step whose numbers go into `put_in` in order.
    pub(super) fn new(
        key: &'static str,
        (formula, put_in): (&'static str, &str),
        values: &[f64],
        (result, unit): (f64, &'static str),
        source: impl Into<Option<Source>>,
    ) -> Self {
        let (put_in, values) = (put_in.to_owned(), values.to_vec());
        Self { key, formula, put_in, values, result, unit, standard_uncertainty: None, source: source.into() }
    }

    /// The same with a relative standard uncertainty.
    #[must_use]
    pub(super) fn good_to(mut self, relative: f64) -> Self {
        self.standard_uncertainty = Some(relative * self.result.abs());
        self
    }

    /// The same with a standard uncertainty in the unit of the result.
    #[must_use]
    pub(super) fn give_or_take(mut self, standard_uncertainty: f64) -> Self {
        self.standard_uncertainty = Some(standard_uncertainty);
        self
    }
}
