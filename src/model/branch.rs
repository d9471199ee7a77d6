//! A branch: the shop block that stands on every paper, and the customs of the place.

use time::Date;

use super::coded;
use super::ids::BranchId;
use crate::unit::Units;

coded! {
    /// The sheet in the printer.
    "paper-size" PaperSize {
        /// 210 mm by 297 mm.
        A4 = "a4",
        /// 8.5 in by 11 in.
        Letter = "letter",
    }
}

/// One address of the shop.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Branch {
    pub id: BranchId,
    pub name: String,
    pub address: String,
    pub phone: String,
    pub mail: String,
    /// The number under which the authority knows the shop; empty: none given.
    pub licence_number: String,
    /// The last day on which that licence holds.
    pub licence_expires_on: Option<Date>,
    /// ISO 3166-1, two letters.
    pub country: String,
    /// A name of the tz database.
    pub time_zone: String,
    /// ISO 4217, three letters.
    pub currency: String,
    /// A language tag; that of the official papers comes from the rule set.
    pub language: String,
    pub paper_size: PaperSize,
    /// How quantities are shown and typed.
    #[sqlx(try_from = "String")]
    pub units: Units,
    pub version: i64,
}

impl Branch {
    /// Whether certificates may go out on `day` as far as the shop's licence is concerned. A shop without a licence
    /// number has nothing that could expire.
    pub fn licence_holds_on(&self, day: Date) -> bool {
        self.licence_expires_on.is_none_or(|last| day <= last)
    }
}
