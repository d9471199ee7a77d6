//! A nozzle sheet shown: verdict with reasons, inputs with their origin, sets side by side, sizes, the sum step by step.

use super::facts::{Fact, Facts};
use super::nozzle_sizing::{NUMBERS, OF_A_SET, PETROL};
use super::origins::{self, Kept};
use super::reckoned::Reckoned;
use super::{JobPage, nozzle_further, sum};
use crate::calc::nozzle::{Asked, Candidate, Sheet, Verdict as OfSum, steps};
use crate::model::evidence::{Evidence, NozzleInputs, NozzleResults, NozzleSizing, NozzleVerdict};
use crate::web::kit::{Cell, Column, Mark, Table, Tone, Verdict};
use crate::words::Words;

/// The summary of an entry.
pub fn facts(job: &JobPage, body: &Evidence, facts: Facts) -> Vec<Fact> {
    let Evidence::NozzleSizing(one) = body else { return Vec::new() };
    let Some((inputs, results)) = one.read_back() else { return Vec::new() };
    let sheet = &results.sheets[inputs.taken];
    let w = job.w();
    let spread = sheet.found.nozzle().diameter_standard_uncertainty_mm;
    let needed = format!("{} ± {}", w.number(one.needed_mm, 2), w.quantity(spread, 2, "mm"));
    facts.text("needed_mm", needed).opt_number("chosen_mm", one.chosen_mm, 2, "mm").done()
}

/// The whole sheet.
pub fn reckoned(job: &JobPage, body: &Evidence) -> Option<Reckoned> {
    let Evidence::NozzleSizing(one) = body else { return None };
    let (inputs, results) = one.read_back()?;
    let w = job.w();
    let (sheet, (_, asked)) = (results.sheets.get(inputs.taken)?, inputs.sets.get(inputs.taken)?);
    let used = one.used(sheet)?;
    let mut tables = Vec::new();
    if inputs.sets.len() > 1 {
        tables.push(side_by_side(&w, &inputs, &results));
    }
    tables.push(sizes(&w, sheet));
    tables.extend(nozzle_further::sensitivity(&w, sheet, &used, &results.sensitivity));
    tables.push(nozzle_further::duty(&w, &used, asked));
    tables.push(sum::steps(&w, w.t("sizing-steps"), &steps(asked, sheet, &used)));
    tables.push(inputs_of(job, one, &inputs, asked));
    Some(Reckoned {
        verdict: Some(verdict(&w, one, sheet, &used)),
        tables,
        notes: vec![
            w.t("sizing-note-uncertainty"),
            w.tv("sizing-note-version", &[("version", one.program_version.as_str().into())]),
        ],
    })
}

fn verdict(w: &Words, one: &NozzleSizing, sheet: &Sheet, used: &Candidate) -> Verdict {
    let nozzle = sheet.found.nozzle();
    let is_own = one.chosen_mm.is_some() && one.chosen_mm != nozzle.chosen_mm;
    let (tone, mark) = match one.verdict {
        NozzleVerdict::Fits => (Tone::Met, Mark::Met),
        _ => (Tone::Stop, Mark::Stops),
    };
    let size = w.quantity(used.size_mm, 2, "mm");
    let title = w.tv(
        "nozzle-title",
        &[("verdict", w.t(format!("nozzle-verdict-{}", one.verdict)).into()), ("size", size.clone().into())],
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

fn mark_of(verdict: OfSum) -> (Mark, &'static str) {
    match verdict {
        OfSum::Fits => (Mark::Met, "fits"),
        OfSum::TooSmall => (Mark::Stops, "too-small"),
        OfSum::TooLarge => (Mark::Stops, "too-large"),
        OfSum::NoneFits => (Mark::Stops, "none-fits"),
    }
}

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
    ["duty", "limit", "pulse", "idle"].map(|name| Column::number(w.t(format!("nozzle-column-{name}")))).into()
}

fn sizes(w: &Words, sheet: &Sheet) -> Table {
    let row = |candidate: &Candidate| {
        let (mark, code) = mark_of(candidate.verdict);
        let mut row = vec![Cell::new(w.number(candidate.size_mm, 2))];
        row.extend(of_candidate(w, candidate));
        row.push(Cell::new(w.t(format!("nozzle-size-{code}"))).marked(mark));
        row
    };
    let mut columns = vec![Column::text(w.t("nozzle-column-size"))];
    columns.extend(of_candidate_columns(w));
    columns.push(Column::text(w.t("nozzle-column-verdict")));
    let rows = sheet.found.nozzle().candidates.iter().map(row).collect();
    Table { w: *w, caption: w.t("nozzle-sizes"), columns, rows }
}

fn side_by_side(w: &Words, inputs: &NozzleInputs, results: &NozzleResults) -> Table {
    let row = |(at, ((name, asked), sheet)): (usize, (&(String, Asked), &Sheet))| {
        let nozzle = sheet.found.nozzle();
        let (mark, code) = mark_of(nozzle.verdict);
        let is_taken = at == inputs.taken;
        let named = if name.is_empty() { w.t(format!("set-{}", at + 1)) } else { name.clone() };
        let setting = asked.setting();
        let mut row = vec![
            Cell::new(named).with_second(if is_taken { w.t("nozzle-taken") } else { String::new() }),
            Cell::new(w.number(setting.supply_over_manifold_kpa, 0)),
            Cell::new(w.number(nozzle.diameter_mm, 2)),
            Cell::new(nozzle.chosen_mm.map_or_else(|| "–".to_owned(), |mm| w.number(mm, 2))),
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
            .map(|name| Column::number(w.t(format!("nozzle-column-{name}")))),
    );
    columns.push(Column::text(w.t("nozzle-column-verdict")));
    let rows = inputs.sets.iter().zip(&results.sheets).enumerate().map(row).collect();
    Table { w: *w, caption: w.t("nozzle-side-by-side"), columns, rows }
}

/// Every input of the taken set with where it comes from.
fn inputs_of(job: &JobPage, one: &NozzleSizing, inputs: &NozzleInputs, asked: &Asked) -> Table {
    let is_petrol = matches!(asked, Asked::Petrol(_));
    let of_power = ["rated_power_kw", "brake_efficiency", "idle_rpm", "idle_fuel_power_kw"];
    let numbers = NUMBERS.iter().filter(|(name, ..)| !(is_petrol && of_power.contains(name)));
    let numbers = numbers.chain(PETROL.iter().filter(|_| is_petrol));
    let mut fields: Vec<(String, &str)> = numbers
        .map(|(name, unit, ..)| ((*name).to_owned(), if name.ends_with("g_min") { "g/min" } else { unit.symbol() }))
        .collect();
    let of_set = |name: &str| format!("sets[{}][{name}]", inputs.taken);
    fields.extend(OF_A_SET.iter().map(|(name, unit, ..)| (of_set(name), unit.symbol())));
    fields.push((of_set("sizes_mm"), "mm"));
    let kept = Kept { scope: "nozzle-sizing", typed: &inputs.typed, origins: &one.origins };
    origins::table(job, &kept, asked.composition(), &fields)
}
