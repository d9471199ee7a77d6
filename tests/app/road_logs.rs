//! Logs of an invented drive for the tests of the pages: an engine whose injection time follows speed and load, and a gas
//! side that is off by a known share.

/// What is wrong on gas at a speed and a load, as a share: 0.08 is lean by 8 %.
pub type Error = fn(f64, f64) -> f64;

/// Nothing is wrong.
pub fn alike(_: f64, _: f64) -> f64 {
    0.0
}

/// Lean by 8 % from 2 000 to 3 000 /min at 60 to 80 kPa.
pub fn lean_region(rpm: f64, kpa: f64) -> f64 {
    if (2_000.0..3_000.0).contains(&rpm) && (60.0..80.0).contains(&kpa) { 0.08 } else { 0.0 }
}

/// Injection time of the invented engine, ms.
fn petrol_ms(rpm: f64, kpa: f64) -> f64 {
    1.0 + 0.08 * kpa + rpm / 8_000.0
}

/// A small wobble that is the same in every run: -1 to 1.
fn wobble(n: usize) -> f64 {
    let mixed = (n as u64).wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
    let mixed = (mixed ^ (mixed >> 29)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    f64::from(u32::try_from(mixed >> 40).unwrap_or(0)) / f64::from(1_u32 << 23) - 1.0
}

/// The points that are driven, in the middle of their cells: speed and load.
const POINTS: [(f64, f64); 14] = [
    (850.0, 35.0),
    (1_750.0, 45.0),
    (1_750.0, 65.0),
    (2_250.0, 45.0),
    (2_250.0, 65.0),
    (2_250.0, 75.0),
    (2_750.0, 45.0),
    (2_750.0, 65.0),
    (2_750.0, 75.0),
    (3_250.0, 45.0),
    (3_250.0, 65.0),
    (3_250.0, 75.0),
    (3_250.0, 85.0),
    (2_750.0, 85.0),
];

/// One fuel driven `rounds` times through all points, three seconds at each, ten rows a second, semicolons and decimal
/// commas. With `fuel`, a column says which burned.
pub fn log(on_gas: bool, rounds: usize, error: Error, fuel: bool) -> String {
    let mut out =
        String::from("Invented drive\nTime [s];Engine speed [1/min];MAP [kPa];Injection petrol [ms];Coolant temp [°C]");
    out.push_str(if fuel { ";Fuel\n" } else { "\n" });
    push_rows(&mut out, 0.0, on_gas, rounds, error, fuel);
    out
}

/// One log of both fuels.
pub fn both(rounds: usize, error: Error) -> String {
    let mut out = log(false, rounds, error, true);
    let seconds = (rounds * POINTS.len()) as f64 * 6.0 + 20.0;
    push_rows(&mut out, seconds, true, rounds, error, true);
    out
}

fn push_rows(out: &mut String, begin_s: f64, on_gas: bool, rounds: usize, error: Error, fuel: bool) {
    // No two drives wobble alike.
    let mut n = if on_gas { 50_000 } else { 0 };
    // Warm and settled: what comes right after a change of fuel is set aside.
    let mut time_s = begin_s;
    for round in 0..=rounds {
        for (rpm, kpa) in POINTS {
            // The way from one point to the next is driven too, three seconds of it, and does not count as steady.
            for row in 0..60 {
                let is_there = row >= 30;
                n += 1;
                time_s += 0.1;
                // The first round is driven before the engine is settled on this fuel.
                let (rpm, kpa) = if is_there { (rpm, kpa) } else { (rpm + 20.0 * f64::from(30 - row), kpa) };
                let share = if on_gas { 1.0 + error(rpm, kpa) } else { 1.0 };
                let ms = petrol_ms(rpm, kpa) * share * (1.0 + 0.01 * wobble(n + round));
                let line = format!(
                    "{time_s:.1};{:.0};{:.1};{ms:.3};88",
                    rpm + 15.0 * wobble(n + 7),
                    kpa + 0.8 * wobble(n + 3)
                );
                out.push_str(&line.replace('.', ","));
                if fuel {
                    out.push_str(if on_gas { ";LPG" } else { ";petrol" });
                }
                out.push('\n');
            }
        }
    }
}
