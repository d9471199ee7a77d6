//! Facts: names and values in two columns, a long value over the whole line.

use super::PaperError;
use super::fonts;
use super::ink::{CELL, SMALL, Style};
use super::sheet::{LEFT, Sheet, WIDTH, fits};
use super::tags::Role;

/// Draws names and values under a ruled heading; nothing when no pair has a value.
pub fn section(sheet: &mut Sheet, heading: &str, pairs: &[(String, String)]) -> Result<(), PaperError> {
    if pairs.iter().all(|(_, value)| value.is_empty()) {
        return Ok(());
    }
    sheet.section(heading, CELL.leading() * 3.0)?;
    facts(sheet, pairs)?;
    sheet.end_section();
    Ok(())
}

/// Draws names and values: two pairs a line, a long value over the whole line. Pairs without a value are left out.
pub fn facts(sheet: &mut Sheet, pairs: &[(String, String)]) -> Result<(), PaperError> {
    let pairs: Vec<_> = pairs.iter().filter(|(_, value)| !value.is_empty()).collect();
    let half = WIDTH / 2.0;
    let room = half - names_width(&pairs)? - 8.0;
    let is_short = |at: usize| pairs.get(at).map_or(Ok(false), |(_, v)| fits(v, CELL.weight, CELL.size, room * 1.9));
    let mut lines = Vec::new();
    let mut index = 0;
    while index < pairs.len() {
        let shown = if is_short(index)? && is_short(index + 1)? { 2 } else { 1 };
        lines.push((&pairs[index..index + shown], is_short(index)?));
        index += shown;
    }
    // Names at the right are often shorter than those at the left; their values then have more room.
    let column = |place: usize| -> Vec<&(String, String)> {
        lines.iter().filter_map(|(line, _)| line.get(place).copied()).collect()
    };
    let names = [names_width(&column(0))?, names_width(&column(1))?];
    sheet.tags.open(Role::L);
    for (line, is_half) in &lines {
        let mut columns = Vec::new();
        for ((name, value), names) in line.iter().zip(names) {
            let width = if *is_half { half - names - 8.0 } else { WIDTH - names };
            let style = fonts::fitted(value, CELL, width)?;
            columns.push(Pair {
                name: fonts::wrap(name, SMALL.weight, SMALL.size, names - 6.0)?,
                value: fonts::wrap(value, style.weight, style.size, width)?,
                style,
            });
        }
        draw_pairs(sheet, &columns, names, half)?;
    }
    sheet.tags.close();
    Ok(())
}

fn names_width(pairs: &[&(String, String)]) -> Result<f32, PaperError> {
    let mut widest: f32 = 50.0;
    for (name, _) in pairs {
        widest = widest.max(fonts::width(name, SMALL.weight, SMALL.size)? + 10.0);
    }
    Ok(widest.min(132.0))
}

/// Lines of a name and of its value, and how the value is set.
struct Pair {
    name: Vec<String>,
    value: Vec<String>,
    style: Style,
}

fn draw_pairs(sheet: &mut Sheet, columns: &[Pair], names: [f32; 2], half: f32) -> Result<(), PaperError> {
    let tall = columns.iter().map(|pair| pair.name.len().max(pair.value.len())).max().unwrap_or(0);
    sheet.keep(CELL.leading() * tall.min(8) as f32);
    if tall > 8 {
        // One long text: line by line, so that it can break across pages.
        return draw_long(sheet, columns, names[0]);
    }
    for (place, Pair { name, value, style }) in columns.iter().enumerate() {
        let x = LEFT + half * place as f32;
        sheet.tags.open(Role::LI);
        for (role, lines, style, indent) in [(Role::Lbl, name, SMALL, 0.0), (Role::LBody, value, *style, names[place])]
        {
            sheet.tags.open(role);
            for (row, line) in lines.iter().enumerate() {
                sheet.put(x + indent, sheet.y + CELL.size + CELL.leading() * row as f32, line, style)?;
            }
            sheet.tags.close();
        }
        sheet.tags.close();
    }
    sheet.y += CELL.leading() * tall as f32 + 1.0;
    Ok(())
}

fn draw_long(sheet: &mut Sheet, columns: &[Pair], names: f32) -> Result<(), PaperError> {
    for Pair { name, value, style } in columns {
        sheet.tags.open(Role::LI);
        sheet.tags.open(Role::Lbl);
        for (row, line) in name.iter().enumerate() {
            sheet.put(LEFT, sheet.y + CELL.size + CELL.leading() * row as f32, line, SMALL)?;
        }
        sheet.tags.close();
        sheet.tags.open(Role::LBody);
        for line in value {
            sheet.keep(CELL.leading());
            sheet.put(LEFT + names, sheet.y + CELL.size, line, *style)?;
            sheet.y += CELL.leading();
        }
        sheet.tags.close();
        sheet.tags.close();
    }
    sheet.y += 2.0;
    Ok(())
}
