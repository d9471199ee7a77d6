//! A shop to test in: a store in a temporary folder, a clock that stands, a cast of every role, and browsers that keep
//! their cookies.
#![allow(dead_code, reason = "a cast for every test, of which each uses a part")]

use std::cell::RefCell;
use std::sync::Arc;

use axum::Router;
use axum::body::Body;
use axum::http::{Request, StatusCode, header};
use fuelwright::clock::Clock;
use fuelwright::config::Config;
use fuelwright::db::Database;
use fuelwright::model::branch::{Branch, PaperSize};
use fuelwright::model::ids::{BranchId, PersonId};
use fuelwright::model::person::{Actor, Person, Role};
use fuelwright::seal::Signer;
use fuelwright::shop::issue::Issuer;
use fuelwright::shop::people::NewGrant;
use fuelwright::shop::sign_in::From;
use fuelwright::shop::{Hasher, Shop};
use fuelwright::unit::Units;
use fuelwright::web::app::App;
use fuelwright::web::routes;
use http_body_util::BodyExt;
use scraper::{Html, Selector};
use tempfile::TempDir;
use time::macros::{date, datetime};
use tower::ServiceExt;

/// The password of the whole cast.
pub const PASSWORD: &str = "gas-tight at 210 kPa";

pub struct TestShop {
    pub shop: Shop,
    pub clock: Clock,
    pub app: App,
    pub branch: BranchId,
    /// Manages the shop.
    pub ilse: PersonId,
    /// At the desk.
    pub mara: PersonId,
    /// Technician without the right to sign.
    pub jon: PersonId,
    /// Technician with the right to sign.
    pub vera: PersonId,
    /// Auditor.
    pub odo: PersonId,
    pub folder: TempDir,
}

impl TestShop {
    /// A shop on Tuesday, 12 May 2026, at 09:00 UTC.
    pub async fn open() -> Self {
        let mut open = Self::empty().await;
        let (branch, ilse) = (branch("Saltmarsh Autogas"), person("Ilse Brandt", "IB", "ilse"));
        (open.branch, open.ilse) = (branch.id, ilse.id);
        let code = open.shop.make_set_up_code().await.unwrap();
        open.shop.set_up(code.as_text(), branch, ilse, PASSWORD).await.unwrap();
        open.mara = open.add("Mara Lind", "ML", "mara", &[Role::Desk]).await;
        open.jon = open.add("Jon Aspen", "JA", "jon", &[Role::Technician]).await;
        open.vera = open.add("Vera Holm", "VH", "vera", &[Role::Technician]).await;
        open.odo = open.add("Odo Finch", "OF", "odo", &[Role::Auditor]).await;
        let grant = NewGrant { authorisation_number: "NM-2031".into(), expires_on: date!(2027 - 05 - 31) };
        open.shop.change_signing(&open.actor(open.ilse).await, None, open.vera, Some(grant)).await.unwrap();
        open
    }

    /// A store in which nobody was ever entered.
    pub async fn empty() -> Self {
        let folder = TempDir::new().unwrap();
        let clock = Clock::standing_at(datetime!(2026-05-12 09:00 UTC));
        let config = Config::of_folder(folder.path());
        let db = Database::open(&config.database()).await.unwrap();
        let issuer = Issuer::new(Signer::from_random(&[7; 32]), Some("https://shop.example".to_owned()), false);
        let shop = Shop { db, clock: clock.clone(), hasher: Hasher::quick(), issuer };
        let app = App { shop: shop.clone(), config: Arc::new(config) };
        let nobody = PersonId::new();
        let (ilse, mara, jon, vera, odo) = (nobody, nobody, nobody, nobody, nobody);
        Self { shop, clock, app, branch: BranchId::new(), ilse, mara, jon, vera, odo, folder }
    }

    /// The same shop, reached from outside by this link.
    pub fn at(mut self, public_url: &str) -> Self {
        let mut config = (*self.app.config).clone();
        config.public_url = Some(public_url.into());
        self.app.config = Arc::new(config);
        self
    }

    /// Somebody who works in a second branch only.
    pub async fn person_of_another_branch(&self) -> PersonId {
        let (branch, person) = (branch("Harbour Branch"), person("Una Reed", "UR", "una"));
        let mut tx = self.shop.db.write().await.unwrap();
        fuelwright::db::branches::insert(&mut tx, &branch).await.unwrap();
        fuelwright::db::people::insert(&mut tx, &person).await.unwrap();
        let now = self.clock.now();
        fuelwright::db::people::insert_role(&mut tx, person.id, branch.id, Role::Manager, now).await.unwrap();
        tx.commit().await.unwrap();
        person.id
    }

    /// Adds somebody who has chosen the cast's password.
    pub async fn add(&self, name: &str, initials: &str, sign_in_name: &str, roles: &[Role]) -> PersonId {
        let manager = self.actor(self.ilse).await;
        let added =
            self.shop.add_person(&manager, None, person(name, initials, sign_in_name), roles.to_vec()).await.unwrap();
        self.shop.choose_password(&added.code, PASSWORD, "192.0.2.1").await.unwrap()
    }

    /// What deeds are told about one of the cast.
    pub async fn actor(&self, person: PersonId) -> Actor {
        let mut con = self.shop.db.read().await.unwrap();
        fuelwright::db::people::actor(&mut con, person, self.branch).await.unwrap().expect("has a role")
    }

    /// A browser in which this person is signed in.
    pub async fn browser(&self, sign_in_name: &str) -> Browser {
        let token = self.shop.sign_in(sign_in_name, PASSWORD, &From::default()).await.unwrap();
        let browser = self.stranger();
        browser.cookies.borrow_mut().push(("sid".into(), token.as_text().into()));
        browser
    }

    /// A browser in which nobody is signed in.
    pub fn stranger(&self) -> Browser {
        Browser { router: routes::router(&self.app), cookies: RefCell::default() }
    }

    pub async fn manager(&self) -> Browser {
        self.browser("ilse").await
    }

    pub async fn desk(&self) -> Browser {
        self.browser("mara").await
    }

    pub async fn technician(&self) -> Browser {
        self.browser("jon").await
    }

    pub async fn signatory(&self) -> Browser {
        self.browser("vera").await
    }

    pub async fn auditor(&self) -> Browser {
        self.browser("odo").await
    }
}

/// A branch in the invented place of the tests.
pub fn branch(name: &str) -> Branch {
    Branch {
        id: BranchId::new(),
        name: name.into(),
        address: "4 Quay Lane\nNorthmere".into(),
        phone: "+44 1632 960100".into(),
        mail: "shop@example.org".into(),
        licence_number: "NM-W-17".into(),
        licence_expires_on: Some(date!(2027 - 12 - 31)),
        country: "GB".into(),
        time_zone: "Europe/London".into(),
        currency: "GBP".into(),
        language: "en".into(),
        paper_size: PaperSize::A4,
        units: Units::KEPT,
        version: 1,
    }
}

pub fn person(name: &str, initials: &str, sign_in_name: &str) -> Person {
    Person {
        id: PersonId::new(),
        name: name.into(),
        initials: initials.into(),
        sign_in_name: sign_in_name.into(),
        mail: format!("{sign_in_name}@example.org"),
        language: String::new(),
        sees_contacts: false,
        ended_on: None,
        version: 1,
    }
}

/// A browser without window or script: keeps cookies, names its site, sends forms with a key.
pub struct Browser {
    pub router: Router,
    pub cookies: RefCell<Vec<(String, String)>>,
}

impl Browser {
    pub async fn get(&self, path: &str) -> Page {
        self.send(Request::get(path).body(Body::empty()).unwrap()).await
    }

    /// Sends a form from our own page, with a fresh key unless the fields bring one.
    pub async fn post(&self, path: &str, fields: &[(&str, &str)]) -> Page {
        let mut form = form_urlencoded::Serializer::new(String::new());
        form.extend_pairs(fields);
        if !fields.iter().any(|(name, _)| *name == "key") {
            form.append_pair("key", &uuid::Uuid::now_v7().to_string());
        }
        let request = Request::post(path)
            .header(header::CONTENT_TYPE, "application/x-www-form-urlencoded")
            .header("sec-fetch-site", "same-origin")
            .body(Body::from(form.finish()))
            .unwrap();
        self.send(request).await
    }

    /// Sends any request, with this browser's cookies.
    pub async fn send(&self, mut request: Request<Body>) -> Page {
        let cookies = self.cookies.borrow().iter().map(|(name, value)| format!("{name}={value}")).collect::<Vec<_>>();
        if !cookies.is_empty() {
            request.headers_mut().insert(header::COOKIE, cookies.join("; ").parse().unwrap());
        }
        let response = self.router.clone().oneshot(request).await.unwrap();
        for line in response.headers().get_all(header::SET_COOKIE) {
            let (pair, rest) = line.to_str().unwrap().split_once(';').unwrap();
            let (name, value) = pair.split_once('=').unwrap();
            let mut cookies = self.cookies.borrow_mut();
            cookies.retain(|(known, _)| known != name);
            if !rest.contains("Max-Age=0") {
                cookies.push((name.into(), value.into()));
            }
        }
        let (parts, body) = response.into_parts();
        let bytes = body.collect().await.unwrap().to_bytes().to_vec();
        Page { status: parts.status, headers: parts.headers, bytes }
    }
}

/// What came back.
pub struct Page {
    pub status: StatusCode,
    pub headers: axum::http::HeaderMap,
    pub bytes: Vec<u8>,
}

impl Page {
    pub fn html(&self) -> String {
        String::from_utf8_lossy(&self.bytes).into_owned()
    }

    /// What a reader sees, with every run of white space made one blank.
    pub fn text(&self) -> String {
        let html = Html::parse_document(&self.html());
        let text: String = html.root_element().text().collect::<Vec<_>>().join(" ");
        text.split_whitespace().collect::<Vec<_>>().join(" ")
    }

    /// Fails unless the page shows this text.
    #[track_caller]
    pub fn says(&self, wanted: &str) -> &Self {
        assert!(self.text().contains(wanted), "{wanted:?} is not in ({}): {}", self.status, self.text());
        self
    }

    /// Fails if the page shows this text.
    #[track_caller]
    pub fn hides(&self, unwanted: &str) -> &Self {
        assert!(!self.text().contains(unwanted), "{unwanted:?} is in: {}", self.text());
        self
    }

    /// Fails unless the page has a link to this address.
    #[track_caller]
    pub fn links_to(&self, address: &str) -> &Self {
        let html = Html::parse_document(&self.html());
        let links: Vec<&str> =
            html.select(&Selector::parse("a[href]").unwrap()).filter_map(|a| a.attr("href")).collect();
        assert!(links.contains(&address), "no link to {address} among {links:?}");
        self
    }

    /// The text of the first element that a CSS selector finds.
    #[track_caller]
    pub fn select(&self, selector: &str) -> String {
        let html = Html::parse_document(&self.html());
        let found = html.select(&Selector::parse(selector).unwrap()).next();
        found
            .unwrap_or_else(|| panic!("no {selector} in: {}", self.text()))
            .text()
            .collect::<String>()
            .trim()
            .to_owned()
    }

    /// What a field of the page holds: its value, or the text of a text area, or the chosen option.
    pub fn field(&self, name: &str) -> Option<String> {
        let html = Html::parse_document(&self.html());
        let named = Selector::parse(&format!("[name='{name}']")).unwrap();
        let field = html.select(&named).next()?;
        match field.value().name() {
            "textarea" => Some(field.text().collect()),
            "select" => {
                let chosen = Selector::parse("option[selected]").unwrap();
                field.select(&chosen).next().and_then(|option| option.attr("value")).map(str::to_owned)
            }
            _ => field.attr("value").map(str::to_owned),
        }
    }

    /// Fails unless the answer has this status.
    #[track_caller]
    pub fn is(&self, status: u16) -> &Self {
        assert_eq!(self.status.as_u16(), status, "{}", self.text());
        self
    }

    /// Fails unless the answer sends the browser on; gives the address.
    #[track_caller]
    pub fn goes_to(&self) -> String {
        assert_eq!(self.status, StatusCode::SEE_OTHER, "{}", self.text());
        self.headers[header::LOCATION].to_str().unwrap().to_owned()
    }
}
