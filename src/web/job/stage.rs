//! The page of a stage: every slot with its current entry and the way to record or correct it.

use askama::Template;
use axum::extract::{Path, State};

use super::facts::Fact;
use super::leak_decay;
use super::leak_said::{self, Shown};
use super::reckoned::Reckoned;
use super::record::Recorded;
use super::road;
use super::sizing_sheet;
use super::{AfterDriveForm, ContainerSizingForm, EngineCalibrationForm, TrimsForm};
use super::{
    ArrivalForm, ChecklistForm, CylinderTableForm, ExhaustForm, FunctionChecksForm, HandOverForm, JobPage,
    LeakJointsForm, LevelSensingForm, NozzleSizingForm, Slot, SuitabilityForm, slots,
};
use super::{CylinderSizingForm, DischargeForm, HeatSizingForm, LineSizingForm};
use super::{DeficienciesForm, VesselCheckForm};
use crate::charts::svg;
use crate::model::evidence::{Entry, Evidence};
use crate::model::ids::JobId;
use crate::model::stage::{Stage, shown_on};
use crate::papers::drawing;
use crate::rules::Place;
use crate::rules::inspection::may_fail;
use crate::web::app::App;
use crate::web::kit::{self, JobSheet, Verdict};
use crate::web::page::{Frame, page, see_other};
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};

/// A slot as the stage page shows it.
#[derive(Debug)]
pub struct Block {
    title: String,
    /// Who and when; empty while nothing is recorded.
    note: String,
    facts: Vec<Fact>,
    verdict: Option<Verdict>,
    /// Sums laid out, as they were recorded.
    reckoned: Option<Reckoned>,
    /// A decay test: verdict and picture.
    leak: Option<Shown>,
    /// The picture of its sum, as SVG; empty for none.
    chart: String,
    /// Record or correct.
    act: String,
    href: String,
    /// Another way to record it, step by step: its words and its address.
    guide: Option<(String, String)>,
    is_recorded: bool,
    /// Most jobs do without it.
    is_extra: bool,
    /// Entries that were corrected: who, when, why.
    earlier: Vec<String>,
}

#[derive(Template)]
#[template(path = "job/stage.html")]
struct StagePage {
    frame: Frame,
    sheet: JobSheet,
    title: String,
    lead: String,
    blocks: Vec<Block>,
    /// Further places of the stage: photos, parts, findings, papers.
    places: Vec<(String, String)>,
    may_record: bool,
}

impl StagePage {
    /// The first block that is still to record and no extra: its button is the main one, the others are outlined.
    fn next(&self) -> Option<usize> {
        self.blocks.iter().position(|block| !block.is_recorded && !block.is_extra)
    }
}

/// `GET /jobs/{id}`: the stage on which the job stands.
pub async fn index(State(app): State<App>, who: Visitor, Path(id): Path<JobId>) -> Answer {
    let job = JobPage::open(&app, who, id).await?;
    see_other(path::job_stage(id, job.stands_at()))
}

/// `GET /jobs/{id}/stages/{stage}`.
pub async fn show(State(app): State<App>, who: Visitor, Path((id, stage)): Path<(JobId, String)>) -> Answer {
    let stage: Stage = stage.parse().map_err(|_| Error::NotFound)?;
    let job = JobPage::open(&app, who, id).await?;
    let shown = shown_on(job.file.job.kind, stage);
    if shown != stage {
        return see_other(path::job_stage(id, shown));
    }
    let w = job.w();
    page(StagePage {
        sheet: job.sheet(stage),
        title: w.t(format!("stage-{stage}")),
        lead: w.t(format!("stage-{stage}.lead")),
        blocks: slots(&job.file.job, stage).into_iter().map(|slot| block(&job, slot)).collect(),
        places: places(&job, stage),
        may_record: job.file.job.state.is_live(),
        frame: job.frame,
    })
}

fn places(job: &JobPage, stage: Stage) -> Vec<(String, String)> {
    let (w, id) = (job.w(), job.id());
    let place = |key: &str, href: String| (w.t(key), href);
    let lacks_fitting = shown_on(job.file.job.kind, Stage::Fitting) != Stage::Fitting;
    let mut places = match stage {
        Stage::Intake => vec![
            place("job-photos", path::job_photos(id)),
            place("job-findings", path::job_findings(id)),
            place("estimate-title", path::job_estimate(id)),
        ],
        Stage::Fitting => vec![place("job-parts", path::job_parts(id)), place("job-photos", path::job_photos(id))],
        // What was found on the vehicle, and who carries which part, is looked at where the fitting is.
        Stage::Proving if lacks_fitting => vec![
            place("job-parts", path::job_parts(id)),
            place("job-photos", path::job_photos(id)),
            place("job-findings", path::job_findings(id)),
        ],
        Stage::Sizing if !sizing_sheet::sums(job).is_empty() => {
            vec![place("register-sizing-sheet", path::job_paper(id, "sizing-sheet"))]
        }
        Stage::Proving => vec![place("job-findings", path::job_findings(id))],
        Stage::HandOver => vec![place("job-papers", path::job_papers(id)), place("job-ending", path::job_ending(id))],
        _ => Vec::new(),
    };
    if may_fail(job.file.job.kind) && matches!(stage, Stage::Proving | Stage::HandOver) {
        places.push(place("again-title", path::job_repeat(id)));
    }
    places.push(place("notes-title", path::job_notes(id)));
    places
}

fn block(job: &JobPage, slot: Slot) -> Block {
    let w = job.w();
    let key = if slot.subject.is_empty() { slot.kind.to_owned() } else { format!("{}-{}", slot.kind, slot.subject) };
    let entry = job.file.entry(slot.kind, slot.subject);
    let said = |entry: &Entry| {
        w.tv("record-by", &[("name", entry.person_name.as_str().into()), ("when", job.when(entry.measured_at).into())])
    };
    let earlier = job.history.iter().filter(|old| {
        old.body.kind() == slot.kind
            && old.body.subject() == slot.subject
            && entry.is_some_and(|current| current.id != old.id)
    });
    let corrected = |old: &Entry| {
        let by = job.history.iter().find(|new| new.replaces_id == Some(old.id));
        let reason = by.map(|new| new.replaces_reason.clone()).unwrap_or_default();
        w.tv("record-corrected", &[("said", said(old).into()), ("reason", reason.into())])
    };
    // Driving with a log is asked for by a shop's own lines only.
    let asks_road = job.proofs.iter().any(|proof| matches!(proof.place, Place::Evidence("road", ..)));
    Block {
        title: w.t(format!("slot-{key}")),
        note: entry.map(said).unwrap_or_default(),
        facts: entry.map(|entry| facts(job, entry)).unwrap_or_default(),
        verdict: entry.and_then(|entry| verdict(job, entry)),
        reckoned: entry.and_then(|entry| reckoned(job, entry)),
        leak: entry.filter(|_| slot.kind == "leak-decay").map(|entry| leak_said::shown(job, entry)),
        chart: entry.and_then(|entry| chart(job, entry)).unwrap_or_default(),
        act: w.t(match (slot.kind, entry) {
            ("road", _) => "road-act",
            (_, Some(_)) => "record-correct",
            _ => "record-record",
        }),
        href: path::job_slot(job.id(), slot.kind, slot.subject),
        guide: (slot.kind == "leak-joints")
            .then(|| (w.t("leak-guide-begin"), path::job_guide(job.id(), slot.kind, slot.subject))),
        is_recorded: entry.is_some(),
        is_extra: slot.kind == "discharge" || (slot.kind == "road" && !asks_road),
        earlier: earlier.map(corrected).collect(),
    }
}

/// An entry of any kind, shown again.
pub fn facts(job: &JobPage, entry: &Entry) -> Vec<Fact> {
    match entry.body.kind() {
        "arrival" => ArrivalForm::facts(job, entry),
        "suitability" => SuitabilityForm::facts(job, entry),
        "nozzle-sizing" => NozzleSizingForm::facts(job, entry),
        "container-sizing" => ContainerSizingForm::facts(job, entry),
        "cylinder-sizing" => CylinderSizingForm::facts(job, entry),
        "discharge" => DischargeForm::facts(job, entry),
        "heat-sizing" => HeatSizingForm::facts(job, entry),
        "line-sizing" => LineSizingForm::facts(job, entry),
        "engine-calibration" => EngineCalibrationForm::facts(job, entry),
        "trims" => TrimsForm::facts(job, entry),
        "road" => road::facts(job, entry),
        "after-drive" => AfterDriveForm::facts(job, entry),
        "leak-joints" => LeakJointsForm::facts(job, entry),
        "leak-decay" => leak_decay::facts(job, entry),
        "exhaust" => ExhaustForm::facts(job, entry),
        "function-checks" => FunctionChecksForm::facts(job, entry),
        "hand-over" => HandOverForm::facts(job, entry),
        "cylinder-table" => CylinderTableForm::facts(job, entry),
        "checklist" => ChecklistForm::facts(job, entry),
        "level-sensing" => LevelSensingForm::facts(job, entry),
        "deficiencies" => DeficienciesForm::facts(job, entry),
        "vessel-check" => VesselCheckForm::facts(job, entry),
        _ => Vec::new(),
    }
}

/// What an entry of any kind says, where that takes a sum.
fn verdict(job: &JobPage, entry: &Entry) -> Option<Verdict> {
    match entry.body.kind() {
        "arrival" => ArrivalForm::verdict(job, entry),
        "suitability" => SuitabilityForm::verdict(job, entry),
        "engine-calibration" => EngineCalibrationForm::verdict(job, entry),
        "road" => road::verdict(job, entry),
        "after-drive" => AfterDriveForm::verdict(job, entry),
        "exhaust" => ExhaustForm::verdict(job, entry),
        "cylinder-table" => CylinderTableForm::verdict(job, entry),
        "checklist" => ChecklistForm::verdict(job, entry),
        "deficiencies" => DeficienciesForm::verdict(job, entry),
        _ => None,
    }
}

/// The picture of an entry: how long a nozzle is open over the speeds, how gas deviates on the road.
fn chart(job: &JobPage, entry: &Entry) -> Option<String> {
    if let Evidence::RoadComparison(one) = &entry.body {
        return Some(road::picture_of_panels(&job.w(), &one.comparison));
    }
    let duty = sizing_sheet::duty(&entry.body)?;
    Some(svg(&drawing::duty(&duty, &job.w()), "duty-chart"))
}

/// The sums of an entry, laid out.
pub fn reckoned(job: &JobPage, entry: &Entry) -> Option<Reckoned> {
    match entry.body.kind() {
        "nozzle-sizing" => NozzleSizingForm::reckoned(job, &entry.body),
        "container-sizing" => ContainerSizingForm::reckoned(job, &entry.body),
        "cylinder-sizing" => CylinderSizingForm::reckoned(job, &entry.body),
        "discharge" => DischargeForm::reckoned(job, &entry.body),
        "heat-sizing" => HeatSizingForm::reckoned(job, &entry.body),
        "line-sizing" => LineSizingForm::reckoned(job, &entry.body),
        "trims" => TrimsForm::reckoned(job, &entry.body),
        _ => None,
    }
}
