//! One issued paper of each kind, each from a shop of its own, for tests that hold for all of them.

use fuelwright::demo::sums;
use fuelwright::model::evidence::Evidence;
use fuelwright::model::ids::{JobId, PaperId};
use fuelwright::model::job::{Fuel, JobKind};
use fuelwright::shop::issue::Found;

use crate::certificates_kinds::{look_at, multivalve, part_id};
use crate::round::Round;
use crate::support::TestShop;

/// A paper with the shop that issued it.
pub struct Paper {
    /// Kind, and the result where there is one.
    pub name: &'static str,
    pub shop: TestShop,
    pub job: JobId,
    pub found: Found,
    pub pdf: Vec<u8>,
}

impl Paper {
    pub fn id(&self) -> PaperId {
        self.found.paper.id
    }

    /// The signed content as it is inside the PDF.
    pub fn json(&self) -> Vec<u8> {
        fuelwright::papers::embedded(&self.pdf).unwrap().unwrap()
    }

    async fn of(name: &'static str, shop: TestShop, job: JobId, id: PaperId) -> Self {
        let found = shop.shop.find_paper(shop.branch, id).await.unwrap().unwrap();
        let pdf = shop.shop.issued_pdf(&found.paper).await.unwrap();
        Self { name, shop, job, found, pdf }
    }

    async fn signed(name: &'static str, round: Round) -> Self {
        let job = round.bay.job;
        let to = round.sign(job).await.goes_to();
        let id: PaperId = to.rsplit('/').next().unwrap().parse().unwrap();
        Self::of(name, round.bay.shop, job, id).await
    }
}

pub async fn conversion() -> Paper {
    let open = TestShop::open().await;
    let told = open.told().await;
    let vera = open.actor(open.vera).await;
    let id = open.shop.issue_certificate(&vera, None, told.job, crate::told::seen()).await.unwrap();
    Paper::of("conversion", open, told.job, id).await
}

pub async fn inspection(name: &'static str, rows: &[[&str; 4]]) -> Paper {
    let round = Round::open(JobKind::Inspection, Fuel::Lpg).await;
    let job = round.bay.job;
    round.vessel(job, "found", "T-61").await;
    round.all_in_order(job).await;
    round.deficiencies(job, rows, &[]).await.goes_to();
    Paper::signed(name, round).await
}

async fn removal() -> Paper {
    let round = Round::open(JobKind::Removal, Fuel::Lpg).await;
    let job = round.bay.job;
    round.arrive(job).await;
    round.checklist(job, &[]).await.goes_to();
    round.exhaust(job, "petrol", "0.08").await;
    round.vessel(job, "found", "OLD-6").await;
    let taken_off = round.bay.at(&format!("parts/{}/removal", part_id(&round.bay, "OLD-6").await));
    let gone = [("reason", "back to petrol"), ("whereabouts", "to its owner, emptied")];
    round.jon.post(&taken_off, &gone).await.goes_to();
    Paper::signed("removal", round).await
}

async fn vessel(name: &'static str, fuel: Fuel) -> Paper {
    let round = Round::open(JobKind::Exchange, fuel).await;
    let job = round.bay.job;
    round.vessel(job, "fitted", "T-62").await;
    round.arrive(job).await;
    if fuel == Fuel::Lpg {
        multivalve(&round).await;
        round.bay.record(Evidence::ContainerSizing(sums::container().unwrap()), vec![]).await;
    }
    round.checklist(job, &[]).await.goes_to();
    round.all_joints(job).await;
    round.functions(job, "yes").await;
    look_at(&round, "T-62", &[]).await.goes_to();
    Paper::signed(name, round).await
}

/// All of them.
pub async fn all() -> Vec<Paper> {
    Box::pin(every_kind()).await
}

async fn every_kind() -> Vec<Paper> {
    vec![
        conversion().await,
        inspection("inspection-pass", &[]).await,
        inspection("inspection-fail", &[["check:line-clips", "6.1.3 d", "major", "clip missing"]]).await,
        removal().await,
        vessel("container", Fuel::Lpg).await,
        vessel("cylinder", Fuel::Cng).await,
    ]
}
