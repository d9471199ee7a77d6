//! The rows about a vehicle: its identification number, and when something falls due.

use super::answer::Answer;
use super::fields::Fields;
use super::refused::Refused;
use crate::calc::due::{Duty, NotDue, Precision, Reading, due as falls_due};
use crate::calc::vin::{Checked, check};
use crate::calc::{due as dues, vin as vins};

pub(super) fn vin(fields: &Fields) -> Result<Answer, Refused> {
    let got: Checked = check(fields.text("vin")?);
    let is_mismatch = got.well_formed && !got.check_digit_ok;
    let weight = if got.check_digit_compulsory {
        "the check digit does not fit, and this maker's region asks for one"
    } else {
        "the check digit does not fit; outside North America and China position 9 may mean something else"
    };
    let none: &[String] = &[];
    Ok(Answer::on(&vins::BASIS, none)
        .warning_if(is_mismatch, weight)
        .with("well_formed", got.well_formed)
        .with("check_digit_expected", got.check_digit_expected)
        .with("check_digit_ok", got.check_digit_ok)
        .with("region", got.region))
}

pub(super) fn due(fields: &Fields) -> Result<Answer, Refused> {
    let duty = Duty {
        from: fields.date("from")?,
        months: Some(fields.whole("months")?),
        from_precision: fields
            .optional("from_precision", |fields, name| {
                fields.choice(name, &[("day", Precision::Day), ("month", Precision::Month)])
            })?
            .unwrap_or_default(),
        readings: fields.optional("readings", readings)?.unwrap_or_default(),
        km: fields.optional("km", Fields::number)?,
        from_km: fields.optional("from_km", Fields::number)?,
    };
    let got = falls_due(&duty).map_err(|refused| said(refused, &duty))?;
    let is_unused = duty.km.is_none() && (duty.from_km.is_some() || !duty.readings.is_empty());
    let is_blind = duty.km.is_some() && got.by_distance_on.is_none();
    let none: &[String] = &[];
    Ok(Answer::on(&dues::BASIS, none)
        .warning_if(is_unused, "readings and from_km are not used without km")
        .warning_if(is_blind, "the odometer readings give no forecast of the distance: the date alone counts")
        .with("due_on", got.due_on.to_string())
        .with("by", got.by))
}

fn readings(fields: &Fields, name: &str) -> Result<Vec<Reading>, Refused> {
    let read = |one: Fields| Ok(Reading { date: one.date("date")?, km: one.number("km")? });
    fields.objects(name, &["date", "km"])?.into_iter().map(read).collect()
}

fn said(refused: NotDue, duty: &Duty) -> Refused {
    match refused {
        NotDue::Outside(outside) if outside.quantity == "from_km" && duty.from_km.is_none() => {
            Refused::field("from_km", "nothing", "the odometer at the start, needed with km")
        }
        NotDue::Outside(outside) if outside.quantity == "readings.km" => {
            let is_it = |reading: &Reading| reading.km.to_bits() == outside.got.to_bits();
            let place = duty.readings.iter().position(is_it).unwrap_or_default();
            Refused::outside(format!("readings[{place}].km"), outside)
        }
        NotDue::Outside(outside) => Refused::outside(outside.quantity, outside),
        NotDue::NoInterval | NotDue::NoForecast | NotDue::BeyondCalendar => {
            Refused::state("a duty without a day", "a due date within the calendar", refused.to_string())
        }
    }
}
