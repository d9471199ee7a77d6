//! The parts of a fuel by mass, each with its energy and air need: both add up by mass, so a reader can redo them.

use serde::{Deserialize, Serialize};

use super::fuel::fuel;
use super::substance::Component;
use super::{Composition, Error};

/// One component of a fuel.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Part {
    /// Key of the component.
    pub component: String,
    /// Mass fraction.
    pub mass_share: f64,
    /// Net calorific value of the pure component at 25 C, MJ/kg; zero when it does not burn.
    pub lower_heating_value_mj_kg: f64,
    /// Air need of the pure component, kg/kg; zero when it does not burn.
    pub stoichiometric_afr: f64,
}

/// The parts of a fuel: `H = sum(w_i H_i)`, `AFR = sum(w_i AFR_i)`, `w` by mass.
///
/// # Errors
/// As [`fuel`].
///
/// # Source
/// ISO 6976 (from memory) for the energies.
pub fn parts(composition: &Composition) -> Result<Vec<Part>, Error> {
    let mass = composition.mass().to_array();
    composition
        .present()
        .map(|(component, _)| {
            let burns = !matches!(component, Component::Nitrogen | Component::CarbonDioxide);
            let pure = burns.then(|| fuel(&Composition::pure(component))).transpose()?;
            Ok(Part {
                component: component.key().to_owned(),
                mass_share: mass[component as usize],
                lower_heating_value_mj_kg: pure.as_ref().map_or(0.0, |pure| pure.lower_heating_value_mj_kg),
                stoichiometric_afr: pure.as_ref().map_or(0.0, |pure| pure.stoichiometric_afr),
            })
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::composition::PRESETS;

    #[test]
    fn the_parts_add_up_to_the_whole() {
        for preset in PRESETS {
            let parts = parts(&preset.composition).unwrap();
            let whole = fuel(&preset.composition).unwrap();
            let sum = |of: fn(&Part) -> f64| parts.iter().map(|part| part.mass_share * of(part)).sum::<f64>();
            let (energy, air) = (sum(|p| p.lower_heating_value_mj_kg), sum(|p| p.stoichiometric_afr));
            assert!((energy / whole.lower_heating_value_mj_kg - 1.0).abs() < 1e-9, "{}", preset.key);
            assert!((air / whole.stoichiometric_afr - 1.0).abs() < 1e-9, "{}", preset.key);
        }
    }
}
