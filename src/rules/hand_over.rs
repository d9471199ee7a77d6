//! Proofs of the hand-over: explained, received.

use super::assess::Ground;
use super::proof::{Place, Said, State, Why};
use crate::model::evidence::{Entry, Evidence, HandOver};

fn hand_over<'a>(ground: &'a Ground<'_>) -> Option<(&'a Entry, &'a HandOver)> {
    ground.file.shown("hand-over", "", |body| match body {
        Evidence::HandOver(one) => Some(one),
        _ => None,
    })
}

pub fn instructed(ground: &Ground<'_>) -> Said {
    let place = Place::Evidence("hand-over", "", "topics");
    let Some((entry, one)) = hand_over(ground) else {
        return Said::missing(place);
    };
    let topics = ground.book.topics(&ground.file.job);
    let open = topics.iter().filter(|topic| !one.topics.contains(&topic.id)).count();
    if open > 0 || !one.manuals_given {
        let why = Why::plain("topics-open").number("open", u32::try_from(open).unwrap_or(u32::MAX).into(), 0);
        return Said::new(State::Missing, why, place).on(entry);
    }
    Said::met(Why::plain("instructed"), place).on(entry)
}

pub fn received(ground: &Ground<'_>) -> Said {
    let place = Place::Evidence("hand-over", "", "received_by");
    let Some((entry, one)) = hand_over(ground) else {
        return Said::missing(place);
    };
    if one.received_by.is_empty() || entry.attachments.is_empty() {
        return Said::new(State::Missing, Why::plain("signature-missing"), place).on(entry);
    }
    Said::met(Why::plain("received").text("name", &one.received_by), place).on(entry)
}
