//! Languages to choose from, each by its own name.

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
