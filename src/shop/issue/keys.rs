//! Keys over the years: a new one, vouched for by the old; one that leaked, not trusted after a day.

use time::OffsetDateTime;
use uuid::Uuid;

use crate::db;
use crate::model::deed::Deed;
use crate::model::person::Actor;
use crate::seal::{Signer, key_file};
use crate::shop::{Refusal, Shop, Work};

impl Shop {
    /// Id of the key that signs now.
    pub fn public_key_id(&self) -> String {
        self.issuer.signer().key_id()
    }

    /// Begins a new signing key; the old one vouches for it with its last signature. Papers signed before stay as they
    /// are. The caller has proved the manager's secret just before.
    ///
    /// # Errors
    /// [`Refusal::MayNot`] for anybody but a manager; [`Refusal::Broken`] when the key cannot be kept on disk.
    pub async fn begin_key(&self, who: &Actor, key: Option<Uuid>) -> Result<(), Refusal> {
        // No paper is signed while the key changes.
        let _turn = self.issuer.turn.lock().await;
        let mut random = [0_u8; 32];
        rand::fill(&mut random);
        let (old, new) = (self.issuer.signer(), Signer::from_random(&random));
        let introduced = old.introduce(&new, self.clock.now()).map_err(|error| Refusal::Broken(error.to_string()))?;
        let (old_id, new_id) = (old.key_id(), new.key_id());
        let public = (old.public_key_base64(), new.public_key_base64());
        let endorsement =
            String::from_utf8(introduced.to_json()).map_err(|error| Refusal::Broken(error.to_string()))?;
        let begun = self
            .deed(who, key, async move |mut work: Work| {
                if !work.who.is_manager() {
                    return Err(Refusal::MayNot("refused-manager-only"));
                }
                let now = work.now;
                db::signing_keys::insert(&mut work, &old_id, &public.0, now).await?;
                db::signing_keys::insert_introduced(&mut work, &new_id, &public.1, (&old_id, &endorsement), now)
                    .await?;
                let deed = Deed::KeyBegun { key: new_id.clone(), vouched_by: old_id };
                work.done(deed, new_id).await
            })
            .await?;
        // A form sent twice began one key: the first time swapped it already.
        if begun != new.key_id() {
            return Ok(());
        }
        // The store first: should the disk fail now, the old key goes on, and a key nobody signs with harms nobody.
        if let Some(file) = self.issuer.key_file.clone() {
            let kept = new.clone();
            tokio::task::spawn_blocking(move || key_file::replace(&file, &kept))
                .await
                .map_err(|error| Refusal::Broken(error.to_string()))?
                .map_err(|error| Refusal::Broken(format!("the new key cannot be kept: {error}")))?;
        }
        self.issuer.swap(new);
        Ok(())
    }

    /// Marks a key as not trusted after an instant: what it signed later proves nothing. The caller has proved the
    /// manager's secret just before.
    ///
    /// # Errors
    /// [`Refusal::Field`] for the key that signs now: another is begun first; for an instant that is still to come.
    pub async fn distrust_key(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        id: String,
        after: OffsetDateTime,
        reason: String,
    ) -> Result<(), Refusal> {
        let current = self.issuer.signer().key_id();
        self.deed(who, key, async move |mut work: Work| {
            if !work.who.is_manager() {
                return Err(Refusal::MayNot("refused-manager-only"));
            }
            if id == current {
                return Err(Refusal::Field { field: "after", why: "key-signs-now" });
            }
            if after > work.now {
                return Err(Refusal::Field { field: "after", why: "wrong-future" });
            }
            db::signing_keys::distrust(&mut work, &id, after).await?;
            work.done(Deed::KeyDistrusted { key: id, after, reason }, ()).await
        })
        .await
    }
}
