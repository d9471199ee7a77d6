//! What a cylinder holds laid out step by step.

use super::{BASIS, Contents, Cylinder};
use crate::calc::{ATMOSPHERE_KPA, REFERENCE_C, Source, Step};

/// The steps from pressure and temperature to mass, volume, energy and settled pressure.
#[must_use]
pub fn steps(cylinder: &Cylinder, contents: &Contents) -> Vec<Step> {
    let Cylinder { volume_l: v, pressure_kpa: p, temperature_c: c, at_temperature_c, .. } = *cylinder;
    let Contents { mass_kg: m, standard_m3, settled_15c_kpa, energy_mj, .. } = *contents;
    let good = BASIS.relative_uncertainty.unwrap_or(0.0);
    let stated = "p {} kPa, T {} °C";
    let (rho, reference) = (1e3 * m / v, m / standard_m3);
    let mut all = vec![
        Step::new("gas-density", ("ρ(p, T)", stated), &[p, c], (rho, "kg/m³"), Source::Gerg2008).good_to(good),
        Step::new("gas-mass", ("m = ρ V / 1000", "{} · {} / 1000"), &[rho, v], (m, "kg"), None).good_to(good),
        Step::new(
            "reference-density",
            ("ρ_15(p, T)", stated),
            &[ATMOSPHERE_KPA, REFERENCE_C],
            (reference, "kg/m³"),
            Source::Gerg2008,
        )
        .good_to(good),
        Step::new(
            "standard-volume",
            ("V_15 = m / ρ_15", "{} / {}"),
            &[m, reference],
            (standard_m3, "m³"),
            Source::Iso13443,
        )
        .good_to(good),
        Step::new("energy", ("E = m H", "{} · {}"), &[m, energy_mj / m], (energy_mj, "MJ"), Source::Iso6976)
            .good_to(good),
    ];
    let held = ("p(T, ρ)", "T {} °C, ρ {} kg/m³");
    let settled =
        |key, at_c: f64, kpa: f64| Step::new(key, held, &[at_c, rho], (kpa, "kPa"), Source::Gerg2008).good_to(good);
    all.push(settled("settled-15", REFERENCE_C, settled_15c_kpa));
    if let (Some(at_c), Some(kpa)) = (at_temperature_c, contents.settled_pressure_kpa) {
        all.push(settled("settled", at_c, kpa));
    }
    all
}

/// The step from mass to distance.
#[must_use]
pub fn range_step(mass_kg: f64, left_kg: f64, consumption_kg_per_100km: f64, range_km: f64) -> Step {
    let values = [mass_kg, left_kg, consumption_kg_per_100km];
    Step::new("gas-range", ("100 (m - m_r) / C", "100 · ({} - {}) / {}"), &values, (range_km, "km"), None)
}
