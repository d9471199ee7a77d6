//! A rule line in words: what it asks, of what, by which source.

use time::Date;

use crate::model::Coded;
use crate::rules::{
    Allowed, Anchor, CheckLine, Idle, IntervalLine, LimitLine, NoteLine, ProofLine, RETEST, RuleSet, TopicLine, key_of,
};
use crate::web::kit::{Cell, Mark, Row};
use crate::web::language::own_name;
use crate::words::{Language, Words};

/// One line as the page shows it.
pub struct Said {
    id: String,
    /// What it asks.
    pub value: String,
    second: String,
    applies_to: Vec<String>,
    source: String,
    is_checked: bool,
    is_practice: bool,
    /// Why nothing is reckoned by it yet.
    idle: Option<Idle>,
    /// Its set is the shop's own.
    is_shop: bool,
}

impl Said {
    /// The line as a row: id, what, for what, source, standing.
    pub fn row(self, w: &Words) -> Row {
        let (mark, key) = match (self.is_shop, self.is_checked, self.is_practice) {
            (true, ..) => (Mark::Met, "rules-shop-line"),
            (_, true, _) => (Mark::Met, "rules-checked"),
            (.., true) => (Mark::NotApplicable, "rules-practice"),
            _ => (Mark::Undecided, "rules-unchecked"),
        };
        let everything = self.applies_to.is_empty();
        let applies_to = if everything { w.t("rules-everything") } else { self.applies_to.join(", ") };
        let idle = self.idle.map(|idle| w.tv("rules-idle", &[("why", w.t(format!("idle-{}", idle.code())).into())]));
        vec![
            Cell::new(self.id),
            Cell::new(self.value).with_second(self.second),
            Cell::new(applies_to),
            Cell::new(self.source),
            Cell::new(w.t(key)).marked(mark).with_second(idle.unwrap_or_default()),
        ]
    }
}

/// What asks for a line in words: proofs, lines of the checklist, the term of a re-inspection.
fn asked_by(w: &Words, ids: &[String]) -> Option<String> {
    let title = |id: &String| {
        let keys = [format!("proof-{id}"), format!("check-{id}")];
        let known = keys.iter().find_map(|key| w.find(key));
        if id == RETEST { w.t("rules-asked-retest") } else { known.unwrap_or_else(|| id.clone()) }
    };
    let titles: Vec<_> = ids.iter().map(title).collect();
    (!ids.is_empty()).then(|| w.tv("rules-asked-by", &[("what", titles.join("; ").into())]))
}

fn allowed(w: &Words, allowed: Option<&Allowed>) -> Option<String> {
    let one = allowed?;
    let values = [
        ("authority", one.authority.as_str().into()),
        ("document", one.document.as_str().into()),
        ("on", w.date(one.on).into()),
    ];
    Some(w.tv("rules-allowed", &values))
}

fn sentences(all: impl IntoIterator<Item = Option<String>>) -> String {
    all.into_iter().flatten().filter(|text| !text.is_empty()).collect::<Vec<_>>().join(". ")
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
        is_practice: line.practice,
        idle: None,
        is_shop: false,
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
        coded(w, &line.categories),
        more.into_iter().flatten().collect(),
        days(w, line.from_on, line.to_on),
    ];
    Said {
        id: line.id.clone(),
        value: said,
        second: sentences([
            line.is_measured().then(|| w.t(format!("decision-rule-{}", line.decision.code()))),
            asked_by(w, &line.asked_by),
            allowed(w, line.allowed.as_ref()),
        ]),
        applies_to: applies_to.concat(),
        source: line.source.clone(),
        is_checked: line.checked,
        is_practice: line.practice,
        idle: line.idle,
        is_shop: false,
    }
}

fn exact(value: f64, decimals: u8) -> bool {
    let scaled = value * 10_f64.powi(i32::from(decimals));
    (scaled - scaled.round()).abs() < 1e-6
}

/// What falls due.
pub fn interval(w: &Words, line: &IntervalLine) -> Said {
    let duty = ("duty", w.t(format!("duty-kind-{}", line.duty.code())).into());
    let n = |n: u32| ("n", i64::from(n).into());
    let km = line.km.map(|km| ("km", w.integer(km).into()));
    let again = line.duty.comes_again() && line.makes_duties();
    let value = match (line.months, line.days, km) {
        (Some(0), ..) => w.tv("rules-at-once", &[duty]),
        (Some(months), _, Some(km)) if again => w.tv("rules-months-or-km", &[duty, n(months), km]),
        (Some(months), _, Some(km)) => w.tv("rules-once-months-or-km", &[duty, n(months), km]),
        (Some(months), ..) if again => w.tv("rules-months", &[duty, n(months)]),
        (Some(months), ..) => w.tv("rules-once-months", &[duty, n(months)]),
        (_, Some(days), _) => w.tv("rules-days", &[duty, n(u32::from(days))]),
        (_, _, Some(km)) => w.tv("rules-km", &[duty, km]),
        (None, None, None) => w.tv("rules-label-day", &[duty]),
    };
    let then = line.then.as_ref().map(|then| {
        let classes = ("classes", then.classes.join(", ").into());
        if then.classes.is_empty() {
            w.tv("rules-then", &[n(then.months)])
        } else {
            w.tv("rules-then-of", &[n(then.months), classes])
        }
    });
    let mass = |key: &str, kg: Option<i64>| kg.map(|kg| w.tv(key, &[("kg", w.integer(kg).into())]));
    let more = [
        line.marked.map(|marked| w.t(format!("marked-{}", marked.code()))),
        mass("rules-mass-up-to", line.mass_up_to_kg),
        mass("rules-mass-above", line.mass_above_kg),
        line.not_low_pressure.then(|| w.t("rules-not-low-pressure")),
    ];
    let applies_to = [
        coded(w, &line.kinds),
        coded(w, &line.fuels),
        coded(w, &line.other_fuels),
        line.part.map(|part| vec![w.t(format!("part-category-{}", part.code()))]).unwrap_or_default(),
        line.classes.clone(),
        more.into_iter().flatten().collect(),
        days(w, line.from_on, line.to_on),
    ];
    let anchor = w.t(format!("anchor-{}", line.anchor.code()));
    Said {
        id: line.id.clone(),
        value,
        second: sentences([
            then,
            (line.anchor != Anchor::Event).then(|| w.tv("rules-counted-from", &[("anchor", anchor.into())])),
            asked_by(w, &line.asked_by),
            allowed(w, line.allowed.as_ref()),
        ]),
        applies_to: applies_to.concat(),
        source: line.source.clone(),
        is_checked: line.checked,
        is_practice: line.practice,
        idle: line.idle,
        is_shop: false,
    }
}

/// What is said in a word.
pub fn note(w: &Words, line: &NoteLine) -> Said {
    Said {
        id: line.id.clone(),
        value: w.find(&format!("rule-note-{}", key_of(&line.id))).unwrap_or_else(|| line.value.clone()),
        second: sentences([asked_by(w, &line.asked_by)]),
        applies_to: coded(w, &line.fuels),
        source: line.source.clone(),
        is_checked: line.checked,
        is_practice: false,
        idle: line.idle,
        is_shop: false,
    }
}

/// The languages that papers are made in where the set rules.
fn languages(w: &Words, set: &RuleSet) -> Option<Said> {
    let name = |tag: &String| match Language::of_papers(tag) {
        Some(language) => own_name(language),
        None => w.tv("rules-language-unspoken", &[("tag", tag.into())]),
    };
    let names: Vec<String> = set.languages.iter().map(name).collect();
    (!names.is_empty()).then(|| Said {
        id: "languages".to_owned(),
        value: w.tv("rules-languages", &[("languages", names.join(", ").into())]),
        second: String::new(),
        applies_to: Vec::new(),
        source: w.t("rules-languages-source"),
        is_checked: false,
        is_practice: true,
        idle: None,
        is_shop: false,
    })
}

/// What the head of a set says of papers and of inspections.
pub fn heads(w: &Words, set: &RuleSet) -> Vec<Said> {
    let said = |id: &str, value: String, second: String, (source, is_checked): (&str, bool)| Said {
        id: id.to_owned(),
        value,
        second,
        applies_to: Vec::new(),
        source: source.to_owned(),
        is_checked,
        is_practice: false,
        idle: None,
        is_shop: false,
    };
    let restarts = set
        .repair_restarts
        .as_ref()
        .map(|head| said("repair_restarts", w.t("rules-repair-restarts"), String::new(), (&head.source, head.checked)));
    let retest = set.retest.as_ref().map(|head| {
        let (key, n) = match (head.months, head.days) {
            (Some(months), _) => ("rules-retest-months", months),
            (None, days) => ("rules-retest-days", days.unwrap_or_default()),
        };
        let scope = w.t(match head.only_failed {
            Some(true) => "rules-retest-only-failed",
            Some(false) => "rules-retest-whole",
            None => "rules-retest-scope-open",
        });
        said(RETEST, w.tv(key, &[("n", i64::from(n).into())]), scope, (&head.source, head.checked))
    });
    [languages(w, set), restarts, retest].into_iter().flatten().collect()
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
        is_practice: line.practice,
        idle: None,
        is_shop: false,
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
        is_practice: line.practice,
        idle: None,
        is_shop: false,
    }
}

/// Every line of a set in groups: the caption's key, and the lines under it.
pub fn groups(w: &Words, set: &RuleSet) -> [(&'static str, Vec<Said>); 7] {
    let mut groups = [
        ("rules-heads", heads(w, set)),
        ("rules-proofs", set.proof.iter().map(|line| proof(w, line)).collect()),
        ("rules-limits", set.limit.iter().map(|line| limit(w, line)).collect()),
        ("rules-intervals", set.interval.iter().map(|line| interval(w, line)).collect()),
        ("rules-notes", set.note.iter().map(|line| note(w, line)).collect()),
        ("rules-checks", set.check.iter().map(|line| check(w, line)).collect()),
        ("rules-topics", set.topic.iter().map(|line| topic(w, line)).collect::<Vec<_>>()),
    ];
    groups.iter_mut().flat_map(|(_, lines)| lines).for_each(|line| line.is_shop = set.is_shop);
    groups
}

/// What the line with this id says in a set; empty where there is none.
pub fn line(w: &Words, set: &RuleSet, id: &str) -> String {
    let all = groups(w, set).into_iter().flat_map(|(_, lines)| lines);
    all.into_iter().find(|line| line.id == id).map(|line| line.value).unwrap_or_default()
}
