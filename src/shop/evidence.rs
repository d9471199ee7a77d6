//! Evidence is recorded: once, on a live job, by a person, not in the future and not before the vehicle came.

use uuid::Uuid;

use super::findings::{FoundIn, NewFinding};
use super::{Refusal, Shop, Work};
use crate::db;
use crate::model::deed::Deed;
use crate::model::evidence::{Arrival, Entry, Evidence, NewEvidence, SuitabilityVerdict};
use crate::model::ids::{EvidenceId, JobId};
use crate::model::job::Job;
use crate::model::person::Actor;
use crate::model::vehicle::{OdometerExplained, OdometerReading, PetrolInjection};

impl Shop {
    /// Writes an entry down; with `replaces_id` it corrects an earlier one and must say why.
    ///
    /// # Errors
    /// [`Refusal::Stale`] when somebody recorded or corrected the same thing since the form was opened;
    /// [`Refusal::Field`] for a time in the future or before intake, a correction without reason, an instrument or
    /// attachment that is not there.
    pub async fn record_evidence(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        job: JobId,
        new: NewEvidence,
    ) -> Result<EvidenceId, Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let id = work.record_evidence(job, &new).await?;
            if new.replaces_id.is_some() {
                Box::pin(work.doubt_corrected(job, id, &new.replaces_reason)).await?;
            }
            let deed = match new.replaces_id {
                Some(replaces) => Deed::EvidenceCorrected {
                    job,
                    evidence: id,
                    replaces,
                    kind: new.body.kind().to_owned(),
                    reason: new.replaces_reason,
                },
                None => Deed::EvidenceRecorded {
                    job,
                    evidence: id,
                    kind: new.body.kind().to_owned(),
                    subject: new.body.subject().to_owned(),
                },
            };
            work.done(deed, id).await
        })
        .await
    }
}

impl Work {
    /// Records inside a larger deed; the caller writes the audit line.
    pub(super) async fn record_evidence(&mut self, job: JobId, new: &NewEvidence) -> Result<EvidenceId, Refusal> {
        let (branch, now, person) = (self.who.branch, self.now, self.person()?);
        let job = self.live_job(job).await?;
        if let Some(measured_at) = new.measured_at {
            if measured_at > now {
                return Err(Refusal::Field { field: "measured_at", why: "wrong-future" });
            }
            if measured_at < job.opened_at {
                return Err(Refusal::Field { field: "measured_at", why: "wrong-before-intake" });
            }
        }
        let all = db::evidence::list(self, branch, job.id).await?;
        let is_same_slot = |body: &Evidence| body.kind() == new.body.kind() && body.subject() == new.body.subject();
        let current = db::evidence::current(&all).into_iter().find(|entry| is_same_slot(&entry.body));
        match (current.map(|entry| entry.id), new.replaces_id) {
            (None, None) => {}
            (Some(current), Some(replaces)) if current == replaces => {
                if new.replaces_reason.trim().is_empty() {
                    return Err(Refusal::Field { field: "replaces_reason", why: "wrong-empty" });
                }
            }
            _ => return Err(Refusal::Stale),
        }
        if db::evidence::count_instruments(self, branch, &new.instruments).await? != new.instruments.len() {
            return Err(Refusal::Field { field: "instruments", why: "wrong-not-a-choice" });
        }
        if db::evidence::count_attachments(self, job.id, &new.attachments).await? != new.attachments.len() {
            return Err(Refusal::Field { field: "attachments", why: "wrong-not-a-choice" });
        }
        self.hold_direct_injection(&job, &new.body).await?;
        self.open_findings_out_of_date(&new.instruments).await?;
        self.open_finding_of_codes(job.id, &all, &new.body).await?;
        if let Evidence::Arrival(arrival) = &new.body {
            self.read_odometer_at_arrival(&job, arrival, new.replaces_id.is_some()).await?;
        }
        Ok(db::evidence::insert(self, branch, job.id, new, person, now).await?)
    }

    /// Whether an engine with direct injection may be converted, and on which conditions, is for a signatory to say: its
    /// petrol injectors lose the fuel that cools them.
    async fn hold_direct_injection(&mut self, job: &Job, body: &Evidence) -> Result<(), Refusal> {
        let Evidence::Suitability(said) = body else { return Ok(()) };
        if said.verdict != SuitabilityVerdict::WithConditions || self.who.may_sign_on(self.today).is_some() {
            return Ok(());
        }
        let branch = self.who.branch;
        let vehicle = db::vehicles::find(self, branch, job.vehicle_id).await?.ok_or(Refusal::Gone)?;
        if vehicle.petrol_injection == PetrolInjection::Direct {
            return Err(Refusal::Field { field: "verdict", why: "suitability-direct-for-signatory" });
        }
        Ok(())
    }

    /// The odometer at arrival is a reading of the vehicle like any other; duties by distance are forecast from it.
    async fn read_odometer_at_arrival(&mut self, job: &Job, arrival: &Arrival, corrects: bool) -> Result<(), Refusal> {
        let explained = match arrival.odometer_explained {
            OdometerExplained::Plain if corrects => OdometerExplained::TypingErrorBefore,
            explained => explained,
        };
        let reading = OdometerReading {
            read_on: self.today,
            km: arrival.odometer_km,
            typed: arrival.odometer_typed.clone(),
            explained,
        };
        super::vehicles::insert_reading(self, job.vehicle_id, Some(job.id), &reading).await
    }

    /// Fault codes after the drive that nobody read before open a finding; a correction does not open it again.
    async fn open_finding_of_codes(&mut self, job: JobId, all: &[Entry], body: &Evidence) -> Result<(), Refusal> {
        let Evidence::AfterDrive(drive) = body else { return Ok(()) };
        let known = all.iter().map(|entry| match &entry.body {
            Evidence::Suitability(seen) => seen.fault_codes.as_str(),
            Evidence::AfterDrive(earlier) => earlier.fault_codes.as_str(),
            _ => "",
        });
        let new = drive.new_codes(&known.collect::<Vec<_>>().join(" "));
        if !new.is_empty() {
            let (found_in, source) = (FoundIn::Job(job), "after-drive".to_owned());
            let (_, deed) =
                self.open_finding(NewFinding { found_in, source, text: new.join(", "), found_at: None }).await?;
            self.note(deed).await?;
        }
        Ok(())
    }
}
