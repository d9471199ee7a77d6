//! A heat sheet shown: verdict with reasons, one input changed at a time, the sum step by step, inputs with origin.

use super::heat_sizing::{ENGINE, MAKER, device_numbers};
use super::origins::{self, Kept};
use super::reckoned::Reckoned;
use super::{JobPage, reckoning, sum};
use crate::calc::Caution;
use crate::calc::decision::Verdict as Decided;
use crate::calc::heat::{Asked, Capacity, Change, Device, Found, Heat, Judged, USUAL_MARGIN_K, steps};
use crate::model::evidence::{Evidence, HeatInputs, HeatSizing, SizingVerdict};
use crate::web::kit::{Cell, Column, Mark, Table, Tone, Verdict};
use crate::words::{Value, Words};

/// The whole sheet.
pub fn reckoned(job: &JobPage, body: &Evidence) -> Option<Reckoned> {
    let Evidence::HeatSizing(one) = body else { return None };
    let (inputs, found) = one.read_back()?;
    let w = job.w();
    let tables = vec![
        varied(&w, &inputs.asked, &found),
        sum::steps(&w, w.t("sizing-steps"), &steps(&inputs.asked, &found)),
        inputs_of(job, one, &inputs),
    ];
    Some(Reckoned {
        verdict: Some(verdict(&w, one, &inputs.asked, &found)),
        tables,
        notes: vec![
            w.t("heat-note-uncertainty"),
            w.tv("sizing-note-version", &[("version", one.program_version.as_str().into())]),
        ],
    })
}

/// Mark and tone of a verdict.
pub fn shown(verdict: SizingVerdict) -> (Tone, Mark) {
    match verdict {
        SizingVerdict::Holds => (Tone::Met, Mark::Met),
        SizingVerdict::Doubtful => (Tone::Copper, Mark::Undecided),
        SizingVerdict::Fails => (Tone::Stop, Mark::Stops),
        SizingVerdict::NotJudged => (Tone::Copper, Mark::Missing),
    }
}

fn verdict(w: &Words, one: &HeatSizing, asked: &Asked, found: &Found) -> Verdict {
    let (tone, mark) = shown(one.verdict);
    let device = match asked.device {
        Device::Vaporiser(_) => "vaporiser",
        Device::Regulator(_) => "regulator",
    };
    let heat = Value::from(w.quantity(found.heat.heat_kw(), 2, "kW"));
    let coolant = w.quantity(found.heat.coolant_l_min(), 1, "L/min");
    let said = [("heat", heat.clone()), ("coolant", coolant.into()), ("drop", drop(w, asked))];
    let mut sentences = vec![w.tv(&format!("heat-{device}-needs"), &said)];
    sentences.push(match (&found.judged, asked.capacity) {
        (Some(judged), Some(told)) => capacity(w, judged, told),
        (None, Some(_)) => w.t("heat-capacity-power-unknown"),
        (_, None) => w.t(format!("heat-{device}-untold")),
    });
    if let (Some(dew), Some(margin), Some(changeover)) =
        (found.heat.dew_temperature_c(), found.margin_k, asked.changeover_c)
    {
        sentences.push(changeover_said(w, asked, (dew, margin, changeover)));
    }
    if let Heat::Regulator(one) = &found.heat {
        let values = [
            ("throttled", Value::from(w.quantity(one.throttled_c, 0, "°C"))),
            ("perbar", w.quantity(one.mean_joule_thomson_k_per_bar, 2, "K/bar").into()),
        ];
        let key = if one.throttled_c < 0.0 { "heat-regulator-freezes" } else { "heat-regulator-throttled" };
        sentences.push(w.tv(key, &values));
    }
    // That water freezes is said with the temperature above.
    let cautions = found.heat.cautions().iter().filter(|caution| !matches!(caution, Caution::Freezing { .. }));
    sentences.extend(cautions.map(|caution| sum::caution(w, caution)));
    let title = w.tv(&format!("heat-title-{}", one.verdict), &[("heat", heat)]);
    Verdict { tone, mark, title, sentences }
}

fn drop(w: &Words, asked: &Asked) -> Value<'static> {
    let k = match &asked.device {
        Device::Vaporiser(one) => one.coolant_drop_k,
        Device::Regulator(one) => one.coolant_drop_k,
    };
    w.quantity(k, 0, "K").into()
}

fn capacity(w: &Words, judged: &Judged, told: Capacity) -> String {
    let code = match judged.verdict {
        Decided::Pass => "enough",
        Decided::Fail => "too-small",
        Decided::CannotTell => "cannot-tell",
    };
    let (how, told) = match told {
        Capacity::Heat { heat_kw } => ("heat", w.quantity(heat_kw, 1, "kW")),
        Capacity::Engine { engine_kw } => ("engine", w.quantity(engine_kw, 0, "kW")),
    };
    let used = w.quantity(100.0 * judged.used_share, 0, "%");
    let spread = w.quantity(200.0 * judged.relative_uncertainty * judged.used_share, 0, "%");
    let mut said = w.tv(&format!("heat-told-{how}"), &[("told", told.into())]);
    said.push(' ');
    said += &w.tv(&format!("heat-capacity-{code}"), &[("used", used.into()), ("spread", spread.into())]);
    if let (Some(engine_kw), "heat") = (judged.engine_kw, how) {
        said.push(' ');
        said += &w.tv("heat-engine-served", &[("power", w.quantity(engine_kw, 0, "kW").into())]);
    }
    said
}

fn changeover_said(w: &Words, asked: &Asked, (dew, margin, changeover): (f64, f64, f64)) -> String {
    let kpa = match &asked.device {
        Device::Vaporiser(one) => one.outlet_kpa,
        Device::Regulator(one) => one.outlet_kpa,
    };
    let key = match () {
        () if margin < 0.0 => "heat-changeover-below",
        () if margin < USUAL_MARGIN_K => "heat-changeover-close",
        () => "heat-changeover-clear",
    };
    let values = [
        ("pressure", Value::from(w.quantity(kpa, 0, "kPa"))),
        ("dew", w.quantity(dew, 0, "°C").into()),
        ("changeover", w.quantity(changeover, 0, "°C").into()),
        ("margin", w.quantity(margin.abs(), 0, "K").into()),
        ("usual", w.quantity(USUAL_MARGIN_K, 0, "K").into()),
        ("least", w.quantity((dew + USUAL_MARGIN_K).ceil(), 0, "°C").into()),
    ];
    w.tv(key, &values)
}

fn varied(w: &Words, asked: &Asked, found: &Found) -> Table {
    let is_lpg = matches!(asked.device, Device::Vaporiser(_));
    let place = if is_lpg { "container" } else { "cylinder" };
    let named = |change: &Change| match *change {
        Change::Content { temperature_c } => {
            w.tv(&format!("heat-change-{place}"), &[("content", w.quantity(temperature_c, 0, "°C").into())])
        }
        Change::Warmer { by_k } => w.tv("change-warmer", &[("by", w.quantity(by_k, 0, "K").into())]),
        Change::Mix { main_share } => {
            let share = w.quantity(100.0 * main_share, 0, "%");
            w.tv(&format!("heat-change-mix-{place}"), &[("share", share.into())])
        }
    };
    let row = |name: String, heat: f64, coolant: f64, dew: Option<f64>| {
        let mut cells = vec![Cell::new(name), Cell::new(w.figure(heat, 2, "kW")), Cell::new(w.number(coolant, 1))];
        if is_lpg {
            cells.push(Cell::new(dew.map_or_else(|| "–".to_owned(), |c| w.figure(c, 0, "°C"))));
        }
        cells
    };
    let heat = &found.heat;
    let mut rows = vec![row(w.t("change-none"), heat.heat_kw(), heat.coolant_l_min(), heat.dew_temperature_c())];
    rows.extend(
        found.varied.iter().map(|one| row(named(&one.change), one.heat_kw, one.coolant_l_min, one.dew_temperature_c)),
    );
    let mut columns = vec![Column::text(w.t("change-column-what"))];
    let of = |name: &str| Column::number(w.head(format!("heat-column-{name}")));
    columns.extend([of("heat"), of("coolant")]);
    if is_lpg {
        columns.push(of("dew"));
    }
    Table { w: *w, caption: w.t("change-caption"), columns, rows }
}

fn inputs_of(job: &JobPage, one: &HeatSizing, inputs: &HeatInputs) -> Table {
    let fields: Vec<(String, &str)> = [&ENGINE[..], &device_numbers(job)[..], &MAKER[..]]
        .into_iter()
        .flat_map(reckoning::inputs_of)
        // With the rate given, the efficiency plays no part.
        .filter(|(name, _)| inputs.asked.brake_efficiency.is_some() || name != "brake_efficiency")
        .collect();
    let kept = Kept { scope: "heat-sizing", typed: &inputs.typed, origins: &one.origins };
    origins::table(job, &kept, inputs.asked.device.composition(), &fields)
}
