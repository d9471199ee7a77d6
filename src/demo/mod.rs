//! The invented shop that the demonstration shows, told by the deeds that the screens use: no row is written by hand.

pub mod cast;
mod estimates;
mod gas_side;
mod later;
mod road;
pub mod shop;
pub mod story;
pub mod sums;
