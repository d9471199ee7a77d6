//! A job: one visit of one vehicle, from intake to hand-over.

use time::{Date, OffsetDateTime};

use super::coded;
use super::ids::{BayId, BranchId, CustomerId, HoldId, JobId, PersonId, VehicleId, WaiverId};

coded! {
    /// What the vehicle is here for.
    "job-kind" JobKind {
        /// A gas system is fitted.
        Conversion = "conversion",
        /// Periodic inspection, also of systems fitted by others.
        Inspection = "inspection",
        /// Something is mended.
        Repair = "repair",
        /// The container or a cylinder is exchanged.
        Exchange = "exchange",
        /// After accident or fire.
        AfterAccident = "after-accident",
        /// The vehicle comes back from an earlier job.
        Comeback = "comeback",
        /// Back to petrol.
        Removal = "removal",
    }
}

coded! {
    /// The gas.
    "fuel" Fuel {
        /// Liquefied petroleum gas.
        Lpg = "lpg",
        /// Compressed natural gas.
        Cng = "cng",
    }
}

coded! {
    /// How the gas is metered.
    "system-kind" SystemKind {
        /// Vapour, one injector an engine cylinder.
        VapourInjection = "vapour-injection",
        /// Liquid, injected.
        LiquidInjection = "liquid-injection",
        /// Mixer in the inlet.
        Mixer = "mixer",
    }
}

coded! {
    /// Whether work goes on.
    "job-state" JobState {
        /// In the shop, evidence may be recorded.
        Open = "open",
        /// Waiting for something, with the reason.
        Held = "held",
        /// Handed over with certificate.
        HandedOver = "handed-over",
        /// Left without certificate.
        Released = "released",
        /// Called off.
        Cancelled = "cancelled",
    }
}

impl JobState {
    /// Evidence may be recorded.
    pub fn is_live(self) -> bool {
        matches!(self, Self::Open | Self::Held)
    }
}

/// What opens a job file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NewJob {
    /// What for.
    pub kind: JobKind,
    /// Gas.
    pub fuel: Fuel,
    /// Metering.
    pub system_kind: SystemKind,
    /// Which vehicle.
    pub vehicle_id: VehicleId,
    /// Who keeps it today; reminders go there.
    pub keeper_id: CustomerId,
    /// Where it stands.
    pub bay_id: Option<BayId>,
    /// A repair on the low-pressure side alone.
    pub is_low_pressure_only: bool,
    /// The job this one comes back from.
    pub comes_back_from: Option<JobId>,
    /// What the customer says is wrong.
    pub reported_faults: String,
}

/// A job as stored.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Job {
    /// Name for ever.
    pub id: JobId,
    /// Branch.
    pub branch_id: BranchId,
    /// "2026-0147".
    pub number: String,
    /// What for.
    pub kind: JobKind,
    /// Gas.
    pub fuel: Fuel,
    /// Metering.
    pub system_kind: SystemKind,
    /// Which vehicle.
    pub vehicle_id: VehicleId,
    /// Who keeps it.
    pub keeper_id: CustomerId,
    /// Where it stands.
    pub bay_id: Option<BayId>,
    /// The job this one comes back from.
    pub comes_back_from: Option<JobId>,
    /// A repair on the low-pressure side alone.
    pub is_low_pressure_only: bool,
    /// What the customer says is wrong.
    pub reported_faults: String,
    /// Whether work goes on.
    pub state: JobState,
    /// Why it ended without certificate; empty otherwise.
    pub ended_reason: String,
    /// Released with the gas shut off.
    pub is_gas_shut_off: Option<bool>,
    /// When it was opened.
    pub opened_at: OffsetDateTime,
    /// Who opened it.
    pub opened_by: PersonId,
    /// When it ended.
    pub ended_at: Option<OffsetDateTime>,
    /// Grows with every save of the job's own row.
    pub version: i64,
}

/// A time in which work waits.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Hold {
    /// Name for ever.
    pub id: HoldId,
    /// Which job.
    pub job_id: JobId,
    /// For what.
    pub reason: String,
    /// Since.
    pub began_at: OffsetDateTime,
    /// Until.
    pub ended_at: Option<OffsetDateTime>,
}

coded! {
    /// Why a proof is not asked for.
    "waiver-kind" WaiverKind {
        /// It applies, and a signatory lets it pass.
        Waived = "waived",
        /// It does not apply to this vehicle.
        NotApplicable = "not-applicable",
    }
}

/// A signatory's word that one proof is not asked for on this job; printed with name and reason.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Waiver {
    /// Name for ever.
    pub id: WaiverId,
    /// Which job.
    pub job_id: JobId,
    /// Id of the rule line.
    pub proof: String,
    /// Which of the two.
    pub kind: WaiverKind,
    /// Why.
    pub reason: String,
    /// Who.
    pub person_id: PersonId,
    /// Who, in words.
    pub person_name: String,
    /// When.
    pub at: OffsetDateTime,
}

/// The first of the month after `on`'s year begins a new series: "2026-0147" is the 147th job of 2026.
pub fn job_number(on: Date, running: i64) -> String {
    format!("{}-{running:04}", on.year())
}
