//! Deposits as the page of an estimate shows them: each with its receipt and, where one may, the form that takes it back.

use super::show::Forms;
use super::{SCOPE, deposits, may_write};
use crate::model::deposit::Deposit;
use crate::web::form::Form;
use crate::web::job::JobPage;
use crate::web::kit::{self, Field};
use crate::web::path;

/// A deposit as a line, with the form that takes it back.
pub(super) struct DepositLine {
    pub(super) said: String,
    pub(super) second: String,
    pub(super) receipt: String,
    /// Where it is taken back; empty for who may not, or once it was.
    pub(super) give_back: String,
    pub(super) is_open: bool,
    pub(super) form: Form,
    pub(super) fields: Vec<Field>,
}

/// A deposit in words, with its form as it was sent.
pub(super) fn line(job: &JobPage, forms: &Forms, one: &Deposit) -> DepositLine {
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

/// What was paid and what remains; empty while nothing was paid.
pub(super) fn remains(job: &JobPage) -> String {
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
