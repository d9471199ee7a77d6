//! Flow of a gas through a nozzle, choked or not: one-dimensional, isentropic, with the real exponent of the gas at the
//! inlet. Within 0.5 % of numerically followed isentropes.

mod worked;

use std::f64::consts::PI;

use serde::{Deserialize, Serialize};

use crate::calc::gas::{self, Gas, GasState, gas_state};
use crate::calc::{Basis, Caution, Composition, Error, Outside, Source, between};

pub(super) use worked::flux;
pub use worked::{discharge_steps, steps};

/// What [`flow()`] rests on.
pub const BASIS: Basis = Basis {
    key: "nozzle-flow",
    method: "one-dimensional isentropic flow with the real isentropic exponent and density of the gas upstream",
    formulas: &[
        "r* = (2/(k+1))^(k/(k-1))",
        "r <= r*: G = sqrt(k p rho) (2/(k+1))^((k+1)/(2(k-1)))",
        "r > r*: G = sqrt(2k/(k-1) p rho (r^(2/k) - r^((k+1)/k)))",
        "m = Cd (pi/4) d^2 G",
    ],
    relative_uncertainty: None,
    sources: &[Source::Iso9300, Source::Gerg2008],
};

/// Discharge coefficient of a whole injector with its nozzle, referred to the nozzle bore (common practice).
pub const INJECTOR_DISCHARGE: f64 = 0.65;
/// Discharge coefficient of a cylindrical nozzle alone, sharp inlet, length 1 to 7 diameters (Ward-Smith 1979, value
/// from memory).
pub const NOZZLE_DISCHARGE: f64 = 0.84;
/// Standard uncertainty of either when nobody measured it.
pub const DISCHARGE_UNCERTAINTY: f64 = 0.08;
/// Relative standard uncertainty of the mass flux for a known gas and coefficient.
pub const FLUX_UNCERTAINTY: f64 = 0.005;

/// A gas flowing through a nozzle; upstream values are stagnation values.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Flow {
    /// Mole fractions.
    pub composition: Composition,
    /// Pressure upstream, kPa absolute.
    pub upstream_kpa: f64,
    /// Pressure downstream, kPa absolute; at or above upstream nothing flows.
    pub downstream_kpa: f64,
    /// Gas temperature upstream, C.
    pub temperature_c: f64,
    /// Bore, mm; 0.05 to 50.
    pub diameter_mm: f64,
    /// Discharge coefficient, dimensionless; 0.05 to 1.
    pub discharge_coefficient: f64,
}

/// What flows.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Flowing {
    /// Mass flow, g/s.
    pub mass_flow_g_s: f64,
    /// The throat is choked: a lower pressure downstream brings no more.
    pub choked: bool,
    /// Mass flux for a discharge coefficient of 1, kg/(s m2).
    pub mass_flux_kg_s_m2: f64,
    /// Downstream over upstream pressure.
    pub pressure_ratio: f64,
    /// Pressure ratio at and below which the throat chokes.
    pub choking_share: f64,
    /// Real isentropic exponent upstream.
    pub isentropic_exponent: f64,
    /// Density upstream, kg/m3.
    pub density_kg_m3: f64,
    /// What a reader should know.
    pub cautions: Vec<Caution>,
}

/// Mass flux through a throat and whether it is choked.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Through {
    /// Mass flux for a discharge coefficient of 1, kg/(s m2).
    pub mass_flux_kg_s_m2: f64,
    /// The throat is choked.
    pub choked: bool,
    /// Pressure ratio at and below which the throat chokes.
    pub choking_share: f64,
}

/// Share of the upstream pressure at which a nozzle chokes (throat over upstream, both absolute).
///
/// ```text
/// r = (2 / (k + 1)) ^ (k / (k - 1))
/// ```
///
/// `isentropic_exponent`: of the gas upstream, dimensionless, 1.001 to 2; 1.08 for LPG vapour, 1.3 for methane.
///
/// # Errors
/// [`Outside`] names the exponent when it leaves that range.
///
/// # Source
/// Çengel and Cimbala, *Fluid Mechanics*, 2006, example 12.4 (carbon dioxide, 1 400 kPa).
///
/// ```
/// # use fuelwright::calc::nozzle::choking_share;
/// let throat_kpa = 1_400.0 * choking_share(1.289)?;
/// assert!((throat_kpa - 767.0).abs() < 0.5);
/// # Ok::<(), fuelwright::calc::Outside>(())
/// ```
pub fn choking_share(isentropic_exponent: f64) -> Result<f64, Outside> {
    // At 1 the formula divides by zero; no gas here comes near.
    let k = between("isentropic_exponent", isentropic_exponent, 1.001, 2.0)?;
    Ok((2.0 / (k + 1.0)).powf(k / (k - 1.0)))
}

/// Mass flux through a throat, for a discharge coefficient of 1.
///
/// ```text
/// choked (r <= r*):  G = sqrt(k p rho) (2/(k+1)) ^ ((k+1)/(2(k-1)))
/// else:              G = sqrt( 2k/(k-1) p rho (r^(2/k) - r^((k+1)/k)) ),   r = p_down/p_up;  zero for r >= 1
/// ```
///
/// `upstream_kpa`, `downstream_kpa`: absolute. `density_kg_m3`, `isentropic_exponent`: of the gas upstream.
///
/// # Errors
/// [`Outside`] names the pressure, density or exponent beyond its range.
///
/// # Source
/// Saint-Venant and Wantzel 1839; choked form as ISO 9300 uses it. Worked example, 60 mol % propane in n-butane:
/// 217 kPa, 4.161 kg/m3, k 1.0789 into 97 kPa gives 592.8 kg/(s m2), choked.
pub fn mass_flux(
    upstream_kpa: f64,
    downstream_kpa: f64,
    density_kg_m3: f64,
    isentropic_exponent: f64,
) -> Result<Through, Outside> {
    let p = gas::check_pressure("upstream_kpa", upstream_kpa)? * 1e3;
    let r = between("downstream_kpa", downstream_kpa, 0.0, 35_000.0)? / upstream_kpa;
    let rho = between("density_kg_m3", density_kg_m3, 1e-9, 1_000.0)?;
    let k = isentropic_exponent;
    let choking_share = choking_share(k)?;
    let choked = r <= choking_share;
    let mass_flux_kg_s_m2 = if choked {
        (k * p * rho).sqrt() * (2.0 / (k + 1.0)).powf((k + 1.0) / (2.0 * (k - 1.0)))
    } else if r >= 1.0 {
        0.0
    } else {
        (2.0 * k / (k - 1.0) * p * rho * (r.powf(2.0 / k) - r.powf((k + 1.0) / k))).max(0.0).sqrt()
    };
    Ok(Through { mass_flux_kg_s_m2, choked, choking_share })
}

/// Mass flow of a gas through a nozzle: `m = Cd (pi/4) d^2 G`.
///
/// # Errors
/// [`Error::Outside`] names the quantity beyond its range; [`Error::Wet`] when the gas upstream is partly liquid.
///
/// # Source
/// As [`mass_flux`] and [`gas_state`]. The flux is good to 0.5 %; the flow to 8 to 12 % unless the coefficient was
/// measured.
pub fn flow(flow: &Flow) -> Result<Flowing, Error> {
    between("diameter_mm", flow.diameter_mm, 0.05, 50.0)?;
    between("discharge_coefficient", flow.discharge_coefficient, 0.05, 1.0)?;
    let upstream = upstream(&flow.composition, flow.upstream_kpa, flow.temperature_c)?;
    let through =
        mass_flux(flow.upstream_kpa, flow.downstream_kpa, upstream.density_kg_m3, upstream.isentropic_exponent)?;
    Ok(Flowing {
        mass_flow_g_s: flow.discharge_coefficient * bore_area_mm2(flow.diameter_mm) * through.mass_flux_kg_s_m2 / 1e3,
        choked: through.choked,
        mass_flux_kg_s_m2: through.mass_flux_kg_s_m2,
        pressure_ratio: flow.downstream_kpa / flow.upstream_kpa,
        choking_share: through.choking_share,
        isentropic_exponent: upstream.isentropic_exponent,
        density_kg_m3: upstream.density_kg_m3,
        cautions: upstream.cautions,
    })
}

/// Discharge coefficient from a flow the shop measured, say with nitrogen: `Cd = m / ((pi/4) d^2 G)`.
///
/// `flow.discharge_coefficient` is not used.
///
/// # Errors
/// As [`flow()`]; [`Error::Outside`] for `measured_g_s` when the coefficient would leave 0.05 to 1.
pub fn discharge_from_measurement(flow: &Flow, measured_g_s: f64) -> Result<f64, Error> {
    let full = self::flow(&Flow { discharge_coefficient: 1.0, ..*flow })?.mass_flow_g_s;
    Ok(between("measured_g_s", measured_g_s, 0.05 * full, full)? / full)
}

/// Area of a bore, mm2.
pub(super) fn bore_area_mm2(diameter_mm: f64) -> f64 {
    PI / 4.0 * diameter_mm * diameter_mm
}

/// The gas before the nozzle, its refusals named as this sum calls the quantities.
pub(super) fn upstream(composition: &Composition, upstream_kpa: f64, temperature_c: f64) -> Result<GasState, Error> {
    gas::check_pressure("upstream_kpa", upstream_kpa)?;
    gas_state(&Gas { composition: *composition, pressure_kpa: upstream_kpa, temperature_c })
}
