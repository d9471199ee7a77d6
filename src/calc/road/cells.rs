//! Cells of engine speed and load, and the visits that each fuel paid them.

use std::collections::BTreeMap;

use super::Burned;
use super::sieve::Load;
use super::thinned::Thinned;

/// Width of a band of engine speed, 1/min (common practice).
pub(super) const RPM_WIDTH: f64 = 500.0;
/// Visits of a cell that are kept on each fuel; of more, every second, fourth... is.
pub(super) const MOST_VISITS: usize = 256;
/// How far beyond its edge a cell is not yet left, as a share of its width: the resolution of a log alone moves a steady
/// engine that far (common practice).
const HOLD: f64 = 0.05;

/// Which cell: bands of engine speed and of load, counted from nought.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Place {
    pub rpm: u16,
    pub load: u16,
}

impl Place {
    pub fn of(rpm: f64, load: f64, by: Load) -> Self {
        Self { rpm: band(rpm / RPM_WIDTH), load: band(load / by.width()) }
    }

    /// Whether a row that follows one at `before` still belongs here: it lies just over the edge and came there by a
    /// step no larger than that.
    pub fn holds(self, (rpm, load): (f64, f64), before: (f64, f64), by: Load) -> bool {
        let is_held = |band: u16, value: f64, before: f64| {
            let over = (value - f64::from(band) - 0.5).abs() - 0.5;
            self::band(value) == band || (over <= HOLD && (value - before).abs() <= 2.0 * HOLD)
        };
        is_held(self.rpm, rpm / RPM_WIDTH, before.0 / RPM_WIDTH)
            && is_held(self.load, load / by.width(), before.1 / by.width())
    }

    /// Middle of the cell: engine speed and load.
    pub fn middle(self, by: Load) -> (f64, f64) {
        ((f64::from(self.rpm) + 0.5) * RPM_WIDTH, (f64::from(self.load) + 0.5) * by.width())
    }
}

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a cast from float saturates, NaN is 0")]
fn band(bands: f64) -> u16 {
    bands as u16
}

/// A stay of at least half a second in one cell, as its medians.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Visit {
    pub rpm: f64,
    pub load: f64,
    /// Natural logarithm of the injection time in ms.
    pub ln_ms: f64,
    /// Total trim as a factor, where logged.
    pub trim: Option<f64>,
}

/// What one fuel did in a cell.
#[derive(Debug, Clone)]
pub(super) struct Side {
    /// Visits in closed loop.
    pub visits: Thinned<Visit>,
    /// Visits in open loop, counted only.
    pub open: u64,
}

impl Side {
    /// Driven in open loop only.
    pub fn is_blind(&self) -> bool {
        self.visits.seen() == 0 && self.open > 0
    }
}

/// A cell: petrol, then gas.
pub(super) type Sides = [Side; 2];

/// Place of a fuel in [`Sides`].
pub(super) const fn side(burned: Burned) -> usize {
    match burned {
        Burned::Petrol => 0,
        Burned::Gas => 1,
    }
}

/// All cells that were visited.
#[derive(Debug, Default)]
pub(super) struct Cells(BTreeMap<Place, Sides>);

impl Cells {
    pub fn side(&mut self, place: Place, burned: Burned) -> &mut Side {
        let new = || Side { visits: Thinned::new(MOST_VISITS), open: 0 };
        &mut self.0.entry(place).or_insert_with(|| [new(), new()])[side(burned)]
    }

    pub fn iter(&self) -> impl Iterator<Item = (Place, &Sides)> {
        self.0.iter().map(|(place, sides)| (*place, sides))
    }

    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }
}
