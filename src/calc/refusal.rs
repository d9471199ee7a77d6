//! How a sum says no when more can go wrong than a quantity outside its range. Words for people are made elsewhere;
//! the `Display` texts here are for the log and the command line.

use std::fmt;

use serde::Serialize;

use super::Outside;

/// A search found no answer although the inputs lie within range: the state asked for does not exist.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct NoRoot {
    /// Name of the quantity looked for, unit included.
    pub wanted: &'static str,
}

/// Why a sum did not answer.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum Error {
    /// An input lies outside the range.
    Outside(Outside),
    /// No such state.
    NoRoot(NoRoot),
    /// The mixture is partly liquid where a gas was asked for.
    Wet {
        /// Temperature below which liquid forms at the pressure asked for, C.
        dew_temperature_c: f64,
        /// Temperature asked for, C.
        temperature_c: f64,
    },
    /// The mixture has a component the sum knows nothing about.
    Unfit {
        /// Key of the component, such as `nitrogen`.
        component: &'static str,
        /// Its mole fraction.
        share: f64,
    },
}

impl fmt::Display for NoRoot {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "no {} answers: the state asked for does not exist", self.wanted)
    }
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Outside(outside) => outside.fmt(f),
            Self::NoRoot(no_root) => no_root.fmt(f),
            Self::Wet { dew_temperature_c, temperature_c } => write!(
                f,
                "the mixture is partly liquid at {temperature_c} C (dew temperature {dew_temperature_c:.1} C at this pressure)"
            ),
            Self::Unfit { component, share } => {
                write!(f, "the sum does not hold for {component} (mole fraction {share})")
            }
        }
    }
}

impl std::error::Error for NoRoot {}
impl std::error::Error for Error {}

impl From<Outside> for Error {
    fn from(outside: Outside) -> Self {
        Self::Outside(outside)
    }
}

impl From<NoRoot> for Error {
    fn from(no_root: NoRoot) -> Self {
        Self::NoRoot(no_root)
    }
}
