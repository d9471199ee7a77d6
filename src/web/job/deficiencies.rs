//! What an inspection found, deficiency by deficiency: on what, of which class, how grave, in words, with a photo.
//!
//! An empty list is an answer too: looked, and nothing found. A class of the inspection code sets the least severity; it can
//! be called graver, never milder.

use super::JobPage;
use super::facts::{Fact, Facts};
use super::inspection_said as said;
use super::record::{Group, Recorded, Taken};
use crate::model::evidence::{Deficiencies, Entry, Evidence, FoundDeficiency, Severity};
use crate::model::ids::AttachmentId;
use crate::model::stage::Stage;
use crate::rules::deficiency::{CLASSES, class_of};
use crate::web::Error;
use crate::web::app::App;
use crate::web::form::{Form, Row, Wrong};
use crate::web::kit::{self, Choice, Verdict};

/// The form of [`Deficiencies`].
#[derive(Debug)]
pub struct DeficienciesForm;

/// The slot of photos to choose from.
pub const PHOTOS: &str = "deficiency";
/// Empty places at the end of the list.
const SPARE: usize = 2;

fn of(entry: &Entry) -> Option<&Deficiencies> {
    if let Evidence::Deficiencies(one) = &entry.body { Some(one) } else { None }
}

fn photos(job: &JobPage) -> Vec<Choice> {
    let all = job.file.attachments.iter().filter(|file| file.slot == PHOTOS);
    all.map(|file| Choice::new(file.id.to_string(), format!("{}, {}", file.name, job.when(file.recorded_at)))).collect()
}

fn classes(job: &JobPage) -> Vec<Choice> {
    let w = job.w();
    let choice = |class: &crate::rules::deficiency::Class| {
        let words = w.t(format!("deficiency-class-{}", class.key));
        Choice::new(class.code, format!("{}: {words}", class.code))
    };
    CLASSES.iter().map(choice).collect()
}

fn read_one(job: &JobPage, form: &mut Form, row: &Row) -> Option<FoundDeficiency> {
    let item = form.opt_text(&row.name("item"), 80).unwrap_or_default();
    if !item.is_empty() && said::item_title(job, &item).is_none() {
        form.fail(&row.name("item"), Wrong::NotAChoice);
    }
    let class = form.opt_text(&row.name("class"), 20).unwrap_or_default();
    let of_code = class_of(&class);
    if !class.is_empty() && of_code.is_none() {
        form.fail(&row.name("class"), Wrong::NotAChoice);
    }
    let severity: Option<Severity> = form.choice(&row.name("severity"));
    if let (Some(severity), Some(class)) = (severity, of_code)
        && severity < class.least
    {
        let least = job.w().t(format!("severity-{}", class.least));
        form.fail(&row.name("severity"), Wrong::Rule("deficiency-milder-than-class", vec![("least", least.into())]));
    }
    let words = form.text(&row.name("words"), 400);
    let photo: Option<AttachmentId> = form.opt_choice(&row.name("photo"));
    if photo.is_some_and(|id| !job.file.attachments.iter().any(|file| file.id == id && file.slot == PHOTOS)) {
        form.fail(&row.name("photo"), Wrong::NotAChoice);
    }
    Some(FoundDeficiency { item, class, severity: severity?, words: words?, photo })
}

impl Recorded for DeficienciesForm {
    const KIND: &'static str = "deficiencies";
    const STAGE: Stage = Stage::Proving;

    async fn open(_: &App, _: &JobPage, _: &str) -> Result<Self, Error> {
        Ok(Self)
    }

    /// A repeat begins with what failed the first inspection: each is cleared by whoever looked at it again.
    fn blank(&self, job: &JobPage) -> Form {
        let before = job.file.repeats.as_ref().map(|first| first.deficiencies.as_slice()).unwrap_or_default();
        before.iter().enumerate().fold(Form::blank(), |form, (at, one)| {
            let name = |field: &str| format!("found[{at}][{field}]");
            form.with(&name("severity"), one.severity.as_str())
                .with(&name("words"), format!("{}: {}", one.item, one.reason))
        })
    }

    fn filled(&self, _: &JobPage, entry: &Entry) -> Form {
        let Some(seen) = of(entry) else { return Form::blank() };
        let shut = seen.is_gas_shut_off.map(|yes| if yes { "yes" } else { "no" }).unwrap_or_default();
        let form = Form::blank().with("not_tested_reason", &seen.not_tested_reason).with("is_gas_shut_off", shut);
        seen.found.iter().enumerate().fold(form, |form, (at, one)| {
            let name = |field: &str| format!("found[{at}][{field}]");
            form.with(&name("item"), &one.item)
                .with(&name("class"), &one.class)
                .with(&name("severity"), one.severity.as_str())
                .with(&name("words"), &one.words)
                .with(&name("photo"), one.photo.map(|id| id.to_string()).unwrap_or_default())
        })
    }

    fn groups(&self, job: &JobPage, form: &Form) -> Vec<Group> {
        let w = job.w();
        let (items, classes, photos) = (said::items(job), classes(job), photos(job));
        let severities = kit::coded::<Severity>(&w);
        let one = |(at, row): (usize, Row)| {
            let fields = vec![
                kit::choice(form, &w, row.name("item"), &items).optional().wide(),
                kit::choice(form, &w, row.name("class"), &classes).optional().wide(),
                kit::pick(form, &w, row.name("severity"), &severities),
                kit::text(form, &w, row.name("words")).wide(),
                kit::choice(form, &w, row.name("photo"), &photos).optional(),
            ];
            let mut group = Group::new(w.tv("deficiency-number", &[("n", (at + 1).into())]), fields);
            if at == 0 {
                "found".clone_into(&mut group.id);
                let key = if job.file.repeats.is_some() { "deficiencies-note-repeat" } else { "deficiencies-note" };
                group = group.noted(w.t(key));
            }
            group
        };
        let mut groups: Vec<Group> = form.rows_shown("found", 1, SPARE).into_iter().enumerate().map(one).collect();
        groups.push(
            Group::new(
                w.t("deficiencies-danger"),
                vec![
                    kit::yes_no(form, &w, "is_gas_shut_off").optional(),
                    kit::text(form, &w, "not_tested_reason").optional().wide(),
                ],
            )
            .noted(w.t("deficiencies-danger.lead")),
        );
        groups
    }

    fn read(&self, job: &JobPage, form: &mut Form) -> Option<Taken> {
        let rows = form.rows("found");
        let found: Vec<_> = rows.iter().filter_map(|row| read_one(job, form, row)).collect();
        let not_tested_reason = form.opt_text("not_tested_reason", 400).unwrap_or_default();
        let is_gas_shut_off = form.opt_yes_no("is_gas_shut_off");
        let is_dangerous = found.iter().any(|one| one.severity == Severity::Dangerous);
        if is_dangerous && is_gas_shut_off.is_none() {
            form.fail("is_gas_shut_off", Wrong::Rule("deficiency-dangerous-shut-off", Vec::new()));
        }
        if !is_dangerous && !not_tested_reason.is_empty() && form.sound().is_some() {
            form.fail("not_tested_reason", Wrong::Rule("deficiency-not-tested-needs-danger", Vec::new()));
        }
        form.sound()?;
        let attachments = found.iter().filter_map(|one| one.photo).collect();
        let body = Evidence::Deficiencies(Deficiencies {
            found,
            not_tested_reason,
            is_gas_shut_off: is_gas_shut_off.filter(|_| is_dangerous),
        });
        Some(Taken { attachments, ..Taken::of(body) })
    }

    fn facts(job: &JobPage, entry: &Entry) -> Vec<Fact> {
        let Some(seen) = of(entry) else { return Vec::new() };
        let w = job.w();
        let line = |one: &FoundDeficiency| {
            let item = said::item_title(job, &one.item).unwrap_or_else(|| w.t("deficiency-item-other"));
            let class = class_of(&one.class).map(|class| class.code).unwrap_or_default();
            let label = [class, item.as_str()].into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>();
            let severity = w.t(format!("severity-{}", one.severity));
            Fact { label: label.join(" · "), value: format!("{severity} · {}", one.words) }
        };
        let mut facts: Vec<Fact> = seen.found.iter().map(line).collect();
        let mut rest = Facts::new(w, Self::KIND);
        if let Some(shut) = seen.is_gas_shut_off {
            rest = rest.yes_no("is_gas_shut_off", shut);
        }
        facts.extend(rest.text("not_tested_reason", &seen.not_tested_reason).done());
        facts
    }

    fn verdict(job: &JobPage, _: &Entry) -> Option<Verdict> {
        Some(said::verdict(job))
    }
}
