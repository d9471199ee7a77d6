//! How the driver knows how much gas is left. A level that is only reckoned needs the fill-up routine explained.

use super::JobPage;
use super::facts::{Fact, Facts};
use super::record::{Group, Recorded, Taken};
use crate::model::evidence::{Entry, Evidence, LevelSensing, LevelSensingKind};
use crate::model::stage::Stage;
use crate::web::Error;
use crate::web::app::App;
use crate::web::form::Form;
use crate::web::kit;

/// The form of [`LevelSensing`].
#[derive(Debug)]
pub struct LevelSensingForm;

fn of(entry: &Entry) -> Option<&LevelSensing> {
    if let Evidence::LevelSensing(one) = &entry.body { Some(one) } else { None }
}

impl Recorded for LevelSensingForm {
    const KIND: &'static str = "level-sensing";
    const STAGE: Stage = Stage::Fitting;

    async fn open(_: &App, _: &JobPage, _: &str) -> Result<Self, Error> {
        Ok(Self)
    }

    fn blank(&self, _: &JobPage) -> Form {
        Form::blank()
    }

    fn filled(&self, _: &JobPage, entry: &Entry) -> Form {
        let Some(one) = of(entry) else { return Form::blank() };
        let explained = if one.is_routine_explained { "yes" } else { "no" };
        let asked = one.how == LevelSensingKind::Reckoned;
        Form::blank().with("how", one.how.to_string()).with("is_routine_explained", if asked { explained } else { "" })
    }

    fn groups(&self, job: &JobPage, form: &Form) -> Vec<Group> {
        let w = job.w();
        let how = kit::radios(form, &w, "how", &kit::coded::<LevelSensingKind>(&w));
        vec![Group::new("", vec![how, kit::yes_no(form, &w, "is_routine_explained")])]
    }

    fn read(&self, _: &JobPage, form: &mut Form) -> Option<Taken> {
        let how = form.choice::<LevelSensingKind>("how");
        let is_routine_explained = match how {
            Some(LevelSensingKind::Reckoned) => form.yes_no("is_routine_explained"),
            _ => Some(form.opt_yes_no("is_routine_explained").unwrap_or(false)),
        };
        form.sound()?;
        let body = LevelSensing { how: how?, is_routine_explained: is_routine_explained? };
        Some(Taken::of(Evidence::LevelSensing(body)))
    }

    fn facts(job: &JobPage, entry: &Entry) -> Vec<Fact> {
        let Some(one) = of(entry) else { return Vec::new() };
        let facts = Facts::new(job.w(), Self::KIND).coded("how", one.how);
        match one.how {
            LevelSensingKind::Reckoned => facts.yes_no("is_routine_explained", one.is_routine_explained).done(),
            LevelSensingKind::Sender => facts.done(),
        }
    }
}
