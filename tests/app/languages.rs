//! A customer's language: it chooses the words of what they are handed, written and shown; the shop's screens stay whole.
//! And names that the papers have no letters for.

use fuelwright::model::customer::NewCustomer;
use fuelwright::model::duty::DutyKind;
use fuelwright::model::ids::CustomerId;
use time::Duration;
use time::macros::date;

use crate::owed::{ANA, Keeper, header, parts};
use crate::papers::reading::Paper;
use crate::support::{PASSWORD, TestShop};

impl TestShop {
    pub async fn set(&self, table: &str, column: &str, to: &str) {
        let mut tx = self.shop.db.write().await.unwrap();
        sqlx::query(sqlx::AssertSqlSafe(format!("update {table} set {column} = $1")))
            .bind(to)
            .execute(&mut *tx)
            .await
            .unwrap();
        tx.commit().await.unwrap();
    }

    async fn customer(&self, id: CustomerId) -> fuelwright::model::customer::Customer {
        let mut con = self.shop.db.read().await.unwrap();
        fuelwright::db::customers::find(&mut con, self.branch, id).await.unwrap().unwrap()
    }
}

/// The reminder of Ana's filter when her language and the branch's are these: subject, text, and the token of her page.
async fn reminder(customer: &str, branch: &str) -> (TestShop, String, String, String) {
    let open = TestShop::open().await;
    let ana = open.keeper(&ANA).await;
    let vehicle = open.vehicle_of(ana, "NM 47 KTR").await;
    open.set("customers", "language", customer).await;
    open.set("branches", "language", branch).await;
    open.owes(vehicle, DutyKind::Filter, "shop.filter", date!(2026 - 06 - 11)).await;
    open.owes(vehicle, DutyKind::PressureTest, "shop.test", date!(2026 - 06 - 20)).await;
    let (rounds, memory) = open.rounds();
    rounds.once(true).await.unwrap();
    let mail = &memory.sent()[0];
    let stop = header(mail, "List-Unsubscribe").unwrap();
    let token = stop.trim_end_matches('>').rsplit('/').next().unwrap().to_owned();
    let message = open.messages().await.remove(0);
    assert!(parts(mail).iter().any(|(_, part)| part.contains(&format!("<html lang=\"{}\"", spoken(customer, branch)))));
    (open, message.subject, message.body_text, token)
}

/// What is spoken to a customer with this tag in a branch with that.
fn spoken(customer: &str, branch: &str) -> String {
    fuelwright::words::Language::for_customer([customer, branch]).tag().to_owned()
}

/// Language: subject, salutation, date of the filter, of the test. Dates are CLDR's.
const MAILS: [(&str, &str, &str, &str, &str); 8] = [
    ("en", "2 things fall due", "Dear Ana Reyes,", "by 11 June 2026", "Internal look and pressure test"),
    (
        "de",
        "2 Termine für Ihr Fahrzeug",
        "Guten Tag Ana Reyes,",
        "bis 11. Juni 2026",
        "Innenbesichtigung und Druckprüfung",
    ),
    ("pl", "2 terminy dla Państwa pojazdu", "Dzień dobry, Ana Reyes,", "do 11 czerwca 2026", "próba ciśnieniowa"),
    ("it", "2 scadenze per il Suo veicolo", "Gentile Ana Reyes,", "entro il 11 giugno 2026", "prova a pressione"),
    (
        "es",
        "2 vencimientos de su vehículo",
        "Buenos días, Ana Reyes:",
        "hasta el 11 de junio de 2026",
        "prueba de presión",
    ),
    ("tr", "aracınız için 2 tarih yaklaşıyor", "Sayın Ana Reyes,", "en geç 11 Haziran 2026", "basınç testi"),
    (
        "fr",
        "2 échéances pour votre véhicule",
        "Bonjour Ana Reyes,",
        "au plus tard le 11 juin 2026",
        "épreuve de pression",
    ),
    ("nl", "2 data die voor uw voertuig verlopen", "Geachte Ana Reyes,", "uiterlijk 11 juni 2026", "druktest"),
];

fn plain(text: &str) -> String {
    text.replace(['\u{a0}', '\u{202f}'], " ")
}

#[tokio::test]
async fn a_reminder_and_the_page_behind_its_link_speak_the_customer_s_language() {
    for (tag, subject, dear, by, what) in MAILS {
        let (open, got, text, token) = reminder(tag, "en").await;
        let (got, text) = (plain(&got), plain(&text));
        assert!(got.contains(subject), "{tag}: {got}");
        for wanted in [dear, by, what] {
            assert!(text.contains(wanted), "{tag}: {wanted:?} is not in {text}");
        }
        assert!(tag == "en" || !text.contains("You get this because"), "{tag}: {text}");
        let page = open.stranger().get(&format!("/own/{token}")).await;
        let html = page.is(200).html();
        assert!(html.contains(&format!("<html lang=\"{tag}\"")) && !html.contains('⟦'), "{html}");
        assert!(plain(&page.text()).contains(by), "{tag}: {}", page.text());
        // A wish that is empty is explained in that language too.
        let empty = open.stranger().post(&format!("/own/{token}/slot"), &[("wish", ""), ("phone", "")]).await;
        let said = empty.is(422).text();
        assert_eq!(tag == "en", said.contains("Nothing is entered here"), "{tag}: {said}");
        open.stranger().get(&format!("/unsubscribe/{token}")).await.is(200).select(&format!("html[lang={tag}]"));
    }
}

#[tokio::test]
async fn a_language_that_papers_do_not_speak_gives_way_to_the_branch_s() {
    let (open, _, text, _) = reminder("pt", "de").await;
    assert!(text.contains("Guten Tag Ana Reyes,"), "{text}");
    // The shop itself reads English, whole: no screen speaks half a language.
    let office = open.manager().await.get("/office").await;
    assert!(office.is(200).html().contains("<html lang=\"en\""));
    let (_, _, text, _) = reminder("pt", "da").await;
    assert!(text.contains("Dear Ana Reyes,"), "{text}");
}

#[tokio::test]
async fn a_letter_on_the_screen_keeps_the_reader_s_frame_and_speaks_to_the_customer() {
    let open = TestShop::open().await;
    let bo = open.keeper(&Keeper { mail: "", ..ANA }).await;
    let vehicle = open.vehicle_of(bo, "NM 47 KTR").await;
    open.set("customers", "language", "pl").await;
    open.owes(vehicle, DutyKind::Filter, "shop.filter", date!(2026 - 06 - 11)).await;
    open.rounds().0.once(true).await.unwrap();
    let id = open.messages().await.remove(0).id;
    let desk = open.desk().await;
    let page = desk.get(&format!("/outbox/{id}/letter")).await;
    page.is(200).says("Print this page").says("Państwa odpowiedź").says("Filtr").hides("Your answer");
    assert!(page.html().contains("<html lang=\"en\"") && page.html().contains("<div lang=\"pl\""));
    let pdf = desk.get(&format!("/outbox/{id}/letter/pdf")).await;
    assert_eq!(pdf.is(200).headers["content-disposition"], "inline; filename=\"list.pdf\"");
    Paper::new("letter-of-the-outbox-pl", &pdf.bytes).says("Chcę przyjechać");
}

#[tokio::test]
async fn the_owner_s_sheet_of_a_job_is_in_the_keeper_s_language_and_the_certificate_in_the_shop_s() {
    let open = TestShop::open().await;
    let told = open.told().await;
    open.set("customers", "language", "de-AT").await;
    open.set("branches", "language", "fr").await;
    let desk = open.desk().await;
    let sheet = desk.get(&format!("/jobs/{}/papers/owner-sheet", told.job)).await;
    assert_eq!(sheet.is(200).headers["content-disposition"], "inline; filename=\"merkblatt-gasfahrzeug.pdf\"");
    let paper = Paper::new("owner-sheet-of-a-job-de", &sheet.bytes);
    paper.says("Ihr Fahrzeug fährt mit Flüssiggas (LPG)");
    paper.says("Erste Kontrolle");
    paper.says("112 oder die örtliche Notrufnummer anrufen");
    let vera = open.actor(open.vera).await;
    let id = open.shop.issue_certificate(&vera, None, told.job, crate::told::seen()).await.unwrap();
    let found = open.shop.find_paper(open.branch, id).await.unwrap().unwrap();
    assert_eq!(found.content.language, "en");
    Paper::new("certificate-of-a-french-shop", &open.shop.issued_pdf(&found.paper).await.unwrap())
        .says("Certificate of conversion to LPG");
}

#[tokio::test]
async fn a_stranger_reads_how_a_paper_stands_in_the_language_of_the_browser() {
    let open = TestShop::open().await;
    let told = open.told().await;
    let vera = open.actor(open.vera).await;
    let id = open.shop.issue_certificate(&vera, None, told.job, crate::told::seen()).await.unwrap();
    let paper = open.shop.find_paper(open.branch, id).await.unwrap().unwrap().paper;
    let read = async |address: &str, wanted: &str| {
        let request = axum::http::Request::get(address).header("accept-language", wanted);
        open.stranger().send(request.body(axum::body::Body::empty()).unwrap()).await
    };
    let at = format!("/verify/{}", paper.code);
    for (wanted, lang, stands) in [
        ("de-AT,de;q=0.9,en;q=0.8", "de", "gilt, wie sie ausgestellt wurde"),
        ("pl", "pl", "obowiązuje tak, jak zostało wystawione"),
        ("sv,tr;q=0.4", "tr", "düzenlendiği gibi geçerlidir"),
        ("sv", "en", "stands as it was issued"),
    ] {
        let page = read(&at, wanted).await;
        page.is(200).says(stands).says(&paper.number);
        assert!(String::from_utf8_lossy(&page.bytes).contains(&format!("<html lang=\"{lang}\"")), "{wanted}");
        assert!(page.headers.get_all("vary").iter().any(|one| one == "accept-language"));
    }
    read("/verify/AAAA-BBBB-CCCC-DDDD", "fr").await.is(404).says("Aucun document");
    read("/verify", "nl").await.is(200).says("Een document controleren");
    read("/vehicle/AAAA-BBBB-CCCC-DDDD", "it").await.is(404);
}

#[tokio::test]
async fn the_forms_offer_languages_by_their_own_names_and_keep_one_they_do_not_know() {
    let open = TestShop::open().await;
    let desk = open.desk().await;
    for page in ["/customers/new", "/arrivals/new"] {
        desk.get(page).await.is(200).says("Polski").says("Türkçe").says("Deutsch");
    }
    open.manager().await.get("/office/shop").await.is(200).says("Nederlands");
    let ana = open.keeper(&ANA).await;
    open.set("customers", "language", "pt").await;
    let edit = desk.get(&format!("/customers/{ana}/edit")).await;
    assert_eq!(edit.is(200).field("language").as_deref(), Some("pt"));
}

#[tokio::test]
async fn a_translation_is_not_reviewed_until_a_manager_notes_who_read_it() {
    let open = TestShop::open().await;
    let (manager, auditor) = (open.manager().await, open.auditor().await);
    let shown = |text: String| text.matches("Translation not reviewed").count();
    assert_eq!(shown(auditor.get("/office/languages").await.is(200).text()), 7);
    let future = [("reviewed_by", "R. Tolland"), ("reviewed_on", "2031-01-01")];
    manager.post("/office/languages/pl", &future).await.is(422).says("This is in the future");
    manager.post("/office/languages/pl", &[("reviewed_by", ""), ("reviewed_on", "2026-05-02")]).await.is(422);
    manager.post("/office/languages/en", &[("reviewed_by", "R. Tolland"), ("reviewed_on", "2026-05-02")]).await.is(404);
    let read = [("reviewed_by", "R. Tolland, fitter"), ("reviewed_on", "2026-05-02")];
    assert_eq!(manager.post("/office/languages/pl", &read).await.goes_to(), "/office/languages");
    let page = auditor.get("/office/languages").await;
    page.says("Read by R. Tolland, fitter on 2 May 2026");
    assert_eq!(shown(page.text()), 6);
    auditor.get("/office/log").await.says("Changed a setting");
    // Words of another version of the program are other words.
    let mut tx = open.shop.db.write().await.unwrap();
    sqlx::query(
        "update settings set value = '2026-05-02 0.0.9 R. Tolland, fitter' where name = 'language-reviewed-pl'",
    )
    .execute(&mut *tx)
    .await
    .unwrap();
    tx.commit().await.unwrap();
    auditor.get("/office/languages").await.says("in version 0.0.9 of the program");
    manager.post("/office/languages/pl", &[("act", "withdraw")]).await;
    assert_eq!(shown(auditor.get("/office/languages").await.text()), 7);
}

/// The customer's own words, with a change.
fn changed(one: &fuelwright::model::customer::Customer, name: &str, in_latin: &str) -> NewCustomer {
    NewCustomer {
        name: name.into(),
        name_in_latin: in_latin.into(),
        address: one.address.clone(),
        phone: one.phone.clone(),
        mail: one.mail.clone(),
        language: one.language.clone(),
        reminder_basis: one.reminder_basis,
        reminder_basis_on: one.reminder_basis_on,
    }
}

#[tokio::test]
async fn a_name_beyond_the_letters_of_papers_is_kept_and_asks_for_a_spelling_before_a_paper_is_made() {
    let open = TestShop::open().await;
    let told = open.told().await;
    let (mara, vera) = (open.actor(open.mara).await, open.actor(open.vera).await);
    let keeper = {
        let mut con = open.shop.db.read().await.unwrap();
        fuelwright::db::jobs::find(&mut con, open.branch, told.job).await.unwrap().unwrap().keeper_id
    };
    let save = async |name: &str, spelling: &str| {
        let one = open.customer(keeper).await;
        open.shop.change_customer(&mara, None, keeper, one.version, changed(&one, name, spelling)).await.unwrap();
    };
    save("田中 花子", "").await;
    let signatory = open.signatory().await;
    let at = format!("/jobs/{}/papers", told.job);
    let field = format!("/customers/{keeper}/edit#name_in_latin");
    open.desk().await.get(&format!("/customers/{keeper}")).await.is(200).says("田中 花子").links_to(&field);
    signatory.get(&at).await.is(200).says("spelling in Latin letters").links_to(&field);
    let seen = [("photos_seen", "odometer"), ("photos_seen", "vin-plate"), ("photos_seen", "container-plate")];
    let sign: Vec<_> = seen.into_iter().chain([("password", PASSWORD)]).collect();
    signatory.post(&at, &sign).await.is(422).says("spelling in Latin letters").links_to(&field);
    // A spelling that cannot be printed either is refused beside its field, with everything typed kept.
    let one = open.customer(keeper).await;
    let typed = [
        ("name", "田中 花子"),
        ("name_in_latin", "田中"),
        ("address", "Fen Lane 7"),
        ("language", "en"),
        ("reminder_basis", "none"),
        ("opened_version", &one.version.to_string()),
    ];
    let again = open.desk().await.post(&format!("/customers/{keeper}"), &typed).await;
    assert_eq!(again.is(422).says("write it in Latin letters").field("name").as_deref(), Some("田中 花子"));

    save("田中 花子", "Tanaka Hanako").await;
    signatory.get(&at).await.is(200).hides("spelling in Latin letters");
    open.clock.advance(Duration::minutes(1));
    let id = open.shop.issue_certificate(&vera, None, told.job, crate::told::seen()).await.unwrap();
    let found = open.shop.find_paper(open.branch, id).await.unwrap().unwrap();
    let paper = Paper::new("certificate-of-a-name-beyond-fonts", &open.shop.issued_pdf(&found.paper).await.unwrap());
    paper.says("Tanaka Hanako");
    assert!(found.paper.personal.contains("田中 花子"), "the name itself is kept beside the signed content");
}

#[tokio::test]
async fn an_odd_letter_on_a_part_is_spelled_by_its_number_and_a_signatory_s_name_never_is() {
    let open = TestShop::open().await;
    let told = open.told().await;
    open.set("parts", "maker", "Nordlicht 田").await;
    let vera = open.actor(open.vera).await;
    let unreadable = fuelwright::model::person::Actor { name: "高橋".to_owned(), ..vera.clone() };
    let refused = open.shop.issue_certificate(&unreadable, None, told.job, crate::told::seen()).await;
    assert!(matches!(refused, Err(fuelwright::shop::Refusal::MayNot("refused-signatory-beyond-fonts"))));
    let id = open.shop.issue_certificate(&vera, None, told.job, crate::told::seen()).await.unwrap();
    let found = open.shop.find_paper(open.branch, id).await.unwrap().unwrap();
    let pdf = open.shop.issued_pdf(&found.paper).await.unwrap();
    Paper::new("certificate-of-an-odd-part", &pdf).says("Nordlicht [U+7530]");
    assert!(
        String::from_utf8_lossy(&found.paper.content).contains("Nordlicht 田"),
        "the signed content keeps the letter"
    );
}

#[tokio::test]
async fn a_name_that_can_be_printed_stands_beside_its_spelling() {
    let open = TestShop::open().await;
    let told = open.told().await;
    let (mara, vera) = (open.actor(open.mara).await, open.actor(open.vera).await);
    let mut con = open.shop.db.read().await.unwrap();
    let keeper = fuelwright::db::jobs::find(&mut con, open.branch, told.job).await.unwrap().unwrap().keeper_id;
    drop(con);
    let one = open.customer(keeper).await;
    let new = changed(&one, "Ελένη Μαρή", "Eleni Mari");
    open.shop.change_customer(&mara, None, keeper, one.version, new).await.unwrap();
    let id = open.shop.issue_certificate(&vera, None, told.job, crate::told::seen()).await.unwrap();
    let found = open.shop.find_paper(open.branch, id).await.unwrap().unwrap();
    Paper::new("certificate-of-two-spellings", &open.shop.issued_pdf(&found.paper).await.unwrap())
        .says("Ελένη Μαρή (Eleni Mari)");
}

#[tokio::test]
async fn a_vehicle_beyond_the_letters_of_papers_makes_no_owner_s_sheet_and_leads_to_its_form() {
    let open = TestShop::open().await;
    let told = open.told().await;
    open.set("vehicles", "model", "田 1.6").await;
    let signatory = open.signatory().await;
    let sheet = signatory.get(&format!("/jobs/{}/papers/owner-sheet", told.job)).await;
    let vehicle = {
        let mut con = open.shop.db.read().await.unwrap();
        fuelwright::db::jobs::find(&mut con, open.branch, told.job).await.unwrap().unwrap().vehicle_id
    };
    sheet.is(422).says("letters the papers cannot print").links_to(&format!("/vehicles/{vehicle}/edit#model"));
    let vera = open.actor(open.vera).await;
    assert!(open.shop.issue_certificate(&vera, None, told.job, crate::told::seen()).await.is_err());
}
