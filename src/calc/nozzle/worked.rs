//! A nozzle sheet laid out step by step.

use std::f64::consts::PI;

use super::flow::{self, FLUX_UNCERTAINTY};
use super::sizing::Spread;
use super::{Asked, AtNozzle, Candidate, Found, PetrolInjection, Setting, Sheet, Sizing};
use crate::calc::fuel_parts::Part;
use crate::calc::{Source, Step};

/// The steps from the inputs to the bore, and from the nozzle of `used` to pulse, duty and speed limit.
#[must_use]
pub fn steps(asked: &Asked, sheet: &Sheet, used: &Candidate) -> Vec<Step> {
    let setting = asked.setting();
    let mut all = match (asked, &sheet.found) {
        (Asked::Petrol(from), Found::Petrol(found)) => from_petrol(&from.injection, found.petrol_per_cycle_mg, sheet),
        (Asked::Power(sizing), _) => from_power(sizing, sheet),
        // A sheet of the other kind is none of this sum; its nozzle can still be followed.
        (Asked::Petrol(_), Found::Power(_)) => Vec::new(),
    };
    all.extend(bore(&setting, sheet));
    all.extend(nozzle(&setting, sheet, used));
    all.extend(idle(asked, &setting, sheet, used));
    if let (Asked::Petrol(from), Some(at_idle)) = (asked, used.idle_pulse_ms)
        && let Some(petrol_ms) = from.injection.idle_pulse_ms
    {
        all.push(time_ratio("time-ratio-idle", at_idle, petrol_ms));
    }
    if let Asked::Petrol(from) = asked {
        all.push(time_ratio("time-ratio-rated", used.rated_pulse_ms, from.injection.rated_pulse_ms));
    }
    all
}

/// A sum over the parts: `0.53 · 46.35 + 0.47 · 45.72`.
fn by_mass(
    key: &'static str,
    formula: &'static str,
    sheet: &Sheet,
    of: fn(&Part) -> f64,
    result: (f64, &'static str),
) -> Step {
    let burning: Vec<&Part> = sheet.parts.iter().filter(|part| of(part) > 0.0).collect();
    let put_in = vec!["{} · {}"; burning.len()].join(" + ");
    let values: Vec<f64> = burning.iter().flat_map(|part| [part.mass_share, of(part)]).collect();
    Step::new(key, (formula, &put_in), &values, result, Source::Iso6976).good_to(0.001)
}

fn from_power(sizing: &Sizing, sheet: &Sheet) -> Vec<Step> {
    let Sizing { rated_power_kw: p, brake_efficiency: eta, rated_rpm: n, engine_cylinders, .. } = *sizing;
    let (h, cylinders) = (sheet.fuel.lower_heating_value_mj_kg, f64::from(engine_cylinders));
    let rate = p / (eta * h);
    let dose = sheet.found.nozzle().fuel_per_cycle_mg;
    vec![
        by_mass("net-energy", "H = Σ w H", sheet, |part| part.lower_heating_value_mj_kg, (h, "MJ/kg")),
        Step::new("fuel-rate", ("ṁ = P / (η H)", "{} / ({} · {})"), &[p, eta, h], (rate, "g/s"), None)
            .good_to(rate_spread()),
        Step::new(
            "dose",
            ("m = 1000 ṁ (120 / n) / N", "1000 · {} · (120 / {}) / {}"),
            &[rate, n, cylinders],
            (dose, "mg"),
            None,
        )
        .good_to(rate_spread()),
    ]
}

fn from_petrol(injection: &PetrolInjection, petrol_mg: f64, sheet: &Sheet) -> Vec<Step> {
    let PetrolInjection { static_flow_g_min: q, rated_pulse_ms: t, dead_time_ms: dead, .. } = *injection;
    let afr = injection.petrol.stoichiometric_afr();
    let gas_afr = sheet.fuel.stoichiometric_afr;
    let air = petrol_mg * injection.petrol_lambda * afr;
    let share = if injection.is_displaced_air_taken_off { sheet.fuel.displaced_share } else { 0.0 };
    let dose = sheet.found.nozzle().fuel_per_cycle_mg;
    vec![
        Step::new(
            "petrol-dose",
            ("m_p = q (t_p - t_dp) / 60", "{} · ({} - {}) / 60"),
            &[q, t, dead],
            (petrol_mg, "mg"),
            None,
        ),
        Step::new(
            "air",
            ("m_L = m_p λ_p L_p", "{} · {} · {}"),
            &[petrol_mg, injection.petrol_lambda, afr],
            (air, "mg"),
            Source::Un83,
        ),
        by_mass("air-need", "L = Σ w L", sheet, |part| part.stoichiometric_afr, (gas_afr, "kg/kg")),
        Step::new(
            "dose",
            ("m = m_L (1 - s) / (λ L)", "{} · (1 - {}) / ({} · {})"),
            &[air, share, injection.gas_lambda, gas_afr],
            (dose, "mg"),
            None,
        ),
    ]
}

/// Of power and efficiency together.
fn rate_spread() -> f64 {
    let Spread { power, efficiency, .. } = Spread::default();
    power.hypot(efficiency)
}

/// Of what a pulse is open for: dose, coefficient, supply.
fn pulse_spread(setting: &Setting) -> f64 {
    let Spread { discharge, supply, .. } = setting.spread();
    rate_spread().hypot(discharge).hypot(supply)
}

fn gas(at: &AtNozzle, setting: &Setting, keys: [&'static str; 3]) -> Vec<Step> {
    let (p, rho, k) = (at.upstream_kpa, at.gas.density_kg_m3, at.gas.isentropic_exponent);
    let (r, c) = (at.manifold_kpa / p, setting.gas_temperature_c);
    let stated = "p {} kPa, T {} °C";
    let flux = at.through.mass_flux_kg_s_m2;
    let [density, exponent, key] = keys;
    vec![
        Step::new(density, ("ρ(p, T)", stated), &[p, c], (rho, "kg/m³"), Source::Gerg2008).good_to(0.001),
        Step::new(exponent, ("κ(p, T)", stated), &[p, c], (k, ""), Source::Gerg2008).good_to(0.001),
        flow::flux(key, [p, rho, k, r], at.through.choked, flux)
            .good_to(FLUX_UNCERTAINTY.hypot(Spread::default().supply)),
    ]
}

fn bore(setting: &Setting, sheet: &Sheet) -> Vec<Step> {
    let nozzle = sheet.found.nozzle();
    let Setting { rated_rpm: n, max_duty, dead_time_ms: dead, discharge_coefficient: cd, .. } = *setting;
    let (window, open, dose) = (nozzle.window_ms, nozzle.open_time_ms, nozzle.fuel_per_cycle_mg);
    let (flux, d) = (nozzle.mass_flux_kg_s_m2, nozzle.diameter_mm);
    let area = 1e3 * dose / (open * cd * flux);
    let (over, manifold) = (setting.supply_over_manifold_kpa, sheet.rated.manifold_kpa);
    let (choking, k) = (nozzle.choking_share, sheet.rated.gas.isentropic_exponent);
    let balance = None;
    let mut all = vec![
        Step::new("window", ("t_w = 120000 / n", "120000 / {}"), &[n], (window, "ms"), balance),
        Step::new("open-time", ("t_o = D t_w - t_d", "{} · {} - {}"), &[max_duty, window, dead], (open, "ms"), balance)
            .good_to(Spread::default().open_time),
        Step::new("supply", ("p = p_m + Δp", "{} + {}"), &[manifold, over], (nozzle.upstream_kpa, "kPa"), balance)
            .good_to(Spread::default().supply),
    ];
    all.extend(gas(&sheet.rated, setting, ["density", "exponent", "flux"]));
    all.extend([
        Step::new(
            "choking",
            ("r* = (2 / (κ + 1))^(κ / (κ - 1))", "(2 / ({} + 1)) ^ ({} / ({} - 1))"),
            &[k, k, k],
            (choking, ""),
            Source::Iso9300,
        ),
        Step::new(
            "area",
            ("A = 1000 m / (t_o C G)", "1000 · {} / ({} · {} · {})"),
            &[dose, open, cd, flux],
            (area, "mm²"),
            balance,
        )
        .good_to(2.0 * setting.spread().of_diameter()),
        Step::new("bore", ("d = √(4 A / π)", "√(4 · {} / {})"), &[area, PI], (d, "mm"), balance)
            .give_or_take(nozzle.diameter_standard_uncertainty_mm),
    ]);
    all
}

const PULSE: (&str, &str) = ("t = 1000 m / (C G π/4 d²) + t_d", "1000 · {} / ({} · {} · {} / 4 · {} ^ 2) + {}");

fn nozzle(setting: &Setting, sheet: &Sheet, used: &Candidate) -> Vec<Step> {
    let nozzle = sheet.found.nozzle();
    let Setting { max_duty, dead_time_ms: dead, discharge_coefficient: cd, .. } = *setting;
    let (pulse, window) = (used.rated_pulse_ms, nozzle.window_ms);
    let values = [nozzle.fuel_per_cycle_mg, cd, nozzle.mass_flux_kg_s_m2, PI, used.size_mm, dead];
    let open = pulse_spread(setting) * (pulse - dead);
    let balance = None;
    vec![
        Step::new("rated-pulse", PULSE, &values, (pulse, "ms"), balance).give_or_take(open),
        Step::new("duty", ("D = t / t_w", "{} / {}"), &[pulse, window], (used.duty_at_rated, ""), balance)
            .give_or_take(open / window),
        Step::new(
            "speed-limit",
            ("n = D 120000 / t", "{} · 120000 / {}"),
            &[max_duty, pulse],
            (used.limit_rpm, "/min"),
            balance,
        )
        .good_to(open / pulse),
    ]
}

fn idle(asked: &Asked, setting: &Setting, sheet: &Sheet, used: &Candidate) -> Vec<Step> {
    let dose = sheet.found.nozzle().idle_fuel_per_cycle_mg;
    let (Some(at), Some(pulse), Some(dose)) = (&sheet.idle, used.idle_pulse_ms, dose) else { return Vec::new() };
    let mut all = Vec::new();
    match asked {
        Asked::Power(Sizing { idle_rpm: Some(n), idle_fuel_power_kw: Some(p), engine_cylinders, .. }) => {
            let values = [*p, sheet.fuel.lower_heating_value_mj_kg, *n, f64::from(*engine_cylinders)];
            let words = ("m_i = 1000 P_i / H (120 / n_i) / N", "1000 · {} / {} · (120 / {}) / {}");
            all.push(Step::new("idle-dose", words, &values, (dose, "mg"), None));
        }
        Asked::Petrol(from) => {
            let PetrolInjection {
                static_flow_g_min: q, idle_pulse_ms, dead_time_ms, is_displaced_air_taken_off, ..
            } = from.injection;
            let share = if is_displaced_air_taken_off { sheet.fuel.displaced_share } else { 0.0 };
            let afr = from.injection.petrol.stoichiometric_afr();
            let values = [q, idle_pulse_ms.unwrap_or(0.0), dead_time_ms, afr, share, sheet.fuel.stoichiometric_afr];
            let words = ("m_i = q (t_pi - t_dp) / 60 L_p (1 - s) / L", "{} · ({} - {}) / 60 · {} · (1 - {}) / {}");
            all.push(Step::new("idle-dose", words, &values, (dose, "mg"), None));
        }
        Asked::Power(_) => {}
    }
    all.extend(gas(at, setting, ["idle-density", "idle-exponent", "idle-flux"]));
    let Setting { dead_time_ms: dead, discharge_coefficient: cd, .. } = *setting;
    let values = [dose, cd, at.through.mass_flux_kg_s_m2, PI, used.size_mm, dead];
    let Spread { discharge, supply, .. } = setting.spread();
    let spread = discharge.hypot(supply) * (pulse - dead);
    all.push(Step::new("idle-pulse", PULSE, &values, (pulse, "ms"), None).give_or_take(spread));
    all
}

fn time_ratio(key: &'static str, gas_ms: f64, petrol_ms: f64) -> Step {
    let words = ("t / t_p", "{} / {}");
    Step::new(key, words, &[gas_ms, petrol_ms], (gas_ms / petrol_ms, ""), None)
}
