//! Invented content of the papers a shop prints for itself and for who looks into it: sizing sheet, finding report, audit
//! pack; as usual, with hardly anything, and far too much of everything.

use fuelwright::model::doubt::Sort;
use fuelwright::model::paper::GasFuel;
use fuelwright::model::paper::audit_pack::*;
use fuelwright::model::paper::finding_report::*;
use fuelwright::model::paper::sizing_sheet::*;
use time::macros::{date, datetime};

use super::full::{LONG, Much, SERIAL, shop_of, some, text};
use super::sample::rule_sets;

fn owned(pair: [&str; 2]) -> (String, String) {
    let [name, value] = pair;
    (name.into(), value.into())
}

fn step(name: &str, formula: &str, put_in: &str, result: &str) -> StepOnPaper {
    StepOnPaper {
        name: name.into(),
        source: "Çengel and Cimbala, Fluid Mechanics, 2006, 12-4".into(),
        formula: formula.into(),
        put_in: put_in.into(),
        is_arithmetic: !put_in.contains("methane"),
        result: result.into(),
        spread: if result.contains("mm") { "± 0.05 mm".into() } else { String::new() },
    }
}

fn pieces(much: Much) -> Vec<Piece> {
    let steps = vec![
        step("Fuel at rated power", "m = P / (η H)", "82 / (0.33 × 46.1)", "5.39 g/s"),
        step("Speed of sound", "Span and others, 2003", "methane 96 %, 200 kPa, 20 °C", "446 m/s"),
        step("Bore", "d = √(4 A / π)", "√(4 × 3.30 / 3.142)", "2.05 mm"),
    ];
    let cell = |text: &str, state| CellOnPaper { text: text.into(), second: String::new(), state };
    let row = |n: usize| {
        let name = if much == Much::Plenty { format!("Candidate {n} {LONG}") } else { format!("Candidate {n}") };
        let second = if much == Much::Plenty { LONG.into() } else { String::new() };
        vec![
            CellOnPaper { text: name, second, state: Some(SumState::Holds) },
            cell("2.2", None),
            cell("0.81", Some(SumState::Doubtful)),
        ]
    };
    vec![
        Piece::Steps { caption: "Step by step".into(), steps: some(much, &steps, |n| steps[n % 3].clone(), 30) },
        Piece::Table {
            caption: "Candidates".into(),
            columns: vec![("Set".into(), false), ("Bore, mm".into(), true), ("Duty".into(), true)],
            rows: some(much, &[row(1), row(2)], row, 40),
        },
    ]
}

fn sum(title: &str, much: Much) -> SumOnPaper {
    SumOnPaper {
        title: title.into(),
        recorded: "M. Oake, 24 Nov 2026, 11:02".into(),
        corrected: if much == Much::Plenty { format!("corrected: {LONG}") } else { String::new() },
        instruments: if much == Much::Plenty { "P-02, P-03, T-11".into() } else { String::new() },
        state: SumState::Holds,
        verdict: text(much, "A nozzle of 2.2 mm fits"),
        reasons: some(much, &["Duty at rated power 0.81".to_owned()], |n| format!("Reason {n} {LONG}"), 12),
        duty: (much != Much::Little && title == "Nozzle").then(|| DutyOnPaper {
            size_mm: 2.2,
            points: (1..=6).map(|n| (f64::from(n) * 1000.0, f64::from(n) * 0.135)).collect(),
            max_duty: 0.85,
            rated: (6000.0, 0.81),
            limit_rpm: 6296.0,
        }),
        pieces: some(much, &pieces(much), |n| pieces(much)[n].clone(), 2),
        notes: some(much, &["Reckoned by Fuelwright 0.1.0".to_owned()], |n| format!("Note {n} {LONG}"), 9),
    }
}

pub fn sizing_sheet(much: Much) -> SizingSheetContent {
    let titles = match much {
        Much::Little => vec!["Container"],
        _ => vec!["Nozzle", "Container", "Heat"],
    };
    SizingSheetContent {
        format: SIZING_SHEET_FORMAT.into(),
        title: "Sizing sheet".into(),
        shop: shop_of(much),
        number: "J-2026-0118-S".into(),
        job_number: "J-2026-0118".into(),
        printed_on: date!(2026 - 11 - 25),
        vehicle: text(much, "Corvane Pilot 1.6"),
        plate: "NM 47 KTR".into(),
        vin: "ZZZCV16P4K0182335".into(),
        engine: text(much, "CV16, 1 598 cm³, 4 engine cylinders, 82 kW at 6 000/min"),
        fuel: GasFuel::Lpg,
        sums: titles.into_iter().map(|title| sum(title, much)).collect(),
        cautions: some(much, &["The maker's manual comes first.".to_owned()], |n| format!("Caution {n} {LONG}"), 6),
        rule_sets: rule_sets(),
        language: "en".into(),
        is_demonstration: false,
        software_version: env!("CARGO_PKG_VERSION").into(),
    }
}

fn result(n: usize, much: Much) -> ResultOnReport {
    let sort = [Sort::Holds, Sort::InDoubt, Sort::Fails][n % 3];
    let figure = |name: &str| {
        ["", "0.08 %", "at most 0.30 %", "0.11 %", "at most 0.30 %"].map(|one| match one {
            "" => name.to_owned(),
            other => other.to_owned(),
        })
    };
    let has_figures = sort != Sort::InDoubt;
    ResultOnReport {
        job: format!("J-2026-{n:04}"),
        plate: "NM 47 KTR".into(),
        what: text(much, "Exhaust on gas"),
        measured: "20 Nov 2026, 14:10".into(),
        figures: if has_figures { vec![figure("CO at idle"), figure("CO at raised idle")] } else { Vec::new() },
        sort,
        sort_said: ["still holds", "in doubt", "fails"][n % 3].into(),
        why: text(much, "Within its limit with the error taken out."),
    }
}

fn paper(n: usize, much: Much) -> PaperOnReport {
    let decision = |reason: &str| DecisionOnReport {
        decision: "Re-test called".into(),
        reason: text(much, reason),
        by: "R. Tolland, authorisation S-114, 25 Nov 2026, 09:30".into(),
        letter: "Letter sent 25 Nov 2026".into(),
        re_test: format!("Booked as J-2026-{:04}", 500 + n),
        signature: format!("fwk-7 {SERIAL}"),
    };
    PaperOnReport {
        number: format!("C-2026-{n:04}"),
        vehicle: text(much, "NM 47 KTR, Corvane Pilot 1.6"),
        standing: "under review".into(),
        decisions: if n % 3 == 2 { Vec::new() } else { vec![decision("The gauge read low.")] },
    }
}

pub fn finding_report(much: Much) -> FindingReportContent {
    let facts = [owned(["Instrument", "A-2, Lowell four-gas"]), owned(["In doubt", "3 Feb 2026 to 24 Nov 2026"])];
    FindingReportContent {
        format: FINDING_REPORT_FORMAT.into(),
        shop: shop_of(much),
        number: "F-2026-11-24-7Q2K".into(),
        printed_on: date!(2026 - 11 - 25),
        printed_at: datetime!(2026-11-25 16:20 +1),
        text: text(much, "The gas analyser failed its check."),
        opened: "Opened 24 Nov 2026 by a failed check, M. Oake".into(),
        facts: some(much, &facts, |n| (format!("Fact {n}"), LONG.into()), 14),
        errors: some(much, &["CO: reads 0.03 % low".to_owned()], |n| format!("Quantity {n}: {LONG}"), 9),
        has_error: much != Much::Little,
        tally: "Of the results that rest on it: still hold 1, in doubt 1, fail 1.".into(),
        results: some(much, &[result(0, much), result(1, much), result(2, much)], |n| result(n, much), 40),
        papers: some(much, &[paper(0, much), paper(2, much)], |n| paper(n, much), 30),
        closed: if much == Much::Usual { String::new() } else { text(much, "Closed 25 Nov 2026, R. Tolland") },
        still_open: some(much, &["C-2026-0002 waits for a decision".to_owned()], |n| format!("Open {n} {LONG}"), 12),
        language: "en".into(),
        is_demonstration: false,
        software_version: env!("CARGO_PKG_VERSION").into(),
    }
}

fn section(heading: &str, much: Much) -> PackSection {
    let row = |n: usize| {
        let name = if much == Much::Plenty { LONG } else { "R. Tolland" };
        vec![
            PackCell::new(format!("C-2026-{n:04}")).and(if n % 4 == 3 { "void" } else { "" }),
            PackCell::new("25 Nov 2026"),
            PackCell::new(name).and("authorisation S-114"),
        ]
    };
    let heads = ["Number", "Day", "Person"].map(str::to_owned);
    PackSection {
        heading: heading.into(),
        lead: text(much, "Every number of the series, with voids."),
        // A table without rows has no heads.
        heads: some(much, &heads, |n| heads[n].clone(), 3),
        rows: some(much, &[row(1), row(2), row(3)], row, 60),
        when_empty: if much == Much::Little { "None in this time.".into() } else { String::new() },
    }
}

pub fn audit_pack(much: Much) -> AuditPackContent {
    let facts = [owned(["Vehicle", "NM 47 KTR, Corvane Pilot 1.6"]), owned(["Kind", "Conversion"])];
    let job = |n: usize| PackJob {
        number: format!("J-2026-{n:04}"),
        facts: some(much, &facts, |n| (format!("Fact {n}"), LONG.into()), 6),
        sections: vec![section("Proofs", much)],
    };
    AuditPackContent {
        format: AUDIT_PACK_FORMAT.into(),
        shop: shop_of(much),
        number: "2026-01-01 to 2026-11-25".into(),
        from_on: date!(2026 - 01 - 01),
        to_on: date!(2026 - 11 - 25),
        drawn_for: if much == Much::Plenty { LONG.into() } else { "the audit of November".into() },
        drawn_at: datetime!(2026-11-25 16:20 +1),
        sections: ["Papers", "Instruments", "Waivers"].map(|heading| section(heading, much)).to_vec(),
        seed: "48211".into(),
        picked_from: 118,
        jobs: some(much, &[job(12), job(87)], |n| job(n + 1), 10),
        language: "en".into(),
        is_demonstration: false,
        software_version: env!("CARGO_PKG_VERSION").into(),
    }
}
