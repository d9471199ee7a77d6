//! When something falls due, by date, by distance, or by whichever comes first.

use super::answered::Answered;
use super::number::{Number, number};
use super::sum::BenchSum;
use crate::calc::due::{BASIS, By, Due, Duty, NotDue, OdometerLine, Precision, Reading, due, steps};
use crate::calc::{Error, Outside};
use crate::unit::Unit;
use crate::web::form::{Form, Wrong};
use crate::web::job::origins;
use crate::web::kit::{self, Cell, Choice, Column, Group, Mark, Table, Tone, Verdict};
use crate::web::sum;
use crate::words::Words;

/// `/bench/due`.
#[derive(Debug)]
pub struct DueSum;

/// Lines for odometer readings.
const READINGS: usize = 5;
const PRECISIONS: [(&str, Precision); 3] =
    [("day", Precision::Day), ("month", Precision::Month), ("year", Precision::Year)];
const MOST_KM: f64 = 10_000_000.0;

const KM: [Number; 2] = [
    number("km", Unit::Kilometre, 1.0, 1_000_000.0).optional(),
    number("from_km", Unit::Kilometre, 0.0, MOST_KM).optional(),
];

fn of(line: usize, field: &str) -> String {
    format!("readings[{line}][{field}]")
}

fn readings(form: &mut Form) -> Vec<Reading> {
    let mut all = Vec::new();
    for line in 0..READINGS {
        let (date_name, km_name) = (of(line, "date"), of(line, "odometer_km"));
        let is_named = |form: &Form, name: &str| !form.value(name).trim().is_empty();
        if !is_named(form, &date_name) && !is_named(form, &km_name) {
            continue;
        }
        let (date, km) = (form.date(&date_name), form.number(&km_name, Unit::Kilometre, 0.0..=MOST_KM));
        all.extend(date.zip(km).map(|(date, km)| Reading { date, km }));
    }
    all
}

fn verdict(w: &Words, duty: &Duty, found: &Due) -> Verdict {
    let by = match found.by {
        By::Date => w.t("says-due-by-date"),
        By::Distance => w.t("says-due-by-distance"),
    };
    let mut sentences = vec![by];
    if duty.km.is_some() && found.by_distance_on.is_none() {
        sentences.push(w.t("says-due-no-forecast"));
    }
    let title = w.tv("says-due-on", &[("date", w.date(found.due_on).into())]);
    Verdict { tone: Tone::Met, mark: Mark::Met, title, sentences }
}

/// Readings with what the line through them says: a mistyped one stands out.
fn line(w: &Words, duty: &Duty) -> Table {
    let line = OdometerLine::through(&duty.readings).ok().flatten();
    let row = |reading: &Reading| {
        let on_line =
            line.map(|line| line.anchor_km + line.km_per_day * (reading.date - line.anchor_on).whole_days() as f64);
        let km = |value: f64| Cell::new(w.number(value, 0));
        vec![
            Cell::new(w.short_date(reading.date)),
            km(reading.km),
            on_line.map_or_else(|| Cell::new("–"), km),
            on_line.map_or_else(|| Cell::new("–"), |on_line| km(reading.km - on_line)),
        ]
    };
    let mut columns = vec![Column::text(w.t("says-due-column-date"))];
    columns.extend(["read", "line", "off"].map(|name| Column::number(w.head(format!("says-due-column-{name}")))));
    Table { w: *w, caption: w.t("says-due-line"), columns, rows: duty.readings.iter().map(row).collect() }
}

fn refuse(w: &Words, form: &mut Form, refused: NotDue) {
    match refused {
        NotDue::Outside(outside) => {
            let quantity = if outside.quantity == "readings.km" { "from_km" } else { outside.quantity };
            sum::refuse(w, form, &Error::Outside(Outside { quantity, ..outside }), "months", str::to_owned);
        }
        NotDue::NoInterval => form.fail("months", Wrong::Rule("bench-due-no-interval", Vec::new())),
        NotDue::NoForecast => form.fail(&of(0, "odometer_km"), Wrong::Rule("bench-due-no-forecast", Vec::new())),
        NotDue::BeyondCalendar => form.fail("months", Wrong::Rule("bench-due-beyond", Vec::new())),
    }
}

impl BenchSum for DueSum {
    const KEY: &'static str = "due";
    const SCOPE: &'static str = "bench-due";
    // 31 January and one month is the last of February; redone on any calendar.
    const EXAMPLE: &'static [(&'static str, &'static str)] = &[
        ("from", "2026-01-31"),
        ("months", "12"),
        ("from_precision", "day"),
        ("km", "20000"),
        ("from_km", "60000"),
        ("readings[0][date]", "2026-01-31"),
        ("readings[0][odometer_km]", "60000"),
        ("readings[1][date]", "2026-05-11"),
        ("readings[1][odometer_km]", "68000"),
    ];
    type Asked = Duty;

    fn openings() -> Vec<origins::Default> {
        vec![("from_precision".to_owned(), "day".to_owned(), "practice")]
    }

    fn groups(w: &Words, form: &Form) -> Vec<Group> {
        let precisions = PRECISIONS.map(|(key, _)| Choice::new(key, w.t(format!("due-precision-{key}"))));
        let start = vec![
            kit::date(form, w, "from"),
            kit::choice(form, w, "from_precision", &precisions),
            kit::number(form, w, "months").unit(Unit::Month).optional(),
        ];
        let row =
            |line: usize| vec![kit::date(form, w, of(line, "date")), kit::number(form, w, of(line, "odometer_km"))];
        let columns = ["date", "odometer_km"].map(|name| w.t(format!("bench-due-column-{name}")));
        vec![
            Group::new(w.t("bench-due-group-date"), start),
            Group::new(w.t("bench-due-group-distance"), KM.iter().map(|one| one.field(w, form)).collect()),
            Group::table("readings", w.t("bench-due-group-readings"), columns.into(), (0..READINGS).map(row).collect())
                .noted(w.t("bench-due-note-readings")),
        ]
    }

    fn read(_: &Words, form: &mut Form) -> Option<Duty> {
        let from = form.date("from");
        let months = form.opt_integer("months", 0..=1_200);
        let precision = form.choice::<String>("from_precision");
        let precision = precision.and_then(|text| PRECISIONS.iter().find(|(key, _)| *key == text));
        if precision.is_none() && form.wrong("from_precision").is_none() {
            form.fail("from_precision", Wrong::NotAChoice);
        }
        let [km, from_km] = super::number::read(form, &KM);
        if km.is_some() && from_km.is_none() && form.wrong("from_km").is_none() {
            form.fail("from_km", Wrong::Rule("bench-due-needs-start", Vec::new()));
        }
        let readings = readings(form);
        let months = months.and_then(|months| u32::try_from(months).ok());
        Some(Duty { from: from?, months, from_precision: precision?.1, readings, km, from_km })
    }

    fn answer(w: &Words, form: &mut Form, duty: &Duty) -> Option<Answered> {
        let found = match due(duty) {
            Ok(found) => found,
            Err(refused) => {
                refuse(w, form, refused);
                return None;
            }
        };
        let mut answer = Answered::new(w).verdict(verdict(w, duty, &found));
        if let Some(day) = found.by_months_on {
            answer = answer.main("says-due-months", w.date(day));
        }
        if let Some(day) = found.by_distance_on {
            answer = answer.main("says-due-distance", w.date(day));
        }
        let mark = duty.km.zip(duty.from_km).map(|(km, from)| w.quantity(km + from, 0, "km"));
        Some(
            answer
                .results(vec![
                    ("says-due-mark", mark),
                    ("says-due-km-per-day", found.km_per_day.map(|km| w.quantity(km, 1, "km"))),
                ])
                .table(line(w, duty))
                .steps(&steps(duty, &found))
                .note(w.t("says-due-note"))
                .basis(&BASIS),
        )
    }
}
