//! Which columns are what, as the command line names them.

use std::collections::BTreeMap;
use std::path::Path;

use super::super::calc::Refused;
use crate::calc::road::Quantity;
use crate::logs::{Layout, Match, Matched, in_own_unit, is_unit, units_taken};

/// Quantity to the option and the name it was given in.
pub(super) type Named = BTreeMap<Quantity, (&'static str, String)>;

/// Columns named in a refusal at most.
const MOST_NAMED: usize = 40;

/// Reads `QUANTITY=NAME` of every use of an option.
pub(super) fn named(option: &'static str, given: &[String]) -> Result<Named, Refused> {
    let mut named = Named::new();
    for one in given {
        let takes = || format!("QUANTITY=NAME with one of {}", Quantity::ALL.map(Quantity::code).join(", "));
        let Some((code, name)) = one.split_once('=').map(|(code, name)| (code.trim(), name.trim())) else {
            return Err(Refused::field(option, short(one), takes()));
        };
        let quantity = Quantity::from_code(code).ok_or_else(|| Refused::field(option, short(code), takes()))?;
        if name.is_empty() {
            return Err(Refused::field(option, format!("no name for {code}"), takes()));
        }
        if named.insert(quantity, (option, name.to_owned())).is_some() {
            return Err(Refused::field(option, format!("{code} twice"), "one column for each quantity"));
        }
    }
    Ok(named)
}

/// Finds the columns in a log.
pub(super) fn matched(named: &Named, layout: &Layout, path: &Path) -> Result<Match, Refused> {
    let mut wanted = Match::default();
    for (quantity, (option, name)) in named {
        let found = find(*quantity, name, layout).map_err(|why| match why {
            Lost::NoColumn => no_column(option, name, layout, path),
            Lost::Unit(unit) => wrong_unit(option, *quantity, name, &unit),
        })?;
        wanted.columns.insert(*quantity, found);
    }
    Ok(wanted)
}

/// Why a column is not taken.
enum Lost {
    NoColumn,
    /// It is in a unit that the quantity is not measured in.
    Unit(String),
}

/// A column by its name, by its name and a unit in brackets, or by its name and a factor.
fn find(quantity: Quantity, name: &str, layout: &Layout) -> Result<Matched, Lost> {
    if let Some(at) = layout.column(name) {
        return scaled(quantity, layout, at, &layout.columns[at].unit);
    }
    let bracket = name.strip_suffix(']').and_then(|name| name.rsplit_once('['));
    if let Some((at, unit)) = bracket.and_then(|(name, unit)| Some((layout.column(name)?, unit.trim()))) {
        let (scale, offset) = in_own_unit(quantity, unit).ok_or_else(|| Lost::Unit(unit.to_owned()))?;
        return Ok(Matched { column: layout.columns[at].name.clone(), scale, offset });
    }
    let factor = name.rsplit_once('*').and_then(|(name, factor)| {
        let factor: f64 = factor.trim().parse().ok()?;
        Some((layout.column(name)?, factor)).filter(|_| factor.is_normal())
    });
    let (at, scale) = factor.ok_or(Lost::NoColumn)?;
    Ok(Matched { column: layout.columns[at].name.clone(), scale, offset: 0.0 })
}

fn scaled(quantity: Quantity, layout: &Layout, at: usize, unit: &str) -> Result<Matched, Lost> {
    // Words are in no unit, whatever stands over them.
    let is_word = matches!(quantity, Quantity::Fuel | Quantity::ClosedLoop);
    let (scale, offset) = match in_own_unit(quantity, unit) {
        Some(known) => known,
        None if !is_word && is_unit(unit) && unit.trim() != "-" => return Err(Lost::Unit(unit.to_owned())),
        None => (1.0, 0.0),
    };
    Ok(Matched { column: layout.columns[at].name.clone(), scale, offset })
}

fn no_column(option: &str, name: &str, layout: &Layout, path: &Path) -> Refused {
    let there: Vec<_> = layout.columns.iter().take(MOST_NAMED).map(|column| column.name.as_str()).collect();
    let more = if layout.columns.len() > MOST_NAMED { ", ..." } else { "" };
    let takes = format!("one of {}{more}", there.join(", "));
    let message =
        format!("{option} names {:?}, a column that {} does not have; it takes {takes}", short(name), path.display());
    Refused::field(option, short(name), takes).saying(message)
}

fn wrong_unit(option: &str, quantity: Quantity, name: &str, unit: &str) -> Refused {
    let takes = format!("a column in one of {}", units_taken(quantity).join(", "));
    let message = format!(
        "{option} names {:?} for {}, which is in {}; it takes {takes}",
        short(name),
        quantity.code(),
        short(unit)
    );
    Refused::field(option, format!("{} in {}", short(name), short(unit)), takes).saying(message)
}

/// What was typed, as far as a sentence bears it.
fn short(text: &str) -> String {
    text.chars().take(60).collect()
}
