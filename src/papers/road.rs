//! A road comparison in words: what it comes to, what to drive next, what to correct where, what to beware of. The same
//! sentences on a page and on a paper.

use crate::calc::road::{
    Banded, Burned, Cell, CellVerdict, Comparison, FuelKnown, NozzleWord, TrimPoint, Warning, Why,
};
use crate::rules::road::{RoadOutcome, Stretch, corrections, count, judged, to_drive, worst};
use crate::words::Words;

/// Ranges named at most: a driver keeps no more in mind.
const MOST_RANGES: usize = 8;

/// A number with its sign, per cent, without the unit: "+4.1", "−2.0".
pub fn signed(words: &Words, percent: f64) -> String {
    let sign = if percent >= 0.05 { "+" } else { "" };
    format!("{sign}{}", words.number(percent, 1))
}

/// "2 000–2 500 /min, 60–80 kPa".
pub fn region(words: &Words, found: &Comparison, at: Stretch) -> String {
    let speed = words.span(at.rpm_from, at.rpm_to, 0, "/min");
    format!("{speed}, {}", load(words, found, at.load_from, at.load_to))
}

fn load(words: &Words, found: &Comparison, from: f64, to: f64) -> String {
    match found.banded {
        Banded::Manifold => words.span(from, to, 0, "kPa"),
        Banded::InjectionTime => words.span(from, to, 1, "ms"),
    }
}

fn of(cell: &Cell) -> Stretch {
    Stretch { rpm_from: cell.rpm_from, rpm_to: cell.rpm_to, load_from: cell.load_from, load_to: cell.load_to }
}

/// What it comes to, in two or three words.
pub fn title(words: &Words, found: &Comparison) -> String {
    words.t(format!("road-title-{}", RoadOutcome::of(found).key()))
}

/// What it comes to, with the numbers and what would change them.
pub fn sentences(words: &Words, found: &Comparison) -> Vec<String> {
    let number = |verdict| count(found, verdict).into();
    let values = [
        ("judged", judged(found).into()),
        ("good", number(CellVerdict::Good)),
        ("apart", number(CellVerdict::Deviates)),
        ("undecided", number(CellVerdict::Undecided)),
        ("few", number(CellVerdict::NotEnough)),
        ("visits", i64::from(found.plan.visits).into()),
        ("deviates", words.number(found.plan.deviates_percent, 0).into()),
        ("within", words.number(found.plan.good_percent, 0).into()),
    ];
    let outcome = RoadOutcome::of(found);
    let mut all = vec![words.tv(&format!("road-said-{}", outcome.key()), &values)];
    if let Some((cell, percent)) = worst(found, CellVerdict::Deviates) {
        let key = if percent > 0.0 { "road-said-lean" } else { "road-said-rich" };
        let values = [
            ("region", region(words, found, of(cell)).into()),
            ("percent", words.quantity(percent.abs(), 1, "%").into()),
        ];
        all.push(words.tv(key, &values));
    }
    all.push(fuel(words, found));
    all
}

/// How it is known which fuel burned.
pub fn fuel(words: &Words, found: &Comparison) -> String {
    words.t(match found.fuel_known {
        FuelKnown::Logged => "road-fuel-logged",
        FuelKnown::Stated => "road-fuel-stated",
    })
}

/// What to drive next, range by range; nothing where nothing lacks.
pub fn drive(words: &Words, found: &Comparison) -> Vec<String> {
    let ranges = to_drive(found);
    let said = |one: &crate::rules::road::ToDrive| {
        let fuel = match (one.petrol, one.gas) {
            (_, 0) => "petrol",
            (0, _) => "gas",
            _ => "both",
        };
        let values = [
            ("visits", i64::from(one.petrol.max(one.gas)).into()),
            ("region", region(words, found, one.stretch).into()),
            ("fuel", words.t(format!("road-on-{fuel}")).into()),
        ];
        words.tv("road-drive", &values)
    };
    let mut all: Vec<String> = ranges.iter().take(MOST_RANGES).map(said).collect();
    if ranges.len() > MOST_RANGES {
        all.push(words.tv("road-drive-more", &[("n", (ranges.len() - MOST_RANGES).into())]));
    }
    all
}

/// What a reader should know beside the verdict.
pub fn warnings(words: &Words, found: &Comparison) -> Vec<String> {
    let said = |warning: &Warning| match warning {
        // One is said with the verdict, the other by itself before everything else.
        Warning::FuelStated | Warning::LeanAtLoad { .. } => None,
        Warning::ManyBroken { percent } => {
            Some(words.tv("road-warning-broken", &[("percent", words.quantity(*percent, 1, "%").into())]))
        }
        Warning::NoCoolant => Some(words.t("road-warning-no-coolant")),
        Warning::NoClosedLoop => Some(words.t("road-warning-no-closed-loop")),
        Warning::NoManifold => Some(words.t("road-warning-no-manifold")),
        Warning::LoadUnknown => Some(words.t("road-warning-load-unknown")),
        Warning::OneTrim => Some(words.t("road-warning-one-trim")),
        Warning::LoadUnseen => Some(words.t("road-warning-load-unseen")),
        Warning::ShortTimes => Some(words.t("road-warning-short-times")),
    };
    found.warnings.iter().filter_map(said).collect()
}

/// Lean at high load, with the damage it does.
pub fn lean_at_load(words: &Words, found: &Comparison) -> Option<String> {
    found.warnings.iter().find_map(|warning| match warning {
        Warning::LeanAtLoad { percent } => {
            Some(words.tv("road-lean-at-load", &[("percent", words.quantity(*percent, 1, "%").into())]))
        }
        _ => None,
    })
}

/// What driving says against the nozzle.
pub fn nozzle(words: &Words, found: &Comparison) -> Option<String> {
    let percent = |percent: f64| words.quantity(percent, 1, "%").into();
    match found.nozzle {
        NozzleWord::TooSmall { lean_percent, duty_percent: Some(duty) } if duty >= 90.0 => {
            let values = [("percent", percent(lean_percent)), ("duty", words.quantity(duty, 0, "%").into())];
            Some(words.tv("road-nozzle-open", &values))
        }
        NozzleWord::TooSmall { lean_percent, .. } => {
            Some(words.tv("road-nozzle-small", &[("percent", percent(lean_percent))]))
        }
        NozzleWord::TooLarge { rich_percent } => {
            Some(words.tv("road-nozzle-large", &[("percent", percent(rich_percent))]))
        }
        NozzleWord::Serves | NozzleWord::NotDriven => None,
    }
}

/// A cell as a line of a table.
#[derive(Debug, Clone, PartialEq)]
pub struct CellLine {
    /// "2 000–2 500".
    pub speed: String,
    /// "60–70".
    pub load: String,
    /// Visits on petrol and on gas: "8, 9".
    pub visits: String,
    /// Deviation: "+4.1".
    pub deviation: String,
    /// Its interval: "+2.0 to +6.2".
    pub interval: String,
    /// The verdict, in words.
    pub said: String,
    /// What to multiply the gas amount with, as per cent: "+4".
    pub correction: String,
    /// The verdict.
    pub verdict: CellVerdict,
}

/// Every cell, by engine speed, then load.
pub fn cells(words: &Words, found: &Comparison) -> Vec<CellLine> {
    let decimals = u8::from(found.banded != Banded::Manifold);
    let dash = || "–".to_owned();
    let line = |cell: &Cell| CellLine {
        speed: words.span(cell.rpm_from, cell.rpm_to, 0, "").trim_end().to_owned(),
        load: words.span(cell.load_from, cell.load_to, decimals, "").trim_end().to_owned(),
        visits: format!("{}, {}", cell.petrol_visits, cell.gas_visits),
        deviation: cell.deviation_percent.map_or_else(dash, |percent| signed(words, percent)),
        interval: cell.low_percent.zip(cell.high_percent).map_or_else(dash, |(low, high)| {
            let values = [("low", signed(words, low).into()), ("high", signed(words, high).into())];
            words.tv("road-interval", &values)
        }),
        said: verdict(words, cell),
        correction: cell.advised_factor.map_or_else(dash, |factor| signed(words, 100.0 * (factor - 1.0))),
        verdict: cell.verdict,
    };
    found.cells.iter().map(line).collect()
}

fn verdict(words: &Words, cell: &Cell) -> String {
    match cell.why {
        Why::Within => words.t("road-cell-good"),
        Why::Lean => words.t("road-cell-lean"),
        Why::Rich => words.t("road-cell-rich"),
        Why::Across => words.t("road-cell-undecided"),
        Why::OpenLoop => words.t("road-cell-no-feedback"),
        Why::LoadUnknown => words.t("road-cell-load-unknown"),
        Why::Drive(missing) => {
            let values = [("petrol", i64::from(missing.petrol).into()), ("gas", i64::from(missing.gas).into())];
            words.tv("road-cell-few", &values)
        }
    }
}

/// Head of the column of loads.
pub fn load_head(words: &Words, found: &Comparison) -> String {
    words.t(match found.banded {
        Banded::Manifold => "road-column-manifold",
        Banded::InjectionTime => "road-column-injection",
    })
}

/// Corrections in words: where, and by how much in per cent.
pub fn correction_lines(words: &Words, found: &Comparison) -> Vec<(String, f64)> {
    corrections(found).into_iter().map(|one| (region(words, found, one.stretch), one.percent)).collect()
}

/// Rows set aside, with the reason: "Coolant cold", rows.
pub fn set_aside(words: &Words, found: &Comparison) -> Vec<(String, u64)> {
    let mut all: Vec<(String, u64)> =
        found.set_aside.iter().map(|(why, rows)| (words.t(format!("road-aside-{}", why.code())), *rows)).collect();
    if found.rows.broken > 0 {
        all.push((words.t("road-aside-broken"), found.rows.broken));
    }
    all
}

/// How many rows were read on each fuel.
pub fn rows(words: &Words, found: &Comparison) -> String {
    let number = |rows: u64| words.number(rows as f64, 0).into();
    words.tv("road-rows", &[("petrol", number(found.rows.petrol)), ("gas", number(found.rows.gas))])
}

/// Trims of a regime: its name, petrol, gas, difference.
pub fn trims(words: &Words, found: &Comparison) -> Vec<[String; 4]> {
    let said = |percent: Option<f64>| percent.map_or_else(|| "–".to_owned(), |percent| signed(words, percent));
    let line = |point: &TrimPoint| {
        [
            words.t(format!("road-regime-{}", point.regime)),
            said(point.petrol_percent),
            said(point.gas_percent),
            said(point.difference_percent),
        ]
    };
    found.trims.iter().map(line).collect()
}

/// The end of keys that name a fuel.
pub const fn fuel_key(burned: Burned) -> &'static str {
    match burned {
        Burned::Petrol => "petrol",
        Burned::Gas => "gas",
    }
}

/// How many operating points have a verdict, for a sentence.
pub fn counted(found: &Comparison, verdict: CellVerdict) -> crate::words::Value<'static> {
    count(found, verdict).into()
}
