//! Flow through a nozzle, and its size.

use fuelwright::calc::Error;
use fuelwright::calc::nozzle::engine::Follows;
use fuelwright::calc::nozzle::flow::discharge_from_measurement;
use fuelwright::calc::nozzle::sizing::Spread;
use fuelwright::calc::nozzle::{
    Flow, FromPetrol, PetrolInjection, Reason, Setting, Sized, Sizing, Verdict, choking_share, flow, mass_flux, size,
    size_from_petrol,
};
use fuelwright::calc::petrol::Petrol;

use crate::cases::{nitrogen, p60_b40};
use crate::reference::{Row, close, rows, within};

#[test]
fn flow_follows_numerically_followed_isentropes() {
    for row in rows("nozzle_flow.csv") {
        let asked = Flow {
            composition: row.composition(),
            upstream_kpa: row.number("upstream_kpa"),
            downstream_kpa: row.number("downstream_kpa"),
            temperature_c: row.number("temperature_c"),
            diameter_mm: row.number("diameter_mm"),
            discharge_coefficient: row.number("discharge_coefficient"),
        };
        let what = format!("{} {} to {} kPa", row.text("gas"), asked.upstream_kpa, asked.downstream_kpa);
        let got = flow(&asked).unwrap_or_else(|error| panic!("{what}: {error}"));
        assert_eq!(got.choked, row.truth("choked"), "{what}");
        within(&what, got.mass_flow_g_s, row.number("mass_flow_g_s"), 0.005);
        within(&what, got.mass_flux_kg_s_m2, row.number("mass_flux_kg_s_m2"), 0.005);
        within(&what, got.choking_share, row.number("critical_pressure_ratio"), 0.01);
        if got.choked {
            // ISO 9300: C* = G sqrt(R T / M) / p.
            let kelvin = asked.temperature_c + 273.15;
            let root = (8.314_462_618 * kelvin / (asked.composition.molar_mass_g_mol() / 1e3)).sqrt();
            let critical_flow = got.mass_flux_kg_s_m2 * root / (asked.upstream_kpa * 1e3);
            within(&what, critical_flow, row.number("critical_flow_function"), 0.005);
        }
    }
}

#[test]
fn carbon_dioxide_of_a_textbook_chokes_at_767_kpa() {
    // Cengel and Cimbala, Fluid Mechanics, 2006, example 12.4: 1 400 kPa, k = 1.289.
    close("throat kPa", 1_400.0 * choking_share(1.289).unwrap(), 767.0, 0.5);
    for exponent in [1.0, 0.9, 2.1, f64::NAN] {
        assert_eq!(choking_share(exponent).unwrap_err().quantity, "isentropic_exponent");
    }
}

#[test]
fn nothing_flows_uphill() {
    for downstream_kpa in [200.0, 250.0] {
        let through = mass_flux(200.0, downstream_kpa, 4.0, 1.1).unwrap();
        assert!(through.mass_flux_kg_s_m2 == 0.0 && !through.choked);
    }
}

#[test]
fn a_measured_flow_gives_its_coefficient_back() {
    let asked = Flow {
        composition: nitrogen(),
        upstream_kpa: 201.325,
        downstream_kpa: 101.325,
        temperature_c: 20.0,
        diameter_mm: 2.2,
        discharge_coefficient: 0.71,
    };
    let measured = flow(&asked).unwrap().mass_flow_g_s;
    close("Cd", discharge_from_measurement(&asked, measured).unwrap(), 0.71, 1e-9);
    let Err(Error::Outside(outside)) = discharge_from_measurement(&asked, 10.0 * measured) else { panic!("taken") };
    assert_eq!(outside.quantity, "measured_g_s");
}

fn sizes() -> Vec<f64> {
    (15..=35).map(|tenths| f64::from(tenths) / 10.0).collect()
}

fn of_row(row: &Row) -> Sizing {
    Sizing {
        fuel: row.composition(),
        rated_power_kw: row.number("rated_power_kw"),
        rated_rpm: row.number("rated_rpm"),
        engine_cylinders: row.text("engine_cylinders").parse().unwrap(),
        brake_efficiency: row.number("brake_efficiency"),
        manifold_kpa: row.number("manifold_kpa"),
        supply_over_manifold_kpa: row.number("supply_over_manifold_kpa"),
        regulator_follows: Follows::Manifold,
        gas_temperature_c: row.number("gas_temperature_c"),
        dead_time_ms: row.number("dead_time_ms"),
        max_duty: row.number("max_duty"),
        discharge_coefficient: row.number("discharge_coefficient"),
        discharge_uncertainty: None,
        sizes_mm: sizes(),
        idle_rpm: Some(row.number("idle_rpm")),
        idle_fuel_power_kw: Some(row.number("idle_fuel_power_kw")),
        idle_manifold_kpa: 35.0,
        min_pulse_ms: 2.5,
    }
}

fn example() -> Sizing {
    let rows = rows("nozzle_sizing.csv");
    let row = rows.iter().find(|row| row.text("rated_power_kw") == "75").unwrap();
    of_row(row)
}

#[test]
fn sizes_follow_the_reference() {
    let mut none_reaches = 0;
    for row in rows("nozzle_sizing.csv") {
        let what = format!("{} {} kW", row.text("gas"), row.number("rated_power_kw"));
        let got = size(&of_row(&row)).unwrap_or_else(|error| panic!("{what}: {error}"));
        within(&what, got.fuel_per_cycle_mg, row.number("fuel_mg_per_cycle"), 0.001);
        assert_eq!(got.choked, row.truth("choked"), "{what}");
        within(&what, got.diameter_mm, row.number("diameter_mm"), 0.003);
        assert_eq!(got.chosen_mm, row.has("chosen_mm").then(|| row.number("chosen_mm")), "{what}");
        close(&what, got.used_mm, row.number("used_mm"), 1e-12);
        within(&what, got.duty_at_rated, row.number("duty_at_rated"), 0.006);
        within(&what, got.idle_pulse_ms.unwrap(), row.number("idle_pulse_ms"), 0.006);
        within(&what, got.limit_rpm, row.number("limit_rpm"), 0.006);
        if got.chosen_mm.is_some() {
            assert_eq!(got.verdict, Verdict::Fits, "{what}");
        } else {
            assert_eq!(got.verdict, Verdict::TooSmall, "{what}");
            none_reaches += 1;
        }
    }
    assert_eq!(none_reaches, 1);
}

#[test]
fn the_bore_grows_with_the_root_of_power_per_engine_cylinder() {
    // Same engine data throughout; bores computed with the isentropes of the reference.
    let published = [(10.0, 1.53), (15.0, 1.88), (20.0, 2.17), (25.0, 2.43), (30.0, 2.66), (35.0, 2.87), (40.0, 3.07)];
    for (kw_per_engine_cylinder, bore_mm) in published {
        let got = size(&Sizing { rated_power_kw: 4.0 * kw_per_engine_cylinder, ..example() }).unwrap();
        close("bore", got.diameter_mm, bore_mm, 0.011);
    }
}

#[test]
fn a_regulator_that_does_not_follow_the_manifold_makes_idle_pulses_shorter() {
    let follows = size(&example()).unwrap();
    let fixed = size(&Sizing { regulator_follows: Follows::Nothing, ..example() }).unwrap();
    within("bore", fixed.diameter_mm, follows.diameter_mm, 1e-12);
    // Choked at both: the flux goes with the supply pressure, 217 kPa against 155.
    let open = |sized: &Sized| sized.idle_pulse_ms.unwrap() - 1.6;
    within("open time", open(&follows) / open(&fixed), 217.0 / 155.0, 0.02);
}

#[test]
fn boost_that_unchokes_the_nozzle_is_said() {
    let rows = rows("nozzle_sizing.csv");
    let row = rows.iter().find(|row| !row.truth("choked")).unwrap();
    let got = size(&of_row(row)).unwrap();
    assert!(got.reasons.iter().any(|reason| matches!(reason, Reason::NotChoked { .. })), "{:?}", got.reasons);
}

#[test]
fn too_small_says_above_which_speed_and_what_would_help() {
    let got = size(&Sizing { sizes_mm: vec![1.8, 1.6], ..example() }).unwrap();
    assert_eq!((got.verdict, got.chosen_mm, got.used_mm), (Verdict::TooSmall, None, 1.8));
    assert!(got.duty_at_rated > 0.9);
    let Some(Reason::LeanAbove { limit_rpm, .. }) = got.reasons.first() else { panic!("{:?}", got.reasons) };
    assert!(*limit_rpm < 5_800.0);
    let Some(kpa) = got.reasons.iter().find_map(|reason| match reason {
        Reason::HigherSupplyWouldDo { supply_over_manifold_kpa, .. } => Some(*supply_over_manifold_kpa),
        _ => None,
    }) else {
        panic!("{:?}", got.reasons)
    };
    // The advice holds: with that pressure the size is just large enough.
    let helped = size(&Sizing { sizes_mm: vec![1.8], supply_over_manifold_kpa: kpa + 0.1, ..example() }).unwrap();
    assert_eq!(helped.verdict, Verdict::Fits);
    within("duty", helped.duty_at_rated, 0.9, 0.002);
}

#[test]
fn too_large_says_both_pulses_and_the_bore_that_would_do() {
    let got = size(&Sizing { sizes_mm: vec![4.0], min_pulse_ms: 5.0, ..example() }).unwrap();
    assert_eq!((got.verdict, got.chosen_mm), (Verdict::TooLarge, Some(4.0)));
    let short = got.reasons.iter().any(|reason| matches!(reason, Reason::IdlePulseShort { .. }));
    let between = got.reasons.iter().find_map(|reason| match reason {
        Reason::BoreBetweenWouldFit { from_mm, to_mm } => Some((*from_mm, *to_mm)),
        _ => None,
    });
    let (from_mm, to_mm) = between.unwrap();
    assert!(short && from_mm < to_mm);
    let fits = size(&Sizing { sizes_mm: vec![f64::midpoint(from_mm, to_mm)], min_pulse_ms: 5.0, ..example() }).unwrap();
    assert_eq!(fits.verdict, Verdict::Fits);
}

#[test]
fn when_some_suit_power_and_others_idle_none_fits() {
    let got = size(&Sizing { sizes_mm: vec![1.5, 1.8, 2.2, 2.6], min_pulse_ms: 8.5, ..example() }).unwrap();
    assert_eq!(got.verdict, Verdict::NoneFits);
    assert!(got.reasons.contains(&Reason::SizesForRatedPower { sizes_mm: vec![2.2, 2.6] }), "{:?}", got.reasons);
    assert!(got.reasons.contains(&Reason::SizesForIdle { sizes_mm: vec![1.5, 1.8] }), "{:?}", got.reasons);
}

#[test]
fn without_idle_data_idle_is_not_judged() {
    let got = size(&Sizing { idle_rpm: None, ..example() }).unwrap();
    assert_eq!((got.verdict, got.idle_pulse_ms), (Verdict::Fits, None));
    assert!(got.reasons.contains(&Reason::IdleUnknown));
}

#[test]
fn a_dead_time_that_leaves_no_time_is_refused() {
    let Err(Error::Outside(outside)) = size(&Sizing { dead_time_ms: 9.0, rated_rpm: 12_000.0, ..example() }) else {
        panic!("taken")
    };
    assert_eq!(outside.quantity, "dead_time_ms");
    let Err(Error::Outside(outside)) = size(&Sizing { sizes_mm: vec![], ..example() }) else { panic!("taken") };
    assert_eq!(outside.quantity, "sizes_mm");
    assert!(matches!(size(&Sizing { gas_temperature_c: -10.0, ..example() }), Err(Error::Wet { .. })));
}

#[test]
fn the_spread_of_the_bore_is_seven_per_cent() {
    close("u_d/d", Spread::default().of_diameter(), 0.07, 0.001);
    let got = size(&example()).unwrap();
    close("mm", got.diameter_standard_uncertainty_mm, 0.15, 0.005);
}

#[test]
fn json_carries_input_and_result_there_and_back() {
    let asked = example();
    let text = serde_json::to_string(&asked).unwrap();
    assert_eq!(serde_json::from_str::<Sizing>(&text).unwrap(), asked);
    let got = size(&asked).unwrap();
    let text = serde_json::to_string(&got).unwrap();
    let read: Sized = serde_json::from_str(&text).unwrap();
    assert_eq!((read.verdict, read.chosen_mm, read.candidates.len()), (Verdict::Fits, Some(2.2), 21));
    within("bore", read.diameter_mm, got.diameter_mm, 1e-14);
    assert!(text.contains(r#""verdict":"fits""#), "{text}");
    assert!(text.contains(r#""kind":"duty-within""#), "{text}");
}

fn injection() -> PetrolInjection {
    PetrolInjection {
        petrol: Petrol::E5,
        static_flow_g_min: 200.0,
        rated_pulse_ms: 14.0,
        dead_time_ms: 0.9,
        petrol_lambda: 0.88,
        gas_lambda: 0.88,
        is_displaced_air_taken_off: false,
        idle_pulse_ms: Some(3.1),
        idle_manifold_kpa: 35.0,
    }
}

fn setting() -> Setting {
    Setting {
        fuel: p60_b40(),
        rated_rpm: 5_800.0,
        engine_cylinders: 4,
        manifold_kpa: 97.0,
        supply_over_manifold_kpa: 120.0,
        regulator_follows: Follows::Manifold,
        gas_temperature_c: 50.0,
        dead_time_ms: 1.6,
        max_duty: 0.9,
        discharge_coefficient: 0.8,
        discharge_uncertainty: None,
        sizes_mm: sizes(),
        min_pulse_ms: 2.5,
    }
}

#[test]
fn petrol_injection_data_lead_to_the_same_kind_of_nozzle() {
    let got = size_from_petrol(&FromPetrol { injection: injection(), setting: setting() }).unwrap();
    close("petrol mg", got.petrol_per_cycle_mg, 43.67, 0.01);
    close("air mg", got.air_per_cycle_mg, 549.1, 0.3);
    close("gas mg", got.nozzle.fuel_per_cycle_mg, 40.05, 0.03);
    close("by energy mg", got.by_energy_mg, 40.21, 0.03);
    assert!((1.0..1.7).contains(&got.time_ratio_at_rated), "{}", got.time_ratio_at_rated);
    assert!(got.time_ratio_at_idle.is_some());
    let lean = PetrolInjection { gas_lambda: 1.0, ..injection() };
    let got = size_from_petrol(&FromPetrol { injection: lean, setting: setting() }).unwrap();
    close("lambda 1", got.nozzle.fuel_per_cycle_mg, 35.24, 0.03);
    let displaced = PetrolInjection { is_displaced_air_taken_off: true, ..lean };
    let got = size_from_petrol(&FromPetrol { injection: displaced, setting: setting() }).unwrap();
    close("displaced", got.nozzle.fuel_per_cycle_mg, 33.98, 0.03);
}

// JCGM 100:2008, 5.1: relative uncertainties add in squares and the root halves them; 0.016 of 0.80 in place of 12 %.
#[test]
fn a_measured_coefficient_narrows_the_bore() {
    let usual = size(&example()).unwrap();
    let measured = size(&Sizing { discharge_uncertainty: Some(0.016), ..example() }).unwrap();
    close("same bore", measured.diameter_mm, usual.diameter_mm, 1e-12);
    let relative =
        |u: f64| (0.05f64.powi(2) + u.powi(2) + 0.03f64.powi(2) + 0.04f64.powi(2) + 0.02f64.powi(2)).sqrt() / 2.0;
    close("usual", usual.diameter_standard_uncertainty_mm, usual.diameter_mm * relative(0.12), 1e-9);
    close("measured", measured.diameter_standard_uncertainty_mm, usual.diameter_mm * relative(0.016 / 0.80), 1e-9);
    size(&Sizing { discharge_uncertainty: Some(-0.1), ..example() }).unwrap_err();
}
