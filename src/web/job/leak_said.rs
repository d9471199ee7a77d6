//! A decay test in words and as a picture: what it says, what would change that, what stands in the way.

use askama::Template;
use time::OffsetDateTime;

use super::JobPage;
use super::said_line::line_said;
use crate::calc::decision::Verdict as Outcome;
use crate::calc::leak::plan::{Planned, plan};
use crate::calc::leak::trace::{corrected_kpa, trace};
use crate::calc::leak::{BudgetQuantity, BudgetRow, Compressibility, LeakWarning};
use crate::charts::leak::{Leak, LeakWords, Marked, picture, span};
use crate::charts::svg;
use crate::model::Coded;
use crate::model::evidence::{Entry, Evidence, LeakDecay, LeakReading, PressureKind, Section};
use crate::model::ids::EvidenceId;
use crate::model::leak_run::{LeakRun, LeakSetUp};
use crate::rules::results::{self, DecayJudged, DecayRefused};
use crate::rules::{DecisionRule, Quantity};
use crate::web::kit::{Cell, Column, Mark, Table, Tone, Verdict, already_escaped};
use crate::web::sum::marks;
use crate::words::Words;

/// Verdict and picture; both may be missing.
#[derive(Debug, Clone, Default, Template)]
#[template(path = "job/leak_shown.html")]
pub struct Shown {
    /// What the test says.
    pub verdict: Option<Verdict>,
    /// The picture as SVG; its texts are escaped where it is drawn.
    pub chart: String,
}

already_escaped!(Shown);

/// A thermometer that a shop can buy, K: what the sentence on the bottleneck compares with (common practice).
const GOOD_THERMOMETER_K: f64 = 0.02;
/// The picture shows at most so many times the time that passed.
const MOST_AHEAD: f64 = 8.0;

/// A test that is not recorded yet, as the rules look at one.
pub(super) fn entry_of(job: &JobPage, decay: LeakDecay) -> Entry {
    Entry {
        id: EvidenceId::new(),
        job_id: job.id(),
        measured_at: decay.ended_at,
        recorded_at: job.now,
        person_id: job.who.person.id,
        person_name: job.who.person.name.clone(),
        replaces_id: None,
        replaces_reason: String::new(),
        instruments: vec![decay.gauge_id, decay.thermometer_id],
        attachments: Vec::new(),
        body: Evidence::LeakDecay(decay),
    }
}

fn limit(job: &JobPage, section: Section) -> Option<(f64, bool, String)> {
    let limit = job.book.limit(Quantity::LeakCm3H, &job.file.job, &job.file.vehicle, Some(section), job.today)?;
    let is_shop = limit.is_shop;
    limit.most.map(|(most, line)| (most, is_shop, line_said(&job.w(), &line)))
}

/// What is tested and against which limit, in a sentence or two.
pub(super) fn lead(job: &JobPage, section: Section) -> String {
    let w = job.w();
    let what = w.t(format!("leak-decay-lead-{}", section.code()));
    let against = match limit(job, section) {
        Some((most, is_shop, source)) => {
            let key = if is_shop { "leak-decay-shop-limit" } else { "leak-decay-limit" };
            w.tv(key, &[("most", w.quantity(most, 0, "cm³/h").into()), ("source", source.into())])
        }
        None => w.t("leak-decay-no-limit"),
    };
    format!("{what} {against}")
}

/// Minutes after which a tight section would show it, with these instruments.
pub(super) fn planned_min(job: &JobPage, run: &LeakRun) -> Option<f64> {
    let first = run.readings.first()?;
    limit(job, run.set_up.section)?;
    planned_of(job, &run.set_up, first.kpa, first.c)
}

/// The same before the test has begun, from its first reading as it was typed. Where nothing limits the section, the
/// limit of the vehicle's other section tells at least the order of the time.
pub(super) fn planned_of(job: &JobPage, known: &LeakSetUp, start_kpa: f64, start_c: f64) -> Option<f64> {
    let others = Evidence::sections(job.file.job.fuel);
    let any = || others.iter().find_map(|section| limit(job, *section));
    let (limit_cm3_h, ..) = limit(job, known.section).or_else(any)?;
    let ambient = if known.pressure_kind == PressureKind::Gauge { known.ambient_kpa } else { 0.0 };
    let planned = Planned {
        volume_l: known.volume_l,
        pressure_kpa: start_kpa + ambient,
        temperature_c: start_c,
        limit_cm3_h,
        pressure_resolution_kpa: known.pressure_resolution_kpa,
        pressure_standard_uncertainty_kpa: known.pressure_standard_uncertainty_kpa,
        temperature_standard_uncertainty_k: known.temperature_standard_uncertainty_k,
    };
    plan(&planned).ok()?.needed_duration_min
}

fn tight_min(judged: &DecayJudged, u_k: f64) -> Option<f64> {
    let test = &judged.test;
    let planned = Planned {
        volume_l: test.volume_l,
        pressure_kpa: test.start_kpa,
        temperature_c: test.start_c,
        limit_cm3_h: test.limit_cm3_h,
        pressure_resolution_kpa: test.pressure_resolution_kpa,
        pressure_standard_uncertainty_kpa: test.pressure_standard_uncertainty_kpa,
        temperature_standard_uncertainty_k: u_k,
    };
    plan(&planned).ok()?.needed_duration_min
}

fn minutes(w: Words, minutes: f64) -> String {
    if minutes >= 600.0 { w.quantity(minutes / 60.0, 0, "h") } else { w.quantity(minutes.ceil(), 0, "min") }
}

/// "10 min since the start; a tight section shows it after 25 min: can decide in 15 min."
pub(super) fn passed(w: Words, since: f64, planned: Option<f64>) -> String {
    let told = w.quantity(since.floor(), 0, "min");
    let Some(planned) = planned else { return w.tv("leak-decay-passed-only", &[("since", told.into())]) };
    let values = [("since", told.into()), ("planned", minutes(w, planned).into())];
    let said = w.tv("leak-decay-passed", &values);
    let left = planned - since;
    let next = if left > 0.0 {
        w.tv("leak-decay-decides-in", &[("left", minutes(w, left).into())])
    } else {
        w.t("leak-decay-decides-now")
    };
    format!("{said} {next}")
}

/// Verdict and picture of a test.
pub(super) fn shown(job: &JobPage, entry: &Entry) -> Shown {
    let Evidence::LeakDecay(decay) = &entry.body else { return Shown::default() };
    let outcome = results::decay(&job.file, &job.book, entry, decay, &|at| job.day_of(at));
    let verdict = match &outcome {
        Ok(judged) => verdict(job, judged),
        Err(refused) => proves_nothing(job.w(), refused),
    };
    let chart = outcome.ok().and_then(|judged| chart(job, decay, &judged)).unwrap_or_default();
    Shown { verdict: Some(verdict), chart }
}

fn proves_nothing(w: Words, refused: &DecayRefused) -> Verdict {
    let sentence = match refused {
        DecayRefused::OverRating(got, rating) => {
            let values = [("got", w.quantity(*got, 0, "kPa").into()), ("rating", w.quantity(*rating, 0, "kPa").into())];
            w.tv("leak-decay-over-rating", &values)
        }
        DecayRefused::LiquidSection => w.t("leak-decay-liquid"),
        DecayRefused::AirInFuelLine => w.t("leak-decay-air"),
        DecayRefused::NoLimit => w.t("leak-decay-no-limit"),
        DecayRefused::Outside(outside) => {
            w.tv("leak-decay-outside", &[("what", outside.quantity.into()), ("got", w.number(outside.got, 2).into())])
        }
    };
    Verdict { tone: Tone::Stop, mark: Mark::Stops, title: w.t("leak-decay-proves-nothing"), sentences: vec![sentence] }
}

fn verdict(job: &JobPage, judged: &DecayJudged) -> Verdict {
    let w = job.w();
    let (tone, mark, key) = match judged.result.verdict {
        Outcome::Pass => (Tone::Met, Mark::Met, "leak-decay-passes"),
        Outcome::Fail => (Tone::Stop, Mark::Stops, "leak-decay-fails"),
        Outcome::CannotTell => (Tone::Copper, Mark::Undecided, "leak-decay-cannot-tell"),
    };
    let mut sentences = vec![loss(w, judged)];
    match judged.result.verdict {
        Outcome::Pass => {}
        Outcome::Fail => sentences.push(w.t("leak-decay-find-it")),
        Outcome::CannotTell => sentences.extend(ways_on(w, judged)),
    }
    for warning in &judged.result.warnings {
        match warning {
            LeakWarning::HighPressure => sentences.push(w.t("says-leak-warn-high")),
            LeakWarning::IdealGasAboveItsRange => sentences.push(w.t("leak-decay-warn-ideal")),
            LeakWarning::TemperatureMoved => sentences.push(w.t("leak-decay-warn-temperature")),
            // Said where the ways on are.
            LeakWarning::Inconsistent => {}
        }
    }
    Verdict { tone, mark, title: w.t(key), sentences }
}

/// "Loss 47 ± 49 cm³/h at 15 °C and 101.325 kPa, limit 20 cm³/h (source; rule)."
fn loss(w: Words, judged: &DecayJudged) -> String {
    let result = &judged.result;
    // Two figures of the uncertainty, the value to the same place (JCGM 100, 7.2.6).
    let decimals = u8::from(result.expanded_uncertainty_cm3_h < 9.95);
    let line = judged.limit.as_ref().and_then(|limit| limit.line());
    let is_shop = judged.limit.as_ref().is_some_and(|limit| limit.is_shop);
    let source = line.map(|line| line_said(&w, line)).unwrap_or_default();
    let source = if is_shop { w.t("leak-decay-shop-line") } else { source };
    let values = [
        ("rate", w.number(result.rate_cm3_h, decimals).into()),
        ("u", w.quantity(result.expanded_uncertainty_cm3_h, decimals, "cm³/h").into()),
        ("limit", w.quantity(judged.test.limit_cm3_h, 0, "cm³/h").into()),
        ("source", source.into()),
        ("rule", w.t(rule_key(DecisionRule::Guarded)).into()),
    ];
    w.tv("leak-decay-loss", &values)
}

fn rule_key(rule: DecisionRule) -> &'static str {
    match rule {
        DecisionRule::Simple => "exhaust-rule-simple",
        DecisionRule::Guarded => "exhaust-rule-guarded",
    }
}

/// What would make the test tell: time, a gauge, and what stands in the way most.
fn ways_on(w: Words, judged: &DecayJudged) -> Vec<String> {
    let (test, result) = (&judged.test, &judged.result);
    if result.inconsistent {
        return vec![w.t("leak-decay-inconsistent")];
    }
    let mut said = Vec::new();
    match result.needed_duration_min {
        Some(needed) if needed > test.duration_min => {
            let more = minutes(w, needed - test.duration_min);
            said.push(w.tv("leak-decay-after", &[("needed", minutes(w, needed).into()), ("more", more.into())]));
        }
        Some(_) => said.push(w.t("leak-decay-any-moment")),
        None => said.push(w.t("leak-decay-no-time")),
    }
    if let Some(tight) = tight_min(judged, test.temperature_standard_uncertainty_k)
        && tight > test.duration_min
    {
        said.push(w.tv("leak-decay-tight-after", &[("needed", minutes(w, tight).into())]));
    }
    if let Some(kpa) = result.needed_pressure_standard_uncertainty_kpa {
        said.push(w.tv("leak-decay-gauge", &[("kpa", w.quantity(kpa, 3, "kPa").into())]));
    }
    said.push(bottleneck(w, judged));
    said
}

fn share(budget: &[BudgetRow], of: &[BudgetQuantity]) -> f64 {
    budget.iter().filter(|row| of.contains(&row.quantity)).map(|row| row.share).sum()
}

fn bottleneck(w: Words, judged: &DecayJudged) -> String {
    use BudgetQuantity::{EndPressure, EndTemperature, StartPressure, StartTemperature, Volume};
    let budget = &judged.result.budget;
    let pressure = share(budget, &[StartPressure, EndPressure]);
    let temperature = share(budget, &[StartTemperature, EndTemperature]);
    let volume = share(budget, &[Volume]);
    let percent = |share: f64| w.quantity(100.0 * share, 0, "%");
    if volume >= pressure.max(temperature) {
        return w.tv("leak-decay-bottleneck-volume", &[("share", percent(volume).into())]);
    }
    if pressure >= temperature {
        return w.tv("leak-decay-bottleneck-pressure", &[("share", percent(pressure).into())]);
    }
    let better = tight_min(judged, GOOD_THERMOMETER_K);
    let could = judged.test.temperature_standard_uncertainty_k > GOOD_THERMOMETER_K;
    match better.filter(|_| could) {
        Some(better) => {
            let values = [
                ("share", percent(temperature).into()),
                ("good", w.quantity(GOOD_THERMOMETER_K, 2, "K").into()),
                ("minutes", minutes(w, better).into()),
            ];
            w.tv("leak-decay-bottleneck-temperature", &values)
        }
        None => w.tv("leak-decay-bottleneck-settle", &[("share", percent(temperature).into())]),
    }
}

fn chart(job: &JobPage, decay: &LeakDecay, judged: &DecayJudged) -> Option<String> {
    let (w, test) = (job.w(), &judged.test);
    let line = trace(test, &Compressibility::IDEAL, &judged.result, 1).ok()?;
    let (start, now) = (line.first()?, line.last()?);
    let wanted = [judged.result.needed_duration_min, tight_min(judged, test.temperature_standard_uncertainty_k)];
    let ahead = wanted.into_iter().flatten().fold(test.duration_min, f64::max);
    let end_min = ahead.min(MOST_AHEAD * test.duration_min).max(test.duration_min);
    let at_end = |kpa: f64| start.measured_kpa + (kpa - start.measured_kpa) * end_min / test.duration_min;
    let half = (now.high_kpa - now.low_kpa) / 2.0;
    let measured_end = at_end(now.measured_kpa);
    let readings = readings_of(decay).into_iter().filter_map(|reading| {
        let kpa = corrected_kpa(decay.absolute_kpa(reading.kpa), reading.c, decay.start_c).ok()?;
        Some(((reading.at - decay.started_at).as_seconds_f64() / 60.0, kpa))
    });
    let mut leak = Leak {
        readings: readings.collect(),
        end_min,
        tight_kpa: start.measured_kpa,
        limit_end_kpa: at_end(now.at_limit_kpa),
        band: Some([
            (start.measured_kpa - half, start.measured_kpa + half),
            (measured_end - half, measured_end + half),
        ]),
        pressures: Vec::new(),
        times: times(job, decay, end_min),
        words: words_of(w, judged),
    };
    let (low, high) = span(&leak);
    leak.pressures = marks(&w, low, high, 5, "kPa");
    Some(svg(&picture(&leak), "leak-chart"))
}

/// Every reading; an older entry has start and end alone.
pub(super) fn readings_of(decay: &LeakDecay) -> Vec<LeakReading> {
    if decay.readings.len() > 1 {
        return decay.readings.clone();
    }
    vec![
        LeakReading { at: decay.started_at, kpa: decay.start_kpa, c: decay.start_c },
        LeakReading { at: decay.ended_at, kpa: decay.end_kpa, c: decay.end_c },
    ]
}

fn times(job: &JobPage, decay: &LeakDecay, end_min: f64) -> Vec<Marked> {
    let w = job.w();
    let time = |at: OffsetDateTime| w.time(job.who.zone.local(at).time());
    let end = decay.started_at + time::Duration::seconds_f64(60.0 * end_min);
    let mut marks = vec![(0.0, time(decay.started_at)), (decay.duration_min(), time(decay.ended_at))];
    if end_min > decay.duration_min() + 0.5 {
        marks.push((end_min, time(end)));
    }
    marks
}

fn words_of(w: Words, judged: &DecayJudged) -> LeakWords {
    let limit = w.quantity(judged.test.limit_cm3_h, 0, "cm³/h");
    LeakWords {
        title: w.t("leak-chart-title"),
        description: w.tv("leak-chart-description", &[("loss", loss(w, judged).into())]),
        tight: w.t("leak-chart-tight"),
        limit: w.tv("leak-chart-limit", &[("limit", limit.into())]),
    }
}

/// The readings as a table beside the picture.
pub(super) fn table(job: &JobPage, readings: &[LeakReading], absolute: impl Fn(f64) -> f64) -> Table {
    let w = job.w();
    let start = readings.first().copied();
    let row = |reading: &LeakReading| {
        let since = start.map_or(0.0, |start| (reading.at - start.at).as_seconds_f64() / 60.0);
        let corrected = start.and_then(|start| corrected_kpa(absolute(reading.kpa), reading.c, start.c).ok());
        vec![
            Cell::new(w.time(job.who.zone.local(reading.at).time())),
            Cell::new(w.number(since, 1)),
            Cell::new(w.figure(reading.kpa, 2, "kPa")),
            Cell::new(w.figure(reading.c, 2, "°C")),
            Cell::new(corrected.map(|kpa| w.figure(kpa, 2, "kPa")).unwrap_or_default()),
        ]
    };
    Table {
        w,
        caption: w.t("leak-table"),
        columns: vec![
            Column::text(w.t("leak-table-time")),
            Column::number(w.head("leak-table-minutes")),
            Column::number(w.head("leak-table-pressure")),
            Column::number(w.head("leak-table-temperature")),
            Column::number(w.head("leak-table-corrected")),
        ],
        rows: readings.iter().map(row).collect(),
    }
}
