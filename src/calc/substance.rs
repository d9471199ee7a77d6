//! Constants of the nine components, each with the document it comes from. A table of data, no sums.

use serde::{Deserialize, Serialize};

/// A component of a fuel gas.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[expect(missing_docs, reason = "the names are the chemical ones")]
pub enum Component {
    Methane,
    Ethane,
    Propane,
    Propene,
    NButane,
    Isobutane,
    NPentane,
    Nitrogen,
    CarbonDioxide,
}

impl Component {
    /// All components in the order used everywhere.
    pub const ALL: [Self; 9] = [
        Self::Methane,
        Self::Ethane,
        Self::Propane,
        Self::Propene,
        Self::NButane,
        Self::Isobutane,
        Self::NPentane,
        Self::Nitrogen,
        Self::CarbonDioxide,
    ];

    /// Key in files, forms and the programming interface.
    #[must_use]
    pub const fn key(self) -> &'static str {
        self.constants().key
    }

    /// The constants of this component.
    #[must_use]
    pub const fn constants(self) -> &'static Substance {
        &SUBSTANCES[self as usize]
    }
}

/// Constants of a pure component.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Substance {
    /// Key in files, forms and the programming interface.
    pub key: &'static str,
    /// Molar mass, g/mol (the values of AGA Report No. 8).
    pub molar_mass_g_mol: f64,
    /// Carbon atoms that burn; carbon dioxide has none.
    pub carbon: f64,
    /// Hydrogen atoms.
    pub hydrogen: f64,
    /// Gross calorific value at 25 C, kJ/mol, ideal gas (ISO 6976, from memory).
    pub gross_25c_kj_mol: f64,
    /// Gross calorific value at 15 C, kJ/mol, ideal gas (ISO 6976, from memory).
    pub gross_15c_kj_mol: f64,
    /// Motor octane blending value by liquid volume (ASTM D2598 table 1); none for what is not in LPG.
    pub motor_octane_blend: Option<f64>,
    /// Critical temperature of the reference equation of state, K.
    pub critical_temperature_k: f64,
    /// Critical pressure of the reference equation of state, kPa.
    pub critical_pressure_kpa: f64,
    /// Acentric factor, dimensionless.
    pub acentric_factor: f64,
    /// Wagner vapour-pressure coefficients (VDI Heat Atlas 2010 table D3.1); none where the sums need none.
    pub wagner: Option<Wagner>,
    /// COSTALD constants; none where the sums need none.
    pub costald: Option<Costald>,
    /// `c0..c4` of the ideal-gas heat capacity `cp0/R = c0 + c1 T + c2 T^2 + c3 T^3 + c4 T^4`, T in K
    /// (Poling, Prausnitz, O'Connell 2001, appendix A), each given without its power of ten: 1, 1e-3, 1e-5, 1e-8, 1e-11.
    pub heat_capacity: [f64; 5],
}

/// Coefficients of `ln(p/pc) = (A t + B t^1.5 + C t^2.5 + D t^5) / Tr` with their own critical point.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wagner {
    /// Critical temperature, K.
    pub critical_temperature_k: f64,
    /// Critical pressure, kPa.
    pub critical_pressure_kpa: f64,
    /// `A`, `B`, `C`, `D`.
    pub coefficients: [f64; 4],
}

/// Constants of the COSTALD liquid-volume correlation (Hankinson and Thomson 1979).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Costald {
    /// Characteristic volume, 1e-4 m3/mol.
    pub volume_1e4_m3_mol: f64,
    /// Acentric factor fitted with it.
    pub acentric_factor: f64,
}

const fn wagner(tc: f64, pc: f64, coefficients: [f64; 4]) -> Wagner {
    Wagner { critical_temperature_k: tc, critical_pressure_kpa: pc, coefficients }
}

const fn costald(volume_1e4_m3_mol: f64, acentric_factor: f64) -> Costald {
    Costald { volume_1e4_m3_mol, acentric_factor }
}

const SUBSTANCES: [Substance; 9] = [
    Substance {
        key: "methane",
        molar_mass_g_mol: 16.042_46,
        carbon: 1.0,
        hydrogen: 4.0,
        gross_25c_kj_mol: 890.58,
        gross_15c_kj_mol: 891.51,
        motor_octane_blend: None,
        critical_temperature_k: 190.564,
        critical_pressure_kpa: 4599.2,
        acentric_factor: 0.011_42,
        wagner: Some(wagner(190.56, 4599.0, [-6.023_88, 1.268_13, -0.569_48, -1.376_48])),
        costald: None,
        heat_capacity: [4.568, -8.975, 3.631, -3.407, 1.091],
    },
    Substance {
        key: "ethane",
        molar_mass_g_mol: 30.069_04,
        carbon: 2.0,
        hydrogen: 6.0,
        gross_25c_kj_mol: 1560.69,
        gross_15c_kj_mol: 1562.14,
        motor_octane_blend: Some(100.7),
        critical_temperature_k: 305.322,
        critical_pressure_kpa: 4872.2,
        acentric_factor: 0.099,
        wagner: Some(wagner(305.32, 4872.0, [-6.462_52, 1.357_60, -1.049_22, -2.037_89])),
        costald: Some(costald(1.458, 0.0983)),
        heat_capacity: [4.178, -4.427, 5.660, -6.651, 2.487],
    },
    Substance {
        key: "propane",
        molar_mass_g_mol: 44.095_62,
        carbon: 3.0,
        hydrogen: 8.0,
        gross_25c_kj_mol: 2219.17,
        gross_15c_kj_mol: 2221.10,
        motor_octane_blend: Some(97.1),
        critical_temperature_k: 369.89,
        critical_pressure_kpa: 4251.17,
        acentric_factor: 0.1521,
        wagner: Some(wagner(369.82, 4248.0, [-6.714_80, 1.383_88, -1.306_95, -2.568_27])),
        costald: Some(costald(2.001, 0.1532)),
        heat_capacity: [3.847, 5.131, 6.011, -7.893, 3.079],
    },
    Substance {
        key: "propene",
        molar_mass_g_mol: 42.079_74,
        carbon: 3.0,
        hydrogen: 6.0,
        gross_25c_kj_mol: 2058.02,
        gross_15c_kj_mol: 2059.43,
        motor_octane_blend: Some(84.9),
        critical_temperature_k: 364.211,
        critical_pressure_kpa: 4554.99,
        acentric_factor: 0.146,
        wagner: Some(wagner(365.57, 4665.0, [-6.665_99, 1.434_30, -1.393_24, -2.468_83])),
        costald: Some(costald(1.829, 0.1455)),
        heat_capacity: [3.834, 3.893, 4.688, -6.013, 2.283],
    },
    Substance {
        key: "n_butane",
        molar_mass_g_mol: 58.1222,
        carbon: 4.0,
        hydrogen: 10.0,
        gross_25c_kj_mol: 2877.40,
        gross_15c_kj_mol: 2879.76,
        motor_octane_blend: Some(89.6),
        critical_temperature_k: 425.125,
        critical_pressure_kpa: 3796.0,
        acentric_factor: 0.200_81,
        wagner: Some(wagner(425.13, 3796.0, [-7.085_62, 1.793_35, -2.000_03, -2.319_75])),
        costald: Some(costald(2.544, 0.2008)),
        heat_capacity: [5.547, 5.536, 8.057, -10.571, 4.134],
    },
    Substance {
        key: "isobutane",
        molar_mass_g_mol: 58.1222,
        carbon: 4.0,
        hydrogen: 10.0,
        gross_25c_kj_mol: 2868.20,
        gross_15c_kj_mol: 2870.58,
        motor_octane_blend: Some(97.6),
        critical_temperature_k: 407.81,
        critical_pressure_kpa: 3629.0,
        acentric_factor: 0.183_53,
        wagner: Some(wagner(407.81, 3629.0, [-6.906_75, 1.577_40, -1.801_60, -2.428_93])),
        costald: Some(costald(2.568, 0.1825)),
        heat_capacity: [3.351, 17.883, 5.477, -8.100, 3.243],
    },
    Substance {
        key: "n_pentane",
        molar_mass_g_mol: 72.148_78,
        carbon: 5.0,
        hydrogen: 12.0,
        gross_25c_kj_mol: 3535.77,
        gross_15c_kj_mol: 3538.60,
        motor_octane_blend: Some(62.6),
        critical_temperature_k: 469.7,
        critical_pressure_kpa: 3367.52,
        acentric_factor: 0.251_03,
        wagner: Some(wagner(469.66, 3369.0, [-7.364_01, 1.943_58, -2.471_91, -2.347_57])),
        costald: Some(costald(3.113, 0.2522)),
        heat_capacity: [7.554, -0.368, 11.846, -14.939, 5.753],
    },
    Substance {
        key: "nitrogen",
        molar_mass_g_mol: 28.0134,
        carbon: 0.0,
        hydrogen: 0.0,
        gross_25c_kj_mol: 0.0,
        gross_15c_kj_mol: 0.0,
        motor_octane_blend: None,
        critical_temperature_k: 126.192,
        critical_pressure_kpa: 3395.8,
        acentric_factor: 0.0372,
        wagner: None,
        costald: None,
        heat_capacity: [3.539, -0.261, 0.007, 0.157, -0.099],
    },
    Substance {
        key: "carbon_dioxide",
        molar_mass_g_mol: 44.0095,
        carbon: 0.0,
        hydrogen: 0.0,
        gross_25c_kj_mol: 0.0,
        gross_15c_kj_mol: 0.0,
        motor_octane_blend: None,
        critical_temperature_k: 304.128,
        critical_pressure_kpa: 7377.3,
        acentric_factor: 0.223_94,
        wagner: None,
        costald: None,
        heat_capacity: [3.259, 1.356, 1.502, -2.374, 1.056],
    },
];

/// Dry air: molar mass, g/mol (ISO 6976, from memory).
pub const AIR_MOLAR_MASS_G_MOL: f64 = 28.965_46;
/// Dry air: mole fraction of oxygen.
pub const AIR_OXYGEN_SHARE: f64 = 0.209_46;
/// Dry air: density at 15 C and 101.325 kPa, kg/m3 (ISO 6976, from memory).
pub const AIR_DENSITY_15C_KG_M3: f64 = 1.225_410;
/// Heat of vaporisation of water at 25 C, kJ/mol (ISO 6976, from memory).
pub const WATER_VAPORISATION_25C_KJ_MOL: f64 = 44.016;
