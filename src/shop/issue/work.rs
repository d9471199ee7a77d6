//! The work sheet of a job: its file on paper, for the bench. Neither signed nor numbered.

use time::OffsetDateTime;

use super::{Ground, content, of_job};
use crate::db;
use crate::model::Coded;
use crate::model::evidence::Evidence;
use crate::model::ids::JobId;
use crate::model::note::{About, Note};
use crate::model::paper::work_sheet::{WorkSheetContent, WorkStage};
use crate::model::person::Actor;
use crate::papers::{Pictures, work_sheet as paper};
use crate::shop::assessed::Assessed;
use crate::shop::{Refusal, Shop};

fn work_sheet(
    ground: &Ground<'_>,
    (place, wishes): (String, Vec<String>),
    stages: Vec<WorkStage>,
    pictures: &Pictures,
    at: OffsetDateTime,
) -> WorkSheetContent {
    let (file, w) = (ground.file, &ground.w);
    let arrival = file.shown("arrival", "", |body| match body {
        Evidence::Arrival(arrival) => Some(arrival),
        _ => None,
    });
    let faults = arrival.map(|(_, one)| one.reported_faults.clone()).filter(|faults| !faults.is_empty());
    let gas = file.job.fuel.code();
    WorkSheetContent {
        shop: content::shop_block(ground),
        job_number: file.job.number.clone(),
        job_kind: w.t(format!("job-kind-{}", file.job.kind.code())),
        place,
        fuel: content::gas(file.job.fuel),
        vehicle: file.vehicle.title(),
        vin: file.vehicle.identity().to_owned(),
        plate: file.vehicle.plate.clone(),
        odometer_km: content::odometer_km(ground),
        customer_name: content::customer_name(ground),
        customer_phone: file.keeper.phone.clone(),
        received_on: Some((ground.day_of)(file.job.opened_at)),
        promised_on: None,
        reported_faults: faults.unwrap_or_else(|| file.job.reported_faults.clone()),
        wishes,
        findings: file.findings.iter().filter(|one| one.is_open()).map(|one| one.text.clone()).collect(),
        stages,
        cautions: [format!("work-mind-{gas}-1"), format!("work-mind-{gas}-2"), "work-mind-3".to_owned()]
            .map(|key| w.t(key))
            .into(),
        photos: of_job::photos(ground, pictures),
        printed_at: (ground.local)(at),
        language: w.tag().to_owned(),
        is_demonstration: false,
    }
}

impl Shop {
    /// The work sheet of a job as a PDF, with its stages as the job file words them.
    ///
    /// # Errors
    /// [`Refusal::Gone`] when there is no such job in the branch.
    pub async fn work_sheet_pdf(
        &self,
        who: &Actor,
        job: JobId,
        at: OffsetDateTime,
        stages: Vec<WorkStage>,
    ) -> Result<Vec<u8>, Refusal> {
        let mut con = self.db.read().await?;
        let loaded = Assessed::read(&mut con, who.branch, job, at).await?;
        let place = match loaded.file.job.bay_id {
            Some(bay) => db::jobs::bay_name(&mut con, bay).await?.unwrap_or_default(),
            None => String::new(),
        };
        let notes = db::notes::list(&mut con, who.branch, About::Job(job)).await?;
        drop(con);
        // The oldest first: a sheet is read from above.
        let note =
            |note: Note| format!("{} ({}, {})", note.text, note.person_name, loaded.zone.day_of(note.written_at));
        let wishes = notes.into_iter().rev().map(note).collect();
        let pictures = self.pictures(&loaded.file.attachments).await?;
        let is_demonstration = self.issuer.is_demo;
        let (content, words, size) = loaded.with(|ground| {
            let content = work_sheet(ground, (place, wishes), stages, &pictures, at);
            (WorkSheetContent { is_demonstration, ..content }, ground.w, ground.branch.paper_size)
        });
        of_job::drawn(content, move |content| paper::work_sheet(content, &pictures, &words, size)).await
    }
}
