//! Rows of a log, one after another, as samples.
//!
//! A blank cell takes its column's last value if that is at most [`HELD_S`] old (common practice: many tools ask for one
//! quantity a row); what changes slowly is held longer. Where a value that is needed is blank and too old the row is a gap;
//! so is a row without a time. A head in the middle begins a new recording: a time that falls there goes on after a
//! break of a minute instead of going back.

use std::collections::BTreeSet;
use std::fs::File;
use std::ops::ControlFlow;
use std::path::Path;

use super::cell;
use super::lines::Lines;
use super::moment::{Midnight, Moment, moment};
use super::record::Record;
use super::text::{self, Line, Parting};
use super::types::Shown;
use super::units::in_own_unit;
use super::words::{self, Words};
use super::workbook::Book;
use super::{BrokenLine, BrokenWhy, Layout, LogError, Match, Matched, Row, Tally};
use crate::calc::road::{Burned, Quantity, Sample};

/// How old a value may be that stands for a blank cell, s (common practice).
pub const HELD_S: f64 = 1.0;
/// The same of what changes slowly, coolant and long-term trim, s (common practice).
pub const HELD_SLOWLY_S: f64 = 30.0;
/// Time between two recordings in one file, s; longer than anything settles.
const BREAK_S: f64 = 60.0;
/// Broken lines that are kept to be shown.
const MOST_SHOWN: usize = 10;
/// Bytes of a broken line that are handed on.
const LONGEST_SHOWN: usize = 160;
/// Different words of a column that are gathered.
const MOST_WORDS: usize = 64;

/// Reads every row of a log in order.
///
/// # Errors
/// [`LogError::NotMatched`] and [`LogError::NoColumn`] before the first row; what the disk or a workbook says later.
pub fn read(path: &Path, layout: &Layout, wanted: &Match, row: &mut dyn FnMut(Row<'_>)) -> Result<Tally, LogError> {
    let mut reader = Reader::new(path, layout, wanted)?;
    let mut tally = Tally::default();
    each(path, layout, &mut |line| {
        let Some(read) = reader.line(&line) else { return ControlFlow::Continue(()) };
        match read {
            Row::Sample(_) => tally.samples += 1,
            Row::Gap => tally.gaps += 1,
            Row::Broken(BrokenLine { line, text, why }) => {
                tally.broken += 1;
                if tally.shown.len() < MOST_SHOWN {
                    tally.shown.push(Shown { line, text: text.to_owned(), why });
                }
            }
        }
        row(read);
        ControlFlow::Continue(())
    })?;
    Ok(tally)
}

/// The different words that a column holds, at most 64: what a person chooses from who says which of them mean gas.
///
/// # Errors
/// [`LogError::NoColumn`], and what the disk or a workbook says.
pub fn words_of(path: &Path, layout: &Layout, column: &str) -> Result<BTreeSet<String>, LogError> {
    let at = layout.column(column).ok_or_else(|| LogError::NoColumn { column: column.to_owned() })?;
    let mut found = BTreeSet::new();
    let mut last = String::new();
    let head = layout.lines_before as u64 + 1;
    each(path, layout, &mut |line| {
        let Line::Record(record) = line else { return ControlFlow::Continue(()) };
        let said = record.cell(at);
        if record.number > head && said != last && !cell::is_gap(said) && !is_own_name(said, layout, at) {
            said.clone_into(&mut last);
            found.insert(said.chars().take(LONGEST_SHOWN / 4).collect::<String>());
        }
        if found.len() < MOST_WORDS { ControlFlow::Continue(()) } else { ControlFlow::Break(()) }
    })?;
    Ok(found)
}

fn is_own_name(said: &str, layout: &Layout, at: usize) -> bool {
    layout
        .columns
        .get(at)
        .is_some_and(|column| !said.is_empty() && (is_name(said, &column.name) || column.unit == said))
}

/// Hands on every line from the head on.
fn each(path: &Path, layout: &Layout, visit: &mut dyn FnMut(Line<'_>) -> ControlFlow<()>) -> Result<(), LogError> {
    let Some(delimiter) = layout.delimiter else {
        let before = layout.lines_before as u64;
        return Book::open(path)?.each(&layout.sheet, layout.decimal, &mut |record| {
            if record.number > before { visit(Line::Record(record)) } else { ControlFlow::Continue(()) }
        });
    };
    let joined_fields = layout.fields.max(2)..=layout.columns.len().max(2);
    let parting = Parting { delimiter, lines_before: layout.lines_before, joined_fields };
    text::each(Lines::new(File::open(path)?, &layout.encoding), &parting, visit)
}

/// A column that is read as numbers.
struct Numbers {
    quantity: Quantity,
    at: usize,
    scale: f64,
    offset: f64,
    /// The column's own unit, small, and whether a cell may name the quantity's unit instead.
    unit: String,
    takes_own_unit: bool,
    last: Option<(f64, f64)>,
    held_s: f64,
}

/// A column that is read as one of two words.
struct Truths {
    at: usize,
    words: Words,
    last: Option<(f64, bool)>,
}

struct Reader<'l> {
    layout: &'l Layout,
    time: Numbers,
    numbers: Vec<Numbers>,
    fuel: Option<Truths>,
    closed: Option<Truths>,
    midnight: Midnight,
    /// What is added to times since a new recording began, s.
    shift_s: f64,
    last_s: f64,
    /// A head was just read, so that units may follow and time may begin anew.
    is_after_head: bool,
    is_new: bool,
}

/// What a cell came to.
enum Read<T> {
    Value(T),
    Blank,
    Wrong,
}

impl<'l> Reader<'l> {
    fn new(path: &Path, layout: &'l Layout, wanted: &Match) -> Result<Self, LogError> {
        let numbers = |quantity: Quantity| {
            let matched = wanted.columns.get(&quantity);
            matched.map(|matched| Numbers::new(quantity, matched, layout)).transpose()
        };
        let needed = |quantity| numbers(quantity)?.ok_or(LogError::NotMatched { quantity });
        let mut columns = vec![needed(Quantity::Rpm)?, needed(Quantity::PetrolMs)?];
        for quantity in [
            Quantity::ManifoldKpa,
            Quantity::GasMs,
            Quantity::CoolantC,
            Quantity::ShortTrim,
            Quantity::LongTrim,
            Quantity::GasKpa,
        ] {
            columns.extend(numbers(quantity)?);
        }
        Ok(Self {
            layout,
            time: needed(Quantity::TimeS)?,
            numbers: columns,
            fuel: truths(path, layout, wanted, Quantity::Fuel)?,
            closed: truths(path, layout, wanted, Quantity::ClosedLoop)?,
            midnight: Midnight::default(),
            shift_s: 0.0,
            last_s: f64::NEG_INFINITY,
            is_after_head: false,
            is_new: false,
        })
    }

    /// What a line comes to; none for a head and for units.
    fn line<'r>(&mut self, line: &Line<'r>) -> Option<Row<'r>> {
        let (record, why) = match *line {
            Line::Broken(record, why) => (record, Some(why)),
            Line::Record(record) => match self.row(record) {
                Ok(row) => {
                    self.is_after_head = false;
                    return Some(row);
                }
                Err(why) => (record, Some(why)),
            },
        };
        // Only a line that is no row is looked at as a head: rows are many, heads are few.
        if self.is_head(record) {
            (self.is_after_head, self.is_new) = (true, true);
            return None;
        }
        if std::mem::take(&mut self.is_after_head) && self.layout.has_units {
            return None;
        }
        let text = record.line();
        let end = (0..=LONGEST_SHOWN.min(text.len())).rev().find(|at| text.is_char_boundary(*at)).unwrap_or(0);
        why.map(|why| Row::Broken(BrokenLine { line: record.number, text: &text[..end], why }))
    }

    /// A line that says the names of the columns that are wanted.
    fn is_head(&self, record: &Record) -> bool {
        let mut columns = std::iter::once(&self.time).chain(&self.numbers);
        columns.all(|one| is_name(record.cell(one.at), &self.layout.columns[one.at].name))
    }

    fn row<'r>(&mut self, record: &'r Record) -> Result<Row<'r>, BrokenWhy> {
        let (least, most) = (self.layout.fields, self.layout.columns.len());
        let fields = record.len();
        if fields < least {
            return Err(BrokenWhy::TooFew { fields });
        }
        if fields > most && (most..fields).any(|at| !record.cell(at).is_empty()) {
            return Err(BrokenWhy::TooMany { fields });
        }
        let decimal = self.layout.decimal;
        let time_s = match self.time(record.cell(self.time.at), decimal) {
            Read::Value(time_s) => time_s,
            Read::Blank => return Ok(Row::Gap),
            Read::Wrong => return Err(BrokenWhy::NotANumber { quantity: Quantity::TimeS }),
        };
        let mut sample = Sample {
            time_s,
            rpm: f64::NAN,
            manifold_kpa: None,
            petrol_ms: f64::NAN,
            gas_ms: None,
            burned: None,
            coolant_c: None,
            is_closed_loop: None,
            short_trim_percent: None,
            long_trim_percent: None,
            gas_kpa: None,
        };
        let mut lacks = false;
        for column in &mut self.numbers {
            let value = column.value(record.cell(column.at), decimal, time_s)?;
            lacks |= value.is_none() && is_needed_to_judge(column.quantity);
            match column.quantity {
                Quantity::Rpm => sample.rpm = value.unwrap_or(f64::NAN),
                Quantity::PetrolMs => sample.petrol_ms = value.unwrap_or(f64::NAN),
                Quantity::ManifoldKpa => sample.manifold_kpa = value,
                Quantity::GasMs => sample.gas_ms = value,
                Quantity::CoolantC => sample.coolant_c = value,
                Quantity::ShortTrim => sample.short_trim_percent = value,
                Quantity::LongTrim => sample.long_trim_percent = value,
                Quantity::GasKpa => sample.gas_kpa = value,
                Quantity::TimeS | Quantity::Fuel | Quantity::ClosedLoop => {}
            }
        }
        if let Some(fuel) = &mut self.fuel {
            let is_gas = fuel.value(record.cell(fuel.at), time_s);
            sample.burned = is_gas.map(|is_gas| if is_gas { Burned::Gas } else { Burned::Petrol });
            lacks |= is_gas.is_none();
        }
        if let Some(closed) = &mut self.closed {
            sample.is_closed_loop = closed.value(record.cell(closed.at), time_s);
            lacks |= sample.is_closed_loop.is_none();
        }
        Ok(if lacks { Row::Gap } else { Row::Sample(sample) })
    }

    /// Seconds since some beginning; goes on over midnight and over a new recording.
    fn time(&mut self, said: &str, decimal: char) -> Read<f64> {
        let own_s = match self.time.number(said, decimal) {
            Read::Value(own_s) => own_s,
            Read::Blank => return Read::Blank,
            Read::Wrong => match moment(said) {
                Some(Moment::OfDay(of_day_s)) => self.midnight.going_on(of_day_s),
                Some(Moment::Dated(dated_s)) => dated_s,
                None => return Read::Wrong,
            },
        };
        if std::mem::take(&mut self.is_new) && own_s + self.shift_s < self.last_s {
            self.shift_s = self.last_s + BREAK_S - own_s;
        }
        self.last_s = own_s + self.shift_s;
        Read::Value(self.last_s)
    }
}

/// Without it a row cannot be judged, if its column is matched at all.
const fn is_needed_to_judge(quantity: Quantity) -> bool {
    matches!(quantity, Quantity::Rpm | Quantity::PetrolMs | Quantity::ManifoldKpa | Quantity::CoolantC)
}

/// Whether a cell of a head says this name, which may have got a number behind it to be the only one.
fn is_name(said: &str, name: &str) -> bool {
    let said = said.split_whitespace().collect::<Vec<_>>().join(" ");
    let is_number = |behind: &str| {
        let digits = behind.strip_prefix(" (").and_then(|behind| behind.strip_suffix(')'));
        digits.is_some_and(|digits| !digits.is_empty() && digits.bytes().all(|byte| byte.is_ascii_digit()))
    };
    said == name || name.strip_prefix(said.as_str()).is_some_and(is_number)
}

fn place(layout: &Layout, matched: &Matched) -> Result<usize, LogError> {
    layout.column(&matched.column).ok_or_else(|| LogError::NoColumn { column: matched.column.clone() })
}

fn truths(path: &Path, layout: &Layout, wanted: &Match, quantity: Quantity) -> Result<Option<Truths>, LogError> {
    let Some(matched) = wanted.columns.get(&quantity) else { return Ok(None) };
    let at = place(layout, matched)?;
    let given = if quantity == Quantity::Fuel { &wanted.gas_words } else { &wanted.closed_words };
    let words = if given.is_empty() {
        let said = words_of(path, layout, &matched.column)?;
        if quantity == Quantity::Fuel {
            words::gas(&said, layout.decimal)
        } else {
            words::closed(&said, layout.decimal)
        }
    } else {
        given.clone()
    };
    Ok(Some(Truths { at, words: Words::new(words, layout.decimal), last: None }))
}

impl Numbers {
    fn new(quantity: Quantity, matched: &Matched, layout: &Layout) -> Result<Self, LogError> {
        let at = place(layout, matched)?;
        #[expect(clippy::float_cmp, reason = "a factor of exactly one is no factor")]
        let takes_own_unit = matched.scale == 1.0 && matched.offset == 0.0;
        let is_slow = matches!(quantity, Quantity::CoolantC | Quantity::LongTrim);
        Ok(Self {
            quantity,
            at,
            scale: matched.scale,
            offset: matched.offset,
            unit: layout.columns[at].unit.to_lowercase(),
            takes_own_unit,
            last: None,
            held_s: if is_slow { HELD_SLOWLY_S } else { HELD_S },
        })
    }

    /// The quantity that a cell says, in its own unit.
    fn number(&self, said: &str, decimal: char) -> Read<f64> {
        let number = match cell::number(said, decimal) {
            Some(number) => number,
            None if cell::is_gap(said) => return Read::Blank,
            None => match cell::number_and_unit(said, decimal) {
                Some((number, unit)) if self.takes(unit) => number,
                _ => return Read::Wrong,
            },
        };
        let value = number * self.scale + self.offset;
        if value.is_finite() { Read::Value(value) } else { Read::Wrong }
    }

    /// A unit behind a number is the column's, or the quantity's own where no factor stands between the two.
    fn takes(&self, unit: &str) -> bool {
        unit.to_lowercase() == self.unit
            || (self.takes_own_unit && self.unit.is_empty() && in_own_unit(self.quantity, unit) == Some((1.0, 0.0)))
    }

    /// The value of a row, or the last one while it may be held.
    fn value(&mut self, said: &str, decimal: char, time_s: f64) -> Result<Option<f64>, BrokenWhy> {
        match self.number(said, decimal) {
            Read::Value(value) => {
                self.last = Some((time_s, value));
                Ok(Some(value))
            }
            Read::Blank => Ok(held(self.last, time_s, self.held_s)),
            Read::Wrong => Err(BrokenWhy::NotANumber { quantity: self.quantity }),
        }
    }
}

impl Truths {
    fn value(&mut self, said: &str, time_s: f64) -> Option<bool> {
        if cell::is_gap(said) {
            return held(self.last, time_s, HELD_S);
        }
        let is_so = self.words.have(said);
        self.last = Some((time_s, is_so));
        Some(is_so)
    }
}

/// The last value, unless it is too old or of a later time.
fn held<T: Copy>(last: Option<(f64, T)>, time_s: f64, held_s: f64) -> Option<T> {
    last.filter(|(since_s, _)| (0.0..=held_s).contains(&(time_s - since_s))).map(|(_, value)| value)
}
