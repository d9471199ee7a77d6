//! What an LPG container holds, when it becomes liquid-full, and how far it takes the vehicle.

mod worked;

use serde::{Deserialize, Serialize};

pub use worked::steps;

use super::cubic::{Cubic, Phase};
use super::fuel::fuel;
use super::liquid::{self, Liquid};
use super::{Basis, Caution, Composition, Error, GAS_CONSTANT, ICE_POINT_K, Outside, Source, between};

/// What [`container`] rests on.
pub const BASIS: Basis = Basis {
    key: "container",
    method: "COSTALD liquid density, Peng-Robinson vapour mass; liquid-full where all the mass is saturated liquid",
    formulas: &["m = V f rho_L(T)", "rho_L(T_full) = (m + m_vapour) / V", "E = m H_net"],
    relative_uncertainty: Some(0.002),
    sources: &[Source::Costald1979, Source::PengRobinson1976, Source::VdiHeatAtlas2010, Source::Iso6976],
};

/// The usual fill stop, liquid over gross volume (common practice; the rule set of the shop has the limit).
pub const USUAL_STOP: f64 = 0.80;
/// Share of a fill that stays behind in the container (common practice, 2 to 5 %).
pub const LEFT_BEHIND: f64 = 0.04;
/// A liquid-full temperature at or below this is within reach of a hot day or an exhaust, C (common practice).
pub const WITHIN_REACH_C: f64 = 65.0;
/// How much colder the second case is, K: a cold fill before a hot day is the dangerous one.
const COLDER_K: f64 = 10.0;

/// A container and its fill.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Container {
    /// Mole fractions of the liquid.
    pub composition: Composition,
    /// Water capacity, L; 1 to 2 000.
    pub gross_volume_l: f64,
    /// Liquid volume over gross volume, above 0 to 1.
    pub fill_fraction: f64,
    /// Temperature of liquid and container at filling, C; -80 to 80.
    pub temperature_c: f64,
}

/// What a container holds.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Contents {
    /// Liquid, L.
    pub liquid_l: f64,
    /// Mass of the liquid alone, kg: what a delivery note says.
    pub mass_kg: f64,
    /// Mass of the vapour above it, kg.
    pub vapour_mass_kg: f64,
    /// Pressure, kPa absolute.
    pub pressure_kpa: f64,
    /// Density of the liquid, kg/m3.
    pub density_kg_m3: f64,
    /// Temperature at which the container is liquid-full, C; none when there is none below the critical region.
    pub liquid_full_temperature_c: Option<f64>,
    /// The same, had the fill been 10 K colder; none likewise, or when that is too cold for the sums.
    pub liquid_full_if_filled_10_k_colder_c: Option<f64>,
    /// Energy of the liquid, net, MJ.
    pub energy_mj: f64,
    /// What a reader should know.
    pub cautions: Vec<Caution>,
}

/// Mass, energy and liquid-full temperature of a filled container.
///
/// ```text
/// liquid = gross fill;  mass = liquid rho_L(T);  energy = mass H_net
/// rho_L(T_full) = (mass + vapour mass) / gross
/// ```
///
/// The container's own expansion (0.004 % per kelvin and some stretch) is left out: on the safe side. Worked example:
/// propane filled to 80 % at 15 C is liquid-full at 68 C, filled at -10 C at 57 C.
///
/// # Errors
/// [`Error::Outside`] names the quantity beyond its range, [`Error::Unfit`] the component that is no LPG.
///
/// # Source
/// Hankinson and Thomson 1979; Peng and Robinson 1976. Mass 0.25 %, liquid-full temperature 1.3 K; the tolerance of the
/// fill stop, several per cent, dominates.
///
/// ```
/// # use fuelwright::calc::{Composition, container::*, substance::Component};
/// let composition = Composition::pure(Component::Propane);
/// let fill = Container { composition, gross_volume_l: 60.0, fill_fraction: 0.80, temperature_c: 15.0 };
/// let contents = container(&fill)?;
/// assert!((contents.mass_kg - 24.36).abs() < 0.06);
/// assert!((contents.liquid_full_temperature_c.unwrap() - 67.9).abs() < 1.3);
/// # Ok::<(), fuelwright::calc::Error>(())
/// ```
pub fn container(container: &Container) -> Result<Contents, Error> {
    container.check()?;
    let Container { composition, gross_volume_l, fill_fraction, temperature_c } = container;
    let phases = Phases::at(composition, *temperature_c)?;
    let liquid_l = gross_volume_l * fill_fraction;
    let mass_kg = liquid_l * phases.liquid_kg_m3 / 1e3;
    let liquid_full_temperature_c = phases.liquid_full_c(composition, *fill_fraction, *temperature_c);
    let colder_c = temperature_c - COLDER_K;
    let liquid_full_if_filled_10_k_colder_c = Phases::at(composition, colder_c)
        .ok()
        .and_then(|colder| colder.liquid_full_c(composition, *fill_fraction, colder_c));
    Ok(Contents {
        liquid_l,
        mass_kg,
        vapour_mass_kg: (gross_volume_l - liquid_l) * phases.vapour_kg_m3 / 1e3,
        pressure_kpa: phases.pressure_kpa,
        density_kg_m3: phases.liquid_kg_m3,
        liquid_full_temperature_c,
        liquid_full_if_filled_10_k_colder_c,
        energy_mj: mass_kg * fuel(composition)?.lower_heating_value_mj_kg,
        cautions: container.cautions(liquid_full_temperature_c, liquid_full_if_filled_10_k_colder_c),
    })
}

impl Container {
    fn check(&self) -> Result<(), Outside> {
        between("gross_volume_l", self.gross_volume_l, 1.0, 2_000.0)?;
        between("fill_fraction", self.fill_fraction, 0.001, 1.0)?;
        between("temperature_c", self.temperature_c, -80.0, 80.0)?;
        Ok(())
    }

    fn cautions(&self, liquid_full_c: Option<f64>, if_colder_c: Option<f64>) -> Vec<Caution> {
        let mut cautions = liquid::cautions(&self.composition, self.temperature_c);
        if self.fill_fraction > USUAL_STOP + 1e-9 {
            cautions.push(Caution::FilledAboveStop { fill_fraction: self.fill_fraction });
        }
        if let Some(liquid_full_temperature_c) = liquid_full_c.into_iter().chain(if_colder_c).reduce(f64::min)
            && liquid_full_temperature_c <= WITHIN_REACH_C
        {
            cautions.push(Caution::LiquidFullWithinReach { liquid_full_temperature_c });
        }
        if liquid_full_c.is_none() {
            cautions.push(Caution::NeverLiquidFull);
        }
        cautions
    }
}

/// Liquid and vapour in equilibrium.
struct Phases {
    liquid_kg_m3: f64,
    vapour_kg_m3: f64,
    pressure_kpa: f64,
}

impl Phases {
    fn at(composition: &Composition, temperature_c: f64) -> Result<Self, Error> {
        let bubble = liquid::vapour_pressure(&Liquid { composition: *composition, temperature_c })?;
        let t = temperature_c + ICE_POINT_K;
        let z = Cubic::new(&bubble.vapour, t).compressibility(bubble.pressure_kpa * 1e3, Phase::Gas)?;
        Ok(Self {
            liquid_kg_m3: liquid::density_kg_m3(composition, temperature_c)?,
            // kPa g/mol over J/mol is kg/m3.
            vapour_kg_m3: bubble.pressure_kpa * bubble.vapour.molar_mass_g_mol() / (z * GAS_CONSTANT * t),
            pressure_kpa: bubble.pressure_kpa,
        })
    }

    /// None when the mass does not fill the container with liquid below the critical region.
    fn liquid_full_c(&self, composition: &Composition, fill_fraction: f64, temperature_c: f64) -> Option<f64> {
        let mean = fill_fraction * self.liquid_kg_m3 + (1.0 - fill_fraction) * self.vapour_kg_m3;
        liquid::thinned_to_c(composition, mean, temperature_c)
    }
}

/// What comes into the vehicle with the container, and how the vehicle uses it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Stowage {
    /// Empty container with multivalve and frame, kg; 0 to 1 000.
    pub container_mass_kg: f64,
    /// All other parts fitted less those removed, kg; -200 to 500.
    pub parts_mass_kg: f64,
    /// Gas consumption, L per 100 km; 1 to 200.
    pub consumption_l_per_100km: f64,
    /// Share of the fill that stays behind, 0 to 0.5.
    pub left_behind_share: f64,
    /// What the axle may still carry, kg; none when not known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub axle_reserve_kg: Option<f64>,
}

/// Range and mass.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Stowed {
    /// Liquid that can be used, L.
    pub usable_l: f64,
    /// Range on it, km.
    pub range_km: f64,
    /// Mass added to the vehicle with a full fill, kg.
    pub added_mass_kg: f64,
    /// What the axle may carry beyond that, kg; negative is an overload; none without a reserve.
    pub reserve_left_kg: Option<f64>,
}

/// Range, and the mass set against the axle's reserve: `range = usable / consumption * 100`.
///
/// # Errors
/// [`Outside`] names the quantity beyond its range.
pub fn stow(contents: &Contents, stowage: &Stowage) -> Result<Stowed, Outside> {
    between("container_mass_kg", stowage.container_mass_kg, 0.0, 1_000.0)?;
    between("parts_mass_kg", stowage.parts_mass_kg, -200.0, 500.0)?;
    between("consumption_l_per_100km", stowage.consumption_l_per_100km, 1.0, 200.0)?;
    between("left_behind_share", stowage.left_behind_share, 0.0, 0.5)?;
    if let Some(reserve_kg) = stowage.axle_reserve_kg {
        between("axle_reserve_kg", reserve_kg, -2_000.0, 10_000.0)?;
    }
    let usable_l = contents.liquid_l * (1.0 - stowage.left_behind_share);
    let filled_kg = contents.mass_kg + contents.vapour_mass_kg;
    let added_mass_kg = stowage.container_mass_kg + stowage.parts_mass_kg + filled_kg;
    Ok(Stowed {
        usable_l,
        range_km: usable_l / stowage.consumption_l_per_100km * 100.0,
        added_mass_kg,
        reserve_left_kg: stowage.axle_reserve_kg.map(|reserve_kg| reserve_kg - added_mass_kg),
    })
}
