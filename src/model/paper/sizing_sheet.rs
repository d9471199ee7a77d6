//! What a sizing sheet says: every sum of a job's Sizing stage, as the job file shows it, so that a reader can redo each.

use serde::{Deserialize, Serialize};
use time::Date;

use super::{GasFuel, RuleSetOnPaper, ShopBlock};

/// Tag at the head of every sizing sheet's content.
pub const SIZING_SHEET_FORMAT: &str = "fuelwright/sizing-sheet/1";

/// A sizing sheet: numbered by the job, not signed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct SizingSheetContent {
    /// Always [`SIZING_SHEET_FORMAT`].
    pub format: String,
    /// Title, in the paper's language.
    pub title: String,
    /// Who made the sums.
    pub shop: ShopBlock,
    /// Number, on every page.
    pub number: String,
    /// Number of the job file.
    pub job_number: String,
    /// Day of printing.
    pub printed_on: Date,
    /// Make and model.
    pub vehicle: String,
    /// Plate.
    pub plate: String,
    /// VIN or chassis number.
    pub vin: String,
    /// Engine: code, displacement, engine cylinders, power, in words.
    pub engine: String,
    /// Gas.
    pub fuel: GasFuel,
    /// The sums, in the order of the stage.
    pub sums: Vec<SumOnPaper>,
    /// Cautions, from the words and the rule sets.
    pub cautions: Vec<String>,
    /// Rules in force on the day of printing.
    pub rule_sets: Vec<RuleSetOnPaper>,
    /// Language tag.
    pub language: String,
    /// It belongs to the demonstration shop.
    pub is_demonstration: bool,
    /// Version of the program that printed it; each sum names the one that computed it.
    pub software_version: String,
}

/// How a sum or a line of it stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum SumState {
    /// Holds, fits, wide enough.
    Holds,
    /// Near a limit, or not certain.
    Doubtful,
    /// Too small, overloaded.
    Fails,
    /// What it would be held against is not known.
    Open,
    /// Not judged on purpose.
    NotApplicable,
}

/// One sum.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct SumOnPaper {
    /// What it is about: "Nozzle".
    pub title: String,
    /// Who recorded it and when, in words.
    pub recorded: String,
    /// Why it was corrected, in words; empty for a first entry.
    pub corrected: String,
    /// Instruments it rests on, codes; empty for none.
    pub instruments: String,
    /// How it stands.
    pub state: SumState,
    /// The verdict in a few words.
    pub verdict: String,
    /// Reasons and cautions, a sentence each.
    pub reasons: Vec<String>,
    /// Duty over speed; the nozzle's sum only.
    pub duty: Option<DutyOnPaper>,
    /// Steps and tables, in the order of the stage.
    pub pieces: Vec<Piece>,
    /// Uncertainties, version of the program, whatever holds for the whole.
    pub notes: Vec<String>,
}

/// Part of a sum.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "piece", rename_all = "kebab-case")]
pub enum Piece {
    /// The sum step by step.
    Steps {
        /// Heading.
        caption: String,
        /// The steps.
        steps: Vec<StepOnPaper>,
    },
    /// Inputs, candidates, changes.
    Table {
        /// Heading.
        caption: String,
        /// Head of each column, and whether it holds numbers.
        columns: Vec<(String, bool)>,
        /// Rows.
        rows: Vec<Vec<CellOnPaper>>,
    },
}

/// One step of a sum.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct StepOnPaper {
    /// What comes out.
    pub name: String,
    /// The document behind it, or that it is a balance.
    pub source: String,
    /// The formula in the symbols of its source.
    pub formula: String,
    /// The formula with its numbers, or the state that an equation of state answers for.
    pub put_in: String,
    /// A pocket calculator can redo it.
    pub is_arithmetic: bool,
    /// The result with its unit.
    pub result: String,
    /// Its standard uncertainty with its unit; empty where none is known.
    pub spread: String,
}

/// A cell of a table.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct CellOnPaper {
    /// Text.
    pub text: String,
    /// A second, softer line; may be empty.
    pub second: String,
    /// Mark before the text.
    pub state: Option<SumState>,
}

/// The duty of a nozzle over the speeds of its engine.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct DutyOnPaper {
    /// Bore of the nozzle, mm.
    pub size_mm: f64,
    /// Speed, 1/min, and duty.
    pub points: Vec<(f64, f64)>,
    /// Largest duty allowed.
    pub max_duty: f64,
    /// Rated speed and the duty there.
    pub rated: (f64, f64),
    /// Speed at which the largest duty is reached, 1/min.
    pub limit_rpm: f64,
}
