//! The job file: one long sheet. The open stage in the middle, the proofs beside it, each a link to what fills it.
//!
//! Every kind of evidence is one small file here that says which fields its form has, how they are read, and how an
//! entry is shown again; [`record`] does the rest for all of them (times, instruments, corrections, stale saves).

mod after_drive;
pub mod again;
mod arrival;
mod checklist;
mod container_said;
mod container_sizing;
mod cylinder_said;
mod cylinder_sizing;
mod cylinder_table;
mod deficiencies;
mod discharge;
pub mod drawn;
pub mod ending;
mod engine_calibration;
pub mod estimate;
mod exhaust;
mod exhaust_said;
pub mod facts;
mod function_checks;
mod hand_over;
mod heat_said;
mod heat_sizing;
mod inspection_said;
mod instruments;
pub mod leak_decay;
pub mod leak_guide;
mod leak_joints;
mod leak_said;
mod leak_start;
mod level_sensing;
mod line_said;
mod line_sizing;
pub mod notes;
mod nozzle_measured;
mod nozzle_said;
mod nozzle_sizing;
pub mod origins;
pub mod page;
mod paper_language;
mod paper_proofs;
pub mod papers;
mod part_form;
pub mod parts;
pub mod reckoned;
mod reckoning;
pub mod record;
pub mod road;
mod said_line;
pub mod say;
mod sizing_sheet;
mod slot;
pub mod stage;
mod suitability;
mod trims;
mod vessel_check;
mod vessels;
pub mod waivers;

pub use after_drive::AfterDriveForm;
pub use arrival::ArrivalForm;
pub use checklist::ChecklistForm;
pub use container_sizing::ContainerSizingForm;
pub use cylinder_sizing::CylinderSizingForm;
pub use cylinder_table::CylinderTableForm;
pub use deficiencies::DeficienciesForm;
pub use discharge::DischargeForm;
pub use engine_calibration::EngineCalibrationForm;
pub use exhaust::ExhaustForm;
pub use function_checks::FunctionChecksForm;
pub use hand_over::HandOverForm;
pub use heat_sizing::HeatSizingForm;
pub use leak_joints::LeakJointsForm;
pub use level_sensing::LevelSensingForm;
pub use line_sizing::LineSizingForm;
pub use nozzle_sizing::NozzleSizingForm;
pub use page::JobPage;
pub use slot::{Slot, slots};
pub use suitability::SuitabilityForm;
pub use trims::TrimsForm;
pub use vessel_check::VesselCheckForm;

// What sums say and what a fuel is made of, Bench and job file alike.
use super::{fuel_mix, sum};
