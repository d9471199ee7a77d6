//! A line parted into its fields.
//!
//! A field that begins with a quotation mark goes on to the closing one; a doubled mark inside stands for one. A mark in
//! the middle of a field is only a mark. Fields come without the blanks around them.

use memchr::{memchr, memchr_iter};

/// Most fields of a line.
pub(super) const MOST_FIELDS: usize = 4096;

/// A line and where its fields are.
#[derive(Debug, Default)]
pub(super) struct Record {
    /// The line, and behind it what quoted fields became where a mark was doubled.
    pub(super) text: String,
    /// Length of the line itself.
    length: usize,
    spans: Vec<(usize, usize)>,
    /// Which line of the file.
    pub(super) number: u64,
}

/// A quotation mark opens and none closes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct OpenQuote;

impl Record {
    /// A line that is not parted yet.
    pub(super) fn of(text: String, number: u64) -> Self {
        Self { text, number, ..Self::default() }
    }

    /// Nothing in it.
    pub(super) fn clear(&mut self) {
        self.text.clear();
        self.spans.clear();
        self.length = 0;
    }

    /// Fields there are.
    pub(super) fn len(&self) -> usize {
        self.spans.len()
    }

    /// The line as it was.
    pub(super) fn line(&self) -> &str {
        self.text.get(..self.length).unwrap_or(&self.text)
    }

    /// A field without the blanks around it; empty where there is none.
    pub(super) fn cell(&self, at: usize) -> &str {
        self.spans.get(at).map_or("", |&(from, to)| trimmed(&self.text[from..to]))
    }

    /// All fields.
    pub(super) fn cells(&self) -> impl Iterator<Item = &str> {
        (0..self.len()).map(|at| self.cell(at))
    }

    /// Adds a field (of a workbook).
    pub(super) fn push(&mut self, cell: &str) {
        let from = self.text.len();
        self.text.push_str(cell);
        self.spans.push((from, self.text.len()));
        self.text.push('\t');
        self.length = self.text.len() - 1;
    }

    /// Parts the text that was put in.
    pub(super) fn split(&mut self, delimiter: char) -> Result<(), OpenQuote> {
        self.spans.clear();
        self.length = self.text.len();
        let bytes = self.text.as_bytes();
        if delimiter == ' ' {
            self.split_at_blanks();
            return Ok(());
        }
        let mark = u8::try_from(delimiter).unwrap_or(b',');
        if memchr(b'"', bytes).is_some() {
            return self.split_quoted(mark);
        }
        let mut from = 0;
        for at in memchr_iter(mark, bytes) {
            self.spans.push((from, at));
            from = at + 1;
        }
        self.spans.push((from, bytes.len()));
        Ok(())
    }

    fn split_at_blanks(&mut self) {
        let mut from = None;
        for (at, c) in self.text.char_indices() {
            match (c.is_whitespace(), from) {
                (true, Some(begin)) => {
                    self.spans.push((begin, at));
                    from = None;
                }
                (false, None) => from = Some(at),
                _ => {}
            }
        }
        if let Some(begin) = from {
            self.spans.push((begin, self.length));
        }
    }

    fn split_quoted(&mut self, mark: u8) -> Result<(), OpenQuote> {
        let mut from = 0;
        loop {
            let end = self.field(from, mark)?;
            if end >= self.length || self.len() > MOST_FIELDS {
                return Ok(());
            }
            from = end + 1;
        }
    }

    /// Reads one field from `from` on; where it ends.
    fn field(&mut self, from: usize, mark: u8) -> Result<usize, OpenQuote> {
        let line = &self.text.as_bytes()[..self.length];
        let plain_end = memchr(mark, &line[from..]).map_or(line.len(), |at| from + at);
        let begin = from + line[from..].iter().take_while(|byte| **byte == b' ').count();
        if line.get(begin) != Some(&b'"') {
            self.spans.push((from, plain_end));
            return Ok(plain_end);
        }
        let (close, is_doubled) = closing(line, begin + 1).ok_or(OpenQuote)?;
        let behind = close + 1 + line[close + 1..].iter().take_while(|byte| **byte == b' ').count();
        if line.get(behind).is_some_and(|byte| *byte != mark) {
            // Text behind the closing mark: the marks are part of a plain field.
            self.spans.push((from, plain_end));
            return Ok(plain_end);
        }
        if is_doubled {
            let whole = self.text[begin + 1..close].replace("\"\"", "\"");
            let start = self.text.len();
            self.text.push_str(&whole);
            self.spans.push((start, self.text.len()));
        } else {
            self.spans.push((begin + 1, close));
        }
        Ok(behind.min(self.length))
    }
}

/// Where the closing mark of a field is whose content begins at `from`, and whether a mark inside is doubled.
fn closing(line: &[u8], from: usize) -> Option<(usize, bool)> {
    let mut at = from;
    let mut is_doubled = false;
    loop {
        at += memchr(b'"', line.get(at..)?)?;
        if line.get(at + 1) != Some(&b'"') {
            return Some((at, is_doubled));
        }
        is_doubled = true;
        at += 2;
    }
}

/// A field without blanks around it. Most have none, and those are told by two bytes.
fn trimmed(cell: &str) -> &str {
    let is_plain = |byte: Option<&u8>| byte.is_some_and(u8::is_ascii_graphic);
    if is_plain(cell.as_bytes().first()) && is_plain(cell.as_bytes().last()) { cell } else { cell.trim() }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn parted(line: &str, delimiter: char) -> Vec<String> {
        let mut record = Record::of(line.to_owned(), 1);
        record.split(delimiter).unwrap();
        record.cells().map(str::to_owned).collect()
    }

    #[test]
    fn a_quoted_field_keeps_its_delimiters_and_a_doubled_mark_is_one() {
        assert_eq!(parted(r#""a,b",c,"d ""e"" f", "g" ,"#, ','), ["a,b", "c", r#"d "e" f"#, "g", ""]);
    }

    #[test]
    fn a_mark_in_the_middle_is_only_a_mark() {
        assert_eq!(parted(r#"5" hose;"a"b;c"#, ';'), [r#"5" hose"#, r#""a"b"#, "c"]);
    }

    #[test]
    fn blanks_in_a_row_part_once() {
        assert_eq!(parted("  0.1   850\t3.2 ", ' '), ["0.1", "850", "3.2"]);
    }

    #[test]
    fn a_mark_that_never_closes_is_told() {
        let mut record = Record::of(r#"1,"2,3"#.to_owned(), 1);
        assert_eq!(record.split(','), Err(OpenQuote));
    }
}
