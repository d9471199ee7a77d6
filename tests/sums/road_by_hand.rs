//! Road comparisons small enough to be worked out by hand: what counts as a visit, why rows are set aside, what a cell
//! comes to, what is refused and what is warned of.

use fuelwright::calc::road::{
    Banded, Burned, Cell, CellVerdict, Comparison, FuelKnown, Gatherer, Missing, NozzleWord, Plan, Quantity, RANGES,
    Refused, Sample, SetAside, Warning, Why,
};

use super::reference::close;
use super::road_written::{Written, all, compare, warm, without};

const POINT: (f64, f64, f64) = (2_250.0, 65.0, 6.0);

fn visited(burned: Burned, ms: f64, visits: u32) -> Vec<Sample> {
    Written::on(burned).visits((2_250.0, 65.0, ms), visits).rows.clone()
}

fn only(found: &Comparison) -> &Cell {
    assert_eq!(found.cells.len(), 1, "{:?}", found.cells);
    &found.cells[0]
}

fn at_rpm(found: &Comparison, rpm: f64) -> &Cell {
    found.cells.iter().find(|cell| (cell.rpm_from - rpm).abs() < 1e-9).unwrap()
}

fn set_aside(found: &Comparison, why: SetAside) -> u64 {
    found.set_aside.get(&why).copied().unwrap_or(0)
}

#[test]
fn six_visits_on_each_fuel_are_judged_and_the_numbers_are_those_of_the_formula() {
    let found = compare(&visited(Burned::Petrol, 6.0, 6), &visited(Burned::Gas, 6.48, 6), all()).unwrap();
    let cell = only(&found);
    assert_eq!((cell.rpm_from, cell.rpm_to, cell.load_from, cell.load_to), (2_000.0, 2_500.0, 60.0, 70.0));
    assert_eq!((cell.petrol_visits, cell.gas_visits, cell.verdict, cell.why), (6, 6, CellVerdict::Deviates, Why::Lean));
    // No scatter, so the resolution rules: 0.005 / sqrt(6) on each side.
    let reach = 2.0 * 0.005 * (2.0f64 / 6.0).sqrt();
    let d = 1.08f64.ln();
    close("deviation", cell.deviation_percent.unwrap(), 8.0, 1e-9);
    close("low", cell.low_percent.unwrap(), 100.0 * (d - reach).exp_m1(), 1e-9);
    close("high", cell.high_percent.unwrap(), 100.0 * (d + reach).exp_m1(), 1e-9);
    // The whole of the deviation but for the damping.
    close("factor", cell.advised_factor.unwrap(), 1.08f64.powf(0.85), 1e-9);
    assert_eq!((found.rows.petrol, found.rows.gas, found.rows.broken), (54, 54, 0));
    assert!(found.set_aside.is_empty(), "{:?}", found.set_aside);
}

#[test]
fn a_deviation_inside_five_per_cent_is_good_and_one_across_a_limit_is_undecided() {
    let verdict = |gas_ms: f64| {
        only(&compare(&visited(Burned::Petrol, 6.0, 6), &visited(Burned::Gas, gas_ms, 6), all()).unwrap()).verdict
    };
    assert_eq!(verdict(6.0), CellVerdict::Good);
    assert_eq!(verdict(6.0 * 0.03f64.exp()), CellVerdict::Good);
    assert_eq!(verdict(6.0 * (-0.044f64).exp()), CellVerdict::Deviates);
    // 0.0462 reaches 0.0520, over the good share, but 0.0404 is over the other: deviates; scatter makes it undecided.
    let mut gas = Written::on(Burned::Gas);
    for (visit, share) in [0.0, 0.02, 0.04, 0.05, 0.07, 0.08].into_iter().enumerate() {
        assert!(visit < 6);
        gas.visits((2_250.0, 65.0, 6.0 * f64::exp(share)), 1);
    }
    let found = compare(&visited(Burned::Petrol, 6.0, 6), &gas.rows, all()).unwrap();
    let cell = only(&found);
    assert_eq!((cell.verdict, cell.why), (CellVerdict::Undecided, Why::Across));
    // Median 0.045, MAD of 0.045 0.025 0.005 0.005 0.025 0.035 is 0.025; widened by 1 + 2/6 for six visits.
    let gas_u = 1.2533 * 1.482_602 * 0.025 * (1.0 + 2.0 / 6.0) / 6f64.sqrt();
    let reach = 2.0 * gas_u.hypot(0.005 / 6f64.sqrt());
    close("low", (cell.low_percent.unwrap() / 100.0).ln_1p(), 0.045 - reach, 1e-9);
    close("high", (cell.high_percent.unwrap() / 100.0).ln_1p(), 0.045 + reach, 1e-9);
}

#[test]
fn a_cell_with_five_visits_says_how_many_more_on_which_fuel() {
    let found = compare(&visited(Burned::Petrol, 6.0, 5), &visited(Burned::Gas, 6.0, 8), all()).unwrap();
    let cell = only(&found);
    assert_eq!((cell.verdict, cell.why), (CellVerdict::NotEnough, Why::Drive(Missing { petrol: 1, gas: 0 })));
    assert_eq!((cell.deviation_percent, cell.advised_factor), (None, None));
    close("what is known is shown", cell.petrol_ms.unwrap(), 6.0, 1e-9);
}

#[test]
fn ten_minutes_in_one_cell_are_one_visit_and_less_than_half_a_second_is_none() {
    let steady = |burned| Written::on(burned).hold(POINT, 2_400).rows.clone();
    let found = compare(&steady(Burned::Petrol), &steady(Burned::Gas), all()).unwrap();
    assert_eq!((only(&found).petrol_visits, only(&found).gas_visits), (1, 1));
    // Three rows span half a second, two do not.
    let mut petrol = Written::on(Burned::Petrol);
    petrol.hold(POINT, 3).time_s += 5.0;
    petrol.hold(POINT, 2);
    let found = compare(&petrol.rows, &steady(Burned::Gas), all()).unwrap();
    assert_eq!((only(&found).petrol_visits, set_aside(&found, SetAside::ShortVisit)), (1, 2));
}

#[test]
fn a_row_that_is_wild_or_lacks_a_value_does_not_end_a_visit_but_a_change_of_the_engine_does() {
    let with = |change: fn(&mut Sample)| {
        let mut petrol = Written::on(Burned::Petrol);
        petrol.hold(POINT, 8).hold_with(POINT, 1, change).hold(POINT, 8);
        let found = compare(&petrol.rows, &visited(Burned::Gas, 6.0, 1), all()).unwrap();
        only(&found).petrol_visits
    };
    assert_eq!(with(|row| row.rpm = 16_383.75), 1);
    assert_eq!(with(|row| row.manifold_kpa = None), 1);
    assert_eq!(with(|row| row.petrol_ms = 0.0), 2);
    assert_eq!(with(|row| row.is_closed_loop = Some(false)), 2);
}

#[test]
fn a_step_over_an_edge_by_less_than_a_twentieth_does_not_leave_the_cell_but_a_new_point_does() {
    let mut petrol = Written::on(Burned::Petrol);
    for n in 0..40 {
        petrol.hold((2_240.0, if n % 2 == 0 { 69.8 } else { 70.2 }, 6.0), 1);
    }
    let found = compare(&petrol.rows, &visited(Burned::Gas, 6.0, 1), all()).unwrap();
    assert_eq!((only(&found).petrol_visits, set_aside(&found, SetAside::ShortVisit)), (1, 0));
    let mut petrol = Written::on(Burned::Petrol);
    petrol.hold((2_250.0, 65.0, 6.0), 9).time_s += 2.0;
    petrol.hold((2_250.0, 70.0, 6.5), 9);
    let found = compare(&petrol.rows, &visited(Burned::Gas, 6.0, 1), all()).unwrap();
    assert_eq!(found.cells.iter().map(|cell| cell.load_from).collect::<Vec<_>>(), [60.0, 70.0]);
}

#[test]
fn every_reason_to_set_a_row_aside_is_counted_once_and_the_first_one_that_holds() {
    let mut gas = Written::on(Burned::Gas);
    gas.hold_with(POINT, 3, |row| row.coolant_c = Some(40.0));
    gas.hold(POINT, 9);
    gas.hold_with(POINT, 4, |row| row.petrol_ms = 0.0);
    gas.hold_with(POINT, 5, |row| row.is_closed_loop = Some(false));
    gas.hold_with(POINT, 2, |row| row.manifold_kpa = None);
    gas.hold_with(POINT, 1, |row| row.petrol_ms = f64::NAN);
    gas.time_s -= 1.0;
    gas.hold(POINT, 1);
    gas.time_s += 1.0;
    // On petrol for a while, then ten seconds until it counts again: 40 rows a quarter of a second apart.
    gas.hold_with(POINT, 6, |row| row.burned = Some(Burned::Petrol)).hold(POINT, 49);
    // 30 kPa within half a second, held for one look back.
    gas.hold((2_250.0, 95.0, 9.0), 10);
    let found = compare(&visited(Burned::Petrol, 6.0, 6), &gas.rows, all()).unwrap();
    let counts: Vec<(SetAside, u64)> = found.set_aside.iter().map(|(why, n)| (*why, *n)).collect();
    assert_eq!(
        counts,
        [
            (SetAside::Cold, 3),
            (SetAside::Changeover, 40),
            (SetAside::FuelCut, 4),
            (SetAside::Transient, 2),
            (SetAside::OpenLoop, 5),
            (SetAside::OutOfRange, 1),
            (SetAside::Gap, 2),
            (SetAside::TimeBack, 1),
            (SetAside::OtherFuel, 6),
        ]
    );
    assert_eq!(found.rows.petrol, 54 + 6);
    assert_eq!(found.rows.gas + found.rows.petrol, (gas.rows.len() + 54) as u64);
}

#[test]
fn gaps_and_broken_lines_of_the_reader_are_counted_and_many_are_said() {
    let mut gatherer = Gatherer::new(Plan::default(), all());
    for burned in [Burned::Petrol, Burned::Gas] {
        gatherer.begin_log(Some(burned));
        for row in visited(burned, 6.0, 6) {
            gatherer.push(&row);
            gatherer.gap();
        }
        (0..10).for_each(|_| gatherer.broken());
    }
    let found = gatherer.finish().unwrap();
    assert_eq!((set_aside(&found, SetAside::Gap), found.rows.broken, found.rows.petrol), (108, 20, 108));
    assert!(
        found
            .warnings
            .iter()
            .any(|one| matches!(one, Warning::ManyBroken { percent } if (percent - 100.0 * 20.0 / 236.0).abs() < 1e-9))
    );
    assert_eq!(only(&found).verdict, CellVerdict::Good);
}

#[test]
fn one_log_with_a_fuel_column_is_as_good_as_two() {
    let mut one = Written::on(Burned::Petrol);
    one.visits(POINT, 6).time_s += 1.0;
    one.burned = Burned::Gas;
    // Eleven seconds to settle, in another cell.
    one.hold((1_750.0, 65.0, 6.0), 44).visits((2_250.0, 65.0, 6.48), 6);
    let mut gatherer = Gatherer::new(Plan::default(), all());
    gatherer.begin_log(None);
    for row in &one.rows {
        gatherer.push(row);
    }
    let found = gatherer.finish().unwrap();
    assert_eq!((found.fuel_known, set_aside(&found, SetAside::Changeover)), (FuelKnown::Logged, 40));
    let cell = at_rpm(&found, 2_000.0);
    assert_eq!((cell.verdict, cell.petrol_visits, cell.gas_visits), (CellVerdict::Deviates, 6, 6));
    assert!(!found.warnings.contains(&Warning::FuelStated));
}

#[test]
fn a_fuel_that_no_column_says_is_stated_and_said_to_be() {
    let silent = |burned, ms| {
        let mut rows = visited(burned, ms, 6);
        for row in &mut rows {
            row.burned = None;
        }
        rows
    };
    let found = compare(&silent(Burned::Petrol, 6.0), &silent(Burned::Gas, 6.0), without(&[Quantity::Fuel])).unwrap();
    assert_eq!(found.fuel_known, FuelKnown::Stated);
    assert!(found.warnings.contains(&Warning::FuelStated));
}

#[test]
fn both_logs_on_one_fuel_are_refused_where_a_column_shows_it() {
    let refused =
        |petrol: Burned, gas: Burned| compare(&visited(petrol, 6.0, 6), &visited(gas, 6.0, 6), all()).unwrap_err();
    assert_eq!(refused(Burned::Petrol, Burned::Petrol), Refused::OneFuel { burned: Burned::Petrol });
    assert_eq!(refused(Burned::Gas, Burned::Gas), Refused::OneFuel { burned: Burned::Gas });
    let mut gatherer = Gatherer::new(Plan::default(), all());
    gatherer.begin_log(None);
    for row in visited(Burned::Gas, 6.0, 6) {
        gatherer.push(&row);
    }
    let refused = gatherer.finish().unwrap_err();
    assert_eq!(
        (refused.key(), refused.to_string()),
        ("one-fuel", "both sides were driven on gas, says the fuel column".into())
    );
}

#[test]
fn logs_without_a_usable_row_are_refused_with_what_became_of_them() {
    let cold = |burned| Written::on(burned).hold_with(POINT, 20, |row| row.coolant_c = Some(30.0)).rows.clone();
    let refused = compare(&cold(Burned::Petrol), &cold(Burned::Gas), all()).unwrap_err();
    assert_eq!(refused, Refused::NothingUsable { set_aside: [(SetAside::Cold, 40)].into() });
    assert_eq!(refused.to_string(), "no usable row; set aside: cold 40");
    assert_eq!(compare(&[], &[], all()).unwrap_err(), Refused::NothingUsable { set_aside: [].into() });
    assert!(compare(&visited(Burned::Petrol, 6.0, 6), &[], all()).is_err());
    // Cold on gas alone: an answer, with what to drive.
    let found = compare(&visited(Burned::Petrol, 6.0, 6), &cold(Burned::Gas), all()).unwrap();
    assert_eq!(only(&found).why, Why::Drive(Missing { petrol: 0, gas: 6 }));
}

#[test]
fn a_column_in_another_unit_is_refused_by_its_range() {
    let mut seen = Vec::new();
    let mut refused = |what: Quantity, change: &dyn Fn(&mut Sample)| {
        let mut gas = visited(Burned::Gas, 6.0, 6);
        gas.iter_mut().for_each(change);
        let found = compare(&visited(Burned::Petrol, 6.0, 6), &gas, all()).unwrap_err();
        assert!(
            matches!(found, Refused::OutOfRange { quantity, share } if quantity == what && share > 0.9),
            "{found:?}"
        );
        seen.push(what);
    };
    refused(Quantity::ManifoldKpa, &|row| row.manifold_kpa = Some(0.65));
    refused(Quantity::ManifoldKpa, &|row| row.manifold_kpa = Some(650.0));
    refused(Quantity::PetrolMs, &|row| row.petrol_ms = 6_000.0);
    refused(Quantity::PetrolMs, &|row| row.petrol_ms = 0.006);
    refused(Quantity::Rpm, &|row| row.rpm = 62.0);
    refused(Quantity::Rpm, &|row| row.rpm = 62_000.0);
    refused(Quantity::CoolantC, &|row| row.coolant_c = Some(361.0));
    refused(Quantity::LongTrim, &|row| row.long_trim_percent = Some(128.0));
    refused(Quantity::ShortTrim, &|row| row.short_trim_percent = Some(f64::INFINITY));
    refused(Quantity::GasMs, &|row| row.gas_ms = Some(7_200.0));
    refused(Quantity::GasKpa, &|row| row.gas_kpa = Some(120_000.0));
    let ranged = RANGES.iter().filter(|range| range.quantity != Quantity::TimeS);
    assert!(ranged.clone().all(|range| seen.contains(&range.quantity) && range.least < range.most));
}

/// Many points of one speed and load each, the time as `ms` says.
fn swept(burned: Burned, point: impl Fn(f64) -> (f64, f64, f64)) -> Vec<Sample> {
    (0..900u32).map(|n| warm(burned, 0.25 * f64::from(n), point(f64::from(n)))).collect()
}

#[test]
fn columns_whose_ranks_no_engine_has_are_refused_and_a_real_drive_is_not() {
    // Slow swings of speed and load that have nothing to do with each other.
    let rpm = |n: f64| 2_200.0 + 700.0 * (n / 37.0).sin();
    let kpa = |n: f64| 60.0 + 20.0 * (n / 53.0).cos();
    let real = swept(Burned::Petrol, |n| (rpm(n), kpa(n), 0.1 * kpa(n)));
    let refused = |point: &dyn Fn(f64) -> (f64, f64, f64)| compare(&real, &swept(Burned::Gas, point), all());
    assert!(refused(&|n| (rpm(n), kpa(n), 0.1 * kpa(n))).is_ok());
    let is = |found: Result<Comparison, Refused>, of: Quantity, to: Quantity| {
        assert!(
            matches!(found, Err(Refused::RankImplausible { quantity, against, .. }) if (quantity, against) == (of, to)),
            "{found:?}"
        );
    };
    // The time of a turn instead of the injection; the same column twice; a vacuum; a counter.
    is(refused(&|n| (rpm(n), kpa(n), 20_000.0 / rpm(n))), Quantity::PetrolMs, Quantity::Rpm);
    is(refused(&|n| (rpm(n), kpa(n), rpm(n) / 400.0)), Quantity::PetrolMs, Quantity::Rpm);
    is(refused(&|n| (rpm(n), 101.0 - kpa(n), 0.1 * kpa(n))), Quantity::PetrolMs, Quantity::ManifoldKpa);
    is(refused(&|n| (1_000.0 + n, kpa(n), 0.1 * kpa(n))), Quantity::Rpm, Quantity::TimeS);
    is(refused(&|n| (rpm(n), kpa(n), 20.0 - 0.01 * n)), Quantity::PetrolMs, Quantity::TimeS);
}

#[test]
fn a_clock_that_starts_again_costs_one_row() {
    let mut petrol = visited(Burned::Petrol, 6.0, 3);
    petrol.extend(visited(Burned::Petrol, 6.0, 3));
    let found = compare(&petrol, &visited(Burned::Gas, 6.0, 6), all()).unwrap();
    assert_eq!((set_aside(&found, SetAside::TimeBack), only(&found).petrol_visits), (1, 6));
}

#[test]
fn open_loop_alone_is_no_feedback_whatever_the_times_say() {
    let blind = |burned| {
        let mut rows = visited(burned, 6.0, 12);
        for row in &mut rows {
            row.is_closed_loop = Some(false);
        }
        rows.extend(Written::on(burned).visits((1_250.0, 35.0, 3.0), 6).rows.clone());
        rows
    };
    let found = compare(&blind(Burned::Petrol), &blind(Burned::Gas), all()).unwrap();
    let of = |rpm: f64| at_rpm(&found, rpm);
    assert_eq!(
        (of(2_000.0).verdict, of(2_000.0).why, of(2_000.0).advised_factor),
        (CellVerdict::NoFeedback, Why::OpenLoop, None)
    );
    assert_eq!(of(1_000.0).verdict, CellVerdict::Good);
    assert_eq!(set_aside(&found, SetAside::OpenLoop), 2 * 12 * 9);
}

#[test]
fn lean_at_high_load_and_below_what_no_sensor_sees_is_warned_of() {
    let drive = |burned, factor: f64, is_blind: bool| {
        let mut rows = Written::on(burned);
        rows.visits((2_250.0, 65.0, 6.0 * factor), 6);
        let mut rows = rows.rows;
        let mut above = Written::on(burned).visits((2_250.0, 75.0, 7.5 * factor), 6).rows.clone();
        for row in &mut above {
            row.time_s += 100.0;
            row.is_closed_loop = Some(!is_blind);
        }
        rows.extend(above);
        rows
    };
    let warned = |factor: f64, is_blind: bool| {
        let found =
            compare(&drive(Burned::Petrol, 1.0, is_blind), &drive(Burned::Gas, factor, is_blind), all()).unwrap();
        let lean = found.warnings.iter().find_map(|one| match one {
            Warning::LeanAtLoad { percent } => Some(percent.round()),
            _ => None,
        });
        (lean, found.warnings.contains(&Warning::LoadUnseen))
    };
    assert_eq!(warned(1.07, false), (Some(7.0), false));
    assert_eq!(warned(1.07, true), (Some(7.0), true));
    assert_eq!(warned(1.0, true), (None, true));
    assert_eq!(warned(0.93, false), (None, false));
}

#[test]
fn without_manifold_pressure_and_trims_nothing_is_judged_and_the_answer_says_why() {
    let has = without(&[Quantity::ManifoldKpa, Quantity::ShortTrim, Quantity::LongTrim]);
    let found = compare(&visited(Burned::Petrol, 6.1, 6), &visited(Burned::Gas, 6.6, 6), has).unwrap();
    let cell = only(&found);
    assert_eq!((found.banded, cell.load_from, cell.load_to), (Banded::InjectionTime, 6.0, 7.5));
    assert_eq!((cell.verdict, cell.why, cell.deviation_percent), (CellVerdict::Undecided, Why::LoadUnknown, None));
    assert!(found.warnings.contains(&Warning::LoadUnknown));
}

#[test]
fn trims_are_totals_by_regime_as_the_example_bytes_of_sae_j1979_give_them() {
    // percent = (A - 128) 100 / 128: gas 136 and 133, petrol 129 and 130.
    let percent = |byte: f64| (byte - 128.0) * 100.0 / 128.0;
    let drive = |burned, short: f64, long: f64| {
        let mut rows = Written::on(burned);
        rows.visits((800.0, 32.0, 2.5), 6).visits((2_500.0, 30.0, 2.6), 6).visits((2_250.0, 55.0, 5.0), 6);
        let mut rows = rows.rows;
        for row in &mut rows {
            (row.short_trim_percent, row.long_trim_percent) = (Some(percent(short)), Some(percent(long)));
        }
        rows
    };
    let found = compare(&drive(Burned::Petrol, 129.0, 130.0), &drive(Burned::Gas, 136.0, 133.0), all()).unwrap();
    let regimes: Vec<&str> = found.trims.iter().map(|point| point.regime.as_str()).collect();
    assert_eq!(regimes, ["idle", "raised-idle", "cruise"]);
    for point in &found.trims {
        close("petrol", point.petrol_percent.unwrap(), 2.4, 0.05);
        close("gas", point.gas_percent.unwrap(), 10.4, 0.05);
        close("difference", point.difference_percent.unwrap(), 7.9, 0.05);
    }
    let found = compare(
        &drive(Burned::Petrol, 129.0, 130.0),
        &drive(Burned::Gas, 136.0, 133.0),
        without(&[Quantity::LongTrim]),
    )
    .unwrap();
    assert!(found.warnings.contains(&Warning::OneTrim));
}

#[test]
fn the_word_on_the_nozzle_follows_high_load_idle_and_the_open_time() {
    let drive = |burned, high: f64, idle: f64, gas_ms: f64| {
        let mut rows = Written::on(burned);
        rows.visits((3_250.0, 85.0, 9.0 * high), 6)
            .visits((3_750.0, 85.0, 9.0 * high), 6)
            .visits((800.0, 32.0, 2.5 * idle), 6);
        let mut rows = rows.rows;
        for row in &mut rows {
            row.gas_ms = row.gas_ms.map(|_| gas_ms);
        }
        rows
    };
    let word = |high: f64, idle: f64, gas_ms: f64| {
        compare(&drive(Burned::Petrol, 1.0, 1.0, 1.0), &drive(Burned::Gas, high, idle, gas_ms), all()).unwrap().nozzle
    };
    assert_eq!(word(1.02, 1.02, 12.0), NozzleWord::Serves);
    assert!(
        matches!(word(1.13, 1.0, 12.0), NozzleWord::TooSmall { lean_percent, .. } if (lean_percent - 13.0).abs() < 1e-6)
    );
    // 30 ms at 3 750/min of 32 ms between two injections.
    assert!(
        matches!(word(1.02, 1.0, 30.0), NozzleWord::TooSmall { duty_percent: Some(duty), .. } if (duty - 93.0).abs() < 1e-9)
    );
    assert!(
        matches!(word(1.0, 0.78, 12.0), NozzleWord::TooLarge { rich_percent } if (rich_percent - 22.0).abs() < 1e-6)
    );
    assert_eq!(
        compare(&visited(Burned::Petrol, 6.0, 6), &visited(Burned::Gas, 6.0, 6), all()).unwrap().nozzle,
        NozzleWord::NotDriven
    );
}

#[test]
fn a_strip_keeps_its_bound_and_shows_where_rows_were_set_aside() {
    let mut petrol = Written::on(Burned::Petrol);
    petrol.hold_with(POINT, 1_984, |row| row.coolant_c = Some(30.0)).hold(POINT, 6_000);
    let found = compare(&petrol.rows, &visited(Burned::Gas, 6.0, 6), all()).unwrap();
    let strip = &found.strips[0];
    assert_eq!((found.strips.len(), strip.burned), (2, Some(Burned::Petrol)));
    assert!((240..=480).contains(&strip.points.len()), "{}", strip.points.len());
    // The first 496 s of 2 000 were cold.
    for point in &strip.points {
        assert_eq!(point.set_aside, (point.time_s < 496.0).then_some(SetAside::Cold), "{point:?}");
        assert_eq!((point.rpm, point.load, point.petrol_ms, point.burned), (2_250.0, 65.0, 6.0, Some(Burned::Petrol)));
    }
}

#[test]
fn what_lacks_is_said() {
    let found = compare(
        &visited(Burned::Petrol, 3.0, 6),
        &visited(Burned::Gas, 3.0, 6),
        without(&[Quantity::CoolantC, Quantity::ClosedLoop, Quantity::ManifoldKpa]),
    )
    .unwrap();
    for warning in [Warning::NoCoolant, Warning::NoClosedLoop, Warning::NoManifold, Warning::ShortTimes] {
        assert!(found.warnings.contains(&warning), "{warning:?} of {:?}", found.warnings);
    }
}
