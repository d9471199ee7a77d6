//! Proving as a technician does it: joints searched, exhaust read, functions checked; each form wrong, explained, kept,
//! mended, saved.

use fuelwright::model::evidence::{Evidence, Exhaust, ExhaustPoint};
use fuelwright::model::instrument::InstrumentKind;
use fuelwright::rules::State;
use time::Duration;

use crate::job_support::Bay;

const NOW: (&str, &str) = ("measured_at", "2026-05-12T10:30");

/// Joints as a browser sends them.
fn joints(verdicts: &[(&'static str, &'static str)]) -> Vec<(String, String)> {
    let pair = |(at, (name, verdict)): (usize, &(&str, &str))| {
        [(format!("joints[{at}][name]"), (*name).to_owned()), (format!("joints[{at}][verdict]"), (*verdict).to_owned())]
    };
    verdicts.iter().enumerate().flat_map(pair).collect()
}

fn with<'a>(fixed: &[(&'a str, &'a str)], joints: &'a [(String, String)]) -> Vec<(&'a str, &'a str)> {
    let joints = joints.iter().map(|(name, text)| (name.as_str(), text.as_str()));
    fixed.iter().copied().chain(joints).collect()
}

#[tokio::test]
async fn joints_are_searched_with_foam_and_the_list_can_be_changed() {
    let bay = Bay::lpg().await;
    let jon = bay.shop.technician().await;
    let address = bay.at("leak-joints/lpg-vapour");
    let page = jon.get(&address).await;
    page.is(200).says("Common practice for this section");
    assert_eq!(page.field("joints[5][name]").as_deref(), Some("Injector nozzles, one by one"));
    assert_eq!(page.field("joints[0][name]").as_deref(), Some("Vaporiser, gas outlet"));

    let open = joints(&[("Vaporiser, gas outlet", "dry"), ("Rail, own joint", "not-tested"), ("", "not-tested")]);
    let mut sent = with(&[("method", "foam"), ("pressure_gauge_kpa", "2.1 bar"), ("foam_batch", "B-77"), NOW], &open);
    let wrong = jon.post(&address, &sent).await;
    wrong.is(422).says("Foam proves nothing without its last day");
    assert_eq!(wrong.field("joints[1][name]").as_deref(), Some("Rail, own joint"), "what was typed is kept");
    assert_eq!(bay.entries("leak-joints").await, 0);

    sent.push(("foam_expires_on", "2027-03-31"));
    jon.post(&address, &sent).await.goes_to();
    let proof = bay.proof("leak-lpg-vapour").await;
    assert_eq!(proof.state, State::Missing, "one joint of two is open");
    assert_eq!(proof.why.key, "joints-open");
    jon.get(&bay.at("stages/proving")).await.says("210 kPa").says("Rail, own joint: Not tested").links_to(&address);
}

#[tokio::test]
async fn a_joint_searched_later_corrects_the_entry_and_meets_the_proof() {
    let bay = Bay::lpg().await;
    let jon = bay.shop.technician().await;
    let address = bay.at("leak-joints/lpg-vapour");
    let fixed = [("method", "foam"), ("pressure_gauge_kpa", "120"), ("foam_expires_on", "2027-03-31"), NOW];
    let leaking = joints(&[("Rail", "leaks")]);
    jon.post(&address, &with(&fixed, &leaking)).await.goes_to();
    assert_eq!(bay.proof("leak-lpg-vapour").await.state, State::Stops);

    let form = jon.get(&address).await;
    assert_eq!(form.field("foam_expires_on").as_deref(), Some("2027-03-31"));
    let replaces = form.field("replaces_id").unwrap_or_default();
    let dry = joints(&[("Rail", "dry")]);
    let mut sent = with(&fixed, &dry);
    sent.push(("replaces_id", &replaces));
    jon.post(&address, &sent).await.is(422).says("Why it is corrected");
    sent.push(("replaces_reason", "clip renewed, searched again"));
    jon.post(&address, &sent).await.goes_to();
    assert_eq!(bay.proof("leak-lpg-vapour").await.state, State::Met);
    jon.get(&bay.at("stages/proving")).await.says("clip renewed, searched again");
}

#[tokio::test]
async fn a_stale_save_shows_both_and_a_double_send_makes_one_record() {
    let bay = Bay::lpg().await;
    let (jon, vera) = (bay.shop.technician().await, bay.shop.signatory().await);
    let address = bay.at("leak-joints/lpg-vapour");
    let fixed = [("method", "foam"), ("pressure_gauge_kpa", "120"), ("foam_expires_on", "2027-03-31"), NOW];
    let (mine, hers) = (joints(&[("Rail", "dry")]), joints(&[("Filter", "dry")]));
    let mut once = with(&fixed, &hers);
    let key = uuid::Uuid::now_v7().to_string();
    once.push(("key", &key));
    vera.post(&address, &once).await.goes_to();
    vera.post(&address, &once).await.goes_to();
    assert_eq!(bay.entries("leak-joints").await, 1, "the second tap made no second entry");

    let stale = jon.post(&address, &with(&fixed, &mine)).await;
    stale.is(422).says("Recorded meanwhile by Vera Holm").says("Filter: Dry");
    assert_eq!(stale.field("joints[0][name]").as_deref(), Some("Rail"), "mine is still typed");
    assert_eq!(bay.entries("leak-joints").await, 1);
}

#[tokio::test]
async fn a_detector_must_be_one_of_the_shop_and_a_section_one_of_the_job() {
    let bay = Bay::lpg().await;
    let jon = bay.shop.technician().await;
    let gauge = bay.instrument("G-03", InstrumentKind::PressureGauge, "kPa", 0.1, 0.05).await.to_string();
    let detector = bay.instrument("D-1", InstrumentKind::LeakDetector, "ppm", 1.0, 1.0).await.to_string();
    let address = bay.at("leak-joints/lpg-liquid");
    let dry = joints(&[("Multivalve", "dry")]);
    let mut sent = with(&[("method", "detector"), ("pressure_gauge_kpa", "700"), NOW], &dry);
    jon.post(&address, &sent).await.is(422).says("Choose the detector that was used");
    let nobody = "01890a5d-ac96-774b-bcce-b302099a8057";
    for forged in [gauge.as_str(), nobody, "x"] {
        let mut sent = sent.clone();
        sent.push(("detector_id", forged));
        jon.post(&address, &sent).await.is(422).says("Choose one of the answers");
    }
    sent.push(("detector_id", &detector));
    jon.post(&address, &sent).await.goes_to();
    assert_eq!(bay.proof("leak-lpg-liquid").await.state, State::Met);
    jon.get(&bay.at("leak-joints/cng-high")).await.is(404);
    jon.get(&bay.at("leak-joints/nowhere")).await.is(404);
}

/// Gases of a warm engine near lambda 1 at both speeds, on LPG.
const GASES: [(&str, &str); 10] = [
    ("idle_rpm", "800"),
    ("idle_co_percent", "0.1"),
    ("idle_co2_percent", "12.9"),
    ("idle_o2_percent", "0.3"),
    ("idle_hc_ppm", "60"),
    ("raised_rpm", "2600"),
    ("raised_co_percent", "0.05"),
    ("raised_co2_percent", "13.1"),
    ("raised_o2_percent", "0.2"),
    ("raised_hc_ppm", "30"),
];

fn gases<'a>(analyser: &'a str, rest: &[(&'a str, &'a str)]) -> Vec<(&'a str, &'a str)> {
    let first = [("analyser_id", analyser), ("analyser_set_to", "lpg"), ("coolant_c", "88"), NOW];
    let kept = GASES.iter().filter(|(name, _)| !rest.iter().any(|(other, _)| other == name));
    first.iter().chain(kept).chain(rest).copied().collect()
}

#[tokio::test]
async fn exhaust_is_read_with_its_limits_and_rule_and_meets_its_proof() {
    let bay = Bay::lpg().await;
    let jon = bay.shop.technician().await;
    let analyser = bay.instrument("A-1", InstrumentKind::GasAnalyser, "%", 0.01, 0.03).await.to_string();
    let address = bay.at("exhaust/gas");
    jon.get(&address).await.is(200).says("A-1, due 10 Jan").says("CO at idle 0.30").says("At least 2");

    let wrong = jon.post(&address, &gases(&analyser, &[("raised_co_percent", "a little")])).await;
    wrong.is(422).says("“a little” is not a number");
    assert_eq!(wrong.field("idle_hc_ppm").as_deref(), Some("60"));
    let slow = gases(&analyser, &[("raised_rpm", "700")]);
    jon.post(&address, &slow).await.is(422).says("Raised idle is not above idle");

    jon.post(&address, &gases(&analyser, &[])).await.goes_to();
    assert_eq!(bay.proof("exhaust-gas").await.state, State::Met);
    assert_eq!(bay.proof("exhaust-petrol").await.state, State::Missing);
    let page = jon.get(&bay.at("stages/proving")).await;
    page.says("Within its limits").says("Directive 2014/45/EU").says("simple acceptance");
}

#[tokio::test]
async fn lambda_apart_from_the_analyser_is_shown_and_asked() {
    let bay = Bay::lpg().await;
    let jon = bay.shop.technician().await;
    let analyser = bay.instrument("A-1", InstrumentKind::GasAnalyser, "%", 0.01, 0.03).await.to_string();
    let address = bay.at("exhaust/gas");
    let apart = [("raised_analyser_lambda", "1.040"), ("analyser_set_to", "petrol")];
    let mut sent = gases(&analyser, &apart);
    sent.retain(|(name, value)| *name != "analyser_set_to" || *value == "petrol");
    let asked = jon.post(&address, &sent).await;
    asked.is(422).says("the analyser shows 1.040").says("Say why they differ");
    assert_eq!(bay.entries("exhaust").await, 0);
    sent.push(("lambda_note", "analyser left on petrol"));
    jon.post(&address, &sent).await.goes_to();
    let page = jon.get(&bay.at("stages/proving")).await;
    page.says("The analyser stood on petrol while the engine ran on LPG").says("analyser left on petrol");
}

#[tokio::test]
async fn an_analyser_out_of_calibration_proves_nothing_and_a_forged_one_is_refused() {
    let bay = Bay::lpg().await;
    let jon = bay.shop.technician().await;
    let late =
        bay.instrument_due("A-9", InstrumentKind::GasAnalyser, "%", (0.01, 0.03), "2026-05-01").await.to_string();
    let gauge = bay.instrument("G-03", InstrumentKind::PressureGauge, "kPa", 0.1, 0.05).await.to_string();
    let address = bay.at("exhaust/petrol");
    jon.get(&address).await.says("A-9, proves nothing today");
    jon.post(&address, &gases(&gauge, &[])).await.is(422).says("Choose one of the answers");
    jon.post(&address, &gases(&late, &[])).await.goes_to();
    let proof = bay.proof("exhaust-petrol").await;
    assert_eq!((proof.state, proof.why.key), (State::Stops, "instrument-out-since"));
}

/// Reading, then what the proof says of it. Limits: Directive 2014/45/EU, Annex I, 8.2.1.2, for a vehicle with closed
/// loop first registered after 1 July 2002: CO 0.3 % at idle, 0.2 % at raised idle, lambda 1 ± 0.03, at 2 000/min or more.
#[tokio::test]
async fn exhaust_is_held_against_the_limits_of_the_directive() {
    let cases: [(&str, f64, f64, f64, f64, State); 8] = [
        ("all well within", 0.10, 0.05, 0.20, 2_600.0, State::Met),
        ("CO at idle at its limit", 0.30, 0.05, 0.20, 2_600.0, State::Met),
        ("CO at idle over its limit", 0.31, 0.05, 0.20, 2_600.0, State::Stops),
        ("CO at raised idle at its limit", 0.10, 0.20, 0.30, 2_600.0, State::Met),
        ("CO at raised idle over its limit", 0.10, 0.21, 0.30, 2_600.0, State::Stops),
        ("lean", 0.10, 0.02, 1.50, 2_600.0, State::Stops),
        ("raised idle too slow", 0.10, 0.05, 0.20, 1_900.0, State::Undecided),
        ("probe in the air", 0.10, 0.01, 20.0, 2_600.0, State::Stops),
    ];
    for (name, idle_co, raised_co, raised_o2, rpm, wanted) in cases {
        let bay = Bay::lpg().await;
        let analyser = bay.instrument("A-1", InstrumentKind::GasAnalyser, "%", 0.01, 0.03).await;
        let point = |rpm, co_percent, o2_percent| ExhaustPoint {
            rpm,
            co_percent,
            co2_percent: if o2_percent > 15.0 { 0.5 } else { 13.1 },
            o2_percent,
            hc_ppm: 30.0,
            analyser_lambda: None,
        };
        let seen = Exhaust {
            on_gas: true,
            analyser_set_to: "lpg".into(),
            coolant_c: 88.0,
            idle: point(800.0, idle_co, 0.3),
            raised: point(rpm, raised_co, raised_o2),
            lambda_note: String::new(),
        };
        bay.record(Evidence::Exhaust(seen), vec![analyser]).await;
        assert_eq!(bay.proof("exhaust-gas").await.state, wanted, "{name}");
    }
}

const CHECKS: [(&str, &str); 12] = [
    ("changeover_works", "yes"),
    ("returns_when_empty", "yes"),
    ("starts_on_gas", "not-fitted"),
    ("shut_off_ignition_s", "0.6"),
    ("shut_off_stalled_s", "1.4"),
    ("fill_stop_how", "later"),
    ("level_shows", "yes"),
    ("vent_is_open", "yes"),
    ("excess_flow_present", "yes"),
    ("label_in_place", "yes"),
    NOW,
    ("fill_stop_l", ""),
];

fn checks<'a>(rest: &[(&'a str, &'a str)]) -> Vec<(&'a str, &'a str)> {
    let kept = CHECKS.iter().filter(|(name, _)| !rest.iter().any(|(other, _)| other == name));
    kept.chain(rest).copied().collect()
}

#[tokio::test]
async fn functions_are_checked_and_each_answer_settles_its_proof() {
    let bay = Bay::lpg().await;
    let jon = bay.shop.technician().await;
    let address = bay.at("function-checks");
    jon.get(&address).await.is(200).says("2.0 s at most").says("80 % at most");
    jon.post(&address, &checks(&[("shut_off_ignition_s", ""), ("label_in_place", "")]))
        .await
        .is(422)
        .says("Nothing is entered here");
    jon.post(&address, &checks(&[("stays_open_stalled", "yes")]))
        .await
        .is(422)
        .says("Either a time, or it stayed open");
    jon.post(&address, &checks(&[("fill_stop_l", "40")])).await.is(422).says("Litres belong to a stop that was seen");
    jon.post(&address, &checks(&[("fill_stop_how", "first-fill"), ("fill_stop_l", "40")]))
        .await
        .is(422)
        .says("with its ticket");
    assert_eq!(bay.entries("function-checks").await, 0);
    jon.post(&address, &checks(&[])).await.goes_to();
    for proof in ["changeover", "shut-off", "fill-stop", "level", "vent", "label"] {
        assert_eq!(bay.proof(proof).await.state, State::Met, "{proof}");
    }
}

#[tokio::test]
async fn gas_that_stays_open_or_shuts_late_stops_the_paper() {
    for (rest, why) in [
        (vec![("shut_off_stalled_s", ""), ("stays_open_stalled", "yes")], "gas-stays-open"),
        (vec![("shut_off_stalled_s", "2.1")], "shut-off-slow"),
    ] {
        let bay = Bay::lpg().await;
        let jon = bay.shop.technician().await;
        jon.post(&bay.at("function-checks"), &checks(&rest)).await.goes_to();
        let proof = bay.proof("shut-off").await;
        assert_eq!((proof.state, proof.why.key), (State::Stops, why));
    }
}

#[tokio::test]
async fn a_cng_job_is_not_asked_for_a_fill_stop() {
    let bay = Bay::cng().await;
    let jon = bay.shop.technician().await;
    let address = bay.at("function-checks");
    jon.get(&address).await.is(200).hides("Fill stop");
    jon.post(&address, &checks(&[("fill_stop_how", "")])).await.goes_to();
    assert_eq!(bay.proof("shut-off").await.state, State::Met);
}

#[tokio::test]
async fn who_only_reads_sees_the_forms_and_records_nothing() {
    let bay = Bay::lpg().await;
    let odo = bay.shop.auditor().await;
    odo.get(&bay.at("function-checks")).await.is(200);
    odo.post(&bay.at("function-checks"), &checks(&[])).await.is(403);
    bay.shop.clock.advance(Duration::minutes(1));
    assert_eq!(bay.entries("function-checks").await, 0);
}
