//! Delimited text logs and workbooks, read a row at a time whatever tool wrote them.
//!
//! Promises: no tool's format is known here, only how tables are written (delimiter, decimal sign, encoding, lines before
//! the head, a row of units); a line that cannot be read is counted, not fatal; a file of any length needs the memory of
//! a few rows. What the numbers mean is said by a [`Match`], and judged elsewhere.

mod cell;
mod columns;
mod compare;
mod encoding;
mod head;
mod lines;
mod look;
mod moment;
mod read;
mod record;
mod rows;
mod suggest;
mod text;
mod types;
mod units;
mod words;
mod workbook;

pub use columns::{HELD_S, HELD_SLOWLY_S};
pub use compare::{CompareError, Log, compare, compare_and_tell};
pub use look::{look, source_key};
pub use read::read;
pub use rows::words_of;
pub use suggest::suggest;
pub use types::{BrokenLine, BrokenWhy, Column, Layout, LogError, Match, Matched, Row, Shown, Tally};
pub use units::{in_own_unit, is_unit, units_taken};
pub use words::{CLOSED_WORDS, GAS_WORDS};
