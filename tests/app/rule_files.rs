//! The shop's own rule lines: errors by line, never looser, in force from a day; and words for all that the rules say.

use std::collections::BTreeSet;

use fuelwright::db;
use fuelwright::rules::{EMBEDDED, Quantity, RuleBook, RuleSet, embedded};
use fuelwright::words::Words;
use time::macros::date;

use crate::support::TestShop;

fn shop_text() -> String {
    embedded("shop").unwrap().to_owned()
}

#[tokio::test]
async fn the_sets_in_force_stand_there_line_by_line() {
    let open = TestShop::open().await;
    let page = open.auditor().await.get("/office/rules").await;
    page.is(200).says("UN baseline").says("EU roadworthiness").says("Shop lines");
    for set in RuleBook::shipped().unwrap().sets {
        let ids = set.proof.iter().map(|one| &one.id).chain(set.limit.iter().map(|one| &one.id));
        ids.chain(set.interval.iter().map(|one| &one.id)).for_each(|id| {
            page.says(id);
        });
    }
    page.says("To be confirmed with your authority").hides("Change the shop’s own lines");
}

#[tokio::test]
async fn a_stricter_line_is_looked_at_then_counts_from_its_day() {
    let open = TestShop::open().await;
    let ilse = open.manager().await;
    let text = shop_text().replace("most = 20.0", "most = 15.0");
    let fields = [("text", text.as_str()), ("from_on", "2026-05-20"), ("opened", "")];
    let page = ilse.post("/office/rules/shop", &[&fields[..], &[("then", "preview")]].concat()).await;
    page.is(200).says("shop.leak.vapour").says("Stricter");
    let mut con = open.shop.db.read().await.unwrap();
    assert!(db::rule_files::list(&mut con, open.branch, "shop").await.unwrap().is_empty(), "only looked at");
    ilse.post("/office/rules/shop", &[&fields[..], &[("then", "save")]].concat()).await.goes_to();
    for (day, most) in [(date!(2026 - 05 - 19), 20.0), (date!(2026 - 05 - 20), 15.0)] {
        let book = db::rule_books::book_on(&mut con, open.branch, day).await.unwrap();
        let lines = book.sets.iter().flat_map(|set| &set.limit);
        let found: Vec<_> = lines
            .filter(|line| line.quantity == Quantity::LeakCm3H && line.is_measured())
            .map(|line| line.most)
            .collect();
        assert_eq!(found, [Some(most)], "{day}");
    }
    ilse.get("/office/rules").await.says("From 20 May 2026 on a newer version counts");
    // Somebody who opened the form before that save does not write over it unseen.
    let late = ilse.post("/office/rules/shop", &[&fields[..], &[("then", "save")]].concat()).await;
    late.is(422).says("Somebody put another version in force");
    assert_eq!(late.field("text").map(|text| text.trim().to_owned()), Some(text.trim().to_owned()));
}

#[tokio::test]
async fn a_text_that_will_not_do_is_explained_by_line() {
    let open = TestShop::open().await;
    let ilse = open.manager().await;
    let send = async |text: &str, from_on: &str| {
        ilse.post("/office/rules/shop", &[("text", text), ("from_on", from_on), ("then", "save")]).await
    };
    let misspelt = shop_text().replace("decision = \"guarded\"", "decison = \"guarded\"");
    let line = misspelt.lines().position(|line| line.starts_with("decison")).unwrap() + 1;
    send(&misspelt, "2026-05-20").await.is(422).says(&format!("Line {line}: unknown field"));
    send(&shop_text(), "2026-05-11").await.is(422).says("already past");
    send(&shop_text().replace("is_shop = true", ""), "2026-05-20").await.is(422).says("is_shop = true");
    let looser = format!(
        "{}\n[[limit]]\nid = \"shop.shut\"\nquantity = \"shut-off-s\"\nmost = 5.0\nsource = \"own\"\nchecked = false\n",
        shop_text()
    );
    let page = send(&looser, "2026-05-20").await;
    page.is(422).says("shop.shut: looser than shut.2s of UN baseline");
    let unwaived = format!(
        "{}\n[[proof]]\nid = \"label\"\nstage = \"proving\"\nneeds = \"level\"\nsource = \"own\"\nchecked = false\n",
        shop_text()
    );
    send(&unwaived, "2026-05-20").await.is(422).says("label: looser than label of UN baseline");
    let stricter = looser.replace("most = 5.0", "most = 1.5");
    send(&stricter, "2026-05-20").await.goes_to();
}

#[test]
fn every_line_of_every_set_has_its_words() {
    let w = Words::default();
    let mut missing = vec![];
    for (_, text) in EMBEDDED {
        let set = RuleSet::read(text).unwrap();
        let keys = set.proof.iter().filter(|one| one.title.is_none()).map(|one| format!("proof-{}", one.id));
        let keys = keys.chain(set.check.iter().map(|one| format!("check-{}", one.id)));
        let keys = keys.chain(set.topic.iter().map(|one| format!("topic-{}", one.id)));
        missing.extend(keys.filter(|key| w.find(key).is_none()));
    }
    assert!(missing.is_empty(), "{missing:#?}");
}

/// The reasons that the rules give, read from their source: `Why::plain("key")`, `why("key")`, the two arms of a choice.
fn reasons() -> BTreeSet<String> {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("src/rules");
    let mut found = BTreeSet::new();
    for file in std::fs::read_dir(folder).unwrap() {
        let path = file.unwrap().path();
        let Ok(text) = std::fs::read_to_string(&path) else { continue };
        let text = text.split("#[cfg(test)]").next().unwrap();
        for ask in ["Why::plain(", "why(", "let key = ", "State::Waived, ", "State::NotApplicable, "] {
            for (at, _) in text.match_indices(ask) {
                let rest = text[at + ask.len()..].split([')', ';']).next().unwrap();
                found.extend(rest.split('"').skip(1).step_by(2).map(str::to_owned));
            }
        }
        // `works(ground, "field", "key", …)`.
        for (at, _) in text.match_indices("works(ground, ") {
            found.extend(text[at..].split('"').nth(3).map(str::to_owned));
        }
    }
    found
}

#[test]
fn every_reason_has_its_sentence_and_no_sentence_is_idle() {
    let file = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("templates/words/en/rules.ftl");
    let text = std::fs::read_to_string(file).unwrap();
    let keys =
        text.lines().filter_map(|line| line.strip_prefix("why-")?.split_once(" =")).map(|(key, _)| key.to_owned());
    let (said, given): (BTreeSet<String>, BTreeSet<String>) = (keys.collect(), reasons());
    assert!(given.len() > 90, "the walk finds the reasons: {}", given.len());
    let missing: Vec<_> = given.difference(&said).collect();
    assert!(missing.is_empty(), "no sentence for {missing:#?}");
    let rules = std::fs::read_dir(std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("src/rules")).unwrap();
    let all: String = rules.filter_map(|file| std::fs::read_to_string(file.ok()?.path()).ok()).collect();
    let idle: Vec<_> = said.iter().filter(|key| !all.contains(&format!("\"{key}\""))).collect();
    assert!(idle.is_empty(), "nobody says {idle:#?}");
}
