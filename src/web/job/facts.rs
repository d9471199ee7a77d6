//! An entry shown again: label and value, line by line. One place for the stage page, the history and two versions side
//! by side.

use crate::model::Coded;
use crate::web::form::Form;
use crate::words::Words;

/// A label and what stands behind it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fact {
    /// Label, in words.
    pub label: String,
    /// Value, in words.
    pub value: String,
}

/// Collects facts under the labels of a form's scope.
#[derive(Debug)]
pub struct Facts {
    w: Words,
    form: Form,
    all: Vec<Fact>,
}

impl Facts {
    /// None yet; labels as in forms of this scope.
    pub fn new(w: Words, scope: &'static str) -> Self {
        Self { w, form: Form::blank().scoped(scope), all: Vec::new() }
    }

    /// The facts.
    pub fn done(self) -> Vec<Fact> {
        self.all
    }

    /// A text; an empty one is left out.
    #[must_use]
    pub fn text(mut self, name: &str, value: impl Into<String>) -> Self {
        let value = value.into();
        if !value.is_empty() {
            let label = crate::web::kit::label(&self.form, &self.w, name);
            self.all.push(Fact { label, value });
        }
        self
    }

    /// A number with its unit.
    #[must_use]
    pub fn number(self, name: &str, value: f64, decimals: u8, unit: &str) -> Self {
        let shown = self.w.quantity(value, decimals, unit);
        self.text(name, shown)
    }

    /// A number that may be unknown.
    #[must_use]
    pub fn opt_number(self, name: &str, value: Option<f64>, decimals: u8, unit: &str) -> Self {
        match value {
            Some(value) => self.number(name, value, decimals, unit),
            None => self,
        }
    }

    /// Yes or no.
    #[must_use]
    pub fn yes_no(self, name: &str, value: bool) -> Self {
        let shown = self.w.t(if value { "kit-yes" } else { "kit-no" });
        self.text(name, shown)
    }

    /// A member of a closed list.
    #[must_use]
    pub fn coded<T: Coded>(self, name: &str, value: T) -> Self {
        let shown = self.w.t(format!("{}-{}", T::LIST, value.code()));
        self.text(name, shown)
    }
}
