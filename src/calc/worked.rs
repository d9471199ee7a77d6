//! A sum laid out step by step, so that a reader can redo it with a pocket calculator.
//!
//! A step holds the formula in the symbols of its source and the numbers put into it. The expression uses `+ - · / ^ √`,
//! `lg` (the logarithm to the base 10) and brackets only; whoever shows it writes the numbers as the reader's language
//! does.

use super::Source;
use super::fuel_parts::Part;

/// One line of a worked sum.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// Stable key of the quantity; language files hold its name.
    pub key: &'static str,
    /// The formula, the same in every language.
    pub formula: &'static str,
    /// The formula with `{}` where a number goes.
    pub put_in: String,
    /// The numbers, in order.
    pub values: Vec<f64>,
    /// What comes out, in `unit`.
    pub result: f64,
    /// Unit of the result; empty for a bare number.
    pub unit: &'static str,
    /// Standard uncertainty (k = 1) in `unit`, where one is known.
    pub standard_uncertainty: Option<f64>,
    /// Where the formula comes from; `None` for a balance or a definition, which needs no document.
    pub source: Option<Source>,
    /// Figures with which a number goes in that nobody typed; more than [`FIGURES`] where like numbers are subtracted.
    pub figures: i32,
    /// Figures of the result; more where a later step subtracts it.
    pub result_figures: i32,
}

/// Figures of a number in a worked sum: enough to redo it.
pub const FIGURES: i32 = 5;
/// Up to so many figures a number is taken as typed and goes in whole.
const TYPED_FIGURES: i32 = 8;
/// Beyond these decimals no number of a workshop differs from nought.
const MOST_DECIMALS: i32 = 12;

/// The fewest decimals that keep so many figures.
#[must_use]
pub fn decimals(value: f64, figures: i32) -> u8 {
    if value == 0.0 || !value.is_finite() {
        return 0;
    }
    #[expect(clippy::cast_possible_truncation, reason = "the exponent of a double lies within 308")]
    let size = value.abs().log10().floor() as i32;
    let most = (figures - 1 - size).clamp(0, MOST_DECIMALS);
    let whole = (value * 10f64.powi(most)).round();
    let fewest = (0..most).find(|places| (whole / 10f64.powi(most - places)).fract() == 0.0).unwrap_or(most);
    u8::try_from(fewest).unwrap_or(0)
}

/// Decimals of a number that goes into a sum: all that were typed, else those of `figures`.
///
/// 1 013.25 kPa rounded to five figures would drown a loss of a tenth of a kilopascal.
#[must_use]
pub fn decimals_put_in(value: f64, figures: i32) -> u8 {
    let typed = decimals(value, TYPED_FIGURES);
    let scale = 10f64.powi(i32::from(typed));
    let is_whole = ((value * scale).round() / scale - value).abs() <= 1e-12 * value.abs();
    if is_whole { typed } else { decimals(value, figures) }
}

impl Step {
    /// A step whose numbers go into `put_in` in order.
    pub(super) fn new(
        key: &'static str,
        (formula, put_in): (&'static str, &str),
        values: &[f64],
        (result, unit): (f64, &'static str),
        source: impl Into<Option<Source>>,
    ) -> Self {
        let (put_in, values) = (put_in.to_owned(), values.to_vec());
        let (standard_uncertainty, source) = (None, source.into());
        let (figures, result_figures) = (FIGURES, FIGURES);
        Self { key, formula, put_in, values, result, unit, standard_uncertainty, source, figures, result_figures }
    }

    /// The same with more figures of what goes in.
    #[must_use]
    pub(super) fn with_numbers_of(mut self, figures: i32) -> Self {
        self.figures = figures;
        self
    }

    /// The same with more figures of the result.
    #[must_use]
    pub(super) fn with_result_of(mut self, figures: i32) -> Self {
        self.result_figures = figures;
        self
    }

    /// The same with a relative standard uncertainty.
    #[must_use]
    pub(super) fn good_to(mut self, relative: f64) -> Self {
        self.standard_uncertainty = Some(relative * self.result.abs());
        self
    }

    /// The same with a standard uncertainty in the unit of the result.
    #[must_use]
    pub(super) fn give_or_take(mut self, standard_uncertainty: f64) -> Self {
        self.standard_uncertainty = Some(standard_uncertainty);
        self
    }
}

/// `term + term + …`, a term for each set of numbers, and all the numbers in order.
pub(super) fn sum_of<const N: usize>(term: &str, numbers: impl IntoIterator<Item = [f64; N]>) -> (String, Vec<f64>) {
    let numbers: Vec<[f64; N]> = numbers.into_iter().collect();
    (vec![term; numbers.len()].join(" + "), numbers.into_iter().flatten().collect())
}

/// Net calorific value of a fuel from its parts by mass: `0.53 · 46.35 + 0.47 · 45.72`.
pub(super) fn net_energy(parts: &[Part], lower_heating_value_mj_kg: f64) -> Step {
    let burning = parts.iter().filter(|part| part.lower_heating_value_mj_kg > 0.0);
    let (put_in, values) = sum_of("{} · {}", burning.map(|part| [part.mass_share, part.lower_heating_value_mj_kg]));
    let result = (lower_heating_value_mj_kg, "MJ/kg");
    Step::new("net-energy", ("H = Σ w H", &put_in), &values, result, Source::Iso6976).good_to(0.001)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_typed_number_goes_in_whole_and_any_other_with_five_figures() {
        let shown = |value: f64| format!("{value:.*}", usize::from(decimals_put_in(value, FIGURES)));
        assert_eq!(shown(20_101.325), "20101.325");
        assert_eq!(shown(20.0 + 273.15), "293.15");
        assert_eq!(shown(46.047_612_345), "46.048");
        assert_eq!(shown(0.000_028_146), "0.000028146");
        assert_eq!(shown(std::f64::consts::PI), "3.1416");
        assert_eq!(shown(0.0), "0");
    }
}
