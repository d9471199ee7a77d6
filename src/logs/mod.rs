//! Delimited text logs and workbooks, read a row at a time whatever tool wrote them.
//!
//! Promises: no tool's format is known here, only how tables are written (delimiter, decimal sign, encoding, lines before
//! the head, a row of units); a line that cannot be read is counted, not fatal; a file of any length needs the memory of
//! a few rows. What the numbers mean is said by a [`Match`], and judged elsewhere.

mod types;

pub use types::{Column, Layout, LogError, Match, Matched};
