//! A discharge coefficient that the shop measured: a nozzle held open, a known gas, a flow meter.

use std::f64::consts::PI;

use serde::{Deserialize, Serialize};

use super::flow::{bore_area_mm2, choking_share};
use crate::calc::{ATMOSPHERE_KPA, Error, GAS_CONSTANT, ICE_POINT_K, Source, Step, between};

/// With what a nozzle is blown through.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum TestGas {
    /// Nitrogen.
    Nitrogen,
    /// Dry air.
    Air,
}

impl TestGas {
    /// Molar mass, g/mol, and isentropic exponent of the dilute gas.
    ///
    /// Below 1 MPa and near room temperature both follow the ideal-gas law within 0.3 % (equation of state of the
    /// property library CoolProp 8.0.0).
    const fn constants(self) -> (f64, f64) {
        match self {
            Self::Nitrogen => (28.0134, 1.400),
            Self::Air => (28.965_46, 1.400),
        }
    }
}

/// A measurement.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Measured {
    /// The gas.
    pub gas: TestGas,
    /// Pressure before the nozzle, kPa absolute; 110 to 1 000.
    pub upstream_kpa: f64,
    /// Pressure behind it, kPa absolute; 50 up to the pressure before it.
    pub downstream_kpa: f64,
    /// Temperature of the gas before it, C; -10 to 60.
    pub temperature_c: f64,
    /// Bore, mm; 0.3 to 10.
    pub bore_mm: f64,
    /// Flow that the meter showed, L/min of gas at `flow_at_c` and 101.325 kPa; 0.1 to 2 000.
    pub flow_l_min: f64,
    /// Temperature to which the meter's litres refer, C; usually 0, 15 or 20.
    pub flow_at_c: f64,
    /// Relative standard uncertainty of the flow; 0.001 to 0.2.
    pub flow_uncertainty: f64,
    /// Standard uncertainty of the bore, mm; 0 to 0.2.
    pub bore_uncertainty_mm: f64,
}

/// What came out.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Coefficient {
    /// Mass flow measured, g/s.
    pub mass_flow_g_s: f64,
    /// Density of the gas to which the litres refer, kg/m3.
    pub reference_kg_m3: f64,
    /// Density before the nozzle, kg/m3.
    pub upstream_kg_m3: f64,
    /// Mass flux of a perfect nozzle, kg/(s m2).
    pub mass_flux_kg_s_m2: f64,
    /// The nozzle was choked.
    pub choked: bool,
    /// Discharge coefficient, referred to the bore.
    pub discharge_coefficient: f64,
    /// Its standard uncertainty.
    pub standard_uncertainty: f64,
}

/// Discharge coefficient of a nozzle that was measured: `Cd = m / ((pi/4) d^2 G)`.
///
/// # Errors
/// [`Error::Outside`] names the quantity beyond its range; for `flow_l_min` also when the coefficient would leave 0.05
/// to 1: a nozzle cannot pass more than its bore.
///
/// # Source
/// ISO 9300 for `G`; uncertainty by JCGM 100:2008, 5.1.
pub fn coefficient(measured: &Measured) -> Result<Coefficient, Error> {
    let Measured { upstream_kpa: p, downstream_kpa, temperature_c, bore_mm: d, flow_l_min, flow_at_c, .. } = *measured;
    between("upstream_kpa", p, 110.0, 1_000.0)?;
    between("downstream_kpa", downstream_kpa, 50.0, p - 5.0)?;
    between("temperature_c", temperature_c, -10.0, 60.0)?;
    between("bore_mm", d, 0.3, 10.0)?;
    between("flow_l_min", flow_l_min, 0.1, 2_000.0)?;
    between("flow_at_c", flow_at_c, 0.0, 30.0)?;
    let of_flow = between("flow_uncertainty", measured.flow_uncertainty, 0.001, 0.2)?;
    let of_bore = between("bore_uncertainty_mm", measured.bore_uncertainty_mm, 0.0, 0.2)? / d;
    let (molar, k) = measured.gas.constants();
    let density = |kpa: f64, c: f64| kpa * molar / (GAS_CONSTANT * (c + ICE_POINT_K));
    let (reference_kg_m3, upstream_kg_m3) = (density(ATMOSPHERE_KPA, flow_at_c), density(p, temperature_c));
    let through = super::mass_flux(p, downstream_kpa, upstream_kg_m3, k)?;
    // L/min times kg/m3 is g/min.
    let mass_flow_g_s = flow_l_min * reference_kg_m3 / 60.0;
    let full_g_s = bore_area_mm2(d) * through.mass_flux_kg_s_m2 / 1e3;
    let discharge_coefficient = mass_flow_g_s / full_g_s;
    if !(0.05..=1.0).contains(&discharge_coefficient) {
        let most = flow_l_min / discharge_coefficient;
        between("flow_l_min", flow_l_min, 0.05 * most, most)?;
    }
    Ok(Coefficient {
        mass_flow_g_s,
        reference_kg_m3,
        upstream_kg_m3,
        mass_flux_kg_s_m2: through.mass_flux_kg_s_m2,
        choked: through.choked,
        discharge_coefficient,
        standard_uncertainty: discharge_coefficient * of_flow.hypot(2.0 * of_bore),
    })
}

/// The steps of a measurement.
#[must_use]
pub fn measured_steps(measured: &Measured, found: &Coefficient) -> Vec<Step> {
    let Measured { upstream_kpa: p, downstream_kpa, temperature_c, bore_mm: d, flow_l_min, flow_at_c, .. } = *measured;
    let (molar, k) = measured.gas.constants();
    let density = |key, kpa: f64, c: f64, rho| {
        let words = ("ρ = p M / (R T)", "{} · {} / ({} · {})");
        Step::new(key, words, &[kpa, molar, GAS_CONSTANT, c + ICE_POINT_K], (rho, "kg/m³"), None)
    };
    let rho = found.upstream_kg_m3;
    let r = downstream_kpa / p;
    let choked = (
        "G = √(κ p ρ) (2 / (κ + 1))^((κ + 1) / (2 (κ - 1)))",
        "√({} · {} · 1000 · {}) · (2 / ({} + 1)) ^ (({} + 1) / (2 · ({} - 1)))",
    );
    let open = (
        "G = √(2 κ / (κ - 1) p ρ (r^(2 / κ) - r^((κ + 1) / κ)))",
        "√(2 · {} / ({} - 1) · {} · 1000 · {} · ({} ^ (2 / {}) - {} ^ (({} + 1) / {})))",
    );
    let (words, values) =
        if found.choked { (choked, vec![k, p, rho, k, k, k]) } else { (open, vec![k, k, p, rho, r, k, r, k, k]) };
    let (flow, flux) = (found.mass_flow_g_s, found.mass_flux_kg_s_m2);
    let share = choking_share(k).unwrap_or_default();
    let (of_flow, of_bore) = (measured.flow_uncertainty, measured.bore_uncertainty_mm);
    let relative = found.standard_uncertainty / found.discharge_coefficient;
    vec![
        density("meter-density", ATMOSPHERE_KPA, flow_at_c, found.reference_kg_m3),
        Step::new(
            "mass-flow",
            ("ṁ = V ρ_n / 60", "{} · {} / 60"),
            &[flow_l_min, found.reference_kg_m3],
            (flow, "g/s"),
            None,
        )
        .good_to(of_flow),
        density("density", p, temperature_c, rho),
        Step::new("pressure-ratio", ("r = p_2 / p", "{} / {}"), &[downstream_kpa, p], (r, ""), None),
        Step::new(
            "choking",
            ("r* = (2 / (κ + 1))^(κ / (κ - 1))", "(2 / ({} + 1)) ^ ({} / ({} - 1))"),
            &[k, k, k],
            (share, ""),
            Source::Iso9300,
        ),
        Step::new("flux", words, &values, (flux, "kg/(s m²)"), Source::Iso9300),
        Step::new(
            "discharge",
            ("C = 1000 ṁ / (π/4 d² G)", "1000 · {} / ({} / 4 · {} ^ 2 · {})"),
            &[flow, PI, d, flux],
            (found.discharge_coefficient, ""),
            None,
        )
        .give_or_take(found.standard_uncertainty),
        Step::new(
            "discharge-relative",
            ("u/C = √((u_V/V)² + (2 u_d/d)²)", "√({} ^ 2 + (2 · {} / {}) ^ 2)"),
            &[of_flow, of_bore, d],
            (relative, ""),
            Source::Jcgm100,
        ),
    ]
}
