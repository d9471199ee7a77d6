//! A cylinder sheet shown: verdict with reasons, cylinders side by side, the sum step by step, inputs with origin.

use super::cylinder_sizing::{CYLINDERS, FILLING, VEHICLE};
use super::origins::{self, Kept};
use super::reckoned::Reckoned;
use super::{JobPage, reckoning, sum};
use crate::calc::cylinder::{Contents, Stowed, steps, stow_steps};
use crate::model::evidence::{CylinderInputs, CylinderResults, CylinderSet, CylinderSizing, Evidence};
use crate::web::kit::{Cell, Column, Mark, Table, Tone, Verdict};
use crate::words::Words;

/// The whole sheet.
pub fn reckoned(job: &JobPage, body: &Evidence) -> Option<Reckoned> {
    let Evidence::CylinderSizing(one) = body else { return None };
    let (inputs, results) = one.read_back()?;
    let w = job.w();
    let (set, (contents, stowed)) = (inputs.sets.get(inputs.taken)?, results.sets.get(inputs.taken)?);
    let mut tables = Vec::new();
    if inputs.sets.len() > 1 {
        tables.push(side_by_side(&w, &inputs, &results));
    }
    let mut steps = steps(&set.cylinder, contents);
    if let (Some(stowage), Some(stowed)) = (&set.stowage, stowed) {
        steps.extend(stow_steps(&set.cylinder, contents, stowage, stowed));
    }
    tables.push(sum::steps(&w, w.t("sizing-steps"), &steps));
    tables.push(inputs_of(job, one, &inputs, set));
    Some(Reckoned {
        verdict: Some(verdict(&w, set, contents, stowed.as_ref())),
        tables,
        notes: vec![
            w.t("cylinder-note-gauge"),
            w.tv("sizing-note-version", &[("version", one.program_version.as_str().into())]),
        ],
    })
}

fn verdict(w: &Words, set: &CylinderSet, contents: &Contents, stowed: Option<&Stowed>) -> Verdict {
    let reserve = stowed.and_then(|stowed| stowed.reserve_left_kg);
    let is_overloaded = reserve.is_some_and(|left| left < 0.0);
    // That no dew test reaches a full cylinder is so for every gas; it stands below, and is no doubt of its own.
    let is_above = contents.cautions.iter().any(|one| matches!(one, crate::calc::Caution::AboveWorkingPressure { .. }));
    let (tone, mark) = match () {
        () if is_overloaded => (Tone::Stop, Mark::Stops),
        () if is_above || reserve.is_none() => (Tone::Copper, Mark::Undecided),
        () => (Tone::Met, Mark::Met),
    };
    let (mass, volume) = (w.quantity(contents.mass_kg, 1, "kg"), w.quantity(contents.standard_m3, 1, "m³"));
    let title = w.tv("cylinder-title", &[("mass", mass.into()), ("volume", volume.into())]);
    let kg = |value: f64| w.quantity(value, 0, "kg");
    let mut sentences = Vec::new();
    match stowed {
        Some(stowed) => {
            let usable = w.quantity(stowed.usable_kg, 1, "kg");
            let values = [
                ("usable", usable.into()),
                ("range", w.quantity(stowed.range_km, 0, "km").into()),
                ("mass", kg(stowed.added_mass_kg).into()),
            ];
            sentences.push(w.tv("cylinder-range-said", &values));
            sentences.push(match reserve {
                Some(left) if left < 0.0 => w.tv("cylinder-axle-overloaded", &[("over", kg(-left).into())]),
                Some(left) => w.tv("container-axle-holds", &[("left", kg(left).into())]),
                None => w.t("container-axle-unknown"),
            });
        }
        None => sentences.push(w.t("container-not-stowed")),
    }
    if let (Some(at), Some(kpa)) = (set.cylinder.at_temperature_c, contents.settled_pressure_kpa) {
        let values = [
            ("at", w.quantity(at, 0, "°C").into()),
            ("pressure", w.quantity(kpa / 1e3, 1, "MPa").into()),
            ("settled", w.quantity(contents.settled_15c_kpa / 1e3, 1, "MPa").into()),
        ];
        sentences.push(w.tv("cylinder-settles-said", &values));
    }
    sentences.extend(contents.cautions.iter().map(|caution| sum::caution(w, caution)));
    Verdict { tone, mark, title, sentences }
}

fn side_by_side(w: &Words, inputs: &CylinderInputs, results: &CylinderResults) -> Table {
    let opt = |value: Option<f64>, decimals| value.map_or_else(|| "–".to_owned(), |value| w.number(value, decimals));
    let row = |(at, (set, (contents, stowed))): (usize, (&CylinderSet, &(Contents, Option<Stowed>)))| {
        let named = if set.name.is_empty() { w.t(format!("cylinder-set-{}", at + 1)) } else { set.name.clone() };
        let left = stowed.and_then(|stowed| stowed.reserve_left_kg);
        let mark = left.map(|left| if left < 0.0 { Mark::Stops } else { Mark::Met });
        vec![
            Cell::new(named).with_second(if at == inputs.taken { w.t("nozzle-taken") } else { String::new() }),
            Cell::new(w.figure(set.cylinder.volume_l, 1, "L")),
            Cell::new(w.number(contents.mass_kg, 2)),
            Cell::new(w.number(contents.standard_m3, 2)),
            Cell::new(opt(stowed.map(|stowed| stowed.range_km), 0)),
            Cell::new(opt(stowed.map(|stowed| stowed.added_mass_kg), 0)),
            Cell { mark, ..Cell::new(opt(left, 0)) },
        ]
    };
    let mut columns = vec![Column::text(w.t("cylinder-column-set"))];
    columns.extend(
        ["volume", "mass", "standard", "range", "added", "left"]
            .map(|name| Column::number(w.head(format!("cylinder-column-{name}")))),
    );
    let rows = inputs.sets.iter().zip(&results.sets).enumerate().map(row).collect();
    Table { w: *w, caption: w.t("cylinder-side-by-side"), columns, rows }
}

fn inputs_of(job: &JobPage, one: &CylinderSizing, inputs: &CylinderInputs, set: &CylinderSet) -> Table {
    let mut fields = CYLINDERS.inputs_of(inputs.taken);
    fields.extend(reckoning::inputs_of(&FILLING).chain(reckoning::inputs_of(&VEHICLE)));
    let kept = Kept { scope: "cylinder-sizing", typed: &inputs.typed, origins: &one.origins };
    origins::table(job, &kept, &set.cylinder.composition, &fields)
}
