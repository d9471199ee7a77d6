//! How wide the columns of a table are.

use super::{GAP, Table};
use crate::papers::PaperError;
use crate::papers::fonts;
use crate::papers::ink::{COLUMN, Style};
use crate::papers::sheet::WIDTH;

impl Table {
    /// Widths of the columns: each as wide as its widest text if they all fit; else the wide ones give, down to their
    /// longest word.
    pub(super) fn widths(&self) -> Result<Vec<f32>, PaperError> {
        let room = WIDTH - GAP * (self.columns.len().max(1) - 1) as f32;
        let mut wanted = Vec::new();
        let mut least = Vec::new();
        for (index, column) in self.columns.iter().enumerate() {
            let mut texts: Vec<(&str, Style)> = vec![(&column.head, COLUMN)];
            texts.extend(
                self.rows.iter().flat_map(|row| row.cells[index].0.iter().map(|(text, style)| (text.as_str(), *style))),
            );
            let (mut wide, mut narrow): (f32, f32) = (0.0, 0.0);
            for (text, style) in texts {
                wide = wide.max(fonts::width(&fonts::clean(text).replace('\n', " "), style.weight, style.size)?);
                narrow = narrow.max(fonts::longest_piece(text, style.weight, style.size)?);
            }
            wanted.push(wide + 0.1);
            least.push(narrow.min(room * 0.4) + 0.1);
        }
        Ok(share(&wanted, &least, room))
    }
}

/// Shares `room` out: what is left over goes to every column alike, what is missing is taken where there is most to give.
/// A column never goes below its longest word, unless those words alone are too wide: then the longest are broken.
fn share(wanted: &[f32], least: &[f32], room: f32) -> Vec<f32> {
    let total: f32 = wanted.iter().sum();
    if total <= room {
        let spare = (room - total) / wanted.len().max(1) as f32;
        return wanted.iter().map(|width| width + spare).collect();
    }
    if least.iter().sum::<f32>() >= room {
        return capped(least, &vec![0.0; least.len()], room);
    }
    capped(wanted, least, room)
}

/// A cap on every column, lowered until they fit, but no column below its least.
fn capped(wanted: &[f32], least: &[f32], room: f32) -> Vec<f32> {
    let under = |cap: f32| wanted.iter().zip(least).map(move |(w, l)| w.min(cap).max(*l));
    let (mut low, mut high) = (0.0_f32, room);
    for _ in 0..40 {
        let cap = low.midpoint(high);
        if under(cap).sum::<f32>() > room { high = cap } else { low = cap }
    }
    under(low).collect()
}
