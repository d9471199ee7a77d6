//! The rows about nozzles: what flows through one, and which one to fit.

use super::answer::Answer;
use super::fields::Fields;
use super::refused::Refused;
use crate::calc::Error;
use crate::calc::nozzle::engine::{Follows, IDLE_MANIFOLD_KPA, LEAST_PULSE_MS};
use crate::calc::nozzle::{Flow, Sizing, flow as flows, size, sizing};

pub(super) fn flow(fields: &Fields) -> Result<Answer, Refused> {
    let asked = Flow {
        composition: fields.composition("composition")?,
        upstream_kpa: fields.number("upstream_kpa")?,
        downstream_kpa: fields.number("downstream_kpa")?,
        temperature_c: fields.number("temperature_c")?,
        diameter_mm: fields.number("diameter_mm")?,
        discharge_coefficient: fields.number("discharge_coefficient")?,
    };
    let got = flows::flow(&asked).map_err(|error| Refused::of_gas(error, "composition"))?;
    let is_uphill = asked.downstream_kpa >= asked.upstream_kpa;
    Ok(Answer::on(&flows::BASIS, &got.cautions)
        .warning_if(is_uphill, "the pressure downstream is not below the pressure upstream: nothing flows")
        .with("mass_flow_g_s", got.mass_flow_g_s)
        .with("choked", got.choked))
}

pub(super) fn sized(fields: &Fields) -> Result<Answer, Refused> {
    let asked = read(fields)?;
    let got = size(&asked).map_err(|error| refused(error, &asked))?;
    let has_half_of_idle = asked.idle_rpm.is_some() != asked.idle_fuel_power_kw.is_some();
    Ok(Answer::on(&sizing::BASIS, &got.cautions)
        .warning_if(has_half_of_idle, "idle is judged only with both idle_rpm and idle_fuel_power_kw")
        .with("diameter_mm", got.diameter_mm)
        .with("chosen_mm", got.chosen_mm)
        .with("duty_at_rated", got.duty_at_rated)
        .with("idle_pulse_ms", got.idle_pulse_ms)
        .with("verdict", got.verdict)
        .with("reasons", got.reasons.iter().map(ToString::to_string).collect::<Vec<_>>()))
}

fn read(fields: &Fields) -> Result<Sizing, Refused> {
    Ok(Sizing {
        fuel: fields.composition("fuel")?,
        rated_power_kw: fields.number("rated_power_kw")?,
        rated_rpm: fields.number("rated_rpm")?,
        engine_cylinders: fields.whole("engine_cylinders")?,
        brake_efficiency: fields.number("brake_efficiency")?,
        manifold_kpa: fields.number("manifold_kpa")?,
        supply_over_manifold_kpa: fields.number("supply_over_manifold_kpa")?,
        regulator_follows: Follows::Manifold,
        gas_temperature_c: fields.number("gas_temperature_c")?,
        dead_time_ms: fields.number("dead_time_ms")?,
        max_duty: fields.number("max_duty")?,
        discharge_coefficient: fields.number("discharge_coefficient")?,
        discharge_uncertainty: None,
        sizes_mm: fields.numbers("sizes_mm")?,
        idle_rpm: fields.optional("idle_rpm", Fields::number)?,
        idle_fuel_power_kw: fields.optional("idle_fuel_power_kw", Fields::number)?,
        idle_manifold_kpa: fields.optional("idle_manifold_kpa", Fields::number)?.unwrap_or(IDLE_MANIFOLD_KPA),
        min_pulse_ms: fields.optional("min_pulse_ms", Fields::number)?.unwrap_or(LEAST_PULSE_MS),
    })
}

/// A size is named by its place in the list; what is wrong with the list itself is how many there are.
fn refused(error: Error, asked: &Sizing) -> Refused {
    match error {
        Error::Outside(outside) if outside.quantity == "sizes_mm" => {
            let is_it = |size: &f64| size.to_bits() == outside.got.to_bits();
            match asked.sizes_mm.iter().position(is_it) {
                Some(place) => Refused::outside(format!("sizes_mm[{place}]"), outside),
                None => Refused::field("sizes_mm", outside.got, "a list of 1 to 200 sizes"),
            }
        }
        Error::Outside(outside) if outside.quantity == "dead_time_ms" && outside.got <= 10.0 => {
            Refused::outside("dead_time_ms", outside).saying(format!(
                "dead_time_ms is {}: that leaves no time to inject at rated_rpm; it takes up to {:.2} there",
                outside.got, outside.most
            ))
        }
        other => Refused::of_gas(other, "fuel"),
    }
}
