//! What `fuelwright calc` refuses: every kind of bad input, for every row and every field.

use fuelwright::cli::calc::{MOST_BYTES, Refused, WHATS, reckon};
use serde_json::{Value, json};

use crate::contract::{example, numbers, set};

#[track_caller]
fn refuse(what: &str, input: &[u8]) -> Refused {
    match reckon(what, input) {
        Ok(answer) => panic!("{what} took {}: {answer}", String::from_utf8_lossy(input)),
        Err(refused) => refused,
    }
}

/// The refusal names `field`, in its message as well.
#[track_caller]
pub fn names(what: &str, input: &str, field: &str) -> Refused {
    let refused = refuse(what, input.as_bytes());
    assert_eq!(refused.field.as_deref(), Some(field), "{what} {input}: {refused:?}");
    assert!(refused.message.contains(field) && !refused.takes.is_empty(), "{refused:?}");
    refused
}

/// The refusal blames the input as a whole.
#[track_caller]
fn names_none(what: &str, input: &[u8], message: &str) {
    let refused = refuse(what, input);
    assert_eq!(refused.field, None, "{refused:?}");
    assert!(refused.message.contains(message), "{message:?} is not in {refused:?}");
}

/// `/readings/1/km` as the error writes it: `readings[1].km`.
pub fn dotted(pointer: &str) -> String {
    let written = pointer
        .split('/')
        .skip(1)
        .map(|step| if step.bytes().all(|b| b.is_ascii_digit()) { format!("[{step}]") } else { format!(".{step}") });
    written.collect::<String>().trim_start_matches('.').to_owned()
}

/// Every field of a row's example at any depth, lists and objects included.
fn places(document: &Value) -> Vec<String> {
    fn walk(value: &Value, path: &str, found: &mut Vec<String>) {
        if !path.is_empty() {
            found.push(path.to_owned());
        }
        match value {
            Value::Array(list) => list.iter().enumerate().for_each(|(i, v)| walk(v, &format!("{path}/{i}"), found)),
            Value::Object(map) => map.iter().for_each(|(key, v)| walk(v, &format!("{path}/{key}"), found)),
            _ => {}
        }
    }
    let mut found = Vec::new();
    walk(document, "", &mut found);
    found
}

/// The example with the value at `pointer` written as `text`.
fn with_text(what: &str, pointer: &str, text: &str) -> String {
    let mut input = example(what);
    set(&mut input, pointer, json!("@@"));
    input.to_string().replace("\"@@\"", text)
}

#[test]
fn a_missing_field_is_named() {
    for what in &WHATS {
        for field in what.takes {
            let mut input = example(what.name);
            input.as_object_mut().unwrap().remove(*field).unwrap();
            let refused = names(what.name, &input.to_string(), field);
            assert_eq!(json!(refused.got), "nothing");
        }
    }
    let mut input = example("due");
    input["readings"][1].as_object_mut().unwrap().remove("km");
    names("due", &input.to_string(), "readings[1].km");
}

#[test]
fn an_unknown_field_is_named() {
    for what in &WHATS {
        let mut input = example(what.name);
        input["colour"] = json!(3);
        let refused = names(what.name, &input.to_string(), "colour");
        assert_eq!(json!(refused.got), json!(3.0));
        assert!(refused.takes.contains(what.takes[0]), "{refused:?}");
    }
    let mut input = example("due");
    input["readings"][0]["miles"] = json!(3);
    names("due", &input.to_string(), "readings[0].miles");
    // Fields that a sum of ours knows and the contract does not.
    let mut input = example("nozzle");
    input["regulator_follows"] = json!("nothing");
    names("nozzle", &input.to_string(), "regulator_follows");
}

#[test]
fn another_type_is_named_wherever_it_stands() {
    for what in &WHATS {
        for pointer in places(&example(what.name)) {
            let here = example(what.name);
            let right = here.pointer(&pointer).unwrap();
            let wrong = [json!("15"), json!(15.5), json!(true), json!([1]), json!({ "a": 1 })];
            for value in wrong.into_iter().filter(|v| std::mem::discriminant(v) != std::mem::discriminant(right)) {
                let mut input = example(what.name);
                set(&mut input, &pointer, value.clone());
                let refused = refuse(what.name, input.to_string().as_bytes());
                let (field, wanted) = (refused.field.clone().unwrap(), dotted(&pointer));
                // An object in place of a composition is blamed at the stranger inside it.
                assert!(field == wanted || value.is_object() && field.starts_with(&wanted), "{wanted}: {refused:?}");
            }
        }
    }
}

#[test]
fn null_is_no_value() {
    for what in &WHATS {
        for pointer in places(&example(what.name)) {
            let mut input = example(what.name);
            set(&mut input, &pointer, Value::Null);
            let refused = names(what.name, &input.to_string(), &dotted(&pointer));
            assert_eq!(json!(refused.got), "null");
        }
    }
}

#[test]
fn what_is_no_json_number_is_named_and_quoted() {
    for what in &WHATS {
        for pointer in numbers(&example(what.name)) {
            for text in ["1e400", "-1e400", "NaN", "Infinity", "-Infinity", "+1", "0x10", ".5", "01", "1.", "1e", "--1"]
            {
                let refused = refuse(what.name, with_text(what.name, &pointer, text).as_bytes());
                assert_eq!(refused.field.as_deref(), Some(dotted(&pointer).as_str()), "{text} {refused:?}");
                assert_eq!(json!(refused.got), text, "{refused:?}");
            }
        }
    }
}

#[test]
fn a_key_written_twice_is_named_at_any_depth() {
    for what in &WHATS {
        for (field, value) in example(what.name).as_object().unwrap() {
            let text = example(what.name).to_string();
            let twice = format!("{{{}:{value},{}", json!(field), &text[1..]);
            let refused = names(what.name, &twice, field);
            assert_eq!(json!(refused.got), "the same key twice");
        }
    }
    names("fuel", r#"{"composition": {"propane": 0.6, "n_butane": 0.4, "propane": 0.6}}"#, "composition.propane");
    names("nozzle", r#"{"fuel": {"propane": 1, "propane": 1}}"#, "fuel.propane");
    let reading = r#"{"from":"2026-01-01","months":1,"readings":[{"date":"2026-01-01","km":1},{"km":1,"date":"2026-01-02","km":2}]}"#;
    names("due", reading, "readings[1].km");
    // The same key, once written with an escape.
    names("vin", r#"{"vin": "A", "v\u0069n": "B"}"#, "vin");
}

#[test]
fn anything_but_one_object_is_refused_as_a_whole() {
    for what in &WHATS {
        let good = example(what.name).to_string();
        let bytes = |parts: &[&[u8]]| parts.concat();
        for after in ["x", "{}", ",", "\0", "null", "]", &good] {
            names_none(what.name, &bytes(&[good.as_bytes(), after.as_bytes()]), "after the JSON object");
        }
        names_none(what.name, &bytes(&[b"\xef\xbb\xbf", good.as_bytes()]), "byte order mark");
        names_none(what.name, &bytes(&[b"\xff\xfe", good.as_bytes()]), "UTF-8");
        names_none(what.name, &bytes(&[good.as_bytes(), b"\xc3"]), "UTF-8");
        names_none(what.name, b"", "one JSON object");
        names_none(what.name, b"   \n", "one JSON object");
        for other in ["[]", "3", "null", "\"text\"", "true"] {
            names_none(what.name, other.as_bytes(), "not a JSON object");
        }
        names_none(what.name, good.replacen('{', "{,", 1).as_bytes(), "one JSON object");
        names_none(what.name, format!("{},}}", &good[..good.len() - 1]).as_bytes(), "one JSON object");
        let cut = refuse(what.name, &good.as_bytes()[..good.len() - 1]);
        assert!(cut.message.contains("ends in the middle"), "{cut:?}");
        // Blanks before and after are part of no value.
        assert!(reckon(what.name, format!(" \r\n\t{good}\n ").as_bytes()).is_ok());
        // Quotes, comments and depth that JSON does not have.
        assert!(reckon(what.name, good.replace('"', "'").as_bytes()).is_err());
        assert!(reckon(what.name, format!("/* */{good}").as_bytes()).is_err());
        assert!(reckon(what.name, "[".repeat(100_000).as_bytes()).is_err());
        assert!(reckon(what.name, r#"{"a":"#.repeat(100_000).as_bytes()).is_err());
    }
}

#[test]
fn a_megabyte_is_read_and_one_byte_more_is_not() {
    let mut input = example("fuel").to_string();
    input.push_str(&" ".repeat(MOST_BYTES - input.len()));
    assert!(reckon("fuel", input.as_bytes()).is_ok());
    input.push(' ');
    names_none("fuel", input.as_bytes(), "longer than 1000000 bytes");
    // As many different keys as a megabyte holds are told at once, not after minutes.
    let keys: Vec<String> = (0..100_000).map(|n| format!("\"{n}\":0")).collect();
    assert!(reckon("fuel", format!("{{{}}}", keys.join(",")).as_bytes()).is_err());
}

#[test]
fn numbers_that_must_be_whole_are() {
    for (what, pointer) in [("nozzle", "/engine_cylinders"), ("due", "/months")] {
        for text in ["4.5", "-4", "1e300"] {
            names(what, &with_text(what, pointer, text), &pointer[1..]);
        }
        assert!(reckon(what, with_text(what, pointer, "4.0").as_bytes()).is_ok());
    }
}

#[test]
fn mole_fractions_that_miss_one_are_refused_with_their_sum() {
    for what in WHATS.iter().filter(|what| what.takes[0] == "composition" || what.name == "nozzle") {
        let field = if what.name == "nozzle" { "fuel" } else { "composition" };
        for (shares, sum) in [
            (json!({ "methane": 0.5, "ethane": 0.45 }), 0.95),
            (json!({ "propane": 0.6, "n_butane": 0.4011 }), 1.0011),
            (json!({ "propane": 0.6, "n_butane": 0.3989 }), 0.9989),
            (json!({ "propane": 0.1, "n_butane": 0.2 }), 0.3),
            (json!({}), 0.0),
        ] {
            let mut input = example(what.name);
            input[field] = shares;
            let refused = names(what.name, &input.to_string(), field);
            assert_eq!(json!(refused.got), json!(sum));
            assert!(refused.message.contains(&sum.to_string()), "{refused:?}");
        }
        let mut input = example(what.name);
        input[field] = json!({ "propane": 0.5, "butane": 0.5 });
        let refused = names(what.name, &input.to_string(), &format!("{field}.butane"));
        assert!(refused.takes.contains("n_butane"), "{refused:?}");
    }
    // Within a thousandth they are taken, and mean what they say in parts of their sum.
    for butane in [0.401, 0.399] {
        let input = json!({ "composition": { "propane": 0.6, "n_butane": butane }, "temperature_c": 15 });
        assert!(reckon("vapour-pressure", input.to_string().as_bytes()).is_ok(), "{butane}");
    }
}

#[test]
fn a_partly_liquid_mixture_names_no_field_and_its_dew_temperature() {
    for (what, fields) in [
        ("gas-state", json!({ "temperature_c": 0 })),
        ("gas-state", json!({ "composition": { "propane": 1 }, "pressure_kpa": 1000, "temperature_c": 15 })),
        ("nozzle-flow", json!({ "temperature_c": 0 })),
        ("nozzle", json!({ "gas_temperature_c": -10 })),
        ("cylinder", json!({ "composition": { "propane": 1 }, "pressure_kpa": 900, "at_temperature_c": 15 })),
        (
            "cylinder",
            json!({ "composition": { "propane": 1 }, "pressure_kpa": 900, "temperature_c": 60, "at_temperature_c": -20 }),
        ),
        ("leak", json!({ "composition": { "propane": 1 }, "start_kpa": 1200, "end_kpa": 1200 })),
    ] {
        let mut input = example(what);
        for (name, value) in fields.as_object().unwrap() {
            input[name] = value.clone();
        }
        let refused = refuse(what, input.to_string().as_bytes());
        assert_eq!(refused.field, None, "{what}: {refused:?}");
        assert!(
            refused.message.contains("partly liquid") && refused.message.contains("dew temperature"),
            "{refused:?}"
        );
        let error = refused.to_json();
        assert!(error["error"]["field"].is_null(), "{error}");
    }
    let cold = json!({ "composition": { "propane": 1 }, "pressure_kpa": 1000, "temperature_c": 15 });
    // 26.9 C by the saturation curve of propane at 1 MPa.
    let message = refuse("gas-state", cold.to_string().as_bytes()).message;
    assert!(message.contains("26.9") || message.contains("27.0"), "{message}");
}

#[test]
fn states_that_do_not_exist_name_no_field() {
    for (what, input, message) in [
        (
            "gas-state",
            json!({ "composition": { "propane": 1 }, "pressure_kpa": 5000, "temperature_c": 15 }),
            "may be liquid",
        ),
        ("vapour-pressure", json!({ "composition": { "ethane": 1 }, "temperature_c": 60 }), "no such state"),
        (
            "container",
            json!({ "composition": { "propane": 1 }, "gross_volume_l": 60, "fill_fraction": 0.4, "temperature_c": 15 }),
            "liquid-full at no temperature",
        ),
        (
            "lambda",
            json!({ "fuel": "cng", "co_percent": 0, "co2_percent": 0.04, "o2_percent": 20.9, "hc_ppm_hexane": 0 }),
            "not in the exhaust",
        ),
        ("due", json!({ "from": "9999-12-31", "months": 1 }), "beyond the calendar"),
    ] {
        names_none(what, input.to_string().as_bytes(), message);
    }
}

#[test]
fn a_component_that_a_sum_does_not_know_is_named() {
    for (what, field) in [
        ("vapour-pressure", "composition.methane"),
        ("liquid-density", "composition.methane"),
        ("container", "composition.methane"),
    ] {
        let mut input = example(what);
        input["composition"] = json!({ "methane": 0.1, "propane": 0.9 });
        names(what, &input.to_string(), field);
    }
    let mut input = example("cylinder");
    input["composition"] = json!({ "methane": 0.9, "propene": 0.1 });
    names("cylinder", &input.to_string(), "composition.propene");
    for what in ["fuel", "nozzle"] {
        let mut input = example(what);
        let field = WHATS.iter().find(|row| row.name == what).unwrap().takes[0];
        input[field] = json!({ "nitrogen": 0.9, "methane": 0.1 });
        let refused = names(what, &input.to_string(), field);
        assert!(refused.message.contains("burns"), "{refused:?}");
    }
}

#[test]
fn the_gas_of_a_leak_is_asked_at_its_own_readings() {
    let mut input = example("leak");
    input["start_kpa"] = json!(40_000);
    names("leak", &input.to_string(), "start_kpa");
    let mut input = example("leak");
    input["end_c"] = json!(140);
    names("leak", &input.to_string(), "end_c");
    input.as_object_mut().unwrap().remove("composition");
    assert!(reckon("leak", input.to_string().as_bytes()).is_ok(), "an ideal gas has no such end");
}

#[test]
fn lists_and_dates_are_read_strictly() {
    let with = |what: &str, name: &str, value: Value| {
        let mut input = example(what);
        input[name] = value;
        input.to_string()
    };
    names("nozzle", &with("nozzle", "sizes_mm", json!([])), "sizes_mm");
    names("nozzle", &with("nozzle", "sizes_mm", json!(vec![2.0; 201])), "sizes_mm");
    names("nozzle", &with("nozzle", "sizes_mm", json!([2.0, "2.2"])), "sizes_mm[1]");
    let refused = names("nozzle", &with("nozzle", "dead_time_ms", json!(9.9)).replace("5800", "12000"), "dead_time_ms");
    assert!(refused.message.contains("no time to inject"), "{refused:?}");
    for date in
        ["2026-02-29", "2026-13-01", "31.01.2026", "2026-1-31", "2026-01-31T00:00", "", "+02026-01-1", "2026/01/31"]
    {
        names("due", &with("due", "from", json!(date)), "from");
    }
    names("due", &with("due", "from_precision", json!("year")), "from_precision");
    names("lambda", &with("lambda", "fuel", json!("diesel")), "fuel");
    let mut without = example("due");
    without.as_object_mut().unwrap().remove("from_km");
    names("due", &without.to_string(), "from_km");
}

#[test]
fn a_row_that_does_not_exist_lists_those_that_do() {
    for name in ["", "Fuel", "fuel ", "road"] {
        let refused = refuse(name, b"{}");
        assert_eq!(refused.field.as_deref(), Some("WHAT"));
        assert!(WHATS.iter().all(|what| refused.takes.contains(what.name)), "{refused:?}");
    }
}

#[test]
fn an_error_has_four_fields() {
    let refused = refuse("fuel", br#"{"composition": {"propane": 0.9}}"#).to_json();
    let wanted = json!({ "error": {
        "field": "composition",
        "got": 0.9,
        "takes": "mole fractions that sum to 1 within 0.001",
        "message": "the mole fractions of composition sum to 0.9; they take 1 within 0.001",
    } });
    assert_eq!(refused, wanted);
}
