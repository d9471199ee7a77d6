//! The end of a certificate: vehicle papers, next duties, remarks, signature, code and end line.

use crate::model::paper::certificate::CertificateContent;
use crate::model::paper::{PersonOnPaper, RuleSetOnPaper};
use crate::words::Words;

use super::Certificate;
use crate::papers::ink::{CELL, FINE, Ink, SIGNED, SMALL};
use crate::papers::sheet::{LEFT, Sheet, WIDTH};
use crate::papers::table::{Cell, Column, Table};
use crate::papers::tags::Role;
use crate::papers::{PaperError, fonts, phrases, qr};

pub fn what_comes_next(sheet: &mut Sheet, content: &CertificateContent, words: &Words) -> Result<(), PaperError> {
    let mut table = Table::new(vec![
        Column::words(words.t("paper-due-what")),
        Column::words(words.t("paper-due-when-first")),
        Column::words(words.t("paper-due-decided-by")),
    ]);
    for duty in &content.next_duties {
        let when = phrases::due_dates(words, duty);
        table.row(vec![Cell::new(&duty.what), Cell::new(when), Cell::small(&duty.decided_by)]);
    }
    if !content.authority_test_to_come.is_empty() {
        table.row(vec![
            Cell::new(words.t("paper-authority-test")),
            Cell::strong(format!("○\u{a0}{}", words.t("paper-still-to-come")), Ink::Copper),
            Cell::small(&content.authority_test_to_come),
        ]);
    }
    if table.is_empty() {
        return Ok(());
    }
    sheet.section(&words.t("paper-next"), table.least_height()?)?;
    table.draw(sheet)?;
    sheet.end_section();
    Ok(())
}

pub fn remarks(sheet: &mut Sheet, content: &CertificateContent, words: &Words) -> Result<(), PaperError> {
    if !content.remarks.is_empty() {
        sheet.section(&words.t("paper-remarks"), CELL.leading())?;
        sheet.list(&content.remarks, CELL)?;
        sheet.end_section();
    }
    if !content.photos_seen.is_empty() {
        let slots = content.photos_seen.iter().map(|seen| words.t(format!("slot-photo-{}", seen.slot)));
        let slots = slots.collect::<Vec<_>>().join(", ");
        sheet.gap(2.0);
        sheet.paragraph(&words.tv("paper-photos-seen", &[("slots", slots.into())]), SMALL)?;
    }
    if !content.cautions.is_empty() {
        sheet.gap(4.0);
        sheet.keep(SMALL.leading() * 2.0);
        for caution in &content.cautions {
            let said = words.tv("paper-caution", &[("caution", caution.into())]);
            sheet.paragraph(&said, SMALL.in_ink(Ink::Fact))?;
        }
    }
    Ok(())
}

/// Side of the QR code.
const CODE: f32 = 80.0;

pub fn signature(sheet: &mut Sheet, paper: &Certificate<'_>, words: &Words) -> Result<(), PaperError> {
    let content = paper.content;
    let url = content.check.url.as_deref();
    let width = if url.is_some() { WIDTH - CODE * 1.16 } else { WIDTH };
    let lines = signature_lines(content, words);
    let mut wrapped = Vec::new();
    for line in &lines {
        wrapped.extend(fonts::wrap(line, SMALL.weight, SMALL.size, width)?);
    }
    let tall = (42.0 + SMALL.leading() * wrapped.len() as f32).max(CODE * 1.125);
    let ends = end_lines(content, words);
    sheet.gap(7.0);
    // The technical lines may run on to the next page; the signature stays whole.
    sheet.keep(tall + SMALL.leading() * 2.0);
    let top = sheet.y;
    if let Some(url) = url {
        let alt = words.tv("paper-code-alt", &[("address", shown_address(url).into())]);
        qr::draw(sheet, url, LEFT + WIDTH - CODE, top, CODE, &alt)?;
    }
    sheet.tags.open(Role::P);
    let name = &content.signatory.name;
    let fit = (width / fonts::width(name, SIGNED.weight, SIGNED.size)?.max(1.0)).min(1.0);
    let style = crate::papers::ink::Style { size: SIGNED.size * fit, ..SIGNED };
    sheet.put(LEFT, top + 30.0, &fonts::clean(name), style)?;
    sheet.tags.close();
    sheet.rule_on(sheet.page(), LEFT, LEFT + width, top + 36.0, 0.75, Ink::Fact);
    sheet.tags.open(Role::P);
    sheet.y = top + 40.0;
    for line in &wrapped {
        sheet.put(LEFT, sheet.y + SMALL.size, line, SMALL)?;
        sheet.y += SMALL.leading();
    }
    sheet.tags.close();
    sheet.y = sheet.y.max(top + tall) + 2.0;
    sheet.paragraph(&ends.join(" · "), FINE)
}

fn signature_lines(content: &CertificateContent, words: &Words) -> Vec<String> {
    let mut lines = vec![
        words.tv(
            "certificate-signed-by",
            &[
                ("person", person(&content.signatory, words).into()),
                ("at", phrases::instant(words, content.issued_at).into()),
            ],
        ),
        words.tv("certificate-worked-by", &[("person", person(&content.technician, words).into())]),
        words.t("certificate-holds"),
    ];
    let check = match content.check.url {
        Some(_) => words.t("certificate-check-online"),
        None => words.tv("certificate-check-by-phone", &[("phone", (&content.shop.phone).into())]),
    };
    lines.push(check);
    lines
}

/// Each rule set with its version and checksum.
pub fn rule_set_lines(rule_sets: &[RuleSetOnPaper], words: &Words) -> Vec<String> {
    let line = |set: &RuleSetOnPaper| {
        let values = [("name", (&set.name).into()), ("version", (&set.version).into()), ("sum", (&set.sha256).into())];
        words.tv("paper-rule-set", &values)
    };
    rule_sets.iter().map(line).collect()
}

fn end_lines(content: &CertificateContent, words: &Words) -> Vec<String> {
    let digest = [("digest", (&content.personal_digest).into())];
    let mut lines = vec![words.tv("certificate-keeper-digest", &digest)];
    lines.extend(rule_set_lines(&content.rule_sets, words));
    if !content.previous_sha256.is_empty() {
        lines.push(words.tv("certificate-follows", &[("sum", (&content.previous_sha256).into())]));
    }
    lines.push(words.tv("certificate-key-id", &[("key", (&content.check.key_id).into())]));
    lines.push(words.tv("paper-software", &[("version", (&content.software_version).into())]));
    lines.push(words.tv("paper-end", &[("number", (&content.number).into())]));
    lines
}

/// "R. Tolland, authorisation S-114 to 30 June 2028".
pub fn person(person: &PersonOnPaper, words: &Words) -> String {
    let values = |until: String| {
        [("name", (&person.name).into()), ("number", (&person.authorisation).into()), ("until", until.into())]
    };
    match (person.authorisation.as_str(), person.authorised_until_on) {
        ("", _) => person.name.clone(),
        (_, None) => words.tv("paper-person-authorised", &values(String::new())),
        (_, Some(day)) => words.tv("paper-person-authorised-until", &values(words.date(day))),
    }
}

/// An address as a person would type it: without scheme and code.
pub fn shown_address(url: &str) -> String {
    let bare = url.trim_start_matches("https://").trim_start_matches("http://");
    let place = bare.rsplit_once('/').filter(|(_, code)| code.contains('-')).map_or(bare, |(place, _)| place);
    place.trim_end_matches('/').to_owned()
}
