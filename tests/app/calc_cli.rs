//! `fuelwright calc` as it is started: what goes to which stream, and with which exit code.

use std::io::Write;
use std::process::{Command, Output, Stdio};

use serde_json::Value;

fn calc(arguments: &[&str], input: &[u8]) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_fuelwright"));
    command.arg("calc").args(arguments).env_clear();
    let mut child = command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
    // A refusal may come before all is read; the pipe then breaks, and that is no failure.
    let _ = child.stdin.take().unwrap().write_all(input);
    child.wait_with_output().unwrap()
}

/// One JSON object, alone on its line.
#[track_caller]
fn object(output: &Output) -> Value {
    let text = String::from_utf8(output.stdout.clone()).unwrap();
    assert!(text.ends_with('\n') && text.trim_end().lines().count() == 1, "{text:?}");
    serde_json::from_str(&text).unwrap()
}

#[track_caller]
fn answered(what: &str, input: &str) -> Value {
    let output = calc(&[what], input.as_bytes());
    let said = String::from_utf8_lossy(&output.stderr);
    assert_eq!((output.status.code(), said.as_ref()), (Some(0), ""), "{input}");
    object(&output)
}

#[track_caller]
fn refused(arguments: &[&str], input: &[u8]) -> Value {
    let output = calc(arguments, input);
    assert_eq!(output.status.code(), Some(2), "{output:?}");
    let answer = object(&output);
    let keys: Vec<&str> = answer["error"].as_object().unwrap().keys().map(String::as_str).collect();
    assert_eq!((answer.as_object().unwrap().len(), keys), (1, vec!["field", "got", "takes", "message"]));
    let said = String::from_utf8(output.stderr).unwrap();
    assert_eq!(said.trim_end(), format!("fuelwright: calc: {}", answer["error"]["message"].as_str().unwrap()));
    answer["error"].clone()
}

/// Worked examples: one of each row, through pipes. The tables are held against the library function in `sums`.
#[test]
fn every_row_answers() {
    let gas = r#""composition": {"propane": 0.6, "n_butane": 0.4}"#;
    for (what, input, field, value, tolerance) in [
        ("vapour-pressure", format!("{{{gas}, \"temperature_c\": 15}}"), "pressure_kpa", 496.44, 1.0),
        ("liquid-density", format!("{{{gas}, \"temperature_c\": 15}}"), "density_kg_m3", 543.16, 1.0),
        ("gas-state", format!("{{{gas}, \"pressure_kpa\": 217, \"temperature_c\": 50}}"), "density_kg_m3", 4.161, 0.01),
        ("fuel", format!("{{{gas}}}"), "lower_heating_value_mj_kg", 46.05, 0.02),
        (
            "nozzle-flow",
            format!("{{{gas}, \"upstream_kpa\": 217, \"downstream_kpa\": 97, \"temperature_c\": 50, \"diameter_mm\": 2.2, \"discharge_coefficient\": 0.8}}"),
            "mass_flow_g_s",
            1.807,
            0.009,
        ),
        (
            "nozzle",
            r#"{"fuel": {"propane": 0.6, "n_butane": 0.4}, "rated_power_kw": 75, "rated_rpm": 5800, "engine_cylinders": 4,
                "brake_efficiency": 0.3, "manifold_kpa": 97, "supply_over_manifold_kpa": 120, "gas_temperature_c": 50,
                "dead_time_ms": 1.6, "max_duty": 0.9, "discharge_coefficient": 0.8, "sizes_mm": [2.0, 2.2]}"#
                .to_owned(),
            "diameter_mm",
            2.1019,
            0.006,
        ),
        (
            "container",
            r#"{"composition": {"propane": 1}, "gross_volume_l": 60, "fill_fraction": 0.8, "temperature_c": 15}"#.to_owned(),
            "liquid_full_temperature_c",
            67.88,
            1.3,
        ),
        (
            "cylinder",
            r#"{"composition": {"methane": 1}, "volume_l": 80, "pressure_kpa": 20000, "temperature_c": 15}"#.to_owned(),
            "mass_kg",
            13.4203,
            0.007,
        ),
        (
            "leak",
            r#"{"volume_l": 2, "start_kpa": 401.3, "end_kpa": 400.9, "start_c": 20, "end_c": 20, "duration_min": 10,
                "limit_cm3_h": 20, "pressure_resolution_kpa": 0.1, "pressure_standard_uncertainty_kpa": 0.05,
                "temperature_standard_uncertainty_k": 0.1, "volume_relative_standard_uncertainty": 0.05}"#
                .to_owned(),
            "rate_cm3_h",
            46.636,
            2.0,
        ),
        (
            "lambda",
            r#"{"fuel": "cng", "co_percent": 0, "co2_percent": 11.7, "o2_percent": 0, "hc_ppm_hexane": 0}"#.to_owned(),
            "lambda",
            1.0,
            1e-9,
        ),
    ] {
        let answer = answered(what, &input);
        let got = answer[field].as_f64().unwrap();
        assert!((got - value).abs() <= tolerance, "{what}: {got} instead of {value}");
        assert!(answer["method"].is_string() && answer["sources"].is_array() && answer["warnings"].is_array());
    }
    assert_eq!(answered("vin", r#"{"vin": "1M8GDM9AXKP042788"}"#)["check_digit_expected"], "X");
    assert_eq!(answered("due", r#"{"from": "2026-01-31", "months": 1}"#)["due_on"], "2026-02-28");
}

#[test]
fn a_refusal_is_one_object_and_one_sentence() {
    let sum = refused(&["fuel"], br#"{"composition": {"propane": 0.5, "n_butane": 0.45}}"#);
    assert_eq!((&sum["field"], &sum["got"]), (&"composition".into(), &0.95.into()));
    let wet = refused(&["gas-state"], br#"{"composition": {"propane": 1}, "pressure_kpa": 1000, "temperature_c": 15}"#);
    assert!(wet["field"].is_null() && wet["message"].as_str().unwrap().contains("dew temperature"), "{wet}");
    let bom = refused(&["vin"], b"\xef\xbb\xbf{\"vin\": \"A\"}");
    assert!(bom["message"].as_str().unwrap().contains("byte order mark"), "{bom}");
    assert_eq!(refused(&["vin"], b"{\"vin\": 1e400}")["got"], "1e400");
    assert_eq!(refused(&["vin"], b"")["field"], Value::Null);
    // More than a pipe holds and more than is read.
    assert_eq!(refused(&["vin"], &vec![b' '; 3_000_000])["takes"], "at most 1 MB");
}

#[test]
fn an_unknown_row_lists_the_others() {
    for arguments in [&["petrol"][..], &[]] {
        let error = refused(arguments, b"{}");
        for name in ["vapour-pressure", "nozzle-flow", "due"] {
            assert!(error["takes"].as_str().unwrap().contains(name), "{error}");
        }
    }
}

#[test]
fn help_shows_the_rows() {
    let output = calc(&["--help"], b"");
    let said = String::from_utf8(output.stdout).unwrap();
    assert_eq!(output.status.code(), Some(0));
    for wanted in ["vapour-pressure", "settled_pressure_kpa", "[reference_kpa]", "mole fractions that sum to 1"] {
        assert!(said.contains(wanted), "{wanted}: {said}");
    }
}
