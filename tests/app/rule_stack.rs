//! Which sets count for a branch and a vehicle, which line decides, and what a line that nobody read may do.

use fuelwright::db::{self, rule_books};
use fuelwright::model::evidence::Evidence;
use fuelwright::model::job_file::JobFile;
use fuelwright::rules::{self, Proof, Quantity, RuleBook, RuleSet, State, results};
use time::macros::date;
use time::{Date, OffsetDateTime};

use crate::support::TestShop;

const TODAY: Date = date!(2026 - 05 - 12);

async fn told() -> JobFile {
    let open = TestShop::open().await;
    let told = open.told().await;
    let mut con = open.shop.db.read().await.unwrap();
    db::job_files::find(&mut con, open.branch, told.job).await.unwrap().unwrap()
}

async fn names(open: &TestShop, country: &str) -> String {
    let mut con = open.shop.db.read().await.unwrap();
    let book = rule_books::book_for(&mut con, open.branch, country, TODAY).await.unwrap();
    book.sets.iter().map(|set| set.name.as_str()).collect::<Vec<_>>().join(" ")
}

/// The exhaust on gas with its HC, CO at raised idle and first registration as given.
fn exhaust(file: &JobFile, hc_ppm: f64, raised_co: f64, registered: Option<Date>) -> JobFile {
    let mut file = file.clone();
    file.vehicle.first_registered_on = registered;
    let entry = file.evidence.iter_mut().find(|one| one.body.kind() == "exhaust" && one.body.subject() == "gas");
    let Evidence::Exhaust(seen) = &mut entry.unwrap().body else { panic!() };
    (seen.raised.hc_ppm, seen.raised.co_percent, seen.raised.rpm) = (hc_ppm, raised_co, 2_600.0);
    file
}

fn proof(file: &JobFile, book: &RuleBook) -> Proof {
    let proofs = rules::assess(file, book, TODAY, &|at| at.date());
    proofs.into_iter().find(|proof| proof.id == "exhaust-gas").unwrap()
}

fn shop_set(lines: &str) -> RuleSet {
    let head = "name = \"shop\"\nversion = \"2\"\ntitle = \"Shop lines\"\nis_shop = true\n";
    RuleSet::read(&format!("{head}{lines}")).unwrap()
}

#[tokio::test]
async fn a_branch_stacks_its_countrys_sets_and_a_vehicle_brings_its_own() {
    let open = TestShop::open().await;
    assert_eq!(names(&open, "GB").await, "un-baseline eu-roadworthiness uk shop");
    assert_eq!(names(&open, "D").await, "un-baseline eu-roadworthiness uk de-stvzo shop", "by the sign on the plate");
    let ilse = open.manager().await;
    let page = ilse.get("/office/rules/stack").await;
    page.is(200).says("GB: UN baseline, EU roadworthiness, United Kingdom").says("Netherlands");
    // One that was left out, and no set for a vehicle from elsewhere.
    let chosen = [("stack_by", "chosen"), ("rule_sets", "un-baseline"), ("rule_sets", "nl"), ("by_vehicle", "no")];
    assert_eq!(ilse.post("/office/rules/stack", &chosen).await.goes_to(), "/office/rules");
    assert_eq!(names(&open, "D").await, "un-baseline nl shop");
    let page = open.auditor().await.get("/office/rules").await;
    page.says("Netherlands LPG handbook 1.15").says("Left out").hides("exh.cat.new.idle");
    // The base stays in, and nothing unknown comes in.
    for wrong in [
        [("stack_by", "chosen"), ("rule_sets", "nl"), ("by_vehicle", "yes")],
        [("stack_by", "chosen"), ("rule_sets", "moon"), ("by_vehicle", "yes")],
        [("stack_by", "tide"), ("rule_sets", "un-baseline"), ("by_vehicle", "yes")],
    ] {
        ilse.post("/office/rules/stack", &wrong).await.is(422);
    }
    assert_eq!(names(&open, "D").await, "un-baseline nl shop");
    ilse.post("/office/rules/stack", &[("stack_by", "country"), ("by_vehicle", "yes")]).await.goes_to();
    assert_eq!(names(&open, "NL").await, "un-baseline eu-roadworthiness uk nl shop");
    ilse.get("/office/log").await.says("Changed a setting");
}

#[tokio::test]
async fn the_strictest_line_decides_and_is_named_with_its_set() {
    let file = told().await;
    let book = RuleBook::stacked(&["un-baseline", "eu-roadworthiness", "uk", "shop"]).unwrap();
    let limit = |quantity, registered| {
        let mut file = file.clone();
        file.vehicle.first_registered_on = registered;
        (file.vehicle.has_catalyst, file.vehicle.is_closed_loop) = (true, true);
        let limit = book.limit(quantity, &file.job, &file.vehicle, None, TODAY).unwrap();
        let (most, line) = limit.most.unwrap();
        (most, line.id, line.set.name)
    };
    let said = |most, id: &str, set: &str| (most, id.to_owned(), set.to_owned());
    // First registered from 1 July 2002: 0.3 and 0.2; before: 0.5 and 0.3 (Directive 2014/45/EU, Annex I, 8.2.1.2).
    let eu = "eu-roadworthiness";
    let young = Some(date!(2002 - 07 - 01));
    let old = Some(date!(2002 - 06 - 30));
    assert_eq!(limit(Quantity::IdleCoPercent, young), said(0.3, "exh.cat.new.idle", eu));
    assert_eq!(limit(Quantity::IdleCoPercent, None), said(0.3, "exh.cat.new.idle", eu));
    assert_eq!(limit(Quantity::RaisedCoPercent, young), said(0.2, "exh.cat.new.raised", eu));
    // Of two lines that ask as much, the one whose source was read decides.
    assert_eq!(limit(Quantity::IdleCoPercent, old), said(0.5, "exh.cat.old.idle", eu));
    assert_eq!(limit(Quantity::RaisedCoPercent, old), said(0.3, "exh.cat.old.raised", eu));
    assert_eq!(limit(Quantity::RaisedHcPpm, young), said(200.0, "exh.uk.hc", "uk"));
    // Without a catalyst 3.5 % holds for all; 4.5 % is recorded and does not act.
    let mut bare = file.clone();
    bare.vehicle.has_catalyst = false;
    let most = book.limit(Quantity::IdleCoPercent, &bare.job, &bare.vehicle, None, TODAY).unwrap().most.unwrap();
    assert_eq!((most.0, most.1.id.as_str()), (3.5, "exh.nocat"));
    // HC is not judged on a CNG vehicle.
    let mut cng = file.clone();
    cng.job.fuel = fuelwright::model::job::Fuel::Cng;
    assert!(book.limit(Quantity::RaisedHcPpm, &cng.job, &cng.vehicle, None, TODAY).is_none());
}

#[tokio::test]
async fn a_line_that_nobody_read_fails_a_reading_and_lets_none_pass_alone() {
    let file = told().await;
    let young = Some(date!(2014 - 03 - 01));
    let with_eu = RuleBook::stacked(&["un-baseline", "eu-roadworthiness", "shop"]).unwrap();
    assert_eq!(proof(&exhaust(&file, 30.0, 0.05, young), &with_eu).state, State::Met);
    // All limits of this stack are second hand: within them is not yet a pass, and the paper's row does not say so either.
    let unread = RuleBook::stacked(&["un-baseline", "uk", "shop"]).unwrap();
    let within = exhaust(&file, 30.0, 0.05, young);
    let said = proof(&within, &unread);
    assert_eq!((said.state, said.why.key), (State::Undecided, "exhaust-unconfirmed"));
    let entry = within.entry("exhaust", "gas").unwrap();
    let Evidence::Exhaust(seen) = &entry.body else { panic!() };
    let judged = results::exhaust(&within, &unread, entry, seen, &|at: OffsetDateTime| at.date());
    assert!(judged.idle_co.is_unconfirmed && judged.verdict() != Some(fuelwright::calc::decision::Verdict::Pass));
    assert_eq!(judged.unconfirmed().unwrap().set.name, "uk");
    assert_eq!(proof(&exhaust(&file, 30.0, 0.5, young), &unread).state, State::Stops);
    // Beside lines that were read, an unread one of another quantity fails a reading; within it the others are the ground.
    let both = RuleBook::stacked(&["un-baseline", "eu-roadworthiness", "uk", "shop"]).unwrap();
    assert_eq!(proof(&exhaust(&file, 400.0, 0.05, young), &both).state, State::Stops);
    assert_eq!(proof(&exhaust(&file, 30.0, 0.05, young), &both).state, State::Met);
    // An unread line that is stricter than a read one: below both is a pass, between them a failure.
    let stricter =
        "[[limit]]\nid = \"x\"\nquantity = \"raised-co-percent\"\nmost = 0.1\nsource = \"hearsay\"\nchecked = false\n";
    let hearsay = RuleSet::read(&format!("name = \"y\"\nversion = \"1\"\ntitle = \"Y\"\n{stricter}")).unwrap();
    let mut book = with_eu.clone();
    book.sets.push(hearsay);
    assert_eq!(proof(&exhaust(&file, 30.0, 0.05, young), &book).state, State::Met);
    assert_eq!(proof(&exhaust(&file, 30.0, 0.15, young), &book).state, State::Stops);
}

#[tokio::test]
async fn each_reading_is_held_against_the_lines_of_its_own_day() {
    let file = told().await;
    let young = Some(date!(2014 - 03 - 01));
    let line = |dates: &str| {
        let text = format!(
            "[[limit]]\nid = \"shop.co\"\nquantity = \"raised-co-percent\"\nmost = 0.04\nsource = \"own\"\nchecked = false\n{dates}\n"
        );
        let mut book = RuleBook::shipped().unwrap();
        book.sets.push(shop_set(&text));
        book
    };
    // The told job was measured on 12 May 2026 with 0.05 %.
    let file = exhaust(&file, 30.0, 0.05, young);
    assert_eq!(file.entry("exhaust", "gas").unwrap().measured_at.date(), TODAY);
    for (dates, wanted) in [
        ("from_on = \"2026-05-13\"", State::Met),
        ("from_on = \"2026-05-12\"", State::Stops),
        ("to_on = \"2026-05-12\"", State::Stops),
        ("to_on = \"2026-05-11\"", State::Met),
    ] {
        let book = line(dates);
        assert_eq!(proof(&file, &book).state, wanted, "{dates}");
        // Looked at a year later, it is still held against the lines of the day it was measured on.
        let later = rules::assess(&file, &book, date!(2027 - 05 - 12), &|at| at.date());
        assert_eq!(later.iter().find(|one| one.id == "exhaust-gas").unwrap().state, wanted, "{dates}, later");
    }
}

#[tokio::test]
async fn a_looser_line_counts_with_an_authority_and_in_the_place_of_what_it_covers_only() {
    let file = told().await;
    let line = |allowed: &str| {
        let text = format!(
            "[[limit]]\nid = \"shop.shut\"\nquantity = \"shut-off-s\"\nmost = 3.0\nsource = \"own\"\nchecked = false\n{allowed}\n"
        );
        let mut book = RuleBook::shipped().unwrap();
        book.sets.pop();
        book.sets.push(shop_set(&text));
        let limit = book.limit(Quantity::ShutOffS, &file.job, &file.vehicle, None, TODAY).unwrap();
        let (most, line) = limit.most.unwrap();
        (most, line.id, limit.is_shop)
    };
    assert_eq!(line(""), (2.0, "shut.2s".to_owned(), false));
    let allowed = "allowed = { authority = \"Northmere inspectorate\", document = \"letter 12\", on = \"2026-04-01\" }";
    assert_eq!(line(allowed), (3.0, "shop.shut".to_owned(), true));
    // Allowed for one gas, it leaves the base alone for the other.
    assert_eq!(line(&format!("fuels = [\"cng\"]\n{allowed}")), (2.0, "shut.2s".to_owned(), false));
}
