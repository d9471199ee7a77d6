//! Pressure drop and velocity in hoses and liquid lines.

use std::f64::consts::PI;

use serde::{Deserialize, Serialize};

use super::gas::{Gas, gas_state};
use super::liquid::{self, Liquid};
use super::substance::Component;
use super::{Basis, Composition, Error, ICE_POINT_K, Source, between};

/// What [`hose`] rests on.
pub const BASIS: Basis = Basis {
    key: "hose",
    method: "Darcy-Weisbach with constant density, laminar 64/Re or Haaland, roughness 2 um; mean of a pulsed flow",
    formulas: &[
        "dp = (f L/d + heads) rho v^2 / 2",
        "Re < 2300: f = 64/Re",
        "1/sqrt(f) = -1.8 log10((eps/d/3.7)^1.11 + 6.9/Re)",
    ],
    relative_uncertainty: Some(0.03),
    sources: &[Source::Haaland1983, Source::HerningZipperer1936, Source::Gerg2008, Source::Costald1979],
};

mod sheet;
mod worked;

pub use sheet::{
    Fit, Line, LineAsked, LineFound, MOST_DROP_KPA, MOST_VELOCITY_M_S, USUAL_HEADS, USUAL_VELOCITY_M_S, line,
};
pub use worked::steps;

/// Roughness of a smooth hose or drawn tube, mm.
const ROUGHNESS_MM: f64 = 0.002;
/// Reynolds number below which flow is laminar.
const LAMINAR_TO: f64 = 2_300.0;

/// What flows in the line.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Carries {
    /// Vapour, or natural gas.
    Gas,
    /// Saturated liquid; viscosity known for propane and the butanes, near 15 C.
    Liquid,
}

/// A straight line.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Hose {
    /// Mole fractions.
    pub composition: Composition,
    /// Gas or liquid.
    pub carries: Carries,
    /// Pressure of the gas, kPa absolute; a liquid is taken as saturated.
    pub pressure_kpa: f64,
    /// Temperature, C.
    pub temperature_c: f64,
    /// Bore, mm; 1 to 100.
    pub bore_mm: f64,
    /// Length, m; 0.01 to 50.
    pub length_m: f64,
    /// Mean mass flow, g/s; 0.001 to 500.
    pub flow_g_s: f64,
    /// Velocity heads lost in fittings; 0 to 50. Common practice 1 to 2.
    #[serde(default)]
    pub fitting_velocity_heads: f64,
}

/// Drop and velocity. Common practice: below 2 kPa and below 30 to 40 m/s in the common gas hose.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Drop {
    /// Pressure drop, fittings included, kPa.
    pub drop_kpa: f64,
    /// Mean velocity, m/s.
    pub velocity_m_s: f64,
    /// Reynolds number.
    pub reynolds: f64,
    /// Darcy friction factor.
    pub friction_factor: f64,
    /// Density, kg/m3.
    pub density_kg_m3: f64,
    /// Viscosity, uPa s.
    pub viscosity_upa_s: f64,
}

/// Pressure drop of a line.
///
/// ```text
/// v = m / (rho pi d^2/4);  Re = rho v d / mu;  dp = (f L/d + heads) rho v^2 / 2
/// f = 64/Re below 2300, else 1/sqrt f = -1.8 log10[(eps/d/3.7)^1.11 + 6.9/Re]
/// ```
///
/// Worked example: propane gas, 220 kPa, 50 C, 5 g/s through 0.6 m of 10 mm: 17.1 m/s, 0.66 kPa.
///
/// # Errors
/// [`Error::Outside`] names the quantity beyond its range (also a drop above a tenth of the pressure, where constant
/// density no longer holds: `flow_g_s`); [`Error::Wet`], [`Error::Unfit`] as the sums below.
///
/// # Source
/// Haaland, J. Fluids Eng. 105 (1983) 89. 3 % on a smooth straight line; flow in pulses peaks higher.
pub fn hose(hose: &Hose) -> Result<Drop, Error> {
    between("bore_mm", hose.bore_mm, 1.0, 100.0)?;
    between("length_m", hose.length_m, 0.01, 50.0)?;
    between("flow_g_s", hose.flow_g_s, 0.001, 500.0)?;
    between("fitting_velocity_heads", hose.fitting_velocity_heads, 0.0, 50.0)?;
    let (density_kg_m3, viscosity_upa_s) = hose.density_and_viscosity()?;
    let d = hose.bore_mm / 1e3;
    let velocity_m_s = hose.flow_g_s / 1e3 / (density_kg_m3 * PI / 4.0 * d * d);
    let reynolds = density_kg_m3 * velocity_m_s * d / (viscosity_upa_s * 1e-6);
    let friction_factor = friction_factor(reynolds, hose.bore_mm);
    let heads = friction_factor * hose.length_m / d + hose.fitting_velocity_heads;
    let drop_kpa = heads * density_kg_m3 * velocity_m_s * velocity_m_s / 2.0 / 1e3;
    if hose.carries == Carries::Gas && drop_kpa > 0.1 * hose.pressure_kpa {
        // Drop goes nearly with the square of the flow.
        let most = hose.flow_g_s * (0.1 * hose.pressure_kpa / drop_kpa).sqrt();
        between("flow_g_s", hose.flow_g_s, 0.001, most)?;
    }
    Ok(Drop { drop_kpa, velocity_m_s, reynolds, friction_factor, density_kg_m3, viscosity_upa_s })
}

fn friction_factor(reynolds: f64, bore_mm: f64) -> f64 {
    if reynolds < LAMINAR_TO {
        return 64.0 / reynolds;
    }
    let root = -1.8 * ((ROUGHNESS_MM / bore_mm / 3.7).powf(1.11) + 6.9 / reynolds).log10();
    1.0 / (root * root)
}

impl Hose {
    fn density_and_viscosity(&self) -> Result<(f64, f64), Error> {
        let Self { composition, temperature_c, pressure_kpa, .. } = *self;
        match self.carries {
            Carries::Gas => {
                let state = gas_state(&Gas { composition, pressure_kpa, temperature_c })?;
                Ok((state.density_kg_m3, gas_viscosity_upa_s(&composition, temperature_c)))
            }
            Carries::Liquid => {
                let density = liquid::density(&Liquid { composition, temperature_c })?.density_kg_m3;
                Ok((density, liquid_viscosity_upa_s(&composition)?))
            }
        }
    }
}

/// Temperature at which [`gas_viscosity`] is given, K.
const VISCOSITY_AT_K: f64 = 293.15;

/// Viscosity at 20 C, uPa s, and the exponent of T; exponents of ethane, propene, n-pentane, nitrogen and carbon dioxide
/// and the viscosities of propene, n-pentane and carbon dioxide from memory (they enter the drop with the power 0.2).
const fn gas_viscosity(component: Component) -> (f64, f64) {
    match component {
        Component::Methane => (11.04, 0.87),
        Component::Ethane => (9.207, 0.95),
        Component::Propane => (8.01, 0.99),
        Component::Propene => (8.41, 0.99),
        Component::NButane => (7.28, 1.01),
        Component::Isobutane => (7.37, 0.97),
        Component::NPentane => (6.7, 1.0),
        Component::Nitrogen => (17.57, 0.75),
        Component::CarbonDioxide => (14.7, 0.92),
    }
}

/// `sum(x mu sqrt M) / sum(x sqrt M)` (Herning and Zipperer), `mu = mu20 (T/293.15)^n`; low pressure.
fn gas_viscosity_upa_s(composition: &Composition, temperature_c: f64) -> f64 {
    let (mut above, mut below) = (0.0, 0.0);
    for (component, x) in composition.present() {
        let (mu20, n) = gas_viscosity(component);
        let weight = x * component.constants().molar_mass_g_mol.sqrt();
        above += weight * mu20 * ((temperature_c + ICE_POINT_K) / VISCOSITY_AT_K).powf(n);
        below += weight;
    }
    above / below
}

/// Mean of the logarithms at 15 C (Grunberg and Nissan, no interaction); propane and butanes only.
fn liquid_viscosity_upa_s(composition: &Composition) -> Result<f64, Error> {
    let mut log = 0.0;
    for (component, share) in composition.present() {
        log += share * liquid_viscosity(component, share)?.ln();
    }
    Ok(log.exp())
}

/// Viscosity of a saturated liquid at 15 C, uPa s.
fn liquid_viscosity(component: Component, share: f64) -> Result<f64, Error> {
    Ok(match component {
        Component::Propane => 108.0,
        Component::NButane => 174.0,
        Component::Isobutane => 168.0,
        // Small shares of neighbours are counted as propane.
        Component::Ethane | Component::Propene if share <= 0.2 => 108.0,
        Component::NPentane if share <= 0.05 => 174.0,
        other => return Err(Error::Unfit { component: other.key(), share }),
    })
}
