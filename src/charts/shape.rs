//! Small signs that are told apart by their form, so that a print without colour loses nothing.

use std::f64::consts::TAU;

use super::{Ink, Point, Stroke};

/// Half the width of a sign.
const REACH: f64 = 4.6;

/// A ring: open inside.
pub fn ring(ink: Ink, (x, y): Point) -> Stroke {
    let round = (0..=16).map(|n| {
        let (sin, cos) = (f64::from(n) * TAU / 16.0).sin_cos();
        (x + 0.9 * REACH * cos, y + 0.9 * REACH * sin)
    });
    Stroke::Polyline(ink, round.collect())
}

/// A square on its corner, filled.
pub fn diamond(ink: Ink, (x, y): Point) -> Stroke {
    let r = 1.25 * REACH;
    Stroke::Band(ink, vec![(x, y - r), (x + r, y), (x, y + r), (x - r, y)])
}

/// A short stroke lying flat.
pub fn dash(ink: Ink, (x, y): Point) -> [Stroke; 1] {
    [Stroke::Line(ink, (x - REACH, y), (x + REACH, y))]
}

/// Two strokes across each other.
pub fn cross(ink: Ink, (x, y): Point) -> [Stroke; 2] {
    let r = 0.75 * REACH;
    [Stroke::Line(ink, (x - r, y - r), (x + r, y + r)), Stroke::Line(ink, (x - r, y + r), (x + r, y - r))]
}

/// A rectangle from one corner to the other, for filling.
pub fn block(ink: Ink, (left, top): Point, (right, bottom): Point) -> Stroke {
    Stroke::Band(ink, vec![(left, top), (right, top), (right, bottom), (left, bottom)])
}

/// Its edges.
pub fn edges(ink: Ink, (left, top): Point, (right, bottom): Point) -> Stroke {
    Stroke::Polyline(ink, vec![(left, top), (right, top), (right, bottom), (left, bottom), (left, top)])
}
