//! The papers of a job that are drawn on asking: preview, records, sheets, estimates, the label.

use axum::extract::{Path, Query, State};
use serde::Deserialize;

use super::paper_language::languages;
use super::papers::{pdf, refused};
use super::{JobPage, estimate, paper_proofs, sizing_sheet};
use crate::model::ids::JobId;
use crate::model::stage::{Stage, stages_of};
use crate::shop::Refusal;
use crate::shop::issue::Spoken;
use crate::web::app::App;
use crate::web::form::Form;
use crate::web::language::own_name;
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error};
use crate::words::Words;

/// What an address says that asks for the keeper's language.
const KEEPER: &str = "keeper";

/// The papers of this job that are drawn on asking, in the order of the work.
pub(super) fn drawn(job: &JobPage, has_label: bool) -> Vec<(&'static str, String)> {
    let stages = stages_of(job.file.job.kind);
    let all = [
        ("estimate", job.estimates.last().is_some()),
        ("work-sheet", true),
        ("sizing-sheet", !sizing_sheet::sums(job).is_empty()),
        ("fitting-record", true),
        ("calibration-record", stages.contains(&Stage::Calibration)),
        ("test-record", true),
        ("owner-sheet", true),
        ("price-list", job.estimates.last().is_some()),
        ("label", has_label),
    ];
    let named = |kind: &'static str| (kind, job.w().t(format!("register-{kind}")));
    all.into_iter().filter(|(_, is_there)| *is_there).map(|(kind, _)| named(kind)).collect()
}

/// The records in the keeper's language, where that is another than that of the rules.
pub(super) fn for_keeper(job: &JobPage) -> Option<(String, Vec<(&'static str, String)>)> {
    let (official, keeper) = languages(job);
    let records = drawn(job, false).into_iter().filter(|(kind, _)| kind.ends_with("-record")).collect();
    let said = || job.w().tv("register-for-keeper", &[("language", own_name(keeper).into())]);
    (keeper != official).then(|| (said(), records))
}

/// The same job file in the words that its records are drawn in.
fn spoken_of(mut job: JobPage, spoken: Spoken) -> JobPage {
    let (official, keeper) = languages(&job);
    job.frame.w = Words::new(if spoken == Spoken::Keeper { keeper } else { official });
    job
}

/// The owner's sheet; where a name is beyond the letters of papers, the page that leads to the field.
async fn owner_sheet(app: App, who: Visitor, id: JobId) -> Answer {
    match app.shop.owner_sheet_pdf(&who.actor, id, app.shop.clock.now()).await {
        Ok((name, bytes)) => Ok(pdf(&name, bytes)),
        Err(refusal @ Refusal::Field { .. }) => {
            refused(&app, JobPage::open(&app, who, id).await?, Form::blank().scoped("signing"), refusal).await
        }
        Err(other) => Err(other.into()),
    }
}

/// In which language a record is asked for.
#[derive(Debug, Deserialize)]
pub struct Asked {
    /// "keeper" for the keeper's; anything else, and nothing, for that of the rules.
    #[serde(default)]
    language: String,
}

/// `GET /jobs/{id}/papers/{kind}`: a paper drawn on asking: the preview, the records, the sheets.
pub async fn draw(
    State(app): State<App>,
    who: Visitor,
    Path((id, kind)): Path<(JobId, String)>,
    Query(asked): Query<Asked>,
) -> Answer {
    let now = app.shop.clock.now();
    let spoken = if asked.language == KEEPER { Spoken::Keeper } else { Spoken::Official };
    let bytes = match kind.as_str() {
        "preview" => app.shop.preview_certificate(&who.actor, id).await?.pdf,
        "test-record" => app.shop.test_record_pdf(&who.actor, id, now, spoken).await?,
        "sizing-sheet" => {
            let job = sizing_sheet::in_language_of_papers(JobPage::open(&app, who, id).await?);
            app.shop.sizing_sheet_pdf(&job.who.actor, id, now, sizing_sheet::sums(&job)).await?
        }
        "work-sheet" => {
            let job = sizing_sheet::in_language_of_papers(JobPage::open(&app, who, id).await?);
            app.shop.work_sheet_pdf(&job.who.actor, id, now, paper_proofs::stages(&job)).await?
        }
        "fitting-record" => {
            let job = spoken_of(JobPage::open(&app, who, id).await?, spoken);
            let proofs = paper_proofs::of_stage(&job, Stage::Fitting);
            app.shop.fitting_record_pdf(&job.who.actor, id, now, proofs, spoken).await?
        }
        "calibration-record" => {
            let job = spoken_of(JobPage::open(&app, who, id).await?, spoken);
            let proofs = paper_proofs::of_stage(&job, Stage::Calibration);
            app.shop.calibration_record_pdf(&job.who.actor, id, now, proofs, spoken).await?
        }
        "estimate" | "price-list" => return estimate::of_job(app, who, id, &kind).await,
        "label" => app.shop.label_pdf(&who.actor, id, now).await?,
        "owner-sheet" => return Box::pin(owner_sheet(app, who, id)).await,
        _ => return Err(Error::NotFound),
    };
    Ok(pdf(&kind, bytes))
}
