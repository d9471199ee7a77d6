//! What `fuelwright calc` says of a number that is just out of range: every number of every row.

use fuelwright::cli::calc::WHATS;
use serde_json::json;

use crate::contract::{example, numbers, set};
use crate::contract_refuses::{dotted, names};

/// A field, and a number just below and just above what it takes.
type Beyond = (&'static str, f64, f64);

/// Just beyond what each number takes, both ways. A number that has no row here is one that a sum forgot to check.
#[test]
fn a_number_out_of_range_is_named_with_what_it_takes() {
    let ranges: [(&str, &[Beyond]); 12] = [
        ("vapour-pressure", &[("temperature_c", -90.1, 96.1)]),
        ("liquid-density", &[("temperature_c", -180.0, 110.0)]),
        ("gas-state", &[("pressure_kpa", 0.0, 35_000.1), ("temperature_c", -60.2, 126.9)]),
        ("fuel", &[]),
        (
            "nozzle-flow",
            &[
                ("upstream_kpa", 0.0, 35_000.1),
                ("downstream_kpa", -0.1, 35_000.1),
                ("temperature_c", -60.2, 126.9),
                ("diameter_mm", 0.04, 50.1),
                ("discharge_coefficient", 0.04, 1.01),
            ],
        ),
        (
            "nozzle",
            &[
                ("rated_power_kw", 0.9, 1_001.0),
                ("rated_rpm", 299.0, 20_001.0),
                ("engine_cylinders", 0.0, 17.0),
                ("brake_efficiency", 0.09, 0.51),
                ("manifold_kpa", 19.0, 501.0),
                ("supply_over_manifold_kpa", 9.0, 2_001.0),
                ("gas_temperature_c", -60.2, 126.9),
                ("dead_time_ms", -0.1, 10.1),
                ("max_duty", 0.19, 1.01),
                ("discharge_coefficient", 0.04, 1.01),
                ("sizes_mm[2]", 0.29, 10.1),
                ("idle_rpm", 299.0, 3_001.0),
                ("idle_fuel_power_kw", 0.1, 101.0),
                ("idle_manifold_kpa", 14.0, 121.0),
                ("min_pulse_ms", -0.1, 20.1),
            ],
        ),
        (
            "container",
            &[("gross_volume_l", 0.9, 2_001.0), ("fill_fraction", 0.0, 1.001), ("temperature_c", -80.1, 80.1)],
        ),
        (
            "cylinder",
            &[
                ("volume_l", 0.4, 3_001.0),
                ("pressure_kpa", 0.0, 35_000.1),
                ("temperature_c", -60.2, 126.9),
                ("at_temperature_c", -60.1, 120.1),
            ],
        ),
        (
            "leak",
            &[
                ("volume_l", 0.0, 10_001.0),
                ("start_kpa", 0.9, 100_001.0),
                ("end_kpa", 0.9, 100_001.0),
                ("start_c", -60.1, 150.1),
                ("end_c", -60.1, 150.1),
                ("duration_min", 0.0, 525_601.0),
                ("limit_cm3_h", -0.1, 1.1e9),
                ("pressure_resolution_kpa", -0.1, 10_001.0),
                ("pressure_standard_uncertainty_kpa", -0.1, 10_001.0),
                ("temperature_standard_uncertainty_k", -0.1, 50.1),
                ("volume_relative_standard_uncertainty", -0.1, 1.1),
                ("reference_c", -60.1, 150.1),
                ("reference_kpa", 9.9, 1_001.0),
            ],
        ),
        (
            "lambda",
            &[
                ("co_percent", -0.1, 20.1),
                ("co2_percent", -0.1, 25.1),
                ("o2_percent", -0.1, 25.1),
                ("hc_ppm_hexane", -0.1, 100_001.0),
                ("nox_ppm", -0.1, 10_001.0),
            ],
        ),
        ("vin", &[]),
        (
            "due",
            &[
                ("months", -1.0, 1_201.0),
                ("km", -0.1, 10_000_001.0),
                ("from_km", -0.1, 10_000_001.0),
                ("readings[1].km", -0.1, 10_000_001.0),
            ],
        ),
    ];
    for (what, (name, fields)) in WHATS.iter().zip(&ranges) {
        assert_eq!(what.name, *name);
        for pointer in numbers(&example(name)) {
            let field = dotted(&pointer);
            if field.starts_with("composition.") || field.starts_with("fuel.") {
                for share in [-0.1, 1.1] {
                    let mut input = example(name);
                    set(&mut input, &pointer, json!(share));
                    let refused = names(name, &input.to_string(), &field);
                    assert_eq!((json!(refused.got), refused.takes.as_str()), (json!(share), "0 to 1"));
                }
                continue;
            }
            if ["sizes_mm[0]", "sizes_mm[1]", "sizes_mm[3]", "readings[0].km"].contains(&field.as_str()) {
                continue; // one of a list speaks for all
            }
            let row = fields.iter().find(|(known, ..)| *known == field);
            let (_, below, above) = row.unwrap_or_else(|| panic!("{name}: no range of {field} here"));
            for beyond in [*below, *above] {
                let mut input = example(name);
                set(&mut input, &pointer, json!(beyond));
                let refused = names(name, &input.to_string(), &field);
                assert_eq!(json!(refused.got), json!(beyond), "{name} {field}");
            }
        }
    }
}
