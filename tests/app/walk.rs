//! A walk without a goal: evidence is recorded, spoiled, corrected, parts go, instruments run out, proofs are waived, and
//! after every step the rules are held against a second statement of them. No path may lead to a certificate while a proof
//! that nobody may waive is missing.
//!
//! The second statement knows nothing of `src/rules`: which proofs a job asks comes from
//! `tests/reference/proofs_by_kind.csv`, what may be waived from `tests/reference/waivers.csv`, and what a spoiled thing
//! breaks from the table in `walk_table.rs`.
//!
//! `WALK_STEPS` says how many steps, `WALK_SEED` repeats a walk.

use std::collections::{BTreeMap, BTreeSet};

use fuelwright::db;
use fuelwright::model::evidence::Severity;
use fuelwright::model::ids::WaiverId;
use fuelwright::model::job::{Fuel, JobKind, Waiver, WaiverKind};
use fuelwright::model::job_file::JobFile;
use fuelwright::model::paper::certificate::InspectionOutcome;
use fuelwright::rules::{self, Deadline, Proof, RuleBook, State};
use time::Date;
use time::macros::date;

use crate::proofs::COLUMNS;
use crate::support::TestShop;
use crate::walk_table::{Broken, Slot, base, slots};

const TODAY: Date = date!(2026 - 05 - 12);

/// Proofs asked only at hand-over.
const LATER: [&str; 2] = ["instructed", "received"];

/// Chance from a seed, the same on every machine (splitmix64, S. Vigna's published constants).
struct Chance(u64);

impl Chance {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    fn below(&mut self, limit: usize) -> usize {
        usize::try_from(self.next() % limit as u64).unwrap()
    }

    fn one_in(&mut self, many: usize) -> bool {
        self.below(many) == 0
    }
}

/// What may be done to a proof, as the table says it.
#[derive(Debug, Clone)]
struct MayWaive {
    waived: bool,
    not_applicable: bool,
    is_test: bool,
}

fn waivers() -> BTreeMap<String, MayWaive> {
    let table = include_str!("../reference/waivers.csv");
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_reader(table.as_bytes());
    let row = |row: csv::StringRecord| {
        let waived = row[1] != *"no";
        (row[0].to_owned(), MayWaive { waived, not_applicable: row[1] == *"na", is_test: row[2] == *"test" })
    };
    reader.records().map(|one| row(one.unwrap())).collect()
}

fn asked(column: &str, fuel: Fuel) -> BTreeSet<String> {
    let table = include_str!("../reference/proofs_by_kind.csv");
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_reader(table.as_bytes());
    let at = reader.headers().unwrap().iter().position(|name| name == column).unwrap();
    let name = if fuel == Fuel::Lpg { "lpg" } else { "cng" };
    let mut all = BTreeSet::new();
    for row in reader.records().map(Result::unwrap) {
        if &row[1] == "both" || &row[1] == name {
            all.extend(row[at].split(' ').filter(|id| *id != "-" && !LATER.contains(id)).map(str::to_owned));
        }
    }
    all
}

/// How a proof stands by the second statement.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Stands {
    Settled,
    /// Measured or looked at, and not as it should be.
    Failed,
    /// Missing, undecided or not to be trusted.
    Open,
}

/// What a job comes to by the second statement.
#[derive(Debug, PartialEq, Eq)]
struct Comes {
    may_certify: bool,
    /// For a kind that may fail.
    outcome: Option<InspectionOutcome>,
}

/// One job of the walk, with what the table says of it beside what is on file.
struct Walked<'a> {
    column: &'static str,
    kind: JobKind,
    file: JobFile,
    base: &'a JobFile,
    slots: &'a [Slot],
    /// Which state each slot is in; 0 is good.
    stands: Vec<usize>,
    asked: BTreeSet<String>,
    waived: BTreeMap<String, WaiverKind>,
}

impl Walked<'_> {
    fn set(&mut self, slot: usize, to: usize) {
        let Slot { restore, states, .. } = &self.slots[slot];
        restore(&mut self.file, self.base);
        (states[to].change)(&mut self.file);
        self.stands[slot] = to;
    }

    /// Whether a thing of this slot is looked at in this kind of job.
    fn concerns(&self, slot: usize) -> bool {
        !(self.kind == JobKind::Removal && self.slots[slot].is_part)
            && (self.kind == JobKind::Removal || !self.slots[slot].is_removal)
    }

    fn slot(&self, name: &str) -> usize {
        self.slots.iter().position(|slot| slot.name == name).unwrap()
    }

    /// A slot in a state that leaves something missing.
    fn is_open(&self, slot: usize) -> bool {
        self.slots[slot].states[self.stands[slot]].breaks.iter().any(|(_, how)| *how == Broken::Open)
    }

    fn may_fail(&self) -> bool {
        matches!(self.kind, JobKind::Inspection | JobKind::AfterAccident)
    }

    fn raw(&self, proof: &str) -> Stands {
        let mut stands = Stands::Settled;
        let is_off =
            self.slots.iter().zip(&self.stands).any(|(slot, at)| slot.name == "vessel" && slot.states[*at].is_absent);
        for (slot, at) in self.slots.iter().zip(&self.stands) {
            // What was found on a vessel that has gone again holds nobody back.
            if is_off && slot.name == "vessel-check" && !slot.states[*at].is_absent {
                continue;
            }
            for (broken, how) in &slot.states[*at].breaks {
                if broken == proof {
                    // What is missing outweighs what failed: the result does not rest on it.
                    match how {
                        Broken::Open => return Stands::Open,
                        Broken::Failed => stands = Stands::Failed,
                    }
                }
            }
        }
        stands
    }

    fn stands(&self, proof: &str, may: &BTreeMap<String, MayWaive>) -> Stands {
        let raw = self.raw(proof);
        let rule = may.get(proof).unwrap_or_else(|| panic!("waivers.csv has no row for {proof}"));
        let is_let_pass = match self.waived.get(proof) {
            None => false,
            Some(WaiverKind::Waived) => rule.waived,
            Some(WaiverKind::NotApplicable) => rule.waived && rule.not_applicable,
        };
        let is_recorded = self.may_fail() && raw == Stands::Failed;
        if is_let_pass && !is_recorded { Stands::Settled } else { raw }
    }

    fn severity(&self) -> (Option<Severity>, bool) {
        let list = self.slot("deficiencies");
        self.slots[list].states[self.stands[list]].severity
    }

    /// The second statement of the rule.
    fn comes(&self, may: &BTreeMap<String, MayWaive>) -> Comes {
        let all: Vec<(&String, Stands)> = self.asked.iter().map(|id| (id, self.stands(id, may))).collect();
        if !self.may_fail() {
            return Comes { may_certify: all.iter().all(|(_, one)| *one == Stands::Settled), outcome: None };
        }
        let (worst, has_reason) = self.severity();
        let is_cut_short = worst == Some(Severity::Dangerous) && has_reason;
        let open = all.iter().filter(|(_, one)| *one == Stands::Open);
        let (left, open): (Vec<_>, Vec<_>) = open.copied().partition(|(id, _)| is_cut_short && may[*id].is_test);
        let has_failed = all.iter().any(|(_, one)| *one == Stands::Failed);
        let outcome = match worst {
            _ if !open.is_empty() => None,
            _ if has_failed || !left.is_empty() => Some(InspectionOutcome::Fail),
            Some(Severity::Major | Severity::Dangerous) => Some(InspectionOutcome::Fail),
            Some(Severity::Minor) => Some(InspectionOutcome::PassWithMinor),
            None => Some(InspectionOutcome::Pass),
        };
        Comes { may_certify: outcome.is_some(), outcome }
    }

    fn waive(&mut self, proof: &str, kind: WaiverKind) {
        self.file.waivers.retain(|one| one.proof != proof);
        self.file.waivers.push(Waiver {
            id: WaiverId::new(),
            job_id: self.file.job.id,
            proof: proof.to_owned(),
            kind,
            reason: "the camera is broken".into(),
            person_id: self
                .file
                .evidence
                .first()
                .map_or_else(fuelwright::model::ids::PersonId::new, |one| one.person_id),
            person_name: "Vera Holm".into(),
            at: self.file.job.opened_at,
        });
        self.waived.insert(proof.to_owned(), kind);
    }

    /// One deed, whatever it is.
    fn step(&mut self, chance: &mut Chance, one_in: usize) {
        let proofs: Vec<String> = self.asked.iter().cloned().collect();
        match chance.below(40) {
            0 | 1 => {
                let kind = if chance.one_in(3) { WaiverKind::NotApplicable } else { WaiverKind::Waived };
                // Mostly what somebody would want to have out of the way.
                let broken: Vec<&String> = proofs.iter().filter(|id| self.raw(id) != Stands::Settled).collect();
                let proof = if broken.is_empty() || chance.one_in(3) {
                    proofs[chance.below(proofs.len())].clone()
                } else {
                    broken[chance.below(broken.len())].clone()
                };
                self.waive(&proof, kind);
            }
            2 => {
                let proof = proofs[chance.below(proofs.len())].clone();
                self.file.waivers.retain(|one| one.proof != proof);
                self.waived.remove(&proof);
            }
            _ => {
                let concerned: Vec<usize> = (0..self.slots.len()).filter(|slot| self.concerns(*slot)).collect();
                let mut bad: Vec<usize> = concerned.iter().copied().filter(|slot| self.stands[*slot] != 0).collect();
                // Where a result may be "fail", what failed is left as it was found more often than not.
                if self.may_fail() && !chance.one_in(6) {
                    bad.retain(|slot| self.is_open(*slot));
                }
                if chance.one_in(one_in) {
                    // Mishaps come in company.
                    for _ in 0..=chance.below(3) {
                        let slot = if self.may_fail() && chance.one_in(6) {
                            self.slot("deficiencies")
                        } else {
                            concerned[chance.below(concerned.len())]
                        };
                        self.set(slot, chance.below(self.slots[slot].states.len()));
                    }
                } else if !bad.is_empty() {
                    self.set(bad[chance.below(bad.len())], 0);
                }
            }
        }
    }
}

fn said(proof: &Proof) -> Stands {
    match proof.state {
        State::Met | State::Waived | State::NotApplicable => Stands::Settled,
        _ if proof.has_failed => Stands::Failed,
        _ => Stands::Open,
    }
}

/// Holds the rules against the second statement; what disagrees, in words.
fn disagreements(walked: &Walked<'_>, book: &RuleBook, may: &BTreeMap<String, MayWaive>) -> (Vec<String>, Comes) {
    let proofs = rules::assess(&walked.file, book, TODAY, &|at| at.date());
    let due: Vec<&Proof> = proofs.iter().filter(|proof| proof.before == Deadline::Issue).collect();
    let mut wrong = Vec::new();
    let ids: BTreeSet<String> = due.iter().map(|proof| proof.id.clone()).collect();
    if ids != walked.asked {
        wrong.push(format!("{}: asked {:?}", walked.column, ids.symmetric_difference(&walked.asked)));
    }
    for proof in &due {
        let (ours, theirs) = (walked.stands(&proof.id, may), said(proof));
        let is_alike = ours == theirs || (!walked.may_fail() && ours != Stands::Settled && theirs != Stands::Settled);
        if !is_alike {
            let slots = walked.slots.iter().zip(&walked.stands).filter(|(_, at)| **at != 0);
            let slots: Vec<&str> = slots
                .filter(|(slot, at)| slot.states[**at].breaks.iter().any(|(id, _)| *id == proof.id))
                .map(|(slot, at)| slot.states[*at].name.as_str())
                .collect();
            wrong.push(format!(
                "{} {}: {} is {ours:?} by the table, {:?} {} by the rules, with {slots:?}",
                walked.column, walked.file.job.fuel, proof.id, proof.state, proof.why.key
            ));
        }
    }
    let comes = walked.comes(may);
    let may_certify = rules::inspection::may_certify(&walked.file, &proofs);
    if may_certify != comes.may_certify {
        wrong.push(format!("{}: a certificate is {may_certify} by the rules, {comes:?} by the table", walked.column));
    }
    if walked.may_fail() {
        let outcome = rules::inspection::judge(&proofs, rules::inspection::found(&walked.file)).outcome;
        if outcome != comes.outcome {
            wrong.push(format!("{}: {outcome:?} by the rules, {comes:?} by the table", walked.column));
        }
    }
    // The one sentence that all of this is for, said once more without the rest.
    if may_certify {
        for id in walked.asked.iter().filter(|id| !may[*id].waived) {
            let stands = walked.raw(id);
            let is_held = stands == Stands::Settled
                || (comes.outcome == Some(InspectionOutcome::Fail) && (stands == Stands::Failed || may[id].is_test));
            if !is_held {
                wrong.push(format!("{}: A CERTIFICATE WITHOUT {id}, which nobody may waive", walked.column));
            }
        }
    }
    (wrong, comes)
}

async fn told() -> JobFile {
    let open = TestShop::open().await;
    let told = open.told().await;
    let mut con = open.shop.db.read().await.unwrap();
    db::job_files::find(&mut con, open.branch, told.job).await.unwrap().unwrap()
}

fn number(name: &str) -> Option<u64> {
    std::env::var(name).ok().and_then(|text| text.parse().ok())
}

#[tokio::test]
async fn no_path_leads_to_a_certificate_without_a_proof_that_nobody_may_waive() {
    let (steps, seed) = (number("WALK_STEPS").unwrap_or(20_000), number("WALK_SEED").unwrap_or_else(rand::random));
    println!("WALK_SEED={seed} WALK_STEPS={steps}");
    let (told, book, may) = (told().await, RuleBook::shipped().unwrap(), waivers());
    let mut bases = Vec::new();
    for (column, kind, is_low) in COLUMNS {
        for fuel in [Fuel::Lpg, Fuel::Cng] {
            let base = base(&told, &book, kind, is_low, fuel);
            let slots = slots(&base, &book);
            bases.push((column, kind, asked(column, fuel), base, slots));
        }
    }
    let mut chance = Chance(seed);
    let mut wrong: BTreeMap<String, (u64, u64)> = BTreeMap::new();
    let mut possible: BTreeMap<String, u64> = BTreeMap::new();
    let (mut taken, mut by_waiver) = (0, 0);
    while taken < steps {
        let (column, kind, asked, base, slots) = &bases[chance.below(bases.len())];
        let mut walked = Walked {
            column,
            kind: *kind,
            file: base.clone(),
            base,
            slots,
            stands: vec![0; slots.len()],
            asked: asked.clone(),
            waived: BTreeMap::new(),
        };
        // Half of them begin with nothing recorded.
        if chance.one_in(2) {
            for slot in (0..slots.len()).filter(|slot| walked.concerns(*slot)).collect::<Vec<_>>() {
                if let Some(absent) = slots[slot].states.iter().position(|state| state.is_absent) {
                    walked.set(slot, absent);
                }
            }
        }
        let one_in = [2, 3, 6, 20][chance.below(4)];
        for _ in 0..80 {
            walked.step(&mut chance, one_in);
            taken += 1;
            let (found, comes) = disagreements(&walked, &book, &may);
            for one in found {
                wrong.entry(one).or_insert((taken, 0)).1 += 1;
            }
            if comes.may_certify {
                let is_waived = walked.waived.keys().any(|id| walked.raw(id) != Stands::Settled);
                by_waiver += u64::from(is_waived);
                let result = comes.outcome.map(|one| format!(" {}", one.as_str())).unwrap_or_default();
                *possible.entry(format!("{column}{result}")).or_default() += 1;
            }
        }
    }
    let count: u64 = possible.values().sum();
    println!("{taken} steps, a certificate was possible after {count} of them, {by_waiver} by a waiver: {possible:?}");
    let shown: Vec<String> = wrong
        .iter()
        .take(40)
        .map(|(what, (first, often))| format!("{what} (first at step {first}, {often} times)"))
        .collect();
    assert!(wrong.is_empty(), "WALK_SEED={seed}: {} disagreements:\n{}", wrong.len(), shown.join("\n"));
    // A walk that hardly ever comes to a certificate would say nothing.
    assert!(count > taken / 50, "WALK_SEED={seed}: possible after {count} of {taken} steps only");
    for (column, ..) in COLUMNS {
        assert!(
            possible.keys().any(|one| one.starts_with(column)),
            "WALK_SEED={seed}: never a certificate of {column}"
        );
    }
    for outcome in ["pass", "pass-with-minor", "fail"] {
        assert!(possible.contains_key(&format!("inspection {outcome}")), "WALK_SEED={seed}: {possible:?}");
    }
}
