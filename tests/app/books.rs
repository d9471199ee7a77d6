//! Customers, vehicles, bookings and notes as deeds: what holds whoever asks, page or program.

use fuelwright::db;
use fuelwright::db::search::Wanted;
use fuelwright::model::booking::{BookingState, NewBooking};
use fuelwright::model::customer::{NewCustomer, ReminderBasis};
use fuelwright::model::ids::{BayId, CustomerId, VehicleId};
use fuelwright::model::job::{Fuel, JobKind, SystemKind};
use fuelwright::model::note::About;
use fuelwright::model::vehicle::{
    Aspiration, NewVehicle, OdometerExplained, OdometerReading, OdometerUnit, PetrolInjection, VehicleCategory,
    VehiclePerson, VehicleRole,
};
use fuelwright::shop::Refusal;
use fuelwright::shop::arrivals::{Arrival, Brought, Comer};
use time::Duration;
use time::macros::{date, datetime};
use uuid::Uuid;

use crate::support::TestShop;

pub fn customer(name: &str, phone: &str) -> NewCustomer {
    NewCustomer {
        name: name.into(),
        name_in_latin: String::new(),
        address: String::new(),
        phone: phone.into(),
        mail: String::new(),
        language: "en".into(),
        reminder_basis: ReminderBasis::None,
        reminder_basis_on: None,
    }
}

pub fn vehicle(plate: &str, vin: &str) -> NewVehicle {
    NewVehicle {
        plate: plate.into(),
        plate_country: "GB".into(),
        vin: vin.into(),
        chassis_number: String::new(),
        category: VehicleCategory::M1,
        make: "Corvane".into(),
        model: "Pilot 1.6".into(),
        first_registered_on: None,
        engine_code: String::new(),
        engine_number: String::new(),
        displacement_cm3: Some(1598),
        engine_cylinders: Some(4),
        rated_power_kw: Some(82.0),
        rated_rpm: Some(6000),
        aspiration: Aspiration::Natural,
        boost_kpa: None,
        petrol_injection: PetrolInjection::Port,
        injector_connector: String::new(),
        control_pin: String::new(),
        gross_mass_kg: None,
        rear_axle_reserve_kg: None,
        has_catalyst: true,
        is_closed_loop: true,
        maker_idle_co_percent: None,
        maker_raised_co_percent: None,
        maker_lambda_least: None,
        maker_lambda_most: None,
        emission_class: String::new(),
        obd_standard: String::new(),
        has_start_stop: false,
        is_hybrid: false,
        odometer_unit: OdometerUnit::Km,
    }
}

async fn owned(open: &TestShop) -> (CustomerId, VehicleId) {
    let who = open.actor(open.mara).await;
    let ana = open.shop.add_customer(&who, None, customer("Ana Reyes", "+44 1632 960142")).await.unwrap();
    let people = vec![(VehicleRole::Owner, ana), (VehicleRole::Keeper, ana)];
    let new = vehicle("NM 47 KTR", "1M8GDM9AXKP042788");
    (ana, open.shop.add_vehicle(&who, None, new, false, people).await.unwrap())
}

async fn bay(open: &TestShop, name: &str) -> BayId {
    open.shop.add_bay(&open.actor(open.ilse).await, None, name.into()).await.unwrap()
}

fn booking(bay_id: BayId, hour: i64) -> NewBooking {
    let starts_at = datetime!(2026-05-13 00:00 UTC) + Duration::hours(hour);
    NewBooking {
        bay_id,
        starts_at,
        ends_at: starts_at + Duration::hours(2),
        name: "Ana Reyes".into(),
        phone: "01632 960142".into(),
        plate: String::new(),
        job_kind: JobKind::Conversion,
        note: String::new(),
        doubled_reason: String::new(),
    }
}

#[tokio::test]
async fn a_customer_saved_by_two_people_is_refused_to_the_second() {
    let open = TestShop::open().await;
    let who = open.actor(open.mara).await;
    let id = open.shop.add_customer(&who, None, customer("Ana Reyes", "1")).await.unwrap();
    open.shop.change_customer(&who, None, id, 1, customer("Ana Reyes", "2")).await.unwrap();
    let late = open.shop.change_customer(&who, None, id, 1, customer("Ana Reyes", "3")).await;
    assert!(matches!(late, Err(Refusal::Stale)));
    let mut con = open.shop.db.read().await.unwrap();
    let kept = db::customers::find(&mut con, open.branch, id).await.unwrap().unwrap();
    assert_eq!((kept.phone.as_str(), kept.version), ("2", 2));
}

#[tokio::test]
async fn the_shops_own_address_is_nobodys() {
    let open = TestShop::open().await;
    let who = open.actor(open.mara).await;
    let new = NewCustomer { mail: "Shop@Example.org".into(), ..customer("Ana Reyes", "") };
    let refused = open.shop.add_customer(&who, None, new).await;
    assert!(matches!(refused, Err(Refusal::Field { field: "mail", .. })));
}

#[tokio::test]
async fn a_name_is_found_without_its_accents_and_a_plate_without_its_blanks() {
    let open = TestShop::open().await;
    let who = open.actor(open.mara).await;
    open.shop.add_customer(&who, None, customer("Łukasz Ångström", "+48 601 555 014")).await.unwrap();
    open.shop.add_customer(&who, None, customer("Işıl Çelik", "100% _real\\")).await.unwrap();
    owned(&open).await;
    let mut con = open.shop.db.read().await.unwrap();
    let mut found = async |query: &str| {
        let list = db::customers::list(&mut con, open.branch, &Wanted::new(query), 0, 50).await.unwrap();
        list.into_iter().map(|one| one.name).collect::<Vec<_>>()
    };
    assert_eq!(found("lukasz").await, ["Łukasz Ångström"]);
    assert_eq!(found("ANGSTROM luk").await, ["Łukasz Ångström"]);
    assert_eq!(found("601 555-014").await, ["Łukasz Ångström"]);
    assert_eq!(found("isil celik").await, ["Işıl Çelik"]);
    assert_eq!(found("").await.len(), 3);
    assert_eq!(found("%").await, Vec::<String>::new());
    assert_eq!(found("nobody").await, Vec::<String>::new());
    let mut con = open.shop.db.read().await.unwrap();
    for query in ["nm47ktr", "NM 47 KTR", "nm-47-ktr", "1m8gdm9a xkp042788", "corvane pilot"] {
        let list = db::vehicles::list(&mut con, open.branch, &Wanted::new(query), 0, 50).await.unwrap();
        assert_eq!(list.len(), 1, "{query}");
        assert_eq!(list[0].keeper_name.as_deref(), Some("Ana Reyes"));
    }
}

#[tokio::test]
async fn a_change_of_keeper_ends_the_old_row_and_keeps_it() {
    let open = TestShop::open().await;
    let who = open.actor(open.mara).await;
    let (ana, car) = owned(&open).await;
    let bo = open.shop.add_customer(&who, None, customer("Bo Tarn", "")).await.unwrap();
    open.clock.advance(Duration::days(30));
    let role = VehicleRole::Keeper;
    let keeper = |customer_id, from_on| VehiclePerson { vehicle_id: car, customer_id, role, from_on, to_on: None };
    open.shop.begin_role(&who, None, keeper(bo, date!(2026 - 06 - 01))).await.unwrap();
    let mut con = open.shop.db.read().await.unwrap();
    assert_eq!(db::vehicle_people::keeper(&mut con, car).await.unwrap(), Some(bo));
    let all = db::vehicle_people::list(&mut con, open.branch, car).await.unwrap();
    let old = all.iter().find(|one| one.customer_id == ana && one.role == role).unwrap();
    assert_eq!(old.to_on, Some(date!(2026 - 05 - 31)));
    let again = open.shop.begin_role(&who, None, keeper(bo, date!(2026 - 06 - 02))).await;
    assert!(matches!(again, Err(Refusal::Field { field: "customer", .. })));
    let before = open.shop.begin_role(&who, None, keeper(ana, date!(2026 - 05 - 20))).await;
    assert!(matches!(before, Err(Refusal::Field { field: "from_on", .. })));
}

#[tokio::test]
async fn an_old_plate_still_finds_the_vehicle() {
    let open = TestShop::open().await;
    let who = open.actor(open.mara).await;
    let (_, car) = owned(&open).await;
    open.clock.advance(Duration::days(3));
    let new = vehicle("SB 12 OLD", "1M8GDM9AXKP042788");
    open.shop.change_vehicle(&who, None, (car, 1), new, false).await.unwrap();
    let mut con = open.shop.db.read().await.unwrap();
    let plates = db::vehicles::plates(&mut con, car).await.unwrap();
    assert_eq!(plates.len(), 2);
    assert_eq!((plates[0].plate.as_str(), plates[0].to_on), ("SB 12 OLD", None));
    assert_eq!(plates[1].to_on, Some(date!(2026 - 05 - 15)));
    for plate in ["NM47KTR", "sb12old"] {
        assert_eq!(db::vehicles::list_called(&mut con, open.branch, plate).await.unwrap().len(), 1, "{plate}");
    }
    assert!(db::vehicles::list_called(&mut con, open.branch, "47KT").await.unwrap().is_empty());
}

#[tokio::test]
async fn a_vin_in_the_books_is_asked_about() {
    let open = TestShop::open().await;
    let who = open.actor(open.mara).await;
    owned(&open).await;
    let twin = || vehicle("SB 12 NEW", "1M8GDM9AXKP042788");
    let refused = open.shop.add_vehicle(&who, None, twin(), false, vec![]).await;
    assert!(matches!(refused, Err(Refusal::Taken { field }) if field == "vin"));
    open.shop.add_vehicle(&who, None, twin(), true, vec![]).await.unwrap();
}

#[tokio::test]
async fn a_reading_that_goes_back_is_kept_once_it_is_explained() {
    let open = TestShop::open().await;
    let who = open.actor(open.jon).await;
    let (_, car) = owned(&open).await;
    let reading = |km: i64, explained| OdometerReading {
        read_on: date!(2026 - 05 - 12),
        km,
        typed: format!("{km} km"),
        explained,
    };
    let plain = OdometerExplained::Plain;
    open.shop.read_odometer(&who, None, car, None, reading(128_430, plain)).await.unwrap();
    let lower = open.shop.read_odometer(&who, None, car, None, reading(12_843, plain)).await;
    assert!(matches!(lower, Err(Refusal::Field { field: "explained", why: "odometer-lower" })));
    open.shop.read_odometer(&who, None, car, None, reading(12_843, OdometerExplained::Replaced)).await.unwrap();
    let mut con = open.shop.db.read().await.unwrap();
    assert_eq!(db::odometer::last(&mut con, car).await.unwrap().unwrap().km, 12_843);
    assert_eq!(db::odometer::list(&mut con, car).await.unwrap().len(), 2);
}

#[tokio::test]
async fn a_bay_is_held_once_unless_a_manager_says_why() {
    let open = TestShop::open().await;
    let (desk, manager) = (open.actor(open.mara).await, open.actor(open.ilse).await);
    let (one, two) = (bay(&open, "Bay 1").await, bay(&open, "Bay 2").await);
    let first = open.shop.make_booking(&desk, None, booking(one, 9)).await.unwrap();
    // End to start is no clash, and neither is the other bay.
    open.shop.make_booking(&desk, None, booking(one, 11)).await.unwrap();
    open.shop.make_booking(&desk, None, booking(two, 9)).await.unwrap();
    let clash = open.shop.make_booking(&desk, None, booking(one, 10)).await;
    assert!(matches!(clash, Err(Refusal::Field { field: "bay_id", .. })));
    let doubled = || NewBooking { doubled_reason: "short look only".into(), ..booking(one, 10) };
    let clash = open.shop.make_booking(&desk, None, doubled()).await;
    assert!(matches!(clash, Err(Refusal::Field { field: "doubled_reason", .. })));
    open.shop.make_booking(&manager, None, doubled()).await.unwrap();
    // A called-off booking holds nothing; taking that back is refused once the time is gone.
    open.shop.answer_booking(&desk, None, (first, 1), BookingState::Cancelled).await.unwrap();
    let back = open.shop.answer_booking(&desk, None, (first, 2), BookingState::Expected).await;
    assert!(matches!(back, Err(Refusal::Field { field: "bay_id", .. })));
    let ended = open.shop.end_bay(&manager, None, two, date!(2026 - 05 - 13)).await;
    assert!(matches!(ended, Err(Refusal::Field { field: "ended_on", .. })));
    open.shop.end_bay(&manager, None, two, date!(2026 - 05 - 14)).await.unwrap();
}

#[tokio::test]
async fn an_arrival_makes_customer_vehicle_and_job_or_nothing() {
    let open = TestShop::open().await;
    let who = open.actor(open.mara).await;
    let one = bay(&open, "Bay 1").await;
    let held = open.shop.make_booking(&who, None, booking(one, 9)).await.unwrap();
    let arrival = |km: i64| Arrival {
        comer: Comer::New(customer("Ana Reyes", "01632 960142")),
        brought: Brought::New(Box::new(vehicle("NM 47 KTR", "1M8GDM9AXKP042788")), false),
        kind: JobKind::Conversion,
        fuel: Fuel::Lpg,
        system_kind: SystemKind::VapourInjection,
        bay_id: Some(one),
        is_low_pressure_only: false,
        comes_back_from: None,
        reported_faults: String::new(),
        reading: Some(OdometerReading {
            read_on: date!(2026 - 05 - 12),
            km,
            typed: format!("{km} km"),
            explained: OdometerExplained::Plain,
        }),
    };
    let stale = open.shop.arrive(&who, None, Some((held, 7)), arrival(1)).await;
    assert!(matches!(stale, Err(Refusal::Stale)));
    let key = Some(Uuid::now_v7());
    let job = open.shop.arrive(&who, key, Some((held, 1)), arrival(128_430)).await.unwrap();
    assert_eq!(open.shop.arrive(&who, key, Some((held, 1)), arrival(128_430)).await.unwrap(), job);
    let mut con = open.shop.db.read().await.unwrap();
    let everybody = db::customers::list(&mut con, open.branch, &Wanted::new(""), 0, 50).await.unwrap();
    assert_eq!(everybody.len(), 1);
    let opened = db::jobs::find(&mut con, open.branch, job).await.unwrap().unwrap();
    assert_eq!((opened.number.as_str(), opened.keeper_id), ("2026-0001", everybody[0].id));
    let booked = db::bookings::find(&mut con, open.branch, held).await.unwrap().unwrap();
    assert_eq!((booked.state, booked.job_id), (BookingState::Arrived, Some(job)));
    assert_eq!(db::vehicle_people::keeper(&mut con, opened.vehicle_id).await.unwrap(), Some(opened.keeper_id));
    assert_eq!(db::odometer::last(&mut con, opened.vehicle_id).await.unwrap().unwrap().km, 128_430);
    let twice = open.shop.arrive(&who, None, Some((held, 2)), arrival(1)).await;
    assert!(matches!(twice, Err(Refusal::Ended(_))));
}

#[tokio::test]
async fn who_called_is_recognised_by_phone_or_name() {
    let open = TestShop::open().await;
    owned(&open).await;
    let mut con = open.shop.db.read().await.unwrap();
    for (name, phone) in [("A. Reyes", "01632 960 142"), ("ana  reyes", ""), ("?", "+44 (0)1632-960142")] {
        let likely = db::customers::list_likely(&mut con, open.branch, name, phone).await.unwrap();
        assert_eq!(likely.len(), 1, "{name} {phone}");
    }
    for (name, phone) in [("Ana", "01632 960143"), ("", "142"), ("%", "%")] {
        let likely = db::customers::list_likely(&mut con, open.branch, name, phone).await.unwrap();
        assert!(likely.is_empty(), "{name} {phone}");
    }
}

#[tokio::test]
async fn a_note_is_about_one_thing_of_this_branch() {
    let open = TestShop::open().await;
    let who = open.actor(open.jon).await;
    let (ana, car) = owned(&open).await;
    open.shop.write_note(&who, None, About::Customer(ana), "Calls back after five".into()).await.unwrap();
    let gone = open.shop.write_note(&who, None, About::Vehicle(VehicleId::new()), "x".into()).await;
    assert!(matches!(gone, Err(Refusal::Gone)));
    let mut con = open.shop.db.read().await.unwrap();
    let notes = db::notes::list(&mut con, open.branch, About::Customer(ana)).await.unwrap();
    assert_eq!((notes.len(), notes[0].person_name.as_str()), (1, "Jon Aspen"));
    assert!(db::notes::list(&mut con, open.branch, About::Vehicle(car)).await.unwrap().is_empty());
}
