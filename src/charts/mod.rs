//! Numbers to strokes: one small drawing trait, and pictures that draw themselves on whatever implements it.
//!
//! A picture is a plain list of strokes in its own units (the same as SVG's: x to the right, y downwards), each with an
//! [`Ink`] that says what it stands for. [`svg`] turns it into SVG for a page; papers implement [`Draw`] over their own
//! ink and get the same picture. Same numbers in, same bytes out. Texts come in ready words.

pub mod axis;
pub mod bubble;
pub mod coverage;
pub mod duty;
pub mod frame;
pub mod leak;
pub mod road;
pub mod shape;
pub mod strip;
mod svg;
pub mod trims;

pub use svg::svg;

/// What a stroke stands for; colour, width and dashes follow from it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Ink {
    /// The frame, hairline.
    Frame,
    /// Text at an axis.
    Axis,
    /// Measured on gas: copper, solid.
    Gas,
    /// Measured on petrol: grey, thin dashes.
    Petrol,
    /// A limit: stop, long dashes.
    Limit,
    /// What a faultless thing would show: soft, dotted.
    Ideal,
    /// A proposal: ink, dotted.
    Proposal,
    /// What the uncertainty covers, or what was set aside: copper wash, filled.
    Band,
    /// The name of a part of a picture: ink.
    Name,
    /// Good: met.
    Good,
    /// What counts as good: met wash, filled.
    GoodBand,
    /// Deviates: stop.
    Deviates,
    /// Undecided, or not driven yet: copper.
    Undecided,
    /// Nothing is known: soft.
    Unknown,
    /// A long line measured on gas: copper, thin.
    GasTrace,
    /// A long line measured on petrol: grey, thin dashes.
    PetrolTrace,
    /// A tile of a map, filled: 0 is copper, 4 is ink.
    Tile(u8),
    /// Text on a tile: the ground's colour.
    OnTile,
}

impl Ink {
    /// Its class in style sheets.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Frame => "frame",
            Self::Axis => "axis",
            Self::Gas => "gas",
            Self::Petrol => "petrol",
            Self::Limit => "limit",
            Self::Ideal => "ideal",
            Self::Proposal => "proposal",
            Self::Band => "band",
            Self::Name => "name",
            Self::Good => "good",
            Self::GoodBand => "good-band",
            Self::Deviates => "deviates",
            Self::Undecided => "undecided",
            Self::Unknown => "unknown",
            Self::GasTrace => "gas-trace",
            Self::PetrolTrace => "petrol-trace",
            Self::Tile(0) => "tile-0",
            Self::Tile(1) => "tile-1",
            Self::Tile(2) => "tile-2",
            Self::Tile(3) => "tile-3",
            Self::Tile(_) => "tile-4",
            Self::OnTile => "on-tile",
        }
    }
}

/// Where a text stands against its point.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Anchor {
    /// The text begins at the point.
    Start,
    /// The point is its middle.
    Middle,
    /// The text ends at the point.
    End,
}

/// A point of a picture.
pub type Point = (f64, f64);

/// Something to draw on.
pub trait Draw {
    /// A line from one point to another.
    fn line(&mut self, ink: Ink, from: Point, to: Point);
    /// A line through several points.
    fn polyline(&mut self, ink: Ink, points: &[Point]);
    /// A filled area inside these points.
    fn band(&mut self, ink: Ink, outline: &[Point]);
    /// A dot.
    fn dot(&mut self, ink: Ink, at: Point);
    /// One line of text; the point is on its base line.
    fn text(&mut self, ink: Ink, at: Point, anchor: Anchor, text: &str);
}

/// One stroke.
#[derive(Debug, Clone, PartialEq)]
pub enum Stroke {
    /// A line.
    Line(Ink, Point, Point),
    /// A line through several points.
    Polyline(Ink, Vec<Point>),
    /// A filled area.
    Band(Ink, Vec<Point>),
    /// A dot.
    Dot(Ink, Point),
    /// A text.
    Text(Ink, Point, Anchor, String),
}

/// A picture: its size, what it shows in words, its strokes in the order of drawing.
#[derive(Debug, Clone, PartialEq)]
pub struct Picture {
    /// Width and height in its own units.
    pub size: Point,
    /// What it is: "Pressure over time".
    pub title: String,
    /// What it shows, for those who do not see it.
    pub description: String,
    /// The strokes.
    pub strokes: Vec<Stroke>,
}

impl Picture {
    /// Draws itself.
    pub fn draw(&self, on: &mut impl Draw) {
        for stroke in &self.strokes {
            match stroke {
                Stroke::Line(ink, from, to) => on.line(*ink, *from, *to),
                Stroke::Polyline(ink, points) => on.polyline(*ink, points),
                Stroke::Band(ink, outline) => on.band(*ink, outline),
                Stroke::Dot(ink, at) => on.dot(*ink, *at),
                Stroke::Text(ink, at, anchor, text) => on.text(*ink, *at, *anchor, text),
            }
        }
    }
}
