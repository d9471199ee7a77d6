//! A rule set: one TOML file of one code, country or shop, read strictly.

use std::fmt::Write as _;
use std::sync::LazyLock;

use serde::Deserialize;
use sha2::{Digest, Sha256};

use super::head::{RepairRestarts, RetestHead};
use super::idle::NoteLine;
use super::interval_line::IntervalLine;
use super::line::{CheckLine, LimitLine, ProofLine, SetName, TopicLine};

/// A rule set as read.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RuleSet {
    /// Short name: "un-baseline".
    pub name: String,
    /// Version: year and month.
    pub version: String,
    /// Title as papers print it.
    pub title: String,
    /// SHA-256 of the text it was read from, hexadecimal.
    #[serde(skip)]
    pub sha256: String,
    /// Lines the shop adopted itself; printed as "shop limit".
    #[serde(default)]
    pub is_shop: bool,
    /// Countries (ISO 3166-1, two letters) whose registration adds this set to a vehicle's book.
    #[serde(default)]
    pub countries: Vec<String>,
    /// Languages (BCP 47) that certificates and records are made in where this set rules, the usual one first.
    #[serde(default)]
    pub languages: Vec<String>,
    /// A vehicle's country of registration added it; the branch does not stack it.
    #[serde(skip)]
    pub is_by_vehicle: bool,
    /// A repair inside an inspection ends it; what comes after is a new one that quotes the old.
    #[serde(default)]
    pub repair_restarts: Option<RepairRestarts>,
    /// How a vehicle that failed may come again.
    #[serde(default)]
    pub retest: Option<RetestHead>,
    /// Proofs.
    #[serde(default)]
    pub proof: Vec<ProofLine>,
    /// Limits.
    #[serde(default)]
    pub limit: Vec<LimitLine>,
    /// Dated duties.
    #[serde(default)]
    pub interval: Vec<IntervalLine>,
    /// What it says in a word.
    #[serde(default)]
    pub note: Vec<NoteLine>,
    /// Checklist.
    #[serde(default)]
    pub check: Vec<CheckLine>,
    /// Hand-over topics.
    #[serde(default)]
    pub topic: Vec<TopicLine>,
}

/// Why a text is no rule set.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BadSet {
    /// Line of the text, from 1, when known.
    pub line: Option<usize>,
    /// What is wrong, in the words of the reader.
    pub why: String,
}

impl std::fmt::Display for BadSet {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self.line {
            Some(line) => write!(f, "line {line}: {}", self.why),
            None => f.write_str(&self.why),
        }
    }
}

impl std::error::Error for BadSet {}

impl RuleSet {
    /// Reads a set.
    ///
    /// # Errors
    /// [`BadSet`] with the line: an unknown key, a wrong value, an id given twice, a limit that limits nothing, an
    /// interval without months, days and kilometres, or one that counts from a day nobody keeps.
    pub fn read(text: &str) -> Result<Self, BadSet> {
        let mut set: Self = toml::from_str(text).map_err(|error| BadSet {
            line: error.span().map(|span| 1 + text[..span.start.min(text.len())].matches('\n').count()),
            why: error.message().to_owned(),
        })?;
        set.check_sense(text)?;
        let name = SetName { name: set.name.clone(), title: set.title.clone() };
        set.proof.iter_mut().for_each(|line| line.set = name.clone());
        set.limit.iter_mut().for_each(|line| line.set = name.clone());
        set.interval.iter_mut().for_each(|line| line.set = name.clone());
        set.note.iter_mut().for_each(|line| line.set = name.clone());
        set.sha256 = Sha256::digest(text.as_bytes()).iter().fold(String::new(), |mut hex, byte| {
            // Writing into a String cannot fail.
            let _ = write!(hex, "{byte:02x}");
            hex
        });
        Ok(set)
    }

    fn check_sense(&self, text: &str) -> Result<(), BadSet> {
        let ids = self.proof.iter().map(|one| &one.id);
        let ids = ids.chain(self.limit.iter().map(|one| &one.id)).chain(self.interval.iter().map(|one| &one.id));
        let ids = ids.chain(self.check.iter().map(|one| &one.id)).chain(self.note.iter().map(|one| &one.id));
        let ids: Vec<_> = ids.collect();
        let bad = |id: &str, why: String| {
            let quoted = format!("\"{id}\"");
            let line = text.lines().position(|line| line.contains(&quoted)).map(|n| n + 1);
            Err(BadSet { line, why })
        };
        for (n, id) in ids.iter().enumerate() {
            if ids[..n].contains(id) {
                return bad(id, format!("the id {id} is given twice"));
            }
        }
        for limit in &self.limit {
            let finite = [limit.least, limit.most].into_iter().flatten().all(f64::is_finite);
            if !finite || (limit.least.is_none() && limit.most.is_none()) {
                return bad(&limit.id, format!("{} needs least or most, as a number", limit.id));
            }
        }
        if let Some(retest) = &self.retest
            && retest.months.is_some() == retest.days.is_some()
        {
            let line = text.lines().position(|line| line.contains("retest")).map(|n| n + 1);
            return Err(BadSet { line, why: "retest needs months or days, one of the two".to_owned() });
        }
        for interval in &self.interval {
            let id = &interval.id;
            if interval.months.is_some() && interval.days.is_some() {
                return bad(id, format!("{id} has months and days; one of the two"));
            }
            let has_interval = interval.months.is_some() || interval.days.is_some() || interval.km.is_some();
            if interval.makes_duties() && !has_interval {
                return bad(id, format!("{id} needs months, days or km"));
            }
            if interval.makes_duties() && !interval.anchor.has_day() {
                return bad(id, format!("{id} counts from a day that the program does not have"));
            }
            if interval.makes_duties() && !interval.other_fuels.is_empty() {
                return bad(id, format!("{id} is about a gas that no job can have"));
            }
        }
        Ok(())
    }
}

/// Text of a set that ships with the program.
pub fn embedded(name: &str) -> Option<&'static str> {
    EMBEDDED.iter().find(|(known, _)| *known == name).map(|(_, text)| *text)
}

/// Names of the shipped sets of a country, by its two letters or the sign on its plates.
pub fn sets_of_country(country: &str) -> Vec<&'static str> {
    static COUNTRIES: LazyLock<Vec<(&str, Vec<String>)>> = LazyLock::new(|| {
        let read = |(name, text): &(&'static str, &str)| Some((*name, RuleSet::read(text).ok()?.countries));
        EMBEDDED.iter().filter_map(read).collect()
    });
    let country = country.trim().to_uppercase();
    COUNTRIES.iter().filter(|(_, all)| all.contains(&country)).map(|(name, _)| *name).collect()
}

/// The sets that ship with the program.
pub const EMBEDDED: &[(&str, &str)] = &[
    ("un-baseline", include_str!("sets/un-baseline.toml")),
    ("eu-roadworthiness", include_str!("sets/eu-roadworthiness.toml")),
    ("us-cng", include_str!("sets/us-cng.toml")),
    ("de-stvzo", include_str!("sets/de-stvzo.toml")),
    ("nl", include_str!("sets/nl.toml")),
    ("it", include_str!("sets/it.toml")),
    ("pl-tdt", include_str!("sets/pl-tdt.toml")),
    ("es", include_str!("sets/es.toml")),
    ("fr", include_str!("sets/fr.toml")),
    ("be", include_str!("sets/be.toml")),
    ("au", include_str!("sets/au.toml")),
    ("nz", include_str!("sets/nz.toml")),
    ("in", include_str!("sets/in.toml")),
    ("br", include_str!("sets/br.toml")),
    ("ar", include_str!("sets/ar.toml")),
    ("tr", include_str!("sets/tr.toml")),
    ("uk", include_str!("sets/uk.toml")),
    ("shop", include_str!("sets/shop.toml")),
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_sets_that_ship_can_be_read() {
        for (name, text) in EMBEDDED {
            let set = RuleSet::read(text).unwrap_or_else(|bad| panic!("{name}: {bad}"));
            assert_eq!(set.name, *name);
        }
    }

    #[test]
    fn an_unknown_key_is_named_with_its_line() {
        let text = "name = \"x\"\nversion = \"1\"\ntitle = \"X\"\n\n[[limit]]\nid = \"a\"\ncolour = \"red\"\n";
        let bad = RuleSet::read(text).unwrap_err();
        assert_eq!(bad.line, Some(7), "{bad}");
        assert!(bad.why.contains("colour"), "{bad}");
    }

    #[test]
    fn a_limit_that_limits_nothing_is_refused() {
        let text = "name = \"x\"\nversion = \"1\"\ntitle = \"X\"\n\n[[limit]]\nid = \"a\"\nquantity = \"shut-off-s\"\nsource = \"s\"\nchecked = true\n";
        assert_eq!(RuleSet::read(text).unwrap_err().line, Some(6));
    }
}
