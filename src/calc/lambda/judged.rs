//! How well lambda is known, how it stands against a limit, and against what the analyser itself shows.

use serde::{Deserialize, Serialize};

use super::{Exhaust, NoLambda, formula, lambda};
use crate::calc::decision::{self, Rule, Verdict};
use crate::calc::uncertainty::{self, Combined, Input, Shape};
use crate::calc::{Outside, between};

/// Largest permissible errors of an analyser, plus or minus.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PermissibleErrors {
    /// Carbon monoxide, per cent by volume.
    pub co_percent: f64,
    /// Carbon dioxide, per cent by volume.
    pub co2_percent: f64,
    /// Oxygen, per cent by volume.
    pub o2_percent: f64,
    /// Hydrocarbons, ppm hexane.
    pub hc_ppm_hexane: f64,
    /// Nitrogen oxides, ppm.
    pub nox_ppm: f64,
}

impl Default for PermissibleErrors {
    /// Usual figures of a class 1 analyser (OIML R 99, from memory); those of its own certificate are better.
    fn default() -> Self {
        Self { co_percent: 0.06, co2_percent: 0.5, o2_percent: 0.1, hc_ppm_hexane: 12.0, nox_ppm: 0.0 }
    }
}

/// Uncertainty of lambda from the analyser's permissible errors, each taken as a rectangle and independent.
///
/// # Errors
/// As [`lambda`]; also for errors below zero or so large that they reach over the reading itself.
///
/// # Source
/// JCGM 100:2008, 4.3.7 and 5.1.2.
pub fn lambda_uncertainty(exhaust: &Exhaust, errors: &PermissibleErrors) -> Result<Combined, NoLambda> {
    lambda(exhaust)?;
    let rectangle = |name, estimate: f64, half_width, most| -> Result<Input, Outside> {
        Ok(Input::new(estimate, Shape::Rectangle.standard_uncertainty(between(name, half_width, 0.0, most)?)))
    };
    let inputs = [
        rectangle("co_percent", exhaust.co_percent, errors.co_percent, 5.0)?,
        // At most what was read: the formula must not meet CO2 = 0.
        rectangle("co2_percent", exhaust.co2_percent, errors.co2_percent, exhaust.co2_percent)?,
        rectangle("o2_percent", exhaust.o2_percent, errors.o2_percent, 5.0)?,
        rectangle("hc_ppm_hexane", exhaust.hc_ppm_hexane, errors.hc_ppm_hexane, 10_000.0)?,
        rectangle("nox_ppm", exhaust.nox_ppm.unwrap_or(0.0), errors.nox_ppm, 10_000.0)?,
    ];
    let atoms = exhaust.fuel.atoms();
    let c = uncertainty::sensitivities(&inputs, |x| formula(atoms, [x[0], x[1], x[2], x[3], x[4]]));
    Ok(uncertainty::combine(&inputs, &c, &[])?)
}

/// Two-sided limit of lambda with the rule that decides.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LambdaLimit {
    /// Lower limit.
    pub least: f64,
    /// Upper limit.
    pub most: f64,
    /// Guarded by the expanded uncertainty, or simple.
    pub rule: Rule,
}

/// A reading held against its limit.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct LambdaJudged {
    /// Lambda of the reading.
    pub lambda: f64,
    /// Expanded uncertainty, k = 2.
    pub expanded_uncertainty: f64,
    /// The limit it was held against.
    pub limit: LambdaLimit,
    /// What the reading says about it.
    pub verdict: Verdict,
}

/// Lambda, its uncertainty and the verdict in one step.
///
/// # Errors
/// As [`lambda`] and [`lambda_uncertainty`]; [`Outside`] for crossed limits.
pub fn judge(exhaust: &Exhaust, errors: &PermissibleErrors, limit: LambdaLimit) -> Result<LambdaJudged, NoLambda> {
    let lambda = lambda(exhaust)?;
    let expanded_uncertainty = lambda_uncertainty(exhaust, errors)?.expanded()?;
    let verdict = decision::within(lambda, expanded_uncertainty, limit.least, limit.most, limit.rule)?;
    Ok(LambdaJudged { lambda, expanded_uncertainty, limit, verdict })
}

/// Beyond this difference to the analyser's own figure both are shown and the technician is asked.
pub const ANALYSER_DIFFERENCE: f64 = 0.01;

/// With a billionth of grace: 1.01 - 1.00 is a hair above 0.01 in binary.
const GRACED_DIFFERENCE: f64 = ANALYSER_DIFFERENCE + 1e-9;

/// The analyser's own lambda differs from ours by more than [`ANALYSER_DIFFERENCE`]; a NaN differs.
pub fn differs_from_analyser(lambda: f64, analyser_lambda: f64) -> bool {
    between("analyser_lambda", analyser_lambda - lambda, -GRACED_DIFFERENCE, GRACED_DIFFERENCE).is_err()
}

/// Hydrocarbons as hexane from a reading as propane.
///
/// `propane_equivalence_factor`: on the analyser's plate, commonly 0.49 to 0.54 (OIML R 99, from memory); takes 0.4 to 0.6.
///
/// # Errors
/// [`Outside`] for a factor or a reading out of range.
pub fn hexane_from_propane_ppm(hc_ppm_propane: f64, propane_equivalence_factor: f64) -> Result<f64, Outside> {
    let propane = between("hc_ppm_propane", hc_ppm_propane, 0.0, 200_000.0)?;
    Ok(propane * between("propane_equivalence_factor", propane_equivalence_factor, 0.4, 0.6)?)
}
