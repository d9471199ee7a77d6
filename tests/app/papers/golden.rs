//! The whole text of each paper, in each language it is made in, held against a file that somebody has read.
//!
//! The files lie in `tests/golden`, lines as poppler reads them. Line breaks do not count, for poppler's releases break
//! them differently. A paper that was changed on purpose is written anew with `GOLDEN=write cargo test --test app golden`; the
//! change then shows in the commit, for a reader to read again.

use std::path::{Path, PathBuf};

use fuelwright::model::branch::PaperSize::A4;
use fuelwright::model::paper::certificate::{CertificateContent, InspectionOutcome};
use fuelwright::model::paper::letter::LetterContent;
use fuelwright::model::paper::{CertificateKind, GasFuel};
use fuelwright::papers::audit_pack::audit_pack;
use fuelwright::papers::calibration_record::calibration_record;
use fuelwright::papers::deposit_receipt::deposit_receipt;
use fuelwright::papers::estimate::estimate;
use fuelwright::papers::finding_report::finding_report;
use fuelwright::papers::fitting_record::fitting_record;
use fuelwright::papers::owner_sheet::owner_sheet;
use fuelwright::papers::post::letter;
use fuelwright::papers::price_list::price_list;
use fuelwright::papers::sizing_sheet::sizing_sheet;
use fuelwright::papers::test_record::test_record;
use fuelwright::papers::vehicle_label::vehicle_label;
use fuelwright::papers::wall_sheet::wall_sheet;
use fuelwright::papers::work_sheet::work_sheet;
use fuelwright::words::{Language, Words};
use time::macros::{date, datetime};

use super::full::{self, Much};
use super::languages::sheet;
use super::pictures::looks_as_it_did;
use super::reading::{Paper, squeezed};
use super::{WORDS, inspection, others, reports, sample};

fn file(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/golden").join(format!("{name}.txt"))
}

/// Where two texts part, with what stands there in each.
fn difference(golden: &str, now: &str) -> Option<String> {
    let (golden, now): (Vec<char>, Vec<char>) = (squeezed(golden).chars().collect(), squeezed(now).chars().collect());
    if golden == now {
        return None;
    }
    let alike = golden.iter().zip(&now).take_while(|(one, other)| one == other).count();
    let from = |text: &[char]| text[alike.saturating_sub(30)..].iter().take(90).collect::<String>();
    Some(format!("the file: {}\nnow:      {}", from(&golden), from(&now)))
}

pub fn holds(name: &str, pdf: &[u8]) {
    let text = Paper::new(&format!("golden-{name}"), pdf).text().replace('\u{c}', "\n");
    // The version of the program is on the papers, and moves on by itself.
    let text = text.replace(env!("CARGO_PKG_VERSION"), "<version>");
    let file = file(name);
    if std::env::var("GOLDEN").as_deref() == Ok("write") {
        std::fs::create_dir_all(file.parent().unwrap()).unwrap();
        std::fs::write(&file, &text).unwrap();
        return;
    }
    let golden = std::fs::read_to_string(&file).unwrap_or_else(|e| panic!("{}: {e}", file.display()));
    if let Some(difference) = difference(&golden, &text) {
        panic!("{name}\n{difference}");
    }
}

/// The same, and how its pages look.
pub fn looks_and_holds(name: &str, pdf: &[u8]) {
    looks_as_it_did(name, pdf);
    holds(name, pdf);
}

fn letters(w: &Words) -> [(&'static str, LetterContent); 3] {
    let values = [
        ("plate", "NM 47 KTR".into()),
        ("vehicle", "Corvane Pilot 1.6".into()),
        ("number", "C-2026-0093".into()),
        ("found", "G-2".into()),
        ("reason", "W-31".into()),
        ("at", w.date_time(datetime!(2026-11-25 09:30 UTC)).into()),
        ("who", "Corrie Gas Parts".into()),
        ("part", "T-118 204".into()),
        ("document", "R-7".into()),
        ("on", w.date(date!(2026 - 11 - 02)).into()),
        ("remedy", "W-32".into()),
    ];
    ["letter-re-test", "letter-withdrawn", "letter-recall"].map(|key| {
        let parts = [
            w.tv("letter-dear", &[("name", "Ilse Fenwick".into())]),
            w.tv(&format!("{key}-text"), &values),
            w.t("letter-without-consent"),
            w.tv("letter-reach-us", &[("phone", "0555 0100".into()), ("shop", "Northmere Autogas".into())]),
        ];
        let answers = ["letter-answer-come", "letter-answer-elsewhere", "letter-answer-sold", "letter-answer-no-more"];
        let content = LetterContent {
            subject: w.tv(key, &values),
            paragraphs: parts.iter().flat_map(|part| part.split("\n\n")).map(str::to_owned).collect(),
            answers: answers.map(|key| w.t(key)).to_vec(),
            language: w.tag().into(),
            ..full::letter(Much::Usual)
        };
        (key, content)
    })
}

#[test]
fn what_a_customer_is_handed_reads_in_each_language_as_it_was_read() {
    for language in Language::PAPERS {
        let w = Words::new(language);
        for fuel in [GasFuel::Lpg, GasFuel::Cng] {
            let pdf = owner_sheet(&sheet(fuel, &w), &w, A4).unwrap();
            looks_and_holds(&format!("owner-sheet-{}-{}", fuel.as_str(), w.tag()), &pdf);
        }
        let language = w.tag().to_owned();
        let (mut offer, mut list) = (full::estimate(Much::Usual), full::price_list(Much::Usual));
        let mut receipt = full::deposit_receipt(Much::Usual);
        for parties in [&mut offer.parties, &mut list.parties, &mut receipt.parties] {
            parties.language.clone_from(&language);
        }
        looks_and_holds(&format!("estimate-{language}"), &estimate(&offer, &w, A4).unwrap());
        (offer.priced.agreed, offer.valid_until_on) = (None, None);
        looks_and_holds(&format!("estimate-open-{language}"), &estimate(&offer, &w, A4).unwrap());
        looks_and_holds(&format!("price-list-{language}"), &price_list(&list, &w, A4).unwrap());
        list.deposits.clear();
        (list.priced.agreed, list.deposited_minor, list.remaining_minor) = (None, 0, -1);
        looks_and_holds(&format!("price-list-back-{language}"), &price_list(&list, &w, A4).unwrap());
        looks_and_holds(&format!("deposit-receipt-{language}"), &deposit_receipt(&receipt, &w, A4).unwrap());
        receipt.taken_back = list_back();
        looks_and_holds(&format!("deposit-receipt-back-{language}"), &deposit_receipt(&receipt, &w, A4).unwrap());
        for (key, content) in letters(&w) {
            looks_and_holds(&format!("{key}-{}", w.tag()), &letter(&content, &w, A4).unwrap());
        }
    }
}

/// The line that takes a deposit back.
fn list_back() -> Option<fuelwright::model::paper::estimate::DepositOnPaper> {
    full::price_list(Much::Usual).deposits.pop()
}

fn certificate_of(kind: CertificateKind, fuel: GasFuel, outcome: Option<InspectionOutcome>) -> CertificateContent {
    let mut content = sample::certificate();
    content.kind = kind;
    content.system.fuel = fuel;
    content.inspection = outcome.map(inspection);
    content
}

#[test]
fn each_certificate_reads_as_it_was_read() {
    use CertificateKind::{Container, Conversion, Cylinder, Inspection, Removal};
    for (name, kind, fuel, outcome) in [
        ("conversion-lpg", Conversion, GasFuel::Lpg, None),
        ("conversion-cng", Conversion, GasFuel::Cng, None),
        ("inspection-pass", Inspection, GasFuel::Lpg, Some(InspectionOutcome::Pass)),
        ("inspection-minor", Inspection, GasFuel::Lpg, Some(InspectionOutcome::PassWithMinor)),
        ("inspection-fail", Inspection, GasFuel::Lpg, Some(InspectionOutcome::Fail)),
        ("removal", Removal, GasFuel::Lpg, None),
        ("container", Container, GasFuel::Lpg, None),
        ("cylinder", Cylinder, GasFuel::Cng, None),
    ] {
        looks_and_holds(&format!("certificate-{name}"), &super::full(&certificate_of(kind, fuel, outcome)));
    }
}

#[test]
fn each_working_paper_reads_as_it_was_read() {
    let (fitting, pictures) = full::fitting_record(Much::Usual);
    let (work, work_pictures) = full::work_sheet(Much::Usual);
    for (name, pdf) in [
        ("fitting-record", fitting_record(&fitting, &pictures, &WORDS, A4)),
        ("calibration-record", calibration_record(&full::calibration_record(Much::Usual), &WORDS, A4)),
        ("test-record", test_record(&others::test_record(), &WORDS, A4)),
        ("work-sheet", work_sheet(&work, &work_pictures, &WORDS, A4)),
        ("wall-sheet", wall_sheet(&full::wall_sheet(Much::Usual), &WORDS, A4)),
        ("sizing-sheet", sizing_sheet(&reports::sizing_sheet(Much::Usual), &WORDS, A4)),
        ("finding-report", finding_report(&reports::finding_report(Much::Usual), &WORDS, A4)),
        ("audit-pack", audit_pack(&reports::audit_pack(Much::Usual), A4, &WORDS)),
        ("vehicle-label", vehicle_label(&full::label(Much::Usual), &WORDS)),
    ] {
        looks_and_holds(name, &pdf.unwrap());
    }
}

#[test]
fn a_word_that_moved_or_changed_is_shown_where_it_stands() {
    assert_eq!(difference("a b\nc", "ab c"), None);
    let said = difference("the gas is shut off", "the gas is shut in").unwrap();
    assert_eq!(said, "the file: thegasisshutoff\nnow:      thegasisshutin");
}
