//! Which gas injector serves which engine cylinder: a row each, and each switched to petrol alone once.

use super::JobPage;
use super::facts::Fact;
use super::record::{Group, Recorded, Taken};
use crate::model::evidence::{CylinderRow, CylinderTable, Entry, Evidence};
use crate::model::stage::Stage;
use crate::unit::Unit;
use crate::web::Error;
use crate::web::app::App;
use crate::web::form::{Form, Wrong};
use crate::web::kit::{self, Mark, Tone, Verdict};

/// The form of [`CylinderTable`].
#[derive(Debug)]
pub struct CylinderTableForm;

/// Engine cylinders asked for when the vehicle's file does not say.
const USUAL_ENGINE_CYLINDERS: i64 = 4;
/// No engine converted in a workshop has more.
const MOST_ENGINE_CYLINDERS: i64 = 12;

fn of(entry: &Entry) -> Option<&CylinderTable> {
    if let Evidence::CylinderTable(table) = &entry.body { Some(table) } else { None }
}

fn engine_cylinders(job: &JobPage) -> i64 {
    job.file.vehicle.engine_cylinders.unwrap_or(USUAL_ENGINE_CYLINDERS).clamp(1, MOST_ENGINE_CYLINDERS)
}

/// The nozzle that the sizing sheet chose, mm.
fn sized_mm(job: &JobPage) -> Option<f64> {
    let (_, sheet) = job.file.shown("nozzle-sizing", "", |body| match body {
        Evidence::NozzleSizing(sheet) => Some(sheet),
        _ => None,
    })?;
    sheet.chosen_mm
}

fn name(n: i64, field: &str) -> String {
    format!("rows[{n}][{field}]")
}

impl CylinderTableForm {
    fn read_row(form: &mut Form, n: i64) -> Option<CylinderRow> {
        let petrol_connector = form.text(&name(n, "petrol_connector"), 100);
        let control_pin = form.text(&name(n, "control_pin"), 100);
        let branch_mark = form.opt_text(&name(n, "branch_mark"), 100).unwrap_or_default();
        let gas_injector = form.integer(&name(n, "gas_injector"), 1..=MOST_ENGINE_CYLINDERS);
        let nozzle_mm = form.number(&name(n, "nozzle_mm"), Unit::Millimetre, 0.5..=10.0);
        let answers = form.yes_no(&name(n, "answers"));
        Some(CylinderRow {
            engine_cylinder: n,
            petrol_connector: petrol_connector?,
            control_pin: control_pin?,
            branch_mark,
            gas_injector: gas_injector?,
            nozzle_mm: nozzle_mm?,
            answers: answers?,
        })
    }
}

impl Recorded for CylinderTableForm {
    const KIND: &'static str = "cylinder-table";
    const STAGE: Stage = Stage::Fitting;

    async fn open(_: &App, _: &JobPage, _: &str) -> Result<Self, Error> {
        Ok(Self)
    }

    fn blank(&self, job: &JobPage) -> Form {
        let (w, nozzle) = (job.w(), sized_mm(job).map(|mm| mm.to_string()).unwrap_or_default());
        let mut form = Form::blank();
        for n in 1..=engine_cylinders(job) {
            form.set(&name(n, "petrol_connector"), w.tn("cylinder-table-usual-connector", n));
            form.set(&name(n, "control_pin"), w.tn("cylinder-table-usual-pin", n));
            form.set(&name(n, "gas_injector"), n.to_string());
            form.set(&name(n, "nozzle_mm"), &nozzle);
        }
        form
    }

    fn filled(&self, _: &JobPage, entry: &Entry) -> Form {
        let mut form = Form::blank();
        for row in of(entry).map(|table| table.rows.as_slice()).unwrap_or_default() {
            let n = row.engine_cylinder;
            form.set(&name(n, "petrol_connector"), &row.petrol_connector);
            form.set(&name(n, "control_pin"), &row.control_pin);
            form.set(&name(n, "branch_mark"), &row.branch_mark);
            form.set(&name(n, "gas_injector"), row.gas_injector.to_string());
            form.set(&name(n, "nozzle_mm"), row.nozzle_mm.to_string());
            form.set(&name(n, "answers"), if row.answers { "yes" } else { "no" });
        }
        form
    }

    fn groups(&self, job: &JobPage, form: &Form) -> Vec<Group> {
        let w = job.w();
        let row = |n: i64| {
            vec![
                kit::text(form, &w, name(n, "petrol_connector")),
                kit::text(form, &w, name(n, "control_pin")),
                kit::text(form, &w, name(n, "branch_mark")),
                kit::number(form, &w, name(n, "gas_injector")),
                kit::number(form, &w, name(n, "nozzle_mm")),
                kit::yes_no(form, &w, name(n, "answers")),
            ]
        };
        let columns = [
            "engine_cylinder",
            "petrol_connector",
            "control_pin",
            "branch_mark",
            "gas_injector",
            "nozzle_mm",
            "answers",
        ];
        let columns = columns.map(|column| w.t(format!("cylinder-table-{column}"))).to_vec();
        let all = 1..=engine_cylinders(job);
        let mut notes = vec![w.t("cylinder-table-note")];
        match sized_mm(job) {
            Some(mm) => notes.push(w.tv("cylinder-table-note-sized", &[("size", w.quantity(mm, 2, "mm").into())])),
            None => notes.push(w.t("cylinder-table-note-not-sized")),
        }
        if job.file.vehicle.engine_cylinders.is_none() {
            notes.push(w.t("cylinder-table-note-count-unknown"));
        }
        let heads = all.clone().map(|n| (w.tn("cylinder-table-row", n), String::new())).collect();
        vec![Group::table("rows", "", columns, all.map(row).collect()).headed(heads).noted(notes.join(" "))]
    }

    fn read(&self, job: &JobPage, form: &mut Form) -> Option<Taken> {
        let rows: Vec<CylinderRow> = (1..=engine_cylinders(job)).filter_map(|n| Self::read_row(form, n)).collect();
        for (at, row) in rows.iter().enumerate() {
            if let Some(first) = rows[..at].iter().find(|other| other.gas_injector == row.gas_injector) {
                let values = vec![("cylinder", first.engine_cylinder.into())];
                let field = name(row.engine_cylinder, "gas_injector");
                form.fail(&field, Wrong::Rule("cylinder-table-injector-doubled", values));
            }
        }
        form.sound()?;
        Some(Taken::of(Evidence::CylinderTable(CylinderTable { rows })))
    }

    fn facts(job: &JobPage, entry: &Entry) -> Vec<Fact> {
        let w = job.w();
        let fact = |row: &CylinderRow| {
            let nozzle = w.quantity(row.nozzle_mm, 2, "mm");
            let answers = w.t(if row.answers { "cylinder-table-answered" } else { "cylinder-table-silent" });
            let injector = w.tn("cylinder-table-injector-said", row.gas_injector);
            let parts = [
                injector,
                nozzle,
                row.petrol_connector.clone(),
                row.control_pin.clone(),
                row.branch_mark.clone(),
                answers,
            ];
            Fact {
                label: w.tn("cylinder-table-row", row.engine_cylinder),
                value: parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(" · "),
            }
        };
        of(entry).map(|table| table.rows.iter().map(fact).collect()).unwrap_or_default()
    }

    fn verdict(job: &JobPage, entry: &Entry) -> Option<Verdict> {
        let silent: Vec<i64> =
            of(entry)?.rows.iter().filter(|row| !row.answers).map(|row| row.engine_cylinder).collect();
        if silent.is_empty() {
            return None;
        }
        let w = job.w();
        let sentence = |n: &i64| w.tn("cylinder-table-silent-row", *n);
        Some(Verdict {
            tone: Tone::Stop,
            mark: Mark::Stops,
            title: w.t("cylinder-table-silent-title"),
            sentences: silent.iter().map(sentence).collect(),
        })
    }
}
