//! Files kept by checksum.
//!
//! Promises: a file is taken for what its bytes are, never for its name; a photo is drawn anew, so that nothing hidden
//! in it (a place, a script, a second file) is kept; a file that was cut off is refused; bytes are on the disk, under
//! their SHA-256, before anybody writes a row that names them. Who may see a file is for others to say.

mod drawn;
mod exif;
mod incoming;
mod kind;
mod photo;
mod print;
mod store;
mod whole;

pub use drawn::from_data_url;
pub use exif::Captured;
pub use incoming::{Incoming, Received};
pub use kind::{Kind, Takes};
pub use print::for_paper;
pub use store::{Files, Kept};

use std::fmt::Write as _;

use sha2::{Digest, Sha256};

/// Largest file taken, in bytes.
pub const MOST_BYTES: usize = 25 * 1024 * 1024;
/// Largest log of a drive taken, in bytes; it goes to the disk as it comes.
pub const MOST_LOG_BYTES: u64 = 200 * 1024 * 1024;
/// Largest picture taken, in pixels.
pub const MOST_PIXELS: u64 = 50_000_000;

/// A file as it was sent.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sent {
    /// The name it had; for people only, never a path.
    pub name: String,
    /// Its bytes.
    pub content: Vec<u8>,
    /// When it was taken, as a page says that made the picture smaller before it sent it; empty otherwise.
    pub taken_at: String,
}

/// A file fit to be kept.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Ready {
    /// The name it had.
    pub name: String,
    /// The bytes to keep: those of a photo are not those that were sent.
    pub content: Vec<u8>,
    /// Their SHA-256, hexadecimal.
    pub sha256: String,
    /// What they are.
    pub kind: Kind,
    /// Width and height in pixels, where known.
    pub size: Option<(u32, u32)>,
    /// When the camera says it was taken.
    pub captured: Option<Captured>,
}

/// Why a file is not kept.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unfit {
    /// No bytes.
    Empty,
    /// Over [`MOST_BYTES`].
    TooLarge,
    /// Over [`MOST_PIXELS`].
    TooManyPixels,
    /// It does not reach its end.
    CutOff,
    /// It begins as one thing and goes on as another.
    Broken,
    /// Nothing that is taken here.
    OtherKind,
}

/// Judges a file by its bytes and makes it fit to be kept. Decodes pictures: call it where waiting is allowed.
///
/// # Errors
/// [`Unfit`] says why it is not kept.
pub fn prepare(sent: Sent, takes: Takes) -> Result<Ready, Unfit> {
    let Sent { name, content, taken_at } = sent;
    if content.is_empty() {
        return Err(Unfit::Empty);
    }
    if content.len() > MOST_BYTES {
        return Err(Unfit::TooLarge);
    }
    let kind = takes.kind_of(&content).ok_or(Unfit::OtherKind)?;
    whole::check(kind, &content)?;
    let made = match kind {
        Kind::Jpeg | Kind::Png | Kind::WebP => photo::draw_anew(kind, &content)?,
        Kind::Heic => photo::without_place(content),
        Kind::Pdf | Kind::Opaque | Kind::Log | Kind::Workbook => {
            photo::Drawn { content, kind, size: None, captured: None }
        }
    };
    let sha256 = sha256_of(&made.content);
    let captured = made.captured.or_else(|| exif::told(&taken_at));
    Ok(Ready { name, sha256, content: made.content, kind: made.kind, size: made.size, captured })
}

/// SHA-256 in hexadecimal.
pub fn sha256_of(bytes: &[u8]) -> String {
    hex(&Sha256::digest(bytes))
}

fn hex(bytes: &[u8]) -> String {
    bytes.iter().fold(String::with_capacity(2 * bytes.len()), |mut hex, byte| {
        // Writing into a String cannot fail.
        let _ = write!(hex, "{byte:02x}");
        hex
    })
}
