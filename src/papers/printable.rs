//! Content with every letter that no face has spelled as its number: papers come out all the same. Names are no part of
//! that; whoever issues asks for a spelling first.

use std::fmt::Write as _;

use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::Value;

use super::{PaperError, fonts};

/// The same content; "[U+1F9F0]" stands for a character that papers cannot print.
pub fn printable<T: Serialize + DeserializeOwned>(content: &T) -> Result<T, PaperError> {
    let mut value = serde_json::to_value(content).map_err(|error| PaperError::File(error.to_string()))?;
    spell(&mut value);
    serde_json::from_value(value).map_err(|error| PaperError::File(error.to_string()))
}

fn spell(value: &mut Value) {
    match value {
        Value::String(text) if fonts::first_unprintable(text).is_some() => *text = spelled(text),
        Value::Array(items) => items.iter_mut().for_each(spell),
        Value::Object(members) => members.values_mut().for_each(spell),
        _ => {}
    }
}

fn spelled(text: &str) -> String {
    let mut out = String::new();
    for c in text.chars() {
        match fonts::first_unprintable(&c.to_string()) {
            None => out.push(c),
            // Writing into a String cannot fail.
            Some(_) => drop(write!(out, "[U+{:04X}]", u32::from(c))),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_is_lost_and_nothing_stops_the_paper() {
        let notes = vec!["Hose 田 \u{1f9f0}".to_owned(), "plain".to_owned()];
        let spelled: Vec<String> = printable(&notes).unwrap();
        assert_eq!(spelled, ["Hose [U+7530] [U+1F9F0]", "plain"]);
        assert!(spelled.iter().all(|text| fonts::first_unprintable(text).is_none()));
    }
}
