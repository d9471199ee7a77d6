//! An instrument, its certificates and its daily checks: whether its word counts on a day.

use time::{Date, OffsetDateTime};

use super::coded;
use super::ids::{AttachmentId, InstrumentId, PersonId};

coded! {
    /// What an instrument measures.
    "instrument-kind" InstrumentKind {
        /// Pressure.
        PressureGauge = "pressure-gauge",
        /// Temperature.
        Thermometer = "thermometer",
        /// Exhaust.
        GasAnalyser = "gas-analyser",
        /// Escaping gas.
        LeakDetector = "leak-detector",
        /// Escaping gas, by bubbles.
        Foam = "foam",
        /// Compression of an engine cylinder.
        CompressionGauge = "compression-gauge",
        /// Fault codes and trims.
        DiagnosticReader = "diagnostic-reader",
        /// Anything else.
        Other = "other",
    }
}

/// What is written down of an instrument.
#[derive(Debug, Clone, PartialEq)]
pub struct NewInstrument {
    /// Short code on it: "G-03".
    pub code: String,
    /// What it measures.
    pub kind: InstrumentKind,
    /// Maker.
    pub maker: String,
    /// Type.
    pub type_name: String,
    /// Serial.
    pub serial: String,
    /// Smallest step it shows, in its unit (kPa, K, ...).
    pub resolution: Option<f64>,
    /// Standard uncertainty of one reading, in its unit.
    pub standard_uncertainty: Option<f64>,
    /// Its unit.
    pub unit: String,
    /// Supports nothing on a day without a passed check (zero, bump, leak check).
    pub needs_daily_check: bool,
}

/// An instrument as stored.
#[derive(Debug, Clone, PartialEq, sqlx::FromRow)]
#[allow(missing_docs, reason = "the fields are those of NewInstrument, explained there")]
pub struct Instrument {
    pub id: InstrumentId,
    pub code: String,
    pub kind: InstrumentKind,
    pub maker: String,
    pub type_name: String,
    pub serial: String,
    pub resolution: Option<f64>,
    pub standard_uncertainty: Option<f64>,
    pub unit: String,
    pub needs_daily_check: bool,
    pub retired_on: Option<Date>,
    pub version: i64,
}

/// A calibration certificate.
#[derive(Debug, Clone, PartialEq, sqlx::FromRow)]
pub struct InstrumentCertificate {
    /// The instrument.
    pub instrument_id: InstrumentId,
    /// Number on it.
    pub number: String,
    /// Who calibrated.
    pub laboratory: String,
    /// When.
    pub calibrated_on: Date,
    /// Last day it serves.
    pub due_on: Date,
    /// Expanded uncertainty, in the instrument's unit.
    pub expanded_uncertainty: Option<f64>,
    /// Its coverage factor.
    pub coverage_factor: Option<f64>,
    /// The paper itself.
    pub attachment_id: Option<AttachmentId>,
}

/// A daily check.
#[derive(Debug, Clone, PartialEq, sqlx::FromRow)]
pub struct InstrumentCheck {
    /// The instrument.
    pub instrument_id: InstrumentId,
    /// When.
    pub checked_at: OffsetDateTime,
    /// As it should be.
    pub has_passed: bool,
    /// Error found, in the instrument's unit.
    pub as_found_error: Option<f64>,
    /// In words.
    pub note: String,
    /// Who.
    pub person_id: PersonId,
}

/// An instrument with what speaks for it.
#[derive(Debug, Clone, PartialEq)]
pub struct InstrumentRecord {
    /// The instrument.
    pub instrument: Instrument,
    /// Its certificates.
    pub certificates: Vec<InstrumentCertificate>,
    /// Its checks.
    pub checks: Vec<InstrumentCheck>,
}

/// Why an instrument's word does not count.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NotTrusted {
    /// No certificate in force that day; the last ended then, if there was one.
    OutOfCalibration(Option<Date>),
    /// No check was made that day before the measurement.
    NotChecked,
    /// The last check before the measurement failed.
    FailedCheck,
    /// Out of use since.
    Retired(Date),
}

impl InstrumentRecord {
    /// The certificate in force on a day: the one calibrated last among those that cover it.
    pub fn certificate_on(&self, on: Date) -> Option<&InstrumentCertificate> {
        self.certificates
            .iter()
            .filter(|one| one.calibrated_on <= on && on <= one.due_on)
            .max_by_key(|one| one.calibrated_on)
    }

    /// Whether its calibration covers a day. Foam has an expiry of its own and needs no certificate.
    pub fn is_in_calibration(&self, on: Date) -> bool {
        self.instrument.kind == InstrumentKind::Foam || self.certificate_on(on).is_some()
    }

    /// The last day that any certificate covers.
    pub fn due_on(&self) -> Option<Date> {
        self.certificates.iter().map(|one| one.due_on).max()
    }

    /// The last time before `at` that it was known to be right: a passed check, or a calibration (its day begins at the
    /// instant that `begins` gives). What was measured from then on is in doubt when it is found wrong at `at`.
    pub fn last_good(
        &self,
        at: OffsetDateTime,
        begins: impl Fn(Date) -> Option<OffsetDateTime>,
    ) -> Option<OffsetDateTime> {
        let checks = self.checks.iter().filter(|one| one.has_passed).map(|one| one.checked_at);
        let calibrations = self.certificates.iter().filter_map(|one| begins(one.calibrated_on));
        checks.chain(calibrations).filter(|good| *good < at).max()
    }

    /// The first time from `at` on that it was known to be right again: a passed check, or a calibration.
    pub fn next_good(
        &self,
        at: OffsetDateTime,
        begins: impl Fn(Date) -> Option<OffsetDateTime>,
    ) -> Option<OffsetDateTime> {
        let checks = self.checks.iter().filter(|one| one.has_passed).map(|one| one.checked_at);
        let calibrations = self.certificates.iter().filter_map(|one| begins(one.calibrated_on));
        checks.chain(calibrations).filter(|good| *good >= at).min()
    }

    /// Whether a measurement made at `at` (which is the day `on` in the shop) can rest on this instrument.
    ///
    /// `day_of` turns an instant into the shop's day. Foam has an expiry of its own and needs no certificate.
    pub fn trusted(&self, at: OffsetDateTime, day_of: impl Fn(OffsetDateTime) -> Date) -> Result<(), NotTrusted> {
        let on = day_of(at);
        if let Some(retired_on) = self.instrument.retired_on.filter(|retired| *retired <= on) {
            return Err(NotTrusted::Retired(retired_on));
        }
        if !self.is_in_calibration(on) {
            let ended = self.certificates.iter().map(|one| one.due_on).filter(|due| *due < on).max();
            return Err(NotTrusted::OutOfCalibration(ended));
        }
        if self.instrument.needs_daily_check {
            let last = self.checks.iter().filter(|one| one.checked_at <= at && day_of(one.checked_at) == on);
            match last.max_by_key(|one| one.checked_at) {
                None => return Err(NotTrusted::NotChecked),
                Some(check) if !check.has_passed => return Err(NotTrusted::FailedCheck),
                Some(_) => {}
            }
        }
        Ok(())
    }

    /// Standard uncertainty of one reading on a day, in the instrument's unit: its own figure for repeatability where
    /// the shop knows it, else the certificate's whole expanded uncertainty over its coverage factor (too large, so safe).
    pub fn standard_uncertainty_on(&self, on: Date) -> Option<f64> {
        self.instrument.standard_uncertainty.or_else(|| {
            let certificate = self.certificate_on(on)?;
            Some(certificate.expanded_uncertainty? / certificate.coverage_factor.unwrap_or(2.0))
        })
    }
}
