//! A nozzle sheet shown: verdict with reasons, inputs with their origin, sets side by side, sizes, the sum step by step.

use super::facts::{Fact, Facts};
use super::origins::{self, Kept};
use super::reckoned::Reckoned;
use super::{JobPage, sum};
use crate::calc::nozzle::{Asked, Verdict as OfSum, steps};
use crate::model::evidence::{Evidence, NozzleInputs, NozzleSizing, NozzleVerdict};
use crate::web::kit::Table;
use crate::web::nozzle::engine::{NUMBERS, PETROL};
use crate::web::nozzle::further;
use crate::web::nozzle::said::{side_by_side, sizes, verdict};
use crate::web::nozzle::sets::{MEASURED, OF_A_SET};

/// The summary of an entry.
pub fn facts(job: &JobPage, body: &Evidence, facts: Facts) -> Vec<Fact> {
    let Evidence::NozzleSizing(one) = body else { return Vec::new() };
    let Some((inputs, results)) = one.read_back() else { return Vec::new() };
    let sheet = &results.sheets[inputs.taken];
    let w = job.w();
    let spread = sheet.found.nozzle().diameter_standard_uncertainty_mm;
    let needed = format!("{} ± {}", w.figure(one.needed_mm, 2, "mm"), w.quantity(spread, 2, "mm"));
    facts.text("needed_mm", needed).opt_number("chosen_mm", one.chosen_mm, 2, "mm").done()
}

/// The whole sheet.
pub fn reckoned(job: &JobPage, body: &Evidence) -> Option<Reckoned> {
    let Evidence::NozzleSizing(one) = body else { return None };
    let (inputs, results) = one.read_back()?;
    let w = job.w();
    let (sheet, (_, asked)) = (results.sheets.get(inputs.taken)?, inputs.sets.get(inputs.taken)?);
    let used = one.used(sheet)?;
    let nozzle = sheet.found.nozzle();
    let is_own = one.chosen_mm.is_some() && one.chosen_mm != nozzle.chosen_mm;
    let mut tables = Vec::new();
    if inputs.sets.len() > 1 {
        tables.push(side_by_side(&w, &inputs.sets, &results.sheets, inputs.taken, "nozzle-taken"));
    }
    tables.push(sizes(&w, sheet));
    tables.extend(further::sensitivity(&w, sheet, &used, &results.sensitivity));
    tables.push(further::duty(&w, &used, asked));
    tables.push(sum::steps(&w, w.t("sizing-steps"), &steps(asked, sheet, &used)));
    tables.push(inputs_of(job, one, &inputs, asked));
    Some(Reckoned {
        verdict: Some(verdict(&w, of_sum(one.verdict), sheet, &used, is_own)),
        tables,
        notes: vec![
            w.t("sizing-note-uncertainty"),
            w.tv("sizing-note-version", &[("version", one.program_version.as_str().into())]),
        ],
    })
}

/// The verdict that was kept, as the sum names it.
fn of_sum(verdict: NozzleVerdict) -> OfSum {
    match verdict {
        NozzleVerdict::Fits => OfSum::Fits,
        NozzleVerdict::TooSmall => OfSum::TooSmall,
        NozzleVerdict::TooLarge => OfSum::TooLarge,
        NozzleVerdict::NoneFits => OfSum::NoneFits,
    }
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
    fields.push((of_set(MEASURED), ""));
    fields.push((of_set("sizes_mm"), "mm"));
    let kept = Kept { scope: "nozzle-sizing", typed: &inputs.typed, origins: &one.origins };
    origins::table(job, &kept, asked.composition(), &fields)
}
