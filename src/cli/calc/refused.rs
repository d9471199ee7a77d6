//! How `calc` says no: which field, what it got, what it takes. What is physically impossible names no field.

use std::fmt;

use serde::Serialize;
use serde_json::{Value, json};

use super::read::Json;
use crate::calc::{Error, NoRoot, Outside, gas};

/// An input that has no answer.
#[derive(Debug, Clone, PartialEq)]
pub struct Refused {
    /// Dotted path of the field, such as `composition.propane` or `readings[1].km`; none when no field alone is wrong.
    pub field: Option<String>,
    /// What was found there.
    pub got: Found,
    /// What would be taken.
    pub takes: String,
    /// All of it in one sentence.
    pub message: String,
}

/// What was found: a number stays one, anything else is a few words.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(untagged)]
pub enum Found {
    Number(f64),
    Words(String),
}

impl From<f64> for Found {
    fn from(number: f64) -> Self {
        Self::Number(number)
    }
}

impl From<&str> for Found {
    fn from(words: &str) -> Self {
        Self::Words(words.to_owned())
    }
}

impl From<String> for Found {
    fn from(words: String) -> Self {
        Self::Words(words)
    }
}

impl fmt::Display for Found {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Number(number) => Short(*number).fmt(f),
            Self::Words(words) => f.write_str(words),
        }
    }
}

impl Refused {
    /// A field that holds what it cannot take.
    pub fn field(path: impl Into<String>, got: impl Into<Found>, takes: impl Into<String>) -> Self {
        let (path, got, takes) = (path.into(), got.into(), takes.into());
        let message = format!("{path} is {got}; it takes {takes}");
        Self { field: Some(path), got, takes, message }
    }

    /// A state that does not exist, whatever field one would blame.
    pub fn state(got: impl Into<Found>, takes: impl Into<String>, message: impl Into<String>) -> Self {
        Self { field: None, got: got.into(), takes: takes.into(), message: message.into() }
    }

    /// The same with another sentence.
    #[must_use]
    pub fn saying(self, message: impl Into<String>) -> Self {
        Self { message: message.into(), ..self }
    }

    /// A quantity that left its range, found at `path`.
    pub fn outside(path: impl Into<String>, outside: Outside) -> Self {
        let Outside { got, least, most, .. } = outside;
        Self::field(path, got, format!("{} to {}", Short(least), Short(most)))
    }

    /// A refusal of a sum; `mixture` is the field that holds the composition.
    pub fn of(error: Error, mixture: &str) -> Self {
        match error {
            // The fractions were added up when they were read; here too little of the gas burns.
            Error::Outside(outside) if outside.quantity == "composition" => {
                let takes = format!("a gas of which at least {} by mole burns", Short(outside.least));
                Self::field(mixture, outside.got, takes)
                    .saying(format!("{mixture} is no fuel: only {} of it by mole burns", Short(outside.got)))
            }
            Error::Outside(outside) => Self::outside(outside.quantity, outside),
            Error::Unfit { component, share } => {
                let path = format!("{mixture}.{component}");
                let message = format!("{path} is {share}; this sum does not hold for {component} and takes none of it");
                Self::field(path, share, "none of it").saying(message)
            }
            Error::Wet { dew_temperature_c, temperature_c } => Self::state(
                format!("{temperature_c} C"),
                format!("a gas above its dew temperature of {dew_temperature_c:.1} C"),
                format!(
                    "this mixture is partly liquid at {temperature_c} C: its dew temperature at this pressure is {dew_temperature_c:.1} C"
                ),
            ),
            Error::NoRoot(NoRoot { wanted }) => Self::state(
                "a state that does not exist",
                "a state in which the mixture has this property",
                format!("no {wanted} answers: there is no such state of this mixture"),
            ),
        }
    }

    /// As [`Refused::of`], for a sum over a gas. A temperature inside the range of gas states that is refused
    /// nevertheless is one at which the mixture is no gas under its pressure.
    pub fn of_gas(error: Error, mixture: &str) -> Self {
        match error {
            Error::Outside(Outside { quantity, got, least, .. })
                if matches!(quantity, "temperature_c" | "gas_temperature_c")
                    && (gas::COLDEST_C..=gas::HOTTEST_C).contains(&got) =>
            {
                Self::state(
                    format!("{got} C"),
                    format!("a gas, which at this pressure is sure only above {least:.1} C"),
                    format!(
                        "this mixture may be liquid or partly liquid at {got} C: at this pressure no dew temperature \
                         is known, and it is surely a gas only above {least:.1} C"
                    ),
                )
            }
            other => Self::of(other, mixture),
        }
    }

    /// The object that goes to standard output.
    pub fn to_json(&self) -> Value {
        let Self { field, got, takes, message } = self;
        json!({ "error": { "field": field, "got": got, "takes": takes, "message": message } })
    }
}

/// What was found, as a value of the error: numbers stay numbers, everything else becomes a short text.
pub fn found(json: &Json) -> Found {
    const LONGEST: usize = 60;
    match json {
        Json::Null => "null".into(),
        Json::Truth(truth) => truth.to_string().into(),
        Json::Number(number) => Found::Number(*number),
        Json::Text(text) if text.chars().count() > LONGEST => {
            format!("{}...", text.chars().take(LONGEST).collect::<String>()).into()
        }
        Json::Text(text) => text.as_str().into(),
        Json::List(list) => format!("a list of {}", list.len()).into(),
        Json::Object(_) => "an object".into(),
    }
}

/// A number without the dust of binary and without exponents where they help nobody.
struct Short(f64);

impl fmt::Display for Short {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let rounded = (self.0 * 1e9).round() / 1e9;
        if self.0 == 0.0 || (1e-6..1e12).contains(&rounded.abs()) {
            write!(f, "{rounded}")
        } else {
            write!(f, "{:e}", self.0)
        }
    }
}
