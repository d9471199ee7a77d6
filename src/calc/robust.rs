//! Robust statistics: location and scale of readings among which some are wrong.
//!
//! A gear change or a lost sample ruins a mean and a standard deviation; the median and the median absolute deviation
//! bear it until half of the readings are wrong. Everything here is pure and takes its readings in any order.
//!
//! Sources: F. R. Hampel, J. Am. Stat. Assoc. 69 (1974) 383 (median absolute deviation); P. J. Huber, Ann. Math. Stat.
//! 35 (1964) 73; J. L. Hodges and E. L. Lehmann, Ann. Math. Stat. 34 (1963) 598; R. J. Hyndman and Y. Fan, Am. Stat. 50
//! (1996) 361 (types of quantiles).

use super::{Outside, between};

/// Brings a median absolute deviation to the standard deviation of a normal distribution: one over its upper quartile.
pub const MAD_TO_SIGMA: f64 = 1.482_602;
/// Standard error of a median over that of a mean, for many normal readings: the root of half pi.
pub const MEDIAN_ERROR: f64 = 1.2533;
/// Where Huber's location begins to hold readings back, in scales.
const HUBER_K: f64 = 1.5;
/// Pairs grow with the square of the readings; more are not asked of [`hodges_lehmann`].
const MOST_PAIRED: f64 = 4_000.0;
/// Beyond this the ranks of [`median_ranks`] would underflow.
const MOST_RANKED: f64 = 1_000.0;

/// The middle reading; of an even count the mean of the middle two.
///
/// # Errors
/// [`Outside`] for no reading, or one that is not finite.
pub fn median(readings: &[f64]) -> Result<f64, Outside> {
    let mut sorted = checked(readings)?;
    Ok(median_of(&mut sorted).unwrap_or_default())
}

/// Quantile of type 7: straight between the order statistics at `(n - 1) share`.
///
/// `share`: 0 to 1.
///
/// # Errors
/// [`Outside`] for no reading, one that is not finite, or a share out of range.
///
/// # Source
/// Hyndman and Fan 1996, definition 7.
pub fn quantile(readings: &[f64], share: f64) -> Result<f64, Outside> {
    let share = between("share", share, 0.0, 1.0)?;
    let mut sorted = checked(readings)?;
    sorted.sort_unstable_by(f64::total_cmp);
    let place = (sorted.len() - 1) as f64 * share;
    let (low, high) = (sorted[floor(place)], sorted[floor(place.ceil())]);
    Ok(low + (place - place.floor()) * (high - low))
}

/// Median absolute deviation from the median, as it is.
///
/// # Errors
/// As for [`median`].
pub fn mad(readings: &[f64]) -> Result<f64, Outside> {
    let middle = median(readings)?;
    let mut apart: Vec<f64> = readings.iter().map(|reading| (reading - middle).abs()).collect();
    Ok(median_of(&mut apart).unwrap_or_default())
}

/// Median absolute deviation brought to the standard deviation of normal readings.
///
/// # Errors
/// As for [`median`].
///
/// # Source
/// Hampel 1974; the Analytical Methods Committee prints the factor, Analyst 114 (1989) 1693.
pub fn mad_normalised(readings: &[f64]) -> Result<f64, Outside> {
    Ok(MAD_TO_SIGMA * mad(readings)?)
}

/// Median of the means of all pairs, each reading with itself too.
///
/// # Errors
/// [`Outside`] for no reading, one that is not finite, or more than 4 000.
///
/// # Source
/// Hodges and Lehmann 1963.
pub fn hodges_lehmann(readings: &[f64]) -> Result<f64, Outside> {
    between("count", readings.len() as f64, 1.0, MOST_PAIRED)?;
    let sorted = checked(readings)?;
    let pairs = |(i, a): (usize, &f64)| sorted[i..].iter().map(|b| 0.5 * a + 0.5 * b).collect::<Vec<f64>>();
    let mut means: Vec<f64> = sorted.iter().enumerate().flat_map(pairs).collect();
    Ok(median_of(&mut means).unwrap_or_default())
}

/// Huber's location with k = 1.5: the mean of readings held within 1.5 `scale` of it; the scale stays as given.
///
/// # Errors
/// [`Outside`] as for [`median`], or a scale that is not above nought.
///
/// # Source
/// Huber 1964; the iteration is that of the Analytical Methods Committee, Analyst 114 (1989) 1693.
pub fn huber(readings: &[f64], scale: f64) -> Result<f64, Outside> {
    let reach = HUBER_K * between("scale", scale, f64::MIN_POSITIVE, 1e300)?;
    let n = readings.len() as f64;
    let mut at = median(readings)?;
    // Each step takes a fixed share of the way; a hundred leave nothing of it.
    for _ in 0..200 {
        // Divided before they are added up, so that enormous readings do not overflow.
        let next: f64 = readings.iter().map(|reading| reading.clamp(at - reach, at + reach) / n).sum();
        if (next - at).abs() <= 1e-13 * scale {
            return Ok(next);
        }
        at = next;
    }
    Ok(at)
}

/// Ranks between which a median lies, whatever the distribution.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ranks {
    /// Lower rank, counted from 1 in readings sorted upwards.
    pub lower: usize,
    /// Upper rank.
    pub upper: usize,
    /// How surely the median lies between them.
    pub coverage: f64,
}

/// The innermost pair of ranks that holds the true median of `count` independent readings with at least `level`; `None`
/// where even the outermost pair does not.
///
/// # Errors
/// [`Outside`] for a count not from 1 to 1 000, or a level not from 0.5 to 0.9999.
///
/// # Source
/// The binomial distribution with one half: each reading lies below the median or above it.
pub fn median_ranks(count: usize, level: f64) -> Result<Option<Ranks>, Outside> {
    let n = between("count", count as f64, 1.0, MOST_RANKED)?;
    let level = between("level", level, 0.5, 0.9999)?;
    // Share of at most `k` readings below, summed up from none.
    let (mut term, mut below, mut found) = (0.5f64.powf(n), 0.0, None);
    for rank in 1..=count / 2 {
        below += term;
        let coverage = 1.0 - 2.0 * below;
        if coverage < level {
            break;
        }
        found = Some(Ranks { lower: rank, upper: count + 1 - rank, coverage });
        term *= (n - rank as f64 + 1.0) / rank as f64;
    }
    Ok(found)
}

/// The middle of what may be put into another order; `None` of nothing.
pub(crate) fn median_of(readings: &mut [f64]) -> Option<f64> {
    let n = readings.len();
    if n == 0 {
        return None;
    }
    let (below, middle, _) = readings.select_nth_unstable_by(n / 2, f64::total_cmp);
    let middle = *middle;
    if n % 2 == 1 {
        return Some(middle);
    }
    let under = below.iter().copied().max_by(f64::total_cmp).unwrap_or(middle);
    Some(0.5 * under + 0.5 * middle)
}

fn checked(readings: &[f64]) -> Result<Vec<f64>, Outside> {
    between("count", readings.len() as f64, 1.0, f64::MAX)?;
    // Half of the largest number, so that no difference of two overflows.
    readings.iter().map(|reading| between("reading", *reading, -8e307, 8e307)).collect()
}

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a place within a slice, from 0")]
fn floor(place: f64) -> usize {
    place as usize
}
