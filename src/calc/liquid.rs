//! Vapour pressure, dew temperature and liquid density of liquefied gas.
//!
//! Checked from -30 to 70 C against independent equations of state; outside, the sums answer with a caution. The
//! composition of a delivery is never known as well as these sums are.

mod worked;

use serde::{Deserialize, Serialize};

use super::composition::refuse_what_is_no_liquid;
use super::cubic::{Cubic, Phase};
use super::substance::{Component, Wagner};
use super::{Basis, Caution, Composition, Error, ICE_POINT_K, NoRoot, Source, between, roots};

pub use worked::{density_steps, vapour_pressure_steps};

/// What [`vapour_pressure`] and [`dew_temperature_c`] rest on.
pub const VAPOUR_PRESSURE: Basis = Basis {
    key: "vapour-pressure",
    method: "Peng-Robinson equation (k_ij = 0), corrected to Wagner saturation pressures of the pure components",
    formulas: &[
        "x_i phi_liquid,i = y_i phi_gas,i",
        "p = p_PR exp(sum(y_i ln(p_sat,i / p_sat,PR,i)))",
        "ln(p_sat/p_c) = (A t + B t^1.5 + C t^2.5 + D t^5) / T_r, t = 1 - T_r",
    ],
    relative_uncertainty: Some(VAPOUR_PRESSURE_UNCERTAINTY),
    sources: &[Source::PengRobinson1976, Source::VdiHeatAtlas2010],
};

/// What [`density`] rests on.
pub const DENSITY: Basis = Basis {
    key: "liquid-density",
    method: "COSTALD saturated-liquid volume",
    formulas: &["V_s = V* V0 (1 - w Vd)", "rho = M / V_s"],
    relative_uncertainty: Some(DENSITY_UNCERTAINTY),
    sources: &[Source::Costald1979],
};

/// Least temperature of the check against reference data, C.
pub const CHECKED_FROM_C: f64 = -30.0;
/// Greatest temperature of the check against reference data, C.
pub const CHECKED_TO_C: f64 = 70.0;
/// Relative standard uncertainty of the bubble pressure for a known composition.
pub const VAPOUR_PRESSURE_UNCERTAINTY: f64 = 0.01;
/// Relative standard uncertainty of the liquid density for a known composition.
pub const DENSITY_UNCERTAINTY: f64 = 0.002;

const ROUNDS: usize = 300;

/// A mixture at a temperature.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Liquid {
    /// Mole fractions of the liquid.
    pub composition: Composition,
    /// Temperature, C; -90 to 96.
    pub temperature_c: f64,
}

/// A liquid and the first bubble above it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct BubblePoint {
    /// Bubble pressure, kPa absolute.
    pub pressure_kpa: f64,
    /// Mole fractions of the vapour in equilibrium.
    pub vapour: Composition,
    /// What a reader should know.
    pub cautions: Vec<Caution>,
}

/// A saturated liquid.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct SaturatedDensity {
    /// Density, kg/m3.
    pub density_kg_m3: f64,
    /// What a reader should know.
    pub cautions: Vec<Caution>,
}

/// Saturation pressure of a pure component, kPa absolute; none at or above its critical temperature, or for nitrogen
/// and carbon dioxide.
///
/// ```text
/// ln(p/pc) = (A t + B t^1.5 + C t^2.5 + D t^5) / Tr,  t = 1 - Tr,  Tr = T/Tc
/// ```
///
/// Within 0.12 % of reference equations from -40 to 70 C, propene 0.34 %.
///
/// # Source
/// VDI Heat Atlas 2010, table D3.1.
#[must_use]
pub fn saturation_kpa(component: Component, temperature_c: f64) -> Option<f64> {
    let Wagner { critical_temperature_k, critical_pressure_kpa, coefficients: [a, b, c, d] } =
        component.constants().wagner?;
    let reduced = (temperature_c + ICE_POINT_K) / critical_temperature_k;
    if !(reduced > 0.0 && reduced < 1.0) {
        return None;
    }
    let t = 1.0 - reduced;
    let exponent = (a * t + b * t.powf(1.5) + c * t.powf(2.5) + d * t.powi(5)) / reduced;
    Some(critical_pressure_kpa * exponent.exp())
}

/// Bubble pressure of a liquid mixture, the pressure in a container that is not yet full, and the vapour above it.
///
/// ```text
/// x_i phi_liquid,i = y_i phi_gas,i (Peng-Robinson);  p = p_PR exp( sum y_i ln(p_sat,Wagner,i / p_sat,PR,i) )
/// ```
///
/// The correction makes a pure component agree with [`saturation_kpa`]. Raoult's law instead would be 1 to 6 % high.
///
/// # Errors
/// [`Error::Outside`] for a temperature beyond -90 to 96 C, [`Error::Unfit`] for methane, nitrogen and carbon dioxide,
/// [`Error::NoRoot`] where liquid and vapour become alike.
///
/// # Source
/// Peng and Robinson 1976. Uncertainty 1 % (k = 1) for a known composition, 3 % with propene.
///
/// ```
/// # use fuelwright::calc::composition::{Composition, Shares};
/// # use fuelwright::calc::liquid::{Liquid, vapour_pressure};
/// let composition = Composition::from_mole(Shares { propane: 0.6, n_butane: 0.4, ..Shares::default() })?;
/// let bubble = vapour_pressure(&Liquid { composition, temperature_c: 15.0 })?;
/// assert!((bubble.pressure_kpa - 496.4).abs() < 1.0);
/// # Ok::<(), fuelwright::calc::Error>(())
/// ```
pub fn vapour_pressure(liquid: &Liquid) -> Result<BubblePoint, Error> {
    let t = kelvin(liquid.temperature_c)?;
    refuse_what_is_no_liquid(liquid.composition.mole())?;
    let (plain_pa, y) = bubble(&liquid.composition, t)?;
    let correction = saturation_correction(&y, liquid.temperature_c)?;
    let vapour = Composition::from_phase(y);
    let cautions = cautions(&liquid.composition, liquid.temperature_c);
    Ok(BubblePoint { pressure_kpa: plain_pa / 1e3 * correction.exp(), vapour, cautions })
}

/// Temperature below which a gas of this composition starts to rain, C.
///
/// Within 0.2 K of reference equations from 150 to 400 kPa. Used up to 3 MPa.
///
/// # Errors
/// [`Error::Outside`] for a pressure beyond 1 to 4 000 kPa, [`Error::NoRoot`] where there is no dew point (above the
/// critical region, or a gas such as methane that stays dry).
pub fn dew_temperature_c(composition: &Composition, pressure_kpa: f64) -> Result<f64, Error> {
    between("pressure_kpa", pressure_kpa, 1.0, 4_000.0)?;
    // Vapour of one component: the saturation curve itself.
    if let Some((component, _)) = composition.present().find(|(_, x)| *x > 1.0 - 1e-9) {
        return pure_dew_c(component, pressure_kpa);
    }
    dew(composition.mole(), pressure_kpa * 1e3)
}

fn pure_dew_c(component: Component, pressure_kpa: f64) -> Result<f64, Error> {
    let none = Error::NoRoot(NoRoot { wanted: "dew_temperature_c" });
    let Some(wagner) = component.constants().wagner else { return Err(none) };
    let critical_c = wagner.critical_temperature_k - ICE_POINT_K;
    let miss = |c: f64| Ok(saturation_kpa(component, c).unwrap_or(f64::INFINITY).min(1e9) - pressure_kpa);
    roots::try_bisect(
        (critical_c - 0.6 * wagner.critical_temperature_k).max(-200.0),
        critical_c - 1e-6,
        1e-6,
        miss,
        none,
    )
}

/// Density of the saturated liquid (COSTALD).
///
/// ```text
/// V_s / V* = V0 (1 - w Vd);  rho = M / V_s;  V0, Vd polynomials in Tr (see the source)
/// ```
///
/// Within 0.35 % of reference equations; holds for reduced temperatures from 0.25 to 0.95.
///
/// # Errors
/// [`Error::Outside`] for a temperature beyond that, [`Error::Unfit`] for methane, nitrogen and carbon dioxide.
///
/// # Source
/// Hankinson and Thomson, AIChE J. 25 (1979) 653. Uncertainty 0.2 % (k = 1).
pub fn density(liquid: &Liquid) -> Result<SaturatedDensity, Error> {
    let density_kg_m3 = density_kg_m3(&liquid.composition, liquid.temperature_c)?;
    Ok(SaturatedDensity { density_kg_m3, cautions: cautions(&liquid.composition, liquid.temperature_c) })
}

/// [`density`] as a bare number, kg/m3.
///
/// # Errors
/// As [`density`].
pub fn density_kg_m3(composition: &Composition, temperature_c: f64) -> Result<f64, Error> {
    Ok(composition.molar_mass_g_mol() / 1e3 / molar_volume_m3_mol(composition, temperature_c)?)
}

/// Molar volume of the saturated liquid, m3/mol (COSTALD).
///
/// # Errors
/// As [`density`].
pub fn molar_volume_m3_mol(composition: &Composition, temperature_c: f64) -> Result<f64, Error> {
    refuse_what_is_no_liquid(composition.mole())?;
    let Characteristic { volume, temperature_k, acentric_factor } = characteristic(composition);
    let least = 0.25 * temperature_k - ICE_POINT_K;
    let most = 0.95 * temperature_k - ICE_POINT_K;
    between("temperature_c", temperature_c, least, most)?;
    Ok(costald(volume, temperature_k, acentric_factor, temperature_c + ICE_POINT_K))
}

/// Temperature, C, up to [`NEAR_CRITICAL`] at which the saturated liquid has thinned to a density, by halving up from
/// `from_c`; none when it does not.
///
/// A little beyond the range of [`density`] the error grows to about one kelvin; better said with that error than not
/// at all, because the answer is a danger.
pub(super) fn thinned_to_c(composition: &Composition, kg_m3: f64, from_c: f64) -> Option<f64> {
    let Characteristic { volume, temperature_k, acentric_factor } = characteristic(composition);
    let kg_mol = composition.molar_mass_g_mol() / 1e3;
    let over = |c: f64| kg_mol / costald(volume, temperature_k, acentric_factor, c + ICE_POINT_K) - kg_m3;
    let hottest_c = NEAR_CRITICAL * temperature_k - ICE_POINT_K;
    roots::bisect("liquid_full_temperature_c", from_c, hottest_c, 1e-6, over).ok()
}

/// Reduced temperature up to which a liquid-full temperature is looked for.
const NEAR_CRITICAL: f64 = 0.98;

/// COSTALD molar volume in the unit of `volume`, of a fluid with the constants given, at `t` K.
fn costald(volume: f64, critical_k: f64, acentric_factor: f64, t: f64) -> f64 {
    let tr = t / critical_k;
    let s = (1.0 - tr).cbrt();
    let v0 = 1.0 - 1.528_16 * s + 1.439_07 * s * s - 0.814_46 * s.powi(3) + 0.190_454 * s.powi(4);
    let vd = (-0.296_123 + 0.386_914 * tr - 0.042_725_8 * tr * tr - 0.048_064_5 * tr.powi(3)) / (tr - 1.000_01);
    volume * v0 * (1.0 - acentric_factor * vd)
}

struct Characteristic {
    /// V*, m3/mol.
    volume: f64,
    temperature_k: f64,
    acentric_factor: f64,
}

/// The mixing rules of COSTALD. Components without constants are left out; callers refuse them first.
fn characteristic(composition: &Composition) -> Characteristic {
    let [mut whole, mut two_thirds, mut third, mut cross, mut acentric_factor] = [0.0; 5];
    for (component, x) in composition.present() {
        let constants = component.constants();
        let Some(own) = constants.costald else { continue };
        let v = own.volume_1e4_m3_mol * 1e-4;
        whole += x * v;
        two_thirds += x * v.cbrt().powi(2);
        third += x * v.cbrt();
        cross += x * (v * constants.critical_temperature_k).sqrt();
        acentric_factor += x * own.acentric_factor;
    }
    let volume = (whole + 3.0 * two_thirds * third) / 4.0;
    Characteristic { volume, temperature_k: cross * cross / volume, acentric_factor }
}

fn kelvin(temperature_c: f64) -> Result<f64, Error> {
    Ok(between("temperature_c", temperature_c, -90.0, 96.0)? + ICE_POINT_K)
}

pub(super) fn cautions(composition: &Composition, temperature_c: f64) -> Vec<Caution> {
    let mut cautions = Vec::new();
    if !(CHECKED_FROM_C..=CHECKED_TO_C).contains(&temperature_c) {
        cautions.push(Caution::TemperatureBeyondCheck { temperature_c, from_c: CHECKED_FROM_C, to_c: CHECKED_TO_C });
    }
    let share = composition.share(Component::Propene);
    if share > 0.0 {
        cautions.push(Caution::PropeneData { share, allow_percent: 3.0 });
    }
    cautions
}

/// Wilson's first guess of K_i = y_i/x_i at `p` Pa.
fn wilson(t: f64, p: f64) -> [f64; 9] {
    Component::ALL.map(|component| {
        let c = component.constants();
        let slope = 5.373 * (1.0 + c.acentric_factor) * (1.0 - c.critical_temperature_k / t);
        c.critical_pressure_kpa * 1e3 / p * slope.exp()
    })
}

/// Liquid and gas have become one phase. K = 1 alone does not say so: it is the very answer for a pure component.
fn is_alike(k: &[f64; 9], liquid: &Cubic, gas: &Cubic, p: f64) -> Result<bool, Error> {
    let is_k_one = k.iter().zip(liquid.mole()).all(|(k, x)| *x == 0.0 || (k - 1.0).abs() < 1e-6);
    Ok(is_k_one && gas.compressibility(p, Phase::Gas)? - liquid.compressibility(p, Phase::Liquid)? < 1e-4)
}

/// Peng-Robinson bubble pressure (Pa) of liquid x at t (K), and the vapour's mole fractions.
fn bubble(composition: &Composition, t: f64) -> Result<(f64, [f64; 9]), Error> {
    let none = Error::NoRoot(NoRoot { wanted: "pressure_kpa" });
    let x = *composition.mole();
    let liquid = Cubic::new(composition, t);
    let guess = wilson(t, 1.0);
    let mut p: f64 = x.iter().zip(guess).map(|(x, k)| x * k).sum();
    let mut y: [f64; 9] = std::array::from_fn(|i| x[i] * guess[i] / p);
    for _ in 0..ROUNDS {
        let gas = liquid.with(y);
        let (phi_l, phi_v) = (liquid.ln_phi(p, Phase::Liquid)?, gas.ln_phi(p, Phase::Gas)?);
        let k: [f64; 9] = std::array::from_fn(|i| (phi_l[i] - phi_v[i]).exp());
        if is_alike(&k, &liquid, &gas, p)? {
            return Err(none);
        }
        let s: f64 = (0..9).map(|i| x[i] * k[i]).sum();
        if !(s.is_finite() && s > 0.0) {
            return Err(none);
        }
        p *= s;
        let next: [f64; 9] = std::array::from_fn(|i| x[i] * k[i] / s);
        let moved: f64 = next.iter().zip(y).map(|(a, b)| (a - b).abs()).sum();
        y = next;
        if (s - 1.0).abs() + moved < 1e-10 {
            return Ok((p, y));
        }
    }
    Err(none)
}

/// Sum of y_i ln(p_sat,Wagner / p_sat,Peng-Robinson), over components far enough below their critical point.
fn saturation_correction(y: &[f64; 9], temperature_c: f64) -> Result<f64, Error> {
    let mut sum = 0.0;
    for (component, y) in Component::ALL.into_iter().zip(*y) {
        let t = temperature_c + ICE_POINT_K;
        if y > 0.0 && t < 0.98 * component.constants().critical_temperature_k {
            let Some(wagner) = saturation_kpa(component, temperature_c) else { continue };
            let (plain_pa, _) = bubble(&Composition::pure(component), t)?;
            sum += y * (wagner / (plain_pa / 1e3)).ln();
        }
    }
    Ok(sum)
}

/// Peng-Robinson dew temperature (C) of vapour y at p (Pa).
fn dew(y: &[f64; 9], p: f64) -> Result<f64, Error> {
    let none = Error::NoRoot(NoRoot { wanted: "dew_temperature_c" });
    // Wilson's dew temperature: sum y/K = 1, falling in T.
    let sum = |t: f64| (0..9).map(|i| y[i] / wilson(t, p)[i]).sum::<f64>();
    let mut t = roots::try_bisect(100.0, 500.0, 0.01, |t| Ok(sum(t).min(1e12) - 1.0), none)?;
    let guess = wilson(t, p);
    let total = sum(t);
    let mut x: [f64; 9] = std::array::from_fn(|i| y[i] / guess[i] / total);
    let vapour = Composition::from_phase(*y);
    for _ in 0..ROUNDS {
        let gas = Cubic::new(&vapour, t);
        let liquid = gas.with(x);
        let (phi_v, phi_l) = (gas.ln_phi(p, Phase::Gas)?, liquid.ln_phi(p, Phase::Liquid)?);
        let k: [f64; 9] = std::array::from_fn(|i| (phi_l[i] - phi_v[i]).exp());
        if is_alike(&k, &liquid, &gas, p)? {
            return Err(none);
        }
        let s: f64 = (0..9).map(|i| y[i] / k[i]).sum();
        if !(s.is_finite() && s > 0.0) {
            return Err(none);
        }
        let next: [f64; 9] = std::array::from_fn(|i| y[i] / k[i] / s);
        let moved: f64 = next.iter().zip(x).map(|(a, b)| (a - b).abs()).sum();
        x = next;
        t *= 1.0 + 0.1 * s.ln();
        if !(50.0..700.0).contains(&t) {
            return Err(none);
        }
        if (s - 1.0).abs() + moved < 1e-10 {
            return Ok(t - ICE_POINT_K);
        }
    }
    Err(none)
}

#[cfg(test)]
mod tests {
    use super::costald;

    #[test]
    fn the_documented_density_of_propane_comes_out() {
        // Value in the documentation of an open property library: 272.03889 K, M 44.097 g/mol, 530.30 kg/m3.
        let volume = costald(0.200_081_61e-3, 369.833_33, 0.1532, 272.038_89);
        assert!((44.097e-3 / volume - 530.30).abs() < 0.005);
    }
}
