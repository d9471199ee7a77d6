//! The audit pack: what an auditor asks of a period, table by table, and the job files that chance picked.

use super::PaperError;
use super::facts::facts;
use super::first_unprintable;
use super::ink::{CELL, LEAD, SMALL, TEXT};
use super::outline::Outline;
use super::sheet::{Sheet, WIDTH};
use super::table::{Cell, Column, Table};
use super::tags::Role;
use crate::model::branch::PaperSize;
use crate::model::paper::audit_pack::{AuditPackContent, PackJob, PackSection};
use crate::words::Words;

/// The pack as a PDF. The same input gives the same bytes. A character that no face has is written as its number, `[U+4E2D]`:
/// a pack of a thousand rows is not refused for one of them.
///
/// Errors: the faces cannot be read.
pub fn audit_pack(content: &AuditPackContent, size: PaperSize, words: &Words) -> Result<Vec<u8>, PaperError> {
    let title = words.t("audit-pack-title");
    let span = [("from", words.date(content.from_on).into()), ("to", words.date(content.to_on).into())];
    let values = [("name", spelled(&content.drawn_for).into()), ("at", words.date_time(content.drawn_at).into())];
    let outline = Outline {
        shop: &content.shop,
        size,
        title: &title,
        number: &content.number,
        under_title: words.tv("audit-pack-span", &span),
        lead: words.t("audit-pack-lead"),
        aside: String::new(),
        foot: title.clone(),
        language: &content.language,
        is_demonstration: content.is_demonstration,
        made_at: content.drawn_at,
    };
    let mut sheet = outline.open()?;
    sheet.paragraph(&words.tv("audit-pack-drawn", &values), SMALL)?;
    for section in &content.sections {
        draw(&mut sheet, section)?;
    }
    picked(&mut sheet, content, words)?;
    for job in &content.jobs {
        draw_job(&mut sheet, job, words)?;
    }
    sheet.gap(8.0);
    for line in [
        words.t("audit-pack-local-law"),
        words.t("paper-not-signed"),
        words.tv("paper-software", &[("version", (&content.software_version).into())]),
        words.tv("paper-end", &[("number", (&content.number).into())]),
    ] {
        sheet.paragraph(&line, SMALL)?;
    }
    outline.close(sheet, words)
}

fn draw(sheet: &mut Sheet, section: &PackSection) -> Result<(), PaperError> {
    let table = table(section);
    let lead = if section.lead.is_empty() { 0.0 } else { SMALL.leading() * 2.0 };
    let room = if table.is_empty() { CELL.leading() } else { table.least_height()? };
    sheet.section(&section.heading, lead + room)?;
    if !section.lead.is_empty() {
        sheet.paragraph(&spelled(&section.lead), SMALL)?;
    }
    if table.is_empty() {
        sheet.paragraph(&section.when_empty, TEXT)?;
    } else {
        sheet.gap(3.0);
        table.draw(sheet)?;
    }
    sheet.end_section();
    Ok(())
}

fn table(section: &PackSection) -> Table {
    let mut table = Table::new(section.heads.iter().map(|head| Column::words(head.clone())).collect());
    for row in &section.rows {
        table.row(row.iter().map(|cell| Cell::new(spelled(&cell.text)).and(spelled(&cell.second))).collect());
    }
    table
}

/// How the job files were picked, so that anybody can do it again.
fn picked(sheet: &mut Sheet, content: &AuditPackContent, words: &Words) -> Result<(), PaperError> {
    sheet.section(&words.t("audit-pack-picked"), TEXT.leading() * 4.0)?;
    let values = [
        ("seed", spelled(&content.seed).into()),
        ("n", content.jobs.len().into()),
        ("all", content.picked_from.into()),
    ];
    sheet.paragraph(&words.tv("audit-pack-seed-says", &values), TEXT)?;
    sheet.paragraph(&words.t("audit-pack-how-picked"), SMALL)?;
    sheet.end_section();
    Ok(())
}

fn draw_job(sheet: &mut Sheet, job: &PackJob, words: &Words) -> Result<(), PaperError> {
    sheet.gap(10.0);
    sheet.keep(CELL.leading() * 9.0);
    let title = words.tv("audit-pack-job", &[("number", spelled(&job.number).into())]);
    sheet.text(Role::H2, &title, LEAD, WIDTH)?;
    let told: Vec<_> = job.facts.iter().map(|(name, value)| (name.clone(), spelled(value))).collect();
    facts(sheet, &told)?;
    job.sections.iter().try_for_each(|section| draw(sheet, section))
}

/// The text with every character that no face has written as its number.
fn spelled(text: &str) -> String {
    if first_unprintable(text).is_none() {
        return text.to_owned();
    }
    let spell = |c: char| match first_unprintable(c.encode_utf8(&mut [0; 4])) {
        Some(_) => format!("[U+{:04X}]", u32::from(c)),
        None => c.to_string(),
    };
    text.chars().map(spell).collect()
}

#[cfg(test)]
mod tests {
    use super::spelled;

    #[test]
    fn a_character_without_a_face_is_written_as_its_number_and_the_rest_stays() {
        assert_eq!(spelled("Zoë, 4 µm"), "Zoë, 4 µm");
        assert_eq!(spelled("ok 中!"), "ok [U+4E2D]!");
    }
}
