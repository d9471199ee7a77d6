//! The frame of a chart with two scales: edges, marks at both axes, and the room that labels keep.

use super::axis::Scale;
use super::{Anchor, Ink, Point, Stroke};

/// A value to be marked at an axis, with its words.
pub type Marked = (f64, String);

/// Size of a chart in its own units.
pub const SIZE: Point = (720.0, 250.0);
/// Left edge of the frame.
pub const LEFT: f64 = 58.0;
/// Right edge of the frame.
pub const RIGHT: f64 = 712.0;
/// Upper edge of the frame.
pub const TOP: f64 = 24.0;
/// Lower edge of the frame.
pub const BOTTOM: f64 = 206.0;

/// Both scales of a chart.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Scales {
    /// To the right.
    pub x: Scale,
    /// Upwards.
    pub y: Scale,
}

impl Scales {
    /// From the lowest and highest value of each axis.
    pub fn new((x_low, x_high): Point, (y_low, y_high): Point) -> Self {
        Self {
            x: Scale { low: x_low, high: x_high, from: LEFT, to: RIGHT },
            y: Scale { low: y_low, high: y_high, from: BOTTOM, to: TOP },
        }
    }

    /// Place of a point.
    pub fn at(&self, (x, y): Point) -> Point {
        (self.x.place(x), self.y.place(y))
    }

    /// Places of the points of a line, cut where it leaves the frame at the top or bottom.
    pub fn line(&self, points: &[Point]) -> Vec<Point> {
        let (low, high) = (self.y.low, self.y.high);
        let is_inside = |(_, y): &Point| (low..=high).contains(y);
        let mut out = Vec::new();
        for (i, point) in points.iter().enumerate() {
            if is_inside(point) {
                out.push(self.at(*point));
                continue;
            }
            // A neighbour inside: the line goes on to the edge.
            for other in [i.checked_sub(1), Some(i + 1)].into_iter().flatten().filter_map(|j| points.get(j)) {
                if is_inside(other) && (point.1 - other.1).abs() > 0.0 {
                    let edge = point.1.clamp(low, high);
                    let share = (edge - other.1) / (point.1 - other.1);
                    out.push(self.at((other.0 + share * (point.0 - other.0), edge)));
                }
            }
        }
        out
    }

    /// The edges and the marks within them; `x_name` and `y_name` say what the axes count.
    pub fn strokes(&self, x_marks: &[Marked], y_marks: &[Marked], x_name: &str, y_name: &str) -> Vec<Stroke> {
        let corners = [(LEFT, TOP), (RIGHT, TOP), (RIGHT, BOTTOM), (LEFT, BOTTOM), (LEFT, TOP)];
        let mut strokes = vec![Stroke::Polyline(Ink::Frame, corners.to_vec())];
        for (y, words) in y_marks.iter().filter(|(y, _)| (self.y.low..=self.y.high).contains(y)) {
            strokes.push(Stroke::Text(Ink::Axis, (LEFT - 8.0, self.y.place(*y) + 4.0), Anchor::End, words.clone()));
        }
        for (x, words) in x_marks.iter().filter(|(x, _)| (self.x.low..=self.x.high).contains(x)) {
            let place = self.x.place(*x);
            strokes.push(Stroke::Line(Ink::Frame, (place, BOTTOM), (place, BOTTOM + 5.0)));
            strokes.push(Stroke::Text(Ink::Axis, (place, BOTTOM + 20.0), Anchor::Middle, words.clone()));
        }
        strokes.push(Stroke::Text(Ink::Axis, (LEFT, TOP - 9.0), Anchor::Start, y_name.to_owned()));
        strokes.push(Stroke::Text(Ink::Axis, (RIGHT, BOTTOM + 38.0), Anchor::End, x_name.to_owned()));
        strokes
    }
}

/// About how wide a label is at the size of the charts' text.
pub fn width(words: &str) -> f64 {
    6.5 * words.chars().count() as f64
}

/// How wide a label may become: on a phone the picture shrinks and its words do not.
pub fn roomy(words: &str) -> f64 {
    11.4 * words.chars().count() as f64
}

/// Where a label stands beside its point: to the right, or to the left where it would leave the frame.
pub fn beside((x, y): Point, words: &str) -> (Point, Anchor) {
    if x + 8.0 + width(words) > RIGHT { ((x - 8.0, y), Anchor::End) } else { ((x + 8.0, y), Anchor::Start) }
}
