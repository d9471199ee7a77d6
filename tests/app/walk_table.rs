//! What may happen to the things on a job file, and which proofs each of it breaks: the table of the walk.
//!
//! A thing is a slot; its first state is good. A broken proof is either open (missing, undecided, not to be trusted) or failed
//! (measured or looked at, and not as it should be). The table is written down from what the words of the proofs say, not
//! from how the rules reckon.

use fuelwright::model::evidence::{
    CheckAnswer, Checklist, Deficiencies, Evidence, FoundDeficiency, Joint, JointVerdict, LevelSensingKind,
    NozzleVerdict, Section, Severity, SuitabilityVerdict, VesselCheck, VesselFinding, VesselInspection, VesselLevel,
    VesselLooked,
};
use fuelwright::model::finding::Finding;
use fuelwright::model::ids::{EvidenceId, FindingId, InstrumentId};
use fuelwright::model::job::{Fuel, Job, JobKind};
use fuelwright::model::job_file::{JobFile, Recalled};
use fuelwright::model::part::{Part, PartCategory};
use fuelwright::model::recall::Carries;
use fuelwright::rules::RuleBook;
use time::Duration;
use time::macros::date;

/// How a proof is broken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Broken {
    Open,
    Failed,
}
use Broken::{Failed, Open};

type Change = Box<dyn Fn(&mut JobFile)>;
type Restore = Box<dyn Fn(&mut JobFile, &JobFile)>;

/// One state of a thing.
pub struct Standing {
    pub name: String,
    pub change: Change,
    pub breaks: Vec<(String, Broken)>,
    /// The thing is not there.
    pub is_absent: bool,
    /// For the list of deficiencies: the gravest, and whether the reason for what was not tested is given.
    pub severity: (Option<Severity>, bool),
}

/// One thing on the file.
pub struct Slot {
    pub name: &'static str,
    /// Puts the good thing there again.
    pub restore: Restore,
    pub states: Vec<Standing>,
    /// A part: in a removal they are off already.
    pub is_part: bool,
    /// Looked at in a removal only.
    pub is_removal: bool,
}

fn state(name: &str, change: impl Fn(&mut JobFile) + 'static, breaks: &[(&str, Broken)]) -> Standing {
    let breaks = breaks.iter().map(|(id, how)| ((*id).to_owned(), *how)).collect();
    Standing { name: name.to_owned(), change: Box::new(change), breaks, is_absent: false, severity: (None, false) }
}

fn all(ids: &[&'static str], how: Broken) -> Vec<(&'static str, Broken)> {
    ids.iter().map(|id| (*id, how)).collect()
}

fn good() -> Standing {
    state("good", |_| {}, &[])
}

fn gone(kind: &'static str, subject: &'static str, breaks: &[&'static str]) -> Standing {
    let drop = move |file: &mut JobFile| {
        file.evidence.retain(|entry| entry.body.kind() != kind || entry.body.subject() != subject);
    };
    Standing { is_absent: true, ..state("not recorded", drop, &all(breaks, Open)) }
}

/// An entry of evidence: the good one is a new entry that corrects whatever stood there.
fn entry(kind: &'static str, subject: &'static str, breaks: &[&'static str], spoiled: Vec<Standing>) -> Slot {
    let restore = move |file: &mut JobFile, base: &JobFile| {
        let old = file.entry(kind, subject).map(|entry| entry.id);
        file.evidence.retain(|entry| Some(entry.id) != old);
        let mut new = base.entry(kind, subject).unwrap_or_else(|| panic!("{kind} {subject}")).clone();
        if let Some(old) = old {
            (new.id, new.replaces_id, new.replaces_reason) = (EvidenceId::new(), Some(old), "looked again".into());
        }
        file.evidence.push(new);
    };
    let mut states = vec![good(), gone(kind, subject, breaks)];
    states.extend(spoiled);
    Slot { name: kind, restore: Box::new(restore), states, is_part: false, is_removal: false }
}

fn other(name: &'static str, restore: impl Fn(&mut JobFile, &JobFile) + 'static, spoiled: Vec<Standing>) -> Slot {
    let mut states = vec![good()];
    states.extend(spoiled);
    Slot { name, restore: Box::new(restore), states, is_part: false, is_removal: false }
}

/// Changes the body of one entry.
macro_rules! body {
    ($kind:expr, $subject:expr, $variant:ident, |$one:ident| $change:expr) => {
        move |file: &mut JobFile| {
            let entry = file.evidence.iter_mut().find(|one| one.body.kind() == $kind && one.body.subject() == $subject);
            let Evidence::$variant($one) = &mut entry.unwrap().body else { panic!() };
            $change;
        }
    };
}

fn part_slot(name: &'static str, category: PartCategory, spoiled: Vec<Standing>, missed: &[(&str, Broken)]) -> Slot {
    let restore = move |file: &mut JobFile, base: &JobFile| {
        file.parts.retain(|part| part.category != category);
        file.parts.extend(base.parts.iter().filter(|part| part.category == category).cloned());
    };
    // Taken off by this job: it stays in the books, and counts no more.
    let drop = move |file: &mut JobFile| {
        let job = file.job.id;
        for part in file.parts.iter_mut().filter(|part| part.category == category) {
            (part.removed_in, part.removed_on) = (Some(job), Some(part.fitted_on));
        }
    };
    let absent = Standing { is_absent: true, ..state("taken off", drop, missed) };
    let mut states = vec![good(), absent];
    states.extend(spoiled);
    Slot { name, restore: Box::new(restore), states, is_part: true, is_removal: false }
}

fn change_part(category: PartCategory, change: fn(&mut Part)) -> impl Fn(&mut JobFile) {
    move |file| change(file.parts.iter_mut().find(|part| part.category == category).unwrap())
}

fn vessel(category: PartCategory, part: &'static str) -> Slot {
    let by = |name, change: fn(&mut Part), breaks| state(name, change_part(category, change), breaks);
    let spoiled = vec![
        by(
            "its life ended yesterday",
            |p| p.end_of_life_on = Some(date!(2026 - 05 - 11)),
            &[("storage-in-date", Failed)],
        ),
        by("no date of manufacture", |p| p.made_on = None, &[("storage-in-date", Open)]),
        by("neither serial nor batch", |p| (p.serial, p.batch) = Default::default(), &[("traceable", Open)]),
        by("no approval mark", |p| p.approval_mark.clear(), &[("marks", Open)]),
        by("a mark nobody can read", |p| p.approval_mark = "??".into(), &[("marks", Failed)]),
        by("a mark of another thing", |p| p.approval_mark = "E4 13R-01 0982".into(), &[("marks", Failed)]),
        by("no capacity", |p| p.capacity_l = None, &[("fill-stop", Open)]),
    ];
    // A vessel that is off needs no looking at; whatever is asked of a vessel is then missing.
    part_slot("vessel", category, spoiled, &[(part, Open), ("storage-in-date", Open), ("fill-stop", Open)])
}

/// What stands on an analyser: both exhaust tests.
const EXHAUST: [&str; 4] = ["exhaust-petrol", "exhaust-gas", "exhaust-petrol-touched", "exhaust-gas-touched"];

fn analyser() -> Slot {
    let by = |name, change: fn(&mut JobFile)| state(name, change, &all(&EXHAUST, Open));
    other(
        "analyser",
        |file, base| file.instruments.clone_from(&base.instruments),
        vec![
            by("out of calibration", |f| f.instruments[0].certificates[0].due_on = date!(2026 - 05 - 11)),
            by("never calibrated", |f| f.instruments[0].certificates.clear()),
            by("not checked today", |f| f.instruments[0].checks.clear()),
            by("checked only afterwards", |f| f.instruments[0].checks[0].checked_at += Duration::hours(12)),
            by("failed its check", |f| f.instruments[0].checks[0].has_passed = false),
            by("out of use", |f| f.instruments[0].instrument.retired_on = Some(date!(2026 - 05 - 01))),
            by("not the shop's", |f| f.instruments[0].instrument.id = InstrumentId::new()),
        ],
    )
}

fn exhaust(on_gas: bool) -> Slot {
    let (subject, ids): (&'static str, [&'static str; 2]) = if on_gas {
        ("gas", ["exhaust-gas", "exhaust-gas-touched"])
    } else {
        ("petrol", ["exhaust-petrol", "exhaust-petrol-touched"])
    };
    let with = move |file: &mut JobFile| {
        let entry = file.evidence.iter_mut().find(|one| one.body.kind() == "exhaust" && one.body.subject() == subject);
        entry.unwrap().instruments.clear();
    };
    let failed = all(&ids, Failed);
    let open = all(&ids, Open);
    entry(
        "exhaust",
        subject,
        &ids,
        vec![
            state("CO far over", body!("exhaust", subject, Exhaust, |e| e.idle.co_percent = 2.0), &failed),
            state("lean", body!("exhaust", subject, Exhaust, |e| e.raised.o2_percent = 3.0), &failed),
            state("raised idle too slow", body!("exhaust", subject, Exhaust, |e| e.raised.rpm = 1_700.0), &open),
            state("the probe in the air", body!("exhaust", subject, Exhaust, |e| e.raised.co2_percent = 0.2), &open),
            state("no analyser named", with, &open),
        ],
    )
}

fn leak(subject: &'static str, id: &'static str) -> Slot {
    entry(
        "leak-joints",
        subject,
        &[id],
        vec![
            state(
                "bubbles",
                body!("leak-joints", subject, LeakJoints, |t| t.joints[0].verdict = JointVerdict::Leaks),
                &[(id, Failed)],
            ),
            state(
                "a joint not looked at",
                body!("leak-joints", subject, LeakJoints, |t| t.joints[1].verdict = JointVerdict::NotTested),
                &[(id, Open)],
            ),
            state("no joints", body!("leak-joints", subject, LeakJoints, |t| t.joints.clear()), &[(id, Open)]),
            state(
                "old foam",
                body!("leak-joints", subject, LeakJoints, |t| t.foam_expires_on = Some(date!(2026 - 05 - 11))),
                &[(id, Open)],
            ),
            state(
                "bubbles in old foam",
                body!("leak-joints", subject, LeakJoints, |t| {
                    t.foam_expires_on = Some(date!(2026 - 05 - 11));
                    t.joints.push(Joint { name: "one more".into(), verdict: JointVerdict::Leaks });
                }),
                &[(id, Open)],
            ),
        ],
    )
}

fn functions() -> Slot {
    let every = ["changeover", "shut-off", "fill-stop", "level", "vent", "label", "label-kept"];
    macro_rules! by {
        ($name:literal, |$one:ident| $change:expr, $breaks:expr) => {
            state($name, body!("function-checks", "", FunctionChecks, |$one| $change), &$breaks)
        };
    }
    entry(
        "function-checks",
        "",
        &every,
        vec![
            by!("does not change over", |c| c.changeover_works = false, [("changeover", Failed)]),
            by!("no return to petrol", |c| c.returns_when_empty = false, [("changeover", Failed)]),
            by!("slow shut-off", |c| c.shut_off_stalled_s = Some(9.0), [("shut-off", Failed)]),
            by!("gas stays open", |c| c.shut_off_ignition_s = None, [("shut-off", Failed)]),
            by!("overfilled", |c| c.fill_stop_l = Some(50.0), [("fill-stop", Failed)]),
            by!("no litres", |c| c.fill_stop_l = None, [("fill-stop", Open)]),
            by!("fill stop not said", |c| c.fill_stop_how = None, [("fill-stop", Open)]),
            by!("level wrong", |c| c.level_shows = false, [("level", Failed)]),
            by!("vent closed", |c| c.vent_is_open = false, [("vent", Failed)]),
            by!("no excess-flow valve", |c| c.excess_flow_present = false, [("vent", Failed)]),
            by!("no label", |c| c.label_in_place = false, [("label", Failed), ("label-kept", Failed)]),
        ],
    )
}

/// Groups of the checklist, with the proof that each meets.
const GROUPS: [(&str, &str); 10] = [
    ("fixing", "fixing"),
    ("housing", "housing"),
    ("clearances", "clearances"),
    ("lines", "lines"),
    ("wiring", "wiring"),
    ("marks", "marks-readable"),
    ("refitted", "refitted"),
    ("requalified", "requalified"),
    ("removed", "removed"),
    ("petrol-tight", "leak-petrol"),
];

fn checklist(base: &JobFile, book: &RuleBook) -> Slot {
    let groups: Vec<&'static str> = GROUPS.iter().map(|(_, proof)| *proof).collect();
    let mut spoiled = Vec::new();
    for (group, proof) in GROUPS {
        let lines = book.checks(&base.job).into_iter().filter(|line| line.group == group);
        let lines: Vec<String> = lines.map(|line| line.id.clone()).collect();
        let Some(first) = lines.first().cloned() else { continue };
        let id = first.clone();
        let fails = move |c: &mut Checklist| c.answers.get_mut(&id).unwrap().answer = CheckAnswer::Fail;
        let id = first;
        let forgets = move |c: &mut Checklist| drop(c.answers.remove(&id));
        let on = |change: Box<dyn Fn(&mut Checklist)>| {
            move |file: &mut JobFile| {
                let entry = file.evidence.iter_mut().find(|one| one.body.kind() == "checklist").unwrap();
                let Evidence::Checklist(list) = &mut entry.body else { panic!() };
                change(list);
            }
        };
        spoiled.push(state(&format!("{group}: a line fails"), on(Box::new(fails.clone())), &[(proof, Failed)]));
        spoiled.push(state(&format!("{group}: a line left out"), on(Box::new(forgets)), &[(proof, Open)]));
        if let Some(second) = lines.get(1).cloned() {
            // What was not looked at is missing, whatever else failed.
            let both = move |c: &mut Checklist| {
                fails(c);
                c.answers.remove(&second);
            };
            let name = format!("{group}: a line fails, another is left out");
            spoiled.push(state(&name, on(Box::new(both)), &[(proof, Open)]));
        }
    }
    entry("checklist", "", &groups, spoiled)
}

fn deficiencies() -> Slot {
    let by = |name: &str, severity, reason: &'static str| {
        let change = move |file: &mut JobFile| {
            let entry = file.evidence.iter_mut().find(|one| one.body.kind() == "deficiencies").unwrap();
            let row = FoundDeficiency {
                item: String::new(),
                class: "6.1.3".into(),
                severity,
                words: "as found".into(),
                photo: None,
            };
            entry.body = Evidence::Deficiencies(Deficiencies {
                found: vec![row],
                not_tested_reason: reason.to_owned(),
                is_gas_shut_off: Some(true),
            });
        };
        Standing { severity: (Some(severity), !reason.is_empty()), ..state(name, change, &[]) }
    };
    entry(
        "deficiencies",
        "",
        &["deficiencies"],
        vec![
            by("minor", Severity::Minor, ""),
            by("major", Severity::Major, ""),
            by("major, with a reason", Severity::Major, "no time"),
            by("dangerous", Severity::Dangerous, ""),
            by("dangerous, tests cut short", Severity::Dangerous, "gas escapes at the container"),
        ],
    )
}

fn vessel_check() -> Slot {
    let condemned = body!("vessel-check", "", VesselCheck, |c| {
        let part_id = c.looked[0].part_id;
        c.findings.push(VesselFinding {
            part_id,
            level: VesselLevel::Condemned,
            words: "dent at the weld".into(),
            action: "set aside".into(),
            photo: None,
        });
    });
    entry(
        "vessel-check",
        "",
        &["vessel-checked"],
        vec![
            state("condemned", condemned, &[("vessel-checked", Failed)]),
            state(
                "nothing looked at",
                body!("vessel-check", "", VesselCheck, |c| c.looked[0].kinds.clear()),
                &[("vessel-checked", Open)],
            ),
        ],
    )
}

fn people_and_photos() -> Vec<Slot> {
    let photo = |name: &'static str, slot: &'static str, proof: &'static str| {
        let restore = move |file: &mut JobFile, base: &JobFile| {
            file.attachments.retain(|one| one.slot != slot);
            file.attachments.extend(base.attachments.iter().filter(|one| one.slot == slot).cloned());
        };
        let drop = move |file: &mut JobFile| file.attachments.retain(|one| one.slot != slot);
        let absent = Standing { is_absent: true, ..state("no photo", drop, &[(proof, Open)]) };
        other(name, restore, vec![absent])
    };
    let finding = |file: &mut JobFile| {
        file.findings.push(Finding {
            id: FindingId::new(),
            job_id: Some(file.job.id),
            instrument_id: None,
            source: "looked at".into(),
            text: "a hose rubs".into(),
            opened_at: file.job.opened_at,
            decision: String::new(),
            decided_at: None,
        });
    };
    let recalled = |carries: Carries| {
        move |file: &mut JobFile| {
            let part = file.parts.iter().find(|part| part.category == PartCategory::Filter).unwrap().id;
            file.recalled = vec![Recalled { part, carries, by: "Tarnwell, TW-7".into() }];
        }
    };
    vec![
        other(
            "vehicle",
            |file, base| file.vehicle.clone_from(&base.vehicle),
            vec![
                state("no plate", |f| f.vehicle.plate.clear(), &[("vehicle", Open)]),
                state("no power", |f| f.vehicle.rated_power_kw = None, &[("vehicle", Open)]),
                state("an impossible VIN", |f| f.vehicle.vin = "1M8GDM9AXKP04278O".into(), &[("vehicle", Open)]),
            ],
        ),
        other(
            "keeper",
            |file, base| file.keeper.clone_from(&base.keeper),
            vec![state(
                "nobody can reach them",
                |f| {
                    f.keeper.phone.clear();
                    f.keeper.mail.clear();
                    f.keeper.address.clear();
                },
                &[("keeper", Open)],
            )],
        ),
        photo("photo of the odometer", "odometer", "photo-odometer"),
        photo("photo of the VIN plate", "vin-plate", "photo-vin-plate"),
        photo("photo of the container plate", "container-plate", "photo-container-plate"),
        other(
            "findings",
            |file, base| file.findings.clone_from(&base.findings),
            vec![state("one open", finding, &[("findings", Open)])],
        ),
        Slot {
            is_part: true,
            ..other(
                "recall",
                |file, base| file.recalled.clone_from(&base.recalled),
                vec![
                    state("a part on the vehicle", recalled(Carries::Surely), &[("not-recalled", Failed)]),
                    state("perhaps a part on the vehicle", recalled(Carries::Perhaps), &[("not-recalled", Open)]),
                ],
            )
        },
        Slot {
            is_removal: true,
            ..other(
                "vessel in the books",
                |file, base| file.parts.clone_from(&base.parts),
                vec![state(
                    "still on the vehicle",
                    |f| {
                        let vessel = f.parts.iter_mut().find(|part| part.is_vessel()).unwrap();
                        (vessel.removed_in, vessel.removed_on) = (None, None);
                    },
                    &[("removed", Open)],
                )],
            )
        },
    ]
}

fn sheets(fuel: Fuel) -> Vec<Slot> {
    let reckoned = body!("level-sensing", "", LevelSensing, |l| l.how = LevelSensingKind::Reckoned);
    let mut all = vec![
        entry("arrival", "", &["odometer"], vec![]),
        entry(
            "suitability",
            "",
            &["suitable"],
            vec![
                state(
                    "not suitable",
                    body!("suitability", "", Suitability, |s| s.verdict = SuitabilityVerdict::NotSuitable),
                    &[("suitable", Open)],
                ),
                state("cold", body!("suitability", "", Suitability, |s| s.coolant_c = 40.0), &[("suitable", Open)]),
                state(
                    "conditions nobody accepted",
                    body!("suitability", "", Suitability, |s| s.verdict = SuitabilityVerdict::WithConditions),
                    &[("suitable", Open)],
                ),
            ],
        ),
        entry(
            "nozzle-sizing",
            "",
            &["nozzle"],
            vec![state(
                "too small",
                body!("nozzle-sizing", "", NozzleSizing, |s| s.verdict = NozzleVerdict::TooSmall),
                &[("nozzle", Open)],
            )],
        ),
        entry(
            "cylinder-table",
            "",
            &["engine-cylinders"],
            vec![
                state(
                    "one left out",
                    body!("cylinder-table", "", CylinderTable, |t| drop(t.rows.pop())),
                    &[("engine-cylinders", Open)],
                ),
                state(
                    "one does not answer",
                    body!("cylinder-table", "", CylinderTable, |t| t.rows[3].answers = false),
                    &[("engine-cylinders", Open)],
                ),
            ],
        ),
        entry(
            "level-sensing",
            "",
            &["level-sensing"],
            vec![state("not explained", reckoned, &[("level-sensing", Open)])],
        ),
        entry(
            "engine-calibration",
            "",
            &["calibrated-warm", "calibrated-clean", "nozzle-adequate"],
            vec![
                state(
                    "cold",
                    body!("engine-calibration", "", EngineCalibration, |c| c.coolant_c = 31.0),
                    &[("calibrated-warm", Open)],
                ),
                state(
                    "open loop",
                    body!("engine-calibration", "", EngineCalibration, |c| c.was_closed_loop = false),
                    &[("calibrated-clean", Open)],
                ),
                state(
                    "the nozzle must change",
                    body!("engine-calibration", "", EngineCalibration, |c| c.is_nozzle_adequate = false),
                    &[("nozzle-adequate", Open)],
                ),
            ],
        ),
        entry(
            "trims",
            "",
            &["trims"],
            vec![state(
                "apart",
                body!("trims", "", Trims, |t| t.points[0].gas_long_percent = 16.0),
                &[("trims", Open)],
            )],
        ),
        entry(
            "after-drive",
            "",
            &["after-drive"],
            vec![
                state("too short", body!("after-drive", "", AfterDrive, |d| d.gas_km = 1.0), &[("after-drive", Open)]),
                state(
                    "a new code",
                    body!("after-drive", "", AfterDrive, |d| d.fault_codes = "P0171".into()),
                    &[("after-drive", Open)],
                ),
            ],
        ),
        // Due at hand-over, so it breaks nothing here.
        entry("hand-over", "", &[], vec![]),
    ];
    if fuel == Fuel::Lpg {
        all.push(entry(
            "container-sizing",
            "",
            &["container-sized"],
            vec![state(
                "axle overloaded",
                body!("container-sizing", "", ContainerSizing, |s| s.is_within_axle_reserve = Some(false)),
                &[("container-sized", Open)],
            )],
        ));
    }
    all
}

fn parts(fuel: Fuel) -> Vec<Slot> {
    let plain = |name, category, proof| part_slot(name, category, vec![], &[(proof, Open)]);
    let mut all = vec![
        plain("injector rail", PartCategory::InjectorRail, "part-injectors"),
        plain("filling unit", PartCategory::FillingUnit, "part-filling-unit"),
        plain("control unit", PartCategory::ControlUnit, "part-control-unit"),
    ];
    match fuel {
        Fuel::Lpg => all.extend([
            vessel(PartCategory::Container, "part-container"),
            plain("multivalve", PartCategory::Multivalve, "part-multivalve"),
            plain("vaporiser", PartCategory::Vaporiser, "part-vaporiser"),
            plain("shut-off valve", PartCategory::ShutOffValve, "part-shut-off"),
        ]),
        Fuel::Cng => all.extend([
            vessel(PartCategory::Cylinder, "part-cylinder"),
            plain("pressure regulator", PartCategory::PressureRegulator, "part-regulator"),
        ]),
    }
    all
}

/// Everything that can stand in more than one way in this job.
pub fn slots(base: &JobFile, book: &RuleBook) -> Vec<Slot> {
    let fuel = base.job.fuel;
    let mut all = people_and_photos();
    all.extend(sheets(fuel));
    all.extend(parts(fuel));
    all.extend([analyser(), exhaust(false), exhaust(true), functions(), checklist(base, book), deficiencies()]);
    all.push(vessel_check());
    all.extend(match fuel {
        Fuel::Lpg => [leak("lpg-liquid", "leak-lpg-liquid"), leak("lpg-vapour", "leak-lpg-vapour")],
        Fuel::Cng => [leak("cng-high", "leak-cng-high"), leak("cng-low", "leak-cng-low")],
    });
    all
}

/// A file of this kind and gas with everything good, made from a told conversion to LPG.
pub fn base(told: &JobFile, book: &RuleBook, kind: JobKind, is_low_pressure_only: bool, fuel: Fuel) -> JobFile {
    let mut file = told.clone();
    file.job = Job { kind, fuel, is_low_pressure_only, ..file.job };
    let first = file.evidence[0].clone();
    let more = |body: Evidence| {
        let mut entry = first.clone();
        (entry.id, entry.body, entry.measured_at) = (EvidenceId::new(), body, told.evidence[0].measured_at);
        entry
    };
    if fuel == Fuel::Cng {
        let is_lpg_only = |part: &Part| matches!(part.category, PartCategory::Multivalve | PartCategory::ShutOffValve);
        file.parts.retain(|part| !is_lpg_only(part));
        for part in &mut file.parts {
            part.category = match part.category {
                PartCategory::Container => PartCategory::Cylinder,
                PartCategory::Vaporiser => PartCategory::PressureRegulator,
                same => same,
            };
            part.approval_mark = part.approval_mark.replace("67R", "110R");
        }
        for entry in &mut file.evidence {
            match &mut entry.body {
                Evidence::LeakJoints(test) if test.section == Section::LpgLiquid => test.section = Section::CngHigh,
                Evidence::LeakJoints(test) => test.section = Section::CngLow,
                Evidence::Exhaust(test) if test.on_gas => {
                    (test.idle.co2_percent, test.raised.co2_percent) = (11.4, 11.6);
                    test.analyser_set_to = "cng".into();
                }
                _ => {}
            }
        }
    }
    let vessel = file.parts.iter().find(|part| part.is_vessel()).unwrap().id;
    let looked = vec![VesselLooked { part_id: vessel, kinds: vec![VesselInspection::Visual] }];
    file.evidence.push(more(Evidence::VesselCheck(VesselCheck { looked, ..VesselCheck::default() })));
    file.evidence.push(more(Evidence::Deficiencies(Deficiencies::default())));
    let lines = book.checks(&file.job);
    let entry = file.evidence.iter_mut().find(|one| one.body.kind() == "checklist").unwrap();
    let Evidence::Checklist(list) = &mut entry.body else { panic!() };
    let answer = list.answers.values().next().unwrap().clone();
    list.answers = lines.into_iter().map(|line| (line.id.clone(), answer.clone())).collect();
    if kind == JobKind::Removal {
        let job = file.job.id;
        for part in &mut file.parts {
            (part.removed_in, part.removed_on) = (Some(job), Some(part.fitted_on));
        }
    }
    file
}
