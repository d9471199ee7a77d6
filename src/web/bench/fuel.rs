//! What a fuel gives and needs.

use super::answered::Answered;
use super::sum::{BenchSum, answer_of};
use crate::calc::composition::Shares;
use crate::calc::fuel::{BASIS, fuel, steps};
use crate::calc::fuel_parts::{Part, parts};
use crate::calc::substance::Component;
use crate::calc::{Composition, Error};
use crate::web::form::Form;
use crate::web::fuel_mix::{self, Offer};
use crate::web::job::origins;
use crate::web::kit::{Cell, Column, Group, Table};
use crate::words::Words;

/// `/bench/fuel`.
#[derive(Debug)]
pub struct FuelSum;

/// Mole, mass and liquid-volume shares beside each other: suppliers quote any of them.
fn shares(w: &Words, fuel: &Composition, parts: &[Part]) -> Table {
    let (mass, volume) = (fuel.mass().to_array(), fuel.liquid_volume().ok().map(Shares::to_array));
    let percent = |share: f64| Cell::new(w.number(100.0 * share, 2));
    let row = |(component, mole): (Component, f64)| {
        let at = component as usize;
        let part = parts.iter().find(|part| part.component == component.key());
        vec![
            Cell::new(w.t(format!("component-{}", component.key()))),
            percent(mole),
            percent(mass[at]),
            volume.map_or_else(|| Cell::new("–"), |volume| percent(volume[at])),
            Cell::new(part.map_or_else(String::new, |part| w.number(part.lower_heating_value_mj_kg, 2))),
            Cell::new(part.map_or_else(String::new, |part| w.number(part.stoichiometric_afr, 2))),
        ]
    };
    let mut columns = vec![Column::text(w.t("bench-column-component"))];
    columns.extend(
        ["mole", "mass", "liquid-volume", "energy", "air"]
            .map(|name| Column::number(w.head(format!("bench-column-{name}")))),
    );
    Table { w: *w, caption: w.t("bench-fuel-shares"), columns, rows: fuel.present().map(row).collect() }
}

impl BenchSum for FuelSum {
    const KEY: &'static str = "fuel";
    // 60 mol % propane in n-butane: the mixture `p60_b40` of the reference files.
    const EXAMPLE: &'static [(&'static str, &'static str)] =
        &[("fuel_mix", "typed-mole"), ("share_propane", "60"), ("share_n_butane", "40")];
    type Asked = Composition;

    fn openings() -> Vec<origins::Default> {
        Vec::new()
    }

    fn groups(w: &Words, form: &Form) -> Vec<Group> {
        vec![fuel_mix::group(w, Offer::Any, form)]
    }

    fn read(w: &Words, form: &mut Form) -> Option<Composition> {
        fuel_mix::read(w, Offer::Any, form)
    }

    fn answer(w: &Words, form: &mut Form, asked: &Composition) -> Option<Answered> {
        let both = fuel(asked).and_then(|found| Ok::<_, Error>((found, parts(asked)?)));
        let (found, parts) = answer_of(w, form, "fuel_mix", both)?;
        let q = |value: f64, decimals: u8, unit: &str| Some(w.quantity(value, decimals, unit));
        let octane = found.motor_octane_number.map(|number| w.number(number, 1));
        Some(
            Answered::new(w)
                .main("bench-fuel-energy", w.quantity(found.lower_heating_value_mj_kg, 2, "MJ/kg"))
                .main("bench-fuel-air", w.quantity(found.stoichiometric_afr, 2, "kg/kg"))
                .main("bench-fuel-octane", octane.unwrap_or_else(|| w.t("bench-fuel-octane-none")))
                .main("bench-fuel-wobbe", w.quantity(found.wobbe_mj_m3, 2, "MJ/m³"))
                .cautions(&found.cautions)
                .results(vec![
                    ("bench-fuel-molar-mass", q(found.molar_mass_g_mol, 3, "g/mol")),
                    ("bench-fuel-h-c", q(found.h_c_ratio, 3, "")),
                    ("bench-fuel-net-wobbe", q(found.net_wobbe_mj_m3, 2, "MJ/m³")),
                    ("bench-fuel-gross", q(found.gross_mj_m3, 2, "MJ/m³")),
                    ("bench-fuel-relative-density", q(found.relative_density, 4, "")),
                    ("bench-fuel-co2", q(found.co2_kg_per_kg, 3, "kg/kg")),
                    ("bench-fuel-displaced", q(100.0 * found.displaced_share, 1, "%")),
                    ("bench-fuel-mixture", q(found.mixture_energy_mj_m3, 2, "MJ/m³")),
                ])
                .table(shares(w, asked, &parts))
                .steps(&steps(asked, &found))
                .basis(&BASIS),
        )
    }

    fn fuel(asked: &Composition) -> Option<&Composition> {
        Some(asked)
    }
}
