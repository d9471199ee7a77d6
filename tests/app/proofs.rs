//! The proofs of an LPG conversion as a table: each is met by what a told job holds, and lost again when exactly that is
//! taken away or spoiled. The rules are pure, so the job file is changed in memory.

use std::collections::BTreeSet;

use fuelwright::db;
use fuelwright::model::Coded;
use fuelwright::model::evidence::{
    CheckAnswer, Evidence, FillStopHow, JointVerdict, NozzleVerdict, SuitabilityVerdict,
};
use fuelwright::model::ids::InstrumentId;
use fuelwright::model::job::{Fuel, Job, JobKind};
use fuelwright::model::job_file::{JobFile, Recalled};
use fuelwright::model::part::PartCategory;
use fuelwright::model::recall::Carries;
use fuelwright::model::stage::{Stage, stages_of};
use fuelwright::rules::{self, Deadline, Proof, RuleBook, State};
use time::macros::date;
use time::{Date, Duration};

use crate::support::TestShop;

const TODAY: Date = date!(2026 - 05 - 12);

async fn told() -> JobFile {
    let open = TestShop::open().await;
    let told = open.told().await;
    let mut con = open.shop.db.read().await.unwrap();
    db::job_files::find(&mut con, open.branch, told.job).await.unwrap().unwrap()
}

fn assess(file: &JobFile) -> Vec<Proof> {
    rules::assess(file, &RuleBook::shipped().unwrap(), TODAY, &|at| at.date())
}

fn state_of<'a>(proofs: &'a [Proof], id: &str) -> (State, &'a str) {
    let proof = proofs.iter().find(|proof| proof.id == id).unwrap_or_else(|| panic!("no proof {id}"));
    (proof.state, proof.why.key)
}

fn drop_evidence(file: &mut JobFile, kind: &str, subject: &str) {
    let before = file.evidence.len();
    file.evidence.retain(|entry| entry.body.kind() != kind || entry.body.subject() != subject);
    assert_eq!(file.evidence.len() + 1, before, "{kind} {subject} was there");
}

fn body<'a>(file: &'a mut JobFile, kind: &str, subject: &str) -> &'a mut Evidence {
    let entry = file.evidence.iter_mut().find(|entry| entry.body.kind() == kind && entry.body.subject() == subject);
    &mut entry.unwrap().body
}

fn recalled(file: &JobFile, carries: Carries) -> Recalled {
    Recalled { part: file.parts[0].id, carries, by: "Tarnwell, TW-7".into() }
}

/// Spoils a told file in one way.
type Spoil = fn(&mut JobFile);

macro_rules! spoil {
    ($kind:literal, $subject:literal, $variant:ident, |$one:ident| $change:expr) => {
        |file: &mut JobFile| {
            let Evidence::$variant($one) = body(file, $kind, $subject) else { panic!() };
            $change;
        }
    };
}

/// What is done to the file, the proof it touches, how that proof then stands, and why.
const TABLE: &[(&str, Spoil, &str, State, &str)] = &[
    ("no plate", |f| f.vehicle.plate.clear(), "vehicle", State::Missing, "field-missing"),
    ("no power", |f| f.vehicle.rated_power_kw = None, "vehicle", State::Missing, "field-missing"),
    ("an impossible VIN", |f| f.vehicle.vin = "1M8GDM9AXKP04278O".into(), "vehicle", State::Stops, "vin-malformed"),
    (
        "a keeper nobody can reach",
        |f| {
            f.keeper.phone.clear();
            f.keeper.mail.clear();
            f.keeper.address.clear();
        },
        "keeper",
        State::Missing,
        "keeper-unreachable",
    ),
    ("no arrival", |f| drop_evidence(f, "arrival", ""), "odometer", State::Missing, "not-recorded"),
    (
        "no photo of the odometer",
        |f| f.attachments.retain(|a| a.slot != "odometer"),
        "photo-odometer",
        State::Missing,
        "not-recorded",
    ),
    ("no suitability", |f| drop_evidence(f, "suitability", ""), "suitable", State::Missing, "not-recorded"),
    (
        "not suitable",
        spoil!("suitability", "", Suitability, |s| s.verdict = SuitabilityVerdict::NotSuitable),
        "suitable",
        State::Stops,
        "not-suitable",
    ),
    (
        "measured cold",
        spoil!("suitability", "", Suitability, |s| s.coolant_c = 40.0),
        "suitable",
        State::Undecided,
        "engine-cold",
    ),
    (
        "one weak engine cylinder",
        spoil!("suitability", "", Suitability, |s| s.compression_kpa[2] = 900.0),
        "suitable",
        State::Stops,
        "compression-spread",
    ),
    (
        "conditions nobody accepted",
        spoil!("suitability", "", Suitability, |s| s.verdict = SuitabilityVerdict::WithConditions),
        "suitable",
        State::Missing,
        "conditions-not-accepted",
    ),
    ("no nozzle sheet", |f| drop_evidence(f, "nozzle-sizing", ""), "nozzle", State::Missing, "not-recorded"),
    (
        "a nozzle too small",
        spoil!("nozzle-sizing", "", NozzleSizing, |s| s.verdict = NozzleVerdict::TooSmall),
        "nozzle",
        State::Stops,
        "nozzle-fits-not",
    ),
    (
        "no container sheet",
        |f| drop_evidence(f, "container-sizing", ""),
        "container-sized",
        State::Missing,
        "not-recorded",
    ),
    (
        "an axle overloaded",
        spoil!("container-sizing", "", ContainerSizing, |s| s.is_within_axle_reserve = Some(false)),
        "container-sized",
        State::Stops,
        "axle-overloaded",
    ),
    (
        "no container",
        |f| f.parts.retain(|p| p.category != PartCategory::Container),
        "part-container",
        State::Missing,
        "not-recorded",
    ),
    (
        "no vaporiser",
        |f| f.parts.retain(|p| p.category != PartCategory::Vaporiser),
        "part-vaporiser",
        State::Missing,
        "not-recorded",
    ),
    (
        "no multivalve",
        |f| f.parts.retain(|p| p.category != PartCategory::Multivalve),
        "part-multivalve",
        State::Missing,
        "not-recorded",
    ),
    (
        "a part without serial and batch",
        |f| {
            f.parts[0].serial.clear();
            f.parts[0].batch.clear();
        },
        "traceable",
        State::Missing,
        "part-without-serial",
    ),
    (
        "one serial twice",
        |f| {
            let twin = f.parts[0].clone();
            f.parts.push(twin);
        },
        "traceable",
        State::Stops,
        "part-doubled",
    ),
    ("a part without mark", |f| f.parts[0].approval_mark.clear(), "marks", State::Missing, "mark-missing"),
    (
        "a mark for CNG",
        |f| f.parts[0].approval_mark = "E4 110R-01 0982".into(),
        "marks",
        State::Stops,
        "mark-other-fuel",
    ),
    ("a mark nobody can read", |f| f.parts[0].approval_mark = "??".into(), "marks", State::Stops, "mark-unreadable"),
    (
        "a part under an open recall",
        |f| f.recalled = vec![recalled(f, Carries::Surely)],
        "not-recalled",
        State::Stops,
        "part-recalled",
    ),
    (
        "a part that may be under one",
        |f| f.recalled = vec![recalled(f, Carries::Perhaps)],
        "not-recalled",
        State::Undecided,
        "part-perhaps-recalled",
    ),
    ("a container without date", |f| f.parts[0].made_on = None, "storage-in-date", State::Missing, "made-missing"),
    (
        "a container eleven years old",
        |f| f.parts[0].made_on = Some(date!(2015 - 03 - 31)),
        "storage-in-date",
        State::Stops,
        "storage-expired",
    ),
    (
        "no engine cylinder table",
        |f| drop_evidence(f, "cylinder-table", ""),
        "engine-cylinders",
        State::Missing,
        "not-recorded",
    ),
    (
        "an engine cylinder left out",
        spoil!("cylinder-table", "", CylinderTable, |t| {
            t.rows.pop();
        }),
        "engine-cylinders",
        State::Missing,
        "cylinders-incomplete",
    ),
    (
        "one injector for two",
        spoil!("cylinder-table", "", CylinderTable, |t| t.rows[1].gas_injector = 1),
        "engine-cylinders",
        State::Stops,
        "injector-doubled",
    ),
    (
        "an engine cylinder that does not answer",
        spoil!("cylinder-table", "", CylinderTable, |t| t.rows[3].answers = false),
        "engine-cylinders",
        State::Stops,
        "cylinder-silent",
    ),
    (
        "another nozzle fitted than reckoned",
        spoil!("cylinder-table", "", CylinderTable, |t| t.rows[0].nozzle_mm = 2.2),
        "nozzle-adequate",
        State::Stops,
        "nozzle-differs",
    ),
    ("no checklist", |f| drop_evidence(f, "checklist", ""), "fixing", State::Missing, "not-recorded"),
    (
        "a vent that fails",
        spoil!("checklist", "", Checklist, |c| c.answers.get_mut("housing-vent").unwrap().answer = CheckAnswer::Fail),
        "housing",
        State::Stops,
        "check-fails",
    ),
    (
        "a fixing called not applicable",
        spoil!("checklist", "", Checklist, |c| c.answers.get_mut("fixing-permanent").unwrap().answer =
            CheckAnswer::NotApplicable),
        "fixing",
        State::Missing,
        "checklist-open",
    ),
    (
        "no calibration",
        |f| drop_evidence(f, "engine-calibration", ""),
        "calibrated-warm",
        State::Missing,
        "not-recorded",
    ),
    (
        "a cold vaporiser",
        spoil!("engine-calibration", "", EngineCalibration, |c| c.vaporiser_c = 31.0),
        "calibrated-warm",
        State::Stops,
        "vaporiser-cold",
    ),
    (
        "open loop",
        spoil!("engine-calibration", "", EngineCalibration, |c| c.was_closed_loop = false),
        "calibrated-clean",
        State::Stops,
        "open-loop",
    ),
    (
        "the nozzle must change",
        spoil!("engine-calibration", "", EngineCalibration, |c| c.is_nozzle_adequate = false),
        "nozzle-adequate",
        State::Stops,
        "nozzle-must-change",
    ),
    (
        "trims apart",
        spoil!("trims", "", Trims, |t| t.points[0].gas_long_percent = 16.0),
        "trims",
        State::Stops,
        "trims-apart",
    ),
    (
        "too short a drive",
        spoil!("after-drive", "", AfterDrive, |d| d.gas_km = 1.0),
        "after-drive",
        State::Undecided,
        "drive-short",
    ),
    (
        "a new fault code",
        spoil!("after-drive", "", AfterDrive, |d| d.fault_codes = "P0171".into()),
        "after-drive",
        State::Stops,
        "fault-codes",
    ),
    (
        "no leak test of the liquid side",
        |f| drop_evidence(f, "leak-joints", "lpg-liquid"),
        "leak-lpg-liquid",
        State::Missing,
        "not-recorded",
    ),
    (
        "a joint not looked at",
        spoil!("leak-joints", "lpg-vapour", LeakJoints, |t| t.joints[0].verdict = JointVerdict::NotTested),
        "leak-lpg-vapour",
        State::Missing,
        "joints-open",
    ),
    (
        "bubbles",
        spoil!("leak-joints", "lpg-vapour", LeakJoints, |t| t.joints[0].verdict = JointVerdict::Leaks),
        "leak-lpg-vapour",
        State::Stops,
        "joint-leaks",
    ),
    (
        "old foam",
        spoil!("leak-joints", "lpg-liquid", LeakJoints, |t| t.foam_expires_on = Some(date!(2026 - 05 - 11))),
        "leak-lpg-liquid",
        State::Stops,
        "foam-expired",
    ),
    (
        "no joints at all",
        spoil!("leak-joints", "lpg-liquid", LeakJoints, |t| t.joints.clear()),
        "leak-lpg-liquid",
        State::Missing,
        "joints-open",
    ),
    ("no exhaust on gas", |f| drop_evidence(f, "exhaust", "gas"), "exhaust-gas", State::Missing, "not-recorded"),
    (
        "CO over the limit",
        spoil!("exhaust", "gas", Exhaust, |e| e.idle.co_percent = 0.31),
        "exhaust-gas",
        State::Stops,
        "exhaust-fails",
    ),
    (
        "lean",
        spoil!("exhaust", "gas", Exhaust, |e| e.raised.o2_percent = 1.6),
        "exhaust-gas",
        State::Stops,
        "exhaust-fails",
    ),
    (
        "raised idle too slow",
        spoil!("exhaust", "petrol", Exhaust, |e| e.raised.rpm = 1_700.0),
        "exhaust-petrol",
        State::Undecided,
        "raised-idle-slow",
    ),
    (
        "the probe in the air",
        spoil!("exhaust", "petrol", Exhaust, |e| e.raised.co2_percent = 0.2),
        "exhaust-petrol",
        State::Stops,
        "probe-not-in-exhaust",
    ),
    (
        "an analyser that nobody checked today",
        |f| f.instruments[0].checks.clear(),
        "exhaust-gas",
        State::Stops,
        "instrument-not-checked",
    ),
    (
        "an analyser out of calibration",
        |f| f.instruments[0].certificates[0].due_on = date!(2026 - 05 - 11),
        "exhaust-petrol",
        State::Stops,
        "instrument-out-since",
    ),
    (
        "a reading without analyser",
        |f| {
            let entry = f.evidence.iter_mut().find(|e| e.body.subject() == "gas").unwrap();
            entry.instruments.clear();
        },
        "exhaust-gas",
        State::Missing,
        "analyser-missing",
    ),
    (
        "an analyser the shop does not have",
        |f| {
            let entry = f.evidence.iter_mut().find(|e| e.body.subject() == "gas").unwrap();
            entry.instruments = vec![InstrumentId::new()];
        },
        "exhaust-gas",
        State::Stops,
        "instrument-unknown",
    ),
    (
        "no return to petrol",
        spoil!("function-checks", "", FunctionChecks, |c| c.returns_when_empty = false),
        "changeover",
        State::Stops,
        "does-not-work",
    ),
    (
        "a slow shut-off",
        spoil!("function-checks", "", FunctionChecks, |c| c.shut_off_stalled_s = Some(2.1)),
        "shut-off",
        State::Stops,
        "shut-off-slow",
    ),
    (
        "gas that stays open",
        spoil!("function-checks", "", FunctionChecks, |c| c.shut_off_ignition_s = None),
        "shut-off",
        State::Stops,
        "gas-stays-open",
    ),
    (
        "filled over 80 %",
        spoil!("function-checks", "", FunctionChecks, |c| c.fill_stop_l = Some(44.0)),
        "fill-stop",
        State::Stops,
        "fill-stop-late",
    ),
    (
        "the fill stop later",
        spoil!("function-checks", "", FunctionChecks, |c| c.fill_stop_how = Some(FillStopHow::Later)),
        "fill-stop",
        State::Met,
        "fill-stop-later",
    ),
    (
        "a vent closed",
        spoil!("function-checks", "", FunctionChecks, |c| c.vent_is_open = false),
        "vent",
        State::Stops,
        "does-not-work",
    ),
    (
        "no label",
        spoil!("function-checks", "", FunctionChecks, |c| c.label_in_place = false),
        "label",
        State::Stops,
        "does-not-work",
    ),
    ("no topics", spoil!("hand-over", "", HandOver, |h| h.topics.clear()), "instructed", State::Missing, "topics-open"),
    (
        "no signature",
        |f| {
            let entry = f.evidence.iter_mut().find(|e| e.body.kind() == "hand-over").unwrap();
            entry.attachments.clear();
        },
        "received",
        State::Missing,
        "signature-missing",
    ),
];

#[tokio::test]
async fn each_proof_is_lost_when_what_meets_it_is_spoiled() {
    let file = told().await;
    assert!(assess(&file).iter().all(|proof| proof.state == State::Met));
    for (what, spoil, id, state, why) in TABLE {
        let mut spoiled = file.clone();
        spoil(&mut spoiled);
        let proofs = assess(&spoiled);
        assert_eq!(state_of(&proofs, id), (*state, *why), "{what}");
        let due = proofs.iter().any(|proof| proof.before == Deadline::Issue && !proof.state.is_settled());
        assert_eq!(rules::may_issue(&proofs), !due, "{what}");
    }
}

#[tokio::test]
async fn every_proof_of_a_conversion_has_a_row_in_the_table() {
    let proofs = assess(&told().await);
    // Parts beside the three in the table, and groups of the checklist, are judged by the same function.
    let alike =
        ["part-shut-off", "part-injectors", "part-filling-unit", "part-control-unit", "clearances", "lines", "wiring"];
    let alike =
        alike.into_iter().chain(["photo-vin-plate", "photo-container-plate", "level-sensing", "level", "findings"]);
    let alike: Vec<&str> = alike.collect();
    for proof in proofs {
        let has_row = TABLE.iter().any(|(_, _, id, ..)| *id == proof.id) || alike.contains(&proof.id.as_str());
        assert!(has_row, "{}", proof.id);
    }
}

#[tokio::test]
async fn a_measurement_is_held_against_the_rules_of_its_own_day() {
    let mut file = told().await;
    // The analyser's certificate ended yesterday; what was measured before that still counts.
    let ended = date!(2026 - 05 - 11);
    file.instruments[0].certificates[0].due_on = ended;
    for entry in file.evidence.iter_mut().filter(|entry| entry.body.kind() == "exhaust") {
        entry.measured_at -= Duration::days(3);
    }
    let earlier = file.instruments[0].checks[0].clone();
    file.instruments[0].checks[0].checked_at = earlier.checked_at - Duration::days(3);
    assert_eq!(state_of(&assess(&file), "exhaust-gas").0, State::Met);
}

#[test]
fn what_can_hurt_is_never_waived_even_when_a_shop_line_says_so() {
    let looser = r#"
        name = "shop"
        version = "2"
        title = "Shop lines"
        is_shop = true
        [[proof]]
        id = "shut-off"
        stage = "proving"
        needs = "shut-off"
        waive = "signatory"
        may_not_apply = true
        source = "wishful"
        checked = false
    "#;
    let mut book = RuleBook::shipped().unwrap();
    book.sets.push(fuelwright::rules::RuleSet::read(looser).unwrap());
    let lines: Vec<_> = book.sets.iter().flat_map(|set| &set.proof).filter(|line| line.id == "shut-off").collect();
    assert_eq!(lines.len(), 2);
    assert!(lines.iter().all(|line| line.is_never_waived()));
}

/// A column of the table, and the job it speaks of.
pub const COLUMNS: [(&str, JobKind, bool); 8] = [
    ("conversion", JobKind::Conversion, false),
    ("inspection", JobKind::Inspection, false),
    ("repair_low", JobKind::Repair, true),
    ("repair", JobKind::Repair, false),
    ("exchange", JobKind::Exchange, false),
    ("after_accident", JobKind::AfterAccident, false),
    ("comeback", JobKind::Comeback, false),
    ("removal", JobKind::Removal, false),
];

#[tokio::test]
async fn each_kind_of_job_asks_for_the_proofs_of_the_table_and_no_others() {
    let table = include_str!("../reference/proofs_by_kind.csv");
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_reader(table.as_bytes());
    let head = reader.headers().unwrap().clone();
    let rows: Vec<csv::StringRecord> = reader.records().map(Result::unwrap).collect();
    let book = RuleBook::shipped().unwrap();
    let told = told().await;
    for (column, kind, is_low_pressure_only) in COLUMNS {
        let at = head.iter().position(|name| name == column).unwrap();
        for fuel in Fuel::ALL {
            let job = Job { kind, fuel: *fuel, is_low_pressure_only, ..told.job.clone() };
            let wanted: BTreeSet<&str> = rows
                .iter()
                .filter(|row| &row[1] == "both" || &row[1] == fuel.code())
                .flat_map(|row| row[at].split(' '))
                .filter(|id| *id != "-")
                .collect();
            let lines = book.proofs(&job, date!(2026 - 05 - 12));
            let asked: BTreeSet<&str> = lines.iter().map(|line| line.id.as_str()).collect();
            assert_eq!(asked, wanted, "{column} on {fuel}");
        }
    }
}

#[test]
fn each_kind_of_job_has_its_stages_in_the_order_of_the_rail() {
    for kind in JobKind::ALL {
        let stages = stages_of(*kind);
        assert_eq!(stages.first(), Some(&Stage::Intake));
        assert_eq!(stages.last(), Some(&Stage::HandOver));
        assert!(stages.windows(2).all(|pair| pair[0] < pair[1]), "{kind}");
    }
    assert_eq!(stages_of(JobKind::Conversion).len(), 6);
    assert_eq!(stages_of(JobKind::Inspection), [Stage::Intake, Stage::Proving, Stage::HandOver]);
}
