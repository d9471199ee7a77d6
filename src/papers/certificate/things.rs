//! The things a certificate is about: vehicle, keeper, gas system, parts, containers.

use crate::model::paper::certificate::{CertificateContent, ContainerOnPaper};
use crate::model::paper::{GasFuel, PersonalPart};
use crate::words::Words;

use super::Certificate;
use crate::papers::ink::{CELL, SMALL};
use crate::papers::phrases;
use crate::papers::results::dash;
use crate::papers::sheet::Sheet;
use crate::papers::table::{Cell, Column, Table, facts};
use crate::papers::{PaperError, first_unprintable};

/// A fact whose name is the word under `key`.
fn fact(words: &Words, key: &str, value: impl Into<String>) -> (String, String) {
    (words.t(key), value.into())
}

/// The last `count` characters.
fn tail(text: &str, count: usize) -> String {
    let skip = text.chars().count().saturating_sub(count);
    text.chars().skip(skip).collect()
}

pub fn vehicle(sheet: &mut Sheet, content: &CertificateContent, words: &Words) -> Result<(), PaperError> {
    let (vehicle, engine) = (&content.vehicle, &content.engine);
    let make = format!("{} {}", vehicle.make, vehicle.model);
    let plate = match (vehicle.plate.as_str(), vehicle.plate_country.as_str()) {
        ("", _) => words.t("paper-not-registered"),
        (plate, "") => plate.to_owned(),
        (plate, country) => format!("{plate} ({country})"),
    };
    let ends =
        words.tv("paper-vin-ends", &[("last7", tail(&vehicle.vin, 7).into()), ("last4", tail(&vehicle.vin, 4).into())]);
    let cylinders = engine.engine_cylinders.map(|n| words.tn("paper-engine-cylinders", n)).unwrap_or_default();
    let measures = [
        phrases::quantity_if(words, engine.power.as_ref()),
        cylinders,
        phrases::quantity_if(words, engine.displacement.as_ref()),
    ];
    let measures: Vec<_> = measures.into_iter().filter(|part| !part.is_empty()).collect();
    let odometer =
        vehicle.odometer_km.map_or_else(|| words.t("paper-no-odometer"), |km| phrases::kilometres(words, km));
    sheet.section(&words.t("paper-vehicle"), CELL.leading() * 3.0)?;
    facts(
        sheet,
        &[
            fact(words, "paper-make-model", make),
            fact(words, "paper-plate", plate),
            fact(words, phrases::identity_key(&vehicle.vin), &vehicle.vin),
            fact(words, &format!("{}-derived", phrases::identity_key(&vehicle.vin)), ends),
            fact(words, "paper-first-registered", phrases::partial_date(words, &vehicle.first_registered)),
            fact(words, "paper-odometer", odometer),
            fact(words, "paper-type-code", &vehicle.type_code),
            fact(words, "paper-category", &vehicle.category),
            fact(words, "paper-engine", measures.join(", ")),
            fact(words, "paper-engine-code", phrases::dotted(&[&engine.code, &engine.number])),
        ],
    )?;
    sheet.end_section();
    Ok(())
}

/// The name, and beside it the spelling; the spelling alone where no face has the name's letters.
fn name(keeper: &PersonalPart) -> String {
    let is_printable = first_unprintable(&keeper.name).is_none();
    match keeper.name_as_printed.as_str() {
        spelling if !spelling.is_empty() && spelling != keeper.name && is_printable => {
            format!("{} ({spelling})", keeper.name)
        }
        _ => keeper.printed_name().to_owned(),
    }
}

pub fn keeper(sheet: &mut Sheet, paper: &Certificate<'_>, words: &Words) -> Result<(), PaperError> {
    sheet.section(&words.t("paper-keeper"), CELL.leading() * 2.0)?;
    if let Some(keeper) = paper.personal {
        facts(
            sheet,
            &[
                fact(words, "paper-name", name(keeper)),
                fact(words, "paper-address", &keeper.address),
                fact(words, "paper-phone", &keeper.phone),
                fact(words, "paper-mail", &keeper.mail),
            ],
        )?;
    } else {
        sheet.paragraph(&words.t("certificate-keeper-apart"), CELL)?;
    }
    sheet.end_section();
    Ok(())
}

pub fn system(sheet: &mut Sheet, content: &CertificateContent, words: &Words) -> Result<(), PaperError> {
    let system = &content.system;
    sheet.section(&words.t("paper-gas-system"), CELL.leading() * 3.0)?;
    facts(
        sheet,
        &[
            fact(words, "paper-fuel", words.t(format!("paper-fuel-{}", system.fuel.as_str()))),
            fact(words, "paper-system", format!("{} {}", system.make, system.type_name)),
            fact(words, "paper-system-approval", dash(&system.approval_number)),
            fact(words, "paper-approval-holder", &system.approval_holder),
            fact(words, "paper-control-unit", &system.control_unit),
        ],
    )?;
    if !content.changes_for_vehicle_papers.is_empty() {
        let changes = content.changes_for_vehicle_papers.join(" · ");
        sheet.paragraph(&words.tv("paper-vehicle-papers", &[("changes", changes.into())]), CELL)?;
    }
    sheet.end_section();
    Ok(())
}

pub fn parts(sheet: &mut Sheet, content: &CertificateContent, words: &Words) -> Result<(), PaperError> {
    if content.parts.is_empty() {
        return Ok(());
    }
    // A column in which nothing would stand leaves its room to the others.
    let has_made = content.parts.iter().any(|part| !part.made.is_empty());
    let heads = [
        Some("paper-part"),
        Some("paper-maker-and-type"),
        Some("paper-approval-mark"),
        Some("paper-serial"),
        has_made.then_some("paper-made"),
        Some("paper-next-duty"),
    ];
    let mut table = Table::new(heads.into_iter().flatten().map(|head| Column::words(words.t(head))).collect());
    for part in &content.parts {
        let mut duties = if part.next_duty.is_empty() { Cell::new("–") } else { Cell::default() };
        for duty in &part.next_duty {
            // What comes next, further down, says it in full; here it stands in short.
            if content.next_duties.contains(duty) {
                duties = duties.and(phrases::due_in_short(words, duty));
            } else {
                duties = duties.line(phrases::due(words, duty)).and(phrases::dotted(&[&duty.what, &duty.decided_by]));
            }
        }
        let cells = [
            Some(Cell::new(&part.description)),
            Some(Cell::small(dash(&part.maker_and_type))),
            Some(Cell::new(dash(&part.approval_mark))),
            Some(Cell::new(dash(&part.serial_or_batch))),
            has_made.then(|| Cell::new(dash(&phrases::short_month(&part.made)))),
            Some(duties),
        ];
        table.row(cells.into_iter().flatten().collect());
    }
    let is_of_others = content.parts.iter().all(|part| part.is_found);
    let heading = if is_of_others { "paper-parts-of-system" } else { "paper-parts" };
    sheet.section(&words.t(heading), table.least_height()?)?;
    table.draw(sheet)?;
    sheet.end_section();
    Ok(())
}

pub fn removed(sheet: &mut Sheet, content: &CertificateContent, words: &Words) -> Result<(), PaperError> {
    if content.removed.is_empty() {
        return Ok(());
    }
    let heads =
        ["paper-part", "paper-approval-mark", "paper-serial", "paper-removed-on", "paper-why", "paper-whereabouts"];
    let mut table = Table::new(heads.into_iter().map(|head| Column::words(words.t(head))).collect());
    for part in &content.removed {
        table.row(vec![
            Cell::new(&part.description).and(&part.maker_and_type),
            Cell::new(dash(&part.approval_mark)),
            Cell::new(dash(&part.serial_or_batch)),
            Cell::new(words.date(part.removed_on)),
            Cell::new(dash(&part.reason)),
            Cell::new(dash(&part.whereabouts)),
        ]);
    }
    sheet.section(&words.t("paper-removed"), table.least_height()?)?;
    table.draw(sheet)?;
    sheet.end_section();
    Ok(())
}

pub fn containers(sheet: &mut Sheet, content: &CertificateContent, words: &Words) -> Result<(), PaperError> {
    let kind = if content.system.fuel == GasFuel::Lpg { "container" } else { "cylinder" };
    for (index, container) in content.containers.iter().enumerate() {
        let heading = words
            .tv(&format!("paper-{kind}-of"), &[("n", (index + 1).into()), ("all", content.containers.len().into())]);
        sheet.section(&heading, CELL.leading() * 4.0)?;
        facts(sheet, &container_facts(container, kind, words))?;
        if !container.findings.is_empty() {
            sheet.keep(CELL.leading() * 3.0);
            sheet.paragraph(&words.t("paper-findings"), SMALL)?;
            sheet.list(&container.findings, CELL)?;
        }
        sheet.end_section();
    }
    Ok(())
}

fn container_facts(container: &ContainerOnPaper, kind: &str, words: &Words) -> Vec<(String, String)> {
    let capacity = words.tv(
        "paper-capacity-both",
        &[
            ("stamped", phrases::quantity(words, &container.water_capacity).into()),
            ("floor", words.integer(container.water_capacity_floor_l).into()),
        ],
    );
    let fill = container.fill_limit_percent.map(|percent| {
        // Rounded down, as the capacity is: the paper never says more gas than fits.
        let litres = container.water_capacity.number().map_or(0.0, |litres| (litres * percent as f64 / 100.0).floor());
        words.tv("paper-fill-both", &[("percent", percent.into()), ("litres", words.number(litres, 0).into())])
    });
    let found = if container.is_found { words.t("paper-found") } else { String::new() };
    let location = phrases::dotted(&[&container.location, &found]);
    let end = container.end_of_life_on.map_or_else(|| words.t("paper-no-end-of-life"), |day| words.date(day));
    vec![
        fact(words, "paper-maker", &container.maker),
        fact(words, "paper-serial", &container.serial),
        fact(words, "paper-approval-mark", &container.approval_mark),
        fact(words, "paper-shape", &container.shape),
        fact(words, "paper-water-capacity", capacity),
        fact(words, "paper-fill-limit", fill.unwrap_or_default()),
        fact(words, "paper-working-pressure", phrases::quantity_if(words, container.working_pressure.as_ref())),
        fact(words, "paper-test-pressure", phrases::quantity_if(words, container.test_pressure.as_ref())),
        fact(words, "paper-made", phrases::partial_date(words, &container.made)),
        fact(words, "paper-last-tested", phrases::partial_date(words, &container.last_tested)),
        fact(words, "paper-inspection-kind", &container.inspection_kind),
        fact(words, "paper-next-test", phrases::day_if(words, container.next_test_on)),
        fact(words, &format!("paper-{kind}-end-of-life"), end),
        fact(words, "paper-location", location),
        fact(words, "paper-inspected-by", &container.inspected_by),
    ]
}
