//! Candidate sets as typed: a supply pressure with an injector and its nozzles, up to three side by side.

use super::engine::Engine;
use crate::calc::nozzle::{Asked, Sheet, sheet};
use crate::unit::{Kind, Unit};
use crate::web::form::{Form, Row, Wrong, number};
use crate::web::kit::{self, Group};
use crate::web::sum;
use crate::words::Words;

/// Sets compared at once.
pub const MOST_SETS: usize = 3;
/// What a set is made of, beside its name and its sizes.
pub const OF_A_SET: [(&str, Unit, f64, f64); 4] = [
    ("supply_over_manifold_kpa", Unit::Kilopascal, 10.0, 2_000.0),
    ("dead_time_ms", Unit::Millisecond, 0.0, 10.0),
    ("min_pulse_ms", Unit::Millisecond, 0.0, 20.0),
    ("discharge_coefficient", Unit::One, 0.05, 1.0),
];

/// What a measured coefficient is known to; empty where it is common practice.
pub const MEASURED: &str = "discharge_uncertainty";

/// One set as typed.
#[derive(Debug, Clone)]
pub struct Set {
    row: Row,
    /// In the shop's words; empty for none.
    pub name: String,
    /// In the order of [`OF_A_SET`].
    pub numbers: [f64; 4],
    /// Standard uncertainty of the coefficient where it was measured.
    pub discharge_uncertainty: Option<f64>,
    /// Bores to choose from, mm, ascending.
    pub sizes_mm: Vec<f64>,
}

/// Bores of a list: "1.8 2.0 2.2", "1,8; 2,0", "1.8, 2.0 mm"; a unit at the end is that of all, else the field's own is.
fn read_sizes(form: &mut Form, name: &str, text: &str) -> Option<Vec<f64>> {
    let text = text.trim();
    let behind = text.trim_end_matches(|c: char| !c.is_ascii_digit());
    let named: Option<Unit> = text[behind.len()..].parse().ok();
    let unit = named.filter(|named| named.kind() == Kind::Length);
    let text = if unit.is_some() { behind } else { text };
    let unit = unit.unwrap_or_else(|| form.bare_unit(name, Unit::Millimetre));
    // A comma before a blank parts two sizes; one inside a number is its decimal sign, unless there is a point too.
    let has_point = text.contains('.');
    let text = text.replace(", ", " ");
    let parts = text.split(|c: char| c.is_whitespace() || c == ';' || (has_point && c == ','));
    let mut sizes = Vec::new();
    for part in parts.filter(|part| !part.is_empty()) {
        match number::read(part) {
            Ok(read) if read.unit.is_empty() || read.unit.parse() == Ok(unit) => {
                sizes.extend(unit.convert(read.value, Unit::Millimetre));
            }
            _ => {
                form.fail(name, Wrong::NotANumber { typed: part.to_owned() });
                return None;
            }
        }
    }
    if sizes.is_empty() {
        form.fail(name, Wrong::Empty);
        return None;
    }
    if sizes.len() > 200 || sizes.iter().any(|mm| !(0.3..=10.0).contains(mm)) {
        form.fail(name, Wrong::Beyond { least: 0.3, most: 10.0, unit: Unit::Millimetre });
        return None;
    }
    sizes.sort_by(f64::total_cmp);
    sizes.dedup();
    Some(sizes)
}

/// The sets as typed. What a later set leaves out is as in the first.
pub fn read(form: &mut Form) -> Vec<Set> {
    let mut sets = Vec::new();
    for line in form.compared("sets", MOST_SETS) {
        let numbers = OF_A_SET.map(|(field, unit, least, most)| {
            let name = line.name(form, field);
            form.number(&name, unit, least..=most)
        });
        // A coefficient of its own was not measured with the first set's.
        let is_own = !form.value(&line.row.name("discharge_coefficient")).trim().is_empty();
        let uncertainty_name = if is_own { line.row.name(MEASURED) } else { line.name(form, MEASURED) };
        let discharge_uncertainty = form.opt_number(&uncertainty_name, Unit::One, 0.0..=0.5);
        let sizes_name = line.name(form, "sizes_mm");
        let text = form.value(&sizes_name).to_owned();
        let sizes = read_sizes(form, &sizes_name, &text);
        let name = form.opt_text(&line.row.name("name"), 60).unwrap_or_default();
        if let ([Some(a), Some(b), Some(c), Some(d)], Some(sizes_mm)) = (numbers, sizes) {
            sets.push(Set { row: line.row, name, numbers: [a, b, c, d], discharge_uncertainty, sizes_mm });
        }
    }
    sets
}

/// The fields: a line a set.
pub fn group(w: &Words, form: &Form) -> Group {
    let names = [
        "name",
        "supply_over_manifold_kpa",
        "dead_time_ms",
        "min_pulse_ms",
        "discharge_coefficient",
        MEASURED,
        "sizes_mm",
    ];
    let rows = form.rows_shown("sets", MOST_SETS, 0);
    let rows = rows.iter().take(MOST_SETS).map(|row| {
        let field = |name: &&str| match *name {
            "name" => kit::text(form, w, row.name(name)),
            "sizes_mm" => kit::text(form, w, row.name(name)).unit(Unit::Millimetre),
            _ => kit::number(form, w, row.name(name)),
        };
        names.iter().map(field).map(|field| field.counted_in("").hinted("")).collect()
    });
    let columns = names.iter().map(|name| w.head(format!("nozzle-sizing-column-{name}"))).collect();
    Group::table("sets", w.t("sizing-group-sets"), columns, rows.collect()).noted(w.t("sizing-note-sets"))
}

/// Name and question of each set, and what each answers.
pub type Compared = (Vec<(String, Asked)>, Vec<Sheet>);

/// Names and questions of the sets, and what each answers; nothing when one refuses, noted at its field.
pub fn sheets(w: &Words, form: &mut Form, engine: &Engine, sets: Vec<Set>) -> Option<Compared> {
    let mut asked = Vec::new();
    let mut sheets = Vec::new();
    for Set { row, name, numbers, discharge_uncertainty, sizes_mm } in sets {
        let one = engine.ask(&numbers, discharge_uncertainty, sizes_mm);
        let in_row = |quantity: &str| {
            let is_of_set =
                OF_A_SET.iter().any(|(name, ..)| *name == quantity) || ["sizes_mm", MEASURED].contains(&quantity);
            match quantity {
                "composition" => "fuel_mix".to_owned(),
                _ if is_of_set => row.name(quantity),
                other => other.to_owned(),
            }
        };
        match sheet(&one) {
            Ok(answer) => sheets.push(answer),
            Err(error) => sum::refuse(w, form, &error, "gas_temperature_c", in_row),
        }
        asked.push((name, one));
    }
    form.sound()?;
    Some((asked, sheets))
}
