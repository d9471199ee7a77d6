//! The one box.

use fuelwright::model::job::{Fuel, JobKind, NewJob, SystemKind};
use fuelwright::model::vehicle::VehicleRole;

use crate::books::{customer, vehicle};
use crate::support::TestShop;

#[tokio::test]
async fn what_is_meant_beyond_doubt_is_opened_at_once() {
    let open = TestShop::open().await;
    let who = open.actor(open.mara).await;
    let ana = open.shop.add_customer(&who, None, customer("Ana Reyes", "01632 960142")).await.unwrap();
    let bo = open.shop.add_customer(&who, None, customer("Bo Reyes", "01632 960199")).await.unwrap();
    let people = vec![(VehicleRole::Keeper, ana)];
    let car =
        open.shop.add_vehicle(&who, None, vehicle("NM 47 KTR", "1M8GDM9AXKP042788"), false, people).await.unwrap();
    let other = vehicle("NM 47 KTX", "");
    open.shop.add_vehicle(&who, None, other, false, vec![]).await.unwrap();
    let job = NewJob {
        kind: JobKind::Inspection,
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
    let (car, ana, bo, job) =
        (format!("/vehicles/{car}"), format!("/customers/{ana}"), format!("/customers/{bo}"), format!("/jobs/{job}"));
    for (q, to) in [
        ("nm47ktr", &car),
        ("NM+47-KTR", &car),
        ("1m8gdm9axkp042788", &car),
        ("01632+960+142", &ana),
        ("bo", &bo),
        ("2026-0001", &job),
    ] {
        assert_eq!(&desk.get(&format!("/search?q={q}")).await.goes_to(), to, "{q}");
    }
    desk.get("/search?q=nm47").await.is(200).says("NM 47 KTR").says("NM 47 KTX");
    desk.get("/search?q=reyes").await.is(200).links_to(&ana).links_to(&bo);
    desk.get("/search?q=zebra").await.is(200).says("Nothing is found by “zebra”");
    desk.get("/search?q=%25").await.is(200).says("Nothing is found");
    desk.get("/search").await.is(200).says("The box above");
    desk.get(&format!("/search?q={}", "x".repeat(5_000))).await.is(200);
}
