//! Air excess of an engine from its dry exhaust gas, on petrol and on gas.
//!
//! Pure arithmetic of one reading; which limits apply, and by which rule, comes from outside.
//!
//! Source: J. Brettschneider, Technische Berichte 6 (1979) no. 4, 177-186. The idle test of OIML R 99 / ISO 3930 uses
//! the same formula (from memory).

use std::fmt;

use serde::{Deserialize, Serialize};

use super::{Basis, Outside, Source, between};

mod judged;
mod worked;

pub use judged::{
    ANALYSER_DIFFERENCE, LambdaJudged, LambdaLimit, PermissibleErrors, differs_from_analyser, hexane_from_propane_ppm,
    judge, lambda_uncertainty,
};
pub use worked::{steps, uncertainty_steps};

/// What [`lambda`] rests on.
pub const BASIS: Basis = Basis {
    key: "lambda",
    method: "Brettschneider's balance of the dry exhaust, H/C and O/C of the fuel as the exhaust codes fix them",
    formulas: &[
        "lambda = {CO2 + CO/2 + O2 + NO/2 + [(H/4) 3.5/(3.5 + CO/CO2) - O/2] (CO2 + CO)} / {(1 + H/4 - O/2) (CO2 + CO + 6e-4 HC)}",
    ],
    relative_uncertainty: None,
    sources: &[Source::Brettschneider1979, Source::OimlR99, Source::Un83],
};

/// Fuel the engine ran on while the probe was in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum ExhaustFuel {
    /// Petrol without alcohol.
    Petrol,
    /// Liquefied petroleum gas.
    Lpg,
    /// Compressed natural gas.
    Cng,
}

/// Atoms of hydrogen and of oxygen for each atom of carbon in a fuel.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Atoms {
    /// Hydrogen over carbon.
    pub h_c: f64,
    /// Oxygen over carbon.
    pub o_c: f64,
}

impl ExhaustFuel {
    /// Composition as the exhaust codes fix it.
    ///
    /// Source: petrol OIML R 99 / ISO 3930; LPG and CNG UN Regulation No. 83 (all from memory).
    pub fn atoms(self) -> Atoms {
        match self {
            Self::Petrol => Atoms { h_c: 1.7261, o_c: 0.0175 },
            Self::Lpg => Atoms { h_c: 2.525, o_c: 0.0 },
            Self::Cng => Atoms { h_c: 4.0, o_c: 0.0 },
        }
    }
}

/// One reading of the analyser: volume shares of the dry gas.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Exhaust {
    /// Fuel the engine ran on.
    pub fuel: ExhaustFuel,
    /// Carbon monoxide, per cent.
    pub co_percent: f64,
    /// Carbon dioxide, per cent.
    pub co2_percent: f64,
    /// Oxygen, per cent.
    pub o2_percent: f64,
    /// Unburned hydrocarbons, ppm reckoned as hexane. On CNG an infra-red bench sees little of them.
    pub hc_ppm_hexane: f64,
    /// Nitrogen oxides, ppm; `None` where the analyser has no cell for them.
    #[serde(default)]
    pub nox_ppm: Option<f64>,
}

/// Why a reading gives no lambda.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum NoLambda {
    /// A number left its range.
    Outside(Outside),
    /// Too little carbon or too much oxygen for exhaust gas: the probe is not in the exhaust, or draws air.
    ProbeNotInExhaust {
        /// Carbon dioxide and monoxide together, per cent; exhaust has 6 and more.
        carbon_percent: f64,
        /// Oxygen, per cent; exhaust has 15 and less.
        o2_percent: f64,
    },
}

impl From<Outside> for NoLambda {
    fn from(outside: Outside) -> Self {
        Self::Outside(outside)
    }
}

impl fmt::Display for NoLambda {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Outside(outside) => outside.fmt(f),
            Self::ProbeNotInExhaust { carbon_percent, o2_percent } => write!(
                f,
                "the probe is not in the exhaust: CO2 and CO together are {carbon_percent} % (at least {LEAST_CARBON_PERCENT}), \
                 O2 is {o2_percent} % (at most {MOST_O2_PERCENT})"
            ),
        }
    }
}

impl std::error::Error for NoLambda {}

/// Common practice: less carbon than this is diluted gas or air.
const LEAST_CARBON_PERCENT: f64 = 6.0;
/// Common practice: more oxygen than this is air.
const MOST_O2_PERCENT: f64 = 15.0;
/// Per cent of carbon carried by one ppm of hexane: six atoms, 1e-4 per cent in a ppm.
const CARBON_PERCENT_PER_PPM_HEXANE: f64 = 6e-4;
/// Water-gas constant: H2O times CO over H2 times CO2 in the cooled exhaust (Brettschneider 1979).
const WATER_GAS: f64 = 3.5;

/// Lambda of a reading, with the fuel's own composition.
///
/// ```text
/// lambda = { CO2 + CO/2 + O2 + NO/2 + [ (H/4) 3.5/(3.5 + CO/CO2) - O/2 ] (CO2 + CO) }
///        / { (1 + H/4 - O/2) (CO2 + CO + 6e-4 HC) }
/// ```
///
/// Returns the ratio of the air drawn in to the air needed, dimensionless.
///
/// # Errors
/// [`NoLambda`] for shares out of range, no carbon dioxide at all, or gas that is not exhaust.
///
/// # Source
/// Brettschneider 1979; exact where unburned fuel has the fuel's composition and the water is removed.
///
/// ```
/// use fuelwright::calc::lambda::{lambda, Exhaust, ExhaustFuel};
/// let complete = Exhaust {
///     fuel: ExhaustFuel::Cng, co_percent: 0.0, co2_percent: 11.7, o2_percent: 0.0, hc_ppm_hexane: 0.0, nox_ppm: None,
/// };
/// assert_eq!(lambda(&complete)?, 1.0); // all fuel burned, no oxygen left
/// # Ok::<(), fuelwright::calc::lambda::NoLambda>(())
/// ```
pub fn lambda(exhaust: &Exhaust) -> Result<f64, NoLambda> {
    lambda_reckoned_as(exhaust, exhaust.fuel)
}

/// Lambda an analyser would show for this gas when it is set to `fuel`, whatever the engine ran on.
///
/// An analyser left on petrol reads gas near lambda 1 almost right, and lean gas leaner than it is.
///
/// # Errors
/// As [`lambda`].
pub fn lambda_reckoned_as(exhaust: &Exhaust, fuel: ExhaustFuel) -> Result<f64, NoLambda> {
    let co = between("co_percent", exhaust.co_percent, 0.0, 20.0)?;
    let co2 = between("co2_percent", exhaust.co2_percent, 0.0, 25.0)?;
    let o2 = between("o2_percent", exhaust.o2_percent, 0.0, 25.0)?;
    let hc = between("hc_ppm_hexane", exhaust.hc_ppm_hexane, 0.0, 100_000.0)?;
    let nox = between("nox_ppm", exhaust.nox_ppm.unwrap_or(0.0), 0.0, 10_000.0)?;
    if co2 + co < LEAST_CARBON_PERCENT || o2 > MOST_O2_PERCENT {
        return Err(NoLambda::ProbeNotInExhaust { carbon_percent: co2 + co, o2_percent: o2 });
    }
    // The formula divides by CO2; no engine makes CO alone.
    let co2 = between("co2_percent", co2, 0.1, 25.0)?;
    Ok(formula(fuel.atoms(), [co, co2, o2, hc, nox]))
}

fn formula(fuel: Atoms, [co, co2, o2, hc_ppm, nox_ppm]: [f64; 5]) -> f64 {
    let Atoms { h_c: h, o_c: o } = fuel;
    let no = nox_ppm * 1e-4;
    let present =
        co2 + co / 2.0 + o2 + no / 2.0 + (h / 4.0 * WATER_GAS / (WATER_GAS + co / co2) - o / 2.0) * (co2 + co);
    let needed = (1.0 + h / 4.0 - o / 2.0) * (co2 + co + CARBON_PERCENT_PER_PPM_HEXANE * hc_ppm);
    present / needed
}
