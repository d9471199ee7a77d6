//! From a job file and a rule book to the list of proofs.

use time::Date;

use super::Need;
use super::book::RuleBook;
use super::line::ProofLine;
use super::proof::{Place, Proof, Said, State, Why};
use super::{calibration, fitting, hand_over, inspection, intake, proving, road};
use crate::model::evidence::Entry;
use crate::model::instrument::{InstrumentRecord, NotTrusted};
use crate::model::job::WaiverKind;
use crate::model::job_file::{DayOf, JobFile};
use crate::rules::proof::Arg;

/// Everything an evaluation may look at.
pub(super) struct Ground<'a> {
    pub file: &'a JobFile,
    pub book: &'a RuleBook,
    pub today: Date,
    pub day_of: DayOf<'a>,
}

/// The proofs that this job needs by this book, each as it stands.
///
/// `today` is the shop's day; `day_of` turns an instant into the shop's day. Which proofs are asked follows the lines
/// in force today; each measurement is held against the lines in force on its own day.
pub fn assess(file: &JobFile, book: &RuleBook, today: Date, day_of: DayOf<'_>) -> Vec<Proof> {
    let ground = Ground { file, book, today, day_of };
    let asked = book.proofs(&file.job, today).into_iter().filter(|line| is_looked_at(&ground, line));
    asked.map(|line| settle(&ground, line)).collect()
}

/// A repeat within its term looks again at what failed, and at nothing else of the vehicle.
fn is_looked_at(ground: &Ground<'_>, line: &ProofLine) -> bool {
    let first = ground.file.repeats.as_ref();
    first.is_none_or(|first| {
        let opened_on = (ground.day_of)(ground.file.job.opened_at);
        !line.needs.is_examination() || !first.is_partial_on(opened_on) || first.open.contains(&line.id)
    })
}

fn settle(ground: &Ground<'_>, line: &ProofLine) -> Proof {
    let mut proof = evaluate(ground, &line.needs).into_proof(line, ground.file.job.kind);
    // What an inspection found is recorded, not let pass.
    if proof.has_failed && inspection::may_fail(ground.file.job.kind) {
        proof.is_never_waived = true;
    }
    let waiver = ground.file.waivers.iter().find(|waiver| waiver.proof == line.id);
    if let Some(waiver) = waiver.filter(|_| !proof.state.is_settled() && !proof.is_never_waived) {
        let (state, key) = match waiver.kind {
            WaiverKind::Waived => (State::Waived, "waived"),
            WaiverKind::NotApplicable if line.may_not_apply => (State::NotApplicable, "not-applicable"),
            WaiverKind::NotApplicable => return proof,
        };
        proof.state = state;
        proof.why = Why::plain(key).text("reason", &waiver.reason).text("person", &waiver.person_name);
        proof.by = Some(waiver.person_name.clone());
        proof.at = Some(waiver.at);
    }
    proof
}

fn evaluate(ground: &Ground<'_>, need: &Need) -> Said {
    match need {
        Need::VehicleKnown => intake::vehicle_known(ground),
        Need::KeeperKnown => intake::keeper_known(ground),
        Need::Odometer => intake::odometer(ground),
        Need::Photo(slot) => intake::photo(ground, slot),
        Need::Suitable => intake::suitable(ground),
        Need::Nozzle => fitting::nozzle(ground),
        Need::ContainerSized => fitting::container_sized(ground),
        Need::Part(categories) => fitting::part(ground, categories),
        Need::PartsTraceable => fitting::traceable(ground),
        Need::MarksFitFuel => fitting::marks(ground),
        Need::NotRecalled => fitting::not_recalled(ground),
        Need::StorageInDate => fitting::storage_in_date(ground),
        Need::CylinderTable => fitting::cylinder_table(ground),
        Need::Checklist(group) => fitting::checklist(ground, group),
        Need::LevelSensing => fitting::level_sensing(ground),
        Need::CalibratedWarm => calibration::warm(ground),
        Need::CalibratedClean => calibration::clean(ground),
        Need::NozzleAdequate => calibration::nozzle_adequate(ground),
        Need::Trims => calibration::trims(ground),
        Need::RoadCovered => road::covered(ground),
        Need::RoadAlike => road::alike(ground),
        Need::CleanAfterDrive => calibration::after_drive(ground),
        Need::LeakJoints(section) => proving::leak_joints(ground, *section),
        Need::LeakDecay(section) => proving::leak_decay(ground, *section),
        Need::ExhaustPetrol => proving::exhaust(ground, "petrol"),
        Need::ExhaustGas => proving::exhaust(ground, "gas"),
        Need::Changeover => proving::changeover(ground),
        Need::ShutOff => proving::shut_off(ground),
        Need::FillStop => proving::fill_stop(ground),
        Need::Level => proving::level(ground),
        Need::VentAndExcessFlow => proving::vent(ground),
        Need::Label => proving::label(ground),
        Need::Deficiencies => proving::deficiencies(ground),
        Need::VesselChecked => fitting::vessel_checked(ground),
        Need::FindingsDecided => proving::findings(ground),
        Need::Instructed => hand_over::instructed(ground),
        Need::Received => hand_over::received(ground),
    }
}

impl Ground<'_> {
    /// The first instrument of an entry whose word does not count on the day of measurement, as a proof that stops.
    ///
    /// An entry that names an instrument which the file does not hold stops too: nothing may rest on the unknown.
    pub fn distrust(&self, entry: &Entry) -> Option<Said> {
        entry.instruments.iter().find_map(|id| {
            let Some(record) = self.file.instrument(*id) else {
                return Some(Said::stops(Why::plain("instrument-unknown"), Place::Instrument(*id)).on(entry));
            };
            let why = not_trusted(record, record.trusted(entry.measured_at, self.day_of).err()?);
            Some(Said::stops(why, Place::Instrument(*id)).on(entry))
        })
    }
}

fn not_trusted(record: &InstrumentRecord, why: NotTrusted) -> Why {
    let code = &record.instrument.code;
    match why {
        NotTrusted::OutOfCalibration(Some(since)) => {
            Why::plain("instrument-out-since").text("code", code).with("since", Arg::Date(since))
        }
        NotTrusted::OutOfCalibration(None) => Why::plain("instrument-never-calibrated").text("code", code),
        NotTrusted::NotChecked => Why::plain("instrument-not-checked").text("code", code),
        NotTrusted::FailedCheck => Why::plain("instrument-failed-check").text("code", code),
        NotTrusted::Retired(on) => Why::plain("instrument-retired").text("code", code).with("since", Arg::Date(on)),
    }
}
