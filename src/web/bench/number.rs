//! Numbers that a Bench form asks for: one table a page says name, unit, range, and what the field opens with.

use crate::unit::Unit;
use crate::web::form::{Form, Wrong};
use crate::web::job::origins;
use crate::web::kit::{self, Field};
use crate::words::Words;

/// A number field.
#[derive(Debug, Clone, Copy)]
pub struct Number {
    /// Its name in the address, with its unit.
    pub name: &'static str,
    /// The unit it is kept in.
    pub unit: Unit,
    /// Least value the field takes, in `unit`.
    pub least: f64,
    /// Greatest value the field takes, in `unit`.
    pub most: f64,
    /// What the field opens with and the code of its origin.
    pub opens_with: Option<(&'static str, &'static str)>,
    /// It may be left empty.
    pub is_optional: bool,
    /// Unit shown where [`Unit`] has none, such as "g/s".
    pub counted_in: &'static str,
}

/// A number that must be given.
pub const fn number(name: &'static str, unit: Unit, least: f64, most: f64) -> Number {
    Number { name, unit, least, most, opens_with: None, is_optional: false, counted_in: "" }
}

impl Number {
    /// The same, opening with common practice.
    #[must_use]
    pub const fn usual(self, text: &'static str) -> Self {
        self.opening(text, "practice")
    }

    /// The same, opening with a text whose origin is named by the key `origin-hint-{origin}`.
    #[must_use]
    pub const fn opening(mut self, text: &'static str, origin: &'static str) -> Self {
        self.opens_with = Some((text, origin));
        self
    }

    /// The same, but it may be left empty.
    #[must_use]
    pub const fn optional(mut self) -> Self {
        self.is_optional = true;
        self
    }

    /// The same with a unit that no other stands for.
    #[must_use]
    pub const fn counted_in(mut self, symbol: &'static str) -> Self {
        self.counted_in = symbol;
        self
    }

    /// The field; its hint says what it opens with and why.
    pub fn field(&self, w: &Words, form: &Form) -> Field {
        let mut field = kit::number(form, w, self.name);
        if !self.counted_in.is_empty() {
            field = field.counted_in(self.counted_in);
        } else if self.unit != Unit::One {
            field = field.unit(self.unit);
        }
        if self.is_optional {
            field = field.optional();
        }
        let Some((text, origin)) = self.opens_with else { return field };
        let from = w.tv(&format!("origin-hint-{origin}"), &[("value", origins::opening(w, self.name, text).into())]);
        let hint = [field.hint_said(), &from].join(" ").trim().to_owned();
        field.hinted(hint)
    }

    /// What was typed; an empty field is a fault unless it is optional.
    pub fn read(&self, form: &mut Form) -> Option<f64> {
        let value = form.opt_number(self.name, self.unit, self.least..=self.most);
        if value.is_none() && !self.is_optional {
            form.fail(self.name, Wrong::Empty);
        }
        value
    }
}

/// What the fields open with.
pub fn openings(numbers: &[Number]) -> Vec<origins::Default> {
    let opens = |one: &Number| one.opens_with.map(|(text, origin)| (one.name.to_owned(), text.to_owned(), origin));
    numbers.iter().filter_map(opens).collect()
}

/// The fields, in order.
pub fn fields(w: &Words, form: &Form, numbers: &[Number]) -> Vec<Field> {
    numbers.iter().map(|one| one.field(w, form)).collect()
}

/// Every number, each fault noted at its field.
pub fn read<const N: usize>(form: &mut Form, numbers: &[Number; N]) -> [Option<f64>; N] {
    numbers.map(|one| one.read(form))
}
