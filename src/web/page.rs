//! A template as an answer, and what every page has around it.
//!
//! Nothing here is kept by a browser or a proxy: each answer says `no-store`.

use std::any::Any;

use askama::Template;
use axum::http::{HeaderValue, StatusCode, header};
use axum::response::{Html, IntoResponse, Redirect, Response};

use super::{Answer, Error};
use crate::words::Words;

/// What stands around the content of a page.
#[derive(Debug, Clone, Default)]
pub struct Frame {
    /// The words of the visitor's language.
    pub w: Words,
    /// The shop's name; empty before set-up.
    pub shop_name: String,
    /// Who is signed in.
    pub person: Option<PersonBadge>,
    /// The main screen that this page belongs to.
    pub here: Place,
    /// A demonstration shop: every page says so.
    pub is_demo: bool,
    /// Served over plain HTTP to other machines.
    pub is_insecure_lan: bool,
    /// What the last deed has to say, in ready words.
    pub notices: Vec<String>,
}

/// The person of the top bar.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PersonBadge {
    pub name: String,
    pub sign_in_name: String,
    /// The end of a key `role-…`: manager, desk, technician, auditor.
    pub role: String,
    pub is_signatory: bool,
}

/// A main screen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Place {
    #[default]
    Elsewhere,
    Today,
    BayPlan,
    Jobs,
    Vehicles,
    Customers,
    Due,
    Papers,
    Bench,
    Instruments,
    Outbox,
    Office,
}

/// One entry of the main navigation.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NavItem {
    pub place: Place,
    pub href: &'static str,
    /// Its key in the words.
    pub key: &'static str,
}

const fn item(place: Place, href: &'static str, key: &'static str) -> NavItem {
    NavItem { place, href, key }
}

/// The screens that stand in the bar.
const MAIN: [NavItem; 7] = [
    item(Place::Today, "/", "nav-today"),
    item(Place::BayPlan, "/bay-plan", "nav-bay-plan"),
    item(Place::Jobs, "/jobs", "nav-jobs"),
    item(Place::Vehicles, "/vehicles", "nav-vehicles"),
    item(Place::Due, "/due", "nav-due"),
    item(Place::Papers, "/papers", "nav-papers"),
    item(Place::Bench, "/bench", "nav-bench"),
];

/// The screens behind "More".
const MORE: [NavItem; 4] = [
    item(Place::Customers, "/customers", "nav-customers"),
    item(Place::Instruments, "/instruments", "nav-instruments"),
    item(Place::Outbox, "/outbox", "nav-outbox"),
    item(Place::Office, "/office", "nav-office"),
];

impl Frame {
    /// The sentence under a key.
    pub fn t(&self, key: impl AsRef<str>) -> String {
        self.w.t(key)
    }

    /// The screens that stand in the bar.
    pub fn main_nav(&self) -> &'static [NavItem] {
        &MAIN
    }

    /// The screens behind "More".
    pub fn more_nav(&self) -> &'static [NavItem] {
        &MORE
    }

    /// Whether the page belongs to a screen behind "More".
    pub fn is_in_more(&self) -> bool {
        MORE.iter().any(|item| self.is_here(item))
    }

    /// Whether the page belongs to this screen.
    pub fn is_here(&self, item: &NavItem) -> bool {
        item.place == self.here
    }

    /// The same frame for another screen.
    #[must_use]
    pub fn at(mut self, here: Place) -> Self {
        self.here = here;
        self
    }

    /// The key of the signed-in person's role.
    pub fn role_key(&self) -> String {
        self.person.as_ref().map_or(String::new(), |person| format!("role-{}", person.role))
    }

    /// The address of a style sheet by its bare name.
    pub fn sheet(&self, name: &str) -> String {
        self.asset(&format!("css/{name}.css"))
    }

    /// The address of a script by its bare name.
    pub fn script(&self, name: &str) -> String {
        self.asset(&format!("js/{name}.js"))
    }

    /// The address of a style sheet, script or picture, with its content's hash in it.
    pub fn asset(&self, path: &str) -> String {
        super::assets::href(path)
    }
}

/// The page, with 200.
pub fn page<T: Template>(template: T) -> Answer {
    page_with(StatusCode::OK, template)
}

/// The page again with everything typed and what is wrong, with 422.
pub fn retry<T: Template>(template: T) -> Answer {
    page_with(StatusCode::UNPROCESSABLE_ENTITY, template)
}

/// On to another page after a deed, so that reloading does not do it twice.
pub fn see_other(path: impl AsRef<str>) -> Answer {
    Ok(no_store(Redirect::to(path.as_ref()).into_response()))
}

/// The page with another status, for errors.
pub fn page_with<T: Template>(status: StatusCode, template: T) -> Answer {
    let returned = Returned(status == StatusCode::UNPROCESSABLE_ENTITY);
    let html = template.render_with_values(&returned).map_err(|error| Error::Broken(error.to_string()))?;
    Ok(no_store((status, Html(html)).into_response()))
}

fn no_store(mut response: Response) -> Response {
    response.headers_mut().insert(header::CACHE_CONTROL, HeaderValue::from_static("no-store"));
    response
}

/// Whether the page came back with errors.
struct Returned(bool);

impl askama::Values for Returned {
    fn get_value<'a>(&'a self, key: &str) -> Option<&'a dyn Any> {
        (key == "is_retry").then_some(&self.0 as &dyn Any)
    }
}
