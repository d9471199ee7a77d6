//! The calibration record of a job: numbered by the job, not signed.

use time::{Date, OffsetDateTime};

use super::{Ground, Spoken, content, of_job};
use crate::model::Coded;
use crate::model::evidence::{AfterDrive, EngineCalibration, Entry, Evidence, RoadComparison, Trims};
use crate::model::ids::JobId;
use crate::model::paper::calibration_record::{
    AfterDriveOnPaper, CALIBRATION_RECORD_FORMAT, CalibrationOnPaper, CalibrationRecordContent, RegionOnPaper,
    RoadOnPaper, TrimOnPaper, TrimsOnPaper,
};
use crate::model::paper::measured::Quantity;
use crate::model::paper::work_sheet::WorkProof;
use crate::model::person::Actor;
use crate::model::stage::Stage;
use crate::papers::calibration_record as paper;
use crate::shop::assessed::Assessed;
use crate::shop::{Refusal, Shop};

fn calibration_record(
    ground: &Ground<'_>,
    on: Date,
    proofs: Vec<WorkProof>,
    is_demonstration: bool,
) -> CalibrationRecordContent {
    let (file, w) = (ground.file, &ground.w);
    let set = file.shown("engine-calibration", "", |body| match body {
        Evidence::EngineCalibration(one) => Some(one),
        _ => None,
    });
    let trims = file.shown("trims", "", |body| match body {
        Evidence::Trims(one) => Some(one),
        _ => None,
    });
    let road = file.shown("road", "", |body| match body {
        Evidence::RoadComparison(one) => Some(one),
        _ => None,
    });
    let driven = file.shown("after-drive", "", |body| match body {
        Evidence::AfterDrive(one) => Some(one),
        _ => None,
    });
    let before = set.map(|(_, one)| one.fault_codes.as_str()).unwrap_or_default();
    CalibrationRecordContent {
        format: CALIBRATION_RECORD_FORMAT.to_owned(),
        title: w.t("calibration-record"),
        shop: content::shop_block(ground),
        number: format!("{}-C", file.job.number),
        printed_on: on,
        job: of_job::job(ground),
        calibration: set.map(|(entry, one)| calibration(ground, entry, one)),
        trims: trims.map(|(entry, one)| trims_on_paper(ground, entry, one)),
        road: road.map(|(entry, one)| road_on_paper(ground, entry, one)),
        after_drive: driven.map(|(entry, one)| after_drive(ground, entry, one, before)),
        files: of_job::files(ground),
        proofs,
        instruments: of_job::instruments(ground, Stage::Calibration),
        entered_later: of_job::entered_later(ground, Stage::Calibration),
        cautions: vec![w.t(format!("issue-caution-{}", file.job.fuel.code()))],
        rule_sets: content::rule_sets(ground),
        language: w.tag().to_owned(),
        beside_of: ground.beside_of.to_owned(),
        is_demonstration,
        software_version: env!("CARGO_PKG_VERSION").to_owned(),
    }
}

fn calibration(ground: &Ground<'_>, entry: &Entry, one: &EngineCalibration) -> CalibrationOnPaper {
    let celsius = |value| Quantity::rounded(value, 0, "°C");
    let kpa = |value| Quantity::rounded(value, 0, "kPa");
    CalibrationOnPaper {
        recorded: of_job::recorded(ground, entry),
        coolant: celsius(one.coolant_c),
        vaporiser: celsius(one.vaporiser_c),
        was_closed_loop: one.was_closed_loop,
        fault_codes: one.fault_codes.clone(),
        set_pressure: kpa(one.set_pressure_kpa),
        gas_temperature: celsius(one.gas_temperature_c),
        how: one.how.clone(),
        is_nozzle_adequate: one.is_nozzle_adequate,
        changeover: celsius(one.changeover_c),
        fall_back: kpa(one.fall_back_kpa),
        regions: one
            .regions
            .iter()
            .map(|region| RegionOnPaper {
                region: region.region.clone(),
                by: Quantity::rounded(region.percent, 1, "%"),
            })
            .collect(),
        lock_holder: one.lock_holder.clone(),
    }
}

fn trims_on_paper(ground: &Ground<'_>, entry: &Entry, trims: &Trims) -> TrimsOnPaper {
    let percent = |value| Quantity::rounded(value, 1, "%");
    let points = trims.points.iter().map(|point| TrimOnPaper {
        point: point.point.clone(),
        bank: point.bank,
        petrol_short: percent(point.petrol_short_percent),
        petrol_long: percent(point.petrol_long_percent),
        gas_short: percent(point.gas_short_percent),
        gas_long: percent(point.gas_long_percent),
        difference: percent(point.difference_percent()),
    });
    TrimsOnPaper {
        recorded: of_job::recorded(ground, entry),
        points: points.collect(),
        worst: trims.worst_percent().and_then(percent),
    }
}

fn road_on_paper(ground: &Ground<'_>, entry: &Entry, one: &RoadComparison) -> RoadOnPaper {
    RoadOnPaper {
        recorded: of_job::recorded(ground, entry),
        phase: ground.w.t(format!("road-phase-{}", one.phase)),
        logs: one.logs.clone(),
        comparison: one.comparison.clone(),
    }
}

fn after_drive(ground: &Ground<'_>, entry: &Entry, driven: &AfterDrive, before: &str) -> AfterDriveOnPaper {
    AfterDriveOnPaper {
        recorded: of_job::recorded(ground, entry),
        on_petrol: Quantity::rounded(driven.petrol_km, 1, "km"),
        on_gas: Quantity::rounded(driven.gas_km, 1, "km"),
        fault_codes: driven.fault_codes.clone(),
        new_codes: driven.new_codes(before),
        not_ready: driven.not_ready.clone(),
    }
}

impl Shop {
    /// The calibration record of a job as a PDF, with the proofs of its stage as the job file words them.
    ///
    /// # Errors
    /// [`Refusal::Gone`] when there is no such job in the branch.
    pub async fn calibration_record_pdf(
        &self,
        who: &Actor,
        job: JobId,
        at: OffsetDateTime,
        proofs: Vec<WorkProof>,
        spoken: Spoken,
    ) -> Result<Vec<u8>, Refusal> {
        let mut con = self.db.read().await?;
        let loaded = Assessed::read(&mut con, who.branch, job, at).await?;
        drop(con);
        let (content, words, size) = loaded.with_spoken(spoken, |ground| {
            let content = calibration_record(ground, loaded.zone.day_of(at), proofs, self.issuer.is_demo);
            (content, ground.w, ground.branch.paper_size)
        });
        of_job::drawn(content, move |content| paper::calibration_record(content, &words, size)).await
    }
}
