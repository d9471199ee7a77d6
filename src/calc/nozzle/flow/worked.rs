//! Flow through a nozzle laid out step by step, and the discharge coefficient from a measured flow.

use std::f64::consts::PI;

use super::{DISCHARGE_UNCERTAINTY, FLUX_UNCERTAINTY, Flow, Flowing};
use crate::calc::{Source, Step};

/// Mass flux with the numbers of one state: `p` upstream kPa, `rho` kg/m3, `k` exponent, `r` pressure ratio.
pub(in crate::calc::nozzle) fn flux(
    key: &'static str,
    [p, rho, k, r]: [f64; 4],
    choked: bool,
    flux_kg_s_m2: f64,
) -> Step {
    let at_throat = (
        "G = √(κ p ρ) (2 / (κ + 1))^((κ + 1) / (2 (κ - 1)))",
        "√({} · {} · 1000 · {}) · (2 / ({} + 1)) ^ (({} + 1) / (2 · ({} - 1)))",
    );
    let open = (
        "G = √(2 κ / (κ - 1) p ρ (r^(2 / κ) - r^((κ + 1) / κ)))",
        "√(2 · {} / ({} - 1) · {} · 1000 · {} · ({} ^ (2 / {}) - {} ^ (({} + 1) / {})))",
    );
    let (words, values) =
        if choked { (at_throat, vec![k, p, rho, k, k, k]) } else { (open, vec![k, k, p, rho, r, k, r, k, k]) };
    Step::new(key, words, &values, (flux_kg_s_m2, "kg/(s m²)"), Source::Iso9300)
}

/// The steps from the state upstream to the mass flow.
#[must_use]
pub fn steps(flow: &Flow, flowing: &Flowing) -> Vec<Step> {
    let Flow { diameter_mm: d, discharge_coefficient: cd, .. } = *flow;
    let mut all = to_flux(flow, flowing);
    let values = [cd, PI, d, flowing.mass_flux_kg_s_m2];
    let words = ("ṁ = C π/4 d² G / 1000", "{} · {} / 4 · {} ^ 2 · {} / 1000");
    all.push(
        Step::new("mass-flow", words, &values, (flowing.mass_flow_g_s, "g/s"), None)
            .good_to(FLUX_UNCERTAINTY.hypot(DISCHARGE_UNCERTAINTY / cd)),
    );
    all
}

/// The steps from a measured flow to the coefficient; `flowing` for a coefficient of 1.
#[must_use]
pub fn discharge_steps(flow: &Flow, flowing: &Flowing, measured_g_s: f64, coefficient: f64) -> Vec<Step> {
    let mut all = to_flux(flow, flowing);
    let values = [measured_g_s, PI, flow.diameter_mm, flowing.mass_flux_kg_s_m2];
    let words = ("C = 1000 ṁ / (π/4 d² G)", "1000 · {} / ({} / 4 · {} ^ 2 · {})");
    all.push(Step::new("discharge", words, &values, (coefficient, ""), None).good_to(FLUX_UNCERTAINTY));
    all
}

fn to_flux(flow: &Flow, flowing: &Flowing) -> Vec<Step> {
    let Flow { upstream_kpa: p, downstream_kpa: down, temperature_c: c, .. } = *flow;
    let Flowing { density_kg_m3: rho, isentropic_exponent: k, pressure_ratio: r, choking_share, .. } = *flowing;
    let stated = "p {} kPa, T {} °C";
    let mut all = vec![
        Step::new("density", ("ρ(p, T)", stated), &[p, c], (rho, "kg/m³"), Source::Gerg2008).good_to(0.001),
        Step::new("exponent", ("κ(p, T)", stated), &[p, c], (k, ""), Source::Gerg2008).good_to(0.001),
        Step::new("pressure-ratio", ("r = p_2 / p", "{} / {}"), &[down, p], (r, ""), None),
        Step::new(
            "choking",
            ("r* = (2 / (κ + 1))^(κ / (κ - 1))", "(2 / ({} + 1)) ^ ({} / ({} - 1))"),
            &[k, k, k],
            (choking_share, ""),
            Source::Iso9300,
        ),
    ];
    // At and above the pressure upstream nothing flows, and the formula has no root.
    if r < 1.0 {
        let step = flux("flux", [p, rho, k, r], flowing.choked, flowing.mass_flux_kg_s_m2);
        all.push(step.good_to(FLUX_UNCERTAINTY).with_numbers_of(7));
    }
    all
}
