//! Certificates: refused while something is missing, issued once, signed, verified, replaced, withdrawn.

use fuelwright::db;
use fuelwright::model::evidence::{Evidence, LeakJoints, LeakMethod, NewEvidence, Section};
use fuelwright::papers;
use fuelwright::rules::{self, RuleBook, State};
use fuelwright::seal::standing::Standing;
use fuelwright::seal::{KeyRing, Sealed};
use fuelwright::shop::Refusal;
use fuelwright::shop::issue::{NewIssue, Verified, verify};
use uuid::Uuid;

use crate::support::TestShop;
use crate::told::Opened;

async fn open_proofs(open: &TestShop, told: &Opened) -> Vec<String> {
    let mut con = open.shop.db.read().await.unwrap();
    let file = db::job_files::find(&mut con, open.branch, told.job).await.unwrap().unwrap();
    let book = RuleBook::shipped().unwrap();
    let today = open.clock.now().date();
    let proofs = rules::assess(&file, &book, today, &|at| at.date());
    let open = proofs.iter().filter(|proof| proof.state != State::Met);
    open.map(|proof| format!("{}: {:?} {:?}", proof.id, proof.state, proof.why)).collect()
}

#[tokio::test]
async fn a_told_conversion_meets_every_proof() {
    let open = TestShop::open().await;
    let told = open.told().await;
    assert_eq!(open_proofs(&open, &told).await, Vec::<String>::new());
}

#[tokio::test]
async fn a_certificate_is_refused_while_proofs_are_missing_and_names_them() {
    let open = TestShop::open().await;
    let told = open.opened().await;
    let vera = open.actor(open.vera).await;
    let refused = open.shop.issue_certificate(&vera, None, told.job, crate::told::seen()).await;
    let Err(Refusal::Missing(missing)) = refused else { panic!("{refused:?}") };
    assert!(missing.contains(&"proof-leak-lpg-liquid".to_owned()), "{missing:?}");
    let mut con = open.shop.db.read().await.unwrap();
    assert_eq!(db::numbers::peek(&mut con, open.branch, "conversion").await.unwrap(), 1, "a refusal takes no number");
}

#[tokio::test]
async fn only_a_signatory_in_date_issues() {
    let open = TestShop::open().await;
    let told = open.told().await;
    let refused = open.shop.issue_certificate(&told.jon, None, told.job, crate::told::seen()).await;
    assert!(matches!(refused, Err(Refusal::MayNot("refused-signatory-only"))), "{refused:?}");
}

#[tokio::test]
async fn a_certificate_is_refused_while_a_photo_was_not_looked_at() {
    let open = TestShop::open().await;
    let told = open.told().await;
    let vera = open.actor(open.vera).await;
    for seen in [&[][..], &["odometer", "vin-plate"], &["odometer", "container-plate", "engine"]] {
        let refused = open.shop.issue_certificate(&vera, None, told.job, NewIssue::seen(seen)).await;
        assert!(matches!(refused, Err(Refusal::MayNot("refused-photos-not-seen"))), "{seen:?}: {refused:?}");
    }
    open.shop.issue_certificate(&vera, None, told.job, crate::told::seen()).await.unwrap();
}

#[tokio::test]
async fn an_issued_certificate_is_genuine_in_its_pdf_and_a_flipped_byte_is_not() {
    let open = TestShop::open().await;
    let told = open.told().await;
    let vera = open.actor(open.vera).await;
    let id = open.shop.issue_certificate(&vera, None, told.job, crate::told::seen()).await.unwrap();
    let found = open.shop.find_paper(open.branch, id).await.unwrap().unwrap();
    assert_eq!(found.paper.number, "C-2026-0001");
    assert_eq!(found.standing, Standing::Valid);
    let pdf = open.shop.issued_pdf(&found.paper).await.unwrap();
    let json = papers::embedded(&pdf).unwrap().unwrap();
    let ring = {
        let mut con = open.shop.db.read().await.unwrap();
        open.shop.key_ring(&mut con).await.unwrap()
    };
    let sealed = Sealed::from_json(&json).unwrap();
    let Ok(Verified::Genuine(content)) = verify(&sealed, &ring) else { panic!("not genuine") };
    assert_eq!(content.number, "C-2026-0001");
    assert_eq!(content.vehicle.plate, "NM 47 KTR");
    let text = String::from_utf8(json).unwrap();
    assert!(!text.contains("Marrow"), "the keeper's name is not in the signed content");
    let forged = text.replacen("NM 47 KTR", "NM 48 KTR", 1);
    assert!(verify(&Sealed::from_json(forged.as_bytes()).unwrap(), &ring).is_err());
    let stranger = verify(&sealed, &KeyRing::new());
    assert!(matches!(stranger, Ok(Verified::UnknownKey(_))), "{stranger:?}");
}

#[tokio::test]
async fn the_same_form_sent_twice_issues_once_and_a_second_paper_is_refused() {
    let open = TestShop::open().await;
    let told = open.told().await;
    let vera = open.actor(open.vera).await;
    let key = Some(Uuid::now_v7());
    let first = open.shop.issue_certificate(&vera, key, told.job, crate::told::seen()).await.unwrap();
    let again = open.shop.issue_certificate(&vera, key, told.job, crate::told::seen()).await.unwrap();
    assert_eq!(first, again);
    let second = open.shop.issue_certificate(&vera, Some(Uuid::now_v7()), told.job, crate::told::seen()).await;
    assert!(matches!(second, Err(Refusal::MayNot("refused-issued-already"))), "{second:?}");
}

#[tokio::test]
async fn a_replaced_paper_is_superseded_and_chained_and_a_withdrawn_one_says_so() {
    let open = TestShop::open().await;
    let told = open.told().await;
    let vera = open.actor(open.vera).await;
    let first = open.shop.issue_certificate(&vera, None, told.job, crate::told::seen()).await.unwrap();
    let new = NewIssue { supersedes: Some((first, "engine number was missing".into())), ..crate::told::seen() };
    let second = open.shop.issue_certificate(&vera, None, told.job, new).await.unwrap();
    let old = open.shop.find_paper(open.branch, first).await.unwrap().unwrap();
    let new = open.shop.find_paper(open.branch, second).await.unwrap().unwrap();
    assert_eq!(old.standing, Standing::Superseded);
    assert_eq!(new.paper.number, "C-2026-0002");
    assert_eq!(new.content.supersedes.as_ref().unwrap().number, "C-2026-0001");
    assert_eq!(new.content.previous_sha256, fuelwright::seal::sha256_hex(&old.paper.content));
    open.shop.withdraw_certificate(&vera, None, second, "wrong vehicle".into()).await.unwrap();
    let withdrawn = open.shop.find_by_code(&new.paper.code).await.unwrap().unwrap();
    assert_eq!(withdrawn.standing, Standing::Withdrawn);
    let list = open.shop.standing_list(open.branch).await.unwrap();
    let text = String::from_utf8(list.content().to_vec()).unwrap();
    assert!(text.contains("withdrawn") && text.contains("superseded"), "{text}");
}

#[tokio::test]
async fn a_paper_has_one_successor_and_a_withdrawn_one_none() {
    let open = TestShop::open().await;
    let told = open.told().await;
    let vera = open.actor(open.vera).await;
    let first = open.shop.issue_certificate(&vera, None, told.job, crate::told::seen()).await.unwrap();
    let replacing =
        |old| NewIssue { supersedes: Some((old, "engine number was missing".into())), ..crate::told::seen() };
    let second = open.shop.issue_certificate(&vera, None, told.job, replacing(first)).await.unwrap();
    let again = open.shop.issue_certificate(&vera, None, told.job, replacing(first)).await;
    assert!(matches!(again, Err(Refusal::Ended("refused-paper-ended"))), "{again:?}");

    open.shop.withdraw_certificate(&vera, None, second, "wrong vehicle".into()).await.unwrap();
    let again = open.shop.issue_certificate(&vera, None, told.job, replacing(second)).await;
    assert!(matches!(again, Err(Refusal::Ended("refused-paper-ended"))), "{again:?}");
    let handed_over = open.shop.hand_over(&told.jon, None, told.job).await;
    assert!(matches!(handed_over, Err(Refusal::MayNot("refused-no-certificate"))), "{handed_over:?}");
    // Nothing stands any more, so a fresh one may be issued.
    open.shop.issue_certificate(&vera, None, told.job, crate::told::seen()).await.unwrap();
}

#[tokio::test]
async fn a_corrected_leak_test_takes_the_proof_away_again() {
    let open = TestShop::open().await;
    let told = open.told().await;
    let mut con = open.shop.db.read().await.unwrap();
    let file = db::job_files::find(&mut con, open.branch, told.job).await.unwrap().unwrap();
    let before = file.entry("leak-joints", "lpg-liquid").unwrap();
    let Evidence::LeakJoints(test) = &before.body else { panic!() };
    let mut joints = test.joints.clone();
    joints[0].verdict = fuelwright::model::evidence::JointVerdict::Leaks;
    let correction = NewEvidence {
        body: Evidence::LeakJoints(LeakJoints {
            section: Section::LpgLiquid,
            method: LeakMethod::Foam,
            joints,
            ..test.clone()
        }),
        measured_at: None,
        replaces_id: Some(before.id),
        replaces_reason: "looked again in better light".into(),
        instruments: Vec::new(),
        attachments: Vec::new(),
    };
    open.shop.record_evidence(&told.jon, None, told.job, correction).await.unwrap();
    let open_now = open_proofs(&open, &told).await;
    assert_eq!(open_now.len(), 1, "{open_now:?}");
    assert!(open_now[0].starts_with("leak-lpg-liquid: Stops"), "{open_now:?}");
}

#[tokio::test]
async fn many_issues_at_once_leave_no_gap_and_no_double() {
    let open = TestShop::open().await;
    let vera = open.actor(open.vera).await;
    let told = open.told().await;
    let tries =
        (0..12).map(|_| open.shop.issue_certificate(&vera, Some(Uuid::now_v7()), told.job, crate::told::seen()));
    let outcomes = futures_of(tries).await;
    assert_eq!(outcomes.iter().filter(|outcome| outcome.is_ok()).count(), 1);
    let mut con = open.shop.db.read().await.unwrap();
    assert_eq!(db::numbers::peek(&mut con, open.branch, "conversion").await.unwrap(), 2);
}

/// Waits for all of them at once, on this thread.
pub async fn futures_of<F: Future>(all: impl Iterator<Item = F>) -> Vec<F::Output> {
    let mut waiting: Vec<_> = all.map(Box::pin).collect();
    let mut done: Vec<Option<F::Output>> = waiting.iter().map(|_| None).collect();
    std::future::poll_fn(|context| {
        for (one, slot) in waiting.iter_mut().zip(&mut done) {
            if slot.is_none()
                && let std::task::Poll::Ready(output) = one.as_mut().poll(context)
            {
                *slot = Some(output);
            }
        }
        if done.iter().all(Option::is_some) { std::task::Poll::Ready(()) } else { std::task::Poll::Pending }
    })
    .await;
    done.into_iter().flatten().collect()
}

#[tokio::test]
async fn evidence_corrected_under_a_paper_marks_the_paper() {
    let open = TestShop::open().await;
    let told = open.told().await;
    let vera = open.actor(open.vera).await;
    let id = open.shop.issue_certificate(&vera, None, told.job, crate::told::seen()).await.unwrap();
    let mut con = open.shop.db.read().await.unwrap();
    let file = db::job_files::find(&mut con, open.branch, told.job).await.unwrap().unwrap();
    let before = file.entry("trims", "").unwrap();
    let correction = NewEvidence {
        body: before.body.clone(),
        measured_at: None,
        replaces_id: Some(before.id),
        replaces_reason: "bank was mistyped".into(),
        instruments: Vec::new(),
        attachments: Vec::new(),
    };
    open.shop.record_evidence(&told.jon, None, told.job, correction).await.unwrap();
    let found = open.shop.find_paper(open.branch, id).await.unwrap().unwrap();
    assert_eq!(found.standing, Standing::UnderReview);
    assert_eq!(found.events[0].reason, "bank was mistyped");
}
