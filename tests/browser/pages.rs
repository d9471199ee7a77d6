//! What only a browser sees of a page: whether it fits a phone, and whether the keyboard gets everywhere.

use thirtyfour::prelude::*;

use crate::driver::Scripts;
use crate::story::open_shop;

#[tokio::test(flavor = "multi_thread")]
async fn pages_fit_a_phone_and_the_console_stays_quiet() {
    let mut told = open_shop("phone", Scripts::On).await;
    told.add_people().await;
    told.arrive().await;
    told.is_now("ilse").await;
    let job = format!("/jobs/{}", told.job);
    let mut pages: Vec<String> = [
        "/",
        "/bay-plan",
        "/bay-plan/bookings/new",
        "/arrivals/new",
        "/jobs",
        "/vehicles",
        "/customers",
        "/search?q=NM",
        "/office",
        "/office/people",
        "/office/people/new",
        "/office/shop",
        "/office/rules",
        "/office/rules/shop",
        "/office/log",
        "/office/tablets",
        "/bay-plan/bays",
        "/customers/new",
        "/vehicles/new",
    ]
    .iter()
    .chain(&["/instruments", "/instruments/new", "/due", "/outbox", "/papers", "/verify", "/account"])
    .map(|page| (*page).to_owned())
    .collect();
    for page in [
        "stages/intake",
        "stages/sizing",
        "stages/fitting",
        "stages/calibration",
        "stages/proving",
        "arrival",
        "suitability",
        "nozzle-sizing",
        "parts/new?category=container",
        "checklist",
        "leak-joints/lpg-vapour",
        "exhaust/gas",
        "function-checks",
        "photos",
        "papers",
        "ending",
        "estimate",
        "estimate/new",
        "container-sizing",
        "heat-sizing",
        "line-sizing",
        "discharge",
        "engine-calibration",
        "trims",
        "after-drive",
        "road",
        "cylinder-table",
        "level-sensing",
        "parts",
        "leak-joints/lpg-liquid",
        "leak-decay/lpg-vapour",
        "exhaust/petrol",
        "stages/hand-over",
        "hand-over",
        "findings",
        "notes",
        "waivers/suitable",
    ] {
        pages.push(format!("{job}/{page}"));
    }
    told.window.resize(360, 740).await;
    let (mut wide, mut wordless) = (vec![], vec![]);
    for page in &pages {
        told.window.go(page).await;
        if let Some(width) = told.window.overflow_px().await {
            wide.push(format!("{page}: {width} px"));
            told.window.picture(&format!("wide-{}", wide.len())).await;
        }
        // A word that is missing in the language files stands in these brackets.
        let text = told.window.text().await;
        if let Some(at) = text.find('⟦') {
            wordless.push(format!("{page}: {}", text[at..].chars().take(60).collect::<String>()));
        }
    }
    told.window.go(&format!("{job}/checklist")).await;
    told.window.picture("checklist").await;
    assert!(wide.is_empty(), "wider than a phone of 360 px: {wide:#?}");
    assert!(wordless.is_empty(), "without words: {wordless:#?}");
    told.window.is_quiet().await;
    told.window.close().await;
}

#[tokio::test(flavor = "multi_thread")]
async fn the_first_stop_of_the_keyboard_leads_past_the_bar() {
    let told = open_shop("keyboard", Scripts::On).await;
    let window = &told.window;
    window.go("/office/people/new").await;
    let driver = &window.driver;
    driver.find(By::Tag("body")).await.unwrap().send_keys(Key::Tab).await.unwrap();
    let first = driver.active_element().await.unwrap();
    assert_eq!(first.attr("class").await.unwrap().as_deref(), Some("skip"));
    assert!(first.rect().await.unwrap().y >= 0.0, "it is seen once it is reached");
    first.send_keys(Key::Enter).await.unwrap();
    let main = driver.active_element().await.unwrap();
    assert_eq!(main.attr("id").await.unwrap().as_deref(), Some("content"));
    // From there, Tab alone reaches every field in the order of the page and at last the button.
    // The key goes to the window, not to a field: a driver that sends it to a date would begin with its day each time.
    let mut reached = vec![];
    let mut here = main;
    for _ in 0..30 {
        driver.action_chain().key_down(Key::Tab).key_up(Key::Tab).perform().await.unwrap();
        here = driver.active_element().await.unwrap();
        if here.tag_name().await.unwrap() == "button" {
            break;
        }
        reached.push(here.attr("name").await.unwrap().unwrap_or_default());
    }
    assert_eq!(reached[..4], ["name", "initials", "sign_in_name", "mail"]);
    assert_eq!(here.attr("class").await.unwrap().as_deref(), Some("main"));
    window.is_quiet().await;
    told.window.close().await;
}
