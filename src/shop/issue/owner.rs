//! What the owner takes home, and the records that go into the folder: drawn on asking, not signed, not numbered anew.

use time::{Date, OffsetDateTime};

use super::{Ground, Spoken, content, label, of_job, record, unprintable};
use crate::model::evidence::Evidence;
use crate::model::ids::JobId;
use crate::model::paper::PersonOnPaper;
use crate::model::paper::owner_sheet::{OwnerContainer, OwnerSheetContent};
use crate::model::part::{Part, PartCategory};
use crate::model::person::Actor;
use crate::papers;
use crate::rules;
use crate::shop::assessed::Assessed;
use crate::shop::{Refusal, Shop};

/// A paper and the name of its file, in the language of who gets it.
pub type Named = (String, Vec<u8>);

fn owner_sheet(
    ground: &Ground<'_>,
    on: Date,
    (certificate_number, page_url): (String, Option<String>),
    is_demonstration: bool,
) -> OwnerSheetContent {
    let file = ground.file;
    let duties = rules::intervals::duties(file, ground.book, on);
    let vin = file.vehicle.identity();
    let storage = file.fitted().filter(|p| matches!(p.category, PartCategory::Container | PartCategory::Cylinder));
    let filled_l = file
        .shown("container-sizing", "", |body| match body {
            Evidence::ContainerSizing(sheet) => Some(sheet),
            _ => None,
        })
        .map(|(_, sheet)| sheet.liquid_l);
    #[expect(clippy::cast_possible_truncation, reason = "a few hundred litres; rounded down on purpose")]
    let floor = |litres: f64| litres.floor() as i64;
    let container = |part: &Part| {
        let is_lpg = part.category == PartCategory::Container;
        OwnerContainer {
            location: part.place.clone(),
            capacity_l: floor(part.capacity_l.unwrap_or(0.0)),
            fill_limit_percent: is_lpg.then_some(80),
            filled_l: filled_l.filter(|_| is_lpg).map(floor),
            working_pressure_bar: (!is_lpg).then_some(200),
            hand_valve: String::new(),
            next_test_on: duties.iter().filter(|duty| duty.part_id == Some(part.id)).map(|duty| duty.due_on).min(),
            end_of_life_on: None,
        }
    };
    OwnerSheetContent {
        shop: content::shop_block(ground),
        issued_on: on,
        job_number: file.job.number.clone(),
        certificate_number,
        vehicle: file.vehicle.title(),
        plate: file.vehicle.plate.clone(),
        vin_last_4: label::last_4(vin).to_owned(),
        has_vin: !file.vehicle.vin.is_empty(),
        fuel: content::gas(file.job.fuel),
        containers: storage.map(container).collect(),
        plate_place: String::new(),
        emergency_number: ground.w.t("issue-emergency-number"),
        duties: duties.iter().map(|duty| content::duty_on_paper(ground, duty)).collect(),
        further_cautions: Vec::new(),
        page_url,
        language: ground.w.tag().to_owned(),
        is_demonstration,
    }
}

impl Shop {
    /// The owner's sheet of a job as a PDF, in the keeper's language.
    ///
    /// # Errors
    /// [`Refusal::Field`] when the vehicle's name or plate has letters that no paper can print.
    pub async fn owner_sheet_pdf(&self, who: &Actor, job: JobId, at: OffsetDateTime) -> Result<Named, Refusal> {
        let mut con = self.db.read().await?;
        let loaded = Assessed::read(&mut con, who.branch, job, at).await?;
        let issued = crate::db::papers::list_in_force(&mut con, who.branch, job).await?;
        let number = issued.first().map(|paper| paper.number.clone()).unwrap_or_default();
        let code = crate::db::labels::find_of_vehicle(&mut con, who.branch, loaded.file.vehicle.id).await?;
        let page_url = code.and_then(|code| self.label_url(&code));
        drop(con);
        unprintable::vehicle(&loaded.file.vehicle)?;
        let (content, words, size) = loaded.with_keeper(|ground| {
            let content = owner_sheet(ground, loaded.zone.day_of(at), (number, page_url), self.issuer.is_demo);
            (content, ground.w, ground.branch.paper_size)
        });
        let pdf =
            of_job::drawn(content, move |content| papers::owner_sheet::owner_sheet(content, &words, size)).await?;
        Ok((words.t("owner-file-name"), pdf))
    }

    /// The test record of a job as a PDF; authorised by whoever asks for it when they may sign, else by nobody yet.
    pub async fn test_record_pdf(
        &self,
        who: &Actor,
        job: JobId,
        at: OffsetDateTime,
        spoken: Spoken,
    ) -> Result<Vec<u8>, Refusal> {
        let mut con = self.db.read().await?;
        let loaded = Assessed::read(&mut con, who.branch, job, at).await?;
        drop(con);
        let today = loaded.zone.day_of(at);
        let authorised_by = match who.may_sign_on(today) {
            Some(grant) => PersonOnPaper {
                name: who.name.clone(),
                authorisation: grant.authorisation_number.clone(),
                authorised_until_on: Some(grant.expires_on),
            },
            None => PersonOnPaper { name: String::new(), authorisation: String::new(), authorised_until_on: None },
        };
        let (content, words, size) = loaded.with_spoken(spoken, |ground| {
            let content = record::test_record(ground, today, authorised_by, self.issuer.is_demo);
            (content, ground.w, ground.branch.paper_size)
        });
        of_job::drawn(content, move |content| papers::test_record::test_record(content, &words, size)).await
    }
}
