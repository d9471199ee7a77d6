//! Pure sums: numbers in, numbers out. No clock, no disk, no network.
#![warn(missing_docs)]

pub mod outside;

pub use outside::{Outside, between};
