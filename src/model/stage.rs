//! Stages: where a job stands. A stage shows, it locks nothing.

use super::coded;
use super::job::JobKind;

coded! {
    /// The stages a job file can have, in the order of the rail.
    "stage" Stage {
        /// Customer, vehicle, suitability.
        Intake = "intake",
        /// Nozzle, vaporiser, container.
        Sizing = "sizing",
        /// Parts, wiring, checklist.
        Fitting = "fitting",
        /// Gas against petrol, warm.
        Calibration = "calibration",
        /// Leak, exhaust, function.
        Proving = "proving",
        /// Papers, instruction, signature.
        HandOver = "hand-over",
    }
}

/// The stages of a job of this kind, in order.
pub fn stages_of(kind: JobKind) -> &'static [Stage] {
    use Stage::{Calibration, Fitting, HandOver, Intake, Proving, Sizing};
    match kind {
        JobKind::Conversion => &[Intake, Sizing, Fitting, Calibration, Proving, HandOver],
        JobKind::Inspection => &[Intake, Proving, HandOver],
        JobKind::Repair | JobKind::Comeback => &[Intake, Fitting, Calibration, Proving, HandOver],
        JobKind::Exchange | JobKind::AfterAccident | JobKind::Removal => &[Intake, Fitting, Proving, HandOver],
    }
}

/// Where the work of a stage stands on the rail of a kind that lacks that stage: on the next one it has. A periodic
/// inspection looks at fixing and housing too, and does so while proving.
pub fn shown_on(kind: JobKind, stage: Stage) -> Stage {
    stages_of(kind).iter().copied().find(|of_kind| *of_kind >= stage).unwrap_or(Stage::HandOver)
}
