//! Languages to choose from, each by its own name; and the one that a browser asks for.

use axum::http::{HeaderMap, header};

use crate::web::kit::Choice;
use crate::words::{Language, Words};

/// What a customer can be written to in. A tag that is kept and none of these stays in the list, so that saving another
/// field does not lose it.
pub fn choices(kept: &str) -> Vec<Choice> {
    let mut all: Vec<Choice> = Language::PAPERS.into_iter().map(|one| Choice::new(one.tag(), own_name(one))).collect();
    if !kept.is_empty() && all.iter().all(|one| one.value != kept) {
        all.push(Choice::new(kept, kept));
    }
    all
}

/// The language's name for itself.
pub fn own_name(language: Language) -> String {
    Words::new(language).t("language-name")
}

/// The language that a stranger's browser asks for most among those that papers speak; `None` where it asks for none.
///
/// Source: RFC 9110, 12.5.4 and 12.4.2 (weights).
pub fn asked(headers: &HeaderMap) -> Option<Language> {
    let ranges = headers.get_all(header::ACCEPT_LANGUAGE).iter().filter_map(|value| value.to_str().ok());
    let ranges = ranges.flat_map(|value| value.split(',')).filter_map(|range| {
        let (tag, weight) = range.split_once(';').map_or((range, "q=1"), |(tag, weight)| (tag, weight.trim()));
        let weight: f32 = weight.strip_prefix("q=")?.trim().parse().ok()?;
        let language = Language::of_papers(tag.trim())?;
        (weight > 0.0).then_some((language, weight))
    });
    // Of two that are asked for alike the first counts.
    ranges
        .fold(None, |best: Option<(Language, f32)>, one| match best {
            Some(kept) if kept.1 >= one.1 => Some(kept),
            _ => Some(one),
        })
        .map(|(language, _)| language)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_heaviest_language_that_papers_speak_is_taken_and_nonsense_is_not() {
        for (header_value, expected) in [
            ("de-AT,de;q=0.9,en;q=0.8", Some(Language::German)),
            ("sv, en;q=0.2, pl;q=0.7", Some(Language::Polish)),
            ("fr;q=0, nl ; q=0.5", Some(Language::Dutch)),
            ("es, it", Some(Language::Spanish)),
            ("*", None),
            ("sv", None),
            ("de;q=much", None),
            ("", None),
        ] {
            let mut headers = HeaderMap::new();
            headers.insert(header::ACCEPT_LANGUAGE, header_value.parse().unwrap());
            assert_eq!(asked(&headers), expected, "{header_value}");
        }
        assert_eq!(asked(&HeaderMap::new()), None);
    }
}
