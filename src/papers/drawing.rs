//! Pictures of the charts on a paper: the same strokes as on a page, in the inks of papers.

use printpdf::{Line, LineDashPattern, LinePoint, Op, PaintMode, Polygon, PolygonRing, Pt, WindingOrder};

use super::PaperError;
use super::fonts;
use super::ink::{Ink, SMALL, Style};
use super::sheet::{LEFT, Sheet, WIDTH, point, text_ops};
use crate::charts::duty::{Duty, DutyWords, picture};
use crate::charts::{Anchor, Draw, Ink as Of, Picture, Point};
use crate::model::paper::sizing_sheet::DutyOnPaper;
use crate::words::Words;

/// The chart of a nozzle's duty over speed.
pub fn duty(duty: &DutyOnPaper, words: &Words) -> Picture {
    let percent = |share: f64| words.quantity(100.0 * share, 0, "%");
    let speed = |rpm: f64| words.quantity((rpm / 10.0).round() * 10.0, 0, "/min");
    let last = duty.points.last().map_or(duty.rated.0, |(rpm, _)| *rpm);
    let marks = |step: f64, most: f64| {
        std::iter::successors(Some(step), move |at| Some(at + step)).take_while(move |at| *at <= most + 1e-9)
    };
    // At most eight speeds, so that their labels stand apart.
    let apart = if last > 8_000.0 { 2_000.0 } else { 1_000.0 };
    let values = [
        ("size", words.quantity(duty.size_mm, 2, "mm").into()),
        ("rated", percent(duty.rated.1).into()),
        ("at", speed(duty.rated.0).into()),
        ("most", percent(duty.max_duty).into()),
        ("limit", speed(duty.limit_rpm).into()),
    ];
    picture(&Duty {
        points: duty.points.clone(),
        max_duty: duty.max_duty,
        rated: duty.rated,
        limit_rpm: duty.limit_rpm,
        speeds: marks(apart, last).map(|rpm| (rpm, words.number(rpm, 0))).collect(),
        duties: marks(0.25, 1.5).map(|share| (share, words.number(100.0 * share, 0))).collect(),
        words: DutyWords {
            title: words.tv("duty-chart-title", &values),
            description: words.tv("duty-chart-description", &values),
            speed: words.t("duty-chart-speed"),
            duty: words.t("duty-chart-duty"),
            most: words.tv("duty-chart-most", &values),
            rated: words.tv("duty-chart-rated", &values),
            limit: words.tv("duty-chart-limit", &values),
        },
    })
}

/// Draws a picture over the whole width of the paper, at the cursor.
///
/// Errors: a character of its words that no face has.
pub(super) fn draw(sheet: &mut Sheet, picture: &Picture) -> Result<(), PaperError> {
    let scale = WIDTH / narrow(picture.size.0);
    let height = narrow(picture.size.1) * scale;
    sheet.keep(height);
    let mut pen = Pen { ops: Vec::new(), scale, top: sheet.y, broken: None };
    picture.draw(&mut pen);
    if let Some(error) = pen.broken {
        return Err(error);
    }
    sheet.picture(pen.ops, &picture.description);
    sheet.y += height;
    Ok(())
}

/// A picture's units are far within the digits of an `f32`.
#[expect(clippy::cast_possible_truncation, reason = "a page is some hundred units wide")]
const fn narrow(value: f64) -> f32 {
    value as f32
}

struct Pen {
    ops: Vec<Op>,
    scale: f32,
    top: f32,
    /// The first text that could not be drawn.
    broken: Option<PaperError>,
}

/// Ink, thickness and dashes of a stroke.
fn stroke(of: Of) -> (Ink, f32, &'static [f32]) {
    match of {
        Of::Frame => (Ink::Rule, 0.75, &[]),
        Of::Axis => (Ink::Soft, 0.5, &[]),
        Of::Gas => (Ink::Copper, 1.6, &[]),
        Of::Petrol | Of::PetrolTrace => (Ink::Soft, 0.75, &[3.0, 2.0]),
        Of::GasTrace => (Ink::Copper, 0.8, &[]),
        Of::Band | Of::GoodBand => (Ink::Shade, 0.75, &[]),
        Of::Name => (Ink::Fact, 0.75, &[]),
        Of::Good => (Ink::Met, 1.2, &[]),
        Of::Deviates => (Ink::Stop, 1.2, &[]),
        Of::Undecided => (Ink::Copper, 1.2, &[]),
        Of::Unknown => (Ink::Soft, 1.0, &[]),
        Of::Tile(step) => (Ink::Tile(step), 0.75, &[]),
        Of::OnTile => (Ink::Ground, 0.75, &[]),
        Of::Limit => (Ink::Stop, 0.9, &[7.0, 3.5]),
        Of::Ideal => (Ink::Soft, 0.75, &[0.8, 2.2]),
        Of::Proposal => (Ink::Fact, 0.9, &[0.8, 2.2]),
    }
}

impl Pen {
    fn at(&self, (x, y): Point) -> printpdf::Point {
        point(LEFT + narrow(x) * self.scale, self.top + narrow(y) * self.scale)
    }

    fn corners(&self, points: &[Point]) -> Vec<LinePoint> {
        points.iter().map(|one| LinePoint { p: self.at(*one), bezier: false }).collect()
    }

    fn fill(&mut self, points: Vec<LinePoint>, ink: Ink) {
        let rings = vec![PolygonRing { points }];
        let polygon = Polygon { rings, mode: PaintMode::Fill, winding_order: WindingOrder::NonZero };
        self.ops.extend([Op::SetFillColor { col: ink.color() }, Op::DrawPolygon { polygon }]);
    }
}

impl Draw for Pen {
    fn line(&mut self, of: Of, from: Point, to: Point) {
        self.polyline(of, &[from, to]);
    }

    fn polyline(&mut self, of: Of, points: &[Point]) {
        let (ink, thickness, dashes) = stroke(of);
        let points = self.corners(points);
        self.ops.extend([
            Op::SetOutlineColor { col: ink.color() },
            Op::SetOutlineThickness { pt: Pt(thickness) },
            Op::SetLineDashPattern { dash: LineDashPattern::new(0.0, dashes) },
            Op::DrawLine { line: Line { points, is_closed: false } },
            Op::SetLineDashPattern { dash: LineDashPattern::new(0.0, &[]) },
        ]);
    }

    fn band(&mut self, of: Of, outline: &[Point]) {
        let points = self.corners(outline);
        self.fill(points, stroke(of).0);
    }

    fn dot(&mut self, of: Of, (x, y): Point) {
        const RADIUS: f64 = 3.4;
        let round = (0..16).map(|n| {
            let (sin, cos) = (f64::from(n) * std::f64::consts::TAU / 16.0).sin_cos();
            (x + RADIUS * cos, y + RADIUS * sin)
        });
        let points = self.corners(&round.collect::<Vec<_>>());
        self.fill(points, stroke(of).0);
    }

    fn text(&mut self, of: Of, (x, y): Point, anchor: Anchor, text: &str) {
        let ink = if of == Of::Axis { Ink::Soft } else { stroke(of).0 };
        let style = Style { size: 8.5, ..SMALL }.in_ink(ink);
        let drawn = fonts::width(text, style.weight, style.size).and_then(|width| {
            let left = match anchor {
                Anchor::Start => 0.0,
                Anchor::Middle => width / 2.0,
                Anchor::End => width,
            };
            // The last label of an axis would stand out over the edge of the text.
            let x = (LEFT + narrow(x) * self.scale - left).min(LEFT + WIDTH - width).max(LEFT);
            text_ops(x, self.top + narrow(y) * self.scale, text, style)
        });
        match drawn {
            Ok(ops) => self.ops.extend(ops),
            Err(error) => self.broken = self.broken.take().or(Some(error)),
        }
    }
}
