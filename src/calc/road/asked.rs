//! What goes into a road comparison: quantities, rows, and what is asked.

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
