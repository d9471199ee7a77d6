//! Periodic inspections from arrival to the paper: pass, minor, fail; cut short by danger; repeated; ended by a repair.

use fuelwright::db;
use fuelwright::model::job::{Fuel, JobKind, JobState};
use fuelwright::model::paper::certificate::{ExceptionKind, InspectionOutcome};
use fuelwright::rules::State;
use fuelwright::shop::rule_files::NewRuleFile;
use time::Duration;
use time::macros::date;

use crate::round::{Round, job_of};
use crate::support::PASSWORD;

#[tokio::test]
async fn a_system_fitted_by_others_passes_and_the_paper_claims_no_part_of_it() {
    let round = Round::open(JobKind::Inspection, Fuel::Lpg).await;
    let job = round.bay.job;
    round.vessel(job, "found", "T-9001").await;
    round.all_in_order(job).await;
    round.jon.get(&round.bay.at("parts")).await.says("found on the vehicle, looked at 12 May 2026");
    let held = round.vera.get(&round.bay.at("papers")).await;
    held.is(200).says("No result yet").says("Still to record: Deficiencies listed");
    round.deficiencies(job, &[], &[]).await.goes_to();
    round.vera.get(&round.bay.at("papers")).await.says("Pass").says("Photos seen");

    // Neither without looking at the photos nor without the secret.
    let unseen = round.vera.post(&round.bay.at("papers"), &[("password", PASSWORD), ("photos_seen", "odometer")]).await;
    unseen.is(422).says("Look at each photo that the rules ask for, and tick it");
    let (found, paper) = round.issued(job).await;
    assert_eq!(found.paper.number, "I-2026-0001");
    let said = found.content.inspection.as_ref().unwrap();
    assert_eq!(said.outcome, InspectionOutcome::Pass);
    assert!(found.content.containers[0].is_found);
    assert_eq!(
        found.content.photos_seen.len(),
        2,
        "the slots that the rules ask for, and that hold something: {:?}",
        found.content.photos_seen
    );
    paper.says("✓ Pass");
    paper.says("No deficiencies were found");
    paper.says("found on the vehicle");
    paper.says("periodic inspection");
    paper.says("Photos seen by the signatory before signing: Odometer, VIN plate");
    round.hand_over(job).await.goes_to();
}

#[tokio::test]
async fn minor_deficiencies_pass_and_a_class_sets_the_least_severity() {
    let round = Round::open(JobKind::Inspection, Fuel::Lpg).await;
    let job = round.bay.job;
    round.vessel(job, "found", "T-9002").await;
    round.all_in_order(job).await;
    let milder = round.deficiencies(job, &[["", "6.1.3 f", "minor", "hose at the rail"]], &[]).await;
    milder.is(422).says("This class is at least dangerous");
    assert_eq!(milder.field("found[0][words]").as_deref(), Some("hose at the rail"), "what was typed is kept");
    let unknown = round.deficiencies(job, &[["leak-cng-high", "", "minor", "x"]], &[]).await;
    unknown.is(422).says("Choose one of the answers");
    let shut = round.deficiencies(job, &[["", "6.1.3 f", "dangerous", "hose at the rail"]], &[]).await;
    shut.is(422).says("say whether the gas is shut off");
    round.deficiencies(job, &[["check:line-clips", "6.1.3 c", "minor", "clip missing"]], &[]).await.goes_to();
    let (found, paper) = round.issued(job).await;
    assert_eq!(found.content.inspection.unwrap().outcome, InspectionOutcome::PassWithMinor);
    paper.says("◐ Pass, with minor deficiencies");
    paper.says("6.1.3 c · Lines clipped");
    paper.says("clip missing");
}

#[tokio::test]
async fn a_fail_rests_on_what_failed_and_never_on_what_is_missing() {
    let round = Round::open(JobKind::Inspection, Fuel::Lpg).await;
    let job = round.bay.job;
    round.vessel(job, "found", "T-9003").await;
    round.arrive(job).await;
    round.checklist(job, &[("clear-exhaust", "60 mm, no shield")]).await.goes_to();
    round.joints(job, "lpg-liquid", "dry").await;
    round.joints(job, "lpg-vapour", "leaks").await;
    round.exhaust(job, "petrol", "0.08").await;
    round.functions(job, "yes").await;
    round.deficiencies(job, &[], &[]).await.goes_to();
    // The exhaust on gas is not measured: no paper, whatever failed.
    round.sign(job).await.is(422).says("Something is still missing");
    let refused = round.vera.post(&round.bay.at("waivers/clearances"), &[("kind", "waived"), ("reason", "x")]).await;
    refused.is(403);
    // Far over the limit.
    round.exhaust(job, "gas", "2.4").await;
    round.vera.get(&round.bay.at("papers")).await.says("Fail").says("major: Clearances");
    let (found, paper) = round.issued(job).await;
    let said = found.content.inspection.as_ref().unwrap();
    assert_eq!(said.outcome, InspectionOutcome::Fail);
    assert_eq!(said.present_again_by_on, Some(date!(2026 - 07 - 12)));
    assert_eq!(said.to_repeat, ["clearances", "leak-lpg-vapour", "exhaust-gas"]);
    let failed = found.content.proofs.exceptions.iter().filter(|one| one.kind == ExceptionKind::Failed).count();
    assert_eq!(failed, 3);
    assert!(!found.content.conformity[0].is_met);
    paper.says("✕ Fail");
    paper.says("brought again by 12 July 2026");
    paper.says("✕ fails");
    paper.says("60 mm, no shield");
    paper.says("✕ failed");
    let verified = round.jon.get(&format!("/verify/{}", found.paper.code)).await;
    verified.says("Result").says("Fail");

    // It is handed over with its fail; the duty is to come again, and nothing that passed is closed by it.
    round.hand_over(job).await.goes_to();
    let mut con = round.bay.shop.shop.db.read().await.unwrap();
    let duties = db::duties::list_of_vehicle(&mut con, round.bay.shop.branch, round.bay.vehicle).await.unwrap();
    let open: Vec<_> = duties.iter().filter(|one| one.closed_at.is_none()).map(|one| one.line.as_str()).collect();
    assert_eq!(open, ["present-again"]);
}

#[tokio::test]
async fn danger_cuts_the_tests_short_and_the_paper_says_what_was_not_tested() {
    let round = Round::open(JobKind::Inspection, Fuel::Cng).await;
    let job = round.bay.job;
    round.vessel(job, "found", "CY-1").await;
    round.arrive(job).await;
    round.checklist(job, &[]).await.goes_to();
    round.joints(job, "cng-high", "leaks").await;
    let rows = [["leak-cng-high", "6.1.3 f", "dangerous", "valve of the cylinder leaks"]];
    let no_reason = round.deficiencies(job, &rows, &[("is_gas_shut_off", "yes")]).await;
    no_reason.goes_to();
    round.sign(job).await.is(422);
    let entry = round.bay.file().await.entry("deficiencies", "").unwrap().id.to_string();
    let rest = [
        ("is_gas_shut_off", "yes"),
        ("not_tested_reason", "the engine is not run with a leak at the cylinder"),
        ("replaces_id", entry.as_str()),
        ("replaces_reason", "reason given"),
    ];
    round.deficiencies(job, &rows, &rest).await.goes_to();
    let (found, paper) = round.issued(job).await;
    let left = found.content.proofs.exceptions.iter().filter(|one| one.kind == ExceptionKind::NotTested).count();
    assert!(left >= 7, "{:?}", found.content.proofs.exceptions);
    paper.says("✕ Fail");
    paper.says("○ not tested");
    paper.says("the engine is not run with a leak at the cylinder");
    paper.says("do not drive the vehicle");
    paper.says("Gas shut off yes");
}

#[tokio::test]
async fn a_repeat_within_its_term_looks_at_what_failed_alone_where_the_rules_allow_it() {
    let round = Round::open(JobKind::Inspection, Fuel::Lpg).await;
    let (job, open) = (round.bay.job, &round.bay.shop);
    let text = "name = \"shop\"\nversion = \"2\"\ntitle = \"Shop lines\"\nis_shop = true\nretest = { months = 1, only_failed = true, source = \"authority letter 7\", checked = true }\n";
    let from_on = date!(2026 - 05 - 12);
    let new = NewRuleFile { name: "shop".into(), text: text.into(), from_on, opened_at: None, second: None };
    open.shop.change_rules(&open.actor(open.ilse).await, None, new).await.unwrap();
    round.vessel(job, "found", "T-9004").await;
    round.all_in_order(job).await;
    let entry = round.bay.file().await.entry("function-checks", "").unwrap().id.to_string();
    assert!(!entry.is_empty());
    let rows = [["check:line-hoses", "6.1.3 c", "major", "hose cracked"]];
    round.deficiencies(job, &rows, &[]).await.goes_to();
    let (first, paper) = round.issued(job).await;
    assert_eq!(first.content.inspection.as_ref().unwrap().outcome, InspectionOutcome::Fail);
    paper.says("authority letter 7");
    round.jon.get(&round.bay.at("repeat")).await.is(200).says("only what failed is looked at again");

    let next = job_of(&round.jon.post(&round.bay.at("repeat"), &[]).await.goes_to());
    round.jon.post(&round.bay.at("repeat"), &[]).await.is(403);
    let page = round.jon.get(&format!("/jobs/{next}/repeat")).await;
    page.is(200).says("Repeats I-2026-0001 of 12 May 2026");
    let form = round.jon.get(&format!("/jobs/{next}/deficiencies")).await;
    assert!(form.field("found[0][words]").unwrap().contains("hose cracked"), "what failed stands there to be cleared");
    round.bay.shop.clock.advance(Duration::minutes(20));
    // Vehicle, photos and odometer again; nothing of what was in order.
    round.arrive_later(next).await;
    round.deficiencies_at(next, "2026-05-12T10:50").await.goes_to();
    let (second, paper) = round.issued(next).await;
    let said = second.content.inspection.as_ref().unwrap();
    assert_eq!((said.outcome, said.repeats_number.as_str()), (InspectionOutcome::Pass, "I-2026-0001"));
    assert_eq!(said.kind_of_test, "repeat");
    paper.says("I-2026-0001 of 12 May 2026");
    paper.says("repeat of an inspection");
    paper.says("What was in order then was not looked at again");
}

#[tokio::test]
async fn without_such_a_rule_or_after_the_term_a_repeat_is_a_whole_inspection() {
    let round = Round::open(JobKind::Inspection, Fuel::Lpg).await;
    let job = round.bay.job;
    round.vessel(job, "found", "T-9005").await;
    round.all_in_order(job).await;
    round.jon.post(&round.bay.at("repeat"), &[]).await.is(403);
    round.deficiencies(job, &[["", "6.1.3 a", "major", "strap loose"]], &[]).await.goes_to();
    round.issued(job).await;
    let next = job_of(&round.jon.post(&round.bay.at("repeat"), &[]).await.goes_to());
    let page = round.jon.get(&format!("/jobs/{next}/repeat")).await;
    page.says("A whole inspection after I-2026-0001");
    let held = round.vera.get(&format!("/jobs/{next}/papers")).await;
    held.says("Leak test, LPG liquid side").says("Exhaust on gas");
}

#[tokio::test]
async fn where_a_repair_restarts_it_ends_the_inspection_and_a_new_one_quotes_it() {
    let round = Round::open(JobKind::Inspection, Fuel::Lpg).await;
    let (job, open) = (round.bay.job, &round.bay.shop);
    round.jon.post(&round.bay.at("repair"), &[("repaired", "hose renewed")]).await.is(403);
    let text = "name = \"shop\"\nversion = \"2\"\ntitle = \"Shop lines\"\nis_shop = true\nrepair_restarts = { source = \"StVZO Annex VIII 3.1.1.2\", checked = true }\n";
    let from_on = date!(2026 - 05 - 12);
    let new = NewRuleFile { name: "shop".into(), text: text.into(), from_on, opened_at: None, second: None };
    open.shop.change_rules(&open.actor(open.ilse).await, None, new).await.unwrap();
    round.vessel(job, "found", "T-9006").await;
    let hose = [
        ("category", "hose"),
        ("maker", "Dunmere"),
        ("type_name", "H 8"),
        ("batch", "26-1"),
        ("fitted_on", "2026-05-12"),
        ("origin", "fitted"),
    ];
    round.jon.post(&round.bay.at("parts"), &hose).await.is(403).says("End it by a repair first");
    round.jon.post(&round.bay.at("repair"), &[("repaired", "")]).await.is(422);
    let next = job_of(&round.jon.post(&round.bay.at("repair"), &[("repaired", "hose renewed")]).await.goes_to());
    let first = round.bay.file().await;
    assert_eq!((first.job.state, first.job.ended_reason.as_str()), (JobState::Cancelled, "hose renewed"));
    let page = round.jon.get(&format!("/jobs/{next}/repeat")).await;
    page.is(200).says(&format!("A whole inspection after job {}, which a repair ended", first.job.number));
}

#[tokio::test]
async fn a_vessel_whose_plate_cannot_be_read_fails_and_is_not_missing_for_ever() {
    let round = Round::open(JobKind::Inspection, Fuel::Cng).await;
    let job = round.bay.job;
    let unreadable = [
        ("category", "cylinder"),
        ("maker", "not readable"),
        ("type_name", "steel"),
        ("fitted_on", "2026-05-12"),
        ("origin", "found"),
    ];
    round.jon.post(&round.bay.at("parts"), &unreadable).await.goes_to();
    assert_eq!(round.bay.proof("storage-in-date").await.state, State::Missing);
    round.checklist(job, &[("parts-readable", "plate rusted away")]).await.goes_to();
    let proof = round.bay.proof("storage-in-date").await;
    assert_eq!((proof.state, proof.has_failed, proof.why.key), (State::Stops, true, "plate-unreadable"));
}

#[tokio::test]
async fn who_measured_does_not_sign_where_four_eyes_are_asked() {
    let round = Round::open(JobKind::Inspection, Fuel::Lpg).await;
    let (job, open) = (round.bay.job, &round.bay.shop);
    round.vessel(job, "found", "T-9007").await;
    round.all_in_order(job).await;
    let list = [("measured_at", "2026-05-12T10:30")];
    round.vera.post(&round.bay.at("deficiencies"), &list).await.goes_to();
    let manager = open.manager().await;
    manager.get("/office/shop").await.is(200).says("Four eyes");
    manager.post("/office/four-eyes", &[("four_eyes", "yes")]).await.goes_to();
    open.technician().await.post("/office/four-eyes", &[("four_eyes", "no")]).await.is(403);
    round.sign(job).await.is(422).says("Who measured does not sign for it");
    manager.post("/office/four-eyes", &[("four_eyes", "no")]).await.goes_to();
    round.issued(job).await;
}
