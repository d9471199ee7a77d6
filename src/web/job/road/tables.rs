//! Pictures of a road comparison, each with the table of its numbers.

use crate::calc::road::{CellVerdict, Comparison};
use crate::charts::{Picture, svg};
use crate::papers::road::{self, CellLine};
use crate::papers::road_pictures;
use crate::web::kit::{Cell, Column, Mark, Table};
use crate::words::Words;

/// A picture and its table; either may be missing.
#[derive(Debug)]
pub struct Pictured {
    /// Pictures as SVG.
    pub charts: Vec<String>,
    /// The numbers.
    pub table: Option<Table>,
    /// A sentence between them; empty for none.
    pub note: String,
}

fn table(w: &Words, caption: &str, columns: Vec<Column>, rows: Vec<Vec<Cell>>) -> Option<Table> {
    (!rows.is_empty()).then(|| Table { w: *w, caption: w.t(caption), columns, rows })
}

/// The mark of a cell's verdict.
const fn mark(verdict: CellVerdict) -> Mark {
    match verdict {
        CellVerdict::Good => Mark::Met,
        CellVerdict::Deviates => Mark::Stops,
        CellVerdict::Undecided => Mark::Undecided,
        CellVerdict::NotEnough => Mark::Missing,
        CellVerdict::NoFeedback => Mark::NotApplicable,
    }
}

fn cells(w: &Words, found: &Comparison) -> Option<Table> {
    let row = |line: CellLine| {
        vec![
            Cell::new(line.speed),
            Cell::new(line.load),
            Cell::new(line.visits),
            Cell::new(line.deviation).with_second(line.interval),
            Cell::new(line.said).marked(mark(line.verdict)),
            Cell::new(line.correction),
        ]
    };
    let columns = vec![
        Column::number(w.head("road-column-speed")),
        Column::number(road::load_head(w, found)),
        Column::number(w.t("road-column-visits")),
        Column::number(w.head("road-column-deviation")),
        Column::text(w.t("road-column-verdict")),
        Column::number(w.head("road-column-correction")),
    ];
    table(w, "road-cells", columns, road::cells(w, found).into_iter().map(row).collect())
}

fn trims(w: &Words, found: &Comparison) -> Option<Table> {
    let columns = vec![
        Column::text(w.t("road-column-regime")),
        Column::number(w.head("trims-column-petrol")),
        Column::number(w.head("trims-column-gas")),
        Column::number(w.head("trims-column-difference")),
    ];
    let rows = road::trims(w, found).into_iter().map(|line| line.into_iter().map(Cell::new).collect());
    table(w, "road-trims", columns, rows.collect())
}

fn set_aside(w: &Words, found: &Comparison) -> Option<Table> {
    let columns = vec![Column::text(w.t("road-column-why")), Column::number(w.t("road-column-rows"))];
    let row = |(why, rows): (String, u64)| vec![Cell::new(why), Cell::new(w.number(rows as f64, 0))];
    table(w, "road-aside", columns, road::set_aside(w, found).into_iter().map(row).collect())
}

/// What to correct where.
pub(super) fn corrections(w: &Words, found: &Comparison) -> Option<Table> {
    let columns = vec![Column::text(w.t("road-column-region")), Column::number(w.head("road-column-correction"))];
    let row = |(region, percent): (String, f64)| vec![Cell::new(region), Cell::new(road::signed(w, percent))];
    table(w, "road-corrections", columns, road::correction_lines(w, found).into_iter().map(row).collect())
}

/// The main picture as SVG.
pub fn picture_of_panels(w: &Words, found: &Comparison) -> String {
    road_pictures::of_deviations(w, found).map(|picture| svg(&picture, "road-chart")).unwrap_or_default()
}

/// Every picture in its order, each with the table of its numbers: deviations and coverage, trims, time.
pub(super) fn pictured(w: &Words, found: &Comparison) -> Vec<Pictured> {
    let drawn = |picture: Option<Picture>, id: &str| picture.map(|picture| svg(&picture, id)).unwrap_or_default();
    let of = |charts: Vec<String>, table: Option<Table>, note: String| Pictured { charts, table, note };
    let coverage = drawn(road_pictures::of_coverage(w, found), "road-coverage");
    let strips = road_pictures::of_strips(w, found);
    let strips = strips.iter().enumerate().map(|(n, picture)| svg(picture, &format!("road-strip-{n}"))).collect();
    let all = vec![
        of(vec![picture_of_panels(w, found), coverage], cells(w, found), String::new()),
        of(vec![drawn(road_pictures::of_trims(w, found), "road-trims")], trims(w, found), String::new()),
        of(strips, set_aside(w, found), road::rows(w, found)),
    ];
    all.into_iter().filter(|one| one.table.is_some() || one.charts.iter().any(|chart| !chart.is_empty())).collect()
}
