//! Hands waiting messages to the post, one at a time, and has the shop write down what became of each.

use std::num::NonZeroU32;

use crate::clock::Zone;
use crate::db;
use crate::mail::Post;
use crate::model::branch::Branch;
use crate::shop::outbox::{PAUSED_SETTING, is_working_time};
use crate::shop::{Refusal, Shop};

/// In one go; the rest waits for the next, so that a stop is heard between.
const MOST_AT_ONCE: NonZeroU32 = NonZeroU32::MIN.saturating_add(49);

/// Sends what is ready in a branch. Returns how many attempts were made.
pub async fn deliver(shop: &Shop, branch: &Branch, post: &Post, public_url: Option<&str>) -> Result<u32, Refusal> {
    let paused = db::settings::find(&mut *shop.db.read().await?, branch.id, PAUSED_SETTING).await?;
    if paused.is_some_and(|paused| paused.value == "yes") {
        return Ok(0);
    }
    let zone = Zone::named(&branch.time_zone).unwrap_or_else(|_| Zone::utc());
    let mut attempts = 0;
    while attempts < MOST_AT_ONCE.get() {
        let is_open = is_working_time(&zone, shop.clock.now());
        let Some(claimed) = shop.claim_message(branch.id, is_open, public_url).await? else { break };
        let delivery = post.send(&claimed.message, &branch.name, &branch.mail, claimed.stop_url.as_deref()).await;
        let chance = rand::random::<f64>();
        let state = shop.record_delivery(branch.id, &claimed, delivery, chance).await?;
        tracing::info!(message = %claimed.message.id, %state, attempt = claimed.message.attempts, "mail");
        attempts += 1;
    }
    Ok(attempts)
}
