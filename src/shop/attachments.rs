//! Files are kept: judged and written to the disk first, named by a row after.

use std::sync::LazyLock;

use time::UtcOffset;
use tokio::sync::Semaphore;
use uuid::Uuid;

use super::{Refusal, Shop, Work};
use crate::attachments::{Captured, Files, Ready, Sent, Takes, Unfit, prepare};
use crate::clock::Zone;
use crate::db;
use crate::model::attachment::Attachment;
use crate::model::deed::Deed;
use crate::model::ids::{AttachmentId, JobId};
use crate::model::person::Actor;

/// Pictures decoded at one time: each may take hundreds of megabytes while it lasts.
static DECODING: LazyLock<Semaphore> = LazyLock::new(|| Semaphore::new(2));

/// What became of files that were sent together.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Sorted {
    /// The good ones, in the order sent.
    pub kept: Vec<AttachmentId>,
    /// The others by name, and why.
    pub unfit: Vec<(String, Unfit)>,
}

/// What files are kept with.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FilePlace {
    /// The job, if it is one.
    pub job: Option<JobId>,
    /// What the files show: "odometer", "vin-plate", "container-plate", "photo", "document", "signature".
    pub slot: String,
}

impl FilePlace {
    /// A slot of a job.
    pub fn of_job(job: JobId, slot: &str) -> Self {
        Self { job: Some(job), slot: slot.to_owned() }
    }

    /// A paper of the shop itself, such as a calibration certificate.
    pub fn of_shop(slot: &str) -> Self {
        Self { job: None, slot: slot.to_owned() }
    }
}

impl Shop {
    /// The folder of kept files, beside the store.
    pub fn files(&self) -> Files {
        Files::in_folder(self.db.folder().join("attachments"))
    }

    /// Keeps the files that are fit to be kept, and says of each other one why it is not.
    ///
    /// Bytes go to the disk before the row that names them; a row that then fails leaves bytes nobody names, never a row
    /// without bytes.
    ///
    /// # Errors
    /// [`Refusal::Gone`] and [`Refusal::Ended`] for the job. Nothing is kept then.
    pub async fn keep_files(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        place: FilePlace,
        takes: Takes,
        sent: Vec<Sent>,
    ) -> Result<Sorted, Refusal> {
        self.may_keep(who, &place).await?;
        let mut sorted = Sorted::default();
        let mut ready = Vec::with_capacity(sent.len());
        for one in sent {
            let name = one.name.clone();
            match self.bring_in(one, takes).await? {
                Ok(one) => ready.push(one),
                Err(unfit) => sorted.unfit.push((name, unfit)),
            }
        }
        if !ready.is_empty() {
            sorted.kept = self.name_files(who, key, place, ready).await?;
        }
        Ok(sorted)
    }

    /// The bytes of a kept file.
    ///
    /// # Errors
    /// [`Refusal::Broken`] when they are not there: a row never comes before its bytes, so something took them away.
    pub async fn read_file(&self, one: &Attachment) -> Result<Vec<u8>, Refusal> {
        let (files, sha256) = (self.files(), one.sha256.clone());
        let read = aside(move || files.read(&sha256)).await?;
        let missing = || Refusal::Broken(format!("the bytes of attachment {} ({}) are gone", one.id, one.sha256));
        read.map_err(|error| Refusal::Broken(error.to_string()))?.ok_or_else(missing)
    }

    /// Removes files that were still coming when the machine stopped.
    pub async fn forget_incoming_files(&self, begun_before: time::OffsetDateTime) -> Result<u64, Refusal> {
        let files = self.files();
        let gone = aside(move || files.forget_incoming(begun_before.into())).await?;
        gone.map_err(|error| Refusal::Broken(error.to_string()))
    }

    /// Whether the job takes files; asked before anything is decoded, and once more inside the deed.
    async fn may_keep(&self, who: &Actor, place: &FilePlace) -> Result<(), Refusal> {
        let Some(job) = place.job else { return Ok(()) };
        let mut con = self.db.read().await?;
        let job = db::jobs::find(&mut con, who.branch, job).await?.ok_or(Refusal::Gone)?;
        if job.state.is_live() { Ok(()) } else { Err(Refusal::Ended("refused-job-ended")) }
    }

    async fn bring_in(&self, sent: Sent, takes: Takes) -> Result<Result<Ready, Unfit>, Refusal> {
        let turn = DECODING.acquire().await.map_err(|error| Refusal::Broken(error.to_string()))?;
        let files = self.files();
        let done = aside(move || {
            let ready = match prepare(sent, takes) {
                Ok(ready) => ready,
                Err(unfit) => return Ok(Err(unfit)),
            };
            files.keep(&ready).map(|()| Ok(ready))
        })
        .await?;
        drop(turn);
        done.map_err(|error: std::io::Error| Refusal::Broken(format!("a file cannot be kept: {error}")))
    }

    async fn name_files(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        place: FilePlace,
        ready: Vec<Ready>,
    ) -> Result<Vec<AttachmentId>, Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let (branch, person) = (work.who.branch, work.person()?);
            if let Some(job) = place.job {
                work.live_job(job).await?;
            }
            let zone = db::branches::find(&mut work, branch).await?.and_then(|one| Zone::named(&one.time_zone).ok());
            let zone = zone.unwrap_or_else(Zone::utc);
            let rows: Vec<Attachment> = ready.iter().map(|one| row(&work, &zone, &place, one)).collect();
            for one in &rows {
                db::attachments::insert(&mut work, branch, one, person).await?;
            }
            let ids: Vec<AttachmentId> = rows.iter().map(|one| one.id).collect();
            let said = |one: &Attachment| Deed::FileKept {
                file: one.id,
                job: one.job_id,
                slot: one.slot.clone(),
                sha256: one.sha256.clone(),
            };
            let Some((last, before)) = rows.split_last() else {
                return Err(Refusal::Broken("no file to name".to_owned()));
            };
            for one in before {
                work.note(said(one)).await?;
            }
            work.done(said(last), ids).await
        })
        .await
    }
}

fn row(work: &Work, zone: &Zone, place: &FilePlace, one: &Ready) -> Attachment {
    Attachment {
        id: AttachmentId::new(),
        job_id: place.job,
        vehicle_id: None,
        slot: place.slot.clone(),
        sha256: one.sha256.clone(),
        media_type: one.kind.media_type().to_owned(),
        name: one.name.clone(),
        bytes: i64::try_from(one.content.len()).unwrap_or(i64::MAX),
        width: one.size.map(|(width, _)| i64::from(width)),
        height: one.size.map(|(_, height)| i64::from(height)),
        captured_at: one.captured.and_then(|captured| instant(captured, zone)),
        recorded_at: work.now,
    }
}

/// A camera that does not know its offset stood, as far as anybody knows, in the shop.
fn instant(captured: Captured, zone: &Zone) -> Option<time::OffsetDateTime> {
    match captured.offset {
        Some(offset) => captured.local.assume_offset(offset).checked_to_offset(UtcOffset::UTC),
        None => zone.instant(captured.local.date(), captured.local.hour(), captured.local.minute()),
    }
}

/// Decoding and disks are slow: they run beside the threads that answer.
pub(super) async fn aside<T: Send + 'static>(work: impl FnOnce() -> T + Send + 'static) -> Result<T, Refusal> {
    tokio::task::spawn_blocking(work).await.map_err(|error| Refusal::Broken(error.to_string()))
}
