//! The shop's own measured coefficient, with which a nozzle sheet opens.

use super::JobPage;
use super::record::Group;
use crate::db::discharges::Measured;
use crate::model::evidence::Evidence;

/// The discharge coefficient measured in this job, and its standard uncertainty.
pub fn measured(job: &JobPage) -> Option<(f64, f64)> {
    let Evidence::Discharge(one) = &job.file.entry("discharge", "")?.body else { return None };
    Some((one.discharge_coefficient, one.standard_uncertainty))
}

/// The sets with what the shop measured itself under them, so that a nozzle measured once serves every sheet.
pub fn with_measured(job: &JobPage, sets: Group, measured: &[Measured]) -> Group {
    let w = job.w();
    let said = |one: &Measured| {
        let values = [
            ("injector", one.discharge.injector.as_str().into()),
            ("bore", w.quantity(one.discharge.bore_mm, 2, "mm").into()),
            ("coefficient", w.number(one.discharge.discharge_coefficient, 3).into()),
            ("spread", w.number(one.discharge.standard_uncertainty, 3).into()),
            ("job", one.job_number.as_str().into()),
            ("on", w.short_date(job.day_of(one.measured_at)).into()),
        ];
        let line = w.tv("nozzle-measured-before", &values);
        match one.instruments.as_str() {
            "" => line,
            codes => format!("{line} {}", w.tv("sizing-sheet-measured-with", &[("codes", codes.into())])),
        }
    };
    if measured.is_empty() {
        return sets;
    }
    let lines: Vec<String> = measured.iter().map(said).collect();
    let note = format!("{} {} {}", sets.note, w.t("nozzle-measured-here"), lines.join(" "));
    sets.noted(note)
}
