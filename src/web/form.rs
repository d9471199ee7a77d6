//! Reads what was typed and says what is wrong with it, without losing a keystroke.
//!
//! A [`Form`] keeps every text as it came. Each reader gives a value, or nothing and a [`Wrong`] noted at its field;
//! the page is then shown again with both. Readers are asked for every field before [`Form::sound`] is, so that all
//! faults show at once:
//!
//! ```
//! use fuelwright::unit::Unit;
//! use fuelwright::web::form::{Form, Typed};
//!
//! fn read(form: &mut Form) -> Option<(String, f64)> {
//!     let place = form.text("place", 80);
//!     let start_kpa = form.number("start_kpa", Unit::Kilopascal, 0.0..=30_000.0);
//!     form.sound()?;
//!     Some((place?, start_kpa?))
//! }
//!
//! let mut form = Form::from(Typed::from_pairs([("place", "rail"), ("start_kpa", "2.1 bar")]));
//! assert_eq!(read(&mut form), Some(("rail".into(), 210.0)));
//! ```

pub mod day;
pub mod number;
mod quantity;
#[cfg(test)]
mod tests;
mod text;
mod typed;
mod wrong;

use std::str::FromStr;

use time::{Date, Duration, OffsetDateTime};
use uuid::Uuid;

pub use quantity::{Quantity, unit_name};
pub use typed::{MOST_FILE, Typed, TypedFile, Unreadable, plain_name};
pub use wrong::Wrong;

use crate::clock::Zone;

/// Most lines that a repeated group may have.
const MOST_ROWS: usize = 200;
/// A tablet's clock may run this far ahead of ours before its times count as future.
const CLOCK_SLACK: Duration = Duration::minutes(1);

/// What was typed, what was read from it, and what is wrong.
#[derive(Debug, Clone, Default)]
pub struct Form {
    typed: Typed,
    wrongs: Vec<(String, Wrong)>,
    quantities: Vec<(String, Quantity)>,
    /// Names whose text nobody typed: what a page fills in is in the units things are kept in.
    filled_in: Vec<String>,
    scope: Option<&'static str>,
}

/// One line of a repeated group, such as the parts of a fitting.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    list: String,
    /// The number in its names, `parts[3][serial]`; not always the place on the page.
    pub index: usize,
}

impl Row {
    /// The full name of a field of this line.
    pub fn name(&self, field: &str) -> String {
        format!("{}[{}][{field}]", self.list, self.index)
    }
}

/// A line of things side by side. What it leaves out is as in the first line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Compared {
    pub row: Row,
    first: Row,
}

impl Compared {
    /// The name under which a field of this line was typed: its own, or that of the first line.
    pub fn name(&self, form: &Form, field: &str) -> String {
        let own = self.row.name(field);
        if form.value(&own).trim().is_empty() { self.first.name(field) } else { own }
    }
}

impl From<Typed> for Form {
    fn from(typed: Typed) -> Self {
        Self { typed, ..Self::default() }
    }
}

impl Form {
    /// An empty form, for a page opened for the first time.
    pub fn blank() -> Self {
        Self::default()
    }

    /// The same form, whose labels are looked up under `scope-name` before `field-name`.
    #[must_use]
    pub fn scoped(mut self, scope: &'static str) -> Self {
        self.scope = Some(scope);
        self
    }

    /// Where labels are looked up first.
    pub fn scope(&self) -> Option<&'static str> {
        self.scope
    }

    /// The same form with `name` filled in; for pages that change what is already known.
    #[must_use]
    pub fn with(mut self, name: &str, text: impl Into<String>) -> Self {
        self.set(name, text);
        self
    }

    /// Fills a field in; a number in the unit it is kept in.
    pub fn set(&mut self, name: &str, text: impl Into<String>) {
        self.typed.pairs.retain(|(known, _)| known != name);
        self.add(name, text);
        self.filled_in.push(name.to_owned());
    }

    /// Says in which unit a field was shown when somebody typed into it; nothing where it was the one it is kept in.
    pub fn set_unit(&mut self, name: &str, symbol: &str) {
        if !symbol.is_empty() {
            self.add(&unit_name(name), symbol);
        }
    }

    /// Adds one more text under a name, for ticks.
    pub fn add(&mut self, name: &str, text: impl Into<String>) {
        self.typed.pairs.push((name.to_owned(), text.into()));
    }

    /// The text of a field exactly as typed; empty when there is none.
    pub fn value(&self, name: &str) -> &str {
        self.typed.pairs.iter().find(|(known, _)| known == name).map_or("", |(_, text)| text)
    }

    /// Every text under a name.
    pub fn values<'a>(&'a self, name: &'a str) -> impl Iterator<Item = &'a str> {
        self.typed.pairs.iter().filter(move |(known, _)| known == name).map(|(_, text)| text.as_str())
    }

    /// Whether this answer was given, for radios and ticks.
    pub fn holds(&self, name: &str, value: &str) -> bool {
        self.values(name).any(|text| text == value)
    }

    /// Notes a fault at a field; the way in for rules across fields and for what the database answers.
    pub fn fail(&mut self, name: &str, wrong: Wrong) {
        // One fault at a field is enough to mend; the first is the nearest to what was typed.
        if self.wrong(name).is_none() {
            self.wrongs.push((name.to_owned(), wrong));
        }
    }

    /// What is wrong with a field.
    pub fn wrong(&self, name: &str) -> Option<&Wrong> {
        self.wrongs.iter().find(|(known, _)| known == name).map(|(_, wrong)| wrong)
    }

    /// Every fault with its field, in the order found.
    pub fn wrongs(&self) -> &[(String, Wrong)] {
        &self.wrongs
    }

    /// `Some` when nothing is wrong; `form.sound()?` ends a reading function.
    pub fn sound(&self) -> Option<()> {
        self.wrongs.is_empty().then_some(())
    }

    /// One of a closed list, in the spelling the list reads.
    pub fn choice<T: FromStr>(&mut self, name: &str) -> Option<T> {
        self.required(name)?;
        self.opt_choice(name)
    }

    /// One of a closed list, or nothing chosen.
    pub fn opt_choice<T: FromStr>(&mut self, name: &str) -> Option<T> {
        let text = self.filled(name)?;
        self.note(name, text.parse().map_err(|_| Wrong::NotAChoice))
    }

    /// The answer of a pair of radios with the values `yes` and `no`.
    pub fn yes_no(&mut self, name: &str) -> Option<bool> {
        self.required(name)?;
        self.opt_yes_no(name)
    }

    /// The same, where no answer is allowed too.
    pub fn opt_yes_no(&mut self, name: &str) -> Option<bool> {
        match self.filled(name)?.as_str() {
            "yes" => Some(true),
            "no" => Some(false),
            _ => self.note(name, Err(Wrong::NotAChoice)),
        }
    }

    /// Whether a single tick is set.
    pub fn tick(&self, name: &str) -> bool {
        self.values(name).any(|text| !text.is_empty() && text != "no")
    }

    /// Every ticked answer of a closed list, in the order of the page.
    pub fn ticks<T: FromStr>(&mut self, name: &str) -> Vec<T> {
        let read: Vec<Option<T>> =
            self.values(name).filter(|text| !text.is_empty()).map(|text| text.parse().ok()).collect();
        if read.iter().any(Option::is_none) {
            self.fail(name, Wrong::NotAChoice);
        }
        read.into_iter().flatten().collect()
    }

    /// A date.
    pub fn date(&mut self, name: &str) -> Option<Date> {
        self.required(name)?;
        self.opt_date(name)
    }

    /// A date, or nothing.
    pub fn opt_date(&mut self, name: &str) -> Option<Date> {
        let text = self.filled(name)?;
        self.note(name, day::date(&text))
    }

    /// A date that is not after `today`, the shop's own.
    pub fn past_date(&mut self, name: &str, today: Date) -> Option<Date> {
        self.required(name)?;
        self.opt_past_date(name, today)
    }

    /// The same, or nothing.
    pub fn opt_past_date(&mut self, name: &str, today: Date) -> Option<Date> {
        let day = self.opt_date(name)?;
        self.note(name, if day > today { Err(Wrong::Future) } else { Ok(day) })
    }

    /// A date and time of day in the shop's zone, as an instant.
    pub fn moment(&mut self, name: &str, zone: &Zone) -> Option<OffsetDateTime> {
        self.required(name)?;
        self.opt_moment(name, zone)
    }

    /// The same, or nothing.
    pub fn opt_moment(&mut self, name: &str, zone: &Zone) -> Option<OffsetDateTime> {
        let text = self.filled(name)?;
        self.note(name, day::moment(&text, zone))
    }

    /// The moment of a measurement: not before the vehicle came in, not in the future.
    pub fn measured(
        &mut self,
        name: &str,
        zone: &Zone,
        intake: Option<OffsetDateTime>,
        now: OffsetDateTime,
    ) -> Option<OffsetDateTime> {
        let at = self.moment(name, zone)?;
        // A form shows minutes, an intake has seconds: the minute of the intake itself is not before it.
        let is_before = intake.is_some_and(|intake| at < intake - CLOCK_SLACK);
        let read = match () {
            () if at > now + CLOCK_SLACK => Err(Wrong::Future),
            () if is_before => Err(Wrong::BeforeIntake),
            () => Ok(at),
        };
        self.note(name, read)
    }

    /// The lines of a repeated group that have anything in them, in the order of the page.
    pub fn rows(&mut self, list: &str) -> Vec<Row> {
        let rows: Vec<Row> = self.all_rows(list).into_iter().filter(|row| self.has_text(row)).collect();
        if rows.len() > MOST_ROWS {
            self.fail(list, Wrong::TooMany { most: MOST_ROWS });
        }
        rows.into_iter().take(MOST_ROWS).collect()
    }

    /// The lines of things side by side, at most `most`; one to note faults at when nothing was typed.
    pub fn compared(&mut self, list: &str, most: usize) -> Vec<Compared> {
        let mut rows = self.rows(list);
        if rows.len() > most {
            self.fail(list, Wrong::TooMany { most });
            rows.truncate(most);
        }
        if rows.is_empty() {
            rows = self.rows_shown(list, 1, 0);
        }
        let Some(first) = rows.first().cloned() else { return Vec::new() };
        rows.into_iter().map(|row| Compared { row, first: first.clone() }).collect()
    }

    /// The lines to show: those that came back, and empty ones up to `least`, at least `spare` of them.
    pub fn rows_shown(&self, list: &str, least: usize, spare: usize) -> Vec<Row> {
        let mut rows: Vec<Row> =
            self.all_rows(list).into_iter().filter(|row| self.has_text(row)).take(MOST_ROWS).collect();
        let wanted = (rows.len() + spare).max(least);
        let mut next = rows.iter().map(|row| row.index + 1).max().unwrap_or(0);
        while rows.len() < wanted {
            rows.push(Row { list: list.to_owned(), index: next });
            next += 1;
        }
        rows
    }

    fn all_rows(&self, list: &str) -> Vec<Row> {
        let mut rows: Vec<Row> = Vec::new();
        let names =
            self.typed.pairs.iter().map(|(name, _)| name).chain(self.typed.files.iter().map(|file| &file.field));
        for name in names {
            let index = name
                .strip_prefix(list)
                .and_then(|rest| rest.strip_prefix('['))
                .and_then(|rest| rest.split_once(']'))
                .and_then(|(index, _)| index.parse::<u16>().ok());
            let Some(index) = index.map(usize::from) else { continue };
            if !rows.iter().any(|row| row.index == index) {
                rows.push(Row { list: list.to_owned(), index });
            }
        }
        rows
    }

    fn has_text(&self, row: &Row) -> bool {
        let start = format!("{}[{}]", row.list, row.index);
        self.typed.pairs.iter().any(|(name, text)| name.starts_with(&start) && !text.trim().is_empty())
            || self.typed.files.iter().any(|file| file.field.starts_with(&start))
    }

    /// The one file of a field.
    pub fn file(&mut self, name: &str) -> Option<TypedFile> {
        let file = self.files(name, 1).into_iter().next();
        if file.is_none() {
            self.fail(name, Wrong::FileMissing);
        }
        file
    }

    /// The files of a field, at most `most`, handed over once; those that are empty or too large are named and left out.
    pub fn files(&mut self, name: &str, most: usize) -> Vec<TypedFile> {
        let mut kept = Vec::new();
        // Taken out rather than copied: a photograph can be 25 MB.
        let all = std::mem::take(&mut self.typed.files);
        let (mine, others): (Vec<_>, Vec<_>) = all.into_iter().partition(|file| file.field == name);
        self.typed.files = others;
        for file in mine {
            if file.is_too_large {
                self.fail(name, Wrong::FileTooLarge { file: file.name, most_mb: MOST_FILE / (1024 * 1024) });
            } else if file.content.is_empty() {
                self.fail(name, Wrong::FileEmpty { file: file.name });
            } else {
                kept.push(file);
            }
        }
        if kept.len() > most {
            self.fail(name, Wrong::TooMany { most });
            kept.truncate(most);
        }
        kept
    }

    /// The key that makes a double tap one record; nothing when a program sent none.
    pub fn key(&self) -> Option<Uuid> {
        self.value("key").parse().ok()
    }

    /// The version of the record that this form was opened at.
    pub fn opened_version(&self) -> Option<i64> {
        self.value("opened_version").parse().ok()
    }

    /// The text of a field without the space around it; nothing when nothing is left.
    fn filled(&self, name: &str) -> Option<String> {
        let text = self.value(name).trim();
        (!text.is_empty()).then(|| text.to_owned())
    }

    /// Notes [`Wrong::Empty`] where nothing was typed.
    fn required(&mut self, name: &str) -> Option<()> {
        if self.filled(name).is_none() {
            self.fail(name, Wrong::Empty);
            return None;
        }
        Some(())
    }

    fn note<T>(&mut self, name: &str, read: Result<T, Wrong>) -> Option<T> {
        read.map_err(|wrong| self.fail(name, wrong)).ok()
    }
}
