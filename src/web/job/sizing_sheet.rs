//! The sums of the Sizing stage for the paper of that name: the same words and numbers as on the stage page, because they
//! are made of them.

use super::reckoned::Reckoned;
use super::{JobPage, stage};
use crate::model::evidence::{Entry, Evidence};
use crate::model::paper::sizing_sheet::{CellOnPaper, DutyOnPaper, Piece, SumOnPaper, SumState};
use crate::model::stage::Stage;
use crate::web::kit::{Mark, Table};
use crate::web::nozzle::further;
use crate::web::sum;
use crate::words::{Language, Words};

/// Kinds of sums in the order of the stage.
const ORDER: [&str; 6] =
    ["nozzle-sizing", "heat-sizing", "line-sizing", "container-sizing", "cylinder-sizing", "discharge"];

/// Every recorded sum of the stage, as it stands.
pub fn sums(job: &JobPage) -> Vec<SumOnPaper> {
    let entries = ORDER.iter().filter_map(|kind| job.file.entry(kind, ""));
    entries.filter(|entry| entry.body.stage() == Stage::Sizing).filter_map(|entry| sum_of(job, entry)).collect()
}

/// The same job file in the language of the branch's papers.
pub fn in_language_of_papers(mut job: JobPage) -> JobPage {
    if let Some(language) = Language::from_tag(&job.who.branch.language) {
        job.frame.w = Words::new(language);
    }
    job
}

fn sum_of(job: &JobPage, entry: &Entry) -> Option<SumOnPaper> {
    let w = job.w();
    let reckoned = stage::reckoned(job, entry)?;
    let verdict = reckoned.verdict.as_ref()?;
    let by =
        w.tv("record-by", &[("name", entry.person_name.as_str().into()), ("when", job.when(entry.measured_at).into())]);
    let corrected = match entry.replaces_reason.as_str() {
        "" => String::new(),
        reason => w.tv("sizing-sheet-corrected", &[("reason", reason.into())]),
    };
    let instruments = match job.instrument_codes(&entry.instruments) {
        codes if codes.is_empty() => String::new(),
        codes => w.tv("sizing-sheet-measured-with", &[("codes", codes.into())]),
    };
    Some(SumOnPaper {
        title: w.t(format!("slot-{}", entry.body.kind())),
        recorded: by,
        corrected,
        instruments,
        state: state_of(verdict.mark),
        verdict: plain(&verdict.title),
        reasons: verdict.sentences.iter().map(|sentence| plain(sentence)).collect(),
        duty: duty(&entry.body),
        pieces: pieces(&w, &reckoned),
        notes: reckoned.notes.iter().map(|note| plain(note)).collect(),
    })
}

/// Inputs first, then the steps, then what stands beside them.
fn pieces(w: &Words, reckoned: &Reckoned) -> Vec<Piece> {
    let inputs = w.t("sizing-inputs");
    let place = |table: &&Table| match () {
        () if table.caption == inputs => 0,
        () if sum::worked(w, table).is_some() => 1,
        () => 2,
    };
    let mut tables: Vec<&Table> = reckoned.tables.iter().collect();
    // Tables of one place keep their order.
    tables.sort_by_key(place);
    tables.into_iter().map(|table| piece(w, table)).collect()
}

fn piece(w: &Words, table: &Table) -> Piece {
    let caption = table.caption.clone();
    if let Some(steps) = sum::worked(w, table) {
        return Piece::Steps { caption, steps };
    }
    let cell = |cell: &crate::web::kit::Cell| CellOnPaper {
        text: plain(&cell.text),
        second: plain(&cell.second),
        state: cell.mark.map(state_of),
    };
    Piece::Table {
        caption,
        columns: table.columns.iter().map(|column| (column.label.clone(), column.is_number)).collect(),
        rows: table.rows.iter().map(|row| row.iter().map(cell).collect()).collect(),
    }
}

/// Without the signs that make a part heavy on a page.
fn plain(text: &str) -> String {
    text.replace("**", "")
}

fn state_of(mark: Mark) -> SumState {
    match mark {
        Mark::Met => SumState::Holds,
        Mark::Stops => SumState::Fails,
        Mark::Missing => SumState::Open,
        Mark::NotApplicable => SumState::NotApplicable,
        Mark::Undecided | Mark::Waived | Mark::EnteredLater | Mark::OnTablet => SumState::Doubtful,
    }
}

/// The duty of the nozzle taken over the speeds of its engine.
pub fn duty(body: &Evidence) -> Option<DutyOnPaper> {
    let Evidence::NozzleSizing(one) = body else { return None };
    let (inputs, results) = one.read_back()?;
    let used = one.used(results.sheets.get(inputs.taken)?)?;
    let setting = inputs.sets.get(inputs.taken)?.1.setting();
    Some(further::drawn(&used, &setting))
}
