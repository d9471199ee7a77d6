//! What happens by itself while the program serves: reminders are written, mail goes out, old rows are forgotten.
//!
//! Each round may be cut off anywhere and done again: what it did is in the store, and nothing else remembers it. The
//! clock is the shop's own; only the pause between two rounds is real time.

pub mod deliver;
pub mod remind;
pub mod tidy;

use std::time::Duration;

use tokio::sync::watch;

use crate::db;
use crate::mail::Post;
use crate::shop::{Refusal, Shop, restored};

/// The pause between two rounds.
const PAUSE: Duration = Duration::from_secs(30);
/// Reminders are chosen and old rows forgotten on every so many rounds: each hour.
const SELDOM: u64 = 120;

/// All that the rounds need.
#[derive(Debug, Clone)]
pub struct Rounds {
    pub shop: Shop,
    /// `None`: nothing is sent, messages wait.
    pub post: Option<Post>,
    /// Where the outside reaches us, without a slash at the end.
    pub public_url: Option<String>,
    pub is_demo: bool,
}

impl Rounds {
    /// Goes round until `stop` turns true or its sender is gone. A round that fails is logged, and tried again next time.
    pub async fn run(self, mut stop: watch::Receiver<bool>) {
        for number in 0_u64.. {
            if let Err(error) = self.once(number.is_multiple_of(SELDOM)).await {
                tracing::error!(%error, "a round failed");
            }
            tokio::select! {
                () = tokio::time::sleep(PAUSE) => {}
                changed = stop.changed() => if changed.is_err() || *stop.borrow() { return },
            }
        }
    }

    /// One round over every branch; `seldom` includes what an hour's pace is enough for.
    pub async fn once(&self, seldom: bool) -> Result<(), Refusal> {
        let branches = db::branches::list(&mut *self.shop.db.read().await?).await?;
        for branch in &branches {
            if restored::is_pending(&mut *self.shop.db.read().await?, branch.id).await? {
                tracing::warn!(branch = %branch.id, "came from a backup: nothing is sent until a manager answers in Office");
                continue;
            }
            if seldom {
                let written = remind::remind(&self.shop, branch, self.public_url.is_some(), self.is_demo).await?;
                if written.mails + written.letters > 0 {
                    tracing::info!(branch = %branch.id, ?written, "reminders written");
                }
            }
            if let Some(post) = &self.post {
                deliver::deliver(&self.shop, branch, post, self.public_url.as_deref()).await?;
            }
        }
        if seldom {
            tidy::tidy(&self.shop).await?;
        }
        Ok(())
    }
}
