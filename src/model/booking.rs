//! A booking: a time in a bay, held with no more than a name and a phone.

use time::OffsetDateTime;

use super::coded;
use super::ids::{BayId, BookingId, JobId};
use super::job::JobKind;

coded! {
    /// What became of a booking.
    "booking-state" BookingState {
        /// To come.
        Expected = "expected",
        /// Here; a job was opened.
        Arrived = "arrived",
        /// Stayed away.
        DidNotCome = "did-not-come",
        /// Called off.
        Cancelled = "cancelled",
    }
}

/// A place where a vehicle is worked on.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Bay {
    /// Name for ever.
    pub id: BayId,
    /// "Bay 2".
    pub name: String,
}

/// What the desk types to hold a time.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NewBooking {
    /// Where.
    pub bay_id: BayId,
    /// From, UTC.
    pub starts_at: OffsetDateTime,
    /// To, UTC.
    pub ends_at: OffsetDateTime,
    /// Whose.
    pub name: String,
    /// How to reach them.
    pub phone: String,
    /// Plate, if told.
    pub plate: String,
    /// For what.
    pub job_kind: JobKind,
    /// Anything else.
    pub note: String,
    /// A manager's reason for booking the bay twice; empty otherwise.
    pub doubled_reason: String,
}

/// A booking as stored.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
#[allow(missing_docs, reason = "the fields are those of NewBooking, explained there")]
pub struct Booking {
    pub id: BookingId,
    pub bay_id: BayId,
    pub starts_at: OffsetDateTime,
    pub ends_at: OffsetDateTime,
    pub name: String,
    pub phone: String,
    pub plate: String,
    pub job_kind: JobKind,
    pub note: String,
    pub state: BookingState,
    pub doubled_reason: String,
    pub job_id: Option<JobId>,
    pub version: i64,
}
