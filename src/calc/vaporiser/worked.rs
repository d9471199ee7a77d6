//! Heat of a vaporiser and of a pressure regulator laid out step by step. Enthalpies come from the equation of state; all
//! else is arithmetic.

use super::{COOLANT_KG_L, COOLANT_KJ_KG_K, Regulated, Regulator, VAPORISER, Vaporised, Vaporiser};
use crate::calc::{Source, Step};

/// Standard uncertainty of a heat per mass from the regulator's enthalpies, kJ/kg.
const REGULATOR_KJ_KG: f64 = 0.15;
/// Standard uncertainty of a temperature after throttling, K.
const THROTTLED_K: f64 = 0.1;
/// Standard uncertainty of a dew temperature, K.
const DEW_K: f64 = 0.2;
/// Relative standard uncertainty of a vapour pressure.
const VAPOUR_PRESSURE: f64 = 0.01;

/// The steps from the container to heat, coolant and dew temperature.
#[must_use]
pub fn vaporiser_steps(asked: &Vaporiser, found: &Vaporised) -> Vec<Step> {
    let Vaporiser { container_c, outlet_kpa, outlet_c, fuel_rate_g_s, coolant_drop_k, .. } = *asked;
    let Vaporised { liquid_kj_kg, vapour_kj_kg, heat_kj_kg, heat_kw, coolant_l_min, container_kpa, .. } = *found;
    let good = VAPORISER.relative_uncertainty.unwrap_or(0.0);
    let saturated = Source::PengRobinson1976;
    let mut all = vec![
        Step::new("container-pressure", ("p_s(T)", "T {} °C"), &[container_c], (container_kpa, "kPa"), saturated)
            .good_to(VAPOUR_PRESSURE),
        enthalpy("enthalpy-liquid", "h_L(p_s, T)", (container_kpa, container_c), liquid_kj_kg),
        enthalpy("enthalpy-vapour", "h_V(p, T)", (outlet_kpa, outlet_c), vapour_kj_kg),
        Step::new(
            "heat-per-mass",
            ("Δh = h_V - h_L", "{} - {}"),
            &[vapour_kj_kg, liquid_kj_kg],
            (heat_kj_kg, "kJ/kg"),
            None,
        )
        .good_to(good),
        heat(fuel_rate_g_s, heat_kj_kg, heat_kw).good_to(good),
        per_energy(heat_kj_kg, found.heat_w_per_kw_fuel).good_to(good),
        coolant(heat_kw, coolant_drop_k, coolant_l_min).good_to(good),
    ];
    let dew = found.dew_temperature_c;
    all.push(Step::new("dew", ("T_d(p)", "p {} kPa"), &[outlet_kpa], (dew, "°C"), saturated).give_or_take(DEW_K));
    all
}

/// The steps from the cylinder to the temperature after throttling, heat and coolant.
#[must_use]
pub fn regulator_steps(asked: &Regulator, found: &Regulated) -> Vec<Step> {
    let Regulator { inlet_kpa, inlet_c, outlet_kpa, outlet_c, fuel_rate_g_s, coolant_drop_k, .. } = *asked;
    let Regulated { inlet_kj_kg, outlet_kj_kg, throttled_c, heat_kj_kg, heat_kw, coolant_l_min, .. } = *found;
    let good = if heat_kj_kg == 0.0 { 0.0 } else { REGULATOR_KJ_KG / heat_kj_kg.abs() };
    let at = [outlet_kpa, inlet_kj_kg];
    let throttled = ("h(p_2, T) = h_1", "p {} kPa, h {} kJ/kg");
    let mut all = vec![
        enthalpy("enthalpy-inlet", "h_1(p_1, T_1)", (inlet_kpa, inlet_c), inlet_kj_kg),
        Step::new("throttled", throttled, &at, (throttled_c, "°C"), Source::Gerg2008).give_or_take(THROTTLED_K),
    ];
    if inlet_kpa > outlet_kpa {
        all.push(Step::new(
            "cooling-per-bar",
            ("μ = (T_1 - T) / ((p_1 - p_2) / 100)", "({} - {}) / (({} - {}) / 100)"),
            &[inlet_c, throttled_c, inlet_kpa, outlet_kpa],
            (found.mean_joule_thomson_k_per_bar, "K/bar"),
            None,
        ));
    }
    all.extend([
        enthalpy("enthalpy-outlet", "h_2(p_2, T_2)", (outlet_kpa, outlet_c), outlet_kj_kg),
        Step::new(
            "heat-per-mass",
            ("Δh = h_2 - h_1", "{} - {}"),
            &[outlet_kj_kg, inlet_kj_kg],
            (heat_kj_kg, "kJ/kg"),
            None,
        )
        .give_or_take(REGULATOR_KJ_KG),
        heat(fuel_rate_g_s, heat_kj_kg, heat_kw).good_to(good),
        per_energy(heat_kj_kg, found.heat_w_per_kw_fuel).good_to(good),
    ]);
    if heat_kw > 0.0 {
        all.push(coolant(heat_kw, coolant_drop_k, coolant_l_min).good_to(good));
    }
    all
}

fn enthalpy(key: &'static str, formula: &'static str, (kpa, c): (f64, f64), kj_kg: f64) -> Step {
    Step::new(key, (formula, "p {} kPa, T {} °C"), &[kpa, c], (kj_kg, "kJ/kg"), Source::Gerg2008)
}

fn heat(fuel_rate_g_s: f64, heat_kj_kg: f64, heat_kw: f64) -> Step {
    Step::new("heat", ("Q = ṁ Δh / 1000", "{} · {} / 1000"), &[fuel_rate_g_s, heat_kj_kg], (heat_kw, "kW"), None)
}

fn per_energy(heat_kj_kg: f64, w_per_kw: f64) -> Step {
    // kJ/kg over MJ/kg is W/kW.
    let net_mj_kg = if w_per_kw == 0.0 { 0.0 } else { heat_kj_kg / w_per_kw };
    Step::new("heat-per-energy", ("Δh / H", "{} / {}"), &[heat_kj_kg, net_mj_kg], (w_per_kw, "W/kW"), None)
}

fn coolant(heat_kw: f64, drop_k: f64, l_min: f64) -> Step {
    Step::new(
        "coolant",
        ("V = 60 Q / (c ΔT ρ)", "60 · {} / ({} · {} · {})"),
        &[heat_kw, COOLANT_KJ_KG_K, drop_k, COOLANT_KG_L],
        (l_min, "L/min"),
        None,
    )
}
