//! The state of a fuel gas: density, speed of sound, isentropic exponent, heat capacity, enthalpy. The only file that
//! names the crate `aga8`.
//!
//! GERG-2008 knows no propene; there propene is counted as propane and the answer multiplied by the ratio of two
//! Peng-Robinson answers, with and without that exchange. A partly liquid state is refused, because the crate would
//! answer it with a gas that cannot last.

mod worked;

use aga8::composition::Composition as Mixture;
use aga8::gerg2008::Gerg2008;
use serde::{Deserialize, Serialize};

use super::cubic::Cubic;
use super::substance::Component;
use super::{
    ATMOSPHERE_KPA, Basis, Caution, Composition, Error, GAS_CONSTANT, ICE_POINT_K, NoRoot, Outside, REFERENCE_C,
    Source, between, liquid, roots,
};

pub use worked::steps;

/// What [`gas_state`] rests on.
pub const BASIS: Basis = Basis {
    key: "gas-state",
    method: "GERG-2008; propene by the Peng-Robinson ratio of the mixture with propene to that with propane instead",
    formulas: &["rho = p M / (Z R T)", "kappa = w^2 rho / p"],
    relative_uncertainty: Some(0.001),
    sources: &[Source::Gerg2008, Source::Iso20765Part2, Source::PengRobinson1976, Source::PolingPrausnitzOConnell2001],
};

/// From this pressure on the dew test does not apply, kPa absolute.
pub const DEW_TEST_TO_KPA: f64 = 3_000.0;
/// Coldest temperature of a gas state, C.
pub const COLDEST_C: f64 = 213.0 - ICE_POINT_K;
/// Hottest temperature of a gas state, C.
pub const HOTTEST_C: f64 = 400.0 - ICE_POINT_K;
const HIGHEST_KPA: f64 = 35_000.0;
/// A gas nearer to its dew temperature than this is worth a caution, K.
const NEAR_DEW_K: f64 = 5.0;

/// A gas at a pressure and a temperature.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Gas {
    /// Mole fractions.
    pub composition: Composition,
    /// Pressure, kPa absolute; above 0 to 35 000.
    pub pressure_kpa: f64,
    /// Temperature, C; -60.15 to 126.85.
    pub temperature_c: f64,
}

/// The state of a dry gas.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct GasState {
    /// Density, kg/m3.
    pub density_kg_m3: f64,
    /// Compressibility `p / (rho R T)`, dimensionless.
    pub compressibility: f64,
    /// Real isentropic exponent `w^2 rho / p`, dimensionless; not cp/cv, which would be up to 4 % off.
    pub isentropic_exponent: f64,
    /// Speed of sound, m/s.
    pub speed_of_sound_m_s: f64,
    /// Molar mass, g/mol.
    pub molar_mass_g_mol: f64,
    /// Heat capacity at constant pressure, kJ/(kg K).
    pub heat_capacity_kj_kg_k: f64,
    /// Temperature below which liquid forms at this pressure, C; none where no dew test applies.
    pub dew_temperature_c: Option<f64>,
    /// What a reader should know.
    pub cautions: Vec<Caution>,
}

/// State of a dry gas.
///
/// ```text
/// Z = Z_GERG(x') Z_PR(x) / Z_PR(x'), kappa and cp alike;  rho = p M / (Z R T);  w = sqrt(kappa p / rho)
/// ```
///
/// `x'` is the composition with propene counted as propane; without propene the ratio is 1. Density within 0.2 % for
/// LPG vapour and 0.06 % for natural gas against reference equations.
///
/// # Errors
/// [`Error::Outside`] names the pressure or temperature beyond its range; [`Error::Wet`] when the mixture is partly
/// liquid there; [`Error::NoRoot`] when no gas answers.
///
/// # Source
/// Kunz and Wagner 2012; ISO 20765-2; AGA Report No. 8 part 2.
///
/// ```
/// # use fuelwright::calc::composition::{Composition, Shares};
/// # use fuelwright::calc::gas::{Gas, gas_state};
/// let composition = Composition::from_mole(Shares { propane: 0.6, n_butane: 0.4, ..Shares::default() })?;
/// let gas = gas_state(&Gas { composition, pressure_kpa: 217.0, temperature_c: 50.0 })?;
/// assert!((gas.density_kg_m3 - 4.161).abs() < 0.002);
/// # Ok::<(), fuelwright::calc::Error>(())
/// ```
pub fn gas_state(gas: &Gas) -> Result<GasState, Error> {
    let Gas { composition, pressure_kpa, temperature_c } = gas;
    check_pressure("pressure_kpa", *pressure_kpa)?;
    between("temperature_c", *temperature_c, COLDEST_C, HOTTEST_C)?;
    let dew_temperature_c = refuse_wet(composition, *pressure_kpa, *temperature_c)?;
    let real = real(composition, temperature_c + ICE_POINT_K, *pressure_kpa)?;
    let density_kg_m3 = real.density_kg_m3;
    Ok(GasState {
        density_kg_m3,
        compressibility: real.z,
        isentropic_exponent: real.kappa,
        speed_of_sound_m_s: (real.kappa * pressure_kpa * 1e3 / density_kg_m3).sqrt(),
        molar_mass_g_mol: real.molar_mass_g_mol,
        heat_capacity_kj_kg_k: real.cp_j_mol_k / real.molar_mass_g_mol,
        dew_temperature_c,
        cautions: cautions(gas, dew_temperature_c),
    })
}

/// Compressibility of a gas at `kpa` (absolute) and `c`, in the form that
/// [`Compressibility::of`](super::leak::Compressibility::of) asks for.
///
/// # Errors
/// As [`gas_state`].
pub fn compressibility(composition: &Composition, kpa: f64, c: f64) -> Result<f64, Error> {
    let state = gas_state(&Gas { composition: *composition, pressure_kpa: kpa, temperature_c: c })?;
    Ok(state.compressibility)
}

/// Refuses propene, which the enthalpies and the settled pressure of this file count as propane.
pub(super) fn refuse_propene(composition: &Composition) -> Result<(), Error> {
    match composition.share(Component::Propene) {
        0.0 => Ok(()),
        share => Err(Error::Unfit { component: Component::Propene.key(), share }),
    }
}

fn cautions(gas: &Gas, dew_temperature_c: Option<f64>) -> Vec<Caution> {
    let mut cautions = Vec::new();
    if let Some(dew_temperature_c) = dew_temperature_c {
        let margin_k = gas.temperature_c - dew_temperature_c;
        if margin_k < NEAR_DEW_K {
            cautions.push(Caution::NearDew { dew_temperature_c, margin_k });
        }
    }
    let heavy: f64 = gas.composition.present().filter(|(c, _)| c.constants().carbon > 2.0).map(|(_, x)| x).sum();
    if gas.pressure_kpa >= DEW_TEST_TO_KPA && heavy > 0.0 {
        cautions.push(Caution::DewTestNotApplied { pressure_kpa: gas.pressure_kpa });
    }
    cautions
}

/// Refuses zero, negative, enormous and NaN pressures.
pub(super) fn check_pressure(quantity: &'static str, kpa: f64) -> Result<f64, Outside> {
    between(quantity, kpa, 0.001, HIGHEST_KPA)
}

/// Density of the gas at 15 C and 101.325 kPa, kg/m3, also for a mixture that is partly liquid there (the reference
/// state of a gas volume is then a fiction that everybody uses).
///
/// # Errors
/// [`Error::NoRoot`] when no gas answers.
pub fn reference_density_kg_m3(composition: &Composition) -> Result<f64, Error> {
    Ok(real(composition, REFERENCE_C + ICE_POINT_K, ATMOSPHERE_KPA)?.density_kg_m3)
}

/// The dew temperature when the state is dry and the test applies.
pub(super) fn refuse_wet(
    composition: &Composition,
    pressure_kpa: f64,
    temperature_c: f64,
) -> Result<Option<f64>, Error> {
    if (1.0..DEW_TEST_TO_KPA).contains(&pressure_kpa)
        && let Ok(dew_temperature_c) = liquid::dew_temperature_c(composition, pressure_kpa)
    {
        if temperature_c < dew_temperature_c {
            return Err(Error::Wet { dew_temperature_c, temperature_c });
        }
        return Ok(Some(dew_temperature_c));
    }
    if pressure_kpa < 1.0 {
        return Ok(None);
    }
    // Where no dew point is found a mixture below its pseudo-critical temperature (Kay's rule) is refused: it may be
    // liquid. Natural gas is far above.
    let critical_k: f64 = composition.present().map(|(c, x)| x * c.constants().critical_temperature_k).sum();
    between("temperature_c", temperature_c, critical_k - ICE_POINT_K, HOTTEST_C)?;
    Ok(None)
}

/// What the equation of state says of a gas.
#[derive(Debug, Clone, Copy)]
pub(super) struct Real {
    /// Compressibility.
    pub z: f64,
    /// Density, kg/m3.
    pub density_kg_m3: f64,
    /// Molar mass, g/mol.
    pub molar_mass_g_mol: f64,
    /// Real isentropic exponent.
    pub kappa: f64,
    /// Molar heat capacity, J/(mol K).
    pub cp_j_mol_k: f64,
    /// Enthalpy, kJ/kg, from an arbitrary zero that depends on the composition; propene counted as propane.
    pub enthalpy_kj_kg: f64,
}

impl Real {
    /// Internal energy, kJ/kg, from the same zero: `u = h - p / rho`.
    pub(super) fn internal_energy_kj_kg(&self, pressure_kpa: f64) -> f64 {
        self.enthalpy_kj_kg - pressure_kpa / self.density_kg_m3
    }
}

/// The gas root at `t` K and `p` kPa, without any test for liquid: callers test first.
pub(super) fn real(composition: &Composition, t: f64, p: f64) -> Result<Real, Error> {
    let none = Error::NoRoot(NoRoot { wanted: "density_kg_m3" });
    let stand_in = composition.propene_as_propane();
    let mut gerg = equation(&stand_in, t).ok_or(none)?;
    gerg.p = p;
    gerg.density(0).map_err(|_| none)?;
    let ideal = p / (GAS_CONSTANT * t);
    // When no gas root exists the crate goes on to the liquid and says Ok.
    if gerg.d.is_nan() || gerg.d <= 0.0 || (p < 2_000.0 && gerg.d > 3.0 * ideal) {
        return Err(none);
    }
    gerg.properties();
    let ratio = propene_ratio(composition, &stand_in, t, p)?;
    let molar_mass_g_mol = composition.molar_mass_g_mol();
    let z = gerg.z * ratio.z;
    let real = Real {
        z,
        density_kg_m3: p * molar_mass_g_mol / (z * GAS_CONSTANT * t),
        molar_mass_g_mol,
        kappa: gerg.kappa * ratio.kappa,
        cp_j_mol_k: gerg.cp * ratio.cp,
        enthalpy_kj_kg: gerg.h / gerg.mm,
    };
    let all = [real.z, real.density_kg_m3, real.kappa, real.cp_j_mol_k];
    if all.iter().all(|v| v.is_finite() && *v > 0.0) && real.enthalpy_kj_kg.is_finite() { Ok(real) } else { Err(none) }
}

struct Ratio {
    z: f64,
    kappa: f64,
    cp: f64,
}

fn propene_ratio(with: &Composition, without: &Composition, t: f64, p: f64) -> Result<Ratio, NoRoot> {
    if with.share(Component::Propene) == 0.0 {
        return Ok(Ratio { z: 1.0, kappa: 1.0, cp: 1.0 });
    }
    let (with, without) = (Cubic::new(with, t).gas(p * 1e3)?, Cubic::new(without, t).gas(p * 1e3)?);
    Ok(Ratio { z: with.z / without.z, kappa: with.kappa / without.kappa, cp: with.cp_j_mol_k / without.cp_j_mol_k })
}

/// Pressure of a gas held at a molar density, kPa: what a closed cylinder shows at another temperature.
pub(super) fn pressure_kpa(composition: &Composition, t: f64, molar_density_mol_l: f64) -> Option<f64> {
    let mut gerg = equation(&composition.propene_as_propane(), t)?;
    gerg.d = molar_density_mol_l;
    let p = gerg.pressure();
    (p.is_finite() && p > 0.0).then_some(p)
}

/// Enthalpy of the liquid under its pressure `p` (kPa), kJ/kg, from the same zero as [`Real::enthalpy_kj_kg`].
///
/// The crate's own liquid search fails at most saturation states; the root is halved for between 0.93 and 1.07 of the
/// COSTALD density instead.
///
/// # Errors
/// As [`liquid::density`]; [`Error::NoRoot`] when no liquid answers.
pub(super) fn liquid_enthalpy_kj_kg(composition: &Composition, temperature_c: f64, p: f64) -> Result<f64, Error> {
    let none = Error::NoRoot(NoRoot { wanted: "density_kg_m3" });
    let stand_in = composition.propene_as_propane();
    let t = temperature_c + ICE_POINT_K;
    let guess = 1e-3 / liquid::molar_volume_m3_mol(&stand_in, temperature_c)?;
    let gerg = equation(&stand_in, t).ok_or(none)?;
    let over = |d: f64| {
        let mut at = gerg;
        at.d = d;
        at.pressure() - p
    };
    let d = roots::bisect("density_kg_m3", 0.93 * guess, 1.07 * guess, 1e-9, over)?;
    let mut at = gerg;
    at.d = d;
    at.p = p;
    at.properties();
    if at.h.is_finite() { Ok(at.h / at.mm) } else { Err(none) }
}

/// The equation of state with composition and temperature set; none when the crate refuses the composition.
fn equation(composition: &Composition, t: f64) -> Option<Gerg2008> {
    let [methane, ethane, propane, _, n_butane, isobutane, n_pentane, nitrogen, carbon_dioxide] = *composition.mole();
    let mixture = Mixture {
        methane,
        ethane,
        propane,
        n_butane,
        isobutane,
        n_pentane,
        nitrogen,
        carbon_dioxide,
        ..Mixture::default()
    };
    let mut gerg = Gerg2008::new();
    gerg.set_composition(&mixture).ok()?;
    gerg.t = t;
    gerg.molar_mass();
    Some(gerg)
}
