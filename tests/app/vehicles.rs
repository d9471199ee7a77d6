//! Vehicles as the shop sees them.

use fuelwright::model::ids::{CustomerId, VehicleId};

use crate::books::customer;
use crate::support::{Browser, TestShop};

/// A vehicle as somebody in a hurry types it.
pub const PILOT: &[(&str, &str)] = &[
    ("plate", "nm 47 ktr"),
    ("plate_country", "gb"),
    ("vin", "1m8gdm9a xkp042788"),
    ("make", "Corvane"),
    ("model", "Pilot 1.6"),
    ("engine_fuel", "petrol"),
    ("category", "M1"),
    ("aspiration", "natural"),
    ("petrol_injection", "port"),
    ("odometer_unit", "km"),
    ("rated_power_kw", "110 hp"),
];

fn with<'a>(more: &[(&'a str, &'a str)]) -> Vec<(&'a str, &'a str)> {
    let mut fields: Vec<(&str, &str)> =
        PILOT.iter().filter(|(name, _)| !more.iter().any(|(other, _)| other == name)).copied().collect();
    fields.extend_from_slice(more);
    fields
}

async fn pilot(browser: &Browser) -> String {
    browser.post("/vehicles", PILOT).await.goes_to()
}

#[tokio::test]
async fn the_story_of_a_vehicle_wrong_explained_kept_mended_saved() {
    let open = TestShop::open().await;
    let desk = open.desk().await;
    desk.get("/vehicles/new").await.is(200).says("17 letters and digits");
    let page =
        desk.post("/vehicles", &with(&[("vin", "1M8GDM9AXKP04278"), ("make", ""), ("engine_cylinders", "13")])).await;
    page.is(422).says("A VIN has 17 characters; this has 16").says("Nothing is entered here");
    assert_eq!(page.field("vin").as_deref(), Some("1M8GDM9AXKP04278"));
    assert_eq!(page.field("engine_cylinders").as_deref(), Some("13"));
    for (vin, why) in [("1O8GDM9AXKP042788", "without I, O and Q"), ("1M8GDM9AXKP0427X8", "last four")] {
        desk.post("/vehicles", &with(&[("vin", vin)])).await.is(422).says(why);
    }
    desk.post("/vehicles", &with(&[("plate", ""), ("vin", "")])).await.is(422).says("one of them at least");
    let sheet = pilot(&desk).await;
    let shown = desk.get(&sheet).await;
    shown.is(200).says("Corvane Pilot 1.6").says("NM 47 KTR").says("1M8GDM9AXKP042788").hides("check digit");
    // 110 hp is 82.03 kW.
    shown.says("82 kW");
    desk.get("/vehicles?q=nm47k").await.says("Corvane Pilot").links_to(&sheet);
}

#[tokio::test]
async fn a_diesel_engine_is_refused_in_words() {
    let open = TestShop::open().await;
    let page = open.desk().await.post("/vehicles", &with(&[("engine_fuel", "diesel")])).await;
    page.is(422).says("Only petrol engines are converted here");
}

#[tokio::test]
async fn a_check_digit_that_does_not_fit_warns_and_never_refuses() {
    let open = TestShop::open().await;
    let desk = open.desk().await;
    let sheet = desk.post("/vehicles", &with(&[("vin", "1M8GDM9A1KP042788")])).await.goes_to();
    desk.get(&sheet)
        .await
        .says("The check digit does not fit")
        .says("Position 9 is 1, the sum gives X")
        .says("the law asks");
    let sheet = desk.post("/vehicles", &with(&[("vin", "WZZZZZ00000012345"), ("plate", "B 1")])).await.goes_to();
    desk.get(&sheet).await.says("Outside North America and China it need not fit");
}

#[tokio::test]
async fn a_vin_in_the_books_links_to_its_vehicle_and_may_be_shared() {
    let open = TestShop::open().await;
    let desk = open.desk().await;
    let first = pilot(&desk).await;
    let page = desk.post("/vehicles", &with(&[("plate", "SB 1")])).await;
    page.is(422).says("already in use").links_to(&first);
    desk.post("/vehicles", &with(&[("plate", "SB 1"), ("is_vin_shared", "yes")])).await.goes_to();
}

#[tokio::test]
async fn a_stale_save_of_a_vehicle_shows_both_values() {
    let open = TestShop::open().await;
    let (desk, tech) = (open.desk().await, open.technician().await);
    let sheet = pilot(&desk).await;
    tech.post(&sheet, &with(&[("engine_code", "K4"), ("opened_version", "1")])).await.goes_to();
    let late = desk.post(&sheet, &with(&[("engine_code", "K7"), ("opened_version", "1")])).await;
    late.is(409).says("K4");
    assert_eq!(late.field("engine_code").as_deref(), Some("K7"));
    desk.post(&sheet, &with(&[("engine_code", "K7"), ("opened_version", "2")])).await.goes_to();
}

#[tokio::test]
async fn a_reading_that_goes_back_is_asked_about_and_kept() {
    let open = TestShop::open().await;
    let desk = open.desk().await;
    let sheet = pilot(&desk).await;
    let (new, post) = (format!("{sheet}/readings/new"), format!("{sheet}/readings"));
    desk.get(&new).await.is(200).hides("What explains it");
    desk.post(&post, &[("odometer", "1,200"), ("read_on", "2026-05-12")]).await.is(422).says("can be read as");
    desk.post(&post, &[("odometer", "5"), ("read_on", "2026-05-13")]).await.is(422).says("in the future");
    desk.post(&post, &[("odometer", "80 000 mi"), ("read_on", "2026-05-01")]).await.goes_to();
    desk.get(&sheet).await.says("Odometer 80 000 mi");
    let asked = desk.post(&post, &[("odometer", "12843"), ("read_on", "2026-05-12")]).await;
    // 80 000 miles are 128 747.5 km.
    asked.is(422).says("lower than 128 748 km").says("The odometer was replaced");
    assert_eq!(asked.field("odometer").as_deref(), Some("12843"));
    let answered = [("odometer", "12843"), ("read_on", "2026-05-12"), ("explained", "replaced")];
    desk.post(&post, &answered).await.goes_to();
    desk.get(&sheet).await.says("Odometer 12843 km").says("The odometer was replaced");
    let far = [("odometer", "99000"), ("read_on", "2026-05-12")];
    desk.post(&post, &far).await.is(422).says("more than 1 000 km a day");
}

#[tokio::test]
async fn a_new_keeper_is_looked_for_chosen_and_ends_the_old() {
    let open = TestShop::open().await;
    let (desk, who) = (open.desk().await, open.actor(open.mara).await);
    let ana = open.shop.add_customer(&who, None, customer("Ana Reyes", "1")).await.unwrap();
    let bo = open.shop.add_customer(&who, None, customer("Bo Tarn", "2")).await.unwrap();
    desk.get(&format!("/vehicles/new?customer={ana}")).await.says("Owner and keeper: Ana Reyes");
    let sheet = desk.post("/vehicles", &with(&[("customer", &ana.to_string())])).await.goes_to();
    desk.get(&sheet).await.says("Keeper Ana Reyes").links_to(&format!("/customers/{ana}"));
    let new = format!("{sheet}/people/new");
    desk.get(&new).await.is(200).says("Look for the customer first");
    desk.get(&format!("{new}?q=tarn")).await.says("Bo Tarn");
    let post = format!("{sheet}/people");
    desk.post(&post, &[("q", "tarn"), ("role", "keeper"), ("from_on", "2026-05-12")]).await.is(422).says("Bo Tarn");
    let bo = bo.to_string();
    let fields = [("q", "tarn"), ("customer", bo.as_str()), ("role", "keeper"), ("from_on", "2026-05-12")];
    desk.post(&post, &fields).await.goes_to();
    desk.get(&sheet).await.says("Keeper Bo Tarn").says("Owner Ana Reyes");
    desk.post(&post, &fields).await.is(422).says("They are this already");
    let gone = CustomerId::new().to_string();
    desk.post(&post, &[("customer", &gone), ("role", "payer"), ("from_on", "2026-05-12")]).await.is(404);
    desk.post(&format!("{sheet}/people/keeper/end"), &[]).await.goes_to();
    desk.post(&format!("{sheet}/people/driver/end"), &[]).await.is(404);
}

#[tokio::test]
async fn another_branchs_vehicle_is_not_there() {
    let open = TestShop::open().await;
    let desk = open.desk().await;
    let gone = VehicleId::new();
    desk.get(&format!("/vehicles/{gone}")).await.is(404);
    desk.post(&format!("/vehicles/{gone}"), PILOT).await.is(404);
    desk.post(&format!("/vehicles/{gone}/readings"), &[("odometer", "5")]).await.is(404);
}
