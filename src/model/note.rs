//! A note: a remark with author and date on a customer, a vehicle or a job.

use time::OffsetDateTime;

use super::ids::{CustomerId, JobId, NoteId, PersonId, VehicleId};

/// What a note is about: exactly one thing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum About {
    /// A customer.
    Customer(CustomerId),
    /// A vehicle, whoever owns it.
    Vehicle(VehicleId),
    /// One visit.
    Job(JobId),
}

impl About {
    /// The id in its place, the two others empty.
    pub fn ids(self) -> (Option<CustomerId>, Option<VehicleId>, Option<JobId>) {
        match self {
            Self::Customer(id) => (Some(id), None, None),
            Self::Vehicle(id) => (None, Some(id), None),
            Self::Job(id) => (None, None, Some(id)),
        }
    }
}

/// A note as stored.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Note {
    /// Name for ever.
    pub id: NoteId,
    /// What was written.
    pub text: String,
    /// Who.
    pub person_id: PersonId,
    /// Who, in words.
    pub person_name: String,
    /// When.
    pub written_at: OffsetDateTime,
}
