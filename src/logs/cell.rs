//! What a cell says: nothing, a number by the file's decimal sign, or a number with a unit behind it.
//!
//! `1,200` is a thousand two hundred in a file whose decimal sign is the point, and one and a fifth in a file whose
//! decimal sign is the comma: the file decides, never the cell. Thousands signs are taken only in groups of three.

/// A cell that holds no value.
pub(super) fn is_gap(cell: &str) -> bool {
    match cell.as_bytes() {
        [] => true,
        [first, ..] if first.is_ascii_digit() => false,
        _ => {
            cell.bytes().all(|byte| byte == b'-')
                || matches!(cell, "—" | "–" | "?" | "*")
                || ["n/a", "na", "n.a.", "null", "none", "#n/a", "#nv", "no data"]
                    .iter()
                    .any(|word| cell.eq_ignore_ascii_case(word))
        }
    }
}

/// The finite number that a cell holds, and nothing else.
pub(super) fn number(cell: &str, decimal: char) -> Option<f64> {
    plain(cell.as_bytes(), decimal as u8).or_else(|| dressed(cell, decimal))
}

/// A number and the unit behind it; the unit is empty for a bare number.
pub(super) fn number_and_unit(cell: &str, decimal: char) -> Option<(f64, &str)> {
    if let Some(bare) = number(cell, decimal) {
        return Some((bare, ""));
    }
    let (body, unit) = cell.split_at(body_length(cell));
    let unit = unit.trim();
    if unit.is_empty() || unit.len() > LONGEST_UNIT {
        return None;
    }
    Some((number(body.trim_end(), decimal)?, unit))
}

const LONGEST_UNIT: usize = 24;

/// Digits and one decimal sign: nearly every cell of a log. Exact, since both parts of the division are whole numbers
/// that a double holds.
fn plain(cell: &[u8], decimal: u8) -> Option<f64> {
    let (is_negative, digits) = match cell {
        [b'-', rest @ ..] => (true, rest),
        rest => (false, rest),
    };
    // Fifteen digits and the sign between them.
    if digits.is_empty() || digits.len() > 16 {
        return None;
    }
    let mut whole = 0_u64;
    let mut behind = None;
    for (at, &byte) in digits.iter().enumerate() {
        if byte.is_ascii_digit() {
            whole = whole * 10 + u64::from(byte - b'0');
        } else if byte == decimal && behind.is_none() && at > 0 {
            behind = Some(digits.len() - at - 1);
        } else {
            return None;
        }
    }
    if whole >= 1_000_000_000_000_000 {
        return None;
    }
    let value = whole as f64 / POWERS[behind.unwrap_or(0)];
    Some(if is_negative { -value } else { value })
}

const POWERS: [f64; 16] = [1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15];

/// Signs, exponents, thousands signs, long fractions.
fn dressed(cell: &str, decimal: char) -> Option<f64> {
    const LONGEST: usize = 64;
    if cell.len() > LONGEST {
        return None;
    }
    let cell = cell.replace('\u{2212}', "-");
    let (sign, body) = match cell.strip_prefix(['+', '-']) {
        Some(body) => (if cell.starts_with('-') { "-" } else { "" }, body),
        None => ("", cell.as_str()),
    };
    let (body, exponent) = body.split_once(['e', 'E']).map_or((body, None), |(body, behind)| (body, Some(behind)));
    let (whole, fraction) = body.split_once(decimal).unwrap_or((body, ""));
    let whole = ungrouped(whole, decimal)?;
    let is_digits = |text: &str| text.bytes().all(|byte| byte.is_ascii_digit());
    if !is_digits(fraction) || (whole.is_empty() && fraction.is_empty()) {
        return None;
    }
    let exponent = exponent.unwrap_or("0");
    let digits = exponent.strip_prefix(['+', '-']).unwrap_or(exponent);
    if digits.is_empty() || !is_digits(digits) {
        return None;
    }
    let value: f64 = format!("{sign}{whole}.{fraction}e{exponent}").replace(".e", ".0e").parse().ok()?;
    value.is_finite().then_some(value)
}

/// The digits of a whole part; groups must be of three and parted alike.
fn ungrouped(whole: &str, decimal: char) -> Option<String> {
    if whole.bytes().all(|byte| byte.is_ascii_digit()) {
        return Some(whole.to_owned());
    }
    let sign = whole.chars().find(|c| !c.is_ascii_digit())?;
    let is_sign = matches!(sign, ' ' | '\u{a0}' | '\u{202f}' | '\u{2009}' | '\'' | '\u{2019}')
        || (sign == ',' && decimal == '.')
        || (sign == '.' && decimal == ',');
    let mut groups = whole.split(sign);
    let first = groups.next()?;
    let is_whole = (1..=3).contains(&first.len())
        && first.bytes().all(|byte| byte.is_ascii_digit())
        && groups.all(|group| group.len() == 3 && group.bytes().all(|byte| byte.is_ascii_digit()));
    (is_sign && is_whole).then(|| whole.replace(sign, ""))
}

/// Length of the part of a cell that can belong to a number.
fn body_length(cell: &str) -> usize {
    let mut has_digit = false;
    let mut rest = cell.char_indices().peekable();
    while let Some((at, c)) = rest.next() {
        let next = rest.peek().map(|(_, c)| *c);
        let is_body = match c {
            '0'..='9' => {
                has_digit = true;
                true
            }
            '.' | ',' | '\'' | '+' | '-' | '\u{2212}' => true,
            'e' | 'E' => has_digit && next.is_some_and(|c| c.is_ascii_digit() || c == '+' || c == '-'),
            // A group of thousands goes on; anything else behind a blank is a unit.
            c if c.is_whitespace() => {
                let behind = &cell[at + c.len_utf8()..];
                let digits = behind.chars().take_while(char::is_ascii_digit).count();
                digits == 3 && !behind[3..].starts_with('/')
            }
            _ => false,
        };
        if !is_body {
            return at;
        }
    }
    cell.len()
}

/// What a cell tells about the file's decimal sign.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub(super) struct Signs {
    /// Cells that can only be read with a point.
    pub(super) point: usize,
    /// Cells that can only be read with a comma.
    pub(super) comma: usize,
    /// Cells such as `1,200`.
    pub(super) either_comma: usize,
}

impl Signs {
    /// Counts what `cell` tells.
    pub(super) fn count(&mut self, cell: &str) {
        let body = &cell[..body_length(cell)];
        if !body.contains(['.', ',']) {
            return;
        }
        match (number(body, '.').is_some(), number(body, ',').is_some()) {
            (true, false) => self.point += 1,
            (false, true) => self.comma += 1,
            (true, true) if body.contains(',') => self.either_comma += 1,
            _ => {}
        }
    }

    /// The file's decimal sign. Where every cell could be either, the lone sign is the decimal one: tools that log write no
    /// thousands signs (common practice).
    pub(super) fn decimal(self) -> char {
        let is_comma = if self.point == 0 && self.comma == 0 { self.either_comma > 0 } else { self.comma > self.point };
        if is_comma { ',' } else { '.' }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_thousand_two_hundred_or_one_and_a_fifth_is_said_by_the_file() {
        assert_eq!(number("1,200", '.'), Some(1200.0));
        assert_eq!(number("1,200", ','), Some(1.2));
        assert_eq!(number("1.200", ','), Some(1200.0));
        assert_eq!(number("1.200", '.'), Some(1.2));
        assert_eq!(number("1.234.567,5", ','), Some(1_234_567.5));
        assert_eq!(number("1 234.5", '.'), Some(1234.5));
        for wrong in ["1,2", "1,20", "1,2000", ",200", "12,34,567", "1,200 300"] {
            assert_eq!(number(wrong, '.'), None, "{wrong}");
        }
    }

    #[test]
    fn signs_exponents_and_bare_fractions_are_numbers() {
        for (text, value) in [
            ("-3.5", -3.5),
            ("\u{2212}3.5", -3.5),
            ("+7", 7.0),
            (".5", 0.5),
            ("5.", 5.0),
            ("1.5E-2", 0.015),
            ("007", 7.0),
        ] {
            assert_eq!(number(text, '.'), Some(value), "{text}");
        }
        assert_eq!(number("2,5e3", ','), Some(2500.0));
        assert_eq!(number("0.1234567890123456789", '.'), Some(0.123_456_789_012_345_68));
    }

    #[test]
    fn what_is_not_finite_or_no_number_is_none() {
        for text in
            ["NaN", "nan", "inf", "-Infinity", "1e400", "", "-", "+", ".", "e5", "1e", "0x10", "1..2", "--1", "1\0"]
        {
            assert_eq!(number(text, '.'), None, "{text}");
        }
    }

    #[test]
    fn a_plain_number_is_the_nearest_double() {
        for text in ["0.1", "3.285", "850", "99999999.9999999", "123456789012345", "0.000001"] {
            assert_eq!(number(text, '.'), text.parse().ok(), "{text}");
        }
    }

    #[test]
    fn a_unit_may_stand_behind() {
        for (text, value, unit) in [
            ("850 rpm", 850.0, "rpm"),
            ("850rpm", 850.0, "rpm"),
            ("850 1/min", 850.0, "1/min"),
            ("-3.1 %", -3.1, "%"),
            ("1 200 rpm", 1200.0, "rpm"),
            ("3.5e0 ms", 3.5, "ms"),
            ("90 °C", 90.0, "°C"),
        ] {
            assert_eq!(number_and_unit(text, '.'), Some((value, unit)), "{text}");
        }
        assert_eq!(number_and_unit("Gas", '.'), None);
        assert_eq!(number_and_unit("12 units of something very long", '.'), None);
    }

    #[test]
    fn the_decimal_sign_is_the_one_that_most_cells_need() {
        let of = |cells: &[&str]| {
            let mut signs = Signs::default();
            for cell in cells {
                signs.count(cell);
            }
            signs.decimal()
        };
        assert_eq!(of(&["1,5", "1.200", "3,25"]), ',');
        assert_eq!(of(&["1.5", "1,200"]), '.');
        assert_eq!(of(&["1,200", "3,400"]), ',');
        assert_eq!(of(&["1.200"]), '.');
        assert_eq!(of(&["850", "-"]), '.');
    }

    #[test]
    fn dashes_and_words_for_nothing_are_gaps() {
        for gap in ["", "-", "--", "---", "N/A", "n/a", "NULL", "#N/A", "—"] {
            assert!(is_gap(gap), "{gap}");
        }
        for value in ["0", "-1", "NaN", "off", "no"] {
            assert!(!is_gap(value), "{value}");
        }
    }
}
