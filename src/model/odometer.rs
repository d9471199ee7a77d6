//! What an odometer reading has to explain: going backwards, or further than anybody drives. Asked, never refused.

use time::Date;

use super::vehicle::{OdometerExplained, OdometerReading};

/// More than this in a day is asked about.
const MOST_KM_A_DAY: i64 = 1_000;

/// Why a reading is asked about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Question {
    /// An earlier day, or an earlier entry of the same day, shows more.
    LowerThanBefore {
        /// That reading, km.
        km: i64,
        /// Its day.
        on: Date,
    },
    /// A later day shows less.
    HigherThanAfter {
        /// That reading, km.
        km: i64,
        /// Its day.
        on: Date,
    },
    /// Too far for the days between.
    Jump {
        /// That reading, km.
        km: i64,
        /// Its day.
        on: Date,
    },
}

impl Question {
    /// The key of its sentence, which takes `$km` and `$on`.
    pub fn key(self) -> &'static str {
        match self {
            Self::LowerThanBefore { .. } => "odometer-lower",
            Self::HigherThanAfter { .. } => "odometer-higher-than-after",
            Self::Jump { .. } => "odometer-jump",
        }
    }

    /// The reading it is held against: km, and its day.
    pub fn against(self) -> (i64, Date) {
        match self {
            Self::LowerThanBefore { km, on } | Self::HigherThanAfter { km, on } | Self::Jump { km, on } => (km, on),
        }
    }
}

/// What a reading of `km` on `on` would have to explain, `known` being every reading in the order of days.
/// A later reading that was itself explained starts afresh, and nothing is held against it.
pub fn question(known: &[OdometerReading], on: Date, km: i64) -> Option<Question> {
    let (before, after): (Vec<_>, Vec<_>) = known.iter().partition(|reading| reading.read_on <= on);
    if let Some(last) = before.last() {
        if km < last.km {
            return Some(Question::LowerThanBefore { km: last.km, on: last.read_on });
        }
        if km - last.km > MOST_KM_A_DAY * (on - last.read_on).whole_days().max(1) {
            return Some(Question::Jump { km: last.km, on: last.read_on });
        }
    }
    let next = after.first()?;
    let breaks = next.explained != OdometerExplained::Plain && next.explained != OdometerExplained::AsRead;
    (km > next.km && !breaks).then_some(Question::HigherThanAfter { km: next.km, on: next.read_on })
}

#[cfg(test)]
mod tests {
    use time::macros::date;

    use super::*;

    fn reading(read_on: Date, km: i64) -> OdometerReading {
        OdometerReading { read_on, km, typed: format!("{km} km"), explained: OdometerExplained::Plain }
    }

    #[test]
    fn a_reading_that_follows_asks_nothing() {
        let known = [reading(date!(2026 - 01 - 10), 50_000)];
        assert_eq!(question(&known, date!(2026 - 05 - 12), 56_000), None);
        assert_eq!(question(&[], date!(2026 - 05 - 12), 900_000), None);
        assert_eq!(question(&known, date!(2026 - 01 - 10), 50_000), None);
        // Exactly a thousand a day is still driven; one more is asked about.
        assert_eq!(question(&known, date!(2026 - 01 - 12), 52_000), None);
        assert!(matches!(question(&known, date!(2026 - 01 - 12), 52_001), Some(Question::Jump { .. })));
    }

    #[test]
    fn lower_than_before_is_asked() {
        let known = [reading(date!(2026 - 01 - 10), 50_000)];
        let asked = question(&known, date!(2026 - 05 - 12), 49_999);
        assert_eq!(asked, Some(Question::LowerThanBefore { km: 50_000, on: date!(2026 - 01 - 10) }));
    }

    #[test]
    fn a_reading_entered_late_is_held_against_the_one_after_it() {
        let known = [reading(date!(2026 - 01 - 10), 50_000), reading(date!(2026 - 05 - 01), 60_000)];
        let asked = question(&known, date!(2026 - 03 - 01), 61_000);
        assert_eq!(asked, Some(Question::HigherThanAfter { km: 60_000, on: date!(2026 - 05 - 01) }));
        assert_eq!(question(&known, date!(2026 - 03 - 01), 55_000), None);
    }
}
