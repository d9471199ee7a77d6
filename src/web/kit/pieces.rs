//! Marks, verdicts, tables and the life line: what shows facts rather than asks for them.

use std::fmt::{self, Display, Write};

use askama::Template;

use super::already_escaped;
use crate::words::Words;

/// The state of a thing; always shown as mark, word and colour together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Mark {
    Met,
    Missing,
    Undecided,
    Stops,
    Waived,
    NotApplicable,
    EnteredLater,
    OnTablet,
}

impl Mark {
    /// Its name in style sheets, symbols and, behind `state-`, in the words.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Met => "met",
            Self::Missing => "missing",
            Self::Undecided => "undecided",
            Self::Stops => "stops",
            Self::Waived => "waived",
            Self::NotApplicable => "not-applicable",
            Self::EnteredLater => "entered-later",
            Self::OnTablet => "on-tablet",
        }
    }
}

/// A mark, with its word for those who do not see it.
#[derive(Debug, Clone, Template)]
#[template(path = "kit/mark.html")]
pub struct MarkView {
    mark: Mark,
    word: String,
    is_word_visible: bool,
}

/// A mark beside a text that does not say its word.
pub fn mark(w: &Words, mark: &Mark) -> MarkView {
    MarkView { mark: *mark, word: w.t(format!("state-{}", mark.name())), is_word_visible: false }
}

/// A mark with its word in sight.
pub fn said(w: &Words, state: &Mark) -> MarkView {
    MarkView { is_word_visible: true, ..mark(w, state) }
}

/// The tone of a verdict.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tone {
    Met,
    Copper,
    Stop,
}

impl Tone {
    /// Its class.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Met => "met",
            Self::Copper => "copper",
            Self::Stop => "stop",
        }
    }
}

/// Two or three words, then the numbers and what would change them.
#[derive(Debug, Clone, Template)]
#[template(path = "kit/verdict.html")]
pub struct Verdict {
    pub tone: Tone,
    pub mark: Mark,
    pub title: String,
    /// `**…**` makes a word heavy.
    pub sentences: Vec<String>,
}

/// Something to do: a link that looks like a button.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Act {
    pub label: String,
    pub href: String,
}

/// Nothing here yet: one sentence and the act that fills it.
#[derive(Debug, Clone, Template)]
#[template(path = "kit/empty.html")]
pub struct Empty {
    pub sentence: String,
    pub act: Option<Act>,
}

/// A column of a table; numbers stand right.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Column {
    pub label: String,
    pub is_number: bool,
}

impl Column {
    /// A column of texts.
    pub fn text(label: impl Into<String>) -> Self {
        Self { label: label.into(), is_number: false }
    }

    /// A column of numbers; its unit stands in the label.
    pub fn number(label: impl Into<String>) -> Self {
        Self { label: label.into(), is_number: true }
    }
}

/// One cell: a text, perhaps a link, perhaps with a mark and a second line.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Cell {
    pub text: String,
    pub href: Option<String>,
    pub mark: Option<Mark>,
    /// What the mark says to who cannot see it; the word of its state where nothing is given.
    pub mark_says: Option<String>,
    pub second: String,
}

impl Cell {
    /// A plain cell.
    pub fn new(text: impl Into<String>) -> Self {
        Self { text: text.into(), ..Self::default() }
    }

    /// A cell that leads somewhere.
    pub fn link(text: impl Into<String>, href: impl Into<String>) -> Self {
        Self { text: text.into(), href: Some(href.into()), ..Self::default() }
    }

    /// The same with a mark before it.
    #[must_use]
    pub fn marked(mut self, mark: Mark) -> Self {
        self.mark = Some(mark);
        self
    }

    /// The same with a mark before it that says this.
    #[must_use]
    pub fn marked_as(mut self, mark: Mark, says: impl Into<String>) -> Self {
        self.mark_says = Some(says.into());
        self.marked(mark)
    }

    /// The same with a second, softer line.
    #[must_use]
    pub fn with_second(mut self, second: impl Into<String>) -> Self {
        self.second = second.into();
        self
    }

    /// The mark; where the text is in words, those say it, and the mark only points at them.
    fn mark_view(&self, w: &Words, state: &Mark) -> MarkView {
        let shown = mark(w, state);
        let word = match &self.mark_says {
            Some(says) => says.clone(),
            None if self.text.contains(char::is_alphabetic) => String::new(),
            None => return shown,
        };
        MarkView { word, ..shown }
    }
}

/// One line of a table; its first cell is its heading.
pub type Row = Vec<Cell>;

/// A table; on a phone each line becomes a small leaf headed by its first cell.
#[derive(Debug, Clone, Template)]
#[template(path = "kit/table.html")]
pub struct Table {
    pub w: Words,
    pub caption: String,
    pub columns: Vec<Column>,
    pub rows: Vec<Row>,
}

impl Table {
    fn column(&self, at: usize) -> (&str, bool) {
        self.columns.get(at).map_or(("", false), |column| (column.label.as_str(), column.is_number))
    }
}

/// Earlier and later pages of a list.
#[derive(Debug, Clone, Template)]
#[template(path = "kit/pages.html")]
pub struct Pages {
    pub w: Words,
    pub previous: Option<String>,
    pub next: Option<String>,
}

/// What happened to a vehicle, year by year, and what is to come.
#[derive(Debug, Clone, Template)]
#[template(path = "kit/life_line.html")]
pub struct LifeLine {
    pub w: Words,
    pub years: Vec<LifeYear>,
    /// Below today's line, dotted.
    pub ahead: Vec<LifeEntry>,
}

#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LifeYear {
    pub year: i32,
    pub entries: Vec<LifeEntry>,
}

/// One job, paper, reading or duty.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LifeEntry {
    pub day: String,
    pub mark: Mark,
    pub title: String,
    pub href: Option<String>,
    pub note: String,
}

/// A text in which `**…**` is heavy; everything else is escaped.
#[derive(Debug, Clone)]
pub struct Rich(String);

/// A sentence from the words with heavy parts.
pub fn rich(text: &str) -> Rich {
    Rich(text.to_owned())
}

impl Display for Rich {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (at, part) in self.0.split("**").enumerate() {
            let is_heavy = at % 2 == 1;
            if is_heavy {
                f.write_str("<strong>")?;
            }
            for c in part.chars() {
                match c {
                    '&' => f.write_str("&amp;")?,
                    '<' => f.write_str("&lt;")?,
                    '>' => f.write_str("&gt;")?,
                    '"' => f.write_str("&quot;")?,
                    '\'' => f.write_str("&#39;")?,
                    c => f.write_char(c)?,
                }
            }
            if is_heavy {
                f.write_str("</strong>")?;
            }
        }
        Ok(())
    }
}

impl askama::FastWritable for Rich {
    fn write_into(&self, dest: &mut dyn Write, _: &dyn askama::Values) -> askama::Result<()> {
        write!(dest, "{self}")?;
        Ok(())
    }
}

already_escaped!(MarkView, Verdict, Empty, Table, Pages, LifeLine, Rich);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_heavy_part_is_marked_and_the_rest_escaped() {
        assert_eq!(rich("a **<b>** & c").to_string(), "a <strong>&lt;b&gt;</strong> &amp; c");
        assert_eq!(rich("odd ** one").to_string(), "odd <strong> one</strong>");
    }
}
