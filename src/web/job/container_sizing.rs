//! Which container: what it holds at the fill limit, when it is liquid-full, how far it goes, whether the axle carries it.

use super::facts::{Fact, Facts};
use super::reckoned::Reckoned;
use super::record::{Group, Recorded, Taken};
use super::said_line::line_said;
use super::{JobPage, container_said, fuel_mix, origins, sum};
use crate::calc::container::{Container, LEFT_BEHIND, Stowage, USUAL_STOP, container, stow};
use crate::calc::{Composition, Error as SumError, REFERENCE_C};
use crate::model::evidence::{ContainerInputs, ContainerResults, ContainerSet, ContainerSizing, Entry, Evidence};
use crate::model::part::PartCategory;
use crate::model::stage::Stage;
use crate::rules::Quantity;
use crate::unit::Unit;
use crate::web::Error;
use crate::web::app::App;
use crate::web::form::{Form, Row, Wrong};
use crate::web::kit::{self, Field};

/// The form of [`ContainerSizing`].
#[derive(Debug)]
pub struct ContainerSizingForm;

/// Containers compared at once.
const MOST_SETS: usize = 3;
/// Numbers that hold for every container: name, unit.
pub const NUMBERS: [(&str, Unit); 6] = [
    ("fill_percent", Unit::Percent),
    ("temperature_c", Unit::Celsius),
    ("parts_mass_kg", Unit::Kilogram),
    ("consumption_l_per_100km", Unit::One),
    ("left_behind_percent", Unit::Percent),
    ("axle_reserve_kg", Unit::Kilogram),
];
/// Numbers of one container.
pub const OF_A_SET: [(&str, Unit); 2] = [("gross_volume_l", Unit::Litre), ("container_mass_kg", Unit::Kilogram)];

fn fill_limit(job: &JobPage) -> Option<(f64, String)> {
    let file = &job.file;
    let limit = job.book.limit(Quantity::FillPercent, &file.job, &file.vehicle, None, job.today)?;
    limit.most.map(|(most, line)| (most, line_said(&job.w(), &line)))
}

fn defaults(job: &JobPage) -> Vec<origins::Default> {
    let mut all = Vec::new();
    let mut add = |name: &str, text: Option<String>, origin| {
        all.extend(text.map(|text| (name.to_owned(), text, origin)));
    };
    match fill_limit(job) {
        Some((most, _)) => add("fill_percent", Some(format!("{most}")), "rule"),
        None => add("fill_percent", Some(format!("{:.0}", 100.0 * USUAL_STOP)), "practice"),
    }
    add("temperature_c", Some(format!("{REFERENCE_C:.0}")), "practice");
    add("left_behind_percent", Some(format!("{:.0}", 100.0 * LEFT_BEHIND)), "practice");
    add("axle_reserve_kg", job.file.vehicle.rear_axle_reserve_kg.map(|kg| kg.to_string()), "vehicle");
    let fitted = job.file.fitted().find(|part| part.category == PartCategory::Container);
    let gross = fitted.and_then(|part| part.capacity_l).map(|litres| litres.to_string());
    add("sets[0][gross_volume_l]", gross, "part");
    add("taken", Some("1".to_owned()), "practice");
    all
}

fn names(job: &JobPage) -> Vec<String> {
    let mut names = fuel_mix::names(job.file.job.fuel.into());
    names.extend(NUMBERS.iter().map(|(name, _)| (*name).to_owned()));
    names.push("taken".to_owned());
    for at in 0..MOST_SETS {
        let of_a_set = OF_A_SET.iter().map(|(name, _)| *name).chain(["name"]);
        names.extend(of_a_set.map(|name| format!("sets[{at}][{name}]")));
    }
    names
}

/// What holds for every container.
struct Common {
    fuel: Composition,
    fill_percent: f64,
    temperature_c: f64,
    parts_mass_kg: Option<f64>,
    consumption_l_per_100km: Option<f64>,
    left_behind_percent: f64,
    axle_reserve_kg: Option<f64>,
}

impl Common {
    fn read(job: &JobPage, form: &mut Form) -> Option<Self> {
        let fuel = fuel_mix::read(&job.w(), job.file.job.fuel.into(), form);
        let fill_percent = form.number("fill_percent", Unit::Percent, 1.0..=100.0);
        let temperature_c = form.number("temperature_c", Unit::Celsius, -40.0..=60.0);
        let parts_mass_kg = form.opt_number("parts_mass_kg", Unit::Kilogram, -200.0..=500.0);
        let consumption_l_per_100km = form.opt_number("consumption_l_per_100km", Unit::One, 1.0..=200.0);
        let left_behind_percent = form.number("left_behind_percent", Unit::Percent, 0.0..=50.0);
        let axle_reserve_kg = form.opt_number("axle_reserve_kg", Unit::Kilogram, -2_000.0..=10_000.0);
        if let (Some(fill), Some((most, source))) = (fill_percent, fill_limit(job))
            && fill > most
        {
            let most = job.w().quantity(most, 0, "%");
            let values = vec![("most", most.into()), ("source", source.into())];
            form.fail("fill_percent", Wrong::Rule("container-above-limit", values));
        }
        Some(Self {
            fuel: fuel?,
            fill_percent: fill_percent?,
            temperature_c: temperature_c?,
            parts_mass_kg,
            consumption_l_per_100km,
            left_behind_percent: left_behind_percent?,
            axle_reserve_kg,
        })
    }

    fn set(&self, name: String, gross_volume_l: f64, container_mass_kg: Option<f64>) -> ContainerSet {
        let stowage = match (container_mass_kg, self.parts_mass_kg, self.consumption_l_per_100km) {
            (Some(container_mass_kg), Some(parts_mass_kg), Some(consumption_l_per_100km)) => Some(Stowage {
                container_mass_kg,
                parts_mass_kg,
                consumption_l_per_100km,
                left_behind_share: self.left_behind_percent / 100.0,
                axle_reserve_kg: self.axle_reserve_kg,
            }),
            _ => None,
        };
        let container = Container {
            composition: self.fuel,
            gross_volume_l,
            fill_fraction: self.fill_percent / 100.0,
            temperature_c: self.temperature_c,
        };
        ContainerSet { name, container, stowage }
    }
}

/// Containers as typed: line, name, gross volume, mass. What a later one leaves out is as in the first.
fn read_sets(form: &mut Form) -> Vec<(Row, String, f64, Option<f64>)> {
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
        let (gross_name, mass_name) = (of(form, "gross_volume_l"), of(form, "container_mass_kg"));
        let gross = form.number(&gross_name, Unit::Litre, 1.0..=2_000.0);
        let mass = form.opt_number(&mass_name, Unit::Kilogram, 0.0..=1_000.0);
        let name = form.opt_text(&row.name("name"), 60).unwrap_or_default();
        sets.extend(gross.map(|gross| (row, name, gross, mass)));
    }
    sets
}

impl Recorded for ContainerSizingForm {
    const KIND: &'static str = "container-sizing";
    const STAGE: Stage = Stage::Sizing;
    const RECKONS: bool = true;

    async fn open(_: &App, _: &JobPage, _: &str) -> Result<Self, Error> {
        Ok(Self)
    }

    fn blank(&self, job: &JobPage) -> Form {
        let form = defaults(job).into_iter().fold(Form::blank(), |form, (name, text, _)| form.with(&name, text));
        // The mix of the nozzle sheet is the mix of this vehicle.
        let nozzle = job.file.entry("nozzle-sizing", "").map(|entry| &entry.body);
        let Some(Evidence::NozzleSizing(nozzle)) = nozzle else { return form };
        let typed = nozzle.read_back().map(|(inputs, _)| inputs.typed).unwrap_or_default();
        let of_mix = fuel_mix::names(job.file.job.fuel.into());
        let typed = typed.into_iter().filter(|(name, _)| of_mix.contains(name));
        typed.fold(form, |form, (name, text)| form.with(&name, text))
    }

    fn filled(&self, _: &JobPage, entry: &Entry) -> Form {
        let Evidence::ContainerSizing(one) = &entry.body else { return Form::blank() };
        let Some((inputs, _)) = one.read_back() else { return Form::blank() };
        inputs.typed.into_iter().fold(Form::blank(), |form, (name, text)| form.with(&name, text))
    }

    fn groups(&self, job: &JobPage, form: &Form) -> Vec<Group> {
        let (w, defaults) = (job.w(), defaults(job));
        let number = |name: &str| origins::hinted(&job.w(), &defaults, kit::number(form, &w, name), name);
        let rows = form.rows_shown("sets", MOST_SETS, 0);
        let rows = rows.iter().take(MOST_SETS).map(|row| {
            let field = |field: Field| field.counted_in("").hinted("");
            vec![
                field(kit::text(form, &w, row.name("name"))),
                field(kit::number(form, &w, row.name("gross_volume_l"))),
                field(kit::number(form, &w, row.name("container_mass_kg"))),
            ]
        });
        let columns = ["name", "gross_volume_l", "container_mass_kg"];
        let columns = columns.map(|name| w.head(format!("container-sizing-column-{name}"))).into();
        let vehicle = vec![
            number("consumption_l_per_100km").counted_in("").optional(),
            number("parts_mass_kg").optional(),
            number("axle_reserve_kg").optional(),
        ];
        let filling = ["fill_percent", "temperature_c", "left_behind_percent"].map(number).into();
        let taken = kit::pick(form, &w, "taken", &kit::choices(&w, "container", ["1", "2", "3"]));
        vec![
            // The proof of this sheet links to the volume.
            Group::table("gross_volume_l", w.t("sizing-group-containers"), columns, rows.collect())
                .noted(w.t("sizing-note-containers")),
            Group::new("", vec![taken]),
            fuel_mix::group(&job.w(), job.file.job.fuel.into(), form),
            Group::new(w.t("sizing-group-filling"), filling),
            Group::new(w.t("sizing-group-vehicle"), vehicle).noted(w.t("sizing-note-vehicle")),
        ]
    }

    fn read(&self, job: &JobPage, form: &mut Form) -> Option<Taken> {
        let w = job.w();
        let common = Common::read(job, form);
        let rows = read_sets(form);
        let taken = form.integer("taken", 1..=3).and_then(|n| usize::try_from(n - 1).ok());
        if taken.is_some_and(|taken| taken >= rows.len()) && form.sound().is_some() {
            form.fail("taken", Wrong::Rule("container-no-such-set", Vec::new()));
        }
        form.sound()?;
        let (common, taken) = (common?, taken?);
        let (mut sets, mut answers) = (Vec::new(), Vec::new());
        for (row, name, gross, mass) in rows {
            let set = common.set(name, gross, mass);
            let in_form = |quantity: &str| match quantity {
                "gross_volume_l" | "container_mass_kg" => row.name(quantity),
                "fill_fraction" => "fill_percent".to_owned(),
                "left_behind_share" => "left_behind_percent".to_owned(),
                other => other.to_owned(),
            };
            let reckon = || {
                let contents = container(&set.container)?;
                let stowed = set.stowage.as_ref().map(|stowage| stow(&contents, stowage)).transpose()?;
                Ok::<_, SumError>((contents, stowed))
            };
            match reckon() {
                Ok(answer) => answers.push(answer),
                Err(error) => sum::refuse(&w, form, &error, "temperature_c", in_form),
            }
            sets.push(set);
        }
        form.sound()?;
        let (set, (contents, stowed)) = (sets.get(taken)?, answers.get(taken)?);
        let (typed, origins) = origins::keep(form, names(job), &defaults(job));
        let body = ContainerSizing {
            origins,
            gross_volume_l: set.container.gross_volume_l,
            liquid_l: contents.liquid_l,
            liquid_full_temperature_c: contents.liquid_full_temperature_c,
            added_mass_kg: stowed.map(|stowed| stowed.added_mass_kg),
            is_within_axle_reserve: stowed.and_then(|stowed| stowed.reserve_left_kg).map(|left| left >= 0.0),
            program_version: env!("CARGO_PKG_VERSION").to_owned(),
            inputs: serde_json::to_value(ContainerInputs { typed, sets, taken }).ok()?,
            results: serde_json::to_value(ContainerResults { sets: answers }).ok()?,
        };
        Some(Taken::of(Evidence::ContainerSizing(body)))
    }

    fn facts(job: &JobPage, entry: &Entry) -> Vec<Fact> {
        let Evidence::ContainerSizing(one) = &entry.body else { return Vec::new() };
        Facts::new(job.w(), Self::KIND)
            .number("gross_volume_l", one.gross_volume_l, 1, "L")
            .number("liquid_l", one.liquid_l, 1, "L")
            .opt_number("liquid_full_temperature_c", one.liquid_full_temperature_c, 0, "°C")
            .opt_number("added_mass_kg", one.added_mass_kg, 0, "kg")
            .done()
    }

    fn reckoned(job: &JobPage, body: &Evidence) -> Option<Reckoned> {
        container_said::reckoned(job, body)
    }
}
