//! How an estimate stands, in words: in one line beside the job, and at the head of its own page.

use crate::model::Coded;
use crate::model::estimate::{Agreement, EstimateStanding, EstimateVersion};
use crate::web::job::JobPage;
use crate::web::kit::{Mark, Tone, Verdict};
use crate::web::path;
use crate::words::Words;

/// The total of a version with its currency.
pub(super) fn total(w: &Words, version: &EstimateVersion) -> String {
    w.money(version.total_minor, version.currency.code())
}

/// "agreed by phone, Ana Reyes, 24 Nov".
fn agreed(job: &JobPage, agreement: &Agreement) -> String {
    let w = job.w();
    let values = [
        ("how", w.t(format!("agreed-how-{}", agreement.how.code())).into()),
        ("name", agreement.agreed_by.as_str().into()),
        ("day", w.short_date(job.day_of(agreement.agreed_at)).into()),
    ];
    w.tv("estimate-agreed", &values)
}

/// "changed since it was agreed: +120.00, not agreed".
fn changed(w: &Words, last: &EstimateVersion, by_minor: i64) -> String {
    match by_minor {
        0 => w.t("estimate-changed-same"),
        _ => w.tv("estimate-changed", &[("by", w.change(by_minor, last.currency.code()).into())]),
    }
}

/// The line beside the job: mark, words, address; nothing where nothing is written.
pub fn head_line(job: &JobPage) -> Option<(Mark, String, String)> {
    let w = job.w();
    let (mark, version, said) = match job.estimates.standing() {
        EstimateStanding::None => return None,
        EstimateStanding::NotAgreed(last) => (Mark::Missing, last, w.t("estimate-not-agreed")),
        EstimateStanding::Agreed(last, agreement) => (Mark::Met, last, agreed(job, agreement)),
        EstimateStanding::Changed { last, by_minor, .. } => (Mark::Undecided, last, changed(&w, last, by_minor)),
    };
    let values = [("total", total(&w, version).into()), ("said", said.into())];
    Some((mark, w.tv("estimate-head", &values), path::job_estimate(job.id())))
}

/// How it stands, at the head of its page.
pub(super) fn verdict(job: &JobPage) -> Option<Verdict> {
    let w = job.w();
    let (tone, mark, key, sentences) = match job.estimates.standing() {
        EstimateStanding::None => return None,
        EstimateStanding::NotAgreed(last) => {
            let values = [("total", total(&w, last).into())];
            (Tone::Copper, Mark::Missing, "estimate-stands-open", vec![w.tv("estimate-stands-open.more", &values)])
        }
        EstimateStanding::Agreed(last, agreement) => {
            (Tone::Met, Mark::Met, "estimate-stands-agreed", vec![agreement_said(job, last, agreement)])
        }
        EstimateStanding::Changed { last, agreed, by_minor } => {
            let values = [
                ("change", changed(&w, last, by_minor).into()),
                ("before", total(&w, agreed).into()),
                ("number", agreed.number.into()),
                ("now", total(&w, last).into()),
            ];
            let more = w.tv("estimate-stands-changed.more", &values);
            (Tone::Copper, Mark::Undecided, "estimate-stands-changed", vec![more])
        }
    };
    let mut sentences = sentences;
    sentences.extend(validity(job));
    Some(Verdict { tone, mark, title: w.t(key), sentences })
}

/// Until when the last version stands, where that is said.
fn validity(job: &JobPage) -> Option<String> {
    let (w, until) = (job.w(), job.estimates.last()?.valid_until_on?);
    let key = if until < job.today { "estimate-stood-until" } else { "estimate-stands-until" };
    Some(w.tv(key, &[("day", w.date(until).into())]))
}

/// The whole agreement in a sentence.
pub(super) fn agreement_said(job: &JobPage, version: &EstimateVersion, agreement: &Agreement) -> String {
    let w = job.w();
    let values = [
        ("total", w.money(agreement.amount_minor, version.currency.code()).into()),
        ("how", w.t(format!("agreed-how-{}", agreement.how.code())).into()),
        ("name", agreement.agreed_by.as_str().into()),
        ("when", job.when(agreement.agreed_at).into()),
        ("person", agreement.person_name.as_str().into()),
        ("noted", job.when(agreement.noted_at).into()),
    ];
    w.tv("estimate-agreement", &values)
}
