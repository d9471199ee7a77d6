//! What is asked before a decay test starts: instruments, gas, section, first reading, and whether it has settled.

use time::format_description::well_known::Rfc3339;
use time::{Duration, OffsetDateTime};

use super::JobPage;
use super::leak_said;
use super::record::Group;
use crate::calc::leak::plan::has_settled;
use crate::model::Coded;
use crate::model::evidence::{PressureKind, Section, TestGas};
use crate::model::ids::InstrumentId;
use crate::model::instrument::{InstrumentKind, InstrumentRecord};
use crate::model::leak_run::LeakSetUp;
use crate::shop::leak_runs::ReadNow;
use crate::unit::Unit;
use crate::web::Error;
use crate::web::app::App;
use crate::web::form::{Form, Wrong};
use crate::web::kit;

/// Standard atmosphere, kPa (ISO 2533), until somebody types what the weather says.
const AMBIENT_KPA: &str = "101.3";

/// Between the two temperatures that must agree (common practice).
const SETTLING: Duration = Duration::minutes(3);
/// A test that would take longer than a day is not begun: nobody keeps a section shut off and at one temperature for it
/// (common practice). A full CNG cylinder would take weeks.
const LONGEST_MIN: f64 = 1_440.0;

/// What the shop can measure with.
#[derive(Debug)]
pub(super) struct Instruments {
    gauges: Vec<InstrumentRecord>,
    thermometers: Vec<InstrumentRecord>,
}

impl Instruments {
    pub async fn open(app: &App, job: &JobPage) -> Result<Self, Error> {
        Ok(Self {
            gauges: job.instruments(app, InstrumentKind::PressureGauge).await?,
            thermometers: job.instruments(app, InstrumentKind::Thermometer).await?,
        })
    }

    /// The code of one of them; empty for one taken out of use since.
    pub fn code_of(&self, id: InstrumentId) -> String {
        let all = self.gauges.iter().chain(&self.thermometers);
        let found = all.map(|record| &record.instrument).find(|instrument| instrument.id == id);
        found.map(|instrument| instrument.code.clone()).unwrap_or_default()
    }
}

/// Resolution and standard uncertainty of a gauge on a day, kPa.
fn kpa(record: &InstrumentRecord, on: time::Date) -> Option<(f64, f64)> {
    let unit: Unit = record.instrument.unit.parse().ok()?;
    let in_kpa = |value: f64| unit.convert(value, Unit::Kilopascal);
    Some((in_kpa(record.instrument.resolution?)?, in_kpa(record.standard_uncertainty_on(on)?)?))
}

/// Standard uncertainty of a thermometer on a day, K, its resolution counted in as a rectangle (JCGM 100, F.2.2.1).
fn kelvin(record: &InstrumentRecord, on: time::Date) -> Option<f64> {
    let unit: Unit = record.instrument.unit.parse().ok()?;
    let per_kelvin = match unit {
        Unit::Celsius | Unit::Kelvin => 1.0,
        Unit::Fahrenheit => 1.8,
        _ => return None,
    };
    let step = record.instrument.resolution.unwrap_or(0.0) / per_kelvin;
    let u = record.standard_uncertainty_on(on)? / per_kelvin;
    Some((u * u + step * step / 12.0).sqrt())
}

fn choices(job: &JobPage, records: &[InstrumentRecord]) -> Vec<kit::Choice> {
    let w = job.w();
    let mut choices = super::record::instrument_choices(job, records);
    for (choice, record) in choices.iter_mut().zip(records) {
        let said = match record.instrument.kind {
            InstrumentKind::PressureGauge => kpa(record, job.today).map(|(step, u)| {
                let values = [("step", w.quantity(step, 2, "kPa").into()), ("u", w.quantity(u, 3, "kPa").into())];
                w.tv("leak-decay-gauge-is", &values)
            }),
            _ => kelvin(record, job.today)
                .map(|u| w.tv("leak-decay-thermometer-is", &[("u", w.quantity(u, 3, "K").into())])),
        };
        choice.label = format!("{} · {}", choice.label, said.unwrap_or_else(|| w.t("leak-decay-no-figures")));
    }
    choices
}

/// The gases that may be chosen here: air only where no fuel has been in the line.
fn gases(job: &JobPage) -> Vec<&'static str> {
    let is_new = !job.file.has_held_fuel(job.now);
    TestGas::ALL.iter().filter(|gas| is_new || **gas != TestGas::Air).map(|gas| gas.code()).collect()
}

/// The form as first opened.
pub(super) fn blank(job: &JobPage, section: Section) -> Form {
    let form = Form::blank()
        .with("test_gas", TestGas::Nitrogen.code())
        .with("pressure_kind", PressureKind::Gauge.code())
        .with("ambient_kpa", AMBIENT_KPA);
    // What was known of the section at its last test is known still.
    let earlier = job.file.shown("leak-decay", section.code(), |body| match body {
        crate::model::evidence::Evidence::LeakDecay(one) => Some(one),
        _ => None,
    });
    let Some((_, seen)) = earlier else { return form };
    form.with("volume_l", seen.volume_l.to_string())
        .with("volume_uncertainty_percent", (100.0 * seen.volume_relative_standard_uncertainty).to_string())
        .with("volume_how", &seen.volume_how)
        .with("lowest_rating_gauge_kpa", seen.lowest_rating_gauge_kpa.to_string())
        .with("gauge_id", seen.gauge_id.to_string())
        .with("thermometer_id", seen.thermometer_id.to_string())
}

pub(super) fn groups(job: &JobPage, instruments: &Instruments, form: &Form) -> Vec<Group> {
    let w = job.w();
    let number = |name: &str| kit::number(form, &w, name);
    vec![
        Group::new(
            w.t("leak-decay-with"),
            vec![
                kit::choice(form, &w, "gauge_id", &choices(job, &instruments.gauges)),
                kit::choice(form, &w, "thermometer_id", &choices(job, &instruments.thermometers)),
                kit::choice(form, &w, "test_gas", &kit::choices(&w, "test-gas", gases(job))),
                kit::choice(form, &w, "pressure_kind", &kit::coded::<PressureKind>(&w)),
                number("ambient_kpa"),
                number("lowest_rating_gauge_kpa"),
            ],
        ),
        Group::new(
            w.t("leak-decay-section"),
            vec![number("volume_l"), number("volume_uncertainty_percent"), kit::text(form, &w, "volume_how")],
        ),
        Group::new(
            w.t("leak-decay-start"),
            vec![number("settled_c").optional(), number("start_c"), number("start_kpa")],
        )
        .noted(w.t("leak-decay-settling")),
        Group::new("", vec![kit::text(form, &w, "unsettled_reason").optional().wide()]),
    ]
}

struct Chosen {
    gauge: InstrumentId,
    step_kpa: f64,
    u_kpa: f64,
    thermometer: InstrumentId,
    u_k: f64,
}

fn chosen<'a>(form: &mut Form, name: &str, records: &'a [InstrumentRecord]) -> Option<&'a InstrumentRecord> {
    let id = form.choice::<InstrumentId>(name)?;
    let found = records.iter().find(|record| record.instrument.id == id);
    if found.is_none() {
        form.fail(name, Wrong::NotAChoice);
    }
    found
}

fn read_instruments(job: &JobPage, instruments: &Instruments, form: &mut Form) -> Option<Chosen> {
    let gauge = chosen(form, "gauge_id", &instruments.gauges);
    let thermometer = chosen(form, "thermometer_id", &instruments.thermometers);
    let gauge_is = gauge.and_then(|record| kpa(record, job.today));
    let u_k = thermometer.and_then(|record| kelvin(record, job.today));
    for (name, is_without) in [
        ("gauge_id", gauge.is_some() && gauge_is.is_none()),
        ("thermometer_id", thermometer.is_some() && u_k.is_none()),
    ] {
        if is_without {
            form.fail(name, Wrong::Rule("leak-decay-enter-figures", Vec::new()));
        }
    }
    let (step_kpa, u_kpa) = gauge_is?;
    Some(Chosen { gauge: gauge?.instrument.id, step_kpa, u_kpa, thermometer: thermometer?.instrument.id, u_k: u_k? })
}

fn read_gas(job: &JobPage, form: &mut Form) -> Option<TestGas> {
    let typed = form.value("test_gas").trim().to_lowercase();
    if matches!(typed.as_str(), "oxygen" | "o2") {
        form.fail("test_gas", Wrong::Rule("leak-decay-oxygen", Vec::new()));
        return None;
    }
    let gas = form.choice::<TestGas>("test_gas")?;
    if gas == TestGas::Air && job.file.has_held_fuel(job.now) {
        form.fail("test_gas", Wrong::Rule("leak-decay-air", Vec::new()));
    }
    Some(gas)
}

/// Set-up and first reading; `None` when something is wrong, noted at its field.
pub(super) fn read(
    job: &JobPage,
    instruments: &Instruments,
    section: Section,
    form: &mut Form,
) -> Option<(LeakSetUp, ReadNow)> {
    let chosen = read_instruments(job, instruments, form);
    let test_gas = read_gas(job, form);
    if section == Section::LpgLiquid && test_gas == Some(TestGas::Fuel) {
        form.fail("test_gas", Wrong::Rule("leak-decay-liquid", Vec::new()));
    }
    let pressure_kind = form.choice::<PressureKind>("pressure_kind");
    let ambient_kpa = form.number("ambient_kpa", Unit::Kilopascal, 50.0..=110.0);
    let rating = form.number("lowest_rating_gauge_kpa", Unit::Kilopascal, 10.0..=60_000.0);
    let volume_l = form.number("volume_l", Unit::Litre, 0.001..=1_000.0);
    let percent = form.number("volume_uncertainty_percent", Unit::Percent, 0.0..=100.0);
    let volume_how = form.text("volume_how", 200);
    let settled_c = form.opt_number("settled_c", Unit::Celsius, -60.0..=150.0);
    let start_c = form.number("start_c", Unit::Celsius, -60.0..=150.0);
    let start_kpa = form.number("start_kpa", Unit::Kilopascal, 0.0..=60_000.0);
    let reason = form.opt_text("unsettled_reason", 400).unwrap_or_default();
    form.sound()?;
    let (chosen, ambient_kpa, rating, start_c) = (chosen?, ambient_kpa?, rating?, start_c?);
    let has_settled = settled_c.is_some_and(|first| has_settled(first, start_c, chosen.u_k).unwrap_or(false));
    if !has_settled && reason.is_empty() {
        form.fail("unsettled_reason", Wrong::Rule("leak-decay-not-settled", Vec::new()));
    }
    if let Some(left) = still_settling(form, job.now).filter(|_| reason.is_empty()) {
        let left = job.w().quantity(left.as_seconds_f64().ceil(), 0, "s");
        form.fail("start_c", Wrong::Rule("leak-decay-settling-yet", vec![("left", left.into())]));
    }
    let (kind, start_kpa) = (pressure_kind?, start_kpa?);
    let over_ambient = if kind == PressureKind::Gauge { start_kpa } else { start_kpa - ambient_kpa };
    if over_ambient > rating && !form.tick("over_rating") {
        let w = job.w();
        let values =
            vec![("got", w.quantity(over_ambient, 0, "kPa").into()), ("rating", w.quantity(rating, 0, "kPa").into())];
        form.fail("start_kpa", Wrong::Rule("leak-decay-over-rating", values));
    }
    form.sound()?;
    let set_up = LeakSetUp {
        section,
        test_gas: test_gas?,
        pressure_kind: kind,
        ambient_kpa,
        lowest_rating_gauge_kpa: rating,
        volume_l: volume_l?,
        volume_relative_standard_uncertainty: percent? / 100.0,
        volume_how: volume_how?,
        settled_c,
        unsettled_reason: if has_settled { String::new() } else { reason },
        gauge_id: chosen.gauge,
        thermometer_id: chosen.thermometer,
        pressure_resolution_kpa: chosen.step_kpa,
        pressure_standard_uncertainty_kpa: chosen.u_kpa,
        temperature_standard_uncertainty_k: chosen.u_k,
    };
    if let Some(planned) = leak_said::planned_of(job, &set_up, start_kpa, start_c).filter(|min| *min > LONGEST_MIN) {
        let values = vec![("days", job.w().number((planned / 1_440.0).ceil(), 0).into())];
        form.fail("volume_l", Wrong::Rule("leak-decay-days", values));
        return None;
    }
    Some((set_up, ReadNow { kpa: start_kpa, c: start_c }))
}

/// When the first of the two temperatures was read, by the server's clock; nothing when it was typed from memory.
pub(super) fn settled_at(form: &Form) -> Option<OffsetDateTime> {
    OffsetDateTime::parse(form.value("settled_at"), &Rfc3339).ok()
}

/// What is left of the three minutes between the two temperatures.
fn still_settling(form: &Form, now: OffsetDateTime) -> Option<Duration> {
    let left = settled_at(form)? + SETTLING - now;
    left.is_positive().then_some(left)
}
