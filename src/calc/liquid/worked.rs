//! Vapour pressure and liquid density laid out step by step.
//!
//! The bubble point of an equation of state is a search and cannot be redone by hand. What can: the saturation pressure of
//! each component, Raoult's sum as a plausibility line, and the correction of the printed bubble point.

use super::{
    BubblePoint, DENSITY_UNCERTAINTY, Liquid, SaturatedDensity, VAPOUR_PRESSURE_UNCERTAINTY, bubble, characteristic,
    saturation_kpa,
};
use crate::calc::substance::{Component, Wagner};
use crate::calc::worked::sum_of;
use crate::calc::{Composition, Error, ICE_POINT_K, Source, Step};

/// Base of the natural logarithm, as it goes into the steps.
const E: &str = "2.718281828459";
/// Reduced temperatures are subtracted from 1.
const REDUCED_FIGURES: i32 = 8;

/// The steps from the components to the bubble pressure.
///
/// # Errors
/// As [`super::vapour_pressure`].
pub fn vapour_pressure_steps(liquid: &Liquid, found: &BubblePoint) -> Result<Vec<Step>, Error> {
    let Liquid { composition, temperature_c: c } = liquid;
    let t = c + ICE_POINT_K;
    let mut all = Vec::new();
    let mut raoult = Vec::new();
    for (component, x) in composition.present() {
        // Above its critical temperature a component has no saturation pressure, and the mixture no Raoult line.
        let (Some(wagner), Some(kpa)) = (component.constants().wagner, saturation_kpa(component, *c)) else { continue };
        all.extend(saturation(component, wagner, t, kpa));
        raoult.push([x, kpa]);
    }
    if raoult.len() == composition.present().count() {
        let kpa = raoult.iter().map(|[x, kpa]| x * kpa).sum();
        let (put_in, values) = sum_of("{} · {}", raoult);
        all.push(Step::new("raoult", ("p_R = Σ x p_s", &put_in), &values, (kpa, "kPa"), None));
    }
    all.extend(corrected(composition, *c, found)?);
    Ok(all)
}

fn saturation(component: Component, wagner: Wagner, t: f64, kpa: f64) -> [Step; 2] {
    let Wagner { critical_temperature_k: tc, critical_pressure_kpa: pc, coefficients: [a, b, c, d] } = wagner;
    let tr = t / tc;
    let put_in = format!(
        "{{}} · {E} ^ (({{}} · (1 - {{}}) + {{}} · (1 - {{}}) ^ 1.5 + {{}} · (1 - {{}}) ^ 2.5 + {{}} · (1 - {{}}) ^ 5) / {{}})"
    );
    [
        Step::new(reduced_key(component), ("T_r = T / T_c", "{} / {}"), &[t, tc], (tr, ""), Source::VdiHeatAtlas2010)
            .with_result_of(REDUCED_FIGURES),
        Step::new(
            saturation_key(component),
            ("p_s = p_c e^((A t + B t^1.5 + C t^2.5 + D t^5) / T_r), t = 1 - T_r", &put_in),
            &[pc, a, tr, b, tr, c, tr, d, tr, tr],
            (kpa, "kPa"),
            Source::VdiHeatAtlas2010,
        )
        .with_numbers_of(REDUCED_FIGURES)
        .good_to(if component == Component::Propene { 0.0034 } else { 0.0012 }),
    ]
}

/// The bubble point of the equation of state as it stands, and its correction to the saturation pressures.
fn corrected(composition: &Composition, c: f64, found: &BubblePoint) -> Result<Vec<Step>, Error> {
    let t = c + ICE_POINT_K;
    let plain = bubble(composition, t)?.0 / 1e3;
    let mut put_in = "{}".to_owned();
    let mut values = vec![plain];
    let mut all =
        vec![Step::new("bubble-plain", ("p_PR(x, T)", "T {} °C"), &[c], (plain, "kPa"), Source::PengRobinson1976)];
    for (component, y) in found.vapour.present() {
        if t >= 0.98 * component.constants().critical_temperature_k {
            continue;
        }
        let Some(wagner) = saturation_kpa(component, c) else { continue };
        let alone = bubble(&Composition::pure(component), t)?.0 / 1e3;
        put_in.push_str(" · ({} / {}) ^ {}");
        values.extend([wagner, alone, y]);
    }
    // The vapour of one component is that component: its share of 1 says nothing.
    if composition.present().count() > 1 {
        for (component, y) in found.vapour.present() {
            let stated = ("y(x, T)", "T {} °C");
            all.push(Step::new(vapour_key(component), stated, &[c], (y, ""), Source::PengRobinson1976));
        }
    }
    let formula = "p = p_PR Π (p_s / p_s,PR)^y";
    let bubble =
        Step::new("bubble", (formula, &put_in), &values, (found.pressure_kpa, "kPa"), Source::PengRobinson1976);
    let propene = composition.share(Component::Propene) > 0.0;
    all.push(bubble.good_to(if propene { 3.0 * VAPOUR_PRESSURE_UNCERTAINTY } else { VAPOUR_PRESSURE_UNCERTAINTY }));
    Ok(all)
}

/// The steps from the components to the density of the saturated liquid.
#[must_use]
pub fn density_steps(liquid: &Liquid, found: &SaturatedDensity) -> Vec<Step> {
    let Liquid { composition, temperature_c } = liquid;
    let t = temperature_c + ICE_POINT_K;
    let whole = characteristic(composition);
    let (volume, tc, w) = (1e6 * whole.volume, whole.temperature_k, whole.acentric_factor);
    // Callers come with a found density, so every component has its constants.
    let parts: Vec<[f64; 4]> = composition
        .present()
        .filter_map(|(c, x)| {
            let own = c.constants().costald?;
            Some([x, 100.0 * own.volume_1e4_m3_mol, c.constants().critical_temperature_k, own.acentric_factor])
        })
        .collect();
    let source = Source::Costald1979;
    let mut all = vec![crate::calc::fuel::worked::molar_mass(composition)];
    all.extend(mixed(&parts, volume, tc, w));
    let tr = t / tc;
    let s = (1.0 - tr).cbrt();
    let v0 = 1.0 - 1.528_16 * s + 1.439_07 * s * s - 0.814_46 * s.powi(3) + 0.190_454 * s.powi(4);
    let vd = (-0.296_123 + 0.386_914 * tr - 0.042_725_8 * tr * tr - 0.048_064_5 * tr.powi(3)) / (tr - 1.000_01);
    all.extend([
        Step::new("costald-reduced", ("T_r = T / T_c", "{} / {}"), &[t, tc], (tr, ""), source)
            .with_numbers_of(REDUCED_FIGURES)
            .with_result_of(REDUCED_FIGURES),
        Step::new(
            "costald-v0",
            (
                "V0 = 1 - 1.52816 t^(1/3) + 1.43907 t^(2/3) - 0.81446 t + 0.190454 t^(4/3), t = 1 - T_r",
                "1 - 1.52816 · (1 - {}) ^ (1/3) + 1.43907 · (1 - {}) ^ (2/3) - 0.81446 · (1 - {}) + 0.190454 · (1 - {}) ^ (4/3)",
            ),
            &[tr; 4],
            (v0, ""),
            source,
        )
        .with_numbers_of(REDUCED_FIGURES),
        Step::new(
            "costald-vd",
            (
                "Vd = (-0.296123 + 0.386914 T_r - 0.0427258 T_r² - 0.0480645 T_r³) / (T_r - 1.00001)",
                "(0.386914 · {} - 0.296123 - 0.0427258 · {} ^ 2 - 0.0480645 · {} ^ 3) / ({} - 1.00001)",
            ),
            &[tr; 4],
            (vd, ""),
            source,
        )
        .with_numbers_of(REDUCED_FIGURES),
        Step::new(
            "liquid-density",
            ("ρ = 1000 M / (V* V0 (1 - w Vd))", "1000 · {} / ({} · {} · (1 - {} · {}))"),
            &[composition.molar_mass_g_mol(), volume, v0, w, vd],
            (found.density_kg_m3, "kg/m³"),
            source,
        )
        .good_to(DENSITY_UNCERTAINTY),
    ]);
    all
}

/// The mixing rules; `parts` holds mole fraction, V* (cm3/mol), critical temperature (K) and acentric factor.
fn mixed(parts: &[[f64; 4]], volume: f64, tc: f64, w: f64) -> [Step; 3] {
    let source = Source::Costald1979;
    let volumes = || parts.iter().map(|[x, v, ..]| [*x, *v]);
    let (plain, mut values) = sum_of("{} · {}", volumes());
    let (two_thirds, more) = sum_of("{} · {} ^ (2/3)", volumes());
    let (third, _) = sum_of("{} · {} ^ (1/3)", volumes());
    values.extend(more.iter().chain(&more));
    let (cross, mut cross_values) = sum_of("{} · √({} · {})", parts.iter().map(|[x, v, tc, _]| [*x, *v, *tc]));
    cross_values.push(volume);
    let (factors, factor_values) = sum_of("{} · {}", parts.iter().map(|[x, .., w]| [*x, *w]));
    [
        Step::new(
            "costald-volume",
            (
                "V* = (Σ x V + 3 Σ x V^(2/3) Σ x V^(1/3)) / 4",
                &format!("({plain} + 3 · ({two_thirds}) · ({third})) / 4"),
            ),
            &values,
            (volume, "cm³/mol"),
            source,
        ),
        Step::new(
            "costald-critical",
            ("T_c = (Σ x √(V T_c))² / V*", &format!("({cross}) ^ 2 / {{}}")),
            &cross_values,
            (tc, "K"),
            source,
        ),
        Step::new("costald-acentric", ("w = Σ x w", &factors), &factor_values, (w, ""), source),
    ]
}

fn reduced_key(component: Component) -> &'static str {
    match component {
        Component::Ethane => "reduced-ethane",
        Component::Propane => "reduced-propane",
        Component::Propene => "reduced-propene",
        Component::NButane => "reduced-n-butane",
        Component::Isobutane => "reduced-isobutane",
        Component::NPentane => "reduced-n-pentane",
        Component::Methane | Component::Nitrogen | Component::CarbonDioxide => "reduced-other",
    }
}

fn saturation_key(component: Component) -> &'static str {
    match component {
        Component::Ethane => "saturation-ethane",
        Component::Propane => "saturation-propane",
        Component::Propene => "saturation-propene",
        Component::NButane => "saturation-n-butane",
        Component::Isobutane => "saturation-isobutane",
        Component::NPentane => "saturation-n-pentane",
        Component::Methane | Component::Nitrogen | Component::CarbonDioxide => "saturation-other",
    }
}

fn vapour_key(component: Component) -> &'static str {
    match component {
        Component::Ethane => "vapour-ethane",
        Component::Propane => "vapour-propane",
        Component::Propene => "vapour-propene",
        Component::NButane => "vapour-n-butane",
        Component::Isobutane => "vapour-isobutane",
        Component::NPentane => "vapour-n-pentane",
        Component::Methane | Component::Nitrogen | Component::CarbonDioxide => "vapour-other",
    }
}
