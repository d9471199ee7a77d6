//! Parts are fitted, corrected while the job is open, and taken off. A serial that is already on a vehicle is asked.

use uuid::Uuid;

use super::{Refusal, Shop, Work};
use crate::db;
use crate::db::parts::{Removal, Shared};
use crate::model::deed::Deed;
use crate::model::ids::{JobId, PartId};
use crate::model::job::{Job, JobKind};
use crate::model::part::{DatePrecision, NewPart, Part, PartOrigin};
use crate::model::person::Actor;
use crate::rules::term;

impl Shop {
    /// Fits a part in a job.
    ///
    /// `shared_reason`: a signatory's word that two parts share one mark and serial; empty otherwise.
    ///
    /// # Errors
    /// [`Refusal::Field`] on `serial` when the same thing is fitted already: correct it, record its removal from the
    /// other vehicle, or let a signatory state that two parts share a mark.
    pub async fn fit_part(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        job: JobId,
        part: NewPart,
        shared_reason: String,
    ) -> Result<PartId, Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let (branch, now, today, person) = (work.who.branch, work.now, work.today, work.person()?);
            let job = work.live_job(job).await?;
            if part.origin == PartOrigin::Fitted {
                work.may_change_parts(&job).await?;
            }
            check_dates(&part, today)?;
            let shared = if work.doubled(&part, None).await?.is_some() {
                if shared_reason.trim().is_empty() {
                    return Err(Refusal::Field { field: "serial", why: "refused-part-doubled" });
                }
                if work.who.may_sign_on(today).is_none() {
                    return Err(Refusal::Field { field: "shared_reason", why: "refused-signatory-only" });
                }
                Some(Shared { reason: shared_reason, by: person })
            } else {
                None
            };
            let place = (job.vehicle_id, job.id);
            let id = db::parts::insert(&mut work, branch, place, &part, shared.as_ref(), person, now).await?;
            let category = part.category.to_string();
            work.done(Deed::PartFitted { part: id, job: job.id, category, serial: part.serial }, id).await
        })
        .await
    }

    /// Corrects what is written on a part that this job fitted.
    pub async fn correct_part(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        (job, id): (JobId, PartId),
        version: i64,
        part: NewPart,
    ) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let (branch, today) = (work.who.branch, work.today);
            let job = work.live_job(job).await?;
            let before = db::parts::find(&mut work, branch, id).await?.ok_or(Refusal::Gone)?;
            if before.fitted_in != job.id {
                return Err(Refusal::MayNot("refused-part-of-other-job"));
            }
            check_dates(&part, today)?;
            if before.shared_reason.is_empty() && work.doubled(&part, Some(id)).await?.is_some() {
                return Err(Refusal::Field { field: "serial", why: "refused-part-doubled" });
            }
            db::parts::save(&mut work, id, version, &part).await?;
            let changed = changed_fields(&before, &part);
            work.done(Deed::PartChanged { part: id, job: job.id, changed }, ()).await
        })
        .await
    }

    /// Takes a part off the job's vehicle.
    pub async fn remove_part(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        (job, id): (JobId, PartId),
        removal: Removal,
    ) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let (branch, today) = (work.who.branch, work.today);
            let job = work.live_job(job).await?;
            work.may_change_parts(&job).await?;
            let part = db::parts::find(&mut work, branch, id).await?.ok_or(Refusal::Gone)?;
            if part.vehicle_id != job.vehicle_id {
                return Err(Refusal::MayNot("refused-part-of-other-vehicle"));
            }
            if part.is_vessel() && removal.whereabouts.trim().is_empty() {
                return Err(Refusal::Field { field: "whereabouts", why: "refused-whereabouts" });
            }
            db::parts::save_removal(&mut work, &part, job.id, today.max(part.fitted_on), &removal).await?;
            work.done(Deed::PartRemoved { part: id, job: job.id, reason: removal.reason }, ()).await
        })
        .await
    }
}

impl Work {
    /// Fitting and taking off is a repair; where a repair ends an inspection it is not done inside one.
    async fn may_change_parts(&mut self, job: &Job) -> Result<(), Refusal> {
        if job.kind != JobKind::Inspection {
            return Ok(());
        }
        let book = self.assessed(job.id).await?.book;
        if term::repair_restarts(&book) { Err(Refusal::MayNot("refused-repair-restarts")) } else { Ok(()) }
    }

    /// The part of this branch that is the same thing as `part`, `except` itself.
    async fn doubled(&mut self, part: &NewPart, except: Option<PartId>) -> Result<Option<Part>, Refusal> {
        let branch = self.who.branch;
        let fitted = db::parts::list_fitted_with_serial(self, branch, part.category).await?;
        Ok(fitted.into_iter().find(|other| Some(other.id) != except && other.is_same_thing(part)))
    }
}

fn check_dates(part: &NewPart, today: time::Date) -> Result<(), Refusal> {
    if part.fitted_on > today {
        return Err(Refusal::Field { field: "fitted_on", why: "wrong-future" });
    }
    // A month's last day stands for the month, a year's for the year: neither is "the future" while it runs.
    let month = match part.made_precision {
        Some(DatePrecision::Year) => time::Month::December,
        _ => today.month(),
    };
    let last = time::Date::from_calendar_date(today.year(), month, month.length(today.year())).unwrap_or(today);
    if part.made_on.is_some_and(|made| made > last) {
        return Err(Refusal::Field { field: "made_on", why: "wrong-future" });
    }
    Ok(())
}

fn changed_fields(before: &Part, now: &NewPart) -> Vec<String> {
    [
        ("category", before.category != now.category),
        ("maker", before.maker != now.maker),
        ("type_name", before.type_name != now.type_name),
        ("approval_mark", before.approval_mark != now.approval_mark),
        ("serial", before.serial != now.serial),
        ("batch", before.batch != now.batch),
        ("made_on", before.made_on != now.made_on),
        ("capacity_l", before.capacity_l != now.capacity_l),
        ("working_pressure_kpa", before.working_pressure_kpa != now.working_pressure_kpa),
        ("last_tested_on", before.last_tested_on != now.last_tested_on),
        ("end_of_life_on", before.end_of_life_on != now.end_of_life_on),
        ("origin", before.origin != now.origin),
        ("place", before.place != now.place),
        ("fitted_on", before.fitted_on != now.fitted_on),
    ]
    .into_iter()
    .filter(|(_, has_changed)| *has_changed)
    .map(|(field, _)| field.to_owned())
    .collect()
}
