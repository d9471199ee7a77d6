//! How the pages of papers look, held against small pictures of them that somebody has looked at.
//!
//! The pictures lie in `tests/golden/pages`, grey, 36 dots to the inch. Compared is how dark each square of 6 by 6 dots is:
//! releases of poppler smooth letters differently, while a line that moved, a table that grew or a mark that is gone changes
//! whole squares. `GOLDEN=write` writes them anew, as it does the texts.

use std::path::{Path, PathBuf};
use std::process::Command;

use image::GrayImage;

/// Dots to the inch.
const DENSITY: &str = "36";
/// Side of a square, in dots.
const SIDE: u32 = 6;
/// By how much of 255 a square may be darker or lighter.
const MOST: f64 = 28.0;

/// One picture a page.
fn pages(name: &str, pdf: &[u8]) -> Vec<GrayImage> {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("pages-{name}"));
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(&folder).unwrap();
    let paper = folder.join("paper.pdf");
    std::fs::write(&paper, pdf).unwrap();
    let mut drawing = Command::new("pdftoppm");
    drawing.args(["-gray", "-r", DENSITY, "-png"]).arg(&paper).arg(folder.join("page"));
    assert!(drawing.status().unwrap().success(), "{name}");
    let mut files: Vec<PathBuf> = std::fs::read_dir(&folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    files.retain(|path| path.extension().is_some_and(|end| end == "png"));
    files.sort();
    files.iter().map(|path| image::open(path).unwrap().into_luma8()).collect()
}

fn file(name: &str, page: usize) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/golden/pages").join(format!("{name}-{page}.png"))
}

/// Eight shades are enough to compare by, and make a small file.
fn keep(page: &GrayImage, file: &Path) {
    let mut page = page.clone();
    page.pixels_mut().for_each(|dot| dot.0[0] = (dot.0[0] / 32) * 36 + 3);
    let out = std::io::BufWriter::new(std::fs::File::create(file).unwrap());
    let (best, plain) = (image::codecs::png::CompressionType::Best, image::codecs::png::FilterType::NoFilter);
    page.write_with_encoder(image::codecs::png::PngEncoder::new_with_quality(out, best, plain)).unwrap();
}

/// Mean darkness of the square at this place.
fn square(picture: &GrayImage, [left, top]: [u32; 2]) -> f64 {
    let (right, bottom) = ((left + SIDE).min(picture.width()), (top + SIDE).min(picture.height()));
    let dots = (top..bottom).flat_map(|y| (left..right).map(move |x| (x, y)));
    let sum: f64 = dots.map(|(x, y)| 255.0 - f64::from(picture.get_pixel(x, y).0[0])).sum();
    sum / f64::from((right - left) * (bottom - top))
}

/// The first square that differs, and by how much; the whole page where its size does.
fn difference(golden: &GrayImage, now: &GrayImage) -> Option<String> {
    if golden.dimensions() != now.dimensions() {
        return Some(format!("{:?} dots, now {:?}", golden.dimensions(), now.dimensions()));
    }
    let side = SIDE as usize;
    let places =
        (0..golden.height()).step_by(side).flat_map(|y| (0..golden.width()).step_by(side).map(move |x| [x, y]));
    let differs = |place: [u32; 2]| {
        let by = square(now, place) - square(golden, place);
        (by.abs() > MOST).then(|| format!("at {place:?}: {by:+.0} of 255 darker than the file"))
    };
    places.into_iter().find_map(differs)
}

/// Holds each page of a paper against its picture.
pub fn looks_as_it_did(name: &str, pdf: &[u8]) {
    let is_written = std::env::var("GOLDEN").as_deref() == Ok("write");
    let now = pages(name, pdf);
    for (at, page) in now.iter().enumerate() {
        let file = file(name, at + 1);
        if is_written {
            std::fs::create_dir_all(file.parent().unwrap()).unwrap();
            keep(page, &file);
            continue;
        }
        let golden = image::open(&file).unwrap_or_else(|e| panic!("{}: {e}", file.display())).into_luma8();
        if let Some(difference) = difference(&golden, page) {
            panic!("{name}, page {}, {difference}", at + 1);
        }
    }
    assert!(is_written || !file(name, now.len() + 1).exists(), "{name}: a page less than there was");
}

#[test]
fn a_line_that_moved_is_seen_and_a_smoother_letter_is_not() {
    let mut page = GrayImage::from_pixel(120, 160, image::Luma([255]));
    for x in 12..90 {
        page.put_pixel(x, 40, image::Luma([0]));
    }
    assert_eq!(difference(&page, &page), None);
    let mut smoother = page.clone();
    for x in 12..90 {
        smoother.put_pixel(x, 40, image::Luma([60]));
        smoother.put_pixel(x, 41, image::Luma([205]));
    }
    assert_eq!(difference(&page, &smoother), None);
    let mut moved = GrayImage::from_pixel(120, 160, image::Luma([255]));
    for x in 12..90 {
        moved.put_pixel(x, 46, image::Luma([0]));
    }
    assert!(difference(&page, &moved).is_some());
    assert!(difference(&page, &GrayImage::new(120, 161)).is_some());
}
