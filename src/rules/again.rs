//! A result reckoned again: with an instrument's error taken out, from the entry that corrects it, or by the lines that
//! count now. The entry itself stays as it was written.
//!
//! Only a result that is a sum can be reckoned again. What somebody saw, and what an engine did on that day, cannot; that is
//! said, and the result stays in doubt until somebody looks at the vehicle.

use super::assess::assess;
use super::book::RuleBook;
use super::proof::{Place, State};
use super::results::{self, DecayRefused, ExhaustJudged, ValueJudged};
use crate::calc::decision::Verdict;
use crate::calc::lambda::PermissibleErrors;
use crate::model::doubt::{AsFound, ErrorIn, Sort, taken_out};
use crate::model::evidence::{Entry, Evidence, Exhaust, ExhaustPoint, LeakDecay};
use crate::model::ids::InstrumentId;
use crate::model::instrument::InstrumentKind;
use crate::model::job_file::{DayOf, JobFile};

/// A number with its limit and what came of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Figure {
    /// The number.
    pub value: f64,
    /// Its expanded uncertainty, k = 2.
    pub expanded_uncertainty: f64,
    /// Not below.
    pub least: Option<f64>,
    /// Not above.
    pub most: Option<f64>,
    /// What came of it; `None` where nothing limits it.
    pub verdict: Option<Verdict>,
}

/// One number before and after.
#[derive(Debug, Clone, PartialEq)]
pub struct Beside {
    /// What it is: the key behind `again-`.
    pub what: &'static str,
    /// Its unit.
    pub unit: &'static str,
    /// Digits to print.
    pub decimals: u8,
    /// As it was written down.
    pub old: Option<Figure>,
    /// Reckoned again; `None` where it cannot be.
    pub new: Option<Figure>,
}

/// A result reckoned again.
#[derive(Debug, Clone, PartialEq)]
pub struct Again {
    /// How it stands.
    pub sort: Sort,
    /// Why: the key behind `again-why-`.
    pub why: &'static str,
    /// Its numbers, old beside new.
    pub beside: Vec<Beside>,
    /// How it stood before, where that was asked of the proofs and not of a sum.
    pub was: Option<Sort>,
}

/// What is changed when it is reckoned again.
#[derive(Debug, Clone, Copy)]
pub enum Change<'a> {
    /// The instrument was wrong by this; nothing was entered yet where it is empty.
    Error(InstrumentId, InstrumentKind, &'a [AsFound]),
    /// Another entry says what was meant.
    Corrected(&'a Entry),
    /// Other lines count.
    Lines(&'a RuleBook),
}

/// Reckons an entry of a job again. `book` holds the lines it was judged by.
pub fn again(file: &JobFile, book: &RuleBook, entry: &Entry, change: Change<'_>, day_of: DayOf<'_>) -> Again {
    let by_sum = match (&entry.body, change) {
        (Evidence::LeakDecay(old), Change::Error(id, _, errors)) if !errors.is_empty() => {
            let new = without_error(old, id, errors);
            decay(file, (book, entry, old), (book, entry, &new), day_of)
        }
        (Evidence::Exhaust(old), Change::Error(_, InstrumentKind::GasAnalyser, errors)) if !errors.is_empty() => {
            match exhaust_without_error(old, errors) {
                Some(new) => exhaust(file, (book, entry, old), (book, entry, &new), day_of),
                None => doubtful("below-zero"),
            }
        }
        (Evidence::LeakDecay(old), Change::Corrected(by)) => match &by.body {
            Evidence::LeakDecay(new) => decay(file, (book, entry, old), (book, by, new), day_of),
            _ => doubtful("state"),
        },
        (Evidence::Exhaust(old), Change::Corrected(by)) => match &by.body {
            Evidence::Exhaust(new) => exhaust(file, (book, entry, old), (book, by, new), day_of),
            _ => doubtful("state"),
        },
        (Evidence::LeakDecay(old), Change::Lines(now)) => decay(file, (book, entry, old), (now, entry, old), day_of),
        (Evidence::Exhaust(old), Change::Lines(now)) => exhaust(file, (book, entry, old), (now, entry, old), day_of),
        (_, Change::Error(_, kind, errors)) => doubtful(match (&entry.body, kind) {
            (_, InstrumentKind::LeakDetector) => "detector",
            (_, InstrumentKind::Foam) => "foam",
            (Evidence::LeakDecay(_) | Evidence::Exhaust(_), _) if errors.is_empty() => "no-error",
            _ => "state",
        }),
        (_, Change::Corrected(_)) => by_proof(file, book, entry, day_of),
        (_, Change::Lines(now)) => {
            let was = by_proof(file, book, entry, day_of).sort;
            Again { was: Some(was), ..by_proof(file, now, entry, day_of) }
        }
    };
    // A detector or foam is no sum, whatever else the entry holds.
    match change {
        Change::Error(_, InstrumentKind::LeakDetector, _) => Again { beside: by_sum.beside, ..doubtful("detector") },
        Change::Error(_, InstrumentKind::Foam, _) => Again { beside: by_sum.beside, ..doubtful("foam") },
        _ => by_sum,
    }
}

impl Again {
    fn because(self, why: &'static str) -> Self {
        Self { why, ..self }
    }
}

fn doubtful(why: &'static str) -> Again {
    Again { sort: Sort::InDoubt, why, beside: Vec::new(), was: None }
}

/// The verdict of a sum decides.
fn sorted(verdict: Option<Verdict>, beside: Vec<Beside>) -> Again {
    let (sort, why) = match verdict {
        Some(Verdict::Pass) => (Sort::Holds, "passes"),
        Some(Verdict::Fail) => (Sort::Fails, "fails"),
        Some(Verdict::CannotTell) => (Sort::InDoubt, "cannot-tell"),
        None => (Sort::InDoubt, "no-limit"),
    };
    Again { sort, why, beside, was: None }
}

/// What is no sum: how the proofs stand that rest on its slot.
fn by_proof(file: &JobFile, book: &RuleBook, entry: &Entry, day_of: DayOf<'_>) -> Again {
    let (kind, subject) = (entry.body.kind(), entry.body.subject());
    let on = day_of(entry.measured_at);
    let rests = |place: &Place| matches!(place, Place::Evidence(k, s, _) if *k == kind && *s == subject);
    let states: Vec<State> = assess(file, book, on, day_of)
        .into_iter()
        .filter(|proof| rests(&proof.place) && proof.before != super::Deadline::After)
        .map(|proof| proof.state)
        .collect();
    let (sort, why) = if states.is_empty() {
        (Sort::InDoubt, "no-proof")
    } else if states.contains(&State::Stops) {
        (Sort::Fails, "proof-stops")
    } else if states.iter().all(|state| state.is_settled()) {
        (Sort::Holds, "proof-met")
    } else {
        (Sort::InDoubt, "proof-open")
    };
    Again { sort, why, beside: Vec::new(), was: None }
}

/// The readings of a decay test with an error taken out of gauge or thermometer, whichever it was.
fn without_error(test: &LeakDecay, id: InstrumentId, errors: &[AsFound]) -> LeakDecay {
    let mut test = test.clone();
    if test.gauge_id == id {
        let kpa = |read| taken_out(errors, ErrorIn::PressureKpa, Some(ErrorIn::PressurePercent), read);
        (test.start_kpa, test.end_kpa) = (kpa(test.start_kpa), kpa(test.end_kpa));
    }
    if test.thermometer_id == id {
        let c = |read| taken_out(errors, ErrorIn::TemperatureK, None, read);
        (test.start_c, test.end_c) = (c(test.start_c), c(test.end_c));
    }
    test
}

/// Readings of the analyser with its error taken out; `None` where a share falls below zero by more than an analyser may be
/// wrong: then the error as found is not the error of that day.
fn exhaust_without_error(seen: &Exhaust, errors: &[AsFound]) -> Option<Exhaust> {
    let most = PermissibleErrors::default();
    let point = |old: &ExhaustPoint| {
        let share = |by, read: f64, may: f64| {
            let left = taken_out(errors, by, None, read);
            (left >= -may).then_some(left.max(0.0))
        };
        Some(ExhaustPoint {
            co_percent: share(ErrorIn::CoPercent, old.co_percent, most.co_percent)?,
            co2_percent: share(ErrorIn::Co2Percent, old.co2_percent, most.co2_percent)?,
            o2_percent: share(ErrorIn::O2Percent, old.o2_percent, most.o2_percent)?,
            hc_ppm: share(ErrorIn::HcPpm, old.hc_ppm, most.hc_ppm_hexane)?,
            ..old.clone()
        })
    };
    Some(Exhaust { idle: point(&seen.idle)?, raised: point(&seen.raised)?, ..seen.clone() })
}

type Judging<'a, T> = (&'a RuleBook, &'a Entry, &'a T);

fn decay(file: &JobFile, old: Judging<'_, LeakDecay>, new: Judging<'_, LeakDecay>, day_of: DayOf<'_>) -> Again {
    let judge = |(book, entry, test): Judging<'_, LeakDecay>| {
        let judged = results::decay(file, book, entry, test, day_of)?;
        Ok::<_, DecayRefused>(Figure {
            value: judged.result.rate_cm3_h,
            expanded_uncertainty: judged.result.expanded_uncertainty_cm3_h,
            least: None,
            most: Some(judged.test.limit_cm3_h),
            verdict: Some(judged.result.verdict),
        })
    };
    let (old, new) = (judge(old).ok(), judge(new));
    let rate = |new| Beside { what: "rate", unit: "cm³/h", decimals: 1, old: old.clone(), new };
    match new {
        Ok(new) => sorted(new.verdict, vec![rate(Some(new.clone()))]),
        Err(DecayRefused::OverRating(..)) => sorted(Some(Verdict::Fail), vec![rate(None)]).because("over-rating"),
        Err(_) => Again { beside: vec![rate(None)], ..doubtful("no-sum") },
    }
}

fn exhaust(file: &JobFile, old: Judging<'_, Exhaust>, new: Judging<'_, Exhaust>, day_of: DayOf<'_>) -> Again {
    let judge = |(book, entry, seen): Judging<'_, Exhaust>| results::exhaust(file, book, entry, seen, day_of);
    let (old, new) = (judge(old), judge(new));
    let co = |what, of: fn(&ExhaustJudged) -> &ValueJudged| Beside {
        what,
        unit: "%",
        decimals: 2,
        old: Some(figure(of(&old))),
        new: Some(figure(of(&new))),
    };
    let lambda = |of: &ExhaustJudged| of.raised_lambda.as_ref().ok().map(figure);
    let hc = |of: &ExhaustJudged| of.raised_hc.as_ref().map(figure);
    let mut beside = vec![
        co("idle-co", |judged| &judged.idle_co),
        co("raised-co", |judged| &judged.raised_co),
        Beside { what: "lambda", unit: "", decimals: 3, old: lambda(&old), new: lambda(&new) },
    ];
    if old.raised_hc.is_some() || new.raised_hc.is_some() {
        beside.push(Beside { what: "raised-hc", unit: "ppm", decimals: 0, old: hc(&old), new: hc(&new) });
    }
    if new.raised_lambda.is_err() {
        return Again { beside, ..doubtful("no-sum") };
    }
    // A line that nobody read lets nothing pass alone, here as in the proofs.
    if new.verdict() == Some(Verdict::Pass) && new.unconfirmed().is_some() {
        return Again { beside, ..doubtful("unconfirmed") };
    }
    sorted(new.verdict(), beside)
}

fn figure(judged: &ValueJudged) -> Figure {
    Figure {
        value: judged.value,
        expanded_uncertainty: judged.expanded_uncertainty,
        least: judged.least,
        most: judged.most,
        verdict: judged.verdict,
    }
}

/// Whether other lines changed anything for this entry: a limit, or what came of it.
pub fn is_touched(again: &Again) -> bool {
    let differs = |one: &Beside| match (&one.old, &one.new) {
        (Some(old), Some(new)) => old.least != new.least || old.most != new.most || old.verdict != new.verdict,
        (old, new) => old.is_some() != new.is_some(),
    };
    again.beside.iter().any(differs) || again.was.is_some_and(|was| was != again.sort)
}
