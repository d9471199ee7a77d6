//! Nozzle sizing on a page: what is typed, and what the sum says. The job file and the Bench share it.

pub mod engine;
pub mod further;
pub mod said;
pub mod sets;
