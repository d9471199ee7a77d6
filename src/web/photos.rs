//! Photos and files of a job, each in its named slot.

use askama::Template;
use axum::extract::{Path, State};

use super::app::App;
use super::attachments;
use super::form::{Form, Typed};
use super::kit;
use super::page::{Frame, Place, page, retry, see_other};
use super::visitor::Visitor;
use super::{Answer, Error, instruments, path};
use crate::attachments::{Kind, Takes};
use crate::db;
use crate::model::attachment::Attachment;
use crate::model::ids::JobId;
use crate::model::job::Job;
use crate::shop::attachments::FilePlace;

/// The slots of a job's files. Words are behind `slot-photo-`.
pub const SLOTS: [&str; 8] =
    ["odometer", "vin-plate", "container-plate", "deficiency", "photo", "document", CONTROL_UNIT_FILE, "signature"];
/// What the control unit was set to, as its own tool saved it.
const CONTROL_UNIT_FILE: &str = "control-unit-file";
/// Most files sent into a slot at once.
const MOST_AT_ONCE: usize = 12;

/// A kept file as a page shows it.
#[derive(Debug, Clone)]
pub struct Shown {
    pub href: String,
    pub name: String,
    /// First digits of the SHA-256 of a file that nothing else shows.
    pub checksum: String,
    /// When it was taken, or else when it came.
    pub when: String,
    /// Every browser can show it as a picture.
    pub is_picture: bool,
}

/// One slot: what is in it, and the form that adds to it.
#[derive(Template)]
#[template(path = "files/slot.html")]
pub struct SlotView {
    frame: Frame,
    form: Form,
    slot: &'static str,
    action: String,
    shown: Vec<Shown>,
    may_add: bool,
}

impl askama::filters::HtmlSafe for SlotView {}

impl SlotView {
    /// The slot with its files; `form` carries what went wrong when something was sent.
    pub fn new(who: &Visitor, job: &Job, slot: &'static str, files: &[Attachment], form: Form) -> Self {
        let frame = who.frame();
        let shown = |one: &Attachment| Shown {
            href: path::attachment(one.id),
            name: one.name.clone(),
            checksum: if one.slot == CONTROL_UNIT_FILE { one.sha256.clone() } else { String::new() },
            when: when(who, &frame, one),
            is_picture: Kind::from_media_type(&one.media_type).is_some_and(Kind::is_shown_by_browsers),
        };
        Self {
            shown: files.iter().filter(|one| one.slot == slot).map(shown).collect(),
            action: path::job_photo_slot(job.id, slot),
            may_add: job.state.is_live() && instruments::may_change(&who.actor),
            slot,
            form,
            frame,
        }
    }

    fn title(&self) -> String {
        self.frame.t(format!("slot-photo-{}", self.slot))
    }

    fn field(&self) -> String {
        field(self.slot)
    }

    fn is_signature(&self) -> bool {
        self.slot == "signature"
    }

    fn takes(&self) -> Takes {
        takes(self.slot)
    }
}

fn when(who: &Visitor, frame: &Frame, one: &Attachment) -> String {
    let (key, at) = match one.captured_at {
        Some(at) => ("file-taken", at),
        None => ("file-came", one.recorded_at),
    };
    frame.w.tv(key, &[("at", frame.w.date_time(who.zone.local(at)).into())])
}

fn takes(slot: &str) -> Takes {
    match slot {
        "document" | "signature" => Takes::Papers,
        CONTROL_UNIT_FILE => Takes::Opaque,
        _ => Takes::Photos,
    }
}

#[derive(Template)]
#[template(path = "files/photos.html")]
struct PhotosPage {
    frame: Frame,
    number: String,
    job_href: String,
    /// The form in which something went wrong, for the list at the top.
    form: Form,
    slots: Vec<SlotView>,
}

async fn page_of(app: &App, who: &Visitor, id: JobId, sent: Option<(&str, Form)>) -> Result<PhotosPage, Error> {
    let mut con = app.read().await?;
    let job = db::jobs::find(&mut con, who.branch.id, id).await?.ok_or(Error::NotFound)?;
    let files = db::attachments::list(&mut con, id).await?;
    let form_of = |slot: &str| match &sent {
        Some((sent_to, form)) if *sent_to == slot => form.clone(),
        _ => Form::blank(),
    };
    Ok(PhotosPage {
        frame: who.frame().at(Place::Jobs),
        number: job.number.clone(),
        job_href: path::job(id),
        slots: SLOTS.map(|slot| SlotView::new(who, &job, slot, &files, form_of(slot))).into(),
        form: sent.map(|(_, form)| form).unwrap_or_default(),
    })
}

/// `GET /jobs/{id}/photos`.
pub async fn list(State(app): State<App>, who: Visitor, Path(id): Path<JobId>) -> Answer {
    page(page_of(&app, &who, id, None).await?)
}

/// `POST /jobs/{id}/photos/{slot}`: keeps the good ones, and says of each other one why it is not kept.
pub async fn create(
    State(app): State<App>,
    who: Visitor,
    Path((id, slot)): Path<(JobId, String)>,
    typed: Typed,
) -> Answer {
    let slot = SLOTS.into_iter().find(|known| *known == slot).ok_or(Error::NotFound)?;
    let mut form = Form::from(typed);
    let field = field(slot);
    let files = match slot {
        "signature" => attachments::sent_signature(&mut form, &field).into_iter().collect(),
        _ => attachments::sent(&mut form, &field, MOST_AT_ONCE),
    };
    if files.is_empty() && form.sound().is_some() {
        form.fail(&field, super::form::Wrong::FileMissing);
    }
    let (place, takes) = (FilePlace::of_job(id, slot), takes(slot));
    let sorted = app.shop.keep_files(&who.actor, form.key(), place, takes, files).await?;
    attachments::note_unfit(&mut form, &who.frame().w, &field, takes, &sorted);
    if form.sound().is_some() {
        let back = form.value("back");
        let there = format!("{}#{slot}", path::job_photos(id));
        return see_other(if back.is_empty() { &there } else { path::inside(back) });
    }
    // The key is spent on the files that were kept: what is sent next is something else.
    form.set("key", "");
    retry(page_of(&app, &who, id, Some((slot, form))).await?)
}

/// The field of a slot's files; each slot on a page needs a name of its own.
fn field(slot: &str) -> String {
    format!("file_{}", slot.replace('-', "_"))
}
