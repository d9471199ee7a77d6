//! The keys that sign papers: which signs now, which were before, which are no longer trusted.

use askama::Template;
use axum::extract::State;

use crate::db;
use crate::db::signing_keys::SigningKey;
use crate::seal;
use crate::shop::Refusal;
use crate::web::app::App;
use crate::web::error::beside;
use crate::web::form::{Form, Typed};
use crate::web::kit::{self, Cell, Choice, Column, Mark, Table};
use crate::web::page::{Frame, Place, page, retry, see_other};
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};

#[derive(Template)]
#[template(path = "office/keys.html")]
struct KeysPage {
    frame: Frame,
    keys: Table,
    /// Keys that may still be marked as not trusted.
    former: Vec<Choice>,
    begin: Form,
    distrust: Form,
    is_manager: bool,
}

impl KeysPage {
    async fn of(app: &App, who: &Visitor, begin: Form, distrust: Form) -> Result<Self, Error> {
        let keys = db::signing_keys::list(&mut *app.read().await?).await?;
        let (w, now) = (who.frame().w, app.shop.public_key_id());
        let day = |at| w.date_time(who.zone.local(at));
        let row = |key: &SigningKey| {
            let (mark, stands) = match key.distrusted_after {
                Some(after) => (Mark::Stops, w.tv("keys-distrusted", &[("after", day(after).into())])),
                None if key.id == now => (Mark::Met, w.t("keys-signs-now")),
                None => (Mark::NotApplicable, w.t("keys-former")),
            };
            let vouched = key.signed_by.as_deref().map_or_else(|| w.t("keys-first"), seal::fingerprint);
            vec![
                Cell::new(seal::fingerprint(&key.id)),
                Cell::new(day(key.in_force_from)),
                Cell::new(vouched),
                Cell::new(stands).marked(mark),
            ]
        };
        let columns =
            ["key", "since", "vouched", "stands"].map(|name| Column::text(w.t(format!("keys-column-{name}"))));
        let former = keys.iter().filter(|key| key.id != now && key.distrusted_after.is_none());
        Ok(Self {
            former: former.map(|key| Choice::new(&key.id, seal::fingerprint(&key.id))).collect(),
            keys: Table {
                w,
                caption: w.t("keys-title"),
                columns: columns.into(),
                rows: keys.iter().map(row).collect(),
            },
            begin,
            distrust,
            is_manager: who.actor.is_manager(),
            frame: who.frame().at(Place::Office),
        })
    }
}

fn blank() -> (Form, Form) {
    (Form::blank().scoped("key-begin"), Form::blank().scoped("key-distrust"))
}

/// `GET /office/keys`.
pub async fn list(State(app): State<App>, who: Visitor) -> Answer {
    let (begin, distrust) = blank();
    page(KeysPage::of(&app, &who, begin, distrust).await?)
}

/// `POST /office/keys`: a new key, vouched for by the one before.
pub async fn create(State(app): State<App>, who: Visitor, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("key-begin");
    let password = form.secret("begin_password", 1, 4096);
    let done = match password {
        Some(password) => match app.shop.prove(who.person.id, &password, &who.from.address).await {
            Ok(()) => app.shop.begin_key(&who.actor, form.key()).await,
            Err(refusal) => Err(of_password(refusal, "begin_password")),
        },
        None => return retry(KeysPage::of(&app, &who, form, blank().1).await?),
    };
    match done {
        Ok(()) => see_other(path::KEYS),
        Err(refusal) => {
            beside(&mut form, refusal)?;
            retry(KeysPage::of(&app, &who, form, blank().1).await?)
        }
    }
}

/// `POST /office/keys/distrust`: what it signs after an instant proves nothing.
pub async fn distrust(State(app): State<App>, who: Visitor, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("key-distrust");
    let id = form.text("distrusted_key", 64);
    let after = form.moment("after", &who.zone);
    let reason = form.text("reason", 400);
    let password = form.secret("distrust_password", 1, 4096);
    let (Some(()), Some(id), Some(after), Some(reason), Some(password)) = (form.sound(), id, after, reason, password)
    else {
        return retry(KeysPage::of(&app, &who, blank().0, form).await?);
    };
    let done = match app.shop.prove(who.person.id, &password, &who.from.address).await {
        Ok(()) => app.shop.distrust_key(&who.actor, form.key(), id, after, reason).await,
        Err(refusal) => Err(of_password(refusal, "distrust_password")),
    };
    match done {
        Ok(()) => see_other(path::KEYS),
        Err(refusal) => {
            beside(&mut form, refusal)?;
            retry(KeysPage::of(&app, &who, blank().0, form).await?)
        }
    }
}

/// The refusal of a wrong password, at the field of this form.
fn of_password(refusal: Refusal, field: &'static str) -> Refusal {
    match refusal {
        Refusal::Field { field: "current_password", why } => Refusal::Field { field, why },
        other => other,
    }
}
