//! Bays are kept, times in them are booked, and it is said what became of each booking.

use time::Date;
use uuid::Uuid;

use super::{Refusal, Shop, Work};
use crate::clock::Zone;
use crate::db;
use crate::model::booking::{Bay, Booking, BookingState, NewBooking};
use crate::model::deed::Deed;
use crate::model::ids::{BayId, BookingId};
use crate::model::person::Actor;

impl Shop {
    /// Adds a bay.
    ///
    /// # Errors
    /// [`Refusal::Taken`] when the name is in use.
    pub async fn add_bay(&self, who: &Actor, key: Option<Uuid>, name: String) -> Result<BayId, Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let (branch, bay) = (work.who.branch, Bay { id: BayId::new(), name });
            db::bays::insert(&mut work, branch, &bay).await?;
            work.done(Deed::BayAdded { bay: bay.id, name: bay.name }, bay.id).await
        })
        .await
    }

    /// Gives a bay another name.
    pub async fn rename_bay(&self, who: &Actor, key: Option<Uuid>, bay: Bay) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let branch = work.who.branch;
            let before = db::bays::find(&mut work, branch, bay.id).await?.ok_or(Refusal::Gone)?;
            db::bays::save(&mut work, branch, &bay).await?;
            work.done(Deed::BayRenamed { bay: bay.id, from: before.name, to: bay.name }, ()).await
        })
        .await
    }

    /// Takes a bay out of use; `on` is the first day without it.
    ///
    /// # Errors
    /// [`Refusal::Field`] while somebody is still expected in it from that day on.
    pub async fn end_bay(&self, who: &Actor, key: Option<Uuid>, bay: BayId, on: Date) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let branch = work.who.branch;
            db::bays::find(&mut work, branch, bay).await?.ok_or(Refusal::Gone)?;
            let zone = db::branches::find(&mut work, branch).await?;
            let zone = zone.and_then(|branch| Zone::named(&branch.time_zone).ok()).unwrap_or_else(Zone::utc);
            let from = zone.instant(on, 0, 0).unwrap_or(work.now);
            if !db::bookings::list_of_bay(&mut work, branch, bay, from).await?.is_empty() {
                return Err(Refusal::Field { field: "ended_on", why: "wrong-bay-booked" });
            }
            db::bays::end(&mut work, branch, bay, on).await?;
            work.done(Deed::BayEnded { bay, on }, ()).await
        })
        .await
    }

    /// Books a time.
    ///
    /// # Errors
    /// [`Refusal::Field`] at `bay_id` when the bay is held then; a manager may double it with a reason.
    pub async fn make_booking(&self, who: &Actor, key: Option<Uuid>, new: NewBooking) -> Result<BookingId, Refusal> {
        let by = who.person.ok_or(Refusal::MayNot("refused-needs-person"))?;
        self.deed(who, key, async move |mut work: Work| {
            let (branch, now, id) = (work.who.branch, work.now, BookingId::new());
            let new = allow(&mut work, new, None).await?;
            db::bookings::insert(&mut work, branch, id, &new, by, now).await?;
            work.done(Deed::BookingMade { booking: id, doubled_reason: new.doubled_reason }, id).await
        })
        .await
    }

    /// Saves a booking over the version that was opened.
    ///
    /// # Errors
    /// [`Refusal::Ended`] once it is no longer expected; [`Refusal::Stale`]; [`Refusal::Field`] as for a new one.
    pub async fn change_booking(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        opened: (BookingId, i64),
        new: NewBooking,
    ) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let ((id, version), branch) = (opened, work.who.branch);
            let before = db::bookings::find(&mut work, branch, id).await?.ok_or(Refusal::Gone)?;
            if before.version != version {
                return Err(Refusal::Stale);
            }
            if before.state != BookingState::Expected {
                return Err(Refusal::Ended("refused-booking-answered"));
            }
            let new = allow(&mut work, new, Some(id)).await?;
            db::bookings::save(&mut work, branch, id, version, &new).await?;
            let changed = changes(&before, &new);
            work.done(Deed::BookingChanged { booking: id, changed, doubled_reason: new.doubled_reason }, ()).await
        })
        .await
    }

    /// Says that somebody did not come, or called off; or takes that back.
    ///
    /// # Errors
    /// [`Refusal::Ended`] when they arrived: the job tells what became of it. [`Refusal::Field`] when the time was
    /// given to somebody else meanwhile.
    pub async fn answer_booking(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        opened: (BookingId, i64),
        to: BookingState,
    ) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let ((id, version), branch) = (opened, work.who.branch);
            let before = db::bookings::find(&mut work, branch, id).await?.ok_or(Refusal::Gone)?;
            if before.state == BookingState::Arrived || to == BookingState::Arrived {
                return Err(Refusal::Ended("refused-booking-answered"));
            }
            if to == BookingState::Expected {
                allow(&mut work, as_new(&before), Some(id)).await?;
            }
            db::bookings::save_state(&mut work, branch, id, version, to, None).await?;
            work.done(Deed::BookingAnswered { booking: id, from: before.state, to }, ()).await
        })
        .await
    }
}

/// Lets a booking through when its bay is in use and free then, or when a manager says why it is doubled. A reason
/// without a clash is not kept: it would explain nothing.
pub(super) async fn allow(
    work: &mut Work,
    mut new: NewBooking,
    except: Option<BookingId>,
) -> Result<NewBooking, Refusal> {
    let (branch, today) = (work.who.branch, work.today);
    if !db::bays::list(work, branch, today).await?.iter().any(|bay| bay.id == new.bay_id) {
        return Err(Refusal::Field { field: "bay_id", why: "wrong-not-known" });
    }
    if db::bookings::list_in_the_way(work, branch, &new, except).await?.is_empty() {
        new.doubled_reason = String::new();
        return Ok(new);
    }
    if new.doubled_reason.is_empty() {
        return Err(Refusal::Field { field: "bay_id", why: "wrong-bay-held" });
    }
    if !work.who.is_manager() {
        return Err(Refusal::Field { field: "doubled_reason", why: "wrong-doubling-needs-manager" });
    }
    Ok(new)
}

fn as_new(booking: &Booking) -> NewBooking {
    NewBooking {
        bay_id: booking.bay_id,
        starts_at: booking.starts_at,
        ends_at: booking.ends_at,
        name: booking.name.clone(),
        phone: booking.phone.clone(),
        plate: booking.plate.clone(),
        job_kind: booking.job_kind,
        note: booking.note.clone(),
        doubled_reason: booking.doubled_reason.clone(),
    }
}

fn changes(old: &Booking, new: &NewBooking) -> Vec<String> {
    let differs = [
        ("bay_id", old.bay_id != new.bay_id),
        ("starts_at", old.starts_at != new.starts_at),
        ("ends_at", old.ends_at != new.ends_at),
        ("name", old.name != new.name),
        ("phone", old.phone != new.phone),
        ("plate", old.plate != new.plate),
        ("job_kind", old.job_kind != new.job_kind),
        ("note", old.note != new.note),
    ];
    differs.iter().filter(|(_, differs)| *differs).map(|(name, _)| (*name).to_owned()).collect()
}
