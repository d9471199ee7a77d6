//! An invented conversion in an invented workshop: what a full certificate holds.

use fuelwright::model::paper::certificate::*;
use fuelwright::model::paper::measured::*;
use fuelwright::model::paper::*;
use fuelwright::seal::{self, KeyRing, Sealed, Signer};
use time::macros::{date, datetime};

pub fn signer() -> Signer {
    Signer::from_random(&[7; 32])
}

pub fn ring() -> KeyRing {
    let mut ring = KeyRing::new();
    ring.trust(&signer().public_key());
    ring
}

pub fn shop() -> ShopBlock {
    ShopBlock {
        name: "Saltmarsh Autogas".into(),
        address: "Quay Road 4, Northmere".into(),
        phone: "0555 0100".into(),
        licence: "N-2207".into(),
        branch: String::new(),
    }
}

pub fn keeper() -> PersonalPart {
    PersonalPart {
        name: "Ilse Fenwick".into(),
        name_as_printed: String::new(),
        address: "Mill Lane 12, Northmere".into(),
        phone: "0555 0177".into(),
        mail: "ilse.fenwick@example.org".into(),
        salt: "00112233445566778899aabbccddeeff".into(),
    }
}

fn person(name: &str, authorisation: &str) -> PersonOnPaper {
    PersonOnPaper {
        name: name.into(),
        authorisation: authorisation.into(),
        authorised_until_on: Some(date!(2028 - 06 - 30)),
    }
}

pub fn number(value: &str, unit: &str) -> Quantity {
    let decimals = value.split_once('.').map_or(0, |(_, digits)| digits.len());
    Quantity { value: value.into(), decimals: u8::try_from(decimals).unwrap(), unit: unit.into() }
}

fn found(value: &str, unit: &str) -> ResultPart {
    ResultPart { label: String::new(), reading: Reading::Number(number(value, unit)) }
}

fn word(text: &str) -> Reading {
    Reading::Word { text: text.into() }
}

pub fn duty(what: &str, on: Option<time::Date>, by: &str) -> DutyOnPaper {
    DutyOnPaper {
        what: what.into(),
        due_on: on,
        due_at_km: None,
        every_km: None,
        every_months: None,
        decided_by: by.into(),
    }
}

pub fn measured() -> Vec<MeasuredRow> {
    let plain = MeasuredRow {
        test: "Leak, liquid side, foam on 14 joints".into(),
        method: "leak-foam 1".into(),
        results: vec![ResultPart { label: String::new(), reading: word("dry") }],
        uncertainty: None,
        limits: vec![word("dry")],
        limit_source: "shop line 3, EN 14291 foam".into(),
        decision_rule: DecisionRule::Observed,
        verdict: Verdict::Passes,
        instruments: vec!["F-2".into()],
        measured_at: datetime!(2026-11-25 09:42 +1),
        by: "M. Oake".into(),
        from_outside: String::new(),
        record: "T-2026-0093/1".into(),
        entered_later: None,
    };
    vec![
        plain.clone(),
        MeasuredRow {
            test: "Leak, vapour side, pressure decay 26 min".into(),
            method: "leak-decay 2".into(),
            results: vec![found("3", "cm³/h")],
            uncertainty: Some(Uncertainty { expanded: number("16", "cm³/h"), coverage_factor: "2".into() }),
            limits: vec![Reading::Number(number("20", "cm³/h"))],
            limit_source: "shop line 4".into(),
            decision_rule: DecisionRule::Guarded,
            instruments: vec!["G-03".into(), "T-1".into()],
            measured_at: datetime!(2026-11-25 10:20 +1),
            ..plain.clone()
        },
        MeasuredRow {
            test: "CO on gas, idle / raised idle".into(),
            method: "exhaust-idle 1".into(),
            results: vec![found("0.08", "%"), found("0.05", "%")],
            limits: vec![Reading::Number(number("0.3", "%")), Reading::Number(number("0.2", "%"))],
            limit_source: "2014/45/EU, 8.2.1.2".into(),
            decision_rule: DecisionRule::Simple,
            instruments: vec!["A-2".into()],
            measured_at: datetime!(2026-11-25 11:05 +1),
            record: "T-2026-0093/2".into(),
            ..plain.clone()
        },
        MeasuredRow {
            test: "Lambda on gas, raised idle".into(),
            method: "exhaust-idle 1".into(),
            results: vec![found("1.004", "")],
            limits: vec![Reading::Between { low: number("0.97", ""), high: number("1.03", "") }],
            limit_source: "2014/45/EU, 8.2.1.2".into(),
            decision_rule: DecisionRule::Simple,
            instruments: vec!["A-2".into()],
            measured_at: datetime!(2026-11-25 11:05 +1),
            record: "T-2026-0093/2".into(),
            ..plain.clone()
        },
        MeasuredRow {
            test: "Shut-off, ignition off / engine stalled".into(),
            method: "shut-off 1".into(),
            results: vec![found("1.1", "s"), found("1.6", "s")],
            limits: vec![Reading::Number(number("2", "s"))],
            limit_source: "UN R67, 17.6".into(),
            instruments: vec![],
            measured_at: datetime!(2026-11-25 11:30 +1),
            record: String::new(),
            entered_later: Some(late()),
            ..plain
        },
    ]
}

pub fn late() -> EnteredLater {
    EnteredLater {
        what: "Shut-off, ignition off / engine stalled".into(),
        happened_at: datetime!(2026-11-25 11:30 +1),
        entered_at: datetime!(2026-11-25 13:05 +1),
        by: "M. Oake".into(),
        reason: "tablet was charging".into(),
    }
}

pub fn instruments() -> Vec<InstrumentOnPaper> {
    let instrument = |code: &str, description: &str, certificate: &str, until| InstrumentOnPaper {
        code: code.into(),
        description: description.into(),
        calibration_certificate: certificate.into(),
        good_until_on: Some(until),
    };
    vec![
        instrument("F-2", "Foam fluid, batch 44-B", "", date!(2027 - 08 - 31)),
        instrument("G-03", "Pressure gauge 0–400 kPa, Harrow 4, serial 5512", "K-2026-118", date!(2027 - 03 - 14)),
        instrument("T-1", "Thermometer, Harrow T, serial 0931", "K-2026-119", date!(2027 - 03 - 14)),
        instrument("A-2", "Exhaust analyser, class 0, Brack E4, serial 7706", "K-2026-201", date!(2027 - 05 - 02)),
    ]
}

fn parts() -> Vec<PartOnPaper> {
    let part = |description: &str, maker: &str, mark: &str, serial: &str, made: &str, next_duty| PartOnPaper {
        description: description.into(),
        maker_and_type: maker.into(),
        approval_mark: mark.into(),
        serial_or_batch: serial.into(),
        made: made.into(),
        next_duty,
        is_found: false,
    };
    let filter = DutyOnPaper { every_km: Some(20_000), every_months: Some(12), ..duty("", None, "shop line 7") };
    vec![
        part(
            "Container 54 L, filled to 43 L (80 %)",
            "Tarn Vessels T54",
            "E20 67R-01 4471",
            "T-118 204",
            "2026-03",
            vec![duty("", Some(date!(2036 - 03 - 31)), "shop line 9")],
        ),
        part("Multivalve", "Tarn Vessels MV3", "E20 67R-01 2210", "M-77 310", "2026-02", vec![]),
        part("Vaporiser", "Corrie V2", "E4 67R-01 0982", "V-40 116", "2026-05", vec![]),
        part("Injector rail, nozzles 2.2 mm", "Corrie R4", "E4 67R-01 1177", "R-20 441", "2026-05", vec![]),
        part("Filter, vapour", "Corrie F1", "E4 67R-01 0410", "batch 26-19", "2026-06", vec![filter]),
    ]
}

fn container() -> ContainerOnPaper {
    ContainerOnPaper {
        maker: "Tarn Vessels".into(),
        approval_mark: "E20 67R-01 4471".into(),
        serial: "T-118 204".into(),
        shape: "toroidal, 630 × 225 mm".into(),
        water_capacity: number("54.3", "L"),
        water_capacity_floor_l: 54,
        fill_limit_percent: Some(80),
        working_pressure: None,
        test_pressure: Some(number("3000", "kPa")),
        made: "2026-03".into(),
        last_tested: String::new(),
        inspection_kind: "new".into(),
        next_test_on: Some(date!(2036 - 03 - 31)),
        end_of_life_on: None,
        location: "spare wheel well".into(),
        findings: vec![],
        inspected_by: String::new(),
        is_found: false,
    }
}

pub fn rule_sets() -> Vec<RuleSetOnPaper> {
    [("UN baseline", "2026-11"), ("shop lines", "3")]
        .map(|(name, version)| RuleSetOnPaper {
            name: name.into(),
            version: version.into(),
            sha256: seal::sha256_hex(name.as_bytes()),
        })
        .to_vec()
}

fn proofs() -> ProofSummary {
    let exception = |kind, proof: &str, rule_line: &str, reason: &str| ProofException {
        kind,
        proof: proof.into(),
        rule_line: rule_line.into(),
        person: "R. Tolland".into(),
        reason: reason.into(),
        decided_at: datetime!(2026-11-25 12:10 +1),
    };
    ProofSummary {
        asked: 37,
        met: 35,
        exceptions: vec![
            exception(ExceptionKind::NotApplicable, "Gas-tight housing", "un-baseline/housing", "container is outside"),
            exception(ExceptionKind::Waived, "Photo of the label", "shop/label-photo", "camera broken, label seen"),
        ],
        to_be_confirmed: vec!["container 120 months from manufacture (shop line 9)".into()],
    }
}

pub fn certificate() -> CertificateContent {
    let code = "7KQ4-M2XR-9HTW-C3PN";
    CertificateContent {
        format: CERTIFICATE_FORMAT.into(),
        number: "C-2026-0093".into(),
        previous_sha256: seal::sha256_hex(b"C-2026-0092"),
        kind: CertificateKind::Conversion,
        language: "en".into(),
        is_demonstration: false,
        issued_on: date!(2026 - 11 - 25),
        issued_at: datetime!(2026-11-25 12:30 UTC),
        place: "Northmere".into(),
        shop: shop(),
        job_number: "J-2026-0118".into(),
        personal_digest: seal::personal_digest(&keeper()).unwrap(),
        vehicle: VehicleOnPaper {
            make: "Corvane".into(),
            model: "Pilot 1.6".into(),
            type_code: "P16/B".into(),
            category: "M1".into(),
            vin: "ZZZCV16P4K018233".into(),
            plate: "NM 47 KTR".into(),
            plate_country: "NM".into(),
            first_registered: "2014-03".into(),
            odometer_km: Some(128_430),
        },
        engine: EngineOnPaper {
            code: "CV16".into(),
            number: "0418233".into(),
            power: Some(number("82", "kW")),
            displacement: Some(number("1598", "cm³")),
            engine_cylinders: Some(4),
        },
        system: SystemOnPaper {
            fuel: GasFuel::Lpg,
            make: "Corrie".into(),
            type_name: "Sequent 4".into(),
            approval_number: "E4 115R-00 0731".into(),
            approval_holder: "Corrie Gas Systems".into(),
            control_unit: "Corrie U4, serial 88 120".into(),
        },
        parts: parts(),
        containers: vec![container()],
        removed: vec![],
        photos_seen: vec![],
        work: WorkDays { received_on: date!(2026 - 11 - 23), finished_on: date!(2026 - 11 - 25) },
        measured: measured(),
        instruments: instruments(),
        proofs: proofs(),
        entered_later: vec![late()],
        inspection: None,
        conformity: vec![ConformityStatement {
            against: "UN R115, approval E4 115R-00 0731".into(),
            covers: "parts fitted, leak tests, exhaust".into(),
            is_met: true,
        }],
        states_fitting_check: true,
        changes_for_vehicle_papers: vec!["Fuel: petrol / LPG.".into(), "Mass in running order: plus 46 kg.".into()],
        next_duties: vec![
            DutyOnPaper { due_at_km: Some(129_930), ..duty("First check", Some(date!(2027 - 01 - 25)), "shop line 6") },
            duty("Container test", Some(date!(2036 - 03 - 31)), "shop line 9"),
        ],
        authority_test_to_come: "Northmere vehicle office".into(),
        remarks: vec!["Spare wheel replaced by a repair kit.".into()],
        signatory: person("R. Tolland", "S-114"),
        technician: person("M. Oake", "W-31"),
        rule_sets: rule_sets(),
        cautions: vec!["After an accident: have the system tested before use (common practice).".into()],
        supersedes: None,
        check: CheckLine {
            code: code.into(),
            url: Some(format!("https://northmere.example/verify/{code}")),
            key_id: signer().key_id(),
            key_fingerprint: signer().fingerprint(),
        },
        software_version: "0.1.0".into(),
        beside: None,
    }
}

pub fn sealed(content: &CertificateContent) -> Vec<u8> {
    Sealed::seal(content, &signer()).unwrap().to_json()
}
