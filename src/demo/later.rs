//! What comes back after years, told by deeds: an inspection that failed and its repeat, and a car that goes back to petrol.

use time::OffsetDateTime;

use super::shop::{Teller, seen};
use super::story::{Story, conversion};
use crate::db;
use crate::db::parts::Removal;
use crate::model::evidence::{Deficiencies, Evidence, FoundDeficiency, Severity};
use crate::model::ids::{CustomerId, JobId, VehicleId};
use crate::model::job::{JobKind, NewJob};
use crate::shop::Refusal;

/// A vehicle that the shop converted, and who keeps it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Known {
    pub vehicle: VehicleId,
    pub keeper: CustomerId,
    pub keeper_name: &'static str,
    pub odometer_km: i64,
}

/// The line of the checklist that fails the first time.
const BLOCKED: (&str, &str) = ("housing-vent", "vent hose crushed under the boot floor");

impl Teller<'_> {
    /// A periodic inspection fails on a blocked vent; a week later its repeat passes.
    pub(super) async fn inspect(&self, until: OffsetDateTime, one: Known) -> Result<(), Refusal> {
        self.morning(until, 45);
        self.check_analyser().await?;
        let new = NewJob { kind: JobKind::Inspection, ..conversion(one.vehicle, one.keeper) };
        let first = self.shop.open_job(&self.cast.desk, None, new).await?;
        let found = FoundDeficiency {
            item: format!("check:{}", BLOCKED.0),
            class: String::new(),
            severity: Severity::Major,
            words: BLOCKED.1.to_owned(),
            photo: None,
        };
        self.go_round(first, one, &[BLOCKED], vec![found]).await?;

        self.morning(until, 38);
        self.check_analyser().await?;
        let again = self.shop.repeat_inspection(&self.cast.desk, None, first).await?;
        self.go_round(again, one, &[], Vec::new()).await
    }

    /// One round of an inspection, signed and handed over.
    async fn go_round(
        &self,
        job: JobId,
        one: Known,
        fails: &[(&str, &str)],
        found: Vec<FoundDeficiency>,
    ) -> Result<(), Refusal> {
        for slot in ["odometer", "vin-plate"] {
            self.picture(job, slot).await?;
        }
        let (story, _) = self.story(job);
        story.arrive(one.odometer_km).await?;
        story.check_off(fails).await?;
        story.prove_system().await?;
        let body = Deficiencies { found, ..Deficiencies::default() };
        story.record(Evidence::Deficiencies(body), Vec::new(), Vec::new()).await?;
        self.sign_and_hand_over(&story, one).await
    }

    /// Back to petrol: everything of the gas system taken off, the container to its owner.
    pub(super) async fn take_off(&self, until: OffsetDateTime, one: Known) -> Result<(), Refusal> {
        self.morning(until, 30);
        self.check_analyser().await?;
        let new = NewJob { kind: JobKind::Removal, ..conversion(one.vehicle, one.keeper) };
        let job = self.shop.open_job(&self.cast.desk, None, new).await?;
        for slot in ["odometer", "vin-plate"] {
            self.picture(job, slot).await?;
        }
        let (story, _) = self.story(job);
        story.arrive(one.odometer_km).await?;
        let fitted = {
            let mut con = self.shop.db.read().await?;
            db::parts::list_of_vehicle(&mut con, self.cast.desk.branch, one.vehicle).await?
        };
        for part in fitted.into_iter().filter(crate::model::part::Part::is_fitted) {
            let whereabouts = if part.is_vessel() { "emptied; to its owner" } else { "" }.to_owned();
            let removal = Removal { reason: "back to petrol".to_owned(), whereabouts };
            self.shop.remove_part(&self.cast.technician, None, (job, part.id), removal).await?;
        }
        story.check_off(&[]).await?;
        story.exhausts_on(&[false]).await?;
        self.sign_and_hand_over(&story, one).await
    }

    async fn sign_and_hand_over(&self, story: &Story<'_>, one: Known) -> Result<(), Refusal> {
        let signature = self.picture(story.job, "signature").await?;
        story.explain(one.keeper_name, signature).await?;
        self.shop.issue_certificate(&self.cast.signatory, None, story.job, seen()).await?;
        self.shop.hand_over(&self.cast.desk, None, story.job).await?;
        Ok(())
    }
}
