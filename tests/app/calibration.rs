//! Calibration: warm and in closed loop, trims alike on both fuels, no new codes after the drive.

use fuelwright::model::evidence::Evidence;
use fuelwright::model::instrument::InstrumentKind;
use fuelwright::rules::State;

use crate::job_support::Bay;

type Fields<'a> = Vec<(&'a str, &'a str)>;

fn calibrated() -> Fields<'static> {
    vec![
        ("coolant_c", "88"),
        ("vaporiser_c", "142 °F"),
        ("was_closed_loop", "yes"),
        ("set_pressure_kpa", "1.2 bar"),
        ("gas_temperature_c", "48"),
        ("how", "Idle first, then 2 500 /min, then load on the road."),
        ("is_nozzle_adequate", "yes"),
        ("changeover_c", "40"),
        ("fall_back_kpa", "60"),
        ("regions[0][region]", "2 000 to 2 500 /min, 60 to 80 kPa"),
        ("regions[0][correction_percent]", "4"),
        ("measured_at", "2026-05-12T10:20"),
    ]
}

fn trims() -> Fields<'static> {
    vec![
        ("points[0][point]", "Idle"),
        ("points[0][bank]", "1"),
        ("points[0][petrol_short_percent]", "0.8"),
        ("points[0][petrol_long_percent]", "-1.2"),
        ("points[0][gas_short_percent]", "2.3"),
        ("points[0][gas_long_percent]", "0"),
        ("points[1][point]", "2 500 /min"),
        ("points[1][bank]", "1"),
        ("measured_at", "2026-05-12T10:20"),
    ]
}

fn changed<'a>(mut fields: Fields<'a>, with: &[(&'a str, &'a str)]) -> Fields<'a> {
    for (name, value) in with {
        fields.retain(|(known, _)| known != name);
        fields.push((name, value));
    }
    fields
}

#[tokio::test]
async fn a_calibration_is_wrong_explained_kept_mended_and_recorded() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("engine-calibration"), bay.shop.technician().await);
    jon.get(&at).await.is(200).says("At least 50 °C.");
    let wrong = changed(calibrated(), &[("changeover_c", "warm"), ("regions[0][correction_percent]", "")]);
    let page = jon.post(&at, &wrong).await;
    page.is(422);
    assert_eq!(page.field("changeover_c").as_deref(), Some("warm"));
    assert_eq!(page.field("set_pressure_kpa").as_deref(), Some("1.2 bar"));
    assert_eq!(bay.entries("engine-calibration").await, 0);

    let stage = jon.post(&at, &calibrated()).await.goes_to();
    jon.get(&stage).await.says("Calibrated warm").says("2 000 to 2 500 /min, 60 to 80 kPa: +4.0");
    for proof in ["calibrated-warm", "calibrated-clean", "nozzle-adequate"] {
        assert_eq!(bay.proof(proof).await.state, State::Met, "{proof}");
    }
}

#[tokio::test]
async fn a_cold_vaporiser_and_a_nozzle_that_must_change_stop_and_are_corrected() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("engine-calibration"), bay.shop.technician().await);
    let cold = changed(calibrated(), &[("vaporiser_c", "41"), ("is_nozzle_adequate", "no")]);
    let stage = jon.post(&at, &cold).await.goes_to();
    jon.get(&stage).await.says("Calibrate again").says("heated to 41 °C only").says("back to Sizing");
    assert_eq!(bay.proof("calibrated-warm").await.state, State::Stops);
    assert_eq!(bay.proof("nozzle-adequate").await.state, State::Stops);

    let page = jon.get(&at).await;
    assert_eq!(page.field("regions[0][region]").as_deref(), Some("2 000 to 2 500 /min, 60 to 80 kPa"));
    let entry = page.field("replaces_id").unwrap();
    jon.post(&at, &changed(calibrated(), &[("replaces_id", &entry)])).await.is(422);
    let again = [("replaces_id", entry.as_str()), ("replaces_reason", "done again, warm")];
    jon.post(&at, &changed(calibrated(), &again)).await.goes_to();
    assert_eq!(bay.proof("calibrated-warm").await.state, State::Met);
}

#[tokio::test]
async fn trims_are_reckoned_and_judged() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("trims"), bay.shop.technician().await);
    let page = jon.get(&at).await;
    assert_eq!(page.field("points[0][point]").as_deref(), Some("Idle"));
    let empty = [("points[0][point]", "Idle"), ("points[0][bank]", "1"), ("measured_at", "2026-05-12T10:20")];
    jon.post(&at, &empty).await.is(422).says("No trims are typed.");
    let wrong = changed(trims(), &[("points[0][bank]", "3"), ("points[0][gas_short_percent]", "2.3 kPa")]);
    let page = jon.post(&at, &wrong).await;
    page.is(422);
    assert_eq!(page.field("points[0][gas_short_percent]").as_deref(), Some("2.3 kPa"));

    // Bytes 136, 133 on gas and 129, 130 on petrol by SAE J1979: (A - 128) 100/128; the difference is +7.9 %.
    let j1979 = [
        ("points[0][petrol_short_percent]", "0.78125"),
        ("points[0][petrol_long_percent]", "1.5625"),
        ("points[0][gas_short_percent]", "6.25"),
        ("points[0][gas_long_percent]", "3.90625"),
    ];
    let ask = changed(changed(trims(), &j1979), &[("then", "reckon")]);
    jon.post(&at, &ask).await.is(200).says("+7.9").says("Acceptable").says("gas is lean there");
    assert_eq!(bay.entries("trims").await, 0);

    let stage = jon.post(&at, &trims()).await.goes_to();
    jon.get(&stage).await.says("Alike on both fuels").says("(1.023 · 1) / (1.008 · 0.988) - 1");
    assert_eq!(bay.proof("trims").await.state, State::Met);
    let file = bay.file().await;
    let Evidence::Trims(recorded) = &file.entry("trims", "").unwrap().body else { panic!("other") };
    assert_eq!(recorded.points.len(), 1, "the line without trims is left out");
}

#[tokio::test]
async fn trims_apart_stop() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("trims"), bay.shop.technician().await);
    let apart = [("points[0][gas_short_percent]", "-9.4"), ("points[0][gas_long_percent]", "-6.3")];
    let stage = jon.post(&at, &changed(trims(), &apart)).await.goes_to();
    jon.get(&stage).await.says("Calibrate again").says("Gas is rich there");
    assert_eq!(bay.proof("trims").await.state, State::Stops);
}

#[tokio::test]
async fn new_codes_after_the_drive_open_one_finding() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("after-drive"), bay.shop.technician().await);
    let drive = vec![
        ("petrol_km", "12"),
        ("gas_km", "15 mi"),
        ("fault_codes", "P0171, p0300"),
        ("not_ready", ""),
        ("measured_at", "2026-05-12T10:20"),
    ];
    jon.post(&at, &changed(drive.clone(), &[("gas_km", "far")])).await.is(422);
    let stage = jon.post(&at, &drive).await.goes_to();
    jon.get(&stage).await.says("Not there at intake: P0171, P0300");
    let findings = bay.file().await.findings;
    assert_eq!(findings.iter().map(|one| one.text.as_str()).collect::<Vec<_>>(), ["P0171, P0300"]);
    assert_eq!(bay.proof("after-drive").await.state, State::Stops);

    let entry = bay.file().await.entry("after-drive", "").unwrap().id.to_string();
    let again = [("gas_km", "25"), ("replaces_id", entry.as_str()), ("replaces_reason", "odometer misread")];
    jon.post(&at, &changed(drive.clone(), &again)).await.goes_to();
    assert_eq!(bay.file().await.findings.len(), 1, "the same codes are the same finding");

    let entry = bay.file().await.entry("after-drive", "").unwrap().id.to_string();
    let clean = [("fault_codes", ""), ("replaces_id", entry.as_str()), ("replaces_reason", "plug lead, driven again")];
    jon.post(&at, &changed(drive, &clean)).await.goes_to();
    assert_eq!(bay.proof("after-drive").await.state, State::Met);
}

#[tokio::test]
async fn calibration_names_instruments_of_its_kinds_only_once_and_stale_shows_both() {
    let bay = Bay::lpg().await;
    let (at, jon) = (bay.at("engine-calibration"), bay.shop.technician().await);
    let thermometer = bay.instrument("T-01", InstrumentKind::Thermometer, "K", 0.1, 0.2).await.to_string();
    let analyser = bay.instrument("A-01", InstrumentKind::GasAnalyser, "%", 0.01, 0.02).await.to_string();
    jon.post(&at, &changed(calibrated(), &[("thermometer_id", &analyser)])).await.is(422);
    let key = uuid::Uuid::now_v7().to_string();
    let once = changed(calibrated(), &[("thermometer_id", &thermometer), ("key", &key)]);
    jon.post(&at, &once).await.goes_to();
    jon.post(&at, &once).await.goes_to();
    assert_eq!(bay.entries("engine-calibration").await, 1);
    assert_eq!(bay.file().await.entry("engine-calibration", "").unwrap().instruments.len(), 1);

    let vera = bay.shop.signatory().await;
    let page = vera.post(&at, &changed(calibrated(), &[("changeover_c", "45")])).await;
    page.is(422).says("Recorded meanwhile by Jon Aspen");
    assert_eq!(page.field("changeover_c").as_deref(), Some("45"));
    assert_eq!(bay.entries("engine-calibration").await, 1);
    bay.shop.auditor().await.post(&at, &calibrated()).await.is(403);
}
