//! What the unsigned papers of a job share: the job's block, who recorded a thing, photos, late entries of a stage.

use serde::Serialize;
use serde::de::DeserializeOwned;

use super::{Ground, content, sizing};
use crate::attachments;
use crate::model::Coded;
use crate::model::attachment::Attachment;
use crate::model::evidence::Entry;
use crate::model::paper::EnteredLater;
use crate::model::paper::measured::InstrumentOnPaper;
use crate::model::paper::of_job::{FileOnPaper, JobOnPaper, PhotoOnPaper, RecordedOnPaper};
use crate::model::stage::Stage;
use crate::papers::{self, PaperError, Pictures};
use crate::shop::{Refusal, Shop};

/// The job and its vehicle.
pub(super) fn job(ground: &Ground<'_>) -> JobOnPaper {
    let (file, w) = (ground.file, &ground.w);
    JobOnPaper {
        number: file.job.number.clone(),
        job_kind: w.t(format!("job-kind-{}", file.job.kind.code())),
        received_on: (ground.day_of)(file.job.opened_at),
        vehicle: file.vehicle.title(),
        plate: file.vehicle.plate.clone(),
        vin: file.vehicle.identity().to_owned(),
        engine: sizing::engine(ground),
        odometer_km: content::odometer_km(ground),
        fuel: content::gas(file.job.fuel),
        system: w.t(format!("system-kind-{}", file.job.system_kind.code())),
        customer_name: content::customer_name(ground),
    }
}

/// Who recorded an entry, when, and with what.
pub(super) fn recorded(ground: &Ground<'_>, entry: &Entry) -> RecordedOnPaper {
    let codes = entry.instruments.iter().filter_map(|id| ground.file.instrument(*id));
    RecordedOnPaper {
        by: entry.person_name.clone(),
        at: (ground.local)(entry.measured_at),
        entered_at: entry.is_entered_later().then(|| (ground.local)(entry.recorded_at)),
        corrected: entry.replaces_reason.clone(),
        instruments: codes.map(|record| record.instrument.code.clone()).collect(),
    }
}

/// What of a stage was written down late.
pub(super) fn entered_later(ground: &Ground<'_>, stage: Stage) -> Vec<EnteredLater> {
    let entries = ground.file.evidence.iter().filter(|entry| entry.body.stage() == stage);
    content::late(ground, entries)
}

/// The instruments that entries of a stage name.
pub(super) fn instruments(ground: &Ground<'_>, stage: Stage) -> Vec<InstrumentOnPaper> {
    let entries = ground.file.evidence.iter().filter(|entry| entry.body.stage() == stage);
    let used: Vec<_> = entries.flat_map(|entry| &entry.instruments).collect();
    let codes: Vec<&str> = ground
        .file
        .instruments
        .iter()
        .filter(|record| used.contains(&&record.instrument.id))
        .map(|record| record.instrument.code.as_str())
        .collect();
    super::measured::instruments(ground).into_iter().filter(|one| codes.contains(&one.code.as_str())).collect()
}

/// A picture of work or vehicle; a signature and a scanned document are none.
fn is_photo(one: &Attachment) -> bool {
    one.media_type.starts_with("image/") && !matches!(one.slot.as_str(), "signature" | "document")
}

/// The photos of the job in the order of their slots and times. `pictures` says which of them can be printed.
pub(super) fn photos(ground: &Ground<'_>, pictures: &Pictures) -> Vec<PhotoOnPaper> {
    let taken = |one: &Attachment| one.captured_at.unwrap_or(one.recorded_at);
    let mut photos: Vec<&Attachment> = ground.file.attachments.iter().filter(|one| is_photo(one)).collect();
    photos.sort_by_key(|one| (one.slot == "photo", one.slot.clone(), taken(one), one.id));
    let photo = |one: &Attachment| PhotoOnPaper {
        what: match one.slot.as_str() {
            "photo" => ground.w.t("paper-photo"),
            slot => ground.w.t(format!("slot-photo-{slot}")),
        },
        taken_at: (ground.local)(taken(one)),
        name: if pictures.has(&one.sha256) { String::new() } else { one.name.clone() },
        picture: one.sha256.clone(),
    };
    photos.into_iter().map(photo).collect()
}

/// Files of the job that are not printed, with their checksums.
pub(super) fn files(ground: &Ground<'_>) -> Vec<FileOnPaper> {
    let file = |one: &Attachment| FileOnPaper {
        name: one.name.clone(),
        bytes: one.bytes,
        sha256: one.sha256.clone(),
        kept_at: (ground.local)(one.recorded_at),
    };
    ground
        .file
        .attachments
        .iter()
        .filter(|one| matches!(one.slot.as_str(), "document" | "control-unit-file"))
        .map(file)
        .collect()
}

impl Shop {
    /// Reads the photos among these files and makes them fit to print. A file that is not there is left out.
    pub(super) async fn pictures(&self, attachments: &[Attachment]) -> Result<Pictures, Refusal> {
        let files = self.files();
        let wanted: Vec<String> =
            attachments.iter().filter(|one| is_photo(one)).map(|one| one.sha256.clone()).collect();
        aside(move || {
            let mut pictures = Pictures::default();
            for sha256 in wanted {
                let content = files.read(&sha256).map_err(|error| Refusal::Broken(error.to_string()))?;
                if let Some(jpeg) = content.and_then(attachments::for_paper) {
                    pictures.add(&sha256, jpeg);
                }
            }
            Ok(pictures)
        })
        .await?
    }
}

/// Drawing and decoding are slow: they run beside the threads that answer.
pub(super) async fn aside<T: Send + 'static>(work: impl FnOnce() -> T + Send + 'static) -> Result<T, Refusal> {
    tokio::task::spawn_blocking(work).await.map_err(|error| Refusal::Broken(error.to_string()))
}

/// Draws an unsigned paper aside. A letter that no face has is printed as its number: a working paper with an odd sign in
/// it is worth more than none.
pub(super) async fn drawn<T: Serialize + DeserializeOwned + Send + 'static>(
    content: T,
    draw: impl FnOnce(&T) -> Result<Vec<u8>, PaperError> + Send + 'static,
) -> Result<Vec<u8>, Refusal> {
    let made = aside(move || papers::printable(&content).and_then(|content| draw(&content))).await?;
    made.map_err(|error| Refusal::Broken(error.to_string()))
}

/// A date of manufacture as content holds it: as exactly as it is known.
pub(super) fn partial(on: Option<time::Date>, precision: Option<crate::model::part::DatePrecision>) -> String {
    use crate::model::part::DatePrecision::{Day, Month, Year};
    match (on, precision) {
        (None, _) => String::new(),
        (Some(on), Some(Year)) => format!("{:04}", on.year()),
        (Some(on), Some(Day)) => on.to_string(),
        (Some(on), Some(Month) | None) => format!("{:04}-{:02}", on.year(), u8::from(on.month())),
    }
}
