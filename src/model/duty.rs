//! A duty: what must happen by a date or a distance.

use time::{Date, OffsetDateTime};

use super::coded;
use super::ids::{DutyId, JobId, PartId, VehicleId};

coded! {
    /// What falls due.
    "duty-kind" DutyKind {
        /// First check after fitting.
        FirstCheck = "first-check",
        /// Filter change.
        Filter = "filter",
        /// Container retest or expiry.
        Container = "container",
        /// CNG cylinder inspection.
        CylinderInspection = "cylinder-inspection",
        /// CNG cylinder's end of life.
        CylinderLife = "cylinder-life",
        /// Periodic inspection.
        Inspection = "inspection",
        /// Valve clearance.
        ValveClearance = "valve-clearance",
        /// End of warranty.
        Warranty = "warranty",
        /// The fill stop is still to be shown.
        FillStop = "fill-stop",
        /// An authority's own test that comes later.
        AuthorityTest = "authority-test",
        /// Anything else.
        Other = "other",
    }
}

coded! {
    /// Whether a day or a distance comes first.
    "due-by" DueBy {
        /// The day.
        Date = "date",
        /// The distance, forecast from readings.
        Distance = "distance",
    }
}

coded! {
    /// What ended a duty.
    "closed-how" ClosedHow {
        /// A job of this shop met it.
        Job = "job",
        /// Met elsewhere: document, who, date.
        Elsewhere = "elsewhere",
        /// Vehicle scrapped.
        Scrapped = "scrapped",
        /// Vehicle exported.
        Exported = "exported",
        /// Vehicle stolen.
        Stolen = "stolen",
        /// Gas system removed.
        GasRemoved = "gas-removed",
        /// A newer duty stands in its place.
        Replaced = "replaced",
    }
}

/// A duty to be written down.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NewDuty {
    /// The part that causes it.
    pub part_id: Option<PartId>,
    /// Id of the rule line.
    pub line: String,
    /// What.
    pub kind: DutyKind,
    /// By this day.
    pub due_on: Date,
    /// Or at this odometer reading, km.
    pub due_km: Option<i64>,
    /// Which of the two made the day.
    pub decided_by: DueBy,
    /// Source of the rule line, in words.
    pub source: String,
    /// The source was read, not recalled.
    pub is_checked: bool,
}

/// A duty as stored.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
#[allow(missing_docs, reason = "the fields are those of NewDuty, explained there")]
pub struct Duty {
    pub id: DutyId,
    pub vehicle_id: VehicleId,
    pub job_id: Option<JobId>,
    pub part_id: Option<PartId>,
    pub line: String,
    pub kind: DutyKind,
    pub due_on: Date,
    pub due_km: Option<i64>,
    pub decided_by: DueBy,
    pub source: String,
    pub is_checked: bool,
    pub made_at: OffsetDateTime,
    pub closed_at: Option<OffsetDateTime>,
    pub closed_how: Option<ClosedHow>,
    pub closed_note: String,
}
