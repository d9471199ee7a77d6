//! The slots of a stage: what can be recorded there, in the order of work.

use crate::model::Coded;
use crate::model::evidence::Section;
use crate::model::job::{Fuel, Job, JobKind, SystemKind};
use crate::model::stage::{Stage, shown_on};
use crate::rules::inspection::may_fail;

/// One thing that can be recorded: kind and subject of its evidence.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Slot {
    /// Kind of evidence.
    pub kind: &'static str,
    /// Subject; empty where there is one only.
    pub subject: &'static str,
}

const fn one(kind: &'static str) -> Slot {
    Slot { kind, subject: "" }
}

/// The slots of a stage of this job: its own, after those of the stages that this kind of job lacks and asks all the same.
pub fn slots(job: &Job, stage: Stage) -> Vec<Slot> {
    let lacking = Stage::ALL.iter().filter(|one| **one != stage && shown_on(job.kind, **one) == stage);
    // An exchange changes what is stored and what the axle carries.
    let is_storage = |slot: &Slot| ["container-sizing", "cylinder-sizing"].contains(&slot.kind);
    let is_exchange = job.kind == JobKind::Exchange;
    let asked = |slot: &Slot| ["checklist", "vessel-check"].contains(&slot.kind) || (is_exchange && is_storage(slot));
    let folded = lacking.flat_map(|one| own(job, *one)).filter(asked);
    folded.chain(own(job, stage)).collect()
}

fn own(job: &Job, stage: Stage) -> Vec<Slot> {
    let of = |kind, section: Section| Slot { kind, subject: section.code() };
    let sections = match job.fuel {
        Fuel::Lpg => [Section::LpgLiquid, Section::LpgVapour],
        Fuel::Cng => [Section::CngHigh, Section::CngLow],
    };
    match stage {
        Stage::Intake if job.kind == JobKind::Conversion => vec![one("arrival"), one("suitability")],
        Stage::Intake => vec![one("arrival")],
        Stage::Sizing => sizing(job),
        // What touches no injector and no level sender has no table of them.
        Stage::Fitting if matches!(job.kind, JobKind::Conversion | JobKind::Repair | JobKind::Comeback) => {
            vec![one("cylinder-table"), one("checklist"), one("level-sensing")]
        }
        Stage::Fitting if matches!(job.kind, JobKind::Exchange | JobKind::Inspection | JobKind::AfterAccident) => {
            vec![one("vessel-check"), one("checklist")]
        }
        Stage::Fitting => vec![one("checklist")],
        // A mixer leaves no injection time to compare.
        Stage::Calibration if job.system_kind == SystemKind::Mixer => {
            vec![one("engine-calibration"), one("trims"), one("after-drive")]
        }
        Stage::Calibration => vec![one("engine-calibration"), one("trims"), one("road"), one("after-drive")],
        Stage::Proving => {
            let mut all = vec![of("leak-joints", sections[0]), of("leak-joints", sections[1])];
            all.push(of("leak-decay", sections[1]));
            all.push(Slot { kind: "exhaust", subject: "petrol" });
            all.push(Slot { kind: "exhaust", subject: "gas" });
            all.push(one("function-checks"));
            if may_fail(job.kind) {
                all.push(one("deficiencies"));
            }
            all
        }
        Stage::HandOver => vec![one("hand-over")],
    }
}

/// The sums of a job: the nozzle first, since heat and lines open with what it found.
fn sizing(job: &Job) -> Vec<Slot> {
    let is_vapour = job.system_kind == SystemKind::VapourInjection;
    let storage = match job.fuel {
        Fuel::Lpg => one("container-sizing"),
        Fuel::Cng => one("cylinder-sizing"),
    };
    let mut all = Vec::new();
    if is_vapour {
        all.push(one("nozzle-sizing"));
    }
    // Liquid injection has no vaporiser and no gas hoses.
    if job.system_kind != SystemKind::LiquidInjection {
        all.extend([one("heat-sizing"), one("line-sizing")]);
    }
    all.push(storage);
    // Most jobs go by the usual coefficient: the measured one stands last.
    if is_vapour {
        all.push(one("discharge"));
    }
    all
}
