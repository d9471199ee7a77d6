//! The page of a job's estimate: how it stands, its lines, the agreement, deposits, earlier versions.

use askama::Template;
use axum::extract::{Path, State};

use super::{SCOPE, currency, deposits, lines_of, may_write, open, said};
use crate::model::Coded;
use crate::model::estimate::{AgreedHow, Deposit, EstimateLine, EstimateVersion};
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
    returned: Option<(String, Form)>,
    /// What is wrong, whichever form it was.
    faults: Form,
}

/// A deposit as a line, with the form that takes it back.
struct DepositLine {
    said: String,
    second: String,
    receipt: String,
    /// Where it is taken back; empty for who may not, or once it was.
    give_back: String,
    is_open: bool,
    form: Form,
    fields: Vec<Field>,
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
    deposits: Vec<DepositLine>,
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

fn deposit_line(job: &JobPage, forms: &Forms, one: &Deposit) -> DepositLine {
    let w = job.w();
    let back = job.estimates.taken_back(one.id);
    let values = |line: &Deposit| {
        [
            ("amount", w.money(line.amount_minor, line.currency.code()).into()),
            ("how", line.paid_how.clone().into()),
            ("day", w.date(line.received_on).into()),
            ("name", line.received_by.clone().into()),
            ("reason", line.reason.clone().into()),
        ]
    };
    let id = one.id.to_string();
    let sent = forms.returned.as_ref().filter(|(deposit, _)| *deposit == id).map(|(_, form)| form.clone());
    let is_open = sent.is_some();
    let name = |field: &str| deposits::field(job, one.id, field);
    let form = sent.unwrap_or_else(|| Form::blank().with(&name("returned_on"), job.today.to_string()).scoped(SCOPE));
    let fields = vec![
        kit::text(&form, &w, name("reason")).wide(),
        kit::text(&form, &w, name("returned_how")),
        kit::date(&form, &w, name("returned_on")),
    ];
    DepositLine {
        said: w.tv("estimate-deposit-line", &values(one)),
        second: back.map(|back| w.tv("estimate-returned-line", &values(back))).unwrap_or_default(),
        receipt: path::job_deposit_receipt(job.id(), one.id),
        give_back: if may_write(job) && back.is_none() {
            path::job_deposit_return(job.id(), one.id)
        } else {
            String::new()
        },
        is_open,
        form,
        fields,
    }
}

fn remains(job: &JobPage) -> String {
    let (w, estimates) = (job.w(), &job.estimates);
    let (Some(last), Some(remaining)) = (estimates.last(), estimates.remaining_minor()) else { return String::new() };
    if estimates.deposits.is_empty() {
        return String::new();
    }
    let money = |minor: i64| w.money(minor, last.currency.code());
    let key = if remaining < 0 { "estimate-overpaid" } else { "estimate-remains" };
    let values = [("deposits", money(estimates.deposited_minor()).into()), ("remains", money(remaining.abs()).into())];
    w.tv(key, &values)
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
    let taken = job.estimates.deposits.iter().filter(|one| one.takes_back_id.is_none());
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
        deposits: taken.map(|one| deposit_line(&job, &forms, one)).collect(),
        remains: remains(&job),
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

#[derive(Template)]
#[template(path = "job/estimate_version.html")]
struct VersionPage {
    frame: Frame,
    sheet: JobSheet,
    title: String,
    written: String,
    agreed: String,
    stands: String,
    lines: Table,
    total: String,
    note: String,
    pdf: String,
    csv: String,
    back: String,
}

/// `GET /jobs/{id}/estimate/{number}`: a version as it was written.
pub async fn show_version(State(app): State<App>, who: Visitor, Path((id, number)): Path<(JobId, String)>) -> Answer {
    let job = open(&app, who, id).await?;
    let (w, version) = (job.w(), super::version_of(&job, &number)?);
    let by = [("name", (&version.person_name).into()), ("when", job.when(version.written_at).into())];
    let agreement = version.agreement.as_ref();
    let until = version.valid_until_on.map(|day| w.tv("estimate-stood-until", &[("day", w.date(day).into())]));
    page(VersionPage {
        sheet: job.sheet(Stage::Intake),
        title: w.tn("estimate-version", version.number),
        written: w.tv("estimate-written-by", &by),
        agreed: agreement.map_or_else(|| w.t("estimate-not-agreed"), |one| said::agreement_said(&job, version, one)),
        stands: until.unwrap_or_default(),
        lines: lines_table(&w, version, &lines_of(&app, version).await?),
        total: said::total(&w, version),
        note: version.note.clone(),
        pdf: path::job_estimate_pdf(id, version.number),
        csv: path::job_estimate_csv(id, version.number),
        back: path::job_estimate(id),
        frame: job.frame.clone(),
    })
}
