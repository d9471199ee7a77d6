//! Suitability: measured on petrol before work; direct injection is held for a signatory.

use fuelwright::db::Db;
use fuelwright::model::evidence::{Evidence, NewEvidence, SuitabilityVerdict};
use fuelwright::model::instrument::InstrumentKind;
use fuelwright::model::job::{Fuel, JobKind};
use fuelwright::rules::State;
use fuelwright::shop::Refusal;

use crate::job_support::Bay;

fn sound() -> Vec<(&'static str, &'static str)> {
    vec![
        ("compression_unit", "bar"),
        ("compression[0][compression]", "12.1"),
        ("compression[1][compression]", "12,0"),
        ("compression[2][compression]", "175 psi"),
        ("compression[3][compression]", "11.8"),
        ("coolant_c", "190 °F"),
        ("trim_idle_percent", "-2.5"),
        ("trim_raised_percent", "1.6"),
        ("idle_co_percent", "0.12"),
        ("is_ignition_sound", "yes"),
        ("is_valve_clearance_sound", "yes"),
        ("has_valve_seat_risk", "no"),
        ("verdict", "suitable"),
        ("measured_at", "2026-05-12T10:20"),
    ]
}

fn changed<'a>(mut fields: Vec<(&'a str, &'a str)>, with: &[(&'a str, &'a str)]) -> Vec<(&'a str, &'a str)> {
    for (name, value) in with {
        fields.retain(|(known, _)| known != name);
        fields.push((name, value));
    }
    fields
}

#[tokio::test]
async fn a_wrong_reading_is_explained_kept_mended_and_saved() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("suitability"), bay.shop.technician().await);
    jon.get(&at).await.is(200).says("Engine cylinder 4");
    assert_eq!(bay.proof("suitable").await.state, State::Missing);

    let wrong = changed(sound(), &[("compression[1][compression]", "one,two"), ("coolant_c", "90 kPa")]);
    let page = jon.post(&at, &wrong).await;
    page.is(422);
    assert_eq!(page.field("compression[1][compression]").as_deref(), Some("one,two"));
    assert_eq!(page.field("coolant_c").as_deref(), Some("90 kPa"));
    assert_eq!(page.field("trim_idle_percent").as_deref(), Some("-2.5"));
    assert_eq!(bay.entries("suitability").await, 0);

    let stage = jon.post(&at, &sound()).await.goes_to();
    // 12.1 bar against 11.8 bar: 2.5 per cent.
    jon.get(&stage).await.is(200).says("2.5").says("1 207");
    assert_eq!(bay.proof("suitable").await.state, State::Met);
}

#[tokio::test]
async fn a_finding_needs_its_source_and_a_condition_its_acceptance() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("suitability"), bay.shop.technician().await);
    let bare = changed(sound(), &[("verdict", "with-conditions")]);
    jon.post(&at, &bare).await.is(422).says("Say why, and what it rests on.");

    let unsourced = changed(bare, &[("reasons[0][finding]", "Valve seats: additive")]);
    jon.post(&at, &unsourced).await.is(422);

    let sourced = changed(unsourced, &[("reasons[0][source]", "maker, engine manual")]);
    let stage = jon.post(&at, &sourced).await.goes_to();
    jon.get(&stage).await.says("Valve seats: additive · maker, engine manual");
    assert_eq!(bay.proof("suitable").await.state, State::Missing, "nobody accepted it yet");

    let entry = bay.file().await.entry("suitability", "").unwrap().id.to_string();
    let page = jon.get(&at).await;
    assert_eq!(page.field("reasons[0][source]").as_deref(), Some("maker, engine manual"));
    assert_eq!(page.field("replaces_id").as_deref(), Some(entry.as_str()));
    let accepted =
        [("accepted_by", "Ana Marrow"), ("replaces_id", &entry), ("replaces_reason", "accepted at the desk")];
    jon.post(&at, &changed(sourced, &accepted)).await.goes_to();
    assert_eq!(bay.proof("suitable").await.state, State::Met);
    assert_eq!(bay.entries("suitability").await, 2);
}

#[tokio::test]
async fn direct_injection_is_held_for_a_signatory() {
    let bay = Bay::open(JobKind::Conversion, Fuel::Lpg).await;
    let mut tx = bay.shop.shop.db.write().await.unwrap();
    sqlx::query::<Db>("update vehicles set petrol_injection = 'direct'").execute(&mut *tx).await.unwrap();
    tx.commit().await.unwrap();
    let at = bay.at("suitability");
    let conditions = [
        ("verdict", "with-conditions"),
        ("reasons[0][finding]", "Petrol is injected along to cool the injectors"),
        ("reasons[0][source]", "system maker"),
        ("accepted_by", "Ana Marrow"),
    ];
    let jon = bay.shop.technician().await;
    jon.post(&at, &changed(sound(), &conditions)).await.is(422).says("only a signatory records the conditions");
    let stage = jon.post(&at, &sound()).await.goes_to();
    jon.get(&stage).await.says("held until a signatory records the conditions");
    assert_eq!(bay.proof("suitable").await.state, State::Undecided);

    // Not only the form says so: nobody records the conditions past it.
    let mut body = bay.file().await.entry("suitability", "").unwrap().body.clone();
    let Evidence::Suitability(said) = &mut body else { panic!("no suitability") };
    said.verdict = SuitabilityVerdict::WithConditions;
    let replaces_id = Some(bay.file().await.entry("suitability", "").unwrap().id);
    let forged = NewEvidence {
        body,
        measured_at: None,
        replaces_id,
        replaces_reason: "decided".into(),
        instruments: Vec::new(),
        attachments: Vec::new(),
    };
    let technician = bay.shop.actor(bay.shop.jon).await;
    let refused = bay.shop.shop.record_evidence(&technician, None, bay.job, forged).await;
    assert!(matches!(refused, Err(Refusal::Field { field: "verdict", .. })), "{refused:?}");

    let entry = bay.file().await.entry("suitability", "").unwrap().id.to_string();
    let vera = bay.shop.signatory().await;
    let correction = [("replaces_id", entry.as_str()), ("replaces_reason", "decided")];
    vera.post(&at, &changed(sound(), &correction)).await.is(422).says("suitable with conditions at best");
    vera.post(&at, &changed(changed(sound(), &conditions), &correction)).await.goes_to();
    assert_eq!(bay.proof("suitable").await.state, State::Met);
}

#[tokio::test]
async fn an_instrument_out_of_calibration_proves_nothing_and_a_forged_one_is_refused() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("suitability"), bay.shop.technician().await);
    jon.get(&at).await.hides("Compression gauge");
    let kind = InstrumentKind::CompressionGauge;
    let good = bay.instrument("C-01", kind, "kPa", 10.0, 10.0).await.to_string();
    let old = bay.instrument_due("C-02", kind, "kPa", (10.0, 10.0), "2026-04-30").await.to_string();
    let thermometer = bay.instrument("T-01", InstrumentKind::Thermometer, "K", 0.1, 0.2).await.to_string();
    jon.get(&at).await.says("C-01, due").says("C-02, proves nothing today");

    jon.post(&at, &changed(sound(), &[("gauge_id", &thermometer)])).await.is(422);
    assert_eq!(bay.entries("suitability").await, 0);

    jon.post(&at, &changed(sound(), &[("gauge_id", &old)])).await.goes_to();
    assert_ne!(bay.proof("suitable").await.state, State::Met);
    let entry = bay.file().await.entry("suitability", "").unwrap().id.to_string();
    let again = [("gauge_id", good.as_str()), ("replaces_id", &entry), ("replaces_reason", "measured again")];
    jon.post(&at, &changed(sound(), &again)).await.goes_to();
    assert_eq!(bay.proof("suitable").await.state, State::Met);
}

#[tokio::test]
async fn a_double_send_makes_one_record_and_a_stale_one_shows_both() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("suitability"), bay.shop.technician().await);
    let key = uuid::Uuid::now_v7().to_string();
    let once = changed(sound(), &[("key", &key)]);
    jon.post(&at, &once).await.goes_to();
    jon.post(&at, &once).await.goes_to();
    assert_eq!(bay.entries("suitability").await, 1);

    let vera = bay.shop.signatory().await;
    let page = vera.post(&at, &changed(sound(), &[("coolant_c", "81")])).await;
    page.is(422).says("Recorded meanwhile by Jon Aspen");
    assert_eq!(page.field("coolant_c").as_deref(), Some("81"));
    assert_eq!(bay.entries("suitability").await, 1);
}

#[tokio::test]
async fn an_auditor_reads_and_does_not_record() {
    let bay = Bay::lpg().await;
    let odo = bay.shop.auditor().await;
    odo.get(&bay.at("suitability")).await.is(200);
    odo.post(&bay.at("suitability"), &sound()).await.is(403);
}
