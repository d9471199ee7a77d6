//! The engine, the gas before its nozzles and the petrol injection, as typed.

use crate::calc::Composition;
use crate::calc::nozzle::engine::Follows;
use crate::calc::nozzle::{Asked, FromPetrol, PetrolInjection as Injection, Setting, Sizing};
use crate::calc::petrol::Petrol;
use crate::unit::Unit;
use crate::web::form::{Form, Wrong};
use crate::web::kit::{self, Field, Group};
use crate::words::Words;

/// Everything else that is a number: name, unit, range, and whether it may be left out.
pub const NUMBERS: [(&str, Unit, f64, f64, bool); 10] = [
    ("rated_power_kw", Unit::Kilowatt, 1.0, 1_000.0, true),
    ("rated_rpm", Unit::PerMinute, 300.0, 20_000.0, false),
    ("engine_cylinders", Unit::One, 1.0, 16.0, false),
    ("brake_efficiency", Unit::One, 0.1, 0.5, true),
    ("manifold_kpa", Unit::Kilopascal, 20.0, 500.0, false),
    ("gas_temperature_c", Unit::Celsius, -40.0, 120.0, false),
    ("max_duty", Unit::One, 0.2, 1.0, false),
    ("idle_rpm", Unit::PerMinute, 300.0, 3_000.0, true),
    ("idle_fuel_power_kw", Unit::Kilowatt, 0.2, 100.0, true),
    ("idle_manifold_kpa", Unit::Kilopascal, 15.0, 120.0, false),
];
/// Petrol injection data; asked for when sizing starts from them.
pub const PETROL: [(&str, Unit, f64, f64, bool); 6] = [
    ("static_flow_g_min", Unit::One, 20.0, 5_000.0, false),
    ("rated_pulse_ms", Unit::Millisecond, 0.5, 100.0, false),
    ("petrol_dead_time_ms", Unit::Millisecond, 0.0, 5.0, false),
    ("petrol_lambda", Unit::One, 0.7, 1.1, false),
    ("gas_lambda", Unit::One, 0.7, 1.1, false),
    ("idle_pulse_ms", Unit::Millisecond, 0.05, 100.0, true),
];

/// What sizing starts from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Start {
    /// Rated power and brake efficiency.
    Power,
    /// Petrol injection data.
    Petrol,
}

/// The engine as typed, before a set is put to it.
#[derive(Debug, Clone)]
pub struct Engine {
    setting: Setting,
    from: From,
}

#[derive(Debug, Clone)]
enum From {
    Power { rated_power_kw: f64, brake_efficiency: f64, idle: (Option<f64>, Option<f64>, f64) },
    Petrol(Injection),
}

impl Engine {
    /// What was typed; nothing when something is wrong, noted at its field.
    pub fn read(form: &mut Form, fuel: Option<Composition>, start: Start) -> Option<Self> {
        let is_petrol = start == Start::Petrol;
        let n = NUMBERS.map(|(name, unit, least, most, _)| form.opt_number(name, unit, least..=most));
        let needed = |form: &mut Form, name: &str, value: Option<f64>| {
            if value.is_none() {
                form.fail(name, Wrong::Empty);
            }
            value
        };
        for ((name, .., may_be_left_out), value) in NUMBERS.iter().zip(n) {
            // Rated power and efficiency are the very beginning when sizing starts from power.
            let is_asked = !may_be_left_out || (!is_petrol && ["rated_power_kw", "brake_efficiency"].contains(name));
            if is_asked {
                needed(form, name, value);
            }
        }
        let [power, rpm, cylinders, eta, manifold, gas_c, max_duty, idle_rpm, idle_kw, idle_manifold] = n;
        if cylinders.is_some_and(|n| n.fract() != 0.0) {
            form.fail("engine_cylinders", Wrong::NotWhole { typed: form.value("engine_cylinders").to_owned() });
        }
        let regulator_follows = match form.value("regulator_follows") {
            "nothing" => Follows::Nothing,
            "manifold" => Follows::Manifold,
            _ => {
                form.fail("regulator_follows", Wrong::NotAChoice);
                Follows::Manifold
            }
        };
        let from = if is_petrol {
            From::Petrol(Self::injection(form, idle_manifold)?)
        } else {
            From::Power { rated_power_kw: power?, brake_efficiency: eta?, idle: (idle_rpm, idle_kw, idle_manifold?) }
        };
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "read as 1 to 16")]
        let engine_cylinders = cylinders? as u32;
        let setting = Setting {
            fuel: fuel?,
            rated_rpm: rpm?,
            engine_cylinders,
            manifold_kpa: manifold?,
            supply_over_manifold_kpa: 0.0,
            regulator_follows,
            gas_temperature_c: gas_c?,
            dead_time_ms: 0.0,
            max_duty: max_duty?,
            discharge_coefficient: 0.0,
            discharge_uncertainty: None,
            sizes_mm: Vec::new(),
            min_pulse_ms: 0.0,
        };
        Some(Self { setting, from })
    }

    fn injection(form: &mut Form, idle_manifold_kpa: Option<f64>) -> Option<Injection> {
        let petrol = match form.value("petrol") {
            "e0" => Some(Petrol::E0),
            "e5" => Some(Petrol::E5),
            "e10" => Some(Petrol::E10),
            _ => {
                form.fail("petrol", Wrong::NotAChoice);
                None
            }
        };
        let n = PETROL.map(|(name, unit, least, most, may_be_left_out)| {
            let value = form.opt_number(name, unit, least..=most);
            if value.is_none() && !may_be_left_out {
                form.fail(name, Wrong::Empty);
            }
            value
        });
        let displaced = form.yes_no("displaced");
        let [flow, rated, dead, petrol_lambda, gas_lambda, idle_pulse_ms] = n;
        let dead = dead?;
        let after_dead = Wrong::Rule("nozzle-pulse-within-dead-time", Vec::new());
        if rated? < dead + 0.1 {
            form.fail("rated_pulse_ms", after_dead.clone());
        }
        if idle_pulse_ms.is_some_and(|pulse| pulse < dead + 0.05) {
            form.fail("idle_pulse_ms", after_dead);
        }
        Some(Injection {
            petrol: petrol?,
            static_flow_g_min: flow?,
            rated_pulse_ms: rated?,
            dead_time_ms: dead,
            petrol_lambda: petrol_lambda?,
            gas_lambda: gas_lambda?,
            is_displaced_air_taken_off: displaced?,
            idle_pulse_ms,
            idle_manifold_kpa: idle_manifold_kpa?,
        })
    }

    /// The question that this engine puts to a set.
    pub fn ask(&self, set: &[f64; 4], discharge_uncertainty: Option<f64>, sizes_mm: Vec<f64>) -> Asked {
        let [supply_over_manifold_kpa, dead_time_ms, min_pulse_ms, discharge_coefficient] = *set;
        let setting = Setting {
            supply_over_manifold_kpa,
            dead_time_ms,
            discharge_coefficient,
            discharge_uncertainty,
            sizes_mm,
            min_pulse_ms,
            ..self.setting.clone()
        };
        match &self.from {
            From::Petrol(injection) => Asked::Petrol(FromPetrol { injection: *injection, setting }),
            From::Power {
                rated_power_kw,
                brake_efficiency,
                idle: (idle_rpm, idle_fuel_power_kw, idle_manifold_kpa),
            } => Asked::Power(Sizing {
                fuel: setting.fuel,
                rated_power_kw: *rated_power_kw,
                rated_rpm: setting.rated_rpm,
                engine_cylinders: setting.engine_cylinders,
                brake_efficiency: *brake_efficiency,
                manifold_kpa: setting.manifold_kpa,
                supply_over_manifold_kpa,
                regulator_follows: setting.regulator_follows,
                gas_temperature_c: setting.gas_temperature_c,
                dead_time_ms,
                max_duty: setting.max_duty,
                discharge_coefficient,
                discharge_uncertainty,
                sizes_mm: setting.sizes_mm,
                idle_rpm: *idle_rpm,
                idle_fuel_power_kw: *idle_fuel_power_kw,
                idle_manifold_kpa: *idle_manifold_kpa,
                min_pulse_ms,
            }),
        }
    }
}

/// The fields by what they are about; a page takes those it asks for.
#[derive(Debug)]
pub struct Groups {
    /// Power, speed, engine cylinders, manifold.
    pub engine: Group,
    /// What sizing from power needs beside.
    pub power: Group,
    /// What sizing from petrol needs instead.
    pub petrol: Group,
    /// Idle, where it is to be judged.
    pub idle: Group,
    /// The gas at the injector.
    pub gas: Group,
}

impl Groups {
    /// The fields of a form; `number` makes a number with its hint.
    pub fn new(w: &Words, form: &Form, number: &dyn Fn(&str) -> Field) -> Self {
        let all = |names: &[&str]| names.iter().map(|name| number(name)).collect::<Vec<_>>();
        let chosen = |name: &str, prefix: &str, values: &[&str]| {
            kit::choice(form, w, name, &kit::choices(w, prefix, values.iter().copied()))
        };
        let petrol = vec![
            chosen("petrol", "petrol-grade", &["e0", "e5", "e10"]),
            kit::number(form, w, "static_flow_g_min").counted_in("g/min"),
            kit::number(form, w, "rated_pulse_ms"),
            kit::number(form, w, "petrol_dead_time_ms"),
            number("petrol_lambda"),
            number("gas_lambda"),
            kit::number(form, w, "idle_pulse_ms").optional(),
            kit::yes_no(form, w, "displaced"),
        ];
        let idle =
            vec![number("idle_rpm").optional(), number("idle_fuel_power_kw").optional(), number("idle_manifold_kpa")];
        let mut gas = all(&["gas_temperature_c", "max_duty"]);
        gas.push(chosen("regulator_follows", "regulator", &["manifold", "nothing"]));
        Self {
            engine: Group::new(
                w.t("sizing-group-engine"),
                all(&["rated_power_kw", "rated_rpm", "engine_cylinders", "manifold_kpa"]),
            ),
            power: Group::new(w.t("sizing-group-power"), all(&["brake_efficiency"])).noted(w.t("sizing-note-power")),
            petrol: Group::new(w.t("sizing-group-petrol"), petrol).noted(w.t("sizing-note-petrol")),
            idle: Group::new(w.t("sizing-group-idle"), idle).noted(w.t("sizing-note-idle")),
            gas: Group::new(w.t("sizing-group-gas"), gas),
        }
    }
}
