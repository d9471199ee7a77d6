//! A signature drawn on the screen, as a script hands it over: a PNG inside a text.

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;

/// What stands before the bytes (RFC 2397).
const HEAD: &str = "data:image/png;base64,";
/// Longest text taken; a drawn name is some tens of kilobytes.
const MOST_TEXT: usize = 1024 * 1024;

/// The bytes of a `data:` address that holds a PNG; nothing when it is anything else.
pub fn from_data_url(text: &str) -> Option<Vec<u8>> {
    let text = text.trim();
    if text.len() > MOST_TEXT {
        return None;
    }
    STANDARD.decode(text.strip_prefix(HEAD)?).ok().filter(|bytes| !bytes.is_empty())
}
