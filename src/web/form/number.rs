//! A number as people write it, with or without a unit: "128 430", "2,1 bar", "−5 °C".
//!
//! What can be read two ways is not read at all: it comes back as [`NotRead::Ambiguous`] with both readings. Spaces
//! that our own pages print between groups are taken back.

/// A number and what was written behind it.
#[derive(Debug, Clone, PartialEq)]
pub struct Read {
    /// May be infinite when the exponent is out of this world; the caller's range refuses it.
    pub value: f64,
    /// The unit as it was typed; empty where none was.
    pub unit: String,
    /// Digits after the decimal sign.
    pub decimals: usize,
}

/// Why a text gives no number.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum NotRead {
    NotANumber,
    /// "1,200": a thousand two hundred, or one and a fifth.
    Ambiguous {
        thousands: String,
        decimal: String,
    },
}

/// Longest text worth reading as a number.
const MOST: usize = 60;

/// Reads a number and its unit.
///
/// # Errors
/// [`NotRead`] tells what stands in the way.
pub fn read(text: &str) -> Result<Read, NotRead> {
    if text.chars().count() > MOST {
        return Err(NotRead::NotANumber);
    }
    let plain: Vec<char> = text.trim().chars().map(plain_char).collect();
    let (sign, rest) = match plain.split_first() {
        Some(('-', rest)) => ("-", rest),
        Some(('+', rest)) => ("", rest),
        _ => ("", plain.as_slice()),
    };
    let body_end = end_of_body(rest);
    let (body, rest) = rest.split_at(body_end);
    let (exponent, rest) = rest.split_at(end_of_exponent(rest));
    let unit = rest.iter().collect::<String>().trim().to_owned();
    let plain_body = plain_decimal(body)?;
    let decimals = plain_body.split_once('.').map_or(0, |(_, fraction)| fraction.len());
    let exponent: String = exponent.iter().collect();
    let value = format!("{sign}{plain_body}{exponent}").parse::<f64>().map_err(|_| NotRead::NotANumber)?;
    Ok(Read { value, unit, decimals })
}

/// Every space, minus and digit that means the same becomes the plain one.
pub(super) fn plain_char(c: char) -> char {
    let digit = |first: char| char::from_digit(c as u32 - first as u32, 10).unwrap_or(c);
    match c {
        c if c.is_whitespace() => ' ',
        '\u{2212}' | '\u{fe63}' | '\u{ff0d}' => '-',
        '\u{2019}' | '\u{ff07}' | '\u{66c}' => '\'',
        '\u{66b}' => '.',
        '\u{660}'..='\u{669}' => digit('\u{660}'),
        '\u{6f0}'..='\u{6f9}' => digit('\u{6f0}'),
        '\u{ff10}'..='\u{ff19}' => digit('\u{ff10}'),
        c => c,
    }
}

/// Where digits and separators end. A space goes on only before exactly three digits, so that "800 1/min" ends at 800.
fn end_of_body(chars: &[char]) -> usize {
    let is_digit = |at: usize| chars.get(at).is_some_and(char::is_ascii_digit);
    let mut at = 0;
    while let Some(c) = chars.get(at) {
        let goes_on = match c {
            '0'..='9' | '.' | ',' => true,
            '\'' => is_digit(at + 1),
            ' ' => (1..=3).all(|step| is_digit(at + step)) && !is_digit(at + 4),
            _ => false,
        };
        if !goes_on {
            break;
        }
        at += 1;
    }
    at
}

/// "e3", "E-05"; anything else begins a unit.
fn end_of_exponent(chars: &[char]) -> usize {
    if !matches!(chars.first(), Some('e' | 'E')) {
        return 0;
    }
    let sign = usize::from(matches!(chars.get(1), Some('+' | '-')));
    let digits = chars.iter().skip(1 + sign).take_while(|c| c.is_ascii_digit()).count();
    if digits == 0 { 0 } else { 1 + sign + digits }
}

/// Digits and separators to "1234.5".
fn plain_decimal(body: &[char]) -> Result<String, NotRead> {
    let body: String = body.iter().collect();
    if !body.contains(|c: char| c.is_ascii_digit()) {
        return Err(NotRead::NotANumber);
    }
    let (commas, dots) = (body.matches(',').count(), body.matches('.').count());
    let spaced = body.contains([' ', '\'']);
    match (commas, dots) {
        (0, 0) => ungroup(&body),
        (0, 1) => fraction(&body, '.'),
        (1, 0) if !spaced && looks_grouped(&body) => {
            Err(NotRead::Ambiguous { thousands: body.replace(',', ""), decimal: body.replace(',', ".") })
        }
        (1, 0) => fraction(&body, ','),
        // Several of one kind can only be groups: "1,234,567".
        (_, 0) | (0, _) if !spaced => ungroup(&body),
        (1.., 1) if !spaced && body.rfind('.') > body.rfind(',') => fraction(&body, '.'),
        (1, 1..) if !spaced && body.rfind(',') > body.rfind('.') => fraction(&body, ','),
        _ => Err(NotRead::NotANumber),
    }
}

/// One comma with one to three digits before it, no leading nought, and three behind.
fn looks_grouped(body: &str) -> bool {
    body.split_once(',')
        .is_some_and(|(head, tail)| (1..=3).contains(&head.len()) && tail.len() == 3 && !head.starts_with('0'))
}

fn fraction(body: &str, sign: char) -> Result<String, NotRead> {
    let (head, tail) = body.split_once(sign).ok_or(NotRead::NotANumber)?;
    if !tail.chars().all(|c| c.is_ascii_digit()) {
        return Err(NotRead::NotANumber);
    }
    let head = if head.is_empty() { "0".to_owned() } else { ungroup(head)? };
    Ok(if tail.is_empty() { head } else { format!("{head}.{tail}") })
}

/// Takes the group signs out: one kind of sign, three digits in each group but the first.
fn ungroup(text: &str) -> Result<String, NotRead> {
    let Some(sign) = text.chars().find(|c| !c.is_ascii_digit()) else { return Ok(text.to_owned()) };
    let groups: Vec<&str> = text.split(sign).collect();
    let well_formed = groups.iter().enumerate().all(|(place, group)| {
        let fits = if place == 0 { (1..=3).contains(&group.len()) } else { group.len() == 3 };
        fits && group.chars().all(|c| c.is_ascii_digit())
    });
    if well_formed { Ok(groups.concat()) } else { Err(NotRead::NotANumber) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn reads(text: &str, value: f64, unit: &str) {
        let got = read(text);
        let Ok(got) = got else { panic!("{text:?} gave {got:?}") };
        assert!((got.value - value).abs() < 1e-12, "{text:?} gave {}", got.value);
        assert_eq!(got.unit, unit, "{text:?}");
    }

    #[track_caller]
    fn refuses(text: &str) {
        assert_eq!(read(text), Err(NotRead::NotANumber), "{text:?}");
    }

    #[test]
    fn plain_numbers() {
        reads("0", 0.0, "");
        reads(" 300.0 ", 300.0, "");
        reads("+5", 5.0, "");
        reads("-5", -5.0, "");
        reads("\u{2212}12.5", -12.5, "");
        reads(".5", 0.5, "");
        reads("5.", 5.0, "");
        reads("1.200", 1.2, "");
        reads("1e3", 1000.0, "");
        reads("2.5E-2", 0.025, "");
        reads("007", 7.0, "");
    }

    #[test]
    fn what_our_pages_print_is_taken_back() {
        reads("128\u{202f}430", 128_430.0, "");
        reads("128\u{a0}430\u{a0}km", 128_430.0, "km");
        reads("1\u{2009}598 cm³", 1598.0, "cm³");
        reads("\u{2212}1\u{202f}234.50", -1234.5, "");
        reads("1 200", 1200.0, "");
        reads("1 200,5", 1200.5, "");
        reads("1’200’000", 1_200_000.0, "");
    }

    #[test]
    fn a_comma_that_can_mean_two_things_is_questioned() {
        for (text, thousands, decimal) in
            [("1,200", "1200", "1.200"), ("12,345 km", "12345", "12.345"), ("-999,000", "999000", "999.000")]
        {
            let expected = NotRead::Ambiguous { thousands: thousands.into(), decimal: decimal.into() };
            assert_eq!(read(text), Err(expected), "{text}");
        }
    }

    #[test]
    fn a_comma_that_can_mean_only_one_thing_is_read() {
        reads("2,1", 2.1, "");
        reads("0,200", 0.2, "");
        reads(",250", 0.25, "");
        reads("1200,500", 1200.5, "");
        reads("1,2000", 1.2, "");
        reads("1,234,567", 1_234_567.0, "");
        reads("1.234.567", 1_234_567.0, "");
        reads("1,200.5", 1200.5, "");
        reads("1.200,5", 1200.5, "");
        reads("1,234,567.25", 1_234_567.25, "");
    }

    #[test]
    fn units_stand_behind_with_or_without_a_space() {
        reads("2.1 bar", 2.1, "bar");
        reads("2,1bar", 2.1, "bar");
        reads("20°C", 20.0, "°C");
        reads("6000 1/min", 6000.0, "1/min");
        reads("6000/min", 6000.0, "/min");
        reads("5 eggs", 5.0, "eggs");
        reads("5e", 5.0, "e");
    }

    #[test]
    fn digits_of_other_scripts_are_read() {
        reads("٣٫٥", 3.5, "");
        reads("１２０", 120.0, "");
    }

    #[test]
    fn what_is_no_number_is_refused() {
        for text in [
            "", " ", "bar", "NaN", "nan", "inf", "-inf", "Infinity", "--5", "1..2", "1,,2", "1.2.3", "1,20,000",
            "12,34,5", "1 200 30", "1,200,5", "1.200.5", "1.2,3.4", ".", ",", "-", "1 2.3,4", "0x10", "½",
        ] {
            match read(text) {
                Err(NotRead::NotANumber) => {}
                // "0x10" and "1 200 30" leave something that no unit is called; the form refuses that.
                Ok(read) => {
                    assert!(read.unit.parse::<crate::unit::Unit>().is_err() && !read.unit.is_empty(), "{text:?}");
                }
                other => panic!("{text:?} gave {other:?}"),
            }
        }
        refuses("NaN");
        refuses(&"9".repeat(MOST + 1));
        assert_eq!(read("1e400").map(|read| read.value), Ok(f64::INFINITY));
    }
}
