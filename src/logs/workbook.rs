//! Sheets of an XLSX workbook as records.
//!
//! A workbook is a packed archive: a small file may unpack into more than a machine holds. Before anything is read its
//! parts are unpacked once into nothing, counted, and refused beyond sane sizes; what is kept in memory afterwards (texts
//! that cells share, styles) is small, and the sheet itself is streamed a cell at a time.

use std::fs::File;
use std::io::{BufReader, Read};
use std::ops::ControlFlow;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::Path;

use calamine::{DataRef, ExcelDateTime, Reader, Xlsx};
use zip::ZipArchive;

use super::LogError;
use super::record::Record;

/// Most bytes of all parts, unpacked: a full sheet of a million rows and a dozen columns.
const MOST_BYTES: u64 = 1 << 30;
/// Most bytes of a part that is kept in memory.
const MOST_KEPT_BYTES: u64 = 48 << 20;
const MOST_PARTS: usize = 4096;
/// Most bytes of one tag or one text.
const MOST_TEXT_BYTES: usize = 1 << 20;
/// How deep tags may nest.
const MOST_DEPTH: i64 = 64;
/// Columns beyond are passed over.
const MOST_COLUMNS: u32 = 4096;

/// Whether the bytes begin like an archive, and so perhaps like a workbook.
pub(super) fn is_packed(head: &[u8]) -> bool {
    head.starts_with(b"PK\x03\x04")
}

/// Whether the bytes begin like a workbook of the old binary kind.
pub(super) fn is_old(head: &[u8]) -> bool {
    head.starts_with(b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1")
}

fn wrong(error: impl std::fmt::Display) -> LogError {
    LogError::Workbook(error.to_string())
}

/// What the reader of workbooks says. A row number beyond any sheet makes it panic where overflow is checked; whatever else
/// a hostile file may do to it, the file is refused and nothing of it is used any more.
fn guarded<T, E: std::fmt::Display>(read: impl FnOnce() -> Result<T, E>) -> Result<T, LogError> {
    match catch_unwind(AssertUnwindSafe(read)) {
        Ok(said) => said.map_err(wrong),
        Err(_) => Err(wrong("it is damaged")),
    }
}

/// A workbook that was looked through.
pub(super) struct Book(Xlsx<BufReader<File>>);

impl Book {
    /// Opens a workbook.
    ///
    /// # Errors
    /// [`LogError::Workbook`] for what is no workbook and for one that unpacks to more than is sane.
    pub(super) fn open(path: &Path) -> Result<Self, LogError> {
        look_through(path)?;
        let file = BufReader::new(File::open(path)?);
        guarded(|| Xlsx::new(file)).map(Self)
    }

    /// Names of its sheets.
    pub(super) fn sheets(&self) -> Vec<String> {
        self.0.sheet_names()
    }

    /// Hands every row that holds a cell to `visit`, numbers written with `decimal`, or without any decimal sign: a cell that
    /// is a number tells nothing about the sign in cells that are text.
    pub(super) fn each(
        &mut self,
        sheet: &str,
        decimal: Option<char>,
        visit: &mut dyn FnMut(&Record) -> ControlFlow<()>,
    ) -> Result<(), LogError> {
        let mut cells = guarded(|| self.0.worksheet_cells_reader(sheet))?;
        let mut record = Record::default();
        let mut next_column = 0;
        while let Some(cell) = guarded(|| cells.next_cell())? {
            let (row, column) = cell.get_position();
            let number = u64::from(row) + 1;
            if number != record.number {
                if record.len() > 0 && visit(&record).is_break() {
                    return Ok(());
                }
                record.clear();
                record.number = number;
                next_column = 0;
            }
            if column >= MOST_COLUMNS || column < next_column {
                continue;
            }
            (next_column..column).for_each(|_| record.push(""));
            record.push(&written(cell.get_value(), decimal));
            next_column = column + 1;
        }
        if record.len() > 0 {
            let _ = visit(&record);
        }
        Ok(())
    }
}

/// A cell as text; a number with the file's decimal sign, or with an exponent instead.
fn written(value: &DataRef<'_>, decimal: Option<char>) -> String {
    let number = |number: String| match (decimal, number.split_once('.')) {
        (None, Some((whole, fraction))) => format!("{whole}{fraction}e-{}", fraction.len()),
        (Some(','), Some((whole, fraction))) => format!("{whole},{fraction}"),
        _ => number,
    };
    match value {
        DataRef::Int(whole) => whole.to_string(),
        DataRef::Float(float) => number(float.to_string()),
        DataRef::String(text) | DataRef::DateTimeIso(text) | DataRef::DurationIso(text) => text.clone(),
        DataRef::SharedString(text) => (*text).to_owned(),
        DataRef::Bool(truth) => u8::from(*truth).to_string(),
        DataRef::DateTime(moment) => clock(*moment),
        DataRef::Error(_) | DataRef::Empty => String::new(),
    }
}

/// A date, a time of day or a duration, as it would be written in a text log.
fn clock(moment: ExcelDateTime) -> String {
    const DAY_MS: f64 = 86_400_000.0;
    let days = moment.as_f64();
    if (0.0..1.0).contains(&days) || (moment.is_duration() && (0.0..400.0).contains(&days)) {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "0 to 400 days in milliseconds")]
        let ms = (days * DAY_MS).round() as u64;
        return format!("{}:{:02}:{:02}.{:03}", ms / 3_600_000, ms / 60_000 % 60, ms / 1000 % 60, ms % 1000);
    }
    let (year, month, day, hour, minute, second, ms) = moment.to_ymd_hms_milli();
    format!("{year:04}-{month:02}-{day:02} {hour:02}:{minute:02}:{second:02}.{ms:03}")
}

/// Unpacks every part that would be read, and keeps nothing.
fn look_through(path: &Path) -> Result<(), LogError> {
    let mut archive = ZipArchive::new(BufReader::new(File::open(path)?)).map_err(wrong)?;
    if archive.len() > MOST_PARTS {
        return Err(wrong(format!("it holds more than {MOST_PARTS} parts")));
    }
    let mut left = MOST_BYTES;
    for at in 0..archive.len() {
        let part = archive.by_index(at).map_err(wrong)?;
        let name = part.name().map_err(wrong)?.to_lowercase();
        // Pictures and the like are never unpacked.
        if !matches!(name.rsplit('.').next(), Some("xml" | "rels")) {
            continue;
        }
        let most = if name.contains("worksheets/") { left } else { left.min(MOST_KEPT_BYTES) };
        // What the archive says of itself first: it costs nothing. It may lie, so that the bytes are counted too.
        if part.size() > most {
            return Err(too_large(&name));
        }
        left -= count(part.take(most + 1), most, &name)?;
    }
    Ok(())
}

fn too_large(name: &str) -> LogError {
    wrong(format!("its part {:?} is too large when unpacked", name.chars().take(80).collect::<String>()))
}

/// Bytes of a part, which may be `most`; tags and texts must not be longer, nor nest deeper, than those of a sheet.
fn count(mut part: impl Read, most: u64, name: &str) -> Result<u64, LogError> {
    let mut chunk = vec![0; 64 * 1024];
    let (mut bytes, mut run, mut depth, mut last) = (0_u64, 0_usize, 0_i64, 0_u8);
    loop {
        let got = part.read(&mut chunk).map_err(wrong)?;
        if got == 0 {
            return Ok(bytes);
        }
        bytes += got as u64;
        for &byte in &chunk[..got] {
            run = if byte == b'<' { 0 } else { run + 1 };
            depth += match (last, byte) {
                (b'<', b'/') | (b'/', b'>') => -1,
                (b'<', b'?' | b'!') => 0,
                (b'<', _) => 1,
                _ => 0,
            };
            last = byte;
            if run > MOST_TEXT_BYTES || depth > MOST_DEPTH {
                return Err(too_large(name));
            }
        }
        if bytes > most {
            return Err(too_large(name));
        }
    }
}
