//! The sums behind the invented sizing sheets: reckoned, not written down.

use serde_json::{Value, json};

use crate::calc::container::{Container, Stowage, container as reckon_container, stow};
use crate::calc::nozzle::{Asked, Sizing, Verdict, sensitivity, sheet};
use crate::model::evidence::{
    ContainerInputs, ContainerResults, ContainerSet, ContainerSizing, NozzleInputs, NozzleResults, NozzleSizing,
    NozzleVerdict,
};
use crate::shop::Refusal;

/// The nozzle of the usual invented car.
pub const CHOSEN_MM: f64 = 2.6;

/// A sum that refused.
pub fn broken(error: impl std::fmt::Display) -> Refusal {
    Refusal::Broken(error.to_string())
}

/// A value as it is kept.
pub fn json_of(value: &impl serde::Serialize) -> Result<Value, Refusal> {
    serde_json::to_value(value).map_err(broken)
}

/// Texts of a form, as they are kept.
pub fn typed(fields: &[(&str, &str)]) -> Vec<(String, String)> {
    fields.iter().map(|(name, text)| ((*name).to_owned(), (*text).to_owned())).collect()
}

/// The nozzle sheet of the usual invented car: 82 kW at 6 000 /min, four engine cylinders.
pub fn nozzle() -> Result<NozzleSizing, Refusal> {
    nozzle_of(82.0, 6_000.0, 4)
}

/// The nozzle sheet of an engine.
pub fn nozzle_of(rated_power_kw: f64, rated_rpm: f64, engine_cylinders: u32) -> Result<NozzleSizing, Refusal> {
    let sizes_mm: Vec<f64> = (15..=30).map(|tenths| f64::from(tenths) / 10.0).collect();
    let inputs = json!({
        "fuel": { "propane": 0.6, "n_butane": 0.4 },
        "rated_power_kw": rated_power_kw, "rated_rpm": rated_rpm, "engine_cylinders": engine_cylinders,
        "brake_efficiency": 0.28, "manifold_kpa": 97.0, "supply_over_manifold_kpa": 115.0,
        "gas_temperature_c": 50.0, "dead_time_ms": 1.0, "max_duty": 0.9, "discharge_coefficient": 0.65,
        "sizes_mm": sizes_mm, "idle_rpm": 780.0, "idle_fuel_power_kw": 7.0,
        "idle_manifold_kpa": 35.0, "min_pulse_ms": 2.5,
    });
    let sizing: Sizing = serde_json::from_value(inputs).map_err(broken)?;
    let typed = typed(&[
        ("from", "power"),
        ("fuel_mix", "typed-mole"),
        ("share_propane", "60"),
        ("share_n_butane", "40"),
        ("rated_power_kw", &rated_power_kw.to_string()),
        ("rated_rpm", &rated_rpm.to_string()),
        ("engine_cylinders", &engine_cylinders.to_string()),
        ("brake_efficiency", "0.28"),
        ("manifold_kpa", "97"),
        ("gas_temperature_c", "50"),
        ("max_duty", "0.90"),
        ("regulator_follows", "manifold"),
        ("idle_rpm", "780"),
        ("idle_fuel_power_kw", "7.0"),
        ("idle_manifold_kpa", "35"),
        ("sets[0][supply_over_manifold_kpa]", "115"),
        ("sets[0][dead_time_ms]", "1.0"),
        ("sets[0][min_pulse_ms]", "2.5"),
        ("sets[0][discharge_coefficient]", "0.65"),
        ("sets[0][sizes_mm]", &sizes_mm.iter().map(f64::to_string).collect::<Vec<_>>().join(" ")),
        ("taken", "1"),
    ]);
    let asked = Asked::Power(sizing);
    let answer = sheet(&asked).map_err(broken)?;
    let sized = answer.found.nozzle().clone();
    let sensitivity = sensitivity(&asked, sized.used_mm).map_err(broken)?;
    Ok(NozzleSizing {
        inputs: json_of(&NozzleInputs { typed, sets: vec![(String::new(), asked)], taken: 0 })?,
        results: json_of(&NozzleResults { sheets: vec![answer], sensitivity })?,
        origins: json!({ "rated_power_kw": "vehicle", "rated_rpm": "vehicle", "engine_cylinders": "vehicle" }),
        needed_mm: sized.diameter_mm,
        chosen_mm: sized.chosen_mm,
        verdict: match sized.verdict {
            Verdict::Fits => NozzleVerdict::Fits,
            Verdict::TooSmall => NozzleVerdict::TooSmall,
            Verdict::TooLarge => NozzleVerdict::TooLarge,
            Verdict::NoneFits => NozzleVerdict::NoneFits,
        },
        program_version: env!("CARGO_PKG_VERSION").to_owned(),
    })
}

/// The container sheet of the usual invented car: 54 L, filled to 80 % at 15 C.
pub fn container() -> Result<ContainerSizing, Refusal> {
    let inputs = json!({
        "composition": { "propane": 0.6, "n_butane": 0.4 },
        "gross_volume_l": 54.0, "fill_fraction": 0.8, "temperature_c": 15.0,
    });
    let asked: Container = serde_json::from_value(inputs).map_err(broken)?;
    let contents = reckon_container(&asked).map_err(broken)?;
    let stowage = Stowage {
        container_mass_kg: 29.0,
        parts_mass_kg: 9.0,
        consumption_l_per_100km: 9.6,
        left_behind_share: 0.03,
        axle_reserve_kg: Some(180.0),
    };
    let stowed = stow(&contents, &stowage).map_err(broken)?;
    let (gross_volume_l, liquid_l) = (asked.gross_volume_l, contents.liquid_l);
    let liquid_full_temperature_c = contents.liquid_full_temperature_c;
    let set = ContainerSet { name: String::new(), container: asked, stowage: Some(stowage) };
    let typed = typed(&[
        ("fuel_mix", "typed-mole"),
        ("share_propane", "60"),
        ("share_n_butane", "40"),
        ("fill_percent", "80"),
        ("temperature_c", "15"),
        ("left_behind_percent", "3"),
        ("consumption_l_per_100km", "9.6"),
        ("parts_mass_kg", "9"),
        ("axle_reserve_kg", "180"),
        ("sets[0][gross_volume_l]", "54"),
        ("sets[0][container_mass_kg]", "29"),
        ("taken", "1"),
    ]);
    Ok(ContainerSizing {
        inputs: json_of(&ContainerInputs { typed, sets: vec![set], taken: 0 })?,
        results: json_of(&ContainerResults { sets: vec![(contents, Some(stowed))] })?,
        origins: json!({ "fill_percent": "rule", "temperature_c": "practice", "axle_reserve_kg": "vehicle" }),
        gross_volume_l,
        liquid_l,
        liquid_full_temperature_c,
        added_mass_kg: Some(stowed.added_mass_kg),
        is_within_axle_reserve: stowed.reserve_left_kg.map(|left| left >= 0.0),
        program_version: env!("CARGO_PKG_VERSION").to_owned(),
    })
}
