//! Certificates: conversion, inspection, removal, container and cylinder.
//!
//! Every field of the content comes back out of the printed text. Without a signature the paper is a preview and says
//! so across every page.

mod closing;
mod inspection;
mod proofs;
mod things;

use crate::model::branch::PaperSize;
use crate::model::paper::certificate::CertificateContent;
use crate::model::paper::{PersonalPart, RuleSetOnPaper};
use crate::words::Words;

use super::finish::{About, Attachment, finish};
use super::ink::{NUMBER, SMALL, TEXT, TITLE};
use super::letter::{Letter, Mark};
use super::sheet::{Page, Sheet, WIDTH};
use super::tags::Role;
pub(super) use closing::{person, rule_set_lines};

use super::{PERSONAL_PART, PaperError, SIGNED_CONTENT, phrases, printable, results};

/// A certificate as it is to be printed.
#[derive(Debug, Clone, Copy)]
pub struct Certificate<'a> {
    /// The content, read back from its frozen bytes.
    pub content: &'a CertificateContent,
    /// The keeper's personal data; `None` once they were erased, or for a copy without them.
    pub personal: Option<&'a PersonalPart>,
    /// The envelope of the signed content as JSON; `None` for a preview.
    pub sealed: Option<&'a [u8]>,
}

/// The certificate as a PDF on A4. The same input gives the same bytes.
///
/// In the content a character that no face has is spelled as its number.
///
/// Errors: a character of the keeper's data that no face has; an address too long for a QR code.
pub fn certificate(paper: &Certificate<'_>, words: &Words) -> Result<Vec<u8>, PaperError> {
    certificate_on(paper, words, PaperSize::A4)
}

/// The certificate as a PDF on the shop's paper.
///
/// Errors: as [`certificate`].
pub fn certificate_on(paper: &Certificate<'_>, words: &Words, size: PaperSize) -> Result<Vec<u8>, PaperError> {
    // A part's maker or a remark with an odd sign in it must not keep a paper back; a keeper's name has its own spelling.
    let spelled = printable(paper.content)?;
    let paper = &Certificate { content: &spelled, ..*paper };
    let content = paper.content;
    let title = phrases::certificate_title(words, content.kind, content.system.fuel);
    let mut sheet = Sheet::on(Page::of(size));
    opening(&mut sheet, content, &title, words)?;
    body(&mut sheet, paper, words)?;
    closing::signature(&mut sheet, paper, words)?;
    if let Some(beside) = &content.beside {
        draw_beside(&mut sheet, &Certificate { content: beside, ..*paper }, words)?;
    }
    letter(paper, words).draw(&mut sheet, words)?;
    let personal = paper.personal.map(serde_json::to_vec_pretty).transpose();
    let personal = personal.map_err(|e| PaperError::File(e.to_string()))?;
    let signed = words.t("paper-file-signed");
    let keeper = words.t("paper-file-keeper");
    let file = |name, description, bytes| Attachment { name, description, media_type: "application/json", bytes };
    let attachments = [
        paper.sealed.map(|bytes| file(SIGNED_CONTENT, signed.as_str(), bytes)),
        personal.as_deref().map(|bytes| file(PERSONAL_PART, keeper.as_str(), bytes)),
    ];
    let about = About {
        title: format!("{title}, {}", content.number),
        author: &content.shop.name,
        language: &content.language,
        made_at: content.issued_at,
        attachments: attachments.into_iter().flatten().collect(),
    };
    finish(sheet, &about)
}

/// What stands between title and signature.
fn body(sheet: &mut Sheet, paper: &Certificate<'_>, words: &Words) -> Result<(), PaperError> {
    let content = paper.content;
    inspection::inspection(sheet, content, words)?;
    things::vehicle(sheet, content, words)?;
    things::keeper(sheet, paper, words)?;
    things::system(sheet, content, words)?;
    things::parts(sheet, content, words)?;
    things::containers(sheet, content, words)?;
    things::removed(sheet, content, words)?;
    results::draw(sheet, &content.measured, words)?;
    sheet.gap(5.0);
    results::instrument_table(sheet, &content.instruments, words)?;
    results::entered_later(sheet, &content.entered_later, words)?;
    proofs::proofs(sheet, content, words)?;
    closing::what_comes_next(sheet, content, words)?;
    closing::remarks(sheet, content, words)
}

/// The same in a second language, on pages of its own that say which text counts.
fn draw_beside(sheet: &mut Sheet, paper: &Certificate<'_>, counts: &Words) -> Result<(), PaperError> {
    let content = paper.content;
    let words = Words::for_customer([&*content.language]);
    sheet.turn();
    sheet.tags.open(Role::Sect);
    sheet.tags.speak(words.tag());
    let values = [("language", words.t("language-name").into()), ("original", counts.t("language-name").into())];
    sheet.paragraph(&words.tv("paper-beside", &values), TEXT.bold())?;
    let title = phrases::certificate_title(&words, content.kind, content.system.fuel);
    opening(sheet, content, &title, &words)?;
    body(sheet, paper, &words)?;
    sheet.tags.close();
    Ok(())
}

fn opening(sheet: &mut Sheet, content: &CertificateContent, title: &str, words: &Words) -> Result<(), PaperError> {
    sheet.y += 4.0;
    sheet.text(Role::H1, title, TITLE, WIDTH)?;
    let issued = words.tv(
        "certificate-number-issued",
        &[("number", (&content.number).into()), ("date", words.date(content.issued_on).into())],
    );
    sheet.paragraph(&issued, NUMBER)?;
    if let Some(supersedes) = &content.supersedes {
        let replaces = words.tv(
            "certificate-replaces",
            &[("number", (&supersedes.number).into()), ("reason", (&supersedes.reason).into())],
        );
        sheet.paragraph(&replaces, TEXT.bold())?;
    }
    sheet.y += 4.0;
    let mut lead = vec![words.t(format!("certificate-lead-{}", content.kind.as_str()))];
    if content.states_fitting_check {
        lead.push(words.t("certificate-fitting-check"));
    }
    if content.proofs.asked > 0 {
        lead.push(proofs::count(content, words));
    }
    sheet.text(Role::P, &lead.join(" "), TEXT, WIDTH)?;
    let issue = words.tv(
        "certificate-issue-line",
        &[
            ("place", (&content.place).into()),
            ("job", (&content.job_number).into()),
            ("received", words.date(content.work.received_on).into()),
            ("finished", words.date(content.work.finished_on).into()),
        ],
    );
    sheet.gap(2.0);
    sheet.paragraph(&issue, SMALL)
}

/// "Rules: UN baseline 2026-11, shop lines 3", for the letter head.
pub(super) fn rules_aside(rule_sets: &[RuleSetOnPaper], words: &Words) -> String {
    let rules: Vec<String> = rule_sets.iter().map(|set| format!("{} {}", set.name, set.version)).collect();
    if rules.is_empty() {
        return String::new();
    }
    words.tv("paper-rules", &[("rules", rules.join(", ").into())])
}

fn letter<'a>(paper: &Certificate<'a>, words: &Words) -> Letter<'a> {
    let content = paper.content;
    let aside = rules_aside(&content.rule_sets, words);
    let check = &content.check;
    let address = check.url.as_deref().map(closing::shown_address).unwrap_or_default();
    let foot =
        phrases::dotted(&[&address, &check.code, &words.tv("paper-key", &[("key", (&check.key_fingerprint).into())])]);
    let mark = if content.is_demonstration {
        Some(Mark::Demonstration)
    } else if paper.sealed.is_none() {
        Some(Mark::Preview)
    } else {
        None
    };
    Letter {
        shop: &content.shop,
        aside,
        foot: words.tv("paper-check", &[("how", foot.into())]),
        number: content.number.clone(),
        mark,
    }
}
