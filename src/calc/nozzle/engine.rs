//! What sizing needs to know of engine, supply and injector, and the arithmetic of one injection.

use serde::{Deserialize, Serialize};

use super::flow::{self, Through, bore_area_mm2, mass_flux};
use super::sizing::Spread;
use crate::calc::gas::GasState;
use crate::calc::{Composition, Error, Outside, between};

/// Idle manifold pressure taken when none is given, kPa absolute (common practice, 28 to 45).
pub const IDLE_MANIFOLD_KPA: f64 = 35.0;
/// Least pulse an ordinary gas injector meters well, ms: full opening time plus about 0.5 (common practice).
pub const LEAST_PULSE_MS: f64 = 2.5;
/// Dead time taken when none is given, ms: the intercept of delivered mass against commanded pulse (common practice).
pub const DEAD_TIME_MS: f64 = 1.0;
/// Largest duty taken when none is given (common practice, 0.85 to 0.95).
pub const MAX_DUTY: f64 = 0.90;

/// What the pressure regulator follows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Follows {
    /// Supply stays a fixed difference above the manifold.
    #[default]
    Manifold,
    /// Supply keeps its pressure at rated power whatever the manifold does.
    Nothing,
}

/// Engine, supply and injector at rated power. Four-stroke, one injection per cycle, one injector per engine cylinder.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Setting {
    /// Mole fractions of the gas.
    pub fuel: Composition,
    /// Speed of rated power, 1/min; 300 to 20 000.
    pub rated_rpm: f64,
    /// Engine cylinders, 1 to 16.
    pub engine_cylinders: u32,
    /// Manifold pressure at rated power, kPa absolute; 20 to 500.
    pub manifold_kpa: f64,
    /// Gas pressure over manifold at rated power, kPa; 10 to 2 000.
    pub supply_over_manifold_kpa: f64,
    /// What the regulator follows.
    #[serde(default)]
    pub regulator_follows: Follows,
    /// Gas temperature at the injector, C.
    pub gas_temperature_c: f64,
    /// Dead time of the gas injector, ms; 0 to 10.
    pub dead_time_ms: f64,
    /// Largest duty allowed, 0.2 to 1.
    pub max_duty: f64,
    /// Discharge coefficient referred to the nozzle bore, 0.05 to 1.
    pub discharge_coefficient: f64,
    /// Its standard uncertainty where the shop measured it, 0 to 0.5; `None`: taken from common practice, good to 12 %.
    #[serde(default)]
    pub discharge_uncertainty: Option<f64>,
    /// Nozzle bores to choose from, mm; 1 to 200 of them, each 0.3 to 10.
    pub sizes_mm: Vec<f64>,
    /// Least pulse the injector meters well, ms; 0 to 20.
    #[serde(default = "least_pulse_ms")]
    pub min_pulse_ms: f64,
}

pub(super) const fn least_pulse_ms() -> f64 {
    LEAST_PULSE_MS
}

pub(super) const fn idle_manifold_kpa() -> f64 {
    IDLE_MANIFOLD_KPA
}

/// One injection at idle.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Idle {
    /// Fuel per cycle and engine cylinder, mg.
    pub fuel_per_cycle_mg: f64,
    /// Manifold pressure, kPa absolute.
    pub manifold_kpa: f64,
}

/// What the gas does at the injector, for a discharge coefficient of 1.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Bore {
    /// Supply pressure, kPa absolute.
    pub upstream_kpa: f64,
    /// The flux and whether it is choked.
    pub through: Through,
    /// State of the gas before the nozzle.
    pub gas: GasState,
}

impl Setting {
    /// Refuses what cannot be an engine, a supply or an injector; in the order a form shows the fields.
    pub(super) fn check(&self) -> Result<(), Outside> {
        between("rated_rpm", self.rated_rpm, 300.0, 20_000.0)?;
        between("engine_cylinders", f64::from(self.engine_cylinders), 1.0, 16.0)?;
        between("manifold_kpa", self.manifold_kpa, 20.0, 500.0)?;
        between("supply_over_manifold_kpa", self.supply_over_manifold_kpa, 10.0, 2_000.0)?;
        between("dead_time_ms", self.dead_time_ms, 0.0, 10.0)?;
        between("max_duty", self.max_duty, 0.2, 1.0)?;
        between("discharge_coefficient", self.discharge_coefficient, 0.05, 1.0)?;
        if let Some(uncertainty) = self.discharge_uncertainty {
            between("discharge_uncertainty", uncertainty, 0.0, 0.5)?;
        }
        between("min_pulse_ms", self.min_pulse_ms, 0.0, 20.0)?;
        between("sizes_mm", self.sizes_mm.len() as f64, 1.0, 200.0)?;
        for size_mm in &self.sizes_mm {
            between("sizes_mm", *size_mm, 0.3, 10.0)?;
        }
        // The dead time must leave time to inject.
        between("dead_time_ms", self.dead_time_ms, 0.0, 0.99 * self.max_duty * self.window_ms())?;
        Ok(())
    }

    /// How well each input of the bore is known: common practice, and the coefficient as well as it was measured.
    pub(super) fn spread(&self) -> Spread {
        let usual = Spread::default();
        let measured = self.discharge_uncertainty.map(|u| u / self.discharge_coefficient);
        Spread { discharge: measured.unwrap_or(usual.discharge), ..usual }
    }

    /// Two revolutions, ms.
    pub(super) fn window_ms(&self) -> f64 {
        120_000.0 / self.rated_rpm
    }

    /// The sizes, ascending.
    pub(super) fn ascending_mm(&self) -> Vec<f64> {
        let mut sizes = self.sizes_mm.clone();
        sizes.sort_by(f64::total_cmp);
        sizes
    }

    /// The gas at the injector with the manifold at `manifold_kpa`.
    pub(super) fn bore(&self, manifold_kpa: f64) -> Result<Bore, Error> {
        let upstream_kpa = self.supply_over_manifold_kpa
            + match self.regulator_follows {
                Follows::Manifold => manifold_kpa,
                Follows::Nothing => self.manifold_kpa,
            };
        let gas = flow::upstream(&self.fuel, upstream_kpa, self.gas_temperature_c).map_err(rename)?;
        let through = mass_flux(upstream_kpa, manifold_kpa, gas.density_kg_m3, gas.isentropic_exponent)?;
        Ok(Bore { upstream_kpa, through, gas })
    }

    /// Commanded pulse for a dose, ms: `m / (Cd G A) + t_d`. mg over kg/(s m2) mm2 is ms times 1.
    pub(super) fn pulse_ms(&self, fuel_per_cycle_mg: f64, through: &Through, size_mm: f64) -> f64 {
        let rate_mg_ms = self.discharge_coefficient * through.mass_flux_kg_s_m2 * bore_area_mm2(size_mm) / 1e3;
        fuel_per_cycle_mg / rate_mg_ms + self.dead_time_ms
    }
}

/// `temperature_c` of the gas sum is this sum's `gas_temperature_c`; its pressure comes from two fields, the nearer of
/// which is the supply.
fn rename(error: Error) -> Error {
    let Error::Outside(mut outside) = error else { return error };
    outside.quantity = match outside.quantity {
        "temperature_c" => "gas_temperature_c",
        "pressure_kpa" | "upstream_kpa" => "supply_over_manifold_kpa",
        other => other,
    };
    Error::Outside(outside)
}
