//! One row of a rule set: a proof, a limit, a line of the checklist, a topic of the hand-over. Intervals have a file of
//! their own beside this one.
//!
//! Each carries its source and whether that source was read. The lists it applies to (kinds, fuels, systems) mean
//! "all" when they are left out. Some fields stand in every row; they are not folded into one struct because a row with an
//! unknown key must be refused (`deny_unknown_fields`), which the reader cannot do across a flattened part.

use serde::Deserialize;
use time::Date;

use super::Need;
use super::idle::Idle;
use crate::model::coded;
use crate::model::evidence::Section;
use crate::model::job::{Fuel, Job, JobKind, SystemKind};
use crate::model::stage::Stage;
use crate::model::vehicle::VehicleCategory;

coded! {
    /// By when a proof must be met.
    "deadline" Deadline {
        /// Before the certificate is issued.
        Issue = "issue",
        /// Before the vehicle is handed over.
        HandOver = "hand-over",
        /// Later: it becomes a duty.
        After = "after",
    }
}

coded! {
    /// Whether a signatory may let it pass.
    "waive" Waive {
        /// Nobody may.
        Never = "never",
        /// A signatory may, with a reason that is printed.
        Signatory = "signatory",
    }
}

coded! {
    /// How a result is held against a limit.
    "decision-rule" DecisionRule {
        /// The reading alone against the limit (ILAC-G8:09/2019, 4.2.1).
        Simple = "simple",
        /// The limit drawn in by the expanded uncertainty (ILAC-G8:09/2019, 4.2.2, w = U).
        Guarded = "guarded",
    }
}

coded! {
    /// What a limit line limits; the unit is in the name.
    "quantity" Quantity {
        /// Spread of compression between engine cylinders, per cent.
        CompressionSpreadPercent = "compression-spread-percent",
        /// Coolant when suitability or calibration is measured, C.
        CoolantC = "coolant-c",
        /// LPG vaporiser when calibrating, C.
        VaporiserC = "vaporiser-c",
        /// Difference of total trims between gas and petrol, per cent.
        TrimDifferencePercent = "trim-difference-percent",
        /// Loss of a section, cm3/h at 15 C and 101.325 kPa.
        LeakCm3H = "leak-cm3-h",
        /// Time until gas is shut off, s.
        ShutOffS = "shut-off-s",
        /// CO at idle, per cent by volume.
        IdleCoPercent = "idle-co-percent",
        /// CO at raised idle, per cent by volume.
        RaisedCoPercent = "raised-co-percent",
        /// Lambda at raised idle.
        RaisedLambda = "raised-lambda",
        /// Engine speed of raised idle, 1/min.
        RaisedRpm = "raised-rpm",
        /// Share of a container's water capacity that the fill stop lets in, per cent.
        FillPercent = "fill-percent",
        /// Age of a container at fitting, months.
        ContainerAgeMonths = "container-age-months",
        /// HC at raised idle, ppm as hexane.
        RaisedHcPpm = "raised-hc-ppm",
        /// Free opening of a housing's vent, mm2.
        HousingVentMm2 = "housing-vent-mm2",
        /// Pressure that a housing holds, kPa gauge.
        HousingTightKpa = "housing-tight-gauge-kpa",
        /// How far below the underside a lower part of the vehicle may lie and still shield, mm.
        UnderVehicleMm = "under-vehicle-mm",
        /// Distance from the exhaust without a shield, mm.
        HeatDistanceMm = "heat-distance-mm",
        /// Ground clearance, mm.
        GroundClearanceMm = "ground-clearance-mm",
        /// What the fixing of a full vessel bears lengthwise, multiples of its weight.
        FixingLengthwiseG = "fixing-lengthwise-g",
        /// What the fixing of a full vessel bears across, multiples of its weight.
        FixingAcrossG = "fixing-across-g",
        /// Where a relief valve begins to open, kPa gauge.
        ReliefValveKpa = "relief-valve-gauge-kpa",
        /// Where a heat-triggered relief device opens, C.
        ReliefDeviceC = "relief-device-c",
        /// Driving on each fuel before fault codes are read again, km.
        AfterDriveKm = "after-drive-km",
        /// Visits of an operating point on each fuel before it is judged on the road.
        RoadVisits = "road-visits",
        /// Operating points that are judged before a road comparison covers the driving.
        RoadCells = "road-cells",
        /// A deviation on the road whose whole interval lies beyond is one, per cent.
        RoadDeviatesPercent = "road-deviates-percent",
        /// A deviation on the road whose whole interval lies within is none, per cent.
        RoadGoodPercent = "road-good-percent",
    }
}

/// The set that a line stands in: its name and its title.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct SetName {
    /// Short name: "un-baseline".
    pub name: String,
    /// Title as papers print it.
    pub title: String,
}

/// A word of an authority that lets a shop's line ask less than the line it stands on.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Allowed {
    /// Which authority.
    pub authority: String,
    /// The document: its kind and number.
    pub document: String,
    /// Its day.
    pub on: Date,
}

/// A proof.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ProofLine {
    /// Name for ever; also the language key behind `proof-`.
    pub id: String,
    /// Shown on this stage.
    pub stage: Stage,
    /// What meets it.
    pub needs: Need,
    /// Job kinds.
    #[serde(default)]
    pub kinds: Vec<JobKind>,
    /// Gases.
    #[serde(default)]
    pub fuels: Vec<Fuel>,
    /// Ways of metering.
    #[serde(default)]
    pub systems: Vec<SystemKind>,
    /// Asks nothing of a repair that touched the low-pressure side only.
    #[serde(default)]
    pub not_low_pressure: bool,
    /// By when.
    #[serde(default = "issue")]
    pub before: Deadline,
    /// Who may waive it.
    #[serde(default = "signatory")]
    pub waive: Waive,
    /// It may be "not applicable" to a vehicle.
    #[serde(default)]
    pub may_not_apply: bool,
    /// Document and paragraph.
    pub source: String,
    /// The source was read.
    pub checked: bool,
    /// A custom of the trade that no document states; a shop may change it.
    #[serde(default)]
    pub practice: bool,
    /// First day in force.
    #[serde(default)]
    pub from_on: Option<Date>,
    /// Last day in force.
    #[serde(default)]
    pub to_on: Option<Date>,
    /// A shop's own words for a proof that the language files do not know.
    #[serde(default)]
    pub title: Option<String>,
    /// The set it stands in.
    #[serde(skip)]
    pub set: SetName,
}

fn issue() -> Deadline {
    Deadline::Issue
}

fn signatory() -> Waive {
    Waive::Signatory
}

/// A limit.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LimitLine {
    /// Name for ever.
    pub id: String,
    /// What is limited.
    pub quantity: Quantity,
    /// Not below.
    #[serde(default)]
    pub least: Option<f64>,
    /// Not above.
    #[serde(default)]
    pub most: Option<f64>,
    /// How it is held against a result.
    #[serde(default = "simple")]
    pub decision: DecisionRule,
    /// Gases.
    #[serde(default)]
    pub fuels: Vec<Fuel>,
    /// Sections, for a leak limit.
    #[serde(default)]
    pub sections: Vec<Section>,
    /// Only vehicles with (or without) a closed-loop catalyst.
    #[serde(default)]
    pub catalyst: Option<bool>,
    /// Only vehicles first registered on or after this day.
    #[serde(default)]
    pub registered_from: Option<Date>,
    /// Only vehicles first registered on or before this day.
    #[serde(default)]
    pub registered_to: Option<Date>,
    /// Vehicle categories.
    #[serde(default)]
    pub categories: Vec<VehicleCategory>,
    /// Lines of the checklist or proofs that ask for it in words; then no reading is held against it.
    #[serde(default)]
    pub asked_by: Vec<String>,
    /// Why the program does not act upon it.
    #[serde(default)]
    pub idle: Option<Idle>,
    /// Who allowed a shop's line to ask less than the line it stands on.
    #[serde(default)]
    pub allowed: Option<Allowed>,
    /// Document and paragraph, or "common practice".
    pub source: String,
    /// The source was read.
    pub checked: bool,
    /// A custom of the trade that no document states; a shop may change it.
    #[serde(default)]
    pub practice: bool,
    /// First day in force.
    #[serde(default)]
    pub from_on: Option<Date>,
    /// Last day in force.
    #[serde(default)]
    pub to_on: Option<Date>,
    /// The set it stands in, as [`RuleSet::read`](super::RuleSet::read) noted it.
    #[serde(skip)]
    pub set: SetName,
}

impl LimitLine {
    /// A reading is held against it.
    pub fn is_measured(&self) -> bool {
        self.idle.is_none() && self.asked_by.is_empty()
    }
}

fn simple() -> DecisionRule {
    DecisionRule::Simple
}

/// A line of the fitting checklist; its words are behind `check-` in the language files.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CheckLine {
    /// Name for ever.
    pub id: String,
    /// The group that a proof asks for.
    pub group: String,
    /// Gases.
    #[serde(default)]
    pub fuels: Vec<Fuel>,
    /// "Not applicable" is an answer.
    #[serde(default)]
    pub may_not_apply: bool,
    /// Document and paragraph.
    pub source: String,
    /// The source was read.
    pub checked: bool,
    /// A custom of the trade that no document states; a shop may change it.
    #[serde(default)]
    pub practice: bool,
    /// A shop's own words.
    #[serde(default)]
    pub title: Option<String>,
}

/// A topic of the hand-over; its words are behind `topic-` in the language files.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TopicLine {
    /// Name for ever.
    pub id: String,
    /// Gases.
    #[serde(default)]
    pub fuels: Vec<Fuel>,
    /// Document and paragraph, or "common practice".
    pub source: String,
    /// The source was read.
    pub checked: bool,
    /// A custom of the trade that no document states; a shop may change it.
    #[serde(default)]
    pub practice: bool,
    /// A shop's own words.
    #[serde(default)]
    pub title: Option<String>,
}

/// Empty means all.
pub(super) fn applies<T: PartialEq>(list: &[T], one: &T) -> bool {
    list.is_empty() || list.contains(one)
}

/// A day lies within the line's own dates.
pub(super) fn in_force(from_on: Option<Date>, to_on: Option<Date>, on: Date) -> bool {
    from_on.is_none_or(|from| from <= on) && to_on.is_none_or(|to| on <= to)
}

impl ProofLine {
    /// The line asks something of this job on this day.
    pub fn asks(&self, job: &Job, on: Date) -> bool {
        in_force(self.from_on, self.to_on, on) && self.concerns(job)
    }

    /// The line is about jobs like this one, whatever the day.
    pub fn concerns(&self, job: &Job) -> bool {
        applies(&self.kinds, &job.kind)
            && applies(&self.fuels, &job.fuel)
            && applies(&self.systems, &job.system_kind)
            && !(self.not_low_pressure && job.kind == JobKind::Repair && job.is_low_pressure_only)
    }

    /// Nobody may waive it: because of what it is, or because the line says so.
    pub fn is_never_waived(&self) -> bool {
        self.needs.is_never_waived() || self.waive == Waive::Never
    }
}
