//! Where an input comes from: the vehicle's file, a part, common practice, or the person at the form.
//!
//! A text that still is what the form opened with keeps the origin of that; anything else was entered.

use serde_json::Value;

use super::{JobPage, fuel_mix};
use crate::calc::Composition;
use crate::unit::{Unit, plain};
use crate::web::form::{Form, number};
use crate::web::kit::{self, Cell, Column, Field, Table};
use crate::words::Words;

/// Name of a field, the text it opens with, and the code of its origin.
pub type Default = (String, String, &'static str);

/// A field that says what it opens with and why.
pub fn hinted(w: &Words, defaults: &[Default], field: Field, name: &str) -> Field {
    match defaults.iter().find(|(known, ..)| known == name) {
        Some((_, text, origin)) => {
            field.hinted(w.tv(&format!("origin-hint-{origin}"), &[("value", opening(w, name, text).into())]))
        }
        None => field,
    }
}

/// What a field opens with, in the unit it is shown in.
pub fn opening(w: &Words, name: &str, text: &str) -> String {
    let kept = unit_of(name);
    turned(text, kept, w.units().shown(kept)).unwrap_or_else(|| text.to_owned())
}

/// The unit that numbers of this field are kept in.
fn unit_of(name: &str) -> Unit {
    Unit::of_name(name.trim_end_matches(']')).unwrap_or(Unit::One)
}

/// A bare number of one unit as a bare number of another; nothing where it is no bare number, or the unit is the same.
fn turned(text: &str, of: Unit, shown: Unit) -> Option<String> {
    let read = number::read(text).ok().filter(|read| read.unit.is_empty())?;
    if of == shown { None } else { plain(read.value, of, shown) }
}

/// Every text of the form that is not empty, and the origin of each.
pub fn keep(form: &Form, names: Vec<String>, defaults: &[Default]) -> (Vec<(String, String)>, Value) {
    let typed = names.into_iter().map(|name| {
        let (text, kept) = (form.value(&name).to_owned(), unit_of(&name));
        let bare = form.bare_unit(&name, kept);
        let is_default = defaults.iter().find(|(known, value, _)| {
            *known == name && turned(value, kept, bare).is_some_and(|shown| shown == text.trim())
        });
        let said = is_default.map_or_else(|| form.whole_text(&name, &text), |(_, value, _)| value.clone());
        (name, said)
    });
    let typed: Vec<(String, String)> = typed.filter(|(_, text)| !text.trim().is_empty()).collect();
    let origin = |(name, text): &(String, String)| {
        let known = defaults.iter().find(|(known, value, _)| known == name && value == text.trim());
        (name.clone(), Value::from(known.map_or("entered", |(_, _, origin)| origin)))
    };
    let origins = Value::Object(typed.iter().map(origin).collect());
    (typed, origins)
}

/// What was kept of a form.
pub struct Kept<'a> {
    /// The form's own scope of labels.
    pub scope: &'static str,
    /// Name and text.
    pub typed: &'a [(String, String)],
    /// Name to origin.
    pub origins: &'a Value,
}

impl Kept<'_> {
    fn text(&self, name: &str) -> Option<&str> {
        self.typed.iter().find(|(known, _)| known == name).map(|(_, text)| text.as_str())
    }

    /// The code of the origin of a field.
    pub fn code(&self, name: &str) -> &str {
        self.origins.get(name).and_then(Value::as_str).unwrap_or("entered")
    }

    /// The field that was read: a set's own, or what the first set says.
    fn read(&self, name: &str) -> Option<(String, &str)> {
        let first = || {
            let (_, field) = name.split_once("][")?;
            Some(format!("sets[0][{field}"))
        };
        let own = self.text(name).map(|text| (name.to_owned(), text));
        own.or_else(|| first().and_then(|first| self.text(&first).map(|text| (first.clone(), text))))
    }
}

/// The inputs with their origin; a field and the symbol of its unit a line.
pub fn table(job: &JobPage, kept: &Kept<'_>, fuel: &Composition, fields: &[(String, &str)]) -> Table {
    let w = job.w();
    let form = Form::blank().scoped(kept.scope);
    let mix = kept.text("fuel_mix").unwrap_or_default();
    let mut all = vec![vec![
        Cell::new(kit::label(&form, &w, "fuel_mix")),
        Cell::new(fuel_mix::said(&w, mix, fuel)),
        Cell::new(fuel_mix::origin(&w, mix)),
    ]];
    all.extend(rows(job, kept, fields));
    let columns = ["input", "value", "origin"].map(|name| Column::text(w.t(format!("sizing-column-{name}")))).into();
    Table { w, caption: w.t("sizing-inputs"), columns, rows: all }
}

/// A line for each field that has a text: label, text with its unit, origin.
pub fn rows(job: &JobPage, kept: &Kept<'_>, fields: &[(String, &str)]) -> Vec<Vec<Cell>> {
    let w = job.w();
    let form = Form::blank().scoped(kept.scope);
    let row = |(name, symbol): &(String, &str)| {
        let (read, text) = kept.read(name)?;
        // A unit that was typed stands behind the number already.
        let has_unit = !text.trim().ends_with(|c: char| c.is_ascii_digit());
        let value = match symbol.parse() {
            _ if has_unit || symbol.is_empty() => text.to_owned(),
            Ok(kept) => {
                let shown = w.units().shown(kept);
                format!("{}\u{a0}{}", turned(text, kept, shown).as_deref().unwrap_or(text), shown.symbol())
            }
            Err(_) => format!("{text}\u{a0}{symbol}"),
        };
        let origin = w.t(format!("origin-{}", kept.code(&read)));
        Some(vec![Cell::new(kit::label(&form, &w, name)), Cell::new(value), Cell::new(origin)])
    };
    fields.iter().filter_map(row).collect()
}
