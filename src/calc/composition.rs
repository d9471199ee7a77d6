//! What a fuel is made of: mole fractions of the nine components, summing to one. A [`Composition`] cannot be invalid;
//! [`Shares`] are what somebody typed and may be.

use serde::{Deserialize, Serialize};

use super::substance::Component;
use super::{Error, Outside, between, liquid};

/// How far the typed shares may miss 1 before the sum is refused rather than scaled.
pub const SUM_TOLERANCE: f64 = 0.001;
/// Temperature at which liquid-volume fractions are meant, C.
const LIQUID_VOLUME_C: f64 = 15.0;

/// Shares as typed, one field a component; what is left out is none of it. Dimensionless, 0 to 1.
#[derive(Debug, Clone, Copy, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
#[expect(missing_docs, reason = "the names are the chemical ones")]
pub struct Shares {
    #[serde(skip_serializing_if = "is_none_of_it")]
    pub methane: f64,
    #[serde(skip_serializing_if = "is_none_of_it")]
    pub ethane: f64,
    #[serde(skip_serializing_if = "is_none_of_it")]
    pub propane: f64,
    #[serde(skip_serializing_if = "is_none_of_it")]
    pub propene: f64,
    #[serde(skip_serializing_if = "is_none_of_it")]
    pub n_butane: f64,
    #[serde(skip_serializing_if = "is_none_of_it")]
    pub isobutane: f64,
    #[serde(skip_serializing_if = "is_none_of_it")]
    pub n_pentane: f64,
    #[serde(skip_serializing_if = "is_none_of_it")]
    pub nitrogen: f64,
    #[serde(skip_serializing_if = "is_none_of_it")]
    pub carbon_dioxide: f64,
}

#[expect(clippy::trivially_copy_pass_by_ref, reason = "serde hands a reference")]
fn is_none_of_it(share: &f64) -> bool {
    *share == 0.0
}

impl Shares {
    /// In the order of [`Component::ALL`].
    #[must_use]
    pub const fn to_array(self) -> [f64; 9] {
        let Self { methane, ethane, propane, propene, n_butane, isobutane, n_pentane, nitrogen, carbon_dioxide } = self;
        [methane, ethane, propane, propene, n_butane, isobutane, n_pentane, nitrogen, carbon_dioxide]
    }

    /// From shares in the order of [`Component::ALL`].
    #[must_use]
    pub const fn from_array(shares: [f64; 9]) -> Self {
        let [methane, ethane, propane, propene, n_butane, isobutane, n_pentane, nitrogen, carbon_dioxide] = shares;
        Self { methane, ethane, propane, propene, n_butane, isobutane, n_pentane, nitrogen, carbon_dioxide }
    }

    /// The shares, each from 0 to 1, scaled so that they sum to 1.
    fn scaled(self) -> Result<[f64; 9], Outside> {
        let mut shares = self.to_array();
        for (component, share) in Component::ALL.into_iter().zip(shares) {
            between(component.key(), share, 0.0, 1.0)?;
        }
        // Rounded far below the tolerance: 0.6 + 0.401 is 1.001 to whoever typed it, and a hair more in binary.
        let sum = (shares.iter().sum::<f64>() * 1e12).round() / 1e12;
        between("composition", sum, 1.0 - SUM_TOLERANCE, 1.0 + SUM_TOLERANCE)?;
        // A sum that misses 1 by rounding alone is left as it is, so that what was stored reads back to the last bit.
        if (sum - 1.0).abs() > 1e-12 {
            shares = shares.map(|share| share / sum);
        }
        Ok(shares)
    }
}

/// Mole fractions of a fuel; each from 0 to 1, together 1.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "Shares", into = "Shares")]
pub struct Composition {
    mole: [f64; 9],
}

impl TryFrom<Shares> for Composition {
    type Error = Outside;

    fn try_from(shares: Shares) -> Result<Self, Outside> {
        Self::from_mole(shares)
    }
}

impl From<Composition> for Shares {
    fn from(composition: Composition) -> Self {
        Self::from_array(composition.mole)
    }
}

impl Composition {
    /// From mole fractions, which for a gas are volume fractions.
    ///
    /// # Errors
    /// [`Outside`] names the component below 0 or above 1, or `composition` with the sum when that misses 1 by more
    /// than [`SUM_TOLERANCE`].
    pub fn from_mole(shares: Shares) -> Result<Self, Outside> {
        Ok(Self { mole: shares.scaled()? })
    }

    /// From mass fractions: `x_i = (m_i / M_i) / sum(m / M)`.
    ///
    /// # Errors
    /// As [`Composition::from_mole`].
    pub fn from_mass(shares: Shares) -> Result<Self, Outside> {
        Ok(Self::from_amounts(shares.scaled()?, |c| Some(1.0 / c.constants().molar_mass_g_mol)))
    }

    /// From liquid-volume fractions at 15 C, as LPG suppliers often quote: `x_i = (v_i rho_i / M_i) / sum(v rho / M)`,
    /// `rho_i` the density of the pure saturated liquid (COSTALD).
    ///
    /// # Errors
    /// As [`Composition::from_mole`]; [`Error::Unfit`] for methane, nitrogen and carbon dioxide, which are no liquids
    /// there.
    ///
    /// ```
    /// # use fuelwright::calc::composition::{Composition, Shares};
    /// let typed = Shares { propane: 0.567, n_butane: 0.433, ..Shares::default() };
    /// let fuel = Composition::from_liquid_volume(typed)?;
    /// assert!((fuel.mole()[2] - 0.60).abs() < 0.001); // 60 mol % propane is 56.7 % by liquid volume
    /// # Ok::<(), fuelwright::calc::Error>(())
    /// ```
    pub fn from_liquid_volume(shares: Shares) -> Result<Self, Error> {
        let scaled = shares.scaled()?;
        refuse_what_is_no_liquid(&scaled)?;
        Ok(Self::from_amounts(scaled, moles_per_liquid_volume))
    }

    fn from_amounts(shares: [f64; 9], moles_per_share: impl Fn(Component) -> Option<f64>) -> Self {
        let mut mole = [0.0; 9];
        for (component, share) in Component::ALL.into_iter().zip(shares) {
            if share > 0.0 {
                mole[component as usize] = share * moles_per_share(component).unwrap_or(0.0);
            }
        }
        let sum: f64 = mole.iter().sum();
        Self { mole: mole.map(|x| x / sum) }
    }

    /// A pure component.
    #[must_use]
    pub fn pure(component: Component) -> Self {
        let mut mole = [0.0; 9];
        mole[component as usize] = 1.0;
        Self { mole }
    }

    /// Mole fractions in the order of [`Component::ALL`].
    #[must_use]
    pub const fn mole(&self) -> &[f64; 9] {
        &self.mole
    }

    /// Mole fraction of one component.
    #[must_use]
    pub const fn share(&self, component: Component) -> f64 {
        self.mole[component as usize]
    }

    /// Components that are there, each with its mole fraction.
    pub fn present(&self) -> impl Iterator<Item = (Component, f64)> + '_ {
        Component::ALL.into_iter().zip(self.mole).filter(|(_, share)| *share > 0.0)
    }

    /// Molar mass, g/mol: `sum(x_i M_i)`.
    #[must_use]
    pub fn molar_mass_g_mol(&self) -> f64 {
        self.present().map(|(component, x)| x * component.constants().molar_mass_g_mol).sum()
    }

    /// Mass fractions: `m_i = x_i M_i / sum(x M)`.
    #[must_use]
    pub fn mass(&self) -> Shares {
        let whole = self.molar_mass_g_mol();
        let mut shares = [0.0; 9];
        for (component, x) in self.present() {
            shares[component as usize] = x * component.constants().molar_mass_g_mol / whole;
        }
        Shares::from_array(shares)
    }

    /// Liquid-volume fractions at 15 C: `v_i = (x_i M_i / rho_i) / sum(x M / rho)`.
    ///
    /// # Errors
    /// [`Error::Unfit`] for methane, nitrogen and carbon dioxide, which are no liquids there.
    pub fn liquid_volume(&self) -> Result<Shares, Error> {
        refuse_what_is_no_liquid(&self.mole)?;
        let mut shares = [0.0; 9];
        for (component, x) in self.present() {
            shares[component as usize] = moles_per_liquid_volume(component).map_or(0.0, |moles| x / moles);
        }
        let whole: f64 = shares.iter().sum();
        Ok(Shares::from_array(shares.map(|v| v / whole)))
    }

    /// The same gas with propene counted as propane, for a method that lacks propene.
    #[must_use]
    pub fn propene_as_propane(&self) -> Self {
        let mut mole = self.mole;
        mole[Component::Propane as usize] += mole[Component::Propene as usize];
        mole[Component::Propene as usize] = 0.0;
        Self { mole }
    }

    /// A composition already known to sum to 1, such as a phase in equilibrium.
    pub(super) const fn from_phase(mole: [f64; 9]) -> Self {
        Self { mole }
    }

    /// True when the fuel has no methane, nitrogen or carbon dioxide: it can be a liquid in a container.
    #[must_use]
    pub fn is_liquefiable(&self) -> bool {
        refuse_what_is_no_liquid(&self.mole).is_ok()
    }
}

pub(super) fn refuse_what_is_no_liquid(shares: &[f64; 9]) -> Result<(), Error> {
    for (component, share) in Component::ALL.into_iter().zip(*shares) {
        if share > 0.0 && component.constants().costald.is_none() {
            return Err(Error::Unfit { component: component.key(), share });
        }
    }
    Ok(())
}

/// mol/m3 of the pure saturated liquid at 15 C.
fn moles_per_liquid_volume(component: Component) -> Option<f64> {
    liquid::molar_volume_m3_mol(&Composition::pure(component), LIQUID_VOLUME_C).ok().map(|volume| 1.0 / volume)
}

/// A composition the shop can start from and edit. None is ever applied silently.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Preset {
    /// Stable key; language files hold its name.
    pub key: &'static str,
    /// LPG or CNG.
    pub is_lpg: bool,
    /// Mole fractions.
    pub composition: Composition,
    /// Where it comes from.
    pub source: &'static str,
}

const fn preset(key: &'static str, is_lpg: bool, mole: [f64; 9], source: &'static str) -> Preset {
    Preset { key, is_lpg, composition: Composition { mole }, source }
}

const PRACTICE: &str = "typical mix, common practice; butane taken as 60 % normal and 40 % iso; ask the supplier";
const EN437: &str = "EN 437:2003+A1:2009, table 2";
const EN437_MEMORY: &str = "EN 437, table 2 (from memory)";
const AGA: &str = "gas of AGA Report No. 8; everything above butane counted as n-pentane";

/// Presets, LPG first.
pub const PRESETS: [Preset; 11] = [
    preset("lpg-propane", true, [0.0, 0.0, 1.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0], "pure propane"),
    preset("lpg-80-20", true, [0.0, 0.0, 0.8, 0.0, 0.12, 0.08, 0.0, 0.0, 0.0], PRACTICE),
    preset("lpg-60-40", true, [0.0, 0.0, 0.6, 0.0, 0.24, 0.16, 0.0, 0.0, 0.0], PRACTICE),
    preset("lpg-50-50", true, [0.0, 0.0, 0.5, 0.0, 0.3, 0.2, 0.0, 0.0, 0.0], PRACTICE),
    preset("lpg-40-60", true, [0.0, 0.0, 0.4, 0.0, 0.36, 0.24, 0.0, 0.0, 0.0], PRACTICE),
    preset("lpg-30-70", true, [0.0, 0.0, 0.3, 0.0, 0.42, 0.28, 0.0, 0.0, 0.0], PRACTICE),
    preset("cng-g20", false, [1.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0], EN437_MEMORY),
    preset("cng-g21", false, [0.87, 0.0, 0.13, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0], EN437_MEMORY),
    preset("cng-g23", false, [0.925, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.075, 0.0], EN437),
    preset("cng-g25", false, [0.86, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.14, 0.0], EN437_MEMORY),
    preset(
        "cng-ekofisk",
        false,
        [0.859_063, 0.084_919, 0.023_015, 0.0, 0.003_506, 0.003_486, 0.000_989, 0.010_068, 0.014_954],
        AGA,
    ),
];
