//! The units a shop likes to read and write. What is kept stays in kPa, °C, kW, mm and L; only what people see, and a
//! number typed without its unit, follow the shop.

use std::fmt;

use super::{Kind, NotAUnit, Unit};

/// For each kind of quantity the unit it is shown in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Units {
    pub pressure: Unit,
    pub temperature: Unit,
    pub power: Unit,
    pub length: Unit,
    pub volume: Unit,
}

impl Units {
    /// What pressures can be shown in.
    pub const PRESSURES: [Unit; 3] = [Unit::Kilopascal, Unit::Bar, Unit::Psi];
    /// What temperatures can be shown in.
    pub const TEMPERATURES: [Unit; 2] = [Unit::Celsius, Unit::Fahrenheit];
    /// What power can be shown in.
    pub const POWERS: [Unit; 3] = [Unit::Kilowatt, Unit::Horsepower, Unit::MetricHorsepower];
    /// What lengths can be shown in.
    pub const LENGTHS: [Unit; 2] = [Unit::Millimetre, Unit::Inch];
    /// What volumes can be shown in.
    pub const VOLUMES: [Unit; 3] = [Unit::Litre, Unit::GallonUs, Unit::GallonImperial];

    /// As things are kept: kPa, °C, kW, mm, L.
    pub const KEPT: Self = Self {
        pressure: Unit::Kilopascal,
        temperature: Unit::Celsius,
        power: Unit::Kilowatt,
        length: Unit::Millimetre,
        volume: Unit::Litre,
    };

    /// The unit in which a quantity kept in `kept` is shown. Only the five units of [`Units::KEPT`] have another: a
    /// cubic centimetre of displacement or a litre a minute stays what the trade calls it.
    pub fn shown(&self, kept: Unit) -> Unit {
        match kept {
            Unit::Kilopascal => self.pressure,
            Unit::Celsius => self.temperature,
            Unit::Kilowatt => self.power,
            Unit::Millimetre => self.length,
            Unit::Litre => self.volume,
            other => other,
        }
    }

    /// A value of the unit with this symbol as it is shown: value, decimals, symbol. A symbol that no unit has, such as
    /// "kJ/kg", comes back as it is.
    pub fn showing<'a>(&self, value: f64, decimals: u8, symbol: &'a str) -> (f64, u8, &'a str) {
        self.other(symbol).map_or((value, decimals, symbol), |(kept, shown)| {
            let decimals = decimals.saturating_add_signed(finer(kept, shown));
            (kept.convert(value, shown).unwrap_or(value), decimals, shown.symbol())
        })
    }

    /// The same for a difference of two values: a rise of 10 °C is one of 18 °F, not of 50.
    pub fn showing_difference<'a>(&self, value: f64, decimals: u8, symbol: &'a str) -> (f64, u8, &'a str) {
        let (shown, decimals, own) = self.showing(value, decimals, symbol);
        match self.other(symbol) {
            Some((kept, unit)) if kept.kind() == Kind::Temperature => {
                let nought = kept.convert(0.0, unit).unwrap_or(0.0);
                (shown - nought, decimals, own)
            }
            _ => (shown, decimals, own),
        }
    }

    /// The symbol under which values of the unit with this symbol are shown.
    pub fn symbol<'a>(&self, symbol: &'a str) -> &'a str {
        self.other(symbol).map_or(symbol, |(_, shown)| shown.symbol())
    }

    fn other(&self, symbol: &str) -> Option<(Unit, Unit)> {
        // Megapascals are how a full cylinder is spoken of where pressures are in kilopascals.
        if symbol == Unit::Megapascal.symbol() && self.pressure != Unit::Kilopascal {
            return Some((Unit::Megapascal, self.pressure));
        }
        let kept =
            [Self::KEPT.pressure, Self::KEPT.temperature, Self::KEPT.power, Self::KEPT.length, Self::KEPT.volume]
                .into_iter()
                .find(|unit| unit.symbol() == symbol)?;
        let shown = self.shown(kept);
        (shown != kept).then_some((kept, shown))
    }
}

impl fmt::Display for Units {
    /// The symbols in the order of the fields, as they are kept: "bar, °C, kW, mm, L".
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(
            &[self.pressure, self.temperature, self.power, self.length, self.volume].map(Unit::symbol).join(", "),
        )
    }
}

impl TryFrom<String> for Units {
    type Error = NotAUnit;

    /// Reads what [`Units`] prints; a symbol that is no choice for its place is refused.
    fn try_from(text: String) -> Result<Self, NotAUnit> {
        let mut symbols = text.split(", ");
        let mut next = |choices: &[Unit]| {
            let symbol = symbols.next().ok_or(NotAUnit)?;
            choices.iter().copied().find(|unit| unit.symbol() == symbol).ok_or(NotAUnit)
        };
        Ok(Self {
            pressure: next(&Self::PRESSURES)?,
            temperature: next(&Self::TEMPERATURES)?,
            power: next(&Self::POWERS)?,
            length: next(&Self::LENGTHS)?,
            volume: next(&Self::VOLUMES)?,
        })
    }
}

impl Default for Units {
    fn default() -> Self {
        Self::KEPT
    }
}

/// Decimals more (or fewer) in the unit shown, so that nothing gets coarser: a kilopascal is a hundredth of a bar.
fn finer(kept: Unit, shown: Unit) -> i8 {
    match (kept, shown) {
        (Unit::Kilopascal, Unit::Bar) | (Unit::Millimetre, Unit::Inch) => 2,
        (Unit::Kilopascal, Unit::Psi) | (Unit::Litre, Unit::GallonUs | Unit::GallonImperial) => 1,
        (Unit::Megapascal, Unit::Bar) => -1,
        (Unit::Megapascal, Unit::Psi) => -2,
        _ => 0,
    }
}

/// `value` of `kept` as a plain text in `shown`, with as few digits as read back as the same value (to 2 in a million).
pub fn plain(value: f64, kept: Unit, shown: Unit) -> Option<String> {
    let turned = kept.convert(value, shown)?;
    let reads_back = |text: &String| {
        let back = text.parse().ok().and_then(|read| shown.convert(read, kept));
        back.is_some_and(|back| (back - value).abs() <= 2e-6 * value.abs().max(1e-3))
    };
    (0..=12).map(|decimals| format!("{turned:.decimals$}")).find(reads_back)
}

#[cfg(test)]
mod tests {
    use super::*;

    const ELSEWHERE: Units = Units {
        pressure: Unit::Psi,
        temperature: Unit::Fahrenheit,
        power: Unit::Horsepower,
        length: Unit::Inch,
        volume: Unit::GallonUs,
    };

    #[test]
    fn what_is_kept_is_shown_as_the_shop_likes_it_and_nothing_else_is_touched() {
        let bar = Units { pressure: Unit::Bar, ..Units::KEPT };
        assert_eq!(bar.showing(210.0, 0, "kPa"), (2.1, 2, "bar"));
        assert_eq!(bar.showing(20.0, 1, "MPa"), (200.0, 0, "bar"));
        assert_eq!(Units::KEPT.showing(20.0, 1, "MPa"), (20.0, 1, "MPa"));
        assert_eq!(bar.showing(20.0, 1, "°C"), (20.0, 1, "°C"));
        assert_eq!(ELSEWHERE.showing(20.0, 0, "°C"), (68.0, 0, "°F"));
        assert_eq!(ELSEWHERE.showing(1_598.0, 0, "cm³"), (1_598.0, 0, "cm³"));
        assert_eq!(ELSEWHERE.showing(3.5, 1, "kJ/kg"), (3.5, 1, "kJ/kg"));
        assert_eq!(ELSEWHERE.symbol("mm"), "in");
        assert_eq!(Units::KEPT.symbol("mm"), "mm");
    }

    #[test]
    fn units_are_kept_by_their_symbols() {
        assert_eq!(ELSEWHERE.to_string(), "psi, °F, hp, in, gal (US)");
        assert_eq!(Units::try_from(ELSEWHERE.to_string()), Ok(ELSEWHERE));
        for text in ["", "bar", "°C, kPa, kW, mm, L", "mbar, °C, kW, mm, L"] {
            assert_eq!(Units::try_from(text.to_owned()), Err(NotAUnit), "{text}");
        }
    }

    #[test]
    fn a_difference_of_temperatures_has_no_offset() {
        assert_eq!(ELSEWHERE.showing_difference(10.0, 0, "°C"), (18.0, 0, "°F"));
        let (psi, decimals, symbol) = ELSEWHERE.showing_difference(6.894_757_293_168, 1, "kPa");
        assert!((psi - 1.0).abs() < 1e-9 && decimals == 2 && symbol == "psi");
    }

    #[test]
    fn a_text_in_another_unit_has_few_digits_and_reads_back() {
        assert_eq!(plain(210.0, Unit::Kilopascal, Unit::Bar).as_deref(), Some("2.1"));
        assert_eq!(plain(55.0, Unit::Celsius, Unit::Fahrenheit).as_deref(), Some("131"));
        assert_eq!(plain(0.0, Unit::Kilopascal, Unit::Bar).as_deref(), Some("0"));
        // NIST SP 811 (2008), appendix B.8: 1 psi = 6.894 757 kPa.
        assert_eq!(plain(101.325, Unit::Kilopascal, Unit::Psi).as_deref(), Some("14.69595"));
        assert_eq!(plain(1.0, Unit::Kilopascal, Unit::Celsius), None);
    }
}
