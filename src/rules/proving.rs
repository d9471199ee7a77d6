//! Proofs of the proving: tight, clean, working.

use super::assess::Ground;
use super::book::Limit;
use super::line::{LimitLine, Quantity};
use super::proof::{Arg, Place, Said, State, Why};
use super::results::{self, DecayRefused};
use crate::calc::decision::Verdict;
use crate::model::Coded;
use crate::model::evidence::{Entry, Evidence, FillStopHow, FunctionChecks, JointVerdict, LeakMethod, Section};
use crate::model::part::PartCategory;

pub fn leak_joints(ground: &Ground<'_>, section: Section) -> Said {
    let place = Place::Evidence("leak-joints", section.code(), "joints");
    let shown = ground.file.shown("leak-joints", section.code(), |body| match body {
        Evidence::LeakJoints(one) => Some(one),
        _ => None,
    });
    let Some((entry, test)) = shown else {
        return Said::missing(place);
    };
    if let Some(distrusted) = ground.distrust(entry) {
        return distrusted;
    }
    let on = (ground.day_of)(entry.measured_at);
    match (test.method, test.foam_expires_on) {
        (LeakMethod::Detector, _) if entry.instruments.is_empty() => {
            return Said::new(State::Missing, Why::plain("detector-missing"), place).on(entry);
        }
        (LeakMethod::Foam, None) => {
            return Said::new(State::Missing, Why::plain("foam-expiry-missing"), place).on(entry);
        }
        (LeakMethod::Foam, Some(expires)) if expires < on => {
            return Said::stops(Why::plain("foam-expired").with("on", Arg::Date(expires)), place).on(entry);
        }
        _ => {}
    }
    let number = |n: usize| f64::from(u32::try_from(n).unwrap_or(u32::MAX));
    let dry = number(test.count(JointVerdict::Dry));
    let all = number(test.joints.len());
    if let Some(leak) = test.joints.iter().find(|joint| joint.verdict == JointVerdict::Leaks) {
        return Said::fails(Why::plain("joint-leaks").text("joint", &leak.name), place).on(entry);
    }
    let why = |key| {
        Why::plain(key)
            .number("dry", dry, 0)
            .number("all", all, 0)
            .with("how", Arg::Code("leak-method", test.method.code()))
    };
    if dry < all || test.joints.is_empty() {
        return Said::new(State::Missing, why("joints-open"), place).on(entry);
    }
    Said::met(why("joints-dry"), place).on(entry)
}

pub fn leak_decay(ground: &Ground<'_>, section: Section) -> Said {
    let place = Place::Evidence("leak-decay", section.code(), "start_kpa");
    let shown = ground.file.shown("leak-decay", section.code(), |body| match body {
        Evidence::LeakDecay(one) => Some(one),
        _ => None,
    });
    let Some((entry, test)) = shown else {
        return Said::missing(place);
    };
    if let Some(distrusted) = ground.distrust(entry) {
        return distrusted;
    }
    let judged = match results::decay(ground.file, ground.book, entry, test, ground.day_of) {
        Ok(judged) => judged,
        Err(refused) => return Said::stops(decay_refused(&refused), place).on(entry),
    };
    let why = |key| {
        Why::plain(key)
            .number("rate", judged.result.rate_cm3_h, 0)
            .number("uncertainty", judged.result.expanded_uncertainty_cm3_h, 0)
            .number("limit", judged.test.limit_cm3_h, 0)
    };
    match judged.result.verdict {
        Verdict::Pass => Said::met(why("decay-passes"), place).on(entry),
        Verdict::Fail => Said::fails(why("decay-fails"), place).on(entry),
        Verdict::CannotTell => {
            let why = match judged.result.needed_duration_min {
                Some(needed) => why("decay-needs-time").number("needed", needed.ceil(), 0),
                None => why("decay-no-time-helps"),
            };
            Said::new(State::Undecided, why, place).on(entry)
        }
    }
}

fn decay_refused(refused: &DecayRefused) -> Why {
    match refused {
        DecayRefused::OverRating(got, rating) => {
            Why::plain("decay-over-rating").quantity("got", *got, 0, "kPa").quantity("rating", *rating, 0, "kPa")
        }
        DecayRefused::LiquidSection => Why::plain("decay-liquid"),
        DecayRefused::AirInFuelLine => Why::plain("decay-air"),
        DecayRefused::NoLimit => Why::plain("decay-no-limit"),
        DecayRefused::Outside(outside) => Why::plain("decay-outside").text("what", outside.quantity),
    }
}

pub fn exhaust(ground: &Ground<'_>, subject: &'static str) -> Said {
    let place = |field| Place::Evidence("exhaust", subject, field);
    let shown = ground.file.shown("exhaust", subject, |body| match body {
        Evidence::Exhaust(one) => Some(one),
        _ => None,
    });
    let Some((entry, seen)) = shown else {
        return Said::missing(place("idle_co_percent"));
    };
    if entry.instruments.is_empty() {
        return Said::new(State::Missing, Why::plain("analyser-missing"), place("analyser_id")).on(entry);
    }
    if let Some(distrusted) = ground.distrust(entry) {
        return distrusted;
    }
    let judged = results::exhaust(ground.file, ground.book, entry, seen, ground.day_of);
    if let Some((got, least)) = judged.too_slow {
        let why = Why::plain("raised-idle-slow").number("got", got, 0).number("least", least, 0);
        return Said::new(State::Undecided, why, place("raised_rpm")).on(entry);
    }
    let lambda = match &judged.raised_lambda {
        Ok(lambda) => lambda.value,
        Err(_) => return Said::stops(Why::plain("probe-not-in-exhaust"), place("raised_co2_percent")).on(entry),
    };
    let why = |key| {
        Why::plain(key)
            .number("idle", seen.idle.co_percent, 2)
            .number("raised", seen.raised.co_percent, 2)
            .number("lambda", lambda, 3)
    };
    if let Some(line) = judged.unconfirmed() {
        let why = why("exhaust-unconfirmed").by_line(&line.id, &line.set);
        return Said::new(State::Undecided, why, place("idle_co_percent")).on(entry);
    }
    match judged.verdict() {
        Some(Verdict::Pass) => Said::met(why("exhaust-passes"), place("idle_co_percent")).on(entry),
        Some(Verdict::Fail) => Said::fails(why("exhaust-fails"), place("idle_co_percent")).on(entry),
        Some(Verdict::CannotTell) => {
            Said::new(State::Undecided, why("exhaust-near-limit"), place("idle_co_percent")).on(entry)
        }
        None => Said::new(State::Undecided, why("exhaust-no-limit"), place("idle_co_percent")).on(entry),
    }
}

fn function_checks<'a>(ground: &'a Ground<'_>) -> Option<(&'a Entry, &'a FunctionChecks)> {
    ground.file.shown("function-checks", "", |body| match body {
        Evidence::FunctionChecks(one) => Some(one),
        _ => None,
    })
}

fn at(field: &'static str) -> Place {
    Place::Evidence("function-checks", "", field)
}

/// A check that is a plain yes.
fn works(ground: &Ground<'_>, field: &'static str, key: &'static str, said: impl Fn(&FunctionChecks) -> bool) -> Said {
    match function_checks(ground) {
        None => Said::missing(at(field)),
        Some((entry, one)) if said(one) => Said::met(Why::plain(key), at(field)).on(entry),
        Some((entry, _)) => Said::fails(Why::plain("does-not-work"), at(field)).on(entry),
    }
}

pub fn changeover(ground: &Ground<'_>) -> Said {
    works(ground, "changeover_works", "changeover-works", |one| one.changeover_works && one.returns_when_empty)
}

pub fn level(ground: &Ground<'_>) -> Said {
    works(ground, "level_shows", "level-shows", |one| one.level_shows)
}

pub fn vent(ground: &Ground<'_>) -> Said {
    works(ground, "vent_is_open", "vent-open", |one| one.vent_is_open && one.excess_flow_present)
}

pub fn label(ground: &Ground<'_>) -> Said {
    works(ground, "label_in_place", "label-in-place", |one| one.label_in_place)
}

pub fn shut_off(ground: &Ground<'_>) -> Said {
    let Some((entry, one)) = function_checks(ground) else {
        return Said::missing(at("shut_off_ignition_s"));
    };
    let (Some(ignition_s), Some(stalled_s)) = (one.shut_off_ignition_s, one.shut_off_stalled_s) else {
        return Said::fails(Why::plain("gas-stays-open"), at("shut_off_ignition_s")).on(entry);
    };
    let (file, on) = (ground.file, (ground.day_of)(entry.measured_at));
    let limit = ground.book.limit(Quantity::ShutOffS, &file.job, &file.vehicle, None, on);
    let unread = unread(limit.as_ref());
    let most = limit.and_then(|limit| limit.most);
    let why = |key| Why::plain(key).number("ignition", ignition_s, 1).number("stalled", stalled_s, 1);
    let why_by = |key, most, line: &LimitLine| why(key).number("most", most, 1).by_line(&line.id, &line.set);
    match most {
        None => Said::new(State::Undecided, why("shut-off-no-limit"), at("shut_off_ignition_s")).on(entry),
        Some((most, line)) if ignition_s.max(stalled_s) > most => {
            Said::fails(why_by("shut-off-slow", most, &line), at("shut_off_ignition_s")).on(entry)
        }
        Some((most, line)) => match unread {
            Some(why) => Said::new(State::Undecided, why, at("shut_off_ignition_s")).on(entry),
            None => Said::met(why_by("shut-off", most, &line), at("shut_off_ignition_s")).on(entry),
        },
    }
}

/// The reason why a reading within this limit is no pass yet: nobody read the source of the only line that says so.
fn unread(limit: Option<&Limit>) -> Option<Why> {
    let line = limit.filter(|limit| !limit.is_ground_for_a_pass())?.line()?;
    Some(Why::plain("limit-unconfirmed").by_line(&line.id, &line.set))
}

pub fn fill_stop(ground: &Ground<'_>) -> Said {
    let Some((entry, one)) = function_checks(ground) else {
        return Said::missing(at("fill_stop_how"));
    };
    if one.fill_stop_how.is_none() {
        return Said::missing(at("fill_stop_how")).on(entry);
    }
    if one.fill_stop_how == Some(FillStopHow::Later) {
        // The duty that this makes is written down at hand-over.
        return Said::met(Why::plain("fill-stop-later"), at("fill_stop_how")).on(entry);
    }
    let Some(litres) = one.fill_stop_l else {
        return Said::new(State::Missing, Why::plain("fill-litres-missing"), at("fill_stop_l")).on(entry);
    };
    let file = ground.file;
    let capacity_l: f64 =
        file.fitted().filter(|part| part.category == PartCategory::Container).filter_map(|part| part.capacity_l).sum();
    if capacity_l <= 0.0 {
        return Said::new(State::Missing, Why::plain("capacity-missing"), Place::Part("container")).on(entry);
    }
    let on = (ground.day_of)(entry.measured_at);
    let limit = ground.book.limit(Quantity::FillPercent, &file.job, &file.vehicle, None, on);
    let unread = unread(limit.as_ref());
    let Some((most, line)) = limit.and_then(|limit| limit.most) else {
        return Said::new(State::Undecided, Why::plain("fill-no-limit"), at("fill_stop_l")).on(entry);
    };
    let percent = 100.0 * litres / capacity_l;
    let why = |key| {
        let why = Why::plain(key).number("litres", litres, 1).number("percent", percent, 0).number("most", most, 0);
        why.by_line(&line.id, &line.set)
    };
    if percent > most {
        return Said::fails(why("fill-stop-late"), at("fill_stop_l")).on(entry);
    }
    match unread {
        Some(why) => Said::new(State::Undecided, why, at("fill_stop_l")).on(entry),
        None => Said::met(why("fill-stop"), at("fill_stop_l")).on(entry),
    }
}

pub fn deficiencies(ground: &Ground<'_>) -> Said {
    let place = Place::Evidence("deficiencies", "", "found");
    let shown = ground.file.shown("deficiencies", "", |body| match body {
        Evidence::Deficiencies(one) => Some(one),
        _ => None,
    });
    let Some((entry, seen)) = shown else {
        return Said::missing(place);
    };
    if seen.found.is_empty() {
        return Said::met(Why::plain("no-deficiencies"), place).on(entry);
    }
    let count = f64::from(u32::try_from(seen.found.len()).unwrap_or(u32::MAX));
    Said::met(Why::plain("deficiencies-listed").number("count", count, 0), place).on(entry)
}

pub fn findings(ground: &Ground<'_>) -> Said {
    let open = ground.file.findings.iter().filter(|one| one.is_open()).count();
    if open > 0 {
        let why = Why::plain("findings-open").number("count", f64::from(u32::try_from(open).unwrap_or(u32::MAX)), 0);
        return Said::stops(why, Place::Findings);
    }
    Said::met(Why::plain("no-open-findings"), Place::Findings)
}
