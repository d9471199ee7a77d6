//! Units a workshop writes down, and the way from one to another of the same kind.
//!
//! A quantity is kept in the unit its name ends with (`_kpa`, `_c`, `_mm`); the unit somebody typed is remembered
//! beside it and shown again.

mod currency;
mod shown;

use std::str::FromStr;

pub use currency::{Currency, NoCurrency, fixed, minor_digits};
pub use shown::{Units, plain};

/// A unit of measure.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Unit {
    Kilopascal,
    Bar,
    Millibar,
    Megapascal,
    Psi,
    Celsius,
    Fahrenheit,
    Kelvin,
    Kilowatt,
    Horsepower,
    MetricHorsepower,
    Millimetre,
    Centimetre,
    Metre,
    Inch,
    Litre,
    CubicCentimetre,
    CubicMetre,
    GallonUs,
    GallonImperial,
    Kilometre,
    Mile,
    Kilogram,
    Gram,
    Pound,
    Second,
    Millisecond,
    Minute,
    Hour,
    Day,
    Month,
    Percent,
    PartsPerMillion,
    Volt,
    Ohm,
    PerMinute,
    CubicCentimetrePerHour,
    LitrePerMinute,
    NewtonMetre,
    Degree,
    /// A bare number: lambda, a coefficient, a count.
    One,
}

/// What a unit measures; only units of one kind can stand for each other.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Kind {
    Pressure,
    Temperature,
    Power,
    Length,
    Distance,
    Volume,
    Mass,
    Time,
    Calendar,
    Share,
    Voltage,
    Resistance,
    Speed,
    LeakRate,
    Flow,
    Torque,
    Angle,
    Bare,
}

/// Text that names no unit we know.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NotAUnit;

struct Entry {
    unit: Unit,
    kind: Kind,
    symbol: &'static str,
    /// The end of a name kept in this unit; empty where nothing is kept in it.
    suffix: &'static str,
    /// Base units of the kind in one of this unit.
    factor: f64,
    /// Other ways to write it, in small letters.
    spellings: &'static [&'static str],
}

const fn entry(
    unit: Unit,
    kind: Kind,
    symbol: &'static str,
    suffix: &'static str,
    factor: f64,
    spellings: &'static [&'static str],
) -> Entry {
    Entry { unit, kind, symbol, suffix, factor, spellings }
}

// Factors: NIST SP 811 (2008), appendix B.8, exact where that table prints them bold. Temperatures are handled apart.
const UNITS: [Entry; 41] = [
    entry(Unit::Kilopascal, Kind::Pressure, "kPa", "_kpa", 1.0, &["kpa"]),
    entry(Unit::Bar, Kind::Pressure, "bar", "_bar", 100.0, &["bar", "bars"]),
    entry(Unit::Millibar, Kind::Pressure, "mbar", "_mbar", 0.1, &["mbar", "hpa"]),
    entry(Unit::Megapascal, Kind::Pressure, "MPa", "_mpa", 1_000.0, &["mpa"]),
    entry(Unit::Psi, Kind::Pressure, "psi", "_psi", 6.894_757_293_168, &["psi", "lbf/in2", "lbf/in²"]),
    entry(Unit::Celsius, Kind::Temperature, "°C", "_c", 1.0, &["°c", "c", "degc", "deg c", "º c", "ºc"]),
    entry(Unit::Fahrenheit, Kind::Temperature, "°F", "_f", 1.0, &["°f", "f", "degf", "deg f", "ºf"]),
    entry(Unit::Kelvin, Kind::Temperature, "K", "_k", 1.0, &["k"]),
    entry(Unit::Kilowatt, Kind::Power, "kW", "_kw", 1.0, &["kw"]),
    entry(Unit::Horsepower, Kind::Power, "hp", "", 0.745_699_871_582_270_2, &["hp", "bhp"]),
    entry(Unit::MetricHorsepower, Kind::Power, "PS", "", 0.735_498_75, &["ps", "cv", "ch", "km (ps)"]),
    entry(Unit::Millimetre, Kind::Length, "mm", "_mm", 1.0, &["mm"]),
    entry(Unit::Centimetre, Kind::Length, "cm", "_cm", 10.0, &["cm"]),
    entry(Unit::Metre, Kind::Length, "m", "_m", 1_000.0, &["m"]),
    entry(Unit::Inch, Kind::Length, "in", "", 25.4, &["in", "inch", "inches", "\"", "″"]),
    entry(Unit::Litre, Kind::Volume, "L", "_l", 1.0, &["l", "litre", "litres", "liter", "liters", "dm3", "dm³"]),
    entry(Unit::CubicCentimetre, Kind::Volume, "cm³", "_cm3", 0.001, &["cm3", "cm³", "cc", "ccm", "ml"]),
    entry(Unit::CubicMetre, Kind::Volume, "m³", "_m3", 1_000.0, &["m3", "m³"]),
    entry(Unit::GallonUs, Kind::Volume, "gal (US)", "", 3.785_411_784, &["gal (us)", "us gal", "usgal", "gal us"]),
    entry(
        Unit::GallonImperial,
        Kind::Volume,
        "gal (imp)",
        "",
        4.546_09,
        &["gal (imp)", "imp gal", "gal imp", "gal (uk)"],
    ),
    entry(Unit::Kilometre, Kind::Distance, "km", "_km", 1.0, &["km"]),
    entry(Unit::Mile, Kind::Distance, "mi", "", 1.609_344, &["mi", "mile", "miles"]),
    entry(Unit::Kilogram, Kind::Mass, "kg", "_kg", 1.0, &["kg"]),
    entry(Unit::Gram, Kind::Mass, "g", "_g", 0.001, &["g"]),
    entry(Unit::Pound, Kind::Mass, "lb", "", 0.453_592_37, &["lb", "lbs"]),
    entry(Unit::Second, Kind::Time, "s", "_s", 1.0, &["s", "sec", "second", "seconds"]),
    entry(Unit::Millisecond, Kind::Time, "ms", "_ms", 0.001, &["ms"]),
    entry(Unit::Minute, Kind::Time, "min", "_min", 60.0, &["min", "mins", "minute", "minutes"]),
    entry(Unit::Hour, Kind::Time, "h", "_h", 3_600.0, &["h", "hr", "hour", "hours"]),
    entry(Unit::Day, Kind::Time, "d", "_days", 86_400.0, &["d", "day", "days"]),
    entry(Unit::Month, Kind::Calendar, "months", "_months", 1.0, &["month", "months"]),
    entry(Unit::Percent, Kind::Share, "%", "_percent", 1.0, &["%", "percent", "% vol", "vol%", "vol.%"]),
    entry(Unit::PartsPerMillion, Kind::Share, "ppm", "_ppm", 0.000_1, &["ppm"]),
    entry(Unit::Volt, Kind::Voltage, "V", "_v", 1.0, &["v", "volt", "volts"]),
    entry(Unit::Ohm, Kind::Resistance, "Ω", "_ohm", 1.0, &["ω", "ohm", "ohms"]),
    entry(Unit::PerMinute, Kind::Speed, "/min", "_rpm", 1.0, &["/min", "rpm", "1/min", "min-1", "min⁻¹", "r/min"]),
    entry(Unit::CubicCentimetrePerHour, Kind::LeakRate, "cm³/h", "_cm3_h", 1.0, &["cm³/h", "cm3/h", "ml/h", "cc/h"]),
    entry(Unit::LitrePerMinute, Kind::Flow, "L/min", "_l_min", 1.0, &["l/min", "lpm"]),
    entry(Unit::NewtonMetre, Kind::Torque, "N m", "_nm", 1.0, &["n m", "nm", "n·m"]),
    entry(Unit::Degree, Kind::Angle, "°", "_deg", 1.0, &["°", "deg", "degree", "degrees"]),
    entry(Unit::One, Kind::Bare, "", "", 1.0, &[]),
];

/// What 0 °C is in kelvin (SI Brochure, 9th edition, 2.3.1).
const ICE_K: f64 = 273.15;

impl Unit {
    fn entry(self) -> &'static Entry {
        // The test beneath proves that every unit has its row, in the order of the enum.
        &UNITS[self as usize]
    }

    /// As it is written behind a number.
    pub fn symbol(self) -> &'static str {
        self.entry().symbol
    }

    /// What it measures.
    pub fn kind(self) -> Kind {
        self.entry().kind
    }

    /// The unit in which a field of this name is kept: `odometer_km` is kept in kilometres.
    pub fn of_name(name: &str) -> Option<Self> {
        UNITS
            .iter()
            .filter(|entry| !entry.suffix.is_empty() && name.ends_with(entry.suffix))
            .max_by_key(|entry| entry.suffix.len())
            .map(|entry| entry.unit)
    }

    /// `value` of this unit, in `other`; nothing where the two measure different things.
    pub fn convert(self, value: f64, other: Self) -> Option<f64> {
        if self == other {
            return Some(value);
        }
        if self.kind() != other.kind() {
            return None;
        }
        if self.kind() == Kind::Temperature {
            return Some(other.kelvin_to_own(self.to_kelvin(value)));
        }
        // A tenth of a bar as 10.000000000000002 kPa would be shown to people: cut what the factors cannot carry.
        let raw = value * self.entry().factor / other.entry().factor;
        Some(if raw == 0.0 || !raw.is_finite() { raw } else { format!("{raw:.12e}").parse().unwrap_or(raw) })
    }

    fn to_kelvin(self, value: f64) -> f64 {
        match self {
            Self::Fahrenheit => (value - 32.0) / 1.8 + ICE_K,
            Self::Celsius => value + ICE_K,
            _ => value,
        }
    }

    fn kelvin_to_own(self, kelvin: f64) -> f64 {
        // Nanokelvins are rounding noise of the two steps.
        let tidy = |value: f64| (value * 1e9).round() / 1e9;
        match self {
            Self::Fahrenheit => tidy((kelvin - ICE_K) * 1.8 + 32.0),
            Self::Celsius => tidy(kelvin - ICE_K),
            _ => tidy(kelvin),
        }
    }
}

impl FromStr for Unit {
    type Err = NotAUnit;

    /// Reads a unit as people type it. A bare "gal" is refused: two gallons differ by a fifth.
    fn from_str(text: &str) -> Result<Self, NotAUnit> {
        let text = text.trim();
        // "mPa" would be a millipascal; nobody in a workshop means that, and reading it so would shrink a pressure.
        UNITS
            .iter()
            .find(|entry| !entry.symbol.is_empty() && entry.symbol == text)
            .or_else(|| {
                let small = text.to_lowercase();
                UNITS.iter().find(|entry| entry.spellings.contains(&small.as_str()))
            })
            .map(|entry| entry.unit)
            .ok_or(NotAUnit)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(got: Option<f64>, expected: f64) {
        let got = got.expect("convertible");
        assert!((got - expected).abs() <= 1e-6 * expected.abs().max(1.0), "{got} is not {expected}");
    }

    #[test]
    fn every_unit_has_its_row_and_reads_its_own_symbol() {
        for (place, entry) in UNITS.iter().enumerate() {
            assert_eq!(entry.unit as usize, place, "{}", entry.symbol);
            if entry.unit != Unit::One {
                assert_eq!(entry.symbol.parse(), Ok(entry.unit));
            }
            for spelling in entry.spellings {
                assert_eq!(*spelling, spelling.to_lowercase(), "spellings are kept in small letters");
                assert_eq!(spelling.parse(), Ok(entry.unit), "{spelling}");
            }
        }
    }

    // NIST SP 811 (2008), appendix B.8 and B.9.
    #[test]
    fn factors_agree_with_the_published_table() {
        near(Unit::Bar.convert(2.1, Unit::Kilopascal), 210.0);
        near(Unit::Psi.convert(30.0, Unit::Kilopascal), 206.842_718_8);
        near(Unit::Kilopascal.convert(206.842_718_8, Unit::Psi), 30.0);
        near(Unit::Horsepower.convert(100.0, Unit::Kilowatt), 74.569_987);
        near(Unit::MetricHorsepower.convert(100.0, Unit::Kilowatt), 73.549_875);
        near(Unit::GallonUs.convert(1.0, Unit::Litre), 3.785_411_784);
        near(Unit::GallonImperial.convert(1.0, Unit::Litre), 4.546_09);
        near(Unit::Mile.convert(100.0, Unit::Kilometre), 160.934_4);
        near(Unit::Fahrenheit.convert(212.0, Unit::Celsius), 100.0);
        near(Unit::Celsius.convert(-40.0, Unit::Fahrenheit), -40.0);
        near(Unit::Kelvin.convert(0.0, Unit::Celsius), -273.15);
        near(Unit::PartsPerMillion.convert(10_000.0, Unit::Percent), 1.0);
    }

    #[test]
    fn a_conversion_leaves_no_dust_in_the_last_digits() {
        assert_eq!(Unit::Bar.convert(0.1, Unit::Kilopascal), Some(10.0));
        assert_eq!(Unit::Millibar.convert(3.0, Unit::Kilopascal), Some(0.3));
        assert_eq!(Unit::Fahrenheit.convert(68.0, Unit::Celsius), Some(20.0));
    }

    #[test]
    fn unlike_units_do_not_convert() {
        assert_eq!(Unit::Bar.convert(1.0, Unit::Celsius), None);
        assert_eq!(Unit::Kilometre.convert(1.0, Unit::Millimetre), None, "a distance is driven, a length is measured");
    }

    #[test]
    fn a_bare_gallon_and_a_gauge_or_absolute_mark_are_not_guessed() {
        for text in ["gal", "psig", "bara", "bar(a)", "", "furlong"] {
            assert_eq!(text.parse::<Unit>(), Err(NotAUnit), "{text}");
        }
    }

    #[test]
    fn the_end_of_a_name_tells_its_unit() {
        assert_eq!(Unit::of_name("odometer_km"), Some(Unit::Kilometre));
        assert_eq!(Unit::of_name("limit_cm3_h"), Some(Unit::CubicCentimetrePerHour));
        assert_eq!(Unit::of_name("volume_l"), Some(Unit::Litre));
        assert_eq!(Unit::of_name("flow_l_min"), Some(Unit::LitrePerMinute));
        assert_eq!(Unit::of_name("coolant_c"), Some(Unit::Celsius));
        assert_eq!(Unit::of_name("lambda"), None);
    }
}
