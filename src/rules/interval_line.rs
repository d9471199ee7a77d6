//! A row of a rule set that says when something falls due: what starts it, from which day it counts, how it ends; or by
//! which proof it is asked at once; or why nothing is reckoned by it yet.

use serde::Deserialize;
use time::Date;

use super::idle::{Idle, OtherFuel};
use super::line::{Allowed, SetName, applies};
use crate::model::approval_mark::{ApprovalMark, Regulation};
use crate::model::coded;
use crate::model::duty::DutyKind;
use crate::model::job::{Fuel, Job, JobKind};
use crate::model::part::{Part, PartCategory, fold};
use crate::model::vehicle::Vehicle;

coded! {
    /// From which day an interval counts.
    "anchor" Anchor {
        /// The day of hand-over or fitting.
        Fitted = "fitted",
        /// The date of manufacture of the part.
        Made = "made",
        /// First registration of the vehicle.
        Registered = "registered",
        /// The vehicle's entry into service with gas: of a retrofit, the day of fitting.
        InService = "in-service",
        /// The last inspection; the fitting counts as the first.
        LastInspection = "last-inspection",
        /// The last check; the maker's own test counts as the first.
        LastCheck = "last-check",
        /// The last month on the label.
        LabelEnd = "label-end",
        /// The main inspection of the vehicle.
        MainInspection = "main-inspection",
        /// The day of a test that found a defect.
        DefectFound = "defect-found",
        /// The month of a person's examination.
        Exam = "exam",
        /// The day on which it happens.
        Event = "event",
    }
}

impl Anchor {
    /// The program has the day to count from.
    pub fn has_day(self) -> bool {
        !matches!(self, Self::LabelEnd | Self::MainInspection | Self::DefectFound | Self::Exam | Self::Event)
    }
}

coded! {
    /// How an interval in months ends.
    "count" Count {
        /// On the same day of the month.
        Day = "day",
        /// On the last day of the month.
        MonthEnd = "month-end",
    }
}

coded! {
    /// By which rules a part was approved.
    "marked" Marked {
        /// A mark of UN Regulation No. 110 reads on it.
        R110 = "r110",
        /// No mark of a UN Regulation reads on it.
        National = "national",
    }
}

/// The interval after the first, for parts of these classes.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Then {
    /// Months.
    pub months: u32,
    /// Component classes as on the part; left out: every part.
    #[serde(default)]
    pub classes: Vec<String>,
}

/// A dated duty.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct IntervalLine {
    /// Name for ever.
    pub id: String,
    /// What falls due.
    pub duty: DutyKind,
    /// Job kinds that start it.
    #[serde(default)]
    pub kinds: Vec<JobKind>,
    /// Not after a repair that touched the low-pressure side only.
    #[serde(default)]
    pub not_low_pressure: bool,
    /// Gases.
    #[serde(default)]
    pub fuels: Vec<Fuel>,
    /// Gases that no job here can have; with one of these the line is about no other.
    #[serde(default)]
    pub other_fuels: Vec<OtherFuel>,
    /// For each fitted part of this category; left out: once a vehicle.
    #[serde(default)]
    pub part: Option<PartCategory>,
    /// Parts of these classes, and parts whose class is not known.
    #[serde(default)]
    pub classes: Vec<String>,
    /// Parts approved in this way.
    #[serde(default)]
    pub marked: Option<Marked>,
    /// Vehicles up to this gross mass, kg, and those of unknown mass.
    #[serde(default)]
    pub mass_up_to_kg: Option<i64>,
    /// Vehicles above this gross mass, kg, and those of unknown mass.
    #[serde(default)]
    pub mass_above_kg: Option<i64>,
    /// Months; 0: at once.
    #[serde(default)]
    pub months: Option<u32>,
    /// Days, in the place of months.
    #[serde(default)]
    pub days: Option<u16>,
    /// Kilometres.
    #[serde(default)]
    pub km: Option<i64>,
    /// Another interval after the first.
    #[serde(default)]
    pub then: Option<Then>,
    /// Counted from.
    pub anchor: Anchor,
    /// How the months end.
    #[serde(default = "to_the_day")]
    pub count: Count,
    /// Proofs that ask for it before the vehicle leaves; then no duty is written down.
    #[serde(default)]
    pub asked_by: Vec<String>,
    /// Why the program does not act upon it.
    #[serde(default)]
    pub idle: Option<Idle>,
    /// Who allowed a shop's line to ask less than the line it stands on.
    #[serde(default)]
    pub allowed: Option<Allowed>,
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
    /// The set it stands in.
    #[serde(skip)]
    pub set: SetName,
}

fn to_the_day() -> Count {
    Count::Day
}

impl IntervalLine {
    /// It makes duties.
    pub fn makes_duties(&self) -> bool {
        self.idle.is_none() && self.asked_by.is_empty()
    }

    /// A finished job of this kind and gas starts it.
    pub fn is_started_by(&self, job: &Job) -> bool {
        self.makes_duties()
            && applies(&self.kinds, &job.kind)
            && applies(&self.fuels, &job.fuel)
            && !(self.not_low_pressure && job.kind == JobKind::Repair && job.is_low_pressure_only)
    }

    /// It is about this vehicle. An unknown mass counts on every side, so that the stricter line is not lost.
    pub fn is_about(&self, vehicle: &Vehicle) -> bool {
        let mass = vehicle.gross_mass_kg;
        self.mass_up_to_kg.is_none_or(|most| mass.is_none_or(|kg| kg <= most))
            && self.mass_above_kg.is_none_or(|least| mass.is_none_or(|kg| kg > least))
    }

    /// It is about this part. A class that is not known counts on every side.
    pub fn is_about_part(&self, part: &Part) -> bool {
        let is_class = |class: &String| fold(class) == fold(&part.component_class);
        let by_class =
            self.classes.is_empty() || part.component_class.trim().is_empty() || self.classes.iter().any(is_class);
        let is_r110 = part.approval_mark.parse::<ApprovalMark>().is_ok_and(|mark| mark.regulation == Regulation::R110);
        let by_mark = match self.marked {
            None => true,
            Some(Marked::R110) => is_r110,
            Some(Marked::National) => !is_r110,
        };
        self.part == Some(part.category) && by_class && by_mark
    }

    /// The line as it counts after the first time: from the day it was met, with the interval that follows.
    #[must_use]
    pub fn again(&self, part: Option<&Part>) -> Self {
        let mut line = Self { anchor: Anchor::Fitted, ..self.clone() };
        if let Some(then) = &self.then {
            let class = part.map_or("", |part| part.component_class.as_str());
            let is_of = |one: &String| class.trim().is_empty() || fold(one) == fold(class);
            if then.classes.is_empty() || then.classes.iter().any(is_of) {
                line.months = Some(then.months);
            }
        }
        line
    }
}
