//! `fuelwright calc`: one calculation, one JSON object in, one out.
//!
//! The sums are those of [`crate::calc`]; here they are only read, called and printed. [`WHATS`] is the whole contract;
//! help and checks are made from it.

mod answer;
mod fields;
mod gas;
mod nozzle;
mod proving;
mod read;
mod refused;
mod rows;
mod storage;
mod vehicle;

use std::fmt::Write as _;
use std::io::{Read as _, Write as _};

use anyhow::{Context, anyhow};
use serde_json::Value;

pub use read::MOST_BYTES;
pub use refused::{Found, Refused};
pub use rows::{WHATS, What};

use fields::Fields;

use super::Outcome;

#[derive(Debug, clap::Args)]
#[command(after_help = help())]
pub(super) struct Calc {
    /// What to calculate; the rows are below.
    #[arg(value_name = "WHAT")]
    pub what: Option<String>,
}

pub(super) fn run(asked: &Calc) -> anyhow::Result<Outcome> {
    let mut input = Vec::new();
    // One byte more than is taken, so that too much shows without reading all of it.
    let most = u64::try_from(MOST_BYTES)? + 1;
    let answered = match find(asked.what.as_deref().unwrap_or_default()) {
        Ok(what) => {
            std::io::stdin().lock().take(most).read_to_end(&mut input).context("cannot read standard input")?;
            what.reckon(&input)
        }
        Err(refused) => Err(refused),
    };
    say("calc", &answered)
}

/// Prints what a command answered, or why it did not, as one JSON object; a refusal is told on standard error too.
///
/// # Errors
/// The refusal, and an output that cannot be written.
pub(in crate::cli) fn say(command: &str, answered: &Result<Value, Refused>) -> anyhow::Result<Outcome> {
    let said = match answered {
        Ok(answer) => answer.to_string(),
        Err(refused) => refused.to_json().to_string(),
    };
    writeln!(std::io::stdout(), "{said}").context("cannot write the answer")?;
    match answered {
        Ok(_) => Ok(Outcome::Done),
        Err(refused) => Err(anyhow!("{command}: {}", refused.message)),
    }
}

/// The answer to the object that `input` holds: what the command prints.
///
/// # Errors
/// [`Refused`] for a row that does not exist, an input that is not exactly what the row takes, and a state that has no
/// answer.
pub fn reckon(what: &str, input: &[u8]) -> Result<Value, Refused> {
    find(what)?.reckon(input)
}

fn find(name: &str) -> Result<&'static What, Refused> {
    WHATS.iter().find(|what| what.name == name).ok_or_else(|| {
        let names = WHATS.iter().map(|what| what.name).collect::<Vec<_>>().join(", ");
        let got: String = if name.is_empty() { "nothing".to_owned() } else { name.chars().take(60).collect() };
        Refused::field("WHAT", got, format!("one of {names}"))
    })
}

impl What {
    fn reckon(&self, input: &[u8]) -> Result<Value, Refused> {
        let object = read::object(input)?;
        let fields = Fields::of("", &object, self.takes, self.optional)?;
        let answered = (self.answer)(&fields).and_then(|answer| answer.finish(self.may_be_null));
        answered.map_err(|refused| self.of_own_fields(refused))
    }

    /// A sum may refuse a quantity on its way that nobody typed; then the state is at fault and no field.
    fn of_own_fields(&self, refused: Refused) -> Refused {
        let is_own = refused.field.as_deref().is_none_or(|path| {
            let name = path.split(['.', '[']).next().unwrap_or_default();
            self.takes.contains(&name) || self.optional.contains(&name)
        });
        if is_own { refused } else { Refused { field: None, ..refused } }
    }
}

/// The rows for `--help`.
fn help() -> String {
    let mut text = "One JSON object on standard input, one on standard output. Pressures are absolute, in kPa. A composition is\n\
         an object of mole fractions that sum to 1: methane ethane propane propene n_butane isobutane n_pentane\n\
         nitrogen carbon_dioxide. Fields in brackets may be left out. Every answer also has method, sources, warnings.\n"
        .to_owned();
    for what in &WHATS {
        let optional =
            if what.optional.is_empty() { String::new() } else { format!(" [{}]", what.optional.join("] [")) };
        // Writing to a String cannot fail.
        let _ = write!(
            text,
            "\n{}\n  in   {}{optional}\n  out  {}\n",
            what.name,
            what.takes.join(" "),
            what.gives.join(" ")
        );
    }
    text
}
