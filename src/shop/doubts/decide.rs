//! A signatory decides what becomes of a paper: it stands, the test is made again, it is taken back. The decision is signed,
//! and what it brings with it (booking, withdrawal, letter) is written with it or not at all.

use time::OffsetDateTime;
use uuid::Uuid;

use super::letters::Letter;
use super::weigh::{PaperLine, What, weigh};
use crate::db;
use crate::db::doubts::Decided;
use crate::model::booking::NewBooking;
use crate::model::deed::Deed;
use crate::model::doubt::{DECISION_FORMAT, DecisionContent, PaperDecision};
use crate::model::ids::{BayId, BookingId, FindingId, MessageId, PaperId};
use crate::model::job::JobKind;
use crate::model::message::MessageKind;
use crate::model::paper::issued::EventKind;
use crate::model::part::PartCategory;
use crate::model::person::Actor;
use crate::seal::{self, Sealed};
use crate::shop::bookings::allow;
use crate::shop::{Refusal, Shop, Work};

use super::{ResultLine, Weighed};

/// When and where the test is made again.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NewReTest {
    pub bay_id: BayId,
    pub starts_at: OffsetDateTime,
    pub ends_at: OffsetDateTime,
}

/// A decision as it is asked for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NewDecision {
    pub decision: PaperDecision,
    pub reason: String,
    /// Must be given with [`PaperDecision::ReTest`].
    pub re_test: Option<NewReTest>,
}

/// The kind of job that makes a test again: an exchange where a vessel is recalled, a repair where another part is, an
/// inspection else, for its proofs are those of the tests.
pub fn retest_kind<'a>(mut results: impl Iterator<Item = &'a ResultLine>) -> JobKind {
    let part = results.find_map(|line| match &line.what {
        What::Part(part, _) => Some(part.category),
        What::Entry(..) => None,
    });
    match part {
        Some(PartCategory::Container | PartCategory::Cylinder) => JobKind::Exchange,
        Some(_) => JobKind::Repair,
        None => JobKind::Inspection,
    }
}

impl Shop {
    /// Decides a paper that a finding put in doubt. The caller has proved the signatory's secret just before.
    ///
    /// # Errors
    /// [`Refusal::MayNot`] for somebody who may not sign today; [`Refusal::Ended`] for a paper that was decided, withdrawn or
    /// superseded; [`Refusal::Field`] for a decision without a reason, a re-test without a time, a bay that is held then.
    pub async fn decide_paper(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        finding: FindingId,
        paper: PaperId,
        new: NewDecision,
    ) -> Result<(), Refusal> {
        let issuer = self.issuer.clone();
        self.deed(who, key, async move |mut work: Work| {
            let (branch, now, person) = (work.who.branch, work.now, work.person()?);
            let grant = work.who.may_sign_on(work.today).ok_or(Refusal::MayNot("refused-signatory-only"))?;
            let (signatory, authorisation) = (work.who.name.clone(), grant.authorisation_number.clone());
            if new.reason.trim().is_empty() {
                return Err(Refusal::Field { field: "reason", why: "wrong-empty" });
            }
            let weighed = weigh(&mut work, branch, finding, now).await?;
            let line = weighed.papers.iter().find(|line| line.id == paper).ok_or(Refusal::Gone)?;
            if !line.may_be_decided() {
                return Err(Refusal::Ended("refused-paper-decided"));
            }
            let issued = db::papers::find(&mut work, branch, paper).await?.ok_or(Refusal::Gone)?;
            let content = DecisionContent {
                format: DECISION_FORMAT.to_owned(),
                finding,
                found: weighed.finding.text.clone(),
                paper: issued.number.clone(),
                paper_sha256: seal::sha256_hex(&issued.content),
                decision: new.decision,
                reason: new.reason.clone(),
                signatory,
                authorisation,
                made_at: now,
                is_demonstration: issuer.is_demo(),
            };
            let sealed =
                Sealed::seal(&content, &issuer.signer()).map_err(|error| Refusal::Broken(error.to_string()))?;
            let public = issuer.signer().public_key_base64();
            db::signing_keys::insert(&mut work, sealed.key_id(), &public, now).await?;
            let booking = work.book_re_test(&weighed, line, &new).await?;
            let message = work.tell_keeper(&weighed, line, &new, issuer.is_demo()).await?;
            match new.decision {
                PaperDecision::Stands => {
                    let why = (new.reason.as_str(), Some(finding));
                    db::papers::insert_event_of(&mut work, paper, EventKind::ReviewClosed, why, person, now).await?;
                }
                // It stays under review until the vehicle was tested and a signatory decided again.
                PaperDecision::ReTest => {}
                PaperDecision::Withdrawn => {
                    let deed = work.withdraw(paper, new.reason.clone(), Some(finding)).await?;
                    work.note(deed).await?;
                }
            }
            let decided = Decided {
                paper_id: paper,
                decision: new.decision,
                reason: new.reason.clone(),
                content: sealed.content().to_vec(),
                signature: sealed.signature(),
                key_id: sealed.key_id().to_owned(),
                message_id: message,
                booking_id: booking,
                person_name: String::new(),
                at: now,
            };
            db::doubts::insert_decision(&mut work, finding, &decided, person).await?;
            let (number, decision, reason) = (issued.number, new.decision.to_string(), new.reason);
            work.done(Deed::PaperDecided { finding, paper, number, decision, reason }, ()).await
        })
        .await
    }
}

impl Work {
    /// Holds a time for the re-test; at arrival it becomes the job.
    async fn book_re_test(
        &mut self,
        weighed: &Weighed,
        line: &PaperLine,
        new: &NewDecision,
    ) -> Result<Option<BookingId>, Refusal> {
        if new.decision != PaperDecision::ReTest {
            return Ok(None);
        }
        let (branch, now, person) = (self.who.branch, self.now, self.person()?);
        let re_test = new.re_test.as_ref().ok_or(Refusal::Field { field: "starts_at", why: "wrong-empty" })?;
        if re_test.starts_at < now {
            return Err(Refusal::Field { field: "starts_at", why: "wrong-past" });
        }
        let keeper = self.keeper_of(line.vehicle_id, line.job_id).await?;
        let w = self.words_of_branch().await?;
        let values = [("number", line.number.as_str().into()), ("found", weighed.finding.text.as_str().into())];
        let booking = NewBooking {
            bay_id: re_test.bay_id,
            starts_at: re_test.starts_at,
            ends_at: re_test.ends_at,
            name: keeper.name,
            phone: keeper.phone,
            plate: line.plate.clone(),
            job_kind: retest_kind(weighed.results.iter().filter(|result| result.papers.contains(&line.id))),
            note: w.tv("finding-retest-note", &values),
            doubled_reason: String::new(),
        };
        let (id, booking) = (BookingId::new(), allow(self, booking, None).await?);
        db::bookings::insert(self, branch, id, &booking, person, now).await?;
        self.note(Deed::BookingMade { booking: id, doubled_reason: String::new() }).await?;
        Ok(Some(id))
    }

    /// Writes to the keeper: the test is made again, or the paper is taken back. One that stands needs no letter.
    async fn tell_keeper(
        &mut self,
        weighed: &Weighed,
        line: &PaperLine,
        new: &NewDecision,
        is_demo: bool,
    ) -> Result<Option<MessageId>, Refusal> {
        let key = match new.decision {
            PaperDecision::Stands => return Ok(None),
            PaperDecision::ReTest => "letter-re-test",
            PaperDecision::Withdrawn => "letter-withdrawn",
        };
        let keeper = self.keeper_of(line.vehicle_id, line.job_id).await?;
        let letter = Letter { kind: MessageKind::Safety, vehicle: line.vehicle_id, key, is_demo };
        let at = new.re_test.as_ref().map(|one| weighed.zone.local(one.starts_at));
        let id = self
            .write_letter(&letter, &keeper, |w| {
                vec![
                    ("plate", line.plate.as_str().into()),
                    ("vehicle", line.vehicle.as_str().into()),
                    ("number", line.number.as_str().into()),
                    ("found", weighed.finding.text.as_str().into()),
                    ("reason", new.reason.as_str().into()),
                    ("at", at.map(|at| w.date_time(at)).unwrap_or_default().into()),
                ]
            })
            .await?;
        Ok(Some(id))
    }
}
