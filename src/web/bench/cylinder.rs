//! What a CNG cylinder holds, what its gauge shows at another temperature, and how far it goes.

use super::answered::Answered;
use super::number::{self, Number, number};
use super::sum::{BenchSum, answer_of};
use crate::calc::cylinder::{BASIS, Contents, Cylinder, cylinder, range_km, range_step, steps};
use crate::calc::{Composition, Error};
use crate::unit::Unit;
use crate::web::form::{Form, Wrong};
use crate::web::fuel_mix::{self, Offer};
use crate::web::job::origins;
use crate::web::kit::{Cell, Column, Group, Row, Table};
use crate::words::Words;

/// `/bench/cylinder`.
#[derive(Debug)]
pub struct CylinderSum;

/// What is asked.
#[derive(Debug)]
pub struct Asked {
    cylinder: Cylinder,
    left_kpa: f64,
    consumption_kg_per_100km: Option<f64>,
}

const NUMBERS: [Number; 6] = [
    number("volume_l", Unit::Litre, 0.5, 3_000.0),
    number("pressure_kpa", Unit::Kilopascal, 100.0, 35_000.0),
    number("temperature_c", Unit::Celsius, -50.0, 100.0).usual("15"),
    number("at_temperature_c", Unit::Celsius, -60.0, 120.0).optional(),
    number("consumption_kg_per_100km", Unit::One, 0.5, 150.0).optional(),
    number("left_kpa", Unit::Kilopascal, 100.0, 35_000.0).usual("1000"),
];

/// What the gauge shows on a cold and on a hot day, the content the same, C.
const DAYS_C: [f64; 7] = [-20.0, -10.0, 0.0, 15.0, 30.0, 45.0, 65.0];

fn days(w: &Words, asked: &Cylinder) -> Table {
    let row = |c: &f64| -> Option<Row> {
        let kpa = cylinder(&Cylinder { at_temperature_c: Some(*c), ..*asked }).ok()?.settled_pressure_kpa?;
        Some(vec![
            Cell::new(w.figure(*c, 0, "°C")),
            Cell::new(w.figure(kpa, 0, "kPa")),
            Cell::new(w.number(kpa / 100.0, 1)),
        ])
    };
    let columns =
        ["temperature", "kpa", "bar"].map(|name| Column::number(w.head(format!("bench-store-column-{name}"))));
    let rows = DAYS_C.iter().filter_map(row).collect();
    Table { w: *w, caption: w.t("says-cylinder-days"), columns: columns.into(), rows }
}

/// Mass that can be driven on: all above the pressure at which the regulator no longer delivers.
fn ranged(asked: &Asked, contents: &Contents) -> Result<Option<(f64, f64, f64)>, Error> {
    let Some(consumption) = asked.consumption_kg_per_100km else { return Ok(None) };
    let left = cylinder(&Cylinder { pressure_kpa: asked.left_kpa, at_temperature_c: None, ..asked.cylinder })?.mass_kg;
    // A cylinder below that pressure goes nowhere.
    let left = left.min(contents.mass_kg);
    Ok(Some((left, consumption, range_km(contents.mass_kg, left, consumption)?)))
}

impl BenchSum for CylinderSum {
    const KEY: &'static str = "cylinder";
    const SCOPE: &'static str = "bench-cylinder";
    // Methane, 80 L, 20 MPa, 15 C: 13.42 kg, 19.74 m3, 16.03 MPa at -10 C in `cng_cylinder.csv` of the reference files.
    const EXAMPLE: &'static [(&'static str, &'static str)] = &[
        ("fuel_mix", "cng-g20"),
        ("volume_l", "80"),
        ("pressure_kpa", "20 MPa"),
        ("temperature_c", "15"),
        ("at_temperature_c", "-10"),
        ("consumption_kg_per_100km", "4.5"),
        ("left_kpa", "1000"),
    ];
    type Asked = Asked;

    fn openings() -> Vec<origins::Default> {
        number::openings(&NUMBERS)
    }

    fn groups(w: &Words, form: &Form) -> Vec<Group> {
        let (state, drive) = NUMBERS.split_at(4);
        vec![
            fuel_mix::group(w, Offer::Cng, form),
            Group::new(w.t("bench-store-group-cylinder"), number::fields(w, form, state))
                .noted(w.t("bench-store-note-absolute")),
            Group::new(w.t("bench-store-group-drive"), number::fields(w, form, drive)),
        ]
    }

    fn read(w: &Words, form: &mut Form) -> Option<Asked> {
        let composition = fuel_mix::read(w, Offer::Cng, form);
        let [volume, pressure, temperature, at_temperature_c, consumption_kg_per_100km, left] =
            number::read(form, &NUMBERS);
        let (volume_l, pressure_kpa, temperature_c) = (volume?, pressure?, temperature?);
        let cylinder = Cylinder { composition: composition?, volume_l, pressure_kpa, temperature_c, at_temperature_c };
        Some(Asked { cylinder, left_kpa: left?, consumption_kg_per_100km })
    }

    fn answer(w: &Words, form: &mut Form, asked: &Asked) -> Option<Answered> {
        let contents = answer_of(w, form, "pressure_kpa", cylinder(&asked.cylinder))?;
        let range = answer_of(w, form, "left_kpa", ranged(asked, &contents))?;
        if range.is_some() && asked.left_kpa >= asked.cylinder.pressure_kpa {
            form.fail("left_kpa", Wrong::Rule("bench-store-left-above", Vec::new()));
            return None;
        }
        let q = |value: f64, decimals: u8, unit: &str| Some(w.quantity(value, decimals, unit));
        let mut answer = Answered::new(w)
            .main("says-cylinder-mass", w.quantity(contents.mass_kg, 2, "kg"))
            .main("says-cylinder-volume", w.quantity(contents.standard_m3, 2, "m³"))
            .main("says-cylinder-energy", w.quantity(contents.energy_mj, 0, "MJ"));
        if let Some(kpa) = contents.settled_pressure_kpa {
            answer = answer.main("says-cylinder-settled", w.quantity(kpa, 0, "kPa"));
        }
        let mut worked = steps(&asked.cylinder, &contents);
        if let Some((left, consumption, km)) = range {
            answer = answer.main("says-cylinder-range", w.quantity(km, 0, "km"));
            worked.push(range_step(contents.mass_kg, left, consumption, km));
        }
        Some(
            answer
                .cautions(&contents.cautions)
                .results(vec![
                    ("says-cylinder-settled-15", q(contents.settled_15c_kpa, 0, "kPa")),
                    ("says-cylinder-density", q(1e3 * contents.mass_kg / asked.cylinder.volume_l, 2, "kg/m³")),
                    ("says-cylinder-left", range.and_then(|(left, ..)| q(left, 2, "kg"))),
                ])
                .table(days(w, &asked.cylinder))
                .steps(&worked)
                .note(w.t("says-cylinder-note"))
                .basis(&BASIS),
        )
    }

    fn fuel(asked: &Asked) -> Option<&Composition> {
        Some(&asked.cylinder.composition)
    }
}
