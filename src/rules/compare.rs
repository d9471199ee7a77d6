//! One set held against others: which lines changed, and whether any is looser than the line it stands on.

use super::book::RuleBook;
use super::interval_line::{Anchor, IntervalLine};
use super::line::{Deadline, LimitLine, ProofLine, Waive};
use super::set::RuleSet;

/// A line of the shop that asks less than a line below it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Looser {
    /// The shop's line.
    pub id: String,
    /// The set of the line that decides.
    pub base_title: String,
    /// That line.
    pub base_id: String,
    /// The line names the authority, the document and its day: with a second person's word it may count.
    pub is_allowed: bool,
}

/// How a line was changed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Turn {
    /// Not there before.
    Added,
    /// No longer there.
    Removed,
    /// Asks more than before.
    Stricter,
    /// Asks less than before.
    Looser,
    /// Other words, source, kinds; neither more nor less can be said.
    Other,
}

/// One line that differs between two versions of a set.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Change {
    /// The line.
    pub id: String,
    /// What became of it.
    pub turn: Turn,
}

/// Every line of `own` that is looser than a line of `base` which covers all it speaks of.
///
/// A limit that is looser for some vehicles and stricter for others is not named: where the base is stricter the base
/// decides anyway. A proof, a line of the checklist or a topic may not take the id of a line below it and ask less.
pub fn looser(base: &RuleBook, own: &RuleSet) -> Vec<Looser> {
    let mut found = Vec::new();
    for set in &base.sets {
        let mut note = |id: &str, base_id: &str, is_allowed: bool| {
            let (id, base_id) = (id.to_owned(), base_id.to_owned());
            found.push(Looser { id, base_title: set.title.clone(), base_id, is_allowed });
        };
        for line in &own.limit {
            if let Some(one) = set.limit.iter().find(|one| covers_limit(one, line) && is_looser_limit(one, line)) {
                note(&line.id, &one.id, line.allowed.is_some());
            }
        }
        for line in &own.interval {
            if let Some(one) =
                set.interval.iter().find(|one| covers_interval(one, line) && is_looser_interval(one, line))
            {
                note(&line.id, &one.id, line.allowed.is_some());
            }
        }
        for line in &own.proof {
            if let Some(one) = set.proof.iter().find(|one| one.id == line.id && is_looser_proof(one, line)) {
                note(&line.id, &one.id, false);
            }
        }
        // These two are told apart by their id alone, and asked once for each line: the same id again is no stricter ask.
        for line in own.check.iter().filter(|line| set.check.iter().any(|one| one.id == line.id)) {
            note(&line.id, &line.id, false);
        }
        for line in own.topic.iter().filter(|line| set.topic.iter().any(|one| one.id == line.id)) {
            note(&line.id, &line.id, false);
        }
    }
    found
}

/// The lines that differ between two versions of one set, in the order of the new one; what is gone comes last.
pub fn changes(before: &RuleSet, after: &RuleSet) -> Vec<Change> {
    let mut all = Vec::new();
    walk(
        &mut all,
        &before.proof,
        &after.proof,
        |one| &one.id,
        |old, new| turn(is_looser_proof(old, new), is_looser_proof(new, old)),
    );
    walk(
        &mut all,
        &before.limit,
        &after.limit,
        |one| &one.id,
        |old, new| turn(is_looser_limit(old, new), is_looser_limit(new, old)),
    );
    walk(
        &mut all,
        &before.interval,
        &after.interval,
        |one| &one.id,
        |old, new| turn(is_looser_interval(old, new), is_looser_interval(new, old)),
    );
    walk(&mut all, &before.check, &after.check, |one| &one.id, |_, _| Turn::Other);
    walk(&mut all, &before.topic, &after.topic, |one| &one.id, |_, _| Turn::Other);
    all
}

fn walk<T: PartialEq>(
    all: &mut Vec<Change>,
    before: &[T],
    after: &[T],
    id: impl Fn(&T) -> &String,
    turn: impl Fn(&T, &T) -> Turn,
) {
    for new in after {
        let turn = match before.iter().find(|old| id(old) == id(new)) {
            None => Turn::Added,
            Some(old) if old == new => continue,
            Some(old) => turn(old, new),
        };
        all.push(Change { id: id(new).clone(), turn });
    }
    for old in before.iter().filter(|old| !after.iter().any(|new| id(new) == id(old))) {
        all.push(Change { id: id(old).clone(), turn: Turn::Removed });
    }
}

fn turn(is_looser: bool, is_stricter: bool) -> Turn {
    match (is_looser, is_stricter) {
        (true, false) => Turn::Looser,
        (false, true) => Turn::Stricter,
        _ => Turn::Other,
    }
}

/// An empty list means all, so it covers every list; a list covers only what is in it.
fn covers<T: PartialEq>(base: &[T], own: &[T]) -> bool {
    base.is_empty() || (!own.is_empty() && own.iter().all(|one| base.contains(one)))
}

/// The base line speaks of all that the shop's line speaks of.
pub(super) fn covers_limit(base: &LimitLine, own: &LimitLine) -> bool {
    base.quantity == own.quantity
        && covers(&base.fuels, &own.fuels)
        && covers(&base.sections, &own.sections)
        && (base.catalyst.is_none() || base.catalyst == own.catalyst)
        && base.registered_from.is_none_or(|from| own.registered_from.is_some_and(|mine| mine >= from))
        && base.registered_to.is_none_or(|to| own.registered_to.is_some_and(|mine| mine <= to))
        && covers(&base.categories, &own.categories)
        && base.is_measured()
        && base.from_on.is_none()
        && base.to_on.is_none()
}

fn is_looser_limit(base: &LimitLine, own: &LimitLine) -> bool {
    let above = own.most.zip(base.most).is_some_and(|(mine, theirs)| mine > theirs);
    let below = own.least.zip(base.least).is_some_and(|(mine, theirs)| mine < theirs);
    above || below
}

/// The base line speaks of all that the shop's line speaks of.
pub(super) fn covers_interval(base: &IntervalLine, own: &IntervalLine) -> bool {
    base.duty == own.duty
        && base.makes_duties()
        && base.part == own.part
        && starts_alike(base.anchor, own.anchor)
        && (base.marked.is_none() || base.marked == own.marked)
        && covers(&base.classes, &own.classes)
        && base.mass_up_to_kg.is_none_or(|most| own.mass_up_to_kg.is_some_and(|mine| mine <= most))
        && base.mass_above_kg.is_none_or(|least| own.mass_above_kg.is_some_and(|mine| mine >= least))
        && covers(&base.kinds, &own.kinds)
        && covers(&base.fuels, &own.fuels)
}

/// Both count from the same day here.
fn starts_alike(base: Anchor, own: Anchor) -> bool {
    let day = |anchor| match anchor {
        Anchor::Fitted | Anchor::InService | Anchor::LastInspection => Anchor::Fitted,
        Anchor::Made | Anchor::LastCheck => Anchor::Made,
        other => other,
    };
    day(base) == day(own)
}

fn is_looser_interval(base: &IntervalLine, own: &IntervalLine) -> bool {
    // The shortest and the longest that so many months can be, so that nothing looser is missed.
    let shortest = |line: &IntervalLine| line.days.map(u32::from).or(line.months.map(|months| 30 * months));
    let later = match (own.days, base.days) {
        (None, None) => own.months.zip(base.months).is_some_and(|(mine, theirs)| mine > theirs),
        _ => shortest(own).zip(shortest(base)).is_some_and(|(mine, theirs)| mine > theirs),
    };
    let farther = own.km.zip(base.km).is_some_and(|(mine, theirs)| mine > theirs);
    later || farther
}

fn is_looser_proof(base: &ProofLine, own: &ProofLine) -> bool {
    let order = |deadline| match deadline {
        Deadline::Issue => 0,
        Deadline::HandOver => 1,
        Deadline::After => 2,
    };
    base.needs != own.needs
        || order(own.before) > order(base.before)
        || (base.waive == Waive::Never && own.waive != Waive::Never)
        || (own.may_not_apply && !base.may_not_apply)
}
