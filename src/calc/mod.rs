//! Pure sums: numbers in, numbers out. No clock, no disk, no network.
//!
//! Units stand in the names at the door (`upstream_kpa`, `temperature_c`); inside, a sum uses SI and the symbols of its
//! source. Pressures are absolute unless the name says gauge. A sum that cannot answer says why ([`Error`]); it never
//! answers NaN and never a stand-in.
//!
//! | file | what it answers |
//! |---|---|
//! | `composition` `substance` | what a fuel is made of; constants of each component |
//! | `fuel` | energy, air need, octane, Wobbe index, carbon dioxide |
//! | `liquid` `cubic` | vapour pressure, dew temperature, liquid density |
//! | `gas` | density, speed of sound, isentropic exponent, enthalpy |
//! | `nozzle` | flow through a nozzle, and which size to fit |
//! | `vaporiser` `heat` `hose` | heat, coolant, what a vaporiser must bring; line drop |
//! | `container` `cylinder` | what LPG and CNG storage holds |
//! | `leak` `lambda` `decision` | what was proved on the bench and at the tailpipe |
//! | `economy` `petrol` | what running costs and emits, on gas and on petrol |
//! | `due` `vin` | months and kilometres; identities |
//! | `road` | what driving on both fuels shows |
//! | `roots` `robust` `student` `uncertainty` | the mathematics under them |
//! | `source` `worked` `fuel_parts` | the documents behind them; sums laid out step by step |
//! | `outside` `refusal` | how a sum says no |
#![warn(missing_docs)]

pub mod composition;
pub mod container;
pub(crate) mod cubic;
pub mod cylinder;
pub mod decision;
pub mod due;
pub mod economy;
pub mod fuel;
pub mod fuel_parts;
pub mod gas;
pub mod heat;
pub mod hose;
pub mod lambda;
pub mod leak;
pub mod liquid;
pub mod nozzle;
pub mod outside;
pub mod petrol;
pub mod refusal;
pub mod reported;
pub mod road;
pub mod robust;
pub(crate) mod roots;
pub mod source;
pub mod student;
pub mod substance;
pub mod uncertainty;
pub mod vaporiser;
pub mod vin;
pub mod worked;

pub use composition::Composition;
pub use outside::{Outside, between};
pub use refusal::{Error, NoRoot};
pub use source::{Basis, Caution, Source};
pub use worked::Step;

/// Molar gas constant, J/(mol K). CODATA 2018 (exact since the SI of 2019).
pub const GAS_CONSTANT: f64 = 8.314_462_618;
/// 0 C in kelvin.
pub const ICE_POINT_K: f64 = 273.15;
/// Standard atmosphere, kPa: the ambient pressure taken when none is given, and the reference pressure of gas volumes
/// (ISO 13443, from memory).
pub const ATMOSPHERE_KPA: f64 = 101.325;
/// Reference temperature of gas volumes, C (ISO 13443, from memory).
pub const REFERENCE_C: f64 = 15.0;
