//! The checklist of the rule book, line by line. Each answer keeps who gave it and when: an answer that does not change
//! keeps its first initials and time, whoever sends the form again.

use std::collections::BTreeMap;

use super::JobPage;
use super::facts::Fact;
use super::record::{Group, Recorded, Taken};
use crate::model::Coded;
use crate::model::evidence::{CheckAnswer, Checklist, Entry, Evidence, ItemAnswer};
use crate::model::stage::Stage;
use crate::rules::CheckLine;
use crate::web::Error;
use crate::web::app::App;
use crate::web::form::{Form, Wrong};
use crate::web::kit::{self, Mark, Tone, Verdict};
use crate::words::Words;

/// The form of [`Checklist`].
#[derive(Debug)]
pub struct ChecklistForm;

fn of(entry: &Entry) -> Option<&Checklist> {
    if let Evidence::Checklist(checklist) = &entry.body { Some(checklist) } else { None }
}

/// A line in words: the shop's own, else those of the language file.
fn says(w: &Words, line: &CheckLine) -> String {
    line.title.clone().unwrap_or_else(|| w.t(format!("check-{}", line.id)))
}

/// Fields carry the id of their line, so that a rule set that grew meanwhile moves no answer to another line.
fn name(line: &CheckLine, field: &str) -> String {
    format!("answers[{}][{field}]", line.id)
}

fn answered(job: &JobPage) -> Option<&BTreeMap<String, ItemAnswer>> {
    job.file.entry(ChecklistForm::KIND, "").and_then(of).map(|checklist| &checklist.answers)
}

/// Groups in the order of the book.
fn grouped(job: &JobPage) -> Vec<(String, Vec<&CheckLine>)> {
    let mut groups: Vec<(String, Vec<&CheckLine>)> = Vec::new();
    for line in job.book.checks(&job.file.job) {
        match groups.iter_mut().find(|(group, _)| *group == line.group) {
            Some((_, lines)) => lines.push(line),
            None => groups.push((line.group.clone(), vec![line])),
        }
    }
    groups
}

impl ChecklistForm {
    fn read_line(job: &JobPage, form: &mut Form, line: &CheckLine) -> Option<ItemAnswer> {
        let (answer_name, note_name) = (name(line, "answer"), name(line, "note"));
        let answer: Option<CheckAnswer> = form.opt_choice(&answer_name);
        let note = form.opt_text(&note_name, 400).unwrap_or_default();
        let Some(answer) = answer else {
            if !note.is_empty() {
                form.fail(&answer_name, Wrong::Rule("checklist-note-without-answer", Vec::new()));
            }
            return None;
        };
        if answer == CheckAnswer::NotApplicable && !line.may_not_apply {
            form.fail(&answer_name, Wrong::Rule("checklist-always-applies", Vec::new()));
        }
        if answer != CheckAnswer::Pass && note.is_empty() {
            form.fail(&note_name, Wrong::Rule("checklist-note-needed", Vec::new()));
        }
        let before = answered(job).and_then(|answers| answers.get(&line.id));
        if let Some(before) = before.filter(|before| before.answer == answer && before.note == note) {
            return Some(before.clone());
        }
        Some(ItemAnswer { answer, note, initials: job.who.person.initials.clone(), at: job.now })
    }

    fn answer_said(job: &JobPage, answer: &ItemAnswer) -> String {
        let w = job.w();
        let said = w.t(format!("check-answer-{}", answer.answer.code()));
        let by = w
            .tv("checklist-by", &[("initials", answer.initials.as_str().into()), ("when", job.when(answer.at).into())]);
        [said, answer.note.clone(), by].into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(" · ")
    }
}

impl Recorded for ChecklistForm {
    const KIND: &'static str = "checklist";
    const STAGE: Stage = Stage::Fitting;

    async fn open(_: &App, _: &JobPage, _: &str) -> Result<Self, Error> {
        Ok(Self)
    }

    fn blank(&self, _: &JobPage) -> Form {
        Form::blank()
    }

    fn filled(&self, job: &JobPage, entry: &Entry) -> Form {
        let mut form = Form::blank();
        let Some(checklist) = of(entry) else { return form };
        for line in job.book.checks(&job.file.job) {
            if let Some(answer) = checklist.answers.get(&line.id) {
                form.set(&name(line, "answer"), answer.answer.to_string());
                form.set(&name(line, "note"), &answer.note);
            }
        }
        form
    }

    fn groups(&self, job: &JobPage, form: &Form) -> Vec<Group> {
        let w = job.w();
        let answers = answered(job);
        let columns = ["checklist-line", "checklist-answer", "checklist-note"].map(|key| w.t(key)).to_vec();
        let row = |line: &&CheckLine| {
            let choices: Vec<_> = kit::coded::<CheckAnswer>(&w)
                .into_iter()
                .filter(|choice| line.may_not_apply || choice.value != CheckAnswer::NotApplicable.code())
                .collect();
            let answer = kit::pick(form, &w, name(line, "answer"), &choices).called(says(&w, line));
            vec![answer, kit::text(form, &w, name(line, "note"))]
        };
        let head = |line: &&CheckLine| {
            let before = answers.and_then(|answers| answers.get(&line.id));
            let by = before.map(|answer| Self::answer_said(job, answer)).unwrap_or_default();
            let confirm = if line.checked || line.practice {
                line.source.clone()
            } else {
                w.tv("checklist-source-unread", &[("source", line.source.as_str().into())])
            };
            (says(&w, line), [by, confirm].into_iter().filter(|text| !text.is_empty()).collect::<Vec<_>>().join(" · "))
        };
        let group = |(at, (group, lines)): (usize, (String, Vec<&CheckLine>))| {
            let legend = w.find(&format!("checklist-group-{group}")).unwrap_or(group);
            let id = if at == 0 { "answers".to_owned() } else { format!("answers-{at}") };
            Group::table(&id, legend, columns.clone(), lines.iter().map(row).collect())
                .headed(lines.iter().map(head).collect())
        };
        grouped(job).into_iter().enumerate().map(group).collect()
    }

    fn read(&self, job: &JobPage, form: &mut Form) -> Option<Taken> {
        let mut answers = BTreeMap::new();
        let lines = job.book.checks(&job.file.job);
        for line in &lines {
            if let Some(answer) = Self::read_line(job, form, line) {
                answers.insert(line.id.clone(), answer);
            }
        }
        if answers.is_empty() && form.sound().is_some() {
            let first = lines.first().map_or_else(|| "answers".to_owned(), |line| name(line, "answer"));
            form.fail(&first, Wrong::Rule("checklist-nothing-answered", Vec::new()));
        }
        form.sound()?;
        Some(Taken::of(Evidence::Checklist(Checklist { answers })))
    }

    fn facts(job: &JobPage, entry: &Entry) -> Vec<Fact> {
        let Some(checklist) = of(entry) else { return Vec::new() };
        let w = job.w();
        let lines = job.book.checks(&job.file.job);
        let known = lines.iter().filter_map(|line| {
            let answer = checklist.answers.get(&line.id)?;
            Some(Fact { label: says(&w, line), value: Self::answer_said(job, answer) })
        });
        // A line that has left the book since stays readable under its id.
        let gone = checklist.answers.iter().filter(|(id, _)| !lines.iter().any(|line| line.id == **id));
        let gone = gone.map(|(id, answer)| Fact { label: id.clone(), value: Self::answer_said(job, answer) });
        known.chain(gone).collect()
    }

    fn verdict(job: &JobPage, entry: &Entry) -> Option<Verdict> {
        let checklist = of(entry)?;
        let w = job.w();
        let lines = job.book.checks(&job.file.job);
        let failed: Vec<_> = lines
            .iter()
            .filter_map(|line| checklist.answers.get(&line.id).map(|answer| (line, answer)))
            .filter(|(_, answer)| answer.answer == CheckAnswer::Fail)
            .map(|(line, answer)| format!("{}: {}", says(&w, line), answer.note))
            .collect();
        let open = lines.iter().filter(|line| !checklist.answers.contains_key(&line.id)).count();
        let open = i64::try_from(open).unwrap_or(i64::MAX);
        let (tone, mark, title) = match (failed.len(), open) {
            (0, 0) => (Tone::Met, Mark::Met, w.t("checklist-all-well")),
            (0, open) => (Tone::Copper, Mark::Missing, w.tn("checklist-open-lines", open)),
            (failed, _) => {
                (Tone::Stop, Mark::Stops, w.tn("checklist-failed-lines", i64::try_from(failed).unwrap_or(0)))
            }
        };
        Some(Verdict { tone, mark, title, sentences: failed })
    }
}
