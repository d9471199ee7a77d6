//! Who may go where: written down by hand, held against the table of routes.
//!
//! A route of the table that is missing here fails the test, and so does a row here whose route is gone. Each row is tried
//! with every role. What is asked: may the role pass the gate? Whether the thing behind is there is another matter, so a
//! 404 or 422 behind the gate counts as let in.

use axum::http::{Method, Request, header};
use fuelwright::db::Db;
use fuelwright::web::routes;

use crate::job_support::Bay;
use crate::support::{Browser, TestShop};

/// Nobody signed in, manager, desk, technician, signatory (a technician), auditor: `x` may, `.` may not.
const MATRIX: &[(&str, &str, &str)] = &[
    //                                                    nobody manager desk technician signatory auditor
    ("GET", "/assets/{hash}/{*path}", "x x x x x x"),
    ("GET", "/healthz", "x x x x x x"),
    ("GET", "/readyz", "x x x x x x"),
    ("GET", "/set-up", "x x x x x x"),
    ("POST", "/set-up", "x x x x x x"),
    ("GET", "/sign-in", "x x x x x x"),
    ("POST", "/sign-in", "x x x x x x"),
    ("POST", "/sign-in/pin", "x x x x x x"),
    ("GET", "/welcome", "x x x x x x"),
    ("POST", "/welcome", "x x x x x x"),
    ("GET", "/account", ". x x x x x"),
    ("POST", "/account/password", ". x x x x x"),
    ("POST", "/account/pin", ". x x x x x"),
    ("POST", "/account/sessions/{id}/end", ". x x x x x"),
    ("GET", "/office", ". x x x x x"),
    ("GET", "/office/languages", ". x . . . x"),
    ("POST", "/office/languages/{tag}", ". x . . . ."),
    ("GET", "/office/log", ". x . . . x"),
    ("POST", "/office/only-one", ". x . . . ."),
    ("GET", "/office/shop", ". x . . . ."),
    ("POST", "/office/shop", ". x . . . ."),
    ("POST", "/office/four-eyes", ". x . . . ."),
    ("GET", "/office/keys", ". x . . . x"),
    ("POST", "/office/keys", ". x . . . ."),
    ("POST", "/office/keys/distrust", ". x . . . ."),
    ("GET", "/office/tablets", ". x . . . ."),
    ("POST", "/office/tablets", ". x . . . ."),
    ("POST", "/office/tablets/{id}/end", ". x . . . ."),
    ("GET", "/office/people", ". x . . . x"),
    ("GET", "/office/people/new", ". x . . . ."),
    ("POST", "/office/people", ". x . . . ."),
    ("GET", "/office/people/{id}", ". x . . . ."),
    ("POST", "/office/people/{id}", ". x . . . ."),
    ("POST", "/office/people/{id}/roles", ". x . . . ."),
    ("POST", "/office/people/{id}/signing", ". x . . . ."),
    ("POST", "/office/people/{id}/password-codes", ". x . . . ."),
    ("POST", "/office/people/{id}/sessions/end", ". x . . . ."),
    ("GET", "/jobs/{id}", ". x x x x x"),
    ("GET", "/jobs/{id}/stages/{stage}", ". x x x x x"),
    ("GET", "/jobs/{id}/arrival", ". x x x x x"),
    ("POST", "/jobs/{id}/arrival", ". x . x x ."),
    ("GET", "/jobs/{id}/suitability", ". x x x x x"),
    ("POST", "/jobs/{id}/suitability", ". x . x x ."),
    ("GET", "/jobs/{id}/nozzle-sizing", ". x x x x x"),
    ("POST", "/jobs/{id}/nozzle-sizing", ". x . x x ."),
    ("GET", "/jobs/{id}/leak-joints/{subject}", ". x x x x x"),
    ("POST", "/jobs/{id}/leak-joints/{subject}", ". x . x x ."),
    ("GET", "/jobs/{id}/leak-joints/{subject}/guide", ". x x x x x"),
    ("POST", "/jobs/{id}/leak-joints/{subject}/guide", ". x . x x ."),
    ("GET", "/jobs/{id}/leak-decay/{subject}", ". x x x x x"),
    ("POST", "/jobs/{id}/leak-decay/{subject}", ". x . x x ."),
    ("POST", "/jobs/{id}/leak-decay/{subject}/readings", ". x . x x ."),
    ("POST", "/jobs/{id}/leak-decay/{subject}/sums", ". x . x x ."),
    ("GET", "/jobs/{id}/estimate", ". x x x x x"),
    ("GET", "/jobs/{id}/estimate/new", ". x x . . ."),
    ("POST", "/jobs/{id}/estimate", ". x x . . ."),
    ("POST", "/jobs/{id}/estimate/agreement", ". x x . . ."),
    ("GET", "/jobs/{id}/estimate/{number}", ". x x x x x"),
    ("GET", "/jobs/{id}/estimate/{number}/pdf", ". x x x x x"),
    ("GET", "/jobs/{id}/estimate/{number}/csv", ". x x x x x"),
    ("POST", "/jobs/{id}/deposits", ". x x . . ."),
    ("GET", "/jobs/{id}/deposits/{deposit}/receipt", ". x x x x x"),
    ("POST", "/jobs/{id}/deposits/{deposit}/return", ". x x . . ."),
    ("GET", "/jobs/{id}/road", ". x x x x x"),
    ("POST", "/jobs/{id}/road", ". x . x x ."),
    ("GET", "/jobs/{id}/road/{session}", ". x x x x x"),
    ("GET", "/jobs/{id}/road/{session}/columns", ". x x x x x"),
    ("POST", "/jobs/{id}/road/{session}/columns", ". x . x x ."),
    ("GET", "/jobs/{id}/road/{session}/corrections", ". x x x x x"),
    ("POST", "/jobs/{id}/road/{session}/acceptance", ". x . x x ."),
    ("GET", "/jobs/{id}/exhaust/{subject}", ". x x x x x"),
    ("POST", "/jobs/{id}/exhaust/{subject}", ". x . x x ."),
    ("GET", "/jobs/{id}/function-checks", ". x x x x x"),
    ("POST", "/jobs/{id}/function-checks", ". x . x x ."),
    ("GET", "/jobs/{id}/hand-over", ". x x x x x"),
    ("POST", "/jobs/{id}/hand-over", ". x x x x ."),
    ("GET", "/jobs/{id}/cylinder-table", ". x x x x x"),
    ("POST", "/jobs/{id}/cylinder-table", ". x . x x ."),
    ("GET", "/jobs/{id}/checklist", ". x x x x x"),
    ("POST", "/jobs/{id}/checklist", ". x . x x ."),
    ("GET", "/jobs/{id}/deficiencies", ". x x x x x"),
    ("POST", "/jobs/{id}/deficiencies", ". x . x x ."),
    ("GET", "/jobs/{id}/vessel-check", ". x x x x x"),
    ("POST", "/jobs/{id}/vessel-check", ". x . x x ."),
    ("GET", "/jobs/{id}/repeat", ". x x x x x"),
    ("POST", "/jobs/{id}/repeat", ". x x x x ."),
    ("POST", "/jobs/{id}/repair", ". x . x x ."),
    ("GET", "/jobs/{id}/level-sensing", ". x x x x x"),
    ("POST", "/jobs/{id}/level-sensing", ". x . x x ."),
    ("GET", "/jobs/{id}/parts", ". x x x x x"),
    ("POST", "/jobs/{id}/parts", ". x . x x ."),
    ("GET", "/jobs/{id}/parts/new", ". x . x x ."),
    ("GET", "/jobs/{id}/parts/{part}/edit", ". x . x x ."),
    ("POST", "/jobs/{id}/parts/{part}", ". x . x x ."),
    ("GET", "/jobs/{id}/parts/{part}/removal", ". x . x x ."),
    ("POST", "/jobs/{id}/parts/{part}/removal", ". x . x x ."),
    ("GET", "/jobs/{id}/waivers/{proof}", ". x x x x x"),
    ("POST", "/jobs/{id}/waivers/{proof}", ". . . . x ."),
    ("POST", "/jobs/{id}/waivers/{proof}/end", ". . . . x ."),
    ("GET", "/jobs/{id}/ending", ". x x x x x"),
    ("POST", "/jobs/{id}/ending", ". x x x x ."),
    ("POST", "/jobs/{id}/hold", ". x x x x ."),
    ("POST", "/jobs/{id}/hold/end", ". x x x x ."),
    ("POST", "/jobs/{id}/release", ". x x x x ."),
    ("POST", "/jobs/{id}/cancellation", ". x x x x ."),
    ("GET", "/jobs/{id}/container-sizing", ". x x x x x"),
    ("POST", "/jobs/{id}/container-sizing", ". x . x x ."),
    ("GET", "/jobs/{id}/cylinder-sizing", ". x x x x x"),
    ("POST", "/jobs/{id}/cylinder-sizing", ". x . x x ."),
    ("GET", "/jobs/{id}/discharge", ". x x x x x"),
    ("POST", "/jobs/{id}/discharge", ". x . x x ."),
    ("GET", "/jobs/{id}/heat-sizing", ". x x x x x"),
    ("POST", "/jobs/{id}/heat-sizing", ". x . x x ."),
    ("GET", "/jobs/{id}/line-sizing", ". x x x x x"),
    ("POST", "/jobs/{id}/line-sizing", ". x . x x ."),
    ("GET", "/jobs/{id}/engine-calibration", ". x x x x x"),
    ("POST", "/jobs/{id}/engine-calibration", ". x . x x ."),
    ("GET", "/jobs/{id}/trims", ". x x x x x"),
    ("POST", "/jobs/{id}/trims", ". x . x x ."),
    ("GET", "/jobs/{id}/after-drive", ". x x x x x"),
    ("POST", "/jobs/{id}/after-drive", ". x . x x ."),
    ("GET", "/due", ". x x x x x"),
    ("GET", "/due/{id}", ". x x x x x"),
    ("POST", "/due/{id}/closing", ". x x . . ."),
    ("POST", "/due/{id}/calls", ". x x . . ."),
    ("GET", "/bench", ". x x x x x"),
    ("GET", "/bench/fuel", ". x x x x x"),
    ("GET", "/bench/liquid", ". x x x x x"),
    ("GET", "/bench/gas", ". x x x x x"),
    ("GET", "/bench/nozzle", ". x x x x x"),
    ("GET", "/bench/nozzle-from-petrol", ". x x x x x"),
    ("GET", "/bench/nozzle-flow", ". x x x x x"),
    ("GET", "/bench/vaporiser", ". x x x x x"),
    ("GET", "/bench/regulator", ". x x x x x"),
    ("GET", "/bench/hose", ". x x x x x"),
    ("GET", "/bench/container", ". x x x x x"),
    ("GET", "/bench/cylinder", ". x x x x x"),
    ("GET", "/bench/fast-fill", ". x x x x x"),
    ("GET", "/bench/leak", ". x x x x x"),
    ("GET", "/bench/leak-plan", ". x x x x x"),
    ("GET", "/bench/leak-units", ". x x x x x"),
    ("GET", "/bench/lambda", ". x x x x x"),
    ("GET", "/bench/uncertainty", ". x x x x x"),
    ("GET", "/bench/economy", ". x x x x x"),
    ("GET", "/bench/due", ". x x x x x"),
    ("GET", "/bench/vin", ". x x x x x"),
    ("GET", "/outbox", ". x x . . x"),
    ("POST", "/outbox/held-run", ". x . . . ."),
    ("POST", "/outbox/settings", ". x . . . ."),
    ("GET", "/outbox/{id}", ". x x . . x"),
    ("POST", "/outbox/{id}", ". x x . . ."),
    ("GET", "/outbox/{id}/letter", ". x x . . ."),
    ("GET", "/outbox/{id}/letter/pdf", ". x x . . ."),
    ("GET", "/own/{token}", "x x x x x x"),
    ("GET", "/own/{token}/papers/{id}", "x x x x x x"),
    ("POST", "/own/{token}/reminders-off", "x x x x x x"),
    ("POST", "/own/{token}/slot", "x x x x x x"),
    ("GET", "/unsubscribe/{token}", "x x x x x x"),
    ("POST", "/unsubscribe/{token}", "x x x x x x"),
    ("GET", "/jobs/{id}/papers", ". x x x x x"),
    ("POST", "/jobs/{id}/papers", ". . . . x ."),
    ("POST", "/jobs/{id}/label", ". x x x x ."),
    ("GET", "/vehicle/{code}", "x x x x x x"),
    ("GET", "/jobs/{id}/papers/{kind}", ". x x x x x"),
    ("GET", "/jobs/{id}/photos", ". x x x x x"),
    ("POST", "/jobs/{id}/photos/{slot}", ". x . x x ."),
    ("GET", "/jobs/{id}/findings", ". x x x x x"),
    ("POST", "/jobs/{id}/findings", ". x . x x ."),
    ("GET", "/findings/{id}", ". x x x x x"),
    ("POST", "/findings/{id}/decision", ". x . x x ."),
    ("GET", "/findings", ". x x x x x"),
    ("GET", "/findings/recalls/new", ". x . x x ."),
    ("POST", "/findings/recalls", ". x . x x ."),
    ("GET", "/findings/rule-lines/new", ". x . . . ."),
    ("POST", "/findings/rule-lines", ". x . . . ."),
    ("POST", "/findings/{id}/error", ". x . x x ."),
    ("POST", "/findings/{id}/span", ". . . . x ."),
    ("POST", "/findings/{id}/letters", ". x x . . ."),
    ("GET", "/findings/{id}/papers/{paper}", ". x x x x x"),
    ("POST", "/findings/{id}/papers/{paper}", ". . . . x ."),
    ("GET", "/findings/{id}/report", ". x x x x x"),
    ("GET", "/attachments/{id}", ". x x x x x"),
    ("GET", "/instruments", ". x x x x x"),
    ("GET", "/instruments/new", ". x . x x ."),
    ("POST", "/instruments", ". x . x x ."),
    ("GET", "/instruments/{id}", ". x x x x x"),
    ("GET", "/instruments/{id}/edit", ". x . x x ."),
    ("POST", "/instruments/{id}", ". x . x x ."),
    ("GET", "/instruments/{id}/certificates/new", ". x . x x ."),
    ("POST", "/instruments/{id}/certificates", ". x . x x ."),
    ("GET", "/instruments/{id}/checks/new", ". x . x x ."),
    ("POST", "/instruments/{id}/checks", ". x . x x ."),
    ("GET", "/instruments/{id}/retirement", ". x . x x ."),
    ("POST", "/instruments/{id}/retirement", ". x . x x ."),
    ("GET", "/instruments/{id}/findings/new", ". x . x x ."),
    ("POST", "/instruments/{id}/findings", ". x . x x ."),
    ("GET", "/office/rules", ". x x x x x"),
    ("GET", "/office/rules/shop", ". x . . . ."),
    ("POST", "/office/rules/shop", ". x . . . ."),
    ("GET", "/office/rules/stack", ". x . . . ."),
    ("POST", "/office/rules/stack", ". x . . . ."),
    ("GET", "/office/rules/sets/{name}", ". x x x x x"),
    ("POST", "/office/rules/sets/{name}", ". x . . . ."),
    ("GET", "/papers", ". x x x x x"),
    ("GET", "/papers/audit-pack", ". x . . . x"),
    ("POST", "/papers/{id}/copies", ". x x x x ."),
    ("GET", "/papers/standing", ". x x x x x"),
    ("GET", "/papers/{id}", ". x x x x x"),
    ("GET", "/papers/{id}/pdf", ". x x x x x"),
    ("GET", "/papers/{id}/signed", ". x x x x x"),
    ("POST", "/papers/{id}/withdrawal", ". . . . x ."),
    ("GET", "/verify", "x x x x x x"),
    ("GET", "/verify/{code}", "x x x x x x"),
    ("GET", "/customers", ". x x x x x"),
    ("GET", "/customers/new", ". x x . . ."),
    ("POST", "/customers", ". x x . . ."),
    ("GET", "/customers/{id}", ". x x x x x"),
    ("GET", "/customers/{id}/edit", ". x x . . ."),
    ("POST", "/customers/{id}", ". x x . . ."),
    ("POST", "/customers/{id}/notes", ". x x . . ."),
    ("GET", "/vehicles", ". x x x x x"),
    ("GET", "/vehicles/new", ". x x x x ."),
    ("POST", "/vehicles", ". x x x x ."),
    ("GET", "/vehicles/{id}", ". x x x x x"),
    ("GET", "/vehicles/{id}/edit", ". x x x x ."),
    ("POST", "/vehicles/{id}", ". x x x x ."),
    ("POST", "/vehicles/{id}/notes", ". x x x x ."),
    ("GET", "/vehicles/{id}/readings/new", ". x x x x ."),
    ("POST", "/vehicles/{id}/readings", ". x x x x ."),
    ("GET", "/vehicles/{id}/people/new", ". x x . . ."),
    ("POST", "/vehicles/{id}/people", ". x x . . ."),
    ("POST", "/vehicles/{id}/people/{role}/end", ". x x . . ."),
    ("GET", "/arrivals/new", ". x x . . ."),
    ("POST", "/arrivals", ". x x . . ."),
    ("GET", "/jobs", ". x x x x x"),
    ("GET", "/", ". x x x x x"),
    ("GET", "/search", ". x x x x x"),
    ("GET", "/bay-plan", ". x x x x x"),
    ("GET", "/bay-plan/sheet", ". x x x x x"),
    ("GET", "/bay-plan/bays", ". x . . . ."),
    ("POST", "/bay-plan/bays", ". x . . . ."),
    ("GET", "/bay-plan/bays/{id}", ". x . . . ."),
    ("POST", "/bay-plan/bays/{id}", ". x . . . ."),
    ("POST", "/bay-plan/bays/{id}/end", ". x . . . ."),
    ("GET", "/bay-plan/bookings/new", ". x x . . ."),
    ("POST", "/bay-plan/bookings", ". x x . . ."),
    ("GET", "/bay-plan/bookings/{id}", ". x x x x x"),
    ("POST", "/bay-plan/bookings/{id}", ". x x . . ."),
    ("POST", "/bay-plan/bookings/{id}/answer", ". x x . . ."),
    ("GET", "/jobs/{id}/notes", ". x x x x x"),
    ("POST", "/jobs/{id}/notes", ". x x x x ."),
    // Last: it ends the session it is tried with.
    ("POST", "/sign-out", "x x x x x x"),
];

#[test]
fn every_route_stands_in_the_matrix_once() {
    let mut table: Vec<(String, &str)> =
        routes::table().iter().map(|route| (route.method.to_string(), route.address)).collect();
    let mut matrix: Vec<(String, &str)> =
        MATRIX.iter().map(|(method, address, _)| ((*method).to_owned(), *address)).collect();
    table.sort_unstable();
    matrix.sort_unstable();
    let missing: Vec<_> = table.iter().filter(|row| !matrix.contains(row)).collect();
    let stale: Vec<_> = matrix.iter().filter(|row| !table.contains(row)).collect();
    assert!(missing.is_empty() && stale.is_empty(), "not in the matrix: {missing:?}; no longer routes: {stale:?}");
    assert_eq!(table.len(), matrix.len(), "a row stands twice");
}

#[tokio::test]
async fn every_role_goes_where_the_matrix_says_and_nowhere_else() {
    let open = TestShop::open().await;
    let browsers = [
        ("nobody", open.stranger()),
        ("manager", open.manager().await),
        ("desk", open.desk().await),
        ("technician", open.technician().await),
        ("signatory", open.signatory().await),
        ("auditor", open.auditor().await),
    ];
    let mut wrong = vec![];
    for (method, address, row) in MATRIX {
        let marks: Vec<&str> = row.split(' ').collect();
        assert_eq!(marks.len(), browsers.len(), "{method} {address}");
        for ((role, browser), mark) in browsers.iter().zip(marks) {
            let let_in = is_let_in(browser, method, address).await;
            if let_in != (mark == "x") {
                wrong.push(format!("{method} {address}: {role} is {}", if let_in { "let in" } else { "turned away" }));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// Sends an empty request to the route, each of its variables filled with something that is nowhere.
async fn is_let_in(browser: &Browser, method: &str, address: &str) -> bool {
    let nowhere = "01900000-0000-7000-8000-000000000000";
    let parts = address.split('/').map(|part| if part.starts_with('{') { nowhere } else { part });
    let path = parts.collect::<Vec<_>>().join("/");
    let request = Request::builder()
        .method(method.parse::<Method>().unwrap())
        .uri(path)
        .header("sec-fetch-site", "same-origin")
        .header(header::CONTENT_TYPE, "application/x-www-form-urlencoded");
    let page = browser.send(request.body(axum::body::Body::empty()).unwrap()).await;
    assert_ne!(page.status.as_u16(), 500, "{method} {address}: {}", page.text());
    let to = page.headers.get(header::LOCATION).map(|to| to.to_str().unwrap());
    // Signing out also leads to the sign-in form, but takes the cookie away on the way.
    let asks_to_sign_in =
        to.is_some_and(|to| to.starts_with("/sign-in")) && page.headers.get(header::SET_COOKIE).is_none();
    let is_public = address == "/set-up";
    !matches!(page.status.as_u16(), 401 | 403) && (!asks_to_sign_in || is_public)
}

#[tokio::test]
async fn whoever_is_sent_to_sign_in_comes_back_to_where_they_wanted() {
    let open = TestShop::open().await;
    let browser = open.stranger();
    let asked = browser.get("/office/log?before=3").await.goes_to();
    assert_eq!(asked, "/sign-in?wanted=%2Foffice%2Flog%3Fbefore%3D3");
    let form = browser.get(&asked).await;
    let wanted = form.field("wanted").unwrap();
    let fields = [("sign_in_name", "ilse"), ("password", crate::support::PASSWORD), ("wanted", wanted.as_str())];
    assert_eq!(browser.post("/sign-in", &fields).await.goes_to(), "/office/log?before=3");
}

#[tokio::test]
async fn somebody_of_another_branch_is_not_there_at_all() {
    let open = TestShop::open().await;
    let manager = open.manager().await;
    let missing = manager.get("/office/people/01900000-0000-7000-8000-000000000000").await;
    let other = open.person_of_another_branch().await;
    let hidden = manager.get(&format!("/office/people/{other}")).await;
    assert_eq!((missing.status, hidden.status), (404.try_into().unwrap(), 404.try_into().unwrap()));
    assert_eq!(missing.bytes.len(), hidden.bytes.len());
    manager.post(&format!("/office/people/{other}/password-codes"), &[]).await.is(404);
    manager.post(&format!("/office/people/{other}/sessions/end"), &[]).await.is(404);
}

#[tokio::test]
async fn a_job_of_another_branch_is_not_there_at_all() {
    let bay = Bay::lpg().await;
    let manager = bay.shop.manager().await;
    let pages = ["stages/intake", "photos", "findings", "papers", "parts", "ending"];
    for page in pages {
        manager.get(&bay.at(page)).await.is(200);
    }
    bay.shop.person_of_another_branch().await;
    let mut tx = bay.shop.shop.db.write().await.unwrap();
    let moved = sqlx::query::<Db>(
        "update jobs set branch_id = (select id from branches where name = 'Harbour Branch') where id = $1",
    )
    .bind(bay.job);
    moved.execute(&mut *tx).await.unwrap();
    tx.commit().await.unwrap();
    for page in pages {
        manager.get(&bay.at(page)).await.is(404);
    }
    let odometer = [("odometer", "128430 km"), ("measured_at", "2026-05-12T10:20")];
    manager.post(&bay.at("arrival"), &odometer).await.is(404);
    assert_eq!(bay.entries("arrival").await, 0);
}
