//! A line laid out step by step.

use std::f64::consts::PI;

use super::{BASIS, Carries, Drop, Hose, LAMINAR_TO, ROUGHNESS_MM, VISCOSITY_AT_K, gas_viscosity, liquid_viscosity};
use crate::calc::{ICE_POINT_K, Source, Step};

/// The steps from bore and flow to velocity, Reynolds number, friction and drop.
#[must_use]
pub fn steps(asked: &Hose, found: &Drop) -> Vec<Step> {
    let Hose { bore_mm: d, length_m: length, flow_g_s: flow, fitting_velocity_heads: heads, .. } = *asked;
    let Drop { density_kg_m3: rho, viscosity_upa_s: mu, velocity_m_s: v, reynolds, friction_factor: f, .. } = *found;
    let good = BASIS.relative_uncertainty.unwrap_or(0.0);
    let friction = if reynolds < LAMINAR_TO {
        Step::new("friction", ("f = 64 / Re", "64 / {}"), &[reynolds], (f, ""), None)
    } else {
        Step::new(
            "friction",
            (
                "f = 1 / (1.8 lg((ε / d / 3.7)^1.11 + 6.9 / Re))^2",
                "1 / (1.8 · lg(({} / {} / 3.7) ^ 1.11 + 6.9 / {})) ^ 2",
            ),
            &[ROUGHNESS_MM, d, reynolds],
            (f, ""),
            Source::Haaland1983,
        )
    };
    vec![
        density(asked, rho),
        viscosity(asked, mu),
        Step::new(
            "velocity",
            ("v = 1000 ṁ / (ρ π/4 d²)", "1000 · {} / ({} · {} / 4 · {} ^ 2)"),
            &[flow, rho, PI, d],
            (v, "m/s"),
            None,
        ),
        Step::new(
            "reynolds",
            ("Re = 1000 ρ v d / μ", "1000 · {} · {} · {} / {}"),
            &[rho, v, d, mu],
            (reynolds, ""),
            None,
        ),
        friction,
        Step::new(
            "line-drop",
            ("Δp = (1000 f L / d + ζ) ρ v² / 2000", "(1000 · {} · {} / {} + {}) · {} · {} ^ 2 / 2000"),
            &[f, length, d, heads, rho, v],
            (found.drop_kpa, "kPa"),
            None,
        )
        .good_to(good),
    ]
}

fn density(asked: &Hose, rho: f64) -> Step {
    let result = (rho, "kg/m³");
    match asked.carries {
        Carries::Gas => {
            let at = [asked.pressure_kpa, asked.temperature_c];
            Step::new("density", ("ρ(p, T)", "p {} kPa, T {} °C"), &at, result, Source::Gerg2008).good_to(0.001)
        }
        Carries::Liquid => {
            let at = [asked.temperature_c];
            Step::new("liquid-density", ("ρ_L(T)", "T {} °C"), &at, result, Source::Costald1979).good_to(0.002)
        }
    }
}

fn viscosity(asked: &Hose, mu: f64) -> Step {
    let result = (mu, "µPa s");
    match asked.carries {
        Carries::Gas => gas(asked, result),
        Carries::Liquid => {
            let parts: Vec<(f64, f64)> = asked
                .composition
                .present()
                .filter_map(|(component, share)| Some((liquid_viscosity(component, share).ok()?, share)))
                .collect();
            let put_in = vec!["{} ^ {}"; parts.len()].join(" · ");
            let values: Vec<f64> = parts.into_iter().flat_map(|(mu, share)| [mu, share]).collect();
            Step::new("viscosity", ("μ = Π μ_i^x", &put_in), &values, result, Source::GrunbergNissan1949)
        }
    }
}

fn gas(asked: &Hose, result: (f64, &'static str)) -> Step {
    let kelvin = asked.temperature_c + ICE_POINT_K;
    let (mut above, mut below) = (Vec::new(), Vec::new());
    let (mut put_above, mut put_below) = (Vec::new(), Vec::new());
    for (component, share) in asked.composition.present() {
        let (mu20, n) = gas_viscosity(component);
        let molar = component.constants().molar_mass_g_mol;
        above.extend([share, mu20, kelvin, VISCOSITY_AT_K, n, molar]);
        put_above.push("{} · {} · ({} / {}) ^ {} · √{}");
        below.extend([share, molar]);
        put_below.push("{} · √{}");
    }
    let put_in = format!("({}) / ({})", put_above.join(" + "), put_below.join(" + "));
    above.extend(below);
    let formula = "μ = Σ x μ (T / T_20)^n √M / Σ x √M";
    Step::new("viscosity", (formula, &put_in), &above, result, Source::HerningZipperer1936)
}
