//! LPG containers.

use fuelwright::calc::container::{Container, Contents, Stowage, container, stow};
use fuelwright::calc::liquid::density_kg_m3;
use fuelwright::calc::substance::Component;
use fuelwright::calc::{Caution, Composition, Error};

use crate::cases::{methane, p60_b40, propane};
use crate::reference::{close, rows, within};

fn fill(composition: Composition, gross_volume_l: f64, fill_fraction: f64, temperature_c: f64) -> Contents {
    container(&Container { composition, gross_volume_l, fill_fraction, temperature_c }).unwrap()
}

#[test]
fn contents_follow_the_reference() {
    let mut with_temperature = 0;
    for row in rows("lpg_container.csv") {
        let (fraction, c) = (row.number("fill_fraction"), row.number("temperature_c"));
        let what = format!("{} {fraction} {c}", row.text("mixture"));
        let got = fill(row.composition(), row.number("gross_volume_l"), fraction, c);
        within(&what, got.liquid_l, row.number("liquid_l"), 1e-6);
        within(&what, got.mass_kg, row.number("liquid_mass_kg"), 0.0025);
        within(&what, got.energy_mj, row.number("energy_mj"), 0.003);
        within(&what, got.pressure_kpa, row.number("pressure_kpa"), 0.01);
        if row.number("vapour_mass_kg") > 0.0 {
            within(&what, got.vapour_mass_kg, row.number("vapour_mass_kg"), 0.06);
        }
        if row.has("liquid_full_temperature_c") {
            let full_c = got.liquid_full_temperature_c.unwrap_or_else(|| panic!("{what}"));
            close(&what, full_c, row.number("liquid_full_temperature_c"), 1.3);
            with_temperature += 1;
        }
    }
    assert!(with_temperature > 80);
}

#[test]
fn the_density_ratio_of_a_liquid_full_container_follows_the_reference() {
    let mut seen = 0;
    for row in rows("liquid_full.csv") {
        let composition = match row.text("mixture") {
            "propane" => propane(),
            "p60_b40" => p60_b40(),
            "p30_b70" => named("p30_b70"),
            pure => Composition::pure(Component::ALL.into_iter().find(|c| c.key() == pure).unwrap()),
        };
        let (hot_c, reference) = (row.number("liquid_full_temperature_c"), row.number("fill_fraction_at_15c"));
        let ratio = |c: f64| Ok::<f64, Error>(density_kg_m3(&composition, c)? / density_kg_m3(&composition, 15.0)?);
        // Beyond a reduced temperature of 0.95 the density sum refuses.
        let (Ok(more), Ok(less)) = (ratio(hot_c - 1.3), ratio(hot_c + 1.3)) else {
            assert!(hot_c > 76.0, "{hot_c}");
            continue;
        };
        assert!(less < reference && reference < more, "{hot_c} C: {reference} not between {less} and {more}");
        seen += 1;
    }
    assert!(seen > 50, "{seen}");
}

/// A mixture by the name it has in the table of bubble points.
fn named(mixture: &str) -> Composition {
    let rows = rows("lpg_bubble.csv");
    rows.iter().find(|row| row.text("mixture") == mixture).unwrap_or_else(|| panic!("{mixture}")).composition()
}

#[test]
fn a_colder_fill_is_liquid_full_sooner() {
    let got = fill(propane(), 60.0, 0.8, 0.0);
    let (at, colder) = (got.liquid_full_temperature_c.unwrap(), got.liquid_full_if_filled_10_k_colder_c.unwrap());
    close("filled at -10 C", colder, 56.8, 1.3);
    assert!(colder < at);
    assert!(got.cautions.iter().any(|c| matches!(c, Caution::LiquidFullWithinReach { .. })));
}

#[test]
fn above_the_stop_is_cautioned_and_at_the_stop_is_not() {
    let above_stop = |c: &Caution| matches!(c, Caution::FilledAboveStop { .. });
    assert!(fill(p60_b40(), 60.0, 0.85, 15.0).cautions.iter().any(above_stop));
    assert!(!fill(p60_b40(), 60.0, 0.80, 15.0).cautions.iter().any(above_stop));
}

#[test]
fn range_and_axle_reserve_are_plain_sums() {
    let contents = fill(p60_b40(), 60.0, 0.8, 15.0);
    let stowage = Stowage {
        container_mass_kg: 32.0,
        parts_mass_kg: 14.0,
        consumption_l_per_100km: 10.0,
        left_behind_share: 0.04,
        axle_reserve_kg: Some(60.0),
    };
    let stowed = stow(&contents, &stowage).unwrap();
    close("usable", stowed.usable_l, 46.08, 1e-9);
    close("range", stowed.range_km, 460.8, 1e-9);
    // 48 L of 543.16 kg/m3 (reference) is 26.07 kg; vapour about 0.13 kg.
    close("added", stowed.added_mass_kg, 72.2, 0.15);
    assert!(stowed.reserve_left_kg.unwrap() < 0.0, "an overload shows as a negative reserve");
}

#[test]
fn out_of_range_is_said_by_name() {
    let ask = |gross_volume_l, fill_fraction, temperature_c| {
        container(&Container { composition: propane(), gross_volume_l, fill_fraction, temperature_c })
    };
    for (refused, quantity) in [
        (ask(0.0, 0.8, 15.0), "gross_volume_l"),
        (ask(60.0, 1.01, 15.0), "fill_fraction"),
        (ask(60.0, 0.0, 15.0), "fill_fraction"),
        (ask(60.0, f64::NAN, 15.0), "fill_fraction"),
        (ask(60.0, 0.8, 90.0), "temperature_c"),
    ] {
        let Err(Error::Outside(outside)) = refused else { panic!("{quantity} taken") };
        assert_eq!(outside.quantity, quantity);
    }
    let gas = Container { composition: methane(), gross_volume_l: 60.0, fill_fraction: 0.8, temperature_c: 15.0 };
    assert!(matches!(container(&gas), Err(Error::Unfit { .. })));
}
