//! What running on gas costs and emits against petrol, and when a conversion has paid.

use super::answered::Answered;
use super::number::{self, Number, number};
use super::sum::BenchSum;
use crate::calc::Composition;
use crate::calc::economy::{BASIS, Economy, Factor, FactorSet, Running, SoldBy, Tailpipe, economy, steps};
use crate::calc::petrol::Petrol;
use crate::unit::Unit;
use crate::web::form::{Form, Wrong};
use crate::web::fuel_mix::{self, Offer};
use crate::web::job::origins;
use crate::web::kit::{self, Cell, Choice, Column, Group, Mark, Table, Tone, Verdict};
use crate::web::sum::{self, figure};
use crate::words::Words;

/// `/bench/economy`.
#[derive(Debug)]
pub struct EconomySum;

/// Hundredths of a currency: the Bench knows no shop's currency and keeps two decimals of any.
const HUNDREDTHS: f64 = 100.0;

const NUMBERS: [Number; 7] = [
    number("consumption_l_per_100km", Unit::One, 1.0, 200.0),
    number("petrol_share_percent", Unit::Percent, 0.0, 100.0).usual("5"),
    number("petrol_kg_m3", Unit::One, 700.0, 800.0).usual("745").counted_in("kg/m³"),
    number("petrol_price", Unit::One, 0.0, 1e6),
    number("gas_price", Unit::One, 0.0, 1e6),
    number("conversion_price", Unit::One, 0.0, 1e9),
    number("km_per_year", Unit::Kilometre, 100.0, 1e6),
];

const PETROLS: [(&str, Petrol); 3] = [("e0", Petrol::E0), ("e5", Petrol::E5), ("e10", Petrol::E10)];

fn chosen<T: Copy>(form: &mut Form, name: &str, all: &[(&str, T)]) -> Option<T> {
    let text = form.choice::<String>(name)?;
    let found = all.iter().find(|(key, _)| *key == text).map(|(_, one)| *one);
    if found.is_none() {
        form.fail(name, Wrong::NotAChoice);
    }
    found
}

fn sets() -> [(&'static str, FactorSet); 3] {
    FactorSet::ALL.map(|set| (set.key(), set))
}

/// An amount in whole hundredths, with two decimals.
fn money(w: &Words, hundredths: i64) -> String {
    w.number(hundredths as f64 / HUNDREDTHS, 2)
}

fn verdict(w: &Words, found: &Economy) -> Verdict {
    let saved = w.tv("says-economy-saved", &[("saved", money(w, found.saved_minor_per_100km).into())]);
    let (Some(km), Some(months)) = (found.payback_km, found.payback_months) else {
        let title = w.t("says-economy-never");
        return Verdict { tone: Tone::Copper, mark: Mark::Undecided, title, sentences: vec![saved] };
    };
    // To the nearest hundred kilometres and month: the sum is not better than that.
    let values = [
        ("km", w.quantity((km / 100.0).round() * 100.0, 0, "km").into()),
        ("months", w.number(months.ceil(), 0).into()),
    ];
    let title = w.tv("says-economy-pays", &values);
    Verdict { tone: Tone::Met, mark: Mark::Met, title, sentences: vec![saved] }
}

/// The factors with their documents; both of one set.
fn factors(w: &Words, tailpipe: &Tailpipe, unit: &str) -> Table {
    let row = |key: &str, factor: &Factor, unit: &str| {
        let published = format!("{}\u{a0}{}", figure(w, factor.value), factor.per.unit());
        let source = match (factor.source, factor.year) {
            (Some(source), Some(_)) => source.citation().to_owned(),
            _ => w.t("says-economy-balance"),
        };
        vec![
            Cell::new(w.t(key)).with_second(source),
            Cell::new(published),
            Cell::new(format!("{}\u{a0}kg/{unit}", w.number(factor.kg_per_unit, 3))),
        ]
    };
    let rows = vec![
        row("says-economy-of-petrol", &tailpipe.petrol_factor, "L"),
        row("says-economy-of-gas", &tailpipe.gas_factor, unit),
    ];
    let columns = vec![
        Column::text(w.t("says-economy-column-fuel")),
        Column::number(w.head("says-economy-column-factor")),
        Column::number(w.head("says-economy-column-sold")),
    ];
    Table { w: *w, caption: w.t("says-economy-factors"), columns, rows }
}

impl BenchSum for EconomySum {
    const KEY: &'static str = "economy";
    const SCOPE: &'static str = "bench-economy";
    // 8.0 L/100 km, 1.75 and 0.75 a litre, 5 % on petrol: 14.00 against 7.90 per 100 km, 1 200 pay back in 19 700 km; redone
    // by hand with densities and energies of the reference files.
    const EXAMPLE: &'static [(&'static str, &'static str)] = &[
        ("fuel_mix", "typed-mole"),
        ("share_propane", "60"),
        ("share_n_butane", "40"),
        ("petrol", "e5"),
        ("consumption_l_per_100km", "8.0"),
        ("petrol_share_percent", "5"),
        ("petrol_kg_m3", "745"),
        ("petrol_price", "1.75"),
        ("gas_price", "0.75"),
        ("conversion_price", "1200"),
        ("km_per_year", "20000"),
        ("factors", "carbon-balance"),
    ];
    type Asked = Running;

    fn openings() -> Vec<origins::Default> {
        let mut all = number::openings(&NUMBERS);
        all.push(("petrol".to_owned(), "e5".to_owned(), "practice"));
        all.push(("factors".to_owned(), FactorSet::default().key().to_owned(), "practice"));
        all
    }

    fn groups(w: &Words, form: &Form) -> Vec<Group> {
        let choice = |prefix: &str, keys: [&'static str; 3]| -> Vec<Choice> {
            keys.map(|key| Choice::new(key, w.t(format!("{prefix}-{key}")))).into()
        };
        let (driving, prices) = NUMBERS.split_at(3);
        let mut petrol = vec![kit::choice(form, w, "petrol", &choice("petrol-grade", PETROLS.map(|(key, _)| key)))];
        petrol.extend(number::fields(w, form, driving));
        let dioxide = kit::choice(form, w, "factors", &choice("factor-set", sets().map(|(key, _)| key))).wide();
        vec![
            fuel_mix::group(w, Offer::Any, form),
            Group::new(w.t("bench-economy-group-petrol"), petrol),
            Group::new(w.t("bench-economy-group-prices"), number::fields(w, form, prices))
                .noted(w.t("bench-economy-note-prices")),
            Group::new(w.t("bench-economy-group-dioxide"), vec![dioxide]).noted(w.t("bench-economy-note-dioxide")),
        ]
    }

    fn read(w: &Words, form: &mut Form) -> Option<Running> {
        let gas = fuel_mix::read(w, Offer::Any, form);
        let petrol = chosen(form, "petrol", &PETROLS);
        let [consumption, share, density, petrol_price, gas_price, conversion, km] = number::read(form, &NUMBERS);
        let factors = chosen(form, "factors", &sets());
        #[expect(clippy::cast_possible_truncation, reason = "held to 1e9 by the range of its field")]
        let conversion_minor = (conversion? * HUNDREDTHS).round() as i64;
        Some(Running {
            gas: gas?,
            petrol: petrol?,
            petrol_kg_m3: density?,
            consumption_l_per_100km: consumption?,
            petrol_share: share? / 100.0,
            petrol_price_minor_per_l: petrol_price? * HUNDREDTHS,
            gas_price_minor_per_unit: gas_price? * HUNDREDTHS,
            conversion_minor,
            km_per_year: km?,
            factors: factors?,
        })
    }

    fn answer(w: &Words, form: &mut Form, asked: &Running) -> Option<Answered> {
        let found = match economy(asked) {
            Ok(found) => found,
            Err(error) => {
                sum::refuse(w, form, &error, "fuel_mix", |quantity| match quantity {
                    "composition" => "fuel_mix".to_owned(),
                    other => other.to_owned(),
                });
                return None;
            }
        };
        let unit = found.sold_by.unit();
        let ratio_key = match found.sold_by {
            SoldBy::Litre => "says-economy-litres",
            SoldBy::Kilogram => "says-economy-kilograms",
        };
        let mut answer = Answered::new(w)
            .verdict(verdict(w, &found))
            .main("says-economy-on-petrol", money(w, found.on_petrol_minor_per_100km))
            .main("says-economy-after", money(w, found.after_minor_per_100km))
            .main("says-economy-year", money(w, found.saved_minor_per_year))
            .main(ratio_key, w.quantity(found.ratio, 3, unit));
        let used = Some(w.quantity(found.gas_per_100km, 2, unit));
        let left = Some(w.quantity(found.petrol_left_l_per_100km, 2, "L"));
        let mut rows = vec![
            ("says-economy-used", used),
            ("says-economy-left", left),
            ("says-economy-petrol-energy", Some(w.quantity(found.petrol_mj_per_l, 2, "MJ/L"))),
            ("says-economy-gas-energy", Some(w.quantity(found.gas_mj_per_unit, 2, &format!("MJ/{unit}")))),
        ];
        match &found.tailpipe {
            Some(tailpipe) => {
                let kg = |value: f64| Some(w.quantity(value, 2, "kg"));
                rows.push(("says-economy-dioxide-petrol", kg(tailpipe.on_petrol_kg_per_100km)));
                rows.push(("says-economy-dioxide-after", kg(tailpipe.after_kg_per_100km)));
            }
            None => answer = answer.caution(w.t("says-economy-no-factor")),
        }
        answer = answer.results(rows);
        if let Some(tailpipe) = &found.tailpipe {
            answer = answer.table(factors(w, tailpipe, unit));
        }
        Some(answer.steps(&steps(asked, &found)).note(w.t("says-economy-note")).basis(&BASIS))
    }

    fn fuel(asked: &Running) -> Option<&Composition> {
        Some(&asked.gas)
    }
}
