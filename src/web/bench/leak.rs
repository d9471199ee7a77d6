//! A leak test by pressure decay: rate, what it can be wrong by, what that says, and what a better test would need.

use super::answered::Answered;
use super::leak_said;
use super::number::{self, Number, number};
use super::sum::BenchSum;
use crate::calc::leak::{BASIS, Compressibility, DecayTest, check, judge, reference_c, reference_kpa, steps};
use crate::calc::{Composition, Error, gas};
use crate::unit::Unit;
use crate::web::form::Form;
use crate::web::fuel_mix::{self, Offer};
use crate::web::job::origins;
use crate::web::kit::Group;
use crate::web::sum;
use crate::words::Words;

/// `/bench/leak`.
#[derive(Debug)]
pub struct LeakSum;

/// What is asked.
#[derive(Debug)]
pub struct Asked {
    test: DecayTest,
    composition: Option<Composition>,
}

const NUMBERS: [Number; 11] = [
    number("volume_l", Unit::Litre, 0.001, 10_000.0),
    number("volume_uncertainty_percent", Unit::Percent, 0.0, 100.0).usual("5"),
    number("limit_cm3_h", Unit::CubicCentimetrePerHour, 0.01, 1e9),
    number("start_kpa", Unit::Kilopascal, 1.0, 100_000.0),
    number("start_c", Unit::Celsius, -60.0, 150.0),
    number("end_kpa", Unit::Kilopascal, 1.0, 100_000.0),
    number("end_c", Unit::Celsius, -60.0, 150.0),
    number("duration_min", Unit::Minute, 0.01, 525_600.0),
    number("pressure_resolution_kpa", Unit::Kilopascal, 0.0, 10_000.0),
    number("pressure_standard_uncertainty_kpa", Unit::Kilopascal, 0.0, 10_000.0),
    number("temperature_standard_uncertainty_k", Unit::Kelvin, 0.0, 50.0),
];

/// The gas at both readings; ideal where no mix was chosen.
fn gas_of(asked: &Asked) -> Result<Compressibility, Error> {
    check(&asked.test)?;
    match asked.composition {
        None => Ok(Compressibility::IDEAL),
        Some(mix) => Compressibility::of(&asked.test, |kpa, c| gas::compressibility(&mix, kpa, c)),
    }
}

/// Field of a quantity of the sum or of the gas.
fn field_of(quantity: &str) -> String {
    match quantity {
        "volume_relative_standard_uncertainty" => "volume_uncertainty_percent",
        "pressure_kpa" | "compressibility" | "per_kpa" => "start_kpa",
        "temperature_c" | "per_k" => "start_c",
        other => other,
    }
    .to_owned()
}

impl BenchSum for LeakSum {
    const KEY: &'static str = "leak";
    const SCOPE: &'static str = "bench-leak";
    // First row of `leak_decay.csv` of the reference files: 46.6 cm3/h, U 49.2 by Monte Carlo.
    const EXAMPLE: &'static [(&'static str, &'static str)] = &[
        ("volume_l", "2"),
        ("volume_uncertainty_percent", "5"),
        ("limit_cm3_h", "20"),
        ("start_kpa", "401.3"),
        ("start_c", "20.0"),
        ("end_kpa", "400.9"),
        ("end_c", "20.0"),
        ("duration_min", "10"),
        ("pressure_resolution_kpa", "0.1"),
        ("pressure_standard_uncertainty_kpa", "0.05"),
        ("temperature_standard_uncertainty_k", "0.1"),
    ];
    type Asked = Asked;

    fn openings() -> Vec<origins::Default> {
        number::openings(&NUMBERS)
    }

    fn groups(w: &Words, form: &Form) -> Vec<Group> {
        let (section, rest) = NUMBERS.split_at(3);
        let (readings, instruments) = rest.split_at(5);
        let mut gas = fuel_mix::group(w, Offer::Any, form);
        gas.legend = w.t("bench-leak-group-gas");
        gas.note = w.t("bench-leak-note-gas");
        gas.fields = gas.fields.into_iter().map(crate::web::kit::Field::optional).collect();
        vec![
            Group::new(w.t("bench-leak-group-section"), number::fields(w, form, section)),
            Group::new(w.t("bench-leak-group-readings"), number::fields(w, form, readings))
                .noted(w.t("bench-leak-note-readings")),
            Group::new(w.t("bench-leak-group-instruments"), number::fields(w, form, instruments))
                .noted(w.t("bench-leak-note-instruments")),
            gas,
        ]
    }

    fn read(w: &Words, form: &mut Form) -> Option<Asked> {
        let [volume, spread, limit, start, start_c, end, end_c, minutes, step, u_p, u_t] = number::read(form, &NUMBERS);
        let is_real = fuel_mix::names(Offer::Any).iter().any(|name| !form.value(name).trim().is_empty());
        let composition = if is_real { Some(fuel_mix::read(w, Offer::Any, form)?) } else { None };
        let test = DecayTest {
            volume_l: volume?,
            start_kpa: start?,
            end_kpa: end?,
            start_c: start_c?,
            end_c: end_c?,
            duration_min: minutes?,
            limit_cm3_h: limit?,
            pressure_resolution_kpa: step?,
            pressure_standard_uncertainty_kpa: u_p?,
            temperature_standard_uncertainty_k: u_t?,
            volume_relative_standard_uncertainty: spread? / 100.0,
            reference_c: reference_c(),
            reference_kpa: reference_kpa(),
        };
        Some(Asked { test, composition })
    }

    fn answer(w: &Words, form: &mut Form, asked: &Asked) -> Option<Answered> {
        let test = &asked.test;
        let found = gas_of(asked).and_then(|gas| Ok((gas, judge(test, &gas)?)));
        let (gas, result) = match found {
            Ok(found) => found,
            Err(error) => {
                sum::refuse(w, form, &error, "start_c", field_of);
                return None;
            }
        };
        let cm3 = |value: f64| w.quantity(value, leak_said::decimals(result.expanded_uncertainty_cm3_h), "cm³/h");
        let mut answer = Answered::new(w)
            .verdict(leak_said::verdict(w, test, &result))
            .main("says-leak-rate", cm3(result.rate_cm3_h))
            .main("says-leak-expanded", cm3(result.expanded_uncertainty_cm3_h))
            .main("says-leak-time", leak_said::needed_time(w, result.needed_duration_min))
            .main("says-leak-gauge", leak_said::needed_gauge(w, &result));
        for sentence in leak_said::warnings(w, &result) {
            answer = answer.caution(sentence);
        }
        if let Some((drawn, table)) = leak_said::chart(w, test, &gas, &result) {
            answer = answer.chart(drawn).table(table);
        }
        Some(
            answer
                .table(leak_said::budget(w, &result.budget))
                .steps(&steps(test, &gas, &result))
                .note(w.t("says-leak-note"))
                .basis(&BASIS),
        )
    }

    fn fuel(asked: &Asked) -> Option<&Composition> {
        asked.composition.as_ref()
    }
}
