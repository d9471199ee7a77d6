//! Instruments: their state in words, certificates, checks, and the finding that opens by itself.

use fuelwright::db;
use fuelwright::model::instrument::InstrumentKind;
use time::Duration;
use time::macros::{date, datetime};

use crate::support::{Browser, TestShop};

async fn add(browser: &Browser, code: &str, daily: &str) -> String {
    let fields = [("code", code), ("kind", "pressure-gauge"), ("unit", "kPa"), ("resolution", "0.1")];
    browser.post("/instruments", &[&fields[..], &[("needs_daily_check", daily)]].concat()).await.goes_to()
}

async fn calibrate(browser: &Browser, at: &str, on: &str, due: &str) {
    let fields = [("certificate_number", "C-17"), ("laboratory", "Northmere Metrology"), ("calibrated_on", on)];
    let more = [("due_on", due), ("expanded_uncertainty", "0.2"), ("coverage_factor", "2")];
    browser.post(&format!("{at}/certificates"), &[&fields[..], &more].concat()).await.goes_to();
}

#[tokio::test]
async fn the_list_says_how_each_instrument_stands() {
    let open = TestShop::open().await;
    let jon = open.technician().await;
    jon.get("/instruments").await.is(200).says("No instrument is entered yet");
    for (code, due) in [("G-01", "2027-03-14"), ("G-02", "2026-05-24"), ("G-03", "2026-05-03")] {
        let at = add(&jon, code, "no").await;
        calibrate(&jon, &at, "2026-01-10", due).await;
    }
    let daily = add(&jon, "G-04", "yes").await;
    calibrate(&jon, &daily, "2026-01-10", "2027-01-10").await;
    add(&jon, "G-05", "no").await;
    let page = jon.get("/instruments").await;
    page.says("In date until 14 March 2027").says("In date, due in 12 days, 24 May 2026");
    page.says("Out of calibration; the last certificate ended 3 May 2026");
    page.says("In calibration, not checked today").says("No calibration certificate is entered");
    open.auditor().await.get("/instruments").await.is(200).hides("Add an instrument");
}

#[tokio::test]
async fn a_wrong_entry_is_explained_and_kept() {
    let open = TestShop::open().await;
    let jon = open.technician().await;
    let fields = [("code", "G-01"), ("kind", "pressure-gauge"), ("resolution", "1,200"), ("needs_daily_check", "no")];
    let page = jon.post("/instruments", &fields).await;
    page.is(422).says("1200 or as 1.200");
    assert_eq!(page.field("resolution").as_deref(), Some("1,200"));
    let at = add(&jon, "G-01", "no").await;
    let again = [("code", "G-01"), ("kind", "pressure-gauge"), ("needs_daily_check", "no")];
    jon.post("/instruments", &again).await.is(422).says("already in use");
    let dates =
        [("certificate_number", "1"), ("laboratory", "L"), ("calibrated_on", "2026-05-13"), ("due_on", "2026-05-01")];
    jon.post(&format!("{at}/certificates"), &dates).await.is(422).says("in the future");
}

#[tokio::test]
async fn a_failed_check_opens_a_finding_with_the_time_in_doubt() {
    let open = TestShop::open().await;
    let jon = open.technician().await;
    let at = add(&jon, "G-04", "yes").await;
    calibrate(&jon, &at, "2026-01-10", "2027-01-10").await;
    let check = |result: &'static str, when: &'static str, note: &'static str| {
        [("has_passed", result), ("checked_at", when), ("check_note", note)]
    };
    jon.post(&format!("{at}/checks"), &check("passed", "2026-05-12T09:30", "")).await.goes_to();
    jon.get(&at).await.says("In date until").hides("In doubt");
    open.clock.advance(Duration::days(1));
    let jon = open.technician().await;
    jon.post(&format!("{at}/checks"), &check("failed", "2026-05-13T09:30", "")).await.is(422).says("Say what is wrong");
    jon.post(&format!("{at}/checks"), &check("failed", "2026-05-13T09:30", "Zero is 4 kPa off")).await.goes_to();
    let page = jon.get(&at).await;
    page.says("Failed its check today").says("Zero is 4 kPa off");
    page.says("since it was last known to be right, 12 May 2026, 09:30");
    // A check that failed proves nothing for a choice either: it is offered, and said to prove nothing today.
    let mut con = open.shop.db.read().await.unwrap();
    let kinds = [InstrumentKind::PressureGauge];
    let now = open.shop.clock.now();
    let usable = db::instruments::list_usable(&mut con, open.branch, &kinds, date!(2026 - 05 - 13), now).await.unwrap();
    assert_eq!(usable.len(), 1);
    assert!(usable[0].trusted(now, time::OffsetDateTime::date).is_err());
    let later = datetime!(2027-02-01 10:00 UTC);
    let usable = db::instruments::list_usable(&mut con, open.branch, &kinds, later.date(), later).await.unwrap();
    assert!(usable.is_empty(), "out of calibration by then");
}

#[tokio::test]
async fn work_with_an_instrument_out_of_date_opens_one_finding() {
    let open = TestShop::open().await;
    let jon = open.technician().await;
    let at = add(&jon, "G-03", "yes").await;
    calibrate(&jon, &at, "2025-04-01", "2026-04-01").await;
    for when in ["2026-05-12T08:00", "2026-05-12T09:00"] {
        jon.post(&format!("{at}/checks"), &[("has_passed", "passed"), ("checked_at", when)]).await.goes_to();
    }
    let mut con = open.shop.db.read().await.unwrap();
    let found = db::findings::list_open(&mut con, open.branch).await.unwrap();
    assert_eq!(found.len(), 1);
    assert!(found[0].text.contains("G-03") && found[0].text.contains("1\u{a0}April\u{a0}2026"), "{}", found[0].text);
}

#[tokio::test]
async fn two_who_change_it_at_once_both_see_both() {
    let open = TestShop::open().await;
    let (jon, vera) = (open.technician().await, open.signatory().await);
    let at = add(&jon, "G-01", "no").await;
    let with = |maker: &'static str, version: &'static str| {
        [
            ("code", "G-01"),
            ("kind", "pressure-gauge"),
            ("unit", "kPa"),
            ("resolution", "0.1"),
            ("maker", maker),
            ("needs_daily_check", "no"),
            ("opened_version", version),
        ]
    };
    jon.post(&at, &with("Tidewell", "1")).await.goes_to();
    let page = vera.post(&at, &with("Marram", "1")).await;
    page.is(422).says("Somebody saved this instrument").says("Tidewell");
    assert_eq!(page.field("maker").as_deref(), Some("Marram"));
    let version = page.field("opened_version").unwrap();
    assert_eq!(version, "2");
    vera.post(&at, &with("Marram", "2")).await.goes_to();
    vera.get(&at).await.says("Marram");
}

#[tokio::test]
async fn out_of_use_and_back() {
    let open = TestShop::open().await;
    let jon = open.technician().await;
    let at = add(&jon, "G-01", "no").await;
    jon.post(&format!("{at}/retirement"), &[("retired_on", "2026-05-12"), ("opened_version", "1")]).await.goes_to();
    jon.get(&at).await.says("Out of use since 12 May 2026").hides("Enter a check");
    jon.post(&format!("{at}/retirement"), &[("opened_version", "2")]).await.goes_to();
    jon.get(&at).await.hides("Out of use since");
}
