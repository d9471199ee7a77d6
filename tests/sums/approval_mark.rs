//! Approval marks of UN Regulations No. 67, 110 and 115 as people copy them from parts and papers. Numbers invented.

use fuelwright::model::approval_mark::{
    ApprovalMark, ComponentClass, MarkDoubt, MarkForm, NotAMark, Regulation, country,
};
use fuelwright::model::job::Fuel;
use proptest::prelude::*;

fn mark(typed: &str) -> ApprovalMark {
    typed.parse().unwrap_or_else(|refused| panic!("{typed}: {refused}"))
}

#[test]
fn a_mark_on_a_part_is_taken_apart() {
    for (typed, country, regulation, series, number, rest) in [
        ("E4 67R-011234", 4, Regulation::R67, "01", "1234", ""),
        ("  E13  110R - 00 123456  ", 13, Regulation::R110, "00", "123456", ""),
        ("E20-67R-010987 class 2A", 20, Regulation::R67, "01", "0987", "class 2A"),
        ("E8*67R-01 4321*3", 8, Regulation::R67, "01", "4321", "*3"),
        ("E 3 115 R 000042", 3, Regulation::R115, "00", "0042", ""),
        ("E467R-011234", 4, Regulation::R67, "01", "1234", ""),
        ("E1167R-011234", 11, Regulation::R67, "01", "1234", ""),
        ("E1110R-001234", 1, Regulation::R110, "00", "1234", ""),
        ("E4 67r\u{2013}021234", 4, Regulation::R67, "02", "1234", ""),
        ("\u{24ba}4 67R-011234", 4, Regulation::R67, "01", "1234", ""),
    ] {
        let mark = mark(typed);
        assert_eq!((mark.country_number, mark.regulation), (country, regulation), "{typed}");
        assert_eq!((&*mark.series, &*mark.number, &*mark.rest), (series, number, rest), "{typed}");
        assert_eq!((mark.form, mark.has_small_e), (MarkForm::OnPart, false), "{typed}");
    }
}

#[test]
fn a_number_on_paper_is_taken_apart() {
    let mark = mark(" E4*67R01/15*1234*00 ");
    assert_eq!((mark.country_number, mark.regulation, mark.form), (4, Regulation::R67, MarkForm::OnPaper));
    assert_eq!((&*mark.series, mark.supplement.as_deref()), ("01", Some("15")));
    assert_eq!((&*mark.number, mark.extension.as_deref()), ("1234", Some("00")));
    assert_eq!(mark.to_string(), "E4*67R01/15*1234*00");
}

#[test]
fn the_series_stays_two_characters() {
    let mark = mark("E4 67R-011234");
    assert_eq!(serde_json::to_value(&mark).unwrap()["series"], "01");
    assert_eq!(mark.to_string(), "E4 67R-011234");
}

#[test]
fn what_is_no_mark_says_where_it_stops_being_one() {
    for (typed, why) in [
        ("  ", NotAMark::Empty),
        ("67R-011234", NotAMark::NoCountry),
        ("E 67R-011234 ", NotAMark::NoRegulation),
        ("EE4 67R", NotAMark::NoCountry),
        ("E4 83R-051234", NotAMark::NoRegulation),
        ("E4 67-011234", NotAMark::NoRegulation),
        ("e4*2001/116*0123*00", NotAMark::EuDirective),
        ("E4 67R", NotAMark::NoNumber),
        ("E4 67R-01", NotAMark::NoNumber),
        ("E4 67R-0112", NotAMark::NoNumber),
        ("E4 67R-011234567", NotAMark::NoNumber),
        ("E4 67R-011234B", NotAMark::NoNumber),
        ("E4*67R01/15*1234", NotAMark::NoNumber),
    ] {
        assert_eq!(typed.parse::<ApprovalMark>(), Err(why), "{typed}");
    }
}

#[test]
fn a_small_e_is_read_and_flagged() {
    let mark = mark("e4 67R-011234");
    assert!(mark.has_small_e);
    assert_eq!(mark.doubts(), [MarkDoubt::SmallE]);
}

#[test]
fn the_regulation_must_fit_the_fuel() {
    for (typed, lpg, cng) in
        [("E4 67R-011234", true, false), ("E4 110R-001234", false, true), ("E4 115R-000123", true, true)]
    {
        assert_eq!((mark(typed).fits(Fuel::Lpg), mark(typed).fits(Fuel::Cng)), (lpg, cng), "{typed}");
    }
}

#[test]
fn classes_are_those_of_the_regulation() {
    for (typed, class) in [
        ("E4 67R-011234 1", Some(ComponentClass::Class1)),
        ("E4 67R-011234 Class 2a", Some(ComponentClass::Class2A)),
        ("E4 67R-011234 CL. 3", Some(ComponentClass::Class3)),
        ("E4 110R-001234 class 6", Some(ComponentClass::Class6)),
        ("E4 110R-001234 CNG-4", Some(ComponentClass::Cng4)),
        ("E4 110R-001234 cng 1", Some(ComponentClass::Cng1)),
        ("E4 110R-001234 class 2A", None),
        ("E4 67R-011234 class 6", None),
        ("E4 67R-011234", None),
    ] {
        assert_eq!(mark(typed).class(), class, "{typed}");
    }
    assert_eq!(mark("E4 67R-011234 class 6").doubts(), [MarkDoubt::ClassUnknown]);
    assert_eq!(mark("E4 67R-011234 toroidal 220").doubts(), []);
}

/// Distinguishing numbers of the UN 1958 Agreement.
#[test]
fn country_numbers_are_those_of_the_agreement() {
    for (number, code) in [(1, "DE"), (4, "NL"), (11, "GB"), (20, "PL"), (37, "TR"), (42, "EU"), (58, "TN"), (62, "EG")]
    {
        let found = country(number).unwrap();
        assert_eq!((found.code, found.is_checked), (code, true));
    }
    assert!(!country(54).unwrap().is_checked);
    let known: Vec<u8> = (0..=255).filter(|number| country(*number).is_some()).collect();
    assert_eq!(known.len(), 57);
    for vacant in [0, 15, 33, 38, 41, 44, 59, 61, 65, 99] {
        assert_eq!(country(vacant), None, "{vacant}");
    }
    assert_eq!(mark("E99 67R-011234").doubts(), [MarkDoubt::CountryUnknown]);
}

proptest! {
    #[test]
    fn no_text_breaks_the_reader(typed in "\\PC{0,40}") {
        let _ = typed.parse::<ApprovalMark>();
    }

    #[test]
    fn what_was_read_reads_back(country in 1u8..100, series in "[0-9]{2}", number in "[0-9]{3,6}", small: bool, paper: bool) {
        let e = if small { 'e' } else { 'E' };
        let typed =
            if paper { format!("{e}{country}*67R{series}/12*{number}*01") } else { format!("{e}{country} 67R-{series}{number}") };
        let mark: ApprovalMark = typed.parse().unwrap();
        prop_assert_eq!(mark.to_string(), typed);
    }
}
