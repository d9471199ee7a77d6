//! Nozzle size from rated power: the smallest bore that still delivers rated fuel within the time there is, with a check
//! that the idle pulse stays controllable.

use std::f64::consts::PI;

use serde::{Deserialize, Serialize};

use super::engine::{Follows, Idle, Setting, idle_manifold_kpa, least_pulse_ms};
use super::verdict::{Candidate, Case, Reason, Verdict};
use crate::calc::fuel::fuel;
use crate::calc::{Basis, Caution, Composition, Error, Outside, Source, between};

/// What [`size`] rests on.
pub const BASIS: Basis = Basis {
    key: "nozzle",
    method: "fuel per cycle from rated power and brake efficiency; isentropic flow through the nozzle; next larger size",
    formulas: &[
        "m_f = P / (eta H_net), m_c = m_f (120/n) / N",
        "t_o = D_max 120000/n - t_d",
        "A = (m_c / t_o) / (Cd G), d = sqrt(4 A / pi)",
        "D = (m_c/(Cd G A) + t_d) n / 120000",
        "n_lim = D_max 120000 / (m_c/(Cd G A) + t_d)",
    ],
    relative_uncertainty: None,
    sources: &[
        Source::Iso9300,
        Source::Gerg2008,
        Source::Iso6976,
        Source::WardSmith1979,
        Source::AppliedSciences13,
        Source::GasInjectorTimes2016,
        Source::Aslam2005,
        Source::CommonPractice,
    ],
};

/// A nozzle to be sized from rated power. See [`Setting`] for ranges.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sizing {
    /// Mole fractions of the gas.
    pub fuel: Composition,
    /// Rated power, kW; 1 to 1 000.
    pub rated_power_kw: f64,
    /// Speed of rated power, 1/min.
    pub rated_rpm: f64,
    /// Engine cylinders.
    pub engine_cylinders: u32,
    /// Brake efficiency at rated power; 0.1 to 0.5. Common practice: 0.28 aspirated and enriched, 0.30 at lambda 1,
    /// 0.32 boosted.
    pub brake_efficiency: f64,
    /// Manifold pressure at rated power, kPa absolute.
    pub manifold_kpa: f64,
    /// Gas pressure over manifold, kPa. Common practice: LPG 100 to 130, CNG 150 to 250.
    pub supply_over_manifold_kpa: f64,
    /// What the regulator follows; the manifold when left out.
    #[serde(default)]
    pub regulator_follows: Follows,
    /// Gas temperature at the injector, C. Common practice: LPG 50, CNG 40.
    pub gas_temperature_c: f64,
    /// Dead time of the gas injector, ms.
    pub dead_time_ms: f64,
    /// Largest duty allowed.
    pub max_duty: f64,
    /// Discharge coefficient referred to the nozzle bore.
    pub discharge_coefficient: f64,
    /// Its standard uncertainty where the shop measured it, 0 to 0.5; `None`: taken from common practice, good to 12 %.
    #[serde(default)]
    pub discharge_uncertainty: Option<f64>,
    /// Nozzle bores to choose from, mm.
    pub sizes_mm: Vec<f64>,
    /// Idle speed, 1/min; 300 to 3 000. Idle is judged when this and the next are given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub idle_rpm: Option<f64>,
    /// Fuel energy rate at idle, kW; 0.2 to 100. About 8.8 for 2 L displacement (common practice).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub idle_fuel_power_kw: Option<f64>,
    /// Manifold pressure at idle, kPa absolute; 15 to 120.
    #[serde(default = "idle_manifold_kpa")]
    pub idle_manifold_kpa: f64,
    /// Least pulse the injector meters well, ms.
    #[serde(default = "least_pulse_ms")]
    pub min_pulse_ms: f64,
}

/// A sized nozzle.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sized {
    /// Bore that just delivers rated fuel, mm.
    pub diameter_mm: f64,
    /// Its standard uncertainty, mm ([`Spread`]).
    pub diameter_standard_uncertainty_mm: f64,
    /// Next size of the list; none when no size reaches the bore needed.
    pub chosen_mm: Option<f64>,
    /// The chosen size, or the largest of the list: duty, pulse and speed limit are of this one.
    pub used_mm: f64,
    /// Commanded pulse at rated power over the window of two revolutions.
    pub duty_at_rated: f64,
    /// Commanded pulse at rated power, ms.
    pub rated_pulse_ms: f64,
    /// Pulse at idle, ms; none without idle data.
    pub idle_pulse_ms: Option<f64>,
    /// Speed at which the duty limit is reached with the same fuel per cycle, 1/min.
    pub limit_rpm: f64,
    /// The verdict on the list.
    pub verdict: Verdict,
    /// Why.
    pub reasons: Vec<Reason>,
    /// Every size of the list by itself, ascending.
    pub candidates: Vec<Candidate>,
    /// Fuel per cycle and engine cylinder at rated power, mg.
    pub fuel_per_cycle_mg: f64,
    /// The same at idle; none without idle data.
    pub idle_fuel_per_cycle_mg: Option<f64>,
    /// Window of two revolutions, ms.
    pub window_ms: f64,
    /// Open time there is, ms: window times largest duty less dead time.
    pub open_time_ms: f64,
    /// Gas pressure at the injector at rated power, kPa absolute.
    pub upstream_kpa: f64,
    /// Mass flux at rated power for a discharge coefficient of 1, kg/(s m2).
    pub mass_flux_kg_s_m2: f64,
    /// The nozzle is choked at rated power.
    pub choked: bool,
    /// Pressure ratio at and below which it chokes.
    pub choking_share: f64,
    /// Temperature below which the rail rains, C; none where no dew test applies.
    pub dew_temperature_c: Option<f64>,
    /// What a reader should know.
    pub cautions: Vec<Caution>,
}

impl Sized {
    /// The candidate of this bore, mm.
    #[must_use]
    pub fn candidate(&self, size_mm: f64) -> Option<Candidate> {
        self.candidates.iter().find(|one| (one.size_mm - size_mm).abs() < 1e-9).copied()
    }
}

/// Relative standard uncertainties of what the bore is computed from.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Spread {
    /// Of brake efficiency.
    pub efficiency: f64,
    /// Of the discharge coefficient.
    pub discharge: f64,
    /// Of rated power.
    pub power: f64,
    /// Of the open time.
    pub open_time: f64,
    /// Of the supply pressure, absolute.
    pub supply: f64,
}

impl Default for Spread {
    /// Common practice; the discharge coefficient unmeasured.
    fn default() -> Self {
        Self { efficiency: 0.05, discharge: 0.12, power: 0.03, open_time: 0.04, supply: 0.02 }
    }
}

impl Spread {
    /// Relative standard uncertainty of the bore.
    ///
    /// ```text
    /// (u_d/d)^2 = ((u_eta)^2 + (u_Cd)^2 + (u_P)^2 + (u_to)^2) / 4 + (u_p / 2)^2     all relative
    /// ```
    ///
    /// The bore goes with the square root of each; with the defaults 7 %, 0.15 mm at 2.1 mm.
    ///
    /// # Source
    /// JCGM 100:2008, 5.1.
    #[must_use]
    pub fn of_diameter(&self) -> f64 {
        let Self { efficiency, discharge, power, open_time, supply } = *self;
        [efficiency, discharge, power, open_time, supply].iter().map(|u| u * u).sum::<f64>().sqrt() / 2.0
    }
}

/// Sizes a nozzle from rated power.
///
/// ```text
/// m_f = P / (eta H_net)         m_c = m_f (120/n) / N        t_w = 120000 / n      t_o = D_max t_w - t_d
/// A = (m_c / t_o) / (Cd G)      d = sqrt(4 A / pi)           D = (m_c/(Cd G A_chosen) + t_d) / t_w
/// t_idle = m_ci/(Cd G_i A_chosen) + t_d                      n_lim = D_max 120000 / (m_c/(Cd G A) + t_d)
/// ```
///
/// Worked example: 75 kW at 5 800 rpm, 4 engine cylinders, 60 mol % propane in n-butane, efficiency 0.30, manifold
/// 97 kPa, 120 kPa over it, 50 C, dead time 1.6 ms, duty 0.90, coefficient 0.80: 28.08 mg a cycle, 2.10 mm, 2.2 chosen,
/// duty 0.83, lean above 6 290 rpm.
///
/// # Errors
/// [`Error::Outside`] names the quantity beyond its range (the dead time when it leaves no time to inject);
/// [`Error::Wet`] when the gas at the injector is partly liquid.
///
/// # Source
/// Mass balance; [`mass_flux`](super::mass_flux) for `G`.
pub fn size(sizing: &Sizing) -> Result<Sized, Error> {
    between("rated_power_kw", sizing.rated_power_kw, 1.0, 1_000.0)?;
    between("brake_efficiency", sizing.brake_efficiency, 0.1, 0.5)?;
    let setting = sizing.setting();
    setting.check()?;
    let energy_mj_kg = fuel(&sizing.fuel)?.lower_heating_value_mj_kg;
    // kW over MJ/kg is g/s.
    let fuel_rate_g_s = sizing.rated_power_kw / (sizing.brake_efficiency * energy_mj_kg);
    let fuel_per_cycle_mg = fuel_rate_g_s * 1e3 * setting.cycle_s(sizing.rated_rpm);
    let idle = sizing.idle(energy_mj_kg, &setting)?;
    size_dose(&setting, fuel_per_cycle_mg, idle)
}

impl Sizing {
    pub(super) fn setting(&self) -> Setting {
        Setting {
            fuel: self.fuel,
            rated_rpm: self.rated_rpm,
            engine_cylinders: self.engine_cylinders,
            manifold_kpa: self.manifold_kpa,
            supply_over_manifold_kpa: self.supply_over_manifold_kpa,
            regulator_follows: self.regulator_follows,
            gas_temperature_c: self.gas_temperature_c,
            dead_time_ms: self.dead_time_ms,
            max_duty: self.max_duty,
            discharge_coefficient: self.discharge_coefficient,
            discharge_uncertainty: self.discharge_uncertainty,
            sizes_mm: self.sizes_mm.clone(),
            min_pulse_ms: self.min_pulse_ms,
        }
    }

    fn idle(&self, energy_mj_kg: f64, setting: &Setting) -> Result<Option<Idle>, Error> {
        let manifold_kpa = between("idle_manifold_kpa", self.idle_manifold_kpa, 15.0, 120.0)?;
        // Checked before the pair is asked for: a wrong number does not hide behind a missing one.
        if let Some(rpm) = self.idle_rpm {
            between("idle_rpm", rpm, 300.0, 3_000.0)?;
        }
        if let Some(power_kw) = self.idle_fuel_power_kw {
            between("idle_fuel_power_kw", power_kw, 0.2, 100.0)?;
        }
        let (Some(rpm), Some(power_kw)) = (self.idle_rpm, self.idle_fuel_power_kw) else { return Ok(None) };
        let fuel_per_cycle_mg = power_kw / energy_mj_kg * 1e3 * setting.cycle_s(rpm);
        Ok(Some(Idle { fuel_per_cycle_mg, manifold_kpa }))
    }
}

impl Setting {
    /// Seconds of one cycle shared among the engine cylinders: engine fuel rate times this is one dose.
    fn cycle_s(&self, rpm: f64) -> f64 {
        120.0 / rpm / f64::from(self.engine_cylinders)
    }
}

/// Sizes a nozzle for a dose already known.
pub(super) fn size_dose(setting: &Setting, fuel_per_cycle_mg: f64, idle: Option<Idle>) -> Result<Sized, Error> {
    let window_ms = setting.window_ms();
    let open_time_ms = setting.max_duty * window_ms - setting.dead_time_ms;
    let rated = setting.bore(setting.manifold_kpa)?;
    let flux = rated.through.mass_flux_kg_s_m2;
    // mg/ms is 1e-3 kg/s, m2 is 1e6 mm2.
    let area_mm2 = fuel_per_cycle_mg / open_time_ms / (setting.discharge_coefficient * flux) * 1e3;
    let diameter_mm = (4.0 * area_mm2 / PI).sqrt();
    let idle_bore = idle.map(|idle| setting.bore(idle.manifold_kpa)).transpose()?;
    let case = Case { setting, fuel_per_cycle_mg, rated: &rated, idle: idle.zip(idle_bore.as_ref()), diameter_mm };
    let candidates: Vec<Candidate> = setting.ascending_mm().into_iter().map(|size| case.candidate(size)).collect();
    let chosen = candidates.iter().find(|c| case.is_large_enough(c.size_mm));
    // `check` has seen to it that the list is not empty.
    let Some(used) = chosen.or(candidates.last()).copied() else {
        return Err(Outside { quantity: "sizes_mm", got: 0.0, least: 1.0, most: 200.0 }.into());
    };
    let chosen_mm = chosen.map(|c| c.size_mm);
    let (verdict, reasons) = case.judge(&candidates, &used);
    Ok(Sized {
        diameter_mm,
        diameter_standard_uncertainty_mm: setting.spread().of_diameter() * diameter_mm,
        chosen_mm,
        used_mm: used.size_mm,
        duty_at_rated: used.duty_at_rated,
        rated_pulse_ms: used.rated_pulse_ms,
        idle_pulse_ms: used.idle_pulse_ms,
        limit_rpm: used.limit_rpm,
        verdict,
        reasons,
        candidates,
        fuel_per_cycle_mg,
        idle_fuel_per_cycle_mg: idle.map(|idle| idle.fuel_per_cycle_mg),
        window_ms,
        open_time_ms,
        upstream_kpa: rated.upstream_kpa,
        mass_flux_kg_s_m2: flux,
        choked: rated.through.choked,
        choking_share: rated.through.choking_share,
        dew_temperature_c: rated.gas.dew_temperature_c,
        cautions: rated.gas.cautions,
    })
}
