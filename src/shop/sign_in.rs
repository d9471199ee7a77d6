//! Coming in and going out: passwords, sessions, and patience with whoever guesses.

use time::{Duration, OffsetDateTime};

use super::password::{LONGEST_PASSWORD, refuse_weak};
use super::secret::Token;
use super::{Refusal, Shop};
use crate::clock::Zone;
use crate::db;
use crate::db::sessions::{Failures, Session};
use crate::model::branch::Branch;
use crate::model::deed::Deed;
use crate::model::ids::{BranchId, DeviceId, PersonId, SessionId};
use crate::model::person::{Actor, Person};

/// A session nobody uses ends after this long.
pub const IDLE: Duration = Duration::minutes(30);
/// A session that was opened with a PIN: the tablet lies about in the bay, and six digits open it again.
pub const IDLE_ON_DEVICE: Duration = Duration::minutes(10);
/// Every session ends after this long.
pub const LONGEST: Duration = Duration::hours(12);
/// On plain http anybody in the network may listen, so less is at stake.
pub const LONGEST_ON_PLAIN_HTTP: Duration = Duration::hours(4);

/// This many tries may fail before the wait begins.
const FREE_TRIES: i64 = 5;
const LONGEST_WAIT_S: i64 = 300;
/// After this long without a try, nobody remembers the failed ones.
const FORGOTTEN_AFTER: Duration = Duration::hours(24);

/// Where a sign-in comes from.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct From {
    /// The client's address.
    pub address: String,
    /// What the browser calls itself.
    pub agent: String,
    /// Whether it came over plain http from outside this machine.
    pub is_plain_http: bool,
}

/// Somebody who is signed in, with everything a page asks about them.
#[derive(Debug, Clone)]
pub struct Known {
    pub session: Session,
    pub actor: Actor,
    pub person: Person,
    pub branch: Branch,
    pub zone: Zone,
}

impl Shop {
    /// Opens a session for whoever knows the password. The name is folded as it was when it was kept.
    ///
    /// # Errors
    /// [`Refusal::Throttled`] while the account or the address must wait; [`Refusal::Field`] for a wrong name or password,
    /// which answer alike and take alike, and for an account that has ended or has no role.
    pub async fn sign_in(&self, name: &str, password: &str, from: &From) -> Result<Token, Refusal> {
        let name = fold(name);
        let subjects = [format!("name:{name}"), format!("address:{}", from.address)];
        self.refuse_hasty(&subjects).await?;
        let secrets = db::people::secrets_of(&mut *self.db.read().await?, &name).await?;
        let phc = secrets.as_ref().and_then(|secrets| secrets.password_phc.clone());
        let fits = password.len() <= LONGEST_PASSWORD && self.hasher.fits(password, phc.clone()).await?;
        let Some(person) = secrets.filter(|_| fits).map(|secrets| secrets.id) else {
            self.count_failure(&subjects).await?;
            return Err(wrong());
        };
        let renewed = match phc {
            Some(phc) if self.hasher.is_outdated(&phc) => Some(self.hasher.hash(password).await?),
            _ => None,
        };
        let token = self.open_session(person, None, from, "password").await?;
        let mut tx = self.db.write().await?;
        for subject in &subjects {
            db::sessions::forget_failures(&mut tx, subject).await?;
        }
        if let Some(phc) = renewed {
            db::people::save_password(&mut tx, person, &phc).await?;
        }
        tx.commit().await.map_err(db::Error::from)?;
        Ok(token)
    }

    /// The session of a token and who is behind it, as of now: ended sessions, ended accounts and lost roles find nobody.
    pub async fn visitor(&self, token: &Token) -> Result<Option<Known>, Refusal> {
        let mut con = self.db.read().await?;
        let now = self.clock.now();
        let Some(session) = db::sessions::find(&mut con, &token.hash()).await? else { return Ok(None) };
        let idle = if session.device_id.is_some() { IDLE_ON_DEVICE } else { IDLE };
        if now >= session.ends_at || now >= session.seen_at + idle {
            return Ok(None);
        }
        let Some(actor) = db::people::actor(&mut con, session.person_id, session.branch_id).await? else {
            return Ok(None);
        };
        let Some(branch) = db::branches::find(&mut con, session.branch_id).await? else { return Ok(None) };
        let Some(person) = db::people::find(&mut con, session.person_id).await? else { return Ok(None) };
        drop(con);
        let zone = Zone::named(&branch.time_zone).unwrap_or_else(|_| Zone::utc());
        if !person.is_here_on(zone.day_of(now)) {
            return Ok(None);
        }
        // Once a minute is often enough to know who is idle, and spares the one writer.
        if now >= session.seen_at + Duration::minutes(1) {
            let mut tx = self.db.write().await?;
            db::sessions::touch(&mut tx, session.id, now).await?;
            tx.commit().await.map_err(db::Error::from)?;
        }
        Ok(Some(Known { session, actor, person, branch, zone }))
    }

    /// Ends the visitor's own session.
    pub async fn sign_out(&self, who: &Actor, session: SessionId) -> Result<(), Refusal> {
        let person = who.person.ok_or(Refusal::Gone)?;
        self.deed(who, None, async move |mut work: super::Work| {
            let now = work.now;
            db::sessions::end(&mut work, person, session, now).await?;
            work.done(Deed::SignedOut { person }, ()).await
        })
        .await
    }

    /// Changes the visitor's own password; their other sessions end.
    pub async fn change_password(
        &self,
        who: &Actor,
        session: SessionId,
        current: &str,
        new: &str,
        from: &From,
    ) -> Result<(), Refusal> {
        let person = who.person.ok_or(Refusal::Gone)?;
        self.prove(person, current, &from.address).await?;
        refuse_weak(new, &[&who.name])?;
        let phc = self.hasher.hash(new).await?;
        self.deed(who, None, async move |mut work: super::Work| {
            let now = work.now;
            db::people::save_password(&mut work, person, &phc).await?;
            db::sessions::end_all(&mut work, person, Some(session), now).await?;
            work.done(Deed::PasswordSet { person }, ()).await
        })
        .await
    }

    /// Asks for the full password once more, before something is signed or a right is given.
    ///
    /// # Errors
    /// [`Refusal::Field`] on `current_password` when it is wrong; [`Refusal::Throttled`] after too many.
    pub async fn prove(&self, person: PersonId, password: &str, address: &str) -> Result<(), Refusal> {
        let subjects = [format!("person:{person}"), format!("address:{address}")];
        self.refuse_hasty(&subjects).await?;
        let secrets = db::people::secrets(&mut *self.db.read().await?, person).await?;
        if self.hasher.fits(password, secrets.and_then(|secrets| secrets.password_phc)).await? {
            return Ok(());
        }
        self.count_failure(&subjects).await?;
        Err(Refusal::Field { field: "current_password", why: "wrong-password" })
    }

    /// Chooses a password with a one-time code; every session of the person ends.
    pub async fn choose_password(&self, code: &str, new: &str, address: &str) -> Result<PersonId, Refusal> {
        let subjects = [format!("address:{address}")];
        self.refuse_hasty(&subjects).await?;
        let (hash, now) = (Token::presented(code.trim()).hash(), self.clock.now());
        let found = db::sessions::code(&mut *self.db.read().await?, &hash).await?;
        let person = found.filter(|code| now < code.expires_at).and_then(|code| code.person_id);
        let Some(person) = person else {
            self.count_failure(&subjects).await?;
            return Err(Refusal::Field { field: "code", why: "wrong-code" });
        };
        let found = db::people::find(&mut *self.db.read().await?, person).await?.ok_or(Refusal::Gone)?;
        refuse_weak(new, &[&found.name, &found.sign_in_name])?;
        let phc = self.hasher.hash(new).await?;
        let branch = db::people::branches(&mut *self.db.read().await?, person).await?;
        let branch: BranchId = *branch.first().ok_or(Refusal::Gone)?;
        let who = db::people::actor(&mut *self.db.read().await?, person, branch).await?.ok_or(Refusal::Gone)?;
        self.deed(&who, None, async move |mut work: super::Work| {
            let now = work.now;
            if !db::sessions::spend_code(&mut work, &hash, now).await? {
                return Err(Refusal::Field { field: "code", why: "wrong-code" });
            }
            db::people::save_password(&mut work, person, &phc).await?;
            db::sessions::end_all(&mut work, person, None, now).await?;
            work.done(Deed::PasswordSet { person }, person).await
        })
        .await
    }

    pub(super) async fn open_session(
        &self,
        person: PersonId,
        device: Option<(DeviceId, BranchId)>,
        from: &From,
        with: &str,
    ) -> Result<Token, Refusal> {
        let (token, now) = (Token::fresh()?, self.clock.now());
        let hash = token.hash();
        let mut con = self.db.read().await?;
        let branches = db::people::branches(&mut con, person).await?;
        let branch = match device {
            Some((_, branch)) if branches.contains(&branch) => branch,
            Some(_) => return Err(wrong()),
            None => *branches.first().ok_or_else(wrong)?,
        };
        let who = db::people::actor(&mut con, person, branch).await?.ok_or_else(wrong)?;
        let found = db::people::find(&mut con, person).await?.ok_or_else(wrong)?;
        drop(con);
        let longest = if from.is_plain_http { LONGEST_ON_PLAIN_HTTP } else { LONGEST };
        let session = Session {
            id: SessionId::new(),
            person_id: person,
            branch_id: branch,
            device_id: device.map(|(id, _)| id),
            began_at: now,
            seen_at: now,
            ends_at: now + longest,
            address: from.address.clone(),
            agent: from.agent.chars().take(200).collect(),
        };
        let deed = Deed::SignedIn { person, address: from.address.clone(), with: with.to_owned() };
        self.deed(&who, None, async move |mut work: super::Work| {
            if !found.is_here_on(work.today) {
                return Err(wrong());
            }
            db::sessions::insert(&mut work, &session, &hash).await?;
            work.done(deed, ()).await
        })
        .await?;
        Ok(token)
    }

    pub(super) async fn refuse_hasty(&self, subjects: &[String]) -> Result<(), Refusal> {
        let now = self.clock.now();
        let mut con = self.db.read().await?;
        for subject in subjects {
            let free_at = db::sessions::failures(&mut con, subject).await?.map_or(now, |failed| failed.free_at);
            if now < free_at {
                let wait = std::time::Duration::try_from(free_at - now).unwrap_or_default();
                return Err(Refusal::Throttled(wait));
            }
        }
        Ok(())
    }

    pub(super) async fn count_failure(&self, subjects: &[String]) -> Result<(), Refusal> {
        let now = self.clock.now();
        let mut tx = self.db.write().await?;
        db::sessions::forget_quiet_failures(&mut tx, now - FORGOTTEN_AFTER).await?;
        for subject in subjects {
            let before = db::sessions::failures(&mut tx, subject).await?.map_or(0, |failed| failed.failures);
            let failures = before + 1;
            let counted = Failures { failures, last_at: now, free_at: free_at(now, failures) };
            db::sessions::save_failures(&mut tx, subject, &counted).await?;
        }
        Ok(tx.commit().await.map_err(db::Error::from)?)
    }
}

/// When the next try is looked at: at once for five failures, then after 1, 2, 4 .. 300 s. Nobody is shut out for ever:
/// that would hand every guesser the means to lock the shop.
fn free_at(now: OffsetDateTime, failures: i64) -> OffsetDateTime {
    let beyond = failures - FREE_TRIES;
    if beyond < 0 {
        return now;
    }
    let doubled = u32::try_from(beyond).ok().and_then(|power| 2_i64.checked_pow(power)).unwrap_or(LONGEST_WAIT_S);
    now + Duration::seconds(doubled.min(LONGEST_WAIT_S))
}

/// A sign-in name as it is kept and looked for.
pub fn fold(name: &str) -> String {
    name.trim().to_lowercase()
}

/// One answer for every way of not being let in.
fn wrong() -> Refusal {
    Refusal::Field { field: "password", why: "wrong-sign-in" }
}

#[cfg(test)]
mod tests {
    use time::macros::datetime;

    use super::*;

    #[test]
    fn the_wait_doubles_after_five_free_tries_up_to_five_minutes() {
        let now = datetime!(2026-05-01 08:00 UTC);
        let waits: Vec<i64> = (1..=16).map(|failures| (free_at(now, failures) - now).whole_seconds()).collect();
        assert_eq!(waits, [0, 0, 0, 0, 1, 2, 4, 8, 16, 32, 64, 128, 256, 300, 300, 300]);
        assert_eq!((free_at(now, i64::MAX) - now).whole_seconds(), 300);
    }
}
