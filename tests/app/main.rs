//! The application as people use it, without a browser.

#![allow(clippy::unwrap_used, reason = "a test that panics has said what it wanted to say")]

mod deeds;
mod face;
mod support;
mod words;
