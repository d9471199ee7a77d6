//! The first start: the shop block and its first manager, with the one-time code that the program printed.

use askama::Template;
use axum::extract::State;

use super::app::App;
use super::error::beside;
use super::form::{Form, Typed};
use super::office::people::read_person;
use super::office::shop::read_branch;
use super::page::{Frame, page, retry, see_other};
use super::sign_in::{new_password, signed_in};
use super::visitor::Origin;
use super::{Answer, path};
use crate::model::branch::PaperSize;
use crate::model::ids::{BranchId, PersonId};
use crate::unit::Currency;
use crate::web::kit;
use crate::web::kit::Choice;

#[derive(Template)]
#[template(path = "set_up.html")]
struct SetUpPage {
    frame: Frame,
    form: Form,
    paper_sizes: Vec<Choice>,
    languages: Vec<Choice>,
}

impl SetUpPage {
    fn new(app: &App, form: Form) -> Self {
        let frame = app.frame();
        Self {
            paper_sizes: kit::coded::<PaperSize>(&frame.w),
            languages: super::language::choices(form.value("language")),
            frame,
            form,
        }
    }
}

/// `GET /set-up`.
pub async fn show(State(app): State<App>) -> Answer {
    if !app.shop.is_new().await? {
        return see_other(path::sign_in("/"));
    }
    let form = Form::blank()
        .scoped("set-up")
        .with("paper_size", PaperSize::A4.to_string())
        .with("language", "en")
        .with("currency", Currency::EUR.code());
    page(SetUpPage::new(&app, form))
}

/// `POST /set-up`.
pub async fn create(State(app): State<App>, Origin(from): Origin, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("set-up");
    let code = form.text("code", 100);
    let branch = read_branch(&mut form, "shop_", BranchId::new(), 1);
    let person = read_person(&mut form, PersonId::new(), 1);
    let password = new_password(&mut form);
    let (Some(code), Some(branch), Some(person), Some(password)) = (code, branch, person, password) else {
        return retry(SetUpPage::new(&app, form));
    };
    let name = person.sign_in_name.clone();
    match app.shop.set_up(&code, branch, person, &password).await {
        Ok(_) => {
            let token = app.shop.sign_in(&name, &password, &from).await?;
            signed_in(&app, &token, path::TODAY)
        }
        Err(refusal) => {
            beside(&mut form, refusal)?;
            retry(SetUpPage::new(&app, form))
        }
    }
}
