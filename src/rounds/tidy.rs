//! Forgets what nobody needs any more: sessions that ended, codes that were spent or are late, keys of forms sent long
//! ago, failed tries that have been quiet, files that stopped half way.

use time::Duration;

use crate::db;
use crate::shop::{Refusal, Shop};

/// A page that was open longer is not sent again.
const FORMS_DAYS: i64 = 7;
/// Ended sessions are shown to their owner for so long.
const SESSIONS_DAYS: i64 = 30;
/// Failed tries are remembered for so long.
const FAILURES_DAYS: i64 = 2;
/// No file comes for so long; what was still coming when the machine stopped is older.
const INCOMING_DAYS: i64 = 1;

/// Tidies the store. Returns how many rows and half files went.
pub async fn tidy(shop: &Shop) -> Result<u64, Refusal> {
    let now = shop.clock.now();
    let mut tx = shop.db.write().await?;
    let mut gone = db::sends::forget(&mut tx, now - Duration::days(FORMS_DAYS)).await?;
    gone += db::sessions::forget_quiet_failures(&mut tx, now - Duration::days(FAILURES_DAYS)).await?;
    gone += db::sessions::forget_ended(&mut tx, now - Duration::days(SESSIONS_DAYS)).await?;
    gone += db::sessions::forget_codes(&mut tx, now).await?;
    tx.commit().await.map_err(db::Error::from)?;
    gone += shop.forget_incoming_files(now - Duration::days(INCOMING_DAYS)).await?;
    Ok(gone)
}
