//! Office: the screens of whoever answers for the shop.

use askama::Template;

use super::Answer;
use super::page::{Frame, Place, page};
use super::routes::OVERSEERS;
use super::visitor::Visitor;

pub mod log;
pub mod people;
pub mod person;
pub mod shop;
pub mod tablets;

#[derive(Template)]
#[template(path = "office/index.html")]
struct OfficePage {
    frame: Frame,
    is_manager: bool,
    is_overseer: bool,
}

/// `GET /office`.
pub async fn show(who: Visitor) -> Answer {
    let is_overseer = OVERSEERS.lets(&who.actor);
    page(OfficePage { frame: who.frame().at(Place::Office), is_manager: who.actor.is_manager(), is_overseer })
}
