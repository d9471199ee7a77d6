//! The application in a real browser: one conversion by hand, with scripts and without, and what only a browser can see.
#![allow(clippy::unwrap_used, reason = "a test that panics has said what it wanted to say")]

mod driver;
mod pages;
#[path = "../app/papers/reading.rs"]
#[allow(dead_code, reason = "of its tools, this binary uses a part")]
mod reading;
mod road;
#[path = "../app/road_logs.rs"]
#[allow(dead_code, reason = "of its logs, this binary uses a part")]
mod road_logs;
mod server;
mod story;
#[path = "../app/support.rs"]
mod support;
