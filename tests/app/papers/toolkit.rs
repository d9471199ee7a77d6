//! Every unsigned paper with hardly anything, as usual, and with far too much, on A4 and on US Letter.

use fuelwright::model::branch::PaperSize::{self, A4, Letter};
use fuelwright::model::paper::GasFuel;
use fuelwright::papers::Pictures;
use fuelwright::papers::audit_pack::audit_pack;
use fuelwright::papers::calibration_record::calibration_record;
use fuelwright::papers::certificate::{Certificate, certificate_on};
use fuelwright::papers::deposit_receipt::deposit_receipt;
use fuelwright::papers::estimate::estimate;
use fuelwright::papers::finding_report::finding_report;
use fuelwright::papers::fitting_record::fitting_record;
use fuelwright::papers::owner_sheet::owner_sheet;
use fuelwright::papers::post::letter;
use fuelwright::papers::price_list::price_list;
use fuelwright::papers::road as road_in_words;
use fuelwright::papers::sizing_sheet::sizing_sheet;
use fuelwright::papers::test_record::test_record;
use fuelwright::papers::vehicle_label::vehicle_label;
use fuelwright::papers::wall_sheet::wall_sheet;
use fuelwright::papers::work_sheet::work_sheet;
use fuelwright::seal::sha256_hex;
use serde_json::Value;

use super::full::{self, Much};
use super::reading::{Paper, says_all_of};
use super::{WORDS, others, reports, sample};

/// Name, bytes and content of each paper that fills pages of the shop's size.
fn all(much: Much, size: PaperSize) -> Vec<(&'static str, Vec<u8>, Value)> {
    let json = |content: &dyn erased::Json| content.json();
    let (fitting, pictures) = full::fitting_record(much);
    let calibration = full::calibration_record(much);
    let (work, work_pictures) = full::work_sheet(much);
    let wall = full::wall_sheet(much);
    let post = full::letter(much);
    let (offer, list, receipt) = (full::estimate(much), full::price_list(much), full::deposit_receipt(much));
    let (sizing, finding, pack) =
        (reports::sizing_sheet(much), reports::finding_report(much), reports::audit_pack(much));
    // A letter bears the day of printing; when its message was written is only in the file's own data.
    let mut letter_json = json(&post);
    letter_json.as_object_mut().unwrap().remove("written_at");
    let mut calibration_json = json(&calibration);
    // A comparison is printed in words and figures: what stands on the paper is looked for in its place.
    if let (Some(road), Some(kept)) = (&calibration.road, calibration_json.get_mut("road")) {
        let lines = road_in_words::cells(&WORDS, &road.comparison).into_iter().map(|line| Value::from(line.interval));
        kept["comparison"] = lines.collect();
        let sums = road.logs.iter().map(|log| Value::from(log.sha256.as_str()));
        kept["logs"] = sums.collect();
    }
    vec![
        ("fitting", fitting_record(&fitting, &pictures, &WORDS, size).unwrap(), json(&fitting)),
        ("calibration", calibration_record(&calibration, &WORDS, size).unwrap(), calibration_json),
        ("work", work_sheet(&work, &work_pictures, &WORDS, size).unwrap(), json(&work)),
        ("wall", wall_sheet(&wall, &WORDS, size).unwrap(), json(&wall)),
        ("letter", letter(&post, &WORDS, size).unwrap(), letter_json),
        ("estimate", estimate(&offer, &WORDS, size).unwrap(), money_shown(json(&offer))),
        ("price-list", price_list(&list, &WORDS, size).unwrap(), money_shown(json(&list))),
        ("receipt", deposit_receipt(&receipt, &WORDS, size).unwrap(), money_shown(json(&receipt))),
        (
            "sizing-sheet",
            sizing_sheet(&sizing, &WORDS, size).unwrap(),
            without(json(&sizing), &["piece", "state", "kind"]),
        ),
        (
            "finding-report",
            finding_report(&finding, &WORDS, size).unwrap(),
            without(json(&finding), &["sort", "printed_at"]),
        ),
        ("audit-pack", audit_pack(&pack, size, &WORDS).unwrap(), without(json(&pack), &["drawn_at"])),
    ]
}

/// Money and quantities are kept as whole numbers: what stands on the paper is looked for in their place.
fn money_shown(mut content: Value) -> Value {
    if let Value::Object(members) = &mut content {
        for (name, value) in members.iter_mut() {
            let shown = match value.as_i64() {
                Some(minor) if name.ends_with("_minor") => WORDS.amount(minor.abs(), "EUR"),
                Some(thousandths) if name.ends_with("_thousandths") => WORDS.thousandths(thousandths),
                _ => {
                    *value = money_shown(value.take());
                    continue;
                }
            };
            *value = Value::from(shown);
        }
    } else if let Value::Array(items) = &mut content {
        for item in items {
            *item = money_shown(item.take());
        }
    }
    content
}

/// What tells kinds apart stands on the paper as a mark, or not at all.
fn without(mut content: Value, names: &[&str]) -> Value {
    match &mut content {
        Value::Object(members) => {
            members.retain(|name, _| !names.contains(&name.as_str()));
            members.values_mut().for_each(|value| *value = without(value.take(), names));
        }
        Value::Array(items) => items.iter_mut().for_each(|item| *item = without(item.take(), names)),
        _ => {}
    }
    content
}

mod erased {
    pub trait Json {
        fn json(&self) -> serde_json::Value;
    }
    impl<T: serde::Serialize> Json for T {
        fn json(&self) -> serde_json::Value {
            serde_json::to_value(self).unwrap()
        }
    }
}

const fn name(much: Much) -> &'static str {
    match much {
        Much::Little => "little",
        Much::Usual => "usual",
        Much::Plenty => "too-much",
    }
}

#[test]
fn every_paper_holds_all_of_its_content_inside_its_margins_however_much_there_is() {
    for much in [Much::Little, Much::Usual, Much::Plenty] {
        for size in [A4, Letter] {
            for (kind, pdf, content) in all(much, size) {
                let paper = Paper::new(&format!("{kind}-{}-{size}", name(much)), &pdf);
                paper.is_sound();
                paper.has_size(if size == A4 { [210.0, 297.0] } else { [215.9, 279.4] });
                paper.stays_inside_its_margins();
                paper.does_not_print_over_itself();
                says_all_of(&paper, &content);
                let pages = paper.page_count();
                for page in 1..=pages {
                    assert!(paper.text_of_page(page).contains(&format!("Page {page} of {pages}")), "{kind} {page}");
                }
            }
        }
    }
}

#[test]
fn the_older_papers_fit_us_letter_too() {
    let content = sample::certificate();
    let (sealed, keeper) = (sample::sealed(&content), sample::keeper());
    let signed = Certificate { content: &content, personal: Some(&keeper), sealed: Some(&sealed) };
    for (kind, pdf) in [
        ("certificate", certificate_on(&signed, &WORDS, Letter).unwrap()),
        ("test-record", test_record(&others::test_record(), &WORDS, Letter).unwrap()),
        ("owner-sheet", owner_sheet(&others::owner_sheet(GasFuel::Lpg), &WORDS, Letter).unwrap()),
    ] {
        let paper = Paper::new(&format!("{kind}-usual-letter"), &pdf);
        paper.is_sound();
        paper.has_size([215.9, 279.4]);
        paper.stays_inside_its_margins();
        paper.does_not_print_over_itself();
    }
}

#[test]
fn a_heading_never_stands_alone_and_a_row_is_never_cut() {
    let (content, pictures) = full::fitting_record(Much::Plenty);
    let pdf = fitting_record(&content, &pictures, &WORDS, A4).unwrap();
    let paper = Paper::new("fitting-breaks", &pdf);
    let headings: Vec<String> = ["Vehicle", "Parts on the vehicle", "Parts removed in this job", "Photos"]
        .map(str::to_owned)
        .into_iter()
        .chain(content.checks.iter().map(|group| group.name.clone()))
        .collect();
    let foot = content.title.as_str();
    for page in 1..=paper.page_count() {
        let text = paper.text_of_page(page);
        let lines: Vec<&str> = text.lines().map(str::trim).filter(|line| !line.is_empty()).collect();
        let last = lines.iter().rposition(|line| *line == foot).unwrap() - 1;
        assert!(!headings.iter().any(|heading| heading == lines[last]), "page {page} ends with {:?}", lines[last]);
    }
    // Serial and place of a part stand on one page: its row was not cut.
    for n in 5..40 {
        let serial = format!("{}{n:02}", full::SERIAL);
        let on = (1..=paper.page_count()).filter(|page| paper.says_on(*page, &serial)).count();
        assert_eq!(on, 1, "{serial}");
    }
    let repeats = (1..=paper.page_count()).filter(|page| paper.says_on(*page, "Approval mark")).count();
    assert!(repeats > 2, "the head of a table is repeated: {repeats}");
}

#[test]
fn photos_go_into_a_paper_untouched_and_each_once() {
    let (content, pictures) = full::fitting_record(Much::Plenty);
    let pdf = fitting_record(&content, &pictures, &WORDS, A4).unwrap();
    let paper = Paper::new("fitting-photos", &pdf);
    let images = paper.images();
    assert_eq!(images.len(), 29, "one file of the thirty cannot be printed");
    for (n, photo) in content.photos[..29].iter().enumerate() {
        let at = u8::try_from(n).unwrap();
        let (width, height) = if n % 3 == 2 { (90, 120) } else { (160, 120) };
        assert_eq!(images[n], full::jpeg(width, height, at * 8), "{}", photo.what);
    }
    paper.says("This file is kept with the job, but cannot be printed here.");
}

#[test]
fn a_label_has_its_true_size_and_says_everything() {
    for much in [Much::Little, Much::Usual, Much::Plenty] {
        let content = full::label(much);
        let pdf = vehicle_label(&content, &WORDS).unwrap();
        assert_eq!(pdf, vehicle_label(&content, &WORDS).unwrap());
        let paper = Paper::new(&format!("label-{}", name(much)), &pdf);
        paper.is_sound();
        paper.has_size([105.0, 74.0]);
        paper.keeps_from_the_edge(4.0);
        paper.does_not_print_over_itself();
        let mut json = serde_json::to_value(&content).unwrap();
        for aside in ["shop", "printed_on"] {
            json.as_object_mut().unwrap().remove(aside);
        }
        says_all_of(&paper, &json);
        assert_eq!(paper.page_count() > 1, much == Much::Plenty);
        let codes = paper.codes_on_page(1);
        assert_eq!(codes, content.url.into_iter().collect::<Vec<_>>());
        paper.says(&content.shop.phone);
    }
    let usual = Paper::new("label-fields", &vehicle_label(&full::label(Much::Usual), &WORDS).unwrap());
    for value in [
        "LPG system",
        "NM 47 KTR · 8233",
        "Approval E4 115R-00 0731",
        "54 L, filled to 80 %",
        "made 03/2026",
        "31 March 2036",
    ] {
        usual.says(value);
    }
    let mut cng = full::label(Much::Usual);
    cng.fuel = GasFuel::Cng;
    cng.containers[0].fill_limit_percent = None;
    cng.containers[0].working_pressure_bar = Some(200);
    cng.is_demonstration = true;
    let paper = Paper::new("label-cng", &vehicle_label(&cng, &WORDS).unwrap());
    paper.says("Cylinder · T-118 204");
    paper.says("54 L, 200 bar");
    paper.says("DEMONSTRATION");
}

/// Papers made in another process, zone and language have the same bytes.
#[test]
fn papers_are_the_same_bytes_wherever_they_are_made() {
    let sums = |texts: Vec<(&'static str, Vec<u8>, Value)>| -> String {
        let lines: Vec<_> = texts.iter().map(|(kind, pdf, _)| format!("{kind} {}", sha256_hex(pdf))).collect();
        lines.join("\n")
    };
    let here = sums(all(Much::Usual, Letter)) + &sums(all(Much::Plenty, A4));
    if let Ok(path) = std::env::var("PAPERS_TOLD_TO") {
        std::fs::write(path, &here).unwrap();
        return;
    }
    let told = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("papers-elsewhere.txt");
    for (zone, language) in [("Pacific/Auckland", "de_DE.UTF-8"), ("America/St_Johns", "tr_TR.UTF-8")] {
        let done = std::process::Command::new(std::env::current_exe().unwrap())
            .args(["--exact", "papers::toolkit::papers_are_the_same_bytes_wherever_they_are_made"])
            .env("TZ", zone)
            .env("LC_ALL", language)
            .env("PAPERS_TOLD_TO", &told)
            .output()
            .unwrap();
        assert!(done.status.success(), "{}", String::from_utf8_lossy(&done.stdout));
        assert_eq!(std::fs::read_to_string(&told).unwrap(), here, "in {zone}");
        std::fs::remove_file(&told).unwrap();
    }
}

#[test]
fn the_new_papers_are_pdf_a_1b() {
    let (fitting, pictures) = full::fitting_record(Much::Usual);
    Paper::new("archival-fitting", &fitting_record(&fitting, &pictures, &WORDS, Letter).unwrap()).is_archival();
    Paper::new("archival-label", &vehicle_label(&full::label(Much::Usual), &WORDS).unwrap()).is_archival();
    Paper::new("archival-letter", &letter(&full::letter(Much::Usual), &WORDS, A4).unwrap()).is_archival();
    Paper::new("archival-estimate", &estimate(&full::estimate(Much::Usual), &WORDS, A4).unwrap()).is_archival();
    let empty = full::fitting_record(Much::Little).0;
    Paper::new("archival-empty", &fitting_record(&empty, &Pictures::default(), &WORDS, A4).unwrap()).is_archival();
}
