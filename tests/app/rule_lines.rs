//! Every duty and limit of the published codes is a line of a shipped set, with the same numbers and the same mark of having
//! been read; nothing else stands in those sets; and what a line says it is asked by is really there.

use std::collections::{BTreeMap, BTreeSet};

use fuelwright::model::Coded;
use fuelwright::model::job::Fuel;
use fuelwright::rules::{EMBEDDED, IntervalLine, LimitLine, OtherFuel, RETEST, RuleBook, RuleSet};
use fuelwright::words::Words;

fn sets() -> Vec<RuleSet> {
    EMBEDDED.iter().map(|(_, text)| RuleSet::read(text).unwrap()).filter(|set| !set.is_shop).collect()
}

/// Each line of a table but its head, by id.
fn table(text: &str) -> BTreeMap<String, Vec<String>> {
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_reader(text.as_bytes());
    let rows: Vec<Vec<String>> = reader.records().map(|row| row.unwrap().iter().map(str::to_owned).collect()).collect();
    for row in &rows {
        assert!(row[1] == row[0] || row[1].starts_with(&format!("{}.", row[0])), "{} is of the row {}", row[1], row[0]);
    }
    let by_id: BTreeMap<_, _> = rows.iter().map(|row| (row[1].clone(), row.clone())).collect();
    assert_eq!(by_id.len(), rows.len(), "no id stands twice");
    by_id
}

fn fuel(fuels: &[Fuel], other: &[OtherFuel]) -> String {
    let names = fuels.iter().map(|one| one.code()).chain(other.iter().map(|one| one.code()));
    let names: Vec<_> = names.collect();
    if names.is_empty() { "both".to_owned() } else { names.join(" ") }
}

fn said<T: ToString>(value: Option<T>) -> String {
    value.map_or_else(|| "-".to_owned(), |value| value.to_string())
}

fn yes(checked: bool) -> String {
    if checked { "yes" } else { "no" }.to_owned()
}

fn duty(set: &RuleSet, line: &IntervalLine) -> Vec<String> {
    vec![
        line.id.clone(),
        set.name.clone(),
        fuel(&line.fuels, &line.other_fuels),
        said(line.months),
        said(line.days),
        said(line.km),
        said(line.then.as_ref().map(|then| then.months)),
        yes(line.checked),
    ]
}

fn limit(set: &RuleSet, line: &LimitLine) -> Vec<String> {
    let registered = match (line.registered_from, line.registered_to) {
        (Some(from), None) => format!("from {from}"),
        (None, Some(to)) => format!("to {to}"),
        _ => "-".to_owned(),
    };
    vec![
        line.id.clone(),
        set.name.clone(),
        fuel(&line.fuels, NOTHING),
        line.quantity.code().to_owned(),
        said(line.least),
        said(line.most),
        "-".to_owned(),
        registered,
        yes(line.checked),
    ]
}

const NOTHING: &[OtherFuel] = &[];

fn compare(wanted: &BTreeMap<String, Vec<String>>, shipped: Vec<Vec<String>>) {
    let shipped: BTreeMap<_, _> = shipped.into_iter().map(|row| (row[0].clone(), row)).collect();
    let ids = |map: &BTreeMap<String, Vec<String>>| map.keys().cloned().collect::<BTreeSet<_>>();
    let (wanted_ids, shipped_ids) = (ids(wanted), ids(&shipped));
    assert_eq!(
        wanted_ids.difference(&shipped_ids).collect::<Vec<_>>(),
        Vec::<&String>::new(),
        "published, not shipped"
    );
    assert_eq!(
        shipped_ids.difference(&wanted_ids).collect::<Vec<_>>(),
        Vec::<&String>::new(),
        "shipped, not published"
    );
    for (id, row) in wanted {
        assert_eq!(row[1..], shipped[id], "{id}");
    }
}

#[test]
fn every_dated_duty_is_a_line_and_every_line_a_duty() {
    let wanted = table(include_str!("../reference/rule_lines_duties.csv"));
    let mut shipped = Vec::new();
    for set in &sets() {
        shipped.extend(set.interval.iter().map(|line| duty(set, line)));
        // A container too old to be fitted is no duty of a date: it is a limit at fitting, in months.
        let at_fitting = set.limit.iter().filter(|line| line.quantity.code() == "container-age-months");
        shipped.extend(at_fitting.map(|line| {
            let none = || "-".to_owned();
            let (months, fuel) = (said(line.most), fuel(&line.fuels, NOTHING));
            vec![line.id.clone(), set.name.clone(), fuel, months, none(), none(), none(), yes(line.checked)]
        }));
    }
    compare(&wanted, shipped);
}

#[test]
fn every_limit_is_a_line_and_every_line_a_limit_or_a_custom_of_the_trade() {
    let wanted = table(include_str!("../reference/rule_lines_limits.csv"));
    let mut shipped = Vec::new();
    for set in &sets() {
        let limits = set.limit.iter().filter(|line| !line.practice && line.quantity.code() != "container-age-months");
        shipped.extend(limits.map(|line| limit(set, line)));
        shipped.extend(set.note.iter().map(|line| {
            let none = || "-".to_owned();
            let (fuel, value) = (fuel(&line.fuels, NOTHING), line.value.clone());
            vec![line.id.clone(), set.name.clone(), fuel, none(), none(), none(), value, none(), yes(line.checked)]
        }));
    }
    compare(&wanted, shipped);
}

#[test]
fn a_custom_of_the_trade_says_so_in_a_key_of_its_own() {
    for set in sets() {
        let proofs = set.proof.iter().map(|one| (&one.id, &one.source, one.practice, one.checked));
        let limits = set.limit.iter().map(|one| (&one.id, &one.source, one.practice, one.checked));
        let checks = set.check.iter().map(|one| (&one.id, &one.source, one.practice, one.checked));
        let topics = set.topic.iter().map(|one| (&one.id, &one.source, one.practice, one.checked));
        for (id, source, practice, checked) in proofs.chain(limits).chain(checks).chain(topics) {
            assert_eq!(practice, source.contains("common practice"), "{id}");
            assert!(!(practice && checked), "{id}: a custom has no document that could be read");
        }
    }
}

/// A line that makes no duty and holds no reading says why, or names what asks for it; and that is there.
#[test]
fn a_line_that_acts_through_another_names_one_that_is_there() {
    let (w, all) = (Words::default(), sets());
    let mut asked: BTreeSet<String> = all.iter().flat_map(|set| &set.proof).map(|one| one.id.clone()).collect();
    asked.extend(all.iter().flat_map(|set| &set.check).map(|one| one.id.clone()));
    for set in &all {
        let intervals = set.interval.iter().map(|one| (&one.id, &one.asked_by, one.idle));
        let limits = set.limit.iter().map(|one| (&one.id, &one.asked_by, one.idle));
        let notes = set.note.iter().map(|one| (&one.id, &one.asked_by, one.idle));
        for (id, by, idle) in intervals.chain(limits).chain(notes) {
            assert!(by.is_empty() || idle.is_none(), "{id}: acts, or does not");
            assert!(by.iter().all(|by| asked.contains(by) || (by == RETEST && set.retest.is_some())), "{id}: {by:?}");
            assert!(idle.is_none_or(|idle| w.find(&format!("idle-{}", idle.code())).is_some()), "{id}");
        }
        for line in &set.note {
            assert!(!line.asked_by.is_empty() || line.idle.is_some(), "{}: a word alone does nothing", line.id);
            assert!(w.find(&format!("rule-note-{}", line.id.replace('.', "-"))).is_some(), "{}", line.id);
        }
    }
}

#[test]
fn the_sets_have_the_names_of_their_countries_and_stack_on_the_base() {
    let names: Vec<String> = sets().into_iter().map(|set| set.name).collect();
    let wanted = "un-baseline eu-roadworthiness us-cng de-stvzo nl it pl-tdt es fr be au nz in br ar tr uk";
    assert_eq!(names, wanted.split(' ').collect::<Vec<_>>());
    for set in sets().iter().skip(1) {
        assert!(!set.countries.is_empty(), "{} is of a country", set.name);
        RuleBook::stacked(&["un-baseline", &set.name]).unwrap();
    }
}
