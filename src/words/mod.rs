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
            let formatters: [fn(&FluentValue, &_) -> Option<String>; Language::PAPERS.len()] = [
                number_in_sentence::<0, _>,
                number_in_sentence::<1, _>,
                number_in_sentence::<2, _>,
                number_in_sentence::<3, _>,
                number_in_sentence::<4, _>,
                number_in_sentence::<5, _>,
                number_in_sentence::<6, _>,
                number_in_sentence::<7, _>,
            ];
            let spoken = Language::PAPERS.iter().position(|one| bundle.locales.first() == Some(&one.id()));
            bundle.set_formatter(Some(formatters[spoken.unwrap_or_default()]));
        },
    };
}

/// A language that something of ours is written in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Language {
    #[default]
    English,
    German,
    Polish,
    Italian,
    Spanish,
    Turkish,
    French,
    Dutch,
}

impl Language {
    /// What the screens of the shop and its certificates and records speak: languages whose every word is there.
    pub const INTERFACE: [Self; 1] = [Self::English];

    /// What a customer can be written to in: the customer's own page, owner's sheet, letters and mails.
    pub const PAPERS: [Self; 8] = [
        Self::English,
        Self::German,
        Self::Polish,
        Self::Italian,
        Self::Spanish,
        Self::Turkish,
        Self::French,
        Self::Dutch,
    ];

    /// The tag for `lang=` and for the folder of words (BCP 47).
    pub const fn tag(self) -> &'static str {
        match self {
            Self::English => "en",
            Self::German => "de",
            Self::Polish => "pl",
            Self::Italian => "it",
            Self::Spanish => "es",
            Self::Turkish => "tr",
            Self::French => "fr",
            Self::Dutch => "nl",
        }
    }

    /// The language of this tag, if the screens speak it.
    pub fn from_tag(tag: &str) -> Option<Self> {
        among(&Self::INTERFACE, tag)
    }

    /// The language of this tag, if a customer can be written to in it.
    pub fn of_papers(tag: &str) -> Option<Self> {
        among(&Self::PAPERS, tag)
    }

    /// What a customer is written to in: the language of the first of these tags that papers speak, the customer's
    /// before the branch's; English where they speak none of them.
    pub fn for_customer<'a>(tags: impl IntoIterator<Item = &'a str>) -> Self {
        tags.into_iter().find_map(Self::of_papers).unwrap_or_default()
    }

    const fn id(self) -> LanguageIdentifier {
        match self {
            Self::English => langid!("en"),
            Self::German => langid!("de"),
            Self::Polish => langid!("pl"),
            Self::Italian => langid!("it"),
            Self::Spanish => langid!("es"),
            Self::Turkish => langid!("tr"),
            Self::French => langid!("fr"),
            Self::Dutch => langid!("nl"),
        }
    }

    /// Where dates and decimals take their manner from: "25 November 2026".
    const fn format_tag(self) -> &'static str {
        match self {
            Self::English => "en-GB",
            other => other.tag(),
        }
    }
}

/// A tag names its language by its first part: "de-AT" is German.
fn among(languages: &[Language], tag: &str) -> Option<Language> {
    let first = tag.split(['-', '_']).next().unwrap_or(tag).trim();
    languages.iter().copied().find(|language| language.tag().eq_ignore_ascii_case(first))
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
    /// The words in which a customer is written to: see [`Language::for_customer`].
    pub fn for_customer<'a>(tags: impl IntoIterator<Item = &'a str>) -> Self {
        Self::new(Language::for_customer(tags))
    }

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
/// A number as the language at this place of [`Language::PAPERS`] writes it; a formatter can hold nothing else.
fn number_in_sentence<const AT: usize, M>(value: &FluentValue, _: &M) -> Option<String> {
    let FluentValue::Number(number) = value else { return None };
    let decimals = number.options.minimum_fraction_digits.and_then(|digits| u8::try_from(digits).ok()).unwrap_or(0);
    Some(numbers::number(Language::PAPERS[AT], number.value, decimals))
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
    fn each_language_has_its_own_plurals_and_decimals() {
        // Plural rules of CLDR: Polish tells one, few (2 to 4, 22 to 24, not 12 to 14) and many apart.
        let polish = Words::new(Language::Polish);
        let months = [1, 2, 5, 12, 22, 25].map(|n| polish.tn("paper-due-months", n));
        assert_eq!(months, ["1 miesiąc", "2 miesiące", "5 miesięcy", "12 miesięcy", "22 miesiące", "25 miesięcy"]);
        assert_eq!(Words::new(Language::French).tn("kit-problems", 0), "0 saisie à revoir");
        assert_eq!(Words::new(Language::German).tn("kit-problems", 0), "0 Eingaben brauchen einen Blick");
        let values = [("most", Value::Number(1.5, 1)), ("got", 1200.into())];
        let said = Words::new(Language::Dutch).tv("wrong-too-long", &values);
        assert_eq!(said, "Hoogstens 1,5 tekens; dit zijn er 1\u{202f}200");
    }

    #[test]
    fn a_customer_is_written_to_in_their_language_then_the_branch_s_then_english() {
        assert_eq!(Language::for_customer(["pl", "de"]), Language::Polish);
        assert_eq!(Language::for_customer(["de-AT", "en"]), Language::German);
        assert_eq!(Language::for_customer(["pt", "ES"]), Language::Spanish);
        assert_eq!(Language::for_customer(["pt", ""]), Language::English);
        assert_eq!(Language::from_tag("de"), None, "no screen speaks half a language");
    }

    #[test]
    fn sentences_carry_no_isolation_marks() {
        let sentence = W.tv("wrong-too-long", &[("most", 40.into()), ("got", 41.into())]);
        assert!(!sentence.contains(['\u{2068}', '\u{2069}']), "{sentence}");
        assert!(sentence.contains("40"), "{sentence}");
    }
}
