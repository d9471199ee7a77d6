//! The shop's own rule lines: read strictly, never looser than the sets they stand on, in force from a day on.

use time::Date;
use uuid::Uuid;

use super::{Refusal, Shop, Work};
use crate::db;
use crate::db::rule_books::SHOP;
use crate::db::rule_files::RuleFile;
use crate::model::deed::Deed;
use crate::model::person::Actor;
use crate::rules::{RuleSet, looser};

/// A new version of the shop's lines.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NewRuleFile {
    pub text: String,
    /// First day in force; not before today.
    pub from_on: Date,
    /// The latest version there was when the form was opened.
    pub opened_at: Option<String>,
}

impl Shop {
    /// Puts a new version of the shop's own lines in force.
    ///
    /// # Errors
    /// [`Refusal::Stale`] when another version came meanwhile; [`Refusal::Field`] for a text that is no set of the shop,
    /// for a line looser than the one it stands on, and for a day that is over: what was judged then stays judged.
    pub async fn change_rules(&self, who: &Actor, key: Option<Uuid>, new: NewRuleFile) -> Result<(), Refusal> {
        let wrong = |why| Refusal::Field { field: "text", why };
        let set = RuleSet::read(&new.text).map_err(|_| wrong("wrong-rules"))?;
        if set.name != SHOP || !set.is_shop {
            return Err(wrong("wrong-rules-not-shop"));
        }
        if !looser(&db::rule_books::base()?, &set).is_empty() {
            return Err(wrong("wrong-rules-looser"));
        }
        self.deed(who, key, async move |mut work: Work| {
            let (branch, now, person_id) = (work.who.branch, work.now, work.person()?);
            if new.from_on < work.today {
                return Err(Refusal::Field { field: "from_on", why: "wrong-past" });
            }
            let before = db::rule_files::list(&mut work, branch, SHOP).await?;
            if before.first().map(|latest| &latest.id) != new.opened_at.as_ref() {
                return Err(Refusal::Stale);
            }
            let file = RuleFile {
                id: Uuid::now_v7().to_string(),
                name: SHOP.to_owned(),
                text: new.text,
                sha256: set.sha256,
                from_on: new.from_on,
                person_id,
                recorded_at: now,
            };
            db::rule_files::insert(&mut work, branch, &file).await?;
            Box::pin(work.doubt_changed_lines(file.from_on)).await?;
            let deed = Deed::RulesChanged { branch, name: file.name, sha256: file.sha256, from_on: file.from_on };
            work.done(deed, ()).await
        })
        .await
    }
}
