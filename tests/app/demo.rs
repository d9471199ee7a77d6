//! The demonstration shop is told by deeds, the same each time, and says what it is.

use fuelwright::clock::Clock;
use fuelwright::config::Config;
use fuelwright::db::{self, Database};
use fuelwright::demo;
use fuelwright::model::estimate::EstimateStanding;
use fuelwright::model::job::JobState;
use fuelwright::rules::{self, RuleBook, State};
use fuelwright::seal::Signer;
use fuelwright::seal::standing::Standing;
use fuelwright::shop::issue::Issuer;
use fuelwright::shop::{Hasher, Shop};
use tempfile::TempDir;
use time::Duration;
use time::macros::datetime;

#[tokio::test]
async fn the_demonstration_is_told_by_deeds_from_empty_to_today() {
    let folder = TempDir::new().unwrap();
    let until = datetime!(2026-11-25 10:30 UTC);
    let clock = Clock::standing_at(until - Duration::days(1_100));
    let config = Config::of_folder(folder.path());
    let store = Database::open(&config.database()).await.unwrap();
    let issuer = Issuer::new(Signer::from_random(&[9; 32]), None, true);
    let shop = Shop { db: store, clock: clock.clone(), hasher: Hasher::quick(), issuer };
    demo::shop::tell(&shop, &clock, until).await.unwrap();

    let mut con = shop.db.read().await.unwrap();
    let branch = db::branches::list(&mut con).await.unwrap().remove(0);
    let open = db::jobs::list_by_state(&mut con, branch.id, JobState::Open).await.unwrap();
    let held = db::jobs::list_by_state(&mut con, branch.id, JobState::Held).await.unwrap();
    let done = db::jobs::list_by_state(&mut con, branch.id, JobState::HandedOver).await.unwrap();
    assert_eq!((open.len(), held.len(), done.len()), (11, 1, 31));

    let mut states = std::collections::BTreeSet::new();
    for job in open.iter().chain(&held) {
        let file = db::job_files::find(&mut con, branch.id, job.id).await.unwrap().unwrap();
        let book = RuleBook::shipped().unwrap();
        for proof in rules::assess(&file, &book, until.date(), &|at| at.date()) {
            states.insert(proof.state);
        }
    }
    assert!(states.contains(&State::Missing) && states.contains(&State::Stops) && states.contains(&State::Met));

    let mut standings = Vec::new();
    for job in open.iter().chain(&held) {
        let known = db::estimates::find_of_job(&mut con, branch.id, job.id).await.unwrap();
        match known.standing() {
            EstimateStanding::None => assert!(known.deposits.is_empty()),
            EstimateStanding::NotAgreed(last) => standings.push(("open", last.total_minor, 0)),
            EstimateStanding::Agreed(last, _) => standings.push(("agreed", last.total_minor, known.deposited_minor())),
            EstimateStanding::Changed { last, by_minor, .. } => standings.push(("changed", last.total_minor, by_minor)),
        }
    }
    standings.sort_unstable();
    // 315.00 + 184.50 + 149.00 + 6.5 × 7.95 (51.675, up to 51.68) + 9.5 × 58.00 + 65.00 = 1 316.18; and a bracket of 120.00.
    let (usual, more) = (131_618, 143_618);
    assert_eq!(
        standings,
        [("agreed", usual, 0), ("agreed", usual, 40_000), ("changed", more, 12_000), ("open", usual, 0)]
    );

    let papers = db::papers::list_all(&mut con).await.unwrap();
    assert_eq!(papers.len(), 32, "28 conversions, one certificate replaced; an inspection, its repeat, a removal");
    let outcomes: Vec<_> =
        papers.iter().filter(|paper| paper.kind == "inspection").map(|paper| &paper.number).collect();
    assert_eq!(outcomes.len(), 2, "{outcomes:?}");
    assert_eq!(papers.iter().filter(|paper| paper.kind == "removal").count(), 1);
    let mut superseded = 0;
    for paper in papers {
        let found = shop.found(&mut con, paper).await.unwrap();
        assert!(found.content.is_demonstration);
        superseded += u32::from(found.standing == Standing::Superseded);
    }
    assert_eq!(superseded, 1);
}
