//! Dates and times of day as our pages and papers print them: "25 November 2026", "3 Nov", "Wed 25 Nov, 10:42".
//!
//! What comes in is already local: whoever holds the shop's time zone turns an instant into a local value first.

use icu_datetime::fieldsets::{E, MD, MDE, YM, YMD};
use icu_datetime::input::Date as IcuDate;
use icu_datetime::{DateTimeFormatter, DateTimeFormatterPreferences};
use icu_locale::Locale;
use time::{Date, OffsetDateTime, Time};

use super::{Language, NO_BREAK, Words};

macro_rules! say {
    ($language:expr, $day:expr, $fields:expr) => {
        preferences($language)
            .and_then(|preferences| DateTimeFormatter::try_new(preferences, $fields).ok())
            .zip(IcuDate::try_new_iso($day.year(), u8::from($day.month()), $day.day()).ok())
            .map_or_else(|| $day.to_string(), |(formatter, day)| keep_together(&formatter.format(&day).to_string()))
    };
}

impl Words {
    /// "25 November 2026".
    pub fn date(&self, day: Date) -> String {
        say!(self.language, day, YMD::long())
    }

    /// "25 Nov 2026", for tables.
    pub fn medium_date(&self, day: Date) -> String {
        say!(self.language, day, YMD::medium())
    }

    /// "3 Nov", where the year is plain from what stands around it.
    pub fn short_date(&self, day: Date) -> String {
        say!(self.language, day, MD::medium())
    }

    /// "November 2026", for dates known to the month.
    pub fn month(&self, day: Date) -> String {
        say!(self.language, day, YM::long())
    }

    /// "Wed 25 Nov", for plans and lists of the week.
    pub fn week_date(&self, day: Date) -> String {
        say!(self.language, day, MDE::medium())
    }

    /// "Wednesday".
    pub fn weekday(&self, day: Date) -> String {
        say!(self.language, day, E::long())
    }

    /// "10:42", twenty-four hours.
    #[allow(clippy::unused_self)] // the hours of a language with its own digits will need it
    pub fn time(&self, time: Time) -> String {
        format!("{:02}:{:02}", time.hour(), time.minute())
    }

    /// "25 November 2026, 10:42", as the clock on the wall shows it: the offset of `local` is the shop's.
    pub fn date_time(&self, local: OffsetDateTime) -> String {
        format!("{}, {}", self.date(local.date()), self.time(local.time()))
    }

    /// "3 Nov, 10:42".
    pub fn short_date_time(&self, local: OffsetDateTime) -> String {
        format!("{}, {}", self.short_date(local.date()), self.time(local.time()))
    }
}

fn preferences(language: Language) -> Option<DateTimeFormatterPreferences> {
    let locale: Locale = language.format_tag().parse().ok()?;
    Some(DateTimeFormatterPreferences::from(&locale))
}

/// A date does not break across two lines.
fn keep_together(text: &str) -> String {
    text.replace(' ', &NO_BREAK.to_string())
}

#[cfg(test)]
mod tests {
    use time::macros::{date, datetime};

    use super::*;

    const W: Words = Words::new(Language::English);

    #[test]
    fn dates_are_written_as_people_write_them() {
        assert_eq!(W.date(date!(2026 - 11 - 25)), "25\u{a0}November\u{a0}2026");
        assert_eq!(W.medium_date(date!(2026 - 11 - 25)), "25\u{a0}Nov\u{a0}2026");
        assert_eq!(W.short_date(date!(2026 - 11 - 03)), "3\u{a0}Nov");
        assert_eq!(W.month(date!(2026 - 03 - 01)), "March\u{a0}2026");
        assert_eq!(W.week_date(date!(2026 - 11 - 25)), "Wed\u{a0}25\u{a0}Nov");
        assert_eq!(W.weekday(date!(2026 - 11 - 25)), "Wednesday");
        assert_eq!(W.date(date!(2028 - 02 - 29)), "29\u{a0}February\u{a0}2028");
    }

    /// Long dates of CLDR 45 and later (`yMMMMd` of each locale; from memory).
    #[test]
    fn each_language_writes_its_own_dates() {
        let long = |language| Words::new(language).date(date!(2026 - 11 - 25)).replace('\u{a0}', " ");
        let months = [
            (Language::German, "25. November 2026"),
            (Language::Polish, "25 listopada 2026"),
            (Language::Italian, "25 novembre 2026"),
            (Language::Spanish, "25 de noviembre de 2026"),
            (Language::Turkish, "25 Kasım 2026"),
            (Language::French, "25 novembre 2026"),
            (Language::Dutch, "25 november 2026"),
        ];
        for (language, expected) in months {
            assert_eq!(long(language), expected);
        }
    }

    #[test]
    fn times_of_day_have_twenty_four_hours() {
        assert_eq!(W.date_time(datetime!(2026-11-25 00:05 +1)), "25\u{a0}November\u{a0}2026, 00:05");
        assert_eq!(W.short_date_time(datetime!(2026-11-03 23:59:59 UTC)), "3\u{a0}Nov, 23:59");
    }
}
