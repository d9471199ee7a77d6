//! CNG cylinders.

use fuelwright::calc::cylinder::{Cylinder, FastFill, cylinder, fast_fill, range_km};
use fuelwright::calc::{Caution, Composition, Error, substance::Component};

use crate::cases::methane;
use crate::reference::{close, rows, within};

fn named(gas: &str) -> Composition {
    let rows = rows("cng_state.csv");
    rows.iter().find(|row| row.text("gas") == gas).unwrap_or_else(|| panic!("{gas}")).composition()
}

#[test]
fn contents_and_settled_pressure_follow_the_reference() {
    for row in rows("cng_cylinder.csv") {
        let asked = Cylinder {
            composition: row.composition(),
            volume_l: row.number("volume_l"),
            pressure_kpa: row.number("pressure_kpa"),
            temperature_c: row.number("temperature_c"),
            at_temperature_c: Some(row.number("at_temperature_c")),
        };
        let what = format!("{} {} kPa", row.text("gas"), asked.pressure_kpa);
        let got = cylinder(&asked).unwrap_or_else(|error| panic!("{what}: {error}"));
        within(&what, got.mass_kg, row.number("mass_kg"), 0.0005);
        within(&what, got.standard_m3, row.number("standard_m3"), 0.0005);
        within(&what, got.settled_pressure_kpa.unwrap(), row.number("settled_pressure_kpa"), 0.0003);
        within(&what, got.energy_mj, row.number("energy_mj"), 0.001);
    }
}

#[test]
fn a_fast_fill_ends_as_hot_as_the_energy_balance_of_the_reference() {
    for row in rows("cng_fast_fill.csv") {
        let fill = FastFill {
            composition: named(row.text("gas")),
            start_kpa: row.number("start_kpa"),
            start_c: row.number("start_c"),
            source_kpa: 25_000.0,
            source_c: row.number("source_c"),
            end_kpa: row.number("end_kpa"),
        };
        let got = fast_fill(&fill).unwrap();
        let gas = row.text("gas");
        close(gas, got.end_temperature_c, row.number("end_temperature_c"), 0.3);
        within(gas, got.end_density_kg_m3, row.number("end_density_kg_m3"), 0.002);
        within(gas, got.settled_15c_kpa, row.number("settled_15c_kpa"), 0.002);
        within(gas, got.filling_degree, row.number("filling_degree"), 0.002);
    }
}

#[test]
fn overfilling_is_cautioned_and_propene_refused() {
    let asked = Cylinder {
        composition: methane(),
        volume_l: 80.0,
        pressure_kpa: 21_000.0,
        temperature_c: 0.0,
        at_temperature_c: None,
    };
    let got = cylinder(&asked).unwrap();
    assert_eq!(got.settled_pressure_kpa, None);
    assert!(matches!(got.cautions[..], [Caution::AboveWorkingPressure { .. }]));
    let refused = cylinder(&Cylinder { composition: Composition::pure(Component::Propene), ..asked });
    assert!(matches!(refused, Err(Error::Unfit { component: "propene", .. })));
}

#[test]
fn range_is_what_can_be_used() {
    close("km", range_km(13.42, 1.0, 4.5).unwrap(), 276.0, 0.01);
    assert_eq!(range_km(1.0, 2.0, 4.5).unwrap_err().quantity, "left_kg");
}
