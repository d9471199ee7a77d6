//! From a measured value to a verdict: within a limit, beyond it, or not to be told.
//!
//! The guard band is the whole expanded uncertainty, so that a wrong pass stays below 2.5 % likely. For safety a doubt
//! is never a pass: what some texts call a conditional pass is *cannot tell* here.
//!
//! Source: ILAC-G8:09/2019, 4.2.1 (simple acceptance), 4.2.2 (guard band), 4.2.3 (guard band w = U).

use serde::{Deserialize, Serialize};

use super::{Outside, between};

/// What a measurement says about a limit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Verdict {
    /// Within the limit, uncertainty and all.
    Pass,
    /// Beyond the limit, uncertainty and all.
    Fail,
    /// The uncertainty reaches over the limit, or the test contradicts itself.
    CannotTell,
}

/// How the uncertainty enters the verdict.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Rule {
    /// The value must clear the limit by its expanded uncertainty.
    Guarded,
    /// The value is held against the limit as it is; up to half of all passes at the limit are wrong.
    Simple,
}

/// Holds a value against an upper limit (all in one unit).
///
/// # Errors
/// [`Outside`] where one of the three is not finite, or the uncertainty is below zero.
pub fn at_most(value: f64, expanded_uncertainty: f64, limit: f64, rule: Rule) -> Result<Verdict, Outside> {
    within(value, expanded_uncertainty, f64::MIN, limit, rule)
}

/// Holds a value against a lower and an upper limit (all in one unit).
///
/// # Errors
/// [`Outside`] where a number is not finite, the uncertainty is below zero, or the limits are crossed.
pub fn within(value: f64, expanded_uncertainty: f64, least: f64, most: f64, rule: Rule) -> Result<Verdict, Outside> {
    let y = between("value", value, f64::MIN, f64::MAX)?;
    let most = between("most", most, f64::MIN, f64::MAX)?;
    let least = between("least", least, f64::MIN, most)?;
    let expanded = between("expanded_uncertainty", expanded_uncertainty, 0.0, f64::MAX)?;
    let u = match rule {
        Rule::Guarded => expanded,
        Rule::Simple => 0.0,
    };
    Ok(if y - u > most || y + u < least {
        Verdict::Fail
    } else if y + u <= most && y - u >= least {
        Verdict::Pass
    } else {
        Verdict::CannotTell
    })
}
