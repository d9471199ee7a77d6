//! Fault codes and readiness, read again after driving on both fuels.

use super::JobPage;
use super::facts::{Fact, Facts};
use super::instruments::Instruments;
use super::record::{Group, Recorded, Taken};
use crate::model::evidence::{AfterDrive, Entry, Evidence};
use crate::model::instrument::InstrumentKind;
use crate::model::stage::Stage;
use crate::rules::Quantity;
use crate::unit::Unit;
use crate::web::Error;
use crate::web::app::App;
use crate::web::form::Form;
use crate::web::kit::{self, Field, Mark, Tone, Verdict};

/// The form of [`AfterDrive`].
#[derive(Debug)]
pub struct AfterDriveForm {
    instruments: Instruments,
}

fn of(body: &Evidence) -> Option<&AfterDrive> {
    if let Evidence::AfterDrive(drive) = body { Some(drive) } else { None }
}

fn least_km(job: &JobPage) -> Option<f64> {
    let file = &job.file;
    let limit = job.book.limit(Quantity::AfterDriveKm, &file.job, &file.vehicle, None, job.today)?;
    limit.least.map(|(least, _)| least)
}

/// Fault codes read at intake.
fn codes_before(job: &JobPage) -> &str {
    match job.file.entry("suitability", "").map(|entry| &entry.body) {
        Some(Evidence::Suitability(seen)) => &seen.fault_codes,
        _ => "",
    }
}

impl Recorded for AfterDriveForm {
    const KIND: &'static str = "after-drive";
    const STAGE: Stage = Stage::Calibration;

    async fn open(app: &App, job: &JobPage, _: &str) -> Result<Self, Error> {
        let wanted = [("reader_id", InstrumentKind::DiagnosticReader)];
        Ok(Self { instruments: Instruments::open(app, job, &wanted).await? })
    }

    fn blank(&self, _: &JobPage) -> Form {
        Form::blank()
    }

    fn filled(&self, _: &JobPage, entry: &Entry) -> Form {
        let Some(drive) = of(&entry.body) else { return Form::blank() };
        let mut form = Form::blank()
            .with("petrol_km", drive.petrol_km.to_string())
            .with("gas_km", drive.gas_km.to_string())
            .with("fault_codes", &drive.fault_codes)
            .with("not_ready", &drive.not_ready);
        self.instruments.fill(entry, &mut form);
        form
    }

    fn groups(&self, job: &JobPage, form: &Form) -> Vec<Group> {
        let w = job.w();
        let driven = |name: &str| -> Field {
            let field = kit::number(form, &w, name);
            match least_km(job) {
                Some(least) => {
                    let least = w.quantity(least, 0, "km");
                    field.hinted(w.tv("after-drive-at-least", &[("least", least.into())]))
                }
                None => field,
            }
        };
        let mut fields = vec![driven("petrol_km"), driven("gas_km")];
        fields.extend(self.instruments.fields(job, form));
        fields.push(kit::text(form, &w, "fault_codes").optional().wide());
        fields.push(kit::text(form, &w, "not_ready").optional().wide());
        vec![Group::new("", fields)]
    }

    fn read(&self, _: &JobPage, form: &mut Form) -> Option<Taken> {
        let petrol_km = form.number("petrol_km", Unit::Kilometre, 0.0..=2_000.0);
        let gas_km = form.number("gas_km", Unit::Kilometre, 0.0..=2_000.0);
        let instruments = self.instruments.read(form);
        let fault_codes = form.opt_text("fault_codes", 400).unwrap_or_default();
        let not_ready = form.opt_text("not_ready", 400).unwrap_or_default();
        form.sound()?;
        let body = Evidence::AfterDrive(AfterDrive { petrol_km: petrol_km?, gas_km: gas_km?, fault_codes, not_ready });
        Some(Taken { body, instruments, attachments: Vec::new() })
    }

    fn facts(job: &JobPage, entry: &Entry) -> Vec<Fact> {
        let Some(drive) = of(&entry.body) else { return Vec::new() };
        let w = job.w();
        let codes = if drive.fault_codes.is_empty() { w.t("suitability-no-codes") } else { drive.fault_codes.clone() };
        Facts::new(w, Self::KIND)
            .number("petrol_km", drive.petrol_km, 0, "km")
            .number("gas_km", drive.gas_km, 0, "km")
            .text("fault_codes", codes)
            .text("not_ready", &drive.not_ready)
            .done()
    }

    fn verdict(job: &JobPage, entry: &Entry) -> Option<Verdict> {
        let drive = of(&entry.body)?;
        let w = job.w();
        let new = drive.new_codes(codes_before(job));
        let shorter = drive.petrol_km.min(drive.gas_km);
        let mut sentences = Vec::new();
        if !new.is_empty() {
            sentences.push(w.tv("after-drive-new-codes", &[("codes", new.join(", ").into())]));
        }
        if new.is_empty() && !drive.fault_codes.is_empty() {
            sentences.push(w.tv("after-drive-old-codes", &[("codes", drive.fault_codes.as_str().into())]));
        }
        let is_short = least_km(job).is_some_and(|least| shorter < least);
        if let Some(least) = least_km(job).filter(|_| is_short) {
            let values = [("got", w.quantity(shorter, 0, "km").into()), ("least", w.quantity(least, 0, "km").into())];
            sentences.push(w.tv("after-drive-short", &values));
        }
        if !drive.not_ready.is_empty() {
            sentences.push(w.tv("after-drive-not-ready", &[("monitors", drive.not_ready.as_str().into())]));
        }
        let (tone, mark, key) = match () {
            () if !drive.fault_codes.is_empty() => (Tone::Stop, Mark::Stops, "after-drive-title-codes"),
            () if is_short => (Tone::Copper, Mark::Undecided, "after-drive-title-short"),
            () => (Tone::Met, Mark::Met, "after-drive-title-clean"),
        };
        Some(Verdict { tone, mark, title: w.t(key), sentences })
    }
}
