//! A due date laid out step by step: months counted, and the day the odometer reaches its mark.

use time::Month;

use super::{Due, Duty, OdometerLine, Precision};
use crate::calc::{Source, Step};

/// The steps to both dates. Months are counted from the year 0, so that a calculator can carry them into years.
#[must_use]
pub fn steps(duty: &Duty, due: &Due) -> Vec<Step> {
    let mut all = Vec::new();
    if let (Some(months), Some(date)) = (duty.months, due.by_months_on) {
        let from_month = match duty.from_precision {
            Precision::Year => Month::January,
            Precision::Day | Precision::Month => duty.from.month(),
        };
        let (year, month) = (f64::from(duty.from.year()), f64::from(u8::from(from_month)));
        let count = 12.0 * year + month - 1.0 + f64::from(months);
        let due_year = f64::from(date.year());
        let due_month = f64::from(u8::from(date.month()));
        let words = ("N = 12 Y + M - 1 + n", "12 · {} + {} - 1 + {}");
        all.extend([
            Step::new("due-months", words, &[year, month, f64::from(months)], (count, ""), None),
            Step::new(
                "due-year",
                ("Y = (N - (M - 1)) / 12", "({} - ({} - 1)) / 12"),
                &[count, due_month],
                (due_year, ""),
                None,
            ),
            Step::new("due-month", ("M = N - 12 Y + 1", "{} - 12 · {} + 1"), &[count, due_year], (due_month, ""), None),
        ]);
    }
    if let (Some(km), Some(from_km)) = (duty.km, duty.from_km) {
        let mark = from_km + km;
        all.push(Step::new("due-mark", ("K = K_0 + k", "{} + {}"), &[from_km, km], (mark, "km"), None));
        if let Ok(Some(line)) = OdometerLine::through(&duty.readings) {
            all.extend(distance(duty, line, mark));
        }
    }
    all
}

fn distance(duty: &Duty, line: OdometerLine, mark: f64) -> [Step; 2] {
    let OdometerLine { anchor_on, anchor_km, km_per_day } = line;
    let slope = if let [one, two] = duty.readings.as_slice() {
        let (early, late) = if one.date <= two.date { (one, two) } else { (two, one) };
        let days = (late.date - early.date).whole_days() as f64;
        let words = ("v = (K_2 - K_1) / (d_2 - d_1)", "({} - {}) / {}");
        Step::new("due-km-per-day", words, &[late.km, early.km, days], (km_per_day, "km/d"), None)
    } else {
        let words = ("median v of all pairs", "n = {} readings");
        let readings = duty.readings.len() as f64;
        Step::new("due-km-per-day", words, &[readings], (km_per_day, "km/d"), Source::Theil1950)
    };
    debug_assert!(duty.readings.iter().all(|reading| reading.date <= anchor_on));
    let days = (mark - anchor_km) / km_per_day;
    let words = ("d = (K - K_a) / v", "({} - {}) / {}");
    let days = Step::new("due-days", words, &[mark, anchor_km, km_per_day], (days, "d"), None);
    [slope.with_result_of(7), days.with_numbers_of(9)]
}
