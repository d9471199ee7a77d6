//! Country numbers of the E mark.
//!
//! Source: UN 1958 Agreement, distinguishing numbers of the contracting parties; rows said so are from memory. Numbers of
//! 65 and above went to newer members and are not listed: a number outside the table is kept and doubted, not refused.

use serde::Serialize;

/// The country behind a number.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
pub struct ApprovalCountry {
    /// Number beside the E.
    pub number: u8,
    /// ISO 3166-1 code of two letters; `EU` for the European Union.
    pub code: &'static str,
    /// Read in a published list; otherwise from memory.
    pub is_checked: bool,
}

/// The country with this number, where known.
pub fn country(number: u8) -> Option<ApprovalCountry> {
    let checked = CHECKED.iter().map(|row| (row, true));
    let recalled = RECALLED.iter().map(|row| (row, false));
    checked
        .chain(recalled)
        .find(|((listed, _), _)| *listed == number)
        .map(|(&(number, code), is_checked)| ApprovalCountry { number, code, is_checked })
}

const CHECKED: [(u8, &str); 51] = [
    (1, "DE"),
    (2, "FR"),
    (3, "IT"),
    (4, "NL"),
    (5, "SE"),
    (6, "BE"),
    (7, "HU"),
    (8, "CZ"),
    (9, "ES"),
    (10, "RS"),
    (11, "GB"),
    (12, "AT"),
    (13, "LU"),
    (14, "CH"),
    (16, "NO"),
    (17, "FI"),
    (18, "DK"),
    (19, "RO"),
    (20, "PL"),
    (21, "PT"),
    (22, "RU"),
    (23, "GR"),
    (24, "IE"),
    (25, "HR"),
    (26, "SI"),
    (27, "SK"),
    (28, "BY"),
    (29, "EE"),
    (30, "MD"),
    (31, "BA"),
    (32, "LV"),
    (34, "BG"),
    (35, "KZ"),
    (36, "LT"),
    (37, "TR"),
    (39, "AZ"),
    (40, "MK"),
    (42, "EU"),
    (43, "JP"),
    (45, "AU"),
    (46, "UA"),
    (47, "ZA"),
    (48, "NZ"),
    (49, "CY"),
    (50, "MT"),
    (51, "KR"),
    (52, "MY"),
    (53, "TH"),
    (56, "ME"),
    (58, "TN"),
    (62, "EG"),
];

/// From memory.
const RECALLED: [(u8, &str); 6] = [(54, "AL"), (55, "AM"), (57, "SM"), (60, "GE"), (63, "NG"), (64, "PK")];
