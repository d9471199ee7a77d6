//! When a row was taken, in seconds.
//!
//! A bare number is a number of the column's unit, whose factor the match says. A clock time (`12:34:56.789`, `34:56.7`
//! for minutes and seconds, with or without AM and PM) counts from midnight; a date before it is used when it begins with
//! the year (ISO 8601), with its zone. Any other date only stands before its clock time. A clock time that falls by more than half a day has
//! passed midnight.

const DAY_S: f64 = 86_400.0;

/// A time that is written with colons.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Moment {
    /// Seconds since midnight, or since some beginning.
    OfDay(f64),
    /// Seconds since the first of January 1970.
    Dated(f64),
}

/// Reads a time with colons.
pub(super) fn moment(cell: &str) -> Option<Moment> {
    const LONGEST: usize = 48;
    if cell.len() > LONGEST || !cell.is_ascii() || !cell.contains(':') {
        return None;
    }
    let (date, clock) = match cell.split_once(['T', ' ']) {
        Some((date, clock)) if !date.contains(':') => (Some(date), clock.trim_start()),
        _ => (None, cell),
    };
    let (clock, zone_s) = zoned(clock)?;
    let of_day_s = of_day(clock)?;
    match date {
        None => Some(Moment::OfDay(of_day_s)),
        Some(date) => match day_of(date)? {
            Day::Known(day) => Some(Moment::Dated(day as f64 * DAY_S + of_day_s - zone_s)),
            Day::Unsure => Some(Moment::OfDay(of_day_s)),
        },
    }
}

/// Parts a zone from a clock time: `Z`, `+02:00`, `-0530`.
fn zoned(clock: &str) -> Option<(&str, f64)> {
    if let Some(clock) = clock.strip_suffix(['Z', 'z']) {
        return Some((clock.trim_end(), 0.0));
    }
    let Some(at) = clock.rfind(['+', '-']) else { return Some((clock, 0.0)) };
    let (clock, zone) = clock.split_at(at);
    let digits: String = zone[1..].chars().filter(|c| *c != ':').collect();
    if digits.len() != 4 && digits.len() != 2 {
        return None;
    }
    let hours: f64 = whole(digits.get(..2)?)?;
    let minutes: f64 = digits.get(2..).filter(|rest| !rest.is_empty()).map_or(Some(0.0), whole)?;
    let seconds = hours * 3600.0 + minutes * 60.0;
    Some((clock.trim_end(), if zone.starts_with('-') { -seconds } else { seconds }))
}

fn whole(text: &str) -> Option<f64> {
    let is_digits = !text.is_empty() && text.len() <= 6 && text.bytes().all(|byte| byte.is_ascii_digit());
    if is_digits { text.parse().ok() } else { None }
}

fn of_day(clock: &str) -> Option<f64> {
    let (clock, half) = match clock.len().checked_sub(2).and_then(|at| clock.split_at_checked(at)) {
        Some((rest, end)) if end.eq_ignore_ascii_case("am") => (rest.trim_end(), Some(0.0)),
        Some((rest, end)) if end.eq_ignore_ascii_case("pm") => (rest.trim_end(), Some(12.0)),
        _ => (clock, None),
    };
    let mut parts = clock.split(':');
    let (first, second, third) = (parts.next()?, parts.next()?, parts.next());
    if parts.next().is_some() {
        return None;
    }
    let (hours, minutes, seconds) = match third {
        Some(third) => (whole(first)?, whole(second)?, seconds(third)?),
        None => (0.0, whole(first)?, seconds(second)?),
    };
    if seconds >= 61.0 || (third.is_some() && minutes >= 60.0) {
        return None;
    }
    let hours = match half {
        Some(half) if (1.0..=12.0).contains(&hours) => hours % 12.0 + half,
        Some(_) => return None,
        None => hours,
    };
    Some(hours * 3600.0 + minutes * 60.0 + seconds)
}

fn seconds(text: &str) -> Option<f64> {
    match text.split_once(['.', ',']) {
        None => whole(text),
        Some((seconds, fraction)) => {
            let is_digits = fraction.len() <= 12 && fraction.bytes().all(|byte| byte.is_ascii_digit());
            let text = is_digits.then(|| format!("0.{fraction}0"))?;
            Some(whole(seconds)? + text.parse::<f64>().ok()?)
        }
    }
}

enum Day {
    /// Days since the first of January 1970.
    Known(i64),
    /// Day and month could be either.
    Unsure,
}

fn day_of(date: &str) -> Option<Day> {
    let sign = date.chars().find(|c| matches!(c, '-' | '/' | '.'))?;
    let mut parts = date.split(sign);
    let (first, second, third) = (parts.next()?, parts.next()?, parts.next()?);
    let (one, two, three) = (whole(first)?, whole(second)?, whole(third)?);
    if parts.next().is_some() {
        return None;
    }
    if first.len() != 4 {
        return Some(Day::Unsure);
    }
    let is_date = (1.0..=12.0).contains(&two) && (1.0..=31.0).contains(&three);
    // Each part has four digits at most and is whole.
    #[expect(clippy::cast_possible_truncation, reason = "whole numbers of at most six digits")]
    is_date.then(|| Day::Known(days_from_civil(one as i64, two as i64, three as i64)))
}

/// Days from the first of January 1970 in the Gregorian calendar.
fn days_from_civil(year: i64, month: i64, day: i64) -> i64 {
    // The year begins in March, so that the day that comes and goes is its last.
    let years = if month <= 2 { year - 1 } else { year };
    let months = (month + 9) % 12;
    let leap_days = years.div_euclid(4) - years.div_euclid(100) + years.div_euclid(400);
    years * 365 + leap_days + (153 * months + 2) / 5 + day - 1 - 719_468
}

/// Clock times made to go on over midnight.
#[derive(Debug, Default)]
pub(super) struct Midnight {
    last_s: Option<f64>,
    days: f64,
}

impl Midnight {
    /// Seconds since the first midnight.
    pub(super) fn going_on(&mut self, of_day_s: f64) -> f64 {
        let fall = self.last_s.map_or(0.0, |last| last - of_day_s);
        if fall < -DAY_S / 2.0 && self.days > 0.0 {
            // A row of before midnight that was written after it.
            return (self.days - 1.0) * DAY_S + of_day_s;
        }
        if fall > DAY_S / 2.0 {
            self.days += 1.0;
        }
        self.last_s = Some(of_day_s);
        self.days * DAY_S + of_day_s
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use Moment::{Dated, OfDay};

    #[test]
    fn clock_times_count_from_midnight() {
        for (text, seconds) in [
            ("12:34:56.789", 45_296.789),
            ("12:34:56,789", 45_296.789),
            ("0:00:01", 1.0),
            ("34:56.7", 2096.7),
            ("75:00", 4500.0),
            ("01:02:03 PM", 46_923.0),
            ("12:00:00am", 0.0),
            ("29.11.2026 00:00:10", 10.0),
            ("11/29/2026 1:00:00 PM", 46_800.0),
            ("25:00:00", 90_000.0),
        ] {
            assert_eq!(moment(text), Some(OfDay(seconds)), "{text}");
        }
    }

    #[test]
    fn a_date_that_begins_with_the_year_counts() {
        // Known values: the Unix second 1 000 000 000 was 2001-09-09T01:46:40Z.
        for text in
            ["2001-09-09T01:46:40Z", "2001-09-09 01:46:40", "2001/09/09 03:46:40+02:00", "2001-09-08T20:16:40-0530"]
        {
            assert_eq!(moment(text), Some(Dated(1_000_000_000.0)), "{text}");
        }
        assert_eq!(moment("1970-01-01T00:00:00"), Some(Dated(0.0)));
        assert_eq!(moment("2024-03-01T00:00:00"), moment("2024-02-29T24:00:00"));
    }

    #[test]
    fn what_is_no_time_is_none() {
        for text in
            ["", ":", "1:2:3:4", "12:60:00", "12:00:61", "a:b", "2026-13-01 00:00:00", "1e3:00", "-1:00", "13:00:00 PM"]
        {
            assert_eq!(moment(text), None, "{text}");
        }
    }

    #[test]
    fn a_clock_goes_on_over_midnight_and_a_late_row_does_not_count_a_day() {
        let mut midnight = Midnight::default();
        for (of_day_s, going_on_s) in [(86_399.0, 86_399.0), (0.5, 86_400.5), (86_399.9, 86_399.9), (1.0, 86_401.0)] {
            assert!((midnight.going_on(of_day_s) - going_on_s).abs() < 1e-9, "{of_day_s}");
        }
    }
}
