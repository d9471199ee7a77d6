//! Lines of an estimate in a form: shown, read, summed as far as they read right.

use crate::model::Coded;
use crate::model::estimate::{EstimateLine, LineKind, total_of};
use crate::model::money::{Currency, fixed, plain_thousandths};
use crate::unit::Unit;
use crate::web::form::{Form, Row, Wrong};
use crate::web::kit::{self, Choice, Field};
use crate::words::Words;

use super::MOST_MINOR;

/// Name of the list.
pub(super) const LIST: &str = "lines";
/// Lines to begin with.
const LEAST: usize = 3;
/// More lines than any job has.
const MOST: usize = 100;
/// Ten thousand of a thing, in thousandths.
const MOST_THOUSANDTHS: i64 = 10_000_000;

/// The rows to show: what was typed, without what is left out, and empty ones up to the number that was asked for.
pub(super) fn rows(form: &Form) -> Vec<Row> {
    let wanted = form.value("rows").parse().unwrap_or(LEAST);
    form.rows_shown(LIST, wanted.clamp(1, MOST), 0)
}

/// Fields of one row, in the order of [`columns`].
pub(super) fn fields(form: &Form, w: &Words, row: &Row, currency: Currency) -> Vec<Field> {
    let kinds: Vec<Choice> = kit::coded::<LineKind>(w);
    vec![
        kit::text(form, w, row.name("what")),
        kit::choice(form, w, row.name("kind"), &kinds),
        kit::number(form, w, row.name("quantity")),
        kit::number(form, w, row.name("unit_price")).counted_in(currency.code()),
    ]
}

/// Heads of the columns.
pub(super) fn columns(w: &Words) -> Vec<String> {
    ["what", "kind", "quantity", "unit_price"].map(|name| w.t(format!("estimate-{name}"))).to_vec()
}

/// Fills the form from lines.
pub(super) fn filled(mut form: Form, lines: &[EstimateLine], currency: Currency) -> Form {
    for (at, line) in lines.iter().enumerate() {
        let name = |field: &str| format!("{LIST}[{at}][{field}]");
        form.set(&name("what"), &line.what);
        form.set(&name("kind"), line.kind.code());
        form.set(&name("quantity"), plain_thousandths(line.quantity_thousandths));
        form.set(&name("unit_price"), fixed(line.unit_price_minor, currency.minor_digits()));
    }
    form.with("rows", (lines.len() + 1).max(LEAST).to_string())
}

/// The lines typed; what is wrong is noted at its field.
pub(super) fn read(form: &mut Form, currency: Currency) -> Vec<EstimateLine> {
    let rows = form.rows(LIST);
    if rows.is_empty() {
        form.fail(&format!("{LIST}[0][what]"), Wrong::Rule("estimate-no-line", Vec::new()));
    }
    if rows.len() > MOST {
        form.fail(&format!("{LIST}[0][what]"), Wrong::TooMany { most: MOST });
    }
    rows.iter().take(MOST).filter_map(|row| read_one(form, row, currency)).collect()
}

fn read_one(form: &mut Form, row: &Row, currency: Currency) -> Option<EstimateLine> {
    let what = form.text(&row.name("what"), 200);
    let kind = form.choice(&row.name("kind"));
    let quantity = form.money(&row.name("quantity"), 3, MOST_THOUSANDTHS);
    if quantity == Some(0) {
        let most = 10_000.0;
        form.fail(&row.name("quantity"), Wrong::Beyond { least: 0.001, most, unit: Unit::One });
    }
    let price = form.money(&row.name("unit_price"), currency.minor_digits(), MOST_MINOR);
    EstimateLine::new(what?, kind?, quantity?, price?)
}

/// What the lines come to; nothing while there is none, or one of them does not read right.
pub(super) fn so_far(form: &Form, currency: Currency) -> Option<i64> {
    let mut copy = form.clone();
    let lines = read(&mut copy, currency);
    copy.sound().and_then(|()| total_of(&lines)).filter(|_| !lines.is_empty())
}
