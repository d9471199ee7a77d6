//! What a cylinder holds laid out step by step.

use super::{BASIS, Contents, Cylinder, FastFill, FastFilled, WORKING_KPA};
use crate::calc::{ATMOSPHERE_KPA, Error, ICE_POINT_K, REFERENCE_C, Source, Step, gas};

/// Energies are subtracted from one another.
const ENERGY_FIGURES: i32 = 8;

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

/// The steps of a fast fill: states before and at the end, the balance that ties them, what is left once cool.
///
/// # Errors
/// As [`super::fast_fill`].
pub fn fast_fill_steps(fill: &FastFill, found: &FastFilled) -> Result<Vec<Step>, Error> {
    let FastFill { composition, start_kpa, start_c, source_kpa, source_c, end_kpa } = *fill;
    let at = |kpa: f64, c: f64| gas::real(&composition, c + ICE_POINT_K, kpa);
    let end_c = found.end_temperature_c;
    let (before, source, after) = (at(start_kpa, start_c)?, at(source_kpa, source_c)?, at(end_kpa, end_c)?);
    let full = at(WORKING_KPA, REFERENCE_C)?.density_kg_m3;
    let stated = "p {} kPa, T {} °C";
    let state = |key, formula, kpa: f64, c: f64, value: f64, unit| {
        Step::new(key, (formula, stated), &[kpa, c], (value, unit), Source::Gerg2008).with_result_of(ENERGY_FIGURES)
    };
    let (rho_1, u_1) = (before.density_kg_m3, before.internal_energy_kj_kg(start_kpa));
    let (rho_2, u_2, h) = (after.density_kg_m3, after.internal_energy_kj_kg(end_kpa), source.enthalpy_kj_kg);
    let balance = |key, formula, rho: f64, u: f64| {
        Step::new(key, (formula, "{} · ({} - {})"), &[rho, u, h], (rho * (u - h), "kJ/m³"), None)
            .with_numbers_of(ENERGY_FIGURES)
    };
    Ok(vec![
        state("fill-start-density", "ρ_1(p, T)", start_kpa, start_c, rho_1, "kg/m³"),
        state("fill-start-energy", "u_1(p, T)", start_kpa, start_c, u_1, "kJ/kg"),
        state("fill-source-enthalpy", "h(p, T)", source_kpa, source_c, h, "kJ/kg"),
        balance("fill-start-balance", "ρ_1 (u_1 - h)", rho_1, u_1),
        Step::new(
            "fill-end",
            ("T_2: ρ_2 (u_2 - h) = ρ_1 (u_1 - h)", "p {} kPa"),
            &[end_kpa],
            (end_c, "°C"),
            Source::Gerg2008,
        )
        .with_result_of(ENERGY_FIGURES),
        state("fill-end-density", "ρ_2(p, T)", end_kpa, end_c, rho_2, "kg/m³"),
        state("fill-end-energy", "u_2(p, T)", end_kpa, end_c, u_2, "kJ/kg"),
        balance("fill-end-balance", "ρ_2 (u_2 - h)", rho_2, u_2),
        Step::new(
            "settled-15",
            ("p(T, ρ)", "T {} °C, ρ {} kg/m³"),
            &[REFERENCE_C, rho_2],
            (found.settled_15c_kpa, "kPa"),
            Source::Gerg2008,
        ),
        state("fill-full-density", "ρ_full(p, T)", WORKING_KPA, REFERENCE_C, full, "kg/m³"),
        Step::new(
            "fill-degree",
            ("100 ρ_2 / ρ_full", "100 · {} / {}"),
            &[rho_2, full],
            (100.0 * found.filling_degree, "%"),
            None,
        ),
    ])
}
