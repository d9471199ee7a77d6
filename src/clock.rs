//! The only room that asks what time it is.
//!
//! Everything else is handed a [`Clock`], so that a test or the demonstration can say which day it is. Instants are UTC
//! and cut to microseconds, the finest that every database keeps; as text they sort as time, to the second.

use std::sync::{Arc, Mutex, PoisonError};

use time::{Date, Month, OffsetDateTime};

/// Says what time it is: the machine's time, or a time set by hand.
#[derive(Debug, Clone, Default)]
pub struct Clock {
    set: Option<Arc<Mutex<OffsetDateTime>>>,
}

/// A time zone name that nobody knows.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct UnknownZone(pub String);

impl std::fmt::Display for UnknownZone {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "no time zone is called {:?}; one like Europe/Lisbon is wanted", self.0)
    }
}

impl std::error::Error for UnknownZone {}

impl Clock {
    /// The machine's clock.
    pub fn system() -> Self {
        Self { set: None }
    }

    /// A clock that stands at `at` until it is set again. Copies of it move together.
    pub fn standing_at(at: OffsetDateTime) -> Self {
        Self { set: Some(Arc::new(Mutex::new(at))) }
    }

    /// Now, in UTC, cut to microseconds.
    #[expect(clippy::disallowed_methods, reason = "this is the one place")]
    pub fn now(&self) -> OffsetDateTime {
        let at = match &self.set {
            Some(set) => *set.lock().unwrap_or_else(PoisonError::into_inner),
            None => OffsetDateTime::now_utc(),
        };
        cut(at)
    }

    /// Moves a standing clock forward; a running one cannot be moved and stays right.
    pub fn advance(&self, by: time::Duration) {
        if let Some(set) = &self.set {
            let mut at = set.lock().unwrap_or_else(PoisonError::into_inner);
            *at += by;
        }
    }

    /// The day it is now in `zone`.
    pub fn today(&self, zone: &Zone) -> Date {
        zone.day_of(self.now())
    }
}

fn cut(at: OffsetDateTime) -> OffsetDateTime {
    let at = at.to_offset(time::UtcOffset::UTC);
    // A whole number of microseconds below one second is always in range.
    at.replace_microsecond(at.microsecond()).unwrap_or(at)
}

/// A time zone of the tz database, such as Europe/Lisbon.
#[derive(Debug, Clone, PartialEq)]
pub struct Zone(jiff::tz::TimeZone);

impl Zone {
    /// The zone of this name.
    pub fn named(name: &str) -> Result<Self, UnknownZone> {
        jiff::tz::TimeZone::get(name).map(Self).map_err(|_| UnknownZone(name.to_owned()))
    }

    /// Coordinated universal time.
    pub fn utc() -> Self {
        Self(jiff::tz::TimeZone::UTC)
    }

    /// The zone itself, for reading what was typed.
    pub fn tz(&self) -> &jiff::tz::TimeZone {
        &self.0
    }

    /// The calendar day of an instant in this zone.
    pub fn day_of(&self, at: OffsetDateTime) -> Date {
        self.local(at).date()
    }

    /// The same instant with this zone's offset of that moment.
    pub fn local(&self, at: OffsetDateTime) -> OffsetDateTime {
        let Ok(stamp) = jiff::Timestamp::from_second(at.unix_timestamp()) else { return at };
        let seconds = self.0.to_offset(stamp).seconds();
        time::UtcOffset::from_whole_seconds(seconds).map_or(at, |offset| at.to_offset(offset))
    }

    /// The instant at which a clock on the wall of this zone shows `day` and `hour:minute`. In the hour that a spring
    /// change leaves out it is the moment after the gap; in the hour that comes twice, the first of the two.
    pub fn instant(&self, day: Date, hour: u8, minute: u8) -> Option<OffsetDateTime> {
        let year = i16::try_from(day.year()).ok()?;
        let (hour, minute) = (i8::try_from(hour).ok()?, i8::try_from(minute).ok()?);
        let month = i8::try_from(u8::from(day.month())).ok()?;
        let wall = jiff::civil::DateTime::new(year, month, i8::try_from(day.day()).ok()?, hour, minute, 0, 0).ok()?;
        let stamp = self.0.to_ambiguous_timestamp(wall).compatible().ok()?;
        OffsetDateTime::from_unix_timestamp(stamp.as_second()).ok()
    }
}

/// A day far enough ahead to stand for "no end".
pub const NEVER: Date = match Date::from_calendar_date(9999, Month::December, 31) {
    Ok(day) => day,
    Err(_) => Date::MAX,
};

#[cfg(test)]
mod tests {
    use time::macros::{date, datetime};

    use super::*;

    #[test]
    fn a_day_begins_at_midnight_of_the_shop_not_of_greenwich() {
        let clock = Clock::standing_at(datetime!(2026-06-30 23:30 UTC));
        assert_eq!(clock.today(&Zone::utc()), date!(2026 - 06 - 30));
        assert_eq!(clock.today(&Zone::named("Europe/Berlin").unwrap()), date!(2026 - 07 - 01));
        assert_eq!(clock.today(&Zone::named("America/Santiago").unwrap()), date!(2026 - 06 - 30));
    }

    #[test]
    fn instants_are_cut_to_microseconds_and_utc() {
        let clock = Clock::standing_at(datetime!(2026-01-02 03:04:05.123_456_789 +2));
        assert_eq!(clock.now(), datetime!(2026-01-02 01:04:05.123_456 UTC));
        assert_eq!(clock.now().offset(), time::UtcOffset::UTC);
    }

    #[test]
    fn copies_of_a_standing_clock_move_together() {
        let clock = Clock::standing_at(datetime!(2026-01-01 00:00 UTC));
        let copy = clock.clone();
        clock.advance(time::Duration::hours(2));
        assert_eq!(copy.now(), datetime!(2026-01-01 02:00 UTC));
    }

    #[test]
    fn the_hour_left_out_in_spring_is_the_moment_after() {
        let zone = Zone::named("Europe/Berlin").unwrap();
        assert_eq!(zone.instant(date!(2026 - 03 - 29), 2, 30), Some(datetime!(2026-03-29 01:30 UTC)));
        assert_eq!(zone.instant(date!(2026 - 10 - 25), 2, 30), Some(datetime!(2026-10-25 00:30 UTC)));
    }

    #[test]
    fn an_unknown_zone_is_refused() {
        assert_eq!(Zone::named("Mars/Olympus"), Err(UnknownZone("Mars/Olympus".into())));
    }
}
