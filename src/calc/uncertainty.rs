//! Measurement uncertainty to first order: budgets, correlated inputs, effective degrees of freedom, coverage.
//!
//! A sum that has its derivatives at hand writes them down; any other hands its formula to [`sensitivities`].
//! Second-order terms are left out; the formulas of a workshop are close enough to straight over one uncertainty.
//!
//! Source of the method: JCGM 100:2008, clauses 4.2, 4.3, 5.1, 5.2, 6.3 and annex G.

use serde::{Deserialize, Serialize};

use super::worked::sum_of;
use super::{Basis, Outside, Source, Step, between, student};

/// What [`combine`] rests on.
pub const BASIS: Basis = Basis {
    key: "uncertainty",
    method: "first-order propagation of independent inputs; coverage by k = 2, or by Student below ten degrees of freedom",
    formulas: &["u^2 = sum (c_i u_i)^2", "nu = u^4 / sum((c_i u_i)^4 / nu_i)", "U = k u"],
    relative_uncertainty: None,
    sources: &[Source::Jcgm100],
};

/// An input of a measurement: its estimate and how well that is known.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Input {
    /// Best estimate, in the input's own unit.
    pub estimate: f64,
    /// Standard uncertainty, in the same unit.
    pub standard_uncertainty: f64,
    /// Degrees of freedom; `None` where the uncertainty is taken as exactly known.
    pub degrees_of_freedom: Option<f64>,
}

impl Input {
    /// An input whose uncertainty is taken as exactly known.
    pub fn new(estimate: f64, standard_uncertainty: f64) -> Self {
        Self { estimate, standard_uncertainty, degrees_of_freedom: None }
    }

    /// The same input with its uncertainty known to `degrees_of_freedom`.
    #[must_use]
    pub fn with_degrees_of_freedom(self, degrees_of_freedom: f64) -> Self {
        Self { degrees_of_freedom: Some(degrees_of_freedom), ..self }
    }

    /// Mean of repeated readings with the standard deviation of that mean, `s / sqrt(n)`.
    ///
    /// # Errors
    /// [`Outside`] for fewer than two readings, or one that is not finite.
    ///
    /// # Source
    /// JCGM 100:2008, 4.2.1 to 4.2.3 (type A evaluation).
    pub fn from_readings(readings: &[f64]) -> Result<Self, Outside> {
        let mean = mean(readings)?;
        let covariance = covariance_of_means(readings, readings)?;
        Ok(Self::new(mean, covariance.sqrt()).with_degrees_of_freedom(readings.len() as f64 - 1.0))
    }
}

/// Shape of what is known about an error that stays within plus or minus a half-width.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Shape {
    /// Anywhere between the bounds alike: a resolution, a permissible error.
    Rectangle,
    /// Likelier in the middle: the sum of two equal rectangles.
    Triangle,
    /// Likelier at the bounds: a temperature that swings.
    Arcsine,
}

impl Shape {
    /// Standard uncertainty of an error within plus or minus `half_width` (same unit).
    ///
    /// # Source
    /// JCGM 100:2008, 4.3.7 (rectangle), 4.3.9 (triangle), H.1.3.4 (arcsine).
    pub fn standard_uncertainty(self, half_width: f64) -> f64 {
        half_width.abs()
            / match self {
                Self::Rectangle => 3f64.sqrt(),
                Self::Triangle => 6f64.sqrt(),
                Self::Arcsine => 2f64.sqrt(),
            }
    }
}

/// Correlation of two inputs, named by their places in the list of inputs.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Correlation {
    /// Place of the one input, counted from 0.
    pub first: usize,
    /// Place of the other input, counted from 0.
    pub second: usize,
    /// Correlation coefficient, -1 to 1.
    pub coefficient: f64,
}

/// A result with its uncertainty.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Combined {
    /// Combined standard uncertainty, in the result's unit.
    pub standard_uncertainty: f64,
    /// Effective degrees of freedom; `None` where infinite, or where inputs are correlated and the formula does not hold.
    pub effective_degrees_of_freedom: Option<f64>,
}

/// The steps from independent inputs to the combined and the expanded uncertainty with the factor `k`.
#[must_use]
pub fn steps(inputs: &[Input], sensitivities: &[f64], combined: &Combined, k: f64) -> Vec<Step> {
    let u = combined.standard_uncertainty;
    let pairs = || inputs.iter().zip(sensitivities).map(|(input, c)| [*c, input.standard_uncertainty]);
    let (terms, values) = sum_of("({} · {}) ^ 2", pairs());
    let mut all = vec![Step::new(
        "budget-combined",
        ("u_c = √(Σ (c u)²)", &format!("√({terms})")),
        &values,
        (u, ""),
        Source::Jcgm100,
    )];
    let few: Vec<[f64; 3]> = inputs
        .iter()
        .zip(sensitivities)
        .filter_map(|(input, c)| Some([*c, input.standard_uncertainty, input.degrees_of_freedom?]))
        .collect();
    if let Some(freedom) = combined.effective_degrees_of_freedom {
        let (terms, mut values) = sum_of("({} · {}) ^ 4 / {}", few);
        values.insert(0, u);
        let put_in = format!("{{}} ^ 4 / ({terms})");
        let words = ("ν_eff = u_c⁴ / Σ ((c u)⁴ / ν)", put_in.as_str());
        all.push(Step::new("budget-freedom", words, &values, (freedom, ""), Source::Jcgm100));
    }
    all.push(Step::new("budget-expanded", ("U = k u_c", "{} · {}"), &[k, u], (k * u, ""), Source::Jcgm100));
    all
}

impl Combined {
    /// Coverage factor for `level`: Student's, at the effective degrees of freedom cut to a whole number.
    ///
    /// `level`: coverage probability, 0.5 to 0.9999.
    ///
    /// # Errors
    /// [`Outside`] for a level out of range, or less than one degree of freedom.
    ///
    /// # Source
    /// JCGM 100:2008, G.4.1 and G.6.4.
    pub fn coverage_factor(&self, level: f64) -> Result<f64, Outside> {
        student::two_sided(level, self.effective_degrees_of_freedom)
    }

    /// Expanded uncertainty as a paper prints it: k = 2, or Student's factor for 95 % below ten degrees of freedom.
    ///
    /// # Errors
    /// [`Outside`] below one degree of freedom.
    pub fn expanded(&self) -> Result<f64, Outside> {
        let k = match self.effective_degrees_of_freedom {
            Some(few) if few < 10.0 => self.coverage_factor(0.95)?,
            _ => 2.0,
        };
        Ok(k * self.standard_uncertainty)
    }
}

/// Combines inputs through their sensitivities (change of the result per unit of the input).
///
/// ```text
/// u^2 = sum (c_i u_i)^2 + 2 sum_{i<j} c_i c_j r_ij u_i u_j        nu = u^4 / sum((c_i u_i)^4 / nu_i)
/// ```
///
/// # Errors
/// [`Outside`] for an uncertainty below zero or not finite, a correlation beyond 1 or naming no input, degrees of
/// freedom below 1, or lists of unequal length.
///
/// # Source
/// JCGM 100:2008, equations 13 and G.2b (Welch and Satterthwaite; independent inputs only).
pub fn combine(inputs: &[Input], sensitivities: &[f64], correlations: &[Correlation]) -> Result<Combined, Outside> {
    // Checked by `covariance`: `max` would turn a NaN into a perfect measurement.
    let variance = covariance(inputs, sensitivities, sensitivities, correlations)?;
    // Fully correlated inputs can cancel to a hair below zero in floating point.
    let standard_uncertainty = variance.max(0.0).sqrt();
    let mut share = 0.0;
    for (input, c) in inputs.iter().zip(sensitivities) {
        if let Some(nu) = input.degrees_of_freedom {
            let nu = between("degrees_of_freedom", nu, 1.0, f64::MAX)?;
            share += (c * input.standard_uncertainty).powi(4) / nu;
        }
    }
    let share = between("welch_satterthwaite", share, 0.0, f64::MAX)?;
    let is_independent = correlations.iter().all(|r| r.coefficient == 0.0);
    let effective = standard_uncertainty.powi(4) / share;
    let effective_degrees_of_freedom = (is_independent && share > 0.0 && effective.is_finite()).then_some(effective);
    Ok(Combined { standard_uncertainty, effective_degrees_of_freedom })
}

/// Covariance of two results that rest on the same inputs; with one result twice, its variance.
///
/// # Errors
/// As [`combine`].
///
/// # Source
/// JCGM 100:2008, equations 13 and H.9.
pub fn covariance(
    inputs: &[Input],
    first_sensitivities: &[f64],
    second_sensitivities: &[f64],
    correlations: &[Correlation],
) -> Result<f64, Outside> {
    let n = inputs.len() as f64;
    between("sensitivities", first_sensitivities.len() as f64, n, n)?;
    between("sensitivities", second_sensitivities.len() as f64, n, n)?;
    let mut sum = 0.0;
    for ((input, a), b) in inputs.iter().zip(first_sensitivities).zip(second_sensitivities) {
        let u = between("standard_uncertainty", input.standard_uncertainty, 0.0, f64::MAX)?;
        sum +=
            between("sensitivity", *a, f64::MIN, f64::MAX)? * between("sensitivity", *b, f64::MIN, f64::MAX)? * u * u;
    }
    for &Correlation { first, second, coefficient } in correlations {
        let r = between("coefficient", coefficient, -1.0, 1.0)?;
        between("correlated_input", first.max(second) as f64, 0.0, n - 1.0)?;
        if first == second {
            return Err(Outside { quantity: "correlated_input", got: first as f64, least: 0.0, most: n - 1.0 });
        }
        let u = inputs[first].standard_uncertainty * inputs[second].standard_uncertainty;
        let (a, b) = (first_sensitivities, second_sensitivities);
        sum += r * u * (a[first] * b[second] + a[second] * b[first]);
    }
    between("covariance", sum, f64::MIN, f64::MAX)
}

/// Sensitivities of a formula by central differences, one standard uncertainty to each side.
///
/// An input without uncertainty gets 0: it adds nothing.
///
/// # Source
/// JCGM 100:2008, 5.1.3, note 2.
pub fn sensitivities(inputs: &[Input], formula: impl Fn(&[f64]) -> f64) -> Vec<f64> {
    let mut at: Vec<f64> = inputs.iter().map(|input| input.estimate).collect();
    let mut found = Vec::with_capacity(inputs.len());
    for (i, input) in inputs.iter().enumerate() {
        let u = input.standard_uncertainty;
        if u == 0.0 {
            found.push(0.0);
            continue;
        }
        at[i] = input.estimate + u;
        let above = formula(&at);
        at[i] = input.estimate - u;
        let below = formula(&at);
        at[i] = input.estimate;
        found.push((above - below) / (2.0 * u));
    }
    found
}

/// Covariance of the means of two quantities read together, n times each.
///
/// # Errors
/// [`Outside`] for fewer than two pairs, unequal lengths, or a reading that is not finite.
///
/// # Source
/// JCGM 100:2008, equation 17.
pub fn covariance_of_means(first: &[f64], second: &[f64]) -> Result<f64, Outside> {
    let n = first.len() as f64;
    between("readings", second.len() as f64, n, n)?;
    let (mean_first, mean_second) = (mean(first)?, mean(second)?);
    let sum: f64 = first.iter().zip(second).map(|(a, b)| (a - mean_first) * (b - mean_second)).sum();
    between("covariance", sum / (n * (n - 1.0)), f64::MIN, f64::MAX)
}

/// Correlation coefficient of the means of two quantities read together.
///
/// # Errors
/// As [`covariance_of_means`]; also where one of them never moved, since then nothing can be said.
///
/// # Source
/// JCGM 100:2008, equation 14.
pub fn correlation_of_means(first: &[f64], second: &[f64]) -> Result<f64, Outside> {
    let spread = (covariance_of_means(first, first)? * covariance_of_means(second, second)?).sqrt();
    let spread = between("spread", spread, f64::MIN_POSITIVE, f64::MAX)?;
    Ok((covariance_of_means(first, second)? / spread).clamp(-1.0, 1.0))
}

fn mean(readings: &[f64]) -> Result<f64, Outside> {
    between("readings", readings.len() as f64, 2.0, f64::MAX)?;
    for reading in readings {
        between("reading", *reading, f64::MIN, f64::MAX)?;
    }
    between("mean", readings.iter().sum::<f64>() / readings.len() as f64, f64::MIN, f64::MAX)
}
