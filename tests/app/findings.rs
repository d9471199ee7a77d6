//! Findings: opened in a job, decided once, with a reason.

use fuelwright::db;

use crate::job_support::Bay;

#[tokio::test]
async fn a_finding_is_open_until_it_is_decided_and_then_stays_decided() {
    let job = Bay::lpg().await;
    let (jon, vera) = (job.shop.technician().await, job.shop.signatory().await);
    jon.get(&job.at("findings")).await.is(200).says("No finding");
    jon.post(&job.at("findings"), &[("text", "Seat belt frayed")]).await.is(422).says("Seat belt frayed");
    let fields = [("text", "Seat belt frayed"), ("source", "seen at intake")];
    jon.post(&job.at("findings"), &fields).await.goes_to();
    let mut con = job.shop.shop.db.read().await.unwrap();
    let found = db::findings::list(&mut con, job.job).await.unwrap();
    assert!(found.len() == 1 && found[0].is_open());
    let at = format!("/findings/{}", found[0].id);
    vera.post(&format!("{at}/decision"), &[("decision", " ")]).await.is(422);
    vera.post(&format!("{at}/decision"), &[("decision", "Belt changed, customer told")]).await.goes_to();
    let late = jon.post(&format!("{at}/decision"), &[("decision", "Leave it")]).await;
    late.is(422).says("Belt changed, customer told").says("Leave it");
    jon.get(&job.at("findings")).await.says("Belt changed, customer told");
}

#[tokio::test]
async fn a_finding_sent_twice_is_one() {
    let job = Bay::lpg().await;
    let jon = job.shop.technician().await;
    let key = uuid::Uuid::now_v7().to_string();
    let fields = [("text", "Exhaust blows"), ("source", "heard"), ("key", key.as_str())];
    jon.post(&job.at("findings"), &fields).await.goes_to();
    jon.post(&job.at("findings"), &fields).await.goes_to();
    let mut con = job.shop.shop.db.read().await.unwrap();
    assert_eq!(db::findings::list(&mut con, job.job).await.unwrap().len(), 1);
}
