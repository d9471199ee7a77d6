//! Where an axis is marked, and from a value to its place.

/// A scale: values from `low` to `high` onto places from `from` to `to`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Scale {
    /// Value at `from`.
    pub low: f64,
    /// Value at `to`.
    pub high: f64,
    /// First place.
    pub from: f64,
    /// Last place.
    pub to: f64,
}

impl Scale {
    /// The place of a value; values outside are brought to the nearer end, so that nothing leaves the frame. A scale
    /// without width puts everything in the middle.
    pub fn place(&self, value: f64) -> f64 {
        let width = self.high - self.low;
        let share = if width > 0.0 { ((value - self.low) / width).clamp(0.0, 1.0) } else { 0.5 };
        self.from + share * (self.to - self.from)
    }
}

/// Round values between `low` and `high`, at most `most` of them, in steps of 1, 2 or 5 times a power of ten.
///
/// Empty where the span is not a number above nought.
pub fn steps(low: f64, high: f64, most: u8) -> Vec<f64> {
    let span = high - low;
    if !(span > 0.0 && span.is_finite() && most > 0) {
        return Vec::new();
    }
    let rough = span / f64::from(most);
    let power = 10f64.powf(rough.log10().floor());
    let step = [1.0, 2.0, 5.0, 10.0].into_iter().map(|n| n * power).find(|step| *step >= rough).unwrap_or(10.0 * power);
    let first = (low / step).ceil();
    // Counted, not added up: a tenth added ten times is not one.
    (0..=u32::from(most))
        .map(|n| (first + f64::from(n)) * step)
        .take_while(|value| *value <= high + 1e-9 * step)
        .take(usize::from(most))
        .collect()
}

/// Decimals that show the steps between these values apart.
pub fn decimals(values: &[f64]) -> u8 {
    let least = values.windows(2).map(|pair| pair[1] - pair[0]).fold(f64::INFINITY, f64::min);
    (0..6).find(|decimals| least * 10f64.powi(i32::from(*decimals)) >= 0.999).unwrap_or(6)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn shown(low: f64, high: f64, most: u8) -> Vec<String> {
        let values = steps(low, high, most);
        let decimals = usize::from(decimals(&values));
        values.iter().map(|value| format!("{value:.decimals$}")).collect()
    }

    #[test]
    fn steps_are_round_and_inside() {
        assert_eq!(shown(300.87, 301.53, 4), ["301.0", "301.2", "301.4"]);
        assert_eq!(shown(0.0, 25.0, 5), ["0", "5", "10", "15", "20"]);
        assert_eq!(shown(0.0, 1.0, 5), ["0.0", "0.2", "0.4", "0.6", "0.8"]);
        assert!(steps(3.0, 3.0, 4).is_empty() && steps(0.0, f64::NAN, 4).is_empty());
    }

    #[test]
    fn a_value_outside_stays_at_the_edge() {
        let scale = Scale { low: 0.0, high: 10.0, from: 100.0, to: 0.0 };
        assert!((scale.place(2.5) - 75.0).abs() < 1e-9);
        assert!((scale.place(-5.0) - 100.0).abs() < 1e-9 && scale.place(50.0).abs() < 1e-9);
    }
}
