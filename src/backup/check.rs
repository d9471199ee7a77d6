//! Whether a shop is whole: store, files, log, papers, numbers, clock. One line each.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

use time::OffsetDateTime;

use crate::attachments::{Files, Kept};
use crate::db::{self, Con};
use crate::model::paper::issued::Issued;
use crate::seal::keys::read_public_key;
use crate::seal::{self, KeyRing, Sealed};
use crate::shop::issue::kept_keys;

/// What one check found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Line {
    /// What was looked at.
    pub what: &'static str,
    /// Everything that is wrong; empty when it holds.
    pub wrong: Vec<String>,
    /// What is worth saying although nothing is wrong.
    pub said: String,
}

impl Line {
    /// Whether it holds.
    pub fn holds(&self) -> bool {
        self.wrong.is_empty()
    }
}

/// Looks at everything. `folder` is the data folder, `now` the time on the clock.
pub async fn check(con: &mut Con, folder: &Path, now: OffsetDateTime) -> anyhow::Result<Vec<Line>> {
    let mut lines = vec![];
    let settings = db::whole::settings(con).await?;
    let mut wrong = vec![];
    if settings.journal != "wal" {
        wrong.push(format!("the journal is {:?}; wal is wanted", settings.journal));
    }
    if !settings.has_foreign_keys {
        wrong.push("references are not enforced".to_owned());
    }
    let said = format!("SQLite {}, schema step {}", settings.library, settings.step);
    lines.push(Line { what: "settings", wrong, said });
    lines.push(line("integrity", db::whole::integrity(con).await?));
    lines.push(line("references", db::whole::lost_references(con).await?));
    let named = db::attachments::list_checksums(con).await?;
    lines.push(files("attachments", &folder.join("attachments"), &named)?);
    let named = db::whole::paper_checksums(con).await?;
    lines.push(files("paper files", &folder.join("papers"), &named)?);
    let head = db::audit::head(con).await?;
    let broken = db::audit::check(con).await?.map(|place| match place {
        db::audit::Break::Altered(n) => format!("line {n} of the log was altered"),
        db::audit::Break::Missing(n) => format!("line {n} of the log is missing"),
    });
    let said = format!("{} lines, ends at {}", head.sequence, seal::hex(&head.hash));
    lines.push(Line { what: "audit chain", wrong: broken.into_iter().collect(), said });
    lines.extend(papers(con).await?);
    let last = db::whole::last_deed_at(con).await?;
    let behind = last.filter(|last| *last > now);
    lines.push(line(
        "clock",
        behind.map(|last| format!("it is {now}, before the last deed at {last}")).into_iter().collect(),
    ));
    Ok(lines)
}

fn line(what: &'static str, wrong: Vec<String>) -> Line {
    Line { what, wrong, said: String::new() }
}

/// Rows without bytes and altered bytes are wrong. Bytes without a row are only said: a form that was refused after its
/// file was kept leaves them.
fn files(what: &'static str, folder: &Path, named: &[String]) -> anyhow::Result<Line> {
    let kept = Files::in_folder(folder);
    let mut wrong = vec![];
    for sha256 in named {
        match kept.state(sha256)? {
            Kept::Sound => {}
            Kept::Missing => wrong.push(format!("{sha256} is missing")),
            Kept::Altered => wrong.push(format!("{sha256} was altered")),
        }
    }
    let named: BTreeSet<&str> = named.iter().map(String::as_str).collect();
    let strays = names_in(folder)?.into_iter().filter(|name| !named.contains(name.as_str())).count();
    let said = format!("{} named, {strays} that no row names", named.len());
    Ok(Line { what, wrong, said })
}

fn names_in(folder: &Path) -> anyhow::Result<Vec<String>> {
    let mut names = vec![];
    if !folder.is_dir() {
        return Ok(names);
    }
    for group in fs::read_dir(folder)? {
        let group = group?.path();
        if group.is_dir() {
            for file in fs::read_dir(group)? {
                names.push(file?.file_name().to_string_lossy().into_owned());
            }
        }
    }
    Ok(names)
}

async fn papers(con: &mut Con) -> anyhow::Result<[Line; 3]> {
    let ring = kept_keys(con).await?;
    let keys = db::signing_keys::list(con).await?;
    let public: BTreeMap<&str, &str> = keys.iter().map(|key| (key.id.as_str(), key.public_key.as_str())).collect();
    let all = db::papers::list_all(con).await?;
    let mut by_series: BTreeMap<(String, &str), Vec<(i64, &Issued)>> = BTreeMap::new();
    let (mut signatures, mut chain, mut numbers) = (vec![], vec![], vec![]);
    for paper in &all {
        if let Some(why) = unsound(paper, public.get(paper.key_id.as_str()).copied(), &ring) {
            signatures.push(format!("{}: {why}", paper.number));
        }
        match paper.number.rsplit('-').next().and_then(|tail| tail.parse().ok()) {
            Some(running) => {
                let series = (paper.branch_id.to_string(), paper.series.as_str());
                by_series.entry(series).or_default().push((running, paper));
            }
            None => numbers.push(format!("{} has no running number", paper.number)),
        }
    }
    for ((_, series), papers) in &mut by_series {
        papers.sort_by_key(|(running, _)| *running);
        let mut previous = String::new();
        for (expected, (running, paper)) in (1..).zip(papers.iter()) {
            if *running != expected {
                numbers.push(format!("{series}: {} stands where number {expected} should", paper.number));
            }
            if text_of(paper, "previous_sha256") != previous {
                chain.push(format!("{} does not follow the paper before it", paper.number));
            }
            previous = seal::sha256_hex(&paper.content);
        }
    }
    for one in db::whole::series(con).await? {
        if let Some(papers) = by_series.get(&(one.branch_id.to_string(), one.series.as_str())) {
            let last = papers.last().map_or(0, |(running, _)| *running);
            if one.next != last + 1 {
                numbers.push(format!("{}: the next number is {}, the last paper has {last}", one.series, one.next));
            }
        } else if !one.series.starts_with("job-") {
            numbers.push(format!("{}: {} numbers were taken and no paper is kept", one.series, one.next - 1));
        }
    }
    let said = format!("{} papers", all.len());
    Ok([
        Line { what: "signatures", wrong: signatures, said: said.clone() },
        Line { what: "paper chain", wrong: chain, said },
        line("numbers", numbers),
    ])
}

fn unsound(paper: &Issued, public: Option<&str>, ring: &KeyRing) -> Option<String> {
    let Some(public) = public.and_then(|text| read_public_key(text).ok()) else {
        return Some("its key is not kept".to_owned());
    };
    let checked = Sealed::from_kept(paper.content.clone(), &public, &paper.signature)
        .map_err(seal::Refusal::from)
        .and_then(|sealed| sealed.check(ring));
    match checked {
        Err(refusal) => return Some(refusal.to_string()),
        Ok(false) => return Some("its key is not known here".to_owned()),
        Ok(true) => {}
    }
    if text_of(paper, "number") != paper.number {
        return Some("its row has another number than its content".to_owned());
    }
    if paper.personal.is_empty() {
        return None;
    }
    let personal = serde_json::from_str::<serde_json::Value>(&paper.personal).ok();
    let digest = personal.and_then(|value| seal::personal_digest(&value).ok());
    let is_its_own = digest.is_some_and(|digest| digest == text_of(paper, "personal_digest"));
    (!is_its_own).then(|| "its name and address are not those it was signed with".to_owned())
}

/// A text at the top of the content; empty when it has none.
fn text_of(paper: &Issued, name: &str) -> String {
    let value: Option<serde_json::Value> = serde_json::from_slice(&paper.content).ok();
    value.and_then(|value| Some(value.get(name)?.as_str()?.to_owned())).unwrap_or_default()
}
