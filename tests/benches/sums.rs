//! How long a sum takes, and whether it stays under what a screen may spend on it.
//!
//! `cargo bench --bench sums` prints a line each and ends with 1 when one is over its target. With `-- --points` it prints
//! instead, for every point that `beside-coolprop` compares, what we answer and how long it took.
//!
//! A figure is the median over many short batches: the median does not move when something else runs for a moment. The
//! lowest says what the machine can do, the highest how much it was disturbed.

use std::hint::black_box;
use std::process::ExitCode;
use std::time::{Duration, Instant};

use fuelwright::calc::Composition;
use fuelwright::calc::composition::Shares;
use fuelwright::calc::container::{Container, container};
use fuelwright::calc::gas::{Gas, gas_state};
use fuelwright::calc::leak::{Compressibility, DecayTest, judge, reference_c, reference_kpa};
use fuelwright::calc::liquid::{Liquid, density_kg_m3, vapour_pressure};
use fuelwright::calc::nozzle::engine::Follows;
use fuelwright::calc::nozzle::{Sizing, size};

/// Batches measured.
const BATCHES: usize = 60;
/// A batch is long against the clock's own step and short against a disturbance.
const BATCH: Duration = Duration::from_millis(5);

/// Nanoseconds a call.
struct Taken {
    lowest: f64,
    median: f64,
    highest: f64,
}

/// Times a sum; its answer goes through [`black_box`], so that no call is optimised away.
fn time<T>(mut sum: impl FnMut() -> T) -> Taken {
    // Warm: caches, branch prediction, clock frequency. Counts how many calls a batch takes.
    let start = Instant::now();
    let mut calls = 0_u32;
    while start.elapsed() < 20 * BATCH {
        black_box(sum());
        calls += 1;
    }
    let calls = (calls / 20).max(1);
    let mut batches: Vec<f64> = (0..BATCHES)
        .map(|_| {
            let start = Instant::now();
            for _ in 0..calls {
                black_box(sum());
            }
            start.elapsed().as_secs_f64() * 1e9 / f64::from(calls)
        })
        .collect();
    batches.sort_by(f64::total_cmp);
    Taken { lowest: batches[0], median: batches[BATCHES / 2], highest: batches[BATCHES - 1] }
}

fn mixture(shares: Shares) -> Composition {
    Composition::from_mole(shares).expect("the shares below sum to 1")
}

/// The mixtures of the comparison, with the name that both sides print.
fn mixtures() -> [(&'static str, Composition); 5] {
    let shares = Shares::default();
    [
        ("propane", mixture(Shares { propane: 1.0, ..shares })),
        ("p60_b40", mixture(Shares { propane: 0.6, n_butane: 0.4, ..shares })),
        ("p30_b70", mixture(Shares { propane: 0.3, n_butane: 0.42, isobutane: 0.28, ..shares })),
        ("methane", mixture(Shares { methane: 1.0, ..shares })),
        (
            "rich_gas",
            mixture(Shares {
                methane: 0.86,
                ethane: 0.085,
                propane: 0.023,
                n_butane: 0.0035,
                isobutane: 0.0035,
                nitrogen: 0.01,
                carbon_dioxide: 0.015,
                ..shares
            }),
        ),
    ]
}

fn engine() -> Sizing {
    Sizing {
        fuel: mixtures()[1].1,
        rated_power_kw: 75.0,
        rated_rpm: 5_800.0,
        engine_cylinders: 4,
        brake_efficiency: 0.30,
        manifold_kpa: 97.0,
        supply_over_manifold_kpa: 120.0,
        regulator_follows: Follows::Manifold,
        gas_temperature_c: 50.0,
        dead_time_ms: 1.6,
        max_duty: 0.9,
        discharge_coefficient: 0.8,
        discharge_uncertainty: None,
        sizes_mm: (15..=35).map(|tenths| f64::from(tenths) / 10.0).collect(),
        idle_rpm: Some(800.0),
        idle_fuel_power_kw: Some(9.5),
        idle_manifold_kpa: 35.0,
        min_pulse_ms: 2.5,
    }
}

fn decay() -> DecayTest {
    DecayTest {
        volume_l: 2.0,
        start_kpa: 401.3,
        end_kpa: 400.9,
        start_c: 20.0,
        end_c: 20.0,
        duration_min: 10.0,
        limit_cm3_h: 20.0,
        pressure_resolution_kpa: 0.1,
        pressure_standard_uncertainty_kpa: 0.05,
        temperature_standard_uncertainty_k: 0.1,
        volume_relative_standard_uncertainty: 0.05,
        reference_c: reference_c(),
        reference_kpa: reference_kpa(),
    }
}

/// The sums a screen waits for. A target is what the whole answer may take, in microseconds.
fn targets() -> ExitCode {
    let [_, (_, lpg), _, _, (_, rich)] = mixtures();
    let engine = engine();
    // The demands of an engine that no size fits: reasons search for supply pressures and dead times as well.
    let hungry = Sizing { sizes_mm: vec![1.5, 1.8, 2.0], ..engine.clone() };
    let warm = |composition, pressure_kpa, temperature_c| Gas { composition, pressure_kpa, temperature_c };
    let fill = Container { composition: lpg, gross_volume_l: 60.0, fill_fraction: 0.8, temperature_c: 15.0 };
    let rows: [(&str, Option<f64>, Taken); 8] = [
        ("nozzle sizing, a size fits", Some(2_000.0), time(|| size(black_box(&engine)))),
        ("nozzle sizing, none fits", Some(2_000.0), time(|| size(black_box(&hungry)))),
        ("gas state, LPG vapour at 217 kPa", Some(20.0), time(|| gas_state(black_box(&warm(lpg, 217.0, 50.0))))),
        ("gas state, methane at 20 MPa", Some(20.0), {
            let methane = mixtures()[3].1;
            time(move || gas_state(black_box(&warm(methane, 20_000.0, 15.0))))
        }),
        ("gas state, 7 components at 20 MPa", Some(20.0), time(|| gas_state(black_box(&warm(rich, 20_000.0, 15.0))))),
        ("bubble pressure, LPG", None, {
            let liquid = Liquid { composition: lpg, temperature_c: 15.0 };
            time(move || vapour_pressure(black_box(&liquid)))
        }),
        ("container", None, time(|| container(black_box(&fill)))),
        ("leak test, ideal gas", None, time(|| judge(black_box(&decay()), &Compressibility::IDEAL))),
    ];
    println!("{:<36}{:>12}{:>12}{:>12}{:>12}", "us a call", "median", "lowest", "highest", "target");
    let mut is_over = false;
    for (name, target_us, taken) in rows {
        let [median, lowest, highest] = [taken.median, taken.lowest, taken.highest].map(|ns| ns / 1e3);
        let target = target_us.map_or_else(String::new, |us| format!("{us:.0}"));
        let verdict = if target_us.is_some_and(|us| median > us) { "  OVER" } else { "" };
        is_over |= !verdict.is_empty();
        println!("{name:<36}{median:>12.2}{lowest:>12.2}{highest:>12.2}{target:>12}{verdict}");
    }
    if is_over { ExitCode::FAILURE } else { ExitCode::SUCCESS }
}

/// One point of the comparison: what is asked, of which mixture, where, and in which unit the answer comes.
fn print_point(what: &str, name: &str, composition: &Composition, kpa: f64, c: f64, sum: impl Fn() -> f64) {
    let mole: Vec<String> = composition.mole().iter().map(ToString::to_string).collect();
    println!("{what},{name},{},{kpa},{c},{},{}", mole.join(","), sum(), time(sum).median);
}

/// The points that both sides answer. Pressure is 0 where it is what is asked, or plays no part.
fn points() {
    println!(
        "what,mixture,methane,ethane,propane,propene,n_butane,isobutane,n_pentane,nitrogen,carbon_dioxide,pressure_kpa,temperature_c,ours,ours_ns"
    );
    let [propane, p60_b40, p30_b70, methane, rich_gas] = mixtures();
    let state = |composition: &Composition, pressure_kpa, temperature_c| {
        gas_state(&Gas { composition: *composition, pressure_kpa, temperature_c }).expect("a dry gas")
    };
    let mut gases = Vec::new();
    for gas in [propane, p60_b40, p30_b70] {
        gases.extend([(150.0, 40.0), (217.0, 50.0), (300.0, 70.0)].map(|(kpa, c)| (gas, kpa, c)));
    }
    for gas in [methane, rich_gas] {
        gases
            .extend([(300.0, 40.0), (5_000.0, 15.0), (20_000.0, 15.0), (25_000.0, 50.0)].map(|(kpa, c)| (gas, kpa, c)));
    }
    for ((name, gas), kpa, c) in gases {
        print_point("density_kg_m3", name, &gas, kpa, c, || state(&gas, kpa, c).density_kg_m3);
        print_point("speed_of_sound_m_s", name, &gas, kpa, c, || state(&gas, kpa, c).speed_of_sound_m_s);
    }
    for (name, liquid) in [propane, p60_b40, p30_b70] {
        for c in [-20.0, 0.0, 15.0, 40.0, 60.0] {
            let bubble = || {
                let asked = Liquid { composition: liquid, temperature_c: c };
                vapour_pressure(&asked).expect("below the critical region").pressure_kpa
            };
            print_point("bubble_pressure_kpa", name, &liquid, 0.0, c, bubble);
            let density = || density_kg_m3(&liquid, c).expect("below the critical region");
            print_point("liquid_density_kg_m3", name, &liquid, 0.0, c, density);
        }
    }
}

fn main() -> ExitCode {
    // `cargo bench` adds a `--bench` of its own.
    let asked: Vec<String> = std::env::args().skip(1).filter(|argument| argument != "--bench").collect();
    match asked.iter().map(String::as_str).collect::<Vec<_>>()[..] {
        [] => targets(),
        ["--points"] => {
            points();
            ExitCode::SUCCESS
        }
        _ => {
            eprintln!("it takes --points, or nothing; not {}", asked.join(" "));
            ExitCode::from(2)
        }
    }
}
