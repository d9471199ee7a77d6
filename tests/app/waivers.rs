//! Waivers: what is never waived cannot be; what is waived stands on the proof list with name and reason.

use fuelwright::model::job::{Fuel, JobKind};
use fuelwright::rules::{self, Proof, RuleBook, State};
use time::OffsetDateTime;

use crate::job_support::Bay;

async fn proofs(bay: &Bay) -> Vec<Proof> {
    let book = RuleBook::shipped().unwrap();
    let day_of = |at: OffsetDateTime| at.date();
    rules::assess(&bay.file().await, &book, bay.shop.clock.now().date(), &day_of)
}

/// Leak, container date, fixing, vent, shut-off, approval mark: none of them may ever be missing from this list.
const NEVER_LPG: &[&str] = &[
    "leak-lpg-liquid",
    "leak-lpg-vapour",
    "not-recalled",
    "storage-in-date",
    "fixing",
    "housing",
    "vent",
    "shut-off",
    "marks",
];

#[tokio::test]
async fn what_is_never_waived_cannot_be_waived_and_the_rest_shows_name_and_reason() {
    for fuel in [Fuel::Lpg, Fuel::Cng] {
        let bay = Bay::open(JobKind::Conversion, fuel).await;
        let vera = bay.shop.signatory().await;
        let all = proofs(&bay).await;
        if fuel == Fuel::Lpg {
            for id in NEVER_LPG {
                let proof = all.iter().find(|proof| proof.id == *id).unwrap_or_else(|| panic!("no proof {id}"));
                assert!(proof.is_never_waived, "{id} can hurt");
            }
        }
        let (mut refused, mut waived) = (0, 0);
        for proof in all.iter().filter(|proof| !proof.state.is_settled()) {
            let at = bay.at(&format!("waivers/{}", proof.id));
            let reason = format!("reason of {}", proof.id);
            let page = vera.get(&at).await;
            page.is(200).says("Asked by:");
            if proof.is_never_waived {
                page.says("Nobody may let this pass");
                assert_eq!(page.field("reason"), None, "{} has no form", proof.id);
                for kind in ["waived", "not-applicable"] {
                    vera.post(&at, &[("kind", kind), ("reason", &reason)]).await.is(403);
                }
                refused += 1;
                continue;
            }
            if !proof.may_not_apply {
                vera.post(&at, &[("kind", "not-applicable"), ("reason", &reason)]).await.is(422);
            }
            vera.post(&at, &[("kind", "waived"), ("reason", "")]).await.is(422);
            let stage = vera.post(&at, &[("kind", "waived"), ("reason", &reason)]).await.goes_to();
            vera.get(&stage).await.says(&format!("Vera Holm lets it pass: {reason}")).links_to(&at);
            waived += 1;
        }
        assert!(refused >= 6 && waived >= 6, "{refused} refused, {waived} waived");
        for proof in proofs(&bay).await {
            let before = all.iter().find(|one| one.id == proof.id).unwrap();
            let wanted = if before.is_never_waived || before.state.is_settled() { before.state } else { State::Waived };
            assert_eq!(proof.state, wanted, "{}", proof.id);
        }
    }
}

#[tokio::test]
async fn a_waiver_is_taken_back_and_only_a_signatory_touches_it() {
    let bay = Bay::lpg().await;
    let at = bay.at("waivers/odometer");
    let (jon, vera, ilse) = (bay.shop.technician().await, bay.shop.signatory().await, bay.shop.manager().await);
    let fields = [("kind", "waived"), ("reason", "odometer is dead")];
    for other in [&jon, &ilse] {
        other.get(&at).await.is(200).says("Only a signatory");
        other.post(&at, &fields).await.is(403);
    }
    assert_eq!(bay.proof("odometer").await.state, State::Missing);
    let key = uuid::Uuid::now_v7().to_string();
    let once = [fields[0], fields[1], ("key", key.as_str())];
    vera.post(&at, &once).await.goes_to();
    vera.post(&at, &once).await.goes_to();
    assert_eq!(bay.file().await.waivers.len(), 1);
    jon.get(&at).await.says("odometer is dead").says("Vera Holm");
    jon.post(&format!("{at}/end"), &[]).await.is(403);
    vera.post(&format!("{at}/end"), &[]).await.goes_to();
    assert_eq!(bay.proof("odometer").await.state, State::Missing);
    vera.get(&bay.at("waivers/no-such-proof")).await.is(404);
}
