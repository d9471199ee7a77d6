//! The demonstration shop: Saltmarsh Autogas, its people, three years of vehicles, and a dozen jobs that stand where jobs
//! stand. Everything is invented. The same days before today each time, so the same content each time.

use std::cell::Cell;

use time::{Date, Duration, OffsetDateTime};

use super::cast::{Cast, Passed, Standing, cast, open_jobs, passed};
use super::later::Known;
use super::story::{LIQUID_JOINTS, Story, VAPOUR_JOINTS, car, conversion};
use crate::attachments::{Sent, Takes};
use crate::clock::{Clock, Zone};
use crate::db;
use crate::db::rule_books::SHOP;
use crate::model::booking::NewBooking;
use crate::model::customer::{NewCustomer, ReminderBasis};
use crate::model::duty::{ClosedHow, Duty, DutyKind};
use crate::model::evidence::{Evidence, LeakDecay, NewEvidence, NozzleVerdict, PressureKind, Section, TestGas};
use crate::model::ids::{AttachmentId, BayId, CustomerId, InstrumentId, JobId, VehicleId};
use crate::model::instrument::{InstrumentKind, NewInstrument};
use crate::model::job::{JobKind, JobState, NewJob};
use crate::model::person::Actor;
use crate::model::road::RoadPhase;
use crate::model::vehicle::VehicleRole;
use crate::rules::embedded;
use crate::shop::attachments::FilePlace;
use crate::shop::duties::Closing;
use crate::shop::findings::{FoundIn, NewFinding};
use crate::shop::instruments::{FOUND_OUT_OF_DATE, NewCertificate, NewCheck};
use crate::shop::issue::NewIssue;
use crate::shop::rule_files::NewRuleFile;
use crate::shop::{Refusal, Shop};

/// Everything the teller holds while telling.
pub(super) struct Teller<'a> {
    pub(super) shop: &'a Shop,
    clock: &'a Clock,
    zone: Zone,
    pub(super) cast: Cast,
    analyser: InstrumentId,
    bays: Vec<BayId>,
    /// Pressure gauge and thermometer, in this order.
    gauges: Vec<InstrumentId>,
    serial: Cell<u32>,
}

/// Tells the whole shop into an empty store. `clock` stands still and is moved on; it ends at `until`.
///
/// # Errors
/// [`Refusal`] when a deed is refused: the demonstration no longer follows the rules.
pub async fn tell(shop: &Shop, clock: &Clock, until: OffsetDateTime) -> Result<(), Refusal> {
    let cast = cast(shop).await?;
    let zone = Zone::named(super::cast::ZONE).map_err(|error| Refusal::Broken(error.to_string()))?;
    let mut bays = Vec::new();
    for name in ["Bay 1", "Bay 2", "Bay 3"] {
        bays.push(shop.add_bay(&cast.manager, None, name.to_owned()).await?);
    }
    let analyser = instrument(shop, clock, &cast.technician, InstrumentKind::GasAnalyser, "A-2", 0.01, "%").await?;
    let mut teller = Teller { shop, clock, zone, cast, analyser, bays, gauges: Vec::new(), serial: Cell::new(118_200) };
    let mut known = Vec::new();
    for one in passed() {
        known.push(teller.past(until, one).await?);
    }
    teller.keep_up(until).await?;
    teller.inspect(until, known[2]).await?;
    teller.take_off(until, known[6]).await?;
    teller.gauges = teller.instruments_of_today(until).await?;
    for one in open_jobs() {
        teller.open(until, one).await?;
    }
    teller.book(until).await?;
    teller.move_to(until);
    teller.ask_for_the_road(until).await
}

/// The shop's own lines with those that ask for a road comparison taken in.
fn lines_with_the_road() -> Option<String> {
    let (lines, offered) = embedded(SHOP)?.split_once("# [[proof]]")?;
    let taken = format!("# [[proof]]{offered}")
        .lines()
        .map(|line| line.trim_start_matches("# ").to_owned() + "\n")
        .collect::<String>();
    Some(format!("{lines}{taken}"))
}

/// A signatory who looked at every photo that the rules ask for.
pub(super) fn seen() -> NewIssue {
    NewIssue::seen(&["odometer", "vin-plate", "container-plate"])
}

/// A picture that is plainly no photograph: a flat tone, so that nobody takes it for evidence.
fn flat_picture() -> Result<Vec<u8>, Refusal> {
    let mut bytes = std::io::Cursor::new(Vec::new());
    let picture = image::RgbImage::from_pixel(320, 200, image::Rgb([236, 231, 219]));
    image::DynamicImage::ImageRgb8(picture)
        .write_to(&mut bytes, image::ImageFormat::Png)
        .map_err(|error| Refusal::Broken(error.to_string()))?;
    Ok(bytes.into_inner())
}

async fn instrument(
    shop: &Shop,
    clock: &Clock,
    who: &Actor,
    kind: InstrumentKind,
    code: &str,
    resolution: f64,
    unit: &str,
) -> Result<InstrumentId, Refusal> {
    let new = NewInstrument {
        code: code.to_owned(),
        kind,
        maker: "Lowell".to_owned(),
        type_name: "workshop pattern".to_owned(),
        serial: format!("L-{}", code.replace('-', "")),
        resolution: Some(resolution),
        standard_uncertainty: Some(resolution / 2.0),
        unit: unit.to_owned(),
        needs_daily_check: matches!(kind, InstrumentKind::GasAnalyser | InstrumentKind::LeakDetector),
    };
    let id = shop.add_instrument(who, None, new).await?;
    certify(shop, who, id, clock.now().date(), 5).await?;
    Ok(id)
}

async fn certify(shop: &Shop, who: &Actor, id: InstrumentId, on: Date, years: i64) -> Result<(), Refusal> {
    let new = NewCertificate {
        number: format!("NM-{}-{}", on.year(), on.ordinal()),
        laboratory: "Northmere Metrology".to_owned(),
        calibrated_on: on,
        due_on: on + Duration::days(365 * years),
        expanded_uncertainty: Some(0.1),
        coverage_factor: Some(2.0),
        attachment_id: None,
        found_wrong: String::new(),
    };
    shop.record_certificate(who, None, id, new).await
}

impl Teller<'_> {
    fn move_to(&self, at: OffsetDateTime) {
        let ahead = at - self.clock.now();
        if ahead.is_positive() {
            self.clock.advance(ahead);
        }
    }

    pub(super) fn now(&self) -> OffsetDateTime {
        self.clock.now()
    }

    /// Moves on to a morning so many days before the end.
    pub(super) fn morning(&self, until: OffsetDateTime, days_before: i64) {
        let day = self.zone.day_of(until) - Duration::days(days_before);
        if let Some(at) = self.zone.instant(day, 8, 0) {
            self.move_to(at);
        }
    }

    pub(super) async fn check_analyser(&self) -> Result<(), Refusal> {
        let check = NewCheck {
            checked_at: self.clock.now(),
            has_passed: true,
            as_found_error: None,
            note: "zero and leak check".to_owned(),
        };
        self.shop.record_check(&self.cast.technician, None, self.analyser, check).await
    }

    pub(super) async fn picture(&self, job: JobId, slot: &str) -> Result<AttachmentId, Refusal> {
        let sent = vec![Sent { name: format!("{slot}.png"), content: flat_picture()?, taken_at: String::new() }];
        let place = FilePlace::of_job(job, slot);
        let sorted = self.shop.keep_files(&self.cast.technician, None, place, Takes::Photos, sent).await?;
        sorted.kept.first().copied().ok_or(Refusal::Gone)
    }

    async fn keeper(&self, name: &str, n: usize) -> Result<CustomerId, Refusal> {
        let first = name.split(' ').next().unwrap_or(name).to_lowercase();
        let new = NewCustomer {
            name: name.to_owned(),
            name_in_latin: String::new(),
            address: format!("{} Fen Lane\nNorthmere", n + 3),
            phone: format!("0555 {:04}", 140 + n),
            mail: if n % 7 == 6 { String::new() } else { format!("{first}.{n}@example.org") },
            // Some read Polish: what they are handed speaks it.
            language: if n % 6 == 5 { "pl" } else { "en" }.to_owned(),
            reminder_basis: if n % 9 == 8 { ReminderBasis::None } else { ReminderBasis::Contract },
            reminder_basis_on: Some(self.clock.now().date()),
        };
        self.shop.add_customer(&self.cast.desk, None, new).await
    }

    async fn vehicle(&self, plate: &str, make: &str, model: &str, keeper: CustomerId) -> Result<VehicleId, Refusal> {
        let people = vec![(VehicleRole::Owner, keeper), (VehicleRole::Keeper, keeper)];
        self.shop.add_vehicle(&self.cast.desk, None, car(plate, make, model), false, people).await
    }

    pub(super) fn story(&self, job: JobId) -> (Story<'_>, Date) {
        self.serial.set(self.serial.get() + 7);
        let story = Story {
            shop: self.shop,
            clock: self.clock,
            technician: &self.cast.technician,
            analyser: Some(self.analyser),
            job,
            engine_cylinders: 4,
            serial: self.serial.get().to_string(),
        };
        (story, self.zone.day_of(self.clock.now()))
    }

    /// A conversion of the past, from intake to hand-over.
    async fn past(&self, until: OffsetDateTime, one: Passed) -> Result<Known, Refusal> {
        self.morning(until, one.days_before);
        self.check_analyser().await?;
        let n = usize::try_from(self.serial.get() % 97).unwrap_or(0);
        let keeper = self.keeper(one.keeper, n).await?;
        let vehicle = self.vehicle(one.plate, one.make, one.model, keeper).await?;
        let job = self.shop.open_job(&self.cast.desk, None, conversion(vehicle, keeper)).await?;
        for slot in ["odometer", "vin-plate", "container-plate"] {
            self.picture(job, slot).await?;
        }
        let made_on = self.zone.day_of(until) + Duration::days(one.container_ends_in - 3_652);
        let (story, today) = self.story(job);
        story.take_in(one.odometer_km).await?;
        story.size().await?;
        story.fit(today, made_on.min(today)).await?;
        story.calibrate().await?;
        story.prove_system().await?;
        let signature = self.picture(job, "signature").await?;
        let (story, _) = self.story(job);
        story.explain(one.keeper, signature).await?;
        let first = self.shop.issue_certificate(&self.cast.signatory, None, job, seen()).await?;
        if one.is_replaced {
            let reason = "the engine number was missing".to_owned();
            let new = NewIssue { supersedes: Some((first, reason)), ..seen() };
            self.shop.issue_certificate(&self.cast.signatory, None, job, new).await?;
        }
        self.shop.hand_over(&self.cast.desk, None, job).await?;
        let odometer_km = one.odometer_km + 11_800;
        Ok(Known { vehicle, keeper, keeper_name: one.keeper, odometer_km })
    }

    /// What fell due in the past was done, here or elsewhere; only what is recent is still open.
    async fn keep_up(&self, until: OffsetDateTime) -> Result<(), Refusal> {
        let recent = self.zone.day_of(until) - Duration::days(40);
        // A filter of three years ago has fallen due and been changed twice since.
        for _ in 0..4 {
            let old: Vec<Duty> = {
                let mut con = self.shop.db.read().await?;
                let mut all = Vec::new();
                for job in db::jobs::list_by_state(&mut con, self.cast.desk.branch, JobState::HandedOver).await? {
                    all.extend(db::duties::list_of_vehicle(&mut con, job.branch_id, job.vehicle_id).await?);
                }
                let is_old = |duty: &Duty| duty.closed_at.is_none() && duty.due_on < recent;
                all.into_iter().filter(|duty| is_old(duty) && duty.kind != DutyKind::Container).collect()
            };
            for duty in old {
                let closing = Closing {
                    how: ClosedHow::Elsewhere,
                    job: None,
                    met_on: duty.due_on,
                    note: "service sheet, Harbour Garage".to_owned(),
                    starts_next: duty.kind == DutyKind::Filter,
                };
                self.shop.close_duty(&self.cast.desk, None, duty.id, closing).await?;
            }
        }
        Ok(())
    }

    /// The gauges and detectors on the wall today; one is out of date and known to be.
    async fn instruments_of_today(&self, until: OffsetDateTime) -> Result<Vec<InstrumentId>, Refusal> {
        let mut gauges = Vec::new();
        self.morning(until, 20);
        let who = &self.cast.technician;
        for (kind, code, resolution, unit) in [
            (InstrumentKind::PressureGauge, "G-03", 0.1, "kPa"),
            (InstrumentKind::Thermometer, "T-1", 0.1, "K"),
            (InstrumentKind::LeakDetector, "D-1", 1.0, "ppm"),
            (InstrumentKind::CompressionGauge, "C-1", 10.0, "kPa"),
        ] {
            gauges.push(instrument(self.shop, self.clock, who, kind, code, resolution, unit).await?);
        }
        let old = NewInstrument {
            code: "G-01".to_owned(),
            kind: InstrumentKind::PressureGauge,
            maker: "Lowell".to_owned(),
            type_name: "dial, 600 kPa".to_owned(),
            serial: "L-0098".to_owned(),
            resolution: Some(5.0),
            standard_uncertainty: None,
            unit: "kPa".to_owned(),
            needs_daily_check: false,
        };
        let old = self.shop.add_instrument(who, None, old).await?;
        let calibrated_on = self.zone.day_of(until) - Duration::days(400);
        certify(self.shop, who, old, calibrated_on, 1).await?;
        let text = "G-01 ran out of calibration; not to be used until its certificate is entered".to_owned();
        let found_in = FoundIn::Instrument(old);
        let new = NewFinding { found_in, source: FOUND_OUT_OF_DATE.to_owned(), text, found_at: None };
        self.shop.open_finding(who, None, new).await?;
        Ok(gauges)
    }

    /// A job that stands somewhere on the rail today.
    async fn open(&self, until: OffsetDateTime, one: Standing) -> Result<(), Refusal> {
        self.morning(until, one.days_before);
        self.check_analyser().await?;
        let n = usize::try_from(self.serial.get() % 89).unwrap_or(0);
        let keeper = self.keeper(one.keeper, n).await?;
        let vehicle = self.vehicle(one.plate, one.make, one.model, keeper).await?;
        let bay = self.bays.get(one.bay).copied();
        let new = NewJob { bay_id: bay, reported_faults: one.reported.to_owned(), ..conversion(vehicle, keeper) };
        let job = self.shop.open_job(&self.cast.desk, None, new).await?;
        self.estimate(job, one.plate, self.zone.day_of(self.now())).await?;
        if one.reaches == 0 {
            return Ok(());
        }
        for slot in ["odometer", "vin-plate"] {
            self.picture(job, slot).await?;
        }
        let (story, today) = self.story(job);
        story.take_in(one.odometer_km).await?;
        if one.reaches >= 2 {
            if one.is_thirsty { story.size_thirsty().await? } else { story.size().await? }
        }
        if one.reaches >= 3 {
            story.fit(today, today - Duration::days(90)).await?;
            self.picture(job, "container-plate").await?;
        }
        let (story, _) = self.story(job);
        if one.reaches == 3 {
            // What was found on the road, before anything is corrected.
            story.drive_on_both(RoadPhase::Before).await?;
        }
        if one.reaches >= 4 {
            story.calibrate().await?;
            story.drive_on_both(RoadPhase::After).await?;
        }
        if one.reaches == 5 {
            story.wet_joints(Section::LpgLiquid, LIQUID_JOINTS, 4).await?;
            story.wet_joints(Section::LpgVapour, VAPOUR_JOINTS, 0).await?;
            if let [gauge, thermometer, ..] = self.gauges[..] {
                self.decay_too_short(job, gauge, thermometer).await?;
            }
        }
        if one.reaches >= 6 {
            story.prove_system().await?;
        }
        if !one.held_for.is_empty() {
            self.shop.begin_hold(&self.cast.desk, None, job, one.held_for.to_owned()).await?;
        }
        Ok(())
    }

    /// Ten minutes with a coarse thermometer: the test cannot tell.
    async fn decay_too_short(&self, job: JobId, gauge: InstrumentId, thermometer: InstrumentId) -> Result<(), Refusal> {
        let started_at = self.clock.now();
        self.clock.advance(Duration::minutes(10));
        let body = Evidence::LeakDecay(LeakDecay {
            section: Section::LpgVapour,
            test_gas: TestGas::Nitrogen,
            pressure_kind: PressureKind::Gauge,
            ambient_kpa: 101.3,
            lowest_rating_gauge_kpa: 450.0,
            volume_l: 2.0,
            volume_relative_standard_uncertainty: 0.05,
            volume_how: "by expansion from a known volume".to_owned(),
            start_kpa: 300.0,
            end_kpa: 299.6,
            start_c: 20.0,
            end_c: 20.0,
            started_at,
            ended_at: self.clock.now(),
            unsettled_reason: String::new(),
            gauge_id: gauge,
            thermometer_id: thermometer,
            pressure_resolution_kpa: 0.1,
            pressure_standard_uncertainty_kpa: 0.05,
            temperature_standard_uncertainty_k: 0.1,
            settled_c: Some(20.0),
            readings: Vec::new(),
        });
        let new = NewEvidence {
            body,
            measured_at: None,
            replaces_id: None,
            replaces_reason: String::new(),
            instruments: vec![gauge, thermometer],
            attachments: Vec::new(),
        };
        self.shop.record_evidence(&self.cast.technician, None, job, new).await.map(|_| ())
    }

    /// From today the shop asks for a road comparison before a certificate.
    async fn ask_for_the_road(&self, until: OffsetDateTime) -> Result<(), Refusal> {
        let text = lines_with_the_road().ok_or(Refusal::Gone)?;
        let from_on = self.zone.day_of(until);
        let new = NewRuleFile { name: SHOP.to_owned(), text, from_on, opened_at: None, second: None };
        self.shop.change_rules(&self.cast.manager, None, new).await
    }

    /// This week's bookings.
    async fn book(&self, until: OffsetDateTime) -> Result<(), Refusal> {
        let today = self.zone.day_of(until);
        let people = [("Odette Pryce", "0555 0301"), ("Ben Falk", "0555 0302"), ("Rhea Moss", "0555 0303")];
        for (n, (name, phone)) in people.into_iter().enumerate() {
            let day = today + Duration::days(1 + i64::try_from(n).unwrap_or(0));
            let (Some(starts_at), Some(ends_at)) = (self.zone.instant(day, 8, 30), self.zone.instant(day, 16, 0))
            else {
                continue;
            };
            let Some(bay_id) = self.bays.get(n).copied() else { continue };
            let new = NewBooking {
                bay_id,
                starts_at,
                ends_at,
                name: name.to_owned(),
                phone: phone.to_owned(),
                plate: String::new(),
                job_kind: JobKind::Conversion,
                note: String::new(),
                doubled_reason: String::new(),
            };
            self.shop.make_booking(&self.cast.desk, None, new).await?;
        }
        Ok(())
    }
}

impl Story<'_> {
    /// An engine that needs more than the largest nozzle in the shop's drawer.
    async fn size_thirsty(&self) -> Result<(), Refusal> {
        let sheet = super::sums::nozzle_of(165.0, 6_200.0, 4)?;
        debug_assert_ne!(sheet.verdict, NozzleVerdict::Fits);
        self.record(Evidence::NozzleSizing(sheet), Vec::new(), Vec::new()).await?;
        self.record(Evidence::HeatSizing(super::gas_side::heat(165.0)?), Vec::new(), Vec::new()).await?;
        self.record(Evidence::ContainerSizing(super::sums::container()?), Vec::new(), Vec::new()).await?;
        Ok(())
    }
}
