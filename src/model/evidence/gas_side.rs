//! The sums beside nozzle and container: heat, lines, CNG cylinder. Kept with their inputs and the version of the program
//! that made them, so that they can be read years later as they were.

use serde::{Deserialize, Serialize};
use serde_json::Value;

use crate::calc::cylinder::{Contents, Cylinder, Stowage, Stowed};
use crate::calc::decision::Verdict;
use crate::calc::{heat, hose};
use crate::model::coded;

coded! {
    /// What a sizing sum says of the part it speaks of.
    "sizing-verdict" SizingVerdict {
        /// Enough, with its uncertainty.
        Holds = "holds",
        /// Too near to tell, or beyond what is usual.
        Doubtful = "doubtful",
        /// Too small.
        Fails = "fails",
        /// What it would be held against is not known.
        NotJudged = "not-judged",
    }
}

impl SizingVerdict {
    /// The worst of what a heat sheet says.
    pub fn of_heat(found: &heat::Found) -> Self {
        let margin = found.margin_k;
        match found.judged.map(|judged| judged.verdict) {
            Some(Verdict::Fail) => Self::Fails,
            // Changing over below the dew temperature lets the rail rain.
            _ if margin.is_some_and(|margin| margin < 0.0) => Self::Fails,
            Some(Verdict::CannotTell) => Self::Doubtful,
            _ if margin.is_some_and(|margin| margin < heat::USUAL_MARGIN_K) => Self::Doubtful,
            Some(Verdict::Pass) => Self::Holds,
            None => Self::NotJudged,
        }
    }

    /// The worst of some lines.
    pub fn of_lines(found: &[hose::LineFound]) -> Self {
        let has = |fit: hose::Fit| found.iter().any(|line| line.fit == fit);
        match () {
            () if has(hose::Fit::TooNarrow) => Self::Fails,
            () if has(hose::Fit::Near) => Self::Doubtful,
            () if has(hose::Fit::WideEnough) => Self::Holds,
            () => Self::NotJudged,
        }
    }
}

/// A heat sheet.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct HeatSizing {
    /// Inputs of the sum.
    pub inputs: Value,
    /// Results of the sum.
    pub results: Value,
    /// Where each input comes from.
    pub origins: Value,
    /// Heat at rated power, kW.
    pub heat_kw: f64,
    /// Coolant that carries it, L/min.
    pub coolant_l_min: f64,
    /// What the sum says.
    pub verdict: SizingVerdict,
    /// Version of the program that computed it.
    pub program_version: String,
}

/// What was typed for a heat sheet, and how it was understood.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct HeatInputs {
    /// Name and text of every field.
    pub typed: Vec<(String, String)>,
    /// The question.
    pub asked: heat::Asked,
}

impl HeatSizing {
    /// Inputs and results read back; `None` for a sheet of another program.
    pub fn read_back(&self) -> Option<(HeatInputs, heat::Found)> {
        Some((serde_json::from_value(self.inputs.clone()).ok()?, serde_json::from_value(self.results.clone()).ok()?))
    }
}

/// A sheet of hoses and lines.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct LineSizing {
    /// Inputs of the sum.
    pub inputs: Value,
    /// Results of the sum.
    pub results: Value,
    /// Where each input comes from.
    pub origins: Value,
    /// Mean drop of the hose to the rail, kPa; `None` when it was not asked for.
    pub rail_supply_drop_kpa: Option<f64>,
    /// What the sums say, the worst of them.
    pub verdict: SizingVerdict,
    /// Version of the program that computed it.
    pub program_version: String,
}

/// What was typed for a sheet of lines, and how it was understood.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct LineInputs {
    /// Name and text of every field.
    pub typed: Vec<(String, String)>,
    /// The lines asked for.
    pub lines: Vec<hose::LineAsked>,
}

/// What came out of a sheet of lines, in the order of the lines.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct LineResults {
    /// Each line judged.
    pub lines: Vec<hose::LineFound>,
}

impl LineSizing {
    /// Inputs and results read back; `None` for a sheet of another program.
    pub fn read_back(&self) -> Option<(LineInputs, LineResults)> {
        let inputs: LineInputs = serde_json::from_value(self.inputs.clone()).ok()?;
        let results: LineResults = serde_json::from_value(self.results.clone()).ok()?;
        (inputs.lines.len() == results.lines.len()).then_some((inputs, results))
    }
}

/// A CNG cylinder asked for, with what comes into the vehicle along with it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct CylinderSet {
    /// In the shop's words.
    pub name: String,
    /// Volume, pressure, temperature.
    pub cylinder: Cylinder,
    /// Masses and consumption; `None` when they were not given.
    pub stowage: Option<Stowage>,
}

/// A sheet of CNG cylinders.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct CylinderSizing {
    /// Inputs of the sum.
    pub inputs: Value,
    /// Results of the sum.
    pub results: Value,
    /// Where each input comes from.
    pub origins: Value,
    /// Water volume, L.
    pub volume_l: f64,
    /// Gas in it, kg.
    pub mass_kg: f64,
    /// The same at 15 C and 101.325 kPa, m3.
    pub standard_m3: f64,
    /// Added mass, kg.
    pub added_mass_kg: Option<f64>,
    /// The axle can carry it; `None` when the reserve is not known.
    pub is_within_axle_reserve: Option<bool>,
    /// Version of the program that computed it.
    pub program_version: String,
}

/// What was typed for a sheet of cylinders, and how it was understood.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct CylinderInputs {
    /// Name and text of every field.
    pub typed: Vec<(String, String)>,
    /// The cylinders as asked.
    pub sets: Vec<CylinderSet>,
    /// Which is taken, from 0.
    pub taken: usize,
}

/// What came out of a sheet of cylinders, in the order of the sets.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct CylinderResults {
    /// What each holds, and what that means for the vehicle.
    pub sets: Vec<(Contents, Option<Stowed>)>,
}

impl CylinderSizing {
    /// Inputs and results read back; `None` for a sheet of another program.
    pub fn read_back(&self) -> Option<(CylinderInputs, CylinderResults)> {
        let inputs: CylinderInputs = serde_json::from_value(self.inputs.clone()).ok()?;
        let results: CylinderResults = serde_json::from_value(self.results.clone()).ok()?;
        let is_whole = inputs.taken < inputs.sets.len() && inputs.sets.len() == results.sets.len();
        is_whole.then_some((inputs, results))
    }
}
