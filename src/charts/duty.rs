//! Duty of a gas injector over engine speed at full load, with the most that is allowed and the speed where it is reached.
//!
//! With the same fuel a cycle the pulse stays and the time there is shrinks, so the duty rises in a straight line.

use super::frame::{self, BOTTOM, Marked, Scales, TOP};
use super::{Anchor, Ink, Picture, Point, Stroke};

/// What the picture shows; speeds 1/min, duties 0 to 1 and beyond.
#[derive(Debug, Clone, PartialEq)]
pub struct Duty {
    /// Duty over speed, lowest speed first.
    pub points: Vec<Point>,
    /// The most duty allowed.
    pub max_duty: f64,
    /// Rated speed and the duty there.
    pub rated: Point,
    /// Speed at which the most is reached; shown where it lies within the points.
    pub limit_rpm: f64,
    /// Speeds to mark.
    pub speeds: Vec<Marked>,
    /// Duties to mark.
    pub duties: Vec<Marked>,
    /// Words of the picture.
    pub words: DutyWords,
}

/// Words of the picture, ready.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DutyWords {
    /// What it is.
    pub title: String,
    /// What it shows.
    pub description: String,
    /// What goes to the right.
    pub speed: String,
    /// What goes upwards.
    pub duty: String,
    /// At the line of the most duty.
    pub most: String,
    /// At the rated point.
    pub rated: String,
    /// At the speed limit.
    pub limit: String,
}

/// The speeds and duties shown.
pub fn span(duty: &Duty) -> (Point, Point) {
    let speeds = duty.points.iter().map(|(rpm, _)| *rpm).chain([duty.rated.0]);
    let (low, high) = speeds.fold((f64::INFINITY, 0.0), |(low, high): Point, rpm| (low.min(rpm), high.max(rpm)));
    let most = duty.points.iter().map(|(_, duty)| *duty).fold(duty.max_duty.max(duty.rated.1), f64::max);
    // Far above the limit the line says nothing more.
    ((low, high), (0.0, (1.08 * most).clamp(1.18 * duty.max_duty, 1.6 * duty.max_duty)))
}

/// Draws it.
pub fn picture(duty: &Duty) -> Picture {
    let (x_span, y_span) = span(duty);
    let scales = Scales::new(x_span, y_span);
    let words = &duty.words;
    let mut strokes = scales.strokes(&duty.speeds, &duty.duties, &words.speed, &words.duty);
    let most = (scales.at((x_span.0, duty.max_duty)), scales.at((x_span.1, duty.max_duty)));
    strokes.push(Stroke::Line(Ink::Limit, most.0, most.1));
    let label = (most.0.0 + 8.0, (most.0.1 - 7.0).max(TOP + 12.0));
    strokes.push(Stroke::Text(Ink::Limit, label, Anchor::Start, words.most.clone()));
    strokes.push(Stroke::Polyline(Ink::Gas, scales.line(&duty.points)));
    if (x_span.0..=x_span.1).contains(&duty.limit_rpm) {
        let at = scales.at((duty.limit_rpm, duty.max_duty));
        strokes.push(Stroke::Line(Ink::Limit, at, (at.0, BOTTOM)));
        let ((x, y), anchor) = frame::beside((at.0, BOTTOM - 8.0), &words.limit);
        strokes.push(Stroke::Text(Ink::Limit, (x, y), anchor, words.limit.clone()));
    }
    let rated = scales.at(duty.rated);
    strokes.push(Stroke::Dot(Ink::Gas, rated));
    // Right of the point there is room below the rising line; left of it the label drops below where the line is there.
    let ((x, y), anchor) = frame::beside((rated.0, rated.1 + 16.0), &words.rated);
    let fallen = if anchor == Anchor::End { slope(duty, &scales) * (8.0 + frame::width(&words.rated)) } else { 0.0 };
    strokes.push(Stroke::Text(Ink::Axis, (x, (y + fallen).min(BOTTOM - 24.0)), anchor, words.rated.clone()));
    let DutyWords { title, description, .. } = words.clone();
    Picture { size: frame::SIZE, title, description, strokes }
}

/// How much the drawn line falls to the left, units a unit.
fn slope(duty: &Duty, scales: &Scales) -> f64 {
    let (Some(first), Some(last)) = (duty.points.first(), duty.points.last()) else { return 0.0 };
    let per_unit = (scales.y.from - scales.y.to) / (scales.y.high - scales.y.low);
    let across = scales.x.place(last.0) - scales.x.place(first.0);
    if across > 0.0 { (last.1 - first.1) * per_unit / across } else { 0.0 }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::charts::svg;

    fn example(max_duty: f64, limit_rpm: f64) -> Duty {
        let word = |text: &str| text.to_owned();
        Duty {
            points: (1..=7).map(|n| (f64::from(n) * 1_000.0, f64::from(n) * 0.143)).collect(),
            max_duty,
            rated: (5_800.0, 0.829),
            limit_rpm,
            speeds: vec![(2_000.0, word("2 000")), (6_000.0, word("6 000"))],
            duties: vec![(0.5, word("50"))],
            words: DutyWords {
                title: word("Duty"),
                description: word("Duty over speed"),
                speed: word("/min"),
                duty: word("%"),
                most: word("most 90 %"),
                rated: word("rated 83 %"),
                limit: word("6 290/min"),
            },
        }
    }

    #[test]
    fn the_limit_line_lies_where_the_duty_line_crosses_it_at_the_speed_limit() {
        let duty = example(0.9, 0.9 / 0.143 * 1e3);
        let picture = picture(&duty);
        let lines: Vec<_> = picture.strokes.iter().filter(|s| matches!(s, Stroke::Line(Ink::Limit, ..))).collect();
        let [Stroke::Line(_, across, _), Stroke::Line(_, upright, foot)] = lines[..] else { panic!("{lines:?}") };
        assert!((across.1 - upright.1).abs() < 1e-9 && (upright.0 - foot.0).abs() < 1e-9);
        let Some(Stroke::Polyline(_, line)) =
            picture.strokes.iter().find(|s| matches!(s, Stroke::Polyline(Ink::Gas, _)))
        else {
            panic!("no duty line")
        };
        // The drawn line passes through the crossing.
        let (a, b) = (line[0], line[line.len() - 1]);
        let y = a.1 + (upright.0 - a.0) / (b.0 - a.0) * (b.1 - a.1);
        assert!((y - upright.1).abs() < 0.01, "{y} {upright:?}");
    }

    #[test]
    fn a_speed_limit_beyond_the_speeds_is_not_drawn_and_nothing_leaves_the_frame() {
        let picture = picture(&example(0.5, 9_000.0));
        assert_eq!(picture.strokes.iter().filter(|s| matches!(s, Stroke::Line(Ink::Limit, ..))).count(), 1);
        for stroke in &picture.strokes {
            let points = match stroke {
                Stroke::Polyline(_, points) => points.clone(),
                Stroke::Dot(_, at) => vec![*at],
                _ => Vec::new(),
            };
            assert!(points.iter().all(|(x, y)| (58.0..=712.0).contains(x) && (24.0..=206.0).contains(y)), "{stroke:?}");
        }
        let drawn = svg(&picture, "duty");
        assert!(
            drawn.contains("<title id=\"duty-title\">Duty</title>") && drawn.contains("class=\"limit\""),
            "{drawn}"
        );
    }
}
