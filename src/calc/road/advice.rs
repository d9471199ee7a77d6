//! A smooth correction to try next: the deviations of a neighbourhood, damped, held within bounds.
//!
//! Source: W. S. Cleveland, J. Am. Stat. Assoc. 74 (1979) 829 (tricube weights); the bounds are common practice: a
//! correction that jumps from cell to cell makes the engine jerk, and a large one is better driven in two rounds.

use super::judge::{Deviation, Judged};
use super::{CellVerdict, Plan};

/// Cells reach this far, in cells.
const REACH: f64 = 2.5;
/// Deviations differ from cell to cell by about this much anyway, in the logarithm (common practice).
const FROM_CELL_TO_CELL: f64 = 0.02;
/// Fewer neighbours than this say nothing about a cell that was not driven enough itself.
const LEAST_NEIGHBOURS: f64 = 2.0;

/// Writes the advised factor into each cell that can have one.
pub(super) fn advise(judged: &mut [Judged], plan: &Plan) {
    let known: Vec<((f64, f64), Deviation)> = judged.iter().filter_map(|one| Some((at(one), one.deviation?))).collect();
    let wanted: Vec<(usize, f64)> = judged
        .iter()
        .enumerate()
        .filter(|(_, one)| one.cell.verdict != CellVerdict::NoFeedback)
        .filter_map(|(i, one)| Some((i, plan.damping * smooth(one, &known)?)))
        .collect();
    let round = plan.round_percent / 100.0;
    let held: Vec<(usize, f64)> =
        wanted.iter().map(|(i, ln)| (*i, ln.clamp((1.0 - round).ln(), round.ln_1p()))).collect();
    let places: Vec<((f64, f64), f64)> = held.iter().map(|(i, ln)| (at(&judged[*i]), *ln)).collect();
    for ((i, _), ln) in held.iter().zip(stepped(&places, (plan.step_percent / 100.0).ln_1p())) {
        judged[*i].cell.advised_factor = Some(ln.exp());
    }
}

fn at(one: &Judged) -> (f64, f64) {
    (f64::from(one.place.rpm), f64::from(one.place.load))
}

/// Weighted mean of the deviations around a cell.
fn smooth(one: &Judged, known: &[((f64, f64), Deviation)]) -> Option<f64> {
    let here = at(one);
    let (mut sum, mut weights, mut squares) = (0.0, 0.0, 0.0);
    for (there, found) in known {
        let distance = (here.0 - there.0).hypot(here.1 - there.1) / REACH;
        if distance < 1.0 {
            let weight = (1.0 - distance.powi(3)).powi(3) / (found.u.powi(2) + FROM_CELL_TO_CELL.powi(2));
            sum += weight * found.d;
            weights += weight;
            squares += weight * weight;
        }
    }
    let is_told = one.deviation.is_some() || weights * weights >= LEAST_NEIGHBOURS * squares;
    (weights > 0.0 && is_told).then(|| sum / weights)
}

/// Values that differ by at most `step` from one cell to the next, as near to the wanted ones as the mean of the least
/// and the greatest such surface through them.
///
/// Each of both rises by no more than `step` a cell by its making, and so does their mean; where the wanted values keep
/// the bound themselves, all three are those values. Source: E. J. McShane, Bull. Am. Math. Soc. 40 (1934) 837.
fn stepped(wanted: &[((f64, f64), f64)], step: f64) -> Vec<f64> {
    let apart = |a: (f64, f64), b: (f64, f64)| step * ((a.0 - b.0).abs() + (a.1 - b.1).abs());
    wanted
        .iter()
        .map(|(here, _)| {
            let over = wanted.iter().map(|(there, ln)| ln + apart(*here, *there)).fold(f64::INFINITY, f64::min);
            let under = wanted.iter().map(|(there, ln)| ln - apart(*here, *there)).fold(f64::NEG_INFINITY, f64::max);
            0.5 * (over + under)
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn values_within_the_step_stay_and_a_jump_is_shared() {
        let row = |values: &[f64]| values.iter().enumerate().map(|(i, v)| ((0.0, i as f64), *v)).collect::<Vec<_>>();
        let gentle = [0.0, 0.02, 0.01];
        assert_eq!(stepped(&row(&gentle), 0.03), gentle);
        let jump = stepped(&row(&[0.0, 0.0, 0.1, 0.1]), 0.03);
        assert!(jump.windows(2).all(|pair| (pair[1] - pair[0]).abs() <= 0.03 + 1e-12), "{jump:?}");
        assert!((jump[1] + jump[2] - 0.1).abs() < 1e-12, "shared alike: {jump:?}");
    }
}
