//! Logs in, what driving on both fuels came to out.

use std::fs::File;
use std::hash::{DefaultHasher, Hasher};
use std::io::{BufReader, Read};
use std::path::{Path, PathBuf};

use super::{Layout, LogError, Match, Row, Tally, read};
use crate::calc::road::{Burned, Cell, CellVerdict, Comparison, Gatherer, Has, Plan, Quantity, Refused, Sample};

/// A log of a comparison.
#[derive(Debug, Clone, PartialEq)]
pub struct Log {
    /// Where it lies.
    pub path: PathBuf,
    /// How it is laid out.
    pub layout: Layout,
    /// Which of its columns are what.
    pub wanted: Match,
    /// The fuel that it was driven on, as a person says; `None` where its fuel column tells row by row.
    pub stated: Option<Burned>,
}

/// Why logs are not compared. Logs are counted from nought.
#[derive(Debug, Clone, PartialEq)]
pub enum CompareError {
    /// A log cannot be read.
    Log {
        /// Which one.
        log: usize,
        /// Why.
        error: LogError,
    },
    /// Two logs are the same file, byte for byte, or hold the same rows.
    Same {
        /// One of them.
        one: usize,
        /// The other.
        other: usize,
    },
    /// Neither a person nor a column says what a log was driven on.
    FuelUnknown {
        /// Which one.
        log: usize,
    },
    /// What they hold cannot be compared.
    Refused(Refused),
}

impl std::fmt::Display for CompareError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Log { error, .. } => error.fmt(f),
            Self::Same { .. } => f.write_str("both logs are the same recording; a comparison needs one on each fuel"),
            Self::FuelUnknown { .. } => f.write_str("nothing says which fuel the log was driven on"),
            Self::Refused(refused) => refused.fmt(f),
        }
    }
}

impl std::error::Error for CompareError {}

impl From<Refused> for CompareError {
    fn from(refused: Refused) -> Self {
        Self::Refused(refused)
    }
}

/// Compares what was driven on petrol with what was driven on gas.
///
/// # Errors
/// [`CompareError`] for a log that cannot be read, for the same log twice, and for what cannot be compared.
pub fn compare(logs: &[Log], plan: Plan) -> Result<Comparison, CompareError> {
    compare_and_tell(logs, plan).map(|(comparison, _)| comparison)
}

/// The same, and what reading each log came to, its first broken lines included.
///
/// # Errors
/// As [`compare`].
pub fn compare_and_tell(logs: &[Log], plan: Plan) -> Result<(Comparison, Vec<Tally>), CompareError> {
    if let Some(log) =
        logs.iter().position(|log| log.stated.is_none() && !log.wanted.columns.contains_key(&Quantity::Fuel))
    {
        return Err(CompareError::FuelUnknown { log });
    }
    let pairs = || (0..logs.len()).flat_map(|other| (0..other).map(move |one| (one, other)));
    for (one, other) in pairs() {
        let is_same = are_alike(&logs[one].path, &logs[other].path);
        if is_same.map_err(|error| CompareError::Log { log: other, error: error.into() })? {
            return Err(CompareError::Same { one, other });
        }
    }
    let mut gatherer = Gatherer::new(plan, has(logs));
    let mut tallies = Vec::with_capacity(logs.len());
    let mut sums = Vec::with_capacity(logs.len());
    for (log, one) in logs.iter().enumerate() {
        gatherer.begin_log(one.stated);
        let mut sum = DefaultHasher::new();
        let tally = read(&one.path, &one.layout, &one.wanted, &mut |row| match row {
            Row::Sample(sample) => {
                add(&mut sum, &sample);
                gatherer.push(&sample);
            }
            Row::Gap => gatherer.gap(),
            Row::Broken(_) => gatherer.broken(),
        });
        let tally = tally.map_err(|error| CompareError::Log { log, error })?;
        // A recording saved anew with another delimiter is the same recording.
        sums.push((tally.samples, sum.finish()));
        tallies.push(tally);
    }
    if let Some((one, other)) = pairs().find(|(one, other)| sums[*one].0 > 0 && sums[*one] == sums[*other]) {
        return Err(CompareError::Same { one, other });
    }
    let comparison = gatherer.finish()?;
    if is_one_sided(&comparison) {
        return Err(Refused::NothingUsable { set_aside: comparison.set_aside }.into());
    }
    Ok((comparison, tallies))
}

/// Whether one fuel was not visited anywhere, not even where closed loop cannot see: asking for more driving everywhere
/// would hide that its log is of no use as it is.
fn is_one_sided(comparison: &Comparison) -> bool {
    let is_blind = comparison.cells.iter().any(|cell| cell.verdict == CellVerdict::NoFeedback);
    let sides = [|cell: &Cell| cell.petrol_visits, |cell: &Cell| cell.gas_visits];
    !is_blind && sides.iter().any(|visits| comparison.cells.iter().all(|cell| visits(cell) == 0))
}

/// What every log holds.
fn has(logs: &[Log]) -> Has {
    let of = |log: &Log| Has::of(log.wanted.columns.keys().copied());
    logs.iter().map(of).reduce(Has::and).unwrap_or_default()
}

fn add(sum: &mut DefaultHasher, sample: &Sample) {
    for value in [sample.time_s, sample.rpm, sample.petrol_ms] {
        sum.write_u64(value.to_bits());
    }
}

/// Whether two files hold the same bytes.
fn are_alike(one: &Path, other: &Path) -> std::io::Result<bool> {
    const CHUNK: usize = 64 * 1024;
    let (one, other) = (File::open(one)?, File::open(other)?);
    if one.metadata()?.len() != other.metadata()?.len() {
        return Ok(false);
    }
    let (mut one, mut other) = (BufReader::with_capacity(CHUNK, one), BufReader::with_capacity(CHUNK, other));
    let (mut left, mut right) = (vec![0; CHUNK], vec![0; CHUNK]);
    loop {
        let (left, right) = (filled(&mut one, &mut left)?, filled(&mut other, &mut right)?);
        if left != right {
            return Ok(false);
        }
        if left.is_empty() {
            return Ok(true);
        }
    }
}

/// As many bytes as there are, up to the chunk's length.
fn filled<'c>(file: &mut impl Read, chunk: &'c mut [u8]) -> std::io::Result<&'c [u8]> {
    let mut length = 0;
    while length < chunk.len() {
        match file.read(&mut chunk[length..])? {
            0 => break,
            count => length += count,
        }
    }
    Ok(&chunk[..length])
}
