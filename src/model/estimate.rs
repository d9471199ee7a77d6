//! An estimate of a job: versions that are never changed, what the customer agreed to, and what was paid before.
//!
//! A saved estimate is a new version. The customer agrees to a version; a later one says by how much it differs and that
//! it is not agreed. All money of a job is in the currency of its first line, whatever the branch changes later.

use time::{Date, OffsetDateTime};

use super::coded;
use super::deposit::Deposit;
use super::ids::{DepositId, EstimateId, JobId};
use super::money::{Currency, amount_minor, total_minor};

coded! {
    /// What a line is.
    "line-kind" LineKind {
        /// A part or material.
        Part = "part",
        /// Work.
        Work = "work",
        /// Anything else: a fee, a journey.
        Other = "other",
        /// What is taken off: its amount is below nought.
        Discount = "discount",
    }
}

coded! {
    /// How the customer agreed.
    "agreed-how" AgreedHow {
        /// At the desk.
        InPerson = "in-person",
        /// On the phone.
        Phone = "phone",
        /// By letter, mail or message.
        Writing = "writing",
    }
}

/// One line: what, how much of it, at which price. Its amount is what is printed.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct EstimateLine {
    /// In words.
    pub what: String,
    /// Which kind.
    pub kind: LineKind,
    /// Thousandths of one.
    pub quantity_thousandths: i64,
    /// Price for one.
    pub unit_price_minor: i64,
    /// What it comes to, rounded half-up.
    pub amount_minor: i64,
}

impl EstimateLine {
    /// A line with its amount reckoned; `None` when that is beyond what can be kept. Quantity and price are above nought,
    /// also of a discount.
    pub fn new(what: String, kind: LineKind, quantity_thousandths: i64, unit_price_minor: i64) -> Option<Self> {
        let size_minor = amount_minor(quantity_thousandths, unit_price_minor)?;
        let amount_minor = if kind == LineKind::Discount { -size_minor } else { size_minor };
        Some(Self { what, kind, quantity_thousandths, unit_price_minor, amount_minor })
    }
}

/// The exact sum of what is printed.
pub fn total_of(lines: &[EstimateLine]) -> Option<i64> {
    total_minor(lines.iter().map(|line| line.amount_minor))
}

/// What the desk types to write a version.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NewEstimate {
    /// The last version when the form was opened; nought for none.
    pub opened_at_number: i64,
    /// At least one.
    pub lines: Vec<EstimateLine>,
    /// The last day on which it stands.
    pub valid_until_on: Option<Date>,
    /// Beside the lines.
    pub note: String,
}

/// That the customer agreed: to how much, how, who, when; and who noted it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Agreement {
    /// The version's total.
    pub amount_minor: i64,
    /// How.
    pub how: AgreedHow,
    /// Who agreed, in words.
    pub agreed_by: String,
    /// When they did.
    pub agreed_at: OffsetDateTime,
    /// Who of the shop noted it.
    pub person_name: String,
    /// When that was noted.
    pub noted_at: OffsetDateTime,
}

/// What the desk types when the customer agreed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NewAgreement {
    /// To which version.
    pub number: i64,
    /// How.
    pub how: AgreedHow,
    /// Who.
    pub agreed_by: String,
    /// When.
    pub agreed_at: OffsetDateTime,
}

/// A version as stored, without its lines.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct EstimateVersion {
    /// Name for ever.
    pub id: EstimateId,
    /// Which job.
    pub job_id: JobId,
    /// 1 for the first.
    pub number: i64,
    /// The job's currency.
    pub currency: Currency,
    /// The exact sum of its lines.
    pub total_minor: i64,
    /// The last day on which it stands.
    pub valid_until_on: Option<Date>,
    /// Beside the lines.
    pub note: String,
    /// Who wrote it.
    pub person_name: String,
    /// When.
    pub written_at: OffsetDateTime,
    /// That the customer agreed to it.
    pub agreement: Option<Agreement>,
}

/// How an estimate stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum EstimateStanding<'a> {
    /// Nothing is written.
    None,
    /// Nobody agreed to any version.
    NotAgreed(&'a EstimateVersion),
    /// The last version is agreed.
    Agreed(&'a EstimateVersion, &'a Agreement),
    /// An earlier version is agreed, and the last differs by so much.
    Changed {
        /// The last.
        last: &'a EstimateVersion,
        /// The last that is agreed.
        agreed: &'a EstimateVersion,
        /// Last less agreed.
        by_minor: i64,
    },
}

/// Everything about money of one job.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Estimates {
    /// First to last.
    pub versions: Vec<EstimateVersion>,
    /// In the order they were written down.
    pub deposits: Vec<Deposit>,
}

impl Estimates {
    /// The last version.
    pub fn last(&self) -> Option<&EstimateVersion> {
        self.versions.last()
    }

    /// A version by its number.
    pub fn version(&self, number: i64) -> Option<&EstimateVersion> {
        self.versions.iter().find(|version| version.number == number)
    }

    /// How it stands.
    pub fn standing(&self) -> EstimateStanding<'_> {
        let Some(last) = self.last() else { return EstimateStanding::None };
        if let Some(agreement) = &last.agreement {
            return EstimateStanding::Agreed(last, agreement);
        }
        match self.versions.iter().rev().find(|version| version.agreement.is_some()) {
            Some(agreed) => EstimateStanding::Changed { last, agreed, by_minor: last.total_minor - agreed.total_minor },
            None => EstimateStanding::NotAgreed(last),
        }
    }

    /// The currency of the first line of money; `None` before there is one.
    pub fn currency(&self) -> Option<Currency> {
        let version = self.versions.first().map(|one| (one.written_at, one.currency));
        let deposit = self.deposits.first().map(|one| (one.recorded_at, one.currency));
        version.into_iter().chain(deposit).min_by_key(|(at, _)| *at).map(|(_, currency)| currency)
    }

    /// Money taken, less what was taken back.
    pub fn deposited_minor(&self) -> i64 {
        self.deposits.iter().map(Deposit::signed_minor).sum()
    }

    /// What remains to pay of the last version; below nought where more was taken than it costs.
    pub fn remaining_minor(&self) -> Option<i64> {
        Some(self.last()?.total_minor - self.deposited_minor())
    }

    /// The line that took a deposit back.
    pub fn taken_back(&self, deposit: DepositId) -> Option<&Deposit> {
        self.deposits.iter().find(|one| one.takes_back_id == Some(deposit))
    }

    /// Which deposit this is, counted from 1; lines that take back are not counted.
    pub fn deposit_number(&self, deposit: DepositId) -> Option<usize> {
        let taken = self.deposits.iter().filter(|one| one.takes_back_id.is_none());
        taken.into_iter().position(|one| one.id == deposit).map(|at| at + 1)
    }
}
