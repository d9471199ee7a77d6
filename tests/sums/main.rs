//! The sums, held against published values and independent references.
#![expect(clippy::unwrap_used, reason = "functions beside the tests may stop them; the lint's exception misses those")]

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
