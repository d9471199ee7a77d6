//! The audit pack against the told shop, read back by pdftotext: what must be in it, the same ten again, who may.

use std::process::Command;

use axum::http::header;
use fuelwright::db;
use fuelwright::shop::issue::NewIssue;
use time::Duration;

use crate::support::{Page, TestShop};

/// The text of a PDF, by a program that is not ours.
fn text(page: &Page) -> String {
    page.is(200);
    assert_eq!(page.headers[header::CONTENT_TYPE], "application/pdf");
    let room = tempfile::TempDir::new().unwrap();
    let file = room.path().join("pack.pdf");
    std::fs::write(&file, &page.bytes).unwrap();
    if let Ok(folder) = std::env::var("PACK_PAGES") {
        std::fs::write(format!("{folder}/pack.pdf"), &page.bytes).unwrap();
    }
    let output = Command::new("pdftotext").arg("-layout").arg(&file).arg("-").output().unwrap();
    assert!(output.status.success());
    // Cells break over lines and use spaces that do not break: one space says as much.
    String::from_utf8(output.stdout).unwrap().split_whitespace().collect::<Vec<_>>().join(" ")
}

/// A told conversion, its certificate replaced, the second withdrawn; a correction, a late entry, a finding.
async fn lived() -> TestShop {
    let open = TestShop::open().await;
    let told = open.told().await;
    let (vera, jon) = (open.actor(open.vera).await, open.actor(open.jon).await);
    let first = Box::pin(open.shop.issue_certificate(&vera, None, told.job, crate::told::seen())).await.unwrap();
    let new = NewIssue { supersedes: Some((first, "engine number was missing".into())), ..crate::told::seen() };
    let second = Box::pin(open.shop.issue_certificate(&vera, None, told.job, new)).await.unwrap();
    open.shop.withdraw_certificate(&vera, None, second, "wrong vehicle".into()).await.unwrap();
    open.clock.advance(Duration::minutes(30));
    let mut con = open.shop.db.read().await.unwrap();
    let history = db::evidence::list(&mut con, open.branch, told.job).await.unwrap();
    drop(con);
    let arrival = db::evidence::current(&history).into_iter().find(|entry| entry.body.kind() == "arrival").unwrap();
    let corrected = fuelwright::model::evidence::NewEvidence {
        body: arrival.body.clone(),
        measured_at: Some(arrival.measured_at),
        replaces_id: Some(arrival.id),
        replaces_reason: "read again from the photo".into(),
        instruments: Vec::new(),
        attachments: arrival.attachments.clone(),
    };
    open.shop.record_evidence(&jon, None, told.job, corrected).await.unwrap();
    let browser = open.technician().await;
    let here = format!("/jobs/{}/findings", told.job);
    browser.post(&here, &[("text", "clip of the vapour hose missing"), ("source", "measurement")]).await;
    open
}

const PERIOD: &str = "/papers/audit-pack?from=2026-05-01&to=2026-05-12";

#[tokio::test]
async fn the_pack_holds_numbers_instruments_persons_corrections_findings_and_a_picked_job_file() {
    let open = Box::pin(lived()).await;
    let page = open.auditor().await.get(&format!("{PERIOD}&seed=quay")).await;
    let said = text(&page);
    for wanted in [
        "Audit pack",
        "1 May 2026 to 12 May 2026",
        "for Odo Finch",
        // The register with its voids.
        "C-2026-0001 to C-2026-0002, 2, none missing",
        "Superseded by Vera Holm",
        "engine number was missing",
        "Withdrawn by Vera Holm",
        "wrong vehicle",
        "void",
        // Instruments: calibrated from 3 February 2026 to 3 February 2027, checked once.
        "A-2, Gas analyser",
        "K-5531, Northmere Metrology",
        "in calibration throughout",
        "1 passed, 0 failed",
        // Persons and authorisations.
        "Vera Holm (VH)",
        "NM-2031",
        "31 May 2027",
        // What did not go straight.
        "read again from the photo",
        "Entered later than measured",
        "clip of the vapour hose missing",
        "still open",
        // What chance picked.
        "Seed: quay. 1 of 1 job files",
        "Job file 2026-0001",
        "NM 47 KTR",
        "Entries",
    ] {
        assert!(said.contains(wanted), "{wanted:?} is missing from: {said}");
    }
    assert!(!said.contains("Marrow"), "the keeper's name is not in it");
    let mut con = open.shop.db.read().await.unwrap();
    let line = db::audit::list(&mut con, open.branch, None, 1).await.unwrap().remove(0);
    assert_eq!((line.deed.as_str(), line.actor.as_str()), ("audit-pack-drawn", "Odo Finch"));
    assert!(line.body.contains("quay"), "{}", line.body);
}

#[tokio::test]
async fn the_same_seed_over_the_same_store_draws_the_same_bytes_and_no_seed_draws_one_that_is_printed() {
    let open = Box::pin(lived()).await;
    let auditor = open.auditor().await;
    let first = auditor.get(&format!("{PERIOD}&seed=quay")).await;
    let again = auditor.get(&format!("{PERIOD}&seed=quay")).await;
    assert_eq!(first.bytes, again.bytes);
    let drawn = text(&auditor.get(PERIOD).await);
    let seed = drawn.split("Seed: ").nth(1).unwrap().split('.').next().unwrap().to_owned();
    assert!(seed.len() == 10 && seed.bytes().all(|digit| digit.is_ascii_hexdigit()), "{seed}");
    let other = text(&auditor.get(PERIOD).await);
    assert!(!other.contains(&format!("Seed: {seed}.")), "chance draws another seed");
}

#[tokio::test]
async fn days_outside_the_calibration_and_another_period_show() {
    let open = Box::pin(lived()).await;
    let manager = open.manager().await;
    let said = text(&manager.get("/papers/audit-pack?from=2026-02-01&to=2026-03-31&seed=x").await);
    assert!(said.contains("NOT in calibration 1 Feb 2026 to"), "{said}");
    assert!(said.contains("No paper was issued in the period"), "{said}");
    assert!(said.contains("0 of 0 job files"), "{said}");
}

#[tokio::test]
async fn a_period_that_cannot_be_is_explained_beside_its_field_and_only_overseers_come() {
    let open = TestShop::open().await;
    let auditor = open.auditor().await;
    auditor.get("/papers/audit-pack").await.is(200).says("Draw the audit pack");
    let page = auditor.get("/papers/audit-pack?from=2026-05-10&to=2026-05-01&seed=quay").await;
    page.is(422).says("The last day is before the first");
    assert_eq!(page.field("seed").as_deref(), Some("quay"));
    auditor.get("/papers/audit-pack?from=2026-05-10&to=2027-05-01").await.is(422);
    auditor.get("/papers/audit-pack?from=yesterday&to=").await.is(422);
    let long = "x".repeat(41);
    auditor.get(&format!("{PERIOD}&seed={long}")).await.is(422);
    open.technician().await.get(PERIOD).await.is(403);
    open.desk().await.get(PERIOD).await.is(403);
    open.manager().await.get("/papers").await.links_to("/papers/audit-pack");
}

#[tokio::test]
async fn the_register_is_looked_through_by_kind_year_and_standing_and_a_lost_paper_gets_a_second_copy() {
    let open = Box::pin(lived()).await;
    let desk = open.desk().await;
    let (first, second) = ("C-2026-0001", "C-2026-0002");
    for (query, here, not_here) in [
        ("", &[first, second][..], &[][..]),
        ("?kind=conversion&year=2026", &[first, second], &[]),
        ("?kind=removal", &[], &[first, second]),
        ("?year=2025", &[], &[first, second]),
        ("?standing=withdrawn", &[second], &[first]),
        ("?standing=superseded", &[first], &[second]),
        ("?standing=valid", &[], &[first, second]),
        ("?standing=nonsense&year=x&page=-1", &[first, second], &[]),
    ] {
        let page = desk.get(&format!("/papers{query}")).await;
        page.is(200);
        for number in here {
            page.says(number);
        }
        for number in not_here {
            page.hides(number);
        }
    }
    let mut con = open.shop.db.read().await.unwrap();
    let all = db::papers::list_all(&mut con).await.unwrap();
    let paper = format!("/papers/{}", all[0].id);
    let before = desk.get(&format!("{paper}/pdf")).await.bytes.clone();
    desk.post(&format!("{paper}/copies"), &[("copy_reason", "")]).await.is(422).says("For whom, or why");
    let key = uuid::Uuid::now_v7().to_string();
    let lost = [("copy_reason", "lost in the post"), ("key", key.as_str())];
    desk.post(&format!("{paper}/copies"), &lost).await.goes_to();
    desk.post(&format!("{paper}/copies"), &lost).await.goes_to();
    let page = desk.get(&paper).await;
    page.says("Second copy by Mara Lind").says("lost in the post").says("Superseded");
    assert_eq!(page.html().matches("lost in the post").count(), 1, "a double tap notes one copy");
    assert_eq!(desk.get(&format!("{paper}/pdf")).await.bytes, before, "the same bytes");
    open.auditor().await.post(&format!("{paper}/copies"), &lost).await.is(403);
}
