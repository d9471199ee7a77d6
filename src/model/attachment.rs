//! A photo or file kept with a job, a vehicle or an instrument.

use time::OffsetDateTime;

use super::ids::{AttachmentId, JobId, VehicleId};

/// A kept file. The bytes lie under their SHA-256.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Attachment {
    /// Name for ever.
    pub id: AttachmentId,
    /// The job it belongs to.
    pub job_id: Option<JobId>,
    /// The vehicle it belongs to.
    pub vehicle_id: Option<VehicleId>,
    /// What it shows: "odometer", "vin-plate", "container-plate", "deficiency", "signature", "document", "photo".
    pub slot: String,
    /// SHA-256 of the bytes, hexadecimal.
    pub sha256: String,
    /// Media type by content.
    pub media_type: String,
    /// Name as sent.
    pub name: String,
    /// Size.
    pub bytes: i64,
    /// Pixels.
    pub width: Option<i64>,
    /// Pixels.
    pub height: Option<i64>,
    /// When the camera says it was taken.
    pub captured_at: Option<OffsetDateTime>,
    /// When it came in.
    pub recorded_at: OffsetDateTime,
}
