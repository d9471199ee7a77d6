//! Numbers of a form: quantities with their unit, whole numbers, money.

use std::ops::RangeInclusive;

use super::number::{self, NotRead, Read};
use super::{Form, Wrong};
use crate::unit::{Kind, Unit};

/// A number in the unit its field is kept in, and the unit somebody typed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Quantity {
    /// In `unit`.
    pub value: f64,
    pub unit: Unit,
    /// The unit typed behind the number, where it was another than `unit`.
    pub typed_unit: Option<Unit>,
}

impl Quantity {
    /// The number in the unit that was typed, for showing it again.
    pub fn as_typed(&self) -> (f64, Unit) {
        let shown = self.typed_unit.and_then(|typed| Some((self.unit.convert(self.value, typed)?, typed)));
        shown.unwrap_or((self.value, self.unit))
    }
}

impl Form {
    /// A number in `unit` within `takes`.
    pub fn number(&mut self, name: &str, unit: Unit, takes: RangeInclusive<f64>) -> Option<f64> {
        self.quantity(name, unit, takes).map(|quantity| quantity.value)
    }

    /// The same, or nothing.
    pub fn opt_number(&mut self, name: &str, unit: Unit, takes: RangeInclusive<f64>) -> Option<f64> {
        self.opt_quantity(name, unit, takes).map(|quantity| quantity.value)
    }

    /// A number with the unit that was typed remembered.
    pub fn quantity(&mut self, name: &str, unit: Unit, takes: RangeInclusive<f64>) -> Option<Quantity> {
        self.required(name)?;
        self.opt_quantity(name, unit, takes)
    }

    /// The same, or nothing.
    pub fn opt_quantity(&mut self, name: &str, unit: Unit, takes: RangeInclusive<f64>) -> Option<Quantity> {
        let text = self.filled(name)?;
        let bare = self.bare_unit(name, unit);
        let quantity = self.note(name, read(&text, unit, bare).map(|(quantity, _)| quantity))?;
        // Kept even when out of range: the page then shows how the unit was understood.
        self.quantities.push((name.to_owned(), quantity));
        let (least, most) = (*takes.start(), *takes.end());
        self.note(
            name,
            if takes.contains(&quantity.value) { Ok(quantity) } else { Err(Wrong::Beyond { least, most, unit }) },
        )
    }

    /// A whole number within `takes`, in the unit that the field's name ends with.
    pub fn integer(&mut self, name: &str, takes: RangeInclusive<i64>) -> Option<i64> {
        self.required(name)?;
        self.opt_integer(name, takes)
    }

    /// The same, or nothing.
    pub fn opt_integer(&mut self, name: &str, takes: RangeInclusive<i64>) -> Option<i64> {
        let unit = Unit::of_name(name).unwrap_or(Unit::One);
        let (least, most) = (*takes.start() as f64, *takes.end() as f64);
        let quantity = self.opt_quantity(name, unit, least..=most)?;
        // Miles make no whole kilometres; the nearest is as good as the miles were.
        let is_turned = quantity.typed_unit.is_some() || self.bare_unit(name, unit) != unit;
        let value = if is_turned { quantity.value.round() } else { quantity.value };
        if value.fract() != 0.0 {
            let typed = self.value(name).trim().to_owned();
            return self.note(name, Err(Wrong::NotWhole { typed }));
        }
        #[expect(clippy::cast_possible_truncation, reason = "whole, and within a range of i64")]
        Some(value as i64)
    }

    /// An amount of money in minor units, from nought to `most`; `decimals` is the currency's (ISO 4217).
    pub fn money(&mut self, name: &str, decimals: u8, most: i64) -> Option<i64> {
        self.required(name)?;
        self.opt_money(name, decimals, most)
    }

    /// The same, or nothing.
    pub fn opt_money(&mut self, name: &str, decimals: u8, most: i64) -> Option<i64> {
        let text = self.filled(name)?;
        let (quantity, read_decimals) = self.note(name, read(&text, Unit::One, Unit::One))?;
        if read_decimals > usize::from(decimals) {
            return self.note(name, Err(Wrong::TooManyDecimals { most: decimals }));
        }
        let scale = 10_f64.powi(i32::from(decimals));
        let minor = (quantity.value * scale).round();
        if !(0.0..=most as f64).contains(&minor) {
            return self.note(name, Err(Wrong::Beyond { least: 0.0, most: most as f64 / scale, unit: Unit::One }));
        }
        #[expect(clippy::cast_possible_truncation, reason = "whole, and between nought and an i64")]
        Some(minor as i64)
    }

    /// The unit of a number that was typed without one: the field itself says in which it was shown, because two people of
    /// two shops can open the same address. What a page filled in, and what a program sends, is in `kept`.
    pub fn bare_unit(&self, name: &str, kept: Unit) -> Unit {
        if self.is_filled_in(name) {
            return kept;
        }
        let shown: Option<Unit> = self.value(&unit_name(name)).parse().ok();
        shown.filter(|shown| shown.kind() == kept.kind()).unwrap_or(kept)
    }

    /// The text of a field for a place outside its form: a number typed where another unit was shown than the field is
    /// kept in gets that unit behind it.
    pub fn whole_text(&self, name: &str, text: &str) -> String {
        let kept = Unit::of_name(name.trim_end_matches(']')).unwrap_or(Unit::One);
        let bare = self.bare_unit(name, kept);
        let is_bare = text.trim().ends_with(|c: char| c.is_ascii_digit());
        if bare != kept && is_bare { format!("{} {}", text.trim(), bare.symbol()) } else { text.to_owned() }
    }

    /// Whether a page wrote this text, and nobody typed it.
    pub fn is_filled_in(&self, name: &str) -> bool {
        self.filled_in.iter().any(|known| known == name)
    }

    /// How a number was understood, where its unit was typed and another than the field's.
    pub fn read_as(&self, name: &str) -> Option<Quantity> {
        let (_, quantity) = self.quantities.iter().find(|(known, _)| known == name)?;
        quantity.typed_unit.map(|_| *quantity)
    }
}

/// Name of the unseen field that says in which unit the field `name` was shown.
pub fn unit_name(name: &str) -> String {
    format!("unit:{name}")
}

/// Reads a number kept in `unit`; without a unit behind it, it is one of `bare`.
fn read(text: &str, unit: Unit, bare: Unit) -> Result<(Quantity, usize), Wrong> {
    let typed = text.to_owned();
    let Read { value, unit: behind, decimals } = match number::read(text) {
        Ok(read) => read,
        Err(NotRead::NotANumber) => return Err(Wrong::NotANumber { typed }),
        Err(NotRead::Ambiguous { thousands, decimal }) => {
            return Err(Wrong::AmbiguousSeparator { typed, thousands, decimal });
        }
    };
    if behind.is_empty() || (behind == "°" && unit.kind() == Kind::Temperature) {
        // Two units of one kind always convert; the field's own name is no reason to fail.
        let value = bare.convert(value, unit).unwrap_or(value);
        return Ok((Quantity { value, unit, typed_unit: None }, decimals));
    }
    let squeezed: String = behind.chars().filter(|c| !c.is_whitespace()).collect();
    let Ok(named) = behind.parse::<Unit>().or_else(|_| squeezed.parse()) else {
        // Digits behind the number are no unit but a second number, or one written oddly.
        let is_unit_like = !behind.starts_with(|c: char| c.is_ascii_digit() || matches!(c, '.' | ',' | '-' | '\''));
        return Err(if is_unit_like {
            Wrong::UnknownUnit { typed: behind, takes: unit }
        } else {
            Wrong::NotANumber { typed }
        });
    };
    let value = named.convert(value, unit).ok_or(Wrong::OtherUnit { typed: behind, takes: unit })?;
    Ok((Quantity { value, unit, typed_unit: (named != unit || named != bare).then_some(named) }, decimals))
}
