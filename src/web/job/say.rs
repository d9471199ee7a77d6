//! Reasons, proofs and codes in words, as papers say them too.

pub use crate::papers::reasons::{proof_title, why};
