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
    for language in Language::INTERFACE {
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
    for language in Language::PAPERS {
        let mut keys = keys_of(language);
        keys.sort();
        let twice: Vec<_> = keys.windows(2).filter(|pair| pair[0] == pair[1]).map(|pair| &pair[0]).collect();
        assert!(twice.is_empty(), "{language:?}: {twice:#?}");
    }
}

/// Files of words for customers, certificates and records: the same in every language of papers.
const FOR_PAPERS: [&str; 14] = [
    "customer_page.ftl",
    "customer_papers.ftl",
    "estimate_papers.ftl",
    "letters.ftl",
    "owner_sheet.ftl",
    "paper_content.ftl",
    "paper_label.ftl",
    "paper_lists.ftl",
    "paper_records.ftl",
    "paper_slots.ftl",
    "papers.ftl",
    "proofs.ftl",
    "road_paper.ftl",
    "verify.ftl",
];

/// Key to its text, attributes and all, of one file.
fn messages(tag: &str, file: &str) -> BTreeMap<String, String> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("templates/words").join(tag).join(file);
    let mut found: BTreeMap<String, String> = BTreeMap::new();
    let mut last = String::new();
    for line in fs::read_to_string(&path).unwrap().lines().filter(|line| !line.starts_with('#')) {
        if let Some((key, text)) = line.split_once(" =").filter(|(key, _)| is_key(key)) {
            key.clone_into(&mut last);
            found.insert(last.clone(), text.trim().to_owned());
        } else if let Some(text) = found.get_mut(&last) {
            text.push('\n');
            text.push_str(line.trim());
        }
    }
    found
}

/// The values that a text is filled with.
fn placeholders(text: &str) -> Vec<&str> {
    let name = |rest: &'_ str| rest.find(|c: char| !c.is_ascii_alphanumeric() && c != '_').unwrap_or(rest.len());
    let mut names: Vec<&str> = text.split('$').skip(1).map(|rest| &rest[..name(rest)]).collect();
    names.sort_unstable();
    names.dedup();
    names
}

/// Words that are the same in another language: abbreviations of the trade, and words that were borrowed.
const SAME: [(&str, &[&str]); 7] = [
    (
        "de",
        &[
            "verify-code",
            "duty-kind-filter",
            "part-category-filter",
            "part-category-sensor",
            "label-code",
            "instrument-kind-thermometer",
            "calibration-record-bank",
            "paper-name",
        ],
    ),
    ("pl", &["paper-fuel-lpg", "paper-fuel-cng", "calibration-record-bank"]),
    ("it", &["paper-gas-shut-off-no", "calibration-record-file", "record-no", "record-volume", "road-stated-gas"]),
    (
        "es",
        &[
            "kit-error",
            "part-category-sensor",
            "issue-method-detector",
            "paper-gas-shut-off-no",
            "leak-method-detector",
            "record-no",
            "paper-inspector",
            "road-stated-gas",
        ],
    ),
    ("tr", &["paper-fuel-lpg", "paper-fuel-cng", "paper-test", "road-column-manifold"]),
    (
        "fr",
        &[
            "letter-sign",
            "paper-deficiency-photo",
            "vessel-level-acceptable",
            "label-code",
            "test-gas-air",
            "trims-column-point",
            "trims-column-verdict",
            "calibration-record-by",
            "calibration-record-point",
            "slot-photo-document",
            "slot-photo-signature",
            "paper-inspection-kind",
            "paper-instrument",
            "paper-instruments",
            "paper-photo",
            "paper-photos",
            "record-contact",
            "record-volume",
            "road-column-injection",
            "road-column-verdict",
        ],
    ),
    (
        "nl",
        &[
            "paper-fuel-lpg",
            "paper-fuel-cng",
            "part-category-sensor",
            "label-code",
            "instrument-kind-thermometer",
            "calibration-record-bank",
            "fitting-record-batch",
            "paper-test",
            "paper-type-code",
            "record-volume",
            "calibration-record-road-interval",
            "road-stated-gas",
        ],
    ),
];

/// Signs that every language writes alike: units, codes of methods, what everybody calls the gas and the number of a vehicle.
const SIGNS: [&str; 7] = [
    "issue-methods",
    "label-container-pressure",
    "calibration-record-sum",
    "why-odometer",
    "paper-vin",
    "issue-fuel-lpg",
    "issue-fuel-cng",
];

#[test]
fn each_language_of_papers_has_the_words_of_papers_and_no_others() {
    let mut english_still = Vec::new();
    for language in Language::PAPERS {
        let folder = format!("templates/words/{}", language.tag());
        let names: Vec<_> =
            files(&folder, ".ftl").iter().map(|(path, _)| path.file_name().unwrap().to_owned()).collect();
        if language != Language::English {
            assert_eq!(names, FOR_PAPERS, "{language:?}");
        }
        for file in FOR_PAPERS {
            let (english, theirs) = (messages("en", file), messages(language.tag(), file));
            let keys = |messages: &BTreeMap<String, String>| messages.keys().cloned().collect::<Vec<_>>();
            assert_eq!(keys(&theirs), keys(&english), "{language:?} {file}");
            for (key, text) in &theirs {
                let wanted = &english[key];
                assert_eq!(placeholders(text), placeholders(wanted), "{language:?} {key}");
                assert!(!text.trim().is_empty(), "{language:?} {key}");
                // What is only values and signs has nothing to translate.
                // Nor has the sign of a unit.
                let has_words = without_values(wanted).split(|c: char| !c.is_alphabetic()).any(|word| word.len() > 1);
                let is_same = text == wanted && language != Language::English && has_words;
                let is_known = SIGNS.contains(&key.as_str())
                    || SAME.iter().any(|(tag, keys)| *tag == language.tag() && keys.contains(&key.as_str()));
                if is_same && !is_known {
                    english_still.push(format!("({:?}, {key:?}): {text}", language.tag()));
                }
            }
        }
    }
    assert!(english_still.is_empty(), "these stand in English: {english_still:#?}");
}

fn without_values(text: &str) -> String {
    text.split('{').map(|part| part.split_once('}').map_or(part, |(_, rest)| rest)).collect()
}

#[test]
fn whatever_a_customer_reads_asks_only_for_words_that_every_language_has() {
    let known: Vec<String> = FOR_PAPERS.iter().flat_map(|file| messages("en", file).into_keys()).collect();
    let read = [
        "src/papers/owner_sheet.rs",
        "src/papers/priced.rs",
        "src/papers/estimate.rs",
        "src/papers/price_list.rs",
        "src/papers/deposit_receipt.rs",
        "src/shop/issue/estimate.rs",
        "src/papers/post.rs",
        "src/papers/letter.rs",
        "src/mail/reminder.rs",
        "src/shop/doubts/letters.rs",
        "src/web/vehicle_page.rs",
        "src/web/verify.rs",
        "templates/verify.html",
        "templates/mail/",
        "templates/owner/",
        "templates/vehicle_page.html",
    ];
    // The name of the program.
    let elsewhere = ["app-name"];
    let mut asked = 0;
    for (path, text) in sources() {
        if !read.iter().any(|one| path.to_string_lossy().contains(one)) {
            continue;
        }
        for literal in text.split('"').skip(1).step_by(2) {
            // A key that ends in `*` differs by gas.
            let key = literal.trim_end_matches('*');
            let is_asked = is_key(key)
                && is_ours(key)
                && [
                    "owner-",
                    "letter-",
                    "mail-",
                    "own-",
                    "paper-",
                    "kit-",
                    "vehicle-page-",
                    "verify-",
                    "register-",
                    "standing-",
                    "estimate-paper-",
                    "priced-",
                    "price-list-",
                    "receipt-",
                ]
                .iter()
                .any(|start| key.starts_with(start));
            if !is_asked || elsewhere.contains(&key) {
                continue;
            }
            asked += 1;
            let is_known = known.iter().any(|one| one == key || (literal.ends_with('*') && one.starts_with(key)));
            assert!(is_known, "{}: {key} is not among the words for customers", path.display());
        }
    }
    assert!(asked > 60, "the walk finds the keys: {asked}");
}

/// What draws or fills working papers of the shop, in the language of its screens.
const FOR_THE_SHOP: [&str; 11] = [
    "papers/audit_pack.rs",
    "papers/drawing.rs",
    "papers/finding_report.rs",
    "papers/sizing_sheet.rs",
    "papers/wall_sheet.rs",
    "papers/work_sheet.rs",
    "issue/keys.rs",
    "issue/sizing.rs",
    "issue/standing.rs",
    "issue/wall.rs",
    "issue/work.rs",
];

#[test]
fn whatever_certificates_and_records_say_has_words_in_every_language() {
    let known: Vec<String> = FOR_PAPERS.iter().flat_map(|file| messages("en", file).into_keys()).collect();
    let english = keys_of(Language::English);
    let is_official = |path: &Path| {
        let path = path.to_string_lossy().replace('\\', "/");
        (path.contains("src/papers/") || path.contains("src/shop/issue/"))
            && !FOR_THE_SHOP.iter().any(|one| path.ends_with(one))
    };
    // A refusal is said on the screen; the field of a proof's reason is its label there.
    let is_of_screens = |key: &str| key.starts_with("refused-") || key == "field-";
    let mut asked = 0;
    for (path, text) in sources().into_iter().filter(|(path, _)| is_official(path)) {
        for literal in text.split('"').skip(1).step_by(2) {
            let (key, is_family) = literal.split_once('{').map_or((literal, false), |(key, _)| (key, true));
            if !is_key(key) || !is_ours(key) || is_of_screens(key) {
                continue;
            }
            let is_said = |one: &String| one == key || (is_family && one.starts_with(key));
            if english.iter().any(is_said) {
                asked += 1;
                assert!(known.iter().any(is_said), "{}: {key} is not among the words of papers", path.display());
            }
        }
    }
    assert!(asked > 300, "the walk finds the keys: {asked}");
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
