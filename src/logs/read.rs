//! Rows of a log, one after another, as samples.
//!
//! A blank cell takes its column's last value if that is at most [`super::HELD_S`] old (common practice: many tools ask for one
//! quantity a row); what changes slowly is held longer. Where a value that is needed is blank and too old the row is a gap;
//! so is a row without a time. A head in the middle begins a new recording: a time that falls there goes on after a
//! break of a minute instead of going back.

use std::ops::ControlFlow;
use std::path::Path;

use super::columns::{Numbers, Read, Truths};
use super::moment::{Midnight, Moment, moment};
use super::record::Record;
use super::rows::{each, is_name};
use super::text::Line;
use super::types::Shown;
use super::{BrokenLine, BrokenWhy, Layout, LogError, Match, Row, Tally};
use crate::calc::road::{Burned, Quantity, Sample};

/// Time between two recordings in one file, s; longer than anything settles.
const BREAK_S: f64 = 60.0;
/// Broken lines that are kept to be shown.
const MOST_SHOWN: usize = 10;
/// Bytes of a broken line that are handed on.
const LONGEST_SHOWN: usize = 160;

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
            fuel: Truths::new(path, layout, wanted, Quantity::Fuel)?,
            closed: Truths::new(path, layout, wanted, Quantity::ClosedLoop)?,
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
        // A workbook leaves out blank cells, and cuts none.
        if fields < least && self.layout.delimiter.is_some() {
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
