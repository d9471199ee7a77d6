//! The finding report: made from the finding as it stands when somebody asks for it.

use time::OffsetDateTime;

use super::said;
use super::weigh::{PaperLine, Weighed, weigh};
use crate::db;
use crate::db::doubts::Decided;
use crate::model::doubt::{DecisionContent, Sort};
use crate::model::ids::FindingId;
use crate::model::paper::ShopBlock;
use crate::model::paper::finding_report::{
    DecisionOnReport, FINDING_REPORT_FORMAT, FindingReportContent, PaperOnReport, ResultOnReport,
};
use crate::model::person::Actor;
use crate::papers;
use crate::seal;
use crate::shop::issue::words_of;
use crate::shop::{Refusal, Shop};
use crate::words::Words;

impl Shop {
    /// The report of a finding: its number and the PDF.
    ///
    /// # Errors
    /// [`Refusal::Gone`] for a finding without a cause: there is nothing that rests on it.
    pub async fn finding_report_pdf(&self, who: &Actor, id: FindingId) -> Result<(String, Vec<u8>), Refusal> {
        let now = self.clock.now();
        let mut con = self.db.read().await?;
        let weighed = weigh(&mut con, who.branch, id, now).await?;
        let w = words_of(&weighed.branch.language);
        let mut on_papers = Vec::with_capacity(weighed.papers.len());
        for line in &weighed.papers {
            on_papers.push(paper(&mut con, &w, &weighed, line).await?);
        }
        drop(con);
        let content = report(&w, &weighed, on_papers, now, self.issuer.is_demo());
        let number = content.number.clone();
        let size = weighed.branch.paper_size;
        let drawing = tokio::task::spawn_blocking(move || papers::finding_report::finding_report(&content, &w, size));
        let pdf = drawing
            .await
            .map_err(|error| Refusal::Broken(error.to_string()))?
            .map_err(|error| Refusal::Broken(error.to_string()))?;
        Ok((number, pdf))
    }
}

fn report(
    w: &Words,
    weighed: &Weighed,
    on_papers: Vec<PaperOnReport>,
    now: OffsetDateTime,
    is_demonstration: bool,
) -> FindingReportContent {
    let zone = &weighed.zone;
    let finding = &weighed.finding;
    let opened_on = zone.day_of(finding.opened_at);
    let name = finding.id.to_string();
    let tail: String = name.chars().skip(name.len() - 6).collect();
    let key = format!("finding-source-{}", finding.source);
    let source = w.find(&key).unwrap_or_else(|| finding.source.clone());
    let opened = w.date_time(zone.local(finding.opened_at));
    let branch = &weighed.branch;
    let decided = |at| {
        let at = w.date_time(zone.local(at));
        w.tv("finding-decided", &[("at", at.into()), ("decision", finding.decision.as_str().into())])
    };
    FindingReportContent {
        format: FINDING_REPORT_FORMAT.to_owned(),
        shop: ShopBlock {
            name: branch.name.clone(),
            address: branch.address.lines().collect::<Vec<_>>().join(", "),
            phone: branch.phone.clone(),
            licence: branch.licence_number.clone(),
            branch: String::new(),
        },
        number: format!("F-{}-{tail}", opened_on.year()),
        printed_on: zone.day_of(now),
        printed_at: zone.local(now),
        text: finding.text.clone(),
        opened: w.tv("finding-opened", &[("at", opened.into()), ("source", source.into())]),
        facts: said::facts(w, weighed),
        errors: weighed.errors.iter().map(|one| said::error_told(w, weighed, one)).collect(),
        has_error: said::has_error(weighed),
        tally: said::tally(w, weighed),
        results: weighed.results.iter().map(|line| result(w, weighed, line)).collect(),
        papers: on_papers,
        closed: finding.decided_at.map(decided).unwrap_or_default(),
        still_open: still_open(w, weighed),
        language: w.tag().to_owned(),
        is_demonstration,
        software_version: env!("CARGO_PKG_VERSION").to_owned(),
    }
}

fn still_open(w: &Words, weighed: &Weighed) -> Vec<String> {
    let waits = weighed.papers.iter().filter(|line| line.waits());
    let mut open: Vec<String> =
        waits.map(|line| w.tv("report-paper-waits", &[("number", line.number.as_str().into())])).collect();
    let tested = weighed.papers.iter().filter(|line| !line.decisions.is_empty() && line.may_be_decided());
    open.extend(tested.map(|line| w.tv("report-paper-re-test", &[("number", line.number.as_str().into())])));
    if weighed.finding.is_open() && open.is_empty() {
        open.push(w.t("report-only-close"));
    }
    if weighed.count(Sort::InDoubt) > 0 && weighed.papers.is_empty() && weighed.finding.is_open() {
        open.push(w.t("report-in-doubt-without-paper"));
    }
    open
}

fn result(w: &Words, weighed: &Weighed, line: &super::ResultLine) -> ResultOnReport {
    let figures = line.again.beside.iter().map(|beside| {
        let (old, old_limit) = said::figure(w, beside, beside.old.as_ref());
        let (new, new_limit) = said::figure(w, beside, beside.new.as_ref());
        [said::name(w, beside), old, old_limit, new, new_limit]
    });
    ResultOnReport {
        job: line.job_number.clone(),
        plate: line.plate.clone(),
        what: said::what(w, &line.what),
        measured: w.short_date_time(weighed.zone.local(line.at)),
        figures: figures.collect(),
        sort: line.again.sort,
        sort_said: said::sort(w, line),
        why: said::why(w, line),
    }
}

async fn paper(con: &mut db::Con, w: &Words, weighed: &Weighed, line: &PaperLine) -> Result<PaperOnReport, Refusal> {
    let mut decisions = Vec::with_capacity(line.decisions.len());
    for one in &line.decisions {
        decisions.push(decision(con, w, weighed, one).await?);
    }
    Ok(PaperOnReport {
        number: line.number.clone(),
        vehicle: format!("{} {}", line.plate, line.vehicle).trim().to_owned(),
        standing: w.t(format!("standing-{}", line.standing.as_str())),
        decisions,
    })
}

async fn decision(con: &mut db::Con, w: &Words, weighed: &Weighed, one: &Decided) -> Result<DecisionOnReport, Refusal> {
    let (branch, moment) = (weighed.branch.id, |at| w.date_time(weighed.zone.local(at)));
    let signed: DecisionContent =
        serde_json::from_slice(&one.content).map_err(|error| Refusal::Broken(error.to_string()))?;
    let letter = match one.message_id {
        Some(id) => db::outbox::find(con, branch, id).await?.map(|message| {
            let state = w.t(format!("message-state-{}", message.state));
            let at = message.sent_at.map_or_else(|| moment(message.made_at), moment);
            w.tv("report-letter", &[("state", state.into()), ("at", at.into())])
        }),
        None => None,
    };
    let re_test = match one.booking_id {
        Some(id) => match db::bookings::find(con, branch, id).await? {
            Some(booking) => {
                let job = match booking.job_id {
                    Some(job) => db::jobs::find(con, branch, job).await?.map(|job| job.number).unwrap_or_default(),
                    None => w.t(format!("booking-state-{}", booking.state)),
                };
                let kind = w.t(format!("job-kind-{}", booking.job_kind));
                w.tv(
                    "report-re-test",
                    &[("kind", kind.into()), ("at", moment(booking.starts_at).into()), ("job", job.into())],
                )
            }
            None => String::new(),
        },
        None => String::new(),
    };
    let by = [("name", signed.signatory.as_str().into()), ("number", signed.authorisation.as_str().into())];
    let signature = [
        ("key", seal::fingerprint(&one.key_id).into()),
        ("signature", seal::hex(&one.signature).into()),
        ("sum", seal::sha256_hex(&one.content).into()),
    ];
    Ok(DecisionOnReport {
        decision: w.t(format!("paper-decision-{}", one.decision)),
        reason: one.reason.clone(),
        by: format!("{}, {}", w.tv("paper-person-authorised", &by), moment(signed.made_at)),
        letter: letter.unwrap_or_default(),
        re_test,
        signature: w.tv("report-signature", &signature),
    })
}
