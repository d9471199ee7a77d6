//! A shop that came from a backup sends and issues nothing until a manager has said that it is now the only one: two
//! shops with one number series would sign two papers with one number. The log itself remembers it.

use time::OffsetDateTime;
use uuid::Uuid;

use super::{Refusal, Shop, Work};
use crate::db::{self, Con, Database};
use crate::model::deed::Deed;
use crate::model::ids::BranchId;
use crate::model::person::Actor;

/// Notes in every branch that it came from a backup made at `made_at`.
pub async fn pause(db: &Database, made_at: OffsetDateTime, now: OffsetDateTime) -> Result<(), Refusal> {
    let mut tx = db.write().await?;
    for branch in db::branches::list(&mut tx).await? {
        let deed = Deed::ShopRestored { branch: branch.id, made_at: made_at.unix_timestamp() };
        db::audit::note(&mut tx, &Actor::program(branch.id), now, &deed).await?;
    }
    Ok(tx.commit().await.map_err(db::Error::from)?)
}

/// Whether a branch waits for the answer.
pub async fn is_pending(con: &mut Con, branch: BranchId) -> Result<bool, Refusal> {
    let last = db::audit::last_of(con, branch, ["shop-restored", "only-one-confirmed"]).await?;
    Ok(last.as_deref() == Some("shop-restored"))
}

impl Shop {
    /// A manager says that no other copy of this shop works any more; sending and issuing go on.
    ///
    /// # Errors
    /// [`Refusal::MayNot`] for anybody else; [`Refusal::Ended`] when nothing waits.
    pub async fn confirm_only_one(&self, who: &Actor, key: Option<Uuid>) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let branch = work.who.branch;
            if !work.who.is_manager() {
                return Err(Refusal::MayNot("refused-manager-only"));
            }
            if !is_pending(&mut work, branch).await? {
                return Err(Refusal::Ended("refused-not-restored"));
            }
            work.done(Deed::OnlyOneConfirmed { branch }, ()).await
        })
        .await
    }
}
