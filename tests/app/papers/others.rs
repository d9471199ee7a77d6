//! Invented content of the papers that are not signed.

use fuelwright::model::paper::GasFuel;
use fuelwright::model::paper::PersonOnPaper;
use fuelwright::model::paper::measured::Verdict;
use fuelwright::model::paper::owner_sheet::*;
use fuelwright::model::paper::test_record::*;
use fuelwright::model::paper::work_sheet::*;
use time::macros::{date, datetime};

use super::sample::{duty, instruments, late, measured, number, rule_sets, shop};

fn person(name: &str) -> PersonOnPaper {
    PersonOnPaper { name: name.into(), authorisation: "W-31".into(), authorised_until_on: Some(date!(2028 - 06 - 30)) }
}

pub fn test_record() -> TestRecordContent {
    TestRecordContent {
        format: TEST_RECORD_FORMAT.into(),
        title: "Leak test record".into(),
        shop: shop(),
        place: "Bay 2, Quay Road 4, Northmere".into(),
        number: "T-2026-0093/1".into(),
        job_number: "J-2026-0118".into(),
        customer_name: "Ilse Fenwick".into(),
        customer_contact: "0555 0177".into(),
        method: "leak-foam 1; leak-decay 2".into(),
        item: TestedItem {
            vehicle: "Corvane Pilot 1.6".into(),
            vin: "ZZZCV16P4K018233".into(),
            plate: "NM 47 KTR".into(),
            odometer_km: Some(128_430),
            fuel: GasFuel::Lpg,
            tested: "LPG system, liquid and vapour side".into(),
            condition: "complete, dry".into(),
        },
        received_on: date!(2026 - 11 - 23),
        began_at: datetime!(2026-11-25 09:30 +1),
        ended_at: datetime!(2026-11-25 10:20 +1),
        issued_on: date!(2026 - 11 - 25),
        sampling: String::new(),
        measured: measured()[..2].to_vec(),
        leak_tests: vec![leak_test()],
        deviations: String::new(),
        authorised_by: person("R. Tolland"),
        technician: person("M. Oake"),
        instruments: instruments(),
        conditions: vec![Condition { name: "Air temperature".into(), value: number("17.5", "°C") }],
        customer_supplied: vec!["Odometer as told on the phone: 128 400 km".into()],
        entered_later: vec![late()],
        rule_sets: rule_sets(),
        cautions: vec!["Nitrogen only; never oxygen (common practice).".into()],
        supersedes: None,
        language: "en".into(),
        beside_of: String::new(),
        is_demonstration: false,
        software_version: "0.1.0".into(),
    }
}

fn leak_test() -> LeakTestOnPaper {
    LeakTestOnPaper {
        section: "vapour side".into(),
        boundaries: "vaporiser outlet valve, injector rail end cap".into(),
        test_gas: "nitrogen".into(),
        pressure_reference: PressureReference::Gauge,
        pressure_start: Some(number("151.2", "kPa")),
        pressure_end: Some(number("151.0", "kPa")),
        ambient_pressure: Some(number("101.6", "kPa")),
        temperature_start: Some(number("17.4", "°C")),
        temperature_end: Some(number("17.3", "°C")),
        temperature_ambient: Some(number("17.6", "°C")),
        began_at: datetime!(2026-11-25 09:54 +1),
        ended_at: datetime!(2026-11-25 10:20 +1),
        volume: Some(number("0.85", "L")),
        volume_known_by: "measured with water on a like rail".into(),
        joints: vec!["rail inlet".into(), "nozzle hose 1".into(), "nozzle hose 2".into()],
        rate: Some(number("3", "cm³/h")),
        rate_uncertainty: Some(number("16", "cm³/h")),
        coverage_factor: "2".into(),
        limit: Some(number("20", "cm³/h")),
        limit_source: "shop line 4".into(),
        verdict: Verdict::Passes,
        repair: "clamp at nozzle hose 2 renewed".into(),
        attempt: 2,
        by: "M. Oake".into(),
    }
}

pub fn owner_sheet(fuel: GasFuel) -> OwnerSheetContent {
    let is_lpg = fuel == GasFuel::Lpg;
    OwnerSheetContent {
        shop: shop(),
        issued_on: date!(2026 - 11 - 25),
        job_number: "J-2026-0118".into(),
        certificate_number: "C-2026-0093".into(),
        vehicle: "Corvane Pilot 1.6".into(),
        plate: "NM 47 KTR".into(),
        vin_last_4: "8233".into(),
        has_vin: true,
        fuel,
        containers: vec![OwnerContainer {
            location: "spare wheel well".into(),
            capacity_l: 54,
            fill_limit_percent: is_lpg.then_some(80),
            filled_l: is_lpg.then_some(43),
            working_pressure_bar: (!is_lpg).then_some(200),
            hand_valve: "on the container, under the boot floor".into(),
            next_test_on: Some(date!(2036 - 03 - 31)),
            end_of_life_on: (!is_lpg).then_some(date!(2046 - 03 - 31)),
        }],
        plate_place: "driver's door pillar".into(),
        emergency_number: "112".into(),
        duties: vec![
            duty("First check", Some(date!(2027 - 01 - 25)), "shop line 6"),
            duty("Container test", Some(date!(2036 - 03 - 31)), "shop line 9"),
        ],
        further_cautions: vec!["Below −20 °C start on petrol for longer.".into()],
        page_url: Some("https://northmere.example/vehicle/4M7T-2K9Q-XW3H-8RDC".into()),
        language: "en".into(),
        is_demonstration: false,
    }
}

pub fn work_sheet() -> WorkSheetContent {
    let proof = |name: &str, state, note: &str| WorkProof { name: name.into(), state, note: note.into() };
    WorkSheetContent {
        shop: shop(),
        job_number: "J-2026-0118".into(),
        job_kind: "conversion".into(),
        place: "Bay 2".into(),
        fuel: GasFuel::Lpg,
        vehicle: "Corvane Pilot 1.6".into(),
        vin: "ZZZCV16P4K018233".into(),
        plate: "NM 47 KTR".into(),
        odometer_km: Some(128_430),
        customer_name: "Ilse Fenwick".into(),
        customer_phone: "0555 0177".into(),
        received_on: Some(date!(2026 - 11 - 23)),
        promised_on: Some(date!(2026 - 11 - 26)),
        reported_faults: "Idles rough when cold".into(),
        wishes: vec!["Switch left of the wheel".into()],
        findings: vec!["Hose chafed at the bulkhead".into()],
        stages: vec![
            WorkStage {
                name: "Intake".into(),
                proofs: vec![
                    proof("Compression, all engine cylinders", WorkProofState::Met, "12.1 to 12.4 bar, M. Oake"),
                    proof("Fault memory read", WorkProofState::Met, "empty"),
                ],
            },
            WorkStage {
                name: "Proving".into(),
                proofs: vec![
                    proof("Leak test, liquid side", WorkProofState::Missing, "not recorded yet"),
                    proof("Leak test, vapour side", WorkProofState::Undecided, "26 min would tell"),
                    proof("CO on gas", WorkProofState::Stops, "0.41 %, limit 0.3 %"),
                    proof("Photo of the label", WorkProofState::Waived, "R. Tolland: camera broken"),
                    proof("Gas-tight housing", WorkProofState::NotApplicable, "container is outside"),
                ],
            },
        ],
        cautions: vec!["Bump-test the detector first (common practice).".into()],
        photos: Vec::new(),
        printed_at: datetime!(2026-11-25 08:10 +1),
        language: "en".into(),
        is_demonstration: false,
    }
}
