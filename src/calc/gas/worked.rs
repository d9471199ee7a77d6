//! The state of a gas laid out step by step: compressibility and exponent as the equation of state prints them, the rest
//! from those.

use super::{BASIS, Gas, GasState};
use crate::calc::{GAS_CONSTANT, ICE_POINT_K, Source, Step, fuel};

/// The steps from the composition to density and speed of sound.
#[must_use]
pub fn steps(gas: &Gas, state: &GasState) -> Vec<Step> {
    let Gas { composition, pressure_kpa: p, temperature_c: c } = *gas;
    let GasState { density_kg_m3: rho, compressibility: z, isentropic_exponent: k, molar_mass_g_mol: m, .. } = *state;
    let good = BASIS.relative_uncertainty.unwrap_or(0.0);
    let stated = "p {} kPa, T {} °C";
    let source = Source::Gerg2008;
    vec![
        fuel::worked::molar_mass(&composition),
        Step::new("compressibility", ("Z(p, T)", stated), &[p, c], (z, ""), source).good_to(good),
        Step::new(
            "gas-density",
            ("ρ = p M / (Z R T)", "{} · {} / ({} · {} · {})"),
            &[p, m, z, GAS_CONSTANT, c + ICE_POINT_K],
            (rho, "kg/m³"),
            None,
        )
        .good_to(good),
        Step::new("exponent", ("κ(p, T)", stated), &[p, c], (k, ""), source).good_to(good),
        Step::new(
            "speed-of-sound",
            ("w = √(1000 κ p / ρ)", "√(1000 · {} · {} / {})"),
            &[k, p, rho],
            (state.speed_of_sound_m_s, "m/s"),
            None,
        )
        .good_to(good),
        Step::new("heat-capacity", ("c_p(p, T)", stated), &[p, c], (state.heat_capacity_kj_kg_k, "kJ/(kg K)"), source)
            .good_to(0.01),
    ]
}
