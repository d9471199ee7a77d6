//! Long lists: what is looked for, and which page of what was found.

use crate::db::search::Wanted;
use crate::web::form::{Form, Typed};
use crate::web::kit::Pages;
use crate::words::Words;

/// Lines on a page.
const MOST: i64 = 50;

/// A list as it was asked for in the address: `?q=…&page=…`.
#[derive(Debug)]
pub struct Listing {
    pub form: Form,
    address: &'static str,
    page: i64,
}

impl Listing {
    /// Reads the query of `address`.
    pub fn of(address: &'static str, query: Option<&str>) -> Self {
        let form = Form::from(Typed::from_query(query.unwrap_or_default()));
        let page = form.value("page").parse().unwrap_or(1).clamp(1, 100_000);
        Self { form, address, page }
    }

    /// What is looked for.
    pub fn q(&self) -> &str {
        self.form.value("q").trim()
    }

    /// What is looked for, for `db`.
    pub fn wanted(&self) -> Wanted {
        Wanted::new(self.q())
    }

    /// How many lines lie on the pages before.
    pub fn first(&self) -> i64 {
        (self.page - 1) * MOST
    }

    /// How many lines to ask for: one more than are shown, which tells whether a page follows.
    pub fn most() -> i64 {
        MOST + 1
    }

    /// Cuts the line too many off and gives the ways to the pages around.
    pub fn pages<T>(&self, w: Words, found: &mut Vec<T>) -> Pages {
        let most = usize::try_from(MOST).unwrap_or(usize::MAX);
        let goes_on = found.len() > most;
        found.truncate(most);
        Pages {
            w,
            previous: (self.page > 1).then(|| self.href(self.page - 1)),
            next: goes_on.then(|| self.href(self.page + 1)),
        }
    }

    fn href(&self, page: i64) -> String {
        let mut query = form_urlencoded::Serializer::new(String::new());
        for name in ["state", "stage", "q"] {
            if !self.form.value(name).is_empty() {
                query.append_pair(name, self.form.value(name));
            }
        }
        query.append_pair("page", &page.to_string());
        format!("{}?{}", self.address, query.finish())
    }
}
