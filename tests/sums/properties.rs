//! What must hold for any gas and any engine, tried on many.

use fuelwright::calc::composition::{Composition, Shares};
use fuelwright::calc::container::{Container, container};
use fuelwright::calc::cylinder::{Cylinder, cylinder};
use fuelwright::calc::gas::{DEW_TEST_TO_KPA, Gas, gas_state};
use fuelwright::calc::liquid::{Liquid, density_kg_m3, dew_temperature_c, vapour_pressure};
use fuelwright::calc::nozzle::engine::Follows;
use fuelwright::calc::nozzle::{Flow, Sizing, Verdict, choking_share, flow, mass_flux, size};
use fuelwright::calc::{Error, Outside};
use proptest::prelude::*;

fn lpg(propane: f64, iso_of_butane: f64) -> Composition {
    let butane = 1.0 - propane;
    let typed = Shares {
        propane,
        n_butane: butane * (1.0 - iso_of_butane),
        isobutane: butane * iso_of_butane,
        ..Shares::default()
    };
    Composition::from_mole(typed).unwrap()
}

fn bubble_kpa(composition: Composition, temperature_c: f64) -> f64 {
    vapour_pressure(&Liquid { composition, temperature_c }).unwrap().pressure_kpa
}

/// A few cases every day; as many as `PROPTEST_CASES` says in the long run.
fn cases() -> ProptestConfig {
    if std::env::var_os("PROPTEST_CASES").is_some() {
        ProptestConfig::default()
    } else {
        ProptestConfig::with_cases(64)
    }
}

proptest! {
    #![proptest_config(cases())]

    #[test]
    fn vapour_pressure_rises_with_temperature_and_with_propane(x in 0.0..0.98, iso in 0.0..1.0, c in -30.0..69.0) {
        let here = bubble_kpa(lpg(x, iso), c);
        prop_assert!(bubble_kpa(lpg(x, iso), c + 1.0) > here);
        prop_assert!(bubble_kpa(lpg(x + 0.02, iso), c) > here);
    }

    #[test]
    fn liquid_gets_lighter_when_warmer(x in 0.0..1.0, iso in 0.0..1.0, c in -40.0..69.0) {
        let fuel = lpg(x, iso);
        prop_assert!(density_kg_m3(&fuel, c + 1.0).unwrap() < density_kg_m3(&fuel, c).unwrap());
    }

    #[test]
    fn a_mixture_boils_before_it_is_all_vapour(x in 0.05..0.95, iso in 0.0..1.0, c in -20.0..60.0) {
        let fuel = lpg(x, iso);
        let dew_c = dew_temperature_c(&fuel, bubble_kpa(fuel, c)).unwrap();
        prop_assert!(dew_c > c, "dew {dew_c} at bubble {c}");
    }

    #[test]
    fn flux_is_continuous_where_it_chokes_and_constant_below(
        p in 150.0..900.0, rho in 1.0..15.0, k in 1.02..1.6, below in 0.1..0.99,
    ) {
        let edge = p * choking_share(k).unwrap();
        let at = mass_flux(p, edge * (1.0 - 1e-9), rho, k).unwrap();
        let above = mass_flux(p, edge * (1.0 + 1e-7), rho, k).unwrap();
        let under = mass_flux(p, edge * below, rho, k).unwrap();
        prop_assert!(at.choked && under.choked && !above.choked);
        prop_assert!((above.mass_flux_kg_s_m2 / at.mass_flux_kg_s_m2 - 1.0).abs() < 1e-6);
        prop_assert!((under.mass_flux_kg_s_m2 - at.mass_flux_kg_s_m2).abs() < 1e-9);
    }

    #[test]
    fn settling_loses_no_gas(kpa in 1_000.0..20_000.0, c in 0.0..50.0, at in -10.0..50.0, n2 in 0.0..0.15) {
        let composition =
            Composition::from_mole(Shares { methane: 1.0 - n2, nitrogen: n2, ..Shares::default() }).unwrap();
        let asked =
            Cylinder { composition, volume_l: 80.0, pressure_kpa: kpa, temperature_c: c, at_temperature_c: Some(at) };
        let before = cylinder(&asked).unwrap();
        let settled = before.settled_pressure_kpa.unwrap();
        let after = cylinder(&Cylinder { pressure_kpa: settled, temperature_c: at, ..asked }).unwrap();
        prop_assert!((after.mass_kg / before.mass_kg - 1.0).abs() < 1e-5);
    }

    #[test]
    fn gas_beyond_its_bubble_pressure_is_refused(
        shares in prop::array::uniform5(0.01..1.0f64), c in -20.0..60.0, beyond in 1.01..2.0,
    ) {
        let sum: f64 = shares.iter().sum();
        let [propane, propene, n_butane, isobutane, n_pentane] = shares.map(|x| x / sum);
        let typed = Shares { propane, propene, n_butane, isobutane, n_pentane, ..Shares::default() };
        let composition = Composition::from_mole(typed).unwrap();
        let pressure_kpa = bubble_kpa(composition, c) * beyond;
        let refused = gas_state(&Gas { composition, pressure_kpa, temperature_c: c });
        // Above 3 MPa the dew test does not reach; what is colder than its pseudo-critical temperature is refused all the same.
        let is_too_cold = |outside: &Outside| outside.quantity == "temperature_c" && outside.least > c;
        let is_refused = match &refused {
            Err(Error::Wet { .. }) => true,
            Err(Error::Outside(outside)) => pressure_kpa >= DEW_TEST_TO_KPA && is_too_cold(outside),
            _ => false,
        };
        prop_assert!(is_refused, "{refused:?}");
    }

    #[test]
    fn an_engine_gets_a_bore_or_a_reason(
        kw in 1.0..300.0, rpm in 1_000.0..9_000.0, supply in 30.0..400.0, boost in 60.0..250.0,
        dead in 0.0..4.0, x in 0.0..1.0, largest in 0.5..6.0, idle_kw in 1.0..30.0,
    ) {
        let asked = Sizing {
            fuel: lpg(x, 0.3),
            rated_power_kw: kw,
            rated_rpm: rpm,
            engine_cylinders: 4,
            brake_efficiency: 0.3,
            manifold_kpa: boost,
            supply_over_manifold_kpa: supply,
            regulator_follows: Follows::Manifold,
            gas_temperature_c: 60.0,
            dead_time_ms: dead,
            max_duty: 0.9,
            discharge_coefficient: 0.65,
            discharge_uncertainty: None,
            sizes_mm: vec![0.4, largest],
            idle_rpm: Some(800.0),
            idle_fuel_power_kw: Some(idle_kw),
            idle_manifold_kpa: 35.0,
            min_pulse_ms: 2.5,
        };
        let Ok(got) = size(&asked) else { return Ok(()) };
        let is_chosen = got.diameter_mm <= largest.max(0.4);
        prop_assert_eq!(got.chosen_mm.is_some(), is_chosen);
        prop_assert_eq!(got.duty_at_rated <= 0.9 + 1e-9, is_chosen);
        prop_assert_eq!(got.limit_rpm >= rpm - 1e-6, is_chosen);
        let idles = got.idle_pulse_ms.unwrap() >= 2.5;
        prop_assert_eq!(got.verdict == Verdict::Fits, is_chosen && idles);
        prop_assert!(!got.reasons.is_empty() && got.diameter_mm.is_finite());
        let double = size(&Sizing { rated_power_kw: 2.0 * kw, ..asked }).unwrap();
        prop_assert!((double.diameter_mm / got.diameter_mm / std::f64::consts::SQRT_2 - 1.0).abs() < 1e-9);
    }

    #[test]
    fn hostile_numbers_are_refused_or_answered_with_numbers(a in any::<f64>(), b in any::<f64>(), c in any::<f64>()) {
        let composition = lpg(0.6, 0.0);
        for [a, b, c] in [[a, b, c], [a, 0.8, 15.0], [60.0, b, 15.0], [60.0, 0.8, c]] {
            let asked = Container { composition, gross_volume_l: a, fill_fraction: b, temperature_c: c };
            if let Ok(got) = container(&asked) {
                prop_assert!([got.mass_kg, got.energy_mj, got.pressure_kpa].iter().all(|x| x.is_finite()), "{got:?}");
            }
        }
        for [up, down, warm, bore] in [[a, b, c, a], [a, 97.0, 50.0, 2.0], [217.0, b, 50.0, 2.0], [217.0, 97.0, c, 2.0], [217.0, 97.0, 50.0, a]] {
            let asked = Flow {
                composition,
                upstream_kpa: up,
                downstream_kpa: down,
                temperature_c: warm,
                diameter_mm: bore,
                discharge_coefficient: 0.8,
            };
            if let Ok(got) = flow(&asked) {
                prop_assert!(got.mass_flow_g_s.is_finite() && got.mass_flow_g_s >= 0.0, "{got:?}");
            }
        }
    }

    #[test]
    fn a_gas_answers_with_numbers_or_says_why_not(
        shares in prop::array::uniform9(0.0..1.0f64), kpa in 0.01..40_000.0, c in -80.0..150.0,
    ) {
        let sum: f64 = shares.iter().sum();
        let composition = Composition::from_mole(Shares::from_array(shares.map(|x| x / sum))).unwrap();
        if let Ok(state) = gas_state(&Gas { composition, pressure_kpa: kpa, temperature_c: c }) {
            let all = [state.density_kg_m3, state.isentropic_exponent, state.speed_of_sound_m_s, state.heat_capacity_kj_kg_k];
            prop_assert!(all.iter().all(|x| x.is_finite() && *x > 0.0), "{state:?}");
        }
    }
}
