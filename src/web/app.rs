//! What every handler is given: the shop and how it is reached.

use std::sync::Arc;

use crate::config::Config;
use crate::db::{self, Reading};
use crate::model::branch::Branch;
use crate::shop::Shop;
use crate::web::page::Frame;
use crate::words::{Language, Words};

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

    /// What stands around a page that nobody is signed in to.
    pub fn frame(&self) -> Frame {
        self.frame_of(None, Words::default())
    }

    pub(super) fn frame_of(&self, branch: Option<&Branch>, w: Words) -> Frame {
        Frame {
            w,
            shop_name: branch.map(|branch| branch.name.clone()).unwrap_or_default(),
            is_demo: self.config.is_demo,
            is_insecure_lan: self.config.insecure_lan,
            ..Frame::default()
        }
    }
}

/// The words in which a customer of this branch is written to.
pub(super) fn words_for(tag: &str, branch: &Branch) -> Words {
    Words::for_customer([tag, &branch.language])
}

/// The words of a language tag; those of the default when the interface does not speak it.
pub(super) fn words(tag: &str) -> Words {
    Words::new(Language::from_tag(tag).unwrap_or_default())
}
