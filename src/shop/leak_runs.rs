//! A decay test: started, read, recorded or given up. Start and stop are two entries of the server's clock.

use uuid::Uuid;

use super::{Refusal, Shop, Work};
use crate::db;
use crate::model::Coded;
use crate::model::deed::Deed;
use crate::model::evidence::{Evidence, LeakReading, NewEvidence, Section, TestGas};
use crate::model::ids::{EvidenceId, JobId, LeakRunId};
use crate::model::leak_run::{LeakRun, LeakSetUp};
use crate::model::person::Actor;

/// Gauge and thermometer at one moment.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ReadNow {
    /// As the gauge shows, kPa.
    pub kpa: f64,
    /// Gas or metal, C.
    pub c: f64,
}

impl Shop {
    /// Starts a test with its first reading.
    ///
    /// # Errors
    /// [`Refusal::Stale`] when one runs already on this section; [`Refusal::Field`] for an instrument that is not there,
    /// for air in a line that held fuel, and for
    /// liquid LPG.
    pub async fn start_leak_run(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        job: JobId,
        set_up: LeakSetUp,
        first: ReadNow,
    ) -> Result<LeakRunId, Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let (branch, now, person) = (work.who.branch, work.now, work.person()?);
            let file = work.live_job(job).await?;
            if set_up.test_gas == TestGas::Air {
                let whole = db::job_files::find(&mut work, branch, job).await?.ok_or(Refusal::Gone)?;
                if whole.has_held_fuel(now) {
                    return Err(Refusal::Field { field: "test_gas", why: "leak-decay-air" });
                }
            }
            if set_up.section == Section::LpgLiquid && set_up.test_gas == TestGas::Fuel {
                return Err(Refusal::Field { field: "test_gas", why: "leak-decay-liquid" });
            }
            if !Evidence::sections(file.fuel).contains(&set_up.section) {
                return Err(Refusal::Gone);
            }
            if db::leak_runs::find_open(&mut work, branch, job, set_up.section).await?.is_some() {
                return Err(Refusal::Stale);
            }
            for (field, id) in [("gauge_id", set_up.gauge_id), ("thermometer_id", set_up.thermometer_id)] {
                if db::evidence::count_instruments(&mut work, branch, &[id]).await? != 1 {
                    return Err(Refusal::Field { field, why: "wrong-not-a-choice" });
                }
            }
            let id = db::leak_runs::insert(&mut work, branch, job, &set_up, person, now).await?;
            let reading = LeakReading { at: now, kpa: first.kpa, c: first.c };
            db::leak_runs::insert_reading(&mut work, id, &reading, person).await?;
            let section = set_up.section.code().to_owned();
            work.done(Deed::LeakTestStarted { job, section, start_kpa: first.kpa, start_c: first.c }, id).await
        })
        .await
    }

    /// Adds a reading to the test that runs.
    ///
    /// # Errors
    /// [`Refusal::Gone`] when none runs; [`Refusal::Field`] when another reading has this very moment.
    pub async fn read_leak_run(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        job: JobId,
        section: Section,
        seen: ReadNow,
    ) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let run = work.open_run(job, section).await?;
            work.add_reading(&run, seen).await?;
            let section = section.code().to_owned();
            work.done(Deed::LeakTestRead { job, section, kpa: seen.kpa, c: seen.c }, ()).await
        })
        .await
    }

    /// Ends the test and writes it down as evidence; `last` is read first where it is given. `reason` is asked where an
    /// earlier test of the section is corrected by this one.
    ///
    /// # Errors
    /// [`Refusal::Gone`] when none runs; [`Refusal::Field`] without a second reading, and for a missing reason.
    pub async fn record_leak_run(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        job: JobId,
        section: Section,
        last: Option<ReadNow>,
        reason: String,
    ) -> Result<EvidenceId, Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let (branch, now) = (work.who.branch, work.now);
            let mut run = work.open_run(job, section).await?;
            if let Some(seen) = last {
                run = work.add_reading(&run, seen).await?;
            }
            let Some(decay) = run.decay() else {
                return Err(Refusal::Field { field: "now_kpa", why: "leak-decay-second-reading" });
            };
            let all = db::evidence::list(&mut work, branch, job).await?;
            let earlier = db::evidence::current(&all)
                .into_iter()
                .find(|entry| entry.body.kind() == "leak-decay" && entry.body.subject() == section.code());
            let new = NewEvidence {
                instruments: vec![decay.gauge_id, decay.thermometer_id],
                measured_at: Some(decay.ended_at),
                body: Evidence::LeakDecay(decay),
                replaces_id: earlier.as_ref().map(|entry| entry.id),
                replaces_reason: if earlier.is_some() { reason.clone() } else { String::new() },
                attachments: Vec::new(),
            };
            let evidence = work.record_evidence(job, &new).await?;
            db::leak_runs::end(&mut work, run.id, Some(evidence), now).await?;
            let kind = "leak-decay".to_owned();
            let deed = match new.replaces_id {
                Some(replaces) => Deed::EvidenceCorrected { job, evidence, replaces, kind, reason },
                None => Deed::EvidenceRecorded { job, evidence, kind, subject: section.code().to_owned() },
            };
            work.done(deed, evidence).await
        })
        .await
    }

    /// Gives the running test up: another method, or another start. Its readings stay in the store.
    pub async fn give_up_leak_run(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        job: JobId,
        section: Section,
    ) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let now = work.now;
            let run = work.open_run(job, section).await?;
            db::leak_runs::end(&mut work, run.id, None, now).await?;
            work.done(Deed::LeakTestGivenUp { job, section: section.code().to_owned() }, ()).await
        })
        .await
    }
}

impl Work {
    async fn open_run(&mut self, job: JobId, section: Section) -> Result<LeakRun, Refusal> {
        let branch = self.who.branch;
        self.live_job(job).await?;
        db::leak_runs::find_open(self, branch, job, section).await?.ok_or(Refusal::Gone)
    }

    async fn add_reading(&mut self, run: &LeakRun, seen: ReadNow) -> Result<LeakRun, Refusal> {
        let (now, person) = (self.now, self.person()?);
        // Two readings of one moment would make a rate out of nothing.
        if run.readings.iter().any(|reading| reading.at >= now) {
            return Err(Refusal::Field { field: "now_kpa", why: "leak-decay-same-moment" });
        }
        let reading = LeakReading { at: now, kpa: seen.kpa, c: seen.c };
        db::leak_runs::insert_reading(self, run.id, &reading, person).await?;
        Ok(run.with(reading))
    }
}
