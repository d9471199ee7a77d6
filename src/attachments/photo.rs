//! A photo drawn anew: upright, without anything the camera or a stranger wrote beside the pixels.

use std::io::Cursor;

use image::codecs::jpeg::{JpegDecoder, JpegEncoder};
use image::codecs::png::{PngDecoder, PngEncoder};
use image::codecs::webp::WebPDecoder;
use image::metadata::Orientation;
use image::{DynamicImage, ImageDecoder, ImageEncoder, Limits};

use super::exif::{self, Captured};
use super::{Kind, MOST_PIXELS, Unfit};

/// Memory that one picture may take while it is decoded: 50 megapixels of four channels at 16 bit, and some.
const MOST_MEMORY: u64 = 640 * 1024 * 1024;
/// Quality of a JPEG drawn anew: a plate that could be read before can be read after.
const QUALITY: u8 = 90;

/// A picture, or a file that is kept as it is.
pub(super) struct Drawn {
    pub content: Vec<u8>,
    pub kind: Kind,
    pub size: Option<(u32, u32)>,
    pub captured: Option<Captured>,
}

/// Decodes and encodes. JPEG stays JPEG and PNG stays PNG; WebP becomes JPEG, or PNG where something shines through.
pub(super) fn draw_anew(kind: Kind, content: &[u8]) -> Result<Drawn, Unfit> {
    let from = Cursor::new(content);
    match kind {
        Kind::Jpeg => decode(JpegDecoder::new(from).map_err(unfit)?, kind),
        Kind::Png => decode(PngDecoder::with_limits(from, limits()).map_err(unfit)?, kind),
        _ => decode(WebPDecoder::new(from).map_err(unfit)?, kind),
    }
}

/// A HEIC file as it came, but for the place it was taken at. Nothing here decodes it, so it has no size.
pub(super) fn without_place(mut content: Vec<u8>) -> Drawn {
    let captured = exif::find_tiff(&content, 0).and_then(|at| exif::captured(&content[at..]));
    exif::wipe_places(&mut content);
    Drawn { content, kind: Kind::Heic, size: None, captured }
}

fn limits() -> Limits {
    let mut limits = Limits::no_limits();
    limits.max_alloc = Some(MOST_MEMORY);
    limits
}

fn decode(mut decoder: impl ImageDecoder, kind: Kind) -> Result<Drawn, Unfit> {
    // The head alone tells the size: a bomb is refused before a pixel is unpacked.
    let (width, height) = decoder.dimensions();
    if u64::from(width) * u64::from(height) > MOST_PIXELS {
        return Err(Unfit::TooManyPixels);
    }
    decoder.set_limits(limits()).map_err(unfit)?;
    let camera = decoder.exif_metadata().ok().flatten();
    let orientation = decoder.orientation().unwrap_or(Orientation::NoTransforms);
    let colours = decoder.icc_profile().ok().flatten();
    let mut picture = DynamicImage::from_decoder(decoder).map_err(unfit)?;
    picture.apply_orientation(orientation);
    let size = Some((picture.width(), picture.height()));
    let captured = camera.as_deref().and_then(exif::captured);
    let kind = match kind {
        Kind::WebP if picture.color().has_alpha() => Kind::Png,
        Kind::WebP => Kind::Jpeg,
        kind => kind,
    };
    Ok(Drawn { content: encode(picture, kind, colours)?, kind, size, captured })
}

fn encode(picture: DynamicImage, kind: Kind, colours: Option<Vec<u8>>) -> Result<Vec<u8>, Unfit> {
    let mut out = Vec::new();
    // A profile that the encoder cannot carry is left out: the picture is as good, its colours a little off.
    if kind == Kind::Png {
        let mut encoder = PngEncoder::new(&mut out);
        let _ = colours.map(|colours| encoder.set_icc_profile(colours));
        picture.write_with_encoder(encoder).map_err(unfit)?;
    } else {
        let is_grey = !picture.color().has_color();
        let mut encoder = JpegEncoder::new_with_quality(&mut out, QUALITY);
        let _ = colours.map(|colours| encoder.set_icc_profile(colours));
        let plain = if is_grey { picture.into_luma8().into() } else { DynamicImage::from(picture.into_rgb8()) };
        plain.write_with_encoder(encoder).map_err(unfit)?;
    }
    Ok(out)
}

#[expect(clippy::needless_pass_by_value, reason = "reads better at every `map_err`")]
fn unfit(error: image::ImageError) -> Unfit {
    if matches!(error, image::ImageError::Limits(_)) { Unfit::TooManyPixels } else { Unfit::Broken }
}
