//! The sums that chose the parts, kept with their inputs and the version of the program that made them.

use serde::{Deserialize, Serialize};

use crate::model::coded;

coded! {
    /// What the nozzle sum says of the chosen nozzle.
    "nozzle-verdict" NozzleVerdict {
        /// Delivers at rated power and doses at idle.
        Fits = "fits",
        /// Runs lean at high speed.
        TooSmall = "too-small",
        /// Doses too coarsely at idle.
        TooLarge = "too-large",
        /// No size of the list meets both.
        NoneFits = "none-fits",
    }
}

/// A nozzle sheet.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct NozzleSizing {
    /// Inputs of the sum, by their names with units.
    pub inputs: serde_json::Value,
    /// Results of the sum, by their names with units.
    pub results: serde_json::Value,
    /// Where each input comes from: measured, maker, shop default.
    pub origins: serde_json::Value,
    /// Bore needed, mm.
    pub needed_mm: f64,
    /// Bore chosen, mm.
    pub chosen_mm: Option<f64>,
    /// What the sum says.
    pub verdict: NozzleVerdict,
    /// Version of the program that computed it.
    pub program_version: String,
}

/// A container sheet.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct ContainerSizing {
    /// Inputs of the sum, by their names with units.
    pub inputs: serde_json::Value,
    /// Results of the sum, by their names with units.
    pub results: serde_json::Value,
    /// Where each input comes from.
    pub origins: serde_json::Value,
    /// Water capacity, L.
    pub gross_volume_l: f64,
    /// Liquid at the fill stop, L.
    pub liquid_l: f64,
    /// Temperature at which this filling is liquid-full, C.
    pub liquid_full_temperature_c: f64,
    /// Added mass, kg.
    pub added_mass_kg: Option<f64>,
    /// The rear axle can carry it; `None` when the reserve is not known.
    pub is_within_axle_reserve: Option<bool>,
    /// Version of the program that computed it.
    pub program_version: String,
}
