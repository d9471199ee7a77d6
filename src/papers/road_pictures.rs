//! The pictures of a road comparison, with their words: deviation by engine speed, where was driven how often, trims, and
//! each log along its time.

use super::road::{load_head, signed};
use crate::calc::road::{Banded, Burned, Cell, CellVerdict, Comparison, Strip, StripPoint};
use crate::charts::axis::{decimals, steps};
use crate::charts::coverage::{self, Coverage, CoverageWords, Tile};
use crate::charts::frame::Marked;
use crate::charts::road::{self as panels, CellDrawn, Found, Panel, Road, RoadWords};
use crate::charts::strip::{self, Lane, Slice, StripWords};
use crate::charts::trims::{self, Regime, Trims, TrimsWords};
use crate::charts::{Picture, Point};
use crate::words::Words;

/// Round values of a span as texts.
fn marks(words: &Words, (low, high): Point, most: u8) -> Vec<Marked> {
    let values = steps(low, high, most);
    let decimals = decimals(&values);
    values.into_iter().map(|value| (value, words.number(value, decimals))).collect()
}

/// Edges of bands in order, each once.
fn edges(cells: &[Cell], of: impl Fn(&Cell) -> [f64; 2]) -> Vec<f64> {
    let mut all: Vec<f64> = cells.iter().flat_map(of).collect();
    all.sort_by(f64::total_cmp);
    all.dedup_by(|a, b| (*a - *b).abs() < 1e-6);
    all
}

fn found(cell: &Cell) -> Found {
    let interval = cell.low_percent.zip(cell.deviation_percent).zip(cell.high_percent);
    match (cell.verdict, interval) {
        (CellVerdict::Good, Some(((low, middle), high))) => Found::Good([low, middle, high]),
        (CellVerdict::Deviates, Some(((low, middle), high))) => Found::Deviates([low, middle, high]),
        (CellVerdict::Undecided, Some(((low, middle), high))) => Found::Undecided([low, middle, high]),
        (CellVerdict::NoFeedback, _) => Found::NoFeedback,
        _ => Found::NotEnough,
    }
}

/// The main picture: a small panel for each band of engine speed. Nothing where nothing was driven.
pub fn of_deviations(words: &Words, all: &Comparison) -> Option<Picture> {
    let loads = edges(&all.cells, |cell| [cell.load_from, cell.load_to]);
    let load = (*loads.first()?, *loads.last()?);
    let mut rows: Vec<(f64, Panel)> = Vec::new();
    for cell in &all.cells {
        let drawn = CellDrawn { load: f64::midpoint(cell.load_from, cell.load_to), found: found(cell) };
        if let Some((_, panel)) = rows.iter_mut().find(|(rpm, _)| (rpm - cell.rpm_from).abs() < 1e-6) {
            panel.cells.push(drawn);
        } else {
            let name = words.span(cell.rpm_from, cell.rpm_to, 0, "/min");
            rows.push((cell.rpm_from, Panel { name, cells: vec![drawn] }));
        }
    }
    rows.sort_by(|a, b| a.0.total_cmp(&b.0));
    let count = |verdict| super::road::counted(all, verdict);
    let values = [
        ("good", count(CellVerdict::Good)),
        ("apart", count(CellVerdict::Deviates)),
        ("undecided", count(CellVerdict::Undecided)),
        ("within", words.number(all.plan.good_percent, 0).into()),
    ];
    Some(panels::picture(&Road {
        panels: rows.into_iter().map(|(_, panel)| panel).collect(),
        load,
        good_percent: all.plan.good_percent,
        loads: marks(words, load, 3),
        percents: (-5..=5).map(|n| f64::from(n) * 5.0).map(|percent| (percent, words.number(percent, 0))).collect(),
        words: RoadWords {
            title: words.t("road-chart-title"),
            description: words.tv("road-chart-description", &values),
            load: load_head(words, all),
            percent: words.t("road-column-deviation"),
            good: words.t("road-chart-good"),
            deviates: words.t("road-chart-deviates"),
            undecided: words.t("road-chart-undecided"),
            not_enough: words.t("road-chart-not-enough"),
            no_feedback: words.t("road-chart-no-feedback"),
        },
    }))
}

/// Where was driven how often on each fuel.
pub fn of_coverage(words: &Words, all: &Comparison) -> Option<Picture> {
    let speeds = edges(&all.cells, |cell| [cell.rpm_from, cell.rpm_to]);
    let loads = edges(&all.cells, |cell| [cell.load_from, cell.load_to]);
    if speeds.len() < 2 || loads.len() < 2 {
        return None;
    }
    let place = |edges: &[f64], from: f64| edges.iter().position(|edge| (edge - from).abs() < 1e-6);
    let tiles = |visits: fn(&Cell) -> u32| {
        let tile = |cell: &Cell| {
            let (column, row) = (place(&speeds, cell.rpm_from)?, place(&loads, cell.load_from)?);
            let visits = visits(cell);
            let text = if visits > 999 { "999".to_owned() } else { visits.to_string() };
            Some(Tile { column, row, visits, text })
        };
        all.cells.iter().filter_map(tile).collect()
    };
    let enough = all.plan.visits;
    let values = [("enough", i64::from(enough).into())];
    let of_loads = decimals(&loads);
    Some(coverage::picture(&Coverage {
        speeds: speeds.iter().map(|edge| words.number(*edge, 0)).collect(),
        loads: loads.iter().map(|edge| words.number(*edge, of_loads.min(1))).collect(),
        petrol: tiles(|cell| cell.petrol_visits),
        gas: tiles(|cell| cell.gas_visits),
        enough,
        words: CoverageWords {
            title: words.t("road-coverage-title"),
            description: words.tv("road-coverage-description", &values),
            petrol: words.t("road-coverage-petrol"),
            gas: words.t("road-coverage-gas"),
            speed: words.t("road-column-speed"),
            load: load_head(words, all),
            few: words.tv("road-coverage-few", &values),
            enough: words.tv("road-coverage-enough", &values),
        },
    }))
}

/// Total trims by regime; nothing where none were logged.
pub fn of_trims(words: &Words, all: &Comparison) -> Option<Picture> {
    let bar = |percent: Option<f64>| percent.map(|percent| (percent, signed(words, percent)));
    let regimes: Vec<Regime> = all
        .trims
        .iter()
        .map(|point| Regime {
            name: words.t(format!("road-regime-{}", point.regime)),
            petrol: bar(point.petrol_percent),
            gas: bar(point.gas_percent),
            difference: point.difference_percent.map(|percent| signed(words, percent)).unwrap_or_default(),
        })
        .collect();
    if regimes.iter().all(|regime| regime.petrol.is_none() && regime.gas.is_none()) {
        return None;
    }
    let percents = marks(words, trims::span(&regimes), 5);
    Some(trims::picture(&Trims {
        regimes,
        percents,
        words: TrimsWords {
            title: words.t("road-trims"),
            description: words.t("road-trims-description"),
            percent: words.t("road-trims-percent"),
            petrol: words.t("road-stated-petrol"),
            gas: words.t("road-stated-gas"),
            difference: words.t("trims-column-difference"),
        },
    }))
}

/// One log along its time, to find an event.
fn of_strip(words: &Words, all: &Comparison, one: &Strip) -> Option<Picture> {
    let slice = |point: &StripPoint| Slice {
        time_s: point.time_s,
        values: [point.rpm, point.load, point.petrol_ms],
        is_gas: point.burned == Some(Burned::Gas),
        set_aside: point.set_aside.map(|why| words.t(format!("road-aside-{}", why.code()))),
    };
    let slices: Vec<Slice> = one.points.iter().map(slice).collect();
    let (first, last) = (slices.first()?.time_s, slices.last()?.time_s);
    let gaps = slices.windows(2).map(|pair| pair[1].time_s - pair[0].time_s).filter(|gap| *gap > 0.0);
    let slice_s = gaps.fold(f64::INFINITY, f64::min);
    let lane = |n: usize, name: String| Lane { name, marks: marks(words, strip::span(&slices, n), 2) };
    let load = match all.banded {
        Banded::Manifold => words.t("road-column-manifold"),
        Banded::InjectionTime => words.t("road-column-injection"),
    };
    let title = words.t(match one.burned {
        Some(Burned::Petrol) => "road-strip-petrol",
        Some(Burned::Gas) => "road-strip-gas",
        None => "road-strip-both",
    });
    Some(strip::picture(&strip::Strip {
        slice_s: if slice_s.is_finite() { slice_s } else { 1.0 },
        rpm: lane(0, words.t("road-column-speed")),
        load: lane(1, load),
        injection: lane(2, words.t("road-column-injection")),
        times: marks(words, (first, last), 6),
        words: StripWords { title, description: words.t("road-strip-description"), time: words.t("road-strip-time") },
        slices,
    }))
}

/// Each log along its time.
pub fn of_strips(words: &Words, all: &Comparison) -> Vec<Picture> {
    all.strips.iter().filter_map(|one| of_strip(words, all, one)).collect()
}

/// Every picture, in the order of a page.
pub fn all(words: &Words, found: &Comparison) -> Vec<Picture> {
    let first = [of_deviations(words, found), of_coverage(words, found), of_trims(words, found)];
    first.into_iter().flatten().chain(of_strips(words, found)).collect()
}
