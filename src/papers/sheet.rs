//! The sheet a paper is drawn on: pages that follow each other, a cursor that runs down, text, rules, headings.
//!
//! Nothing is drawn twice and nothing below the foot: what does not fit starts the next page, and what must stay whole
//! is drawn again there. Heads and feet with "page x of y" come last, when the number of pages is known. Lengths are
//! points; `y` counts from the top of the page.
//!
//! Every paper has the same text width, on A4 and on US Letter: a Letter page is shorter and its margins are wider, so
//! that lines break alike on both. The drawing knows one left edge; [`Page`] moves it.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::OnceLock;

use printpdf::{
    CurTransMat, DictItem, FontId, Line, LinePoint, Mm, Op, PaintMode, PdfDocument, PdfFont, PdfFontHandle, PdfPage,
    Point, Polygon, PolygonRing, Pt, TextItem, TextMatrix, WindingOrder,
};

use super::PaperError;
use super::fonts::{self, Weight};
use super::ink::{Ink, SECTION, Style};
use super::jpeg::Jpeg;
use super::tags::{Role, Tags};
use crate::model::branch::PaperSize;

/// Width of the page that the drawing thinks of (ISO 216, A4).
pub const PAGE_WIDTH: f32 = 595.28;
/// Its height.
pub const PAGE_HEIGHT: f32 = 841.89;
/// Left edge of the text.
pub const LEFT: f32 = 43.5;
/// Width of the text.
pub const WIDTH: f32 = PAGE_WIDTH - 2.0 * LEFT;
/// Where content begins, under the letter head.
pub const TOP: f32 = 90.0;
/// Height that head and foot leave out below the content.
const FOOT: f32 = PAGE_HEIGHT - 794.0;
/// Points in a millimetre.
const POINT: f32 = 72.0 / 25.4;

/// The page of a paper: its size, and where the drawing stands on it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Page {
    size_mm: [f32; 2],
    /// How far the drawing is moved to the right.
    shift: f32,
    /// Where content begins.
    top: f32,
    /// Where content ends.
    floor: f32,
}

impl Page {
    /// A page with letter head and foot (ISO 216 A4; ANSI/ASME Y14.1 A, "Letter").
    pub fn of(size: PaperSize) -> Self {
        let size_mm = match size {
            PaperSize::A4 => [210.0, 297.0],
            PaperSize::Letter => [215.9, 279.4],
        };
        let [width, height] = size_mm.map(|mm| mm * POINT);
        Self { size_mm, shift: (width - PAGE_WIDTH) / 2.0, top: TOP, floor: height - FOOT }
    }

    /// A page without letter head whose content keeps `margin_mm` from every edge and begins at [`LEFT`]; at the foot
    /// `foot` points stay free.
    pub fn bare(size_mm: [f32; 2], margin_mm: f32, foot: f32) -> Self {
        let margin = margin_mm * POINT;
        Self { size_mm, shift: margin - LEFT, top: margin, floor: size_mm[1] * POINT - margin - foot }
    }

    /// Height of the page.
    pub fn height(self) -> f32 {
        self.size_mm[1] * POINT
    }

    /// What moves the drawing, thought of on A4, to its place.
    fn placed(self) -> Op {
        let matrix = CurTransMat::Translate(Pt(round(self.shift)), Pt(round(self.height() - PAGE_HEIGHT)));
        Op::SetTransformationMatrix { matrix }
    }
}

/// A paper while it is drawn.
pub struct Sheet {
    pages: Vec<Vec<Op>>,
    page: Page,
    photos: Vec<Jpeg>,
    /// The structure.
    pub tags: Tags,
    /// Where the next piece goes, from the top of the page.
    pub y: f32,
    /// Gap above the heading of a section.
    pub section_gap: f32,
}

impl Sheet {
    /// One empty page.
    pub fn on(page: Page) -> Self {
        Self { pages: vec![Vec::new()], page, photos: Vec::new(), tags: Tags::new(), y: page.top, section_gap: 8.0 }
    }

    /// Height of a page.
    pub fn height(&self) -> f32 {
        self.page.height()
    }

    /// Where content ends.
    pub fn floor(&self) -> f32 {
        self.page.floor
    }

    /// Height of an empty page's content.
    pub fn whole(&self) -> f32 {
        self.page.floor - self.page.top
    }

    /// The page drawn on, from 0.
    pub fn page(&self) -> usize {
        self.pages.len() - 1
    }

    /// Number of pages so far.
    pub fn page_count(&self) -> usize {
        self.pages.len()
    }

    /// Height left on this page.
    pub fn room(&self) -> f32 {
        self.page.floor - self.y
    }

    /// Goes to the next page unless so much height is left; never leaves a page empty. Returns whether it went.
    pub fn keep(&mut self, height: f32) -> bool {
        let must = height > self.room() && self.y > self.page.top;
        if must {
            self.turn();
        }
        must
    }

    /// Goes to the next page.
    pub fn turn(&mut self) {
        self.pages.push(Vec::new());
        self.y = self.page.top;
    }

    /// Draws what belongs on one page: if it runs over the foot it is taken back and drawn on the next. What is taller
    /// than a page begins on a new one and breaks where it must.
    pub fn together(&mut self, mut draw: impl FnMut(&mut Self) -> Result<(), PaperError>) -> Result<(), PaperError> {
        let (page, y, tags) = (self.page(), self.y, self.tags.clone());
        let drawn = self.pages[page].len();
        draw(self)?;
        if self.page() == page || y <= self.page.top {
            return Ok(());
        }
        self.pages.truncate(page + 1);
        self.pages[page].truncate(drawn);
        self.tags = tags;
        self.turn();
        draw(self)
    }

    /// Leaves a gap, but not at the top of a page.
    pub fn gap(&mut self, height: f32) {
        if self.y > self.page.top {
            self.y += height;
        }
    }

    /// Draws a line of text as content of the open piece of structure; `y` is its baseline.
    pub fn put(&mut self, x: f32, y: f32, text: &str, style: Style) -> Result<(), PaperError> {
        let page = self.page();
        let (role, mcid) = self.tags.content(page);
        let number = DictItem::Int(i64::try_from(mcid).unwrap_or(i64::MAX));
        let properties = DictItem::Dict { map: BTreeMap::from([("MCID".to_owned(), number)]) };
        let ops = text_ops(x, y, text, style)?;
        let out = &mut self.pages[page];
        out.push(Op::BeginMarkedContentWithProperties { tag: role.name().to_owned(), properties });
        out.extend(ops);
        out.push(Op::EndMarkedContent);
        Ok(())
    }

    /// The same, ending at `right`.
    pub fn put_right(&mut self, right: f32, y: f32, text: &str, style: Style) -> Result<(), PaperError> {
        let width = fonts::width(text.trim_end(), style.weight, style.size)?;
        self.put(right - width, y, text, style)
    }

    /// Draws text that is no content: heads, feet, repeated heads of tables.
    pub fn decorate(&mut self, page: usize, x: f32, y: f32, text: &str, style: Style) -> Result<(), PaperError> {
        let ops = text_ops(x, y, text, style)?;
        self.artifact(page, ops);
        Ok(())
    }

    /// The same, ending at `right`.
    pub fn decorate_right(
        &mut self,
        page: usize,
        right: f32,
        y: f32,
        text: &str,
        style: Style,
    ) -> Result<(), PaperError> {
        let width = fonts::width(text, style.weight, style.size)?;
        self.decorate(page, right - width, y, text, style)
    }

    /// A large word across the page, under everything else.
    pub fn across(&mut self, page: usize, text: &str, style: Style) -> Result<(), PaperError> {
        const ANGLE: f32 = 52.0;
        let width = fonts::width(text, style.weight, style.size)?;
        let (sin, cos) = ANGLE.to_radians().sin_cos();
        let middle = self.page.size_mm[0] * POINT / 2.0 - self.page.shift;
        let x = middle - width * cos / 2.0 + style.size * 0.35 * sin;
        // Counted from the foot of an A4 page, as all drawing is.
        let y = PAGE_HEIGHT - self.height().midpoint(width * sin) - style.size * 0.35 * cos;
        let mut ops = text_ops(0.0, 0.0, text, style)?;
        for op in &mut ops {
            if matches!(op, Op::SetTextCursor { .. }) {
                *op = Op::SetTextMatrix { matrix: TextMatrix::Raw([cos, sin, -sin, cos, round(x), round(y)]) };
            }
        }
        ops.insert(0, Op::BeginMarkedContent { tag: "Artifact".to_owned() });
        ops.push(Op::EndMarkedContent);
        self.pages[page].splice(0..0, ops);
        Ok(())
    }

    /// A straight level line.
    pub fn rule(&mut self, y: f32, thickness: f32, ink: Ink) {
        self.rule_on(self.page(), LEFT, LEFT + WIDTH, y, thickness, ink);
    }

    /// The same, on any page and of any length.
    pub fn rule_on(&mut self, page: usize, from: f32, to: f32, y: f32, thickness: f32, ink: Ink) {
        self.stroke(page, [from, y, to, y], thickness, ink);
    }

    /// A straight line `[x, y, x, y]` from one point to another.
    pub fn stroke(&mut self, page: usize, [x0, y0, x1, y1]: [f32; 4], thickness: f32, ink: Ink) {
        let points = [(x0, y0), (x1, y1)].map(|(x, y)| LinePoint { p: point(x, y), bezier: false }).to_vec();
        self.artifact(
            page,
            vec![
                Op::SetOutlineColor { col: ink.color() },
                Op::SetOutlineThickness { pt: Pt(thickness) },
                Op::DrawLine { line: Line { points, is_closed: false } },
            ],
        );
    }

    /// A picture made of filled rectangles `[x, y, width, height]`, described in words.
    pub fn figure(&mut self, rectangles: &[[f32; 4]], alt: &str, ink: Ink) {
        let rings = rectangles.iter().map(|[x, y, width, height]| ring(*x, *y, *width, *height)).collect();
        self.picture(fill_ops(rings, ink), alt);
    }

    /// A picture already drawn, described in words.
    pub fn picture(&mut self, ops: Vec<Op>, alt: &str) {
        self.tags.open(Role::Figure);
        self.tags.describe(alt);
        let page = self.page();
        let (role, mcid) = self.tags.content(page);
        let number = DictItem::Int(i64::try_from(mcid).unwrap_or(i64::MAX));
        let properties = DictItem::Dict { map: BTreeMap::from([("MCID".to_owned(), number)]) };
        let out = &mut self.pages[page];
        out.push(Op::BeginMarkedContentWithProperties { tag: role.name().to_owned(), properties });
        out.extend(ops);
        out.push(Op::EndMarkedContent);
        self.tags.close();
    }

    /// A photo in a rectangle `[x, y, width, height]` of its own proportions, described in words.
    pub fn photo(&mut self, photo: &Jpeg, place: [f32; 4], alt: &str) {
        let known = self.photos.iter().position(|one| one == photo);
        let at = known.unwrap_or_else(|| {
            self.photos.push(photo.clone());
            self.photos.len() - 1
        });
        self.picture(vec![Jpeg::placed(at, place)], alt);
    }

    fn artifact(&mut self, page: usize, ops: Vec<Op>) {
        let out = &mut self.pages[page];
        out.push(Op::BeginMarkedContent { tag: "Artifact".to_owned() });
        out.extend(ops);
        out.push(Op::EndMarkedContent);
    }

    /// A wrapped paragraph in a role, over the whole width or less.
    pub fn text(&mut self, role: Role, text: &str, style: Style, width: f32) -> Result<(), PaperError> {
        self.tags.open(role);
        let lines = fonts::wrap(text, style.weight, style.size, width)?;
        // A paragraph does not begin with its first line alone at the foot.
        self.keep(style.leading() * lines.len().min(2) as f32);
        for line in lines {
            self.keep(style.leading());
            self.put(LEFT, self.y + style.size, &line, style)?;
            self.y += style.leading();
        }
        self.tags.close();
        Ok(())
    }

    /// A paragraph over the whole width.
    pub fn paragraph(&mut self, text: &str, style: Style) -> Result<(), PaperError> {
        self.text(Role::P, text, style, WIDTH)
    }

    /// A list of paragraphs, each behind a dash.
    pub fn list<S: AsRef<str>>(&mut self, items: &[S], style: Style) -> Result<(), PaperError> {
        const INDENT: f32 = 11.0;
        self.tags.open(Role::L);
        for item in items {
            let lines = fonts::wrap(item.as_ref(), style.weight, style.size, WIDTH - INDENT)?;
            self.keep(style.leading() * lines.len().min(3) as f32);
            self.tags.open(Role::LI);
            self.tags.open(Role::Lbl);
            self.put(LEFT, self.y + style.size, "– ", style)?;
            self.tags.close();
            self.tags.open(Role::LBody);
            for line in lines {
                self.keep(style.leading());
                self.put(LEFT + INDENT, self.y + style.size, &line, style)?;
                self.y += style.leading();
            }
            self.tags.close();
            self.tags.close();
        }
        self.tags.close();
        Ok(())
    }

    /// Opens a section under a ruled heading, together with at least `after` points of what follows it.
    pub fn section(&mut self, heading: &str, after: f32) -> Result<(), PaperError> {
        self.gap(self.section_gap);
        self.keep(22.0 + after);
        self.tags.open(Role::Sect);
        self.text(Role::H2, heading, SECTION, WIDTH)?;
        self.y += 1.0;
        self.rule(self.y, 0.75, Ink::Fact);
        self.y += 3.0;
        Ok(())
    }

    /// Closes the section.
    pub fn end_section(&mut self) {
        self.tags.close();
    }

    /// The faces that something is written in.
    fn faces(&self) -> BTreeSet<&FontId> {
        let mut used = BTreeSet::new();
        for op in self.pages.iter().flatten() {
            if let Op::SetFont { font: PdfFontHandle::External(id), .. } = op {
                used.insert(id);
            }
        }
        used
    }

    /// The document of all pages, with the faces they use, and their structure.
    pub fn into_document(self) -> Result<(PdfDocument, Tags), PaperError> {
        let mut document = PdfDocument::new("");
        for id in self.faces() {
            let font = parsed()?.get(id).ok_or(PaperError::Font)?.clone();
            document.resources.fonts.map.insert(id.clone(), font);
        }
        for (at, photo) in self.photos.into_iter().enumerate() {
            let (id, object) = photo.into_object(at);
            document.resources.xobjects.map.insert(id, object);
        }
        let [width, height] = self.page.size_mm.map(Mm);
        let placed = |ops: Vec<Op>| [vec![self.page.placed()], ops].concat();
        document.pages = self.pages.into_iter().map(|ops| PdfPage::new(width, height, placed(ops))).collect();
        Ok((document, self.tags))
    }
}

/// Every face as the PDF library wants it, read once: reading copies and hashes a whole file.
fn parsed() -> Result<&'static BTreeMap<FontId, PdfFont>, PaperError> {
    static PARSED: OnceLock<BTreeMap<FontId, PdfFont>> = OnceLock::new();
    let faces = fonts::faces()?;
    let read = |face: &fonts::Face| {
        let parsed = printpdf::ParsedFont::from_bytes(face.bytes, 0, &mut Vec::new())?;
        Some((FontId(face.id.to_owned()), PdfFont::new(parsed)))
    };
    Ok(PARSED.get_or_init(|| faces.iter().filter_map(read).collect()))
}

/// Hundredths of a point are finer than any printer; more digits only swell the file.
pub fn round(value: f32) -> f32 {
    (value * 100.0).round() / 100.0
}

/// A point of the page, `y` counted from its top.
pub fn point(x: f32, y: f32) -> Point {
    Point { x: Pt(round(x)), y: Pt(round(PAGE_HEIGHT - y)) }
}

fn ring(x: f32, y: f32, width: f32, height: f32) -> PolygonRing {
    let corners = [(x, y), (x + width, y), (x + width, y + height), (x, y + height)];
    PolygonRing { points: corners.map(|(x, y)| LinePoint { p: point(x, y), bezier: false }).to_vec() }
}

fn fill_ops(rings: Vec<PolygonRing>, ink: Ink) -> Vec<Op> {
    let polygon = Polygon { rings, mode: PaintMode::Fill, winding_order: WindingOrder::NonZero };
    vec![Op::SetFillColor { col: ink.color() }, Op::DrawPolygon { polygon }]
}

/// What draws a line of text; `y` is its baseline.
pub fn text_ops(x: f32, y: f32, text: &str, style: Style) -> Result<Vec<Op>, PaperError> {
    let faces = fonts::faces()?;
    let mut ops =
        vec![Op::StartTextSection, Op::SetFillColor { col: style.ink.color() }, Op::SetTextCursor { pos: point(x, y) }];
    for run in fonts::runs(text, style.weight)? {
        let font = PdfFontHandle::External(FontId(faces[run.face].id.to_owned()));
        ops.push(Op::SetFont { font, size: Pt(style.size) });
        ops.push(Op::ShowText { items: vec![TextItem::Text(run.text)] });
    }
    ops.push(Op::EndTextSection);
    Ok(ops)
}

/// Whether a text fits one line of `room` points.
pub fn fits(text: &str, weight: Weight, size: f32, room: f32) -> Result<bool, PaperError> {
    Ok(fonts::width(&fonts::clean(text).replace('\n', " "), weight, size)? <= room)
}
