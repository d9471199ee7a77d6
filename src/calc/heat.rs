//! A heat sheet: what a vaporiser or a pressure regulator must bring for an engine, held against what its maker tells,
//! and how far the changeover temperature stays above the dew temperature.

use serde::{Deserialize, Serialize};

use super::composition::{PRESETS, Preset};
use super::decision::{self, Rule, Verdict};
use super::fuel::fuel;
use super::fuel_parts::{Part, parts};
use super::nozzle::sizing::Spread;
use super::vaporiser::{Regulated, Regulator, VAPORISER, Vaporised, Vaporiser, regulator, vaporiser};
use super::{Caution, Composition, Error, between};

mod worked;

pub use worked::steps;

/// Margin of the changeover temperature over the dew temperature that is usually asked for, K (common practice): the
/// sensor sits where it is warmest, the rail where it is coldest.
pub const USUAL_MARGIN_K: f64 = 10.0;
/// Coldest content of a container taken when none is given, C (common practice).
pub const COLDEST_C: f64 = -20.0;
/// Changeover temperature taken when none is given, C (common practice).
pub const CHANGEOVER_C: f64 = 40.0;
/// How far the coolant may cool down when nothing is given, K (common practice, 5 to 10).
pub const COOLANT_DROP_K: f64 = 8.0;
/// Warmer outlet looked at beside the one asked for, K.
const WARMER_K: f64 = 10.0;
/// Mild content looked at beside the coldest, C.
const MILD_C: f64 = 15.0;

/// What is heated, and how.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(tag = "device", rename_all = "kebab-case")]
pub enum Device {
    /// LPG.
    Vaporiser(Vaporiser),
    /// CNG.
    Regulator(Regulator),
}

/// What its maker tells of a vaporiser or regulator.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(tag = "told", rename_all = "kebab-case")]
pub enum Capacity {
    /// Heat that it brings, kW.
    Heat {
        /// kW of heat.
        heat_kw: f64,
    },
    /// Engine that it serves, kW.
    Engine {
        /// kW at the crankshaft.
        engine_kw: f64,
    },
}

/// A heat sheet asked for.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Asked {
    /// What is heated. Its fuel rate is that of rated power.
    pub device: Device,
    /// Rated power, kW; none when the fuel rate was given and the power is not known.
    pub rated_power_kw: Option<f64>,
    /// Brake efficiency, when the fuel rate came from the power; none when the rate was given.
    pub brake_efficiency: Option<f64>,
    /// What the maker tells; none when nothing is known.
    pub capacity: Option<Capacity>,
    /// Temperature at which the engine changes over to gas, C; LPG only.
    pub changeover_c: Option<f64>,
}

/// What the heat sum answered.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "device", rename_all = "kebab-case")]
pub enum Heat {
    /// Of a vaporiser.
    Vaporiser(Vaporised),
    /// Of a regulator.
    Regulator(Regulated),
}

/// A capacity set against the need.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Judged {
    /// Need over capacity.
    pub used_share: f64,
    /// Its relative standard uncertainty.
    pub relative_uncertainty: f64,
    /// Heat that the capacity stands for, kW.
    pub heat_kw: f64,
    /// Engine that the capacity stands for, kW; none when the engine's power is not known.
    pub engine_kw: Option<f64>,
    /// Enough, too small, or too near to tell: guarded by twice the uncertainty.
    pub verdict: Verdict,
}

/// The same sheet with one input changed.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(tag = "change", rename_all = "kebab-case")]
pub enum Change {
    /// Content of container or cylinder at another temperature, C.
    Content {
        /// C.
        temperature_c: f64,
    },
    /// Gas wanted warmer, K.
    Warmer {
        /// K.
        by_k: f64,
    },
    /// Another mix.
    Mix {
        /// Propane, mole fraction; methane for CNG.
        main_share: f64,
    },
}

/// What a change does.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Varied {
    /// What is changed.
    #[serde(flatten)]
    pub change: Change,
    /// Heat then, kW.
    pub heat_kw: f64,
    /// Coolant then, L/min.
    pub coolant_l_min: f64,
    /// Dew temperature then, C; LPG only.
    pub dew_temperature_c: Option<f64>,
}

/// A heat sheet.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Found {
    /// The parts of the fuel.
    pub parts: Vec<Part>,
    /// Net calorific value, MJ/kg.
    pub lower_heating_value_mj_kg: f64,
    /// The sum itself.
    pub heat: Heat,
    /// The capacity judged; none when none was told, or when it is told in kW of engine and the power is not known.
    pub judged: Option<Judged>,
    /// Changeover less dew temperature, K; LPG only.
    pub margin_k: Option<f64>,
    /// One input changed at a time.
    pub varied: Vec<Varied>,
}

impl Device {
    /// Mole fractions of the fuel.
    #[must_use]
    pub fn composition(&self) -> &Composition {
        match self {
            Self::Vaporiser(one) => &one.composition,
            Self::Regulator(one) => &one.composition,
        }
    }

    /// Fuel rate, g/s.
    #[must_use]
    pub fn fuel_rate_g_s(&self) -> f64 {
        match self {
            Self::Vaporiser(one) => one.fuel_rate_g_s,
            Self::Regulator(one) => one.fuel_rate_g_s,
        }
    }

    fn reckon(&self) -> Result<Heat, Error> {
        Ok(match self {
            Self::Vaporiser(one) => Heat::Vaporiser(vaporiser(one)?),
            Self::Regulator(one) => Heat::Regulator(regulator(one)?),
        })
    }

    fn changed(mut self, change: Change, other: Option<&Preset>) -> Self {
        match (&mut self, change) {
            (Self::Vaporiser(one), Change::Content { temperature_c }) => one.container_c = temperature_c,
            (Self::Regulator(one), Change::Content { temperature_c }) => one.inlet_c = temperature_c,
            (Self::Vaporiser(one), Change::Warmer { by_k }) => one.outlet_c += by_k,
            (Self::Regulator(one), Change::Warmer { by_k }) => one.outlet_c += by_k,
            (Self::Vaporiser(one), Change::Mix { .. }) => {
                one.composition = other.map_or(one.composition, |other| other.composition);
            }
            (Self::Regulator(one), Change::Mix { .. }) => {
                one.composition = other.map_or(one.composition, |other| other.composition);
            }
        }
        self
    }
}

impl Heat {
    /// Heat, kW.
    #[must_use]
    pub fn heat_kw(&self) -> f64 {
        match self {
            Self::Vaporiser(one) => one.heat_kw,
            Self::Regulator(one) => one.heat_kw,
        }
    }

    /// Coolant, L/min.
    #[must_use]
    pub fn coolant_l_min(&self) -> f64 {
        match self {
            Self::Vaporiser(one) => one.coolant_l_min,
            Self::Regulator(one) => one.coolant_l_min,
        }
    }

    /// Dew temperature at the outlet, C; LPG only.
    #[must_use]
    pub fn dew_temperature_c(&self) -> Option<f64> {
        match self {
            Self::Vaporiser(one) => Some(one.dew_temperature_c),
            Self::Regulator(_) => None,
        }
    }

    /// What a reader should know.
    #[must_use]
    pub fn cautions(&self) -> &[Caution] {
        match self {
            Self::Vaporiser(one) => &one.cautions,
            Self::Regulator(one) => &one.cautions,
        }
    }
}

/// Fuel rate of an engine, g/s: `m = P / (eta H)`.
///
/// `rated_power_kw`: 1 to 1 000. `brake_efficiency`: 0.1 to 0.5.
///
/// # Errors
/// [`Error::Outside`] names the quantity beyond its range; as [`fuel`].
pub fn fuel_rate_g_s(composition: &Composition, rated_power_kw: f64, brake_efficiency: f64) -> Result<f64, Error> {
    between("rated_power_kw", rated_power_kw, 1.0, 1_000.0)?;
    between("brake_efficiency", brake_efficiency, 0.1, 0.5)?;
    Ok(rated_power_kw / (brake_efficiency * fuel(composition)?.lower_heating_value_mj_kg))
}

/// Reckons a heat sheet.
///
/// ```text
/// Q = m_f Δh;   told in heat: used = Q / Q_told, P_served = P Q_told / Q;   told in engine: used = P / P_told
/// ```
///
/// Enough while `used (1 + 2 u) <= 1`, too small when `used (1 - 2 u) > 1`, else it cannot be told
/// ([`decision::at_most`]).
///
/// # Errors
/// As [`vaporiser`] and [`regulator`].
///
/// # Source
/// Those of the two; guard band of JCGM 106:2012. Uncertainty: composition 2 %, rated power 3 %, efficiency 5 %
/// (common practice).
pub fn sheet(asked: &Asked) -> Result<Found, Error> {
    if let Some(changeover_c) = asked.changeover_c {
        between("changeover_c", changeover_c, -20.0, 110.0)?;
    }
    let composition = asked.device.composition();
    let heat = asked.device.reckon()?;
    Ok(Found {
        parts: parts(composition)?,
        lower_heating_value_mj_kg: fuel(composition)?.lower_heating_value_mj_kg,
        judged: judge(asked, heat.heat_kw())?,
        margin_k: asked.changeover_c.zip(heat.dew_temperature_c()).map(|(changeover, dew)| changeover - dew),
        varied: varied(asked),
        heat,
    })
}

fn judge(asked: &Asked, need_kw: f64) -> Result<Option<Judged>, Error> {
    let Spread { power, efficiency, .. } = Spread::default();
    let of_heat = power.hypot(efficiency).hypot(VAPORISER.relative_uncertainty.unwrap_or(0.0));
    let (used_share, relative_uncertainty, heat_kw, engine_kw) = match (asked.capacity, asked.rated_power_kw) {
        (Some(Capacity::Heat { heat_kw }), power_kw) => {
            between("capacity_heat_kw", heat_kw, 0.1, 500.0)?;
            // A regulator that needs no heat is served by any.
            let used = need_kw.max(0.0) / heat_kw;
            (used, of_heat, heat_kw, power_kw.filter(|_| used > 0.0).map(|kw| kw / used))
        }
        (Some(Capacity::Engine { engine_kw }), Some(power_kw)) => {
            between("capacity_engine_kw", engine_kw, 1.0, 2_000.0)?;
            (power_kw / engine_kw, power, need_kw * engine_kw / power_kw, Some(engine_kw))
        }
        _ => return Ok(None),
    };
    let expanded = 2.0 * relative_uncertainty * used_share;
    let verdict = decision::at_most(used_share, expanded, 1.0, Rule::Guarded)?;
    Ok(Some(Judged { used_share, relative_uncertainty, heat_kw, engine_kw, verdict }))
}

/// Changes that lead to no gas (an outlet that rains) are left out.
fn varied(asked: &Asked) -> Vec<Varied> {
    let composition = asked.device.composition();
    let other = other_mix(composition);
    let content = Change::Content { temperature_c: MILD_C };
    let mut changes = vec![content, Change::Warmer { by_k: WARMER_K }];
    changes.extend(other.map(|other| Change::Mix { main_share: main_share(&other.composition) }));
    let try_one = |change: Change| {
        let mut device = asked.device.changed(change, other);
        // The engine needs the same energy of another mix.
        if let (Change::Mix { .. }, Some(power), Some(efficiency)) =
            (change, asked.rated_power_kw, asked.brake_efficiency)
        {
            let rate = fuel_rate_g_s(device.composition(), power, efficiency).ok()?;
            match &mut device {
                Device::Vaporiser(one) => one.fuel_rate_g_s = rate,
                Device::Regulator(one) => one.fuel_rate_g_s = rate,
            }
        }
        let heat = device.reckon().ok()?;
        Some(Varied {
            change,
            heat_kw: heat.heat_kw(),
            coolant_l_min: heat.coolant_l_min(),
            dew_temperature_c: heat.dew_temperature_c(),
        })
    };
    changes.into_iter().filter_map(try_one).collect()
}

fn main_share(composition: &Composition) -> f64 {
    let [methane, _, propane, ..] = *composition.mole();
    if composition.is_liquefiable() { propane } else { methane }
}

/// The mix of the other season, or for CNG the other group of gases (common practice; EN 437).
pub(super) fn other_mix(composition: &Composition) -> Option<&'static Preset> {
    let key = match (composition.is_liquefiable(), main_share(composition)) {
        (true, propane) if propane > 0.5 => "lpg-40-60",
        (true, _) => "lpg-60-40",
        (false, methane) if methane > 0.88 => "cng-g25",
        (false, _) => "cng-g20",
    };
    PRESETS.iter().find(|preset| preset.key == key)
}
