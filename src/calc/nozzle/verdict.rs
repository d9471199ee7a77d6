//! Why a nozzle fits or does not, as kinds with their numbers; the words come from the language files.

use std::fmt;

use serde::{Deserialize, Serialize};

use super::engine::{Bore, Idle, Setting};
use crate::calc::roots;

/// Whether a size of the list fits.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Verdict {
    /// Delivers rated fuel in the time there is, and idles with a pulse the injector still meters well.
    Fits,
    /// Too small for rated power: lean above a speed.
    TooSmall,
    /// Too large: the idle pulse is shorter than the injector meters well.
    TooLarge,
    /// Some sizes suit rated power, others idle, none both.
    NoneFits,
}

/// One size of the list, judged by itself.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Candidate {
    /// Bore, mm.
    pub size_mm: f64,
    /// Commanded pulse at rated power, ms.
    pub rated_pulse_ms: f64,
    /// That pulse over the window of two revolutions.
    pub duty_at_rated: f64,
    /// Speed at which the duty limit is reached with the same fuel per cycle, 1/min.
    pub limit_rpm: f64,
    /// Pulse at idle, ms; none without idle data.
    pub idle_pulse_ms: Option<f64>,
    /// Verdict on this size.
    pub verdict: Verdict,
}

/// One reason of a verdict.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
#[expect(missing_docs, reason = "fields are named by quantity and unit")]
pub enum Reason {
    /// The duty at rated power is within the limit.
    DutyWithin { size_mm: f64, duty: f64, max_duty: f64 },
    /// Above `limit_rpm` the injector is open all the time it may be: the mixture goes lean.
    LeanAbove { size_mm: f64, limit_rpm: f64, rated_rpm: f64, duty: f64, max_duty: f64 },
    /// The idle pulse is long enough.
    IdlePulseWithin { size_mm: f64, idle_pulse_ms: f64, min_pulse_ms: f64 },
    /// The idle pulse is shorter than the injector meters well.
    IdlePulseShort { size_mm: f64, idle_pulse_ms: f64, min_pulse_ms: f64, rated_pulse_ms: f64 },
    /// Idle was not judged: no idle data.
    IdleUnknown,
    /// Sizes that suit rated power, mm.
    SizesForRatedPower { sizes_mm: Vec<f64> },
    /// Sizes that suit idle, mm.
    SizesForIdle { sizes_mm: Vec<f64> },
    /// A bore in this range would suit both.
    BoreBetweenWouldFit { from_mm: f64, to_mm: f64 },
    /// With this supply pressure over manifold the size would deliver rated fuel.
    HigherSupplyWouldDo { size_mm: f64, supply_over_manifold_kpa: f64 },
    /// With this supply pressure over manifold the idle pulse of the size would be long enough.
    LowerSupplyWouldDo { size_mm: f64, supply_over_manifold_kpa: f64 },
    /// An injector with at most this dead time would do with the size.
    FasterInjectorWouldDo { size_mm: f64, dead_time_ms: f64 },
    /// The nozzle is not choked at rated power: its flow depends on the manifold pressure as well.
    NotChoked { pressure_ratio: f64, choking_share: f64 },
}

/// For the log and the command line; pages take their words from the language files.
impl fmt::Display for Reason {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::DutyWithin { size_mm, duty, max_duty } => {
                write!(f, "{size_mm} mm is open {duty:.3} of the time at rated power; {max_duty} is allowed")
            }
            Self::LeanAbove { size_mm, limit_rpm, rated_rpm, duty, max_duty } => write!(
                f,
                "{size_mm} mm would be open {duty:.3} of the time at {rated_rpm} 1/min, {max_duty} is allowed: lean above {limit_rpm:.0} 1/min"
            ),
            Self::IdlePulseWithin { size_mm, idle_pulse_ms, min_pulse_ms } => {
                write!(
                    f,
                    "idle pulse of {size_mm} mm is {idle_pulse_ms:.2} ms, at least {min_pulse_ms} ms is metered well"
                )
            }
            Self::IdlePulseShort { size_mm, idle_pulse_ms, min_pulse_ms, rated_pulse_ms } => write!(
                f,
                "idle pulse of {size_mm} mm is {idle_pulse_ms:.2} ms, shorter than the {min_pulse_ms} ms metered well; at rated power {rated_pulse_ms:.2} ms"
            ),
            Self::IdleUnknown => write!(f, "idle is not judged: idle speed or fuel power is missing"),
            Self::SizesForRatedPower { sizes_mm } => write!(f, "sizes for rated power: {}", Listed(sizes_mm)),
            Self::SizesForIdle { sizes_mm } => write!(f, "sizes for idle: {}", Listed(sizes_mm)),
            Self::BoreBetweenWouldFit { from_mm, to_mm } => {
                write!(f, "a bore from {from_mm:.2} to {to_mm:.2} mm would suit both")
            }
            Self::HigherSupplyWouldDo { size_mm, supply_over_manifold_kpa } => {
                write!(f, "with {supply_over_manifold_kpa:.1} kPa over manifold {size_mm} mm would deliver rated fuel")
            }
            Self::LowerSupplyWouldDo { size_mm, supply_over_manifold_kpa } => {
                write!(f, "with {supply_over_manifold_kpa:.1} kPa over manifold {size_mm} mm would dose at idle")
            }
            Self::FasterInjectorWouldDo { size_mm, dead_time_ms } => {
                write!(f, "an injector with at most {dead_time_ms:.2} ms dead time would do with {size_mm} mm")
            }
            Self::NotChoked { pressure_ratio, choking_share } => write!(
                f,
                "not choked at rated power (pressure ratio {pressure_ratio:.3}, chokes at {choking_share:.3}): its flow depends on the manifold as well"
            ),
        }
    }
}

/// Sizes in a row.
struct Listed<'a>(&'a [f64]);

impl fmt::Display for Listed<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.0.is_empty() {
            return f.write_str("none of the list");
        }
        for (i, size_mm) in self.0.iter().enumerate() {
            write!(f, "{}{size_mm} mm", if i == 0 { "" } else { ", " })?;
        }
        Ok(())
    }
}

/// Everything a judgement looks at.
pub(super) struct Case<'a> {
    pub setting: &'a Setting,
    pub fuel_per_cycle_mg: f64,
    pub rated: &'a Bore,
    /// Idle dose and the gas at the injector then.
    pub idle: Option<(Idle, &'a Bore)>,
    pub diameter_mm: f64,
}

impl Case<'_> {
    pub(super) fn candidate(&self, size_mm: f64) -> Candidate {
        let setting = self.setting;
        let rated_pulse_ms = setting.pulse_ms(self.fuel_per_cycle_mg, &self.rated.through, size_mm);
        let duty_at_rated = rated_pulse_ms / setting.window_ms();
        let idle_pulse_ms =
            self.idle.as_ref().map(|(idle, bore)| setting.pulse_ms(idle.fuel_per_cycle_mg, &bore.through, size_mm));
        let is_idle_short = idle_pulse_ms.is_some_and(|pulse| pulse < setting.min_pulse_ms);
        let verdict = match (self.is_large_enough(size_mm), is_idle_short) {
            (true, false) => Verdict::Fits,
            (true, true) => Verdict::TooLarge,
            (false, false) => Verdict::TooSmall,
            (false, true) => Verdict::NoneFits,
        };
        let limit_rpm = setting.max_duty * 120_000.0 / rated_pulse_ms;
        Candidate { size_mm, rated_pulse_ms, duty_at_rated, limit_rpm, idle_pulse_ms, verdict }
    }

    /// A size equal to the needed bore counts, rounding aside.
    pub(super) fn is_large_enough(&self, size_mm: f64) -> bool {
        size_mm >= self.diameter_mm - 1e-9
    }

    /// The verdict on the list as a whole, and its reasons. `used` is the size chosen, or the largest.
    pub(super) fn judge(&self, candidates: &[Candidate], used: &Candidate) -> (Verdict, Vec<Reason>) {
        let for_rated: Vec<f64> =
            candidates.iter().filter(|c| self.is_large_enough(c.size_mm)).map(|c| c.size_mm).collect();
        let for_idle: Vec<f64> = candidates.iter().filter(|c| self.suits_idle(c)).map(|c| c.size_mm).collect();
        let verdict = match used.verdict {
            // A smaller size of the list would suit idle, and starve the engine.
            Verdict::TooLarge if !for_idle.is_empty() => Verdict::NoneFits,
            other => other,
        };
        let mut reasons = self.facts(used);
        if verdict != Verdict::Fits {
            if self.idle.is_some() && verdict != Verdict::TooSmall {
                reasons.push(Reason::SizesForRatedPower { sizes_mm: for_rated });
                reasons.push(Reason::SizesForIdle { sizes_mm: for_idle });
            }
            reasons.extend(self.what_would_help(used));
        }
        (verdict, reasons)
    }

    fn suits_idle(&self, candidate: &Candidate) -> bool {
        candidate.idle_pulse_ms.is_none_or(|pulse| pulse >= self.setting.min_pulse_ms)
    }

    /// What was found of the size, good and bad.
    fn facts(&self, used: &Candidate) -> Vec<Reason> {
        let Setting { max_duty, min_pulse_ms, rated_rpm, manifold_kpa, .. } = *self.setting;
        let Candidate { size_mm, duty_at_rated: duty, limit_rpm, rated_pulse_ms, .. } = *used;
        let mut facts = vec![if self.is_large_enough(size_mm) {
            Reason::DutyWithin { size_mm, duty, max_duty }
        } else {
            Reason::LeanAbove { size_mm, limit_rpm, rated_rpm, duty, max_duty }
        }];
        facts.push(match used.idle_pulse_ms {
            None => Reason::IdleUnknown,
            Some(idle_pulse_ms) if idle_pulse_ms >= min_pulse_ms => {
                Reason::IdlePulseWithin { size_mm, idle_pulse_ms, min_pulse_ms }
            }
            Some(idle_pulse_ms) => Reason::IdlePulseShort { size_mm, idle_pulse_ms, min_pulse_ms, rated_pulse_ms },
        });
        if !self.rated.through.choked {
            let pressure_ratio = manifold_kpa / self.rated.upstream_kpa;
            facts.push(Reason::NotChoked { pressure_ratio, choking_share: self.rated.through.choking_share });
        }
        facts
    }

    fn what_would_help(&self, used: &Candidate) -> Vec<Reason> {
        let mut help = Vec::new();
        if let Some(to_mm) = self.largest_for_idle_mm()
            && to_mm > self.diameter_mm
        {
            help.push(Reason::BoreBetweenWouldFit { from_mm: self.diameter_mm, to_mm });
        }
        if self.is_large_enough(used.size_mm) {
            help.extend(self.lower_supply(used));
        } else {
            help.extend(self.higher_supply(used));
            help.extend(self.faster_injector(used));
        }
        help
    }

    /// The bore at which the idle pulse is just long enough, mm; none without idle data or when any bore is.
    fn largest_for_idle_mm(&self) -> Option<f64> {
        let (idle, bore) = self.idle.as_ref()?;
        let open_ms = self.setting.min_pulse_ms - self.setting.dead_time_ms;
        let at_one_mm = self.setting.pulse_ms(idle.fuel_per_cycle_mg, &bore.through, 1.0) - self.setting.dead_time_ms;
        (open_ms > 0.0).then(|| (at_one_mm / open_ms).sqrt())
    }

    fn with_supply(&self, supply_over_manifold_kpa: f64) -> Setting {
        Setting { supply_over_manifold_kpa, ..self.setting.clone() }
    }

    fn rated_pulse_at(&self, supply_kpa: f64, size_mm: f64) -> Option<f64> {
        let setting = self.with_supply(supply_kpa);
        let bore = setting.bore(setting.manifold_kpa).ok()?;
        Some(setting.pulse_ms(self.fuel_per_cycle_mg, &bore.through, size_mm))
    }

    fn idle_pulse_at(&self, supply_kpa: f64, size_mm: f64) -> Option<f64> {
        let (idle, _) = self.idle.as_ref()?;
        let setting = self.with_supply(supply_kpa);
        let bore = setting.bore(idle.manifold_kpa).ok()?;
        Some(setting.pulse_ms(idle.fuel_per_cycle_mg, &bore.through, size_mm))
    }

    /// Offered up to two and a half times the pressure given, and only where idle still works and the gas stays dry.
    fn higher_supply(&self, used: &Candidate) -> Option<Reason> {
        let now = self.setting.supply_over_manifold_kpa;
        let limit_ms = self.setting.max_duty * self.setting.window_ms();
        let miss = |kpa: f64| self.rated_pulse_at(kpa, used.size_mm).map(|pulse| pulse - limit_ms).ok_or(());
        let kpa = roots::try_bisect(now, 2.5 * now, 0.01, miss, ()).ok()?;
        let is_idle_kept = self.idle.is_none() || self.idle_pulse_at(kpa, used.size_mm)? >= self.setting.min_pulse_ms;
        is_idle_kept.then_some(Reason::HigherSupplyWouldDo { size_mm: used.size_mm, supply_over_manifold_kpa: kpa })
    }

    /// Offered down to a third of the pressure given, and only where rated power is still reached.
    fn lower_supply(&self, used: &Candidate) -> Option<Reason> {
        let now = self.setting.supply_over_manifold_kpa;
        let least_ms = self.setting.min_pulse_ms;
        let miss = |kpa: f64| self.idle_pulse_at(kpa, used.size_mm).map(|pulse| pulse - least_ms).ok_or(());
        let kpa = roots::try_bisect((now / 3.0).max(10.0), now, 0.01, miss, ()).ok()?;
        let limit_ms = self.setting.max_duty * self.setting.window_ms();
        (self.rated_pulse_at(kpa, used.size_mm)? <= limit_ms)
            .then_some(Reason::LowerSupplyWouldDo { size_mm: used.size_mm, supply_over_manifold_kpa: kpa })
    }

    fn faster_injector(&self, used: &Candidate) -> Option<Reason> {
        let open_ms = used.rated_pulse_ms - self.setting.dead_time_ms;
        let dead_time_ms = self.setting.max_duty * self.setting.window_ms() - open_ms;
        (dead_time_ms > 0.0).then_some(Reason::FasterInjectorWouldDo { size_mm: used.size_mm, dead_time_ms })
    }
}
