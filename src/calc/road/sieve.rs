//! The sieve: a row is kept, or set aside for the first reason that holds.

use std::collections::VecDeque;

use super::range::{CUT_MS, RUNNING_RPM, outside};
use super::{Burned, Has, Plan, Quantity, Sample, SetAside};

/// A pause longer than this ends whatever went on, s (common practice).
pub(super) const PAUSE_S: f64 = 3.0;
/// Changes are told over this time, s: from one row to the next a resolution looks like a change.
const LOOK_BACK_S: f64 = 0.3;
/// Rows nearer than this to the last one are not looked back at, s; it bounds what is remembered.
const APART_S: f64 = 0.01;
/// A pause is shown no longer than this, s.
const LONGEST_PAUSE_S: f64 = 3_600.0;

/// What tells the load.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Load {
    /// Manifold pressure, kPa.
    Manifold,
    /// Injection time with the trims taken off, ms.
    ///
    /// Not the time as it is: where gas is lean the petrol computer lengthens it, so that the same load would fall into
    /// another band on gas, and within a band both fuels would have the same times whatever the deviation. What the
    /// trims add is that very correction; without it the time follows the air alone, on either fuel.
    Trimmed,
    /// Injection time as it is, for want of anything better; no deviation can be told.
    Untold,
}

impl Load {
    pub fn of(has: Has) -> Self {
        if has.has(Quantity::ManifoldKpa) {
            Self::Manifold
        } else if has.has(Quantity::ShortTrim) || has.has(Quantity::LongTrim) {
            Self::Trimmed
        } else {
            Self::Untold
        }
    }

    /// Load of a row in the unit of the bands.
    pub fn of_row(self, sample: &Sample) -> Option<f64> {
        match self {
            Self::Manifold => sample.manifold_kpa,
            Self::Trimmed => trim(sample).map(|trim| sample.petrol_ms / trim),
            Self::Untold => Some(sample.petrol_ms),
        }
    }

    /// Width of a band: 10 kPa or 1.5 ms (common practice).
    pub const fn width(self) -> f64 {
        match self {
            Self::Manifold => 10.0,
            Self::Trimmed | Self::Untold => 1.5,
        }
    }
}

/// Total trim as a factor: short and long together, or the one that there is.
///
/// Source: both scale the same injection time, so that they multiply (SAE J1979 defines each as a share of it).
pub(super) fn trim(sample: &Sample) -> Option<f64> {
    let factor = |percent: f64| 1.0 + percent / 100.0;
    match (sample.short_trim_percent.map(factor), sample.long_trim_percent.map(factor)) {
        (Some(short), Some(long)) => Some(short * long),
        (one, other) => one.or(other),
    }
}

/// What became of a row.
#[derive(Debug, Clone, Copy)]
pub(super) struct Sifted {
    /// Time since the log's begin, going on whatever the stamps do, s.
    pub elapsed_s: f64,
    /// The fuel that burned, where known.
    pub burned: Option<Burned>,
    /// Its load, or why it is set aside. Rows set aside for open loop alone carry their load too.
    pub load: Result<f64, (SetAside, Option<f64>)>,
}

/// State of the sieve within one log.
pub(super) struct Sieve {
    plan: Plan,
    has: Has,
    load: Load,
    stated: Option<Burned>,
    last_s: Option<f64>,
    elapsed_s: f64,
    burning: Option<Burned>,
    changed_s: Option<f64>,
    coolant_c: Option<f64>,
    back: VecDeque<Past>,
}

#[derive(Clone, Copy)]
struct Past {
    elapsed_s: f64,
    rpm: f64,
    manifold_kpa: Option<f64>,
}

impl Sieve {
    pub fn new(plan: Plan, has: Has, stated: Option<Burned>) -> Self {
        Self {
            plan,
            has,
            load: Load::of(has),
            stated,
            last_s: None,
            elapsed_s: 0.0,
            burning: None,
            changed_s: None,
            coolant_c: None,
            back: VecDeque::new(),
        }
    }

    /// The fuel of rows that do not say it themselves.
    pub fn fuel(&self) -> Option<Burned> {
        self.stated.or(self.burning)
    }

    pub fn sift(&mut self, sample: &Sample) -> Sifted {
        let load = self.first_reason(sample);
        Sifted { elapsed_s: self.elapsed_s, burned: sample.burned.or(self.stated), load }
    }

    fn first_reason(&mut self, sample: &Sample) -> Result<f64, (SetAside, Option<f64>)> {
        let no = |why: SetAside| Err((why, None));
        if outside(sample).is_some() || !trim(sample).is_none_or(|trim| trim > 0.2) {
            return no(SetAside::OutOfRange);
        }
        if !self.goes_on(sample.time_s) {
            return no(SetAside::TimeBack);
        }
        self.coolant_c = sample.coolant_c.or(self.coolant_c);
        let is_steady = self.is_steady(sample);
        let Some(burned) = sample.burned.or(self.stated) else { return no(SetAside::Gap) };
        self.note_fuel(sample.burned);
        if self.stated.is_some_and(|stated| stated != burned) {
            return no(SetAside::OtherFuel);
        }
        if self.has.has(Quantity::CoolantC) {
            match self.coolant_c {
                None => return no(SetAside::Gap),
                Some(coolant_c) if coolant_c < self.plan.coolant_c => return no(SetAside::Cold),
                Some(_) => {}
            }
        }
        if self.changed_s.is_some_and(|changed_s| self.elapsed_s - changed_s < self.plan.settle_s) {
            return no(SetAside::Changeover);
        }
        if sample.petrol_ms < CUT_MS || sample.rpm < 1.0 {
            return no(SetAside::FuelCut);
        }
        if sample.rpm < RUNNING_RPM {
            return no(SetAside::OutOfRange);
        }
        if !is_steady {
            return no(SetAside::Transient);
        }
        let Some(load) = self.load.of_row(sample) else { return no(SetAside::Gap) };
        if sample.is_closed_loop == Some(false) {
            return Err((SetAside::OpenLoop, Some(load)));
        }
        Ok(load)
    }

    /// Whether time goes on or stands; a step back is taken as the new time, so that a counter that starts again costs
    /// one row and not the rest of the log.
    fn goes_on(&mut self, time_s: f64) -> bool {
        let step_s = time_s - self.last_s.replace(time_s).unwrap_or(time_s);
        if !(0.0..=PAUSE_S).contains(&step_s) {
            self.back.clear();
        }
        self.elapsed_s += step_s.clamp(0.0, LONGEST_PAUSE_S);
        step_s >= 0.0
    }

    fn note_fuel(&mut self, logged: Option<Burned>) {
        let Some(burned) = logged else { return };
        if self.burning.replace(burned).is_some_and(|before| before != burned) {
            self.changed_s = Some(self.elapsed_s);
        }
    }

    /// Whether engine speed and manifold pressure change slowly enough, told against the newest row that is 0.3 s
    /// older, or the one before in a slow log.
    fn is_steady(&mut self, sample: &Sample) -> bool {
        let now_s = self.elapsed_s;
        while self.back.get(1).is_some_and(|past| now_s - past.elapsed_s >= LOOK_BACK_S - 1e-9) {
            self.back.pop_front();
        }
        let is_steady = self.back.front().is_none_or(|past| {
            // Rows of one stamp are told against what came before both of them, or not at all.
            let dt_s = now_s - past.elapsed_s;
            let rpm = (sample.rpm - past.rpm).abs();
            let kpa = sample.manifold_kpa.zip(past.manifold_kpa).map_or(0.0, |(now, then)| (now - then).abs());
            dt_s <= 0.0 || (rpm < self.plan.rpm_per_s * dt_s && kpa < self.plan.kpa_per_s * dt_s)
        });
        if self.back.back().is_none_or(|past| now_s - past.elapsed_s >= APART_S) {
            self.back.push_back(Past { elapsed_s: now_s, rpm: sample.rpm, manifold_kpa: sample.manifold_kpa });
        }
        is_steady
    }
}
