//! Verdicts of a cell as signs, each of a form of its own.

use crate::charts::{Ink, Point, Stroke, shape};

/// What a cell came to; deviations as lower end, middle and upper end, per cent.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Found {
    /// Alike on both fuels.
    Good([f64; 3]),
    /// Surely different.
    Deviates([f64; 3]),
    /// Neither is sure.
    Undecided([f64; 3]),
    /// Too little was driven.
    NotEnough,
    /// No sensor steers there.
    NoFeedback,
}

impl Found {
    pub(super) const fn interval(self) -> Option<[f64; 3]> {
        match self {
            Self::Good(found) | Self::Deviates(found) | Self::Undecided(found) => Some(found),
            Self::NotEnough | Self::NoFeedback => None,
        }
    }

    pub(super) const fn ink(self) -> Ink {
        match self {
            Self::Good(_) => Ink::Good,
            Self::Deviates(_) => Ink::Deviates,
            Self::Undecided(_) => Ink::Undecided,
            Self::NotEnough | Self::NoFeedback => Ink::Unknown,
        }
    }

    pub(super) fn sign(self, at: Point) -> Vec<Stroke> {
        let ink = self.ink();
        match self {
            Self::Good(_) => vec![Stroke::Dot(ink, at)],
            Self::Deviates(_) => vec![shape::diamond(ink, at)],
            Self::Undecided(_) => vec![shape::ring(ink, at)],
            Self::NotEnough => shape::dash(ink, at).into(),
            Self::NoFeedback => shape::cross(ink, at).into(),
        }
    }
}
