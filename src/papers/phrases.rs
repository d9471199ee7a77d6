//! Numbers, results, dates and duties of papers in words.

use time::{Date, Month, OffsetDateTime, PrimitiveDateTime};

use crate::model::paper::certificate::DutyOnPaper;
use crate::model::paper::measured::{DecisionRule, MeasuredRow, Quantity, Reading, Verdict};
use crate::model::paper::{CertificateKind, GasFuel};
use crate::model::vehicle::is_vin;
use crate::words::Words;

use super::ink::Ink;

/// A number without its unit.
pub fn bare(words: &Words, quantity: &Quantity) -> String {
    quantity.number().map_or_else(|| quantity.value.clone(), |number| words.number(number, quantity.decimals))
}

/// A number with its unit.
pub fn quantity(words: &Words, quantity: &Quantity) -> String {
    with_unit(&bare(words, quantity), &quantity.unit)
}

/// The same, or nothing.
pub fn quantity_if(words: &Words, found: Option<&Quantity>) -> String {
    found.map(|found| quantity(words, found)).unwrap_or_default()
}

fn with_unit(number: &str, unit: &str) -> String {
    if unit.is_empty() { number.to_owned() } else { format!("{number}\u{a0}{unit}") }
}

fn parts_of(words: &Words, reading: &Reading) -> (String, String) {
    match reading {
        Reading::Word { text } => (text.clone(), String::new()),
        Reading::Number(number) => (bare(words, number), number.unit.clone()),
        Reading::Between { low, high } => (format!("{}–{}", bare(words, low), bare(words, high)), high.unit.clone()),
    }
}

/// Several readings side by side: the unit once if they share it, "0.08 / 0.05 %".
fn side_by_side(readings: Vec<(String, String, String)>) -> String {
    let is_one_unit = readings.windows(2).all(|pair| pair[0].2 == pair[1].2);
    let unit = readings.last().map(|last| last.2.clone()).unwrap_or_default();
    let labelled = |label: String, text: String| if label.is_empty() { text } else { format!("{label} {text}") };
    let texts: Vec<String> = if is_one_unit {
        readings.into_iter().map(|(label, text, _)| labelled(label, text)).collect()
    } else {
        readings.into_iter().map(|(label, text, unit)| labelled(label, with_unit(&text, &unit))).collect()
    };
    let joined = texts.join("\u{a0}/ ");
    if is_one_unit { with_unit(&joined, &unit) } else { joined }
}

/// What was found: "3 ± 16 cm³/h".
pub fn result(words: &Words, row: &MeasuredRow) -> String {
    let readings: Vec<_> = row
        .results
        .iter()
        .map(|part| {
            let (text, unit) = parts_of(words, &part.reading);
            let text = match &row.uncertainty {
                Some(uncertainty) if matches!(part.reading, Reading::Number(_)) => {
                    format!("{text}\u{a0}±\u{a0}{}", bare(words, &uncertainty.expanded))
                }
                _ => text,
            };
            (part.label.clone(), text, unit)
        })
        .collect();
    side_by_side(readings)
}

/// What is allowed.
pub fn limit(words: &Words, row: &MeasuredRow) -> String {
    let readings = row.limits.iter().map(|limit| {
        let (text, unit) = parts_of(words, limit);
        (String::new(), text, unit)
    });
    side_by_side(readings.collect())
}

/// Mark and words of a verdict, and its ink.
pub fn verdict(words: &Words, verdict: Verdict, rule: DecisionRule) -> (String, Ink) {
    let (mark, ink) = match verdict {
        Verdict::Passes => ("✓", Ink::Met),
        Verdict::Fails => ("✕", Ink::Stop),
        Verdict::CannotTell => ("◐", Ink::Copper),
    };
    let key = format!("paper-verdict-{}-{}", verdict.as_str(), rule.as_str());
    (format!("{mark}\u{a0}{}", words.t(&key)), ink)
}

/// A kilometre reading or distance.
pub fn kilometres(words: &Words, km: i64) -> String {
    format!("{}\u{a0}km", words.integer(km))
}

/// An instant with the offset it carries: "25 Nov 2026, 10:42 UTC".
pub fn instant(words: &Words, at: OffsetDateTime) -> String {
    let clock = PrimitiveDateTime::new(at.date(), at.time());
    let (hours, minutes, _) = at.offset().as_hms();
    let zone = match (hours, minutes) {
        (0, 0) => "UTC".to_owned(),
        (hours, 0) => format!("UTC{hours:+}"),
        (hours, minutes) => format!("UTC{hours:+}:{:02}", minutes.unsigned_abs()),
    };
    format!("{}, {}\u{a0}{zone}", words.medium_date(clock.date()), words.time(clock.time()))
}

/// A day, or nothing.
pub fn day_if(words: &Words, day: Option<Date>) -> String {
    day.map(|day| words.date(day)).unwrap_or_default()
}

/// A date known to the day, the month or the year: "March 2014". Anything else is printed as it stands.
pub fn partial_date(words: &Words, text: &str) -> String {
    match read_partial(text) {
        Some((day, 2)) => words.date(day),
        Some((day, 1)) => words.month(day),
        _ => text.to_owned(),
    }
}

/// The same for narrow columns: "03/2026".
pub fn short_month(text: &str) -> String {
    match read_partial(text) {
        Some((day, 1 | 2)) => format!("{:02}/{}", u8::from(day.month()), day.year()),
        _ => text.to_owned(),
    }
}

/// The date and how many of month and day it names.
fn read_partial(text: &str) -> Option<(Date, usize)> {
    let parts: Vec<&str> = text.split('-').collect();
    let number = |place: usize| parts.get(place).map_or(Some(1), |part| part.parse::<u8>().ok());
    let year: i32 = parts.first()?.parse().ok().filter(|_| parts.len() <= 3 && parts[0].len() == 4)?;
    let month = Month::try_from(number(1)?).ok()?;
    Some((Date::from_calendar_date(year, month, number(2)?).ok()?, parts.len() - 1))
}

/// When a duty falls due: "25 January 2027 or 1 500 km, whichever comes first".
pub fn due(words: &Words, duty: &DutyOnPaper) -> String {
    either(words, duty, duty.due_on.map(|day| words.date(day)), ["paper-due-at", "paper-due-either"])
}

/// The same under a head that says "whichever comes first".
pub fn due_dates(words: &Words, duty: &DutyOnPaper) -> String {
    either(words, duty, duty.due_on.map(|day| words.date(day)), ["paper-due-at", "paper-due-either-in-short"])
}

/// The same in short: "25 Jan 2027 or 1 500 km".
pub fn due_in_short(words: &Words, duty: &DutyOnPaper) -> String {
    let on = duty.due_on.map(|day| words.medium_date(day));
    either(words, duty, on, ["paper-due-at-in-short", "paper-due-either-in-short"])
}

fn either(words: &Words, duty: &DutyOnPaper, on: Option<String>, [at, both]: [&'static str; 2]) -> String {
    let parts: Vec<String> = [
        on,
        duty.due_at_km.map(|km| words.tv(at, &[("km", kilometres(words, km).into())])),
        duty.every_km.map(|km| words.tv("paper-due-every", &[("span", kilometres(words, km).into())])),
        duty.every_months.map(|months| words.tn("paper-due-months", months)),
    ]
    .into_iter()
    .flatten()
    .collect();
    match parts.as_slice() {
        [first, second] => words.tv(both, &[("first", first.into()), ("second", second.into())]),
        many => many.join(", "),
    }
}

/// The name of what tells a vehicle apart: its VIN, or the chassis number where it has none.
pub fn identity_key(identity: &str) -> &'static str {
    if is_vin(identity) { "paper-vin" } else { "paper-chassis-number" }
}

/// The title of a certificate.
pub fn certificate_title(words: &Words, kind: CertificateKind, fuel: GasFuel) -> String {
    let fuel_name = words.t(format!("paper-fuel-{}", fuel.as_str()));
    words.tv(&format!("certificate-title-{}", kind.as_str()), &[("fuel", fuel_name.into())])
}

/// Texts that are not empty, with a point between them.
pub fn dotted(parts: &[&str]) -> String {
    parts.iter().filter(|part| !part.is_empty()).copied().collect::<Vec<_>>().join(" · ")
}
