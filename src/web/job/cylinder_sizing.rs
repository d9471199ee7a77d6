//! Which CNG cylinder: what it holds, how its gauge moves with the temperature, how far it goes, whether the axle carries
//! it.

use super::facts::{Fact, Facts};
use super::reckoned::Reckoned;
use super::reckoning::{self, Defaults, FromNozzle, Number, needed};
use super::record::{Group, Recorded, Taken};
use super::vessels::{Vessel, Vessels};
use super::{JobPage, cylinder_said, fuel_mix, origins};
use crate::calc::cylinder::{Contents, Cylinder, LEFT_KPA, Stowage, Stowed, WORKING_KPA, cylinder, stow};
use crate::calc::{Composition, Error as SumError, REFERENCE_C};
use crate::model::evidence::{CylinderInputs, CylinderResults, CylinderSet, CylinderSizing, Entry, Evidence};
use crate::model::part::PartCategory;
use crate::model::stage::Stage;
use crate::unit::Unit;
use crate::web::Error;
use crate::web::app::App;
use crate::web::form::{Form, Wrong};
use crate::web::kit::Field;

/// The form of [`CylinderSizing`].
#[derive(Debug)]
pub struct CylinderSizingForm;

/// How the cylinder is filled.
pub const FILLING: [Number; 3] = [
    needed("pressure_kpa", Unit::Kilopascal, 500.0, 35_000.0),
    needed("temperature_c", Unit::Celsius, -40.0, 65.0),
    needed("at_temperature_c", Unit::Celsius, -60.0, 120.0).optional(),
];
/// What the vehicle does with it.
pub const VEHICLE: [Number; 4] = [
    needed("consumption_kg_per_100km", Unit::One, 0.5, 150.0).optional(),
    needed("left_kpa", Unit::Kilopascal, 110.0, 20_000.0),
    needed("parts_mass_kg", Unit::Kilogram, -200.0, 500.0).optional(),
    needed("axle_reserve_kg", Unit::Kilogram, -2_000.0, 10_000.0).optional(),
];
/// What is asked of each cylinder.
pub const CYLINDERS: Vessels = Vessels {
    scope: "cylinder-sizing",
    id: "sets",
    legend: "cylinder-group-cylinders",
    choice: "cylinder-set",
    no_such: "cylinder-no-such-set",
    volume: needed("volume_l", Unit::Litre, 0.5, 3_000.0),
    mass: needed("cylinder_mass_kg", Unit::Kilogram, 0.0, 2_000.0).optional(),
};

fn defaults(job: &JobPage) -> Vec<origins::Default> {
    let nozzle = FromNozzle::of(job);
    let mut all = Defaults(nozzle.map(|nozzle| nozzle.mix(job)).unwrap_or_default());
    all.add("pressure_kpa", Some(format!("{WORKING_KPA:.0}")), "practice");
    all.add("temperature_c", Some(format!("{REFERENCE_C:.0}")), "practice");
    all.add("at_temperature_c", Some("40".to_owned()), "practice");
    all.add("left_kpa", Some(format!("{LEFT_KPA:.0}")), "practice");
    all.add("axle_reserve_kg", job.file.vehicle.rear_axle_reserve_kg.map(|kg| kg.to_string()), "vehicle");
    let fitted = job.file.fitted().find(|part| part.category == PartCategory::Cylinder);
    let volume = fitted.and_then(|part| part.capacity_l).map(|litres| litres.to_string());
    all.add("sets[0][volume_l]", volume, "cylinder");
    all.add("taken", Some("1".to_owned()), "practice");
    all.0
}

fn names(job: &JobPage) -> Vec<String> {
    let mut names = fuel_mix::names(job.file.job.fuel.into());
    names.extend(reckoning::names_of(&FILLING).chain(reckoning::names_of(&VEHICLE)));
    names.extend(CYLINDERS.names());
    names
}

/// What holds for every cylinder.
struct Common {
    fuel: Composition,
    filling: [Option<f64>; 3],
    vehicle: [Option<f64>; 4],
}

impl Common {
    fn read(job: &JobPage, form: &mut Form) -> Option<Self> {
        let fuel = fuel_mix::read(&job.w(), job.file.job.fuel.into(), form);
        let filling = FILLING.map(|number| number.read(form));
        let vehicle = VEHICLE.map(|number| number.read(form));
        if let ([Some(kpa), ..], [_, Some(left), ..]) = (filling, vehicle)
            && left >= kpa
        {
            form.fail("left_kpa", Wrong::Rule("cylinder-left-above-fill", Vec::new()));
        }
        Some(Self { fuel: fuel?, filling, vehicle })
    }

    fn set(&self, one: &Vessel) -> Option<CylinderSet> {
        let [pressure_kpa, temperature_c, at_temperature_c] = self.filling;
        let [consumption, left_kpa, parts_mass_kg, axle_reserve_kg] = self.vehicle;
        let stowage = match (one.mass_kg, parts_mass_kg, consumption) {
            (Some(cylinder_mass_kg), Some(parts_mass_kg), Some(consumption_kg_per_100km)) => Some(Stowage {
                cylinder_mass_kg,
                parts_mass_kg,
                consumption_kg_per_100km,
                left_kpa: left_kpa?,
                axle_reserve_kg,
            }),
            _ => None,
        };
        let cylinder = Cylinder {
            composition: self.fuel,
            volume_l: one.volume_l,
            pressure_kpa: pressure_kpa?,
            temperature_c: temperature_c?,
            at_temperature_c,
        };
        Some(CylinderSet { name: one.name.clone(), cylinder, stowage })
    }
}

fn reckon(set: &CylinderSet) -> Result<(Contents, Option<Stowed>), SumError> {
    let contents = cylinder(&set.cylinder)?;
    let stowed = set.stowage.as_ref().map(|stowage| stow(&set.cylinder, &contents, stowage)).transpose()?;
    Ok((contents, stowed))
}

impl Recorded for CylinderSizingForm {
    const KIND: &'static str = "cylinder-sizing";
    const STAGE: Stage = Stage::Sizing;
    const RECKONS: bool = true;

    async fn open(_: &App, _: &JobPage, _: &str) -> Result<Self, Error> {
        Ok(Self)
    }

    fn blank(&self, job: &JobPage) -> Form {
        reckoning::opened(defaults(job))
    }

    fn filled(&self, _: &JobPage, entry: &Entry) -> Form {
        let Evidence::CylinderSizing(one) = &entry.body else { return Form::blank() };
        reckoning::filled(one.read_back().map(|(inputs, _)| inputs.typed).unwrap_or_default())
    }

    fn groups(&self, job: &JobPage, form: &Form) -> Vec<Group> {
        let (w, defaults) = (job.w(), defaults(job));
        let fields = |numbers: &[Number]| -> Vec<Field> {
            numbers.iter().map(|number| number.field(job, form, &defaults)).collect()
        };
        let [cylinders, taken] = CYLINDERS.groups(&w, form);
        vec![
            cylinders,
            taken,
            fuel_mix::group(&job.w(), job.file.job.fuel.into(), form),
            Group::new(w.t("sizing-group-filling"), fields(&FILLING)).noted(w.t("cylinder-note-filling")),
            Group::new(w.t("sizing-group-vehicle"), fields(&VEHICLE)).noted(w.t("sizing-note-vehicle")),
        ]
    }

    fn read(&self, job: &JobPage, form: &mut Form) -> Option<Taken> {
        let w = job.w();
        let common = Common::read(job, form);
        let vessels = CYLINDERS.read(form);
        let taken = CYLINDERS.taken(form, &vessels);
        form.sound()?;
        let (common, taken) = (common?, taken?);
        let sets: Option<Vec<_>> = vessels.into_iter().map(|one| Some((common.set(&one)?, one))).collect();
        let sets: Vec<_> = sets?.into_iter().map(|(set, one)| (one, set)).collect();
        let answers = CYLINDERS.answers(&w, form, &sets, reckon, str::to_owned);
        form.sound()?;
        let sets: Vec<CylinderSet> = sets.into_iter().map(|(_, set)| set).collect();
        let (set, (contents, stowed)) = (sets.get(taken)?, answers.get(taken)?);
        let (typed, origins) = origins::keep(form, names(job), &defaults(job));
        let body = CylinderSizing {
            origins,
            volume_l: set.cylinder.volume_l,
            mass_kg: contents.mass_kg,
            standard_m3: contents.standard_m3,
            added_mass_kg: stowed.map(|stowed| stowed.added_mass_kg),
            is_within_axle_reserve: stowed.and_then(|stowed| stowed.reserve_left_kg).map(|left| left >= 0.0),
            program_version: env!("CARGO_PKG_VERSION").to_owned(),
            inputs: serde_json::to_value(CylinderInputs { typed, sets, taken }).ok()?,
            results: serde_json::to_value(CylinderResults { sets: answers }).ok()?,
        };
        Some(Taken::of(Evidence::CylinderSizing(body)))
    }

    fn facts(job: &JobPage, entry: &Entry) -> Vec<Fact> {
        let Evidence::CylinderSizing(one) = &entry.body else { return Vec::new() };
        Facts::new(job.w(), Self::KIND)
            .number("volume_l", one.volume_l, 1, "L")
            .number("mass_kg", one.mass_kg, 2, "kg")
            .number("standard_m3", one.standard_m3, 2, "m³")
            .opt_number("added_mass_kg", one.added_mass_kg, 0, "kg")
            .done()
    }

    fn reckoned(job: &JobPage, body: &Evidence) -> Option<Reckoned> {
        cylinder_said::reckoned(job, body)
    }
}
