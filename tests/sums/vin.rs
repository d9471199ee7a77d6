//! Vehicle identification numbers: published samples for the check digit of 49 CFR 565.15(c).

use fuelwright::calc::vin::{Malformed, Region, check};
use proptest::prelude::*;

/// Published samples for the arithmetic of 49 CFR 565.15(c); the last is a customary test value.
const SAMPLES: [(&str, char); 5] = [
    ("1G4AH59H45G118341", '4'),
    ("1M8GDM9AXKP042788", 'X'),
    ("JH2RC3605MM101581", '5'),
    ("1J9RP1A36A1644345", '6'),
    ("11111111111111111", '1'),
];

#[test]
fn the_published_samples_carry_their_check_digit() {
    for (vin, digit) in SAMPLES {
        let checked = check(vin);
        assert!(checked.well_formed, "{vin}");
        assert_eq!(checked.check_digit_expected, Some(digit), "{vin}");
        assert!(checked.check_digit_ok, "{vin}");
    }
}

/// The weights 49 CFR 565.15(c) gives are such that a single wrong digit always shows: none is a multiple of 11, and two
/// digits differ by less than 11.
#[test]
fn one_mistyped_digit_is_always_noticed() {
    for (vin, _) in SAMPLES {
        for (place, right) in vin.char_indices().filter(|(place, c)| *place != 8 && c.is_ascii_digit()) {
            for wrong in ('0'..='9').filter(|wrong| *wrong != right) {
                let mut mistyped = vin.to_owned();
                mistyped.replace_range(place..=place, &wrong.to_string());
                assert!(!check(&mistyped).check_digit_ok, "{mistyped}");
            }
        }
    }
}

#[test]
fn a_wrong_check_digit_warns_and_does_not_refuse() {
    let european = check("WVWZZZ1JZXW000010");
    assert!(european.well_formed && !european.check_digit_ok && !european.check_digit_compulsory);
    assert!(european.check_digit_expected.is_some());
    assert_eq!(european.region, Region::Europe);
    let american = check("1G4AH59H55G118341");
    assert!(american.well_formed && !american.check_digit_ok && american.check_digit_compulsory);
}

#[test]
fn what_people_type_is_read_as_they_mean_it() {
    let checked = check(" 1m8gdm9a-xkp 042788\n");
    assert_eq!(checked.vin, "1M8GDM9AXKP042788");
    assert!(checked.check_digit_ok);
}

#[test]
fn malformed_numbers_say_why_and_promise_nothing() {
    for (vin, why) in [
        ("", Malformed::Length),
        ("1M8GDM9AXKP04278", Malformed::Length),
        ("1M8GDM9AXKP0427888", Malformed::Length),
        ("1M8GDM9AXKPO42788", Malformed::Alphabet),
        ("IM8GDM9AXKP042788", Malformed::Alphabet),
        ("1M8GDM9AXKQ042788", Malformed::Alphabet),
        ("1M8GDM9AXKP04278\u{dc}", Malformed::Alphabet),
        ("1M8GDM9AXKP0427A8", Malformed::LastFour),
    ] {
        let checked = check(vin);
        assert_eq!(checked.malformed, Some(why), "{vin}");
        assert!(!checked.well_formed && !checked.check_digit_ok, "{vin}");
        assert_eq!(checked.check_digit_expected, None, "{vin}");
        assert_eq!(checked.region, Region::Unknown, "{vin}");
    }
}

/// ISO 3780, from memory.
#[test]
fn the_first_character_tells_the_region() {
    for (firsts, region) in [
        ("ABCDEFGH", Region::Africa),
        ("JKLMNPR", Region::Asia),
        ("STUVWXYZ", Region::Europe),
        ("12345", Region::NorthAmerica),
        ("67", Region::Oceania),
        ("89", Region::SouthAmerica),
        ("0", Region::Unknown),
    ] {
        for first in firsts.chars() {
            assert_eq!(check(&format!("{first}1111111111111111")).region, region, "{first}");
        }
    }
}

/// 49 CFR 565.15(d): K is 1989 or 2019, told apart by position 7.
#[test]
fn the_model_year_is_a_hint_for_north_america_alone() {
    assert_eq!(check("1M8GDM9AXKP042788").model_year, Some(1989));
    assert_eq!(check("1J9RP1A36A1644345").model_year, Some(2010));
    assert_eq!(check("1G4AH59H45G118341").model_year, Some(2005));
    assert_eq!(check("JH2RC3605MM101581").model_year, None);
    assert_eq!(check("1M8GDM9AXZP042788").model_year, None);
}

#[test]
fn a_nine_in_third_place_is_a_maker_of_few_vehicles() {
    assert!(check("1J9RP1A36A1644345").small_maker);
    assert!(!check("1G4AH59H45G118341").small_maker);
}

proptest! {
    #[test]
    fn no_text_breaks_the_check(typed in "\\PC{0,24}") {
        let checked = check(&typed);
        prop_assert_eq!(checked.well_formed, checked.check_digit_expected.is_some());
    }

    /// Putting the expected digit into position 9 always mends the number.
    #[test]
    fn the_expected_digit_mends_the_number(vin in "[A-HJ-NPR-Z0-9]{13}[0-9]{4}") {
        let expected = check(&vin).check_digit_expected.unwrap();
        let mut mended = vin;
        mended.replace_range(8..9, &expected.to_string());
        prop_assert!(check(&mended).check_digit_ok);
    }
}
