//! Comma-separated text (RFC 4180) whose cells no spreadsheet takes for a formula.

/// What makes a spreadsheet reckon a cell instead of showing it, at its beginning: the signs of a formula, their
/// full-width twins, and the control characters that some programs drop before they look (common practice).
const BEGINS_A_FORMULA: &[char] = &['=', '+', '-', '@', '\t', '\r', '\n', '\0', '＝', '＋', '－', '＠'];

/// A cell as it is written: with an apostrophe before it where it would be taken for a formula, else as it is.
///
/// ```
/// use fuelwright::exchange::spreadsheet::guarded;
/// assert_eq!(guarded("=HYPERLINK(1)"), "'=HYPERLINK(1)");
/// assert_eq!(guarded("C-2026-0001"), "C-2026-0001");
/// ```
pub fn guarded(cell: &str) -> String {
    if cell.starts_with(BEGINS_A_FORMULA) { format!("'{cell}") } else { cell.to_owned() }
}

/// Rows as comma-separated text, UTF-8, lines ended by CR LF, every cell guarded. A cell with a comma, a quotation mark or a
/// line break stands in quotation marks (RFC 4180, section 2).
pub fn written<'a>(rows: impl IntoIterator<Item = &'a [String]>) -> String {
    let mut text = String::new();
    for row in rows {
        let cells: Vec<String> = row.iter().map(|cell| quoted(&guarded(cell))).collect();
        text.push_str(&cells.join(","));
        text.push_str("\r\n");
    }
    text
}

fn quoted(cell: &str) -> String {
    if cell.contains([',', '"', '\r', '\n']) { format!("\"{}\"", cell.replace('"', "\"\"")) } else { cell.to_owned() }
}
