//! Fuelwright keeps a workshop's conversion jobs from intake to a signed certificate and the reminders after it.
//!
//! The map of the house, inner rooms first. Which room may use which is written down, and checked, in
//! `tests/app/house.rs`.
#![forbid(unsafe_code)]

pub mod attachments;
pub mod calc;
pub mod charts;
pub mod clock;
pub mod config;
pub mod logs;
pub mod model;
pub mod rules;
pub mod seal;
pub mod unit;
pub mod words;

pub mod db;
pub mod mail;
pub mod papers;
pub mod shop;

pub mod backup;
pub mod cli;
pub mod demo;
pub mod exchange;
pub mod rounds;
pub mod web;
