//! What comes out of a road comparison.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::{Burned, Plan};

/// What the load of a cell is told by.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Banded {
    /// Manifold pressure, kPa absolute.
    Manifold,
    /// Injection time with the trims taken off, ms, where no manifold pressure was logged.
    InjectionTime,
}

/// Why rows were set aside.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum SetAside {
    /// Coolant below the least.
    Cold,
    /// Too soon after a change of fuel.
    Changeover,
    /// No injection: overrun.
    FuelCut,
    /// Engine speed or manifold pressure changing too fast.
    Transient,
    /// The oxygen sensor does not steer.
    OpenLoop,
    /// A value that no engine has.
    OutOfRange,
    /// A value lacks, and the last one is too old.
    Gap,
    /// Time does not go on.
    TimeBack,
    /// The row says another fuel than its log.
    OtherFuel,
    /// A visit too short to count.
    ShortVisit,
}

impl SetAside {
    /// All of them, in the order of a table.
    pub const ALL: [Self; 10] = [
        Self::Cold,
        Self::Changeover,
        Self::FuelCut,
        Self::Transient,
        Self::OpenLoop,
        Self::OutOfRange,
        Self::Gap,
        Self::TimeBack,
        Self::OtherFuel,
        Self::ShortVisit,
    ];

    /// The one spelling of it.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Cold => "cold",
            Self::Changeover => "changeover",
            Self::FuelCut => "fuel-cut",
            Self::Transient => "transient",
            Self::OpenLoop => "open-loop",
            Self::OutOfRange => "out-of-range",
            Self::Gap => "gap",
            Self::TimeBack => "time-back",
            Self::OtherFuel => "other-fuel",
            Self::ShortVisit => "short-visit",
        }
    }
}

/// Rows that were read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Rows {
    /// On petrol.
    pub petrol: u64,
    /// On gas.
    pub gas: u64,
    /// Lines that could not be read.
    pub broken: u64,
}

/// How it is known which fuel burned.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum FuelKnown {
    /// A column says so.
    Logged,
    /// The technician says so.
    Stated,
}

/// What a cell comes to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum CellVerdict {
    /// Alike on both fuels.
    Good,
    /// Surely different.
    Deviates,
    /// Neither is sure.
    Undecided,
    /// Too few visits.
    NotEnough,
    /// Driven in open loop only: the injection time proves nothing there.
    NoFeedback,
}

/// Visits that a cell still lacks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Missing {
    /// On petrol.
    pub petrol: u32,
    /// On gas.
    pub gas: u32,
}

/// Why a cell has its verdict.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum Why {
    /// The whole interval lies within the good share.
    Within,
    /// The whole interval lies beyond: the petrol computer lengthens on gas, gas is lean there.
    Lean,
    /// The whole interval lies beyond: it shortens, gas is rich there.
    Rich,
    /// The interval reaches over a limit.
    Across,
    /// More driving is asked.
    Drive(Missing),
    /// Open loop on this fuel (or both).
    OpenLoop,
    /// Neither manifold pressure nor trims were logged: the injection time cannot be compared with itself.
    LoadUnknown,
}

/// An operating point and what was found there.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Cell {
    /// Lower edge of engine speed, 1/min.
    pub rpm_from: f64,
    /// Upper edge.
    pub rpm_to: f64,
    /// Lower edge of load: kPa absolute, or ms, as [`Banded`] says.
    pub load_from: f64,
    /// Upper edge.
    pub load_to: f64,
    /// Visits on petrol.
    pub petrol_visits: u32,
    /// Visits on gas.
    pub gas_visits: u32,
    /// Median injection time on petrol, brought to the middle of the cell, ms.
    pub petrol_ms: Option<f64>,
    /// The same on gas.
    pub gas_ms: Option<f64>,
    /// Deviation, per cent; positive where gas is lean.
    pub deviation_percent: Option<f64>,
    /// Lower end of its interval, per cent.
    pub low_percent: Option<f64>,
    /// Upper end, per cent.
    pub high_percent: Option<f64>,
    /// What it comes to.
    pub verdict: CellVerdict,
    /// Factor on the gas correction to try next.
    pub advised_factor: Option<f64>,
    /// Why.
    pub why: Why,
}

/// Total trims of one regime on both fuels, where logged.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct TrimPoint {
    /// `idle`, `raised-idle`, `cruise`, `load`.
    pub regime: String,
    /// Median total trim on petrol, per cent.
    pub petrol_percent: Option<f64>,
    /// Median total trim on gas, per cent.
    pub gas_percent: Option<f64>,
    /// Difference, per cent.
    pub difference_percent: Option<f64>,
}

/// A log thinned out to a picture's width.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Strip {
    /// Which log.
    pub burned: Option<Burned>,
    /// Its points in order of time.
    pub points: Vec<StripPoint>,
}

/// A slice of a log's time: means of the rows within range, and what became of them.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct StripPoint {
    /// Begin of the slice, s since the log's begin.
    pub time_s: f64,
    /// Engine speed, 1/min.
    pub rpm: f64,
    /// Load: manifold pressure, kPa, or injection time with the trims taken off, ms.
    pub load: f64,
    /// Injection time of the petrol computer, ms.
    pub petrol_ms: f64,
    /// The fuel that burned most.
    pub burned: Option<Burned>,
    /// Why most of its rows were set aside, if they were.
    pub set_aside: Option<SetAside>,
}

/// Whether the nozzle served, as far as driving can say.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum NozzleWord {
    /// Nothing speaks against it.
    Serves,
    /// Lean all over at high load, or no time left between two injections.
    TooSmall {
        /// What it lacks at high load, per cent.
        lean_percent: f64,
        /// Share of the time that the injector is open at most, per cent, where gas times were logged.
        duty_percent: Option<f64>,
    },
    /// Rich at idle beyond what a correction mends.
    TooLarge {
        /// What it gives too much at idle, per cent.
        rich_percent: f64,
    },
    /// Too little was driven at high load.
    NotDriven,
}

/// What a reader should know about a comparison.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum Warning {
    /// No column says which fuel burned.
    FuelStated,
    /// No coolant was logged: cold rows could not be set aside.
    NoCoolant,
    /// Closed loop was not logged: rows in open loop, at full load above all, look alike on both fuels and could not be
    /// set aside, so that a good verdict at high load proves nothing.
    NoClosedLoop,
    /// No manifold pressure: cells are by injection time with the trims taken off.
    NoManifold,
    /// Neither manifold pressure nor trims: on gas the injection time itself is what shifts, so that banding by it
    /// hides the shift; nothing is judged.
    LoadUnknown,
    /// Only one of the two trims was logged; totals are what should be compared.
    OneTrim,
    /// Lean at high load, where the oxygen sensor cannot see: valves and pistons are at risk.
    LeanAtLoad {
        /// Greatest deviation there, per cent.
        percent: f64,
    },
    /// High load was driven in open loop only: nothing is known there.
    LoadUnseen,
    /// Below 4 ms the dead time of the injector makes the factor a few per cent off.
    ShortTimes,
    /// A good part of the lines could not be read.
    ManyBroken {
        /// Share, per cent.
        percent: f64,
    },
}

/// What driving on both fuels came to.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Comparison {
    /// What was asked.
    pub plan: Plan,
    /// What the load of a cell is told by.
    pub banded: Banded,
    /// How the fuel is known.
    pub fuel_known: FuelKnown,
    /// Cells by engine speed, then load.
    pub cells: Vec<Cell>,
    /// Rows set aside, by reason.
    pub set_aside: BTreeMap<SetAside, u64>,
    /// Rows read.
    pub rows: Rows,
    /// Total trims by regime; empty where none were logged.
    pub trims: Vec<TrimPoint>,
    /// The logs, thinned out.
    pub strips: Vec<Strip>,
    /// Whether the nozzle served.
    pub nozzle: NozzleWord,
    /// What a reader should know.
    pub warnings: Vec<Warning>,
}
