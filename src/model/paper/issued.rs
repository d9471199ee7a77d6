//! A signed paper as kept, and how it stands.

use time::{Date, OffsetDateTime};

use crate::model::coded;
use crate::model::ids::{BranchId, FindingId, JobId, PaperId, PersonId, VehicleId};
use crate::seal::standing::Standing;

/// A paper row: the signed bytes and what finds them.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Issued {
    /// Name for ever.
    pub id: PaperId,
    /// Branch that issued it.
    pub branch_id: BranchId,
    /// Series its number belongs to.
    pub series: String,
    /// Number.
    pub number: String,
    /// Kind ("conversion").
    pub kind: String,
    /// Job it certifies.
    pub job_id: JobId,
    /// Vehicle it is about.
    pub vehicle_id: VehicleId,
    /// Canonical content, byte for byte as signed.
    pub content: Vec<u8>,
    /// Detached personal part as JSON; empty once erased.
    pub personal: String,
    /// Ed25519 signature.
    pub signature: Vec<u8>,
    /// Key that signed.
    pub key_id: String,
    /// Code by which anybody may ask.
    pub code: String,
    /// SHA-256 of the PDF.
    pub pdf_sha256: String,
    /// The paper it replaces.
    pub supersedes_id: Option<PaperId>,
    /// Who signed.
    pub issued_by: PersonId,
    /// When.
    pub issued_at: OffsetDateTime,
}

coded! {
    /// What becomes of a paper after issue.
    "paper-event" EventKind {
        /// Taken back.
        Withdrawn = "withdrawn",
        /// A later paper names it.
        Superseded = "superseded",
        /// Evidence under it was corrected.
        RestsOnCorrected = "rests-on-corrected-evidence",
        /// Looked at again.
        ReviewOpened = "review-opened",
        /// Looked at, with a decision.
        ReviewClosed = "review-closed",
        /// Printed once more, because a copy was lost; it stands as before.
        SecondCopy = "second-copy",
    }
}

/// One thing that became of a paper.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct PaperEvent {
    /// What.
    pub kind: EventKind,
    /// Why.
    pub reason: String,
    /// Who.
    pub person_name: String,
    /// When.
    pub at: OffsetDateTime,
    /// The finding behind it, where there is one.
    pub finding_id: Option<FindingId>,
}

impl EventKind {
    /// Whether a paper may stand otherwise after it than before.
    pub fn moves_standing(self) -> bool {
        self != Self::SecondCopy
    }
}

/// The reviews that are open, each by its finding; `None` for one that no finding stands behind.
pub fn open_reviews(events: &[PaperEvent]) -> Vec<Option<FindingId>> {
    let mut open: Vec<Option<FindingId>> = Vec::new();
    for event in events {
        match event.kind {
            EventKind::ReviewOpened | EventKind::RestsOnCorrected => {
                if !open.contains(&event.finding_id) {
                    open.push(event.finding_id);
                }
            }
            EventKind::ReviewClosed => open.retain(|one| *one != event.finding_id),
            EventKind::Withdrawn | EventKind::Superseded | EventKind::SecondCopy => {}
        }
    }
    open
}

/// How a paper stands on a day: withdrawn before superseded, under review before a passed duty.
///
/// `next_due_on`: the earliest dated duty the paper names, `None` when it names none.
pub fn standing(events: &[PaperEvent], next_due_on: Option<Date>, today: Date) -> Standing {
    let has = |kind| events.iter().any(|event| event.kind == kind);
    if has(EventKind::Withdrawn) {
        Standing::Withdrawn
    } else if has(EventKind::Superseded) {
        Standing::Superseded
    } else if !open_reviews(events).is_empty() {
        Standing::UnderReview
    } else if next_due_on.is_some_and(|due| due < today) {
        Standing::DutyPassed
    } else {
        Standing::Valid
    }
}
