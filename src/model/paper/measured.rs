//! Measured results on a paper: numbers with unit, uncertainty, limit, decision rule and verdict.

use serde::{Deserialize, Serialize};
use time::{Date, OffsetDateTime};

use super::EnteredLater;

/// A number with its unit, as it was rounded for the record.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Quantity {
    /// Decimal text with a point and an ASCII minus, for example `-0.08`; exactly `decimals` digits after the point.
    pub value: String,
    /// Digits after the point.
    pub decimals: u8,
    /// Unit as printed, for example `cm³/h`; empty for a bare number.
    pub unit: String,
}

impl Quantity {
    /// Rounds a finite number to `decimals` digits. `None` when it is not finite or more than 12 decimals are asked.
    pub fn rounded(number: f64, decimals: u8, unit: &str) -> Option<Self> {
        if !number.is_finite() || decimals > 12 {
            return None;
        }
        let text = format!("{number:.places$}", places = usize::from(decimals));
        let is_zero = text.chars().all(|c| matches!(c, '-' | '0' | '.'));
        let value = if is_zero { text.trim_start_matches('-').to_owned() } else { text };
        Some(Self { value, decimals, unit: unit.to_owned() })
    }

    /// A whole number.
    pub fn whole(number: i64, unit: &str) -> Self {
        Self { value: number.to_string(), decimals: 0, unit: unit.to_owned() }
    }

    /// The number again, for sorting or drawing; `None` when the text is no decimal number.
    pub fn number(&self) -> Option<f64> {
        self.value.parse().ok().filter(|n: &f64| n.is_finite())
    }
}

/// What was found, or what is allowed: a number, a span or a word.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "as", rename_all = "kebab-case")]
pub enum Reading {
    /// A word in the paper's language, for example "dry".
    Word {
        /// The word.
        text: String,
    },
    /// A number.
    Number(Quantity),
    /// A span between two numbers of one unit, both included.
    Between {
        /// Lower end.
        low: Quantity,
        /// Upper end.
        high: Quantity,
    },
}

/// One value of a result; several stand side by side, as idle and raised idle do.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ResultPart {
    /// What this value belongs to, in the paper's language, where a test has more than one; else empty.
    pub label: String,
    /// The value.
    pub reading: Reading,
}

/// Expanded uncertainty (ISO/IEC Guide 98-3).
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Uncertainty {
    /// Half width of the interval, in the unit of the result.
    pub expanded: Quantity,
    /// Coverage factor as decimal text, for example `2`.
    pub coverage_factor: String,
}

/// How a result is held against its limit (ISO/IEC 17025, 7.8.6).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum DecisionRule {
    /// Guard band as wide as the expanded uncertainty: risk of a wrong pass below 2.5 % (ILAC-G8:09/2019, 4.2.2).
    Guarded,
    /// Simple acceptance: risk of a wrong pass up to 50 % at the limit (ILAC-G8:09/2019, 4.2.1).
    Simple,
    /// Seen or not seen; nothing is measured.
    Observed,
}

impl DecisionRule {
    /// The rule as it stands in content and in the keys of words.
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Guarded => "guarded",
            Self::Simple => "simple",
            Self::Observed => "observed",
        }
    }
}

/// What the decision rule said.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Verdict {
    /// The limit is met.
    Passes,
    /// The limit is not met.
    Fails,
    /// The result and its uncertainty straddle the limit.
    CannotTell,
}

impl Verdict {
    /// The verdict as it stands in content and in the keys of words.
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Passes => "passes",
            Self::Fails => "fails",
            Self::CannotTell => "cannot-tell",
        }
    }
}

/// An instrument that stood behind a result.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct InstrumentOnPaper {
    /// The shop's own mark, for example `G-03`.
    pub code: String,
    /// What it is, with maker and serial number.
    pub description: String,
    /// Number of its calibration certificate; empty where it has none, as a foam fluid.
    pub calibration_certificate: String,
    /// Last day of its calibration, or of its use (foam fluid).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub good_until_on: Option<Date>,
}

/// One test with its result.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct MeasuredRow {
    /// The test, in the paper's language.
    pub test: String,
    /// Code and version of the method, for example `leak-decay 2`.
    pub method: String,
    /// The values found, in order.
    pub results: Vec<ResultPart>,
    /// Uncertainty of the values, where one was worked out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub uncertainty: Option<Uncertainty>,
    /// What is allowed, one for each value, or one for all.
    pub limits: Vec<Reading>,
    /// Where the limit comes from: document and paragraph, or the shop line.
    pub limit_source: String,
    /// How result and limit were compared.
    pub decision_rule: DecisionRule,
    /// What came out.
    pub verdict: Verdict,
    /// Instruments, by the shop's own marks; they are described once in the paper's list.
    pub instruments: Vec<String>,
    /// When the measuring ended.
    #[serde(with = "time::serde::rfc3339")]
    pub measured_at: OffsetDateTime,
    /// Who measured.
    pub by: String,
    /// Name of the other body, where the result came from outside; else empty.
    pub from_outside: String,
    /// Number of the record that holds the details; empty if there is none.
    pub record: String,
    /// Set when the result was written down later than it was found.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub entered_later: Option<EnteredLater>,
}

#[cfg(test)]
mod tests {
    use super::Quantity;

    #[test]
    fn a_rounded_number_is_text_without_a_negative_zero() {
        assert_eq!(Quantity::rounded(-0.004, 2, "%").unwrap().value, "0.00");
        assert_eq!(Quantity::rounded(-0.006, 2, "%").unwrap().value, "-0.01");
        assert_eq!(Quantity::rounded(1598.0, 0, "cm³").unwrap().value, "1598");
        assert!(Quantity::rounded(f64::NAN, 2, "%").is_none());
        assert!(Quantity::rounded(f64::INFINITY, 2, "%").is_none());
    }
}
