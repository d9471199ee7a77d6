//! The demonstration shop is told by deeds, the same each time, and says what it is.

use fuelwright::clock::Clock;
use fuelwright::config::Config;
use fuelwright::db::{self, Database};
use fuelwright::demo;
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
