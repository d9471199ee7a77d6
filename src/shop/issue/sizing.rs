//! The sizing sheet of a job: its sums as the job file shows them, under the shop's head. Numbered by the job, not signed.

use time::{Date, OffsetDateTime};

use super::{Ground, content, of_job};
use crate::model::Coded;
use crate::model::ids::JobId;
use crate::model::paper::sizing_sheet::{SIZING_SHEET_FORMAT, SizingSheetContent, SumOnPaper};
use crate::model::person::Actor;
use crate::papers;
use crate::shop::assessed::Assessed;
use crate::shop::{Refusal, Shop};

fn sizing_sheet(ground: &Ground<'_>, on: Date, sums: Vec<SumOnPaper>, is_demonstration: bool) -> SizingSheetContent {
    let (file, w) = (ground.file, &ground.w);
    let gas = file.job.fuel.code();
    SizingSheetContent {
        format: SIZING_SHEET_FORMAT.to_owned(),
        title: w.t("issue-sizing-sheet"),
        shop: content::shop_block(ground),
        number: format!("{}-S", file.job.number),
        job_number: file.job.number.clone(),
        printed_on: on,
        vehicle: file.vehicle.title(),
        plate: file.vehicle.plate.clone(),
        vin: file.vehicle.identity().to_owned(),
        engine: engine(ground),
        fuel: content::gas(file.job.fuel),
        sums,
        cautions: vec![w.t(format!("caution-sizing-{gas}")), w.t(format!("issue-caution-{gas}"))],
        rule_sets: content::rule_sets(ground),
        language: w.tag().to_owned(),
        is_demonstration,
        software_version: env!("CARGO_PKG_VERSION").to_owned(),
    }
}

/// "CV16, 1 598 cm³, 4 engine cylinders, 82 kW at 6 000/min"; what is not known is left out.
pub(super) fn engine(ground: &Ground<'_>) -> String {
    let (vehicle, w) = (&ground.file.vehicle, &ground.w);
    let mut parts = vec![vehicle.engine_code.clone()];
    #[expect(clippy::cast_precision_loss, reason = "a displacement stays far below 2^52")]
    parts.extend(vehicle.displacement_cm3.map(|cm3| w.quantity(cm3 as f64, 0, "cm³")));
    parts.extend(vehicle.engine_cylinders.map(|n| w.tn("paper-engine-cylinders", n)));
    if let (Some(kw), Some(rpm)) = (vehicle.rated_power_kw, vehicle.rated_rpm) {
        let values = [("power", w.quantity(kw, 0, "kW").into()), ("rpm", w.integer(rpm).into())];
        parts.push(w.tv("paper-power", &values));
    }
    parts.retain(|part| !part.is_empty());
    parts.join(", ")
}

impl Shop {
    /// The sizing sheet of a job as a PDF, with these sums.
    ///
    /// # Errors
    /// [`Refusal::Gone`] when there is no such job in the branch, or nothing was sized.
    pub async fn sizing_sheet_pdf(
        &self,
        who: &Actor,
        job: JobId,
        at: OffsetDateTime,
        sums: Vec<SumOnPaper>,
    ) -> Result<Vec<u8>, Refusal> {
        if sums.is_empty() {
            return Err(Refusal::Gone);
        }
        let mut con = self.db.read().await?;
        let loaded = Assessed::read(&mut con, who.branch, job, at).await?;
        drop(con);
        let (content, words, size) = loaded.with(|ground| {
            let content = sizing_sheet(ground, loaded.zone.day_of(at), sums, self.issuer.is_demo);
            (content, ground.w, ground.branch.paper_size)
        });
        of_job::drawn(content, move |content| papers::sizing_sheet::sizing_sheet(content, &words, size)).await
    }
}
