//! Pure sums: numbers in, numbers out. No clock, no disk, no network.
#![warn(missing_docs)]

pub mod decision;
pub mod due;
pub mod lambda;
pub mod leak;
pub mod outside;
pub mod reported;
pub mod student;
pub mod uncertainty;
pub mod vin;

pub use outside::{Outside, between};
