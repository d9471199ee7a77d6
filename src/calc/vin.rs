//! Vehicle identification numbers: structure, alphabet, check digit, region, a hint at the model year.
//!
//! A wrong check digit warns and never refuses: outside North America and China position 9 is the maker's to use.
//!
//! Sources: ISO 3779 and ISO 3780 (structure; regions from memory), 49 CFR 565.15 (check digit, model year).

use serde::{Deserialize, Serialize};

use super::{Basis, Source};

/// What [`check`] rests on.
pub const BASIS: Basis = Basis {
    key: "vin",
    method: "length, alphabet and last four characters; weighted sum of the characters modulo 11; region by the first",
    formulas: &["d = sum(w_i v_i) mod 11, 10 written X"],
    relative_uncertainty: None,
    sources: &[Source::Iso3779, Source::Iso3780, Source::Cfr565],
};

/// What keeps a text from being a vehicle identification number.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Malformed {
    /// Not 17 characters.
    Length,
    /// A character other than a digit or a capital without I, O and Q.
    Alphabet,
    /// One of the last four is not a digit.
    LastFour,
}

/// Region of the maker, by the first character.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Region {
    /// A to H.
    Africa,
    /// J to R. Some letters of the neighbours have been re-allotted to Asia since.
    Asia,
    /// S to Z.
    Europe,
    /// 1 to 5.
    NorthAmerica,
    /// 6 and 7.
    Oceania,
    /// 8 and 9.
    SouthAmerica,
    /// 0 is unused, and a malformed number tells nothing.
    Unknown,
}

/// What the characters of a number tell.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Checked {
    /// The number as it is kept: capitals, without the blanks and hyphens people group it with.
    pub vin: String,
    /// Right length, alphabet and last four.
    pub well_formed: bool,
    /// Why not, where not.
    pub malformed: Option<Malformed>,
    /// What position 9 would have to be, `0` to `9` or `X`; `None` for a malformed number.
    pub check_digit_expected: Option<char>,
    /// Position 9 is that character.
    pub check_digit_ok: bool,
    /// The region's law asks for the check digit, so that a mismatch weighs more than elsewhere.
    pub check_digit_compulsory: bool,
    /// Region by the first character.
    pub region: Region,
    /// Third character 9: a maker of few vehicles, told apart only by positions 12 to 14.
    pub small_maker: bool,
    /// Model year as North America codes it; elsewhere position 10 may mean anything, hence only there.
    pub model_year: Option<u16>,
}

/// Reads a number as typed.
///
/// ```
/// use fuelwright::calc::vin;
/// let checked = vin::check("1m8gdm9a xkp042788");
/// assert!(checked.well_formed && checked.check_digit_ok);
/// assert_eq!(checked.check_digit_expected, Some('X'));
/// ```
pub fn check(typed: &str) -> Checked {
    let vin: String =
        typed.chars().filter(|c| !c.is_whitespace() && *c != '-').map(|c| c.to_ascii_uppercase()).collect();
    let malformed = malformed(&vin);
    let characters: Vec<char> = if malformed.is_none() { vin.chars().collect() } else { Vec::new() };
    let region = characters.first().map_or(Region::Unknown, |first| region(*first));
    let check_digit_expected = check_digit(&characters);
    Checked {
        well_formed: malformed.is_none(),
        malformed,
        check_digit_expected,
        check_digit_ok: check_digit_expected.is_some() && check_digit_expected == characters.get(8).copied(),
        check_digit_compulsory: region == Region::NorthAmerica || characters.first() == Some(&'L'),
        region,
        small_maker: characters.get(2) == Some(&'9'),
        model_year: (region == Region::NorthAmerica).then(|| model_year(&characters)).flatten(),
        vin,
    }
}

fn malformed(vin: &str) -> Option<Malformed> {
    if vin.chars().count() != 17 {
        Some(Malformed::Length)
    } else if !vin.chars().all(|c| value(c).is_some()) {
        Some(Malformed::Alphabet)
    } else if !vin.chars().skip(13).all(|c| c.is_ascii_digit()) {
        Some(Malformed::LastFour)
    } else {
        None
    }
}

/// Number a character stands for: 49 CFR 565.15(c), table III. I, O and Q have none.
fn value(c: char) -> Option<u32> {
    match c {
        '0'..='9' => c.to_digit(10),
        'A' | 'J' => Some(1),
        'B' | 'K' | 'S' => Some(2),
        'C' | 'L' | 'T' => Some(3),
        'D' | 'M' | 'U' => Some(4),
        'E' | 'N' | 'V' => Some(5),
        'F' | 'W' => Some(6),
        'G' | 'P' | 'X' => Some(7),
        'H' | 'Y' => Some(8),
        'R' | 'Z' => Some(9),
        _ => None,
    }
}

/// Weights of the positions: 49 CFR 565.15(c), table IV.
const WEIGHTS: [u32; 17] = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2];

/// Remainder of the weighted sum by 11; ten is written X. `None` unless all 17 characters count.
fn check_digit(characters: &[char]) -> Option<char> {
    if characters.len() != WEIGHTS.len() {
        return None;
    }
    let sum: Option<u32> = characters.iter().zip(WEIGHTS).map(|(c, weight)| Some(value(*c)? * weight)).sum();
    match sum? % 11 {
        10 => Some('X'),
        digit => char::from_digit(digit, 10),
    }
}

/// ISO 3780, from memory.
fn region(first: char) -> Region {
    match first {
        'A'..='H' => Region::Africa,
        'J'..='R' => Region::Asia,
        'S'..='Z' => Region::Europe,
        '1'..='5' => Region::NorthAmerica,
        '6' | '7' => Region::Oceania,
        '8' | '9' => Region::SouthAmerica,
        _ => Region::Unknown,
    }
}

/// Year codes from 1980, one a year, starting over after thirty: 49 CFR 565.15(d), from memory.
const YEARS: &str = "ABCDEFGHJKLMNPRSTVWXY123456789";

/// Position 7 tells the two rounds apart: a digit before 2010, a letter from then on (light vehicles).
fn model_year(characters: &[char]) -> Option<u16> {
    let code = characters.get(9)?;
    let place = YEARS.chars().position(|c| c == *code)?;
    let first = if characters.get(6)?.is_ascii_digit() { 1980 } else { 2010 };
    Some(first + u16::try_from(place).ok()?)
}
