//! A key and its values in, a sentence out.
//!
//! Every word a person reads stands in `templates/words/<language>/*.ftl`. A key that is missing there never stops a
//! page: it shows as a marked key and is logged, and `tests/app/words.rs` fails before that can be shipped.

mod dates;
mod numbers;

use std::borrow::Cow;
use std::collections::HashMap;

use fluent_templates::fluent_bundle::FluentValue;
use fluent_templates::fluent_bundle::types::{FluentNumber, FluentNumberOptions};
use fluent_templates::{LanguageIdentifier, Loader, langid};

pub use numbers::{MINUS, NARROW_SPACE, NO_BREAK};

use crate::unit::Units;

fluent_templates::static_loader! {
    static SENTENCES = {
        locales: "./templates/words",
        fallback_language: "en",
        customise: |bundle| {
            // The isolation marks show as boxes in papers.
            bundle.set_use_isolating(false);
            bundle.set_formatter(Some(number_in_sentence));
        },
    };
}

/// A language the interface can speak.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Language {
    #[default]
    English,
}

impl Language {
    /// Every language, for settings and tests.
    pub const ALL: [Self; 1] = [Self::English];

    /// The tag for `lang=` and for the folder of words (BCP 47).
    pub const fn tag(self) -> &'static str {
        match self {
            Self::English => "en",
        }
    }

    /// The language of this tag, if the interface speaks it.
    pub fn from_tag(tag: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|language| language.tag() == tag)
    }

    const fn id(self) -> LanguageIdentifier {
        match self {
            Self::English => langid!("en"),
        }
    }

    /// Where dates take their order and month names from: "25 November 2026".
    const fn format_tag(self) -> &'static str {
        match self {
            Self::English => "en-GB",
        }
    }
}

/// A handle on one language; copy it freely.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Words {
    language: Language,
    units: Units,
}

/// What a sentence is filled with.
#[derive(Debug, Clone, PartialEq)]
pub enum Value<'a> {
    Text(Cow<'a, str>),
    /// Chooses singular or plural, and prints without decimals.
    Count(i64),
    /// A number and how many decimals it prints with.
    Number(f64, u8),
}

impl Words {
    /// The words of `language`.
    pub const fn new(language: Language) -> Self {
        Self { language, units: Units::KEPT }
    }

    /// The same words, showing quantities in these units.
    #[must_use]
    pub const fn in_units(self, units: Units) -> Self {
        Self { units, ..self }
    }

    /// The same words, showing quantities in the units they are kept in: where a sum is laid out, and on papers.
    #[must_use]
    pub const fn as_kept(self) -> Self {
        self.in_units(Units::KEPT)
    }

    /// The units in which quantities are shown.
    pub const fn units(&self) -> Units {
        self.units
    }

    /// The language spoken.
    pub const fn language(&self) -> Language {
        self.language
    }

    /// The tag for `lang=`.
    pub const fn tag(&self) -> &'static str {
        self.language.tag()
    }

    /// The sentence under `key`; `key.hint` reads an attribute of a message.
    pub fn t(&self, key: impl AsRef<str>) -> String {
        let key = key.as_ref();
        self.find(key).unwrap_or_else(|| missing(key))
    }

    /// The sentence under `key`, or nothing where the language has none.
    pub fn find(&self, key: &str) -> Option<String> {
        SENTENCES.try_lookup(&self.language.id(), key)
    }

    /// The sentence under `key`, with values put in.
    pub fn tv(&self, key: &str, values: &[(&'static str, Value<'_>)]) -> String {
        let values: HashMap<Cow<'static, str>, FluentValue<'_>> =
            values.iter().map(|(name, value)| (Cow::Borrowed(*name), value.to_fluent())).collect();
        SENTENCES.try_lookup_with_args(&self.language.id(), key, &values).unwrap_or_else(|| missing(key))
    }

    /// The head of a column: the words under `key` and, where its attribute `unit` names the unit that its numbers are
    /// kept in, the one they are shown in.
    pub fn head(&self, key: impl AsRef<str>) -> String {
        let key = key.as_ref();
        match self.find(&format!("{key}.unit")) {
            Some(unit) => format!("{}, {}", self.t(key), self.units.symbol(&unit)),
            None => self.t(key),
        }
    }

    /// The sentence under `key` with the count `$n`.
    pub fn tn(&self, key: &str, n: i64) -> String {
        self.tv(key, &[("n", Value::Count(n))])
    }
}

impl Value<'_> {
    fn to_fluent(&self) -> FluentValue<'_> {
        match self {
            Self::Text(text) => FluentValue::String(Cow::Borrowed(text)),
            // Without options, or `[0]` in a sentence would not be the same number.
            Self::Count(count) => FluentValue::Number(FluentNumber::new(*count as f64, FluentNumberOptions::default())),
            Self::Number(value, decimals) => number(*value, *decimals),
        }
    }
}

impl<'a> From<&'a str> for Value<'a> {
    fn from(text: &'a str) -> Self {
        Self::Text(Cow::Borrowed(text))
    }
}

impl<'a> From<&'a String> for Value<'a> {
    fn from(text: &'a String) -> Self {
        Self::Text(Cow::Borrowed(text))
    }
}

impl From<String> for Value<'_> {
    fn from(text: String) -> Self {
        Self::Text(Cow::Owned(text))
    }
}

macro_rules! counts {
    ($($kind:ty),*) => {$(
        impl From<$kind> for Value<'_> {
            fn from(count: $kind) -> Self {
                Self::Count(i64::from(count))
            }
        }
    )*};
}
counts!(i64, i32, u32, u16, u8);

impl From<usize> for Value<'_> {
    fn from(count: usize) -> Self {
        Self::Count(i64::try_from(count).unwrap_or(i64::MAX))
    }
}

fn number(value: f64, decimals: u8) -> FluentValue<'static> {
    let digits = Some(usize::from(decimals));
    let options = FluentNumberOptions {
        minimum_fraction_digits: digits,
        maximum_fraction_digits: digits,
        ..FluentNumberOptions::default()
    };
    FluentValue::Number(FluentNumber::new(value, options))
}

// Fluent hands the bundle's memoizer in; which type that is differs between its bundles, and it is not needed.
fn number_in_sentence<M>(value: &FluentValue, _: &M) -> Option<String> {
    let FluentValue::Number(number) = value else { return None };
    let decimals = number.options.minimum_fraction_digits.and_then(|digits| u8::try_from(digits).ok()).unwrap_or(0);
    Some(numbers::number(Language::English, number.value, decimals))
}

fn missing(key: &str) -> String {
    tracing::error!(key, "no words for this key");
    format!("⟦{key}⟧")
}

#[cfg(test)]
mod tests {
    use super::*;

    const W: Words = Words::new(Language::English);

    #[test]
    fn a_missing_key_shows_itself_marked() {
        assert_eq!(W.t("no-such-key"), "⟦no-such-key⟧");
        assert_eq!(W.tv("no-such-key", &[("n", 3.into())]), "⟦no-such-key⟧");
        assert_eq!(W.find("no-such-key"), None);
    }

    #[test]
    fn a_count_chooses_its_plural_and_prints_grouped() {
        assert_eq!(W.tn("kit-problems", 1), "1 entry needs a look");
        assert_eq!(W.tn("kit-problems", 1200), "1\u{202f}200 entries need a look");
    }

    #[test]
    fn sentences_carry_no_isolation_marks() {
        let sentence = W.tv("wrong-too-long", &[("most", 40.into()), ("got", 41.into())]);
        assert!(!sentence.contains(['\u{2068}', '\u{2069}']), "{sentence}");
        assert!(sentence.contains("40"), "{sentence}");
    }
}
