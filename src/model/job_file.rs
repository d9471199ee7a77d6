//! The whole of a job as the rules and the papers see it: read once, then only looked at.

use time::{Date, OffsetDateTime};

use super::attachment::Attachment;
use super::customer::Customer;
use super::evidence::{Entry, Evidence};
use super::finding::Finding;
use super::ids::{InstrumentId, PartId};
use super::instrument::InstrumentRecord;
use super::job::{Job, JobKind, Waiver};
use super::paper::certificate::Deficiency;
use super::part::Part;
use super::recall::Carries;
use super::vehicle::{OdometerReading, Vehicle};

/// A job with everything recorded in it.
#[derive(Debug, Clone, PartialEq)]
pub struct JobFile {
    /// The job.
    pub job: Job,
    /// Its vehicle.
    pub vehicle: Vehicle,
    /// Who keeps it.
    pub keeper: Customer,
    /// Odometer readings of the vehicle, oldest first.
    pub readings: Vec<OdometerReading>,
    /// The current entry of each slot.
    pub evidence: Vec<Entry>,
    /// Parts of the vehicle: fitted now, and removed in this job.
    pub parts: Vec<Part>,
    /// Every instrument that an entry names.
    pub instruments: Vec<InstrumentRecord>,
    /// Photos and files.
    pub attachments: Vec<Attachment>,
    /// Waivers in force.
    pub waivers: Vec<Waiver>,
    /// Findings of this job.
    pub findings: Vec<Finding>,
    /// Parts on the vehicle that an open recall names.
    pub recalled: Vec<Recalled>,
    /// The inspection that this one follows, where it follows one.
    pub repeats: Option<FirstInspection>,
}

/// An inspection as the one that comes after it sees it.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct FirstInspection {
    /// Number of its job file.
    pub job_number: String,
    /// Number of its certificate, which says fail; empty where it ended without one.
    pub number: String,
    /// Day of that certificate.
    pub issued_on: Option<Date>,
    /// Ids of the proofs that failed or could not be tested.
    pub open: Vec<String>,
    /// What was found that failed it.
    pub deficiencies: Vec<Deficiency>,
    /// Last day on which what failed may be looked at alone.
    pub present_again_by_on: Option<Date>,
    /// The rules let a repeat look at what failed alone.
    pub may_repeat_failed_only: bool,
}

impl FirstInspection {
    /// A repeat that began on this day looks at what failed alone; else it is a whole new inspection.
    pub fn is_partial_on(&self, day: Date) -> bool {
        !self.number.is_empty()
            && self.may_repeat_failed_only
            && self.present_again_by_on.is_some_and(|last| day <= last)
    }
}

/// A part on the vehicle under an open recall.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Recalled {
    /// Which part.
    pub part: PartId,
    /// How surely it is meant.
    pub carries: Carries,
    /// Who recalled, and by what document.
    pub by: String,
}

impl JobFile {
    /// The current entry of a slot.
    pub fn entry(&self, kind: &str, subject: &str) -> Option<&Entry> {
        self.evidence.iter().find(|entry| entry.body.kind() == kind && entry.body.subject() == subject)
    }

    /// The current entry of a slot with what it shows taken out of its variant.
    pub fn shown<'a, T>(
        &'a self,
        kind: &str,
        subject: &str,
        take: impl Fn(&'a Evidence) -> Option<&'a T>,
    ) -> Option<(&'a Entry, &'a T)> {
        let entry = self.entry(kind, subject)?;
        Some((entry, take(&entry.body)?))
    }

    /// An instrument by its id.
    pub fn instrument(&self, id: InstrumentId) -> Option<&InstrumentRecord> {
        self.instruments.iter().find(|record| record.instrument.id == id)
    }

    /// Whether gas had been in the lines of this vehicle before an instant: always, but for a conversion in which nothing
    /// was measured on gas until then.
    pub fn has_held_fuel(&self, before: OffsetDateTime) -> bool {
        let on_gas = |entry: &&Entry| match entry.body.kind() {
            "exhaust" => entry.body.subject() == "gas",
            kind => ["engine-calibration", "trims", "after-drive"].contains(&kind),
        };
        let mut measured = self.evidence.iter().filter(on_gas);
        self.job.kind != JobKind::Conversion || measured.any(|entry| entry.measured_at < before)
    }

    /// Parts on the vehicle now.
    pub fn fitted(&self) -> impl Iterator<Item = &Part> {
        self.parts.iter().filter(|part| part.is_fitted())
    }
}

/// Turns an instant into the shop's day.
pub type DayOf<'a> = &'a dyn Fn(OffsetDateTime) -> Date;
