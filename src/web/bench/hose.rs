//! What a hose or a liquid line costs in pressure, and how fast the gas runs in it.

use super::answered::Answered;
use super::fuel_rate::{self, FuelRate};
use super::number::{self, Number, number};
use super::sum::{BenchSum, answer_of, refuse_rate};
use crate::calc::Composition;
use crate::calc::hose::{BASIS, Carries, Drop, Hose, hose, steps};
use crate::unit::Unit;
use crate::web::form::{Form, Wrong};
use crate::web::fuel_mix::{self, Offer};
use crate::web::job::origins;
use crate::web::kit::{self, Cell, Column, Group, Mark, Row, Table, Tone, Verdict};
use crate::words::Words;

/// `/bench/hose`.
#[derive(Debug)]
pub struct HoseSum;

/// What is asked.
#[derive(Debug)]
pub struct Asked {
    hose: Hose,
    rate: FuelRate,
}

const NUMBERS: [Number; 5] = [
    number("pressure_kpa", Unit::Kilopascal, 20.0, 35_000.0).optional(),
    number("temperature_c", Unit::Celsius, -60.0, 126.0),
    number("bore_mm", Unit::Millimetre, 1.0, 100.0),
    number("length_m", Unit::Metre, 0.01, 50.0),
    number("fitting_velocity_heads", Unit::One, 0.0, 50.0).usual("1.5"),
];
/// Bores beside the one asked, mm.
const BORES_MM: [f64; 8] = [4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 14.0, 16.0];

/// Common practice for the common gas hose: mean drop below 2 kPa, velocity below 30 to 40 m/s.
const DROP_KPA: f64 = 2.0;
const VELOCITY_M_S: (f64, f64) = (30.0, 40.0);

fn is_calm(found: &Drop) -> bool {
    found.drop_kpa < DROP_KPA && found.velocity_m_s < VELOCITY_M_S.0
}

fn is_near(found: &Drop) -> bool {
    found.drop_kpa < DROP_KPA && found.velocity_m_s < VELOCITY_M_S.1
}

fn verdict(w: &Words, found: &Drop) -> Verdict {
    let (tone, mark, code) = match () {
        () if is_calm(found) => (Tone::Met, Mark::Met, "calm"),
        () if is_near(found) => (Tone::Copper, Mark::Undecided, "near"),
        () => (Tone::Copper, Mark::Undecided, "beyond"),
    };
    let values = [
        ("drop", w.quantity(found.drop_kpa, 2, "kPa").into()),
        ("velocity", w.quantity(found.velocity_m_s, 1, "m/s").into()),
    ];
    let title = w.t(format!("bench-hose-{code}"));
    let sentences = vec![w.tv("bench-hose-said", &values), w.t("bench-hose-practice")];
    Verdict { tone, mark, title, sentences }
}

fn bores(w: &Words, asked: &Hose) -> Table {
    let row = |bore_mm: &f64| -> Option<Row> {
        let found = hose(&Hose { bore_mm: *bore_mm, ..*asked }).ok()?;
        Some(vec![
            Cell::new(w.figure(*bore_mm, 0, "mm")),
            Cell::new(w.figure(found.drop_kpa, 2, "kPa")),
            Cell::new(w.number(found.velocity_m_s, 1)),
        ])
    };
    let columns =
        ["bore", "drop", "velocity"].map(|name| Column::number(w.head(format!("bench-column-{name}")))).into();
    Table { w: *w, caption: w.t("bench-hose-bores"), columns, rows: BORES_MM.iter().filter_map(row).collect() }
}

impl BenchSum for HoseSum {
    const KEY: &'static str = "hose";
    // Propane gas, 220 kPa, 50 C, 5 g/s through 0.6 m of 10 mm: 17.1 m/s and 0.66 kPa straight (`line_drop.csv` of the
    // reference files).
    const EXAMPLE: &'static [(&'static str, &'static str)] = &[
        ("fuel_mix", "lpg-propane"),
        ("carries", "gas"),
        ("pressure_kpa", "220"),
        ("temperature_c", "50"),
        ("bore_mm", "10"),
        ("length_m", "60 cm"),
        ("fitting_velocity_heads", "0"),
        ("fuel_rate_g_s", "5"),
    ];
    type Asked = Asked;

    fn openings() -> Vec<origins::Default> {
        let carries = ("carries".to_owned(), "gas".to_owned(), "practice");
        [number::openings(&NUMBERS), fuel_rate::openings(), vec![carries]].concat()
    }

    fn groups(w: &Words, form: &Form) -> Vec<Group> {
        let carries = kit::pick(form, w, "carries", &kit::choices(w, "carries", ["gas", "liquid"]));
        let mut line = vec![carries];
        line.extend(number::fields(w, form, &NUMBERS));
        vec![
            fuel_mix::group(w, Offer::Any, form),
            fuel_rate::group(w, form),
            Group::new(w.t("bench-group-line"), line).noted(w.t("bench-note-line")),
        ]
    }

    fn read(w: &Words, form: &mut Form) -> Option<Asked> {
        let composition = fuel_mix::read(w, Offer::Any, form);
        let rate = fuel_rate::read(form);
        let carries = match form.value("carries") {
            "gas" => Some(Carries::Gas),
            "liquid" => Some(Carries::Liquid),
            _ => {
                form.fail("carries", Wrong::NotAChoice);
                None
            }
        };
        let [pressure, temperature_c, bore_mm, length_m, fitting_velocity_heads] = number::read(form, &NUMBERS);
        // A liquid is taken as saturated: its pressure follows from the temperature.
        if carries == Some(Carries::Gas) && pressure.is_none() {
            form.fail("pressure_kpa", Wrong::Empty);
        }
        let (composition, rate) = (composition?, rate?);
        let flow_g_s = answer_of(w, form, "fuel_mix", rate.g_s(&composition))?;
        let hose = Hose {
            composition,
            carries: carries?,
            pressure_kpa: pressure.unwrap_or(0.0),
            temperature_c: temperature_c?,
            bore_mm: bore_mm?,
            length_m: length_m?,
            flow_g_s,
            fitting_velocity_heads: fitting_velocity_heads?,
        };
        Some(Asked { hose, rate })
    }

    fn answer(w: &Words, form: &mut Form, Asked { hose: asked, rate }: &Asked) -> Option<Answered> {
        let found = hose(asked).map_err(|error| refuse_rate(w, form, "temperature_c", *rate, &error)).ok()?;
        let answered = Answered::new(w);
        let answered = match asked.carries {
            Carries::Gas => answered.verdict(verdict(w, &found)),
            Carries::Liquid => answered,
        };
        Some(
            answered
                .main("bench-hose-drop", w.quantity(found.drop_kpa, 2, "kPa"))
                .main("bench-hose-velocity", w.quantity(found.velocity_m_s, 1, "m/s"))
                .results(vec![
                    ("bench-fuel-rate", Some(w.quantity(asked.flow_g_s, 2, "g/s"))),
                    ("bench-hose-density", Some(w.quantity(found.density_kg_m3, 3, "kg/m³"))),
                    ("bench-hose-viscosity", Some(w.quantity(found.viscosity_upa_s, 2, "µPa s"))),
                    ("bench-hose-reynolds", Some(w.number(found.reynolds, 0))),
                    ("bench-hose-friction", Some(w.number(found.friction_factor, 4))),
                ])
                .table(bores(w, asked))
                .steps(&steps(asked, &found))
                .basis(&BASIS),
        )
    }

    fn fuel(asked: &Asked) -> Option<&Composition> {
        Some(&asked.hose.composition)
    }
}
