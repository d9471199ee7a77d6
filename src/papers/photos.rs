//! Photos in a grid, two or three a row, each with its caption; a row never breaks over a page.

use std::collections::BTreeMap;

use super::PaperError;
use super::fonts;
use super::ink::{Ink, SMALL};
use super::jpeg::Jpeg;
use super::phrases;
use super::sheet::{LEFT, Sheet, WIDTH};
use super::tags::Role;
use crate::model::paper::of_job::PhotoOnPaper;
use crate::words::Words;

/// The photos of a paper by their checksum: JPEG, upright, as small as they are to be printed.
#[derive(Debug, Clone, Default)]
pub struct Pictures(BTreeMap<String, Jpeg>);

impl Pictures {
    /// Adds a photo; what is no JPEG that can be printed is left out, and the paper says so in its place.
    pub fn add(&mut self, sha256: &str, jpeg: Vec<u8>) {
        if let Some(jpeg) = Jpeg::read(jpeg) {
            self.0.insert(sha256.to_owned(), jpeg);
        }
    }

    /// Whether this photo can be printed.
    pub fn has(&self, sha256: &str) -> bool {
        self.0.contains_key(sha256)
    }
}

const GAP: f32 = 10.0;
/// Tallest a photo gets, over the width of its place.
const TALLEST: f32 = 0.8;
/// Height of the frame that stands for a photo that cannot be printed.
const MISSING: f32 = 40.0;

/// Draws the photos under a heading, where there are any: two a row, from five on three.
pub fn draw(sheet: &mut Sheet, photos: &[PhotoOnPaper], pictures: &Pictures, words: &Words) -> Result<(), PaperError> {
    if photos.is_empty() {
        return Ok(());
    }
    let a_row = if photos.len() < 5 { 2 } else { 3 };
    let wide = (WIDTH - GAP * (a_row - 1) as f32) / a_row as f32;
    let tall = |photo: &PhotoOnPaper| pictures.0.get(&photo.picture).map_or(MISSING, |jpeg| fit(jpeg, wide)[1]);
    let first = photos[..a_row.min(photos.len())].iter().map(tall).fold(0.0, f32::max);
    sheet.section(&words.t("paper-photos"), first + 3.0 * SMALL.leading())?;
    sheet.y += 3.0;
    for row in photos.chunks(a_row) {
        let height = row.iter().map(tall).fold(0.0, f32::max);
        let captions: Vec<String> = row.iter().map(|photo| caption(photo, words)).collect();
        let mut lines = Vec::new();
        for caption in &captions {
            lines.push(fonts::wrap(caption, SMALL.weight, SMALL.size, wide)?);
        }
        let under = SMALL.leading() * lines.iter().map(Vec::len).max().unwrap_or(0) as f32 + 4.0;
        sheet.keep(height + under);
        for (at, (photo, lines)) in row.iter().zip(lines).enumerate() {
            let x = LEFT + (wide + GAP) * at as f32;
            one(sheet, pictures.0.get(&photo.picture), [x, sheet.y, wide, height], &captions[at], words)?;
            sheet.tags.open(Role::P);
            for (n, line) in lines.iter().enumerate() {
                sheet.put(x, sheet.y + height + 3.0 + SMALL.size + SMALL.leading() * n as f32, line, SMALL)?;
            }
            sheet.tags.close();
        }
        sheet.y += height + under + 8.0;
    }
    sheet.end_section();
    Ok(())
}

/// Width and height of a photo in a place so wide.
fn fit(jpeg: &Jpeg, wide: f32) -> [f32; 2] {
    let tall = (wide / jpeg.proportion()).min(wide * TALLEST);
    [tall * jpeg.proportion(), tall]
}

/// A photo standing on its caption, or a frame that says that it cannot be shown.
fn one(
    sheet: &mut Sheet,
    jpeg: Option<&Jpeg>,
    [x, y, wide, height]: [f32; 4],
    caption: &str,
    words: &Words,
) -> Result<(), PaperError> {
    if let Some(jpeg) = jpeg {
        let [width, tall] = fit(jpeg, wide);
        sheet.photo(jpeg, [x, y + height - tall, width, tall], caption);
        return Ok(());
    }
    let top = y + height - MISSING;
    for level in [top, y + height] {
        sheet.rule_on(sheet.page(), x, x + wide, level, 0.5, Ink::Soft);
    }
    sheet.tags.open(Role::P);
    for (n, line) in fonts::wrap(&words.t("paper-photo-missing"), SMALL.weight, SMALL.size, wide)?.iter().enumerate() {
        sheet.put(x, top + 6.0 + SMALL.size + SMALL.leading() * n as f32, line, SMALL)?;
    }
    sheet.tags.close();
    Ok(())
}

/// "Container plate · 25 Nov 2026, 10:42 UTC+1".
fn caption(photo: &PhotoOnPaper, words: &Words) -> String {
    phrases::dotted(&[&photo.what, &phrases::instant(words, photo.taken_at), &photo.name])
}
