//! How far a fast fill of a CNG cylinder falls short, at most.

use super::answered::Answered;
use super::number::{self, Number, number};
use super::sum::{BenchSum, answer_of};
use crate::calc::Composition;
use crate::calc::cylinder::{FAST_FILL, FastFill, FastFilled, fast_fill, fast_fill_steps};
use crate::unit::Unit;
use crate::web::form::{Form, Wrong};
use crate::web::fuel_mix::{self, Offer};
use crate::web::job::origins;
use crate::web::kit::{Cell, Column, Group, Row, Table};
use crate::words::Words;

/// `/bench/fast-fill`.
#[derive(Debug)]
pub struct FastFillSum;

const NUMBERS: [Number; 5] = [
    number("start_kpa", Unit::Kilopascal, 1.0, 35_000.0),
    number("start_c", Unit::Celsius, -40.0, 85.0).usual("15"),
    number("source_kpa", Unit::Kilopascal, 100.0, 35_000.0).usual("25000"),
    number("source_c", Unit::Celsius, -40.0, 85.0).usual("15"),
    number("end_kpa", Unit::Kilopascal, 100.0, 35_000.0).usual("20000"),
];

/// Other pressures to stop at, kPa.
const STOPS_KPA: [f64; 5] = [18_000.0, 20_000.0, 22_000.0, 24_000.0, 26_000.0];

fn stops(w: &Words, asked: &FastFill) -> Table {
    let row = |kpa: &f64| -> Option<Row> {
        let FastFilled { end_temperature_c, settled_15c_kpa, filling_degree, .. } =
            fast_fill(&FastFill { end_kpa: *kpa, ..*asked }).ok()?;
        Some(vec![
            Cell::new(w.figure(*kpa, 0, "kPa")),
            Cell::new(w.figure(end_temperature_c, 1, "°C")),
            Cell::new(w.figure(settled_15c_kpa, 0, "kPa")),
            Cell::new(w.number(100.0 * filling_degree, 1)),
        ])
    };
    let columns =
        ["stop", "end", "settled", "degree"].map(|name| Column::number(w.head(format!("bench-store-column-{name}"))));
    let rows = STOPS_KPA.iter().filter(|kpa| **kpa <= asked.source_kpa).filter_map(row).collect();
    Table { w: *w, caption: w.t("says-fill-stops"), columns: columns.into(), rows }
}

impl BenchSum for FastFillSum {
    const KEY: &'static str = "fast-fill";
    const SCOPE: &'static str = "bench-fill";
    // Methane from 2 MPa, all at 15 C, 25 MPa source, stopped at 20 MPa: 53.221 C and 15 733 kPa in `cng_fast_fill.csv`.
    const EXAMPLE: &'static [(&'static str, &'static str)] = &[
        ("fuel_mix", "cng-g20"),
        ("start_kpa", "2000"),
        ("start_c", "15"),
        ("source_kpa", "25000"),
        ("source_c", "15"),
        ("end_kpa", "20000"),
    ];
    type Asked = FastFill;

    fn openings() -> Vec<origins::Default> {
        number::openings(&NUMBERS)
    }

    fn groups(w: &Words, form: &Form) -> Vec<Group> {
        vec![
            fuel_mix::group(w, Offer::Cng, form),
            Group::new(w.t("bench-store-group-filling"), number::fields(w, form, &NUMBERS))
                .noted(w.t("bench-store-note-absolute")),
        ]
    }

    fn read(w: &Words, form: &mut Form) -> Option<FastFill> {
        let composition = fuel_mix::read(w, Offer::Cng, form);
        let [start, start_c, source, source_c, end] = number::read(form, &NUMBERS);
        if let (Some(source), Some(end)) = (source, end)
            && end > source
        {
            form.fail("end_kpa", Wrong::Rule("bench-store-end-above", Vec::new()));
        }
        if let (Some(start), Some(end)) = (start, end)
            && start > end
        {
            form.fail("start_kpa", Wrong::Rule("bench-store-start-above", Vec::new()));
        }
        Some(FastFill {
            composition: composition?,
            start_kpa: start?,
            start_c: start_c?,
            source_kpa: source?,
            source_c: source_c?,
            end_kpa: end?,
        })
    }

    fn answer(w: &Words, form: &mut Form, asked: &FastFill) -> Option<Answered> {
        let found = answer_of(w, form, "start_c", fast_fill(asked))?;
        let laid_out = answer_of(w, form, "start_c", fast_fill_steps(asked, &found))?;
        let density = Some(w.quantity(found.end_density_kg_m3, 2, "kg/m³"));
        Some(
            Answered::new(w)
                .main("says-fill-end", w.quantity(found.end_temperature_c, 1, "°C"))
                .main("says-fill-settled", w.quantity(found.settled_15c_kpa, 0, "kPa"))
                .main("says-fill-degree", w.quantity(100.0 * found.filling_degree, 1, "%"))
                .caution(w.t("says-fill-bound"))
                .results(vec![("says-fill-density", density)])
                .table(stops(w, asked))
                .steps(&laid_out)
                .basis(&FAST_FILL),
        )
    }

    fn fuel(asked: &FastFill) -> Option<&Composition> {
        Some(&asked.composition)
    }
}
