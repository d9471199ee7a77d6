//! Factors of carbon dioxide at the tailpipe, each with its document and year. One set serves both fuels of a comparison.

use serde::{Deserialize, Serialize};

use crate::calc::Source;
use crate::calc::fuel::Fuel;
use crate::calc::petrol::Petrol;

/// Where the factors of a comparison come from. Every set counts from the fuel tank to the tailpipe only.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum FactorSet {
    /// The carbon in the fuel as it is, all of it burned.
    #[default]
    CarbonBalance,
    /// IPCC 2006, per energy.
    Ipcc2006,
    /// EN 16258:2012, as carbon dioxide equivalents; petrol with 5 or 10 % ethanol only, whose ethanol counts as nothing.
    En16258,
}

/// What a factor was given for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum PerUnit {
    /// kg per kg of fuel.
    Kilogram,
    /// kg per litre of fuel.
    Litre,
    /// g per MJ, net.
    Megajoule,
}

impl PerUnit {
    /// Unit of the published value.
    #[must_use]
    pub const fn unit(self) -> &'static str {
        match self {
            Self::Kilogram => "kg/kg",
            Self::Litre => "kg/L",
            Self::Megajoule => "g/MJ",
        }
    }
}

/// One factor.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Factor {
    /// Its value as published or reckoned, in the unit of `per`.
    pub value: f64,
    /// What it was given for.
    pub per: PerUnit,
    /// Its document; none where it follows from the composition.
    pub source: Option<Source>,
    /// Year of the document; none likewise.
    pub year: Option<u16>,
    /// The same for the unit the fuel is sold by, kg per litre or kilogram.
    pub kg_per_unit: f64,
}

impl FactorSet {
    /// Every set.
    pub const ALL: [Self; 3] = [Self::CarbonBalance, Self::Ipcc2006, Self::En16258];

    /// Key in forms and files.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::CarbonBalance => "carbon-balance",
            Self::Ipcc2006 => "ipcc-2006",
            Self::En16258 => "en-16258",
        }
    }

    /// Factors of petrol and gas; none where the set has none for this petrol. `kg_per_unit` of the gas: its density in
    /// kg/L when sold by the litre, else 1.
    pub(super) fn of(
        self,
        petrol: Petrol,
        petrol_kg_m3: f64,
        gas: &Fuel,
        kg_per_unit: f64,
    ) -> Option<(Factor, Factor)> {
        let is_lpg = (kg_per_unit - 1.0).abs() > f64::EPSILON;
        let petrol_kg_l = petrol_kg_m3 / 1e3;
        let at = |value: f64, per, kg_per_unit: f64, energy_mj_kg: f64, source, year| {
            let per_unit = match per {
                PerUnit::Kilogram => value * kg_per_unit,
                PerUnit::Litre => value,
                PerUnit::Megajoule => value * energy_mj_kg * kg_per_unit / 1e3,
            };
            Factor { value, per, source, year, kg_per_unit: per_unit }
        };
        let of_petrol =
            |value, per, source, year| at(value, per, petrol_kg_l, petrol.lower_heating_value_mj_kg(), source, year);
        let of_gas =
            |value, per, source, year| at(value, per, kg_per_unit, gas.lower_heating_value_mj_kg, source, year);
        Some(match self {
            Self::CarbonBalance => (
                of_petrol(petrol.co2_kg_per_kg(), PerUnit::Kilogram, None, None),
                of_gas(gas.co2_kg_per_kg, PerUnit::Kilogram, None, None),
            ),
            Self::Ipcc2006 => {
                let (source, year) = (Some(Source::Ipcc2006), Some(2006));
                // Table 3.2.1, from memory.
                let gas = if is_lpg { 63.1 } else { 56.1 };
                (of_petrol(69.3, PerUnit::Megajoule, source, year), of_gas(gas, PerUnit::Megajoule, source, year))
            }
            Self::En16258 => {
                let (source, year) = (Some(Source::En16258), Some(2012));
                let petrol = match petrol {
                    Petrol::E0 => return None,
                    Petrol::E5 => 3.08,
                    Petrol::E10 => 2.90,
                };
                // Annex A, tank to wheel; the two gases from memory.
                let gas = if is_lpg {
                    of_gas(1.70, PerUnit::Litre, source, year)
                } else {
                    of_gas(2.68, PerUnit::Kilogram, source, year)
                };
                (of_petrol(petrol, PerUnit::Kilogram, source, year), gas)
            }
        })
    }
}
