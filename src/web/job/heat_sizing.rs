//! Heat: what the vaporiser or the pressure regulator must bring at rated power, and whether the one chosen can.

use super::facts::{Fact, Facts};
use super::reckoned::Reckoned;
use super::reckoning::{self, Defaults, FromNozzle, Number, needed};
use super::record::{Group, Recorded, Taken};
use super::{JobPage, fuel_mix, heat_said, origins, sum};
use crate::calc::cylinder::WORKING_KPA;
use crate::calc::heat::{Asked, CHANGEOVER_C, COLDEST_C, COOLANT_DROP_K, Capacity, Device, fuel_rate_g_s, sheet};
use crate::calc::vaporiser::{Regulator, Vaporiser};
use crate::calc::{Composition, Error as SumError};
use crate::model::evidence::{Entry, Evidence, HeatInputs, HeatSizing, SizingVerdict};
use crate::model::job::Fuel;
use crate::model::stage::Stage;
use crate::model::vehicle::Aspiration;
use crate::unit::Unit;
use crate::web::Error;
use crate::web::app::App;
use crate::web::form::{Form, Wrong};

/// The form of [`HeatSizing`].
#[derive(Debug)]
pub struct HeatSizingForm;

/// The engine: power, efficiency, or the fuel rate itself.
pub const ENGINE: [Number; 3] = [
    needed("rated_power_kw", Unit::Kilowatt, 1.0, 1_000.0).optional(),
    needed("brake_efficiency", Unit::One, 0.1, 0.5).optional(),
    needed("fuel_rate_g_s", Unit::One, 0.01, 200.0).optional().counted_in("g/s"),
];
/// A vaporiser at work.
pub const VAPORISER: [Number; 5] = [
    needed("container_c", Unit::Celsius, -40.0, 60.0),
    needed("outlet_kpa", Unit::Kilopascal, 20.0, 1_500.0),
    needed("outlet_c", Unit::Celsius, -40.0, 120.0),
    needed("coolant_drop_k", Unit::Kelvin, 1.0, 40.0),
    needed("changeover_c", Unit::Celsius, -20.0, 110.0),
];
/// A pressure regulator at work.
pub const REGULATOR: [Number; 5] = [
    needed("inlet_kpa", Unit::Kilopascal, 200.0, 35_000.0),
    needed("inlet_c", Unit::Celsius, -50.0, 100.0),
    needed("outlet_kpa", Unit::Kilopascal, 20.0, 3_000.0),
    needed("outlet_c", Unit::Celsius, -40.0, 120.0),
    needed("coolant_drop_k", Unit::Kelvin, 1.0, 40.0),
];
/// What its maker tells: one of the two.
pub const MAKER: [Number; 2] = [
    needed("capacity_heat_kw", Unit::Kilowatt, 0.1, 500.0).optional(),
    needed("capacity_engine_kw", Unit::Kilowatt, 1.0, 2_000.0).optional(),
];

fn is_lpg(job: &JobPage) -> bool {
    job.file.job.fuel == Fuel::Lpg
}

/// The numbers of the device of this job.
pub fn device_numbers(job: &JobPage) -> &'static [Number; 5] {
    if is_lpg(job) { &VAPORISER } else { &REGULATOR }
}

fn defaults(job: &JobPage) -> Vec<origins::Default> {
    let (vehicle, nozzle) = (&job.file.vehicle, FromNozzle::of(job));
    let nozzle = nozzle.as_ref();
    let mut all = Defaults(nozzle.map(|nozzle| nozzle.mix(job)).unwrap_or_default());
    match nozzle.map(|nozzle| (nozzle.power(), nozzle.fuel_rate_g_s())) {
        Some((Some((power, efficiency)), _)) => {
            all.add("rated_power_kw", Some(power.to_string()), "nozzle");
            all.add("brake_efficiency", Some(efficiency.to_string()), "nozzle");
        }
        Some((None, rate)) => {
            all.add("rated_power_kw", vehicle.rated_power_kw.map(|kw| kw.to_string()), "vehicle");
            all.add("fuel_rate_g_s", Some(format!("{rate:.3}")), "nozzle");
        }
        None => {
            all.add("rated_power_kw", vehicle.rated_power_kw.map(|kw| kw.to_string()), "vehicle");
            let usual = if vehicle.aspiration == Aspiration::Boosted { "0.32" } else { "0.28" };
            all.add("brake_efficiency", Some(usual.to_owned()), "practice");
        }
    }
    let upstream = nozzle.map(|nozzle| format!("{:.0}", nozzle.upstream_kpa()));
    let gas_c = nozzle.map(|nozzle| nozzle.asked().setting().gas_temperature_c.to_string());
    if is_lpg(job) {
        all.add("container_c", Some(format!("{COLDEST_C:.0}")), "practice");
        all.known_or("outlet_kpa", upstream, "nozzle", "217");
        all.known_or("outlet_c", gas_c, "nozzle", "50");
        let set = job.file.entry("engine-calibration", "").and_then(|entry| match &entry.body {
            Evidence::EngineCalibration(one) => Some(one.changeover_c.to_string()),
            _ => None,
        });
        all.known_or("changeover_c", set, "calibration", &format!("{CHANGEOVER_C:.0}"));
    } else {
        all.add("inlet_kpa", Some(format!("{WORKING_KPA:.0}")), "practice");
        all.add("inlet_c", Some(format!("{COLDEST_C:.0}")), "practice");
        all.known_or("outlet_kpa", upstream, "nozzle", "297");
        all.known_or("outlet_c", gas_c, "nozzle", "40");
    }
    all.add("coolant_drop_k", Some(format!("{COOLANT_DROP_K:.0}")), "practice");
    all.0
}

fn names(job: &JobPage) -> Vec<String> {
    let mut names = fuel_mix::names(job.file.job.fuel.into());
    for numbers in [&ENGINE[..], &device_numbers(job)[..], &MAKER[..]] {
        names.extend(reckoning::names_of(numbers));
    }
    names
}

/// Where the fuel rate comes from: given, or power and efficiency.
fn rate_of(form: &mut Form, fuel: Option<&Composition>) -> Option<(f64, Option<f64>, Option<f64>)> {
    let [power, efficiency, rate] = ENGINE.map(|number| number.read(form));
    if let Some(rate) = rate {
        return Some((rate, power, None));
    }
    for (name, value) in [("rated_power_kw", power), ("brake_efficiency", efficiency)] {
        if value.is_none() {
            form.fail(name, Wrong::Rule("heat-power-or-rate", Vec::new()));
        }
    }
    let (power, efficiency) = (power?, efficiency?);
    let rate = fuel_rate_g_s(fuel?, power, efficiency).ok()?;
    Some((rate, Some(power), Some(efficiency)))
}

fn capacity_of(form: &mut Form) -> Option<Capacity> {
    match MAKER.map(|number| number.read(form)) {
        [Some(_), Some(_)] => {
            form.fail("capacity_engine_kw", Wrong::Rule("heat-one-capacity", Vec::new()));
            None
        }
        [Some(heat_kw), None] => Some(Capacity::Heat { heat_kw }),
        [None, Some(engine_kw)] => Some(Capacity::Engine { engine_kw }),
        [None, None] => None,
    }
}

fn asked(job: &JobPage, form: &mut Form) -> Option<Asked> {
    let composition = fuel_mix::read(&job.w(), job.file.job.fuel.into(), form);
    let rate = rate_of(form, composition.as_ref());
    let device = device_numbers(job).map(|number| number.read(form));
    let capacity = capacity_of(form);
    form.sound()?;
    let (composition, (fuel_rate_g_s, rated_power_kw, brake_efficiency)) = (composition?, rate?);
    let [a, b, c, d, e] = device;
    let (a, b, c, d, e) = (a?, b?, c?, d?, e?);
    let (device, changeover_c) = if is_lpg(job) {
        let vaporiser =
            Vaporiser { composition, container_c: a, outlet_kpa: b, outlet_c: c, fuel_rate_g_s, coolant_drop_k: d };
        (Device::Vaporiser(vaporiser), Some(e))
    } else {
        let regulator = Regulator {
            composition,
            inlet_kpa: a,
            inlet_c: b,
            outlet_kpa: c,
            outlet_c: d,
            fuel_rate_g_s,
            coolant_drop_k: e,
        };
        (Device::Regulator(regulator), None)
    };
    Some(Asked { device, rated_power_kw, brake_efficiency, capacity, changeover_c })
}

impl Recorded for HeatSizingForm {
    const KIND: &'static str = "heat-sizing";
    const STAGE: Stage = Stage::Sizing;
    const RECKONS: bool = true;

    async fn open(_: &App, _: &JobPage, _: &str) -> Result<Self, Error> {
        Ok(Self)
    }

    fn blank(&self, job: &JobPage) -> Form {
        reckoning::opened(defaults(job))
    }

    fn filled(&self, _: &JobPage, entry: &Entry) -> Form {
        let Evidence::HeatSizing(one) = &entry.body else { return Form::blank() };
        reckoning::filled(one.read_back().map(|(inputs, _)| inputs.typed).unwrap_or_default())
    }

    fn groups(&self, job: &JobPage, form: &Form) -> Vec<Group> {
        let (w, defaults) = (job.w(), defaults(job));
        let fields = |numbers: &[Number]| numbers.iter().map(|number| number.field(job, form, &defaults)).collect();
        let device = if is_lpg(job) { "vaporiser" } else { "regulator" };
        vec![
            fuel_mix::group(&job.w(), job.file.job.fuel.into(), form),
            Group::new(w.t("sizing-group-engine"), fields(&ENGINE)).noted(w.t("heat-note-engine")),
            Group::new(w.t(format!("heat-group-{device}")), fields(&device_numbers(job)[..]))
                .noted(w.t(format!("heat-note-{device}"))),
            Group::new(w.t("heat-group-maker"), fields(&MAKER)).noted(w.t("heat-note-maker")),
        ]
    }

    fn read(&self, job: &JobPage, form: &mut Form) -> Option<Taken> {
        let asked = asked(job, form)?;
        let found = match sheet(&asked) {
            Ok(found) => found,
            Err(error) => {
                // The gas at the outlet rains, or the content of a cylinder is beyond the equation.
                let gas_field = if matches!(error, SumError::Wet { .. }) { "outlet_c" } else { "outlet_kpa" };
                sum::refuse(&job.w(), form, &error, gas_field, str::to_owned);
                return None;
            }
        };
        let (typed, origins) = origins::keep(form, names(job), &defaults(job));
        let body = HeatSizing {
            origins,
            heat_kw: found.heat.heat_kw(),
            coolant_l_min: found.heat.coolant_l_min(),
            verdict: SizingVerdict::of_heat(&found),
            program_version: env!("CARGO_PKG_VERSION").to_owned(),
            inputs: serde_json::to_value(HeatInputs { typed, asked }).ok()?,
            results: serde_json::to_value(found).ok()?,
        };
        Some(Taken::of(Evidence::HeatSizing(body)))
    }

    fn facts(job: &JobPage, entry: &Entry) -> Vec<Fact> {
        let Evidence::HeatSizing(one) = &entry.body else { return Vec::new() };
        Facts::new(job.w(), Self::KIND)
            .number("heat_kw", one.heat_kw, 2, "kW")
            .number("coolant_l_min", one.coolant_l_min, 1, "L/min")
            .done()
    }

    fn reckoned(job: &JobPage, body: &Evidence) -> Option<Reckoned> {
        heat_said::reckoned(job, body)
    }
}
