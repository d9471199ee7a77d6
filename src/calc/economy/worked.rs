//! A comparison of gas and petrol laid out step by step. Money stays in minor units.

use super::{Economy, Factor, PerUnit, RATIO_UNCERTAINTY, Running, SoldBy, Tailpipe};
use crate::calc::{Source, Step};

/// Costs are subtracted from one another.
const MONEY_FIGURES: i32 = 8;
/// Minor units; what one of them is called depends on the currency.
const MINOR: &str = "/100 km";

/// The steps from prices and consumption to cost, payback and carbon dioxide.
#[must_use]
pub fn steps(running: &Running, economy: &Economy) -> Vec<Step> {
    let mut all = energies(running, economy);
    all.extend(costs(running, economy));
    all.extend(economy.tailpipe.iter().flat_map(|tailpipe| dioxide(running, economy, tailpipe)));
    all
}

fn energies(running: &Running, economy: &Economy) -> Vec<Step> {
    let Running { petrol_kg_m3, consumption_l_per_100km: c, petrol_share: s, .. } = *running;
    let Economy { petrol_mj_per_l, gas_mj_per_unit, ratio, .. } = *economy;
    let petrol_h = running.petrol.lower_heating_value_mj_kg();
    let mut all = vec![Step::new(
        "petrol-energy",
        ("E_p = ρ_p H_p / 1000", "{} · {} / 1000"),
        &[petrol_kg_m3, petrol_h],
        (petrol_mj_per_l, "MJ/L"),
        Source::En16258,
    )];
    if let Some(density) = economy.liquid_kg_m3 {
        let h = 1e3 * gas_mj_per_unit / density;
        let words = ("E_g = ρ_L H / 1000", "{} · {} / 1000");
        all.push(Step::new("lpg-energy", words, &[density, h], (gas_mj_per_unit, "MJ/L"), Source::Iso6976));
    }
    let ratio_words = ("r = E_p / E_g", "{} / {}");
    let (ratio_key, unit, use_key, use_unit) = match economy.sold_by {
        SoldBy::Litre => ("litre-ratio", "L/L", "lpg-used", "L/100 km"),
        SoldBy::Kilogram => ("kilogram-ratio", "kg/L", "cng-used", "kg/100 km"),
    };
    all.extend([
        Step::new(ratio_key, ratio_words, &[petrol_mj_per_l, gas_mj_per_unit], (ratio, unit), None)
            .good_to(RATIO_UNCERTAINTY),
        Step::new(
            use_key,
            ("g = (1 - s) c r", "(1 - {}) · {} · {}"),
            &[s, c, ratio],
            (economy.gas_per_100km, use_unit),
            None,
        )
        .good_to(RATIO_UNCERTAINTY)
        .with_result_of(MONEY_FIGURES)
        .with_numbers_of(MONEY_FIGURES),
        Step::new("petrol-left", ("b = s c", "{} · {}"), &[s, c], (economy.petrol_left_l_per_100km, "L/100 km"), None),
    ]);
    all
}

fn costs(running: &Running, economy: &Economy) -> Vec<Step> {
    let Running { consumption_l_per_100km: c, petrol_price_minor_per_l: dear, gas_price_minor_per_unit: cheap, .. } =
        *running;
    let (gas, left) = (economy.gas_per_100km, economy.petrol_left_l_per_100km);
    let (on_petrol, after) = (c * dear, gas * cheap + left * dear);
    let saved = on_petrol - after;
    let mut all = vec![
        Step::new("cost-on-petrol", ("k_p = c p_p", "{} · {}"), &[c, dear], (on_petrol, MINOR), None)
            .with_result_of(MONEY_FIGURES),
        Step::new(
            "cost-after",
            ("k = g p_g + b p_p", "{} · {} + {} · {}"),
            &[gas, cheap, left, dear],
            (after, MINOR),
            None,
        )
        .with_numbers_of(MONEY_FIGURES)
        .with_result_of(MONEY_FIGURES),
        Step::new("cost-saved", ("k_p - k", "{} - {}"), &[on_petrol, after], (saved, MINOR), None)
            .with_numbers_of(MONEY_FIGURES)
            .with_result_of(MONEY_FIGURES),
    ];
    if let (Some(km), Some(months)) = (economy.payback_km, economy.payback_months) {
        let conversion = running.conversion_minor as f64;
        all.extend([
            Step::new(
                "payback-distance",
                ("100 K / (k_p - k)", "100 · {} / {}"),
                &[conversion, saved],
                (km, "km"),
                None,
            )
            .with_numbers_of(MONEY_FIGURES),
            Step::new("payback-months", ("12 d / d_a", "12 · {} / {}"), &[km, running.km_per_year], (months, ""), None),
        ]);
    }
    all
}

fn dioxide(running: &Running, economy: &Economy, tailpipe: &Tailpipe) -> Vec<Step> {
    let Tailpipe { petrol_factor, gas_factor, .. } = *tailpipe;
    let gas_kg = economy.liquid_kg_m3.map_or(1.0, |density| density / 1e3);
    let petrol_h = running.petrol.lower_heating_value_mj_kg();
    let gas_h = economy.gas_mj_per_unit / gas_kg;
    let unit = match economy.sold_by {
        SoldBy::Litre => "kg/L",
        SoldBy::Kilogram => "kg/kg",
    };
    let after = ("g k_g + b k_p", "{} · {} + {} · {}");
    let values =
        [economy.gas_per_100km, gas_factor.kg_per_unit, economy.petrol_left_l_per_100km, petrol_factor.kg_per_unit];
    vec![
        factor("dioxide-petrol", petrol_factor, running.petrol_kg_m3 / 1e3, petrol_h, "kg/L"),
        factor("dioxide-gas", gas_factor, gas_kg, gas_h, unit),
        Step::new(
            "dioxide-on-petrol",
            ("c k_p", "{} · {}"),
            &[running.consumption_l_per_100km, petrol_factor.kg_per_unit],
            (tailpipe.on_petrol_kg_per_100km, "kg/100 km"),
            None,
        ),
        Step::new("dioxide-after", after, &values, (tailpipe.after_kg_per_100km, "kg/100 km"), None)
            .good_to(RATIO_UNCERTAINTY),
    ]
}

fn factor(key: &'static str, factor: Factor, kg_per_unit: f64, energy_mj_kg: f64, unit: &'static str) -> Step {
    let (words, values) = match factor.per {
        PerUnit::Kilogram => (("k = f ρ", "{} · {}"), vec![factor.value, kg_per_unit]),
        PerUnit::Litre => (("k = f", "{}"), vec![factor.value]),
        PerUnit::Megajoule => {
            (("k = f H ρ / 1000", "{} · {} · {} / 1000"), vec![factor.value, energy_mj_kg, kg_per_unit])
        }
    };
    Step::new(key, words, &values, (factor.kg_per_unit, unit), factor.source)
}
