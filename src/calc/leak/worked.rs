//! A decay test laid out step by step: rate, what each reading adds to its uncertainty, and what a better test needs.

use super::budget::{self, reading_standard_uncertainty_kpa};
use super::gas::EndState;
use super::{BudgetQuantity, COVERAGE_FACTOR, Compressibility, DecayTest, LeakResult, ZERO_C_K, constant};
use crate::calc::{Source, Step};

/// Compressibilities are subtracted from one another.
const Z_FIGURES: i32 = 9;

/// What every step needs.
struct Steps<'a> {
    test: &'a DecayTest,
    gas: &'a Compressibility,
    result: &'a LeakResult,
    c: f64,
}

/// The steps from the readings to rate, uncertainty and needs.
#[must_use]
pub fn steps(test: &DecayTest, gas: &Compressibility, result: &LeakResult) -> Vec<Step> {
    let sum = Steps { test, gas, result, c: constant(test, gas) };
    let mut all = sum.states();
    all.push(sum.constant());
    all.push(sum.rate());
    all.extend(sum.sensitivities());
    all.extend(sum.uncertainty());
    all.extend(sum.needs());
    all
}

impl Steps<'_> {
    fn is_ideal(&self) -> bool {
        self.gas.is_ideal()
    }

    /// Compressibilities as the equation of state prints them; none for an ideal gas.
    fn states(&self) -> Vec<Step> {
        if self.is_ideal() {
            return Vec::new();
        }
        let DecayTest { start_kpa, end_kpa, start_c, end_c, reference_kpa, reference_c, .. } = *self.test;
        let stated = "p {} kPa, T {} °C";
        let z = |key, at: [f64; 2], z: f64| {
            Step::new(key, ("Z(p, T)", stated), &at, (z, ""), Source::Gerg2008).with_result_of(Z_FIGURES)
        };
        let slope = |key, formula, at: [f64; 2], slope: f64, unit| {
            Step::new(key, (formula, stated), &at, (slope, unit), Source::Gerg2008)
        };
        let (start, end) = ([start_kpa, start_c], [end_kpa, end_c]);
        vec![
            z("leak-z-start", start, self.gas.start.compressibility),
            z("leak-z-end", end, self.gas.end.compressibility),
            z("leak-z-reference", [reference_kpa, reference_c], self.gas.reference),
            slope("leak-z-start-per-kpa", "∂Z/∂p", start, self.gas.start.per_kpa, "/kPa"),
            slope("leak-z-end-per-kpa", "∂Z/∂p", end, self.gas.end.per_kpa, "/kPa"),
            slope("leak-z-start-per-k", "∂Z/∂T", start, self.gas.start.per_k, "/K"),
            slope("leak-z-end-per-k", "∂Z/∂T", end, self.gas.end.per_k, "/K"),
        ]
    }

    fn constant(&self) -> Step {
        let DecayTest { volume_l: v, reference_kpa, reference_c, duration_min, .. } = *self.test;
        let reference_k = reference_c + ZERO_C_K;
        let result = (self.c, "cm³ K/(h kPa)");
        let key = "leak-constant";
        if self.is_ideal() {
            let words = ("c = 1000 V T_r / p_r / (t / 60)", "1000 · {} · {} / {} / ({} / 60)");
            return Step::new(key, words, &[v, reference_k, reference_kpa, duration_min], result, None);
        }
        let words = ("c = 1000 V T_r Z_r / p_r / (t / 60)", "1000 · {} · {} · {} / {} / ({} / 60)");
        let values = [v, reference_k, self.gas.reference, reference_kpa, duration_min];
        Step::new(key, words, &values, result, None).with_numbers_of(Z_FIGURES)
    }

    fn rate(&self) -> Step {
        let DecayTest { start_kpa, end_kpa, start_c, end_c, .. } = *self.test;
        let (start_k, end_k) = (start_c + ZERO_C_K, end_c + ZERO_C_K);
        let result = (self.result.rate_cm3_h, "cm³/h");
        let step = if self.is_ideal() {
            let words = ("q = c (p_1 / T_1 - p_2 / T_2)", "{} · ({} / {} - {} / {})");
            Step::new("leak-rate", words, &[self.c, start_kpa, start_k, end_kpa, end_k], result, None)
        } else {
            let (z_1, z_2) = (self.gas.start.compressibility, self.gas.end.compressibility);
            let words = ("q = c (p_1 / (Z_1 T_1) - p_2 / (Z_2 T_2))", "{} · ({} / ({} · {}) - {} / ({} · {}))");
            let values = [self.c, start_kpa, z_1, start_k, end_kpa, z_2, end_k];
            Step::new("leak-rate", words, &values, result, None).with_numbers_of(Z_FIGURES)
        };
        step.give_or_take(self.result.expanded_uncertainty_cm3_h / COVERAGE_FACTOR)
    }

    fn sensitivity(&self, quantity: BudgetQuantity) -> f64 {
        let row = self.result.budget.iter().find(|row| row.quantity == quantity);
        row.map_or(0.0, |row| row.sensitivity.abs())
    }

    /// Change of the rate with each reading, its sign dropped.
    fn sensitivities(&self) -> Vec<Step> {
        let DecayTest { start_kpa, end_kpa, start_c, end_c, .. } = *self.test;
        let (start_k, end_k) = (start_c + ZERO_C_K, end_c + ZERO_C_K);
        let per_kpa = |key, kpa: f64, k: f64, state: EndState, found: f64| {
            let result = (found, "cm³/(h kPa)");
            if self.is_ideal() {
                return Step::new(key, ("s = c / T", "{} / {}"), &[self.c, k], result, Source::Jcgm100);
            }
            let words = ("s = c / (Z T) (1 - p / Z ∂Z/∂p)", "{} / ({} · {}) · (1 - {} / {} · {})");
            let z = state.compressibility;
            Step::new(key, words, &[self.c, z, k, kpa, z, state.per_kpa], result, Source::Jcgm100)
        };
        let per_k = |key, kpa: f64, k: f64, state: EndState, found: f64| {
            let result = (found, "cm³/(h K)");
            if self.is_ideal() {
                return Step::new(
                    key,
                    ("s = c p / T²", "{} · {} / {} ^ 2"),
                    &[self.c, kpa, k],
                    result,
                    Source::Jcgm100,
                );
            }
            let words = ("s = c p / (Z T) (1 / T + ∂Z/∂T / Z)", "{} · {} / ({} · {}) · (1 / {} + {} / {})");
            let z = state.compressibility;
            Step::new(key, words, &[self.c, kpa, z, k, k, state.per_k, z], result, Source::Jcgm100)
        };
        use BudgetQuantity::{EndPressure, EndTemperature, StartPressure, StartTemperature};
        let found = |quantity| self.sensitivity(quantity);
        vec![
            per_kpa("leak-per-start-pressure", start_kpa, start_k, self.gas.start, found(StartPressure)),
            per_kpa("leak-per-end-pressure", end_kpa, end_k, self.gas.end, found(EndPressure)),
            per_k("leak-per-start-temperature", start_kpa, start_k, self.gas.start, found(StartTemperature)),
            per_k("leak-per-end-temperature", end_kpa, end_k, self.gas.end, found(EndTemperature)),
        ]
    }

    /// What pressures, temperatures and volume add to the standard uncertainty, cm3/h.
    fn added(&self) -> [f64; 3] {
        use BudgetQuantity::{EndPressure, EndTemperature, StartPressure, StartTemperature, Volume};
        let of = |wanted: &[BudgetQuantity]| {
            let rows = self.result.budget.iter().filter(|row| wanted.contains(&row.quantity));
            rows.map(|row| row.contribution_cm3_h.powi(2)).sum::<f64>().sqrt()
        };
        [of(&[StartPressure, EndPressure]), of(&[StartTemperature, EndTemperature]), of(&[Volume])]
    }

    /// Contributions, their shares, and the expanded uncertainty.
    fn uncertainty(&self) -> Vec<Step> {
        use BudgetQuantity::{EndPressure, EndTemperature, StartPressure, StartTemperature};
        let DecayTest { pressure_standard_uncertainty_kpa: u_p, pressure_resolution_kpa: step, .. } = *self.test;
        let u_t = self.test.temperature_standard_uncertainty_k;
        let u_v = self.test.volume_relative_standard_uncertainty;
        let u_r = reading_standard_uncertainty_kpa(self.test);
        let [pressure, temperature, volume] = self.added();
        let both = ("u √(s_1² + s_2²)", "{} · √({} ^ 2 + {} ^ 2)");
        let unit = "cm³/h";
        let pair = |one, two| [self.sensitivity(one), self.sensitivity(two)];
        let [p_1, p_2] = pair(StartPressure, EndPressure);
        let [t_1, t_2] = pair(StartTemperature, EndTemperature);
        let words = ("u_r = √(u_p² + a² / 12)", "√({} ^ 2 + {} ^ 2 / 12)");
        let source = Source::Jcgm100;
        let mut all = vec![
            Step::new("leak-reading", words, &[u_p, step], (u_r, "kPa"), source),
            Step::new("leak-from-pressure", both, &[u_r, p_1, p_2], (pressure, unit), source),
            Step::new("leak-from-temperature", both, &[u_t, t_1, t_2], (temperature, unit), source),
            Step::new(
                "leak-from-volume",
                ("u_V |q|", "{} · {}"),
                &[u_v, self.result.rate_cm3_h.abs()],
                (volume, unit),
                source,
            ),
        ];
        let expanded = self.result.expanded_uncertainty_cm3_h;
        if expanded > 0.0 {
            let added = [
                ("leak-share-pressure", pressure),
                ("leak-share-temperature", temperature),
                ("leak-share-volume", volume),
            ];
            let words = ("100 u_i² / Σ u²", "100 · {} ^ 2 / ({} ^ 2 + {} ^ 2 + {} ^ 2)");
            let combined = budget::combined(&self.result.budget).powi(2);
            all.extend(added.map(|(key, u)| {
                Step::new(key, words, &[u, pressure, temperature, volume], (100.0 * u * u / combined, "%"), source)
            }));
        }
        let words = ("U = 2 √(Σ u²)", "2 · √({} ^ 2 + {} ^ 2 + {} ^ 2)");
        all.push(Step::new("leak-expanded", words, &[pressure, temperature, volume], (expanded, unit), source));
        all
    }

    /// The time and the gauge that would tell.
    fn needs(&self) -> Vec<Step> {
        use BudgetQuantity::{EndPressure, StartPressure};
        // A section cannot gain gas: a rate below zero is read as tight.
        let q = self.result.rate_cm3_h.max(0.0);
        let margin = (self.test.limit_cm3_h - q).abs();
        let [pressure, temperature, _] = self.added();
        let volume = self.test.volume_relative_standard_uncertainty * q;
        let mut all = vec![
            Step::new(
                "leak-margin",
                // Written so that what is subtracted is the smaller one.
                if self.test.limit_cm3_h >= q { ("m = q_max - q", "{} - {}") } else { ("m = q - q_max", "{} - {}") },
                &[self.test.limit_cm3_h.max(q), self.test.limit_cm3_h.min(q)],
                (margin, "cm³/h"),
                None,
            )
            .with_numbers_of(Z_FIGURES)
            .with_result_of(Z_FIGURES),
        ];
        if let Some(minutes) = self.result.needed_duration_min {
            let words =
                ("t · 2 √(u_p² + u_T²) / √(m² - (2 u_V)²)", "{} · 2 · √({} ^ 2 + {} ^ 2) / √({} ^ 2 - (2 · {}) ^ 2)");
            let values = [self.test.duration_min, pressure, temperature, margin, volume];
            all.push(
                Step::new("leak-needed-time", words, &values, (minutes, "min"), Source::IlacG8)
                    .with_numbers_of(Z_FIGURES),
            );
        }
        if let Some(kpa) = self.result.needed_pressure_standard_uncertainty_kpa {
            let words = (
                "√((m / 2)² - u_T² - u_V²) / √(s_1² + s_2²)",
                "√(({} / 2) ^ 2 - {} ^ 2 - {} ^ 2) / √({} ^ 2 + {} ^ 2)",
            );
            let values = [margin, temperature, volume, self.sensitivity(StartPressure), self.sensitivity(EndPressure)];
            all.push(
                Step::new("leak-needed-gauge", words, &values, (kpa, "kPa"), Source::IlacG8).with_numbers_of(Z_FIGURES),
            );
        }
        all
    }
}
