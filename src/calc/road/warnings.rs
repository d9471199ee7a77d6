//! What a reader of a comparison should know.

use super::judge::Judged;
use super::sieve::Load;
use super::trims::Bounds;
use super::{CellVerdict, FuelKnown, Has, Plan, Quantity, Rows, Warning};

/// Below this the dead time of an injector is no small part of its time, ms (common practice).
const SHORT_MS: f64 = 4.0;
/// More lines than this that cannot be read are many, per cent.
const MANY_PERCENT: f64 = 5.0;

/// All that hold, in a fixed order: what may break an engine first.
pub(super) fn warnings(
    judged: &[Judged],
    bounds: Bounds,
    (has, by, known): (Has, Load, FuelKnown),
    rows: Rows,
    plan: &Plan,
) -> Vec<Warning> {
    let lacks = |quantity: Quantity| !has.has(quantity);
    let trims = [Quantity::ShortTrim, Quantity::LongTrim].map(|trim| has.has(trim));
    let all = rows.petrol + rows.gas + rows.broken;
    let broken_percent = if all > 0 { 100.0 * rows.broken as f64 / all as f64 } else { 0.0 };
    let is_short = |one: &Judged| one.deviation.is_some() && one.cell.petrol_ms.is_some_and(|ms| ms < SHORT_MS);
    let asked = [
        lean_at_load(judged, bounds, plan).map(|percent| Warning::LeanAtLoad { percent }),
        is_unseen(judged, bounds).then_some(Warning::LoadUnseen),
        (by == Load::Untold).then_some(Warning::LoadUnknown),
        (by == Load::Trimmed).then_some(Warning::NoManifold),
        (known == FuelKnown::Stated).then_some(Warning::FuelStated),
        lacks(Quantity::CoolantC).then_some(Warning::NoCoolant),
        lacks(Quantity::ClosedLoop).then_some(Warning::NoClosedLoop),
        (trims[0] != trims[1]).then_some(Warning::OneTrim),
        judged.iter().any(is_short).then_some(Warning::ShortTimes),
        (broken_percent > MANY_PERCENT).then_some(Warning::ManyBroken { percent: broken_percent }),
    ];
    asked.into_iter().flatten().collect()
}

fn is_high(one: &Judged, bounds: Bounds) -> bool {
    0.5 * (one.cell.load_from + one.cell.load_to) >= bounds.loaded
}

/// Greatest deviation of cells that may be lean at high load, or right below cells that were driven in open loop alone:
/// what is lean there is lean beyond, where nothing corrects it.
fn lean_at_load(judged: &[Judged], bounds: Bounds, plan: &Plan) -> Option<f64> {
    let is_blind_above = |one: &Judged| {
        let is_above = |other: &&Judged| other.place.rpm == one.place.rpm && other.place.load == one.place.load + 1;
        judged.iter().find(is_above).is_some_and(|other| other.cell.verdict == CellVerdict::NoFeedback)
    };
    judged
        .iter()
        .filter(|one| is_high(one, bounds) || is_blind_above(one))
        .filter_map(|one| one.cell.deviation_percent)
        .filter(|percent| *percent > plan.deviates_percent)
        .reduce(f64::max)
}

/// High load was driven, but in open loop alone.
fn is_unseen(judged: &[Judged], bounds: Bounds) -> bool {
    let high = || judged.iter().filter(|one| is_high(one, bounds));
    let is_seen = high().any(|one| one.deviation.is_some());
    let is_blind = high().any(|one| one.cell.verdict == CellVerdict::NoFeedback);
    is_blind && !is_seen
}
