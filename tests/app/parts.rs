//! Parts of a job: fitted, doubted, doubled, corrected, taken off.

use fuelwright::model::part::{DatePrecision, Part};
use fuelwright::rules::State;
use time::macros::date;

use crate::job_support::Bay;

fn container<'a>() -> Vec<(&'a str, &'a str)> {
    vec![
        ("category", "container"),
        ("maker", "Tarnwell"),
        ("type_name", "TW 60 toroidal"),
        ("approval_mark", "E4 67R-011234"),
        ("serial", "TW-55810"),
        ("made_on", "02/2026"),
        ("capacity_l", "60"),
        ("place", "Spare wheel well"),
        ("fitted_on", "2026-05-12"),
    ]
}

fn changed<'a>(mut fields: Vec<(&'a str, &'a str)>, with: &[(&'a str, &'a str)]) -> Vec<(&'a str, &'a str)> {
    for (name, value) in with {
        fields.retain(|(known, _)| known != name);
        fields.push((name, value));
    }
    fields
}

async fn fitted(bay: &Bay) -> Vec<Part> {
    bay.file().await.fitted().cloned().collect()
}

#[tokio::test]
async fn a_part_is_wanted_explained_kept_mended_and_fitted() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("parts"), bay.shop.technician().await);
    jon.get(&at).await.is(200).says("The rules still want").links_to(&bay.at("parts/new?category=container"));
    let form = jon.get(&bay.at("parts/new?category=container")).await;
    assert_eq!(form.field("category").as_deref(), Some("container"));
    assert_eq!(form.field("fitted_on").as_deref(), Some("2026-05-12"));
    assert_eq!(bay.proof("part-container").await.state, State::Missing);

    let page = jon.post(&at, &changed(container(), &[("serial", ""), ("made_on", "13/2026")])).await;
    page.is(422).says("Enter the serial or the batch.").says("is no date of manufacture");
    assert_eq!(page.field("made_on").as_deref(), Some("13/2026"));
    assert_eq!(page.field("place").as_deref(), Some("Spare wheel well"));
    jon.post(&at, &changed(container(), &[("fitted_on", "2026-05-13")])).await.is(422);
    jon.post(&at, &changed(container(), &[("made_on", "06/2026")])).await.is(422);
    assert!(fitted(&bay).await.is_empty());

    let look = jon.post(&at, &changed(container(), &[("then", "look")])).await;
    look.is(200).says("Regulation 67, country NL, series 01, number 1234").says("Counts as 28 Feb 2026");
    assert!(fitted(&bay).await.is_empty(), "looking records nothing");

    let key = uuid::Uuid::now_v7().to_string();
    jon.post(&at, &changed(container(), &[("key", &key)])).await.goes_to();
    jon.post(&at, &changed(container(), &[("key", &key)])).await.goes_to();
    let parts = fitted(&bay).await;
    assert_eq!(parts.len(), 1, "a double send fits one part");
    assert_eq!((parts[0].made_on, parts[0].made_precision), (Some(date!(2026 - 02 - 28)), Some(DatePrecision::Month)));
    assert_eq!(bay.proof("part-container").await.state, State::Met);
    jon.get(&at).await.says("Tarnwell TW 60 toroidal").says("serial TW-55810").says("made February 2026");
}

#[tokio::test]
async fn a_mark_is_kept_and_its_doubts_are_said() {
    for (mark, said, state) in [
        ("E4 67R-011234", "Regulation 67, country NL", State::Met),
        ("E99 67R-011234", "Country 99 is in no list known here", State::Met),
        ("E4 110R-011234", "Regulation 110 is not for LPG", State::Stops),
        ("e4 67R-011234", "A small e stands for an approval under EU directives", State::Met),
        ("scratched", "Kept as typed, but it cannot be read", State::Stops),
        ("", "No approval mark is entered.", State::Missing),
    ] {
        let bay = Bay::lpg().await;
        let (at, jon) = (bay.at("parts"), bay.shop.technician().await);
        jon.post(&at, &changed(container(), &[("approval_mark", mark)])).await.goes_to();
        assert_eq!(fitted(&bay).await[0].approval_mark, mark, "kept as typed");
        jon.get(&at).await.says(said);
        assert_eq!(bay.proof("marks").await.state, state, "{mark}");
    }
}

#[tokio::test]
async fn a_doubled_serial_shows_three_ways_on() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("parts"), bay.shop.technician().await);
    jon.post(&at, &container()).await.goes_to();
    let first = fitted(&bay).await[0].id;
    // The same serial, written otherwise.
    let twin = changed(container(), &[("serial", "tw 55810")]);
    let page = jon.post(&at, &twin).await;
    page.is(422)
        .says("This part is on a vehicle already")
        .says("NM 47 KTR")
        .links_to(&bay.at(&format!("parts/{first}/removal")));
    assert_eq!(page.field("shared_reason"), None, "a technician cannot state it");
    jon.post(&at, &changed(twin.clone(), &[("shared_reason", "both plates say so")])).await.is(422);
    assert_eq!(fitted(&bay).await.len(), 1);

    let vera = bay.shop.signatory().await;
    let page = vera.post(&at, &twin).await;
    assert!(page.field("shared_reason").is_some());
    vera.post(&at, &changed(twin, &[("shared_reason", "both plates say so")])).await.goes_to();
    assert_eq!(fitted(&bay).await.len(), 2);
    vera.get(&at).await.says("shares its serial: both plates say so");
}

#[tokio::test]
async fn a_correction_over_a_newer_one_shows_both() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("parts"), bay.shop.technician().await);
    jon.post(&at, &container()).await.goes_to();
    let id = fitted(&bay).await[0].id;
    let (edit, save) = (bay.at(&format!("parts/{id}/edit")), bay.at(&format!("parts/{id}")));
    let page = jon.get(&edit).await;
    assert_eq!(page.field("made_on").as_deref(), Some("2026-02"));
    let version = page.field("opened_version").unwrap();
    let opened = ("opened_version", version.as_str());
    jon.post(&save, &changed(container(), &[opened, ("serial", "TW-55811")])).await.goes_to();

    let vera = bay.shop.signatory().await;
    let late =
        vera.post(&save, &changed(container(), &[opened, ("place", "Boot floor"), ("serial", "TW-55812")])).await;
    late.is(422).says("Changed meanwhile; it now says “TW-55811”");
    assert_eq!(late.field("place").as_deref(), Some("Boot floor"));
    let now = late.field("opened_version").unwrap();
    let again = [("opened_version", now.as_str()), ("place", "Boot floor"), ("serial", "TW-55812")];
    vera.post(&save, &changed(container(), &again)).await.goes_to();
    assert_eq!(fitted(&bay).await[0].serial, "TW-55812");
}

#[tokio::test]
async fn a_part_is_taken_off_with_a_reason() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("parts"), bay.shop.technician().await);
    jon.post(&at, &container()).await.goes_to();
    let removal = bay.at(&format!("parts/{}/removal", fitted(&bay).await[0].id));
    jon.get(&removal).await.is(200).says("TW-55810");
    jon.post(&removal, &[("reason", " ")]).await.is(422);
    assert_eq!(fitted(&bay).await.len(), 1);
    let gone = [("reason", "dented at fitting"), ("whereabouts", "back to its maker")];
    jon.post(&removal, &gone).await.goes_to();
    assert!(fitted(&bay).await.is_empty());
    jon.get(&at).await.says("Taken off in this job").says("dented at fitting");
    jon.get(&removal).await.is(404);
    let elsewhere = bay.at(&format!("parts/{}/edit", fuelwright::model::ids::PartId::new()));
    jon.get(&elsewhere).await.is(404);
}
