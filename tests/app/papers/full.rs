//! Invented content of the records, the wall sheet, the label and the letter: as usual, with hardly anything, and far too
//! much of everything.

use fuelwright::calc::road::*;
use fuelwright::model::estimate::{AgreedHow, LineKind};
use fuelwright::model::evidence::RoadLogKept;
use fuelwright::model::paper::calibration_record::*;
use fuelwright::model::paper::estimate::*;
use fuelwright::model::paper::fitting_record::*;
use fuelwright::model::paper::letter::LetterContent;
use fuelwright::model::paper::of_job::*;
use fuelwright::model::paper::vehicle_label::*;
use fuelwright::model::paper::wall_sheet::*;
use fuelwright::model::paper::work_sheet::*;
use fuelwright::model::paper::{GasFuel, ShopBlock};
use fuelwright::papers::Pictures;
use fuelwright::seal::sha256_hex;
use time::macros::{date, datetime};

use super::others;
use super::sample::{duty, instruments, late, number, rule_sets, shop};

/// Sixty characters with a single place to break.
pub const LONG: &str = "Wolkenstein-HohenzollernvonundzuNorthmereSuedundSaltmarsh.xy";
/// A serial without any.
pub const SERIAL: &str = "T118204T118204T118204T118204T118204T118204T118204T118204T118";

/// How much is in a content.
#[derive(Clone, Copy, PartialEq)]
pub enum Much {
    Little,
    Usual,
    Plenty,
}

pub fn some<T: Clone>(much: Much, usual: &[T], many: impl Fn(usize) -> T, count: usize) -> Vec<T> {
    match much {
        Much::Little => Vec::new(),
        Much::Usual => usual.to_vec(),
        Much::Plenty => (0..count).map(many).collect(),
    }
}

pub fn text(much: Much, usual: &str) -> String {
    match much {
        Much::Little => String::new(),
        Much::Usual => usual.into(),
        Much::Plenty => format!("{LONG} {usual}"),
    }
}

pub fn shop_of(much: Much) -> ShopBlock {
    match much {
        Much::Plenty => ShopBlock { name: LONG.into(), address: format!("{LONG}, {LONG}"), ..shop() },
        _ => shop(),
    }
}

fn job(much: Much) -> JobOnPaper {
    JobOnPaper {
        number: "J-2026-0118".into(),
        job_kind: "Conversion".into(),
        received_on: date!(2026 - 11 - 23),
        vehicle: text(much, "Corvane Pilot 1.6"),
        plate: if much == Much::Little { String::new() } else { "NM 47 KTR".into() },
        vin: if much == Much::Little { String::new() } else { "ZZZCV16P4K0182335".into() },
        engine: text(much, "CV16, 1 598 cm³, 4 engine cylinders, 82 kW at 6 000/min"),
        odometer_km: (much != Much::Little).then_some(128_430),
        fuel: GasFuel::Lpg,
        system: "Vapour injection".into(),
        customer_name: if much == Much::Plenty { LONG.into() } else { "Ilse Fenwick".into() },
    }
}

fn recorded(much: Much) -> RecordedOnPaper {
    RecordedOnPaper {
        by: text(much, "M. Oake"),
        at: datetime!(2026-11-25 10:42 +1),
        entered_at: (much == Much::Plenty).then_some(datetime!(2026-11-25 13:05 +1)),
        corrected: if much == Much::Plenty { "typing error in the pressure".into() } else { String::new() },
        instruments: some(much, &["P-02".to_owned()], |n| format!("P-{n:02}"), 12),
    }
}

fn proofs(much: Much) -> Vec<WorkProof> {
    let proof = |name: &str, state, note: &str| WorkProof { name: name.into(), state, note: note.into() };
    let usual = [
        proof("Every part has a serial number or a batch", WorkProofState::Met, "14 parts · M. Oake · 25 Nov, 10:42"),
        proof("Gas-tight housing", WorkProofState::Missing, ""),
        proof("Wiring", WorkProofState::Stops, "a line failed: away from the ignition"),
    ];
    some(much, &usual, |n| proof(&format!("Proof number {n} {LONG}"), WorkProofState::Undecided, LONG), 30)
}

/// A JPEG of this size in one colour.
pub fn jpeg(width: u32, height: u32, tone: u8) -> Vec<u8> {
    let picture = image::RgbImage::from_fn(width, height, |x, y| {
        image::Rgb([tone, u8::try_from(x * 255 / width).unwrap(), u8::try_from(y * 255 / height).unwrap()])
    });
    let mut out = Vec::new();
    picture.write_with_encoder(image::codecs::jpeg::JpegEncoder::new_with_quality(&mut out, 80)).unwrap();
    out
}

/// Photos across and upright; the last of many is a file that nothing can print.
pub fn photos(much: Much) -> (Vec<PhotoOnPaper>, Pictures) {
    let mut pictures = Pictures::default();
    let count = match much {
        Much::Little => 0,
        Much::Usual => 3,
        Much::Plenty => 30_u8,
    };
    let mut all = Vec::new();
    for n in 0..count {
        let (width, height) = if n % 3 == 2 { (90, 120) } else { (160, 120) };
        let bytes = jpeg(width, height, n * 8);
        let picture = sha256_hex(&bytes);
        let is_lost = n == 29;
        if !is_lost {
            pictures.add(&picture, bytes);
        }
        all.push(PhotoOnPaper {
            what: if much == Much::Plenty { format!("Photo {n}, {LONG}") } else { format!("Photo {n}") },
            taken_at: datetime!(2026-11-25 10:42 +1) + time::Duration::minutes(i64::from(n)),
            name: if is_lost { format!("{LONG}{LONG}.heic") } else { String::new() },
            picture,
        });
    }
    (all, pictures)
}

fn part(n: usize, much: Much) -> FittedPart {
    let is_long = much == Much::Plenty;
    FittedPart {
        description: if is_long { format!("Hose number {n}") } else { "Container".into() },
        maker_and_type: if is_long { LONG.into() } else { "Tarn Vessels T54".into() },
        approval_mark: "E20 67R-01 4471".into(),
        component_class: if is_long { "3".into() } else { String::new() },
        serial: if is_long { format!("{SERIAL}{n:02}") } else { "T-118 204".into() },
        batch: if is_long { "B-2026-19".into() } else { String::new() },
        made: ["2026-03", "2026", "2026-03-14"][n % 3].into(),
        capacity: Some(number("54.3", "L")),
        test_pressure: Some(number("3000", "kPa")),
        place: if is_long { LONG.into() } else { "spare wheel well".into() },
        fitted_on: date!(2026 - 11 - 24),
        was_there: n % 2 == 1,
        removed_on: None,
        removed_reason: String::new(),
        shared_reason: if n == 7 { format!("two rails of one casting {LONG}") } else { String::new() },
    }
}

pub fn fitting_record(much: Much) -> (FittingRecordContent, Pictures) {
    let (photos, pictures) = photos(much);
    let off = |n| FittedPart {
        removed_on: Some(date!(2026 - 11 - 24)),
        removed_reason: "its date had passed".into(),
        ..part(n, much)
    };
    let cylinder = |n: usize| CylinderOnPaper {
        engine_cylinder: i64::try_from(n).unwrap() + 1,
        petrol_connector: text(much, "two pins, flat"),
        control_pin: "2".into(),
        branch_mark: text(much, "white ring"),
        gas_injector: i64::try_from(n).unwrap() + 1,
        nozzle: Some(number("2.20", "mm")),
        answers: n != 3,
    };
    let check = |n: usize| CheckOnPaper {
        line: format!("Line {n}: fixed to the body, not to its sheet {}", text(much, "by four bolts")),
        source: "UN R67, 17.4".into(),
        state: [CheckState::Pass, CheckState::Fail, CheckState::NotApplicable, CheckState::Open][n % 4],
        note: if n % 4 == 1 { text(much, "one bolt missing, mended") } else { String::new() },
        initials: if n % 4 == 3 { String::new() } else { "MO".into() },
        at: (n % 4 != 3).then_some(datetime!(2026-11-25 11:10 +1)),
    };
    let group = |n: usize| CheckGroup { name: format!("Group {n}"), lines: (0..8).map(check).collect() };
    let content = FittingRecordContent {
        format: FITTING_RECORD_FORMAT.into(),
        title: "Fitting record".into(),
        shop: shop_of(much),
        number: "J-2026-0118-F".into(),
        printed_on: date!(2026 - 11 - 25),
        job: job(much),
        fitted: some(much, &[part(0, much), part(1, much)], |n| part(n, much), 40),
        removed: some(much, &[off(0)], off, 5),
        cylinders: some(much, &[0, 1, 2, 3].map(cylinder), cylinder, 12),
        cylinders_recorded: (much != Much::Little).then(|| recorded(much)),
        checks: some(much, &[group(1), group(2)], group, 5),
        level: (much != Much::Little).then(|| LevelOnPaper {
            how: "Reckoned from injection time".into(),
            is_routine_explained: Some(true),
            recorded: recorded(much),
        }),
        proofs: proofs(much),
        photos,
        entered_later: if much == Much::Little { vec![] } else { vec![late()] },
        cautions: vec!["Local code and licensed practice prevail.".into()],
        rule_sets: rule_sets(),
        language: "en".into(),
        beside_of: String::new(),
        is_demonstration: false,
        software_version: "0.1.0".into(),
    };
    (content, pictures)
}

/// A comparison that is lean in one cell; with far too much, in many.
fn road(much: Much) -> RoadOnPaper {
    let cell = |n: usize| {
        let verdict = [CellVerdict::Good, CellVerdict::Deviates, CellVerdict::Undecided, CellVerdict::NotEnough][n % 4];
        let deviation = [0.4, 8.2, 3.1, 1.0][n % 4];
        Cell {
            rpm_from: 1_000.0 + 500.0 * (n / 6) as f64,
            rpm_to: 1_500.0 + 500.0 * (n / 6) as f64,
            load_from: 30.0 + 10.0 * (n % 6) as f64,
            load_to: 40.0 + 10.0 * (n % 6) as f64,
            petrol_visits: 8,
            gas_visits: if verdict == CellVerdict::NotEnough { 3 } else { 9 },
            petrol_ms: Some(4.812),
            gas_ms: Some(4.812 * (1.0 + deviation / 100.0)),
            deviation_percent: Some(deviation),
            low_percent: Some(deviation - 1.5),
            high_percent: Some(deviation + 1.5),
            verdict,
            advised_factor: (verdict == CellVerdict::Deviates).then_some(1.069),
            why: [Why::Within, Why::Lean, Why::Across, Why::Drive(Missing { petrol: 0, gas: 3 })][n % 4],
        }
    };
    let regime = |regime: &str| TrimPoint {
        regime: regime.to_owned(),
        petrol_percent: Some(1.6),
        gas_percent: Some(4.1),
        difference_percent: Some(2.5),
    };
    let point = |n: u32| StripPoint {
        time_s: f64::from(n) * 10.0,
        rpm: 1_500.0 + 40.0 * f64::from(n % 30),
        load: 40.0 + f64::from(n % 40),
        petrol_ms: 4.0 + f64::from(n % 40) / 20.0,
        burned: Some(if n < 40 { Burned::Petrol } else { Burned::Gas }),
        set_aside: n.is_multiple_of(9).then_some(SetAside::Transient),
    };
    let log = |n: u8| RoadLogKept {
        name: format!("drive-{n}{}.csv", if much == Much::Plenty { SERIAL } else { "" }),
        sha256: sha256_hex(&[n]),
        bytes: 5_218_400,
        stated: Some(if n == 0 { Burned::Petrol } else { Burned::Gas }),
    };
    RoadOnPaper {
        recorded: recorded(much),
        phase: "After the corrections".into(),
        logs: vec![log(0), log(1)],
        comparison: Comparison {
            plan: Plan::default(),
            banded: Banded::Manifold,
            fuel_known: FuelKnown::Stated,
            cells: (0..if much == Much::Plenty { 60 } else { 12 }).map(cell).collect(),
            set_aside: [(SetAside::Cold, 412), (SetAside::Transient, 1_830)].into_iter().collect(),
            rows: Rows { petrol: 18_204, gas: 20_117, broken: 3 },
            trims: ["idle", "raised-idle", "cruise", "load"].map(regime).to_vec(),
            strips: vec![Strip { burned: None, points: (0..80).map(point).collect() }],
            nozzle: NozzleWord::Serves,
            warnings: vec![Warning::FuelStated, Warning::LeanAtLoad { percent: 8.2 }, Warning::NoCoolant],
        },
    }
}

pub fn calibration_record(much: Much) -> CalibrationRecordContent {
    let region = |n: usize| RegionOnPaper {
        region: format!("{} to {} rpm, 60 to 80 kPa {}", 1000 + n * 100, 1100 + n * 100, text(much, "")),
        by: Some(number(if n.is_multiple_of(2) { "4.0" } else { "-2.5" }, "%")),
    };
    let trim = |n: usize| TrimOnPaper {
        point: format!("{} /min {}", 800 + n * 300, text(much, "")),
        bank: i64::try_from(n % 2).unwrap() + 1,
        petrol_short: Some(number("-1.6", "%")),
        petrol_long: Some(number("2.3", "%")),
        gas_short: Some(number("0.8", "%")),
        gas_long: Some(number("3.9", "%")),
        difference: Some(number("4.1", "%")),
    };
    let file = |n: usize| FileOnPaper {
        name: format!("control-unit-{n}{}.bin", if much == Much::Plenty { SERIAL } else { "" }),
        bytes: 48_213,
        sha256: sha256_hex(&[u8::try_from(n).unwrap()]),
        kept_at: datetime!(2026-11-25 11:40 +1),
    };
    let has = much != Much::Little;
    CalibrationRecordContent {
        format: CALIBRATION_RECORD_FORMAT.into(),
        title: "Calibration record".into(),
        shop: shop_of(much),
        number: "J-2026-0118-C".into(),
        printed_on: date!(2026 - 11 - 25),
        job: job(much),
        calibration: has.then(|| CalibrationOnPaper {
            recorded: recorded(much),
            coolant: Some(number("88", "°C")),
            vaporiser: Some(number("64", "°C")),
            was_closed_loop: true,
            fault_codes: text(much, "P0171"),
            set_pressure: Some(number("110", "kPa")),
            gas_temperature: Some(number("42", "°C")),
            how: text(much, "Driven on petrol, then on gas over the same road, corrected where gas was lean."),
            is_nozzle_adequate: true,
            changeover: Some(number("35", "°C")),
            fall_back: Some(number("70", "kPa")),
            regions: some(much, &[region(0), region(1)], region, 30),
            lock_holder: text(much, "this shop"),
        }),
        trims: has.then(|| TrimsOnPaper {
            recorded: recorded(much),
            points: some(much, &[trim(0), trim(5)], trim, 24),
            worst: Some(number("4.1", "%")),
        }),
        road: has.then(|| road(much)),
        after_drive: has.then(|| AfterDriveOnPaper {
            recorded: recorded(much),
            on_petrol: Some(number("12.0", "km")),
            on_gas: Some(number("21.5", "km")),
            fault_codes: text(much, "P0420"),
            new_codes: some(much, &["P0420".to_owned()], |n| format!("P{n:04}"), 25),
            not_ready: text(much, "catalyst"),
        }),
        files: some(much, &[file(0)], file, 9),
        proofs: proofs(much),
        instruments: if has { instruments() } else { Vec::new() },
        entered_later: if has { vec![late()] } else { Vec::new() },
        cautions: vec!["Local code and licensed practice prevail.".into()],
        rule_sets: rule_sets(),
        language: "en".into(),
        beside_of: String::new(),
        is_demonstration: false,
        software_version: "0.1.0".into(),
    }
}

pub fn work_sheet(much: Much) -> (WorkSheetContent, Pictures) {
    let (photos, pictures) = photos(much);
    let usual = others::work_sheet();
    let content = WorkSheetContent {
        shop: shop_of(much),
        vehicle: text(much, "Corvane Pilot 1.6"),
        customer_name: text(much, "Ilse Fenwick"),
        reported_faults: text(much, "Idles rough when cold"),
        wishes: some(much, &usual.wishes, |n| format!("Note {n}: {LONG} {SERIAL}"), 20),
        findings: some(much, &usual.findings, |n| format!("Finding {n}: {LONG}"), 12),
        stages: some(much, &usual.stages, |n| WorkStage { name: format!("Stage {n}"), proofs: proofs(much) }, 3),
        photos,
        ..usual
    };
    (content, pictures)
}

pub fn wall_sheet(much: Much) -> WallSheetContent {
    let booking = |n: usize| BookingOnWall {
        time: format!("{:02}:00 – {:02}:30", 8 + n % 9, 9 + n % 9),
        whose: if n.is_multiple_of(2) { "NM 12 ABC".into() } else { text(much, "Ilse Fenwick") },
        purpose: "Inspection".into(),
        booking_state: "expected".into(),
        note: text(much, "brings the papers"),
    };
    let job = |n: usize| JobOnWall {
        number: format!("J-2026-01{n:02}"),
        plate: "NM 47 KTR".into(),
        vehicle: text(much, "Corvane Pilot 1.6"),
        purpose: "Conversion".into(),
        stage: "Fitting".into(),
        settled: 17,
        asked: 37,
        stuck: if n.is_multiple_of(2) { String::new() } else { text(much, "waits for the container") },
    };
    let bay = |n: usize| BayOnWall {
        name: format!("Bay {}", n + 1),
        bookings: some(much, &[booking(0), booking(1)], booking, 14),
        jobs: some(much, &[job(0), job(1)], job, 9),
    };
    WallSheetContent {
        shop: shop_of(much),
        day: date!(2026 - 11 - 25),
        bays: some(much, &[bay(0), bay(1)], bay, 7),
        printed_at: datetime!(2026-11-25 07:30 +1),
        language: "en".into(),
        is_demonstration: false,
    }
}

pub fn label(much: Much) -> VehicleLabelContent {
    let part = |name: &str, mark: &str| LabelPart { name: name.into(), mark: mark.into() };
    let container = |n: usize| LabelContainer {
        serial: if much == Much::Plenty { format!("{SERIAL}{n}") } else { "T-118 204".into() },
        approval_mark: "E20 67R-01 4471".into(),
        capacity_l: 54,
        fill_limit_percent: Some(80),
        working_pressure_bar: None,
        made: "2026-03".into(),
        next_test_on: Some(date!(2036 - 03 - 31)),
    };
    VehicleLabelContent {
        shop: shop_of(much),
        fuel: GasFuel::Lpg,
        plate: if much == Much::Little { String::new() } else { "NM 47 KTR".into() },
        vin_last_4: if much == Much::Little { String::new() } else { "8233".into() },
        system: text(much, "Corrie, vapour injection"),
        approval: if much == Much::Little { String::new() } else { "E4 115R-00 0731".into() },
        parts: some(
            much,
            &[
                part("Vaporiser", "E4 67R-01 0982"),
                part("Filling unit", "E4 67R-01 1204"),
                part("Multivalve", "E20 67R-01 2210"),
            ],
            |n| part(&format!("Part {n} {LONG}"), "E20 67R-01 2210"),
            8,
        ),
        containers: some(much, &[container(0)], container, 4),
        duties: some(
            much,
            &[
                duty("First check", Some(date!(2027 - 01 - 25)), ""),
                duty("Container test", Some(date!(2036 - 03 - 31)), ""),
            ],
            |n| duty(&format!("Duty {n} {LONG}"), Some(date!(2036 - 03 - 31)), ""),
            6,
        ),
        fitted_on: (much != Much::Little).then_some(date!(2026 - 11 - 25)),
        job_number: "J-2026-0118".into(),
        code: "4M7T-2K9Q-XW3H-8RDC".into(),
        url: (much != Much::Little).then(|| "https://northmere.example/vehicle/4M7T-2K9Q-XW3H-8RDC".into()),
        printed_on: date!(2026 - 11 - 25),
        language: "en".into(),
        is_demonstration: false,
    }
}

fn parties(much: Much) -> Parties {
    Parties {
        shop: shop_of(much),
        job_number: "2026-0118".into(),
        customer_name: text(much, "Ilse Fenwick"),
        customer_address: text(much, "Mill Lane 12, Northmere"),
        vehicle: text(much, "Corvane Pilot 1.6"),
        plate: if much == Much::Little { String::new() } else { "NM 47 KTR".into() },
        language: "en".into(),
        is_demonstration: false,
    }
}

fn agreed(much: Much) -> Option<AgreedOnPaper> {
    (much != Much::Little).then(|| AgreedOnPaper {
        amount_minor: 155_502,
        how: AgreedHow::Phone,
        by: text(much, "Ana Reyes"),
        on: date!(2026 - 11 - 24),
        noted_by: text(much, "Mina Lark"),
    })
}

/// Lines as reckoned by hand in the story of an estimate; far too many of them, of amounts as long as they come.
fn priced(much: Much) -> Priced {
    let line = |what: &str, kind, quantity_thousandths, unit_price_minor, amount_minor| PricedLine {
        what: what.into(),
        kind,
        quantity_thousandths,
        unit_price_minor,
        amount_minor,
    };
    let usual = [
        line("Container, 54 L", LineKind::Part, 1_000, 148_000, 148_000),
        line("Fitting, hour", LineKind::Work, 1_500, 4_999, 7_499),
        line("Sealant, litre", LineKind::Other, 333, 10, 3),
    ];
    let long = |n: usize| {
        line(&format!("Line {n}: {LONG} {SERIAL}"), LineKind::Work, 9_999_999, 9_999_999_999, 99_999_989_990_000)
    };
    let lines = some(much, &usual, long, 60);
    Priced {
        version: 2,
        currency: "EUR".into(),
        total_minor: lines.iter().map(|line| line.amount_minor).sum(),
        lines,
        note: text(much, "Tax is included."),
        agreed: agreed(much),
    }
}

fn deposit(much: Much, n: usize) -> DepositOnPaper {
    let is_back = n % 3 == 2;
    DepositOnPaper {
        amount_minor: if is_back { -50_000 } else { 50_000 },
        paid_how: text(much, "card"),
        received_on: date!(2026 - 11 - 24),
        received_by: text(much, "Mina Lark"),
        reason: if is_back { text(much, "paid twice") } else { String::new() },
    }
}

pub fn estimate(much: Much) -> EstimateContent {
    EstimateContent {
        parties: parties(much),
        priced: priced(much),
        written_on: date!(2026 - 11 - 24),
        valid_until_on: (much != Much::Little).then_some(date!(2026 - 12 - 24)),
    }
}

pub fn price_list(much: Much) -> PriceListContent {
    let deposits = some(much, &[0, 1, 2].map(|n| deposit(much, n)), |n| deposit(much, n), 30);
    let (priced, deposited_minor) = (priced(much), deposits.iter().map(|one| one.amount_minor).sum());
    PriceListContent {
        parties: parties(much),
        remaining_minor: priced.total_minor - deposited_minor,
        deposited_minor,
        priced,
        deposits,
        printed_on: date!(2026 - 11 - 25),
    }
}

pub fn deposit_receipt(much: Much) -> DepositReceiptContent {
    DepositReceiptContent {
        parties: parties(much),
        number: 1,
        currency: "EUR".into(),
        deposit: deposit(much, 0),
        taken_back: (much == Much::Plenty).then(|| deposit(much, 2)),
    }
}

pub fn letter(much: Much) -> LetterContent {
    let answers =
        ["I would like to come; best on:", "Done elsewhere, on (date) by (shop):", "I want no more reminders."];
    LetterContent {
        shop: shop_of(much),
        to_name: if much == Much::Plenty { LONG.into() } else { "Ilse Fenwick".into() },
        to_address: some(much, &["Mill Lane 12".to_owned(), "Northmere".into()], |n| format!("{n} {LONG}"), 5),
        day: date!(2026 - 11 - 25),
        subject: text(much, "NM 47 KTR: the container falls due"),
        paragraphs: some(
            much,
            &["Dear Ilse Fenwick,".to_owned(), "The container of your vehicle must be tested by 31 March 2027.".into()],
            |n| format!("Paragraph {n}. {LONG} and further words that go on over the end of the line."),
            40,
        ),
        answers: if much == Much::Little { Vec::new() } else { answers.map(str::to_owned).to_vec() },
        written_at: datetime!(2026-11-24 06:00 UTC),
        language: "en".into(),
        is_demonstration: false,
    }
}
