//! The job file's own pieces: its head, the stage rail, the proof list.

use askama::Template;

use super::{Mark, already_escaped};
use crate::words::Words;

/// What every page of a job file shows around the open stage. All texts are ready words.
#[derive(Debug, Clone)]
pub struct JobSheet {
    /// "2026-0147".
    pub number: String,
    /// "Conversion, LPG".
    pub kind: String,
    /// "Bay 2, since Tuesday".
    pub place: String,
    /// "Corvane Pilot 1.6, 2014".
    pub vehicle: String,
    pub vehicle_href: String,
    /// VIN, power, engine cylinders, odometer; shown in one line, parted by dots.
    pub facts: Vec<String>,
    /// "Keeper: Ilse Marrow, 0555 0142".
    pub keeper: String,
    pub plate: String,
    /// The job stands still, was cancelled or is closed: what and why.
    pub standing: Option<(Mark, String)>,
    /// How its estimate stands, where one is written: mark, words, address.
    pub estimate: Option<(Mark, String, String)>,
    pub rail: Rail,
    pub proofs: ProofList,
    /// The caution of the rule set for this stage.
    pub caution: String,
}

/// The row of stages.
#[derive(Debug, Clone, Template)]
#[template(path = "kit/rail.html")]
pub struct Rail {
    pub w: Words,
    pub stops: Vec<Stop>,
}

/// How far a stage is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StopState {
    Done,
    Now,
    ToCome,
}

/// One stage.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stop {
    pub name: String,
    pub href: String,
    pub met: usize,
    pub all: usize,
    pub state: StopState,
    /// This stage's page is the one shown.
    pub is_open: bool,
}

impl StopState {
    /// Its class and, behind `rail-`, its word.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Done => "done",
            Self::Now => "now",
            Self::ToCome => "to-come",
        }
    }
}

impl Rail {
    fn done(&self) -> usize {
        self.stops.iter().filter(|stop| stop.state == StopState::Done).count()
    }

    fn count(&self, stop: &Stop) -> String {
        self.w.tv("rail-count", &[("met", stop.met.into()), ("all", stop.all.into())])
    }

    fn summary(&self) -> String {
        self.w.tv("rail-summary", &[("done", self.done().into()), ("all", self.stops.len().into())])
    }

    /// The stage a phone shows while the list is folded.
    fn current(&self) -> Option<&Stop> {
        let by = |wanted: fn(&Stop) -> bool| self.stops.iter().find(|stop| wanted(stop));
        by(|stop| stop.is_open).or_else(|| by(|stop| stop.state == StopState::Now)).or_else(|| self.stops.last())
    }
}

/// The proofs of a job: what stops the paper first, then what is missing, then what is met.
#[derive(Debug, Clone, Template)]
#[template(path = "kit/proofs.html")]
pub struct ProofList {
    pub w: Words,
    /// "Proofs for the certificate".
    pub title: String,
    pub proofs: Vec<Proof>,
}

/// One proof.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Proof {
    pub mark: Mark,
    pub title: String,
    /// The field that fills it.
    pub href: Option<String>,
    /// Why, who, when.
    pub note: String,
    /// The way on, said in words, and where it leads.
    pub way_on: Option<(String, String)>,
}

/// So many settled proofs are shown unasked.
const FEW: usize = 6;

impl ProofList {
    /// A list in the order a person works through it.
    pub fn new(w: Words, title: String, mut proofs: Vec<Proof>) -> Self {
        proofs.sort_by_key(Proof::order);
        Self { w, title, proofs }
    }

    fn count(&self, wanted: impl Fn(&Proof) -> bool) -> usize {
        self.proofs.iter().filter(|proof| wanted(proof)).count()
    }

    /// What stops or is missing.
    fn open(&self) -> &[Proof] {
        &self.proofs[..self.count(Proof::is_open)]
    }

    /// The rest, folded while it is long: a long job reads at one glance.
    fn settled(&self) -> &[Proof] {
        &self.proofs[self.count(Proof::is_open)..]
    }

    fn shows_settled(&self) -> bool {
        self.settled().len() <= FEW
    }

    fn settled_words(&self) -> String {
        self.w.tn("proofs-settled", self.settled().len().try_into().unwrap_or(i64::MAX))
    }

    /// "29 of 37 met. 8 to go, 1 stops the paper."
    fn summary(&self) -> String {
        let open = self.count(Proof::is_open);
        let stops = self.count(|proof| proof.mark == Mark::Stops);
        let met = self.proofs.len() - open;
        let first = self.w.tv("proofs-summary", &[("met", met.into()), ("all", self.proofs.len().into())]);
        let second = match (open, stops) {
            (_, 0) => self.w.tn("proofs-to-go", open.try_into().unwrap_or(i64::MAX)),
            _ => self.w.tv("proofs-to-go-and-stops", &[("n", open.into()), ("stops", stops.into())]),
        };
        format!("{first} {second}")
    }
}

impl Proof {
    const fn is_open(&self) -> bool {
        matches!(self.mark, Mark::Stops | Mark::Missing | Mark::Undecided | Mark::OnTablet)
    }

    const fn order(&self) -> u8 {
        match self.mark {
            Mark::Stops => 0,
            Mark::Missing | Mark::Undecided | Mark::OnTablet => 1,
            Mark::Met | Mark::EnteredLater => 2,
            Mark::Waived => 3,
            Mark::NotApplicable => 4,
        }
    }
}

already_escaped!(Rail, ProofList);
