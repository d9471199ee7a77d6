//! Which nozzle: from rated power, or from petrol injection data; up to three sets side by side.

use super::answered::Answered;
use super::nozzle_said;
use super::sum::BenchSum;
use crate::calc::Composition;
use crate::calc::nozzle::engine::{DEAD_TIME_MS, IDLE_MANIFOLD_KPA, LEAST_PULSE_MS, MAX_DUTY};
use crate::calc::nozzle::flow::INJECTOR_DISCHARGE;
use crate::calc::nozzle::{injected, sizing};
use crate::calc::{ATMOSPHERE_KPA, Basis};
use crate::unit::Unit;
use crate::web::form::{Form, Wrong};
use crate::web::fuel_mix::{self, Offer};
use crate::web::job::origins;
use crate::web::kit::{self, Group};
use crate::web::nozzle::engine::{Engine, Groups, Start};
use crate::web::nozzle::sets::{self, Set};
use crate::words::Words;

/// `/bench/nozzle`.
#[derive(Debug)]
pub struct NozzleSum;

/// `/bench/nozzle-from-petrol`.
#[derive(Debug)]
pub struct NozzleFromPetrolSum;

/// What is asked.
#[derive(Debug)]
pub struct Asked {
    fuel: Composition,
    engine: Engine,
    sets: Vec<Set>,
    /// Which set is shown in full, from 0.
    shown: usize,
    /// A bore at hand, mm, in place of the one that the sum takes.
    chosen_mm: Option<f64>,
}

/// Texts that are usual. Gas temperature and supply are those of LPG; the group's note names those of CNG.
fn openings(start: Start) -> Vec<origins::Default> {
    let mut all = vec![
        ("manifold_kpa", format!("{:.0}", ATMOSPHERE_KPA - 4.0)),
        ("gas_temperature_c", "50".to_owned()),
        ("max_duty", format!("{MAX_DUTY:.2}")),
        ("regulator_follows", "manifold".to_owned()),
        ("idle_manifold_kpa", format!("{IDLE_MANIFOLD_KPA:.0}")),
        ("sets[0][supply_over_manifold_kpa]", "120".to_owned()),
        ("sets[0][dead_time_ms]", format!("{DEAD_TIME_MS:.1}")),
        ("sets[0][min_pulse_ms]", format!("{LEAST_PULSE_MS:.1}")),
        ("sets[0][discharge_coefficient]", format!("{INJECTOR_DISCHARGE:.2}")),
        ("shown", "1".to_owned()),
    ];
    all.extend(match start {
        Start::Power => vec![("brake_efficiency", "0.28".to_owned()), ("idle_rpm", "800".to_owned())],
        Start::Petrol => ["petrol", "petrol_lambda", "gas_lambda", "displaced"]
            .into_iter()
            .zip(["e5", "0.88", "0.88", "yes"].map(str::to_owned))
            .collect(),
    });
    all.into_iter().map(|(name, text)| (name.to_owned(), text, "practice")).collect()
}

fn groups(w: &Words, form: &Form, start: Start) -> Vec<Group> {
    let openings = openings(start);
    let number = |name: &str| origins::hinted(w, &openings, kit::number(form, w, name), name);
    let Groups { mut engine, power, petrol, mut idle, gas } = Groups::new(w, form, &number);
    let by_start = match start {
        Start::Power => power,
        Start::Petrol => {
            // Power, and what belongs to it at idle, is not asked for: the petrol pulses stand for it.
            engine.fields.retain(|field| field.name() != "rated_power_kw");
            idle.fields.retain(|field| field.name() == "idle_manifold_kpa");
            idle.note = String::new();
            petrol.noted(w.t("bench-note-petrol"))
        }
    };
    let by_start = if start == Start::Power { by_start.noted(w.t("bench-note-power")) } else { by_start };
    let shown = vec![
        kit::pick(form, w, "shown", &kit::choices(w, "set", ["1", "2", "3"])),
        kit::number(form, w, "chosen_mm").optional(),
    ];
    vec![
        fuel_mix::group(w, Offer::Any, form),
        engine.noted(w.t("bench-note-engine")),
        by_start,
        idle,
        gas.noted(w.t("bench-note-gas")),
        sets::group(w, form),
        Group::new(w.t("bench-group-shown"), shown),
    ]
}

fn read(w: &Words, form: &mut Form, start: Start) -> Option<Asked> {
    let fuel = fuel_mix::read(w, Offer::Any, form);
    let engine = Engine::read(form, fuel, start);
    let sets = sets::read(form);
    let shown = form.integer("shown", 1..=3).and_then(|n| usize::try_from(n - 1).ok());
    let chosen_mm = form.opt_number("chosen_mm", Unit::Millimetre, 0.3..=10.0);
    if shown.is_some_and(|shown| shown >= sets.len()) && form.sound().is_some() {
        form.fail("shown", Wrong::Rule("nozzle-no-such-set", Vec::new()));
    }
    Some(Asked { fuel: fuel?, engine: engine?, sets, shown: shown?, chosen_mm })
}

fn answer(w: &Words, form: &mut Form, asked: &Asked, basis: &Basis) -> Option<Answered> {
    let (sets, sheets) = sets::sheets(w, form, &asked.engine, asked.sets.clone())?;
    let sheet = sheets.get(asked.shown)?;
    let used = sheet.found.nozzle().candidate(asked.chosen_mm.unwrap_or(sheet.found.nozzle().used_mm));
    let Some(used) = used else {
        form.fail("chosen_mm", Wrong::Rule("nozzle-not-of-the-list", Vec::new()));
        return None;
    };
    nozzle_said::answered(w, &sets, &sheets, asked.shown, &used, asked.chosen_mm).map(|answer| answer.basis(basis))
}

impl BenchSum for NozzleSum {
    const KEY: &'static str = "nozzle";
    const SCOPE: &'static str = "nozzle-sizing";
    // 75 kW at 5 800/min, 4 engine cylinders, 60 mol % propane in n-butane, coefficient 0.80: 2.10 mm, 2.2 mm taken.
    const EXAMPLE: &'static [(&'static str, &'static str)] = &[
        ("fuel_mix", "typed-mole"),
        ("share_propane", "60"),
        ("share_n_butane", "40"),
        ("rated_power_kw", "75"),
        ("rated_rpm", "5800"),
        ("engine_cylinders", "4"),
        ("brake_efficiency", "0.30"),
        ("manifold_kpa", "97"),
        ("idle_rpm", "800"),
        ("idle_fuel_power_kw", "9.5"),
        ("sets[0][supply_over_manifold_kpa]", "120"),
        ("sets[0][dead_time_ms]", "1.6"),
        ("sets[0][discharge_coefficient]", "0.80"),
        ("sets[0][sizes_mm]", "1.8 2.0 2.2 2.4 2.6"),
    ];
    type Asked = Asked;

    fn openings() -> Vec<origins::Default> {
        openings(Start::Power)
    }

    fn groups(w: &Words, form: &Form) -> Vec<Group> {
        groups(w, form, Start::Power)
    }

    fn read(w: &Words, form: &mut Form) -> Option<Asked> {
        read(w, form, Start::Power)
    }

    fn answer(w: &Words, form: &mut Form, asked: &Asked) -> Option<Answered> {
        answer(w, form, asked, &sizing::BASIS)
    }

    fn fuel(asked: &Asked) -> Option<&Composition> {
        Some(&asked.fuel)
    }
}

impl BenchSum for NozzleFromPetrolSum {
    const KEY: &'static str = "nozzle-from-petrol";
    const SCOPE: &'static str = "nozzle-sizing";
    // 200 g/min, 14.0 ms with 0.9 ms of dead time, lambda 0.88 on E5: 43.67 mg of petrol, 549 mg of air a cycle.
    const EXAMPLE: &'static [(&'static str, &'static str)] = &[
        ("fuel_mix", "typed-mole"),
        ("share_propane", "60"),
        ("share_n_butane", "40"),
        ("rated_rpm", "5800"),
        ("engine_cylinders", "4"),
        ("manifold_kpa", "97"),
        ("petrol", "e5"),
        ("static_flow_g_min", "200"),
        ("rated_pulse_ms", "14.0"),
        ("petrol_dead_time_ms", "0.9"),
        ("petrol_lambda", "0.88"),
        ("gas_lambda", "0.88"),
        ("idle_pulse_ms", "3.2"),
        ("displaced", "yes"),
        ("sets[0][supply_over_manifold_kpa]", "120"),
        ("sets[0][dead_time_ms]", "1.6"),
        ("sets[0][discharge_coefficient]", "0.80"),
        ("sets[0][sizes_mm]", "1.8 2.0 2.2 2.4 2.6 2.8"),
    ];
    type Asked = Asked;

    fn openings() -> Vec<origins::Default> {
        openings(Start::Petrol)
    }

    fn groups(w: &Words, form: &Form) -> Vec<Group> {
        groups(w, form, Start::Petrol)
    }

    fn read(w: &Words, form: &mut Form) -> Option<Asked> {
        read(w, form, Start::Petrol)
    }

    fn answer(w: &Words, form: &mut Form, asked: &Asked) -> Option<Answered> {
        answer(w, form, asked, &injected::BASIS)
    }

    fn fuel(asked: &Asked) -> Option<&Composition> {
        Some(&asked.fuel)
    }
}
