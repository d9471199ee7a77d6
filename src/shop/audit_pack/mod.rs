//! The audit pack of a period: read from the store as it stands, drawn, and noted in the log with who asked for it.

mod history;
mod jobs;
mod people;
mod register;

use time::{Date, OffsetDateTime};

use super::issue::{block_of, words_of};
use super::{Refusal, Shop, Work};
use crate::clock::Zone;
use crate::db;
use crate::db::audit_pack::Span;
use crate::model::branch::Branch;
use crate::model::deed::Deed;
use crate::model::paper::audit_pack::{AUDIT_PACK_FORMAT, AuditPackContent, PackCell, PackSection};
use crate::model::person::Actor;
use crate::papers;
use crate::seal;
use crate::words::Words;

/// How many job files are picked.
pub const PICKED: usize = 10;
/// Letters that a seed may have.
pub const LONGEST_SEED: usize = 40;

/// What is asked for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AskedPack {
    /// First day.
    pub from_on: Date,
    /// Last day, counted in.
    pub to_on: Date,
    /// What picks the job files; empty: chance chooses one.
    pub seed: String,
}

/// Where and when a pack is read.
struct Reading<'a> {
    w: &'a Words,
    zone: &'a Zone,
    branch: &'a Branch,
    span: Span,
    from_on: Date,
    to_on: Date,
    now: OffsetDateTime,
}

impl Reading<'_> {
    fn day(&self, at: OffsetDateTime) -> String {
        self.w.medium_date(self.zone.day_of(at))
    }

    fn moment(&self, at: OffsetDateTime) -> String {
        // With its year: a pack may cover several.
        self.w.date_time(self.zone.local(at))
    }

    /// "3 Feb 2026 to 3 Feb 2027", or "since 3 Feb 2026".
    fn since(&self, began: OffsetDateTime, ended: Option<OffsetDateTime>) -> String {
        match ended {
            Some(ended) => {
                let values = [("from", self.day(began).into()), ("to", self.day(ended).into())];
                self.w.tv("audit-pack-from-to", &values)
            }
            None => self.w.tv("audit-pack-since", &[("from", self.day(began).into())]),
        }
    }

    fn section(&self, name: &str, lead: String, heads: &[&str], rows: Vec<Vec<PackCell>>) -> PackSection {
        PackSection {
            heading: self.w.t(format!("audit-pack-{name}")),
            lead,
            heads: heads.iter().map(|head| self.w.t(format!("audit-pack-head-{head}"))).collect(),
            rows,
            when_empty: self.w.t(format!("audit-pack-no-{name}")),
        }
    }
}

impl Shop {
    /// The audit pack of a period as a PDF, with its number. That it was drawn, for whom and by which seed is a line of the
    /// log. The same seed picks the same job files while the store holds the same job files of that period.
    ///
    /// # Errors
    /// [`Refusal::Field`] when the period ends before it begins.
    pub async fn audit_pack_pdf(&self, who: &Actor, asked: AskedPack) -> Result<(String, Vec<u8>), Refusal> {
        if asked.to_on < asked.from_on {
            return Err(Refusal::Field { field: "to", why: "audit-pack-ends-before" });
        }
        let now = self.clock.now();
        let seed = if asked.seed.is_empty() { drawn_seed() } else { asked.seed.clone() };
        let mut con = self.db.read().await?;
        let branch = db::branches::find(&mut con, who.branch).await?.ok_or(Refusal::Gone)?;
        let words = words_of(&branch.language);
        let content = self.pack_content(&mut con, who, &branch, &words, (&asked, &seed), now).await?;
        drop(con);
        let (number, size) = (content.number.clone(), branch.paper_size);
        let drawing = tokio::task::spawn_blocking(move || papers::audit_pack::audit_pack(&content, size, &words));
        let pdf = drawing
            .await
            .map_err(|error| Refusal::Broken(error.to_string()))?
            .map_err(|error| Refusal::Broken(error.to_string()))?;
        let deed = Deed::AuditPackDrawn { branch: branch.id, from: asked.from_on, to: asked.to_on, seed };
        self.deed(who, None, async move |work: Work| work.done(deed, ()).await).await?;
        Ok((number, pdf))
    }

    async fn pack_content(
        &self,
        con: &mut db::Con,
        who: &Actor,
        branch: &Branch,
        w: &Words,
        (asked, seed): (&AskedPack, &str),
        now: OffsetDateTime,
    ) -> Result<AuditPackContent, Refusal> {
        let zone = Zone::named(&branch.time_zone).map_err(|error| Refusal::Broken(error.to_string()))?;
        let begin = |day: Date| zone.instant(day, 0, 0);
        let after = asked.to_on.next_day().and_then(begin).ok_or(Refusal::Gone)?;
        let span = (begin(asked.from_on).ok_or(Refusal::Gone)?, after);
        let (from_on, to_on) = (asked.from_on, asked.to_on);
        let reading = Reading { w, zone: &zone, branch, span, from_on, to_on, now };
        let mut sections = vec![self.register(con, &reading).await?];
        sections.extend(people::sections(con, &reading).await?);
        sections.extend(history::sections(con, &reading).await?);
        let all = db::audit_pack::jobs(con, branch.id, span).await?;
        let picked_from = all.len();
        let mut jobs = Vec::new();
        for (id, _) in pick(seed, all) {
            jobs.push(jobs::job(con, &reading, id).await?);
        }
        Ok(AuditPackContent {
            format: AUDIT_PACK_FORMAT.to_owned(),
            shop: block_of(branch),
            // An interval of ISO 8601.
            number: format!("{from_on}/{to_on}"),
            from_on,
            to_on,
            drawn_for: who.name.clone(),
            drawn_at: zone.local(now),
            sections,
            seed: seed.to_owned(),
            picked_from,
            jobs,
            language: w.tag().to_owned(),
            is_demonstration: self.issuer.is_demo(),
            software_version: env!("CARGO_PKG_VERSION").to_owned(),
        })
    }
}

/// A seed that nobody chose: 40 random bits.
fn drawn_seed() -> String {
    let mut bytes = [0_u8; 5];
    rand::fill(&mut bytes);
    seal::hex(&bytes)
}

/// The job files that a seed picks, by number: the ten whose SHA-256 of seed, line feed and number comes first in the
/// alphabet of hexadecimal digits. Anybody can do that again with the numbers alone, and nobody can steer it.
fn pick<T>(seed: &str, all: Vec<(T, String)>) -> Vec<(T, String)> {
    let mut ranked: Vec<(String, (T, String))> =
        all.into_iter().map(|job| (seal::sha256_hex(format!("{seed}\n{}", job.1).as_bytes()), job)).collect();
    ranked.sort_by(|one, other| one.0.cmp(&other.0));
    let mut picked: Vec<(T, String)> = ranked.into_iter().take(PICKED).map(|(_, job)| job).collect();
    picked.sort_by(|one, other| one.1.cmp(&other.1));
    picked
}

#[cfg(test)]
mod tests {
    use super::pick;

    fn jobs(of: std::ops::Range<u32>) -> Vec<(u32, String)> {
        of.map(|n| (n, format!("2026-{n:04}"))).collect()
    }

    fn numbers(seed: &str, of: Vec<(u32, String)>) -> Vec<u32> {
        pick(seed, of).into_iter().map(|(n, _)| n).collect()
    }

    #[test]
    fn a_seed_picks_the_same_ten_in_whatever_order_they_come_and_another_seed_others() {
        let first = numbers("quay", jobs(1..60));
        assert_eq!(first.len(), 10);
        let mut turned = jobs(1..60);
        turned.reverse();
        assert_eq!(numbers("quay", turned), first);
        assert_ne!(numbers("lantern", jobs(1..60)), first);
        // By `printf 'quay\n2026-%04d' 1 | sha256sum`, and so on, sorted: worked outside this program.
        let by_hand: Vec<u32> = FIRST_TEN.to_vec();
        assert_eq!(first, by_hand);
        assert_eq!(numbers("quay", jobs(1..4)), [1, 2, 3], "fewer than ten are all of them");
    }

    const FIRST_TEN: [u32; 10] = [11, 22, 29, 31, 32, 33, 38, 39, 56, 58];
}
