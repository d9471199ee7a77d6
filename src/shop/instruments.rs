//! Instruments: entered, calibrated, checked, taken out of use. One that is found wrong opens a finding by itself.

use time::{Date, OffsetDateTime};
use uuid::Uuid;

use super::findings::{FoundIn, NewFinding};
use super::{Refusal, Shop, Work};
use crate::db;
use crate::model::deed::Deed;
use crate::model::ids::{AttachmentId, InstrumentId};
use crate::model::instrument::{Instrument, InstrumentCertificate, InstrumentCheck, InstrumentRecord, NewInstrument};
use crate::model::person::Actor;
use crate::words::{Language, Words};

/// What findings of instruments rest on; the words are behind `finding-source-`.
pub const FOUND_BY_CHECK: &str = "instrument-check";
/// A calibration found it wrong.
pub const FOUND_BY_CALIBRATION: &str = "instrument-calibration";
/// Nobody knows: its calibration ended.
pub const FOUND_OUT_OF_DATE: &str = "instrument-out-of-date";

/// A certificate as it is entered.
#[derive(Debug, Clone, PartialEq)]
pub struct NewCertificate {
    pub number: String,
    pub laboratory: String,
    pub calibrated_on: Date,
    /// Last day it serves.
    pub due_on: Date,
    /// In the instrument's unit.
    pub expanded_uncertainty: Option<f64>,
    pub coverage_factor: Option<f64>,
    pub attachment_id: Option<AttachmentId>,
    /// What the laboratory found wrong before it adjusted anything; empty when it was as it should be.
    pub found_wrong: String,
}

/// A check as it is entered.
#[derive(Debug, Clone, PartialEq)]
pub struct NewCheck {
    pub checked_at: OffsetDateTime,
    pub has_passed: bool,
    /// In the instrument's unit.
    pub as_found_error: Option<f64>,
    /// In words; what is wrong, where it failed.
    pub note: String,
}

impl Shop {
    /// Adds an instrument.
    pub async fn add_instrument(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        new: NewInstrument,
    ) -> Result<InstrumentId, Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let (branch, instrument) = (work.who.branch, InstrumentId::new());
            db::instruments::insert(&mut work, branch, instrument, &new).await?;
            work.done(Deed::InstrumentAdded { instrument, code: new.code }, instrument).await
        })
        .await
    }

    /// Changes what is written down of an instrument, over the version it was opened at.
    pub async fn change_instrument(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        instrument: InstrumentId,
        version: i64,
        new: NewInstrument,
    ) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let branch = work.who.branch;
            let before = db::instruments::find(&mut work, branch, instrument).await?.ok_or(Refusal::Gone)?;
            db::instruments::save(&mut work, instrument, version, &new).await?;
            work.done(Deed::InstrumentChanged { instrument, changed: changes(&before, &new) }, ()).await
        })
        .await
    }

    /// Takes an instrument out of use from a day on, or (`None`) into use again.
    pub async fn retire_instrument(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        instrument: InstrumentId,
        version: i64,
        retired_on: Option<Date>,
    ) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let branch = work.who.branch;
            db::instruments::find(&mut work, branch, instrument).await?.ok_or(Refusal::Gone)?;
            db::instruments::save_retired(&mut work, instrument, version, retired_on).await?;
            work.done(Deed::InstrumentRetired { instrument, retired_on }, ()).await
        })
        .await
    }

    /// Enters a calibration certificate. A laboratory that found the instrument wrong opens a finding.
    ///
    /// # Errors
    /// [`Refusal::Field`] for a calibration in the future, an end before its beginning, a paper that is not there.
    pub async fn record_certificate(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        instrument: InstrumentId,
        new: NewCertificate,
    ) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let (branch, now, person) = (work.who.branch, work.now, work.person()?);
            db::instruments::find(&mut work, branch, instrument).await?.ok_or(Refusal::Gone)?;
            if new.calibrated_on > work.today {
                return Err(Refusal::Field { field: "calibrated_on", why: "wrong-future" });
            }
            if new.due_on <= new.calibrated_on {
                return Err(Refusal::Field { field: "due_on", why: "wrong-end-before-start" });
            }
            if let Some(paper) = new.attachment_id {
                let missing = Refusal::Field { field: "paper", why: "wrong-not-a-choice" };
                db::attachments::find(&mut work, branch, paper).await?.ok_or(missing)?;
            }
            let certificate = InstrumentCertificate {
                instrument_id: instrument,
                number: new.number,
                laboratory: new.laboratory,
                calibrated_on: new.calibrated_on,
                due_on: new.due_on,
                expanded_uncertainty: new.expanded_uncertainty,
                coverage_factor: new.coverage_factor,
                attachment_id: new.attachment_id,
            };
            db::instruments::insert_certificate(&mut work, &certificate, person, now).await?;
            if !new.found_wrong.is_empty() {
                let (source, text) = (FOUND_BY_CALIBRATION.to_owned(), new.found_wrong);
                let found_at = work.zone().await?.instant(certificate.calibrated_on, 0, 0);
                let finding = NewFinding { found_in: FoundIn::Instrument(instrument), source, text, found_at };
                let (_, deed) = work.open_finding(finding).await?;
                work.note(deed).await?;
            }
            let (calibrated_on, due_on) = (certificate.calibrated_on, certificate.due_on);
            let deed = Deed::InstrumentCalibrated { instrument, number: certificate.number, calibrated_on, due_on };
            work.done(deed, ()).await
        })
        .await
    }

    /// Enters a check. One that failed opens a finding.
    ///
    /// # Errors
    /// [`Refusal::Field`] for a check in the future, and for one that failed without a word about what is wrong.
    pub async fn record_check(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        instrument: InstrumentId,
        new: NewCheck,
    ) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let (branch, now, person_id) = (work.who.branch, work.now, work.person()?);
            db::instruments::find(&mut work, branch, instrument).await?.ok_or(Refusal::Gone)?;
            if new.checked_at > now {
                return Err(Refusal::Field { field: "checked_at", why: "wrong-future" });
            }
            if !new.has_passed && new.note.trim().is_empty() {
                return Err(Refusal::Field { field: "check_note", why: "instrument-say-what-is-wrong" });
            }
            let NewCheck { checked_at, has_passed, as_found_error, note } = new;
            let text = note.clone();
            let check =
                InstrumentCheck { instrument_id: instrument, checked_at, has_passed, as_found_error, note, person_id };
            db::instruments::insert_check(&mut work, &check, now).await?;
            if !has_passed {
                let (found_in, source) = (FoundIn::Instrument(instrument), FOUND_BY_CHECK.to_owned());
                let new = NewFinding { found_in, source, text, found_at: Some(checked_at) };
                let (finding, deed) = work.open_finding(new).await?;
                work.note(deed).await?;
                work.enter_error_of_check(finding, instrument, as_found_error).await?;
            }
            work.open_findings_out_of_date(&[instrument]).await?;
            work.done(Deed::InstrumentChecked { instrument, has_passed }, ()).await
        })
        .await
    }
}

impl Work {
    /// Opens a finding for each of these instruments whose calibration has ended, unless one is open or was decided since
    /// it ended. Called whenever somebody works with an instrument.
    pub(super) async fn open_findings_out_of_date(&mut self, ids: &[InstrumentId]) -> Result<(), Refusal> {
        let (branch, today) = (self.who.branch, self.today);
        for record in db::instruments::records(self, branch, ids).await? {
            let is_out = record.instrument.retired_on.is_none() && !record.is_in_calibration(today);
            let Some(ended_on) = record.due_on().filter(|_| is_out) else { continue };
            let before = db::findings::list_of_instrument(self, record.instrument.id).await?;
            let known = before.iter().any(|one| one.source == FOUND_OUT_OF_DATE && one.opened_at.date() >= ended_on);
            if !known {
                let text = self.sentences().await?.out_of_date(&record, ended_on);
                let (found_in, source) = (FoundIn::Instrument(record.instrument.id), FOUND_OUT_OF_DATE.to_owned());
                let (_, deed) = self.open_finding(NewFinding { found_in, source, text, found_at: None }).await?;
                self.note(deed).await?;
            }
        }
        Ok(())
    }

    async fn sentences(&mut self) -> Result<Sentences, Refusal> {
        let branch = self.who.branch;
        let language = db::branches::find(self, branch).await?.and_then(|one| Language::from_tag(&one.language));
        Ok(Sentences(Words::new(language.unwrap_or_default())))
    }
}

/// What the program itself writes into a finding, in the language of the branch.
struct Sentences(Words);

impl Sentences {
    fn out_of_date(&self, record: &InstrumentRecord, ended_on: Date) -> String {
        let values = [("code", (&record.instrument.code).into()), ("ended", self.0.date(ended_on).into())];
        self.0.tv("finding-out-of-date", &values)
    }
}

fn changes(old: &Instrument, new: &NewInstrument) -> Vec<String> {
    let compared = [
        ("code", old.code != new.code),
        ("kind", old.kind != new.kind),
        ("maker", old.maker != new.maker),
        ("type_name", old.type_name != new.type_name),
        ("serial", old.serial != new.serial),
        ("resolution", old.resolution != new.resolution),
        ("standard_uncertainty", old.standard_uncertainty != new.standard_uncertainty),
        ("unit", old.unit != new.unit),
        ("needs_daily_check", old.needs_daily_check != new.needs_daily_check),
    ];
    compared.into_iter().filter(|(_, differs)| *differs).map(|(name, _)| name.to_owned()).collect()
}
