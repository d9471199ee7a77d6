//! Every key that a template or a handler asks for has its words, in every language; and no template holds words of its
//! own.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use fuelwright::words::{Language, Words};

/// What stands right before a key written out in the source.
const ASKS: [&str; 10] =
    [".t(", ".tv(", ".tn(", ".find(", ".label(", ".hint(", "Wrong::Rule(", "frame.t(", "typed(", "unit(w,"];

fn files(folder: &str, end: &str) -> Vec<(PathBuf, String)> {
    fn walk(folder: &Path, end: &str, found: &mut Vec<(PathBuf, String)>) {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                walk(&path, end, found);
            } else if path.to_string_lossy().ends_with(end) {
                found.push((path.clone(), fs::read_to_string(&path).unwrap()));
            }
        }
    }
    let mut found = Vec::new();
    walk(&Path::new(env!("CARGO_MANIFEST_DIR")).join(folder), end, &mut found);
    found.sort();
    found
}

/// Source above its tests: those ask for keys that are missing on purpose.
fn sources() -> Vec<(PathBuf, String)> {
    let mut sources = files("src", ".rs");
    for (_, text) in &mut sources {
        if let Some(at) = text.find("#[cfg(test)]") {
            text.truncate(at);
        }
    }
    sources.extend(files("templates", ".html"));
    sources.extend(files("templates", ".txt"));
    sources
}

fn literal_after(text: &str) -> Option<&str> {
    let (literal, _) = text.trim_start().strip_prefix('"')?.split_once('"')?;
    Some(literal)
}

fn is_key(text: &str) -> bool {
    text.starts_with(|c: char| c.is_ascii_lowercase())
        && text.chars().all(|c| c.is_ascii_alphanumeric() || matches!(c, '-' | '_' | '.'))
}

/// Key to the first file that asks for it.
fn asked() -> BTreeMap<String, PathBuf> {
    let mut keys = BTreeMap::new();
    for (path, text) in sources() {
        for ask in ASKS {
            for (at, _) in text.match_indices(ask) {
                let Some(key) = literal_after(&text[at + ask.len()..]) else { continue };
                if is_key(key) {
                    keys.entry(key.to_owned()).or_insert_with(|| path.clone());
                }
            }
        }
    }
    keys
}

/// Whether an asker is only ever right with a dash in it: `form.find("x")` on other types would be caught otherwise.
fn is_ours(key: &str) -> bool {
    key.contains('-')
}

#[test]
fn every_key_asked_for_has_words_in_every_language() {
    let asked = asked();
    assert!(asked.len() > 60, "the walk finds the keys: {}", asked.len());
    for language in Language::ALL {
        let w = Words::new(language);
        // With values the words may need, a key reads as nothing; that it exists is what counts here.
        let known = keys_of(language);
        let missing: Vec<_> =
            asked.iter().filter(|(key, _)| is_ours(key) && !known.contains(*key) && w.find(key).is_none()).collect();
        assert!(missing.is_empty(), "{language:?} has no words for {missing:#?}");
    }
}

fn keys_of(language: Language) -> Vec<String> {
    let mut keys = Vec::new();
    for (_, text) in files(&format!("templates/words/{}", language.tag()), ".ftl") {
        let mut message = String::new();
        for line in text.lines() {
            if let Some((attribute, _)) = line.trim_start().strip_prefix('.').and_then(|rest| rest.split_once(" =")) {
                keys.push(format!("{message}.{attribute}"));
            } else if let Some((key, _)) = line.split_once(" =").filter(|(key, _)| is_key(key)) {
                key.clone_into(&mut message);
                keys.push(message.clone());
            }
        }
    }
    keys
}

#[test]
fn no_key_is_given_twice() {
    for language in Language::ALL {
        let mut keys = keys_of(language);
        keys.sort();
        let twice: Vec<_> = keys.windows(2).filter(|pair| pair[0] == pair[1]).map(|pair| &pair[0]).collect();
        assert!(twice.is_empty(), "{language:?}: {twice:#?}");
    }
}

#[test]
fn every_field_on_a_page_has_a_label() {
    let known = keys_of(Language::English);
    let mut bare = Vec::new();
    for (path, text) in files("templates", ".html") {
        for (at, _) in text.match_indices("kit::") {
            let call = &text[at..text[at..].find("}}").map_or(text.len(), |end| at + end)];
            let Some((_, rest)) = call.split_once("(form, frame.w,") else { continue };
            let Some(name) = literal_after(rest) else { continue };
            let last = name.rsplit('[').next().unwrap_or(name).trim_end_matches(']');
            let has_own = call.contains(".label(") || call.contains(".called(");
            if !has_own && !known.iter().any(|key| key.ends_with(&format!("-{last}"))) {
                bare.push(format!("{}: {name}", path.display()));
            }
        }
    }
    assert!(bare.is_empty(), "{bare:#?}");
}

/// `coded! { "list" Name { Member = "code", … } }` becomes the keys `list-code`.
#[test]
fn every_member_of_a_closed_list_has_its_word() {
    let known = keys_of(Language::English);
    let mut lists = 0;
    for (path, text) in files("src", ".rs") {
        for (at, _) in text.match_indices("coded! {") {
            let body = text[at..].split("\n}").next().unwrap_or("");
            let mut literals = body.lines().filter(|line| !line.trim_start().starts_with("//")).filter_map(|line| {
                let (_, rest) = line.split_once('"')?;
                rest.split_once('"').map(|(literal, _)| literal)
            });
            let Some(list) = literals.next().filter(|list| is_key(list)) else { continue };
            lists += 1;
            for code in literals {
                let key = format!("{list}-{code}");
                assert!(known.contains(&key), "no words for {key}, {}", path.display());
            }
        }
    }
    assert!(lists > 20, "the walk finds the lists: {lists}");
}

/// Takes `{{ … }}`, `{% … %}` and `{# … #}` out.
fn without_code(text: &str) -> String {
    let mut out = String::new();
    let mut rest = text;
    while let Some(at) = rest.find("{{").into_iter().chain(rest.find("{%")).chain(rest.find("{#")).min() {
        out.push_str(&rest[..at]);
        let end = match &rest[at..at + 2] {
            "{{" => "}}",
            "{%" => "%}",
            _ => "#}",
        };
        rest = rest[at..].find(end).map_or("", |close| &rest[at + close + 2..]);
    }
    out + rest
}

#[test]
fn no_template_holds_words_or_style_of_its_own() {
    for (path, text) in files("templates", ".html") {
        let plain = without_code(&text);
        for forbidden in ["style=", "<style", "onclick=", "onchange=", "onsubmit=", "javascript:"] {
            assert!(!plain.contains(forbidden), "{}: {forbidden}", path.display());
        }
        for attribute in ["aria-label=\"", "placeholder=\"", "title=\"", "alt=\""] {
            for (at, _) in plain.match_indices(attribute) {
                let value = plain[at + attribute.len()..].split('"').next().unwrap_or("");
                assert!(!value.contains(char::is_alphabetic), "{}: {attribute}{value}", path.display());
            }
        }
        let mut is_tag = false;
        let words: String = plain
            .chars()
            .filter(|c| {
                let was_tag = is_tag;
                is_tag = match c {
                    '<' => true,
                    '>' => false,
                    _ => is_tag,
                };
                !was_tag && !is_tag && c.is_alphabetic()
            })
            .collect();
        assert!(words.is_empty(), "{}: {words:?} stands in the template itself", path.display());
    }
}
