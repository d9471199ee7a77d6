//! Vaporiser, regulator, lines.

use fuelwright::calc::hose::{Carries, Hose, hose};
use fuelwright::calc::substance::Component;
use fuelwright::calc::vaporiser::{Regulator, Vaporiser, regulator, vaporiser};
use fuelwright::calc::{Caution, Composition, Error};

use crate::cases::{methane, p60_b40};
use crate::reference::{close, rows, within};

#[test]
fn vaporiser_heat_follows_the_reference() {
    for row in rows("lpg_vaporiser.csv") {
        let asked = Vaporiser {
            composition: row.composition(),
            container_c: row.number("container_c"),
            outlet_kpa: row.number("outlet_kpa"),
            outlet_c: row.number("outlet_c"),
            fuel_rate_g_s: 5.0,
            coolant_drop_k: 8.0,
        };
        let what = format!("{} {}", row.text("mixture"), asked.container_c);
        let tolerance = if row.has_propene() { 0.008 } else { 0.0025 };
        let got = vaporiser(&asked).unwrap_or_else(|error| panic!("{what}: {error}"));
        within(&what, got.heat_kj_kg, row.number("heat_kj_kg"), tolerance);
        within(&what, got.heat_w_per_kw_fuel, row.number("heat_w_per_kw_fuel"), tolerance + 0.0005);
    }
}

#[test]
fn the_vaporiser_of_a_75_kw_engine_needs_2_4_kw_and_5_litres_a_minute() {
    let asked = Vaporiser {
        composition: p60_b40(),
        container_c: 15.0,
        outlet_kpa: 220.0,
        outlet_c: 60.0,
        fuel_rate_g_s: 5.43,
        coolant_drop_k: 8.0,
    };
    let got = vaporiser(&asked).unwrap();
    close("kW", got.heat_kw, 2.44, 0.06);
    close("L/min", got.coolant_l_min, 5.0, 0.15);
    assert!(matches!(vaporiser(&Vaporiser { outlet_c: 0.0, ..asked }), Err(Error::Wet { .. })));
}

#[test]
fn regulator_cold_and_heat_follow_the_reference() {
    for row in rows("cng_regulator.csv") {
        let asked = Regulator {
            composition: row.composition(),
            inlet_kpa: row.number("inlet_kpa"),
            inlet_c: row.number("inlet_c"),
            outlet_kpa: row.number("outlet_kpa"),
            outlet_c: row.number("outlet_c"),
            fuel_rate_g_s: 5.0,
            coolant_drop_k: 8.0,
        };
        let what = format!("{} {} {}", row.text("gas"), asked.inlet_kpa, asked.inlet_c);
        let got = regulator(&asked).unwrap_or_else(|error| panic!("{what}: {error}"));
        close(&what, got.heat_kj_kg, row.number("heat_kj_kg"), 0.15);
        if !row.truth("below_dew") {
            close(&what, got.throttled_c, row.number("throttled_c"), 0.1);
        }
    }
}

#[test]
fn a_full_cylinder_freezes_its_regulator() {
    let asked = Regulator {
        composition: methane(),
        inlet_kpa: 20_000.0,
        inlet_c: 15.0,
        outlet_kpa: 300.0,
        outlet_c: 40.0,
        fuel_rate_g_s: 5.0,
        coolant_drop_k: 8.0,
    };
    let got = regulator(&asked).unwrap();
    assert!(matches!(got.cautions[..], [Caution::Freezing { .. }]));
    assert!(regulator(&Regulator { outlet_kpa: 21_000.0, ..asked }).is_err());
}

#[test]
fn line_drops_follow_the_reference() {
    for row in rows("line_drop.csv") {
        let component = Component::ALL.into_iter().find(|c| c.key() == row.text("gas")).unwrap();
        let asked = Hose {
            composition: Composition::pure(component),
            carries: if row.text("phase") == "gas" { Carries::Gas } else { Carries::Liquid },
            pressure_kpa: row.number("pressure_kpa"),
            temperature_c: row.number("temperature_c"),
            bore_mm: row.number("bore_mm"),
            length_m: row.number("length_m"),
            flow_g_s: row.number("flow_g_s"),
            fitting_velocity_heads: 0.0,
        };
        let got = hose(&asked).unwrap_or_else(|error| panic!("{}: {error}", row.text("gas")));
        within(row.text("gas"), got.drop_kpa, row.number("drop_kpa"), 0.03);
        within(row.text("gas"), got.velocity_m_s, row.number("velocity_m_s"), 0.005);
    }
}
