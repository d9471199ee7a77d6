//! Before the test, and after one that could not tell: how long, and with which gauge.

use serde::{Deserialize, Serialize};

use super::budget::reading_standard_uncertainty_kpa;
use super::{COVERAGE_FACTOR, Compressibility, DecayTest, LeakWarning, ZERO_C_K, check, constant};
use crate::calc::{Outside, Source, Step, between};

/// Minutes for which a plan says what a leak and a kelvin do.
const PLANNED_MIN: f64 = 10.0;

/// What decides how long a test must be.
#[derive(Debug, Clone, Copy)]
pub(super) struct Needs {
    duration_min: f64,
    /// Sum of the squared pressure sensitivities, (cm3/h per kPa)^2.
    per_pressure_squared: f64,
    /// Variance of the rate from one pressure reading at each end, (cm3/h)^2.
    pressure_variance: f64,
    /// Variance of the rate from the temperatures, (cm3/h)^2.
    temperature_variance: f64,
    /// Variance of the rate from the volume, (cm3/h)^2.
    volume_variance: f64,
    /// Distance of the rate from the limit, cm3/h.
    margin: f64,
}

impl Needs {
    pub(super) fn of(test: &DecayTest, gas: &Compressibility, rate_cm3_h: f64) -> Result<Self, Outside> {
        let c = constant(test, gas);
        let (start, end) = gas.states(test)?;
        let per_pressure_squared = c * c * (start.per_kpa.powi(2) + end.per_kpa.powi(2));
        let per_temperature_squared = c * c * (start.per_k.powi(2) + end.per_k.powi(2));
        // A section cannot gain gas: a rate below zero is read as tight.
        let rate = rate_cm3_h.max(0.0);
        Ok(Self {
            duration_min: test.duration_min,
            per_pressure_squared,
            pressure_variance: per_pressure_squared * reading_standard_uncertainty_kpa(test).powi(2),
            temperature_variance: per_temperature_squared * test.temperature_standard_uncertainty_k.powi(2),
            volume_variance: (rate * test.volume_relative_standard_uncertainty).powi(2),
            margin: (test.limit_cm3_h - rate).abs(),
        })
    }

    /// Duration at which the expanded uncertainty equals the margin, if the rate stays. What the readings add falls
    /// with the duration; what the volume adds stays, and may alone exceed the margin: then none helps.
    pub(super) fn duration_min(&self) -> Option<f64> {
        let by_readings = COVERAGE_FACTOR * (self.pressure_variance + self.temperature_variance).sqrt();
        let left = self.margin.powi(2) - COVERAGE_FACTOR.powi(2) * self.volume_variance;
        finite(self.duration_min * by_readings / positive(left)?.sqrt())
    }

    /// The same equation solved for the pressure reading, in the time taken.
    pub(super) fn pressure_standard_uncertainty_kpa(&self) -> Option<f64> {
        let allowed = (self.margin / COVERAGE_FACTOR).powi(2);
        let left = allowed - self.temperature_variance - self.volume_variance;
        finite((positive(left)? / self.per_pressure_squared).sqrt())
    }
}

fn positive(value: f64) -> Option<f64> {
    (value > 0.0).then_some(value)
}

fn finite(value: f64) -> Option<f64> {
    value.is_finite().then_some(value)
}

/// A section before its test, assumed tight and at rest.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Planned {
    /// Volume of the section, litres.
    pub volume_l: f64,
    /// Test pressure, kPa absolute.
    pub pressure_kpa: f64,
    /// Temperature, C.
    pub temperature_c: f64,
    /// Limit, cm3/h at 15 C and 101.325 kPa.
    pub limit_cm3_h: f64,
    /// Smallest step of the gauge, kPa.
    pub pressure_resolution_kpa: f64,
    /// Standard uncertainty of one pressure reading without the resolution, kPa.
    pub pressure_standard_uncertainty_kpa: f64,
    /// Standard uncertainty of one temperature reading, K.
    pub temperature_standard_uncertainty_k: f64,
}

/// What to expect of a test.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Plan {
    /// Shortest test that can pass a tight section, minutes; `None` where none can.
    pub needed_duration_min: Option<f64>,
    /// Pressure lost in ten minutes by a leak at the limit, kPa.
    pub loss_at_limit_kpa_in_10_min: f64,
    /// Rate that one kelvin of cooling in ten minutes fakes or hides, cm3/h.
    pub one_kelvin_in_10_min_cm3_h: f64,
    /// What to be careful about.
    pub warnings: Vec<LeakWarning>,
}

/// Plans a pressure-decay test, gas ideal.
///
/// ```text
/// t = 2 V (T_ref/p_ref) sqrt( 2 (u_p/T)^2 + 2 (u_T p/T^2)^2 ) / limit
/// ```
///
/// # Errors
/// [`Outside`] names the first number that leaves its range.
///
/// # Source
/// The budget of [`super::budget`] at rate zero, solved for the time at which U equals the limit.
pub fn plan(section: &Planned) -> Result<Plan, Outside> {
    // Under the names of the plan, since check() would name the readings of a test.
    between("pressure_kpa", section.pressure_kpa, 1.0, 100_000.0)?;
    between("temperature_c", section.temperature_c, -60.0, 150.0)?;
    let test = section.test(PLANNED_MIN);
    check(&test)?;
    let gas = Compressibility::IDEAL;
    let (state, _) = gas.states(&test)?;
    let c = constant(&test, &gas);
    let is_beyond_ideal = section.pressure_kpa > super::IDEAL_GAS_LIMIT_KPA;
    Ok(Plan {
        needed_duration_min: Needs::of(&test, &gas, 0.0)?.duration_min(),
        loss_at_limit_kpa_in_10_min: section.limit_cm3_h / (c * state.per_kpa),
        one_kelvin_in_10_min_cm3_h: c * state.per_k.abs(),
        warnings: is_beyond_ideal.then_some(LeakWarning::IdealGasAboveItsRange).into_iter().collect(),
    })
}

/// Largest standard uncertainty of one pressure reading, resolution counted in, that can pass a tight section in
/// `duration_min`, kPa; `None` where the temperature alone takes the whole limit.
///
/// # Errors
/// As [`plan`].
pub fn needed_gauge_kpa(section: &Planned, duration_min: f64) -> Result<Option<f64>, Outside> {
    let test = section.test(duration_min);
    check(&test)?;
    Ok(Needs::of(&test, &Compressibility::IDEAL, 0.0)?.pressure_standard_uncertainty_kpa())
}

/// The steps from volume, pressure and instruments to the time that a tight section needs, and what a leak at the limit and
/// a kelvin would do in ten minutes.
///
/// # Errors
/// As [`plan`].
pub fn steps(section: &Planned, found: &Plan) -> Result<Vec<Step>, Outside> {
    let test = section.test(PLANNED_MIN);
    check(&test)?;
    let (reference_k, k) = (test.reference_c + ZERO_C_K, section.temperature_c + ZERO_C_K);
    let c = constant(&test, &Compressibility::IDEAL);
    let reading = reading_standard_uncertainty_kpa(&test);
    let (step, p) = (section.pressure_resolution_kpa, section.pressure_kpa);
    let by_pressure = c * reading / k;
    let by_temperature = c * p * section.temperature_standard_uncertainty_k / k.powi(2);
    let mut all = vec![
        Step::new(
            "leak-constant",
            ("c = 1000 V T_r / p_r / (t / 60)", "1000 · {} · {} / {} / ({} / 60)"),
            &[section.volume_l, reference_k, test.reference_kpa, PLANNED_MIN],
            (c, "cm³ K/(h kPa)"),
            None,
        ),
        Step::new(
            "leak-reading",
            ("u_r = √(u_p² + a² / 12)", "√({} ^ 2 + {} ^ 2 / 12)"),
            &[section.pressure_standard_uncertainty_kpa, step],
            (reading, "kPa"),
            Source::Jcgm100,
        ),
        Step::new(
            "plan-by-pressure",
            ("c u_r / T", "{} · {} / {}"),
            &[c, reading, k],
            (by_pressure, "cm³/h"),
            Source::Jcgm100,
        ),
        Step::new(
            "plan-by-temperature",
            ("c p u_T / T²", "{} · {} · {} / {} ^ 2"),
            &[c, p, section.temperature_standard_uncertainty_k, k],
            (by_temperature, "cm³/h"),
            Source::Jcgm100,
        ),
    ];
    if let Some(needed) = found.needed_duration_min {
        all.push(Step::new(
            "leak-needed-time",
            ("t = 10 · 2 √(2 (u_1² + u_2²)) / q_max", "{} · 2 · √(2 · ({} ^ 2 + {} ^ 2)) / {}"),
            &[PLANNED_MIN, by_pressure, by_temperature, section.limit_cm3_h],
            (needed, "min"),
            Source::IlacG8,
        ));
    }
    let (loss, kelvin) = (found.loss_at_limit_kpa_in_10_min, found.one_kelvin_in_10_min_cm3_h);
    let limit = section.limit_cm3_h;
    all.push(Step::new("plan-loss", ("Δp = q_max T / c", "{} · {} / {}"), &[limit, k, c], (loss, "kPa"), None));
    all.push(Step::new("plan-kelvin", ("q = c p / T²", "{} · {} / {} ^ 2"), &[c, p, k], (kelvin, "cm³/h"), None));
    Ok(all)
}

impl Planned {
    fn test(&self, duration_min: f64) -> DecayTest {
        DecayTest {
            volume_l: self.volume_l,
            start_kpa: self.pressure_kpa,
            end_kpa: self.pressure_kpa,
            start_c: self.temperature_c,
            end_c: self.temperature_c,
            duration_min,
            limit_cm3_h: self.limit_cm3_h,
            pressure_resolution_kpa: self.pressure_resolution_kpa,
            pressure_standard_uncertainty_kpa: self.pressure_standard_uncertainty_kpa,
            temperature_standard_uncertainty_k: self.temperature_standard_uncertainty_k,
            volume_relative_standard_uncertainty: 0.0,
            reference_c: super::reference_c(),
            reference_kpa: super::reference_kpa(),
        }
    }
}

/// Two temperature readings agree within what they can be wrong by together (k = 2): the section has settled.
///
/// Common practice: read them three minutes apart.
///
/// # Errors
/// [`Outside`] for a temperature or an uncertainty out of range.
pub fn has_settled(first_c: f64, second_c: f64, temperature_standard_uncertainty_k: f64) -> Result<bool, Outside> {
    let first = between("first_c", first_c, -ZERO_C_K, 500.0)?;
    let second = between("second_c", second_c, -ZERO_C_K, 500.0)?;
    let u = between("temperature_standard_uncertainty_k", temperature_standard_uncertainty_k, 0.0, 50.0)?;
    // A billionth of a kelvin of grace, for differences of decimals that binary cannot hold.
    Ok((second - first).abs() <= COVERAGE_FACTOR * 2f64.sqrt() * u + 1e-9)
}
