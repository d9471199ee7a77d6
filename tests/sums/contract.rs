//! What `fuelwright calc` answers, through its library function: every row against reference values, and the shape of
//! every answer.

use fuelwright::calc::composition::Shares;
use fuelwright::cli::calc::{WHATS, reckon};
use proptest::prelude::*;
use serde_json::{Value, json};

use crate::reference::{Row, close, rows, within};

/// A whole and good input of a row, every optional field with it.
pub fn example(what: &str) -> Value {
    let p60_b40 = json!({ "propane": 0.6, "n_butane": 0.4 });
    match what {
        "vapour-pressure" | "liquid-density" => json!({ "composition": p60_b40, "temperature_c": 15 }),
        "gas-state" => json!({ "composition": p60_b40, "pressure_kpa": 217, "temperature_c": 50 }),
        "fuel" => json!({ "composition": p60_b40 }),
        "nozzle-flow" => json!({
            "composition": p60_b40, "upstream_kpa": 217, "downstream_kpa": 97, "temperature_c": 50,
            "diameter_mm": 2.2, "discharge_coefficient": 0.8,
        }),
        "nozzle" => json!({
            "fuel": p60_b40, "rated_power_kw": 75, "rated_rpm": 5800, "engine_cylinders": 4, "brake_efficiency": 0.3,
            "manifold_kpa": 97, "supply_over_manifold_kpa": 120, "gas_temperature_c": 50, "dead_time_ms": 1.6,
            "max_duty": 0.9, "discharge_coefficient": 0.8, "sizes_mm": [1.8, 2.0, 2.2, 2.4], "idle_rpm": 800,
            "idle_fuel_power_kw": 9.5, "idle_manifold_kpa": 35, "min_pulse_ms": 2.5,
        }),
        "container" => {
            json!({ "composition": p60_b40, "gross_volume_l": 60, "fill_fraction": 0.8, "temperature_c": 15 })
        }
        "cylinder" => json!({
            "composition": { "methane": 1 }, "volume_l": 80, "pressure_kpa": 20000, "temperature_c": 15,
            "at_temperature_c": -10,
        }),
        "leak" => json!({
            "volume_l": 2, "start_kpa": 401.3, "end_kpa": 400.9, "start_c": 20, "end_c": 20, "duration_min": 10,
            "limit_cm3_h": 20, "pressure_resolution_kpa": 0.1, "pressure_standard_uncertainty_kpa": 0.05,
            "temperature_standard_uncertainty_k": 0.02, "volume_relative_standard_uncertainty": 0.05,
            "composition": { "nitrogen": 1 }, "reference_c": 15, "reference_kpa": 101.325,
        }),
        "lambda" => json!({
            "fuel": "lpg", "co_percent": 0.2, "co2_percent": 13.2, "o2_percent": 0.2, "hc_ppm_hexane": 70, "nox_ppm": 100,
        }),
        "vin" => json!({ "vin": "1M8GDM9AXKP042788" }),
        "due" => json!({
            "from": "2026-01-31", "months": 12, "from_precision": "day",
            "readings": [{ "date": "2026-01-31", "km": 10000 }, { "date": "2026-03-02", "km": 13000 }],
            "km": 15000, "from_km": 10000,
        }),
        other => panic!("no example of {other}: add one"),
    }
}

/// The answer, or the refusal as the panic's text.
#[track_caller]
fn ask(what: &str, input: &Value) -> Value {
    reckon(what, input.to_string().as_bytes()).unwrap_or_else(|refused| panic!("{what} {input}: {}", refused.message))
}

#[track_caller]
fn number(answer: &Value, field: &str) -> f64 {
    answer[field].as_f64().unwrap_or_else(|| panic!("{field} is {}", answer[field]))
}

fn composition(row: &Row) -> Value {
    json!(Shares::from(row.composition()))
}

#[test]
fn every_answer_has_the_fields_of_its_row_in_order_and_no_more() {
    for what in &WHATS {
        let answer = ask(what.name, &example(what.name));
        let keys: Vec<&str> = answer.as_object().unwrap().keys().map(String::as_str).collect();
        let wanted: Vec<&str> = what.gives.iter().copied().chain(["method", "sources", "warnings"]).collect();
        assert_eq!(keys, wanted, "{}", what.name);
        assert!(!answer["method"].as_str().unwrap().is_empty());
        for list in ["sources", "warnings"] {
            assert!(answer[list].as_array().unwrap().iter().all(Value::is_string), "{}", what.name);
        }
        assert!(!answer["sources"].as_array().unwrap().is_empty(), "{}", what.name);
        assert!(answer.as_object().unwrap().values().all(|value| !value.is_null()), "{}: {answer}", what.name);
    }
}

#[test]
fn optional_fields_may_be_left_out() {
    for what in &WHATS {
        let mut input = example(what.name);
        for name in what.optional {
            input.as_object_mut().unwrap().remove(*name).unwrap();
        }
        let answer = ask(what.name, &input);
        for (field, value) in answer.as_object().unwrap() {
            assert!(!value.is_null() || what.may_be_null.contains(&field.as_str()), "{}: {field}", what.name);
        }
    }
}

#[test]
fn vapour_pressure_and_liquid_density() {
    for row in rows("lpg_bubble.csv") {
        let input = json!({ "composition": composition(&row), "temperature_c": row.number("temperature_c") });
        let kpa = number(&ask("vapour-pressure", &input), "pressure_kpa");
        within(row.text("mixture"), kpa, row.number("bubble_pressure_kpa"), 0.01);
        let density = number(&ask("liquid-density", &input), "density_kg_m3");
        within(row.text("mixture"), density, row.number("liquid_density_kg_m3"), 0.0035);
    }
}

#[test]
fn gas_state() {
    for (file, density, exponent, sound) in
        [("lpg_vapour.csv", 0.002, 0.003, 0.002), ("cng_state.csv", 0.0006, 0.0033, 0.0016)]
    {
        for row in rows(file) {
            let (kpa, c) = (row.number("pressure_kpa"), row.number("temperature_c"));
            let answer =
                ask("gas-state", &json!({ "composition": composition(&row), "pressure_kpa": kpa, "temperature_c": c }));
            let what = format!("{} {kpa} kPa {c} C", row.text("gas"));
            for (field, tolerance) in [
                ("density_kg_m3", density),
                ("compressibility", density),
                ("isentropic_exponent", exponent),
                ("speed_of_sound_m_s", sound),
                ("molar_mass_g_mol", 5e-5),
            ] {
                within(&what, number(&answer, field), row.number(field), tolerance);
            }
        }
    }
}

#[test]
fn fuel() {
    for row in rows("fuel_mixtures.csv") {
        let answer = ask("fuel", &json!({ "composition": composition(&row) }));
        let name = row.text("mixture");
        for (field, column) in [
            ("lower_heating_value_mj_kg", "net_mj_kg"),
            ("stoichiometric_afr", "stoichiometric_afr"),
            ("h_c_ratio", "h_c_ratio"),
            ("molar_mass_g_mol", "molar_mass_g_mol"),
        ] {
            within(name, number(&answer, field), row.number(column), 5e-4);
        }
        if row.has("gross_wobbe_mj_m3") {
            within(name, number(&answer, "wobbe_mj_m3"), row.number("gross_wobbe_mj_m3"), 5e-4);
        }
        let has_octane = row.has("mon_d2598") && row.number("propene") < 0.2;
        assert_eq!(answer["motor_octane_number"].is_null(), !has_octane, "{name}");
        if has_octane {
            close(name, number(&answer, "motor_octane_number"), row.number("mon_d2598"), 0.1);
        }
    }
}

#[test]
fn nozzle_flow() {
    for row in rows("nozzle_flow.csv") {
        let mut input = json!({ "composition": composition(&row) });
        for field in ["upstream_kpa", "downstream_kpa", "temperature_c", "diameter_mm", "discharge_coefficient"] {
            input[field] = json!(row.number(field));
        }
        let answer = ask("nozzle-flow", &input);
        within(row.text("gas"), number(&answer, "mass_flow_g_s"), row.number("mass_flow_g_s"), 0.005);
        assert_eq!(answer["choked"], json!(row.truth("choked")), "{input}");
    }
    let mut uphill = example("nozzle-flow");
    uphill["downstream_kpa"] = json!(250);
    let answer = ask("nozzle-flow", &uphill);
    assert_eq!((&answer["mass_flow_g_s"], &answer["choked"]), (&json!(0.0), &json!(false)));
    assert_eq!(answer["warnings"].as_array().unwrap().len(), 1);
}

#[test]
fn nozzle() {
    for row in rows("nozzle_sizing.csv") {
        let sizes: Vec<f64> = (15..=35).map(|tenths| f64::from(tenths) / 10.0).collect();
        let mut input = json!({ "fuel": composition(&row), "sizes_mm": sizes });
        for field in [
            "rated_power_kw",
            "rated_rpm",
            "engine_cylinders",
            "brake_efficiency",
            "manifold_kpa",
            "supply_over_manifold_kpa",
            "gas_temperature_c",
            "dead_time_ms",
            "max_duty",
            "discharge_coefficient",
            "idle_rpm",
            "idle_fuel_power_kw",
        ] {
            input[field] = json!(row.number(field));
        }
        let answer = ask("nozzle", &input);
        let what = format!("{} {} kW", row.text("gas"), row.text("rated_power_kw"));
        within(&what, number(&answer, "diameter_mm"), row.number("diameter_mm"), 0.003);
        within(&what, number(&answer, "duty_at_rated"), row.number("duty_at_rated"), 0.006);
        within(&what, number(&answer, "idle_pulse_ms"), row.number("idle_pulse_ms"), 0.006);
        let verdict = answer["verdict"].as_str().unwrap();
        if row.has("chosen_mm") {
            close(&what, number(&answer, "chosen_mm"), row.number("chosen_mm"), 1e-9);
            assert_eq!(verdict, "fits", "{what}");
        } else {
            assert!(answer["chosen_mm"].is_null());
            assert_eq!(verdict, "too-small", "{what}");
        }
        assert!(answer["reasons"].as_array().unwrap().iter().all(Value::is_string), "{what}");
    }
}

#[test]
fn nozzle_verdicts() {
    let with = |fields: &[(&str, Value)]| {
        let mut input = example("nozzle");
        for (name, value) in fields {
            input[*name] = value.clone();
        }
        ask("nozzle", &input)
    };
    let too_large = with(&[("sizes_mm", json!([4.0])), ("min_pulse_ms", json!(5))]);
    assert_eq!((&too_large["verdict"], &too_large["chosen_mm"]), (&json!("too-large"), &json!(4.0)));
    let none = with(&[("sizes_mm", json!([1.5, 1.8, 2.2, 2.6])), ("min_pulse_ms", json!(8.5))]);
    assert_eq!(none["verdict"], "none-fits");
    let reasons = none["reasons"].to_string();
    assert!(reasons.contains("sizes for rated power: 2.2 mm, 2.6 mm"), "{reasons}");
    assert!(reasons.contains("sizes for idle: 1.5 mm, 1.8 mm"), "{reasons}");
    let mut without = example("nozzle");
    without.as_object_mut().unwrap().remove("idle_rpm");
    let without = ask("nozzle", &without);
    assert!(without["idle_pulse_ms"].is_null() && without["verdict"] == "fits", "{without}");
    assert_eq!(without["warnings"].as_array().unwrap().len(), 1, "{without}");
}

#[test]
fn container() {
    for row in rows("lpg_container.csv") {
        let mut input = json!({ "composition": composition(&row) });
        for field in ["gross_volume_l", "fill_fraction", "temperature_c"] {
            input[field] = json!(row.number(field));
        }
        let answer = ask("container", &input);
        let what = format!("{} {input}", row.text("mixture"));
        within(&what, number(&answer, "liquid_l"), row.number("liquid_l"), 1e-6);
        within(&what, number(&answer, "mass_kg"), row.number("liquid_mass_kg"), 0.0025);
        within(&what, number(&answer, "energy_mj"), row.number("energy_mj"), 0.003);
        if row.has("liquid_full_temperature_c") {
            let full_c = number(&answer, "liquid_full_temperature_c");
            close(&what, full_c, row.number("liquid_full_temperature_c"), 1.3);
        }
    }
}

#[test]
fn cylinder() {
    for row in rows("cng_cylinder.csv") {
        let mut input = json!({ "composition": composition(&row) });
        for field in ["volume_l", "pressure_kpa", "temperature_c", "at_temperature_c"] {
            input[field] = json!(row.number(field));
        }
        let answer = ask("cylinder", &input);
        for (field, tolerance) in
            [("mass_kg", 0.0005), ("standard_m3", 0.0005), ("settled_pressure_kpa", 0.0003), ("energy_mj", 0.001)]
        {
            within(row.text("gas"), number(&answer, field), row.number(field), tolerance);
        }
    }
}

#[test]
fn leak() {
    for row in rows("leak_decay.csv") {
        let mut input = json!({});
        for field in [
            "volume_l",
            "start_kpa",
            "end_kpa",
            "start_c",
            "end_c",
            "duration_min",
            "limit_cm3_h",
            "pressure_resolution_kpa",
            "pressure_standard_uncertainty_kpa",
            "temperature_standard_uncertainty_k",
            "volume_relative_standard_uncertainty",
        ] {
            input[field] = json!(row.number(field));
        }
        let ideal = ask("leak", &input);
        let expanded = row.number("mc_expanded_k2_cm3_h");
        within("U", number(&ideal, "expanded_uncertainty_cm3_h"), expanded, 0.006);
        let real = row.number("rate_real_gas_cm3_h");
        let tolerance = (0.015 * real.abs()).max(2.0);
        let is_high = row.number("start_kpa") > 1_500.0;
        assert_eq!(ideal["warnings"].to_string().contains("1500 kPa"), is_high, "{input}");
        if row.text("gas") == "methane" {
            input["composition"] = json!({ "methane": 1 });
            let answer = ask("leak", &input);
            close("real", number(&answer, "rate_cm3_h"), real, tolerance);
            // The ideal law is left, the small difference of large numbers stays.
            assert_eq!(
                answer["warnings"].to_string().contains("above 1500 kPa the rate is a small difference"),
                is_high
            );
        } else {
            close("ideal", number(&ideal, "rate_cm3_h"), real, tolerance);
        }
    }
}

/// The worked example, and the same with finer instruments: cannot tell, pass, fail, and what would help.
#[test]
fn leak_verdicts() {
    let mut input = example("leak");
    input.as_object_mut().unwrap().remove("composition");
    input["temperature_standard_uncertainty_k"] = json!(0.1);
    let first = ask("leak", &input);
    close("q", number(&first, "rate_cm3_h"), 46.6, 0.05);
    close("U", number(&first, "expanded_uncertainty_cm3_h"), 49.1, 0.05);
    assert_eq!(first["verdict"], "cannot-tell");
    assert!(first["needed_pressure_standard_uncertainty_kpa"].is_null(), "the thermometer alone takes the limit");
    input["pressure_standard_uncertainty_kpa"] = json!(0.01);
    input["pressure_resolution_kpa"] = json!(0.01);
    input["temperature_standard_uncertainty_k"] = json!(0.02);
    assert_eq!(ask("leak", &input)["verdict"], "fail");
    input["end_kpa"] = json!(401.3);
    let tight = ask("leak", &input);
    assert_eq!(tight["verdict"], "pass");
    close("U", number(&tight, "expanded_uncertainty_cm3_h"), 9.6, 0.05);
    input["limit_cm3_h"] = json!(0);
    let hopeless = ask("leak", &input);
    assert_eq!(hopeless["verdict"], "cannot-tell");
    assert!(hopeless["needed_duration_min"].is_null(), "a limit of nothing can never be proved: {hopeless}");
}

#[test]
fn lambda() {
    for row in rows("lambda.csv") {
        let mut input = json!({ "fuel": row.text("fuel") });
        for field in ["co_percent", "co2_percent", "o2_percent", "hc_ppm_hexane", "nox_ppm"] {
            input[field] = json!(row.number(field));
        }
        close(row.text("fuel"), number(&ask("lambda", &input), "lambda"), row.number("lambda"), 1e-6);
    }
}

/// 49 CFR 565.15: the number of its own example, and seventeen ones, which fit themselves.
#[test]
fn vin() {
    for (vin, well_formed, expected, fits, region) in [
        ("1M8GDM9AXKP042788", true, json!("X"), true, "north-america"),
        ("11111111111111111", true, json!("1"), true, "north-america"),
        // By hand: 72 + 56 + 42 + 18 + 8 + 7 + 12 + 15 + 16 + 15 + 12 is 273, which leaves 9 when divided by 11.
        ("ZYX00000ZBA123456", true, json!("9"), false, "europe"),
        ("ZYX00000ZBA12345", false, Value::Null, false, "unknown"),
        ("ZYX00000ZBO123456", false, Value::Null, false, "unknown"),
        ("", false, Value::Null, false, "unknown"),
    ] {
        let answer = ask("vin", &json!({ "vin": vin }));
        assert_eq!(answer["well_formed"], json!(well_formed), "{vin}");
        assert_eq!(answer["check_digit_expected"], expected, "{vin}");
        assert_eq!(answer["check_digit_ok"], json!(fits), "{vin}");
        assert_eq!(answer["region"], region, "{vin}");
        let is_warned = !answer["warnings"].as_array().unwrap().is_empty();
        assert_eq!(is_warned, well_formed && !fits, "{vin}");
    }
}

#[test]
fn due() {
    let with = |fields: Value| {
        let answer = ask("due", &fields);
        (answer["due_on"].as_str().unwrap().to_owned(), answer["by"].as_str().unwrap().to_owned())
    };
    let is = |on: &str, by: &str| (on.to_owned(), by.to_owned());
    assert_eq!(with(json!({ "from": "2026-01-31", "months": 1 })), is("2026-02-28", "date"));
    assert_eq!(with(json!({ "from": "2024-02-29", "months": 12 })), is("2025-02-28", "date"));
    let month = json!({ "from": "2016-03-02", "months": 120, "from_precision": "month" });
    assert_eq!(with(month), is("2026-03-31", "date"));
    // 100 km a day from 31 January: 15 000 km are 150 days.
    assert_eq!(with(example("due")), is("2026-06-30", "distance"));
    let mut slow = example("due");
    slow["km"] = json!(60_000);
    assert_eq!(with(slow), is("2027-01-31", "date"));
    let mut blind = example("due");
    blind["readings"] = json!([]);
    let answer = ask("due", &blind);
    assert_eq!((&answer["due_on"], &answer["by"]), (&json!("2027-01-31"), &json!("date")));
    assert!(answer["warnings"].to_string().contains("no forecast"), "{answer}");
}

/// Sets a value anywhere in a document, `/readings/1/km`.
pub fn set(document: &mut Value, pointer: &str, value: Value) {
    *document.pointer_mut(pointer).unwrap_or_else(|| panic!("nothing at {pointer}")) = value;
}

/// Every number of a document, by its pointer.
pub fn numbers(document: &Value) -> Vec<String> {
    fn walk(value: &Value, path: &str, found: &mut Vec<String>) {
        match value {
            Value::Number(_) => found.push(path.to_owned()),
            Value::Array(list) => {
                list.iter().enumerate().for_each(|(i, value)| walk(value, &format!("{path}/{i}"), found));
            }
            Value::Object(map) => map.iter().for_each(|(key, value)| walk(value, &format!("{path}/{key}"), found)),
            _ => {}
        }
    }
    let mut found = Vec::new();
    walk(document, "", &mut found);
    found
}

fn is_finite(value: &Value) -> bool {
    value.as_f64().is_none_or(f64::is_finite)
}

proptest! {
    /// Any number in any place: an answer of finite numbers with its fields, or a refusal in words.
    #[test]
    fn no_number_brings_nan_or_an_empty_field(row in 0usize..12, places in prop::collection::vec((any::<prop::sample::Index>(), any::<f64>(), -3.0..3.0f64), 1..4)) {
        let what = &WHATS[row];
        let mut input = example(what.name);
        let numbers = numbers(&input);
        prop_assume!(!numbers.is_empty());
        for (place, wild, factor) in places {
            let pointer = place.get(&numbers);
            let was = input.pointer(pointer).and_then(Value::as_f64).unwrap();
            // Half wild, half near what was there, where more than the range check is reached.
            let to = if wild.is_sign_negative() { was * factor } else { wild };
            prop_assume!(to.is_finite());
            set(&mut input, pointer, json!(to));
        }
        match reckon(what.name, input.to_string().as_bytes()) {
            Ok(answer) => {
                let answer = answer.as_object().unwrap();
                prop_assert_eq!(answer.len(), what.gives.len() + 3);
                for (field, value) in answer {
                    prop_assert!(is_finite(value), "{field}: {value}");
                    prop_assert!(!value.is_null() || what.may_be_null.contains(&field.as_str()), "{field} is null");
                }
            }
            Err(refused) => {
                prop_assert!(!refused.message.is_empty() && !refused.takes.is_empty());
                let known = |field: &str| what.takes.iter().chain(what.optional).any(|name| field.starts_with(name));
                prop_assert!(refused.field.as_deref().is_none_or(known), "{refused:?}");
            }
        }
    }

    #[test]
    fn no_bytes_stop_the_reader(bytes in prop::collection::vec(any::<u8>(), 0..200), row in 0usize..12) {
        prop_assert!(reckon(WHATS[row].name, &bytes).is_err());
    }

    /// A good input with one byte changed: an answer or a refusal, never a crash.
    #[test]
    fn no_flipped_byte_stops_the_reader(row in 0usize..12, at in any::<prop::sample::Index>(), byte: u8) {
        let mut text = example(WHATS[row].name).to_string().into_bytes();
        let at = at.index(text.len());
        text[at] = byte;
        let _ = reckon(WHATS[row].name, &text);
    }
}
