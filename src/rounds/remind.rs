//! Who is reminded of what on a day: a pure choice, and the round that writes it into the outbox.
//!
//! A duty is told at most once at each lead time to one person: 60, 30 and 7 days before, and once 14 days after. Only the
//! latest lead time passed counts, so that a program that stood still for a month sends one reminder, not three. What
//! falls due for one person within 30 days shares a message.

use std::collections::BTreeMap;

use time::{Date, Duration, OffsetDateTime};

use crate::clock::Zone;
use crate::db::duties::{Owed, Span};
use crate::db::outbox::Told;
use crate::db::{self, Con};
use crate::mail::reminder::{self, Item, Reminder};
use crate::model::branch::Branch;
use crate::model::ids::CustomerId;
use crate::model::message::{HeldBecause, MessageKind, MessageState, NewMessage};
use crate::shop::duties::{Way, leads, way};
use crate::shop::outbox::{Written, working_time_from};
use crate::shop::{Refusal, Shop};

/// Duties of one person this near to each other share a message.
const SHARE_DAYS: i64 = 30;
/// Nobody who was just in the shop is reminded within these days of what that visit began.
const REST_DAYS: i64 = 7;
/// Duties longer overdue than this are for the call list alone.
const OVERDUE_DAYS: i64 = 400;

/// What one person is told at once.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Parcel {
    pub customer: CustomerId,
    pub way: Way,
    /// What it tells of, the first due first, each with the lead time that it stands for.
    pub duties: Vec<(Owed, i64)>,
}

/// Chooses what goes out on `today`.
///
/// `owed`: open duties, the first due first; `told`: what was told before; `made_on`: the shop's day of an instant.
pub fn choose(
    owed: &[Owed],
    told: &[Told],
    leads: &[i64],
    today: Date,
    made_on: &dyn Fn(OffsetDateTime) -> Date,
) -> Vec<Parcel> {
    let mut people: BTreeMap<CustomerId, Vec<&Owed>> = BTreeMap::new();
    for one in owed {
        if let (Some(keeper), Some(_)) = (one.keeper_id, way(one, today)) {
            people.entry(keeper).or_default().push(one);
        }
    }
    let mut parcels = Vec::new();
    for (customer, mut left) in people {
        let leads_of = |one: &Owed| Leads::of(one, customer, told, leads, today, made_on(one.duty.made_at));
        while let Some(first) = left.iter().find(|one| leads_of(one).passed.is_some()).map(|one| one.duty.due_on) {
            let is_near = |one: &&Owed| (one.duty.due_on - first).whole_days().abs() <= SHARE_DAYS;
            let (near, far): (Vec<_>, Vec<_>) = left.into_iter().partition(is_near);
            left = far;
            let share = |one: &Owed| {
                let leads = leads_of(one);
                leads.passed.or(leads.ahead).map(|lead| (one.clone(), lead))
            };
            let duties: Vec<_> = near.into_iter().filter_map(share).collect();
            let Some(way) = duties.first().and_then(|(one, _)| way(one, today)) else { break };
            parcels.push(Parcel { customer, way, duties });
        }
    }
    parcels
}

/// The lead times of one duty that are still to be told.
struct Leads {
    /// The latest that has passed.
    passed: Option<i64>,
    /// The next to come, for a message that is shared before its time.
    ahead: Option<i64>,
}

impl Leads {
    fn of(one: &Owed, customer: CustomerId, told: &[Told], leads: &[i64], today: Date, made_on: Date) -> Self {
        let days_left = (one.duty.due_on - today).whole_days();
        let recipient = customer.to_string();
        // A later lead time that was told, as part of a shared message, covers the earlier ones too.
        let told_to = told.iter().filter(|told| told.duty_id == one.duty.id && told.recipient == recipient);
        let latest_told = told_to.map(|told| told.lead_days).min();
        let is_open = |lead: i64| latest_told.is_none_or(|latest| lead < latest);
        let is_rested = |lead: i64| {
            let begins = made_on.checked_add(Duration::days(REST_DAYS));
            let day = one.duty.due_on.checked_sub(Duration::days(lead));
            one.duty.job_id.is_none() || day.zip(begins).is_some_and(|(day, begins)| day >= begins)
        };
        let passed = leads.iter().copied().filter(|lead| days_left <= *lead).min();
        let ahead = leads.iter().copied().filter(|lead| days_left > *lead).max();
        Self {
            passed: passed.filter(|lead| is_open(*lead) && is_rested(*lead)),
            ahead: ahead.filter(|lead| is_open(*lead) && is_rested(*lead)),
        }
    }
}

/// What would go out in a branch on `today`.
pub async fn plan(con: &mut Con, branch: &Branch, today: Date) -> Result<Vec<Parcel>, db::Error> {
    let leads = leads(con, branch).await?;
    let zone = Zone::named(&branch.time_zone).unwrap_or_else(|_| Zone::utc());
    let most = leads.iter().copied().max().unwrap_or(0).max(0) + SHARE_DAYS;
    let span = Span {
        is_open: true,
        from: today.checked_sub(Duration::days(OVERDUE_DAYS)).unwrap_or(Date::MIN),
        to: today.checked_add(Duration::days(most)).unwrap_or(Date::MAX),
    };
    let owed = db::duties::list(con, branch.id, span, today).await?;
    let told = db::outbox::told(con, branch.id).await?;
    Ok(choose(&owed, &told, &leads, today, &|at| zone.day_of(at)))
}

/// Writes today's reminders of a branch into the outbox. Doing it again the same day writes nothing more.
pub async fn remind(shop: &Shop, branch: &Branch, has_links: bool, is_demo: bool) -> Result<Written, Refusal> {
    let zone = Zone::named(&branch.time_zone).unwrap_or_else(|_| Zone::utc());
    let now = shop.clock.now();
    let today = zone.day_of(now);
    let parcels = plan(&mut *shop.db.read().await?, branch, today).await?;
    let not_before = working_time_from(&zone, now);
    let mut messages = Vec::with_capacity(parcels.len());
    for parcel in parcels {
        let Some((first, _)) = parcel.duties.first() else { continue };
        let items: Vec<Item> = parcel.duties.iter().map(|(owed, _)| item(owed)).collect();
        let is_mail = parcel.way == Way::Mail;
        let texts = reminder::texts(&Reminder {
            name: &first.keeper_name,
            language: &first.language,
            items: &items,
            branch,
            today,
            now,
            has_links: has_links && is_mail,
            is_demo,
        })
        .map_err(|error| Refusal::Broken(error.to_string()))?;
        messages.push(NewMessage {
            kind: MessageKind::Reminder,
            customer_id: Some(parcel.customer),
            vehicle_id: Some(first.duty.vehicle_id),
            recipient: if is_mail { first.mail.clone() } else { String::new() },
            language: first.language.clone(),
            subject: texts.subject,
            body_text: texts.text,
            body_html: texts.html,
            calendar: texts.calendar,
            state: if is_mail { MessageState::Waiting } else { MessageState::Letter },
            held_because: HeldBecause::Nothing,
            not_before,
            duties: parcel.duties.iter().map(|(owed, lead)| (owed.duty.id, *lead)).collect(),
        });
    }
    shop.owe_reminders(branch.id, messages).await
}

fn item(owed: &Owed) -> Item {
    Item {
        duty: owed.duty.id,
        kind: owed.duty.kind,
        plate: owed.plate.clone(),
        vehicle: format!("{} {}", owed.make, owed.model).trim().to_owned(),
        due_on: owed.duty.due_on,
        due_km: owed.duty.due_km,
    }
}
