//! Which nozzle: inputs with where they come from, up to three sets side by side, one of them taken.
//!
//! The sum is made when the form is sent, and kept with its inputs and the version of the program. It is never made anew
//! by looking at it.

use super::facts::{Fact, Facts};
use super::reckoned::Reckoned;
use super::record::{Group, Recorded, Taken};
use super::{JobPage, fuel_mix, nozzle_measured, nozzle_said, origins};
use crate::calc::ATMOSPHERE_KPA;
use crate::calc::nozzle::engine::{DEAD_TIME_MS, IDLE_MANIFOLD_KPA, LEAST_PULSE_MS, MAX_DUTY};
use crate::calc::nozzle::flow::INJECTOR_DISCHARGE;
use crate::calc::nozzle::{Verdict, sensitivity};
use crate::db;
use crate::model::evidence::{Entry, Evidence, NozzleInputs, NozzleResults, NozzleSizing, NozzleVerdict};
use crate::model::job::Fuel;
use crate::model::stage::Stage;
use crate::model::vehicle::Aspiration;
use crate::unit::Unit;
use crate::web::Error;
use crate::web::app::App;
use crate::web::form::{Form, Wrong};
use crate::web::kit::{self, Choice, Field};
use crate::web::nozzle::engine::{Engine, Groups, NUMBERS, PETROL, Start};
use crate::web::nozzle::said::judged;
use crate::web::nozzle::sets::{self, MEASURED, MOST_SETS, OF_A_SET};

/// The form of [`NozzleSizing`].
#[derive(Debug)]
pub struct NozzleSizingForm {
    /// What the shop measured itself, newest first.
    measured: Vec<db::discharges::Measured>,
}

/// Texts that are known or usual, with where they come from.
fn defaults(job: &JobPage) -> Vec<origins::Default> {
    let vehicle = &job.file.vehicle;
    let is_lpg = job.file.job.fuel == Fuel::Lpg;
    let mut all = Vec::new();
    let mut add = |name: &str, text: Option<String>, origin| {
        all.extend(text.map(|text| (name.to_owned(), text, origin)));
    };
    let (practice, file) = ("practice", "vehicle");
    add("from", Some("power".to_owned()), practice);
    add("rated_power_kw", vehicle.rated_power_kw.map(|kw| kw.to_string()), file);
    add("rated_rpm", vehicle.rated_rpm.map(|rpm| rpm.to_string()), file);
    add("engine_cylinders", vehicle.engine_cylinders.map(|n| n.to_string()), file);
    let boosted = vehicle.aspiration == Aspiration::Boosted;
    add("brake_efficiency", Some(if boosted { "0.32" } else { "0.28" }.to_owned()), practice);
    let manifold = if boosted { vehicle.boost_kpa.map(|kpa| ATMOSPHERE_KPA + kpa) } else { Some(ATMOSPHERE_KPA - 4.0) };
    add("manifold_kpa", manifold.map(|kpa| format!("{kpa:.0}")), if boosted { file } else { practice });
    add("gas_temperature_c", Some(if is_lpg { "50" } else { "40" }.to_owned()), practice);
    add("max_duty", Some(format!("{MAX_DUTY:.2}")), practice);
    add("regulator_follows", Some("manifold".to_owned()), practice);
    add("idle_rpm", Some("800".to_owned()), practice);
    // 1 L/h of petrol for 2 L displacement is 8.8 kW (common practice).
    #[expect(clippy::cast_precision_loss, reason = "a displacement stays far below 2^52")]
    let idle_kw = vehicle.displacement_cm3.map(|cm3| format!("{:.1}", 8.8 * cm3 as f64 / 2_000.0));
    add("idle_fuel_power_kw", idle_kw, practice);
    add("idle_manifold_kpa", Some(format!("{IDLE_MANIFOLD_KPA:.0}")), practice);
    add("petrol", Some("e5".to_owned()), practice);
    add("petrol_lambda", Some("0.88".to_owned()), practice);
    add("gas_lambda", Some("0.88".to_owned()), practice);
    add("displaced", Some("yes".to_owned()), practice);
    add("sets[0][supply_over_manifold_kpa]", Some(if is_lpg { "120" } else { "200" }.to_owned()), practice);
    add("sets[0][dead_time_ms]", Some(format!("{DEAD_TIME_MS:.1}")), practice);
    add("sets[0][min_pulse_ms]", Some(format!("{LEAST_PULSE_MS:.1}")), practice);
    match nozzle_measured::measured(job) {
        Some((measured, uncertainty)) => {
            add("sets[0][discharge_coefficient]", Some(format!("{measured:.3}")), "measured");
            add("sets[0][discharge_uncertainty]", Some(format!("{uncertainty:.3}")), "measured");
        }
        None => add("sets[0][discharge_coefficient]", Some(format!("{INJECTOR_DISCHARGE:.2}")), practice),
    }
    add("taken", Some("1".to_owned()), practice);
    all
}

/// Names of every field whose text is kept.
fn names(job: &JobPage) -> Vec<String> {
    let plain = ["from", "regulator_follows", "petrol", "displaced", "taken", "chosen_mm"];
    let numbers = NUMBERS.iter().chain(&PETROL).map(|(name, ..)| *name);
    let mut names: Vec<String> = plain.into_iter().chain(numbers).map(str::to_owned).collect();
    names.extend(fuel_mix::names(job.file.job.fuel.into()));
    for at in 0..MOST_SETS {
        let of_a_set = OF_A_SET.iter().map(|(name, ..)| *name).chain(["name", MEASURED, "sizes_mm"]);
        names.extend(of_a_set.map(|name| format!("sets[{at}][{name}]")));
    }
    names
}

fn verdict_of(verdict: Verdict) -> NozzleVerdict {
    match verdict {
        Verdict::Fits => NozzleVerdict::Fits,
        Verdict::TooSmall => NozzleVerdict::TooSmall,
        Verdict::TooLarge => NozzleVerdict::TooLarge,
        Verdict::NoneFits => NozzleVerdict::NoneFits,
    }
}

/// What sizing starts from; a fault is noted and counts as power.
fn start(form: &mut Form) -> Start {
    match form.choice::<String>("from").as_deref() {
        Some("petrol") => Start::Petrol,
        Some("power") | None => Start::Power,
        Some(_) => {
            form.fail("from", Wrong::NotAChoice);
            Start::Power
        }
    }
}

impl NozzleSizingForm {
    fn hinted(job: &JobPage, form: &Form, name: &str) -> Field {
        origins::hinted(&job.w(), &defaults(job), kit::number(form, &job.w(), name), name)
    }

    fn choices(job: &JobPage, prefix: &str, values: &[&str]) -> Vec<Choice> {
        kit::choices(&job.w(), prefix, values.iter().copied())
    }
}

impl Recorded for NozzleSizingForm {
    const KIND: &'static str = "nozzle-sizing";
    const STAGE: Stage = Stage::Sizing;
    const RECKONS: bool = true;

    async fn open(app: &App, job: &JobPage, _: &str) -> Result<Self, Error> {
        let mut con = app.read().await?;
        Ok(Self { measured: db::discharges::list(&mut con, job.who.branch.id, 8).await? })
    }

    fn blank(&self, job: &JobPage) -> Form {
        defaults(job).into_iter().fold(Form::blank(), |form, (name, text, _)| form.with(&name, text))
    }

    fn filled(&self, _: &JobPage, entry: &Entry) -> Form {
        let Evidence::NozzleSizing(one) = &entry.body else { return Form::blank() };
        let Some((inputs, _)) = one.read_back() else { return Form::blank() };
        inputs.typed.into_iter().fold(Form::blank(), |form, (name, text)| form.with(&name, text))
    }

    fn groups(&self, job: &JobPage, form: &Form) -> Vec<Group> {
        let w = job.w();
        let number = |name: &str| Self::hinted(job, form, name);
        let from = kit::radios(form, &w, "from", &Self::choices(job, "nozzle-from", &["power", "petrol"]));
        let groups = Groups::new(&w, form, &number);
        let taken = vec![
            kit::pick(form, &w, "taken", &Self::choices(job, "set", &["1", "2", "3"])),
            kit::number(form, &w, "chosen_mm").optional(),
        ];
        vec![
            Group::new("", vec![from]),
            fuel_mix::group(&job.w(), job.file.job.fuel.into(), form),
            groups.engine,
            groups.power,
            groups.petrol,
            groups.idle,
            groups.gas,
            nozzle_measured::with_measured(job, sets::group(&w, form), &self.measured),
            Group::new(w.t("sizing-group-taken"), taken),
        ]
    }

    fn read(&self, job: &JobPage, form: &mut Form) -> Option<Taken> {
        let w = job.w();
        let fuel = fuel_mix::read(&job.w(), job.file.job.fuel.into(), form);
        let start = start(form);
        let engine = Engine::read(form, fuel, start);
        let sets = sets::read(form);
        let taken = form.integer("taken", 1..=3).and_then(|n| usize::try_from(n - 1).ok());
        let chosen_mm = form.opt_number("chosen_mm", Unit::Millimetre, 0.3..=10.0);
        if taken.is_some_and(|taken| taken >= sets.len()) && form.sound().is_some() {
            form.fail("taken", Wrong::Rule("nozzle-no-such-set", Vec::new()));
        }
        form.sound()?;
        let (engine, taken) = (engine?, taken?);
        let (asked, sheets) = sets::sheets(&w, form, &engine, sets)?;
        let answer = sheets.get(taken)?;
        let nozzle = answer.found.nozzle();
        let wanted = chosen_mm.unwrap_or(nozzle.used_mm);
        let Some(candidate) = nozzle.candidate(wanted) else {
            form.fail("chosen_mm", Wrong::Rule("nozzle-not-of-the-list", Vec::new()));
            return None;
        };
        let chosen_mm = chosen_mm.or(nozzle.chosen_mm);
        let sensitivity = sensitivity(&asked[taken].1, candidate.size_mm).ok()?;
        let (typed, origins) = origins::keep(form, names(job), &defaults(job));
        let body = NozzleSizing {
            origins,
            needed_mm: nozzle.diameter_mm,
            chosen_mm,
            verdict: verdict_of(judged(&candidate, answer, chosen_mm).0),
            program_version: env!("CARGO_PKG_VERSION").to_owned(),
            inputs: serde_json::to_value(NozzleInputs { typed, sets: asked, taken }).ok()?,
            results: serde_json::to_value(NozzleResults { sheets, sensitivity }).ok()?,
        };
        Some(Taken::of(Evidence::NozzleSizing(body)))
    }

    fn facts(job: &JobPage, entry: &Entry) -> Vec<Fact> {
        nozzle_said::facts(job, &entry.body, Facts::new(job.w(), Self::KIND))
    }

    fn reckoned(job: &JobPage, body: &Evidence) -> Option<Reckoned> {
        nozzle_said::reckoned(job, body)
    }
}
