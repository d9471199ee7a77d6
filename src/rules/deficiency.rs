//! Classes of deficiencies: the letters of an inspection code, and how grave each is at least.
//!
//! Source: Directive 2014/45/EU, Annex I. The letters of item 6.1.3 were read in the Polish inspection catalogue; severities
//! and item 8.2.1.2 are from memory and to be confirmed with the authority. Being from memory they can only make a
//! result worse: a deficiency is never classed milder than its class.

use crate::model::evidence::Severity;

/// One class.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Class {
    /// Item and letter, for example `6.1.3 f`.
    pub code: &'static str,
    /// Key of its words, behind `deficiency-class-`.
    pub key: &'static str,
    /// Not milder than this.
    pub least: Severity,
    /// Document and paragraph.
    pub source: &'static str,
}

const LETTERS: &str =
    "Directive 2014/45/EU, Annex I, 6.1.3 (letter read in the Polish inspection catalogue, severity from memory)";
const EXHAUST: &str = "Directive 2014/45/EU, Annex I, 8.2.1.2 (from memory)";

const fn class(code: &'static str, key: &'static str, least: Severity, source: &'static str) -> Class {
    Class { code, key, least, source }
}

/// Every class that can be chosen.
pub const CLASSES: &[Class] = &[
    class("6.1.3 a", "613a", Severity::Major, LETTERS),
    class("6.1.3 b", "613b", Severity::Major, LETTERS),
    class("6.1.3 c", "613c", Severity::Minor, LETTERS),
    class("6.1.3 d", "613d", Severity::Major, LETTERS),
    class("6.1.3 e", "613e", Severity::Dangerous, LETTERS),
    class("6.1.3 f", "613f", Severity::Dangerous, LETTERS),
    class("8.2.1.2", "8212", Severity::Major, EXHAUST),
];

/// The class with this code.
pub fn class_of(code: &str) -> Option<&'static Class> {
    CLASSES.iter().find(|class| class.code == code)
}
