//! Notes are written about customers, vehicles and jobs.

use uuid::Uuid;

use super::{Refusal, Shop, Work};
use crate::db;
use crate::model::deed::Deed;
use crate::model::ids::NoteId;
use crate::model::note::About;
use crate::model::person::Actor;

impl Shop {
    /// Writes a note; nobody changes it afterwards.
    pub async fn write_note(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        about: About,
        text: String,
    ) -> Result<NoteId, Refusal> {
        let by = who.person.ok_or(Refusal::MayNot("refused-needs-person"))?;
        self.deed(who, key, async move |mut work: Work| {
            let (branch, now, id) = (work.who.branch, work.now, NoteId::new());
            let is_here = match about {
                About::Customer(id) => db::customers::find(&mut work, branch, id).await?.is_some(),
                About::Vehicle(id) => db::vehicles::find(&mut work, branch, id).await?.is_some(),
                About::Job(id) => db::notes::has_job(&mut work, branch, id).await?,
            };
            if !is_here {
                return Err(Refusal::Gone);
            }
            db::notes::insert(&mut work, branch, id, about, &text, by, now).await?;
            let (customer, vehicle, job) = about.ids();
            work.done(Deed::NoteWritten { note: id, customer, vehicle, job }, id).await
        })
        .await
    }
}
