//! Exhaust on petrol and on gas, at idle and raised idle, with lambda reckoned beside the analyser's own.
//!
//! Every value is shown with its uncertainty, its limit, where the limit comes from and by which rule it was held
//! against it. Where our lambda and the analyser's differ by more than they should, both are shown and the reason asked.

use super::facts::{Fact, Facts};
use super::record::{Group, Recorded, Taken, instrument_choices};
use super::{JobPage, exhaust_said};
use crate::calc::lambda::{self, ExhaustFuel};
use crate::model::Coded;
use crate::model::evidence::{Entry, Evidence, Exhaust, ExhaustPoint};
use crate::model::ids::InstrumentId;
use crate::model::instrument::{InstrumentKind, InstrumentRecord};
use crate::model::stage::Stage;
use crate::rules::results;
use crate::unit::Unit;
use crate::web::Error;
use crate::web::app::App;
use crate::web::form::{Form, Wrong};
use crate::web::kit::{self, Field, Verdict};

/// The form of [`Exhaust`].
#[derive(Debug)]
pub struct ExhaustForm {
    on_gas: bool,
    analysers: Vec<InstrumentRecord>,
}

/// The fuels an analyser can be set to.
const SET_TO: [&str; 3] = ["petrol", "lpg", "cng"];

/// What is read at each engine speed: name and range.
const READ: [(&str, f64); 4] =
    [("co_percent", 15.0), ("co2_percent", 25.0), ("o2_percent", 25.0), ("hc_ppm", 60_000.0)];

pub(super) fn of(entry: &Entry) -> Option<&Exhaust> {
    if let Evidence::Exhaust(exhaust) = &entry.body { Some(exhaust) } else { None }
}

/// A gas reading as the sum takes it.
pub(super) fn reading(point: &ExhaustPoint, fuel: ExhaustFuel) -> lambda::Exhaust {
    lambda::Exhaust {
        fuel,
        co_percent: point.co_percent,
        co2_percent: point.co2_percent,
        o2_percent: point.o2_percent,
        hc_ppm_hexane: point.hc_ppm,
        nox_ppm: None,
    }
}

/// The fuel behind a code of [`SET_TO`].
pub(super) fn fuel_of(code: &str) -> Option<ExhaustFuel> {
    match code {
        "petrol" => Some(ExhaustFuel::Petrol),
        "lpg" => Some(ExhaustFuel::Lpg),
        "cng" => Some(ExhaustFuel::Cng),
        _ => None,
    }
}

impl ExhaustForm {
    fn burns(&self, job: &JobPage) -> &'static str {
        if self.on_gas { job.file.job.fuel.code() } else { "petrol" }
    }

    fn point(job: &JobPage, form: &Form, at: &str, rpm_hint: Option<String>) -> Vec<Field> {
        let w = job.w();
        let rpm = kit::number(form, &w, format!("{at}_rpm"));
        let rpm = match rpm_hint {
            Some(hint) => rpm.hinted(&hint),
            None => rpm,
        };
        let read = READ.iter().map(|(name, _)| kit::number(form, &w, format!("{at}_{name}")));
        let own = kit::number(form, &w, format!("{at}_analyser_lambda")).optional();
        std::iter::once(rpm).chain(read).chain([own]).collect()
    }

    fn read_point(form: &mut Form, at: &str) -> Option<ExhaustPoint> {
        let rpm = form.number(&format!("{at}_rpm"), Unit::PerMinute, 200.0..=9_000.0);
        let read = READ.map(|(name, most)| {
            let unit = if name.ends_with("_ppm") { Unit::PartsPerMillion } else { Unit::Percent };
            form.number(&format!("{at}_{name}"), unit, 0.0..=most)
        });
        let analyser_lambda = form.opt_number(&format!("{at}_analyser_lambda"), Unit::One, 0.5..=10.0);
        let [co, co2, o2, hc] = read;
        Some(ExhaustPoint {
            rpm: rpm?,
            co_percent: co?,
            co2_percent: co2?,
            o2_percent: o2?,
            hc_ppm: hc?,
            analyser_lambda,
        })
    }

    /// Both figures of lambda, where they are further apart than they should be.
    fn asks_about_lambda(&self, job: &JobPage, form: &mut Form, seen: &Exhaust) {
        let Some(fuel) = fuel_of(self.burns(job)) else { return };
        for (at, point) in [("idle", &seen.idle), ("raised", &seen.raised)] {
            let ours = lambda::lambda(&reading(point, fuel));
            let (Ok(ours), Some(its)) = (ours, point.analyser_lambda) else { continue };
            if lambda::differs_from_analyser(ours, its) && seen.lambda_note.is_empty() {
                let w = job.w();
                let values = vec![("ours", w.number(ours, 3).into()), ("its", w.number(its, 3).into())];
                form.fail(&format!("{at}_analyser_lambda"), Wrong::Rule("exhaust-lambda-differs", values));
                form.fail("lambda_note", Wrong::Rule("exhaust-lambda-why", Vec::new()));
            }
        }
    }
}

fn fill(form: Form, at: &str, point: &ExhaustPoint) -> Form {
    let own = point.analyser_lambda.map(|own| own.to_string()).unwrap_or_default();
    form.with(&format!("{at}_rpm"), point.rpm.to_string())
        .with(&format!("{at}_co_percent"), point.co_percent.to_string())
        .with(&format!("{at}_co2_percent"), point.co2_percent.to_string())
        .with(&format!("{at}_o2_percent"), point.o2_percent.to_string())
        .with(&format!("{at}_hc_ppm"), point.hc_ppm.to_string())
        .with(&format!("{at}_analyser_lambda"), own)
}

impl Recorded for ExhaustForm {
    const KIND: &'static str = "exhaust";
    const STAGE: Stage = Stage::Proving;

    async fn open(app: &App, job: &JobPage, subject: &str) -> Result<Self, Error> {
        let on_gas = match subject {
            "petrol" => false,
            "gas" => true,
            _ => return Err(Error::NotFound),
        };
        Ok(Self { on_gas, analysers: job.instruments(app, InstrumentKind::GasAnalyser).await? })
    }

    fn blank(&self, _: &JobPage) -> Form {
        Form::blank()
    }

    fn filled(&self, _: &JobPage, entry: &Entry) -> Form {
        let Some(seen) = of(entry) else { return Form::blank() };
        let analyser = entry.instruments.first().map(ToString::to_string).unwrap_or_default();
        let form = Form::blank()
            .with("analyser_id", analyser)
            .with("analyser_set_to", &seen.analyser_set_to)
            .with("coolant_c", seen.coolant_c.to_string())
            .with("lambda_note", &seen.lambda_note);
        fill(fill(form, "idle", &seen.idle), "raised", &seen.raised)
    }

    fn groups(&self, job: &JobPage, form: &Form) -> Vec<Group> {
        let w = job.w();
        let analysers = instrument_choices(job, &self.analysers);
        let set_to = kit::choices(&w, "analyser-set-to", SET_TO);
        vec![
            Group::new(
                "",
                vec![
                    kit::choice(form, &w, "analyser_id", &analysers),
                    kit::choice(form, &w, "analyser_set_to", &set_to),
                    kit::number(form, &w, "coolant_c"),
                ],
            ),
            Group::new(w.t("exhaust-idle"), Self::point(job, form, "idle", None)),
            Group::new(w.t("exhaust-raised"), Self::point(job, form, "raised", exhaust_said::least_rpm(job)))
                .noted(exhaust_said::limits(job)),
            Group::new("", vec![kit::text(form, &w, "lambda_note").optional().wide()]),
        ]
    }

    fn read(&self, job: &JobPage, form: &mut Form) -> Option<Taken> {
        let analyser = form.choice::<InstrumentId>("analyser_id");
        if analyser.is_some_and(|id| !self.analysers.iter().any(|record| record.instrument.id == id)) {
            form.fail("analyser_id", Wrong::NotAChoice);
        }
        let set_to = form.choice::<String>("analyser_set_to");
        if set_to.as_ref().is_some_and(|set| !SET_TO.contains(&set.as_str())) {
            form.fail("analyser_set_to", Wrong::NotAChoice);
        }
        let coolant_c = form.number("coolant_c", Unit::Celsius, -40.0..=150.0);
        let idle = Self::read_point(form, "idle");
        let raised = Self::read_point(form, "raised");
        let lambda_note = form.opt_text("lambda_note", 400).unwrap_or_default();
        if let (Some(idle), Some(raised)) = (&idle, &raised)
            && raised.rpm <= idle.rpm
        {
            form.fail("raised_rpm", Wrong::Rule("exhaust-raised-not-raised", Vec::new()));
        }
        form.sound()?;
        let seen = Exhaust {
            on_gas: self.on_gas,
            analyser_set_to: set_to?,
            coolant_c: coolant_c?,
            idle: idle?,
            raised: raised?,
            lambda_note,
        };
        self.asks_about_lambda(job, form, &seen);
        form.sound()?;
        Some(Taken { instruments: vec![analyser?], ..Taken::of(Evidence::Exhaust(seen)) })
    }

    fn facts(job: &JobPage, entry: &Entry) -> Vec<Fact> {
        let Some(seen) = of(entry) else { return Vec::new() };
        let w = job.w();
        let mut facts = Facts::new(w, Self::KIND)
            .text("analyser_id", job.instrument_codes(&entry.instruments))
            .text("analyser_set_to", w.t(format!("analyser-set-to-{}", seen.analyser_set_to)))
            .number("coolant_c", seen.coolant_c, 0, "°C");
        for (at, point) in [("idle", &seen.idle), ("raised", &seen.raised)] {
            facts = facts.text(&format!("{at}_read"), exhaust_said::point(w, point));
        }
        facts.text("lambda_note", &seen.lambda_note).done()
    }

    fn verdict(job: &JobPage, entry: &Entry) -> Option<Verdict> {
        let seen = of(entry)?;
        let judged = results::exhaust(&job.file, &job.book, entry, seen, &|at| job.day_of(at));
        Some(exhaust_said::verdict(job, seen, &judged))
    }
}
