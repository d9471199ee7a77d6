//! One file a command of the command line.
//!
//! Exit codes: 0 done, 1 a check failed, 2 bad input or cannot start. A command gives an [`Outcome`]; an error is printed
//! as one line on standard error and becomes 2.

use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Parser, Subcommand};

mod backup;
pub mod calc;
mod check;
mod demo;
mod export;
pub mod folder;
mod remind;
mod restore;
mod road;
mod serve;
mod verify;

/// Keeps a workshop's conversion jobs from intake to a signed certificate.
#[derive(Debug, Parser)]
#[command(name = "fuelwright", version, about, arg_required_else_help = true)]
struct Arguments {
    #[command(flatten)]
    place: Place,
    #[command(subcommand)]
    command: Command,
}

/// Which shop is meant.
#[derive(Debug, Clone, clap::Args)]
pub struct Place {
    /// The folder of database, attachments and key.
    #[arg(long, global = true, value_name = "DIR", env = "FUELWRIGHT_DATA", default_value = "fuelwright-data")]
    pub data: PathBuf,
}

#[derive(Debug, Subcommand)]
enum Command {
    /// Serve the app; creates what is missing and prints a one-time set-up code on first run.
    Serve(serve::Serve),
    /// Make an invented shop with jobs in every stage in an empty folder, then serve it.
    Demo(demo::Demo),
    /// Write today's reminders into the outbox and send what is ready.
    Remind(remind::Remind),
    /// Look whether the shop is whole: store, files, log, papers, numbers, clock.
    Check,
    /// Write the whole shop into one file, while it serves.
    Backup(backup::Backup),
    /// Bring a backup back into an empty folder.
    Restore(restore::Restore),
    /// Write every issued paper, the list of standings, the public keys and an index into an empty folder.
    ///
    /// The server must be stopped. The rest of the export (customers, vehicles, job files) comes later.
    Export(export::Export),
    /// Say whether a paper is genuine as issued.
    Verify(verify::Verify),
    /// Do one calculation: a JSON object on standard input, one on standard output.
    Calc(calc::Calc),
    /// Compare logs that were driven on petrol and on gas.
    // Boxed: it has the most arguments of all.
    Road(Box<road::Road>),
}

/// How a command ended, errors aside.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Outcome {
    /// Exit code 0.
    Done,
    /// A check failed: exit code 1.
    Failed,
}

/// Runs the command that the arguments name.
pub fn run() -> ExitCode {
    let Arguments { place, command } = Arguments::parse();
    let outcome = match command {
        Command::Serve(serve) => waiting(serve::run(&place, &serve)),
        Command::Demo(demo) => waiting(demo::run(&place, &demo)),
        Command::Remind(remind) => waiting(remind::run(&place, &remind)),
        Command::Check => waiting(check::run(&place)),
        Command::Backup(asked) => waiting(backup::run(&place, &asked)),
        Command::Restore(asked) => waiting(restore::run(&place, &asked)),
        Command::Export(asked) => waiting(export::run(&place, &asked)),
        Command::Verify(asked) => waiting(verify::run(&place, &asked)),
        Command::Calc(asked) => calc::run(&asked),
        Command::Road(asked) => road::run(&asked),
    };
    match outcome {
        Ok(Outcome::Done) => ExitCode::SUCCESS,
        Ok(Outcome::Failed) => ExitCode::from(1),
        Err(error) => {
            eprintln!("fuelwright: {error:#}");
            ExitCode::from(2)
        }
    }
}

/// Runs a command that waits for disks and networks.
fn waiting(command: impl Future<Output = anyhow::Result<Outcome>>) -> anyhow::Result<Outcome> {
    tokio::runtime::Builder::new_multi_thread().enable_all().build()?.block_on(command)
}
