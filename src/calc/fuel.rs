//! What a fuel gas gives and needs: energy, air, octane, Wobbe index, carbon dioxide, and how much of the charge it
//! displaces.

pub(super) mod worked;

use serde::{Deserialize, Serialize};

use super::substance::{
    AIR_DENSITY_15C_KG_M3, AIR_MOLAR_MASS_G_MOL, AIR_OXYGEN_SHARE, Component, WATER_VAPORISATION_25C_KJ_MOL,
};
use super::{ATMOSPHERE_KPA, Basis, Caution, Composition, Error, GAS_CONSTANT, ICE_POINT_K, REFERENCE_C, Source};
use super::{between, gas};

pub use worked::steps;

/// What [`fuel`] rests on.
pub const BASIS: Basis = Basis {
    key: "fuel",
    method: "sums over components: calorific values of ISO 6976, octane blending values of ASTM D2598, real-gas density",
    formulas: &[
        "H_net = sum(x_i (H_gross,i - 44.016 H_i/2)) / M",
        "AFR = sum(x_i (C_i + H_i/4)) / 0.20946 * 28.96546 / M",
        "MON = sum(v_i MON_i)",
        "W = H_s,v / sqrt(rho / rho_air)",
    ],
    relative_uncertainty: Some(0.001),
    sources: &[Source::Iso6976, Source::AstmD2598, Source::Gerg2008, Source::Iso13443],
};

/// Most propene, by liquid volume, for which the octane sum holds (ASTM D2598).
pub const OCTANE_PROPENE_LIMIT: f64 = 0.20;
/// Heat of vaporisation of water at 15 C, kJ/mol (ISO 6976, from memory).
const WATER_VAPORISATION_15C_KJ_MOL: f64 = 44.431;
/// Least share of the gas that must burn for these sums to mean anything.
const LEAST_COMBUSTIBLE: f64 = 0.3;

/// What a fuel gas gives and needs.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Fuel {
    /// Net (lower) calorific value at 25 C of the vapour, MJ/kg.
    pub lower_heating_value_mj_kg: f64,
    /// Stoichiometric air need, kg dry air per kg.
    pub stoichiometric_afr: f64,
    /// Hydrogen atoms per carbon atom of what burns.
    pub h_c_ratio: f64,
    /// Molar mass, g/mol.
    pub molar_mass_g_mol: f64,
    /// Motor octane number estimated by ASTM D2598; none for CNG and above 20 % propene by liquid volume.
    pub motor_octane_number: Option<f64>,
    /// Gross Wobbe index, MJ/m3 at 15 C and 101.325 kPa, combustion at 15 C.
    pub wobbe_mj_m3: f64,
    /// Net Wobbe index, same conditions, MJ/m3.
    pub net_wobbe_mj_m3: f64,
    /// Gross calorific value by volume, same conditions, MJ/m3.
    pub gross_mj_m3: f64,
    /// Density over that of dry air, 15 C and 101.325 kPa.
    pub relative_density: f64,
    /// Carbon dioxide at the tailpipe, kg per kg fuel, that already in the gas included.
    pub co2_kg_per_kg: f64,
    /// Share of the stoichiometric charge that is gas, by volume.
    pub displaced_share: f64,
    /// Energy of one cubic metre of stoichiometric mixture at 15 C and 101.325 kPa, MJ.
    pub mixture_energy_mj_m3: f64,
    /// What a reader should know.
    pub cautions: Vec<Caution>,
}

/// Energy, air need, octane and Wobbe index of a fuel gas.
///
/// ```text
/// H_net = sum(x_i (H_gross25,i - 44.016 H_i/2)) / M          AFR = sum(x_i (C_i + H_i/4)) / 0.20946 * 28.96546 / M
/// H/C   = sum(x_i H_i) / sum(x_i C_i)                        CO2 = (sum(x_i C_i) + x_CO2) * 44.0095 / M
/// MON   = sum(v_i MON_i), v by liquid volume                 W_s = H_s,v / sqrt(rho / rho_air), 15 C / 15 C
/// ```
///
/// The net value is that of the vapour: the heat of vaporisation comes from the coolant. Uncertainty 0.1 % for a known
/// composition.
///
/// # Errors
/// [`Error::Outside`] when less than 30 mol % of the gas burns; [`Error::NoRoot`] when no gas answers at 15 C.
///
/// # Source
/// ISO 6976 (molar calorific values), ASTM D2598 table 1 (octane).
pub fn fuel(composition: &Composition) -> Result<Fuel, Error> {
    let burning: f64 = composition.present().filter(|(c, _)| c.constants().carbon > 0.0).map(|(_, x)| x).sum();
    between("composition", burning, LEAST_COMBUSTIBLE, 1.0 + 1e-9)?;
    let sum = |of: fn(Component) -> f64| composition.present().map(|(c, x)| x * of(c)).sum::<f64>();
    let carbon = sum(|c| c.constants().carbon);
    let hydrogen = sum(|c| c.constants().hydrogen);
    let molar_mass_g_mol = composition.molar_mass_g_mol();
    let net = sum(|c| c.constants().gross_25c_kj_mol) - WATER_VAPORISATION_25C_KJ_MOL * hydrogen / 2.0;
    let lower_heating_value_mj_kg = net / molar_mass_g_mol;
    let stoichiometric_afr = (carbon + hydrogen / 4.0) / AIR_OXYGEN_SHARE * AIR_MOLAR_MASS_G_MOL / molar_mass_g_mol;
    let density = gas::reference_density_kg_m3(composition)?;
    let relative_density = density / AIR_DENSITY_15C_KG_M3;
    let gross_15 = sum(|c| c.constants().gross_15c_kj_mol);
    let gross_mj_m3 = gross_15 * density / molar_mass_g_mol;
    let net_mj_m3 = (gross_15 - WATER_VAPORISATION_15C_KJ_MOL * hydrogen / 2.0) * density / molar_mass_g_mol;
    let charge_per_fuel = 1.0 + stoichiometric_afr * molar_mass_g_mol / AIR_MOLAR_MASS_G_MOL;
    let (motor_octane_number, cautions) = octane(composition);
    Ok(Fuel {
        lower_heating_value_mj_kg,
        stoichiometric_afr,
        h_c_ratio: hydrogen / carbon,
        molar_mass_g_mol,
        motor_octane_number,
        wobbe_mj_m3: gross_mj_m3 / relative_density.sqrt(),
        net_wobbe_mj_m3: net_mj_m3 / relative_density.sqrt(),
        gross_mj_m3,
        relative_density,
        co2_kg_per_kg: (carbon + composition.share(Component::CarbonDioxide))
            * Component::CarbonDioxide.constants().molar_mass_g_mol
            / molar_mass_g_mol,
        displaced_share: 1.0 / charge_per_fuel,
        mixture_energy_mj_m3: net / charge_per_fuel / ideal_molar_volume_l(),
        cautions,
    })
}

/// Molar volume of an ideal gas at 15 C and 101.325 kPa, L/mol: 23.645.
fn ideal_molar_volume_l() -> f64 {
    GAS_CONSTANT * (REFERENCE_C + ICE_POINT_K) / ATMOSPHERE_KPA
}

fn octane(composition: &Composition) -> (Option<f64>, Vec<Caution>) {
    let Ok(volume) = composition.liquid_volume() else { return (None, Vec::new()) };
    if volume.propene > OCTANE_PROPENE_LIMIT {
        return (None, vec![Caution::OctaneBeyondPropene { share: volume.propene }]);
    }
    let mut number = 0.0;
    for (component, share) in Component::ALL.into_iter().zip(volume.to_array()) {
        number += share * component.constants().motor_octane_blend.unwrap_or(0.0);
    }
    (Some(number), Vec::new())
}
