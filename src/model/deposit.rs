//! Money taken before the work is paid. It is taken back only by a new line that names it and says why.

use time::{Date, OffsetDateTime};

use super::ids::DepositId;
use super::money::Currency;

/// What the desk types when money is taken.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NewDeposit {
    /// More than nought.
    pub amount_minor: i64,
    /// How it was paid, in words.
    pub paid_how: String,
    /// On which day.
    pub received_on: Date,
    /// Who took it.
    pub received_by: String,
}

/// What the desk types when money goes back.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NewReturn {
    /// Which deposit.
    pub takes_back: DepositId,
    /// Why.
    pub reason: String,
    /// How it was paid back, in words.
    pub paid_how: String,
    /// On which day.
    pub returned_on: Date,
}

/// A line of the deposits: money taken, or a deposit taken back.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Deposit {
    /// Name for ever.
    pub id: DepositId,
    /// The job's currency.
    pub currency: Currency,
    /// Always more than nought; what is taken back is so much again.
    pub amount_minor: i64,
    /// How it was paid, in words.
    pub paid_how: String,
    /// On which day.
    pub received_on: Date,
    /// Who took it, or gave it back.
    pub received_by: String,
    /// Who wrote it down.
    pub person_name: String,
    /// When.
    pub recorded_at: OffsetDateTime,
    /// The deposit that this line takes back.
    pub takes_back_id: Option<DepositId>,
    /// Why it is taken back; else empty.
    pub reason: String,
}

impl Deposit {
    /// What it adds to the money taken.
    pub fn signed_minor(&self) -> i64 {
        if self.takes_back_id.is_some() { -self.amount_minor } else { self.amount_minor }
    }
}
