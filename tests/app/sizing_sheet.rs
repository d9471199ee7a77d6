//! The sizing sheet as a reader holds it: poppler reads its text, and a pocket calculator redoes every step from what is
//! printed.

use fuelwright::model::evidence::Evidence;

use crate::calculator::Calculator;
use crate::gas_side::{blown, nozzle};
use crate::job_support::Bay;
use crate::papers::reading::Paper;
use crate::sizing::changed;
use crate::support::{Browser, TestShop};

async fn sheet(who: &Browser, job: impl std::fmt::Display, name: &str) -> Paper {
    let answer = who.get(&format!("/jobs/{job}/papers/sizing-sheet")).await;
    assert_eq!(answer.status.as_u16(), 200);
    Paper::new(name, &answer.bytes)
}

/// A text without the spaces that group the digits of a number.
fn ungrouped(text: &str) -> String {
    let chars: Vec<char> = text.chars().collect();
    let is_digit = |at: Option<usize>| at.and_then(|at| chars.get(at)).is_some_and(char::is_ascii_digit);
    let kept = chars
        .iter()
        .enumerate()
        .filter(|(at, c)| !(c.is_whitespace() && is_digit(at.checked_sub(1)) && is_digit(Some(at + 1))));
    kept.map(|(_, c)| if *c == '\u{2212}' { '-' } else { *c }).collect()
}

/// The number at the head of a text.
fn printed(text: &str) -> f64 {
    let number: String = ungrouped(text).chars().take_while(|c| c.is_ascii_digit() || matches!(c, '.' | '-')).collect();
    number.parse().unwrap_or_else(|_| panic!("no number in {text:?}"))
}

/// Half of the fifth figure of a number: as far as it may have been rounded, noughts at its end being dropped.
fn half_a_figure(number: f64) -> f64 {
    0.5 * 10f64.powf(number.abs().max(1e-12).log10().floor() - 4.0)
}

/// The lines "= numbers put in = result", joined where the page broke them.
fn expressions(paper: &Paper) -> Vec<(String, String)> {
    let lines: Vec<&str> = paper.text().lines().map(str::trim).collect();
    let mut found = Vec::new();
    for (at, line) in lines.iter().enumerate() {
        let Some(rest) = line.strip_prefix("= ") else { continue };
        let mut whole = rest.to_owned();
        let mut next = at + 1;
        while !whole.contains(" = ") {
            whole = format!("{whole} {}", lines.get(next).unwrap_or_else(|| panic!("no end of {whole:?}")));
            next += 1;
        }
        let (expression, mut result) = whole.split_once(" = ").map(|(a, b)| (a.to_owned(), b.to_owned())).unwrap();
        // A result that stands on a line of its own.
        if result.trim().is_empty() {
            lines[next].clone_into(&mut result);
        }
        found.push((expression, result));
    }
    found
}

/// An expression cut into its numbers and what stands between them.
fn tokens(expression: &str) -> Vec<String> {
    let mut tokens: Vec<String> = Vec::new();
    for c in expression.chars() {
        let is_of_number = c.is_ascii_digit() || c == '.';
        match tokens.last_mut() {
            Some(last) if last.ends_with(|d: char| d.is_ascii_digit() || d == '.') == is_of_number => last.push(c),
            _ => tokens.push(c.to_string()),
        }
    }
    tokens
}

/// How far rounding of the numbers in an expression can move its value. A number that stands in several places is one
/// rounding; a whole number of few figures belongs to the formula, or was typed.
fn room(expression: &str, value: f64) -> f64 {
    let tokens = tokens(expression);
    let mut numbers: Vec<&String> = tokens.iter().filter(|token| token.contains('.') || token.len() >= 5).collect();
    numbers.retain(|token| token.parse::<f64>().is_ok());
    numbers.sort();
    numbers.dedup();
    let moved_by = |number: &&String| {
        let at: f64 = number.parse().unwrap();
        let moved = format!("{:.12}", at + half_a_figure(at));
        let all = tokens.iter().map(|token| if token == *number { moved.as_str() } else { token.as_str() });
        (Calculator::value_of(&all.collect::<String>()) - value).abs()
    };
    numbers.iter().map(moved_by).sum()
}

/// Redoes every step of the sheet within its printed digits; how many there were.
fn redo(paper: &Paper) -> usize {
    let all = expressions(paper);
    for (expression, result) in &all {
        let expression = ungrouped(expression);
        let (value, shown) = (Calculator::value_of(&expression), printed(result));
        let room = room(&expression, value);
        let within = 1.05 * room + half_a_figure(shown);
        assert!((value - shown).abs() <= within, "{expression} is {value}, printed {result}, within {within}");
        assert!(room <= 1e-3 * value.abs(), "{expression} leaves {room} open");
    }
    all.len()
}

#[tokio::test]
async fn the_sheet_of_a_told_job_is_redone_from_its_printed_text() {
    let open = TestShop::open().await;
    let told = open.told().await;
    let technician = open.technician().await;
    let paper = sheet(&technician, told.job, "sizing-sheet").await;
    paper.is_sound();
    assert!(redo(&paper) >= 45, "{}", redo(&paper));

    // Every sum of the stage: verdict, inputs with origin, source, uncertainty, version.
    for said in [
        "Sizing sheet",
        "2026-0001-S",
        "Nozzle",
        "Fits: 2.60 mm",
        "Heat",
        "Its maker tells an engine of 140 kW",
        "Hoses and lines",
        "Wide enough",
        "Container",
        "The rear axle carries it",
        "From the vehicle’s file",
        "Common practice",
        "From the nozzle sheet",
        "GERG-2008",
        "± ",
        "One input changed at a time",
        "Duty of 2.60 mm over engine speed",
        "Jon Aspen",
        "Results rest on the inputs shown",
        "This sheet is not signed",
        concat!("Computed by version ", env!("CARGO_PKG_VERSION")),
    ] {
        paper.says(said);
    }
    let pages = paper.page_count();
    for page in 1..=pages {
        assert!(paper.text_of_page(page).contains(&format!("Page {page} of {pages}")), "{}", paper.text_of_page(page));
    }
    // The picture says in words what it shows.
    assert!(paper.structure().contains("Figure"));
    paper.does_not_say("**");
    technician
        .get(&format!("/jobs/{}/stages/sizing", told.job))
        .await
        .links_to(&format!("/jobs/{}/papers/sizing-sheet", told.job));
}

#[tokio::test]
async fn the_same_job_gives_the_same_bytes_and_a_correction_is_named() {
    let bay = Bay::lpg().await;
    let jon = bay.shop.technician().await;
    let at = bay.at("papers/sizing-sheet");
    jon.get(&at).await.is(404);
    jon.get(&bay.at("papers")).await.is(200);
    jon.post(&bay.at("nozzle-sizing"), &nozzle()).await.goes_to();
    let (one, other) = (jon.get(&at).await, jon.get(&at).await);
    assert_eq!(one.bytes, other.bytes);

    let first = bay.file().await.entry("nozzle-sizing", "").unwrap().id.to_string();
    let mended = [("sets[0][sizes_mm]", "1.6 1.8"), ("replaces_id", &*first), ("replaces_reason", "other rail")];
    jon.post(&bay.at("nozzle-sizing"), &changed(nozzle(), &mended)).await.goes_to();
    let paper = sheet(&jon, bay.job, "sizing-sheet-corrected").await;
    paper.says("Corrected: other rail");
    paper.says("✕ Too small");
    paper.says("lean above");
    assert!(redo(&paper) >= 12);
}

#[tokio::test]
async fn petrol_data_boost_and_a_measured_coefficient_are_redone_on_paper_too() {
    let bay = Bay::lpg().await;
    let jon = bay.shop.technician().await;
    jon.post(&bay.at("discharge"), &blown()).await.goes_to();
    let petrol = [
        ("from", "petrol"),
        ("petrol", "e5"),
        ("static_flow_g_min", "200"),
        ("rated_pulse_ms", "14.0"),
        ("petrol_dead_time_ms", "0.9"),
        ("petrol_lambda", "0.88"),
        ("gas_lambda", "0.88"),
        ("idle_pulse_ms", "3.1"),
        ("displaced", "yes"),
        ("manifold_kpa", "190"),
        ("sets[0][sizes_mm]", "1.6 1.8 2.0 2.2"),
    ];
    jon.post(&bay.at("nozzle-sizing"), &changed(nozzle(), &petrol)).await.goes_to();
    let paper = sheet(&jon, bay.job, "sizing-sheet-petrol").await;
    paper.is_sound();
    paper.says("Gas time over petrol time, rated");
    paper.says("not choked at rated power");
    paper.says("Discharge coefficient, measured");
    assert!(redo(&paper) >= 22);
    let file = bay.file().await;
    assert!(matches!(file.entry("discharge", "").unwrap().body, Evidence::Discharge(_)));
}
