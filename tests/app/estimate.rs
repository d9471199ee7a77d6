//! Estimates of a job: the form's story, versions, agreements, deposits, papers, the spreadsheet, and whose eyes see them.

use fuelwright::db;
use fuelwright::db::Db;
use fuelwright::model::estimate::{EstimateStanding, Estimates};
use time::Duration;
use uuid::Uuid;

use crate::job_support::Bay;
use crate::papers::reading::Paper;
use crate::support::{Browser, Page};

impl Bay {
    async fn estimates(&self) -> Estimates {
        let mut con = self.shop.shop.db.read().await.unwrap();
        db::estimates::find_of_job(&mut con, self.shop.branch, self.job).await.unwrap()
    }

    /// Sends lines `(what, kind, quantity, price)` as a version written over `opened`.
    async fn write(&self, who: &Browser, opened: &str, lines: &[[&str; 4]], more: &[(&str, &str)]) -> Page {
        let mut fields = vec![("opened_version".to_owned(), opened.to_owned())];
        for (at, line) in lines.iter().enumerate() {
            for (name, text) in ["what", "kind", "quantity", "unit_price"].iter().zip(line) {
                fields.push((format!("lines[{at}][{name}]"), (*text).to_owned()));
            }
        }
        fields.extend(more.iter().map(|(name, text)| ((*name).to_owned(), (*text).to_owned())));
        let fields: Vec<(&str, &str)> = fields.iter().map(|(name, text)| (&**name, &**text)).collect();
        who.post(&self.at("estimate"), &fields).await
    }

    async fn agree(&self, who: &Browser, opened: &str, at: &str) -> Page {
        let fields =
            [("opened_version", opened), ("agreed_how", "phone"), ("agreed_by", "Ana Marrow"), ("agreed_at", at)];
        who.post(&self.at("estimate/agreement"), &fields).await
    }

    async fn deposit(&self, who: &Browser, amount: &str) -> Page {
        let fields = [
            ("deposit_amount", amount),
            ("paid_how", "cash"),
            ("received_on", "2026-05-12"),
            ("received_by", "Mara Lind"),
        ];
        who.post(&self.at("deposits"), &fields).await
    }
}

/// Worked by hand, in minor units: 148000; 1.5 × 49.99 = 74.985, up to 7499; 0.333 × 0.10 = 0.0333, down to 3.
const LINES: [[&str; 4]; 3] = [
    ["Container, 54 L", "part", "1", "1 480,00"],
    ["Fitting, hour", "work", "1.5", "49.99"],
    ["Sealant, litre", "other", "0,333", "0.10"],
];
/// 1480.00 + 74.99 + 0.03.
const TOTAL_MINOR: i64 = 155_502;

/// A page's text with the spaces that keep numbers together made plain.
fn plain(page: &Page) -> String {
    page.text().replace(['\u{a0}', '\u{202f}'], " ")
}

#[track_caller]
fn says(page: &Page, wanted: &str) {
    assert!(plain(page).contains(wanted), "{wanted:?} is not in ({}): {}", page.status, plain(page));
}

#[tokio::test]
async fn an_estimate_that_is_wrong_is_explained_kept_mended_and_saved() {
    let bay = Bay::lpg().await;
    let desk = bay.shop.desk().await;
    desk.get(&bay.at("stages/intake")).await.links_to(&bay.at("estimate"));
    desk.get(&bay.at("estimate")).await.is(200).says("No estimate yet").links_to(&bay.at("estimate/new"));
    desk.get(&bay.at("estimate/new")).await.is(200).says("Estimate, version 1");

    bay.write(&desk, "0", &[], &[]).await.is(422).says("Enter at least one line");
    let wrong = [["", "part", "1,200", "1.999"], ["Work", "", "0", "ten"], ["Fee", "gift", "1.2345", "5"]];
    let page = bay.write(&desk, "0", &wrong, &[("valid_until_on", "2026-05-11"), ("note", "kept")]).await;
    page.is(422).says("1200 or as 1.200").says("Takes 2 decimals at most").says("Takes 3 decimals at most");
    for (name, text) in [
        ("lines[0][quantity]", "1,200"),
        ("lines[0][unit_price]", "1.999"),
        ("lines[1][unit_price]", "ten"),
        ("lines[2][what]", "Fee"),
        ("note", "kept"),
        ("valid_until_on", "2026-05-11"),
    ] {
        assert_eq!(page.field(name).as_deref(), Some(text), "{name}");
    }
    for field in ["lines-0-what", "lines-1-kind", "lines-1-quantity", "lines-1-unit_price", "lines-2-kind"] {
        assert!(!page.select(&format!("#{field}-error")).is_empty(), "{field}");
    }
    assert!(!page.select("#valid_until_on-error").is_empty());
    page.hides("The lines come to");
    assert!(bay.estimates().await.versions.is_empty());

    let more = [("valid_until_on", "2026-06-12"), ("note", "Tax is included.")];
    assert_eq!(bay.write(&desk, "0", &LINES, &more).await.goes_to(), bay.at("estimate"));
    let known = bay.estimates().await;
    let [version] = &known.versions[..] else { panic!("{known:?}") };
    assert_eq!((version.number, version.total_minor, version.currency.code()), (1, TOTAL_MINOR, "GBP"));
    let page = desk.get(&bay.at("estimate")).await;
    for text in ["GBP 1 555.02", "74.99", "0.333", "Not agreed yet", "It stands until 12 June 2026", "Tax is included."]
    {
        says(&page, text);
    }
    says(&desk.get(&bay.at("stages/proving")).await, "Estimate: GBP 1 555.02, not agreed yet");
}

#[tokio::test]
async fn one_more_line_shows_the_form_again_and_saves_nothing() {
    let bay = Bay::lpg().await;
    let desk = bay.shop.desk().await;
    let key = Uuid::now_v7().to_string();
    let page = bay.write(&desk, "0", &LINES, &[("rows", "3"), ("then", "line"), ("key", &key)]).await;
    page.is(200);
    assert_eq!(page.field("lines[3][what]").as_deref(), Some(""), "a fourth line is there to fill in");
    assert_eq!(page.field("lines[0][unit_price]").as_deref(), Some("1 480,00"), "as it was typed");
    assert_eq!(page.field("key"), Some(key), "it is still the same form");
    says(&page, "The lines come to GBP 1 555.02");
    assert!(bay.estimates().await.versions.is_empty());
    let again = bay.write(&desk, "0", &[], &[("rows", "4"), ("then", "line")]).await;
    assert_eq!(again.is(200).field("lines[4][what]").as_deref(), Some(""));
}

#[tokio::test]
async fn a_double_tap_makes_one_version_and_a_line_left_empty_is_left_out() {
    let bay = Bay::lpg().await;
    let desk = bay.shop.desk().await;
    let key = Uuid::now_v7().to_string();
    let lines = [LINES[0], ["", "", " ", ""], LINES[1]];
    bay.write(&desk, "0", &lines, &[("key", &key)]).await.goes_to();
    bay.write(&desk, "0", &lines, &[("key", &key)]).await.goes_to();
    assert_eq!(bay.estimates().await.versions.len(), 1);
    assert_eq!(bay.estimates().await.versions[0].total_minor, 155_499);
    let key = Uuid::now_v7().to_string();
    let fields = [
        ("deposit_amount", "100"),
        ("paid_how", "card"),
        ("received_on", "2026-05-12"),
        ("received_by", "Mara"),
        ("key", key.as_str()),
    ];
    desk.post(&bay.at("deposits"), &fields).await.goes_to();
    desk.post(&bay.at("deposits"), &fields).await.goes_to();
    assert_eq!(bay.estimates().await.deposited_minor(), 10_000);
}

#[tokio::test]
async fn a_save_over_a_newer_version_shows_both_and_loses_neither() {
    let bay = Bay::lpg().await;
    let (desk, manager) = (bay.shop.desk().await, bay.shop.manager().await);
    bay.write(&manager, "0", &[["Vaporiser", "part", "1", "184.50"]], &[("note", "from the list")]).await.goes_to();
    let page = bay.write(&desk, "0", &LINES, &[("note", "mine")]).await;
    page.is(422);
    for text in ["Version 1 was written meanwhile by Ilse Brandt", "Vaporiser", "184.50", "from the list"] {
        says(&page, text);
    }
    assert_eq!(page.field("lines[0][what]").as_deref(), Some("Container, 54 L"));
    assert_eq!(page.field("note").as_deref().map(str::trim), Some("mine"));
    assert_eq!(page.field("opened_version").as_deref(), Some("1"));
    assert_eq!(bay.estimates().await.versions.len(), 1, "nothing is saved yet");
    bay.write(&desk, "1", &LINES, &[("note", "mine")]).await.goes_to();
    let known = bay.estimates().await;
    let totals: Vec<(i64, i64)> = known.versions.iter().map(|one| (one.number, one.total_minor)).collect();
    assert_eq!(totals, [(1, 18_450), (2, TOTAL_MINOR)], "both are kept");
    says(&desk.get(&bay.at("estimate/1")).await, "Vaporiser");
    desk.get(&bay.at("estimate")).await.links_to(&bay.at("estimate/1"));
    // The form of the next version begins with the last.
    let next = desk.get(&bay.at("estimate/new")).await;
    let field = |name: &str| next.field(name).unwrap_or_default();
    assert_eq!((field("lines[1][quantity]"), field("lines[1][unit_price]")), ("1.5".into(), "49.99".into()));
    desk.get(&bay.at("estimate/3")).await.is(404);
    desk.get(&bay.at("estimate/one")).await.is(404);
}

#[tokio::test]
async fn an_agreement_names_amount_way_person_and_time_and_none_that_cannot_be() {
    let bay = Bay::lpg().await;
    let desk = bay.shop.desk().await;
    bay.agree(&desk, "0", "2026-05-12T10:31").await.is(404);
    bay.write(&desk, "0", &LINES, &[]).await.goes_to();
    bay.shop.clock.advance(Duration::minutes(20));
    // The shop's wall shows an hour more than UTC in May: written 10:30, now 10:50.
    let future = bay.agree(&desk, "1", "2026-05-12T10:55").await;
    future.is(422).says("in the future");
    assert_eq!(future.field("agreed_by").as_deref(), Some("Ana Marrow"));
    bay.agree(&desk, "1", "2026-05-12T10:20").await.is(422).says("Before this version was written");
    desk.post(&bay.at("estimate/agreement"), &[("opened_version", "1")]).await.is(422).says("Nothing is entered here");
    assert_eq!(bay.estimates().await.versions[0].agreement, None);

    bay.agree(&desk, "1", "2026-05-12T10:40").await.goes_to();
    let known = bay.estimates().await;
    let EstimateStanding::Agreed(_, agreement) = known.standing() else { panic!("{known:?}") };
    assert_eq!((agreement.amount_minor, agreement.agreed_by.as_str()), (TOTAL_MINOR, "Ana Marrow"));
    assert_eq!(agreement.person_name, "Mara Lind", "who noted it");
    says(
        &desk.get(&bay.at("estimate")).await,
        "GBP 1 555.02 agreed by phone by Ana Marrow, 12 May, 10:40. Noted by Mara Lind, 12 May, 10:50.",
    );
    says(&desk.get(&bay.at("stages/intake")).await, "Estimate: GBP 1 555.02, agreed by phone, Ana Marrow, 12 May");
    bay.agree(&desk, "1", "2026-05-12T10:45").await.is(403).says("This version is agreed already");
}

#[tokio::test]
async fn the_minute_of_the_version_itself_is_not_before_it() {
    let bay = Bay::lpg().await;
    let desk = bay.shop.desk().await;
    bay.shop.clock.advance(Duration::seconds(40));
    bay.write(&desk, "0", &LINES, &[]).await.goes_to();
    bay.agree(&desk, "1", "2026-05-12T10:30").await.goes_to();
    let version = bay.estimates().await.versions.remove(0);
    assert_eq!(version.agreement.unwrap().agreed_at, version.written_at);
}

#[tokio::test]
async fn a_change_after_agreement_says_by_how_much_and_that_nobody_agreed() {
    let bay = Bay::lpg().await;
    let desk = bay.shop.desk().await;
    bay.write(&desk, "0", &LINES, &[]).await.goes_to();
    bay.agree(&desk, "1", "2026-05-12T10:30").await.goes_to();
    let longer = [LINES[0], LINES[1], LINES[2], ["Bracket", "part", "1", "120"]];
    bay.write(&desk, "1", &longer, &[]).await.goes_to();
    says(&desk.get(&bay.at("stages/intake")).await, "changed since it was agreed: +120.00, not agreed");
    says(&desk.get(&bay.at("estimate")).await, "Version 1 was agreed at GBP 1 555.02");
    // Cheaper is a change too; and so is another way to the same total.
    bay.write(&desk, "2", &LINES[..2], &[]).await.goes_to();
    says(&desk.get(&bay.at("estimate")).await, "changed since it was agreed: \u{2212}0.03, not agreed");
    bay.write(&desk, "3", &[["All of it", "work", "1", "1555.02"]], &[]).await.goes_to();
    says(&desk.get(&bay.at("estimate")).await, "to the same total; not agreed");

    // Somebody opened the page at version 3: what they heard was about that one.
    let late = bay.agree(&desk, "3", "2026-05-12T10:30").await;
    late.is(422).says("Version 4 was written while this page was open");
    assert_eq!((late.field("opened_version"), late.field("agreed_by")), (Some("4".into()), Some("Ana Marrow".into())));
    bay.agree(&desk, "4", "2026-05-12T10:30").await.goes_to();
    let known = bay.estimates().await;
    assert!(matches!(known.standing(), EstimateStanding::Agreed(last, _) if last.number == 4));
    let agreed: Vec<i64> =
        known.versions.iter().filter(|one| one.agreement.is_some()).map(|version| version.number).collect();
    assert_eq!(agreed, [1, 4]);
}

#[tokio::test]
async fn a_deposit_is_taken_and_taken_back_by_a_line_with_its_reason() {
    let bay = Bay::lpg().await;
    let desk = bay.shop.desk().await;
    bay.write(&desk, "0", &LINES, &[]).await.goes_to();
    bay.deposit(&desk, "0").await.is(422);
    let wrong = [("deposit_amount", "1,200"), ("paid_how", "cash"), ("received_on", "2026-05-13")];
    let page = desk.post(&bay.at("deposits"), &wrong).await;
    page.is(422).says("1200 or as 1.200").says("in the future");
    assert_eq!(page.field("paid_how").as_deref(), Some("cash"));
    bay.deposit(&desk, "500").await.goes_to();
    bay.deposit(&desk, "80,50").await.goes_to();
    let known = bay.estimates().await;
    assert_eq!((known.deposited_minor(), known.remaining_minor()), (58_050, Some(97_452)));
    says(&desk.get(&bay.at("estimate")).await, "GBP 580.50 paid; GBP 974.52 remain to pay.");

    let first = known.deposits[0].id;
    let back = bay.at(&format!("deposits/{first}/return"));
    let page = desk.post(&back, &[("back[1][returned_how]", "cash"), ("back[1][returned_on]", "2026-05-11")]).await;
    page.is(422);
    assert_eq!(page.field("back[1][returned_how]").as_deref(), Some("cash"));
    let mut fields = vec![
        ("back[1][reason]", "paid twice"),
        ("back[1][returned_how]", "cash"),
        ("back[1][returned_on]", "2026-05-11"),
    ];
    desk.post(&back, &fields).await.is(422).says("before");
    fields[2].1 = "2026-05-12";
    desk.post(&back, &fields).await.goes_to();
    desk.post(&back, &fields).await.is(403).says("taken back already");
    let known = bay.estimates().await;
    assert_eq!((known.deposits.len(), known.deposited_minor()), (3, 8_050), "the deposit itself stays");
    says(&desk.get(&bay.at("estimate")).await, "Taken back 12 May 2026, cash, by Mara Lind: paid twice");
    // What takes back is no deposit, and cannot be taken back itself.
    let line = known.deposits[2].id;
    desk.post(&bay.at(&format!("deposits/{line}/return")), &fields).await.is(404);
    desk.get(&bay.at(&format!("deposits/{line}/receipt"))).await.is(404);
}

#[tokio::test]
async fn papers_say_the_figures_that_were_reckoned_by_hand() {
    let bay = Bay::lpg().await;
    let desk = bay.shop.desk().await;
    desk.get(&bay.at("papers/price-list")).await.is(404);
    bay.write(&desk, "0", &LINES, &[("valid_until_on", "2026-06-12")]).await.goes_to();
    let paper = |name: &str, page: &Page| {
        page.is(200);
        assert_eq!(page.headers["content-type"], "application/pdf");
        Paper::new(name, &page.bytes)
    };
    let open = paper("estimate-open", &desk.get(&bay.at("estimate/1/pdf")).await);
    for text in
        ["1 480.00", "49.99", "74.99", "0.333", "0.03", "1 555.02", "12 June 2026", "Not agreed yet", "no tax invoice"]
    {
        open.says(text);
    }
    open.says("A change is agreed with you before the work it concerns");
    bay.agree(&desk, "1", "2026-05-12T10:30").await.goes_to();
    bay.deposit(&desk, "500").await.goes_to();
    bay.deposit(&desk, "1200.00").await.goes_to();
    let known = bay.estimates().await;
    let list = desk.get(&bay.at("papers/price-list")).await;
    let list = paper("price-list-overpaid", &list);
    // 1 555.02 less 1 700.00.
    for text in ["1 700.00", "To be paid back to you", "144.98", "Agreed by phone by Ana Marrow", "no tax invoice"] {
        list.says(text);
    }
    let back = bay.at(&format!("deposits/{}/return", known.deposits[1].id));
    let fields =
        [("back[2][reason]", "too much"), ("back[2][returned_how]", "cash"), ("back[2][returned_on]", "2026-05-12")];
    desk.post(&back, &fields).await.goes_to();
    let list = paper("price-list-left", &desk.get(&bay.at("papers/price-list")).await);
    for text in ["\u{2212}1 200.00", "Paid back. Reason: too much", "Remains to pay", "1 055.02"] {
        list.says(text);
    }
    let receipt = desk.get(&bay.at(&format!("deposits/{}/receipt", known.deposits[1].id))).await;
    let receipt = paper("receipt-returned", &receipt);
    for text in ["deposit 2", "GBP 1 200.00", "Ana Marrow", "Reason: too much", "no tax invoice"] {
        receipt.says(text);
    }
    receipt.does_not_say("taken off the price");
    let kept = desk.get(&bay.at(&format!("deposits/{}/receipt", known.deposits[0].id))).await;
    paper("receipt-kept", &kept).says("taken off the price");
    desk.get(&bay.at("papers")).await.links_to(&bay.at("papers/price-list")).links_to(&bay.at("papers/estimate"));
    paper("estimate-agreed", &desk.get(&bay.at("papers/estimate")).await).says("Noted by Mara Lind");
}

#[tokio::test]
async fn papers_speak_the_customer_s_language_and_keep_the_currency_of_the_first_line() {
    let bay = Bay::lpg().await;
    let desk = bay.shop.desk().await;
    let mut tx = bay.shop.shop.db.write().await.unwrap();
    let to = sqlx::query::<Db>("update customers set language = 'de' where id = $1").bind(bay.keeper);
    to.execute(&mut *tx).await.unwrap();
    tx.commit().await.unwrap();
    bay.write(&desk, "0", &LINES, &[]).await.goes_to();
    let mut tx = bay.shop.shop.db.write().await.unwrap();
    sqlx::query::<Db>("update branches set currency = 'KWD'").execute(&mut *tx).await.unwrap();
    tx.commit().await.unwrap();
    bay.write(&desk, "1", &LINES[..1], &[]).await.goes_to();
    let version = bay.estimates().await.versions.remove(1);
    assert_eq!((version.currency.code(), version.total_minor), ("GBP", 148_000));
    let page = desk.get(&bay.at("papers/estimate")).await;
    let name = page.headers["content-disposition"].to_str().unwrap();
    assert!(name.contains("kostenvoranschlag-2026-0001-2.pdf"), "{name}");
    let paper = Paper::new("estimate-de", &page.bytes);
    for text in ["Kostenvoranschlag", "1 480,00", "GBP", "keine Rechnung im Sinne des Steuerrechts"] {
        paper.says(text);
    }
}

#[tokio::test]
async fn the_lines_go_out_as_cells_that_no_spreadsheet_takes_for_a_formula() {
    let bay = Bay::lpg().await;
    let desk = bay.shop.desk().await;
    let lines =
        [["=1+1", "part", "2", "1 480.50"], ["@sum, \"quoted\"", "other", "0.5", "3"], ["-10", "work", "1", "0"]];
    bay.write(&desk, "0", &lines, &[]).await.goes_to();
    let page = desk.get(&bay.at("estimate/1/csv")).await;
    page.is(200);
    assert_eq!(page.headers["content-type"], "text/csv; charset=utf-8");
    assert_eq!(
        String::from_utf8(page.bytes).unwrap(),
        "what,kind,quantity,unit_price,amount,currency\r\n\
         '=1+1,part,2,1480.50,2961.00,GBP\r\n\
         \"'@sum, \"\"quoted\"\"\",other,0.5,3.00,1.50,GBP\r\n\
         '-10,work,1,0.00,0.00,GBP\r\n"
    );
}

#[tokio::test]
async fn a_bench_reads_a_desk_writes_and_an_ended_job_is_only_read() {
    let bay = Bay::lpg().await;
    let (desk, jon) = (bay.shop.desk().await, bay.shop.technician().await);
    bay.write(&desk, "0", &LINES, &[]).await.goes_to();
    jon.get(&bay.at("estimate")).await.is(200).hides("Note the agreement").hides("Take a deposit");
    bay.write(&jon, "1", &LINES, &[]).await.is(403);
    bay.shop.auditor().await.get(&bay.at("estimate/1")).await.is(200);
    desk.post(&bay.at("cancellation"), &[("cancel_reason", "sold the car")]).await.goes_to();
    let page = desk.get(&bay.at("estimate")).await;
    page.is(200).hides("Note the agreement").hides("write the next version");
    says(&page, "GBP 1 555.02");
    bay.write(&desk, "1", &LINES, &[]).await.is(409);
    bay.agree(&desk, "1", "2026-05-12T10:30").await.is(409);
    bay.deposit(&desk, "10").await.is(409);
    assert_eq!(bay.estimates().await.versions.len(), 1);
}

#[tokio::test]
async fn another_branch_sees_nothing_of_it() {
    let bay = Bay::lpg().await;
    let manager = bay.shop.manager().await;
    bay.write(&manager, "0", &LINES, &[]).await.goes_to();
    bay.deposit(&manager, "10").await.goes_to();
    let deposit = bay.estimates().await.deposits[0].id;
    let pages = [
        "estimate".to_owned(),
        "estimate/new".to_owned(),
        "estimate/1".to_owned(),
        "estimate/1/pdf".to_owned(),
        "estimate/1/csv".to_owned(),
        "papers/price-list".to_owned(),
        format!("deposits/{deposit}/receipt"),
    ];
    for page in &pages {
        manager.get(&bay.at(page)).await.is(200);
    }
    bay.shop.person_of_another_branch().await;
    let mut tx = bay.shop.shop.db.write().await.unwrap();
    for table in ["update jobs", "update estimates", "update deposits"] {
        let moved = format!("{table} set branch_id = (select id from branches where name = 'Harbour Branch')");
        sqlx::query::<Db>(sqlx::AssertSqlSafe(moved)).execute(&mut *tx).await.unwrap();
    }
    tx.commit().await.unwrap();
    for page in &pages {
        manager.get(&bay.at(page)).await.is(404);
    }
    bay.write(&manager, "1", &LINES, &[]).await.is(404);
    bay.agree(&manager, "1", "2026-05-12T10:30").await.is(404);
    bay.deposit(&manager, "10").await.is(404);
    assert!(bay.estimates().await.versions.is_empty());
}

#[tokio::test]
async fn each_deed_leaves_its_line() {
    let bay = Bay::lpg().await;
    let desk = bay.shop.desk().await;
    bay.write(&desk, "0", &LINES, &[]).await.goes_to();
    bay.agree(&desk, "1", "2026-05-12T10:30").await.goes_to();
    bay.deposit(&desk, "10").await.goes_to();
    let back = bay.at(&format!("deposits/{}/return", bay.estimates().await.deposits[0].id));
    let fields =
        [("back[1][reason]", "too early"), ("back[1][returned_how]", "cash"), ("back[1][returned_on]", "2026-05-12")];
    desk.post(&back, &fields).await.goes_to();
    let mut con = bay.shop.shop.db.read().await.unwrap();
    let lines = db::audit::list(&mut con, bay.shop.branch, None, 4).await.unwrap();
    let tags: Vec<&str> = lines.iter().rev().map(|line| line.deed.as_str()).collect();
    assert_eq!(tags, ["estimate-written", "estimate-agreed", "deposit-taken", "deposit-taken-back"]);
    assert!(lines.iter().all(|line| line.deed().is_some()));
}

#[tokio::test]
async fn a_discount_is_taken_off_and_never_more_than_the_rest() {
    let bay = Bay::lpg().await;
    let mara = bay.shop.desk().await;
    // Worked by hand: 1480.00 - 2 × 74.50 = 1331.00.
    let lines = [LINES[0], ["Old customer", "discount", "2", "74.50"]];
    bay.write(&mara, "0", &lines, &[]).await.goes_to();
    assert_eq!(bay.estimates().await.last().unwrap().total_minor, 133_100);
    let page = mara.get(&bay.at("estimate")).await;
    let text = plain(&page);
    assert!(text.contains("Discount") && text.contains("−149.00") && text.contains("1 331.00"), "{text}");
    let pdf = mara.get(&bay.at("estimate/1/pdf")).await;
    let paper = Paper::new("estimate-discount", &pdf.is(200).bytes);
    paper.says("−149.00");
    // Opened again it stands as it was typed.
    let again = mara.get(&bay.at("estimate/new")).await;
    assert_eq!(again.field("lines[1][unit_price]").as_deref(), Some("74.50"));
    let over = bay.write(&mara, "1", &[LINES[2], ["Too kind", "discount", "1", "0.04"]], &[]).await;
    over.is(422).says("The discount is more than the rest comes to");
    assert_eq!(over.field("lines[1][what]").as_deref(), Some("Too kind"), "what was typed is kept");
    assert_eq!(bay.estimates().await.versions.len(), 1);
}
