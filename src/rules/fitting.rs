//! Proofs of sizing and fitting: the sums that chose the parts, the parts themselves, the checklist.

use super::assess::Ground;
use super::line::{Quantity, SetName, applies, in_force};
use super::proof::{Arg, Place, Said, State, Why};
use crate::calc::due::{Precision, months_later};
use crate::model::Coded;
use crate::model::approval_mark::ApprovalMark;
use crate::model::duty::DutyKind;
use crate::model::evidence::{CheckAnswer, Evidence, LevelSensingKind, NozzleVerdict, VesselLevel};
use crate::model::job::{Fuel, JobKind};
use crate::model::part::{Part, PartCategory, fold};
use crate::model::recall::Carries;

pub fn nozzle(ground: &Ground<'_>) -> Said {
    let place = Place::Evidence("nozzle-sizing", "", "rated_power_kw");
    let shown = ground.file.shown("nozzle-sizing", "", |body| match body {
        Evidence::NozzleSizing(sheet) => Some(sheet),
        _ => None,
    });
    let Some((entry, sheet)) = shown else {
        return Said::missing(place);
    };
    if let (NozzleVerdict::Fits, Some(chosen_mm)) = (sheet.verdict, sheet.chosen_mm) {
        let why = Why::plain("nozzle-fits").quantity("chosen", chosen_mm, 2, "mm").quantity(
            "needed",
            sheet.needed_mm,
            2,
            "mm",
        );
        return Said::met(why, place).on(entry);
    }
    let why = Why::plain("nozzle-fits-not").with("verdict", Arg::Code("nozzle-verdict", sheet.verdict.code()));
    Said::stops(why, place).on(entry)
}

pub fn container_sized(ground: &Ground<'_>) -> Said {
    let place = Place::Evidence("container-sizing", "", "gross_volume_l");
    let shown = ground.file.shown("container-sizing", "", |body| match body {
        Evidence::ContainerSizing(sheet) => Some(sheet),
        _ => None,
    });
    let Some((entry, sheet)) = shown else {
        return Said::missing(place);
    };
    if sheet.is_within_axle_reserve == Some(false) {
        return Said::stops(Why::plain("axle-overloaded"), place).on(entry);
    }
    let why = match sheet.liquid_full_temperature_c {
        Some(full_c) => Why::plain("container-sized").quantity("full", full_c, 0, "°C"),
        None => Why::plain("container-sized-never-full"),
    };
    Said::met(why.quantity("liquid", sheet.liquid_l, 1, "L"), place).on(entry)
}

/// Parts that this job fitted, or for jobs that fit nothing, all parts on the vehicle; never those that were only found on it.
fn concerned<'a>(ground: &'a Ground<'_>) -> impl Iterator<Item = &'a Part> {
    let job = &ground.file.job;
    let all = matches!(job.kind, JobKind::Inspection | JobKind::AfterAccident);
    ground.file.fitted().filter(move |part| !part.is_found() && (all || part.fitted_in == job.id))
}

pub fn part(ground: &Ground<'_>, categories: &[PartCategory]) -> Said {
    let first = categories.first().map_or("other", |one| one.code());
    let Some(part) = ground.file.fitted().find(|part| categories.contains(&part.category)) else {
        return Said::missing(Place::Part(first));
    };
    let mut why = Why::plain("part").text("maker", &part.maker).text("type", &part.type_name);
    why = why.text("serial", if part.serial.is_empty() { &part.batch } else { &part.serial });
    let mut said = Said::met(why, Place::Part(first));
    said.at = Some(part.entered_at);
    said
}

pub fn traceable(ground: &Ground<'_>) -> Said {
    let mut parts = concerned(ground).peekable();
    if parts.peek().is_none() {
        return match ground.file.job.kind {
            // A repair or an examination after an accident may fit nothing.
            JobKind::Repair | JobKind::AfterAccident => Said::met(Why::plain("no-new-parts"), Place::Part("container")),
            _ => Said::missing(Place::Part("container")),
        };
    }
    let mut count = 0_u32;
    let mut seen: Vec<&Part> = Vec::new();
    for part in parts {
        if part.serial.is_empty() && part.batch.is_empty() {
            let why = Why::plain("part-without-serial").with("part", Arg::Code("part-category", part.category.code()));
            return Said::new(State::Missing, why, Place::Part(part.category.code()));
        }
        let is_double = |other: &&&Part| {
            !part.serial.is_empty()
                && other.category == part.category
                && fold(&other.serial) == fold(&part.serial)
                && fold(&other.maker) == fold(&part.maker)
        };
        if part.shared_reason.is_empty() && seen.iter().any(|other| is_double(&other)) {
            let why = Why::plain("part-doubled").text("serial", &part.serial);
            return Said::stops(why, Place::Part(part.category.code()));
        }
        seen.push(part);
        count += 1;
    }
    Said::met(Why::plain("parts-traceable").number("count", f64::from(count), 0), Place::Part("container"))
}

/// Parts below container pressure that the UN texts do not ask to be marked one by one.
fn needs_mark(category: PartCategory) -> bool {
    !matches!(category, PartCategory::Other | PartCategory::Sensor | PartCategory::GasTightHousing)
}

pub fn marks(ground: &Ground<'_>) -> Said {
    let fuel = ground.file.job.fuel;
    let mut parts = concerned(ground).filter(|part| needs_mark(part.category)).peekable();
    if parts.peek().is_none() {
        return match ground.file.job.kind {
            JobKind::Repair | JobKind::AfterAccident => Said::met(Why::plain("no-new-parts"), Place::Part("container")),
            _ => Said::missing(Place::Part("container")),
        };
    }
    let mut count = 0_u32;
    for part in parts {
        let place = Place::Part(part.category.code());
        let name = Arg::Code("part-category", part.category.code());
        if part.approval_mark.trim().is_empty() {
            return Said::new(State::Missing, Why::plain("mark-missing").with("part", name), place);
        }
        match part.approval_mark.parse::<ApprovalMark>() {
            Ok(mark) if mark.fits(fuel) => count += 1,
            Ok(_) => {
                let why = Why::plain("mark-other-fuel").with("part", name).text("mark", &part.approval_mark);
                return Said::fails(why, place);
            }
            Err(_) => {
                let why = Why::plain("mark-unreadable").with("part", name).text("mark", &part.approval_mark);
                return Said::fails(why, place);
            }
        }
    }
    Said::met(Why::plain("marks-fit").number("count", f64::from(count), 0), Place::Part("container"))
}

/// A part that is surely recalled stops; one of which too little is written down has to be looked at first.
pub fn not_recalled(ground: &Ground<'_>) -> Said {
    let mut recalled: Vec<_> = ground.file.recalled.iter().collect();
    recalled.sort_by_key(|one| one.carries != Carries::Surely);
    let named = recalled.iter().find_map(|one| Some((one, ground.file.fitted().find(|part| part.id == one.part)?)));
    let Some((recalled, part)) = named else {
        return Said::met(Why::plain("nothing-recalled"), Place::Part("container"));
    };
    let place = Place::Part(part.category.code());
    let name = Arg::Code("part-category", part.category.code());
    match recalled.carries {
        Carries::Surely => Said::fails(Why::plain("part-recalled").with("part", name).text("by", &recalled.by), place),
        Carries::Perhaps => {
            let why = Why::plain("part-perhaps-recalled").with("part", name).text("by", &recalled.by);
            Said::new(State::Undecided, why, place)
        }
    }
}

pub fn storage_in_date(ground: &Ground<'_>) -> Said {
    let file = ground.file;
    let is_storage = |part: &&Part| matches!(part.category, PartCategory::Container | PartCategory::Cylinder);
    let mut met = None;
    for part in file.fitted().filter(is_storage) {
        let place = Place::Part(part.category.code());
        let Some(made_on) = part.made_on else {
            if part.is_found() && is_unreadable(ground) {
                return Said::fails(Why::plain("plate-unreadable"), place);
            }
            return Said::new(State::Missing, Why::plain("made-missing"), place);
        };
        let limit = ground.book.limit(Quantity::ContainerAgeMonths, &file.job, &file.vehicle, None, part.fitted_on);
        // What limits the age at fitting is asked of the day of fitting; what ends a vessel's life, of today.
        let by_age = limit.and_then(|limit| limit.most).and_then(|(months, line)| {
            #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few hundred months")]
            let last = months_later(made_on, months as u32, Precision::Month).ok()?;
            Some((last, line.id, line.set))
        });
        // What its label says ends its life whatever the lines say.
        if let Some(end) = part.end_of_life_on.filter(|end| *end < ground.today) {
            let why = Why::plain("storage-expired").with("on", Arg::Date(end)).text("serial", &part.serial);
            return Said::fails(why, place);
        }
        let lasts = file_lasts(ground, part);
        let too_old = by_age.clone().filter(|(last, ..)| *last < part.fitted_on);
        if let Some((last, line, set)) = too_old.or(lasts.clone().filter(|(last, ..)| *last < ground.today)) {
            let why = Why::plain("storage-expired").with("on", Arg::Date(last)).text("serial", &part.serial);
            return Said::fails(why.by_line(&line, &set), place);
        }
        let by_age = by_age.filter(|(last, ..)| *last >= ground.today);
        let last = [by_age, lasts].into_iter().flatten().min_by_key(|(last, ..)| *last);
        let mut why = Why::plain(if last.is_some() { "storage-in-date" } else { "storage-no-limit" });
        why = why.text("serial", &part.serial).with("made", Arg::Date(made_on));
        if let Some((last, line, set)) = last {
            why = why.with("on", Arg::Date(last)).by_line(&line, &set);
        }
        met = Some(Said::met(why, place));
    }
    met.unwrap_or_else(|| Said::missing(Place::Part("container")))
}

/// The inspector said that the marks of the parts cannot be read: then a date that is not known is no date forgotten, but a
/// vessel that nobody can identify.
fn is_unreadable(ground: &Ground<'_>) -> bool {
    checklist(ground, "marks").has_failed
}

/// The day on which the life of this vessel ends by the lines in force (those that replace it, not those that test it), and
/// the line with its set.
fn file_lasts(ground: &Ground<'_>, part: &Part) -> Option<(time::Date, String, SetName)> {
    use super::interval_line::{Anchor, Count, IntervalLine};
    let ends_life = |line: &&IntervalLine| {
        matches!(line.duty, DutyKind::Container | DutyKind::CylinderLife)
            && line.makes_duties()
            && !ground.book.is_displaced(line)
            && applies(&line.fuels, &ground.file.job.fuel)
            && line.is_about(&ground.file.vehicle)
            && line.is_about_part(part)
            && in_force(line.from_on, line.to_on, ground.today)
    };
    let lines = ground.book.sets.iter().flat_map(|set| &set.interval).filter(ends_life);
    let ends = lines.filter_map(|line| {
        let precision = if line.count == Count::MonthEnd { Precision::Month } else { Precision::Day };
        let from = match line.anchor {
            Anchor::Made | Anchor::LastCheck => part.made_on?,
            Anchor::Registered => ground.file.vehicle.first_registered_on?,
            _ => part.fitted_on,
        };
        let last = months_later(from, line.months?, precision).ok()?;
        Some((last, line.id.clone(), line.set.clone()))
    });
    ends.min_by_key(|(last, ..)| *last)
}

pub fn cylinder_table(ground: &Ground<'_>) -> Said {
    let place = Place::Evidence("cylinder-table", "", "rows");
    let shown = ground.file.shown("cylinder-table", "", |body| match body {
        Evidence::CylinderTable(table) => Some(table),
        _ => None,
    });
    let Some((entry, table)) = shown else {
        return Said::missing(place);
    };
    let wanted = ground.file.vehicle.engine_cylinders.unwrap_or(0);
    let have = i64::try_from(table.rows.len()).unwrap_or(i64::MAX);
    let every = (1..=wanted).all(|n| table.rows.iter().any(|row| row.engine_cylinder == n));
    if have != wanted || !every {
        #[allow(clippy::cast_precision_loss, reason = "at most twelve")]
        let why = Why::plain("cylinders-incomplete").number("have", have as f64, 0).number("wanted", wanted as f64, 0);
        return Said::new(State::Missing, why, place).on(entry);
    }
    if let Some(injector) = table.doubled_injector() {
        #[allow(clippy::cast_precision_loss, reason = "at most twelve")]
        let why = Why::plain("injector-doubled").number("injector", injector as f64, 0);
        return Said::stops(why, place).on(entry);
    }
    if let Some(row) = table.rows.iter().find(|row| !row.answers) {
        #[allow(clippy::cast_precision_loss, reason = "at most twelve")]
        let why = Why::plain("cylinder-silent").number("cylinder", row.engine_cylinder as f64, 0);
        return Said::stops(why, place).on(entry);
    }
    #[allow(clippy::cast_precision_loss, reason = "at most twelve")]
    let why = Why::plain("cylinders-answer").number("count", wanted as f64, 0);
    Said::met(why, place).on(entry)
}

pub fn checklist(ground: &Ground<'_>, group: &str) -> Said {
    let file = ground.file;
    let lines: Vec<_> = ground.book.checks(&file.job).into_iter().filter(|line| line.group == group).collect();
    let place = Place::Evidence("checklist", "", "answers");
    let shown = file.shown("checklist", "", |body| match body {
        Evidence::Checklist(checklist) => Some(checklist),
        _ => None,
    });
    let Some((entry, checklist)) = shown else {
        return Said::missing(place);
    };
    let mut passed = 0_u32;
    let mut open = 0_u32;
    let mut failed = None;
    for line in &lines {
        match checklist.answers.get(&line.id) {
            Some(answer) if answer.answer == CheckAnswer::Fail => {
                let why = Why::plain("check-fails").with("line", Arg::Key(format!("check-{}", line.id)));
                failed = failed.or(Some(why.text("note", &answer.note)));
            }
            Some(answer) if answer.answer == CheckAnswer::NotApplicable && !line.may_not_apply => open += 1,
            Some(_) => passed += 1,
            None => open += 1,
        }
    }
    if let Some(why) = failed {
        // A list half answered has not failed yet: what was not looked at is missing.
        let said = if open == 0 { Said::fails(why, place) } else { Said::stops(why, place) };
        return said.on(entry);
    }
    if group == "removed"
        && let Some(said) = still_listed(ground)
    {
        return said;
    }
    let why = |key| Why::plain(key).number("done", f64::from(passed), 0).number("all", f64::from(passed + open), 0);
    if open > 0 || lines.is_empty() {
        return Said::new(State::Missing, why("checklist-open"), place).on(entry);
    }
    Said::met(why("checklist-done"), place).on(entry)
}

/// A removal names what it took off: the books must agree with the checklist.
fn still_listed(ground: &Ground<'_>) -> Option<Said> {
    let vessel = ground.file.fitted().find(|part| part.is_vessel());
    if let Some(vessel) = vessel {
        let why = Why::plain("vessel-still-listed").text("serial", &vessel.serial);
        return Some(Said::new(State::Missing, why, Place::Part(vessel.category.code())));
    }
    let job = ground.file.job.id;
    let is_any = ground.file.parts.iter().any(|part| part.removed_in == Some(job));
    let first = if ground.file.job.fuel == Fuel::Lpg { "container" } else { "cylinder" };
    (!is_any).then(|| Said::new(State::Missing, Why::plain("nothing-taken-off"), Place::Part(first)))
}

pub fn vessel_checked(ground: &Ground<'_>) -> Said {
    let place = Place::Evidence("vessel-check", "", "looked");
    let shown = ground.file.shown("vessel-check", "", |body| match body {
        Evidence::VesselCheck(one) => Some(one),
        _ => None,
    });
    let Some((entry, check)) = shown else {
        return Said::missing(place);
    };
    let vessels = ground.file.fitted().filter(|part| part.is_vessel());
    for vessel in vessels.filter(|part| part.fitted_in == ground.file.job.id) {
        let mut findings = check.findings.iter().filter(|one| one.part_id == vessel.id);
        if let Some(bad) = findings.find(|one| one.level != VesselLevel::Acceptable) {
            let why = Why::plain("vessel-not-acceptable").text("serial", &vessel.serial).text("words", &bad.words);
            return Said::fails(why, place).on(entry);
        }
        if !check.looked.iter().any(|one| one.part_id == vessel.id && !one.kinds.is_empty()) {
            let why = Why::plain("vessel-not-looked-at").text("serial", &vessel.serial);
            return Said::new(State::Missing, why, place).on(entry);
        }
    }
    Said::met(Why::plain("vessels-looked-at"), place).on(entry)
}

pub fn level_sensing(ground: &Ground<'_>) -> Said {
    let place = Place::Evidence("level-sensing", "", "how");
    let shown = ground.file.shown("level-sensing", "", |body| match body {
        Evidence::LevelSensing(one) => Some(one),
        _ => None,
    });
    let Some((entry, one)) = shown else {
        return Said::missing(place);
    };
    if one.how == LevelSensingKind::Reckoned && !one.is_routine_explained {
        return Said::new(State::Missing, Why::plain("fill-routine-not-explained"), place).on(entry);
    }
    Said::met(Why::plain("level-sensing").with("how", Arg::Code("level-sensing", one.how.code())), place).on(entry)
}
