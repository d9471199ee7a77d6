//! What the label on a vehicle says: the system and its approval, containers or cylinders, the next dates, and where to ask.
//!
//! It carries the items of the plate of UN R115, Annexes 2A and 2B, and those that a filling station or an inspector looks
//! for. It takes the place of no plate or sticker that a country prescribes.

use serde::{Deserialize, Serialize};
use time::Date;

use super::certificate::DutyOnPaper;
use super::{GasFuel, ShopBlock};

/// A vehicle label, 105 mm wide and 74 mm high (ISO 216, A7).
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct VehicleLabelContent {
    /// The workshop to call.
    pub shop: ShopBlock,
    /// The gas.
    pub fuel: GasFuel,
    /// Plate; empty if not registered.
    pub plate: String,
    /// Last four characters of VIN or chassis number.
    pub vin_last_4: String,
    /// Maker of the system, and how the gas is metered.
    pub system: String,
    /// Approval of the system as a whole; empty where it has none.
    pub approval: String,
    /// Parts of the plate of UN R115 with their marks: vaporiser or pressure regulator, gas fuelling system, safety device.
    pub parts: Vec<LabelPart>,
    /// Containers or cylinders.
    pub containers: Vec<LabelContainer>,
    /// What falls due.
    pub duties: Vec<DutyOnPaper>,
    /// Day the system was fitted; absent where this shop did not fit it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fitted_on: Option<Date>,
    /// Number of the job file.
    pub job_number: String,
    /// Code of the vehicle's public page.
    pub code: String,
    /// Address of that page; absent while the shop has no public address.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub url: Option<String>,
    /// Day of printing.
    pub printed_on: Date,
    /// Language tag.
    pub language: String,
    /// A label of the demonstration shop.
    pub is_demonstration: bool,
}

/// A part with its mark.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct LabelPart {
    /// What it is, in the label's language.
    pub name: String,
    /// Approval mark.
    pub mark: String,
}

/// A container or cylinder.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct LabelContainer {
    /// Serial number.
    pub serial: String,
    /// Approval mark.
    pub approval_mark: String,
    /// Water capacity, whole litres rounded down.
    pub capacity_l: i64,
    /// Fill limit in whole per cent (LPG).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fill_limit_percent: Option<i64>,
    /// Working pressure in bar (CNG).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub working_pressure_bar: Option<i64>,
    /// `YYYY-MM` or `YYYY`; empty if unknown.
    pub made: String,
    /// Last day before the next test.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub next_test_on: Option<Date>,
}
