//! How long a certificate takes the server, and how large its file is.
//!
//! `cargo bench --bench papers` seals and draws certificates that an earlier build signed (`tests/reference/signed/`), prints what
//! that took, and ends with 1 when the one of two pages is over its target. With `-- --content FILE` it writes the content of
//! that one instead, for `beside-reportlab`.
//!
//! The figure is time on the processor, not on the wall, where the system tells it: what else runs does not count.

use std::hint::black_box;
use std::process::ExitCode;
use std::time::Instant;

use fuelwright::model::paper::PersonalPart;
use fuelwright::model::paper::certificate::CertificateContent;
use fuelwright::papers::certificate::{Certificate, certificate};
use fuelwright::seal::{Sealed, Signer, sha256_hex};
use fuelwright::words::{Language, Words};

/// Name, signed content, keeper's part, and whether the target is meant for it: it is set for a paper of two pages.
type Kept = (&'static str, &'static [u8], &'static [u8], bool);

const PAPERS: [Kept; 2] = [
    (
        "inspection",
        include_bytes!("../reference/signed/0.1.0/inspection-pass.json"),
        include_bytes!("../reference/signed/0.1.0/inspection-pass-keeper.json"),
        true,
    ),
    (
        "conversion",
        include_bytes!("../reference/signed/0.1.0/conversion.json"),
        include_bytes!("../reference/signed/0.1.0/conversion-keeper.json"),
        false,
    ),
];

/// Milliseconds of a processor that one certificate may take.
const TARGET_MS: f64 = 10.0;
/// Bytes that its file may have.
const TARGET_BYTES: usize = 120_000;
/// Batches measured.
const BATCHES: usize = 30;
/// Certificates in a batch: the system counts a thread's time in steps of some milliseconds.
const IN_A_BATCH: usize = 10;

/// Nanoseconds this thread was on a processor, where the system tells.
fn on_processor_ns() -> Option<f64> {
    std::fs::read_to_string("/proc/thread-self/schedstat").ok()?.split(' ').next()?.parse().ok()
}

/// What a server does for one certificate, but for the store: freeze, sign, draw, digest.
fn issue(content: &CertificateContent, personal: &PersonalPart, signer: &Signer) -> Vec<u8> {
    let sealed = Sealed::seal(content, signer).expect("it was sealed before").to_json();
    let paper = Certificate { content, personal: Some(personal), sealed: Some(&sealed) };
    let pdf = certificate(&paper, &Words::new(Language::English)).expect("it was drawn before");
    black_box(sha256_hex(&pdf));
    pdf
}

fn content_of(json: &[u8]) -> (Sealed, CertificateContent) {
    let sealed = Sealed::from_json(json).expect("an envelope");
    let content = serde_json::from_slice(sealed.content()).expect("a certificate");
    (sealed, content)
}

/// Prints what one paper took; whether it is over its target.
fn is_over((name, json, keeper, is_target): Kept, signer: &Signer) -> bool {
    let (_, content) = content_of(json);
    let personal: PersonalPart = serde_json::from_slice(keeper).expect("a keeper's part");
    let pdf = issue(&content, &personal, signer);
    let mut taken_ms: Vec<f64> = (0..BATCHES)
        .map(|_| {
            let (start, before) = (Instant::now(), on_processor_ns());
            for _ in 0..IN_A_BATCH {
                black_box(issue(black_box(&content), &personal, signer));
            }
            let batch_ms = match (before, on_processor_ns()) {
                (Some(before), Some(after)) => (after - before) / 1e6,
                _ => start.elapsed().as_secs_f64() * 1e3,
            };
            batch_ms / IN_A_BATCH as f64
        })
        .collect();
    taken_ms.sort_by(f64::total_cmp);
    let pages = lopdf::Document::load_mem(&pdf).expect("it was just made").get_pages().len();
    let (lowest, median, highest) = (taken_ms[0], taken_ms[BATCHES / 2], taken_ms[BATCHES - 1]);
    let is_over = is_target && (median > TARGET_MS || pdf.len() > TARGET_BYTES);
    let verdict = if is_over { "  OVER" } else { "" };
    println!("{name:<12}{pages:>6}{median:>10.2}{lowest:>10.2}{highest:>10.2}{:>10}{verdict}", pdf.len());
    is_over
}

fn measure() -> ExitCode {
    let signer = Signer::from_random(&[7; 32]);
    let how = if on_processor_ns().is_some() { "on the processor" } else { "on the wall" };
    println!("ms {how}; two pages may take {TARGET_MS} ms and {TARGET_BYTES} bytes");
    println!("{:<12}{:>6}{:>10}{:>10}{:>10}{:>10}", "paper", "pages", "median", "lowest", "highest", "bytes");
    let over = PAPERS.into_iter().filter(|paper| is_over(*paper, &signer)).count();
    if over > 0 { ExitCode::FAILURE } else { ExitCode::SUCCESS }
}

fn main() -> ExitCode {
    // `cargo bench` adds a `--bench` of its own.
    let asked: Vec<String> = std::env::args().skip(1).filter(|argument| argument != "--bench").collect();
    match asked.iter().map(String::as_str).collect::<Vec<_>>()[..] {
        [] => measure(),
        ["--content", file] => match std::fs::write(file, content_of(PAPERS[0].1).0.content()) {
            Ok(()) => ExitCode::SUCCESS,
            Err(error) => {
                eprintln!("{file}: {error}");
                ExitCode::from(2)
            }
        },
        _ => {
            eprintln!("it takes --content FILE, or nothing; not {}", asked.join(" "));
            ExitCode::from(2)
        }
    }
}
