//! A road comparison as proofs and papers look at it: whether enough was driven, whether both fuels are alike, what to
//! drive next, what to correct where.

use super::assess::Ground;
use super::book::RuleBook;
use super::line::Quantity;
use super::proof::{Arg, Place, Said, State, Why};
use crate::calc::road::{Banded, Cell, CellVerdict, Comparison, NozzleWord, Plan, Warning};
use crate::model::evidence::{Entry, Evidence, RoadComparison};
use crate::model::job_file::JobFile;
use time::Date;

/// Operating points that a comparison judges at least where no line says more (common practice).
const LEAST_CELLS: f64 = 8.0;
/// Corrections are said in whole steps of this size, per cent: finer than any control unit's map is worth.
const STEP_PERCENT: f64 = 1.0;

/// A range of neighbouring operating points.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stretch {
    /// Lower edge of engine speed, 1/min.
    pub rpm_from: f64,
    /// Upper edge.
    pub rpm_to: f64,
    /// Lower edge of load: kPa absolute, or ms.
    pub load_from: f64,
    /// Upper edge.
    pub load_to: f64,
}

/// Visits that each operating point of a range still lacks.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ToDrive {
    /// Where.
    pub stretch: Stretch,
    /// On petrol.
    pub petrol: u32,
    /// On gas.
    pub gas: u32,
}

/// A correction of the gas amount over a range.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Correction {
    /// Where.
    pub stretch: Stretch,
    /// By how much, per cent; positive is more gas.
    pub percent: f64,
}

/// What a comparison comes to as a whole.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RoadOutcome {
    /// What was judged is alike.
    Alike,
    /// Somewhere gas differs from petrol.
    Apart,
    /// Nothing differs surely, and something is not sure.
    CannotTell,
}

impl RoadOutcome {
    /// Of a comparison.
    pub fn of(found: &Comparison) -> Self {
        match () {
            () if count(found, CellVerdict::Deviates) > 0 => Self::Apart,
            () if count(found, CellVerdict::Undecided) > 0 || count(found, CellVerdict::Good) == 0 => Self::CannotTell,
            () => Self::Alike,
        }
    }

    /// Its name in the words.
    pub const fn key(self) -> &'static str {
        match self {
            Self::Alike => "alike",
            Self::Apart => "apart",
            Self::CannotTell => "cannot-tell",
        }
    }
}

/// How many operating points have this verdict.
pub fn count(found: &Comparison, verdict: CellVerdict) -> usize {
    found.cells.iter().filter(|cell| cell.verdict == verdict).count()
}

/// Operating points with enough visits on both fuels.
pub fn judged(found: &Comparison) -> usize {
    let is_judged =
        |cell: &&Cell| matches!(cell.verdict, CellVerdict::Good | CellVerdict::Deviates | CellVerdict::Undecided);
    found.cells.iter().filter(is_judged).count()
}

/// The operating point farthest from alike, of those with this verdict.
pub fn worst(found: &Comparison, verdict: CellVerdict) -> Option<(&Cell, f64)> {
    let cells = found.cells.iter().filter(|cell| cell.verdict == verdict);
    let with = cells.filter_map(|cell| cell.deviation_percent.map(|percent| (cell, percent)));
    with.max_by(|a, b| a.1.abs().total_cmp(&b.1.abs()))
}

/// What the lines in force on a day ask of a comparison of this job.
pub fn plan(book: &RuleBook, file: &JobFile, on: Date) -> Plan {
    let usual = Plan::default();
    let limit = |quantity| book.limit(quantity, &file.job, &file.vehicle, None, on);
    let most = |quantity, usual: f64| limit(quantity).and_then(|limit| limit.most).map_or(usual, |(most, _)| most);
    let visits = limit(Quantity::RoadVisits).and_then(|limit| limit.least).map(|(least, _)| least);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "held between 1 and 1000")]
    let visits = visits.map_or(usual.visits, |least| least.ceil().clamp(1.0, 1_000.0) as u32);
    Plan {
        visits,
        deviates_percent: most(Quantity::RoadDeviatesPercent, usual.deviates_percent),
        good_percent: most(Quantity::RoadGoodPercent, usual.good_percent),
        ..usual
    }
}

/// Joins neighbours that say the same: along the load first, then along the speed.
fn joined<T: Copy>(
    cells: Vec<(Stretch, T)>,
    is_same: impl Fn(&T, &T) -> bool,
    both: impl Fn(T, T) -> T,
) -> Vec<(Stretch, T)> {
    let touches = |a: f64, b: f64| (a - b).abs() < 1e-6;
    let mut rows: Vec<(Stretch, T)> = Vec::new();
    for (next, value) in cells {
        let last = rows.last_mut().filter(|(last, known)| {
            touches(last.rpm_from, next.rpm_from) && touches(last.load_to, next.load_from) && is_same(known, &value)
        });
        match last {
            Some((last, known)) => {
                last.load_to = next.load_to;
                *known = both(*known, value);
            }
            None => rows.push((next, value)),
        }
    }
    let mut out: Vec<(Stretch, T)> = Vec::new();
    for (next, value) in rows {
        let above = out.iter_mut().find(|(last, known)| {
            touches(last.rpm_to, next.rpm_from)
                && touches(last.load_from, next.load_from)
                && touches(last.load_to, next.load_to)
                && is_same(known, &value)
        });
        match above {
            Some((last, known)) => {
                last.rpm_to = next.rpm_to;
                *known = both(*known, value);
            }
            None => out.push((next, value)),
        }
    }
    out
}

fn stretch(cell: &Cell) -> Stretch {
    Stretch { rpm_from: cell.rpm_from, rpm_to: cell.rpm_to, load_from: cell.load_from, load_to: cell.load_to }
}

/// What to drive next, least missing first. Points that one fuel has not met are left out unless nothing else lacks: who
/// drove there once by chance need not go there again.
pub fn to_drive(found: &Comparison) -> Vec<ToDrive> {
    let wanted = found.plan.visits;
    let lacking = |cell: &&Cell| cell.verdict == CellVerdict::NotEnough;
    let has_both = |cell: &&Cell| cell.petrol_visits > 0 && cell.gas_visits > 0;
    let is_any = found.cells.iter().filter(lacking).any(|cell| has_both(&cell));
    let cells = found.cells.iter().filter(lacking).filter(|cell| !is_any || has_both(cell));
    let missing = |cell: &Cell| (wanted.saturating_sub(cell.petrol_visits), wanted.saturating_sub(cell.gas_visits));
    let cells = cells.map(|cell| (stretch(cell), missing(cell))).collect();
    let same_fuels = |a: &(u32, u32), b: &(u32, u32)| (a.0 > 0, a.1 > 0) == (b.0 > 0, b.1 > 0);
    let ranges = joined(cells, same_fuels, |a, b| (a.0.max(b.0), a.1.max(b.1)));
    let mut ranges: Vec<ToDrive> =
        ranges.into_iter().map(|(stretch, (petrol, gas))| ToDrive { stretch, petrol, gas }).collect();
    ranges.sort_by_key(|one| one.petrol + one.gas);
    ranges
}

/// What to correct where, by engine speed, then load.
pub fn corrections(found: &Comparison) -> Vec<Correction> {
    let percent = |factor: f64| (100.0 * (factor - 1.0) / STEP_PERCENT).round() * STEP_PERCENT;
    let cells = found.cells.iter().filter_map(|cell| Some((stretch(cell), percent(cell.advised_factor?))));
    let cells = cells.filter(|(_, percent)| *percent != 0.0).collect();
    let ranges = joined(cells, |a: &f64, b| (a - b).abs() < 1e-9, |a, _| a);
    ranges.into_iter().map(|(stretch, percent)| Correction { stretch, percent }).collect()
}

fn place() -> Place {
    Place::Evidence("road", "", "log_petrol")
}

fn accepted<'a>(ground: &'a Ground<'_>) -> Option<(&'a Entry, &'a RoadComparison)> {
    ground.file.shown("road", "", |body| match body {
        Evidence::RoadComparison(one) => Some(one),
        _ => None,
    })
}

/// A reason that names an operating point or a range of them.
fn at(why: Why, found: &Comparison, stretch: Stretch) -> Why {
    let (decimals, unit) = match found.banded {
        Banded::Manifold => (0, "kPa"),
        Banded::InjectionTime => (1, "ms"),
    };
    why.number("rpm_from", stretch.rpm_from, 0)
        .number("rpm_to", stretch.rpm_to, 0)
        .quantity("load_from", stretch.load_from, decimals, unit)
        .quantity("load_to", stretch.load_to, decimals, unit)
}

/// A reason that says what to drive, where anything is known to lack.
fn with_drive(found: &Comparison, plain: &'static str, driven: &'static str, fill: impl Fn(Why) -> Why) -> Why {
    let Some(next) = to_drive(found).into_iter().next() else { return fill(Why::plain(plain)) };
    let fuel = match (next.petrol, next.gas) {
        (_, 0) => "petrol",
        (0, _) => "gas",
        _ => "both",
    };
    let why = fill(Why::plain(driven)).number("visits", f64::from(next.petrol.max(next.gas)), 0);
    at(why.with("fuel", Arg::Code("road-on", fuel)), found, next.stretch)
}

/// Enough was driven on both fuels: points with enough visits, high load among them.
pub(super) fn covered(ground: &Ground<'_>) -> Said {
    let Some((entry, one)) = accepted(ground) else { return Said::missing(place()) };
    let found = &one.comparison;
    let (file, on) = (ground.file, (ground.day_of)(entry.measured_at));
    let asked = plan(ground.book, file, on);
    let least = ground.book.limit(Quantity::RoadCells, &file.job, &file.vehicle, None, on);
    let least = least.and_then(|limit| limit.least).map_or(LEAST_CELLS, |(least, _)| least);
    let undecided = |why| Said::new(State::Undecided, why, place()).on(entry);
    if found.plan.visits < asked.visits {
        return undecided(Why::plain("road-older-limits"));
    }
    let got = judged(found) as f64;
    if got < least {
        let fill = |why: Why| why.number("got", got, 0).number("least", least, 0);
        return undecided(with_drive(found, "road-few-cells", "road-few-cells-drive", fill));
    }
    let is_unseen = found.warnings.iter().any(|warning| matches!(warning, Warning::LoadUnseen));
    if matches!(found.nozzle, NozzleWord::NotDriven) && !is_unseen {
        return undecided(Why::plain("road-load-not-driven"));
    }
    Said::met(Why::plain("road-covered").number("got", got, 0), place()).on(entry)
}

/// Both fuels are alike wherever it could be judged.
pub(super) fn alike(ground: &Ground<'_>) -> Said {
    let Some((entry, one)) = accepted(ground) else { return Said::missing(place()) };
    let found = &one.comparison;
    let asked = plan(ground.book, ground.file, (ground.day_of)(entry.measured_at));
    let is_looser =
        found.plan.deviates_percent > asked.deviates_percent || found.plan.good_percent > asked.good_percent;
    if is_looser {
        return Said::new(State::Undecided, Why::plain("road-older-limits"), place()).on(entry);
    }
    let numbered = |key, verdict| Why::plain(key).number("cells", count(found, verdict) as f64, 0);
    match (RoadOutcome::of(found), worst(found, CellVerdict::Deviates)) {
        (RoadOutcome::Apart, Some((cell, percent))) => {
            let key = if percent > 0.0 { "road-lean" } else { "road-rich" };
            let why = numbered(key, CellVerdict::Deviates).quantity("percent", percent.abs(), 1, "%");
            Said::stops(at(why, found, stretch(cell)), place()).on(entry)
        }
        (RoadOutcome::Alike, _) => {
            let worst = worst(found, CellVerdict::Good).map_or(0.0, |(_, percent)| percent.abs());
            Said::met(numbered("road-alike", CellVerdict::Good).quantity("percent", worst, 1, "%"), place()).on(entry)
        }
        _ => {
            let fill = |why: Why| why.number("cells", count(found, CellVerdict::Undecided) as f64, 0);
            let why = with_drive(found, "road-undecided", "road-undecided-drive", fill);
            Said::new(State::Undecided, why, place()).on(entry)
        }
    }
}

/// What driving says against the nozzle: back to Sizing, with the reason.
pub(super) fn against_nozzle(ground: &Ground<'_>) -> Option<Said> {
    let (entry, one) = accepted(ground)?;
    let why = match one.comparison.nozzle {
        NozzleWord::TooSmall { lean_percent, .. } => {
            Why::plain("road-nozzle-too-small").quantity("percent", lean_percent, 1, "%")
        }
        NozzleWord::TooLarge { rich_percent } => {
            Why::plain("road-nozzle-too-large").quantity("percent", rich_percent, 1, "%")
        }
        NozzleWord::Serves | NozzleWord::NotDriven => return None,
    };
    Some(Said::stops(why, Place::Evidence("nozzle-sizing", "", "rated_power_kw")).on(entry))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cell(rpm: f64, kpa: f64, visits: (u32, u32), factor: Option<f64>) -> Cell {
        Cell {
            rpm_from: rpm,
            rpm_to: rpm + 500.0,
            load_from: kpa,
            load_to: kpa + 10.0,
            petrol_visits: visits.0,
            gas_visits: visits.1,
            petrol_ms: None,
            gas_ms: None,
            deviation_percent: None,
            low_percent: None,
            high_percent: None,
            verdict: CellVerdict::NotEnough,
            advised_factor: factor,
            why: crate::calc::road::Why::Within,
        }
    }

    fn found(cells: Vec<Cell>) -> Comparison {
        Comparison {
            plan: Plan::default(),
            banded: Banded::Manifold,
            fuel_known: crate::calc::road::FuelKnown::Logged,
            cells,
            set_aside: std::collections::BTreeMap::new(),
            rows: crate::calc::road::Rows::default(),
            trims: Vec::new(),
            strips: Vec::new(),
            nozzle: NozzleWord::Serves,
            warnings: Vec::new(),
        }
    }

    #[test]
    fn neighbours_that_lack_the_same_are_one_range_to_drive() {
        let cells = vec![
            cell(2_000.0, 60.0, (3, 6), None),
            cell(2_000.0, 70.0, (4, 9), None),
            cell(2_500.0, 60.0, (5, 6), None),
            cell(2_500.0, 70.0, (5, 6), None),
            cell(2_500.0, 90.0, (0, 1), None),
            cell(3_500.0, 30.0, (6, 2), None),
        ];
        let asked = to_drive(&found(cells));
        let first = Stretch { rpm_from: 2_000.0, rpm_to: 3_000.0, load_from: 60.0, load_to: 80.0 };
        let second = Stretch { rpm_from: 3_500.0, rpm_to: 4_000.0, load_from: 30.0, load_to: 40.0 };
        let wanted = [ToDrive { stretch: first, petrol: 3, gas: 0 }, ToDrive { stretch: second, petrol: 0, gas: 4 }];
        assert_eq!(asked, wanted, "where petrol was never met is left out");
    }

    #[test]
    fn corrections_of_the_same_whole_per_cent_are_one_region() {
        let cells = vec![
            cell(2_000.0, 60.0, (9, 9), Some(1.041)),
            cell(2_000.0, 70.0, (9, 9), Some(1.044)),
            cell(2_000.0, 80.0, (9, 9), Some(1.004)),
            cell(2_500.0, 60.0, (9, 9), Some(0.97)),
        ];
        let said: Vec<(f64, f64, f64)> = corrections(&found(cells))
            .iter()
            .map(|one| (one.stretch.rpm_from, one.stretch.load_to, one.percent))
            .collect();
        assert_eq!(said, [(2_000.0, 80.0, 4.0), (2_500.0, 70.0, -3.0)]);
    }
}
