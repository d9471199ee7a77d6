//! What a nozzle really lets through: a discharge coefficient the shop measured itself, kept with the meter it used.

use serde::{Deserialize, Serialize};
use serde_json::Value;

use crate::calc::nozzle::measured::{Coefficient, Measured};

/// A discharge coefficient measured on the bench.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Discharge {
    /// Which injector with which nozzle, in the shop's words.
    pub injector: String,
    /// Bore, mm.
    pub bore_mm: f64,
    /// Discharge coefficient, referred to the bore.
    pub discharge_coefficient: f64,
    /// Its standard uncertainty.
    pub standard_uncertainty: f64,
    /// The job's inputs and results, as computed then.
    pub inputs: Value,
    /// What came out.
    pub results: Value,
    /// Where each input comes from.
    pub origins: Value,
    /// Version of the program that computed it.
    pub program_version: String,
}

/// What was typed for a measurement, and how it was understood.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct MeasuredWith {
    /// Name and text of every field.
    pub typed: Vec<(String, String)>,
    /// The measurement.
    pub measured: Measured,
}

impl Discharge {
    /// Inputs and results read back; `None` for one of another program.
    pub fn read_back(&self) -> Option<(MeasuredWith, Coefficient)> {
        Some((serde_json::from_value(self.inputs.clone()).ok()?, serde_json::from_value(self.results.clone()).ok()?))
    }
}
