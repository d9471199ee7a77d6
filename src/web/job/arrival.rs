//! How the vehicle came in.

use super::JobPage;
use super::facts::{Fact, Facts};
use super::record::{Group, Recorded, Taken};
use crate::model::evidence::{Arrival, Entry, Evidence};
use crate::model::stage::Stage;
use crate::model::vehicle::{OdometerExplained, OdometerUnit};
use crate::unit::Unit;
use crate::web::Error;
use crate::web::app::App;
use crate::web::form::Form;
use crate::web::kit;

/// The form of [`Arrival`].
#[derive(Debug)]
pub struct ArrivalForm;

fn of(entry: &Entry) -> Option<&Arrival> {
    if let Evidence::Arrival(arrival) = &entry.body { Some(arrival) } else { None }
}

fn unit(job: &JobPage) -> Unit {
    match job.file.vehicle.odometer_unit {
        OdometerUnit::Km => Unit::Kilometre,
        OdometerUnit::Mi => Unit::Mile,
    }
}

/// The odometer; beside it the question what explains it, once there is something to ask.
fn odometer(job: &JobPage, form: &Form) -> Vec<kit::Field> {
    let w = job.w();
    let mut fields = vec![kit::number(form, &w, "odometer").unit(unit(job))];
    if form.wrong("explained").is_some() || !form.value("explained").is_empty() {
        fields.push(kit::choice(form, &w, "explained", &kit::coded::<OdometerExplained>(&w)));
    }
    fields
}

impl Recorded for ArrivalForm {
    const KIND: &'static str = "arrival";
    const STAGE: Stage = Stage::Intake;

    async fn open(_: &App, _: &JobPage, _: &str) -> Result<Self, Error> {
        Ok(Self)
    }

    fn blank(&self, job: &JobPage) -> Form {
        Form::blank().with("reported_faults", &job.file.job.reported_faults)
    }

    fn filled(&self, _: &JobPage, entry: &Entry) -> Form {
        let Some(arrival) = of(entry) else { return Form::blank() };
        Form::blank()
            .with("odometer", &arrival.odometer_typed)
            .with("reported_faults", &arrival.reported_faults)
            .with("existing_system", &arrival.existing_system)
            .with("parts_found", &arrival.parts_found)
    }

    fn groups(&self, job: &JobPage, form: &Form) -> Vec<Group> {
        let w = job.w();
        vec![
            Group::new("", odometer(job, form)),
            Group::new(
                "",
                vec![
                    kit::area(form, &w, "reported_faults").optional(),
                    kit::area(form, &w, "existing_system").optional(),
                    kit::area(form, &w, "parts_found").optional(),
                ],
            ),
        ]
    }

    fn read(&self, job: &JobPage, form: &mut Form) -> Option<Taken> {
        let odometer = form.quantity("odometer", unit(job), 0.0..=9_999_999.0);
        let reported_faults = form.opt_long_text("reported_faults", 2_000).unwrap_or_default();
        let existing_system = form.opt_long_text("existing_system", 2_000).unwrap_or_default();
        let parts_found = form.opt_long_text("parts_found", 2_000).unwrap_or_default();
        let odometer_explained = form.opt_choice("explained").unwrap_or_default();
        form.sound()?;
        let odometer = odometer?;
        let km = odometer.unit.convert(odometer.value, Unit::Kilometre)?;
        #[expect(clippy::cast_possible_truncation, reason = "read within ten million")]
        let odometer_km = km.round() as i64;
        let odometer_typed = form.value("odometer").trim().to_owned();
        Some(Taken::of(Evidence::Arrival(Arrival {
            odometer_km,
            odometer_typed,
            odometer_explained,
            reported_faults,
            existing_system,
            parts_found,
        })))
    }

    fn facts(job: &JobPage, entry: &Entry) -> Vec<Fact> {
        let Some(arrival) = of(entry) else { return Vec::new() };
        #[expect(clippy::cast_precision_loss, reason = "an odometer stays far below 2^52")]
        let km = arrival.odometer_km as f64;
        Facts::new(job.w(), Self::KIND)
            .number("odometer", km, 0, "km")
            .text("reported_faults", &arrival.reported_faults)
            .text("existing_system", &arrival.existing_system)
            .text("parts_found", &arrival.parts_found)
            .done()
    }
}
