//! Which nozzle: inputs with where they come from, up to three sets side by side, one of them taken.
//!
//! The sum is made when the form is sent, and kept with its inputs and the version of the program. It is never made anew
//! by looking at it.

use super::facts::{Fact, Facts};
use super::reckoned::Reckoned;
use super::record::{Group, Recorded, Taken};
use super::{JobPage, fuel_mix, nozzle_further, nozzle_said, origins, sum};
use crate::calc::nozzle::engine::{DEAD_TIME_MS, Follows, IDLE_MANIFOLD_KPA, LEAST_PULSE_MS, MAX_DUTY};
use crate::calc::nozzle::flow::INJECTOR_DISCHARGE;
use crate::calc::nozzle::{
    Asked, Candidate, FromPetrol, PetrolInjection as Injection, Setting, Sheet, Sizing, Verdict, sensitivity, sheet,
};
use crate::calc::petrol::Petrol;
use crate::calc::{ATMOSPHERE_KPA, Composition};
use crate::db;
use crate::model::evidence::{Entry, Evidence, NozzleInputs, NozzleResults, NozzleSizing, NozzleVerdict};
use crate::model::job::Fuel;
use crate::model::stage::Stage;
use crate::model::unit::Unit;
use crate::model::vehicle::Aspiration;
use crate::web::Error;
use crate::web::app::App;
use crate::web::form::{Form, Row, Wrong, number};
use crate::web::kit::{self, Choice, Field};

/// The form of [`NozzleSizing`].
#[derive(Debug)]
pub struct NozzleSizingForm {
    /// What the shop measured itself, newest first.
    measured: Vec<db::discharges::Measured>,
}

/// Sets compared at once.
const MOST_SETS: usize = 3;
/// What a set is made of, beside its name and its sizes.
pub const OF_A_SET: [(&str, Unit, f64, f64); 4] = [
    ("supply_over_manifold_kpa", Unit::Kilopascal, 10.0, 2_000.0),
    ("dead_time_ms", Unit::Millisecond, 0.0, 10.0),
    ("min_pulse_ms", Unit::Millisecond, 0.0, 20.0),
    ("discharge_coefficient", Unit::One, 0.05, 1.0),
];
/// Everything else that is a number: name, unit, range, and whether it may be left out.
pub const NUMBERS: [(&str, Unit, f64, f64, bool); 10] = [
    ("rated_power_kw", Unit::Kilowatt, 1.0, 1_000.0, true),
    ("rated_rpm", Unit::PerMinute, 300.0, 20_000.0, false),
    ("engine_cylinders", Unit::One, 1.0, 16.0, false),
    ("brake_efficiency", Unit::One, 0.1, 0.5, true),
    ("manifold_kpa", Unit::Kilopascal, 20.0, 500.0, false),
    ("gas_temperature_c", Unit::Celsius, -40.0, 120.0, false),
    ("max_duty", Unit::One, 0.2, 1.0, false),
    ("idle_rpm", Unit::PerMinute, 300.0, 3_000.0, true),
    ("idle_fuel_power_kw", Unit::Kilowatt, 0.2, 100.0, true),
    ("idle_manifold_kpa", Unit::Kilopascal, 15.0, 120.0, false),
];
/// Petrol injection data; asked for when sizing starts from them.
pub const PETROL: [(&str, Unit, f64, f64, bool); 6] = [
    ("static_flow_g_min", Unit::One, 20.0, 5_000.0, false),
    ("rated_pulse_ms", Unit::Millisecond, 0.5, 100.0, false),
    ("petrol_dead_time_ms", Unit::Millisecond, 0.0, 5.0, false),
    ("petrol_lambda", Unit::One, 0.7, 1.1, false),
    ("gas_lambda", Unit::One, 0.7, 1.1, false),
    ("idle_pulse_ms", Unit::Millisecond, 0.05, 100.0, true),
];

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
    match nozzle_further::measured(job) {
        Some(measured) => add("sets[0][discharge_coefficient]", Some(format!("{measured:.3}")), "measured"),
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
        let of_a_set = OF_A_SET.iter().map(|(name, ..)| *name).chain(["name", "sizes_mm"]);
        names.extend(of_a_set.map(|name| format!("sets[{at}][{name}]")));
    }
    names
}

/// Bores of a list: "1.8 2.0 2.2", "1,8; 2,0", "1.8, 2.0 mm".
fn read_sizes(form: &mut Form, name: &str, text: &str) -> Option<Vec<f64>> {
    let text = text.trim().trim_end_matches("mm");
    // A comma before a blank parts two sizes; one inside a number is its decimal sign, unless there is a point too.
    let has_point = text.contains('.');
    let text = text.replace(", ", " ");
    let parts = text.split(|c: char| c.is_whitespace() || c == ';' || (has_point && c == ','));
    let mut sizes = Vec::new();
    for part in parts.filter(|part| !part.is_empty()) {
        match number::read(part) {
            Ok(read) if read.unit.is_empty() || read.unit == "mm" => sizes.push(read.value),
            _ => {
                form.fail(name, Wrong::NotANumber { typed: part.to_owned() });
                return None;
            }
        }
    }
    if sizes.is_empty() {
        form.fail(name, Wrong::Empty);
        return None;
    }
    if sizes.len() > 200 || sizes.iter().any(|mm| !(0.3..=10.0).contains(mm)) {
        form.fail(name, Wrong::Beyond { least: 0.3, most: 10.0, unit: Unit::Millimetre });
        return None;
    }
    sizes.sort_by(f64::total_cmp);
    sizes.dedup();
    Some(sizes)
}

/// The engine as typed, before a set is put to it.
struct Engine {
    setting: Setting,
    from: From,
}

enum From {
    Power { rated_power_kw: f64, brake_efficiency: f64, idle: (Option<f64>, Option<f64>, f64) },
    Petrol(Injection),
}

impl Engine {
    fn read(form: &mut Form, fuel: Option<Composition>) -> Option<Self> {
        let is_petrol = match form.choice::<String>("from").as_deref() {
            Some("petrol") => true,
            Some("power") | None => false,
            Some(_) => {
                form.fail("from", Wrong::NotAChoice);
                false
            }
        };
        let n = NUMBERS.map(|(name, unit, least, most, _)| form.opt_number(name, unit, least..=most));
        let needed = |form: &mut Form, name: &str, value: Option<f64>| {
            if value.is_none() {
                form.fail(name, Wrong::Empty);
            }
            value
        };
        for ((name, .., may_be_left_out), value) in NUMBERS.iter().zip(n) {
            // Rated power and efficiency are the very beginning when sizing starts from power.
            let is_asked = !may_be_left_out || (!is_petrol && ["rated_power_kw", "brake_efficiency"].contains(name));
            if is_asked {
                needed(form, name, value);
            }
        }
        let [power, rpm, cylinders, eta, manifold, gas_c, max_duty, idle_rpm, idle_kw, idle_manifold] = n;
        if cylinders.is_some_and(|n| n.fract() != 0.0) {
            form.fail("engine_cylinders", Wrong::NotWhole { typed: form.value("engine_cylinders").to_owned() });
        }
        let regulator_follows = match form.value("regulator_follows") {
            "nothing" => Follows::Nothing,
            "manifold" => Follows::Manifold,
            _ => {
                form.fail("regulator_follows", Wrong::NotAChoice);
                Follows::Manifold
            }
        };
        let from = if is_petrol {
            From::Petrol(Self::injection(form, idle_manifold)?)
        } else {
            From::Power { rated_power_kw: power?, brake_efficiency: eta?, idle: (idle_rpm, idle_kw, idle_manifold?) }
        };
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "read as 1 to 16")]
        let engine_cylinders = cylinders? as u32;
        let setting = Setting {
            fuel: fuel?,
            rated_rpm: rpm?,
            engine_cylinders,
            manifold_kpa: manifold?,
            supply_over_manifold_kpa: 0.0,
            regulator_follows,
            gas_temperature_c: gas_c?,
            dead_time_ms: 0.0,
            max_duty: max_duty?,
            discharge_coefficient: 0.0,
            sizes_mm: Vec::new(),
            min_pulse_ms: 0.0,
        };
        Some(Self { setting, from })
    }

    fn injection(form: &mut Form, idle_manifold_kpa: Option<f64>) -> Option<Injection> {
        let petrol = match form.value("petrol") {
            "e0" => Some(Petrol::E0),
            "e5" => Some(Petrol::E5),
            "e10" => Some(Petrol::E10),
            _ => {
                form.fail("petrol", Wrong::NotAChoice);
                None
            }
        };
        let n = PETROL.map(|(name, unit, least, most, may_be_left_out)| {
            let value = form.opt_number(name, unit, least..=most);
            if value.is_none() && !may_be_left_out {
                form.fail(name, Wrong::Empty);
            }
            value
        });
        let displaced = form.yes_no("displaced");
        let [flow, rated, dead, petrol_lambda, gas_lambda, idle_pulse_ms] = n;
        let dead = dead?;
        let after_dead = Wrong::Rule("nozzle-pulse-within-dead-time", Vec::new());
        if rated? < dead + 0.1 {
            form.fail("rated_pulse_ms", after_dead.clone());
        }
        if idle_pulse_ms.is_some_and(|pulse| pulse < dead + 0.05) {
            form.fail("idle_pulse_ms", after_dead);
        }
        Some(Injection {
            petrol: petrol?,
            static_flow_g_min: flow?,
            rated_pulse_ms: rated?,
            dead_time_ms: dead,
            petrol_lambda: petrol_lambda?,
            gas_lambda: gas_lambda?,
            is_displaced_air_taken_off: displaced?,
            idle_pulse_ms,
            idle_manifold_kpa: idle_manifold_kpa?,
        })
    }

    fn ask(&self, set: &[f64; 4], sizes_mm: Vec<f64>) -> Asked {
        let [supply_over_manifold_kpa, dead_time_ms, min_pulse_ms, discharge_coefficient] = *set;
        let setting = Setting {
            supply_over_manifold_kpa,
            dead_time_ms,
            discharge_coefficient,
            sizes_mm,
            min_pulse_ms,
            ..self.setting.clone()
        };
        match &self.from {
            From::Petrol(injection) => Asked::Petrol(FromPetrol { injection: *injection, setting }),
            From::Power {
                rated_power_kw,
                brake_efficiency,
                idle: (idle_rpm, idle_fuel_power_kw, idle_manifold_kpa),
            } => Asked::Power(Sizing {
                fuel: setting.fuel,
                rated_power_kw: *rated_power_kw,
                rated_rpm: setting.rated_rpm,
                engine_cylinders: setting.engine_cylinders,
                brake_efficiency: *brake_efficiency,
                manifold_kpa: setting.manifold_kpa,
                supply_over_manifold_kpa,
                regulator_follows: setting.regulator_follows,
                gas_temperature_c: setting.gas_temperature_c,
                dead_time_ms,
                max_duty: setting.max_duty,
                discharge_coefficient,
                sizes_mm: setting.sizes_mm,
                idle_rpm: *idle_rpm,
                idle_fuel_power_kw: *idle_fuel_power_kw,
                idle_manifold_kpa: *idle_manifold_kpa,
                min_pulse_ms,
            }),
        }
    }
}

/// The sets as typed: name, numbers, sizes. What a later set leaves out is as in the first.
fn read_sets(form: &mut Form) -> Vec<(Row, String, [f64; 4], Vec<f64>)> {
    let mut rows = form.rows("sets");
    if rows.len() > MOST_SETS {
        form.fail("sets", Wrong::TooMany { most: MOST_SETS });
        rows.truncate(MOST_SETS);
    }
    if rows.is_empty() {
        rows = form.rows_shown("sets", 1, 0);
    }
    let first = rows.first().cloned();
    let mut sets = Vec::new();
    for row in rows {
        let of = |form: &Form, field: &str| {
            let own = row.name(field);
            let is_empty = form.value(&own).trim().is_empty();
            first.as_ref().filter(|_| is_empty).map_or(own, |first| first.name(field))
        };
        let numbers = OF_A_SET.map(|(field, unit, least, most)| {
            let name = of(form, field);
            form.number(&name, unit, least..=most)
        });
        let sizes_name = of(form, "sizes_mm");
        let text = form.value(&sizes_name).to_owned();
        let sizes = read_sizes(form, &sizes_name, &text);
        let name = form.opt_text(&row.name("name"), 60).unwrap_or_default();
        if let ([Some(a), Some(b), Some(c), Some(d)], Some(sizes)) = (numbers, sizes) {
            sets.push((row, name, [a, b, c, d], sizes));
        }
    }
    sets
}

fn verdict_of(candidate: &Candidate, sheet: &Sheet, chosen_mm: Option<f64>) -> NozzleVerdict {
    // A size somebody chose is judged by itself; the sum's own verdict looks at the whole list.
    let nozzle = sheet.found.nozzle();
    let is_own = chosen_mm.is_some() && chosen_mm != nozzle.chosen_mm;
    match if is_own { candidate.verdict } else { nozzle.verdict } {
        Verdict::Fits => NozzleVerdict::Fits,
        Verdict::TooSmall => NozzleVerdict::TooSmall,
        Verdict::TooLarge => NozzleVerdict::TooLarge,
        Verdict::NoneFits => NozzleVerdict::NoneFits,
    }
}

impl NozzleSizingForm {
    fn hinted(job: &JobPage, form: &Form, name: &str) -> Field {
        origins::hinted(&job.w(), &defaults(job), kit::number(form, &job.w(), name), name)
    }

    fn sets(job: &JobPage, form: &Form) -> Group {
        let w = job.w();
        let names =
            ["name", "supply_over_manifold_kpa", "dead_time_ms", "min_pulse_ms", "discharge_coefficient", "sizes_mm"];
        let rows = form.rows_shown("sets", MOST_SETS, 0);
        let rows = rows.iter().take(MOST_SETS).map(|row| {
            let field = |name: &&str| match *name {
                "name" | "sizes_mm" => kit::text(form, &w, row.name(name)),
                _ => kit::number(form, &w, row.name(name)),
            };
            names.iter().map(field).map(|field| field.counted_in("").hinted("")).collect()
        });
        let columns = names.iter().map(|name| w.t(format!("nozzle-sizing-column-{name}"))).collect();
        Group::table("sets", w.t("sizing-group-sets"), columns, rows.collect()).noted(w.t("sizing-note-sets"))
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
        let engine = ["rated_power_kw", "rated_rpm", "engine_cylinders", "manifold_kpa"].map(number).into();
        let from = kit::radios(form, &w, "from", &Self::choices(job, "nozzle-from", &["power", "petrol"]));
        let idle =
            vec![number("idle_rpm").optional(), number("idle_fuel_power_kw").optional(), number("idle_manifold_kpa")];
        let petrol = vec![
            kit::choice(form, &w, "petrol", &Self::choices(job, "petrol-grade", &["e0", "e5", "e10"])),
            kit::number(form, &w, "static_flow_g_min").counted_in("g/min"),
            kit::number(form, &w, "rated_pulse_ms"),
            kit::number(form, &w, "petrol_dead_time_ms"),
            number("petrol_lambda"),
            number("gas_lambda"),
            kit::number(form, &w, "idle_pulse_ms").optional(),
            kit::yes_no(form, &w, "displaced"),
        ];
        let gas = vec![
            number("gas_temperature_c"),
            number("max_duty"),
            kit::choice(form, &w, "regulator_follows", &Self::choices(job, "regulator", &["manifold", "nothing"])),
        ];
        let taken = vec![
            kit::pick(form, &w, "taken", &Self::choices(job, "set", &["1", "2", "3"])),
            kit::number(form, &w, "chosen_mm").optional(),
        ];
        vec![
            Group::new("", vec![from]),
            fuel_mix::group(&job.w(), job.file.job.fuel.into(), form),
            Group::new(w.t("sizing-group-engine"), engine),
            Group::new(w.t("sizing-group-power"), vec![number("brake_efficiency")]).noted(w.t("sizing-note-power")),
            Group::new(w.t("sizing-group-petrol"), petrol).noted(w.t("sizing-note-petrol")),
            Group::new(w.t("sizing-group-idle"), idle).noted(w.t("sizing-note-idle")),
            Group::new(w.t("sizing-group-gas"), gas),
            nozzle_further::with_measured(job, Self::sets(job, form), &self.measured),
            Group::new(w.t("sizing-group-taken"), taken),
        ]
    }

    fn read(&self, job: &JobPage, form: &mut Form) -> Option<Taken> {
        let w = job.w();
        let fuel = fuel_mix::read(&job.w(), job.file.job.fuel.into(), form);
        let engine = Engine::read(form, fuel);
        let sets = read_sets(form);
        let taken = form.integer("taken", 1..=3).and_then(|n| usize::try_from(n - 1).ok());
        let chosen_mm = form.opt_number("chosen_mm", Unit::Millimetre, 0.3..=10.0);
        if taken.is_some_and(|taken| taken >= sets.len()) && form.sound().is_some() {
            form.fail("taken", Wrong::Rule("nozzle-no-such-set", Vec::new()));
        }
        form.sound()?;
        let (engine, taken) = (engine?, taken?);
        let mut asked = Vec::new();
        let mut sheets = Vec::new();
        for (row, name, numbers, sizes) in sets {
            let one = engine.ask(&numbers, sizes);
            let in_row = |quantity: &str| {
                let is_of_set = OF_A_SET.iter().any(|(name, ..)| *name == quantity) || quantity == "sizes_mm";
                if is_of_set { row.name(quantity) } else { quantity.to_owned() }
            };
            match sheet(&one) {
                Ok(answer) => sheets.push(answer),
                Err(error) => sum::refuse(&w, form, &error, "gas_temperature_c", in_row),
            }
            asked.push((name, one));
        }
        form.sound()?;
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
            verdict: verdict_of(&candidate, answer, chosen_mm),
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
