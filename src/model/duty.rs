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
        /// Internal look and pressure test of a container or cylinder.
        PressureTest = "pressure-test",
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
        /// A paper that the authority or its representative issues.
        AuthorityPaper = "authority-paper",
        /// A part on the vehicle is recalled.
        Recall = "recall",
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

impl DutyKind {
    /// Comes again: when one is met, the next begins to run.
    pub fn comes_again(self) -> bool {
        matches!(
            self,
            Self::Filter | Self::CylinderInspection | Self::PressureTest | Self::Inspection | Self::ValveClearance
        )
    }
}

coded! {
    /// What came of trying to reach somebody about a duty.
    "call-outcome" CallOutcome {
        /// They will come.
        WillCome = "will-come",
        /// Reached, nothing agreed.
        Reached = "reached",
        /// Nobody answered.
        NoAnswer = "no-answer",
        /// Word was left.
        LeftWord = "left-word",
        /// The number belongs to somebody else.
        WrongNumber = "wrong-number",
        /// The letter came back.
        LetterReturned = "letter-returned",
        /// They do not want it done here.
        Refuses = "refuses",
    }
}

/// One attempt to reach somebody.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct DutyCall {
    /// About which duty.
    pub duty_id: DutyId,
    /// What came of it.
    pub outcome: CallOutcome,
    /// What was said.
    pub note: String,
    /// Who tried.
    pub person_name: String,
    /// When.
    pub at: OffsetDateTime,
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
