//! What hangs on the wall of the shop for a day: each bay with its bookings and jobs.
//!
//! Whoever walks in can read it, so it names a customer only where there is no plate to tell the vehicle by, and never a
//! phone number.

use serde::{Deserialize, Serialize};
use time::{Date, OffsetDateTime};

use super::ShopBlock;

/// Today's sheet for the wall.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct WallSheetContent {
    /// The shop.
    pub shop: ShopBlock,
    /// The day.
    pub day: Date,
    /// Bays in use, and last the vehicles that stand in none.
    pub bays: Vec<BayOnWall>,
    /// When it was printed.
    #[serde(with = "time::serde::rfc3339")]
    pub printed_at: OffsetDateTime,
    /// Language tag.
    pub language: String,
    /// A sheet of the demonstration shop.
    pub is_demonstration: bool,
}

/// A bay on its day.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct BayOnWall {
    /// "Bay 2".
    pub name: String,
    /// Bookings in order of time.
    pub bookings: Vec<BookingOnWall>,
    /// Jobs that stand there.
    pub jobs: Vec<JobOnWall>,
}

/// A booking.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct BookingOnWall {
    /// From and to on the shop's clock, with the days where they are others than the sheet's.
    pub time: String,
    /// Plate, or the name it was booked under.
    pub whose: String,
    /// What for, in the sheet's language.
    pub purpose: String,
    /// Its state, in the sheet's language.
    pub booking_state: String,
    /// Anything else that was noted.
    pub note: String,
}

/// A job.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct JobOnWall {
    /// Number of the job file.
    pub number: String,
    /// Plate, or the vehicle's name where it has none.
    pub plate: String,
    /// Make and model.
    pub vehicle: String,
    /// What for, in the sheet's language.
    pub purpose: String,
    /// Stage it stands at, in the sheet's language.
    pub stage: String,
    /// Proofs settled.
    pub settled: i64,
    /// Proofs asked for.
    pub asked: i64,
    /// What keeps it: the reason of a hold, or what stops the paper; empty for nothing.
    pub stuck: String,
}
