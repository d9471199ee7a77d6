//! How the engine was calibrated on gas: preconditions, settings in the technician's own words, thresholds, who holds
//! the lock.

use super::JobPage;
use super::facts::{Fact, Facts};
use super::instruments::Instruments;
use super::record::{Group, Recorded, Taken};
use crate::calc::nozzle::Sized;
use crate::model::evidence::{EngineCalibration, Entry, Evidence, Region};
use crate::model::instrument::InstrumentKind;
use crate::model::job::Fuel;
use crate::model::stage::Stage;
use crate::rules::Quantity;
use crate::unit::Unit;
use crate::web::Error;
use crate::web::app::App;
use crate::web::form::Form;
use crate::web::kit::{self, Mark, Tone, Verdict};

/// The form of [`EngineCalibration`].
#[derive(Debug)]
pub struct EngineCalibrationForm {
    instruments: Instruments,
}

/// The gas at changeover should be this much above its dew temperature, K (common practice).
const ABOVE_DEW_K: f64 = 5.0;

fn of(body: &Evidence) -> Option<&EngineCalibration> {
    if let Evidence::EngineCalibration(one) = body { Some(one) } else { None }
}

fn least(job: &JobPage, quantity: Quantity) -> Option<f64> {
    let file = &job.file;
    let limit = job.book.limit(quantity, &file.job, &file.vehicle, None, job.today)?;
    limit.least.map(|(least, _)| least)
}

/// The nozzle of the current sheet, and the supply pressure it was reckoned with, kPa over manifold.
fn sized(job: &JobPage) -> Option<(Sized, f64)> {
    let Evidence::NozzleSizing(one) = &job.file.entry("nozzle-sizing", "")?.body else { return None };
    let (inputs, results) = one.read_back()?;
    let (_, asked) = inputs.sets.get(inputs.taken)?;
    let sheet = results.sheets.get(inputs.taken)?;
    Some((sheet.found.nozzle().clone(), asked.setting().supply_over_manifold_kpa))
}

/// What stands in the way, in words.
fn problems(job: &JobPage, one: &EngineCalibration) -> Vec<String> {
    let w = job.w();
    let c = |value: f64| w.quantity(value, 0, "°C");
    let mut all = Vec::new();
    let measured =
        [("cold-engine", Quantity::CoolantC, one.coolant_c), ("cold-gas", Quantity::VaporiserC, one.vaporiser_c)];
    for (key, quantity, got) in measured {
        if let Some(least) = least(job, quantity).filter(|least| got < *least) {
            let values = [("got", c(got).into()), ("least", c(least).into())];
            all.push(w.tv(&format!("engine-calibration-{key}"), &values));
        }
    }
    if !one.was_closed_loop && job.file.vehicle.is_closed_loop {
        all.push(w.t("engine-calibration-open-loop"));
    }
    if !one.fault_codes.is_empty() {
        all.push(w.tv("engine-calibration-codes", &[("codes", one.fault_codes.as_str().into())]));
    }
    if !one.is_nozzle_adequate {
        all.push(w.t("engine-calibration-nozzle-must-change"));
    }
    all
}

/// What a reader should know although it stops nothing.
fn cautions(job: &JobPage, one: &EngineCalibration) -> Vec<String> {
    let w = job.w();
    let mut all = Vec::new();
    let Some((nozzle, supply_kpa)) = sized(job) else { return all };
    if let Some(dew) = nozzle.dew_temperature_c.filter(|dew| one.changeover_c < dew + ABOVE_DEW_K) {
        let (at, dew) = (w.quantity(one.changeover_c, 0, "°C"), w.quantity(dew, 0, "°C"));
        all.push(w.tv("engine-calibration-near-dew", &[("at", at.into()), ("dew", dew.into())]));
    }
    // A tenth is what regulators drift anyway; beyond that the nozzle was reckoned for another pressure.
    if (one.set_pressure_kpa - supply_kpa).abs() > 0.1 * supply_kpa {
        let (set, reckoned) = (w.quantity(one.set_pressure_kpa, 0, "kPa"), w.quantity(supply_kpa, 0, "kPa"));
        all.push(w.tv("engine-calibration-other-pressure", &[("set", set.into()), ("reckoned", reckoned.into())]));
    }
    all
}

impl Recorded for EngineCalibrationForm {
    const KIND: &'static str = "engine-calibration";
    const STAGE: Stage = Stage::Calibration;

    async fn open(app: &App, job: &JobPage, _: &str) -> Result<Self, Error> {
        let wanted = [
            ("thermometer_id", InstrumentKind::Thermometer),
            ("gauge_id", InstrumentKind::PressureGauge),
            ("reader_id", InstrumentKind::DiagnosticReader),
        ];
        Ok(Self { instruments: Instruments::open(app, job, &wanted).await? })
    }

    fn blank(&self, job: &JobPage) -> Form {
        let form = Form::blank();
        match sized(job) {
            Some((_, supply_kpa)) => form.with("set_pressure_kpa", supply_kpa.to_string()),
            None => form,
        }
    }

    fn filled(&self, _: &JobPage, entry: &Entry) -> Form {
        let Some(one) = of(&entry.body) else { return Form::blank() };
        let yes = |value: bool| if value { "yes" } else { "no" };
        let mut form = Form::blank()
            .with("coolant_c", one.coolant_c.to_string())
            .with("vaporiser_c", one.vaporiser_c.to_string())
            .with("was_closed_loop", yes(one.was_closed_loop))
            .with("fault_codes", &one.fault_codes)
            .with("set_pressure_kpa", one.set_pressure_kpa.to_string())
            .with("gas_temperature_c", one.gas_temperature_c.to_string())
            .with("how", &one.how)
            .with("is_nozzle_adequate", yes(one.is_nozzle_adequate))
            .with("changeover_c", one.changeover_c.to_string())
            .with("fall_back_kpa", one.fall_back_kpa.to_string())
            .with("lock_holder", &one.lock_holder);
        for (at, region) in one.regions.iter().enumerate() {
            form.set(&format!("regions[{at}][region]"), &region.region);
            form.set(&format!("regions[{at}][correction_percent]"), region.percent.to_string());
        }
        self.instruments.fill(entry, &mut form);
        form
    }

    fn groups(&self, job: &JobPage, form: &Form) -> Vec<Group> {
        let w = job.w();
        let limited = |name: &str, quantity| {
            let field = kit::number(form, &w, name);
            match least(job, quantity) {
                Some(least) => {
                    let least = w.quantity(least, 0, "°C");
                    field.hinted(w.tv("engine-calibration-at-least", &[("least", least.into())]))
                }
                None => field,
            }
        };
        let vaporiser = limited("vaporiser_c", Quantity::VaporiserC);
        let vaporiser = if job.file.job.fuel == Fuel::Cng {
            vaporiser.called(w.t("engine-calibration-regulator_c"))
        } else {
            vaporiser
        };
        let mut before = vec![
            limited("coolant_c", Quantity::CoolantC),
            vaporiser,
            kit::text(form, &w, "fault_codes").optional(),
            kit::yes_no(form, &w, "was_closed_loop"),
        ];
        before.extend(self.instruments.fields(job, form));
        let settings = vec![
            kit::number(form, &w, "set_pressure_kpa"),
            kit::number(form, &w, "gas_temperature_c"),
            kit::area(form, &w, "how"),
            kit::yes_no(form, &w, "is_nozzle_adequate"),
        ];
        let thresholds = vec![kit::number(form, &w, "changeover_c"), kit::number(form, &w, "fall_back_kpa")];
        let rows = form.rows_shown("regions", 2, 1);
        let rows = rows.iter().map(|row| {
            let percent = kit::number(form, &w, row.name("correction_percent")).counted_in("");
            vec![kit::text(form, &w, row.name("region")).hinted(""), percent]
        });
        let columns = vec![w.t("engine-calibration-region"), w.t("engine-calibration-column-percent")];
        vec![
            Group::new(w.t("engine-calibration-group-before"), before),
            Group::new(w.t("engine-calibration-group-settings"), settings),
            Group::new(w.t("engine-calibration-group-thresholds"), thresholds),
            Group::table("regions", w.t("engine-calibration-group-regions"), columns, rows.collect())
                .noted(w.t("engine-calibration-note-regions")),
            Group::new("", vec![kit::text(form, &w, "lock_holder").optional().wide()]),
        ]
    }

    fn read(&self, _: &JobPage, form: &mut Form) -> Option<Taken> {
        let coolant_c = form.number("coolant_c", Unit::Celsius, -40.0..=150.0);
        let vaporiser_c = form.number("vaporiser_c", Unit::Celsius, -40.0..=150.0);
        let fault_codes = form.opt_text("fault_codes", 400).unwrap_or_default();
        let was_closed_loop = form.yes_no("was_closed_loop");
        let instruments = self.instruments.read(form);
        let set_pressure_kpa = form.number("set_pressure_kpa", Unit::Kilopascal, 10.0..=2_000.0);
        let gas_temperature_c = form.number("gas_temperature_c", Unit::Celsius, -40.0..=150.0);
        let how = form.long_text("how", 4_000);
        let is_nozzle_adequate = form.yes_no("is_nozzle_adequate");
        let changeover_c = form.number("changeover_c", Unit::Celsius, -20.0..=120.0);
        let fall_back_kpa = form.number("fall_back_kpa", Unit::Kilopascal, 0.0..=2_000.0);
        let mut regions = Vec::new();
        for row in form.rows("regions") {
            let region = form.text(&row.name("region"), 200);
            let percent = form.number(&row.name("correction_percent"), Unit::Percent, -100.0..=100.0);
            regions.extend(region.zip(percent).map(|(region, percent)| Region { region, percent }));
        }
        let lock_holder = form.opt_text("lock_holder", 200).unwrap_or_default();
        form.sound()?;
        let body = Evidence::EngineCalibration(EngineCalibration {
            coolant_c: coolant_c?,
            vaporiser_c: vaporiser_c?,
            was_closed_loop: was_closed_loop?,
            fault_codes,
            set_pressure_kpa: set_pressure_kpa?,
            gas_temperature_c: gas_temperature_c?,
            how: how?,
            is_nozzle_adequate: is_nozzle_adequate?,
            changeover_c: changeover_c?,
            fall_back_kpa: fall_back_kpa?,
            regions,
            lock_holder,
        });
        Some(Taken { body, instruments, attachments: Vec::new() })
    }

    fn facts(job: &JobPage, entry: &Entry) -> Vec<Fact> {
        let Some(one) = of(&entry.body) else { return Vec::new() };
        let w = job.w();
        let codes = if one.fault_codes.is_empty() { w.t("suitability-no-codes") } else { one.fault_codes.clone() };
        let mut facts = Facts::new(w, Self::KIND)
            .number("coolant_c", one.coolant_c, 0, "°C")
            .number("vaporiser_c", one.vaporiser_c, 0, "°C")
            .yes_no("was_closed_loop", one.was_closed_loop)
            .text("fault_codes", codes)
            .number("set_pressure_kpa", one.set_pressure_kpa, 0, "kPa")
            .number("gas_temperature_c", one.gas_temperature_c, 0, "°C")
            .text("how", &one.how)
            .yes_no("is_nozzle_adequate", one.is_nozzle_adequate)
            .number("changeover_c", one.changeover_c, 0, "°C")
            .number("fall_back_kpa", one.fall_back_kpa, 0, "kPa")
            .text("lock_holder", &one.lock_holder);
        for region in &one.regions {
            let sign = if region.percent > 0.0 { "+" } else { "" };
            facts = facts.text("region", format!("{}: {sign}{}", region.region, w.quantity(region.percent, 1, "%")));
        }
        facts.done()
    }

    fn verdict(job: &JobPage, entry: &Entry) -> Option<Verdict> {
        let one = of(&entry.body)?;
        let w = job.w();
        let (mut sentences, cautions) = (problems(job, one), cautions(job, one));
        let (tone, mark, key) = match (sentences.is_empty(), cautions.is_empty()) {
            (false, _) => (Tone::Stop, Mark::Stops, "engine-calibration-title-stops"),
            (true, false) => (Tone::Copper, Mark::Undecided, "engine-calibration-title-cautions"),
            (true, true) => (Tone::Met, Mark::Met, "engine-calibration-title-met"),
        };
        sentences.extend(cautions);
        Some(Verdict { tone, mark, title: w.t(key), sentences })
    }
}
