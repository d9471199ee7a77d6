//! The calendar part: one all-day event a duty (RFC 5545). The UID is the duty's own, so that a later reminder moves the
//! event instead of adding one.

use icalendar::{Calendar, Component, Event, Property};
use time::{Date, OffsetDateTime};

use crate::model::ids::DutyId;

/// An event to put into a calendar.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Entry {
    pub duty: DutyId,
    pub on: Date,
    /// In ready words.
    pub summary: String,
    pub description: String,
}

/// The text of the calendar part. `stamped_at`: when the message was written; a later writing goes before an earlier, by
/// its minute (the second would leave the 31 bits of a SEQUENCE in 2038).
pub fn calendar(entries: &[Entry], stamped_at: OffsetDateTime) -> String {
    let mut calendar = Calendar::empty();
    calendar.append_property(Property::new("VERSION", "2.0"));
    calendar.append_property(Property::new("PRODID", "-//Fuelwright//Falling due//EN"));
    calendar.append_property(Property::new("METHOD", "PUBLISH"));
    for entry in entries {
        let mut event = Event::with_uid(&format!("{}@fuelwright.invalid", entry.duty));
        let after = entry.on.next_day().unwrap_or(entry.on);
        let day = |name: &str, day: Date| Property::new(name, plain(day)).add_parameter("VALUE", "DATE").done();
        event
            // The crate would stamp the moment of printing, and the same message would read otherwise tomorrow.
            .add_property("DTSTAMP", stamp(stamped_at))
            .add_property("SEQUENCE", (stamped_at.unix_timestamp().max(0) / 60).to_string())
            .append_property(day("DTSTART", entry.on))
            .append_property(day("DTEND", after))
            .add_property("TRANSP", "TRANSPARENT")
            .summary(&entry.summary)
            .description(&entry.description);
        calendar.push(event.done());
    }
    calendar.done().to_string()
}

fn plain(day: Date) -> String {
    format!("{:04}{:02}{:02}", day.year(), u8::from(day.month()), day.day())
}

fn stamp(at: OffsetDateTime) -> String {
    format!("{}T{:02}{:02}{:02}Z", plain(at.date()), at.hour(), at.minute(), at.second())
}
