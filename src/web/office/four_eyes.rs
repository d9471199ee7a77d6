//! Four eyes: whether somebody may sign for what they measured themselves, and let it pass.

use axum::extract::State;

use crate::db::{self, Con};
use crate::model::ids::BranchId;
use crate::shop::waivers::FOUR_EYES;
use crate::web::app::App;
use crate::web::form::{Form, Typed};
use crate::web::page::see_other;
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};

/// Whether the branch asks for four eyes.
pub async fn is_asked(con: &mut Con, branch: BranchId) -> Result<bool, Error> {
    Ok(db::settings::find(con, branch, FOUR_EYES).await?.is_some_and(|set| set.value == "yes"))
}

/// `POST /office/four-eyes`: asked for, or not any more.
pub async fn update(State(app): State<App>, who: Visitor, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("shop");
    if let Some(yes) = form.yes_no("four_eyes") {
        let to = if yes { "yes" } else { "no" };
        app.shop.change_setting(&who.actor, form.key(), FOUR_EYES, to).await?;
    }
    see_other(path::SHOP)
}
