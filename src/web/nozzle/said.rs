//! What the nozzle sum says: verdict with reasons, every size, sets side by side.

use crate::calc::nozzle::{Asked, Candidate, Sheet, Verdict as OfSum};
use crate::web::kit::{Cell, Column, Mark, Table, Tone, Verdict};
use crate::web::sum;
use crate::words::Words;

/// The verdict on the nozzle that is used. A size that somebody chose over the sum's is judged by itself.
pub fn verdict(w: &Words, judged: OfSum, sheet: &Sheet, used: &Candidate, is_own: bool) -> Verdict {
    let nozzle = sheet.found.nozzle();
    let (mark, code) = mark_of(judged);
    let tone = if judged == OfSum::Fits { Tone::Met } else { Tone::Stop };
    let size = w.quantity(used.size_mm, 2, "mm");
    let title = w.tv(
        "nozzle-title",
        &[("verdict", w.t(format!("nozzle-verdict-{code}")).into()), ("size", size.clone().into())],
    );
    let mut sentences = Vec::new();
    if is_own {
        let sum_takes = nozzle.chosen_mm.map(|mm| w.quantity(mm, 2, "mm"));
        let sum_takes = sum_takes.unwrap_or_else(|| w.t("nozzle-reason-no-size"));
        let duty = w.quantity(100.0 * used.duty_at_rated, 0, "%");
        sentences
            .push(w.tv("nozzle-own-size", &[("size", size.into()), ("sum", sum_takes.into()), ("duty", duty.into())]));
        if let Some(pulse) = used.idle_pulse_ms {
            sentences.push(w.tv("nozzle-own-idle", &[("pulse", w.quantity(pulse, 1, "ms").into())]));
        }
    } else {
        sentences.extend(nozzle.reasons.iter().map(|reason| sum::reason(w, reason)));
    }
    sentences.extend(nozzle.cautions.iter().map(|caution| sum::caution(w, caution)));
    sentences.push(w.t("nozzle-beginning"));
    Verdict { tone, mark, title, sentences }
}

/// A size somebody chose is judged by itself; the sum's own verdict looks at the whole list.
pub fn judged(candidate: &Candidate, sheet: &Sheet, chosen_mm: Option<f64>) -> (OfSum, bool) {
    let nozzle = sheet.found.nozzle();
    let is_own = chosen_mm.is_some() && chosen_mm != nozzle.chosen_mm;
    (if is_own { candidate.verdict } else { nozzle.verdict }, is_own)
}

/// Mark and code of a verdict of the sum.
pub fn mark_of(verdict: OfSum) -> (Mark, &'static str) {
    match verdict {
        OfSum::Fits => (Mark::Met, "fits"),
        OfSum::TooSmall => (Mark::Stops, "too-small"),
        OfSum::TooLarge => (Mark::Stops, "too-large"),
        OfSum::NoneFits => (Mark::Stops, "none-fits"),
    }
}

/// Duty, speed limit, pulse at rated power and at idle.
fn of_candidate(w: &Words, candidate: &Candidate) -> Vec<Cell> {
    let idle = candidate.idle_pulse_ms.map_or_else(|| "–".to_owned(), |ms| w.number(ms, 1));
    vec![
        Cell::new(w.number(100.0 * candidate.duty_at_rated, 0)),
        Cell::new(w.number((candidate.limit_rpm / 10.0).round() * 10.0, 0)),
        Cell::new(w.number(candidate.rated_pulse_ms, 1)),
        Cell::new(idle),
    ]
}

fn of_candidate_columns(w: &Words) -> Vec<Column> {
    ["duty", "limit", "pulse", "idle"].map(|name| Column::number(w.head(format!("nozzle-column-{name}")))).into()
}

/// Every size of the list.
pub fn sizes(w: &Words, sheet: &Sheet) -> Table {
    let row = |candidate: &Candidate| {
        let (mark, code) = mark_of(candidate.verdict);
        let mut row = vec![Cell::new(w.figure(candidate.size_mm, 2, "mm"))];
        row.extend(of_candidate(w, candidate));
        row.push(Cell::new(w.t(format!("nozzle-size-{code}"))).marked(mark));
        row
    };
    let mut columns = vec![Column::text(w.head("nozzle-column-size"))];
    columns.extend(of_candidate_columns(w));
    columns.push(Column::text(w.t("nozzle-column-verdict")));
    let rows = sheet.found.nozzle().candidates.iter().map(row).collect();
    Table { w: *w, caption: w.t("nozzle-sizes"), columns, rows }
}

/// Sets in one table; the one at `taken` says `taken_key` under its name.
pub fn side_by_side(w: &Words, sets: &[(String, Asked)], sheets: &[Sheet], taken: usize, taken_key: &str) -> Table {
    let row = |(at, ((name, asked), sheet)): (usize, (&(String, Asked), &Sheet))| {
        let nozzle = sheet.found.nozzle();
        let (mark, code) = mark_of(nozzle.verdict);
        let is_taken = at == taken;
        let named = if name.is_empty() { w.t(format!("set-{}", at + 1)) } else { name.clone() };
        let setting = asked.setting();
        let mut row = vec![
            Cell::new(named).with_second(if is_taken { w.t(taken_key) } else { String::new() }),
            Cell::new(w.figure(setting.supply_over_manifold_kpa, 0, "kPa")),
            Cell::new(w.figure(nozzle.diameter_mm, 2, "mm")),
            Cell::new(nozzle.chosen_mm.map_or_else(|| "–".to_owned(), |mm| w.figure(mm, 2, "mm"))),
        ];
        if let Some(used) = nozzle.candidate(nozzle.used_mm) {
            let mut cells = of_candidate(w, &used);
            // Duty, speed limit and idle pulse tell sets apart; the pulse itself does not.
            cells.remove(2);
            row.extend(cells);
        }
        row.push(Cell::new(w.t(format!("nozzle-verdict-{code}"))).marked(mark));
        row
    };
    let mut columns = vec![Column::text(w.t("nozzle-column-set"))];
    columns.extend(
        ["supply", "needed", "chosen", "duty", "limit", "idle"]
            .map(|name| Column::number(w.head(format!("nozzle-column-{name}")))),
    );
    columns.push(Column::text(w.t("nozzle-column-verdict")));
    let rows = sets.iter().zip(sheets).enumerate().map(row).collect();
    Table { w: *w, caption: w.t("nozzle-side-by-side"), columns, rows }
}
