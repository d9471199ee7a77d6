//! The papers of a job: what would be printed, what was issued, what goes home with the owner.

use askama::Template;
use axum::extract::{Path, State};
use axum::http::header;
use axum::response::{IntoResponse, Response};

use super::paper_language::PaperLanguage;
use super::{JobPage, drawn, inspection_said};
use crate::attachments::Kind;
use crate::db;
use crate::model::ids::{JobId, PaperId};
use crate::model::paper::CertificateKind;
use crate::model::stage::Stage;
use crate::rules::inspection::{held_back, may_certify, may_fail};
use crate::seal::standing::Standing;
use crate::shop::Refusal;
use crate::shop::issue::{Found, NewIssue, photo_slots, unprintable};
use crate::web::app::App;
use crate::web::form::{Form, Typed, Wrong};
use crate::web::kit::{self, JobSheet, Mark, Verdict};
use crate::web::page::{Frame, page, retry, see_other};
use crate::web::routes::WORKERS;
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};

/// An issued paper as a line.
#[derive(Debug)]
pub struct Line {
    number: String,
    href: String,
    mark: Mark,
    standing: String,
    issued: String,
    id: PaperId,
    may_be_replaced: bool,
}

/// A slot of photos to be ticked as seen.
#[derive(Debug)]
pub struct PhotoSlot {
    slot: String,
    label: String,
    /// Address, name, and whether every browser can show it as a picture.
    files: Vec<(String, String, bool)>,
}

fn photos(job: &JobPage) -> Vec<PhotoSlot> {
    let of = |slot: String| {
        let files = job.file.attachments.iter().filter(|file| file.slot == slot);
        let shown = files.map(|file| {
            let is_picture = Kind::from_media_type(&file.media_type).is_some_and(Kind::is_shown_by_browsers);
            (path::attachment(file.id), file.name.clone(), is_picture)
        });
        PhotoSlot { label: job.w().t(format!("slot-photo-{slot}")), files: shown.collect(), slot }
    };
    photo_slots(&job.proofs).into_iter().map(of).collect()
}

#[derive(Template)]
#[template(path = "job/papers.html")]
struct PapersPage {
    frame: Frame,
    sheet: JobSheet,
    form: Form,
    issued: Vec<Line>,
    /// Proofs that keep the certificate back.
    open: Vec<(String, String)>,
    may_issue: bool,
    may_sign: bool,
    action: String,
    base: String,
    /// The job ends with a certificate; else with its test record.
    has_certificate_kind: bool,
    /// What an inspection comes to.
    verdict: Option<Verdict>,
    /// Photos that the signatory looks at before signing.
    photos: Vec<PhotoSlot>,
    /// The language it is made in.
    spoken: PaperLanguage,
    /// Where an inspection is repeated.
    repeat: Option<String>,
    /// The address that makes the vehicle's label; `None` once it is made, or for who may not.
    label: Option<String>,
    /// Papers drawn on asking: the last part of their address, and their name.
    drawn: Vec<(&'static str, String)>,
    /// The records in the keeper's language, where that is another: the line that leads to them, and they.
    for_keeper: Option<(String, Vec<(&'static str, String)>)>,
}

/// The mark of a standing.
pub fn mark(standing: Standing) -> Mark {
    match standing {
        Standing::Valid => Mark::Met,
        Standing::DutyPassed | Standing::UnderReview => Mark::Undecided,
        Standing::Superseded => Mark::NotApplicable,
        Standing::Withdrawn => Mark::Stops,
    }
}

/// Names that no paper can print, each with the form that has the field.
fn beyond_fonts(job: &JobPage) -> Vec<(String, String)> {
    let (file, w) = (&job.file, job.w());
    let found = [
        (unprintable::customer(&file.keeper), path::customer(file.keeper.id)),
        (unprintable::vehicle(&file.vehicle), path::vehicle(file.vehicle.id)),
    ];
    let line = |(checked, at): (Result<(), Refusal>, String)| match checked {
        Err(Refusal::Field { field, why }) => Some((w.t(why), format!("{at}/edit#{field}"))),
        _ => None,
    };
    found.into_iter().filter_map(line).collect()
}

async fn papers_page(app: &App, job: JobPage, form: Form) -> Result<PapersPage, Error> {
    let w = job.w();
    let mut con = app.read().await?;
    let mut issued = Vec::new();
    for paper in db::papers::list_of_job(&mut con, job.who.branch.id, job.id()).await? {
        let Found { paper, standing, .. } = app.shop.found(&mut con, paper).await?;
        issued.push(Line {
            href: path::paper(paper.id),
            number: paper.number,
            mark: mark(standing),
            standing: w.t(format!("standing-{}", standing.as_str())),
            issued: job.when(paper.issued_at),
            id: paper.id,
            may_be_replaced: !matches!(standing, Standing::Superseded | Standing::Withdrawn),
        });
    }
    let open = held_back(&job.file, &job.proofs);
    let unprintable = beyond_fonts(&job);
    let has_label = db::labels::find_of_vehicle(&mut con, job.who.branch.id, job.file.vehicle.id).await?.is_some();
    let has_valid = issued.iter().any(|line| line.may_be_replaced);
    drop(con);
    Ok(PapersPage {
        spoken: PaperLanguage::of(app, &job).await?,
        sheet: job.sheet(Stage::HandOver),
        open: unprintable
            .into_iter()
            .chain(open.iter().map(|proof| (super::say::proof_title(&w, proof), job.href(&proof.place))))
            .collect(),
        may_issue: may_certify(&job.file, &job.proofs)
            && CertificateKind::of(&job.file.job).is_some()
            && !has_valid
            && job.file.job.state.is_live(),
        has_certificate_kind: CertificateKind::of(&job.file.job).is_some(),
        verdict: may_fail(job.file.job.kind).then(|| inspection_said::verdict(&job)),
        photos: photos(&job),
        repeat: may_fail(job.file.job.kind).then(|| path::job_repeat(job.id())),
        may_sign: job.who.actor.may_sign_on(job.today).is_some(),
        action: path::job_papers(job.id()),
        base: path::job_papers(job.id()),
        label: (!has_label && WORKERS.lets(&job.who.actor)).then(|| path::job_label(job.id())),
        drawn: drawn::drawn(&job, has_label),
        for_keeper: drawn::for_keeper(&job),
        frame: job.frame,
        issued,
        form,
    })
}

/// `GET /jobs/{id}/papers`.
pub async fn show(State(app): State<App>, who: Visitor, Path(id): Path<JobId>) -> Answer {
    let job = JobPage::open(&app, who, id).await?;
    page(papers_page(&app, job, Form::blank()).await?)
}

/// `POST /jobs/{id}/papers`: the certificate is issued, or the paper named in `supersedes` replaced by a new one.
pub async fn create(State(app): State<App>, who: Visitor, Path(id): Path<JobId>, typed: Typed) -> Answer {
    let job = JobPage::open(&app, who, id).await?;
    let mut form = Form::from(typed).scoped("signing");
    let password = form.secret("password", 1, 4096);
    let old: Option<PaperId> = form.opt_choice("supersedes");
    let photos_seen = form.ticks::<String>("photos_seen");
    let unseen = photo_slots(&job.proofs).into_iter().any(|slot| !photos_seen.contains(&slot));
    if unseen {
        form.fail("photos_seen", Wrong::Rule("refused-photos-not-seen", Vec::new()));
    }
    let reason = if old.is_some() { form.text("supersedes_reason", 400) } else { None };
    let (Some(()), Some(password)) = (form.sound(), password) else {
        return retry(papers_page(&app, job, form).await?);
    };
    let new = NewIssue { supersedes: old.zip(reason), photos_seen, beside: form.tick("beside") };
    if let Err(refusal) = app.shop.prove(job.who.person.id, &password, &job.who.from.address).await {
        return refused(&app, job, form, refusal).await;
    }
    match app.shop.issue_certificate(&job.who.actor, form.key(), id, new).await {
        Ok(paper) => see_other(path::paper(paper)),
        Err(refusal) => refused(&app, job, form, refusal).await,
    }
}

pub(super) async fn refused(app: &App, job: JobPage, mut form: Form, refusal: Refusal) -> Answer {
    match refusal {
        // These fields stand on other pages; the list of what holds the paper back leads there.
        Refusal::Field { field: "name_in_latin" | "address" | "make" | "model" | "plate", why } => {
            form.fail("password", Wrong::Rule(why, Vec::new()));
        }
        Refusal::Field { field, why } if field != "current_password" => form.fail(field, Wrong::Rule(why, Vec::new())),
        Refusal::Field { why, .. } | Refusal::MayNot(why) | Refusal::Ended(why) => {
            form.fail("password", Wrong::Rule(why, Vec::new()));
        }
        // The list of open proofs on the page says which.
        Refusal::Missing(_) => form.fail("password", Wrong::Rule("refused-proofs-missing", Vec::new())),
        other => return Err(other.into()),
    }
    let job = JobPage::open(app, job.who, job.file.job.id).await?;
    retry(papers_page(app, job, form).await?)
}

/// `POST /jobs/{id}/label`: the code of the vehicle's label is drawn, and the label shown.
pub async fn make_label(State(app): State<App>, who: Visitor, Path(id): Path<JobId>, typed: Typed) -> Answer {
    app.shop.make_label(&who.actor, Form::from(typed).key(), id).await?;
    see_other(format!("{}/label", path::job_papers(id)))
}

/// A PDF as an answer, shown under this name.
pub fn pdf(name: &str, bytes: Vec<u8>) -> Response {
    let headers = [
        (header::CONTENT_TYPE, "application/pdf".to_owned()),
        (header::CONTENT_DISPOSITION, format!("inline; filename=\"{name}.pdf\"")),
        (header::CACHE_CONTROL, "no-store".to_owned()),
    ];
    (headers, bytes).into_response()
}
