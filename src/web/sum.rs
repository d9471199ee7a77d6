//! What a sum answers, in words: steps, reasons, cautions, and where a refusal belongs.

use crate::calc::nozzle::Reason;
use crate::calc::worked::{FIGURES, decimals, decimals_put_in};
use crate::calc::{Caution, Error, Step};
use crate::charts::axis;
use crate::charts::frame::Marked;
use crate::model::paper::sizing_sheet::StepOnPaper;
use crate::unit::{Unit, Units};
use crate::web::form::{Form, Wrong};
use crate::web::kit::{Cell, Column, Table};
use crate::words::{Value, Words};

/// A number with five figures, or as it was typed, without noughts at its end.
pub fn figure(w: &Words, value: f64) -> String {
    w.number(value, decimals_put_in(value, FIGURES))
}

/// A result with its unit and, behind ±, its standard uncertainty.
fn spread(w: &Words, step: &Step) -> String {
    let Some(spread) = step.standard_uncertainty.filter(|spread| *spread > 0.0) else { return String::new() };
    let shown = w.quantity(spread, decimals(spread, 2), step.unit);
    format!("± {shown}").trim_end().to_owned()
}

/// The expression with its numbers put in.
fn put_in(w: &Words, step: &Step) -> String {
    let mut parts = step.put_in.split("{}");
    let mut out = parts.next().unwrap_or_default().to_owned();
    for (part, value) in parts.zip(&step.values) {
        // A number below zero stands in brackets, so that "3 - -2" never occurs.
        let (open, close) = if *value < 0.0 { ("(", ")") } else { ("", "") };
        let shown = w.number(*value, decimals_put_in(*value, step.figures));
        out.extend([open, shown.as_str(), close, part]);
    }
    out
}

/// The document behind a step.
fn source(w: &Words, step: &Step) -> String {
    step.source.map_or_else(|| w.t("step-balance"), |source| source.citation().to_owned())
}

/// A table made by [`steps`], read back as steps for a paper; `None` for any other.
pub fn worked(w: &Words, table: &Table) -> Option<Vec<StepOnPaper>> {
    let is_steps = table.columns.get(1).is_some_and(|column| column.label == w.t("step-formula"));
    let step = |row: &Vec<Cell>| {
        let [name, formula, result, spread] = row.as_slice() else { return None };
        Some(StepOnPaper {
            name: name.text.clone(),
            source: name.second.clone(),
            formula: formula.text.clone(),
            // The logarithm is a key of the calculator; any other letter names a state of the gas.
            is_arithmetic: !formula.second.replace("lg(", "(").contains(char::is_alphabetic),
            put_in: formula.second.clone(),
            result: result.text.clone(),
            spread: spread.text.clone(),
        })
    };
    if is_steps { table.rows.iter().map(step).collect() } else { None }
}

/// Steps as a table: what and source, formula and numbers, result, uncertainty.
pub fn steps(w: &Words, caption: String, steps: &[Step]) -> Table {
    // Formulas hold in the units things are kept in, and a reader redoes them with the numbers that stand there.
    let is_as_shown = w.units() == Units::KEPT;
    let caption = if is_as_shown { caption } else { w.tv("step-caption-as-kept", &[("caption", caption.into())]) };
    let w = &w.as_kept();
    let row = |step: &Step| {
        let result = w.quantity(step.result, decimals(step.result, step.result_figures), step.unit);
        vec![
            Cell::new(w.t(format!("step-{}", step.key))).with_second(source(w, step)),
            Cell::new(step.formula).with_second(put_in(w, step)),
            Cell::new(result.trim_end()),
            Cell::new(spread(w, step)),
        ]
    };
    let columns = vec![
        Column::text(w.t("step-what")),
        Column::text(w.t("step-formula")),
        Column::number(w.head("step-result")),
        Column::number(w.head("step-uncertainty")),
    ];
    Table { w: *w, caption, columns, rows: steps.iter().map(row).collect() }
}

/// Values between two that are round in the unit they are shown in, in words; each beside the value as it is kept.
pub fn marks(w: &Words, low: f64, high: f64, most: u8, unit: &str) -> Vec<Marked> {
    let kept = unit.parse().unwrap_or(Unit::One);
    let shown = w.units().shown(kept);
    let turned = |value: f64, from: Unit, to: Unit| from.convert(value, to).unwrap_or(value);
    let values = axis::steps(turned(low, kept, shown), turned(high, kept, shown), most);
    let decimals = axis::decimals(&values);
    values.into_iter().map(|value| (turned(value, shown, kept), w.number(value, decimals))).collect()
}

fn sizes(w: &Words, sizes_mm: &[f64]) -> String {
    if sizes_mm.is_empty() {
        return w.t("nozzle-reason-no-size");
    }
    let shown = w.units().shown(Unit::Millimetre);
    let in_shown = |mm: &f64| if shown == Unit::Millimetre { figure(w, *mm) } else { w.figure(*mm, 2, "mm") };
    let all: Vec<String> = sizes_mm.iter().map(in_shown).collect();
    format!("{}\u{a0}{}", all.join(", "), shown.symbol())
}

/// The sentence of a reason of the nozzle sum.
pub fn reason(w: &Words, reason: &Reason) -> String {
    let mm = |value: f64| Value::from(w.quantity(value, decimals(value, 4), "mm"));
    let ms = |value: f64| Value::from(w.quantity(value, 1, "ms"));
    let percent = |value: f64| Value::from(w.quantity(100.0 * value, 0, "%"));
    let rpm = |value: f64| Value::from(w.quantity((value / 10.0).round() * 10.0, 0, "/min"));
    let kpa = |value: f64| Value::from(w.quantity(value, 0, "kPa"));
    let number = |value: f64| Value::from(w.number(value, 3));
    match reason {
        Reason::DutyWithin { size_mm, duty, max_duty } => w.tv(
            "nozzle-reason-duty-within",
            &[("size", mm(*size_mm)), ("duty", percent(*duty)), ("most", percent(*max_duty))],
        ),
        Reason::LeanAbove { size_mm, limit_rpm, rated_rpm, duty, max_duty } => w.tv(
            "nozzle-reason-lean-above",
            &[
                ("size", mm(*size_mm)),
                ("limit", rpm(*limit_rpm)),
                ("rated", rpm(*rated_rpm)),
                ("duty", percent(*duty)),
                ("most", percent(*max_duty)),
            ],
        ),
        Reason::IdlePulseWithin { size_mm, idle_pulse_ms, min_pulse_ms } => w.tv(
            "nozzle-reason-idle-within",
            &[("size", mm(*size_mm)), ("pulse", ms(*idle_pulse_ms)), ("least", ms(*min_pulse_ms))],
        ),
        Reason::IdlePulseShort { size_mm, idle_pulse_ms, min_pulse_ms, rated_pulse_ms } => w.tv(
            "nozzle-reason-idle-short",
            &[
                ("size", mm(*size_mm)),
                ("pulse", ms(*idle_pulse_ms)),
                ("least", ms(*min_pulse_ms)),
                ("rated", ms(*rated_pulse_ms)),
            ],
        ),
        Reason::IdleUnknown => w.t("nozzle-reason-idle-unknown"),
        Reason::SizesForRatedPower { sizes_mm } => {
            w.tv("nozzle-reason-sizes-for-power", &[("sizes", sizes(w, sizes_mm).into())])
        }
        Reason::SizesForIdle { sizes_mm } => {
            w.tv("nozzle-reason-sizes-for-idle", &[("sizes", sizes(w, sizes_mm).into())])
        }
        Reason::BoreBetweenWouldFit { from_mm, to_mm } => {
            w.tv("nozzle-reason-bore-between", &[("from", mm(*from_mm)), ("to", mm(*to_mm))])
        }
        Reason::HigherSupplyWouldDo { size_mm, supply_over_manifold_kpa } => w.tv(
            "nozzle-reason-higher-supply",
            &[("size", mm(*size_mm)), ("supply", kpa(supply_over_manifold_kpa.ceil()))],
        ),
        Reason::LowerSupplyWouldDo { size_mm, supply_over_manifold_kpa } => w.tv(
            "nozzle-reason-lower-supply",
            &[("size", mm(*size_mm)), ("supply", kpa(supply_over_manifold_kpa.floor()))],
        ),
        Reason::FasterInjectorWouldDo { size_mm, dead_time_ms } => w.tv(
            "nozzle-reason-faster-injector",
            &[("size", mm(*size_mm)), ("dead", Value::from(w.quantity(*dead_time_ms, 2, "ms")))],
        ),
        Reason::NotChoked { pressure_ratio, choking_share } => {
            w.tv("nozzle-reason-not-choked", &[("ratio", number(*pressure_ratio)), ("share", number(*choking_share))])
        }
    }
}

/// The sentence of a caution.
pub fn caution(w: &Words, caution: &Caution) -> String {
    let c = |value: f64| Value::from(w.quantity(value, 0, "°C"));
    let kpa = |value: f64| Value::from(w.quantity(value, 0, "kPa"));
    let percent = |share: f64| Value::from(w.quantity(100.0 * share, 1, "%"));
    match *caution {
        Caution::TemperatureBeyondCheck { temperature_c, from_c, to_c } => {
            w.tv("sum-caution-temperature", &[("got", c(temperature_c)), ("from", c(from_c)), ("to", c(to_c))])
        }
        Caution::PropeneData { share, allow_percent } => w.tv(
            "sum-caution-propene",
            &[("share", percent(share)), ("allow", Value::from(w.quantity(allow_percent, 1, "%")))],
        ),
        Caution::OctaneBeyondPropene { share } => w.tv("sum-caution-octane", &[("share", percent(share))]),
        Caution::DewTestNotApplied { pressure_kpa } => {
            w.tv("sum-caution-dew-not-tested", &[("pressure", kpa(pressure_kpa))])
        }
        Caution::NearDew { dew_temperature_c, margin_k } => w.tv(
            "sum-caution-near-dew",
            &[("dew", c(dew_temperature_c)), ("margin", Value::from(w.quantity(margin_k, 1, "K")))],
        ),
        Caution::FilledAboveStop { fill_fraction } => {
            w.tv("sum-caution-filled-above", &[("fill", percent(fill_fraction))])
        }
        Caution::LiquidFullWithinReach { liquid_full_temperature_c } => {
            w.tv("sum-caution-liquid-full", &[("full", c(liquid_full_temperature_c))])
        }
        Caution::NeverLiquidFull => w.t("sum-caution-never-full"),
        Caution::AboveWorkingPressure { settled_15c_kpa } => {
            w.tv("sum-caution-above-working", &[("settled", kpa(settled_15c_kpa))])
        }
        Caution::Freezing { throttled_c } => w.tv("sum-caution-freezing", &[("throttled", c(throttled_c))]),
        Caution::CondensesWhenThrottled { dew_temperature_c } => {
            w.tv("sum-caution-condenses", &[("dew", c(dew_temperature_c))])
        }
    }
}

/// Puts a refusal beside the field it speaks of; `field_of` names the field of a quantity, `gas_field` the one that a
/// state of the gas depends on.
pub fn refuse(w: &Words, form: &mut Form, error: &Error, gas_field: &str, field_of: impl Fn(&str) -> String) {
    match *error {
        Error::Outside(outside) => {
            let unit = Unit::of_name(outside.quantity).unwrap_or(Unit::One);
            let round = |value: f64| (value * 1e3).round() / 1e3;
            let (least, most) = (round(outside.least), round(outside.most));
            form.fail(&field_of(outside.quantity), Wrong::Beyond { least, most, unit });
        }
        Error::NoRoot(_) => form.fail(gas_field, Wrong::Rule("sum-error-no-state", Vec::new())),
        Error::Wet { dew_temperature_c, .. } => {
            let dew = w.quantity(dew_temperature_c, 0, "°C");
            form.fail(gas_field, Wrong::Rule("sum-error-wet", vec![("dew", dew.into())]));
        }
        Error::Unfit { component, .. } => {
            let name = w.t(format!("component-{component}"));
            form.fail("fuel_mix", Wrong::Rule("sum-error-unfit", vec![("component", name.into())]));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::Language;

    #[test]
    fn a_figure_keeps_five_digits_and_no_noughts() {
        let w = Words::new(Language::English);
        let shown = |value: f64| figure(&w, value);
        assert_eq!(shown(75.0), "75");
        assert_eq!(shown(0.3), "0.3");
        assert_eq!(shown(46.047_612_345), "46.048");
        assert_eq!(shown(594.337_123_4), "594.34");
        assert_eq!(shown(0.000_123_456_789), "0.00012346");
        assert_eq!(shown(120_000.0), "120\u{202f}000");
        assert_eq!(shown(99_999.962_345), "100\u{202f}000");
        assert_eq!(shown(0.0), "0");
    }
}
