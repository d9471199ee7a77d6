//! What a file is, read from its first bytes.

/// A kind of file that is kept.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    Jpeg,
    Png,
    WebP,
    /// Kept as it is; few browsers show it.
    Heic,
    Pdf,
    /// Whatever a device writes: kept byte for byte, never looked into, never shown.
    Opaque,
    /// A log of a drive as delimited text: read, never shown.
    Log,
    /// The same as a workbook.
    Workbook,
}

/// What a field takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Takes {
    /// Pictures alone.
    Photos,
    /// Papers: PDF, or pictures of them.
    Papers,
    /// PDF alone.
    Pdf,
    /// The file of a device, of any kind.
    Opaque,
}

impl Takes {
    /// Whether the field takes this kind.
    pub fn takes(self, kind: Kind) -> bool {
        match self {
            Self::Photos => matches!(kind, Kind::Jpeg | Kind::Png | Kind::WebP | Kind::Heic),
            Self::Papers => matches!(kind, Kind::Jpeg | Kind::Png | Kind::WebP | Kind::Heic | Kind::Pdf),
            Self::Opaque => kind == Kind::Opaque,
            Self::Pdf => kind == Kind::Pdf,
        }
    }

    /// The kinds by their own names, for a sentence.
    pub const fn names(self) -> &'static str {
        match self {
            Self::Photos => "JPEG, PNG, WebP, HEIC",
            Self::Papers => "PDF, JPEG, PNG, WebP, HEIC",
            Self::Pdf => "PDF",
            Self::Opaque => "*",
        }
    }

    /// The same for a file field's `accept`.
    pub const fn accept(self) -> &'static str {
        match self {
            Self::Photos => "image/jpeg,image/png,image/webp,image/heic,image/heif",
            Self::Papers => "application/pdf,image/jpeg,image/png,image/webp,image/heic,image/heif",
            Self::Pdf => "application/pdf",
            Self::Opaque => "",
        }
    }

    /// What the bytes are for a field that takes this: a device's file is not looked into, even if it looks like a picture.
    pub fn kind_of(self, content: &[u8]) -> Option<Kind> {
        if self == Self::Opaque { Some(Kind::Opaque) } else { Kind::of(content).filter(|kind| self.takes(*kind)) }
    }
}

/// Brands of the ISO base media format that HEVC pictures carry (ISO/IEC 23008-12, annex B; "mif1" and "msf1" are the
/// format's own).
const HEIC_BRANDS: [&[u8; 4]; 7] = [b"heic", b"heix", b"heim", b"heis", b"hevc", b"mif1", b"msf1"];

impl Kind {
    /// The kind of these bytes, if it is one that is kept.
    pub fn of(content: &[u8]) -> Option<Self> {
        if content.starts_with(&[0xff, 0xd8, 0xff]) {
            Some(Self::Jpeg)
        } else if content.starts_with(b"\x89PNG\r\n\x1a\n") {
            Some(Self::Png)
        } else if content.starts_with(b"RIFF") && content.get(8..12) == Some(b"WEBP") {
            Some(Self::WebP)
        } else if content.get(4..8) == Some(b"ftyp") && is_heic(content) {
            Some(Self::Heic)
        } else if content.starts_with(b"%PDF-") {
            Some(Self::Pdf)
        } else {
            None
        }
    }

    /// The kind of a log of a drive, by its first bytes: a workbook is a ZIP archive, anything else is read as text.
    pub fn of_log(head: &[u8]) -> Self {
        if head.starts_with(b"PK\x03\x04") { Self::Workbook } else { Self::Log }
    }

    /// The kind with this media type.
    pub fn from_media_type(media_type: &str) -> Option<Self> {
        [Self::Jpeg, Self::Png, Self::WebP, Self::Heic, Self::Pdf, Self::Opaque, Self::Log, Self::Workbook]
            .into_iter()
            .find(|one| one.media_type() == media_type)
    }

    /// Its media type.
    pub const fn media_type(self) -> &'static str {
        match self {
            Self::Jpeg => "image/jpeg",
            Self::Png => "image/png",
            Self::WebP => "image/webp",
            Self::Heic => "image/heic",
            Self::Pdf => "application/pdf",
            Self::Opaque => "application/octet-stream",
            Self::Log => "text/csv",
            Self::Workbook => "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
        }
    }

    /// The end of a name for it, without the dot; empty where the name keeps its own.
    pub const fn extension(self) -> &'static str {
        match self {
            Self::Jpeg => "jpg",
            Self::Png => "png",
            Self::WebP => "webp",
            Self::Heic => "heic",
            Self::Pdf => "pdf",
            Self::Opaque => "",
            Self::Log => "csv",
            Self::Workbook => "xlsx",
        }
    }

    /// Every browser shows it inside a page.
    pub const fn is_shown_by_browsers(self) -> bool {
        matches!(self, Self::Jpeg | Self::Png | Self::WebP)
    }
}

fn is_heic(content: &[u8]) -> bool {
    let length = content.first_chunk::<4>().map_or(0, |length| u32::from_be_bytes(*length) as usize);
    // Major brand, then a version, then the compatible brands, to the end of the box.
    let brands = content.get(8..length.min(content.len()).min(8 + 4 * 64)).unwrap_or_default();
    let is_avif = brands.starts_with(b"avif") || brands.starts_with(b"avis");
    !is_avif && brands.chunks_exact(4).any(|brand| HEIC_BRANDS.iter().any(|known| brand == known.as_slice()))
}
