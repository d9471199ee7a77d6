//! What goes out by itself: the right days, once each whatever stands still or crashes, at working hours, by mail or post.

use fuelwright::clock::Zone;
use fuelwright::db;
use fuelwright::model::duty::{ClosedHow, DutyKind};
use fuelwright::model::ids::DutyId;
use fuelwright::model::message::{Delivery, MessageState};
use fuelwright::shop::duties::Closing;
use fuelwright::shop::outbox::is_working_time;
use time::macros::{date, datetime};
use time::{Date, Duration};

use crate::owed::{ANA, Keeper, header};
use crate::support::TestShop;

async fn told(open: &TestShop) -> Vec<(DutyId, i64)> {
    let mut con = open.shop.db.read().await.unwrap();
    let told = db::outbox::told(&mut con, open.branch).await.unwrap();
    told.into_iter().map(|told| (told.duty_id, told.lead_days)).collect()
}

#[tokio::test]
async fn one_duty_is_told_60_30_7_days_before_and_14_after() {
    let open = TestShop::open().await;
    let ana = open.keeper(&ANA).await;
    let vehicle = open.vehicle_of(ana, "NM 47 KTR").await;
    let due = date!(2026 - 10 - 07);
    open.owes(vehicle, DutyKind::Filter, "shop.filter", due).await;
    let (rounds, memory) = open.rounds();
    while open.clock.now() < datetime!(2026-12-31 09:00 UTC) {
        // Twice a day: an hourly round that comes again writes nothing more.
        rounds.once(true).await.unwrap();
        rounds.once(true).await.unwrap();
        open.clock.advance(Duration::days(1));
    }
    let days: Vec<i64> = open.messages().await.iter().map(|one| (due - one.made_at.date()).whole_days()).collect();
    assert_eq!(days, [60, 30, 7, -14]);
    assert!(open.messages().await.iter().all(|one| one.state == MessageState::Sent));
    assert_eq!(memory.sent().len(), 4);
    assert!(memory.sent()[0].contains("ana@example.org") && header(&memory.sent()[0], "Subject").is_some());
}

#[tokio::test]
async fn after_two_months_switched_off_only_the_latest_lead_time_goes_out() {
    let open = TestShop::open().await;
    let vehicle = open.vehicle_of(open.keeper(&ANA).await, "NM 47 KTR").await;
    let id = open.owes(vehicle, DutyKind::Container, "shop.container", date!(2026 - 07 - 20)).await;
    open.until(datetime!(2026-07-15 09:00 UTC));
    let (rounds, memory) = open.rounds();
    rounds.once(true).await.unwrap();
    assert_eq!(told(&open).await, [(id, 7)]);
    assert_eq!(memory.sent().len(), 1);
}

#[tokio::test]
async fn what_falls_due_within_a_month_shares_a_message_and_is_not_told_again() {
    let open = TestShop::open().await;
    let ana = open.keeper(&ANA).await;
    let car = open.vehicle_of(ana, "NM 47 KTR").await;
    let van = open.vehicle_of(ana, "NM 12 VAN").await;
    // 60 days from 13 May are 12 July.
    let first = open.owes(car, DutyKind::Filter, "shop.filter", date!(2026 - 07 - 12)).await;
    let second = open.owes(van, DutyKind::Inspection, "shop.inspection", date!(2026 - 08 - 05)).await;
    let far = open.owes(van, DutyKind::Container, "shop.container", date!(2026 - 10 - 01)).await;
    let (rounds, memory) = open.rounds();
    open.clock.advance(Duration::days(1));
    rounds.once(true).await.unwrap();
    let mut now = told(&open).await;
    now.sort_unstable();
    let mut expected = vec![(first, 60), (second, 60)];
    expected.sort_unstable();
    assert_eq!(now, expected);
    assert_eq!(memory.sent().len(), 1);
    let text = &open.messages().await[0].body_text;
    assert!(text.contains("NM 47 KTR") && text.contains("NM 12 VAN"), "{text}");
    // The 60th day before 5 August is 6 June: told already.
    open.until(datetime!(2026-06-08 09:00 UTC));
    rounds.once(true).await.unwrap();
    assert_eq!(memory.sent().len(), 1);
    assert!(!told(&open).await.iter().any(|(id, _)| *id == far));
}

#[tokio::test]
async fn without_ground_nothing_goes_and_without_mail_a_letter() {
    let open = TestShop::open().await;
    let silent = open.keeper(&Keeper { basis: "none", ..ANA }).await;
    let by_post = open.keeper(&Keeper { name: "Bo Ferris", mail: "", ..ANA }).await;
    let unreachable = open.keeper(&Keeper { name: "Cy Holt", mail: "", address: "", ..ANA }).await;
    for (keeper, plate) in [(silent, "A 1"), (by_post, "B 2"), (unreachable, "C 3")] {
        let vehicle = open.vehicle_of(keeper, plate).await;
        open.owes(vehicle, DutyKind::Filter, "shop.filter", date!(2026 - 06 - 11)).await;
    }
    let (rounds, memory) = open.rounds();
    rounds.once(true).await.unwrap();
    let messages = open.messages().await;
    assert_eq!(messages.len(), 1);
    assert_eq!((messages[0].state, messages[0].customer_id), (MessageState::Letter, Some(by_post)));
    assert!(!messages[0].body_text.contains("{{"), "a letter carries no link: {}", messages[0].body_text);
    assert!(memory.sent().is_empty());
}

#[tokio::test]
async fn whoever_keeps_the_vehicle_on_that_day_is_told() {
    let open = TestShop::open().await;
    let ana = open.keeper(&ANA).await;
    let bo = open.keeper(&Keeper { name: "Bo Ferris", mail: "bo@example.org", ..ANA }).await;
    let vehicle = open.vehicle_of(ana, "NM 47 KTR").await;
    open.owes(vehicle, DutyKind::Filter, "shop.filter", date!(2026 - 06 - 11)).await;
    let (rounds, memory) = open.rounds();
    // Sold on a Sunday; the reminder of Saturday, written for Ana, is not sent on Monday to somebody who sold it.
    open.until(datetime!(2026-05-16 09:00 UTC));
    rounds.once(true).await.unwrap();
    assert_eq!(open.messages().await.len(), 1);
    let mut tx = open.shop.db.write().await.unwrap();
    sqlx::query("update vehicle_people set to_on = '2026-05-17'").execute(&mut *tx).await.unwrap();
    tx.commit().await.unwrap();
    open.keeps(bo, vehicle, "2026-05-18", None).await;
    open.until(datetime!(2026-05-18 09:00 UTC));
    rounds.once(true).await.unwrap();
    let states: Vec<_> = open.messages().await.iter().map(|one| (one.customer_id, one.state)).collect();
    assert_eq!(states, [(Some(ana), MessageState::Dropped), (Some(bo), MessageState::Sent)]);
    assert_eq!(memory.sent().len(), 1);
}

#[tokio::test]
async fn reminders_wait_for_working_hours() {
    let open = TestShop::open().await;
    let vehicle = open.vehicle_of(open.keeper(&ANA).await, "NM 47 KTR").await;
    open.owes(vehicle, DutyKind::Filter, "shop.filter", date!(2026 - 06 - 11)).await;
    let (rounds, memory) = open.rounds();
    open.until(datetime!(2026-05-15 22:00 UTC)); // Friday night
    rounds.once(true).await.unwrap();
    open.until(datetime!(2026-05-17 12:00 UTC)); // Sunday
    rounds.once(true).await.unwrap();
    assert!(memory.sent().is_empty());
    open.until(datetime!(2026-05-18 08:30 UTC)); // Monday, half past nine in London
    rounds.once(false).await.unwrap();
    assert_eq!(memory.sent().len(), 1);
}

#[tokio::test]
async fn a_run_far_above_the_usual_waits_for_the_manager() {
    let open = TestShop::open().await;
    for number in 0..25 {
        let mail = format!("keeper{number}@example.org");
        let keeper = open.keeper(&Keeper { name: "Ana Reyes", mail: &mail, ..ANA }).await;
        let vehicle = open.vehicle_of(keeper, &format!("NM {number}")).await;
        open.owes(vehicle, DutyKind::Filter, "shop.filter", date!(2026 - 06 - 11)).await;
    }
    let (rounds, memory) = open.rounds();
    rounds.once(true).await.unwrap();
    assert!(memory.sent().is_empty());
    let desk = open.desk().await;
    desk.get("/outbox?state=held").await.is(200).says("25 messages of a large run wait").hides("Let the run go");
    desk.post("/outbox/held-run", &[]).await.is(403);
    open.manager().await.post("/outbox/held-run", &[]).await.goes_to();
    rounds.once(false).await.unwrap();
    assert_eq!(memory.sent().len(), 25);
}

#[tokio::test]
async fn a_worker_that_died_loses_nothing_and_the_copy_carries_the_same_id() {
    let open = TestShop::open().await;
    let vehicle = open.vehicle_of(open.keeper(&ANA).await, "NM 47 KTR").await;
    open.owes(vehicle, DutyKind::Filter, "shop.filter", date!(2026 - 06 - 11)).await;
    let (rounds, memory) = open.rounds();
    let branch = db::branches::list(&mut open.shop.db.read().await.unwrap()).await.unwrap().remove(0);
    fuelwright::rounds::remind::remind(&open.shop, &branch, true, false).await.unwrap();
    // Claimed, sent, and dead before it was written down.
    let claimed = open.shop.claim_message(open.branch, true, None).await.unwrap().unwrap();
    let post = rounds.post.clone().unwrap();
    assert_eq!(post.send(&claimed.message, "Saltmarsh", "shop@example.org", None).await, Delivery::Sent);
    rounds.once(true).await.unwrap();
    assert_eq!(memory.sent().len(), 1, "the lease holds");
    open.clock.advance(Duration::minutes(11));
    rounds.once(true).await.unwrap();
    rounds.once(true).await.unwrap();
    assert_eq!(memory.sent().len(), 2, "one more copy, for the one death between sent and written down");
    let ids: Vec<_> = memory.sent().iter().map(|mail| header(mail, "Message-ID").unwrap()).collect();
    assert_eq!(ids[0], ids[1]);
    assert_eq!(open.messages().await.len(), 1);
}

#[tokio::test]
async fn an_unknown_outcome_is_tried_once_more_then_a_person_looks() {
    let open = TestShop::open().await;
    let vehicle = open.vehicle_of(open.keeper(&ANA).await, "NM 47 KTR").await;
    open.owes(vehicle, DutyKind::Filter, "shop.filter", date!(2026 - 06 - 11)).await;
    let (rounds, memory) = open.rounds();
    let dropped = || Delivery::Unknown("the line dropped".into());
    memory.answer([dropped(), dropped()]);
    for _ in 0..30 {
        rounds.once(true).await.unwrap();
        open.clock.advance(Duration::minutes(7));
    }
    assert_eq!(memory.sent().len(), 2);
    assert_eq!(open.messages().await[0].state, MessageState::Failed);
    let failed = open.desk().await.get("/outbox?state=failed").await;
    failed.is(200).says("the line dropped");
}

#[tokio::test]
async fn two_refusals_for_good_make_the_address_bad_and_a_letter() {
    let open = TestShop::open().await;
    let ana = open.keeper(&ANA).await;
    let vehicle = open.vehicle_of(ana, "NM 47 KTR").await;
    open.owes(vehicle, DutyKind::Filter, "shop.filter", date!(2026 - 06 - 11)).await;
    open.owes(vehicle, DutyKind::Container, "shop.container", date!(2026 - 08 - 11)).await;
    let (rounds, memory) = open.rounds();
    let refused = || Delivery::Refused("550 no such user".into());
    memory.answer([refused(), refused()]);
    rounds.once(true).await.unwrap();
    assert_eq!(open.messages().await[0].state, MessageState::Failed, "shown, not tried again");
    open.until(datetime!(2026-06-12 09:00 UTC));
    rounds.once(true).await.unwrap();
    let states: Vec<_> = open.messages().await.iter().map(|one| one.state).collect();
    assert!(states.iter().all(|state| *state == MessageState::Letter), "{states:?}");
    assert!(memory.sent().is_empty());
    // What comes later goes by post at once.
    open.until(datetime!(2026-07-13 09:00 UTC));
    rounds.once(true).await.unwrap();
    assert_eq!(open.messages().await.last().unwrap().state, MessageState::Letter);
}

#[tokio::test]
async fn a_duty_done_before_the_mail_goes_out_is_not_told() {
    let open = TestShop::open().await;
    let vehicle = open.vehicle_of(open.keeper(&ANA).await, "NM 47 KTR").await;
    let id = open.owes(vehicle, DutyKind::Filter, "shop.filter", date!(2026 - 06 - 11)).await;
    let (rounds, memory) = open.rounds();
    open.until(datetime!(2026-05-15 22:00 UTC));
    rounds.once(true).await.unwrap();
    let closing = Closing {
        how: ClosedHow::Elsewhere,
        job: None,
        met_on: date!(2026 - 05 - 16),
        note: "invoice 12 of another shop".into(),
        starts_next: false,
    };
    open.shop.close_duty(&open.actor(open.mara).await, None, id, closing).await.unwrap();
    open.until(datetime!(2026-05-18 09:00 UTC));
    rounds.once(true).await.unwrap();
    assert!(memory.sent().is_empty());
    assert_eq!(open.messages().await[0].state, MessageState::Dropped);
}

/// A small generator with a seed, so that a walk that fails can be walked again.
struct Dice(u64);

impl Dice {
    fn roll(&mut self, sides: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % sides
    }
}

/// Walks through a year with duties anywhere, days switched off, faults of the post, and workers that die. Whatever
/// happens: no duty is told twice at one lead time, nothing goes out at night, and every message ends somewhere.
#[tokio::test]
async fn a_year_of_mishaps_tells_everything_once() {
    for seed in [3, 20, 77] {
        walk(seed).await;
    }
}

async fn walk(seed: u64) {
    let mut dice = Dice(seed);
    let open = TestShop::open().await;
    let zone = Zone::named("Europe/London").unwrap();
    let (rounds, memory) = open.rounds();
    let start: Date = date!(2026 - 06 - 01);
    for number in 0..6 {
        let mail = format!("keeper{number}@example.org");
        let keeper = open.keeper(&Keeper { name: "Ana Reyes", mail: &mail, ..ANA }).await;
        for part in 0..3 {
            let vehicle = open.vehicle_of(keeper, &format!("NM {number} {part}")).await;
            let day = start + Duration::days(i64::try_from(dice.roll(300)).unwrap());
            open.owes(vehicle, DutyKind::Filter, "shop.filter", day).await;
        }
    }
    let end = datetime!(2027-06-30 09:00 UTC);
    let mut deaths = 0;
    while open.clock.now() < end {
        match dice.roll(12) {
            0 => open.clock.advance(Duration::days(i64::try_from(dice.roll(25)).unwrap())),
            1 => memory.answer([Delivery::NotNow("451 later".into())]),
            2 => memory.answer([Delivery::Unknown("dropped".into())]),
            3 => {
                // Dies with a message in hand; nothing was sent.
                let is_open = is_working_time(&zone, open.clock.now());
                deaths += usize::from(open.shop.claim_message(open.branch, is_open, None).await.unwrap().is_some());
            }
            _ => {}
        }
        let before = memory.sent().len();
        rounds.once(true).await.unwrap();
        if memory.sent().len() > before {
            assert!(is_working_time(&zone, open.clock.now()), "seed {seed}: sent at {}", open.clock.now());
        }
        open.clock.advance(Duration::hours(5));
    }
    let told = told(&open).await;
    let mut once = told.clone();
    once.sort_unstable();
    once.dedup();
    assert_eq!(told.len(), once.len(), "seed {seed}");
    let duties: std::collections::BTreeSet<DutyId> = told.iter().map(|(id, _)| *id).collect();
    assert_eq!(duties.len(), 18, "seed {seed}: every duty was told at least once");
    let messages = open.messages().await;
    assert!(
        messages.iter().all(|one| matches!(one.state, MessageState::Sent | MessageState::Failed)),
        "seed {seed}: {:?}",
        messages.iter().map(|one| one.state).collect::<Vec<_>>()
    );
    assert!(deaths > 0 || seed != 3, "the walk meets deaths");
    let mut ids: Vec<_> = memory.sent().iter().filter_map(|mail| header(mail, "Message-ID")).collect();
    ids.sort_unstable();
    ids.dedup();
    let sent = messages.iter().filter(|one| one.state == MessageState::Sent).count();
    assert!(ids.len() >= sent, "seed {seed}: each message that counts as sent was sent");
}
