//! A leak rate in other units and another gas, laid out step by step.

use super::{LeakGas, RateUnit, Regime, bubbles_per_second, mass_g_h, through_same_leak};
use crate::calc::{Outside, Source, Step};

impl RateUnit {
    /// Every unit, in the order of a table.
    pub const ALL: [Self; 5] =
        [Self::Cm3PerHour, Self::NormalCm3PerHour, Self::Cm3PerMinute, Self::PaM3PerSecond, Self::MbarLPerSecond];

    /// As it is printed.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Cm3PerHour | Self::NormalCm3PerHour => "cm³/h",
            Self::Cm3PerMinute => "cm³/min",
            Self::PaM3PerSecond => "Pa m³/s",
            Self::MbarLPerSecond => "mbar L/s",
        }
    }

    const fn key(self) -> &'static str {
        match self {
            Self::Cm3PerHour => "rate-cm3-h",
            Self::NormalCm3PerHour => "rate-normal-cm3-h",
            Self::Cm3PerMinute => "rate-cm3-min",
            Self::PaM3PerSecond => "rate-pa-m3-s",
            Self::MbarLPerSecond => "rate-mbar-l-s",
        }
    }

    /// From cm3/h at 15 C and 101.325 kPa.
    const fn onwards(self) -> &'static str {
        match self {
            Self::Cm3PerHour => "{}",
            Self::NormalCm3PerHour => "{} · 273.15 / 288.15",
            Self::Cm3PerMinute => "{} / 60",
            Self::PaM3PerSecond => "{} · 101325 / 1000000 / 3600",
            Self::MbarLPerSecond => "10 · {} · 101325 / 1000000 / 3600",
        }
    }

    /// To cm3/h at 15 C and 101.325 kPa.
    const fn back(self) -> &'static str {
        match self {
            Self::Cm3PerHour => "{}",
            Self::NormalCm3PerHour => "{} · 288.15 / 273.15",
            Self::Cm3PerMinute => "{} · 60",
            Self::PaM3PerSecond => "{} · 3600 · 1000000 / 101325",
            Self::MbarLPerSecond => "{} / 10 · 3600 · 1000000 / 101325",
        }
    }
}

/// The steps from a rate of one gas in any unit to every unit, and to another gas through the same leak, with its mass
/// and bubbles.
///
/// # Errors
/// [`Outside`] for a rate that is not finite, below zero or beyond any leak.
pub fn steps(rate: f64, unit: RateUnit, from: LeakGas, to: LeakGas, regime: Regime) -> Result<Vec<Step>, Outside> {
    let cm3_h = unit.to_cm3_h(rate)?;
    let formula = "q = f q_u";
    let mut all = Vec::new();
    if unit != RateUnit::Cm3PerHour {
        let result = (cm3_h, RateUnit::Cm3PerHour.symbol());
        all.push(Step::new(RateUnit::Cm3PerHour.key(), (formula, unit.back()), &[rate], result, None));
    }
    for other in RateUnit::ALL.into_iter().filter(|other| *other != unit && *other != RateUnit::Cm3PerHour) {
        let result = (other.from_cm3_h(cm3_h)?, other.symbol());
        all.push(Step::new(other.key(), ("q_u = q / f", other.onwards()), &[cm3_h], result, None));
    }
    let other_gas = through_same_leak(cm3_h, from, to, regime)?;
    let (words, values) = match regime {
        Regime::Viscous => (("q_2 = q_1 µ_1 / µ_2", "{} · {} / {}"), [from.viscosity_upa_s(), to.viscosity_upa_s()]),
        Regime::Molecular => {
            (("q_2 = q_1 √(M_1 / M_2)", "{} · √({} / {})"), [from.molar_mass_g_mol(), to.molar_mass_g_mol()])
        }
    };
    let [one, two] = values;
    let result = (other_gas, RateUnit::Cm3PerHour.symbol());
    all.push(Step::new("rate-other-gas", words, &[cm3_h, one, two], result, Source::En1779));
    let mass = ("ṁ = q_2 ρ / 1000", "{} · {} / 1000");
    all.push(Step::new("rate-mass", mass, &[other_gas, to.density_kg_m3()], (mass_g_h(other_gas, to)?, "g/h"), None));
    let bubbles = ("n = 1000 q / 3600", "1000 · {} / 3600");
    all.push(Step::new("rate-bubbles", bubbles, &[cm3_h], (bubbles_per_second(cm3_h)?, "/s"), None));
    Ok(all)
}
