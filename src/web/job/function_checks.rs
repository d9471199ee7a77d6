//! What must work before the vehicle leaves: changeover, shut-off with its times, fill stop, level, vent, label.

use super::JobPage;
use super::facts::{Fact, Facts};
use super::record::{Group, Recorded, Taken};
use super::said_line::line_said;
use crate::model::evidence::{Entry, Evidence, FillStopHow, FunctionChecks};
use crate::model::job::Fuel;
use crate::model::stage::Stage;
use crate::rules::Quantity;
use crate::unit::Unit;
use crate::web::Error;
use crate::web::app::App;
use crate::web::form::{Form, Wrong};
use crate::web::kit::{self, Field};

/// The form of [`FunctionChecks`].
#[derive(Debug)]
pub struct FunctionChecksForm;

/// Answers of "starts on gas".
const STARTS: [&str; 3] = ["yes", "no", "not-fitted"];

fn of(entry: &Entry) -> Option<&FunctionChecks> {
    if let Evidence::FunctionChecks(checks) = &entry.body { Some(checks) } else { None }
}

fn said(yes: bool) -> &'static str {
    if yes { "yes" } else { "no" }
}

/// A limit in force with its source: "at most 2.0 s (UN R67 17.9)".
fn limit(job: &JobPage, quantity: Quantity, decimals: u8, unit: &str) -> Option<String> {
    let limit = job.book.limit(quantity, &job.file.job, &job.file.vehicle, None, job.today)?;
    let (most, line) = limit.most?;
    let w = job.w();
    let most = w.quantity(most, decimals, unit);
    Some(w.tv("function-checks-limit", &[("most", most.into()), ("source", line_said(&w, &line).into())]))
}

fn hinted(field: Field, hint: Option<String>) -> Field {
    match hint {
        Some(hint) => field.hinted(&hint),
        None => field,
    }
}

/// Seconds until the gas was shut off; `None` where it stayed open, or where what was typed is wrong, noted then.
fn shut_off(form: &mut Form, seconds: &str, stayed: &str) -> Option<f64> {
    let typed = form.opt_number(seconds, Unit::Second, 0.0..=600.0);
    let is_blank = form.value(seconds).trim().is_empty();
    if form.tick(stayed) && !is_blank {
        form.fail(seconds, Wrong::Rule("function-checks-either", Vec::new()));
    } else if !form.tick(stayed) && is_blank {
        form.fail(seconds, Wrong::Empty);
    }
    typed
}

struct FillStop {
    how: Option<FillStopHow>,
    litres: Option<f64>,
    ticket: String,
}

fn fill_stop(job: &JobPage, form: &mut Form) -> Option<FillStop> {
    if job.file.job.fuel == Fuel::Cng {
        return Some(FillStop { how: None, litres: None, ticket: String::new() });
    }
    let how = form.choice::<FillStopHow>("fill_stop_how");
    let litres = form.opt_number("fill_stop_l", Unit::Litre, 1.0..=1_000.0);
    let ticket = form.opt_text("fill_ticket", 80).unwrap_or_default();
    let how = how?;
    if how == FillStopHow::Later {
        if litres.is_some() {
            form.fail("fill_stop_l", Wrong::Rule("function-checks-later-has-litres", Vec::new()));
        }
        return Some(FillStop { how: Some(how), litres: None, ticket: String::new() });
    }
    if form.value("fill_stop_l").trim().is_empty() {
        form.fail("fill_stop_l", Wrong::Empty);
    }
    if how == FillStopHow::FirstFill && ticket.is_empty() {
        form.fail("fill_ticket", Wrong::Rule("function-checks-ticket", Vec::new()));
    }
    Some(FillStop { how: Some(how), litres, ticket })
}

impl Recorded for FunctionChecksForm {
    const KIND: &'static str = "function-checks";
    const STAGE: Stage = Stage::Proving;

    async fn open(_: &App, _: &JobPage, _: &str) -> Result<Self, Error> {
        Ok(Self)
    }

    fn blank(&self, _: &JobPage) -> Form {
        Form::blank()
    }

    fn filled(&self, _: &JobPage, entry: &Entry) -> Form {
        let Some(seen) = of(entry) else { return Form::blank() };
        let number = |value: Option<f64>| value.map(|value| value.to_string()).unwrap_or_default();
        let stayed = |value: Option<f64>| if value.is_none() { "yes" } else { "" };
        Form::blank()
            .with("changeover_works", said(seen.changeover_works))
            .with("returns_when_empty", said(seen.returns_when_empty))
            .with("starts_on_gas", seen.starts_on_gas.map_or("not-fitted", said))
            .with("shut_off_ignition_s", number(seen.shut_off_ignition_s))
            .with("stays_open_ignition", stayed(seen.shut_off_ignition_s))
            .with("shut_off_stalled_s", number(seen.shut_off_stalled_s))
            .with("stays_open_stalled", stayed(seen.shut_off_stalled_s))
            .with("fill_stop_how", seen.fill_stop_how.map(|how| how.to_string()).unwrap_or_default())
            .with("fill_stop_l", number(seen.fill_stop_l))
            .with("fill_ticket", &seen.fill_ticket)
            .with("level_shows", said(seen.level_shows))
            .with("vent_is_open", said(seen.vent_is_open))
            .with("excess_flow_present", said(seen.excess_flow_present))
            .with("label_in_place", said(seen.label_in_place))
    }

    fn groups(&self, job: &JobPage, form: &Form) -> Vec<Group> {
        let w = job.w();
        let answer = |name: &str| kit::pick(form, &w, name, &kit::choices(&w, "kit", ["yes", "no"]));
        let starts = kit::choices(&w, "starts-on-gas", STARTS);
        let seconds = |name: &str| hinted(kit::number(form, &w, name), limit(job, Quantity::ShutOffS, 1, "s"));
        let mut groups = vec![
            Group::new(
                w.t("function-checks-changeover"),
                vec![
                    answer("changeover_works"),
                    answer("returns_when_empty"),
                    kit::pick(form, &w, "starts_on_gas", &starts),
                ],
            ),
            Group::new(
                w.t("function-checks-shut-off"),
                vec![
                    seconds("shut_off_ignition_s"),
                    kit::tick(form, &w, "stays_open_ignition"),
                    seconds("shut_off_stalled_s"),
                    kit::tick(form, &w, "stays_open_stalled"),
                ],
            ),
        ];
        if job.file.job.fuel == Fuel::Lpg {
            let litres = kit::number(form, &w, "fill_stop_l").optional();
            let fill = vec![
                kit::pick(form, &w, "fill_stop_how", &kit::coded::<FillStopHow>(&w)),
                hinted(litres, limit(job, Quantity::FillPercent, 0, "%")),
                kit::text(form, &w, "fill_ticket").optional(),
            ];
            groups.push(Group::new(w.t("function-checks-fill-stop"), fill));
        }
        let seen = ["level_shows", "vent_is_open", "excess_flow_present", "label_in_place"];
        groups.push(Group::new(w.t("function-checks-seen"), seen.into_iter().map(answer).collect()));
        groups
    }

    fn read(&self, job: &JobPage, form: &mut Form) -> Option<Taken> {
        let changeover_works = form.yes_no("changeover_works");
        let returns_when_empty = form.yes_no("returns_when_empty");
        let starts = form.choice::<String>("starts_on_gas");
        let starts_on_gas = match starts.as_deref() {
            Some("yes") => Some(true),
            Some("no") => Some(false),
            Some("not-fitted") | None => None,
            Some(_) => {
                form.fail("starts_on_gas", Wrong::NotAChoice);
                None
            }
        };
        let ignition = shut_off(form, "shut_off_ignition_s", "stays_open_ignition");
        let stalled = shut_off(form, "shut_off_stalled_s", "stays_open_stalled");
        let fill = fill_stop(job, form);
        let level_shows = form.yes_no("level_shows");
        let vent_is_open = form.yes_no("vent_is_open");
        let excess_flow_present = form.yes_no("excess_flow_present");
        let label_in_place = form.yes_no("label_in_place");
        form.sound()?;
        let fill = fill?;
        Some(Taken::of(Evidence::FunctionChecks(FunctionChecks {
            changeover_works: changeover_works?,
            returns_when_empty: returns_when_empty?,
            shut_off_ignition_s: ignition,
            shut_off_stalled_s: stalled,
            fill_stop_how: fill.how,
            fill_stop_l: fill.litres,
            fill_ticket: fill.ticket,
            level_shows: level_shows?,
            vent_is_open: vent_is_open?,
            excess_flow_present: excess_flow_present?,
            starts_on_gas,
            label_in_place: label_in_place?,
        })))
    }

    fn facts(job: &JobPage, entry: &Entry) -> Vec<Fact> {
        let Some(seen) = of(entry) else { return Vec::new() };
        let w = job.w();
        let seconds = |value: Option<f64>| match value {
            Some(seconds) => w.quantity(seconds, 1, "s"),
            None => w.t("function-checks-stayed-open"),
        };
        let fill = seen.fill_stop_how.map(|how| w.t(format!("fill-stop-how-{how}"))).unwrap_or_default();
        Facts::new(w, Self::KIND)
            .yes_no("changeover_works", seen.changeover_works)
            .yes_no("returns_when_empty", seen.returns_when_empty)
            .text("starts_on_gas", w.t(format!("starts-on-gas-{}", seen.starts_on_gas.map_or("not-fitted", said))))
            .text("shut_off_ignition_s", seconds(seen.shut_off_ignition_s))
            .text("shut_off_stalled_s", seconds(seen.shut_off_stalled_s))
            .text("fill_stop_how", fill)
            .opt_number("fill_stop_l", seen.fill_stop_l, 1, "L")
            .text("fill_ticket", &seen.fill_ticket)
            .yes_no("level_shows", seen.level_shows)
            .yes_no("vent_is_open", seen.vent_is_open)
            .yes_no("excess_flow_present", seen.excess_flow_present)
            .yes_no("label_in_place", seen.label_in_place)
            .done()
    }
}
