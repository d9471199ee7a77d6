//! The face: pieces of the kit as a browser gets them, on an invented job file.

use askama::Template;
use axum::body::to_bytes;
use axum::http::StatusCode;
use fuelwright::model::unit::Unit;
use fuelwright::web::form::{Form, Typed, Wrong};
use fuelwright::web::kit::{self, Choice, JobSheet, Mark, Proof, ProofList, Rail, Stop, StopState, Tone, Verdict};
use fuelwright::web::page::{self, Frame, PersonBadge, Place};
use fuelwright::words::Words;
use scraper::{Html, Selector};

#[derive(Template)]
#[template(path = "job/sample.html")]
struct Sample {
    frame: Frame,
    sheet: JobSheet,
    form: Form,
    verdict: Verdict,
    gauges: Vec<Choice>,
}

fn proof(mark: Mark, title: &str, note: &str, way_on: Option<&str>) -> Proof {
    Proof {
        mark,
        title: title.into(),
        href: (mark != Mark::Met).then(|| "#start_kpa".into()),
        note: note.into(),
        way_on: way_on.map(|said| (said.into(), "/instruments".into())),
    }
}

fn stop(name: &str, met: usize, all: usize, state: StopState) -> Stop {
    Stop { name: name.into(), href: format!("#{name}"), met, all, state, is_open: state == StopState::Now }
}

fn sheet(w: Words) -> JobSheet {
    use StopState::{Done, Now, ToCome};
    JobSheet {
        number: "2026-0147".into(),
        kind: "Conversion, LPG".into(),
        place: "Bay 2, since Tuesday".into(),
        vehicle: "Corvane Pilot 1.6, 2014".into(),
        vehicle_href: "/vehicles/1".into(),
        facts: vec![
            "VIN …4K 018 233".into(),
            format!("{} at {}", w.quantity(82.0, 0, "kW"), w.quantity(6000.0, 0, "/min")),
            "4 engine cylinders".into(),
            w.quantity(128_430.0, 0, "km"),
        ],
        keeper: "Keeper: Ilse Marrow, 0555 0142".into(),
        plate: "NM 47 KTR".into(),
        standing: None,
        rail: Rail {
            w,
            stops: vec![
                stop("Intake", 6, 6, Done),
                stop("Sizing", 4, 4, Done),
                stop("Fitting", 11, 11, Done),
                stop("Calibration", 5, 5, Done),
                stop("Proving", 3, 7, Now),
                stop("Hand-over", 0, 4, ToCome),
            ],
        },
        proofs: ProofList::new(
            w,
            "Proofs for the certificate".into(),
            vec![
                proof(Mark::Met, "Container in date", "E20 67R-01 4471 · made 03/2026", None),
                proof(Mark::Met, "Calibrated warm", "vaporiser 61 °C · R. Tolland, 09:10", None),
                proof(Mark::Undecided, "Leak test, vapour side", "cannot tell yet", None),
                proof(Mark::Missing, "Leak test, liquid side by foam", "9 of 14 joints dry", None),
                proof(Mark::Missing, "Exhaust on gas, idle and raised", "", None),
                proof(Mark::Missing, "Shut-off with engine stalled", "cannot be waived", None),
                proof(
                    Mark::Stops,
                    "Gas analyser A-1 is out of calibration",
                    "since 3 Nov",
                    Some("use another, or enter its certificate"),
                ),
                proof(Mark::EnteredLater, "Engine cylinders answer one by one", "", None),
            ],
        ),
        caution: "Local code and licensed practice prevail. Never test with oxygen. Ventilate; no source of ignition while gas is vented.".into(),
    }
}

fn sample(form: Form) -> Sample {
    let w = Words::default();
    Sample {
        frame: Frame {
            shop_name: "Saltmarsh Autogas".into(),
            person: Some(PersonBadge { name: "R. Tolland".into(), role: "technician".into(), is_signatory: true }),
            here: Place::Jobs,
            ..Frame::default()
        },
        sheet: sheet(w),
        form,
        verdict: Verdict {
            tone: Tone::Copper,
            mark: Mark::Undecided,
            title: "Cannot tell yet".into(),
            sentences: vec![
                "Loss 47 ± 49 cm³/h. A tight section would show it after **24 minutes**; 14 more to go.".into(),
                "Temperature is the bottleneck: a thermometer good to 0.02 °C would do it in 5.".into(),
            ],
        },
        gauges: vec![Choice::new("g03", "G-03, due 14 Mar"), Choice::new("g04", "G-04, due 2 Jul")],
    }
}

fn typed() -> Form {
    Form::from(Typed::from_pairs([
        ("start_kpa", "300.0"),
        ("start_c", "20.0"),
        ("volume_l", "2.0"),
        ("end_kpa", "299.6"),
        ("end_c", "20.0"),
        ("gauge", "g03"),
    ]))
    .scoped("sample")
}

async fn read(answer: fuelwright::web::Answer) -> (StatusCode, String) {
    let answer = answer.expect("rendered");
    let status = answer.status();
    let body = to_bytes(answer.into_body(), 1 << 22).await.expect("a body");
    (status, String::from_utf8(body.to_vec()).expect("UTF-8"))
}

#[tokio::test]
async fn a_fault_stands_at_its_field_in_the_summary_and_in_the_title() {
    let mut form = typed();
    form.set("start_kpa", "1,200");
    form.set("volume_l", "<b>2</b>");
    assert_eq!(form.number("start_kpa", Unit::Kilopascal, 0.0..=3_000.0), None);
    assert_eq!(form.number("volume_l", Unit::Litre, 0.0..=100.0), None);
    form.fail("end_c", Wrong::Empty);
    let (status, html) = read(page::retry(sample(form))).await;
    assert_eq!(status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(!html.contains("<b>2</b>"), "what was typed is escaped");
    let page = Html::parse_document(&html);
    let one = |css: &str| {
        let found: Vec<_> = page.select(&Selector::parse(css).expect("css")).collect();
        assert_eq!(found.len(), 1, "{css}");
        found[0]
    };
    let text = |css: &str| one(css).text().collect::<String>();

    assert!(text("title").starts_with("Error: "), "{}", text("title"));
    let input = one("input#start_kpa");
    assert_eq!(input.value().attr("value"), Some("1,200"), "kept as typed");
    assert_eq!(input.value().attr("aria-invalid"), Some("true"));
    let described = input.value().attr("aria-describedby").expect("tied to its error");
    assert!(described.contains("start_kpa-error"));
    assert!(text("#start_kpa-error").contains("1200 or as 1.200"), "{}", text("#start_kpa-error"));
    assert_eq!(one("input#volume_l").value().attr("value"), Some("<b>2</b>"));
    assert_eq!(one("#end_kpa").value().attr("aria-invalid"), None);
    for id in ["start_kpa", "volume_l", "end_c"] {
        one(&format!(".summary a[href='#{id}']"));
    }
}

#[tokio::test]
async fn a_page_has_no_double_id_no_input_without_label_and_nothing_inline() {
    let (status, html) = read(page::page(sample(typed()))).await;
    assert_eq!(status, StatusCode::OK);
    assert!(!html.contains('⟦'), "a key without words");
    let page = Html::parse_document(&html);
    let mut ids = std::collections::BTreeSet::new();
    for element in page.select(&Selector::parse("[id]").expect("css")) {
        let id = element.value().id().unwrap_or_default();
        assert!(ids.insert(id.to_owned()), "twice: {id}");
    }
    let controls = "input:not([type=hidden]), select, textarea";
    for control in page.select(&Selector::parse(controls).expect("css")) {
        let id = control.value().id().expect("a control has an id");
        let label = Selector::parse(&format!("label[for='{id}']")).expect("css");
        assert_eq!(page.select(&label).count(), 1, "label of {id}");
    }
    assert_eq!(page.select(&Selector::parse("[style], style, [onclick], script:not([src])").expect("css")).count(), 0);
    assert!(!page.root_element().text().collect::<String>().contains("Error:"));
}

#[tokio::test]
async fn what_stops_the_paper_stands_first() {
    let (_, html) = read(page::page(sample(typed()))).await;
    let page = Html::parse_document(&html);
    let first = page.select(&Selector::parse(".proofs li").expect("css")).next().expect("a proof");
    assert!(first.text().collect::<String>().contains("out of calibration"));
    assert!(html.contains("3 of 8 met. 5 to go, 1 stops the paper."));
}

/// Writes the sample to the folder named in FUELWRIGHT_PREVIEW, for looking at it in a browser.
#[tokio::test]
async fn the_sample_can_be_looked_at() {
    let (_, html) = read(page::page(sample(typed()))).await;
    assert!(html.contains("css/tokens.css"));
    let Ok(folder) = std::env::var("FUELWRIGHT_PREVIEW") else { return };
    let mut broken = typed();
    broken.set("start_kpa", "1,200");
    broken.number("start_kpa", Unit::Kilopascal, 0.0..=3_000.0);
    broken.set("end_kpa", "2.1 bar");
    broken.number("end_kpa", Unit::Kilopascal, 0.0..=100.0);
    let (_, failed) = read(page::retry(sample(broken))).await;
    for (name, html) in [("job.html", html), ("failed.html", failed)] {
        let mut live = String::new();
        for (place, piece) in html.split("/assets/").enumerate() {
            if place == 0 {
                live.push_str(piece);
            } else {
                live.push_str(concat!(env!("CARGO_MANIFEST_DIR"), "/static/"));
                live.push_str(piece.split_once('/').map_or(piece, |(_, path)| path));
            }
        }
        std::fs::write(std::path::Path::new(&folder).join(name), live).expect("written");
    }
}
