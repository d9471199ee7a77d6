//! Which container: what it holds at the fill limit, when it is liquid-full, how far it goes, whether the axle carries it.

use super::facts::{Fact, Facts};
use super::reckoned::Reckoned;
use super::reckoning::{self, Defaults, FromNozzle, Number, needed};
use super::record::{Group, Recorded, Taken};
use super::said_line::line_said;
use super::vessels::{Vessel, Vessels};
use super::{JobPage, container_said, fuel_mix, origins};
use crate::calc::container::{Container, Contents, LEFT_BEHIND, Stowage, Stowed, USUAL_STOP, container, stow};
use crate::calc::{Composition, Error as SumError, REFERENCE_C};
use crate::model::evidence::{ContainerInputs, ContainerResults, ContainerSet, ContainerSizing, Entry, Evidence};
use crate::model::part::PartCategory;
use crate::model::stage::Stage;
use crate::rules::Quantity;
use crate::unit::Unit;
use crate::web::Error;
use crate::web::app::App;
use crate::web::form::{Form, Wrong};
use crate::web::kit::Field;

/// The form of [`ContainerSizing`].
#[derive(Debug)]
pub struct ContainerSizingForm;

/// How the container is filled.
pub const FILLING: [Number; 3] = [
    needed("fill_percent", Unit::Percent, 1.0, 100.0),
    needed("temperature_c", Unit::Celsius, -40.0, 60.0),
    needed("left_behind_percent", Unit::Percent, 0.0, 50.0),
];
/// What the vehicle does with it.
pub const VEHICLE: [Number; 3] = [
    needed("consumption_l_per_100km", Unit::One, 1.0, 200.0).optional(),
    needed("parts_mass_kg", Unit::Kilogram, -200.0, 500.0).optional(),
    needed("axle_reserve_kg", Unit::Kilogram, -2_000.0, 10_000.0).optional(),
];
/// What is asked of each container; the proof of this sheet links to the volume.
pub const CONTAINERS: Vessels = Vessels {
    scope: "container-sizing",
    id: "gross_volume_l",
    legend: "sizing-group-containers",
    choice: "container",
    no_such: "container-no-such-set",
    volume: needed("gross_volume_l", Unit::Litre, 1.0, 2_000.0),
    mass: needed("container_mass_kg", Unit::Kilogram, 0.0, 1_000.0).optional(),
};

fn fill_limit(job: &JobPage) -> Option<(f64, String)> {
    let file = &job.file;
    let limit = job.book.limit(Quantity::FillPercent, &file.job, &file.vehicle, None, job.today)?;
    limit.most.map(|(most, line)| (most, line_said(&job.w(), &line)))
}

fn defaults(job: &JobPage) -> Vec<origins::Default> {
    // The mix of the nozzle sheet is the mix of this vehicle.
    let mut all = Defaults(FromNozzle::of(job).map(|nozzle| nozzle.mix(job)).unwrap_or_default());
    let limit = fill_limit(job).map(|(most, _)| format!("{most}"));
    all.known_or("fill_percent", limit, "rule", &format!("{:.0}", 100.0 * USUAL_STOP));
    all.add("temperature_c", Some(format!("{REFERENCE_C:.0}")), "practice");
    all.add("left_behind_percent", Some(format!("{:.0}", 100.0 * LEFT_BEHIND)), "practice");
    all.add("axle_reserve_kg", job.file.vehicle.rear_axle_reserve_kg.map(|kg| kg.to_string()), "vehicle");
    let fitted = job.file.fitted().find(|part| part.category == PartCategory::Container);
    let gross = fitted.and_then(|part| part.capacity_l).map(|litres| litres.to_string());
    all.add("sets[0][gross_volume_l]", gross, "part");
    all.add("taken", Some("1".to_owned()), "practice");
    all.0
}

fn names(job: &JobPage) -> Vec<String> {
    let mut names = fuel_mix::names(job.file.job.fuel.into());
    names.extend(reckoning::names_of(&FILLING).chain(reckoning::names_of(&VEHICLE)).chain(CONTAINERS.names()));
    names
}

/// What holds for every container.
struct Common {
    fuel: Composition,
    filling: [Option<f64>; 3],
    vehicle: [Option<f64>; 3],
}

impl Common {
    fn read(job: &JobPage, form: &mut Form) -> Option<Self> {
        let fuel = fuel_mix::read(&job.w(), job.file.job.fuel.into(), form);
        let filling = FILLING.map(|number| number.read(form));
        let vehicle = VEHICLE.map(|number| number.read(form));
        if let (Some(fill), Some((most, source))) = (filling[0], fill_limit(job))
            && fill > most
        {
            let most = job.w().quantity(most, 0, "%");
            let values = vec![("most", most.into()), ("source", source.into())];
            form.fail("fill_percent", Wrong::Rule("container-above-limit", values));
        }
        Some(Self { fuel: fuel?, filling, vehicle })
    }

    fn set(&self, one: &Vessel) -> Option<ContainerSet> {
        let [fill_percent, temperature_c, left_behind_percent] = self.filling;
        let [consumption, parts_mass_kg, axle_reserve_kg] = self.vehicle;
        let stowage = match (one.mass_kg, parts_mass_kg, consumption) {
            (Some(container_mass_kg), Some(parts_mass_kg), Some(consumption_l_per_100km)) => Some(Stowage {
                container_mass_kg,
                parts_mass_kg,
                consumption_l_per_100km,
                left_behind_share: left_behind_percent? / 100.0,
                axle_reserve_kg,
            }),
            _ => None,
        };
        let container = Container {
            composition: self.fuel,
            gross_volume_l: one.volume_l,
            fill_fraction: fill_percent? / 100.0,
            temperature_c: temperature_c?,
        };
        Some(ContainerSet { name: one.name.clone(), container, stowage })
    }
}

fn reckon(set: &ContainerSet) -> Result<(Contents, Option<Stowed>), SumError> {
    let contents = container(&set.container)?;
    let stowed = set.stowage.as_ref().map(|stowage| stow(&contents, stowage)).transpose()?;
    Ok((contents, stowed))
}

impl Recorded for ContainerSizingForm {
    const KIND: &'static str = "container-sizing";
    const STAGE: Stage = Stage::Sizing;
    const RECKONS: bool = true;

    async fn open(_: &App, _: &JobPage, _: &str) -> Result<Self, Error> {
        Ok(Self)
    }

    fn blank(&self, job: &JobPage) -> Form {
        reckoning::opened(defaults(job))
    }

    fn filled(&self, _: &JobPage, entry: &Entry) -> Form {
        let Evidence::ContainerSizing(one) = &entry.body else { return Form::blank() };
        reckoning::filled(one.read_back().map(|(inputs, _)| inputs.typed).unwrap_or_default())
    }

    fn groups(&self, job: &JobPage, form: &Form) -> Vec<Group> {
        let (w, defaults) = (job.w(), defaults(job));
        let fields = |numbers: &[Number]| -> Vec<Field> {
            numbers.iter().map(|number| number.field(job, form, &defaults)).collect()
        };
        let [containers, taken] = CONTAINERS.groups(&w, form);
        vec![
            containers,
            taken,
            fuel_mix::group(&job.w(), job.file.job.fuel.into(), form),
            Group::new(w.t("sizing-group-filling"), fields(&FILLING)),
            Group::new(w.t("sizing-group-vehicle"), fields(&VEHICLE)).noted(w.t("sizing-note-vehicle")),
        ]
    }

    fn read(&self, job: &JobPage, form: &mut Form) -> Option<Taken> {
        let w = job.w();
        let common = Common::read(job, form);
        let vessels = CONTAINERS.read(form);
        let taken = CONTAINERS.taken(form, &vessels);
        form.sound()?;
        let (common, taken) = (common?, taken?);
        let sets: Option<Vec<_>> = vessels.into_iter().map(|one| Some((common.set(&one)?, one))).collect();
        let sets: Vec<_> = sets?.into_iter().map(|(set, one)| (one, set)).collect();
        let field_of = |quantity: &str| match quantity {
            "fill_fraction" => "fill_percent".to_owned(),
            "left_behind_share" => "left_behind_percent".to_owned(),
            other => other.to_owned(),
        };
        let answers = CONTAINERS.answers(&w, form, &sets, reckon, field_of);
        form.sound()?;
        let sets: Vec<ContainerSet> = sets.into_iter().map(|(_, set)| set).collect();
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
