//! Pressure in the container, dew temperature, density of the liquid.

use super::answered::Answered;
use super::number::{self, Number, number};
use super::sum::{BenchSum, answer_of};
use crate::calc::liquid::{
    DENSITY, DENSITY_UNCERTAINTY, Liquid, VAPOUR_PRESSURE, VAPOUR_PRESSURE_UNCERTAINTY, density, density_steps,
    dew_temperature_c, vapour_pressure, vapour_pressure_steps,
};
use crate::calc::{ATMOSPHERE_KPA, Composition, Error};
use crate::unit::Unit;
use crate::web::bench::chart_said;
use crate::web::form::Form;
use crate::web::fuel_mix::{self, Offer};
use crate::web::job::origins;
use crate::web::kit::{Cell, Column, Group, Row, Table};
use crate::words::Words;

/// `/bench/liquid`.
#[derive(Debug)]
pub struct LiquidSum;

/// What is asked.
#[derive(Debug)]
pub struct Asked {
    composition: Composition,
    temperature_c: f64,
    pressure_kpa: f64,
}

const NUMBERS: [Number; 2] = [
    number("temperature_c", Unit::Celsius, -60.0, 90.0).opening("15", "reference"),
    // Common practice: 120 kPa over a manifold near full load.
    number("pressure_kpa", Unit::Kilopascal, 1.0, 4_000.0).usual("220"),
];

/// The curve in steps of 10 K, from deep winter to a hot boot.
const CURVE_C: [f64; 10] = [-20.0, -10.0, 0.0, 10.0, 20.0, 30.0, 40.0, 50.0, 60.0, 70.0];

/// The curve as numbers; a temperature where the sum refuses is left out.
fn curve(w: &Words, composition: &Composition) -> Table {
    let row = |c: &f64| -> Option<Row> {
        let liquid = Liquid { composition: *composition, temperature_c: *c };
        let kpa = vapour_pressure(&liquid).ok()?.pressure_kpa;
        let dense = density(&liquid).ok().map(|found| w.number(found.density_kg_m3, 1));
        Some(vec![
            Cell::new(w.figure(*c, 0, "°C")),
            Cell::new(w.figure(kpa, 0, "kPa")),
            Cell::new(w.figure(kpa - ATMOSPHERE_KPA, 0, "kPa")),
            Cell::new(dense.unwrap_or_else(|| "–".to_owned())),
        ])
    };
    let mut columns = vec![Column::number(w.head("bench-column-temperature"))];
    columns.extend(
        ["bubble", "bubble-gauge", "liquid-density"].map(|name| Column::number(w.head(format!("bench-column-{name}")))),
    );
    Table { w: *w, caption: w.t("bench-liquid-curve"), columns, rows: CURVE_C.iter().filter_map(row).collect() }
}

/// The vapour above the liquid: richer in what boils first.
fn vapour(w: &Words, liquid: &Composition, vapour: &Composition) -> Table {
    let row = |(component, share): (crate::calc::substance::Component, f64)| {
        vec![
            Cell::new(w.t(format!("component-{}", component.key()))),
            Cell::new(w.number(100.0 * share, 1)),
            Cell::new(w.number(100.0 * vapour.share(component), 1)),
        ]
    };
    let mut columns = vec![Column::text(w.t("bench-column-component"))];
    columns.extend(["in-liquid", "in-vapour"].map(|name| Column::number(w.head(format!("bench-column-{name}")))));
    Table { w: *w, caption: w.t("bench-liquid-vapour"), columns, rows: liquid.present().map(row).collect() }
}

impl BenchSum for LiquidSum {
    const KEY: &'static str = "liquid";
    // 60 mol % propane in n-butane at 15 C: 496.44 kPa in `lpg_bubble.csv` of the reference files.
    const EXAMPLE: &'static [(&'static str, &'static str)] = &[
        ("fuel_mix", "typed-mole"),
        ("share_propane", "60"),
        ("share_n_butane", "40"),
        ("temperature_c", "15"),
        ("pressure_kpa", "250"),
    ];
    type Asked = Asked;

    fn openings() -> Vec<origins::Default> {
        number::openings(&NUMBERS)
    }

    fn groups(w: &Words, form: &Form) -> Vec<Group> {
        let [liquid, rail] = &NUMBERS;
        vec![
            fuel_mix::group(w, Offer::Lpg, form),
            Group::new(w.t("bench-group-container"), vec![liquid.field(w, form)]),
            Group::new(w.t("bench-group-rail"), vec![rail.field(w, form)]).noted(w.t("bench-note-rail")),
        ]
    }

    fn read(w: &Words, form: &mut Form) -> Option<Asked> {
        let composition = fuel_mix::read(w, Offer::Lpg, form);
        let [temperature_c, pressure_kpa] = number::read(form, &NUMBERS);
        Some(Asked { composition: composition?, temperature_c: temperature_c?, pressure_kpa: pressure_kpa? })
    }

    fn answer(w: &Words, form: &mut Form, asked: &Asked) -> Option<Answered> {
        let liquid = Liquid { composition: asked.composition, temperature_c: asked.temperature_c };
        let both = vapour_pressure(&liquid).and_then(|bubble| Ok::<_, Error>((bubble, density(&liquid)?)));
        let (bubble, dense) = answer_of(w, form, "temperature_c", both)?;
        let dew = answer_of(w, form, "pressure_kpa", dew_temperature_c(&asked.composition, asked.pressure_kpa))?;
        let kpa = bubble.pressure_kpa;
        let laid_out = vapour_pressure_steps(&liquid, &bubble);
        let mut steps = answer_of(w, form, "temperature_c", laid_out)?;
        steps.extend(density_steps(&liquid, &dense));
        // The points of the line stand in the table of the same page.
        let drawn = chart_said::bubble(w, &asked.composition, asked.temperature_c).map(|(drawn, _)| drawn);
        let spread = |value: f64, decimals: u8, unit: &str| format!("± {}", w.difference(value, decimals, unit));
        Some(
            Answered::new(w)
                .main("bench-liquid-bubble", w.quantity(kpa, 0, "kPa"))
                .main("bench-liquid-gauge", w.quantity(kpa - ATMOSPHERE_KPA, 0, "kPa"))
                .main("bench-liquid-density", w.quantity(dense.density_kg_m3, 1, "kg/m³"))
                .main("bench-liquid-dew", w.quantity(dew, 1, "°C"))
                .cautions(&bubble.cautions)
                .results(vec![
                    ("bench-liquid-bubble-spread", Some(spread(VAPOUR_PRESSURE_UNCERTAINTY * kpa, 0, "kPa"))),
                    (
                        "bench-liquid-density-spread",
                        Some(spread(DENSITY_UNCERTAINTY * dense.density_kg_m3, 1, "kg/m³")),
                    ),
                ])
                .charts(drawn)
                .table(vapour(w, &asked.composition, &bubble.vapour))
                .table(curve(w, &asked.composition))
                .steps(&steps)
                .basis(&VAPOUR_PRESSURE)
                .basis(&DENSITY),
        )
    }

    fn fuel(asked: &Asked) -> Option<&Composition> {
        Some(&asked.composition)
    }
}
