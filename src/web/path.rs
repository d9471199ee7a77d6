//! Links, each made in one place, so that an address can change without a search.

use std::fmt::Display;

/// The first start.
pub const SET_UP: &str = "/set-up";
/// The opening screen.
pub const TODAY: &str = "/";
/// People of the branch.
pub const PEOPLE: &str = "/office/people";
/// The shop block.
pub const SHOP: &str = "/office/shop";

/// The sign-in form, and where to go afterwards.
pub fn sign_in(wanted: &str) -> String {
    if wanted == "/" {
        return "/sign-in".to_owned();
    }
    let wanted: String = form_urlencoded::byte_serialize(wanted.as_bytes()).collect();
    format!("/sign-in?wanted={wanted}")
}

/// One of the people.
pub fn person(id: impl Display) -> String {
    format!("{PEOPLE}/{id}")
}

/// A place in this house, taken from outside: a path that begins with one slash and goes nowhere else.
pub fn inside(wanted: &str) -> &str {
    let plain = wanted.starts_with('/') && !wanted.starts_with("//") && !wanted.contains(['\\', '\r', '\n', '\t']);
    if plain && !wanted.starts_with("/sign-") { wanted } else { TODAY }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_place_wanted_after_sign_in_is_never_outside() {
        assert_eq!(inside("/jobs?open=1"), "/jobs?open=1");
        for bad in ["//evil.example", "https://evil.example", "/\\evil.example", "javascript:alert(1)", "", "/sign-out"]
        {
            assert_eq!(inside(bad), "/", "{bad}");
        }
    }
}
