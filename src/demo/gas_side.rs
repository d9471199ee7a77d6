//! The sums of heat and lines behind the invented jobs: reckoned, not written down.

use serde_json::json;

use super::sums::{broken, json_of, typed};
use crate::calc::Error;
use crate::calc::composition::{Composition, Shares};
use crate::calc::heat::{self, Asked, Capacity, Device, fuel_rate_g_s};
use crate::calc::hose::{Carries, Hose, Line, LineAsked, USUAL_HEADS, line};
use crate::calc::vaporiser::Vaporiser;
use crate::model::evidence::{HeatInputs, HeatSizing, LineInputs, LineResults, LineSizing, SizingVerdict};
use crate::shop::Refusal;

/// What the maker of the invented vaporiser tells: an engine of 140 kW.
const SERVES_KW: f64 = 140.0;
const EFFICIENCY: f64 = 0.28;

fn mix() -> Result<Composition, Refusal> {
    Composition::from_mole(Shares { propane: 0.6, n_butane: 0.4, ..Shares::default() }).map_err(broken)
}

fn rate(power_kw: f64) -> Result<f64, Refusal> {
    fuel_rate_g_s(&mix()?, power_kw, EFFICIENCY).map_err(broken)
}

/// The heat sheet of an invented engine, with the vaporiser that the shop usually fits.
pub fn heat(rated_power_kw: f64) -> Result<HeatSizing, Refusal> {
    let vaporiser = Vaporiser {
        composition: mix()?,
        container_c: -20.0,
        outlet_kpa: 212.0,
        outlet_c: 50.0,
        fuel_rate_g_s: rate(rated_power_kw)?,
        coolant_drop_k: 8.0,
    };
    let asked = Asked {
        device: Device::Vaporiser(vaporiser),
        rated_power_kw: Some(rated_power_kw),
        brake_efficiency: Some(EFFICIENCY),
        capacity: Some(Capacity::Engine { engine_kw: SERVES_KW }),
        changeover_c: Some(38.0),
    };
    let found = heat::sheet(&asked).map_err(broken)?;
    let typed = typed(&[
        ("fuel_mix", "typed-mole"),
        ("share_propane", "60"),
        ("share_n_butane", "40"),
        ("rated_power_kw", &rated_power_kw.to_string()),
        ("brake_efficiency", "0.28"),
        ("container_c", "-20"),
        ("outlet_kpa", "212"),
        ("outlet_c", "50"),
        ("coolant_drop_k", "8"),
        ("changeover_c", "38"),
        ("capacity_engine_kw", "140"),
    ]);
    Ok(HeatSizing {
        origins: json!({
            "rated_power_kw": "nozzle", "brake_efficiency": "nozzle", "container_c": "practice",
            "outlet_kpa": "nozzle", "outlet_c": "nozzle", "coolant_drop_k": "practice",
        }),
        heat_kw: found.heat.heat_kw(),
        coolant_l_min: found.heat.coolant_l_min(),
        verdict: SizingVerdict::of_heat(&found),
        program_version: env!("CARGO_PKG_VERSION").to_owned(),
        inputs: json_of(&HeatInputs { typed, asked })?,
        results: json_of(&found)?,
    })
}

/// The hoses and the liquid line of the usual invented car, four engine cylinders.
pub fn lines(rated_power_kw: f64) -> Result<LineSizing, Refusal> {
    let composition = mix()?;
    // As the form shows it: three decimals.
    let flow_g_s = (rate(rated_power_kw)? * 1e3).round() / 1e3;
    let ask = |line, bore_mm, length_m| {
        let is_liquid = line == Line::Liquid;
        let hose = Hose {
            composition,
            carries: if is_liquid { Carries::Liquid } else { Carries::Gas },
            pressure_kpa: 212.0,
            temperature_c: if is_liquid { 15.0 } else { 50.0 },
            bore_mm,
            length_m,
            flow_g_s: if line == Line::Branch { flow_g_s / 4.0 } else { flow_g_s },
            fitting_velocity_heads: USUAL_HEADS,
        };
        LineAsked { line, hose, duty: None }
    };
    let lines = vec![ask(Line::RailSupply, 12.0, 0.6), ask(Line::Branch, 6.0, 0.2), ask(Line::Liquid, 6.0, 4.5)];
    let found = lines.iter().map(line).collect::<Result<Vec<_>, Error>>().map_err(broken)?;
    let typed = typed(&[
        ("fuel_mix", "typed-mole"),
        ("share_propane", "60"),
        ("share_n_butane", "40"),
        ("fuel_rate_g_s", &format!("{flow_g_s}")),
        ("engine_cylinders", "4"),
        ("pressure_kpa", "212"),
        ("temperature_c", "50"),
        ("liquid_c", "15"),
        ("lines[0][bore_mm]", "12"),
        ("lines[0][length_m]", "0.6"),
        ("lines[0][velocity_heads]", "1.5"),
        ("lines[1][bore_mm]", "6"),
        ("lines[1][length_m]", "0.2"),
        ("lines[1][velocity_heads]", "1.5"),
        ("lines[2][bore_mm]", "6"),
        ("lines[2][length_m]", "4.5"),
        ("lines[2][velocity_heads]", "1.5"),
    ]);
    Ok(LineSizing {
        origins: json!({
            "fuel_rate_g_s": "nozzle", "engine_cylinders": "vehicle", "pressure_kpa": "nozzle",
            "temperature_c": "nozzle", "liquid_c": "practice",
        }),
        rail_supply_drop_kpa: found.first().map(|one| one.drop.drop_kpa),
        verdict: SizingVerdict::of_lines(&found),
        program_version: env!("CARGO_PKG_VERSION").to_owned(),
        inputs: json_of(&LineInputs { typed, lines })?,
        results: json_of(&LineResults { lines: found })?,
    })
}
