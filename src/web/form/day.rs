//! A date or a date and time as people write it: 2026-11-25, 25.11.2026, 25 Nov 2026, 2026-11-25 10:42.
//!
//! With slashes nobody can tell day from month unless one is over twelve: then the date is questioned with both
//! readings. A year has four digits, always.

use jiff::tz::AmbiguousOffset;
use time::{Date, Month, OffsetDateTime, Time};

use super::Wrong;
use super::number::plain_char;
use crate::clock::Zone;

const MONTHS: [&str; 12] = [
    "january",
    "february",
    "march",
    "april",
    "may",
    "june",
    "july",
    "august",
    "september",
    "october",
    "november",
    "december",
];
/// Years a workshop writes down: cars, people, and duties far ahead.
const YEARS: std::ops::RangeInclusive<i32> = 1900..=2199;

/// Reads a date.
///
/// # Errors
/// The kind of [`Wrong`] that stands in the way.
pub fn date(text: &str) -> Result<Date, Wrong> {
    let plain: String = text.trim().chars().map(plain_char).collect();
    let wrong = || Wrong::NotADate { typed: text.trim().to_owned() };
    if plain.len() > 40 {
        return Err(wrong());
    }
    let lower = plain.to_lowercase();
    let words: Vec<&str> = lower.split(|c: char| !c.is_ascii_alphanumeric()).filter(|word| !word.is_empty()).collect();
    let [first, second, third] = words.as_slice() else { return Err(wrong()) };
    let sign = lower.chars().find(|c| !c.is_ascii_alphanumeric() && *c != ' ').unwrap_or(' ');
    let one_sign = lower.chars().all(|c| c.is_ascii_alphanumeric() || c == sign || c == ' ');

    if let Some(month) = named(second) {
        return build(text, year(third, &wrong)?, month, number(first).ok_or_else(wrong)?);
    }
    if let Some(month) = named(first) {
        return build(text, year(third, &wrong)?, month, number(second).ok_or_else(wrong)?);
    }
    if !one_sign || !matches!(sign, '-' | '.' | '/') {
        return Err(wrong());
    }
    let middle = number(second).ok_or_else(wrong)?;
    if first.len() == 4 {
        return build(text, year(first, &wrong)?, middle, number(third).ok_or_else(wrong)?);
    }
    let first = number(first).ok_or_else(wrong)?;
    let year = year(third, &wrong)?;
    if sign != '.' && first <= 12 && middle <= 12 && first != middle {
        let as_text = |day, month| build(text, year, month, day).map(|day| day.to_string());
        return Err(Wrong::AmbiguousDate {
            typed: text.trim().to_owned(),
            one: as_text(first, middle)?,
            other: as_text(middle, first)?,
        });
    }
    if sign != '.' && middle > 12 { build(text, year, first, middle) } else { build(text, year, middle, first) }
}

/// Reads a date and time of day in `zone` and gives the instant.
///
/// In the hour that comes twice when clocks go back, the earlier one is meant.
///
/// # Errors
/// The kind of [`Wrong`] that stands in the way; a time that the clocks skipped is one.
pub fn moment(text: &str, zone: &Zone) -> Result<OffsetDateTime, Wrong> {
    let typed = text.trim().to_owned();
    let plain: String = typed.chars().map(plain_char).collect();
    let wrong = || Wrong::NotATime { typed: typed.clone() };
    let cut = plain.rfind([' ', 'T', 't']).ok_or_else(wrong)?;
    let (day, clock) = plain.split_at(cut);
    let day = date(day.trim().trim_end_matches(',')).map_err(|wrong_date| match wrong_date {
        Wrong::NotADate { .. } => wrong(),
        other => other,
    })?;
    let clock = time_of_day(clock.get(1..).unwrap_or("")).ok_or_else(wrong)?;
    let local = civil(day, clock).ok_or_else(wrong)?;
    let instant = zone.tz().to_ambiguous_timestamp(local);
    if matches!(instant.offset(), AmbiguousOffset::Gap { .. }) {
        return Err(Wrong::NoSuchTime { typed });
    }
    let instant = instant.compatible().map_err(|_| wrong())?;
    OffsetDateTime::from_unix_timestamp(instant.as_second()).map_err(|_| wrong())
}

fn civil(day: Date, clock: Time) -> Option<jiff::civil::DateTime> {
    let part = |value: u8| i8::try_from(value).ok();
    jiff::civil::DateTime::new(
        i16::try_from(day.year()).ok()?,
        part(u8::from(day.month()))?,
        part(day.day())?,
        part(clock.hour())?,
        part(clock.minute())?,
        part(clock.second())?,
        0,
    )
    .ok()
}

fn time_of_day(text: &str) -> Option<Time> {
    let mut parts = text.split(':');
    let hour = number(parts.next()?)?;
    let minutes = parts.next()?;
    let minute = if minutes.len() == 2 { number(minutes)? } else { return None };
    let second = parts.next().map_or(Some(0), |seconds| number(seconds.split('.').next()?))?;
    let fits = |value: u16| u8::try_from(value).ok();
    if parts.next().is_some() {
        return None;
    }
    Time::from_hms(fits(hour)?, fits(minute)?, fits(second)?).ok()
}

fn number(text: &str) -> Option<u16> {
    if text.len() > 2 || !text.chars().all(|c| c.is_ascii_digit()) {
        return None;
    }
    text.parse().ok()
}

fn named(text: &str) -> Option<u16> {
    if text.len() < 3 {
        return None;
    }
    let place = MONTHS.iter().position(|month| month.starts_with(text))?;
    u16::try_from(place + 1).ok()
}

fn year(text: &str, wrong: &impl Fn() -> Wrong) -> Result<i32, Wrong> {
    if !text.chars().all(|c| c.is_ascii_digit()) {
        return Err(wrong());
    }
    match text.len() {
        1..=2 => Err(Wrong::TwoDigitYear),
        4 => text.parse().ok().filter(|year| YEARS.contains(year)).ok_or_else(wrong),
        _ => Err(wrong()),
    }
}

fn build(text: &str, year: i32, month: u16, day: u16) -> Result<Date, Wrong> {
    let built = || {
        let month = Month::try_from(u8::try_from(month).ok()?).ok()?;
        Date::from_calendar_date(year, month, u8::try_from(day).ok()?).ok()
    };
    built().ok_or_else(|| Wrong::NoSuchDay { typed: text.trim().to_owned() })
}

#[cfg(test)]
mod tests {
    use time::macros::{date, datetime};

    use super::*;

    #[test]
    fn the_usual_ways_to_write_a_date_are_read() {
        for text in [
            "2026-11-25",
            " 25.11.2026 ",
            "25. 11. 2026",
            "25/11/2026",
            "11/25/2026",
            "25-11-2026",
            "2026/11/25",
            "25 November 2026",
            "25 Nov 2026",
            "Nov 25, 2026",
            "25\u{a0}November\u{a0}2026",
            "25-Nov-2026",
        ] {
            assert_eq!(date(text), Ok(date!(2026 - 11 - 25)), "{text}");
        }
        assert_eq!(date("3.4.2026"), Ok(date!(2026 - 04 - 03)), "dots are day first");
        assert_eq!(date("4/4/2026"), Ok(date!(2026 - 04 - 04)), "the same either way");
    }

    #[test]
    fn the_twenty_ninth_of_february_exists_every_fourth_year() {
        assert_eq!(date("29.2.2028"), Ok(date!(2028 - 02 - 29)));
        assert_eq!(date("2000-02-29"), Ok(date!(2000 - 02 - 29)));
        for text in ["29.2.2026", "2100-02-29", "31.4.2026", "32.1.2026", "0.1.2026", "2026-13-01"] {
            assert_eq!(date(text), Err(Wrong::NoSuchDay { typed: text.into() }), "{text}");
        }
    }

    #[test]
    fn two_digits_are_no_year() {
        for text in ["25.11.26", "25/11/26", "1 Nov 26", "3.4.6"] {
            assert_eq!(date(text), Err(Wrong::TwoDigitYear), "{text}");
        }
    }

    #[test]
    fn slashes_that_can_be_read_two_ways_are_questioned() {
        let expected =
            Wrong::AmbiguousDate { typed: "3/4/2026".into(), one: "2026-04-03".into(), other: "2026-03-04".into() };
        assert_eq!(date("3/4/2026"), Err(expected));
    }

    #[test]
    fn what_is_no_date_is_said_to_be_none() {
        for text in [
            "",
            "soon",
            "2026",
            "2026-11",
            "25.11",
            "1.2.3.4",
            "25.11-2026",
            "0000-01-01",
            "9999-01-01",
            "20261125",
            "25 Foo 2026",
            "-5.1.2026x",
        ] {
            assert_eq!(date(text), Err(Wrong::NotADate { typed: text.into() }), "{text}");
        }
    }

    #[test]
    fn a_moment_is_local_and_kept_as_an_instant() {
        let zone = Zone::named("Europe/Berlin").expect("bundled");
        for text in ["2026-11-25T10:42", "2026-11-25 10:42", "25.11.2026, 10:42", "25 Nov 2026 10:42:00"] {
            assert_eq!(moment(text, &zone), Ok(datetime!(2026-11-25 09:42 UTC)), "{text}");
        }
        assert_eq!(moment("2026-07-01 10:42", &zone), Ok(datetime!(2026-07-01 08:42 UTC)));
    }

    // Central European Summer Time 2026 begins on 29 March and ends on 25 October (Directive 2000/84/EC).
    #[test]
    fn the_skipped_hour_is_refused_and_the_doubled_one_is_the_earlier() {
        let zone = Zone::named("Europe/Berlin").expect("bundled");
        let skipped = "2026-03-29T02:30";
        assert_eq!(moment(skipped, &zone), Err(Wrong::NoSuchTime { typed: skipped.into() }));
        assert_eq!(moment("2026-10-25T02:30", &zone), Ok(datetime!(2026-10-25 00:30 UTC)));
    }

    #[test]
    fn what_is_no_time_is_said_to_be_none() {
        for text in [
            "",
            "10:42",
            "2026-11-25",
            "2026-11-25T25:00",
            "2026-11-25T10:7",
            "2026-11-25T10:42:00:00",
            "2026-11-25Tten",
        ] {
            assert_eq!(moment(text, &Zone::utc()), Err(Wrong::NotATime { typed: text.into() }), "{text}");
        }
        assert_eq!(moment("29.2.2026 10:00", &Zone::utc()), Err(Wrong::NoSuchDay { typed: "29.2.2026".into() }));
    }
}
