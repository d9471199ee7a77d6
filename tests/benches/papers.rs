//! How long a certificate takes the server, and how large its file is.
//!
//! `cargo bench --bench papers` seals and draws a signed certificate of an earlier build (`tests/reference/signed/`), prints what
//! that took, and ends with 1 when it is over its target. With `-- --content FILE` it writes the content instead, for
//! `beside-reportlab`.
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

/// A conversion with nine parts, told from intake to proving.
const SIGNED: &[u8] = include_bytes!("../reference/signed/0.1.0/conversion.json");
const KEEPER: &[u8] = include_bytes!("../reference/signed/0.1.0/conversion-keeper.json");

/// Milliseconds of a processor that one certificate may take.
const TARGET_MS: f64 = 10.0;
/// Bytes that its file may have.
const TARGET_BYTES: usize = 120_000;
/// Certificates measured.
const RUNS: usize = 100;

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

fn measure(content: &CertificateContent) -> ExitCode {
    let personal: PersonalPart = serde_json::from_slice(KEEPER).expect("a keeper's part");
    let signer = Signer::from_random(&[7; 32]);
    let pdf = issue(content, &personal, &signer);
    let mut taken_ms: Vec<f64> = (0..RUNS)
        .map(|_| {
            let (start, before) = (Instant::now(), on_processor_ns());
            black_box(issue(black_box(content), &personal, &signer));
            match (before, on_processor_ns()) {
                (Some(before), Some(after)) => (after - before) / 1e6,
                _ => start.elapsed().as_secs_f64() * 1e3,
            }
        })
        .collect();
    taken_ms.sort_by(f64::total_cmp);
    let pages = lopdf::Document::load_mem(&pdf).expect("it was just made").get_pages().len();
    let (lowest, median, highest) = (taken_ms[0], taken_ms[RUNS / 2], taken_ms[RUNS - 1]);
    let how = if on_processor_ns().is_some() { "on the processor" } else { "on the wall" };
    println!("certificate of {pages} pages, ms {how}: median {median:.2}, lowest {lowest:.2}, highest {highest:.2}");
    println!("{} bytes; targets {TARGET_MS} ms and {TARGET_BYTES} bytes", pdf.len());
    let is_over = median > TARGET_MS || pdf.len() > TARGET_BYTES;
    if is_over {
        println!("OVER");
        return ExitCode::FAILURE;
    }
    ExitCode::SUCCESS
}

fn main() -> ExitCode {
    let sealed = Sealed::from_json(SIGNED).expect("an envelope");
    let content: CertificateContent = serde_json::from_slice(sealed.content()).expect("a certificate");
    // `cargo bench` adds a `--bench` of its own.
    let asked: Vec<String> = std::env::args().skip(1).filter(|argument| argument != "--bench").collect();
    match asked.iter().map(String::as_str).collect::<Vec<_>>()[..] {
        [] => measure(&content),
        ["--content", file] => match std::fs::write(file, sealed.content()) {
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
