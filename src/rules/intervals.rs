//! From a finished job to what falls due: the first check, the filter, the container from the date it was made, the
//! cylinder's inspection, a fill stop that is still to be shown.
//!
//! Pure: the job file, the rule book and the day of hand-over go in, duties come out.

use time::Date;

use super::book::RuleBook;
use super::interval_line::{Anchor, Count, IntervalLine};
use super::line::in_force;
use super::term;
use crate::calc::due::{self, Precision, Reading};
use crate::model::duty::{DueBy, Duty, DutyKind, NewDuty};
use crate::model::evidence::{Evidence, FillStopHow, FunctionChecks};
use crate::model::ids::PartId;
use crate::model::job::{Job, JobKind};
use crate::model::job_file::JobFile;
use crate::model::part::{DatePrecision, Part, PartCategory};
use crate::model::vehicle::{OdometerExplained, OdometerReading, Vehicle};

/// Id of the duty that is no rule line but an answer: the fill stop is to be shown later.
pub const FILL_STOP: &str = "fill-stop";

/// Id of the duty that a fail makes: the vehicle is brought again.
pub const PRESENT_AGAIN: &str = "present-again";

/// Days until a fill stop must be shown where the book asks for no first check (common practice: at the first fill).
const FILL_STOP_MONTHS: u32 = 1;

/// What falls due after this job, when the vehicle leaves on `on`.
///
/// Where several lines ask one thing of one part, the earliest counts, and the duty names its line. A line that counts
/// from a date nobody knows (a container without date of manufacture) falls due on `on` itself: what is not known is
/// looked at now, not in ten years.
pub fn duties(file: &JobFile, book: &RuleBook, on: Date) -> Vec<NewDuty> {
    if file.job.kind == JobKind::Removal {
        return Vec::new();
    }
    let mut duties: Vec<NewDuty> = Vec::new();
    for line in book.intervals(&file.job, on).into_iter().filter(|line| line.is_about(&file.vehicle)) {
        if line.part.is_none() {
            duties.extend(of_line(line, &file.vehicle, None, &file.readings, on));
            continue;
        }
        let concerned = file.fitted().filter(|part| {
            // When a part was fitted that somebody else fitted is not known: nothing counts from there.
            let is_known = !part.is_found() || line.anchor != Anchor::Fitted;
            line.is_about_part(part) && begins_now(part, &file.job) && is_known
        });
        duties.extend(concerned.filter_map(|part| of_line(line, &file.vehicle, Some(part), &file.readings, on)));
    }
    let mut duties = earliest(duties);
    if shown_fill_stop(file) == Some(FillStopHow::Later) {
        duties.extend(fill_stop(&duties, on));
    }
    duties
}

/// Of duties of one kind on one part (or on the whole vehicle) the first to fall due; of two on one day the one whose
/// source was read, else the first that was named.
fn earliest(duties: Vec<NewDuty>) -> Vec<NewDuty> {
    let mut kept: Vec<NewDuty> = Vec::new();
    for duty in duties {
        let same = |one: &&mut NewDuty| one.kind == duty.kind && one.part_id == duty.part_id;
        match kept.iter_mut().find(same) {
            Some(so_far) => {
                let order = |one: &NewDuty| (one.due_on, !one.is_checked);
                if duty.kind != DutyKind::Other && order(&duty) < order(so_far) {
                    *so_far = duty;
                } else if duty.kind == DutyKind::Other {
                    kept.push(duty);
                }
            }
            None => kept.push(duty),
        }
    }
    kept
}

/// Only what this job fitted begins to run; an exchange of one cylinder leaves the dates of the others alone.
fn begins_now(part: &Part, job: &Job) -> bool {
    part.fitted_in == job.id
}

fn shown_fill_stop(file: &JobFile) -> Option<FillStopHow> {
    fn take(body: &Evidence) -> Option<&FunctionChecks> {
        if let Evidence::FunctionChecks(checks) = body { Some(checks) } else { None }
    }
    file.shown("function-checks", "", take).and_then(|(_, checks)| checks.fill_stop_how)
}

/// After a fail: bring the vehicle again within the term, where the rules set one.
pub fn after_a_fail(book: &RuleBook, on: Date) -> Option<NewDuty> {
    let term = term::term(book, on)?;
    Some(NewDuty {
        part_id: None,
        line: PRESENT_AGAIN.to_owned(),
        kind: DutyKind::Inspection,
        due_on: term.by_on,
        due_km: None,
        decided_by: DueBy::Date,
        source: term.source,
        is_checked: term.is_checked,
    })
}

fn fill_stop(duties: &[NewDuty], on: Date) -> Option<NewDuty> {
    let duty = |due_on, source: String| NewDuty {
        part_id: None,
        line: FILL_STOP.to_owned(),
        kind: DutyKind::FillStop,
        due_on,
        due_km: None,
        decided_by: DueBy::Date,
        source,
        is_checked: false,
    };
    match duties.iter().find(|duty| duty.kind == DutyKind::FirstCheck) {
        Some(first) => Some(duty(first.due_on, first.source.clone())),
        None => due::months_later(on, FILL_STOP_MONTHS, Precision::Day).ok().map(|day| duty(day, String::new())),
    }
}

/// The next duty after one that was met on `on`: a filter changed today falls due again. Of all lines in force that ask
/// the same thing the earliest counts. `None` for what comes once, and where the line is no longer in the book.
pub fn following(
    book: &RuleBook,
    met: &Duty,
    part: Option<&Part>,
    vehicle: &Vehicle,
    readings: &[OdometerReading],
    on: Date,
) -> Option<NewDuty> {
    if !met.kind.comes_again() {
        return None;
    }
    let lines = || book.sets.iter().flat_map(|set| &set.interval);
    let line = lines().find(|line| line.id == met.line)?;
    let asks_the_same = |one: &&IntervalLine| {
        let same_gas = one.fuels.is_empty() || one.fuels.iter().any(|fuel| line.fuels.contains(fuel));
        let of_part = part.is_none_or(|part| one.is_about_part(part));
        one.makes_duties() && one.duty == met.kind && one.part == line.part && same_gas && of_part
    };
    let others = lines().filter(|one| one.id != line.id && in_force(one.from_on, one.to_on, on));
    let others = others.filter(asks_the_same).filter(|one| one.is_about(vehicle));
    let next = std::iter::once(line).chain(others);
    let next = next.filter_map(|one| of_line(&one.again(part), vehicle, None, readings, on)).collect();
    let next = earliest(next).into_iter().next()?;
    Some(NewDuty { part_id: met.part_id, ..next })
}

/// Whether this job meets a duty that was open when it began: the inspection an inspection, a new filter the filter, a
/// fill stop now shown the fill stop.
pub fn is_met_by(duty: &Duty, file: &JobFile) -> bool {
    if duty.job_id == Some(file.job.id) {
        return false;
    }
    let fitted = |category| file.fitted().any(|part| part.category == category && begins_now(part, &file.job));
    match duty.kind {
        DutyKind::Inspection | DutyKind::FirstCheck => file.job.kind == JobKind::Inspection,
        DutyKind::Filter => fitted(PartCategory::Filter),
        DutyKind::FillStop => {
            matches!(shown_fill_stop(file), Some(FillStopHow::Tested | FillStopHow::FirstFill))
        }
        _ => false,
    }
}

/// Whether the part behind a duty has left the vehicle in this job.
pub fn is_part_gone(part: Option<PartId>, file: &JobFile) -> bool {
    part.is_some_and(|id| file.parts.iter().any(|part| part.id == id && !part.is_fitted()))
}

fn of_line(
    line: &IntervalLine,
    vehicle: &Vehicle,
    part: Option<&Part>,
    readings: &[OdometerReading],
    on: Date,
) -> Option<NewDuty> {
    let known = match line.anchor {
        // Every system that starts a duty here was fitted by this shop: a retrofit enters service when it is fitted.
        Anchor::Fitted | Anchor::InService | Anchor::LastInspection => {
            Some((part.map_or(on, |part| part.fitted_on), Precision::Day))
        }
        Anchor::Made | Anchor::LastCheck => part.and_then(made),
        Anchor::Registered => vehicle.first_registered_on.map(|day| (day, Precision::Day)),
        // No line with such a day makes duties; `RuleSet::read` refuses it.
        Anchor::LabelEnd | Anchor::MainInspection | Anchor::DefectFound | Anchor::Exam | Anchor::Event => return None,
    };
    let duty = |due_on, due_km, decided_by| NewDuty {
        part_id: part.map(|part| part.id),
        line: line.id.clone(),
        kind: line.duty,
        due_on,
        due_km,
        decided_by,
        source: line.source.clone(),
        is_checked: line.checked,
    };
    let Some((from, precision)) = known else { return Some(duty(on, None, DueBy::Date)) };
    if let Some(days) = line.days {
        return Some(duty(from.saturating_add(time::Duration::days(i64::from(days))), None, DueBy::Date));
    }
    if line.months == Some(0) {
        return Some(duty(from, None, DueBy::Date));
    }
    let precision = match (line.count, precision) {
        (Count::MonthEnd, Precision::Day) => Precision::Month,
        (_, precision) => precision,
    };
    let readings = trusted(readings, on);
    let from_km = readings.last().map(|reading| reading.km);
    let km = line.km.filter(|_| from_km.is_some());
    let asked = due::Duty {
        from,
        months: line.months,
        from_precision: precision,
        km: km.map(|km| km as f64),
        from_km: km.and(from_km),
        readings,
    };
    match due::due(&asked) {
        Ok(found) => {
            let by = if found.by == due::By::Distance { DueBy::Distance } else { DueBy::Date };
            #[expect(clippy::cast_possible_truncation, reason = "an odometer, below 10 million")]
            let due_km = km.zip(from_km).map(|(km, from_km)| from_km as i64 + km);
            Some(duty(found.due_on, due_km, by))
        }
        // A distance that cannot be forecast yet, and no months beside it: there is no day to remind of.
        Err(_) => None,
    }
}

fn made(part: &Part) -> Option<(Date, Precision)> {
    let precision = match part.made_precision? {
        DatePrecision::Day => Precision::Day,
        DatePrecision::Month => Precision::Month,
        DatePrecision::Year => Precision::Year,
    };
    part.made_on.map(|day| (day, precision))
}

/// The readings up to `on` that one line can be drawn through: those since the odometer was last replaced or found to be
/// in miles, without any that was called a typing error.
fn trusted(readings: &[OdometerReading], on: Date) -> Vec<Reading> {
    use OdometerExplained::{Replaced, TypingErrorBefore, WasMiles};
    let mut kept: Vec<Reading> = Vec::new();
    let mut sorted: Vec<&OdometerReading> = readings.iter().filter(|reading| reading.read_on <= on).collect();
    sorted.sort_by_key(|reading| reading.read_on);
    for reading in sorted {
        match reading.explained {
            Replaced | WasMiles => kept.clear(),
            TypingErrorBefore => {
                kept.pop();
            }
            _ => {}
        }
        kept.push(Reading { date: reading.read_on, km: reading.km as f64 });
    }
    kept
}
