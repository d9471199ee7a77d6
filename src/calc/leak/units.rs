//! Leak rates in other units, and from the test gas to the fuel.
//!
//! A limit written for one gas must not be held against another without [`through_same_leak`].

mod worked;

use serde::{Deserialize, Serialize};

use crate::calc::{Basis, Outside, Source, between};

pub use worked::steps;

/// What [`through_same_leak`] and the conversions rest on.
pub const BASIS: Basis = Basis {
    key: "leak-units",
    method: "unit factors at 15 C and 101.325 kPa; laminar leaks by viscosity, molecular ones by molar mass",
    formulas: &[
        "q_2 = q_1 mu_1 / mu_2 (laminar)",
        "q_2 = q_1 sqrt(M_1 / M_2) (molecular)",
        "q ~ p^2 - p_a^2 (laminar)",
    ],
    relative_uncertainty: None,
    sources: &[Source::En1779, Source::Iso13443],
};

/// One cm3/h at 15 C and 101.325 kPa in Pa m3/s: 101 325 Pa times 1e-6 m3 in 3600 s.
const PA_M3_S_PER_CM3_H: f64 = 101_325.0 * 1e-6 / 3_600.0;
/// 15 C over 0 C, in kelvin: from the usual reference to "normal" cubic centimetres.
const REFERENCE_OVER_NORMAL_K: f64 = 288.15 / 273.15;
/// Beyond any leak that is still called one, cm3/h.
const MOST_CM3_H: f64 = 1e9;

/// Unit of a leak rate. Volumes are at 101.325 kPa.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum RateUnit {
    /// cm3/h at 15 C, the unit of every sum here.
    #[serde(rename = "cm3_h")]
    Cm3PerHour,
    /// Normal cm3/h, at 0 C.
    #[serde(rename = "normal_cm3_h")]
    NormalCm3PerHour,
    /// cm3/min at 15 C.
    #[serde(rename = "cm3_min")]
    Cm3PerMinute,
    /// Pa m3/s of gas at 15 C.
    #[serde(rename = "pa_m3_s")]
    PaM3PerSecond,
    /// mbar l/s of gas at 15 C.
    #[serde(rename = "mbar_l_s")]
    MbarLPerSecond,
}

impl RateUnit {
    /// How many of this unit make one cm3/h at 15 C and 101.325 kPa.
    fn per_cm3_h(self) -> f64 {
        match self {
            Self::Cm3PerHour => 1.0,
            Self::NormalCm3PerHour => 1.0 / REFERENCE_OVER_NORMAL_K,
            Self::Cm3PerMinute => 1.0 / 60.0,
            Self::PaM3PerSecond => PA_M3_S_PER_CM3_H,
            Self::MbarLPerSecond => 10.0 * PA_M3_S_PER_CM3_H,
        }
    }

    /// A rate in this unit, from cm3/h at 15 C and 101.325 kPa.
    ///
    /// # Errors
    /// [`Outside`] for a rate that is not finite or beyond any leak.
    pub fn from_cm3_h(self, rate_cm3_h: f64) -> Result<f64, Outside> {
        Ok(between("rate_cm3_h", rate_cm3_h, -MOST_CM3_H, MOST_CM3_H)? * self.per_cm3_h())
    }

    /// A rate in cm3/h at 15 C and 101.325 kPa, from this unit.
    ///
    /// # Errors
    /// [`Outside`] for a rate that is not finite or beyond any leak.
    pub fn to_cm3_h(self, rate: f64) -> Result<f64, Outside> {
        between("rate_cm3_h", rate / self.per_cm3_h(), -MOST_CM3_H, MOST_CM3_H)
    }
}

/// Gas in a leak.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[expect(missing_docs, reason = "the names of the gases say all")]
pub enum LeakGas {
    Air,
    Nitrogen,
    Helium,
    Methane,
    Ethane,
    Propane,
    Propene,
    NButane,
    Isobutane,
}

impl LeakGas {
    /// Every gas of the table.
    pub const ALL: [Self; 9] = [
        Self::Air,
        Self::Nitrogen,
        Self::Helium,
        Self::Methane,
        Self::Ethane,
        Self::Propane,
        Self::Propene,
        Self::NButane,
        Self::Isobutane,
    ];

    /// Molar mass g/mol, viscosity uPa s at 20 C and 101.325 kPa, density kg/m3 at 15 C and 101.325 kPa.
    ///
    /// Source: equations of state and transport correlations of the property library CoolProp 8.0.0.
    fn constants(self) -> (f64, f64, f64) {
        match self {
            Self::Air => (28.9655, 18.21, 1.2255),
            Self::Nitrogen => (28.0135, 17.57, 1.1851),
            Self::Helium => (4.0026, 19.62, 0.1692),
            Self::Methane => (16.0428, 11.04, 0.679_83),
            Self::Ethane => (30.069, 9.207, 1.2825),
            Self::Propane => (44.0956, 8.011, 1.8992),
            Self::Propene => (42.0797, 8.41, 1.8087),
            Self::NButane => (58.1222, 7.279, 2.5442),
            Self::Isobutane => (58.1222, 7.374, 2.5333),
        }
    }

    /// Molar mass, g/mol.
    pub fn molar_mass_g_mol(self) -> f64 {
        self.constants().0
    }

    /// Viscosity at 20 C and 101.325 kPa, uPa s.
    pub fn viscosity_upa_s(self) -> f64 {
        self.constants().1
    }

    /// Density at 15 C and 101.325 kPa, kg/m3.
    pub fn density_kg_m3(self) -> f64 {
        self.constants().2
    }
}

/// How gas passes a leak.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Regime {
    /// Laminar: the rate goes with one over the viscosity. Leaks above 1e-5 Pa m3/s are laminar or faster, so this is
    /// the cautious one for a vehicle.
    Viscous,
    /// Molecular: the rate goes with one over the root of the molar mass. Finer leaks only.
    Molecular,
}

/// Rate of gas `to` through the leak that passes `rate_cm3_h` of gas `from`, at the same pressures; same unit.
///
/// ```text
/// viscous  q2 = q1 mu1/mu2          molecular  q2 = q1 sqrt(M1/M2)
/// ```
///
/// # Errors
/// [`Outside`] for a rate that is not finite or beyond any leak.
///
/// # Source
/// Poiseuille's and Knudsen's laws; EN 1779 uses the same factors (from memory).
pub fn through_same_leak(rate_cm3_h: f64, from: LeakGas, to: LeakGas, regime: Regime) -> Result<f64, Outside> {
    let rate = between("rate_cm3_h", rate_cm3_h, -MOST_CM3_H, MOST_CM3_H)?;
    Ok(rate
        * match regime {
            Regime::Viscous => from.viscosity_upa_s() / to.viscosity_upa_s(),
            Regime::Molecular => (from.molar_mass_g_mol() / to.molar_mass_g_mol()).sqrt(),
        })
}

/// Rate through a laminar leak at another pressure, same unit: it goes with the difference of the squared pressures.
///
/// All pressures kPa absolute, both tests into `ambient_kpa`.
///
/// # Errors
/// [`Outside`] for a pressure not above ambient or not finite.
///
/// # Source
/// Poiseuille's law for a gas that expands along the leak.
pub fn at_other_pressure(rate_cm3_h: f64, from_kpa: f64, to_kpa: f64, ambient_kpa: f64) -> Result<f64, Outside> {
    let rate = between("rate_cm3_h", rate_cm3_h, -MOST_CM3_H, MOST_CM3_H)?;
    let ambient = between("ambient_kpa", ambient_kpa, 1.0, 1_000.0)?;
    // A tenth of a kilopascal above ambient, or the division explodes.
    let from = between("from_kpa", from_kpa, ambient + 0.1, 100_000.0)?;
    let to = between("to_kpa", to_kpa, ambient, 100_000.0)?;
    Ok(rate * (to * to - ambient * ambient) / (from * from - ambient * ambient))
}

/// Mass leaked, g/h, from a rate in cm3/h at 15 C and 101.325 kPa.
///
/// # Errors
/// [`Outside`] for a rate that is not finite or beyond any leak.
pub fn mass_g_h(rate_cm3_h: f64, gas: LeakGas) -> Result<f64, Outside> {
    // kg/m3 is mg/cm3.
    Ok(between("rate_cm3_h", rate_cm3_h, -MOST_CM3_H, MOST_CM3_H)? * gas.density_kg_m3() * 1e-3)
}

/// Bubbles of one cubic millimetre a second at a wetted joint that leaks `rate_cm3_h`.
///
/// # Errors
/// [`Outside`] for a rate below zero, not finite, or beyond any leak.
pub fn bubbles_per_second(rate_cm3_h: f64) -> Result<f64, Outside> {
    Ok(between("rate_cm3_h", rate_cm3_h, 0.0, MOST_CM3_H)? * 1_000.0 / 3_600.0)
}
