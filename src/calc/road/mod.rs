//! Road comparison: petrol injection time recorded on both fuels at the same engine operating points.
//!
//! Rows of one or two logs go in one after another ([`Sample`]); what comes out is a [`Comparison`]: a verdict for each
//! operating point, what was set aside and why, and what still has to be driven. Nothing of a log is kept but the median
//! of each visit to a cell, so a long log needs little memory.
//!
//! Source of the method: common practice of the trade; the statistics are robust ones.

mod types;

pub use types::{
    Banded, Burned, Cell, CellVerdict, Comparison, FuelKnown, Missing, NozzleWord, Plan, Quantity, Rows, Sample,
    SetAside, Strip, StripPoint, TrimPoint, Warning, Why,
};
