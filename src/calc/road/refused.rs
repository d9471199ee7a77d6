//! Why logs cannot be compared at all.

use std::collections::BTreeMap;
use std::fmt;

use serde::{Deserialize, Serialize};

use super::{Burned, Quantity, SetAside};

/// A refusal; the `Display` texts are for the command line, words for people are made elsewhere.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum Refused {
    /// The fuel column says the same fuel on both sides.
    OneFuel {
        /// Which one.
        burned: Burned,
    },
    /// No row could be used.
    NothingUsable {
        /// Rows set aside, by reason.
        set_aside: BTreeMap<SetAside, u64>,
    },
    /// A column holds what that quantity cannot be.
    OutOfRange {
        /// Which quantity.
        quantity: Quantity,
        /// Share of the rows, 0 to 1.
        share: f64,
    },
    /// Two columns go together as these quantities never do.
    RankImplausible {
        /// Which quantity.
        quantity: Quantity,
        /// Against which.
        against: Quantity,
        /// How they go together: rank correlation, -1 to 1.
        correlation: f64,
    },
}

impl Refused {
    /// The one spelling of its kind, for language files.
    pub const fn key(&self) -> &'static str {
        match self {
            Self::OneFuel { .. } => "one-fuel",
            Self::NothingUsable { .. } => "nothing-usable",
            Self::OutOfRange { .. } => "out-of-range",
            Self::RankImplausible { .. } => "rank-implausible",
        }
    }
}

impl fmt::Display for Refused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::OneFuel { burned } => write!(f, "both sides were driven on {}, says the fuel column", burned.name()),
            Self::NothingUsable { set_aside } if set_aside.is_empty() => write!(f, "no usable row: there is none"),
            Self::NothingUsable { set_aside } => {
                let counts: Vec<String> = set_aside.iter().map(|(why, n)| format!("{} {n}", why.code())).collect();
                write!(f, "no usable row; set aside: {}", counts.join(", "))
            }
            Self::OutOfRange { quantity, share } => {
                let percent = 100.0 * share;
                write!(
                    f,
                    "{}: {percent:.0} % of the rows are out of range; another unit or another column",
                    quantity.code()
                )
            }
            Self::RankImplausible { quantity, against, correlation } => write!(
                f,
                "{} goes with {} as it never does (rank correlation {correlation:.3}); one of the columns is another quantity",
                quantity.code(),
                against.code()
            ),
        }
    }
}

impl std::error::Error for Refused {}
