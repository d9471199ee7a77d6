//! What an LPG container holds, when it is liquid-full, how far it goes and whether the axle carries it.

use super::answered::Answered;
use super::chart_said;
use super::number::{self, Number, number};
use super::sum::BenchSum;
use crate::calc::container::{BASIS, Container, Contents, Stowage, Stowed, container, steps, stow};
use crate::calc::{ATMOSPHERE_KPA, Composition};
use crate::unit::Unit;
use crate::web::form::{Form, Wrong};
use crate::web::fuel_mix::{self, Offer};
use crate::web::job::origins;
use crate::web::kit::{Group, Mark, Tone, Verdict};
use crate::web::sum;
use crate::words::Words;

/// `/bench/container`.
#[derive(Debug)]
pub struct ContainerSum;

/// What is asked.
#[derive(Debug)]
pub struct Asked {
    container: Container,
    stowage: Option<Stowage>,
}

const NUMBERS: [Number; 8] = [
    number("gross_volume_l", Unit::Litre, 1.0, 2_000.0),
    number("fill_percent", Unit::Percent, 1.0, 100.0).usual("80"),
    number("temperature_c", Unit::Celsius, -40.0, 70.0).usual("15"),
    number("left_behind_percent", Unit::Percent, 0.0, 50.0).usual("4"),
    number("consumption_l_per_100km", Unit::One, 1.0, 200.0).optional(),
    number("container_mass_kg", Unit::Kilogram, 0.0, 1_000.0).optional(),
    number("parts_mass_kg", Unit::Kilogram, -200.0, 500.0).optional(),
    number("axle_reserve_kg", Unit::Kilogram, -2_000.0, 10_000.0).optional(),
];

fn verdict(w: &Words, stowed: &Stowed) -> Option<Verdict> {
    let left = stowed.reserve_left_kg?;
    let kg = |value: f64| w.quantity(value, 0, "kg");
    let is_over = left < 0.0;
    let (tone, mark, title) = if is_over {
        (Tone::Stop, Mark::Stops, w.t("says-container-overloaded"))
    } else {
        (Tone::Met, Mark::Met, w.t("says-container-carried"))
    };
    let sentence = if is_over {
        w.tv("container-axle-overloaded", &[("over", kg(-left).into())])
    } else {
        w.tv("container-axle-holds", &[("left", kg(left).into())])
    };
    Some(Verdict { tone, mark, title, sentences: vec![sentence] })
}

fn laid_out(w: &Words, asked: &Asked, contents: &Contents, stowed: Option<&Stowed>) -> Answered {
    let c = |value: Option<f64>| value.map_or_else(|| w.t("says-container-never-full"), |c| w.quantity(c, 1, "°C"));
    let q = |value: f64, decimals: u8, unit: &str| Some(w.quantity(value, decimals, unit));
    let mut answer = Answered::new(w);
    if let Some(verdict) = stowed.and_then(|stowed| verdict(w, stowed)) {
        answer = answer.verdict(verdict);
    }
    answer = answer
        .main("says-container-liquid", w.quantity(contents.liquid_l, 1, "L"))
        .main("says-container-mass", w.quantity(contents.mass_kg, 2, "kg"))
        .main("says-container-full", c(contents.liquid_full_temperature_c))
        .main("says-container-full-colder", c(contents.liquid_full_if_filled_10_k_colder_c));
    if let Some(stowed) = stowed {
        answer = answer
            .main("says-container-range", w.quantity(stowed.range_km, 0, "km"))
            .main("says-container-added", w.quantity(stowed.added_mass_kg, 1, "kg"));
    }
    answer = answer.cautions(&contents.cautions).results(vec![
        ("says-container-pressure", q(contents.pressure_kpa, 0, "kPa")),
        ("says-container-gauge", q(contents.pressure_kpa - ATMOSPHERE_KPA, 0, "kPa")),
        ("says-container-density", q(contents.density_kg_m3, 1, "kg/m³")),
        ("says-container-vapour", q(contents.vapour_mass_kg, 2, "kg")),
        ("says-container-energy", q(contents.energy_mj, 0, "MJ")),
        ("says-container-usable", stowed.and_then(|stowed| q(stowed.usable_l, 1, "L"))),
        ("says-container-reserve", stowed.and_then(|stowed| q(stowed.reserve_left_kg?, 1, "kg"))),
    ]);
    if let Some((drawn, table)) = chart_said::bubble(w, &asked.container.composition, asked.container.temperature_c) {
        answer = answer.chart(drawn).table(table);
    }
    let both = asked.stowage.as_ref().zip(stowed);
    answer.steps(&steps(&asked.container, contents, both)).note(w.t("container-note-stop")).basis(&BASIS)
}

impl BenchSum for ContainerSum {
    const KEY: &'static str = "container";
    const SCOPE: &'static str = "container-sizing";
    // Propane, 80 % at 15 C: 24.36 kg in 60 L and liquid-full at 67.9 C in `lpg_container.csv` of the reference files.
    const EXAMPLE: &'static [(&'static str, &'static str)] = &[
        ("fuel_mix", "lpg-propane"),
        ("gross_volume_l", "60"),
        ("fill_percent", "80"),
        ("temperature_c", "15"),
        ("left_behind_percent", "4"),
        ("consumption_l_per_100km", "9.6"),
        ("container_mass_kg", "31"),
        ("parts_mass_kg", "22"),
        ("axle_reserve_kg", "100"),
    ];
    type Asked = Asked;

    fn openings() -> Vec<origins::Default> {
        number::openings(&NUMBERS)
    }

    fn groups(w: &Words, form: &Form) -> Vec<Group> {
        let (fill, vehicle) = NUMBERS.split_at(3);
        vec![
            fuel_mix::group(w, Offer::Lpg, form),
            Group::new(w.t("bench-store-group-fill"), number::fields(w, form, fill)),
            Group::new(w.t("bench-store-group-vehicle"), number::fields(w, form, vehicle))
                .noted(w.t("bench-store-note-vehicle")),
        ]
    }

    fn read(w: &Words, form: &mut Form) -> Option<Asked> {
        let composition = fuel_mix::read(w, Offer::Lpg, form);
        let [gross, fill, temperature, left, consumption, mass, parts, reserve] = number::read(form, &NUMBERS);
        let is_stowed = [mass, parts, reserve].iter().any(Option::is_some);
        if is_stowed && consumption.is_none() && form.wrong("consumption_l_per_100km").is_none() {
            form.fail("consumption_l_per_100km", Wrong::Rule("bench-store-needs-consumption", Vec::new()));
        }
        if reserve.is_some() && mass.is_none() && form.wrong("container_mass_kg").is_none() {
            form.fail("container_mass_kg", Wrong::Rule("bench-store-needs-mass", Vec::new()));
        }
        let stowage = consumption.zip(left).map(|(consumption_l_per_100km, left)| Stowage {
            container_mass_kg: mass.unwrap_or(0.0),
            parts_mass_kg: parts.unwrap_or(0.0),
            consumption_l_per_100km,
            left_behind_share: left / 100.0,
            axle_reserve_kg: reserve,
        });
        let container = Container {
            composition: composition?,
            gross_volume_l: gross?,
            fill_fraction: fill? / 100.0,
            temperature_c: temperature?,
        };
        Some(Asked { container, stowage })
    }

    fn answer(w: &Words, form: &mut Form, asked: &Asked) -> Option<Answered> {
        let found = container(&asked.container).and_then(|contents| {
            let stowed = asked.stowage.as_ref().map(|stowage| stow(&contents, stowage)).transpose()?;
            Ok((contents, stowed))
        });
        match found {
            Ok((contents, stowed)) => Some(laid_out(w, asked, &contents, stowed.as_ref())),
            Err(error) => {
                sum::refuse(w, form, &error, "temperature_c", |quantity| match quantity {
                    "fill_fraction" => "fill_percent".to_owned(),
                    "left_behind_share" => "left_behind_percent".to_owned(),
                    other => other.to_owned(),
                });
                None
            }
        }
    }

    fn fuel(asked: &Asked) -> Option<&Composition> {
        Some(&asked.container.composition)
    }
}
