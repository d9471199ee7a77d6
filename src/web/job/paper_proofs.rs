//! How the proofs of a job stand, for its papers: the same words as in the proof list on the screen.

use super::{JobPage, say};
use crate::model::Coded;
use crate::model::paper::work_sheet::{WorkProof, WorkProofState, WorkStage};
use crate::model::stage::{Stage, shown_on, stages_of};
use crate::rules::{Proof, State};

/// The stages of the job, each with its proofs.
pub fn stages(job: &JobPage) -> Vec<WorkStage> {
    let stage = |stage: &Stage| WorkStage {
        name: job.w().t(format!("stage-{}", stage.code())),
        proofs: of_stages(job, |one| shown_on(job.file.job.kind, one) == *stage),
    };
    stages_of(job.file.job.kind).iter().map(stage).collect()
}

/// The proofs of one stage, wherever this kind of job shows it.
pub fn of_stage(job: &JobPage, stage: Stage) -> Vec<WorkProof> {
    of_stages(job, |one| one == stage)
}

fn of_stages(job: &JobPage, is_wanted: impl Fn(Stage) -> bool) -> Vec<WorkProof> {
    job.proofs.iter().filter(|one| is_wanted(one.stage)).map(|one| proof(job, one)).collect()
}

fn proof(job: &JobPage, proof: &Proof) -> WorkProof {
    let w = job.w();
    // The mark says already that nothing is recorded.
    let mut note = if proof.why.key == "not-recorded" { Vec::new() } else { vec![say::why(&w, &proof.why)] };
    note.extend(proof.by.clone());
    note.extend(proof.at.map(|at| job.when(at)));
    if proof.is_entered_later {
        note.push(format!("◷\u{a0}{}", w.t("paper-entered-later")));
    }
    note.retain(|part| !part.is_empty());
    WorkProof {
        name: say::proof_title(&w, proof),
        state: match proof.state {
            State::Met => WorkProofState::Met,
            State::Missing => WorkProofState::Missing,
            State::Undecided => WorkProofState::Undecided,
            State::Stops => WorkProofState::Stops,
            State::Waived => WorkProofState::Waived,
            State::NotApplicable => WorkProofState::NotApplicable,
        },
        note: note.join(" · "),
    }
}
