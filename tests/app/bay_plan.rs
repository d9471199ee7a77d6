//! The bay plan, and the arrival that makes a booking a job.

use fuelwright::model::ids::BookingId;

use crate::support::{Browser, TestShop};
use crate::vehicles::PILOT;

async fn bay(open: &TestShop, name: &str) -> String {
    open.shop.add_bay(&open.actor(open.ilse).await, None, name.into()).await.unwrap().to_string()
}

fn booking<'a>(bay: &'a str, from: &'a str, to: &'a str) -> Vec<(&'a str, &'a str)> {
    vec![
        ("name", "Ana Reyes"),
        ("phone", "01632 960 142"),
        ("bay_id", bay),
        ("starts_at", from),
        ("ends_at", to),
        ("job_kind", "conversion"),
    ]
}

/// Where the first booking of the plan of 13 May leads.
async fn first_booking(browser: &Browser) -> String {
    let html = browser.get("/bay-plan?day=2026-05-13").await.html();
    let at = html.find("/bay-plan/bookings/0").expect("a booking");
    html[at..].chars().take_while(|c| *c != '"').collect()
}

#[tokio::test]
async fn the_story_of_a_booking_wrong_explained_kept_mended_saved() {
    let open = TestShop::open().await;
    let (desk, manager) = (open.desk().await, open.manager().await);
    desk.get("/bay-plan").await.is(200).says("The shop has no bay yet");
    manager.post("/bay-plan/bays", &[("name", "")]).await.is(422).says("Nothing is entered here");
    manager.post("/bay-plan/bays", &[("name", "Bay 1")]).await.goes_to();
    manager.post("/bay-plan/bays", &[("name", "Bay 1")]).await.is(422).says("already in use");
    let two = bay(&open, "Bay 2").await;
    let page = desk.post("/bay-plan/bookings", &booking(&two, "2026-05-13T12:00", "2026-05-13T09:00")).await;
    page.is(422).says("The end is before the start");
    assert_eq!(page.field("phone").as_deref(), Some("01632 960 142"));
    assert_eq!(page.field("starts_at").as_deref(), Some("2026-05-13T12:00"));
    desk.post("/bay-plan/bookings", &booking(&two, "soon", "2026-05-13T09:00"))
        .await
        .is(422)
        .says("is not a date and time");
    desk.post("/bay-plan/bookings", &booking(&two, "2026-05-13T09:00", "2026-05-13T12:00")).await.goes_to();
    desk.get("/bay-plan?day=2026-05-13").await.says("09:00–12:00").says("Ana Reyes");
    desk.get("/bay-plan?day=2026-05-13&span=week").await.says("Week of 11").says("Ana Reyes");
    desk.get("/bay-plan?day=2026-05-14").await.hides("Ana Reyes");
}

#[tokio::test]
async fn a_clash_is_said_beside_the_bay_and_only_a_manager_doubles() {
    let open = TestShop::open().await;
    let (desk, manager) = (open.desk().await, open.manager().await);
    let one = bay(&open, "Bay 1").await;
    desk.post("/bay-plan/bookings", &booking(&one, "2026-05-13T09:00", "2026-05-13T12:00")).await.goes_to();
    let mut over = booking(&one, "2026-05-13T11:00", "2026-05-13T13:00");
    desk.post("/bay-plan/bookings", &over)
        .await
        .is(422)
        .says("Ana Reyes holds the bay from")
        .hides("Booked twice because");
    manager.post("/bay-plan/bookings", &over).await.is(422).says("Booked twice because");
    over.push(("doubled_reason", "short look only"));
    desk.post("/bay-plan/bookings", &over).await.is(422).says("Only a manager books a bay twice");
    manager.post("/bay-plan/bookings", &over).await.goes_to();
    manager.get("/bay-plan?day=2026-05-13").await.says("doubled: short look only");
}

#[tokio::test]
async fn a_booking_over_the_hour_left_out_in_spring_is_explained() {
    let open = TestShop::open().await;
    let one = bay(&open, "Bay 1").await;
    let fields = booking(&one, "2026-03-29T01:30", "2026-03-29T05:00");
    open.desk().await.post("/bay-plan/bookings", &fields).await.is(422).says("there was no such time");
}

#[tokio::test]
async fn what_became_of_a_booking_can_be_said_and_taken_back() {
    let open = TestShop::open().await;
    let desk = open.desk().await;
    let one = bay(&open, "Bay 1").await;
    desk.post("/bay-plan/bookings", &booking(&one, "2026-05-13T09:00", "2026-05-13T12:00")).await.goes_to();
    let sheet = first_booking(&desk).await;
    let answer = format!("{sheet}/answer");
    desk.post(&answer, &[("opened_version", "1"), ("state", "did-not-come")]).await.goes_to();
    desk.get(&sheet).await.says("Did not come").says("Expected again");
    desk.post(&answer, &[("opened_version", "1"), ("state", "expected")]).await.is(409);
    desk.post(&answer, &[("opened_version", "2"), ("state", "arrived")]).await.is(409);
    desk.post(&answer, &[("opened_version", "2"), ("state", "gone")]).await.is(422);
    desk.post(&answer, &[("opened_version", "2"), ("state", "expected")]).await.goes_to();
    desk.get(&format!("/bay-plan/bookings/{}", BookingId::new())).await.is(404);
    let mut late = booking(&one, "2026-05-13T10:00", "2026-05-13T12:00");
    late.push(("opened_version", "1"));
    let stale = desk.post(&sheet, &late).await;
    stale.is(409).says("2026-05-13T09:00");
    assert_eq!(stale.field("starts_at").as_deref(), Some("2026-05-13T10:00"));
}

#[tokio::test]
async fn an_arrival_offers_who_it_may_be_and_opens_the_job_once() {
    let open = TestShop::open().await;
    let desk = open.desk().await;
    let one = bay(&open, "Bay 1").await;
    desk.post("/bay-plan/bookings", &booking(&one, "2026-05-12T09:00", "2026-05-12T12:00")).await.goes_to();
    let html = desk.get("/bay-plan?day=2026-05-12").await.html();
    let at = html.find("/bay-plan/bookings/0").unwrap();
    let sheet: String = html[at..].chars().take_while(|c| *c != '"').collect();
    let id = sheet.rsplit('/').next().unwrap();
    let blank = desk.get(&format!("/arrivals/new?booking={id}")).await;
    blank.is(200).says("Booked by Ana Reyes").says("Somebody new");
    assert_eq!(blank.field("phone").as_deref(), Some("01632 960 142"));
    let (key, version) = (blank.field("key").unwrap(), blank.field("opened_version").unwrap());
    let mut fields: Vec<(&str, &str)> = PILOT.to_vec();
    fields.extend([
        ("booking", id),
        ("opened_version", &version),
        ("key", &key),
        ("customer", "new"),
        ("vehicle", "new"),
        ("name", "Ana Reyes"),
        ("phone", "01632 960 142"),
        ("language", "en"),
        ("reminder_basis", "none"),
        ("kind", "conversion"),
        ("system_kind", "vapour-injection"),
        ("bay_id", one.as_str()),
        ("odometer", "128 430"),
        ("reported_faults", "Idles rough"),
    ]);
    // Fuel is missing: everything stays.
    let wrong = desk.post("/arrivals", &fields).await;
    wrong.is(422).says("Nothing is entered here");
    assert_eq!(wrong.field("make").as_deref(), Some("Corvane"));
    fields.push(("fuel", "lpg"));
    let job = desk.post("/arrivals", &fields).await.goes_to();
    assert_eq!(desk.post("/arrivals", &fields).await.goes_to(), job);
    desk.get(&sheet).await.says("Arrived").links_to(&job);
    desk.get("/jobs").await.says("2026-0001").says("NM 47 KTR").links_to(&job);
    // Next time both are offered, by phone and by plate.
    let mut again = booking(&one, "2026-06-13T09:00", "2026-06-13T12:00");
    again.push(("plate", "NM47KTR"));
    desk.post("/bay-plan/bookings", &again).await.goes_to();
    let html = desk.get("/bay-plan?day=2026-06-13").await.html();
    let at = html.find("/bay-plan/bookings/0").unwrap();
    let second: String = html[at..].chars().take_while(|c| *c != '"').collect();
    let id = second.rsplit('/').next().unwrap();
    desk.get(&format!("/arrivals/new?booking={id}")).await.says("Ana Reyes").says("Corvane Pilot 1.6 · Ana Reyes");
}
