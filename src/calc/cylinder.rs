//! What a CNG cylinder holds, what its gauge will show at another temperature, and how far a fast fill falls short.

mod stowed;
mod worked;

use serde::{Deserialize, Serialize};

use super::fuel::fuel;
use super::gas::{self, Gas, gas_state};
use super::{Basis, Caution, Composition, Error, ICE_POINT_K, NoRoot, Outside, REFERENCE_C, Source, between, roots};

pub use stowed::{LEFT_KPA, Stowage, Stowed, stow, stow_steps};
pub use worked::{fast_fill_steps, range_step, steps};

/// What [`cylinder`] rests on.
pub const BASIS: Basis = Basis {
    key: "cylinder",
    method: "GERG-2008 density; settled pressure at the same molar density; cylinder volume constant",
    formulas: &["m = rho(p, T) V", "V_15 = m / rho(101.325 kPa, 15 C)", "p_2 = p(T_2, rho)", "E = m H_net"],
    relative_uncertainty: Some(0.001),
    sources: &[Source::Gerg2008, Source::Iso20765Part2, Source::Iso13443, Source::Iso6976],
};

/// What [`fast_fill`] rests on.
pub const FAST_FILL: Basis = Basis {
    key: "fast-fill",
    method: "energy balance of an adiabatic cylinder, GERG-2008: an upper bound of the heat of compression",
    formulas: &["m2 u2 - m1 u1 = (m2 - m1) h_source"],
    relative_uncertainty: None,
    sources: &[Source::Gerg2008],
};

/// Usual working pressure settled at 15 C, kPa absolute (UN Regulation No. 110, from memory).
pub const WORKING_KPA: f64 = 20_000.0;

/// A cylinder and its fill.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Cylinder {
    /// Mole fractions; without propene.
    pub composition: Composition,
    /// Water volume, L; 0.5 to 3 000.
    pub volume_l: f64,
    /// Pressure, kPa absolute; up to 35 000.
    pub pressure_kpa: f64,
    /// Gas temperature, C.
    pub temperature_c: f64,
    /// Temperature for which the settled pressure is asked, C; -60 to 120.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at_temperature_c: Option<f64>,
}

/// What a cylinder holds.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Contents {
    /// Mass of gas, kg.
    pub mass_kg: f64,
    /// Volume of that gas at 15 C and 101.325 kPa, m3.
    pub standard_m3: f64,
    /// Pressure of the same gas at the temperature asked for, kPa absolute; none when none was asked for.
    pub settled_pressure_kpa: Option<f64>,
    /// Pressure of the same gas at 15 C, kPa absolute.
    pub settled_15c_kpa: f64,
    /// Energy, net, MJ.
    pub energy_mj: f64,
    /// What a reader should know.
    pub cautions: Vec<Caution>,
}

/// Mass, standard volume, settled pressure and energy of a filled cylinder.
///
/// ```text
/// mass = rho(p, T) V;  standard_m3 = mass / rho(101.325 kPa, 15 C);  p2 = p(T2, same density);  energy = mass H_net
/// ```
///
/// Worked example: methane, 80 L, 20 MPa, 15 C: 13.42 kg, 19.74 m3, 671 MJ, 16.03 MPa at -10 C. The ideal-gas law would
/// say 10.7 kg.
///
/// # Errors
/// [`Error::Outside`] names the quantity beyond its range, [`Error::Unfit`] propene, [`Error::Wet`] a state that is
/// partly liquid.
///
/// # Source
/// Kunz and Wagner 2012; ISO 20765-2. Mass 0.05 %, pressure 0.03 %.
pub fn cylinder(cylinder: &Cylinder) -> Result<Contents, Error> {
    let Cylinder { composition, volume_l, pressure_kpa, temperature_c, at_temperature_c } = *cylinder;
    between("volume_l", volume_l, 0.5, 3_000.0)?;
    gas::refuse_propene(&composition)?;
    let state = gas_state(&Gas { composition, pressure_kpa, temperature_c })?;
    let mass_kg = state.density_kg_m3 * volume_l / 1e3;
    let settled_15c_kpa = settled_kpa(&composition, state.density_kg_m3, REFERENCE_C)?;
    let mut cautions = state.cautions;
    if settled_15c_kpa > WORKING_KPA * 1.001 {
        cautions.push(Caution::AboveWorkingPressure { settled_15c_kpa });
    }
    Ok(Contents {
        mass_kg,
        standard_m3: mass_kg / gas::reference_density_kg_m3(&composition)?,
        settled_pressure_kpa: at_temperature_c
            .map(|at_c| {
                between("at_temperature_c", at_c, -60.0, 120.0)?;
                let kpa = settled_kpa(&composition, state.density_kg_m3, at_c)?;
                gas::refuse_wet(&composition, kpa, at_c)?;
                Ok::<f64, Error>(kpa)
            })
            .transpose()?,
        settled_15c_kpa,
        energy_mj: mass_kg * fuel(&composition)?.lower_heating_value_mj_kg,
        cautions,
    })
}

/// Pressure of gas held at a density, kPa absolute.
fn settled_kpa(composition: &Composition, density_kg_m3: f64, at_c: f64) -> Result<f64, Error> {
    let molar_density_mol_l = density_kg_m3 / composition.molar_mass_g_mol();
    gas::pressure_kpa(composition, at_c + ICE_POINT_K, molar_density_mol_l)
        .ok_or(Error::NoRoot(NoRoot { wanted: "settled_pressure_kpa" }))
}

/// Distance on the gas between two masses: `range = (mass - mass left) / consumption * 100`.
///
/// `consumption_kg_per_100km`: 0.5 to 150. `left_kg`: what stays when the regulator no longer delivers.
///
/// # Errors
/// [`Outside`] names the quantity beyond its range.
pub fn range_km(mass_kg: f64, left_kg: f64, consumption_kg_per_100km: f64) -> Result<f64, Outside> {
    between("consumption_kg_per_100km", consumption_kg_per_100km, 0.5, 150.0)?;
    between("mass_kg", mass_kg, 0.0, 3_000.0)?;
    between("left_kg", left_kg, 0.0, mass_kg)?;
    Ok((mass_kg - left_kg) / consumption_kg_per_100km * 100.0)
}

/// A fast fill from a source held at one pressure.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FastFill {
    /// Mole fractions; without propene.
    pub composition: Composition,
    /// Pressure in the cylinder before, kPa absolute.
    pub start_kpa: f64,
    /// Gas temperature in the cylinder before, C.
    pub start_c: f64,
    /// Pressure of the source, kPa absolute.
    pub source_kpa: f64,
    /// Gas temperature of the source, C.
    pub source_c: f64,
    /// Pressure at which filling stops, kPa absolute; not above the source.
    pub end_kpa: f64,
}

/// The end of a fast fill without any heat lost: a real fill loses heat to the wall, ends cooler and holds more.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct FastFilled {
    /// Gas temperature at the end, C.
    pub end_temperature_c: f64,
    /// Density at the end, kg/m3.
    pub end_density_kg_m3: f64,
    /// Pressure after cooling to 15 C, kPa absolute.
    pub settled_15c_kpa: f64,
    /// Density over that of a settled fill of 20 MPa at 15 C.
    pub filling_degree: f64,
}

/// Upper bound of the heat of compression in a fast fill.
///
/// ```text
/// m2 u2 - m1 u1 = (m2 - m1) h_source
/// ```
///
/// Worked example: methane from 2 MPa, all at 15 C, from a 25 MPa source, stopped at 20 MPa: 53 C, and 15.7 MPa once
/// cool. A gauge read right after filling therefore says little of the content.
///
/// # Errors
/// As [`cylinder`].
///
/// # Source
/// First law for an open, adiabatic volume; enthalpies of GERG-2008. 0.3 K.
pub fn fast_fill(fill: &FastFill) -> Result<FastFilled, Error> {
    let FastFill { composition, start_kpa, start_c, source_kpa, source_c, end_kpa } = *fill;
    gas::refuse_propene(&composition)?;
    gas::check_pressure("source_kpa", source_kpa)?;
    between("end_kpa", end_kpa, 100.0, source_kpa)?;
    between("start_kpa", start_kpa, 1.0, end_kpa)?;
    between("start_c", start_c, -40.0, 85.0)?;
    between("source_c", source_c, -40.0, 85.0)?;
    gas::refuse_wet(&composition, start_kpa, start_c)?;
    let source = gas::real(&composition, source_c + ICE_POINT_K, source_kpa)?;
    // Energy of the content above what the source would have brought, per volume: the same before and after.
    let excess = |kpa: f64, c: f64| -> Result<f64, Error> {
        let real = gas::real(&composition, c + ICE_POINT_K, kpa)?;
        Ok(real.density_kg_m3 * (real.internal_energy_kj_kg(kpa) - source.enthalpy_kj_kg))
    };
    let before = excess(start_kpa, start_c)?;
    let none = Error::NoRoot(NoRoot { wanted: "end_temperature_c" });
    let end_temperature_c = roots::try_bisect(-40.0, 170.0, 1e-4, |c| Ok(excess(end_kpa, c)? - before), none)?;
    let end_density_kg_m3 = gas::real(&composition, end_temperature_c + ICE_POINT_K, end_kpa)?.density_kg_m3;
    let full = gas::real(&composition, REFERENCE_C + ICE_POINT_K, WORKING_KPA)?.density_kg_m3;
    Ok(FastFilled {
        end_temperature_c,
        end_density_kg_m3,
        settled_15c_kpa: settled_kpa(&composition, end_density_kg_m3, REFERENCE_C)?,
        filling_degree: end_density_kg_m3 / full,
    })
}
