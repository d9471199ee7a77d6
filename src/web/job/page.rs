//! What every page of a job file knows: the file, the rules in force, the proofs as they stand.

use time::{Date, OffsetDateTime};

use super::say;
use crate::db;
use crate::model::Coded;
use crate::model::estimate::Estimates;
use crate::model::evidence::Entry;
use crate::model::ids::{InstrumentId, JobId};
use crate::model::instrument::{InstrumentKind, InstrumentRecord};
use crate::model::job::JobState;
use crate::model::job_file::JobFile;
use crate::model::stage::{Stage, shown_on, stages_of};
use crate::rules::{self, Place, Proof, RuleBook, State};
use crate::web::app::App;
use crate::web::kit::{self, JobSheet, Mark, ProofList, Rail, Stop, StopState};
use crate::web::page::{self, Frame};
use crate::web::visitor::Visitor;
use crate::web::{Error, path};
use crate::words::Words;

/// A job file opened for a visitor.
#[derive(Debug)]
pub struct JobPage {
    /// Frame of the page.
    pub frame: Frame,
    /// Who looks.
    pub who: Visitor,
    /// The file: current entries.
    pub file: JobFile,
    /// Every entry ever made.
    pub history: Vec<Entry>,
    /// The rules in force.
    pub book: RuleBook,
    /// The proofs as they stand.
    pub proofs: Vec<Proof>,
    /// Name of the bay, where one is known.
    pub bay: Option<String>,
    /// What is known of its money.
    pub estimates: Estimates,
    /// Reason of the open hold.
    pub hold: Option<String>,
    /// Now.
    pub now: OffsetDateTime,
    /// The shop's day.
    pub today: Date,
}

impl JobPage {
    /// Opens the file.
    ///
    /// # Errors
    /// [`Error::NotFound`] when the visitor's branch has no such job.
    pub async fn open(app: &App, who: Visitor, id: JobId) -> Result<Self, Error> {
        let mut con = app.read().await?;
        let found = db::job_files::find_with_history(&mut con, who.branch.id, id).await?;
        let (file, history) = found.ok_or(Error::NotFound)?;
        let holds = db::jobs::list_holds(&mut con, id).await?;
        let hold = holds.into_iter().find(|hold| hold.ended_at.is_none()).map(|hold| hold.reason);
        let estimates = db::estimates::find_of_job(&mut con, who.branch.id, id).await?;
        let bay = match file.job.bay_id {
            Some(bay) => db::jobs::bay_name(&mut con, bay).await?,
            None => None,
        };
        let now = app.shop.clock.now();
        let today = who.zone.day_of(now);
        let book = db::rule_books::book_for(&mut con, who.branch.id, &file.vehicle.plate_country, today).await?;
        let zone = who.zone.clone();
        let proofs = rules::assess(&file, &book, today, &|at| zone.day_of(at));
        let frame = who.frame().at(page::Place::Jobs);
        Ok(Self { frame, who, file, history, book, proofs, bay, estimates, hold, now, today })
    }

    /// The words of the visitor's language.
    pub fn w(&self) -> Words {
        self.frame.w
    }

    /// The job's id.
    pub fn id(&self) -> JobId {
        self.file.job.id
    }

    /// An instant on the shop's clock, in words.
    pub fn when(&self, at: OffsetDateTime) -> String {
        self.w().short_date_time(self.who.zone.local(at))
    }

    /// The day of an instant in the shop.
    pub fn day_of(&self, at: OffsetDateTime) -> Date {
        self.who.zone.day_of(at)
    }

    /// Instruments of a kind that are in use, for a choice: "G-03, due 14 Mar".
    pub async fn instruments(&self, app: &App, kind: InstrumentKind) -> Result<Vec<InstrumentRecord>, Error> {
        let mut con = app.read().await?;
        Ok(db::job_files::instruments_of_kind(&mut con, self.who.branch.id, kind).await?)
    }

    /// Codes of these instruments, as printed: "G-03, T-01".
    pub fn instrument_codes(&self, ids: &[InstrumentId]) -> String {
        let code = |id: &InstrumentId| self.file.instrument(*id).map(|record| record.instrument.code.as_str());
        ids.iter().filter_map(code).collect::<Vec<_>>().join(", ")
    }

    /// The address of the stage page on which the work of this stage stands.
    pub fn stage_path(&self, stage: Stage) -> String {
        path::job_stage(self.id(), shown_on(self.file.job.kind, stage))
    }

    /// The stage on which the job stands: the first that has something open, else the last.
    pub fn stands_at(&self) -> Stage {
        let stages = stages_of(self.file.job.kind);
        let is_open =
            |stage: &&Stage| self.proofs.iter().any(|proof| proof.stage == **stage && !proof.state.is_settled());
        stages.iter().find(is_open).or(stages.last()).copied().unwrap_or(Stage::Intake)
    }

    /// Head, rail and proof list, with `open` as the stage shown.
    pub fn sheet(&self, open: Stage) -> JobSheet {
        let (w, job, vehicle, keeper) = (self.w(), &self.file.job, &self.file.vehicle, &self.file.keeper);
        let open = shown_on(job.kind, open);
        let year = vehicle.first_registered_on.map(|on| on.year().to_string()).unwrap_or_default();
        let title = [vehicle.title(), year].into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ");
        let mut facts = Vec::new();
        if !vehicle.identity().is_empty() {
            let key = if vehicle.vin.is_empty() { "job-chassis-number" } else { "job-vin" };
            facts.push(w.tv(key, &[("vin", vehicle.identity().into())]));
        }
        if let (Some(kw), Some(rpm)) = (vehicle.rated_power_kw, vehicle.rated_rpm) {
            let power = w.quantity(kw, 0, "kW");
            facts.push(w.tv("job-power", &[("power", power.into()), ("rpm", w.integer(rpm).into())]));
        }
        if let Some(n) = vehicle.engine_cylinders {
            facts.push(w.tn("job-engine-cylinders", n));
        }
        if let Some(reading) = self.file.readings.last() {
            #[expect(clippy::cast_precision_loss, reason = "an odometer stays far below 2^52")]
            facts.push(w.quantity(reading.km as f64, 0, "km"));
        }
        let contact = if keeper.phone.is_empty() { keeper.mail.as_str() } else { keeper.phone.as_str() };
        JobSheet {
            number: job.number.clone(),
            kind: w.tv(
                "job-kind-and-fuel",
                &[
                    ("kind", w.t(format!("job-kind-{}", job.kind.code())).into()),
                    ("fuel", w.t(format!("fuel-{}", job.fuel.code())).into()),
                ],
            ),
            place: self.place(),
            vehicle: title,
            vehicle_href: path::vehicle(vehicle.id),
            facts,
            keeper: w.tv("job-keeper", &[("name", keeper.name.as_str().into()), ("contact", contact.into())]),
            plate: vehicle.plate.clone(),
            standing: self.standing(),
            estimate: super::estimate::head_line(self),
            rail: self.rail(open),
            proofs: self.proof_list(),
            caution: w.t(format!("caution-{}-{}", open.code(), job.fuel.code())),
        }
    }

    fn place(&self) -> String {
        let w = self.w();
        let since = w.short_date(self.day_of(self.file.job.opened_at));
        match &self.bay {
            Some(bay) => w.tv("job-bay-since", &[("bay", bay.as_str().into()), ("since", since.into())]),
            None => w.tv("job-since", &[("since", since.into())]),
        }
    }

    fn standing(&self) -> Option<(Mark, String)> {
        let (w, job) = (self.w(), &self.file.job);
        let say = |key: &str, reason: &str| w.tv(key, &[("reason", reason.into())]);
        match job.state {
            JobState::Open => None,
            JobState::Held => {
                Some((Mark::Undecided, say("job-standing-held", self.hold.as_deref().unwrap_or_default())))
            }
            JobState::HandedOver => Some((Mark::Met, w.t("job-standing-handed-over"))),
            JobState::Released => Some((Mark::Stops, say("job-standing-released", &job.ended_reason))),
            JobState::Cancelled => Some((Mark::NotApplicable, say("job-standing-cancelled", &job.ended_reason))),
        }
    }

    fn rail(&self, open: Stage) -> Rail {
        let (w, now) = (self.w(), self.stands_at());
        let stop = |stage: &Stage| {
            let (met, all) = rules::tally(self.proofs.iter().filter(|proof| proof.stage == *stage));
            let state = match () {
                () if met == all => StopState::Done,
                () if *stage == now => StopState::Now,
                () => StopState::ToCome,
            };
            Stop {
                name: w.t(format!("stage-{}", stage.code())),
                href: path::job_stage(self.id(), *stage),
                met,
                all,
                state,
                is_open: *stage == open,
            }
        };
        Rail { w, stops: stages_of(self.file.job.kind).iter().map(stop).collect() }
    }

    /// Proofs in words, each with the link to what fills it.
    pub fn proof_list(&self) -> ProofList {
        let w = self.w();
        let proofs = self.proofs.iter().map(|proof| self.proof(proof)).collect();
        ProofList::new(w, w.t("job-proofs-title"), proofs)
    }

    fn proof(&self, proof: &Proof) -> kit::Proof {
        let w = self.w();
        // The mark says already that nothing is recorded.
        let mut note = if proof.why.key == "not-recorded" { Vec::new() } else { vec![say::why(&w, &proof.why)] };
        if proof.state == State::Met {
            note.extend(proof.by.clone());
            note.extend(proof.at.map(|at| self.when(at)));
            if proof.is_entered_later {
                note.push(w.t("state-entered-later"));
            }
        }
        if proof.is_never_waived && !proof.state.is_settled() {
            note.push(w.t("proof-never-waived"));
        }
        note.retain(|part| !part.is_empty());
        let waive = path::job_waiver(self.id(), &proof.id);
        let may_waive = self.who.actor.signatory.is_some()
            && self.file.job.state.is_live()
            && !proof.state.is_settled()
            && !proof.is_never_waived;
        kit::Proof {
            mark: mark_of(proof.state),
            title: say::proof_title(&w, proof),
            href: Some(self.href(&proof.place)),
            note: note.join(" · "),
            way_on: match proof.state {
                State::Waived | State::NotApplicable => Some((w.t("proof-waiver"), waive)),
                _ => may_waive.then(|| (w.t("proof-waive"), waive)),
            },
        }
    }

    /// The address of the form and field that fills a proof.
    pub fn href(&self, place: &Place) -> String {
        let id = self.id();
        match place {
            Place::Vehicle(field) => format!("{}/edit#{field}", path::vehicle(self.file.vehicle.id)),
            Place::Keeper(field) => format!("{}/edit#{field}", path::customer(self.file.keeper.id)),
            Place::Evidence(kind, "", field) => format!("{}#{field}", path::job_slot(id, kind, "")),
            Place::Evidence(kind, subject, field) => format!("{}#{field}", path::job_slot(id, kind, subject)),
            Place::Part(category) => format!("{}?category={category}", path::job_parts(id)),
            Place::Photo(slot) => format!("{}#{slot}", path::job_photos(id)),
            Place::Findings => path::job_findings(id),
            Place::Instrument(instrument) => path::instrument(*instrument),
        }
    }
}

/// The mark of a state.
pub fn mark_of(state: State) -> Mark {
    match state {
        State::Met => Mark::Met,
        State::Missing => Mark::Missing,
        State::Undecided => Mark::Undecided,
        State::Stops => Mark::Stops,
        State::Waived => Mark::Waived,
        State::NotApplicable => Mark::NotApplicable,
    }
}
