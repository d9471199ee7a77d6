//! Leak rates between gases (`leak_gases.csv`), in other units, and kinetic theory as a second opinion.

use fuelwright::calc::leak::units::{
    LeakGas, RateUnit, Regime, at_other_pressure, bubbles_per_second, mass_g_h, through_same_leak,
};

use super::reference::{close, rows};

fn gas(name: &str) -> LeakGas {
    serde_json::from_value(serde_json::Value::from(name)).unwrap()
}

#[test]
fn rates_relative_to_air_are_those_of_the_reference() {
    let rows = rows("leak_gases.csv");
    assert_eq!(rows.len(), LeakGas::ALL.len());
    for row in rows {
        let fuel = gas(row.text("gas"));
        for (regime, column) in
            [(Regime::Viscous, "viscous_ratio_to_air"), (Regime::Molecular, "molecular_ratio_to_air")]
        {
            let expected = row.number(column);
            let got = through_same_leak(10.0, LeakGas::Air, fuel, regime).unwrap() / 10.0;
            close(&format!("{fuel:?} {regime:?}"), got, expected, 0.01 * expected);
        }
        let density = row.number("density_15c_kg_m3");
        close("g/h", mass_g_h(1_000.0, fuel).unwrap(), density, 0.01 * density);
    }
}

/// Chapman and Enskog with Lennard-Jones parameters and collision integral of Neufeld (R. C. Reid, J. M. Prausnitz, B. E.
/// Poling, The Properties of Gases and Liquids, 9-3 and appendix B; from memory). The theory holds to a few per cent.
#[test]
fn viscosities_agree_with_kinetic_theory() {
    for (gas, sigma_angstrom, epsilon_k) in [
        (LeakGas::Air, 3.711, 78.6),
        (LeakGas::Nitrogen, 3.798, 71.4),
        (LeakGas::Helium, 2.551, 10.22),
        (LeakGas::Methane, 3.758, 148.6),
        (LeakGas::Ethane, 4.443, 215.7),
        (LeakGas::Propane, 5.118, 237.1),
        (LeakGas::Propene, 4.678, 298.9),
        (LeakGas::NButane, 4.687, 531.4),
        (LeakGas::Isobutane, 5.278, 330.1),
    ] {
        let t = 293.15 / epsilon_k;
        let omega =
            1.161_45 * f64::powf(t, -0.148_74) + 0.524_87 * f64::exp(-0.773_2 * t) + 2.161_78 * f64::exp(-2.437_87 * t);
        let viscosity = 2.669 * (gas.molar_mass_g_mol() * 293.15).sqrt() / (sigma_angstrom * sigma_angstrom * omega);
        close(&format!("{gas:?}"), viscosity, gas.viscosity_upa_s(), 0.04 * gas.viscosity_upa_s());
    }
}

/// Density of an ideal gas from the molar mass; the real gases are denser by their compressibility, butane most.
#[test]
fn densities_agree_with_the_gas_law() {
    for gas in LeakGas::ALL {
        let ideal = 101.325 * gas.molar_mass_g_mol() / (8.314_462_618 * 288.15);
        close(&format!("{gas:?}"), gas.density_kg_m3() / ideal, 1.0, 0.04);
    }
}

/// 1 cm3/h at 15 C is 2.815e-5 Pa m3/s; 20 cm3/h are 5.6e-4 Pa m3/s and 0.0245 g/h of air.
#[test]
fn a_rate_reads_the_same_in_other_units() {
    close("Pa m3/s", RateUnit::PaM3PerSecond.from_cm3_h(1.0).unwrap(), 2.815e-5, 5e-9);
    close("mbar l/s", RateUnit::MbarLPerSecond.from_cm3_h(1.0).unwrap(), 2.815e-4, 5e-8);
    close("normal", RateUnit::NormalCm3PerHour.from_cm3_h(20.0).unwrap(), 18.959, 1e-3);
    close("cm3/min", RateUnit::Cm3PerMinute.from_cm3_h(60.0).unwrap(), 1.0, 1e-12);
    close("air", mass_g_h(20.0, LeakGas::Air).unwrap(), 0.0245, 5e-5);
    close("methane", mass_g_h(20.0, LeakGas::Methane).unwrap(), 0.0136, 5e-5);
    close("propane", mass_g_h(20.0, LeakGas::Propane).unwrap(), 0.038, 5e-5);
    close("bubbles", bubbles_per_second(20.0).unwrap(), 5.6, 0.05);
    for unit in [
        RateUnit::Cm3PerHour,
        RateUnit::NormalCm3PerHour,
        RateUnit::Cm3PerMinute,
        RateUnit::PaM3PerSecond,
        RateUnit::MbarLPerSecond,
    ] {
        close("there and back", unit.to_cm3_h(unit.from_cm3_h(17.0).unwrap()).unwrap(), 17.0, 1e-12);
        assert!(unit.from_cm3_h(f64::NAN).is_err());
    }
}

#[test]
fn a_laminar_leak_goes_with_the_difference_of_squared_pressures() {
    // 3 and 2 atmospheres into 1: (4 - 1) / (9 - 1).
    close("rate", at_other_pressure(8.0, 303.975, 202.65, 101.325).unwrap(), 3.0, 1e-9);
    close("nothing drives it", at_other_pressure(8.0, 303.975, 101.325, 101.325).unwrap(), 0.0, 1e-12);
    assert_eq!(at_other_pressure(8.0, 101.325, 202.65, 101.325).unwrap_err().quantity, "from_kpa");
}
