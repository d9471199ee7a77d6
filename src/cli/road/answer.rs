//! A comparison as the JSON object of the contract.

use std::path::Path;

use serde_json::{Map, Value, json};

use super::english;
use crate::calc::Source;
use crate::calc::road::{BASIS, Banded, Cell, CellVerdict, Comparison, FuelKnown, NozzleWord};
use crate::logs::Tally;

/// The whole answer.
pub(super) fn of(comparison: &Comparison, logs: &[(&Path, &Tally)]) -> Value {
    let warnings: Vec<String> = comparison
        .warnings
        .iter()
        .map(english::warning)
        .chain(logs.iter().flat_map(|(path, tally)| english::broken(path, tally)))
        .collect();
    json!({
        "cells": comparison.cells.iter().map(|one| cell(one, comparison.banded)).collect::<Vec<_>>(),
        "set_aside": comparison.set_aside,
        "rows": comparison.rows,
        "summary": summary(comparison),
        "trims": comparison.trims,
        "method": BASIS.method,
        "sources": BASIS.sources.iter().map(|one| Source::citation(*one)).collect::<Vec<_>>(),
        "warnings": warnings,
    })
}

fn cell(cell: &Cell, banded: Banded) -> Value {
    let mut all = Map::new();
    let mut put = |name: &str, value: Value| all.insert(name.to_owned(), value);
    put("rpm_from", json!(cell.rpm_from));
    put("rpm_to", json!(cell.rpm_to));
    match banded {
        Banded::Manifold => {
            put("manifold_from_kpa", json!(cell.load_from));
            put("manifold_to_kpa", json!(cell.load_to));
        }
        // No pressure was logged; none is made up.
        Banded::InjectionTime => {
            put("manifold_from_kpa", Value::Null);
            put("manifold_to_kpa", Value::Null);
            put("injection_from_ms", json!(cell.load_from));
            put("injection_to_ms", json!(cell.load_to));
        }
    }
    put("petrol_visits", json!(cell.petrol_visits));
    put("gas_visits", json!(cell.gas_visits));
    put("petrol_ms", rounded(cell.petrol_ms));
    put("gas_ms", rounded(cell.gas_ms));
    put("deviation_percent", rounded(cell.deviation_percent));
    put("low_percent", rounded(cell.low_percent));
    put("high_percent", rounded(cell.high_percent));
    put("verdict", json!(cell.verdict));
    put("advised_factor", rounded(cell.advised_factor));
    put("why", json!(english::why(cell, banded)));
    Value::Object(all)
}

/// Without the dust of binary.
fn rounded(value: Option<f64>) -> Value {
    json!(value.map(|value| (value * 1e6).round() / 1e6))
}

fn summary(comparison: &Comparison) -> Value {
    let count = |verdict| comparison.cells.iter().filter(|cell| cell.verdict == verdict).count();
    let nozzle = match comparison.nozzle {
        NozzleWord::Serves => "serves",
        NozzleWord::TooSmall { .. } => "too-small",
        NozzleWord::TooLarge { .. } => "too-large",
        NozzleWord::NotDriven => "not-driven",
    };
    json!({
        "good": count(CellVerdict::Good),
        "deviates": count(CellVerdict::Deviates),
        "undecided": count(CellVerdict::Undecided),
        "not_enough": count(CellVerdict::NotEnough),
        "no_feedback": count(CellVerdict::NoFeedback),
        "cells_by": match comparison.banded { Banded::Manifold => "manifold", Banded::InjectionTime => "injection-time" },
        "fuel": match comparison.fuel_known { FuelKnown::Logged => "logged", FuelKnown::Stated => "stated, not logged" },
        "nozzle": nozzle,
        "drive": comparison.cells.iter().filter_map(|cell| english::drive(cell, comparison.banded)).collect::<Vec<_>>(),
    })
}
