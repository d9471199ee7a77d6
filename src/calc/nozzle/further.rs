//! What a nozzle sheet says beside its own engine condition: how the answer moves when one input does, and how long the
//! nozzle is open over the speeds of the engine.

use serde::{Deserialize, Serialize};

use super::{Asked, Candidate, Setting, sheet};
use crate::calc::composition::Preset;
use crate::calc::{Error, heat};

/// Warmer gas looked at, K.
const WARMER_K: f64 = 10.0;
/// Lower supply looked at, kPa.
const LOWER_KPA: f64 = 10.0;
/// Step between the speeds of [`duty_over_speed`], 1/min.
const SPEED_STEP_RPM: f64 = 500.0;

/// One input changed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "change", rename_all = "kebab-case")]
pub enum Change {
    /// Gas warmer.
    Warmer {
        /// K.
        by_k: f64,
    },
    /// Supply lower.
    LowerSupply {
        /// kPa.
        by_kpa: f64,
    },
    /// Another mix: that of the other season, or for CNG the other group of gases.
    Mix {
        /// Key of the mix.
        preset: String,
    },
}

/// What a change does.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Varied {
    /// What is changed.
    #[serde(flatten)]
    pub change: Change,
    /// What the sum says then; none when the gas would be partly liquid.
    pub then: Option<Then>,
}

/// The answer after a change.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Then {
    /// Bore needed, mm.
    pub diameter_mm: f64,
    /// Next size of the list, mm; none when no size reaches the bore.
    pub chosen_mm: Option<f64>,
    /// Duty of the nozzle that is taken, at rated power.
    pub duty_at_rated: f64,
    /// Its pulse at idle, ms; none without idle data.
    pub idle_pulse_ms: Option<f64>,
}

/// Looks at 10 K warmer gas, 10 kPa less supply, and the mix of the other season, one at a time, for the nozzle of
/// `used_mm`.
///
/// # Errors
/// As [`sheet`], but for a gas that would be partly liquid: that one has no answer.
pub fn sensitivity(asked: &Asked, used_mm: f64) -> Result<Vec<Varied>, Error> {
    let other = heat::other_mix(asked.composition());
    let mut changes = vec![Change::Warmer { by_k: WARMER_K }, Change::LowerSupply { by_kpa: LOWER_KPA }];
    changes.extend(other.map(|preset| Change::Mix { preset: preset.key.to_owned() }));
    changes
        .into_iter()
        .map(|change| {
            let then = match sheet(&asked.changed(&change, other)) {
                Ok(sheet) => sheet.found.nozzle().candidate(used_mm).map(|used| Then {
                    diameter_mm: sheet.found.nozzle().diameter_mm,
                    chosen_mm: sheet.found.nozzle().chosen_mm,
                    duty_at_rated: used.duty_at_rated,
                    idle_pulse_ms: used.idle_pulse_ms,
                }),
                Err(Error::Wet { .. } | Error::Outside(_)) => None,
                Err(other) => return Err(other),
            };
            Ok(Varied { change, then })
        })
        .collect()
}

impl Asked {
    fn changed(&self, change: &Change, other: Option<&Preset>) -> Self {
        let mut asked = self.clone();
        let (fuel, supply_kpa, gas_c) = match &mut asked {
            Self::Power(one) => (&mut one.fuel, &mut one.supply_over_manifold_kpa, &mut one.gas_temperature_c),
            Self::Petrol(one) => {
                let Setting { fuel, supply_over_manifold_kpa, gas_temperature_c, .. } = &mut one.setting;
                (fuel, supply_over_manifold_kpa, gas_temperature_c)
            }
        };
        match change {
            Change::Warmer { by_k } => *gas_c += by_k,
            Change::LowerSupply { by_kpa } => *supply_kpa -= by_kpa,
            Change::Mix { .. } => *fuel = other.map_or(*fuel, |other| other.composition),
        }
        asked
    }
}

/// Speed, 1/min, and duty of a nozzle there, with the dose of rated power at every speed: `D = t n / 120000`.
///
/// From 500/min to past both rated speed and the limit, so that a picture shows where the line is crossed.
///
/// # Source
/// Balance: one injection in two revolutions. An engine takes less than its rated dose at most speeds; this is the upper
/// bound.
#[must_use]
pub fn duty_over_speed(used: &Candidate, rated_rpm: f64) -> Vec<(f64, f64)> {
    // Beyond twice the rated speed the limit is of no interest.
    let last = rated_rpm.max(used.limit_rpm.min(2.0 * rated_rpm)) + SPEED_STEP_RPM;
    let at = |rpm: f64| (rpm, used.rated_pulse_ms * rpm / 120_000.0);
    std::iter::successors(Some(SPEED_STEP_RPM), |rpm| Some(rpm + SPEED_STEP_RPM))
        .take_while(|rpm| *rpm <= last)
        .map(at)
        .collect()
}
