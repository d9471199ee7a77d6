//! Visits brought to the middle of their cell.
//!
//! Across a cell of 10 kPa the injection time rises by a seventh or more, so that where in the cell each fuel happened
//! to be driven would drown a deviation of a few per cent. How steeply it rises is read from the visits themselves: from
//! pairs of visits of one cell on one fuel, pooled over the cells of a band, by a median that outliers do not move.
//! The same slope is taken from both fuels, so that it cancels where both were driven alike.

use std::collections::BTreeMap;

use super::cells::{Cells, Place, RPM_WIDTH, Visit};
use super::sieve::Load;

/// Visits of a cell and fuel that are paired; pairs grow with their square.
const MOST_PAIRED: usize = 24;
/// Fewer pairs than this tell no slope.
const LEAST_PAIRS: usize = 15;
/// Pairs nearer than this share of a band tell a slope too poorly.
const LEAST_APART: f64 = 0.2;
/// Steepest rise of the logarithm of time with that of load: beyond, it is scatter (common practice: about one).
const STEEPEST_LOAD: f64 = 2.5;
/// Steepest change with engine speed at the same load (common practice: about a tenth).
const STEEPEST_RPM: f64 = 1.0;

/// Slopes by band.
#[derive(Debug, Default)]
pub(super) struct Slopes {
    load: Pooled,
    rpm: Pooled,
}

/// A slope for each band, and one of all of them for bands with too few pairs.
#[derive(Debug, Default)]
struct Pooled {
    bands: BTreeMap<u16, f64>,
    all: f64,
}

impl Pooled {
    fn of(&self, band: u16) -> f64 {
        self.bands.get(&band).copied().unwrap_or(self.all)
    }
}

impl Slopes {
    /// The slopes that these cells tell.
    pub fn of(cells: &Cells, by: Load) -> Self {
        if by != Load::Manifold {
            // With the trims taken off the load is the time itself but for them, so that the slope is one.
            let all = if by == Load::Trimmed { 1.0 } else { 0.0 };
            return Self { load: Pooled { all, ..Pooled::default() }, rpm: Pooled::default() };
        }
        let mut slopes = Self::default();
        // Engine speed and load go together in driving, so each is told with the other taken off, twice.
        for _ in 0..2 {
            let taken = |place: Place, visit: &Visit| slopes.rpm.of(place.rpm) * (visit.rpm / RPM_WIDTH).ln();
            let load = pooled(cells, |place, visit| {
                let (low, width) = (f64::from(place.load) * by.width(), by.width());
                (place.load, visit.load.ln(), ((low + width) / low.max(width)).ln(), visit.ln_ms - taken(place, visit))
            });
            slopes.load = bounded(load, 0.0, STEEPEST_LOAD);
            let taken = |place: Place, visit: &Visit| slopes.load.of(place.load) * visit.load.ln();
            let rpm = pooled(cells, |place, visit| {
                let low = f64::from(place.rpm) * RPM_WIDTH;
                let width = ((low + RPM_WIDTH) / low.max(RPM_WIDTH)).ln();
                (place.rpm, visit.rpm.ln(), width.max(0.05), visit.ln_ms - taken(place, visit))
            });
            slopes.rpm = bounded(rpm, -STEEPEST_RPM, STEEPEST_RPM);
        }
        slopes
    }

    /// Logarithm of the injection time that the visit would have had in the middle of the cell.
    pub fn level(&self, place: Place, visit: &Visit, by: Load) -> f64 {
        let (rpm, load) = place.middle(by);
        visit.ln_ms
            - self.load.of(place.load) * (visit.load / load).ln()
            - self.rpm.of(place.rpm) * (visit.rpm / rpm).ln()
    }
}

fn bounded(mut pooled: Pooled, least: f64, most: f64) -> Pooled {
    pooled.all = pooled.all.clamp(least, most);
    for slope in pooled.bands.values_mut() {
        *slope = slope.clamp(least, most);
    }
    pooled
}

/// Slopes of what `point` gives: the band, x, the width of a band in x, and y.
fn pooled(cells: &Cells, point: impl Fn(Place, &Visit) -> (u16, f64, f64, f64)) -> Pooled {
    let mut bands: BTreeMap<u16, Vec<(f64, f64)>> = BTreeMap::new();
    for (place, sides) in cells.iter() {
        for side in sides {
            let step = side.visits.kept().len().div_ceil(MOST_PAIRED).max(1);
            let points: Vec<_> = side.visits.kept().iter().step_by(step).map(|visit| point(place, visit)).collect();
            for (i, a) in points.iter().enumerate() {
                let apart = |b: &&(u16, f64, f64, f64)| (b.1 - a.1).abs() >= LEAST_APART * a.2.abs().max(1e-6);
                let slopes =
                    points[i + 1..].iter().filter(apart).map(|b| ((b.3 - a.3) / (b.1 - a.1), (b.1 - a.1).abs()));
                bands.entry(a.0).or_default().extend(slopes);
            }
        }
    }
    let mut all: Vec<(f64, f64)> = bands.values().flatten().copied().collect();
    let bands = bands.into_iter().filter_map(|(band, mut pairs)| Some((band, weighted_median(&mut pairs)?))).collect();
    Pooled { bands, all: weighted_median(&mut all).unwrap_or(0.0) }
}

/// Median of slopes by the weight of each; `None` of too few.
///
/// Source: L. A. Jaeckel, Ann. Math. Stat. 43 (1972) 1449 (pairs weighted by their distance).
fn weighted_median(pairs: &mut [(f64, f64)]) -> Option<f64> {
    if pairs.len() < LEAST_PAIRS {
        return None;
    }
    pairs.sort_unstable_by(|a, b| a.0.total_cmp(&b.0));
    let half = 0.5 * pairs.iter().map(|(_, weight)| weight).sum::<f64>();
    let mut below = 0.0;
    pairs
        .iter()
        .find(|(_, weight)| {
            below += weight;
            below >= half
        })
        .map(|(slope, _)| *slope)
}
