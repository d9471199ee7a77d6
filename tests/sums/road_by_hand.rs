//! Road comparisons small enough to be worked out by hand: what counts as a visit, why rows are set aside, what a cell
//! comes to.

use fuelwright::calc::road::{
    Burned, CellVerdict, FuelKnown, Gatherer, Missing, Plan, Quantity, Sample, SetAside, Warning, Why,
};

use super::reference::close;
use super::road_written::{POINT, Written, all, at_rpm, compare, only, set_aside, visited, without};

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
fn a_clock_that_starts_again_costs_one_row() {
    let mut petrol = visited(Burned::Petrol, 6.0, 3);
    petrol.extend(visited(Burned::Petrol, 6.0, 3));
    let found = compare(&petrol, &visited(Burned::Gas, 6.0, 6), all()).unwrap();
    assert_eq!((set_aside(&found, SetAside::TimeBack), only(&found).petrol_visits), (1, 6));
}
