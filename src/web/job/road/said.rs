//! A road comparison as the job file says it: verdict, facts, and why nothing could be compared.

use super::super::JobPage;
use super::super::facts::{Fact, Facts};
use crate::calc::road::{Comparison, Refused};
use crate::model::evidence::{Entry, Evidence, RoadComparison};
use crate::papers::road;
pub(super) use crate::papers::road::fuel_key;
use crate::rules::road::{RoadOutcome, judged};
use crate::web::kit::{Mark, Tone, Verdict};
use crate::words::Words;

/// The mark of an outcome.
pub(super) fn mark(outcome: RoadOutcome) -> Mark {
    match outcome {
        RoadOutcome::Alike => Mark::Met,
        RoadOutcome::Apart => Mark::Stops,
        RoadOutcome::CannotTell => Mark::Undecided,
    }
}

/// What a comparison comes to.
pub(super) fn verdict_of(w: &Words, found: &Comparison) -> Verdict {
    let outcome = RoadOutcome::of(found);
    let tone = match outcome {
        RoadOutcome::Alike => Tone::Met,
        RoadOutcome::Apart => Tone::Stop,
        RoadOutcome::CannotTell => Tone::Copper,
    };
    Verdict { tone, mark: mark(outcome), title: road::title(w, found), sentences: road::sentences(w, found) }
}

/// What needs a hand before the numbers are read: a lean mixture at load, a nozzle that does not serve.
pub(super) fn alarms(w: &Words, found: &Comparison) -> Vec<Verdict> {
    let stop = |key: &str, sentence| Verdict {
        tone: Tone::Stop,
        mark: Mark::Stops,
        title: w.t(key),
        sentences: vec![sentence],
    };
    let lean = road::lean_at_load(w, found).map(|sentence| stop("road-lean-title", sentence));
    let nozzle = road::nozzle(w, found).map(|sentence| stop("road-nozzle-title", sentence));
    lean.into_iter().chain(nozzle).collect()
}

fn of(entry: &Entry) -> Option<&RoadComparison> {
    if let Evidence::RoadComparison(one) = &entry.body { Some(one) } else { None }
}

/// What an accepted comparison says.
pub fn verdict(job: &JobPage, entry: &Entry) -> Option<Verdict> {
    of(entry).map(|one| verdict_of(&job.w(), &one.comparison))
}

/// An accepted comparison, shown again.
pub fn facts(job: &JobPage, entry: &Entry) -> Vec<Fact> {
    let Some(one) = of(entry) else { return Vec::new() };
    let w = job.w();
    let mut facts = Facts::new(w, super::SCOPE)
        .coded("phase", one.phase)
        .text("judged", w.integer(i64::try_from(judged(&one.comparison)).unwrap_or(i64::MAX)))
        .text("fuel_known", road::fuel(&w, &one.comparison));
    for log in &one.logs {
        let sum = log.sha256.get(..12).unwrap_or_default();
        facts = facts.text("log", w.tv("road-log-sum", &[("file", log.name.as_str().into()), ("sum", sum.into())]));
    }
    facts.done()
}

/// Why no row could be used: reasons with their counts.
pub(super) fn refused_why(w: &Words, refused: &Refused) -> String {
    let Refused::NothingUsable { set_aside } = refused else { return String::new() };
    let said = set_aside.iter().map(|(why, rows)| {
        let values =
            [("why", w.t(format!("road-aside-{}", why.code())).into()), ("rows", w.number(*rows as f64, 0).into())];
        w.tv("road-aside-counted", &values)
    });
    said.collect::<Vec<_>>().join("; ")
}
