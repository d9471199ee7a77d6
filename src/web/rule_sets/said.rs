//! A rule line in words: what it asks, of what, by which source.

use time::Date;

use crate::model::Coded;
use crate::rules::{CheckLine, IntervalLine, LimitLine, ProofLine, RuleSet, TopicLine};
use crate::web::kit::{Cell, Mark, Row};
use crate::words::Words;

/// One line as the page shows it.
pub struct Said {
    id: String,
    /// What it asks.
    pub value: String,
    second: String,
    applies_to: Vec<String>,
    source: String,
    is_checked: bool,
}

impl Said {
    /// The line as a row: id, what, for what, source, standing.
    pub fn row(self, w: &Words, is_shop: bool) -> Row {
        let (mark, key) = match (is_shop, self.is_checked) {
            (true, _) => (Mark::Met, "rules-shop-line"),
            (false, true) => (Mark::Met, "rules-checked"),
            (false, false) => (Mark::Undecided, "rules-unchecked"),
        };
        let everything = self.applies_to.is_empty();
        let applies_to = if everything { w.t("rules-everything") } else { self.applies_to.join(", ") };
        vec![
            Cell::new(self.id),
            Cell::new(self.value).with_second(self.second),
            Cell::new(applies_to),
            Cell::new(self.source),
            Cell::new(w.t(key)).marked(mark),
        ]
    }
}

fn coded<T: Coded>(w: &Words, list: &[T]) -> Vec<String> {
    list.iter().map(|one| w.t(format!("{}-{}", T::LIST, one.code()))).collect()
}

fn days(w: &Words, from_on: Option<Date>, to_on: Option<Date>) -> Vec<String> {
    let said = |key: &str, on: Option<Date>| on.map(|on| w.tv(key, &[("on", w.date(on).into())]));
    [said("rules-in-force-from", from_on), said("rules-in-force-to", to_on)].into_iter().flatten().collect()
}

/// A proof.
pub fn proof(w: &Words, line: &ProofLine) -> Said {
    let title = line.title.clone().unwrap_or_else(|| w.t(format!("proof-{}", line.id)));
    let waive = if line.is_never_waived() { "rules-never-waived" } else { "rules-may-be-waived" };
    let mut second = vec![w.t(format!("deadline-{}", line.before.code())), w.t(waive)];
    if line.may_not_apply {
        second.push(w.t("rules-may-not-apply"));
    }
    let applies_to =
        [coded(w, &line.kinds), coded(w, &line.fuels), coded(w, &line.systems), days(w, line.from_on, line.to_on)];
    Said {
        id: line.id.clone(),
        value: title,
        second: second.join(". "),
        applies_to: applies_to.concat(),
        source: line.source.clone(),
        is_checked: line.checked,
    }
}

/// A limit.
pub fn limit(w: &Words, line: &LimitLine) -> Said {
    let quantity = w.t(format!("quantity-{}", line.quantity.code()));
    let number = |value: f64| w.number(value, (0..4).find(|n| exact(value, *n)).unwrap_or(4));
    let said = match (line.least, line.most) {
        (Some(least), Some(most)) => w.tv(
            "rules-between",
            &[("quantity", quantity.into()), ("least", number(least).into()), ("most", number(most).into())],
        ),
        (Some(least), None) => w.tv("rules-least", &[("quantity", quantity.into()), ("least", number(least).into())]),
        (None, most) => {
            let most = most.map(number).unwrap_or_default();
            w.tv("rules-most", &[("quantity", quantity.into()), ("most", most.into())])
        }
    };
    let catalyst = line.catalyst.map(|with| w.t(if with { "rules-with-catalyst" } else { "rules-without-catalyst" }));
    let registered = |key: &str, on: Option<Date>| on.map(|on| w.tv(key, &[("on", w.date(on).into())]));
    let more = [
        catalyst,
        registered("rules-registered-from", line.registered_from),
        registered("rules-registered-to", line.registered_to),
    ];
    let applies_to = [
        coded(w, &line.fuels),
        coded(w, &line.sections),
        more.into_iter().flatten().collect(),
        days(w, line.from_on, line.to_on),
    ];
    Said {
        id: line.id.clone(),
        value: said,
        second: w.t(format!("decision-rule-{}", line.decision.code())),
        applies_to: applies_to.concat(),
        source: line.source.clone(),
        is_checked: line.checked,
    }
}

fn exact(value: f64, decimals: u8) -> bool {
    let scaled = value * 10_f64.powi(i32::from(decimals));
    (scaled - scaled.round()).abs() < 1e-6
}

/// What falls due.
pub fn interval(w: &Words, line: &IntervalLine) -> Said {
    let duty = w.t(format!("duty-kind-{}", line.duty.code()));
    let months = line.months.map(i64::from);
    let km = line.km.map(|km| w.integer(km));
    let value = match (months, km) {
        (Some(n), Some(km)) => w.tv("rules-months-or-km", &[("duty", duty.into()), ("n", n.into()), ("km", km.into())]),
        (Some(n), None) => w.tv("rules-months", &[("duty", duty.into()), ("n", n.into())]),
        (None, km) => w.tv("rules-km", &[("duty", duty.into()), ("km", km.unwrap_or_default().into())]),
    };
    let anchor = w.t(format!("anchor-{}", line.anchor.code()));
    let applies_to = [
        coded(w, &line.kinds),
        coded(w, &line.fuels),
        line.part.map(|part| vec![w.t(format!("part-category-{}", part.code()))]).unwrap_or_default(),
        days(w, line.from_on, line.to_on),
    ];
    Said {
        id: line.id.clone(),
        value,
        second: w.tv("rules-counted-from", &[("anchor", anchor.into())]),
        applies_to: applies_to.concat(),
        source: line.source.clone(),
        is_checked: line.checked,
    }
}

/// A line of the checklist.
pub fn check(w: &Words, line: &CheckLine) -> Said {
    Said {
        id: line.id.clone(),
        value: line.title.clone().unwrap_or_else(|| w.t(format!("check-{}", line.id))),
        second: if line.may_not_apply { w.t("rules-may-not-apply") } else { String::new() },
        applies_to: coded(w, &line.fuels),
        source: line.source.clone(),
        is_checked: line.checked,
    }
}

/// A topic of the hand-over.
pub fn topic(w: &Words, line: &TopicLine) -> Said {
    Said {
        id: line.id.clone(),
        value: line.title.clone().unwrap_or_else(|| w.t(format!("topic-{}", line.id))),
        second: String::new(),
        applies_to: coded(w, &line.fuels),
        source: line.source.clone(),
        is_checked: line.checked,
    }
}

/// What the line with this id says in a set; empty where there is none.
pub fn line(w: &Words, set: &RuleSet, id: &str) -> String {
    let proof = set.proof.iter().find(|line| line.id == id).map(|line| proof(w, line));
    let limit = set.limit.iter().find(|line| line.id == id).map(|line| limit(w, line));
    let interval = set.interval.iter().find(|line| line.id == id).map(|line| interval(w, line));
    let check = set.check.iter().find(|line| line.id == id).map(|line| check(w, line));
    let topic = set.topic.iter().find(|line| line.id == id).map(|line| topic(w, line));
    let said = proof.or(limit).or(interval).or(check).or(topic);
    said.map(|said| said.value).unwrap_or_default()
}
