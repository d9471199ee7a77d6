//! How much fuel flows: typed as it is, or from the power of the engine.

use super::number::{self, Number, number};
use crate::calc::fuel::fuel;
use crate::calc::{Composition, Error};
use crate::unit::Unit;
use crate::web::form::{Form, Wrong};
use crate::web::kit::Group;
use crate::words::Words;

/// Common practice for the brake efficiency: 0.28 aspirated and enriched, 0.30 at lambda 1, 0.32 boosted.
const NUMBERS: [Number; 3] = [
    number("rated_power_kw", Unit::Kilowatt, 1.0, 1_000.0).optional(),
    number("brake_efficiency", Unit::One, 0.1, 0.5).usual("0.30"),
    number("fuel_rate_g_s", Unit::One, 0.01, 200.0).optional().counted_in("g/s"),
];

/// A fuel rate as it was asked.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum FuelRate {
    /// From power, kW, and brake efficiency.
    Power {
        /// Brake power, kW.
        rated_power_kw: f64,
        /// Brake efficiency.
        brake_efficiency: f64,
    },
    /// As typed, g/s, and the efficiency in case power is asked back.
    Flow {
        /// Fuel rate, g/s.
        fuel_rate_g_s: f64,
        /// Brake efficiency.
        brake_efficiency: f64,
    },
}

/// What the fields open with.
pub fn openings() -> Vec<crate::web::job::origins::Default> {
    number::openings(&NUMBERS)
}

/// The fields.
pub fn group(w: &Words, form: &Form) -> Group {
    Group::new(w.t("bench-group-fuel-rate"), number::fields(w, form, &NUMBERS)).noted(w.t("bench-note-fuel-rate"))
}

/// What was typed: one of the two, not both.
pub fn read(form: &mut Form) -> Option<FuelRate> {
    let [power, efficiency, rate] = number::read(form, &NUMBERS);
    let is_typed = |form: &Form, name: &str| !form.value(name).trim().is_empty();
    match (is_typed(form, "rated_power_kw"), is_typed(form, "fuel_rate_g_s")) {
        (true, true) => form.fail("fuel_rate_g_s", Wrong::Rule("bench-fuel-rate-both", Vec::new())),
        (false, false) => form.fail("rated_power_kw", Wrong::Rule("bench-fuel-rate-none", Vec::new())),
        _ => {}
    }
    let brake_efficiency = efficiency?;
    match (power, rate) {
        (Some(rated_power_kw), None) => Some(FuelRate::Power { rated_power_kw, brake_efficiency }),
        (None, Some(fuel_rate_g_s)) => Some(FuelRate::Flow { fuel_rate_g_s, brake_efficiency }),
        _ => None,
    }
}

impl FuelRate {
    /// `P / (eta H)`, or what was typed; g/s.
    ///
    /// # Errors
    /// As [`fuel`].
    pub fn g_s(&self, composition: &Composition) -> Result<f64, Error> {
        match *self {
            Self::Flow { fuel_rate_g_s, .. } => Ok(fuel_rate_g_s),
            Self::Power { rated_power_kw, brake_efficiency } => {
                Ok(rated_power_kw / (brake_efficiency * fuel(composition)?.lower_heating_value_mj_kg))
            }
        }
    }

    /// Brake efficiency.
    pub const fn brake_efficiency(&self) -> f64 {
        match *self {
            Self::Flow { brake_efficiency, .. } | Self::Power { brake_efficiency, .. } => brake_efficiency,
        }
    }

    /// The field that a refusal of the rate belongs to.
    pub const fn field(&self) -> &'static str {
        match self {
            Self::Flow { .. } => "fuel_rate_g_s",
            Self::Power { .. } => "rated_power_kw",
        }
    }
}
