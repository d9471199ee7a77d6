//! Logs of an invented engine whose behaviour is known: injection time as a smooth function of engine speed and manifold
//! pressure, a known error on gas, and all that makes real logs hard to read.

use fuelwright::calc::road::{Burned, Sample};

/// Numbers that look random and are the same everywhere: the splitmix64 step, by its published constants (G. L. Steele,
/// D. Lea and C. H. Flood, OOPSLA 2014).
pub struct Chance(u64);

impl Chance {
    pub fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15))
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// From `least` up to `most`, all alike.
    pub fn between(&mut self, least: f64, most: f64) -> f64 {
        least + (most - least) * (self.next() >> 11) as f64 / (1u64 << 53) as f64
    }

    /// Near to normal, by the sum of four.
    pub fn normal(&mut self, sigma: f64) -> f64 {
        sigma * 3f64.sqrt() * ((0..4).map(|_| self.between(0.0, 1.0)).sum::<f64>() - 2.0)
    }

    /// From nought to below `most`.
    pub fn below(&mut self, most: u64) -> u64 {
        self.next() % most
    }

    pub fn happens(&mut self, share: f64) -> bool {
        self.between(0.0, 1.0) < share
    }
}

/// The engine, and how its gas side is wrong.
#[derive(Debug, Clone, Copy)]
pub struct Engine {
    /// Error of gas everywhere, logarithm.
    pub offset: f64,
    /// Error that grows with load, logarithm a kPa from 60 kPa on.
    pub tilt: f64,
    /// A hill in the error: engine speed, manifold pressure, height.
    pub hill: [f64; 3],
    /// Trim on petrol, logarithm.
    pub petrol_trim: f64,
}

impl Engine {
    pub fn of(chance: &mut Chance) -> Self {
        Self {
            offset: chance.between(-0.06, 0.08),
            tilt: chance.between(-0.0008, 0.0008),
            hill: [chance.between(1_000.0, 3_500.0), chance.between(35.0, 85.0), chance.between(-0.08, 0.08)],
            petrol_trim: chance.between(-0.03, 0.04),
        }
    }

    /// Injection time without trims, ms.
    pub fn base_ms(rpm: f64, kpa: f64) -> f64 {
        let filling = 0.82 + 0.14 * (-((rpm - 3_200.0) / 1_900.0).powi(2)).exp();
        0.6 + 0.135 * filling * (kpa - 8.0)
    }

    /// The load at which that time is injected, kPa.
    pub fn kpa(rpm: f64, base_ms: f64) -> f64 {
        let one = Self::base_ms(rpm, 9.0) - Self::base_ms(rpm, 8.0);
        8.0 + (base_ms - Self::base_ms(rpm, 8.0)) / one
    }

    /// What the petrol computer adds on gas, logarithm: the truth that a comparison should find.
    pub fn error(&self, rpm: f64, kpa: f64) -> f64 {
        let [at_rpm, at_kpa, height] = self.hill;
        let far = ((rpm - at_rpm) / 900.0).powi(2) + ((kpa - at_kpa) / 22.0).powi(2);
        self.offset + self.tilt * (kpa - 60.0) + height * (-far).exp()
    }
}

/// How a log is driven and spoiled.
#[derive(Debug, Clone, Copy)]
pub struct Drive {
    /// Engine speeds that are driven, 1/min.
    pub rpm: (f64, f64),
    /// Manifold pressures that are driven, kPa.
    pub kpa: (f64, f64),
    /// How many rows.
    pub rows: u32,
    /// Rows a second.
    pub rows_per_s: f64,
    /// Above this the sensor does not steer, kPa.
    pub open_above_kpa: f64,
    /// Outliers, lost rows, a cold start and a changeover.
    pub is_spoiled: bool,
}

impl Drive {
    /// A quarter of an hour over fifteen cells of a corner that differs from seed to seed.
    pub fn of(chance: &mut Chance) -> Self {
        let rpm = 500.0 * chance.between(2.0, 5.0).floor();
        let kpa = 10.0 * chance.between(3.0, 6.0).floor();
        Self {
            rpm: (rpm, rpm + 1_500.0),
            kpa: (kpa, kpa + 40.0),
            rows: 5_000,
            rows_per_s: 5.0,
            open_above_kpa: 90.0,
            is_spoiled: true,
        }
    }
}

/// What goes on while driving.
struct State {
    rpm: f64,
    kpa: f64,
    target: (f64, f64),
    until_s: f64,
    is_overrun: bool,
    /// The error that stays through one visit: fuel in the intake, a sensor's mood, logarithm.
    mood: f64,
    phase: f64,
}

/// A log: rows in order of time.
pub fn log(engine: &Engine, drive: &Drive, burned: Burned, chance: &mut Chance) -> Vec<Sample> {
    let mut state = State {
        rpm: drive.rpm.0 + 200.0,
        kpa: drive.kpa.0 + 5.0,
        target: (drive.rpm.0 + 200.0, drive.kpa.0 + 5.0),
        until_s: 0.0,
        is_overrun: false,
        mood: 0.0,
        phase: chance.between(0.0, 6.0),
    };
    (0..drive.rows)
        .filter_map(|n| row(engine, drive, burned, f64::from(n) / drive.rows_per_s, &mut state, chance))
        .collect()
}

fn row(
    engine: &Engine,
    drive: &Drive,
    burned: Burned,
    time_s: f64,
    state: &mut State,
    chance: &mut Chance,
) -> Option<Sample> {
    go_on(drive, time_s, state, chance);
    // The changeover comes after a minute; until then both logs are petrol, and what follows it is disturbed.
    let changed_s = if drive.is_spoiled { 60.0 } else { 0.0 };
    let now = if time_s < changed_s { Burned::Petrol } else { burned };
    let is_closed_loop = state.kpa < drive.open_above_kpa && !state.is_overrun;
    let coolant_c = if drive.is_spoiled { (20.0 + 1.2 * time_s).min(88.0) } else { 88.0 };
    let error = if now == Burned::Gas && is_closed_loop { engine.error(state.rpm, state.kpa) } else { 0.0 };
    let swing = if is_closed_loop { 0.02 * (state.phase + 5.0 * time_s).sin() } else { 0.0 };
    let cold = if coolant_c < 70.0 { 0.25 } else { 0.0 };
    let disturbed = if burned == Burned::Gas && (changed_s..changed_s + 8.0).contains(&time_s) { -0.15 } else { 0.0 };
    let long = engine.petrol_trim + error;
    let ln = Engine::base_ms(state.rpm, state.kpa).ln()
        + long
        + swing
        + cold
        + disturbed
        + state.mood
        + chance.normal(0.006);
    let mut sample = Sample {
        time_s,
        rpm: (state.rpm + chance.normal(8.0)).round(),
        manifold_kpa: Some((state.kpa + chance.normal(0.4)).round()),
        petrol_ms: if state.is_overrun { 0.0 } else { (100.0 * ln.exp()).round() / 100.0 },
        gas_ms: (now == Burned::Gas).then(|| 1.25 * ln.exp() + 1.0),
        burned: Some(now),
        coolant_c: Some(coolant_c.round()),
        is_closed_loop: Some(is_closed_loop),
        short_trim_percent: Some(100.0 * swing.exp_m1()),
        long_trim_percent: Some(100.0 * long.exp_m1()),
        gas_kpa: Some(120.0),
    };
    if drive.is_spoiled {
        if chance.happens(0.02) || (400.0..403.0).contains(&time_s) {
            return None;
        }
        spoil(&mut sample, chance);
    }
    Some(sample)
}

/// One row in a hundred is wild in one value.
fn spoil(sample: &mut Sample, chance: &mut Chance) {
    if !chance.happens(0.01) {
        return;
    }
    match chance.below(4) {
        0 => sample.rpm = 16_383.75,
        1 => sample.petrol_ms *= 2.7,
        2 => sample.manifold_kpa = Some(255.0),
        _ => sample.short_trim_percent = Some(99.2),
    }
}

/// A target is driven to at a rate of its own and held for some seconds, wandering a little.
fn go_on(drive: &Drive, time_s: f64, state: &mut State, chance: &mut Chance) {
    if time_s >= state.until_s {
        state.target = (chance.between(drive.rpm.0, drive.rpm.1), chance.between(drive.kpa.0, drive.kpa.1));
        state.until_s = time_s + chance.between(3.0, 9.0);
        state.is_overrun = drive.is_spoiled && chance.happens(0.05);
        state.mood = chance.normal(0.012);
    }
    let near = 1.0 - (-1.6 / drive.rows_per_s).exp();
    state.rpm += near * (state.target.0 - state.rpm) + chance.normal(6.0);
    state.kpa += near * (state.target.1 - state.kpa) + chance.normal(0.25);
    state.kpa = state.kpa.clamp(20.0, 102.0);
    state.rpm = state.rpm.clamp(650.0, 6_500.0);
}
