//! The rule book: the sets that a shop stacks, and what they ask on one day. Where several lines speak of one thing,
//! the strictest wins, and the answer names it.

use time::Date;

use super::interval_line::IntervalLine;
use super::line::{CheckLine, LimitLine, ProofLine, Quantity, TopicLine, applies, in_force};
use super::set::{BadSet, RuleSet, embedded};
use super::{Need, compare};
use crate::model::evidence::Section;
use crate::model::job::Job;
use crate::model::vehicle::Vehicle;

/// Sets that a branch stacks when it chose none itself, base first.
pub const BASE: [&str; 2] = ["un-baseline", "eu-roadworthiness"];

/// The stacked sets, base first.
#[derive(Debug, Clone, PartialEq)]
pub struct RuleBook {
    /// The sets.
    pub sets: Vec<RuleSet>,
}

/// A limit in force, with the line that decides each side.
#[derive(Debug, Clone, PartialEq)]
pub struct Limit {
    /// Not below, and the line that says so.
    pub least: Option<(f64, LimitLine)>,
    /// Not above, and the line that says so.
    pub most: Option<(f64, LimitLine)>,
    /// The deciding lines are the shop's own.
    pub is_shop: bool,
    /// For each side: a line applies to it that was read, is a custom of the trade, or is the shop's own.
    is_ground: (bool, bool),
}

impl Limit {
    /// The line that papers name: that of the upper side, else of the lower.
    pub fn line(&self) -> Option<&LimitLine> {
        self.most.as_ref().or(self.least.as_ref()).map(|(_, line)| line)
    }

    /// A line whose source was read (or a custom of the trade, or the shop's own) limits each side that is limited. A line
    /// that nobody read may fail a reading, and be the strictest; alone it lets none pass.
    pub fn is_ground_for_a_pass(&self) -> bool {
        (self.least.is_none() || self.is_ground.0) && (self.most.is_none() || self.is_ground.1)
    }
}

impl RuleBook {
    /// The sets that ship with the program: the base, the exhaust limits, a shop's first own lines.
    ///
    /// # Errors
    /// [`BadSet`] never in a tested build; a set that does not read is named, not skipped.
    pub fn shipped() -> Result<Self, BadSet> {
        Self::stacked(&[BASE.as_slice(), &["shop"]].concat())
    }

    /// A book of sets that ship with the program, base first.
    ///
    /// # Errors
    /// [`BadSet`] for a name that no set has.
    pub fn stacked(names: &[&str]) -> Result<Self, BadSet> {
        let unknown = |name: &str| BadSet { line: None, why: format!("no rule set is called {name}") };
        let read = |name: &&str| RuleSet::read(embedded(name).ok_or_else(|| unknown(name))?);
        Ok(Self { sets: names.iter().map(read).collect::<Result<_, _>>()? })
    }

    /// What the book is called on papers: each set with its version.
    pub fn titles(&self) -> Vec<(String, String)> {
        self.sets.iter().map(|set| (set.title.clone(), set.version.clone())).collect()
    }

    /// The language that certificates and records are made in: the shop's own lines may say which, else the first set that
    /// the branch stacks and that says one. Where a set names several, the branch's own is taken if it is among them. A set
    /// that only a vehicle brought along has no say: whoever signs must be able to read it.
    pub fn official_language(&self, own: &str) -> Option<&str> {
        let (of_shop, stacked): (Vec<_>, Vec<_>) =
            self.sets.iter().filter(|set| !set.is_by_vehicle).partition(|set| set.is_shop);
        let named = of_shop.into_iter().chain(stacked).find(|set| !set.languages.is_empty())?;
        let is_own = |tag: &&String| main_part(tag).eq_ignore_ascii_case(main_part(own));
        named.languages.iter().find(is_own).or(named.languages.first()).map(String::as_str)
    }

    /// Proofs asked of a job on a day; a later set's line with the same id stands in the place of the earlier one, but
    /// never looser than it was.
    pub fn proofs(&self, job: &Job, on: Date) -> Vec<&ProofLine> {
        let mut asked: Vec<&ProofLine> = Vec::new();
        for line in self.sets.iter().flat_map(|set| &set.proof).filter(|line| line.asks(job, on)) {
            match asked.iter_mut().find(|earlier| earlier.id == line.id) {
                Some(earlier) if !earlier.is_never_waived() || line.is_never_waived() => *earlier = line,
                Some(_) => {}
                None => asked.push(line),
            }
        }
        asked.sort_by_key(|line| line.stage);
        asked
    }

    /// The limit of a quantity for this job and vehicle on a day: the strictest of all lines that apply.
    pub fn limit(
        &self,
        quantity: Quantity,
        job: &Job,
        vehicle: &Vehicle,
        section: Option<Section>,
        on: Date,
    ) -> Option<Limit> {
        let mut limit = Limit { least: None, most: None, is_shop: true, is_ground: (false, false) };
        let lines = || self.sets.iter().flat_map(|set| &set.limit).filter(|line| line.quantity == quantity);
        let applying = || lines().filter(|line| line.is_measured() && fits(line, job, vehicle, section, on));
        let is_displaced = |line: &LimitLine| {
            let mut allowed = applying().filter(|own| own.allowed.is_some() && self.is_shop_line(own));
            !self.is_shop_line(line) && allowed.any(|own| compare::covers_limit(line, own))
        };
        for line in applying().filter(|line| !is_displaced(line)) {
            let is_ground = line.checked || line.practice || self.is_shop_line(line);
            if let Some(least) = line.least {
                limit.is_ground.0 |= is_ground;
                if limit.least.as_ref().is_none_or(|(so_far, known)| decides(least - so_far, line, known)) {
                    limit.least = Some((least, line.clone()));
                }
            }
            if let Some(most) = line.most {
                limit.is_ground.1 |= is_ground;
                if limit.most.as_ref().is_none_or(|(so_far, known)| decides(so_far - most, line, known)) {
                    limit.most = Some((most, line.clone()));
                }
            }
        }
        let deciding = [&limit.least, &limit.most].into_iter().flatten();
        let is_shop = deciding.clone().all(|(_, line)| self.is_shop_line(line));
        let is_any = deciding.count() > 0;
        limit.is_shop = is_shop;
        is_any.then_some(limit)
    }

    /// The line stands in a set of the shop's own.
    pub fn is_shop_line(&self, line: &LimitLine) -> bool {
        self.sets.iter().any(|set| set.is_shop && set.name == line.set.name)
    }

    /// Intervals that a finished job of this kind starts on a day.
    pub fn intervals(&self, job: &Job, on: Date) -> Vec<&IntervalLine> {
        let lines = self.sets.iter().flat_map(|set| &set.interval);
        lines
            .filter(|line| in_force(line.from_on, line.to_on, on))
            .filter(|line| line.is_started_by(job) && !self.is_displaced(line))
            .collect()
    }

    /// A line of the shop's own that an authority allowed stands in the place of this one.
    pub fn is_displaced(&self, line: &IntervalLine) -> bool {
        let own = || self.sets.iter().filter(|set| set.is_shop);
        let mut allowed = own().flat_map(|set| &set.interval).filter(|own| own.allowed.is_some());
        own().all(|set| set.name != line.set.name) && allowed.any(|own| compare::covers_interval(line, own))
    }

    /// Lines of the checklist for this job: of the groups that a proof of such a job asks for, and of those that no proof
    /// of any set asks for.
    pub fn checks(&self, job: &Job) -> Vec<&CheckLine> {
        let is_looked_at = |group: &str| {
            let all = self.sets.iter().flat_map(|set| &set.proof);
            let mut asking = all.filter(|line| matches!(&line.needs, Need::Checklist(one) if one == group)).peekable();
            asking.peek().is_none() || asking.any(|line| line.concerns(job))
        };
        let all = self.sets.iter().flat_map(|set| &set.check);
        all.filter(|line| applies(&line.fuels, &job.fuel) && is_looked_at(&line.group)).collect()
    }

    /// Topics to explain at hand-over.
    pub fn topics(&self, job: &Job) -> Vec<&TopicLine> {
        self.sets.iter().flat_map(|set| &set.topic).filter(|line| applies(&line.fuels, &job.fuel)).collect()
    }
}

/// "de-AT" is German.
fn main_part(tag: &str) -> &str {
    tag.split(['-', '_']).next().unwrap_or(tag)
}

/// A line takes the place of the one so far: it is stricter; or as strict, and only its own source was read.
fn decides(stricter_by: f64, line: &LimitLine, so_far: &LimitLine) -> bool {
    stricter_by > 0.0 || (stricter_by >= 0.0 && line.checked && !so_far.checked)
}

fn fits(line: &LimitLine, job: &Job, vehicle: &Vehicle, section: Option<Section>, on: Date) -> bool {
    let registered = vehicle.first_registered_on;
    // An unknown first registration is held against the younger, stricter limit.
    let young_enough = line.registered_from.is_none_or(|from| registered.is_none_or(|day| day >= from));
    let old_enough = line.registered_to.is_none_or(|to| registered.is_some_and(|day| day <= to));
    in_force(line.from_on, line.to_on, on)
        && applies(&line.fuels, &job.fuel)
        && applies(&line.categories, &vehicle.category)
        && section.is_none_or(|section| applies(&line.sections, &section))
        && line.catalyst.is_none_or(|wanted| wanted == (vehicle.has_catalyst && vehicle.is_closed_loop))
        && young_enough
        && old_enough
}
