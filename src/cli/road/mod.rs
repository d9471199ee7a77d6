//! `fuelwright road`: a road comparison without a job. Logs and the names of their columns in, one JSON object out.
//!
//! Exit codes: 0 whatever the verdicts are, 2 with `{"error": ...}` on standard output where there is nothing to compare.

mod answer;
mod columns;
mod english;

use std::fmt::Write as _;
use std::path::{Path, PathBuf};

use serde_json::Value;

use super::Outcome;
use super::calc::{self, Refused};
use crate::calc::road::{Burned, Plan, Quantity};
use crate::logs::{self, CompareError, Log, LogError};

use columns::Named;

/// Compares the injection time of the petrol computer on petrol and on gas at the same engine operating points.
#[derive(Debug, clap::Args)]
#[command(after_help = help())]
pub(super) struct Road {
    /// The log that was driven on petrol.
    #[arg(long, value_name = "FILE")]
    pub petrol: Option<PathBuf>,
    /// The log that was driven on gas.
    #[arg(long, value_name = "FILE")]
    pub gas: Option<PathBuf>,
    /// One log of both fuels, with a column that says which burned.
    #[arg(long, value_name = "FILE")]
    pub log: Option<PathBuf>,
    /// The column that holds a quantity, in every log.
    #[arg(long, value_name = "QUANTITY=NAME")]
    pub column: Vec<String>,
    /// The same for the petrol log alone.
    #[arg(long, value_name = "QUANTITY=NAME")]
    pub petrol_column: Vec<String>,
    /// The same for the gas log alone.
    #[arg(long, value_name = "QUANTITY=NAME")]
    pub gas_column: Vec<String>,
    /// What the fuel column says while gas burns; may be given several times.
    #[arg(long, value_name = "WORD")]
    pub gas_word: Vec<String>,
    /// What the closed-loop column says while the oxygen sensor steers; may be given several times.
    #[arg(long, value_name = "WORD")]
    pub closed_word: Vec<String>,
}

/// A log as it was named.
struct Given<'a> {
    flag: &'static str,
    path: &'a Path,
    stated: Option<Burned>,
}

pub(super) fn run(asked: &Road) -> anyhow::Result<Outcome> {
    calc::say("road", &compare(asked))
}

fn compare(asked: &Road) -> Result<Value, Refused> {
    let given = given(asked)?;
    let every = columns::named("--column", &asked.column)?;
    let petrol = columns::named("--petrol-column", &asked.petrol_column)?;
    let gas = columns::named("--gas-column", &asked.gas_column)?;
    let mut logs = Vec::with_capacity(given.len());
    for one in &given {
        let own = match one.stated {
            Some(Burned::Petrol) => Some(&petrol),
            Some(Burned::Gas) => Some(&gas),
            None => None,
        };
        let mut names = every.clone();
        names.extend(own.cloned().unwrap_or_default());
        lacks(&names, one)?;
        logs.push(log(one, &names, asked)?);
    }
    match logs::compare_and_tell(&logs, Plan::default()) {
        Ok((comparison, tallies)) => {
            let told = given.iter().map(|one| one.path).zip(&tallies);
            Ok(answer::of(&comparison, &told.collect::<Vec<_>>()))
        }
        Err(error) => Err(refusal(&error, &given)),
    }
}

/// The logs, of which there are two or one.
fn given(asked: &Road) -> Result<Vec<Given<'_>>, Refused> {
    const TAKES: &str = "--petrol FILE and --gas FILE, or --log FILE";
    let one = |flag, path, stated| Given { flag, path, stated };
    match (asked.petrol.as_deref(), asked.gas.as_deref(), asked.log.as_deref()) {
        (Some(petrol), Some(gas), None) => {
            Ok(vec![one("--petrol", petrol, Some(Burned::Petrol)), one("--gas", gas, Some(Burned::Gas))])
        }
        (None, None, Some(log)) if asked.petrol_column.is_empty() && asked.gas_column.is_empty() => {
            Ok(vec![one("--log", log, None)])
        }
        (None, None, Some(_)) => Err(Refused::field(
            if asked.petrol_column.is_empty() { "--gas-column" } else { "--petrol-column" },
            "given with --log",
            "--petrol FILE and --gas FILE beside it; one log takes --column",
        )),
        (Some(_), None, None) => Err(Refused::field("--gas", "nothing", TAKES)),
        (None, Some(_), None) => Err(Refused::field("--petrol", "nothing", TAKES)),
        (None, None, None) => Err(Refused::field("--log", "nothing", TAKES)),
        _ => Err(Refused::field("--log", "given beside --petrol or --gas", TAKES)),
    }
}

/// Says what is not named and cannot be done without.
fn lacks(names: &Named, one: &Given<'_>) -> Result<(), Refused> {
    let needed = Quantity::ALL
        .into_iter()
        .filter(|quantity| quantity.is_needed() || (*quantity == Quantity::Fuel && one.stated.is_none()));
    for quantity in needed {
        if !names.contains_key(&quantity) {
            let code = quantity.code();
            let message = format!("no column of {} is named for {code}; it takes --column {code}=NAME", one.flag);
            return Err(Refused::field("--column", format!("nothing for {code}"), format!("--column {code}=NAME"))
                .saying(message));
        }
    }
    Ok(())
}

fn log(one: &Given<'_>, names: &Named, asked: &Road) -> Result<Log, Refused> {
    let layout = logs::look(one.path).map_err(|error| unreadable(one, &error))?;
    let mut wanted = columns::matched(names, &layout, one.path)?;
    wanted.gas_words.clone_from(&asked.gas_word);
    wanted.closed_words.clone_from(&asked.closed_word);
    Ok(Log { path: one.path.to_owned(), layout, wanted, stated: one.stated })
}

fn unreadable(one: &Given<'_>, error: &LogError) -> Refused {
    let path = one.path.display().to_string();
    let message = format!("{} is {path}: {error}", one.flag);
    Refused::field(one.flag, path, "a log of delimited text or an XLSX workbook that can be read").saying(message)
}

fn refusal(error: &CompareError, given: &[Given<'_>]) -> Refused {
    let flag = |log: &usize| given.get(*log).map_or("--log", |one| one.flag);
    let message = error.to_string();
    match error {
        CompareError::Log { log, error } => match given.get(*log) {
            Some(one) => unreadable(one, error),
            None => Refused::state("a log that cannot be read", "a log", message),
        },
        CompareError::Same { other, .. } => {
            Refused::field(flag(other), "the same recording as on the other side", "a log driven on the other fuel")
                .saying(message)
        }
        CompareError::FuelUnknown { log } => {
            Refused::field(flag(log), "a log without a fuel column", "--column fuel=NAME").saying(message)
        }
        CompareError::Refused(refused) => {
            Refused::state(refused.key(), "logs of both fuels that can be compared", message)
        }
    }
}

/// What `--help` says behind the arguments.
fn help() -> String {
    let mut text = "Quantities, and the units a column of each is read in:\n".to_owned();
    for quantity in Quantity::ALL {
        let units = logs::units_taken(quantity).join(", ");
        let units = if units.is_empty() { "a word or a number".to_owned() } else { units };
        // Writing to a String cannot fail.
        let _ = writeln!(text, "  {:<14}{units}", quantity.code());
    }
    text + "time_s, rpm and petrol_ms are needed, and fuel with --log.\n\n\
        NAME is the name in the log's head, whole or without a unit in brackets behind it. The unit is the one that the\n\
        head, a row of units or the cells say, else the first above. NAME followed by a unit in brackets states it:\n\
        --column \"manifold_kpa=MAP [mbar]\". NAME*FACTOR scales by hand: --column time_s=T*0.001.\n\n\
        Logs are comma-, semicolon-, tab-, bar- or blank-delimited text, or XLSX. Times are numbers, clock times or dates\n\
        with a clock time. A blank cell takes its column's last value for a second.\n\n\
        Without --gas-word plain words mean gas (gas, LPG, CNG, ...), and 1 where the column holds nothing but 0 and 1.\n\
        Without --closed-word plain words mean closed loop (closed, on, yes, ...); numbers are fuel system status codes of\n\
        SAE J1979 (2 is closed) where 2, 4, 8 or 16 occurs, else 1 is closed.\n\n\
        A comparison shows where gas is lean or rich against petrol. It proves nothing in open loop, at full load above\n\
        all; there the mixture has to be measured. Work on gas systems belongs to people licensed for it."
}
