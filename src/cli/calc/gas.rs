//! The rows about the fuel itself: vapour pressure, liquid density, state of the gas, energy and octane.

use super::answer::Answer;
use super::fields::Fields;
use super::refused::Refused;
use crate::calc::gas::{Gas, GasState, gas_state};
use crate::calc::liquid::{BubblePoint, Liquid, SaturatedDensity, density, vapour_pressure as bubble_point};
use crate::calc::{fuel as fuels, gas, liquid};

fn read_liquid(fields: &Fields) -> Result<Liquid, Refused> {
    Ok(Liquid { composition: fields.composition("composition")?, temperature_c: fields.number("temperature_c")? })
}

pub(super) fn vapour_pressure(fields: &Fields) -> Result<Answer, Refused> {
    let BubblePoint { pressure_kpa, cautions, .. } =
        bubble_point(&read_liquid(fields)?).map_err(|error| Refused::of(error, "composition"))?;
    Ok(Answer::on(&liquid::VAPOUR_PRESSURE, &cautions).with("pressure_kpa", pressure_kpa))
}

pub(super) fn liquid_density(fields: &Fields) -> Result<Answer, Refused> {
    let SaturatedDensity { density_kg_m3, cautions } =
        density(&read_liquid(fields)?).map_err(|error| Refused::of(error, "composition"))?;
    Ok(Answer::on(&liquid::DENSITY, &cautions).with("density_kg_m3", density_kg_m3))
}

pub(super) fn state(fields: &Fields) -> Result<Answer, Refused> {
    let asked = Gas {
        composition: fields.composition("composition")?,
        pressure_kpa: fields.number("pressure_kpa")?,
        temperature_c: fields.number("temperature_c")?,
    };
    let got: GasState = gas_state(&asked).map_err(|error| Refused::of_gas(error, "composition"))?;
    Ok(Answer::on(&gas::BASIS, &got.cautions)
        .with("density_kg_m3", got.density_kg_m3)
        .with("compressibility", got.compressibility)
        .with("isentropic_exponent", got.isentropic_exponent)
        .with("speed_of_sound_m_s", got.speed_of_sound_m_s)
        .with("molar_mass_g_mol", got.molar_mass_g_mol))
}

pub(super) fn fuel(fields: &Fields) -> Result<Answer, Refused> {
    let composition = fields.composition("composition")?;
    let got = fuels::fuel(&composition).map_err(|error| Refused::of(error, "composition"))?;
    Ok(Answer::on(&fuels::BASIS, &got.cautions)
        .with("lower_heating_value_mj_kg", got.lower_heating_value_mj_kg)
        .with("stoichiometric_afr", got.stoichiometric_afr)
        .with("h_c_ratio", got.h_c_ratio)
        .with("molar_mass_g_mol", got.molar_mass_g_mol)
        .with("motor_octane_number", got.motor_octane_number)
        .with("wobbe_mj_m3", got.wobbe_mj_m3))
}
