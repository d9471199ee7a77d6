//! Which quantities a comparison can count on.

use super::Quantity;

/// The quantities that every log of a comparison holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Has(u16);

impl Has {
    /// These quantities.
    pub fn of(quantities: impl IntoIterator<Item = Quantity>) -> Self {
        Self(quantities.into_iter().fold(0, |all, one| all | Self::bit(one)))
    }

    /// What both hold.
    #[must_use]
    pub const fn and(self, other: Self) -> Self {
        Self(self.0 & other.0)
    }

    /// Whether it is among them.
    pub const fn has(self, quantity: Quantity) -> bool {
        self.0 & Self::bit(quantity) != 0
    }

    const fn bit(quantity: Quantity) -> u16 {
        1 << quantity as u16
    }
}
