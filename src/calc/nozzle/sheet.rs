//! A nozzle sheet: what was asked, what came out, and everything between that a reader needs to redo the sum.

use serde::{Deserialize, Serialize};

use super::flow::{self, Through, mass_flux};
use super::{FromPetrol, PetrolSized, Setting, Sized, Sizing, size, size_from_petrol};
use crate::calc::fuel::{Fuel, fuel};
use crate::calc::fuel_parts::{self, Part};
use crate::calc::gas::GasState;
use crate::calc::nozzle::engine::Follows;
use crate::calc::{Composition, Error};

/// A nozzle asked for.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "from", rename_all = "kebab-case")]
pub enum Asked {
    /// From rated power.
    Power(Sizing),
    /// From petrol injection data.
    Petrol(FromPetrol),
}

/// What came out.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "from", rename_all = "kebab-case")]
pub enum Found {
    /// From rated power.
    Power(Sized),
    /// From petrol injection data.
    Petrol(PetrolSized),
}

/// The gas before the nozzle at one engine condition.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct AtNozzle {
    /// Supply, kPa absolute.
    pub upstream_kpa: f64,
    /// Manifold, kPa absolute.
    pub manifold_kpa: f64,
    /// State of the gas.
    pub gas: GasState,
    /// Its flux for a discharge coefficient of 1.
    pub through: Through,
}

/// A whole sheet.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sheet {
    /// The parts of the fuel, with what each gives and needs.
    pub parts: Vec<Part>,
    /// The fuel.
    pub fuel: Fuel,
    /// The gas at rated power.
    pub rated: AtNozzle,
    /// The gas at idle; none without idle data.
    pub idle: Option<AtNozzle>,
    /// The nozzle.
    pub found: Found,
}

impl Asked {
    /// Mole fractions of the gas.
    #[must_use]
    pub fn composition(&self) -> &Composition {
        match self {
            Self::Power(sizing) => &sizing.fuel,
            Self::Petrol(from) => &from.setting.fuel,
        }
    }

    /// Engine, supply and injector.
    #[must_use]
    pub fn setting(&self) -> Setting {
        match self {
            Self::Power(sizing) => sizing.setting(),
            Self::Petrol(from) => from.setting.clone(),
        }
    }

    /// Manifold pressure at idle, kPa absolute.
    #[must_use]
    pub fn idle_manifold_kpa(&self) -> f64 {
        match self {
            Self::Power(sizing) => sizing.idle_manifold_kpa,
            Self::Petrol(from) => from.injection.idle_manifold_kpa,
        }
    }
}

impl Found {
    /// The nozzle itself.
    #[must_use]
    pub fn nozzle(&self) -> &Sized {
        match self {
            Self::Power(sized) => sized,
            Self::Petrol(found) => &found.nozzle,
        }
    }
}

/// Sizes a nozzle and keeps what lies between.
///
/// # Errors
/// As [`size`] and [`size_from_petrol`].
///
/// # Source
/// Those of the two.
pub fn sheet(asked: &Asked) -> Result<Sheet, Error> {
    let found = match asked {
        Asked::Power(sizing) => Found::Power(size(sizing)?),
        Asked::Petrol(from) => Found::Petrol(size_from_petrol(from)?),
    };
    let setting = asked.setting();
    let has_idle = found.nozzle().idle_pulse_ms.is_some();
    let idle = has_idle.then(|| at_nozzle(&setting, asked.idle_manifold_kpa())).transpose()?;
    Ok(Sheet {
        parts: fuel_parts::parts(asked.composition())?,
        fuel: fuel(asked.composition())?,
        rated: at_nozzle(&setting, setting.manifold_kpa)?,
        idle,
        found,
    })
}

fn at_nozzle(setting: &Setting, manifold_kpa: f64) -> Result<AtNozzle, Error> {
    let held_at = match setting.regulator_follows {
        Follows::Manifold => manifold_kpa,
        Follows::Nothing => setting.manifold_kpa,
    };
    let upstream_kpa = setting.supply_over_manifold_kpa + held_at;
    let gas = flow::upstream(&setting.fuel, upstream_kpa, setting.gas_temperature_c)?;
    let through = mass_flux(upstream_kpa, manifold_kpa, gas.density_kg_m3, gas.isentropic_exponent)?;
    Ok(AtNozzle { upstream_kpa, manifold_kpa, gas, through })
}
