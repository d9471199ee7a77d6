//! A heat sheet laid out step by step: fuel rate, heat, capacity, margin of the changeover.

use super::{Asked, Capacity, Device, Found, Heat};
use crate::calc::Step;
use crate::calc::nozzle::sizing::Spread;
use crate::calc::vaporiser::{regulator_steps, vaporiser_steps};
use crate::calc::worked::net_energy;

/// The steps of a heat sheet.
#[must_use]
pub fn steps(asked: &Asked, found: &Found) -> Vec<Step> {
    let mut all = Vec::new();
    let net = found.lower_heating_value_mj_kg;
    if let (Some(power), Some(efficiency)) = (asked.rated_power_kw, asked.brake_efficiency) {
        let Spread { power: of_power, efficiency: of_efficiency, .. } = Spread::default();
        all.push(net_energy(&found.parts, net));
        let words = ("ṁ = P / (η H)", "{} / ({} · {})");
        let rate = (asked.device.fuel_rate_g_s(), "g/s");
        all.push(
            Step::new("fuel-rate", words, &[power, efficiency, net], rate, None).good_to(of_power.hypot(of_efficiency)),
        );
    }
    match (&asked.device, &found.heat) {
        (Device::Vaporiser(asked), Heat::Vaporiser(found)) => all.extend(vaporiser_steps(asked, found)),
        (Device::Regulator(asked), Heat::Regulator(found)) => all.extend(regulator_steps(asked, found)),
        // An answer of the other device is none of this sum.
        (Device::Vaporiser(_), Heat::Regulator(_)) | (Device::Regulator(_), Heat::Vaporiser(_)) => {}
    }
    if let (Some(changeover), Some(dew), Some(margin)) =
        (asked.changeover_c, found.heat.dew_temperature_c(), found.margin_k)
    {
        all.push(Step::new("changeover-margin", ("T_c - T_d", "{} - {}"), &[changeover, dew], (margin, "K"), None));
    }
    all.extend(capacity(asked, found));
    all
}

fn capacity(asked: &Asked, found: &Found) -> Vec<Step> {
    let (Some(told), Some(judged)) = (asked.capacity, &found.judged) else { return Vec::new() };
    let (need, power) = (found.heat.heat_kw(), asked.rated_power_kw);
    let used = (judged.used_share, "");
    match told {
        Capacity::Heat { heat_kw } => {
            let share = Step::new("capacity-used", ("Q / Q_told", "{} / {}"), &[need, heat_kw], used, None);
            let served = power.zip(judged.engine_kw).map(|(power, served)| {
                let words = ("P Q_told / Q", "{} · {} / {}");
                Step::new("engine-served", words, &[power, heat_kw, need], (served, "kW"), None)
                    .good_to(judged.relative_uncertainty)
            });
            std::iter::once(share.good_to(judged.relative_uncertainty)).chain(served).collect()
        }
        Capacity::Engine { engine_kw } => {
            let Some(power) = power else { return Vec::new() };
            vec![
                Step::new("capacity-used", ("P / P_told", "{} / {}"), &[power, engine_kw], used, None)
                    .good_to(judged.relative_uncertainty),
                Step::new(
                    "heat-stood-for",
                    ("Q P_told / P", "{} · {} / {}"),
                    &[need, engine_kw, power],
                    (judged.heat_kw, "kW"),
                    None,
                ),
            ]
        }
    }
}
