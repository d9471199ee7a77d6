//! The answer of the nozzle sum on the Bench: verdict, sets side by side, what warmer gas, a weaker supply or another
//! delivery would do, and the steps.

use super::answered::Answered;
use crate::calc::nozzle::{Asked, Candidate, Found, Sheet, sensitivity, steps};
use crate::charts::svg;
use crate::papers::drawing;
use crate::web::nozzle::further;
use crate::web::nozzle::said::{judged, side_by_side, sizes, verdict};
use crate::words::Words;

/// The whole answer for the set at `shown`.
pub fn answered(
    w: &Words,
    sets: &[(String, Asked)],
    sheets: &[Sheet],
    shown: usize,
    used: &Candidate,
    chosen_mm: Option<f64>,
) -> Option<Answered> {
    let ((_, asked), sheet) = (sets.get(shown)?, sheets.get(shown)?);
    let nozzle = sheet.found.nozzle();
    let (of_sum, is_own) = judged(used, sheet, chosen_mm);
    let spread = w.quantity(nozzle.diameter_standard_uncertainty_mm, 2, "mm");
    let answered = Answered::new(w)
        .verdict(verdict(w, of_sum, sheet, used, is_own))
        .main("nozzle-sizing-needed_mm", format!("{} ± {spread}", w.figure(nozzle.diameter_mm, 2, "mm")))
        .main("bench-nozzle-duty", w.quantity(100.0 * used.duty_at_rated, 0, "%"))
        .main("bench-nozzle-idle", used.idle_pulse_ms.map_or_else(|| "–".to_owned(), |ms| w.quantity(ms, 1, "ms")));
    let answered =
        if sets.len() > 1 { answered.table(side_by_side(w, sets, sheets, shown, "bench-shown")) } else { answered };
    let answered = answered.table(sizes(w, sheet));
    // A sum that answered answers again with one input moved, or says that the gas would be partly liquid then.
    let varied = sensitivity(asked, used.size_mm).unwrap_or_default();
    let answered = match further::sensitivity(w, sheet, used, &varied) {
        Some(table) => answered.table(table),
        None => answered,
    };
    let steps = steps(asked, sheet, used);
    Some(
        answered
            .chart(svg(&drawing::duty(&further::drawn(used, &asked.setting()), w), "duty-chart"))
            .table(further::duty(w, used, asked))
            .results(results(w, sheet))
            .steps(&steps)
            .note(w.t("sizing-note-uncertainty")),
    )
}

fn results<'a>(w: &Words, sheet: &Sheet) -> Vec<(&'a str, Option<String>)> {
    let nozzle = sheet.found.nozzle();
    let mg = |value: f64| Some(w.quantity(value, 2, "mg"));
    let petrol = match &sheet.found {
        Found::Petrol(found) => Some(found.petrol_per_cycle_mg),
        Found::Power(_) => None,
    };
    vec![
        ("step-petrol-dose", petrol.and_then(mg)),
        ("step-dose", mg(nozzle.fuel_per_cycle_mg)),
        ("step-idle-dose", nozzle.idle_fuel_per_cycle_mg.and_then(mg)),
        ("step-window", Some(w.quantity(nozzle.window_ms, 2, "ms"))),
        ("step-open-time", Some(w.quantity(nozzle.open_time_ms, 2, "ms"))),
        ("step-supply", Some(w.quantity(nozzle.upstream_kpa, 0, "kPa"))),
        ("step-flux", Some(w.quantity(nozzle.mass_flux_kg_s_m2, 1, "kg/(s m²)"))),
        ("step-choking", Some(w.number(nozzle.choking_share, 3))),
        ("bench-liquid-dew", nozzle.dew_temperature_c.map(|dew| w.quantity(dew, 0, "°C"))),
    ]
}
