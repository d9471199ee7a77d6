//! The faces of papers: which face has a character, how wide a text is, where a line may break.
//!
//! Noto Sans first, DejaVu Sans for what it lacks (marks, ≤ ≥ ≈ →). A character that neither has is an error that names
//! it: a printed box would say something the content does not. Scripts that need shaping or run from right to left are
//! refused in the same way, although a face may have their letters.

use std::sync::OnceLock;

use ttf_parser::Face as Outline;
use unicode_linebreak::{BreakOpportunity, linebreaks};

use super::PaperError;
use super::ink::Style;

/// How heavy a text stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Weight {
    /// Running text.
    Regular,
    /// Headings, verdicts.
    Bold,
    /// The signature line.
    Italic,
}

/// One face with its outlines.
pub struct Face {
    /// Six capitals: name of the face inside the PDF, and tag of its subset.
    pub id: &'static str,
    /// The whole TTF file.
    pub bytes: &'static [u8],
    outline: Outline<'static>,
    /// Advance of each character below [`KNOWN`], over the size; `None` where the face lacks it.
    known: Vec<Option<f32>>,
}

/// Characters whose width is read once: the Latin, Greek and Cyrillic letters that fill nearly every paper.
const KNOWN: u32 = 0x530;

impl Face {
    fn new(id: &'static str, bytes: &'static [u8]) -> Option<Self> {
        let outline = Outline::parse(bytes, 0).ok()?;
        let mut face = Self { id, bytes, outline, known: Vec::new() };
        face.known = (0..KNOWN).map(|code| char::from_u32(code).and_then(|c| face.read(c))).collect();
        Some(face)
    }

    fn read(&self, c: char) -> Option<f32> {
        let glyph = self.outline.glyph_index(c)?;
        let units = self.outline.glyph_hor_advance(glyph).unwrap_or(0);
        Some(f32::from(units) / f32::from(self.outline.units_per_em()))
    }

    /// Width of a character over the size; `None` where the face lacks it.
    fn advance(&self, c: char) -> Option<f32> {
        match self.known.get(c as usize) {
            Some(known) => *known,
            None => self.read(c),
        }
    }
}

const FILES: [(&str, &[u8]); 5] = [
    ("NSREGU", include_bytes!("../../static/fonts/NotoSans-Regular.ttf")),
    ("NSBOLD", include_bytes!("../../static/fonts/NotoSans-Bold.ttf")),
    ("NSITAL", include_bytes!("../../static/fonts/NotoSans-Italic.ttf")),
    ("DVREGU", include_bytes!("../../static/fonts/DejaVuSans.ttf")),
    ("DVBOLD", include_bytes!("../../static/fonts/DejaVuSans-Bold.ttf")),
];

/// All faces, read once.
pub fn faces() -> Result<&'static [Face], PaperError> {
    static FACES: OnceLock<Vec<Face>> = OnceLock::new();
    let faces = FACES.get_or_init(|| FILES.into_iter().filter_map(|(id, bytes)| Face::new(id, bytes)).collect());
    if faces.len() == FILES.len() { Ok(faces) } else { Err(PaperError::Font) }
}

impl Weight {
    /// Places, in [`faces`], of the face to try first and of the one to fall back on.
    fn order(self) -> [usize; 2] {
        match self {
            Self::Regular => [0, 3],
            Self::Bold => [1, 4],
            Self::Italic => [2, 3],
        }
    }
}

/// A stretch of text in one face.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Run {
    /// Place of the face in [`faces`].
    pub face: usize,
    /// The text.
    pub text: String,
}

/// Text as it can be drawn: without characters that have no ink and only steer a screen, tabs as spaces.
pub fn clean(text: &str) -> String {
    text.chars()
        .filter(|c| !matches!(c, '\u{ad}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{206f}' | '\u{feff}' | '\r'))
        .map(|c| if c == '\t' { ' ' } else { c })
        .collect()
}

/// Units that stay with the number before them, also where somebody typed a plain space between.
const UNITS: [&str; 24] = [
    "%", "L", "l", "kg", "g", "mg", "km", "m", "cm", "mm", "cm³", "cm³/h", "kW", "bar", "kPa", "MPa", "°C", "K", "s",
    "ms", "min", "h", "Nm", "ppm",
];

/// The same text with no-break spaces between a number and its unit.
fn glue(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for (place, c) in text.char_indices() {
        let follows_digit = out.chars().next_back().is_some_and(|before| before.is_ascii_digit());
        let next = &text[place + c.len_utf8()..];
        let word = next.split(|c: char| c.is_whitespace() || matches!(c, ',' | ';' | ')' | '(')).next().unwrap_or("");
        let is_unit = UNITS.contains(&word.trim_end_matches('.'));
        out.push(if c == ' ' && follows_digit && is_unit { '\u{a0}' } else { c });
    }
    out
}

/// The first character of a text that papers cannot print, if there is one.
pub fn first_unprintable(text: &str) -> Option<char> {
    let faces = faces().ok()?;
    clean(text).chars().find(|&c| c != '\n' && face_of(faces, c, Weight::Regular).is_none())
}

/// Right-to-left scripts and scripts whose letters change with their neighbours: Hebrew, Arabic and their relatives,
/// the Indic scripts and those of South East Asia, Hangul jamo, Mongolian.
fn needs_shaping(c: char) -> bool {
    matches!(c, '\u{590}'..='\u{109f}' | '\u{1100}'..='\u{11ff}' | '\u{1700}'..='\u{1aff}' | '\u{1b00}'..='\u{1c7f}'
        | '\u{1cc0}'..='\u{1cff}' | '\u{a800}'..='\u{abff}' | '\u{fb1d}'..='\u{fdff}' | '\u{fe70}'..='\u{fefc}')
}

fn face_of(faces: &[Face], c: char, weight: Weight) -> Option<usize> {
    if c.is_control() || needs_shaping(c) {
        return None;
    }
    weight.order().into_iter().find(|&index| faces[index].advance(c).is_some())
}

/// Cuts a line into stretches of one face each.
pub fn runs(text: &str, weight: Weight) -> Result<Vec<Run>, PaperError> {
    let faces = faces()?;
    let mut runs: Vec<Run> = Vec::new();
    for c in text.chars() {
        let face = face_of(faces, c, weight).ok_or(PaperError::MissingGlyph(c))?;
        match runs.last_mut() {
            Some(last) if last.face == face => last.text.push(c),
            _ => runs.push(Run { face, text: c.to_string() }),
        }
    }
    Ok(runs)
}

/// Width of a line in points.
pub fn width(text: &str, weight: Weight, size: f32) -> Result<f32, PaperError> {
    let faces = faces()?;
    let mut sum = 0.0;
    for c in text.chars() {
        let face = face_of(faces, c, weight).ok_or(PaperError::MissingGlyph(c))?;
        sum += faces[face].advance(c).unwrap_or(0.0) * size;
    }
    Ok(sum)
}

/// Width of the longest piece that cannot be broken, in points.
pub fn longest_piece(text: &str, weight: Weight, size: f32) -> Result<f32, PaperError> {
    let text = glue(&clean(text));
    let mut start = 0;
    let mut longest: f32 = 0.0;
    for (end, _) in linebreaks(&text) {
        longest = longest.max(width(text[start..end].trim_end(), weight, size)?);
        start = end;
    }
    Ok(longest)
}

/// How far a word may shrink to stay whole in a narrow column.
const LEAST: f32 = 0.75;

/// The style in which the longest piece of a text fits into `room` points: a little smaller where that keeps it whole,
/// the same where it must be broken all the same.
pub fn fitted(text: &str, style: Style, room: f32) -> Result<Style, PaperError> {
    let longest = longest_piece(text, style.weight, style.size)?;
    let scale = room / longest.max(0.1);
    // A hair under, so that rounding does not break what was made to fit.
    let is_helped = (LEAST..1.0).contains(&scale);
    Ok(if is_helped { Style { size: style.size * scale * 0.999, ..style } } else { style })
}

/// Breaks a text into lines no wider than `room` points (Unicode Standard Annex 14); a piece wider than that is broken
/// between characters. Every line but the last of a paragraph keeps the space it ends with, so that a reader of the
/// file finds the words apart.
pub fn wrap(text: &str, weight: Weight, size: f32, room: f32) -> Result<Vec<String>, PaperError> {
    let text = glue(&clean(text));
    let mut lines = Vec::new();
    let mut line = String::new();
    let mut start = 0;
    for (end, opportunity) in linebreaks(&text) {
        let piece = text[start..end].trim_end_matches('\n');
        start = end;
        let together = format!("{line}{piece}");
        if width(together.trim_end(), weight, size)? <= room {
            line = together;
        } else {
            if !line.is_empty() {
                lines.push(std::mem::take(&mut line));
            }
            for c in piece.chars() {
                if !line.is_empty() && width(format!("{line}{c}").trim_end(), weight, size)? > room {
                    lines.push(std::mem::take(&mut line));
                }
                line.push(c);
            }
        }
        if opportunity == BreakOpportunity::Mandatory {
            lines.push(std::mem::take(&mut line));
        }
    }
    if !line.is_empty() || lines.is_empty() {
        lines.push(line);
    }
    Ok(lines)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn marks_come_from_the_fallback_face_and_letters_from_the_first() {
        let runs = runs("✓ passes ≤ 2 %", Weight::Bold).unwrap();
        let faces: Vec<_> = runs.iter().map(|run| run.face).collect();
        assert_eq!(faces, [4, 1, 4, 1]);
        for mark in "✓○◐✕⊘–◷°³±≤≥≈→µ\u{202f}\u{a0}".chars() {
            for weight in [Weight::Regular, Weight::Bold, Weight::Italic] {
                assert!(width(&mark.to_string(), weight, 10.0).is_ok(), "{mark:?} {weight:?}");
            }
        }
    }

    #[test]
    fn names_of_many_languages_print() {
        for name in [
            "Zażółć Gęślą-Jaźń",
            "İğdır Şükrü Öztürk",
            "Ελένη Παπαδοπούλου",
            "Юлія Їжак",
            "Nguyễn Thị Hương",
            "Łukasz Đorđević",
        ] {
            assert_eq!(first_unprintable(name), None, "{name}");
        }
    }

    #[test]
    fn a_character_without_a_face_is_named() {
        assert_eq!(first_unprintable("Tanaka 田中"), Some('田'));
        assert_eq!(first_unprintable("שלום"), Some('ש'));
        assert_eq!(first_unprintable("नमस्ते"), Some('न'));
        assert_eq!(width("田", Weight::Regular, 10.0), Err(PaperError::MissingGlyph('田')));
    }

    #[test]
    fn a_unit_stays_with_its_number() {
        assert_eq!(
            glue("54 L, filled to 43 L (80 %), in 4 lines"),
            "54\u{a0}L, filled to 43\u{a0}L (80\u{a0}%), in 4 lines"
        );
    }

    #[test]
    fn a_line_never_exceeds_its_room_and_nothing_is_lost() {
        let text = "This vehicle has been fitted with the gas system named below, on 1\u{202f}598\u{a0}cm³ and \
                    WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW.";
        let lines = wrap(text, Weight::Regular, 10.0, 120.0).unwrap();
        for line in &lines {
            assert!(width(line.trim_end(), Weight::Regular, 10.0).unwrap() <= 120.0, "{line}");
        }
        assert_eq!(lines.concat(), text);
        assert!(lines.iter().any(|line| line.contains("1\u{202f}598\u{a0}cm³")), "{lines:?}");
        assert_eq!(wrap("", Weight::Regular, 10.0, 120.0).unwrap(), [""]);
        assert_eq!(wrap("a\nb", Weight::Regular, 10.0, 120.0).unwrap(), ["a", "b"]);
    }
}
