//! The test record: the items of ISO/IEC 17025:2017, 7.8.2.1, and each leak test in full.

use crate::model::branch::PaperSize;
use crate::model::paper::measured::DecisionRule;
use crate::model::paper::test_record::{LeakTestOnPaper, TestRecordContent};
use crate::words::Words;

use super::facts;
use super::ink::{CELL, Ink, LEAD, SMALL, Style, TEXT};
use super::outline::{self, Outline};
use super::sheet::{LEFT, Sheet, WIDTH};
use super::tags::Role;
use super::{PaperError, certificate, phrases, records, results};

/// The record as a PDF. The same input gives the same bytes.
///
/// Errors: a character that no face has.
pub fn test_record(content: &TestRecordContent, words: &Words, size: PaperSize) -> Result<Vec<u8>, PaperError> {
    let values = [("number", (&content.number).into()), ("date", words.date(content.issued_on).into())];
    let outline = Outline {
        shop: &content.shop,
        size,
        title: &content.title,
        number: &content.number,
        under_title: words.tv("record-number-issued", &values),
        lead: String::new(),
        aside: outline::aside(&content.rule_sets, words),
        foot: content.title.clone(),
        language: &content.language,
        is_demonstration: content.is_demonstration,
        made_at: content.ended_at.max(content.issued_on.midnight().assume_utc()),
    };
    let mut sheet = outline.open()?;
    if let Some(supersedes) = &content.supersedes {
        let values = [("number", (&supersedes.number).into()), ("reason", (&supersedes.reason).into())];
        sheet.paragraph(&words.tv("record-replaces", &values), TEXT.bold())?;
    }
    sheet.y += 5.0;
    sheet.text(Role::P, &records::lead(words, &content.beside_of, words.t("record-lead")), LEAD, WIDTH * 0.94)?;
    body(&mut sheet, content, words)?;
    item(&mut sheet, content, words)?;
    conditions(&mut sheet, content, words)?;
    results::draw(&mut sheet, &content.measured, words)?;
    for leak in &content.leak_tests {
        leak_test(&mut sheet, leak, words)?;
    }
    results::instruments(&mut sheet, &content.instruments, words)?;
    results::entered_later(&mut sheet, &content.entered_later, words)?;
    outline::list(&mut sheet, &words.t("record-customer-supplied"), &content.customer_supplied)?;
    if !content.cautions.is_empty() {
        sheet.section(&words.t("paper-cautions"), CELL.leading())?;
        sheet.list(&content.cautions, SMALL)?;
        sheet.end_section();
    }
    closing(&mut sheet, content, words)?;
    outline.close(sheet, words)
}

fn body(sheet: &mut Sheet, content: &TestRecordContent, words: &Words) -> Result<(), PaperError> {
    let or = |text: &str, key: &str| if text.is_empty() { words.t(key) } else { text.to_owned() };
    facts::section(
        sheet,
        &words.t("record-body"),
        &[
            (words.t("record-customer"), content.customer_name.clone()),
            (words.t("record-contact"), content.customer_contact.clone()),
            (words.t("record-place"), content.place.clone()),
            (words.t("record-job"), content.job_number.clone()),
            (words.t("record-method"), content.method.clone()),
            (words.t("record-received"), words.date(content.received_on)),
            (words.t("record-began"), phrases::instant(words, content.began_at)),
            (words.t("record-ended"), phrases::instant(words, content.ended_at)),
            (words.t("record-sampling"), or(&content.sampling, "record-no-sampling")),
            (words.t("record-deviations"), or(&content.deviations, "record-no-deviations")),
        ],
    )
}

fn item(sheet: &mut Sheet, content: &TestRecordContent, words: &Words) -> Result<(), PaperError> {
    let item = &content.item;
    facts::section(
        sheet,
        &words.t("record-item"),
        &[
            (words.t("record-vehicle"), item.vehicle.clone()),
            (words.t("paper-plate"), item.plate.clone()),
            (words.t(phrases::identity_key(&item.vin)), item.vin.clone()),
            (words.t("paper-odometer"), item.odometer_km.map(|km| phrases::kilometres(words, km)).unwrap_or_default()),
            (words.t("paper-fuel"), words.t(format!("paper-fuel-{}", item.fuel.as_str()))),
            (words.t("record-tested"), item.tested.clone()),
            (words.t("record-condition"), item.condition.clone()),
        ],
    )
}

fn conditions(sheet: &mut Sheet, content: &TestRecordContent, words: &Words) -> Result<(), PaperError> {
    if content.conditions.is_empty() {
        return Ok(());
    }
    let pairs: Vec<_> = content
        .conditions
        .iter()
        .map(|condition| (condition.name.clone(), phrases::quantity(words, &condition.value)))
        .collect();
    facts::section(sheet, &words.t("record-conditions"), &pairs)
}

fn leak_test(sheet: &mut Sheet, leak: &LeakTestOnPaper, words: &Words) -> Result<(), PaperError> {
    let heading = words.tv("record-leak", &[("section", (&leak.section).into())]);
    sheet.section(&heading, CELL.leading() * 6.0)?;
    let rule = if leak.rate.is_some() { DecisionRule::Guarded } else { DecisionRule::Observed };
    let (verdict, ink) = phrases::verdict(words, leak.verdict, rule);
    sheet.paragraph(&verdict, Style { size: 11.0, ..TEXT }.bold().in_ink(ink))?;
    let read = |found| phrases::quantity_if(words, found);
    let reference = leak.pressure_reference.as_str();
    let rate = leak.rate.as_ref().map(|rate| match &leak.rate_uncertainty {
        None => phrases::quantity(words, rate),
        Some(half) => format!(
            "{}\u{a0}±\u{a0}{} (k\u{a0}=\u{a0}{})",
            phrases::bare(words, rate),
            phrases::quantity(words, half),
            leak.coverage_factor
        ),
    });
    facts::facts(
        sheet,
        &[
            (words.t("record-rate"), rate.unwrap_or_default()),
            (words.t("record-rate-limit"), read(leak.limit.as_ref())),
            (words.t("record-limit-from"), leak.limit_source.clone()),
            (words.t("record-boundaries"), leak.boundaries.clone()),
            (words.t("record-gas"), leak.test_gas.clone()),
            (words.t("record-attempt"), words.integer(leak.attempt)),
            (words.t("record-began"), phrases::instant(words, leak.began_at)),
            (words.t("record-ended"), phrases::instant(words, leak.ended_at)),
            (words.t(format!("record-pressure-start-{reference}")), read(leak.pressure_start.as_ref())),
            (words.t(format!("record-pressure-end-{reference}")), read(leak.pressure_end.as_ref())),
            (words.t("record-temperature-start"), read(leak.temperature_start.as_ref())),
            (words.t("record-temperature-end"), read(leak.temperature_end.as_ref())),
            (words.t("record-temperature-ambient"), read(leak.temperature_ambient.as_ref())),
            (words.t("record-ambient-pressure"), read(leak.ambient_pressure.as_ref())),
            (words.t("record-volume"), read(leak.volume.as_ref())),
            (words.t("record-volume-known"), leak.volume_known_by.clone()),
            (words.t("record-technician"), leak.by.clone()),
            (words.t("record-repair"), leak.repair.clone()),
            (words.tn("record-joints", i64::try_from(leak.joints.len()).unwrap_or(i64::MAX)), leak.joints.join(", ")),
        ],
    )?;
    sheet.end_section();
    Ok(())
}

fn closing(sheet: &mut Sheet, content: &TestRecordContent, words: &Words) -> Result<(), PaperError> {
    sheet.gap(14.0);
    sheet.keep(34.0 + SMALL.leading() * 4.0);
    let half = WIDTH / 2.0 - 10.0;
    for (place, (key, person)) in
        [("record-authorised", &content.authorised_by), ("record-technician", &content.technician)]
            .into_iter()
            .enumerate()
    {
        let x = LEFT + (half + 20.0) * place as f32;
        let text = format!("{}: {}", words.t(key), certificate::person(person, words));
        sheet.rule_on(sheet.page(), x, x + half, sheet.y + 30.0, 0.75, Ink::Fact);
        sheet.tags.open(Role::P);
        for (row, line) in super::fonts::wrap(&text, SMALL.weight, SMALL.size, half)?.iter().enumerate() {
            sheet.put(x, sheet.y + 34.0 + SMALL.size + SMALL.leading() * row as f32, line, SMALL)?;
        }
        sheet.tags.close();
    }
    sheet.y += 34.0 + SMALL.leading() * 3.0;
    let mut lines = vec![words.t("record-whole")];
    lines.extend(certificate::rule_set_lines(&content.rule_sets, words));
    lines.extend([
        words.tv("paper-software", &[("version", (&content.software_version).into())]),
        words.tv("paper-end", &[("number", (&content.number).into())]),
    ]);
    for line in lines {
        sheet.paragraph(&line, SMALL)?;
    }
    Ok(())
}
