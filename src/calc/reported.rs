//! A result as it is printed, with no more digits than it has.

use serde::{Deserialize, Serialize};

use super::{Outside, between};

/// A result with the uncertainty to two significant digits and the value to the same place.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Reported {
    /// The value, rounded.
    pub value: f64,
    /// The expanded uncertainty, rounded.
    pub expanded_uncertainty: f64,
    /// Places after the decimal point to print, 0 to 12.
    pub decimals: u8,
}

/// Places kept for a result without uncertainty, which has no place of its own.
const WITHOUT_UNCERTAINTY: i8 = 3;

/// Rounds a result for print; 1 234 with an uncertainty of 671 becomes 1 230 with 670.
///
/// # Errors
/// [`Outside`] where one of the two is not finite, or the uncertainty is below zero.
///
/// # Source
/// JCGM 100:2008, 7.2.6 (at most two significant digits, the estimate to match).
pub fn reported(value: f64, expanded_uncertainty: f64) -> Result<Reported, Outside> {
    let value = between("value", value, f64::MIN, f64::MAX)?;
    let expanded = between("expanded_uncertainty", expanded_uncertainty, 0.0, f64::MAX)?;
    let scale = |place: i8| 10f64.powi(i32::from(place));
    let place = if expanded > 0.0 {
        // 9.95 and more rounds to 10, which already has two digits.
        (-15..=12).find(|&place| expanded * scale(place) >= 9.95).unwrap_or(12)
    } else {
        WITHOUT_UNCERTAINTY
    };
    // Tens are reached by dividing, decimals by multiplying: both scales are whole numbers that way, and 10 stays 10.
    let rounded = |x: f64| {
        let rounded = match place {
            ..0 => (x / scale(-place)).round() * scale(-place),
            _ => (x * scale(place)).round() / scale(place),
        };
        // A number so large that its scaled self is none has no decimals to round.
        if rounded.is_finite() { rounded } else { x }
    };
    // Adding zero turns -0, which prints with its sign, into 0.
    let round = |x: f64| rounded(x) + 0.0;
    Ok(Reported {
        value: round(value),
        expanded_uncertainty: round(expanded),
        decimals: u8::try_from(place).unwrap_or(0),
    })
}
