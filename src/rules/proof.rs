//! A proof as it stands: met, missing, undecided, failed, waived. Reasons are keys with values; the sentences are in
//! the language files behind `why-`.

use time::{Date, OffsetDateTime};

use super::line::{Deadline, ProofLine, SetName};
use crate::model::coded;
use crate::model::ids::InstrumentId;
use crate::model::job::JobKind;
use crate::model::stage::{Stage, shown_on};

coded! {
    /// How a proof stands.
    "proof-state" State {
        /// Fails: no certificate like this.
        Stops = "stops",
        /// Recorded, but it decides nothing yet.
        Undecided = "undecided",
        /// Not recorded.
        Missing = "missing",
        /// Met.
        Met = "met",
        /// A signatory lets it pass.
        Waived = "waived",
        /// It does not apply to this vehicle.
        NotApplicable = "not-applicable",
    }
}

impl State {
    /// The paper may go out as far as this proof is concerned.
    pub fn is_settled(self) -> bool {
        matches!(self, Self::Met | Self::Waived | Self::NotApplicable)
    }
}

/// A value inside a reason.
#[derive(Debug, Clone, PartialEq)]
pub enum Arg {
    /// Text as recorded.
    Text(String),
    /// A number with so many decimals.
    Number(f64, u8),
    /// A number with so many decimals, and the symbol of the unit it is kept in.
    Quantity(f64, u8, &'static str),
    /// A day.
    Date(Date),
    /// A member of a closed list: list, code.
    Code(&'static str, &'static str),
    /// A language key of its own.
    Key(String),
}

/// A reason: a key, and what to put into its sentence.
#[derive(Debug, Clone, PartialEq)]
pub struct Why {
    /// Key behind `why-`.
    pub key: &'static str,
    /// Values by name.
    pub args: Vec<(&'static str, Arg)>,
}

impl Why {
    /// A reason without values.
    pub fn plain(key: &'static str) -> Self {
        Self { key, args: Vec::new() }
    }

    /// The same with one value more.
    #[must_use]
    pub fn with(mut self, name: &'static str, arg: Arg) -> Self {
        self.args.push((name, arg));
        self
    }

    /// The same with a number more.
    #[must_use]
    pub fn number(self, name: &'static str, value: f64, decimals: u8) -> Self {
        self.with(name, Arg::Number(value, decimals))
    }

    /// The same with a quantity more, in the unit it is kept in.
    #[must_use]
    pub fn quantity(self, name: &'static str, value: f64, decimals: u8, unit: &'static str) -> Self {
        self.with(name, Arg::Quantity(value, decimals, unit))
    }

    /// The same with the line that decided, and the set it stands in.
    #[must_use]
    pub fn by_line(self, id: &str, set: &SetName) -> Self {
        self.text("line", id).text("set", &set.title)
    }

    /// The same with a text more.
    #[must_use]
    pub fn text(self, name: &'static str, value: impl Into<String>) -> Self {
        self.with(name, Arg::Text(value.into()))
    }
}

/// Where the thing is recorded that meets a proof: a form and, if known, its field.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Place {
    /// The vehicle's own form.
    Vehicle(&'static str),
    /// The keeper's own form.
    Keeper(&'static str),
    /// A form of evidence: kind, subject, field.
    Evidence(&'static str, &'static str, &'static str),
    /// The parts of this job; the category to begin with.
    Part(&'static str),
    /// A photo in a slot.
    Photo(String),
    /// The findings of this job.
    Findings,
    /// An instrument.
    Instrument(InstrumentId),
}

/// One proof of a job.
#[derive(Debug, Clone, PartialEq)]
pub struct Proof {
    /// Id of the rule line; language key behind `proof-`.
    pub id: String,
    /// A shop's own title.
    pub title: Option<String>,
    /// Shown on this stage.
    pub stage: Stage,
    /// By when.
    pub before: Deadline,
    /// How it stands.
    pub state: State,
    /// It was measured or looked at, and it is not as it should be. What stops a paper for another reason (an instrument
    /// that is not trusted, a list half answered) has not failed: it shows nothing yet.
    pub has_failed: bool,
    /// It is a test that runs the engine or opens the gas.
    pub is_test: bool,
    /// Why it stands so.
    pub why: Why,
    /// Where to record what meets it.
    pub place: Place,
    /// Who recorded what it rests on.
    pub by: Option<String>,
    /// When that was measured.
    pub at: Option<OffsetDateTime>,
    /// It was written down more than ten minutes after.
    pub is_entered_later: bool,
    /// Nobody may waive it.
    pub is_never_waived: bool,
    /// A signatory may call it not applicable.
    pub may_not_apply: bool,
    /// Document and paragraph.
    pub source: String,
    /// The source was read; else "to be confirmed with your authority".
    pub is_checked: bool,
    /// A custom of the trade, which no authority confirms.
    pub is_practice: bool,
    /// The set that asks for it.
    pub set: SetName,
}

/// What an evaluation says, before it is joined with its line.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Said {
    pub state: State,
    pub has_failed: bool,
    pub why: Why,
    pub place: Place,
    pub by: Option<String>,
    pub at: Option<OffsetDateTime>,
    pub is_entered_later: bool,
}

impl Said {
    pub fn new(state: State, why: Why, place: Place) -> Self {
        Self { state, has_failed: false, why, place, by: None, at: None, is_entered_later: false }
    }

    pub fn met(why: Why, place: Place) -> Self {
        Self::new(State::Met, why, place)
    }

    pub fn missing(place: Place) -> Self {
        Self::new(State::Missing, Why::plain("not-recorded"), place)
    }

    pub fn stops(why: Why, place: Place) -> Self {
        Self::new(State::Stops, why, place)
    }

    /// Measured or looked at, and not as it should be.
    pub fn fails(why: Why, place: Place) -> Self {
        Self { has_failed: true, ..Self::stops(why, place) }
    }

    /// Rests on this entry.
    pub fn on(mut self, entry: &crate::model::evidence::Entry) -> Self {
        self.by = Some(entry.person_name.clone());
        self.at = Some(entry.measured_at);
        self.is_entered_later = entry.is_entered_later();
        self
    }

    /// The proof of a line, on the rail of this kind of job.
    pub fn into_proof(self, line: &ProofLine, kind: JobKind) -> Proof {
        Proof {
            id: line.id.clone(),
            title: line.title.clone(),
            stage: shown_on(kind, line.stage),
            before: line.before,
            state: self.state,
            has_failed: self.has_failed,
            is_test: line.needs.is_test(),
            why: self.why,
            place: self.place,
            by: self.by,
            at: self.at,
            is_entered_later: self.is_entered_later,
            is_never_waived: line.is_never_waived(),
            may_not_apply: line.may_not_apply && !line.is_never_waived(),
            source: line.source.clone(),
            is_checked: line.checked,
            is_practice: line.practice,
            set: line.set.clone(),
        }
    }
}

/// Met (or settled) and asked, of these proofs.
pub fn tally<'a>(proofs: impl IntoIterator<Item = &'a Proof>) -> (usize, usize) {
    proofs.into_iter().fold((0, 0), |(met, all), proof| (met + usize::from(proof.state.is_settled()), all + 1))
}

/// Every proof that is due before issue is settled.
pub fn may_issue(proofs: &[Proof]) -> bool {
    let mut due = proofs.iter().filter(|proof| proof.before == Deadline::Issue).peekable();
    due.peek().is_some() && due.all(|proof| proof.state.is_settled())
}
