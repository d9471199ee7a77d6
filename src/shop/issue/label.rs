//! The label of a vehicle: its code is drawn once, by a deed; the label itself as often as it is asked for.

use time::{Date, OffsetDateTime};
use uuid::Uuid;

use super::{Ground, content, of_job};
use crate::db;
use crate::db::labels::Labelled;
use crate::model::Coded;
use crate::model::approval_mark::{ApprovalMark, Regulation};
use crate::model::deed::Deed;
use crate::model::ids::JobId;
use crate::model::job::JobKind;
use crate::model::paper::vehicle_label::{LabelContainer, LabelPart, VehicleLabelContent};
use crate::model::part::{Part, PartCategory};
use crate::model::person::Actor;
use crate::papers;
use crate::rules;
use crate::seal::{self, VerifyCode};
use crate::shop::assessed::Assessed;
use crate::shop::{Refusal, Shop, Work};

/// Parts on the plate of UN R115, Annexes 2A and 2B, beside the container: vaporiser or pressure regulator, gas fuelling
/// system, safety device.
const PLATED: [PartCategory; 6] = [
    PartCategory::Vaporiser,
    PartCategory::PressureRegulator,
    PartCategory::InjectorRail,
    PartCategory::FillingUnit,
    PartCategory::Multivalve,
    PartCategory::CylinderValve,
];

fn vehicle_label(ground: &Ground<'_>, on: Date, code: String, url: Option<String>) -> VehicleLabelContent {
    let (file, w) = (ground.file, &ground.w);
    let duties = rules::intervals::duties(file, ground.book, on);
    let fitted: Vec<&Part> = file.fitted().collect();
    let is_whole = |part: &&&Part| {
        part.approval_mark.parse::<ApprovalMark>().is_ok_and(|mark| mark.regulation == Regulation::R115)
    };
    let maker = fitted
        .iter()
        .find(|part| matches!(part.category, PartCategory::Vaporiser | PartCategory::PressureRegulator))
        .map(|part| part.maker.clone())
        .unwrap_or_default();
    let kind = w.t(format!("system-kind-{}", file.job.system_kind.code()));
    let parts = fitted.iter().filter(|part| PLATED.contains(&part.category) && !part.approval_mark.is_empty());
    let is_stored = |part: &&&Part| matches!(part.category, PartCategory::Container | PartCategory::Cylinder);
    let container = |part: &&Part| {
        let is_lpg = part.category == PartCategory::Container;
        #[expect(clippy::cast_possible_truncation, reason = "a few hundred litres; rounded down on purpose")]
        let capacity_l = part.capacity_l.unwrap_or(0.0).floor() as i64;
        LabelContainer {
            serial: part.serial.clone(),
            approval_mark: part.approval_mark.clone(),
            capacity_l,
            fill_limit_percent: is_lpg.then_some(80),
            working_pressure_bar: (!is_lpg).then_some(200),
            made: of_job::partial(part.made_on, part.made_precision),
            next_test_on: duties.iter().filter(|duty| duty.part_id == Some(part.id)).map(|duty| duty.due_on).min(),
        }
    };
    let identity = file.vehicle.identity();
    VehicleLabelContent {
        shop: content::shop_block(ground),
        fuel: content::gas(file.job.fuel),
        plate: file.vehicle.plate.clone(),
        vin_last_4: last_4(identity).to_owned(),
        system: [maker, kind].into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", "),
        approval: fitted.iter().find(is_whole).map(|part| part.approval_mark.clone()).unwrap_or_default(),
        parts: parts
            .map(|part| LabelPart {
                name: w.t(format!("part-category-{}", part.category.code())),
                mark: part.approval_mark.clone(),
            })
            .collect(),
        containers: fitted.iter().filter(is_stored).map(container).collect(),
        duties: duties.iter().map(|duty| content::duty_on_paper(ground, duty)).collect(),
        fitted_on: (file.job.kind == JobKind::Conversion)
            .then(|| fitted.iter().map(|part| part.fitted_on).max())
            .flatten(),
        job_number: file.job.number.clone(),
        code,
        url,
        printed_on: on,
        language: w.tag().to_owned(),
        is_demonstration: false,
    }
}

/// The last four characters.
pub(super) fn last_4(text: &str) -> &str {
    text.char_indices().rev().nth(3).map_or(text, |(at, _)| &text[at..])
}

impl Shop {
    /// Draws the code of the vehicle's label, unless it has one.
    ///
    /// # Errors
    /// [`Refusal::Gone`] when there is no such job in the branch.
    pub async fn make_label(&self, who: &Actor, key: Option<Uuid>, job: JobId) -> Result<(), Refusal> {
        let mut con = self.db.read().await?;
        let vehicle = db::jobs::find(&mut con, who.branch, job).await?.ok_or(Refusal::Gone)?.vehicle_id;
        let known = db::labels::find_of_vehicle(&mut con, who.branch, vehicle).await?;
        drop(con);
        if known.is_some() {
            return Ok(());
        }
        let mut random = [0_u8; 10];
        rand::fill(&mut random);
        let code = seal::verify_code(random).as_str().to_owned();
        self.deed(who, key, async move |mut work: Work| {
            let (branch, person, now) = (work.who.branch, work.person()?, work.now);
            // Somebody may have been quicker; a vehicle keeps its first code.
            if db::labels::find_of_vehicle(&mut work, branch, vehicle).await?.is_none() {
                db::labels::insert(&mut work, branch, vehicle, &code, person, now).await?;
            }
            work.done(Deed::LabelMade { vehicle, job }, ()).await
        })
        .await
    }

    /// The label of the job's vehicle as a PDF at its true size.
    ///
    /// # Errors
    /// [`Refusal::Gone`] when there is no such job in the branch, or the label was not made yet.
    pub async fn label_pdf(&self, who: &Actor, job: JobId, at: OffsetDateTime) -> Result<Vec<u8>, Refusal> {
        let mut con = self.db.read().await?;
        let loaded = Assessed::read(&mut con, who.branch, job, at).await?;
        let code = db::labels::find_of_vehicle(&mut con, who.branch, loaded.file.vehicle.id).await?;
        drop(con);
        let code = code.ok_or(Refusal::Gone)?;
        let (url, is_demonstration) = (self.label_url(&code), self.issuer.is_demo);
        let (content, words) = loaded.with_official(|ground| {
            let content = vehicle_label(ground, loaded.zone.day_of(at), code, url);
            (VehicleLabelContent { is_demonstration, ..content }, ground.w)
        });
        of_job::drawn(content, move |content| papers::vehicle_label::vehicle_label(content, &words)).await
    }

    /// The address behind a label's code; none while the shop cannot be reached from outside.
    pub(super) fn label_url(&self, code: &str) -> Option<String> {
        let url = self.issuer.public_url.as_ref()?;
        Some(format!("{}/vehicle/{code}", url.trim_end_matches('/')))
    }

    /// The vehicle behind a typed code, for anybody. A text that is no code and a code of no vehicle answer alike.
    pub async fn find_labelled(&self, typed: &str) -> Result<Option<Labelled>, Refusal> {
        let Some(code) = VerifyCode::read(typed) else { return Ok(None) };
        Ok(db::labels::find_by_code(&mut *self.db.read().await?, code.as_str()).await?)
    }
}
