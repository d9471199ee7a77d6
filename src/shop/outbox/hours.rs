//! When reminders may go out, and how many at once are too many to go unseen.

use time::{Date, OffsetDateTime, Weekday};

use crate::clock::Zone;

/// Days over which the usual number of reminders is counted.
pub(super) const USUAL_OVER_DAYS: i64 = 28;
/// A run up to this size never waits: a small shop's usual day is no measure.
const NEVER_MANY: i64 = 20;
/// Reminders go out from this hour of the shop's day, Monday to Friday,
const OPENS: u8 = 9;
/// and no longer from this one.
const CLOSES: u8 = 17;

/// Whether reminders may go out at this moment.
pub fn is_working_time(zone: &Zone, at: OffsetDateTime) -> bool {
    let local = zone.local(at);
    is_working_day(local.date()) && (OPENS..CLOSES).contains(&local.hour())
}

fn is_working_day(day: Date) -> bool {
    !matches!(day.weekday(), Weekday::Saturday | Weekday::Sunday)
}

/// The first moment from `at` on at which reminders may go out.
pub fn working_time_from(zone: &Zone, at: OffsetDateTime) -> OffsetDateTime {
    if is_working_time(zone, at) {
        return at;
    }
    let mut day = zone.day_of(at);
    for _ in 0..8 {
        if is_working_day(day)
            && let Some(opens) = zone.instant(day, OPENS, 0)
            && opens >= at
        {
            return opens;
        }
        let Some(next) = day.next_day() else { return at };
        day = next;
    }
    at
}

/// Whether a run is so far above the usual that a manager must look at it first: more than three usual days at once.
///
/// `today`: written today already; `lately`: written in the four weeks before.
pub(super) fn is_many(new: i64, today: i64, lately: i64) -> bool {
    let three_days = (3 * lately + USUAL_OVER_DAYS - 1) / USUAL_OVER_DAYS;
    new + today > three_days.max(NEVER_MANY)
}

#[cfg(test)]
mod tests {
    use time::macros::datetime;

    use super::*;

    #[test]
    fn reminders_keep_the_working_hours_of_the_shop() {
        let zone = Zone::named("Europe/Berlin").unwrap();
        // Friday, 17:00 in Berlin: too late; the next working moment is Monday, 09:00.
        assert!(!is_working_time(&zone, datetime!(2026-05-15 15:00 UTC)));
        assert_eq!(working_time_from(&zone, datetime!(2026-05-15 15:00 UTC)), datetime!(2026-05-18 07:00 UTC));
        assert_eq!(working_time_from(&zone, datetime!(2026-05-15 14:59 UTC)), datetime!(2026-05-15 14:59 UTC));
        assert_eq!(working_time_from(&zone, datetime!(2026-05-14 22:30 UTC)), datetime!(2026-05-15 07:00 UTC));
    }

    #[test]
    fn three_usual_days_at_once_are_many() {
        assert!(!is_many(20, 0, 0) && is_many(21, 0, 0));
        // 280 in four weeks are 10 a day.
        assert!(!is_many(30, 0, 280) && is_many(31, 0, 280) && is_many(16, 15, 280));
    }
}
