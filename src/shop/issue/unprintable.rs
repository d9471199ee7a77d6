//! Names that the papers have no letters for: what is refused, and which field lifts it.

use crate::model::customer::Customer;
use crate::model::person::Actor;
use crate::model::vehicle::Vehicle;
use crate::papers::first_unprintable;
use crate::shop::Refusal;

fn check(text: &str, field: &'static str, why: &'static str) -> Result<(), Refusal> {
    match first_unprintable(text) {
        Some(character) => {
            tracing::info!(%character, field, "a paper has no letters for this");
            Err(Refusal::Field { field, why })
        }
        None => Ok(()),
    }
}

/// A customer whose name and address can be printed, the name perhaps by its spelling in Latin letters.
///
/// # Errors
/// [`Refusal::Field`] names the field of the customer to fill.
pub fn customer(one: &Customer) -> Result<(), Refusal> {
    check(printed_name(one), "name_in_latin", "refused-name-beyond-fonts")?;
    check(&one.address, "address", "refused-address-beyond-fonts")
}

/// A vehicle whose make, model and plate can be printed.
///
/// # Errors
/// [`Refusal::Field`] names the field of the vehicle to fill.
pub fn vehicle(one: &Vehicle) -> Result<(), Refusal> {
    for (field, text) in [("make", &one.make), ("model", &one.model), ("plate", &one.plate)] {
        check(text, field, "refused-vehicle-beyond-fonts")?;
    }
    Ok(())
}

/// Whoever signs, by a name that can be printed.
///
/// # Errors
/// [`Refusal::MayNot`]: a name is never spelled by numbers under a signature.
pub fn signatory(one: &Actor) -> Result<(), Refusal> {
    first_unprintable(&one.name).map_or(Ok(()), |_| Err(Refusal::MayNot("refused-signatory-beyond-fonts")))
}

/// The name to print: the spelling given for print, else the name.
pub fn printed_name(one: &Customer) -> &str {
    if one.name_in_latin.is_empty() { &one.name } else { &one.name_in_latin }
}
