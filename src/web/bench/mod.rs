//! The Bench: every sum of the shop, usable without a job.
//!
//! A page is a plain form that stands in the address, so that a link gives the answer again. A sum says its fields, reads
//! them, and lays its answer out ([`BenchSum`]); [`sum::show`] does the rest for all of them. Nothing is kept: what
//! belongs to a vehicle is recorded on its job file.

pub mod answered;
mod fuel;
pub mod fuel_rate;
mod gas;
mod hose;
mod liquid;
mod nozzle;
mod nozzle_flow;
mod nozzle_said;
pub mod number;
mod regulator;
pub mod sum;
mod vaporiser;

use askama::Template;

pub use answered::Answered;
pub use fuel::FuelSum;
pub use gas::GasSum;
pub use hose::HoseSum;
pub use liquid::LiquidSum;
pub use nozzle::{NozzleFromPetrolSum, NozzleSum};
pub use nozzle_flow::NozzleFlowSum;
pub use regulator::RegulatorSum;
pub use sum::{BenchSum, show};
pub use vaporiser::VaporiserSum;

use super::visitor::Visitor;
use super::{Answer, path};
use crate::web::page::{Frame, Place, page};

/// What a technician wants to know, and the sums that answer it.
const SHELVES: &[(&str, &[&str])] = &[
    ("fuel", &["fuel", "liquid", "gas"]),
    ("nozzle", &["nozzle", "nozzle-from-petrol", "nozzle-flow"]),
    ("heat", &["vaporiser", "regulator", "hose"]),
];

/// One sum of the list.
#[derive(Debug)]
struct Entry {
    title: String,
    href: String,
    lead: String,
}

#[derive(Template)]
#[template(path = "bench/list.html")]
struct ListPage {
    frame: Frame,
    shelves: Vec<(String, Vec<Entry>)>,
}

/// `GET /bench`: the sums, by what one wants to know.
pub async fn list(who: Visitor) -> Answer {
    let w = who.words();
    let entry = |key: &&str| Entry {
        title: w.t(format!("bench-sum-{key}")),
        href: path::bench(key),
        lead: w.t(format!("bench-sum-{key}.lead")),
    };
    let shelf = |(name, keys): &(&str, &[&str])| {
        (w.t(format!("bench-shelf-{name}")), keys.iter().map(entry).collect::<Vec<_>>())
    };
    let shelves = SHELVES.iter().map(shelf).collect();
    page(ListPage { frame: who.frame().at(Place::Bench), shelves })
}
