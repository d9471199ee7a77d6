//! A customer: whoever owns, keeps, pays for or speaks for a vehicle.

use serde::{Deserialize, Serialize};
use time::{Date, OffsetDateTime};

use super::coded;
use super::ids::{BranchId, CustomerId};

coded! {
    /// Why the shop may remind this person.
    "reminder-basis" ReminderBasis {
        /// They agreed, on a date.
        Consent = "consent",
        /// The job's contract covers it (a safety duty of what the shop fitted).
        Contract = "contract",
        /// No ground: only recall and safety letters go out.
        None = "none",
    }
}

/// What the desk writes down about a customer.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct NewCustomer {
    /// Full name, as the person writes it.
    pub name: String,
    /// A spelling in Latin letters, for papers whose fonts lack the name's own script; may be empty.
    pub name_in_latin: String,
    /// Postal address, lines as typed; may be empty.
    pub address: String,
    /// Phone; may be empty.
    pub phone: String,
    /// Mail address; may be empty.
    pub mail: String,
    /// Language tag of papers and messages ("en").
    pub language: String,
    /// Ground for reminders.
    pub reminder_basis: ReminderBasis,
    /// When that ground was given.
    pub reminder_basis_on: Option<Date>,
}

/// A customer as stored.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Customer {
    /// Name for ever.
    pub id: CustomerId,
    /// Branch that keeps the row.
    pub branch_id: BranchId,
    /// Full name.
    pub name: String,
    /// Latin spelling, or empty.
    pub name_in_latin: String,
    /// Postal address, or empty.
    pub address: String,
    /// Phone, or empty.
    pub phone: String,
    /// Mail address, or empty.
    pub mail: String,
    /// "good" or "bad" after two permanent failures.
    pub mail_state: String,
    /// Language tag.
    pub language: String,
    /// Ground for reminders.
    pub reminder_basis: ReminderBasis,
    /// When that ground was given.
    pub reminder_basis_on: Option<Date>,
    /// When the row was made.
    pub created_at: OffsetDateTime,
    /// Grows with every save.
    pub version: i64,
}
