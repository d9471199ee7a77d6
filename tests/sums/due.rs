//! Due dates: the calendar's corners, forecasts from odometer readings, the first of the two.

use fuelwright::calc::due::{By, Due, Duty, NotDue, OdometerLine, Precision, Reading, due, months_later};
use proptest::prelude::*;
use time::macros::date;
use time::{Date, Duration};

use super::reference::close;

fn duty(from: Date, months: u32) -> Duty {
    Duty { from, months: Some(months), from_precision: Precision::Day, readings: vec![], km: None, from_km: None }
}

/// Readings `km_per_day` apart, every 30 days from `from`.
fn steady(from: Date, from_km: f64, km_per_day: f64, count: i32) -> Vec<Reading> {
    (0..count)
        .map(|n| Reading {
            date: from + Duration::days(i64::from(30 * n)),
            km: from_km + km_per_day * f64::from(30 * n),
        })
        .collect()
}

#[test]
fn months_end_where_the_calendar_lets_them() {
    for (from, months, precision, expected) in [
        (date!(2026 - 01 - 31), 1, Precision::Day, date!(2026 - 02 - 28)),
        (date!(2024 - 01 - 31), 1, Precision::Day, date!(2024 - 02 - 29)),
        (date!(2024 - 02 - 29), 12, Precision::Day, date!(2025 - 02 - 28)),
        (date!(2024 - 02 - 29), 48, Precision::Day, date!(2028 - 02 - 29)),
        (date!(2026 - 08 - 31), 1, Precision::Day, date!(2026 - 09 - 30)),
        (date!(2026 - 12 - 15), 1, Precision::Day, date!(2027 - 01 - 15)),
        (date!(2026 - 11 - 30), 3, Precision::Day, date!(2027 - 02 - 28)),
        (date!(2026 - 05 - 17), 0, Precision::Day, date!(2026 - 05 - 17)),
        (date!(2099 - 12 - 31), 2, Precision::Day, date!(2100 - 02 - 28)),
        (date!(2026 - 03 - 01), 48, Precision::Month, date!(2030 - 03 - 31)),
        (date!(2020 - 03 - 31), 47, Precision::Month, date!(2024 - 02 - 29)),
        (date!(2026 - 06 - 01), 0, Precision::Month, date!(2026 - 06 - 30)),
        (date!(2016 - 12 - 31), 120, Precision::Year, date!(2026 - 01 - 31)),
    ] {
        assert_eq!(months_later(from, months, precision), Ok(expected), "{from} and {months} months, {precision:?}");
    }
}

#[test]
fn the_end_of_the_calendar_is_an_error() {
    assert_eq!(months_later(date!(9999 - 12 - 01), 1, Precision::Day), Err(NotDue::BeyondCalendar));
    assert!(matches!(months_later(date!(2026 - 01 - 01), 1201, Precision::Day), Err(NotDue::Outside(_))));
}

/// P. K. Sen, J. Am. Stat. Assoc. 63 (1968) 1379, worked example: seven points, slope 4 (from memory).
#[test]
fn the_slope_of_sens_own_example_is_four() {
    let readings: Vec<Reading> = [(1, 9.0), (2, 15.0), (3, 19.0), (4, 20.0), (10, 45.0), (12, 55.0), (18, 78.0)]
        .map(|(day, km)| Reading { date: date!(2026 - 01 - 01) + Duration::days(day), km })
        .to_vec();
    close("slope", OdometerLine::through(&readings).unwrap().unwrap().km_per_day, 4.0, 1e-12);
}

#[test]
fn a_mistyped_reading_does_not_move_the_forecast() {
    let from = date!(2026 - 01 - 01);
    let mut readings = steady(from, 50_000.0, 40.0, 9);
    let reached = |readings: &[Reading]| OdometerLine::through(readings).unwrap().unwrap().reaches(65_000.0);
    assert_eq!(reached(&readings), Some(from + Duration::days(375)));
    readings[8].km *= 10.0;
    let moved = (reached(&readings).unwrap() - (from + Duration::days(375))).whole_days();
    assert!(moved.abs() <= 1, "{moved} days");
    readings[8].km = 512.0;
    let moved = (reached(&readings).unwrap() - (from + Duration::days(375))).whole_days();
    assert!(moved.abs() <= 1, "{moved} days");
}

#[test]
fn whichever_comes_first_is_due() {
    let from = date!(2026 - 01 - 01);
    let by_both = Duty {
        readings: steady(from, 10_000.0, 100.0, 4),
        km: Some(20_000.0),
        from_km: Some(10_000.0),
        ..duty(from, 12)
    };
    let busy = due(&by_both).unwrap();
    assert_eq!((busy.due_on, busy.by), (from + Duration::days(200), By::Distance));
    assert_eq!(busy.by_months_on, Some(date!(2027 - 01 - 01)));
    let idle = due(&Duty { readings: steady(from, 10_000.0, 10.0, 4), ..by_both.clone() }).unwrap();
    assert_eq!((idle.due_on, idle.by), (date!(2027 - 01 - 01), By::Date));
    let same_day = due(&Duty { readings: steady(from, 10_000.0, 20_000.0 / 365.0, 4), ..by_both }).unwrap();
    assert_eq!((same_day.due_on, same_day.by), (date!(2027 - 01 - 01), By::Date));
}

/// 49 CFR 571.304 S7.4(g): every 36 months or 36 000 miles, whichever comes first.
#[test]
fn thirty_six_months_or_thirty_six_thousand_miles() {
    let from = date!(2026 - 03 - 10);
    let inspected = Duty {
        readings: steady(from, 80_000.0, 80.0, 6),
        km: Some(57_936.0),
        from_km: Some(80_000.0),
        ..duty(from, 36)
    };
    let due = due(&inspected).unwrap();
    assert_eq!((due.due_on, due.by), (from + Duration::days(724), By::Distance));
}

#[test]
fn a_distance_already_driven_is_overdue_and_not_refused() {
    let from = date!(2026 - 01 - 01);
    let passed = Duty {
        readings: steady(from, 10_000.0, 100.0, 10),
        km: Some(5_000.0),
        from_km: Some(10_000.0),
        ..duty(from, 12)
    };
    assert_eq!(due(&passed).unwrap().due_on, from + Duration::days(50));
}

#[test]
fn readings_that_tell_nothing_leave_the_date() {
    let from = date!(2026 - 01 - 01);
    for readings in [
        vec![],
        vec![Reading { date: from, km: 10.0 }],
        vec![Reading { date: from, km: 10.0 }, Reading { date: from, km: 20.0 }],
        vec![Reading { date: from, km: 10.0 }, Reading { date: from + Duration::days(9), km: 10.0 }],
        vec![Reading { date: from, km: 20.0 }, Reading { date: from + Duration::days(9), km: 10.0 }],
    ] {
        let asked = Duty { readings, km: Some(1_000.0), from_km: Some(10.0), ..duty(from, 12) };
        let Due { due_on, by, by_distance_on, km_per_day, .. } = due(&asked).unwrap();
        assert_eq!((due_on, by, by_distance_on, km_per_day), (date!(2027 - 01 - 01), By::Date, None, None));
        assert_eq!(due(&Duty { months: None, ..asked }), Err(NotDue::NoForecast));
    }
}

#[test]
fn what_is_missing_or_absurd_is_named() {
    let from = date!(2026 - 01 - 01);
    assert_eq!(due(&Duty { months: None, ..duty(from, 1) }), Err(NotDue::NoInterval));
    let named = |duty: &Duty| match due(duty) {
        Err(NotDue::Outside(outside)) => outside.quantity,
        other => panic!("{other:?}"),
    };
    assert_eq!(named(&Duty { km: Some(1_000.0), ..duty(from, 1) }), "from_km");
    assert_eq!(named(&Duty { km: Some(f64::NAN), from_km: Some(0.0), ..duty(from, 1) }), "km");
    assert_eq!(
        named(&Duty { readings: vec![Reading { date: from, km: f64::INFINITY }], ..duty(from, 1) }),
        "readings.km"
    );
}

#[test]
fn a_duty_reads_from_json_as_people_write_dates() {
    let duty: Duty = serde_json::from_str(
        r#"{"from": "2026-01-31", "months": 1, "from_precision": "month", "readings": [{"date": "2026-01-31", "km": 12.5}]}"#,
    )
    .unwrap();
    let due = serde_json::to_value(due(&duty).unwrap()).unwrap();
    assert_eq!(due["due_on"], "2026-02-28");
    assert_eq!(due["by"], "date");
    assert!(serde_json::from_str::<Duty>(r#"{"from": "2026-01-31", "month": 1}"#).is_err());
}

proptest! {
    #[test]
    fn more_months_never_end_earlier(start in 0i64..20_000, months in 0u32..600, more in 0u32..600, month: bool) {
        let from = date!(1980 - 01 - 01) + Duration::days(start);
        let precision = if month { Precision::Month } else { Precision::Day };
        let early = months_later(from, months, precision).unwrap();
        prop_assert!(months_later(from, months + more, precision).unwrap() >= early);
        prop_assert!(early >= from);
        // The month reached is the month counted to, never the one after.
        let count = u32::from(u8::from(from.month())) - 1 + months;
        prop_assert_eq!(u32::from(u8::from(early.month())) - 1, count % 12);
    }

    #[test]
    fn a_longer_distance_never_falls_due_earlier(slope in 1.0..500.0f64, km in 1.0..50_000.0f64, more in 0.0..50_000.0f64) {
        let line = OdometerLine { anchor_on: date!(2026 - 01 - 01), anchor_km: 1_000.0, km_per_day: slope };
        prop_assert!(line.reaches(km + more).unwrap() >= line.reaches(km).unwrap());
    }
}
