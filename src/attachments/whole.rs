//! Whether a file reaches its own end. A decoder fills a missing rest with grey and says nothing, so it is asked here.

use super::{Kind, Unfit};

/// Walks the file as its format says and looks for the end.
pub(super) fn check(kind: Kind, content: &[u8]) -> Result<(), Unfit> {
    match kind {
        Kind::Jpeg => jpeg(content),
        Kind::Png => png(content),
        Kind::WebP => webp(content),
        Kind::Heic => heic(content),
        Kind::Pdf => pdf(content),
        // Nobody but its device knows where such a file ends.
        Kind::Opaque | Kind::Log | Kind::Workbook => Ok(()),
    }
}

fn number(bytes: Option<&[u8]>) -> Option<usize> {
    bytes.map(|bytes| bytes.iter().fold(0_usize, |sum, byte| sum << 8 | usize::from(*byte)))
}

/// ITU-T T.81, annex B: segments with a length, after a start of scan coded data, at last the mark EOI. A preview
/// inside a segment has an EOI of its own, so that looking at the last two bytes, or for any EOI, would not do.
fn jpeg(content: &[u8]) -> Result<(), Unfit> {
    let mut at = 2;
    loop {
        if *content.get(at).ok_or(Unfit::CutOff)? != 0xff {
            return Err(Unfit::Broken);
        }
        let mark = *content.get(at + 1).ok_or(Unfit::CutOff)?;
        match mark {
            0xd9 => return Ok(()),
            0xff => at += 1,
            0x01 | 0xd0..=0xd8 => at += 2,
            0x00 => return Err(Unfit::Broken),
            _ => {
                let length = number(content.get(at + 2..at + 4)).ok_or(Unfit::CutOff)?;
                if length < 2 {
                    return Err(Unfit::Broken);
                }
                at += 2 + length;
                if mark == 0xda {
                    at = end_of_scan(content, at).ok_or(Unfit::CutOff)?;
                }
            }
        }
    }
}

/// Coded data ends at a mark that is neither a stuffed zero nor a restart.
fn end_of_scan(content: &[u8], from: usize) -> Option<usize> {
    let rest = content.get(from..)?;
    let is_mark = |pair: &[u8]| pair[0] == 0xff && !matches!(pair[1], 0x00 | 0xd0..=0xd7 | 0xff);
    rest.windows(2).position(is_mark).map(|found| from + found)
}

/// PNG, third edition, 5.3: chunks of length, type, data, check sum; the last is IEND.
fn png(content: &[u8]) -> Result<(), Unfit> {
    let mut at = 8;
    loop {
        let length = number(content.get(at..at + 4)).ok_or(Unfit::CutOff)?;
        let name = content.get(at + 4..at + 8).ok_or(Unfit::CutOff)?;
        at += 12 + length;
        if at > content.len() {
            return Err(Unfit::CutOff);
        }
        if name == b"IEND" {
            return Ok(());
        }
    }
}

/// RFC 9649, 2.4: the length of what follows, little end first.
fn webp(content: &[u8]) -> Result<(), Unfit> {
    let length = content.get(4..8).and_then(|bytes| bytes.try_into().ok()).map(u32::from_le_bytes);
    let length = usize::try_from(length.ok_or(Unfit::CutOff)?).map_err(|_| Unfit::Broken)?;
    if content.len() < length.saturating_add(8) { Err(Unfit::CutOff) } else { Ok(()) }
}

/// ISO/IEC 14496-12, 4.2: boxes of length and type, one after the other, to the end of the file.
fn heic(content: &[u8]) -> Result<(), Unfit> {
    let mut at = 0;
    let mut has_data = false;
    while at < content.len() {
        let length = number(content.get(at..at + 4)).ok_or(Unfit::CutOff)?;
        has_data |= matches!(content.get(at + 4..at + 8), Some(b"mdat" | b"idat" | b"meta"));
        let length = match length {
            0 => return if has_data { Ok(()) } else { Err(Unfit::Broken) },
            1 => number(content.get(at + 8..at + 16)).ok_or(Unfit::CutOff)?,
            length => length,
        };
        if length < 8 {
            return Err(Unfit::Broken);
        }
        at = at.checked_add(length).ok_or(Unfit::Broken)?;
        if at > content.len() {
            return Err(Unfit::CutOff);
        }
    }
    if has_data { Ok(()) } else { Err(Unfit::CutOff) }
}

/// ISO 32000-1, 7.5.5: the last line is `%%EOF`; readers look for it in the last 1 024 bytes.
fn pdf(content: &[u8]) -> Result<(), Unfit> {
    let tail = &content[content.len().saturating_sub(1024)..];
    if tail.windows(5).any(|five| five == b"%%EOF") { Ok(()) } else { Err(Unfit::CutOff) }
}
