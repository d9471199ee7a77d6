//! The least contents of a certificate, item by item: each has its place in the signed content and stands on the paper.
//!
//! Source of the list: `tests/reference/certificate_fields.csv`.

use fuelwright::model::job::{Fuel, JobKind};
use serde_json::Value;

use crate::papers::reading::Paper;
use crate::round::Round;
use crate::support::TestShop;

/// Paper, item, pointer into the content, words on the paper ("=" stands for the value itself).
fn rows() -> Vec<[String; 4]> {
    let text = include_str!("../reference/certificate_fields.csv");
    let lines = text.lines().filter(|line| !line.starts_with('#') && !line.is_empty()).skip(1);
    lines
        .map(|line| {
            let cells: Vec<String> = line.split(';').map(|cell| cell.trim().to_owned()).collect();
            <[String; 4]>::try_from(cells).unwrap_or_else(|cells| panic!("{cells:?}"))
        })
        .collect()
}

fn check(kind: &str, content: &Value, paper: &Paper) -> usize {
    let mut count = 0;
    for [on, item, pointer, words] in rows().into_iter().filter(|row| row[0] == kind) {
        let value = content.pointer(&pointer).unwrap_or_else(|| panic!("{on}, {item}: no {pointer} in {content}"));
        assert!(!value.is_null(), "{on}, {item}: {pointer} is null");
        assert!(value != &Value::String(String::new()), "{on}, {item}: {pointer} is empty");
        assert!(value.as_array().is_none_or(|all| !all.is_empty()), "{on}, {item}: {pointer} holds nothing");
        match words.as_str() {
            "=" => paper.says(value.as_str().unwrap_or_else(|| panic!("{on}, {item}: {pointer} is no text"))),
            words => paper.says(words),
        }
        count += 1;
    }
    count
}

#[tokio::test]
async fn an_inspection_certificate_carries_items_1_to_10_of_annex_ii_and_the_national_ones() {
    let round = Round::open(JobKind::Inspection, Fuel::Lpg).await;
    let job = round.bay.job;
    round.vessel(job, "found", "T-20").await;
    round.all_in_order(job).await;
    round.deficiencies(job, &[["check:line-clips", "6.1.3 d", "major", "clip missing"]], &[]).await.goes_to();
    let (found, paper) = round.issued(job).await;
    let content = serde_json::to_value(&found.content).unwrap();
    assert!(check("inspection", &content, &paper) >= 17);
}

#[tokio::test]
async fn a_conversion_certificate_carries_every_field_asked_for() {
    let open = TestShop::open().await;
    let told = open.told().await;
    let vera = open.actor(open.vera).await;
    let id = open.shop.issue_certificate(&vera, None, told.job, crate::told::seen()).await.unwrap();
    let found = open.shop.find_paper(open.branch, id).await.unwrap().unwrap();
    let paper = Paper::new("conversion-fields", &open.shop.issued_pdf(&found.paper).await.unwrap());
    let content = serde_json::to_value(&found.content).unwrap();
    assert!(check("conversion", &content, &paper) >= 25);
}
