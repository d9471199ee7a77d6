//! The fitting record of a job: numbered by the job, not signed.

use time::{Date, OffsetDateTime};

use super::{Ground, Spoken, content, of_job};
use crate::model::Coded;
use crate::model::evidence::{CheckAnswer, Evidence, LevelSensingKind};
use crate::model::ids::JobId;
use crate::model::paper::fitting_record::{
    CheckGroup, CheckOnPaper, CheckState, CylinderOnPaper, FITTING_RECORD_FORMAT, FittedPart, FittingRecordContent,
    LevelOnPaper,
};
use crate::model::paper::measured::Quantity;
use crate::model::paper::work_sheet::WorkProof;
use crate::model::part::Part;
use crate::model::person::Actor;
use crate::model::stage::Stage;
use crate::papers::{Pictures, fitting_record as paper};
use crate::rules::CheckLine;
use crate::shop::assessed::Assessed;
use crate::shop::{Refusal, Shop};

fn fitting_record(
    ground: &Ground<'_>,
    on: Date,
    proofs: Vec<WorkProof>,
    pictures: &Pictures,
    is_demonstration: bool,
) -> FittingRecordContent {
    let (file, w) = (ground.file, &ground.w);
    let of = |part: &Part| fitted(ground, part);
    let mut on_it: Vec<&Part> = file.fitted().collect();
    on_it.sort_by_key(|part| (part.fitted_in != file.job.id, part.entered_at, part.id));
    let removed = file.parts.iter().filter(|part| part.removed_in == Some(file.job.id));
    let table = file.shown("cylinder-table", "", |body| match body {
        Evidence::CylinderTable(table) => Some(table),
        _ => None,
    });
    let row = |row: &crate::model::evidence::CylinderRow| CylinderOnPaper {
        engine_cylinder: row.engine_cylinder,
        petrol_connector: row.petrol_connector.clone(),
        control_pin: row.control_pin.clone(),
        branch_mark: row.branch_mark.clone(),
        gas_injector: row.gas_injector,
        nozzle: Quantity::rounded(row.nozzle_mm, 2, "mm"),
        answers: row.answers,
    };
    let level = file.shown("level-sensing", "", |body| match body {
        Evidence::LevelSensing(level) => Some(level),
        _ => None,
    });
    FittingRecordContent {
        format: FITTING_RECORD_FORMAT.to_owned(),
        title: w.t("fitting-record"),
        shop: content::shop_block(ground),
        number: format!("{}-F", file.job.number),
        printed_on: on,
        job: of_job::job(ground),
        fitted: on_it.into_iter().map(of).collect(),
        removed: removed.map(of).collect(),
        cylinders: table.iter().flat_map(|(_, table)| &table.rows).map(row).collect(),
        cylinders_recorded: table.map(|(entry, _)| of_job::recorded(ground, entry)),
        checks: checks(ground),
        level: level.map(|(entry, level)| LevelOnPaper {
            how: w.t(format!("level-sensing-{}", level.how.code())),
            is_routine_explained: (level.how == LevelSensingKind::Reckoned).then_some(level.is_routine_explained),
            recorded: of_job::recorded(ground, entry),
        }),
        proofs,
        photos: of_job::photos(ground, pictures),
        entered_later: of_job::entered_later(ground, Stage::Fitting),
        cautions: vec![w.t(format!("issue-caution-{}", file.job.fuel.code()))],
        rule_sets: content::rule_sets(ground),
        language: w.tag().to_owned(),
        beside_of: ground.beside_of.to_owned(),
        is_demonstration,
        software_version: env!("CARGO_PKG_VERSION").to_owned(),
    }
}

fn fitted(ground: &Ground<'_>, part: &Part) -> FittedPart {
    FittedPart {
        description: ground.w.t(format!("part-category-{}", part.category.code())),
        maker_and_type: format!("{} {}", part.maker, part.type_name).trim().to_owned(),
        approval_mark: part.approval_mark.clone(),
        component_class: part.component_class.clone(),
        serial: part.serial.clone(),
        batch: part.batch.clone(),
        made: of_job::partial(part.made_on, part.made_precision),
        capacity: part.capacity_l.and_then(|litres| Quantity::rounded(litres, 1, "L")),
        test_pressure: part.test_pressure_kpa.and_then(|kpa| Quantity::rounded(kpa, 0, "kPa")),
        place: part.place.clone(),
        fitted_on: part.fitted_on,
        was_there: part.fitted_in != ground.file.job.id,
        removed_on: part.removed_on,
        removed_reason: part.removed_reason.clone(),
        shared_reason: part.shared_reason.clone(),
    }
}

/// The checklist as the rules ask for it, answered or not, and last what was answered that no rule asks for any more.
fn checks(ground: &Ground<'_>) -> Vec<CheckGroup> {
    let w = &ground.w;
    let answers = ground.file.shown("checklist", "", |body| match body {
        Evidence::Checklist(checklist) => Some(&checklist.answers),
        _ => None,
    });
    let answers = answers.map(|(_, answers)| answers);
    let asked = ground.book.checks(&ground.file.job);
    let line = |id: &str, title: Option<&String>, source: &str| {
        let answer = answers.and_then(|answers| answers.get(id));
        let title = title.cloned().or_else(|| w.find(&format!("check-{id}"))).unwrap_or_else(|| id.to_owned());
        CheckOnPaper {
            line: title,
            source: source.to_owned(),
            state: answer.map_or(CheckState::Open, |one| match one.answer {
                CheckAnswer::Pass => CheckState::Pass,
                CheckAnswer::Fail => CheckState::Fail,
                CheckAnswer::NotApplicable => CheckState::NotApplicable,
            }),
            note: answer.map(|one| one.note.clone()).unwrap_or_default(),
            initials: answer.map(|one| one.initials.clone()).unwrap_or_default(),
            at: answer.map(|one| (ground.local)(one.at)),
        }
    };
    let mut groups: Vec<CheckGroup> = Vec::new();
    let mut add = |name: String, one: CheckOnPaper| match groups.iter_mut().find(|group| group.name == name) {
        Some(group) => group.lines.push(one),
        None => groups.push(CheckGroup { name, lines: vec![one] }),
    };
    for one in &asked {
        let name = w.find(&format!("checklist-group-{}", one.group)).unwrap_or_else(|| one.group.clone());
        add(name, line(&one.id, one.title.as_ref(), &source(ground, one)));
    }
    for id in answers.into_iter().flatten().map(|(id, _)| id) {
        if !asked.iter().any(|one| one.id == *id) {
            add(w.t("fitting-record-no-longer"), line(id, None, ""));
        }
    }
    groups
}

/// Where a line comes from; what nobody has read says so.
fn source(ground: &Ground<'_>, line: &CheckLine) -> String {
    if line.source == "common practice" {
        ground.w.t("issue-common-practice")
    } else if line.checked || line.source.contains("common practice") {
        line.source.clone()
    } else {
        ground.w.tv("issue-to-be-confirmed", &[("source", line.source.as_str().into())])
    }
}

impl Shop {
    /// The fitting record of a job as a PDF, with the proofs of its stage as the job file words them.
    ///
    /// # Errors
    /// [`Refusal::Gone`] when there is no such job in the branch.
    pub async fn fitting_record_pdf(
        &self,
        who: &Actor,
        job: JobId,
        at: OffsetDateTime,
        proofs: Vec<WorkProof>,
        spoken: Spoken,
    ) -> Result<Vec<u8>, Refusal> {
        let mut con = self.db.read().await?;
        let loaded = Assessed::read(&mut con, who.branch, job, at).await?;
        drop(con);
        let pictures = self.pictures(&loaded.file.attachments).await?;
        let (content, words, size) = loaded.with_spoken(spoken, |ground| {
            let on = loaded.zone.day_of(at);
            let content = fitting_record(ground, on, proofs, &pictures, self.issuer.is_demo);
            (content, ground.w, ground.branch.paper_size)
        });
        of_job::drawn(content, move |content| paper::fitting_record(content, &pictures, &words, size)).await
    }
}
