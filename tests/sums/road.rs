//! Road comparison against an engine whose error on gas is known (`road_generator`), and what must hold for any log.

use std::collections::BTreeMap;
use std::ops::Range;

use fuelwright::calc::road::{Banded, Burned, Cell, CellVerdict, Has, Quantity, Sample, Why};
use proptest::prelude::*;

use super::road_generator::{Chance, Drive, Engine, log};
use super::road_written::{all, compare, warm, without};

/// Engine, petrol log and gas log of a seed.
pub fn driven(seed: u64) -> (Engine, Vec<Sample>, Vec<Sample>) {
    let mut chance = Chance::new(seed);
    let (engine, drive) = (Engine::of(&mut chance), Drive::of(&mut chance));
    let petrol = log(&engine, &drive, Burned::Petrol, &mut chance);
    let gas = log(&engine, &drive, Burned::Gas, &mut chance);
    (engine, petrol, gas)
}

/// How often intervals held the truth, and verdicts against it.
#[derive(Debug, Default)]
struct Tally {
    judged: u32,
    held: u32,
    verdicts: BTreeMap<CellVerdict, u32>,
    wrong: u32,
}

impl Tally {
    fn add(&mut self, engine: &Engine, cell: &Cell, banded: Banded, shift: f64) {
        *self.verdicts.entry(cell.verdict).or_default() += 1;
        let (Some(low), Some(high)) = (cell.low_percent, cell.high_percent) else { return };
        let (rpm, load) = (0.5 * (cell.rpm_from + cell.rpm_to), 0.5 * (cell.load_from + cell.load_to));
        let kpa = if banded == Banded::Manifold { load } else { Engine::kpa(rpm, load) };
        let truth = engine.error(rpm, kpa) + shift;
        let percent = 100.0 * truth.exp_m1();
        self.judged += 1;
        self.held += u32::from((low..=high).contains(&percent));
        let is_wrong = match cell.why {
            Why::Within => truth.abs() > 0.05,
            Why::Lean => truth < 0.03,
            Why::Rich => truth > -0.03,
            _ => false,
        };
        self.wrong += u32::from(is_wrong);
    }

    fn share(&self) -> f64 {
        f64::from(self.held) / f64::from(self.judged)
    }
}

fn tally(seeds: Range<u64>, has: Has, shift: f64) -> Tally {
    tally_of(seeds, has, shift, |drive| drive)
}

fn tally_of(seeds: Range<u64>, has: Has, shift: f64, change: impl Fn(Drive) -> Drive) -> Tally {
    let mut tally = Tally::default();
    for seed in seeds {
        let mut chance = Chance::new(seed);
        let (engine, drive) = (Engine::of(&mut chance), change(Drive::of(&mut chance)));
        let [petrol, gas] = [Burned::Petrol, Burned::Gas].map(|burned| log(&engine, &drive, burned, &mut chance));
        let found = compare(&petrol, &gas, has).unwrap_or_else(|refused| panic!("seed {seed}: {refused}"));
        for cell in &found.cells {
            tally.add(&engine, cell, found.banded, shift);
        }
    }
    tally
}

#[test]
fn nine_in_ten_judged_cells_hold_the_true_error_over_two_hundred_seeds() {
    let tally = tally(0..200, all(), 0.0);
    assert!(tally.share() >= 0.90, "{tally:?}");
    // Seldom judged would be easily right.
    assert!(tally.judged >= 1_500, "{tally:?}");
    let of = |verdict| tally.verdicts.get(&verdict).copied().unwrap_or(0);
    assert!(of(CellVerdict::Good) + of(CellVerdict::Deviates) > of(CellVerdict::Undecided), "{tally:?}");
    assert!(f64::from(tally.wrong) < 0.02 * f64::from(tally.judged), "{tally:?}");
}

#[test]
fn a_truth_that_is_two_per_cent_elsewhere_is_not_held() {
    assert!(tally(0..20, all(), 0.02).share() < 0.8);
    assert!(tally(0..20, all(), -0.02).share() < 0.8);
}

#[test]
fn without_manifold_pressure_the_trims_taken_off_tell_the_load_and_the_truth_is_held_as_well() {
    let has = without(&[Quantity::ManifoldKpa]);
    let tally = tally(0..60, has, 0.0);
    assert!(tally.share() >= 0.90 && tally.judged > 400, "{tally:?}");
}

#[test]
fn slow_short_and_long_logs_hold_the_truth_as_well() {
    type Change = fn(Drive) -> Drive;
    let drives: [(&str, Change); 3] = [
        ("a row a second", |drive| Drive { rows_per_s: 1.0, rows: 1_300, ..drive }),
        ("barely six visits", |drive| Drive { rows: 2_200, ..drive }),
        ("two hours", |drive| Drive { rows: 36_000, ..drive }),
    ];
    for (name, change) in drives {
        let tally = tally_of(200..215, all(), 0.0, change);
        assert!(tally.share() >= 0.90 && tally.judged > 50, "{name}: {tally:?}");
    }
}

/// A few seeds every day; as many as `PROPTEST_CASES` says in the long run.
fn few() -> ProptestConfig {
    if std::env::var_os("PROPTEST_CASES").is_some() {
        ProptestConfig::default()
    } else {
        ProptestConfig::with_cases(12)
    }
}

fn other(burned: Burned) -> Burned {
    if burned == Burned::Gas { Burned::Petrol } else { Burned::Gas }
}

fn changed(rows: &[Sample], change: impl Fn(&mut Sample)) -> Vec<Sample> {
    let mut rows = rows.to_vec();
    rows.iter_mut().for_each(change);
    rows
}

/// What of a cell must stay when injection times are scaled.
fn deviation(cell: &Cell) -> (u32, u32, CellVerdict, Option<f64>) {
    let ln = cell.deviation_percent.map(|percent| (percent / 100.0).ln_1p());
    (cell.petrol_visits, cell.gas_visits, cell.verdict, ln)
}

fn alike(one: Option<f64>, other: Option<f64>) -> bool {
    match (one, other) {
        (Some(one), Some(other)) => (one - other).abs() < 1e-9,
        (one, other) => one == other,
    }
}

proptest! {
    #![proptest_config(few())]

    #[test]
    fn the_order_of_rows_of_one_stamp_does_not_matter(seed in 0..10_000u64) {
        let (_, petrol, gas) = driven(seed);
        let in_threes = |rows: &[Sample]| changed(rows, |row| row.time_s = (row.time_s / 0.6).floor() * 0.6);
        let turned = |rows: &[Sample]| -> Vec<Sample> {
            rows.chunk_by(|a, b| a.time_s.total_cmp(&b.time_s).is_eq()).flat_map(|same| same.iter().rev().copied()).collect()
        };
        let (petrol, gas) = (in_threes(&petrol), in_threes(&gas));
        let found = compare(&petrol, &gas, all()).unwrap();
        prop_assert!(found.cells.iter().any(|cell| cell.petrol_visits > 0));
        prop_assert_eq!(found, compare(&turned(&petrol), &turned(&gas), all()).unwrap());
    }

    #[test]
    fn scaled_injection_times_leave_deviations_alone(seed in 0..10_000u64, factor in 0.6..3.0f64) {
        let (_, petrol, gas) = driven(seed);
        let scaled = |rows: &[Sample]| changed(rows, |row| row.petrol_ms *= factor);
        let (before, after) =
            (compare(&petrol, &gas, all()).unwrap(), compare(&scaled(&petrol), &scaled(&gas), all()).unwrap());
        prop_assert_eq!(before.cells.len(), after.cells.len());
        for (before, after) in before.cells.iter().map(deviation).zip(after.cells.iter().map(deviation)) {
            prop_assert!((before.0, before.1, before.2) == (after.0, after.1, after.2) && alike(before.3, after.3), "{before:?} {after:?}");
        }
    }

    #[test]
    fn swapped_fuels_turn_the_sign_of_every_deviation(seed in 0..10_000u64) {
        let (_, petrol, gas) = driven(seed);
        let swapped = |rows: &[Sample]| changed(rows, |row| row.burned = row.burned.map(other));
        let (before, after) =
            (compare(&petrol, &gas, all()).unwrap(), compare(&swapped(&gas), &swapped(&petrol), all()).unwrap());
        prop_assert_eq!(before.cells.len(), after.cells.len());
        for (before, after) in before.cells.iter().map(deviation).zip(after.cells.iter().map(deviation)) {
            prop_assert!((before.1, before.0, before.2) == (after.0, after.1, after.2), "{before:?} {after:?}");
            prop_assert!(alike(before.3.map(|ln| -ln), after.3), "{before:?} {after:?}");
        }
    }

    #[test]
    fn when_the_clock_began_changes_nothing(seed in 0..10_000u64, hours in -1_000..1_000i32) {
        let mut chance = Chance::new(seed);
        // Quarters of a second, so that a shift rounds nothing.
        let drive = Drive { rows_per_s: 4.0, rows: 2_400, ..Drive::of(&mut chance) };
        let engine = Engine::of(&mut chance);
        let [petrol, gas] = [Burned::Petrol, Burned::Gas].map(|burned| log(&engine, &drive, burned, &mut chance));
        let later = |rows: &[Sample]| changed(rows, |row| row.time_s += 3_600.0 * f64::from(hours));
        prop_assert_eq!(compare(&petrol, &gas, all()).unwrap(), compare(&later(&petrol), &later(&gas), all()).unwrap());
    }

    #[test]
    fn advised_factors_keep_their_bounds_and_lead_the_right_way(seed in 0..10_000u64) {
        let (_, petrol, gas) = driven(seed);
        let found = compare(&petrol, &gas, all()).unwrap();
        let advised: Vec<(&Cell, f64)> = found.cells.iter().filter_map(|cell| Some((cell, cell.advised_factor?))).collect();
        prop_assert!(!advised.is_empty());
        for (cell, factor) in &advised {
            prop_assert!((0.9 - 1e-12..=1.1 + 1e-12).contains(factor), "{cell:?}");
            for (next, other) in &advised {
                let [rpm, load] = [(next.rpm_from - cell.rpm_from).abs() / 500.0, (next.load_from - cell.load_from).abs() / 10.0];
                prop_assert!((rpm + load - 1.0).abs() > 1e-9 || factor.max(*other) / factor.min(*other) <= 1.03 + 1e-12, "{cell:?} {next:?}");
            }
        }
    }
}

/// A row of which anything may be anything.
fn wild_row() -> impl Strategy<Value = Sample> {
    let edges =
        prop::sample::select(vec![f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e308, -1e308, 0.0, -0.0, 5e-324, -7.0]);
    let number =
        move |usual: std::ops::Range<f64>| prop_oneof![4 => usual, 1 => edges.clone(), 1 => prop::num::f64::ANY];
    let maybe = |usual| prop::option::weighted(0.9, number(usual));
    (
        (number(0.0..60.0), number(600.0..6_000.0), maybe(20.0..110.0), number(0.4..20.0), maybe(0.0..30.0)),
        prop::option::of(prop::sample::select(vec![Burned::Petrol, Burned::Gas])),
        (
            maybe(60.0..100.0),
            prop::option::of(any::<bool>()),
            maybe(-20.0..20.0),
            maybe(-20.0..20.0),
            maybe(80.0..150.0),
        ),
    )
        .prop_map(
            |(
                (time_s, rpm, manifold_kpa, petrol_ms, gas_ms),
                burned,
                (coolant_c, is_closed_loop, short, long, gas_kpa),
            )| Sample {
                time_s,
                rpm,
                manifold_kpa,
                petrol_ms,
                gas_ms,
                burned,
                coolant_c,
                is_closed_loop,
                short_trim_percent: short,
                long_trim_percent: long,
                gas_kpa,
            },
        )
}

proptest! {
    #[test]
    fn wild_rows_never_stop_it_and_never_become_an_answer_that_is_no_number(
        wild in prop::collection::vec(wild_row(), 0..200),
        bits in any::<u16>(),
        is_stated in any::<bool>(),
    ) {
        let has = Has::of(Quantity::ALL.into_iter().filter(|one| bits >> (*one as u16) & 1 == 1));
        // Among them a tame drive, so that there are cells at all.
        let tame = |burned| (0..400).map(move |n| warm(burned, f64::from(n) * 0.25, (1_700.0 + f64::from(n / 20 % 3) * 500.0, 55.0, 4.0)));
        let rows: Vec<Sample> = tame(Burned::Petrol).zip(wild.iter().cycle().copied().map(Some).chain([None]).cycle())
            .flat_map(|(tame, wild)| [Some(tame), wild]).flatten().collect();
        let gas: Vec<Sample> = tame(Burned::Gas).chain(wild).collect();
        let mut gatherer = fuelwright::calc::road::Gatherer::new(fuelwright::calc::road::Plan::default(), has);
        for (burned, rows) in [(Burned::Petrol, rows), (Burned::Gas, gas)] {
            gatherer.begin_log(is_stated.then_some(burned));
            for row in rows {
                gatherer.push(&row);
            }
        }
        let said = format!("{:?}", gatherer.finish());
        let words: Vec<&str> = said.split(|c: char| !c.is_ascii_alphanumeric()).collect();
        prop_assert!(!words.contains(&"NaN") && !words.contains(&"inf"), "{said}");
    }
}
