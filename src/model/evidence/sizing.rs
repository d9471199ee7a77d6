//! The sums that chose the parts, kept with their inputs and the version of the program that made them.

use serde::{Deserialize, Serialize};

use crate::calc::container::{Container, Contents, Stowage, Stowed};
use crate::calc::nozzle::{Asked, Candidate, Sheet, Varied};
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

/// What was typed for a nozzle sheet, and how it was understood.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct NozzleInputs {
    /// Name and text of every field.
    pub typed: Vec<(String, String)>,
    /// The sets as asked: name, question.
    pub sets: Vec<(String, Asked)>,
    /// Which set is taken, from 0.
    pub taken: usize,
}

/// What came out of a nozzle sheet.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct NozzleResults {
    /// In the order of the sets.
    pub sheets: Vec<Sheet>,
    /// The set taken, one input changed at a time; empty in sheets that were recorded before this was reckoned.
    #[serde(default)]
    pub sensitivity: Vec<Varied>,
}

impl NozzleSizing {
    /// Inputs and results read back; `None` for a sheet of another program.
    pub fn read_back(&self) -> Option<(NozzleInputs, NozzleResults)> {
        let inputs: NozzleInputs = serde_json::from_value(self.inputs.clone()).ok()?;
        let results: NozzleResults = serde_json::from_value(self.results.clone()).ok()?;
        let is_whole = inputs.taken < inputs.sets.len() && inputs.sets.len() == results.sheets.len();
        is_whole.then_some((inputs, results))
    }

    /// The size that is taken, judged in a set: the one chosen, else the one of the sum.
    pub fn used(&self, sheet: &Sheet) -> Option<Candidate> {
        let nozzle = sheet.found.nozzle();
        nozzle.candidate(self.chosen_mm.unwrap_or(nozzle.used_mm))
    }
}

/// One container asked for, with what comes into the vehicle along with it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct ContainerSet {
    /// In the shop's words.
    pub name: String,
    /// Volume, fill, temperature.
    pub container: Container,
    /// Masses and consumption; `None` when they were not given.
    pub stowage: Option<Stowage>,
}

/// What was typed for a container sheet, and how it was understood.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct ContainerInputs {
    /// Name and text of every field.
    pub typed: Vec<(String, String)>,
    /// The containers as asked.
    pub sets: Vec<ContainerSet>,
    /// Which is taken, from 0.
    pub taken: usize,
}

/// What came out of a container sheet, in the order of the sets.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct ContainerResults {
    /// What each holds, and what that means for the vehicle.
    pub sets: Vec<(Contents, Option<Stowed>)>,
}

impl ContainerSizing {
    /// Inputs and results read back; `None` for a sheet of another program.
    pub fn read_back(&self) -> Option<(ContainerInputs, ContainerResults)> {
        let inputs: ContainerInputs = serde_json::from_value(self.inputs.clone()).ok()?;
        let results: ContainerResults = serde_json::from_value(self.results.clone()).ok()?;
        let is_whole = inputs.taken < inputs.sets.len() && inputs.sets.len() == results.sets.len();
        is_whole.then_some((inputs, results))
    }
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
    /// Temperature at which this filling is liquid-full, C; `None` when that lies beyond the critical region.
    pub liquid_full_temperature_c: Option<f64>,
    /// Added mass, kg.
    pub added_mass_kg: Option<f64>,
    /// The rear axle can carry it; `None` when the reserve is not known.
    pub is_within_axle_reserve: Option<bool>,
    /// Version of the program that computed it.
    pub program_version: String,
}
