//! Currencies: codes, and the digits of their minor unit (ISO 4217).

use std::fmt;
use std::str::FromStr;

/// Codes in use (ISO 4217, list one, from memory). Funds, metals and codes for testing are left out: nobody pays a
/// workshop in them.
const CODES: &str = "AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BHD BIF BMD BND BOB BRL BSD BTN BWP BYN \
BZD CAD CDF CHF CLP CNY COP CRC CUP CVE CZK DJF DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GNF GTQ GYD \
HKD HNL HTG HUF IDR ILS INR IQD IRR ISK JMD JOD JPY KES KGS KHR KMF KPW KRW KWD KYD KZT LAK LBP LKR LRD LSL LYD MAD \
MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD OMR PAB PEN PGK PHP PKR PLN PYG QAR RON \
RSD RUB RWF SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TND TOP TRY TTD TWD TZS UAH UGX \
USD UYU UZS VED VES VND VUV WST XAF XCD XCG XOF XPF YER ZAR ZMW ZWG";

/// How many digits a currency's minor unit takes (ISO 4217, list one; the exceptions from two).
pub const fn minor_digits(code: &str) -> u8 {
    match code.as_bytes() {
        b"BIF" | b"CLP" | b"DJF" | b"GNF" | b"ISK" | b"JPY" | b"KMF" | b"KRW" | b"PYG" | b"RWF" | b"UGX" | b"VND"
        | b"VUV" | b"XAF" | b"XOF" | b"XPF" => 0,
        b"BHD" | b"IQD" | b"JOD" | b"KWD" | b"LYD" | b"OMR" | b"TND" => 3,
        _ => 2,
    }
}

/// So many smallest parts as plain digits with a point, `digits` of them behind it: "1480.00".
pub fn fixed(parts: i64, digits: u8) -> String {
    let (sign, whole) = (if parts < 0 { "-" } else { "" }, parts.unsigned_abs());
    let scale = 10_u64.pow(u32::from(digits));
    match digits {
        0 => format!("{sign}{whole}"),
        _ => format!("{sign}{}.{:0width$}", whole / scale, whole % scale, width = usize::from(digits)),
    }
}

/// A currency that is in use.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Currency(&'static str);

/// A text that is the code of no currency in use.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NoCurrency;

impl Currency {
    /// Where a new shop starts.
    pub const EUR: Self = Self("EUR");

    /// Three letters.
    pub const fn code(self) -> &'static str {
        self.0
    }

    /// Digits of its minor unit.
    pub const fn minor_digits(self) -> u8 {
        minor_digits(self.0)
    }
}

impl FromStr for Currency {
    type Err = NoCurrency;

    fn from_str(text: &str) -> Result<Self, NoCurrency> {
        CODES.split_whitespace().find(|code| *code == text).map(Self).ok_or(NoCurrency)
    }
}

impl TryFrom<String> for Currency {
    type Error = NoCurrency;

    fn try_from(text: String) -> Result<Self, NoCurrency> {
        text.parse()
    }
}

impl fmt::Display for Currency {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.0)
    }
}

impl fmt::Display for NoCurrency {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("the code of a currency is wanted, three letters as in ISO 4217")
    }
}

impl std::error::Error for NoCurrency {}

#[cfg(test)]
mod tests {
    use super::*;

    /// ISO 4217, list one, column "minor unit".
    #[test]
    fn minor_digits_are_those_of_the_standard() {
        for (code, digits) in [("EUR", 2), ("GBP", 2), ("PLN", 2), ("TRY", 2), ("JPY", 0), ("KRW", 0), ("KWD", 3)] {
            assert_eq!(code.parse::<Currency>().map(Currency::minor_digits), Ok(digits), "{code}");
        }
    }

    #[test]
    fn a_code_that_no_currency_has_is_none() {
        for text in ["", "eur", "ERU", "XXX", "XAU", "EU", "EUR "] {
            assert_eq!(text.parse::<Currency>(), Err(NoCurrency), "{text}");
        }
        assert!(CODES.split_whitespace().all(|code| code.len() == 3 && code.parse::<Currency>().is_ok()));
    }
}
