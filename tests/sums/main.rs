//! The sums, held against published values and independent references.
// Helpers beside the tests may stop them too; the lint's own exception covers only functions marked as tests.
#![allow(clippy::unwrap_used)]

mod approval_mark;
mod decision;
mod due;
mod lambda;
mod leak;
mod leak_plan;
mod leak_units;
mod reference;
mod uncertainty;
mod vin;
