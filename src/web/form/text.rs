//! Texts of a form: one line, several lines, a mail address.

use unicode_normalization::UnicodeNormalization;

use super::{Form, Wrong};

impl Form {
    /// One line of text, at most `most` characters.
    pub fn text(&mut self, name: &str, most: usize) -> Option<String> {
        self.required(name)?;
        self.opt_text(name, most)
    }

    /// The same, or nothing.
    pub fn opt_text(&mut self, name: &str, most: usize) -> Option<String> {
        let text = self.filled(name)?.replace('\t', " ");
        if text.contains(['\n', '\r']) {
            return self.note(name, Err(Wrong::LineBreak));
        }
        self.note(name, tidy(&text, most))
    }

    /// Text of several lines.
    pub fn long_text(&mut self, name: &str, most: usize) -> Option<String> {
        self.required(name)?;
        self.opt_long_text(name, most)
    }

    /// The same, or nothing.
    pub fn opt_long_text(&mut self, name: &str, most: usize) -> Option<String> {
        let text = self.filled(name)?.replace("\r\n", "\n").replace('\r', "\n");
        self.note(name, tidy(&text, most))
    }

    /// A secret: taken exactly as typed, spaces and all; nothing is cut off.
    pub fn secret(&mut self, name: &str, least: usize, most: usize) -> Option<String> {
        let text = self.value(name).to_owned();
        let got = text.chars().count();
        let read = match got {
            0 => Err(Wrong::Empty),
            _ if got < least => Err(Wrong::TooShort { least }),
            _ if got > most => Err(Wrong::TooLong { most, got }),
            _ => Ok(text),
        };
        self.note(name, read)
    }

    /// A mail address, or nothing; only what can never be one is refused.
    pub fn opt_mail(&mut self, name: &str) -> Option<String> {
        // 254: the longest path that SMTP carries (RFC 5321, 4.5.3.1.3, less the brackets).
        let text = self.opt_text(name, 254)?;
        let fits = text.split_once('@').is_some_and(|(local, domain)| {
            !local.is_empty()
                && local.len() <= 64
                && !domain.contains('@')
                && domain.contains('.')
                && domain.split('.').all(|label| !label.is_empty() && !label.starts_with('-') && !label.ends_with('-'))
                && text
                    .chars()
                    .all(|c| !c.is_whitespace() && !matches!(c, '<' | '>' | '(' | ')' | ',' | ';' | '"' | '\\'))
        });
        self.note(name, if fits { Ok(text) } else { Err(Wrong::NotAMailAddress { typed: text }) })
    }

    /// A mail address.
    pub fn mail(&mut self, name: &str) -> Option<String> {
        self.required(name)?;
        self.opt_mail(name)
    }
}

/// Composes accents (NFC), so that the same name is the same text, and refuses what cannot be printed.
fn tidy(text: &str, most: usize) -> Result<String, Wrong> {
    let text: String = text.nfc().collect();
    // Reading the request put this mark where bytes were no UTF-8; nobody types it.
    if text.contains(char::REPLACEMENT_CHARACTER) {
        return Err(Wrong::Damaged);
    }
    if text.chars().any(unprintable) {
        return Err(Wrong::ControlCharacters);
    }
    let got = text.chars().count();
    if got > most { Err(Wrong::TooLong { most, got }) } else { Ok(text) }
}

/// Control characters, and the marks that turn the order of a line round and so can make a paper lie
/// (Unicode Technical Report 36, 3.1.2). The joiners stay: several scripts need them.
fn unprintable(c: char) -> bool {
    (c.is_control() && c != '\n')
        || matches!(c, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' | '\u{feff}' | '\u{fff9}'..='\u{fffb}')
}
