//! Road comparison in the job file: logs are handed in, columns matched and remembered, the drive judged and accepted, the
//! proofs met; and each of the ways it can go wrong.

use axum::body::Body;
use axum::http::{Request, header};
use fuelwright::calc::road::CellVerdict;
use fuelwright::db::{self, Db};
use fuelwright::model::evidence::{Evidence, RoadComparison};
use fuelwright::model::road::{RoadSession, RoadState};
use fuelwright::rules::{self, RuleBook, RuleSet, State, embedded};
use time::{Duration, OffsetDateTime};
use uuid::Uuid;

use crate::job_support::Bay;
use crate::road_logs::{alike, both, lean_region, log};
use crate::support::{Browser, Page};

/// Field, name and content of a file.
type Sent<'a> = (&'a str, &'a str, &'a [u8]);

/// Hands files in at an address, with the fields of the form.
async fn hand_in(browser: &Browser, at: &str, fields: &[(&str, &str)], files: &[Sent<'_>]) -> Page {
    let mut body = Vec::new();
    let mut part = |head: String, content: &[u8]| {
        body.extend_from_slice(format!("--edge\r\nContent-Disposition: form-data; {head}\r\n\r\n").as_bytes());
        body.extend_from_slice(content);
        body.extend_from_slice(b"\r\n");
    };
    for (name, value) in fields {
        part(format!("name=\"{name}\""), value.as_bytes());
    }
    for (field, name, content) in files {
        part(format!("name=\"{field}\"; filename=\"{name}\"\r\nContent-Type: text/csv"), content);
    }
    body.extend_from_slice(b"--edge--\r\n");
    let request = Request::post(at)
        .header(header::CONTENT_TYPE, "multipart/form-data; boundary=edge")
        .header("sec-fetch-site", "same-origin");
    browser.send(request.body(Body::from(body)).unwrap()).await
}

/// Now, by the shop's clock on the wall.
fn now(bay: &Bay) -> String {
    let at = bay.shop.clock.now() + Duration::hours(1);
    format!("{}T{:02}:{:02}", at.date(), at.hour(), at.minute())
}

async fn sessions(bay: &Bay) -> Vec<RoadSession> {
    let mut con = bay.shop.shop.db.read().await.unwrap();
    db::road_sessions::list(&mut con, bay.shop.branch, bay.job).await.unwrap()
}

/// What the columns of the invented logs are.
fn matched<'a>(more: &[(&'a str, &'a str)]) -> Vec<(&'a str, &'a str)> {
    let usual = [
        ("columns[0][time_s]", "Time [s]"),
        ("columns[0][time_s_in]", "s"),
        ("columns[0][rpm]", "Engine speed [1/min]"),
        ("columns[0][rpm_in]", "rpm"),
        ("columns[0][manifold_kpa]", "MAP [kPa]"),
        ("columns[0][manifold_kpa_in]", "kPa"),
        ("columns[0][petrol_ms]", "Injection petrol [ms]"),
        ("columns[0][petrol_ms_in]", "ms"),
        ("columns[0][coolant_c]", "Coolant temp [°C]"),
        ("columns[0][coolant_c_in]", "°C"),
        ("opened_version", "1"),
    ];
    let kept = usual.into_iter().filter(|(name, _)| !more.iter().any(|(other, _)| other == name));
    kept.chain(more.iter().copied()).filter(|(_, value)| !value.is_empty()).collect()
}

/// Hands in two logs and gives the address of their columns.
async fn two_logs(bay: &Bay, browser: &Browser, phase: &str, petrol: &str, gas: &str) -> String {
    let fields = [("phase", phase), ("driven_at", &now(bay)), ("key", &Uuid::now_v7().to_string())];
    let files = [("log_petrol", "petrol.csv", petrol.as_bytes()), ("log_gas", "gas.csv", gas.as_bytes())];
    hand_in(browser, &bay.at("road"), &fields, &files).await.goes_to()
}

/// The shop asks for a road comparison.
fn asking() -> RuleBook {
    let shop = embedded("shop").unwrap();
    let taken = |line: &str| match line.strip_prefix("# ") {
        Some(rest) if rest == "[[proof]]" || rest.contains(" = ") => rest.to_owned(),
        _ => line.to_owned(),
    };
    let text = shop.lines().map(taken).collect::<Vec<_>>().join("\n");
    let mut book = RuleBook::shipped().unwrap();
    book.sets.retain(|set| set.name != "shop");
    book.sets.push(RuleSet::read(&text).unwrap());
    book
}

async fn proof(bay: &Bay, id: &str) -> rules::Proof {
    let file = bay.file().await;
    let day_of = |at: OffsetDateTime| at.date();
    let all = rules::assess(&file, &asking(), bay.shop.clock.now().date(), &day_of);
    all.into_iter().find(|proof| proof.id == id).unwrap_or_else(|| panic!("no proof {id}"))
}

#[tokio::test]
async fn a_drive_is_handed_in_matched_judged_and_accepted_and_its_proofs_are_met() {
    let bay = Bay::lpg().await;
    let jon = bay.shop.technician().await;
    assert_eq!(proof(&bay, "road-covered").await.state, State::Missing);
    jon.get(&bay.at("road")).await.is(200).says("Two logs, one on each fuel").hides("Drives so far");
    let columns = two_logs(&bay, &jon, "after", &log(false, 8, alike, false), &log(true, 8, alike, false)).await;

    // What looks likely is chosen already, with the first rows beside it.
    let page = jon.get(&columns).await;
    page.is(200).says("petrol.csv, on petrol as stated; gas.csv, on gas as stated").says("First rows");
    assert_eq!(page.field("columns[0][rpm]").as_deref(), Some("Engine speed [1/min]"));
    assert_eq!(page.field("columns[0][manifold_kpa_in]").as_deref(), Some("kPa"));

    // Wrong, explained, kept.
    let wrong = [("columns[0][rpm]", ""), ("columns[0][manifold_kpa]", "Time [s]")];
    let page = jon.post(&columns, &matched(&wrong)).await;
    page.is(422).says("stands for something else already");
    assert_eq!(page.field("columns[0][petrol_ms]").as_deref(), Some("Injection petrol [ms]"));
    let swapped = [
        ("columns[0][rpm]", "MAP [kPa]"),
        ("columns[0][manifold_kpa]", ""),
        ("columns[0][petrol_ms]", "Engine speed [1/min]"),
    ];
    jon.post(&columns, &matched(&swapped)).await.is(422).says("Another unit, or another column");
    assert_eq!(sessions(&bay).await[0].state(), RoadState::Kept, "nothing is kept of what was refused");

    // Mended, saved, sent twice.
    let key = Uuid::now_v7().to_string();
    let fields = matched(&[("key", key.as_str())]);
    let there = jon.post(&columns, &fields).await.goes_to();
    assert_eq!(jon.post(&columns, &fields).await.goes_to(), there, "a double tap is one comparison");
    let page = jon.get(&there).await;
    page.is(200).says("Alike on both fuels").says("Fuel stated, not logged").says("Operating points");
    page.says("Closed loop was not logged");
    assert_eq!(bay.entries("road").await, 0, "nothing is evidence yet");
    let one = sessions(&bay).await.remove(0);
    let found = one.comparison.clone().unwrap();
    assert!(found.cells.iter().filter(|cell| cell.verdict == CellVerdict::Good).count() >= 8, "{found:?}");

    let accept = format!("{there}/acceptance");
    let version = one.version.to_string();
    jon.post(&accept, &[("opened_version", version.as_str())]).await.goes_to();
    assert_eq!(bay.entries("road").await, 1);
    assert_eq!(sessions(&bay).await[0].state(), RoadState::Accepted);
    assert_eq!(proof(&bay, "road-covered").await.state, State::Met, "{:?}", proof(&bay, "road-covered").await);
    assert_eq!(proof(&bay, "road-alike").await.state, State::Met);
    jon.get(&there).await.says("Accepted as evidence").hides("Accept in the place");
    let stage = jon.get(&bay.at("stages/calibration")).await;
    stage.says("Road comparison").says("Alike on both fuels").says("petrol.csv, SHA-256");

    // The evidence stands by itself: logs with their checksums, the plan, how the fuel is known.
    let file = bay.file().await;
    let Evidence::RoadComparison(RoadComparison { logs, comparison, .. }) = &file.entry("road", "").unwrap().body
    else {
        panic!("no comparison");
    };
    assert_eq!(logs.iter().map(|log| log.name.as_str()).collect::<Vec<_>>(), ["petrol.csv", "gas.csv"]);
    assert_eq!(logs[0].sha256, fuelwright::attachments::sha256_of(log(false, 8, alike, false).as_bytes()));
    assert_eq!(comparison.plan.visits, 6);
    // A log is handed out whole, and only to be saved.
    let kept = jon.get(&format!("/attachments/{}", one.logs[0].file.id)).await;
    kept.is(200);
    assert_eq!(kept.bytes, log(false, 8, alike, false).into_bytes());
    assert!(kept.headers[header::CONTENT_DISPOSITION].to_str().unwrap().starts_with("attachment;"));
}

#[tokio::test]
async fn columns_said_once_are_remembered_for_logs_laid_out_alike_and_for_this_branch() {
    let bay = Bay::lpg().await;
    let jon = bay.shop.technician().await;
    let columns = two_logs(&bay, &jon, "before", &log(false, 7, alike, false), &log(true, 7, alike, false)).await;
    // Said otherwise than suggested: coolant stays out.
    let fields = matched(&[("columns[0][coolant_c]", ""), ("columns[0][coolant_c_in]", "")]);
    jon.post(&columns, &fields).await.goes_to();
    let again = two_logs(&bay, &jon, "after", &log(false, 6, alike, false), &log(true, 6, alike, false)).await;
    let page = jon.get(&again).await;
    assert_eq!(page.field("columns[0][coolant_c]"), None, "as it was said, not as it looks");
    assert_eq!(page.field("columns[0][rpm]").as_deref(), Some("Engine speed [1/min]"));
}

#[tokio::test]
async fn a_lean_region_is_named_with_its_correction_which_the_calibration_takes_over() {
    let bay = Bay::lpg().await;
    let jon = bay.shop.technician().await;
    let columns =
        two_logs(&bay, &jon, "before", &log(false, 8, lean_region, false), &log(true, 8, lean_region, false)).await;
    let there = jon.post(&columns, &matched(&[])).await.goes_to();
    let page = jon.get(&there).await;
    page.is(200).says("Gas differs from petrol").says("Gas lean").says("What to correct");
    let form = jon.get(&format!("{there}/corrections")).await;
    form.is(200).says("Corrections by region");
    let region = form.field("regions[0][region]").unwrap();
    assert!(region.contains("kPa") && region.contains("/min"), "{region}");
    let version = sessions(&bay).await[0].version.to_string();
    jon.post(&format!("{there}/acceptance"), &[("opened_version", version.as_str())]).await.goes_to();
    let alike_proof = proof(&bay, "road-alike").await;
    assert_eq!((alike_proof.state, alike_proof.why.key), (State::Stops, "road-lean"));

    // Corrected and driven again: before and after side by side, and a reason for the new evidence.
    let columns = two_logs(&bay, &jon, "after", &log(false, 8, alike, false), &log(true, 8, alike, false)).await;
    let after = jon.post(&columns, &matched(&[])).await.goes_to();
    jon.get(&after).await.says("Before and after").says("Accept in the place of the one accepted before");
    let current = bay.file().await.entry("road", "").unwrap().id.to_string();
    let version = sessions(&bay).await[1].version.to_string();
    let accept = format!("{after}/acceptance");
    let fields = [("opened_version", version.as_str()), ("replaces_id", current.as_str())];
    jon.post(&accept, &fields).await.is(422);
    let fields = [fields[0], fields[1], ("replaces_reason", "corrected, driven again")];
    jon.post(&accept, &fields).await.goes_to();
    assert_eq!(proof(&bay, "road-alike").await.state, State::Met);
    jon.get(&there).await.says("another drive took its place");
}

#[tokio::test]
async fn too_little_driving_says_what_to_drive() {
    let bay = Bay::lpg().await;
    let jon = bay.shop.technician().await;
    let columns = two_logs(&bay, &jon, "after", &log(false, 0, alike, false), &log(true, 0, alike, false)).await;
    let there = jon.post(&columns, &matched(&[])).await.goes_to();
    jon.get(&there).await.says("Cannot tell yet").says("What to drive next").says("more visits at");
    let version = sessions(&bay).await[0].version.to_string();
    jon.post(&format!("{there}/acceptance"), &[("opened_version", version.as_str())]).await.goes_to();
    let covered = proof(&bay, "road-covered").await;
    assert_eq!((covered.state, covered.why.key), (State::Undecided, "road-few-cells-drive"));
}

#[tokio::test]
async fn one_log_needs_a_fuel_column_that_says_both() {
    let bay = Bay::lpg().await;
    let jon = bay.shop.technician().await;
    let at = now(&bay);
    let fields = [("phase", "after"), ("driven_at", at.as_str())];
    let text = both(8, alike);
    let columns = hand_in(&jon, &bay.at("road"), &fields, &[("log_both", "both.csv", text.as_bytes())]).await.goes_to();
    jon.post(&columns, &matched(&[])).await.is(422);
    let fuel = [("columns[0][fuel]", "Fuel"), ("columns[0][gas_words]", "LPG")];
    let there = jon.post(&columns, &matched(&fuel)).await.goes_to();
    jon.get(&there).await.says("Alike on both fuels").says("Which fuel burned is logged");

    let text = log(false, 8, alike, true);
    let columns = hand_in(&jon, &bay.at("road"), &fields, &[("log_both", "one.csv", text.as_bytes())]).await.goes_to();
    let page = jon.post(&columns, &matched(&fuel)).await;
    page.is(422).says("says on petrol for every row");
    assert_eq!(page.field("columns[0][gas_words]").as_deref(), Some("LPG"));
}

#[tokio::test]
async fn logs_that_cannot_be_read_or_stand_together_are_refused_and_nothing_is_kept() {
    let bay = Bay::lpg().await;
    let jon = bay.shop.technician().await;
    let (at, petrol, moment) = (bay.at("road"), log(false, 1, alike, false), now(&bay));
    let fields = [("phase", "after"), ("driven_at", moment.as_str())];
    let file = |field, content| (field, "a.csv", content);
    let whole = petrol.as_bytes();
    let tried: [(&[Sent<'_>], &str); 6] = [
        (&[], "No file is chosen"),
        (&[file("log_petrol", whole)], "The other one is missing"),
        (&[file("log_petrol", whole), file("log_gas", whole)], "Both logs are the same file"),
        (&[file("log_petrol", whole), file("log_gas", b"")], "is empty"),
        (&[file("log_petrol", whole), file("log_gas", b"\xff\xd8\xff\xe0 no table\n")], "holds no table"),
        (&[file("log_petrol", whole), file("log_both", whole)], "not all of them"),
    ];
    for (files, says) in tried {
        let page = hand_in(&jon, &at, &fields, files).await;
        page.is(422);
        page.says(says);
        assert_eq!(page.field("driven_at").as_deref(), Some(moment.as_str()));
    }
    let future = [("phase", "after"), ("driven_at", "2031-01-01T10:00")];
    hand_in(&jon, &at, &future, &[file("log_both", whole)]).await.is(422);
    assert!(sessions(&bay).await.is_empty());
    let mut con = bay.shop.shop.db.read().await.unwrap();
    assert!(db::attachments::list(&mut con, bay.job).await.unwrap().is_empty());
    let folder = bay.shop.shop.db.folder().join("attachments");
    let left = std::fs::read_dir(folder).map_or(0, Iterator::count);
    assert_eq!(left, 0, "no half file is left");
}

#[tokio::test]
async fn logs_sent_twice_under_one_key_are_one_drive() {
    let bay = Bay::lpg().await;
    let jon = bay.shop.technician().await;
    let (moment, key) = (now(&bay), Uuid::now_v7().to_string());
    let fields = [("phase", "before"), ("driven_at", moment.as_str()), ("key", key.as_str())];
    let (petrol, gas) = (log(false, 1, alike, false), log(true, 1, alike, false));
    let files = [("log_petrol", "p.csv", petrol.as_bytes()), ("log_gas", "g.csv", gas.as_bytes())];
    let first = hand_in(&jon, &bay.at("road"), &fields, &files).await.goes_to();
    assert_eq!(hand_in(&jon, &bay.at("road"), &fields, &files).await.goes_to(), first);
    assert_eq!(sessions(&bay).await.len(), 1);
}

#[tokio::test]
async fn who_matches_or_accepts_over_somebody_else_is_told_and_loses_nothing() {
    let bay = Bay::lpg().await;
    let (jon, vera) = (bay.shop.technician().await, bay.shop.signatory().await);
    let columns = two_logs(&bay, &jon, "after", &log(false, 7, alike, false), &log(true, 7, alike, false)).await;
    let there = vera.post(&columns, &matched(&[])).await.goes_to();
    // Opened at version 1, as the other.
    let page = jon.post(&columns, &matched(&[])).await;
    page.is(422).says("said what the columns are");
    assert_eq!(page.field("opened_version").as_deref(), Some("2"));
    jon.post(&columns, &matched(&[("opened_version", "2")])).await.goes_to();

    let accept = format!("{there}/acceptance");
    vera.post(&accept, &[("opened_version", "3")]).await.goes_to();
    jon.post(&accept, &[("opened_version", "3")]).await.is(422).says("Somebody accepted or read a drive meanwhile");
    assert_eq!(bay.entries("road").await, 1);
}

#[tokio::test]
async fn a_drive_of_another_branch_is_not_there() {
    let bay = Bay::lpg().await;
    let jon = bay.shop.technician().await;
    let columns = two_logs(&bay, &jon, "after", &log(false, 1, alike, false), &log(true, 1, alike, false)).await;
    let there = columns.replace("/columns", "");
    let pages = [columns.clone(), bay.at("road")];
    for at in &pages {
        jon.get(at).await.is(200);
    }
    bay.shop.person_of_another_branch().await;
    let mut tx = bay.shop.shop.db.write().await.unwrap();
    for table in ["jobs", "road_sessions"] {
        let moved = match table {
            "jobs" => "update jobs set branch_id = (select id from branches where name = 'Harbour Branch')",
            _ => "update road_sessions set branch_id = (select id from branches where name = 'Harbour Branch')",
        };
        sqlx::query::<Db>(moved).execute(&mut *tx).await.unwrap();
    }
    tx.commit().await.unwrap();
    for at in pages.iter().chain([&there]) {
        jon.get(at).await.is(404);
    }
    jon.post(&columns, &matched(&[])).await.is(404);
    jon.post(&format!("{there}/acceptance"), &[("opened_version", "1")]).await.is(404);
}
