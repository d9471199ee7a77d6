//! Total trims by regime: two bars side by side, petrol outlined in grey dashes, gas in copper, each with its number.

use super::axis::Scale;
use super::frame::{BOTTOM, LEFT, Marked, RIGHT, SIZE, TOP, roomy};
use super::{Anchor, Ink, Picture, Point, Stroke, shape};

/// What the picture shows; trims in per cent.
#[derive(Debug, Clone, PartialEq)]
pub struct Trims {
    /// Regimes, from left to right.
    pub regimes: Vec<Regime>,
    /// Trims to mark, per cent.
    pub percents: Vec<Marked>,
    /// Words of the picture.
    pub words: TrimsWords,
}

/// One regime.
#[derive(Debug, Clone, PartialEq)]
pub struct Regime {
    /// Its name.
    pub name: String,
    /// Trim on petrol and its number in words.
    pub petrol: Option<Marked>,
    /// The same on gas.
    pub gas: Option<Marked>,
    /// Their difference in a dozen signs ("+7.9 %, good"); may be empty.
    pub difference: String,
}

/// Words of the picture, ready.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TrimsWords {
    /// What it is.
    pub title: String,
    /// What it shows.
    pub description: String,
    /// What goes upwards.
    pub percent: String,
    /// Petrol's name, beside its first bar.
    pub petrol: String,
    /// Gas's name.
    pub gas: String,
    /// What stands under the regimes: "Difference, gas against petrol".
    pub difference: String,
}

const BAR: f64 = 46.0;
/// Numbers stand so far beyond the end of their bar.
const BEYOND: f64 = 7.0;

/// The trims shown: nought and every bar, with room for its number.
pub fn span(regimes: &[Regime]) -> Point {
    let all = regimes.iter().flat_map(|regime| [&regime.petrol, &regime.gas]).flatten().map(|(percent, _)| *percent);
    let (low, high) = all.fold((0.0, 0.0), |(low, high): Point, percent| (low.min(percent), high.max(percent)));
    let room = 0.18 * (high - low).max(2.0);
    (if low < 0.0 { low - room } else { -0.3 * room }, high + room)
}

/// Draws it.
pub fn picture(trims: &Trims) -> Picture {
    let (low, high) = span(&trims.regimes);
    let y = Scale { low, high, from: BOTTOM, to: TOP };
    let mut strokes = vec![shape::edges(Ink::Frame, (LEFT, TOP), (RIGHT, BOTTOM))];
    strokes.push(Stroke::Line(Ink::Ideal, (LEFT, y.place(0.0)), (RIGHT, y.place(0.0))));
    strokes.push(Stroke::Text(Ink::Axis, (LEFT, TOP - 9.0), Anchor::Start, trims.words.percent.clone()));
    for (percent, words) in trims.percents.iter().filter(|(percent, _)| (low..=high).contains(percent)) {
        strokes.push(Stroke::Text(Ink::Axis, (LEFT - 8.0, y.place(*percent) + 4.0), Anchor::End, words.clone()));
    }
    let wide = (RIGHT - LEFT) / trims.regimes.len().max(1) as f64;
    for (n, regime) in trims.regimes.iter().enumerate() {
        let middle = LEFT + (n as f64 + 0.5) * wide;
        strokes.extend(bars(regime, middle, &y));
        strokes.push(Stroke::Text(Ink::Name, (middle, BOTTOM + 18.0), Anchor::Middle, regime.name.clone()));
        strokes.push(Stroke::Text(Ink::Axis, (middle, BOTTOM + 36.0), Anchor::Middle, regime.difference.clone()));
    }
    strokes.push(Stroke::Text(Ink::Axis, (RIGHT, BOTTOM + 58.0), Anchor::End, trims.words.difference.clone()));
    strokes.extend(key(&trims.words));
    let TrimsWords { title, description, .. } = trims.words.clone();
    Picture { size: (SIZE.0, BOTTOM + 66.0), title, description, strokes }
}

fn bars(regime: &Regime, middle: f64, y: &Scale) -> Vec<Stroke> {
    let mut strokes = Vec::new();
    for (ink, left, bar) in [(Ink::Petrol, middle - BAR - 3.0, &regime.petrol), (Ink::Gas, middle + 3.0, &regime.gas)] {
        let Some((percent, words)) = bar else { continue };
        let (from, to) = ((left, y.place(*percent)), (left + BAR, y.place(0.0)));
        strokes.push(if ink == Ink::Gas { shape::block(ink, from, to) } else { shape::edges(ink, from, to) });
        let beyond = if *percent < 0.0 { from.1 + BEYOND + 12.0 } else { from.1 - BEYOND };
        strokes.push(Stroke::Text(ink, (left + BAR / 2.0, beyond), Anchor::Middle, words.clone()));
    }
    strokes
}

/// Which bar is which, over the frame.
fn key(words: &TrimsWords) -> [Stroke; 4] {
    let gas = RIGHT - roomy(&words.gas);
    let petrol = gas - 40.0 - roomy(&words.petrol);
    let sign = |left: f64| ((left - 18.0, TOP - 18.0), (left - 6.0, TOP - 8.0));
    [
        shape::edges(Ink::Petrol, sign(petrol).0, sign(petrol).1),
        Stroke::Text(Ink::Petrol, (petrol, TOP - 9.0), Anchor::Start, words.petrol.clone()),
        shape::block(Ink::Gas, sign(gas).0, sign(gas).1),
        Stroke::Text(Ink::Gas, (gas, TOP - 9.0), Anchor::Start, words.gas.clone()),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bars_stand_on_nought_and_numbers_beyond_their_ends() {
        let word = |text: &str| text.to_owned();
        let regime = |petrol: f64, gas: Option<f64>| Regime {
            name: word("idle"),
            petrol: Some((petrol, format!("{petrol}"))),
            gas: gas.map(|gas| (gas, format!("{gas}"))),
            difference: String::new(),
        };
        let trims = Trims {
            regimes: vec![regime(2.4, Some(10.4)), regime(-6.0, None)],
            percents: vec![(0.0, word("0")), (50.0, word("50"))],
            words: TrimsWords {
                title: word("Trims"),
                description: word("By regime"),
                percent: word("%"),
                petrol: word("Petrol"),
                gas: word("Gas"),
                difference: word("Difference"),
            },
        };
        let (low, high) = span(&trims.regimes);
        assert!(low < -6.0 && high > 10.4, "{low} {high}");
        let picture = picture(&trims);
        let zero = picture.strokes.iter().find_map(|s| match s {
            Stroke::Line(Ink::Ideal, (_, y), _) => Some(*y),
            _ => None,
        });
        let zero = zero.unwrap();
        let text = |words: &str| {
            let found = picture.strokes.iter().find_map(|s| match s {
                Stroke::Text(_, (_, y), _, text) if text == words => Some(*y),
                _ => None,
            });
            found.unwrap()
        };
        let bars: Vec<&Vec<Point>> = picture
            .strokes
            .iter()
            .filter_map(|s| match s {
                Stroke::Band(Ink::Gas, outline) | Stroke::Polyline(Ink::Petrol, outline) => Some(outline),
                _ => None,
            })
            .filter(|outline| outline.iter().any(|(_, y)| (y - zero).abs() < 1e-9))
            .collect();
        assert_eq!(bars.len(), 3, "a bar that lacks is not drawn");
        assert!(text("10.4") < bars[1][0].1 && text("-6") > bars[2][0].1 && bars[2][0].1 > zero);
        assert!(!picture.strokes.iter().any(|s| matches!(s, Stroke::Text(_, _, _, text) if text == "50")));
    }
}
