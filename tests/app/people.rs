//! Setting the shop up, and who may do what.

use fuelwright::db;
use fuelwright::model::person::Role;
use time::Duration;
use time::macros::date;

use crate::support::{PASSWORD, TestShop};

fn set_up_form(code: &str) -> Vec<(&str, &str)> {
    vec![
        ("code", code),
        ("shop_name", "Saltmarsh Autogas"),
        ("address", "4 Quay Lane\r\nNorthmere"),
        ("phone", "+44 1632 960100"),
        ("country", "gb"),
        ("time_zone", "Europe/London"),
        ("currency", "gbp"),
        ("language", "en"),
        ("paper_size", "a4"),
        ("name", "Ilse Brandt"),
        ("initials", "IB"),
        ("sign_in_name", "Ilse"),
        ("new_password", PASSWORD),
        ("new_password_again", PASSWORD),
    ]
}

#[tokio::test]
async fn the_first_start_makes_a_shop_with_a_manager_who_is_signed_in() {
    let open = TestShop::empty();
    let open = open.await;
    let browser = open.stranger();
    assert_eq!(browser.get("/office").await.goes_to(), "/set-up");
    assert_eq!(browser.get("/sign-in").await.goes_to(), "/set-up");
    browser.get("/set-up").await.is(200).says("Set up the shop");
    let code = open.shop.make_set_up_code().await.unwrap();
    assert_eq!(browser.post("/set-up", &set_up_form(code.as_text())).await.goes_to(), "/");
    browser.get("/office").await.is(200).says("Saltmarsh Autogas").links_to("/office/people");
    browser.get("/office/shop").await.says("The shop block");
    // Once is enough.
    assert_eq!(browser.get("/set-up").await.goes_to(), "/sign-in");
    browser.post("/set-up", &set_up_form(code.as_text())).await.is(409).says("already set up");
}

#[tokio::test]
async fn a_set_up_with_mistakes_names_each_and_keeps_what_was_typed() {
    let open = TestShop::empty().await;
    let code = open.shop.make_set_up_code().await.unwrap();
    let mut form = set_up_form(code.as_text());
    form.retain(|(name, _)| !["phone", "time_zone", "currency"].contains(name));
    form.extend([("time_zone", "Mars/Olympus"), ("currency", "12"), ("licence_expires_on", "2026-02-30")]);
    let page = open.stranger().post("/set-up", &form).await;
    page.is(422).says("4 entries need a look").says("There is no such day").says("Nothing is known by this");
    assert_eq!(page.field("time_zone").as_deref(), Some("Mars/Olympus"));
    assert_eq!(page.field("shop_name").as_deref(), Some("Saltmarsh Autogas"));
    assert!(open.shop.is_new().await.unwrap());
}

#[tokio::test]
async fn the_set_up_code_is_good_for_one_hour_and_the_latest_alone() {
    let open = TestShop::empty().await;
    let browser = open.stranger();
    browser.post("/set-up", &set_up_form("guess")).await.is(422).says("This code is wrong, used, or too old");
    let old = open.shop.make_set_up_code().await.unwrap();
    let new = open.shop.make_set_up_code().await.unwrap();
    browser.post("/set-up", &set_up_form(old.as_text())).await.is(422);
    open.clock.advance(Duration::hours(1));
    browser.post("/set-up", &set_up_form(new.as_text())).await.is(422);
    let fresh = open.shop.make_set_up_code().await.unwrap();
    open.clock.advance(Duration::minutes(59));
    browser.post("/set-up", &set_up_form(fresh.as_text())).await.is(303);
}

#[tokio::test]
async fn somebody_new_chooses_the_password_with_a_code_shown_once() {
    let open = TestShop::open().await;
    let manager = open.manager().await;
    let form = [
        ("key", "01900000-0000-7000-8000-00000000000a"),
        ("name", "Nils Tarn"),
        ("initials", "NT"),
        ("sign_in_name", "Nils"),
        ("roles", "desk"),
        ("roles", "technician"),
    ];
    let page = manager.post("/office/people", &form).await;
    page.is(200).says("Give this to Nils Tarn");
    let code = page.select("p.code");
    manager.post("/office/people", &form).await.is(200).says("Nils Tarn is already added");
    let browser = open.stranger();
    let choose = |new| [("code", code.as_str()), ("new_password", new), ("new_password_again", new)];
    browser.post("/welcome", &choose("nils-tarn")).await.is(422).says("among the first");
    assert_eq!(browser.post("/welcome", &choose("seven hoses and a clip")).await.goes_to(), "/sign-in");
    browser.post("/welcome", &choose("seven hoses and a clip")).await.is(422).says("wrong, used, or too old");
    let fields = [("sign_in_name", "nils"), ("password", "seven hoses and a clip")];
    browser.post("/sign-in", &fields).await.is(303);
    browser.get("/office/people").await.is(403).says("Not with your role");
    manager.get("/office/people").await.says("Nils Tarn").says("desk, technician").says("NM-2031");
}

#[tokio::test]
async fn a_changed_role_counts_at_once_and_ends_the_sessions() {
    let open = TestShop::open().await;
    let (manager, desk) = (open.manager().await, open.desk().await);
    let roles = format!("/office/people/{}/roles", open.mara);
    manager.post(&roles, &[("roles", "auditor")]).await.is(422).says("Nothing is entered here");
    manager.post(&roles, &[("roles", "auditor"), ("roles_password", "no")]).await.is(422).says("not your password");
    manager.post(&roles, &[("roles_password", PASSWORD)]).await.is(422);
    manager.post(&roles, &[("roles", "auditor"), ("roles_password", PASSWORD)]).await.is(303);
    desk.get("/account").await.is(303);
    let actor = open.actor(open.mara).await;
    assert_eq!(actor.roles, [Role::Auditor]);
    assert!(!actor.sees_contacts);
}

#[tokio::test]
async fn the_last_manager_stays() {
    let open = TestShop::open().await;
    let manager = open.manager().await;
    let ilse = format!("/office/people/{}", open.ilse);
    let refused = "The branch would be left without a manager";
    let fields = [("roles", "desk"), ("roles_password", PASSWORD)];
    manager.post(&format!("{ilse}/roles"), &fields).await.is(422).says(refused);
    let end = [
        ("name", "Ilse Brandt"),
        ("initials", "IB"),
        ("sign_in_name", "ilse"),
        ("ended_on", "2026-05-12"),
        ("opened_version", "1"),
    ];
    manager.post(&ilse, &end).await.is(422).says(refused);
    // With a second manager both work.
    open.add("Tove Marsh", "TM", "tove", &[Role::Manager]).await;
    manager.post(&format!("{ilse}/roles"), &fields).await.is(303);
}

#[tokio::test]
async fn two_managers_saving_at_once_both_see_what_the_other_wrote() {
    let open = TestShop::open().await;
    let (one, other) = (open.manager().await, open.manager().await);
    let jon = format!("/office/people/{}", open.jon);
    let version = one.get(&jon).await.field("opened_version").unwrap();
    let form =
        |name| [("name", name), ("initials", "JA"), ("sign_in_name", "jon"), ("opened_version", version.as_str())];
    one.post(&jon, &form("Jon Aspen-Reed")).await.is(303);
    let page = other.post(&jon, &form("Jonathan Aspen")).await;
    page.is(422).says("Changed meanwhile; it now says “Jon Aspen-Reed”");
    assert_eq!(page.field("name").as_deref(), Some("Jonathan Aspen"));
    let seen = page.field("opened_version").unwrap();
    let again = [("name", "Jonathan Aspen"), ("initials", "JA"), ("sign_in_name", "jon"), ("opened_version", &seen)];
    other.post(&jon, &again).await.is(303);
    other.get(&jon).await.says("Jonathan Aspen");
}

#[tokio::test]
async fn a_taken_sign_in_name_is_said_beside_its_field() {
    let open = TestShop::open().await;
    let form = [("name", "Jon Other"), ("initials", "JO"), ("sign_in_name", "JON"), ("roles", "desk")];
    open.manager().await.post("/office/people", &form).await.is(422).says("This is already in use");
}

#[tokio::test]
async fn the_right_to_sign_is_for_technicians_and_managers_and_expires() {
    let open = TestShop::open().await;
    let manager = open.manager().await;
    let signing = |id| format!("/office/people/{id}/signing");
    let grant = [("authorisation_number", "NM-9"), ("expires_on", "2026-12-31"), ("signing_password", PASSWORD)];
    manager.post(&signing(open.mara), &grant).await.is(422).says("Only a technician or a manager");
    manager.post(&signing(open.jon), &grant).await.is(303);
    let jon = open.actor(open.jon).await;
    assert!(jon.may_sign_on(date!(2026 - 12 - 31)).is_some() && jon.may_sign_on(date!(2027 - 01 - 01)).is_none());
    manager.post(&signing(open.jon), &[("signing_password", PASSWORD)]).await.is(303);
    assert_eq!(open.actor(open.jon).await.signatory, None);
}

#[tokio::test]
async fn the_shop_block_changes_and_the_log_tells() {
    let open = TestShop::open().await;
    let manager = open.manager().await;
    let form = [
        ("shop_name", "Saltmarsh Autogas Ltd"),
        ("address", "4 Quay Lane"),
        ("phone", "1"),
        ("country", "GB"),
        ("time_zone", "Europe/London"),
        ("currency", "GBP"),
        ("language", "en"),
        ("paper_size", "letter"),
        ("pressure_unit", "kPa"),
        ("temperature_unit", "°C"),
        ("power_unit", "kW"),
        ("length_unit", "mm"),
        ("volume_unit", "L"),
        ("opened_version", "1"),
    ];
    manager.post("/office/shop", &form).await.is(303);
    manager.post("/office/shop", &form).await.is(422).says("Somebody saved this record since you opened it");
    let page = manager.get("/office/shop").await;
    assert_eq!(page.field("shop_name").as_deref(), Some("Saltmarsh Autogas Ltd"));
    open.auditor().await.get("/office/log").await.says("Changed the shop block").says("Ilse Brandt");
}

#[tokio::test]
async fn a_setting_remembers_who_set_it_and_what_it_was() {
    let open = TestShop::open().await;
    let who = open.actor(open.ilse).await;
    open.shop.change_setting(&who, None, "reminder_lead_days", "60,30,7").await.unwrap();
    open.shop.change_setting(&who, None, "reminder_lead_days", "45,7").await.unwrap();
    let mut con = open.shop.db.read().await.unwrap();
    let kept = db::settings::find(&mut con, open.branch, "reminder_lead_days").await.unwrap().unwrap();
    assert_eq!((kept.value.as_str(), kept.changed_by), ("45,7", open.ilse));
    assert_eq!(db::settings::list(&mut con, open.branch).await.unwrap().len(), 1);
    let lines = db::audit::about(&mut con, open.branch, "branch", &open.branch.to_string()).await.unwrap();
    assert!(lines.last().unwrap().body.contains("\"from\":\"60,30,7\""), "{}", lines.last().unwrap().body);
}

#[tokio::test]
async fn a_manager_signs_somebody_out_everywhere() {
    let open = TestShop::open().await;
    let (manager, jon) = (open.manager().await, open.technician().await);
    let page = format!("/office/people/{}", open.jon);
    manager.get(&page).await.says("Signed in on 1 browser.");
    manager.post(&format!("{page}/sessions/end"), &[]).await.is(303);
    jon.get("/account").await.is(303);
    manager.get(&page).await.says("Not signed in anywhere.");
}
