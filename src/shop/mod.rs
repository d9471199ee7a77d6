//! The verbs: one deed, one transaction, one audit line.
//!
//! A deed is a method of [`Shop`] in the file of its subject. It does its work inside [`Shop::deed`], which opens the one
//! write transaction, remembers the form's key so that a double tap makes one record, writes the audit line and commits;
//! or does none of it. Reading needs no deed: pages go straight to `db`.

use std::future::Future;
use std::ops::{Deref, DerefMut};

use serde::Serialize;
use serde::de::DeserializeOwned;
use time::{Date, OffsetDateTime};
use uuid::Uuid;

use crate::clock::{Clock, Zone};
use crate::db::{self, Con, Database, Writing};
use crate::model::deed::Deed;
use crate::model::person::Actor;

pub mod arrivals;
mod assessed;
pub mod attachments;
pub mod audit_pack;
pub mod bookings;
pub mod copies;
pub mod customers;
pub mod doubts;
pub mod duties;
pub mod estimates;
pub mod evidence;
pub mod findings;
pub mod hand_over;
mod inspections;
pub mod instruments;
pub mod issue;
pub mod jobs;
pub mod leak_runs;
pub mod notes;
pub mod outbox;
pub mod owner;
pub mod parts;
mod password;
pub mod people;
mod refusal;
pub mod restored;
pub mod road;
pub mod rule_files;
mod secret;
pub mod sign_in;
pub mod tablets;
pub mod vehicles;
pub mod waivers;

pub use refusal::Refusal;
pub use secret::{Hasher, Token};

/// The shop: where every change is made.
#[derive(Debug, Clone)]
pub struct Shop {
    pub db: Database,
    pub clock: Clock,
    pub hasher: Hasher,
    pub issuer: issue::Issuer,
}

/// An open deed: the write transaction (a `&mut Work` goes where a `&mut Con` is wanted), who does it, and when.
#[derive(Debug)]
pub struct Work {
    tx: Writing,
    pub who: Actor,
    /// The instant of the deed: one for all its rows.
    pub now: OffsetDateTime,
    /// That instant's day in the branch's time zone.
    pub today: Date,
}

/// A deed whose work is finished, to be committed by [`Shop::deed`].
#[derive(Debug)]
pub struct Done<T> {
    work: Work,
    tag: &'static str,
    answer: T,
}

impl Work {
    /// Writes an audit line and goes on; for a deed that says more than one thing.
    pub async fn note(&mut self, deed: Deed) -> Result<(), Refusal> {
        Ok(db::audit::note(&mut self.tx, &self.who, self.now, &deed).await?)
    }

    /// Ends the deed: its audit line, and what the caller gets, now and whenever the same form is sent again.
    pub async fn done<T>(mut self, deed: Deed, answer: T) -> Result<Done<T>, Refusal> {
        let tag = deed.tag();
        self.note(deed).await?;
        Ok(Done { work: self, tag, answer })
    }
}

impl Deref for Work {
    type Target = Con;

    fn deref(&self) -> &Con {
        &self.tx
    }
}

impl DerefMut for Work {
    fn deref_mut(&mut self) -> &mut Con {
        &mut self.tx
    }
}

impl Shop {
    /// The answer that this form got when the same person sent it before.
    pub(super) async fn answered<T: DeserializeOwned>(
        &self,
        who: &Actor,
        key: Option<Uuid>,
    ) -> Result<Option<T>, Refusal> {
        let Some(key) = key else { return Ok(None) };
        let actor = who.person.map_or_else(|| who.name.clone(), |id| id.to_string());
        let mut con = self.db.read().await?;
        let send = db::sends::find(&mut con, &actor, key).await?;
        send.map(|send| serde_json::from_str(&send.answer).map_err(|_| Refusal::KeyUsed)).transpose()
    }

    /// Does a deed: all of it, once, with its audit line; or nothing.
    ///
    /// `key`: what the form carried; sent again by the same person, the work is not done again and the first answer is
    /// given. `work` gets the open [`Work`] and ends with [`Work::done`]. Hash, draw, read files before it, not inside:
    /// nobody else writes meanwhile.
    pub async fn deed<T, W, F>(&self, who: &Actor, key: Option<Uuid>, work: W) -> Result<T, Refusal>
    where
        T: Serialize + DeserializeOwned,
        W: FnOnce(Work) -> F,
        F: Future<Output = Result<Done<T>, Refusal>>,
    {
        let mut tx = self.db.write().await?;
        let actor = who.person.map_or_else(|| who.name.clone(), |id| id.to_string());
        if let Some(key) = key
            && let Some(send) = db::sends::find(&mut tx, &actor, key).await?
        {
            return serde_json::from_str(&send.answer).map_err(|_| Refusal::KeyUsed);
        }
        let now = self.clock.now();
        let branch = db::branches::find(&mut tx, who.branch).await?;
        let zone = branch.and_then(|branch| Zone::named(&branch.time_zone).ok()).unwrap_or_else(Zone::utc);
        let done = work(Work { tx, who: who.clone(), now, today: zone.day_of(now) }).await?;
        let mut tx = done.work.tx;
        if let Some(key) = key {
            let answer = serde_json::to_string(&done.answer).map_err(|error| Refusal::Broken(error.to_string()))?;
            let send = db::sends::Send { deed: done.tag.to_owned(), answer };
            db::sends::insert(&mut tx, &actor, key, &send, now).await?;
        }
        tx.commit().await.map_err(db::Error::from)?;
        Ok(done.answer)
    }
}
