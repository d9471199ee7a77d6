//! What was measured, as papers print it: result, uncertainty, limit, decision rule, verdict, instruments.

use crate::calc::decision::Verdict as SumVerdict;
use crate::model::Coded;
use crate::model::evidence::{
    Entry, Evidence, Exhaust, FillStopHow, FunctionChecks, JointVerdict, LeakDecay, LeakJoints,
};
use crate::model::instrument::{InstrumentKind, InstrumentRecord};
use crate::model::paper::EnteredLater;
use crate::model::paper::measured::{
    DecisionRule, InstrumentOnPaper, MeasuredRow, Quantity, Reading, ResultPart, Uncertainty, Verdict,
};
use crate::rules::results::{self, LimitFrom, ValueJudged};
use crate::rules::{self, DecisionRule as RuleOfLine};

use super::Ground;

/// Every measured result of the job, in the order of work.
pub(super) fn rows(ground: &Ground<'_>) -> Vec<MeasuredRow> {
    let mut entries: Vec<&Entry> = ground.file.evidence.iter().collect();
    entries.sort_by_key(|entry| entry.measured_at);
    let of = |take: fn(&Ground<'_>, &Entry) -> Vec<MeasuredRow>| {
        entries.iter().flat_map(|entry| take(ground, entry)).collect::<Vec<_>>()
    };
    [of(leaks), of(exhausts), of(functions)].concat()
}

/// The instruments behind these results, described once each.
pub(super) fn instruments(ground: &Ground<'_>) -> Vec<InstrumentOnPaper> {
    let on = |record: &InstrumentRecord| {
        let used_at = ground.file.evidence.iter().filter(|entry| entry.instruments.contains(&record.instrument.id));
        let last = used_at.map(|entry| entry.measured_at).max();
        let certificate = last.and_then(|at| record.certificate_on((ground.day_of)(at)));
        let one = &record.instrument;
        let kind = ground.w.t(format!("instrument-kind-{}", one.kind.code()));
        let parts = [kind.as_str(), one.maker.as_str(), one.type_name.as_str(), one.serial.as_str()];
        let parts: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
        InstrumentOnPaper {
            code: one.code.clone(),
            description: parts.join(", "),
            calibration_certificate: certificate.map(|one| one.number.clone()).unwrap_or_default(),
            good_until_on: certificate.map(|one| one.due_on),
        }
    };
    let mut all: Vec<_> = ground.file.instruments.iter().map(on).collect();
    for (_, test) in foams(ground) {
        let code = format!("{} {}", ground.w.t("leak-method-foam"), test.foam_batch);
        if !all.iter().any(|one| one.code == code) {
            all.push(InstrumentOnPaper {
                description: ground.w.t(format!("instrument-kind-{}", InstrumentKind::Foam.code())),
                calibration_certificate: String::new(),
                good_until_on: test.foam_expires_on,
                code,
            });
        }
    }
    all
}

fn foams<'a>(ground: &'a Ground<'_>) -> impl Iterator<Item = (&'a Entry, &'a LeakJoints)> {
    ground.file.evidence.iter().filter_map(|entry| match &entry.body {
        Evidence::LeakJoints(test) if !test.foam_batch.is_empty() => Some((entry, test)),
        _ => None,
    })
}

/// A row without its numbers: who, when, with what.
fn row(ground: &Ground<'_>, entry: &Entry, test: String, method: &str) -> MeasuredRow {
    let codes = entry.instruments.iter().filter_map(|id| ground.file.instrument(*id));
    let entered_later = entry.is_entered_later().then(|| EnteredLater {
        what: test.clone(),
        happened_at: entry.measured_at,
        entered_at: entry.recorded_at,
        by: entry.person_name.clone(),
        reason: entry.replaces_reason.clone(),
    });
    MeasuredRow {
        test,
        method: method.to_owned(),
        results: Vec::new(),
        uncertainty: None,
        limits: Vec::new(),
        limit_source: String::new(),
        decision_rule: DecisionRule::Observed,
        verdict: Verdict::Passes,
        instruments: codes.map(|record| record.instrument.code.clone()).collect(),
        measured_at: (ground.local)(entry.measured_at),
        by: entry.person_name.clone(),
        from_outside: String::new(),
        record: String::new(),
        entered_later,
    }
}

fn number(value: f64, decimals: u8, unit: &str) -> Option<Reading> {
    Quantity::rounded(value, decimals, unit).map(Reading::Number)
}

/// A value; which of several it is, the test's name says in the same order.
fn part(reading: Option<Reading>) -> Option<ResultPart> {
    reading.map(|reading| ResultPart { label: String::new(), reading })
}

const fn verdict(said: SumVerdict) -> Verdict {
    match said {
        SumVerdict::Pass => Verdict::Passes,
        SumVerdict::Fail => Verdict::Fails,
        SumVerdict::CannotTell => Verdict::CannotTell,
    }
}

const fn rule(rule: RuleOfLine) -> DecisionRule {
    match rule {
        RuleOfLine::Simple => DecisionRule::Simple,
        RuleOfLine::Guarded => DecisionRule::Guarded,
    }
}

fn uncertainty(expanded: f64, decimals: u8, unit: &str) -> Option<Uncertainty> {
    let expanded = Quantity::rounded(expanded, decimals, unit)?;
    Some(Uncertainty { expanded, coverage_factor: "2".to_owned() })
}

fn leaks(ground: &Ground<'_>, entry: &Entry) -> Vec<MeasuredRow> {
    match &entry.body {
        Evidence::LeakJoints(test) => vec![joints(ground, entry, test)],
        Evidence::LeakDecay(test) => decay(ground, entry, test).into_iter().collect(),
        _ => Vec::new(),
    }
}

fn joints(ground: &Ground<'_>, entry: &Entry, test: &LeakJoints) -> MeasuredRow {
    let w = &ground.w;
    let section = w.t(format!("issue-section-{}", test.section.code()));
    let method = w.t(format!("issue-method-{}", test.method.code()));
    let name = w.tv(
        "issue-test-joints",
        &[("section", section.into()), ("method", method.into()), ("n", test.joints.len().into())],
    );
    let is_dry = test.joints.iter().all(|joint| joint.verdict == JointVerdict::Dry) && !test.joints.is_empty();
    let worst = if is_dry { JointVerdict::Dry } else { JointVerdict::Leaks };
    let said = |one: JointVerdict| Reading::Word { text: w.t(format!("joint-verdict-{}", one.code())) };
    let mut row = row(ground, entry, name, "leak-joints 1");
    if !test.foam_batch.is_empty() {
        row.instruments.push(format!("{} {}", w.t("leak-method-foam"), test.foam_batch));
    }
    MeasuredRow {
        results: vec![ResultPart { label: String::new(), reading: said(worst) }],
        limits: vec![said(JointVerdict::Dry)],
        limit_source: ground.proof_source(&rules::Need::LeakJoints(test.section)),
        verdict: if is_dry { Verdict::Passes } else { Verdict::Fails },
        ..row
    }
}

fn decay(ground: &Ground<'_>, entry: &Entry, test: &LeakDecay) -> Option<MeasuredRow> {
    let w = &ground.w;
    let judged = results::decay(ground.file, ground.book, entry, test, ground.day_of).ok()?;
    let section = w.t(format!("issue-section-{}", test.section.code()));
    let minutes = w.quantity(test.duration_min(), 0, "min");
    let name = w.tv("issue-test-decay", &[("section", section.into()), ("minutes", minutes.into())]);
    let line = judged.limit.as_ref().and_then(|limit| limit.line());
    Some(MeasuredRow {
        results: part(number(judged.result.rate_cm3_h, 0, "cm³/h")).into_iter().collect(),
        uncertainty: uncertainty(judged.result.expanded_uncertainty_cm3_h, 0, "cm³/h"),
        limits: number(judged.test.limit_cm3_h, 0, "cm³/h").into_iter().collect(),
        limit_source: line.map(|line| ground.limit_source(line)).unwrap_or_default(),
        decision_rule: DecisionRule::Guarded,
        verdict: verdict(judged.result.verdict),
        ..row(ground, entry, name, "leak-decay 1")
    })
}

fn exhausts(ground: &Ground<'_>, entry: &Entry) -> Vec<MeasuredRow> {
    let Evidence::Exhaust(seen) = &entry.body else { return Vec::new() };
    let judged = results::exhaust(ground.file, ground.book, entry, seen, ground.day_of);
    let fuel = fuel_name(ground, seen);
    let co = [&judged.idle_co, &judged.raised_co];
    let name = ground.w.tv("issue-test-co", &[("fuel", fuel.as_str().into())]);
    let worst = co.iter().filter_map(|value| value.verdict).max_by_key(|said| gravity(*said));
    let co_row = MeasuredRow {
        results: co.iter().filter_map(|value| part(number(value.value, 2, "%"))).collect(),
        uncertainty: uncertainty(judged.idle_co.expanded_uncertainty, 2, "%"),
        limits: co.iter().filter_map(|value| limit(value, 1, "%")).collect(),
        limit_source: source(ground, &judged.idle_co),
        decision_rule: rule(judged.idle_co.rule),
        verdict: worst.map_or(Verdict::CannotTell, verdict),
        ..row(ground, entry, name, "exhaust-idle 1")
    };
    let lambda_row = judged.raised_lambda.as_ref().ok().map(|value| {
        let name = ground.w.tv("issue-test-lambda", &[("fuel", fuel.as_str().into())]);
        MeasuredRow {
            results: part(number(value.value, 3, "")).into_iter().collect(),
            uncertainty: uncertainty(value.expanded_uncertainty, 3, ""),
            limits: limit(value, 2, "").into_iter().collect(),
            limit_source: source(ground, value),
            decision_rule: rule(value.rule),
            verdict: value.verdict.map_or(Verdict::CannotTell, verdict),
            ..row(ground, entry, name, "exhaust-idle 1")
        }
    });
    [Some(co_row), lambda_row].into_iter().flatten().collect()
}

const fn gravity(said: SumVerdict) -> u8 {
    match said {
        SumVerdict::Pass => 0,
        SumVerdict::CannotTell => 1,
        SumVerdict::Fail => 2,
    }
}

fn fuel_name(ground: &Ground<'_>, seen: &Exhaust) -> String {
    let code = if seen.on_gas { ground.file.job.fuel.code() } else { "petrol" };
    ground.w.t(format!("issue-fuel-{code}"))
}

fn limit(value: &ValueJudged, decimals: u8, unit: &str) -> Option<Reading> {
    match (value.least, value.most) {
        (Some(least), Some(most)) => Some(Reading::Between {
            low: Quantity::rounded(least, decimals, unit)?,
            high: Quantity::rounded(most, decimals, unit)?,
        }),
        (Some(one), None) | (None, Some(one)) => number(one, decimals, unit),
        (None, None) => None,
    }
}

fn source(ground: &Ground<'_>, value: &ValueJudged) -> String {
    match &value.limit {
        LimitFrom::Maker => ground.w.t("issue-limit-of-maker"),
        LimitFrom::Line(line) => ground.limit_source(line),
        LimitFrom::Nothing => String::new(),
    }
}

fn functions(ground: &Ground<'_>, entry: &Entry) -> Vec<MeasuredRow> {
    let Evidence::FunctionChecks(checks) = &entry.body else { return Vec::new() };
    [shut_off(ground, entry, checks), fill_stop(ground, entry, checks)].into_iter().flatten().collect()
}

fn shut_off(ground: &Ground<'_>, entry: &Entry, checks: &FunctionChecks) -> Option<MeasuredRow> {
    let (ignition, stalled) = (checks.shut_off_ignition_s?, checks.shut_off_stalled_s?);
    let file = ground.file;
    let on = (ground.day_of)(entry.measured_at);
    let limit = ground.book.limit(rules::Quantity::ShutOffS, &file.job, &file.vehicle, None, on)?;
    let (most, line) = limit.most?;
    Some(MeasuredRow {
        results: [ignition, stalled].into_iter().filter_map(|s| part(number(s, 1, "s"))).collect(),
        limits: number(most, u8::from(most.fract() != 0.0), "s").into_iter().collect(),
        limit_source: ground.limit_source(&line),
        decision_rule: rule(line.decision),
        verdict: if ignition.max(stalled) <= most { Verdict::Passes } else { Verdict::Fails },
        ..row(ground, entry, ground.w.t("issue-test-shut-off"), "function 1")
    })
}

fn fill_stop(ground: &Ground<'_>, entry: &Entry, checks: &FunctionChecks) -> Option<MeasuredRow> {
    if checks.fill_stop_how == Some(FillStopHow::Later) {
        return None;
    }
    let litres = checks.fill_stop_l?;
    let capacity_l = ground.capacity_l()?;
    let file = ground.file;
    let on = (ground.day_of)(entry.measured_at);
    let limit = ground.book.limit(rules::Quantity::FillPercent, &file.job, &file.vehicle, None, on)?;
    let (most, line) = limit.most?;
    let percent = 100.0 * litres / capacity_l;
    Some(MeasuredRow {
        results: part(number(litres, 1, "L")).into_iter().collect(),
        limits: number(capacity_l * most / 100.0, 1, "L").into_iter().collect(),
        limit_source: ground.limit_source(&line),
        decision_rule: rule(line.decision),
        verdict: if percent <= most { Verdict::Passes } else { Verdict::Fails },
        ..row(ground, entry, ground.w.t("issue-test-fill-stop"), "function 1")
    })
}
