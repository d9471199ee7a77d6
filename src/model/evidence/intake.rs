//! What is seen and measured before any work: the vehicle as it came, and whether it can be converted.

use serde::{Deserialize, Serialize};

use crate::model::coded;
use crate::model::vehicle::OdometerExplained;

/// How the vehicle came in.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Default)]
pub struct Arrival {
    /// Odometer, km.
    pub odometer_km: i64,
    /// The odometer as typed, with its unit.
    pub odometer_typed: String,
    /// What explains a reading that does not follow from the one before.
    #[serde(default)]
    pub odometer_explained: OdometerExplained,
    /// What the customer says is wrong; empty for nothing.
    pub reported_faults: String,
    /// A gas system found in the vehicle, in words; empty for none.
    pub existing_system: String,
    /// Gas parts found that this shop did not fit; empty for none.
    pub parts_found: String,
}

coded! {
    /// What the suitability examination found.
    "suitability-verdict" SuitabilityVerdict {
        /// It can be converted.
        Suitable = "suitable",
        /// It can be, once the conditions are met.
        WithConditions = "with-conditions",
        /// It cannot.
        NotSuitable = "not-suitable",
    }
}

/// The engine on petrol, before work.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Suitability {
    /// Compression of each engine cylinder in order, kPa gauge.
    pub compression_kpa: Vec<f64>,
    /// Total fuel trim at idle on petrol, per cent.
    pub trim_idle_percent: Option<f64>,
    /// Total fuel trim at 2 500 /min on petrol, per cent.
    pub trim_raised_percent: Option<f64>,
    /// Fault codes read; empty for none.
    pub fault_codes: String,
    /// Coolant temperature reached, C.
    pub coolant_c: f64,
    /// CO at idle on petrol, per cent by volume.
    pub idle_co_percent: Option<f64>,
    /// Ignition parts are sound.
    pub is_ignition_sound: bool,
    /// Valve clearance is in range or adjusts itself.
    pub is_valve_clearance_sound: bool,
    /// The valve seats of this engine wear on gas.
    pub has_valve_seat_risk: bool,
    /// Result.
    pub verdict: SuitabilityVerdict,
    /// Conditions and reasons, each with its source.
    pub reasons: String,
    /// Who of the customer's side accepts the faults found; empty when there are none.
    pub accepted_by: String,
}

impl Suitability {
    /// Spread of compression: the lowest falls short of the highest by this share, per cent. `None` without readings.
    pub fn compression_spread_percent(&self) -> Option<f64> {
        let most = self.compression_kpa.iter().copied().reduce(f64::max)?;
        let least = self.compression_kpa.iter().copied().reduce(f64::min)?;
        (most > 0.0).then(|| 100.0 * (most - least) / most)
    }
}
