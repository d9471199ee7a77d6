//! Heat sheets, judged lines, a CNG cylinder in a vehicle, a measured nozzle, a nozzle sheet varied: against the published
//! points of the sums under them, and every step redone.

use fuelwright::calc::cylinder::{self, Cylinder, Stowage, cylinder as fill, stow, stow_steps};
use fuelwright::calc::decision::Verdict;
use fuelwright::calc::heat::{self, Asked, Capacity, Device, Heat};
use fuelwright::calc::hose::{self, Carries, Fit, Hose, Line, LineAsked, line};
use fuelwright::calc::nozzle::further::Change;
use fuelwright::calc::nozzle::measured::{Measured, TestGas, coefficient, measured_steps};
use fuelwright::calc::nozzle::{self, Flow, Sizing, duty_over_speed, flow, sensitivity, sheet};
use fuelwright::calc::vaporiser::{Regulator, Vaporiser, vaporiser};
use fuelwright::calc::{Composition, Error, Step};

use crate::calculator::Calculator;
use crate::cases::{methane, nitrogen, p60_b40, propane};
use crate::reference::{close, within};

/// Redoes every arithmetic step from all its digits; how many there were.
fn redo(steps: &[Step]) -> usize {
    let mut redone = 0;
    for step in steps {
        let mut parts = step.put_in.split("{}");
        let mut expression = parts.next().unwrap().to_owned();
        for (part, value) in parts.zip(&step.values) {
            expression = format!("{expression}({value:.15}){part}");
        }
        if Calculator::knows(&expression) {
            let value = Calculator::value_of(&expression);
            let scale = step.result.abs().max(1e-9);
            assert!((value - step.result).abs() <= 1e-8 * scale, "{}: {expression} is {value}, {step:?}", step.key);
            redone += 1;
        }
    }
    redone
}

/// 75 kW at an efficiency of 0.30, 15 C in the container, 220 kPa and 60 C at the rail.
fn lpg(capacity: Option<Capacity>) -> Asked {
    let vaporiser = Vaporiser {
        composition: p60_b40(),
        container_c: 15.0,
        outlet_kpa: 220.0,
        outlet_c: 60.0,
        fuel_rate_g_s: heat::fuel_rate_g_s(&p60_b40(), 75.0, 0.30).unwrap(),
        coolant_drop_k: 8.0,
    };
    Asked {
        device: Device::Vaporiser(vaporiser),
        rated_power_kw: Some(75.0),
        brake_efficiency: Some(0.30),
        capacity,
        changeover_c: Some(40.0),
    }
}

#[test]
fn the_worked_example_of_a_vaporiser_comes_out_and_is_redone() {
    let asked = lpg(Some(Capacity::Engine { engine_kw: 110.0 }));
    let found = heat::sheet(&asked).unwrap();
    // 5.43 g/s times 450 kJ/kg: 2.44 kW, 5.0 L/min at 8 K.
    close("g/s", asked.device.fuel_rate_g_s(), 5.429, 0.003);
    close("kW", found.heat.heat_kw(), 2.44, 0.06);
    close("L/min", found.heat.coolant_l_min(), 5.0, 0.15);
    // The dew temperature of this mix is 7 C at 250 kPa, lower at 220.
    let dew = found.heat.dew_temperature_c().unwrap();
    assert!((0.0..7.0).contains(&dew), "{dew}");
    close("margin", found.margin_k.unwrap(), 40.0 - dew, 1e-9);
    let judged = found.judged.unwrap();
    assert_eq!(judged.verdict, Verdict::Pass);
    close("share", judged.used_share, 75.0 / 110.0, 1e-9);
    assert!(redo(&heat::steps(&asked, &found)) >= 9);
}

#[test]
fn a_capacity_told_in_heat_is_judged_with_its_uncertainty() {
    let need = heat::sheet(&lpg(None)).unwrap().heat.heat_kw();
    assert!(heat::sheet(&lpg(None)).unwrap().judged.is_none());
    let verdict = |heat_kw: f64| {
        let asked = lpg(Some(Capacity::Heat { heat_kw }));
        let found = heat::sheet(&asked).unwrap();
        assert!(redo(&heat::steps(&asked, &found)) >= 9);
        let judged = found.judged.unwrap();
        close("P Q_told / Q", judged.engine_kw.unwrap(), 75.0 * heat_kw / need, 1e-6);
        judged.verdict
    };
    // Standard uncertainty 6.2 %: power 3 %, efficiency 5 %, composition 2 %.
    assert_eq!(verdict(need * 1.20), Verdict::Pass);
    assert_eq!(verdict(need * 1.05), Verdict::CannotTell);
    assert_eq!(verdict(need * 0.95), Verdict::CannotTell);
    assert_eq!(verdict(need * 0.80), Verdict::Fail);
    // In kW of engine without the engine's power nothing can be judged.
    let blind = Asked { rated_power_kw: None, ..lpg(Some(Capacity::Engine { engine_kw: 110.0 })) };
    assert!(heat::sheet(&blind).unwrap().judged.is_none());
    assert!(heat::sheet(&lpg(Some(Capacity::Heat { heat_kw: f64::NAN }))).is_err());
}

#[test]
fn one_input_changed_at_a_time_is_the_sum_made_anew() {
    let asked = lpg(None);
    let found = heat::sheet(&asked).unwrap();
    let Device::Vaporiser(one) = asked.device else { panic!("a vaporiser") };
    let [content, warmer, mix] = found.varied[..] else { panic!("{:?}", found.varied) };
    assert_eq!(content.change, heat::Change::Content { temperature_c: 15.0 });
    close("as it was", content.heat_kw, found.heat.heat_kw(), 1e-9);
    let anew = vaporiser(&Vaporiser { outlet_c: 70.0, ..one }).unwrap();
    close("warmer", warmer.heat_kw, anew.heat_kw, 1e-9);
    // Summer's mix rains earlier: 7 C against 14 C at 250 kPa in the reference for 60 and 30 % propane.
    assert!(mix.dew_temperature_c.unwrap() > found.heat.dew_temperature_c().unwrap());
    assert!(warmer.heat_kw > found.heat.heat_kw());
}

#[test]
fn a_full_cylinder_needs_249_kj_per_kg_and_freezes_without() {
    let regulator = Regulator {
        composition: methane(),
        inlet_kpa: 20_000.0,
        inlet_c: 15.0,
        outlet_kpa: 300.0,
        outlet_c: 40.0,
        fuel_rate_g_s: 5.0,
        coolant_drop_k: 8.0,
    };
    let asked = Asked {
        device: Device::Regulator(regulator),
        rated_power_kw: None,
        brake_efficiency: None,
        capacity: Some(Capacity::Heat { heat_kw: 2.0 }),
        changeover_c: None,
    };
    let found = heat::sheet(&asked).unwrap();
    let Heat::Regulator(one) = &found.heat else { panic!("a regulator") };
    close("kJ/kg", one.heat_kj_kg, 249.0, 1.0);
    close("C", one.throttled_c, -74.0, 0.6);
    close("K/bar", one.mean_joule_thomson_k_per_bar, 0.45, 0.01);
    close("kW", one.heat_kw, 1.245, 0.01);
    assert_eq!(found.judged.unwrap().verdict, Verdict::Pass);
    assert_eq!(found.judged.unwrap().engine_kw, None, "the engine is not known");
    assert!(redo(&heat::steps(&asked, &found)) >= 6);
}

fn hose_of(bore_mm: f64, flow_g_s: f64) -> Hose {
    Hose {
        composition: propane(),
        carries: Carries::Gas,
        pressure_kpa: 220.0,
        temperature_c: 50.0,
        bore_mm,
        length_m: 0.6,
        flow_g_s,
        fitting_velocity_heads: 0.0,
    }
}

#[test]
fn lines_are_judged_and_redone() {
    let judge = |bore_mm, flow_g_s| {
        let asked = LineAsked { line: Line::RailSupply, hose: hose_of(bore_mm, flow_g_s), duty: None };
        let found = line(&asked).unwrap();
        assert!(redo(&hose::steps(&asked.hose, &found.drop)) >= 5);
        found
    };
    // Propane gas, 220 kPa, 50 C, 5 g/s through 0.6 m of 10 mm: 17.1 m/s, 0.66 kPa.
    let wide = judge(10.0, 5.0);
    close("m/s", wide.drop.velocity_m_s, 17.1, 0.1);
    close("kPa", wide.drop.drop_kpa, 0.66, 0.02);
    assert_eq!(wide.fit, Fit::WideEnough);
    let narrow = judge(6.0, 5.0);
    assert_eq!(narrow.fit, Fit::TooNarrow);
    // The least bore named would do, a tenth less would not.
    let least = narrow.least_bore_mm.unwrap();
    assert!((6.0..10.0).contains(&least), "{least}");
    assert_eq!(judge(least + 0.01, 5.0).fit, Fit::WideEnough);
    assert_eq!(judge(least - 0.1, 5.0).fit, Fit::Near);
    // Flow so slow that it is laminar has the other friction.
    assert!(judge(10.0, 0.05).drop.reynolds < 2_300.0);
}

#[test]
fn a_branch_peaks_by_its_duty_and_a_liquid_line_is_not_judged() {
    let branch = LineAsked { line: Line::Branch, hose: hose_of(5.0, 1.25), duty: Some(0.8) };
    let found = line(&branch).unwrap();
    close("peak", found.peak_velocity_m_s.unwrap(), found.drop.velocity_m_s / 0.8, 1e-9);
    let liquid = Hose { carries: Carries::Liquid, composition: p60_b40(), temperature_c: 15.0, ..hose_of(6.0, 5.0) };
    let found = line(&LineAsked { line: Line::Liquid, hose: liquid, duty: None }).unwrap();
    assert_eq!((found.fit, found.least_bore_mm), (Fit::NotJudged, None));
    assert!(redo(&hose::steps(&liquid, &found.drop)) >= 5);
}

#[test]
fn a_cylinder_in_a_vehicle_is_redone() {
    let filled = Cylinder {
        composition: methane(),
        volume_l: 80.0,
        pressure_kpa: 20_000.0,
        temperature_c: 15.0,
        at_temperature_c: Some(40.0),
    };
    let contents = fill(&filled).unwrap();
    let stowage = Stowage {
        cylinder_mass_kg: 85.0,
        parts_mass_kg: 18.0,
        consumption_kg_per_100km: 4.4,
        left_kpa: 1_000.0,
        axle_reserve_kg: Some(110.0),
    };
    let stowed = stow(&filled, &contents, &stowage).unwrap();
    // 13.42 kg; at 1 MPa methane is within 3 % of an ideal gas: 80 L hold 0.535 kg by that law.
    close("kg", contents.mass_kg, 13.42, 0.01);
    within("left", stowed.left_kg, 0.5358, 0.03);
    close("km", stowed.range_km, (contents.mass_kg - stowed.left_kg) / 4.4 * 100.0, 1e-6);
    close("over", stowed.reserve_left_kg.unwrap(), 110.0 - 85.0 - 18.0 - 13.42, 0.01);
    let mut steps = cylinder::steps(&filled, &contents);
    steps.extend(stow_steps(&filled, &contents, &stowage, &stowed));
    assert!(redo(&steps) >= 8);
    assert!(stow(&filled, &contents, &Stowage { left_kpa: 25_000.0, ..stowage }).is_err());
}

#[test]
fn a_measured_coefficient_gives_back_the_one_that_made_the_flow() {
    // What a nozzle of 0.72 lets through by the sum for nitrogen, which rests on the equation of state.
    let asked = Flow {
        composition: nitrogen(),
        upstream_kpa: 250.0,
        downstream_kpa: 101.325,
        temperature_c: 20.0,
        diameter_mm: 2.0,
        discharge_coefficient: 0.72,
    };
    let made = flow(&asked).unwrap();
    assert!(made.choked);
    // Nitrogen has 1.1851 kg/m3 at 15 C and 101.325 kPa.
    let measured = Measured {
        gas: TestGas::Nitrogen,
        upstream_kpa: 250.0,
        downstream_kpa: 101.325,
        temperature_c: 20.0,
        bore_mm: 2.0,
        flow_l_min: made.mass_flow_g_s * 60.0 / 1.1851,
        flow_at_c: 15.0,
        flow_uncertainty: 0.02,
        bore_uncertainty_mm: 0.01,
    };
    let found = coefficient(&measured).unwrap();
    close("C", found.discharge_coefficient, 0.72, 0.72 * 0.004);
    // 2 % of the flow, twice 0.5 % of the bore.
    close("u", found.standard_uncertainty / found.discharge_coefficient, 0.02236, 0.0001);
    assert!(redo(&measured_steps(&measured, &found)) >= 8);
    // Published flux of nitrogen at 250 kPa, 20 C into 101.325 kPa: 580.855 kg/(s m2).
    within("G", found.mass_flux_kg_s_m2, 580.855, 0.005);
    let open = Measured { downstream_kpa: 200.0, ..measured };
    let opened = coefficient(&open).unwrap();
    assert!(!opened.choked);
    assert!(redo(&measured_steps(&open, &opened)) >= 8);
    // Air is 1.7 % heavier in its root: the same litres mean more coefficient.
    let air = coefficient(&Measured { gas: TestGas::Air, ..measured }).unwrap();
    within("air", air.discharge_coefficient / found.discharge_coefficient, (28.965_46_f64 / 28.0134).sqrt(), 1e-6);
    // More than its bore lets through is refused at the flow.
    let Err(Error::Outside(outside)) = coefficient(&Measured { flow_l_min: 200.0, ..measured }) else {
        panic!("too much")
    };
    assert_eq!(outside.quantity, "flow_l_min");
}

fn nozzle_asked(fuel: Composition) -> nozzle::Asked {
    nozzle::Asked::Power(Sizing {
        fuel,
        rated_power_kw: 75.0,
        rated_rpm: 5_800.0,
        engine_cylinders: 4,
        brake_efficiency: 0.30,
        manifold_kpa: 97.0,
        supply_over_manifold_kpa: 120.0,
        regulator_follows: nozzle::engine::Follows::Manifold,
        gas_temperature_c: 50.0,
        dead_time_ms: 1.6,
        max_duty: 0.90,
        discharge_coefficient: 0.80,
        discharge_uncertainty: None,
        sizes_mm: vec![1.8, 2.0, 2.2, 2.4],
        idle_rpm: Some(800.0),
        idle_fuel_power_kw: Some(9.5),
        idle_manifold_kpa: 35.0,
        min_pulse_ms: 2.5,
    })
}

#[test]
fn a_nozzle_moves_with_its_inputs_as_published() {
    let asked = nozzle_asked(p60_b40());
    let sheet = sheet(&asked).unwrap();
    let nozzle = sheet.found.nozzle();
    let varied = sensitivity(&asked, nozzle.used_mm).unwrap();
    let bore = |at: usize| varied[at].then.unwrap().diameter_mm / nozzle.diameter_mm;
    // +10 K is -1.7 % mass flow, -10 kPa is -4.6 %: the bore goes with one over the root.
    assert_eq!(varied[0].change, Change::Warmer { by_k: 10.0 });
    within("+10 K", bore(0), (1.0_f64 / 0.983).sqrt(), 0.002);
    within("-10 kPa", bore(1), (1.0_f64 / 0.954).sqrt(), 0.002);
    // More butane is a denser gas: a smaller bore.
    assert!(bore(2) < 1.0 && bore(2) > 0.97, "{}", bore(2));
    assert!(varied.iter().all(|one| one.then.unwrap().duty_at_rated > 0.7));
    // At a rail as cold as its dew temperature the mix of the other season would rain.
    let nozzle::Asked::Power(mut cold) = asked else { panic!("from power") };
    cold.gas_temperature_c = 5.0;
    let cold = nozzle::Asked::Power(cold);
    assert!(sensitivity(&cold, 2.2).unwrap()[2].then.is_none());
}

#[test]
fn duty_goes_straight_up_with_speed_and_meets_the_limit_where_the_sheet_says() {
    let sheet = sheet(&nozzle_asked(p60_b40())).unwrap();
    let used = sheet.found.nozzle().candidate(2.2).unwrap();
    let points = duty_over_speed(&used, 5_800.0);
    close("first", points.first().unwrap().0, 500.0, 1e-9);
    let (rpm, duty) = *points.last().unwrap();
    assert!(rpm > used.limit_rpm && rpm > 5_800.0, "{rpm}");
    close("slope", duty / rpm, used.duty_at_rated / 5_800.0, 1e-12);
    close("limit", 0.90, used.limit_rpm * duty / rpm, 1e-9);
}
