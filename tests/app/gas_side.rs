//! Heat, hoses, the CNG cylinder and the measured coefficient as forms: each with its story, and each sum redone from
//! what the page prints.

use fuelwright::model::evidence::{Evidence, SizingVerdict};
use fuelwright::model::instrument::InstrumentKind;
use time::Duration;

use crate::job_support::Bay;
use crate::sizing::{changed, redo, steps};

pub type Fields = Vec<(&'static str, &'static str)>;

/// 75 kW at an efficiency of 0.30, a container at 15 C, 220 kPa and 60 C at the rail.
fn heat() -> Fields {
    vec![
        ("fuel_mix", "typed-mole"),
        ("share_propane", "60"),
        ("share_n_butane", "40"),
        ("rated_power_kw", "75"),
        ("brake_efficiency", "0.30"),
        ("container_c", "15"),
        ("outlet_kpa", "2.2 bar"),
        ("outlet_c", "60"),
        ("coolant_drop_k", "8"),
        ("changeover_c", "40"),
        ("capacity_engine_kw", "140"),
        ("measured_at", "2026-05-12T10:20"),
    ]
}

fn lines() -> Fields {
    vec![
        ("fuel_mix", "lpg-propane"),
        ("fuel_rate_g_s", "5"),
        ("engine_cylinders", "4"),
        ("pressure_kpa", "220"),
        ("temperature_c", "50"),
        ("duty_percent", "80"),
        ("liquid_c", "15"),
        ("lines[0][bore_mm]", "10"),
        ("lines[0][length_m]", "60 cm"),
        ("lines[0][velocity_heads]", "0"),
        ("lines[1][bore_mm]", "5"),
        ("lines[1][length_m]", "0.2"),
        ("lines[1][velocity_heads]", "1.5"),
        ("lines[2][bore_mm]", "6"),
        ("lines[2][length_m]", "4"),
        ("lines[2][velocity_heads]", "1.5"),
        ("measured_at", "2026-05-12T10:20"),
    ]
}

fn cylinders() -> Fields {
    vec![
        ("fuel_mix", "cng-g20"),
        ("pressure_kpa", "20 MPa"),
        ("temperature_c", "15"),
        ("at_temperature_c", "40"),
        ("consumption_kg_per_100km", "4.4"),
        ("left_kpa", "1000"),
        ("parts_mass_kg", "18"),
        ("axle_reserve_kg", "180"),
        ("sets[0][volume_l]", "80"),
        ("sets[0][cylinder_mass_kg]", "85"),
        ("taken", "1"),
        ("measured_at", "2026-05-12T10:20"),
    ]
}

/// Nitrogen through a nozzle of 2.0 mm.
pub fn blown() -> Fields {
    vec![
        ("injector", "Ostrava Vale, rail of 4, nozzle 2.0"),
        ("gas", "nitrogen"),
        ("bore_mm", "2.0"),
        ("bore_uncertainty_mm", "0.01"),
        ("upstream_kpa", "250"),
        ("downstream_kpa", "101.3"),
        ("temperature_c", "20"),
        ("flow_l_min", "66"),
        ("flow_at_c", "15"),
        ("flow_uncertainty_percent", "2"),
        ("measured_at", "2026-05-12T10:20"),
    ]
}

/// The worked example of a nozzle.
pub fn nozzle() -> Fields {
    vec![
        ("from", "power"),
        ("fuel_mix", "typed-mole"),
        ("share_propane", "60"),
        ("share_n_butane", "40"),
        ("rated_power_kw", "75"),
        ("rated_rpm", "5800"),
        ("engine_cylinders", "4"),
        ("brake_efficiency", "0.30"),
        ("manifold_kpa", "97"),
        ("gas_temperature_c", "50"),
        ("max_duty", "0.90"),
        ("regulator_follows", "manifold"),
        ("idle_rpm", "800"),
        ("idle_fuel_power_kw", "9.5"),
        ("idle_manifold_kpa", "35"),
        ("sets[0][supply_over_manifold_kpa]", "120"),
        ("sets[0][dead_time_ms]", "1.6"),
        ("sets[0][min_pulse_ms]", "2.5"),
        ("sets[0][discharge_coefficient]", "0.80"),
        ("sets[0][sizes_mm]", "1.8 2.0 2.2 2.4 2.6"),
        ("taken", "1"),
        ("measured_at", "2026-05-12T10:20"),
    ]
}

#[tokio::test]
async fn a_heat_sheet_is_wrong_explained_kept_mended_and_recorded() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("heat-sizing"), bay.shop.technician().await);
    let page = jon.get(&at).await;
    page.is(200).says("From the vehicle’s file: 82").says("Common practice: 0.28").says("Common practice: 40");
    assert_eq!(page.field("rated_power_kw").as_deref(), Some("82"));

    let wrong = changed(heat(), &[("outlet_c", "warm"), ("capacity_heat_kw", "5"), ("brake_efficiency", "")]);
    let page = jon.post(&at, &wrong).await;
    page.is(422).says("One of the two is enough").says("Power and efficiency, or the fuel rate itself");
    assert_eq!(page.field("outlet_c").as_deref(), Some("warm"));
    assert_eq!(page.field("outlet_kpa").as_deref(), Some("2.2 bar"));
    jon.post(&at, &changed(heat(), &[("outlet_c", "-10")])).await.is(422).says("partly liquid here");
    assert_eq!(bay.entries("heat-sizing").await, 0);

    let reckoned = jon.post(&at, &changed(heat(), &[("then", "reckon"), ("measured_at", "")])).await;
    reckoned.is(200).says("needed, and there").says("54 %");
    assert_eq!(bay.entries("heat-sizing").await, 0);

    let stage = jon.post(&at, &heat()).await.goes_to();
    let page = jon.get(&stage).await;
    page.says("Its maker tells an engine of 140").says("above that").says("Other season’s mix, 40 % propane");
    page.says("Computed by version");
    assert!(redo(&page) >= 8);
    // 5.43 g/s times 450 kJ/kg: 2.44 kW, 5.0 L/min.
    let steps = steps(&page);
    assert!((steps["Fuel rate"].1 - 5.429).abs() < 0.003);
    assert!((steps["Heat"].1 - 2.44).abs() < 0.06);
    assert!((steps["Coolant"].1 - 5.0).abs() < 0.15);
    assert_eq!(jon.get(&at).await.field("outlet_kpa").as_deref(), Some("2.2 bar"), "as it was typed");
}

#[tokio::test]
async fn a_vaporiser_too_small_or_a_changeover_too_cold_fails_in_words() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("heat-sizing"), bay.shop.technician().await);
    let small = changed(heat(), &[("capacity_engine_kw", ""), ("capacity_heat_kw", "1.8 kW")]);
    let stage = jon.post(&at, &small).await.goes_to();
    jon.get(&stage).await.says("too small. A larger one would do").says("That serves an engine of");
    let kept = |file: fuelwright::model::job_file::JobFile| match &file.entry("heat-sizing", "").unwrap().body {
        Evidence::HeatSizing(one) => one.verdict,
        other => panic!("{other:?}"),
    };
    assert_eq!(kept(bay.file().await), SizingVerdict::Fails);
    // Butane-rich gas at 300 kPa rains below about 25 C: changing over at 20 C would wet the rail.
    let cold = [("share_propane", "0"), ("share_n_butane", "100"), ("changeover_c", "20"), ("then", "reckon")];
    jon.post(&at, &changed(heat(), &cold)).await.is(200).says("the rail would rain").says("Change over at");
    let untold = changed(heat(), &[("capacity_engine_kw", ""), ("then", "reckon")]);
    jon.post(&at, &untold).await.is(200).says("is not known: enter what its maker tells");
}

#[tokio::test]
async fn a_correction_names_its_reason_a_stale_save_shows_both_and_a_double_send_makes_one() {
    let bay = Bay::lpg().await;
    for (kind, fields, name, text) in [
        ("heat-sizing", heat(), "coolant_drop_k", "6"),
        ("line-sizing", lines(), "lines[0][bore_mm]", "12"),
        ("discharge", blown(), "flow_l_min", "64"),
        ("nozzle-sizing", nozzle(), "rated_power_kw", "80"),
    ] {
        let at = bay.at(kind);
        let (jon, ilse) = (bay.shop.technician().await, bay.shop.manager().await);
        let key = uuid::Uuid::now_v7().to_string();
        let once = changed(fields.clone(), &[("key", &key)]);
        let stage = jon.post(&at, &once).await.goes_to();
        assert_eq!(jon.post(&at, &once).await.goes_to(), stage);
        assert_eq!(bay.entries(kind).await, 1, "{kind}: a double send makes one record");

        let first = bay.file().await.entry(kind, "").unwrap().id.to_string();
        let mended = changed(fields.clone(), &[(name, text), ("replaces_id", &first)]);
        jon.post(&at, &mended).await.is(422);
        let mended = changed(mended, &[("replaces_reason", "read again")]);
        jon.post(&at, &mended).await.goes_to();
        jon.get(&stage).await.says("read again");

        // Somebody who opened the form before that is shown both, and keeps what they typed.
        bay.shop.clock.advance(Duration::minutes(1));
        let late = changed(fields, &[("replaces_id", &first), ("replaces_reason", "my own")]);
        let page = ilse.post(&at, &late).await;
        page.is(422).says("Jon");
        assert_eq!(page.field("replaces_reason").as_deref(), Some("my own"));
        assert_eq!(bay.entries(kind).await, 2, "{kind}: nothing was lost, nothing written");
    }
}

#[tokio::test]
async fn heat_and_lines_open_with_what_the_nozzle_sheet_found() {
    let bay = Bay::lpg().await;
    let jon = bay.shop.technician().await;
    jon.post(&bay.at("nozzle-sizing"), &nozzle()).await.goes_to();
    let page = jon.get(&bay.at("heat-sizing")).await;
    page.says("From the nozzle sheet: 75").says("From the nozzle sheet: 217");
    assert_eq!(page.field("share_propane").as_deref(), Some("60"));
    assert_eq!(page.field("fuel_rate_g_s").as_deref(), Some(""), "power and efficiency say it");
    let page = jon.get(&bay.at("line-sizing")).await;
    // 5.429 g/s by the worked example.
    let rate: f64 = page.field("fuel_rate_g_s").unwrap().parse().unwrap();
    assert!((rate - 5.429).abs() < 0.003, "{rate}");
    page.says("From the nozzle sheet: 83");
}

#[tokio::test]
async fn a_sheet_of_lines_is_wrong_explained_kept_mended_and_recorded() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("line-sizing"), bay.shop.technician().await);
    let none: Vec<(&str, &str)> = (0..3)
        .flat_map(|at| [("bore_mm", at), ("length_m", at)])
        .map(|(field, at)| (&*format!("lines[{at}][{field}]").leak(), ""))
        .collect();
    jon.post(&at, &changed(lines(), &none)).await.is(422).says("Nothing to reckon");
    let wrong = changed(lines(), &[("lines[1][bore_mm]", "thin"), ("lines[2][length_m]", "")]);
    let page = jon.post(&at, &wrong).await;
    page.is(422);
    assert_eq!(page.field("lines[1][bore_mm]").as_deref(), Some("thin"));
    assert_eq!(page.field("lines[0][length_m]").as_deref(), Some("60 cm"));
    jon.post(&at, &changed(lines(), &[("lines[0][bore_mm]", "2")])).await.is(422).says("Far too narrow");

    let stage = jon.post(&at, &lines()).await.goes_to();
    let page = jon.get(&stage).await;
    page.says("Wide enough").says("no usual limit is known for liquid").says("Keep branch hoses short");
    // Propane gas, 220 kPa, 50 C, 5 g/s through 0.6 m of 10 mm: 17.1 m/s, 0.66 kPa.
    page.says("17.2 m/s").says("0.65 kPa");
    assert!(redo(&page) >= 4);

    let entry = bay.file().await.entry("line-sizing", "").unwrap().id.to_string();
    let narrow = [("lines[0][bore_mm]", "6"), ("replaces_id", &entry), ("replaces_reason", "another hose")];
    let stage = jon.post(&at, &changed(lines(), &narrow)).await.goes_to();
    jon.get(&stage).await.says("Too narrow").says("or more would do");
}

#[tokio::test]
async fn a_cng_regulator_says_how_cold_it_gets() {
    let bay = Bay::cng().await;
    let (at, jon) = (bay.at("heat-sizing"), bay.shop.technician().await);
    let page = jon.get(&at).await;
    assert_eq!(page.field("inlet_kpa").as_deref(), Some("20000"));
    let fields = vec![
        ("fuel_mix", "cng-g20"),
        ("fuel_rate_g_s", "5"),
        ("inlet_kpa", "20 MPa"),
        ("inlet_c", "15"),
        ("outlet_kpa", "300"),
        ("outlet_c", "40"),
        ("coolant_drop_k", "8"),
        ("capacity_heat_kw", "2"),
        ("measured_at", "2026-05-12T10:20"),
    ];
    jon.post(&at, &changed(fields.clone(), &[("inlet_kpa", "")])).await.is(422);
    let stage = jon.post(&at, &fields).await.goes_to();
    let page = jon.get(&stage).await;
    // Methane from 20 MPa and 15 C to 0.3 MPa: -74 C without heat; 249 kJ/kg to 40 C.
    page.says("Without heat the gas would leave at \u{2212}74").says("water in it freezes");
    let steps = steps(&page);
    assert!((steps["Heat for each kilogram"].1 - 249.0).abs() < 1.0);
    assert!(redo(&page) >= 6);
    // A container is none of its slots, a cylinder is.
    page.links_to(&bay.at("cylinder-sizing"));
    assert!(!page.html().contains("container-sizing"));
}

#[tokio::test]
async fn a_cylinder_is_wrong_explained_kept_mended_and_recorded() {
    let bay = Bay::cng().await;
    let (at, jon) = (bay.at("cylinder-sizing"), bay.shop.technician().await);
    jon.get(&at).await.is(200).says("Common practice: 20000");
    let wrong = changed(cylinders(), &[("left_kpa", "20000"), ("sets[0][volume_l]", "eighty")]);
    let page = jon.post(&at, &wrong).await;
    page.is(422).says("not below the filling pressure");
    assert_eq!(page.field("sets[0][volume_l]").as_deref(), Some("eighty"));
    jon.post(&at, &changed(cylinders(), &[("taken", "2")])).await.is(422).says("This cylinder is empty.");

    let stage = jon.post(&at, &cylinders()).await.goes_to();
    let page = jon.get(&stage).await;
    // Methane, 80 L, 20 MPa, 15 C: 13.42 kg, 19.74 m3, 23.95 MPa at 40 C.
    page.says("13.4 kg of gas, 19.7 m³").says("24.0 MPa at 40 °C").says("The rear axle carries it: 64 kg");
    let steps = steps(&page);
    assert!((steps["Mass of the gas"].1 - 13.42).abs() < 0.01);
    assert!((steps["Volume at 15 °C and 101.325 kPa"].1 - 19.74).abs() < 0.015);
    assert!((steps["Pressure at the temperature asked for"].1 - 23_950.0).abs() < 15.0);
    assert!(redo(&page) >= 8);

    let entry = bay.file().await.entry("cylinder-sizing", "").unwrap().id.to_string();
    let two = [
        ("axle_reserve_kg", "110"),
        ("sets[0][name]", "Steel"),
        ("sets[1][name]", "Composite"),
        ("sets[1][cylinder_mass_kg]", "36"),
        ("taken", "1"),
        ("replaces_id", &entry),
    ];
    let two = changed(cylinders(), &two);
    jon.post(&at, &two).await.is(422);
    jon.post(&at, &changed(two, &[("replaces_reason", "axle weighed")])).await.goes_to();
    jon.get(&stage).await.says("Cylinders side by side").says("would be overloaded by 6 kg").says("Composite");
}

#[tokio::test]
async fn a_coefficient_is_kept_with_its_flow_meter_and_the_nozzle_sheet_opens_with_it() {
    let bay = Bay::lpg().await;
    let meter = bay.instrument("F-1", InstrumentKind::Other, "L/min", 0.1, 0.5).await.to_string();
    let (at, jon) = (bay.at("discharge"), bay.shop.technician().await);
    let fields = changed(blown(), &[("flow_meter_id", &meter)]);
    let wrong = changed(fields.clone(), &[("flow_l_min", "900"), ("injector", "")]);
    let page = jon.post(&at, &wrong).await;
    page.is(422);
    assert_eq!(page.field("flow_l_min").as_deref(), Some("900"));
    // A nozzle cannot pass more than its bore: some 92 L/min here.
    jon.post(&at, &changed(fields.clone(), &[("flow_l_min", "900")])).await.is(422).says("92");
    let forged = changed(fields.clone(), &[("flow_meter_id", "018f0000-0000-7000-8000-000000000000")]);
    jon.post(&at, &forged).await.is(422);
    jon.post(&at, &changed(fields.clone(), &[("downstream_kpa", "249")])).await.is(422).says("At least 5 kPa below");
    assert_eq!(bay.entries("discharge").await, 0);

    let stage = jon.post(&at, &fields).await.goes_to();
    let page = jon.get(&stage).await;
    page.says("F-1").says("The nozzle was choked");
    assert!(redo(&page) >= 8);
    let entry = bay.file().await.entry("discharge", "").unwrap().clone();
    assert_eq!(entry.instruments.len(), 1);
    let Evidence::Discharge(one) = entry.body else { panic!("other") };
    // 66 L/min at 1.185 kg/m3 against 581 kg/(s m2) through 3.142 mm2.
    assert!((one.discharge_coefficient - 0.714).abs() < 0.004, "{}", one.discharge_coefficient);

    let page = jon.get(&bay.at("nozzle-sizing")).await;
    assert_eq!(page.field("sets[0][discharge_coefficient]"), Some(format!("{:.3}", one.discharge_coefficient)));
}

#[tokio::test]
async fn a_nozzle_measured_once_is_offered_in_every_job_of_the_shop_and_in_no_other() {
    let bay = Bay::lpg().await;
    let meter = bay.instrument("F-1", InstrumentKind::Other, "L/min", 0.1, 0.5).await.to_string();
    let gauge = bay.instrument("G-9", InstrumentKind::PressureGauge, "kPa", 0.1, 0.5).await.to_string();
    let jon = bay.shop.technician().await;
    let fields = changed(blown(), &[("flow_meter_id", &meter), ("gauge_id", &gauge)]);
    jon.post(&bay.at("discharge"), &fields).await.goes_to();
    let first = bay.file().await.entry("discharge", "").unwrap().id.to_string();
    let mended = [("flow_l_min", "60"), ("replaces_id", &*first), ("replaces_reason", "meter read again")];
    jon.post(&bay.at("discharge"), &changed(fields, &mended)).await.goes_to();

    // The measurement that stands, once, with both instruments; the corrected one is gone.
    let mut con = bay.shop.shop.db.read().await.unwrap();
    let all = fuelwright::db::discharges::list(&mut con, bay.shop.branch, 8).await.unwrap();
    let [one] = &all[..] else { panic!("{all:?}") };
    assert_eq!((one.instruments.as_str(), one.job_number.as_str()), ("F-1, G-9", "2026-0001"));
    assert!(one.discharge.discharge_coefficient < 0.66);
    let elsewhere = fuelwright::model::ids::BranchId::new();
    assert!(fuelwright::db::discharges::list(&mut con, elsewhere, 8).await.unwrap().is_empty());
    drop(con);
    let page = jon.get(&bay.at("nozzle-sizing")).await;
    page.says("Measured by this shop:").says("Ostrava Vale, rail of 4, nozzle 2.0, 2.00 mm").says("F-1, G-9");
}

#[tokio::test]
async fn a_nozzle_sheet_says_how_it_moves_and_how_long_it_is_open() {
    let bay = Bay::lpg().await;
    let jon = bay.shop.technician().await;
    let stage = jon.post(&bay.at("nozzle-sizing"), &nozzle()).await.goes_to();
    let page = jon.get(&stage).await;
    page.says("Gas 10 K warmer").says("Supply 10 kPa lower").says("Other mix: 40 % propane, 60 % butane");
    page.says("Duty of 2.20 mm over speed");
}
