//! Whether the vehicle can be converted: the engine measured on petrol before any work.
//!
//! Direct injection is held for a signatory: a technician records what was measured, and only a signatory may record
//! that the vehicle is suitable with conditions.

use super::JobPage;
use super::facts::{Fact, Facts};
use super::record::{Group, Recorded, Taken, instrument_choices};
use crate::model::evidence::{Entry, Evidence, Suitability, SuitabilityVerdict};
use crate::model::ids::InstrumentId;
use crate::model::instrument::{InstrumentKind, InstrumentRecord};
use crate::model::stage::Stage;
use crate::model::vehicle::PetrolInjection;
use crate::unit::Unit;
use crate::web::Error;
use crate::web::app::App;
use crate::web::form::{Form, Wrong};
use crate::web::kit::{self, Choice, Field, Mark, Tone, Verdict};

/// The form of [`Suitability`].
#[derive(Debug)]
pub struct SuitabilityForm {
    gauges: Vec<InstrumentRecord>,
    readers: Vec<InstrumentRecord>,
}

/// Between a finding and its source in the recorded lines.
const SOURCE_MARK: &str = " · ";
/// Engine cylinders asked for when the vehicle's file does not say.
const USUAL_ENGINE_CYLINDERS: i64 = 4;
const PRESSURES: [Unit; 3] = [Unit::Kilopascal, Unit::Bar, Unit::Psi];
/// Highest compression that a gauge is made for, kPa.
const MOST_COMPRESSION_KPA: f64 = 4_000.0;

fn of(body: &Evidence) -> Option<&Suitability> {
    if let Evidence::Suitability(one) = body { Some(one) } else { None }
}

fn is_direct(job: &JobPage) -> bool {
    job.file.vehicle.petrol_injection == PetrolInjection::Direct
}

fn plain(value: f64) -> String {
    // Shortest text that reads back as the same number, free of conversion dust.
    let rounded = (value * 1e4).round() / 1e4;
    rounded.to_string()
}

fn opt_plain(value: Option<f64>) -> String {
    value.map(plain).unwrap_or_default()
}

fn yes(value: bool) -> &'static str {
    if value { "yes" } else { "no" }
}

impl SuitabilityForm {
    fn engine_cylinders(job: &JobPage) -> usize {
        let known = job.file.vehicle.engine_cylinders.unwrap_or(USUAL_ENGINE_CYLINDERS);
        usize::try_from(known).unwrap_or(1).clamp(1, 12)
    }

    fn compression(job: &JobPage, form: &Form) -> Group {
        let w = job.w();
        let units: Vec<Choice> = PRESSURES.iter().map(|unit| Choice::new(unit.symbol(), unit.symbol())).collect();
        let mut fields: Vec<Field> = (0..Self::engine_cylinders(job))
            .map(|at| {
                let name = format!("compression[{at}][compression]");
                let label = w.tn("suitability-compression-of", i64::try_from(at + 1).unwrap_or(0));
                kit::number(form, &w, name).called(label)
            })
            .collect();
        fields.push(kit::choice(form, &w, "compression_unit", &units));
        let mut group = Group::new(w.t("suitability-group-compression"), fields);
        "compression".clone_into(&mut group.id);
        group.noted(w.t("suitability-note-compression"))
    }

    fn instruments(&self, job: &JobPage, form: &Form) -> Vec<Field> {
        let w = job.w();
        let of = |name: &str, records: &[InstrumentRecord]| {
            let field = kit::choice(form, &w, name, &instrument_choices(job, records)).optional();
            (!records.is_empty()).then_some(field)
        };
        [of("gauge_id", &self.gauges), of("reader_id", &self.readers)].into_iter().flatten().collect()
    }

    fn reasons(job: &JobPage, form: &Form) -> Group {
        let w = job.w();
        let rows = form.rows_shown("reasons", 2, 1);
        let fields = rows
            .iter()
            .map(|row| vec![kit::text(form, &w, row.name("finding")), kit::text(form, &w, row.name("source"))]);
        let columns = vec![w.t("suitability-finding"), w.t("suitability-source")];
        Group::table("reasons", w.t("suitability-group-reasons"), columns, fields.collect())
            .noted(w.t("suitability-note-reasons"))
    }

    /// Readings in order, kPa; wrongs noted at their fields.
    fn read_compression(job: &JobPage, form: &mut Form) -> Vec<f64> {
        let symbol = form.value("compression_unit").to_owned();
        let Some(unit) = PRESSURES.into_iter().find(|unit| unit.symbol() == symbol) else {
            form.fail("compression_unit", if symbol.is_empty() { Wrong::Empty } else { Wrong::NotAChoice });
            return Vec::new();
        };
        let most = Unit::Kilopascal.convert(MOST_COMPRESSION_KPA, unit).unwrap_or(MOST_COMPRESSION_KPA);
        let read = |at: usize| {
            let typed = form.number(&format!("compression[{at}][compression]"), unit, 0.0..=most.round())?;
            unit.convert(typed, Unit::Kilopascal)
        };
        (0..Self::engine_cylinders(job)).filter_map(read).collect()
    }

    fn read_reasons(form: &mut Form) -> String {
        let mut lines = Vec::new();
        for row in form.rows("reasons") {
            let (finding, source) = (form.text(&row.name("finding"), 300), form.text(&row.name("source"), 200));
            if let (Some(finding), Some(source)) = (finding, source) {
                lines.push(format!("{finding}{SOURCE_MARK}{source}"));
            }
        }
        lines.join("\n")
    }

    /// Rules across fields.
    fn judge(job: &JobPage, form: &mut Form, verdict: SuitabilityVerdict, reasons: &str) {
        let is_signatory = job.who.actor.may_sign_on(job.today).is_some();
        let rule = |key| Wrong::Rule(key, Vec::new());
        match verdict {
            SuitabilityVerdict::Suitable if is_direct(job) && is_signatory => {
                form.fail("verdict", rule("suitability-direct-conditions-only"));
            }
            SuitabilityVerdict::WithConditions if is_direct(job) && !is_signatory => {
                form.fail("verdict", rule("suitability-direct-for-signatory"));
            }
            _ => {}
        }
        if verdict != SuitabilityVerdict::Suitable && reasons.is_empty() && form.wrong("reasons").is_none() {
            let row = form.rows_shown("reasons", 1, 0).first().map(|row| row.name("finding"));
            form.fail(row.as_deref().unwrap_or("reasons"), rule("suitability-reason-needed"));
        }
    }

    fn chosen(form: &mut Form, name: &str, records: &[InstrumentRecord]) -> Option<InstrumentId> {
        let id: InstrumentId = form.opt_choice(name)?;
        if !records.iter().any(|record| record.instrument.id == id) {
            form.fail(name, Wrong::NotAChoice);
            return None;
        }
        Some(id)
    }
}

impl Recorded for SuitabilityForm {
    const KIND: &'static str = "suitability";
    const STAGE: Stage = Stage::Intake;

    async fn open(app: &App, job: &JobPage, _: &str) -> Result<Self, Error> {
        Ok(Self {
            gauges: job.instruments(app, InstrumentKind::CompressionGauge).await?,
            readers: job.instruments(app, InstrumentKind::DiagnosticReader).await?,
        })
    }

    fn blank(&self, _: &JobPage) -> Form {
        Form::blank().with("compression_unit", Unit::Bar.symbol())
    }

    fn filled(&self, _: &JobPage, entry: &Entry) -> Form {
        let Some(one) = of(&entry.body) else { return Form::blank() };
        let mut form = Form::blank()
            .with("compression_unit", Unit::Kilopascal.symbol())
            .with("trim_idle_percent", opt_plain(one.trim_idle_percent))
            .with("trim_raised_percent", opt_plain(one.trim_raised_percent))
            .with("fault_codes", &one.fault_codes)
            .with("coolant_c", plain(one.coolant_c))
            .with("idle_co_percent", opt_plain(one.idle_co_percent))
            .with("is_ignition_sound", yes(one.is_ignition_sound))
            .with("is_valve_clearance_sound", yes(one.is_valve_clearance_sound))
            .with("has_valve_seat_risk", yes(one.has_valve_seat_risk))
            .with("verdict", one.verdict.to_string())
            .with("accepted_by", &one.accepted_by);
        for (at, kpa) in one.compression_kpa.iter().enumerate() {
            form.set(&format!("compression[{at}][compression]"), plain(*kpa));
        }
        for (at, line) in one.reasons.lines().enumerate() {
            let (finding, source) = line.rsplit_once(SOURCE_MARK).unwrap_or((line, ""));
            form.set(&format!("reasons[{at}][finding]"), finding);
            form.set(&format!("reasons[{at}][source]"), source);
        }
        for (name, records) in [("gauge_id", &self.gauges), ("reader_id", &self.readers)] {
            let used = records.iter().find(|record| entry.instruments.contains(&record.instrument.id));
            form.set(name, used.map(|record| record.instrument.id.to_string()).unwrap_or_default());
        }
        form
    }

    fn groups(&self, job: &JobPage, form: &Form) -> Vec<Group> {
        let w = job.w();
        let mut warm = vec![
            kit::number(form, &w, "coolant_c"),
            kit::number(form, &w, "trim_idle_percent").optional(),
            kit::number(form, &w, "trim_raised_percent").optional(),
            kit::number(form, &w, "idle_co_percent").optional(),
            kit::text(form, &w, "fault_codes").optional(),
        ];
        warm.extend(self.instruments(job, form));
        let seen = vec![
            kit::yes_no(form, &w, "is_ignition_sound"),
            kit::yes_no(form, &w, "is_valve_clearance_sound"),
            kit::yes_no(form, &w, "has_valve_seat_risk"),
        ];
        let note = if is_direct(job) { w.t("suitability-note-direct") } else { String::new() };
        let result = vec![
            kit::radios(form, &w, "verdict", &kit::coded::<SuitabilityVerdict>(&w)),
            kit::text(form, &w, "accepted_by").optional().wide(),
        ];
        vec![
            Self::compression(job, form),
            Group::new(w.t("suitability-group-warm"), warm),
            Group::new(w.t("suitability-group-seen"), seen),
            Self::reasons(job, form),
            Group::new(w.t("suitability-group-result"), result).noted(note),
        ]
    }

    fn read(&self, job: &JobPage, form: &mut Form) -> Option<Taken> {
        let compression_kpa = Self::read_compression(job, form);
        let coolant_c = form.number("coolant_c", Unit::Celsius, -40.0..=150.0);
        let trim_idle_percent = form.opt_number("trim_idle_percent", Unit::Percent, -100.0..=100.0);
        let trim_raised_percent = form.opt_number("trim_raised_percent", Unit::Percent, -100.0..=100.0);
        let idle_co_percent = form.opt_number("idle_co_percent", Unit::Percent, 0.0..=15.0);
        let fault_codes = form.opt_text("fault_codes", 400).unwrap_or_default();
        let gauge = Self::chosen(form, "gauge_id", &self.gauges);
        let reader = Self::chosen(form, "reader_id", &self.readers);
        let is_ignition_sound = form.yes_no("is_ignition_sound");
        let is_valve_clearance_sound = form.yes_no("is_valve_clearance_sound");
        let has_valve_seat_risk = form.yes_no("has_valve_seat_risk");
        let reasons = Self::read_reasons(form);
        let verdict = form.choice::<SuitabilityVerdict>("verdict");
        let accepted_by = form.opt_text("accepted_by", 200).unwrap_or_default();
        if let Some(verdict) = verdict {
            Self::judge(job, form, verdict, &reasons);
        }
        form.sound()?;
        let body = Evidence::Suitability(Suitability {
            compression_kpa,
            trim_idle_percent,
            trim_raised_percent,
            fault_codes,
            coolant_c: coolant_c?,
            idle_co_percent,
            is_ignition_sound: is_ignition_sound?,
            is_valve_clearance_sound: is_valve_clearance_sound?,
            has_valve_seat_risk: has_valve_seat_risk?,
            verdict: verdict?,
            reasons,
            accepted_by,
        });
        Some(Taken { body, instruments: [gauge, reader].into_iter().flatten().collect(), attachments: Vec::new() })
    }

    fn facts(job: &JobPage, entry: &Entry) -> Vec<Fact> {
        let Some(one) = of(&entry.body) else { return Vec::new() };
        let w = job.w();
        let readings: Vec<String> = one.compression_kpa.iter().map(|kpa| w.figure(*kpa, 0, "kPa")).collect();
        Facts::new(w, Self::KIND)
            .text("compression", format!("{}\u{a0}{}", readings.join(" / "), w.units().symbol("kPa")))
            .opt_number("compression_spread", one.compression_spread_percent(), 1, "%")
            .number("coolant_c", one.coolant_c, 0, "°C")
            .opt_number("trim_idle_percent", one.trim_idle_percent, 1, "%")
            .opt_number("trim_raised_percent", one.trim_raised_percent, 1, "%")
            .opt_number("idle_co_percent", one.idle_co_percent, 2, "%")
            .text(
                "fault_codes",
                if one.fault_codes.is_empty() { w.t("suitability-no-codes") } else { one.fault_codes.clone() },
            )
            .yes_no("is_ignition_sound", one.is_ignition_sound)
            .yes_no("is_valve_clearance_sound", one.is_valve_clearance_sound)
            .yes_no("has_valve_seat_risk", one.has_valve_seat_risk)
            .text("accepted_by", &one.accepted_by)
            .done()
    }

    fn verdict(job: &JobPage, entry: &Entry) -> Option<Verdict> {
        let one = of(&entry.body)?;
        let w = job.w();
        let is_held = is_direct(job) && one.verdict == SuitabilityVerdict::Suitable;
        let (tone, mark) = match one.verdict {
            _ if is_held => (Tone::Copper, Mark::Undecided),
            SuitabilityVerdict::Suitable => (Tone::Met, Mark::Met),
            SuitabilityVerdict::WithConditions => (Tone::Copper, Mark::Undecided),
            SuitabilityVerdict::NotSuitable => (Tone::Stop, Mark::Stops),
        };
        let mut sentences: Vec<String> = one.reasons.lines().map(str::to_owned).collect();
        if is_held {
            sentences.push(w.t("suitability-held"));
        }
        if let Some(spread) = one.compression_spread_percent() {
            sentences.push(w.tv("suitability-spread-said", &[("spread", w.number(spread, 1).into())]));
        }
        Some(Verdict { tone, mark, title: w.t(format!("suitability-verdict-{}", one.verdict)), sentences })
    }
}
