//! What falls due: duties begin with a hand-over, and end with a job, with a paper from elsewhere, or with the vehicle.

use serde::{Deserialize, Serialize};
use time::Date;
use uuid::Uuid;

use super::{Refusal, Shop, Work};
use crate::db::duties::{End, Owed};
use crate::db::{self, Con};
use crate::model::branch::Branch;
use crate::model::customer::ReminderBasis;
use crate::model::deed::Deed;
use crate::model::duty::{CallOutcome, ClosedHow, Duty, NewDuty};
use crate::model::ids::{DutyId, JobId, VehicleId};
use crate::model::job::JobKind;
use crate::model::job_file::JobFile;
use crate::model::person::Actor;
use crate::rules::{RuleBook, intervals};

/// Days before the day itself; below zero: after it.
pub const LEADS: [i64; 4] = [60, 30, 7, -14];
/// The setting with other lead times: "60, 30, 7, -14".
pub const LEADS_SETTING: &str = "reminder-leads";
/// How a message goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Way {
    /// To the mail address.
    Mail,
    /// Printed and posted: no mail address, or a bad one.
    Letter,
}

/// How this person can be reminded on `today`; `None`: not at all, which is for the call list.
pub fn way(owed: &Owed, today: Date) -> Option<Way> {
    let has_ground = owed.reminder_basis != ReminderBasis::None
        && owed.reminder_basis_on.is_none_or(|day| day <= today)
        && owed.keeper_id.is_some();
    if !has_ground {
        None
    } else if !owed.mail.is_empty() && owed.mail_state == "good" {
        Some(Way::Mail)
    } else if !owed.address.is_empty() {
        Some(Way::Letter)
    } else {
        None
    }
}

/// The lead times of a branch: its setting where that reads, else the usual ones.
pub async fn leads(con: &mut Con, branch: &Branch) -> Result<Vec<i64>, db::Error> {
    let set = db::settings::find(con, branch.id, LEADS_SETTING).await?;
    Ok(set.and_then(|set| read_leads(&set.value)).unwrap_or_else(|| LEADS.to_vec()))
}

/// Reads "60, 30, 7, -14": whole days from 365 before to 60 after; at least one.
pub fn read_leads(text: &str) -> Option<Vec<i64>> {
    let days = text.split(',').map(|day| day.trim().parse::<i64>().ok().filter(|day| (-60..=365).contains(day)));
    days.collect::<Option<Vec<_>>>().filter(|days| !days.is_empty() && days.len() <= 12)
}

/// How a duty is closed by hand.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Closing {
    pub how: ClosedHow,
    /// The job of this shop that met it, with [`ClosedHow::Job`].
    pub job: Option<JobId>,
    /// The day it was met; the next one of its kind counts from here.
    pub met_on: Date,
    /// The document, and who issued it; or a remark.
    pub note: String,
    /// Whether the next one of its kind begins to run.
    pub starts_next: bool,
}

/// What closing came to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Closed {
    /// The duty that began in its place, and its day.
    pub next: Option<(DutyId, Date)>,
}

impl Work {
    /// All that a finished job means for duties: it meets some, takes others away with their parts or the whole gas
    /// system, and starts new ones. For use inside the deed that hands the vehicle over; returns how many began.
    pub async fn settle_duties(&mut self, file: &JobFile, book: &RuleBook) -> Result<usize, Refusal> {
        let (branch, vehicle, today) = (self.who.branch, file.vehicle.id, self.today);
        let all = db::duties::list_of_vehicle(self, branch, vehicle).await?;
        let mut new = intervals::duties(file, book, today);
        for duty in all.iter().filter(|duty| duty.closed_at.is_none()) {
            let how = if file.job.kind == JobKind::Removal {
                ClosedHow::GasRemoved
            } else if intervals::is_met_by(duty, file) {
                new.extend(intervals::following(
                    book,
                    duty,
                    file.parts.iter().find(|part| Some(part.id) == duty.part_id),
                    &file.vehicle,
                    &file.readings,
                    today,
                ));
                ClosedHow::Job
            } else if intervals::is_part_gone(duty.part_id, file) {
                ClosedHow::Job
            } else {
                continue;
            };
            self.end_duty(duty, how, Some(file.job.id), String::new()).await?;
        }
        self.insert_duties(vehicle, Some(file.job.id), new).await
    }

    /// Writes duties down. An open one of the same line and part is replaced; one of the same day is there already and
    /// stays. Returns how many are new.
    pub async fn insert_duties(
        &mut self,
        vehicle: VehicleId,
        job: Option<JobId>,
        new: Vec<NewDuty>,
    ) -> Result<usize, Refusal> {
        let (branch, now) = (self.who.branch, self.now);
        let before = db::duties::list_of_vehicle(self, branch, vehicle).await?;
        let mut lines = Vec::new();
        for duty in new {
            if db::duties::insert(self, branch, vehicle, job, &duty, now).await?.is_none() {
                continue;
            }
            let replaced = before
                .iter()
                .filter(|old| old.closed_at.is_none() && old.line == duty.line && old.part_id == duty.part_id);
            for old in replaced {
                self.end_duty(old, ClosedHow::Replaced, job, String::new()).await?;
            }
            lines.push(duty.line);
        }
        let count = lines.len();
        if count > 0 {
            self.note(Deed::DutiesMade { vehicle, lines, job }).await?;
        }
        Ok(count)
    }

    async fn end_duty(&mut self, duty: &Duty, how: ClosedHow, job: Option<JobId>, note: String) -> Result<(), Refusal> {
        let (branch, now, by) = (self.who.branch, self.now, self.who.person);
        let end = End { how, note: note.clone(), by, job };
        if db::duties::close(self, branch, duty.id, &end, now).await? {
            self.note(Deed::DutyClosed { duty: duty.id, how, note }).await?;
        }
        Ok(())
    }
}

impl Shop {
    /// Adds duties to a vehicle by hand: from a label, from a paper of another shop.
    pub async fn add_duties(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        vehicle: VehicleId,
        new: Vec<NewDuty>,
    ) -> Result<i64, Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let branch = work.who.branch;
            if !db::links::is_vehicle(&mut work, branch, vehicle).await? {
                return Err(Refusal::Gone);
            }
            let lines = new.iter().map(|duty| duty.line.clone()).collect();
            let count = work.insert_duties(vehicle, None, new).await?;
            let count = i64::try_from(count).unwrap_or(i64::MAX);
            work.done(Deed::DutiesMade { vehicle, lines, job: None }, count).await
        })
        .await
    }

    /// Ends a duty. Scrapped, exported, stolen and gas removed end every open duty of the vehicle.
    ///
    /// # Errors
    /// [`Refusal::Ended`] when it has ended; [`Refusal::Field`] for a job that is not this vehicle's, and for a paper from
    /// elsewhere without a word on it.
    pub async fn close_duty(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        duty: DutyId,
        closing: Closing,
    ) -> Result<Closed, Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let (branch, today) = (work.who.branch, work.today);
            let owed = db::duties::find(&mut work, branch, duty, today).await?.ok_or(Refusal::Gone)?;
            if owed.duty.closed_at.is_some() {
                return Err(Refusal::Ended("refused-duty-ended"));
            }
            let vehicle = owed.duty.vehicle_id;
            if let Some(job) = closing.job {
                let job = db::jobs::find(&mut work, branch, job).await?;
                if job.is_none_or(|job| job.vehicle_id != vehicle) {
                    return Err(Refusal::Field { field: "job", why: "refused-other-vehicle" });
                }
            }
            if closing.how == ClosedHow::Elsewhere && closing.note.is_empty() {
                return Err(Refusal::Field { field: "note", why: "wrong-empty" });
            }
            let of_vehicle = db::duties::list_of_vehicle(&mut work, branch, vehicle).await?;
            let ends_all = matches!(
                closing.how,
                ClosedHow::Scrapped | ClosedHow::Exported | ClosedHow::Stolen | ClosedHow::GasRemoved
            );
            for other in of_vehicle.iter().filter(|other| ends_all && other.closed_at.is_none() && other.id != duty) {
                work.end_duty(other, closing.how, closing.job, closing.note.clone()).await?;
            }
            let Closing { how, job, met_on, note, starts_next } = closing;
            let mut next = None;
            if starts_next && !ends_all {
                next = work.start_next(&owed.duty, met_on).await?;
            }
            let (now, by) = (work.now, work.who.person);
            let end = End { how, note: note.clone(), by, job };
            db::duties::close(&mut work, branch, duty, &end, now).await?;
            work.done(Deed::DutyClosed { duty, how, note }, Closed { next }).await
        })
        .await
    }

    /// Notes an attempt to reach the keeper of a duty.
    pub async fn note_call(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        duty: DutyId,
        outcome: CallOutcome,
        note: String,
    ) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let (branch, now, today, person) = (work.who.branch, work.now, work.today, work.person()?);
            let owed = db::duties::find(&mut work, branch, duty, today).await?.ok_or(Refusal::Gone)?;
            if owed.duty.closed_at.is_some() {
                return Err(Refusal::Ended("refused-duty-ended"));
            }
            db::duties::insert_call(&mut work, duty, outcome, &note, person, now).await?;
            work.done(Deed::DutyCalled { duty, outcome }, ()).await
        })
        .await
    }
}

impl Work {
    async fn start_next(&mut self, met: &Duty, on: Date) -> Result<Option<(DutyId, Date)>, Refusal> {
        let (branch, now) = (self.who.branch, self.now);
        let today = self.today;
        let Some((vehicle, readings)) = db::job_files::vehicle_with_readings(self, branch, met.vehicle_id).await?
        else {
            return Err(Refusal::Gone);
        };
        let book = db::rule_books::book_for(self, branch, &vehicle.plate_country, today).await?;
        let part = match met.part_id {
            Some(id) => db::parts::find(self, branch, id).await?,
            None => None,
        };
        let Some(next) = intervals::following(&book, met, part.as_ref(), &vehicle, &readings, on) else {
            return Ok(None);
        };
        let id = db::duties::insert(self, branch, met.vehicle_id, met.job_id, &next, now).await?;
        let deed = Deed::DutiesMade { vehicle: met.vehicle_id, lines: vec![next.line.clone()], job: None };
        self.note(deed).await?;
        Ok(id.map(|id| (id, next.due_on)))
    }
}
