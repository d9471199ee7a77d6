//! Lambda against exhaust gases built forwards from a known air excess by element balances (`lambda.csv`).

use fuelwright::calc::decision::{Rule, Verdict};
use fuelwright::calc::lambda::{
    Exhaust, ExhaustFuel, LambdaLimit, NoLambda, PermissibleErrors, differs_from_analyser, hexane_from_propane_ppm,
    judge, lambda, lambda_reckoned_as, lambda_uncertainty,
};
use proptest::prelude::*;

use super::reference::{close, rows};

fn references() -> Vec<(Exhaust, f64)> {
    let fuel = |name: &str| serde_json::from_value(serde_json::Value::from(name)).unwrap();
    rows("lambda.csv")
        .iter()
        .map(|row| {
            let exhaust = Exhaust {
                fuel: fuel(row.text("fuel")),
                co_percent: row.number("co_percent"),
                co2_percent: row.number("co2_percent"),
                o2_percent: row.number("o2_percent"),
                hc_ppm_hexane: row.number("hc_ppm_hexane"),
                nox_ppm: Some(row.number("nox_ppm")),
            };
            close("h_c", exhaust.fuel.atoms().h_c, row.number("h_c"), 0.0);
            close("o_c", exhaust.fuel.atoms().o_c, row.number("o_c"), 0.0);
            (exhaust, row.number("lambda"))
        })
        .collect()
}

fn stoichiometric() -> Exhaust {
    Exhaust {
        fuel: ExhaustFuel::Petrol,
        co_percent: 0.2,
        co2_percent: 15.4,
        o2_percent: 0.2,
        hc_ppm_hexane: 70.0,
        nox_ppm: None,
    }
}

#[test]
fn lambda_of_every_reference_gas_is_the_one_it_was_built_with() {
    let references = references();
    assert_eq!(references.len(), 54);
    for (exhaust, expected) in references {
        close(&format!("{exhaust:?}"), lambda(&exhaust).unwrap(), expected, 1e-6);
    }
}

/// An analyser left on petrol reads gas near stoichiometry almost right and lean gas too lean.
#[test]
fn an_analyser_left_on_petrol_reads_gas_too_lean() {
    for (fuel, at, error, tolerance) in [
        (ExhaustFuel::Lpg, 1.00, 0.0005, 0.0003),
        (ExhaustFuel::Lpg, 1.03, 0.0045, 0.0005),
        (ExhaustFuel::Lpg, 1.10, 0.015, 0.001),
        (ExhaustFuel::Cng, 1.03, 0.013, 0.001),
        (ExhaustFuel::Cng, 1.10, 0.042, 0.001),
    ] {
        let (exhaust, right) = references()
            .into_iter()
            .find(|(exhaust, lambda)| exhaust.fuel == fuel && (lambda - at).abs() < 1e-9)
            .unwrap();
        let shown = lambda_reckoned_as(&exhaust, ExhaustFuel::Petrol).unwrap();
        close(&format!("{fuel:?} at {at}"), shown - right, error, tolerance);
    }
}

#[test]
fn a_probe_in_the_open_is_told_from_exhaust() {
    let air = Exhaust { co_percent: 0.0, co2_percent: 0.04, o2_percent: 20.9, hc_ppm_hexane: 0.0, ..stoichiometric() };
    assert!(matches!(lambda(&air), Err(NoLambda::ProbeNotInExhaust { .. })));
    let diluted = Exhaust { co2_percent: 5.7, co_percent: 0.2, ..stoichiometric() };
    assert!(matches!(lambda(&diluted), Err(NoLambda::ProbeNotInExhaust { .. })));
    let lean = Exhaust { o2_percent: 15.1, ..stoichiometric() };
    assert!(matches!(lambda(&lean), Err(NoLambda::ProbeNotInExhaust { .. })));
}

#[test]
fn no_carbon_dioxide_is_an_error_and_not_a_division() {
    let absurd = Exhaust { co2_percent: 0.0, co_percent: 8.0, ..stoichiometric() };
    let NoLambda::Outside(outside) = lambda(&absurd).unwrap_err() else { panic!("not a range error") };
    assert_eq!(outside.quantity, "co2_percent");
}

#[test]
fn what_no_analyser_can_show_is_named() {
    for (exhaust, quantity) in [
        (Exhaust { co_percent: f64::NAN, ..stoichiometric() }, "co_percent"),
        (Exhaust { co2_percent: -1.0, ..stoichiometric() }, "co2_percent"),
        (Exhaust { o2_percent: 26.0, ..stoichiometric() }, "o2_percent"),
        (Exhaust { hc_ppm_hexane: f64::INFINITY, ..stoichiometric() }, "hc_ppm_hexane"),
        (Exhaust { nox_ppm: Some(-1.0), ..stoichiometric() }, "nox_ppm"),
    ] {
        let NoLambda::Outside(outside) = lambda(&exhaust).unwrap_err() else { panic!("not a range error") };
        assert_eq!(outside.quantity, quantity);
    }
}

/// Permissible errors of OIML R 99 class 1 (from memory) give u about 0.003 near lambda 1.
#[test]
fn the_uncertainty_of_a_class_1_analyser_is_three_thousandths() {
    let combined = lambda_uncertainty(&stoichiometric(), &PermissibleErrors::default()).unwrap();
    close("u", combined.standard_uncertainty, 0.003, 0.0005);
    let exact =
        PermissibleErrors { co_percent: 0.0, co2_percent: 0.0, o2_percent: 0.0, hc_ppm_hexane: 0.0, nox_ppm: 0.0 };
    close(
        "u of an exact analyser",
        lambda_uncertainty(&stoichiometric(), &exact).unwrap().standard_uncertainty,
        0.0,
        0.0,
    );
}

#[test]
fn the_guarded_rule_doubts_where_the_simple_rule_passes() {
    let (exhaust, _) = references()
        .into_iter()
        .find(|(exhaust, lambda)| exhaust.fuel == ExhaustFuel::Lpg && (lambda - 1.03).abs() < 1e-9)
        .unwrap();
    let with = |rule, most| {
        judge(&exhaust, &PermissibleErrors::default(), LambdaLimit { least: 0.97, most, rule }).unwrap().verdict
    };
    assert_eq!(with(Rule::Guarded, 1.032), Verdict::CannotTell);
    assert_eq!(with(Rule::Simple, 1.032), Verdict::Pass);
    assert_eq!(with(Rule::Guarded, 1.04), Verdict::Pass);
    assert_eq!(with(Rule::Guarded, 1.02), Verdict::Fail);
}

#[test]
fn more_than_a_hundredth_from_the_analyser_asks() {
    assert!(!differs_from_analyser(1.00, 1.01));
    assert!(differs_from_analyser(1.00, 1.011));
    assert!(differs_from_analyser(1.00, 0.98));
    assert!(differs_from_analyser(1.00, f64::NAN));
}

#[test]
fn propane_readings_become_hexane_by_the_factor_on_the_plate() {
    close("hexane", hexane_from_propane_ppm(200.0, 0.52).unwrap(), 104.0, 1e-9);
    assert!(hexane_from_propane_ppm(200.0, 1.9).is_err());
}

proptest! {
    #[test]
    fn nitrogen_in_the_sample_changes_nothing(row in 0usize..54, kept in 0.3..1.0f64) {
        let (exhaust, expected) = references()[row];
        let diluted = Exhaust {
            co_percent: exhaust.co_percent * kept,
            co2_percent: exhaust.co2_percent * kept,
            o2_percent: exhaust.o2_percent * kept,
            hc_ppm_hexane: exhaust.hc_ppm_hexane * kept,
            nox_ppm: exhaust.nox_ppm.map(|nox| nox * kept),
            ..exhaust
        };
        match lambda(&diluted) {
            Ok(lambda) => prop_assert!((lambda - expected).abs() < 1e-6),
            Err(refused) => {
                let told = matches!(refused, NoLambda::ProbeNotInExhaust { .. });
                prop_assert!(told && diluted.co_percent + diluted.co2_percent < 6.0);
            }
        }
    }

    #[test]
    fn nothing_is_ever_nan(
        co in -1.0..30.0f64, co2 in -1.0..30.0f64, o2 in -1.0..30.0f64, hc in -1.0..200_000.0f64, nox in -1.0..20_000.0f64
    ) {
        let exhaust = Exhaust {
            fuel: ExhaustFuel::Cng, co_percent: co, co2_percent: co2, o2_percent: o2, hc_ppm_hexane: hc, nox_ppm: Some(nox),
        };
        if let Ok(lambda) = lambda(&exhaust) {
            prop_assert!(lambda.is_finite());
            if let Ok(combined) = lambda_uncertainty(&exhaust, &PermissibleErrors::default()) {
                prop_assert!(combined.standard_uncertainty.is_finite());
            } else {
                // Refused only where the error reaches over the reading itself.
                prop_assert!(co2 < PermissibleErrors::default().co2_percent);
            }
        }
    }
}
