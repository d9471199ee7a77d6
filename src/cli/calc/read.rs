//! Strict reading: one JSON object of at most 1 MB, valid UTF-8, no key twice at any depth, nothing before or after it.
//! The error names the field in which the text broke.

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::fmt;

use super::refused::{Refused, found};
use serde::de::{DeserializeSeed, Deserializer, Error as _, MapAccess, SeqAccess, Visitor};

/// Most bytes read.
pub const MOST_BYTES: usize = 1_000_000;
const ONE_OBJECT: &str = "one JSON object";

/// A JSON value in which no key was written twice.
#[derive(Debug, Clone, PartialEq)]
pub enum Json {
    Null,
    Truth(bool),
    Number(f64),
    Text(String),
    List(Vec<Json>),
    Object(BTreeMap<String, Json>),
}

/// Reads the object that `bytes` hold.
///
/// # Errors
/// [`Refused`] for anything that is not exactly one such object.
pub fn object(bytes: &[u8]) -> Result<BTreeMap<String, Json>, Refused> {
    let whole = |got: &str, message: &str| Refused::state(got, ONE_OBJECT, message);
    if bytes.len() > MOST_BYTES {
        let message = format!("the input is longer than {MOST_BYTES} bytes");
        return Err(Refused::state("more than 1 MB", "at most 1 MB", message));
    }
    if bytes.starts_with(b"\xef\xbb\xbf") {
        return Err(whole(
            "a byte order mark",
            "the input begins with a byte order mark; it takes one JSON object alone",
        ));
    }
    let text = std::str::from_utf8(bytes).map_err(|error| {
        let message = format!("the input is no UTF-8 text from byte {} on", error.valid_up_to() + 1);
        Refused::state("bytes that are no UTF-8", "UTF-8 text", message)
    })?;
    let place = Place::default();
    let mut reader = serde_json::Deserializer::from_str(text);
    let read = Read(&place).deserialize(&mut reader).map_err(|error| place.refused(text, &error))?;
    reader.end().map_err(|_| {
        whole("more after the object", "there is something after the JSON object; it takes one object alone")
    })?;
    match read {
        Json::Object(object) => Ok(object),
        other => Err(Refused::state(found(&other), ONE_OBJECT, "the input is not a JSON object")),
    }
}

/// Where the reader stands, and where it broke.
#[derive(Default)]
struct Place {
    /// Dotted path of the value being read.
    path: RefCell<String>,
    /// Path of the innermost value that did not read.
    broken: RefCell<Option<String>>,
    is_twice: RefCell<bool>,
}

impl Place {
    /// Reads one value under a name; the path is longer meanwhile. The first failure keeps its path.
    fn under<T, E>(&self, name: &str, read: impl FnOnce() -> Result<T, E>) -> Result<T, E> {
        let before = self.path.borrow().len();
        self.path.borrow_mut().push_str(name);
        let got = read();
        if got.is_err() {
            self.broken.borrow_mut().get_or_insert_with(|| self.path.borrow().clone());
        }
        self.path.borrow_mut().truncate(before);
        got
    }

    /// A value such as `0x10` reads as far as `0`, and only the search for the next comma fails: the value before is meant.
    fn after<T, E: fmt::Display>(&self, name: Option<String>, read: impl FnOnce() -> Result<T, E>) -> Result<T, E> {
        read().or_else(|error| match name {
            Some(name) if error.to_string().starts_with("expected `,`") => self.under(&name, || Err(error)),
            _ => Err(error),
        })
    }

    fn dot(&self, key: &str) -> String {
        // A key is as long as somebody made it; a path has to stay readable.
        let key: String = key.chars().take(80).collect();
        if self.path.borrow().is_empty() { key } else { format!(".{key}") }
    }

    fn refused(&self, text: &str, error: &serde_json::Error) -> Refused {
        let path = self.broken.take();
        if self.is_twice.take() {
            let path = path.unwrap_or_default();
            let message = format!("{path} is there twice; it takes one value");
            return Refused::field(path, "the same key twice", "one value").saying(message);
        }
        let why = if error.is_eof() { "the input ends in the middle".to_owned() } else { error.to_string() };
        match path {
            Some(path) => {
                let got = token(text, error);
                let message = format!("{path} is {got}, which does not read as JSON: {why}");
                Refused::field(path, got, "a JSON value; numbers up to 1.8e308").saying(message)
            }
            None => Refused::state(token(text, error), ONE_OBJECT, format!("the input is not one JSON object: {why}")),
        }
    }
}

/// The word at which the reader stopped, such as `1e400` or `NaN`.
fn token(text: &str, error: &serde_json::Error) -> String {
    let line = text.split('\n').nth(error.line().saturating_sub(1)).unwrap_or_default();
    let is_edge = |c: char| c.is_whitespace() || "{}[]:,\"".contains(c);
    // The column counts bytes and may point at the word's last character or behind it.
    let mut at = error.column().saturating_sub(1).min(line.len());
    while !line.is_char_boundary(at) {
        at -= 1;
    }
    let (before, after) = line.split_at(at);
    let start = before.rfind(is_edge).map_or(0, |edge| edge + 1);
    let end = after.find(is_edge).map_or(line.len(), |edge| at + edge);
    let word: String = line.get(start..end).unwrap_or_default().chars().take(60).collect();
    if word.is_empty() { "not readable".to_owned() } else { word }
}

/// Reads one value of any kind.
#[derive(Clone, Copy)]
struct Read<'p>(&'p Place);

impl<'de> DeserializeSeed<'de> for Read<'_> {
    type Value = Json;

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<Json, D::Error> {
        deserializer.deserialize_any(self)
    }
}

/// Reads one entry of a list under its place.
struct Entry<'p>(&'p Place, &'p str);

impl<'de> DeserializeSeed<'de> for Entry<'_> {
    type Value = Json;

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<Json, D::Error> {
        self.0.under(self.1, || Read(self.0).deserialize(deserializer))
    }
}

impl<'de> Visitor<'de> for Read<'_> {
    type Value = Json;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a JSON value")
    }

    fn visit_unit<E>(self) -> Result<Json, E> {
        Ok(Json::Null)
    }

    fn visit_bool<E>(self, truth: bool) -> Result<Json, E> {
        Ok(Json::Truth(truth))
    }

    fn visit_i64<E>(self, number: i64) -> Result<Json, E> {
        Ok(Json::Number(number as f64))
    }

    fn visit_u64<E>(self, number: u64) -> Result<Json, E> {
        Ok(Json::Number(number as f64))
    }

    fn visit_f64<E>(self, number: f64) -> Result<Json, E> {
        Ok(Json::Number(number))
    }

    fn visit_str<E>(self, text: &str) -> Result<Json, E> {
        Ok(Json::Text(text.to_owned()))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut seq: A) -> Result<Json, A::Error> {
        let mut list = Vec::new();
        loop {
            let last = list.len().checked_sub(1).map(|last| format!("[{last}]"));
            let here = format!("[{}]", list.len());
            let next = self.0.after(last, || seq.next_element_seed(Entry(self.0, &here)))?;
            let Some(value) = next else { return Ok(Json::List(list)) };
            list.push(value);
        }
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Json, A::Error> {
        let mut object = BTreeMap::new();
        let mut last = None;
        while let Some(key) = self.0.after(last.take(), || map.next_key::<String>())? {
            let value = self.0.under(&self.0.dot(&key), || {
                if object.contains_key(&key) {
                    self.0.is_twice.replace(true);
                    return Err(A::Error::custom("the same key twice"));
                }
                map.next_value_seed(self)
            })?;
            last = Some(self.0.dot(&key));
            object.insert(key, value);
        }
        Ok(Json::Object(object))
    }
}
