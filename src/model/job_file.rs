//! The whole of a job as the rules and the papers see it: read once, then only looked at.

use time::{Date, OffsetDateTime};

use super::attachment::Attachment;
use super::customer::Customer;
use super::evidence::{Entry, Evidence};
use super::finding::Finding;
use super::ids::{InstrumentId, PartId};
use super::instrument::InstrumentRecord;
use super::job::{Job, Waiver};
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

    /// Parts on the vehicle now.
    pub fn fitted(&self) -> impl Iterator<Item = &Part> {
        self.parts.iter().filter(|part| part.is_fitted())
    }
}

/// Turns an instant into the shop's day.
pub type DayOf<'a> = &'a dyn Fn(OffsetDateTime) -> Date;
