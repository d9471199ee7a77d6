//! The unsigned papers of a job as the screens hand them out, and the public page behind a vehicle's label.

use fuelwright::db::Db;
use fuelwright::model::ids::JobId;

use crate::papers::reading::Paper;
use crate::support::{Browser, TestShop};

const KINDS: [&str; 5] = ["work-sheet", "fitting-record", "calibration-record", "test-record", "owner-sheet"];

async fn paper(browser: &Browser, job: JobId, kind: &str, name: &str) -> Paper {
    let page = browser.get(&format!("/jobs/{job}/papers/{kind}")).await;
    page.is(200);
    assert_eq!(page.headers["content-type"], "application/pdf");
    let paper = Paper::new(name, &page.bytes);
    paper.is_sound();
    if kind != "label" {
        paper.stays_inside_its_margins();
    }
    paper.does_not_print_over_itself();
    paper
}

#[tokio::test]
async fn a_told_conversion_prints_each_of_its_papers_with_what_was_recorded() {
    let open = TestShop::open().await;
    let job = open.told().await.job;
    let browser = open.technician().await;
    let listed = browser.get(&format!("/jobs/{job}/papers")).await;
    for kind in KINDS {
        listed.links_to(&format!("/jobs/{job}/papers/{kind}"));
    }
    let work = paper(&browser, job, "work-sheet", "job-work-sheet").await;
    for value in ["Intake", "Hand-over", "Container or cylinder plate", "met", "Mind"] {
        work.says(value);
    }
    assert!(!work.images().is_empty(), "photos are in the work sheet");
    let fitting = paper(&browser, job, "fitting-record", "job-fitting-record").await;
    for value in [
        "-F · printed 12 May 2026",
        "118204",
        "Multivalve",
        "Engine cylinders and injectors",
        "✓ yes",
        "✓ pass",
        "Level",
        "Odometer",
    ] {
        fitting.says(value);
    }
    let photos = fitting.images();
    assert_eq!(photos.len(), 3, "odometer, VIN plate, container plate; a signature is no photo");
    let calibration = paper(&browser, job, "calibration-record", "job-calibration-record").await;
    for value in [
        "-C · printed 12 May 2026",
        "In closed loop yes",
        "Lock of the control unit held by",
        "Gas against petrol",
        "New codes none",
    ] {
        calibration.says(value);
    }
}

#[tokio::test]
async fn a_job_with_hardly_anything_prints_papers_that_say_so() {
    let open = TestShop::open().await;
    let job = open.opened().await.job;
    let browser = open.technician().await;
    let fitting = paper(&browser, job, "fitting-record", "bare-fitting-record").await;
    for value in ["No part is recorded.", "No table is recorded.", "○ not answered", "Not recorded."] {
        fitting.says(value);
    }
    fitting.does_not_say("Photos");
    let calibration = paper(&browser, job, "calibration-record", "bare-calibration-record").await;
    for value in ["No calibration is recorded.", "No trims are recorded.", "Not read again after driving."] {
        calibration.says(value);
    }
    paper(&browser, job, "work-sheet", "bare-work-sheet").await.says("○ missing");
}

#[tokio::test]
async fn papers_come_on_the_shops_paper_and_a_letter_without_a_face_stops_none() {
    let open = TestShop::open().await;
    let opened = open.opened().await;
    let browser = open.technician().await;
    browser.post(&format!("/jobs/{}/notes", opened.job), &[("text", "Hose 田 at the bulkhead")]).await;
    let sheet = paper(&browser, opened.job, "work-sheet", "a4-work-sheet").await;
    sheet.has_size([210.0, 297.0]);
    sheet.says("Hose [U+7530] at the bulkhead (Jon Aspen");
    let mut tx = open.shop.db.write().await.unwrap();
    sqlx::query::<Db>("update branches set paper_size = 'letter'").execute(&mut *tx).await.unwrap();
    tx.commit().await.unwrap();
    for kind in KINDS {
        paper(&browser, opened.job, kind, &format!("letter-{kind}")).await.has_size([215.9, 279.4]);
    }
}

#[tokio::test]
async fn a_label_is_made_once_and_its_code_opens_a_page_that_names_nobody() {
    let open = TestShop::open().await;
    let opened = open.told().await;
    let job = opened.job;
    let (desk, stranger) = (open.desk().await, open.stranger());
    desk.get(&format!("/jobs/{job}/papers/label")).await.is(404);
    let at = format!("/jobs/{job}/label");
    assert_eq!(desk.post(&at, &[]).await.goes_to(), format!("/jobs/{job}/papers/label"));
    let label = paper(&desk, job, "label", "job-label").await;
    label.has_size([105.0, 74.0]);
    let url = label.codes_on_page(1).remove(0);
    let code = url.strip_prefix("https://shop.example/vehicle/").unwrap().to_owned();
    label.says(&code);
    // A second label of the same vehicle bears the same code.
    desk.post(&at, &[]).await.goes_to();
    assert_eq!(paper(&desk, job, "label", "job-label-again").await.codes_on_page(1), std::slice::from_ref(&url));
    desk.get(&format!("/jobs/{job}/papers")).await.links_to(&format!("/jobs/{job}/papers/label"));
    assert_eq!(paper(&desk, job, "owner-sheet", "job-owner-sheet").await.codes_on_page(1), [url]);
    let page = stranger.get(&format!("/vehicle/{code}")).await;
    page.is(200).says("Saltmarsh Autogas").says("+44 1632 960100").hides("Ilse Marrow");
    let file = fuelwright::db::jobs::find(&mut open.shop.db.read().await.unwrap(), open.branch, job).await.unwrap();
    let vehicle = file.unwrap().vehicle_id;
    let mut con = open.shop.db.read().await.unwrap();
    let vehicle = fuelwright::db::vehicles::find(&mut con, open.branch, vehicle).await.unwrap().unwrap();
    page.hides(&vehicle.plate).hides(vehicle.identity()).says(&vehicle.make);
    stranger.get("/vehicle/0000-0000-0000-0000").await.is(404);
    stranger.get("/vehicle/nonsense").await.is(404).says("No vehicle has this code here");
}

#[tokio::test]
async fn todays_sheet_shows_each_bay_and_no_phone() {
    let open = TestShop::open().await;
    let opened = open.opened().await;
    let manager = open.manager().await;
    manager.post("/bay-plan/bays", &[("name", "Bay 1")]).await;
    let page = manager.get("/bay-plan").await;
    page.links_to("/bay-plan/sheet?day=2026-05-12");
    let sheet = manager.get("/bay-plan/sheet").await;
    sheet.is(200);
    let sheet = Paper::new("today-wall", &sheet.bytes);
    sheet.is_sound();
    sheet.says("Today, 12 May 2026");
    sheet.says("Bay 1");
    sheet.says("Free.");
    sheet.says("In no bay");
    let mut con = open.shop.db.read().await.unwrap();
    let job = fuelwright::db::jobs::find(&mut con, open.branch, opened.job).await.unwrap().unwrap();
    sheet.says(&job.number);
    // On another day only bookings stand on it.
    let other = manager.get("/bay-plan/sheet?day=2026-05-13").await;
    Paper::new("other-wall", &other.bytes).does_not_say(&job.number);
}
