//! Which room may use which: read from the code, held against the table.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

const ALL_BUT_MAIL: &[&str] = &[
    "calc",
    "words",
    "charts",
    "seal",
    "clock",
    "config",
    "attachments",
    "logs",
    "model",
    "rules",
    "db",
    "papers",
    "unit",
];

/// A room and what it may use of ours. A room may always use itself.
fn allowed(room: &str) -> BTreeSet<&'static str> {
    let shop: BTreeSet<_> = ALL_BUT_MAIL.iter().copied().collect();
    let with = |more: &[&'static str]| shop.iter().chain(more).copied().collect();
    match room {
        "calc" | "charts" | "seal" | "clock" | "config" | "attachments" | "unit" => BTreeSet::new(),
        "words" => ["unit"].into(),
        // What a log's columns stand for is named where they are judged.
        "logs" => ["calc"].into(),
        // A certificate keeps its signed content as it was signed.
        "model" => ["calc", "seal", "unit"].into(),
        "rules" => ["calc", "model", "unit"].into(),
        // A rule book is read where its files are kept.
        "db" => ["calc", "model", "rules"].into(),
        "mail" => ["model", "words"].into(),
        "papers" => ["calc", "model", "rules", "charts", "words", "unit"].into(),
        "shop" => shop,
        "rounds" | "exchange" | "backup" | "demo" => with(&["shop", "mail"]),
        "web" => with(&["shop", "mail", "exchange", "backup"]),
        "cli" => with(&["shop", "mail", "exchange", "backup", "rounds", "demo", "web"]),
        "main" | "lib" => ["cli"].into(),
        other => panic!("the room {other} is not in the table: add its line"),
    }
}

fn sources(folder: &Path) -> Vec<PathBuf> {
    let mut found = vec![];
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            found.extend(sources(&path));
        } else if path.extension().is_some_and(|end| end == "rs") {
            found.push(path);
        }
    }
    found
}

fn source() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("src")
}

/// The room a file belongs to: the first folder under `src`, or the file itself.
fn room_of(file: &Path) -> String {
    let first = file.strip_prefix(source()).unwrap().iter().next().unwrap().to_string_lossy().into_owned();
    first.trim_end_matches(".rs").to_owned()
}

/// The code of a file without comments.
fn code(file: &Path) -> String {
    let text = fs::read_to_string(file).unwrap();
    text.lines().map(|line| line.split("//").next().unwrap_or_default()).collect::<Vec<_>>().join("\n")
}

#[test]
fn no_room_uses_a_room_above_it() {
    let files = sources(&source());
    assert!(files.len() > 30);
    let mut wrong = vec![];
    for file in files {
        let room = room_of(&file);
        let allowed = allowed(&room);
        for part in code(&file).split("crate::").skip(1) {
            let used: String = part.chars().take_while(|c| c.is_ascii_lowercase() || *c == '_').collect();
            if !used.is_empty() && used != room && !allowed.contains(used.as_str()) {
                wrong.push(format!("{} uses {used}", file.display()));
            }
        }
    }
    wrong.sort();
    wrong.dedup();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn a_library_with_one_home_is_named_nowhere_else() {
    let homes = [("aga8", "src/calc/gas.rs"), ("printpdf", "src/papers/"), ("lopdf", "src/papers/")];
    for file in sources(&source()) {
        let code = code(&file);
        let place = file.to_string_lossy().into_owned();
        for (library, home) in homes {
            assert!(!code.contains(&format!("{library}::")) || place.contains(home), "{place} names {library}");
        }
    }
}

#[test]
fn every_file_opens_by_saying_what_it_promises() {
    for file in sources(&source()) {
        let text = fs::read_to_string(&file).unwrap();
        assert!(text.starts_with("//!"), "{} opens without //!", file.display());
    }
}
