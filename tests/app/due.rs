//! What falls due after a job, and the screen on which it is followed up.

use fuelwright::db;
use fuelwright::model::duty::{DueBy, DutyKind, NewDuty};
use fuelwright::model::evidence::{Entry, Evidence, FillStopHow, FunctionChecks};
use fuelwright::model::ids::{EvidenceId, JobId, PartId, VehicleId};
use fuelwright::model::job::{Fuel, JobKind, NewJob, SystemKind};
use fuelwright::model::job_file::JobFile;
use fuelwright::model::part::{DatePrecision, Part, PartCategory, PartOrigin};
use fuelwright::model::vehicle::{OdometerExplained, OdometerReading};
use fuelwright::rules::{RuleBook, intervals};
use time::macros::{date, datetime};
use time::{Date, Duration};

use crate::owed::{ANA, Keeper};
use crate::support::TestShop;

async fn job(open: &TestShop, vehicle: VehicleId, kind: JobKind, fuel: Fuel) -> JobId {
    let keeper_id = sqlx::query_scalar("select customer_id from vehicle_people where vehicle_id = $1")
        .bind(vehicle)
        .fetch_one(&mut *open.shop.db.read().await.unwrap())
        .await
        .unwrap();
    let new = NewJob {
        kind,
        fuel,
        system_kind: SystemKind::VapourInjection,
        vehicle_id: vehicle,
        keeper_id,
        bay_id: None,
        is_low_pressure_only: false,
        comes_back_from: None,
        reported_faults: String::new(),
    };
    open.shop.open_job(&open.actor(open.jon).await, None, new).await.unwrap()
}

async fn file(open: &TestShop, job: JobId) -> JobFile {
    let mut con = open.shop.db.read().await.unwrap();
    db::job_files::find(&mut con, open.branch, job).await.unwrap().unwrap()
}

async fn conversion(fuel: Fuel) -> (TestShop, JobFile) {
    let open = TestShop::open().await;
    let vehicle = open.vehicle_of(open.keeper(&ANA).await, "NM 47 KTR").await;
    let id = job(&open, vehicle, JobKind::Conversion, fuel).await;
    let file = file(&open, id).await;
    (open, file)
}

fn part(file: &JobFile, category: PartCategory, made: Option<(Date, DatePrecision)>) -> Part {
    Part {
        id: PartId::new(),
        vehicle_id: file.vehicle.id,
        fitted_in: file.job.id,
        removed_in: None,
        category,
        maker: "Halden".into(),
        type_name: "T-47".into(),
        approval_mark: String::new(),
        component_class: String::new(),
        serial: "1".into(),
        batch: String::new(),
        made_on: made.map(|(day, _)| day),
        made_precision: made.map(|(_, precision)| precision),
        capacity_l: Some(47.0),
        test_pressure_kpa: None,
        working_pressure_kpa: None,
        last_tested_on: None,
        end_of_life_on: None,
        place: String::new(),
        fitted_on: date!(2026 - 05 - 12),
        origin: PartOrigin::Fitted,
        removed_on: None,
        removed_reason: String::new(),
        whereabouts: String::new(),
        shared_reason: String::new(),
        entered_by: file.job.opened_by,
        entered_at: datetime!(2026-05-12 09:00 UTC),
        version: 1,
    }
}

fn read(on: Date, km: i64, explained: OdometerExplained) -> OdometerReading {
    OdometerReading { read_on: on, km, typed: km.to_string(), explained }
}

fn checks(file: &JobFile, how: FillStopHow) -> Entry {
    let body = Evidence::FunctionChecks(FunctionChecks {
        changeover_works: true,
        returns_when_empty: true,
        shut_off_ignition_s: Some(1.0),
        shut_off_stalled_s: Some(1.0),
        fill_stop_how: Some(how),
        fill_stop_l: None,
        fill_ticket: String::new(),
        level_shows: true,
        vent_is_open: true,
        excess_flow_present: true,
        starts_on_gas: None,
        label_in_place: true,
    });
    Entry {
        id: EvidenceId::new(),
        job_id: file.job.id,
        body,
        measured_at: datetime!(2026-05-12 09:00 UTC),
        recorded_at: datetime!(2026-05-12 09:00 UTC),
        person_id: file.job.opened_by,
        person_name: "Jon Aspen".into(),
        replaces_id: None,
        replaces_reason: String::new(),
        instruments: vec![],
        attachments: vec![],
    }
}

fn by_kind(duties: &[NewDuty], kind: DutyKind) -> &NewDuty {
    duties.iter().find(|duty| duty.kind == kind).unwrap_or_else(|| panic!("no {kind} in {duties:?}"))
}

const TODAY: Date = date!(2026 - 05 - 12);

#[tokio::test]
async fn a_conversion_starts_first_check_filter_and_container() {
    let (_open, mut file) = conversion(Fuel::Lpg).await;
    let made = Some((date!(2026 - 03 - 31), DatePrecision::Month));
    file.parts.push(part(&file, PartCategory::Container, made));
    file.evidence.push(checks(&file, FillStopHow::Later));
    let duties = intervals::duties(&file, &RuleBook::shipped().unwrap(), TODAY);
    // Two months; one year; 120 months from the month on the label, which ends on its last day.
    assert_eq!(by_kind(&duties, DutyKind::FirstCheck).due_on, date!(2026 - 07 - 12));
    assert_eq!(by_kind(&duties, DutyKind::Filter).due_on, date!(2027 - 05 - 12));
    let container = by_kind(&duties, DutyKind::Container);
    assert_eq!((container.due_on, container.part_id), (date!(2036 - 03 - 31), Some(file.parts[0].id)));
    assert!(!container.is_checked && container.source.contains("to be confirmed"));
    // A fill stop not shown yet is shown at the first check.
    assert_eq!(by_kind(&duties, DutyKind::FillStop).due_on, date!(2026 - 07 - 12));
    assert_eq!(duties.len(), 4);
}

#[tokio::test]
async fn a_distance_that_comes_first_decides_and_a_replaced_odometer_starts_afresh() {
    let (_open, mut file) = conversion(Fuel::Lpg).await;
    let plain = OdometerExplained::Plain;
    // 50 km a day: 1 500 km are 30 days, sooner than two months; 20 000 km are 400 days, later than a year.
    file.readings = vec![read(TODAY - Duration::days(100), 95_000, plain), read(TODAY, 100_000, plain)];
    let book = RuleBook::shipped().unwrap();
    let duties = intervals::duties(&file, &book, TODAY);
    let first = by_kind(&duties, DutyKind::FirstCheck);
    assert_eq!((first.due_on, first.due_km), (TODAY + Duration::days(30), Some(101_500)));
    assert_eq!(first.decided_by, DueBy::Distance);
    let filter = by_kind(&duties, DutyKind::Filter);
    assert_eq!((filter.due_on, filter.due_km, filter.decided_by), (date!(2027 - 05 - 12), Some(120_000), DueBy::Date));
    // The new instrument shows 40 km: what the old one said is no ground for a forecast, but the mark still stands.
    file.readings.push(read(TODAY, 40, OdometerExplained::Replaced));
    let duties = intervals::duties(&file, &book, TODAY);
    let first = by_kind(&duties, DutyKind::FirstCheck);
    assert_eq!((first.due_on, first.due_km, first.decided_by), (date!(2026 - 07 - 12), Some(1_540), DueBy::Date));
}

#[tokio::test]
async fn a_container_of_unknown_age_is_due_at_once_and_an_old_one_starts_nothing() {
    let (_open, mut file) = conversion(Fuel::Lpg).await;
    let book = RuleBook::shipped().unwrap();
    file.parts.push(part(&file, PartCategory::Container, None));
    assert_eq!(by_kind(&intervals::duties(&file, &book, TODAY), DutyKind::Container).due_on, TODAY);
    // Fitted in an earlier job: its duty runs already.
    file.parts[0].fitted_in = JobId::new();
    assert!(intervals::duties(&file, &book, TODAY).iter().all(|duty| duty.kind != DutyKind::Container));
    file.job.kind = JobKind::Removal;
    assert_eq!(intervals::duties(&file, &book, TODAY), []);
}

/// UN R110, Annex 3A: at least every 48 months.
#[tokio::test]
async fn each_cylinder_is_inspected_after_48_months() {
    let (_open, mut file) = conversion(Fuel::Cng).await;
    let made = Some((date!(2025 - 12 - 31), DatePrecision::Month));
    file.parts.push(part(&file, PartCategory::Cylinder, made));
    file.parts.push(part(&file, PartCategory::Cylinder, made));
    let duties = intervals::duties(&file, &RuleBook::shipped().unwrap(), TODAY);
    let of_cylinders: Vec<_> = duties.iter().filter(|duty| duty.kind == DutyKind::CylinderInspection).collect();
    assert_eq!(of_cylinders.len(), 2);
    assert!(of_cylinders.iter().all(|duty| duty.due_on == date!(2030 - 05 - 12) && duty.is_checked));
}

#[tokio::test]
async fn a_duty_is_closed_from_elsewhere_with_a_document_and_the_next_begins() {
    let open = TestShop::open().await;
    let vehicle = open.vehicle_of(open.keeper(&ANA).await, "NM 47 KTR").await;
    let id = open.owes(vehicle, DutyKind::Filter, "shop.filter", date!(2026 - 06 - 11)).await;
    let (desk, address) = (open.desk().await, format!("/due/{id}"));
    desk.get("/due").await.is(200).links_to(&address).says("NM 47 KTR").says("in 30 days").says("By mail");
    desk.get(&address).await.is(200).says("Ana Reyes").says("+44 1632 960177").says("Nobody was told yet.");
    let closing = format!("{address}/closing");
    let bare = desk.post(&closing, &[("how", "elsewhere"), ("met_on", "2026-05-11"), ("starts_next", "yes")]).await;
    bare.is(422).says("Nothing is entered here");
    assert_eq!(bare.field("met_on").as_deref(), Some("2026-05-11"));
    let future = desk.post(&closing, &[("how", "elsewhere"), ("met_on", "2027-05-11"), ("note", "invoice 12")]).await;
    future.is(422).says("in the future");
    let told =
        [("how", "elsewhere"), ("met_on", "2026-05-11"), ("note", "invoice 12, Eel Garage"), ("starts_next", "yes")];
    assert_eq!(desk.post(&closing, &told).await.goes_to(), address);
    desk.get(&address).await.says("Done elsewhere, not by us").says("invoice 12, Eel Garage");
    desk.post(&closing, &told).await.is(409);
    // The next filter counts from the day it was changed: twelve months.
    desk.get("/due?within=36500").await.says("11 May 2027").hides("11 Jun 2026");
    desk.get("/due?show=ended").await.links_to(&address);
}

#[tokio::test]
async fn scrapped_ends_everything_of_that_vehicle_and_nothing_else() {
    let open = TestShop::open().await;
    let ana = open.keeper(&ANA).await;
    let (car, van) = (open.vehicle_of(ana, "NM 47 KTR").await, open.vehicle_of(ana, "NM 12 VAN").await);
    let filter = open.owes(car, DutyKind::Filter, "shop.filter", date!(2026 - 06 - 11)).await;
    open.owes(car, DutyKind::Container, "shop.container", date!(2026 - 07 - 31)).await;
    open.owes(van, DutyKind::Filter, "shop.filter", date!(2026 - 06 - 20)).await;
    let desk = open.desk().await;
    let closing = [("how", "scrapped"), ("met_on", "2026-05-12"), ("starts_next", "yes")];
    desk.post(&format!("/due/{filter}/closing"), &closing).await.goes_to();
    desk.get("/due?within=36500").await.says("NM 12 VAN").hides("NM 47 KTR").says("1 duty, 0 overdue");
}

#[tokio::test]
async fn who_cannot_be_written_to_is_on_the_call_list_until_the_duty_is_closed() {
    let open = TestShop::open().await;
    let silent = open.keeper(&Keeper { name: "Cy Holt", basis: "none", ..ANA }).await;
    let quiet = open.vehicle_of(silent, "NM 1 CY").await;
    let near = open.owes(quiet, DutyKind::Filter, "shop.filter", date!(2026 - 05 - 30)).await;
    open.owes(quiet, DutyKind::Container, "shop.container", date!(2026 - 09 - 30)).await;
    let told = open.vehicle_of(open.keeper(&ANA).await, "NM 47 KTR").await;
    let over = open.owes(told, DutyKind::Filter, "shop.filter", date!(2026 - 04 - 27)).await;
    let desk = open.desk().await;
    let list = desk.get("/due?show=calls").await;
    list.is(200).links_to(&format!("/due/{near}")).links_to(&format!("/due/{over}")).says("2 duties, 1 overdue");
    list.says("No consent or other ground: call");
    let calls = format!("/due/{near}/calls");
    desk.post(&calls, &[("outcome", ""), ("said", "rang twice")]).await.is(422).says("rang twice");
    desk.post(&calls, &[("outcome", "no-answer"), ("said", "rang twice")]).await.goes_to();
    desk.get("/due?show=calls").await.says("Nobody answered");
    desk.get(&format!("/due/{near}")).await.says("Nobody answered: rang twice").says("Mara Lind");
    // An auditor reads without phone numbers, and changes nothing.
    let auditor = open.auditor().await;
    auditor.get(&format!("/due/{near}")).await.is(200).hides("960177").hides("End this duty");
    auditor.post(&calls, &[("outcome", "reached")]).await.is(403);
}

#[tokio::test]
async fn another_branchs_duty_is_not_there() {
    let open = TestShop::open().await;
    let vehicle = open.vehicle_of(open.keeper(&ANA).await, "NM 47 KTR").await;
    let id = open.owes(vehicle, DutyKind::Filter, "shop.filter", date!(2026 - 06 - 11)).await;
    let mut tx = open.shop.db.write().await.unwrap();
    db::branches::insert(&mut tx, &crate::support::branch("Fenland Autogas")).await.unwrap();
    sqlx::query("update duties set branch_id = (select id from branches where name = 'Fenland Autogas')")
        .execute(&mut *tx)
        .await
        .unwrap();
    tx.commit().await.unwrap();
    let desk = open.desk().await;
    desk.get("/due").await.is(200).hides("NM 47 KTR");
    desk.get(&format!("/due/{id}")).await.is(404);
    desk.post(&format!("/due/{id}/closing"), &[("how", "scrapped"), ("met_on", "2026-05-12")]).await.is(404);
    desk.post(&format!("/due/{id}/calls"), &[("outcome", "reached")]).await.is(404);
}

fn stacked(name: &str) -> RuleBook {
    RuleBook::stacked(&["un-baseline", name, "shop"]).unwrap()
}

/// StVZO 41a(5); Belgian guidance: within 30 days; Turkish Official Gazette of 24 June 2017.
#[tokio::test]
async fn an_authoritys_test_or_paper_falls_due_by_the_set_of_its_country() {
    let (_open, mut file) = conversion(Fuel::Lpg).await;
    let of = |file: &JobFile, name, kind| {
        let duties = intervals::duties(file, &stacked(name), TODAY);
        duties.into_iter().find(|duty| duty.kind == kind).map(|duty| (duty.line, duty.due_on))
    };
    let test = DutyKind::AuthorityTest;
    assert_eq!(of(&file, "de-stvzo", test), Some(("de.gas.fit".to_owned(), TODAY)));
    assert_eq!(of(&file, "be", test), Some(("be.fit".to_owned(), date!(2026 - 06 - 11))));
    assert_eq!(of(&file, "tr", DutyKind::AuthorityPaper), Some(("tr.refit".to_owned(), TODAY)));
    assert_eq!(of(&file, "nl", test), None);
    file.job.kind = JobKind::Repair;
    assert_eq!(of(&file, "de-stvzo", test), Some(("de.gas.repair".to_owned(), TODAY)));
    assert_eq!(of(&file, "be", test), None);
    file.job.is_low_pressure_only = true;
    assert_eq!(of(&file, "de-stvzo", test), None, "its leak and function tests are asked as proofs");
}

/// 49 CFR 571.304 S7.4(g): 36 months or 36 000 miles to 4 536 kg, 12 months above; the UN 48 months come later.
#[tokio::test]
async fn of_several_lines_the_earliest_counts_and_a_mass_that_is_not_known_is_the_heavy_one() {
    let (_open, mut file) = conversion(Fuel::Cng).await;
    file.parts.push(part(&file, PartCategory::Cylinder, Some((date!(2026 - 01 - 31), DatePrecision::Month))));
    let found = |file: &JobFile| {
        let duties = intervals::duties(file, &stacked("us-cng"), TODAY);
        let of: Vec<_> = duties.iter().filter(|duty| duty.kind == DutyKind::CylinderInspection).collect();
        assert_eq!(of.len(), 1, "{of:?}");
        (of[0].line.clone(), of[0].due_on, of[0].due_km)
    };
    file.readings = vec![read(TODAY, 100_000, OdometerExplained::Plain)];
    for (kg, line, due_on, km) in [
        (Some(4_536), "us.cng.light", date!(2029 - 05 - 12), Some(157_936)),
        (Some(4_537), "us.cng.heavy", date!(2027 - 05 - 12), None),
        (None, "us.cng.heavy", date!(2027 - 05 - 12), None),
    ] {
        file.vehicle.gross_mass_kg = kg;
        assert_eq!(found(&file), (line.to_owned(), due_on, km), "{kg:?} kg");
    }
}

/// Circular 7865/2015 (second hand): 48 months, and CNG-4 then every 24; the UN 48 months do not hide the 24.
#[tokio::test]
async fn the_second_interval_of_a_fully_wrapped_cylinder_is_shorter() {
    let (_open, mut file) = conversion(Fuel::Cng).await;
    let mut cylinder = part(&file, PartCategory::Cylinder, Some((TODAY, DatePrecision::Day)));
    cylinder.approval_mark = "E3 110R-001234".into();
    cylinder.component_class = "CNG-4".into();
    file.parts.push(cylinder.clone());
    let book = stacked("it");
    let first = intervals::duties(&file, &book, TODAY);
    let first = by_kind(&first, DutyKind::CylinderInspection);
    assert_eq!((first.line.as_str(), first.due_on), ("un.cng.visual", date!(2030 - 05 - 12)), "as early, and read");
    let met = |line: &str| fuelwright::model::duty::Duty {
        id: fuelwright::model::ids::DutyId::new(),
        vehicle_id: file.vehicle.id,
        job_id: None,
        part_id: Some(cylinder.id),
        line: line.into(),
        kind: DutyKind::CylinderInspection,
        due_on: date!(2030 - 05 - 12),
        due_km: None,
        decided_by: DueBy::Date,
        source: String::new(),
        is_checked: true,
        made_at: datetime!(2026-05-12 09:00 UTC),
        closed_at: None,
        closed_how: None,
        closed_note: String::new(),
    };
    let day = date!(2030 - 05 - 12);
    let next = |part: &Part| {
        let next = intervals::following(&book, &met("un.cng.visual"), Some(part), &file.vehicle, &[], day).unwrap();
        (next.line, next.due_on)
    };
    assert_eq!(next(&cylinder), ("it.cng.r110".to_owned(), date!(2032 - 05 - 12)));
    let steel = Part { component_class: "CNG-1".into(), ..cylinder.clone() };
    assert_eq!(next(&steel), ("un.cng.visual".to_owned(), date!(2034 - 05 - 12)));
    let national = Part { approval_mark: "IGM 4711".into(), ..cylinder.clone() };
    assert_eq!(next(&national), ("un.cng.visual".to_owned(), date!(2034 - 05 - 12)), "60 months come later than 48");
}
