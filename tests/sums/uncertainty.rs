//! Uncertainty against the worked examples of JCGM 100:2008, annex H, and its table of Student's factors.

use std::collections::HashMap;

use fuelwright::calc::reported::reported;
use fuelwright::calc::student;
use fuelwright::calc::uncertainty::{
    Correlation, Input, Shape, combine, correlation_of_means, covariance, sensitivities,
};

use super::reference::{close, rows};

fn published(example: &str) -> HashMap<String, (f64, String)> {
    rows("gum_examples.csv")
        .iter()
        .filter(|row| row.text("example") == example)
        .map(|row| (row.text("quantity").to_owned(), (row.number("computed"), row.text("published").to_owned())))
        .collect()
}

/// `got` equals the independent computation, and the published figure to half a unit of its last printed digit.
#[track_caller]
fn agrees(published: &HashMap<String, (f64, String)>, quantity: &str, got: f64, last_digits: f64) {
    let (computed, printed) = &published[quantity];
    close(quantity, got, *computed, 2e-5 * computed.abs());
    let decimals = printed.split_once('.').map_or(0, |(_, decimals)| i32::try_from(decimals.len()).unwrap());
    let printed: f64 = printed.parse().unwrap();
    close(quantity, got, printed, last_digits * 10f64.powi(-decimals) * 1.000_001);
}

/// JCGM 100:2008, H.1: calibration of an end gauge.
#[test]
fn the_end_gauge_of_annex_h_1_comes_out_as_printed() {
    let published = published("H.1");
    let rectangle = |half_width| Input::new(0.0, Shape::Rectangle.standard_uncertainty(half_width));
    let swing = Shape::Arcsine.standard_uncertainty(0.5);
    let inputs = [
        Input::new(50_000_623.0, 25.0).with_degrees_of_freedom(18.0),
        Input::new(215.0, 5.8).with_degrees_of_freedom(24.0),
        Input::new(0.0, 3.9).with_degrees_of_freedom(5.0),
        Input::new(0.0, 6.7).with_degrees_of_freedom(8.0),
        Input { estimate: 11.5e-6, ..rectangle(2e-6) },
        rectangle(1e-6).with_degrees_of_freedom(50.0),
        rectangle(0.05).with_degrees_of_freedom(2.0),
        Input::new(-0.1, 0.2_f64.hypot(swing)),
    ];
    let length = |x: &[f64]| x[0] + x[1] + x[2] + x[3] - x[0] * (x[5] * x[7] + x[4] * x[6]);
    let estimates: Vec<f64> = inputs.iter().map(|input| input.estimate).collect();
    agrees(&published, "length_nm", length(&estimates), 0.5);

    let c = sensitivities(&inputs, length);
    let combined = combine(&inputs, &c, &[]).unwrap();
    agrees(&published, "standard_uncertainty_nm", combined.standard_uncertainty, 0.5);
    let nu = combined.effective_degrees_of_freedom.unwrap();
    agrees(&published, "effective_degrees_of_freedom", nu, 1.0);
    let k = combined.coverage_factor(0.99).unwrap();
    agrees(&published, "coverage_factor_99", k, 0.5);
    agrees(&published, "expanded_99_nm", k * combined.standard_uncertainty, 1.0);
    // The document cuts the degrees of freedom and multiplies what it printed before: 2.92 times 32 nm.
    close("nu as printed", nu.floor(), 16.0, 0.0);
    let printed = (k * 100.0).round() / 100.0 * combined.standard_uncertainty.round();
    close("U as printed", printed.round(), 93.0, 0.0);
}

/// JCGM 100:2008, H.2: resistance and reactance measured together, inputs correlated.
#[test]
fn the_resistance_and_reactance_of_annex_h_2_come_out_as_printed() {
    let published = published("H.2");
    let v = [5.007, 4.994, 5.005, 4.990, 4.999];
    let i = [19.663e-3, 19.639e-3, 19.640e-3, 19.685e-3, 19.678e-3];
    let phi = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433];
    let inputs = [&v, &i, &phi].map(|readings| Input::from_readings(readings).unwrap());
    agrees(&published, "mean_v", inputs[0].estimate, 0.5);
    agrees(&published, "mean_i_ma", 1e3 * inputs[1].estimate, 0.5);
    agrees(&published, "mean_phi", inputs[2].estimate, 0.5);
    agrees(&published, "u_v", inputs[0].standard_uncertainty, 0.5);
    agrees(&published, "u_i_ma", 1e3 * inputs[1].standard_uncertainty, 0.5);
    agrees(&published, "u_phi", inputs[2].standard_uncertainty, 0.5);

    let r = [
        correlation_of_means(&v, &i).unwrap(),
        correlation_of_means(&v, &phi).unwrap(),
        correlation_of_means(&i, &phi).unwrap(),
    ];
    for (name, r) in ["r_v_i", "r_v_phi", "r_i_phi"].into_iter().zip(r) {
        agrees(&published, name, r, 0.5);
    }
    let correlations = [(0, 1, r[0]), (0, 2, r[1]), (1, 2, r[2])].map(|(first, second, coefficient)| Correlation {
        first,
        second,
        coefficient,
    });

    let resistance = |x: &[f64]| x[0] / x[1] * x[2].cos();
    let reactance = |x: &[f64]| x[0] / x[1] * x[2].sin();
    let impedance = |x: &[f64]| x[0] / x[1];
    let at = inputs.map(|input| input.estimate);
    agrees(&published, "resistance", resistance(&at), 0.5);
    agrees(&published, "reactance", reactance(&at), 0.5);
    agrees(&published, "impedance", impedance(&at), 0.5);
    let c = [sensitivities(&inputs, resistance), sensitivities(&inputs, reactance), sensitivities(&inputs, impedance)];
    let u = [0, 1, 2].map(|k| combine(&inputs, &c[k], &correlations).unwrap().standard_uncertainty);
    agrees(&published, "u_resistance", u[0], 0.5);
    // Printed as 0.295 from rounded intermediate figures; unrounded it is 0.2956.
    agrees(&published, "u_reactance", u[1], 1.0);
    agrees(&published, "u_impedance", u[2], 0.5);
    let r = |a: usize, b: usize| covariance(&inputs, &c[a], &c[b], &correlations).unwrap() / (u[a] * u[b]);
    agrees(&published, "r_resistance_reactance", r(0, 1), 0.5);
    agrees(&published, "r_resistance_impedance", r(0, 2), 0.5);
    agrees(&published, "r_reactance_impedance", r(1, 2), 0.5);
}

/// JCGM 100:2008, table G.2 (from memory).
#[test]
fn students_factors_are_those_of_table_g_2() {
    for (nu, k95, k99) in [
        (1.0, 12.71, 63.66),
        (2.0, 4.30, 9.92),
        (3.0, 3.18, 5.84),
        (4.0, 2.78, 4.60),
        (5.0, 2.57, 4.03),
        (8.0, 2.31, 3.36),
        (10.0, 2.23, 3.17),
        (16.0, 2.12, 2.92),
        (30.0, 2.04, 2.75),
        (100.0, 1.984, 2.626),
    ] {
        close("k95", student::two_sided(0.95, Some(nu)).unwrap(), k95, 0.0051);
        close("k99", student::two_sided(0.99, Some(nu)).unwrap(), k99, 0.0051);
    }
    close("infinite 95", student::two_sided(0.95, None).unwrap(), 1.959_964, 1e-6);
    close("infinite 99", student::two_sided(0.99, None).unwrap(), 2.575_829, 1e-6);
    close("infinite 95.45", student::two_sided(0.9545, None).unwrap(), 2.0, 1e-4);
}

#[test]
fn a_whole_number_of_degrees_of_freedom_is_cut_down_not_rounded() {
    assert_eq!(student::two_sided(0.95, Some(16.9)), student::two_sided(0.95, Some(16.0)));
    assert!(student::two_sided(0.95, Some(0.5)).is_err());
    assert!(student::two_sided(f64::NAN, None).is_err());
}

#[test]
fn few_degrees_of_freedom_widen_the_printed_uncertainty() {
    let few = combine(&[Input::from_readings(&[1.0, 1.1, 1.2]).unwrap()], &[1.0], &[]).unwrap();
    close("k at 2", few.expanded().unwrap() / few.standard_uncertainty, 4.303, 1e-3);
    let sure = combine(&[Input::new(1.0, 0.1)], &[2.0], &[]).unwrap();
    close("k = 2", sure.expanded().unwrap(), 0.4, 1e-12);
    assert_eq!(sure.effective_degrees_of_freedom, None);
}

#[test]
fn fully_correlated_inputs_add_or_cancel() {
    let inputs = [Input::new(1.0, 0.3), Input::new(2.0, 0.3)];
    let with = |coefficient| [Correlation { first: 0, second: 1, coefficient }];
    close("sum", combine(&inputs, &[1.0, 1.0], &with(1.0)).unwrap().standard_uncertainty, 0.6, 1e-12);
    close("difference", combine(&inputs, &[1.0, -1.0], &with(1.0)).unwrap().standard_uncertainty, 0.0, 1e-8);
    assert!(combine(&inputs, &[1.0, 1.0], &with(1.5)).is_err());
    assert!(combine(&inputs, &[1.0], &[]).is_err());
    assert!(combine(&inputs, &[1.0, 1.0], &[Correlation { first: 0, second: 2, coefficient: 0.1 }]).is_err());
    assert!(combine(&inputs, &[1.0, f64::NAN], &[]).is_err());
}

/// JCGM 100:2008, 7.2.6: the estimate is rounded to the place of its uncertainty.
#[test]
fn two_digits_of_uncertainty_set_the_place_of_the_value() {
    for (value, expanded, printed) in [
        (46.5532, 49.132, (47.0, 49.0, 0)),
        (1.02349, 0.0061, (1.0235, 0.0061, 4)),
        (12.345, 0.996, (12.3, 1.0, 1)),
        (1234.5, 671.6, (1230.0, 670.0, 0)),
        (-4.66, 99.6, (0.0, 100.0, 0)),
        (0.123_456, 0.0, (0.123, 0.0, 3)),
    ] {
        let got = reported(value, expanded).unwrap();
        assert_eq!((got.value, got.expanded_uncertainty, got.decimals), printed);
    }
    assert!(reported(-0.004, 0.1).unwrap().value.is_sign_positive());
    assert_eq!(reported(f64::NAN, 1.0).unwrap_err().quantity, "value");
    assert_eq!(reported(1.0, f64::INFINITY).unwrap_err().quantity, "expanded_uncertainty");
}
