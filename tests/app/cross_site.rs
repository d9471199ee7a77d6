//! The rule against requests that another site makes a browser send: each row, on every route that changes something;
//! and the headers that every answer carries.

use axum::body::Body;
use axum::http::{Method, Request, header};
use fuelwright::web::routes;

use crate::support::{Browser, TestShop};

/// Sec-Fetch-Site, Origin, a session's cookie, a bearer token, and whether the request is let through.
type Row = (Option<&'static str>, Option<&'static str>, bool, bool, bool);

const ROWS: &[Row] = &[
    (Some("same-origin"), None, true, false, true),
    (Some("same-origin"), Some("http://shop.example"), true, false, true),
    (Some("none"), None, true, false, true),
    (Some("none"), Some("http://shop.example"), true, false, true),
    (Some("none"), Some("http://evil.example"), true, false, false),
    (Some("same-site"), Some("http://shop.example"), true, false, false),
    (Some("cross-site"), None, true, false, false),
    (Some("cross-site"), Some("http://shop.example"), true, false, false),
    (None, Some("http://shop.example"), true, false, true),
    (None, Some("http://evil.example"), true, false, false),
    (None, Some("http://shop.example.evil.example"), true, false, false),
    (None, Some("null"), true, false, false),
    (None, None, true, false, false),
    (None, None, true, true, false),
    (None, None, false, true, true),
    (None, None, false, false, false),
];

async fn status(browser: &Browser, route: &routes::Route, row: &Row) -> u16 {
    let (site, origin, cookie, bearer, _) = row;
    let id = "01900000-0000-7000-8000-000000000000";
    let parts = route.address.split('/').map(|part| if part.starts_with('{') { id } else { part });
    let mut request = Request::builder().method(route.method.clone()).uri(parts.collect::<Vec<_>>().join("/"));
    request = request.header(header::HOST, "shop.example");
    if let Some(site) = site {
        request = request.header("sec-fetch-site", *site);
    }
    if let Some(origin) = origin {
        request = request.header(header::ORIGIN, *origin);
    }
    if *bearer {
        request = request.header(header::AUTHORIZATION, "Bearer x");
    }
    if *cookie {
        request = request.header(header::COOKIE, "sid=somebody");
    }
    browser.send(request.body(Body::empty()).unwrap()).await.status.as_u16()
}

#[tokio::test]
async fn every_row_holds_on_every_route_that_changes_something() {
    let open = TestShop::open().await;
    let browser = open.stranger();
    let mut walked = 0;
    for route in routes::table().iter().filter(|route| route.method != Method::GET) {
        for row in ROWS {
            let passed = status(&browser, route, row).await != 403;
            // The one click of RFC 8058 comes from no browser and carries nothing but its secret address.
            let is_click = *row == (None, None, false, false, false) && route.address.starts_with("/unsubscribe/");
            assert_eq!(passed, row.4 || is_click, "{} {} {row:?}", route.method, route.address);
            walked += 1;
        }
    }
    assert!(walked >= 10 * ROWS.len());
}

#[tokio::test]
async fn every_answer_carries_the_headers() {
    let open = TestShop::open().await;
    for path in ["/sign-in", "/nowhere", "/healthz", "/office"] {
        let page = open.stranger().get(path).await;
        let header =
            |name: &str| page.headers.get(name).unwrap_or_else(|| panic!("{path}: no {name}")).to_str().unwrap();
        assert!(header("content-security-policy").starts_with("default-src 'none'"));
        assert!(!header("content-security-policy").contains("unsafe"));
        assert_eq!(header("x-content-type-options"), "nosniff");
        assert_eq!(header("referrer-policy"), "same-origin");
        assert_eq!(header("cross-origin-opener-policy"), "same-origin");
        assert_eq!(header("cross-origin-resource-policy"), "same-origin");
        assert_eq!(header("cache-control"), "no-store");
        assert!(header("vary").contains("sec-fetch-site"));
        assert!(page.headers.get("strict-transport-security").is_none(), "a promise of https on plain http");
    }
}

#[tokio::test]
async fn methods_that_nobody_offers_are_refused() {
    let open = TestShop::open().await;
    for method in ["TRACE", "PUT", "DELETE"] {
        let request = Request::builder().method(method).uri("/sign-in").header("sec-fetch-site", "same-origin");
        assert_eq!(open.stranger().send(request.body(Body::empty()).unwrap()).await.status.as_u16(), 405, "{method}");
    }
}

#[tokio::test]
async fn behind_https_the_cookie_is_bound_to_the_host_and_the_origin_is_the_configured_one() {
    let open = TestShop::open().await.at("https://shop.example.org");
    let browser = open.stranger();
    let form = "sign_in_name=ilse&password=gas-tight+at+210+kPa";
    let post = |origin: &str| {
        Request::post("/sign-in")
            .header(header::HOST, "inside.example")
            .header(header::ORIGIN, origin)
            .header(header::CONTENT_TYPE, "application/x-www-form-urlencoded")
            .body(Body::from(form))
            .unwrap()
    };
    browser.send(post("http://inside.example")).await.is(403);
    let page = browser.send(post("https://shop.example.org")).await;
    page.is(303);
    let cookie = page.headers[header::SET_COOKIE].to_str().unwrap();
    assert!(cookie.starts_with("__Host-sid="), "{cookie}");
    for part in ["Path=/", "HttpOnly", "SameSite=Lax", "Secure"] {
        assert!(cookie.contains(part), "{part} in {cookie}");
    }
    assert!(!cookie.contains("Domain"));
    assert!(page.headers["strict-transport-security"].to_str().unwrap().contains("max-age=31536000"));
}
