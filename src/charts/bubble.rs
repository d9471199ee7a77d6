//! Pressure of a liquefied gas over temperature: bubble line, dew line, and the point somebody asks about.
//!
//! Above the bubble line all is liquid, below the dew line all is vapour, between them both are there.

use super::frame::{self, BOTTOM, Marked, Scales, TOP};
use super::{Anchor, Ink, Picture, Point, Stroke};

/// What the picture shows; C and kPa absolute.
#[derive(Debug, Clone, PartialEq)]
pub struct Bubble {
    /// Bubble pressure over temperature, coldest first.
    pub bubble: Vec<Point>,
    /// Dew pressure over temperature, coldest first; empty for a pure component.
    pub dew: Vec<Point>,
    /// The point asked about.
    pub at: Option<Point>,
    /// Temperatures to mark.
    pub temperatures: Vec<Marked>,
    /// Pressures to mark.
    pub pressures: Vec<Marked>,
    /// Words of the picture.
    pub words: BubbleWords,
}

/// Words of the picture, ready.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BubbleWords {
    /// What it is.
    pub title: String,
    /// What it shows.
    pub description: String,
    /// What goes to the right.
    pub temperature: String,
    /// What goes upwards.
    pub pressure: String,
    /// Above the bubble line.
    pub liquid: String,
    /// Below the dew line.
    pub vapour: String,
    /// At the point.
    pub at: String,
}

/// The temperatures and pressures shown.
pub fn span(bubble: &Bubble) -> (Point, Point) {
    let all = || bubble.bubble.iter().chain(&bubble.at);
    let least = |low: f64, value: f64| low.min(value);
    let x_low = all().map(|(c, _)| *c).fold(f64::INFINITY, least);
    let x_high = all().map(|(c, _)| *c).fold(f64::NEG_INFINITY, f64::max);
    let y_high = all().map(|(_, kpa)| *kpa).fold(0.0, f64::max);
    ((x_low, x_high), (0.0, 1.06 * y_high))
}

/// Draws it.
pub fn picture(bubble: &Bubble) -> Picture {
    let (x_span, y_span) = span(bubble);
    let scales = Scales::new(x_span, y_span);
    let words = &bubble.words;
    let mut strokes = scales.strokes(&bubble.temperatures, &bubble.pressures, &words.temperature, &words.pressure);
    let dew: Vec<Point> = bubble.dew.iter().copied().filter(|(c, _)| (x_span.0..=x_span.1).contains(c)).collect();
    if dew.len() > 1 {
        strokes.push(Stroke::Polyline(Ink::Ideal, scales.line(&dew)));
    }
    strokes.push(Stroke::Polyline(Ink::Gas, scales.line(&bubble.bubble)));
    let at = bubble.at.map(|at| scales.at(at));
    // The lines rise to the right: liquid stands high at the left, vapour low at the right, clear of the point's line.
    let vapour_end = match at {
        Some((x, _)) if x > frame::RIGHT - 24.0 - frame::width(&words.vapour) => x - 10.0,
        _ => frame::RIGHT - 12.0,
    };
    strokes.push(Stroke::Text(Ink::Axis, (frame::LEFT + 12.0, TOP + 22.0), Anchor::Start, words.liquid.clone()));
    strokes.push(Stroke::Text(Ink::Axis, (vapour_end, BOTTOM - 10.0), Anchor::End, words.vapour.clone()));
    if let Some((x, y)) = at {
        strokes.push(Stroke::Line(Ink::Ideal, (x, y), (x, BOTTOM)));
        strokes.push(Stroke::Dot(Ink::Gas, (x, y)));
        // Above and to the left of a rising line there is room; at the left edge, well above it.
        let (place, anchor) = if x - 10.0 - frame::width(&words.at) > frame::LEFT {
            ((x - 10.0, y - 9.0), Anchor::End)
        } else {
            ((x + 10.0, y - 26.0), Anchor::Start)
        };
        strokes.push(Stroke::Text(Ink::Axis, (place.0, place.1.max(TOP + 12.0)), anchor, words.at.clone()));
    }
    let BubbleWords { title, description, .. } = words.clone();
    Picture { size: frame::SIZE, title, description, strokes }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::charts::{axis, svg};

    fn example(at_c: f64) -> Bubble {
        // Two curves of the usual shape; a chart draws what it is given.
        let pressure = |temperature_c: f64| 300.0 * (0.030 * temperature_c).exp();
        let dew_c = |kpa: f64| (kpa / 200.0).ln() / 0.032;
        let marks = |values: Vec<f64>| values.into_iter().map(|value| (value, format!("{value:.0}"))).collect();
        let word = |text: &str| text.to_owned();
        Bubble {
            bubble: (-4..=13).map(|n| (f64::from(n) * 5.0, pressure(f64::from(n) * 5.0))).collect(),
            dew: (1..=16).map(|n| f64::from(n) * 75.0).map(|kpa| (dew_c(kpa), kpa)).collect(),
            at: Some((at_c, pressure(at_c))),
            temperatures: marks(axis::steps(-20.0, 65.0, 9)),
            pressures: marks(axis::steps(0.0, pressure(65.0), 5)),
            words: BubbleWords {
                title: word("Pressure over temperature"),
                description: word("The bubble line"),
                temperature: word("Temperature, °C"),
                pressure: word("kPa, absolute"),
                liquid: word("all liquid"),
                vapour: word("all vapour"),
                at: word("496 kPa at 15 °C"),
            },
        }
    }

    fn places(picture: &Picture, ink: Ink) -> Vec<Point> {
        let of = |stroke: &Stroke| match stroke {
            Stroke::Polyline(its, points) if *its == ink => Some(points.clone()),
            _ => None,
        };
        picture.strokes.iter().find_map(of).unwrap()
    }

    #[test]
    fn the_bubble_line_rises_lies_above_the_dew_line_and_goes_through_the_point() {
        let picture = picture(&example(15.0));
        let (bubble, dew) = (places(&picture, Ink::Gas), places(&picture, Ink::Ideal));
        assert!(bubble.windows(2).all(|pair| pair[0].0 < pair[1].0 && pair[0].1 > pair[1].1), "upwards is less");
        assert!(dew.len() > 8);
        for (x, y) in &dew {
            let Some(pair) = bubble.windows(2).find(|pair| pair[0].0 <= *x && *x <= pair[1].0) else { continue };
            let on = pair[0].1 + (x - pair[0].0) / (pair[1].0 - pair[0].0) * (pair[1].1 - pair[0].1);
            assert!(on < *y, "dew point at {x} above the bubble line");
        }
        let Some(Stroke::Dot(_, at)) = picture.strokes.iter().find(|s| matches!(s, Stroke::Dot(..))) else { panic!() };
        assert!(bubble.iter().any(|(x, y)| (x - at.0).abs() < 1e-6 && (y - at.1).abs() < 1e-6));
        assert!(svg(&picture, "bubble").contains("496 kPa at 15 °C"));
    }

    #[test]
    fn a_point_at_the_left_edge_keeps_its_label_inside() {
        let picture = picture(&example(-20.0));
        let label = picture.strokes.iter().find_map(|stroke| match stroke {
            Stroke::Text(_, at, anchor, words) if words.starts_with("496") => Some((*at, *anchor)),
            _ => None,
        });
        let ((x, y), anchor) = label.unwrap();
        assert!(anchor == Anchor::Start && x > 58.0 && y < BOTTOM, "{x} {y}");
    }
}
