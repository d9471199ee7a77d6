//! Pressure over time in a decay test: what was read, what a tight section and a leak at the limit would show, and how
//! far the readings can be wrong.
//!
//! The band runs along the rate found, as wide as the rate can be wrong at the last reading. Where the limit line lies
//! below the band the test passes; above it, it fails; inside it, nothing can be told yet.

use super::axis::Scale;
use super::{Anchor, Ink, Picture, Point, Stroke};

/// A value to be marked at an axis, with its words.
pub type Marked = (f64, String);

/// What the picture shows; minutes since the start, kPa absolute at the temperature of the start.
#[derive(Debug, Clone, PartialEq)]
pub struct Leak {
    /// Readings: minute and pressure.
    pub readings: Vec<Point>,
    /// Last minute shown: where the test ends or could tell.
    pub end_min: f64,
    /// Pressure a tight section keeps.
    pub tight_kpa: f64,
    /// Pressure at `end_min` with a leak at the limit.
    pub limit_end_kpa: f64,
    /// Lower and upper edge of the band at the start and at `end_min`; `None` before the second reading.
    pub band: Option<[Point; 2]>,
    /// Values to mark upwards.
    pub pressures: Vec<Marked>,
    /// Minutes to mark.
    pub times: Vec<Marked>,
    /// Words of the picture.
    pub words: LeakWords,
}

/// Words of the picture, ready.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LeakWords {
    /// What it is.
    pub title: String,
    /// What it shows.
    pub description: String,
    /// At the tight line.
    pub tight: String,
    /// At the limit line.
    pub limit: String,
}

const SIZE: Point = (720.0, 190.0);
const LEFT: f64 = 58.0;
const RIGHT: f64 = 712.0;
const TOP: f64 = 8.0;
const BOTTOM: f64 = 150.0;

/// The lowest and highest pressure shown, with a little room.
pub fn span(leak: &Leak) -> (f64, f64) {
    let band = leak.band.iter().flatten().flat_map(|(low, high)| [*low, *high]);
    let all = leak.readings.iter().map(|(_, kpa)| *kpa).chain([leak.tight_kpa, leak.limit_end_kpa]).chain(band);
    let (low, high) = all.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), kpa| (low.min(kpa), high.max(kpa)));
    let room = 0.08 * (high - low).max(0.01);
    (low - room, high + room)
}

/// Draws it.
pub fn picture(leak: &Leak) -> Picture {
    let (low, high) = span(leak);
    let x = Scale { low: 0.0, high: leak.end_min, from: LEFT, to: RIGHT };
    let y = Scale { low, high, from: BOTTOM, to: TOP };
    let at = |min: f64, kpa: f64| (x.place(min), y.place(kpa));
    let mut strokes = Vec::new();
    if let Some([(low_0, high_0), (low_1, high_1)]) = leak.band {
        let outline = vec![at(0.0, high_0), at(leak.end_min, high_1), at(leak.end_min, low_1), at(0.0, low_0)];
        strokes.push(Stroke::Band(Ink::Band, outline));
    }
    let corners = [(LEFT, TOP), (RIGHT, TOP), (RIGHT, BOTTOM), (LEFT, BOTTOM), (LEFT, TOP)];
    strokes.push(Stroke::Polyline(Ink::Frame, corners.to_vec()));
    let tight = (at(0.0, leak.tight_kpa), at(leak.end_min, leak.tight_kpa));
    let limit = (at(0.0, leak.tight_kpa), at(leak.end_min, leak.limit_end_kpa));
    strokes.push(Stroke::Line(Ink::Ideal, tight.0, tight.1));
    strokes.push(Stroke::Line(Ink::Limit, limit.0, limit.1));
    let read: Vec<Point> = leak.readings.iter().map(|(min, kpa)| at(*min, *kpa)).collect();
    if read.len() > 1 {
        strokes.push(Stroke::Polyline(Ink::Gas, read.clone()));
    }
    strokes.extend(read.iter().map(|point| Stroke::Dot(Ink::Gas, *point)));
    strokes.extend(labels(leak, tight, limit));
    for (kpa, words) in &leak.pressures {
        strokes.push(Stroke::Text(Ink::Axis, (LEFT - 8.0, y.place(*kpa) + 4.0), Anchor::End, words.clone()));
    }
    for (min, words) in apart(&leak.times, |min| x.place(min)) {
        let place = x.place(min);
        let anchor = if place < LEFT + 30.0 {
            Anchor::Start
        } else if place > RIGHT - 30.0 {
            Anchor::End
        } else {
            Anchor::Middle
        };
        strokes.push(Stroke::Text(Ink::Axis, (place, BOTTOM + 20.0), anchor, words));
    }
    let LeakWords { title, description, .. } = leak.words.clone();
    Picture { size: SIZE, title, description, strokes }
}

/// Labels stand at their lines, well to the right, the tight one above and the limit one below its line.
fn labels(leak: &Leak, tight: (Point, Point), limit: (Point, Point)) -> [Stroke; 2] {
    let on =
        |(from, to): (Point, Point), share: f64| (from.0 + share * (to.0 - from.0), from.1 + share * (to.1 - from.1));
    let (tight_x, tight_y) = on(tight, 0.84);
    let (limit_x, limit_y) = on(limit, 0.84);
    let below = (limit_y + 18.0).min(BOTTOM - 6.0);
    [
        Stroke::Text(Ink::Ideal, (tight_x, tight_y - 7.0), Anchor::Middle, leak.words.tight.clone()),
        Stroke::Text(Ink::Limit, (limit_x - 40.0, below), Anchor::End, leak.words.limit.clone()),
    ]
}

/// Marks that would stand on one another are left out, the later before the earlier; the last one stays.
fn apart(marks: &[Marked], place: impl Fn(f64) -> f64) -> Vec<Marked> {
    let mut kept: Vec<Marked> = Vec::new();
    for (at, mark) in marks.iter().enumerate() {
        let is_last = at + 1 == marks.len();
        if is_last {
            kept.retain(|(min, _)| (place(*min) - place(mark.0)).abs() >= 60.0 || *min == 0.0);
        }
        if is_last || kept.iter().all(|(min, _)| (place(*min) - place(mark.0)).abs() >= 60.0) {
            kept.push(mark.clone());
        }
    }
    kept
}
