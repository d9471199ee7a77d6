//! A decay test of the Bench in words, as a budget and as a picture.

use crate::calc::decision::Verdict as Outcome;
use crate::calc::leak::trace::trace;
use crate::calc::leak::{BudgetQuantity, BudgetRow, Compressibility, DecayTest, LeakResult, LeakWarning};
use crate::charts::leak::{Leak, LeakWords, picture, span};
use crate::charts::svg;
use crate::web::kit::{Cell, Column, Mark, Table, Tone, Verdict};
use crate::web::sum::figure;
use crate::web::sum::marks;
use crate::words::Words;

/// The picture shows at most so many times the time that passed.
const MOST_AHEAD: f64 = 8.0;

/// Decimals of a rate with this expanded uncertainty: two figures of it (JCGM 100, 7.2.6).
pub fn decimals(expanded_cm3_h: f64) -> u8 {
    match expanded_cm3_h {
        u if u >= 9.95 => 0,
        u if u >= 0.995 => 1,
        u if u >= 0.0995 => 2,
        _ => 3,
    }
}

/// Minutes, hours or days, rounded up.
pub fn minutes(w: &Words, minutes: f64) -> String {
    match minutes {
        m if m >= 2_880.0 => w.quantity((m / 1_440.0).ceil(), 0, "d"),
        m if m >= 600.0 => w.quantity((m / 60.0).ceil(), 0, "h"),
        m if m >= 10.0 => w.quantity(m.ceil(), 0, "min"),
        m => w.quantity((10.0 * m).ceil() / 10.0, 1, "min"),
    }
}

/// The time that would tell, or that none does.
pub fn needed_time(w: &Words, needed_min: Option<f64>) -> String {
    needed_min.map_or_else(|| w.t("says-leak-none"), |needed| minutes(w, needed))
}

/// The gauge that would tell, or that none does.
pub fn needed_gauge(w: &Words, result: &LeakResult) -> String {
    let needed = result.needed_pressure_standard_uncertainty_kpa;
    needed.map_or_else(|| w.t("says-leak-none"), |kpa| format!("{}\u{a0}kPa", figure(w, round_down(kpa))))
}

/// Two figures, rounded down: a gauge a little better than needed, never worse.
fn round_down(value: f64) -> f64 {
    if value <= 0.0 {
        return 0.0;
    }
    let scale = 10f64.powf(1.0 - value.log10().floor());
    (value * scale).floor() / scale
}

/// What the test says, and what would change that.
pub fn verdict(w: &Words, test: &DecayTest, result: &LeakResult) -> Verdict {
    let (tone, mark, key) = match result.verdict {
        Outcome::Pass => (Tone::Met, Mark::Met, "leak-decay-passes"),
        Outcome::Fail => (Tone::Stop, Mark::Stops, "leak-decay-fails"),
        Outcome::CannotTell => (Tone::Copper, Mark::Undecided, "leak-decay-cannot-tell"),
    };
    let mut sentences = vec![loss(w, test, result)];
    match result.verdict {
        Outcome::Pass => {}
        Outcome::Fail => sentences.push(w.t("leak-decay-find-it")),
        Outcome::CannotTell => sentences.extend(ways_on(w, test, result)),
    }
    Verdict { tone, mark, title: w.t(key), sentences }
}

fn loss(w: &Words, test: &DecayTest, result: &LeakResult) -> String {
    let places = decimals(result.expanded_uncertainty_cm3_h);
    let limit = format!("{}\u{a0}cm³/h", figure(w, test.limit_cm3_h));
    let values = [
        ("rate", w.number(result.rate_cm3_h, places).into()),
        ("u", w.quantity(result.expanded_uncertainty_cm3_h, places, "cm³/h").into()),
        ("limit", limit.into()),
    ];
    w.tv("says-leak-loss", &values)
}

fn ways_on(w: &Words, test: &DecayTest, result: &LeakResult) -> Vec<String> {
    if result.inconsistent {
        return vec![w.t("leak-decay-inconsistent")];
    }
    let mut said = Vec::new();
    match result.needed_duration_min {
        Some(needed) if needed > test.duration_min => {
            let more = minutes(w, needed - test.duration_min);
            said.push(w.tv("leak-decay-after", &[("needed", minutes(w, needed).into()), ("more", more.into())]));
        }
        Some(_) => said.push(w.t("leak-decay-any-moment")),
        None => said.push(w.t("leak-decay-no-time")),
    }
    said.push(if result.needed_pressure_standard_uncertainty_kpa.is_some() {
        w.tv("leak-decay-gauge", &[("kpa", needed_gauge(w, result).into())])
    } else {
        w.t("says-leak-no-gauge")
    });
    said.push(bottleneck(w, &result.budget));
    said
}

/// What stands in the way most.
fn bottleneck(w: &Words, budget: &[BudgetRow]) -> String {
    use BudgetQuantity::{EndPressure, EndTemperature, StartPressure, StartTemperature, Volume};
    let share = |of: &[BudgetQuantity]| -> f64 {
        budget.iter().filter(|row| of.contains(&row.quantity)).map(|row| row.share).sum()
    };
    let all = [
        (share(&[StartPressure, EndPressure]), "leak-decay-bottleneck-pressure"),
        (share(&[StartTemperature, EndTemperature]), "leak-decay-bottleneck-settle"),
        (share(&[Volume]), "leak-decay-bottleneck-volume"),
    ];
    let (most, key) = all.into_iter().fold(all[0], |best, one| if one.0 > best.0 { one } else { best });
    w.tv(key, &[("share", w.quantity(100.0 * most, 0, "%").into())])
}

/// What a reader should know; what the verdict says already is left out.
pub fn warnings(w: &Words, result: &LeakResult) -> Vec<String> {
    let said = |warning: &LeakWarning| match warning {
        LeakWarning::HighPressure => Some(w.t("says-leak-warn-high")),
        LeakWarning::IdealGasAboveItsRange => Some(w.t("says-leak-warn-ideal")),
        LeakWarning::TemperatureMoved => Some(w.t("leak-decay-warn-temperature")),
        LeakWarning::Inconsistent => None,
    };
    result.warnings.iter().filter_map(said).collect()
}

/// Where the uncertainty comes from, row by row.
pub fn budget(w: &Words, rows: &[BudgetRow]) -> Table {
    let name = |quantity| match quantity {
        BudgetQuantity::StartPressure => "budget-start-pressure",
        BudgetQuantity::EndPressure => "budget-end-pressure",
        BudgetQuantity::StartTemperature => "budget-start-temperature",
        BudgetQuantity::EndTemperature => "budget-end-temperature",
        BudgetQuantity::Volume => "budget-volume",
        BudgetQuantity::Time => "budget-time",
    };
    let row = |row: &BudgetRow| {
        let unit = row.quantity.unit();
        let of_u = if unit == "°C" { "K" } else { unit };
        vec![
            Cell::new(w.t(name(row.quantity))),
            Cell::new(format!("{}\u{a0}{unit}", figure(w, row.estimate))),
            Cell::new(format!("{}\u{a0}{of_u}", figure(w, row.standard_uncertainty))),
            Cell::new(figure(w, row.sensitivity)),
            Cell::new(w.number(row.contribution_cm3_h, 2)),
            Cell::new(w.number(100.0 * row.share, 1)),
        ]
    };
    let mut columns = vec![Column::text(w.t("budget-column-quantity"))];
    columns.extend(
        ["estimate", "uncertainty", "sensitivity", "contribution", "share"]
            .map(|name| Column::number(w.head(format!("budget-column-{name}")))),
    );
    Table { w: *w, caption: w.t("says-leak-budget"), columns, rows: rows.iter().map(row).collect() }
}

/// Pressure over time with the limit and the band of what the readings can be wrong by, and the same as a table.
pub fn chart(w: &Words, test: &DecayTest, gas: &Compressibility, result: &LeakResult) -> Option<(String, Table)> {
    let line = trace(test, gas, result, 4).ok()?;
    let (start, end) = (line.first()?, line.last()?);
    let ahead = result.needed_duration_min.unwrap_or(0.0).min(MOST_AHEAD * test.duration_min);
    let end_min = ahead.max(test.duration_min);
    let at_end = |kpa: f64| start.measured_kpa + (kpa - start.measured_kpa) * end_min / test.duration_min;
    let half = (end.high_kpa - end.low_kpa) / 2.0;
    let measured_end = at_end(end.measured_kpa);
    let limit = format!("{}\u{a0}cm³/h", figure(w, test.limit_cm3_h));
    let mut shown = Leak {
        readings: vec![(0.0, start.measured_kpa), (test.duration_min, end.measured_kpa)],
        end_min,
        tight_kpa: start.measured_kpa,
        limit_end_kpa: at_end(end.at_limit_kpa),
        band: Some([
            (start.measured_kpa - half, start.measured_kpa + half),
            (measured_end - half, measured_end + half),
        ]),
        pressures: Vec::new(),
        times: Vec::new(),
        words: LeakWords {
            title: w.t("leak-chart-title"),
            description: w.tv("leak-chart-description", &[("loss", loss(w, test, result).replace("**", "").into())]),
            tight: w.t("leak-chart-tight"),
            limit: w.tv("leak-chart-limit", &[("limit", limit.into())]),
        },
    };
    let (low, high) = span(&shown);
    shown.pressures = marks(w, low, high, 5, "kPa");
    let minute = |min: f64| (min, minutes(w, min));
    shown.times = vec![(0.0, w.quantity(0.0, 0, "min")), minute(test.duration_min)];
    if end_min > 1.02 * test.duration_min {
        shown.times.push(minute(end_min));
    }
    let rows = line.iter().map(|point| {
        let all = [point.measured_kpa, point.low_kpa, point.high_kpa, point.at_limit_kpa];
        let mut row = vec![Cell::new(w.number(point.at_min, 1))];
        row.extend(all.map(|kpa| Cell::new(w.figure(kpa, 2, "kPa"))));
        row
    });
    let columns = ["minutes", "measured", "low", "high", "limit"];
    let table = Table {
        w: *w,
        caption: w.t("leak-chart-title"),
        columns: columns.map(|name| Column::number(w.head(format!("says-leak-column-{name}")))).into(),
        rows: rows.collect(),
    };
    Some((svg(&picture(&shown), "leak-chart"), table))
}
