//! SQL, one file a noun. Functions take a connection, so that a deed can string several into one transaction.
//!
//! One connection writes, a few read. A write transaction begins with `BEGIN IMMEDIATE`: it is the one queue of the
//! whole program, so nothing slow (mail, drawing, hashing, files) may wait inside it. Text is kept in the part of SQL
//! that SQLite and PostgreSQL share; what only SQLite knows stays in `open.rs`.

use sqlx::Transaction;
use sqlx::pool::PoolConnection;

pub mod attachments;
pub mod audit;
pub mod audit_pack;
pub mod bays;
pub mod bookings;
pub mod branches;
pub mod customers;
pub mod deposits;
pub mod discharges;
pub mod doubts;
pub mod duties;
pub mod estimates;
pub mod evidence;
pub mod findings;
pub mod instruments;
pub mod job_files;
pub mod jobs;
pub mod labels;
pub mod leak_runs;
pub mod links;
pub mod notes;
pub mod numbers;
pub mod odometer;
mod open;
pub mod outbox;
pub mod papers;
pub mod parts;
pub mod people;
pub mod recalls;
pub mod road_matches;
pub mod road_sessions;
pub mod rule_books;
pub mod rule_files;
pub mod search;
pub mod sends;
pub mod sessions;
pub mod settings;
pub mod signing_keys;
pub mod today;
pub mod vehicle_people;
pub mod vehicles;
pub mod whole;

pub use open::{CannotOpen, Database};

/// The engine this build talks to.
#[cfg(feature = "sqlite")]
pub type Db = sqlx::Sqlite;

/// One connection to it.
pub type Con = <Db as sqlx::Database>::Connection;

/// A connection that reads.
pub type Reading = PoolConnection<Db>;

/// A transaction that may write; dropped without `commit`, it never was.
pub type Writing = Transaction<'static, Db>;

/// How the store says no.
#[derive(Debug)]
pub enum Error {
    /// The row was changed since it was read.
    Stale,
    /// A rule of uniqueness spoke; the name is the column's.
    Taken { field: String },
    /// The store itself failed, or a row breaks a rule that no form should have let through.
    Broken(sqlx::Error),
}

impl std::fmt::Display for Error {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Stale => f.write_str("the row was changed meanwhile"),
            Self::Taken { field } => write!(f, "{field} is taken"),
            Self::Broken(error) => write!(f, "the store failed: {error}"),
        }
    }
}

impl std::error::Error for Error {}

impl From<sqlx::Error> for Error {
    fn from(error: sqlx::Error) -> Self {
        match error.as_database_error() {
            Some(said) if said.is_unique_violation() => Self::Taken { field: field_of(said.message()) },
            _ => Self::Broken(error),
        }
    }
}

/// The guarded column: SQLite ends its message with it, `UNIQUE constraint failed: people.branch_id, people.name`.
fn field_of(message: &str) -> String {
    let last = message.rsplit(['.', ',', ':', ' ']).next().unwrap_or(message);
    last.trim_matches(['\'', '"']).to_owned()
}

/// What every function here answers.
pub type Result<T> = std::result::Result<T, Error>;

/// For a save guarded by `where id = $1 and version = $2`: no row means that somebody was quicker.
pub fn exactly_one(done: &<Db as sqlx::Database>::QueryResult) -> Result<()> {
    if done.rows_affected() == 1 { Ok(()) } else { Err(Error::Stale) }
}

#[cfg(test)]
mod tests {
    use super::field_of;

    #[test]
    fn the_guarded_field_is_read_from_the_message() {
        assert_eq!(field_of("UNIQUE constraint failed: people.sign_in_name"), "sign_in_name");
        assert_eq!(field_of("UNIQUE constraint failed: sends.actor, sends.key"), "key");
    }
}
