//! The outbox: every message that the shop owes somebody, where it stands, and what a person can do about it.

use askama::Template;
use axum::extract::{Path, Query, State};
use serde::Deserialize;

use super::app::{App, words_for};
use super::form::{Form, Typed, Wrong};
use super::job::papers::pdf;
use super::kit::{self, Cell, Column, Empty, Mark, Row, Table};
use super::page::{Frame, Place, page, retry, see_other};
use super::visitor::Visitor;
use super::{Answer, Error, path, routes};
use crate::db;
use crate::model::Coded;
use crate::model::branch::Branch;
use crate::model::ids::MessageId;
use crate::model::message::{HeldBecause, LINK_MARK, Message, MessageKind, MessageState, STOP_MARK};
use crate::shop::duties::{LEADS, LEADS_SETTING, read_leads};
use crate::shop::outbox::PAUSED_SETTING;
use crate::words::Words;

/// So many of one state are listed; older ones are found at their customer.
const MOST: i64 = 300;

/// Which state is asked for; as without: waiting.
#[derive(Debug, Default, Deserialize)]
#[serde(default)]
pub struct Asked {
    state: String,
}

struct View {
    href: String,
    label: String,
    count: i64,
    is_here: bool,
}

#[derive(Template)]
#[template(path = "outbox/list.html")]
struct ListPage {
    frame: Frame,
    views: Vec<View>,
    table: Option<Table>,
    empty: Empty,
    held_run: i64,
    is_manager: bool,
    is_paused: bool,
    form: Form,
}

impl ListPage {
    async fn of(app: &App, who: &Visitor, state: MessageState, form: Form) -> Result<Self, Error> {
        let mut con = app.read().await?;
        let branch = who.branch.id;
        let tally = db::outbox::tally(&mut con, branch).await?;
        let messages = db::outbox::list(&mut con, branch, state, MOST).await?;
        let held = db::outbox::list(&mut con, branch, MessageState::Held, MOST).await?;
        let is_paused = is_paused(&mut con, who).await?;
        let w = who.words();
        let view = |one: &MessageState| View {
            href: format!("{}?state={one}", path::OUTBOX),
            label: w.t(format!("outbox-{one}")),
            count: tally.iter().find(|tally| tally.state == *one).map_or(0, |tally| tally.count),
            is_here: *one == state,
        };
        let columns = ["outbox-subject", "outbox-to", "outbox-when", "outbox-state"];
        let columns = columns.iter().map(|key| Column::text(w.t(key))).collect();
        let rows: Vec<Row> = messages.iter().map(|message| row(who, message)).collect();
        Ok(Self {
            views: MessageState::ALL.iter().map(view).collect(),
            table: (!rows.is_empty()).then(|| Table { w, caption: w.t("outbox-title"), columns, rows }),
            empty: Empty { sentence: w.t("outbox-empty"), act: None },
            held_run: count(held.iter().filter(|one| one.held_because == HeldBecause::Many)),
            is_manager: who.actor.is_manager(),
            is_paused,
            form,
            frame: who.frame().at(Place::Outbox),
        })
    }
}

fn count<T>(things: impl Iterator<Item = T>) -> i64 {
    i64::try_from(things.count()).unwrap_or(i64::MAX)
}

async fn is_paused(con: &mut db::Con, who: &Visitor) -> Result<bool, Error> {
    let set = db::settings::find(con, who.branch.id, PAUSED_SETTING).await?;
    Ok(set.is_some_and(|set| set.value == "yes"))
}

async fn settings_form(app: &App, who: &Visitor) -> Result<Form, Error> {
    let mut con = app.read().await?;
    let leads = db::settings::find(&mut con, who.branch.id, LEADS_SETTING).await?;
    let usual = || LEADS.map(|days| days.to_string()).join(", ");
    let form = Form::blank().scoped("outbox").with("reminder_leads", leads.map_or_else(usual, |set| set.value));
    Ok(if is_paused(&mut con, who).await? { form.with("sending_paused", "yes") } else { form })
}

/// An address, or what may be seen of it.
fn recipient(who: &Visitor, w: &Words, message: &Message) -> String {
    if message.recipient.is_empty() {
        w.t("outbox-by-post")
    } else if who.actor.sees_contacts {
        message.recipient.clone()
    } else {
        w.t("outbox-address-hidden")
    }
}

fn row(who: &Visitor, message: &Message) -> Row {
    let w = who.words();
    let when = message.sent_at.unwrap_or(message.made_at);
    let state = Cell::new(w.t(format!("message-state-{}", message.state)));
    let state = match message.state {
        MessageState::Sent => state.marked(Mark::Met),
        MessageState::Unknown => state.marked(Mark::Undecided).with_second(short(&message.last_error)),
        MessageState::Held => state.with_second(w.t(format!("held-because-{}", message.held_because))),
        MessageState::Letter if message.sent_at.is_some() => Cell::new(w.t("outbox-posted")).marked(Mark::Met),
        _ if !message.last_error.is_empty() => state.with_second(short(&message.last_error)),
        _ => state,
    };
    vec![
        Cell::link(&message.subject, path::message(message.id)).with_second(w.t(format!(
            "{}-{}",
            MessageKind::LIST,
            message.kind
        ))),
        Cell::new(recipient(who, &w, message)),
        Cell::new(w.short_date_time(who.zone.local(when))),
        state,
    ]
}

fn short(text: &str) -> String {
    let mut cut: String = text.chars().take(80).collect();
    if cut.len() < text.len() {
        cut.push('…');
    }
    cut
}

/// `GET /outbox`.
pub async fn list(State(app): State<App>, who: Visitor, Query(asked): Query<Asked>) -> Answer {
    let state = MessageState::from_code(&asked.state).unwrap_or(MessageState::Waiting);
    let form = settings_form(&app, &who).await?;
    page(ListPage::of(&app, &who, state, form).await?)
}

/// `POST /outbox/held-run`: everything that a large run had held goes.
pub async fn release_run(State(app): State<App>, who: Visitor, typed: Typed) -> Answer {
    app.shop.release_messages(&who.actor, Form::from(typed).key()).await?;
    see_other(path::OUTBOX)
}

/// `POST /outbox/settings`: lead times, and whether anything is sent at all.
pub async fn settings(State(app): State<App>, who: Visitor, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("outbox");
    let leads = form.text("reminder_leads", 80);
    if leads.as_deref().is_some_and(|leads| read_leads(leads).is_none()) {
        form.fail("reminder_leads", Wrong::Rule("wrong-leads", vec![]));
    }
    let paused = if form.tick("sending_paused") { "yes" } else { "no" };
    let (Some(leads), Some(())) = (leads, form.sound()) else {
        return retry(ListPage::of(&app, &who, MessageState::Waiting, form).await?);
    };
    app.shop.change_setting(&who.actor, None, LEADS_SETTING, &leads).await?;
    app.shop.change_setting(&who.actor, None, PAUSED_SETTING, paused).await?;
    see_other(path::OUTBOX)
}

#[derive(Template)]
#[template(path = "outbox/show.html")]
struct MessagePage {
    frame: Frame,
    message: Message,
    state: String,
    recipient: String,
    when: String,
    not_before: String,
    facts: Vec<String>,
    text: String,
    html: String,
    /// Code and words of what can be done now.
    acts: Vec<(&'static str, String)>,
    form: Form,
}

/// What a person can do with a message as it stands.
fn acts(message: &Message) -> &'static [&'static str] {
    use MessageState::{Dropped, Failed, Held, Letter, Sending, Sent, Unknown, Waiting};
    match message.state {
        Waiting => &["hold", "letter", "drop"],
        Held => &["release", "letter", "drop"],
        Failed | Unknown => &["retry", "letter", "hold", "drop"],
        Letter if message.sent_at.is_none() => &["posted", "hold", "drop"],
        Letter | Sending | Sent | Dropped => &[],
    }
}

/// `GET /outbox/{id}`.
pub async fn show(State(app): State<App>, who: Visitor, Path(id): Path<MessageId>) -> Answer {
    let message = db::outbox::find(&mut *app.read().await?, who.branch.id, id).await?.ok_or(Error::NotFound)?;
    let w = who.words();
    let moment = |at| w.date_time(who.zone.local(at));
    let in_words =
        |text: &str| text.replace(LINK_MARK, &w.t("outbox-link-later")).replace(STOP_MARK, &w.t("outbox-link-later"));
    let mut facts = vec![w.tv("outbox-made", &[("when", moment(message.made_at).into())])];
    if let Some(at) = message.sent_at {
        facts.push(w.tv("outbox-sent-at", &[("when", moment(at).into())]));
    }
    if message.attempts > 0 {
        facts.push(w.tn("outbox-attempts", message.attempts));
    }
    let may = routes::DESK.lets(&who.actor);
    let acts = acts(&message).iter().filter(|_| may).map(|act| (*act, w.t(format!("outbox-act-{act}"))));
    page(MessagePage {
        state: w.t(format!("message-state-{}", message.state)),
        recipient: recipient(&who, &w, &message),
        when: moment(message.sent_at.unwrap_or(message.made_at)),
        not_before: moment(message.not_before),
        facts,
        text: in_words(&message.body_text),
        html: in_words(&message.body_html),
        acts: acts.collect(),
        form: Form::blank(),
        frame: who.frame().at(Place::Outbox),
        message,
    })
}

/// `POST /outbox/{id}`: the act that was chosen.
pub async fn act(State(app): State<App>, who: Visitor, Path(id): Path<MessageId>, typed: Typed) -> Answer {
    let form = Form::from(typed);
    let (shop, actor, key) = (&app.shop, &who.actor, form.key());
    match form.value("act") {
        "hold" => shop.hold_message(actor, key, id).await?,
        "release" => shop.release_message(actor, key, id).await?,
        "retry" => shop.retry_message(actor, key, id).await?,
        "letter" => shop.post_instead(actor, key, id).await?,
        "posted" => shop.letter_posted(actor, key, id).await?,
        "drop" => shop.drop_message(actor, key, id).await?,
        _ => return Err(Error::Unreadable("no such act".to_owned())),
    }
    see_other(path::message(id))
}

#[derive(Template)]
#[template(path = "outbox/letter.html")]
struct LetterPage {
    frame: Frame,
    /// The words of the letter; the frame has those of the reader.
    w: Words,
    branch: Branch,
    name: String,
    /// The spelling in Latin letters, where there is one.
    name_in_latin: String,
    address: String,
    day: String,
    subject: String,
    paragraphs: Vec<String>,
    /// Only a reminder can be answered with "no more".
    is_reminder: bool,
    pdf: String,
}

/// `GET /outbox/{id}/letter`: the message as a sheet to print and post, with a paper answer beneath.
pub async fn letter(State(app): State<App>, who: Visitor, Path(id): Path<MessageId>) -> Answer {
    let mut con = app.read().await?;
    let message = db::outbox::find(&mut con, who.branch.id, id).await?.ok_or(Error::NotFound)?;
    let to = match message.customer_id {
        Some(customer) => db::customers::find(&mut con, who.branch.id, customer).await?,
        None => None,
    };
    let to = to.ok_or(Error::NotFound)?;
    let w = words_for(&message.language, &who.branch);
    page(LetterPage {
        day: w.date(app.shop.clock.today(&who.zone)),
        subject: message.subject.clone(),
        is_reminder: message.kind == MessageKind::Reminder,
        pdf: format!("{}/letter/pdf", path::message(id)),
        paragraphs: message.paragraphs_on_paper().map(str::to_owned).collect(),
        branch: who.branch.clone(),
        name: to.name,
        name_in_latin: to.name_in_latin,
        address: to.address,
        w,
        frame: who.frame().at(Place::Outbox),
    })
}

/// `GET /outbox/{id}/letter/pdf`: the same as a PDF, on the shop's paper.
pub async fn letter_pdf(State(app): State<App>, who: Visitor, Path(id): Path<MessageId>) -> Answer {
    let (name, bytes) = app.shop.letter_pdf(&who.actor, id, app.shop.clock.now()).await?;
    Ok(pdf(&name, bytes))
}
