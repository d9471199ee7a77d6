//! What a camera wrote beside the picture (Exif 2.32, JEITA CP-3451E): when it was taken is read, where is wiped out.

use time::{Date, Month, PrimitiveDateTime, Time, UtcOffset};

const EXIF_POINTER: u16 = 0x8769;
const GPS_POINTER: u16 = 0x8825;
const DATE_TIME: u16 = 0x0132;
const DATE_TIME_ORIGINAL: u16 = 0x9003;
const OFFSET_TIME_ORIGINAL: u16 = 0x9011;
/// More entries than any camera writes; a longer list is noise.
const MOST_ENTRIES: usize = 512;

/// When the camera says the picture was taken, on its own clock.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Captured {
    /// On the wall where the camera was.
    pub local: PrimitiveDateTime,
    /// That wall's distance from UTC, where the camera knew it.
    pub offset: Option<UtcOffset>,
}

/// One entry of a directory: tag, and where its value lies.
struct Entry {
    tag: u16,
    at: usize,
    value: std::ops::Range<usize>,
}

struct Tiff<'a> {
    bytes: &'a [u8],
    is_big_endian: bool,
}

impl<'a> Tiff<'a> {
    fn new(bytes: &'a [u8]) -> Option<Self> {
        let is_big_endian = match bytes.get(..4)? {
            b"MM\0*" => true,
            b"II*\0" => false,
            _ => return None,
        };
        Some(Self { bytes, is_big_endian })
    }

    fn short(&self, at: usize) -> Option<u16> {
        let two = self.bytes.get(at..at.checked_add(2)?)?.try_into().ok()?;
        Some(if self.is_big_endian { u16::from_be_bytes(two) } else { u16::from_le_bytes(two) })
    }

    fn long(&self, at: usize) -> Option<usize> {
        let four = self.bytes.get(at..at.checked_add(4)?)?.try_into().ok()?;
        usize::try_from(if self.is_big_endian { u32::from_be_bytes(four) } else { u32::from_le_bytes(four) }).ok()
    }

    fn directory(&self, at: usize) -> Vec<Entry> {
        let count = self.short(at).map_or(0, usize::from);
        if count > MOST_ENTRIES {
            return Vec::new();
        }
        (0..count).filter_map(|n| self.entry(at + 2 + 12 * n)).collect()
    }

    fn entry(&self, at: usize) -> Option<Entry> {
        // Bytes of one value of each type (TIFF 6.0, section 2).
        let size = match self.short(at + 2)? {
            1 | 2 | 6 | 7 => 1,
            3 | 8 => 2,
            4 | 9 | 11 => 4,
            5 | 10 | 12 => 8,
            _ => return None,
        };
        let length = self.long(at + 4)?.checked_mul(size)?;
        let start = if length <= 4 { at + 8 } else { self.long(at + 8)? };
        Some(Entry { tag: self.short(at)?, at, value: start..start.checked_add(length)? })
    }

    fn sub_directory(&self, pointer: u16) -> Vec<Entry> {
        let first = self.long(4).map(|at| self.directory(at)).unwrap_or_default();
        let at = first.iter().find(|entry| entry.tag == pointer).and_then(|entry| self.long(entry.value.start));
        at.map(|at| self.directory(at)).unwrap_or_default()
    }

    fn text(&self, entries: &[Entry], tag: u16) -> Option<&str> {
        let entry = entries.iter().find(|entry| entry.tag == tag)?;
        std::str::from_utf8(self.bytes.get(entry.value.clone())?).ok().map(|text| text.trim_end_matches(['\0', ' ']))
    }
}

/// When the picture was taken, from a TIFF block.
pub(super) fn captured(tiff: &[u8]) -> Option<Captured> {
    let tiff = Tiff::new(tiff)?;
    let exif = tiff.sub_directory(EXIF_POINTER);
    let first = tiff.long(4).map(|at| tiff.directory(at)).unwrap_or_default();
    let text = tiff.text(&exif, DATE_TIME_ORIGINAL).or_else(|| tiff.text(&first, DATE_TIME))?;
    let offset = tiff.text(&exif, OFFSET_TIME_ORIGINAL).and_then(read_offset);
    Some(Captured { local: read_local(text)?, offset })
}

/// When a page says that a picture was taken, "2026-05-12T09:00:00": the numbers stand where a camera writes them.
pub(super) fn told(text: &str) -> Option<Captured> {
    read_local(text).map(|local| Captured { local, offset: None })
}

/// Wipes out where the picture was taken, in every TIFF block of a file, without moving a byte.
pub(super) fn wipe_places(content: &mut [u8]) {
    let mut from = 0;
    while let Some(found) = find_tiff(content, from) {
        let wiped = places(&content[found..]);
        for range in wiped {
            if let Some(bytes) = content.get_mut(found + range.start..found + range.end) {
                bytes.fill(0);
            }
        }
        from = found + 4;
    }
}

/// Where a TIFF block that holds an Exif pointer begins, from `from` on.
pub(super) fn find_tiff(content: &[u8], from: usize) -> Option<usize> {
    let rest = content.get(from..)?;
    rest.windows(4).position(|four| four == b"MM\0*" || four == b"II*\0").map(|found| from + found)
}

fn places(block: &[u8]) -> Vec<std::ops::Range<usize>> {
    let Some(tiff) = Tiff::new(block) else { return Vec::new() };
    let entries = tiff.sub_directory(GPS_POINTER);
    // The value of each entry, then the entry itself: a tag of nought with no value.
    entries.into_iter().flat_map(|entry| [entry.value, entry.at..entry.at + 12]).collect()
}

/// "2026:05:12 09:00:00".
fn read_local(text: &str) -> Option<PrimitiveDateTime> {
    let number = |range: std::ops::Range<usize>| text.get(range)?.parse::<u16>().ok();
    let small = |range: std::ops::Range<usize>| number(range).and_then(|n| u8::try_from(n).ok());
    let month = Month::try_from(small(5..7)?).ok()?;
    let date = Date::from_calendar_date(i32::from(number(0..4)?), month, small(8..10)?).ok()?;
    let time = Time::from_hms(small(11..13)?, small(14..16)?, small(17..19)?).ok()?;
    Some(PrimitiveDateTime::new(date, time))
}

/// "+02:00".
fn read_offset(text: &str) -> Option<UtcOffset> {
    let (sign, rest) = if let Some(rest) = text.strip_prefix('-') { (-1, rest) } else { (1, text.strip_prefix('+')?) };
    let (hours, minutes) = rest.split_once(':')?;
    UtcOffset::from_hms(sign * hours.parse::<i8>().ok()?, sign * minutes.parse::<i8>().ok()?, 0).ok()
}
