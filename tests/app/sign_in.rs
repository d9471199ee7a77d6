//! Coming in and going out.

use fuelwright::db;
use fuelwright::shop::Hasher;
use fuelwright::shop::sign_in::{IDLE, LONGEST};
use time::Duration;
use time::macros::date;

use crate::support::{PASSWORD, TestShop};

const GOOD: [(&str, &str); 2] = [("sign_in_name", "ilse"), ("password", PASSWORD)];

#[tokio::test]
async fn a_name_and_password_open_a_session_and_signing_out_ends_it() {
    let open = TestShop::open().await;
    let browser = open.stranger();
    browser.get("/account").await.is(303);
    assert_eq!(browser.post("/sign-in", &[("sign_in_name", " ILSE "), ("password", PASSWORD)]).await.goes_to(), "/");
    browser.get("/account").await.is(200).says("Signed in as Ilse Brandt").says("this browser");
    let kept = browser.cookies.borrow().clone();
    assert_eq!(browser.post("/sign-out", &[]).await.goes_to(), "/sign-in");
    assert!(browser.cookies.borrow().is_empty());
    // The old cookie, taken from a copy of the disk, opens nothing.
    *browser.cookies.borrow_mut() = kept;
    browser.get("/account").await.is(303);
    assert_eq!(browser.post("/sign-out", &[]).await.goes_to(), "/sign-in", "out already, and not told off");
}

#[tokio::test]
async fn a_wrong_password_and_an_unknown_name_answer_alike_and_keep_what_was_typed() {
    let open = TestShop::open().await;
    let wrong = open.stranger().post("/sign-in", &[("sign_in_name", "ilse"), ("password", "no")]).await;
    wrong.is(422).says("Name or password is wrong, or the account has ended");
    assert_eq!(wrong.field("sign_in_name").as_deref(), Some("ilse"));
    assert_eq!(wrong.field("password").as_deref(), Some(""), "a password is never printed back");
    let unknown = open.stranger().post("/sign-in", &[("sign_in_name", "elsa"), ("password", "no")]).await;
    assert_eq!(wrong.text(), unknown.text());
    open.stranger().post("/sign-in", &[]).await.is(422).says("Nothing is entered here");
}

#[tokio::test]
async fn guessing_waits_longer_each_time_but_never_for_ever() {
    let open = TestShop::open().await;
    let browser = open.stranger();
    let bad = [("sign_in_name", "ilse"), ("password", "guess")];
    for _ in 0..5 {
        browser.post("/sign-in", &bad).await.says("Name or password is wrong");
    }
    // Even the right password waits now, or the wait would tell a guesser that he hit.
    browser.post("/sign-in", &GOOD).await.is(429).says("Try again in 2 seconds");
    open.clock.advance(Duration::seconds(1));
    browser.post("/sign-in", &bad).await.says("Name or password is wrong");
    open.clock.advance(Duration::seconds(1));
    let page = browser.post("/sign-in", &GOOD).await;
    assert_eq!(page.is(429).headers["retry-after"], "2");
    open.clock.advance(Duration::seconds(300));
    browser.post("/sign-in", &GOOD).await.is(303);
    // A success wipes the slate.
    browser.post("/sign-in", &bad).await.says("Name or password is wrong");
    browser.post("/sign-in", &GOOD).await.is(303);
}

#[tokio::test]
async fn a_session_ends_when_idle_and_at_last_in_any_case() {
    let open = TestShop::open().await;
    let browser = open.manager().await;
    open.clock.advance(IDLE - Duration::seconds(1));
    browser.get("/account").await.is(200);
    open.clock.advance(IDLE - Duration::seconds(1));
    browser.get("/account").await.is(200);
    open.clock.advance(IDLE);
    browser.get("/account").await.is(303);

    let browser = open.manager().await;
    let mut passed = Duration::ZERO;
    while passed + Duration::minutes(20) < LONGEST {
        browser.get("/account").await.is(200);
        open.clock.advance(Duration::minutes(20));
        passed += Duration::minutes(20);
    }
    open.clock.advance(Duration::minutes(20));
    browser.get("/account").await.is(303);
}

#[tokio::test]
async fn a_post_after_the_session_ended_loses_nothing_and_says_how_to_go_on() {
    let open = TestShop::open().await;
    let browser = open.manager().await;
    open.clock.advance(IDLE);
    browser.post("/office/shop", &[("shop_name", "X")]).await.is(401).says("You are signed out").links_to("/sign-in");
}

#[tokio::test]
async fn a_new_password_ends_the_other_sessions_but_this_one() {
    let open = TestShop::open().await;
    let (here, there) = (open.technician().await, open.technician().await);
    let new = "copper pipe bends twice";
    let fields = |again| [("current_password", PASSWORD), ("new_password", new), ("new_password_again", again)];
    here.post("/account/password", &fields("something else")).await.is(422).says("Does not match");
    let wrong = [("current_password", "nope"), ("new_password", new), ("new_password_again", new)];
    here.post("/account/password", &wrong).await.is(422).says("This is not your password");
    let weak = [("current_password", PASSWORD), ("new_password", "Password123"), ("new_password_again", "Password123")];
    here.post("/account/password", &weak).await.is(422).says("among the first that somebody would guess");
    assert_eq!(here.post("/account/password", &fields(new)).await.goes_to(), "/account");
    here.get("/account").await.is(200);
    there.get("/account").await.is(303);
    open.stranger().post("/sign-in", &[("sign_in_name", "jon"), ("password", PASSWORD)]).await.is(422);
    open.stranger().post("/sign-in", &[("sign_in_name", "jon"), ("password", new)]).await.is(303);
}

#[tokio::test]
async fn an_account_that_ended_opens_nothing_from_that_day_on() {
    let open = TestShop::open().await;
    let who = open.actor(open.ilse).await;
    let mut odo = db::people::find(&mut open.shop.db.read().await.unwrap(), open.odo).await.unwrap().unwrap();
    odo.ended_on = Some(date!(2026 - 05 - 13));
    open.shop.change_person(&who, None, odo).await.unwrap();
    let browser = open.auditor().await;
    browser.get("/office/log").await.is(200);
    open.clock.advance(Duration::hours(15));
    browser.get("/office/log").await.is(303);
    let answer = open.stranger().post("/sign-in", &[("sign_in_name", "odo"), ("password", PASSWORD)]).await;
    answer.is(422).says("Name or password is wrong, or the account has ended");
}

#[tokio::test]
async fn a_session_can_be_ended_from_another_browser_but_only_ones_own() {
    let open = TestShop::open().await;
    let (here, there, other) = (open.desk().await, open.desk().await, open.technician().await);
    let mut con = open.shop.db.read().await.unwrap();
    let sessions = db::sessions::list(&mut con, open.mara).await.unwrap();
    assert_eq!(sessions.len(), 2);
    let foreign = db::sessions::list(&mut con, open.jon).await.unwrap();
    here.post(&format!("/account/sessions/{}/end", foreign[0].id), &[]).await.is(303);
    other.get("/account").await.is(200);
    for session in sessions {
        other.post(&format!("/account/sessions/{}/end", session.id), &[]).await.is(303);
    }
    here.get("/account").await.is(200);
    there.get("/account").await.is(200);
}

#[tokio::test]
async fn a_cheaper_hash_is_renewed_at_the_next_sign_in() {
    let mut open = TestShop::open().await;
    let phc = |secrets: Option<db::people::Secrets>| secrets.unwrap().password_phc.unwrap();
    let before = phc(db::people::secrets(&mut open.shop.db.read().await.unwrap(), open.ilse).await.unwrap());
    open.shop.hasher = Hasher::new();
    open.browser("ilse").await.get("/account").await.is(200);
    let after = phc(db::people::secrets(&mut open.shop.db.read().await.unwrap(), open.ilse).await.unwrap());
    assert_ne!(before, after);
    assert!(after.starts_with("$argon2id$v=19$m=65536,t=3,p=1$"), "{after}");
}

#[tokio::test]
async fn six_digits_open_a_tablet_of_the_shop_and_nothing_else() {
    let open = TestShop::open().await;
    let (jon, tablet) = (open.technician().await, open.manager().await);
    jon.post("/account/pin", &[("pin", "123456"), ("pin_password", PASSWORD)]).await.is(422).says("Takes six digits");
    jon.post("/account/pin", &[("pin", "190528"), ("pin_password", "no")]).await.is(422).says("not your password");
    jon.post("/account/pin", &[("pin", "190528"), ("pin_password", PASSWORD)]).await.is(303);
    let id = open.jon.to_string();
    let come = [("person", id.as_str()), ("pin", "190528")];
    open.stranger().get("/sign-in").await.hides("PIN");
    open.stranger().post("/sign-in/pin", &come).await.is(422).says("do not belong together");

    tablet.post("/office/tablets", &[("name", "Bay 1")]).await.is(303);
    tablet.post("/sign-out", &[]).await.is(303);
    tablet.get("/sign-in").await.says("PIN").says("Jon Aspen").hides("Mara Lind");
    for _ in 0..5 {
        tablet.post("/sign-in/pin", &[("person", id.as_str()), ("pin", "190529")]).await.is(422);
    }
    tablet.post("/sign-in/pin", &come).await.is(429);
    open.clock.advance(Duration::seconds(2));
    tablet.post("/sign-in/pin", &come).await.is(303);
    tablet.get("/account").await.says("Signed in as Jon Aspen");
    open.clock.advance(Duration::minutes(10));
    tablet.get("/account").await.is(303);
    tablet.post("/sign-in/pin", &come).await.is(303);

    let manager = open.manager().await;
    let device = db::sessions::devices(&mut open.shop.db.read().await.unwrap(), open.branch).await.unwrap()[0].id;
    manager.get("/office/tablets").await.says("Bay 1");
    manager.post(&format!("/office/tablets/{device}/end"), &[]).await.is(303);
    manager.post(&format!("/office/tablets/{device}/end"), &[]).await.is(404);
    tablet.get("/account").await.is(303);
    tablet.post("/sign-in/pin", &come).await.is(422);
}

#[tokio::test]
async fn only_fingerprints_of_secrets_are_kept() {
    let open = TestShop::open().await;
    let browser = open.manager().await;
    let token = browser.cookies.borrow()[0].1.clone();
    let copy = open.folder.path().join("copy.db");
    open.shop.db.copy_to(&copy).await.unwrap();
    let bytes = std::fs::read(copy).unwrap();
    for secret in [token.as_str(), PASSWORD] {
        assert!(!bytes.windows(secret.len()).any(|part| part == secret.as_bytes()));
    }
}
