//! Whether a PDF is the paper of the signed content inside it.
//!
//! The signature covers the content, not the pages: genuine content can be put into a file whose pages say something else.
//! One content gives one file, byte for byte, so the file is drawn again and compared. A file that an earlier version of the
//! program drew is known by its check sum, which the shop keeps and its list of standings carries.

use crate::model::branch::PaperSize;
use crate::model::paper::PersonalPart;
use crate::model::paper::certificate::CertificateContent;
use crate::papers::certificate::{Certificate, certificate_on as draw};
use crate::papers::{self, PaperError};
use crate::seal;
use crate::words::Words;

/// What the pages of a file are worth.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Pages {
    /// The file is, byte for byte, the one that the shop issued.
    AsIssued,
    /// The file is, byte for byte, what the signed content gives when it is drawn.
    AsDrawn,
    /// Neither.
    Other(Difference),
}

/// Where the pages of a file leave those that the content gives; both empty when the words agree and something else does not.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Difference {
    /// What the file says there.
    pub file: String,
    /// What the content gives there.
    pub content: String,
}

/// The keeper's part beside a signed content.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum KeeperPart {
    /// There is none: a copy without it, or one whose name was erased.
    Absent,
    /// It is the one that was certified.
    Certified,
    /// It is another: its digest is not the one in the signed content.
    Another,
}

/// Words shown of a difference.
const SHOWN: usize = 8;

/// Compares a file with what its content gives; `issued` is the check sum of the issued file, where somebody knows it.
///
/// # Errors
/// The bytes are no PDF that can be read, or the content cannot be drawn.
pub fn pages(pdf: &[u8], content: &CertificateContent, issued: Option<&str>) -> Result<Pages, PaperError> {
    if issued.is_some_and(|sha256| sha256 == seal::sha256_hex(pdf)) {
        return Ok(Pages::AsIssued);
    }
    let sealed = papers::embedded(pdf)?;
    let personal = papers::embedded_personal(pdf)?;
    let personal: Option<PersonalPart> = personal.and_then(|json| serde_json::from_slice(&json).ok());
    let paper = Certificate { content, personal: personal.as_ref(), sealed: sealed.as_deref() };
    let words = Words::for_customer([&*content.language]);
    // The content does not say on which paper the shop prints.
    let drawn = draw(&paper, &words, PaperSize::A4)?;
    if drawn == pdf || draw(&paper, &words, PaperSize::Letter)? == pdf {
        return Ok(Pages::AsDrawn);
    }
    Ok(Pages::Other(first_difference(&papers::text(pdf)?, &papers::text(&drawn)?)))
}

fn first_difference(file: &str, content: &str) -> Difference {
    let (file, content): (Vec<&str>, Vec<&str>) =
        (file.split_whitespace().collect(), content.split_whitespace().collect());
    let alike = file.iter().zip(&content).take_while(|(one, other)| one == other).count();
    let from = |words: &[&str]| words.iter().skip(alike).take(SHOWN).copied().collect::<Vec<_>>().join(" ");
    Difference { file: from(&file), content: from(&content) }
}

/// Whether the keeper's part, as JSON, is the one that the content names by its digest.
pub fn keeper_part(json: Option<&[u8]>, content: &CertificateContent) -> KeeperPart {
    let Some(json) = json else { return KeeperPart::Absent };
    let value: Option<serde_json::Value> = serde_json::from_slice(json).ok();
    let digest = value.and_then(|value| seal::personal_digest(&value).ok());
    if digest.is_some_and(|digest| digest == content.personal_digest) {
        KeeperPart::Certified
    } else {
        KeeperPart::Another
    }
}
