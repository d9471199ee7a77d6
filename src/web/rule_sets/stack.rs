//! Which rule sets a branch stacks: those of its country, or those that the manager chose; and whether a vehicle that is
//! registered elsewhere brings the set of its own country along.

use askama::Template;
use axum::extract::State;

use crate::db;
use crate::db::rule_books::{SHOP, Stack, names_of, set_on, stack};
use crate::rules::{BASE, EMBEDDED};
use crate::shop::rule_files::NewStack;
use crate::web::app::App;
use crate::web::error::beside;
use crate::web::form::{Form, Typed, Wrong};
use crate::web::kit::{self, Choice};
use crate::web::page::{Frame, Place, page, retry, see_other};
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};

#[derive(Template)]
#[template(path = "rules/stack.html")]
struct StackPage {
    frame: Frame,
    form: Form,
    /// By country, or by choice.
    ways: Vec<Choice>,
    sets: Vec<Choice>,
}

async fn view(app: &App, who: &Visitor, form: Form) -> Result<StackPage, Error> {
    let frame = who.frame().at(Place::Office);
    let w = frame.w;
    let mut con = app.read().await?;
    let today = app.shop.clock.today(&who.zone);
    let country = db::branches::find(&mut con, who.branch.id).await?.map(|branch| branch.country).unwrap_or_default();
    let mut sets = Vec::new();
    let mut titles = Vec::new();
    let of_country = names_of(&country);
    for (name, _) in EMBEDDED.iter().filter(|(name, _)| *name != SHOP) {
        let set = set_on(&mut con, who.branch.id, name, today).await?;
        if of_country.iter().any(|one| one == name) {
            titles.push(set.title.clone());
        }
        let mut choice = Choice::new(*name, set.title);
        if *name == BASE[0] {
            choice.hint = w.t("rules-stack-base");
        }
        sets.push(choice);
    }
    let mut ways = kit::choices(&w, "rules-stack", ["country", "chosen"]);
    if let Some(by_country) = ways.first_mut() {
        by_country.hint =
            w.tv("rules-stack-country-now", &[("country", country.into()), ("sets", titles.join(", ").into())]);
    }
    Ok(StackPage { frame, form: form.scoped("rules"), ways, sets })
}

/// `GET /office/rules/stack`.
pub async fn edit(State(app): State<App>, who: Visitor) -> Answer {
    let Stack { names, is_chosen, by_vehicle } = stack(&mut *app.read().await?, who.branch.id).await?;
    let mut form = Form::blank()
        .with("stack_by", if is_chosen { "chosen" } else { "country" })
        .with("by_vehicle", if by_vehicle { "yes" } else { "no" });
    for name in names {
        form.add("rule_sets", name);
    }
    page(view(&app, &who, form).await?)
}

/// `POST /office/rules/stack`.
pub async fn update(State(app): State<App>, who: Visitor, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("rules");
    let by_vehicle = form.yes_no("by_vehicle");
    let ticked: Vec<String> = form.ticks("rule_sets");
    let names = match form.value("stack_by") {
        "country" => None,
        "chosen" => Some(ticked),
        _ => {
            form.fail("stack_by", Wrong::NotAChoice);
            None
        }
    };
    if names.as_ref().is_some_and(|names| !names.iter().any(|name| name == BASE[0])) {
        form.fail("rule_sets", Wrong::Rule("wrong-rules-without-base", vec![]));
    }
    let (Some(()), Some(by_vehicle)) = (form.sound(), by_vehicle) else {
        return retry(view(&app, &who, form).await?);
    };
    match app.shop.choose_rule_sets(&who.actor, form.key(), NewStack { names, by_vehicle }).await {
        Ok(()) => see_other(path::RULES),
        Err(refusal) => {
            beside(&mut form, refusal)?;
            retry(view(&app, &who, form).await?)
        }
    }
}
