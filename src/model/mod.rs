//! The nouns of the shop: plain types, parsed once, without SQL or HTTP.

pub mod approval_mark;
pub mod attachment;
pub mod booking;
pub mod branch;
mod coded;
pub mod customer;
pub mod deed;
pub mod deposit;
pub mod doubt;
pub mod duty;
pub mod estimate;
pub mod evidence;
pub mod finding;
pub mod ids;
pub mod instrument;
pub mod job;
pub mod job_file;
pub mod leak_run;
pub mod message;
pub mod money;
pub mod note;
pub mod odometer;
pub mod paper;
pub mod part;
pub mod person;
pub mod recall;
pub mod road;
pub mod stage;
pub mod vehicle;

pub(crate) use coded::coded;
pub use coded::{Coded, NotInList};
