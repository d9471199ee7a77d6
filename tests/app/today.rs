//! The opening screen and the list of jobs.

use fuelwright::model::job::{Fuel, JobKind, NewJob, SystemKind};
use fuelwright::model::vehicle::VehicleRole;
use fuelwright::shop::jobs::Release;
use time::Duration;

use crate::books::{customer, vehicle};
use crate::support::TestShop;

#[tokio::test]
async fn an_empty_shop_says_so_and_names_the_act_that_fills_it() {
    let open = TestShop::open().await;
    let page = open.desk().await.get("/").await;
    page.is(200).says("No vehicle is in the shop").says("Nothing is stuck").says("Nothing falls due");
    page.says("Nothing waits for a signature").links_to("/arrivals/new");
    page.says("papers carry code, phone and fingerprint");
    open.manager().await.get("/").await.says("The shop has no bay yet").links_to("/bay-plan/bays");
    open.desk().await.get("/jobs").await.is(200).says("No job is open");
}

#[tokio::test]
async fn a_job_stands_in_the_shop_then_stuck_with_its_reason_and_how_long() {
    let open = TestShop::open().await;
    let (who, bench) = (open.actor(open.mara).await, open.actor(open.jon).await);
    let ana = open.shop.add_customer(&who, None, customer("Ana Reyes", "1")).await.unwrap();
    let people = vec![(VehicleRole::Keeper, ana)];
    let new = vehicle("NM 47 KTR", "1M8GDM9AXKP042788");
    let car = open.shop.add_vehicle(&who, None, new, false, people).await.unwrap();
    let job = NewJob {
        kind: JobKind::Conversion,
        fuel: Fuel::Lpg,
        system_kind: SystemKind::VapourInjection,
        vehicle_id: car,
        keeper_id: ana,
        bay_id: None,
        is_low_pressure_only: false,
        comes_back_from: None,
        reported_faults: String::new(),
    };
    let job = open.shop.open_job(&who, None, job).await.unwrap();
    let desk = open.desk().await;
    desk.get("/").await.says("NM 47 KTR Intake just now").says("Nothing is stuck").links_to(&format!("/jobs/{job}"));
    open.shop.begin_hold(&bench, None, job, "Waits for the container".into()).await.unwrap();
    open.clock.advance(Duration::days(2));
    let desk = open.desk().await;
    desk.get("/").await.says("NM 47 KTR Waits for the container 2 days");
    desk.get("/jobs?state=held").await.says("On hold: Waits for the container");
    desk.get("/jobs?stage=intake").await.says("2026-0001");
    desk.get("/jobs?stage=proving").await.hides("2026-0001").says("No job is found");
    desk.get("/jobs?q=nm47ktr").await.says("2026-0001");
    desk.get("/jobs?q=reyes").await.says("2026-0001");
    desk.get("/jobs?q=0001").await.says("2026-0001");
    desk.get("/jobs?q=elsewhere").await.says("No job is found");
    // Gone without certificate: it stays on Today.
    let release = Release { reason: "Owner was in a hurry".into(), is_gas_shut_off: true, signed_by: String::new() };
    open.shop.release_job(&bench, None, job, release).await.unwrap();
    let page = desk.get("/").await;
    page.says("Left without certificate: Owner was in a hurry").says("No vehicle is in the shop");
    desk.get("/jobs").await.says("No job is open");
    desk.get("/jobs?state=ended").await.says("Released without certificate");
    desk.get(&format!("/vehicles/{car}")).await.says("Job 2026-0001, Conversion").links_to(&format!("/jobs/{job}"));
}
