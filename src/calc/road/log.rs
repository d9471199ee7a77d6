//! What belongs to the log that is read, and how rows of one stamp are put in order.

use std::cmp::Ordering;

use super::cells::side;
use super::plausible::Plausible;
use super::sieve::{Load, Sieve};
use super::stay::Stay;
use super::strip::Slices;
use super::{Burned, Has, Plan, Refused, Sample};

/// Share of a log's rows that must be on the fuel it is said to be.
const LEAST_ON_FUEL: f64 = 0.01;

/// What belongs to the log that is read.
pub(super) struct Log {
    pub stated: Option<Burned>,
    pub sieve: Sieve,
    pub stay: Stay,
    pub plausible: Plausible,
    pub slices: Slices,
    pub pending: Vec<Sample>,
    pub said: [u64; 2],
    pub rows: u64,
}

impl Log {
    pub fn new(plan: Plan, has: Has, stated: Option<Burned>) -> Self {
        Self {
            stated,
            sieve: Sieve::new(plan, has, stated),
            stay: Stay::new(Load::of(has)),
            plausible: Plausible::new(),
            slices: Slices::new(stated),
            pending: Vec::new(),
            said: [0; 2],
            rows: 0,
        }
    }

    /// The column says the other fuel than the one stated, all along.
    pub fn other_fuel(&self) -> Option<Refused> {
        let stated = self.stated?;
        let said = self.said[side(stated)] as f64;
        let all = self.said.iter().sum::<u64>() as f64;
        let other = if stated == Burned::Gas { Burned::Petrol } else { Burned::Gas };
        (all > 0.0 && said < LEAST_ON_FUEL * all).then_some(Refused::OneFuel { burned: other })
    }
}

/// An order of rows of one stamp that does not depend on how they came.
pub(super) fn compared(a: &Sample, b: &Sample) -> Ordering {
    let numbers = |row: &Sample| {
        let maybe = |value: Option<f64>| value.unwrap_or(f64::NEG_INFINITY);
        [
            row.rpm,
            row.petrol_ms,
            maybe(row.manifold_kpa),
            maybe(row.short_trim_percent),
            maybe(row.long_trim_percent),
            maybe(row.coolant_c),
            maybe(row.gas_ms),
        ]
    };
    let flags = |row: &Sample| (row.burned, row.is_closed_loop);
    let pairs = numbers(a).into_iter().zip(numbers(b));
    flags(a)
        .cmp(&flags(b))
        .then_with(|| pairs.map(|(a, b)| a.total_cmp(&b)).find(|o| o.is_ne()).unwrap_or(Ordering::Equal))
}
