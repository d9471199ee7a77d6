//! Leak test by pressure decay: rate, uncertainty, verdict, and what a better test would need.
//!
//! A kelvin is a leak: a gas that cools by 1 K at 20 C loses 0.34 % of its pressure without losing any gas. Temperatures
//! at start and end are therefore part of every test here.
//!
//! Rates are in cm3/h of gas at the reference state (15 C and 101.325 kPa unless said), positive for a loss; pressures
//! are absolute. Limits come from outside. The result is one ground among others: local codes and a licensed person decide.

pub mod budget;
pub mod gas;
pub mod plan;
pub mod trace;
pub mod units;
mod worked;

use std::fmt;

use serde::{Deserialize, Serialize};

use super::decision::{self, Rule, Verdict};
use super::{Basis, Outside, Source, between};
pub use budget::{BudgetQuantity, BudgetRow};
pub use gas::Compressibility;
pub use worked::steps;

/// What [`judge`] rests on.
pub const BASIS: Basis = Basis {
    key: "leak",
    method: "mass balance of a closed section by p/(Z T), first-order uncertainty (k = 2), guard band w = U",
    formulas: &[
        "q = V (T_ref Z_ref/p_ref) (p1/(Z1 T1) - p2/(Z2 T2)) / dt",
        "u^2 = sum((dq/dx_i)^2 u_i^2), U = 2 u",
        "pass: q + U <= limit and q >= -U; fail: q - U > limit",
    ],
    relative_uncertainty: None,
    sources: &[Source::Jcgm100, Source::Jcgm106, Source::IlacG8, Source::Iso13443],
};

/// 0 C in kelvin.
pub(crate) const ZERO_C_K: f64 = 273.15;
/// Coverage factor of every expanded uncertainty here, about 95 % (JCGM 100:2008, 6.3.3).
pub const COVERAGE_FACTOR: f64 = 2.0;
/// Above this pressure the ideal form is too far off to rest a proof on, kPa absolute.
pub const IDEAL_GAS_LIMIT_KPA: f64 = 1_500.0;

/// Readings of a pressure-decay test, the instruments behind them and the limit.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DecayTest {
    /// Volume of the whole tested section, litres.
    pub volume_l: f64,
    /// Pressure at the start, kPa absolute.
    pub start_kpa: f64,
    /// Pressure at the end, kPa absolute.
    pub end_kpa: f64,
    /// Temperature of the gas or the metal around it at the start, C.
    pub start_c: f64,
    /// The same at the end, C.
    pub end_c: f64,
    /// From start to end, minutes.
    pub duration_min: f64,
    /// Limit the rate is held against, cm3/h at the reference state.
    pub limit_cm3_h: f64,
    /// Smallest step of the gauge, kPa.
    pub pressure_resolution_kpa: f64,
    /// Standard uncertainty of one pressure reading without the resolution, kPa: repeatability and drift over the test.
    pub pressure_standard_uncertainty_kpa: f64,
    /// Standard uncertainty of one temperature reading, K.
    pub temperature_standard_uncertainty_k: f64,
    /// Standard uncertainty of the volume over the volume.
    pub volume_relative_standard_uncertainty: f64,
    /// Reference temperature, C.
    #[serde(default = "reference_c")]
    pub reference_c: f64,
    /// Reference pressure, kPa absolute.
    #[serde(default = "reference_kpa")]
    pub reference_kpa: f64,
}

/// Usual reference temperature, 15 C (ISO 13443, from memory).
pub fn reference_c() -> f64 {
    15.0
}

/// Usual reference pressure, 101.325 kPa (ISO 13443, from memory).
pub fn reference_kpa() -> f64 {
    101.325
}

/// What to be careful about in a result.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum LeakWarning {
    /// Above [`IDEAL_GAS_LIMIT_KPA`] and reckoned as an ideal gas: the compressibility of the gas is needed.
    IdealGasAboveItsRange,
    /// Above [`IDEAL_GAS_LIMIT_KPA`] with the gas known: the compressibility moves with every tenth of a kelvin.
    HighPressure,
    /// The pressure rose by more than it can be wrong: the temperature moved unseen, or gas came in.
    Inconsistent,
    /// The change of temperature alone stands for more than the limit: the rate is a small difference of large numbers.
    TemperatureMoved,
}

impl fmt::Display for LeakWarning {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::IdealGasAboveItsRange => {
                "above 1500 kPa the ideal gas law is not good enough for a leak rate: give the composition of the gas"
            }
            Self::HighPressure => {
                "above 1500 kPa the rate is a small difference of large numbers that moves with every tenth of a kelvin: prove a full cylinder by foam or a detector"
            }
            Self::Inconsistent => {
                "inconsistent: the pressure rose by more than it can be wrong; check the temperatures, and that nothing feeds the section"
            }
            Self::TemperatureMoved => {
                "the change of temperature alone stands for more than the limit: let the section settle and repeat"
            }
        })
    }
}

/// What a pressure-decay test says.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct LeakResult {
    /// Rate of loss, cm3/h at the reference state; below zero for an apparent gain.
    pub rate_cm3_h: f64,
    /// Expanded uncertainty of the rate, k = 2, cm3/h.
    pub expanded_uncertainty_cm3_h: f64,
    /// Guard band w = U; a doubt is never a pass.
    pub verdict: Verdict,
    /// The rate lies below zero by more than its uncertainty; the verdict then is *cannot tell*.
    pub inconsistent: bool,
    /// How long the test had to be for a verdict at this rate, minutes; `None` where no duration helps.
    pub needed_duration_min: Option<f64>,
    /// Largest standard uncertainty of one pressure reading, resolution counted in, that gives a verdict in the time
    /// taken, kPa; `None` where no gauge helps.
    pub needed_pressure_standard_uncertainty_kpa: Option<f64>,
    /// Where the uncertainty comes from.
    pub budget: Vec<BudgetRow>,
    /// What to be careful about.
    pub warnings: Vec<LeakWarning>,
}

/// Rate of loss, cm3/h at the reference state; positive for a loss.
///
/// ```text
/// q = V (T_ref Z_ref / p_ref) (p1/(Z1 T1) - p2/(Z2 T2)) / dt
/// ```
///
/// # Errors
/// [`Outside`] names the first reading that leaves its range.
///
/// # Source
/// Conservation of mass in a closed section with the gas law p V = Z n R T.
pub fn rate_cm3_h(test: &DecayTest, gas: &Compressibility) -> Result<f64, Outside> {
    check(test)?;
    let (start, end) = gas.states(test)?;
    Ok(constant(test, gas) * (start.held - end.held))
}

/// Rate, uncertainty, verdict and needs of a test.
///
/// `gas`: [`Compressibility::IDEAL`], or the compressibility of the gas at both ends.
///
/// ```text
/// pass         q + U <= limit  and  q >= -U
/// fail         q - U > limit
/// cannot tell  otherwise
/// ```
///
/// # Errors
/// [`Outside`] names the first reading that leaves its range.
///
/// # Source
/// Decision: ILAC-G8:09/2019, 4.2.3, guard band w = U. Uncertainty: JCGM 100:2008, 5.1.2; see [`budget`].
pub fn judge(test: &DecayTest, gas: &Compressibility) -> Result<LeakResult, Outside> {
    let rate_cm3_h = rate_cm3_h(test, gas)?;
    let budget = budget::rows(test, gas, rate_cm3_h)?;
    let expanded_uncertainty_cm3_h = COVERAGE_FACTOR * budget::combined(&budget);
    let inconsistent = rate_cm3_h < -expanded_uncertainty_cm3_h;
    let verdict = if inconsistent {
        Verdict::CannotTell
    } else {
        decision::at_most(rate_cm3_h, expanded_uncertainty_cm3_h, test.limit_cm3_h, Rule::Guarded)?
    };
    let needs = plan::Needs::of(test, gas, rate_cm3_h)?;
    Ok(LeakResult {
        rate_cm3_h,
        expanded_uncertainty_cm3_h,
        verdict,
        inconsistent,
        needed_duration_min: needs.duration_min(),
        needed_pressure_standard_uncertainty_kpa: needs.pressure_standard_uncertainty_kpa(),
        warnings: warnings(test, gas, inconsistent)?,
        budget,
    })
}

fn warnings(test: &DecayTest, gas: &Compressibility, inconsistent: bool) -> Result<Vec<LeakWarning>, Outside> {
    let (start, _) = gas.states(test)?;
    let by_temperature = constant(test, gas) * start.per_k * (test.end_c - test.start_c);
    let is_high = test.start_kpa.max(test.end_kpa) > IDEAL_GAS_LIMIT_KPA;
    Ok([
        (LeakWarning::IdealGasAboveItsRange, is_high && gas.is_ideal()),
        (LeakWarning::HighPressure, is_high && !gas.is_ideal()),
        (LeakWarning::Inconsistent, inconsistent),
        (LeakWarning::TemperatureMoved, by_temperature.abs() > test.limit_cm3_h),
    ]
    .into_iter()
    .filter_map(|(warning, holds)| holds.then_some(warning))
    .collect())
}

/// What turns a change of p/(Z T), kPa/K, into cm3/h: V T_ref Z_ref / (p_ref dt).
fn constant(test: &DecayTest, gas: &Compressibility) -> f64 {
    let volume_cm3 = 1_000.0 * test.volume_l;
    volume_cm3 * (test.reference_c + ZERO_C_K) * gas.reference / (test.reference_kpa * test.duration_min / 60.0)
}

/// Refuses readings that cannot be: ranges wide enough for any vehicle and narrow enough for a wrong unit to show.
///
/// # Errors
/// [`Outside`] names the first reading that leaves its range.
pub fn check(test: &DecayTest) -> Result<(), Outside> {
    between("volume_l", test.volume_l, 0.001, 10_000.0)?;
    between("start_kpa", test.start_kpa, 1.0, 100_000.0)?;
    between("end_kpa", test.end_kpa, 1.0, 100_000.0)?;
    between("start_c", test.start_c, -60.0, 150.0)?;
    between("end_c", test.end_c, -60.0, 150.0)?;
    between("duration_min", test.duration_min, 0.01, 525_600.0)?;
    between("limit_cm3_h", test.limit_cm3_h, 0.0, 1e9)?;
    between("pressure_resolution_kpa", test.pressure_resolution_kpa, 0.0, 10_000.0)?;
    between("pressure_standard_uncertainty_kpa", test.pressure_standard_uncertainty_kpa, 0.0, 10_000.0)?;
    between("temperature_standard_uncertainty_k", test.temperature_standard_uncertainty_k, 0.0, 50.0)?;
    between("volume_relative_standard_uncertainty", test.volume_relative_standard_uncertainty, 0.0, 1.0)?;
    between("reference_c", test.reference_c, -60.0, 150.0)?;
    between("reference_kpa", test.reference_kpa, 10.0, 1_000.0)?;
    Ok(())
}
