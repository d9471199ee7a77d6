//! The documents behind the sums, as data that papers can print, and the cautions a sum attaches to its answer.

use std::fmt;

use serde::{Deserialize, Serialize};

/// What an answer rests on: a stable key (language files know it), the method in one line, and its documents.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Basis {
    /// Stable key of the sum, such as `nozzle`.
    pub key: &'static str,
    /// The method in one line, for the command line and the log.
    pub method: &'static str,
    /// The formulas, a line each, in the symbols of the sources; the same in every language.
    pub formulas: &'static [&'static str],
    /// Relative standard uncertainty (k = 1) of the first result for a known composition; none where it depends on the
    /// input and stands in the result, or is not a relative one.
    pub relative_uncertainty: Option<f64>,
    /// The documents, most important first.
    pub sources: &'static [Source],
}

/// A document behind a sum.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[expect(missing_docs, reason = "each name is explained by its citation")]
pub enum Source {
    Gerg2008,
    Iso20765Part2,
    PengRobinson1976,
    VdiHeatAtlas2010,
    Costald1979,
    PolingPrausnitzOConnell2001,
    Iso6976,
    Iso13443,
    AstmD2598,
    En437,
    En589,
    En228,
    En16258,
    Un83,
    Iso9300,
    WardSmith1979,
    Haaland1983,
    HerningZipperer1936,
    GrunbergNissan1949,
    Aslam2005,
    AppliedSciences13,
    GasInjectorTimes2016,
    Jcgm100,
    Jcgm106,
    IlacG8,
    Brettschneider1979,
    OimlR99,
    En1779,
    Ipcc2006,
    Iso3779,
    Iso3780,
    Cfr565,
    Theil1950,
    Hampel1974,
    CrouxRousseeuw1992,
    Cleveland1979,
    SaeJ1979,
    CommonPractice,
}

impl Source {
    /// The document as a paper prints it. "From memory" marks what has still to be confirmed from the document itself.
    #[must_use]
    pub const fn citation(self) -> &'static str {
        match self {
            Self::Gerg2008 => {
                "O. Kunz, W. Wagner, J. Chem. Eng. Data 57 (2012) 3032 (GERG-2008); AGA Report No. 8 part 2 (2017)"
            }
            Self::Iso20765Part2 => "ISO 20765-2",
            Self::PengRobinson1976 => "D.-Y. Peng, D. B. Robinson, Ind. Eng. Chem. Fundam. 15 (1976) 59",
            Self::VdiHeatAtlas2010 => "VDI Heat Atlas, 2nd ed. 2010, table D3.1 (Wagner equation)",
            Self::Costald1979 => "R. W. Hankinson, G. H. Thomson, AIChE J. 25 (1979) 653 (COSTALD)",
            Self::PolingPrausnitzOConnell2001 => {
                "B. E. Poling, J. M. Prausnitz, J. P. O'Connell, The Properties of Gases and Liquids, 5th ed. 2001, appendix A"
            }
            Self::Iso6976 => "ISO 6976 (molar calorific values; from memory)",
            Self::Iso13443 => "ISO 13443 (reference conditions 15 C, 101.325 kPa; from memory)",
            Self::AstmD2598 => "ASTM D2598, table 1 (motor octane blending values by liquid volume)",
            Self::En437 => "EN 437:2003+A1:2009, table 2 (test gases)",
            Self::En589 => "EN 589 (automotive LPG)",
            Self::En228 => "EN 228 (petrol; density limits)",
            Self::En16258 => "EN 16258:2012, annex A (calorific values and emission factors)",
            Self::Un83 => "UN Regulation No. 83 (H/C and O/C of reference fuels; from memory)",
            Self::Iso9300 => "ISO 9300 (critical flow)",
            Self::WardSmith1979 => "A. J. Ward-Smith, Int. J. Heat Fluid Flow 1 (1979) 123 (value from memory)",
            Self::Haaland1983 => "S. E. Haaland, J. Fluids Eng. 105 (1983) 89",
            Self::HerningZipperer1936 => "F. Herning, L. Zipperer, Gas- und Wasserfach 79 (1936) 49 (from memory)",
            Self::GrunbergNissan1949 => "L. Grunberg, A. H. Nissan, Nature 164 (1949) 799 (from memory)",
            Self::Aslam2005 => "M. U. Aslam et al., J. Energy Environ. 4 (2005) 97",
            Self::AppliedSciences13 => "Applied Sciences 13 (2023) 1700 (opening and closing times of gas injectors)",
            Self::GasInjectorTimes2016 => "D. Szpica, J. Nat. Gas Sci. Eng. 34 (2016) 1127",
            Self::Jcgm100 => "JCGM 100:2008",
            Self::Jcgm106 => "JCGM 106:2012",
            Self::IlacG8 => "ILAC-G8:09/2019, clause 4.2.3",
            Self::Brettschneider1979 => "J. Brettschneider, Technische Berichte 6 (1979) no. 4, 177",
            Self::OimlR99 => "OIML R 99 / ISO 3930 (H/C and O/C of petrol; from memory)",
            Self::En1779 => "EN 1779 (choice of leak test; factors from gas to gas; from memory)",
            Self::Ipcc2006 => "IPCC 2006 Guidelines vol. 2, tables 1.2 and 3.2.1 (from memory)",
            Self::Iso3779 => "ISO 3779",
            Self::Iso3780 => "ISO 3780 (regions; from memory)",
            Self::Cfr565 => "49 CFR 565.15 (check digit)",
            Self::Theil1950 => {
                "H. Theil, Indagationes Mathematicae 12 (1950) 85; P. K. Sen, J. Am. Stat. Assoc. 63 (1968) 1379"
            }
            Self::Hampel1974 => "F. R. Hampel, J. Am. Stat. Assoc. 69 (1974) 383",
            Self::CrouxRousseeuw1992 => {
                "C. Croux, P. J. Rousseeuw, Computational Statistics 1 (1992) 411 (from memory)"
            }
            Self::Cleveland1979 => "W. S. Cleveland, J. Am. Stat. Assoc. 74 (1979) 829",
            Self::SaeJ1979 => "SAE J1979 (trims and coolant as sent by an engine's computer)",
            Self::CommonPractice => "common practice of the trade, an editable default",
        }
    }
}

/// What a reader should know about an answer that is nevertheless given.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum Caution {
    /// The temperature lies outside the range in which the method was checked.
    TemperatureBeyondCheck {
        /// Temperature asked for, C.
        temperature_c: f64,
        /// Least temperature checked, C.
        from_c: f64,
        /// Greatest temperature checked, C.
        to_c: f64,
    },
    /// The mixture carries propene, whose mixture data are poorer: allow the percentage given.
    PropeneData {
        /// Mole fraction of propene.
        share: f64,
        /// Uncertainty to allow, per cent.
        allow_percent: f64,
    },
    /// Above 20 % propene by liquid volume the octane sum does not hold; none is given.
    OctaneBeyondPropene {
        /// Liquid-volume fraction of propene.
        share: f64,
    },
    /// Gas at or above 3 MPa: the dew test does not reach there, so a rich gas could be partly liquid unnoticed.
    DewTestNotApplied {
        /// Pressure asked for, kPa absolute.
        pressure_kpa: f64,
    },
    /// The gas is less than the given distance above its dew temperature: a cold rail or hose rains.
    NearDew {
        /// Dew temperature, C.
        dew_temperature_c: f64,
        /// How far above it the gas is, K.
        margin_k: f64,
    },
    /// Filled above the usual stop of 80 %.
    FilledAboveStop {
        /// Liquid volume over gross volume.
        fill_fraction: f64,
    },
    /// The liquid-full temperature lies within reach of a hot day or an exhaust.
    LiquidFullWithinReach {
        /// Temperature at which the container is liquid-full, C.
        liquid_full_temperature_c: f64,
    },
    /// The container is not liquid-full anywhere below the critical region.
    NeverLiquidFull,
    /// The pressure is above the usual settled working pressure of 20 MPa at 15 C.
    AboveWorkingPressure {
        /// Pressure settled to 15 C, kPa absolute.
        settled_15c_kpa: f64,
    },
    /// Water in the gas freezes at this regulator temperature.
    Freezing {
        /// Temperature after throttling without heat, C.
        throttled_c: f64,
    },
    /// After throttling some hydrocarbons would condense; the true temperature is a little higher.
    CondensesWhenThrottled {
        /// Dew temperature at the outlet pressure, C.
        dew_temperature_c: f64,
    },
}

impl fmt::Display for Caution {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TemperatureBeyondCheck { temperature_c, from_c, to_c } => {
                write!(f, "{temperature_c} C lies outside {from_c} to {to_c} C, where the method was checked")
            }
            Self::PropeneData { share, allow_percent } => {
                write!(f, "propene (mole fraction {share:.3}): allow {allow_percent} %")
            }
            Self::OctaneBeyondPropene { share } => {
                write!(f, "propene is {:.0} % by liquid volume; the octane sum holds to 20 %", share * 100.0)
            }
            Self::DewTestNotApplied { pressure_kpa } => {
                write!(f, "at {pressure_kpa} kPa the dew test does not apply; a rich gas could be partly liquid")
            }
            Self::NearDew { dew_temperature_c, margin_k } => {
                write!(f, "only {margin_k:.1} K above the dew temperature of {dew_temperature_c:.1} C")
            }
            Self::FilledAboveStop { fill_fraction } => {
                write!(f, "filled to {:.1} %, above the usual stop of 80 %", fill_fraction * 100.0)
            }
            Self::LiquidFullWithinReach { liquid_full_temperature_c } => {
                write!(
                    f,
                    "liquid-full at {liquid_full_temperature_c:.1} C; pressure then rises by about 0.3 to 0.6 MPa per kelvin"
                )
            }
            Self::NeverLiquidFull => write!(f, "not liquid-full at any temperature below the critical region"),
            Self::AboveWorkingPressure { settled_15c_kpa } => {
                write!(f, "settles to {settled_15c_kpa:.0} kPa at 15 C, above the usual 20 MPa")
            }
            Self::Freezing { throttled_c } => {
                write!(f, "without heat the gas leaves at {throttled_c:.0} C: water in it freezes")
            }
            Self::CondensesWhenThrottled { dew_temperature_c } => {
                write!(
                    f,
                    "throttled below the dew temperature of {dew_temperature_c:.0} C: some liquid forms, the true temperature is a little higher"
                )
            }
        }
    }
}
