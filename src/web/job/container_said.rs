//! A container sheet shown: verdict with reasons, containers side by side, the sum step by step, inputs with origin.

use super::container_sizing::{CONTAINERS, FILLING, VEHICLE};
use super::origins::{self, Kept};
use super::reckoned::Reckoned;
use super::{JobPage, reckoning, sum};
use crate::calc::container::{Contents, Stowed, steps};
use crate::model::evidence::{ContainerInputs, ContainerResults, ContainerSet, ContainerSizing, Evidence};
use crate::web::kit::{Cell, Column, Mark, Table, Tone, Verdict};
use crate::words::Words;

/// The whole sheet.
pub fn reckoned(job: &JobPage, body: &Evidence) -> Option<Reckoned> {
    let Evidence::ContainerSizing(one) = body else { return None };
    let (inputs, results) = one.read_back()?;
    let w = job.w();
    let (set, (contents, stowed)) = (inputs.sets.get(inputs.taken)?, results.sets.get(inputs.taken)?);
    let mut tables = Vec::new();
    if inputs.sets.len() > 1 {
        tables.push(side_by_side(&w, &inputs, &results));
    }
    let steps = steps(&set.container, contents, set.stowage.as_ref().zip(stowed.as_ref()));
    tables.push(sum::steps(&w, w.t("sizing-steps"), &steps));
    tables.push(inputs_of(job, one, &inputs, set));
    Some(Reckoned {
        verdict: Some(verdict(&w, set, contents, stowed.as_ref())),
        tables,
        notes: vec![
            w.t("container-note-stop"),
            w.tv("sizing-note-version", &[("version", one.program_version.as_str().into())]),
        ],
    })
}

fn verdict(w: &Words, set: &ContainerSet, contents: &Contents, stowed: Option<&Stowed>) -> Verdict {
    let liquid = w.quantity(contents.liquid_l, 1, "L");
    let reserve = stowed.and_then(|stowed| stowed.reserve_left_kg);
    let is_overloaded = reserve.is_some_and(|left| left < 0.0);
    let is_doubtful = !contents.cautions.is_empty() || reserve.is_none();
    let (tone, mark) = match () {
        () if is_overloaded => (Tone::Stop, Mark::Stops),
        () if is_doubtful => (Tone::Copper, Mark::Undecided),
        () => (Tone::Met, Mark::Met),
    };
    let title = match stowed {
        Some(stowed) => {
            let usable = w.quantity(stowed.usable_l, 1, "L");
            w.tv("container-title", &[("liquid", liquid.into()), ("usable", usable.into())])
        }
        None => w.tv("container-title-plain", &[("liquid", liquid.into())]),
    };
    let mut sentences = Vec::new();
    match stowed {
        Some(stowed) => {
            let (range, mass) = (w.quantity(stowed.range_km, 0, "km"), w.quantity(stowed.added_mass_kg, 0, "kg"));
            sentences.push(w.tv("container-range-said", &[("range", range.into()), ("mass", mass.into())]));
            let kg = |value: f64| w.quantity(value, 0, "kg");
            sentences.push(match reserve {
                Some(left) if left < 0.0 => w.tv("container-axle-overloaded", &[("over", kg(-left).into())]),
                Some(left) => w.tv("container-axle-holds", &[("left", kg(left).into())]),
                None => w.t("container-axle-unknown"),
            });
        }
        None => sentences.push(w.t("container-not-stowed")),
    }
    let c = |value: f64| w.quantity(value, 0, "°C");
    let filled = c(set.container.temperature_c);
    match (contents.liquid_full_temperature_c, contents.liquid_full_if_filled_10_k_colder_c) {
        (Some(full), Some(colder)) => sentences.push(w.tv(
            "container-full-said",
            &[("filled", filled.into()), ("full", c(full).into()), ("colder", c(colder).into())],
        )),
        (Some(full), None) => {
            sentences.push(w.tv("container-full-said-one", &[("filled", filled.into()), ("full", c(full).into())]));
        }
        (None, _) => {}
    }
    sentences.extend(contents.cautions.iter().map(|caution| sum::caution(w, caution)));
    Verdict { tone, mark, title, sentences }
}

fn side_by_side(w: &Words, inputs: &ContainerInputs, results: &ContainerResults) -> Table {
    let opt = |value: Option<f64>, decimals| value.map_or_else(|| "–".to_owned(), |value| w.number(value, decimals));
    let row = |(at, (set, (contents, stowed))): (usize, (&ContainerSet, &(Contents, Option<Stowed>)))| {
        let named = if set.name.is_empty() { w.t(format!("container-{}", at + 1)) } else { set.name.clone() };
        let left = stowed.and_then(|stowed| stowed.reserve_left_kg);
        let mark = left.map(|left| if left < 0.0 { Mark::Stops } else { Mark::Met });
        let full = contents.liquid_full_temperature_c;
        vec![
            Cell::new(named).with_second(if at == inputs.taken { w.t("nozzle-taken") } else { String::new() }),
            Cell::new(w.figure(set.container.gross_volume_l, 1, "L")),
            Cell::new(w.figure(contents.liquid_l, 1, "L")),
            Cell::new(opt(stowed.map(|stowed| stowed.range_km), 0)),
            Cell::new(opt(stowed.map(|stowed| stowed.added_mass_kg), 0)),
            Cell { mark, ..Cell::new(opt(left, 0)) },
            Cell::new(full.map_or_else(|| "–".to_owned(), |c| w.figure(c, 0, "°C"))),
        ]
    };
    let mut columns = vec![Column::text(w.t("container-column-set"))];
    columns.extend(
        ["gross", "liquid", "range", "mass", "left", "full"]
            .map(|name| Column::number(w.head(format!("container-column-{name}")))),
    );
    let rows = inputs.sets.iter().zip(&results.sets).enumerate().map(row).collect();
    Table { w: *w, caption: w.t("container-side-by-side"), columns, rows }
}

fn inputs_of(job: &JobPage, one: &ContainerSizing, inputs: &ContainerInputs, set: &ContainerSet) -> Table {
    let mut fields = CONTAINERS.inputs_of(inputs.taken);
    fields.extend(reckoning::inputs_of(&FILLING).chain(reckoning::inputs_of(&VEHICLE)));
    let kept = Kept { scope: "container-sizing", typed: &inputs.typed, origins: &one.origins };
    origins::table(job, &kept, &set.container.composition, &fields)
}
