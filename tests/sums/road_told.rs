//! What a road comparison tells beside its cells: open loop, lean at high load, trims, the nozzle, the strip, what lacks.

use fuelwright::calc::road::{Banded, Burned, CellVerdict, NozzleWord, Quantity, SetAside, Warning, Why};

use super::reference::close;
use super::road_written::{POINT, Written, all, at_rpm, compare, only, set_aside, visited, without};

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
