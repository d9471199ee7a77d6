//! Coverage factors: Student's distribution for a whole number of degrees of freedom, the normal one beyond.

use std::f64::consts::{FRAC_PI_2, PI};

use super::{Outside, between};

/// Above this the two distributions give the same factor to four digits.
const LIKE_NORMAL: f64 = 10_000.0;

/// Factor `k` such that a share `level` lies within plus or minus `k` standard uncertainties.
///
/// `level`: coverage probability, 0.5 to 0.9999. `degrees_of_freedom`: cut to a whole number; `None` is infinite.
///
/// # Errors
/// [`Outside`] for a level out of range, or less than one degree of freedom.
///
/// # Source
/// JCGM 100:2008, G.3.2, G.4.1 (cut to the next lower whole number) and table G.2.
pub fn two_sided(level: f64, degrees_of_freedom: Option<f64>) -> Result<f64, Outside> {
    let level = between("level", level, 0.5, 0.9999)?;
    let nu = between("degrees_of_freedom", degrees_of_freedom.unwrap_or(f64::MAX), 1.0, f64::MAX)?.floor();
    let share = |k: f64| if nu > LIKE_NORMAL { share_normal(k) } else { share_student(k, nu) };
    let (mut low, mut high) = (0.0, 1.0);
    while share(high) < level {
        high *= 2.0;
    }
    // The share rises with k, so halving cannot miss; 60 halvings exhaust the digits.
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if share(middle) < level { low = middle } else { high = middle }
    }
    Ok(0.5 * (low + high))
}

/// Share of Student's distribution within plus or minus `t`, for whole `nu`.
///
/// Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.3 (odd) and 26.7.4 (even).
fn share_student(t: f64, nu: f64) -> f64 {
    let angle = (t / nu.sqrt()).atan();
    let cos_squared = angle.cos().powi(2);
    let is_odd = nu % 2.0 > 0.5;
    // Both series multiply by cos^2 and a ratio of neighbours; they differ in where they start.
    let (mut term, mut k) = if is_odd { (angle.cos(), 1.0) } else { (1.0, 0.0) };
    let mut sum = 0.0;
    while k <= nu - 2.0 {
        sum += term;
        term *= cos_squared * (k + 1.0) / (k + 2.0);
        k += 2.0;
    }
    if is_odd { (angle + angle.sin() * sum) / FRAC_PI_2 } else { angle.sin() * sum }
}

/// Share of the normal distribution within plus or minus `k` standard deviations.
///
/// Source: Abramowitz and Stegun, 7.1.6 with x = k / sqrt 2; every term is positive, so nothing cancels.
fn share_normal(k: f64) -> f64 {
    let x = k / 2f64.sqrt();
    let (mut term, mut sum, mut n) = (x, 0.0, 0.0);
    while term > 1e-17 {
        sum += term;
        n += 1.0;
        term *= 2.0 * x * x / (2.0 * n + 1.0);
    }
    2.0 / PI.sqrt() * (-x * x).exp() * sum
}
