//! No sum answers with something that is no number, whatever it is given: every public sum, every number of its input,
//! one at a time and all together, wild (NaN, infinite, subnormal, enormous) and near what is usual.

use std::fmt::Debug;

use fuelwright::calc::composition::{Composition, Shares};
use fuelwright::calc::container::{self, Container, Stowage, container, stow};
use fuelwright::calc::cylinder::{Cylinder, FastFill, cylinder, fast_fill, range_km};
use fuelwright::calc::decision::Rule;
use fuelwright::calc::due::{Duty, OdometerLine, Precision, Reading, due};
use fuelwright::calc::economy::{FactorSet, Running, economy};
use fuelwright::calc::fuel::fuel;
use fuelwright::calc::fuel_parts::parts;
use fuelwright::calc::gas::{Gas, compressibility, gas_state, reference_density_kg_m3};
use fuelwright::calc::hose::{Carries, Hose, hose};
use fuelwright::calc::lambda::{
    Exhaust, ExhaustFuel, LambdaLimit, PermissibleErrors, hexane_from_propane_ppm, lambda, lambda_uncertainty,
};
use fuelwright::calc::leak::plan::{Planned, has_settled, needed_gauge_kpa, plan};
use fuelwright::calc::leak::units::{
    LeakGas, RateUnit, Regime, at_other_pressure, bubbles_per_second, mass_g_h, through_same_leak,
};
use fuelwright::calc::leak::{Compressibility, DecayTest, judge, trace};
use fuelwright::calc::liquid::{Liquid, density, dew_temperature_c, saturation_kpa, vapour_pressure};
use fuelwright::calc::nozzle::engine::Follows;
use fuelwright::calc::nozzle::flow::{self as flows, discharge_from_measurement};
use fuelwright::calc::nozzle::{
    Asked, Flow, FromPetrol, PetrolInjection, Setting, Sizing, choking_share, flow, mass_flux, sheet, size, steps,
};
use fuelwright::calc::petrol::Petrol;
use fuelwright::calc::reported::reported;
use fuelwright::calc::substance::Component;
use fuelwright::calc::uncertainty::{Correlation, Input, combine, correlation_of_means, covariance_of_means};
use fuelwright::calc::vaporiser::{Regulator, Vaporiser, regulator, vaporiser};
use fuelwright::calc::{
    cylinder as cylinders, due as dues, economy as economies, fuel as fuels, gas, lambda as lambdas, leak, liquid,
    student,
};
use proptest::prelude::*;
use time::macros::date;

use crate::cases::{methane, p60_b40};

/// What stands where a number was.
#[derive(Debug, Clone, Copy)]
struct Spoiler {
    wild: f64,
    factor: f64,
}

fn spoiler() -> impl Strategy<Value = Spoiler> {
    let edges =
        prop::sample::select(vec![f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 0.0, -0.0, f64::MAX, f64::MIN_POSITIVE]);
    let wild = prop_oneof![prop::num::f64::ANY, edges, -1e3..1e3f64];
    (wild, -0.5..2.5f64).prop_map(|(wild, factor)| Spoiler { wild, factor })
}

/// The answer written out; a refusal is no answer and may name the number that it refused.
fn said<T: Debug, E>(answer: Result<T, E>) -> String {
    answer.map_or_else(|_| String::new(), |answer| format!("{answer:?}"))
}

#[track_caller]
fn is_all_numbers(said: &str, from: &dyn Debug) {
    let wrong = said.split(|c: char| !c.is_ascii_alphanumeric() && c != '_').find(|word| ["NaN", "inf"].contains(word));
    assert_eq!(wrong, None, "{from:?} gave {said}");
}

/// The answer with its sum laid out.
fn laid_out<T: Debug, S: Debug, E>(answer: Result<T, E>, steps: impl Fn(&T) -> S) -> String {
    answer.map_or_else(|_| String::new(), |answer| format!("{answer:?} {:?}", steps(&answer)))
}

/// Asks with each number spoiled by itself, and with all of them spoiled.
#[track_caller]
fn every<const N: usize>(good: [f64; N], Spoiler { wild, factor }: Spoiler, ask: impl Fn([f64; N]) -> String) {
    assert!(!ask(good).is_empty(), "the good input {good:?} must be answered, or nothing is tried");
    let mut tried = vec![[wild; N], good.map(|x| x * factor)];
    for i in 0..N {
        for spoiled in [wild, good[i] * factor] {
            let mut numbers = good;
            numbers[i] = spoiled;
            tried.push(numbers);
        }
    }
    for numbers in tried {
        is_all_numbers(&ask(numbers), &numbers);
    }
}

/// A few cases every day; as many as `PROPTEST_CASES` says in the long run.
fn cases() -> ProptestConfig {
    if std::env::var_os("PROPTEST_CASES").is_some() {
        ProptestConfig::default()
    } else {
        ProptestConfig::with_cases(48)
    }
}

fn setting(fuel: Composition, x: &[f64; 16]) -> Setting {
    Setting {
        fuel,
        rated_rpm: x[0],
        engine_cylinders: 4,
        manifold_kpa: x[1],
        supply_over_manifold_kpa: x[2],
        regulator_follows: Follows::Manifold,
        gas_temperature_c: x[3],
        dead_time_ms: x[4],
        max_duty: x[5],
        discharge_coefficient: x[6],
        discharge_uncertainty: None,
        sizes_mm: vec![1.8, x[7]],
        min_pulse_ms: x[8],
    }
}

proptest! {
    #![proptest_config(cases())]

    #[test]
    fn liquids_and_gases(spoiler in spoiler()) {
        for component in Component::ALL {
            every([10.0], spoiler, |[c]| format!("{:?}", saturation_kpa(component, c)));
        }
        let fuel = p60_b40();
        every([15.0], spoiler, |[c]| {
            let asked = Liquid { composition: fuel, temperature_c: c };
            laid_out(vapour_pressure(&asked), |found| liquid::vapour_pressure_steps(&asked, found))
        });
        every([15.0], spoiler, |[c]| {
            let asked = Liquid { composition: fuel, temperature_c: c };
            laid_out(density(&asked), |found| liquid::density_steps(&asked, found))
        });
        every([300.0], spoiler, |[kpa]| said(dew_temperature_c(&fuel, kpa)));
        for composition in [fuel, methane()] {
            every([217.0, 50.0], spoiler, |[pressure_kpa, temperature_c]| {
                {
                let asked = Gas { composition, pressure_kpa, temperature_c };
                laid_out(gas_state(&asked), |state| gas::steps(&asked, state))
                }
            });
            every([217.0, 50.0], spoiler, |[kpa, c]| said(compressibility(&composition, kpa, c)));
        }
    }

    #[test]
    fn shares(spoiler in spoiler()) {
        let lpg = [0.0, 0.0, 0.6, 0.0, 0.3, 0.1, 0.0, 0.0, 0.0];
        every(lpg, spoiler, |x| said(Composition::from_mole(Shares::from_array(x)).map(|c| (c.mass(), c.mole().to_owned()))));
        every(lpg, spoiler, |x| said(Composition::from_mass(Shares::from_array(x))));
        every(lpg, spoiler, |x| said(Composition::from_liquid_volume(Shares::from_array(x)).map(|c| c.liquid_volume().ok())));
    }

    #[test]
    fn flows(spoiler in spoiler()) {
        every([1.08], spoiler, |[k]| said(choking_share(k)));
        every([217.0, 97.0, 4.2, 1.08], spoiler, |[up, down, rho, k]| said(mass_flux(up, down, rho, k)));
        let asked = |x: &[f64; 6]| Flow {
            composition: p60_b40(),
            upstream_kpa: x[0],
            downstream_kpa: x[1],
            temperature_c: x[2],
            diameter_mm: x[3],
            discharge_coefficient: x[4],
        };
        every([217.0, 97.0, 50.0, 2.2, 0.8, 1.5], spoiler, |x| {
            let asked = asked(&x);
            laid_out(flow(&asked), |flowing| {
                let coefficient = discharge_from_measurement(&asked, x[5]);
                (flows::steps(&asked, flowing), coefficient.map(|c| flows::discharge_steps(&asked, flowing, x[5], c)).ok())
            })
        });
        every([217.0, 97.0, 50.0, 2.2, 0.8, 1.5], spoiler, |x| said(discharge_from_measurement(&asked(&x), x[5])));
    }

    #[test]
    fn sizes(spoiler in spoiler()) {
        let good =
            [5_800.0, 97.0, 120.0, 50.0, 1.6, 0.9, 0.8, 2.2, 2.5, 75.0, 0.3, 800.0, 9.5, 35.0, 0.0, 0.0];
        let power = |x: &[f64; 16]| {
            let Setting { fuel, rated_rpm, engine_cylinders, manifold_kpa, supply_over_manifold_kpa, regulator_follows, gas_temperature_c, dead_time_ms, max_duty, discharge_coefficient, discharge_uncertainty, sizes_mm, min_pulse_ms } = setting(p60_b40(), x);
            Sizing {
                fuel, rated_rpm, engine_cylinders, manifold_kpa, supply_over_manifold_kpa, regulator_follows, gas_temperature_c, dead_time_ms, max_duty, discharge_coefficient, discharge_uncertainty, sizes_mm, min_pulse_ms,
                rated_power_kw: x[9],
                brake_efficiency: x[10],
                idle_rpm: Some(x[11]),
                idle_fuel_power_kw: Some(x[12]),
                idle_manifold_kpa: x[13],
            }
        };
        every(good, spoiler, |x| said(size(&power(&x))));
        let laid_out = |asked: &Asked| {
            sheet(asked).map(|sheet| {
                let nozzle = sheet.found.nozzle();
                let used = nozzle.candidate(nozzle.used_mm).unwrap();
                format!("{sheet:?} {:?}", steps(asked, &sheet, &used))
            })
        };
        every(good, spoiler, |x| said(laid_out(&Asked::Power(power(&x)))));
        let petrol = [5_800.0, 97.0, 120.0, 50.0, 1.6, 0.9, 0.8, 3.2, 2.5, 200.0, 14.0, 0.9, 0.88, 1.0, 3.1, 35.0];
        every(petrol, spoiler, |x| {
            let injection = PetrolInjection {
                petrol: Petrol::E5,
                static_flow_g_min: x[9],
                rated_pulse_ms: x[10],
                dead_time_ms: x[11],
                petrol_lambda: x[12],
                gas_lambda: x[13],
                is_displaced_air_taken_off: true,
                idle_pulse_ms: Some(x[14]),
                idle_manifold_kpa: x[15],
            };
            said(laid_out(&Asked::Petrol(FromPetrol { injection, setting: setting(p60_b40(), &x) })))
        });
    }

    #[test]
    fn heat_and_lines(spoiler in spoiler()) {
        every([15.0, 220.0, 60.0, 5.4, 8.0], spoiler, |[container_c, outlet_kpa, outlet_c, fuel_rate_g_s, coolant_drop_k]| {
            said(vaporiser(&Vaporiser { composition: p60_b40(), container_c, outlet_kpa, outlet_c, fuel_rate_g_s, coolant_drop_k }))
        });
        every([20_000.0, 15.0, 300.0, 40.0, 5.4, 8.0], spoiler, |[inlet_kpa, inlet_c, outlet_kpa, outlet_c, fuel_rate_g_s, coolant_drop_k]| {
            said(regulator(&Regulator { composition: methane(), inlet_kpa, inlet_c, outlet_kpa, outlet_c, fuel_rate_g_s, coolant_drop_k }))
        });
        for carries in [Carries::Gas, Carries::Liquid] {
            every([220.0, 20.0, 10.0, 0.6, 5.0, 1.5], spoiler, |[pressure_kpa, temperature_c, bore_mm, length_m, flow_g_s, fitting_velocity_heads]| {
                said(hose(&Hose { composition: p60_b40(), carries, pressure_kpa, temperature_c, bore_mm, length_m, flow_g_s, fitting_velocity_heads }))
            });
        }
    }

    #[test]
    fn storage(spoiler in spoiler()) {
        every([60.0, 0.8, 15.0, 32.0, 14.0, 10.0, 0.04, 60.0], spoiler, |x| {
            let [gross_volume_l, fill_fraction, temperature_c, container_mass_kg, parts_mass_kg, consumption_l_per_100km, left_behind_share, reserve] = x;
            let asked = Container { composition: p60_b40(), gross_volume_l, fill_fraction, temperature_c };
            let stowage = Stowage { container_mass_kg, parts_mass_kg, consumption_l_per_100km, left_behind_share, axle_reserve_kg: Some(reserve) };
            let stowed = |got: &container::Contents| stow(got, &stowage).ok();
            said(container(&asked).map(|got| {
                let stowed = stowed(&got);
                let steps = container::steps(&asked, &got, stowed.as_ref().map(|stowed| (&stowage, stowed)));
                format!("{got:?} {stowed:?} {steps:?}")
            }))
        });
        every([80.0, 20_000.0, 15.0, -10.0], spoiler, |[volume_l, pressure_kpa, temperature_c, at_c]| {
            {
                let asked = Cylinder { composition: methane(), volume_l, pressure_kpa, temperature_c, at_temperature_c: Some(at_c) };
                laid_out(cylinder(&asked), |held| cylinders::steps(&asked, held))
            }
        });
        every([13.4, 1.0, 4.5], spoiler, |[mass, left, consumption]| said(range_km(mass, left, consumption)));
        every([2_000.0, 15.0, 25_000.0, 15.0, 20_000.0], spoiler, |[start_kpa, start_c, source_kpa, source_c, end_kpa]| {
            said(fast_fill(&FastFill { composition: methane(), start_kpa, start_c, source_kpa, source_c, end_kpa }))
        });
    }

    #[test]
    fn leaks(spoiler in spoiler()) {
        let good = [2.0, 401.3, 400.9, 20.0, 20.0, 10.0, 20.0, 0.1, 0.05, 0.1, 0.05, 15.0, 101.325];
        let test = |x: &[f64; 13]| DecayTest {
            volume_l: x[0], start_kpa: x[1], end_kpa: x[2], start_c: x[3], end_c: x[4], duration_min: x[5], limit_cm3_h: x[6],
            pressure_resolution_kpa: x[7], pressure_standard_uncertainty_kpa: x[8], temperature_standard_uncertainty_k: x[9],
            volume_relative_standard_uncertainty: x[10], reference_c: x[11], reference_kpa: x[12],
        };
        every(good, spoiler, |x| laid_out(judge(&test(&x), &Compressibility::IDEAL), |judged| {
            leak::steps(&test(&x), &Compressibility::IDEAL, judged)
        }));
        every(good, spoiler, |x| {
            let Ok(gas) = Compressibility::of(&test(&x), |kpa, c| compressibility(&methane(), kpa, c)) else { return String::new() };
            laid_out(judge(&test(&x), &gas), |judged| leak::steps(&test(&x), &gas, judged))
        });
        every(good, spoiler, |x| {
            let judged = judge(&test(&x), &Compressibility::IDEAL);
            said(judged.and_then(|judged| trace::trace(&test(&x), &Compressibility::IDEAL, &judged, 3)))
        });
        every([2.0, 400.0, 20.0, 20.0, 0.1, 0.05, 0.1, 10.0], spoiler, |[volume_l, pressure_kpa, temperature_c, limit_cm3_h, pressure_resolution_kpa, u_p, u_t, minutes]| {
            let section = Planned {
                volume_l, pressure_kpa, temperature_c, limit_cm3_h, pressure_resolution_kpa,
                pressure_standard_uncertainty_kpa: u_p, temperature_standard_uncertainty_k: u_t,
            };
            said(plan(&section)) + &said(needed_gauge_kpa(&section, minutes))
        });
        every([400.0, 19.0, 20.0], spoiler, |[kpa, c, start_c]| said(trace::corrected_kpa(kpa, c, start_c)));
        every([20.0, 20.1, 0.1], spoiler, |[first, second, u]| said(has_settled(first, second, u)));
        for unit in [RateUnit::Cm3PerHour, RateUnit::NormalCm3PerHour, RateUnit::Cm3PerMinute, RateUnit::PaM3PerSecond, RateUnit::MbarLPerSecond] {
            every([20.0], spoiler, |[rate]| said(unit.from_cm3_h(rate)) + &said(unit.to_cm3_h(rate)));
        }
        for gas in LeakGas::ALL {
            every([20.0], spoiler, |[rate]| {
                said(through_same_leak(rate, LeakGas::Air, gas, Regime::Viscous)) + &said(through_same_leak(rate, LeakGas::Air, gas, Regime::Molecular))
                    + &said(mass_g_h(rate, gas)) + &said(bubbles_per_second(rate))
            });
        }
        every([8.0, 300.0, 200.0, 101.325], spoiler, |[rate, from, to, ambient]| said(at_other_pressure(rate, from, to, ambient)));
    }

    #[test]
    fn exhausts(spoiler in spoiler()) {
        for fuel in [ExhaustFuel::Petrol, ExhaustFuel::Lpg, ExhaustFuel::Cng] {
            every([0.2, 13.2, 0.2, 70.0, 100.0, 0.06, 0.5, 0.1, 12.0, 0.0, 0.97, 1.03], spoiler, |x| {
                let exhaust = Exhaust { fuel, co_percent: x[0], co2_percent: x[1], o2_percent: x[2], hc_ppm_hexane: x[3], nox_ppm: Some(x[4]) };
                let errors = PermissibleErrors { co_percent: x[5], co2_percent: x[6], o2_percent: x[7], hc_ppm_hexane: x[8], nox_ppm: x[9] };
                let limit = LambdaLimit { least: x[10], most: x[11], rule: Rule::Guarded };
                laid_out(lambda(&exhaust), |found| lambdas::steps(&exhaust, *found))
                    + &laid_out(lambda_uncertainty(&exhaust, &errors), |u| u.expanded().map(|u| lambdas::uncertainty_steps(&exhaust, &errors, u)).ok()) + &said(lambdas::judge(&exhaust, &errors, limit))
            });
        }
        every([200.0, 0.52], spoiler, |[ppm, factor]| said(hexane_from_propane_ppm(ppm, factor)));
    }

    #[test]
    fn what_it_saves(spoiler in spoiler(), factors in prop::sample::select(FactorSet::ALL.to_vec())) {
        for gas in [p60_b40(), methane()] {
            // The price of gas stands to that of petrol as its last number says, so that both can be next to nothing.
            every([745.0, 8.0, 0.05, 175.0, 20_000.0, 0.4], spoiler, |[petrol_kg_m3, consumption_l_per_100km, petrol_share, petrol, km_per_year, ratio]| {
                let running = Running {
                    gas, petrol: Petrol::E5, petrol_kg_m3, consumption_l_per_100km, petrol_share,
                    petrol_price_minor_per_l: petrol, gas_price_minor_per_unit: petrol * ratio,
                    conversion_minor: 120_000, km_per_year, factors,
                };
                laid_out(economy(&running), |found| economies::steps(&running, found))
            });
        }
    }

    #[test]
    fn what_falls_due(spoiler in spoiler()) {
        every([10_000.0, 13_000.0, 15_000.0, 10_000.0], spoiler, |[first, second, km, from_km]| {
            let from = date!(2026 - 01 - 31);
            let readings = vec![Reading { date: from, km: first }, Reading { date: date!(2026 - 03 - 02), km: second }];
            let line = OdometerLine::through(&readings);
            let duty = Duty { from, months: Some(12), from_precision: Precision::Day, readings, km: Some(km), from_km: Some(from_km) };
            laid_out(due(&duty), |found| dues::steps(&duty, found)) + &said(line)
        });
    }

    #[test]
    fn statistics(spoiler in spoiler(), other in spoiler()) {
        every([0.95, 16.0], spoiler, |[level, nu]| said(student::two_sided(level, Some(nu))));
        every([46.55, 49.1], spoiler, |[value, expanded]| said(reported(value, expanded)));
        every([5.007, 4.994, other.wild], spoiler, |readings| format!("readings{}", said(Input::from_readings(&readings))));
        every([5.007, 4.994, 5.001, 19.66, 19.64, 19.65], spoiler, |[a, b, c, d, e, f]| {
            said(covariance_of_means(&[a, b, c], &[d, e, f])) + &said(correlation_of_means(&[a, b, c], &[d, e, f]))
        });
        every([1.0, 0.3, 2.0, 0.4, 5.0, 1.5, -0.7, 0.5], spoiler, |[x, u_x, y, u_y, nu, c_x, c_y, r]| {
            let inputs = [Input::new(x, u_x).with_degrees_of_freedom(nu), Input::new(y, u_y)];
            let correlation = [Correlation { first: 0, second: 1, coefficient: r }];
            let combined = |correlations: &[Correlation]| {
                let combined = combine(&inputs, &[c_x, c_y], correlations)?;
                Ok::<_, fuelwright::calc::Outside>((combined, combined.expanded().ok(), combined.coverage_factor(0.95).ok()))
            };
            said(combined(&[])) + &said(combined(&correlation))
        });
    }

    /// Any mixture of the nine, nearly pure or even, through every sum that takes one.
    #[test]
    fn mixtures(exponents in prop::array::uniform9(-12.0..0.0f64), c in -60.0..90.0f64, log_kpa in 0.0..4.5f64) {
        let typed = exponents.map(|e| if e < -9.0 { 0.0 } else { e.exp() });
        let sum: f64 = typed.iter().sum();
        prop_assume!(sum > 0.0);
        let composition = Composition::from_mole(Shares::from_array(typed.map(|x| x / sum))).unwrap();
        let (temperature_c, pressure_kpa) = (c, 10f64.powf(log_kpa));
        let answers = [
            laid_out(fuel(&composition), |found| fuels::steps(&composition, found)),
            said(parts(&composition)),
            said(reference_density_kg_m3(&composition)),
            said(vapour_pressure(&Liquid { composition, temperature_c })),
            said(density(&Liquid { composition, temperature_c })),
            said(dew_temperature_c(&composition, pressure_kpa)),
            said(gas_state(&Gas { composition, pressure_kpa, temperature_c })),
            said(container(&Container { composition, gross_volume_l: 60.0, fill_fraction: 0.8, temperature_c })),
            said(cylinder(&Cylinder { composition, volume_l: 80.0, pressure_kpa, temperature_c, at_temperature_c: Some(15.0) })),
            said(fast_fill(&FastFill { composition, start_kpa: 100.0, start_c: c, source_kpa: 25_000.0, source_c: 15.0, end_kpa: pressure_kpa.max(101.0) })),
            said(vaporiser(&Vaporiser { composition, container_c: c, outlet_kpa: 220.0, outlet_c: 60.0, fuel_rate_g_s: 5.0, coolant_drop_k: 8.0 })),
            said(regulator(&Regulator { composition, inlet_kpa: pressure_kpa, inlet_c: c, outlet_kpa: 0.5 * pressure_kpa, outlet_c: 40.0, fuel_rate_g_s: 5.0, coolant_drop_k: 8.0 })),
            said(hose(&Hose { composition, carries: Carries::Gas, pressure_kpa, temperature_c, bore_mm: 10.0, length_m: 0.6, flow_g_s: 5.0, fitting_velocity_heads: 1.0 })),
            said(flow(&Flow { composition, upstream_kpa: pressure_kpa, downstream_kpa: 97.0, temperature_c, diameter_mm: 2.0, discharge_coefficient: 0.8 })),
        ];
        for answer in answers {
            is_all_numbers(&answer, &(composition, temperature_c, pressure_kpa));
        }
    }
}
