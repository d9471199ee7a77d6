//! The other three causes of doubt, each by the forms: evidence corrected under a paper, parts recalled, a rule line changed.

use fuelwright::db;
use fuelwright::db::Db;
use fuelwright::model::evidence::{Evidence, NewEvidence};
use fuelwright::model::message::MessageKind;
use fuelwright::rules::embedded;
use time::Duration;

use crate::findings_instrument::{Issued, issued};
use crate::support::PASSWORD;

/// Corrects the exhaust on gas: raised idle showed this CO.
async fn correct_exhaust(issued: &Issued, co_percent: f64) {
    let mut con = issued.open.shop.db.read().await.unwrap();
    let file = db::job_files::find(&mut con, issued.open.branch, issued.told.job).await.unwrap().unwrap();
    drop(con);
    let entry = file.entry("exhaust", "gas").unwrap();
    let Evidence::Exhaust(seen) = &entry.body else { panic!() };
    let mut seen = seen.clone();
    seen.raised.co_percent = co_percent;
    let new = NewEvidence {
        body: Evidence::Exhaust(seen),
        measured_at: Some(entry.measured_at),
        replaces_id: Some(entry.id),
        replaces_reason: "Two figures were swapped".into(),
        instruments: entry.instruments.clone(),
        attachments: Vec::new(),
    };
    issued.open.shop.record_evidence(&issued.told.jon, None, issued.told.job, new).await.unwrap();
    issued.open.clock.advance(Duration::minutes(1));
}

#[tokio::test]
async fn evidence_corrected_under_a_paper_is_reckoned_from_the_correction_and_decided() {
    let issued = issued().await;
    correct_exhaust(&issued, 0.08).await;
    issued.stands("Under review").await;
    let (jon, vera, finding) = (issued.open.technician().await, issued.open.signatory().await, issued.finding().await);
    let page = jon.get(&finding).await;
    page.says("Two figures were swapped").says("Still holds: 1. In doubt: 0. Fails: 0.").says("0.05").says("0.08");
    page.hides("Enter the error");
    correct_exhaust_finding_stays(&issued, &finding).await;
    let stands = [("paper_decision", "stands"), ("reason", "Passes either way"), ("password", PASSWORD)];
    vera.post(&issued.paper_at(&finding), &stands).await.goes_to();
    issued.stands("Valid").await;
    jon.post(&format!("{finding}/decision"), &[("decision", "Form checked")]).await.goes_to();
    let paper = issued.report(&finding, "finding-corrected").await;
    for said in ["Evidence corrected under a paper", "Passes either way", "0.05", "0.08", "Form checked"] {
        paper.says(said);
    }
}

/// An open finding of a paper does not keep its job's superseding certificate back.
async fn correct_exhaust_finding_stays(issued: &Issued, finding: &str) {
    let mut con = issued.open.shop.db.read().await.unwrap();
    let file = db::job_files::find(&mut con, issued.open.branch, issued.told.job).await.unwrap().unwrap();
    assert!(file.findings.is_empty(), "{finding} is no finding of the job");
}

#[tokio::test]
async fn a_correction_that_fails_says_so_and_a_superseding_paper_needs_no_decision() {
    let issued = issued().await;
    correct_exhaust(&issued, 0.9).await;
    let (jon, finding) = (issued.open.technician().await, issued.finding().await);
    jon.get(&finding).await.says("Fails: 1").says("It does not pass any more");
    // The vehicle is put right and measured again; the paper is superseded, and nothing waits.
    correct_exhaust_again(&issued).await;
    let vera = issued.open.actor(issued.open.vera).await;
    let new = fuelwright::shop::issue::NewIssue {
        supersedes: Some((issued.paper, "measured again".into())),
        ..crate::told::seen()
    };
    let second = issued.open.shop.issue_certificate(&vera, None, issued.told.job, new).await.unwrap();
    let second = issued.open.shop.find_paper(issued.open.branch, second).await.unwrap().unwrap();
    assert_eq!(second.standing, fuelwright::seal::standing::Standing::Valid, "it rests on the correction");
    let page = jon.get(&finding).await;
    page.says("Superseded");
}

async fn correct_exhaust_again(issued: &Issued) {
    correct_exhaust(issued, 0.06).await;
    let mut con = issued.open.shop.db.read().await.unwrap();
    let open = db::findings::list_open(&mut con, issued.open.branch).await.unwrap();
    drop(con);
    assert_eq!(open.len(), 1, "the finding of the first correction follows to the last");
}

fn recall<'a>(rest: &[(&'a str, &'a str)]) -> Vec<(&'a str, &'a str)> {
    let usual = [
        ("recalled_by", "Tarnwell Vessels"),
        ("document", "Notice TW-7"),
        ("dated_on", "2026-05-11"),
        ("category", "container"),
        ("remedy", "Drive on petrol until the container is changed."),
    ];
    usual.into_iter().chain(rest.iter().copied()).collect()
}

#[tokio::test]
async fn a_recalled_container_stops_papers_is_written_about_once_and_ends_with_its_duty() {
    let issued = issued().await;
    let (jon, mara, vera) = (issued.open.technician().await, issued.open.desk().await, issued.open.signatory().await);
    let page = jon.post("/findings/recalls", &recall(&[])).await;
    page.is(422).says("Name the maker, the type, the batch or the serials");
    assert_eq!(page.field("remedy").as_deref(), Some("Drive on petrol until the container is changed."));
    jon.post("/findings/recalls", &recall(&[("serial_from", "T-118300"), ("serial_to", "T-118999")])).await.goes_to();
    let other = issued.finding().await;
    jon.get(&other).await.says("Nothing that was recorded rests on it");
    issued.stands("Valid").await;
    jon.post(&format!("{other}/decision"), &[("decision", "None of ours")]).await.goes_to();

    let at = jon.post("/findings/recalls", &recall(&[("serial_from", "T-118200"), ("serial_to", "T-118299")])).await;
    let finding = at.goes_to();
    issued.stands("Under review").await;
    let page = jon.get(&finding).await;
    page.says("Tarnwell Vessels")
        .says("serials T-118200 to T-118299")
        .says("T-118204")
        .says("NM 47 KTR")
        .says("Fails: 1");
    page.says("One keeper is not written to yet");
    jon.post(&format!("{finding}/letters"), &[]).await.is(403);
    mara.post(&format!("{finding}/letters"), &[]).await.goes_to();
    mara.post(&format!("{finding}/letters"), &[]).await.goes_to();
    let letters = issued.letters(MessageKind::Recall).await;
    assert_eq!(letters.len(), 1, "once a vehicle, whatever is pressed twice");
    for said in ["NM 47 KTR", "Notice TW-7", "Drive on petrol until", "whether or not you agreed to reminders"] {
        assert!(letters[0].body_text.contains(said), "{said}: {}", letters[0].body_text);
    }
    mara.get(&finding).await.says("Every keeper of such a vehicle has been written to");
    mara.get("/due").await.says("Recall").says("NM 47 KTR");

    // No certificate goes out over a recalled part, and nobody waives that.
    let state = not_recalled(&issued).await;
    assert_eq!(state, (fuelwright::rules::State::Stops, "part-recalled"));
    let actor = issued.open.actor(issued.open.vera).await;
    let waiver = fuelwright::shop::waivers::NewWaiver {
        proof: "not-recalled".into(),
        kind: fuelwright::model::job::WaiverKind::Waived,
        reason: "please".into(),
    };
    let refused = issued.open.shop.waive_proof(&actor, None, issued.told.job, waiver).await;
    assert!(matches!(refused, Err(fuelwright::shop::Refusal::MayNot("refused-never-waived"))), "{refused:?}");

    let duty: String = sqlx::query_scalar::<Db, String>("select id from duties where kind = 'recall'")
        .fetch_one(&mut *issued.open.shop.db.read().await.unwrap())
        .await
        .unwrap();
    let elsewhere =
        [("how", "elsewhere"), ("met_on", "2026-05-12"), ("note", "Changed by Marram Gas, exchange note 5")];
    mara.post(&format!("/due/{duty}/closing"), &elsewhere).await.goes_to();
    assert_eq!(not_recalled(&issued).await, (fuelwright::rules::State::Met, "nothing-recalled"));

    let withdrawn = [("paper_decision", "withdrawn"), ("reason", "The container is recalled"), ("password", PASSWORD)];
    vera.post(&issued.paper_at(&finding), &withdrawn).await.goes_to();
    jon.post(&format!("{finding}/decision"), &[("decision", "All vehicles seen to")]).await.goes_to();
    let paper = issued.report(&finding, "finding-recall").await;
    for said in ["Recalled part", "Notice TW-7", "T-118204", "The container is recalled", "All vehicles seen to"] {
        paper.says(said);
    }
}

#[tokio::test]
async fn closing_the_finding_of_a_recall_does_not_let_the_part_off() {
    let issued = issued().await;
    let (jon, vera) = (issued.open.technician().await, issued.open.signatory().await);
    let finding = jon.post("/findings/recalls", &recall(&[("serial_from", "T-118204")])).await.goes_to();
    let stands = [("paper_decision", "stands"), ("reason", "Tested, tight"), ("password", PASSWORD)];
    vera.post(&issued.paper_at(&finding), &stands).await.goes_to();
    jon.post(&format!("{finding}/decision"), &[("decision", "Written to")]).await.goes_to();
    assert_eq!(not_recalled(&issued).await, (fuelwright::rules::State::Stops, "part-recalled"));
}

async fn not_recalled(issued: &Issued) -> (fuelwright::rules::State, &'static str) {
    let mut con = issued.open.shop.db.read().await.unwrap();
    let file = db::job_files::find(&mut con, issued.open.branch, issued.told.job).await.unwrap().unwrap();
    let book = fuelwright::rules::RuleBook::shipped().unwrap();
    let today = issued.open.clock.now().date();
    let proofs = fuelwright::rules::assess(&file, &book, today, &|at| at.date());
    let proof = proofs.into_iter().find(|proof| proof.id == "not-recalled").unwrap();
    (proof.state, proof.why.key)
}

#[tokio::test]
async fn lines_of_the_shop_that_change_today_put_in_doubt_what_they_judge_differently() {
    let issued = issued().await;
    let manager = issued.open.manager().await;
    let text = embedded("shop").unwrap();
    // A line that judges nothing differently opens nothing.
    let same = [("text", text), ("from_on", "2026-05-12"), ("then", "save")];
    manager.post("/office/rules/shop", &same).await.goes_to();
    issued.stands("Valid").await;
    let latest = manager.get("/office/rules/shop").await.field("opened").unwrap_or_default();
    issued.open.clock.advance(Duration::minutes(1));
    let stricter = format!(
        "{text}\n[[limit]]\nid = \"shop-raised-co\"\nquantity = \"raised-co-percent\"\nmost = 0.04\ncatalyst = true\nsource = \"shop\"\nchecked = true\n"
    );
    let fields =
        [("text", stricter.as_str()), ("from_on", "2026-05-12"), ("opened", latest.as_str()), ("then", "save")];
    manager.post("/office/rules/shop", &fields).await.goes_to();
    issued.stands("Under review").await;
    let (jon, vera, finding) = (issued.open.technician().await, issued.open.signatory().await, issued.finding().await);
    // Written as 0.05 %, which passed 0.2 % and does not pass 0.04 %.
    let page = jon.get(&finding).await;
    page.says("Rule line changed").says("at most 0.20").says("at most 0.04").says("Fails: 2");
    let stands = [("paper_decision", "stands"), ("reason", "It was right on its day"), ("password", PASSWORD)];
    vera.post(&issued.paper_at(&finding), &stands).await.goes_to();
    issued.stands("Valid").await;
    jon.post(&format!("{finding}/decision"), &[("decision", "Counts for what comes")]).await.goes_to();
    issued.report(&finding, "finding-lines").await.says("It was right on its day");
}

#[tokio::test]
async fn a_line_of_a_set_is_named_by_hand_with_its_first_day() {
    let issued = issued().await;
    let (manager, jon) = (issued.open.manager().await, issued.open.technician().await);
    jon.get("/findings/rule-lines/new").await.is(403);
    let line = |line: &'static str, on: &'static str| {
        [("rule_line", line), ("rule_from_on", on), ("text", "The limit of CO was set anew by the authority")]
    };
    manager.post("/findings/rule-lines", &line("no-such-line", "2026-05-12")).await.is(422);
    manager.post("/findings/rule-lines", &line("exh.cat.new.raised", "2030-05-12")).await.is(422);
    let at = manager.post("/findings/rule-lines", &line("exh.cat.new.raised", "2026-05-12")).await.goes_to();
    // Without it the line of the branch's country would be left, which nobody read: within it is no pass yet.
    let page = manager.get(&at).await;
    page.says("exh.cat.new.raised").says("at most 0.30 %, cannot tell").says("at most 0.20").says("Still holds: 2");
    issued.stands("Under review").await;
    manager.get("/findings").await.says("The limit of CO was set anew");
}

#[tokio::test]
async fn a_finding_of_another_branch_is_not_there() {
    let issued = issued().await;
    issued.fail_analyser().await;
    let finding = issued.finding().await;
    let mut tx = issued.open.shop.db.write().await.unwrap();
    sqlx::query::<Db>(
        "insert into branches (id, name, address, phone, mail, licence_number, country, time_zone, currency, language,
             paper_size)
         values ('01890a5d-ac96-774b-bcce-b302099a8057', 'Far', 'Far', '1', 'far@example.org', '', 'GB',
             'Europe/London', 'GBP', 'en', 'a4')",
    )
    .execute(&mut *tx)
    .await
    .unwrap();
    sqlx::query::<Db>("update findings set branch_id = '01890a5d-ac96-774b-bcce-b302099a8057'")
        .execute(&mut *tx)
        .await
        .unwrap();
    tx.commit().await.unwrap();
    let vera = issued.open.signatory().await;
    vera.get(&finding).await.is(404);
    vera.get(&format!("{finding}/report")).await.is(404);
    vera.get(&issued.paper_at(&finding)).await.is(404);
}
