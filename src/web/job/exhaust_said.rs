//! An exhaust reading in words: each value with its uncertainty, its limit, the source and the decision rule.

use super::JobPage;
use super::exhaust::{fuel_of, reading};
use super::said_line::line_said;
use crate::calc::decision::Verdict as Outcome;
use crate::calc::lambda;
use crate::model::Coded;
use crate::model::evidence::{Exhaust, ExhaustPoint};
use crate::rules::results::{ExhaustJudged, LimitFrom, ValueJudged};
use crate::rules::{DecisionRule, Limit, Quantity};
use crate::web::kit::{Mark, Tone, Verdict};
use crate::words::Words;

fn limit(job: &JobPage, quantity: Quantity) -> Option<Limit> {
    job.book.limit(quantity, &job.file.job, &job.file.vehicle, None, job.today)
}

/// How fast raised idle must be, where a line in force says so.
pub(super) fn least_rpm(job: &JobPage) -> Option<String> {
    let (least, _) = limit(job, Quantity::RaisedRpm)?.least?;
    let w = job.w();
    Some(w.tv("exhaust-least-rpm", &[("least", w.quantity(least, 0, "/min").into())]))
}

/// The limits in force for this vehicle, in one sentence; those of its maker come first.
pub(super) fn limits(job: &JobPage) -> String {
    let (w, car) = (job.w(), &job.file.vehicle);
    let most = |quantity, maker: Option<f64>| maker.or_else(|| Some(limit(job, quantity)?.most?.0));
    let mut parts = Vec::new();
    let mut say = |key: &str, most: Option<f64>| {
        parts.extend(most.map(|most| w.tv(key, &[("most", w.quantity(most, 2, "%").into())])));
    };
    say("exhaust-limit-idle", most(Quantity::IdleCoPercent, car.maker_idle_co_percent));
    say("exhaust-limit-raised", most(Quantity::RaisedCoPercent, car.maker_raised_co_percent));
    let by_line = limit(job, Quantity::RaisedLambda);
    let by_line = by_line.and_then(|limit| Some((limit.least?.0, limit.most?.0)));
    let by_maker = car.maker_lambda_least.zip(car.maker_lambda_most);
    if let Some((least, most)) = by_maker.or(by_line) {
        parts.push(w.tv("exhaust-limit-lambda", &[("span", w.span(least, most, 2, "").trim().to_owned().into())]));
    }
    if parts.is_empty() { w.t("exhaust-limit-none") } else { parts.join(" · ") }
}

/// What was read at one engine speed, on one line.
pub(super) fn point(w: Words, point: &ExhaustPoint) -> String {
    let own = point.analyser_lambda.map(|own| format!(" · λ {}", w.number(own, 3))).unwrap_or_default();
    w.tv(
        "exhaust-point",
        &[
            ("rpm", w.quantity(point.rpm, 0, "/min").into()),
            ("co", w.quantity(point.co_percent, 2, "%").into()),
            ("co2", w.quantity(point.co2_percent, 1, "%").into()),
            ("o2", w.quantity(point.o2_percent, 2, "%").into()),
            ("hc", w.quantity(point.hc_ppm, 0, "ppm").into()),
            ("own", own.into()),
        ],
    )
}

/// The verdict over all values, with each of them beneath.
pub(super) fn verdict(job: &JobPage, seen: &Exhaust, judged: &ExhaustJudged) -> Verdict {
    let w = job.w();
    let mut sentences = vec![
        value(w, "exhaust-value-idle-co", &judged.idle_co, 2, "%"),
        value(w, "exhaust-value-raised-co", &judged.raised_co, 2, "%"),
        match &judged.raised_lambda {
            Ok(lambda) => value(w, "exhaust-value-lambda", lambda, 3, ""),
            Err(_) => w.t("exhaust-probe"),
        },
    ];
    sentences.extend(judged.raised_hc.as_ref().map(|hc| value(w, "exhaust-value-hc", hc, 0, "ppm")));
    sentences.extend(beside(job, seen, judged));
    let outcome = match (&judged.too_slow, &judged.raised_lambda) {
        (_, Err(_)) => Some(Outcome::Fail),
        (Some((got, least)), _) => {
            let values = [("got", w.quantity(*got, 0, "/min").into()), ("least", w.quantity(*least, 0, "/min").into())];
            sentences.insert(0, w.tv("exhaust-too-slow", &values));
            Some(Outcome::CannotTell)
        }
        _ => judged.verdict(),
    };
    let (tone, mark, key) = match outcome {
        Some(Outcome::Pass) => (Tone::Met, Mark::Met, "exhaust-passes"),
        Some(Outcome::Fail) => (Tone::Stop, Mark::Stops, "exhaust-fails"),
        Some(Outcome::CannotTell) if judged.unconfirmed().is_some() => {
            (Tone::Copper, Mark::Undecided, "exhaust-unconfirmed")
        }
        Some(Outcome::CannotTell) => (Tone::Copper, Mark::Undecided, "exhaust-cannot-tell"),
        None => (Tone::Copper, Mark::Undecided, "exhaust-no-limits"),
    };
    Verdict { tone, mark, title: w.t(key), sentences }
}

/// "CO at idle 0.12 ± 0.07 %, at most 0.30 % (source); simple acceptance: passes."
fn value(w: Words, key: &str, judged: &ValueJudged, decimals: u8, unit: &str) -> String {
    let name = w.t(key);
    let read =
        format!("{} ± {}", w.number(judged.value, decimals), w.quantity(judged.expanded_uncertainty, decimals, unit));
    let read = read.trim_end().to_owned();
    // A limit of whole ppm has no decimals; CO and lambda are limited to a hundredth.
    let digits = decimals.min(2);
    let limit = match (judged.least, judged.most) {
        (Some(least), Some(most)) => w.span(least, most, digits, unit).trim_end().to_owned(),
        (None, Some(most)) => {
            w.tv("exhaust-at-most", &[("most", w.quantity(most, digits, unit).trim_end().to_owned().into())])
        }
        (Some(least), None) => {
            w.tv("exhaust-at-least", &[("least", w.quantity(least, digits, unit).trim_end().to_owned().into())])
        }
        (None, None) => return w.tv("exhaust-unlimited", &[("name", name.into()), ("read", read.into())]),
    };
    let source = match &judged.limit {
        LimitFrom::Maker => w.t("exhaust-by-maker"),
        LimitFrom::Line(line) => line_said(&w, line),
        LimitFrom::Nothing => String::new(),
    };
    let rule = w.t(match judged.rule {
        DecisionRule::Simple => "exhaust-rule-simple",
        DecisionRule::Guarded => "exhaust-rule-guarded",
    });
    let said = w.t(match judged.verdict {
        Some(Outcome::Pass) => "exhaust-says-pass",
        Some(Outcome::Fail) => "exhaust-says-fail",
        _ if judged.is_unconfirmed => "exhaust-says-unconfirmed",
        _ => "exhaust-says-cannot-tell",
    });
    w.tv(
        "exhaust-value",
        &[
            ("name", name.into()),
            ("read", read.into()),
            ("limit", limit.into()),
            ("source", source.into()),
            ("rule", rule.into()),
            ("said", said.into()),
        ],
    )
}

/// Our lambda beside the analyser's, and what an analyser left on another fuel would have shown.
fn beside(job: &JobPage, seen: &Exhaust, judged: &ExhaustJudged) -> Option<String> {
    let w = job.w();
    let ours = judged.raised_lambda.as_ref().ok()?.value;
    let burns = if seen.on_gas { job.file.job.fuel.code() } else { "petrol" };
    let set_to = fuel_of(&seen.analyser_set_to)?;
    let fuel = |code: &str| w.t(format!("analyser-set-to-{code}"));
    if seen.analyser_set_to != burns
        && let Ok(as_set) = lambda::lambda_reckoned_as(&reading(&seen.raised, fuel_of(burns)?), set_to)
    {
        let values = [
            ("set", fuel(&seen.analyser_set_to).into()),
            ("burns", fuel(burns).into()),
            ("shown", w.number(as_set, 3).into()),
            ("ours", w.number(ours, 3).into()),
        ];
        return Some(w.tv("exhaust-set-wrong", &values));
    }
    let its = seen.raised.analyser_lambda?;
    let key = if judged.differs.is_some() { "exhaust-beside-differs" } else { "exhaust-beside" };
    Some(w.tv(key, &[("ours", w.number(ours, 3).into()), ("its", w.number(its, 3).into())]))
}
