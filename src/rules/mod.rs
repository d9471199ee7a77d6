//! Which proofs a job needs, and whether each is met.
//!
//! [`assess`] is pure: a job file, a rule book and a day go in, a list of proofs comes out. It never asks the clock,
//! the disk or the network, so the same file gives the same list on the screen, on paper and in twenty years.
#![warn(missing_docs)]

pub mod again;
mod assess;
mod book;
mod calibration;
mod compare;
pub mod deficiency;
mod fitting;
mod hand_over;
mod head;
mod idle;
pub mod inspection;
mod intake;
mod interval_line;
pub mod intervals;
mod line;
mod need;
mod proof;
mod proving;
pub mod results;
pub mod road;
mod set;
pub mod term;

pub use assess::assess;
pub use book::{BASE, Limit, RuleBook};
pub use compare::{Change, Looser, Turn, changes, looser};
pub use head::{RepairRestarts, Restart, Retest, RetestHead};
pub use idle::{Idle, NoteLine, OtherFuel, RETEST, key_of};
pub use interval_line::{Anchor, Count, IntervalLine, Marked, Then};
pub use line::{Allowed, CheckLine, Deadline, DecisionRule, LimitLine, ProofLine, Quantity, SetName, TopicLine, Waive};
pub use need::Need;
pub use proof::{Arg, Place, Proof, State, Why, may_issue, tally};
pub use set::{BadSet, EMBEDDED, RuleSet, embedded, sets_of_country};
