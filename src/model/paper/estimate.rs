//! What papers about the price of a job say: the estimate, the receipt of a deposit, the final price list. None of them is
//! signed, and none is a tax invoice.

use serde::{Deserialize, Serialize};
use time::Date;

use super::ShopBlock;
use crate::model::estimate::{AgreedHow, LineKind};

/// Whose job it is, on which vehicle.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Parties {
    /// The shop.
    pub shop: ShopBlock,
    /// Number of the job file.
    pub job_number: String,
    /// Name of the customer.
    pub customer_name: String,
    /// Address of the customer in one line; may be empty.
    pub customer_address: String,
    /// Make and model.
    pub vehicle: String,
    /// Plate; empty if not registered.
    pub plate: String,
    /// Language tag of the text.
    pub language: String,
    /// A paper of the demonstration shop.
    pub is_demonstration: bool,
}

/// One line of an estimate.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PricedLine {
    /// What it is.
    pub what: String,
    /// Which kind.
    pub kind: LineKind,
    /// Thousandths of one.
    pub quantity_thousandths: i64,
    /// Price for one.
    pub unit_price_minor: i64,
    /// What it comes to.
    pub amount_minor: i64,
}

/// Lines, their exact sum, and what was agreed about it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Priced {
    /// Version of the estimate.
    pub version: i64,
    /// Currency of every amount (ISO 4217).
    pub currency: String,
    /// The lines.
    pub lines: Vec<PricedLine>,
    /// The sum of their amounts.
    pub total_minor: i64,
    /// Beside the lines; may be empty.
    pub note: String,
    /// That the customer agreed to it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub agreed: Option<AgreedOnPaper>,
}

/// That the customer agreed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct AgreedOnPaper {
    /// How much.
    pub amount_minor: i64,
    /// How.
    #[serde(rename = "kind")]
    pub how: AgreedHow,
    /// Who agreed.
    pub by: String,
    /// On which day.
    pub on: Date,
    /// Who of the shop noted it.
    pub noted_by: String,
}

/// A version of an estimate as a paper.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct EstimateContent {
    /// Whose and which.
    pub parties: Parties,
    /// What it costs.
    pub priced: Priced,
    /// The day it was written.
    pub written_on: Date,
    /// The last day on which it stands.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub valid_until_on: Option<Date>,
}

/// Money taken, or taken back.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct DepositOnPaper {
    /// How much; below nought for money taken back.
    pub amount_minor: i64,
    /// How it was paid, in words.
    pub paid_how: String,
    /// On which day.
    pub received_on: Date,
    /// Who took it, or gave it back.
    pub received_by: String,
    /// Why it was taken back; else empty.
    pub reason: String,
}

/// The receipt of a deposit.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct DepositReceiptContent {
    /// Whose and which.
    pub parties: Parties,
    /// Which deposit of the job, from 1.
    pub number: i64,
    /// Currency of the amount (ISO 4217).
    pub currency: String,
    /// The deposit.
    pub deposit: DepositOnPaper,
    /// The line that took it back.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub taken_back: Option<DepositOnPaper>,
}

/// The final price list.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PriceListContent {
    /// Whose and which.
    pub parties: Parties,
    /// The last version.
    pub priced: Priced,
    /// Deposits and what was taken back of them, in order.
    pub deposits: Vec<DepositOnPaper>,
    /// Their sum.
    pub deposited_minor: i64,
    /// What remains to pay; below nought for what goes back.
    pub remaining_minor: i64,
    /// The day it was printed.
    pub printed_on: Date,
}
