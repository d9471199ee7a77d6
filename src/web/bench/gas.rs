//! The state of a gas: how dense, how fast, how near to rain.

use super::answered::Answered;
use super::number::{self, Number, number};
use super::sum::{BenchSum, answer_of};
use crate::calc::Composition;
use crate::calc::gas::{BASIS, Gas, gas_state, steps};
use crate::unit::Unit;
use crate::web::form::Form;
use crate::web::fuel_mix::{self, Offer};
use crate::web::job::origins;
use crate::web::kit::Group;
use crate::words::Words;

/// `/bench/gas`.
#[derive(Debug)]
pub struct GasSum;

const NUMBERS: [Number; 2] =
    [number("pressure_kpa", Unit::Kilopascal, 0.1, 35_000.0), number("temperature_c", Unit::Celsius, -60.0, 126.0)];

impl BenchSum for GasSum {
    const KEY: &'static str = "gas";
    // 60 mol % propane in n-butane before a nozzle: the worked example of the flow sum, 4.161 kg/m3.
    const EXAMPLE: &'static [(&'static str, &'static str)] = &[
        ("fuel_mix", "typed-mole"),
        ("share_propane", "60"),
        ("share_n_butane", "40"),
        ("pressure_kpa", "217"),
        ("temperature_c", "50"),
    ];
    type Asked = Gas;

    fn openings() -> Vec<origins::Default> {
        number::openings(&NUMBERS)
    }

    fn groups(w: &Words, form: &Form) -> Vec<Group> {
        vec![
            fuel_mix::group(w, Offer::Any, form),
            Group::new(w.t("bench-group-state"), number::fields(w, form, &NUMBERS)),
        ]
    }

    fn read(w: &Words, form: &mut Form) -> Option<Gas> {
        let composition = fuel_mix::read(w, Offer::Any, form);
        let [pressure_kpa, temperature_c] = number::read(form, &NUMBERS);
        Some(Gas { composition: composition?, pressure_kpa: pressure_kpa?, temperature_c: temperature_c? })
    }

    fn answer(w: &Words, form: &mut Form, asked: &Gas) -> Option<Answered> {
        let state = answer_of(w, form, "temperature_c", gas_state(asked))?;
        let dew = state.dew_temperature_c.map(|dew| w.quantity(dew, 1, "°C"));
        Some(
            Answered::new(w)
                .main("bench-gas-density", w.quantity(state.density_kg_m3, 3, "kg/m³"))
                .main("bench-gas-compressibility", w.number(state.compressibility, 4))
                .main("bench-gas-exponent", w.number(state.isentropic_exponent, 4))
                .main("bench-gas-sound", w.quantity(state.speed_of_sound_m_s, 1, "m/s"))
                .cautions(&state.cautions)
                .results(vec![
                    ("bench-gas-heat", Some(w.quantity(state.heat_capacity_kj_kg_k, 3, "kJ/(kg K)"))),
                    ("bench-fuel-molar-mass", Some(w.quantity(state.molar_mass_g_mol, 3, "g/mol"))),
                    ("bench-gas-dew", Some(dew.unwrap_or_else(|| w.t("bench-gas-dew-none")))),
                ])
                .steps(&steps(asked, &state))
                .basis(&BASIS),
        )
    }

    fn fuel(asked: &Gas) -> Option<&Composition> {
        Some(&asked.composition)
    }
}
