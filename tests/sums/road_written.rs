//! Logs written by hand: visits of so many seconds at so much speed and load, for tests of the road comparison.

use fuelwright::calc::road::{Burned, Cell, Comparison, Gatherer, Has, Plan, Quantity, Refused, Sample, SetAside};

/// Every quantity is there.
pub fn all() -> Has {
    Has::of(Quantity::ALL)
}

/// Every quantity but these.
pub fn without(quantities: &[Quantity]) -> Has {
    Has::of(Quantity::ALL.into_iter().filter(|one| !quantities.contains(one)))
}

/// Both logs through the gatherer, each stated; the fuel columns speak as well.
pub fn compare(petrol: &[Sample], gas: &[Sample], has: Has) -> Result<Comparison, Refused> {
    let mut gatherer = Gatherer::new(Plan::default(), has);
    for (burned, rows) in [(Burned::Petrol, petrol), (Burned::Gas, gas)] {
        gatherer.begin_log(Some(burned));
        for row in rows {
            gatherer.push(row);
        }
    }
    gatherer.finish()
}

/// A warm engine in closed loop.
pub fn warm(burned: Burned, time_s: f64, (rpm, kpa, ms): (f64, f64, f64)) -> Sample {
    Sample {
        time_s,
        rpm,
        manifold_kpa: Some(kpa),
        petrol_ms: ms,
        gas_ms: (burned == Burned::Gas).then_some(1.2 * ms),
        burned: Some(burned),
        coolant_c: Some(88.0),
        is_closed_loop: Some(true),
        short_trim_percent: Some(0.0),
        long_trim_percent: Some(0.0),
        gas_kpa: Some(120.0),
    }
}

/// Rows written one after another.
pub struct Written {
    pub burned: Burned,
    pub rows: Vec<Sample>,
    pub time_s: f64,
}

impl Written {
    pub fn on(burned: Burned) -> Self {
        Self { burned, rows: Vec::new(), time_s: 0.0 }
    }

    /// So many rows a quarter of a second apart at one point.
    pub fn hold(&mut self, point: (f64, f64, f64), rows: u32) -> &mut Self {
        self.hold_with(point, rows, |_| {})
    }

    /// The same with each row changed.
    pub fn hold_with(&mut self, point: (f64, f64, f64), rows: u32, change: impl Fn(&mut Sample)) -> &mut Self {
        for _ in 0..rows {
            let mut row = warm(self.burned, self.time_s, point);
            change(&mut row);
            self.rows.push(row);
            self.time_s += 0.25;
        }
        self
    }

    /// Visits of two seconds, each after a pause that ends the one before.
    pub fn visits(&mut self, point: (f64, f64, f64), visits: u32) -> &mut Self {
        for _ in 0..visits {
            self.time_s += 5.0;
            self.hold(point, 9);
        }
        self
    }
}

/// A point in the middle of a cell.
pub const POINT: (f64, f64, f64) = (2_250.0, 65.0, 6.0);

/// So many visits to that cell.
pub fn visited(burned: Burned, ms: f64, visits: u32) -> Vec<Sample> {
    Written::on(burned).visits((2_250.0, 65.0, ms), visits).rows.clone()
}

/// The only cell.
pub fn only(found: &Comparison) -> &Cell {
    assert_eq!(found.cells.len(), 1, "{:?}", found.cells);
    &found.cells[0]
}

/// The first cell of a band of engine speed.
pub fn at_rpm(found: &Comparison, rpm: f64) -> &Cell {
    found.cells.iter().find(|cell| (cell.rpm_from - rpm).abs() < 1e-9).unwrap()
}

/// Rows set aside for a reason.
pub fn set_aside(found: &Comparison, why: SetAside) -> u64 {
    found.set_aside.get(&why).copied().unwrap_or(0)
}
