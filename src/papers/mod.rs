//! Data to PDF bytes: one file a paper, over one toolkit.
//!
//! A paper is a function of its content and the words of its language; the same input gives the same bytes. Nothing
//! here asks the time, draws chance, signs or stores. What a paper prints comes from the frozen content and from the
//! words files; a character that no face has is an error, never a box.
#![warn(missing_docs)]

use std::fmt;

mod deflate;
mod facts;
mod finish;
mod fonts;
mod icc;
mod ink;
mod jpeg;
mod letter;
mod outline;
mod photos;
mod phrases;
mod priced;
mod printable;
mod qr;
mod records;
mod results;
mod road_section;
mod sheet;
mod table;
mod tags;

pub mod audit_pack;
pub mod calibration_record;
pub mod certificate;
pub mod deposit_receipt;
pub mod drawing;
pub mod estimate;
pub mod finding_report;
pub mod fitting_record;
pub mod owner_sheet;
pub mod post;
pub mod price_list;
pub mod reasons;
pub mod road;
pub mod road_pictures;
pub mod sizing_sheet;
pub mod test_record;
pub mod vehicle_label;
pub mod wall_sheet;
pub mod work_sheet;

pub use fonts::first_unprintable;
pub use photos::Pictures;
pub use printable::printable;

/// Name, inside an issued PDF, of the signed content.
pub const SIGNED_CONTENT: &str = "signed-content.json";
/// Name, inside an issued PDF, of the keeper's personal data with its salt.
pub const PERSONAL_PART: &str = "keeper.json";

/// Why a paper cannot be made or read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PaperError {
    /// No face of the papers has this character; a spelling to print beside it is needed.
    MissingGlyph(char),
    /// A face that belongs to the program cannot be read.
    Font,
    /// The address is too long for a QR code.
    Code,
    /// The file cannot be written, or is no readable PDF.
    File(String),
}

impl PaperError {
    // By value, as `map_err` hands it over.
    #[expect(clippy::needless_pass_by_value, reason = "the shape map_err asks for")]
    fn file(error: lopdf::Error) -> Self {
        Self::File(error.to_string())
    }
}

impl fmt::Display for PaperError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::MissingGlyph(c) => {
                write!(f, "no typeface of the papers has the character {c:?} (U+{:04X})", u32::from(*c))
            }
            Self::Font => f.write_str("a typeface of the papers cannot be read"),
            Self::Code => f.write_str("the check address is too long for a code"),
            Self::File(why) => write!(f, "PDF: {why}"),
        }
    }
}

impl std::error::Error for PaperError {}

/// The signed content inside an issued PDF, as the JSON file it was put in as; `None` when the PDF carries none.
///
/// Errors: the bytes are no PDF that can be read.
pub fn embedded(pdf: &[u8]) -> Result<Option<Vec<u8>>, PaperError> {
    finish::attachment(pdf, SIGNED_CONTENT)
}

/// The words on the pages of a PDF, in the order they were drawn.
///
/// Errors: the bytes are no PDF that can be read.
pub fn text(pdf: &[u8]) -> Result<String, PaperError> {
    finish::text(pdf)
}

/// The keeper's personal data inside an issued PDF, as JSON with its salt; its digest is `seal::personal_digest`. `None` when it carries none.
///
/// Errors: the bytes are no PDF that can be read.
pub fn embedded_personal(pdf: &[u8]) -> Result<Option<Vec<u8>>, PaperError> {
    finish::attachment(pdf, PERSONAL_PART)
}
