//! The rows about what is carried: an LPG container, a CNG cylinder.

use super::answer::Answer;
use super::fields::Fields;
use super::refused::Refused;
use crate::calc::container::{Container, container as contents};
use crate::calc::cylinder::{Cylinder, cylinder as held};
use crate::calc::{container as containers, cylinder as cylinders};

pub(super) fn container(fields: &Fields) -> Result<Answer, Refused> {
    let asked = Container {
        composition: fields.composition("composition")?,
        gross_volume_l: fields.number("gross_volume_l")?,
        fill_fraction: fields.number("fill_fraction")?,
        temperature_c: fields.number("temperature_c")?,
    };
    let got = contents(&asked).map_err(|error| Refused::of(error, "composition"))?;
    let Some(full_c) = got.liquid_full_temperature_c else {
        // The contract has no room for a missing temperature, and a made-up one would be a danger.
        let message = format!(
            "filled to {:.1} % at {} C the container is liquid-full at no temperature below the critical region, so \
             liquid_full_temperature_c has no answer (the liquid alone: {:.2} L, {:.2} kg)",
            asked.fill_fraction * 100.0,
            asked.temperature_c,
            got.liquid_l,
            got.mass_kg
        );
        let takes = "a fill that becomes liquid-full below the critical region";
        return Err(Refused::state(asked.fill_fraction, takes, message));
    };
    Ok(Answer::on(&containers::BASIS, &got.cautions)
        .with("liquid_l", got.liquid_l)
        .with("mass_kg", got.mass_kg)
        .with("liquid_full_temperature_c", full_c)
        .with("energy_mj", got.energy_mj))
}

pub(super) fn cylinder(fields: &Fields) -> Result<Answer, Refused> {
    let asked = Cylinder {
        composition: fields.composition("composition")?,
        volume_l: fields.number("volume_l")?,
        pressure_kpa: fields.number("pressure_kpa")?,
        temperature_c: fields.number("temperature_c")?,
        at_temperature_c: fields.optional("at_temperature_c", Fields::number)?,
    };
    let got = held(&asked).map_err(|error| Refused::of_gas(error, "composition"))?;
    Ok(Answer::on(&cylinders::BASIS, &got.cautions)
        .with("mass_kg", got.mass_kg)
        .with("standard_m3", got.standard_m3)
        .with("settled_pressure_kpa", got.settled_pressure_kpa)
        .with("energy_mj", got.energy_mj))
}
