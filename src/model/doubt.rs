//! What is in doubt because of a finding, and what rests on it.
//!
//! Four causes share one graph: an instrument that was found wrong, evidence that was corrected under a paper, parts that
//! were recalled, a rule line that changed. [`affected`] walks from the cause to the results and on to the papers; it looks
//! at what it is given and at nothing else.

use serde::{Deserialize, Serialize};
use time::{Date, OffsetDateTime};

use super::coded;
use super::evidence::Entry;
use super::ids::{EvidenceId, FindingId, InstrumentId, JobId, PaperId, PartId, RecallId, VehicleId};
use super::instrument::{InstrumentKind, InstrumentRecord};
use super::job_file::DayOf;
use super::part::Part;
use super::recall::Recall;

coded! {
    /// Why results are in doubt.
    "doubt-cause" CauseKind {
        /// An instrument was found wrong.
        Instrument = "instrument",
        /// Evidence was corrected under a paper.
        Evidence = "evidence",
        /// Parts were recalled.
        Recall = "recall",
        /// A rule line changed.
        RuleLine = "rule-line",
    }
}

/// The cause of a finding as stored.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Doubt {
    /// Its finding.
    pub finding_id: FindingId,
    /// Which of the four.
    pub cause: CauseKind,
    /// When it was found wrong.
    pub found_at: OffsetDateTime,
    /// A beginning that somebody stated.
    pub stated_from: Option<OffsetDateTime>,
    /// Why; empty where none was stated.
    pub stated_reason: String,
    /// The instrument.
    pub instrument_id: Option<InstrumentId>,
    /// The entry that corrects another.
    pub evidence_id: Option<EvidenceId>,
    /// The recall.
    pub recall_id: Option<RecallId>,
    /// Id of the rule line; empty for other causes, and where a whole set changed.
    pub rule_line: String,
    /// From this day on its new value counts.
    pub rule_from_on: Option<Date>,
}

/// Time in doubt, both ends included. `from` is `None` where nothing good was known before.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Span {
    /// Since.
    pub from: Option<OffsetDateTime>,
    /// Until.
    pub to: OffsetDateTime,
}

impl Span {
    /// The span of an instrument found wrong: from the last time it was known to be right (or the beginning that was
    /// stated) until it was known to be right again, and no longer than `now`.
    ///
    /// A calibration that found it wrong says nothing good about the time before it, and a calibration that has merely run
    /// out says nothing bad: there the span begins where the certificate ended.
    pub fn of_instrument(
        doubt: &Doubt,
        record: &InstrumentRecord,
        is_out_of_date: bool,
        now: OffsetDateTime,
        begins: impl Fn(Date) -> Option<OffsetDateTime>,
    ) -> Self {
        let ended = || {
            let ended = record.certificates.iter().map(|one| one.due_on);
            ended.filter_map(|on| begins(on.next_day()?)).filter(|at| *at <= doubt.found_at).max()
        };
        let renewed = || {
            let calibrated = record.certificates.iter().filter_map(|one| begins(one.calibrated_on));
            calibrated.filter(|at| *at >= doubt.found_at).min()
        };
        let (from, good) = if is_out_of_date {
            // A daily check does not make up for a calibration that has ended.
            (ended(), renewed())
        } else {
            (record.last_good(doubt.found_at, &begins), record.next_good(doubt.found_at, &begins))
        };
        Self { from: doubt.stated_from.or(from), to: good.unwrap_or(now).min(now) }
    }

    /// Whether an instant lies in it.
    pub fn holds(&self, at: OffsetDateTime) -> bool {
        self.from.is_none_or(|from| from <= at) && at <= self.to
    }
}

/// A cause with everything that [`affected`] needs of it.
#[derive(Debug, Clone, PartialEq)]
pub enum Cause {
    /// This instrument, in this time.
    Instrument(InstrumentId, Span),
    /// This entry corrected that one.
    Corrected {
        /// The newer.
        by: EvidenceId,
        /// The older.
        replaced: EvidenceId,
    },
    /// These parts.
    Recall(Box<Recall>),
    /// A line that counts from this day on, for entries of these kinds; no kind means any.
    RuleLine {
        /// First day of its new value.
        from_on: Date,
        /// Kinds of evidence it judges.
        kinds: Vec<&'static str>,
    },
}

/// An issued paper, as far as this walk looks at it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PaperUnder {
    /// Which.
    pub id: PaperId,
    /// Its number.
    pub number: String,
    /// Its job.
    pub job_id: JobId,
    /// Its vehicle.
    pub vehicle_id: VehicleId,
    /// Since when it says what it says.
    pub issued_at: OffsetDateTime,
    /// When it was withdrawn or superseded.
    pub ended_at: Option<OffsetDateTime>,
}

/// The part of the shop's records in which to look.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Records {
    /// Entries of the jobs concerned, corrected ones included.
    pub entries: Vec<Entry>,
    /// Parts of the vehicles concerned.
    pub parts: Vec<Part>,
    /// Papers of those jobs and vehicles.
    pub papers: Vec<PaperUnder>,
}

/// What is in doubt.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Thing {
    /// A recorded result.
    Entry(EvidenceId),
    /// A part on a vehicle.
    Part(PartId),
}

/// One thing in doubt, and the papers that rest on it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Resting {
    /// The thing.
    pub thing: Thing,
    /// Papers by id, in the order of issue.
    pub papers: Vec<PaperId>,
}

/// Everything that rests on a cause, the oldest first. A paper that had ended before `opened_at` says nothing any more and
/// is left out.
pub fn affected(cause: &Cause, records: &Records, opened_at: OffsetDateTime, day_of: DayOf<'_>) -> Vec<Resting> {
    let alive = || records.papers.iter().filter(|paper| paper.ended_at.is_none_or(|ended| ended >= opened_at));
    let mut found = Vec::new();
    let mut entries: Vec<&Entry> = records.entries.iter().filter(|entry| concerns(cause, entry, day_of)).collect();
    entries.sort_by_key(|entry| (entry.measured_at, entry.id));
    for entry in entries {
        let papers: Vec<PaperId> =
            alive().filter(|paper| rests(paper, entry, &records.entries)).map(|paper| paper.id).collect();
        let is_current = !records.entries.iter().any(|other| other.replaces_id == Some(entry.id));
        if is_current || !papers.is_empty() {
            found.push(Resting { thing: Thing::Entry(entry.id), papers });
        }
    }
    if let Cause::Recall(recall) = cause {
        // A part that came off by this recall stays listed; one that had come off before is nobody's concern.
        let was_on = |part: &&Part| part.removed_on.is_none_or(|on| on >= day_of(opened_at));
        for part in records.parts.iter().filter(was_on).filter(|part| recall.carries(part).is_some()) {
            let rests = |paper: &&PaperUnder| paper.vehicle_id == part.vehicle_id && part.entered_at <= paper.issued_at;
            let papers = alive().filter(rests).map(|paper| paper.id).collect();
            found.push(Resting { thing: Thing::Part(part.id), papers });
        }
    }
    found
}

fn concerns(cause: &Cause, entry: &Entry, day_of: DayOf<'_>) -> bool {
    match cause {
        Cause::Instrument(id, span) => entry.instruments.contains(id) && span.holds(entry.measured_at),
        Cause::Corrected { replaced, .. } => entry.id == *replaced,
        Cause::Recall(_) => false,
        Cause::RuleLine { from_on, kinds } => {
            day_of(entry.measured_at) >= *from_on && (kinds.is_empty() || kinds.contains(&entry.body.kind()))
        }
    }
}

/// A paper rests on the entry that was current in its job when it was issued.
fn rests(paper: &PaperUnder, entry: &Entry, all: &[Entry]) -> bool {
    let was_replaced =
        || all.iter().any(|other| other.replaces_id == Some(entry.id) && other.recorded_at < paper.issued_at);
    paper.job_id == entry.job_id && entry.recorded_at <= paper.issued_at && !was_replaced()
}

coded! {
    /// In what an error was found; the unit is in the name.
    "as-found" ErrorIn {
        /// Pressure, kPa at every reading.
        PressureKpa = "pressure-kpa",
        /// Pressure, per cent of the true value.
        PressurePercent = "pressure-percent",
        /// Temperature, K.
        TemperatureK = "temperature-k",
        /// Carbon monoxide, per cent by volume.
        CoPercent = "co-percent",
        /// Carbon dioxide, per cent by volume.
        Co2Percent = "co2-percent",
        /// Oxygen, per cent by volume.
        O2Percent = "o2-percent",
        /// Hydrocarbons, ppm as hexane.
        HcPpm = "hc-ppm",
    }
}

impl ErrorIn {
    /// What can be wrong in an instrument of this kind so that a sum can take it out again. Nothing for a detector, foam or
    /// reader: they see or do not see.
    pub fn of(kind: InstrumentKind) -> &'static [Self] {
        match kind {
            InstrumentKind::PressureGauge => &[Self::PressureKpa, Self::PressurePercent],
            InstrumentKind::Thermometer => &[Self::TemperatureK],
            InstrumentKind::GasAnalyser => &[Self::CoPercent, Self::Co2Percent, Self::O2Percent, Self::HcPpm],
            InstrumentKind::LeakDetector
            | InstrumentKind::Foam
            | InstrumentKind::CompressionGauge
            | InstrumentKind::DiagnosticReader
            | InstrumentKind::Other => &[],
        }
    }

    /// Its unit, as printed.
    pub fn unit(self) -> &'static str {
        match self {
            Self::PressureKpa => "kPa",
            Self::TemperatureK => "K",
            Self::HcPpm => "ppm",
            Self::PressurePercent | Self::CoPercent | Self::Co2Percent | Self::O2Percent => "%",
        }
    }
}

/// An error as it was found. Positive: the instrument reads high, so the truth is lower than what was written down.
#[derive(Debug, Clone, PartialEq, sqlx::FromRow)]
pub struct AsFound {
    /// In what.
    pub quantity: ErrorIn,
    /// By how much it reads high, in the unit of the quantity.
    pub reads_high_by: f64,
    /// From what it is known: a certificate, a comparison.
    pub how_known: String,
    /// Who entered it.
    pub person_name: String,
    /// When.
    pub entered_at: OffsetDateTime,
}

/// Takes an error out of a reading: `true = (reading - kPa) / (1 + per cent / 100)`, and the plain difference for everything
/// that has no share. What was not entered counts as no error.
pub fn taken_out(errors: &[AsFound], by: ErrorIn, share: Option<ErrorIn>, reading: f64) -> f64 {
    let of = |wanted| errors.iter().find(|one| one.quantity == wanted).map_or(0.0, |one| one.reads_high_by);
    (reading - of(by)) / (1.0 + share.map_or(0.0, of) / 100.0)
}

coded! {
    /// How a result stands once its cause is taken into account.
    "doubt-sort" Sort {
        /// The same verdict with the error taken out.
        Holds = "holds",
        /// Nobody can tell by a sum, or the sum cannot tell.
        InDoubt = "in-doubt",
        /// It does not pass any more.
        Fails = "fails",
    }
}

coded! {
    /// What becomes of a paper.
    "paper-decision" PaperDecision {
        /// It stands, with the reason.
        Stands = "stands",
        /// The test is made again.
        ReTest = "re-test",
        /// It is taken back.
        Withdrawn = "withdrawn",
    }
}

/// Tag of a signed decision.
pub const DECISION_FORMAT: &str = "fuelwright/paper-decision/1";

/// A decision as it is signed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct DecisionContent {
    /// Always [`DECISION_FORMAT`].
    pub format: String,
    /// The finding.
    pub finding: FindingId,
    /// What was found, in words.
    pub found: String,
    /// Number of the paper.
    pub paper: String,
    /// SHA-256 of the content of that paper.
    pub paper_sha256: String,
    /// What was decided.
    pub decision: PaperDecision,
    /// Why.
    pub reason: String,
    /// Who.
    pub signatory: String,
    /// Under which authorisation.
    pub authorisation: String,
    /// When.
    #[serde(with = "time::serde::rfc3339")]
    pub made_at: OffsetDateTime,
    /// Made in a demonstration.
    pub is_demonstration: bool,
}

impl crate::seal::Signed for DecisionContent {
    const FORMAT: &'static str = DECISION_FORMAT;
}

#[cfg(test)]
mod tests {
    use super::*;

    fn error(quantity: ErrorIn, reads_high_by: f64) -> AsFound {
        let entered_at = OffsetDateTime::UNIX_EPOCH;
        AsFound { quantity, reads_high_by, how_known: String::new(), person_name: String::new(), entered_at }
    }

    #[test]
    fn what_reads_high_was_lower() {
        let errors = [error(ErrorIn::PressureKpa, 2.0), error(ErrorIn::PressurePercent, 1.0)];
        // A true 300 kPa shows 300 x 1.01 + 2 = 305 kPa.
        let read = taken_out(&errors, ErrorIn::PressureKpa, Some(ErrorIn::PressurePercent), 305.0);
        assert!((read - 300.0).abs() < 1e-9, "{read}");
        let low = [error(ErrorIn::CoPercent, -0.1)];
        assert!((taken_out(&low, ErrorIn::CoPercent, None, 0.25) - 0.35).abs() < 1e-12);
        assert!((taken_out(&[], ErrorIn::CoPercent, None, 0.25) - 0.25).abs() < 1e-12);
    }
}
