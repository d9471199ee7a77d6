//! Papers as a reader's tools see them: poppler reads the text and renders the page, qpdf checks the file, a scanner
//! reads the code.

mod full;
pub mod golden;
mod languages;
mod others;
mod pictures;
pub mod reading;
mod reports;
pub mod sample;
mod toolkit;

use fuelwright::model::branch::PaperSize::A4;
use fuelwright::model::paper::certificate::*;
use fuelwright::model::paper::measured::{DecisionRule, Verdict};
use fuelwright::model::paper::{CertificateKind, GasFuel, Supersedes};
use fuelwright::papers::certificate::{Certificate, certificate};
use fuelwright::papers::owner_sheet::owner_sheet;
use fuelwright::papers::test_record::test_record;
use fuelwright::papers::work_sheet::work_sheet;
use fuelwright::papers::{PaperError, Pictures, embedded, embedded_personal};
use fuelwright::seal::{KeyRing, Proven, Sealed, freeze, personal_digest, sha256_hex};
use fuelwright::words::Words;
use time::macros::{date, datetime};

use reading::{Paper, says_all_of};

const WORDS: Words = Words::new(fuelwright::words::Language::English);

fn full(content: &CertificateContent) -> Vec<u8> {
    let sealed = sample::sealed(content);
    let keeper = sample::keeper();
    certificate(&Certificate { content, personal: Some(&keeper), sealed: Some(&sealed) }, &WORDS).unwrap()
}

#[test]
fn a_certificate_is_sound_and_the_same_every_time() {
    let content = sample::certificate();
    let pdf = full(&content);
    assert_eq!(pdf, full(&content));
    let paper = Paper::new("certificate", &pdf);
    paper.is_sound();
    assert_eq!(paper.page_count(), 3);
    let structure = paper.structure();
    for role in ["H1", "H2", "Table", "TH", "TD", "LBody", "Figure"] {
        assert!(structure.contains(role), "{role} is missing in the structure");
    }
}

#[test]
fn every_field_of_a_certificate_comes_back_out_of_its_text() {
    let content = sample::certificate();
    let paper = Paper::new("certificate-text", &full(&content));
    says_all_of(&paper, &serde_json::to_value(&content).unwrap());
    for value in [
        "Page 1 of 3",
        "Ilse Fenwick",
        "Mill Lane 12, Northmere",
        "0555 0177",
        "ilse.fenwick@example.org",
        "K018233, last four 8233",
        "54.3 L, in whole litres 54 L",
        "80 %, filled to 43 L",
        "3 ± 16 cm³/h",
        "k = 2",
        "0.08 / 0.05 %",
        "0.97–1.03",
        "✓ passes, guarded",
        "✓ passes, simple",
        "◷ entered later",
        "20 000 km driven or 12 months, whichever comes first",
        "25 January 2027 or at 129 930 km",
        "By, whichever comes first",
        "UN R115, 1.3",
        "35 of 37 proofs asked for were met",
        "⊘ waived",
        "– does not apply",
        "○ still to come",
        "End of C-2026-0093",
    ] {
        paper.says(value);
    }
}

#[test]
fn the_signed_content_travels_inside_and_is_genuine() {
    let content = sample::certificate();
    let pdf = full(&content);
    let json = embedded(&pdf).unwrap().unwrap();
    let sealed = Sealed::from_json(&json).unwrap();
    assert_eq!(sealed.open(&sample::ring()).unwrap(), Proven::Genuine(content.clone()));
    assert_eq!(sealed.open(&KeyRing::new()).unwrap(), Proven::SoundButUnknownKey(content.clone()));
    assert_eq!(sealed.content(), freeze(&content).unwrap());
    let keeper: fuelwright::model::paper::PersonalPart =
        serde_json::from_slice(&embedded_personal(&pdf).unwrap().unwrap()).unwrap();
    assert_eq!(personal_digest(&keeper).unwrap(), content.personal_digest);
    let signed = String::from_utf8(json).unwrap();
    for personal in ["Fenwick", "Mill Lane", "0555 0177", "ilse."] {
        assert!(!signed.contains(personal), "the signed content holds {personal}");
    }
}

#[test]
fn a_copy_without_the_keeper_is_genuine_too_and_names_nobody() {
    let content = sample::certificate();
    let sealed = sample::sealed(&content);
    let pdf = certificate(&Certificate { content: &content, personal: None, sealed: Some(&sealed) }, &WORDS).unwrap();
    let paper = Paper::new("certificate-without-keeper", &pdf);
    paper.is_sound();
    paper.says("The keeper's data are kept apart from this copy.");
    paper.does_not_say("Fenwick");
    assert_eq!(embedded_personal(&pdf).unwrap(), None);
    assert!(Sealed::from_json(&embedded(&pdf).unwrap().unwrap()).unwrap().check(&sample::ring()).unwrap());
}

#[test]
fn a_file_that_is_no_paper_of_ours_gives_no_content_and_no_panic() {
    let pdf = full(&sample::certificate());
    assert!(matches!(embedded(b""), Err(PaperError::File(_))));
    assert!(matches!(embedded(b"%PDF-1.7 and then nothing"), Err(PaperError::File(_))));
    let record = test_record(&others::test_record(), &WORDS, A4).unwrap();
    assert_eq!(embedded(&record).unwrap(), None);
    for cut in (0..pdf.len()).step_by(pdf.len() / 40) {
        if let Ok(Some(json)) = embedded(&pdf[..cut]) {
            // A cut file may still hold the whole attachment; then it must be the genuine one.
            assert!(Sealed::from_json(&json).unwrap().check(&sample::ring()).unwrap());
        }
    }
    let genuine = Sealed::from_json(&sample::sealed(&sample::certificate())).unwrap();
    for place in (0..pdf.len()).step_by(pdf.len() / 150) {
        let mut damaged = pdf.clone();
        damaged[place] ^= 0x15;
        if let Ok(Some(json)) = embedded(&damaged)
            && let Ok(sealed) = Sealed::from_json(&json)
            && sealed.check(&sample::ring()) == Ok(true)
        {
            assert_eq!(sealed.content(), genuine.content(), "byte {place}");
        }
    }
}

#[test]
fn a_scanner_reads_the_code() {
    let content = sample::certificate();
    let paper = Paper::new("certificate-code", &full(&content));
    assert_eq!(paper.codes_on_page(3), [content.check.url.unwrap()]);
}

#[test]
fn without_a_public_address_the_paper_gives_code_phone_and_fingerprint() {
    let mut content = sample::certificate();
    content.check.url = None;
    let paper = Paper::new("certificate-no-address", &full(&content));
    paper.says("call 0555 0100 and give the code in the foot");
    paper.says(&content.check.code);
    paper.says(&content.check.key_fingerprint);
    assert!(paper.codes_on_page(3).is_empty());
}

#[test]
fn a_demonstration_paper_and_a_preview_say_so_on_every_page() {
    let mut content = sample::certificate();
    let keeper = sample::keeper();
    let paper = Certificate { content: &content, personal: Some(&keeper), sealed: None };
    let preview = Paper::new("certificate-preview", &certificate(&paper, &WORDS).unwrap());
    preview.is_sound();
    content.is_demonstration = true;
    let demonstration = Paper::new("certificate-demonstration", &full(&content));
    demonstration.is_sound();
    for page in 1..=3 {
        assert!(demonstration.text_of_page(page).contains("DEMONSTRATION. Shop, vehicle and people are invented."));
        assert!(preview.text_of_page(page).contains("PREVIEW. Not issued, not signed."));
    }
    Paper::new("certificate-real", &full(&sample::certificate())).does_not_say("DEMONSTRATION");
}

#[test]
fn a_long_job_breaks_over_pages_and_loses_nothing() {
    let mut content = sample::certificate();
    let model = content.parts[1].clone();
    for place in 0..40 {
        content.parts.push(PartOnPaper {
            description: format!("Hose number {place}"),
            serial_or_batch: format!("H-{place:03}"),
            ..model.clone()
        });
    }
    content.shop.name = "Saltmarsh and Northmere Harbour Autogas Conversions and Repairs".into();
    content.vehicle.model = "Pilotissimo Grand Touring Executive Estate Long Wheelbase 1.6".into();
    content.signatory.name = "Bartholomäus Wolkenstein-Hohenzollern von und zu Northmere-Süd".into();
    content.parts[0].serial_or_batch = "T118204T118204T118204T118204T118204T118204T118204T118204".into();
    let paper = Paper::new("certificate-long", &full(&content));
    paper.is_sound();
    paper.stays_inside_its_margins();
    says_all_of(&paper, &serde_json::to_value(&content).unwrap());
    for page in 1..=3 {
        let text = paper.text_of_page(page).split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(text.contains("Approval mark"), "page {page} repeats the head of its table");
    }
}

#[test]
fn a_row_taller_than_a_page_goes_on_over_the_next() {
    let mut content = sample::certificate();
    let reasons: Vec<_> = (0..1500).map(|place| format!("because-{place}.")).collect();
    content.proofs.exceptions[0].reason = reasons.join(" ");
    let paper = Paper::new("certificate-tall-row", &full(&content));
    paper.is_sound();
    paper.stays_inside_its_margins();
    assert!(paper.page_count() > 4);
    for reason in reasons {
        paper.says(&reason);
    }
}

#[test]
fn names_of_many_languages_print_and_come_back() {
    let mut content = sample::certificate();
    let mut keeper = sample::keeper();
    keeper.name = "Ελένη Παπαδοπούλου-Юлія Їжак".into();
    keeper.address = "Łódź, ul. Żółwia 7; İğdır, Şükrü Öztürk Sk. 3".into();
    content.remarks = vec!["Nguyễn Thị Hương, Đorđević, Þór, Ķīsis, Ölmezoğlu, Жуков".into()];
    content.vehicle.make = "Ćorvań".into();
    let sealed = sample::sealed(&content);
    let paper = Certificate { content: &content, personal: Some(&keeper), sealed: Some(&sealed) };
    let paper = Paper::new("certificate-names", &certificate(&paper, &WORDS).unwrap());
    paper.is_sound();
    for text in [&keeper.name, &keeper.address, &content.remarks[0], &content.vehicle.make] {
        paper.says(text);
    }
}

#[test]
fn a_character_without_a_face_stops_the_paper_and_is_named() {
    let content = sample::certificate();
    let mut keeper = sample::keeper();
    keeper.name = "田中 Ilse".into();
    let sealed = sample::sealed(&content);
    let made = certificate(&Certificate { content: &content, personal: Some(&keeper), sealed: Some(&sealed) }, &WORDS);
    assert_eq!(made, Err(PaperError::MissingGlyph('田')));
    keeper.name_as_printed = "Tanaka Ilse".into();
    let made = certificate(&Certificate { content: &content, personal: Some(&keeper), sealed: Some(&sealed) }, &WORDS);
    Paper::new("certificate-spelling", &made.unwrap()).says("Tanaka Ilse");
}

fn inspection(outcome: InspectionOutcome) -> InspectionOnPaper {
    let deficiency = |severity, item: &str, reason: &str| Deficiency {
        item: item.into(),
        reason: reason.into(),
        severity,
        note: "left front".into(),
        class_source: "Directive 2014/45/EU, Annex I, 6.1.3".into(),
        photo_sha256: String::new(),
    };
    InspectionOnPaper {
        outcome,
        deficiencies: match outcome {
            InspectionOutcome::Pass => vec![],
            InspectionOutcome::PassWithMinor => vec![deficiency(Severity::Minor, "6.1.3 c", "pipe chafed")],
            InspectionOutcome::Fail => vec![
                deficiency(Severity::Dangerous, "6.1.3 f", "multivalve leaks"),
                deficiency(Severity::Major, "6.1.3 d", "shut-off does not close"),
            ],
        },
        place: "Northmere".into(),
        ended_at: datetime!(2026-11-25 12:00 +1),
        next_test_on: Some(date!(2027 - 11 - 30)),
        present_again_by_on: (outcome == InspectionOutcome::Fail).then_some(date!(2027 - 01 - 24)),
        repeats_number: "I-2026-0040".into(),
        inspector_id: "Z-12".into(),
        kind_of_test: "periodic".into(),
        repeats_on: Some(date!(2026 - 10 - 30)),
        repeated: vec!["Leak test, LPG vapour side".into()],
        to_repeat: vec![],
        may_repeat_failed_only: false,
        term_source: if outcome == InspectionOutcome::Fail { "rule line 12".into() } else { String::new() },
        is_gas_shut_off: (outcome == InspectionOutcome::Fail).then_some(true),
    }
}

#[test]
fn every_kind_of_certificate_prints_every_state_in_words_and_marks() {
    for (kind, fuel, title) in [
        (CertificateKind::Conversion, GasFuel::Cng, "Certificate of conversion to CNG"),
        (CertificateKind::Inspection, GasFuel::Lpg, "Certificate of inspection, LPG system"),
        (CertificateKind::Removal, GasFuel::Lpg, "Certificate of removal of an LPG system"),
        (CertificateKind::Container, GasFuel::Lpg, "LPG container certificate"),
        (CertificateKind::Cylinder, GasFuel::Cng, "CNG cylinder certificate"),
    ] {
        let mut content = sample::certificate();
        content.kind = kind;
        content.system.fuel = fuel;
        let paper = Paper::new(&format!("certificate-{}-{}", kind.as_str(), fuel.as_str()), &full(&content));
        paper.is_sound();
        paper.says(title);
    }
    for (outcome, mark) in [
        (InspectionOutcome::Pass, "✓ Pass No deficiencies"),
        (InspectionOutcome::PassWithMinor, "◐ Pass, with minor deficiencies"),
        (InspectionOutcome::Fail, "✕ Fail"),
    ] {
        let mut content = sample::certificate();
        content.kind = CertificateKind::Inspection;
        content.inspection = Some(inspection(outcome));
        content.supersedes =
            Some(Supersedes { number: "C-2026-0091".into(), reason: "typing error in the plate".into() });
        content.measured[1].verdict = Verdict::CannotTell;
        content.measured[2].verdict = Verdict::Fails;
        content.measured[0].decision_rule = DecisionRule::Guarded;
        content.measured[0].from_outside = "Harbour Test House".into();
        content.conformity[0].is_met = outcome == InspectionOutcome::Pass;
        content.containers[0].findings = vec!["surface rust, brushed off".into()];
        let paper = Paper::new(&format!("inspection-{}", outcome.as_str()), &full(&content));
        paper.is_sound();
        says_all_of(&paper, &serde_json::to_value(&content).unwrap());
        paper.says("This paper replaces C-2026-0091. Reason: typing error in the plate");
        paper.says("result from outside: Harbour Test House");
        paper.says("◐ cannot tell");
        paper.says("✕ fails, simple");
        if outcome != InspectionOutcome::Pass {
            paper.says("✕ not met");
        }
        assert!(
            paper.text().replace(|c: char| c.is_whitespace(), "").contains(&mark.replace(' ', ""))
                || outcome == InspectionOutcome::Pass,
            "{mark}"
        );
    }
}

#[test]
fn a_test_record_holds_the_items_of_the_standard() {
    let content = others::test_record();
    let pdf = test_record(&content, &WORDS, A4).unwrap();
    assert_eq!(pdf, test_record(&content, &WORDS, A4).unwrap());
    let paper = Paper::new("test-record", &pdf);
    paper.is_sound();
    paper.stays_inside_its_margins();
    says_all_of(&paper, &serde_json::to_value(&content).unwrap());
    // ISO/IEC 17025:2017, 7.8.2.1: d, k, l, m, n.
    for value in [
        "Page 1 of 2",
        "End of T-2026-0093/1",
        "Sampling none",
        "Deviations from the method none",
        "concern only the item tested",
        "3 ± 16 cm³/h (k = 2)",
        "Pressure at start, gauge 151.2 kPa",
        "This record is copied as a whole or not at all.",
    ] {
        paper.says(value);
    }
}

/// Each item of ISO/IEC 17025:2017, 7.8.2.1, by its letter, and where a reader finds it.
#[test]
fn every_item_of_the_standard_is_found_on_a_test_record() {
    let mut content = others::test_record();
    content.measured[0].from_outside = "Harbour Test House".into();
    let paper = Paper::new("test-record-items", &test_record(&content, &WORDS, A4).unwrap());
    let pages = paper.page_count();
    let items: [(char, &[&str]); 16] = [
        ('a', &["Leak test record"]),
        ('b', &["Saltmarsh Autogas", "Quay Road 4, Northmere"]),
        ('c', &["Where tested Bay 2, Quay Road 4, Northmere"]),
        ('d', &["T-2026-0093/1", "Page 1 of 2", "Page 2 of 2", "End of T-2026-0093/1"]),
        ('e', &["Customer Ilse Fenwick", "Contact 0555 0177"]),
        ('f', &["Method leak-foam 1; leak-decay 2"]),
        ('g', &["Corvane Pilot 1.6", "ZZZCV16P4K018233", "LPG system, liquid and vapour side", "complete, dry"]),
        ('h', &["Received 23 November 2026"]),
        ('i', &["Began 25 Nov 2026, 09:30 UTC+1", "Ended 25 Nov 2026, 10:20 UTC+1"]),
        ('j', &["issued 25 November 2026"]),
        ('k', &["Sampling none"]),
        ('l', &["The results below concern only the item tested"]),
        ('m', &["3 ± 16 cm³/h", "k = 2", "Pressure at start, gauge 151.2 kPa"]),
        ('n', &["Deviations from the method none"]),
        ('o', &["Authorised by: R. Tolland"]),
        ('p', &["result from outside: Harbour Test House"]),
    ];
    assert!(items.iter().map(|(letter, _)| *letter).eq('a'..='p'));
    for (letter, fields) in items {
        for field in fields {
            let found = (1..=pages).any(|page| paper.says_on(page, field));
            assert!(found, "item {letter}: {field:?} is not in: {}", paper.text());
        }
    }
    // 7.8.6.1: where conformity is stated, the rule and its risk. 7.8.2.2: what the customer supplied is marked.
    paper.says("Guarded: the result and its expanded uncertainty (k = 2) lie within the limit. Risk of a wrong pass below 2.5 %");
    paper.says("Stated by the customer, not checked by us");
}

#[test]
fn an_owners_sheet_is_one_page_for_each_gas() {
    for fuel in [GasFuel::Lpg, GasFuel::Cng] {
        let content = others::owner_sheet(fuel);
        let pdf = owner_sheet(&content, &WORDS, A4).unwrap();
        assert_eq!(pdf, owner_sheet(&content, &WORDS, A4).unwrap());
        let paper = Paper::new(&format!("owner-sheet-{}", fuel.as_str()), &pdf);
        paper.is_sound();
        paper.stays_inside_its_margins();
        assert_eq!(paper.page_count(), 1);
        let gas = if fuel == GasFuel::Lpg { "heavier than air" } else { "lighter than air" };
        for value in [
            gas,
            "call 112",
            "0555 0100",
            "spare wheel well",
            "54 L",
            "31 March 2036",
            "25 January 2027",
            "C-2026-0093",
        ] {
            paper.says(value);
        }
        assert_eq!(paper.codes_on_page(1), [content.page_url.unwrap()]);
    }
}

#[test]
fn a_work_sheet_shows_every_proof_with_its_state() {
    let content = others::work_sheet();
    let pdf = work_sheet(&content, &Pictures::default(), &WORDS, A4).unwrap();
    let paper = Paper::new("work-sheet", &pdf);
    paper.is_sound();
    paper.stays_inside_its_margins();
    says_all_of(&paper, &serde_json::to_value(&content).unwrap());
    for state in ["✓ met", "○ missing", "◐ cannot tell yet", "✕ stops the paper", "⊘ waived", "– does not apply"]
    {
        paper.says(state);
    }
}

#[test]
fn two_papers_have_two_file_ids() {
    let one = full(&sample::certificate());
    let mut content = sample::certificate();
    content.remarks = vec!["Another remark.".into()];
    let other = full(&content);
    assert_ne!(sha256_hex(&one), sha256_hex(&other));
    assert_ne!(reading::file_id(&one), reading::file_id(&other));
}

#[test]
fn papers_without_files_inside_are_pdf_a_1b() {
    let mut demonstration = others::owner_sheet(GasFuel::Cng);
    demonstration.is_demonstration = true;
    Paper::new("archival-owner", &owner_sheet(&others::owner_sheet(GasFuel::Lpg), &WORDS, A4).unwrap()).is_archival();
    Paper::new("archival-demonstration", &owner_sheet(&demonstration, &WORDS, A4).unwrap()).is_archival();
    Paper::new("archival-record", &test_record(&others::test_record(), &WORDS, A4).unwrap()).is_archival();
    Paper::new("archival-work", &work_sheet(&others::work_sheet(), &Pictures::default(), &WORDS, A4).unwrap())
        .is_archival();
}
