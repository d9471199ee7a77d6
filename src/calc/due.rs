//! When something falls due: by the calendar, by the odometer, or by whichever comes first.
//!
//! No clock: the dates come in. Distances are kilometres; a forecast rests on the odometer readings of the vehicle.

mod worked;

use std::fmt;

use serde::{Deserialize, Serialize};
use time::{Date, Duration, Month};

use super::{Basis, Outside, Source, between};

/// What [`due`] rests on.
pub const BASIS: Basis = Basis {
    key: "due",
    method: "months of the calendar; kilometres forecast by a line through the odometer readings; the first of the two",
    formulas: &["km(t) = a + b t, b the median slope of all pairs of readings, a the median of what is left"],
    relative_uncertainty: None,
    sources: &[Source::Theil1950, Source::CommonPractice],
};

pub use worked::steps;

/// How exactly a starting date is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Precision {
    /// To the day.
    #[default]
    Day,
    /// To the month, as stamped on many labels: the duty ends with the last day of its month.
    Month,
    /// To the year alone: counted from its January, the earliest the part can be, and ends with that month.
    Year,
}

/// One odometer reading.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Reading {
    /// Day it was read.
    pub date: Date,
    /// Kilometres shown.
    pub km: f64,
}

/// A duty and what is known about its start.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Duty {
    /// Day (or any day of the month) the interval starts.
    pub from: Date,
    /// Interval in months; `None` for a duty by distance alone.
    #[serde(default)]
    pub months: Option<u32>,
    /// How exactly `from` is known.
    #[serde(default)]
    pub from_precision: Precision,
    /// Odometer readings, in any order.
    #[serde(default)]
    pub readings: Vec<Reading>,
    /// Interval in kilometres; `None` for a duty by date alone.
    #[serde(default)]
    pub km: Option<f64>,
    /// Odometer at the start of the interval; needed with `km`.
    #[serde(default)]
    pub from_km: Option<f64>,
}

/// What made the due date.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum By {
    /// The months.
    Date,
    /// The forecast of the kilometres.
    Distance,
}

/// When a duty falls due, and from what.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Due {
    /// The day, first of the two below.
    pub due_on: Date,
    /// Which of the two it is; the date where they agree.
    pub by: By,
    /// Last day by the months.
    pub by_months_on: Option<Date>,
    /// Day the odometer is forecast to reach its mark, rounded down.
    pub by_distance_on: Option<Date>,
    /// Distance a day behind the forecast; `None` where the readings give none.
    pub km_per_day: Option<f64>,
}

/// Why no due date can be given.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum NotDue {
    /// A number left its range; also names what is missing.
    Outside(Outside),
    /// Neither months nor kilometres.
    NoInterval,
    /// A duty by distance alone, and readings that give no forecast.
    NoForecast,
    /// The day lies beyond the calendar.
    BeyondCalendar,
}

impl From<Outside> for NotDue {
    fn from(outside: Outside) -> Self {
        Self::Outside(outside)
    }
}

impl fmt::Display for NotDue {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Outside(outside) => outside.fmt(f),
            Self::NoInterval => f.write_str("a duty needs months, km, or both"),
            Self::NoForecast => f.write_str("the odometer readings give no forecast: two on different days that rise"),
            Self::BeyondCalendar => f.write_str("the due date lies beyond the calendar"),
        }
    }
}

impl std::error::Error for NotDue {}

/// The first of date and distance.
///
/// # Errors
/// [`NotDue`] for an interval or a reading out of range, no interval at all, or no way to forecast a distance alone.
pub fn due(duty: &Duty) -> Result<Due, NotDue> {
    let by_months_on = duty.months.map(|months| months_later(duty.from, months, duty.from_precision)).transpose()?;
    let line = OdometerLine::through(&duty.readings)?;
    let by_distance_on = match duty.km {
        None => None,
        Some(km) => {
            let km = between("km", km, 0.0, MOST_KM)?;
            let from_km = between("from_km", duty.from_km.unwrap_or(f64::NAN), 0.0, MOST_KM)?;
            line.and_then(|line| line.reaches(from_km + km))
        }
    };
    let (due_on, by) = match (by_months_on, by_distance_on) {
        (Some(date), Some(distance)) if distance < date => (distance, By::Distance),
        (Some(date), _) => (date, By::Date),
        (None, Some(distance)) => (distance, By::Distance),
        (None, None) if duty.km.is_none() => return Err(NotDue::NoInterval),
        (None, None) => return Err(NotDue::NoForecast),
    };
    Ok(Due { due_on, by, by_months_on, by_distance_on, km_per_day: line.map(|line| line.km_per_day) })
}

/// The same day of the month some months later, or the last day of that month where it has no such day.
///
/// 31 January and one month is 28 or 29 February; 29 February and twelve is 28 February. A date known to the month ends
/// on the last day of the month reached.
///
/// `months`: 0 to 1200.
///
/// # Errors
/// [`NotDue`] beyond 1200 months or beyond the calendar.
pub fn months_later(from: Date, months: u32, precision: Precision) -> Result<Date, NotDue> {
    between("months", f64::from(months), 0.0, 1200.0)?;
    let first_month = match precision {
        Precision::Year => 0,
        Precision::Day | Precision::Month => u8::from(from.month()) - 1,
    };
    let count = u32::from(first_month) + months;
    let year = i32::try_from(count / 12).ok().and_then(|years| from.year().checked_add(years));
    let month = u8::try_from(count % 12 + 1).ok().and_then(|month| Month::try_from(month).ok());
    let (Some(year), Some(month)) = (year, month) else { return Err(NotDue::BeyondCalendar) };
    let last = month.length(year);
    let day = match precision {
        Precision::Day => from.day().min(last),
        Precision::Month | Precision::Year => last,
    };
    Date::from_calendar_date(year, month, day).map_err(|_| NotDue::BeyondCalendar)
}

/// Beyond any odometer.
const MOST_KM: f64 = 10_000_000.0;
/// Every pair of readings is looked at; a fleet vehicle read each day for five years stays below this.
const MOST_READINGS: f64 = 2_000.0;

/// Straight line through odometer readings that a mistyped one does not bend.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OdometerLine {
    /// Day the line is anchored at.
    pub anchor_on: Date,
    /// Odometer on the line at that day.
    pub anchor_km: f64,
    /// Slope, above zero.
    pub km_per_day: f64,
}

impl OdometerLine {
    /// Median of the slopes of all pairs, through the median of what is left.
    ///
    /// `None` without two readings on different days, or where they do not rise.
    ///
    /// # Errors
    /// [`Outside`] for a reading that is not finite or out of range, or too many of them.
    ///
    /// # Source
    /// H. Theil, Indagationes Mathematicae 12 (1950) 85; P. K. Sen, J. Am. Stat. Assoc. 63 (1968) 1379.
    pub fn through(readings: &[Reading]) -> Result<Option<Self>, Outside> {
        between("readings", readings.len() as f64, 0.0, MOST_READINGS)?;
        for reading in readings {
            between("readings.km", reading.km, 0.0, MOST_KM)?;
        }
        let Some(anchor_on) = readings.iter().map(|reading| reading.date).max() else { return Ok(None) };
        // Kilometres against days before the anchor, so that the numbers stay small.
        let days = |reading: &Reading| (reading.date - anchor_on).whole_days() as f64;
        let mut slopes = Vec::new();
        for (i, one) in readings.iter().enumerate() {
            for other in &readings[i + 1..] {
                if one.date != other.date {
                    slopes.push((other.km - one.km) / (days(other) - days(one)));
                }
            }
        }
        let Some(km_per_day) = median(&mut slopes).filter(|slope| *slope > 0.0) else { return Ok(None) };
        let mut left: Vec<f64> = readings.iter().map(|reading| reading.km - km_per_day * days(reading)).collect();
        Ok(median(&mut left).map(|anchor_km| Self { anchor_on, anchor_km, km_per_day }))
    }

    /// Last whole day before the line passes `km`; `None` beyond the calendar.
    pub fn reaches(&self, km: f64) -> Option<Date> {
        // A millionth of a day of grace: 364.9999999 is the 365th day that the arithmetic missed.
        let days = ((km - self.anchor_km) / self.km_per_day + 1e-6).floor();
        #[expect(
            clippy::cast_possible_truncation,
            reason = "a whole number, held far inside i64 by the test before it"
        )]
        let days = (days.abs() < 1e7).then_some(days as i64)?;
        self.anchor_on.checked_add(Duration::days(days))
    }
}

fn median(values: &mut [f64]) -> Option<f64> {
    values.sort_by(f64::total_cmp);
    let middle = values.len() / 2;
    let upper = values.get(middle)?;
    if values.len() % 2 == 1 {
        return Some(*upper);
    }
    values.get(middle.checked_sub(1)?).map(|lower| 0.5 * (lower + upper))
}
