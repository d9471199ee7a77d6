//! The rows about what was proved: a leak test by pressure decay, lambda of an exhaust gas.

use super::answer::Answer;
use super::fields::Fields;
use super::refused::Refused;
use crate::calc::lambda::{Exhaust, ExhaustFuel, NoLambda, lambda as reckoned};
use crate::calc::leak::{Compressibility, DecayTest, check, judge, reference_c, reference_kpa};
use crate::calc::{Composition, Error, Outside, gas, lambda as lambdas, leak as leaks};

pub(super) fn leak(fields: &Fields) -> Result<Answer, Refused> {
    let test = DecayTest {
        volume_l: fields.number("volume_l")?,
        start_kpa: fields.number("start_kpa")?,
        end_kpa: fields.number("end_kpa")?,
        start_c: fields.number("start_c")?,
        end_c: fields.number("end_c")?,
        duration_min: fields.number("duration_min")?,
        limit_cm3_h: fields.number("limit_cm3_h")?,
        pressure_resolution_kpa: fields.number("pressure_resolution_kpa")?,
        pressure_standard_uncertainty_kpa: fields.number("pressure_standard_uncertainty_kpa")?,
        temperature_standard_uncertainty_k: fields.number("temperature_standard_uncertainty_k")?,
        volume_relative_standard_uncertainty: fields.number("volume_relative_standard_uncertainty")?,
        reference_c: fields.optional("reference_c", Fields::number)?.unwrap_or_else(reference_c),
        reference_kpa: fields.optional("reference_kpa", Fields::number)?.unwrap_or_else(reference_kpa),
    };
    let composition = fields.optional("composition", Fields::composition)?;
    let outside = |outside: Outside| Refused::outside(outside.quantity, outside);
    check(&test).map_err(outside)?;
    let gas = composition.map_or(Ok(Compressibility::IDEAL), |composition| compressibility(&test, &composition))?;
    let got = judge(&test, &gas).map_err(outside)?;
    Ok(Answer::on(&leaks::BASIS, &got.warnings)
        .with("rate_cm3_h", got.rate_cm3_h)
        .with("expanded_uncertainty_cm3_h", got.expanded_uncertainty_cm3_h)
        .with("verdict", got.verdict)
        .with("needed_duration_min", got.needed_duration_min)
        .with("needed_pressure_standard_uncertainty_kpa", got.needed_pressure_standard_uncertainty_kpa))
}

/// The gas as it really is at both readings and at the reference state.
fn compressibility(test: &DecayTest, composition: &Composition) -> Result<Compressibility, Refused> {
    Compressibility::of(test, |kpa, c| gas::compressibility(composition, kpa, c)).map_err(|error| match error {
        // The gas may refuse what the leak sum takes; the reading nearest to what it was asked is the one meant, since
        // slopes are taken a little beside the readings.
        Error::Outside(outside) if outside.quantity == "pressure_kpa" => {
            let named =
                [("start_kpa", test.start_kpa), ("end_kpa", test.end_kpa), ("reference_kpa", test.reference_kpa)];
            nearest(&named, outside)
        }
        Error::Outside(outside)
            if outside.quantity == "temperature_c" && !(gas::COLDEST_C..=gas::HOTTEST_C).contains(&outside.got) =>
        {
            nearest(&[("start_c", test.start_c), ("end_c", test.end_c), ("reference_c", test.reference_c)], outside)
        }
        other => Refused::of_gas(other, "composition"),
    })
}

fn nearest(named: &[(&str, f64); 3], outside: Outside) -> Refused {
    let [first, rest @ ..] = named;
    let miss = |value: f64| (value - outside.got).abs();
    let (name, value) = rest.iter().fold(first, |best, one| if miss(one.1) < miss(best.1) { one } else { best });
    Refused::outside(*name, Outside { got: *value, ..outside })
}

pub(super) fn lambda(fields: &Fields) -> Result<Answer, Refused> {
    let exhaust = Exhaust {
        fuel: fields
            .choice("fuel", &[("petrol", ExhaustFuel::Petrol), ("lpg", ExhaustFuel::Lpg), ("cng", ExhaustFuel::Cng)])?,
        co_percent: fields.number("co_percent")?,
        co2_percent: fields.number("co2_percent")?,
        o2_percent: fields.number("o2_percent")?,
        hc_ppm_hexane: fields.number("hc_ppm_hexane")?,
        nox_ppm: fields.optional("nox_ppm", Fields::number)?,
    };
    let got = reckoned(&exhaust).map_err(|refused| match refused {
        NoLambda::Outside(outside) => Refused::outside(outside.quantity, outside),
        NoLambda::ProbeNotInExhaust { carbon_percent, o2_percent } => Refused::state(
            format!("CO2 and CO {carbon_percent} %, O2 {o2_percent} %"),
            "CO2 and CO together at least 6 %, O2 at most 15 %",
            refused.to_string(),
        ),
    })?;
    let none: &[String] = &[];
    let is_blind = exhaust.fuel == ExhaustFuel::Cng && exhaust.hc_ppm_hexane > 0.0;
    Ok(Answer::on(&lambdas::BASIS, none)
        .warning_if(is_blind, "an infra-red analyser hardly sees methane: hydrocarbons on CNG are indicative only")
        .with("lambda", got))
}
