//! Who works here: setting the shop up, people, their roles, the right to sign, branches.

use serde::{Deserialize, Serialize};
use time::{Date, Duration};
use uuid::Uuid;

use super::secret::Token;
use super::{Refusal, Shop, Work};
use crate::db;
use crate::db::sessions::Code;
use crate::model::branch::Branch;
use crate::model::deed::Deed;
use crate::model::ids::{BranchId, PersonId, SessionId};
use crate::model::person::{Actor, Person, Role, SignatoryGrant};

/// How long the code of a first start holds.
const SET_UP_HOLDS: Duration = Duration::hours(1);
/// How long a code to choose a password holds.
const PASSWORD_CODE_HOLDS: Duration = Duration::hours(24);

/// The right to sign as it is typed: number and last day.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NewGrant {
    pub authorisation_number: String,
    pub expires_on: Date,
}

/// A new person, and the one-time code with which they choose their password.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Added {
    pub person: PersonId,
    /// Shown once. Sent again, the same form gets an empty one: a secret is not kept to be repeated.
    #[serde(skip)]
    pub code: String,
}

impl Shop {
    /// Whether nobody was ever entered.
    pub async fn is_new(&self) -> Result<bool, Refusal> {
        Ok(db::people::count(&mut *self.db.read().await?).await? == 0)
    }

    /// A new one-time code for the first start; earlier ones are spent. [`Refusal::Ended`] once the shop is set up.
    pub async fn make_set_up_code(&self) -> Result<Token, Refusal> {
        let (token, now) = (Token::fresh()?, self.clock.now());
        let mut tx = self.db.write().await?;
        if db::people::count(&mut tx).await? > 0 {
            return Err(Refusal::Ended("refused-already-set-up"));
        }
        let code = Code { person_id: None, expires_at: now + SET_UP_HOLDS };
        db::sessions::insert_code(&mut tx, &token.hash(), &code, now).await?;
        tx.commit().await.map_err(db::Error::from)?;
        Ok(token)
    }

    /// Makes the first branch and its manager. `person` and `branch` carry fresh ids.
    ///
    /// # Errors
    /// [`Refusal::Field`] for a code that is wrong, spent or late, and for a password that will not do;
    /// [`Refusal::Ended`] once somebody was entered.
    pub async fn set_up(
        &self,
        code: &str,
        branch: Branch,
        person: Person,
        password: &str,
    ) -> Result<PersonId, Refusal> {
        super::password::refuse_weak(password, &[&person.name, &person.sign_in_name, &branch.name])?;
        let phc = self.hasher.hash(password).await?;
        let hash = Token::presented(code.trim()).hash();
        let mut tx = self.db.write().await?;
        if db::people::count(&mut tx).await? > 0 {
            return Err(Refusal::Ended("refused-already-set-up"));
        }
        let now = self.clock.now();
        let good = db::sessions::code(&mut tx, &hash).await?;
        if !good.is_some_and(|code| code.person_id.is_none() && now < code.expires_at) {
            return Err(Refusal::Field { field: "code", why: "wrong-code" });
        }
        db::sessions::spend_code(&mut tx, &hash, now).await?;
        db::branches::insert(&mut tx, &branch).await?;
        db::people::insert(&mut tx, &person).await?;
        db::people::save_password(&mut tx, person.id, &phc).await?;
        db::people::insert_role(&mut tx, person.id, branch.id, Role::Manager, now).await?;
        let who = db::people::actor(&mut tx, person.id, branch.id).await?.ok_or(Refusal::Gone)?;
        let deed = Deed::ShopSetUp { branch: branch.id, manager: person.id, name: branch.name };
        db::audit::note(&mut tx, &who, now, &deed).await?;
        tx.commit().await.map_err(db::Error::from)?;
        Ok(person.id)
    }

    /// Adds somebody with roles in the actor's branch. They choose their password themselves, with the code.
    pub async fn add_person(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        person: Person,
        roles: Vec<Role>,
    ) -> Result<Added, Refusal> {
        let token = Token::fresh()?;
        let hash = token.hash();
        let added = self
            .deed(who, key, async move |mut work: Work| {
                db::people::insert(&mut work, &person).await?;
                for role in &roles {
                    let (branch, now) = (work.who.branch, work.now);
                    db::people::insert_role(&mut work, person.id, branch, *role, now).await?;
                }
                insert_password_code(&mut work, person.id, &hash).await?;
                let deed = Deed::PersonAdded { person: person.id, name: person.name, roles };
                work.done(deed, person.id).await
            })
            .await?;
        // A repeat made no new code, and the one in hand opens nothing.
        let kept = db::sessions::code(&mut *self.db.read().await?, &token.hash()).await?.is_some();
        Ok(Added { person: added, code: if kept { token.as_text().to_owned() } else { String::new() } })
    }

    /// A new one-time code with which `person` chooses a password; earlier codes are spent, the old password still works.
    pub async fn make_password_code(&self, who: &Actor, person: PersonId) -> Result<Token, Refusal> {
        let token = Token::fresh()?;
        let hash = token.hash();
        self.deed(who, None, async move |mut work: Work| {
            colleague(&mut work, person).await?;
            insert_password_code(&mut work, person, &hash).await?;
            work.done(Deed::PasswordCodeMade { person }, ()).await
        })
        .await?;
        Ok(token)
    }

    /// Saves name, initials, mail, language, end of the account. An account that ends today or earlier loses its sessions.
    pub async fn change_person(&self, who: &Actor, key: Option<Uuid>, person: Person) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let before = colleague(&mut work, person.id).await?;
            let changed = changes(&before, &person);
            db::people::save(&mut work, &person).await?;
            if person.ended_on.is_some() {
                refuse_without_manager(&mut work).await?;
            }
            if !person.is_here_on(work.today) {
                let now = work.now;
                db::sessions::end_all(&mut work, person.id, None, now).await?;
            }
            work.done(Deed::PersonChanged { person: person.id, changed }, ()).await
        })
        .await
    }

    /// Changes what somebody may do here. Their sessions end, so that the change counts at once.
    ///
    /// # Errors
    /// [`Refusal::MayNot`] when the branch would be left without a manager.
    pub async fn change_roles(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        person: PersonId,
        to: Vec<Role>,
    ) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            colleague(&mut work, person).await?;
            let (branch, now) = (work.who.branch, work.now);
            let from = db::people::roles(&mut work, person, branch).await?;
            for role in from.iter().filter(|role| !to.contains(role)) {
                db::people::end_role(&mut work, person, branch, *role, now).await?;
            }
            for role in to.iter().filter(|role| !from.contains(role)) {
                db::people::insert_role(&mut work, person, branch, *role, now).await?;
            }
            refuse_without_manager(&mut work).await?;
            db::sessions::end_all(&mut work, person, None, now).await?;
            work.done(Deed::RolesChanged { person, from, to }, ()).await
        })
        .await
    }

    /// Gives a technician or manager the right to sign, or ends it (`None`). Their sessions end.
    ///
    /// # Errors
    /// [`Refusal::MayNot`] when they are neither.
    pub async fn change_signing(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        person: PersonId,
        to: Option<NewGrant>,
    ) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            colleague(&mut work, person).await?;
            let (branch, now) = (work.who.branch, work.now);
            db::people::end_signatory(&mut work, person, branch, now).await?;
            let deed = if let Some(NewGrant { authorisation_number, expires_on }) = to {
                let roles = db::people::roles(&mut work, person, branch).await?;
                if !roles.iter().any(|role| matches!(role, Role::Manager | Role::Technician)) {
                    return Err(Refusal::MayNot("refused-signatory-needs-role"));
                }
                let grant = SignatoryGrant { person_id: person, authorisation_number, expires_on };
                db::people::insert_signatory(&mut work, branch, &grant, now).await?;
                let SignatoryGrant { authorisation_number, .. } = grant;
                Deed::SigningGranted { person, authorisation_number, expires_on }
            } else {
                Deed::SigningEnded { person }
            };
            db::sessions::end_all(&mut work, person, None, now).await?;
            work.done(deed, ()).await
        })
        .await
    }

    /// Ends one session of somebody, or all of them. Returns how many were open.
    pub async fn end_sessions(&self, who: &Actor, person: PersonId, one: Option<SessionId>) -> Result<i64, Refusal> {
        self.deed(who, None, async move |mut work: Work| {
            colleague(&mut work, person).await?;
            let now = work.now;
            let count = match one {
                Some(id) => i64::from(db::sessions::end(&mut work, person, id, now).await?),
                None => i64::try_from(db::sessions::end_all(&mut work, person, None, now).await?).unwrap_or(i64::MAX),
            };
            work.done(Deed::SessionsEnded { person, count }, count).await
        })
        .await
    }

    /// Saves the shop block of the actor's branch.
    pub async fn change_branch(&self, who: &Actor, key: Option<Uuid>, branch: Branch) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let mine = work.who.branch;
            let before = db::branches::find(&mut work, mine).await?.ok_or(Refusal::Gone)?;
            if branch.id != mine {
                return Err(Refusal::Gone);
            }
            let changed = branch_changes(&before, &branch);
            db::branches::save(&mut work, &branch).await?;
            work.done(Deed::BranchChanged { branch: mine, changed }, ()).await
        })
        .await
    }

    /// Sets a setting of the actor's branch.
    pub async fn change_setting(&self, who: &Actor, key: Option<Uuid>, name: &str, to: &str) -> Result<(), Refusal> {
        let changed_by = who.person.ok_or(Refusal::MayNot("refused-needs-person"))?;
        let (name, to) = (name.to_owned(), to.to_owned());
        self.deed(who, key, async move |mut work: Work| {
            let (branch, changed_at) = (work.who.branch, work.now);
            let from = db::settings::find(&mut work, branch, &name).await?.map(|setting| setting.value);
            let setting = db::settings::Setting { name: name.clone(), value: to.clone(), changed_at, changed_by };
            db::settings::save(&mut work, branch, &setting).await?;
            work.done(Deed::SettingChanged { branch, name, from, to }, ()).await
        })
        .await
    }
}

/// Somebody who has or had a role in the actor's branch; anybody else is not there at all.
async fn colleague(work: &mut Work, person: PersonId) -> Result<Person, Refusal> {
    let branch: BranchId = work.who.branch;
    let people = db::people::list(work, branch).await?;
    people.into_iter().find(|one| one.id == person).ok_or(Refusal::Gone)
}

async fn refuse_without_manager(work: &mut Work) -> Result<(), Refusal> {
    let (branch, today) = (work.who.branch, work.today);
    if db::people::managers(work, branch, today).await? == 0 {
        return Err(Refusal::MayNot("refused-last-manager"));
    }
    Ok(())
}

async fn insert_password_code(work: &mut Work, person: PersonId, hash: &[u8; 32]) -> Result<(), Refusal> {
    let now = work.now;
    let code = Code { person_id: Some(person), expires_at: now + PASSWORD_CODE_HOLDS };
    Ok(db::sessions::insert_code(work, hash, &code, now).await?)
}

fn names_where(changed: &[(&str, bool)]) -> Vec<String> {
    changed.iter().filter(|(_, differs)| *differs).map(|(name, _)| (*name).to_owned()).collect()
}

fn changes(old: &Person, new: &Person) -> Vec<String> {
    names_where(&[
        ("name", old.name != new.name),
        ("initials", old.initials != new.initials),
        ("sign_in_name", old.sign_in_name != new.sign_in_name),
        ("mail", old.mail != new.mail),
        ("language", old.language != new.language),
        ("sees_contacts", old.sees_contacts != new.sees_contacts),
        ("ended_on", old.ended_on != new.ended_on),
    ])
}

fn branch_changes(old: &Branch, new: &Branch) -> Vec<String> {
    names_where(&[
        ("name", old.name != new.name),
        ("address", old.address != new.address),
        ("phone", old.phone != new.phone),
        ("mail", old.mail != new.mail),
        ("licence_number", old.licence_number != new.licence_number),
        ("licence_expires_on", old.licence_expires_on != new.licence_expires_on),
        ("country", old.country != new.country),
        ("time_zone", old.time_zone != new.time_zone),
        ("currency", old.currency != new.currency),
        ("language", old.language != new.language),
        ("paper_size", old.paper_size != new.paper_size),
        ("units", old.units != new.units),
    ])
}
