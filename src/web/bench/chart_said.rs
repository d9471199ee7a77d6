//! Drawings of the Bench: numbers in, the picture and the table that stands beside it out.

use crate::calc::Composition;
use crate::calc::liquid::{Liquid, dew_temperature_c, vapour_pressure};
use crate::charts::bubble::{Bubble, BubbleWords, picture, span};
use crate::charts::svg;
use crate::web::kit::{Cell, Column, Table};
use crate::web::sum::marks;
use crate::words::Words;

/// Temperatures of the bubble line, C: deep winter to a hot boot.
const FROM_C: f64 = -30.0;
const TO_C: f64 = 70.0;
const STEP_C: f64 = 5.0;
/// Pressures at which the dew line is looked for.
const DEW_POINTS: u8 = 24;

/// Bubble and dew pressure over temperature with the point at `at_c`, and the same as a table; nothing where the sum
/// refuses the mixture.
pub fn bubble(w: &Words, composition: &Composition, at_c: f64) -> Option<(String, Table)> {
    let kpa = |temperature_c: f64| {
        vapour_pressure(&Liquid { composition: *composition, temperature_c }).ok().map(|found| found.pressure_kpa)
    };
    let (low, high) = (FROM_C.min(at_c), TO_C.max(at_c));
    let count = ((high - low) / STEP_C).ceil();
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a count of some twenty steps")]
    let steps = 0..=(count as u16);
    let line: Vec<(f64, f64)> =
        steps.map(|step| low + (high - low) * f64::from(step) / count).filter_map(|c| Some((c, kpa(c)?))).collect();
    let top = line.last()?.1;
    let dew: Vec<(f64, f64)> = (1..=DEW_POINTS)
        .map(|step| top * (f64::from(step) / f64::from(DEW_POINTS)).powi(2))
        .filter_map(|kpa| Some((dew_temperature_c(composition, kpa).ok()?, kpa)))
        .collect();
    // The two lines of a pure component are one.
    let is_mixture = composition.present().count() > 1;
    let at = kpa(at_c).map(|kpa| (at_c, kpa));
    let said = |(c, kpa): (f64, f64)| {
        let values = [("kpa", w.quantity(kpa, 0, "kPa").into()), ("c", w.quantity(c, 0, "°C").into())];
        w.tv("bubble-chart-at", &values)
    };
    let mut shown = Bubble {
        bubble: line,
        dew: if is_mixture { dew } else { Vec::new() },
        at,
        temperatures: Vec::new(),
        pressures: Vec::new(),
        words: BubbleWords {
            title: w.t("bubble-chart-title"),
            description: w.t("bubble-chart-description"),
            temperature: w.head("bubble-chart-temperature"),
            pressure: w.head("bubble-chart-pressure"),
            liquid: w.t("bubble-chart-liquid"),
            vapour: w.t("bubble-chart-vapour"),
            at: at.map(said).unwrap_or_default(),
        },
    };
    let (x, y) = span(&shown);
    shown.temperatures = marks(w, x.0, x.1, 10, "°C");
    shown.pressures = marks(w, y.0, y.1, 6, "kPa");
    let drawn = svg(&picture(&shown), "bubble-chart");
    Some((drawn, table(w, kpa)))
}

fn table(w: &Words, kpa: impl Fn(f64) -> Option<f64>) -> Table {
    let row = |c: f64| kpa(c).map(|kpa| vec![Cell::new(w.figure(c, 0, "°C")), Cell::new(w.figure(kpa, 0, "kPa"))]);
    Table {
        w: *w,
        caption: w.t("bubble-chart-title"),
        columns: ["temperature", "pressure"].map(|name| Column::number(w.head(format!("bubble-chart-{name}")))).into(),
        rows: (-3..=7).filter_map(|ten| row(10.0 * f64::from(ten))).collect(),
    }
}
