//! Nozzle size from what the petrol injectors deliver: needs neither power nor efficiency, because the engine draws the
//! same air on either fuel, less what the gas displaces.

use serde::{Deserialize, Serialize};

use super::engine::{Idle, Setting, idle_manifold_kpa};
use super::sizing::{Sized, size_dose};
use crate::calc::fuel::{Fuel, fuel};
use crate::calc::petrol::Petrol;
use crate::calc::{Basis, Error, Outside, Source, between};

/// What [`size_from_petrol`] rests on.
pub const BASIS: Basis = Basis {
    key: "nozzle-from-petrol",
    method: "petrol per cycle from injector flow and pulse; same air on gas less what the gas displaces; then as sizing",
    formulas: &[
        "m_p = q_p/60000 (t_p - t_dp)",
        "m_c = m_p lambda_p AFR_p (1 - share) / (lambda_g AFR_g)",
        "t_g/t_p = (m_c/(Cd G A) + t_d) / t_p",
    ],
    relative_uncertainty: None,
    sources: &[Source::Un83, Source::En16258, Source::Iso9300, Source::Gerg2008, Source::CommonPractice],
};

/// Petrol injection as measured at rated speed and full load.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PetrolInjection {
    /// What was in the tank.
    pub petrol: Petrol,
    /// Flow of one petrol injector held open, g/min; 20 to 5 000.
    pub static_flow_g_min: f64,
    /// Injection time at rated speed, ms; 0.5 to 100.
    pub rated_pulse_ms: f64,
    /// Dead time of the petrol injector, ms; 0 to 5.
    pub dead_time_ms: f64,
    /// Lambda on petrol there; 0.7 to 1.1. Common practice 0.85 to 0.92 at full load.
    pub petrol_lambda: f64,
    /// Lambda wanted on gas; 0.7 to 1.1. One when gas runs closed loop up to full load.
    pub gas_lambda: f64,
    /// Take off the air that the gas displaces (3.6 % on LPG).
    pub is_displaced_air_taken_off: bool,
    /// Injection time at idle, ms; idle is judged when given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub idle_pulse_ms: Option<f64>,
    /// Manifold pressure at idle, kPa absolute; 15 to 120.
    #[serde(default = "idle_manifold_kpa")]
    pub idle_manifold_kpa: f64,
}

/// A nozzle to be sized from petrol injection data.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FromPetrol {
    /// What the petrol injectors do.
    pub injection: PetrolInjection,
    /// Engine, supply and gas injector.
    pub setting: Setting,
}

/// A nozzle sized from petrol injection data.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct PetrolSized {
    /// The nozzle.
    pub nozzle: Sized,
    /// Petrol per cycle and engine cylinder, mg.
    pub petrol_per_cycle_mg: f64,
    /// Air per cycle and engine cylinder on petrol, mg.
    pub air_per_cycle_mg: f64,
    /// Gas per cycle by equal energy instead of equal air, mg: a plausibility line.
    pub by_energy_mg: f64,
    /// Injection time on gas over that on petrol at rated speed. Usual 1.1 to 1.7 (common practice).
    pub time_ratio_at_rated: f64,
    /// The same at idle; none without the idle pulse. Dead times bend the ratio at short pulses.
    pub time_ratio_at_idle: Option<f64>,
}

/// Sizes a nozzle from petrol injection data.
///
/// ```text
/// m_p = q_p/60000 (t_p - t_dp)      air = m_p lambda_p AFR_p      m_c = air (1 - share) / (lambda_g AFR_g)
/// ```
///
/// Worked example: 200 g/min, 14.0 ms, dead time 0.9 ms, lambda 0.88, E5: 43.67 mg petrol, 549 mg air; 60 mol % propane
/// in n-butane at lambda 0.88: 40.05 mg with no displaced air taken off.
///
/// # Errors
/// [`Error::Outside`] names the quantity beyond its range; [`Error::Wet`] when the gas at the injector is partly liquid.
///
/// # Source
/// Mass balance; air need by H/C and O/C of UN Regulation No. 83 petrol.
pub fn size_from_petrol(from: &FromPetrol) -> Result<PetrolSized, Error> {
    let FromPetrol { injection, setting } = from;
    injection.check()?;
    setting.check()?;
    let gas = fuel(&setting.fuel)?;
    let petrol_mg = injection.petrol_mg(injection.rated_pulse_ms);
    let idle = injection.idle_pulse_ms.map(|pulse_ms| Idle {
        // Idle runs closed loop on either fuel.
        fuel_per_cycle_mg: injection.gas_mg(injection.petrol_mg(pulse_ms), 1.0, 1.0, &gas),
        manifold_kpa: injection.idle_manifold_kpa,
    });
    let dose_mg = injection.gas_mg(petrol_mg, injection.petrol_lambda, injection.gas_lambda, &gas);
    let nozzle = size_dose(setting, dose_mg, idle)?;
    Ok(PetrolSized {
        petrol_per_cycle_mg: petrol_mg,
        air_per_cycle_mg: petrol_mg * injection.petrol_lambda * injection.petrol.stoichiometric_afr(),
        by_energy_mg: petrol_mg * injection.petrol.lower_heating_value_mj_kg() / gas.lower_heating_value_mj_kg,
        time_ratio_at_rated: nozzle.rated_pulse_ms / injection.rated_pulse_ms,
        time_ratio_at_idle: nozzle.idle_pulse_ms.zip(injection.idle_pulse_ms).map(|(gas, petrol)| gas / petrol),
        nozzle,
    })
}

impl PetrolInjection {
    fn check(&self) -> Result<(), Outside> {
        between("static_flow_g_min", self.static_flow_g_min, 20.0, 5_000.0)?;
        between("dead_time_ms", self.dead_time_ms, 0.0, 5.0)?;
        between("rated_pulse_ms", self.rated_pulse_ms, (self.dead_time_ms + 0.1).max(0.5), 100.0)?;
        between("petrol_lambda", self.petrol_lambda, 0.7, 1.1)?;
        between("gas_lambda", self.gas_lambda, 0.7, 1.1)?;
        between("idle_manifold_kpa", self.idle_manifold_kpa, 15.0, 120.0)?;
        if let Some(pulse_ms) = self.idle_pulse_ms {
            between("idle_pulse_ms", pulse_ms, self.dead_time_ms + 0.05, 100.0)?;
        }
        Ok(())
    }

    /// g/min times ms is 1/60 mg.
    fn petrol_mg(&self, pulse_ms: f64) -> f64 {
        self.static_flow_g_min / 60.0 * (pulse_ms - self.dead_time_ms)
    }

    fn gas_mg(&self, petrol_mg: f64, petrol_lambda: f64, gas_lambda: f64, gas: &Fuel) -> f64 {
        let air_mg = petrol_mg * petrol_lambda * self.petrol.stoichiometric_afr();
        let kept = if self.is_displaced_air_taken_off { 1.0 - gas.displaced_share } else { 1.0 };
        air_mg * kept / (gas_lambda * gas.stoichiometric_afr)
    }
}
