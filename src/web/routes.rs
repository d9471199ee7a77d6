//! Every address, its handler, and who may come. The router and the test of access are both made from this one table;
//! a handler cannot be reached past the third column.

use axum::Router;
use axum::handler::Handler;
use axum::http::Method;
use axum::middleware::from_fn_with_state;
use axum::routing::{self, MethodRouter};

use super::app::App;
use super::job::ArrivalForm;
use super::visitor::{May, gate};
use super::{Error, assets, health, job, security};
use crate::model::person::Role;
use May::{Anybody, Roles};

/// Everybody with a role; whoever only reads included.
pub const READERS: May = Roles(&[Role::Manager, Role::Desk, Role::Technician, Role::Auditor]);
/// Whoever works here.
pub const WORKERS: May = Roles(&[Role::Manager, Role::Desk, Role::Technician]);
/// Customers, bookings, messages.
pub const DESK: May = Roles(&[Role::Manager, Role::Desk]);
/// Evidence, instruments, stores.
pub const BENCH: May = Roles(&[Role::Manager, Role::Technician]);
/// Settings, people.
pub const MANAGER: May = Roles(&[Role::Manager]);

/// The table.
#[rustfmt::skip]
pub fn table() -> Vec<Route> {
    vec![
        get("/assets/{hash}/{*path}",       assets::show,               Anybody),
        get("/healthz",                     health::alive,              Anybody),
        get("/readyz",                      health::ready,              Anybody),

        get("/jobs/{id}",                   job::stage::index,          READERS),
        get("/jobs/{id}/stages/{stage}",    job::stage::show,           READERS),
        get("/jobs/{id}/arrival",           job::record::show::<ArrivalForm>,   READERS),
        post("/jobs/{id}/arrival",          job::record::create::<ArrivalForm>, BENCH),
    ]
}

/// One row of the table.
#[derive(Debug)]
pub struct Route {
    pub method: Method,
    pub address: &'static str,
    pub may: May,
    handler: MethodRouter<App>,
}

fn get<H: Handler<T, App>, T: 'static>(address: &'static str, handler: H, may: May) -> Route {
    Route { method: Method::GET, address, may, handler: routing::get(handler) }
}

fn post<H: Handler<T, App>, T: 'static>(address: &'static str, handler: H, may: May) -> Route {
    Route { method: Method::POST, address, may, handler: routing::post(handler) }
}

/// The whole site.
pub fn router(app: App) -> Router {
    let mut router = Router::new();
    for Route { address, may, handler, .. } in table() {
        router = router.route(address, handler.layer(from_fn_with_state((app.clone(), may), gate)));
    }
    let router = router.fallback(|| async { Error::NotFound });
    security::around(router, &app).with_state(app)
}
