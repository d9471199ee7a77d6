//! Logs that are not compared: one fuel on both sides, no usable row, columns that are not what they are called.

use fuelwright::calc::road::{
    Burned, Comparison, Gatherer, Missing, Plan, Quantity, RANGES, Refused, Sample, SetAside, Why,
};

use super::road_written::{POINT, Written, all, compare, only, visited, warm};

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
