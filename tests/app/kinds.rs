//! Every kind of job for either gas: each proof it asks for stands on its rail and leads to a page, and so does every link
//! of its stages.

use std::collections::BTreeSet;

use fuelwright::model::Coded;
use fuelwright::model::job::{Fuel, JobKind};
use fuelwright::model::stage::{Stage, shown_on, stages_of};
use scraper::{Html, Selector};

use crate::job_support::Bay;
use crate::support::Page;

/// Links of a page into its own job.
fn links(page: &Page, job: &str) -> BTreeSet<String> {
    let html = Html::parse_document(&page.html());
    let anchors = Selector::parse("a[href]").unwrap();
    let all = html.select(&anchors).filter_map(|a| a.attr("href").map(str::to_owned));
    all.map(|link| link.split('#').next().unwrap().to_owned()).filter(|link| link.starts_with(job)).collect()
}

#[tokio::test]
async fn every_proof_stands_on_the_rail_and_every_link_of_a_job_leads_somewhere() {
    for kind in JobKind::ALL {
        for fuel in Fuel::ALL {
            let bay = Bay::open(*kind, *fuel).await;
            let jon = bay.shop.technician().await;
            let asked = bay.proofs().await;
            assert!(!asked.is_empty());
            for proof in &asked {
                assert!(
                    stages_of(*kind).contains(&proof.stage),
                    "{kind} {fuel}: {} stands on {}",
                    proof.id,
                    proof.stage
                );
            }
            let mut seen = BTreeSet::new();
            for stage in Stage::ALL {
                let at = bay.at(&format!("stages/{stage}"));
                let page = jon.get(&at).await;
                if shown_on(*kind, *stage) != *stage {
                    assert_eq!(page.goes_to(), bay.at(&format!("stages/{}", shown_on(*kind, *stage))));
                    continue;
                }
                page.is(200);
                seen.extend(links(&page, &bay.at("")));
            }
            assert!(seen.len() > stages_of(*kind).len() + 3, "{seen:?}");
            for link in seen {
                let status = jon.get(&link).await.status.as_u16();
                assert!(matches!(status, 200 | 303), "{kind} {fuel}: {link} answers {status}");
            }
        }
    }
}

#[tokio::test]
async fn an_inspection_looks_at_fixing_and_housing_while_proving() {
    let bay = Bay::open(JobKind::Inspection, Fuel::Lpg).await;
    assert_eq!(bay.proof("fixing").await.stage, Stage::Proving);
    let jon = bay.shop.technician().await;
    jon.get(&bay.at("stages/proving")).await.is(200).links_to(&bay.at("checklist")).links_to(&bay.at("parts"));
    let one = [("measured_at", "2026-05-12T10:20"), ("answers[clear-exhaust][answer]", "pass")];
    let stage = jon.post(&bay.at("checklist"), &one).await.goes_to();
    assert_eq!(stage, bay.at("stages/proving"));
}
