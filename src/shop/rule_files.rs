//! The shop's own rule lines: read strictly, in force from a day on, looser than the sets they stand on only by an
//! authority's word and two people's. And which sets a branch stacks, and the file that stands in the place of one.

use time::Date;
use uuid::Uuid;

use super::{Refusal, Shop, Work};
use crate::db;
use crate::db::rule_books::{BY_VEHICLE_SETTING, SHOP, STACK_SETTING};
use crate::db::rule_files::RuleFile;
use crate::db::settings::Setting;
use crate::model::deed::Deed;
use crate::model::ids::PersonId;
use crate::model::person::{Actor, Role};
use crate::rules::{BASE, RuleSet, embedded, looser};

/// A new version of a set.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NewRuleFile {
    /// Name of the set: the shop's own, or one that ships with the program.
    pub name: String,
    pub text: String,
    /// First day in force; not before today.
    pub from_on: Date,
    /// The latest version there was when the form was opened.
    pub opened_at: Option<String>,
    /// Who else stands behind it, their password proved; needed where a line asks less than the sets below.
    pub second: Option<PersonId>,
}

/// Which sets a branch stacks.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NewStack {
    /// Names, base first; `None`: those of the branch's country.
    pub names: Option<Vec<String>>,
    /// A vehicle's country of registration adds its set.
    pub by_vehicle: bool,
}

impl Shop {
    /// Somebody who may stand behind a looser line beside the writer: another manager, or a signatory of today.
    ///
    /// # Errors
    /// [`Refusal::Field`] beside `second_name` or `second_password`.
    pub async fn second_person(
        &self,
        who: &Actor,
        sign_in_name: &str,
        password: &str,
        today: Date,
        address: &str,
    ) -> Result<PersonId, Refusal> {
        let wrong = |field, why| Refusal::Field { field, why };
        let found = db::people::list(&mut *self.db.read().await?, who.branch).await?;
        let found = found.into_iter().find(|one| one.sign_in_name == sign_in_name.trim());
        let person = found.ok_or_else(|| wrong("second_name", "wrong-second-unknown"))?;
        if Some(person.id) == who.person {
            return Err(wrong("second_name", "wrong-second-same"));
        }
        let actor = db::people::actor(&mut *self.db.read().await?, person.id, who.branch).await?;
        let may = |actor: &Actor| actor.is_one_of(&[Role::Manager]) || actor.may_sign_on(today).is_some();
        if !actor.is_some_and(|actor| may(&actor)) {
            return Err(wrong("second_name", "wrong-second-may-not"));
        }
        match self.prove(person.id, password, address).await {
            Err(Refusal::Field { why, .. }) => Err(wrong("second_password", why)),
            other => other.map(|()| person.id),
        }
    }

    /// Puts a new version of a set in force.
    ///
    /// # Errors
    /// [`Refusal::Stale`] when another version came meanwhile; [`Refusal::Field`] for a text that is no such set, for a
    /// line of the shop looser than the one it stands on (but for one that an authority allowed and a second person stands
    /// behind), and for a day that is over: what was judged then stays judged.
    pub async fn change_rules(&self, who: &Actor, key: Option<Uuid>, new: NewRuleFile) -> Result<(), Refusal> {
        let wrong = |why| Refusal::Field { field: "text", why };
        let set = RuleSet::read(&new.text).map_err(|_| wrong("wrong-rules"))?;
        let is_shop = new.name == SHOP;
        if set.name != new.name || set.is_shop != is_shop {
            return Err(wrong(if is_shop { "wrong-rules-not-shop" } else { "wrong-rules-other-set" }));
        }
        if embedded(&new.name).is_none() {
            return Err(Refusal::Gone);
        }
        self.deed(who, key, async move |mut work: Work| {
            let (branch, now, person_id) = (work.who.branch, work.now, work.person()?);
            if new.from_on < work.today {
                return Err(Refusal::Field { field: "from_on", why: "wrong-past" });
            }
            let found = if is_shop {
                looser(&db::rule_books::base_on(&mut work, branch, new.from_on).await?, &set)
            } else {
                Vec::new()
            };
            if found.iter().any(|one| !one.is_allowed) {
                return Err(Refusal::Field { field: "text", why: "wrong-rules-looser" });
            }
            if !found.is_empty() && new.second.is_none_or(|second| second == person_id) {
                return Err(Refusal::Field { field: "second_name", why: "wrong-second-needed" });
            }
            let before = db::rule_files::list(&mut work, branch, &new.name).await?;
            if before.first().map(|latest| &latest.id) != new.opened_at.as_ref() {
                return Err(Refusal::Stale);
            }
            let file = RuleFile {
                id: Uuid::now_v7().to_string(),
                name: new.name,
                text: new.text,
                sha256: set.sha256,
                from_on: new.from_on,
                person_id,
                second_person_id: new.second.filter(|_| !found.is_empty()),
                recorded_at: now,
            };
            db::rule_files::insert(&mut work, branch, &file).await?;
            Box::pin(work.doubt_changed_lines(file.from_on)).await?;
            if let Some(second) = file.second_person_id {
                let lines = found.into_iter().map(|one| one.id).collect();
                work.note(Deed::LooserRulesSigned { branch, second, lines }).await?;
            }
            let deed = Deed::RulesChanged { branch, name: file.name, sha256: file.sha256, from_on: file.from_on };
            work.done(deed, ()).await
        })
        .await
    }

    /// Chooses the sets that the branch stacks. The base is never left out: without it a job would be asked for nothing.
    ///
    /// # Errors
    /// [`Refusal::Field`] for a name that no set has, or a choice without the base.
    pub async fn choose_rule_sets(&self, who: &Actor, key: Option<Uuid>, new: NewStack) -> Result<(), Refusal> {
        let wrong = |why| Refusal::Field { field: "rule_sets", why };
        let changed_by = who.person.ok_or(Refusal::MayNot("refused-needs-person"))?;
        let names = new.names.unwrap_or_default();
        if names.iter().any(|name| embedded(name).is_none() || name == SHOP) {
            return Err(wrong("wrong-not-a-choice"));
        }
        if !names.is_empty() && !names.iter().any(|name| name == BASE[0]) {
            return Err(wrong("wrong-rules-without-base"));
        }
        let by_vehicle = if new.by_vehicle { "yes" } else { "no" };
        let wanted = [(STACK_SETTING, names.join(", ")), (BY_VEHICLE_SETTING, by_vehicle.to_owned())];
        self.deed(who, key, async move |mut work: Work| {
            let (branch, changed_at) = (work.who.branch, work.now);
            let mut deeds = Vec::new();
            for (name, value) in wanted {
                let from = db::settings::find(&mut work, branch, name).await?.map(|setting| setting.value);
                let setting = Setting { name: name.to_owned(), value: value.clone(), changed_at, changed_by };
                db::settings::save(&mut work, branch, &setting).await?;
                deeds.push(Deed::SettingChanged { branch, name: name.to_owned(), from, to: value });
            }
            let last = deeds.pop().ok_or(Refusal::Gone)?;
            for deed in deeds {
                work.note(deed).await?;
            }
            work.done(last, ()).await
        })
        .await
    }
}
