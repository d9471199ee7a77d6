//! A photo as a PDF carries it: the JPEG untouched, byte for byte (ISO 32000-1, 7.4.8), only its head is read.

use std::collections::BTreeMap;

use printpdf::{DictItem, ExternalStream, ExternalXObject, Op, Pt, XObject, XObjectId, XObjectTransform};

use super::sheet::{PAGE_HEIGHT, round};

/// A JPEG whose size is known.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Jpeg {
    bytes: Vec<u8>,
    width: u16,
    height: u16,
    channels: u8,
}

impl Jpeg {
    /// Takes a JPEG; `None` for anything else, and for one that says no size.
    pub fn read(bytes: Vec<u8>) -> Option<Self> {
        let (width, height, channels) = frame(&bytes)?;
        (width > 0 && height > 0 && matches!(channels, 1 | 3)).then_some(Self { bytes, width, height, channels })
    }

    /// Width over height.
    pub fn proportion(&self) -> f32 {
        f32::from(self.width) / f32::from(self.height)
    }

    /// What draws the photo of this number into a rectangle, `y` counted from the top.
    pub fn placed(at: usize, [x, y, width, height]: [f32; 4]) -> Op {
        Op::UseXobject {
            id: id(at),
            transform: XObjectTransform {
                translate_x: Some(Pt(round(x))),
                translate_y: Some(Pt(round(PAGE_HEIGHT - y - height))),
                scale_x: Some(round(width)),
                scale_y: Some(round(height)),
                no_auto_scale: true,
                ..XObjectTransform::default()
            },
        }
    }

    /// The object of the photo of this number.
    pub fn into_object(self, at: usize) -> (XObjectId, XObject) {
        let name = |text: &str| DictItem::Name(text.as_bytes().to_vec());
        let space = if self.channels == 1 { "DeviceGray" } else { "DeviceRGB" };
        let dict = BTreeMap::from([
            ("Type".to_owned(), name("XObject")),
            ("Subtype".to_owned(), name("Image")),
            ("Width".to_owned(), DictItem::Int(self.width.into())),
            ("Height".to_owned(), DictItem::Int(self.height.into())),
            ("ColorSpace".to_owned(), name(space)),
            ("BitsPerComponent".to_owned(), DictItem::Int(8)),
            ("Filter".to_owned(), name("DCTDecode")),
        ]);
        let stream = ExternalStream { dict, content: self.bytes, compress: false };
        (id(at), XObject::External(ExternalXObject { stream, width: None, height: None, dpi: None }))
    }
}

/// Photos are named by their place in the paper, so that the same paper gives the same bytes.
fn id(at: usize) -> XObjectId {
    XObjectId(format!("PHOTO{at:03}"))
}

/// Width, height and channels from the frame header (ITU-T T.81, B.2.2).
fn frame(bytes: &[u8]) -> Option<(u16, u16, u8)> {
    let two = |at: usize| Some(u16::from_be_bytes([*bytes.get(at)?, *bytes.get(at + 1)?]));
    if two(0)? != 0xffd8 {
        return None;
    }
    let mut at = 2;
    loop {
        if *bytes.get(at)? != 0xff {
            return None;
        }
        match *bytes.get(at + 1)? {
            // Fill bytes and markers without a length.
            0xff => at += 1,
            0x01 | 0xd0..=0xd8 => at += 2,
            0xc0..=0xc3 | 0xc5..=0xc7 | 0xc9..=0xcb | 0xcd..=0xcf if *bytes.get(at + 4)? == 8 => {
                return Some((two(at + 7)?, two(at + 5)?, *bytes.get(at + 9)?));
            }
            // End of image, or pixels before any size.
            0xd9 | 0xda => return None,
            _ => at += 2 + usize::from(two(at + 2)?),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_a_whole_jpeg_head_is_taken() {
        let head = |marker: u8| {
            let mut bytes = vec![0xff, 0xd8, 0xff, 0xe0, 0, 4, 1, 2, 0xff, marker, 0, 17, 8, 1, 44, 1, 144, 3];
            bytes.extend([0; 12]);
            bytes
        };
        for marker in [0xc0, 0xc1, 0xc2] {
            let photo = Jpeg::read(head(marker)).unwrap();
            assert_eq!((photo.width, photo.height, photo.channels), (400, 300, 3));
            assert!((photo.proportion() - 4.0 / 3.0).abs() < 1e-6);
        }
        assert_eq!(Jpeg::read(b"\x89PNG\r\n\x1a\n".to_vec()), None);
        for end in 0..18 {
            assert_eq!(Jpeg::read(head(0xc0)[..end].to_vec()), None, "{end}");
        }
    }
}
