//! Delimited text as records.

use std::collections::VecDeque;
use std::io::Read;
use std::ops::{ControlFlow, RangeInclusive};

use super::lines::{Got, Lines};
use super::record::Record;
use super::{BrokenWhy, LogError};

/// Lines that a quoted field may go on over.
const MOST_JOINED: usize = 4;

/// What stands in a line.
pub(super) enum Line<'a> {
    /// Fields.
    Record(&'a Record),
    /// Something that cannot be parted into fields.
    Broken(&'a Record, BrokenWhy),
}

/// How text is parted.
pub(super) struct Parting {
    /// What parts the fields.
    pub(super) delimiter: char,
    /// Lines to pass over first.
    pub(super) lines_before: usize,
    /// Fields of a record that may go on over several lines.
    pub(super) joined_fields: RangeInclusive<usize>,
}

/// Hands every line that is not blank to `visit`, until it says stop.
pub(super) fn each<R: Read>(
    lines: Lines<R>,
    parting: &Parting,
    visit: &mut dyn FnMut(Line<'_>) -> ControlFlow<()>,
) -> Result<(), LogError> {
    let mut queue = Queue { lines, waiting: VecDeque::new() };
    let mut record = Record::default();
    let mut number = 0;
    loop {
        record.clear();
        let got = queue.next(&mut record.text)?;
        if got == Got::End {
            return Ok(());
        }
        number += 1;
        record.number = number;
        if number <= parting.lines_before as u64 {
            continue;
        }
        let flow = match got {
            Got::TooLong => visit(Line::Broken(&record, BrokenWhy::TooLong)),
            _ if record.text.trim_ascii_start().is_empty() => ControlFlow::Continue(()),
            _ => match record.split(parting.delimiter) {
                Ok(()) => visit(Line::Record(&record)),
                Err(_) => match queue.join(&record, parting)? {
                    Some((joined, count)) => {
                        record = joined;
                        number += count;
                        visit(Line::Record(&record))
                    }
                    None => visit(Line::Broken(&record, BrokenWhy::OpenQuote)),
                },
            },
        };
        if flow.is_break() {
            return Ok(());
        }
    }
}

/// Lines, and those that were looked at too early.
struct Queue<R> {
    lines: Lines<R>,
    waiting: VecDeque<(Got, String)>,
}

impl<R: Read> Queue<R> {
    fn next(&mut self, line: &mut String) -> Result<Got, LogError> {
        match self.waiting.pop_front() {
            Some((got, waiting)) => {
                line.push_str(&waiting);
                Ok(got)
            }
            None => self.lines.next(line),
        }
    }

    /// A record whose quoted field goes on over further lines, and how many they are. One stray mark must not swallow the
    /// rows behind it: what is joined has to have a row's number of fields, else the lines go back.
    fn join(&mut self, first: &Record, parting: &Parting) -> Result<Option<(Record, u64)>, LogError> {
        let mut pulled = VecDeque::new();
        let mut text = first.line().to_owned();
        while pulled.len() < MOST_JOINED {
            let mut line = String::new();
            let got = self.next(&mut line)?;
            if got == Got::End {
                break;
            }
            text.push('\n');
            text.push_str(&line);
            pulled.push_back((got, line));
            if got == Got::TooLong {
                break;
            }
            let mut joined = Record::of(text.clone(), first.number);
            if joined.split(parting.delimiter).is_ok() {
                if parting.joined_fields.contains(&joined.len()) {
                    return Ok(Some((joined, pulled.len() as u64)));
                }
                break;
            }
        }
        while let Some(back) = pulled.pop_back() {
            self.waiting.push_front(back);
        }
        Ok(None)
    }
}
