//! Two logs of an invented drive, told by the deeds that the pages use: handed in, matched, compared, accepted.
//!
//! The engine is made up: its injection time is a plain function of speed and load. One gas side is lean in a region, as it
//! is found before the corrections; the other is as it is after them.

use std::fmt::Write as _;

use super::story::Story;
use crate::db;
use crate::logs::{self, Log};
use crate::model::ids::RoadSessionId;
use crate::model::road::{NewRoadSession, RoadPhase, Stated};
use crate::rules::road::plan;
use crate::shop::Refusal;
use crate::shop::road::{RoadMatched, RoadOpened, SentLog};

/// Middles of the operating points that are driven: speed, 1/min, and manifold pressure, kPa.
const POINTS: [(f64, f64); 14] = [
    (850.0, 35.0),
    (1_750.0, 45.0),
    (1_750.0, 65.0),
    (2_250.0, 45.0),
    (2_250.0, 65.0),
    (2_250.0, 75.0),
    (2_750.0, 45.0),
    (2_750.0, 65.0),
    (2_750.0, 75.0),
    (2_750.0, 85.0),
    (3_250.0, 45.0),
    (3_250.0, 65.0),
    (3_250.0, 75.0),
    (3_250.0, 85.0),
];
/// Times round all points.
const ROUNDS: usize = 9;
/// Rows a second.
const PER_S: usize = 10;
/// Rows on the way to a point, and at it.
const ROWS: (usize, usize) = (20, 20);

/// Where gas is lean before the corrections, and by which share.
fn lean(rpm: f64, kpa: f64) -> f64 {
    if (2_000.0..3_000.0).contains(&rpm) && (60.0..80.0).contains(&kpa) { 0.09 } else { 0.005 }
}

/// A wobble that is the same in every demonstration: -1 to 1.
fn wobble(n: usize) -> f64 {
    let mixed = (n as u64).wrapping_mul(0x9e37_79b9_7f4a_7c15);
    let mixed = (mixed ^ (mixed >> 31)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    f64::from(u32::try_from(mixed >> 40).unwrap_or(0)) / f64::from(1_u32 << 23) - 1.0
}

/// A log of one fuel, with trims and closed loop; decimal commas, as many a tool writes them.
fn drive(on_gas: bool, is_corrected: bool) -> String {
    let mut out = String::from(
        "Invented drive of the demonstration\n\
         Time [s];Engine speed [1/min];MAP [kPa];Injection petrol [ms];Coolant temp [°C];Closed loop;Short trim [%];Long trim [%]\n",
    );
    let mut n = 0;
    for round in 0..ROUNDS {
        for (rpm, kpa) in POINTS {
            for row in 0..ROWS.0 + ROWS.1 {
                n += 1;
                let time_s = n as f64 / PER_S as f64;
                let away = ROWS.0.saturating_sub(row) as f64;
                let (rpm, kpa) = (rpm + 25.0 * away, kpa + 0.9 * away * if round % 2 == 0 { 1.0 } else { -1.0 });
                let off = match (on_gas, is_corrected) {
                    (false, _) => 0.0,
                    (true, true) => 0.006,
                    (true, false) => lean(rpm, kpa),
                };
                let ms = (1.0 + 0.08 * kpa + rpm / 8_000.0) * (1.0 + off) * (1.0 + 0.01 * wobble(n));
                let values = [
                    format!("{time_s:.1}"),
                    format!("{:.0}", rpm + 12.0 * wobble(n + 11)),
                    format!("{:.1}", kpa + 0.7 * wobble(n + 5)),
                    format!("{ms:.3}"),
                    "89".to_owned(),
                    "1".to_owned(),
                    format!("{:.1}", 100.0 * off / 2.0 + wobble(n + 2)),
                    format!("{:.1}", 0.8 + 100.0 * off / 2.0),
                ];
                // Writing into a String cannot fail.
                let _ = writeln!(out, "{}", values.join(";").replace('.', ","));
            }
        }
    }
    out
}

impl Story<'_> {
    /// A drive on both fuels: found lean before the corrections, or alike and accepted after them.
    pub async fn drive_on_both(&self, phase: RoadPhase) -> Result<(), Refusal> {
        self.wait(40);
        let is_corrected = phase == RoadPhase::After;
        let sent = [(false, Stated::Petrol), (true, Stated::Gas)].map(|(on_gas, stated)| {
            let name = format!("drive-{phase}-{stated}.csv");
            self.received(&drive(on_gas, is_corrected)).map(|received| SentLog { name, received, stated: Some(stated) })
        });
        let sent = sent.into_iter().collect::<Result<Vec<SentLog>, Refusal>>()?;
        let new = NewRoadSession { phase, driven_at: self.clock.now() };
        let session = self.shop.keep_road_logs(self.technician, None, self.job, new, sent).await?;
        self.compare(session).await?;
        if is_corrected {
            let opened = RoadOpened { job: self.job, session, version: 2 };
            self.shop.accept_road_comparison(self.technician, None, opened, None, String::new()).await?;
        }
        Ok(())
    }

    fn received(&self, text: &str) -> Result<crate::attachments::Received, Refusal> {
        let broken = |error: std::io::Error| Refusal::Broken(error.to_string());
        let mut incoming = self.shop.files().incoming().map_err(broken)?;
        incoming.write(text.as_bytes()).map_err(broken)?;
        incoming.finish().map_err(broken)
    }

    /// What the columns are, as the form would suggest it, and what came of it.
    async fn compare(&self, session: RoadSessionId) -> Result<(), Refusal> {
        let broken = |error: &dyn std::fmt::Display| Refusal::Broken(error.to_string());
        let (branch, files) = (self.technician.branch, self.shop.files());
        let mut con = self.shop.db.read().await?;
        let kept = db::road_sessions::find(&mut con, branch, self.job, session).await?.ok_or(Refusal::Gone)?;
        let file = db::job_files::find(&mut con, branch, self.job).await?.ok_or(Refusal::Gone)?;
        drop(con);
        let (mut wanted, mut matched) = (Vec::new(), Vec::new());
        for log in &kept.logs {
            let path = files.path(&log.file.sha256).ok_or(Refusal::Gone)?;
            let layout = logs::look(&path).map_err(|error| broken(&error))?;
            let one = logs::suggest(&layout);
            matched.push(RoadMatched { source_key: logs::source_key(&layout), matched: one.clone() });
            wanted.push(Log { path, layout, wanted: one, stated: log.stated.map(Stated::burned) });
        }
        let asked = plan(&self.book().await?, &file, self.clock.now().date());
        let found = self.shop.compare_logs(wanted, asked).await?.map_err(|error| broken(&error))?;
        let opened = RoadOpened { job: self.job, session, version: 1 };
        self.shop.record_road_comparison(self.technician, None, opened, matched, found).await
    }
}
