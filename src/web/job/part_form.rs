//! The form of one part: its fields, how they are read, and what the approval mark says.
//!
//! A mark that cannot be read is kept: the part in the hand is a fact. What is odd about it is said beside the field.

use time::{Date, Month};

use super::JobPage;
use super::record::Group;
use crate::model::Coded;
use crate::model::approval_mark::{ApprovalMark, MarkDoubt, NotAMark};
use crate::model::job::{Fuel, JobKind};
use crate::model::part::{DatePrecision, NewPart, Part, PartCategory, PartOrigin};
use crate::unit::Unit;
use crate::web::form::{Form, Wrong, day};
use crate::web::kit::{self, Mark};
use crate::words::Words;

/// Where the labels of a part are looked up.
pub const SCOPE: &str = "part";

/// Parts that the texts do not ask to be marked one by one.
fn may_be_unmarked(category: PartCategory) -> bool {
    matches!(category, PartCategory::Other | PartCategory::Sensor | PartCategory::GasTightHousing)
}

/// A vessel: its capacity and test pressure stand on its plate.
fn is_vessel(category: PartCategory) -> bool {
    matches!(category, PartCategory::Container | PartCategory::Cylinder)
}

/// An approval mark in words: what it says, and what a person should look at again.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MarkRead {
    /// Whether all is well.
    pub mark: Mark,
    /// What was read; empty when nothing was.
    pub said: String,
    /// What to look at again.
    pub doubts: Vec<String>,
}

/// Reads a mark for a part of this kind in a system of this gas.
pub fn read_mark(w: &Words, typed: &str, category: Option<PartCategory>, fuel: Fuel) -> MarkRead {
    let text = typed.trim();
    if text.is_empty() {
        let is_fine = category.is_none_or(may_be_unmarked);
        let doubts = if is_fine { Vec::new() } else { vec![w.t("part-mark-none")] };
        return MarkRead {
            mark: if is_fine { Mark::NotApplicable } else { Mark::Missing },
            said: String::new(),
            doubts,
        };
    }
    match text.parse::<ApprovalMark>() {
        Ok(mark) => {
            let mut doubts: Vec<String> =
                mark.doubts().into_iter().map(|doubt| doubt_in_words(w, doubt, &mark)).collect();
            let fits = mark.fits(fuel);
            if !fits {
                let fuel = w.t(format!("fuel-{}", fuel.code()));
                let regulation = i64::from(mark.regulation.number());
                doubts.insert(
                    0,
                    w.tv("part-mark-other-fuel", &[("regulation", regulation.into()), ("fuel", fuel.into())]),
                );
            }
            let state = match (fits, doubts.is_empty()) {
                (false, _) => Mark::Stops,
                (true, false) => Mark::Undecided,
                (true, true) => Mark::Met,
            };
            MarkRead { mark: state, said: said(w, &mark), doubts }
        }
        Err(why) => MarkRead {
            mark: Mark::Stops,
            said: String::new(),
            doubts: vec![w.t(format!("part-not-a-mark-{}", code(why)))],
        },
    }
}

fn said(w: &Words, mark: &ApprovalMark) -> String {
    let country = mark.country().map_or_else(|| mark.country_number.to_string(), |country| country.code.to_owned());
    w.tv(
        "part-mark-read",
        &[
            ("regulation", i64::from(mark.regulation.number()).into()),
            ("country", country.into()),
            ("series", mark.series.as_str().into()),
            ("number", mark.number.as_str().into()),
        ],
    )
}

fn doubt_in_words(w: &Words, doubt: MarkDoubt, mark: &ApprovalMark) -> String {
    let key = match doubt {
        MarkDoubt::CountryUnknown => "part-doubt-country-unknown",
        MarkDoubt::SmallE => "part-doubt-small-e",
        MarkDoubt::ClassUnknown => "part-doubt-class-unknown",
    };
    let (country, class) = (i64::from(mark.country_number), mark.rest.as_str());
    w.tv(key, &[("country", country.to_string().into()), ("class", class.into())])
}

fn code(why: NotAMark) -> &'static str {
    match why {
        NotAMark::Empty => "empty",
        NotAMark::NoCountry => "no-country",
        NotAMark::NoRegulation => "no-regulation",
        NotAMark::EuDirective => "eu-directive",
        NotAMark::NoNumber => "no-number",
    }
}

/// A date of manufacture as it is written on parts: a day, a month (`03/2024`, `2024-03`, `Mar 2024`) or a year. A month
/// stands as its last day, a year as 31 December.
pub fn read_made(text: &str) -> Result<(Date, DatePrecision), Wrong> {
    let wrong = || Wrong::Rule("part-made-unreadable", vec![("typed", text.trim().to_owned().into())]);
    let words: Vec<&str> = text.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty()).collect();
    let year = |word: &str| (word.len() == 4).then(|| word.parse::<i32>().ok()).flatten();
    let build = |year: i32, month: Month| {
        if !(1900..=2199).contains(&year) {
            return Err(wrong());
        }
        Date::from_calendar_date(year, month, month.length(year)).map_err(|_| wrong())
    };
    match words.as_slice() {
        [only] => Ok((build(year(only).ok_or_else(wrong)?, Month::December)?, DatePrecision::Year)),
        [one, other] => {
            let (year, month) = match (year(one), year(other)) {
                (Some(year), _) => (year, other),
                (None, Some(year)) => (year, one),
                (None, None) => return Err(wrong()),
            };
            Ok((build(year, month_of(month).ok_or_else(wrong)?)?, DatePrecision::Month))
        }
        _ => day::date(text).map(|day| (day, DatePrecision::Day)),
    }
}

fn month_of(word: &str) -> Option<Month> {
    if let Ok(number) = word.parse::<u8>() {
        return Month::try_from(number).ok();
    }
    let lower = word.to_lowercase();
    let named = |number: &u8| {
        let name = Month::try_from(*number).map(|month| month.to_string().to_lowercase()).unwrap_or_default();
        lower.len() >= 3 && name.starts_with(&lower)
    };
    (1..=12_u8).find(named).and_then(|number| Month::try_from(number).ok())
}

/// The same date as a field shows it.
pub fn made_text(made_on: Option<Date>, precision: Option<DatePrecision>) -> String {
    let Some(made_on) = made_on else { return String::new() };
    match precision {
        Some(DatePrecision::Year) => made_on.year().to_string(),
        Some(DatePrecision::Month) => format!("{}-{:02}", made_on.year(), u8::from(made_on.month())),
        Some(DatePrecision::Day) | None => made_on.to_string(),
    }
}

/// The same in words.
pub fn made_said(w: &Words, part: &Part) -> String {
    match (part.made_on, part.made_precision) {
        (None, _) => String::new(),
        (Some(on), Some(DatePrecision::Year)) => on.year().to_string(),
        (Some(on), Some(DatePrecision::Month)) => w.month(on),
        (Some(on), _) => w.medium_date(on),
    }
}

fn day_text(day: Option<Date>) -> String {
    day.map(|day| day.to_string()).unwrap_or_default()
}

/// Where a part of this job comes from unless somebody says otherwise: an inspection fits nothing.
pub fn usual_origin(job: &JobPage) -> PartOrigin {
    match job.file.job.kind {
        JobKind::Inspection | JobKind::AfterAccident => PartOrigin::Found,
        _ => PartOrigin::Fitted,
    }
}

fn plain(value: Option<f64>) -> String {
    value.map(|value| value.to_string()).unwrap_or_default()
}

/// What each field shows of a part.
pub fn texts(part: &Part) -> Vec<(&'static str, String)> {
    vec![
        ("category", part.category.to_string()),
        ("maker", part.maker.clone()),
        ("type_name", part.type_name.clone()),
        ("approval_mark", part.approval_mark.clone()),
        ("component_class", part.component_class.clone()),
        ("serial", part.serial.clone()),
        ("batch", part.batch.clone()),
        ("made_on", made_text(part.made_on, part.made_precision)),
        ("capacity_l", plain(part.capacity_l)),
        ("test_pressure_kpa", plain(part.test_pressure_kpa)),
        ("working_pressure_kpa", plain(part.working_pressure_kpa)),
        ("last_tested_on", day_text(part.last_tested_on)),
        ("end_of_life_on", day_text(part.end_of_life_on)),
        ("origin", part.origin.to_string()),
        ("place", part.place.clone()),
        ("fitted_on", part.fitted_on.to_string()),
    ]
}

/// The fields.
pub fn groups(job: &JobPage, form: &Form) -> Vec<Group> {
    let w = job.w();
    let category = form.value("category").parse::<PartCategory>().ok();
    let typed_mark = form.value("approval_mark");
    let mut mark = kit::code(form, &w, "approval_mark").wide().optional();
    if !typed_mark.trim().is_empty() {
        let read = read_mark(&w, typed_mark, category, job.file.job.fuel);
        let lines: Vec<String> = [read.said].into_iter().chain(read.doubts).filter(|line| !line.is_empty()).collect();
        mark = mark.hinted(lines.join(" · "));
    }
    let mut made = kit::text(form, &w, "made_on").optional();
    if let Ok((on, DatePrecision::Month | DatePrecision::Year)) = read_made(form.value("made_on")) {
        made = made.hinted(w.tv("part-made-counts-as", &[("on", w.medium_date(on).into())]));
    }
    let what = vec![
        kit::choice(form, &w, "category", &kit::coded::<PartCategory>(&w)).wide(),
        kit::text(form, &w, "maker"),
        kit::text(form, &w, "type_name"),
        mark,
        kit::text(form, &w, "component_class").optional(),
    ];
    let which = vec![kit::code(form, &w, "serial").optional(), kit::code(form, &w, "batch").optional(), made];
    let mut vessel =
        vec![kit::number(form, &w, "capacity_l").optional(), kit::number(form, &w, "test_pressure_kpa").optional()];
    if job.file.job.fuel == Fuel::Cng {
        vessel.push(kit::number(form, &w, "working_pressure_kpa").optional());
    }
    vessel.push(kit::date(form, &w, "last_tested_on").optional());
    vessel.push(kit::date(form, &w, "end_of_life_on").optional());
    let place = vec![
        kit::pick(form, &w, "origin", &kit::coded::<PartOrigin>(&w)),
        kit::text(form, &w, "place").optional().wide(),
        kit::date(form, &w, "fitted_on"),
    ];
    let mut groups = vec![
        Group::new(w.t("part-group-what"), what),
        Group::new(w.t("part-group-which"), which).noted(w.t("part-note-which")),
    ];
    // Until a kind is chosen the plate of a vessel may be needed.
    if category.is_none_or(is_vessel) {
        groups.push(Group::new(w.t("part-group-vessel"), vessel));
    }
    groups.push(Group::new(w.t("part-group-place"), place));
    groups
}

/// What was typed; `None` when something is wrong, noted at its field.
pub fn read(form: &mut Form, today: Date, usual: PartOrigin) -> Option<NewPart> {
    let category = form.choice("category");
    let maker = form.text("maker", 100);
    let type_name = form.text("type_name", 100);
    let approval_mark = form.opt_text("approval_mark", 100).unwrap_or_default();
    let component_class = form.opt_text("component_class", 40).unwrap_or_default();
    let serial = form.opt_text("serial", 80).unwrap_or_default();
    let batch = form.opt_text("batch", 80).unwrap_or_default();
    let made = form.opt_text("made_on", 40).and_then(|text| match read_made(&text) {
        Ok(made) => Some(made),
        Err(wrong) => {
            form.fail("made_on", wrong);
            None
        }
    });
    let capacity_l = form.opt_number("capacity_l", Unit::Litre, 0.1..=2_000.0);
    let test_pressure_kpa = form.opt_number("test_pressure_kpa", Unit::Kilopascal, 10.0..=150_000.0);
    let working_pressure_kpa = form.opt_number("working_pressure_kpa", Unit::Kilopascal, 10.0..=100_000.0);
    let last_tested_on = form.opt_past_date("last_tested_on", today);
    let end_of_life_on = form.opt_date("end_of_life_on");
    let origin = form.opt_choice("origin").unwrap_or(usual);
    let place = form.opt_text("place", 200).unwrap_or_default();
    let fitted_on = form.past_date("fitted_on", today);
    if let (Some((made_on, _)), Some(end)) = (made, end_of_life_on)
        && end < made_on
    {
        form.fail("end_of_life_on", Wrong::Rule("part-life-before-made", Vec::new()));
    }
    // What somebody else fitted may carry nothing that can be read; what is fitted here must be traceable.
    if serial.is_empty() && batch.is_empty() && origin == PartOrigin::Fitted {
        form.fail("serial", Wrong::Rule("part-serial-or-batch", Vec::new()));
    }
    form.sound()?;
    Some(NewPart {
        category: category?,
        maker: maker?,
        type_name: type_name?,
        approval_mark,
        component_class,
        serial,
        batch,
        made_on: made.map(|(on, _)| on),
        made_precision: made.map(|(_, precision)| precision),
        capacity_l,
        test_pressure_kpa,
        working_pressure_kpa,
        last_tested_on,
        end_of_life_on,
        place,
        fitted_on: fitted_on?,
        origin,
    })
}

#[cfg(test)]
mod tests {
    use time::macros::date;

    use super::*;

    #[test]
    fn a_month_ends_on_its_last_day_and_a_year_on_its_own() {
        for (typed, on, precision) in [
            ("03/2024", date!(2024 - 03 - 31), DatePrecision::Month),
            ("2024-02", date!(2024 - 02 - 29), DatePrecision::Month),
            ("Feb 2023", date!(2023 - 02 - 28), DatePrecision::Month),
            ("2019", date!(2019 - 12 - 31), DatePrecision::Year),
            ("2024-03-15", date!(2024 - 03 - 15), DatePrecision::Day),
            ("15 March 2024", date!(2024 - 03 - 15), DatePrecision::Day),
        ] {
            assert_eq!(read_made(typed), Ok((on, precision)), "{typed}");
            assert_eq!(read_made(&made_text(Some(on), Some(precision))), Ok((on, precision)), "{typed} shown again");
        }
        for bad in ["", "24", "13/2024", "03/24", "2024-02-30", "soon", "1024", "Ma 2024"] {
            assert!(read_made(bad).is_err(), "{bad}");
        }
    }
}
