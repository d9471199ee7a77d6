//! The fields of an object, each taken as the type that its sum wants. A field that is missing, unknown, null or of
//! another type is an error that names it.

use std::collections::BTreeMap;

use time::Date;
use time::macros::format_description;

use super::read::Json;
use super::refused::{Found, Refused, found};
use crate::calc::Composition;
use crate::calc::composition::{SUM_TOLERANCE, Shares};
use crate::calc::substance::Component;

/// An object whose fields are all known and whose required ones are all there.
#[derive(Debug, Clone)]
pub struct Fields<'a> {
    /// Path of the object with its dot; empty at the top.
    path: String,
    all: &'a BTreeMap<String, Json>,
}

impl<'a> Fields<'a> {
    /// Holds an object against the names that it must and may have.
    ///
    /// # Errors
    /// [`Refused`] names the first field that is unknown or missing.
    pub fn of(
        path: &str,
        all: &'a BTreeMap<String, Json>,
        required: &[&str],
        optional: &[&str],
    ) -> Result<Self, Refused> {
        let path = if path.is_empty() { String::new() } else { format!("{path}.") };
        let known: Vec<&str> = required.iter().chain(optional).copied().collect();
        if let Some((name, value)) = all.iter().find(|(name, _)| !known.contains(&name.as_str())) {
            let field = format!("{path}{}", name.chars().take(80).collect::<String>());
            let message = format!("{field} is not known here; the fields are {}", known.join(", "));
            return Err(Refused::field(field, found(value), format!("no such field, only {}", known.join(", ")))
                .saying(message));
        }
        if let Some(name) = required.iter().find(|name| !all.contains_key(**name)) {
            let field = format!("{path}{name}");
            let message = format!("{field} is missing");
            return Err(Refused::field(field, "nothing", "a value").saying(message));
        }
        Ok(Self { path, all })
    }

    fn path(&self, name: &str) -> String {
        format!("{}{name}", self.path)
    }

    fn wrong(&self, name: &str, value: &Json, takes: &str) -> Refused {
        typed_wrong(self.path(name), value, takes)
    }

    fn get(&self, name: &str) -> Result<&'a Json, Refused> {
        let missing = || Refused::field(self.path(name), "nothing", "a value");
        self.all.get(name).ok_or_else(missing)
    }

    /// True when the field is there.
    pub fn has(&self, name: &str) -> bool {
        self.all.contains_key(name)
    }

    /// Reads an optional field, where it is there, as `read` does.
    pub fn optional<T>(
        &self,
        name: &str,
        read: impl FnOnce(&Self, &str) -> Result<T, Refused>,
    ) -> Result<Option<T>, Refused> {
        self.has(name).then(|| read(self, name)).transpose()
    }

    /// A number.
    pub fn number(&self, name: &str) -> Result<f64, Refused> {
        number(self.get(name)?, || self.path(name))
    }

    /// A whole number from 0 on; 4.0 is one.
    pub fn whole(&self, name: &str) -> Result<u32, Refused> {
        let value = self.get(name)?;
        match value {
            #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "whole and within u32")]
            Json::Number(x) if x.fract() == 0.0 && (0.0..=f64::from(u32::MAX)).contains(x) => Ok(*x as u32),
            other => Err(self.wrong(name, other, "a whole number from 0 on")),
        }
    }

    /// A text.
    pub fn text(&self, name: &str) -> Result<&'a str, Refused> {
        match self.get(name)? {
            Json::Text(text) => Ok(text),
            other => Err(self.wrong(name, other, "a text")),
        }
    }

    /// One of a few words, each standing for a value.
    pub fn choice<T: Copy>(&self, name: &str, choices: &[(&str, T)]) -> Result<T, Refused> {
        let value = self.get(name)?;
        let chosen = choices.iter().find(|(word, _)| matches!(value, Json::Text(text) if text == word));
        let words = || choices.iter().map(|(word, _)| *word).collect::<Vec<_>>().join(", ");
        chosen.map(|(_, value)| *value).ok_or_else(|| self.wrong(name, value, &format!("one of {}", words())))
    }

    /// A day, written as year, month and day: `2026-11-25`.
    pub fn date(&self, name: &str) -> Result<Date, Refused> {
        let value = self.get(name)?;
        let read = match value {
            // Ten characters: the parser itself would take a sign and longer years.
            Json::Text(text) if text.len() == 10 => Date::parse(text, format_description!("[year]-[month]-[day]")).ok(),
            _ => None,
        };
        read.ok_or_else(|| self.wrong(name, value, "a day of the calendar as YYYY-MM-DD"))
    }

    /// A list, each entry with its path.
    pub fn list(&self, name: &str) -> Result<Vec<(String, &'a Json)>, Refused> {
        match self.get(name)? {
            Json::List(list) => {
                Ok(list.iter().enumerate().map(|(i, value)| (format!("{}[{i}]", self.path(name)), value)).collect())
            }
            other => Err(self.wrong(name, other, "a list")),
        }
    }

    /// A list of numbers.
    pub fn numbers(&self, name: &str) -> Result<Vec<f64>, Refused> {
        self.list(name)?.into_iter().map(|(path, value)| number(value, || path)).collect()
    }

    /// A list of objects with the same required fields.
    pub fn objects(&self, name: &str, required: &[&str]) -> Result<Vec<Self>, Refused> {
        let entry = |(path, value): (String, &'a Json)| match value {
            Json::Object(all) => Fields::of(&path, all, required, &[]),
            other => Err(typed_wrong(path, other, &format!("an object with {}", required.join(", ")))),
        };
        self.list(name)?.into_iter().map(entry).collect()
    }

    /// A composition: an object of mole fractions by component.
    pub fn composition(&self, name: &str) -> Result<Composition, Refused> {
        let names = Component::ALL.map(Component::key);
        let all = match self.get(name)? {
            Json::Object(all) => all,
            other => {
                return Err(self.wrong(name, other, &format!("an object of mole fractions of {}", names.join(", "))));
            }
        };
        let shares = Fields::of(&self.path(name), all, &[], &names)?;
        let mut mole = [0.0; 9];
        for (share, name) in mole.iter_mut().zip(names) {
            *share = shares.optional(name, Fields::number)?.unwrap_or(0.0);
        }
        Composition::from_mole(Shares::from_array(mole)).map_err(|outside| {
            if outside.quantity != "composition" {
                return Refused::outside(shares.path(outside.quantity), outside);
            }
            let (path, sum) = (self.path(name), outside.got);
            let message = format!("the mole fractions of {path} sum to {sum}; they take 1 within {SUM_TOLERANCE}");
            Refused::field(path, sum, format!("mole fractions that sum to 1 within {SUM_TOLERANCE}")).saying(message)
        })
    }
}

fn number(value: &Json, path: impl FnOnce() -> String) -> Result<f64, Refused> {
    match value {
        Json::Number(number) => Ok(*number),
        other => Err(typed_wrong(path(), other, "a number")),
    }
}

/// The type is in the sentence, because "15" and 15 look alike without it.
fn typed_wrong(path: String, value: &Json, takes: &str) -> Refused {
    let got = found(value);
    let message = match (value, &got) {
        (Json::Text(_), Found::Words(text)) => format!("{path} is the text {text:?}; it takes {takes}"),
        _ => format!("{path} is {got}; it takes {takes}"),
    };
    Refused::field(path, got, takes).saying(message)
}
