//! Logs that are cut, mangled or made to hurt: no panic, no hang, little memory.

use std::fmt::Write as _;
use std::io::Write as _;

use fuelwright::calc::road::Plan;
use fuelwright::logs::{Log, LogError, Row, compare, look, read, source_key, suggest, words_of};
use proptest::prelude::*;

use super::logs::File;

/// Looks, suggests and reads whatever the bytes are; says how many rows there were.
fn through(bytes: &[u8]) -> u64 {
    let file = File::of(bytes);
    let path = file.path();
    let Ok(layout) = look(&path) else { return 0 };
    assert!(layout.columns.len() <= 4096 && layout.preview.len() <= 12);
    assert!(!source_key(&layout).is_empty());
    let wanted = suggest(&layout);
    for column in &layout.columns {
        assert!(layout.column(&column.name).is_some(), "{:?} does not find itself", column.name);
    }
    if let Some(column) = layout.columns.first() {
        words_of(&path, &layout, &column.name).unwrap();
    }
    let mut rows = 0;
    let tally = read(&path, &layout, &wanted, &mut |row| {
        rows += 1;
        if let Row::Sample(sample) = row {
            assert!(sample.time_s.is_finite() && sample.rpm.is_finite() && sample.petrol_ms.is_finite());
            assert!(sample.manifold_kpa.is_none_or(f64::is_finite));
        }
    });
    match tally {
        Ok(tally) => assert_eq!(tally.samples + tally.gaps + tally.broken, rows),
        Err(error) => assert!(matches!(error, LogError::NotMatched { .. } | LogError::Workbook(_)), "{error:?}"),
    }
    rows
}

/// A short log in every writing.
fn corpus() -> Vec<Vec<u8>> {
    let text = "Invented\nTime [s];Engine speed;Inj. time petrol [ms];fuel\ns;1/min;ms;\n0,0;800;3,10;LPG\n\
                0,1;\"1.810\";3,11;\"pe\"\"trol\"\n23:59:59,9;;--;\n0,3 s;830 rpm;3,1 ms;LPG\n";
    let sixteen = |to: fn(u16) -> [u8; 2]| format!("\u{feff}{text}").encode_utf16().flat_map(to).collect();
    vec![
        text.as_bytes().to_vec(),
        format!("\u{feff}{}", text.replace('\n', "\r\n")).into_bytes(),
        sixteen(u16::to_le_bytes),
        sixteen(u16::to_be_bytes),
        encoding_rs::WINDOWS_1250.encode(&text.replace("fuel", "Ciśnienie [°C]")).0.into_owned(),
        text.replace(',', ".").replace(';', ",").replace('\n', "\r").into_bytes(),
        text.replace(';', "\t").into_bytes(),
    ]
}

#[test]
fn every_cut_of_every_log_is_survived() {
    for whole in corpus() {
        for end in 0..=whole.len() {
            through(&whole[..end]);
        }
    }
}

#[test]
fn a_byte_changed_anywhere_is_survived() {
    for whole in corpus() {
        for at in (0..whole.len()).step_by(2) {
            for byte in [0, b'"', b'\n', 0xff] {
                let mut bytes = whole.clone();
                bytes[at] = byte;
                through(&bytes);
            }
        }
    }
}

#[test]
fn a_cut_workbook_is_survived() {
    let whole = std::fs::read(concat!(env!("CARGO_MANIFEST_DIR"), "/tests/reference/logs/gas.xlsx")).unwrap();
    assert!(through(&whole) > 0);
    for end in (0..whole.len()).step_by(211) {
        through(&whole[..end]);
    }
    for at in (0..whole.len()).step_by(97) {
        let mut bytes = whole.clone();
        bytes[at] ^= 0x55;
        through(&bytes);
    }
}

/// A workbook whose sheet holds this XML.
fn workbook(sheet: &str) -> Vec<u8> {
    let mut packed = zip::ZipWriter::new(std::io::Cursor::new(vec![]));
    let whole = std::fs::File::open(concat!(env!("CARGO_MANIFEST_DIR"), "/tests/reference/logs/gas.xlsx")).unwrap();
    let mut whole = zip::ZipArchive::new(whole).unwrap();
    let options = zip::write::SimpleFileOptions::default();
    for at in 0..whole.len() {
        let mut part = whole.by_index(at).unwrap();
        let name = part.name().unwrap().into_owned();
        packed.start_file(name.as_str(), options).unwrap();
        if name.contains("sheet1") {
            packed.write_all(sheet.as_bytes()).unwrap();
        } else {
            std::io::copy(&mut part, &mut packed).unwrap();
        }
    }
    packed.finish().unwrap().into_inner()
}

fn refusal_of(sheet: &str) -> LogError {
    look(&File::of(workbook(sheet)).path()).unwrap_err()
}

#[test]
fn a_workbook_made_to_burst_is_refused_before_it_does() {
    let begin = "<worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><sheetData>";
    // Two megabytes of one text, tags nested a thousand deep: a few kilobytes packed.
    for sheet in [
        format!(
            "{begin}<row><c t=\"inlineStr\"><is><t>{}</t></is></c></row></sheetData></worksheet>",
            "a".repeat(2 << 20)
        ),
        format!("{begin}{}", "<row>".repeat(1000)),
        format!("{begin}<row><c r=\"{}\"/></row>", "A".repeat(2 << 20)),
    ] {
        assert!(matches!(refusal_of(&sheet), LogError::Workbook(why) if why.contains("too large")));
    }
    // Places beyond any sheet, rows that go back, no end.
    for sheet in [
        format!(
            "{begin}<row r=\"4294967295\"><c r=\"A4294967295\"><v>1</v></c></row><row><c><v>1</v></c></row></sheetData></worksheet>"
        ),
        format!("{begin}<row r=\"1\"><c r=\"ZZZZZZZZ1\"><v>1</v></c></row></sheetData></worksheet>"),
        format!("{begin}<row r=\"1\"><c r=\"XFD1\"><v>1</v></c><c r=\"A1\"><v>1</v></c></row>"),
    ] {
        assert!(matches!(refusal_of(&sheet), LogError::Workbook(_) | LogError::NoTable));
    }
}

#[test]
fn a_workbooks_row_without_its_last_cells_is_not_cut_off() {
    let text = |place: &str, text: &str| format!("<c r=\"{place}\" t=\"inlineStr\"><is><t>{text}</t></is></c>");
    let mut sheet =
        "<worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><sheetData><row r=\"3\">"
            .to_owned();
    sheet += &[text("B3", "time"), text("C3", "rpm"), text("D3", "inj"), text("E3", "note")].concat();
    sheet += "</row>";
    for row in 4..30 {
        let note = if row % 9 == 0 { "" } else { "<c><v>1</v></c>" };
        // The comma of a number that was kept as text, beside numbers that are numbers.
        let inj = text(&format!("D{row}"), "3,25");
        let _ = write!(
            sheet,
            "<row r=\"{row}\"><c r=\"B{row}\"><v>{}.5</v></c><c r=\"C{row}\"><v>800</v></c>{inj}{note}</row>",
            row - 4
        );
    }
    let file = File::of(workbook(&(sheet + "</sheetData></worksheet>")));
    let layout = look(&file.path()).unwrap();
    let mut got = vec![];
    let tally = read(&file.path(), &layout, &suggest(&layout), &mut |row| {
        if let Row::Sample(sample) = row {
            got.push((sample.time_s, sample.rpm, sample.petrol_ms));
        }
    });
    assert_eq!((tally.unwrap().broken, got.len(), got[1]), (0, 26, (1.5, 800.0, 3.25)));
}

/// The most memory that this process has held, kB.
fn highest_kb() -> u64 {
    let status = std::fs::read_to_string("/proc/self/status").unwrap();
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:")).unwrap();
    line.split_whitespace().next().unwrap().parse().unwrap()
}

/// Names the file to the process that reads it alone.
const ALONE: &str = "FUELWRIGHT_TEST_LONG_LINE";

#[test]
fn a_line_without_end_is_one_broken_line_and_no_memory() {
    if let Some(path) = std::env::var_os(ALONE) {
        return reads_a_long_line(path.as_ref());
    }
    for filler in [b'9', 0, b'"', b';'] {
        let mut bytes = b"time;rpm;inj\n0;800;3.1\n0.1;800;3.1\n".to_vec();
        bytes.resize(24 << 20, filler);
        bytes.extend_from_slice(b"\n0.2;800;3.1\n");
        let file = File::of(&bytes);
        // A process of its own, so that its memory is its own.
        let mut alone = std::process::Command::new(std::env::current_exe().unwrap());
        alone.args(["--exact", "logs_hostile::a_line_without_end_is_one_broken_line_and_no_memory"]);
        let output = alone.env(ALONE, file.path()).output().unwrap();
        let said = String::from_utf8_lossy(&output.stdout);
        assert!(output.status.success() && said.contains("1 passed"), "{filler}: {output:?}");
    }
}

fn reads_a_long_line(path: &std::path::Path) {
    let before = highest_kb();
    let layout = look(path).unwrap();
    let tally = read(path, &layout, &suggest(&layout), &mut |_| {}).unwrap();
    assert_eq!((tally.samples, tally.broken), (3, 1));
    let most = highest_kb();
    assert!(most < before + 12 * 1024, "{before} to {most} kB for a line of 24 MB");
}

#[test]
fn a_head_of_thousands_of_like_names_takes_no_time() {
    let text = format!("{}\n{}\n{}\n", "a;".repeat(4000), "1;".repeat(4000), "1;".repeat(4000));
    let layout = look(&File::of(text).path()).unwrap();
    assert_eq!(layout.columns[3999].name, "a (4000)");
}

#[test]
fn a_folder_is_no_log() {
    assert!(matches!(look(&std::env::temp_dir()), Err(LogError::Disk(_))));
}

#[test]
fn the_same_bytes_are_refused_without_reading_a_row() {
    let text = "time;rpm;inj\n0;800;3.1\n0.1;800;3.1\n0.2;800;3.1\n";
    let (one, other) = (File::of(text), File::of(text));
    let log = |file: &File, stated| {
        let layout = look(&file.path()).unwrap();
        Log { path: file.path(), wanted: suggest(&layout), layout, stated: Some(stated) }
    };
    use fuelwright::calc::road::Burned::{Gas, Petrol};
    let refused = compare(&[log(&one, Petrol), log(&other, Gas)], Plan::default()).unwrap_err();
    assert!(refused.to_string().contains("same recording"), "{refused}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn any_bytes_are_survived(bytes in proptest::collection::vec(any::<u8>(), 0..2000)) {
        through(&bytes);
    }

    #[test]
    fn any_text_behind_a_head_is_survived(text in "[0-9a-eE.,;:\"' \t\r\n\\-+TZ%\u{0}°]{0,600}", delimiter in "[;,\t|]") {
        let head = ["time", "rpm", "inj", "fuel"].join(&delimiter);
        through(format!("{head}\n0{delimiter}1{delimiter}2{delimiter}3\n1{delimiter}1{delimiter}2{delimiter}3\n{text}").as_bytes());
    }

    #[test]
    fn any_writing_of_a_number_is_read_back(values in proptest::collection::vec((0_u32..9000, 1_u32..50_000), 3..30), is_comma in any::<bool>()) {
        let mut text = "time;rpm;inj\n".to_owned();
        for (row, (rpm, inj)) in values.iter().enumerate() {
            let line = format!("{}.5;{rpm};{}.{:03}\n", row, inj / 1000, inj % 1000);
            text += &if is_comma { line.replace('.', ",") } else { line };
        }
        let file = File::of(&text);
        let layout = look(&file.path()).unwrap();
        let mut got = vec![];
        read(&file.path(), &layout, &suggest(&layout), &mut |row| if let Row::Sample(sample) = row {
            got.push((sample.rpm, sample.petrol_ms));
        }).unwrap();
        let wanted: Vec<_> = values.iter().map(|(rpm, inj)| (f64::from(*rpm), f64::from(*inj) / 1000.0)).collect();
        prop_assert_eq!(got, wanted);
    }
}
