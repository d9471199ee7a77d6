//! What a nozzle really lets through: blown through with nitrogen or air, measured with a flow meter that is kept with it.
//!
//! The nozzle sheet of the same job then opens with the coefficient found here in place of the usual one.

use super::facts::{Fact, Facts};
use super::instruments::Instruments;
use super::reckoned::Reckoned;
use super::reckoning::{self, Defaults, Number, needed};
use super::record::{Group, Recorded, Taken};
use super::{JobPage, heat_said, origins, sum};
use crate::calc::ATMOSPHERE_KPA;
use crate::calc::nozzle::measured::{Coefficient, Measured, TestGas, coefficient, measured_steps};
use crate::model::evidence::{Discharge, Entry, Evidence, MeasuredWith, SizingVerdict};
use crate::model::instrument::InstrumentKind;
use crate::model::stage::Stage;
use crate::unit::Unit;
use crate::web::Error;
use crate::web::app::App;
use crate::web::form::{Form, Wrong};
use crate::web::kit::{self, Cell, Column, Table, Verdict};

/// The form of [`Discharge`], with the shop's instruments that could have measured it.
#[derive(Debug)]
pub struct DischargeForm {
    instruments: Instruments,
}

/// The numbers of a measurement.
const NUMBERS: [Number; 8] = [
    needed("bore_mm", Unit::Millimetre, 0.3, 10.0),
    needed("bore_uncertainty_mm", Unit::Millimetre, 0.0, 0.2),
    needed("upstream_kpa", Unit::Kilopascal, 110.0, 1_000.0),
    needed("downstream_kpa", Unit::Kilopascal, 50.0, 990.0),
    needed("temperature_c", Unit::Celsius, -10.0, 60.0),
    needed("flow_l_min", Unit::LitrePerMinute, 0.1, 2_000.0),
    needed("flow_at_c", Unit::Celsius, 0.0, 30.0),
    needed("flow_uncertainty_percent", Unit::Percent, 0.1, 20.0),
];

fn defaults() -> Vec<origins::Default> {
    let mut all = Defaults::default();
    all.add("gas", Some("nitrogen".to_owned()), "practice");
    all.add("bore_uncertainty_mm", Some("0.01".to_owned()), "practice");
    all.add("upstream_kpa", Some(format!("{:.1}", ATMOSPHERE_KPA + 100.0)), "practice");
    all.add("downstream_kpa", Some(format!("{ATMOSPHERE_KPA:.1}")), "practice");
    all.add("temperature_c", Some("20".to_owned()), "practice");
    all.add("flow_at_c", Some("15".to_owned()), "practice");
    all.add("flow_uncertainty_percent", Some("2".to_owned()), "practice");
    all.0
}

fn names() -> Vec<String> {
    let plain = ["injector", "gas"].map(str::to_owned);
    plain.into_iter().chain(reckoning::names_of(&NUMBERS)).collect()
}

fn measured(form: &mut Form) -> Option<Measured> {
    let gas = match form.value("gas") {
        "nitrogen" => Some(TestGas::Nitrogen),
        "air" => Some(TestGas::Air),
        _ => {
            form.fail("gas", Wrong::NotAChoice);
            None
        }
    };
    let [bore, of_bore, upstream, downstream, c, flow, at_c, percent] = NUMBERS.map(|number| number.read(form));
    if upstream.zip(downstream).is_some_and(|(upstream, downstream)| downstream > upstream - 5.0) {
        form.fail("downstream_kpa", Wrong::Rule("discharge-no-drop", Vec::new()));
    }
    form.sound()?;
    Some(Measured {
        gas: gas?,
        upstream_kpa: upstream?,
        downstream_kpa: downstream?,
        temperature_c: c?,
        bore_mm: bore?,
        flow_l_min: flow?,
        flow_at_c: at_c?,
        flow_uncertainty: percent? / 100.0,
        bore_uncertainty_mm: of_bore?,
    })
}

impl Recorded for DischargeForm {
    const KIND: &'static str = "discharge";
    const STAGE: Stage = Stage::Sizing;
    const RECKONS: bool = true;

    async fn open(app: &App, job: &JobPage, _: &str) -> Result<Self, Error> {
        let wanted = [
            ("flow_meter_id", InstrumentKind::Other),
            ("gauge_id", InstrumentKind::PressureGauge),
            ("thermometer_id", InstrumentKind::Thermometer),
        ];
        Ok(Self { instruments: Instruments::open(app, job, &wanted).await? })
    }

    fn blank(&self, _: &JobPage) -> Form {
        reckoning::opened(defaults())
    }

    fn filled(&self, _: &JobPage, entry: &Entry) -> Form {
        let Evidence::Discharge(one) = &entry.body else { return Form::blank() };
        let mut form = reckoning::filled(one.read_back().map(|(inputs, _)| inputs.typed).unwrap_or_default());
        self.instruments.fill(entry, &mut form);
        form
    }

    fn groups(&self, job: &JobPage, form: &Form) -> Vec<Group> {
        let (w, defaults) = (job.w(), defaults());
        let fields = |numbers: &[Number]| -> Vec<_> {
            numbers.iter().map(|number| number.field(job, form, &defaults)).collect()
        };
        let mut nozzle = vec![kit::text(form, &w, "injector")];
        nozzle.extend(fields(&NUMBERS[..2]));
        let mut blown = vec![kit::pick(form, &w, "gas", &kit::choices(&w, "discharge-gas", ["nitrogen", "air"]))];
        blown.extend(fields(&NUMBERS[2..5]));
        let with = self.instruments.fields(job, form);
        let has_meter = self.instruments.has("flow_meter_id");
        let note = if has_meter { "discharge-note-instruments" } else { "discharge-note-no-instrument" };
        vec![
            Group::new(w.t("discharge-group-nozzle"), nozzle).noted(w.t("discharge-note-nozzle")),
            Group::new(w.t("discharge-group-blown"), blown).noted(w.t("discharge-note-blown")),
            Group::new(w.t("discharge-group-flow"), fields(&NUMBERS[5..])),
            Group::new(w.t("discharge-group-with"), with).noted(w.t(note)),
        ]
    }

    fn read(&self, job: &JobPage, form: &mut Form) -> Option<Taken> {
        let injector = form.text("injector", 120);
        let instruments = self.instruments.read(form);
        let measured = measured(form)?;
        let found = match coefficient(&measured) {
            Ok(found) => found,
            Err(error) => {
                sum::refuse(&job.w(), form, &error, "temperature_c", |quantity| match quantity {
                    "flow_uncertainty" => "flow_uncertainty_percent".to_owned(),
                    other => other.to_owned(),
                });
                return None;
            }
        };
        let (typed, origins) = origins::keep(form, names(), &defaults());
        let body = Discharge {
            injector: injector?,
            bore_mm: measured.bore_mm,
            discharge_coefficient: found.discharge_coefficient,
            standard_uncertainty: found.standard_uncertainty,
            origins,
            program_version: env!("CARGO_PKG_VERSION").to_owned(),
            inputs: serde_json::to_value(MeasuredWith { typed, measured }).ok()?,
            results: serde_json::to_value(found).ok()?,
        };
        Some(Taken { instruments, ..Taken::of(Evidence::Discharge(body)) })
    }

    fn facts(job: &JobPage, entry: &Entry) -> Vec<Fact> {
        let Evidence::Discharge(one) = &entry.body else { return Vec::new() };
        let w = job.w();
        let spread = format!("{} ± {}", w.number(one.discharge_coefficient, 3), w.number(one.standard_uncertainty, 3));
        Facts::new(w, Self::KIND)
            .text("injector", &one.injector)
            .number("bore_mm", one.bore_mm, 2, "mm")
            .text("discharge_coefficient", spread)
            .text("instruments", job.instrument_codes(&entry.instruments))
            .done()
    }

    fn reckoned(job: &JobPage, body: &Evidence) -> Option<Reckoned> {
        let Evidence::Discharge(one) = body else { return None };
        let (inputs, found) = one.read_back()?;
        let w = job.w();
        Some(Reckoned {
            verdict: Some(verdict(job, one, &inputs.measured, &found)),
            tables: vec![
                sum::steps(&w, w.t("sizing-steps"), &measured_steps(&inputs.measured, &found)),
                inputs_of(job, one, &inputs),
            ],
            notes: vec![w.tv("sizing-note-version", &[("version", one.program_version.as_str().into())])],
        })
    }
}

fn verdict(job: &JobPage, one: &Discharge, measured: &Measured, found: &Coefficient) -> Verdict {
    let w = job.w();
    let (tone, mark) = heat_said::shown(SizingVerdict::Holds);
    let values = [
        ("coefficient", w.number(one.discharge_coefficient, 2).into()),
        ("spread", w.number(one.standard_uncertainty, 2).into()),
        ("bore", w.quantity(measured.bore_mm, 2, "mm").into()),
    ];
    let mut sentences = vec![w.tv("discharge-said", &values)];
    sentences.push(w.t(if found.choked { "discharge-choked" } else { "discharge-not-choked" }));
    Verdict { tone, mark, title: w.tv("discharge-title", &values), sentences }
}

fn inputs_of(job: &JobPage, one: &Discharge, inputs: &MeasuredWith) -> Table {
    let w = job.w();
    let kept = origins::Kept { scope: "discharge", typed: &inputs.typed, origins: &one.origins };
    let fields: Vec<(String, &str)> = reckoning::inputs_of(&NUMBERS).collect();
    let gas = match inputs.measured.gas {
        TestGas::Nitrogen => "nitrogen",
        TestGas::Air => "air",
    };
    let form = Form::blank().scoped("discharge");
    let mut rows = vec![
        vec![Cell::new(kit::label(&form, &w, "injector")), Cell::new(&one.injector), Cell::new(w.t("origin-entered"))],
        vec![
            Cell::new(kit::label(&form, &w, "gas")),
            Cell::new(w.t(format!("discharge-gas-{gas}"))),
            Cell::new(w.t(format!("origin-{}", kept.code("gas")))),
        ],
    ];
    rows.extend(origins::rows(job, &kept, &fields));
    let columns = ["input", "value", "origin"].map(|name| Column::text(w.t(format!("sizing-column-{name}")))).into();
    Table { w, caption: w.t("sizing-inputs"), columns, rows }
}
