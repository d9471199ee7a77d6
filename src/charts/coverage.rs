//! Where was driven how often: a map of cells for each fuel, engine speed to the right, load upwards, each tile with its
//! number of visits.
//!
//! Tiles go from copper, which wants driving, to ink, which is enough; the number says it without colour.

use super::frame::{LEFT, RIGHT, SIZE, roomy};
use super::{Anchor, Ink, Picture, Point, Stroke, shape};

/// What the picture shows.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Coverage {
    /// Names of the edges between bands of engine speed, lowest first: one more than there are columns.
    pub speeds: Vec<String>,
    /// Names of the edges between bands of load, lowest first: one more than there are rows.
    pub loads: Vec<String>,
    /// Tiles of petrol.
    pub petrol: Vec<Tile>,
    /// Tiles of gas.
    pub gas: Vec<Tile>,
    /// So many visits are enough.
    pub enough: u32,
    /// Words of the picture.
    pub words: CoverageWords,
}

/// A cell that was visited on either fuel.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Tile {
    /// Place among the columns, from 0.
    pub column: usize,
    /// Place among the rows, from 0, lowest first.
    pub row: usize,
    /// Visits on this fuel.
    pub visits: u32,
    /// The same as a text of at most three signs.
    pub text: String,
}

/// Words of the picture, ready.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CoverageWords {
    /// What it is.
    pub title: String,
    /// What it shows.
    pub description: String,
    /// Over the map of petrol.
    pub petrol: String,
    /// Over the map of gas.
    pub gas: String,
    /// What goes to the right.
    pub speed: String,
    /// What goes upwards.
    pub load: String,
    /// "fewer than 6 visits".
    pub few: String,
    /// "6 or more".
    pub enough: String,
}

const WIDTH: f64 = SIZE.0;
const TILE: f64 = 26.0;
/// A tile is no wider than this, however few columns there are.
const WIDEST: f64 = 74.0;
/// Room of the two names over a map, however narrow it is.
const NAMES: f64 = 330.0;
const HEAD: f64 = 52.0;
const FOOT: f64 = 30.0;

/// How far on from copper to ink, 0 to 4; the last two are enough.
fn step(visits: u32, enough: u32) -> u8 {
    let (visits, enough) = (u64::from(visits), u64::from(enough.max(1)));
    match 3 * visits / enough {
        0 => 0,
        1 => 1,
        2 => 2,
        3..=5 => 3,
        _ => 4,
    }
}

/// Draws it.
pub fn picture(coverage: &Coverage) -> Picture {
    let words = &coverage.words;
    let tall = TILE * rows(coverage) as f64;
    let mut strokes = Vec::new();
    let gas_top = HEAD + tall + FOOT + HEAD;
    strokes.extend(map(coverage, (&words.petrol, &coverage.petrol), HEAD));
    strokes.extend(map(coverage, (&words.gas, &coverage.gas), gas_top));
    let foot = gas_top + tall + FOOT + 14.0;
    strokes.extend(key(words, foot));
    let CoverageWords { title, description, .. } = words.clone();
    Picture { size: (WIDTH, foot + 14.0), title, description, strokes }
}

fn columns(coverage: &Coverage) -> usize {
    coverage.speeds.len().saturating_sub(1)
}

fn rows(coverage: &Coverage) -> usize {
    coverage.loads.len().saturating_sub(1)
}

fn wide(coverage: &Coverage) -> f64 {
    ((RIGHT - LEFT - 16.0) / columns(coverage).max(1) as f64).min(WIDEST)
}

fn map(coverage: &Coverage, (name, tiles): (&str, &[Tile]), top: f64) -> Vec<Stroke> {
    let (wide, columns, rows) = (wide(coverage), columns(coverage), rows(coverage));
    let (bottom, right) = (top + TILE * rows as f64, LEFT + wide * columns as f64);
    let mut strokes = vec![
        Stroke::Text(Ink::Name, (LEFT, top - 32.0), Anchor::Start, name.to_owned()),
        Stroke::Text(Ink::Axis, (LEFT, top - 11.0), Anchor::Start, coverage.words.load.clone()),
        Stroke::Text(Ink::Axis, (right.max(LEFT + NAMES), top - 11.0), Anchor::End, coverage.words.speed.clone()),
    ];
    for (n, load) in coverage.loads.iter().enumerate() {
        let edge = bottom - TILE * n as f64;
        strokes.push(Stroke::Text(Ink::Axis, (LEFT - 8.0, edge + 4.0), Anchor::End, load.clone()));
    }
    // Names stand at the lower edges; where columns are narrow, only every second, third... has room.
    let widest = coverage.speeds.iter().map(|speed| roomy(speed)).fold(1.0, f64::max) + 12.0;
    let every = [1, 2, 4, 8].into_iter().find(|every| *every as f64 * wide >= widest).unwrap_or(16);
    for (n, speed) in coverage.speeds.iter().enumerate().step_by(every) {
        let edge = LEFT + wide * n as f64;
        strokes.push(Stroke::Line(Ink::Frame, (edge, bottom), (edge, bottom + 5.0)));
        strokes.push(Stroke::Text(Ink::Axis, (edge, bottom + 19.0), Anchor::Middle, speed.clone()));
    }
    strokes.push(shape::edges(Ink::Frame, (LEFT, top), (right, bottom)));
    for tile in tiles.iter().filter(|tile| tile.column < columns && tile.row < rows) {
        let corner = (LEFT + wide * tile.column as f64, bottom - TILE * (tile.row + 1) as f64);
        strokes.extend(drawn(tile, corner, wide, coverage.enough));
    }
    strokes
}

/// A tile and its number; one without a visit is only outlined.
fn drawn(tile: &Tile, (left, top): Point, wide: f64, enough: u32) -> [Stroke; 2] {
    let (from, to) = ((left + 1.0, top + 1.0), (left + wide - 1.0, top + TILE - 1.0));
    let middle = (left + wide / 2.0, top + TILE / 2.0 + 4.5);
    let (field, ink) = if tile.visits == 0 {
        (shape::edges(Ink::Undecided, (from.0 + 0.5, from.1 + 0.5), (to.0 - 0.5, to.1 - 0.5)), Ink::Undecided)
    } else {
        (shape::block(Ink::Tile(step(tile.visits, enough)), from, to), Ink::OnTile)
    };
    [field, Stroke::Text(ink, middle, Anchor::Middle, tile.text.clone())]
}

/// Copper is few, ink is enough.
fn key(words: &CoverageWords, foot: f64) -> Vec<Stroke> {
    let mut at = LEFT;
    let mut strokes = Vec::new();
    for (steps, said) in [(0..3, &words.few), (3..5, &words.enough)] {
        for step in steps {
            strokes.push(shape::block(Ink::Tile(step), (at, foot - 11.0), (at + 13.0, foot + 2.0)));
            at += 14.0;
        }
        strokes.push(Stroke::Text(Ink::Axis, (at + 6.0, foot), Anchor::Start, said.clone()));
        at = LEFT + 360.0;
    }
    strokes
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tiles_go_from_copper_to_ink_as_visits_come_to_be_enough() {
        assert_eq!([1, 2, 3, 4, 5, 6, 11, 12, u32::MAX].map(|visits| step(visits, 6)), [0, 1, 1, 2, 2, 3, 3, 4, 4]);
        assert_eq!(step(3, 0), 4);
    }

    #[test]
    fn each_tile_carries_its_number_inside_and_one_without_a_visit_is_only_outlined() {
        let tile = |column, row, visits: u32| Tile { column, row, visits, text: visits.to_string() };
        let word = |text: &str| text.to_owned();
        let picture = picture(&Coverage {
            speeds: (1..17).map(|n| format!("{n} 500")).collect(),
            loads: (3..10).map(|n| format!("{n}0")).collect(),
            petrol: vec![tile(0, 0, 7), tile(14, 5, 0)],
            gas: vec![tile(2, 3, 41), tile(99, 0, 5)],
            enough: 6,
            words: CoverageWords {
                title: word("Coverage"),
                description: word("Visits"),
                petrol: word("Petrol"),
                gas: word("Gas"),
                speed: word("/min"),
                load: word("kPa"),
                few: word("fewer than 6"),
                enough: word("6 or more"),
            },
        });
        let filled =
            picture.strokes.iter().filter(|s| matches!(s, Stroke::Band(Ink::Tile(_), o) if (o[1].0 - o[0].0) > 20.0));
        assert_eq!(filled.count(), 2, "a tile beyond the map is left out");
        let texts: Vec<(&Ink, &Point)> = picture
            .strokes
            .iter()
            .filter_map(|s| match s {
                Stroke::Text(ink @ (Ink::OnTile | Ink::Undecided), at, _, _) => Some((ink, at)),
                _ => None,
            })
            .collect();
        assert_eq!(texts.iter().map(|(ink, _)| **ink).collect::<Vec<_>>(), [Ink::OnTile, Ink::Undecided, Ink::OnTile]);
        assert!(texts.iter().all(|(_, (x, y))| (LEFT..RIGHT).contains(x) && (0.0..picture.size.1).contains(y)));
    }
}
