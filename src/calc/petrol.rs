//! Petrol as it is sold, for comparison and for sizing from petrol injection data.

use serde::{Deserialize, Serialize};

use super::substance::{AIR_MOLAR_MASS_G_MOL, AIR_OXYGEN_SHARE};

/// Density taken when none is given, kg/m3 at 15 C; EN 228 allows 720 to 775.
pub const DENSITY_KG_M3: f64 = 745.0;

const CARBON_G_MOL: f64 = 12.0107;
const HYDROGEN_G_MOL: f64 = 1.007_94;
const OXYGEN_G_MOL: f64 = 15.9994;
const CARBON_DIOXIDE_G_MOL: f64 = 44.0095;

/// Petrol by its ethanol grade.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Petrol {
    /// Without ethanol.
    E0,
    /// Up to 5 % ethanol.
    #[default]
    E5,
    /// Up to 10 % ethanol.
    E10,
}

impl Petrol {
    /// Atomic H/C and O/C (UN Regulation No. 83 for E5 and E10, from memory).
    #[must_use]
    pub const fn h_c_and_o_c(self) -> (f64, f64) {
        match self {
            Self::E0 => (1.85, 0.0),
            Self::E5 => (1.89, 0.016),
            Self::E10 => (1.93, 0.033),
        }
    }

    /// Net calorific value, MJ/kg (EN 16258:2012 annex A; E0 from memory).
    #[must_use]
    pub const fn lower_heating_value_mj_kg(self) -> f64 {
        match self {
            Self::E0 => 43.2,
            Self::E5 => 42.4,
            Self::E10 => 41.5,
        }
    }

    /// Stoichiometric air need, kg dry air per kg: `(1 + H/4 - O/2) / 0.20946 * M_air / M`, M per carbon atom.
    #[must_use]
    pub fn stoichiometric_afr(self) -> f64 {
        let (h, o) = self.h_c_and_o_c();
        (1.0 + h / 4.0 - o / 2.0) / AIR_OXYGEN_SHARE * AIR_MOLAR_MASS_G_MOL / self.mass_per_carbon_g_mol()
    }

    /// Carbon dioxide at the tailpipe, kg per kg petrol.
    #[must_use]
    pub fn co2_kg_per_kg(self) -> f64 {
        CARBON_DIOXIDE_G_MOL / self.mass_per_carbon_g_mol()
    }

    fn mass_per_carbon_g_mol(self) -> f64 {
        let (h, o) = self.h_c_and_o_c();
        CARBON_G_MOL + h * HYDROGEN_G_MOL + o * OXYGEN_G_MOL
    }
}
