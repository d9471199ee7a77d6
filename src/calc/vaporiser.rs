//! Heat: what an LPG vaporiser must bring, what a CNG regulator must bring, and the coolant for it.

use serde::{Deserialize, Serialize};

use super::fuel::fuel;
use super::gas::{self, Gas, gas_state};
use super::liquid::{self, Liquid};
use super::{Basis, Caution, Composition, Error, ICE_POINT_K, NoRoot, Outside, Source, between, roots};

/// What [`vaporiser`] rests on.
pub const VAPORISER: Basis = Basis {
    key: "vaporiser",
    method: "enthalpy of the vapour less that of the saturated liquid, GERG-2008; propene counted as propane",
    formulas: &["Q = m_f (h_vapour(p_out, T_out) - h_liquid(T_container, p_sat))", "coolant = Q / (c_p dT)"],
    relative_uncertainty: Some(0.02),
    sources: &[Source::Gerg2008, Source::Costald1979, Source::PengRobinson1976],
};

/// What [`regulator`] rests on.
pub const REGULATOR: Basis = Basis {
    key: "regulator",
    method: "throttling at constant enthalpy; heat by the enthalpy difference, GERG-2008",
    formulas: &["h(p_out, T_throttled) = h(p_in, T_in)", "Q = m_f (h(p_out, T_out) - h(p_in, T_in))"],
    relative_uncertainty: None,
    sources: &[Source::Gerg2008],
};

mod worked;

pub use worked::{regulator_steps, vaporiser_steps};

/// Coolant half water, half glycol at 80 C: heat capacity, kJ/(kg K).
const COOLANT_KJ_KG_K: f64 = 3.58;
/// The same: density, kg/L.
const COOLANT_KG_L: f64 = 1.026;
/// Coldest state the throttling search looks at, C.
const COLDEST_C: f64 = -150.0;

/// An LPG vaporiser at work.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Vaporiser {
    /// Mole fractions of the liquid.
    pub composition: Composition,
    /// Temperature in the container, C; -40 to 60.
    pub container_c: f64,
    /// Gas pressure at the outlet, kPa absolute.
    pub outlet_kpa: f64,
    /// Gas temperature at the outlet, C.
    pub outlet_c: f64,
    /// Fuel rate of the engine, g/s; 0.01 to 200.
    pub fuel_rate_g_s: f64,
    /// How far the coolant may cool down, K; 1 to 40. Common practice 5 to 10.
    pub coolant_drop_k: f64,
}

/// Heat of a vaporiser.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Vaporised {
    /// Enthalpy of the liquid in the container, kJ/kg, from an arbitrary zero.
    pub liquid_kj_kg: f64,
    /// Enthalpy of the vapour at the outlet, kJ/kg, from the same zero.
    pub vapour_kj_kg: f64,
    /// Heat per mass of gas, kJ/kg.
    pub heat_kj_kg: f64,
    /// Heat, kW.
    pub heat_kw: f64,
    /// Heat per fuel energy, W per kW net.
    pub heat_w_per_kw_fuel: f64,
    /// Coolant half water, half glycol, L/min.
    pub coolant_l_min: f64,
    /// Pressure in the container, kPa absolute.
    pub container_kpa: f64,
    /// Temperature below which the outlet rains, C: changeover must wait until the gas is well above.
    pub dew_temperature_c: f64,
    /// What a reader should know.
    pub cautions: Vec<Caution>,
}

/// Heat to bring saturated liquid to vapour, and the coolant that carries it.
///
/// ```text
/// Q = m_f (h_vapour(p_out, T_out) - h_liquid(T_container, p_sat));  coolant = Q / (cp dT)
/// ```
///
/// About 450 kJ/kg from 15 C to vapour of 60 C: 2.4 kW for an engine of 75 kW.
///
/// # Errors
/// [`Error::Outside`] names the quantity beyond its range, [`Error::Wet`] an outlet that rains, [`Error::Unfit`] a
/// component that is no LPG.
///
/// # Source
/// Enthalpies of GERG-2008. 0.25 %, with propene 0.8 %; 2 % (k = 1) for a real delivery.
pub fn vaporiser(vaporiser: &Vaporiser) -> Result<Vaporised, Error> {
    let Vaporiser { composition, container_c, outlet_kpa, outlet_c, fuel_rate_g_s, coolant_drop_k } = *vaporiser;
    between("container_c", container_c, -40.0, 60.0)?;
    between("outlet_kpa", outlet_kpa, 20.0, 1_500.0)?;
    between("fuel_rate_g_s", fuel_rate_g_s, 0.01, 200.0)?;
    between("coolant_drop_k", coolant_drop_k, 1.0, 40.0)?;
    let container_kpa = liquid::vapour_pressure(&Liquid { composition, temperature_c: container_c })?.pressure_kpa;
    let outlet = named_outlet(gas_state(&Gas { composition, pressure_kpa: outlet_kpa, temperature_c: outlet_c }))?;
    let vapour_kj_kg = gas::real(&composition, outlet_c + ICE_POINT_K, outlet_kpa)?.enthalpy_kj_kg;
    let liquid_kj_kg = gas::liquid_enthalpy_kj_kg(&composition, container_c, container_kpa)?;
    let heat_kj_kg = vapour_kj_kg - liquid_kj_kg;
    let heat_kw = fuel_rate_g_s * heat_kj_kg / 1e3;
    Ok(Vaporised {
        liquid_kj_kg,
        vapour_kj_kg,
        heat_kj_kg,
        heat_kw,
        heat_w_per_kw_fuel: heat_kj_kg / fuel(&composition)?.lower_heating_value_mj_kg,
        coolant_l_min: heat_kw / (COOLANT_KJ_KG_K * coolant_drop_k) / COOLANT_KG_L * 60.0,
        container_kpa,
        dew_temperature_c: liquid::dew_temperature_c(&composition, outlet_kpa)?,
        cautions: outlet.cautions,
    })
}

fn named_outlet<T>(answer: Result<T, Error>) -> Result<T, Error> {
    answer.map_err(|error| match error {
        Error::Outside(outside @ Outside { quantity: "temperature_c", .. }) => {
            Error::Outside(Outside { quantity: "outlet_c", ..outside })
        }
        other => other,
    })
}

/// A CNG regulator at work.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Regulator {
    /// Mole fractions; without propene.
    pub composition: Composition,
    /// Gas pressure at the inlet, kPa absolute.
    pub inlet_kpa: f64,
    /// Gas temperature at the inlet, C.
    pub inlet_c: f64,
    /// Gas pressure at the outlet, kPa absolute; below the inlet.
    pub outlet_kpa: f64,
    /// Gas temperature wanted at the outlet, C.
    pub outlet_c: f64,
    /// Fuel rate of the engine, g/s; 0.01 to 200.
    pub fuel_rate_g_s: f64,
    /// How far the coolant may cool down, K; 1 to 40.
    pub coolant_drop_k: f64,
}

/// Heat of a regulator.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Regulated {
    /// Enthalpy of the gas at the inlet, kJ/kg, from an arbitrary zero.
    pub inlet_kj_kg: f64,
    /// Enthalpy of the gas wanted at the outlet, kJ/kg, from the same zero.
    pub outlet_kj_kg: f64,
    /// Temperature after throttling with no heat added, C.
    pub throttled_c: f64,
    /// Mean temperature drop, K per bar.
    pub mean_joule_thomson_k_per_bar: f64,
    /// Heat per mass of gas to the temperature wanted, kJ/kg.
    pub heat_kj_kg: f64,
    /// Heat, kW; negative when the gas would have to be cooled.
    pub heat_kw: f64,
    /// Heat per fuel energy, W per kW net.
    pub heat_w_per_kw_fuel: f64,
    /// Coolant half water, half glycol, L/min; zero when no heat is needed.
    pub coolant_l_min: f64,
    /// What a reader should know.
    pub cautions: Vec<Caution>,
}

/// Cold of throttling, and the heat that keeps it from the engine.
///
/// ```text
/// h(p_out, T_throttled) = h(p_in, T_in);  Q = m_f (h(p_out, T_wanted) - h(p_in, T_in))
/// ```
///
/// Worked example: methane from 20 MPa, 15 C to 0.3 MPa: -74 C; 249 kJ/kg to 40 C.
///
/// # Errors
/// [`Error::Outside`] names the quantity beyond its range, [`Error::Wet`] an inlet or outlet that is partly liquid,
/// [`Error::Unfit`] propene.
///
/// # Source
/// Enthalpies of GERG-2008. 0.15 kJ/kg, 0.1 K.
pub fn regulator(regulator: &Regulator) -> Result<Regulated, Error> {
    let Regulator { composition, inlet_kpa, inlet_c, outlet_kpa, outlet_c, fuel_rate_g_s, coolant_drop_k } = *regulator;
    gas::refuse_propene(&composition)?;
    gas::check_pressure("inlet_kpa", inlet_kpa)?;
    between("outlet_kpa", outlet_kpa, 20.0, inlet_kpa)?;
    between("inlet_c", inlet_c, -50.0, 100.0)?;
    between("fuel_rate_g_s", fuel_rate_g_s, 0.01, 200.0)?;
    between("coolant_drop_k", coolant_drop_k, 1.0, 40.0)?;
    gas::refuse_wet(&composition, inlet_kpa, inlet_c)?;
    named_outlet(gas_state(&Gas { composition, pressure_kpa: outlet_kpa, temperature_c: outlet_c }))?;
    let enthalpy = |kpa: f64, c: f64| gas::real(&composition, c + ICE_POINT_K, kpa).map(|real| real.enthalpy_kj_kg);
    let (inlet_kj_kg, outlet_kj_kg) = (enthalpy(inlet_kpa, inlet_c)?, enthalpy(outlet_kpa, outlet_c)?);
    let throttled_c = throttled_c(&enthalpy, inlet_kj_kg, outlet_kpa, inlet_c)?;
    let heat_kj_kg = outlet_kj_kg - inlet_kj_kg;
    let heat_kw = fuel_rate_g_s * heat_kj_kg / 1e3;
    let drop_bar = (inlet_kpa - outlet_kpa) / 100.0;
    Ok(Regulated {
        inlet_kj_kg,
        outlet_kj_kg,
        throttled_c,
        mean_joule_thomson_k_per_bar: if drop_bar > 0.0 { (inlet_c - throttled_c) / drop_bar } else { 0.0 },
        heat_kj_kg,
        heat_kw,
        heat_w_per_kw_fuel: heat_kj_kg / fuel(&composition)?.lower_heating_value_mj_kg,
        coolant_l_min: (heat_kw / (COOLANT_KJ_KG_K * coolant_drop_k) / COOLANT_KG_L * 60.0).max(0.0),
        cautions: throttling_cautions(&composition, outlet_kpa, throttled_c),
    })
}

/// The search starts where the gas is warm and goes down until the enthalpy is passed, so that it never asks for a
/// state so cold that no gas answers.
fn throttled_c(
    enthalpy: &dyn Fn(f64, f64) -> Result<f64, Error>,
    before: f64,
    outlet_kpa: f64,
    inlet_c: f64,
) -> Result<f64, Error> {
    let none = Error::NoRoot(NoRoot { wanted: "throttled_c" });
    let mut high_c = inlet_c + 1.0;
    while high_c > COLDEST_C {
        let low_c = high_c - 10.0;
        if enthalpy(outlet_kpa, low_c)? <= before {
            return roots::try_bisect(low_c, high_c, 1e-4, |c| Ok(enthalpy(outlet_kpa, c)? - before), none);
        }
        high_c = low_c;
    }
    Err(none)
}

fn throttling_cautions(composition: &Composition, outlet_kpa: f64, throttled_c: f64) -> Vec<Caution> {
    let mut cautions = Vec::new();
    if throttled_c < 0.0 {
        cautions.push(Caution::Freezing { throttled_c });
    }
    if let Ok(dew_temperature_c) = liquid::dew_temperature_c(composition, outlet_kpa)
        && throttled_c < dew_temperature_c
    {
        cautions.push(Caution::CondensesWhenThrottled { dew_temperature_c });
    }
    cautions
}
