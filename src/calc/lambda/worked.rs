//! Lambda and its uncertainty laid out term by term.

use super::judged::PermissibleErrors;
use super::{Atoms, CARBON_PERCENT_PER_PPM_HEXANE, Exhaust, WATER_GAS, formula};
use crate::calc::uncertainty::Shape;
use crate::calc::{Source, Step};

/// Lambdas near one another are subtracted.
const LAMBDA_FIGURES: i32 = 8;
/// And nearer still where one reading was moved by its uncertainty.
const MOVED_FIGURES: i32 = 11;

/// The steps from the shares of the dry gas to lambda.
#[must_use]
pub fn steps(exhaust: &Exhaust, lambda: f64) -> Vec<Step> {
    let Exhaust { co_percent: co, co2_percent: co2, o2_percent: o2, hc_ppm_hexane: hc, .. } = *exhaust;
    let nox = exhaust.nox_ppm.unwrap_or(0.0);
    let Atoms { h_c: h, o_c: o } = exhaust.fuel.atoms();
    let gas = WATER_GAS / (WATER_GAS + co / co2);
    let water = (h / 4.0 * gas - o / 2.0) * (co2 + co);
    let present = co2 + co / 2.0 + o2 + nox * 1e-4 / 2.0 + water;
    let carbon = co2 + co + CARBON_PERCENT_PER_PPM_HEXANE * hc;
    let needed = (1.0 + h / 4.0 - o / 2.0) * carbon;
    let source = Source::Brettschneider1979;
    vec![
        Step::new(
            "lambda-water-gas",
            ("w = 3.5 / (3.5 + CO / CO₂)", "3.5 / (3.5 + {} / {})"),
            &[co, co2],
            (gas, ""),
            source,
        )
        .with_result_of(LAMBDA_FIGURES),
        Step::new(
            "lambda-water",
            ("W = (H / 4 w - O / 2) (CO₂ + CO)", "({} / 4 · {} - {} / 2) · ({} + {})"),
            &[h, gas, o, co2, co],
            (water, "%"),
            source,
        )
        .with_numbers_of(LAMBDA_FIGURES)
        .with_result_of(LAMBDA_FIGURES),
        Step::new(
            "lambda-present",
            ("CO₂ + CO / 2 + O₂ + NO / 20000 + W", "{} + {} / 2 + {} + {} / 20000 + {}"),
            &[co2, co, o2, nox, water],
            (present, "%"),
            source,
        )
        .with_numbers_of(LAMBDA_FIGURES)
        .with_result_of(LAMBDA_FIGURES),
        Step::new(
            "lambda-carbon",
            ("C = CO₂ + CO + 0.0006 HC", "{} + {} + 0.0006 · {}"),
            &[co2, co, hc],
            (carbon, "%"),
            source,
        )
        .with_result_of(LAMBDA_FIGURES),
        Step::new(
            "lambda-needed",
            ("(1 + H / 4 - O / 2) C", "(1 + {} / 4 - {} / 2) · {}"),
            &[h, o, carbon],
            (needed, "%"),
            source,
        )
        .with_numbers_of(LAMBDA_FIGURES)
        .with_result_of(LAMBDA_FIGURES),
        Step::new("lambda", ("λ", "{} / {}"), &[present, needed], (lambda, ""), source).with_numbers_of(LAMBDA_FIGURES),
    ]
}

/// The steps from the permissible errors to the expanded uncertainty, `expanded`, of lambda.
///
/// Each reading is raised and lowered by the standard uncertainty of a rectangle, and lambda reckoned anew.
#[must_use]
pub fn uncertainty_steps(exhaust: &Exhaust, errors: &PermissibleErrors, expanded: f64) -> Vec<Step> {
    let read = [
        exhaust.co_percent,
        exhaust.co2_percent,
        exhaust.o2_percent,
        exhaust.hc_ppm_hexane,
        exhaust.nox_ppm.unwrap_or(0.0),
    ];
    let within = [
        ("lambda-from-co", errors.co_percent),
        ("lambda-from-co2", errors.co2_percent),
        ("lambda-from-o2", errors.o2_percent),
        ("lambda-from-hc", errors.hc_ppm_hexane),
        ("lambda-from-nox", errors.nox_ppm),
    ];
    let atoms = exhaust.fuel.atoms();
    let source = Source::Jcgm100;
    let mut all = Vec::new();
    let mut added = Vec::new();
    for (at, (key, half_width)) in within.into_iter().enumerate().filter(|(_, (_, half_width))| *half_width > 0.0) {
        let u = Shape::Rectangle.standard_uncertainty(half_width);
        let moved = |by: f64| {
            let mut x = read;
            x[at] += by;
            formula(atoms, x)
        };
        let (above, below) = (moved(u), moved(-u));
        // The larger first: what is added has no sign.
        let (most, least) = (above.max(below), above.min(below));
        let words = ("u_i = (λ(x ± a / √3) - λ(x ∓ a / √3)) / 2", "({} - {}) / 2");
        let u = 0.5 * (most - least);
        added.push([u]);
        all.push(Step::new(key, words, &[most, least], (u, ""), source).with_numbers_of(MOVED_FIGURES));
    }
    if !added.is_empty() {
        let (sum, values) = crate::calc::worked::sum_of("{} ^ 2", added);
        let words = ("U = 2 √(Σ u²)", &*format!("2 · √({sum})"));
        all.push(Step::new("lambda-expanded", words, &values, (expanded, ""), source));
    }
    all
}
