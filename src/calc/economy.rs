//! What running on gas costs and emits against petrol, for the same driving at the same efficiency.
//!
//! Prices are in minor units of whatever currency the shop uses and may have parts of one (a pump price often does);
//! amounts of money come out in whole minor units, each rounded once, from numbers never rounded before. Carbon dioxide is
//! what leaves the tailpipe: no factor here counts what the making of a fuel emits, so the two are never mixed.

mod factors;
mod worked;

use serde::{Deserialize, Serialize};

pub use factors::{Factor, FactorSet, PerUnit};
pub use worked::steps;

use super::fuel::fuel;
use super::petrol::Petrol;
use super::{Basis, Composition, Error, Outside, REFERENCE_C, Source, between, liquid};

/// What [`economy`] rests on.
pub const BASIS: Basis = Basis {
    key: "economy",
    method: "same energy at the wheel from either fuel; carbon dioxide at the tailpipe from one set of factors",
    formulas: &[
        "r = rho_p H_p / (rho_L H_g) litres of LPG, or rho_p H_p / (1000 H_g) kg of CNG, per litre of petrol",
        "cost = (1 - s) c r price_gas + s c price_petrol, per 100 km",
        "payback_km = 100 conversion / (cost_petrol - cost), months = 12 payback_km / km_per_year",
        "CO2 = (1 - s) c r CO2_gas + s c CO2_petrol, per 100 km",
    ],
    relative_uncertainty: Some(RATIO_UNCERTAINTY),
    sources: &[Source::Iso6976, Source::En16258, Source::En228, Source::Costald1979, Source::Ipcc2006],
};

/// Relative standard uncertainty of the ratio: the density of petrol anywhere within EN 228's 720 to 775 kg/m3, as a
/// rectangle. How somebody drives is worth more.
pub const RATIO_UNCERTAINTY: f64 = 0.021;
/// Share of the distance still driven on petrol: warming up, and with an empty container (common practice, 5 to 10 %).
pub const PETROL_SHARE: f64 = 0.05;

/// How a gas is sold.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum SoldBy {
    /// By the litre of liquid at 15 C: LPG.
    Litre,
    /// By the kilogram: CNG.
    Kilogram,
}

impl SoldBy {
    /// How a gas of this composition is sold: by the litre when it can be a liquid in a container.
    #[must_use]
    pub fn of(composition: &Composition) -> Self {
        if composition.is_liquefiable() { Self::Litre } else { Self::Kilogram }
    }

    /// Its unit as printed.
    #[must_use]
    pub const fn unit(self) -> &'static str {
        match self {
            Self::Litre => "L",
            Self::Kilogram => "kg",
        }
    }
}

/// A vehicle, its fuels and their prices.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Running {
    /// Mole fractions of the gas.
    pub gas: Composition,
    /// Petrol by its ethanol grade.
    pub petrol: Petrol,
    /// Density of the petrol at 15 C, kg/m3; 700 to 800.
    pub petrol_kg_m3: f64,
    /// What the vehicle uses on petrol alone, L per 100 km; 1 to 200.
    pub consumption_l_per_100km: f64,
    /// Share of the distance still driven on petrol, 0 to 1.
    pub petrol_share: f64,
    /// Price of petrol, minor units per litre; 0 to 1e9.
    pub petrol_price_minor_per_l: f64,
    /// Price of the gas, minor units per litre of LPG or kilogram of CNG; 0 to 1e9.
    pub gas_price_minor_per_unit: f64,
    /// Price of the conversion, minor units; 0 to 1e12.
    pub conversion_minor: i64,
    /// Distance a year, km; 100 to 1 000 000.
    pub km_per_year: f64,
    /// Where the carbon dioxide comes from.
    pub factors: FactorSet,
}

/// Carbon dioxide at the tailpipe, kg per 100 km; of one set of factors.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Tailpipe {
    /// Factor of the petrol, per litre.
    pub petrol_factor: Factor,
    /// Factor of the gas, per litre or kilogram.
    pub gas_factor: Factor,
    /// On petrol alone.
    pub on_petrol_kg_per_100km: f64,
    /// After conversion, petrol still used included.
    pub after_kg_per_100km: f64,
}

/// What running costs and emits.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Economy {
    /// How the gas is sold.
    pub sold_by: SoldBy,
    /// Energy of a litre of petrol, net, MJ.
    pub petrol_mj_per_l: f64,
    /// Energy of a litre of LPG or a kilogram of CNG, net, MJ.
    pub gas_mj_per_unit: f64,
    /// Density of the liquid at 15 C, kg/m3; none for CNG.
    pub liquid_kg_m3: Option<f64>,
    /// Litres of LPG or kilograms of CNG in place of a litre of petrol.
    pub ratio: f64,
    /// Gas used, L or kg per 100 km, petrol still used apart.
    pub gas_per_100km: f64,
    /// Petrol still used, L per 100 km.
    pub petrol_left_l_per_100km: f64,
    /// Cost on petrol alone, minor units per 100 km.
    pub on_petrol_minor_per_100km: i64,
    /// Cost after conversion, petrol still used included, minor units per 100 km.
    pub after_minor_per_100km: i64,
    /// What is saved, minor units per 100 km; below zero when gas is the dearer.
    pub saved_minor_per_100km: i64,
    /// What is saved in a year, minor units.
    pub saved_minor_per_year: i64,
    /// Distance after which the conversion has paid, km; none when nothing is saved.
    pub payback_km: Option<f64>,
    /// Months after which it has; none likewise.
    pub payback_months: Option<f64>,
    /// Carbon dioxide; none when the set has no factor for this petrol.
    pub tailpipe: Option<Tailpipe>,
}

/// Cost, payback and carbon dioxide against petrol.
///
/// ```text
/// r = rho_p H_p / (rho_L H_g) (LPG, litres)  or  rho_p H_p / (1000 H_g) (CNG, kg);  cost = (1 - s) c r p_gas + s c p_petrol
/// payback_km = 100 conversion / saved;  months = 12 payback_km / km_per_year
/// ```
///
/// # Errors
/// [`Error::Outside`] names the quantity beyond its range; as [`fuel`] for the gas.
///
/// # Source
/// Energy balance at equal efficiency. Energies ISO 6976 and EN 16258:2012; densities COSTALD and EN 228.
///
/// ```
/// # use fuelwright::calc::composition::{Composition, Shares};
/// # use fuelwright::calc::economy::{FactorSet, Running, economy};
/// # use fuelwright::calc::petrol::{DENSITY_KG_M3, Petrol};
/// let gas = Composition::from_mole(Shares { propane: 0.6, n_butane: 0.4, ..Shares::default() })?;
/// let running = Running {
///     gas, petrol: Petrol::E5, petrol_kg_m3: DENSITY_KG_M3, consumption_l_per_100km: 8.0, petrol_share: 0.05,
///     petrol_price_minor_per_l: 175.0, gas_price_minor_per_unit: 75.0, conversion_minor: 120_000, km_per_year: 20_000.0,
///     factors: FactorSet::CarbonBalance,
/// };
/// let economy = economy(&running)?;
/// assert_eq!((economy.on_petrol_minor_per_100km, economy.after_minor_per_100km), (1_400, 789));
/// # Ok::<(), fuelwright::calc::Error>(())
/// ```
pub fn economy(running: &Running) -> Result<Economy, Error> {
    running.check()?;
    let Running { gas, petrol, petrol_kg_m3, consumption_l_per_100km: c, petrol_share: s, .. } = *running;
    let burnt = fuel(&gas)?;
    let sold_by = SoldBy::of(&gas);
    let liquid_kg_m3 = match sold_by {
        SoldBy::Litre => Some(liquid::density_kg_m3(&gas, REFERENCE_C)?),
        SoldBy::Kilogram => None,
    };
    let kg_per_unit = liquid_kg_m3.map_or(1.0, |density| density / 1e3);
    let petrol_mj_per_l = petrol_kg_m3 * petrol.lower_heating_value_mj_kg() / 1e3;
    let gas_mj_per_unit = kg_per_unit * burnt.lower_heating_value_mj_kg;
    let ratio = petrol_mj_per_l / gas_mj_per_unit;
    let (gas_per_100km, petrol_left) = ((1.0 - s) * c * ratio, s * c);
    let on_petrol = c * running.petrol_price_minor_per_l;
    let after = gas_per_100km * running.gas_price_minor_per_unit + petrol_left * running.petrol_price_minor_per_l;
    let saved = on_petrol - after;
    // A saving that is next to nothing pays back at a distance that is no number any more.
    let payback_km = (saved > 0.0).then(|| 100.0 * running.conversion_minor as f64 / saved).filter(|km| km.is_finite());
    let tailpipe = running.factors.of(petrol, petrol_kg_m3, &burnt, kg_per_unit).map(|(petrol_factor, gas_factor)| {
        let after = gas_per_100km * gas_factor.kg_per_unit + petrol_left * petrol_factor.kg_per_unit;
        let on_petrol_kg_per_100km = c * petrol_factor.kg_per_unit;
        Tailpipe { petrol_factor, gas_factor, on_petrol_kg_per_100km, after_kg_per_100km: after }
    });
    Ok(Economy {
        sold_by,
        petrol_mj_per_l,
        gas_mj_per_unit,
        liquid_kg_m3,
        ratio,
        gas_per_100km,
        petrol_left_l_per_100km: petrol_left,
        on_petrol_minor_per_100km: minor(on_petrol),
        after_minor_per_100km: minor(after),
        saved_minor_per_100km: minor(saved),
        saved_minor_per_year: minor(saved * running.km_per_year / 100.0),
        payback_km,
        payback_months: payback_km.map(|km| 12.0 * km / running.km_per_year).filter(|months| months.is_finite()),
        tailpipe,
    })
}

/// Whole minor units, halves away from zero.
fn minor(amount: f64) -> i64 {
    #[expect(clippy::cast_possible_truncation, reason = "prices and distances are held far inside i64 by `check`")]
    let whole = amount.round() as i64;
    whole
}

impl Running {
    fn check(&self) -> Result<(), Outside> {
        between("petrol_kg_m3", self.petrol_kg_m3, 700.0, 800.0)?;
        between("consumption_l_per_100km", self.consumption_l_per_100km, 1.0, 200.0)?;
        between("petrol_share", self.petrol_share, 0.0, 1.0)?;
        between("petrol_price_minor_per_l", self.petrol_price_minor_per_l, 0.0, 1e9)?;
        between("gas_price_minor_per_unit", self.gas_price_minor_per_unit, 0.0, 1e9)?;
        between("conversion_minor", self.conversion_minor as f64, 0.0, 1e12)?;
        between("km_per_year", self.km_per_year, 100.0, 1e6)?;
        Ok(())
    }
}
