//! Instruments that a form may name: those of the shop of one kind each, if it has any.

use super::JobPage;
use super::record::instrument_choices;
use crate::model::evidence::Entry;
use crate::model::ids::InstrumentId;
use crate::model::instrument::{InstrumentKind, InstrumentRecord};
use crate::web::Error;
use crate::web::app::App;
use crate::web::form::{Form, Wrong};
use crate::web::kit::{self, Field};

/// Name of a field and what can be chosen in it.
#[derive(Debug)]
pub struct Instruments(Vec<(&'static str, Vec<InstrumentRecord>)>);

impl Instruments {
    /// The shop's instruments for these fields.
    pub async fn open(app: &App, job: &JobPage, wanted: &[(&'static str, InstrumentKind)]) -> Result<Self, Error> {
        let mut all = Vec::new();
        for (name, kind) in wanted {
            all.push((*name, job.instruments(app, *kind).await?));
        }
        Ok(Self(all))
    }

    /// A choice for each kind that the shop has.
    pub fn fields(&self, job: &JobPage, form: &Form) -> Vec<Field> {
        let there = self.0.iter().filter(|(_, records)| !records.is_empty());
        there
            .map(|(name, records)| kit::choice(form, &job.w(), name, &instrument_choices(job, records)).optional())
            .collect()
    }

    /// Whether the shop has any for this field.
    pub fn has(&self, field: &str) -> bool {
        self.0.iter().any(|(name, records)| *name == field && !records.is_empty())
    }

    /// Fills in what an entry was measured with.
    pub fn fill(&self, entry: &Entry, form: &mut Form) {
        for (name, records) in &self.0 {
            let used = records.iter().find(|record| entry.instruments.contains(&record.instrument.id));
            form.set(name, used.map(|record| record.instrument.id.to_string()).unwrap_or_default());
        }
    }

    /// What was chosen; an id that is none of the choices is noted as wrong.
    pub fn read(&self, form: &mut Form) -> Vec<InstrumentId> {
        let mut chosen = Vec::new();
        for (name, records) in &self.0 {
            let Some(id) = form.opt_choice::<InstrumentId>(name) else { continue };
            if records.iter().any(|record| record.instrument.id == id) {
                chosen.push(id);
            } else {
                form.fail(name, Wrong::NotAChoice);
            }
        }
        chosen
    }
}
