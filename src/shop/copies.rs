//! Papers that leave the house once more: a second copy for somebody who lost theirs, all of them into a folder.

use uuid::Uuid;

use super::{Refusal, Shop, Work};
use crate::db;
use crate::model::deed::Deed;
use crate::model::ids::{BranchId, PaperId};
use crate::model::paper::issued::EventKind;
use crate::model::person::Actor;

impl Shop {
    /// Writes down that a paper is printed once more, and for whom or why. The copy is the PDF as it was issued, byte for
    /// byte; how the paper stands does not change.
    ///
    /// # Errors
    /// [`Refusal::Gone`] when the branch has no such paper.
    pub async fn make_second_copy(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        id: PaperId,
        reason: String,
    ) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let (branch, now, person) = (work.who.branch, work.now, work.person()?);
            let paper = db::papers::find(&mut work, branch, id).await?.ok_or(Refusal::Gone)?;
            db::papers::insert_event(&mut work, id, EventKind::SecondCopy, &reason, person, now).await?;
            let deed = Deed::SecondCopyMade { paper: id, job: paper.job_id, number: paper.number, reason };
            work.done(deed, ()).await
        })
        .await
    }

    /// Writes down that so many papers of a branch were written out by the command line.
    ///
    /// # Errors
    /// The store.
    pub async fn papers_exported(&self, branch: BranchId, papers: usize) -> Result<(), Refusal> {
        let papers = i64::try_from(papers).unwrap_or(i64::MAX);
        self.deed(&Actor::program(branch), None, async move |work: Work| {
            work.done(Deed::PapersExported { branch, papers }, ()).await
        })
        .await
    }
}
