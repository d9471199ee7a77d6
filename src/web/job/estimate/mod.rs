//! The estimate of a job: its lines, what the customer agreed to, deposits, and the papers of all three.
//!
//! Everybody who works here reads it; the desk writes. On a job that has ended it is only read.

mod agreement;
mod deposits;
mod lines;
mod older;
mod papers;
mod said;
mod show;
mod taken;
mod version;

pub use agreement::create as agree;
pub use deposits::{create as take_deposit, give_back};
pub use older::show as show_version;
use papers::version_of;
pub use papers::{lines_csv, of_job, pdf, receipt};
pub use said::head_line;
pub use show::show;
pub use version::{create, new};

use super::JobPage;
use crate::db;
use crate::model::estimate::{EstimateLine, EstimateVersion};
use crate::model::ids::JobId;
use crate::model::money::Currency;
use crate::web::Error;
use crate::web::app::App;
use crate::web::routes::DESK;
use crate::web::visitor::Visitor;

/// Where labels of these forms are looked up.
const SCOPE: &str = "estimate";
/// The greatest amount that a field takes, in minor units: far above any job, far below what a sum cannot keep.
const MOST_MINOR: i64 = 10_000_000_000;

/// A job file opened on a job that is in this branch.
async fn open(app: &App, who: Visitor, id: JobId) -> Result<JobPage, Error> {
    JobPage::open(app, who, id).await
}

/// Whether the visitor may change anything on this page.
fn may_write(job: &JobPage) -> bool {
    job.file.job.state.is_live() && DESK.lets(&job.who.actor)
}

/// The currency that the next line of money will be in; the branch's own where nothing is written yet.
fn currency(job: &JobPage) -> Result<Currency, Error> {
    let known = job.estimates.currency().or_else(|| job.who.branch.currency.parse().ok());
    known.ok_or_else(|| crate::shop::Refusal::MayNot("refused-currency-unknown").into())
}

async fn lines_of(app: &App, version: &EstimateVersion) -> Result<Vec<EstimateLine>, Error> {
    Ok(db::estimates::list_lines(&mut *app.read().await?, version.id).await?)
}
