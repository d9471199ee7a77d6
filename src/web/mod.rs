//! Pages: every address, who may, and what it answers.
//!
//! `routes.rs` is the one table; each row names its handler and who may come. A handler is given the [`app::App`], the
//! [`visitor::Visitor`], the path and what was typed, and gives an [`Answer`]. Reading goes straight to `db`, changing
//! through a deed of `shop`.

use axum::response::Response;

pub mod account;
pub mod app;
pub mod arrivals;
pub mod assets;
pub mod attachments;
pub mod bay_plan;
pub mod bench;
mod client;
pub mod customers;
pub mod doubts;
pub mod due;
pub mod error;
mod file_body;
pub mod findings;
pub mod form;
pub mod fuel_mix;
pub mod health;
pub mod instruments;
pub mod job;
pub mod jobs;
pub mod kit;
pub mod language;
pub mod listing;
pub mod nozzle;
pub mod office;
pub mod outbox;
pub mod owner;
pub mod page;
pub mod papers;
pub mod path;
pub mod photos;
pub mod routes;
pub mod rule_sets;
pub mod search;
pub mod security;
pub mod serve;
pub mod set_up;
pub mod sign_in;
pub mod sum;
pub mod today;
pub mod vehicle_page;
pub mod vehicles;
pub mod verify;
pub mod visitor;

pub use error::Error;

/// What a handler gives: a response, or why there is none.
pub type Answer = Result<Response, Error>;
