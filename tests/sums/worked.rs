//! Every worked sum redone with a pocket calculator from what is printed, and exactly from what is behind it.
//!
//! Three things are asked of each step that is arithmetic: with all digits its expression gives its result to nine
//! figures; with the figures printed it gives the printed result as nearly as those figures allow; and they allow enough.
//! A step that states a value of an equation of state has words in its expression and is taken as printed.

use fuelwright::calc::Step;
use fuelwright::calc::composition::{Composition, PRESETS, Shares};
use fuelwright::calc::cylinder::{self, Cylinder, FastFill};
use fuelwright::calc::due::{self, Duty, Precision, Reading};
use fuelwright::calc::economy::{self, FactorSet, Running};
use fuelwright::calc::fuel;
use fuelwright::calc::gas::{self, Gas};
use fuelwright::calc::heat::{self, Capacity, Device};
use fuelwright::calc::hose::{self, Carries, Hose};
use fuelwright::calc::lambda::{self, Exhaust, ExhaustFuel, PermissibleErrors};
use fuelwright::calc::leak::plan::{self, Planned, plan};
use fuelwright::calc::leak::units::{self, LeakGas, RateUnit, Regime};
use fuelwright::calc::leak::{self, Compressibility, DecayTest};
use fuelwright::calc::liquid::{self, Liquid};
use fuelwright::calc::nozzle::flow::{self, Flow};
use fuelwright::calc::nozzle::measured::{Measured, TestGas, coefficient, measured_steps};
use fuelwright::calc::petrol::{DENSITY_KG_M3, Petrol};
use fuelwright::calc::uncertainty::{self, Input, combine};
use fuelwright::calc::vaporiser::{Regulator, Vaporiser};
use fuelwright::calc::worked::{decimals, decimals_put_in};
use fuelwright::words::{Language, Words};
use time::macros::date;

use super::calculator::Calculator;
use super::cases::{methane, nitrogen, p60_b40, propane};
use super::reference::{close, within};

/// The expression with a text for each number, those below zero in brackets.
fn filled(step: &Step, texts: &[String]) -> String {
    let mut parts = step.put_in.split("{}");
    let mut out = parts.next().unwrap().to_owned();
    for (part, text) in parts.zip(texts) {
        let (open, close) = if text.starts_with('-') { ("(", ")") } else { ("", "") };
        out.extend([open, text, close, part]);
    }
    out
}

/// A number as the pages print it, without its groups.
fn printed(value: f64, decimals: u8) -> String {
    format!("{value:.*}", usize::from(decimals))
}

/// Half of the last of so many figures, noughts that are not printed counted in.
fn half_a_digit(value: f64, figures: i32) -> f64 {
    0.5 * 10f64.powf(value.abs().max(1e-300).log10().floor() + 1.0 - f64::from(figures))
}

/// Redoes one step; true when it was arithmetic.
fn redo(step: &Step) -> bool {
    let words = Words::new(Language::English);
    let key = format!("step-{}", step.key);
    assert!(words.find(&key).is_some(), "no words for {key}");
    assert!(step.result.is_finite() && step.values.iter().all(|v| v.is_finite()), "{step:?}");
    assert_eq!(step.put_in.matches("{}").count(), step.values.len(), "{step:?}");
    if !Calculator::knows(&step.put_in) {
        return false;
    }
    let exact: Vec<String> = step.values.iter().map(f64::to_string).collect();
    let value = Calculator::value_of(&filled(step, &exact));
    let scale = step.result.abs().max(1e-12);
    assert!((value - step.result).abs() <= 1e-8 * scale, "{}: {value}, {step:?}", filled(step, &exact));

    let mut texts: Vec<String> = step.values.iter().map(|v| printed(*v, decimals_put_in(*v, step.figures))).collect();
    let expression = filled(step, &texts);
    let redone = Calculator::value_of(&expression);
    // How far the rounding of each number can move the result.
    let mut room = 0.0;
    let mut moved: Vec<f64> = Vec::new();
    for value in &step.values {
        let places = decimals_put_in(*value, step.figures);
        let rounded: f64 = printed(*value, places).parse().unwrap();
        // A number that stands in several places is one rounding.
        if (rounded - value).abs() > 1e-12 * rounded.abs() && !moved.contains(value) {
            moved.push(*value);
            let kept = texts.clone();
            for (text, _) in texts.iter_mut().zip(&step.values).filter(|(_, other)| other.total_cmp(value).is_eq()) {
                *text = format!("{:.15}", rounded + half_a_digit(*value, step.figures));
            }
            room += (Calculator::value_of(&filled(step, &texts)) - redone).abs();
            texts = kept;
        }
    }
    let shown: f64 = printed(step.result, decimals(step.result, step.result_figures)).parse().unwrap();
    let last = half_a_digit(step.result, step.result_figures);
    assert!(
        (redone - shown).abs() <= 1.05 * room + last + 1e-9 * scale,
        "{expression} is {redone}, shown {shown}, {step:?}"
    );
    assert!(room <= 3e-4 * scale, "{expression}: its figures leave {room} open in {}", step.result);
    true
}

/// Redoes all; each step has its own key, and at least `least` are arithmetic.
fn redo_all(steps: &[Step], least: usize) {
    let mut keys: Vec<_> = steps.iter().map(|step| step.key).collect();
    keys.sort_unstable();
    keys.dedup();
    assert_eq!(keys.len(), steps.len(), "a key twice: {keys:?}");
    let redone = steps.iter().filter(|step| redo(step)).count();
    assert!(redone >= least, "{redone} of {} were arithmetic", steps.len());
}

fn find<'a>(steps: &'a [Step], key: &str) -> &'a Step {
    steps.iter().find(|step| step.key == key).unwrap_or_else(|| panic!("no step {key}"))
}

fn olefinic() -> Composition {
    Composition::from_mole(Shares {
        propane: 0.45,
        propene: 0.15,
        n_butane: 0.25,
        isobutane: 0.1,
        ethane: 0.02,
        n_pentane: 0.03,
        ..Shares::default()
    })
    .unwrap()
}

#[test]
fn a_fuel_is_redone() {
    for composition in PRESETS.map(|preset| preset.composition).into_iter().chain([olefinic(), p60_b40()]) {
        let found = fuel::fuel(&composition).unwrap();
        redo_all(&fuel::steps(&composition, &found), 11);
    }
    // Worked example: 49.706 g/mol, 46.05 MJ/kg, 15.58, 2.588, octane 93.9.
    let steps = fuel::steps(&p60_b40(), &fuel::fuel(&p60_b40()).unwrap());
    close("M", find(&steps, "molar-mass").result, 49.706, 0.001);
    close("H", find(&steps, "net-energy-by-mole").result, 46.05, 0.01);
    close("L", find(&steps, "air-need-by-mole").result, 15.58, 0.005);
    close("MON", find(&steps, "octane").result, 93.9, 0.1);
}

#[test]
fn a_bubble_pressure_is_redone_as_far_as_hands_reach() {
    for composition in [p60_b40(), propane(), olefinic(), PRESETS[5].composition] {
        for temperature_c in [-25.0, 0.0, 15.0, 37.8, 65.0] {
            let liquid = Liquid { composition, temperature_c };
            let found = liquid::vapour_pressure(&liquid).unwrap();
            redo_all(&liquid::vapour_pressure_steps(&liquid, &found).unwrap(), 3);
        }
    }
    // Worked example at 15 C: 731.6 and 176.2 kPa, Raoult 509.4, equation of state 495.3, corrected 496.4.
    let liquid = Liquid { composition: p60_b40(), temperature_c: 15.0 };
    let steps = liquid::vapour_pressure_steps(&liquid, &liquid::vapour_pressure(&liquid).unwrap()).unwrap();
    close("propane", find(&steps, "saturation-propane").result, 731.6, 0.1);
    close("butane", find(&steps, "saturation-n-butane").result, 176.2, 0.1);
    close("Raoult", find(&steps, "raoult").result, 509.4, 0.2);
    close("plain", find(&steps, "bubble-plain").result, 495.3, 0.2);
    close("corrected", find(&steps, "bubble").result, 496.4, 0.2);
}

#[test]
fn above_a_critical_temperature_no_raoult_line_is_drawn() {
    let liquid = Liquid { composition: olefinic(), temperature_c: 40.0 };
    let steps = liquid::vapour_pressure_steps(&liquid, &liquid::vapour_pressure(&liquid).unwrap()).unwrap();
    assert!(steps.iter().all(|step| step.key != "raoult" && step.key != "saturation-ethane"));
    redo_all(&steps, 6);
}

#[test]
fn a_liquid_density_is_redone() {
    for composition in [p60_b40(), propane(), olefinic()] {
        for temperature_c in [-30.0, 15.0, 60.0] {
            let liquid = Liquid { composition, temperature_c };
            redo_all(&liquid::density_steps(&liquid, &liquid::density(&liquid).unwrap()), 8);
        }
    }
    let liquid = Liquid { composition: p60_b40(), temperature_c: 15.0 };
    let steps = liquid::density_steps(&liquid, &liquid::density(&liquid).unwrap());
    close("density", find(&steps, "liquid-density").result, 543.5, 0.1);
}

#[test]
fn a_gas_state_is_redone() {
    for (composition, pressure_kpa, temperature_c) in [
        (p60_b40(), 217.0, 50.0),
        (methane(), 20_000.0, 15.0),
        (nitrogen(), 401.325, 20.5),
        (olefinic(), 250.0, 60.0),
        (PRESETS[10].composition, 5_000.0, 40.0),
    ] {
        let gas = Gas { composition, pressure_kpa, temperature_c };
        redo_all(&gas::steps(&gas, &gas::gas_state(&gas).unwrap()), 3);
    }
}

fn through_nozzle() -> Flow {
    Flow {
        composition: p60_b40(),
        upstream_kpa: 217.0,
        downstream_kpa: 97.0,
        temperature_c: 50.0,
        diameter_mm: 2.2,
        discharge_coefficient: 0.80,
    }
}

#[test]
fn a_nozzle_flow_is_redone_choked_and_not_and_backwards() {
    let base = through_nozzle();
    for flow in [
        base,
        Flow { downstream_kpa: 140.0, ..base },
        Flow { downstream_kpa: 210.0, ..base },
        Flow { composition: methane(), upstream_kpa: 900.0, downstream_kpa: 35.0, ..base },
        Flow { composition: nitrogen(), upstream_kpa: 250.0, downstream_kpa: 200.0, temperature_c: 20.0, ..base },
    ] {
        let flowing = flow::flow(&flow).unwrap();
        redo_all(&flow::steps(&flow, &flowing), 4);
        let measured = 0.9 * flowing.mass_flow_g_s;
        let coefficient = flow::discharge_from_measurement(&flow, measured).unwrap();
        within("coefficient", coefficient, 0.72, 1e-9);
        redo_all(&flow::discharge_steps(&flow, &flowing, measured, coefficient), 4);
    }
    // Worked example: 1.803 g/s.
    let steps = flow::steps(&base, &flow::flow(&base).unwrap());
    close("mass flow", find(&steps, "mass-flow").result, 1.803, 0.002);
    // Against a higher pressure nothing flows, and nothing is left to redo but that.
    let against = Flow { downstream_kpa: 300.0, ..base };
    let steps = flow::steps(&against, &flow::flow(&against).unwrap());
    assert!(find(&steps, "mass-flow").result.abs() < 1e-12 && steps.iter().all(|step| step.key != "flux"));
}

#[test]
fn a_cylinder_is_redone() {
    for (volume_l, pressure_kpa, temperature_c, at_temperature_c) in
        [(80.0, 20_000.0, 15.0, Some(-10.0)), (65.0, 16_101.325, 35.0, None), (120.0, 900.0, -5.0, Some(40.0))]
    {
        for composition in [methane(), PRESETS[9].composition] {
            let asked = Cylinder { composition, volume_l, pressure_kpa, temperature_c, at_temperature_c };
            let contents = cylinder::cylinder(&asked).unwrap();
            redo_all(&cylinder::steps(&asked, &contents), 3);
            let range_km = cylinder::range_km(contents.mass_kg, 0.2, 4.5).unwrap();
            assert!(redo(&cylinder::range_step(contents.mass_kg, 0.2, 4.5, range_km)));
        }
    }
}

fn decay() -> DecayTest {
    DecayTest {
        volume_l: 2.0,
        start_kpa: 401.3,
        end_kpa: 400.9,
        start_c: 20.0,
        end_c: 20.0,
        duration_min: 10.0,
        limit_cm3_h: 20.0,
        pressure_resolution_kpa: 0.1,
        pressure_standard_uncertainty_kpa: 0.05,
        temperature_standard_uncertainty_k: 0.1,
        volume_relative_standard_uncertainty: 0.05,
        reference_c: 15.0,
        reference_kpa: 101.325,
    }
}

#[test]
fn a_leak_test_is_redone_ideal_and_real() {
    let base = decay();
    for test in [
        base,
        DecayTest { end_kpa: 401.3, ..base },
        DecayTest { end_kpa: 398.0, ..base },
        DecayTest { end_kpa: 402.1, end_c: 20.4, ..base },
        DecayTest { start_kpa: 1_013.25, end_kpa: 1_012.75, volume_l: 0.537, duration_min: 37.5, ..base },
    ] {
        let result = leak::judge(&test, &Compressibility::IDEAL).unwrap();
        redo_all(&leak::steps(&test, &Compressibility::IDEAL, &result), 14);
        for composition in [nitrogen(), methane()] {
            let gas = Compressibility::of(&test, |kpa, c| gas::compressibility(&composition, kpa, c)).unwrap();
            let result = leak::judge(&test, &gas).unwrap();
            redo_all(&leak::steps(&test, &gas, &result), 14);
        }
    }
    // Worked example: c 34 126, q 46.6, from pressure 9.5, from temperature 22.5, from volume 2.3, U 49.1.
    let result = leak::judge(&base, &Compressibility::IDEAL).unwrap();
    let steps = leak::steps(&base, &Compressibility::IDEAL, &result);
    for (key, value, tolerance) in [
        ("leak-constant", 34_126.0, 1.0),
        ("leak-rate", 46.6, 0.05),
        ("leak-from-pressure", 9.5, 0.05),
        ("leak-from-temperature", 22.5, 0.05),
        ("leak-from-volume", 2.3, 0.05),
        ("leak-expanded", 49.1, 0.1),
    ] {
        close(key, find(&steps, key).result, value, tolerance);
    }
    let shares: f64 =
        ["pressure", "temperature", "volume"].map(|of| find(&steps, &format!("leak-share-{of}")).result).iter().sum();
    close("shares", shares, 100.0, 1e-9);
    // A tight system with the same gauge: 24.4 minutes.
    let tight = DecayTest { end_kpa: 401.3, ..base };
    let result = leak::judge(&tight, &Compressibility::IDEAL).unwrap();
    close("time", find(&leak::steps(&tight, &Compressibility::IDEAL, &result), "leak-needed-time").result, 24.4, 0.1);
}

#[test]
fn a_leak_rate_in_other_units_and_gases_is_redone() {
    for unit in RateUnit::ALL {
        for regime in [Regime::Viscous, Regime::Molecular] {
            let rate = unit.from_cm3_h(20.0).unwrap();
            redo_all(&units::steps(rate, unit, LeakGas::Air, LeakGas::Propane, regime).unwrap(), 7);
        }
    }
    // 20 cm3/h of air: 5.6e-4 Pa m3/s, 5.6 bubbles of a cubic millimetre a second.
    let steps = units::steps(20.0, RateUnit::Cm3PerHour, LeakGas::Air, LeakGas::Methane, Regime::Viscous).unwrap();
    within("Pa m3/s", find(&steps, "rate-pa-m3-s").result, 5.63e-4, 1e-3);
    close("bubbles", find(&steps, "rate-bubbles").result, 5.6, 0.05);
}

#[test]
fn lambda_is_redone_term_by_term_with_its_uncertainty() {
    for fuel in [ExhaustFuel::Petrol, ExhaustFuel::Lpg, ExhaustFuel::Cng] {
        for (co_percent, co2_percent, o2_percent, hc_ppm_hexane, nox_ppm) in
            [(0.2, 15.4, 0.2, 70.0, None), (0.0, 11.7, 0.0, 0.0, Some(40.0)), (5.59, 9.87, 3.18, 294.0, Some(1_500.0))]
        {
            let exhaust = Exhaust { fuel, co_percent, co2_percent, o2_percent, hc_ppm_hexane, nox_ppm };
            let lambda = lambda::lambda(&exhaust).unwrap();
            redo_all(&lambda::steps(&exhaust, lambda), 6);
            for errors in
                [PermissibleErrors::default(), PermissibleErrors { nox_ppm: 50.0, ..PermissibleErrors::default() }]
            {
                let expanded = lambda::lambda_uncertainty(&exhaust, &errors).unwrap().expanded().unwrap();
                redo_all(&lambda::uncertainty_steps(&exhaust, &errors, expanded), 5);
            }
        }
    }
}

#[test]
fn an_economy_is_redone() {
    for gas in [p60_b40(), propane(), methane(), PRESETS[9].composition] {
        for factors in FactorSet::ALL {
            for (petrol, conversion_minor, gas_price_minor_per_unit) in
                [(Petrol::E5, 120_000, 75.0), (Petrol::E10, 239_999, 89.9), (Petrol::E0, 1, 500.0)]
            {
                let running = Running {
                    gas,
                    petrol,
                    petrol_kg_m3: DENSITY_KG_M3,
                    consumption_l_per_100km: 8.35,
                    petrol_share: 0.07,
                    petrol_price_minor_per_l: 174.9,
                    gas_price_minor_per_unit,
                    conversion_minor,
                    km_per_year: 17_500.0,
                    factors,
                };
                let found = economy::economy(&running).unwrap();
                redo_all(&economy::steps(&running, &found), 7);
            }
        }
    }
}

#[test]
fn a_due_date_is_redone() {
    let reading = |date, km| Reading { date, km };
    let two = vec![reading(date!(2025 - 03 - 01), 41_200.0), reading(date!(2026 - 02 - 14), 59_730.0)];
    let mut four = two.clone();
    four.extend([reading(date!(2025 - 09 - 10), 51_000.0), reading(date!(2025 - 11 - 30), 5_512.0)]);
    for readings in [two, four, Vec::new()] {
        for (from, months, from_precision) in [
            (date!(2016 - 05 - 17), Some(120), Precision::Day),
            (date!(2026 - 12 - 31), Some(2), Precision::Day),
            (date!(2026 - 12 - 01), Some(1), Precision::Month),
            (date!(2021 - 07 - 01), Some(60), Precision::Year),
        ] {
            for km in [None, Some(20_000.0)] {
                let duty = Duty {
                    from,
                    months,
                    from_precision,
                    readings: readings.clone(),
                    km,
                    from_km: km.map(|_| 41_200.0),
                };
                let found = due::due(&duty).unwrap();
                let steps = due::steps(&duty, &found);
                redo_all(&steps, 3);
                // The months carry into the very year and month of the answer.
                let date = found.by_months_on.unwrap();
                close("year", find(&steps, "due-year").result, f64::from(date.year()), 0.0);
                close("month", find(&steps, "due-month").result, f64::from(u8::from(date.month())), 0.0);
                if let Some(on) = found.by_distance_on {
                    let last = readings.iter().map(|reading| reading.date).max().unwrap();
                    close("days", find(&steps, "due-days").result.floor(), (on - last).whole_days() as f64, 0.0);
                }
            }
        }
    }
}

#[test]
fn the_heat_of_a_vaporiser_and_of_a_regulator_is_redone() {
    let vaporiser = |composition| {
        Device::Vaporiser(Vaporiser {
            composition,
            container_c: -20.0,
            outlet_kpa: 217.0,
            outlet_c: 50.0,
            fuel_rate_g_s: heat::fuel_rate_g_s(&composition, 82.0, 0.28).unwrap(),
            coolant_drop_k: 8.0,
        })
    };
    let regulator = Device::Regulator(Regulator {
        composition: methane(),
        inlet_kpa: 20_000.0,
        inlet_c: -20.0,
        outlet_kpa: 297.0,
        outlet_c: 40.0,
        fuel_rate_g_s: heat::fuel_rate_g_s(&methane(), 82.0, 0.28).unwrap(),
        coolant_drop_k: 8.0,
    });
    for device in [vaporiser(p60_b40()), vaporiser(propane()), vaporiser(olefinic()), regulator] {
        for capacity in [None, Some(Capacity::Heat { heat_kw: 5.5 }), Some(Capacity::Engine { engine_kw: 140.0 })] {
            let asked = heat::Asked {
                device,
                rated_power_kw: Some(82.0),
                brake_efficiency: Some(0.28),
                capacity,
                changeover_c: matches!(device, Device::Vaporiser(_)).then_some(40.0),
            };
            let found = heat::sheet(&asked).unwrap();
            redo_all(&heat::steps(&asked, &found), 6 + 2 * usize::from(capacity.is_some()));
        }
    }
}

#[test]
fn a_hose_is_redone_laminar_turbulent_and_full_of_liquid() {
    let hose_of = |composition, carries, flow_g_s| Hose {
        composition,
        carries,
        pressure_kpa: 217.0,
        temperature_c: if carries == Carries::Gas { 50.0 } else { 15.0 },
        bore_mm: 9.5,
        length_m: 0.45,
        flow_g_s,
        fitting_velocity_heads: 1.5,
    };
    for asked in [
        hose_of(p60_b40(), Carries::Gas, 6.3601),
        hose_of(propane(), Carries::Gas, 0.05),
        hose_of(methane(), Carries::Gas, 2.2),
        hose_of(p60_b40(), Carries::Liquid, 6.3601),
        hose_of(PRESETS[1].composition, Carries::Liquid, 6.3601),
    ] {
        let found = hose::hose(&asked).unwrap();
        redo_all(&hose::steps(&asked, &found), 5);
    }
}

#[test]
fn a_cylinder_in_its_vehicle_and_a_measured_nozzle_are_redone() {
    let filled = Cylinder {
        composition: methane(),
        volume_l: 80.0,
        pressure_kpa: 20_000.0,
        temperature_c: 15.0,
        at_temperature_c: Some(40.0),
    };
    let contents = cylinder::cylinder(&filled).unwrap();
    let stowage = cylinder::Stowage {
        cylinder_mass_kg: 85.0,
        parts_mass_kg: 18.0,
        consumption_kg_per_100km: 4.4,
        left_kpa: 1_000.0,
        axle_reserve_kg: Some(180.0),
    };
    let stowed = cylinder::stow(&filled, &contents, &stowage).unwrap();
    redo_all(&cylinder::stow_steps(&filled, &contents, &stowage, &stowed), 5);
    let measured = Measured {
        gas: TestGas::Nitrogen,
        upstream_kpa: 250.0,
        downstream_kpa: 101.3,
        temperature_c: 20.0,
        bore_mm: 2.0,
        flow_l_min: 66.0,
        flow_at_c: 15.0,
        flow_uncertainty: 0.02,
        bore_uncertainty_mm: 0.01,
    };
    for measured in [measured, Measured { downstream_kpa: 180.0, gas: TestGas::Air, ..measured }] {
        let found = coefficient(&measured).unwrap();
        redo_all(&measured_steps(&measured, &found), 8);
    }
}

#[test]
fn the_plan_of_a_leak_test_is_redone() {
    let section = Planned {
        volume_l: 2.0,
        pressure_kpa: 400.0,
        temperature_c: 20.0,
        limit_cm3_h: 20.0,
        pressure_resolution_kpa: 0.1,
        pressure_standard_uncertainty_kpa: 0.05,
        temperature_standard_uncertainty_k: 0.1,
    };
    let found = plan(&section).unwrap();
    redo_all(&plan::steps(&section, &found).unwrap(), 7);
    let blind = Planned { temperature_standard_uncertainty_k: 0.0, pressure_resolution_kpa: 0.013, ..section };
    redo_all(&plan::steps(&blind, &plan(&blind).unwrap()).unwrap(), 7);
}

#[test]
fn a_fast_fill_is_redone_and_its_balance_closes() {
    for (composition, start_kpa, source_c) in [(methane(), 2_000.0, 15.0), (PRESETS[9].composition, 500.0, -10.0)] {
        let fill =
            FastFill { composition, start_kpa, start_c: 15.0, source_kpa: 25_000.0, source_c, end_kpa: 20_000.0 };
        let found = cylinder::fast_fill(&fill).unwrap();
        let steps = cylinder::fast_fill_steps(&fill, &found).unwrap();
        redo_all(&steps, 3);
        // First law: what came in brought its enthalpy, so that nothing is left over.
        let (before, after) = (find(&steps, "fill-start-balance").result, find(&steps, "fill-end-balance").result);
        close("balance", after, before, 1e-3 * before.abs());
    }
}

#[test]
fn an_uncertainty_budget_is_redone() {
    let input =
        |standard_uncertainty, degrees_of_freedom| Input { estimate: 1.0, standard_uncertainty, degrees_of_freedom };
    // JCGM 100:2008, H.1, table H.1: standard uncertainties in nm times their sensitivities; 32 nm, 16 degrees.
    let inputs = [
        input(25.0, Some(18.0)),
        input(5.8, Some(24.0)),
        input(3.9, Some(5.0)),
        input(6.7, Some(8.0)),
        input(2.9, None),
    ];
    for sensitivities in [[1.0; 5], [1.0, -1.0, 0.5, 2.0, 10.0]] {
        let combined = combine(&inputs, &sensitivities, &[]).unwrap();
        redo_all(&uncertainty::steps(&inputs, &sensitivities, &combined, 2.0), 3);
    }
    let one = [input(0.012, None)];
    let combined = combine(&one, &[3.0], &[]).unwrap();
    redo_all(&uncertainty::steps(&one, &[3.0], &combined, 2.0), 2);
}
