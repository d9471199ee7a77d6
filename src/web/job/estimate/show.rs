//! The page of a job's estimate: how it stands, its lines, the agreement, deposits, earlier versions.

use askama::Template;
use axum::extract::{Path, State};

use super::{SCOPE, currency, deposits, lines_of, may_write, open, said, taken};
use crate::model::Coded;
use crate::model::estimate::{AgreedHow, EstimateLine, EstimateVersion};
use crate::model::ids::JobId;
use crate::model::stage::Stage;
use crate::web::app::App;
use crate::web::form::Form;
use crate::web::job::JobPage;
use crate::web::job::record::local_now;
use crate::web::kit::{self, Cell, Choice, Column, Field, JobSheet, Mark, Table, Verdict};
use crate::web::page::{Frame, page};
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};
use crate::words::Words;

/// The forms of the page; the one that was sent keeps what was typed.
#[derive(Debug, Clone)]
pub(super) struct Forms {
    agreement: Form,
    deposit: Form,
    /// The deposit whose way back was asked for, and its form.
    pub(super) returned: Option<(String, Form)>,
    /// What is wrong, whichever form it was.
    faults: Form,
}

#[derive(Template)]
#[template(path = "job/estimate.html")]
struct ShowPage {
    frame: Frame,
    sheet: JobSheet,
    faults: Form,
    verdict: Option<Verdict>,
    lines: Option<Table>,
    total: String,
    note: String,
    is_empty: bool,
    may_write: bool,
    write: String,
    /// The last version waits for the customer's word.
    may_agree: bool,
    agreement: Form,
    agreement_action: String,
    hows: Vec<Choice>,
    deposit: Form,
    deposit_action: String,
    deposit_fields: Vec<Field>,
    deposits: Vec<taken::DepositLine>,
    remains: String,
    /// Papers of the last version: name and address.
    papers: Vec<(String, String)>,
    /// Earlier versions.
    earlier: Option<Table>,
}

impl Forms {
    /// The forms as first opened.
    pub(super) fn blank(job: &JobPage) -> Self {
        let number = job.estimates.last().map_or(0, |last| last.number);
        let agreement =
            Form::blank().with("opened_version", number.to_string()).with("agreed_at", local_now(job)).scoped(SCOPE);
        let deposit = Form::blank()
            .with("received_on", job.today.to_string())
            .with("received_by", &job.who.actor.name)
            .scoped(SCOPE);
        Self { agreement, deposit, returned: None, faults: Form::blank() }
    }

    /// The same with the agreement as it was sent.
    pub(super) fn agreed(self, form: Form) -> Self {
        Self { faults: form.clone(), agreement: form, ..self }
    }

    /// The same with the deposit as it was sent.
    pub(super) fn taken(self, form: Form) -> Self {
        Self { faults: form.clone(), deposit: form, ..self }
    }

    /// The same with the way back of a deposit as it was sent.
    pub(super) fn given_back(self, deposit: String, form: Form) -> Self {
        Self { faults: form.clone(), returned: Some((deposit, form)), ..self }
    }
}

/// The lines of a version with what each comes to.
pub(super) fn lines_table(w: &Words, version: &EstimateVersion, lines: &[EstimateLine]) -> Table {
    let code = version.currency.code();
    let head = |key: &str| w.tv(key, &[("currency", code.into())]);
    let row = |line: &EstimateLine| {
        vec![
            Cell::new(&line.what).with_second(w.t(format!("line-kind-{}", line.kind.code()))),
            Cell::new(w.thousandths(line.quantity_thousandths)),
            Cell::new(w.amount(line.unit_price_minor, code)),
            Cell::new(w.amount(line.amount_minor, code)),
        ]
    };
    Table {
        w: *w,
        caption: w.tn("estimate-version", version.number),
        columns: vec![
            Column::text(w.t("estimate-what")),
            Column::number(w.t("estimate-quantity")),
            Column::number(head("estimate-column-price")),
            Column::number(head("estimate-column-amount")),
        ],
        rows: lines.iter().map(row).collect(),
    }
}

fn earlier(job: &JobPage) -> Option<Table> {
    let (w, versions) = (job.w(), &job.estimates.versions);
    let row = |version: &EstimateVersion| {
        let standing = match &version.agreement {
            Some(agreement) => Cell::new(said::agreement_said(job, version, agreement)).marked(Mark::Met),
            None => Cell::new(w.t("estimate-not-agreed")).marked(Mark::Missing),
        };
        let by = [("name", (&version.person_name).into()), ("when", job.when(version.written_at).into())];
        vec![
            Cell::link(w.tn("estimate-version", version.number), path::job_estimate_version(job.id(), version.number))
                .with_second(w.tv("estimate-written-by", &by)),
            Cell::new(said::total(&w, version)),
            standing,
        ]
    };
    let rows: Vec<_> = versions.iter().rev().skip(1).map(row).collect();
    let columns = vec![
        Column::text(w.t("estimate-column-version")),
        Column::number(w.t("estimate-total")),
        Column::text(w.t("estimate-column-standing")),
    ];
    (!rows.is_empty()).then(|| Table { w, caption: w.t("estimate-earlier"), columns, rows })
}

fn papers(job: &JobPage) -> Vec<(String, String)> {
    let (w, id) = (job.w(), job.id());
    let Some(last) = job.estimates.last() else { return Vec::new() };
    vec![
        (w.t("register-estimate"), path::job_estimate_pdf(id, last.number)),
        (w.t("register-price-list"), path::job_paper(id, "price-list")),
        (w.t("estimate-csv"), path::job_estimate_csv(id, last.number)),
    ]
}

/// The page; with the forms as they were sent.
pub(super) async fn show_page(app: &App, job: JobPage, forms: Forms) -> Result<impl Template + use<>, Error> {
    let w = job.w();
    let may_write = may_write(&job);
    let last = job.estimates.last().cloned();
    let lines = match &last {
        Some(last) => Some(lines_table(&w, last, &lines_of(app, last).await?)),
        None => None,
    };
    let all = job.estimates.deposits.iter().filter(|one| one.takes_back_id.is_none());
    Ok(ShowPage {
        sheet: job.sheet(Stage::Intake),
        verdict: said::verdict(&job),
        total: last.as_ref().map(|last| said::total(&w, last)).unwrap_or_default(),
        note: last.as_ref().map(|last| last.note.clone()).unwrap_or_default(),
        is_empty: last.is_none(),
        may_agree: may_write && last.as_ref().is_some_and(|last| last.agreement.is_none()),
        write: path::job_estimate_new(job.id()),
        agreement_action: path::job_estimate_agreement(job.id()),
        hows: kit::choices(&w, "estimate-how", AgreedHow::ALL.iter().map(|how| how.code())),
        deposit_action: path::job_deposits(job.id()),
        deposit_fields: deposits::fields(&forms.deposit, &w, currency(&job)?),
        deposits: all.map(|one| taken::line(&job, &forms, one)).collect(),
        remains: taken::remains(&job),
        papers: papers(&job),
        earlier: earlier(&job),
        agreement: forms.agreement,
        deposit: forms.deposit,
        faults: forms.faults,
        may_write,
        lines,
        frame: job.frame,
    })
}

/// `GET /jobs/{id}/estimate`.
pub async fn show(State(app): State<App>, who: Visitor, Path(id): Path<JobId>) -> Answer {
    let job = open(&app, who, id).await?;
    let forms = Forms::blank(&job);
    page(show_page(&app, job, forms).await?)
}
