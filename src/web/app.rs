//! What every handler is given: the shop and how it is reached.

use std::sync::Arc;

use crate::config::Config;
use crate::db::{self, Reading};
use crate::shop::Shop;

/// The state of the web: cheap to copy, one per server.
#[derive(Debug, Clone)]
pub struct App {
    pub shop: Shop,
    pub config: Arc<Config>,
}

impl App {
    /// A connection for reading; a `&mut` to it goes where `db` wants a `&mut Con`.
    pub async fn read(&self) -> db::Result<Reading> {
        self.shop.db.read().await
    }
}
