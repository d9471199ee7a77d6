//! Whether the nozzle served, as far as driving can say.

use super::judge::Judged;
use super::trims::Bounds;
use super::{CellVerdict, NozzleWord, Plan, Sample};
use crate::calc::robust::median_of;

/// Above this share of the time between two injections an injector has no time left (common practice).
const MOST_DUTY_PERCENT: usize = 90;
/// Rows that must reach a duty for it to count: one may be an outlier.
const LEAST_ROWS: u64 = 10;
/// An engine idles below this, 1/min (common practice).
const IDLE_RPM: f64 = 1_200.0;
/// High load is known from at least this many cells.
const LEAST_CELLS: usize = 2;
/// Of two rounds that both went to their bound: rich at idle beyond that is no matter of correction.
const ROUNDS: f64 = 2.0;

/// How often the gas injector was open for each share of the time, by per cent.
pub(super) struct Duties {
    rows: Vec<u64>,
}

impl Duties {
    pub fn new() -> Self {
        Self { rows: vec![0; 201] }
    }

    /// Takes a row on gas. One injection in two turns of a four-stroke engine.
    pub fn push(&mut self, sample: &Sample) {
        let Some(gas_ms) = sample.gas_ms else { return };
        let percent = 100.0 * gas_ms * sample.rpm / 120_000.0;
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "within range, from 0")]
        let place = (percent as usize).min(self.rows.len() - 1);
        self.rows[place] += 1;
    }

    /// The duty that at least ten rows reach, per cent.
    pub fn most_percent(&self) -> Option<usize> {
        let mut rows = 0;
        (0..self.rows.len()).rev().find(|percent| {
            rows += self.rows[*percent];
            rows >= LEAST_ROWS
        })
    }
}

/// The word. "High load" is where [`Bounds`] puts it; what a correction mends is what the plan allows a round.
pub(super) fn word(judged: &[Judged], bounds: Bounds, duties: &Duties, plan: &Plan) -> NozzleWord {
    let duty = duties.most_percent();
    let duty_percent = duty.map(|percent| percent as f64);
    let mut high =
        percents(judged, |one| one.cell.load_from >= bounds.loaded - 0.5 * (one.cell.load_to - one.cell.load_from));
    let is_lean_all_over = high.len() >= LEAST_CELLS && high.iter().all(|percent| *percent >= plan.round_percent);
    let middle = median_of(&mut high);
    if is_lean_all_over || duty.is_some_and(|percent| percent >= MOST_DUTY_PERCENT) {
        return NozzleWord::TooSmall { lean_percent: middle.unwrap_or(0.0).max(0.0), duty_percent };
    }
    let mut idle = percents(judged, |one| one.cell.rpm_from < IDLE_RPM && one.cell.load_from < bounds.loaded / 2.0);
    let is_rich_all_over = !idle.is_empty() && idle.iter().all(|percent| *percent <= -ROUNDS * plan.round_percent);
    match (is_rich_all_over, median_of(&mut idle), middle) {
        (true, Some(percent), _) => NozzleWord::TooLarge { rich_percent: -percent },
        (_, _, None) => NozzleWord::NotDriven,
        _ => NozzleWord::Serves,
    }
}

/// Deviations of the cells that are judged and asked for.
fn percents(judged: &[Judged], asked: impl Fn(&Judged) -> bool) -> Vec<f64> {
    let is_known = |one: &&Judged| one.cell.verdict != CellVerdict::NoFeedback && asked(one);
    judged.iter().filter(is_known).filter_map(|one| one.cell.deviation_percent).collect()
}
