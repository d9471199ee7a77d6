//! A log over its time, to find an event: engine speed, load and injection time in three lanes under one another, and
//! over them what was set aside.
//!
//! Stretches that were set aside are shaded through all lanes; their reason stands above where it has room.

use super::axis::Scale;
use super::frame::{LEFT, Marked, RIGHT, SIZE, width};
use super::{Anchor, Ink, Picture, Point, Stroke, shape};

/// What the picture shows; times in s since the log's begin.
#[derive(Debug, Clone, PartialEq)]
pub struct Strip {
    /// Slices in order of time.
    pub slices: Vec<Slice>,
    /// Width of a slice, s; one farther away than two of them begins a new line.
    pub slice_s: f64,
    /// Engine speed.
    pub rpm: Lane,
    /// Load.
    pub load: Lane,
    /// Injection time.
    pub injection: Lane,
    /// Times to mark.
    pub times: Vec<Marked>,
    /// Words of the picture.
    pub words: StripWords,
}

/// A lane: what it shows and where it is marked.
#[derive(Debug, Clone, PartialEq)]
pub struct Lane {
    /// Its name with its unit.
    pub name: String,
    /// Values to mark; two or three.
    pub marks: Vec<Marked>,
}

/// A slice of a log.
#[derive(Debug, Clone, PartialEq)]
pub struct Slice {
    /// When it begins, s.
    pub time_s: f64,
    /// Engine speed, load, injection time.
    pub values: [f64; 3],
    /// On gas.
    pub is_gas: bool,
    /// Why it was set aside, in a word, if it was.
    pub set_aside: Option<String>,
}

/// Words of the picture, ready.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StripWords {
    /// What it is.
    pub title: String,
    /// What it shows.
    pub description: String,
    /// What goes to the right.
    pub time: String,
}

const WIDTH: f64 = SIZE.0;
const TOP: f64 = 22.0;
const LANE: f64 = 78.0;
const GAP: f64 = 26.0;
/// Stretches at least this wide are named.
const NAMED: f64 = 10.0;

/// The values that a lane shows: all of them, with a little room.
pub fn span(slices: &[Slice], lane: usize) -> Point {
    let all = slices.iter().filter_map(|slice| slice.values.get(lane)).copied();
    let (low, high) =
        all.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| (low.min(value), high.max(value)));
    if low > high {
        return (0.0, 1.0);
    }
    let room = 0.06 * (high - low).max(1e-3);
    (low - room, high + room)
}

/// Draws it.
pub fn picture(strip: &Strip) -> Picture {
    let begin = strip.slices.first().map_or(0.0, |slice| slice.time_s);
    let end = strip.slices.last().map_or(1.0, |slice| slice.time_s + strip.slice_s);
    let x = Scale { low: begin, high: end, from: LEFT, to: RIGHT };
    let top = |lane: usize| TOP + GAP + lane as f64 * (LANE + GAP);
    let bottom = top(2) + LANE;
    let mut strokes = Vec::new();
    let mut free = LEFT;
    for (from_s, to_s, why) in stretches(strip) {
        let (from, to) = (x.place(from_s), x.place(to_s));
        for lane in 0..3 {
            strokes.push(shape::block(Ink::Band, (from, top(lane)), (to, top(lane) + LANE)));
        }
        strokes.push(Stroke::Line(Ink::Undecided, (from, TOP + 3.0), (to, TOP + 3.0)));
        // A word may run on over what is kept, but a stretch too narrow to be seen has none.
        if to - from >= NAMED && from >= free && from + width(why) <= RIGHT {
            strokes.push(Stroke::Text(Ink::Axis, (from, TOP - 5.0), Anchor::Start, why.to_owned()));
            free = from + width(why) + 10.0;
        }
    }
    for (n, lane) in [&strip.rpm, &strip.load, &strip.injection].into_iter().enumerate() {
        strokes.extend(drawn(strip, lane, n, &x, top(n)));
    }
    for (time, words) in strip.times.iter().filter(|(time, _)| (begin..=end).contains(time)) {
        let place = x.place(*time);
        strokes.push(Stroke::Line(Ink::Frame, (place, bottom), (place, bottom + 5.0)));
        strokes.push(Stroke::Text(Ink::Axis, (place, bottom + 20.0), Anchor::Middle, words.clone()));
    }
    strokes.push(Stroke::Text(Ink::Axis, (RIGHT, bottom + 38.0), Anchor::End, strip.words.time.clone()));
    let StripWords { title, description, .. } = strip.words.clone();
    Picture { size: (WIDTH, bottom + 46.0), title, description, strokes }
}

fn drawn(strip: &Strip, lane: &Lane, n: usize, x: &Scale, top: f64) -> Vec<Stroke> {
    let (low, high) = span(&strip.slices, n);
    let y = Scale { low, high, from: top + LANE, to: top };
    let mut strokes = vec![shape::edges(Ink::Frame, (LEFT, top), (RIGHT, top + LANE))];
    strokes.push(Stroke::Text(Ink::Name, (LEFT, top - 6.0), Anchor::Start, lane.name.clone()));
    for (value, words) in lane.marks.iter().filter(|(value, _)| (low..=high).contains(value)) {
        strokes.push(Stroke::Text(Ink::Axis, (LEFT - 8.0, y.place(*value) + 4.0), Anchor::End, words.clone()));
    }
    let goes_on = |a: &Slice, b: &Slice| a.is_gas == b.is_gas && b.time_s - a.time_s <= 2.0 * strip.slice_s;
    for run in strip.slices.chunk_by(goes_on) {
        let ink = if run[0].is_gas { Ink::GasTrace } else { Ink::PetrolTrace };
        let at = |slice: &Slice| (x.place(slice.time_s + 0.5 * strip.slice_s), y.place(slice.values[n]));
        strokes.push(Stroke::Polyline(ink, run.iter().map(at).collect()));
    }
    strokes
}

/// Stretches set aside for one reason: from, to, why.
fn stretches(strip: &Strip) -> Vec<(f64, f64, &str)> {
    let same = |a: &Slice, b: &Slice| a.set_aside == b.set_aside && b.time_s - a.time_s <= 2.0 * strip.slice_s;
    let runs = strip.slices.chunk_by(same);
    runs.filter_map(|run| {
        Some((run[0].time_s, run[run.len() - 1].time_s + strip.slice_s, run[0].set_aside.as_deref()?))
    })
    .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn example(slices: Vec<Slice>) -> Strip {
        let word = |text: &str| text.to_owned();
        let lane = |name: &str| Lane { name: word(name), marks: vec![(1_500.0, word("1 500"))] };
        Strip {
            slices,
            slice_s: 1.0,
            rpm: lane("/min"),
            load: lane("kPa"),
            injection: lane("ms"),
            times: vec![(0.0, word("0:00")), (500.0, word("8:20"))],
            words: StripWords { title: word("Log"), description: word("Over time"), time: word("min:s") },
        }
    }

    fn slice(time_s: f64, is_gas: bool, why: Option<&str>) -> Slice {
        Slice { time_s, values: [1_000.0 + 20.0 * time_s, 60.0, 5.0], is_gas, set_aside: why.map(str::to_owned) }
    }

    #[test]
    fn stretches_set_aside_are_shaded_in_each_lane_and_named_once() {
        let why = |n: u32| match n {
            0..20 => Some("cold"),
            24..28 => Some("fuel cut"),
            // Too narrow.
            50 => Some("gap"),
            60..70 => Some("open loop"),
            _ => None,
        };
        let picture = picture(&example((0..100).map(|n| slice(f64::from(n), n >= 40, why(n))).collect()));
        assert_eq!(picture.strokes.iter().filter(|s| matches!(s, Stroke::Band(Ink::Band, _))).count(), 12);
        let named: Vec<&str> = picture
            .strokes
            .iter()
            .filter_map(|s| match s {
                Stroke::Text(_, (_, y), _, text) if *y < TOP => Some(text.as_str()),
                _ => None,
            })
            .collect();
        assert_eq!(named, ["cold", "fuel cut", "open loop"]);
        // Petrol until 40 s, gas from there, in three lanes.
        let lines =
            |ink: Ink| picture.strokes.iter().filter(|s| matches!(s, Stroke::Polyline(i, _) if *i == ink)).count();
        assert_eq!((lines(Ink::PetrolTrace), lines(Ink::GasTrace)), (3, 3));
    }

    #[test]
    fn a_pause_breaks_the_line_and_an_empty_log_draws_its_frame() {
        let times = (0..10).chain(20..30);
        let with_pause = picture(&example(times.map(|n| slice(f64::from(n), true, None)).collect()));
        let lines = with_pause.strokes.iter().filter(|s| matches!(s, Stroke::Polyline(Ink::GasTrace, _))).count();
        assert_eq!(lines, 6);
        let empty = picture(&example(Vec::new()));
        assert!(empty.strokes.iter().any(|s| matches!(s, Stroke::Polyline(Ink::Frame, _))));
        assert!(empty.size.1.is_finite());
    }
}
