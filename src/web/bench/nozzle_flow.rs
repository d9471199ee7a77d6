//! How much flows through a nozzle; and, where a flow was measured, the nozzle's own discharge coefficient.

use super::answered::Answered;
use super::number::{self, Number, number};
use super::sum::{BenchSum, answer_of};
use crate::calc::gas::reference_density_kg_m3;
use crate::calc::nozzle::flow::{
    BASIS, DISCHARGE_UNCERTAINTY, FLUX_UNCERTAINTY, discharge_from_measurement, discharge_steps, steps,
};
use crate::calc::nozzle::{Flow, Flowing, flow};
use crate::calc::{Composition, Error, Outside};
use crate::unit::Unit;
use crate::web::form::{Form, Wrong};
use crate::web::fuel_mix::{self, Offer};
use crate::web::job::origins;
use crate::web::kit::Group;
use crate::words::Words;

/// `/bench/nozzle-flow`.
#[derive(Debug)]
pub struct NozzleFlowSum;

/// What is asked: a nozzle at work, and what somebody measured there.
#[derive(Debug)]
pub struct Asked {
    flow: Flow,
    measured: Option<Measured>,
}

/// A flow as it was measured.
#[derive(Debug, Clone, Copy)]
enum Measured {
    /// g/s.
    Mass(f64),
    /// L/min of gas at 15 C and 101.325 kPa.
    Volume(f64),
}

const NUMBERS: [Number; 5] = [
    number("upstream_kpa", Unit::Kilopascal, 0.1, 35_000.0),
    number("downstream_kpa", Unit::Kilopascal, 0.0, 35_000.0),
    number("temperature_c", Unit::Celsius, -60.0, 126.0),
    number("diameter_mm", Unit::Millimetre, 0.05, 50.0),
    number("discharge_coefficient", Unit::One, 0.05, 1.0).usual("0.65"),
];
const MEASURED: [Number; 2] = [
    number("measured_g_s", Unit::One, 1e-4, 10_000.0).optional().counted_in("g/s"),
    number("measured_l_min", Unit::LitrePerMinute, 1e-3, 1e6).optional(),
];

impl Measured {
    fn g_s(self, composition: &Composition) -> Result<f64, Error> {
        match self {
            Self::Mass(g_s) => Ok(g_s),
            // kg/m3 is g/L.
            Self::Volume(l_min) => Ok(l_min * reference_density_kg_m3(composition)? / 60.0),
        }
    }

    const fn field(self) -> &'static str {
        match self {
            Self::Mass(_) => "measured_g_s",
            Self::Volume(_) => "measured_l_min",
        }
    }
}

/// The coefficient that a measurement gives; a refusal is noted at the field that holds the measurement.
fn own_coefficient(w: &Words, form: &mut Form, asked: &Flow, measured: Measured) -> Option<f64> {
    let found = measured.g_s(&asked.composition).and_then(|g_s| discharge_from_measurement(asked, g_s));
    if let (Err(Error::Outside(Outside { quantity: "measured_g_s", least, most, .. })), Measured::Volume(_)) =
        (&found, measured)
    {
        let density = reference_density_kg_m3(&asked.composition).ok()?;
        let in_l_min = |g_s: f64| (g_s * 60.0 / density * 1e3).round() / 1e3;
        let (least, most, unit) = (in_l_min(*least), in_l_min(*most), Unit::LitrePerMinute);
        form.fail(measured.field(), Wrong::Beyond { least, most, unit });
        return None;
    }
    answer_of(w, form, "temperature_c", found)
}

fn said(w: &Words, found: &Flowing, composition: &Composition, coefficient: f64, is_measured: bool) -> Answered {
    let g_s = found.mass_flow_g_s;
    let spread = if is_measured { FLUX_UNCERTAINTY } else { DISCHARGE_UNCERTAINTY / coefficient } * g_s;
    let volume = reference_density_kg_m3(composition).ok().map(|density| w.quantity(g_s * 60.0 / density, 2, "L/min"));
    let choked = w.t(if found.choked { "bench-flow-choked" } else { "bench-flow-not-choked" });
    let answered = Answered::new(w).main("bench-flow-mass", w.quantity(g_s, 3, "g/s"));
    let answered =
        if is_measured { answered.main("bench-flow-own-coefficient", w.number(coefficient, 3)) } else { answered };
    answered
        .main("bench-flow-throat", choked)
        .cautions(&found.cautions)
        .results(vec![
            ("bench-flow-spread", (!is_measured).then(|| format!("± {}", w.quantity(spread, 2, "g/s")))),
            ("bench-flow-volume", volume),
            ("bench-flow-flux", Some(w.quantity(found.mass_flux_kg_s_m2, 1, "kg/(s m²)"))),
            ("bench-flow-ratio", Some(w.number(found.pressure_ratio, 4))),
            ("bench-flow-choking", Some(w.number(found.choking_share, 4))),
            ("bench-gas-density", Some(w.quantity(found.density_kg_m3, 3, "kg/m³"))),
            ("bench-gas-exponent", Some(w.number(found.isentropic_exponent, 4))),
        ])
        .basis(&BASIS)
}

impl BenchSum for NozzleFlowSum {
    const KEY: &'static str = "nozzle-flow";
    // 60 mol % propane in n-butane, 217 kPa and 50 C into 97 kPa through 2.2 mm: 1.803 g/s.
    const EXAMPLE: &'static [(&'static str, &'static str)] = &[
        ("fuel_mix", "typed-mole"),
        ("share_propane", "60"),
        ("share_n_butane", "40"),
        ("upstream_kpa", "217"),
        ("downstream_kpa", "97"),
        ("temperature_c", "50"),
        ("diameter_mm", "2.2"),
        ("discharge_coefficient", "0.80"),
    ];
    type Asked = Asked;

    fn openings() -> Vec<origins::Default> {
        number::openings(&NUMBERS)
    }

    fn groups(w: &Words, form: &Form) -> Vec<Group> {
        vec![
            fuel_mix::group(w, Offer::Any, form),
            Group::new(w.t("bench-group-nozzle"), number::fields(w, form, &NUMBERS)),
            Group::new(w.t("bench-group-measured"), number::fields(w, form, &MEASURED))
                .noted(w.t("bench-note-measured")),
        ]
    }

    fn read(w: &Words, form: &mut Form) -> Option<Asked> {
        let composition = fuel_mix::read(w, Offer::Any, form);
        let [upstream_kpa, downstream_kpa, temperature_c, diameter_mm, coefficient] = number::read(form, &NUMBERS);
        let measured = match number::read(form, &MEASURED) {
            [Some(_), Some(_)] => {
                form.fail("measured_l_min", Wrong::Rule("bench-measured-both", Vec::new()));
                return None;
            }
            [mass, volume] => mass.map(Measured::Mass).or(volume.map(Measured::Volume)),
        };
        let flow = Flow {
            composition: composition?,
            upstream_kpa: upstream_kpa?,
            downstream_kpa: downstream_kpa?,
            temperature_c: temperature_c?,
            diameter_mm: diameter_mm?,
            discharge_coefficient: coefficient?,
        };
        if measured.is_some() && flow.downstream_kpa >= flow.upstream_kpa {
            form.fail("downstream_kpa", Wrong::Rule("bench-nothing-flows", Vec::new()));
        }
        Some(Asked { flow, measured })
    }

    fn answer(w: &Words, form: &mut Form, asked: &Asked) -> Option<Answered> {
        let coefficient = match asked.measured {
            Some(measured) => own_coefficient(w, form, &asked.flow, measured)?,
            None => asked.flow.discharge_coefficient,
        };
        let asked_flow = Flow { discharge_coefficient: coefficient, ..asked.flow };
        let found = answer_of(w, form, "temperature_c", flow(&asked_flow))?;
        let steps = match asked.measured.and_then(|measured| measured.g_s(&asked.flow.composition).ok()) {
            Some(measured_g_s) => discharge_steps(&asked_flow, &found, measured_g_s, coefficient),
            None => steps(&asked_flow, &found),
        };
        Some(said(w, &found, &asked.flow.composition, coefficient, asked.measured.is_some()).steps(&steps))
    }

    fn fuel(asked: &Asked) -> Option<&Composition> {
        Some(&asked.flow.composition)
    }
}
