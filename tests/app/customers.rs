//! Customers as the desk sees them.

use axum::body::Body;
use axum::http::{Request, header};
use fuelwright::model::ids::CustomerId;

use crate::books::customer;
use crate::support::TestShop;

const BO: &[(&str, &str)] =
    &[("name", "Bo Tarn"), ("language", "en"), ("reminder_basis", "none"), ("phone", "01632 960 143")];

#[tokio::test]
async fn the_story_of_a_customer_wrong_explained_kept_mended_saved() {
    let open = TestShop::open().await;
    let desk = open.desk().await;
    desk.get("/customers").await.is(200).says("Nobody is in the books yet").links_to("/customers/new");
    let wrong = [
        ("name", "Ana\nReyes"),
        ("mail", "ana@home"),
        ("phone", "01632 960 142"),
        ("address", "4 Quay Lane\nNorthmere"),
        ("language", "en"),
        ("reminder_basis", "consent"),
    ];
    let page = desk.post("/customers", &wrong).await;
    page.is(422).says("Takes one line").says("is not a mail address").says("Say since when");
    assert_eq!(page.field("phone").as_deref(), Some("01632 960 142"));
    assert_eq!(page.field("mail").as_deref(), Some("ana@home"));
    assert!(page.field("address").unwrap().contains("Northmere"));
    let key = page.field("key").unwrap();
    let mended = [
        ("name", "Ana Reyes"),
        ("mail", "ana@example.org"),
        ("phone", "01632 960 142"),
        ("address", "4 Quay Lane\nNorthmere"),
        ("language", "en"),
        ("reminder_basis", "consent"),
        ("reminder_basis_on", "2026-05-12"),
        ("key", &key),
    ];
    let sheet = desk.post("/customers", &mended).await.goes_to();
    desk.get(&sheet).await.is(200).says("Ana Reyes").says("4 Quay Lane").says("Consent, since 12");
    // A second tap is the same customer.
    assert_eq!(desk.post("/customers", &mended).await.goes_to(), sheet);
    desk.get("/customers?q=960142").await.says("Ana Reyes").links_to(&sheet);
    desk.get("/customers?q=REY%C3%89S").await.says("Ana Reyes");
    desk.get("/customers?q=nobody").await.says("Nobody is found by “nobody”");
}

#[tokio::test]
async fn a_stale_save_shows_both_values_and_loses_neither() {
    let open = TestShop::open().await;
    let (desk, manager) = (open.desk().await, open.manager().await);
    let sheet = desk.post("/customers", BO).await.goes_to();
    let edit = desk.get(&format!("{sheet}/edit")).await;
    let opened = edit.field("opened_version").unwrap();
    let with = |phone: &'static str, version: String| {
        vec![
            ("name", "Bo Tarn".to_owned()),
            ("language", "en".to_owned()),
            ("reminder_basis", "none".to_owned()),
            ("phone", phone.to_owned()),
            ("opened_version", version),
        ]
    };
    fn pairs<'a>(fields: &'a [(&'a str, String)]) -> Vec<(&'a str, &'a str)> {
        fields.iter().map(|(name, text)| (*name, text.as_str())).collect()
    }
    manager.post(&sheet, &pairs(&with("0999 1", opened.clone()))).await.goes_to();
    let late = desk.post(&sheet, &pairs(&with("0999 2", opened))).await;
    late.is(409).says("0999 1");
    assert_eq!(late.field("phone").as_deref(), Some("0999 2"));
    let now = late.field("opened_version").unwrap();
    desk.post(&sheet, &pairs(&with("0999 2", now))).await.goes_to();
    desk.get(&sheet).await.says("0999 2");
}

#[tokio::test]
async fn the_shops_own_address_is_explained_at_the_field() {
    let open = TestShop::open().await;
    let desk = open.desk().await;
    let mut fields = BO.to_vec();
    fields.push(("mail", "shop@example.org"));
    desk.post("/customers", &fields).await.is(422).says("the shop’s own address");
}

#[tokio::test]
async fn one_address_of_many_customers_is_pointed_out() {
    let open = TestShop::open().await;
    let who = open.actor(open.mara).await;
    let mut last = None;
    for n in 0..6 {
        let mut one = customer(&format!("Fleet driver {n}"), "");
        one.mail = if n == 0 { "FLEET@example.org".into() } else { "fleet@example.org".into() };
        last = Some(open.shop.add_customer(&who, None, one).await.unwrap());
        let page = open.desk().await.get(&format!("/customers/{}", last.unwrap())).await;
        if n < 5 {
            page.hides("One address, many customers");
        }
    }
    let page = open.desk().await.get(&format!("/customers/{}", last.unwrap())).await;
    page.says("One address, many customers").says("6 customers share");
}

#[tokio::test]
async fn somebody_elses_ids_and_ten_megabytes_are_turned_away() {
    let open = TestShop::open().await;
    let desk = open.desk().await;
    for path in [format!("/customers/{}", CustomerId::new()), "/customers/7".into(), "/customers/%00".into()] {
        let status = desk.get(&path).await.status.as_u16();
        assert!(matches!(status, 400 | 404), "{path}: {status}");
    }
    desk.post(&format!("/customers/{}/notes", CustomerId::new()), &[("text", "x")]).await.is(404);
    let mut fields = BO.to_vec();
    let long = "x".repeat(300_000);
    fields.push(("address", &long));
    desk.post("/customers", &fields).await.is(422).says("500 characters at most");
    let huge = Request::post("/customers")
        .header(header::CONTENT_TYPE, "application/x-www-form-urlencoded")
        .header("sec-fetch-site", "same-origin")
        .body(Body::from(format!("name={}", "x".repeat(10_000_000))))
        .unwrap();
    desk.send(huge).await.is(413);
}

#[tokio::test]
async fn a_name_in_another_encoding_is_asked_for_again_and_the_rest_is_kept() {
    let open = TestShop::open().await;
    let desk = open.desk().await;
    // "Muñoz" in Latin-1, as a broken client sends it; and UTF-16, which is not even text to a form.
    for name in ["Mu%F1oz", "M%00u%00%F1%00o%00z%00"] {
        let form = Request::post("/customers")
            .header(header::CONTENT_TYPE, "application/x-www-form-urlencoded")
            .header("sec-fetch-site", "same-origin")
            .body(Body::from(format!("name={name}&phone=01632+960+177")))
            .unwrap();
        let page = desk.send(form).await;
        page.is(422);
        assert_eq!(page.field("phone").as_deref(), Some("01632 960 177"));
        assert!(page.text().contains("damaged") || page.text().contains("cannot be printed"), "{}", page.text());
    }
}

#[tokio::test]
async fn a_note_keeps_its_author_and_an_auditor_sees_no_phone() {
    let open = TestShop::open().await;
    let desk = open.desk().await;
    let sheet = desk.post("/customers", BO).await.goes_to();
    desk.post(&format!("{sheet}/notes"), &[("text", " ")]).await.is(422).says("Nothing is entered here");
    desk.post(&format!("{sheet}/notes"), &[("text", "<b>Calls</b> back\nafter five")]).await.goes_to();
    desk.get(&sheet).await.says("Mara Lind, 12").says("<b>Calls</b> back").says("01632 960 143");
    open.auditor().await.get(&sheet).await.is(200).hides("960 143").says("hidden from auditors");
    open.auditor().await.get("/customers").await.is(200).hides("960 143");
}
