//! How long a road comparison of a million rows takes, and how much memory.
//!
//! `cargo bench --bench road` writes a log of a million rows into a temporary file, looks at it, reads it and judges it, prints
//! what that took, and ends with 1 when it is over its target. With `-- --write FILE` it only writes the log, for
//! `beside-pandas`; with `-- --read FILE` it reads that one.
//!
//! The figure held against the target is time on the processor, where the system tells it: what else runs does not count.

use std::fmt::Write as _;
use std::fs::File;
use std::io::{BufWriter, Write as _};
use std::path::Path;
use std::process::ExitCode;
use std::time::Instant;

use fuelwright::calc::road::{Comparison, Plan};
use fuelwright::logs::{Log, compare_and_tell, look, suggest};

const ROWS: u32 = 1_000_000;
const RUNS: usize = 5;
/// Seconds of a processor that a comparison may take.
const TARGET_S: f64 = 1.5;
/// Megabytes that the process may hold at its highest.
const TARGET_MB: f64 = 150.0;

/// Nanoseconds this thread was on a processor, where the system tells.
fn on_processor_ns() -> Option<f64> {
    std::fs::read_to_string("/proc/thread-self/schedstat").ok()?.split(' ').next()?.parse().ok()
}

/// The most memory the process has held, MB.
fn highest_mb() -> f64 {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"));
    line.and_then(|line| line.split_whitespace().next()?.parse::<f64>().ok()).map_or(f64::NAN, |kb| kb / 1024.0)
}

/// A small generator of noise, -1 to 1: the same rows on every machine.
struct Noise(u64);

impl Noise {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        f64::from((self.0 >> 33) as u32) / f64::from(1_u32 << 30) - 1.0
    }
}

/// An invented drive of 100 000 s at 10 rows a second, on petrol and on gas in turns of ten minutes.
fn write(path: &Path) -> std::io::Result<()> {
    let mut file = BufWriter::new(File::create(path)?);
    let mut noise = Noise(1);
    writeln!(file, "time_s,rpm,manifold_kpa,petrol_ms,gas_ms,fuel,coolant_c,closed_loop,short_trim,long_trim")?;
    let mut line = String::new();
    for row in 0..ROWS {
        let time_s = f64::from(row) / 10.0;
        let is_gas = (row / 6000) % 2 == 1;
        // Speed and load wander over the whole map, slowly enough to be steady most of the time.
        let rpm = 2600.0 + 1700.0 * (time_s / 37.0).sin() + 8.0 * noise.next();
        let kpa = 58.0 + 32.0 * (time_s / 23.0).sin() + 0.3 * noise.next();
        let error = if is_gas { 1.02 + 0.03 * (rpm / 900.0).sin() } else { 1.0 };
        let petrol_ms = (0.8 + 0.05 * kpa + 0.0003 * rpm) * error * (1.0 + 0.004 * noise.next());
        let gas_ms = if is_gas { petrol_ms * 1.35 } else { 0.0 };
        let fuel = if is_gas { "LPG" } else { "petrol" };
        line.clear();
        let _ = writeln!(
            line,
            "{time_s:.1},{rpm:.0},{kpa:.1},{petrol_ms:.3},{gas_ms:.3},{fuel},88.5,closed,{:.1},{:.1}",
            2.0 * noise.next(),
            1.5
        );
        file.write_all(line.as_bytes())?;
    }
    file.flush()
}

fn judged(path: &Path) -> Comparison {
    let layout = look(path).expect("it was just written");
    let wanted = suggest(&layout);
    assert_eq!(wanted.columns.len(), 10, "every column is suggested");
    let log = Log { path: path.to_owned(), layout, wanted, stated: None };
    compare_and_tell(&[log], Plan::default()).expect("it can be compared").0
}

fn measure(path: &Path) -> ExitCode {
    let mut taken_s = Vec::with_capacity(RUNS);
    let mut wall_s = Vec::with_capacity(RUNS);
    let mut cells = 0;
    for _ in 0..RUNS {
        let (start, before) = (Instant::now(), on_processor_ns());
        let comparison = judged(path);
        let wall = start.elapsed().as_secs_f64();
        wall_s.push(wall);
        taken_s.push(before.zip(on_processor_ns()).map_or(wall, |(before, after)| (after - before) / 1e9));
        assert_eq!(comparison.rows.petrol + comparison.rows.gas, u64::from(ROWS));
        cells = comparison.cells.iter().filter(|cell| cell.deviation_percent.is_some()).count();
    }
    taken_s.sort_by(f64::total_cmp);
    wall_s.sort_by(f64::total_cmp);
    let bytes = path.metadata().map_or(f64::NAN, |of| of.len() as f64 / 1e6);
    let (median, memory) = (taken_s[RUNS / 2], highest_mb());
    println!("{ROWS} rows, {bytes:.0} MB, {cells} cells judged; may take {TARGET_S} s and {TARGET_MB} MB");
    println!(
        "on the processor: median {median:.3} s, lowest {:.3} s; on the wall: lowest {:.3} s",
        taken_s[0], wall_s[0]
    );
    println!("most memory held: {memory:.1} MB");
    if median > TARGET_S || memory > TARGET_MB { ExitCode::FAILURE } else { ExitCode::SUCCESS }
}

fn main() -> ExitCode {
    // `cargo bench` adds a `--bench` of its own.
    let asked: Vec<String> = std::env::args().skip(1).filter(|argument| argument != "--bench").collect();
    let done = match asked.iter().map(String::as_str).collect::<Vec<_>>()[..] {
        [] => tempfile::NamedTempFile::new().and_then(|file| {
            write(file.path())?;
            Ok(measure(file.path()))
        }),
        ["--write", file] => write(Path::new(file)).map(|()| ExitCode::SUCCESS),
        ["--read", file] => Ok(measure(Path::new(file))),
        _ => {
            eprintln!("it takes --write FILE, --read FILE, or nothing; not {}", asked.join(" "));
            return ExitCode::from(2);
        }
    };
    done.unwrap_or_else(|error| {
        eprintln!("the log cannot be written: {error}");
        ExitCode::from(2)
    })
}
