//! The hand-over form: explained, signed on the screen or on paper, what falls due next.

use axum::body::Body;
use axum::http::{Request, header};
use fuelwright::model::evidence::Evidence;
use fuelwright::rules::State;

use crate::job_support::Bay;
use crate::support::{Browser, Page};

/// A small white picture as PNG.
const PNG: &[u8] = include_bytes!("../reference/signature.png");

async fn send(browser: &Browser, path: &str, fields: &[(&str, &str)], signature: Option<(&str, &[u8])>) -> Page {
    let mut body = Vec::new();
    let mut part = |head: String, content: &[u8]| {
        body.extend_from_slice(format!("--edge\r\ncontent-disposition: form-data; {head}\r\n\r\n").as_bytes());
        body.extend_from_slice(content);
        body.extend_from_slice(b"\r\n");
    };
    for (name, text) in fields {
        part(format!("name=\"{name}\""), text.as_bytes());
    }
    if let Some((name, content)) = signature {
        part(format!("name=\"signature\"; filename=\"{name}\"\r\ncontent-type: image/png"), content);
    }
    body.extend_from_slice(b"--edge--\r\n");
    let request = Request::post(path)
        .header(header::CONTENT_TYPE, "multipart/form-data; boundary=edge")
        .header("sec-fetch-site", "same-origin")
        .body(Body::from(body))
        .unwrap();
    browser.send(request).await
}

const TOPICS: [&str; 7] = ["fuel-choice", "filling", "smell", "accident", "parking", "service", "authority-paper"];

fn fields<'a>(topics: &[&'a str], key: &'a str) -> Vec<(&'a str, &'a str)> {
    let fixed = [
        ("manuals_given", "yes"),
        ("consents_to_reminders", "yes"),
        ("received_by", "Ana Marrow"),
        ("received_how", "drawn"),
        ("measured_at", "2026-05-12T10:30"),
        ("key", key),
    ];
    fixed.into_iter().chain(topics.iter().map(|topic| ("topics", *topic))).collect()
}

#[tokio::test]
async fn the_driver_is_instructed_signs_and_both_proofs_are_met() {
    let bay = Bay::lpg().await;
    let (desk, at) = (bay.shop.desk().await, bay.at("hand-over"));
    let form = desk.get(&at).await;
    form.is(200).says("What to do at a smell of gas").says("First check by 12 Jul 2026");
    assert_eq!(form.field("received_by").as_deref(), Some("Ana Marrow"));

    let key = uuid::Uuid::now_v7().to_string();
    let wrong = send(&desk, &at, &fields(&TOPICS, &key), None).await;
    wrong.is(422).says("Nobody has signed yet");
    assert!(wrong.html().contains(r#"value="smell" checked"#), "what was ticked stays");
    let wrong = send(&desk, &at, &fields(&TOPICS, &key), Some(("x.png", b"<svg onload=alert(1)>"))).await;
    wrong.is(422).says("is not of a kind taken here");
    assert_eq!(bay.entries("hand-over").await, 0);

    send(&desk, &at, &fields(&TOPICS, &key), Some(("signature.png", PNG))).await.goes_to();
    send(&desk, &at, &fields(&TOPICS, &key), Some(("signature.png", PNG))).await.goes_to();
    assert_eq!(bay.entries("hand-over").await, 1);
    let file = bay.file().await;
    assert_eq!(file.attachments.iter().filter(|one| one.slot == "signature").count(), 1, "kept once");
    for proof in ["instructed", "received"] {
        assert_eq!(bay.proof(proof).await.state, State::Met, "{proof}");
    }
    desk.get(&bay.at("stages/hand-over")).await.is(200).says("Ana Marrow").says("Signed here");
}

#[tokio::test]
async fn a_topic_left_out_stays_open_and_a_correction_keeps_the_signature() {
    let bay = Bay::lpg().await;
    let (desk, at) = (bay.shop.desk().await, bay.at("hand-over"));
    let key = uuid::Uuid::now_v7().to_string();
    send(&desk, &at, &fields(&TOPICS[..5], &key), Some(("signature.png", PNG))).await.goes_to();
    assert_eq!(bay.proof("instructed").await.state, State::Missing);

    let replaces = desk.get(&at).await.field("replaces_id").unwrap_or_default();
    let key = uuid::Uuid::now_v7().to_string();
    let mut all = fields(&TOPICS, &key);
    all.extend([("replaces_id", replaces.as_str()), ("replaces_reason", "service explained at the car")]);
    send(&desk, &at, &all, None).await.goes_to();
    assert_eq!(bay.proof("instructed").await.state, State::Met);
    assert_eq!(bay.proof("received").await.state, State::Met, "the signature stands");
    let file = bay.file().await;
    let entry = file.entry("hand-over", "").unwrap();
    let Evidence::HandOver(one) = &entry.body else { panic!("{entry:?}") };
    assert_eq!(one.topics.len(), 7);
}

#[tokio::test]
async fn a_forged_topic_is_refused() {
    let bay = Bay::lpg().await;
    let (desk, at) = (bay.shop.desk().await, bay.at("hand-over"));
    let key = uuid::Uuid::now_v7().to_string();
    let page = send(&desk, &at, &fields(&["smell", "racing"], &key), Some(("signature.png", PNG))).await;
    page.is(422).says("Choose one of the answers");
    assert_eq!(bay.entries("hand-over").await, 0);
}
