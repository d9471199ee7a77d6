//! Verdicts: ILAC-G8:09/2019, 4.2 (guard band w = U; a doubt is not a pass).

use fuelwright::calc::decision::{Rule, Verdict, at_most, within};
use proptest::prelude::*;

#[test]
fn the_guard_band_takes_the_uncertainty_off_the_limit() {
    for (value, verdict) in [
        (9.0, Verdict::Pass),
        (9.5, Verdict::Pass),
        (9.51, Verdict::CannotTell),
        (10.5, Verdict::CannotTell),
        (10.51, Verdict::Fail),
    ] {
        assert_eq!(at_most(value, 0.5, 10.0, Rule::Guarded), Ok(verdict), "{value}");
    }
}

#[test]
fn the_simple_rule_holds_the_value_against_the_limit_as_it_is() {
    assert_eq!(at_most(10.0, 0.5, 10.0, Rule::Simple), Ok(Verdict::Pass));
    assert_eq!(at_most(10.01, 0.5, 10.0, Rule::Simple), Ok(Verdict::Fail));
}

#[test]
fn a_band_narrower_than_the_uncertainty_can_never_pass() {
    assert_eq!(within(1.0, 0.05, 0.97, 1.03, Rule::Guarded), Ok(Verdict::CannotTell));
    assert_eq!(within(1.1, 0.05, 0.97, 1.03, Rule::Guarded), Ok(Verdict::Fail));
    assert_eq!(within(0.9, 0.05, 0.97, 1.03, Rule::Guarded), Ok(Verdict::Fail));
}

#[test]
fn what_is_no_number_gets_no_verdict() {
    assert_eq!(at_most(f64::NAN, 0.5, 10.0, Rule::Guarded).unwrap_err().quantity, "value");
    assert_eq!(at_most(1.0, -0.5, 10.0, Rule::Guarded).unwrap_err().quantity, "expanded_uncertainty");
    assert_eq!(at_most(1.0, 0.5, f64::NAN, Rule::Simple).unwrap_err().quantity, "most");
    assert_eq!(within(1.0, 0.5, 2.0, 1.0, Rule::Simple).unwrap_err().quantity, "least");
}

fn rank(verdict: Verdict) -> u8 {
    match verdict {
        Verdict::Fail => 0,
        Verdict::CannotTell => 1,
        Verdict::Pass => 2,
    }
}

proptest! {
    #[test]
    fn a_looser_limit_never_worsens_the_verdict(
        value in -100.0..100.0f64, u in 0.0..50.0f64, limit in -100.0..100.0f64, looser in 0.0..100.0f64, simple: bool
    ) {
        let rule = if simple { Rule::Simple } else { Rule::Guarded };
        let strict = at_most(value, u, limit, rule).unwrap();
        let loose = at_most(value, u, limit + looser, rule).unwrap();
        prop_assert!(rank(loose) >= rank(strict));
    }
}
