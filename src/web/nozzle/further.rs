//! What is shown beside a nozzle sum: how the answer moves when one input does, and the duty over the speeds.

use crate::calc::nozzle::further::{Change, Then};
use crate::calc::nozzle::{Asked, Candidate, Setting, Sheet, Varied, duty_over_speed};
use crate::model::paper::sizing_sheet::DutyOnPaper;
use crate::web::kit::{Cell, Column, Mark, Table};
use crate::words::Words;

/// One input changed at a time, under the sheet as it is; none in sheets without.
pub fn sensitivity(w: &Words, sheet: &Sheet, used: &Candidate, varied: &[Varied]) -> Option<Table> {
    if varied.is_empty() {
        return None;
    }
    let nozzle = sheet.found.nozzle();
    let as_it_is = Then {
        diameter_mm: nozzle.diameter_mm,
        chosen_mm: nozzle.chosen_mm,
        duty_at_rated: used.duty_at_rated,
        idle_pulse_ms: used.idle_pulse_ms,
    };
    let named = |change: &Change| match change {
        Change::Warmer { by_k } => w.tv("change-warmer", &[("by", w.quantity(*by_k, 0, "K").into())]),
        Change::LowerSupply { by_kpa } => w.tv("change-lower-supply", &[("by", w.quantity(*by_kpa, 0, "kPa").into())]),
        Change::Mix { preset } => w.tv("change-mix", &[("mix", w.t(format!("fuel-mix-{preset}")).into())]),
    };
    let mm = |value: Option<f64>| value.map_or_else(|| "–".to_owned(), |mm| w.figure(mm, 2, "mm"));
    let row = |name: String, then: Option<Then>| {
        let Some(then) = then else {
            return vec![Cell::new(name).with_second(w.t("nozzle-change-wet"))];
        };
        let idle = then.idle_pulse_ms.map_or_else(|| "–".to_owned(), |ms| w.number(ms, 1));
        vec![
            Cell::new(name),
            Cell::new(mm(Some(then.diameter_mm))),
            Cell::new(mm(then.chosen_mm)),
            Cell::new(w.number(100.0 * then.duty_at_rated, 0)),
            Cell::new(idle),
        ]
    };
    let mut rows = vec![row(w.t("change-none"), Some(as_it_is))];
    rows.extend(varied.iter().map(|one| row(named(&one.change), one.then)));
    let mut columns = vec![Column::text(w.t("change-column-what"))];
    columns.extend(
        ["needed", "chosen", "duty-used", "idle"].map(|name| Column::number(w.head(format!("nozzle-column-{name}")))),
    );
    Some(Table { w: *w, caption: w.t("change-caption"), columns, rows })
}

/// What the drawing of a nozzle's duty shows.
pub fn drawn(used: &Candidate, setting: &Setting) -> DutyOnPaper {
    DutyOnPaper {
        size_mm: used.size_mm,
        points: duty_over_speed(used, setting.rated_rpm),
        max_duty: setting.max_duty,
        rated: (setting.rated_rpm, used.duty_at_rated),
        limit_rpm: used.limit_rpm,
    }
}

/// Duty of the nozzle over the speeds of the engine, with the dose of rated power at each.
pub fn duty(w: &Words, used: &Candidate, asked: &Asked) -> Table {
    let setting = asked.setting();
    let row = |(rpm, duty): (f64, f64)| {
        let (mark, says) = if duty > setting.max_duty { (Mark::Stops, "over") } else { (Mark::Met, "within") };
        let open = Cell::new(w.number(100.0 * duty, 0)).marked_as(mark, w.t(format!("nozzle-duty-{says}")));
        vec![Cell::new(w.number(rpm, 0)), open]
    };
    let rows = duty_over_speed(used, setting.rated_rpm).into_iter().map(row).collect();
    let columns = vec![Column::number(w.head("nozzle-column-speed")), Column::number(w.head("nozzle-column-open"))];
    let size = w.quantity(used.size_mm, 2, "mm");
    let most = w.quantity(100.0 * setting.max_duty, 0, "%");
    let caption = w.tv("nozzle-duty-caption", &[("size", size.into()), ("most", most.into())]);
    Table { w: *w, caption, columns, rows }
}
