//! A measurement's uncertainty from up to eight inputs: combined, with effective degrees of freedom and coverage factor.

use super::answered::Answered;
use super::sum::BenchSum;
use crate::calc::uncertainty::{self, BASIS, Combined, Input, Shape, combine};
use crate::calc::{Error, Outside, reported};
use crate::unit::Unit;
use crate::web::form::{Form, Wrong};
use crate::web::job::origins;
use crate::web::kit::{self, Cell, Choice, Column, Group, Table};
use crate::web::sum::{self, figure};
use crate::words::Words;

/// `/bench/uncertainty`.
#[derive(Debug)]
pub struct UncertaintySum;

/// Lines of the form.
const LINES: usize = 8;
/// Below so few effective degrees of freedom the factor is Student's.
const FEW: f64 = 10.0;

/// How what is known of an input was stated.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Stated {
    Standard,
    Expanded,
    Shaped(Shape),
}

const STATED: [(&str, Stated); 5] = [
    ("standard", Stated::Standard),
    ("expanded", Stated::Expanded),
    ("rectangle", Stated::Shaped(Shape::Rectangle)),
    ("triangle", Stated::Shaped(Shape::Triangle)),
    ("arcsine", Stated::Shaped(Shape::Arcsine)),
];

impl Stated {
    fn standard_uncertainty(self, value: f64) -> f64 {
        match self {
            Self::Standard => value,
            Self::Expanded => value / 2.0,
            Self::Shaped(shape) => shape.standard_uncertainty(value),
        }
    }
}

/// One line as read.
#[derive(Debug)]
struct Line {
    name: String,
    input: Input,
    sensitivity: f64,
}

/// What is asked.
#[derive(Debug)]
pub struct Asked {
    result: Option<f64>,
    lines: Vec<Line>,
}

fn of(line: usize, field: &str) -> String {
    format!("inputs[{line}][{field}]")
}

fn is_empty(form: &Form, line: usize) -> bool {
    // What the list of shapes opens with is no entry.
    ["name", "estimate", "value", "sensitivity", "freedom"]
        .iter()
        .all(|field| form.value(&of(line, field)).trim().is_empty())
}

fn line(w: &Words, form: &mut Form, at: usize) -> Option<Line> {
    let name = form.opt_text(&of(at, "name"), 60);
    let name = name.unwrap_or_else(|| w.tv("says-uncertainty-input", &[("n", w.number(at as f64 + 1.0, 0).into())]));
    let estimate = form.opt_number(&of(at, "estimate"), Unit::One, -1e12..=1e12);
    let value = form.number(&of(at, "value"), Unit::One, 0.0..=1e12);
    let text = form.choice::<String>(&of(at, "stated"));
    let stated = text.and_then(|text| STATED.iter().find(|(key, _)| *key == text).map(|(_, stated)| *stated));
    if stated.is_none() && form.wrong(&of(at, "stated")).is_none() {
        form.fail(&of(at, "stated"), Wrong::NotAChoice);
    }
    let sensitivity = form.opt_number(&of(at, "sensitivity"), Unit::One, -1e12..=1e12);
    let degrees_of_freedom = form.opt_number(&of(at, "freedom"), Unit::One, 1.0..=1e9);
    let standard_uncertainty = stated?.standard_uncertainty(value?);
    let input = Input { estimate: estimate.unwrap_or(0.0), standard_uncertainty, degrees_of_freedom };
    // Left empty: the result is the input, or the sum of the inputs.
    Some(Line { name, input, sensitivity: sensitivity.unwrap_or(1.0) })
}

fn table(w: &Words, lines: &[Line], combined: f64) -> Table {
    let row = |line: &Line| {
        let added = (line.sensitivity * line.input.standard_uncertainty).abs();
        let share = if combined > 0.0 { 100.0 * (added / combined).powi(2) } else { 0.0 };
        let freedom = line.input.degrees_of_freedom;
        vec![
            Cell::new(line.name.clone()),
            Cell::new(figure(w, line.input.standard_uncertainty)),
            Cell::new(figure(w, line.sensitivity)),
            Cell::new(figure(w, added)),
            Cell::new(freedom.map_or_else(|| "∞".to_owned(), |freedom| figure(w, freedom))),
            Cell::new(w.number(share, 1)),
        ]
    };
    let mut columns = vec![Column::text(w.t("budget-column-quantity"))];
    columns.extend(
        ["u", "sensitivity", "added", "freedom", "share"]
            .map(|name| Column::number(w.head(format!("says-uncertainty-column-{name}")))),
    );
    Table { w: *w, caption: w.t("says-uncertainty-budget"), columns, rows: lines.iter().map(row).collect() }
}

/// Value and expanded uncertainty with no more digits than they have.
fn said(w: &Words, value: f64, expanded: f64) -> Result<String, Outside> {
    let both = reported::reported(value, expanded)?;
    let (value, expanded) = (w.number(both.value, both.decimals), w.number(both.expanded_uncertainty, both.decimals));
    Ok(format!("{value} ± {expanded}"))
}

fn coverage(combined: &Combined) -> Result<f64, Outside> {
    match combined.effective_degrees_of_freedom {
        Some(few) if few < FEW => combined.coverage_factor(0.95),
        _ => Ok(2.0),
    }
}

impl BenchSum for UncertaintySum {
    const KEY: &'static str = "uncertainty";
    const SCOPE: &'static str = "bench-uncertainty";
    // The end gauge of JCGM 100:2008, H.1, first order: u 32 nm, 16 effective degrees of freedom (`gum_examples.csv`).
    const EXAMPLE: &'static [(&'static str, &'static str)] = &[
        ("result", "50000838"),
        ("inputs[0][name]", "Standard"),
        ("inputs[0][value]", "25"),
        ("inputs[0][stated]", "standard"),
        ("inputs[0][freedom]", "18"),
        ("inputs[1][name]", "Difference, repeated"),
        ("inputs[1][value]", "5.8"),
        ("inputs[1][stated]", "standard"),
        ("inputs[1][freedom]", "24"),
        ("inputs[2][name]", "Difference, random"),
        ("inputs[2][value]", "3.9"),
        ("inputs[2][stated]", "standard"),
        ("inputs[2][freedom]", "5"),
        ("inputs[3][name]", "Difference, systematic"),
        ("inputs[3][value]", "6.7"),
        ("inputs[3][stated]", "standard"),
        ("inputs[3][freedom]", "8"),
        ("inputs[4][name]", "Difference of expansion"),
        ("inputs[4][value]", "0.000001"),
        ("inputs[4][stated]", "rectangle"),
        ("inputs[4][sensitivity]", "5000062.3"),
        ("inputs[4][freedom]", "50"),
        ("inputs[5][name]", "Difference of temperature"),
        ("inputs[5][value]", "0.05"),
        ("inputs[5][stated]", "rectangle"),
        ("inputs[5][sensitivity]", "575.00716"),
        ("inputs[5][freedom]", "2"),
    ];
    type Asked = Asked;

    fn openings() -> Vec<origins::Default> {
        (0..LINES).map(|at| (of(at, "stated"), "standard".to_owned(), "practice")).collect()
    }

    fn groups(w: &Words, form: &Form) -> Vec<Group> {
        let stated = STATED.map(|(key, _)| Choice::new(key, w.t(format!("uncertainty-stated-{key}"))));
        let number = |name: String| kit::number(form, w, name);
        let row = |at: usize| {
            vec![
                kit::text(form, w, of(at, "name")),
                number(of(at, "estimate")),
                number(of(at, "value")),
                kit::choice(form, w, of(at, "stated"), &stated),
                number(of(at, "sensitivity")),
                number(of(at, "freedom")),
            ]
        };
        let columns = ["name", "estimate", "value", "stated", "sensitivity", "freedom"];
        let columns = columns.map(|name| w.t(format!("bench-uncertainty-{name}")));
        vec![
            Group::new(w.t("bench-uncertainty-group-result"), vec![number("result".to_owned()).optional()]),
            Group::table(
                "inputs",
                w.t("bench-uncertainty-group-inputs"),
                columns.into(),
                (0..LINES).map(row).collect(),
            )
            .noted(w.t("bench-uncertainty-note-inputs")),
        ]
    }

    fn read(w: &Words, form: &mut Form) -> Option<Asked> {
        let result = form.opt_number("result", Unit::One, -1e15..=1e15);
        let mut lines = Vec::new();
        for at in 0..LINES {
            if !is_empty(form, at) {
                lines.extend(line(w, form, at));
            }
        }
        if lines.is_empty() && form.sound().is_some() {
            form.fail(&of(0, "value"), Wrong::Empty);
        }
        Some(Asked { result, lines })
    }

    fn answer(w: &Words, form: &mut Form, asked: &Asked) -> Option<Answered> {
        let inputs: Vec<Input> = asked.lines.iter().map(|line| line.input).collect();
        let sensitivities: Vec<f64> = asked.lines.iter().map(|line| line.sensitivity).collect();
        // Without a result of its own: the inputs times their sensitivities, right where the formula is a sum.
        let sum: f64 = asked.lines.iter().map(|line| line.sensitivity * line.input.estimate).sum();
        let value = asked.result.unwrap_or(sum);
        let found = combine(&inputs, &sensitivities, &[]).and_then(|combined| {
            let k = coverage(&combined)?;
            Ok((combined, k, said(w, value, k * combined.standard_uncertainty)?))
        });
        let (combined, k, said) = match found {
            Ok(found) => found,
            Err(outside) => {
                sum::refuse(w, form, &Error::Outside(outside), "result", |_| of(0, "value"));
                return None;
            }
        };
        let u = combined.standard_uncertainty;
        let freedom = combined.effective_degrees_of_freedom;
        Some(
            Answered::new(w)
                .main("says-uncertainty-result", said)
                .main("says-uncertainty-combined", figure(w, u))
                .main("says-uncertainty-k", w.number(k, 2))
                .main("says-uncertainty-expanded", figure(w, k * u))
                .results(vec![(
                    "says-uncertainty-freedom",
                    Some(freedom.map_or_else(|| "∞".to_owned(), |freedom| w.number(freedom, 1))),
                )])
                .table(table(w, &asked.lines, u))
                .steps(&uncertainty::steps(&inputs, &sensitivities, &combined, k))
                .note(w.t("says-uncertainty-note"))
                .basis(&BASIS),
        )
    }
}
