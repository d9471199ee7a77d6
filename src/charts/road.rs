//! What driving on both fuels showed: a small panel for each band of engine speed, load to the right, deviation in per
//! cent upwards, a sign with its interval for each cell, and the band that counts as good behind them.
//!
//! The form of a sign is its verdict: a dot is good, a diamond deviates, a ring is undecided; at the foot of a panel a
//! dash stands where too little was driven, a cross where no sensor steers.

mod sign;

pub use sign::Found;

use super::axis::Scale;
use super::frame::Marked;
use super::{Anchor, Ink, Picture, Point, Stroke, shape};

/// What the picture shows.
#[derive(Debug, Clone, PartialEq)]
pub struct Road {
    /// One a band of engine speed, lowest first.
    pub panels: Vec<Panel>,
    /// Least and greatest load shown.
    pub load: Point,
    /// Half the height of the good band, per cent.
    pub good_percent: f64,
    /// Loads to mark; few, a panel is narrow.
    pub loads: Vec<Marked>,
    /// Deviations to mark, per cent.
    pub percents: Vec<Marked>,
    /// Words of the picture.
    pub words: RoadWords,
}

/// A band of engine speed.
#[derive(Debug, Clone, PartialEq)]
pub struct Panel {
    /// Its name: "2 000–2 500/min".
    pub name: String,
    /// Its cells, by load.
    pub cells: Vec<CellDrawn>,
}

/// A cell of a panel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CellDrawn {
    /// Load in its middle.
    pub load: f64,
    /// What it came to.
    pub found: Found,
}

/// Words of the picture, ready.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RoadWords {
    /// What it is.
    pub title: String,
    /// What it shows.
    pub description: String,
    /// What goes to the right: "Manifold pressure, kPa".
    pub load: String,
    /// What goes upwards: "Deviation, %".
    pub percent: String,
    /// What a dot says.
    pub good: String,
    /// What a diamond says.
    pub deviates: String,
    /// What a ring says.
    pub undecided: String,
    /// What a dash says.
    pub not_enough: String,
    /// What a cross says.
    pub no_feedback: String,
}

const WIDTH: f64 = 720.0;
const LEFT: f64 = 46.0;
const COLUMNS: usize = 3;
const GAP: f64 = 14.0;
const PANEL: Point = ((WIDTH - 8.0 - LEFT - 2.0 * GAP) / 3.0, 132.0);
/// Room of a row: its names above, its marks below.
const ROW: f64 = PANEL.1 + 58.0;
const HEAD: f64 = 50.0;
/// Signs without a number stand this far above the foot of a panel.
const FOOT: f64 = 10.0;
/// Beyond this a deviation is drawn at the edge; the table has its number.
const MOST_PERCENT: f64 = 25.0;

/// The deviations shown, per cent: alike upwards and downwards, with the good band well inside.
pub fn span(panels: &[Panel], good_percent: f64) -> Point {
    let ends = panels.iter().flat_map(|panel| &panel.cells).filter_map(|cell| cell.found.interval());
    let most = ends.fold(1.5 * good_percent, |most, [low, _, high]| most.max(-low).max(high));
    let most = (1.08 * most).min(MOST_PERCENT.max(2.0 * good_percent));
    (-most, most)
}

/// Draws it.
pub fn picture(road: &Road) -> Picture {
    let rows = road.panels.len().div_ceil(COLUMNS).max(1) as f64;
    let mut strokes = vec![Stroke::Text(Ink::Axis, (LEFT, 14.0), Anchor::Start, road.words.percent.clone())];
    for (n, panel) in road.panels.iter().enumerate() {
        let (column, row) = ((n % COLUMNS) as f64, (n / COLUMNS) as f64);
        let corner = (LEFT + column * (PANEL.0 + GAP), HEAD + row * ROW);
        strokes.extend(one(road, panel, corner, n % COLUMNS == 0));
    }
    let foot = HEAD + rows * ROW;
    strokes.push(Stroke::Text(Ink::Axis, (WIDTH - 8.0, foot - 8.0), Anchor::End, road.words.load.clone()));
    let (key, lines) = key(road, foot + 22.0);
    strokes.extend(key);
    let RoadWords { title, description, .. } = road.words.clone();
    Picture { size: (WIDTH, foot + 12.0 + 26.0 * lines), title, description, strokes }
}

fn one(road: &Road, panel: &Panel, (left, top): Point, is_first: bool) -> Vec<Stroke> {
    let (right, bottom) = (left + PANEL.0, top + PANEL.1);
    let (low, high) = span(&road.panels, road.good_percent);
    let x = Scale { low: road.load.0, high: road.load.1, from: left + 6.0, to: right - 6.0 };
    let y = Scale { low, high, from: bottom, to: top };
    let good = [y.place(road.good_percent), y.place(-road.good_percent)];
    let mut strokes = vec![shape::block(Ink::GoodBand, (left, good[0]), (right, good[1]))];
    strokes.extend(good.map(|edge| Stroke::Line(Ink::Frame, (left, edge), (right, edge))));
    strokes.push(Stroke::Line(Ink::Ideal, (left, y.place(0.0)), (right, y.place(0.0))));
    strokes.push(shape::edges(Ink::Frame, (left, top), (right, bottom)));
    strokes.push(Stroke::Text(Ink::Name, (left, top - 8.0), Anchor::Start, panel.name.clone()));
    let shown = |span: (f64, f64), marks: &[Marked]| -> Vec<Marked> {
        marks.iter().filter(|(at, _)| (span.0..=span.1).contains(at)).cloned().collect()
    };
    if is_first {
        for (percent, words) in shown((low, high), &road.percents) {
            strokes.push(Stroke::Text(Ink::Axis, (left - 8.0, y.place(percent) + 4.0), Anchor::End, words));
        }
    }
    for (load, words) in shown(road.load, &road.loads) {
        let place = x.place(load);
        strokes.push(Stroke::Line(Ink::Frame, (place, bottom), (place, bottom + 4.0)));
        strokes.push(Stroke::Text(Ink::Axis, (place, bottom + 18.0), Anchor::Middle, words));
    }
    for cell in &panel.cells {
        let at = x.place(cell.load);
        let Some([low, middle, high]) = cell.found.interval() else {
            strokes.extend(cell.found.sign((at, bottom - FOOT)));
            continue;
        };
        strokes.push(Stroke::Line(cell.found.ink(), (at, y.place(low)), (at, y.place(high))));
        strokes.extend(cell.found.sign((at, y.place(middle))));
    }
    strokes
}

/// What the signs say, those that stand in the picture; and how many lines that takes.
fn key(road: &Road, top: f64) -> (Vec<Stroke>, f64) {
    let words = &road.words;
    let nought = [0.0; 3];
    let all = [
        (Found::Good(nought), &words.good),
        (Found::Deviates(nought), &words.deviates),
        (Found::Undecided(nought), &words.undecided),
        (Found::NotEnough, &words.not_enough),
        (Found::NoFeedback, &words.no_feedback),
    ];
    let is_there = |found: Found| {
        let kind = std::mem::discriminant(&found);
        road.panels.iter().flat_map(|panel| &panel.cells).any(|cell| std::mem::discriminant(&cell.found) == kind)
    };
    let (mut strokes, mut at) = (Vec::new(), (LEFT, top));
    for (n, (found, said)) in all.into_iter().filter(|(found, _)| is_there(*found)).enumerate() {
        // Two a line, so that they have room on a phone.
        at = (LEFT + (n % 2) as f64 * WIDTH / 2.0, top + (n / 2) as f64 * 26.0);
        strokes.extend(found.sign((at.0 + 6.0, at.1 - 4.0)));
        strokes.push(Stroke::Text(Ink::Axis, (at.0 + 18.0, at.1), Anchor::Start, said.clone()));
    }
    (strokes, 1.0 + (at.1 - top) / 26.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn example() -> Road {
        let word = |text: &str| text.to_owned();
        let cell = |load, found| CellDrawn { load, found };
        Road {
            panels: vec![
                Panel {
                    name: word("2 000–2 500/min"),
                    cells: vec![
                        cell(45.0, Found::Good([-1.0, 0.5, 2.0])),
                        cell(55.0, Found::Undecided([1.0, 4.0, 7.0])),
                        cell(65.0, Found::Deviates([6.0, 9.0, 60.0])),
                        cell(75.0, Found::NotEnough),
                        cell(85.0, Found::NoFeedback),
                    ],
                },
                Panel { name: word("2 500–3 000/min"), cells: Vec::new() },
            ],
            load: (40.0, 90.0),
            good_percent: 5.0,
            loads: vec![(40.0, word("40")), (100.0, word("100"))],
            percents: vec![(5.0, word("+5"))],
            words: RoadWords {
                title: word("Deviation"),
                description: word("By speed and load"),
                load: word("kPa"),
                percent: word("%"),
                good: word("good"),
                deviates: word("deviates"),
                undecided: word("undecided"),
                not_enough: word("not enough driving here"),
                no_feedback: word("no feedback here"),
            },
        }
    }

    #[test]
    fn each_verdict_has_a_form_of_its_own_and_its_word() {
        let picture = picture(&example());
        let of = |ink: Ink| {
            let forms = picture.strokes.iter().filter_map(move |stroke| match stroke {
                Stroke::Dot(i, _) if *i == ink => Some("dot"),
                Stroke::Band(i, _) if *i == ink => Some("filled"),
                Stroke::Polyline(i, _) if *i == ink => Some("open"),
                Stroke::Line(i, ..) if *i == ink => Some("line"),
                _ => None,
            });
            forms.collect::<Vec<_>>()
        };
        // Its interval, its sign, and the sign beside its word; a dash is one line, a cross two.
        assert_eq!(of(Ink::Good), ["line", "dot", "dot"]);
        assert_eq!(of(Ink::Deviates), ["line", "filled", "filled"]);
        assert_eq!(of(Ink::Undecided), ["line", "open", "open"]);
        assert_eq!(of(Ink::Unknown), ["line"; 6]);
        for word in ["good", "deviates", "undecided", "not enough driving here", "no feedback here"] {
            assert!(picture.strokes.iter().any(|s| matches!(s, Stroke::Text(_, _, _, text) if text == word)), "{word}");
        }
    }

    #[test]
    fn the_good_band_lies_about_nought_and_an_enormous_interval_ends_at_the_edge() {
        let road = example();
        assert_eq!(span(&road.panels, 5.0), (-25.0, 25.0));
        let picture = picture(&road);
        let band = picture.strokes.iter().find_map(|stroke| match stroke {
            Stroke::Band(Ink::GoodBand, outline) => Some((outline[0].1, outline[2].1)),
            _ => None,
        });
        let (top, bottom) = band.unwrap();
        let zero = HEAD + PANEL.1 / 2.0;
        assert!((zero - top - PANEL.1 / 10.0).abs() < 1e-9 && (bottom - zero - PANEL.1 / 10.0).abs() < 1e-9);
        let whisker = picture.strokes.iter().find_map(|stroke| match stroke {
            Stroke::Line(Ink::Deviates, _, to) => Some(to.1),
            _ => None,
        });
        assert!((whisker.unwrap() - HEAD).abs() < 1e-9, "the upper end of the frame");
        // A mark beyond the loads shown is left out.
        assert!(!picture.strokes.iter().any(|s| matches!(s, Stroke::Text(_, _, _, text) if text == "100")));
    }

    #[test]
    fn without_a_panel_there_is_a_picture_all_the_same() {
        let picture = picture(&Road { panels: Vec::new(), ..example() });
        assert!(picture.size.1 > 0.0 && picture.size.1.is_finite());
    }
}
