//! An instrument found wrong, worked to the end by the forms: reckoned again, decided, written to, closed, printed.

use fuelwright::db;
use fuelwright::db::Db;
use fuelwright::model::evidence::{Evidence, LeakDecay, NewEvidence, PressureKind, Section, TestGas};
use fuelwright::model::ids::{FindingId, InstrumentId, PaperId};
use fuelwright::model::instrument::InstrumentKind;
use fuelwright::model::message::{MessageKind, MessageState};
use fuelwright::seal::Sealed;
use fuelwright::seal::keys::read_public_key;
use fuelwright::shop::instruments::{NewCertificate, NewCheck};
use time::Duration;
use time::macros::date;

use crate::papers::reading::Paper;
use crate::support::{PASSWORD, TestShop};
use crate::told::Opened;

/// Lambda by Brettschneider's published balance for LPG (H/C 2.525, no oxygen in the fuel), written out anew here.
fn brettschneider_lpg(co: f64, co2: f64, o2: f64, hc_ppm: f64) -> f64 {
    let h = 2.525 / 4.0;
    (co2 + co / 2.0 + o2 + h * 3.5 / (3.5 + co / co2) * (co2 + co)) / ((1.0 + h) * (co2 + co + 6e-4 * hc_ppm))
}

pub struct Issued {
    pub open: TestShop,
    pub told: Opened,
    pub paper: PaperId,
    pub code: String,
    pub number: String,
}

/// A conversion with its certificate.
pub async fn issued() -> Issued {
    let open = TestShop::open().await;
    let told = open.told().await;
    issue(open, told).await
}

pub async fn issue(open: TestShop, told: Opened) -> Issued {
    let vera = open.actor(open.vera).await;
    let paper = open.shop.issue_certificate(&vera, None, told.job, crate::told::seen()).await.unwrap();
    let found = open.shop.find_paper(open.branch, paper).await.unwrap().unwrap();
    open.clock.advance(Duration::hours(2));
    Issued { open, told, paper, code: found.paper.code, number: found.paper.number }
}

impl Issued {
    /// How `/verify` answers, to a stranger.
    pub async fn stands(&self, wanted: &str) {
        self.open.stranger().get(&format!("/verify/{}", self.code)).await.is(200).says(wanted);
        let list = self.open.shop.standing_list(self.open.branch).await.unwrap();
        let text = String::from_utf8(list.content().to_vec()).unwrap();
        let code = wanted.to_lowercase().replace(' ', "-");
        assert!(text.contains(&format!("\"{code}\"")), "{wanted} is not in the standing list: {text}");
    }

    /// The only open finding.
    pub async fn finding(&self) -> String {
        format!("/findings/{}", self.finding_id().await)
    }

    pub async fn finding_id(&self) -> FindingId {
        let mut con = self.open.shop.db.read().await.unwrap();
        let all = db::findings::list_open(&mut con, self.open.branch).await.unwrap();
        assert_eq!(all.len(), 1, "{all:?}");
        all[0].id
    }

    pub fn paper_at(&self, finding: &str) -> String {
        format!("{finding}/papers/{}", self.paper)
    }

    /// The analyser fails a check now.
    pub async fn fail_analyser(&self) {
        let jon = self.open.technician().await;
        let at = format!("/instruments/{}/checks", self.told.analyser);
        let when = self.open.clock.now() + Duration::hours(1);
        let when = format!("{}T{:02}:{:02}", when.date(), when.hour(), when.minute());
        let note = "Span gas read 0.10 % low in CO";
        let fields = [("has_passed", "failed"), ("checked_at", when.as_str()), ("check_note", note)];
        jon.post(&at, &fields).await.goes_to();
        self.open.clock.advance(Duration::minutes(1));
    }

    /// A letter in the outbox about safety.
    pub async fn letters(&self, kind: MessageKind) -> Vec<fuelwright::model::message::Message> {
        let mut con = self.open.shop.db.read().await.unwrap();
        let mut all = db::outbox::list(&mut con, self.open.branch, MessageState::Waiting, 50).await.unwrap();
        all.extend(db::outbox::list(&mut con, self.open.branch, MessageState::Letter, 50).await.unwrap());
        all.retain(|one| one.kind == kind);
        all
    }

    pub async fn report(&self, finding: &str, name: &str) -> Paper {
        let page = self.open.auditor().await.get(&format!("{finding}/report")).await;
        page.is(200);
        Paper::new(name, &page.bytes)
    }
}

#[tokio::test]
async fn a_failed_check_is_worked_to_its_end_and_the_paper_stands_again() {
    let issued = issued().await;
    issued.stands("Valid").await;
    issued.fail_analyser().await;
    issued.stands("Under review").await;
    let (jon, vera) = (issued.open.technician().await, issued.open.signatory().await);
    let finding = issued.finding().await;
    let page = jon.get(&finding).await;
    page.is(200).says("Next: the error as found").says("The error as found is not entered yet").says(&issued.number);
    page.says("Still holds: 0. In doubt: 2. Fails: 0.");
    jon.get("/").await.says(&issued.number);

    // Wrong, explained, kept, mended.
    let page = jon.post(&format!("{finding}/error"), &[("co_percent", "a little")]).await;
    page.is(422);
    assert_eq!(page.field("co_percent").as_deref(), Some("a little"));
    jon.post(&format!("{finding}/error"), &[("how_known", "span gas")]).await.is(422);
    let error = [("co_percent", "-0.10"), ("o2_percent", "0"), ("how_known", "Span gas SG-11")];
    jon.post(&format!("{finding}/error"), &error).await.goes_to();
    let page = jon.get(&finding).await;
    page.says("CO: reads low by 0.1").says("Still holds: 2. In doubt: 0. Fails: 0.").says("Next: decide the papers");
    // Raised idle on LPG was written as 0.05 % CO, 13.1 % CO2, 0.12 % O2, 16 ppm HC.
    let (old, new) = (brettschneider_lpg(0.05, 13.1, 0.12, 16.0), brettschneider_lpg(0.15, 13.1, 0.12, 16.0));
    page.says("0.05").says("0.15").says(&format!("{old:.3}")).says(&format!("{new:.3}"));
    assert!((old - new).abs() > 0.002, "the two can be told apart: {old} {new}");

    // Nobody closes it before the paper is decided, and nobody but a signatory decides.
    let early = jon.post(&format!("{finding}/decision"), &[("decision", "Analyser repaired")]).await;
    early.is(422).says("wait for a signatory").says("Analyser repaired");
    let stands = [("paper_decision", "stands"), ("reason", "Still far inside its limits"), ("password", PASSWORD)];
    jon.post(&issued.paper_at(&finding), &stands).await.is(403);
    issued.open.auditor().await.get(&issued.paper_at(&finding)).await.is(200).hides("Sign the decision");
    let wrong = [("paper_decision", "stands"), ("reason", "Still far inside its limits"), ("password", "guess")];
    let page = vera.post(&issued.paper_at(&finding), &wrong).await;
    page.is(422);
    assert_eq!(page.field("reason").as_deref(), Some("Still far inside its limits"));
    vera.post(&issued.paper_at(&finding), &[("paper_decision", "stands"), ("password", PASSWORD)]).await.is(422);
    vera.post(&issued.paper_at(&finding), &stands).await.goes_to();
    issued.stands("Valid").await;
    let late = [("paper_decision", "withdrawn"), ("reason", "No"), ("password", PASSWORD)];
    assert_ne!(vera.post(&issued.paper_at(&finding), &late).await.status.as_u16(), 303, "decided once");
    issued.stands("Valid").await;
    assert!(issued.letters(MessageKind::Safety).await.is_empty(), "a paper that stands needs no letter");

    jon.get(&finding).await.says("Next: close");
    let id = issued.finding_id().await;
    jon.post(&format!("{finding}/decision"), &[("decision", "Analyser repaired and calibrated")]).await.goes_to();
    jon.get(&finding).await.says("Closed").says("Analyser repaired and calibrated");

    // What was written down is as it was.
    let mut con = issued.open.shop.db.read().await.unwrap();
    let file = db::job_files::find(&mut con, issued.open.branch, issued.told.job).await.unwrap().unwrap();
    let Some(Evidence::Exhaust(seen)) = file.entry("exhaust", "gas").map(|entry| &entry.body) else { panic!() };
    assert!((seen.raised.co_percent - 0.05).abs() < 1e-12);

    // The decision is signed by the shop's key over its bytes; a changed byte is found.
    let decided = db::doubts::list_decisions(&mut con, id).await.unwrap();
    let keys = db::signing_keys::list(&mut con).await.unwrap();
    let key = read_public_key(&keys.iter().find(|key| key.id == decided[0].key_id).unwrap().public_key).unwrap();
    let ring = issued.open.shop.key_ring(&mut con).await.unwrap();
    let sealed = Sealed::from_kept(decided[0].content.clone(), &key, &decided[0].signature).unwrap();
    assert!(sealed.check(&ring).unwrap());
    let text = String::from_utf8(decided[0].content.clone()).unwrap().replace("stands", "stinks");
    let forged = Sealed::from_kept(text.into_bytes(), &key, &decided[0].signature).unwrap();
    assert!(forged.check(&ring).is_err());
    drop(con);

    let paper = issued.report(&finding, "finding-stands").await;
    for said in
        ["Finding report", "A-2", "K-5531", "CO: reads low by 0.1", "Span gas SG-11", "Still holds", "0.15", "Stands"]
    {
        paper.says(said);
    }
    paper.says(&format!("{new:.3}"));
    paper.says(&issued.number);
    paper.says("Still far inside its limits");
    paper.says("Vera");
    paper.says("Analyser repaired and calibrated");
    paper.has_size([210.0, 297.0]);

    let mut tx = issued.open.shop.db.write().await.unwrap();
    for statement in [
        "update branches set paper_size = 'letter'",
        "update findings set text = 'Analyser 田 low' where instrument_id is not null",
    ] {
        sqlx::query::<Db>(statement).execute(&mut *tx).await.unwrap();
    }
    tx.commit().await.unwrap();
    let paper = issued.report(&finding, "finding-stands-letter").await;
    paper.has_size([215.9, 279.4]);
    paper.says("Analyser [U+7530] low");
}

#[tokio::test]
async fn a_result_that_fails_has_its_paper_withdrawn_with_a_letter_that_asks_no_consent() {
    let issued = issued().await;
    issued.fail_analyser().await;
    // The keeper wants no reminders; this is none.
    sqlx::query::<Db>("update customers set reminder_basis = 'none'")
        .execute(&mut *issued.open.shop.db.write().await.unwrap())
        .await
        .unwrap();
    let (jon, vera) = (issued.open.technician().await, issued.open.signatory().await);
    let finding = issued.finding().await;
    jon.post(&format!("{finding}/error"), &[("co_percent", "-0.3"), ("how_known", "K-5600")]).await.goes_to();
    jon.get(&finding).await.says("Still holds: 0. In doubt: 0. Fails: 2.").says("It does not pass any more");
    let withdrawn = [("paper_decision", "withdrawn"), ("reason", "CO over its limit"), ("password", PASSWORD)];
    vera.post(&issued.paper_at(&finding), &withdrawn).await.goes_to();
    issued.stands("Withdrawn").await;
    let letters = issued.letters(MessageKind::Safety).await;
    assert_eq!(letters.len(), 1);
    for said in ["NM 47 KTR", &issued.number, "CO over its limit", "whether or not you agreed to reminders"] {
        assert!(letters[0].body_text.contains(said), "{said}: {}", letters[0].body_text);
    }
    jon.post(&format!("{finding}/decision"), &[("decision", "Vehicle called in")]).await.goes_to();
    let paper = issued.report(&finding, "finding-withdrawn").await;
    paper.says("Withdrawn");
    paper.says("Letter: ");
}

#[tokio::test]
async fn a_re_test_is_booked_written_and_decided_again_after() {
    let issued = issued().await;
    issued.fail_analyser().await;
    let (jon, vera) = (issued.open.technician().await, issued.open.signatory().await);
    let manager = issued.open.manager().await;
    manager.post("/bay-plan/bays", &[("name", "Bay 1")]).await.goes_to();
    let finding = issued.finding().await;
    let called = [("paper_decision", "re-test"), ("reason", "Nobody can tell"), ("password", PASSWORD)];
    vera.post(&issued.paper_at(&finding), &called).await.is(422);
    let form = vera.get(&issued.paper_at(&finding)).await;
    let bay = {
        let mut con = issued.open.shop.db.read().await.unwrap();
        db::bays::list(&mut con, issued.open.branch, date!(2026 - 05 - 12)).await.unwrap()[0].id.to_string()
    };
    form.says("Bay 1");
    let past = [&called[..], &[("bay_id", bay.as_str()), ("starts_at", "2026-05-01T09:00")]].concat();
    vera.post(&issued.paper_at(&finding), &past).await.is(422);
    let booked = [&called[..], &[("bay_id", bay.as_str()), ("starts_at", "2026-05-18T09:00")]].concat();
    vera.post(&issued.paper_at(&finding), &booked).await.goes_to();
    issued.stands("Under review").await;
    let mut con = issued.open.shop.db.read().await.unwrap();
    let (from, to) = (issued.open.clock.now(), issued.open.clock.now() + Duration::days(30));
    let bookings = db::bookings::list(&mut con, issued.open.branch, from, to).await.unwrap();
    drop(con);
    assert_eq!(bookings.len(), 1);
    assert_eq!((bookings[0].plate.as_str(), bookings[0].job_kind.to_string().as_str()), ("NM 47 KTR", "inspection"));
    assert!(bookings[0].note.contains(&issued.number), "{}", bookings[0].note);
    let letters = issued.letters(MessageKind::Safety).await;
    assert_eq!(letters.len(), 1);
    let text = letters[0].body_text.replace('\u{a0}', " ");
    assert!(text.contains("18 May 2026"), "{text}");
    // All papers are decided, so it can be closed; the paper stays under review until somebody tested and decided again.
    jon.post(&format!("{finding}/decision"), &[("decision", "Analyser sent away")]).await.goes_to();
    jon.get(&finding).await.says("a re-test is still to come");
    issued.stands("Under review").await;
    let again = vera.get(&issued.paper_at(&finding)).await;
    again.says("Nobody can tell").hides("Re-test called</option>");
    let stands = [("paper_decision", "stands"), ("reason", "Tested again, all well"), ("password", PASSWORD)];
    vera.post(&issued.paper_at(&finding), &stands).await.goes_to();
    issued.stands("Valid").await;
    let paper = issued.report(&finding, "finding-re-test").await;
    for said in ["Re-test called", "Re-test (Periodic inspection)", "Tested again, all well"] {
        paper.says(said);
    }
}

/// A gauge and a thermometer, calibrated, and a decay test of 38 minutes with them: 300.0 kPa to 299.9 kPa at 20 C.
async fn decay_test(open: &TestShop, told: &Opened) -> InstrumentId {
    let mut ids = Vec::new();
    for (code, kind, unit) in
        [("G-03", InstrumentKind::PressureGauge, "kPa"), ("T-01", InstrumentKind::Thermometer, "K")]
    {
        let new = fuelwright::model::instrument::NewInstrument {
            code: code.into(),
            kind,
            maker: "Lowell".into(),
            type_name: String::new(),
            serial: String::new(),
            resolution: Some(0.1),
            standard_uncertainty: Some(0.05),
            unit: unit.into(),
            needs_daily_check: false,
        };
        let id = open.shop.add_instrument(&told.jon, None, new).await.unwrap();
        let certificate = NewCertificate {
            number: format!("K-{code}"),
            laboratory: "Northmere Metrology".into(),
            calibrated_on: date!(2026 - 02 - 03),
            due_on: date!(2027 - 02 - 03),
            expanded_uncertainty: Some(0.1),
            coverage_factor: Some(2.0),
            attachment_id: None,
            found_wrong: String::new(),
        };
        open.shop.record_certificate(&told.jon, None, id, certificate).await.unwrap();
        ids.push(id);
    }
    let now = open.clock.now();
    open.clock.advance(Duration::minutes(38));
    let body = Evidence::LeakDecay(LeakDecay {
        section: Section::LpgVapour,
        test_gas: TestGas::Nitrogen,
        pressure_kind: PressureKind::Gauge,
        ambient_kpa: 101.3,
        lowest_rating_gauge_kpa: 450.0,
        volume_l: 2.0,
        volume_relative_standard_uncertainty: 0.05,
        volume_how: "by expansion".into(),
        start_kpa: 300.0,
        end_kpa: 299.9,
        start_c: 20.0,
        end_c: 20.0,
        started_at: now,
        ended_at: now + Duration::minutes(38),
        unsettled_reason: String::new(),
        gauge_id: ids[0],
        thermometer_id: ids[1],
        pressure_resolution_kpa: 0.1,
        pressure_standard_uncertainty_kpa: 0.05,
        temperature_standard_uncertainty_k: 0.05,
        settled_c: Some(20.0),
        readings: Vec::new(),
    });
    let new = NewEvidence {
        body,
        measured_at: None,
        replaces_id: None,
        replaces_reason: String::new(),
        instruments: ids.clone(),
        attachments: Vec::new(),
    };
    open.shop.record_evidence(&told.jon, None, told.job, new).await.unwrap();
    open.clock.advance(Duration::minutes(5));
    ids[0]
}

/// The published sum of a closed section, by the gas law: `V (T_ref / p_ref) (p1/T1 - p2/T2) / dt`, cm3/h at 15 C and
/// 101.325 kPa.
fn leak_rate_cm3_h(volume_l: f64, (start_kpa, end_kpa): (f64, f64), kelvin: f64, minutes: f64) -> f64 {
    volume_l * 1_000.0 * (288.15 / 101.325) * (start_kpa - end_kpa) / kelvin / (minutes / 60.0)
}

#[tokio::test]
async fn a_gauge_with_an_error_has_its_decay_test_reckoned_again() {
    let open = TestShop::open().await;
    let told = open.told().await;
    let gauge = decay_test(&open, &told).await;
    let issued = issue(open, told).await;
    let check = NewCheck {
        checked_at: issued.open.clock.now(),
        has_passed: false,
        as_found_error: Some(-2.0),
        note: "Reads 2 kPa low at 300".into(),
    };
    issued.open.shop.record_check(&issued.told.jon, None, gauge, check).await.unwrap();
    let (jon, finding) = (issued.open.technician().await, issued.finding().await);
    // An error that is the same at both readings leaves their difference as it was.
    let rate = leak_rate_cm3_h(2.0, (300.0, 299.9), 293.15, 38.0);
    assert!((rate - 3.06).abs() < 0.01, "by hand: 2000 x 2.8438 x 0.1 / 293.15 / 0.6333 = 3.06; {rate}");
    let page = jon.get(&finding).await;
    page.says("Pressure: reads low by 2").says("Still holds: 1. In doubt: 0. Fails: 0.").says("3.1");
    // A share does not: what fell by 0.1 kPa on a gauge that shows a tenth of the truth fell by 1 kPa.
    issued.open.clock.advance(Duration::minutes(1));
    let share = [("pressure_percent", "-90"), ("how_known", "compared")];
    jon.post(&format!("{finding}/error"), &share).await.is(422);
    let share = [("pressure_percent", "-20"), ("how_known", "compared with G-07")];
    jon.post(&format!("{finding}/error"), &share).await.goes_to();
    let corrected = leak_rate_cm3_h(2.0, (300.0 / 0.8, 299.9 / 0.8), 293.15, 38.0);
    assert!((corrected - rate / 0.8).abs() < 1e-9);
    let page = jon.get(&finding).await;
    page.says(&format!("{corrected:.1}")).says("compared with G-07");
}

#[tokio::test]
async fn the_span_begins_where_it_was_last_right_or_where_a_signatory_states_it() {
    let issued = issued().await;
    issued.fail_analyser().await;
    let (jon, vera, finding) = (issued.open.technician().await, issued.open.signatory().await, issued.finding().await);
    let span = format!("{finding}/span");
    jon.post(&span, &[("stated_from", "2026-05-12T14:00"), ("stated_reason", "x")]).await.is(403);
    let page = vera.post(&span, &[("stated_from", "2026-05-12T23:30"), ("stated_reason", "")]).await;
    page.is(422);
    vera.post(&span, &[("stated_from", "2027-05-12T23:30"), ("stated_reason", "later")]).await.is(422);
    // Everything was measured before: with that beginning nothing is in doubt, and the paper is valid at once.
    let when = issued.open.clock.now() + Duration::minutes(50);
    let when = format!("{}T{:02}:{:02}", when.date(), when.hour(), when.minute());
    vera.post(&span, &[("stated_from", &when), ("stated_reason", "Right in the comparison at noon")]).await.goes_to();
    vera.get(&finding).await.says("Right in the comparison at noon").says("Nothing that was recorded rests on it");
    issued.stands("Valid").await;
    vera.post(&span, &[("stated_from", "")]).await.goes_to();
    issued.stands("Under review").await;
}

#[tokio::test]
async fn two_findings_over_one_paper_end_apart() {
    let issued = issued().await;
    issued.fail_analyser().await;
    let first = issued.finding().await;
    issued.fail_analyser().await;
    let vera = issued.open.signatory().await;
    let stands = [("paper_decision", "stands"), ("reason", "Far inside"), ("password", PASSWORD)];
    vera.post(&issued.paper_at(&first), &stands).await.goes_to();
    issued.stands("Under review").await;
    let second = {
        let mut con = issued.open.shop.db.read().await.unwrap();
        let all = db::findings::list_open(&mut con, issued.open.branch).await.unwrap();
        all.iter().map(|one| format!("/findings/{}", one.id)).find(|at| *at != first).unwrap()
    };
    vera.post(&issued.paper_at(&second), &stands).await.goes_to();
    issued.stands("Valid").await;
}
