//! Road comparison: petrol injection time recorded on both fuels at the same engine operating points.
//!
//! Rows of one or two logs go into a [`Gatherer`] one after another ([`Sample`]); what comes out is a [`Comparison`]: a
//! verdict for each operating point, what was set aside and why, and what still has to be driven. Nothing of a log is
//! kept but the medians of each visit to a cell, and of those not more than a fixed number, so that a log of any length
//! needs the same memory.
//!
//! On gas the gas control scales the injection time of the petrol computer, and that computer corrects what the oxygen
//! sensor sees. Where it lengthens its time on gas, gas is lean there; the share is the deviation. That holds in closed
//! loop only.
//!
//! | file | what it does |
//! |---|---|
//! | `asked` `found` | what goes in, what comes out |
//! | `gatherer` `log` | rows of one or two logs, one after another |
//! | `has` `range` | which quantities are there; what no engine has |
//! | `sieve` | a row is kept, or set aside for one reason |
//! | `stay` `cells` `thinned` | rows become visits, visits fill cells, both within bounds |
//! | `plausible` | whether the columns can be what they are called |
//! | `level` `judge` `advice` | visits brought to the middle of a cell; verdicts; a smooth correction |
//! | `trims` `nozzle` `warnings` `strip` | what else driving shows |
//!
//! Source of the method: common practice of the trade; the statistics are those of [`super::robust`].

mod advice;
mod asked;
mod cells;
mod found;
mod gatherer;
mod has;
mod judge;
mod level;
mod log;
mod nozzle;
mod plausible;
mod range;
mod refused;
mod sieve;
mod stay;
mod strip;
mod thinned;
mod trims;
mod warnings;

pub use asked::{Burned, Plan, Quantity, Sample};
pub use found::{
    Banded, Cell, CellVerdict, Comparison, FuelKnown, Missing, NozzleWord, Rows, SetAside, Strip, StripPoint,
    TrimPoint, Warning, Why,
};
pub use gatherer::Gatherer;
pub use has::Has;
pub use range::{RANGES, Range};
pub use refused::Refused;

use super::{Basis, Source};

/// What a [`Comparison`] rests on.
pub const BASIS: Basis = Basis {
    key: "road",
    method: "median of visits to cells of engine speed and load on each fuel, in the logarithm of injection time; scale \
             by the median absolute deviation; interval of two standard uncertainties",
    formulas: &[
        "delta = t_G / t_P - 1",
        "d = med(ln t_G) - med(ln t_P)",
        "s = 1.4826 MAD (1 + 2/n)",
        "u = max(1.2533 s / sqrt(n), 0.005 / sqrt(n), 0.002)",
        "u_d = sqrt(u_G^2 + u_P^2)",
        "deviates: |d| - 2 u_d > limit; good: |d| + 2 u_d <= limit",
        "F_new = F_old (t_G / t_P)^g",
    ],
    relative_uncertainty: None,
    sources: &[
        Source::CommonPractice,
        Source::Hampel1974,
        Source::CrouxRousseeuw1992,
        Source::Cleveland1979,
        Source::SaeJ1979,
    ],
};
