//! Which fuel a sum is made for: a preset by name, or shares as a supplier states them.
//!
//! No mix is taken silently: it is chosen, and the choice stands among the inputs with its source.

use super::sum;
use crate::calc::composition::{Composition, PRESETS, Preset, Shares};
use crate::calc::substance::Component;
use crate::model::job::Fuel;
use crate::unit::Unit;
use crate::web::form::{Form, Wrong};
use crate::web::kit::{self, Choice, Group};
use crate::words::Words;

/// Shares typed, by what they are counted.
const TYPED: [&str; 3] = ["typed-mole", "typed-mass", "typed-liquid-volume"];

/// Which mixes a form offers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Offer {
    /// What a container holds.
    Lpg,
    /// What a cylinder holds.
    Cng,
    /// Either, and whatever else of the nine components: nitrogen for a measurement.
    Any,
}

impl From<Fuel> for Offer {
    fn from(fuel: Fuel) -> Self {
        match fuel {
            Fuel::Lpg => Self::Lpg,
            Fuel::Cng => Self::Cng,
        }
    }
}

impl Offer {
    fn presets(self) -> impl Iterator<Item = &'static Preset> {
        PRESETS.iter().filter(move |preset| match self {
            Self::Lpg => preset.is_lpg,
            Self::Cng => !preset.is_lpg,
            Self::Any => true,
        })
    }

    const fn components(self) -> &'static [Component] {
        use Component::{CarbonDioxide, Ethane, Isobutane, Methane, NButane, NPentane, Nitrogen, Propane, Propene};
        match self {
            Self::Lpg => &[Propane, Propene, NButane, Isobutane, Ethane, NPentane],
            Self::Cng => &[Methane, Ethane, Propane, NButane, Isobutane, NPentane, Nitrogen, CarbonDioxide],
            Self::Any => &[Propane, Propene, NButane, Isobutane, Methane, Ethane, NPentane, Nitrogen, CarbonDioxide],
        }
    }
}

fn name(component: Component) -> String {
    format!("share_{}", component.key())
}

/// Names of the fields, to keep what was typed.
pub fn names(offer: Offer) -> Vec<String> {
    std::iter::once("fuel_mix".to_owned()).chain(offer.components().iter().map(|one| name(*one))).collect()
}

/// The fields.
pub fn group(w: &Words, offer: Offer, form: &Form) -> Group {
    let typed = TYPED.iter().filter(|key| offer != Offer::Cng || **key != "typed-liquid-volume");
    let choices: Vec<Choice> = offer
        .presets()
        .map(|preset| preset.key)
        .chain(typed.copied())
        .map(|key| Choice::new(key, w.t(format!("fuel-mix-{key}"))))
        .collect();
    let mut fields = vec![kit::choice(form, w, "fuel_mix", &choices).wide()];
    fields.extend(offer.components().iter().map(|component| {
        let field = kit::number(form, w, name(*component)).unit(Unit::Percent).optional();
        field.called(w.t(format!("component-{}", component.key()))).hinted("")
    }));
    Group::new(w.t("sizing-group-fuel"), fields).noted(w.t("sizing-note-fuel"))
}

/// The mix chosen or typed.
pub fn read(w: &Words, offer: Offer, form: &mut Form) -> Option<Composition> {
    let key = form.choice::<String>("fuel_mix");
    let mut shares = [0.0; 9];
    let mut first_typed = None;
    for component in offer.components() {
        if let Some(percent) = form.opt_number(&name(*component), Unit::Percent, 0.0..=100.0) {
            shares[*component as usize] = percent / 100.0;
            first_typed = first_typed.or(Some(*component));
        }
    }
    let key = key?;
    if let Some(preset) = offer.presets().find(|preset| preset.key == key) {
        if let Some(component) = first_typed {
            form.fail(&name(component), Wrong::Rule("fuel-mix-both", Vec::new()));
            return None;
        }
        return Some(preset.composition);
    }
    let shares = Shares::from_array(shares);
    let read = match key.as_str() {
        "typed-mole" => Composition::from_mole(shares).map_err(Into::into),
        "typed-mass" => Composition::from_mass(shares).map_err(Into::into),
        "typed-liquid-volume" => Composition::from_liquid_volume(shares),
        _ => {
            form.fail("fuel_mix", Wrong::NotAChoice);
            return None;
        }
    };
    let first = name(first_typed.unwrap_or(offer.components()[0]));
    match read {
        Ok(composition) => Some(composition),
        Err(crate::calc::Error::Outside(outside)) if outside.quantity == "composition" => {
            let sum = w.quantity(100.0 * outside.got, 1, "%");
            form.fail(&first, Wrong::Rule("fuel-mix-sum", vec![("sum", sum.into())]));
            None
        }
        Err(error) => {
            sum::refuse(w, form, &error, "fuel_mix", |_| first.clone());
            None
        }
    }
}

/// The mix in words: its name, and mole per cent of every component.
pub fn said(w: &Words, key: &str, composition: &Composition) -> String {
    let part = |(component, share): (Component, f64)| {
        format!("{} {}", w.t(format!("component-{}", component.key())), w.quantity(100.0 * share, 1, "%"))
    };
    let parts: Vec<String> = composition.present().map(part).collect();
    w.tv("fuel-mix-said", &[("name", w.t(format!("fuel-mix-{key}")).into()), ("parts", parts.join(", ").into())])
}

/// Where the mix comes from: the source of its preset, or the person who typed it.
pub fn origin(w: &Words, key: &str) -> String {
    let preset = PRESETS.iter().find(|preset| preset.key == key);
    preset.map_or_else(|| w.t("origin-entered"), |preset| preset.source.to_owned())
}
