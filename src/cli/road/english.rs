//! What a comparison says, in English: the command line has no other language.

use std::path::Path;

use crate::calc::road::{Banded, Cell, Warning, Why};
use crate::logs::{BrokenWhy, Tally};

/// Broken lines that are told one by one.
const MOST_TOLD: usize = 3;

/// Why a cell has its verdict.
pub(super) fn why(cell: &Cell, banded: Banded) -> String {
    match cell.why {
        Why::Within => "the whole interval lies within the good share".to_owned(),
        Why::Lean => "the petrol computer lengthens its time on gas: gas is lean here".to_owned(),
        Why::Rich => "the petrol computer shortens its time on gas: gas is rich here".to_owned(),
        Why::Across => "the interval reaches over a limit; more driving here narrows it".to_owned(),
        Why::Drive(_) => drive(cell, banded).unwrap_or_else(|| "not enough driving here".to_owned()),
        Why::OpenLoop => "driven in open loop only, where the injection time proves nothing".to_owned(),
        Why::LoadUnknown => {
            "neither manifold pressure nor trims were logged: the injection time cannot tell its own shift".to_owned()
        }
    }
}

/// What to drive for a cell that lacks visits.
pub(super) fn drive(cell: &Cell, banded: Banded) -> Option<String> {
    let Why::Drive(missing) = cell.why else { return None };
    let load = match banded {
        Banded::Manifold => format!("{} to {} kPa", cell.load_from, cell.load_to),
        Banded::InjectionTime => format!("{} to {} ms", cell.load_from, cell.load_to),
    };
    let sides = [(missing.petrol, "petrol"), (missing.gas, "gas")];
    let sides: Vec<String> = sides
        .iter()
        .filter(|(visits, _)| *visits > 0)
        .map(|(visits, fuel)| format!("{visits} more on {fuel}"))
        .collect();
    Some(format!(
        "not enough driving at {} to {} rpm, {load}: visits lacking: {}",
        cell.rpm_from,
        cell.rpm_to,
        sides.join(", ")
    ))
}

/// What a reader should know.
pub(super) fn warning(warning: &Warning) -> String {
    match warning {
        Warning::FuelStated => "fuel stated, not logged".to_owned(),
        Warning::NoCoolant => "no coolant temperature was logged: cold rows could not be set aside".to_owned(),
        Warning::NoClosedLoop => {
            "closed loop was not logged: rows in which the oxygen sensor did not steer could not be set aside, and look \
             alike on both fuels; a good verdict at high load proves nothing then"
                .to_owned()
        }
        Warning::NoManifold => {
            "no manifold pressure was logged: cells are by injection time with the trims taken off".to_owned()
        }
        Warning::LoadUnknown => "neither manifold pressure nor trims were logged: nothing is judged".to_owned(),
        Warning::OneTrim => "only one of short and long trim was logged; totals are what should be compared".to_owned(),
        Warning::LeanAtLoad { percent } => format!(
            "gas is lean by up to {percent:.1} % next to high load, where closed loop cannot see; a lean mixture there \
             burns exhaust valves and their seats and can melt pistons: do not drive at full load on gas before it is mended and measured"
        ),
        Warning::LoadUnseen => {
            "high load was driven in open loop only: nothing is known of the mixture there; have it measured".to_owned()
        }
        Warning::ShortTimes => {
            "some injection times are below 4 ms, where the injector's dead time makes a factor a few per cent off"
                .to_owned()
        }
        Warning::ManyBroken { percent } => format!("{percent:.1} % of the lines could not be read"),
    }
}

/// The first lines of a log that could not be read.
pub(super) fn broken(path: &Path, tally: &Tally) -> Vec<String> {
    let name = path.display();
    let told = tally.shown.iter().take(MOST_TOLD).map(|shown| {
        let why = match shown.why {
            BrokenWhy::TooLong => "longer than any row".to_owned(),
            BrokenWhy::OpenQuote => "a quotation mark opens and none closes".to_owned(),
            BrokenWhy::TooFew { fields } => format!("{fields} fields, fewer than a row has"),
            BrokenWhy::TooMany { fields } => format!("{fields} fields, more than a row has"),
            BrokenWhy::NotANumber { quantity } => format!("{} is no finite number", quantity.code()),
        };
        format!("line {} of {name} cannot be read: {why}", shown.line)
    });
    let more = tally.broken.saturating_sub(MOST_TOLD as u64);
    told.chain((more > 0).then(|| format!("{more} more lines of {name} cannot be read"))).collect()
}
