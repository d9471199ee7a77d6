//! Hoses and lines: pressure drop and velocity at rated power, against what is usual.

use super::facts::{Fact, Facts};
use super::reckoned::Reckoned;
use super::reckoning::{self, Defaults, FromNozzle, Number, needed};
use super::record::{Group, Recorded, Taken};
use super::{JobPage, fuel_mix, line_said, origins, sum};
use crate::calc::hose::{Carries, Hose, Line, LineAsked, USUAL_HEADS, line};
use crate::calc::{Composition, REFERENCE_C};
use crate::model::evidence::{Entry, Evidence, LineInputs, LineResults, LineSizing, SizingVerdict};
use crate::model::job::Fuel;
use crate::model::stage::Stage;
use crate::unit::Unit;
use crate::web::Error;
use crate::web::app::App;
use crate::web::form::{Form, Wrong};
use crate::web::kit;

/// The form of [`LineSizing`].
#[derive(Debug)]
pub struct LineSizingForm;

/// What holds for every line.
pub const COMMON: [Number; 5] = [
    needed("fuel_rate_g_s", Unit::One, 0.01, 200.0).counted_in("g/s"),
    needed("engine_cylinders", Unit::One, 1.0, 16.0),
    needed("pressure_kpa", Unit::Kilopascal, 20.0, 3_000.0),
    needed("temperature_c", Unit::Celsius, -40.0, 120.0),
    needed("duty_percent", Unit::Percent, 1.0, 100.0).optional(),
];
/// The liquid line; LPG only.
pub const LIQUID: Number = needed("liquid_c", Unit::Celsius, -30.0, 60.0);
/// What a line is made of: name, unit, range.
pub const OF_A_LINE: [(&str, Unit, f64, f64); 3] = [
    ("bore_mm", Unit::Millimetre, 1.0, 100.0),
    ("length_m", Unit::Metre, 0.01, 50.0),
    ("velocity_heads", Unit::One, 0.0, 50.0),
];

/// The lines of this job, in the order of the form.
pub fn lines(job: &JobPage) -> &'static [Line] {
    const ALL: [Line; 3] = [Line::RailSupply, Line::Branch, Line::Liquid];
    if job.file.job.fuel == Fuel::Lpg { &ALL } else { &ALL[..2] }
}

/// The code of a line in the words.
pub fn code(line: Line) -> &'static str {
    match line {
        Line::RailSupply => "rail-supply",
        Line::Branch => "branch",
        Line::Liquid => "liquid",
    }
}

/// The name of a field of a line.
pub fn name(at: usize, field: &str) -> String {
    format!("lines[{at}][{field}]")
}

fn defaults(job: &JobPage) -> Vec<origins::Default> {
    let nozzle = FromNozzle::of(job);
    let nozzle = nozzle.as_ref();
    let is_lpg = job.file.job.fuel == Fuel::Lpg;
    let mut all = Defaults(nozzle.map(|nozzle| nozzle.mix(job)).unwrap_or_default());
    all.add("fuel_rate_g_s", nozzle.map(|nozzle| format!("{:.3}", nozzle.fuel_rate_g_s())), "nozzle");
    all.add("engine_cylinders", job.file.vehicle.engine_cylinders.map(|n| n.to_string()), "vehicle");
    let upstream = nozzle.map(|nozzle| format!("{:.0}", nozzle.upstream_kpa()));
    all.known_or("pressure_kpa", upstream, "nozzle", if is_lpg { "217" } else { "297" });
    let gas_c = nozzle.map(|nozzle| nozzle.asked().setting().gas_temperature_c.to_string());
    all.known_or("temperature_c", gas_c, "nozzle", if is_lpg { "50" } else { "40" });
    let duty = nozzle.and_then(FromNozzle::used).map(|used| format!("{:.0}", 100.0 * used.duty_at_rated));
    all.add("duty_percent", duty, "nozzle");
    if is_lpg {
        all.add("liquid_c", Some(format!("{REFERENCE_C:.0}")), "practice");
    }
    for at in 0..lines(job).len() {
        all.add(&name(at, "velocity_heads"), Some(USUAL_HEADS.to_string()), "practice");
    }
    all.0
}

fn names(job: &JobPage) -> Vec<String> {
    let mut names = fuel_mix::names(job.file.job.fuel.into());
    names.extend(reckoning::names_of(&COMMON));
    names.push(LIQUID.name.to_owned());
    for at in 0..lines(job).len() {
        names.extend(OF_A_LINE.iter().map(|(field, ..)| name(at, field)));
    }
    names
}

/// Bore, length and fittings of a line; none when neither bore nor length was given.
fn read_line(form: &mut Form, at: usize) -> Option<[f64; 3]> {
    let is_left_out = ["bore_mm", "length_m"].iter().all(|field| form.value(&name(at, field)).trim().is_empty());
    if is_left_out {
        return None;
    }
    let [bore, length, heads] = OF_A_LINE.map(|(field, unit, least, most)| {
        let name = name(at, field);
        form.number(&name, unit, least..=most)
    });
    Some([bore?, length?, heads?])
}

/// What holds for every line, read.
struct Common {
    fuel: Composition,
    fuel_rate_g_s: f64,
    engine_cylinders: f64,
    pressure_kpa: f64,
    temperature_c: f64,
    duty: Option<f64>,
    liquid_c: f64,
}

impl Common {
    fn read(job: &JobPage, form: &mut Form) -> Option<Self> {
        let fuel = fuel_mix::read(&job.w(), job.file.job.fuel.into(), form);
        let [rate, cylinders, kpa, c, duty] = COMMON.map(|number| number.read(form));
        if cylinders.is_some_and(|n| n.fract() != 0.0) {
            form.fail("engine_cylinders", Wrong::NotWhole { typed: form.value("engine_cylinders").to_owned() });
        }
        let liquid_c = if job.file.job.fuel == Fuel::Lpg { LIQUID.read(form) } else { Some(REFERENCE_C) };
        Some(Self {
            fuel: fuel?,
            fuel_rate_g_s: rate?,
            engine_cylinders: cylinders?,
            pressure_kpa: kpa?,
            temperature_c: c?,
            duty: duty.map(|percent| percent / 100.0),
            liquid_c: liquid_c?,
        })
    }

    fn ask(&self, line: Line, [bore_mm, length_m, fitting_velocity_heads]: [f64; 3]) -> LineAsked {
        let is_liquid = line == Line::Liquid;
        let share = if line == Line::Branch { self.engine_cylinders } else { 1.0 };
        let hose = Hose {
            composition: self.fuel,
            carries: if is_liquid { Carries::Liquid } else { Carries::Gas },
            pressure_kpa: self.pressure_kpa,
            temperature_c: if is_liquid { self.liquid_c } else { self.temperature_c },
            bore_mm,
            length_m,
            flow_g_s: self.fuel_rate_g_s / share,
            fitting_velocity_heads,
        };
        LineAsked { line, hose, duty: self.duty.filter(|_| line == Line::Branch) }
    }
}

impl Recorded for LineSizingForm {
    const KIND: &'static str = "line-sizing";
    const STAGE: Stage = Stage::Sizing;
    const RECKONS: bool = true;

    async fn open(_: &App, _: &JobPage, _: &str) -> Result<Self, Error> {
        Ok(Self)
    }

    fn blank(&self, job: &JobPage) -> Form {
        reckoning::opened(defaults(job))
    }

    fn filled(&self, _: &JobPage, entry: &Entry) -> Form {
        let Evidence::LineSizing(one) = &entry.body else { return Form::blank() };
        reckoning::filled(one.read_back().map(|(inputs, _)| inputs.typed).unwrap_or_default())
    }

    fn groups(&self, job: &JobPage, form: &Form) -> Vec<Group> {
        let (w, defaults) = (job.w(), defaults(job));
        let mut common: Vec<_> = COMMON.iter().map(|number| number.field(job, form, &defaults)).collect();
        if job.file.job.fuel == Fuel::Lpg {
            common.push(LIQUID.field(job, form, &defaults));
        }
        let row = |at: usize| {
            let field = |(field, ..): &(&str, Unit, f64, f64)| kit::number(form, &w, name(at, field));
            OF_A_LINE.iter().map(field).map(|field| field.counted_in("").hinted("")).collect()
        };
        let heads = lines(job)
            .iter()
            .map(|line| (w.t(format!("line-{}", code(*line))), w.t(format!("line-{}.hint", code(*line)))));
        let mut columns = vec![w.t("line-column-line")];
        columns.extend(OF_A_LINE.iter().map(|(field, ..)| w.head(format!("line-sizing-column-{field}"))));
        vec![
            // An empty sheet is noted at the table.
            Group::table("lines", w.t("line-group-lines"), columns, (0..lines(job).len()).map(row).collect())
                .headed(heads.collect())
                .noted(w.t("line-note-lines")),
            fuel_mix::group(&job.w(), job.file.job.fuel.into(), form),
            Group::new(w.t("line-group-flow"), common).noted(w.t("line-note-flow")),
        ]
    }

    fn read(&self, job: &JobPage, form: &mut Form) -> Option<Taken> {
        let common = Common::read(job, form);
        let made: Vec<_> = lines(job).iter().enumerate().map(|(at, line)| (at, *line, read_line(form, at))).collect();
        if form.sound().is_some() && made.iter().all(|(.., made)| made.is_none()) {
            form.fail("lines[0][bore_mm]", Wrong::Rule("line-none", Vec::new()));
        }
        form.sound()?;
        let common = common?;
        let (mut asked, mut found) = (Vec::new(), Vec::new());
        for (at, which, made) in made {
            let Some(made) = made else { continue };
            let one = common.ask(which, made);
            let is_liquid = which == Line::Liquid;
            let in_form = |quantity: &str| match quantity {
                "bore_mm" | "length_m" => name(at, quantity),
                // So narrow that the gas would lose a tenth of its pressure.
                "flow_g_s" => name(at, "bore_mm"),
                "temperature_c" if is_liquid => "liquid_c".to_owned(),
                other => other.to_owned(),
            };
            match line(&one) {
                Ok(answer) => found.push(answer),
                Err(crate::calc::Error::Outside(outside)) if outside.quantity == "flow_g_s" => {
                    form.fail(&name(at, "bore_mm"), Wrong::Rule("line-far-too-narrow", Vec::new()));
                }
                Err(error) => sum::refuse(&job.w(), form, &error, "temperature_c", in_form),
            }
            asked.push(one);
        }
        form.sound()?;
        let of_rail = asked.iter().zip(&found).find(|(asked, _)| asked.line == Line::RailSupply);
        let (typed, origins) = origins::keep(form, names(job), &defaults(job));
        let body = LineSizing {
            origins,
            rail_supply_drop_kpa: of_rail.map(|(_, found)| found.drop.drop_kpa),
            verdict: SizingVerdict::of_lines(&found),
            program_version: env!("CARGO_PKG_VERSION").to_owned(),
            inputs: serde_json::to_value(LineInputs { typed, lines: asked }).ok()?,
            results: serde_json::to_value(LineResults { lines: found }).ok()?,
        };
        Some(Taken::of(Evidence::LineSizing(body)))
    }

    fn facts(job: &JobPage, entry: &Entry) -> Vec<Fact> {
        let Evidence::LineSizing(one) = &entry.body else { return Vec::new() };
        Facts::new(job.w(), Self::KIND)
            .opt_number("rail_supply_drop_kpa", one.rail_supply_drop_kpa, 2, "kPa")
            .coded("verdict", one.verdict)
            .done()
    }

    fn reckoned(job: &JobPage, body: &Evidence) -> Option<Reckoned> {
        line_said::reckoned(job, body)
    }
}
