//! The Bench: every sum of the shop, usable without a job.
//!
//! A page is a plain form that stands in the address, so that a link gives the answer again. A sum says its fields, reads
//! them, and lays its answer out ([`BenchSum`]); [`sum::show`] does the rest for all of them. Nothing is kept: what
//! belongs to a vehicle is recorded on its job file.

pub mod answered;
pub mod chart_said;
mod container;
mod cylinder;
mod due;
mod economy;
mod fast_fill;
mod fuel;
pub mod fuel_rate;
mod gas;
mod hose;
mod lambda;
mod leak;
mod leak_plan;
pub mod leak_said;
mod leak_units;
mod liquid;
mod nozzle;
mod nozzle_flow;
mod nozzle_said;
pub mod number;
mod regulator;
pub mod sum;
mod uncertainty;
mod vaporiser;
mod vin;

use askama::Template;

pub use answered::Answered;
pub use container::ContainerSum;
pub use cylinder::CylinderSum;
pub use due::DueSum;
pub use economy::EconomySum;
pub use fast_fill::FastFillSum;
pub use fuel::FuelSum;
pub use gas::GasSum;
pub use hose::HoseSum;
pub use lambda::LambdaSum;
pub use leak::LeakSum;
pub use leak_plan::LeakPlanSum;
pub use leak_units::LeakUnitsSum;
pub use liquid::LiquidSum;
pub use nozzle::{NozzleFromPetrolSum, NozzleSum};
pub use nozzle_flow::NozzleFlowSum;
pub use regulator::RegulatorSum;
pub use sum::{BenchSum, show};
pub use uncertainty::UncertaintySum;
pub use vaporiser::VaporiserSum;
pub use vin::VinSum;

use super::visitor::Visitor;
use super::{Answer, path};
use crate::web::page::{Frame, Place, page};

/// What a technician wants to know, and the sums that answer it.
const SHELVES: &[(&str, &[&str])] = &[
    ("fuel", &["fuel", "liquid", "gas"]),
    ("nozzle", &["nozzle", "nozzle-from-petrol", "nozzle-flow"]),
    ("heat", &["vaporiser", "regulator", "hose"]),
    ("storage", &["container", "cylinder", "fast-fill"]),
    ("proving", &["leak", "leak-plan", "leak-units", "lambda", "uncertainty"]),
    ("desk", &["economy", "due", "vin"]),
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
