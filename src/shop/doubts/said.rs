//! A weighed finding in words: the same on the screen and in its report.

use time::OffsetDateTime;

use super::weigh::{PaperLine, ResultLine, Weighed, What};
use crate::calc::decision::Verdict;
use crate::model::Coded;
use crate::model::doubt::{AsFound, CauseKind};
use crate::rules::again::{Beside, Figure};
use crate::shop::instruments::FOUND_OUT_OF_DATE;
use crate::words::Words;

/// The name of what was measured, or of the part.
pub fn what(w: &Words, what: &What) -> String {
    match what {
        What::Entry(kind, subject) => {
            let key = if subject.is_empty() { (*kind).to_owned() } else { format!("{kind}-{subject}") };
            w.find(&format!("slot-{key}")).unwrap_or(key)
        }
        What::Part(part, _) => {
            let serial = if part.serial.is_empty() { &part.batch } else { &part.serial };
            let category = w.t(format!("part-category-{}", part.category.code()));
            let parts = [category.as_str(), &part.maker, &part.type_name, serial];
            parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ")
        }
    }
}

/// The name of a number: "Leak rate", "CO at idle".
pub fn name(w: &Words, beside: &Beside) -> String {
    w.t(format!("again-{}", beside.what))
}

/// A number with its uncertainty, and under it its limit with what came of it.
pub fn figure(w: &Words, beside: &Beside, figure: Option<&Figure>) -> (String, String) {
    let Some(one) = figure else { return ("–".to_owned(), String::new()) };
    let with_unit = |value: f64| {
        if beside.unit.is_empty() {
            w.number(value, beside.decimals)
        } else {
            w.quantity(value, beside.decimals, beside.unit)
        }
    };
    let half = with_unit(one.expanded_uncertainty);
    let value = format!("{}\u{a0}±\u{a0}{half}", w.number(one.value, beside.decimals));
    let limit = match (one.least, one.most) {
        (None, None) => w.t("again-no-limit"),
        (None, Some(most)) => w.tv("again-most", &[("most", with_unit(most).into())]),
        (Some(least), None) => w.tv("again-least", &[("least", with_unit(least).into())]),
        (Some(least), Some(most)) => {
            w.tv("again-between", &[("least", with_unit(least).into()), ("most", with_unit(most).into())])
        }
    };
    let verdict = one.verdict.map(|verdict| {
        w.t(match verdict {
            Verdict::Pass => "again-passes",
            Verdict::Fail => "again-fails",
            Verdict::CannotTell => "again-cannot-tell",
        })
    });
    let under = [Some(limit), verdict].into_iter().flatten().collect::<Vec<_>>().join(", ");
    (value, under)
}

/// How a result stands: "Still holds".
pub fn sort(w: &Words, line: &ResultLine) -> String {
    w.t(format!("doubt-sort-{}", line.again.sort.code()))
}

/// Why it stands so.
pub fn why(w: &Words, line: &ResultLine) -> String {
    w.t(format!("again-why-{}", line.again.why))
}

/// An error as found: "CO: reads high by 0.10 %".
pub fn error(w: &Words, one: &AsFound) -> String {
    let decimals = (1..6).find(|n| (one.reads_high_by * 10_f64.powi(i32::from(*n))).fract().abs() < 1e-9).unwrap_or(6);
    let by = w.quantity(one.reads_high_by.abs(), decimals, one.quantity.unit());
    let key = match one.reads_high_by {
        high if high > 0.0 => "as-found-high",
        low if low < 0.0 => "as-found-low",
        _ => "as-found-right",
    };
    w.tv(key, &[("what", w.t(format!("as-found-{}", one.quantity.code())).into()), ("by", by.into())])
}

/// The same with how it is known, and who entered it when.
pub fn error_told(w: &Words, weighed: &Weighed, one: &AsFound) -> String {
    let values = [
        ("error", error(w, one).into()),
        ("how", one.how_known.as_str().into()),
        ("name", one.person_name.as_str().into()),
        ("at", w.date_time(weighed.zone.local(one.entered_at)).into()),
    ];
    w.tv("doubt-error-told", &values)
}

/// The cause in one line.
pub fn cause(w: &Words, weighed: &Weighed) -> String {
    let key = format!("doubt-cause-{}", weighed.doubt.cause.code());
    match (&weighed.instrument, &weighed.recall) {
        (Some(record), _) => format!("{}: {}", w.t(key), record.instrument.code),
        (None, Some(recall)) => format!("{}: {}, {}", w.t(key), recall.recalled_by, recall.document),
        (None, None) if !weighed.doubt.rule_line.is_empty() => format!("{}: {}", w.t(key), weighed.doubt.rule_line),
        (None, None) => w.t(key),
    }
}

/// The time in doubt.
pub fn span(w: &Words, weighed: &Weighed) -> String {
    let moment = |at: OffsetDateTime| w.date_time(weighed.zone.local(at));
    match (&weighed.span, weighed.doubt.rule_from_on) {
        (Some(span), _) => {
            let to = moment(span.to);
            match (span.from, weighed.doubt.stated_from) {
                (Some(from), Some(_)) => {
                    let reason = weighed.doubt.stated_reason.as_str();
                    let values = [("from", moment(from).into()), ("to", to.into()), ("reason", reason.into())];
                    w.tv("doubt-span-stated", &values)
                }
                (Some(from), None) if weighed.finding.source == FOUND_OUT_OF_DATE => {
                    w.tv("doubt-span-ended", &[("from", moment(from).into()), ("to", to.into())])
                }
                (Some(from), None) => w.tv("doubt-span", &[("from", moment(from).into()), ("to", to.into())]),
                (None, _) => w.tv("doubt-span-ever", &[("to", to.into())]),
            }
        }
        (None, Some(from_on)) => w.tv("doubt-span-day", &[("from", w.date(from_on).into())]),
        (None, None) => String::new(),
    }
}

/// What a recall names: "Container, Tarnwell T-60, batch B-7, serials 1 to 99".
pub fn recalled(w: &Words, weighed: &Weighed) -> String {
    let Some(recall) = &weighed.recall else { return String::new() };
    let mut parts = vec![w.t(format!("part-category-{}", recall.category.code()))];
    parts.extend([&recall.maker, &recall.type_name].into_iter().filter(|one| !one.is_empty()).cloned());
    if !recall.batch.is_empty() {
        parts.push(w.tv("recall-batch-said", &[("batch", recall.batch.as_str().into())]));
    }
    if !recall.serial_from.is_empty() || !recall.serial_to.is_empty() {
        let or = |text: &str| if text.is_empty() { "…".to_owned() } else { text.to_owned() };
        let values = [("from", or(&recall.serial_from).into()), ("to", or(&recall.serial_to).into())];
        parts.push(w.tv("recall-serials-said", &values));
    }
    parts.join(", ")
}

/// What is still to be done, first things first: keys behind `doubt-next-`.
pub fn next(weighed: &Weighed) -> &'static str {
    use crate::model::doubt::ErrorIn;
    let takes_error = weighed.instrument.as_ref().is_some_and(|one| !ErrorIn::of(one.instrument.kind).is_empty());
    if !weighed.finding.is_open() {
        let waits = |line: &PaperLine| line.is_under_review && line.may_be_decided();
        if weighed.papers.iter().any(waits) { "re-test" } else { "closed" }
    } else if takes_error && weighed.errors.is_empty() && !weighed.results.is_empty() {
        "error"
    } else if weighed.papers.iter().any(PaperLine::waits) {
        "papers"
    } else {
        "close"
    }
}

/// Whether this cause knows an error as found.
pub fn has_error(weighed: &Weighed) -> bool {
    weighed.doubt.cause == CauseKind::Instrument
}

/// What was found, as names and values: cause, instrument with its certificate, recall, time in doubt.
pub fn facts(w: &Words, weighed: &Weighed) -> Vec<(String, String)> {
    let mut all = vec![(w.t("doubt-cause"), cause(w, weighed))];
    if let Some(record) = &weighed.instrument {
        let one = &record.instrument;
        let kind = w.t(format!("instrument-kind-{}", one.kind.code()));
        let parts = [kind.as_str(), &one.maker, &one.type_name, &one.serial];
        let parts: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
        all.push((w.t("doubt-instrument"), parts.join(", ")));
        if let Some(certificate) = record.certificate_on(weighed.zone.day_of(weighed.doubt.found_at)) {
            let values = [
                ("number", certificate.number.as_str().into()),
                ("laboratory", certificate.laboratory.as_str().into()),
                ("on", w.medium_date(certificate.calibrated_on).into()),
            ];
            all.push((w.t("doubt-certificate"), w.tv("doubt-certificate-said", &values)));
        }
        all.push((w.t("doubt-found-at"), w.date_time(weighed.zone.local(weighed.doubt.found_at))));
    }
    if let Some(recall) = &weighed.recall {
        all.push((w.t("recall-what"), recalled(w, weighed)));
        all.push((w.t("doubt-remedy"), recall.remedy.clone()));
    }
    let span = span(w, weighed);
    if !span.is_empty() {
        all.push((w.t("doubt-in-doubt"), span));
    }
    all
}

/// How the results came out, in one sentence.
pub fn tally(w: &Words, weighed: &Weighed) -> String {
    use crate::model::doubt::Sort;
    let count = |sort| i64::try_from(weighed.count(sort)).unwrap_or(i64::MAX);
    let values = [
        ("all", weighed.results.len().into()),
        ("holds", count(Sort::Holds).into()),
        ("doubt", count(Sort::InDoubt).into()),
        ("fails", count(Sort::Fails).into()),
    ];
    if weighed.results.is_empty() { w.t("doubt-nothing-rests") } else { w.tv("doubt-tally", &values) }
}
