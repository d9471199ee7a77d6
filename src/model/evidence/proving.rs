//! Proving: leaks, exhaust, function. Numbers as read; verdicts are computed by the rules in force on that day.

use serde::{Deserialize, Serialize};
use time::{Date, OffsetDateTime};

use crate::model::coded;
use crate::model::ids::InstrumentId;

coded! {
    /// Part of the gas system that is tested as one.
    "section" Section {
        /// LPG, container to vaporiser.
        LpgLiquid = "lpg-liquid",
        /// LPG, vaporiser to injectors.
        LpgVapour = "lpg-vapour",
        /// CNG, cylinder to regulator.
        CngHigh = "cng-high",
        /// CNG, regulator to injectors.
        CngLow = "cng-low",
    }
}

coded! {
    /// How joints are searched.
    "leak-method" LeakMethod {
        /// Foam that shows bubbles.
        Foam = "foam",
        /// Electronic detector.
        Detector = "detector",
    }
}

coded! {
    /// What a joint showed.
    "joint-verdict" JointVerdict {
        /// No bubble; below the alarm.
        Dry = "dry",
        /// Bubbles; alarm.
        Leaks = "leaks",
        /// Not looked at.
        NotTested = "not-tested",
    }
}

/// One joint by its name.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Joint {
    /// Name: "multivalve outlet".
    pub name: String,
    /// What it showed.
    pub verdict: JointVerdict,
}

/// Joints of a section, searched one by one.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct LeakJoints {
    /// Which section.
    pub section: Section,
    /// How.
    pub method: LeakMethod,
    /// Pressure in the section while searching, kPa gauge.
    pub pressure_gauge_kpa: f64,
    /// Batch of the foam; empty with a detector.
    pub foam_batch: String,
    /// Last day of the foam.
    pub foam_expires_on: Option<Date>,
    /// The joints.
    pub joints: Vec<Joint>,
}

impl LeakJoints {
    /// Joints that showed this.
    pub fn count(&self, verdict: JointVerdict) -> usize {
        self.joints.iter().filter(|joint| joint.verdict == verdict).count()
    }
}

coded! {
    /// Gas in the section during a decay test.
    "test-gas" TestGas {
        /// Nitrogen.
        Nitrogen = "nitrogen",
        /// Air, never in a line that held fuel.
        Air = "air",
        /// The fuel's own vapour.
        Fuel = "fuel",
    }
}

coded! {
    /// What the gauge shows.
    "pressure-kind" PressureKind {
        /// Over ambient.
        Gauge = "gauge",
        /// From zero.
        Absolute = "absolute",
    }
}

/// Pressure decay of one section.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct LeakDecay {
    /// Which section.
    pub section: Section,
    /// With which gas.
    pub test_gas: TestGas,
    /// What the gauge shows.
    pub pressure_kind: PressureKind,
    /// Ambient pressure, kPa absolute.
    pub ambient_kpa: f64,
    /// Rating of the lowest-rated part in the section, kPa gauge.
    pub lowest_rating_gauge_kpa: f64,
    /// Volume of the section, L.
    pub volume_l: f64,
    /// Relative standard uncertainty of that volume.
    pub volume_relative_standard_uncertainty: f64,
    /// How the volume is known, in words.
    pub volume_how: String,
    /// Reading at start, kPa as the gauge shows.
    pub start_kpa: f64,
    /// Reading at end, kPa as the gauge shows.
    pub end_kpa: f64,
    /// Temperature at start, C.
    pub start_c: f64,
    /// Temperature at end, C.
    pub end_c: f64,
    /// Start, by the server's clock.
    #[serde(with = "time::serde::rfc3339")]
    pub started_at: OffsetDateTime,
    /// End, by the server's clock.
    #[serde(with = "time::serde::rfc3339")]
    pub ended_at: OffsetDateTime,
    /// Why the timer started before two temperature readings agreed; empty when they did.
    pub unsettled_reason: String,
    /// The gauge; its certificate gives resolution and uncertainty.
    pub gauge_id: InstrumentId,
    /// The thermometer.
    pub thermometer_id: InstrumentId,
    /// Resolution of the gauge, kPa, as on the day.
    pub pressure_resolution_kpa: f64,
    /// Standard uncertainty of one pressure reading, kPa.
    pub pressure_standard_uncertainty_kpa: f64,
    /// Standard uncertainty of one temperature reading, K.
    pub temperature_standard_uncertainty_k: f64,
    /// Temperature at least three minutes before the start, C; `None` when none was taken.
    #[serde(default)]
    pub settled_c: Option<f64>,
    /// Every reading, start and end included.
    #[serde(default)]
    pub readings: Vec<LeakReading>,
}

/// Gauge and thermometer at one moment of a test.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct LeakReading {
    /// When, by the server's clock.
    #[serde(with = "time::serde::rfc3339")]
    pub at: OffsetDateTime,
    /// As the gauge shows, kPa.
    pub kpa: f64,
    /// Gas or metal, C.
    pub c: f64,
}

impl LeakDecay {
    /// Minutes between start and end.
    pub fn duration_min(&self) -> f64 {
        (self.ended_at - self.started_at).as_seconds_f64() / 60.0
    }

    /// A reading of the gauge as absolute pressure, kPa.
    pub fn absolute_kpa(&self, reading_kpa: f64) -> f64 {
        match self.pressure_kind {
            PressureKind::Gauge => reading_kpa + self.ambient_kpa,
            PressureKind::Absolute => reading_kpa,
        }
    }
}

/// Exhaust at one engine speed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Default)]
pub struct ExhaustPoint {
    /// Engine speed, 1/min.
    pub rpm: f64,
    /// CO, per cent by volume.
    pub co_percent: f64,
    /// CO2, per cent by volume.
    pub co2_percent: f64,
    /// Oxygen, per cent by volume.
    pub o2_percent: f64,
    /// Hydrocarbons, ppm as hexane.
    pub hc_ppm: f64,
    /// Lambda as the analyser shows it.
    pub analyser_lambda: Option<f64>,
}

/// Exhaust on one fuel, at idle and raised idle.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Default)]
pub struct Exhaust {
    /// On gas; else on petrol.
    pub on_gas: bool,
    /// The analyser was set to this fuel ("petrol", "lpg", "cng").
    pub analyser_set_to: String,
    /// Coolant, C.
    pub coolant_c: f64,
    /// At idle.
    pub idle: ExhaustPoint,
    /// At raised idle.
    pub raised: ExhaustPoint,
    /// Why lambda as computed and as the analyser shows it differ, as the technician answered; empty where they agree.
    #[serde(default)]
    pub lambda_note: String,
}

coded! {
    /// How the fill stop was shown to work.
    "fill-stop-how" FillStopHow {
        /// Tested.
        Tested = "tested",
        /// First fill, with litres and ticket.
        FirstFill = "first-fill",
        /// To be shown at the first check: a dated duty.
        Later = "later",
    }
}

/// What must work before the vehicle leaves.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct FunctionChecks {
    /// Changes over to gas and back.
    pub changeover_works: bool,
    /// Returns to petrol when the container is empty.
    pub returns_when_empty: bool,
    /// Gas shut off with ignition off, after so many seconds; `None`: it stayed open.
    pub shut_off_ignition_s: Option<f64>,
    /// Gas shut off with the engine stalled, after so many seconds; `None`: it stayed open.
    pub shut_off_stalled_s: Option<f64>,
    /// How the fill stop was shown; `None` where there is none to show (CNG).
    pub fill_stop_how: Option<FillStopHow>,
    /// Litres at the stop, with `Tested` and `FirstFill`.
    pub fill_stop_l: Option<f64>,
    /// Ticket of the first fill.
    pub fill_ticket: String,
    /// Level shows right.
    pub level_shows: bool,
    /// Housing vent is open to the outside.
    pub vent_is_open: bool,
    /// Excess-flow valve present and approved.
    pub excess_flow_present: bool,
    /// Starts on gas with petrol unavailable; `None` where not fitted.
    pub starts_on_gas: Option<bool>,
    /// Label or plate is in place.
    pub label_in_place: bool,
}
