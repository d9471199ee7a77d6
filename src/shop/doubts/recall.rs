//! A recall: entered with what it names, the vehicles found that carry it, their keepers written to once, and a duty made for
//! each part, which ends with the part's removal or with a paper from elsewhere.

use uuid::Uuid;

use super::FOUND_RECALL;
use super::letters::Letter;
use super::weigh::{What, trace, weigh};
use crate::db;
use crate::model::Coded;
use crate::model::deed::Deed;
use crate::model::doubt::CauseKind;
use crate::model::duty::{DueBy, DutyKind, NewDuty};
use crate::model::ids::{FindingId, RecallId, VehicleId};
use crate::model::message::MessageKind;
use crate::model::person::Actor;
use crate::model::recall::NewRecall;
use crate::shop::{Refusal, Shop, Work};

impl Shop {
    /// Enters a recall. It opens a finding; papers that rest on the parts come under review, and each part that is on a
    /// vehicle now gets a duty, due today.
    ///
    /// # Errors
    /// [`Refusal::Field`] for a document of a day to come, and for a recall that names nothing but a kind of part.
    pub async fn enter_recall(&self, who: &Actor, key: Option<Uuid>, new: NewRecall) -> Result<FindingId, Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let (branch, now, today, person) = (work.who.branch, work.now, work.today, work.person()?);
            if new.dated_on > today {
                return Err(Refusal::Field { field: "dated_on", why: "wrong-future" });
            }
            let named = [&new.maker, &new.type_name, &new.batch, &new.serial_from, &new.serial_to];
            if named.iter().all(|one| one.trim().is_empty()) {
                return Err(Refusal::Field { field: "maker", why: "recall-names-nothing" });
            }
            let id = db::recalls::insert(&mut work, branch, &new, person, now).await?;
            let w = work.words_of_branch().await?;
            let part = w.t(format!("part-category-{}", new.category.code()));
            let values = [
                ("who", new.recalled_by.as_str().into()),
                ("document", new.document.as_str().into()),
                ("part", part.into()),
            ];
            let text = w.tv("finding-recalled", &values);
            let finding =
                work.open_doubt(FOUND_RECALL, text, |doubt| doubt.recall_id = Some(id), CauseKind::Recall).await?;
            work.owe_recall_duties(finding, id, &new).await?;
            work.done(Deed::RecallEntered { recall: id, finding, document: new.document }, finding).await
        })
        .await
    }

    /// Writes to the keeper of every vehicle that carries what the recall names and was not written to yet. Returns how
    /// many letters that were.
    pub async fn write_recall_letters(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        finding: FindingId,
    ) -> Result<i64, Refusal> {
        let is_demo = self.issuer.is_demo();
        self.deed(who, key, async move |mut work: Work| {
            let (branch, now) = (work.who.branch, work.now);
            work.open_doubt_of(finding).await?;
            let weighed = weigh(&mut work, branch, finding, now).await?;
            let recall = weighed.recall.as_ref().ok_or(Refusal::Gone)?;
            let told = db::recalls::list_letters(&mut work, recall.id).await?;
            let mut letters = 0;
            let mut done: Vec<VehicleId> = told.into_iter().map(|(vehicle, _)| vehicle).collect();
            for line in &weighed.results {
                let What::Part(part, _) = &line.what else { continue };
                if !part.is_fitted() || done.contains(&line.vehicle_id) {
                    continue;
                }
                let keeper = work.keeper_of(line.vehicle_id, line.job_id).await?;
                let letter =
                    Letter { kind: MessageKind::Recall, vehicle: line.vehicle_id, key: "letter-recall", is_demo };
                let id = work
                    .write_letter(&letter, &keeper, |w| {
                        let part = w.t(format!("part-category-{}", recall.category.code()));
                        vec![
                            ("plate", line.plate.as_str().into()),
                            ("part", part.into()),
                            ("who", recall.recalled_by.as_str().into()),
                            ("document", recall.document.as_str().into()),
                            ("on", w.date(recall.dated_on).into()),
                            ("remedy", recall.remedy.as_str().into()),
                        ]
                    })
                    .await?;
                db::recalls::insert_letter(&mut work, recall.id, line.vehicle_id, id).await?;
                done.push(line.vehicle_id);
                letters += 1;
            }
            work.done(Deed::RecallLetters { recall: recall.id, letters }, letters).await
        })
        .await
    }
}

impl Work {
    /// One duty a part: on the call list from today, ended by its removal or by a paper from elsewhere.
    async fn owe_recall_duties(&mut self, finding: FindingId, id: RecallId, new: &NewRecall) -> Result<(), Refusal> {
        let (branch, now, today) = (self.who.branch, self.now, self.today);
        let found = db::findings::find(self, branch, finding).await?.ok_or(Refusal::Gone)?;
        let traced = trace(self, branch, &found, now).await?;
        let recall = traced.recall.ok_or(Refusal::Gone)?;
        for part in traced.records.parts.iter().filter(|part| part.is_fitted() && recall.carries(part).is_some()) {
            let duty = NewDuty {
                line: format!("recall-{id}"),
                kind: DutyKind::Recall,
                part_id: Some(part.id),
                due_on: today,
                due_km: None,
                decided_by: DueBy::Date,
                source: format!("{}, {}", new.recalled_by, new.document),
                is_checked: true,
            };
            self.insert_duties(part.vehicle_id, None, vec![duty]).await?;
        }
        Ok(())
    }
}
