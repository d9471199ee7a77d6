//! A vehicle is handed over with its certificate: the job ends, its duties begin.

use uuid::Uuid;

use super::assessed::Assessed;
use super::{Refusal, Shop, Work};
use crate::db;
use crate::db::jobs::Ending;
use crate::model::customer::{NewCustomer, ReminderBasis};
use crate::model::deed::Deed;
use crate::model::evidence::Evidence;
use crate::model::ids::JobId;
use crate::model::job::JobState;
use crate::model::job_file::JobFile;
use crate::model::paper::CertificateKind;
use crate::model::paper::certificate::{CertificateContent, InspectionOutcome};
use crate::model::paper::issued::Issued;
use crate::model::person::Actor;
use crate::rules::{inspection, intervals};

impl Shop {
    /// Hands a vehicle over with its certificate: everything that was asked before hand-over is settled, a certificate of
    /// the job stands, the next duties are written down in the same transaction, and the keeper's consent to reminders is
    /// taken from what they signed. Answers how many duties began.
    ///
    /// # Errors
    /// [`Refusal::Missing`] with the proofs that are not settled; [`Refusal::MayNot`] without a standing certificate.
    pub async fn hand_over(&self, who: &Actor, key: Option<Uuid>, job: JobId) -> Result<u32, Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            work.live_job(job).await?;
            let Assessed { file, book, proofs, .. } = work.assessed(job).await?;
            let open: Vec<String> = inspection::held_back_from_hand_over(&file, &proofs)
                .into_iter()
                .map(|proof| format!("proof-{}", proof.id))
                .collect();
            if !open.is_empty() {
                return Err(Refusal::Missing(open));
            }
            let branch = work.who.branch;
            let outcome = inspection::judge(&proofs, inspection::found(&file)).outcome;
            let has_failed = inspection::may_fail(file.job.kind) && outcome == Some(InspectionOutcome::Fail);
            if CertificateKind::of(&file.job).is_some() {
                let in_force = db::papers::list_in_force(&mut work, branch, job).await?;
                let paper = in_force.first().ok_or(Refusal::MayNot("refused-no-certificate"))?;
                if says_fail(paper)? != has_failed {
                    return Err(Refusal::MayNot("refused-certificate-says-otherwise"));
                }
            }
            work.take_consent(&file).await?;
            let duties = if has_failed {
                let again = intervals::after_a_fail(&book, work.today).into_iter().collect();
                work.insert_duties(file.vehicle.id, Some(job), again).await?
            } else {
                work.settle_duties(&file, &book).await?
            };
            let end = Ending { state: JobState::HandedOver, reason: String::new(), is_gas_shut_off: None };
            work.end_job(job, &end).await?;
            let duties = u32::try_from(duties).unwrap_or(u32::MAX);
            work.done(Deed::JobHandedOver { job, duties }, duties).await
        })
        .await
    }
}

/// The paper is an inspection certificate that says fail.
fn says_fail(paper: &Issued) -> Result<bool, Refusal> {
    let content: CertificateContent =
        serde_json::from_slice(&paper.content).map_err(|error| Refusal::Broken(error.to_string()))?;
    Ok(content.inspection.is_some_and(|said| said.outcome == InspectionOutcome::Fail))
}

impl Work {
    /// The keeper who signed that they want reminders gets them on that ground; who has a ground already keeps it.
    async fn take_consent(&mut self, file: &JobFile) -> Result<(), Refusal> {
        let (branch, today) = (self.who.branch, self.today);
        let shown = file.shown("hand-over", "", |body| match body {
            Evidence::HandOver(one) => Some(one),
            _ => None,
        });
        let agreed = shown.is_some_and(|(_, one)| one.consents_to_reminders);
        let keeper = &file.keeper;
        if !agreed || keeper.reminder_basis == ReminderBasis::Consent {
            return Ok(());
        }
        let changed = NewCustomer {
            name: keeper.name.clone(),
            name_in_latin: keeper.name_in_latin.clone(),
            address: keeper.address.clone(),
            phone: keeper.phone.clone(),
            mail: keeper.mail.clone(),
            language: keeper.language.clone(),
            reminder_basis: ReminderBasis::Consent,
            reminder_basis_on: Some(today),
        };
        db::customers::save(self, branch, keeper.id, keeper.version, &changed).await?;
        Ok(())
    }
}
