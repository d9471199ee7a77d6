//! Fitting: the engine cylinders, the checklist, how the level is known.

use fuelwright::model::evidence::{CheckAnswer, Evidence, NozzleSizing, NozzleVerdict};
use fuelwright::rules::{RuleBook, State};
use time::Duration;

use crate::job_support::Bay;

fn pairs(fields: &[(String, String)]) -> Vec<(&str, &str)> {
    fields.iter().map(|(name, value)| (name.as_str(), value.as_str())).collect()
}

fn cylinders() -> Vec<(String, String)> {
    let mut fields = vec![("measured_at".to_owned(), "2026-05-12T10:20".to_owned())];
    for n in 1..=4 {
        for (field, value) in [
            ("petrol_connector", format!("Injector plug {n}")),
            ("control_pin", format!("Output {n}")),
            ("branch_mark", format!("ring {n}")),
            ("gas_injector", n.to_string()),
            ("nozzle_mm", "2.1".to_owned()),
            ("answers", "yes".to_owned()),
        ] {
            fields.push((format!("rows[{n}][{field}]"), value));
        }
    }
    fields
}

fn with(mut fields: Vec<(String, String)>, changed: &[(&str, &str)]) -> Vec<(String, String)> {
    for (name, value) in changed {
        fields.retain(|(known, _)| known != name);
        fields.push(((*name).to_owned(), (*value).to_owned()));
    }
    fields
}

#[tokio::test]
async fn an_injector_named_twice_is_explained_kept_mended_and_saved() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("cylinder-table"), bay.shop.technician().await);
    jon.get(&at).await.is(200).says("Engine cylinder 4").says("No nozzle is sized yet");
    let sheet = NozzleSizing {
        inputs: serde_json::Value::Null,
        results: serde_json::Value::Null,
        origins: serde_json::Value::Null,
        needed_mm: 2.05,
        chosen_mm: Some(2.1),
        verdict: NozzleVerdict::Fits,
        program_version: "test".into(),
    };
    bay.record(Evidence::NozzleSizing(sheet), Vec::new()).await;
    let page = jon.get(&at).await;
    assert_eq!(page.field("rows[3][nozzle_mm]").as_deref(), Some("2.1"));
    assert_eq!(page.field("rows[3][gas_injector]").as_deref(), Some("3"));
    assert_eq!(bay.proof("engine-cylinders").await.state, State::Missing);

    let doubled = with(cylinders(), &[("rows[4][gas_injector]", "2"), ("rows[1][nozzle_mm]", "two")]);
    let page = jon.post(&at, &pairs(&doubled)).await;
    page.is(422);
    assert_eq!(page.field("rows[1][nozzle_mm]").as_deref(), Some("two"));
    let doubled = with(cylinders(), &[("rows[4][gas_injector]", "2")]);
    let page = jon.post(&at, &pairs(&doubled)).await;
    page.is(422).says("This gas injector stands at engine cylinder 2 already.");
    assert_eq!(page.field("rows[4][branch_mark]").as_deref(), Some("ring 4"));
    assert_eq!(bay.entries("cylinder-table").await, 0);

    let silent = with(cylinders(), &[("rows[2][answers]", "no")]);
    let stage = jon.post(&at, &pairs(&silent)).await.goes_to();
    jon.get(&stage).await.says("Engine cylinder 2 does not answer when its gas is cut");
    assert_eq!(bay.proof("engine-cylinders").await.state, State::Stops);

    let entry = bay.file().await.entry("cylinder-table", "").unwrap().id.to_string();
    let mended = with(cylinders(), &[("replaces_id", &entry)]);
    jon.post(&at, &pairs(&mended)).await.is(422);
    let mended = with(mended, &[("replaces_reason", "plug 2 was loose"), ("key", &uuid::Uuid::now_v7().to_string())]);
    jon.post(&at, &pairs(&mended)).await.goes_to();
    jon.post(&at, &pairs(&mended)).await.goes_to();
    assert_eq!(bay.entries("cylinder-table").await, 2, "a double send makes one record");
    assert_eq!(bay.proof("engine-cylinders").await.state, State::Met);

    let page = jon.post(&at, &pairs(&with(cylinders(), &[("rows[1][branch_mark]", "blue")]))).await;
    page.is(422).says("Recorded meanwhile by Jon Aspen");
    assert_eq!(page.field("rows[1][branch_mark]").as_deref(), Some("blue"));
}

/// Every line of the checklist of an LPG job, answered alike.
async fn all_lines(bay: &Bay, answer: &str) -> Vec<(String, String)> {
    let book = RuleBook::shipped().unwrap();
    let job = bay.file().await.job;
    let mut fields = vec![("measured_at".to_owned(), "2026-05-12T10:20".to_owned())];
    fields.extend(book.checks(&job).iter().map(|line| (format!("answers[{}][answer]", line.id), answer.to_owned())));
    fields
}

#[tokio::test]
async fn an_answer_that_does_not_change_keeps_its_first_initials_and_time() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("checklist"), bay.shop.technician().await);
    jon.get(&at).await.is(200).says("Own fuse near the battery").says("Gas-tight housing");
    jon.post(&at, &pairs(&[("measured_at".to_owned(), "2026-05-12T10:20".to_owned())]))
        .await
        .is(422)
        .says("Answer one line at least.");

    let bare = with(all_lines(&bay, "pass").await, &[("answers[wire-fuse][answer]", "fail")]);
    jon.post(&at, &pairs(&bare)).await.is(422).says("Say what is wrong, or why it does not apply.");
    let forged = with(
        bare.clone(),
        &[("answers[clear-exhaust][answer]", "not-applicable"), ("answers[clear-exhaust][note]", "x")],
    );
    jon.post(&at, &pairs(&forged)).await.is(422).says("This line applies to every vehicle");
    assert_eq!(bay.entries("checklist").await, 0);

    let failing = with(bare, &[("answers[wire-fuse][note]", "no fuse at all")]);
    let stage = jon.post(&at, &pairs(&failing)).await.goes_to();
    jon.get(&stage).await.says("no fuse at all").says("1 line fails");
    assert_eq!(bay.proof("wiring").await.state, State::Stops);
    assert_eq!(bay.proof("clearances").await.state, State::Met);
    let first = checklist(&bay).await;

    bay.shop.clock.advance(Duration::hours(3));
    let vera = bay.shop.signatory().await;
    let entry = bay.file().await.entry("checklist", "").unwrap().id.to_string();
    let mended = [
        ("replaces_id", entry.as_str()),
        ("replaces_reason", "fuse fitted"),
        ("answers[wire-fuse][answer]", "pass"),
        ("answers[wire-fuse][note]", ""),
    ];
    vera.post(&at, &pairs(&with(failing, &mended))).await.goes_to();
    let second = checklist(&bay).await;
    assert_eq!(first["clear-exhaust"], second["clear-exhaust"], "unchanged: first initials and time");
    assert_eq!(second["wire-fuse"].answer, CheckAnswer::Pass);
    assert_ne!(first["wire-fuse"].initials, second["wire-fuse"].initials);
    assert!(second["wire-fuse"].at > first["wire-fuse"].at);
    assert_eq!(bay.proof("wiring").await.state, State::Met);
}

async fn checklist(bay: &Bay) -> std::collections::BTreeMap<String, fuelwright::model::evidence::ItemAnswer> {
    match &bay.file().await.entry("checklist", "").unwrap().body {
        Evidence::Checklist(one) => one.answers.clone(),
        other => panic!("{other:?}"),
    }
}

#[tokio::test]
async fn a_reckoned_level_needs_the_routine_explained() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("level-sensing"), bay.shop.technician().await);
    let when = ("measured_at", "2026-05-12T10:20");
    let page = jon.post(&at, &[when, ("how", "reckoned")]).await;
    page.is(422);
    jon.post(&at, &[when, ("how", "guessed"), ("is_routine_explained", "yes")]).await.is(422);
    jon.post(&at, &[when, ("how", "reckoned"), ("is_routine_explained", "no")]).await.goes_to();
    assert_eq!(bay.proof("level-sensing").await.state, State::Missing);
    let entry = bay.file().await.entry("level-sensing", "").unwrap().id.to_string();
    let again = [
        when,
        ("how", "reckoned"),
        ("is_routine_explained", "yes"),
        ("replaces_id", &entry),
        ("replaces_reason", "explained today"),
    ];
    jon.post(&at, &again).await.goes_to();
    assert_eq!(bay.proof("level-sensing").await.state, State::Met);
}
