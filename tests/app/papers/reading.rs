//! A paper in the hands of other people's tools: poppler, qpdf, and a code reader.

use std::path::{Path, PathBuf};
use std::process::Command;

use fuelwright::words::{Language, Words};
use serde_json::Value;
use time::format_description::well_known::{Iso8601, Rfc3339};
use time::{Date, OffsetDateTime};

fn run(program: &str, arguments: &[&str]) -> String {
    let output = Command::new(program).args(arguments).output().unwrap_or_else(|e| panic!("{program}: {e}"));
    let text = String::from_utf8_lossy(&output.stdout).into_owned();
    assert!(output.status.success(), "{program} {arguments:?}: {text}{}", String::from_utf8_lossy(&output.stderr));
    text
}

/// Columns and lines break texts; a break is no loss.
pub fn squeezed(text: &str) -> String {
    text.chars().filter(|c| !c.is_whitespace()).collect()
}

pub struct Paper {
    path: PathBuf,
    text: String,
}

impl Paper {
    /// Lays the file where the tools, and whoever wants to look at it, find it.
    pub fn new(name: &str, pdf: &[u8]) -> Self {
        let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("{name}.pdf"));
        std::fs::write(&path, pdf).unwrap();
        let text = run("pdftotext", &["-enc", "UTF-8", "-raw", path.to_str().unwrap(), "-"]);
        assert!(!text.contains('⟦'), "a word is missing: {text}");
        Self { path, text }
    }

    fn path(&self) -> &str {
        self.path.to_str().unwrap()
    }

    pub fn text(&self) -> &str {
        &self.text
    }

    pub fn text_of_page(&self, page: usize) -> String {
        let page = page.to_string();
        run("pdftotext", &["-enc", "UTF-8", "-f", &page, "-l", &page, self.path(), "-"])
    }

    pub fn says(&self, value: &str) {
        assert!(squeezed(&self.text).contains(&squeezed(value)), "{value:?} is not in: {}", self.text);
    }

    pub fn does_not_say(&self, value: &str) {
        assert!(!squeezed(&self.text).contains(&squeezed(value)), "{value:?} is in the paper");
    }

    pub fn page_count(&self) -> usize {
        let about = run("pdfinfo", &[self.path()]);
        about.lines().find_map(|line| line.strip_prefix("Pages:")).unwrap().trim().parse().unwrap()
    }

    pub fn structure(&self) -> String {
        run("pdfinfo", &["-struct", self.path()])
    }

    /// The file is whole, tagged, and carries the faces it uses, each cut down to what it uses.
    pub fn is_sound(&self) {
        run("qpdf", &["--check", self.path()]);
        let about = run("pdfinfo", &[self.path()]);
        assert!(about.contains("Tagged:          yes"), "{about}");
        let fonts = run("pdffonts", &[self.path()]);
        let lines: Vec<_> = fonts.lines().skip(2).collect();
        assert!(!lines.is_empty());
        for line in lines {
            // A line ends with: embedded, subset, has Unicode, object, generation.
            let tail: Vec<_> = line.split_whitespace().rev().take(5).collect();
            assert_eq!((tail[4], tail[3], tail[2]), ("yes", "yes", "yes"), "{line}");
        }
    }

    /// PDFBox Preflight finds nothing against PDF/A-1b. Its exit code says nothing, so its words are read.
    pub fn is_archival(&self) {
        let jars = [
            "preflight",
            "pdfbox2",
            "fontbox2",
            "xmpbox",
            "commons-logging",
            "commons-io",
            "javax.activation",
            "jaxb-api",
        ]
        .map(|name| format!("/usr/share/java/{name}.jar"));
        for jar in &jars {
            assert!(Path::new(jar).exists(), "{jar} is missing");
        }
        let said = run("java", &["-cp", &jars.join(":"), "org.apache.pdfbox.preflight.Validator_A1b", self.path()]);
        assert!(said.contains("is a valid PDF/A-1b file"), "{said}");
    }

    /// The pages are this large, in millimetres.
    pub fn has_size(&self, [width, height]: [f64; 2]) {
        for page in self.boxes() {
            for (is, wanted) in [(page.width, width), (page.height, height)] {
                assert!((is * 25.4 / 72.0 - wanted).abs() < 0.1, "{is} points is not {wanted} mm");
            }
        }
    }

    /// Every word lies between the margins, head and foot too; and there are words.
    pub fn stays_inside_its_margins(&self) {
        for page in self.boxes() {
            let side = (page.width - 508.28) / 2.0;
            assert!(page.words.len() > 8);
            for word in page.words {
                let [left, top, right, bottom] = word.at;
                assert!(left > side - 1.5 && right < page.width - side + 1.5, "{word:?}");
                assert!(top > 18.0 && bottom < page.height - 26.0, "{word:?}");
            }
        }
    }

    /// Nothing comes nearer to an edge than this many millimetres.
    pub fn keeps_from_the_edge(&self, margin_mm: f64) {
        let margin = margin_mm * 72.0 / 25.4 - 0.5;
        for page in self.boxes() {
            for word in page.words.iter().filter(|word| !word.is_across) {
                let [left, top, right, bottom] = word.at;
                let (beside, below) = (page.width - margin, page.height - margin + 2.0);
                assert!(left > margin && right < beside && top > margin - 3.0 && bottom < below, "{word:?}");
            }
        }
    }

    /// No two words stand on each other.
    pub fn does_not_print_over_itself(&self) {
        for page in self.boxes() {
            let words: Vec<&Word> = page.words.iter().filter(|word| !word.is_across).collect();
            for (n, one) in words.iter().enumerate() {
                for other in &words[..n] {
                    let [left, top, right, bottom] = one.at;
                    let wide = right.min(other.at[2]) - left.max(other.at[0]);
                    let tall = bottom.min(other.at[3]) - top.max(other.at[1]);
                    // Ascenders and descenders of neighbouring lines may share a little.
                    let least = (bottom - top).min(other.at[3] - other.at[1]);
                    assert!(wide < 1.0 || tall < 0.45 * least, "{one:?} and {other:?}");
                }
            }
        }
    }

    /// Whether a page says this.
    pub fn says_on(&self, page: usize, value: &str) -> bool {
        let page = page.to_string();
        let text = run("pdftotext", &["-enc", "UTF-8", "-raw", "-f", &page, "-l", &page, self.path(), "-"]);
        squeezed(&text).contains(&squeezed(value))
    }

    /// The photos inside, as the files they were, in order.
    pub fn images(&self) -> Vec<Vec<u8>> {
        let folder = tempfile::tempdir().unwrap();
        run("pdfimages", &["-j", self.path(), folder.path().join("p").to_str().unwrap()]);
        let mut names: Vec<_> = std::fs::read_dir(folder.path()).unwrap().map(|one| one.unwrap().path()).collect();
        names.sort();
        names.iter().map(|name| std::fs::read(name).unwrap()).collect()
    }

    fn boxes(&self) -> Vec<Page> {
        let boxes = run("pdftotext", &["-bbox", self.path(), "-"]);
        let number = |line: &str, name: &str| -> f64 {
            let rest = &line[line.find(name).unwrap() + name.len() + 2..];
            rest[..rest.find('"').unwrap()].parse().unwrap()
        };
        let mut pages: Vec<Page> = Vec::new();
        for line in boxes.lines().map(str::trim_start) {
            if line.starts_with("<page") {
                let (width, height) = (number(line, "width"), number(line, "height"));
                pages.push(Page { width, height, words: Vec::new() });
            } else if line.starts_with("<word") {
                let at = ["xMin", "yMin", "xMax", "yMax"].map(|name| number(line, name));
                // The word across a demonstration paper is drawn at an angle, so that its box is tall.
                let is_across = at[3] - at[1] > 60.0;
                pages.last_mut().unwrap().words.push(Word { line: line.to_owned(), at, is_across });
            }
        }
        assert!(!pages.is_empty());
        pages
    }

    /// What a scanner reads on a page rendered at 220 dots an inch.
    pub fn codes_on_page(&self, page: usize) -> Vec<String> {
        let page = page.to_string();
        let stem = self.path.with_extension("");
        let stem = stem.to_str().unwrap();
        run("pdftoppm", &["-r", "220", "-gray", "-png", "-singlefile", "-f", &page, "-l", &page, self.path(), stem]);
        let picture = image::open(format!("{stem}.png")).unwrap().to_luma8();
        let (width, height) = picture.dimensions();
        let mut prepared = rqrr::PreparedImage::prepare_from_greyscale(width as usize, height as usize, |x, y| {
            picture.get_pixel(u32::try_from(x).unwrap(), u32::try_from(y).unwrap()).0[0]
        });
        prepared.detect_grids().iter().map(|grid| grid.decode().unwrap().1).collect()
    }
}

struct Page {
    width: f64,
    height: f64,
    words: Vec<Word>,
}

#[derive(Debug)]
struct Word {
    #[allow(dead_code, reason = "shown when a test fails")]
    line: String,
    /// Left, top, right, bottom.
    at: [f64; 4],
    is_across: bool,
}

/// Names whose values are codes for words, or are shown in another form that is checked by hand.
const SHOWN_OTHERWISE: [&str; 20] = [
    "format",
    "kind",
    "language",
    "fuel",
    "as",
    "decision_rule",
    "verdict",
    "outcome",
    "severity",
    "state",
    "url",
    "made",
    "first_registered",
    "last_tested",
    "pressure_reference",
    "coverage_factor",
    "kind_of_test",
    "to_repeat",
    "photo_sha256",
    "picture",
];

/// Every text, date and instant of a content stands on the paper.
pub fn says_all_of(paper: &Paper, content: &Value) {
    match content {
        Value::Object(members) => {
            for (name, value) in members {
                if !SHOWN_OTHERWISE.contains(&name.as_str()) {
                    says_all_of(paper, value);
                }
            }
        }
        Value::Array(items) => items.iter().for_each(|item| says_all_of(paper, item)),
        Value::String(text) => paper.says(&as_printed(text)),
        _ => {}
    }
}

fn as_printed(text: &str) -> String {
    let words = Words::new(Language::English);
    // The ISO reader takes "0418233" for a date of the year 418; ours are always ten characters with dashes.
    if text.len() == 10
        && text.as_bytes()[4] == b'-'
        && let Ok(day) = Date::parse(text, &Iso8601::DATE)
    {
        return words.date(day);
    }
    if let Ok(at) = OffsetDateTime::parse(text, &Rfc3339) {
        return format!("{}, {:02}:{:02}", words.medium_date(at.date()), at.hour(), at.minute());
    }
    if text.parse::<f64>().is_ok() && text.len() > 3 && !text.starts_with('0') {
        return words
            .number(text.parse().unwrap(), text.split_once('.').map_or(0, |(_, d)| u8::try_from(d.len()).unwrap()));
    }
    text.to_owned()
}

/// The two ids at the end of the file.
pub fn file_id(pdf: &[u8]) -> String {
    let text = String::from_utf8_lossy(pdf);
    let start = text.rfind("/ID").unwrap();
    text[start..].lines().next().unwrap().to_owned()
}
