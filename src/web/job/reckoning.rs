//! What the forms of the sizing sums share: numbers with their ranges, texts they open with, and what the nozzle sheet
//! of the same job already says.

use super::{JobPage, fuel_mix, origins};
use crate::calc::nozzle::{Asked, Candidate, Sheet};
use crate::model::evidence::{Evidence, NozzleInputs, NozzleResults, NozzleSizing};
use crate::unit::Unit;
use crate::web::form::{Form, Wrong};
use crate::web::kit::{self, Field};

/// A number of a form.
#[derive(Debug, Clone, Copy)]
pub struct Number {
    /// Its name.
    pub name: &'static str,
    /// Its unit.
    pub unit: Unit,
    /// Symbol shown where the unit has none of its own.
    pub symbol: &'static str,
    /// Least and most it takes.
    pub takes: (f64, f64),
    /// It may be left out.
    pub is_optional: bool,
}

/// A number that must be given.
pub const fn needed(name: &'static str, unit: Unit, least: f64, most: f64) -> Number {
    Number { name, unit, symbol: "", takes: (least, most), is_optional: false }
}

impl Number {
    /// The same, left out if one likes.
    pub const fn optional(mut self) -> Self {
        self.is_optional = true;
        self
    }

    /// The same with a symbol behind it.
    pub const fn counted_in(mut self, symbol: &'static str) -> Self {
        self.symbol = symbol;
        self
    }

    /// The symbol of its unit.
    pub fn symbol(&self) -> &'static str {
        if self.symbol.is_empty() { self.unit.symbol() } else { self.symbol }
    }

    /// The value; an empty one that is needed is noted.
    pub fn read(&self, form: &mut Form) -> Option<f64> {
        self.read_at(form, self.name)
    }

    /// The same in a field of another name, such as that of a line.
    pub fn read_at(&self, form: &mut Form, name: &str) -> Option<f64> {
        let value = form.opt_number(name, self.unit, self.takes.0..=self.takes.1);
        if value.is_none() && !self.is_optional {
            form.fail(name, Wrong::Empty);
        }
        value
    }

    /// The field, with a hint that says what it opens with and why.
    pub fn field(&self, job: &JobPage, form: &Form, defaults: &[origins::Default]) -> Field {
        let field = origins::hinted(&job.w(), defaults, kit::number(form, &job.w(), self.name), self.name);
        let field = if self.unit == Unit::One { field.counted_in(self.symbol) } else { field };
        if self.is_optional { field.optional() } else { field }
    }
}

/// Names of numbers.
pub fn names_of(numbers: &[Number]) -> impl Iterator<Item = String> + '_ {
    numbers.iter().map(|number| number.name.to_owned())
}

/// Names and symbols of numbers, for the table of inputs.
pub fn inputs_of(numbers: &[Number]) -> impl Iterator<Item = (String, &'static str)> + '_ {
    numbers.iter().map(|number| (number.name.to_owned(), number.symbol()))
}

/// A form filled with texts.
pub fn filled(texts: impl IntoIterator<Item = (String, String)>) -> Form {
    texts.into_iter().fold(Form::blank(), |form, (name, text)| form.with(&name, text))
}

/// A form as it opens.
pub fn opened(defaults: Vec<origins::Default>) -> Form {
    filled(defaults.into_iter().map(|(name, text, _)| (name, text)))
}

/// Defaults, collected.
#[derive(Debug, Default)]
pub struct Defaults(pub Vec<origins::Default>);

impl Defaults {
    /// One more, unless it is not known.
    pub fn add(&mut self, name: &str, text: Option<String>, origin: &'static str) {
        self.0.extend(text.map(|text| (name.to_owned(), text, origin)));
    }

    /// What is known for certain, else what is usual.
    pub fn known_or(&mut self, name: &str, known: Option<String>, origin: &'static str, usual: &str) {
        match known {
            Some(text) => self.add(name, Some(text), origin),
            None => self.add(name, Some(usual.to_owned()), "practice"),
        }
    }
}

/// The nozzle sheet of the job, from which further sums start.
pub struct FromNozzle {
    one: NozzleSizing,
    inputs: NozzleInputs,
    results: NozzleResults,
}

impl FromNozzle {
    /// The sheet as it stands; none when there is none.
    pub fn of(job: &JobPage) -> Option<Self> {
        let Evidence::NozzleSizing(one) = &job.file.entry("nozzle-sizing", "")?.body else { return None };
        let (inputs, results) = one.read_back()?;
        Some(Self { one: one.clone(), inputs, results })
    }

    /// The set that was taken.
    pub fn asked(&self) -> &Asked {
        &self.inputs.sets[self.inputs.taken].1
    }

    fn sheet(&self) -> &Sheet {
        &self.results.sheets[self.inputs.taken]
    }

    /// The size that was taken, judged.
    pub fn used(&self) -> Option<Candidate> {
        self.one.used(self.sheet())
    }

    /// Gas pressure before the nozzle at rated power, kPa absolute.
    pub fn upstream_kpa(&self) -> f64 {
        self.sheet().rated.upstream_kpa
    }

    /// Rated power and efficiency; none when the sheet began with petrol injection data.
    pub fn power(&self) -> Option<(f64, f64)> {
        match self.asked() {
            Asked::Power(sizing) => Some((sizing.rated_power_kw, sizing.brake_efficiency)),
            Asked::Petrol(_) => None,
        }
    }

    /// Fuel rate at rated power, g/s: the dose of every engine cylinder, once in two revolutions.
    pub fn fuel_rate_g_s(&self) -> f64 {
        let setting = self.asked().setting();
        let dose_mg = self.sheet().found.nozzle().fuel_per_cycle_mg;
        dose_mg * f64::from(setting.engine_cylinders) * setting.rated_rpm / 120.0 / 1e3
    }

    /// The mix as it was chosen there.
    pub fn mix(&self, job: &JobPage) -> Vec<origins::Default> {
        let of_mix = fuel_mix::names(job.file.job.fuel.into());
        let typed = self.inputs.typed.iter().filter(|(name, _)| of_mix.contains(name));
        typed.map(|(name, text)| (name.clone(), text.clone(), "nozzle")).collect()
    }
}
