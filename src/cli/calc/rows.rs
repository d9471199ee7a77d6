//! The contract of `fuelwright calc` as a table: which fields a row takes, which it gives, which of those may be null.

use super::answer::Answer;
use super::fields::Fields;
use super::refused::Refused;
use super::{gas, nozzle, proving, storage, vehicle};

/// One row of the contract.
pub struct What {
    /// What it is called.
    pub name: &'static str,
    /// Fields that must be there.
    pub takes: &'static [&'static str],
    /// Fields that may be left out.
    pub optional: &'static [&'static str],
    /// Fields of the answer, in order; method, sources and warnings follow.
    pub gives: &'static [&'static str],
    /// Those of them that may be null.
    pub may_be_null: &'static [&'static str],
    pub(super) answer: fn(&Fields) -> Result<Answer, Refused>,
}

/// Every row.
pub const WHATS: [What; 12] = [
    What {
        name: "vapour-pressure",
        takes: &["composition", "temperature_c"],
        optional: &[],
        gives: &["pressure_kpa"],
        may_be_null: &[],
        answer: gas::vapour_pressure,
    },
    What {
        name: "liquid-density",
        takes: &["composition", "temperature_c"],
        optional: &[],
        gives: &["density_kg_m3"],
        may_be_null: &[],
        answer: gas::liquid_density,
    },
    What {
        name: "gas-state",
        takes: &["composition", "pressure_kpa", "temperature_c"],
        optional: &[],
        gives: &["density_kg_m3", "compressibility", "isentropic_exponent", "speed_of_sound_m_s", "molar_mass_g_mol"],
        may_be_null: &[],
        answer: gas::state,
    },
    What {
        name: "fuel",
        takes: &["composition"],
        optional: &[],
        gives: &[
            "lower_heating_value_mj_kg",
            "stoichiometric_afr",
            "h_c_ratio",
            "molar_mass_g_mol",
            "motor_octane_number",
            "wobbe_mj_m3",
        ],
        may_be_null: &["motor_octane_number"],
        answer: gas::fuel,
    },
    What {
        name: "nozzle-flow",
        takes: &[
            "composition",
            "upstream_kpa",
            "downstream_kpa",
            "temperature_c",
            "diameter_mm",
            "discharge_coefficient",
        ],
        optional: &[],
        gives: &["mass_flow_g_s", "choked"],
        may_be_null: &[],
        answer: nozzle::flow,
    },
    What {
        name: "nozzle",
        takes: &[
            "fuel",
            "rated_power_kw",
            "rated_rpm",
            "engine_cylinders",
            "brake_efficiency",
            "manifold_kpa",
            "supply_over_manifold_kpa",
            "gas_temperature_c",
            "dead_time_ms",
            "max_duty",
            "discharge_coefficient",
            "sizes_mm",
        ],
        optional: &["idle_rpm", "idle_fuel_power_kw", "idle_manifold_kpa", "min_pulse_ms"],
        gives: &["diameter_mm", "chosen_mm", "duty_at_rated", "idle_pulse_ms", "verdict", "reasons"],
        may_be_null: &["chosen_mm", "idle_pulse_ms"],
        answer: nozzle::sized,
    },
    What {
        name: "container",
        takes: &["composition", "gross_volume_l", "fill_fraction", "temperature_c"],
        optional: &[],
        gives: &["liquid_l", "mass_kg", "liquid_full_temperature_c", "energy_mj"],
        may_be_null: &[],
        answer: storage::container,
    },
    What {
        name: "cylinder",
        takes: &["composition", "volume_l", "pressure_kpa", "temperature_c"],
        optional: &["at_temperature_c"],
        gives: &["mass_kg", "standard_m3", "settled_pressure_kpa", "energy_mj"],
        may_be_null: &["settled_pressure_kpa"],
        answer: storage::cylinder,
    },
    What {
        name: "leak",
        takes: &[
            "volume_l",
            "start_kpa",
            "end_kpa",
            "start_c",
            "end_c",
            "duration_min",
            "limit_cm3_h",
            "pressure_resolution_kpa",
            "pressure_standard_uncertainty_kpa",
            "temperature_standard_uncertainty_k",
            "volume_relative_standard_uncertainty",
        ],
        optional: &["composition", "reference_c", "reference_kpa"],
        gives: &[
            "rate_cm3_h",
            "expanded_uncertainty_cm3_h",
            "verdict",
            "needed_duration_min",
            "needed_pressure_standard_uncertainty_kpa",
        ],
        may_be_null: &["needed_duration_min", "needed_pressure_standard_uncertainty_kpa"],
        answer: proving::leak,
    },
    What {
        name: "lambda",
        takes: &["fuel", "co_percent", "co2_percent", "o2_percent", "hc_ppm_hexane"],
        optional: &["nox_ppm"],
        gives: &["lambda"],
        may_be_null: &[],
        answer: proving::lambda,
    },
    What {
        name: "vin",
        takes: &["vin"],
        optional: &[],
        gives: &["well_formed", "check_digit_expected", "check_digit_ok", "region"],
        may_be_null: &["check_digit_expected"],
        answer: vehicle::vin,
    },
    What {
        name: "due",
        takes: &["from", "months"],
        optional: &["from_precision", "readings", "km", "from_km"],
        gives: &["due_on", "by"],
        may_be_null: &[],
        answer: vehicle::due,
    },
];
