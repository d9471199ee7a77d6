//! Inks and sizes of papers. Every state that an ink shows also has a word and a mark, so that a black-and-white print
//! loses nothing.

use printpdf::{Color, Rgb};

use super::fonts::Weight;

/// What a colour means.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ink {
    /// Facts.
    Fact,
    /// Second lines and names of facts.
    Soft,
    /// Numbers of papers; what is missing or undecided.
    Copper,
    /// Met, passes.
    Met,
    /// Fails, dangerous.
    Stop,
    /// The signature.
    Link,
    /// Hairlines.
    Rule,
    /// The word across a demonstration paper.
    Shade,
    /// A tile of a map: 0 is copper, 4 is ink.
    Tile(u8),
    /// The paper itself: text on a tile.
    Ground,
}

impl Ink {
    /// The colour in sRGB.
    pub fn color(self) -> Color {
        let [r, g, b] = match self {
            // The same mixtures as in the style sheet of pages.
            Self::Tile(step) => mixed([0, 25, 50, 80, 100][usize::from(step.min(4))]),
            Self::Ground => [0xff, 0xff, 0xff],
            Self::Fact => [0x1b, 0x2a, 0x38],
            Self::Soft => [0x56, 0x64, 0x72],
            Self::Copper => [0xa4, 0x50, 0x1f],
            Self::Met => [0x2c, 0x62, 0x48],
            Self::Stop => [0x9b, 0x1c, 0x31],
            Self::Link => [0x1f, 0x5a, 0x8a],
            Self::Rule => [0xd9, 0xd3, 0xc5],
            Self::Shade => [0xec, 0xe9, 0xe2],
        };
        let part = |value: u8| f32::from(value) / 255.0;
        Color::Rgb(Rgb { r: part(r), g: part(g), b: part(b), icc_profile: None })
    }
}

/// Copper with so many hundredths of ink.
fn mixed(hundredths: u16) -> [u8; 3] {
    let (copper, ink): ([u8; 3], [u8; 3]) = ([0xa4, 0x50, 0x1f], [0x1b, 0x2a, 0x38]);
    let part = |of: usize| (u16::from(copper[of]) * (100 - hundredths) + u16::from(ink[of]) * hundredths) / 100;
    let byte = |value: u16| u8::try_from(value).unwrap_or(u8::MAX);
    [0, 1, 2].map(|of| byte(part(of)))
}

/// Weight, size and ink of a text.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Style {
    /// Weight.
    pub weight: Weight,
    /// Size in points.
    pub size: f32,
    /// Ink.
    pub ink: Ink,
}

impl Style {
    /// Distance from one line to the next, in points.
    pub fn leading(self) -> f32 {
        (self.size * 1.32).round()
    }

    /// The same in another ink.
    pub const fn in_ink(self, ink: Ink) -> Self {
        Self { ink, ..self }
    }

    /// The same in bold.
    pub const fn bold(self) -> Self {
        Self { weight: Weight::Bold, ..self }
    }
}

const fn style(weight: Weight, size: f32, ink: Ink) -> Style {
    Style { weight, size, ink }
}

/// Running text.
pub const TEXT: Style = style(Weight::Regular, 10.0, Ink::Fact);
/// The sentence under the title.
pub const LEAD: Style = style(Weight::Regular, 10.5, Ink::Fact);
/// Cells and values.
pub const CELL: Style = style(Weight::Regular, 9.5, Ink::Fact);
/// Second lines, names of facts, the foot.
pub const SMALL: Style = style(Weight::Regular, 8.5, Ink::Soft);
/// Technical lines at the end: checksums, versions.
pub const FINE: Style = style(Weight::Regular, 7.0, Ink::Soft);
/// Heads of columns.
pub const COLUMN: Style = style(Weight::Bold, 8.5, Ink::Soft);
/// Headings of sections.
pub const SECTION: Style = style(Weight::Bold, 10.0, Ink::Fact);
/// Title of the paper.
pub const TITLE: Style = style(Weight::Bold, 20.0, Ink::Fact);
/// Number of the paper.
pub const NUMBER: Style = style(Weight::Bold, 11.0, Ink::Copper);
/// Name of the shop.
pub const SHOP: Style = style(Weight::Bold, 12.0, Ink::Fact);
/// Signature.
pub const SIGNED: Style = style(Weight::Italic, 15.0, Ink::Link);
