//! Columns of a log while it is read: what a cell says, and what a blank one stands for.

use std::path::Path;

use super::cell;
use super::rows::words_of;
use super::units::in_own_unit;
use super::words::{self, Words};
use super::{BrokenWhy, Layout, LogError, Match, Matched};
use crate::calc::road::Quantity;

/// How old a value may be that stands for a blank cell, s (common practice).
pub const HELD_S: f64 = 1.0;
/// The same of what changes slowly, coolant and long-term trim, s (common practice).
pub const HELD_SLOWLY_S: f64 = 30.0;

/// A column that is read as numbers.
pub(super) struct Numbers {
    pub(super) quantity: Quantity,
    pub(super) at: usize,
    scale: f64,
    offset: f64,
    /// The column's own unit, small, and whether a cell may name the quantity's unit instead.
    unit: String,
    takes_own_unit: bool,
    last: Option<(f64, f64)>,
    held_s: f64,
}

/// A column that is read as one of two words.
pub(super) struct Truths {
    pub(super) at: usize,
    words: Words,
    last: Option<(f64, bool)>,
}

/// What a cell came to.
pub(super) enum Read<T> {
    Value(T),
    Blank,
    Wrong,
}

fn place(layout: &Layout, matched: &Matched) -> Result<usize, LogError> {
    layout.column(&matched.column).ok_or_else(|| LogError::NoColumn { column: matched.column.clone() })
}

impl Numbers {
    /// The column that a match names.
    pub(super) fn new(quantity: Quantity, matched: &Matched, layout: &Layout) -> Result<Self, LogError> {
        let at = place(layout, matched)?;
        #[expect(clippy::float_cmp, reason = "a factor of exactly one is no factor")]
        let takes_own_unit = matched.scale == 1.0 && matched.offset == 0.0;
        let is_slow = matches!(quantity, Quantity::CoolantC | Quantity::LongTrim);
        Ok(Self {
            quantity,
            at,
            scale: matched.scale,
            offset: matched.offset,
            unit: layout.columns[at].unit.to_lowercase(),
            takes_own_unit,
            last: None,
            held_s: if is_slow { HELD_SLOWLY_S } else { HELD_S },
        })
    }

    /// The quantity that a cell says, in its own unit.
    pub(super) fn number(&self, said: &str, decimal: char) -> Read<f64> {
        let number = match cell::number(said, decimal) {
            Some(number) => number,
            None if cell::is_gap(said) => return Read::Blank,
            None => match cell::number_and_unit(said, decimal) {
                Some((number, unit)) if self.takes(unit) => number,
                _ => return Read::Wrong,
            },
        };
        let value = number * self.scale + self.offset;
        if value.is_finite() { Read::Value(value) } else { Read::Wrong }
    }

    /// A unit behind a number is the column's, or the quantity's own where no factor stands between the two.
    fn takes(&self, unit: &str) -> bool {
        unit.to_lowercase() == self.unit
            || (self.takes_own_unit && self.unit.is_empty() && in_own_unit(self.quantity, unit) == Some((1.0, 0.0)))
    }

    /// The value of a row, or the last one while it may be held.
    pub(super) fn value(&mut self, said: &str, decimal: char, time_s: f64) -> Result<Option<f64>, BrokenWhy> {
        match self.number(said, decimal) {
            Read::Value(value) => {
                self.last = Some((time_s, value));
                Ok(Some(value))
            }
            Read::Blank => Ok(held(self.last, time_s, self.held_s)),
            Read::Wrong => Err(BrokenWhy::NotANumber { quantity: self.quantity }),
        }
    }
}

impl Truths {
    /// The column of a quantity, if it is matched. Where no words are given they are chosen by what the column holds.
    pub(super) fn new(
        path: &Path,
        layout: &Layout,
        wanted: &Match,
        quantity: Quantity,
    ) -> Result<Option<Self>, LogError> {
        let Some(matched) = wanted.columns.get(&quantity) else { return Ok(None) };
        let at = place(layout, matched)?;
        let given = if quantity == Quantity::Fuel { &wanted.gas_words } else { &wanted.closed_words };
        let words = if given.is_empty() {
            let said = words_of(path, layout, &matched.column)?;
            if quantity == Quantity::Fuel {
                words::gas(&said, layout.decimal)
            } else {
                words::closed(&said, layout.decimal)
            }
        } else {
            given.clone()
        };
        Ok(Some(Self { at, words: Words::new(words, layout.decimal), last: None }))
    }

    /// What a row says, or the last one said while it may be held.
    pub(super) fn value(&mut self, said: &str, time_s: f64) -> Option<bool> {
        if cell::is_gap(said) {
            return held(self.last, time_s, HELD_S);
        }
        let is_so = self.words.have(said);
        self.last = Some((time_s, is_so));
        Some(is_so)
    }
}

/// The last value, unless it is too old or of a later time.
fn held<T: Copy>(last: Option<(f64, T)>, time_s: f64, held_s: f64) -> Option<T> {
    last.filter(|(since_s, _)| (0.0..=held_s).contains(&(time_s - since_s))).map(|(_, value)| value)
}
