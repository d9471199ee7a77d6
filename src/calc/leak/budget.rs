//! The uncertainty budget of a leak rate, row by row as a paper prints it.
//!
//! Errors of the readings are taken as independent between start and end. A constant offset of gauge or thermometer
//! cancels, so what belongs in is repeatability and drift over the test; with only a certificate at hand its whole
//! figure is too large, hence safe.
//!
//! Source: JCGM 100:2008, 5.1.2 (combination) and F.2.2.1 (resolution as a rectangle).

use serde::{Deserialize, Serialize};

use super::{Compressibility, DecayTest, constant};
use crate::calc::Outside;

/// Quantity a row of the budget stands for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum BudgetQuantity {
    /// Pressure at the start, kPa.
    StartPressure,
    /// Pressure at the end, kPa.
    EndPressure,
    /// Temperature at the start, in C with its uncertainty in K.
    StartTemperature,
    /// Temperature at the end, in C with its uncertainty in K.
    EndTemperature,
    /// Volume of the section, l.
    Volume,
    /// Time between the readings, min; started and stopped by the clock, its uncertainty is neglected.
    Time,
}

impl BudgetQuantity {
    /// Unit of the estimate and of its uncertainty (a temperature's uncertainty is in K).
    pub fn unit(self) -> &'static str {
        match self {
            Self::StartPressure | Self::EndPressure => "kPa",
            Self::StartTemperature | Self::EndTemperature => "\u{b0}C",
            Self::Volume => "l",
            Self::Time => "min",
        }
    }
}

/// One row of the budget.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct BudgetRow {
    /// What the row stands for.
    pub quantity: BudgetQuantity,
    /// Its value, in [`BudgetQuantity::unit`].
    pub estimate: f64,
    /// Its standard uncertainty, same unit.
    pub standard_uncertainty: f64,
    /// Change of the rate with it, cm3/h per unit.
    pub sensitivity: f64,
    /// What it adds to the standard uncertainty of the rate, sign dropped, cm3/h.
    pub contribution_cm3_h: f64,
    /// Its share of the variance, 0 to 1.
    pub share: f64,
}

/// The rows, in the order of the readings.
pub(super) fn rows(test: &DecayTest, gas: &Compressibility, rate_cm3_h: f64) -> Result<Vec<BudgetRow>, Outside> {
    let c = constant(test, gas);
    let (start, end) = gas.states(test)?;
    let u_p = reading_standard_uncertainty_kpa(test);
    let u_t = test.temperature_standard_uncertainty_k;
    let u_v = test.volume_relative_standard_uncertainty * test.volume_l;
    let row = |quantity, estimate, standard_uncertainty: f64, sensitivity: f64| BudgetRow {
        quantity,
        estimate,
        standard_uncertainty,
        sensitivity,
        contribution_cm3_h: (sensitivity * standard_uncertainty).abs(),
        share: 0.0,
    };
    let mut rows = vec![
        row(BudgetQuantity::StartPressure, test.start_kpa, u_p, c * start.per_kpa),
        row(BudgetQuantity::EndPressure, test.end_kpa, u_p, -c * end.per_kpa),
        row(BudgetQuantity::StartTemperature, test.start_c, u_t, c * start.per_k),
        row(BudgetQuantity::EndTemperature, test.end_c, u_t, -c * end.per_k),
        row(BudgetQuantity::Volume, test.volume_l, u_v, rate_cm3_h / test.volume_l),
        row(BudgetQuantity::Time, test.duration_min, 0.0, -rate_cm3_h / test.duration_min),
    ];
    let variance = combined(&rows).powi(2);
    for row in &mut rows {
        // Perfect instruments have no shares; 0 divided by 0 must not reach a paper.
        row.share = if variance > 0.0 { row.contribution_cm3_h.powi(2) / variance } else { 0.0 };
    }
    Ok(rows)
}

/// Combined standard uncertainty of the rate, cm3/h.
pub fn combined(rows: &[BudgetRow]) -> f64 {
    rows.iter().map(|row| row.contribution_cm3_h.powi(2)).sum::<f64>().sqrt()
}

/// Standard uncertainty of one pressure reading with the resolution as a rectangle of its width, kPa.
pub(super) fn reading_standard_uncertainty_kpa(test: &DecayTest) -> f64 {
    (test.pressure_standard_uncertainty_kpa.powi(2) + test.pressure_resolution_kpa.powi(2) / 12.0).sqrt()
}
