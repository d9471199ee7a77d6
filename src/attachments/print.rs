//! A kept picture as papers take it.

use std::io::Cursor;

use image::codecs::jpeg::JpegEncoder;
use image::{ImageFormat, ImageReader, Limits, Rgb, RgbImage};

use super::Kind;

/// Memory that one picture may take while it is decoded.
const MOST_MEMORY: u64 = 640 * 1024 * 1024;
/// Quality of a picture that becomes JPEG only to be printed.
const QUALITY: u8 = 90;

/// The JPEG to print: a kept JPEG as it is, any other picture drawn on white. `None` for a file that nothing here decodes.
pub fn for_paper(content: Vec<u8>) -> Option<Vec<u8>> {
    let format = match Kind::of(&content)? {
        Kind::Jpeg => return Some(content),
        Kind::Png => ImageFormat::Png,
        Kind::WebP => ImageFormat::WebP,
        Kind::Heic | Kind::Pdf | Kind::Opaque | Kind::Log | Kind::Workbook => return None,
    };
    let mut reader = ImageReader::with_format(Cursor::new(content), format);
    let mut limits = Limits::no_limits();
    limits.max_alloc = Some(MOST_MEMORY);
    reader.limits(limits);
    let picture = reader.decode().ok()?.into_rgba8();
    let (width, height) = picture.dimensions();
    let on_white = RgbImage::from_fn(width, height, |x, y| {
        let [red, green, blue, opaque] = picture.get_pixel(x, y).0;
        let mixed = |part: u8| {
            let (part, opaque) = (u16::from(part), u16::from(opaque));
            u8::try_from((part * opaque + 255 * (255 - opaque)) / 255).unwrap_or(u8::MAX)
        };
        Rgb([mixed(red), mixed(green), mixed(blue)])
    });
    let mut out = Vec::new();
    on_white.write_with_encoder(JpegEncoder::new_with_quality(&mut out, QUALITY)).ok()?;
    Some(out)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_drawing_on_nothing_is_printed_on_white() {
        let clear = image::RgbaImage::from_pixel(8, 8, image::Rgba([0, 0, 0, 0]));
        let mut png = Vec::new();
        clear.write_to(&mut Cursor::new(&mut png), ImageFormat::Png).unwrap();
        let printed = image::load_from_memory(&for_paper(png).unwrap()).unwrap().into_rgb8();
        assert!(printed.pixels().all(|pixel| pixel.0.iter().all(|part| *part > 250)));
        assert_eq!(for_paper(b"%PDF-1.7".to_vec()), None);
        assert_eq!(for_paper(b"\x89PNG\r\n\x1a\n and no more".to_vec()), None);
    }
}
