//! The road comparison on the calibration record: verdict, what to beware of, pictures, the numbers behind them, what to
//! correct, and the logs it rests on with their checksums.

use super::ink::{CELL, SMALL};
use super::sheet::Sheet;
use super::table::{Cell, Column, Table};
use super::{PaperError, facts, outline, records, road, road_pictures};
use crate::calc::road::Comparison;
use crate::model::paper::calibration_record::RoadOnPaper;
use crate::words::Words;

/// Draws the section; where nothing was compared it says so.
pub(super) fn draw(sheet: &mut Sheet, done: Option<&RoadOnPaper>, words: &Words) -> Result<(), PaperError> {
    let Some(done) = done else {
        sheet.section(&words.t("calibration-record-road"), CELL.leading())?;
        sheet.paragraph(&words.t("calibration-record-no-road"), SMALL)?;
        sheet.end_section();
        return Ok(());
    };
    let found = &done.comparison;
    let mut said = vec![(words.t("calibration-record-road-verdict"), road::title(words, found))];
    said.push((words.t("calibration-record-road-phase"), done.phase.clone()));
    said.push((words.t("calibration-record-road-rows"), road::rows(words, found)));
    facts::section(sheet, &words.t("calibration-record-road"), &said)?;
    let alarms = road::lean_at_load(words, found).into_iter().chain(road::nozzle(words, found));
    for sentence in alarms.chain(road::sentences(words, found)).chain(road::warnings(words, found)) {
        sheet.paragraph(&sentence, CELL)?;
    }
    records::recorded_line(sheet, &done.recorded, words)?;
    for picture in road_pictures::all(words, found) {
        sheet.gap(6.0);
        super::drawing::draw(sheet, &picture)?;
    }
    cells(words, found).section(sheet, &words.t("road-cells"), &words.t("calibration-record-road-no-cells"))?;
    if !found.trims.is_empty() {
        trims(words, found).section(sheet, &words.t("road-trims"), "")?;
    }
    corrections(words, found).section(
        sheet,
        &words.t("calibration-record-road-advice"),
        &words.t("calibration-record-road-no-advice"),
    )?;
    outline::list(sheet, &words.t("road-drive-title"), &road::drive(words, found))?;
    set_aside(words, found).section(sheet, &words.t("road-aside"), &words.t("calibration-record-road-no-aside"))?;
    logs(done, words).section(sheet, &words.t("road-logs-title"), "")
}

fn cells(words: &Words, found: &Comparison) -> Table {
    let mut table = Table::new(vec![
        Column::numbers(words.t("road-column-speed")),
        Column::numbers(road::load_head(words, found)),
        Column::numbers(words.t("road-column-visits")),
        Column::numbers(words.t("road-column-deviation")),
        Column::numbers(words.t("calibration-record-road-interval")),
        Column::words(words.t("road-column-verdict")),
    ]);
    for line in road::cells(words, found) {
        let cells = [line.speed, line.load, line.visits, line.deviation, line.interval, line.said];
        table.row(cells.into_iter().map(Cell::new).collect());
    }
    table
}

fn trims(words: &Words, found: &Comparison) -> Table {
    let mut table = Table::new(vec![
        Column::words(words.t("road-column-regime")),
        Column::numbers(words.t("trims-column-petrol")),
        Column::numbers(words.t("trims-column-gas")),
        Column::numbers(words.t("trims-column-difference")),
    ]);
    for line in road::trims(words, found) {
        table.row(line.into_iter().map(Cell::new).collect());
    }
    table
}

fn corrections(words: &Words, found: &Comparison) -> Table {
    let mut table = Table::new(vec![
        Column::words(words.t("calibration-record-region")),
        Column::numbers(words.t("road-column-correction")),
    ]);
    for (region, percent) in road::correction_lines(words, found) {
        table.row(vec![Cell::new(region), Cell::new(road::signed(words, percent))]);
    }
    table
}

fn set_aside(words: &Words, found: &Comparison) -> Table {
    let mut table =
        Table::new(vec![Column::words(words.t("road-column-why")), Column::numbers(words.t("road-column-rows"))]);
    for (why, rows) in road::set_aside(words, found) {
        table.row(vec![Cell::new(why), Cell::new(words.number(rows as f64, 0))]);
    }
    table
}

fn logs(done: &RoadOnPaper, words: &Words) -> Table {
    let mut table = Table::new(vec![
        Column::words(words.t("calibration-record-file")),
        Column::numbers(words.t("calibration-record-size")),
        Column::words(words.t("road-fuel_known")),
    ]);
    for log in &done.logs {
        let fuel = match log.stated {
            Some(burned) => {
                let fuel = words.t(format!("road-stated-{}", road::fuel_key(burned)));
                words.tv("calibration-record-road-stated", &[("fuel", fuel.into())])
            }
            None => words.t("road-fuel-logged"),
        };
        let sum = words.tv("calibration-record-sum", &[("sum", (&log.sha256).into())]);
        let size = words.quantity(log.bytes as f64 / 1000.0, 1, "kB");
        table.row_over(vec![Cell::new(&log.name), Cell::new(size), Cell::new(fuel)], sum);
    }
    table
}
