//! Units by the shop's setting: a form shows and reads them, results come in them, what is kept does not change.

use fuelwright::model::evidence::Evidence;

use crate::bench::asking;
use crate::job_support::Bay;
use crate::support::{Page, TestShop};

const BLOCK: [(&str, &str); 8] = [
    ("shop_name", "Saltmarsh Autogas"),
    ("address", "4 Quay Lane"),
    ("phone", "1"),
    ("country", "GB"),
    ("time_zone", "Europe/London"),
    ("currency", "GBP"),
    ("language", "en"),
    ("paper_size", "a4"),
];

const ELSEWHERE: [(&str, &str); 5] = [
    ("pressure_unit", "psi"),
    ("temperature_unit", "°F"),
    ("power_unit", "hp"),
    ("length_unit", "in"),
    ("volume_unit", "gal (US)"),
];

async fn choose(open: &TestShop, version: &str, units: &[(&str, &str)]) -> Page {
    let mut form = BLOCK.to_vec();
    form.push(("opened_version", version));
    form.extend(units);
    open.manager().await.post("/office/shop", &form).await
}

#[tokio::test]
async fn a_shop_chooses_its_units_and_a_strange_one_is_refused_beside_its_field() {
    let open = TestShop::open().await;
    let wrong = choose(&open, "1", &[("pressure_unit", "mbar"), ("length_unit", "in")]).await;
    wrong.is(422).says("Pressure: Choose one of the answers");
    assert!(wrong.html().contains("id=\"pressure_unit-error\""));
    choose(&open, "1", &ELSEWHERE).await.is(303);
    let page = open.manager().await.get("/office/shop").await;
    for (name, symbol) in ELSEWHERE {
        let chosen = format!("input[name={name}][checked]");
        assert!(page.html().contains(&format!("value=\"{symbol}\" checked")), "{chosen}");
    }
    open.auditor().await.get("/office/log").await.says("Changed the shop block");
}

// Factors: NIST SP 811 (2008), appendix B.8. 300 kPa = 43.511 psi, 20 C = 68 F, 2 mm = 0.078 740 in.
#[tokio::test]
async fn a_sum_asked_in_the_shops_units_is_the_same_sum() {
    let open = TestShop::open().await;
    let kept = [
        ("fuel_mix", "cng-g20"),
        ("upstream_kpa", "300"),
        ("downstream_kpa", "100"),
        ("temperature_c", "20"),
        ("diameter_mm", "2"),
        ("discharge_coefficient", "0.85"),
    ];
    let before = open.technician().await.get(&asking("nozzle-flow", &kept)).await;
    choose(&open, "1", &ELSEWHERE).await.is(303);
    let reader = open.technician().await;

    // The fresh page says its units, also to the form that comes back.
    let fresh = reader.get("/bench/nozzle-flow").await;
    assert_eq!(fresh.field("unit:upstream_kpa").as_deref(), Some("psi"));
    assert_eq!(fresh.field("unit:temperature_c").as_deref(), Some("°F"));
    assert_eq!(fresh.field("unit:discharge_coefficient"), None);

    let typed = [
        ("fuel_mix", "cng-g20"),
        ("upstream_kpa", "43.51132"),
        ("unit:upstream_kpa", "psi"),
        ("downstream_kpa", "14.50377"),
        ("unit:downstream_kpa", "psi"),
        ("temperature_c", "68"),
        ("unit:temperature_c", "°F"),
        ("diameter_mm", "0.07874016"),
        ("unit:diameter_mm", "in"),
        ("discharge_coefficient", "0.85"),
    ];
    let after = reader.get(&asking("nozzle-flow", &typed)).await;
    after.is(200);
    let flow = |page: &Page| page.select("#answer dl, #answer .main").split("g/s").next().map(str::to_owned);
    assert!(flow(&before).is_some());
    assert_eq!(flow(&after), flow(&before), "the same flow, asked in other units");
    assert_eq!(after.field("upstream_kpa").as_deref(), Some("43.51132"), "what was typed stays as it was typed");

    // Its link says the units itself, so that a shop with others reads the same sum.
    let link = scraper::Html::parse_document(&after.html());
    let selector = scraper::Selector::parse(".answer .link a").unwrap();
    let link = link.select(&selector).next().and_then(|a| a.attr("href")).unwrap().to_owned();
    assert!(link.contains("43.51132+psi") && link.contains("68+%C2%B0F"), "{link}");
    choose(&open, "2", &[]).await.is(303);
    let again = open.technician().await.get(&link).await;
    again.is(200);
    assert_eq!(flow(&again), flow(&before));

    // An address in the units things are kept in means the same to a shop that shows others.
    choose(&open, "3", &ELSEWHERE).await.is(303);
    let old = open.technician().await.get(&asking("nozzle-flow", &kept)).await;
    assert_eq!(flow(&old), flow(&before));
    assert_eq!(
        old.field("upstream_kpa").as_deref(),
        Some("300 kPa"),
        "the number says its unit where another is shown"
    );
}

#[tokio::test]
async fn what_is_wrong_is_said_in_the_shops_units() {
    let open = TestShop::open().await;
    choose(&open, "1", &[("pressure_unit", "bar")]).await.is(303);
    let typed = [("fuel_mix", "cng-g20"), ("volume_l", "80"), ("pressure_kpa", "900"), ("unit:pressure_kpa", "bar")];
    let page = open.technician().await.get(&asking("cylinder", &typed)).await;
    page.is(422).says("350").says("bar");
    assert!(page.html().contains("id=\"pressure_kpa-error\""));
    let typed = [("fuel_mix", "cng-g20"), ("volume_l", "80"), ("pressure_kpa", "200"), ("unit:pressure_kpa", "bar")];
    let page = open.technician().await.get(&asking("cylinder", &typed)).await;
    // 80 L of methane at 20 MPa and 15 C hold 13.4 kg (`cng_cylinder.csv`).
    page.is(200).says("13.4");
    page.says("Absolute, bar").says("units things are kept in");
}

#[tokio::test]
async fn a_form_of_a_job_opens_in_the_shops_units_and_keeps_what_is_kept() {
    let bay = Bay::lpg().await;
    choose(&bay.shop, "1", &ELSEWHERE).await.is(303);
    let (at, technician) = (bay.at("container-sizing"), bay.shop.technician().await);
    let form = technician.get(&at).await;
    form.is(200);
    // 15 C, common practice, is 59 F.
    assert_eq!(form.field("temperature_c").as_deref(), Some("59"));
    assert_eq!(form.field("unit:temperature_c").as_deref(), Some("°F"));
    assert_eq!(form.field("unit:sets[0][gross_volume_l]").as_deref(), Some("gal (US)"));
    let sent = [
        ("fuel_mix", "lpg-propane"),
        ("fill_percent", "80"),
        ("temperature_c", "59"),
        ("unit:temperature_c", "°F"),
        ("left_behind_percent", "4"),
        ("consumption_l_per_100km", "9.6"),
        ("parts_mass_kg", "22"),
        ("axle_reserve_kg", "100"),
        ("sets[0][gross_volume_l]", "20"),
        ("unit:sets[0][gross_volume_l]", "gal (US)"),
        ("sets[0][container_mass_kg]", "31"),
        ("taken", "1"),
        ("measured_at", "2026-05-12T10:20"),
    ];
    let stage = technician.post(&at, &sent).await.goes_to();
    let file = bay.file().await;
    let Some(Evidence::ContainerSizing(one)) = file.entry("container-sizing", "").map(|entry| &entry.body) else {
        panic!("not recorded")
    };
    let (inputs, _) = one.read_back().expect("read back");
    // 1 US gallon is 3.785 411 784 L (NIST SP 811, B.8).
    assert!((inputs.sets[0].container.gross_volume_l - 75.708_235_68).abs() < 1e-9);
    assert!((inputs.sets[0].container.temperature_c - 15.0).abs() < 1e-9);
    // 80 % of 20 gallons; the default temperature keeps where it comes from; liquid-full at 68 C is 154 F.
    let page = technician.get(&stage).await;
    page.says("16.00 gal (US) of liquid").says("liquid-full at 154 °F").says("59 °F").says("20 gal (US)");
    assert_eq!(one.origins.get("temperature_c").and_then(|origin| origin.as_str()), Some("practice"));
    // Opened again the form shows what was typed, and sending it changes nothing that is kept.
    let again = technician.get(&at).await;
    assert_eq!(again.field("sets[0][gross_volume_l]").as_deref(), Some("20 gal (US)"));
    // A shop that goes back to litres reads the same job in litres.
    choose(&bay.shop, "2", &[]).await.is(303);
    bay.shop.technician().await.get(&stage).await.says("60.6 L of liquid").says("liquid-full at 68 °C");
}
