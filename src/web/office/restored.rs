//! After a backup was brought back: a manager says that no other copy of the shop works any more.

use axum::extract::State;

use crate::web::app::App;
use crate::web::form::{Form, Typed};
use crate::web::page::see_other;
use crate::web::visitor::Visitor;
use crate::web::{Answer, path};

/// `POST /office/only-one`: sending and issuing go on.
pub async fn confirm(State(app): State<App>, who: Visitor, typed: Typed) -> Answer {
    let form = Form::from(typed);
    app.shop.confirm_only_one(&who.actor, form.key()).await?;
    see_other(path::OFFICE)
}
