//! Proofs of the intake: who, what, in which state.

use super::assess::Ground;
use super::line::Quantity;
use super::proof::{Arg, Place, Said, State, Why};
use crate::calc::vin;
use crate::model::evidence::{Evidence, SuitabilityVerdict};
use crate::model::vehicle::{Aspiration, PetrolInjection};

pub fn vehicle_known(ground: &Ground<'_>) -> Said {
    let vehicle = &ground.file.vehicle;
    let missing = [
        ("plate", vehicle.plate.is_empty()),
        ("vin", vehicle.identity().is_empty()),
        ("engine_cylinders", vehicle.engine_cylinders.is_none()),
        ("displacement_cm3", vehicle.displacement_cm3.is_none()),
        ("rated_power_kw", vehicle.rated_power_kw.is_none()),
        ("rated_rpm", vehicle.rated_rpm.is_none()),
        ("boost_kpa", vehicle.aspiration == Aspiration::Boosted && vehicle.boost_kpa.is_none()),
    ];
    if let Some((field, _)) = missing.into_iter().find(|(_, is_missing)| *is_missing) {
        let why = Why::plain("field-missing").with("field", Arg::Key(format!("f-{field}")));
        return Said::new(State::Missing, why, Place::Vehicle(field));
    }
    if !vehicle.vin.is_empty() && !vin::check(&vehicle.vin).well_formed {
        return Said::stops(Why::plain("vin-malformed"), Place::Vehicle("vin"));
    }
    Said::met(Why::plain("vehicle-known").text("identity", vehicle.identity()), Place::Vehicle("vin"))
}

pub fn keeper_known(ground: &Ground<'_>) -> Said {
    let keeper = &ground.file.keeper;
    if keeper.phone.is_empty() && keeper.mail.is_empty() && keeper.address.is_empty() {
        return Said::new(State::Missing, Why::plain("keeper-unreachable"), Place::Keeper("phone"));
    }
    Said::met(Why::plain("keeper-known").text("name", &keeper.name), Place::Keeper("name"))
}

pub fn odometer(ground: &Ground<'_>) -> Said {
    let place = Place::Evidence("arrival", "", "odometer");
    let shown = ground.file.shown("arrival", "", |body| match body {
        Evidence::Arrival(arrival) => Some(arrival),
        _ => None,
    });
    let Some((entry, arrival)) = shown else {
        return Said::missing(place);
    };
    #[allow(clippy::cast_precision_loss, reason = "an odometer stays far below 2^52")]
    let km = arrival.odometer_km as f64;
    Said::met(Why::plain("odometer").number("km", km, 0), place).on(entry)
}

pub fn photo(ground: &Ground<'_>, slot: &str) -> Said {
    let place = Place::Photo(slot.to_owned());
    match ground.file.attachments.iter().find(|one| one.slot == slot) {
        Some(one) => {
            let mut said = Said::met(Why::plain("photo").text("name", &one.name), place);
            said.at = Some(one.recorded_at);
            said
        }
        None => Said::missing(place),
    }
}

pub fn suitable(ground: &Ground<'_>) -> Said {
    let place = |field| Place::Evidence("suitability", "", field);
    let shown = ground.file.shown("suitability", "", |body| match body {
        Evidence::Suitability(suitability) => Some(suitability),
        _ => None,
    });
    let Some((entry, seen)) = shown else {
        return Said::missing(place("compression"));
    };
    if let Some(distrusted) = ground.distrust(entry) {
        return distrusted;
    }
    if seen.verdict == SuitabilityVerdict::NotSuitable {
        return Said::stops(Why::plain("not-suitable").text("reasons", &seen.reasons), place("verdict")).on(entry);
    }
    if ground.file.vehicle.petrol_injection == PetrolInjection::Direct
        && seen.verdict != SuitabilityVerdict::WithConditions
    {
        // Gas injectors leave the petrol injectors of a direct-injection engine without cooling; a signatory decides.
        return Said::new(State::Undecided, Why::plain("direct-injection"), place("verdict")).on(entry);
    }
    let on = (ground.day_of)(entry.measured_at);
    let limit = |quantity| ground.book.limit(quantity, &ground.file.job, &ground.file.vehicle, None, on);
    if let Some((least, _)) = limit(Quantity::CoolantC).and_then(|limit| limit.least)
        && seen.coolant_c < least
    {
        let why = Why::plain("engine-cold").quantity("got", seen.coolant_c, 0, "°C").quantity("least", least, 0, "°C");
        return Said::new(State::Undecided, why, place("coolant_c")).on(entry);
    }
    let spread = seen.compression_spread_percent();
    if let Some(spread) = spread
        && let Some((most, _)) = limit(Quantity::CompressionSpreadPercent).and_then(|limit| limit.most)
        && spread > most
        && seen.verdict == SuitabilityVerdict::Suitable
    {
        let why = Why::plain("compression-spread").number("got", spread, 0).number("most", most, 0);
        return Said::stops(why, place("compression")).on(entry);
    }
    if seen.verdict == SuitabilityVerdict::WithConditions && seen.accepted_by.is_empty() {
        return Said::new(State::Missing, Why::plain("conditions-not-accepted"), place("accepted_by")).on(entry);
    }
    let key = if seen.verdict == SuitabilityVerdict::Suitable { "suitable" } else { "suitable-with-conditions" };
    Said::met(Why::plain(key).number("spread", spread.unwrap_or(0.0), 0), place("verdict")).on(entry)
}
