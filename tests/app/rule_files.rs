//! The shop's own rule lines: errors by line, never looser, in force from a day; and words for all that the rules say.

use std::collections::BTreeSet;

use fuelwright::db;
use fuelwright::rules::{EMBEDDED, Quantity, RuleBook, RuleSet, embedded};
use fuelwright::words::Words;
use time::macros::date;

use crate::support::{PASSWORD, TestShop};

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
    let file = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("templates/words/en/proofs.ftl");
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

/// A line of the shop looser than shut.2s, with an authority's leave.
fn allowed_text() -> String {
    format!(
        "{}\n[[limit]]\nid = \"shop.shut\"\nquantity = \"shut-off-s\"\nmost = 3.0\nsource = \"own\"\nchecked = false\nallowed = {{ authority = \"Northmere inspectorate\", document = \"letter 12\", on = \"2026-04-01\" }}\n",
        shop_text()
    )
}

#[tokio::test]
async fn a_looser_line_needs_an_authority_and_a_second_persons_sign_in() {
    let open = TestShop::open().await;
    let ilse = open.manager().await;
    let text = allowed_text();
    let fields = [("text", text.as_str()), ("from_on", "2026-05-12"), ("opened", "")];
    let send = async |more: &[(&str, &str)]| ilse.post("/office/rules/shop", &[&fields[..], more].concat()).await;
    send(&[("then", "preview")]).await.is(200).says("shop.shut asks less than shut.2s of UN baseline");
    let save = ("then", "save");
    send(&[save]).await.is(422).says("a second person signs in");
    let with =
        |name: &'static str, password: &'static str| [save, ("second_name", name), ("second_password", password)];
    send(&with("ilse", PASSWORD)).await.is(422).says("That is you");
    send(&with("nobody", PASSWORD)).await.is(422).says("Nobody of this branch");
    send(&with("mara", PASSWORD)).await.is(422).says("neither manage this branch nor may sign");
    let wrong = send(&with("vera", "guess")).await;
    wrong.is(422).hides("value=\"guess\"");
    let mut con = open.shop.db.read().await.unwrap();
    assert!(db::rule_files::list(&mut con, open.branch, "shop").await.unwrap().is_empty());
    send(&with("vera", PASSWORD)).await.goes_to();
    let kept = db::rule_files::list(&mut con, open.branch, "shop").await.unwrap();
    assert_eq!((kept[0].person_id, kept[0].second_person_id), (open.ilse, Some(open.vera)));
    ilse.get("/office/rules").await.says("Looser by leave of Northmere inspectorate, letter 12 of 1 April 2026");
    ilse.get("/office/log").await.says("Stood behind a line that asks less");
    // The deed itself holds to it, whoever calls it.
    let who = open.actor(open.ilse).await;
    let new = fuelwright::shop::rule_files::NewRuleFile {
        name: "shop".into(),
        text: text.clone(),
        from_on: date!(2026 - 05 - 13),
        opened_at: Some(kept[0].id.clone()),
        second: None,
    };
    assert!(open.shop.change_rules(&who, None, new.clone()).await.is_err());
    let alone = fuelwright::shop::rule_files::NewRuleFile { second: Some(open.ilse), ..new };
    assert!(open.shop.change_rules(&who, None, alone).await.is_err());
}

#[tokio::test]
async fn a_file_in_the_data_folder_takes_the_place_of_a_shipped_set_with_sum_and_person() {
    let open = TestShop::open().await;
    let (ilse, page) = (open.manager().await, "/office/rules/sets/nl");
    ilse.get(page).await.is(200).says("nl.lpg.age").says("rule-sets/nl.toml");
    open.auditor().await.get(page).await.is(200).hides("A file in the place of this set");
    let send = async |take: &str, then: &str, opened: &str| {
        let fields = [("take", take), ("from_on", "2026-05-14"), ("opened", opened), ("then", then)];
        ilse.post(page, &fields).await
    };
    send("file", "preview", "").await.is(422).says("There is no rule-sets/nl.toml in the data folder");
    let folder = open.app.config.data.join("rule-sets");
    std::fs::create_dir_all(&folder).unwrap();
    let shipped = embedded("nl").unwrap();
    let write = |text: &str| std::fs::write(folder.join("nl.toml"), text).unwrap();
    write(&shipped.replace("checked = true", "checked = true\ncolour = \"red\""));
    let line = shipped.lines().position(|line| line == "checked = true").unwrap() + 2;
    send("file", "save", "").await.is(422).says(&format!("Line {line}: unknown field"));
    write(&shipped.replace("name = \"nl\"", "name = \"un-baseline\""));
    send("file", "save", "").await.is(422).says("no version of this set");
    write(&shipped.replace("most = 120.0", "most = 96.0"));
    send("file", "preview", "").await.is(200).says("Stricter").says("96");
    send("file", "save", "").await.goes_to();
    // What is kept is what was read: a later change of the file changes nothing.
    write("nonsense");
    let mut con = open.shop.db.read().await.unwrap();
    for (day, most) in [(date!(2026 - 05 - 13), 120.0), (date!(2026 - 05 - 14), 96.0)] {
        let set = db::rule_books::set_on(&mut con, open.branch, "nl", day).await.unwrap();
        assert_eq!(set.limit[0].most, Some(most), "{day}");
    }
    let kept = db::rule_files::list(&mut con, open.branch, "nl").await.unwrap();
    ilse.get(page).await.says("Ilse Brandt").says(&kept[0].sha256[..12]);
    // Back to what the program ships; and a form opened before that save is told so.
    send("shipped", "save", "").await.is(422).says("Somebody put another version in force");
    send("shipped", "save", &kept[0].id).await.goes_to();
    let set = db::rule_books::set_on(&mut con, open.branch, "nl", date!(2026 - 05 - 14)).await.unwrap();
    assert_eq!(set.limit[0].most, Some(120.0));
    ilse.get("/office/rules/sets/moon").await.is(404);
    ilse.get("/office/rules/sets/shop").await.is(404);
}
