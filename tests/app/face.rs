//! The face: pieces of the kit as a browser gets them, on an invented job file.

use askama::Template;
use axum::body::to_bytes;
use axum::http::StatusCode;
use fuelwright::unit::Unit;
use fuelwright::web::form::{Form, Typed, Wrong};
use fuelwright::web::kit::{
    self, Act, Cell, Choice, Column, Empty, JobSheet, LifeEntry, LifeLine, LifeYear, Mark, Pages, Proof, ProofList,
    Rail, Stop, StopState, Table, Tone, Verdict,
};
use fuelwright::web::page::{self, Frame, PersonBadge, Place};
use fuelwright::words::Words;
use scraper::{Html, Selector};

#[derive(Template)]
#[template(
    ext = "html",
    source = r#"{% extends "job/sheet.html" %}
{% block stage %}
{{ kit::summary(form, frame.w) }}
<h2>Leak test, vapour side</h2>
<p class="lead">Pressure decay with nitrogen from the vaporiser to the injectors. The shop’s limit is 20 cm³/h; UN texts give none for a vehicle.</p>
<form method="post" action="/jobs/1/leak-tests" data-keep>
{{ kit::key(form) }}{{ kit::version(form) }}
<fieldset class="group"><legend>Start, 10:42</legend><div class="fields">
{{ kit::number(form, frame.w, "start_kpa").called("Pressure, gauge") }}
{{ kit::number(form, frame.w, "start_c").called("Gas temperature") }}
{{ kit::number(form, frame.w, "volume_l").called("Volume of the section") }}
</div></fieldset>
<fieldset class="group"><legend>Now, 10:52</legend><div class="fields">
{{ kit::number(form, frame.w, "end_kpa").called("Pressure, gauge") }}
{{ kit::number(form, frame.w, "end_c").called("Gas temperature") }}
{{ kit::choice(form, frame.w, "gauge", gauges).called("Gauge") }}
</div></fieldset>
{{ verdict }}
<div class="acts"><button class="main">Keep testing</button><button name="then" value="record">Record as it is</button><a class="act" href="/bench">Prove by foam instead</a></div>
</form>
{% endblock %}"#
)]
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
        estimate: Some((Mark::Met, "Estimate: EUR 1 480.00, agreed by phone".into(), "/jobs/1/estimate".into())),
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
            person: Some(PersonBadge {
                name: "R. Tolland".into(),
                sign_in_name: "tolland".into(),
                role: "technician".into(),
                is_signatory: true,
            }),
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

fn check_page(html: &str) {
    assert!(!html.contains('⟦'), "a key without words");
    let page = Html::parse_document(html);
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
}

#[tokio::test]
async fn a_page_has_no_double_id_no_input_without_label_and_nothing_inline() {
    let (status, html) = read(page::page(sample(typed()))).await;
    assert_eq!(status, StatusCode::OK);
    check_page(&html);
    let page = Html::parse_document(&html);
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

#[derive(Template)]
#[template(
    ext = "html",
    source = r#"{% extends "layout.html" %}
{% block title %}Everything{% endblock %}
{% block content %}
<div class="leaf plain">
<div class="page-head"><h1>Everything the kit has</h1><span class="timer" data-timer data-started="2026-11-25T10:42:00Z" data-now="2026-11-25T10:52:07Z" data-minutes="24">10:07</span></div>
{{ kit::summary(form, frame.w) }}
<form method="post" action="/all" enctype="multipart/form-data" data-keep data-sums="/sums">
<div class="fields">
{{ kit::text(form, frame.w, "name").autocomplete("name") }}
{{ kit::code(form, frame.w, "vin").called("VIN").hinted("Seventeen letters and digits").offering(known) }}
{{ kit::mail(form, frame.w, "mail").called("Mail").optional() }}
{{ kit::secret(form, frame.w, "secret").called("Passphrase") }}
{{ kit::date(form, frame.w, "made_on").called("Made on") }}
{{ kit::date(form, frame.w, "bad_on").called("Due on") }}
{{ kit::moment(form, frame.w, "measured_at").called("Measured at") }}
{{ kit::number(form, frame.w, "price").called("Price").counted_in("EUR") }}
{{ kit::number(form, frame.w, "boost").called("Boost").unit(Unit::Bar) }}
{{ kit::area(form, frame.w, "note") }}
{{ kit::radios(form, frame.w, "method", answers).called("Method") }}
{{ kit::pick(form, frame.w, "clip", answers).called("Hose clips") }}
{{ kit::yes_no(form, frame.w, "port").called("Hose ports downward") }}
{{ kit::ticks(form, frame.w, "topics", answers).called("Driver told about") }}
{{ kit::tick(form, frame.w, "agree").called("Agreed before work") }}
{{ kit::file(form, frame.w, "photo", "image/*").called("Photographs").many() }}
{{ kit::file(form, frame.w, "signature", "image/png,image/jpeg").called("Signature").drawn() }}
{% for row in form.rows_shown("parts", 2, 1) %}{{ kit::code(form, frame.w, row.name("serial")).called("Serial") }}{% endfor %}
</div>
<div class="sums" data-sums-into></div>
<div class="acts"><button class="main">Save</button><button class="stop">Withdraw</button></div>
</form>
{{ table }}{{ pages }}{{ empty }}{{ life }}
<p>{% for one in marks %}{{ kit::said(frame.w, one) }} · {% endfor %}</p>
</div>
{% endblock %}"#
)]
struct Everything {
    frame: Frame,
    form: Form,
    known: Vec<String>,
    answers: Vec<Choice>,
    table: Table,
    pages: Pages,
    empty: Empty,
    life: LifeLine,
    marks: Vec<Mark>,
}

fn everything() -> Everything {
    let w = Words::default();
    let entry = |day: &str, mark, title: &str, note: &str| LifeEntry {
        day: day.into(),
        mark,
        title: title.into(),
        href: Some("/jobs/1".into()),
        note: note.into(),
    };
    let mut form = Form::from(Typed::from_pairs([
        ("name", "Ilse Marrow"),
        ("vin", "WCV1234567K018233"),
        ("secret", "not shown again"),
        ("made_on", "2026-03-14"),
        ("bad_on", "31.02.26"),
        ("measured_at", "2026-11-25T10:42"),
        ("note", "\n two lines\n of <b>text</b>"),
        ("method", "foam"),
        ("topics", "foam"),
        ("topics", "decay"),
        ("agree", "yes"),
        ("parts[4][serial]", "A-4"),
    ]));
    form.date("bad_on");
    form.choice::<u8>("method");
    Everything {
        frame: sample(Form::blank()).frame,
        form,
        known: vec!["WCV1234567K018233".into()],
        answers: vec![
            Choice::new("foam", "Foam"),
            Choice::new("decay", "Pressure decay"),
            Choice::new("det", "Detector"),
        ],
        table: Table {
            w,
            caption: "Instruments".into(),
            columns: vec![Column::text("Instrument"), Column::text("Calibrated until"), Column::number("Reads, kPa")],
            rows: vec![
                vec![
                    Cell::link("G-03", "/instruments/3"),
                    Cell::new("14 March 2027").marked(Mark::Met),
                    Cell::new("0.1"),
                ],
                vec![
                    Cell::link("A-1", "/instruments/1"),
                    Cell::new("3 November 2026").marked(Mark::Stops).with_second("out of calibration"),
                    Cell::new(""),
                ],
            ],
        },
        pages: Pages { w, previous: Some("?before=1".into()), next: Some("?after=2".into()) },
        empty: Empty {
            sentence: "No vehicle in the shop.".into(),
            act: Some(Act { label: "Take one in".into(), href: "/jobs/new".into() }),
        },
        life: LifeLine {
            w,
            years: vec![
                LifeYear { year: 2025, entries: vec![entry("4 Feb", Mark::Met, "Conversion 2025-0011", "98 200 km")] },
                LifeYear { year: 2026, entries: vec![entry("25 Nov", Mark::Undecided, "Inspection 2026-0147", "")] },
            ],
            ahead: vec![entry("14 Mar", Mark::Missing, "Container in date until then", "")],
        },
        marks: vec![
            Mark::Met,
            Mark::Missing,
            Mark::Undecided,
            Mark::Stops,
            Mark::Waived,
            Mark::NotApplicable,
            Mark::EnteredLater,
            Mark::OnTablet,
        ],
    }
}

#[tokio::test]
async fn every_piece_of_the_kit_is_whole_and_keeps_what_was_typed() {
    let (_, html) = read(page::retry(everything())).await;
    check_page(&html);
    assert!(!html.contains("not shown again"), "a secret never comes back");
    assert!(!html.contains("<b>text</b>"));
    let page = Html::parse_document(&html);
    let css = |css: &str| Selector::parse(css).expect("css");
    let attr = |of: &str, name: &str| {
        let found = page.select(&css(of)).next().unwrap_or_else(|| panic!("no {of}"));
        found.value().attr(name).map(str::to_owned)
    };
    assert_eq!(attr("#made_on", "type").as_deref(), Some("date"));
    assert_eq!(attr("#bad_on", "type").as_deref(), Some("text"), "a date field would drop a text that is no date");
    assert_eq!(attr("#bad_on", "value").as_deref(), Some("31.02.26"));
    assert_eq!(attr("#measured_at", "type").as_deref(), Some("datetime-local"));
    assert_eq!(attr("#parts-4-serial", "name").as_deref(), Some("parts[4][serial]"));
    assert_eq!(attr("#method", "value").as_deref(), Some("foam"));
    assert_eq!(page.select(&css("input[checked]")).count(), 4);
    assert_eq!(
        page.select(&css("textarea")).next().expect("one").text().collect::<String>(),
        "\n two lines\n of <b>text</b>"
    );
    for link in page.select(&css(".summary a")) {
        let target = link.value().attr("href").unwrap_or_default().trim_start_matches('#').to_owned();
        assert_eq!(page.select(&css(&format!("[id='{target}']"))).count(), 1, "{target}");
    }
    assert_eq!(page.select(&css(".summary a")).count(), 2);
    for described in page.select(&css("[aria-describedby]")) {
        for id in described.value().attr("aria-describedby").unwrap_or_default().split(' ') {
            assert_eq!(page.select(&css(&format!("[id='{id}']"))).count(), 1, "{id}");
        }
    }
}

/// The colours of tokens.css: light, then dark over light.
fn colours() -> [std::collections::BTreeMap<String, [f64; 3]>; 2] {
    let text = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/static/css/tokens.css")).expect("tokens");
    let (light, dark) = text.split_once("prefers-color-scheme: dark").expect("both schemes");
    let read = |part: &str, into: &mut std::collections::BTreeMap<String, [f64; 3]>| {
        for line in part.lines() {
            let Some((name, value)) = line.trim().trim_end_matches(';').split_once(": #") else { continue };
            let channel = |at: usize| f64::from(u8::from_str_radix(&value[at..at + 2], 16).expect("hex")) / 255.0;
            into.insert(name.trim_start_matches("--").to_owned(), [channel(0), channel(2), channel(4)]);
        }
    };
    let mut light_colours = std::collections::BTreeMap::new();
    read(light, &mut light_colours);
    let mut dark_colours = light_colours.clone();
    read(dark, &mut dark_colours);
    [light_colours, dark_colours]
}

/// WCAG 2.2, definitions of relative luminance and contrast ratio.
fn contrast(one: [f64; 3], other: [f64; 3]) -> f64 {
    let luminance = |colour: [f64; 3]| {
        let linear = colour.map(|c| if c <= 0.040_45 { c / 12.92 } else { ((c + 0.055) / 1.055).powf(2.4) });
        0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]
    };
    let (a, b) = (luminance(one), luminance(other));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

#[test]
fn every_colour_can_be_read_on_every_ground_it_may_stand_on() {
    assert!((contrast([0.0; 3], [1.0; 3]) - 21.0).abs() < 1e-9, "black on white, as the definition says");
    let leaves = ["desk", "sheet", "leaf"];
    let washes = ["copper-wash", "met-wash", "stop-wash"];
    let everywhere: Vec<&str> = leaves.iter().chain(&washes).copied().collect();
    let pairs: [(&str, Vec<&str>, f64); 11] = [
        ("ink", everywhere.clone(), 4.5),
        ("soft", everywhere, 4.5),
        ("copper", vec!["desk", "sheet", "leaf", "copper-wash"], 4.5),
        ("met", vec!["sheet", "leaf", "met-wash"], 4.5),
        ("stop", vec!["sheet", "leaf", "stop-wash"], 4.5),
        ("link", vec!["desk", "sheet", "leaf"], 4.5),
        ("on-ink", vec!["ink"], 4.5),
        ("bar-text", vec!["bar"], 4.5),
        ("bar-soft", vec!["bar"], 4.5),
        ("edge", vec!["sheet", "leaf"], 3.0),
        ("marker", vec!["bar"], 3.0),
    ];
    for (scheme, colours) in ["light", "dark"].iter().zip(colours()) {
        for (text, grounds, least) in &pairs {
            for ground in grounds {
                let got = contrast(colours[*text], colours[*ground]);
                assert!(got >= *least, "{scheme}: {text} on {ground} has {got:.2}, needs {least}");
            }
        }
    }
}

#[test]
fn sheets_and_scripts_stay_light() {
    let weight = |folder: &str| {
        let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("static").join(folder);
        std::fs::read_dir(path)
            .expect("folder")
            .map(|file| file.expect("file").metadata().expect("size").len())
            .sum::<u64>()
    };
    let (css, js) = (weight("css"), weight("js"));
    assert!(css < 37_000 && js < 25_000, "before compression: css {css}, js {js}");
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
    let (_, all) = read(page::retry(everything())).await;
    for (name, html) in [("job.html", html), ("failed.html", failed), ("all.html", all)] {
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
