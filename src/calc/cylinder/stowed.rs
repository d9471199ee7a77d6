//! What a cylinder means for the vehicle: range, and mass against the axle's reserve.

use serde::{Deserialize, Serialize};

use super::{Contents, Cylinder, cylinder, range_km};
use crate::calc::{Error, Source, Step, between};

/// Pressure at which a regulator usually delivers no longer at full load, kPa absolute (common practice).
pub const LEFT_KPA: f64 = 1_000.0;

/// What comes into the vehicle with the cylinder, and how the vehicle uses it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Stowage {
    /// Empty cylinder with valve and brackets, kg; 0 to 2 000.
    pub cylinder_mass_kg: f64,
    /// All other parts fitted less those removed, kg; -200 to 500.
    pub parts_mass_kg: f64,
    /// Gas consumption, kg per 100 km; 0.5 to 150.
    pub consumption_kg_per_100km: f64,
    /// Pressure at which the vehicle goes back to petrol, kPa absolute; what is left then is not counted.
    pub left_kpa: f64,
    /// What the axle may still carry, kg; none when not known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub axle_reserve_kg: Option<f64>,
}

/// Range and mass.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Stowed {
    /// Gas that stays in the cylinder, kg.
    pub left_kg: f64,
    /// Gas that can be used, kg.
    pub usable_kg: f64,
    /// Range on it, km.
    pub range_km: f64,
    /// Mass added to the vehicle with a full fill, kg.
    pub added_mass_kg: f64,
    /// What the axle may carry beyond that, kg; negative is an overload; none without a reserve.
    pub reserve_left_kg: Option<f64>,
}

/// Range, and the mass set against the axle's reserve: `range = (mass - mass left) / consumption * 100`.
///
/// # Errors
/// [`Error::Outside`] names the quantity beyond its range; as [`cylinder`].
pub fn stow(filled: &Cylinder, contents: &Contents, stowage: &Stowage) -> Result<Stowed, Error> {
    between("cylinder_mass_kg", stowage.cylinder_mass_kg, 0.0, 2_000.0)?;
    between("parts_mass_kg", stowage.parts_mass_kg, -200.0, 500.0)?;
    between("left_kpa", stowage.left_kpa, 110.0, filled.pressure_kpa)?;
    if let Some(reserve_kg) = stowage.axle_reserve_kg {
        between("axle_reserve_kg", reserve_kg, -2_000.0, 10_000.0)?;
    }
    let left_kg = cylinder(&Cylinder { pressure_kpa: stowage.left_kpa, at_temperature_c: None, ..*filled })?.mass_kg;
    let added_mass_kg = stowage.cylinder_mass_kg + stowage.parts_mass_kg + contents.mass_kg;
    Ok(Stowed {
        left_kg,
        usable_kg: contents.mass_kg - left_kg,
        range_km: range_km(contents.mass_kg, left_kg, stowage.consumption_kg_per_100km)?,
        added_mass_kg,
        reserve_left_kg: stowage.axle_reserve_kg.map(|reserve_kg| reserve_kg - added_mass_kg),
    })
}

/// The steps from the content to usable gas, range, mass and axle.
#[must_use]
pub fn stow_steps(filled: &Cylinder, contents: &Contents, stowage: &Stowage, stowed: &Stowed) -> Vec<Step> {
    let Stowage { cylinder_mass_kg, parts_mass_kg, consumption_kg_per_100km, left_kpa, .. } = *stowage;
    let Stowed { left_kg, usable_kg, range_km, added_mass_kg, .. } = *stowed;
    let left_rho = 1e3 * left_kg / filled.volume_l;
    let at = [left_kpa, filled.temperature_c];
    let step = |key, words, values: &[f64], result| Step::new(key, words, values, result, None);
    let mut all = vec![
        Step::new("left-density", ("ρ(p, T)", "p {} kPa, T {} °C"), &at, (left_rho, "kg/m³"), Source::Gerg2008),
        step("left-mass", ("m_l = ρ_l V / 1000", "{} · {} / 1000"), &[left_rho, filled.volume_l], (left_kg, "kg")),
        step("usable-mass", ("m_u = m - m_l", "{} - {}"), &[contents.mass_kg, left_kg], (usable_kg, "kg")),
        step("range", ("100 m_u / C", "100 · {} / {}"), &[usable_kg, consumption_kg_per_100km], (range_km, "km")),
        step(
            "added-mass",
            ("M = m_c + m_p + m", "{} + {} + {}"),
            &[cylinder_mass_kg, parts_mass_kg, contents.mass_kg],
            (added_mass_kg, "kg"),
        ),
    ];
    if let (Some(reserve), Some(left)) = (stowage.axle_reserve_kg, stowed.reserve_left_kg) {
        all.push(step("reserve-left", ("R - M", "{} - {}"), &[reserve, added_mass_kg], (left, "kg")));
    }
    all
}
