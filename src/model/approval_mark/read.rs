//! Reading a mark as people type it: blanks, hyphens and stars where they please, capitals or not.

use super::{ApprovalMark, ComponentClass, MarkForm, NotAMark, Regulation};

/// Longest text looked at; a mark is a line on a plate.
const LONGEST: usize = 200;

pub(super) fn mark(typed: &str) -> Result<ApprovalMark, NotAMark> {
    // Dashes of word processors count as hyphens.
    let plain = typed.replace(['\u{2010}', '\u{2011}', '\u{2012}', '\u{2013}', '\u{2014}', '\u{2212}'], "-");
    let text = plain.trim();
    if text.is_empty() {
        return Err(NotAMark::Empty);
    }
    let mut characters = text.chars();
    // The circled letters are what a camera's text recognition makes of the mark.
    let has_small_e = match characters.next() {
        Some('E' | '\u{24ba}') => false,
        Some('e' | '\u{24d4}') => true,
        _ => return Err(NotAMark::NoCountry),
    };
    let after_e = characters.as_str().trim_start();
    if !after_e.starts_with(|c: char| c.is_ascii_digit()) || text.len() > LONGEST {
        return Err(NotAMark::NoCountry);
    }
    let no_regulation = if has_small_e { NotAMark::EuDirective } else { NotAMark::NoRegulation };
    let (country_number, regulation, after) = country_and_regulation(after_e).ok_or(no_regulation)?;
    on_paper(after).or_else(|| on_part(after)).ok_or(NotAMark::NoNumber).map(|read| ApprovalMark {
        country_number,
        regulation,
        series: read.series.to_owned(),
        supplement: read.supplement.map(str::to_owned),
        number: read.number.to_owned(),
        extension: read.extension.map(str::to_owned),
        rest: read.rest.to_owned(),
        form: if read.extension.is_some() { MarkForm::OnPaper } else { MarkForm::OnPart },
        has_small_e,
    })
}

/// Two digits of country are tried before one, so that `E1167R` is the United Kingdom and `E167R` Germany.
fn country_and_regulation(text: &str) -> Option<(u8, Regulation, &str)> {
    [2, 1].into_iter().find_map(|digits| {
        let (country, rest) = split_digits(text, digits..=digits)?;
        let rest = rest.trim_start();
        let rest = rest.strip_prefix(['-', '*']).unwrap_or(rest).trim_start();
        let (regulation, rest) = [("67", Regulation::R67), ("110", Regulation::R110), ("115", Regulation::R115)]
            .into_iter()
            .find_map(|(number, regulation)| Some((regulation, rest.strip_prefix(number)?)))?;
        let rest = rest.trim_start().strip_prefix(['R', 'r'])?;
        Some((country.parse().ok()?, regulation, rest))
    })
}

#[derive(Debug, Clone, Copy)]
struct Read<'a> {
    series: &'a str,
    supplement: Option<&'a str>,
    number: &'a str,
    extension: Option<&'a str>,
    rest: &'a str,
}

/// `-011234 class 1`: series and number run together; the run of digits must end there.
fn on_part(text: &str) -> Option<Read<'_>> {
    let text = text.trim_start();
    let text = text.strip_prefix('-').unwrap_or(text).trim_start();
    let (series, after) = split_digits(text, 2..=2)?;
    let (number, rest) = split_digits(after.trim_start(), 3..=6)?;
    if rest.starts_with(|c: char| c.is_alphanumeric() || c == '_') {
        return None;
    }
    Some(Read { series, supplement: None, number, extension: None, rest: rest.trim() })
}

/// `01/15*1234*00`.
fn on_paper(text: &str) -> Option<Read<'_>> {
    let (series, after) = split_digits(text.trim_start(), 2..=2)?;
    let (supplement, after) = split_digits(after.strip_prefix('/')?, 2..=2)?;
    let (number, after) = split_digits(after.strip_prefix('*')?, 1..=6)?;
    let (extension, after) = split_digits(after.strip_prefix('*')?, 2..=2)?;
    after.trim().is_empty().then_some(Read {
        series,
        supplement: Some(supplement),
        number,
        extension: Some(extension),
        rest: "",
    })
}

/// The most leading digits up to the end of `count`; `None` below its start.
fn split_digits(text: &str, count: std::ops::RangeInclusive<usize>) -> Option<(&str, &str)> {
    let found = text.bytes().take(*count.end()).take_while(u8::is_ascii_digit).count();
    count.contains(&found).then(|| text.split_at(found))
}

/// The text claims to be a class, whether or not there is such a class.
pub(super) fn names_a_class(rest: &str) -> bool {
    let upper = rest.to_ascii_uppercase();
    upper.starts_with("CL") || upper.starts_with("CNG")
}

/// Classes by Regulation, from memory: 0, 1, 2, 2A, 3 under No. 67, 0 to 6 and CNG-1 to CNG-4 under No. 110.
pub(super) fn class(rest: &str, regulation: Regulation) -> Option<ComponentClass> {
    use ComponentClass as C;
    let upper = rest.to_ascii_uppercase();
    let bare = ["CLASS", "CL."].iter().find_map(|word| upper.strip_prefix(word)).unwrap_or(&upper);
    let bare: String = bare.chars().filter(|c| !matches!(c, ' ' | '-' | '.' | ':')).collect();
    match (bare.as_str(), regulation) {
        ("0", Regulation::R67 | Regulation::R110) => Some(C::Class0),
        ("1", Regulation::R67 | Regulation::R110) => Some(C::Class1),
        ("2", Regulation::R67 | Regulation::R110) => Some(C::Class2),
        ("2A", Regulation::R67) => Some(C::Class2A),
        ("3", Regulation::R67 | Regulation::R110) => Some(C::Class3),
        ("4", Regulation::R110) => Some(C::Class4),
        ("5", Regulation::R110) => Some(C::Class5),
        ("6", Regulation::R110) => Some(C::Class6),
        ("CNG1", Regulation::R110) => Some(C::Cng1),
        ("CNG2", Regulation::R110) => Some(C::Cng2),
        ("CNG3", Regulation::R110) => Some(C::Cng3),
        ("CNG4", Regulation::R110) => Some(C::Cng4),
        _ => None,
    }
}
