//! One flow for every sum of the Bench: the address gives the form, the form gives the answer.
//!
//! An address without inputs shows the form with its defaults and no answer, because no fuel is ever taken silently. A
//! field that the address does not name opens with its default; one that it names empty stays empty. Keys that no field
//! has are ignored. What is wrong stands beside its field, everything typed stays, and the answer is left out.

use askama::Template;
use axum::extract::RawQuery;

use super::answered::Answered;
use super::fuel_rate::FuelRate;
use crate::calc::{Composition, Error};
use crate::web::form::{Form, Typed, Wrong, unit_name};
use crate::web::job::origins;
use crate::web::kit::{self, Group};
use crate::web::page::{Frame, Place, page, retry};
use crate::web::visitor::Visitor;
use crate::web::{Answer, fuel_mix, path, sum};
use crate::words::{Value, Words};

/// A sum that stands on the Bench.
pub trait BenchSum: 'static {
    /// The end of its address; its title and one line are the words `bench-sum-{KEY}` and its `.lead`.
    const KEY: &'static str;
    /// Where labels are looked up first: `{SCOPE}-{field}`.
    const SCOPE: &'static str = "bench";
    /// Inputs of a worked example, name and text; the source stands beside it in the code.
    const EXAMPLE: &'static [(&'static str, &'static str)];
    /// What the sum is asked.
    type Asked;

    /// Texts the form opens with, each with the code of its origin.
    fn openings() -> Vec<origins::Default>;

    /// The fields. Which fields there are may depend on what was typed.
    fn groups(w: &Words, form: &Form) -> Vec<Group>;

    /// What was typed; nothing when something is wrong, noted at its field.
    fn read(w: &Words, form: &mut Form) -> Option<Self::Asked>;

    /// The sum made and laid out; nothing when it refuses, noted at its field (see [`refuse`]).
    fn answer(w: &Words, form: &mut Form, asked: &Self::Asked) -> Option<Answered>;

    /// The fuel that was asked for, where the sum has one; said above the results with its source.
    fn fuel(asked: &Self::Asked) -> Option<&Composition> {
        let _ = asked;
        None
    }
}

/// The answer of a sum, or its refusal noted: beside the field that bears the name of the quantity, at `gas_field` when
/// the state of the gas is at fault.
pub fn answer_of<T>(w: &Words, form: &mut Form, gas_field: &str, answer: Result<T, Error>) -> Option<T> {
    answer.map_err(|error| refuse(w, form, gas_field, &error)).ok()
}

/// Notes a refusal beside its field.
pub fn refuse(w: &Words, form: &mut Form, gas_field: &str, error: &Error) {
    let field_of = |quantity: &str| match quantity {
        "composition" => "fuel_mix".to_owned(),
        other => other.to_owned(),
    };
    sum::refuse(w, form, error, gas_field, field_of);
}

/// The same for a sum that is given a fuel rate: what it says of the rate belongs to the field that gave it.
pub fn refuse_rate(w: &Words, form: &mut Form, gas_field: &str, rate: FuelRate, error: &Error) {
    if let Error::Outside(outside) = error
        && matches!(outside.quantity, "fuel_rate_g_s" | "flow_g_s")
        && matches!(rate, FuelRate::Power { .. })
    {
        let g_s = |value: f64| Value::from(w.quantity(value, 2, "g/s"));
        let values = vec![("got", g_s(outside.got)), ("least", g_s(outside.least)), ("most", g_s(outside.most))];
        form.fail(rate.field(), Wrong::Rule("bench-fuel-rate-beyond", values));
        return;
    }
    let field_of = |quantity: &str| match quantity {
        "composition" => "fuel_mix".to_owned(),
        "flow_g_s" => "fuel_rate_g_s".to_owned(),
        other => other.to_owned(),
    };
    sum::refuse(w, form, error, gas_field, field_of);
}

#[derive(Template)]
#[template(path = "bench/sum.html")]
struct SumPage {
    frame: Frame,
    form: Form,
    title: String,
    lead: String,
    action: String,
    example: String,
    groups: Vec<Group>,
    answer: Option<Answered>,
}

/// `GET /bench/{KEY}`: the form, and the answer where the address asks for one.
pub async fn show<S: BenchSum>(who: Visitor, RawQuery(query): RawQuery) -> Answer {
    let w = who.words();
    let typed = Form::from(Typed::from_query(query.as_deref().unwrap_or_default())).scoped(S::SCOPE);
    let (mut form, is_asked) = opened::<S>(&w, &typed);
    let answer = if is_asked { answered::<S>(&w, &mut form) } else { None };
    let is_wrong = is_asked && answer.is_none();
    let shown = SumPage {
        title: w.t(format!("bench-sum-{}", S::KEY)),
        lead: w.t(format!("bench-sum-{}.lead", S::KEY)),
        action: path::bench(S::KEY),
        example: address(S::KEY, S::EXAMPLE.iter().copied()),
        groups: S::groups(&w, &form),
        frame: who.frame().at(Place::Bench),
        form,
        answer,
    };
    if is_wrong { retry(shown) } else { page(shown) }
}

fn answered<S: BenchSum>(w: &Words, form: &mut Form) -> Option<Answered> {
    let asked = S::read(w, form);
    form.sound()?;
    let asked = asked?;
    let answer = S::answer(w, form, &asked)?;
    form.sound()?;
    let answer = match S::fuel(&asked) {
        Some(fuel) => {
            let mix = form.value("fuel_mix");
            answer.of_fuel(fuel_mix::said(w, mix, fuel), fuel_mix::origin(w, mix))
        }
        None => answer,
    };
    let names = names::<S>(w, form);
    let openings = S::openings();
    // An empty text matters only where the field would open with something else.
    let pairs: Vec<(&str, String)> = names
        .iter()
        .flat_map(|name| form.values(name).map(|text| (name.as_str(), form.whole_text(name, text))))
        .filter(|(name, text)| !text.trim().is_empty() || openings.iter().any(|(known, ..)| known == name))
        .collect();
    let pairs = pairs.iter().map(|(name, text)| (*name, text.as_str()));
    Some(answer.linked(address(S::KEY, pairs)))
}

fn names<S: BenchSum>(w: &Words, form: &Form) -> Vec<String> {
    let mut names: Vec<String> = Vec::new();
    for group in S::groups(w, form) {
        names.extend(group.every_field().map(|field| field.name().to_owned()));
    }
    names
}

/// The form as the address gives it, and whether the address asks for an answer.
fn opened<S: BenchSum>(w: &Words, typed: &Form) -> (Form, bool) {
    let mut form = Form::blank().scoped(S::SCOPE);
    let openings = S::openings();
    let mut is_asked = false;
    for name in names::<S>(w, typed) {
        let mut is_named = false;
        for text in typed.values(&name) {
            form.add(&name, text);
            is_named = true;
        }
        is_asked |= is_named;
        if is_named {
            form.set_unit(&name, typed.value(&unit_name(&name)));
        } else if let Some((_, text, _)) = openings.iter().find(|(known, ..)| *known == name) {
            form.set(&name, text);
        }
    }
    (form, is_asked)
}

/// The address that asks for these inputs.
fn address<'a>(key: &str, pairs: impl IntoIterator<Item = (&'a str, &'a str)>) -> String {
    let query = form_urlencoded::Serializer::new(String::new()).extend_pairs(pairs).finish();
    format!("{}?{query}", path::bench(key))
}
