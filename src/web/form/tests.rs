//! Readers against what tired and hostile people type.

use time::macros::{date, datetime};

use super::*;
use crate::unit::Unit;
use crate::words::Words;

fn form(pairs: &[(&str, &str)]) -> Form {
    Form::from(Typed::from_pairs(pairs.iter().copied()))
}

fn number(text: &str, unit: Unit, least: f64, most: f64) -> Result<f64, Wrong> {
    let mut form = form(&[("x", text)]);
    let read = form.number("x", unit, least..=most);
    assert_eq!(form.value("x"), text, "kept as typed");
    read.ok_or_else(|| form.wrong("x").cloned().expect("a reason"))
}

#[test]
fn a_typed_unit_is_read_and_remembered() {
    let mut form = form(&[("start_kpa", "2,1 bar"), ("end_kpa", "210 kPa")]);
    assert_eq!(form.number("start_kpa", Unit::Kilopascal, 0.0..=500.0), Some(210.0));
    assert_eq!(form.number("end_kpa", Unit::Kilopascal, 0.0..=500.0), Some(210.0));
    let start = form.read_as("start_kpa").expect("another unit was typed");
    assert_eq!(start.as_typed(), (2.1, Unit::Bar));
    assert_eq!(form.read_as("end_kpa"), None, "the field's own unit needs no telling");
    assert_eq!(form.value("start_kpa"), "2,1 bar");
    for (text, celsius) in [("68 °F", 20.0), ("293.15 K", 20.0), ("20°", 20.0), ("\u{2212}5", -5.0), ("20 C", 20.0)] {
        assert_eq!(number(text, Unit::Celsius, -60.0, 200.0), Ok(celsius), "{text}");
    }
    assert_eq!(number("100 PS", Unit::Kilowatt, 1.0, 500.0), Ok(73.549_875));
    assert_eq!(number("1.6 L", Unit::CubicCentimetre, 50.0, 20_000.0), Ok(1600.0));
    assert_eq!(number("6 000 rpm", Unit::PerMinute, 300.0, 20_000.0), Ok(6000.0));
    assert_eq!(number("2.5 %", Unit::Percent, 0.0, 100.0), Ok(2.5));
}

#[test]
fn a_unit_that_does_not_belong_is_named() {
    let takes = Unit::Kilopascal;
    assert_eq!(number("20 °C", takes, 0.0, 500.0), Err(Wrong::OtherUnit { typed: "°C".into(), takes }));
    assert_eq!(number("3 psig", takes, 0.0, 500.0), Err(Wrong::UnknownUnit { typed: "psig".into(), takes }));
    assert_eq!(number("3 bar abs", takes, 0.0, 500.0), Err(Wrong::UnknownUnit { typed: "bar abs".into(), takes }));
    assert_eq!(number("3 4", takes, 0.0, 500.0), Err(Wrong::NotANumber { typed: "3 4".into() }));
    let sentence = Wrong::UnknownUnit { typed: "psig".into(), takes }.say(&Words::default());
    assert!(sentence.contains("psig") && sentence.contains("kPa"), "{sentence}");
    let sentence = Wrong::OtherUnit { typed: "bar".into(), takes: Unit::One }.say(&Words::default());
    assert!(sentence.contains("without a unit"), "{sentence}");
}

#[test]
fn numbers_out_of_this_world_are_refused() {
    for text in ["NaN", "inf", "-inf", "infinity", "∞"] {
        assert_eq!(number(text, Unit::One, 0.0, 10.0), Err(Wrong::NotANumber { typed: text.into() }), "{text}");
    }
    let beyond = Wrong::Beyond { least: 0.0, most: 10.0, unit: Unit::One };
    for text in ["1e400", "-1e400", "10.000001", "-0.1"] {
        assert_eq!(number(text, Unit::One, 0.0, 10.0), Err(beyond.clone()), "{text}");
    }
    assert_eq!(number("10", Unit::One, 0.0, 10.0), Ok(10.0), "both ends belong");
    assert_eq!(number("-0", Unit::One, 0.0, 10.0), Ok(0.0));
    assert_eq!(beyond.say(&Words::default()), "Takes 0–10");
    let beyond = Wrong::Beyond { least: 0.5, most: 1200.0, unit: Unit::Kilopascal };
    assert_eq!(beyond.say(&Words::default()), "Takes 0.5–1\u{202f}200.0\u{a0}kPa");
}

#[test]
fn a_thousand_two_hundred_or_one_and_a_fifth_is_questioned() {
    let wrong = number("1,200 kPa", Unit::Kilopascal, 0.0, 5_000.0).expect_err("questioned");
    let sentence = wrong.say(&Words::default());
    assert!(sentence.contains("1200") && sentence.contains("1.200"), "{sentence}");
}

#[test]
fn an_odometer_is_whole_and_may_be_in_miles() {
    let mut form = form(&[
        ("a_km", "128\u{202f}430"),
        ("b_km", "80 000 mi"),
        ("c_km", "12.5"),
        ("d_km", "9999999999999999999999"),
        ("e_km", "128,430"),
    ]);
    let takes = 0..=2_000_000;
    assert_eq!(form.integer("a_km", takes.clone()), Some(128_430));
    assert_eq!(form.integer("b_km", takes.clone()), Some(128_748));
    assert_eq!(form.integer("c_km", takes.clone()), None);
    assert_eq!(form.integer("d_km", takes.clone()), None);
    assert_eq!(form.integer("e_km", takes.clone()), None);
    assert_eq!(form.opt_integer("f_km", takes), None);
    assert_eq!(form.wrong("c_km"), Some(&Wrong::NotWhole { typed: "12.5".into() }));
    assert!(matches!(form.wrong("d_km"), Some(Wrong::Beyond { .. })));
    assert!(matches!(form.wrong("e_km"), Some(Wrong::AmbiguousSeparator { .. })));
    assert_eq!(form.wrong("f_km"), None);
}

#[test]
fn money_is_exact_to_its_minor_unit() {
    let mut form =
        form(&[("a", "1 234,50"), ("b", "0.07"), ("c", "1.234"), ("d", "-1"), ("e", "19.99"), ("f", "5 EUR")]);
    assert_eq!(form.money("a", 2, 10_000_000), Some(123_450));
    assert_eq!(form.money("b", 2, 10_000_000), Some(7));
    assert_eq!(form.money("e", 2, 10_000_000), Some(1999));
    assert_eq!(form.sound(), Some(()));
    assert_eq!(form.money("c", 2, 10_000_000), None);
    assert_eq!(form.money("d", 2, 10_000_000), None);
    assert_eq!(form.money("f", 2, 10_000_000), None);
    assert_eq!(form.wrong("c"), Some(&Wrong::TooManyDecimals { most: 2 }));
    assert_eq!(form.wrongs().len(), 3);
}

#[test]
fn text_is_tidied_but_never_cut() {
    let mut form = form(&[
        ("a", "  Ilse Marrow "),
        ("b", "e\u{301}clair"),
        ("c", "line\nbreak"),
        ("d", "bell\u{7}"),
        ("e", "evil\u{202e}gpj.exe"),
        ("f", "four characters too long"),
        ("g", " \t "),
        ("h", "one\r\ntwo"),
        ("i", "zero\0"),
        ("j", "Mu\u{fffd}oz"),
    ]);
    assert_eq!(form.text("a", 40).as_deref(), Some("Ilse Marrow"));
    assert_eq!(form.text("b", 40).as_deref(), Some("\u{e9}clair"), "composed, so that it is found again");
    assert_eq!(form.long_text("h", 40).as_deref(), Some("one\ntwo"));
    assert_eq!(form.sound(), Some(()));
    for name in ["c", "d", "e", "g", "i", "j"] {
        assert_eq!(form.text(name, 40), None, "{name}");
    }
    assert_eq!(form.text("f", 20), None);
    let kinds: Vec<_> = form.wrongs().iter().map(|(_, wrong)| wrong.clone()).collect();
    use Wrong::{ControlCharacters, Damaged, Empty, LineBreak, TooLong};
    let expected = [
        LineBreak,
        ControlCharacters,
        ControlCharacters,
        Empty,
        ControlCharacters,
        Damaged,
        TooLong { most: 20, got: 24 },
    ];
    assert_eq!(kinds, expected);
    assert_eq!(form.value("e"), "evil\u{202e}gpj.exe", "kept as typed");
}

#[test]
fn a_mail_address_has_one_at_and_a_domain_and_no_second_line() {
    for (text, fits) in [
        ("ilse@example.org", true),
        ("o'neil+gas@mail.example.org", true),
        ("ilse@example", false),
        ("ilse@", false),
        ("@example.org", false),
        ("a@b@example.org", false),
        ("ilse@example..org", false),
        ("a b@example.org", false),
        ("ilse@example.org\nBcc: all@example.org", false),
        ("<ilse@example.org>", false),
    ] {
        let mut form = form(&[("mail", text)]);
        assert_eq!(form.mail("mail").is_some(), fits, "{text:?}");
    }
}

#[test]
fn dates_and_moments_know_the_future_and_the_intake() {
    let zone = Zone::named("Europe/Berlin").expect("a zone");
    let (intake, now) = (datetime!(2026-11-25 08:10:30 UTC), datetime!(2026-11-25 10:00 UTC));
    let read = |text: &str| {
        let mut form = form(&[("at", text)]);
        form.measured("at", &zone, Some(intake), now).ok_or_else(|| form.wrong("at").cloned().expect("a reason"))
    };
    assert_eq!(read("2026-11-25T10:42"), Ok(datetime!(2026-11-25 09:42 UTC)));
    assert_eq!(read("2026-11-25T09:10"), Ok(datetime!(2026-11-25 08:10 UTC)), "the minute of the intake");
    assert_eq!(read("2026-11-25T09:09"), Err(Wrong::BeforeIntake));
    assert_eq!(read("2026-11-25T11:01"), Ok(datetime!(2026-11-25 10:01 UTC)), "a clock a minute ahead");
    assert_eq!(read("2026-11-25T11:02"), Err(Wrong::Future));
    assert_eq!(read(""), Err(Wrong::Empty));

    let mut form = form(&[("made_on", "26.11.2026"), ("seen_on", "25.11.2026"), ("bad_on", "25.11.26")]);
    let today = date!(2026 - 11 - 25);
    assert_eq!(form.past_date("made_on", today), None);
    assert_eq!(form.past_date("seen_on", today), Some(today));
    assert_eq!(form.opt_past_date("bad_on", today), None);
    assert_eq!(form.opt_date("none_on"), None);
    let expected = [("made_on".to_owned(), Wrong::Future), ("bad_on".to_owned(), Wrong::TwoDigitYear)];
    assert_eq!(form.wrongs(), expected);
}

#[test]
fn answers_outside_the_list_are_refused() {
    let mut form = form(&[
        ("n", "3"),
        ("m", "three"),
        ("t", "1"),
        ("t", "2"),
        ("u", "1"),
        ("u", "x"),
        ("y", "yes"),
        ("z", "perhaps"),
    ]);
    assert_eq!(form.choice::<u8>("n"), Some(3));
    assert_eq!(form.choice::<u8>("m"), None);
    assert_eq!(form.ticks::<u8>("t"), [1, 2]);
    assert_eq!(form.ticks::<u8>("u"), [1]);
    assert_eq!(form.ticks::<u8>("none"), [] as [u8; 0]);
    assert_eq!(form.yes_no("y"), Some(true));
    assert_eq!(form.yes_no("z"), None);
    assert_eq!(form.opt_yes_no("none"), None);
    assert!(form.tick("y") && !form.tick("none"));
    let wrong: Vec<_> = form.wrongs().iter().map(|(name, _)| name.as_str()).collect();
    assert_eq!(wrong, ["m", "u", "z"]);
}

#[test]
fn rows_keep_their_order_and_blank_ones_are_passed_over() {
    let mut form = form(&[
        ("parts[2][serial]", "A-2"),
        ("parts[0][serial]", " "),
        ("parts[0][batch]", ""),
        ("parts[7][serial]", ""),
        ("parts[7][batch]", "B-7"),
        ("partsextra[1][serial]", "no"),
        ("parts[x][serial]", "no"),
        ("parts[99999999999][serial]", "no"),
    ]);
    let rows = form.rows("parts");
    assert_eq!(rows.iter().map(|row| row.index).collect::<Vec<_>>(), [2, 7]);
    assert_eq!(form.text(&rows[0].name("serial"), 20).as_deref(), Some("A-2"));
    assert_eq!(form.text(&rows[1].name("serial"), 20), None);
    assert_eq!(form.wrong("parts[7][serial]"), Some(&Wrong::Empty));
    let shown: Vec<_> = form.rows_shown("parts", 4, 1).iter().map(|row| row.index).collect();
    assert_eq!(shown, [2, 7, 8, 9]);
    assert_eq!(Form::blank().rows_shown("parts", 0, 1).len(), 1);
}

#[test]
fn good_files_are_kept_when_one_is_bad() {
    let typed = Typed::default()
        .with_file("photo", "good.jpg", vec![1])
        .with_file("photo", "empty.jpg", Vec::new())
        .with_file("other", "x.pdf", vec![2]);
    let mut form = Form::from(typed);
    let kept = form.files("photo", 5);
    assert_eq!(kept.len(), 1);
    assert_eq!(form.wrong("photo"), Some(&Wrong::FileEmpty { file: "empty.jpg".into() }));
    assert_eq!(form.file("none"), None);
    assert_eq!(form.wrong("none"), Some(&Wrong::FileMissing));
}

#[test]
fn the_first_fault_of_a_field_stays() {
    let mut form = form(&[("a", "")]);
    form.text("a", 10);
    form.fail("a", Wrong::Taken);
    assert_eq!(form.wrongs(), [("a".to_owned(), Wrong::Empty)]);
}

#[test]
fn every_kind_of_wrong_has_its_sentence() {
    let text = || "“<x>”".to_owned();
    let all = [
        Wrong::Empty,
        Wrong::NotANumber { typed: text() },
        Wrong::AmbiguousSeparator { typed: text(), thousands: text(), decimal: text() },
        Wrong::NotWhole { typed: text() },
        Wrong::UnknownUnit { typed: text(), takes: Unit::Bar },
        Wrong::OtherUnit { typed: text(), takes: Unit::Bar },
        Wrong::OtherUnit { typed: text(), takes: Unit::One },
        Wrong::Beyond { least: 1.0, most: 2.0, unit: Unit::Bar },
        Wrong::TooManyDecimals { most: 2 },
        Wrong::TooLong { most: 1, got: 2 },
        Wrong::TooShort { least: 1 },
        Wrong::NotADate { typed: text() },
        Wrong::NoSuchDay { typed: text() },
        Wrong::AmbiguousDate { typed: text(), one: text(), other: text() },
        Wrong::TwoDigitYear,
        Wrong::NotATime { typed: text() },
        Wrong::NoSuchTime { typed: text() },
        Wrong::Future,
        Wrong::Past,
        Wrong::BeforeIntake,
        Wrong::EndBeforeStart,
        Wrong::NotAChoice,
        Wrong::ControlCharacters,
        Wrong::Damaged,
        Wrong::LineBreak,
        Wrong::NotAMailAddress { typed: text() },
        Wrong::Taken,
        Wrong::NotKnown,
        Wrong::DoesNotMatch,
        Wrong::TooMany { most: 3 },
        Wrong::FileMissing,
        Wrong::FileEmpty { file: text() },
        Wrong::FileTooLarge { file: text(), most_mb: 25 },
        Wrong::FileKind { file: text(), takes: text() },
        Wrong::FileBroken { file: text() },
        Wrong::Rule("wrong-past", vec![]),
    ];
    for wrong in all {
        let sentence = wrong.say(&Words::default());
        assert!(!sentence.is_empty() && !sentence.contains('⟦') && !sentence.contains("{$"), "{wrong:?}: {sentence}");
    }
}

#[test]
fn files_are_handed_over_once() {
    let mut form =
        Form::from(Typed::default().with_file("photo", "a.jpg", vec![1]).with_file("other", "b.jpg", vec![2]));
    assert_eq!(form.files("photo", 5).len(), 1);
    assert_eq!(form.files("photo", 5).len(), 0);
    assert_eq!(form.files("other", 5).len(), 1);
}

proptest::proptest! {
    #[test]
    fn no_text_makes_a_reader_fall_over(text in "\\PC{0,70}|[0-9 .,'eE+-]{0,24}|[0-9]{1,4}[-./ ][0-9a-z]{1,9}[-./ ][0-9]{1,5}.{0,9}") {
        let zone = Zone::utc();
        let mut form = form(&[("x", &text)]);
        let number = form.opt_number("x", Unit::Kilopascal, -1e6..=1e6);
        proptest::prop_assert!(number.is_none_or(|number| number.is_finite() && number.abs() <= 1e6));
        form.opt_integer("x", 0..=9);
        form.opt_money("x", 2, 100);
        form.opt_date("x");
        form.opt_moment("x", &zone);
        form.opt_text("x", 20);
        form.opt_mail("x");
        form.rows(&text);
        proptest::prop_assert_eq!(form.value("x"), &text);
        for (_, wrong) in form.wrongs() {
            proptest::prop_assert!(!wrong.say(&Words::default()).contains('⟦'));
        }
    }

    #[test]
    fn what_a_page_prints_a_form_takes_back(tenths in -9_999_999_i32..9_999_999, decimals in 1_u8..4) {
        let value = f64::from(tenths) / 10.0;
        let printed = Words::default().quantity(value, decimals, "kPa");
        proptest::prop_assert_eq!(number(&printed, Unit::Kilopascal, -1e6, 1e6), Ok(value), "{}", printed);
        let whole = Words::default().integer(i64::from(tenths));
        let mut form = form(&[("x", &whole)]);
        proptest::prop_assert_eq!(form.integer("x", -99_999_999..=99_999_999), Some(i64::from(tenths)), "{}", whole);
    }

    #[test]
    fn a_printed_date_is_taken_back(day in 2_415_021_i32..2_524_000) {
        let day = time::Date::from_julian_day(day).expect("in range");
        let w = Words::default();
        for printed in [w.date(day), w.medium_date(day), day.to_string()] {
            proptest::prop_assert_eq!(day::date(&printed), Ok(day), "{}", printed);
        }
    }
}
