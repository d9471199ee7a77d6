//! A decay test at the tablet: set up and started, read while it runs, recorded as it is or given up for foam.
//!
//! The server keeps the time: a reload shows it, another tablet sees the same test. Scripts only let the clock run and
//! the verdict follow what is typed.

use askama::Template;
use axum::extract::{Path, State};
use serde::Deserialize;
use time::OffsetDateTime;
use time::format_description::well_known::Rfc3339;

use super::facts::{Fact, Facts};
use super::leak_joints::section_of;
use super::leak_said::{self, Shown};
use super::leak_start::{self, Instruments};
use super::{JobPage, record};
use crate::db;
use crate::model::Coded;
use crate::model::evidence::{Entry, Evidence, LeakDecay, LeakReading, Section};
use crate::model::ids::JobId;
use crate::model::leak_run::LeakRun;
use crate::model::stage::Stage;
use crate::shop::Refusal;
use crate::shop::leak_runs::ReadNow;
use crate::unit::Unit;
use crate::web::app::App;
use crate::web::error::beside;
use crate::web::form::{Form, Typed, Wrong};
use crate::web::kit::{self, JobSheet, Table};
use crate::web::page::{Frame, page, retry, see_other};
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};

const KIND: &str = "leak-decay";

/// Job and section of an address.
#[derive(Debug, Clone, Deserialize)]
pub struct At {
    id: JobId,
    subject: String,
}

#[derive(Template)]
#[template(path = "job/leak_start.html")]
struct StartPage {
    frame: Frame,
    sheet: JobSheet,
    form: Form,
    title: String,
    lead: String,
    action: String,
    groups: Vec<record::Group>,
    /// The section is over its rating: the tick that says so is asked.
    asks_rating: bool,
    cancel: String,
    may_record: bool,
    /// When the first temperature was read and now, as the timer reads them, and the same in words; empty before.
    settling: Option<[String; 3]>,
}

#[derive(Template)]
#[template(path = "job/leak_run.html")]
struct RunPage {
    frame: Frame,
    sheet: JobSheet,
    form: Form,
    title: String,
    lead: String,
    action: String,
    sums: String,
    start: String,
    facts: Vec<Fact>,
    now: String,
    /// Start and now as the timer reads them, and minutes until a tight section shows it.
    started_at: String,
    now_at: String,
    minutes: String,
    passed: String,
    shown: Shown,
    readings: Table,
    is_correction: bool,
    may_record: bool,
}

#[derive(Template)]
#[template(source = "{{ shown }}", ext = "html")]
struct SumsPart {
    shown: Shown,
}

async fn open(app: &App, who: Visitor, at: &At) -> Result<(JobPage, Section, Option<LeakRun>), Error> {
    let job = JobPage::open(app, who, at.id).await?;
    let section = section_of(&job, &at.subject)?;
    let run = db::leak_runs::find_open(&mut *app.read().await?, job.who.branch.id, at.id, section).await?;
    Ok((job, section, run))
}

/// `GET /jobs/{id}/leak-decay/{subject}`: the test that runs, else the form that starts one.
pub async fn show(State(app): State<App>, who: Visitor, Path(at): Path<At>) -> Answer {
    let (job, section, run) = open(&app, who, &at).await?;
    let instruments = Instruments::open(&app, &job).await?;
    if let Some(run) = run {
        return page(run_page(job, &instruments, &run, Form::blank()));
    }
    let form = leak_start::blank(&job, section);
    page(start_page(job, &instruments, section, form))
}

/// `POST /jobs/{id}/leak-decay/{subject}`: the test begins, with the first reading.
pub async fn create(State(app): State<App>, who: Visitor, Path(at): Path<At>, typed: Typed) -> Answer {
    let (job, section, _) = open(&app, who, &at).await?;
    let instruments = Instruments::open(&app, &job).await?;
    let mut form = Form::from(typed).scoped(KIND);
    if form.value("then") == "settle" {
        // The first of two temperatures: from here the server counts the three minutes.
        if form.number("settled_c", Unit::Celsius, -60.0..=150.0).is_none() {
            return retry(start_page(job, &instruments, section, form));
        }
        form.set("settled_at", stamp(job.now));
        return page(start_page(job, &instruments, section, form));
    }
    let Some((set_up, first)) = leak_start::read(&job, &instruments, section, &mut form) else {
        return retry(start_page(job, &instruments, section, form));
    };
    match app.shop.start_leak_run(&job.who.actor, form.key(), at.id, set_up, first).await {
        // One that runs already is shown, whoever started it.
        Ok(_) | Err(Refusal::Stale) => see_other(path::job_slot(at.id, KIND, &at.subject)),
        Err(refusal) => {
            beside(&mut form, refusal)?;
            retry(start_page(job, &instruments, section, form))
        }
    }
}

/// `POST /jobs/{id}/leak-decay/{subject}/readings`: one reading more, and on (`then`): keep, record, foam.
pub async fn read(State(app): State<App>, who: Visitor, Path(at): Path<At>, typed: Typed) -> Answer {
    let (job, section, run) = open(&app, who, &at).await?;
    let here = path::job_slot(at.id, KIND, &at.subject);
    // Sent again after the test ended: the page says how it ended.
    let Some(run) = run else { return see_other(path::job_stage(at.id, Stage::Proving)) };
    let instruments = Instruments::open(&app, &job).await?;
    let mut form = Form::from(typed).scoped(KIND);
    let then = form.value("then").to_owned();
    if then == "foam" {
        app.shop.give_up_leak_run(&job.who.actor, form.key(), at.id, section).await?;
        return see_other(path::job_slot(at.id, "leak-joints", &at.subject));
    }
    let is_record = then == "record";
    let is_blank = ["now_kpa", "now_c"].iter().all(|name| form.value(name).trim().is_empty());
    let seen = if is_record && is_blank { None } else { read_now(&mut form) };
    let is_correction = job.file.entry(KIND, section.code()).is_some();
    let reason = if is_record && is_correction { form.text("replaces_reason", 400) } else { None };
    if form.sound().is_none() {
        return retry(run_page(job, &instruments, &run, form));
    }
    let (actor, key) = (&job.who.actor, form.key());
    let done = if is_record {
        let reason = reason.unwrap_or_default();
        app.shop.record_leak_run(actor, key, at.id, section, seen, reason).await.map(|_| ())
    } else {
        let Some(seen) = seen else { return retry(run_page(job, &instruments, &run, form)) };
        app.shop.read_leak_run(actor, key, at.id, section, seen).await
    };
    match done {
        Ok(()) if is_record => see_other(path::job_stage(at.id, Stage::Proving)),
        Ok(()) => see_other(here),
        Err(refusal) => {
            beside(&mut form, refusal)?;
            retry(run_page(job, &instruments, &run, form))
        }
    }
}

/// `POST /jobs/{id}/leak-decay/{subject}/sums`: verdict and picture for what is typed, nothing kept.
pub async fn sums(State(app): State<App>, who: Visitor, Path(at): Path<At>, typed: Typed) -> Answer {
    let (job, _, run) = open(&app, who, &at).await?;
    let run = run.ok_or(Error::NotFound)?;
    let mut form = Form::from(typed).scoped(KIND);
    let more = read_now(&mut form).map(|seen| LeakReading { at: job.now, kpa: seen.kpa, c: seen.c });
    let run = match more.filter(|reading| run.readings.iter().all(|earlier| earlier.at < reading.at)) {
        Some(reading) => run.with(reading),
        None => run,
    };
    page(SumsPart { shown: shown(&job, &run) })
}

fn read_now(form: &mut Form) -> Option<ReadNow> {
    let kpa = form.number("now_kpa", Unit::Kilopascal, 0.0..=100_000.0);
    let c = form.number("now_c", Unit::Celsius, -60.0..=150.0);
    Some(ReadNow { kpa: kpa?, c: c? })
}

fn start_page(job: JobPage, instruments: &Instruments, section: Section, form: Form) -> StartPage {
    let w = job.w();
    let form = form.scoped(KIND);
    StartPage {
        sheet: job.sheet(Stage::Proving),
        title: w.t(format!("slot-leak-decay-{}", section.code())),
        lead: leak_said::lead(&job, section),
        action: path::job_slot(job.id(), KIND, section.code()),
        groups: leak_start::groups(&job, instruments, &form),
        asks_rating: matches!(form.wrong("start_kpa"), Some(Wrong::Rule(..))) || form.tick("over_rating"),
        cancel: path::job_stage(job.id(), Stage::Proving),
        may_record: job.file.job.state.is_live(),
        settling: leak_start::settled_at(&form).map(|at| {
            let time = |at: OffsetDateTime| w.time(job.who.zone.local(at).time());
            let values = [("first", time(at).into()), ("second", time(at + time::Duration::minutes(3)).into())];
            [stamp(at), stamp(job.now), w.tv("leak-decay-settling-since", &values)]
        }),
        frame: job.frame,
        form,
    }
}

/// An instant as a script reads it.
fn stamp(at: OffsetDateTime) -> String {
    at.format(&Rfc3339).unwrap_or_default()
}

/// What a running test shows: verdict and picture as soon as there are two readings.
fn shown(job: &JobPage, run: &LeakRun) -> Shown {
    match run.decay() {
        Some(decay) => leak_said::shown(job, &leak_said::entry_of(job, decay)),
        None => Shown::default(),
    }
}

fn run_page(job: JobPage, instruments: &Instruments, run: &LeakRun, form: Form) -> RunPage {
    let w = job.w();
    let section = run.set_up.section;
    let time = |at: OffsetDateTime| w.time(job.who.zone.local(at).time());
    let here = path::job_slot(job.id(), KIND, section.code());
    let start = run.readings.first().copied().unwrap_or(LeakReading { at: run.started_at, kpa: 0.0, c: 0.0 });
    let minutes = (job.now - start.at).as_seconds_f64() / 60.0;
    let planned = leak_said::planned_min(&job, run);
    RunPage {
        sheet: job.sheet(Stage::Proving),
        title: w.t(format!("slot-leak-decay-{}", section.code())),
        lead: leak_said::lead(&job, section),
        action: format!("{here}/readings"),
        sums: format!("{here}/sums"),
        start: w.tv("leak-decay-start-at", &[("time", time(start.at).into())]),
        facts: run_facts(&job, instruments, run, start),
        now: w.tv("leak-decay-now-at", &[("time", time(job.now).into())]),
        started_at: stamp(start.at),
        now_at: stamp(job.now),
        minutes: planned.map(|minutes| format!("{minutes:.1}")).unwrap_or_default(),
        passed: leak_said::passed(w, minutes, planned),
        shown: shown(&job, run),
        readings: leak_said::table(&job, &run.readings, |kpa| absolute(run, kpa)),
        is_correction: job.file.entry(KIND, section.code()).is_some(),
        may_record: job.file.job.state.is_live(),
        frame: job.frame,
        form: form.scoped(KIND),
    }
}

fn absolute(run: &LeakRun, kpa: f64) -> f64 {
    match run.set_up.pressure_kind {
        crate::model::evidence::PressureKind::Gauge => kpa + run.set_up.ambient_kpa,
        crate::model::evidence::PressureKind::Absolute => kpa,
    }
}

fn run_facts(job: &JobPage, instruments: &Instruments, run: &LeakRun, start: LeakReading) -> Vec<Fact> {
    let known = &run.set_up;
    Facts::new(job.w(), KIND)
        .number("start_kpa", start.kpa, 2, "kPa")
        .number("start_c", start.c, 1, "°C")
        .number("volume_l", known.volume_l, 2, "L")
        .coded("test_gas", known.test_gas)
        .text("gauge_id", instruments.code_of(known.gauge_id))
        .text("thermometer_id", instruments.code_of(known.thermometer_id))
        .done()
}

fn of(entry: &Entry) -> Option<&LeakDecay> {
    if let Evidence::LeakDecay(decay) = &entry.body { Some(decay) } else { None }
}

/// A recorded test, shown again.
pub fn facts(job: &JobPage, entry: &Entry) -> Vec<Fact> {
    let Some(seen) = of(entry) else { return Vec::new() };
    let w = job.w();
    let percent = 100.0 * seen.volume_relative_standard_uncertainty;
    Facts::new(w, KIND)
        .coded("test_gas", seen.test_gas)
        .number("start_kpa", seen.start_kpa, 2, "kPa")
        .number("end_kpa", seen.end_kpa, 2, "kPa")
        .coded("pressure_kind", seen.pressure_kind)
        .number("ambient_kpa", seen.ambient_kpa, 1, "kPa")
        .number("start_c", seen.start_c, 1, "°C")
        .number("end_c", seen.end_c, 1, "°C")
        .number("minutes", seen.duration_min(), 1, "min")
        .number("volume_l", seen.volume_l, 2, "L")
        .number("volume_uncertainty_percent", percent, 1, "%")
        .text("volume_how", &seen.volume_how)
        .number("lowest_rating_gauge_kpa", seen.lowest_rating_gauge_kpa, 0, "kPa")
        .text("instruments", job.instrument_codes(&entry.instruments))
        .number("pressure_resolution_kpa", seen.pressure_resolution_kpa, 3, "kPa")
        .number("pressure_standard_uncertainty_kpa", seen.pressure_standard_uncertainty_kpa, 3, "kPa")
        .number("temperature_standard_uncertainty_k", seen.temperature_standard_uncertainty_k, 3, "K")
        .text("unsettled_reason", &seen.unsettled_reason)
        .done()
}
