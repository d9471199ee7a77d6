//! Gathers the rows of one or two logs and says at the end what they came to.

use std::collections::BTreeMap;

use super::advice::advise;
use super::cells::{Cells, side};
use super::judge::judge;
use super::log::{Log, compared};
use super::nozzle::{self, Duties};
use super::sieve::{Load, Sifted, trim};
use super::trims::{Bounds, trims};
use super::warnings::warnings;
use super::{Banded, Burned, Comparison, FuelKnown, Has, Plan, Refused, Rows, Sample, SetAside, Strip};

/// Rows of one time stamp that are looked at together; of more the rest is set aside.
const MOST_AT_ONCE: usize = 64;

/// Gathers rows; holds medians of visits, bounded sums and little else, whatever the length of a log.
///
/// Call [`Gatherer::begin_log`] before the rows of each log, [`Gatherer::push`] for each row, [`Gatherer::finish`] once.
pub struct Gatherer {
    plan: Plan,
    has: Has,
    load: Load,
    cells: Cells,
    duties: Duties,
    rows: Rows,
    set_aside: BTreeMap<SetAside, u64>,
    log: Log,
    strips: Vec<Strip>,
    refused: Option<Refused>,
    is_fuel_logged: bool,
    logged: [u64; 2],
    is_any_stated: bool,
}

impl Gatherer {
    /// `has`: the quantities that every log of the comparison holds.
    pub fn new(plan: Plan, has: Has) -> Self {
        Self {
            plan,
            has,
            load: Load::of(has),
            cells: Cells::default(),
            duties: Duties::new(),
            rows: Rows::default(),
            set_aside: BTreeMap::new(),
            log: Log::new(plan, has, None),
            strips: Vec::new(),
            refused: None,
            is_fuel_logged: true,
            logged: [0; 2],
            is_any_stated: false,
        }
    }

    /// A log begins. `stated`: the fuel the technician says it was driven on; `None` where its fuel column tells row by
    /// row.
    pub fn begin_log(&mut self, stated: Option<Burned>) {
        let new = Log::new(self.plan, self.has, stated);
        let old = std::mem::replace(&mut self.log, new);
        self.end_log(old);
        self.is_any_stated |= stated.is_some();
    }

    /// A row. Rows of one time stamp may come in any order.
    pub fn push(&mut self, sample: &Sample) {
        let pending = &mut self.log.pending;
        let is_same_time = pending.first().is_some_and(|first| first.time_s.total_cmp(&sample.time_s).is_eq());
        if !is_same_time {
            self.flush();
        } else if self.log.pending.len() == MOST_AT_ONCE {
            self.count(sample.burned.or(self.log.sieve.fuel()));
            self.set_aside(SetAside::TimeBack, 1);
            return;
        }
        self.log.pending.push(*sample);
    }

    /// A row that lacks a value whose last one is too old.
    pub fn gap(&mut self) {
        self.count(self.log.sieve.fuel());
        self.set_aside(SetAside::Gap, 1);
    }

    /// A line that could not be read.
    pub fn broken(&mut self) {
        self.rows.broken += 1;
    }

    /// What the logs came to.
    ///
    /// # Errors
    /// [`Refused`] where the fuel column says one fuel for both sides, a column cannot be what it is called, or no row
    /// could be used.
    pub fn finish(mut self) -> Result<Comparison, Refused> {
        self.begin_log(None);
        if let Some(refused) = self.refused.clone().or_else(|| self.one_fuel()) {
            return Err(refused);
        }
        if self.cells.is_empty() || self.rows.petrol == 0 || self.rows.gas == 0 {
            return Err(Refused::NothingUsable { set_aside: self.set_aside });
        }
        Ok(self.compare())
    }

    fn compare(self) -> Comparison {
        let mut judged = judge(&self.cells, &self.plan, self.load);
        advise(&mut judged, &self.plan);
        let bounds = Bounds::of(&self.cells, self.load);
        let fuel_known = if self.is_fuel_logged { FuelKnown::Logged } else { FuelKnown::Stated };
        Comparison {
            banded: if self.load == Load::Manifold { Banded::Manifold } else { Banded::InjectionTime },
            fuel_known,
            set_aside: self.set_aside,
            rows: self.rows,
            trims: trims(&self.cells, bounds),
            strips: self.strips,
            nozzle: nozzle::word(&judged, bounds, &self.duties, &self.plan),
            warnings: warnings(&judged, bounds, (self.has, self.load, fuel_known), self.rows, &self.plan),
            cells: judged.into_iter().map(|one| one.cell).collect(),
            plan: self.plan,
        }
    }

    /// A column that says one fuel for everything.
    fn one_fuel(&self) -> Option<Refused> {
        let only = match self.logged {
            [0, gas] if gas > 0 => Burned::Gas,
            [petrol, 0] if petrol > 0 => Burned::Petrol,
            _ => return None,
        };
        // Where the fuel was stated, a column on one side alone says nothing about the other.
        (!self.is_any_stated).then_some(Refused::OneFuel { burned: only })
    }

    fn end_log(&mut self, mut log: Log) {
        std::mem::swap(&mut self.log, &mut log);
        self.flush();
        let short = self.log.stay.end(&mut self.cells);
        self.set_aside(SetAside::ShortVisit, short);
        std::mem::swap(&mut self.log, &mut log);
        if log.rows == 0 {
            return;
        }
        let refused = log.plausible.refusal().or_else(|| log.other_fuel());
        self.refused = self.refused.take().or(refused);
        self.logged = [0, 1].map(|at| self.logged[at] + log.said[at]);
        self.strips.push(log.slices.finish());
    }

    fn flush(&mut self) {
        let mut pending = std::mem::take(&mut self.log.pending);
        if pending.len() > 1 {
            pending.sort_unstable_by(compared);
        }
        for sample in pending.drain(..) {
            self.row(&sample);
        }
        self.log.pending = pending;
    }

    fn row(&mut self, sample: &Sample) {
        let log = &mut self.log;
        log.rows += 1;
        log.plausible.push(sample);
        let sifted = log.sieve.sift(sample);
        match sample.burned {
            Some(burned) => log.said[side(burned)] += 1,
            None => self.is_fuel_logged &= log.stated.is_none(),
        }
        self.count(sifted.burned);
        self.take(sample, &sifted);
    }

    fn take(&mut self, sample: &Sample, sifted: &Sifted) {
        let Sifted { elapsed_s, burned, load } = *sifted;
        let why = load.err().map(|(why, _)| why);
        let is_in_range = why != Some(SetAside::OutOfRange);
        let shown = is_in_range.then(|| (sample.rpm, self.load.of_row(sample).unwrap_or(0.0), sample.petrol_ms));
        if why != Some(SetAside::TimeBack) {
            self.log.slices.push(elapsed_s, shown, burned, why);
        }
        let is_delivering = matches!(why, None | Some(SetAside::OpenLoop | SetAside::Transient));
        if is_delivering && burned == Some(Burned::Gas) {
            self.duties.push(sample);
        }
        let stays = match (load, burned) {
            (Ok(load), Some(burned)) => Some((load, burned, true)),
            (Err((SetAside::OpenLoop, Some(load))), Some(burned)) => Some((load, burned, false)),
            _ => None,
        };
        let short = match (stays, why) {
            (Some((load, burned, is_closed)), _) => {
                let row = [sample.rpm, load, sample.petrol_ms.ln(), trim(sample).unwrap_or(f64::NAN)];
                self.log.stay.push(&mut self.cells, elapsed_s, (burned, is_closed), row)
            }
            // A row that tells nothing of the engine does not end what it was doing.
            (None, Some(SetAside::OutOfRange | SetAside::Gap)) => 0,
            (None, _) => self.log.stay.end(&mut self.cells),
        };
        self.set_aside(SetAside::ShortVisit, short);
        if let Some(why) = why {
            self.set_aside(why, 1);
        }
    }

    fn count(&mut self, burned: Option<Burned>) {
        match burned {
            Some(Burned::Petrol) => self.rows.petrol += 1,
            Some(Burned::Gas) => self.rows.gas += 1,
            None => {}
        }
    }

    fn set_aside(&mut self, why: SetAside, rows: u64) {
        if rows > 0 {
            *self.set_aside.entry(why).or_default() += rows;
        }
    }
}
