//! The job ends with a certificate: duties begin, and on their day the reminder lies in the Outbox.

use fuelwright::db;
use fuelwright::model::customer::ReminderBasis;
use fuelwright::model::duty::DutyKind;
use fuelwright::model::job::JobState;
use fuelwright::shop::Refusal;
use time::macros::date;

use crate::support::TestShop;

#[tokio::test]
async fn a_vehicle_leaves_with_a_certificate_or_not_by_this_door() {
    let open = TestShop::open().await;
    let told = open.told().await;
    let refused = open.shop.hand_over(&told.jon, None, told.job).await;
    assert!(matches!(refused, Err(Refusal::MayNot("refused-no-certificate"))), "{refused:?}");
    let vera = open.actor(open.vera).await;
    open.shop.issue_certificate(&vera, None, told.job, crate::told::seen()).await.unwrap();
    let duties = open.shop.hand_over(&told.jon, None, told.job).await.unwrap();
    assert_eq!(duties, 3, "first check, filter, container");
    let mut con = open.shop.db.read().await.unwrap();
    let file = db::job_files::find(&mut con, open.branch, told.job).await.unwrap().unwrap();
    assert_eq!(file.job.state, JobState::HandedOver);
    assert_eq!(file.keeper.reminder_basis, ReminderBasis::Consent);
    let duties = db::duties::list_of_vehicle(&mut con, open.branch, file.vehicle.id).await.unwrap();
    let first = duties.iter().find(|duty| duty.kind == DutyKind::FirstCheck).unwrap();
    assert_eq!(first.due_on, date!(2026 - 07 - 12));
    let container = duties.iter().find(|duty| duty.kind == DutyKind::Container).unwrap();
    assert_eq!(container.due_on, date!(2036 - 03 - 31), "ten years from its month, on the month's last day");
    let again = open.shop.hand_over(&told.jon, None, told.job).await;
    assert!(matches!(again, Err(Refusal::Ended(_))), "{again:?}");
}

#[tokio::test]
async fn the_odometer_at_arrival_is_a_reading_and_a_lower_one_is_asked() {
    let open = TestShop::open().await;
    let opened = open.opened().await;
    let technician = open.technician().await;
    let form = format!("/jobs/{}/arrival", opened.job);
    let at = [("odometer", "128430 km"), ("measured_at", "2026-05-12T10:00")];
    technician.post(&form, &at).await.goes_to();
    let mut con = open.shop.db.read().await.unwrap();
    let file = db::job_files::find(&mut con, open.branch, opened.job).await.unwrap().unwrap();
    assert_eq!(file.readings.last().unwrap().km, 128_430);
}
