//! The reminder: one text for everything that falls due for one person within a month, as a mail and as a letter.

use askama::Template;
use time::{Date, OffsetDateTime};

use super::calendar::{self, Entry};
use crate::model::Coded;
use crate::model::branch::Branch;
use crate::model::duty::DutyKind;
use crate::model::ids::DutyId;
use crate::model::message::{LINK_MARK, STOP_MARK};
use crate::words::Words;

/// One thing that falls due.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Item {
    pub duty: DutyId,
    pub kind: DutyKind,
    /// Plate, or what else tells the vehicle from the person's others.
    pub plate: String,
    /// Maker and model.
    pub vehicle: String,
    pub due_on: Date,
    /// Or at this odometer reading, km.
    pub due_km: Option<i64>,
}

/// What a reminder is made from.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Reminder<'a> {
    /// Name of the person, as they write it.
    pub name: &'a str,
    /// The tag of their language.
    pub language: &'a str,
    /// The first due first.
    pub items: &'a [Item],
    pub branch: &'a Branch,
    pub today: Date,
    pub now: OffsetDateTime,
    /// Whether the outside reaches us, so that links lead somewhere.
    pub has_links: bool,
    /// A demonstration: every text says so.
    pub is_demo: bool,
}

/// The finished texts.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Texts {
    pub subject: String,
    pub text: String,
    pub html: String,
    pub calendar: String,
}

#[derive(Template)]
#[template(path = "mail/reminder/subject.txt")]
struct Subject<'a> {
    w: Words,
    lines: &'a [Line],
    shop: &'a str,
    is_demo: bool,
}

#[derive(Template)]
#[template(path = "mail/reminder/body.txt")]
struct Plain<'a> {
    w: Words,
    name: &'a str,
    lines: &'a [Line],
    branch: &'a Branch,
    link: Option<&'static str>,
    stop: Option<&'static str>,
    is_demo: bool,
}

#[derive(Template)]
#[template(path = "mail/reminder/body.html")]
struct Page<'a> {
    w: Words,
    name: &'a str,
    lines: &'a [Line],
    branch: &'a Branch,
    link: Option<&'static str>,
    stop: Option<&'static str>,
    is_demo: bool,
    style: String,
}

/// An item in ready words.
struct Line {
    what: String,
    plate: String,
    vehicle: String,
    by: String,
    is_over: bool,
}

/// Mail programs load no sheet from elsewhere, so it goes inside.
const SHEET: &str = include_str!("../../static/css/mail.css");

fn words(reminder: &Reminder<'_>) -> Words {
    Words::for_customer([reminder.language, &reminder.branch.language])
}

/// Puts a reminder into words.
///
/// # Errors
/// What the template engine says; never seen with templates that pass their test.
pub fn texts(reminder: &Reminder<'_>) -> Result<Texts, askama::Error> {
    let w = words(reminder);
    let lines: Vec<Line> = reminder.items.iter().map(|item| line(&w, item, reminder.today)).collect();
    let &Reminder { name, branch, is_demo, .. } = reminder;
    let link = reminder.has_links.then_some(LINK_MARK);
    let stop = reminder.has_links.then_some(STOP_MARK);
    let subject = Subject { w, lines: &lines, shop: &branch.name, is_demo }.render()?;
    let text = Plain { w, name, lines: &lines, branch, link, stop, is_demo }.render()?;
    let style = format!("<style>{SHEET}</style>");
    let html = Page { w, name, lines: &lines, branch, link, stop, is_demo, style }.render()?;
    let entries: Vec<Entry> =
        reminder.items.iter().zip(&lines).map(|(item, line)| entry(&w, item, line, branch)).collect();
    // Names come from people; a line break in one must not reach a header.
    let subject = subject.split_whitespace().collect::<Vec<_>>().join(" ");
    Ok(Texts { subject, text, html, calendar: calendar::calendar(&entries, reminder.now) })
}

fn line(w: &Words, item: &Item, today: Date) -> Line {
    let is_over = item.due_on < today;
    let day = w.date(item.due_on);
    let by = match (item.due_km, is_over) {
        (Some(km), false) => w.tv("mail-by-or-km", &[("day", day.into()), ("km", km.into())]),
        (None, false) => w.tv("mail-by", &[("day", day.into())]),
        (_, true) => w.tv("mail-was-due", &[("day", day.into())]),
    };
    Line {
        what: w.t(format!("{}-{}", DutyKind::LIST, item.kind.code())),
        plate: item.plate.clone(),
        vehicle: item.vehicle.clone(),
        by,
        is_over,
    }
}

fn entry(w: &Words, item: &Item, line: &Line, branch: &Branch) -> Entry {
    let summary = w.tv("mail-calendar-summary", &[("what", line.what.as_str().into()), ("plate", line.short().into())]);
    let description = w.tv(
        "mail-calendar-description",
        &[
            ("vehicle", line.vehicle.as_str().into()),
            ("by", line.by.as_str().into()),
            ("shop", branch.name.as_str().into()),
            ("phone", branch.phone.as_str().into()),
        ],
    );
    Entry { duty: item.duty, on: item.due_on, summary, description }
}

impl Plain<'_> {
    fn count(&self) -> i64 {
        i64::try_from(self.lines.len()).unwrap_or(i64::MAX)
    }
}

impl Page<'_> {
    fn count(&self) -> i64 {
        i64::try_from(self.lines.len()).unwrap_or(i64::MAX)
    }
}

impl Line {
    /// The plate, or the vehicle where there is none.
    fn short(&self) -> &str {
        if self.plate.is_empty() { &self.vehicle } else { &self.plate }
    }

    /// The vehicle in one piece: plate, then maker and model.
    fn whose(&self) -> String {
        match (self.plate.is_empty(), self.vehicle.is_empty()) {
            (false, false) => format!("{}, {}", self.plate, self.vehicle),
            (false, true) => self.plate.clone(),
            _ => self.vehicle.clone(),
        }
    }
}
