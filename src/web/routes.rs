//! Every address, its handler, and who may come. The router and the test of access are both made from this one table;
//! a handler cannot be reached past the third column.

use axum::Router;
use axum::handler::Handler;
use axum::http::Method;
use axum::middleware::from_fn_with_state;
use axum::routing::{self, MethodRouter};

use super::app::App;
use super::job::{AfterDriveForm, ContainerSizingForm, EngineCalibrationForm, TrimsForm};
use super::job::{
    ArrivalForm, ExhaustForm, FunctionChecksForm, HandOverForm, LeakJointsForm, NozzleSizingForm, SuitabilityForm,
};
use super::job::{ChecklistForm, CylinderTableForm, LevelSensingForm};
use super::job::{CylinderSizingForm, DischargeForm, HeatSizingForm, LineSizingForm};
use super::job::{DeficienciesForm, VesselCheckForm};
use super::visitor::{Gate, May, gate};
// One line a room: two hands that add rooms at once do not meet.
use super::Error;
use super::account;
use super::arrivals;
use super::assets;
use super::attachments;
use super::bay_plan;
use super::bench;
use super::customers;
use super::doubts;
use super::due;
use super::findings;
use super::health;
use super::instruments;
use super::job;
use super::jobs;
use super::office;
use super::outbox;
use super::owner;
use super::papers;
use super::photos;
use super::rule_sets;
use super::search;
use super::security;
use super::set_up;
use super::sign_in;
use super::today;
use super::vehicle_page;
use super::vehicles;
use super::verify;
use crate::model::person::Role;
use May::{Anybody, Roles, SignedIn};

/// Everybody with a role; whoever only reads included.
pub const READERS: May = Roles(&[Role::Manager, Role::Desk, Role::Technician, Role::Auditor]);
/// Whoever works here.
pub const WORKERS: May = Roles(&[Role::Manager, Role::Desk, Role::Technician]);
/// Customers, bookings, messages.
pub const DESK: May = Roles(&[Role::Manager, Role::Desk]);
/// Evidence, instruments, stores.
pub const BENCH: May = Roles(&[Role::Manager, Role::Technician]);
/// Who answers for the shop, and who checks it.
pub const OVERSEERS: May = Roles(&[Role::Manager, Role::Auditor]);
/// Messages: who writes them, and who checks.
pub const MESSAGES: May = Roles(&[Role::Manager, Role::Desk, Role::Auditor]);
/// Settings, people.
pub const MANAGER: May = Roles(&[Role::Manager]);

/// The table.
#[rustfmt::skip]
pub fn table() -> Vec<Route> {
    vec![
        get("/assets/{hash}/{*path}",                   assets::show,                   Anybody),
        get("/healthz",                                 health::alive,                  Anybody),
        get("/readyz",                                  health::ready,                  Anybody),
        get("/set-up",                                  set_up::show,                   Anybody),
        post("/set-up",                                 set_up::create,                 Anybody),
        get("/sign-in",                                 sign_in::show,                  Anybody),
        post("/sign-in",                                sign_in::create,                Anybody),
        post("/sign-in/pin",                            sign_in::create_with_pin,       Anybody),
        post("/sign-out",                               sign_in::delete,                Anybody),
        get("/welcome",                                 sign_in::welcome,               Anybody),
        post("/welcome",                                sign_in::choose,                Anybody),
        get("/account",                                 account::show,                  SignedIn),
        post("/account/password",                       account::change_password,       SignedIn),
        post("/account/pin",                            account::choose_pin,            SignedIn),
        post("/account/sessions/{id}/end",              account::end_session,           SignedIn),
        get("/office",                                  office::show,                   READERS),
        get("/office/languages",                        office::languages::list,        OVERSEERS),
        post("/office/languages/{tag}",                 office::languages::update,      MANAGER),
        get("/office/log",                              office::log::list,              OVERSEERS),
        post("/office/only-one",                        office::restored::confirm,      MANAGER),
        get("/office/shop",                             office::shop::edit,             MANAGER),
        post("/office/shop",                            office::shop::update,           MANAGER),
        post("/office/four-eyes",                       office::four_eyes::update,      MANAGER),
        get("/office/keys",                             office::keys::list,             OVERSEERS),
        post("/office/keys",                            office::keys::create,           MANAGER),
        post("/office/keys/distrust",                   office::keys::distrust,         MANAGER),
        get("/office/tablets",                          office::tablets::list,          MANAGER),
        post("/office/tablets",                         office::tablets::create,        MANAGER),
        post("/office/tablets/{id}/end",                office::tablets::end,           MANAGER),
        get("/office/people",                           office::people::list,           OVERSEERS),
        get("/office/people/new",                       office::people::new,            MANAGER),
        post("/office/people",                          office::people::create,         MANAGER),
        get("/office/people/{id}",                      office::person::show,           MANAGER),
        post("/office/people/{id}",                     office::person::update,         MANAGER),
        post("/office/people/{id}/roles",               office::person::update_roles,   MANAGER),
        post("/office/people/{id}/signing",             office::person::update_signing, MANAGER),
        post("/office/people/{id}/password-codes",      office::person::create_code,    MANAGER),
        post("/office/people/{id}/sessions/end",        office::person::end_sessions,   MANAGER),

        get("/customers",                   customers::list,            READERS),
        get("/customers/new",               customers::new,             DESK),
        post("/customers",                  customers::create,          DESK),
        get("/customers/{id}",              customers::show,            READERS),
        get("/customers/{id}/edit",         customers::edit,            DESK),
        post("/customers/{id}",             customers::update,          DESK),
        post("/customers/{id}/notes",       customers::create_note,     DESK),
        get("/vehicles",                    vehicles::list,             READERS),
        get("/vehicles/new",                vehicles::form::new,        WORKERS),
        post("/vehicles",                   vehicles::form::create,     WORKERS),
        get("/vehicles/{id}",               vehicles::show::show,       READERS),
        get("/vehicles/{id}/edit",          vehicles::form::edit,       WORKERS),
        post("/vehicles/{id}",              vehicles::form::update,     WORKERS),
        post("/vehicles/{id}/notes",        vehicles::show::create_note,    WORKERS),
        get("/vehicles/{id}/readings/new",  vehicles::readings::new,    WORKERS),
        post("/vehicles/{id}/readings",     vehicles::readings::create, WORKERS),
        get("/vehicles/{id}/people/new",    vehicles::people::new,      DESK),
        post("/vehicles/{id}/people",       vehicles::people::create,   DESK),
        post("/vehicles/{id}/people/{role}/end",    vehicles::people::end,  DESK),
        get("/arrivals/new",                arrivals::new,              DESK),
        post("/arrivals",                   arrivals::create,           DESK),
        get("/jobs",                        jobs::list,                 READERS),
        get("/",                            today::show,                READERS),
        get("/search",                      search::show,               READERS),
        get("/jobs/{id}/notes",             job::notes::list,           READERS),
        post("/jobs/{id}/notes",            job::notes::create,         WORKERS),
        get("/bay-plan",                    bay_plan::show,             READERS),
        get("/bay-plan/sheet",              bay_plan::wall::show,       READERS),
        get("/bay-plan/bays",               bay_plan::bays::list,       MANAGER),
        post("/bay-plan/bays",              bay_plan::bays::create,     MANAGER),
        get("/bay-plan/bays/{id}",          bay_plan::bays::show,       MANAGER),
        post("/bay-plan/bays/{id}",         bay_plan::bays::update,     MANAGER),
        post("/bay-plan/bays/{id}/end",     bay_plan::bays::end,        MANAGER),
        get("/bay-plan/bookings/new",       bay_plan::booking::new,     DESK),
        post("/bay-plan/bookings",          bay_plan::booking::create,  DESK),
        get("/bay-plan/bookings/{id}",      bay_plan::booking::show,    READERS),
        post("/bay-plan/bookings/{id}",     bay_plan::booking::update,  DESK),
        post("/bay-plan/bookings/{id}/answer",  bay_plan::booking::answer,  DESK),
        get("/due",                         due::list,                  READERS),
        get("/due/{id}",                    due::show,                  READERS),
        post("/due/{id}/closing",           due::close,                 DESK),
        post("/due/{id}/calls",             due::call,                  DESK),
        get("/bench",                       bench::list,                READERS),
        get("/bench/fuel",                  bench::show::<bench::FuelSum>,          READERS),
        get("/bench/liquid",               bench::show::<bench::LiquidSum>,      READERS),
        get("/bench/gas",                  bench::show::<bench::GasSum>,         READERS),
        get("/bench/nozzle",               bench::show::<bench::NozzleSum>,      READERS),
        get("/bench/nozzle-from-petrol",   bench::show::<bench::NozzleFromPetrolSum>,    READERS),
        get("/bench/nozzle-flow",          bench::show::<bench::NozzleFlowSum>,  READERS),
        get("/bench/vaporiser",            bench::show::<bench::VaporiserSum>,   READERS),
        get("/bench/regulator",            bench::show::<bench::RegulatorSum>,   READERS),
        get("/bench/hose",                 bench::show::<bench::HoseSum>,        READERS),
        get("/bench/container",             bench::show::<bench::ContainerSum>,     READERS),
        get("/bench/cylinder",              bench::show::<bench::CylinderSum>,      READERS),
        get("/bench/fast-fill",             bench::show::<bench::FastFillSum>,      READERS),
        get("/bench/leak",                  bench::show::<bench::LeakSum>,          READERS),
        get("/bench/leak-plan",             bench::show::<bench::LeakPlanSum>,      READERS),
        get("/bench/leak-units",            bench::show::<bench::LeakUnitsSum>,     READERS),
        get("/bench/lambda",                bench::show::<bench::LambdaSum>,        READERS),
        get("/bench/uncertainty",           bench::show::<bench::UncertaintySum>,   READERS),
        get("/bench/economy",               bench::show::<bench::EconomySum>,       READERS),
        get("/bench/due",                   bench::show::<bench::DueSum>,           READERS),
        get("/bench/vin",                   bench::show::<bench::VinSum>,           READERS),
        get("/outbox",                      outbox::list,               MESSAGES),
        post("/outbox/held-run",            outbox::release_run,        MANAGER),
        post("/outbox/settings",            outbox::settings,           MANAGER),
        get("/outbox/{id}",                 outbox::show,               MESSAGES),
        post("/outbox/{id}",                outbox::act,                DESK),
        get("/outbox/{id}/letter",          outbox::letter,             DESK),
        get("/outbox/{id}/letter/pdf",      outbox::letter_pdf,         DESK),
        get("/own/{token}",                 owner::show,                Anybody),
        post("/own/{token}/reminders-off",  owner::reminders_off,       Anybody),
        get("/own/{token}/papers/{id}",     owner::paper,               Anybody),
        post("/own/{token}/slot",           owner::slot,                Anybody),
        get("/unsubscribe/{token}",         owner::unsubscribe_page,    Anybody),
        post("/unsubscribe/{token}",        owner::unsubscribe,         Anybody),

        get("/jobs/{id}",                   job::stage::index,          READERS),
        get("/jobs/{id}/stages/{stage}",    job::stage::show,           READERS),
        get("/jobs/{id}/arrival",           job::record::show::<ArrivalForm>,   READERS),
        get("/jobs/{id}/papers",            job::papers::show,          READERS),
        post("/jobs/{id}/papers",           job::papers::create,        May::Signatory),
        post("/jobs/{id}/label",            job::papers::make_label,    WORKERS),
        get("/jobs/{id}/papers/{kind}",     job::drawn::draw,           READERS),
        get("/papers",                      papers::register::list,     READERS),
        get("/papers/audit-pack",           papers::audit_pack::show,   OVERSEERS),
        get("/papers/standing",             papers::standing,           READERS),
        get("/papers/{id}",                 papers::show,               READERS),
        get("/papers/{id}/pdf",             papers::show_pdf,           READERS),
        get("/papers/{id}/signed",          papers::show_signed,        READERS),
        post("/papers/{id}/copies",         papers::create_copy,        WORKERS),
        post("/papers/{id}/withdrawal",     papers::withdraw,           May::Signatory),
        get("/vehicle/{code}",              vehicle_page::show,         Anybody),
        get("/verify",                      verify::ask,                Anybody),
        get("/verify/{code}",               verify::show,               Anybody),
        get("/jobs/{id}/photos",            photos::list,               READERS),
        post("/jobs/{id}/photos/{slot}",    photos::create,             BENCH),
        get("/jobs/{id}/findings",          findings::list,             READERS),
        post("/jobs/{id}/findings",         findings::create,           BENCH),
        get("/findings/{id}",               findings::show,             READERS),
        post("/findings/{id}/decision",     findings::decide,           BENCH),
        get("/findings",                    doubts::opening::list,          READERS),
        get("/findings/recalls/new",        doubts::opening::new_recall,    BENCH),
        post("/findings/recalls",           doubts::opening::create_recall, BENCH),
        get("/findings/rule-lines/new",     doubts::opening::new_line,      MANAGER),
        post("/findings/rule-lines",        doubts::opening::create_line,   MANAGER),
        post("/findings/{id}/error",        doubts::enter_error,        BENCH),
        post("/findings/{id}/span",         doubts::state_span,         May::Signatory),
        post("/findings/{id}/letters",      doubts::write_letters,      DESK),
        get("/findings/{id}/papers/{paper}",    doubts::paper::show,    READERS),
        post("/findings/{id}/papers/{paper}",   doubts::paper::decide,  May::Signatory),
        get("/findings/{id}/report",        doubts::report,             READERS),
        get("/attachments/{id}",            attachments::show,          READERS),
        get("/instruments",                 instruments::list,          READERS),
        get("/instruments/new",             instruments::form::new,     BENCH),
        post("/instruments",                instruments::form::create,  BENCH),
        get("/instruments/{id}",            instruments::show,          READERS),
        get("/instruments/{id}/edit",       instruments::form::edit,    BENCH),
        post("/instruments/{id}",           instruments::form::update,  BENCH),
        get("/instruments/{id}/certificates/new",   instruments::upkeep::new_certificate,       BENCH),
        post("/instruments/{id}/certificates",      instruments::upkeep::create_certificate,    BENCH),
        get("/instruments/{id}/checks/new", instruments::upkeep::new_check,     BENCH),
        post("/instruments/{id}/checks",    instruments::upkeep::create_check,  BENCH),
        get("/instruments/{id}/retirement", instruments::upkeep::retirement,    BENCH),
        post("/instruments/{id}/retirement", instruments::upkeep::retire,       BENCH),
        get("/instruments/{id}/findings/new", findings::new_of_instrument,      BENCH),
        post("/instruments/{id}/findings",  findings::create_of_instrument,     BENCH),
        get("/office/rules",                rule_sets::list,            READERS),
        get("/office/rules/shop",           rule_sets::own::edit,       MANAGER),
        post("/office/rules/shop",          rule_sets::own::update,     MANAGER),
        get("/office/rules/stack",          rule_sets::stack::edit,     MANAGER),
        post("/office/rules/stack",         rule_sets::stack::update,   MANAGER),
        get("/office/rules/sets/{name}",    rule_sets::file::show,      READERS),
        post("/office/rules/sets/{name}",   rule_sets::file::update,    MANAGER),

        post("/jobs/{id}/arrival",          job::record::create::<ArrivalForm>, BENCH),
        get("/jobs/{id}/suitability",       job::record::show::<SuitabilityForm>,   READERS),
        post("/jobs/{id}/suitability",      job::record::create::<SuitabilityForm>, BENCH),
        get("/jobs/{id}/nozzle-sizing",     job::record::show::<NozzleSizingForm>,   READERS),
        post("/jobs/{id}/nozzle-sizing",    job::record::create::<NozzleSizingForm>, BENCH),
        get("/jobs/{id}/container-sizing",  job::record::show::<ContainerSizingForm>,   READERS),
        post("/jobs/{id}/container-sizing", job::record::create::<ContainerSizingForm>, BENCH),
        get("/jobs/{id}/cylinder-sizing", job::record::show::<CylinderSizingForm>, READERS),
        post("/jobs/{id}/cylinder-sizing", job::record::create::<CylinderSizingForm>, BENCH),
        get("/jobs/{id}/discharge", job::record::show::<DischargeForm>, READERS),
        post("/jobs/{id}/discharge", job::record::create::<DischargeForm>, BENCH),
        get("/jobs/{id}/heat-sizing", job::record::show::<HeatSizingForm>, READERS),
        post("/jobs/{id}/heat-sizing", job::record::create::<HeatSizingForm>, BENCH),
        get("/jobs/{id}/line-sizing", job::record::show::<LineSizingForm>, READERS),
        post("/jobs/{id}/line-sizing", job::record::create::<LineSizingForm>, BENCH),
        get("/jobs/{id}/engine-calibration",    job::record::show::<EngineCalibrationForm>,   READERS),
        post("/jobs/{id}/engine-calibration",   job::record::create::<EngineCalibrationForm>, BENCH),
        get("/jobs/{id}/trims",             job::record::show::<TrimsForm>,   READERS),
        post("/jobs/{id}/trims",            job::record::create::<TrimsForm>, BENCH),
        get("/jobs/{id}/road",              job::road::list,            READERS),
        post("/jobs/{id}/road",             job::road::create,          BENCH),
        get("/jobs/{id}/road/{session}",    job::road::show,            READERS),
        get("/jobs/{id}/road/{session}/columns",    job::road::columns,         READERS),
        post("/jobs/{id}/road/{session}/columns",   job::road::match_columns,   BENCH),
        get("/jobs/{id}/road/{session}/corrections", job::road::corrections,    READERS),
        post("/jobs/{id}/road/{session}/acceptance", job::road::accept,         BENCH),
        get("/jobs/{id}/after-drive",       job::record::show::<AfterDriveForm>,   READERS),
        post("/jobs/{id}/after-drive",      job::record::create::<AfterDriveForm>, BENCH),
        get("/jobs/{id}/leak-joints/{subject}",     job::record::show::<LeakJointsForm>,        READERS),
        post("/jobs/{id}/leak-joints/{subject}",    job::record::create::<LeakJointsForm>,      BENCH),
        get("/jobs/{id}/leak-joints/{subject}/guide",   job::leak_guide::show,      READERS),
        post("/jobs/{id}/leak-joints/{subject}/guide",  job::leak_guide::step,      BENCH),
        get("/jobs/{id}/leak-decay/{subject}",              job::leak_decay::show,      READERS),
        post("/jobs/{id}/leak-decay/{subject}",             job::leak_decay::create,    BENCH),
        post("/jobs/{id}/leak-decay/{subject}/readings",    job::leak_decay::read,      BENCH),
        post("/jobs/{id}/leak-decay/{subject}/sums",        job::leak_decay::sums,      BENCH),
        get("/jobs/{id}/exhaust/{subject}",         job::record::show::<ExhaustForm>,           READERS),
        post("/jobs/{id}/exhaust/{subject}",        job::record::create::<ExhaustForm>,         BENCH),
        get("/jobs/{id}/function-checks",           job::record::show::<FunctionChecksForm>,    READERS),
        post("/jobs/{id}/function-checks",          job::record::create::<FunctionChecksForm>,  BENCH),
        get("/jobs/{id}/deficiencies",      job::record::show::<DeficienciesForm>,   READERS),
        post("/jobs/{id}/deficiencies",     job::record::create::<DeficienciesForm>, BENCH),
        get("/jobs/{id}/vessel-check",      job::record::show::<VesselCheckForm>,    READERS),
        post("/jobs/{id}/vessel-check",     job::record::create::<VesselCheckForm>,  BENCH),
        get("/jobs/{id}/repeat",            job::again::show,           READERS),
        post("/jobs/{id}/repeat",           job::again::create,         WORKERS),
        post("/jobs/{id}/repair",           job::again::repair,         BENCH),
        get("/jobs/{id}/hand-over",         job::record::show::<HandOverForm>,      READERS),
        post("/jobs/{id}/hand-over",        job::record::create::<HandOverForm>,    WORKERS),
        get("/jobs/{id}/cylinder-table",    job::record::show::<CylinderTableForm>,   READERS),
        post("/jobs/{id}/cylinder-table",   job::record::create::<CylinderTableForm>, BENCH),
        get("/jobs/{id}/checklist",         job::record::show::<ChecklistForm>,       READERS),
        post("/jobs/{id}/checklist",        job::record::create::<ChecklistForm>,     BENCH),
        get("/jobs/{id}/level-sensing",     job::record::show::<LevelSensingForm>,    READERS),
        post("/jobs/{id}/level-sensing",    job::record::create::<LevelSensingForm>,  BENCH),
        get("/jobs/{id}/parts",                 job::parts::list,       READERS),
        post("/jobs/{id}/parts",                job::parts::create,     BENCH),
        get("/jobs/{id}/parts/new",             job::parts::new,        BENCH),
        get("/jobs/{id}/parts/{part}/edit",     job::parts::edit,       BENCH),
        post("/jobs/{id}/parts/{part}",         job::parts::update,     BENCH),
        get("/jobs/{id}/parts/{part}/removal",  job::parts::removal,    BENCH),
        post("/jobs/{id}/parts/{part}/removal", job::parts::remove,     BENCH),
        get("/jobs/{id}/estimate",              job::estimate::show,            READERS),
        get("/jobs/{id}/estimate/new",          job::estimate::new,             DESK),
        post("/jobs/{id}/estimate",             job::estimate::create,          DESK),
        post("/jobs/{id}/estimate/agreement",   job::estimate::agree,           DESK),
        get("/jobs/{id}/estimate/{number}",     job::estimate::show_version,    READERS),
        get("/jobs/{id}/estimate/{number}/pdf", job::estimate::pdf,             READERS),
        get("/jobs/{id}/estimate/{number}/csv", job::estimate::lines_csv,       READERS),
        post("/jobs/{id}/deposits",             job::estimate::take_deposit,    DESK),
        get("/jobs/{id}/deposits/{deposit}/receipt",    job::estimate::receipt,     READERS),
        post("/jobs/{id}/deposits/{deposit}/return",    job::estimate::give_back,   DESK),
        get("/jobs/{id}/waivers/{proof}",       job::waivers::show,     READERS),
        post("/jobs/{id}/waivers/{proof}",      job::waivers::create,   May::Signatory),
        post("/jobs/{id}/waivers/{proof}/end",  job::waivers::end,      May::Signatory),
        get("/jobs/{id}/ending",                job::ending::show,      READERS),
        post("/jobs/{id}/ending",               job::ending::hand_over, WORKERS),
        post("/jobs/{id}/hold",                 job::ending::hold,      WORKERS),
        post("/jobs/{id}/hold/end",             job::ending::end_hold,  WORKERS),
        post("/jobs/{id}/release",              job::ending::release,   WORKERS),
        post("/jobs/{id}/cancellation",         job::ending::cancel,    WORKERS),
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
pub fn router(app: &App) -> Router {
    let mut router = Router::new();
    for Route { address, may, handler, .. } in table() {
        let gate = from_fn_with_state(Gate { app: app.clone(), address, may }, gate);
        router = router.route(address, handler.layer(gate));
    }
    let router = router.fallback(|| async { Error::NotFound }).with_state(app.clone());
    security::around(router, app)
}
