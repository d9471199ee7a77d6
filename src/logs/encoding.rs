//! Which encoding the bytes are in.
//!
//! A byte order mark says it. Without one: noughts in every second byte are UTF-16, bytes that are UTF-8 are UTF-8, and
//! what is left is one of the single-byte Windows code pages, guessed from the lines that hold letters beyond ASCII.

use chardetng::{EncodingDetector, Iso2022JpDetection, Utf8Detection};
use encoding_rs::{Encoding, UTF_8, UTF_16BE, UTF_16LE, WINDOWS_1250, WINDOWS_1252};

/// The encoding of a file that begins with `head`; `is_whole`: nothing follows it.
pub(super) fn guess(head: &[u8], is_whole: bool) -> &'static Encoding {
    if let Some((encoding, _)) = Encoding::for_bom(head) {
        return encoding;
    }
    if let Some(encoding) = sixteen(head) {
        return encoding;
    }
    match std::str::from_utf8(head) {
        Ok(_) => UTF_8,
        // A letter cut at the end of what was looked at.
        Err(error) if error.error_len().is_none() && !is_whole => UTF_8,
        Err(_) => single_byte(head),
    }
}

/// UTF-16 without a mark: text of digits has a nought in every second byte.
fn sixteen(head: &[u8]) -> Option<&'static Encoding> {
    let pairs = head.len() / 2;
    let noughts = |first: usize| head.iter().skip(first).step_by(2).filter(|byte| **byte == 0).count();
    let (even, odd) = (noughts(0), noughts(1));
    // Most letters of a log are ASCII, and ASCII holds no nought.
    let is_most = |count: usize| count * 10 > pairs * 6;
    match (is_most(even), is_most(odd)) {
        (true, false) => Some(UTF_16BE),
        (false, true) => Some(UTF_16LE),
        _ => None,
    }
}

fn single_byte(head: &[u8]) -> &'static Encoding {
    let mut detector = EncodingDetector::new(Iso2022JpDetection::Deny);
    for line in head.split(|byte| *byte == b'\n' || *byte == b'\r').filter(|line| !line.is_ascii()).take(200) {
        detector.feed(line, false);
        detector.feed(b"\n", false);
    }
    detector.feed(b"", true);
    let guessed = detector.guess(None, Utf8Detection::Deny);
    match guessed.name() {
        // The two differ in quotation marks alone where both have the letter.
        "ISO-8859-2" => WINDOWS_1250,
        name if guessed.is_single_byte() && name.starts_with("windows-") => guessed,
        _ => WINDOWS_1252,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use encoding_rs::UTF_16LE;

    #[test]
    fn marks_noughts_and_letters_tell_the_encoding() {
        assert_eq!(guess(b"\xef\xbb\xbftime", true), UTF_8);
        assert_eq!(guess(b"\xff\xfet\0", true), UTF_16LE);
        assert_eq!(guess(b"t\0i\0m\0e\0;\0r\0", true), UTF_16LE);
        assert_eq!(guess(b"\0t\0i\0m\0e\0;\0r", true), UTF_16BE);
        assert_eq!(guess("czas;ciśnienie".as_bytes(), true), UTF_8);
        assert_eq!(guess(b"", true), UTF_8);
    }

    #[test]
    fn polish_and_german_letters_tell_their_code_page() {
        let polish = WINDOWS_1250.encode("Czas;Prędkość obrotowa;Ciśnienie w kolektorze;Czas wtrysku").0.into_owned();
        assert_eq!(guess(&polish, true), WINDOWS_1250);
        let german = WINDOWS_1252.encode("Zeit;Motordrehzahl;Kühlmitteltemperatur [°C]").0.into_owned();
        assert_eq!(guess(&german, true), WINDOWS_1252);
    }

    #[test]
    fn a_letter_cut_at_the_end_of_the_look_is_no_other_encoding() {
        let text = "ciśnienie".as_bytes();
        assert_eq!(guess(&text[..3], false), UTF_8);
        assert_ne!(guess(&text[..3], true), UTF_8);
    }
}
