//! Pressure over time: what was read, and what a leak at the limit would have shown.

use serde::{Deserialize, Serialize};

use super::{Compressibility, DecayTest, LeakResult, ZERO_C_K, check, constant};
use crate::calc::{Outside, between};

/// Pressures to expect at one moment, all at the temperature of the start, kPa absolute.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct TracePoint {
    /// Since the start, minutes.
    pub at_min: f64,
    /// With the rate found.
    pub measured_kpa: f64,
    /// With the largest rate the uncertainty allows.
    pub low_kpa: f64,
    /// With the smallest.
    pub high_kpa: f64,
    /// With a leak at the limit.
    pub at_limit_kpa: f64,
}

/// Straight lines from the start of a test to its end, in `steps` equal steps (1 to 1000).
///
/// # Errors
/// [`Outside`] for a test out of range or a number of steps that is.
///
/// # Source
/// The rate formula of [`super::rate_cm3_h`], solved for the pressure at the end and linear in it.
pub fn trace(
    test: &DecayTest,
    gas: &Compressibility,
    result: &LeakResult,
    steps: u16,
) -> Result<Vec<TracePoint>, Outside> {
    check(test)?;
    between("steps", f64::from(steps), 1.0, 1_000.0)?;
    let (start, _) = gas.states(test)?;
    let kpa_per_cm3_h = 1.0 / (constant(test, gas) * start.per_kpa);
    let (q, u) = (result.rate_cm3_h, result.expanded_uncertainty_cm3_h);
    Ok((0..=steps)
        .map(|step| {
            let share = f64::from(step) / f64::from(steps);
            let after = |rate: f64| test.start_kpa - share * rate * kpa_per_cm3_h;
            TracePoint {
                at_min: share * test.duration_min,
                measured_kpa: after(q),
                low_kpa: after(q + u),
                high_kpa: after(q - u),
                at_limit_kpa: after(test.limit_cm3_h),
            }
        })
        .collect())
}

/// A reading as it would have been at the temperature of the start, kPa absolute, gas ideal.
///
/// # Errors
/// [`Outside`] for a pressure or temperature out of range.
pub fn corrected_kpa(read_kpa: f64, read_c: f64, start_c: f64) -> Result<f64, Outside> {
    let kpa = between("read_kpa", read_kpa, 0.0, 100_000.0)?;
    let read_k = between("read_c", read_c, -60.0, 150.0)? + ZERO_C_K;
    Ok(kpa * (between("start_c", start_c, -60.0, 150.0)? + ZERO_C_K) / read_k)
}
