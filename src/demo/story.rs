//! One conversion told by the deeds that the screens use, step by step, up to where the teller stops. The demonstration
//! shop is many of these; tests tell them too.

use time::macros::date;
use time::{Date, Duration, OffsetDateTime};

use crate::clock::Clock;
use crate::db;
use crate::model::evidence::{
    AfterDrive, Arrival, CheckAnswer, Checklist, CylinderRow, CylinderTable, EngineCalibration, Evidence, Exhaust,
    ExhaustPoint, FillStopHow, FunctionChecks, HandOver, ItemAnswer, Joint, JointVerdict, LeakJoints, LeakMethod,
    LevelSensing, LevelSensingKind, NewEvidence, ReceivedHow, Region, Section, Suitability, SuitabilityVerdict,
    TrimPoint, Trims,
};
use crate::model::ids::{AttachmentId, CustomerId, EvidenceId, InstrumentId, JobId, VehicleId};
use crate::model::job::{Fuel, JobKind, NewJob, SystemKind};
use crate::model::part::{DatePrecision, NewPart, PartCategory, PartOrigin};
use crate::model::person::Actor;
use crate::model::vehicle::{Aspiration, NewVehicle, OdometerUnit, PetrolInjection, VehicleCategory};
use crate::rules::RuleBook;
use crate::shop::{Refusal, Shop};

/// A job told by deeds.
#[derive(Debug, Clone)]
pub struct Story<'a> {
    /// The shop it is told in.
    pub shop: &'a Shop,
    /// The clock that moves on between steps.
    pub clock: &'a Clock,
    /// Who works.
    pub technician: &'a Actor,
    /// The analyser that is used.
    pub analyser: Option<InstrumentId>,
    /// The job.
    pub job: JobId,
    /// Its engine cylinders.
    pub engine_cylinders: i64,
    /// A serial that no other story has: the parts are told apart by it.
    pub serial: String,
}

/// An invented four-cylinder car, to be changed by struct update.
pub fn car(plate: &str, make: &str, model: &str) -> NewVehicle {
    NewVehicle {
        plate: plate.to_owned(),
        plate_country: "NM".to_owned(),
        vin: String::new(),
        chassis_number: format!("CH{}", crate::model::part::fold(plate)),
        category: VehicleCategory::M1,
        make: make.to_owned(),
        model: model.to_owned(),
        first_registered_on: Some(date!(2014 - 03 - 01)),
        engine_code: "CV16".to_owned(),
        engine_number: String::new(),
        displacement_cm3: Some(1598),
        engine_cylinders: Some(4),
        rated_power_kw: Some(82.0),
        rated_rpm: Some(6000),
        aspiration: Aspiration::Natural,
        boost_kpa: None,
        petrol_injection: PetrolInjection::Port,
        injector_connector: "two-pin oval, grey".to_owned(),
        control_pin: "2".to_owned(),
        gross_mass_kg: Some(1720),
        rear_axle_reserve_kg: Some(180),
        has_catalyst: true,
        is_closed_loop: true,
        maker_idle_co_percent: None,
        maker_raised_co_percent: None,
        maker_lambda_least: None,
        maker_lambda_most: None,
        emission_class: "Euro 5".to_owned(),
        obd_standard: "EOBD".to_owned(),
        has_start_stop: false,
        is_hybrid: false,
        odometer_unit: OdometerUnit::Km,
    }
}

/// What opens a conversion to LPG.
pub fn conversion(vehicle: VehicleId, keeper: CustomerId) -> NewJob {
    NewJob {
        kind: JobKind::Conversion,
        fuel: Fuel::Lpg,
        system_kind: SystemKind::VapourInjection,
        vehicle_id: vehicle,
        keeper_id: keeper,
        bay_id: None,
        is_low_pressure_only: false,
        comes_back_from: None,
        reported_faults: String::new(),
    }
}

/// A part as the plate shows it.
pub fn part(
    category: PartCategory,
    maker: &str,
    type_name: &str,
    mark: &str,
    serial: &str,
    fitted_on: Date,
) -> NewPart {
    NewPart {
        category,
        maker: maker.to_owned(),
        type_name: type_name.to_owned(),
        approval_mark: mark.to_owned(),
        component_class: String::new(),
        serial: serial.to_owned(),
        batch: String::new(),
        made_on: None,
        made_precision: None,
        capacity_l: None,
        test_pressure_kpa: None,
        working_pressure_kpa: None,
        last_tested_on: None,
        end_of_life_on: None,
        place: String::new(),
        fitted_on,
        origin: PartOrigin::Fitted,
    }
}

impl Story<'_> {
    pub(super) fn wait(&self, minutes: i64) -> OffsetDateTime {
        self.clock.advance(Duration::minutes(minutes));
        self.clock.now()
    }

    /// Records one entry, now.
    pub async fn record(
        &self,
        body: Evidence,
        instruments: Vec<InstrumentId>,
        attachments: Vec<AttachmentId>,
    ) -> Result<EvidenceId, Refusal> {
        let new = NewEvidence {
            body,
            measured_at: None,
            replaces_id: None,
            replaces_reason: String::new(),
            instruments,
            attachments,
        };
        self.shop.record_evidence(self.technician, None, self.job, new).await
    }

    async fn plain(&self, body: Evidence) -> Result<EvidenceId, Refusal> {
        self.record(body, Vec::new(), Vec::new()).await
    }

    /// The vehicle arrived.
    pub async fn arrive(&self, odometer_km: i64) -> Result<(), Refusal> {
        self.wait(10);
        let odometer_typed = format!("{odometer_km} km");
        self.plain(Evidence::Arrival(Arrival { odometer_km, odometer_typed, ..Arrival::default() })).await?;
        Ok(())
    }

    /// Intake of a conversion: arrived, examined, suitable.
    pub async fn take_in(&self, odometer_km: i64) -> Result<(), Refusal> {
        self.arrive(odometer_km).await?;
        self.wait(40);
        let cylinders = usize::try_from(self.engine_cylinders).unwrap_or(4);
        let compression_kpa = (0..cylinders).map(|n| if n % 2 == 0 { 1_280.0 } else { 1_240.0 }).collect();
        self.plain(Evidence::Suitability(Suitability {
            compression_kpa,
            trim_idle_percent: Some(1.6),
            trim_raised_percent: Some(2.3),
            fault_codes: String::new(),
            coolant_c: 88.0,
            idle_co_percent: Some(0.04),
            is_ignition_sound: true,
            is_valve_clearance_sound: true,
            has_valve_seat_risk: false,
            verdict: SuitabilityVerdict::Suitable,
            reasons: String::new(),
            accepted_by: String::new(),
        }))
        .await?;
        Ok(())
    }

    /// Sizing: nozzle, heat, lines and container.
    pub async fn size(&self) -> Result<(), Refusal> {
        self.wait(20);
        self.plain(Evidence::NozzleSizing(super::sums::nozzle()?)).await?;
        self.plain(Evidence::HeatSizing(super::gas_side::heat(82.0)?)).await?;
        self.plain(Evidence::LineSizing(super::gas_side::lines(82.0)?)).await?;
        self.plain(Evidence::ContainerSizing(super::sums::container()?)).await?;
        Ok(())
    }

    /// Fitting: parts, wiring, checklist, level.
    pub async fn fit(&self, on: Date, container_made_on: Date) -> Result<(), Refusal> {
        self.wait(180);
        let n = &self.serial;
        let container = NewPart {
            made_on: Some(container_made_on),
            made_precision: Some(DatePrecision::Month),
            capacity_l: Some(54.0),
            test_pressure_kpa: Some(3_000.0),
            end_of_life_on: container_made_on.replace_year(container_made_on.year() + 20).ok(),
            place: "spare wheel well".to_owned(),
            ..part(PartCategory::Container, "Dunmere", "toroidal 630 x 225", "E20 67R-01 4471", &format!("T-{n}"), on)
        };
        let filter = NewPart {
            batch: "26-19".to_owned(),
            ..part(PartCategory::Filter, "Ostrava Vale", "vapour 12 mm", "E4 67R-01 0410", "", on)
        };
        let parts = [
            container,
            part(PartCategory::Multivalve, "Dunmere", "MV 30", "E20 67R-01 2210", &format!("M-{n}"), on),
            part(PartCategory::GasTightHousing, "Dunmere", "H 2", "", &format!("H-{n}"), on),
            part(PartCategory::FillingUnit, "Dunmere", "F 10", "E20 67R-01 1180", &format!("F-{n}"), on),
            part(PartCategory::Vaporiser, "Ostrava Vale", "V 140", "E4 67R-01 0982", &format!("V-{n}"), on),
            part(PartCategory::ShutOffValve, "Ostrava Vale", "S 8", "E4 67R-01 0877", &format!("S-{n}"), on),
            filter,
            part(PartCategory::InjectorRail, "Ostrava Vale", "rail of 4", "E4 67R-01 1177", &format!("R-{n}"), on),
            part(PartCategory::ControlUnit, "Hartwell Electronics", "CU 4", "E4 67R-01 1422", &format!("U-{n}"), on),
        ];
        for part in parts {
            self.shop.fit_part(self.technician, None, self.job, part, String::new()).await?;
        }
        let rows = (1..=self.engine_cylinders).map(|n| CylinderRow {
            engine_cylinder: n,
            petrol_connector: "two-pin oval".to_owned(),
            control_pin: "2".to_owned(),
            branch_mark: format!("branch {n}"),
            gas_injector: n,
            nozzle_mm: super::sums::CHOSEN_MM,
            answers: true,
        });
        self.plain(Evidence::CylinderTable(CylinderTable { rows: rows.collect() })).await?;
        self.check_off(&[]).await?;
        self.plain(Evidence::LevelSensing(LevelSensing { how: LevelSensingKind::Sender, is_routine_explained: false }))
            .await?;
        Ok(())
    }

    /// The rules that the shop goes by on the day of the story.
    pub(super) async fn book(&self) -> Result<RuleBook, Refusal> {
        let mut con = self.shop.db.read().await?;
        Ok(db::rule_books::book_on(&mut con, self.technician.branch, self.clock.now().date()).await?)
    }

    /// The checklist of this kind of job: every line passes but these, each with its note.
    pub async fn check_off(&self, fails: &[(&str, &str)]) -> Result<(), Refusal> {
        let at = self.wait(30);
        let book = self.book().await?;
        let answer = ItemAnswer {
            answer: CheckAnswer::Pass,
            note: String::new(),
            initials: initials(&self.technician.name),
            at,
        };
        let branch = self.technician.branch;
        let job = db::jobs::find(&mut *self.shop.db.read().await?, branch, self.job).await?.ok_or(Refusal::Gone)?;
        let of = |id: &str| match fails.iter().find(|(failed, _)| *failed == id) {
            Some((_, note)) => ItemAnswer { answer: CheckAnswer::Fail, note: (*note).to_owned(), ..answer.clone() },
            None => answer.clone(),
        };
        let answers = book.checks(&job).into_iter().map(|line| (line.id.clone(), of(&line.id))).collect();
        self.plain(Evidence::Checklist(Checklist { answers })).await?;
        Ok(())
    }

    /// Calibration: warm, closed loop, trims alike, clean after driving.
    pub async fn calibrate(&self) -> Result<(), Refusal> {
        self.wait(60);
        self.plain(Evidence::EngineCalibration(EngineCalibration {
            coolant_c: 89.0,
            vaporiser_c: 61.0,
            was_closed_loop: true,
            set_pressure_kpa: 115.0,
            gas_temperature_c: 48.0,
            how: "idle first, then held at 2 500 /min, then a road drive with corrections by hand".to_owned(),
            is_nozzle_adequate: true,
            changeover_c: 38.0,
            fall_back_kpa: 60.0,
            regions: vec![Region { region: "2 000 to 2 500 rpm, 60 to 80 kPa".to_owned(), percent: 4.0 }],
            lock_holder: "nobody; not locked".to_owned(),
            ..EngineCalibration::default()
        }))
        .await?;
        let point = |point: &str, petrol: f64, gas: f64| TrimPoint {
            point: point.to_owned(),
            bank: 1,
            petrol_short_percent: 0.8,
            petrol_long_percent: petrol,
            gas_short_percent: 1.6,
            gas_long_percent: gas,
        };
        self.wait(30);
        let points = vec![point("idle", 1.6, 3.1), point("2 500 /min", 2.3, 4.7)];
        self.plain(Evidence::Trims(Trims { points })).await?;
        self.wait(45);
        self.plain(Evidence::AfterDrive(AfterDrive { petrol_km: 9.0, gas_km: 14.0, ..AfterDrive::default() })).await?;
        Ok(())
    }

    /// Joints of one section, all dry but those named as not tested.
    pub async fn wet_joints(&self, section: Section, names: &[&str], open: usize) -> Result<(), Refusal> {
        let joint = |(n, name): (usize, &&str)| Joint {
            name: (*name).to_owned(),
            verdict: if n + open < names.len() { JointVerdict::Dry } else { JointVerdict::NotTested },
        };
        self.plain(Evidence::LeakJoints(LeakJoints {
            section,
            method: LeakMethod::Foam,
            pressure_gauge_kpa: if section == Section::LpgLiquid { 620.0 } else { 115.0 },
            foam_batch: "F-2".to_owned(),
            foam_expires_on: Some(date!(2028 - 06 - 30)),
            joints: names.iter().enumerate().map(joint).collect(),
        }))
        .await?;
        Ok(())
    }

    /// Proving: tight by foam, clean on both fuels, working.
    pub async fn prove_system(&self) -> Result<(), Refusal> {
        self.wait(25);
        self.wet_joints(Section::LpgLiquid, LIQUID_JOINTS, 0).await?;
        self.wait(10);
        self.wet_joints(Section::LpgVapour, VAPOUR_JOINTS, 0).await?;
        self.exhausts().await?;
        self.wait(20);
        self.plain(Evidence::FunctionChecks(FunctionChecks {
            changeover_works: true,
            returns_when_empty: true,
            shut_off_ignition_s: Some(1.1),
            shut_off_stalled_s: Some(1.6),
            fill_stop_how: Some(FillStopHow::FirstFill),
            fill_stop_l: Some(42.6),
            fill_ticket: "ticket 8812".to_owned(),
            level_shows: true,
            vent_is_open: true,
            excess_flow_present: true,
            starts_on_gas: None,
            label_in_place: true,
        }))
        .await?;
        Ok(())
    }

    /// Exhaust on petrol and on gas.
    pub async fn exhausts(&self) -> Result<(), Refusal> {
        self.exhausts_on(&[false, true]).await
    }

    /// Exhaust on the fuels named, gas or not.
    pub async fn exhausts_on(&self, fuels: &[bool]) -> Result<(), Refusal> {
        let instruments: Vec<InstrumentId> = self.analyser.into_iter().collect();
        for &on_gas in fuels {
            self.wait(12);
            let (co2_idle, co2_raised) = if on_gas { (12.9, 13.1) } else { (14.9, 15.1) };
            let point = |rpm, co_percent, co2_percent, o2_percent, hc_ppm| ExhaustPoint {
                rpm,
                co_percent,
                co2_percent,
                o2_percent,
                hc_ppm,
                analyser_lambda: None,
            };
            let body = Evidence::Exhaust(Exhaust {
                lambda_note: String::new(),
                on_gas,
                analyser_set_to: if on_gas { "lpg" } else { "petrol" }.to_owned(),
                coolant_c: 90.0,
                idle: point(780.0, 0.08, co2_idle, 0.12, 28.0),
                raised: point(2_600.0, 0.05, co2_raised, 0.12, 16.0),
            });
            self.record(body, instruments.clone(), Vec::new()).await?;
        }
        Ok(())
    }

    /// Hand-over: everything explained, signed for.
    pub async fn explain(&self, received_by: &str, signature: AttachmentId) -> Result<(), Refusal> {
        self.wait(20);
        let book = self.book().await?;
        let topics = book.sets.iter().flat_map(|set| &set.topic).map(|topic| topic.id.clone()).collect();
        let body = Evidence::HandOver(HandOver {
            topics,
            received_by: received_by.to_owned(),
            received_how: ReceivedHow::Drawn,
            consents_to_reminders: true,
            manuals_given: true,
        });
        self.record(body, Vec::new(), vec![signature]).await?;
        Ok(())
    }
}

fn initials(name: &str) -> String {
    name.split_whitespace().filter_map(|word| word.chars().next()).collect()
}

/// Joints of the liquid side, container to vaporiser.
pub const LIQUID_JOINTS: &[&str] = &[
    "multivalve outlet",
    "multivalve inlet",
    "filling unit, inside",
    "filling line at housing",
    "supply line at housing",
    "supply line, underbody joint",
    "shut-off valve inlet",
    "shut-off valve outlet",
    "vaporiser inlet",
];

/// Joints of the vapour side, vaporiser to injectors.
pub const VAPOUR_JOINTS: &[&str] =
    &["vaporiser outlet", "filter inlet", "filter outlet", "rail inlet", "rail to hoses"];
