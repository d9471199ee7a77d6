//! What a sum gives back: its fields in the order of the contract, then method, sources and warnings. Nothing in it is
//! NaN, and nothing is null unless the row says so.

use std::fmt::Display;

use serde::Serialize;
use serde_json::{Map, Value, json};

use super::refused::Refused;
use crate::calc::{Basis, Source};

/// An answer before it is printed.
#[derive(Debug)]
pub struct Answer {
    fields: Map<String, Value>,
    basis: &'static Basis,
    warnings: Vec<String>,
}

impl Answer {
    /// An answer that rests on `basis`; its warnings as the sum gave them.
    pub fn on(basis: &'static Basis, warnings: &[impl Display]) -> Self {
        let warnings = warnings.iter().map(ToString::to_string).collect();
        Self { fields: Map::new(), basis, warnings }
    }

    /// One field more; what has no number, text or truth in it becomes null, and `finish` looks at those.
    #[must_use]
    pub fn with(mut self, name: &str, value: impl Serialize) -> Self {
        let value = match serde_json::to_value(value).unwrap_or(Value::Null) {
            // -0 is a zero that prints with a sign.
            Value::Number(zero) if zero.as_f64() == Some(0.0) && zero.is_f64() => json!(0.0),
            value => value,
        };
        self.fields.insert(name.to_owned(), value);
        self
    }

    /// One warning more, where it holds.
    #[must_use]
    pub fn warning_if(mut self, holds: bool, warning: impl Into<String>) -> Self {
        if holds {
            self.warnings.push(warning.into());
        }
        self
    }

    /// The object that goes to standard output; the fields named in `may_be_null` may be.
    ///
    /// # Errors
    /// [`Refused`] when another one is: a number that is none must not leave the program.
    pub fn finish(self, may_be_null: &[&str]) -> Result<Value, Refused> {
        let mut all = self.fields;
        if let Some((name, _)) =
            all.iter().find(|(name, value)| value.is_null() && !may_be_null.contains(&name.as_str()))
        {
            let message = format!("no {name} answers: there is no such state");
            return Err(Refused::state("a state without an answer", "a state that has one", message));
        }
        all.insert("method".to_owned(), json!(self.basis.method));
        all.insert(
            "sources".to_owned(),
            json!(self.basis.sources.iter().map(|s| Source::citation(*s)).collect::<Vec<_>>()),
        );
        all.insert("warnings".to_owned(), json!(self.warnings));
        Ok(Value::Object(all))
    }
}
