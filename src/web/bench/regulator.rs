//! How cold a CNG regulator would blow, and the heat and coolant that keep it from the engine.

use super::answered::Answered;
use super::fuel_rate::{self, FuelRate};
use super::number::{self, Number, number};
use super::sum::{BenchSum, answer_of, refuse_rate};
use crate::calc::Composition;
use crate::calc::vaporiser::{REGULATOR, Regulated, Regulator, regulator, regulator_steps};
use crate::unit::Unit;
use crate::web::form::Form;
use crate::web::fuel_mix::{self, Offer};
use crate::web::job::origins;
use crate::web::kit::{Cell, Column, Group, Row, Table};
use crate::words::Words;

/// `/bench/regulator`.
#[derive(Debug)]
pub struct RegulatorSum;

/// What is asked.
#[derive(Debug)]
pub struct Asked {
    regulator: Regulator,
    rate: FuelRate,
}

const NUMBERS: [Number; 5] = [
    // UN R110: working pressure 20 MPa settled at 15 C (from memory).
    number("inlet_kpa", Unit::Kilopascal, 20.0, 35_000.0).usual("20000"),
    number("inlet_c", Unit::Celsius, -50.0, 100.0).opening("15", "reference"),
    number("outlet_kpa", Unit::Kilopascal, 20.0, 35_000.0).usual("300"),
    number("outlet_c", Unit::Celsius, -60.0, 126.0).usual("40"),
    number("coolant_drop_k", Unit::One, 1.0, 40.0).usual("8").counted_in("K"),
];

/// A cylinder empties: the cold and the heat at pressures below the one asked, kPa.
const EMPTYING_KPA: [f64; 5] = [20_000.0, 15_000.0, 10_000.0, 5_000.0, 2_000.0];

fn emptying(w: &Words, asked: &Regulator) -> Table {
    let row = |kpa: &f64| -> Option<Row> {
        let at: Regulated = regulator(&Regulator { inlet_kpa: *kpa, ..*asked }).ok()?;
        Some(vec![
            Cell::new(w.number(kpa / 1e3, 0)),
            Cell::new(w.figure(at.throttled_c, 0, "°C")),
            Cell::new(w.number(at.heat_kj_kg, 0)),
            Cell::new(w.figure(at.heat_kw, 2, "kW")),
        ])
    };
    let below = EMPTYING_KPA.iter().filter(|kpa| **kpa < asked.inlet_kpa);
    let columns =
        ["inlet", "throttled", "heat-mass", "heat"].map(|name| Column::number(w.head(format!("bench-column-{name}"))));
    Table { w: *w, caption: w.t("bench-emptying"), columns: columns.into(), rows: below.filter_map(row).collect() }
}

impl BenchSum for RegulatorSum {
    const KEY: &'static str = "regulator";
    // Methane from 20 MPa and 15 C to 0.3 MPa: -74 C, 249 kJ/kg to 40 C.
    const EXAMPLE: &'static [(&'static str, &'static str)] = &[
        ("fuel_mix", "cng-g20"),
        ("inlet_kpa", "20 MPa"),
        ("inlet_c", "15"),
        ("outlet_kpa", "0.3 MPa"),
        ("outlet_c", "40"),
        ("rated_power_kw", "75"),
        ("brake_efficiency", "0.30"),
        ("coolant_drop_k", "8"),
    ];
    type Asked = Asked;

    fn openings() -> Vec<origins::Default> {
        [number::openings(&NUMBERS), fuel_rate::openings()].concat()
    }

    fn groups(w: &Words, form: &Form) -> Vec<Group> {
        vec![
            fuel_mix::group(w, Offer::Cng, form),
            fuel_rate::group(w, form),
            Group::new(w.t("bench-group-regulator"), number::fields(w, form, &NUMBERS)),
        ]
    }

    fn read(w: &Words, form: &mut Form) -> Option<Asked> {
        let composition = fuel_mix::read(w, Offer::Cng, form);
        let rate = fuel_rate::read(form);
        let [inlet_kpa, inlet_c, outlet_kpa, outlet_c, coolant_drop_k] = number::read(form, &NUMBERS);
        let (composition, rate) = (composition?, rate?);
        let fuel_rate_g_s = answer_of(w, form, "fuel_mix", rate.g_s(&composition))?;
        let regulator = Regulator {
            composition,
            inlet_kpa: inlet_kpa?,
            inlet_c: inlet_c?,
            outlet_kpa: outlet_kpa?,
            outlet_c: outlet_c?,
            fuel_rate_g_s,
            coolant_drop_k: coolant_drop_k?,
        };
        Some(Asked { regulator, rate })
    }

    fn answer(w: &Words, form: &mut Form, Asked { regulator: asked, rate }: &Asked) -> Option<Answered> {
        let found = regulator(asked).map_err(|error| refuse_rate(w, form, "inlet_c", *rate, &error)).ok()?;
        Some(
            Answered::new(w)
                .main("bench-throttled", w.quantity(found.throttled_c, 0, "°C"))
                .main("bench-heat", w.quantity(found.heat_kw, 2, "kW"))
                .main("bench-coolant", w.quantity(found.coolant_l_min, 1, "L/min"))
                .cautions(&found.cautions)
                .results(vec![
                    ("bench-fuel-rate", Some(w.quantity(asked.fuel_rate_g_s, 2, "g/s"))),
                    ("bench-heat-mass", Some(w.quantity(found.heat_kj_kg, 1, "kJ/kg"))),
                    ("bench-heat-power", Some(w.quantity(found.heat_w_per_kw_fuel, 2, "W/kW"))),
                    ("bench-joule-thomson", Some(w.quantity(found.mean_joule_thomson_k_per_bar, 3, "K/bar"))),
                ])
                .table(emptying(w, asked))
                .steps(&regulator_steps(asked, &found))
                .basis(&REGULATOR),
        )
    }

    fn fuel(asked: &Asked) -> Option<&Composition> {
        Some(&asked.regulator.composition)
    }
}
