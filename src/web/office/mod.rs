//! Office: the screens of whoever answers for the shop.

use askama::Template;
use axum::extract::State;

use super::Answer;
use super::app::App;
use super::form::Form;
use super::kit;
use super::page::{Frame, Place, page};
use super::routes::OVERSEERS;
use super::visitor::Visitor;
use crate::shop::restored as from_backup;

pub mod four_eyes;
pub mod keys;
pub mod languages;
pub mod log;
pub mod people;
pub mod person;
pub mod restored;
pub mod shop;
pub mod tablets;

#[derive(Template)]
#[template(path = "office/index.html")]
struct OfficePage {
    frame: Frame,
    is_manager: bool,
    is_overseer: bool,
    /// The shop came from a backup, and nobody said yet that it is the only one.
    is_pending: bool,
    form: Form,
}

/// `GET /office`.
pub async fn show(State(app): State<App>, who: Visitor) -> Answer {
    let is_pending = from_backup::is_pending(&mut *app.read().await?, who.branch.id).await?;
    page(OfficePage {
        frame: who.frame().at(Place::Office),
        is_manager: who.actor.is_manager(),
        is_overseer: OVERSEERS.lets(&who.actor),
        is_pending,
        form: Form::blank().scoped("only-one"),
    })
}
