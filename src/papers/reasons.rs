//! Reasons, proofs and codes in words: the same on the screen and on paper.

use crate::rules::{Arg, Proof, Why};
use crate::words::{Value, Words};

/// The sentence of a reason.
pub fn why(w: &Words, why: &Why) -> String {
    let values: Vec<(&'static str, Value<'static>)> =
        why.args.iter().map(|(name, arg)| (*name, Value::from(self::arg(w, arg)))).collect();
    w.tv(&format!("why-{}", why.key), &values)
}

/// A value inside a reason, in words.
fn arg(w: &Words, arg: &Arg) -> String {
    match arg {
        Arg::Text(text) => text.clone(),
        Arg::Number(value, decimals) => w.number(*value, *decimals),
        Arg::Quantity(value, decimals, unit) => w.quantity(*value, *decimals, unit),
        Arg::Date(day) => w.medium_date(*day),
        Arg::Code(list, code) => w.t(format!("{list}-{code}")),
        Arg::Key(key) => match key.strip_prefix("f-") {
            Some(field) => w.t(format!("field-{field}")),
            None => w.t(key),
        },
    }
}

/// The name of a proof: the shop's own words, else those of the language file.
pub fn proof_title(w: &Words, proof: &Proof) -> String {
    proof.title.clone().unwrap_or_else(|| w.t(format!("proof-{}", proof.id)))
}
