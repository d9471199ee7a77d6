//! What a cell comes to.

use super::cells::{Cells, Place, RPM_WIDTH, Side, Sides};
use super::level::Slopes;
use super::sieve::Load;
use super::{Cell, CellVerdict, Missing, Plan, Why};
use crate::calc::robust::{MAD_TO_SIGMA, MEDIAN_ERROR, median_of};

/// Least standard uncertainty of one visit, in the logarithm: the resolution of a log (common practice).
const RESOLUTION: f64 = 0.005;
/// Least standard uncertainty of a cell, in the logarithm, however many visits it has: within a cell the deviation itself
/// is not the same everywhere, and no number of visits helps against that (common practice).
const WITHIN_A_CELL: f64 = 0.002;
/// Standard uncertainties on either side of a deviation: about 95 %.
const COVERAGE: f64 = 2.0;

/// Median of a side in the logarithm, and its standard uncertainty.
#[derive(Debug, Clone, Copy)]
struct Told {
    middle: f64,
    u: f64,
}

/// A deviation in the logarithm, for the advice.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Deviation {
    pub d: f64,
    pub u: f64,
}

/// A cell with where it is and, where both fuels were driven enough, its deviation.
#[derive(Debug, Clone)]
pub(super) struct Judged {
    pub place: Place,
    pub deviation: Option<Deviation>,
    pub cell: Cell,
}

/// Judges every cell; ordered by engine speed, then load.
pub(super) fn judge(cells: &Cells, plan: &Plan, by: Load) -> Vec<Judged> {
    let slopes = Slopes::of(cells, by);
    cells.iter().map(|(place, sides)| one(place, sides, plan, by, &slopes)).collect()
}

fn one(place: Place, sides: &Sides, plan: &Plan, by: Load, slopes: &Slopes) -> Judged {
    let [petrol, gas] = [0, 1].map(|at| told(place, &sides[at], by, slopes));
    let is_enough = |side: &Side| side.visits.seen() >= u64::from(plan.visits);
    let deviation = match (petrol, gas) {
        (Some(petrol), Some(gas)) if by != Load::Untold && sides.iter().all(is_enough) => {
            Some(Deviation { d: gas.middle - petrol.middle, u: gas.u.hypot(petrol.u) })
        }
        _ => None,
    };
    let (verdict, why) = match deviation {
        Some(found) => verdict(found, plan),
        None if sides.iter().any(|side| !is_enough(side) && side.is_blind()) => {
            (CellVerdict::NoFeedback, Why::OpenLoop)
        }
        None if sides.iter().all(is_enough) => (CellVerdict::Undecided, Why::LoadUnknown),
        None => (CellVerdict::NotEnough, Why::Drive(missing(sides, plan))),
    };
    let (low, width) = (f64::from(place.rpm) * RPM_WIDTH, by.width());
    let percent = |k: f64| deviation.map(|found| 100.0 * (found.d + k * found.u).exp_m1());
    let cell = Cell {
        rpm_from: low,
        rpm_to: low + RPM_WIDTH,
        load_from: f64::from(place.load) * width,
        load_to: (f64::from(place.load) + 1.0) * width,
        petrol_visits: count(&sides[0]),
        gas_visits: count(&sides[1]),
        petrol_ms: petrol.map(|told| told.middle.exp()),
        gas_ms: gas.map(|told| told.middle.exp()),
        deviation_percent: percent(0.0),
        low_percent: percent(-COVERAGE),
        high_percent: percent(COVERAGE),
        verdict,
        advised_factor: None,
        why,
    };
    Judged { place, deviation, cell }
}

fn count(side: &Side) -> u32 {
    u32::try_from(side.visits.seen()).unwrap_or(u32::MAX)
}

fn missing(sides: &Sides, plan: &Plan) -> Missing {
    let lacks = |side: &Side| plan.visits.saturating_sub(count(side));
    Missing { petrol: lacks(&sides[0]), gas: lacks(&sides[1]) }
}

fn told(place: Place, side: &Side, by: Load, slopes: &Slopes) -> Option<Told> {
    let mut levelled: Vec<f64> = side.visits.kept().iter().map(|visit| slopes.level(place, visit, by)).collect();
    let middle = median_of(&mut levelled)?;
    for value in &mut levelled {
        *value = (*value - middle).abs();
    }
    let mad = median_of(&mut levelled)?;
    let n = levelled.len() as f64;
    let u = (MEDIAN_ERROR * MAD_TO_SIGMA * mad * few(n)).max(RESOLUTION) / n.sqrt();
    let u = u.max(WITHIN_A_CELL);
    Some(Told { middle, u })
}

/// What a scale from `n` readings is widened by, so that two standard uncertainties hold their 95 %.
///
/// The median absolute deviation of few readings is too small on the whole and itself uncertain (C. Croux and P. J.
/// Rousseeuw, Computational Statistics 1 (1992) 411, give factors for the first alone, from memory: 1.20 for six). This
/// one does for both; it was fitted to pairs of normal samples (`tests/reference/few_visits.csv`, NumPy 2.4.6).
fn few(n: f64) -> f64 {
    1.0 + 2.0 / n
}

fn verdict(Deviation { d, u }: Deviation, plan: &Plan) -> (CellVerdict, Why) {
    let reach = COVERAGE * u;
    if d.abs() - reach > plan.deviates_percent / 100.0 {
        (CellVerdict::Deviates, if d > 0.0 { Why::Lean } else { Why::Rich })
    } else if d.abs() + reach <= plan.good_percent / 100.0 {
        (CellVerdict::Good, Why::Within)
    } else {
        (CellVerdict::Undecided, Why::Across)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_scale_of_few_visits_is_widened_as_simulated_samples_ask() {
        let path = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/reference/few_visits.csv");
        let table = std::fs::read_to_string(path).unwrap();
        let mut seen = 0;
        for row in table.lines().skip_while(|line| !line.starts_with("n,")).skip(1) {
            let mut numbers = row.split(',').map(|number| number.parse::<f64>().unwrap());
            let (n, factor) = (numbers.next().unwrap(), numbers.next().unwrap());
            assert!((few(n) - factor).abs() < 0.06, "{n}: {} where {factor} is asked", few(n));
            seen += 1;
        }
        assert_eq!(seen, 11);
    }
}
