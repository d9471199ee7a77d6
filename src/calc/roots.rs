//! Finding where a function crosses zero, and the real roots of a cubic. Nothing here knows what the numbers mean.

use super::NoRoot;

/// Where `f` crosses zero between `low` and `high`, by halving, to a width of `tolerance` in the unit of the bounds.
///
/// Halving is slow and cannot be led astray: the sums call it a handful of times, never in a loop over states.
///
/// # Errors
/// [`NoRoot`] when `f` has the same sign at both bounds or is not a number at one of them.
pub fn bisect(
    wanted: &'static str,
    low: f64,
    high: f64,
    tolerance: f64,
    f: impl Fn(f64) -> f64,
) -> Result<f64, NoRoot> {
    try_bisect(low, high, tolerance, |x| Ok(f(x)), NoRoot { wanted })
}

/// As [`bisect`], for a function that may itself refuse; the first refusal ends the search.
///
/// # Errors
/// What `f` said, or `none` when there is no change of sign.
pub fn try_bisect<E>(
    low: f64,
    high: f64,
    tolerance: f64,
    f: impl Fn(f64) -> Result<f64, E>,
    none: E,
) -> Result<f64, E> {
    let (mut low, mut high) = (low, high);
    let (at_low, at_high) = (f(low)?, f(high)?);
    if at_low.is_nan() || at_high.is_nan() {
        return Err(none);
    }
    if at_low == 0.0 {
        return Ok(low);
    }
    if at_high == 0.0 {
        return Ok(high);
    }
    if (at_low > 0.0) == (at_high > 0.0) {
        return Err(none);
    }
    // 200 halvings take any finite width below the last bit.
    for _ in 0..200 {
        let middle = low + (high - low) / 2.0;
        if (high - low).abs() <= tolerance {
            return Ok(middle);
        }
        let at_middle = f(middle)?;
        if at_middle.is_nan() {
            return Err(none);
        }
        if (at_middle > 0.0) == (at_low > 0.0) {
            low = middle;
        } else {
            high = middle;
        }
    }
    Ok(low + (high - low) / 2.0)
}

/// Real roots of `x^3 + a x^2 + b x + c = 0`, ascending: one or three of them (a double root appears twice).
///
/// Cardano's closed form, then two Newton steps each, because the closed form loses digits near a double root.
pub fn cubic(a: f64, b: f64, c: f64) -> Vec<f64> {
    let q = (a * a - 3.0 * b) / 9.0;
    let r = (2.0 * a.powi(3) - 9.0 * a * b + 27.0 * c) / 54.0;
    let mut found = if r * r < q.powi(3) {
        let angle = (r / q.powi(3).sqrt()).clamp(-1.0, 1.0).acos();
        let turn = 2.0 * std::f64::consts::PI;
        [0.0, 1.0, -1.0].map(|n| -2.0 * q.sqrt() * ((angle + n * turn) / 3.0).cos() - a / 3.0).to_vec()
    } else {
        let s = -r.signum() * (r.abs() + (r * r - q.powi(3)).max(0.0).sqrt()).cbrt();
        let t = if s == 0.0 { 0.0 } else { q / s };
        vec![s + t - a / 3.0]
    };
    for x in &mut found {
        for _ in 0..2 {
            let slope = (3.0 * *x + 2.0 * a) * *x + b;
            if slope.abs() > 1e-12 {
                *x -= (((*x + a) * *x + b) * *x + c) / slope;
            }
        }
    }
    found.sort_by(f64::total_cmp);
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_cubic_gives_back_the_roots_it_was_made_of() {
        for roots in [[0.1, 0.5, 0.9], [-3.0, 2.0, 7.0], [0.01, 0.02, 0.95]] {
            let [x, y, z] = roots;
            let found = cubic(-(x + y + z), x * y + y * z + z * x, -x * y * z);
            assert_eq!(found.len(), 3);
            for (a, b) in found.iter().zip(roots) {
                assert!((a - b).abs() < 1e-10, "{found:?} {roots:?}");
            }
        }
        let single = cubic(0.0, 1.0, -10.0); // x^3 + x = 10 has the one real root 2
        assert_eq!(single.len(), 1);
        assert!((single[0] - 2.0).abs() < 1e-12);
    }

    #[test]
    fn halving_finds_the_crossing_and_says_when_there_is_none() {
        let root = bisect("x", 0.0, 2.0, 1e-12, |x| x * x - 2.0).unwrap();
        assert!((root - std::f64::consts::SQRT_2).abs() < 1e-11);
        assert_eq!(bisect("x", 2.0, 3.0, 1e-12, |x| x * x - 2.0), Err(NoRoot { wanted: "x" }));
        assert!(bisect("x", 0.0, f64::NAN, 1e-12, |x| x).is_err());
        let hole = |x: f64| if (x - 1.0).abs() < 0.1 { f64::NAN } else { x - 1.3 };
        assert!(bisect("x", 0.0, 2.0, 1e-12, hole).is_err(), "a number that is none in the middle");
    }
}
