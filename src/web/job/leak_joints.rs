//! Joints of a section searched one by one, with foam or a detector.
//!
//! The list begins with the joints that such a section commonly has; each name can be changed, lines can be added, and a
//! line whose name is cleared drops out as long as it says nothing.

use super::JobPage;
use super::facts::{Fact, Facts};
use super::record::{Group, Recorded, Taken, instrument_choices};
use crate::model::Coded;
use crate::model::evidence::{Entry, Evidence, Joint, JointVerdict, LeakJoints, LeakMethod, Section};
use crate::model::ids::InstrumentId;
use crate::model::instrument::{InstrumentKind, InstrumentRecord};
use crate::model::stage::Stage;
use crate::unit::Unit;
use crate::web::Error;
use crate::web::app::App;
use crate::web::form::{Form, Wrong};
use crate::web::kit;

/// The form of [`LeakJoints`].
#[derive(Debug)]
pub struct LeakJointsForm {
    section: Section,
    detectors: Vec<InstrumentRecord>,
}

/// Empty lines at the end of the list.
const SPARE: usize = 2;

fn of(entry: &Entry) -> Option<&LeakJoints> {
    if let Evidence::LeakJoints(joints) = &entry.body { Some(joints) } else { None }
}

/// The section named in an address, where this job has it.
pub fn section_of(job: &JobPage, subject: &str) -> Result<Section, Error> {
    let section: Section = subject.parse().map_err(|_| Error::NotFound)?;
    Evidence::sections(job.file.job.fuel).contains(&section).then_some(section).ok_or(Error::NotFound)
}

impl LeakJointsForm {
    fn row(at: usize, field: &str) -> String {
        format!("joints[{at}][{field}]")
    }

    fn read_joints(form: &mut Form) -> Vec<Joint> {
        let mut joints = Vec::new();
        for row in form.rows("joints") {
            let (name, verdict) = (row.name("name"), row.name("verdict"));
            let is_unnamed = form.value(&name).trim().is_empty();
            if is_unnamed && form.value(&verdict) == JointVerdict::NotTested.code() {
                continue;
            }
            let joint = (form.text(&name, 120), form.choice(&verdict));
            if let (Some(name), Some(verdict)) = joint {
                joints.push(Joint { name, verdict });
            }
        }
        joints
    }
}

impl Recorded for LeakJointsForm {
    const KIND: &'static str = "leak-joints";
    const STAGE: Stage = Stage::Proving;

    async fn open(app: &App, job: &JobPage, subject: &str) -> Result<Self, Error> {
        let section = section_of(job, subject)?;
        Ok(Self { section, detectors: job.instruments(app, InstrumentKind::LeakDetector).await? })
    }

    fn blank(&self, job: &JobPage) -> Form {
        let names = job.w().t(format!("joints-{}", self.section.code()));
        let named = names.lines().map(str::trim).filter(|name| !name.is_empty()).enumerate();
        named.fold(Form::blank().with("method", LeakMethod::Foam.code()), |form, (at, name)| {
            form.with(&Self::row(at, "name"), name).with(&Self::row(at, "verdict"), JointVerdict::NotTested.code())
        })
    }

    fn filled(&self, _: &JobPage, entry: &Entry) -> Form {
        let Some(seen) = of(entry) else { return Form::blank() };
        let expires = seen.foam_expires_on.map(|on| on.to_string()).unwrap_or_default();
        let detector = entry.instruments.first().map(ToString::to_string).unwrap_or_default();
        let form = Form::blank()
            .with("method", seen.method.code())
            .with("pressure_gauge_kpa", seen.pressure_gauge_kpa.to_string())
            .with("foam_batch", &seen.foam_batch)
            .with("foam_expires_on", expires)
            .with("detector_id", detector);
        seen.joints.iter().enumerate().fold(form, |form, (at, joint)| {
            form.with(&Self::row(at, "name"), &joint.name).with(&Self::row(at, "verdict"), joint.verdict.code())
        })
    }

    fn groups(&self, job: &JobPage, form: &Form) -> Vec<Group> {
        let w = job.w();
        let verdicts = kit::coded::<JointVerdict>(&w);
        let lines = form.rows_shown("joints", 0, SPARE).into_iter().map(|row| {
            vec![kit::text(form, &w, row.name("name")), kit::pick(form, &w, row.name("verdict"), &verdicts)]
        });
        let detectors = instrument_choices(job, &self.detectors);
        let heads = vec![w.t("leak-joints-name"), w.t("leak-joints-verdict")];
        vec![
            Group::new(
                "",
                vec![
                    kit::pick(form, &w, "method", &kit::coded::<LeakMethod>(&w)),
                    kit::number(form, &w, "pressure_gauge_kpa"),
                ],
            ),
            Group::new(
                w.t("leak-joints-with"),
                vec![
                    kit::text(form, &w, "foam_batch"),
                    kit::date(form, &w, "foam_expires_on"),
                    kit::choice(form, &w, "detector_id", &detectors),
                ],
            ),
            Group::table("joints", w.t("leak-joints-joints"), heads, lines.collect()).noted(w.t("leak-joints-note")),
        ]
    }

    fn read(&self, _: &JobPage, form: &mut Form) -> Option<Taken> {
        let method = form.choice::<LeakMethod>("method");
        let pressure = form.number("pressure_gauge_kpa", Unit::Kilopascal, 0.0..=30_000.0);
        let foam_batch = form.opt_text("foam_batch", 60).unwrap_or_default();
        let foam_expires_on = form.opt_date("foam_expires_on");
        let detector = form.opt_choice::<InstrumentId>("detector_id");
        if detector.is_some_and(|id| !self.detectors.iter().any(|record| record.instrument.id == id)) {
            form.fail("detector_id", Wrong::NotAChoice);
        }
        match method {
            Some(LeakMethod::Foam) if form.value("foam_expires_on").trim().is_empty() => {
                form.fail("foam_expires_on", Wrong::Rule("leak-joints-foam-needs-date", Vec::new()));
            }
            Some(LeakMethod::Detector) if form.value("detector_id").is_empty() => {
                form.fail("detector_id", Wrong::Rule("leak-joints-which-detector", Vec::new()));
            }
            _ => {}
        }
        let joints = Self::read_joints(form);
        if joints.is_empty() && form.sound().is_some() {
            form.fail("joints", Wrong::Rule("leak-joints-none", Vec::new()));
        }
        form.sound()?;
        let method = method?;
        // What belongs to the other method is not carried along: it did not serve.
        let by_foam = method == LeakMethod::Foam;
        let body = Evidence::LeakJoints(LeakJoints {
            section: self.section,
            method,
            pressure_gauge_kpa: pressure?,
            foam_batch: if by_foam { foam_batch } else { String::new() },
            foam_expires_on: foam_expires_on.filter(|_| by_foam),
            joints,
        });
        Some(Taken { instruments: detector.filter(|_| !by_foam).into_iter().collect(), ..Taken::of(body) })
    }

    fn facts(job: &JobPage, entry: &Entry) -> Vec<Fact> {
        let Some(seen) = of(entry) else { return Vec::new() };
        let w = job.w();
        let expires = seen.foam_expires_on.map(|on| w.medium_date(on)).unwrap_or_default();
        let said = |joint: &Joint| {
            let verdict = w.t(format!("joint-verdict-{}", joint.verdict));
            w.tv("leak-joints-said", &[("name", joint.name.as_str().into()), ("verdict", verdict.into())])
        };
        let joints = seen.joints.iter().map(said).collect::<Vec<_>>().join(" · ");
        Facts::new(w, Self::KIND)
            .coded("method", seen.method)
            .number("pressure_gauge_kpa", seen.pressure_gauge_kpa, 0, "kPa")
            .text("foam_batch", &seen.foam_batch)
            .text("foam_expires_on", expires)
            .text("detector_id", job.instrument_codes(&entry.instruments))
            .text("joints", joints)
            .done()
    }
}
