//! Any bytes as a log: looked at, matched, read, gathered. Nothing may panic, hang or grow.
#![no_main]
#![allow(dead_code, unused_imports)]

#[path = "../../../src/calc/mod.rs"]
pub mod calc;
#[path = "../../../src/logs/mod.rs"]
pub mod logs;

use std::path::PathBuf;
use std::sync::LazyLock;

use calc::road::{Gatherer, Has, Plan, Quantity};
use logs::{Match, Matched, Row};

/// Where the bytes lie: in memory where the system has a folder for that.
static PLACE: LazyLock<PathBuf> = LazyLock::new(|| {
    let memory = PathBuf::from("/dev/shm");
    let folder = if memory.is_dir() { memory } else { std::env::temp_dir() };
    folder.join(format!("fuelwright-fuzz-{}", std::process::id()))
});

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| {
    std::fs::write(&*PLACE, bytes).expect("a folder for a small file");
    let Ok(layout) = logs::look(&PLACE) else { return };
    let mut wanted = logs::suggest(&layout);
    // What is not suggested is taken in order, so that reading is always tried.
    for (quantity, column) in Quantity::ALL.into_iter().zip(&layout.columns) {
        let by_place = Matched { column: column.name.clone(), scale: 1.0, offset: 0.0 };
        wanted.columns.entry(quantity).or_insert(by_place);
    }
    let mut gatherer = Gatherer::new(Plan::default(), Has::of(wanted.columns.keys().copied()));
    gatherer.begin_log(None);
    let told = logs::read(&PLACE, &layout, &wanted, &mut |row| match row {
        Row::Sample(sample) => {
            assert!(sample.time_s.is_finite() && sample.rpm.is_finite() && sample.petrol_ms.is_finite());
            gatherer.push(&sample);
        }
        Row::Gap => gatherer.gap(),
        Row::Broken(_) => gatherer.broken(),
    });
    if told.is_ok() {
        let _ = gatherer.finish();
    }
    let _: Match = wanted;
});
