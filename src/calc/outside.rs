//! How a sum refuses: which quantity left its range, what it was given, and what it takes.

use serde::Serialize;

/// A quantity that a sum cannot take.
///
/// The quantity is named as at the door of the sum, unit suffix included, so that a form can put the message beside
/// its field.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Outside {
    /// Name of the parameter, with its unit suffix.
    pub quantity: &'static str,
    /// What was given; may be NaN or infinite.
    pub got: f64,
    /// Least value taken, in the same unit.
    pub least: f64,
    /// Largest value taken, in the same unit.
    pub most: f64,
}

impl std::fmt::Display for Outside {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let Self { quantity, got, least, most } = self;
        write!(f, "{quantity} is {got}; it takes {least} to {most}")
    }
}

impl std::error::Error for Outside {}

/// Gives `value` back when it lies from `least` to `most`, both included.
///
/// # Errors
/// [`Outside`] when it does not; NaN never does.
pub fn between(quantity: &'static str, value: f64, least: f64, most: f64) -> Result<f64, Outside> {
    // Asked this way round, NaN fails; `value < least || value > most` would let it through.
    if value >= least && value <= most { Ok(value) } else { Err(Outside { quantity, got: value, least, most }) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_ends_are_inside_and_nan_is_not() {
        assert_eq!(between("x_kpa", 1.0, 1.0, 2.0), Ok(1.0));
        assert_eq!(between("x_kpa", 2.0, 1.0, 2.0), Ok(2.0));
        for refused in [0.999, 2.001, f64::INFINITY, f64::NEG_INFINITY, f64::NAN] {
            assert!(between("x_kpa", refused, 1.0, 2.0).is_err(), "{refused}");
        }
    }

    #[test]
    fn the_message_names_the_quantity_what_it_got_and_what_it_takes() {
        let outside = between("x_kpa", 3.5, 1.0, 2.0).unwrap_err();
        assert_eq!(outside.to_string(), "x_kpa is 3.5; it takes 1 to 2");
    }
}
