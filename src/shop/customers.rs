//! Customers are written down and changed.

use uuid::Uuid;

use super::{Refusal, Shop, Work};
use crate::db;
use crate::model::customer::{Customer, NewCustomer};
use crate::model::deed::Deed;
use crate::model::ids::CustomerId;
use crate::model::person::Actor;

impl Shop {
    /// Writes a customer down.
    ///
    /// # Errors
    /// [`Refusal::Field`] when the mail address is the shop's own: its reminders would come back to us.
    pub async fn add_customer(&self, who: &Actor, key: Option<Uuid>, new: NewCustomer) -> Result<CustomerId, Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let id = insert(&mut work, &new).await?;
            work.done(Deed::CustomerAdded { customer: id }, id).await
        })
        .await
    }

    /// Saves a customer over the version that was opened.
    ///
    /// # Errors
    /// [`Refusal::Stale`] when somebody saved meanwhile; [`Refusal::Field`] as for a new one.
    pub async fn change_customer(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        id: CustomerId,
        version: i64,
        new: NewCustomer,
    ) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let branch = work.who.branch;
            let before = db::customers::find(&mut work, branch, id).await?.ok_or(Refusal::Gone)?;
            refuse_own_mail(&mut work, &new).await?;
            db::customers::save(&mut work, branch, id, version, &new).await?;
            let changed = changes(&before, &new);
            work.done(Deed::CustomerChanged { customer: id, changed }, ()).await
        })
        .await
    }
}

/// Writes a customer down inside a deed; its audit line is the deed's.
pub(super) async fn insert(work: &mut Work, new: &NewCustomer) -> Result<CustomerId, Refusal> {
    refuse_own_mail(work, new).await?;
    let (branch, now, id) = (work.who.branch, work.now, CustomerId::new());
    db::customers::insert(work, branch, id, new, now).await?;
    Ok(id)
}

async fn refuse_own_mail(work: &mut Work, new: &NewCustomer) -> Result<(), Refusal> {
    let branch = work.who.branch;
    let own = db::branches::find(work, branch).await?.ok_or(Refusal::Gone)?.mail;
    if !new.mail.is_empty() && own.eq_ignore_ascii_case(&new.mail) {
        return Err(Refusal::Field { field: "mail", why: "wrong-own-mail" });
    }
    Ok(())
}

fn changes(old: &Customer, new: &NewCustomer) -> Vec<String> {
    let differs = [
        ("name", old.name != new.name),
        ("name_in_latin", old.name_in_latin != new.name_in_latin),
        ("address", old.address != new.address),
        ("phone", old.phone != new.phone),
        ("mail", old.mail != new.mail),
        ("language", old.language != new.language),
        ("reminder_basis", old.reminder_basis != new.reminder_basis),
        ("reminder_basis_on", old.reminder_basis_on != new.reminder_basis_on),
    ];
    differs.iter().filter(|(_, differs)| *differs).map(|(name, _)| (*name).to_owned()).collect()
}
