//! A picture as SVG: two decimals, classes instead of colours, title and description for those who do not see it.

use std::fmt::Write;

use super::{Anchor, Draw, Ink, Picture, Point};

/// The picture as one `<svg>` element. `id` must be the only one of its kind on the page.
pub fn svg(picture: &Picture, id: &str) -> String {
    let mut out = Svg(String::new());
    let (width, height) = picture.size;
    // Writing into a String cannot fail, here and below.
    let _ = write!(
        out.0,
        r#"<svg class="chart" viewBox="0 0 {} {}" role="img" aria-labelledby="{id}-title {id}-desc"><title id="{id}-title">{}</title><desc id="{id}-desc">{}</desc>"#,
        Two(width),
        Two(height),
        Escaped(&picture.title),
        Escaped(&picture.description),
    );
    picture.draw(&mut out);
    out.0.push_str("</svg>");
    out.0
}

struct Svg(String);

impl Draw for Svg {
    fn line(&mut self, ink: Ink, (x1, y1): Point, (x2, y2): Point) {
        let (class, x1, y1, x2, y2) = (ink.name(), Two(x1), Two(y1), Two(x2), Two(y2));
        let _ = write!(self.0, r#"<line class="{class}" x1="{x1}" y1="{y1}" x2="{x2}" y2="{y2}"/>"#);
    }

    fn polyline(&mut self, ink: Ink, points: &[Point]) {
        let _ = write!(self.0, r#"<polyline class="{}" points="{}"/>"#, ink.name(), Points(points));
    }

    fn band(&mut self, ink: Ink, outline: &[Point]) {
        let _ = write!(self.0, r#"<polygon class="{}" points="{}"/>"#, ink.name(), Points(outline));
    }

    fn dot(&mut self, ink: Ink, (x, y): Point) {
        let _ = write!(self.0, r#"<circle class="{} dot" cx="{}" cy="{}" r="4"/>"#, ink.name(), Two(x), Two(y));
    }

    fn text(&mut self, ink: Ink, (x, y): Point, anchor: Anchor, text: &str) {
        let anchor = match anchor {
            Anchor::Start => "start",
            Anchor::Middle => "middle",
            Anchor::End => "end",
        };
        let (class, x, y, text) = (ink.name(), Two(x), Two(y), Escaped(text));
        let _ = write!(self.0, r#"<text class="{class}" x="{x}" y="{y}" text-anchor="{anchor}">{text}</text>"#);
    }
}

/// A number with two decimals at most; `-0` is nought.
struct Two(f64);

impl std::fmt::Display for Two {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let text = format!("{:.2}", self.0);
        let text = text.trim_end_matches('0').trim_end_matches('.');
        f.write_str(if text == "-0" { "0" } else { text })
    }
}

struct Points<'a>(&'a [Point]);

impl std::fmt::Display for Points<'_> {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        for (at, (x, y)) in self.0.iter().enumerate() {
            let gap = if at == 0 { "" } else { " " };
            write!(f, "{gap}{},{}", Two(*x), Two(*y))?;
        }
        Ok(())
    }
}

struct Escaped<'a>(&'a str);

impl std::fmt::Display for Escaped<'_> {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        for c in self.0.chars() {
            match c {
                '&' => f.write_str("&amp;")?,
                '<' => f.write_str("&lt;")?,
                '>' => f.write_str("&gt;")?,
                '"' => f.write_str("&quot;")?,
                c => f.write_char(c)?,
            }
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::charts::Stroke;

    #[test]
    fn a_picture_is_escaped_rounded_and_says_what_it_shows() {
        let picture = Picture {
            size: (100.0, 50.0),
            title: "a < b".into(),
            description: "& \"c\"".into(),
            strokes: vec![
                Stroke::Line(Ink::Limit, (0.0, -0.001), (33.333_3, 1.5)),
                Stroke::Text(Ink::Axis, (1.0, 2.0), Anchor::End, "<script>".into()),
            ],
        };
        let svg = svg(&picture, "one");
        assert!(svg.contains(r#"<line class="limit" x1="0" y1="0" x2="33.33" y2="1.5"/>"#), "{svg}");
        assert!(svg.contains(r#"role="img" aria-labelledby="one-title one-desc""#), "{svg}");
        assert!(svg.contains("a &lt; b") && svg.contains("&amp; &quot;c&quot;") && !svg.contains("<script>"), "{svg}");
    }
}
