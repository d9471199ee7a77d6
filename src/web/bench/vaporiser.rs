//! Heat and coolant that an LPG vaporiser needs, and the engine that one of known heat can serve.

use super::answered::Answered;
use super::fuel_rate::{self, FuelRate};
use super::number::{self, Number, number};
use super::sum::{BenchSum, answer_of, refuse_rate};
use crate::calc::fuel::fuel;
use crate::calc::vaporiser::{VAPORISER, Vaporiser, vaporiser, vaporiser_steps};
use crate::calc::{ATMOSPHERE_KPA, Composition};
use crate::unit::Unit;
use crate::web::form::Form;
use crate::web::fuel_mix::{self, Offer};
use crate::web::job::origins;
use crate::web::kit::Group;
use crate::words::Words;

/// `/bench/vaporiser`.
#[derive(Debug)]
pub struct VaporiserSum;

/// What is asked.
#[derive(Debug)]
pub struct Asked {
    composition: Composition,
    container_c: f64,
    outlet_kpa: f64,
    outlet_c: f64,
    coolant_drop_k: f64,
    rate: FuelRate,
    capacity_kw: Option<f64>,
}

const NUMBERS: [Number; 4] = [
    number("container_c", Unit::Celsius, -40.0, 60.0).opening("15", "reference"),
    // Common practice: 120 kPa over a manifold near full load; gas at 50 to 60 C.
    number("outlet_kpa", Unit::Kilopascal, 20.0, 1_500.0).usual("220"),
    number("outlet_c", Unit::Celsius, -60.0, 126.0).usual("60"),
    number("coolant_drop_k", Unit::One, 1.0, 40.0).usual("8").counted_in("K"),
];
const CAPACITY: [Number; 1] = [number("capacity_kw", Unit::Kilowatt, 0.01, 200.0).optional()];

impl BenchSum for VaporiserSum {
    const KEY: &'static str = "vaporiser";
    // An engine of 75 kW at a brake efficiency of 0.30 on 60 mol % propane in n-butane: 2.44 kW and 5.0 L/min.
    const EXAMPLE: &'static [(&'static str, &'static str)] = &[
        ("fuel_mix", "typed-mole"),
        ("share_propane", "60"),
        ("share_n_butane", "40"),
        ("container_c", "15"),
        ("outlet_kpa", "220"),
        ("outlet_c", "60"),
        ("rated_power_kw", "75"),
        ("brake_efficiency", "0.30"),
        ("coolant_drop_k", "8"),
    ];
    type Asked = Asked;

    fn openings() -> Vec<origins::Default> {
        [number::openings(&NUMBERS), fuel_rate::openings()].concat()
    }

    fn groups(w: &Words, form: &Form) -> Vec<Group> {
        vec![
            fuel_mix::group(w, Offer::Lpg, form),
            fuel_rate::group(w, form),
            Group::new(w.t("bench-group-vaporiser"), number::fields(w, form, &NUMBERS)),
            Group::new(w.t("bench-group-capacity"), number::fields(w, form, &CAPACITY))
                .noted(w.t("bench-note-capacity")),
        ]
    }

    fn read(w: &Words, form: &mut Form) -> Option<Asked> {
        let composition = fuel_mix::read(w, Offer::Lpg, form);
        let rate = fuel_rate::read(form);
        let [container_c, outlet_kpa, outlet_c, coolant_drop_k] = number::read(form, &NUMBERS);
        let [capacity_kw] = number::read(form, &CAPACITY);
        Some(Asked {
            composition: composition?,
            container_c: container_c?,
            outlet_kpa: outlet_kpa?,
            outlet_c: outlet_c?,
            coolant_drop_k: coolant_drop_k?,
            rate: rate?,
            capacity_kw,
        })
    }

    fn answer(w: &Words, form: &mut Form, asked: &Asked) -> Option<Answered> {
        let Asked { composition, container_c, outlet_kpa, outlet_c, coolant_drop_k, rate, capacity_kw } = *asked;
        let gas = answer_of(w, form, "fuel_mix", fuel(&composition))?;
        let fuel_rate_g_s = answer_of(w, form, "fuel_mix", rate.g_s(&composition))?;
        let asked = Vaporiser { composition, container_c, outlet_kpa, outlet_c, fuel_rate_g_s, coolant_drop_k };
        let found = vaporiser(&asked).map_err(|error| refuse_rate(w, form, "outlet_c", rate, &error)).ok()?;
        // The engine's power that this heat vaporises for: Q eta H / dh.
        let serves = capacity_kw.map(|kw| {
            let power = kw * 1e3 / found.heat_kj_kg * rate.brake_efficiency() * gas.lower_heating_value_mj_kg;
            w.quantity(power, 0, "kW")
        });
        let margin_k = outlet_c - found.dew_temperature_c;
        Some(
            Answered::new(w)
                .main("bench-heat", w.quantity(found.heat_kw, 2, "kW"))
                .main("bench-coolant", w.quantity(found.coolant_l_min, 1, "L/min"))
                .main("bench-changeover", w.quantity(found.dew_temperature_c, 0, "°C"))
                .cautions(&found.cautions)
                .results(vec![
                    ("bench-serves", serves),
                    ("bench-fuel-rate", Some(w.quantity(fuel_rate_g_s, 2, "g/s"))),
                    ("bench-heat-mass", Some(w.quantity(found.heat_kj_kg, 1, "kJ/kg"))),
                    ("bench-heat-power", Some(w.quantity(found.heat_w_per_kw_fuel, 2, "W/kW"))),
                    ("bench-container-pressure", Some(w.quantity(found.container_kpa, 0, "kPa"))),
                    ("bench-container-gauge", Some(w.quantity(found.container_kpa - ATMOSPHERE_KPA, 0, "kPa"))),
                    ("bench-dew-margin", Some(w.quantity(margin_k, 0, "K"))),
                ])
                .steps(&vaporiser_steps(&asked, &found))
                .basis(&VAPORISER),
        )
    }

    fn fuel(asked: &Asked) -> Option<&Composition> {
        Some(&asked.composition)
    }
}
