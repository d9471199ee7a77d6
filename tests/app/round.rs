//! An inspector's round by forms: photos, checklist, joints, exhaust, functions, deficiencies; then signed.
#![allow(dead_code, reason = "a round for every test, of which each uses a part")]

use fuelwright::db;
use fuelwright::model::ids::{JobId, PaperId};
use fuelwright::model::instrument::InstrumentKind;
use fuelwright::model::job::{Fuel, JobKind};
use fuelwright::papers;
use fuelwright::seal::Sealed;
use fuelwright::shop::issue::{Found, Verified, verify};

use crate::job_support::Bay;
use crate::papers::reading::Paper;
use crate::support::{Browser, PASSWORD, Page};

const NOW: (&str, &str) = ("measured_at", "2026-05-12T10:30");

fn at(job: JobId, rest: &str) -> String {
    format!("/jobs/{job}/{rest}")
}

/// A job gone through by forms.
pub struct Round {
    pub bay: Bay,
    pub jon: Browser,
    pub vera: Browser,
    pub analyser: String,
    pub fuel: Fuel,
}

impl Round {
    pub async fn open(kind: JobKind, fuel: Fuel) -> Self {
        let bay = Bay::open(kind, fuel).await;
        let (jon, vera) = (bay.shop.technician().await, bay.shop.signatory().await);
        let analyser = bay.instrument("A-2", InstrumentKind::GasAnalyser, "%", 0.01, 0.01).await.to_string();
        Self { bay, jon, vera, analyser, fuel }
    }

    /// The photos that the rules ask for.
    pub async fn photos(&self, job: JobId) {
        let jon = self.bay.shop.actor(self.bay.shop.jon).await;
        for slot in ["odometer", "vin-plate", "container-plate"] {
            self.bay.shop.photo(&jon, job, slot).await;
        }
    }

    pub async fn arrive(&self, job: JobId) {
        self.photos(job).await;
        self.jon.post(&at(job, "arrival"), &[("odometer", "128430"), NOW]).await.goes_to();
    }

    /// A vessel in the books, found or fitted.
    pub async fn vessel(&self, job: JobId, origin: &str, serial: &str) {
        let (category, mark) = match self.fuel {
            Fuel::Lpg => ("container", "E20 67R-01 4471"),
            Fuel::Cng => ("cylinder", "E20 110R-00 4471"),
        };
        let part = [
            ("category", category),
            ("maker", "Dunmere"),
            ("type_name", "630 x 225"),
            ("approval_mark", mark),
            ("serial", serial),
            ("made_on", "03/2024"),
            ("capacity_l", "54.6"),
            ("test_pressure_kpa", "3000"),
            ("working_pressure_kpa", if self.fuel == Fuel::Cng { "20000" } else { "" }),
            ("last_tested_on", ""),
            ("end_of_life_on", "2044-03-31"),
            ("place", "spare wheel well"),
            ("fitted_on", "2026-05-12"),
            ("origin", origin),
        ];
        self.jon.post(&at(job, "parts"), &part).await.goes_to();
    }

    /// Every line of the checklist passed, but for these with their notes.
    pub async fn checklist(&self, job: JobId, fails: &[(&str, &str)]) -> Page {
        let mut con = self.bay.shop.shop.db.read().await.unwrap();
        let today = self.bay.shop.clock.now().date();
        let book = db::rule_books::book_for(&mut con, self.bay.shop.branch, "GB", today).await.unwrap();
        let row = db::jobs::find(&mut con, self.bay.shop.branch, job).await.unwrap().unwrap();
        let mut sent: Vec<(String, String)> = vec![(NOW.0.into(), NOW.1.into())];
        for line in book.checks(&row) {
            let note = fails.iter().find(|(id, _)| *id == line.id).map(|(_, note)| *note);
            let answer = if note.is_some() { "fail" } else { "pass" };
            sent.push((format!("answers[{}][answer]", line.id), answer.into()));
            sent.push((format!("answers[{}][note]", line.id), note.unwrap_or_default().into()));
        }
        let sent: Vec<(&str, &str)> = sent.iter().map(|(name, text)| (name.as_str(), text.as_str())).collect();
        self.jon.post(&at(job, "checklist"), &sent).await
    }

    pub async fn joints(&self, job: JobId, section: &str, verdict: &str) {
        let sent = [
            ("method", "foam"),
            ("pressure_gauge_kpa", "210"),
            ("foam_batch", "B-77"),
            ("foam_expires_on", "2027-03-31"),
            ("joints[0][name]", "multivalve outlet"),
            ("joints[0][verdict]", verdict),
            ("joints[1][name]", "vaporiser inlet"),
            ("joints[1][verdict]", "dry"),
            NOW,
        ];
        self.jon.post(&at(job, &format!("leak-joints/{section}")), &sent).await.goes_to();
    }

    pub async fn all_joints(&self, job: JobId) {
        let sections = match self.fuel {
            Fuel::Lpg => ["lpg-liquid", "lpg-vapour"],
            Fuel::Cng => ["cng-high", "cng-low"],
        };
        for section in sections {
            self.joints(job, section, "dry").await;
        }
    }

    pub async fn exhaust(&self, job: JobId, subject: &str, idle_co_percent: &str) {
        let (set, co2) = match (subject, self.fuel) {
            ("petrol", _) => ("petrol", ("14.9", "15.1")),
            (_, Fuel::Lpg) => ("lpg", ("12.9", "13.1")),
            (_, Fuel::Cng) => ("cng", ("11.4", "11.6")),
        };
        let sent = [
            ("analyser_id", self.analyser.as_str()),
            ("analyser_set_to", set),
            ("coolant_c", "88"),
            ("idle_rpm", "800"),
            ("idle_co_percent", idle_co_percent),
            ("idle_co2_percent", co2.0),
            ("idle_o2_percent", "0.12"),
            ("idle_hc_ppm", "28"),
            ("raised_rpm", "2600"),
            ("raised_co_percent", "0.05"),
            ("raised_co2_percent", co2.1),
            ("raised_o2_percent", "0.12"),
            ("raised_hc_ppm", "16"),
            NOW,
        ];
        self.jon.post(&at(job, &format!("exhaust/{subject}")), &sent).await.goes_to();
    }

    pub async fn functions(&self, job: JobId, level_shows: &str) {
        let (how, litres) = if self.fuel == Fuel::Lpg { ("first-fill", "42.6") } else { ("", "") };
        let sent = [
            ("changeover_works", "yes"),
            ("returns_when_empty", "yes"),
            ("starts_on_gas", "not-fitted"),
            ("shut_off_ignition_s", "0.6"),
            ("shut_off_stalled_s", "1.4"),
            ("fill_stop_how", how),
            ("fill_stop_l", litres),
            ("fill_ticket", if how.is_empty() { "" } else { "ticket 12" }),
            ("level_shows", level_shows),
            ("vent_is_open", "yes"),
            ("excess_flow_present", "yes"),
            ("label_in_place", "yes"),
            NOW,
        ];
        self.jon.post(&at(job, "function-checks"), &sent).await.goes_to();
    }

    /// Deficiencies as typed: item, class, severity, words.
    pub async fn deficiencies(&self, job: JobId, rows: &[[&str; 4]], rest: &[(&str, &str)]) -> Page {
        let mut sent: Vec<(String, String)> = vec![(NOW.0.into(), NOW.1.into())];
        for (at, row) in rows.iter().enumerate() {
            for (field, text) in ["item", "class", "severity", "words"].iter().zip(row) {
                sent.push((format!("found[{at}][{field}]"), (*text).to_owned()));
            }
        }
        sent.extend(rest.iter().map(|(name, text)| ((*name).to_owned(), (*text).to_owned())));
        let sent: Vec<(&str, &str)> = sent.iter().map(|(name, text)| (name.as_str(), text.as_str())).collect();
        self.jon.post(&at(job, "deficiencies"), &sent).await
    }

    /// Everything that an inspection looks at, in order.
    pub async fn all_in_order(&self, job: JobId) {
        self.arrive(job).await;
        self.checklist(job, &[]).await.goes_to();
        self.all_joints(job).await;
        self.exhaust(job, "petrol", "0.08").await;
        self.exhaust(job, "gas", "0.08").await;
        self.functions(job, "yes").await;
    }

    /// A second visit, after the hour of the first.
    pub async fn arrive_later(&self, job: JobId) {
        self.photos(job).await;
        let sent = [("odometer", "128430"), ("measured_at", "2026-05-12T10:50")];
        self.jon.post(&at(job, "arrival"), &sent).await.goes_to();
    }

    /// Nothing found, at an hour.
    pub async fn deficiencies_at(&self, job: JobId, measured_at: &str) -> Page {
        self.jon.post(&at(job, "deficiencies"), &[("measured_at", measured_at)]).await
    }

    /// The signatory looks at the photos and signs; answers the page that came.
    pub async fn sign(&self, job: JobId) -> Page {
        let mut sent = vec![("password", PASSWORD)];
        sent.extend(["odometer", "vin-plate", "container-plate"].map(|slot| ("photos_seen", slot)));
        self.vera.post(&at(job, "papers"), &sent).await
    }

    /// The paper that stands after signing, read as PDF.
    pub async fn issued(&self, job: JobId) -> (Found, Paper) {
        let to = self.sign(job).await.goes_to();
        let id: PaperId = to.rsplit('/').next().unwrap().parse().unwrap();
        let found = self.bay.shop.shop.find_paper(self.bay.shop.branch, id).await.unwrap().unwrap();
        let pdf = self.bay.shop.shop.issued_pdf(&found.paper).await.unwrap();
        // The number alone is the same in the shop of every test, and tests run side by side.
        let name = format!("issued-{}-{}-{job}", found.paper.kind, found.paper.number);
        let paper = Paper::new(&name, &pdf);
        paper.is_sound();
        self.cannot_be_forged(&found, &pdf).await;
        (found, paper)
    }

    /// One byte of the content changed, or another key: the paper is not genuine any more.
    async fn cannot_be_forged(&self, found: &Found, pdf: &[u8]) {
        let ring = {
            let mut con = self.bay.shop.shop.db.read().await.unwrap();
            self.bay.shop.shop.key_ring(&mut con).await.unwrap()
        };
        let json = papers::embedded(pdf).unwrap().unwrap();
        let sealed = Sealed::from_json(&json).unwrap();
        assert!(matches!(verify(&sealed, &ring), Ok(Verified::Genuine(_))), "{}", found.paper.number);
        let stranger = verify(&sealed, &fuelwright::seal::KeyRing::new());
        assert!(matches!(stranger, Ok(Verified::UnknownKey(_))), "another key");
        let text = String::from_utf8(json).unwrap();
        let (number, other) = (&found.paper.number, found.paper.number.replace("-2026-", "-2027-"));
        let forged = text.replacen(number.as_str(), &other, 1);
        assert_ne!(forged, text);
        let forged = Sealed::from_json(forged.as_bytes());
        assert!(forged.is_err() || verify(&forged.unwrap(), &ring).is_err(), "a changed byte");
    }

    /// Handed over by form, with a signature kept before.
    pub async fn hand_over(&self, job: JobId) -> Page {
        let jon = self.bay.shop.actor(self.bay.shop.jon).await;
        let signature = self.bay.shop.photo(&jon, job, "signature").await;
        let body = fuelwright::model::evidence::Evidence::HandOver(fuelwright::model::evidence::HandOver {
            topics: vec![],
            received_by: "Ana Marrow".into(),
            received_how: fuelwright::model::evidence::ReceivedHow::Drawn,
            consents_to_reminders: false,
            manuals_given: false,
        });
        let new = fuelwright::model::evidence::NewEvidence {
            body,
            measured_at: None,
            replaces_id: None,
            replaces_reason: String::new(),
            instruments: vec![],
            attachments: vec![signature],
        };
        self.bay.shop.shop.record_evidence(&jon, None, job, new).await.unwrap();
        self.jon.post(&at(job, "ending"), &[]).await
    }
}

/// The job that an address leads to.
pub fn job_of(address: &str) -> JobId {
    address.trim_start_matches("/jobs/").split('/').next().unwrap().parse().unwrap()
}
