//! What the sheet in the owner's hand says.

use serde::{Deserialize, Serialize};
use time::Date;

use super::certificate::DutyOnPaper;
use super::{GasFuel, ShopBlock};

/// The owner's sheet: filling, driving, parking, smell of gas, and what falls due.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct OwnerSheetContent {
    /// The workshop to call.
    pub shop: ShopBlock,
    /// Day of hand-over.
    pub issued_on: Date,
    /// Number of the job file.
    pub job_number: String,
    /// Number of the certificate; empty if none.
    pub certificate_number: String,
    /// Make, model.
    pub vehicle: String,
    /// Plate.
    pub plate: String,
    /// Last four characters of the VIN.
    pub vin_last_4: String,
    /// They are those of a VIN; else of a chassis number.
    pub has_vin: bool,
    /// The gas.
    pub fuel: GasFuel,
    /// Containers or cylinders with what the owner must know.
    pub containers: Vec<OwnerContainer>,
    /// Where the plate or label sits.
    pub plate_place: String,
    /// Emergency number of the country, for example `112`.
    pub emergency_number: String,
    /// What falls due.
    pub duties: Vec<DutyOnPaper>,
    /// Cautions that the rule sets ask for beyond the sheet's own, in the sheet's language.
    pub further_cautions: Vec<String>,
    /// Address of the public vehicle page; absent while the shop has no public address.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub page_url: Option<String>,
    /// Language tag of the text.
    pub language: String,
    /// A sheet of the demonstration shop.
    pub is_demonstration: bool,
}

/// A container or cylinder, for its owner.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct OwnerContainer {
    /// Where it sits.
    pub location: String,
    /// Water capacity, whole litres rounded down.
    pub capacity_l: i64,
    /// Fill limit in whole per cent (LPG).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fill_limit_percent: Option<i64>,
    /// Litres at the fill limit, rounded down (LPG).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub filled_l: Option<i64>,
    /// Working pressure in bar (CNG).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub working_pressure_bar: Option<i64>,
    /// Where its hand valve is; empty if it has none within reach.
    pub hand_valve: String,
    /// Last day before the next test.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub next_test_on: Option<Date>,
    /// Last day of its life.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub end_of_life_on: Option<Date>,
}
