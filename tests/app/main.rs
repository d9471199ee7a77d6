//! The application as people use it, without a browser.
#![allow(clippy::unwrap_used, reason = "a test that panics has said what it wanted to say")]

mod access;
mod attachments;
mod books;
mod cli;
mod cross_site;
mod deeds;
mod due;
mod ending;
mod face;
mod findings;
mod fitting;
mod house;
mod instruments;
mod issue;
mod job_support;
mod outbox;
mod owed;
mod owner;
mod pages;
mod papers;
mod parts;
mod people;
mod proofs;
mod proving;
mod rounds;
mod rule_files;
mod serve;
mod sign_in;
mod sizing;
mod store;
mod suitability;
mod support;
mod told;
mod waivers;
mod words;
