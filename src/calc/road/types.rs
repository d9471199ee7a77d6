//! What goes into a road comparison and what comes out of it.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

/// A quantity that a log may hold; the code is the one of the command line and of the language files.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Quantity {
    /// Time since some beginning, s.
    TimeS,
    /// Engine speed, 1/min.
    Rpm,
    /// Manifold pressure, kPa absolute.
    ManifoldKpa,
    /// Injection time of the petrol computer, ms.
    PetrolMs,
    /// Injection time of the gas control, ms.
    GasMs,
    /// Which fuel burns.
    Fuel,
    /// Coolant, C.
    CoolantC,
    /// Whether the oxygen sensor steers.
    ClosedLoop,
    /// Short-term trim, per cent.
    ShortTrim,
    /// Long-term trim, per cent.
    LongTrim,
    /// Gas pressure over the manifold's, kPa.
    GasKpa,
}

impl Quantity {
    /// All of them, in the order of a form.
    pub const ALL: [Self; 11] = [
        Self::TimeS,
        Self::Rpm,
        Self::ManifoldKpa,
        Self::PetrolMs,
        Self::GasMs,
        Self::Fuel,
        Self::CoolantC,
        Self::ClosedLoop,
        Self::ShortTrim,
        Self::LongTrim,
        Self::GasKpa,
    ];

    /// The one spelling of it.
    pub const fn code(self) -> &'static str {
        match self {
            Self::TimeS => "time_s",
            Self::Rpm => "rpm",
            Self::ManifoldKpa => "manifold_kpa",
            Self::PetrolMs => "petrol_ms",
            Self::GasMs => "gas_ms",
            Self::Fuel => "fuel",
            Self::CoolantC => "coolant_c",
            Self::ClosedLoop => "closed_loop",
            Self::ShortTrim => "short_trim",
            Self::LongTrim => "long_trim",
            Self::GasKpa => "gas_kpa",
        }
    }

    /// The quantity of this code.
    pub fn from_code(code: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|one| one.code() == code)
    }

    /// Without it nothing can be compared.
    pub const fn is_needed(self) -> bool {
        matches!(self, Self::TimeS | Self::Rpm | Self::PetrolMs)
    }
}

/// The fuel that the engine burned.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Burned {
    /// Petrol.
    Petrol,
    /// LPG or CNG.
    Gas,
}

impl Burned {
    /// Its name in English, for the command line.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Petrol => "petrol",
            Self::Gas => "gas",
        }
    }
}

/// One row of a log.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sample {
    /// Time since some beginning of its log, s.
    pub time_s: f64,
    /// Engine speed, 1/min.
    pub rpm: f64,
    /// Manifold pressure, kPa absolute.
    pub manifold_kpa: Option<f64>,
    /// Injection time of the petrol computer, ms.
    pub petrol_ms: f64,
    /// Injection time of the gas control, ms.
    pub gas_ms: Option<f64>,
    /// Which fuel the log says burned.
    pub burned: Option<Burned>,
    /// Coolant, C.
    pub coolant_c: Option<f64>,
    /// Whether the oxygen sensor steers.
    pub is_closed_loop: Option<bool>,
    /// Short-term trim, per cent.
    pub short_trim_percent: Option<f64>,
    /// Long-term trim, per cent.
    pub long_trim_percent: Option<f64>,
    /// Gas pressure over the manifold's, kPa.
    pub gas_kpa: Option<f64>,
}

/// What is asked of a comparison; the defaults are common practice of the trade, a shop may set stricter ones.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Plan {
    /// Visits of a cell on each fuel for a judgement.
    pub visits: u32,
    /// Beyond this a cell deviates, per cent.
    pub deviates_percent: f64,
    /// Within this a cell is good, per cent.
    pub good_percent: f64,
    /// Least coolant temperature, C.
    pub coolant_c: f64,
    /// Least time after a change of fuel, s.
    pub settle_s: f64,
    /// Greatest change of engine speed, 1/min a second.
    pub rpm_per_s: f64,
    /// Greatest change of manifold pressure, kPa a second.
    pub kpa_per_s: f64,
    /// Share of a deviation that one round corrects.
    pub damping: f64,
    /// Greatest correction of a round, per cent.
    pub round_percent: f64,
    /// Greatest difference of neighbouring corrections, per cent.
    pub step_percent: f64,
}

impl Default for Plan {
    fn default() -> Self {
        Self {
            visits: 6,
            deviates_percent: 3.0,
            good_percent: 5.0,
            coolant_c: 75.0,
            settle_s: 10.0,
            rpm_per_s: 400.0,
            kpa_per_s: 30.0,
            damping: 0.85,
            round_percent: 10.0,
            step_percent: 3.0,
        }
    }
}

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
