//! Approval marks of UN Regulations No. 67 (LPG), No. 110 (CNG and LNG) and No. 115 (retrofit systems), as found on
//! parts and on papers.
//!
//! Two forms are read: the mark on a part (`E4 67R-011234`, the first two digits of the number are the series of
//! amendments), and the number on certificates (`E4*67R01/15*1234*00`). What looks odd is kept and flagged, never refused:
//! a part in the hand is a fact. Only a text that is no mark of these three Regulations is an error.
//!
//! Sources: UN Regulation No. 115 (mark on the part); Nos. 67 and 110, and the number on papers under Revision 3 of the
//! 1958 Agreement, from memory.

use std::fmt;

use serde::{Deserialize, Serialize};

use super::job::Fuel;

mod country;
mod read;

pub use country::{ApprovalCountry, country};

/// The Regulation an approval was granted under.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Regulation {
    /// No. 67: LPG parts and their fitting.
    R67,
    /// No. 110: CNG and LNG parts and their fitting.
    R110,
    /// No. 115: retrofit systems as a whole, of either gas.
    R115,
}

impl Regulation {
    /// Its number.
    pub fn number(self) -> u8 {
        match self {
            Self::R67 => 67,
            Self::R110 => 110,
            Self::R115 => 115,
        }
    }

    /// A part approved under it may belong to a system of this gas.
    pub fn covers(self, fuel: Fuel) -> bool {
        matches!((self, fuel), (Self::R67, Fuel::Lpg) | (Self::R110, Fuel::Cng) | (Self::R115, Fuel::Lpg | Fuel::Cng))
    }
}

/// Component class under No. 67 or No. 110, or the kind of a CNG cylinder.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum ComponentClass {
    /// Class 0.
    #[serde(rename = "0")]
    Class0,
    /// Class 1.
    #[serde(rename = "1")]
    Class1,
    /// Class 2.
    #[serde(rename = "2")]
    Class2,
    /// Class 2A (No. 67).
    #[serde(rename = "2A")]
    Class2A,
    /// Class 3.
    #[serde(rename = "3")]
    Class3,
    /// Class 4 (No. 110).
    #[serde(rename = "4")]
    Class4,
    /// Class 5 (No. 110).
    #[serde(rename = "5")]
    Class5,
    /// Class 6 (No. 110).
    #[serde(rename = "6")]
    Class6,
    /// All-metal cylinder.
    #[serde(rename = "CNG-1")]
    Cng1,
    /// Cylinder with metal liner, wound around its straight part.
    #[serde(rename = "CNG-2")]
    Cng2,
    /// Cylinder with metal liner, wound all over.
    #[serde(rename = "CNG-3")]
    Cng3,
    /// All-composite cylinder.
    #[serde(rename = "CNG-4")]
    Cng4,
}

/// Where a mark was copied from, as far as its form tells.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum MarkForm {
    /// The part itself.
    OnPart,
    /// A certificate or communication.
    OnPaper,
}

/// What a person should look at again.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum MarkDoubt {
    /// The country number is in no list known here; newer members of the Agreement are missing from it.
    CountryUnknown,
    /// A small e: in a rectangle it stands for an approval under EU directives, not under these Regulations.
    SmallE,
    /// What follows the number is no class of this Regulation.
    ClassUnknown,
}

/// A mark, taken apart.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct ApprovalMark {
    /// Number beside the E: the country that granted the approval.
    pub country_number: u8,
    /// The Regulation.
    pub regulation: Regulation,
    /// Series of amendments, two digits kept as text: `01` is not `1`.
    pub series: String,
    /// Supplement, on papers.
    pub supplement: Option<String>,
    /// Approval number without the series.
    pub number: String,
    /// Extension, on papers.
    pub extension: Option<String>,
    /// What stands behind the number on a part: its class, or the type of a container.
    pub rest: String,
    /// Which of the two forms it was.
    pub form: MarkForm,
    /// Written with a small e.
    pub has_small_e: bool,
}

/// Why a text is no mark of these Regulations.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum NotAMark {
    /// Nothing there.
    Empty,
    /// It does not begin with E and a country number.
    NoCountry,
    /// None of 67R, 110R and 115R follows the country number.
    NoRegulation,
    /// The same, with a small e: likely an approval under EU directives.
    EuDirective,
    /// The digits of series and number do not follow.
    NoNumber,
}

impl fmt::Display for NotAMark {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Empty => "no approval mark",
            Self::NoCountry => "an approval mark begins with E and the number of a country",
            Self::NoRegulation => "after the country number stands 67R, 110R or 115R",
            Self::EuDirective => {
                "a small e marks an approval under EU directives, not under UN Regulation 67, 110 or 115"
            }
            Self::NoNumber => "after the Regulation stand two digits of series and three to six digits of number",
        })
    }
}

impl std::error::Error for NotAMark {}

impl ApprovalMark {
    /// The part belongs to a system of this gas.
    pub fn fits(&self, fuel: Fuel) -> bool {
        self.regulation.covers(fuel)
    }

    /// Country that granted the approval, where the number is known.
    pub fn country(&self) -> Option<ApprovalCountry> {
        country(self.country_number)
    }

    /// Component class, where what follows the number is one of this Regulation (classes from memory).
    pub fn class(&self) -> Option<ComponentClass> {
        read::class(&self.rest, self.regulation)
    }

    /// What a person should look at again, in the order of the mark.
    pub fn doubts(&self) -> Vec<MarkDoubt> {
        let is_class_missing = read::names_a_class(&self.rest) && self.class().is_none();
        [
            (MarkDoubt::SmallE, self.has_small_e),
            (MarkDoubt::CountryUnknown, self.country().is_none()),
            (MarkDoubt::ClassUnknown, is_class_missing),
        ]
        .into_iter()
        .filter_map(|(doubt, holds)| holds.then_some(doubt))
        .collect()
    }
}

impl std::str::FromStr for ApprovalMark {
    type Err = NotAMark;

    fn from_str(typed: &str) -> Result<Self, NotAMark> {
        read::mark(typed)
    }
}

impl fmt::Display for ApprovalMark {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let e = if self.has_small_e { 'e' } else { 'E' };
        let Self { country_number, series, number, .. } = self;
        let regulation = self.regulation.number();
        if let (MarkForm::OnPaper, Some(supplement), Some(extension)) = (self.form, &self.supplement, &self.extension) {
            return write!(f, "{e}{country_number}*{regulation}R{series}/{supplement}*{number}*{extension}");
        }
        write!(f, "{e}{country_number} {regulation}R-{series}{number}")?;
        if self.rest.is_empty() { Ok(()) } else { write!(f, " {}", self.rest) }
    }
}
