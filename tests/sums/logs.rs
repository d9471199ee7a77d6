//! Logs of every writing: what `look` finds, what `suggest` says, what `read` reads.

use std::fmt::Write as _;
use std::path::PathBuf;

use fuelwright::calc::road::{Burned, Quantity, Sample};
use fuelwright::logs::{
    BrokenWhy, Layout, LogError, Match, Matched, Row, Tally, look, read, source_key, suggest, words_of,
};

/// A file of these bytes that goes away with the test.
pub struct File(tempfile::NamedTempFile);

impl File {
    pub fn of(bytes: impl AsRef<[u8]>) -> Self {
        let file = tempfile::NamedTempFile::new().unwrap();
        std::fs::write(file.path(), bytes).unwrap();
        Self(file)
    }

    pub fn path(&self) -> PathBuf {
        self.0.path().to_owned()
    }

    fn look(&self) -> Layout {
        look(&self.path()).unwrap()
    }

    fn names(&self) -> Vec<String> {
        self.look().columns.into_iter().map(|column| column.name).collect()
    }

    fn read(&self, wanted: &Match) -> (Vec<Sample>, Tally) {
        let mut samples = vec![];
        let tally = read(&self.path(), &self.look(), wanted, &mut |row| {
            if let Row::Sample(sample) = row {
                samples.push(sample);
            }
        });
        (samples, tally.unwrap())
    }

    /// Read as suggested.
    fn suggested(&self) -> (Vec<Sample>, Tally) {
        self.read(&suggest(&self.look()))
    }
}

/// Time, engine speed and injection time in the first three columns, others by pairs.
fn matched(columns: &[(Quantity, &str)]) -> Match {
    let one = |(quantity, name): &(Quantity, &str)| {
        (*quantity, Matched { column: (*name).to_owned(), scale: 1.0, offset: 0.0 })
    };
    Match { columns: columns.iter().map(one).collect(), ..Match::default() }
}

fn plain() -> Match {
    matched(&[(Quantity::TimeS, "time"), (Quantity::Rpm, "rpm"), (Quantity::PetrolMs, "inj")])
}

/// A log of `rows` rows: time, engine speed, manifold pressure, injection time.
fn log(rows: usize, delimiter: char, decimal: char, end: &str) -> String {
    let d = delimiter;
    let mut text = format!(
        "Zeit [s]{d}Motordrehzahl [1/min]{d}Saugrohrdruck [kPa]{d}Einspritzzeit Benzin [ms]{d}Kühlmittel [°C]{end}"
    );
    for row in 0..rows {
        let at = row as f64;
        let line = format!(
            "{:.2}{d}{}{d}{:.1}{d}{:.3}{d}{:.1}{end}",
            at * 0.1,
            800 + row * 10,
            35.0 + at * 0.5,
            3.25 + at * 0.01,
            88.5
        );
        text.push_str(&if decimal == ',' { line.replace('.', ",") } else { line });
    }
    text
}

fn is_as_written(samples: &[Sample], rows: usize) {
    assert_eq!(samples.len(), rows);
    for (row, sample) in samples.iter().enumerate() {
        let near = |got: f64, wanted: f64| assert!((got - wanted).abs() < 1e-9, "row {row}: {got} for {wanted}");
        near(sample.time_s, (row as f64 * 10.0).round() / 100.0);
        near(sample.rpm, 800.0 + row as f64 * 10.0);
        near(sample.manifold_kpa.unwrap(), 35.0 + row as f64 * 0.5);
        near(sample.petrol_ms, 3.25 + row as f64 * 0.01);
        near(sample.coolant_c.unwrap(), 88.5);
    }
}

#[test]
fn every_delimiter_decimal_sign_and_line_end_reads_alike() {
    for (delimiter, decimal) in [(';', ','), (';', '.'), ('\t', ','), ('\t', '.'), (',', '.'), ('|', ','), ('|', '.')] {
        for end in ["\n", "\r\n", "\r"] {
            let file = File::of(log(40, delimiter, decimal, end));
            let layout = file.look();
            assert_eq!((layout.delimiter, layout.decimal), (Some(delimiter), decimal), "{end:?}");
            let (samples, tally) = file.suggested();
            is_as_written(&samples, 40);
            assert_eq!((tally.gaps, tally.broken), (0, 0));
        }
    }
}

#[test]
fn every_encoding_reads_alike() {
    let text = log(30, ';', ',', "\r\n");
    let sixteen = |to: fn(u16) -> [u8; 2], mark: &str| -> Vec<u8> {
        format!("{mark}{text}").encode_utf16().flat_map(to).collect()
    };
    let windows = |encoding: &'static encoding_rs::Encoding| encoding.encode(&text).0.into_owned();
    for (name, bytes) in [
        ("UTF-8", text.clone().into_bytes()),
        ("UTF-8", format!("\u{feff}{text}").into_bytes()),
        ("UTF-16LE", sixteen(u16::to_le_bytes, "\u{feff}")),
        ("UTF-16BE", sixteen(u16::to_be_bytes, "\u{feff}")),
        ("UTF-16LE", sixteen(u16::to_le_bytes, "")),
        ("UTF-16BE", sixteen(u16::to_be_bytes, "")),
        ("windows-1252", windows(encoding_rs::WINDOWS_1252)),
    ] {
        let file = File::of(bytes);
        assert_eq!(file.look().encoding, name);
        assert_eq!(file.names()[4], "Kühlmittel [°C]");
        is_as_written(&file.suggested().0, 30);
    }
}

#[test]
fn polish_names_in_their_code_page_are_read_and_suggested() {
    let text = "Czas [s];Prędkość obrotowa silnika [obr/min];Ciśnienie w kolektorze [kPa];Czas wtrysku benzyny [ms];\
                Czas wtrysku gazu [ms];Ciśnienie gazu [bar];Temperatura płynu [°C]\n\
                0,1;850;35,2;3,25;4,1;1,05;88\n0,2;860;35,4;3,26;4,2;1,06;88\n";
    let file = File::of(encoding_rs::WINDOWS_1250.encode(text).0);
    assert_eq!(file.look().encoding, "windows-1250");
    assert_eq!(file.names()[1], "Prędkość obrotowa silnika [obr/min]");
    let (samples, _) = file.suggested();
    let first = samples[0];
    assert_eq!((first.rpm, first.petrol_ms, first.gas_ms), (850.0, 3.25, Some(4.1)));
    assert!((first.gas_kpa.unwrap() - 105.0).abs() < 1e-9);
    assert_eq!(first.coolant_c, Some(88.0));
}

#[test]
fn lines_before_the_head_and_a_row_of_units_are_found() {
    let text = "Road test\nTool;invented\nDate;2026-11-29 10:15:00\n;;;\n\ntime;rpm;MAP;inj\ns;1/min;mbar;µs\n\
                0.0;800;352;3250\n0.1;810;354;3260\n0.2;820;356;3270\n";
    let file = File::of(text);
    let layout = file.look();
    assert_eq!((layout.lines_before, layout.has_units, layout.fields), (5, true, 4));
    assert_eq!(layout.columns[2].unit, "mbar");
    assert_eq!(layout.preview[0], ["0.0", "800", "352", "3250"]);
    let (samples, tally) = file.suggested();
    assert_eq!((samples.len(), tally.broken), (3, 0));
    assert!((samples[0].manifold_kpa.unwrap() - 35.2).abs() < 1e-9);
    assert!((samples[0].petrol_ms - 3.25).abs() < 1e-9);
}

#[test]
fn a_row_of_units_may_stand_in_brackets_or_hold_blanks() {
    let file = File::of("time,engine speed,inj,fuel\n[s],[rpm],[ms],\n0.0,800,3.1,petrol\n0.1,800,3.1,petrol\n");
    let layout = file.look();
    assert!(layout.has_units);
    let units: Vec<_> = layout.columns.iter().map(|column| column.unit.as_str()).collect();
    assert_eq!(units, ["s", "rpm", "ms", ""]);
}

#[test]
fn columns_of_one_name_are_told_apart_and_nameless_ones_counted() {
    let file = File::of("time;rpm;rpm;;inj\n0;1;2;3;4\n1;1;2;3;4\n2;1;2;3;4\n");
    assert_eq!(file.names(), ["time", "rpm", "rpm (2)", "column 4", "inj"]);
}

#[test]
fn heads_in_the_middle_are_passed_and_a_time_that_begins_anew_goes_on() {
    let head = "time;rpm;inj\ns;1/min;ms\n";
    let rows = "0.0;800;3.1\n0.1;800;3.2\n";
    let (samples, tally) = File::of(format!("{head}{rows}{head}{rows}{head}{rows}")).read(&plain());
    assert_eq!((samples.len(), tally.broken, tally.gaps), (6, 0, 0));
    assert!(samples.windows(2).all(|pair| pair[1].time_s > pair[0].time_s));
    assert!(samples[2].time_s - samples[1].time_s >= 10.0, "a break between two recordings");
}

#[test]
fn a_head_in_the_middle_is_known_by_names_that_were_numbered_or_had_a_number() {
    let head = "time;rpm;rpm;inj (2)\n";
    let rows = "0.0;1;800;3.1\n0.1;1;810;3.2\n";
    let file = File::of(format!("{head}{rows}{head}{rows}"));
    let wanted = matched(&[(Quantity::TimeS, "time"), (Quantity::Rpm, "rpm (2)"), (Quantity::PetrolMs, "inj (2)")]);
    let (samples, tally) = file.read(&wanted);
    assert_eq!((samples.len(), tally.broken, samples[1].rpm), (4, 0, 810.0));
}

#[test]
fn a_broken_line_is_counted_and_told_and_its_neighbours_are_read() {
    let long = "9".repeat(300_000);
    let text = format!(
        "time;rpm;inj\n0.0;800;3.1\n0.1;8x0;3.1\n0.2;800\n0.3;800;3.1;7\n0.4;NaN;3.1\n0.5;inf;3.1\n0.6;1e400;3.1\n0.7;\"800;3.1\n\
         {long}\n0.8;80\0;3.1\n0.9;800;3.2\n1.0;800;3.3;;\n1.1;80"
    );
    let (samples, tally) = File::of(text).read(&plain());
    let times: Vec<f64> = samples.iter().map(|sample| sample.time_s).collect();
    assert_eq!(times, [0.0, 0.9, 1.0]);
    assert_eq!((tally.samples, tally.broken), (3, 10));
    let of_rpm = BrokenWhy::NotANumber { quantity: Quantity::Rpm };
    let whys: Vec<_> = tally.shown.iter().map(|shown| (shown.line, shown.why)).collect();
    assert_eq!(
        whys,
        [
            (3, of_rpm),
            (4, BrokenWhy::TooFew { fields: 2 }),
            (5, BrokenWhy::TooMany { fields: 4 }),
            (6, of_rpm),
            (7, of_rpm),
            (8, of_rpm),
            (9, BrokenWhy::OpenQuote),
            (10, BrokenWhy::TooLong),
            (11, of_rpm),
            (14, BrokenWhy::TooFew { fields: 2 }),
        ]
    );
    assert_eq!(tally.shown[0].text, "0.1;8x0;3.1");
}

#[test]
fn a_quoted_name_may_hold_delimiters_and_a_line_break() {
    let file = File::of(
        "\"time\",\"engine speed,\nsmoothed [rpm]\",\"inj\"\n\"0,0\",\"800\",\"3,1\"\n\"0,1\",\"810\",\"3,2\"\n\"0,2\",\"1.820\",\"3,3\"\n",
    );
    assert_eq!(file.names()[1], "engine speed, smoothed [rpm]");
    assert_eq!(file.look().decimal, ',');
    let wanted = matched(&[
        (Quantity::TimeS, "time"),
        (Quantity::Rpm, "engine speed, smoothed [rpm]"),
        (Quantity::PetrolMs, "inj"),
    ]);
    let (samples, tally) = file.read(&wanted);
    assert_eq!((samples.len(), tally.broken), (3, 0));
    assert_eq!((samples[2].rpm, samples[2].petrol_ms), (1820.0, 3.3));
}

#[test]
fn a_blank_takes_its_columns_last_value_for_a_second() {
    let text =
        "time;rpm;inj\n0.0;800;\n0.2;;3.1\n0.4;;3.2\n1.0;;3.3\n1.1;;3.4\n1.2;900;\n2.3;900;\n2.4;--;3.5\n;900;3.5\n";
    let (samples, tally) = File::of(text).read(&plain());
    let got: Vec<_> = samples.iter().map(|sample| (sample.time_s, sample.rpm, sample.petrol_ms)).collect();
    assert_eq!(got, [(0.2, 800.0, 3.1), (0.4, 800.0, 3.2), (1.0, 800.0, 3.3), (1.2, 900.0, 3.4), (2.4, 900.0, 3.5)]);
    assert_eq!((tally.gaps, tally.broken), (4, 0));
}

#[test]
fn a_log_whose_rows_leave_out_blanks_at_their_end_is_not_cut_off() {
    let mut text = "time;rpm;inj;coolant\n".to_owned();
    for row in 0..20 {
        let _ = writeln!(text, "{row}.0;800;3.1{}", if row % 2 == 0 { ";88" } else { "" });
    }
    let (samples, tally) = File::of(text).read(&plain());
    assert_eq!((samples.len(), tally.broken), (20, 0));
}

#[test]
fn times_are_read_as_clock_date_and_number_and_go_on_over_midnight() {
    let spaced = |times: [&str; 3], steps: [f64; 2]| {
        let rows = times.map(|time| format!("{time};800;3.1\n")).concat();
        let (samples, tally) = File::of(format!("time;rpm;inj\n{rows}")).read(&plain());
        assert_eq!(tally.broken, 0, "{times:?}");
        for (pair, step) in samples.windows(2).zip(steps) {
            assert!((pair[1].time_s - pair[0].time_s - step).abs() < 1e-6, "{times:?}");
        }
    };
    spaced(["12:34:56.789", "12:34:57.789", "12:34:57.889"], [1.0, 0.1]);
    spaced(["23:59:59.5", "0:00:00.5", "0:00:01.5"], [1.0, 1.0]);
    spaced(["2026-11-29T23:59:59Z", "2026-11-30T00:00:00Z", "2026-11-30T00:00:02Z"], [1.0, 2.0]);
    spaced(["29.11.2026 23:59:59,0", "30.11.2026 00:00:00,5", "30.11.2026 00:00:01,0"], [1.5, 0.5]);
    spaced(["1 795 000.5", "1 795 001.5", "1 795 002.0"], [1.0, 0.5]);
    spaced(["59:59.5", "60:00.5", "60:01.0"], [1.0, 0.5]);
}

#[test]
fn a_time_in_milliseconds_is_suggested_by_its_unit_or_its_steps() {
    for head in ["time [ms];rpm;inj", "time;rpm;inj", "time_ms;rpm;inj"] {
        let (samples, _) =
            File::of(format!("{head}\n1000;800;3.1\n1100;800;3.1\n1200;800;3.1\n1300;800;3.1\n")).suggested();
        assert!((samples[1].time_s - 1.1).abs() < 1e-9, "{head}");
    }
    let (samples, _) = File::of("time [ms];rpm;inj\n0;800;3.1\n1;800;3.1\n").suggested();
    assert!((samples[1].time_s - 0.001).abs() < 1e-12);
}

#[test]
fn a_unit_behind_a_number_is_read_where_it_is_the_columns() {
    let (samples, tally) =
        File::of("time;rpm;inj\n0.0 s;850 rpm;3.1 ms\n0.1 s;860 rpm;3.2 ms\n0.2 s;860 kPa;3.2 ms\n").suggested();
    assert_eq!((samples.len(), tally.broken), (2, 1));
    assert_eq!((samples[0].rpm, samples[1].petrol_ms), (850.0, 3.2));
}

#[test]
fn words_and_numbers_say_the_fuel_and_the_loop() {
    let text = "time;rpm;inj;fuel;closed loop\n0.0;800;3.1;Petrol;open\n0.1;800;3.1;LPG;closed\n0.2;800;3.1;;\n0.3;800;3.1;gasoline;Open\n";
    let file = File::of(text);
    let (samples, _) = file.suggested();
    let got: Vec<_> = samples.iter().map(|sample| (sample.burned.unwrap(), sample.is_closed_loop.unwrap())).collect();
    assert_eq!(got, [(Burned::Petrol, false), (Burned::Gas, true), (Burned::Gas, true), (Burned::Petrol, false)]);
    assert_eq!(
        words_of(&file.path(), &file.look(), "fuel").unwrap().into_iter().collect::<Vec<_>>(),
        ["LPG", "Petrol", "gasoline"]
    );
    let mut wanted = suggest(&file.look());
    wanted.gas_words = vec!["petrol".to_owned()];
    assert_eq!(file.read(&wanted).0[0].burned, Some(Burned::Gas));
}

#[test]
fn one_of_nought_and_one_is_gas_and_a_status_byte_is_read_by_its_standard() {
    let text = "time;rpm;inj;fuel;fuel system status\n0;800;3.1;0;1\n0.1;800;3.1;1;2\n0.2;800;3.1;1;4\n";
    let (samples, _) = File::of(text).suggested();
    let got: Vec<_> = samples.iter().map(|sample| (sample.burned.unwrap(), sample.is_closed_loop.unwrap())).collect();
    assert_eq!(got, [(Burned::Petrol, false), (Burned::Gas, true), (Burned::Gas, false)]);
}

#[test]
fn generic_names_of_several_languages_are_suggested() {
    for names in [
        [
            "time",
            "engine speed",
            "intake manifold pressure",
            "petrol injection time",
            "gas injection time",
            "coolant temperature",
        ],
        ["Zeit", "Drehzahl", "Saugrohrdruck", "Einspritzzeit Benzin", "Einspritzzeit Gas", "Kühlmitteltemperatur"],
        ["Czas", "Obroty", "Ciśnienie w kolektorze", "Czas wtrysku benzyny", "Czas wtrysku gazu", "Temperatura płynu"],
        [
            "Temps",
            "Régime moteur",
            "Pression collecteur",
            "Temps d'injection essence",
            "Temps d'injection GPL",
            "Temp. liquide",
        ],
        [
            "Tempo",
            "Giri motore",
            "Pressione collettore",
            "Tempo iniezione benzina",
            "Tempo iniezione gas",
            "Temperatura acqua",
        ],
        [
            "Tiempo",
            "Régimen del motor",
            "Presión de admisión",
            "Tiempo de inyección gasolina",
            "Tiempo de inyección GLP",
            "Temperatura refrigerante",
        ],
        ["Čas", "Otáčky", "Tlak v sání", "Doba vstřiku benzin", "Doba vstřiku LPG", "Teplota chladicí kapaliny"],
        ["Время", "Обороты", "Давление во впуске", "Впрыск бензин", "Впрыск газ", "Температура охлаждающей"],
        ["time_s", "rpm", "manifold_kpa", "petrol_ms", "gas_ms", "coolant_c"],
    ] {
        let file = File::of(format!("{}\n0;800;35;3.1;4.1;88\n0.1;800;35;3.1;4.1;88\n", names.join(";")));
        let suggested = suggest(&file.look());
        let got: Vec<_> = [
            Quantity::TimeS,
            Quantity::Rpm,
            Quantity::ManifoldKpa,
            Quantity::PetrolMs,
            Quantity::GasMs,
            Quantity::CoolantC,
        ]
        .iter()
        .map(|quantity| suggested.columns.get(quantity).map_or("", |matched| matched.column.as_str()))
        .collect();
        assert_eq!(got, names);
    }
}

#[test]
fn a_unit_that_speaks_against_a_quantity_is_heard() {
    let suggested = |head: &str| suggest(&File::of(format!("{head}\n0;800;35;3.1\n0.1;800;35;3.1\n")).look());
    let found = suggested("time [s];vehicle speed [km/h];throttle [%];injector current [A]");
    assert_eq!(found.columns.keys().copied().collect::<Vec<_>>(), [Quantity::TimeS]);
    let found = suggested("time;rpm;fuel trim short term bank 1 [%];long term fuel trim [%]");
    assert_eq!(found.columns[&Quantity::ShortTrim].column, "fuel trim short term bank 1 [%]");
    assert_eq!(found.columns[&Quantity::LongTrim].column, "long term fuel trim [%]");
    assert!(!found.columns.contains_key(&Quantity::Fuel));
    assert_eq!(suggested("Date/Time;rpm;x;y").columns[&Quantity::TimeS].column, "Date/Time");
    let found = suggested("time;rpm;coolant [°F];MAP [psi]");
    let coolant = &found.columns[&Quantity::CoolantC];
    // Water boils at 212 F, 100 C: by definition of both scales.
    assert!((212.0 * coolant.scale + coolant.offset - 100.0).abs() < 1e-9);
    assert!((found.columns[&Quantity::ManifoldKpa].scale - 6.894_757).abs() < 1e-9);
}

#[test]
fn a_source_is_known_again_by_its_head_whatever_its_numbers() {
    let key = |text: &str| source_key(&File::of(text).look());
    let one = key("time;rpm;inj\n0;800;3.1\n1;800;3.1\n");
    assert_eq!(one, key("Preamble\nTime;RPM;inj\n5;900;4.1\n6;900;4.1\n7;900;4.1\n"));
    assert_ne!(one, key("time;rpm;inj [ms]\n0;800;3.1\n1;800;3.1\n"));
    assert_ne!(one, key("time;rpm\n0;800\n1;800\n"));
}

#[test]
fn a_column_is_found_by_its_name_small_or_without_its_unit() {
    let layout = File::of("Time [s];Engine speed (1/min);inj\n0;800;3.1\n1;800;3.1\n").look();
    for name in ["Engine speed (1/min)", "engine speed (1/MIN)", "engine speed", " Engine speed "] {
        assert_eq!(layout.column(name), Some(1), "{name}");
    }
    assert_eq!(layout.column("engine"), None);
}

#[test]
fn what_is_no_table_is_said_to_be_none() {
    assert_eq!(look(&File::of("").path()), Err(LogError::Empty));
    for text in ["\u{feff}", "hello\n", "\n\n\n", "one two three\nfour five six\n", "1;2;3\n4;5;6\n", "a\n1\n2\n"] {
        assert_eq!(look(&File::of(text).path()), Err(LogError::NoTable), "{text:?}");
    }
    let missing = look(std::path::Path::new("/nowhere/at/all.csv"));
    assert!(matches!(missing, Err(LogError::Disk(_))));
}

#[test]
fn a_column_that_lacks_is_named() {
    let file = File::of("time;rpm;inj\n0;800;3.1\n1;800;3.1\n");
    let read = |wanted: &Match| read(&file.path(), &file.look(), wanted, &mut |_| {}).unwrap_err();
    let wanted = matched(&[(Quantity::TimeS, "time"), (Quantity::Rpm, "revs"), (Quantity::PetrolMs, "inj")]);
    assert_eq!(read(&wanted), LogError::NoColumn { column: "revs".to_owned() });
    let wanted = matched(&[(Quantity::TimeS, "time"), (Quantity::Rpm, "rpm")]);
    assert_eq!(read(&wanted), LogError::NotMatched { quantity: Quantity::PetrolMs });
}
