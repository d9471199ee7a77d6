//! A job waits, goes on, is cancelled or leaves without a certificate.

use fuelwright::model::job::{Fuel, JobKind, JobState};
use fuelwright::rules::{self, RuleBook};
use time::OffsetDateTime;

use crate::job_support::Bay;

#[tokio::test]
async fn a_job_is_held_with_a_reason_and_goes_on() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("ending"), bay.shop.technician().await);
    jon.get(&at).await.is(200).says("Put on hold");
    jon.post(&bay.at("hold"), &[("hold_reason", "")]).await.is(422);
    let key = uuid::Uuid::now_v7().to_string();
    let fields = [("hold_reason", "waits for the multivalve"), ("key", key.as_str())];
    jon.post(&bay.at("hold"), &fields).await.goes_to();
    jon.post(&bay.at("hold"), &fields).await.goes_to();
    assert_eq!(bay.file().await.job.state, JobState::Held);
    jon.get(&at).await.says("On hold: waits for the multivalve").says("Go on with the work");
    jon.post(&bay.at("hold"), &[("hold_reason", "again")]).await.is(403);
    jon.post(&bay.at("hold/end"), &[]).await.goes_to();
    assert_eq!(bay.file().await.job.state, JobState::Open);
    jon.get(&at).await.says("Was on hold");
    jon.post(&bay.at("hold/end"), &[]).await.is(403);
}

#[tokio::test]
async fn a_release_asks_for_reason_gas_and_name_and_keeps_what_was_typed() {
    let bay = Bay::lpg().await;
    let (at, mara) = (bay.at("release"), bay.shop.desk().await);
    let page = mara.post(&at, &[("release_reason", "customer needs the car"), ("signed_by", "Ana Marrow")]).await;
    page.is(422).says("Release without certificate");
    assert_eq!(page.field("release_reason").as_deref(), Some("customer needs the car"));
    assert_eq!(bay.file().await.job.state, JobState::Open);
    let fields =
        [("release_reason", "customer needs the car"), ("is_gas_shut_off", "yes"), ("signed_by", "Ana Marrow")];
    let to = mara.post(&at, &fields).await.goes_to();
    let to = mara.get(&to).await.goes_to();
    mara.get(&to).await.says("Released without certificate: customer needs the car (Ana Marrow)");
    let job = bay.file().await.job;
    assert_eq!((job.state, job.is_gas_shut_off), (JobState::Released, Some(true)));
    mara.get(&bay.at("ending")).await.says("This job has ended").hides("Why it is cancelled");
    mara.post(&at, &fields).await.is(409);
}

#[tokio::test]
async fn a_cancelled_job_takes_no_more() {
    let bay = Bay::lpg().await;
    let mara = bay.shop.desk().await;
    mara.post(&bay.at("cancellation"), &[]).await.is(422);
    mara.post(&bay.at("cancellation"), &[("cancel_reason", "customer went abroad")]).await.goes_to();
    assert_eq!(bay.file().await.job.state, JobState::Cancelled);
    mara.post(&bay.at("hold"), &[("hold_reason", "x")]).await.is(409);
    let odo = bay.shop.auditor().await;
    odo.get(&bay.at("ending")).await.is(200).says("customer went abroad");
    odo.post(&bay.at("cancellation"), &[("cancel_reason", "x")]).await.is(403);
}

#[tokio::test]
async fn no_vehicle_is_handed_over_while_a_proof_is_open() {
    let bay = Bay::lpg().await;
    let vera = bay.shop.signatory().await;
    vera.get(&bay.at("ending")).await.hides("Hand over with certificate");
    vera.post(&bay.at("ending"), &[]).await.is(409).says("Leak test, LPG vapour side");
    assert_eq!(bay.file().await.job.state, JobState::Open);
}

#[tokio::test]
async fn a_job_with_every_proof_settled_still_needs_its_certificate() {
    let bay = Bay::open(JobKind::Removal, Fuel::Lpg).await;
    let vera = bay.shop.signatory().await;
    // The one thing here that nobody may waive.
    let dry = [("measured_at", "2026-05-12T10:20"), ("answers[petrol-joints][answer]", "pass")];
    vera.post(&bay.at("checklist"), &dry).await.goes_to();
    let book = RuleBook::shipped().unwrap();
    let day_of = |at: OffsetDateTime| at.date();
    let proofs = rules::assess(&bay.file().await, &book, bay.shop.clock.now().date(), &day_of);
    for proof in proofs.iter().filter(|proof| !proof.state.is_settled()) {
        let at = bay.at(&format!("waivers/{}", proof.id));
        let page = vera.post(&at, &[("kind", "waived"), ("reason", "nothing left on the vehicle")]).await;
        if proof.is_never_waived {
            page.is(403);
        }
    }
    let open: Vec<_> = proofs.iter().filter(|proof| proof.is_never_waived && !proof.state.is_settled()).collect();
    assert!(open.is_empty(), "{open:?}");
    vera.get(&bay.at("ending")).await.says("Hand over with certificate");
    vera.post(&bay.at("ending"), &[]).await.is(403);
    assert_eq!(bay.file().await.job.state, JobState::Open);
}
