//! A conversion told by deeds, for tests that begin where it ends.

use fuelwright::attachments::{Sent, Takes};
use fuelwright::demo::story::{Story, car, conversion};
use fuelwright::model::customer::{NewCustomer, ReminderBasis};
use fuelwright::model::ids::{AttachmentId, InstrumentId, JobId};
use fuelwright::model::instrument::{InstrumentKind, NewInstrument};
use fuelwright::model::person::Actor;
use fuelwright::model::vehicle::VehicleRole;
use fuelwright::shop::attachments::FilePlace;
use fuelwright::shop::instruments::{NewCertificate, NewCheck};
use fuelwright::shop::issue::NewIssue;
use time::Duration;
use time::macros::date;

use crate::support::TestShop;

/// A one-pixel PNG drawn by the image library: what a photo is to these tests.
pub fn pixel() -> Vec<u8> {
    let mut bytes = std::io::Cursor::new(Vec::new());
    image::DynamicImage::new_rgb8(40, 30).write_to(&mut bytes, image::ImageFormat::Png).unwrap();
    bytes.into_inner()
}

/// A signatory who ticked every photo that the rules ask for.
pub fn seen() -> NewIssue {
    NewIssue::seen(&["odometer", "vin-plate", "container-plate"])
}

/// What a story begins with.
pub struct Opened {
    pub jon: Actor,
    pub job: JobId,
    pub analyser: InstrumentId,
}

impl TestShop {
    /// A customer, a vehicle, an analyser in calibration and checked today, an open conversion.
    pub async fn opened(&self) -> Opened {
        let (mara, jon) = (self.actor(self.mara).await, self.actor(self.jon).await);
        let customer = NewCustomer {
            name: "Ilse Marrow".into(),
            name_in_latin: String::new(),
            address: "Fen Lane 7\nNorthmere".into(),
            phone: "0555 0142".into(),
            mail: "ilse.marrow@example.org".into(),
            language: "en".into(),
            reminder_basis: ReminderBasis::Consent,
            reminder_basis_on: Some(date!(2026 - 05 - 12)),
        };
        let keeper = self.shop.add_customer(&mara, None, customer).await.unwrap();
        let people = vec![(VehicleRole::Owner, keeper), (VehicleRole::Keeper, keeper)];
        let vehicle =
            self.shop.add_vehicle(&mara, None, car("NM 47 KTR", "Corvane", "Pilot 1.6"), false, people).await.unwrap();
        let job = self.shop.open_job(&mara, None, conversion(vehicle, keeper)).await.unwrap();
        let analyser = self.analyser(&jon).await;
        Opened { jon, job, analyser }
    }

    async fn analyser(&self, jon: &Actor) -> InstrumentId {
        let new = NewInstrument {
            code: "A-2".into(),
            kind: InstrumentKind::GasAnalyser,
            maker: "Lowell".into(),
            type_name: "four-gas".into(),
            serial: "88231".into(),
            resolution: Some(0.01),
            standard_uncertainty: None,
            unit: "%".into(),
            needs_daily_check: true,
        };
        let id = self.shop.add_instrument(jon, None, new).await.unwrap();
        let certificate = NewCertificate {
            number: "K-5531".into(),
            laboratory: "Northmere Metrology".into(),
            calibrated_on: date!(2026 - 02 - 03),
            due_on: date!(2027 - 02 - 03),
            expanded_uncertainty: Some(0.04),
            coverage_factor: Some(2.0),
            attachment_id: None,
            found_wrong: String::new(),
        };
        self.shop.record_certificate(jon, None, id, certificate).await.unwrap();
        let check =
            NewCheck { checked_at: self.clock.now(), has_passed: true, as_found_error: None, note: String::new() };
        self.shop.record_check(jon, None, id, check).await.unwrap();
        id
    }

    /// A photo in a slot of a job.
    pub async fn photo(&self, who: &Actor, job: JobId, slot: &str) -> AttachmentId {
        let sent = vec![Sent { name: format!("{slot}.png"), content: pixel(), taken_at: String::new() }];
        let sorted = self.shop.keep_files(who, None, FilePlace::of_job(job, slot), Takes::Photos, sent).await.unwrap();
        assert!(sorted.unfit.is_empty(), "{:?}", sorted.unfit);
        sorted.kept[0]
    }

    /// A conversion with everything that a certificate asks for, and the signature for the hand-over recorded.
    pub async fn told(&self) -> Opened {
        let opened = self.opened().await;
        let Opened { jon, job, analyser } = &opened;
        let story = Story {
            shop: &self.shop,
            clock: &self.clock,
            technician: jon,
            analyser: Some(*analyser),
            job: *job,
            engine_cylinders: 4,
            serial: "118204".into(),
        };
        for slot in ["odometer", "vin-plate", "container-plate"] {
            self.photo(jon, *job, slot).await;
        }
        story.take_in(128_430).await.unwrap();
        story.size().await.unwrap();
        story.fit(date!(2026 - 05 - 12), date!(2026 - 03 - 31)).await.unwrap();
        story.calibrate().await.unwrap();
        story.prove_system().await.unwrap();
        let signature = self.photo(jon, *job, "signature").await;
        story.explain("Ilse Marrow", signature).await.unwrap();
        self.clock.advance(Duration::minutes(5));
        opened
    }
}
