//! `fuelwright road` as it is started. The logs under `tests/reference/logs` are invented (see `generate/logs.py` there):
//! gas is lean by 8 % between 2500 and 3000/min and nowhere else.

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use serde_json::Value;

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/reference/logs")
}

fn road(arguments: &[&str]) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_fuelwright"));
    command.arg("road").args(arguments).current_dir(folder()).env_clear().output().unwrap()
}

#[track_caller]
fn object(output: &Output) -> Value {
    let text = String::from_utf8(output.stdout.clone()).unwrap();
    assert!(text.ends_with('\n') && text.trim_end().lines().count() == 1, "{output:?}");
    serde_json::from_str(&text).unwrap()
}

#[track_caller]
fn answered(arguments: &[&str]) -> Value {
    let output = road(arguments);
    assert_eq!(
        (output.status.code(), String::from_utf8_lossy(&output.stderr).as_ref()),
        (Some(0), ""),
        "{arguments:?}"
    );
    object(&output)
}

/// The error's field and sentence.
#[track_caller]
fn refused(arguments: &[&str]) -> (String, String) {
    let output = road(arguments);
    assert_eq!(output.status.code(), Some(2), "{output:?}");
    let answer = object(&output);
    let keys: Vec<&str> = answer["error"].as_object().unwrap().keys().map(String::as_str).collect();
    assert_eq!((answer.as_object().unwrap().len(), keys), (1, vec!["field", "got", "takes", "message"]));
    let said = String::from_utf8(output.stderr).unwrap();
    let message = answer["error"]["message"].as_str().unwrap().to_owned();
    assert_eq!(said.trim_end(), format!("fuelwright: road: {message}"));
    (answer["error"]["field"].as_str().unwrap_or_default().to_owned(), message)
}

const PLAIN: [&str; 5] =
    ["time_s=time_s", "rpm=rpm", "manifold_kpa=manifold_kpa", "petrol_ms=petrol_ms", "coolant_c=coolant_c"];

fn columns<'a>(option: &'a str, names: &[&'a str]) -> Vec<&'a str> {
    names.iter().flat_map(|name| [option, name]).collect()
}

/// The plain petrol drive beside a gas drive whose columns have these names.
fn beside<'a>(gas: &'a str, names: &[&'a str]) -> Vec<&'a str> {
    let mut all = vec!["--petrol", "petrol.csv", "--gas", gas];
    all.extend(columns("--petrol-column", &PLAIN));
    all.extend(columns("--gas-column", names));
    all
}

fn plain_pair() -> Vec<&'static str> {
    let mut all = vec!["--petrol", "petrol.csv", "--gas", "gas.csv"];
    all.extend(columns("--column", &PLAIN));
    all
}

/// Numbers of two answers. Another unit is another last bit of a double; the last digit logged is a hundred times the tolerance.
#[track_caller]
fn is_like(one: &Value, other: &Value, about: &str) {
    match (one, other) {
        (Value::Number(one), Value::Number(other)) => {
            assert!((one.as_f64().unwrap() - other.as_f64().unwrap()).abs() < 1e-4, "{about}: {one} and {other}");
        }
        (Value::Array(one), Value::Array(other)) => {
            assert_eq!(one.len(), other.len(), "{about}");
            one.iter().zip(other).for_each(|(one, other)| is_like(one, other, about));
        }
        (Value::Object(one), Value::Object(other)) => {
            assert_eq!(one.len(), other.len(), "{about}");
            one.iter().for_each(|(key, value)| is_like(value, &other[key], &format!("{about} {key}")));
        }
        _ => assert_eq!(one, other, "{about}"),
    }
}

#[test]
fn a_lean_region_is_found_where_it_is() {
    let answer = answered(&plain_pair());
    let keys: Vec<&str> = answer.as_object().unwrap().keys().map(String::as_str).collect();
    assert_eq!(keys, ["cells", "set_aside", "rows", "summary", "trims", "method", "sources", "warnings"]);
    let cells = answer["cells"].as_array().unwrap();
    let lean = cells.iter().find(|cell| cell["rpm_from"] == 2500.0 && cell["manifold_from_kpa"] == 50.0).unwrap();
    let number = |key: &str| lean[key].as_f64().unwrap();
    assert_eq!(lean["verdict"], "deviates");
    // The truth that the logs were made with.
    assert!(number("low_percent") <= 8.0 && 8.0 <= number("high_percent"), "{lean}");
    assert!(number("advised_factor") > 1.0, "{lean}");
    let good = cells.iter().filter(|cell| cell["verdict"] == "good");
    assert!(good.clone().count() >= 2);
    for cell in good {
        let has_none = cell["low_percent"].as_f64().unwrap() <= 0.0 && cell["high_percent"].as_f64().unwrap() >= 0.0;
        assert!(has_none, "{cell}");
    }
    assert_eq!(
        (&answer["rows"]["petrol"], &answer["rows"]["gas"], &answer["rows"]["broken"]),
        (&560.into(), &560.into(), &0.into())
    );
    assert!(answer["warnings"].as_array().unwrap().contains(&"fuel stated, not logged".into()));
}

#[test]
fn every_writing_of_the_same_drive_gives_the_same_answer() {
    const GERMAN: [&str; 5] = [
        "time_s=Zeit",
        "rpm=Motordrehzahl",
        "manifold_kpa=Saugrohrdruck",
        "petrol_ms=Einspritzzeit Benzin",
        "coolant_c=Kühlmitteltemperatur",
    ];
    const POLISH: [&str; 5] = [
        "time_s=Czas",
        "rpm=Prędkość obrotowa",
        "manifold_kpa=Ciśnienie w kolektorze",
        "petrol_ms=Czas wtrysku benzyny",
        "coolant_c=Temperatura płynu",
    ];
    let wanted = answered(&plain_pair());
    for (gas, names) in [
        ("gas_semicolon_bom.csv", GERMAN),
        ("gas_tab_utf16le.txt", GERMAN),
        ("gas_tab_utf16be.txt", GERMAN),
        ("gas_units_1252.csv", GERMAN),
        ("gas_polish_1250.csv", POLISH),
        ("gas_bar_cr.txt", GERMAN),
        ("gas_blanks.txt", PLAIN),
        ("gas_clock_quoted.csv", GERMAN),
        ("gas.xlsx", PLAIN),
    ] {
        is_like(&answered(&beside(gas, &names)), &wanted, gas);
    }
}

#[test]
fn broken_lines_are_counted_and_told_and_change_nothing() {
    let (wanted, got) = (answered(&plain_pair()), answered(&beside("gas_broken.csv", &PLAIN)));
    is_like(&got["cells"], &wanted["cells"], "cells");
    assert_eq!(got["rows"]["broken"], 4);
    let warnings = got["warnings"].to_string();
    assert!(warnings.contains("line 101 of gas_broken.csv cannot be read: rpm is no finite number"), "{warnings}");
}

#[test]
fn a_log_of_one_quantity_a_row_finds_the_same_region() {
    let answer = answered(&beside("gas_sparse.csv", &PLAIN));
    let cells = answer["cells"].as_array().unwrap();
    let lean = cells.iter().find(|cell| cell["rpm_from"] == 2500.0 && cell["manifold_from_kpa"] == 50.0).unwrap();
    assert_eq!(lean["verdict"], "deviates");
    assert!((lean["deviation_percent"].as_f64().unwrap() - 8.0).abs() < 1.0, "{lean}");
}

#[test]
fn one_log_with_a_fuel_column_is_parted_by_it() {
    let mut all = vec!["--log", "both.csv", "--column", "fuel=fuel"];
    all.extend(columns("--column", &PLAIN));
    let answer = answered(&all);
    let cells = answer["cells"].as_array().unwrap();
    let lean = cells.iter().find(|cell| cell["rpm_from"] == 2500.0 && cell["manifold_from_kpa"] == 50.0).unwrap();
    assert_eq!((&lean["verdict"], &answer["summary"]["fuel"]), (&"deviates".into(), &"logged".into()));
    assert!(!answer["warnings"].to_string().contains("stated"));
    // Said the other way round, gas is what is rich.
    all.extend(["--gas-word", "petrol"]);
    let turned = answered(&all);
    let cells = turned["cells"].as_array().unwrap();
    let rich = cells.iter().find(|cell| cell["rpm_from"] == 2500.0 && cell["manifold_from_kpa"] == 50.0).unwrap();
    assert!(rich["deviation_percent"].as_f64().unwrap() < -6.0, "{rich}");
}

#[test]
fn a_unit_or_a_factor_behind_a_name_scales_the_column() {
    let mut all = vec!["--petrol", "petrol.csv", "--gas", "gas.csv"];
    all.extend(columns(
        "--column",
        &["time_s=time_s*1.0", "rpm=rpm [1/min]", "petrol_ms=petrol_ms [ms]", "coolant_c=coolant_c"],
    ));
    all.extend(["--column", "manifold_kpa=manifold_kpa [kPa]"]);
    is_like(&answered(&all), &answered(&plain_pair()), "by hand");
    let mut all = plain_pair();
    all[5 + 4] = "manifold_kpa=manifold_kpa [mbar]";
    let (_, message) = refused(&all);
    assert!(message.contains("manifold_kpa"), "4.5 kPa is no manifold pressure: {message}");
}

#[test]
fn without_a_manifold_pressure_none_is_made_up() {
    let mut all = vec!["--petrol", "petrol.csv", "--gas", "gas.csv"];
    all.extend(columns("--column", &["time_s=time_s", "rpm=rpm", "petrol_ms=petrol_ms"]));
    let answer = answered(&all);
    assert_eq!(answer["summary"]["cells_by"], "injection-time");
    for cell in answer["cells"].as_array().unwrap() {
        assert!(cell["manifold_from_kpa"].is_null() && cell["injection_from_ms"].is_number(), "{cell}");
    }
}

#[test]
fn arguments_that_do_not_go_together_are_refused() {
    for (arguments, field) in [
        (vec![], "--log"),
        (vec!["--petrol", "petrol.csv"], "--gas"),
        (vec!["--gas", "gas.csv"], "--petrol"),
        (vec!["--log", "both.csv", "--gas", "gas.csv"], "--log"),
        (vec!["--log", "both.csv", "--petrol-column", "rpm=rpm"], "--petrol-column"),
        (vec!["--petrol", "petrol.csv", "--gas", "gas.csv", "--column", "rpm"], "--column"),
        (vec!["--petrol", "petrol.csv", "--gas", "gas.csv", "--column", "speed=rpm"], "--column"),
        (vec!["--petrol", "petrol.csv", "--gas", "gas.csv", "--column", "rpm="], "--column"),
        (
            vec!["--petrol", "petrol.csv", "--gas", "gas.csv", "--gas-column", "rpm=a", "--gas-column", "rpm=b"],
            "--gas-column",
        ),
        (vec!["--petrol", "petrol.csv", "--gas", "gas.csv", "--column", "rpm=rpm"], "--column"),
    ] {
        assert_eq!(refused(&arguments).0, field, "{arguments:?}");
    }
}

#[test]
fn a_column_that_is_not_there_is_named_with_those_that_are() {
    let mut all = plain_pair();
    all.extend(["--gas-column", "gas_kpa=Gas pressure"]);
    let (field, message) = refused(&all);
    assert_eq!(field, "--gas-column");
    assert!(
        message.contains("Gas pressure") && message.contains("gas.csv") && message.contains("manifold_kpa, petrol_ms"),
        "{message}"
    );
    let (_, message) = refused(&[
        "--log",
        "both.csv",
        "--column",
        "time_s=time_s",
        "--column",
        "rpm=rpm",
        "--column",
        "petrol_ms=petrol_ms",
    ]);
    assert!(message.contains("fuel"), "{message}");
}

#[test]
fn the_same_drive_on_both_sides_is_refused_even_when_written_anew() {
    let mut same = plain_pair();
    same[1] = "gas.csv";
    assert_eq!(refused(&same).0, "--gas");
    let anew = tempfile::NamedTempFile::new().unwrap();
    let text = std::fs::read_to_string(folder().join("gas.csv")).unwrap();
    std::fs::write(anew.path(), text.replace(',', ";")).unwrap();
    same[1] = anew.path().to_str().unwrap();
    let (field, message) = refused(&same);
    assert_eq!(field, "--gas");
    assert!(message.contains("same recording"), "{message}");
}

#[test]
fn files_without_a_row_to_use_are_refused_with_the_reason() {
    let file = tempfile::NamedTempFile::new().unwrap();
    let path = file.path().to_str().unwrap().to_owned();
    let with = |content: &[u8]| {
        std::fs::write(file.path(), content).unwrap();
        refused(&beside(&path, &PLAIN))
    };
    assert!(with(b"").1.contains("empty"));
    assert!(with(b"no table here\n").1.contains("no table"));
    assert!(with(b"PK\x03\x04 and no archive").1.contains("workbook"));
    let cold = "time_s,rpm,manifold_kpa,petrol_ms,coolant_c\n0,800,35,3.1,20\n0.1,800,35,3.1,20\n0.2,800,35,3.1,20\n";
    let (field, message) = with(cold.as_bytes());
    assert_eq!(field, "");
    assert!(message.contains("no usable row") && message.contains("cold"), "{message}");
    let (field, message) = refused(&beside("nowhere.csv", &PLAIN));
    assert_eq!(field, "--gas");
    assert!(message.contains("nowhere.csv"), "{message}");
}

#[test]
fn a_fuel_column_that_says_one_fuel_for_both_is_refused() {
    let log = tempfile::NamedTempFile::new().unwrap();
    let text = std::fs::read_to_string(folder().join("both.csv")).unwrap();
    std::fs::write(log.path(), text.replace("LPG", "petrol")).unwrap();
    let mut all = vec!["--log", log.path().to_str().unwrap(), "--column", "fuel=fuel"];
    all.extend(columns("--column", &PLAIN));
    let (_, message) = refused(&all);
    assert!(message.contains("petrol"), "{message}");
}

#[test]
fn columns_that_cannot_be_what_they_are_called_are_refused() {
    let mut all = plain_pair();
    all[7] = "rpm=coolant_c";
    all[13] = "coolant_c=rpm";
    // 88.5 C named as engine speed would be an engine that stands.
    let (_, message) = refused(&all);
    assert!(message.contains("rpm") || message.contains("coolant_c"), "{message}");
}

#[test]
fn help_names_every_quantity_and_says_what_it_cannot_prove() {
    let output = road(&["--help"]);
    let text = String::from_utf8(output.stdout).unwrap();
    for word in
        ["time_s", "manifold_kpa", "closed_loop", "--petrol-column", "kPa, bar, mbar", "°C", "open loop", "licensed"]
    {
        assert!(text.contains(word), "{word}\n{text}");
    }
}
