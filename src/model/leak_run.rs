//! A pressure-decay test while it runs: set-up, start, readings, all by the server's clock.

use serde::{Deserialize, Serialize};
use time::OffsetDateTime;

use super::evidence::{LeakDecay, LeakReading, PressureKind, Section, TestGas};
use super::ids::{InstrumentId, JobId, LeakRunId, PersonId};

/// What is known before the start.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct LeakSetUp {
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
    /// Temperature at least three minutes before the start, C; `None` when none was taken.
    pub settled_c: Option<f64>,
    /// Why it starts before two temperatures agreed; empty when they did.
    pub unsettled_reason: String,
    /// The gauge.
    pub gauge_id: InstrumentId,
    /// The thermometer.
    pub thermometer_id: InstrumentId,
    /// Resolution of the gauge, kPa, as its record says on the day.
    pub pressure_resolution_kpa: f64,
    /// Standard uncertainty of one pressure reading, kPa.
    pub pressure_standard_uncertainty_kpa: f64,
    /// Standard uncertainty of one temperature reading, K.
    pub temperature_standard_uncertainty_k: f64,
}

/// A test that runs.
#[derive(Debug, Clone, PartialEq)]
pub struct LeakRun {
    /// Name for ever.
    pub id: LeakRunId,
    /// Which job.
    pub job_id: JobId,
    /// What was known before the start.
    pub set_up: LeakSetUp,
    /// Start, by the server's clock.
    pub started_at: OffsetDateTime,
    /// Who started it.
    pub started_by: PersonId,
    /// Readings in order; the first is the start.
    pub readings: Vec<LeakReading>,
}

impl LeakRun {
    /// The test as it would be recorded with its last reading as the end; `None` before the second reading.
    pub fn decay(&self) -> Option<LeakDecay> {
        let (first, last) = (self.readings.first()?, self.readings.last()?);
        (last.at > first.at).then(|| self.decay_until(first, last))
    }

    /// The test with one more reading.
    #[must_use]
    pub fn with(&self, reading: LeakReading) -> Self {
        let mut more = self.clone();
        more.readings.push(reading);
        more
    }

    fn decay_until(&self, first: &LeakReading, last: &LeakReading) -> LeakDecay {
        let known = &self.set_up;
        LeakDecay {
            section: known.section,
            test_gas: known.test_gas,
            pressure_kind: known.pressure_kind,
            ambient_kpa: known.ambient_kpa,
            lowest_rating_gauge_kpa: known.lowest_rating_gauge_kpa,
            volume_l: known.volume_l,
            volume_relative_standard_uncertainty: known.volume_relative_standard_uncertainty,
            volume_how: known.volume_how.clone(),
            start_kpa: first.kpa,
            end_kpa: last.kpa,
            start_c: first.c,
            end_c: last.c,
            started_at: first.at,
            ended_at: last.at,
            unsettled_reason: known.unsettled_reason.clone(),
            gauge_id: known.gauge_id,
            thermometer_id: known.thermometer_id,
            pressure_resolution_kpa: known.pressure_resolution_kpa,
            pressure_standard_uncertainty_kpa: known.pressure_standard_uncertainty_kpa,
            temperature_standard_uncertainty_k: known.temperature_standard_uncertainty_k,
            settled_c: known.settled_c,
            readings: self.readings.clone(),
        }
    }
}
