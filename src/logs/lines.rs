//! Bytes of any encoding in, lines of text out, with the memory of one line.
//!
//! A line ends at LF, CR LF or a lone CR. A line beyond [`LONGEST_LINE`] is never kept: it is passed over and said to be
//! too long. What an encoding does not know becomes U+FFFD, which no number holds.

use std::io::{ErrorKind, Read};

use encoding_rs::{Decoder, Encoding, UTF_8};
use memchr::memchr2;

use super::LogError;

/// Most bytes of a line, decoded. Four thousand columns of a long number each fit.
pub(super) const LONGEST_LINE: usize = 64 * 1024;

const CHUNK: usize = 64 * 1024;

/// What was found where a line should be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Got {
    /// A line.
    Line,
    /// A line too long to keep.
    TooLong,
    /// Nothing: the end.
    End,
}

/// Lines of a file, one after another.
pub(super) struct Lines<R> {
    file: R,
    decoder: Decoder,
    raw: Vec<u8>,
    text: String,
    /// Where the next line begins in `text`.
    from: usize,
    /// The last line ended with CR: an LF next belongs to it.
    is_after_cr: bool,
    is_done: bool,
}

impl<R: Read> Lines<R> {
    /// Lines of `file`; an unknown encoding is read as UTF-8.
    pub(super) fn new(file: R, encoding: &str) -> Self {
        let encoding = Encoding::for_label(encoding.as_bytes()).unwrap_or(UTF_8);
        Self {
            file,
            decoder: encoding.new_decoder_with_bom_removal(),
            raw: vec![0; CHUNK],
            text: String::new(),
            from: 0,
            is_after_cr: false,
            is_done: false,
        }
    }

    /// The next line, appended to `line` without its end.
    pub(super) fn next(&mut self, line: &mut String) -> Result<Got, LogError> {
        if !self.pass_line_feed()? {
            return Ok(Got::End);
        }
        let mut searched = self.from;
        let mut is_long = false;
        loop {
            if let Some(at) = memchr2(b'\n', b'\r', &self.text.as_bytes()[searched..]) {
                let end = searched + at;
                is_long |= end - self.from > LONGEST_LINE;
                if !is_long {
                    line.push_str(&self.text[self.from..end]);
                }
                self.is_after_cr = self.text.as_bytes()[end] == b'\r';
                self.from = end + 1;
                return Ok(if is_long { Got::TooLong } else { Got::Line });
            }
            if self.text.len() - self.from > LONGEST_LINE {
                is_long = true;
                self.from = self.text.len();
            }
            let kept = self.text.len() - self.from;
            if !self.fill()? {
                return Ok(self.last(line, is_long));
            }
            searched = kept;
        }
    }

    /// What stands after the last line's end.
    fn last(&mut self, line: &mut String, is_long: bool) -> Got {
        let rest = &self.text[self.from..];
        if is_long {
            return Got::TooLong;
        }
        if rest.is_empty() {
            return Got::End;
        }
        line.push_str(rest);
        self.from = self.text.len();
        Got::Line
    }

    /// Passes the LF of a CR LF; false at the end of the file.
    fn pass_line_feed(&mut self) -> Result<bool, LogError> {
        while self.from == self.text.len() {
            if !self.fill()? {
                return Ok(false);
            }
        }
        if std::mem::take(&mut self.is_after_cr) && self.text.as_bytes()[self.from] == b'\n' {
            self.from += 1;
        }
        Ok(true)
    }

    /// Decodes some more behind what is not read yet; false at the end of the file.
    fn fill(&mut self) -> Result<bool, LogError> {
        if self.is_done {
            return Ok(false);
        }
        self.text.drain(..self.from);
        self.from = 0;
        let count = loop {
            match self.file.read(&mut self.raw) {
                Ok(count) => break count,
                Err(error) if error.kind() == ErrorKind::Interrupted => {}
                Err(error) => return Err(error.into()),
            }
        };
        self.is_done = count == 0;
        // Three times the chunk at most, whatever the bytes are.
        self.text.reserve(self.decoder.max_utf8_buffer_length(count).unwrap_or(4 * CHUNK));
        let _ = self.decoder.decode_to_string(&self.raw[..count], &mut self.text, self.is_done);
        Ok(!self.is_done || self.from < self.text.len())
    }
}
