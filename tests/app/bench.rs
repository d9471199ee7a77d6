//! The Bench: each sum as a form that stands in the address. Fresh, answered against a published or reference value, wrong
//! with everything kept, and the link that gives the answer again.

use crate::support::{Browser, Page, TestShop};

/// The address of a sum with these inputs.
fn asking(sum: &str, inputs: &[(&str, &str)]) -> String {
    let query = form_urlencoded::Serializer::new(String::new()).extend_pairs(inputs).finish();
    format!("/bench/{sum}?{query}")
}

/// The sums with their pages.
const SUMS: &[&str] = &["fuel"];

/// The link "to this answer".
fn own_link(page: &Page) -> String {
    let html = scraper::Html::parse_document(&page.html());
    let selector = scraper::Selector::parse(".answer .link a").expect("a selector");
    html.select(&selector).next().and_then(|a| a.attr("href")).expect("an answer with its link").to_owned()
}

/// The same answer comes from its own link, by another person, with nothing sent but the address.
async fn link_gives_it_again(page: &Page, reader: &Browser) {
    let again = reader.get(&own_link(page)).await;
    again.is(200);
    assert_eq!(again.select(".answer"), page.select(".answer"));
}

#[tokio::test]
async fn every_sum_stands_on_the_bench_under_what_one_wants_to_know() {
    let open = TestShop::open().await;
    let page = open.technician().await.get("/bench").await;
    page.is(200).says("Nothing here replaces local codes");
    for sum in SUMS {
        page.links_to(&format!("/bench/{sum}"));
    }
}

#[tokio::test]
async fn a_fresh_page_asks_and_answers_nothing() {
    let open = TestShop::open().await;
    let auditor = open.auditor().await;
    for sum in SUMS {
        for address in [format!("/bench/{sum}"), format!("/bench/{sum}?utm=1&page=3")] {
            let page = auditor.get(&address).await;
            page.is(200).says("Nothing here replaces local codes");
            assert!(!page.html().contains("id=\"answer\""), "{address} answers unasked");
            assert!(!page.html().contains("aria-invalid"), "{address} blames unasked");
        }
    }
}

#[tokio::test]
async fn every_worked_example_answers_and_its_link_gives_it_again() {
    let open = TestShop::open().await;
    let (jon, odo) = (open.technician().await, open.auditor().await);
    for sum in SUMS {
        let fresh = jon.get(&format!("/bench/{sum}")).await;
        let html = scraper::Html::parse_document(&fresh.html());
        let selector = scraper::Selector::parse(".acts a").expect("a selector");
        let example = html.select(&selector).next().and_then(|a| a.attr("href")).expect("an example").to_owned();
        drop(html);
        let page = jon.get(&example).await;
        page.is(200).says("What this rests on");
        link_gives_it_again(&page, &odo).await;
    }
}

#[tokio::test]
async fn fuel_properties_of_a_mixture_are_those_of_the_reference_file() {
    let open = TestShop::open().await;
    let jon = open.technician().await;
    let mix = [("fuel_mix", "typed-mole"), ("share_propane", "60"), ("share_n_butane", "40")];
    // tests/reference/fuel_mixtures.csv, row p60_b40 (enthalpies of formation, an independent implementation): 46.05 MJ/kg,
    // 15.58 kg/kg, MON 93.9 by ASTM D2598.
    let page = jon.get(&asking("fuel", &mix)).await;
    page.is(200).says("46.05 MJ/kg").says("15.58 kg/kg").says("93.9").says("Wobbe index, gross");
    // By mass the same fuel is 53.2 % propane.
    page.says("53.23");
}
