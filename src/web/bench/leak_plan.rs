//! Before a decay test: how long it must be with this gauge and this volume, and which gauge the time at hand asks for.

use super::answered::Answered;
use super::leak_said::minutes;
use super::number::{self, Number, number};
use super::sum::{BenchSum, answer_of};
use crate::calc::leak::plan::{Plan, Planned, needed_gauge_kpa, plan, steps};
use crate::calc::leak::{BASIS, LeakWarning};
use crate::unit::Unit;
use crate::web::form::Form;
use crate::web::job::origins;
use crate::web::kit::{Cell, Column, Group, Mark, Table, Tone, Verdict};
use crate::web::sum::figure;
use crate::words::Words;

/// `/bench/leak-plan`.
#[derive(Debug)]
pub struct LeakPlanSum;

/// What is asked.
#[derive(Debug)]
pub struct Asked {
    planned: Planned,
    at_hand_min: Option<f64>,
}

const NUMBERS: [Number; 8] = [
    number("volume_l", Unit::Litre, 0.001, 10_000.0),
    number("pressure_kpa", Unit::Kilopascal, 1.0, 100_000.0),
    number("temperature_c", Unit::Celsius, -60.0, 150.0).usual("20"),
    number("limit_cm3_h", Unit::CubicCentimetrePerHour, 0.01, 1e9),
    number("pressure_resolution_kpa", Unit::Kilopascal, 0.0, 10_000.0),
    number("pressure_standard_uncertainty_kpa", Unit::Kilopascal, 0.0, 10_000.0),
    number("temperature_standard_uncertainty_k", Unit::Kelvin, 0.0, 50.0),
    number("at_hand_min", Unit::Minute, 0.1, 525_600.0).optional(),
];

/// Beyond a working day nobody waits: other proof is better.
const LONGEST_MIN: f64 = 480.0;
/// Thermometers a shop can have, K (common practice).
const THERMOMETERS_K: [f64; 3] = [0.02, 0.1, 0.3];
/// Volumes beside the one asked for, as multiples.
const MULTIPLES: [f64; 4] = [0.25, 0.5, 1.0, 2.0];

fn verdict(w: &Words, found: &Plan) -> Verdict {
    let (tone, mark, title, sentence) = match found.needed_duration_min {
        Some(needed) if needed <= LONGEST_MIN => {
            let title = w.tv("says-plan-minutes", &[("minutes", minutes(w, needed).into())]);
            (Tone::Met, Mark::Met, title, w.t("says-plan-tight"))
        }
        Some(needed) => {
            let title = w.tv("says-plan-minutes", &[("minutes", minutes(w, needed).into())]);
            (Tone::Copper, Mark::Undecided, title, w.t("says-plan-too-long"))
        }
        None => (Tone::Stop, Mark::Stops, w.t("says-plan-never"), w.t("says-plan-too-long")),
    };
    Verdict { tone, mark, title, sentences: vec![sentence] }
}

/// Minutes by volume and thermometer, all else the same.
fn choices(w: &Words, planned: &Planned) -> Table {
    let row = |times: f64| {
        let volume_l = times * planned.volume_l;
        let mut cells = vec![Cell::new(format!("{}\u{a0}L", figure(w, volume_l)))];
        cells.extend(THERMOMETERS_K.map(|temperature_standard_uncertainty_k| {
            let other = Planned { volume_l, temperature_standard_uncertainty_k, ..*planned };
            let needed = plan(&other).ok().and_then(|found| found.needed_duration_min);
            Cell::new(needed.map_or_else(|| "–".to_owned(), |needed| minutes(w, needed)))
        }));
        cells
    };
    let mut columns = vec![Column::text(w.t("says-plan-volume"))];
    columns.extend(
        THERMOMETERS_K.map(|k| Column::number(w.tv("says-plan-thermometer", &[("u", w.quantity(k, 2, "K").into())]))),
    );
    Table { w: *w, caption: w.t("says-plan-choices"), columns, rows: MULTIPLES.map(row).into() }
}

impl BenchSum for LeakPlanSum {
    const KEY: &'static str = "leak-plan";
    const SCOPE: &'static str = "bench-leak";
    // 2 L at 400 kPa and 20 C, gauge 0.05 with steps of 0.1 kPa, thermometer 0.1 K, limit 20 cm3/h: 24.4 minutes, redone by
    // hand from U = 2 u = limit.
    const EXAMPLE: &'static [(&'static str, &'static str)] = &[
        ("volume_l", "2"),
        ("pressure_kpa", "400"),
        ("temperature_c", "20"),
        ("limit_cm3_h", "20"),
        ("pressure_resolution_kpa", "0.1"),
        ("pressure_standard_uncertainty_kpa", "0.05"),
        ("temperature_standard_uncertainty_k", "0.1"),
        ("at_hand_min", "30"),
    ];
    type Asked = Asked;

    fn openings() -> Vec<origins::Default> {
        number::openings(&NUMBERS)
    }

    fn groups(w: &Words, form: &Form) -> Vec<Group> {
        let (section, rest) = NUMBERS.split_at(4);
        let (instruments, time) = rest.split_at(3);
        vec![
            Group::new(w.t("bench-leak-group-section"), number::fields(w, form, section)),
            Group::new(w.t("bench-leak-group-instruments"), number::fields(w, form, instruments))
                .noted(w.t("bench-leak-note-instruments")),
            Group::new(w.t("bench-leak-group-time"), number::fields(w, form, time)),
        ]
    }

    fn read(_: &Words, form: &mut Form) -> Option<Asked> {
        let [volume, pressure, temperature, limit, step, u_p, u_t, at_hand_min] = number::read(form, &NUMBERS);
        let planned = Planned {
            volume_l: volume?,
            pressure_kpa: pressure?,
            temperature_c: temperature?,
            limit_cm3_h: limit?,
            pressure_resolution_kpa: step?,
            pressure_standard_uncertainty_kpa: u_p?,
            temperature_standard_uncertainty_k: u_t?,
        };
        Some(Asked { planned, at_hand_min })
    }

    fn answer(w: &Words, form: &mut Form, asked: &Asked) -> Option<Answered> {
        let found = answer_of(w, form, "pressure_kpa", plan(&asked.planned).map_err(Into::into))?;
        let mut answer = Answered::new(w)
            .verdict(verdict(w, &found))
            .main("says-plan-loss", w.quantity(found.loss_at_limit_kpa_in_10_min, 3, "kPa"))
            .main("says-plan-kelvin", w.quantity(found.one_kelvin_in_10_min_cm3_h, 0, "cm³/h"));
        if let Some(at_hand_min) = asked.at_hand_min {
            let gauge = needed_gauge_kpa(&asked.planned, at_hand_min).map_err(Into::into);
            let said = answer_of(w, form, "at_hand_min", gauge)?;
            let said = said.map_or_else(|| w.t("says-leak-none"), |kpa| w.quantity(kpa, 3, "kPa"));
            answer = answer.main("says-plan-gauge", said);
        }
        if found.warnings.contains(&LeakWarning::IdealGasAboveItsRange) {
            answer = answer.caution(w.t("says-leak-warn-ideal"));
        }
        let laid_out = steps(&asked.planned, &found).map_err(Into::into);
        let laid_out = answer_of(w, form, "pressure_kpa", laid_out)?;
        Some(answer.table(choices(w, &asked.planned)).steps(&laid_out).note(w.t("says-leak-note")).basis(&BASIS))
    }
}
