//! What no engine has: the physical range of each quantity.

use super::{Quantity, Sample};

/// The values that a quantity can take.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Range {
    /// Which quantity.
    pub quantity: Quantity,
    /// Least value.
    pub least: f64,
    /// Largest value.
    pub most: f64,
}

/// Physical ranges of what a log may hold; a row with a value outside is set aside, and a column with many of them is
/// refused, since it is another quantity or in another unit.
///
/// Common practice; trims and coolant cover what SAE J1979 can send, but for the coolant's upper end, where a broken
/// sensor stands.
pub const RANGES: [Range; 9] = [
    Range { quantity: Quantity::TimeS, least: -1e10, most: 1e10 },
    Range { quantity: Quantity::Rpm, least: 0.0, most: 12_000.0 },
    Range { quantity: Quantity::ManifoldKpa, least: 5.0, most: 400.0 },
    Range { quantity: Quantity::PetrolMs, least: 0.0, most: 100.0 },
    Range { quantity: Quantity::GasMs, least: 0.0, most: 100.0 },
    Range { quantity: Quantity::CoolantC, least: -50.0, most: 150.0 },
    Range { quantity: Quantity::ShortTrim, least: -100.0, most: 100.0 },
    Range { quantity: Quantity::LongTrim, least: -100.0, most: 100.0 },
    Range { quantity: Quantity::GasKpa, least: -100.0, most: 3_000.0 },
];

/// Below this an engine is cranked or stands, 1/min (common practice).
pub(super) const RUNNING_RPM: f64 = 300.0;
/// Below this no injector delivers: fuel is cut, ms (common practice).
pub(super) const CUT_MS: f64 = 0.5;

/// The first quantity of a row that lies outside its range; what lacks lies nowhere.
pub(super) fn outside(sample: &Sample) -> Option<Quantity> {
    let values = [
        Some(sample.time_s),
        Some(sample.rpm),
        sample.manifold_kpa,
        Some(sample.petrol_ms),
        sample.gas_ms,
        sample.coolant_c,
        sample.short_trim_percent,
        sample.long_trim_percent,
        sample.gas_kpa,
    ];
    // Asked this way round, NaN lies outside.
    let is_outside = |range: &Range, value: f64| !(value >= range.least && value <= range.most);
    RANGES
        .iter()
        .zip(values)
        .find(|(range, value)| value.is_some_and(|it| is_outside(range, it)))
        .map(|(r, _)| r.quantity)
}
