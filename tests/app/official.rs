//! Certificates, records and labels in the language of the rules, and the keeper's own beside it.

use fuelwright::model::branch::PaperSize;
use fuelwright::model::ids::{JobId, PaperId};
use fuelwright::model::job::{Fuel, JobKind};
use fuelwright::model::paper::PersonOnPaper;
use fuelwright::model::paper::certificate::CertificateContent;
use fuelwright::papers;
use fuelwright::papers::certificate::{Certificate, certificate_on};
use fuelwright::rules::RuleBook;
use fuelwright::seal::{Sealed, Signer};
use fuelwright::shop::issue::pages::{Pages, pages};
use fuelwright::words::{Language, Words};
use time::macros::date;

use crate::papers::golden::looks_and_holds;
use crate::papers::reading::Paper;
use crate::papers::sample;
use crate::round::Round;
use crate::support::{Browser, PASSWORD, TestShop};

fn stacked(names: &[&str]) -> RuleBook {
    RuleBook::stacked(names).unwrap()
}

#[test]
fn the_first_set_that_names_a_language_decides_and_a_vehicle_s_own_has_no_say() {
    let german = stacked(&["un-baseline", "eu-roadworthiness", "de-stvzo", "shop"]);
    assert_eq!(german.official_language("en"), Some("de"));
    let belgian = stacked(&["un-baseline", "be", "shop"]);
    assert_eq!(belgian.official_language("fr-BE"), Some("fr"), "the branch's own, being one of them");
    assert_eq!(belgian.official_language("en"), Some("nl"), "else the first");
    assert_eq!(stacked(&["un-baseline", "shop"]).official_language("pl"), None);

    let mut visited = stacked(&["un-baseline", "pl-tdt", "shop"]);
    assert_eq!(visited.official_language("en"), Some("pl"));
    visited.sets[1].is_by_vehicle = true;
    assert_eq!(visited.official_language("en"), None, "whoever signs must be able to read it");

    let mut own = german;
    own.sets.last_mut().unwrap().languages = vec!["tr".into()];
    assert_eq!(own.official_language("en"), Some("tr"), "the shop's own lines come first");
}

/// What has the words of a language and no set that names one.
async fn speaks(open: &TestShop, language: Language) {
    open.set("branches", "country", "XX").await;
    open.set("branches", "language", language.tag()).await;
}

async fn drawn(browser: &Browser, job: JobId, kind: &str) -> Vec<u8> {
    let page = browser.get(&format!("/jobs/{job}/papers/{kind}")).await;
    page.is(200);
    page.bytes.clone()
}

/// Holds the paper against its file, and looks whether it can be read at all.
fn holds_well(name: &str, language: Language, pdf: &[u8], has_margins: bool) {
    let name = format!("{name}-{}", language.tag());
    let paper = Paper::new(&format!("official-{name}"), pdf);
    paper.is_sound();
    paper.does_not_print_over_itself();
    if has_margins {
        paper.stays_inside_its_margins();
    }
    looks_and_holds(&name, pdf);
}

/// The certificate as it would be issued now, drawn as if it were signed.
async fn certificate(open: &TestShop, job: JobId) -> Vec<u8> {
    let vera = open.actor(open.vera).await;
    let mut content = open.shop.preview_certificate(&vera, job).await.unwrap().content;
    content.number = "C-2026-0001".into();
    content.signatory = PersonOnPaper {
        name: "Vera Holm".into(),
        authorisation: "NM-2031".into(),
        authorised_until_on: Some(date!(2027 - 05 - 31)),
    };
    let sealed = Sealed::seal(&content, &Signer::from_random(&[7; 32])).unwrap().to_json();
    let words = Words::for_customer([&*content.language]);
    let paper = Certificate { content: &content, personal: Some(&sample::keeper()), sealed: Some(&sealed) };
    certificate_on(&paper, &words, PaperSize::A4).unwrap()
}

#[tokio::test]
async fn the_papers_of_a_conversion_read_in_each_language_as_they_were_read() {
    let open = TestShop::open().await;
    let job = open.told().await.job;
    let browser = open.technician().await;
    for language in Language::PAPERS {
        speaks(&open, language).await;
        holds_well("told-certificate", language, &certificate(&open, job).await, true);
        for kind in ["test-record", "fitting-record", "calibration-record"] {
            holds_well(&format!("told-{kind}"), language, &drawn(&browser, job, kind).await, true);
        }
    }
}

#[tokio::test]
async fn a_failed_inspection_reads_in_each_language_as_it_was_read() {
    let round = Round::open(JobKind::Inspection, Fuel::Cng).await;
    let job = round.bay.job;
    round.vessel(job, "found", "CY-1").await;
    round.arrive(job).await;
    round.checklist(job, &[("clear-exhaust", "60 mm")]).await.goes_to();
    round.joints(job, "cng-high", "leaks").await;
    let rows = [["leak-cng-high", "6.1.3 f", "dangerous", "CY-1"], ["check:line-clips", "6.1.3 c", "minor", "3/4"]];
    let rest = [("is_gas_shut_off", "yes"), ("not_tested_reason", "6.1.3 f")];
    round.deficiencies(job, &rows, &rest).await.goes_to();
    for language in Language::PAPERS {
        speaks(&round.bay.shop, language).await;
        holds_well("told-fail", language, &certificate(&round.bay.shop, job).await, true);
    }
}

#[tokio::test]
async fn a_label_speaks_the_language_of_the_rules() {
    let open = TestShop::open().await;
    let job = open.told().await.job;
    let browser = open.technician().await;
    browser.post(&format!("/jobs/{job}/label"), &[]).await.goes_to();
    for language in Language::PAPERS {
        speaks(&open, language).await;
        let label = Paper::new(&format!("official-label-{}", language.tag()), &drawn(&browser, job, "label").await);
        label.is_sound();
        label.does_not_print_over_itself();
        let w = Words::new(language);
        label.says(&w.tv("label-title", &[("fuel", w.t("paper-fuel-lpg").into())]));
    }
}

#[tokio::test]
async fn a_record_in_the_keeper_s_language_says_which_text_counts() {
    let open = TestShop::open().await;
    let job = open.told().await.job;
    speaks(&open, Language::German).await;
    let browser = open.technician().await;
    let alike = browser.get(&format!("/jobs/{job}/papers")).await;
    assert!(alike.text().contains("In English, for the keeper"), "{}", alike.text());
    open.set("customers", "language", "pl").await;
    let page = browser.get(&format!("/jobs/{job}/papers")).await;
    page.is(200).says("In Polski, for the keeper");
    let [german, polish] = [Language::German, Language::Polish].map(Words::new);
    let values = [("language", "Polski".into()), ("original", "Deutsch".into())];
    for kind in ["fitting-record", "calibration-record", "test-record"] {
        page.links_to(&format!("/jobs/{job}/papers/{kind}?language=keeper"));
        let own =
            Paper::new(&format!("keeper-{kind}"), &drawn(&browser, job, &format!("{kind}?language=keeper")).await);
        own.is_sound();
        own.stays_inside_its_margins();
        own.does_not_print_over_itself();
        own.says(&polish.tv("paper-copy", &values));
        own.says(&polish.t("paper-vehicle"));
        own.does_not_say(&german.t("paper-vehicle"));
        let counts = Paper::new(&format!("keeper-{kind}-counts"), &drawn(&browser, job, kind).await);
        counts.says(&german.t("paper-vehicle"));
        counts.does_not_say(&polish.tv("paper-copy", &values));
    }
    open.set("customers", "language", "de").await;
    let same = browser.get(&format!("/jobs/{job}/papers")).await;
    assert!(!same.text().contains("for the keeper"), "{}", same.text());
}

struct Signed {
    open: TestShop,
    id: PaperId,
    content: CertificateContent,
    pdf: Vec<u8>,
}

/// A conversion in a German shop for a keeper who reads Polish, signed through the page with these fields.
async fn signed(more: &[(&str, &str)]) -> Signed {
    let open = TestShop::open().await;
    let job = open.told().await.job;
    speaks(&open, Language::German).await;
    open.set("customers", "language", "pl").await;
    let vera = open.signatory().await;
    let page = vera.get(&format!("/jobs/{job}/papers")).await;
    page.is(200).says("It is made in Deutsch, the language of these rules").says("Also in Polski, for the keeper");
    page.says("Nobody of the trade has noted yet to have read: Deutsch, Polski");
    let mut sent = vec![("password", PASSWORD)];
    sent.extend(["odometer", "vin-plate", "container-plate"].map(|slot| ("photos_seen", slot)));
    sent.extend(more);
    let to = vera.post(&format!("/jobs/{job}/papers"), &sent).await.goes_to();
    let id: PaperId = to.rsplit('/').next().unwrap().parse().unwrap();
    let found = open.shop.find_paper(open.branch, id).await.unwrap().unwrap();
    let pdf = open.shop.issued_pdf(&found.paper).await.unwrap();
    Signed { open, id, content: found.content, pdf }
}

#[tokio::test]
async fn the_keeper_s_language_stands_beside_that_of_the_rules_if_it_is_wished() {
    let alone = signed(&[]).await;
    assert_eq!((alone.content.language.as_str(), alone.content.beside.is_none()), ("de", true));
    let both = signed(&[("beside", "yes")]).await;
    let beside = both.content.beside.as_ref().expect("it was wished");
    assert_eq!((both.content.language.as_str(), beside.language.as_str()), ("de", "pl"));
    // It says the same: number, code, results; only the words differ.
    assert_eq!((&beside.number, &beside.check.code), (&both.content.number, &both.content.check.code));
    assert_eq!(beside.measured.len(), both.content.measured.len());
    let mut same = (**beside).clone();
    assert_ne!(same.cautions, both.content.cautions);
    same.language.clone_from(&both.content.language);
    assert_eq!(same.vehicle, both.content.vehicle);

    let [german, polish] = [Language::German, Language::Polish].map(Words::new);
    let paper = Paper::new("official-beside", &both.pdf);
    paper.is_sound();
    paper.stays_inside_its_margins();
    paper.does_not_print_over_itself();
    let one = Paper::new("official-alone", &alone.pdf);
    let (pages, first) = (paper.page_count(), one.page_count());
    assert!(pages > first, "{pages} pages");
    for (words, from, to) in [(german, 1, first), (polish, first + 1, pages)] {
        let text: String = (from..=to).map(|page| paper.text_of_page(page)).collect();
        let squeezed = crate::papers::reading::squeezed(&text);
        for key in ["paper-vehicle", "paper-measured", "paper-what", "paper-next", "part-category-multivalve"] {
            let wanted = words.t(key);
            assert!(squeezed.contains(&crate::papers::reading::squeezed(&wanted)), "{wanted:?} is not in {text}");
        }
    }
    let values = [("language", "Polski".into()), ("original", "Deutsch".into())];
    paper.says(&polish.tv("paper-beside", &values));
    one.does_not_say(&polish.t("paper-vehicle"));

    // A reader that speaks is told where the language changes.
    let file = lopdf::Document::load_mem(&both.pdf).unwrap();
    let speaks = |object: &lopdf::Object| {
        let node = object.as_dict().ok().filter(|node| node.has_type(b"StructElem"));
        node.and_then(|node| node.get(b"Lang").ok()).is_some_and(|lang| lang.as_str().is_ok_and(|tag| tag == b"pl"))
    };
    assert_eq!(file.objects.values().filter(|object| speaks(object)).count(), 1);
}

#[tokio::test]
async fn a_paper_of_any_language_and_size_is_genuine_and_told_from_one_whose_pages_were_changed() {
    for size in ["a4", "letter"] {
        let both = signed(&[("beside", "yes")]).await;
        let found = both.open.shop.find_paper(both.open.branch, both.id).await.unwrap().unwrap();
        let sealed = papers::embedded(&both.pdf).unwrap().unwrap();
        Sealed::from_json(&sealed).unwrap();
        let personal = serde_json::from_str(&found.paper.personal).unwrap();
        let wanted = if size == "a4" { PaperSize::A4 } else { PaperSize::Letter };
        let draw = |content: &CertificateContent| {
            let paper = Certificate { content, personal: Some(&personal), sealed: Some(&sealed) };
            certificate_on(&paper, &Words::for_customer([&*content.language]), wanted).unwrap()
        };
        // As the program would be asked far from the shop, with the file alone.
        assert_eq!(pages(&draw(&both.content), &both.content, None).unwrap(), Pages::AsDrawn, "{size}");
        let mut other = both.content.clone();
        other.beside.as_mut().unwrap().vehicle.odometer_km = Some(1);
        let changed = pages(&draw(&other), &both.content, None).unwrap();
        let Pages::Other(difference) = changed else { panic!("{size}: {changed:?}") };
        assert_ne!(difference.file, difference.content);
    }
}
