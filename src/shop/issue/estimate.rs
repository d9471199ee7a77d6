//! Papers about the price of a job, in the keeper's language: drawn on asking, not signed.

use time::{Date, OffsetDateTime};

use super::owner::Named;
use super::{Ground, content, of_job};
use crate::db;
use crate::model::deposit::Deposit;
use crate::model::estimate::{EstimateLine, EstimateVersion, Estimates};
use crate::model::ids::{DepositId, JobId};
use crate::model::paper::estimate::{
    AgreedOnPaper, DepositOnPaper, DepositReceiptContent, EstimateContent, Parties, PriceListContent, Priced,
    PricedLine,
};
use crate::model::person::Actor;
use crate::papers;
use crate::shop::assessed::Assessed;
use crate::shop::{Refusal, Shop};

fn parties(ground: &Ground<'_>, is_demonstration: bool) -> Parties {
    let file = ground.file;
    Parties {
        shop: content::shop_block(ground),
        job_number: file.job.number.clone(),
        customer_name: content::customer_name(ground),
        customer_address: content::one_line(&file.keeper.address),
        vehicle: file.vehicle.title(),
        plate: file.vehicle.plate.clone(),
        language: ground.w.tag().to_owned(),
        is_demonstration,
    }
}

fn priced(ground: &Ground<'_>, version: &EstimateVersion, lines: Vec<EstimateLine>) -> Priced {
    let line = |line: EstimateLine| PricedLine {
        what: line.what,
        kind: line.kind,
        quantity_thousandths: line.quantity_thousandths,
        unit_price_minor: line.unit_price_minor,
        amount_minor: line.amount_minor,
    };
    let agreed = version.agreement.as_ref().map(|one| AgreedOnPaper {
        amount_minor: one.amount_minor,
        how: one.how,
        by: one.agreed_by.clone(),
        on: (ground.day_of)(one.agreed_at),
        noted_by: one.person_name.clone(),
    });
    Priced {
        version: version.number,
        currency: version.currency.code().to_owned(),
        lines: lines.into_iter().map(line).collect(),
        total_minor: version.total_minor,
        note: version.note.clone(),
        agreed,
    }
}

fn deposit(one: &Deposit) -> DepositOnPaper {
    DepositOnPaper {
        amount_minor: one.signed_minor(),
        paid_how: one.paid_how.clone(),
        received_on: one.received_on,
        received_by: one.received_by.clone(),
        reason: one.reason.clone(),
    }
}

/// The job, what is known of its money, and the lines of one of its versions.
struct Loaded {
    job: Assessed,
    estimates: Estimates,
    lines: Vec<EstimateLine>,
}

impl Loaded {
    /// Reads a job; with the lines of this version, or of the last for `None`.
    async fn read(
        shop: &Shop,
        who: &Actor,
        id: JobId,
        number: Option<i64>,
        at: OffsetDateTime,
    ) -> Result<Self, Refusal> {
        let mut con = shop.db.read().await?;
        let job = Assessed::read(&mut con, who.branch, id, at).await?;
        let estimates = db::estimates::find_of_job(&mut con, who.branch, id).await?;
        let version = number.map_or_else(|| estimates.last(), |number| estimates.version(number));
        let lines = match version {
            Some(version) => db::estimates::list_lines(&mut con, version.id).await?,
            None => Vec::new(),
        };
        Ok(Self { job, estimates, lines })
    }
}

impl Shop {
    /// A version of a job's estimate as a PDF.
    ///
    /// # Errors
    /// [`Refusal::Gone`] when the branch has no such job, or the job no such version.
    pub async fn estimate_pdf(
        &self,
        who: &Actor,
        id: JobId,
        number: i64,
        at: OffsetDateTime,
    ) -> Result<Named, Refusal> {
        let Loaded { job, estimates, lines } = Loaded::read(self, who, id, Some(number), at).await?;
        let version = estimates.version(number).ok_or(Refusal::Gone)?;
        let (content, words, size) = job.with_keeper(|ground| {
            let content = EstimateContent {
                parties: parties(ground, self.issuer.is_demo),
                priced: priced(ground, version, lines),
                written_on: (ground.day_of)(version.written_at),
                valid_until_on: version.valid_until_on,
            };
            (content, ground.w, ground.branch.paper_size)
        });
        let name = format!("{}-{}-{number}", words.t("estimate-paper-file"), content.parties.job_number);
        let pdf = of_job::drawn(content, move |content| papers::estimate::estimate(content, &words, size)).await?;
        Ok((name, pdf))
    }

    /// The final price list of a job as a PDF.
    ///
    /// # Errors
    /// [`Refusal::Gone`] when the branch has no such job, or no estimate was written.
    pub async fn price_list_pdf(&self, who: &Actor, id: JobId, at: OffsetDateTime) -> Result<Named, Refusal> {
        let Loaded { job, estimates, lines } = Loaded::read(self, who, id, None, at).await?;
        let (version, remaining_minor) = estimates.last().zip(estimates.remaining_minor()).ok_or(Refusal::Gone)?;
        let printed_on: Date = job.zone.day_of(at);
        let (content, words, size) = job.with_keeper(|ground| {
            let content = PriceListContent {
                parties: parties(ground, self.issuer.is_demo),
                priced: priced(ground, version, lines),
                deposits: estimates.deposits.iter().map(deposit).collect(),
                deposited_minor: estimates.deposited_minor(),
                remaining_minor,
                printed_on,
            };
            (content, ground.w, ground.branch.paper_size)
        });
        let name = format!("{}-{}", words.t("price-list-file"), content.parties.job_number);
        let pdf = of_job::drawn(content, move |content| papers::price_list::price_list(content, &words, size)).await?;
        Ok((name, pdf))
    }

    /// The receipt of a deposit as a PDF.
    ///
    /// # Errors
    /// [`Refusal::Gone`] when the branch has no such job, or the job no such deposit.
    pub async fn deposit_receipt_pdf(
        &self,
        who: &Actor,
        id: JobId,
        wanted: DepositId,
        at: OffsetDateTime,
    ) -> Result<Named, Refusal> {
        let Loaded { job, estimates, .. } = Loaded::read(self, who, id, None, at).await?;
        let taken = estimates.deposits.iter().find(|one| one.id == wanted).ok_or(Refusal::Gone)?;
        let number = estimates.deposit_number(wanted).and_then(|at| i64::try_from(at).ok()).ok_or(Refusal::Gone)?;
        let (content, words, size) = job.with_keeper(|ground| {
            let content = DepositReceiptContent {
                parties: parties(ground, self.issuer.is_demo),
                number,
                currency: taken.currency.code().to_owned(),
                deposit: deposit(taken),
                taken_back: estimates.taken_back(wanted).map(deposit),
            };
            (content, ground.w, ground.branch.paper_size)
        });
        let name = format!("{}-{}-{number}", words.t("receipt-file"), content.parties.job_number);
        let draw =
            move |content: &DepositReceiptContent| papers::deposit_receipt::deposit_receipt(content, &words, size);
        Ok((name, of_job::drawn(content, draw).await?))
    }
}
