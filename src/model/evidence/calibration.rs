//! Calibrating gas against petrol: preconditions, settings in the technician's own words, trims on both fuels.

use serde::{Deserialize, Serialize};

/// A correction over a region, in words: "2 000 to 2 500 rpm, 60 to 80 kPa: +4 %".
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Default)]
pub struct Region {
    /// Where, in words.
    pub region: String,
    /// By how much, per cent.
    pub percent: f64,
}

/// How the engine was calibrated on gas.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Default)]
pub struct EngineCalibration {
    /// Coolant, C.
    pub coolant_c: f64,
    /// LPG vaporiser, or CNG regulator outlet, C.
    pub vaporiser_c: f64,
    /// The petrol computer ran in closed loop.
    pub was_closed_loop: bool,
    /// Fault codes present before calibrating; empty for none.
    pub fault_codes: String,
    /// Set gas pressure over manifold, kPa.
    pub set_pressure_kpa: f64,
    /// Gas temperature at the rail, C.
    pub gas_temperature_c: f64,
    /// How it was done, in own words.
    pub how: String,
    /// The nozzle serves; false sends the job back to Sizing.
    pub is_nozzle_adequate: bool,
    /// Changeover at this coolant temperature, C.
    pub changeover_c: f64,
    /// Falls back to petrol below this gas pressure, kPa over manifold.
    pub fall_back_kpa: f64,
    /// Corrections by region, in words.
    pub regions: Vec<Region>,
    /// Who holds the lock of the control unit, in words.
    pub lock_holder: String,
}

/// Trims of one bank at one operating point, on both fuels, per cent.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Default)]
pub struct TrimPoint {
    /// Operating point, in words ("idle", "2 500 /min").
    pub point: String,
    /// Bank, 1 or 2.
    pub bank: i64,
    /// Short trim on petrol.
    pub petrol_short_percent: f64,
    /// Long trim on petrol.
    pub petrol_long_percent: f64,
    /// Short trim on gas.
    pub gas_short_percent: f64,
    /// Long trim on gas.
    pub gas_long_percent: f64,
}

impl TrimPoint {
    /// What the petrol computer adds on gas beyond what it adds on petrol, per cent:
    /// `(1 + T_gas) / (1 + T_petrol) - 1` with `1 + T = (1 + short)(1 + long)`. Positive: gas is lean there.
    pub fn difference_percent(&self) -> f64 {
        let total = |short: f64, long: f64| (1.0 + short / 100.0) * (1.0 + long / 100.0);
        let petrol = total(self.petrol_short_percent, self.petrol_long_percent);
        100.0 * (total(self.gas_short_percent, self.gas_long_percent) / petrol - 1.0)
    }
}

/// Trims at stated points.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Default)]
pub struct Trims {
    /// Points and banks.
    pub points: Vec<TrimPoint>,
}

impl Trims {
    /// The difference farthest from zero, per cent.
    pub fn worst_percent(&self) -> Option<f64> {
        self.points.iter().map(TrimPoint::difference_percent).max_by(|a, b| a.abs().total_cmp(&b.abs()))
    }
}

/// Fault codes and readiness, read again after driving on both fuels.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Default)]
pub struct AfterDrive {
    /// Driven on petrol, km.
    pub petrol_km: f64,
    /// Driven on gas, km.
    pub gas_km: f64,
    /// Fault codes read; empty for none.
    pub fault_codes: String,
    /// Readiness monitors not complete, in words; empty for none.
    pub not_ready: String,
}

/// Fault codes of a text, parted by blanks, commas or semicolons, in capitals.
fn codes(text: &str) -> impl Iterator<Item = String> + '_ {
    let parts = text.split(|c: char| c.is_whitespace() || matches!(c, ',' | ';'));
    parts.filter(|code| !code.is_empty()).map(str::to_uppercase)
}

impl AfterDrive {
    /// Fault codes that were not there before, each once.
    pub fn new_codes(&self, before: &str) -> Vec<String> {
        let known: Vec<String> = codes(before).collect();
        let mut new: Vec<String> = Vec::new();
        for code in codes(&self.fault_codes) {
            if !known.contains(&code) && !new.contains(&code) {
                new.push(code);
            }
        }
        new
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn trims_compare_totals_of_short_and_long() {
        // Bytes of SAE J1979 service 01, percent = (A - 128) 100/128: gas 136, 133; petrol 129, 130.
        let percent = |a: f64| (a - 128.0) * 100.0 / 128.0;
        let point = TrimPoint {
            gas_short_percent: percent(136.0),
            gas_long_percent: percent(133.0),
            petrol_short_percent: percent(129.0),
            petrol_long_percent: percent(130.0),
            ..TrimPoint::default()
        };
        assert!((point.difference_percent() - 7.9).abs() < 0.05, "{}", point.difference_percent());
    }
}
