//! Fuel trims on both fuels at stated points: what the petrol computer adds on gas beyond what it adds on petrol.

use super::JobPage;
use super::facts::Fact;
use super::instruments::Instruments;
use super::reckoned::Reckoned;
use super::record::{Group, Recorded, Taken};
use super::sum::figure;
use crate::model::evidence::{Entry, Evidence, TrimPoint, Trims};
use crate::model::instrument::InstrumentKind;
use crate::model::stage::Stage;
use crate::rules::Quantity;
use crate::unit::Unit;
use crate::web::Error;
use crate::web::app::App;
use crate::web::form::{Form, Wrong};
use crate::web::kit::{self, Cell, Column, Mark, Table, Tone, Verdict};
use crate::words::Words;

/// The form of [`Trims`].
#[derive(Debug)]
pub struct TrimsForm {
    instruments: Instruments,
}

/// Up to here a difference is good, per cent (common practice); the limit of the rules parts acceptable from beyond.
const GOOD_PERCENT: f64 = 5.0;
/// Up to here a difference is acceptable where no rule limits it, per cent (common practice).
const ACCEPTABLE_PERCENT: f64 = 10.0;
const TRIMS: [&str; 4] = ["petrol_short_percent", "petrol_long_percent", "gas_short_percent", "gas_long_percent"];

/// Where trims are read: the regimes that a road comparison tells apart.
const REGIMES: [&str; 4] = ["idle", "raised-idle", "cruise", "load"];

/// Total trims of a regime on petrol and on gas, as the accepted road comparison has them.
fn driven(job: &JobPage, regime: &str) -> Option<(f64, f64)> {
    let Evidence::RoadComparison(one) = &job.file.entry("road", "")?.body else { return None };
    let point = one.comparison.trims.iter().find(|point| point.regime == regime)?;
    Some((point.petrol_percent?, point.gas_percent?))
}

fn of(body: &Evidence) -> Option<&Trims> {
    if let Evidence::Trims(trims) = body { Some(trims) } else { None }
}

/// Least and most that the rules allow, per cent.
fn limits(job: &JobPage) -> (f64, f64) {
    let file = &job.file;
    let limit = job.book.limit(Quantity::TrimDifferencePercent, &file.job, &file.vehicle, None, job.today);
    let (least, most) = limit.map_or((None, None), |limit| (limit.least, limit.most));
    (least.map_or(-ACCEPTABLE_PERCENT, |(least, _)| least), most.map_or(ACCEPTABLE_PERCENT, |(most, _)| most))
}

/// Mark and key of a difference.
fn judged(difference: f64, (least, most): (f64, f64)) -> (Mark, &'static str) {
    match () {
        () if difference < least || difference > most => (Mark::Stops, "beyond"),
        () if difference.abs() > GOOD_PERCENT => (Mark::Met, "acceptable"),
        () => (Mark::Met, "good"),
    }
}

fn signed(w: &Words, percent: f64) -> String {
    let sign = if percent >= 0.05 { "+" } else { "" };
    format!("{sign}{}", w.number(percent, 1))
}

fn total(short: f64, long: f64) -> f64 {
    100.0 * ((1.0 + short / 100.0) * (1.0 + long / 100.0) - 1.0)
}

/// `(1.0625 · 1.0391) / (1.0078 · 1.0156) - 1`.
fn put_in(w: &Words, point: &TrimPoint) -> String {
    let one = |percent: f64| figure(w, 1.0 + percent / 100.0);
    format!(
        "({} · {}) / ({} · {}) - 1",
        one(point.gas_short_percent),
        one(point.gas_long_percent),
        one(point.petrol_short_percent),
        one(point.petrol_long_percent)
    )
}

fn table(job: &JobPage, trims: &Trims) -> Table {
    let w = job.w();
    let limits = limits(job);
    let row = |point: &TrimPoint| {
        let difference = point.difference_percent();
        let (mark, key) = judged(difference, limits);
        vec![
            Cell::new(&point.point).with_second(w.tv("trims-bank-said", &[("bank", point.bank.into())])),
            Cell::new(signed(&w, total(point.petrol_short_percent, point.petrol_long_percent))),
            Cell::new(signed(&w, total(point.gas_short_percent, point.gas_long_percent))),
            Cell::new(signed(&w, difference)).with_second(put_in(&w, point)),
            Cell::new(w.t(format!("trims-{key}"))).marked(mark),
        ]
    };
    let columns = vec![
        Column::text(w.t("trims-column-point")),
        Column::number(w.head("trims-column-petrol")),
        Column::number(w.head("trims-column-gas")),
        Column::number(w.head("trims-column-difference")),
        Column::text(w.t("trims-column-verdict")),
    ];
    Table { w, caption: w.t("trims-table"), columns, rows: trims.points.iter().map(row).collect() }
}

fn verdict(job: &JobPage, trims: &Trims) -> Option<Verdict> {
    let w = job.w();
    let limits = limits(job);
    let worst = trims.worst_percent()?;
    // A limit need not be the same on both sides, so the farthest point is not always the one that fails.
    let failing = trims.points.iter().map(TrimPoint::difference_percent);
    let failing = failing.filter(|one| judged(*one, limits).0 == Mark::Stops);
    let worst = failing.max_by(|a, b| a.abs().total_cmp(&b.abs())).unwrap_or(worst);
    let (mark, key) = judged(worst, limits);
    let tone = if mark == Mark::Stops { Tone::Stop } else { Tone::Met };
    let values = [
        ("worst", signed(&w, worst).into()),
        ("least", w.number(limits.0, 0).into()),
        ("most", w.number(limits.1, 0).into()),
        ("good", w.number(GOOD_PERCENT, 0).into()),
    ];
    let direction = if worst > 0.0 { "trims-gas-lean" } else { "trims-gas-rich" };
    let mut sentences = vec![w.tv(&format!("trims-said-{key}"), &values)];
    if key != "good" {
        sentences.push(w.t(direction));
    }
    Some(Verdict { tone, mark, title: w.t(format!("trims-title-{key}")), sentences })
}

impl Recorded for TrimsForm {
    const KIND: &'static str = "trims";
    const STAGE: Stage = Stage::Calibration;
    const RECKONS: bool = true;

    async fn open(app: &App, job: &JobPage, _: &str) -> Result<Self, Error> {
        let wanted = [("reader_id", InstrumentKind::DiagnosticReader)];
        Ok(Self { instruments: Instruments::open(app, job, &wanted).await? })
    }

    fn blank(&self, job: &JobPage) -> Form {
        let mut form = Form::blank();
        for (at, regime) in REGIMES.into_iter().enumerate() {
            let name = |field: &str| format!("points[{at}][{field}]");
            form.set(&name("point"), job.w().t(format!("road-regime-{regime}")));
            form.set(&name("bank"), "1");
            let Some((petrol, gas)) = driven(job, regime) else { continue };
            // A log tells totals: they stand under the short trim, with nothing under the long one.
            for (field, percent) in TRIMS.iter().zip([petrol, 0.0, gas, 0.0]) {
                form.set(&name(field), format!("{percent:.1}"));
            }
        }
        form
    }

    fn filled(&self, _: &JobPage, entry: &Entry) -> Form {
        let Some(trims) = of(&entry.body) else { return Form::blank() };
        let mut form = Form::blank();
        for (at, point) in trims.points.iter().enumerate() {
            let name = |field: &str| format!("points[{at}][{field}]");
            form.set(&name("point"), &point.point);
            form.set(&name("bank"), point.bank.to_string());
            let measured = [
                point.petrol_short_percent,
                point.petrol_long_percent,
                point.gas_short_percent,
                point.gas_long_percent,
            ];
            for (field, percent) in TRIMS.iter().zip(measured) {
                form.set(&name(field), percent.to_string());
            }
        }
        self.instruments.fill(entry, &mut form);
        form
    }

    fn groups(&self, job: &JobPage, form: &Form) -> Vec<Group> {
        let w = job.w();
        let rows = form.rows_shown("points", 4, 1);
        let rows = rows.iter().map(|row| {
            let mut fields = vec![kit::text(form, &w, row.name("point")), kit::number(form, &w, row.name("bank"))];
            fields.extend(TRIMS.iter().map(|name| kit::number(form, &w, row.name(name)).counted_in("")));
            fields
        });
        let columns = ["point", "bank"].into_iter().chain(TRIMS).map(|name| w.t(format!("trims-{name}"))).collect();
        let instruments = self.instruments.fields(job, form);
        let is_driven =
            form.value("replaces_id").is_empty() && REGIMES.iter().any(|regime| driven(job, regime).is_some());
        let note = w.t(if is_driven { "trims-note-driven" } else { "trims-note-points" });
        let mut groups = vec![Group::table("points", w.t("trims-group-points"), columns, rows.collect()).noted(note)];
        if !instruments.is_empty() {
            groups.push(Group::new("", instruments));
        }
        groups
    }

    fn read(&self, _: &JobPage, form: &mut Form) -> Option<Taken> {
        let mut points = Vec::new();
        let rows = form.rows("points");
        let first = rows.first().map_or_else(|| "points[0][point]".to_owned(), |row| row.name(TRIMS[0]));
        let mut is_any = false;
        for row in rows {
            // A line that names its point and holds nothing else was not measured.
            if TRIMS.iter().all(|name| form.value(&row.name(name)).trim().is_empty()) {
                continue;
            }
            is_any = true;
            let point = form.text(&row.name("point"), 80);
            let bank = form.integer(&row.name("bank"), 1..=2);
            let measured = TRIMS.map(|name| form.number(&row.name(name), Unit::Percent, -99.0..=100.0));
            let (Some(point), Some(bank), [Some(a), Some(b), Some(c), Some(d)]) = (point, bank, measured) else {
                continue;
            };
            points.push(TrimPoint {
                point,
                bank,
                petrol_short_percent: a,
                petrol_long_percent: b,
                gas_short_percent: c,
                gas_long_percent: d,
            });
        }
        if !is_any {
            form.fail(&first, Wrong::Rule("trims-none", Vec::new()));
        }
        let instruments = self.instruments.read(form);
        form.sound()?;
        Some(Taken { body: Evidence::Trims(Trims { points }), instruments, attachments: Vec::new() })
    }

    fn facts(job: &JobPage, entry: &Entry) -> Vec<Fact> {
        let Some(trims) = of(&entry.body) else { return Vec::new() };
        let w = job.w();
        let fact = |point: &TrimPoint| Fact {
            label: format!("{}, {}", point.point, w.tv("trims-bank-said", &[("bank", point.bank.into())])),
            value: format!("{}\u{a0}%", signed(&w, point.difference_percent())),
        };
        trims.points.iter().map(fact).collect()
    }

    fn reckoned(job: &JobPage, body: &Evidence) -> Option<Reckoned> {
        let trims = of(body)?;
        let notes = vec![job.w().t("trims-note-formula")];
        Some(Reckoned { verdict: verdict(job, trims), tables: vec![table(job, trims)], notes })
    }
}
