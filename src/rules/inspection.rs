//! What an inspection comes to, and which certificate a job may end with.
//!
//! A certificate of inspection may say "fail". The rule is one pure function, [`judge`]:
//!
//! | proof due before issue | it |
//! |---|---|
//! | met, waived, not applicable | is settled |
//! | failed: measured or looked at, and not as it should be | makes the result a fail, at least as a major deficiency |
//! | a test not made or not decided, with a dangerous deficiency recorded and the reason why it was not made | is printed "not tested"; the result is a fail |
//! | anything else: missing, cannot tell, an instrument that is not trusted | leaves the inspection open: no certificate |
//!
//! A pass asks that every proof is settled and no deficiency is above minor. Nobody may be made to run an engine or open the
//! gas of a vehicle that leaks only to fill a form, which is why a dangerous deficiency may cut the tests short; what was
//! not tested is never read as passed.

use super::line::Deadline;
use super::proof::Proof;
use crate::model::evidence::{Deficiencies, Evidence, FoundDeficiency, Severity};
use crate::model::job::JobKind;
use crate::model::job_file::JobFile;
use crate::model::paper::certificate::InspectionOutcome;

/// Jobs of this kind end with a result that may be "fail".
///
/// A periodic inspection and the examination after an accident say how a vehicle was found. A repair is finished when
/// everything is as it should be; until then there is nothing to certify.
pub fn may_fail(kind: JobKind) -> bool {
    matches!(kind, JobKind::Inspection | JobKind::AfterAccident)
}

/// One deficiency that counts: written down by the inspector, or a proof that failed and that nobody classed.
#[derive(Debug, Clone, PartialEq)]
pub struct Counted<'a> {
    /// The proof that failed, where it rests on one.
    pub proof: Option<&'a Proof>,
    /// What the inspector wrote, if anything.
    pub found: Option<&'a FoundDeficiency>,
    /// How grave; a proof that failed is at least major.
    pub severity: Severity,
}

/// What an inspection comes to.
#[derive(Debug, Clone, PartialEq)]
pub struct Judgement<'a> {
    /// The result; `None` while something is open.
    pub outcome: Option<InspectionOutcome>,
    /// Deficiencies, gravest first.
    pub counted: Vec<Counted<'a>>,
    /// Proofs that failed.
    pub failed: Vec<&'a Proof>,
    /// Tests that something dangerous forbade.
    pub not_tested: Vec<&'a Proof>,
    /// Proofs that keep the inspection open.
    pub open: Vec<&'a Proof>,
}

impl Judgement<'_> {
    /// Something found is dangerous.
    pub fn is_dangerous(&self) -> bool {
        self.counted.iter().any(|one| one.severity == Severity::Dangerous)
    }
}

/// Weighs the proofs and what was found.
pub fn judge<'a>(proofs: &'a [Proof], found: Option<&'a Deficiencies>) -> Judgement<'a> {
    let asked: Vec<&Proof> = proofs.iter().filter(|proof| proof.before == Deadline::Issue).collect();
    let unsettled = || asked.iter().copied().filter(|proof| !proof.state.is_settled());
    let failed: Vec<&Proof> = unsettled().filter(|proof| proof.has_failed).collect();
    let is_cut_short = found
        .is_some_and(|found| found.worst() == Some(Severity::Dangerous) && !found.not_tested_reason.trim().is_empty());
    let may_be_left = |proof: &&Proof| is_cut_short && proof.is_test && !proof.has_failed;
    let not_tested: Vec<&Proof> = unsettled().filter(may_be_left).collect();
    let open: Vec<&Proof> = unsettled().filter(|proof| !proof.has_failed && !may_be_left(proof)).collect();
    let rows = found.map(|found| found.found.as_slice()).unwrap_or_default();
    let mut counted: Vec<Counted<'a>> = rows
        .iter()
        .map(|row| {
            let proof = failed.iter().copied().find(|proof| proof.id == row.item);
            let least = if proof.is_some() { Severity::Major } else { Severity::Minor };
            Counted { proof, found: Some(row), severity: row.severity.max(least) }
        })
        .collect();
    let is_classed = |proof: &&Proof| rows.iter().any(|row| row.item == proof.id);
    let unclassed = failed.iter().copied().filter(|proof| !is_classed(proof));
    counted.extend(unclassed.map(|proof| Counted { proof: Some(proof), found: None, severity: Severity::Major }));
    counted.sort_by_key(|one| std::cmp::Reverse(one.severity));
    let worst = counted.first().map(|one| one.severity);
    let outcome = match worst {
        _ if !open.is_empty() || asked.is_empty() => None,
        _ if !not_tested.is_empty() => Some(InspectionOutcome::Fail),
        Some(Severity::Major | Severity::Dangerous) => Some(InspectionOutcome::Fail),
        Some(Severity::Minor) => Some(InspectionOutcome::PassWithMinor),
        None => Some(InspectionOutcome::Pass),
    };
    Judgement { outcome, counted, failed, not_tested, open }
}

/// What the inspector wrote down in a job.
pub fn found(file: &JobFile) -> Option<&Deficiencies> {
    let shown = file.shown("deficiencies", "", |body| match body {
        Evidence::Deficiencies(one) => Some(one),
        _ => None,
    });
    shown.map(|(_, one)| one)
}

/// The proofs that keep a job from its certificate: for a kind that may fail, those that keep the inspection open; for any
/// other, whatever is not settled.
pub fn held_back<'a>(file: &'a JobFile, proofs: &'a [Proof]) -> Vec<&'a Proof> {
    if may_fail(file.job.kind) {
        return judge(proofs, found(file)).open;
    }
    let asked = proofs.iter().filter(|proof| proof.before == Deadline::Issue);
    asked.filter(|proof| !proof.state.is_settled()).collect()
}

/// The certificate of this job may be issued, as far as the proofs go.
pub fn may_certify(file: &JobFile, proofs: &[Proof]) -> bool {
    proofs.iter().any(|proof| proof.before == Deadline::Issue) && held_back(file, proofs).is_empty()
}

/// The proofs that keep a vehicle from being handed over: what holds the certificate back, and what is asked only now.
pub fn held_back_from_hand_over<'a>(file: &'a JobFile, proofs: &'a [Proof]) -> Vec<&'a Proof> {
    let now = proofs.iter().filter(|proof| proof.before == Deadline::HandOver && !proof.state.is_settled());
    held_back(file, proofs).into_iter().chain(now).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::stage::Stage;
    use crate::rules::line::SetName;
    use crate::rules::proof::{Place, State, Why};

    /// A proof by its id: `leak` and `exhaust` are tests, anything else is looked at.
    fn proof(id: &str, state: State, has_failed: bool) -> Proof {
        Proof {
            id: id.to_owned(),
            title: None,
            stage: Stage::Proving,
            before: if id == "received" { Deadline::HandOver } else { Deadline::Issue },
            state,
            has_failed,
            is_test: ["leak", "exhaust"].contains(&id),
            why: Why::plain("not-recorded"),
            place: Place::Findings,
            by: None,
            at: None,
            is_entered_later: false,
            is_never_waived: false,
            may_not_apply: false,
            source: String::new(),
            is_checked: true,
            is_practice: false,
            set: SetName { name: String::new(), title: String::new() },
        }
    }

    fn row(item: &str, severity: Severity) -> FoundDeficiency {
        FoundDeficiency {
            item: item.to_owned(),
            class: String::new(),
            severity,
            words: "as found".to_owned(),
            photo: None,
        }
    }

    fn listed(rows: Vec<FoundDeficiency>, not_tested_reason: &str) -> Deficiencies {
        Deficiencies { found: rows, not_tested_reason: not_tested_reason.to_owned(), is_gas_shut_off: None }
    }

    #[test]
    fn the_result_of_an_inspection_case_by_case() {
        use InspectionOutcome::{Fail, Pass, PassWithMinor};
        use Severity::{Dangerous, Major, Minor};
        let met = || proof("leak", State::Met, false);
        let failed = || proof("leak", State::Stops, true);
        let distrusted = || proof("exhaust", State::Stops, false);
        let missing = || proof("exhaust", State::Missing, false);
        let undecided = || proof("exhaust", State::Undecided, false);
        let unseen = || proof("fixing", State::Missing, false);
        let waived = || proof("exhaust", State::Waived, false);
        let later = || proof("received", State::Missing, false);
        let none = || listed(vec![], "");
        let danger = |why| listed(vec![row("leak", Dangerous)], why);
        type Case = (&'static str, Vec<Proof>, Option<Deficiencies>, Option<InspectionOutcome>);
        let cases: Vec<Case> = vec![
            ("nothing asked says nothing", vec![], Some(none()), None),
            ("all met, nothing found", vec![met()], Some(none()), Some(Pass)),
            ("what is due at hand-over does not count", vec![met(), later()], Some(none()), Some(Pass)),
            ("a waiver settles", vec![met(), waived()], Some(none()), Some(Pass)),
            ("minor only", vec![met()], Some(listed(vec![row("", Minor)], "")), Some(PassWithMinor)),
            (
                "a major one fails though every proof is met",
                vec![met()],
                Some(listed(vec![row("", Major)], "")),
                Some(Fail),
            ),
            ("a failed test fails", vec![failed()], Some(none()), Some(Fail)),
            ("a failed test is at least major", vec![failed()], Some(listed(vec![row("leak", Minor)], "")), Some(Fail)),
            ("a failed test without a list fails too", vec![failed()], None, Some(Fail)),
            ("failed beside missing stays open", vec![failed(), missing()], Some(none()), None),
            ("failed beside cannot tell stays open", vec![failed(), undecided()], Some(none()), None),
            ("an untrusted instrument is not a fail", vec![met(), distrusted()], Some(none()), None),
            ("dangerous alone does not excuse what is missing", vec![failed(), missing()], Some(danger("")), None),
            ("dangerous with the reason does", vec![failed(), missing()], Some(danger("leaks")), Some(Fail)),
            ("also what cannot tell", vec![failed(), undecided()], Some(danger("leaks")), Some(Fail)),
            ("but not what is only looked at", vec![failed(), unseen()], Some(danger("leaks")), None),
            (
                "a reason without danger excuses nothing",
                vec![failed(), missing()],
                Some(listed(vec![row("leak", Major)], "no time")),
                None,
            ),
            (
                "a list that is dangerous is never a pass",
                vec![met()],
                Some(listed(vec![row("", Dangerous), row("", Minor)], "")),
                Some(Fail),
            ),
        ];
        for (name, proofs, found, outcome) in &cases {
            let judged = judge(proofs, found.as_ref());
            assert_eq!(judged.outcome, *outcome, "{name}: {judged:?}");
            if judged.outcome.is_some() {
                assert!(judged.open.is_empty(), "{name}");
            }
        }
    }

    #[test]
    fn the_gravest_stands_first_and_a_failed_proof_is_counted_once() {
        let proofs = [proof("leak", State::Stops, true), proof("vent", State::Stops, true)];
        let list = listed(vec![row("", Severity::Minor), row("leak", Severity::Dangerous)], "");
        let judged = judge(&proofs, Some(&list));
        let said: Vec<_> = judged.counted.iter().map(|one| (one.severity, one.proof.map(|p| p.id.as_str()))).collect();
        assert_eq!(
            said,
            [(Severity::Dangerous, Some("leak")), (Severity::Major, Some("vent")), (Severity::Minor, None)]
        );
    }
}
