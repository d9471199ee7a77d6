//! The gas in the section: ideal, or with its compressibility at both ends of the test.

use serde::{Deserialize, Serialize};

use super::{DecayTest, ZERO_C_K};
use crate::calc::{Outside, between};

/// Compressibility Z = p V / (n R T) of the gas at one end of the test, with how it changes there.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct EndState {
    /// Compressibility, 1 for an ideal gas.
    pub compressibility: f64,
    /// Change of it with pressure, 1/kPa.
    pub per_kpa: f64,
    /// Change of it with temperature, 1/K.
    pub per_k: f64,
}

/// Compressibility of the gas of a test at start, end and reference state.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Compressibility {
    /// At the start.
    pub start: EndState,
    /// At the end.
    pub end: EndState,
    /// At the reference state, compressibility alone.
    pub reference: f64,
}

impl Compressibility {
    /// An ideal gas: within 0.5 % of the rate for nitrogen and air below 1.2 MPa; methane at 0.9 MPa reads 3 to 5 % low.
    pub const IDEAL: Self = {
        let ideal = EndState { compressibility: 1.0, per_kpa: 0.0, per_k: 0.0 };
        Self { start: ideal, end: ideal, reference: 1.0 }
    };

    /// Asks an equation of state, `z(kpa, c)`, for all that a test needs.
    ///
    /// The slopes matter at high pressure: methane at 20 MPa answers a kelvin twice as strongly as an ideal gas does.
    ///
    /// # Errors
    /// Whatever `z` refuses.
    pub fn of<E>(test: &DecayTest, z: impl Fn(f64, f64) -> Result<f64, E>) -> Result<Self, E> {
        let end_state = |kpa: f64, c: f64| -> Result<EndState, E> {
            // Steps small against the curvature of Z and large against the digits of any equation of state.
            let (step_kpa, step_k) = (kpa * 1e-3, 0.1);
            Ok(EndState {
                compressibility: z(kpa, c)?,
                per_kpa: (z(kpa + step_kpa, c)? - z(kpa - step_kpa, c)?) / (2.0 * step_kpa),
                per_k: (z(kpa, c + step_k)? - z(kpa, c - step_k)?) / (2.0 * step_k),
            })
        };
        Ok(Self {
            start: end_state(test.start_kpa, test.start_c)?,
            end: end_state(test.end_kpa, test.end_c)?,
            reference: z(test.reference_kpa, test.reference_c)?,
        })
    }

    /// No compressibility was given.
    pub fn is_ideal(&self) -> bool {
        *self == Self::IDEAL
    }

    /// Amounts of gas at both ends, as p/(Z T).
    pub(super) fn states(&self, test: &DecayTest) -> Result<(Amount, Amount), Outside> {
        between("compressibility", self.reference, 0.05, 5.0)?;
        Ok((Amount::of(test.start_kpa, test.start_c, self.start)?, Amount::of(test.end_kpa, test.end_c, self.end)?))
    }
}

/// Gas in a unit of volume up to a constant: p/(Z T), with its slopes.
#[derive(Debug, Clone, Copy)]
pub(super) struct Amount {
    /// p/(Z T), kPa/K.
    pub held: f64,
    /// Its slope with pressure, 1/K.
    pub per_kpa: f64,
    /// Its slope with temperature, kPa/K2; below zero.
    pub per_k: f64,
}

impl Amount {
    fn of(kpa: f64, c: f64, state: EndState) -> Result<Self, Outside> {
        let z = between("compressibility", state.compressibility, 0.05, 5.0)?;
        let z_per_kpa = between("per_kpa", state.per_kpa, -1.0, 1.0)?;
        let z_per_k = between("per_k", state.per_k, -1.0, 1.0)?;
        let kelvin = c + ZERO_C_K;
        let held = kpa / (z * kelvin);
        Ok(Self { held, per_kpa: held * (1.0 / kpa - z_per_kpa / z), per_k: -held * (1.0 / kelvin + z_per_k / z) })
    }
}
