//! Which nozzle to fit: flow through a nozzle ([`flow`]), size from engine data or from petrol injection data
//! ([`sizing`], [`injected`]), why a verdict says what it says ([`verdict`]), and how it moves with its inputs
//! ([`further`]).
//!
//! Sizing is a beginning, not the last word: the uncertainty of the discharge coefficient alone is worth a nozzle size,
//! and the comparison on the road decides.

pub mod engine;
pub mod flow;
pub mod further;
pub mod injected;
pub mod measured;
pub mod sheet;
pub mod sizing;
pub mod verdict;
mod worked;

pub use engine::{Bore, Idle, Setting};
pub use flow::{Flow, Flowing, Through, choking_share, flow, mass_flux};
pub use further::{Varied, duty_over_speed, sensitivity};
pub use injected::{FromPetrol, PetrolInjection, PetrolSized, size_from_petrol};
pub use sheet::{Asked, AtNozzle, Found, Sheet, sheet};
pub use sizing::{Sized, Sizing, size};
pub use verdict::{Candidate, Reason, Verdict};
pub use worked::steps;
