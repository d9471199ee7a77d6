//! Before and after side by side: the same operating points, what deviated then and what deviates now.

use crate::calc::road::{Cell as Point, Comparison};
use crate::papers::road::signed;
use crate::web::kit::{Cell, Column, Table};
use crate::words::Words;

/// The points that both drives judged; nothing where there are none, or where load is told by different things.
pub(super) fn table(w: &Words, before: &Comparison, after: &Comparison) -> Option<Table> {
    if before.banded != after.banded {
        return None;
    }
    let is_same =
        |a: &Point, b: &Point| (a.rpm_from - b.rpm_from).abs() < 1e-6 && (a.load_from - b.load_from).abs() < 1e-6;
    let pairs = after.cells.iter().filter_map(|now| {
        let then = before.cells.iter().find(|then| is_same(then, now))?;
        Some((now, then.deviation_percent?, now.deviation_percent?))
    });
    let decimals = u8::from(after.banded != crate::calc::road::Banded::Manifold);
    let row = |(now, then_percent, now_percent): (&Point, f64, f64)| {
        vec![
            Cell::new(w.span(now.rpm_from, now.rpm_to, 0, "").trim_end()),
            Cell::new(w.span(now.load_from, now.load_to, decimals, "").trim_end()),
            Cell::new(signed(w, then_percent)),
            Cell::new(signed(w, now_percent)),
        ]
    };
    let rows: Vec<Vec<Cell>> = pairs.map(row).collect();
    let columns = vec![
        Column::number(w.head("road-column-speed")),
        Column::number(crate::papers::road::load_head(w, after)),
        Column::number(w.head("road-column-before")),
        Column::number(w.head("road-column-after")),
    ];
    (!rows.is_empty()).then(|| Table { w: *w, caption: w.t("road-side-by-side"), columns, rows })
}
