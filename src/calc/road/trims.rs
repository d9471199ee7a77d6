//! Total trims of both fuels by regime.

use super::TrimPoint;
use super::cells::{Cells, Visit};
use super::sieve::Load;
use crate::calc::robust::median_of;

/// Regimes in the order of a table; the bounds are common practice.
const REGIMES: [&str; 4] = ["idle", "raised-idle", "cruise", "load"];

/// Below this an engine without load idles, 1/min.
const IDLE_RPM: f64 = 1_200.0;
/// Between these it is held at a raised idle.
const RAISED_RPM: (f64, f64) = (2_000.0, 3_000.0);
/// An engine without load stays below this, kPa.
const UNLOADED_KPA: f64 = 40.0;
/// From here on it pulls, kPa.
pub(super) const LOADED_KPA: f64 = 75.0;
/// The same as times with the trims taken off, as a share of the longest that was driven.
const UNLOADED_SHARE: f64 = 0.25;
/// See [`LOADED_KPA`].
pub(super) const LOADED_SHARE: f64 = 0.75;

/// Least load of the regimes with and without load, in the unit of the bands.
#[derive(Debug, Clone, Copy)]
pub(super) struct Bounds {
    unloaded: f64,
    pub loaded: f64,
}

impl Bounds {
    pub fn of(cells: &Cells, by: Load) -> Self {
        if by == Load::Manifold {
            return Self { unloaded: UNLOADED_KPA, loaded: LOADED_KPA };
        }
        let most = cells.iter().map(|(place, _)| place.middle(by).1).fold(0.0, f64::max);
        Self { unloaded: UNLOADED_SHARE * most, loaded: LOADED_SHARE * most }
    }

    fn regime(self, visit: &Visit) -> usize {
        let is_unloaded = visit.load < self.unloaded;
        if visit.load >= self.loaded {
            3
        } else if is_unloaded && visit.rpm < IDLE_RPM {
            0
        } else if is_unloaded && (RAISED_RPM.0..RAISED_RPM.1).contains(&visit.rpm) {
            1
        } else {
            2
        }
    }
}

/// Median trims of each regime that was driven with trims logged; empty where none were.
pub(super) fn trims(cells: &Cells, bounds: Bounds) -> Vec<TrimPoint> {
    let mut pools: [[Vec<f64>; 2]; 4] = Default::default();
    for (_, sides) in cells.iter() {
        for (fuel, side) in sides.iter().enumerate() {
            for visit in side.visits.kept() {
                pools[bounds.regime(visit)][fuel].extend(visit.trim);
            }
        }
    }
    let points = REGIMES.iter().zip(pools).map(|(regime, pools)| {
        let [petrol, gas] = pools.map(|mut pool| median_of(&mut pool));
        let percent = |factor: f64| 100.0 * (factor - 1.0);
        TrimPoint {
            regime: (*regime).to_owned(),
            petrol_percent: petrol.map(percent),
            gas_percent: gas.map(percent),
            difference_percent: petrol.zip(gas).map(|(petrol, gas)| percent(gas / petrol)),
        }
    });
    points.filter(|point| point.petrol_percent.is_some() || point.gas_percent.is_some()).collect()
}
