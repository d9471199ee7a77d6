//! A finding weighed: what rests on its cause, each result reckoned again, each paper with what was decided of it.

use time::OffsetDateTime;

use crate::clock::Zone;
use crate::db::doubts::Decided;
use crate::db::rule_books::{book_for, book_on};
use crate::db::{self, Con};
use crate::model::branch::Branch;
use crate::model::doubt::{
    AsFound, Cause, CauseKind, Doubt, PaperUnder, Records, Resting, Sort, Span, Thing, affected,
};
use crate::model::evidence::Entry;
use crate::model::finding::Finding;
use crate::model::ids::{BranchId, EvidenceId, FindingId, JobId, PaperId, VehicleId};
use crate::model::instrument::InstrumentRecord;
use crate::model::job_file::JobFile;
use crate::model::paper::certificate::CertificateContent;
use crate::model::paper::issued::{open_reviews, standing};
use crate::model::part::Part;
use crate::model::recall::{Carries, Recall};
use crate::rules::again::{self, Again, Change};
use crate::rules::{Quantity, RuleBook, RuleSet};
use crate::seal::standing::Standing;
use crate::shop::Refusal;
use crate::shop::instruments::FOUND_OUT_OF_DATE;

/// What rests on the cause of a finding, before anything is reckoned.
#[derive(Debug)]
pub struct Traced {
    pub doubt: Doubt,
    pub instrument: Option<InstrumentRecord>,
    pub span: Option<Span>,
    pub recall: Option<Recall>,
    pub records: Records,
    pub resting: Vec<Resting>,
    /// Every paper that rests on something of it, in the order of issue.
    pub papers: Vec<PaperUnder>,
    /// What the entry was corrected to.
    corrected_by: Option<EvidenceId>,
    zone: Zone,
    branch: Branch,
}

/// What a result is.
#[derive(Debug, Clone, PartialEq)]
pub enum What {
    /// An entry: kind and subject.
    Entry(&'static str, &'static str),
    /// A part, and how surely it is meant.
    Part(Box<Part>, Carries),
}

/// A result in doubt.
#[derive(Debug, Clone, PartialEq)]
pub struct ResultLine {
    pub what: What,
    pub job_id: JobId,
    pub job_number: String,
    pub vehicle_id: VehicleId,
    pub plate: String,
    /// When it was measured; of a part, when it was entered.
    pub at: OffsetDateTime,
    pub papers: Vec<PaperId>,
    pub again: Again,
}

/// A paper in doubt.
#[derive(Debug, Clone)]
pub struct PaperLine {
    pub id: PaperId,
    pub number: String,
    pub kind: String,
    pub job_id: JobId,
    pub vehicle_id: VehicleId,
    pub plate: String,
    pub vehicle: String,
    pub issued_at: OffsetDateTime,
    pub standing: Standing,
    /// This finding keeps it under review.
    pub is_under_review: bool,
    /// The worst of the results it rests on.
    pub worst: Sort,
    /// Decisions by this finding, oldest first.
    pub decisions: Vec<Decided>,
}

impl PaperLine {
    /// A signatory has to decide it, for the first time.
    pub fn waits(&self) -> bool {
        self.decisions.is_empty() && !self.has_ended()
    }

    /// A signatory may decide it: for the first time, or once the test was made again.
    pub fn may_be_decided(&self) -> bool {
        use crate::model::doubt::PaperDecision::ReTest;
        !self.has_ended() && self.decisions.last().is_none_or(|last| last.decision == ReTest)
    }

    fn has_ended(&self) -> bool {
        matches!(self.standing, Standing::Withdrawn | Standing::Superseded)
    }
}

/// A finding with everything that rests on its cause.
#[derive(Debug)]
pub struct Weighed {
    pub finding: Finding,
    pub doubt: Doubt,
    pub instrument: Option<InstrumentRecord>,
    pub span: Option<Span>,
    pub recall: Option<Recall>,
    /// The error as found, by its latest entry.
    pub errors: Vec<AsFound>,
    pub results: Vec<ResultLine>,
    pub papers: Vec<PaperLine>,
    pub branch: Branch,
    pub zone: Zone,
}

impl Weighed {
    /// So many results were sorted so.
    pub fn count(&self, sort: Sort) -> usize {
        self.results.iter().filter(|line| line.again.sort == sort).count()
    }
}

/// A cause that no row holds yet.
pub(super) fn plain_doubt(cause: CauseKind, found_at: OffsetDateTime, set: impl FnOnce(&mut Doubt)) -> Doubt {
    let mut doubt = Doubt {
        finding_id: FindingId::new(),
        cause,
        found_at,
        stated_from: None,
        stated_reason: String::new(),
        instrument_id: None,
        evidence_id: None,
        recall_id: None,
        rule_line: String::new(),
        rule_from_on: None,
    };
    set(&mut doubt);
    doubt
}

/// Looks for what rests on the cause of a finding.
///
/// # Errors
/// [`Refusal::Gone`] for a finding without a cause.
pub async fn trace(con: &mut Con, branch: BranchId, finding: &Finding, now: OffsetDateTime) -> Result<Traced, Refusal> {
    let doubt = db::doubts::of_finding(con, finding).await?.ok_or(Refusal::Gone)?;
    // A finding that was decided keeps the span it had then.
    let until = finding.decided_at.unwrap_or(now);
    let is_out_of_date = finding.source == FOUND_OUT_OF_DATE;
    Box::pin(trace_of(con, branch, doubt, is_out_of_date, (finding.opened_at, until))).await
}

/// The same for a cause whose finding is not opened yet.
pub(super) async fn trace_doubt(
    con: &mut Con,
    branch: BranchId,
    doubt: &Doubt,
    (opened_at, now): (OffsetDateTime, OffsetDateTime),
) -> Result<Traced, Refusal> {
    Box::pin(trace_of(con, branch, doubt.clone(), false, (opened_at, now))).await
}

async fn trace_of(
    con: &mut Con,
    branch_id: BranchId,
    doubt: Doubt,
    is_out_of_date: bool,
    (opened_at, now): (OffsetDateTime, OffsetDateTime),
) -> Result<Traced, Refusal> {
    let branch = db::branches::find(con, branch_id).await?.ok_or(Refusal::Gone)?;
    let zone = Zone::named(&branch.time_zone).map_err(|error| Refusal::Broken(error.to_string()))?;
    let begins = |on| zone.instant(on, 0, 0);
    let (mut instrument, mut span, mut recall, mut corrected_by) = (None, None, None, None);
    let (cause, records) = match doubt.cause {
        CauseKind::Instrument => {
            let id = doubt.instrument_id.ok_or(Refusal::Gone)?;
            let record = db::instruments::record(con, branch_id, id).await?.ok_or(Refusal::Gone)?;
            let during = Span::of_instrument(&doubt, &record, is_out_of_date, now, begins);
            (instrument, span) = (Some(record), Some(during));
            (Cause::Instrument(id, during), db::doubts::records_of_instrument(con, branch_id, id, during).await?)
        }
        CauseKind::Evidence => {
            let by = doubt.evidence_id.ok_or(Refusal::Gone)?;
            let job = db::evidence::find_job(con, branch_id, by).await?.ok_or(Refusal::Gone)?;
            let records = db::doubts::records_of_jobs(con, branch_id, &[job]).await?;
            let replaced = records.entries.iter().find(|entry| entry.id == by).and_then(|entry| entry.replaces_id);
            corrected_by = Some(by);
            (Cause::Corrected { by, replaced: replaced.ok_or(Refusal::Gone)? }, records)
        }
        CauseKind::Recall => {
            let id = doubt.recall_id.ok_or(Refusal::Gone)?;
            let found = db::recalls::find(con, branch_id, id).await?.ok_or(Refusal::Gone)?;
            let records = db::doubts::records_of_category(con, branch_id, found.category).await?;
            recall = Some(found.clone());
            (Cause::Recall(Box::new(found)), records)
        }
        CauseKind::RuleLine => {
            let from_on = doubt.rule_from_on.ok_or(Refusal::Gone)?;
            let book = book_on(con, branch_id, zone.day_of(now)).await?;
            let from = begins(from_on).unwrap_or(now);
            let records = db::doubts::records_since(con, branch_id, from).await?;
            (Cause::RuleLine { from_on, kinds: kinds_of(&book, &doubt.rule_line) }, records)
        }
    };
    let resting = affected(&cause, &records, opened_at, &|at| zone.day_of(at));
    let mut traced =
        Traced { papers: Vec::new(), doubt, instrument, span, recall, records, resting, corrected_by, zone, branch };
    if matches!(cause, Cause::RuleLine { .. }) {
        leave_out_untouched(con, &mut traced, opened_at).await?;
    }
    let rests = |paper: &&PaperUnder| traced.resting.iter().any(|one| one.papers.contains(&paper.id));
    traced.papers = traced.records.papers.iter().filter(rests).cloned().collect();
    Ok(traced)
}

/// What another line judges the same as before is not in doubt.
async fn leave_out_untouched(con: &mut Con, traced: &mut Traced, opened_at: OffsetDateTime) -> Result<(), Refusal> {
    let mut kept = Vec::new();
    for one in std::mem::take(&mut traced.resting) {
        let Thing::Entry(id) = one.thing else { continue };
        let Some(entry) = traced.records.entries.iter().find(|entry| entry.id == id).cloned() else { continue };
        let file = file_with(con, traced.branch.id, &entry).await?;
        if again::is_touched(&reckon(con, traced, &[], &file, &entry, opened_at).await?) {
            kept.push(one);
        }
    }
    traced.resting = kept;
    Ok(())
}

/// The job of an entry, with this entry in its slot: what was judged when it counted.
async fn file_with(con: &mut Con, branch: BranchId, entry: &Entry) -> Result<JobFile, Refusal> {
    let mut file = db::job_files::find(con, branch, entry.job_id).await?.ok_or(Refusal::Gone)?;
    let (kind, subject) = (entry.body.kind(), entry.body.subject());
    file.evidence.retain(|one| one.body.kind() != kind || one.body.subject() != subject);
    file.evidence.push(entry.clone());
    Ok(file)
}

async fn reckon(
    con: &mut Con,
    traced: &Traced,
    errors: &[AsFound],
    file: &JobFile,
    entry: &Entry,
    opened_at: OffsetDateTime,
) -> Result<Again, Refusal> {
    let branch = traced.branch.id;
    let day_of = |at| traced.zone.day_of(at);
    let book = book_for(con, branch, &file.vehicle.plate_country, day_of(entry.measured_at)).await?;
    Ok(match (&traced.instrument, traced.corrected_by) {
        (Some(record), _) => {
            let one = &record.instrument;
            again::again(file, &book, entry, Change::Error(one.id, one.kind, errors), &day_of)
        }
        (None, Some(by)) => {
            // The last entry of the chain says what is known now.
            let next = |id| traced.records.entries.iter().find(|other| other.replaces_id == Some(id));
            let mut last = traced.records.entries.iter().find(|other| other.id == by).ok_or(Refusal::Gone)?;
            while let Some(later) = next(last.id) {
                last = later;
            }
            let now = db::job_files::find(con, branch, entry.job_id).await?.ok_or(Refusal::Gone)?;
            again::again(&now, &book, entry, Change::Corrected(last), &day_of)
        }
        (None, None) => {
            let before = book_before(con, traced, &book, opened_at).await?;
            again::again(file, &before, entry, Change::Lines(&book), &day_of)
        }
    })
}

/// The book without what changed: with every set that was put in force from that day as it was before; where none was,
/// without the named line, or without every line of that first day.
async fn book_before(
    con: &mut Con,
    traced: &Traced,
    book: &RuleBook,
    opened_at: OffsetDateTime,
) -> Result<RuleBook, Refusal> {
    let (line, from_on) = (&traced.doubt.rule_line, traced.doubt.rule_from_on);
    let mut before = book.clone();
    let mut is_replaced = false;
    for set in before.sets.iter_mut().filter(|_| line.is_empty()) {
        let files = db::rule_files::list(con, traced.branch.id, &set.name).await?;
        let mut known = files.iter().filter(|file| file.recorded_at <= opened_at);
        if known.next().is_some_and(|file| Some(file.from_on) == from_on) {
            let text = known.next().map_or_else(|| crate::rules::embedded(&set.name), |file| Some(&file.text));
            *set = RuleSet::read(text.unwrap_or_default()).map_err(|bad| Refusal::Broken(bad.to_string()))?;
            is_replaced = true;
        }
    }
    if !is_replaced {
        for set in &mut before.sets {
            set.limit.retain(|one| if line.is_empty() { one.from_on != from_on } else { one.id != *line });
            set.proof.retain(|one| if line.is_empty() { one.from_on != from_on } else { one.id != *line });
        }
    }
    Ok(before)
}

/// Kinds of evidence that a line judges; none: any.
fn kinds_of(book: &RuleBook, line: &str) -> Vec<&'static str> {
    let limits = book.sets.iter().flat_map(|set| &set.limit).filter(|one| one.id == line);
    let mut kinds: Vec<&'static str> = limits.flat_map(|one| kinds_of_quantity(one.quantity)).copied().collect();
    kinds.dedup();
    kinds
}

fn kinds_of_quantity(quantity: Quantity) -> &'static [&'static str] {
    match quantity {
        Quantity::LeakCm3H => &["leak-decay"],
        Quantity::IdleCoPercent
        | Quantity::RaisedCoPercent
        | Quantity::RaisedLambda
        | Quantity::RaisedRpm
        | Quantity::RaisedHcPpm => &["exhaust"],
        Quantity::CoolantC => &["suitability", "engine-calibration"],
        Quantity::VaporiserC => &["engine-calibration"],
        Quantity::CompressionSpreadPercent => &["suitability"],
        Quantity::TrimDifferencePercent => &["trims"],
        Quantity::ShutOffS | Quantity::FillPercent => &["function-checks"],
        Quantity::AfterDriveKm => &["after-drive"],
        Quantity::RoadVisits | Quantity::RoadCells | Quantity::RoadDeviatesPercent | Quantity::RoadGoodPercent => {
            &["road"]
        }
        Quantity::ContainerAgeMonths => &[],
        Quantity::HousingVentMm2
        | Quantity::HousingTightKpa
        | Quantity::UnderVehicleMm
        | Quantity::HeatDistanceMm
        | Quantity::GroundClearanceMm
        | Quantity::FixingLengthwiseG
        | Quantity::FixingAcrossG
        | Quantity::ReliefValveKpa
        | Quantity::ReliefDeviceC => &["checklist"],
    }
}

/// Weighs a finding that has a cause.
///
/// # Errors
/// [`Refusal::Gone`] for one without.
pub async fn weigh(con: &mut Con, branch: BranchId, id: FindingId, now: OffsetDateTime) -> Result<Weighed, Refusal> {
    let finding = db::findings::find(con, branch, id).await?.ok_or(Refusal::Gone)?;
    let traced = trace(con, branch, &finding, now).await?;
    let errors = db::doubts::list_errors(con, id).await?;
    let mut results = Vec::with_capacity(traced.resting.len());
    for one in &traced.resting {
        results.push(Box::pin(result(con, &traced, &errors, one, &finding)).await?);
    }
    let decisions = db::doubts::list_decisions(con, id).await?;
    let mut papers = Vec::with_capacity(traced.papers.len());
    for under in &traced.papers {
        let worst = results.iter().filter(|line| line.papers.contains(&under.id)).map(|line| line.again.sort).max();
        let of_paper = decisions.iter().filter(|one| one.paper_id == under.id).cloned().collect();
        papers.push(paper(con, &traced, under, (id, worst.unwrap_or(Sort::InDoubt), of_paper)).await?);
    }
    let Traced { doubt, instrument, span, recall, branch, zone, .. } = traced;
    Ok(Weighed { finding, doubt, instrument, span, recall, errors, results, papers, branch, zone })
}

async fn result(
    con: &mut Con,
    traced: &Traced,
    errors: &[AsFound],
    one: &Resting,
    finding: &Finding,
) -> Result<ResultLine, Refusal> {
    let branch = traced.branch.id;
    let (what, job, at, again) = match one.thing {
        Thing::Entry(id) => {
            let entry = traced.records.entries.iter().find(|entry| entry.id == id).ok_or(Refusal::Gone)?;
            let file = file_with(con, branch, entry).await?;
            let again = reckon(con, traced, errors, &file, entry, finding.opened_at).await?;
            (What::Entry(entry.body.kind(), entry.body.subject()), entry.job_id, entry.measured_at, again)
        }
        Thing::Part(id) => {
            let part = traced.records.parts.iter().find(|part| part.id == id).ok_or(Refusal::Gone)?;
            let carries = traced.recall.as_ref().and_then(|recall| recall.carries(part)).unwrap_or(Carries::Perhaps);
            let (sort, why) = match (part.is_fitted(), carries) {
                (false, _) => (Sort::Holds, "part-gone"),
                (true, Carries::Surely) => (Sort::Fails, "part-recalled"),
                (true, Carries::Perhaps) => (Sort::InDoubt, "part-perhaps"),
            };
            let again = Again { sort, why, beside: Vec::new(), was: None };
            (What::Part(Box::new(part.clone()), carries), part.fitted_in, part.entered_at, again)
        }
    };
    let job = db::jobs::find(con, branch, job).await?.ok_or(Refusal::Gone)?;
    let vehicle = db::vehicles::find(con, branch, job.vehicle_id).await?.ok_or(Refusal::Gone)?;
    Ok(ResultLine {
        what,
        job_id: job.id,
        job_number: job.number,
        vehicle_id: vehicle.id,
        plate: vehicle.plate,
        at,
        papers: one.papers.clone(),
        again,
    })
}

async fn paper(
    con: &mut Con,
    traced: &Traced,
    under: &PaperUnder,
    (finding, worst, decisions): (FindingId, Sort, Vec<Decided>),
) -> Result<PaperLine, Refusal> {
    let issued = db::papers::find(con, traced.branch.id, under.id).await?.ok_or(Refusal::Gone)?;
    let events = db::papers::list_events(con, under.id).await?;
    let content: CertificateContent =
        serde_json::from_slice(&issued.content).map_err(|error| Refusal::Broken(error.to_string()))?;
    let vehicle = format!("{} {}", content.vehicle.make, content.vehicle.model);
    Ok(PaperLine {
        id: under.id,
        number: under.number.clone(),
        kind: issued.kind,
        job_id: under.job_id,
        vehicle_id: under.vehicle_id,
        plate: content.vehicle.plate,
        vehicle: vehicle.trim().to_owned(),
        issued_at: under.issued_at,
        standing: standing(&events, None, traced.zone.day_of(under.issued_at)),
        is_under_review: open_reviews(&events).contains(&Some(finding)),
        worst,
        decisions,
    })
}
