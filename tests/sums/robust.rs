//! Robust statistics against a published sample (`robust.csv`), the binomial distribution (`median_ranks.csv`) and NumPy
//! and SciPy over generated samples (`robust_scipy.csv`).

use fuelwright::calc::robust::{hodges_lehmann, huber, mad, mad_normalised, median, median_ranks, quantile};
use proptest::prelude::*;

use super::reference::{close, rows};

/// 24 determinations of copper in flour, ug/g: Analytical Methods Committee, Analyst 114 (1989) 1693.
const COPPER: [f64; 24] = [
    2.2, 2.2, 2.4, 2.4, 2.5, 2.7, 2.8, 2.9, 3.03, 3.03, 3.1, 3.37, 3.4, 3.4, 3.4, 3.5, 3.6, 3.7, 3.7, 3.7, 3.7, 3.77,
    5.28, 28.95,
];

#[test]
fn copper_in_flour_gives_the_published_statistics() {
    let ranks = median_ranks(COPPER.len(), 0.95).unwrap().unwrap();
    let mut seen = 0;
    for row in rows("robust.csv") {
        let got = match row.text("statistic") {
            "n" => COPPER.len() as f64,
            "median" => median(&COPPER).unwrap(),
            "mad_raw" => mad(&COPPER).unwrap(),
            "mad_normalised" => mad_normalised(&COPPER).unwrap(),
            "hodges_lehmann" => hodges_lehmann(&COPPER).unwrap(),
            "huber_1_5" => huber(&COPPER, mad_normalised(&COPPER).unwrap()).unwrap(),
            "quantile_25_type7" => quantile(&COPPER, 0.25).unwrap(),
            "quantile_75_type7" => quantile(&COPPER, 0.75).unwrap(),
            "median_interval_lower_rank" => ranks.lower as f64,
            "median_interval_upper_rank" => ranks.upper as f64,
            "median_interval_lower" => COPPER[ranks.lower - 1],
            "median_interval_upper" => COPPER[ranks.upper - 1],
            "median_interval_coverage" => ranks.coverage,
            // What a mean makes of the one wild reading is why none is used.
            "mean" | "standard_deviation" | "trimmed_mean_10_percent" => continue,
            other => panic!("{other} is not looked at"),
        };
        close(row.text("statistic"), got, row.number("value"), 1e-6);
        seen += 1;
    }
    assert_eq!(seen, 13);
}

#[test]
fn ranks_of_a_median_are_those_of_the_binomial_distribution() {
    for row in rows("median_ranks.csv") {
        let n = row.text("n").parse().unwrap();
        let ranks = median_ranks(n, 0.95).unwrap().unwrap();
        assert_eq!(
            (ranks.lower as f64, ranks.upper as f64),
            (row.number("lower_rank"), row.number("upper_rank")),
            "n {n}"
        );
        close(&format!("coverage of {n}"), ranks.coverage, row.number("coverage"), 1e-6);
    }
    for few in 1..6 {
        assert_eq!(median_ranks(few, 0.95).unwrap(), None, "{few} readings cannot hold 95 %");
    }
    assert!(median_ranks(0, 0.95).is_err() && median_ranks(1_001, 0.95).is_err() && median_ranks(9, f64::NAN).is_err());
    assert!(median_ranks(1_000, 0.95).unwrap().unwrap().coverage >= 0.95);
}

#[test]
fn generated_samples_give_what_numpy_and_scipy_say() {
    let mut with_huber = 0;
    for row in rows("robust_scipy.csv") {
        let x: Vec<f64> = row.text("readings").split(' ').map(|word| word.parse().unwrap()).collect();
        let case = row.text("case");
        assert_eq!(x.len().to_string(), row.text("n"), "{case}");
        let said = |what: &str, got: f64| close(&format!("{case} {what}"), got, row.number(what), 1e-6);
        said("median", median(&x).unwrap());
        said("mad", mad(&x).unwrap());
        said("mad_normalised", mad_normalised(&x).unwrap());
        for (name, share) in
            [("quantile_10", 0.10), ("quantile_25", 0.25), ("quantile_75", 0.75), ("quantile_90", 0.90)]
        {
            said(name, quantile(&x, share).unwrap());
        }
        said("hodges_lehmann", hodges_lehmann(&x).unwrap());
        if row.has("huber_1_5") {
            said("huber_1_5", huber(&x, mad_normalised(&x).unwrap()).unwrap());
            with_huber += 1;
        }
    }
    assert!(with_huber > 30, "{with_huber}");
}

proptest! {
    #[test]
    fn order_does_not_matter_and_nothing_answers_nan(mut x in prop::collection::vec(prop::num::f64::ANY, 0..40)) {
        let all = |x: &[f64]| [median(x), mad(x), quantile(x, 0.3), hodges_lehmann(x), huber(x, 1.0)];
        let forwards = all(&x);
        for answer in forwards.iter().flatten() {
            prop_assert!(!answer.is_nan(), "{x:?} gave {forwards:?}");
        }
        prop_assert!(forwards.iter().all(Result::is_ok) || x.is_empty() || x.iter().any(|v| v.is_nan() || v.abs() > 8e307));
        x.reverse();
        let (forwards, backwards) = (forwards.map(Result::ok), all(&x).map(Result::ok));
        prop_assert_eq!(&forwards[..4], &backwards[..4]);
    }

    #[test]
    fn fewer_than_half_wrong_readings_do_not_carry_a_median_away(
        good in prop::collection::vec(2.9..3.1f64, 6..40),
        wild in prop::collection::vec(-1e9..1e9f64, 0..5),
    ) {
        let all: Vec<f64> = good.iter().chain(&wild).copied().collect();
        let got = median(&all).unwrap();
        prop_assert!((2.9..=3.1).contains(&got), "{got}");
    }
}
