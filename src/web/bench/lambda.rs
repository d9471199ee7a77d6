//! Lambda from exhaust gas, on petrol, LPG and CNG, beside the analyser's own.

use super::answered::Answered;
use super::number::{self, Number, number};
use super::sum::BenchSum;
use crate::calc::Error;
use crate::calc::lambda::{
    BASIS, Exhaust, ExhaustFuel, NoLambda, PermissibleErrors, differs_from_analyser, lambda, lambda_reckoned_as,
    lambda_uncertainty, steps, uncertainty_steps,
};
use crate::unit::Unit;
use crate::web::form::{Form, Wrong};
use crate::web::job::origins;
use crate::web::kit::{self, Cell, Choice, Column, Group, Mark, Table, Tone, Verdict};
use crate::web::sum;
use crate::words::Words;

/// `/bench/lambda`.
#[derive(Debug)]
pub struct LambdaSum;

/// What is asked.
#[derive(Debug)]
pub struct Asked {
    exhaust: Exhaust,
    errors: PermissibleErrors,
    analyser_lambda: Option<f64>,
    set_to: Option<ExhaustFuel>,
}

const READ: [Number; 6] = [
    number("co_percent", Unit::Percent, 0.0, 20.0),
    number("co2_percent", Unit::Percent, 0.0, 25.0),
    number("o2_percent", Unit::Percent, 0.0, 25.0),
    number("hc_ppm_hexane", Unit::PartsPerMillion, 0.0, 100_000.0),
    number("nox_ppm", Unit::PartsPerMillion, 0.0, 10_000.0).optional(),
    number("analyser_lambda", Unit::One, 0.3, 10.0).optional(),
];

/// Usual permissible errors of a class 1 analyser (OIML R 99, from memory).
const ERRORS: [Number; 5] = [
    number("co_error_percent", Unit::Percent, 0.0, 5.0).usual("0.06"),
    number("co2_error_percent", Unit::Percent, 0.0, 5.0).usual("0.5"),
    number("o2_error_percent", Unit::Percent, 0.0, 5.0).usual("0.1"),
    number("hc_error_ppm", Unit::PartsPerMillion, 0.0, 10_000.0).usual("12"),
    number("nox_error_ppm", Unit::PartsPerMillion, 0.0, 10_000.0).usual("0"),
];

const FUELS: [(&str, ExhaustFuel); 3] =
    [("petrol", ExhaustFuel::Petrol), ("lpg", ExhaustFuel::Lpg), ("cng", ExhaustFuel::Cng)];

fn fuel_of(form: &mut Form, name: &str) -> Option<ExhaustFuel> {
    let text = form.opt_choice::<String>(name)?;
    let found = FUELS.iter().find(|(key, _)| *key == text).map(|(_, fuel)| *fuel);
    if found.is_none() {
        form.fail(name, Wrong::NotAChoice);
    }
    found
}

fn name(w: &Words, fuel: ExhaustFuel) -> String {
    let key = FUELS.iter().find(|(_, other)| *other == fuel).map_or("petrol", |(key, _)| *key);
    w.t(format!("bench-burns-{key}"))
}

/// The same gas reckoned as the exhaust of each fuel: what an analyser set to it shows.
fn by_fuel(w: &Words, exhaust: &Exhaust) -> Table {
    let row = |(_, fuel): &(&str, ExhaustFuel)| {
        let burns = if *fuel == exhaust.fuel { w.t("says-lambda-burns") } else { String::new() };
        let atoms = fuel.atoms();
        let shown = lambda_reckoned_as(exhaust, *fuel).map_or_else(|_| "–".to_owned(), |found| w.number(found, 4));
        vec![
            Cell::new(name(w, *fuel)).with_second(burns),
            Cell::new(w.number(atoms.h_c, 4)),
            Cell::new(w.number(atoms.o_c, 4)),
            Cell::new(shown),
        ]
    };
    let mut columns = vec![Column::text(w.t("says-lambda-column-fuel"))];
    columns.extend(["h-c", "o-c", "lambda"].map(|name| Column::number(w.head(format!("says-lambda-column-{name}")))));
    Table { w: *w, caption: w.t("says-lambda-by-fuel"), columns, rows: FUELS.iter().map(row).collect() }
}

/// Ours beside the analyser's own.
fn verdict(w: &Words, asked: &Asked, ours: f64) -> Option<Verdict> {
    let its = asked.analyser_lambda?;
    let three = |value: f64| w.number(value, 3);
    let values = [("ours", three(ours).into()), ("its", three(its).into())];
    if !differs_from_analyser(ours, its) {
        let sentences = vec![w.tv("says-lambda-agree", &values)];
        return Some(Verdict { tone: Tone::Met, mark: Mark::Met, title: w.t("says-lambda-agrees"), sentences });
    }
    let mut sentences = vec![w.tv("says-lambda-differ", &values)];
    if let Some(set_to) = asked.set_to.filter(|set_to| *set_to != asked.exhaust.fuel)
        && let Ok(shown) = lambda_reckoned_as(&asked.exhaust, set_to)
    {
        let values = [("set", name(w, set_to).into()), ("shown", three(shown).into())];
        sentences.push(w.tv("says-lambda-set", &values));
    }
    Some(Verdict { tone: Tone::Copper, mark: Mark::Undecided, title: w.t("says-lambda-differs"), sentences })
}

fn refuse(w: &Words, form: &mut Form, refused: NoLambda) {
    match refused {
        NoLambda::Outside(outside) => {
            sum::refuse(w, form, &Error::Outside(outside), "co2_percent", str::to_owned);
        }
        NoLambda::ProbeNotInExhaust { carbon_percent, o2_percent } => {
            let values = vec![
                ("carbon", w.quantity(carbon_percent, 1, "%").into()),
                ("oxygen", w.quantity(o2_percent, 1, "%").into()),
            ];
            // Air in the probe shows in the oxygen first.
            let field = if o2_percent > 15.0 { "o2_percent" } else { "co2_percent" };
            form.fail(field, Wrong::Rule("bench-lambda-probe", values));
        }
    }
}

impl BenchSum for LambdaSum {
    const KEY: &'static str = "lambda";
    const SCOPE: &'static str = "bench-lambda";
    // LPG at lambda 1.0300 in `lambda.csv` of the reference files, built forwards by element balances.
    const EXAMPLE: &'static [(&'static str, &'static str)] = &[
        ("fuel", "lpg"),
        ("co_percent", "0.02704"),
        ("co2_percent", "13.49296"),
        ("o2_percent", "0.6914027"),
        ("hc_ppm_hexane", "11.2723"),
        ("analyser_lambda", "1.035"),
        ("set_to", "petrol"),
    ];
    type Asked = Asked;

    fn openings() -> Vec<origins::Default> {
        number::openings(&ERRORS)
    }

    fn groups(w: &Words, form: &Form) -> Vec<Group> {
        let fuels = FUELS.map(|(key, _)| Choice::new(key, w.t(format!("bench-burns-{key}"))));
        let mut read = vec![kit::pick(form, w, "fuel", &fuels)];
        read.extend(number::fields(w, form, &READ[..5]));
        let analyser = vec![READ[5].field(w, form), kit::choice(form, w, "set_to", &fuels).optional()];
        vec![
            Group::new(w.t("bench-lambda-group-read"), read).noted(w.t("bench-lambda-note-read")),
            Group::new(w.t("bench-lambda-group-analyser"), analyser),
            Group::new(w.t("bench-lambda-group-errors"), number::fields(w, form, &ERRORS))
                .noted(w.t("bench-lambda-note-errors")),
        ]
    }

    fn read(_: &Words, form: &mut Form) -> Option<Asked> {
        let fuel = fuel_of(form, "fuel");
        if fuel.is_none() && form.wrong("fuel").is_none() {
            form.fail("fuel", Wrong::Empty);
        }
        let [co, co2, o2, hc, nox_ppm, analyser_lambda] = number::read(form, &READ);
        let [co_u, co2_u, o2_u, hc_u, nox_u] = number::read(form, &ERRORS);
        let set_to = fuel_of(form, "set_to");
        let errors = PermissibleErrors {
            co_percent: co_u?,
            co2_percent: co2_u?,
            o2_percent: o2_u?,
            hc_ppm_hexane: hc_u?,
            nox_ppm: nox_u?,
        };
        let exhaust =
            Exhaust { fuel: fuel?, co_percent: co?, co2_percent: co2?, o2_percent: o2?, hc_ppm_hexane: hc?, nox_ppm };
        Some(Asked { exhaust, errors, analyser_lambda, set_to })
    }

    fn answer(w: &Words, form: &mut Form, asked: &Asked) -> Option<Answered> {
        let exhaust = &asked.exhaust;
        let found = lambda(exhaust).and_then(|found| {
            let expanded = lambda_uncertainty(exhaust, &asked.errors)?.expanded()?;
            Ok((found, expanded))
        });
        let (found, expanded) = match found {
            Ok(found) => found,
            Err(refused) => {
                refuse(w, form, refused);
                return None;
            }
        };
        let mut worked = steps(exhaust, found);
        worked.extend(uncertainty_steps(exhaust, &asked.errors, expanded));
        let mut answer = Answered::new(w);
        if let Some(verdict) = verdict(w, asked, found) {
            answer = answer.verdict(verdict);
        }
        answer = answer
            .main("says-lambda-lambda", w.number(found, 3))
            .main("says-lambda-expanded", format!("± {}", w.number(expanded, 4)));
        if let Some(its) = asked.analyser_lambda {
            answer = answer.main("says-lambda-analyser", w.number(its, 3));
        }
        if exhaust.fuel == ExhaustFuel::Cng && exhaust.hc_ppm_hexane > 0.0 {
            answer = answer.caution(w.t("says-lambda-methane"));
        }
        Some(answer.table(by_fuel(w, exhaust)).steps(&worked).note(w.t("says-lambda-note")).basis(&BASIS))
    }
}
