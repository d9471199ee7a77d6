//! A road comparison by hand: logs handed in with a bar that shows how far, columns looked over, the table read, the drive
//! accepted, the proof met.

use fuelwright::db::rule_books::SHOP;
use fuelwright::rules::embedded;
use fuelwright::shop::rule_files::NewRuleFile;

use crate::driver::Scripts;
use crate::road_logs::{alike, log};
use crate::story::open_shop;

/// The shop's own lines, with the two proofs that are offered taken in.
fn asking() -> String {
    let shop = embedded("shop").unwrap();
    let taken = |line: &str| match line.strip_prefix("# ") {
        Some(rest) if rest == "[[proof]]" || rest.contains(" = ") => rest.to_owned(),
        _ => line.to_owned(),
    };
    shop.lines().map(taken).collect::<Vec<_>>().join("\n")
}

#[tokio::test(flavor = "multi_thread")]
async fn a_drive_on_both_fuels_is_handed_in_read_and_accepted() {
    let mut told = open_shop("road", Scripts::On).await;
    told.add_people().await;
    told.arrive().await;
    told.is_now("ilse").await;
    let open = &told.server.open;
    let from_on = open.clock.now().date();
    let ilse = open.actor(told.id_of("ilse").await).await;
    let new = NewRuleFile { name: SHOP.to_owned(), text: asking(), from_on, opened_at: None, second: None };
    open.shop.change_rules(&ilse, None, new).await.unwrap();

    let folder = tempfile::tempdir().unwrap();
    for (name, on_gas) in [("petrol.csv", false), ("gas.csv", true)] {
        std::fs::write(folder.path().join(name), log(on_gas, 8, alike, false)).unwrap();
    }
    let window = &told.window;
    window.go(&format!("/jobs/{}/stages/calibration", told.job)).await;
    window.says("Driven enough on both fuels").await;
    window.follow("Logs and comparison").await;
    window.fill("phase", "after").await;
    window.attach("#log_petrol", &folder.path().join("petrol.csv")).await;
    window.attach("#log_gas", &folder.path().join("gas.csv")).await;
    window.press("Hand in").await;
    window.has("form[action$='/columns']").await;
    window.says("First rows").await;
    assert_eq!(window.holds("columns[0][rpm]").await, "Engine speed [1/min]");
    window.press("Compare").await;
    window.says("Alike on both fuels").await;
    window.picture("comparison").await;
    // Thin spaces within numbers, whatever kind.
    let cells = window.text_of(".pictured table").await.replace(char::is_whitespace, " ");
    assert!(cells.contains("1 500–2 000"), "{cells}");
    assert!(cells.contains("Alike"), "{cells}");
    window.press("Accept as evidence").await;
    window.says("Accepted as evidence.").await;
    window.says("operating points alike on both fuels").await;
    window.is_quiet().await;
    told.window.close().await;
}
