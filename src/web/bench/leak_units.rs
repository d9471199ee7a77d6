//! One leak rate in other units, and through the same leak the fuel instead of the test gas.

use super::answered::Answered;
use super::number::{self, Number, number};
use super::sum::{BenchSum, answer_of};
use crate::calc::leak::units::{
    BASIS, LeakGas, RateUnit, Regime, at_other_pressure, bubbles_per_second, mass_g_h, steps, through_same_leak,
};
use crate::calc::{ATMOSPHERE_KPA, Outside, Step};
use crate::unit::Unit;
use crate::web::form::{Form, Wrong};
use crate::web::job::origins;
use crate::web::kit::{self, Cell, Choice, Column, Group, Table};
use crate::web::sum::figure;
use crate::words::Words;

/// `/bench/leak-units`.
#[derive(Debug)]
pub struct LeakUnitsSum;

/// What is asked.
#[derive(Debug)]
pub struct Asked {
    rate: f64,
    unit: RateUnit,
    from: LeakGas,
    to: LeakGas,
    regime: Regime,
    /// Test pressure and working pressure, kPa absolute.
    pressures: Option<(f64, f64)>,
}

const NUMBERS: [Number; 3] = [
    number("rate", Unit::One, 0.0, 1e9),
    number("from_kpa", Unit::Kilopascal, 101.5, 100_000.0).optional(),
    number("to_kpa", Unit::Kilopascal, 101.5, 100_000.0).optional(),
];

const REGIMES: [(&str, Regime); 2] = [("viscous", Regime::Viscous), ("molecular", Regime::Molecular)];

fn unit_key(unit: RateUnit) -> &'static str {
    match unit {
        RateUnit::Cm3PerHour => "cm3_h",
        RateUnit::NormalCm3PerHour => "normal_cm3_h",
        RateUnit::Cm3PerMinute => "cm3_min",
        RateUnit::PaM3PerSecond => "pa_m3_s",
        RateUnit::MbarLPerSecond => "mbar_l_s",
    }
}

fn gas_key(gas: LeakGas) -> &'static str {
    match gas {
        LeakGas::Air => "air",
        LeakGas::Nitrogen => "nitrogen",
        LeakGas::Helium => "helium",
        LeakGas::Methane => "methane",
        LeakGas::Ethane => "ethane",
        LeakGas::Propane => "propane",
        LeakGas::Propene => "propene",
        LeakGas::NButane => "n_butane",
        LeakGas::Isobutane => "isobutane",
    }
}

fn choices(w: &Words, prefix: &str, keys: impl IntoIterator<Item = &'static str>) -> Vec<Choice> {
    keys.into_iter().map(|key| Choice::new(key, w.t(format!("{prefix}-{key}")))).collect()
}

/// The one of a list whose key was chosen.
fn chosen<T: Copy>(form: &mut Form, name: &str, all: &[T], key: impl Fn(T) -> &'static str) -> Option<T> {
    let text = form.choice::<String>(name)?;
    let found = all.iter().copied().find(|one| key(*one) == text);
    if found.is_none() {
        form.fail(name, Wrong::NotAChoice);
    }
    found
}

/// What a rate is, in every unit, and what it means.
struct Found {
    cm3_h: f64,
    other_gas: f64,
    at_pressure: Option<f64>,
    mass_g_h: f64,
    bubbles: f64,
    units: Vec<(RateUnit, f64, f64)>,
    steps: Vec<Step>,
}

fn find(asked: &Asked) -> Result<Found, Outside> {
    let cm3_h = asked.unit.to_cm3_h(asked.rate)?;
    let other_gas = through_same_leak(cm3_h, asked.from, asked.to, asked.regime)?;
    let at = asked.pressures.map(|(from, to)| at_other_pressure(other_gas, from, to, ATMOSPHERE_KPA)).transpose()?;
    let units: Result<Vec<_>, Outside> = RateUnit::ALL
        .into_iter()
        .map(|unit| Ok((unit, unit.from_cm3_h(cm3_h)?, unit.from_cm3_h(at.unwrap_or(other_gas))?)))
        .collect();
    Ok(Found {
        cm3_h,
        other_gas,
        at_pressure: at,
        mass_g_h: mass_g_h(at.unwrap_or(other_gas), asked.to)?,
        bubbles: bubbles_per_second(cm3_h)?,
        units: units?,
        steps: steps(asked.rate, asked.unit, asked.from, asked.to, asked.regime)?,
    })
}

fn table(w: &Words, asked: &Asked, found: &Found) -> Table {
    let row = |(unit, own, other): &(RateUnit, f64, f64)| {
        let name = w.t(format!("rate-unit-{}", unit_key(*unit)));
        vec![Cell::new(name), Cell::new(figure(w, *own)), Cell::new(figure(w, *other))]
    };
    let gas = |gas: LeakGas| Column::number(w.head(format!("leak-gas-{}", gas_key(gas))));
    let columns = vec![Column::text(w.t("says-units-unit")), gas(asked.from), gas(asked.to)];
    Table { w: *w, caption: w.t("says-units-table"), columns, rows: found.units.iter().map(row).collect() }
}

impl BenchSum for LeakUnitsSum {
    const KEY: &'static str = "leak-units";
    const SCOPE: &'static str = "bench-units";
    // 20 cm3/h of air are 5.63e-4 Pa m3/s and 5.6 bubbles a second; propane through the same laminar leak 2.272 times as
    // much by `leak_gases.csv` of the reference files.
    const EXAMPLE: &'static [(&'static str, &'static str)] =
        &[("rate", "20"), ("rate_unit", "cm3_h"), ("from_gas", "air"), ("to_gas", "propane"), ("regime", "viscous")];
    type Asked = Asked;

    fn openings() -> Vec<origins::Default> {
        let all = [("rate_unit", "cm3_h"), ("from_gas", "nitrogen"), ("regime", "viscous")];
        all.map(|(name, text)| (name.to_owned(), text.to_owned(), "practice")).into()
    }

    fn groups(w: &Words, form: &Form) -> Vec<Group> {
        let [rate, from, to] = &NUMBERS;
        let gases = || choices(w, "leak-gas", LeakGas::ALL.map(gas_key));
        vec![
            Group::new(
                w.t("bench-units-group-rate"),
                vec![
                    rate.field(w, form),
                    kit::choice(form, w, "rate_unit", &choices(w, "rate-unit", RateUnit::ALL.map(unit_key))),
                ],
            ),
            Group::new(
                w.t("bench-units-group-gases"),
                vec![
                    kit::choice(form, w, "from_gas", &gases()),
                    kit::choice(form, w, "to_gas", &gases()),
                    kit::radios(form, w, "regime", &choices(w, "leak-regime", REGIMES.map(|(key, _)| key))),
                ],
            ),
            Group::new(w.t("bench-units-group-pressure"), vec![from.field(w, form), to.field(w, form)])
                .noted(w.t("bench-units-note-pressure")),
        ]
    }

    fn read(_: &Words, form: &mut Form) -> Option<Asked> {
        let [rate, from_kpa, to_kpa] = number::read(form, &NUMBERS);
        let unit = chosen(form, "rate_unit", &RateUnit::ALL, unit_key);
        let from = chosen(form, "from_gas", &LeakGas::ALL, gas_key);
        let to = chosen(form, "to_gas", &LeakGas::ALL, gas_key);
        let regime = chosen(form, "regime", &REGIMES, |(key, _)| key);
        match (from_kpa, to_kpa) {
            (Some(_), None) if form.wrong("to_kpa").is_none() => form.fail("to_kpa", Wrong::Empty),
            (None, Some(_)) if form.wrong("from_kpa").is_none() => form.fail("from_kpa", Wrong::Empty),
            _ => {}
        }
        let (_, regime) = regime?;
        Some(Asked { rate: rate?, unit: unit?, from: from?, to: to?, regime, pressures: from_kpa.zip(to_kpa) })
    }

    fn answer(w: &Words, form: &mut Form, asked: &Asked) -> Option<Answered> {
        let found = find(asked).map_err(|outside| Outside {
            quantity: if outside.quantity == "rate_cm3_h" { "rate" } else { outside.quantity },
            ..outside
        });
        let found = answer_of(w, form, "rate", found.map_err(Into::into))?;
        let cm3 = |value: f64| format!("{}\u{a0}cm³/h", figure(w, value));
        let mut answer =
            Answered::new(w).main("says-units-own", cm3(found.cm3_h)).main("says-units-other", cm3(found.other_gas));
        if let Some(at_pressure) = found.at_pressure {
            answer = answer.main("says-units-pressure", cm3(at_pressure));
        }
        answer = answer
            .main("says-units-mass", format!("{}\u{a0}g/h", figure(w, found.mass_g_h)))
            .main("says-units-bubbles", format!("{}/s", figure(w, found.bubbles)));
        if asked.regime == Regime::Molecular {
            answer = answer.caution(w.t("says-units-molecular"));
        }
        Some(answer.table(table(w, asked, &found)).steps(&found.steps).note(w.t("says-units-note")).basis(&BASIS))
    }
}
