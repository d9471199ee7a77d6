//! Sizing: the nozzle sheet as a form, and its sum redone from what the page prints.

use std::collections::BTreeMap;

use fuelwright::model::evidence::{Evidence, NozzleSizing, NozzleVerdict};
use fuelwright::rules::State;
use scraper::{Html, Selector};

use crate::calculator::Calculator;
use crate::job_support::Bay;
use crate::support::Page;

/// The worked example: 75 kW at 5 800/min, 60 mol % propane in n-butane; values of an independent computation.
fn example() -> Vec<(&'static str, &'static str)> {
    vec![
        ("from", "power"),
        ("fuel_mix", "typed-mole"),
        ("share_propane", "60"),
        ("share_n_butane", "40"),
        ("rated_power_kw", "75"),
        ("rated_rpm", "5800"),
        ("engine_cylinders", "4"),
        ("brake_efficiency", "0.30"),
        ("manifold_kpa", "0.97 bar"),
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

/// The same fields with some of them changed.
pub fn changed<'a>(mut fields: Vec<(&'a str, &'a str)>, with: &[(&'a str, &'a str)]) -> Vec<(&'a str, &'a str)> {
    for (name, value) in with {
        fields.retain(|(known, _)| known != name);
        fields.push((name, value));
    }
    fields
}

async fn sheet(bay: &Bay) -> NozzleSizing {
    let file = bay.file().await;
    let Evidence::NozzleSizing(sheet) = file.entry("nozzle-sizing", "").unwrap().body.clone() else { panic!("other") };
    sheet
}

#[tokio::test]
async fn the_form_opens_with_what_is_known_and_says_where_from() {
    let bay = Bay::lpg().await;
    let page = bay.shop.technician().await.get(&bay.at("nozzle-sizing")).await;
    page.is(200).says("From the vehicle’s file: 82").says("Common practice: 0.28");
    assert_eq!(page.field("rated_power_kw").as_deref(), Some("82"));
    assert_eq!(page.field("idle_fuel_power_kw").as_deref(), Some("7.0"));
    assert_eq!(page.field("fuel_mix"), None, "no mix is taken silently");
    assert_eq!(page.field("sets[0][sizes_mm]").as_deref(), Some(""));
}

#[tokio::test]
async fn a_sheet_is_wrong_explained_kept_mended_and_recorded() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("nozzle-sizing"), bay.shop.technician().await);
    let wrong = changed(example(), &[("share_propane", "50"), ("sets[0][sizes_mm]", "1.8 2.O"), ("max_duty", "9")]);
    let page = jon.post(&at, &wrong).await;
    page.is(422).says("The shares sum to 90.0");
    assert_eq!(page.field("sets[0][sizes_mm]").as_deref(), Some("1.8 2.O"));
    assert_eq!(page.field("manifold_kpa").as_deref(), Some("0.97 bar"));
    assert_eq!(bay.entries("nozzle-sizing").await, 0);

    let stage = jon.post(&at, &example()).await.goes_to();
    jon.get(&stage).await.is(200).says("Fits: 2.20").says("Entered here").says("Common practice");
    let sheet = sheet(&bay).await;
    // Reference: 2.1019 mm needed, 2.2 chosen.
    assert!((sheet.needed_mm - 2.1019).abs() < 0.006, "{}", sheet.needed_mm);
    assert_eq!((sheet.chosen_mm, sheet.verdict), (Some(2.2), NozzleVerdict::Fits));
    assert_eq!(sheet.program_version, env!("CARGO_PKG_VERSION"));
    assert_eq!(sheet.origins["max_duty"], "practice");
    assert_eq!(sheet.origins["rated_power_kw"], "entered");

    let page = jon.get(&at).await;
    assert_eq!(page.field("manifold_kpa").as_deref(), Some("0.97 bar"), "as it was typed");
    assert_eq!(page.field("sets[0][sizes_mm]").as_deref(), Some("1.8 2.0 2.2 2.4 2.6"));
}

#[tokio::test]
async fn reckoning_shows_the_sum_and_records_nothing() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("nozzle-sizing"), bay.shop.technician().await);
    let ask = changed(example(), &[("then", "reckon"), ("measured_at", "")]);
    let page = jon.post(&at, &ask).await;
    page.is(200).says("Fits: 2.20").says("is open 83");
    assert_eq!(page.field("rated_power_kw").as_deref(), Some("75"));
    assert_eq!(bay.entries("nozzle-sizing").await, 0);
    jon.post(&at, &changed(ask, &[("rated_rpm", "fast")])).await.is(422).says("fast");
}

#[tokio::test]
async fn too_small_says_above_which_speed_it_is_lean_and_what_would_help() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("nozzle-sizing"), bay.shop.technician().await);
    let small = changed(example(), &[("sets[0][sizes_mm]", "1,6 1,8")]);
    let stage = jon.post(&at, &small).await.goes_to();
    jon.get(&stage).await.says("Too small: 1.80").says("lean above").says("over manifold 1.8");
    let sheet = sheet(&bay).await;
    assert_eq!((sheet.chosen_mm, sheet.verdict), (None, NozzleVerdict::TooSmall));
}

#[tokio::test]
async fn sets_stand_side_by_side_and_one_is_taken() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("nozzle-sizing"), bay.shop.technician().await);
    let two = changed(
        example(),
        &[
            ("sets[0][name]", "Rail A"),
            ("sets[1][name]", "Rail B"),
            ("sets[1][supply_over_manifold_kpa]", "150"),
            ("taken", "2"),
        ],
    );
    let stage = jon.post(&at, &two).await.goes_to();
    jon.get(&stage).await.says("Sets side by side").says("Rail A").says("Rail B taken");
    assert_eq!(sheet(&bay).await.chosen_mm, Some(2.0), "more supply, smaller nozzle");
    jon.post(&at, &changed(two, &[("taken", "3")])).await.is(422).says("This set is empty.");
}

#[tokio::test]
async fn another_size_may_be_taken_from_the_list_only() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("nozzle-sizing"), bay.shop.technician().await);
    jon.post(&at, &changed(example(), &[("chosen_mm", "2.3")])).await.is(422).says("not in the list");
    let stage = jon.post(&at, &changed(example(), &[("chosen_mm", "2.4")])).await.goes_to();
    jon.get(&stage).await.says("Taken by choice: 2.40").says("The sum takes 2.20");
    assert_eq!(sheet(&bay).await.chosen_mm, Some(2.4));
}

#[tokio::test]
async fn petrol_injection_data_need_neither_power_nor_efficiency() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("nozzle-sizing"), bay.shop.technician().await);
    let petrol = [
        ("from", "petrol"),
        ("rated_power_kw", ""),
        ("brake_efficiency", ""),
        ("petrol", "e5"),
        ("static_flow_g_min", "200"),
        ("rated_pulse_ms", "14.0"),
        ("petrol_dead_time_ms", "0.9"),
        ("petrol_lambda", "0.88"),
        ("gas_lambda", "0.88"),
        ("idle_pulse_ms", "3.1"),
        ("displaced", "no"),
    ];
    let fields = changed(example(), &petrol);
    jon.post(&at, &changed(fields.clone(), &[("rated_pulse_ms", "0.9")]))
        .await
        .is(422)
        .says("no longer than the dead time");
    let stage = jon.post(&at, &fields).await.goes_to();
    let page = jon.get(&stage).await;
    page.says("Gas time over petrol time, rated");
    let steps = steps(&page);
    // 200 g/min, 14.0 less 0.9 ms: 43.67 mg petrol, 549 mg air, 40.05 mg gas.
    assert!((steps["Petrol a cycle and engine cylinder"].1 - 43.67).abs() < 0.01);
    assert!((steps["Air a cycle and engine cylinder"].1 - 549.1).abs() < 0.3);
    assert!((steps["Fuel a cycle and engine cylinder"].1 - 40.05).abs() < 0.03);
    redo(&page);
}

#[tokio::test]
async fn a_wet_rail_is_refused_beside_the_temperature() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("nozzle-sizing"), bay.shop.technician().await);
    jon.post(&at, &changed(example(), &[("gas_temperature_c", "-10")])).await.is(422).says("partly liquid here");
}

#[tokio::test]
async fn a_reader_can_redo_the_sum_with_a_pocket_calculator() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("nozzle-sizing"), bay.shop.technician().await);
    let stage = jon.post(&at, &example()).await.goes_to();
    let page = jon.get(&stage).await;
    assert!(redo(&page) >= 14);
    // The chain ends where the independent reference ends.
    let steps = steps(&page);
    assert!((steps["Fuel a cycle and engine cylinder"].1 - 28.0819).abs() < 0.03);
    assert!((steps["Bore needed"].1 - 2.1019).abs() < 0.006);
    assert!((steps["Duty at rated power"].1 - 0.828_29).abs() < 0.005);
    assert!((steps["Pulse at idle, fuel rate apart"].1 - 7.6128).abs() < 0.05);
    assert!((steps["Speed limit"].1 - 6302.1).abs() < 40.0);
}

#[tokio::test]
async fn boost_above_choking_is_redone_with_the_other_formula() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("nozzle-sizing"), bay.shop.technician().await);
    let boosted = changed(example(), &[("manifold_kpa", "190"), ("sets[0][sizes_mm]", "1.6 1.8 2.0 2.2")]);
    let stage = jon.post(&at, &boosted).await.goes_to();
    let page = jon.get(&stage).await;
    page.says("not choked at rated power");
    redo(&page);
}

fn container() -> Vec<(&'static str, &'static str)> {
    vec![
        ("fuel_mix", "lpg-propane"),
        ("fill_percent", "80"),
        ("temperature_c", "15"),
        ("left_behind_percent", "4"),
        ("consumption_l_per_100km", "9.6"),
        ("parts_mass_kg", "22"),
        ("axle_reserve_kg", "100"),
        ("sets[0][gross_volume_l]", "60"),
        ("sets[0][container_mass_kg]", "31"),
        ("taken", "1"),
        ("measured_at", "2026-05-12T10:20"),
    ]
}

#[tokio::test]
async fn a_container_is_wrong_explained_kept_mended_and_recorded() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("container-sizing"), bay.shop.technician().await);
    jon.get(&at).await.is(200).says("From the rules of this shop: 80");
    assert_eq!(bay.proof("container-sized").await.state, State::Missing);
    let over = changed(container(), &[("fill_percent", "85"), ("sets[0][gross_volume_l]", "sixty")]);
    let page = jon.post(&at, &over).await;
    page.is(422).says("The fill limit is 80 %: UN R67");
    assert_eq!(page.field("sets[0][gross_volume_l]").as_deref(), Some("sixty"));

    let reckoned = jon.post(&at, &changed(container(), &[("then", "reckon")])).await;
    reckoned.is(200).says("48.0 L of liquid, 46.1 L usable");
    assert_eq!(bay.entries("container-sizing").await, 0);

    let stage = jon.post(&at, &container()).await.goes_to();
    let page = jon.get(&stage).await;
    // Propane filled to 80 % at 15 C is liquid-full at 67.9 C, filled 10 K colder a little below 65.
    page.says("48.0 L of liquid").says("liquid-full at 68 °C").says("480 km");
    assert!(redo(&page) >= 8);
    let steps = steps(&page);
    assert!((steps["Mass of the liquid"].1 - 24.36).abs() < 0.06);
    assert!((steps["Liquid-full at"].1 - 67.9).abs() < 1.3);
    assert_eq!(bay.proof("container-sized").await.state, State::Met);
}

#[tokio::test]
async fn a_container_too_heavy_for_the_axle_stops_and_stands_beside_one_that_is_not() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("container-sizing"), bay.shop.technician().await);
    let two = [
        ("axle_reserve_kg", "80 kg"),
        ("sets[0][name]", "Wheel well"),
        ("sets[1][name]", "Upright"),
        ("sets[1][gross_volume_l]", "90"),
        ("sets[1][container_mass_kg]", "80 lb"),
        ("taken", "2"),
    ];
    let stage = jon.post(&at, &changed(container(), &two)).await.goes_to();
    jon.get(&stage).await.says("Wheel well").says("Upright taken").says("The rear axle would be overloaded by");
    assert_eq!(bay.proof("container-sized").await.state, State::Stops);
    let entry = bay.file().await.entry("container-sizing", "").unwrap().id.to_string();
    let page = jon.get(&at).await;
    assert_eq!(page.field("sets[1][container_mass_kg]").as_deref(), Some("80 lb"));
    let smaller = [("taken", "1"), ("replaces_id", entry.as_str()), ("replaces_reason", "the smaller one")];
    jon.post(&at, &changed(changed(container(), &two), &smaller)).await.goes_to();
    assert_eq!(bay.proof("container-sized").await.state, State::Met);
}

/// Name of a quantity to the expression with its numbers and the printed result.
pub fn steps(page: &Page) -> BTreeMap<String, (String, f64)> {
    let html = Html::parse_document(&page.html());
    let (rows, cells) = (Selector::parse("tbody tr").unwrap(), Selector::parse("th, td").unwrap());
    let second = Selector::parse(".second").unwrap();
    let mut steps = BTreeMap::new();
    for row in html.select(&rows) {
        let cells: Vec<_> = row.select(&cells).collect();
        if cells.len() != 4 || cells[1].value().attr("data-label") != Some("Formula and numbers") {
            continue;
        }
        let text = |at: usize| cells[at].text().collect::<String>();
        let below = |at: usize| cells[at].select(&second).next().map(|s| s.text().collect::<String>()).unwrap();
        let name = text(0).strip_suffix(&below(0)).unwrap().trim().to_owned();
        let digits: String = text(2).chars().filter(|c| *c != '\u{202f}').collect();
        let number: String =
            digits.chars().take_while(|c| c.is_ascii_digit() || matches!(c, '.' | '-' | '\u{2212}')).collect();
        steps.insert(name, (below(1), number.replace('\u{2212}', "-").parse().unwrap()));
    }
    steps
}

/// Redoes every step that is arithmetic from the numbers printed in it; how many were.
pub fn redo(page: &Page) -> usize {
    let steps = steps(page);
    let mut redone = 0;
    for (name, (expression, printed)) in &steps {
        // States of the gas come from an equation of state; a pocket calculator takes them as printed.
        if !Calculator::knows(expression) {
            continue;
        }
        let value = Calculator::value_of(expression);
        assert!((value / printed - 1.0).abs() < 1.5e-3, "{name}: {expression} is {value}, printed {printed}");
        redone += 1;
    }
    redone
}
