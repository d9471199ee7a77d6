//! A sheet of hoses and lines shown: verdict with reasons, the lines beside each other, each sum step by step, inputs.

use super::heat_said::shown;
use super::line_sizing::{COMMON, LIQUID, OF_A_LINE, code, lines, name};
use super::origins::{self, Kept};
use super::reckoned::Reckoned;
use super::{JobPage, reckoning, sum};
use crate::calc::hose::{Fit, Line, LineAsked, LineFound, MOST_DROP_KPA, MOST_VELOCITY_M_S, USUAL_VELOCITY_M_S, steps};
use crate::model::evidence::{Evidence, LineInputs, LineResults, LineSizing};
use crate::model::job::Fuel;
use crate::web::kit::{Cell, Column, Mark, Table, Verdict};
use crate::words::{Value, Words};

/// The whole sheet.
pub fn reckoned(job: &JobPage, body: &Evidence) -> Option<Reckoned> {
    let Evidence::LineSizing(one) = body else { return None };
    let (inputs, results) = one.read_back()?;
    let w = job.w();
    let mut tables = vec![beside(&w, &inputs, &results)];
    for (asked, found) in inputs.lines.iter().zip(&results.lines) {
        let caption = w.tv("line-steps", &[("line", w.t(format!("line-{}", code(asked.line))).into())]);
        tables.push(sum::steps(&w, caption, &steps(&asked.hose, &found.drop)));
    }
    tables.extend(inputs_of(job, one, &inputs));
    Some(Reckoned {
        verdict: Some(verdict(&w, one, &inputs, &results)),
        tables,
        notes: vec![
            w.t("line-note-uncertainty"),
            w.tv("sizing-note-version", &[("version", one.program_version.as_str().into())]),
        ],
    })
}

fn verdict(w: &Words, one: &LineSizing, inputs: &LineInputs, results: &LineResults) -> Verdict {
    let (tone, mark) = shown(one.verdict);
    let lines = inputs.lines.iter().zip(&results.lines);
    let mut sentences: Vec<String> = lines.clone().map(|(asked, found)| said(w, asked, found)).collect();
    if lines.clone().any(|(asked, _)| asked.line != Line::Liquid) {
        let values = [
            ("drop", Value::from(w.quantity(MOST_DROP_KPA, 0, "kPa"))),
            ("usual", w.number(USUAL_VELOCITY_M_S, 0).into()),
            ("most", w.quantity(MOST_VELOCITY_M_S, 0, "m/s").into()),
        ];
        sentences.push(w.tv("line-usual", &values));
    }
    if lines.clone().any(|(asked, _)| asked.line == Line::Branch) {
        sentences.push(w.t("line-branches-alike"));
    }
    Verdict { tone, mark, title: w.t(format!("line-title-{}", one.verdict)), sentences }
}

fn said(w: &Words, asked: &LineAsked, found: &LineFound) -> String {
    let (key, drop) = match found.fit {
        Fit::WideEnough => ("line-said-wide", found.drop),
        Fit::Near => ("line-said-near", found.drop),
        Fit::TooNarrow => ("line-said-narrow", found.drop),
        Fit::NotJudged => ("line-said-liquid", found.drop),
    };
    let values = [
        ("line", Value::from(w.t(format!("line-{}", code(asked.line))))),
        ("bore", w.quantity(asked.hose.bore_mm, 1, "mm").into()),
        ("drop", w.quantity(drop.drop_kpa, 2, "kPa").into()),
        ("velocity", w.quantity(drop.velocity_m_s, 1, "m/s").into()),
    ];
    let mut said = w.tv(key, &values);
    if let (Fit::Near | Fit::TooNarrow, Some(least)) = (found.fit, found.least_bore_mm) {
        // Rounded up, so that the bore named is one that does.
        let least = w.quantity((least * 10.0).ceil() / 10.0, 1, "mm");
        said.push(' ');
        said += &w.tv("line-said-least", &[("bore", least.into())]);
    }
    if let Some(peak) = found.peak_velocity_m_s {
        said.push(' ');
        said += &w.tv("line-said-peak", &[("velocity", w.quantity(peak, 0, "m/s").into())]);
    }
    said
}

fn beside(w: &Words, inputs: &LineInputs, results: &LineResults) -> Table {
    let row = |(asked, found): (&LineAsked, &LineFound)| {
        let (mark, word) = match found.fit {
            Fit::WideEnough => (Mark::Met, "wide-enough"),
            Fit::Near => (Mark::Undecided, "near"),
            Fit::TooNarrow => (Mark::Stops, "too-narrow"),
            Fit::NotJudged => (Mark::NotApplicable, "not-judged"),
        };
        let least =
            found.least_bore_mm.map_or_else(|| "–".to_owned(), |mm| w.figure((mm * 10.0).ceil() / 10.0, 1, "mm"));
        vec![
            Cell::new(w.t(format!("line-{}", code(asked.line)))),
            Cell::new(w.figure(asked.hose.bore_mm, 1, "mm")),
            Cell::new(w.number(asked.hose.length_m, 2)),
            Cell::new(w.number(asked.hose.flow_g_s, 2)),
            Cell::new(w.figure(found.drop.drop_kpa, 2, "kPa")),
            Cell::new(w.number(found.drop.velocity_m_s, 1)),
            Cell::new(least),
            Cell::new(w.t(format!("line-fit-{word}"))).marked(mark),
        ]
    };
    let mut columns = vec![Column::text(w.t("line-column-line"))];
    columns.extend(
        ["bore", "length", "flow", "drop", "velocity", "least"]
            .map(|name| Column::number(w.head(format!("line-column-{name}")))),
    );
    columns.push(Column::text(w.t("nozzle-column-verdict")));
    let rows = inputs.lines.iter().zip(&results.lines).map(row).collect();
    Table { w: *w, caption: w.t("line-beside"), columns, rows }
}

fn inputs_of(job: &JobPage, one: &LineSizing, inputs: &LineInputs) -> Option<Table> {
    let w = job.w();
    let mut fields: Vec<(String, &str)> = reckoning::inputs_of(&COMMON).collect();
    if job.file.job.fuel == Fuel::Lpg {
        fields.push((LIQUID.name.to_owned(), LIQUID.symbol()));
    }
    let kept = Kept { scope: "line-sizing", typed: &inputs.typed, origins: &one.origins };
    let composition = inputs.lines.first()?.hose.composition;
    let mut table = origins::table(job, &kept, &composition, &fields);
    for (at, line) in lines(job).iter().enumerate() {
        let of_line: Vec<(String, &str)> =
            OF_A_LINE.iter().map(|(field, unit, ..)| (name(at, field), unit.symbol())).collect();
        let rows = origins::table(job, &kept, &composition, &of_line).rows.into_iter().skip(1);
        // A line that was left out has no bore, and its fittings say nothing.
        if inputs.lines.iter().any(|asked| asked.line == *line) {
            let named = w.t(format!("line-{}", code(*line)));
            table.rows.extend(rows.map(|mut row| {
                row[0].text = format!("{named}: {}", row[0].text);
                row
            }));
        }
    }
    Some(table)
}
