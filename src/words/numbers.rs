//! Numbers as our pages and papers print them: "128 430", "20.0 °C", "EUR 1 234.50".
//!
//! Groups of three are parted by a narrow no-break space in every language (SI Brochure, 9th edition, 5.4.4); the
//! decimal sign is the language's. A minus is U+2212.

use icu_decimal::input::Decimal;
use icu_decimal::options::{DecimalFormatterOptions, GroupingStrategy};
use icu_decimal::{DecimalFormatter, DecimalFormatterPreferences};
use icu_locale::Locale;

use super::{Language, Words};
use crate::unit::{fixed, minor_digits};

/// Between groups of digits, and between a number and its unit.
pub const NARROW_SPACE: char = '\u{202f}';
/// Between words that stay on one line.
pub const NO_BREAK: char = '\u{a0}';
/// The sign before a number below zero.
pub const MINUS: char = '\u{2212}';

impl Words {
    /// A whole number in groups of three.
    pub fn integer(&self, value: i64) -> String {
        dress(self.language, &value.to_string())
    }

    /// A number with exactly `decimals` decimals.
    pub fn number(&self, value: f64, decimals: u8) -> String {
        number(self.language, value, decimals)
    }

    /// A number of this unit, shown in the shop's without its symbol: for a column whose head has it.
    pub fn figure(&self, value: f64, decimals: u8, unit: &str) -> String {
        let (value, decimals, _) = self.units.showing(value, decimals, unit);
        self.number(value, decimals)
    }

    /// A number and its unit on one line, in the shop's unit: "2.1 bar". `decimals` are those of the unit it is kept in.
    pub fn quantity(&self, value: f64, decimals: u8, unit: &str) -> String {
        let (value, decimals, unit) = self.units.showing(value, decimals, unit);
        self.with_unit(value, decimals, unit)
    }

    /// A difference of two quantities: "18 °F" for a rise of 10 °C.
    pub fn difference(&self, value: f64, decimals: u8, unit: &str) -> String {
        let (value, decimals, unit) = self.units.showing_difference(value, decimals, unit);
        self.with_unit(value, decimals, unit)
    }

    fn with_unit(&self, value: f64, decimals: u8, unit: &str) -> String {
        // "6 000/min", "20°": what is written as a sign or a fraction stands close (SI Brochure, 5.4.3, for the degree).
        let gap = if unit.starts_with('/') || unit == "°" { "" } else { "\u{a0}" };
        format!("{}{gap}{unit}", self.number(value, decimals))
    }

    /// From one number to another, with their unit: "20.0–25.0 kPa".
    pub fn span(&self, least: f64, most: f64, decimals: u8, unit: &str) -> String {
        format!("{}–{}", self.figure(least, decimals, unit), self.quantity(most, decimals, unit))
    }

    /// An amount of money kept in minor units, after its currency code (ISO 4217).
    pub fn money(&self, minor: i64, currency: &str) -> String {
        format!("{currency}{NO_BREAK}{}", self.amount(minor, currency))
    }

    /// The same without the code: for a column whose head has it.
    pub fn amount(&self, minor: i64, currency: &str) -> String {
        self.decimal(minor, minor_digits(currency))
    }

    /// A change of an amount, with its sign: "+120.00".
    pub fn change(&self, minor: i64, currency: &str) -> String {
        format!("{}{}", if minor > 0 { "+" } else { "" }, self.amount(minor, currency))
    }

    /// A number kept in thousandths, with as many decimals as it needs.
    pub fn thousandths(&self, thousandths: i64) -> String {
        let (mut value, mut digits) = (thousandths, 3);
        while digits > 0 && value % 10 == 0 {
            (value, digits) = (value / 10, digits - 1);
        }
        self.decimal(value, digits)
    }

    /// A whole number of smallest parts, of which `digits` stand behind the decimal sign.
    fn decimal(&self, parts: i64, digits: u8) -> String {
        dress(self.language, &fixed(parts, digits))
    }
}

pub(super) fn number(language: Language, value: f64, decimals: u8) -> String {
    if !value.is_finite() {
        // A sum never answers with one of these; should one slip through, a dash is honest and a digit would not be.
        tracing::error!(value, "a number that is none was to be printed");
        return "–".to_owned();
    }
    let text = format!("{value:.*}", usize::from(decimals));
    // "-0.0" is a rounding artefact, not a measurement below zero.
    let is_zero = text.chars().all(|c| matches!(c, '-' | '0' | '.'));
    dress(language, if is_zero { text.trim_start_matches('-') } else { &text })
}

/// Plain ASCII digits to the language's digits and decimal sign, in groups of three.
fn dress(language: Language, plain: &str) -> String {
    let spoken = spoken(language, plain).unwrap_or_else(|| plain.to_owned());
    let digits = |c: &char| c.is_numeric();
    let start = spoken.chars().take_while(|c| !digits(c)).map(char::len_utf8).sum::<usize>();
    let (sign, rest) = spoken.split_at(start);
    let whole = rest.chars().take_while(digits).count();
    let mut out = sign.replace('-', &MINUS.to_string());
    for (place, c) in rest.chars().enumerate() {
        if place > 0 && place < whole && (whole - place) % 3 == 0 {
            out.push(NARROW_SPACE);
        }
        out.push(c);
    }
    out
}

fn spoken(language: Language, plain: &str) -> Option<String> {
    let locale: Locale = language.format_tag().parse().ok()?;
    let mut options = DecimalFormatterOptions::default();
    options.grouping_strategy = Some(GroupingStrategy::Never);
    let formatter = DecimalFormatter::try_new(DecimalFormatterPreferences::from(&locale), options).ok()?;
    let decimal: Decimal = plain.parse().ok()?;
    Some(formatter.format(&decimal).to_string())
}

#[cfg(test)]
mod tests {
    use super::*;

    const W: Words = Words::new(Language::English);

    #[test]
    fn digits_stand_in_groups_of_three() {
        assert_eq!(W.integer(128_430), "128\u{202f}430");
        assert_eq!(W.integer(1_598), "1\u{202f}598");
        assert_eq!(W.integer(999), "999");
        assert_eq!(W.integer(-1_000_000), "\u{2212}1\u{202f}000\u{202f}000");
        assert_eq!(W.integer(i64::MIN), "\u{2212}9\u{202f}223\u{202f}372\u{202f}036\u{202f}854\u{202f}775\u{202f}808");
    }

    #[test]
    fn decimals_are_kept_and_never_grouped() {
        assert_eq!(W.number(300.0, 1), "300.0");
        assert_eq!(W.number(1_234.567_89, 4), "1\u{202f}234.5679");
        assert_eq!(W.number(-0.04, 1), "0.0");
        assert_eq!(W.quantity(-12.25, 2, "°C"), "\u{2212}12.25\u{a0}°C");
        assert_eq!(W.quantity(6_000.0, 0, "/min"), "6\u{202f}000/min");
        assert_eq!(W.span(20.0, 25.0, 0, "kPa"), "20–25\u{a0}kPa");
    }

    #[test]
    fn a_decimal_comma_stands_where_the_language_has_one() {
        assert_eq!(W.number(1.5, 1), "1.5");
        for language in Language::PAPERS.into_iter().skip(1) {
            let words = Words::new(language);
            assert_eq!(words.number(1.5, 1), "1,5", "{language:?}");
            assert_eq!(words.quantity(-1_234.25, 2, "kPa"), "\u{2212}1\u{202f}234,25\u{a0}kPa", "{language:?}");
            assert_eq!(words.money(123_450, "EUR"), "EUR\u{a0}1\u{202f}234,50", "{language:?}");
        }
    }

    #[test]
    fn what_is_no_number_prints_as_a_dash() {
        assert_eq!(W.number(f64::NAN, 1), "–");
        assert_eq!(W.number(f64::INFINITY, 1), "–");
    }

    #[test]
    fn money_keeps_its_minor_digits() {
        assert_eq!(W.money(123_450, "EUR"), "EUR\u{a0}1\u{202f}234.50");
        assert_eq!(W.money(-5, "EUR"), "EUR\u{a0}\u{2212}0.05");
        assert_eq!(W.money(1_500, "JPY"), "JPY\u{a0}1\u{202f}500");
        assert_eq!(W.money(1_500, "KWD"), "KWD\u{a0}1.500");
        assert_eq!(W.amount(148_000, "EUR"), "1\u{202f}480.00");
        assert_eq!(W.change(12_000, "EUR"), "+120.00");
        assert_eq!(W.change(-12_000, "EUR"), "\u{2212}120.00");
        assert_eq!(W.change(0, "EUR"), "0.00");
    }

    #[test]
    fn thousandths_show_the_decimals_they_need() {
        for (kept, shown) in [(2_000, "2"), (1_500, "1.5"), (125, "0.125"), (0, "0"), (1_234_500, "1\u{202f}234.5")] {
            assert_eq!(W.thousandths(kept), shown);
        }
        assert_eq!(Words::new(Language::German).thousandths(1_250), "1,25");
    }
}
