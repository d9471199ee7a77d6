//! The certificate of each other kind of job, from the first form to the signed paper, and what forgery comes to.

use fuelwright::db;
use fuelwright::model::job::{Fuel, JobKind};
use fuelwright::model::paper::certificate::InspectionOutcome;
use fuelwright::seal::standing::Standing;

use crate::job_support::Bay;
use crate::round::Round;
use crate::support::PASSWORD;

const NOW: (&str, &str) = ("measured_at", "2026-05-12T10:30");

pub async fn part_id(bay: &Bay, serial: &str) -> String {
    let file = bay.file().await;
    file.parts.iter().find(|part| part.serial == serial).unwrap_or_else(|| panic!("no part {serial}")).id.to_string()
}

/// The container's valve, as an exchange fits it anew.
pub async fn multivalve(round: &Round) {
    let part = [
        ("category", "multivalve"),
        ("maker", "Dunmere"),
        ("type_name", "MV 30"),
        ("approval_mark", "E20 67R-01 2210"),
        ("serial", "M-77"),
        ("fitted_on", "2026-05-12"),
    ];
    round.jon.post(&round.bay.at("parts"), &part).await.goes_to();
}

pub async fn look_at(round: &Round, serial: &str, rest: &[(&str, &str)]) -> crate::support::Page {
    let kinds = format!("kinds-{}", part_id(&round.bay, serial).await);
    let mut sent = vec![
        (kinds.as_str(), "visual"),
        (kinds.as_str(), "tightness"),
        ("inspector_level", "level 2, Northmere course"),
        NOW,
    ];
    sent.extend(rest);
    round.jon.post(&round.bay.at("vessel-check"), &sent).await
}

#[tokio::test]
async fn an_exchanged_container_gets_its_own_certificate_and_the_old_one_is_not_lost_sight_of() {
    let round = Round::open(JobKind::Exchange, Fuel::Lpg).await;
    let job = round.bay.job;
    round.vessel(job, "found", "OLD-1").await;
    let removal = round.bay.at(&format!("parts/{}/removal", part_id(&round.bay, "OLD-1").await));
    let nowhere = round.jon.post(&removal, &[("reason", "ten years old")]).await;
    nowhere.is(422).says("Say where the container or cylinder goes");
    assert_eq!(nowhere.field("reason").as_deref(), Some("ten years old"));
    let gone = [("reason", "ten years old"), ("whereabouts", "emptied, to the scrap dealer, slip 41")];
    round.jon.post(&removal, &gone).await.goes_to();
    round.vessel(job, "fitted", "T-NEW").await;
    multivalve(&round).await;
    round.arrive(job).await;
    let sizing = fuelwright::model::evidence::Evidence::ContainerSizing(fuelwright::demo::sums::container().unwrap());
    round.bay.record(sizing, vec![]).await;
    round.checklist(job, &[]).await.goes_to();
    round.all_joints(job).await;
    round.functions(job, "yes").await;
    round.sign(job).await.is(422).says("Something is still missing");

    let vessel = part_id(&round.bay, "T-NEW").await;
    let finding = [
        ("findings[0][vessel]", vessel.as_str()),
        ("findings[0][level]", "condemned"),
        ("findings[0][words]", "dent at the weld"),
        ("findings[0][action]", "set aside"),
    ];
    look_at(&round, "T-NEW", &finding).await.goes_to();
    round.sign(job).await.is(422);
    assert_eq!(round.bay.proof("vessel-checked").await.why.key, "vessel-not-acceptable");
    let entry = round.bay.file().await.entry("vessel-check", "").unwrap().id.to_string();
    let again = [
        ("findings[0][vessel]", vessel.as_str()),
        ("findings[0][level]", "acceptable"),
        ("findings[0][words]", "paint scratched at the valve"),
        ("findings[0][action]", "painted over"),
        ("replaces_id", entry.as_str()),
        ("replaces_reason", "it was the old one"),
    ];
    look_at(&round, "T-NEW", &again).await.goes_to();
    let (found, paper) = round.issued(job).await;
    assert_eq!((found.paper.kind.as_str(), found.paper.number.as_str()), ("container", "V-2026-0001"));
    for wanted in [
        "LPG container certificate",
        "T-NEW",
        "in whole litres 54 L",
        "80 %",
        "visual, outside, tightness",
        "level 2, Northmere course",
        "paint scratched at the valve: acceptable. painted over",
        "31 March 2044",
        "Parts taken off",
        "OLD-1",
        "emptied, to the scrap dealer, slip 41",
    ] {
        paper.says(wanted);
    }
    // The shop's interval counts from the month it was made.
    paper.says("31 March 2034");
}

#[tokio::test]
async fn a_cylinder_certificate_has_a_series_of_its_own_and_the_plates_working_pressure() {
    let round = Round::open(JobKind::Exchange, Fuel::Cng).await;
    let job = round.bay.job;
    round.vessel(job, "fitted", "CY-7").await;
    round.arrive(job).await;
    round.checklist(job, &[]).await.goes_to();
    round.all_joints(job).await;
    round.functions(job, "yes").await;
    look_at(&round, "CY-7", &[]).await.goes_to();
    let (found, paper) = round.issued(job).await;
    assert_eq!((found.paper.kind.as_str(), found.paper.number.as_str()), ("cylinder", "Y-2026-0001"));
    paper.says("CNG cylinder certificate");
    paper.says("20 000 kPa");
    paper.says("12 May 2030");
}

#[tokio::test]
async fn a_removal_names_what_was_taken_off_and_is_held_back_while_a_container_is_in_the_books() {
    let round = Round::open(JobKind::Removal, Fuel::Lpg).await;
    let job = round.bay.job;
    round.arrive(job).await;
    round.checklist(job, &[]).await.goes_to();
    round.exhaust(job, "petrol", "0.08").await;
    assert_eq!(round.bay.proof("removed").await.why.key, "nothing-taken-off");
    round.vessel(job, "found", "OLD-2").await;
    assert_eq!(round.bay.proof("removed").await.why.key, "vessel-still-listed");
    round.sign(job).await.is(422);
    let removal = round.bay.at(&format!("parts/{}/removal", part_id(&round.bay, "OLD-2").await));
    let gone = [("reason", "back to petrol"), ("whereabouts", "to its owner, emptied")];
    round.jon.post(&removal, &gone).await.goes_to();
    let (found, paper) = round.issued(job).await;
    assert_eq!((found.paper.kind.as_str(), found.paper.number.as_str()), ("removal", "R-2026-0001"));
    assert!(found.content.containers.is_empty() && found.content.removed.len() == 1);
    for wanted in [
        "Certificate of removal of an LPG system",
        "OLD-2",
        "to its owner, emptied",
        "Plate, label and stickers taken off",
        "Petrol joints that were opened searched with the engine running: dry",
        "Fuel: petrol only",
    ] {
        paper.says(wanted);
    }
    round.hand_over(job).await.goes_to();
}

#[tokio::test]
async fn a_larger_repair_and_an_accident_end_with_an_inspection_certificate() {
    let round = Round::open(JobKind::Repair, Fuel::Lpg).await;
    let job = round.bay.job;
    round.vessel(job, "found", "T-5").await;
    round.all_in_order(job).await;
    let (found, paper) = round.issued(job).await;
    assert_eq!(found.content.inspection.unwrap().outcome, InspectionOutcome::Pass);
    paper.says("after a repair");

    let round = Round::open(JobKind::AfterAccident, Fuel::Lpg).await;
    let job = round.bay.job;
    round.vessel(job, "found", "T-6").await;
    round.all_in_order(job).await;
    round.deficiencies(job, &[["", "6.1.3 a", "major", "strap torn"]], &[]).await.goes_to();
    let (found, paper) = round.issued(job).await;
    assert_eq!(found.content.inspection.unwrap().outcome, InspectionOutcome::Fail);
    paper.says("after an accident or fire");
    paper.says("strap torn");
}

#[tokio::test]
async fn a_repair_that_fails_has_no_certificate_until_it_is_mended() {
    let round = Round::open(JobKind::Repair, Fuel::Lpg).await;
    let job = round.bay.job;
    round.vessel(job, "found", "T-8").await;
    round.arrive(job).await;
    round.checklist(job, &[]).await.goes_to();
    round.joints(job, "lpg-liquid", "leaks").await;
    round.joints(job, "lpg-vapour", "dry").await;
    round.exhaust(job, "petrol", "0.08").await;
    round.exhaust(job, "gas", "0.08").await;
    round.functions(job, "yes").await;
    round.sign(job).await.is(422).says("Something is still missing");
}

#[tokio::test]
async fn a_repair_of_the_low_pressure_side_ends_with_its_test_record() {
    let round = Round::open(JobKind::Repair, Fuel::Lpg).await;
    let job = round.bay.job;
    let mut tx = round.bay.shop.shop.db.write().await.unwrap();
    sqlx::query::<fuelwright::db::Db>("update jobs set is_low_pressure_only = 1 where id = $1")
        .bind(job)
        .execute(&mut *tx)
        .await
        .unwrap();
    tx.commit().await.unwrap();
    round.vessel(job, "found", "T-9").await;
    round.all_in_order(job).await;
    round.vera.get(&round.bay.at("papers")).await.says("ends with its test record");
    round.sign(job).await.is(422).says("no certificate is issued");
    round.hand_over(job).await.goes_to();
    let mut con = round.bay.shop.shop.db.read().await.unwrap();
    let row = db::jobs::find(&mut con, round.bay.shop.branch, job).await.unwrap().unwrap();
    assert_eq!(row.state.to_string(), "handed-over");
}

#[tokio::test]
async fn every_kind_is_replaced_withdrawn_and_listed_alike() {
    let round = Round::open(JobKind::Inspection, Fuel::Lpg).await;
    let job = round.bay.job;
    round.vessel(job, "found", "T-10").await;
    round.all_in_order(job).await;
    round.deficiencies(job, &[], &[]).await.goes_to();
    let (first, _) = round.issued(job).await;
    let old = first.paper.id.to_string();
    let sent = [
        ("password", PASSWORD),
        ("supersedes", old.as_str()),
        ("supersedes_reason", "odometer misread"),
        ("photos_seen", "odometer"),
        ("photos_seen", "vin-plate"),
    ];
    let to = round.vera.post(&round.bay.at("papers"), &sent).await.goes_to();
    round.jon.get(&to).await.is(200).says("I-2026-0002");
    let withdrawal = format!("{to}/withdrawal");
    round.vera.post(&withdrawal, &[("reason", "wrong vehicle"), ("password", PASSWORD)]).await.goes_to();
    let stranger = round.bay.shop.stranger();
    stranger.get(&format!("/verify/{}", first.paper.code)).await.says("Superseded");
    let id = to.rsplit('/').next().unwrap().parse().unwrap();
    let second = round.bay.shop.shop.find_paper(round.bay.shop.branch, id).await.unwrap().unwrap();
    assert_eq!(second.standing, Standing::Withdrawn);
    stranger.get(&format!("/verify/{}", second.paper.code)).await.says("The shop took I-2026-0002 back");
    let list = round.bay.shop.shop.standing_list(round.bay.shop.branch).await.unwrap();
    let text = String::from_utf8(list.content().to_vec()).unwrap();
    for wanted in ["I-2026-0001", "I-2026-0002", "inspection", "withdrawn", "superseded"] {
        assert!(text.contains(wanted), "{wanted}: {text}");
    }
}
