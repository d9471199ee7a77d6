//! The sums of a fuel laid out step by step, by mole fractions.

use super::{BASIS, Fuel, WATER_VAPORISATION_15C_KJ_MOL, ideal_molar_volume_l};
use crate::calc::liquid::molar_volume_m3_mol;
use crate::calc::substance::{
    AIR_DENSITY_15C_KG_M3, AIR_MOLAR_MASS_G_MOL, AIR_OXYGEN_SHARE, Component, Substance, WATER_VAPORISATION_25C_KJ_MOL,
};
use crate::calc::worked::sum_of;
use crate::calc::{ATMOSPHERE_KPA, Composition, REFERENCE_C, Source, Step};

/// The steps from the mole fractions to energy, air need, octane, Wobbe index and carbon dioxide.
#[must_use]
pub fn steps(composition: &Composition, fuel: &Fuel) -> Vec<Step> {
    let good = BASIS.relative_uncertainty.unwrap_or(0.0);
    let mut all = vec![molar_mass(composition)];
    all.extend(burning(composition, fuel, good));
    all.extend(octane(composition, fuel));
    all.extend(by_volume(composition, fuel, good));
    all.extend(charge(fuel));
    all
}

/// Molar mass from the mole fractions.
pub(in crate::calc) fn molar_mass(composition: &Composition) -> Step {
    let (put_in, values) = sum_of("{} · {}", composition.present().map(|(c, x)| [x, c.constants().molar_mass_g_mol]));
    let result = (composition.molar_mass_g_mol(), "g/mol");
    Step::new("molar-mass", ("M = Σ x M", &put_in), &values, result, Source::Gerg2008)
}

fn burns(composition: &Composition) -> impl Iterator<Item = (f64, &'static Substance)> + '_ {
    composition.present().map(|(c, x)| (x, c.constants())).filter(|(_, c)| c.carbon > 0.0)
}

/// A sum over what burns and all the numbers in it, with one more term for the carbon dioxide that is in the gas.
fn burning(composition: &Composition, fuel: &Fuel, good: f64) -> Vec<Step> {
    let m = fuel.molar_mass_g_mol;
    let (energy, mut energy_values) = sum_of(
        "{} · ({} - {} · {} / 2)",
        burns(composition).map(|(x, c)| [x, c.gross_25c_kj_mol, WATER_VAPORISATION_25C_KJ_MOL, c.hydrogen]),
    );
    energy_values.push(m);
    let (air, mut air_values) =
        sum_of("{} · ({} + {} / 4)", burns(composition).map(|(x, c)| [x, c.carbon, c.hydrogen]));
    air_values.extend([AIR_OXYGEN_SHARE, AIR_MOLAR_MASS_G_MOL, m]);
    let (hydrogen, mut ratio_values) = sum_of("{} · {}", burns(composition).map(|(x, c)| [x, c.hydrogen]));
    let (carbon, carbon_values) = sum_of("{} · {}", burns(composition).map(|(x, c)| [x, c.carbon]));
    ratio_values.extend(&carbon_values);
    let mut dioxide_values = carbon_values;
    let dioxide = Component::CarbonDioxide;
    dioxide_values.extend([composition.share(dioxide), dioxide.constants().molar_mass_g_mol, m]);
    vec![
        Step::new(
            "net-energy-by-mole",
            ("H = Σ x (H_s - 44.016 h / 2) / M", &format!("({energy}) / {{}}")),
            &energy_values,
            (fuel.lower_heating_value_mj_kg, "MJ/kg"),
            Source::Iso6976,
        )
        .good_to(good),
        Step::new(
            "air-need-by-mole",
            ("L = Σ x (c + h / 4) / x_O₂ M_L / M", &format!("({air}) / {{}} · {{}} / {{}}")),
            &air_values,
            (fuel.stoichiometric_afr, "kg/kg"),
            None,
        )
        .good_to(good),
        Step::new(
            "hydrogen-over-carbon",
            ("H/C = Σ x h / Σ x c", &format!("({hydrogen}) / ({carbon})")),
            &ratio_values,
            (fuel.h_c_ratio, ""),
            None,
        ),
        Step::new(
            "carbon-dioxide",
            ("k = (Σ x c + x_CO₂) M_CO₂ / M", &format!("({carbon} + {{}}) · {{}} / {{}}")),
            &dioxide_values,
            (fuel.co2_kg_per_kg, "kg/kg"),
            None,
        )
        .good_to(good),
    ]
}

/// Liquid volumes at 15 C weigh the blending values.
fn octane(composition: &Composition, fuel: &Fuel) -> Vec<Step> {
    let Some(number) = fuel.motor_octane_number else { return Vec::new() };
    let mut parts = Vec::new();
    for (component, x) in composition.present() {
        let Ok(volume) = molar_volume_m3_mol(&Composition::pure(component), REFERENCE_C) else { return Vec::new() };
        parts.push([x, 1e6 * volume, component.constants().motor_octane_blend.unwrap_or(0.0)]);
    }
    let whole: f64 = parts.iter().map(|[x, v, _]| x * v).sum();
    let (volume, volume_values) = sum_of("{} · {}", parts.iter().map(|[x, v, _]| [*x, *v]));
    let (blend, mut blend_values) = sum_of("{} · {} · {}", parts);
    blend_values.push(whole);
    vec![
        Step::new(
            "liquid-molar-volume",
            ("V = Σ x V_i", &volume),
            &volume_values,
            (whole, "cm³/mol"),
            Source::Costald1979,
        ),
        Step::new(
            "octane",
            ("MON = Σ x V_i MON_i / V", &format!("({blend}) / {{}}")),
            &blend_values,
            (number, ""),
            Source::AstmD2598,
        ),
    ]
}

fn by_volume(composition: &Composition, fuel: &Fuel, good: f64) -> Vec<Step> {
    let (m, d) = (fuel.molar_mass_g_mol, fuel.relative_density);
    let density = d * AIR_DENSITY_15C_KG_M3;
    let (gross, mut gross_values) = sum_of("{} · {}", burns(composition).map(|(x, c)| [x, c.gross_15c_kj_mol]));
    gross_values.extend([density, m]);
    let (net, mut net_values) = sum_of(
        "{} · ({} - {} · {} / 2)",
        burns(composition).map(|(x, c)| [x, c.gross_15c_kj_mol, WATER_VAPORISATION_15C_KJ_MOL, c.hydrogen]),
    );
    net_values.extend([density, m, d]);
    vec![
        Step::new(
            "reference-density",
            ("ρ(p, T)", "p {} kPa, T {} °C"),
            &[ATMOSPHERE_KPA, REFERENCE_C],
            (density, "kg/m³"),
            Source::Gerg2008,
        )
        .good_to(good),
        Step::new(
            "relative-density",
            ("d = ρ / ρ_L", "{} / {}"),
            &[density, AIR_DENSITY_15C_KG_M3],
            (d, ""),
            Source::Iso6976,
        )
        .good_to(good),
        Step::new(
            "gross-by-volume",
            ("H_v = Σ x H_s ρ / M", &format!("({gross}) · {{}} / {{}}")),
            &gross_values,
            (fuel.gross_mj_m3, "MJ/m³"),
            Source::Iso6976,
        )
        .good_to(good),
        Step::new(
            "wobbe",
            ("W = H_v / √d", "{} / √{}"),
            &[fuel.gross_mj_m3, d],
            (fuel.wobbe_mj_m3, "MJ/m³"),
            Source::Iso6976,
        )
        .good_to(good),
        Step::new(
            "net-wobbe",
            ("W_i = Σ x (H_s - 44.431 h / 2) ρ / M / √d", &format!("({net}) · {{}} / {{}} / √{{}}")),
            &net_values,
            (fuel.net_wobbe_mj_m3, "MJ/m³"),
            Source::Iso6976,
        )
        .good_to(good),
    ]
}

/// Gas takes the place of air: its share of the charge, and what a cubic metre of charge carries.
fn charge(fuel: &Fuel) -> [Step; 2] {
    let Fuel { stoichiometric_afr: l, molar_mass_g_mol: m, lower_heating_value_mj_kg: h, .. } = *fuel;
    [
        Step::new(
            "displaced",
            ("s = 1 / (1 + L M / M_L)", "1 / (1 + {} · {} / {})"),
            &[l, m, AIR_MOLAR_MASS_G_MOL],
            (fuel.displaced_share, ""),
            None,
        ),
        Step::new(
            "mixture-energy",
            ("E = H M / (1 + L M / M_L) / V_m", "{} · {} / (1 + {} · {} / {}) / {}"),
            &[h, m, l, m, AIR_MOLAR_MASS_G_MOL, ideal_molar_volume_l()],
            (fuel.mixture_energy_mj_m3, "MJ/m³"),
            None,
        ),
    ]
}
