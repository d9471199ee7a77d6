//! A QR code (ISO/IEC 18004) as rectangles, one for each run of dark modules, so that no hairlines show between them.

use qrcode::{Color, EcLevel, QrCode};

use super::PaperError;
use super::ink::Ink;
use super::sheet::Sheet;

/// Draws a code for `data` into a square of `side` points; `x` and `y` are its upper left corner. Around it the caller
/// leaves four modules white (ISO/IEC 18004, 5.3.8): an eighth of the side is always enough.
pub fn draw(sheet: &mut Sheet, data: &str, x: f32, y: f32, side: f32, alt: &str) -> Result<(), PaperError> {
    let code = QrCode::with_error_correction_level(data, EcLevel::M).map_err(|_| PaperError::Code)?;
    let count = code.width();
    let module = side / count as f32;
    let at = |place: usize| place as f32 * module;
    let colors = code.to_colors();
    let mut rectangles = Vec::new();
    for (row, line) in colors.chunks(count).enumerate() {
        let mut column = 0;
        while column < count {
            let run = line[column..].iter().take_while(|color| **color == Color::Dark).count();
            if run > 0 {
                rectangles.push([x + at(column), y + at(row), run as f32 * module, module]);
            }
            column += run.max(1);
        }
    }
    sheet.figure(&rectangles, alt, Ink::Fact);
    Ok(())
}
