//! The customer's link: one vehicle, one person, for a while; and the one click that ends reminders.

use axum::body::Body;
use axum::http::{Request, header as name};
use fuelwright::db;
use fuelwright::model::customer::ReminderBasis;
use fuelwright::model::duty::DutyKind;
use fuelwright::model::ids::{CustomerId, VehicleId};
use fuelwright::model::message::{MessageKind, MessageState};
use time::Duration;
use time::macros::date;

use crate::owed::{ANA, Keeper, header};
use crate::support::TestShop;

/// A shop whose keeper Ana has a link by mail: the token, and the keeper.
async fn with_link() -> (TestShop, String, CustomerId) {
    let open = TestShop::open().await;
    let ana = open.keeper(&ANA).await;
    let vehicle = open.vehicle_of(ana, "NM 47 KTR").await;
    open.owes(vehicle, DutyKind::Filter, "shop.filter", date!(2026 - 06 - 11)).await;
    let (rounds, memory) = open.rounds();
    rounds.once(true).await.unwrap();
    let stop = header(&memory.sent()[0], "List-Unsubscribe").unwrap();
    let token = stop.trim_end_matches('>').rsplit('/').next().unwrap().to_owned();
    (open, token, ana)
}

async fn basis(open: &TestShop, customer: CustomerId) -> ReminderBasis {
    sqlx::query_scalar("select reminder_basis from customers where id = $1")
        .bind(customer)
        .fetch_one(&mut *open.shop.db.read().await.unwrap())
        .await
        .unwrap()
}

#[tokio::test]
async fn a_link_shows_its_own_vehicle_and_is_kept_by_nobody() {
    let (open, token, _) = with_link().await;
    let bo = open.keeper(&Keeper { name: "Bo Ferris", mail: "bo@example.org", ..ANA }).await;
    open.vehicle_of(bo, "NM 99 ZZZ").await;
    let page = open.stranger().get(&format!("/own/{token}")).await;
    page.is(200).says("NM 47 KTR").says("Filter").says("Ana Reyes").hides("NM 99 ZZZ").hides("ana@example.org");
    assert_eq!(page.headers[name::REFERRER_POLICY], "no-referrer");
    assert_eq!(page.headers["x-robots-tag"], "noindex, nofollow");
    assert_eq!(page.headers[name::CACHE_CONTROL], "no-store");
    // The store holds a hash alone.
    let kept: String = sqlx::query_scalar("select token_sha256 from capability_links")
        .fetch_one(&mut *open.shop.db.read().await.unwrap())
        .await
        .unwrap();
    assert!(kept.len() == 64 && kept != token);
}

#[tokio::test]
async fn wrong_late_and_ended_links_look_alike() {
    let (open, token, ana) = with_link().await;
    let stranger = open.stranger();
    let wrong = stranger.get("/own/AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA").await;
    wrong.is(404);
    let address = format!("/own/{token}");
    stranger.get(&address).await.is(200);
    open.clock.advance(Duration::days(90));
    stranger.get(&address).await.is(200);
    open.clock.advance(Duration::days(1));
    let late = stranger.get(&address).await;
    late.is(404);
    assert_eq!(late.text().replace(char::is_alphanumeric, ""), wrong.text().replace(char::is_alphanumeric, ""));
    stranger.post(&format!("{address}/slot"), &[("wish", "Friday")]).await.is(404);
    stranger.post(&format!("{address}/reminders-off"), &[]).await.is(404);
    assert_eq!(basis(&open, ana).await, ReminderBasis::Consent);
}

#[tokio::test]
async fn a_link_ends_with_the_keeping_of_the_vehicle() {
    let (open, token, _) = with_link().await;
    let mut tx = open.shop.db.write().await.unwrap();
    sqlx::query("update vehicle_people set to_on = '2026-05-12'").execute(&mut *tx).await.unwrap();
    tx.commit().await.unwrap();
    open.clock.advance(Duration::days(1));
    open.stranger().get(&format!("/own/{token}")).await.is(404);
}

#[tokio::test]
async fn opening_a_link_changes_nothing_and_the_button_ends_reminders() {
    let (open, token, ana) = with_link().await;
    let stranger = open.stranger();
    stranger.get(&format!("/unsubscribe/{token}")).await.is(200).says("No more reminders");
    stranger.get(&format!("/own/{token}")).await.is(200);
    assert_eq!(basis(&open, ana).await, ReminderBasis::Consent);
    stranger.post(&format!("/own/{token}/reminders-off"), &[]).await.goes_to();
    assert_eq!(basis(&open, ana).await, ReminderBasis::None);
    stranger.get(&format!("/own/{token}")).await.says("Reminders are off.");
    let (rounds, memory) = open.rounds();
    open.clock.advance(Duration::days(24));
    rounds.once(true).await.unwrap();
    assert!(memory.sent().is_empty());
}

/// As RFC 8058, 3.2 has it: no cookie, no browser, the body names the click.
#[tokio::test]
async fn one_click_of_a_mail_program_ends_reminders_even_late() {
    let (open, token, ana) = with_link().await;
    open.clock.advance(Duration::days(200));
    let click = |token: &str| {
        Request::post(format!("/unsubscribe/{token}"))
            .header(name::CONTENT_TYPE, "application/x-www-form-urlencoded")
            .body(Body::from("List-Unsubscribe=One-Click"))
            .unwrap()
    };
    open.stranger().send(click(&token)).await.is(200);
    assert_eq!(basis(&open, ana).await, ReminderBasis::None);
    open.stranger().send(click(&token)).await.is(200);
    open.stranger().send(click("AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA")).await.is(404);
    // A foreign page in a browser is still turned away.
    let mut foreign = click(&token);
    foreign.headers_mut().insert("sec-fetch-site", "cross-site".parse().unwrap());
    open.stranger().send(foreign).await.is(403);
}

#[tokio::test]
async fn a_wish_for_a_time_reaches_the_shop_and_an_empty_one_is_explained() {
    let (open, token, _) = with_link().await;
    let (stranger, address) = (open.stranger(), format!("/own/{token}/slot"));
    let empty = stranger.post(&address, &[("wish", " "), ("phone", "01632 960177")]).await;
    empty.is(422).says("Nothing is entered here");
    assert_eq!(empty.field("phone").as_deref(), Some("01632 960177"));
    let key = uuid::Uuid::now_v7().to_string();
    for _ in 0..2 {
        let wish = [("wish", "Filter, any Friday"), ("phone", "01632 960177"), ("key", key.as_str())];
        stranger.post(&address, &wish).await.is(200).says("Your wish is with the shop.");
    }
    let asked: Vec<_> = open.messages().await.into_iter().filter(|one| one.kind == MessageKind::SlotAsked).collect();
    assert_eq!(asked.len(), 1, "a double tap asks once");
    assert_eq!((asked[0].recipient.as_str(), asked[0].state), ("shop@example.org", MessageState::Waiting));
    assert!(asked[0].body_text.contains("any Friday") && asked[0].subject.contains("NM 47 KTR"));
}

#[tokio::test]
async fn whoever_guesses_is_stopped() {
    let open = TestShop::open().await;
    let stranger = open.stranger();
    for _ in 0..20 {
        stranger.get("/own/nothing").await.is(404);
    }
    stranger.get("/own/nothing").await.is(429);
    open.clock.advance(Duration::minutes(2));
    stranger.get("/own/nothing").await.is(404);
}

#[tokio::test]
async fn a_link_over_the_counter_is_made_for_somebody_of_that_vehicle_alone() {
    let open = TestShop::open().await;
    let ana = open.keeper(&ANA).await;
    let bo = open.keeper(&Keeper { name: "Bo Ferris", ..ANA }).await;
    let vehicle = open.vehicle_of(ana, "NM 47 KTR").await;
    let desk = open.actor(open.mara).await;
    let token = open.shop.make_link(&desk, ana, vehicle).await.unwrap();
    open.stranger().get(&format!("/own/{}", token.as_text())).await.is(200);
    assert!(open.shop.make_link(&desk, bo, vehicle).await.is_err());
    let mut con = open.shop.db.read().await.unwrap();
    assert_eq!(db::audit::check(&mut con).await.unwrap(), None);
}

#[tokio::test]
async fn a_paper_opens_for_whoever_kept_the_vehicle_when_it_was_issued_and_for_nobody_else() {
    let open = TestShop::open().await;
    let told = open.told().await;
    let vera = open.actor(open.vera).await;
    let paper = open.shop.issue_certificate(&vera, None, told.job, crate::told::seen()).await.unwrap();
    let (vehicle, first): (VehicleId, CustomerId) =
        sqlx::query_as("select j.vehicle_id, j.keeper_id from jobs j where j.id = $1")
            .bind(told.job)
            .fetch_one(&mut *open.shop.db.read().await.unwrap())
            .await
            .unwrap();
    let mara = open.actor(open.mara).await;
    let link = open.shop.make_link(&mara, first, vehicle).await.unwrap();
    let address = format!("/own/{}/papers/{paper}", link.as_text());
    let stranger = open.stranger();
    stranger.get(&format!("/own/{}", link.as_text())).await.is(200).links_to(&address);
    let page = stranger.get(&address).await;
    assert!(page.status.is_success() && page.bytes.starts_with(b"%PDF"));
    // Somebody else's link, with this paper's address.
    let bo = open.keeper(&Keeper { name: "Bo Ferris", ..ANA }).await;
    let other = open.vehicle_of(bo, "NM 99 ZZZ").await;
    let foreign = open.shop.make_link(&mara, bo, other).await.unwrap();
    stranger.get(&format!("/own/{}/papers/{paper}", foreign.as_text())).await.is(404);
    // The buyer sees that there is a paper, and how it stands; not the seller's name on it.
    open.clock.advance(Duration::days(1));
    open.keeps(bo, vehicle, "2026-05-13", None).await;
    let buyer = open.shop.make_link(&mara, bo, vehicle).await.unwrap();
    stranger.get(&format!("/own/{}", buyer.as_text())).await.is(200).says("C-2026-0001").hides("Marrow");
    stranger.get(&format!("/own/{}/papers/{paper}", buyer.as_text())).await.is(404);
}
