//! What can be wrong with an entry: a kind and its numbers. The sentence comes from the words, when the page is made.

use crate::unit::Unit;
use crate::words::{Value, Words};

/// One fault of one field.
#[derive(Debug, Clone, PartialEq)]
pub enum Wrong {
    Empty,
    NotANumber {
        typed: String,
    },
    /// "1,200" and its two readings.
    AmbiguousSeparator {
        typed: String,
        thousands: String,
        decimal: String,
    },
    NotWhole {
        typed: String,
    },
    UnknownUnit {
        typed: String,
        takes: Unit,
    },
    /// A unit we know, of another kind: degrees where a pressure is asked.
    OtherUnit {
        typed: String,
        takes: Unit,
    },
    /// Outside what the field takes, both ends in `unit`.
    Beyond {
        least: f64,
        most: f64,
        unit: Unit,
    },
    /// More decimals than the currency has.
    TooManyDecimals {
        most: u8,
    },
    TooLong {
        most: usize,
        got: usize,
    },
    TooShort {
        least: usize,
    },
    NotADate {
        typed: String,
    },
    NoSuchDay {
        typed: String,
    },
    /// "3/4/2026", and both readings as ISO dates.
    AmbiguousDate {
        typed: String,
        one: String,
        other: String,
    },
    TwoDigitYear,
    NotATime {
        typed: String,
    },
    /// Skipped when the clocks went forward.
    NoSuchTime {
        typed: String,
    },
    Future,
    Past,
    BeforeIntake,
    EndBeforeStart,
    NotAChoice,
    ControlCharacters,
    /// Bytes that were no UTF-8: the letters they stood for are lost.
    Damaged,
    LineBreak,
    NotAMailAddress {
        typed: String,
    },
    /// Somebody or something else has this already.
    Taken,
    /// Nothing is known by this name or number.
    NotKnown,
    DoesNotMatch,
    TooMany {
        most: usize,
    },
    FileMissing,
    FileEmpty {
        file: String,
    },
    FileTooLarge {
        file: String,
        most_mb: usize,
    },
    /// `takes` lists the kinds, as "JPEG, PNG".
    FileKind {
        file: String,
        takes: String,
    },
    FileBroken {
        file: String,
    },
    /// A rule of one screen: its key in the words and what to put in.
    Rule(&'static str, Vec<(&'static str, Value<'static>)>),
}

impl Wrong {
    /// The sentence for it.
    pub fn say(&self, w: &Words) -> String {
        let typed = |key: &str, typed: &str| w.tv(key, &[("typed", typed.into())]);
        match self {
            Self::Empty => w.t("wrong-empty"),
            Self::NotANumber { typed: text } => typed("wrong-not-a-number", text),
            Self::AmbiguousSeparator { typed, thousands, decimal } => w.tv(
                "wrong-ambiguous-separator",
                &[("typed", typed.into()), ("thousands", thousands.into()), ("decimal", decimal.into())],
            ),
            Self::NotWhole { typed: text } => typed("wrong-not-whole", text),
            Self::UnknownUnit { typed: text, takes: Unit::One } | Self::OtherUnit { typed: text, takes: Unit::One } => {
                typed("wrong-no-unit", text)
            }
            Self::UnknownUnit { typed, takes } => unit(w, "wrong-unknown-unit", typed, *takes),
            Self::OtherUnit { typed, takes } => unit(w, "wrong-other-unit", typed, *takes),
            Self::Beyond { least, most, unit } => {
                let decimals = decimals_of(*least).max(decimals_of(*most));
                w.tv(
                    "wrong-beyond",
                    &[("span", w.span(*least, *most, decimals, unit.symbol()).trim_end().to_owned().into())],
                )
            }
            Self::TooManyDecimals { most } => w.tv("wrong-too-many-decimals", &[("most", (*most).into())]),
            Self::TooLong { most, got } => w.tv("wrong-too-long", &[("most", (*most).into()), ("got", (*got).into())]),
            Self::TooShort { least } => w.tv("wrong-too-short", &[("least", (*least).into())]),
            Self::NotADate { typed: text } => typed("wrong-not-a-date", text),
            Self::NoSuchDay { typed: text } => typed("wrong-no-such-day", text),
            Self::AmbiguousDate { typed, one, other } => {
                w.tv("wrong-ambiguous-date", &[("typed", typed.into()), ("one", one.into()), ("other", other.into())])
            }
            Self::TwoDigitYear => w.t("wrong-two-digit-year"),
            Self::NotATime { typed: text } => typed("wrong-not-a-time", text),
            Self::NoSuchTime { typed: text } => typed("wrong-no-such-time", text),
            Self::Future => w.t("wrong-future"),
            Self::Past => w.t("wrong-past"),
            Self::BeforeIntake => w.t("wrong-before-intake"),
            Self::EndBeforeStart => w.t("wrong-end-before-start"),
            Self::NotAChoice => w.t("wrong-not-a-choice"),
            Self::ControlCharacters => w.t("wrong-control-characters"),
            Self::Damaged => w.t("wrong-damaged"),
            Self::LineBreak => w.t("wrong-line-break"),
            Self::NotAMailAddress { typed: text } => typed("wrong-not-a-mail-address", text),
            Self::Taken => w.t("wrong-taken"),
            Self::NotKnown => w.t("wrong-not-known"),
            Self::DoesNotMatch => w.t("wrong-does-not-match"),
            Self::TooMany { most } => w.tv("wrong-too-many", &[("most", (*most).into())]),
            Self::FileMissing => w.t("wrong-file-missing"),
            Self::FileEmpty { file } => w.tv("wrong-file-empty", &[("file", file.into())]),
            Self::FileTooLarge { file, most_mb } => {
                w.tv("wrong-file-too-large", &[("file", file.into()), ("most_mb", (*most_mb).into())])
            }
            Self::FileKind { file, takes } => {
                w.tv("wrong-file-kind", &[("file", file.into()), ("takes", takes.into())])
            }
            Self::FileBroken { file } => w.tv("wrong-file-broken", &[("file", file.into())]),
            Self::Rule(key, values) => w.tv(key, values),
        }
    }
}

fn unit(w: &Words, key: &str, typed: &str, takes: Unit) -> String {
    w.tv(key, &[("typed", typed.into()), ("takes", takes.symbol().into())])
}

/// How many decimals show a limit as it was set, up to four.
fn decimals_of(value: f64) -> u8 {
    (0..4)
        .find(|decimals| {
            let scaled = value * 10_f64.powi(i32::from(*decimals));
            (scaled - scaled.round()).abs() < 1e-6
        })
        .unwrap_or(4)
}
