//! Which proofs a job needs, and whether each is met.
