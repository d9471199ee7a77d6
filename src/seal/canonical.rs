//! The one byte form of a content: RFC 8785, narrowed to whole numbers.
//!
//! Floats are refused, because two machines may print one number in two ways and a reader could not tell. Whole
//! numbers beyond 2^53 - 1 are refused too: JSON readers lose their last digits (RFC 8785, appendix D).

use std::fmt;

use serde::Serialize;
use serde_json::Value;
use unicode_normalization::UnicodeNormalization;

/// Largest whole number that every JSON reader keeps.
const LARGEST: u64 = (1 << 53) - 1;

/// Why a content has no canonical form.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum CanonicalError {
    /// It holds a number that is no whole number within ±(2^53 - 1).
    Number(String),
    /// It cannot be written as JSON.
    NotJson(String),
    /// It is JSON, but not in canonical form.
    NotCanonical,
}

impl fmt::Display for CanonicalError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Number(number) => write!(f, "signed content holds the number {number}, which is no whole number"),
            Self::NotJson(why) => write!(f, "not JSON: {why}"),
            Self::NotCanonical => f.write_str("the JSON is not in its canonical form (RFC 8785)"),
        }
    }
}

impl std::error::Error for CanonicalError {}

/// Canonical bytes of a content as it stands.
pub fn canonical<T: Serialize>(content: &T) -> Result<Vec<u8>, CanonicalError> {
    let value = serde_json::to_value(content).map_err(|e| CanonicalError::NotJson(e.to_string()))?;
    let mut out = String::new();
    write(&value, &mut out)?;
    Ok(out.into_bytes())
}

/// Canonical bytes after every text was brought to Unicode normal form C, so that "é" typed in one or in two code
/// points signs and compares alike. Print from these bytes, not from what was typed.
pub fn freeze<T: Serialize>(content: &T) -> Result<Vec<u8>, CanonicalError> {
    let mut value = serde_json::to_value(content).map_err(|e| CanonicalError::NotJson(e.to_string()))?;
    compose(&mut value);
    canonical(&value)
}

/// Reads bytes that claim to be canonical, and refuses them when writing them again gives other bytes: a doubled
/// name, a float, a stray space.
pub fn read_canonical(bytes: &[u8]) -> Result<Value, CanonicalError> {
    let value: Value = serde_json::from_slice(bytes).map_err(|e| CanonicalError::NotJson(e.to_string()))?;
    if canonical(&value)? == bytes { Ok(value) } else { Err(CanonicalError::NotCanonical) }
}

fn compose(value: &mut Value) {
    match value {
        Value::String(text) => *text = text.nfc().collect(),
        Value::Array(items) => items.iter_mut().for_each(compose),
        Value::Object(members) => members.values_mut().for_each(compose),
        _ => {}
    }
}

fn write(value: &Value, out: &mut String) -> Result<(), CanonicalError> {
    match value {
        Value::Null => out.push_str("null"),
        Value::Bool(truth) => out.push_str(if *truth { "true" } else { "false" }),
        Value::Number(number) => match number.as_i64() {
            Some(whole) if whole.unsigned_abs() <= LARGEST => out.push_str(&whole.to_string()),
            _ => return Err(CanonicalError::Number(number.to_string())),
        },
        Value::String(text) => write_text(text, out)?,
        Value::Array(items) => {
            out.push('[');
            for (index, item) in items.iter().enumerate() {
                if index > 0 {
                    out.push(',');
                }
                write(item, out)?;
            }
            out.push(']');
        }
        Value::Object(members) => {
            let mut sorted: Vec<_> = members.iter().collect();
            // RFC 8785, 3.2.3: by UTF-16 code units, which is not the order of UTF-8 bytes beyond U+FFFF.
            sorted.sort_by(|a, b| a.0.encode_utf16().cmp(b.0.encode_utf16()));
            out.push('{');
            for (index, (name, item)) in sorted.into_iter().enumerate() {
                if index > 0 {
                    out.push(',');
                }
                write_text(name, out)?;
                out.push(':');
                write(item, out)?;
            }
            out.push('}');
        }
    }
    Ok(())
}

fn write_text(text: &str, out: &mut String) -> Result<(), CanonicalError> {
    // serde_json escapes exactly what RFC 8785, 3.2.2.2 asks: the two-letter forms, then \u00xx in lower case.
    out.push_str(&serde_json::to_string(text).map_err(|e| CanonicalError::NotJson(e.to_string()))?);
    Ok(())
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::*;

    fn text(value: &Value) -> String {
        String::from_utf8(canonical(value).unwrap()).unwrap()
    }

    #[test]
    fn names_sort_as_rfc_8785_section_3_2_3_shows() {
        let sample: Value = serde_json::from_str(
            r#"{"\u20ac":"Euro Sign","\r":"Carriage Return","\ufb33":"Hebrew Letter Dalet With Dagesh","1":"One",
                "\ud83d\ude00":"Emoji: Grinning Face","\u0080":"Control",
                "\u00f6":"Latin Small Letter O With Diaeresis"}"#,
        )
        .unwrap();
        let written = text(&sample);
        let places: Vec<_> = ["Carriage", "One", "Control", "Latin", "Euro", "Emoji", "Hebrew"]
            .iter()
            .map(|word| written.find(word).unwrap())
            .collect();
        assert!(places.is_sorted(), "{written}");
    }

    #[test]
    fn texts_and_literals_are_written_as_rfc_8785_section_3_2_2_shows() {
        let sample: Value = serde_json::from_str(
            r#"{"string":"\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/","literals":[null,true,false]}"#,
        )
        .unwrap();
        assert_eq!(text(&sample), r#"{"literals":[null,true,false],"string":"€$\u000f\nA'B\"\\\\\"/"}"#);
    }

    #[test]
    fn floats_and_numbers_beyond_2_53_are_refused() {
        for value in
            [json!({"a": 1.0}), json!([1e3]), json!(9_007_199_254_740_992_i64), json!(u64::MAX), json!(i64::MIN)]
        {
            assert!(matches!(canonical(&value), Err(CanonicalError::Number(_))), "{value}");
        }
        assert_eq!(text(&json!([-9_007_199_254_740_991_i64, 0])), "[-9007199254740991,0]");
    }

    #[test]
    fn bytes_that_are_not_canonical_are_refused() {
        assert!(read_canonical(br#"{"a":1,"b":2}"#).is_ok());
        for wrong in [r#"{"b":2,"a":1}"#, r#"{"a": 1}"#, r#"{"a":1,"a":2}"#, r#"{"a":"\u0041"}"#] {
            assert_eq!(read_canonical(wrong.as_bytes()), Err(CanonicalError::NotCanonical), "{wrong}");
        }
    }

    #[test]
    fn one_text_typed_in_two_ways_freezes_alike() {
        assert_eq!(freeze(&json!({"n": "Ren\u{e9}"})), freeze(&json!({"n": "Rene\u{301}"})));
        assert_ne!(canonical(&json!("\u{e9}")), canonical(&json!("e\u{301}")));
    }
}
