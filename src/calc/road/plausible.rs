//! Whether the columns of a log can be what they are called.
//!
//! | refused | because |
//! |---|---|
//! | a fifth of a column outside [`super::RANGES`] | another unit, or another quantity |
//! | most rows with injection below 300/min | a road speed, or thousands of turns |
//! | most rows of a running engine below 0.5 ms | seconds, or a pulse counted otherwise |
//! | engine speed, load or injection time that rises (or falls) from row to row all along | a clock or a counter |
//! | injection time that ranks as engine speed does, or the other way round, almost without exception | the time of a turn, or the same column twice |
//! | injection time that falls where manifold pressure rises | a vacuum below the air's pressure |
//!
//! All bounds are common practice; each lies far from what an engine does. At one engine speed the time follows the
//! load, and a road has many loads at each speed, so that ranks of time and speed agree loosely.

use super::range::{CUT_MS, RUNNING_RPM, outside};
use super::thinned::Thinned;
use super::{Quantity, Refused, Sample};

/// Share of a column out of range that is too much.
const MOST_OUTSIDE: f64 = 0.2;
/// Share of the rows that a running engine must not have.
const MOST_STRANGE: f64 = 0.5;
/// Rows out of place before a column is judged by them.
const LEAST_ROWS: u64 = 5;
/// Steps of one sign, as a share, that make a counter; told from this many steps on.
const COUNTER: (f64, u64) = (0.99, 600);
/// Rows kept for ranks.
const MOST_RANKED: usize = 2_048;
/// Different values that make a rank worth telling.
const LEAST_VALUES: usize = 100;
/// Rank correlation of engine speed and injection time beyond which they are one signal.
const ONE_SIGNAL: f64 = 0.999;
/// Rank correlation of manifold pressure and injection time below which one of them is turned round.
const TURNED: f64 = -0.3;
/// Manifold pressures spread at least so far before their ranks are told, kPa.
const LEAST_SPREAD_KPA: f64 = 15.0;

/// Steps up and down of a column.
#[derive(Debug, Clone, Copy, Default)]
struct Steps {
    up: u64,
    down: u64,
    all: u64,
}

impl Steps {
    fn push(&mut self, before: f64, now: f64) {
        self.all += 1;
        self.up += u64::from(now > before);
        self.down += u64::from(now < before);
    }

    /// The share of steps of one sign, where that makes a counter.
    fn counter(self) -> Option<f64> {
        let share = self.up.max(self.down) as f64 / self.all.max(1) as f64;
        let sign = if self.up > self.down { 1.0 } else { -1.0 };
        (self.all >= COUNTER.1 && share >= COUNTER.0).then_some(sign * share)
    }
}

/// Engine speed, injection time, manifold pressure (NaN where it lacks).
type Three = [f64; 3];
const COLUMNS: [Quantity; 3] = [Quantity::Rpm, Quantity::PetrolMs, Quantity::ManifoldKpa];

/// What is remembered of a log to judge its columns.
pub(super) struct Plausible {
    rows: u64,
    outside: [u64; Quantity::ALL.len()],
    injecting: u64,
    slow: u64,
    running: u64,
    cut: u64,
    before: Option<Three>,
    steps: [Steps; 3],
    ranked: Thinned<Three>,
}

impl Plausible {
    pub fn new() -> Self {
        Self {
            rows: 0,
            outside: [0; Quantity::ALL.len()],
            injecting: 0,
            slow: 0,
            running: 0,
            cut: 0,
            before: None,
            steps: [Steps::default(); 3],
            ranked: Thinned::new(MOST_RANKED),
        }
    }

    pub fn push(&mut self, sample: &Sample) {
        self.rows += 1;
        if let Some(quantity) = outside(sample) {
            self.outside[quantity as usize] += 1;
            return;
        }
        let (is_injecting, is_running) = (sample.petrol_ms >= CUT_MS, sample.rpm >= RUNNING_RPM);
        self.injecting += u64::from(is_injecting);
        self.slow += u64::from(is_injecting && !is_running);
        self.running += u64::from(is_running);
        self.cut += u64::from(is_running && !is_injecting);
        let now = [sample.rpm, sample.petrol_ms, sample.manifold_kpa.unwrap_or(f64::NAN)];
        if let Some(before) = self.before.replace(now) {
            for ((steps, before), now) in self.steps.iter_mut().zip(before).zip(now) {
                steps.push(before, now);
            }
        }
        if is_injecting && is_running {
            self.ranked.push(now);
        }
    }

    /// The first reason to refuse the log.
    pub fn refusal(&self) -> Option<Refused> {
        self.out_of_range().or_else(|| self.counter()).or_else(|| self.ranks())
    }

    fn out_of_range(&self) -> Option<Refused> {
        let beyond = |quantity, (rows, of): (u64, u64), most: f64| {
            let share = rows as f64 / of.max(1) as f64;
            (rows >= LEAST_ROWS && share > most).then_some(Refused::OutOfRange { quantity, share })
        };
        let outside = |quantity: Quantity| beyond(quantity, (self.outside[quantity as usize], self.rows), MOST_OUTSIDE);
        Quantity::ALL
            .into_iter()
            .find_map(outside)
            .or_else(|| beyond(Quantity::Rpm, (self.slow, self.injecting), MOST_STRANGE))
            .or_else(|| beyond(Quantity::PetrolMs, (self.cut, self.running), MOST_STRANGE))
    }

    fn counter(&self) -> Option<Refused> {
        COLUMNS.into_iter().zip(self.steps).find_map(|(quantity, steps)| {
            let correlation = steps.counter()?;
            Some(Refused::RankImplausible { quantity, against: Quantity::TimeS, correlation })
        })
    }

    fn ranks(&self) -> Option<Refused> {
        let column = |at: usize| self.ranked.kept().iter().map(|row| row[at]).collect::<Vec<f64>>();
        let (rpm, ms) = (column(0), column(1));
        let refused = |quantity, correlation| Refused::RankImplausible {
            quantity: Quantity::PetrolMs,
            against: quantity,
            correlation,
        };
        let with_rpm = spearman(&rpm, &ms).filter(|r| r.abs() >= ONE_SIGNAL).map(|r| refused(Quantity::Rpm, r));
        with_rpm.or_else(|| {
            let pairs: (Vec<f64>, Vec<f64>) =
                self.ranked.kept().iter().filter(|row| !row[2].is_nan()).map(|row| (row[2], row[1])).unzip();
            let (least, most) =
                pairs.0.iter().fold((f64::MAX, 0.0), |(a, b): (f64, f64), kpa| (a.min(*kpa), b.max(*kpa)));
            (most - least >= LEAST_SPREAD_KPA)
                .then(|| spearman(&pairs.0, &pairs.1))?
                .filter(|r| *r < TURNED)
                .map(|r| refused(Quantity::ManifoldKpa, r))
        })
    }
}

/// Spearman's rank correlation with the mean of tied ranks; `None` where the rows or their values are too few to tell.
fn spearman(a: &[f64], b: &[f64]) -> Option<f64> {
    let (a, b) = (ranks(a)?, ranks(b)?);
    let middle = (a.len() as f64 - 1.0) / 2.0;
    let mut sums = [0.0; 3];
    for (x, y) in a.iter().zip(&b) {
        let (x, y) = (x - middle, y - middle);
        sums = [sums[0] + x * y, sums[1] + x * x, sums[2] + y * y];
    }
    let [both, of_a, of_b] = sums;
    (of_a > 0.0 && of_b > 0.0).then(|| both / (of_a * of_b).sqrt())
}

/// Ranks from 0, tied ones their mean; `None` of too few different values.
fn ranks(values: &[f64]) -> Option<Vec<f64>> {
    let mut order: Vec<usize> = (0..values.len()).collect();
    order.sort_unstable_by(|i, j| values[*i].total_cmp(&values[*j]));
    let mut ranks = vec![0.0; values.len()];
    let mut different = 0;
    let mut at = 0;
    for tied in order.chunk_by(|i, j| values[*i].total_cmp(&values[*j]).is_eq()) {
        let mean = at as f64 + (tied.len() as f64 - 1.0) / 2.0;
        for i in tied {
            ranks[*i] = mean;
        }
        at += tied.len();
        different += 1;
    }
    (different >= LEAST_VALUES).then_some(ranks)
}
