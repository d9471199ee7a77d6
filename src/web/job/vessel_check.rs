//! Containers or cylinders looked at one by one: in which ways, what was found, what it means, what was done.

use super::JobPage;
use super::deficiencies::PHOTOS;
use super::facts::{Fact, Facts};
use super::record::{Group, Recorded, Taken};
use crate::model::Coded;
use crate::model::evidence::{
    Entry, Evidence, VesselCheck, VesselFinding, VesselInspection, VesselLevel, VesselLooked,
};
use crate::model::ids::{AttachmentId, PartId};
use crate::model::part::Part;
use crate::model::stage::Stage;
use crate::web::Error;
use crate::web::app::App;
use crate::web::form::{Form, Row, Wrong};
use crate::web::kit::{self, Choice};

/// The form of [`VesselCheck`].
#[derive(Debug)]
pub struct VesselCheckForm;

/// Empty lines at the end of the findings.
const SPARE: usize = 2;

fn of(entry: &Entry) -> Option<&VesselCheck> {
    if let Evidence::VesselCheck(one) = &entry.body { Some(one) } else { None }
}

fn vessels(job: &JobPage) -> Vec<&Part> {
    job.file.fitted().filter(|part| part.is_vessel()).collect()
}

fn name(job: &JobPage, part: &Part) -> String {
    let kind = job.w().t(format!("part-category-{}", part.category.code()));
    format!("{kind} {} {}", part.maker, part.serial)
}

/// The ticks of one vessel carry its id, so that a vessel that came meanwhile moves no tick to another.
fn kinds_name(part: PartId) -> String {
    format!("kinds-{part}")
}

fn read_finding(job: &JobPage, form: &mut Form, row: &Row) -> Option<VesselFinding> {
    let part_id: Option<PartId> = form.choice(&row.name("vessel"));
    if part_id.is_some_and(|id| !vessels(job).iter().any(|part| part.id == id)) {
        form.fail(&row.name("vessel"), Wrong::NotAChoice);
    }
    let level: Option<VesselLevel> = form.choice(&row.name("level"));
    let words = form.text(&row.name("words"), 400);
    let action = form.text(&row.name("action"), 400);
    let photo: Option<AttachmentId> = form.opt_choice(&row.name("photo"));
    if photo.is_some_and(|id| !job.file.attachments.iter().any(|file| file.id == id)) {
        form.fail(&row.name("photo"), Wrong::NotAChoice);
    }
    Some(VesselFinding { part_id: part_id?, level: level?, words: words?, action: action?, photo })
}

impl Recorded for VesselCheckForm {
    const KIND: &'static str = "vessel-check";
    const STAGE: Stage = Stage::Fitting;

    async fn open(_: &App, _: &JobPage, _: &str) -> Result<Self, Error> {
        Ok(Self)
    }

    fn blank(&self, _: &JobPage) -> Form {
        Form::blank()
    }

    fn filled(&self, _: &JobPage, entry: &Entry) -> Form {
        let Some(seen) = of(entry) else { return Form::blank() };
        let outside_on = seen.outside_on.map(|on| on.to_string()).unwrap_or_default();
        let mut form = Form::blank()
            .with("inspector_level", &seen.inspector_level)
            .with("from_outside", &seen.from_outside)
            .with("outside_on", outside_on);
        for looked in &seen.looked {
            for kind in &looked.kinds {
                form.add(&kinds_name(looked.part_id), kind.code());
            }
        }
        seen.findings.iter().enumerate().fold(form, |form, (at, one)| {
            let name = |field: &str| format!("findings[{at}][{field}]");
            form.with(&name("vessel"), one.part_id.to_string())
                .with(&name("level"), one.level.code())
                .with(&name("words"), &one.words)
                .with(&name("action"), &one.action)
                .with(&name("photo"), one.photo.map(|id| id.to_string()).unwrap_or_default())
        })
    }

    fn groups(&self, job: &JobPage, form: &Form) -> Vec<Group> {
        let w = job.w();
        let kinds = kit::coded::<VesselInspection>(&w);
        let all = vessels(job);
        let ticks = all.iter().map(|part| kit::ticks(form, &w, kinds_name(part.id), &kinds).called(name(job, part)));
        let mut looked = Group::new(w.t("vessel-check-looked"), ticks.collect());
        "looked".clone_into(&mut looked.id);
        if all.is_empty() {
            looked = looked.noted(w.t("vessel-check-none"));
        }
        let choices: Vec<Choice> = all.iter().map(|part| Choice::new(part.id.to_string(), name(job, part))).collect();
        let levels = kit::coded::<VesselLevel>(&w);
        let files = job.file.attachments.iter().filter(|file| file.slot == PHOTOS);
        let photos: Vec<Choice> = files.map(|file| Choice::new(file.id.to_string(), file.name.clone())).collect();
        let rows = form.rows_shown("findings", 0, SPARE).into_iter().map(|row| {
            vec![
                kit::choice(form, &w, row.name("vessel"), &choices),
                kit::choice(form, &w, row.name("level"), &levels),
                kit::text(form, &w, row.name("words")),
                kit::text(form, &w, row.name("action")),
                kit::choice(form, &w, row.name("photo"), &photos),
            ]
        });
        let heads = ["vessel", "level", "words", "action", "photo"].map(|one| w.t(format!("vessel-check-{one}")));
        vec![
            looked,
            Group::table("findings", w.t("vessel-check-findings"), heads.to_vec(), rows.collect())
                .noted(w.t("vessel-check-findings.lead")),
            Group::new(
                w.t("vessel-check-by"),
                vec![
                    kit::text(form, &w, "inspector_level").optional(),
                    kit::text(form, &w, "from_outside").optional(),
                    kit::date(form, &w, "outside_on").optional(),
                ],
            ),
        ]
    }

    fn read(&self, job: &JobPage, form: &mut Form) -> Option<Taken> {
        let mut looked = Vec::new();
        for part in vessels(job) {
            let kinds = form.ticks::<VesselInspection>(&kinds_name(part.id));
            if !kinds.is_empty() {
                looked.push(VesselLooked { part_id: part.id, kinds });
            }
        }
        let rows = form.rows("findings");
        let findings: Vec<_> = rows.iter().filter_map(|row| read_finding(job, form, row)).collect();
        let inspector_level = form.opt_text("inspector_level", 120).unwrap_or_default();
        let from_outside = form.opt_text("from_outside", 200).unwrap_or_default();
        let outside_on = form.opt_past_date("outside_on", job.today);
        if looked.is_empty() && form.sound().is_some() {
            form.fail("looked", Wrong::Rule("vessel-check-nothing", Vec::new()));
        }
        if !from_outside.is_empty() && form.value("outside_on").trim().is_empty() {
            form.fail("outside_on", Wrong::Rule("vessel-check-outside-day", Vec::new()));
        }
        form.sound()?;
        let attachments = findings.iter().filter_map(|one| one.photo).collect();
        let body = Evidence::VesselCheck(VesselCheck { looked, findings, inspector_level, from_outside, outside_on });
        Some(Taken { attachments, ..Taken::of(body) })
    }

    fn facts(job: &JobPage, entry: &Entry) -> Vec<Fact> {
        let Some(seen) = of(entry) else { return Vec::new() };
        let w = job.w();
        let of_part = |id: PartId| {
            let part = job.file.parts.iter().find(|part| part.id == id);
            part.map(|part| name(job, part)).unwrap_or_default()
        };
        let looked = seen.looked.iter().map(|one| {
            let kinds = one.kinds.iter().map(|kind| w.t(format!("vessel-inspection-{}", kind.code())));
            Fact { label: of_part(one.part_id), value: kinds.collect::<Vec<_>>().join(", ") }
        });
        let findings = seen.findings.iter().map(|one| {
            let level = w.t(format!("vessel-level-{}", one.level.code()));
            Fact { label: of_part(one.part_id), value: format!("{level} · {} · {}", one.words, one.action) }
        });
        let outside_on = seen.outside_on.map(|on| w.medium_date(on)).unwrap_or_default();
        let rest = Facts::new(w, Self::KIND)
            .text("inspector_level", &seen.inspector_level)
            .text("from_outside", &seen.from_outside)
            .text("outside_on", outside_on)
            .done();
        looked.chain(findings).chain(rest).collect()
    }
}
