//! A container sheet laid out step by step.

use super::{BASIS, COLDER_K, Container, Contents, Stowage, Stowed};
use crate::calc::{Source, Step};

/// Standard uncertainty of a liquid-full temperature, K; the fill stop's own tolerance comes on top.
const LIQUID_FULL_K: f64 = 1.3;

/// The steps from volume and fill to mass, liquid-full temperature, range and axle.
#[must_use]
pub fn steps(container: &Container, contents: &Contents, stowed: Option<(&Stowage, &Stowed)>) -> Vec<Step> {
    let Container { gross_volume_l: gross, fill_fraction: fill, temperature_c: c, .. } = *container;
    let Contents { liquid_l, mass_kg, vapour_mass_kg: vapour, density_kg_m3: rho, energy_mj, .. } = *contents;
    let balance = None;
    let good = BASIS.relative_uncertainty.unwrap_or(0.0);
    let mean = 1e3 * (mass_kg + vapour) / gross;
    let mut all = vec![
        Step::new("liquid", ("V_L = V f", "{} · {}"), &[gross, fill], (liquid_l, "L"), balance),
        Step::new("liquid-density", ("ρ_L(T)", "T {} °C"), &[c], (rho, "kg/m³"), Source::Costald1979).good_to(good),
        Step::new("liquid-mass", ("m = V_L ρ_L / 1000", "{} · {} / 1000"), &[liquid_l, rho], (mass_kg, "kg"), balance)
            .good_to(good),
    ];
    if gross > liquid_l {
        let above = 1e3 * vapour / (gross - liquid_l);
        all.extend([
            Step::new("vapour-density", ("ρ_V(T)", "T {} °C"), &[c], (above, "kg/m³"), Source::PengRobinson1976),
            Step::new(
                "vapour-mass",
                ("m_V = (V - V_L) ρ_V / 1000", "({} - {}) · {} / 1000"),
                &[gross, liquid_l, above],
                (vapour, "kg"),
                balance,
            ),
        ]);
    }
    all.push(Step::new(
        "mean-density",
        ("ρ = 1000 (m + m_V) / V", "1000 · ({} + {}) / {}"),
        &[mass_kg, vapour, gross],
        (mean, "kg/m³"),
        balance,
    ));
    let full = |key, at: Option<f64>, put_in: &str, values: &[f64]| {
        let step = |at| Step::new(key, ("ρ_L(T_full) = ρ", put_in), values, (at, "°C"), Source::Costald1979);
        at.map(|at| step(at).give_or_take(LIQUID_FULL_K))
    };
    all.extend(full("liquid-full", contents.liquid_full_temperature_c, "ρ_L(T) = {} kg/m³", &[mean]));
    let colder = contents.liquid_full_if_filled_10_k_colder_c;
    all.extend(full("liquid-full-colder", colder, "T {} °C", &[c - COLDER_K]));
    let energy = ("E = m H", "{} · {}");
    all.push(
        Step::new("energy", energy, &[mass_kg, energy_mj / mass_kg], (energy_mj, "MJ"), Source::Iso6976).good_to(good),
    );
    all.extend(stowed.into_iter().flat_map(|(stowage, stowed)| stow_steps(contents, stowage, stowed)));
    all
}

fn stow_steps(contents: &Contents, stowage: &Stowage, stowed: &Stowed) -> Vec<Step> {
    let Stowage { container_mass_kg, parts_mass_kg, consumption_l_per_100km: use_l, left_behind_share: left, .. } =
        *stowage;
    let balance = None;
    let mut all = vec![
        Step::new(
            "usable",
            ("V_u = V_L (1 - s)", "{} · (1 - {})"),
            &[contents.liquid_l, left],
            (stowed.usable_l, "L"),
            balance,
        ),
        Step::new(
            "range",
            ("100 V_u / C", "100 · {} / {}"),
            &[stowed.usable_l, use_l],
            (stowed.range_km, "km"),
            balance,
        ),
        Step::new(
            "added-mass",
            ("M = m_c + m_p + m + m_V", "{} + {} + {} + {}"),
            &[container_mass_kg, parts_mass_kg, contents.mass_kg, contents.vapour_mass_kg],
            (stowed.added_mass_kg, "kg"),
            balance,
        ),
    ];
    if let (Some(reserve), Some(left)) = (stowage.axle_reserve_kg, stowed.reserve_left_kg) {
        all.push(Step::new(
            "reserve-left",
            ("R - M", "{} - {}"),
            &[reserve, stowed.added_mass_kg],
            (left, "kg"),
            balance,
        ));
    }
    all
}
