//! A job as the rules see it: the file, the book in force, and each proof as it stands. One reading for every deed and
//! paper, inside a transaction or outside.

use time::OffsetDateTime;

use super::{Refusal, Work};
use crate::clock::Zone;
use crate::db;
use crate::model::branch::Branch;
use crate::model::evidence::Entry;
use crate::model::ids::{BranchId, JobId};
use crate::model::job_file::JobFile;
use crate::rules::{self, Proof, RuleBook};

/// A job file weighed by the rules of a day.
pub(super) struct Assessed {
    pub file: JobFile,
    /// Every entry ever made, corrected ones included.
    pub history: Vec<Entry>,
    pub book: RuleBook,
    pub proofs: Vec<Proof>,
    pub branch: Branch,
    pub zone: Zone,
}

impl Assessed {
    /// Reads a job of a branch and weighs it at an instant.
    ///
    /// # Errors
    /// [`Refusal::Gone`] when the branch has no such job.
    pub async fn read(con: &mut db::Con, branch: BranchId, job: JobId, at: OffsetDateTime) -> Result<Self, Refusal> {
        let (file, history) = db::job_files::find_with_history(con, branch, job).await?.ok_or(Refusal::Gone)?;
        let branch = db::branches::find(con, branch).await?.ok_or(Refusal::Gone)?;
        let zone = Zone::named(&branch.time_zone).map_err(|error| Refusal::Broken(error.to_string()))?;
        let today = zone.day_of(at);
        let book = db::rule_books::book_for(con, branch.id, &file.vehicle.plate_country, today).await?;
        let proofs = rules::assess(&file, &book, today, &|instant| zone.day_of(instant));
        Ok(Self { file, history, book, proofs, branch, zone })
    }
}

impl Work {
    /// A job as the rules see it inside this transaction.
    pub(super) async fn assessed(&mut self, job: JobId) -> Result<Assessed, Refusal> {
        let (branch, now) = (self.who.branch, self.now);
        Assessed::read(self, branch, job, now).await
    }
}
