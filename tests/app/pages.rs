//! Every screen that the bar leads to answers, for everybody who may see it.

use crate::support::TestShop;

#[tokio::test]
async fn every_entry_of_the_bar_leads_somewhere() {
    let open = TestShop::open().await;
    let manager = open.manager().await;
    let frame = fuelwright::web::page::Frame::default();
    for item in frame.main_nav().iter().chain(frame.more_nav()) {
        manager.get(item.href).await.is(200);
    }
}

#[tokio::test]
async fn a_told_job_shows_on_every_stage_and_its_papers_come_as_pdf() {
    let open = TestShop::open().await;
    let told = open.told().await;
    let technician = open.technician().await;
    let job = told.job;
    for stage in ["intake", "sizing", "fitting", "calibration", "proving", "hand-over"] {
        technician.get(&format!("/jobs/{job}/stages/{stage}")).await.is(200).says("NM 47 KTR");
    }
    for paper in ["preview", "test-record", "sizing-sheet", "owner-sheet"] {
        let answer = technician.get(&format!("/jobs/{job}/papers/{paper}")).await;
        assert_eq!(answer.status.as_u16(), 200, "{paper}");
        assert!(answer.bytes.starts_with(b"%PDF-"), "{paper}");
    }
    technician.get(&format!("/jobs/{job}/papers/lottery-ticket")).await.is(404);
}

#[tokio::test]
async fn a_signatory_signs_with_the_password_and_anybody_may_verify() {
    let open = TestShop::open().await;
    let told = open.told().await;
    let vera = open.signatory().await;
    let papers = format!("/jobs/{}/papers", told.job);
    vera.get(&papers).await.is(200).says("Sign and issue");
    let seen = ["odometer", "vin-plate", "container-plate"].map(|slot| ("photos_seen", slot));
    let signing = |password| seen.into_iter().chain([("password", password)]).collect::<Vec<_>>();
    vera.post(&papers, &signing("not the password")).await.is(422).says("password");
    let paper = vera.post(&papers, &signing(crate::support::PASSWORD)).await.goes_to();
    vera.get(&paper).await.is(200).says("C-2026-0001").says("Valid");
    let found = {
        let mut con = open.shop.db.read().await.unwrap();
        fuelwright::db::papers::list_of_job(&mut con, open.branch, told.job).await.unwrap().remove(0)
    };
    let stranger = open.stranger();
    let verified = stranger.get(&format!("/verify/{}", found.code)).await.is(200).text();
    assert!(verified.contains("C-2026-0001") && verified.contains("Valid"), "{verified}");
    for private in ["Marrow", "0555 0142", "NM 47 KTR", "Fen Lane"] {
        assert!(!verified.contains(private), "{private} is shown to anybody");
    }
    stranger.get("/verify/0000-0000-0000-0000").await.is(404);
    stranger.get("/verify/%3Cscript%3E").await.is(404);
}

/// Writes the papers of a told job where `FUELWRIGHT_PAPERS` says, to be looked at.
#[tokio::test]
async fn papers_of_a_told_job_can_be_looked_at() {
    let open = TestShop::open().await;
    let told = open.told().await;
    let vera = open.actor(open.vera).await;
    let id = open.shop.issue_certificate(&vera, None, told.job, crate::told::seen()).await.unwrap();
    let found = open.shop.find_paper(open.branch, id).await.unwrap().unwrap();
    let certificate = open.shop.issued_pdf(&found.paper).await.unwrap();
    let now = open.clock.now();
    let record =
        open.shop.test_record_pdf(&vera, told.job, now, fuelwright::shop::issue::Spoken::Official).await.unwrap();
    let (_, sheet) = open.shop.owner_sheet_pdf(&vera, told.job, now).await.unwrap();
    assert!(certificate.len() < 200_000, "{}", certificate.len());
    if let Ok(folder) = std::env::var("FUELWRIGHT_PAPERS") {
        for (name, bytes) in [("certificate", &certificate), ("test-record", &record), ("owner-sheet", &sheet)] {
            std::fs::write(format!("{folder}/{name}.pdf"), bytes).unwrap();
        }
    }
}
