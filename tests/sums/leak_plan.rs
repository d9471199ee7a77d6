//! Planning a pressure-decay test: figures worked by hand from the budget at rate zero.

use fuelwright::calc::leak::LeakWarning;
use fuelwright::calc::leak::plan::{Planned, has_settled, needed_gauge_kpa, plan};

use super::reference::close;

fn section(volume_l: f64) -> Planned {
    Planned {
        volume_l,
        pressure_kpa: 400.0,
        temperature_c: 20.0,
        limit_cm3_h: 20.0,
        pressure_resolution_kpa: 0.1,
        pressure_standard_uncertainty_kpa: 0.05,
        temperature_standard_uncertainty_k: 0.1,
    }
}

fn fine(volume_l: f64) -> Planned {
    Planned {
        pressure_resolution_kpa: 0.01,
        pressure_standard_uncertainty_kpa: 0.01,
        temperature_standard_uncertainty_k: 0.02,
        ..section(volume_l)
    }
}

#[test]
fn a_larger_section_needs_a_longer_test() {
    for (section, minutes, tolerance) in [
        (section(0.5), 6.1, 0.05),
        (section(2.0), 24.4, 0.05),
        (section(5.0), 61.0, 0.5),
        (fine(0.5), 1.2, 0.05),
        (fine(2.0), 4.8, 0.05),
        (fine(5.0), 12.0, 0.5),
    ] {
        close("minutes", plan(&section).unwrap().needed_duration_min.unwrap(), minutes, tolerance);
    }
}

/// 80 l at 20 MPa: about 34 days. Such a section is proved with foam or a detector.
#[test]
fn a_full_cylinder_would_need_weeks_and_says_so() {
    let full = Planned {
        volume_l: 80.0,
        pressure_kpa: 20_000.0,
        temperature_c: 15.0,
        pressure_resolution_kpa: 1.0,
        pressure_standard_uncertainty_kpa: 2.0,
        ..section(80.0)
    };
    let plan = plan(&full).unwrap();
    close("days", plan.needed_duration_min.unwrap() / 1_440.0, 34.0, 1.0);
    assert_eq!(plan.warnings, [LeakWarning::IdealGasAboveItsRange]);
}

/// Worked by hand: 15 cm3/h out of 1 l lowers the pressure by 1.52 kPa in an hour, near the reference temperature.
#[test]
fn a_leak_at_the_limit_lowers_the_pressure_by_boyles_law() {
    let one_litre = Planned { limit_cm3_h: 15.0, temperature_c: 15.0, ..section(1.0) };
    close("in an hour", 6.0 * plan(&one_litre).unwrap().loss_at_limit_kpa_in_10_min, 1.52, 0.005);
    close("one kelvin", plan(&section(2.0)).unwrap().one_kelvin_in_10_min_cm3_h, 159.0, 1.0);
}

#[test]
fn the_gauge_for_the_time_at_hand_is_the_one_the_plan_would_ask_for() {
    let gauge = needed_gauge_kpa(&section(2.0), 40.0).unwrap().unwrap();
    let with = Planned { pressure_resolution_kpa: 0.0, pressure_standard_uncertainty_kpa: gauge, ..section(2.0) };
    close("back", plan(&with).unwrap().needed_duration_min.unwrap(), 40.0, 1e-6);
    assert_eq!(needed_gauge_kpa(&section(2.0), 10.0), Ok(None));
}

#[test]
fn two_temperatures_agree_within_their_uncertainty() {
    assert_eq!(has_settled(20.0, 20.2, 0.1), Ok(true));
    assert_eq!(has_settled(20.0, 20.3, 0.1), Ok(false));
    assert_eq!(has_settled(20.3, 20.0, 0.1), Ok(false));
    assert_eq!(has_settled(f64::NAN, 20.0, 0.1).unwrap_err().quantity, "first_c");
}

#[test]
fn a_plan_names_its_own_fields() {
    assert_eq!(plan(&Planned { pressure_kpa: 0.0, ..section(1.0) }).unwrap_err().quantity, "pressure_kpa");
    assert_eq!(plan(&Planned { temperature_c: f64::NAN, ..section(1.0) }).unwrap_err().quantity, "temperature_c");
}
